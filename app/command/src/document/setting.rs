//! What `setting` prints.

mod cutters;
mod knives;
mod run;

use app::project_file::WayWord;
use schemars::JsonSchema;
use serde::Serialize;
use solver::{HeadKind, KnifeHeight, LengthUnit, Setting, SlatSetting};

use super::check::Finding;
use super::layout::GrooveLine;
use super::words::{CheckLine, HeadWord, KnifeWord};
use super::{Named, VERSION};
use crate::findings::Told;
use crate::setting::{SetUp, Written};

use cutters::CuttersPart;
use knives::KnifeLine;
use run::RunPart;

/// What `slatwright setting` prints.
#[derive(Debug, Serialize, JsonSchema)]
pub(crate) struct SettingDocument {
    /// Tells this document from others.
    #[schemars(extend("const" = "slatwright-setting"))]
    format: &'static str,
    /// The version of this document.
    #[schemars(extend("const" = VERSION))]
    version: u32,
    /// What the project is called.
    project: String,
    /// The barrel.
    barrel: Named,
    /// The slat stock above the glue plane.
    top: Named,
    /// The slat stock below the glue plane.
    bottom: Named,
    /// How the barrel is turned.
    way: WayWord,
    /// The turn of the barrel, degrees counter-clockwise from standing on a face or as drawn.
    turn_degrees: f64,
    /// The cutter set that spaces the grooves; `null` where none does.
    cutter_set: Option<String>,
    /// Whether every check passes.
    fits: bool,
    /// Pencils from one sandwich; 0 where a check fails.
    pencils: u32,
    /// Every check.
    checks: Vec<CheckLine>,
    /// The heads of the line, in the order of the work.
    heads: Vec<HeadLine>,
    /// What is common to the heads.
    cut: CutPart,
    /// How the machines are set; `null` where a knife cannot be made.
    setting: Option<SettingPart>,
    /// Why a knife cannot be made; empty where all can.
    without_setting: Vec<String>,
    /// What the run takes; `null` where it is not told or a check of the layout fails.
    run: Option<RunPart>,
    /// Why nothing is told of the run; empty where it is.
    without_run: Vec<Finding>,
    /// What cutter sets make and save; `null` where it is not told.
    cutters: Option<CuttersPart>,
    /// Why nothing is told of cutter sets; empty where it is.
    without_cutters: Vec<Finding>,
    /// The files that were asked for.
    files: Vec<FileLine>,
}

/// A head of the line.
#[derive(Debug, Serialize, JsonSchema)]
struct HeadLine {
    /// Which one.
    head: HeadWord,
    /// Diameter of the cutting circle at the deepest cut, mm.
    diameter_mm: f64,
    /// Angle between the face of a knife and the radius to its farthest point, degrees.
    hook_degrees: f64,
    /// Knives that cut.
    knives: u32,
    /// Turns in a minute.
    speed_per_minute: f64,
    /// The greatest turns in a minute that are marked on it.
    marked_speed_per_minute: f64,
    /// Speed of the farthest point of the edge, m/s.
    rim_metres_per_second: f64,
    /// The marks it leaves at the feed; `null` where it leaves wood uncut, or no machine can be set.
    marks: Option<MarksPart>,
}

/// What is common to the heads.
#[derive(Debug, Serialize, JsonSchema)]
struct CutPart {
    /// How fast the wood is fed, m/min.
    feed_metres_per_minute: f64,
    /// How far each shaping knife cuts past the line where pencils part, mm.
    overcut_mm: f64,
    /// Lean of the sides of the overcut from upright, degrees.
    overcut_draft_degrees: f64,
}

/// The marks of a head along the wood.
#[derive(Debug, Serialize, JsonSchema)]
struct MarksPart {
    /// Distance between two marks, mm.
    pitch_mm: f64,
    /// Height of the waves, mm.
    wave_mm: f64,
    /// Marks in an inch.
    per_inch: f64,
}

/// How the machines are set.
#[derive(Debug, Serialize, JsonSchema)]
struct SettingPart {
    /// The grooves from the datum edge.
    grooves: Vec<GrooveLine>,
    /// Distance between neighbouring groove centres, mm.
    pitch_mm: f64,
    /// Radius of the grooves, mm.
    groove_radius_mm: f64,
    /// Moisture content for which the sizes hold.
    moisture_percent: f64,
    /// The slat above the glue plane, as it is asked for at the machine.
    top: SlatPart,
    /// The slat below the glue plane, as it is asked for at the machine.
    bottom: SlatPart,
    /// Thickness of the sandwich as glued, mm.
    glued_mm: f64,
    /// Thickness of the sandwich as planed, the height of a pencil, mm.
    planed_mm: f64,
    /// How high each knife stands, in the order of the work.
    heights: Vec<HeightLine>,
    /// The knives, in the order of the work.
    knives: Vec<KnifeLine>,
    /// What to mind, the plainest first.
    cautions: Vec<String>,
}

/// A slat as it is asked for at the machine.
#[derive(Debug, Serialize, JsonSchema)]
struct SlatPart {
    /// Nominal width, mm.
    width_mm: f64,
    /// The least width that was reckoned with, mm.
    least_width_mm: f64,
    /// Nominal thickness, mm.
    thickness_mm: f64,
    /// The least thickness that was reckoned with, mm.
    least_thickness_mm: f64,
    /// Depth of the grooves from the glue plane, mm; 0 where no groove reaches this slat.
    groove_depth_mm: f64,
    /// Wood left under a groove, mm.
    floor_mm: f64,
}

