//! What a run takes.

use super::stage::pieces_for;
use super::{LeadGrade, Run, Stage, StageCount};
use crate::layout::{Layout, Setup, WoodBalance, WoodClass};
use crate::quantity::{Area, Length, Volume};
use crate::ranking::GROSS;
use crate::wood::{Conditions, density};

/// What a run of good pencils takes.
#[derive(Debug, Clone, PartialEq)]
pub struct RunNeeds {
    /// Good pencils wanted.
    pub pencils: u64,
    /// What each stage takes in and must let through, in the order of the work.
    pub stages: [StageCount; 5],
    /// Sandwiches that are glued.
    pub sandwiches: u64,
    /// Leads.
    pub leads: LeadNeeds,
    /// Glue.
    pub glue: GlueNeeds,
    /// Clamps.
    pub clamp: ClampNeeds,
    /// Coat.
    pub coat: CoatNeeds,
    /// Wood and chips.
    pub wood: WoodNeeds,
}

/// The leads of a run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LeadNeeds {
    /// The grade.
    pub grade: LeadGrade,
    /// Nominal diameter.
    pub diameter: Length,
    /// How far the diameter may lie from it, either way.
    pub tolerance: Length,
    /// Length of one.
    pub length: Length,
    /// Leads that are laid in grooves.
    pub laid: u64,
    /// Leads that are bought, with those that break.
    pub bought: u64,
    /// Mass of a gross of leads, g.
    pub gross_mass: f64,
    /// Mass of those bought, kg.
    pub mass: f64,
}

/// The glue of a run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GlueNeeds {
    /// Glue line of one sandwich: the whole face that both slats share.
    pub area: Area,
    /// Glue of one sandwich, g.
    pub sandwich: f64,
    /// Glue of the run, kg.
    pub mass: f64,
}

/// The clamps of a run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClampNeeds {
    /// Force on one sandwich, and on a stack of them, which all bear the same, kN.
    pub force: f64,
    /// Loads, the last one not full.
    pub loads: u64,
    /// Hours that one clamp needs for all loads, one after the other.
    pub hours: f64,
}

/// The coat of a run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoatNeeds {
    /// Build of one pass, per side.
    pub pass: Length,
    /// Liquid coat of a gross, litres.
    pub gross: f64,
    /// Liquid coat of the run, litres.
    pub litres: f64,
}

/// Wood and chips of a run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WoodNeeds {
    /// Density at the moisture content of grooving, kg/m³.
    pub density: f64,
    /// Slats that are grooved.
    pub slats: u64,
    /// Mass of these slats, kg.
    pub mass: f64,
    /// Chips of grooving, planing, shaping, parting and sawing, as solid wood.
    pub chips: Volume,
    /// Mass of these chips, kg.
    pub chip_mass: f64,
    /// Edge strips and end trim, as solid wood.
    pub strips: Volume,
    /// Mass of these strips, kg.
    pub strip_mass: f64,
}

/// What a run of a layout takes; nothing where a check of the layout fails, as no pencil comes of it.
///
/// Counted back from the pencils wanted, each stage takes so many pieces, rounded up, that those
/// needed are left; sandwiches are whole. The yields of the stages stand in the place of the shares
/// of slats and pencils thrown out that the rules name. With k pencils of one sandwich:
///
/// - leads: one a pencil of each sandwich glued, over 1 − breakage; mass π/4·d²·length·density;
/// - glue: spread × area, of the face that the slats share; clamp force: pressure × area;
/// - coat: (section over the coat − section of the wood) × length / solids, which is perimeter ×
///   length × build / solids but for the corners; the passes share the build;
/// - chips: groove chips of every slat grooved, and what shaping turns to chips of every sandwich
///   shaped; mass by [`density`](crate::wood::density).
///
/// ```
/// use solver::{BarrelDraft, Conditions, RulesDraft, RunDraft, Seam, Setup, Shape, SlatDraft, lay_out, run_needs};
/// let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
/// let slat = SlatDraft::new("74 × 5").check().unwrap();
/// let rules = RulesDraft::new().check().unwrap();
/// let setup = Setup { barrel: &barrel, turn: barrel.turn(Seam::ThroughFaces), top: &slat, bottom: &slat, rules: &rules };
/// let run = RunDraft::new().check().unwrap(); // 100 gross, 99 % at each of five stages
/// let needs = run_needs(&setup, &lay_out(&setup), &run, Conditions { moisture: 8.0 }).unwrap();
/// // 14 400 → 14 546 → 14 693 → 14 842 pencils, 1 485 sandwiches of ten, 1 500 of them glued.
/// assert_eq!(needs.sandwiches, 1_500);
/// ```
#[must_use]
pub fn run_needs(
    setup: &Setup<'_>,
    layout: &Layout,
    run: &Run,
    conditions: Conditions,
) -> Option<RunNeeds> {
    let balance = layout.balance()?;
    let each = u64::from(layout.pencils());
    if each == 0 {
        return None;
    }
    let into = |stage: Stage, needed| pieces_for(needed, run.yields[stage as usize]);
    let finished = into(Stage::Finishing, run.pencils);
    let coated = into(Stage::Coating, finished);
    let shaped = into(Stage::Shaping, coated).div_ceil(each);
    let glued = into(Stage::Gluing, shaped);
    // Slats of both sides are grooved and thrown out alike.
    let grooved = 2 * into(Stage::Grooving, glued);
    let count = |stage, taken, needed| StageCount {
        stage,
        taken,
        needed,
    };
    let stages = [
        count(Stage::Grooving, grooved, 2 * glued),
        count(Stage::Gluing, glued, shaped),
        count(Stage::Shaping, shaped * each, coated),
        count(Stage::Coating, coated, finished),
        count(Stage::Finishing, finished, run.pencils),
    ];
    let (area, length) = shared_face(setup);
    let area = area * length;
    let square_metres = area.in_square_millimetres() / 1e6;
    let glue = run.glue_spread * square_metres;
    let loads = glued.div_ceil(run.press_load);
    Some(RunNeeds {
        pencils: run.pencils,
        stages,
        sandwiches: glued,
        leads: leads(setup, run, glued * each),
        glue: GlueNeeds {
            area,
            sandwich: glue,
            mass: glue * glued as f64 / 1000.0,
        },
        clamp: ClampNeeds {
            // 1 MPa is 1 N on a square millimetre.
            force: run.clamp_pressure * area.in_square_millimetres() / 1000.0,
            loads,
            hours: loads as f64 * run.press_hours,
        },
        coat: coat(setup, layout, run, coated),
        wood: wood(setup, balance, run, conditions, (grooved, shaped)),
    })
}

