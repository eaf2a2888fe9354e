//! What the machines are set to for the layout that is chosen.

use super::Workbench;
use leptos::prelude::*;
use solver::{
    KnifeProblem, Layout, Paper, PaperProblem, PaperSize, Setting, SettingParts, lay_out, set_up,
};

/// What the machines are set to: for the project, or for the last one that could be worked with.
#[derive(Debug, Clone, PartialEq)]
pub struct Machined {
    /// The parts it was made of.
    pub parts: SettingParts,
    /// The layout.
    pub layout: Layout,
    /// What the machines are set to, or what keeps a knife from being made.
    pub setting: Result<Setting, Vec<KnifeProblem>>,
    /// Whether the project has gone on to something that cannot be worked with.
    pub stale: bool,
    /// Which of the projects that were put on the bench it is of.
    put: u32,
}

/// What the machines are set to, kept up to date; nothing while there never was anything.
#[must_use]
pub fn machined(bench: Workbench) -> Memo<Option<Machined>> {
    let project = bench.project();
    Memo::new(move |last: Option<&Option<Machined>>| {
        let put = bench.put.get();
        match project.read().check_setting() {
            Ok(parts) => Some(Machined::new(parts, put)),
            // What was shown of another project says nothing of this one.
            Err(_) => (last.cloned().flatten())
                .filter(|last| last.put == put)
                .map(|last| Machined {
                    stale: true,
                    ..last
                }),
        }
    })
}

impl Machined {
    fn new(parts: SettingParts, put: u32) -> Self {
        let setup = parts.layout.setup();
        let layout = lay_out(&setup);
        let setting = set_up(&setup, &layout, &parts.heads, &parts.cut, parts.conditions);
        Self {
            layout,
            setting,
            parts,
            stale: false,
            put,
        }
    }

    /// The setting, if there is one.
    #[must_use]
    pub fn setting(&self) -> Option<&Setting> {
        self.setting.as_ref().ok()
    }
}

/// Draws on a size of paper, upright if it fits so, and else on its long side.
///
/// # Errors
/// Where it is too wide for the long side too.
pub(crate) fn drawn_on<Drawn>(
    size: PaperSize,
    draw: impl Fn(Paper) -> Result<Drawn, PaperProblem>,
) -> Result<(Paper, Drawn), PaperProblem> {
    let on = |landscape| {
        let paper = Paper { size, landscape };
        draw(paper).map(|drawn| (paper, drawn))
    };
    on(false).or_else(|_| on(true))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demo;
    use solver::{HeadKind, LengthUnit, Typed, draw_gauge};

    #[test]
    fn the_example_has_a_setting() {
        let machined = Machined::new(demo::project().check_setting().unwrap(), 0);
        let setting = machined.setting().unwrap();
        assert_eq!(setting.grooves.len(), 10);
        assert_eq!(setting.knives.len(), 4);
    }

    #[test]
    fn a_head_too_small_for_its_knife_is_told_of() {
        let mut project = demo::project();
        project.heads[HeadKind::Top as usize].diameter = Typed::Number(20.0);
        project.heads[HeadKind::Top as usize].hook = Typed::Number(80.0);
        let machined = Machined::new(project.check_setting().unwrap(), 0);
        assert!(
            machined.setting.unwrap_err()[0]
                .to_string()
                .contains("Top knife")
        );
    }

    #[test]
    fn what_is_too_wide_upright_is_drawn_on_the_long_side() {
        let gauge = |width: f64| {
            let mut project = demo::project();
            project.slats[0].draft.width = Typed::Number(width);
            let machined = Machined::new(project.check_setting().unwrap(), 0);
            let setup = machined.parts.layout.setup();
            drawn_on(PaperSize::A4, |paper| {
                draw_gauge(&setup, &machined.layout, paper, LengthUnit::Millimetre)
            })
            .map(|(paper, _)| paper.landscape)
        };
        assert_eq!(gauge(74.0), Ok(false));
        assert_eq!(gauge(195.0), Ok(true));
    }
}
