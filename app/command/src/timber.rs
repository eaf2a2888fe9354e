//! How planks are sawn into blanks: the answer of `timber`.

mod recount;
mod text;

use app::project_file::Opened;
use solver::sawing::{
    SawingData, SawingFault, SawingLimits, SawingNames, SawingOutcome, SawingPlan, saw,
};
use solver::{LengthUnit, ProjectDraft};

use crate::answer::Answer;
use crate::document::{self, TimberDocument};
use crate::ending::Ending;
use crate::findings::Findings;
use crate::names;

pub(crate) use recount::{Recounted, recount};

/// The plan of the saw shop of a project.
pub(crate) struct Sawn<'a> {
    /// The project.
    pub(crate) draft: &'a ProjectDraft,
    /// What is sawn from what.
    pub(crate) data: SawingData,
    /// What the planks are called.
    pub(crate) planks: Vec<String>,
    /// What the blanks are called.
    pub(crate) blanks: Vec<String>,
    /// The plan and how good it is, or that it did not stand its recount.
    pub(crate) outcome: Result<SawingOutcome, SawingFault>,
}

/// Plans how the blanks are sawn.
///
/// # Errors
/// Everything that stands in the way.
pub(crate) fn plan(opened: &Opened, limits: SawingLimits) -> Result<Sawn<'_>, Findings> {
    let draft = &opened.draft;
    let data = (draft.check_sawing()).map_err(|problems| Findings::with(opened, problems))?;
    let outcome = saw(&data, &limits, &mut |_| true);
    let shop = &draft.saw_shop;
    Ok(Sawn {
        draft,
        planks: (0..shop.planks.len())
            .map(|at| names::plank(draft, at))
            .collect(),
        blanks: (0..shop.blanks.len())
            .map(|at| names::blank(draft, at))
            .collect(),
        outcome,
        data,
    })
}

impl Sawn<'_> {
    /// The plan, whatever came of it; nothing where it did not stand its recount.
    pub(crate) fn plan(&self) -> Option<&SawingPlan> {
        self.outcome.as_ref().ok().map(|outcome| match outcome {
            SawingOutcome::Proved { plan, .. }
            | SawingOutcome::WithinGap { plan, .. }
            | SawingOutcome::Short { plan, .. }
            | SawingOutcome::NoneFound { plan, .. } => plan,
        })
    }

    /// What planks and blanks are called.
    pub(crate) fn names(&self) -> SawingNames<'_> {
        SawingNames {
            planks: &self.planks,
            blanks: &self.blanks,
        }
    }
}

impl Answer for Sawn<'_> {
    fn text(&self, unit: LengthUnit) -> String {
        text::write(self, unit)
    }

    fn json(&self) -> String {
        document::write(&TimberDocument::from(self))
    }

    fn ending(&self) -> Ending {
        match &self.outcome {
            Ok(SawingOutcome::Proved { .. } | SawingOutcome::WithinGap { .. }) => Ending::Fine,
            Ok(SawingOutcome::Short { .. } | SawingOutcome::NoneFound { .. }) => {
                Ending::NothingFits
            }
            Err(_) => Ending::Problems,
        }
    }
}
