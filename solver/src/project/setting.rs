//! From a project that may be wrong to what machines are set by and materials are reckoned from.

use super::{LayoutParts, ProjectDraft, keep, placed, told_once};
use crate::field::{Place, Problem};
use crate::materials::Run;
use crate::tooling::{Cut, Head, HeadKind};
use crate::wood::Conditions;

/// The checked parts that machines are set by.
#[derive(Debug, Clone, PartialEq)]
pub struct SettingParts {
    /// The layout that is looked at.
    pub layout: LayoutParts,
    /// The heads of the line, in the order of [`HeadKind::ALL`].
    pub heads: [Head; 3],
    /// What is common to the heads.
    pub cut: Cut,
    /// The conditions of grooving.
    pub conditions: Conditions,
}

impl ProjectDraft {
    /// What machines are set by, or everything that stands in its way.
    ///
    /// # Errors
    /// Every problem of the layout, as [`ProjectDraft::check_layout`]; of the conditions, at
    /// [`Place::Conditions`], also where no slat moves in them; of the heads, at [`Place::Head`]; of
    /// what is common to them, at [`Place::Cut`]. An empty list when a barrel or a slat is missing
    /// altogether.
    pub fn check_setting(&self) -> Result<SettingParts, Vec<Problem>> {
        let mut problems = Vec::new();
        let layout = keep(self.check_layout(), &mut problems);
        let conditions = placed(self.conditions.check(), Place::Conditions);
        let conditions = keep(conditions, &mut problems);
        let heads = keep(self.check_heads(), &mut problems);
        let cut = keep(placed(self.cut.check(), Place::Cut), &mut problems);
        match (layout, heads, cut, conditions) {
            (Some(layout), Some(heads), Some(cut), Some(conditions)) => Ok(SettingParts {
                layout,
                heads,
                cut,
                conditions,
            }),
            _ => Err(told_once(problems)),
        }
    }

    /// The run for which materials are reckoned, or every rule it breaks.
    ///
    /// # Errors
    /// Every problem of a yield, at [`Place::Stage`]; of any other field, at [`Place::Run`].
    pub fn check_run(&self) -> Result<Run, Vec<Problem>> {
        self.run.check().map_err(|found| {
            let problems = found.into_iter().map(|found| Problem {
                place: found.stage.map_or(Place::Run, Place::Stage),
                problem: found.problem,
            });
            problems.collect()
        })
    }

    /// The heads of the line, or every rule they break, each at its [`Place::Head`].
    pub(super) fn check_heads(&self) -> Result<[Head; 3], Vec<Problem>> {
        let mut problems = Vec::new();
        let mut head = |kind: HeadKind| {
            let head = self.heads[kind as usize].check();
            keep(placed(head, Place::Head(kind)), &mut problems)
        };
        match HeadKind::ALL.map(&mut head) {
            [Some(groove), Some(top), Some(bottom)] => Ok([groove, top, bottom]),
            _ => Err(problems),
        }
    }
}
