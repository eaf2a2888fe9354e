//! How the machines are set for the layout, and what a run of it takes: the answer of `setting`.

mod files;
mod text;

use app::project_file::Opened;
use solver::{
    Cut, CutterPlan, Head, KnifeProblem, LengthUnit, Problem, ProjectDraft, RunNeeds, Setting,
    run_needs, set_up,
};

use crate::answer::Answer;
use crate::arguments::AskedSetting;
use crate::document::{self, SettingDocument};
use crate::ending::Ending;
use crate::findings::{Findings, Told};
use crate::layout::{self, Laid};

use files::Sheets;
pub(crate) use files::{Unwritten, Written, put};

/// The most layouts that are tried to plan cutter sets: some seconds of work.
const MOST_TRIED: usize = 100_000;

/// How the machines are set, with the project it was reckoned from.
pub(crate) struct SetUp<'a> {
    /// The layout.
    pub(crate) laid: Laid<'a>,
    /// The heads of the line, in the order of the work.
    pub(crate) heads: [Head; 3],
    /// What is common to the heads.
    pub(crate) cut: Cut,
    /// How the machines are set, or what keeps a knife from being made.
    pub(crate) setting: Result<Setting, Vec<KnifeProblem>>,
    /// What the run takes, where every check of the layout passes, or what is wrong with the run.
    pub(crate) run: Result<Option<RunNeeds>, Vec<Told>>,
    /// What cutter sets make and save, or what keeps that from being told.
    pub(crate) cutters: Result<CutterPlan, Vec<Told>>,
    /// The files that were asked for.
    pub(crate) files: Vec<Written>,
}

/// Sets the machines for the layout, and writes the files that are asked for. What is wrong with the
/// run or with other parts of the project keeps only the run or the cutter sets from being told.
///
/// # Errors
/// Everything that stands in the way of the layout, the heads, the cut and the conditions.
pub(crate) fn set<'a>(opened: &'a Opened, asked: &AskedSetting) -> Result<SetUp<'a>, Findings> {
    let draft = &opened.draft;
    let parts = (draft.check_setting()).map_err(|problems| Findings::with(opened, problems))?;
    let laid = layout::lay(opened)?;
    let setup = parts.layout.setup();
    let conditions = parts.conditions;
    let setting = set_up(&setup, &laid.layout, &parts.heads, &parts.cut, conditions);
    let sheets = Sheets {
        setup,
        layout: &laid.layout,
        setting: setting.as_ref().ok(),
        size: asked.paper.into(),
        unit: asked.asked.unit.into(),
        name: files::title(&laid),
    };
    let files = sheets.write(asked.svg.as_deref(), asked.dxf.as_deref());
    let run = draft.check_run().map_err(told);
    let run = run.map(|run| run_needs(&setup, &laid.layout, &run, conditions));
    Ok(SetUp {
        heads: parts.heads,
        cut: parts.cut,
        setting,
        run,
        cutters: plan_cutters(draft),
        files,
        laid,
    })
}

/// What cutter sets make and save, or what keeps that from being told.
fn plan_cutters(draft: &ProjectDraft) -> Result<CutterPlan, Vec<Told>> {
    let tried = (draft.cutter_sets.len() + 1)
        .saturating_mul(draft.barrels.len())
        .saturating_mul(draft.slats.len());
    if tried > MOST_TRIED {
        return Err(vec![Told::plain(format!(
            "there are {tried} ways to put a cutter set to a barrel and a slat stock, and {MOST_TRIED} are the most that are tried: take out cutter sets, barrels or stocks"
        ))]);
    }
    draft.plan_cutters().map_err(told)
}

fn told(problems: Vec<Problem>) -> Vec<Told> {
    problems.into_iter().map(Told::from).collect()
}

impl Answer for SetUp<'_> {
    fn text(&self, unit: LengthUnit) -> String {
        text::write(self, unit)
    }

    fn json(&self) -> String {
        document::write(&SettingDocument::from(self))
    }

    fn ending(&self) -> Ending {
        let is_unwritten = |file: &Written| matches!(file.outcome, Err(Unwritten::Unwritable(_)));
        if self.files.iter().any(is_unwritten) {
            Ending::Unread
        } else if self.setting.is_err() || !self.laid.layout.fits() {
            Ending::NothingFits
        } else {
            Ending::Fine
        }
    }
}
