//! How heavy a pencil is, and where it balances.

use super::moments::Moments;
use super::pencil::{Densities, FinishedPencil};
use crate::quantity::{Length, Point, Volume};

/// Volume and mass of one material.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mass {
    /// Its volume.
    pub volume: Volume,
    /// Its mass, g.
    pub grams: f64,
}

/// A pencil as a body: as it is made, or sharpened.
///
/// Wood and lead fill the outline under the coat, the lead its nominal diameter; the coat fills what
/// lies between the outlines. Glue in the groove and the build of a dip are not counted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Body {
    /// Wood.
    pub wood: Mass,
    /// Lead.
    pub lead: Mass,
    /// Coat.
    pub coat: Mass,
    /// Mass of all, g.
    pub grams: f64,
    /// Centre of mass from the tip, along the axis.
    pub balance: Length,
    /// Centre of mass in the cross-section, from the lead axis.
    pub centre: Point,
    /// Moment of inertia about the lead axis, g·mm².
    pub inertia: f64,
}

/// The sums of one material, each to be multiplied with its density.
struct Sums {
    volume: f64,
    along: f64,
    beside: Point,
    inertia: f64,
}

impl Sums {
    /// Of an area from z = r·slope to z = L: ∫(L − slope·r) dA, ∫(L² − slope²·r²)/2 dA,
    /// ∫x(L − slope·r) dA and ∫r²(L − slope·r) dA.
    fn new(area: Moments, length: f64, slope: f64) -> Self {
        let beside = |first: f64, distance: f64| first * length - slope * distance;
        Self {
            volume: area.area * length - slope * area.distance,
            along: (area.area * length * length - slope * slope * area.square) / 2.0,
            beside: Point {
                x: beside(area.first.x, area.first_distance.x),
                y: beside(area.first.y, area.first_distance.y),
            },
            inertia: area.square * length - slope * area.cube,
        }
    }
}

impl Body {
    /// The body of a pencil cut by a cone on which z = r·`slope`; a slope of 0 cuts nothing off.
    pub(super) fn new(pencil: &FinishedPencil, slope: f64) -> Self {
        let lead = Moments::of_disc(pencil.lead_radius().in_millimetres());
        let bare = Moments::of_outline(pencil.bare());
        let finished = Moments::of_outline(pencil.finished());
        let length = pencil.barrel().length().in_millimetres();
        let Densities {
            wood,
            lead: of_lead,
            coat,
        } = pencil.densities();
        let [wood, lead, coat] = [
            (bare.without(lead), wood),
            (lead, of_lead),
            (finished.without(bare), coat),
        ]
        // A gram in a cubic centimetre is a thousandth of a gram in a cubic millimetre.
        .map(|(area, density)| (Sums::new(area, length, slope), density / 1000.0));
        let all = [&wood, &lead, &coat];
        let total = |value: fn(&Sums) -> f64| -> f64 {
            all.iter()
                .map(|(sums, density)| value(sums) * density)
                .sum()
        };
        let grams = total(|sums| sums.volume);
        let mass = |(sums, density): &(Sums, f64)| Mass {
            volume: Volume::cubic_millimetres(sums.volume),
            grams: sums.volume * density,
        };
        Self {
            wood: mass(&wood),
            lead: mass(&lead),
            coat: mass(&coat),
            grams,
            balance: Length::millimetres(total(|sums| sums.along) / grams),
            centre: Point {
                x: total(|sums| sums.beside.x) / grams,
                y: total(|sums| sums.beside.y) / grams,
            },
            inertia: total(|sums| sums.inertia),
        }
    }
}