/// How high a knife stands above the table.
#[derive(Debug, Serialize, JsonSchema)]
struct HeightLine {
    /// The knife.
    knife: KnifeWord,
    /// The point of its edge that is farthest from the axis of its head, mm.
    tip_mm: f64,
    /// The surface that it leaves nearest to that axis, mm.
    surface_mm: f64,
    /// The axis of its head, mm; below 0 it lies under the table.
    axis_mm: f64,
}

/// A file that was asked for.
#[derive(Debug, Serialize, JsonSchema)]
struct FileLine {
    /// Where it lies.
    file: String,
    /// Why it was not written; `null` where it was.
    problem: Option<String>,
}

impl From<&SetUp<'_>> for SettingDocument {
    fn from(sheet: &SetUp<'_>) -> Self {
        let laid = &sheet.laid;
        let draft = laid.draft;
        let slat = |at: usize| Named::of(&draft.slats[at], |slat| &slat.name);
        let problems = sheet.setting.as_ref().err();
        Self {
            format: "slatwright-setting",
            version: VERSION,
            project: draft.name.clone(),
            barrel: Named::of(&draft.barrels[laid.barrel], |barrel| &barrel.name),
            top: slat(laid.top),
            bottom: slat(laid.bottom),
            way: draft.layout_way().into(),
            turn_degrees: laid.turn.in_degrees(),
            cutter_set: laid.cutter_set.clone(),
            fits: laid.layout.fits(),
            pencils: laid.layout.pencils(),
            checks: laid.layout.checks().iter().map(CheckLine::from).collect(),
            heads: HeadKind::ALL.map(|kind| HeadLine::of(kind, sheet)).into(),
            cut: CutPart {
                feed_metres_per_minute: sheet.cut.feed(),
                overcut_mm: sheet.cut.overcut().in_millimetres(),
                overcut_draft_degrees: sheet.cut.draft().in_degrees(),
            },
            setting: sheet.setting.as_ref().ok().map(SettingPart::from),
            without_setting: (problems.into_iter().flatten())
                .map(|problem| problem.message(LengthUnit::Millimetre))
                .collect(),
            run: (sheet.run.as_ref().ok())
                .and_then(Option::as_ref)
                .map(RunPart::from),
            without_run: findings(sheet.run.as_ref().err()),
            cutters: (sheet.cutters.as_ref().ok()).map(|plan| CuttersPart::of(draft, plan)),
            without_cutters: findings(sheet.cutters.as_ref().err()),
            files: sheet.files.iter().map(FileLine::from).collect(),
        }
    }
}

fn findings(found: Option<&Vec<Told>>) -> Vec<Finding> {
    found.into_iter().flatten().map(Finding::from).collect()
}

impl HeadLine {
    fn of(kind: HeadKind, sheet: &SetUp<'_>) -> Self {
        let head = &sheet.heads[kind as usize];
        let setting = sheet.setting.as_ref().ok();
        let marks = setting.and_then(|setting| setting.marks[kind as usize].ok());
        Self {
            head: kind.into(),
            diameter_mm: head.diameter().in_millimetres(),
            hook_degrees: head.hook().in_degrees(),
            knives: head.knives(),
            speed_per_minute: head.speed(),
            marked_speed_per_minute: head.marked(),
            rim_metres_per_second: head.rim_speed(),
            marks: marks.map(|marks| MarksPart {
                pitch_mm: marks.pitch.in_millimetres(),
                wave_mm: marks.wave.in_millimetres(),
                per_inch: marks.per_inch,
            }),
        }
    }
}

impl From<&Setting> for SettingPart {
    fn from(setting: &Setting) -> Self {
        Self {
            grooves: setting.grooves.iter().map(GrooveLine::from).collect(),
            pitch_mm: setting.pitch.in_millimetres(),
            groove_radius_mm: setting.groove_radius.in_millimetres(),
            moisture_percent: setting.moisture,
            top: (&setting.top).into(),
            bottom: (&setting.bottom).into(),
            glued_mm: setting.glued.in_millimetres(),
            planed_mm: setting.planed.in_millimetres(),
            heights: setting.heights.iter().map(HeightLine::from).collect(),
            knives: setting.knives.iter().map(KnifeLine::from).collect(),
            cautions: setting
                .cautions
                .iter()
                .map(|caution| caution.text())
                .collect(),
        }
    }
}

impl From<&SlatSetting> for SlatPart {
    fn from(slat: &SlatSetting) -> Self {
        Self {
            width_mm: slat.width.in_millimetres(),
            least_width_mm: slat.least_width.in_millimetres(),
            thickness_mm: slat.thickness.in_millimetres(),
            least_thickness_mm: slat.least_thickness.in_millimetres(),
            groove_depth_mm: slat.groove_depth.in_millimetres(),
            floor_mm: slat.floor.in_millimetres(),
        }
    }
}

impl From<&KnifeHeight> for HeightLine {
    fn from(height: &KnifeHeight) -> Self {
        Self {
            knife: height.blade.into(),
            tip_mm: height.tip.in_millimetres(),
            surface_mm: height.surface.in_millimetres(),
            axis_mm: height.axis.in_millimetres(),
        }
    }
}

impl From<&Written> for FileLine {
    fn from(written: &Written) -> Self {
        let problem = written.outcome.as_ref().err();
        Self {
            file: written.file.display().to_string(),
            problem: problem.map(|problem| problem.message(LengthUnit::Millimetre)),
        }
    }
}