/// Width and length of the face that both slats share.
fn shared_face(setup: &Setup<'_>) -> (Length, Length) {
    let (top, bottom) = (setup.top, setup.bottom);
    (
        top.grooved_width().min(bottom.grooved_width()),
        top.length().min(bottom.length()),
    )
}

fn leads(setup: &Setup<'_>, run: &Run, laid: u64) -> LeadNeeds {
    let (diameter, length) = (setup.barrel.lead_diameter(), setup.barrel.length());
    let section = diameter * diameter * (std::f64::consts::PI / 4.0);
    // A cubic centimetre is a thousand cubic millimetres.
    let each = (section * length).in_cubic_millimetres() / 1000.0 * run.lead_density;
    let bought = pieces_for(laid, 1.0 - run.lead_breakage);
    LeadNeeds {
        grade: run.grade,
        diameter,
        tolerance: run.lead_tolerance,
        length,
        laid,
        bought,
        gross_mass: each * f64::from(GROSS),
        mass: each * bought as f64 / 1000.0,
    }
}

fn coat(setup: &Setup<'_>, layout: &Layout, run: &Run, pencils: u64) -> CoatNeeds {
    let ring = layout.finished().area() - layout.bare().area();
    let dry = ring * setup.barrel.length();
    // A litre is a million cubic millimetres.
    let each = dry.in_cubic_millimetres() / run.coat_solids / 1e6;
    CoatNeeds {
        pass: setup.barrel.coat() / f64::from(run.coat_passes),
        gross: each * f64::from(GROSS),
        litres: each * pencils as f64,
    }
}

/// Chips of the grooves of both slats, and of all that is turned to chips after gluing.
pub(crate) fn chips_of_sandwich(balance: &WoodBalance) -> (Volume, Volume) {
    let shaping = [
        WoodClass::Corners,
        WoodClass::Parting,
        WoodClass::Faces,
        WoodClass::Kerf,
    ];
    (of(balance, &[WoodClass::Grooves]), of(balance, &shaping))
}

/// The volume of these classes together.
fn of(balance: &WoodBalance, classes: &[WoodClass]) -> Volume {
    classes.iter().map(|class| balance.volume(*class)).sum()
}

fn wood(
    setup: &Setup<'_>,
    balance: &WoodBalance,
    run: &Run,
    conditions: Conditions,
    (grooved, shaped): (u64, u64),
) -> WoodNeeds {
    let density = density(
        run.specific_gravity,
        run.volumetric_shrinkage,
        conditions.moisture,
    );
    // A cubic metre is 1e9 cubic millimetres.
    let mass = |volume: Volume| volume.in_cubic_millimetres() / 1e9 * density;
    let pairs = (grooved / 2) as f64;
    let (groove_chips, shaping_chips) = chips_of_sandwich(balance);
    let chips = groove_chips * pairs + shaping_chips * shaped as f64;
    let strips = of(balance, &[WoodClass::Edges, WoodClass::Ends]) * shaped as f64;
    let slat = [setup.top, setup.bottom]
        .into_iter()
        .map(|slat| slat.grooved_width() * slat.grooved_thickness() * slat.length())
        .sum::<Volume>();
    WoodNeeds {
        density,
        slats: grooved,
        mass: mass(slat) * pairs,
        chips,
        chip_mass: mass(chips),
        strips,
        strip_mass: mass(strips),
    }
}
