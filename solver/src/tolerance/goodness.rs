//! The chance that nothing is wrong with a pencil, by its place in the row.
//!
//! It is told for walls that hold wherever the lead is within the eccentricity limit, as they do in
//! every layout that keeps its wall check. Then a pencil is good where its lead is centred and goes
//! in, and where it is complete, which only the outer ones may fail. With S = s + X the place of the
//! pencil, M the middle of its grooves without the shift h of the slats, e_x = M + h/2 − S. Given h
//! and S these three are independent, for the two grooves' middle and distance are, so
//!
//! P = ∫∫ φ(h)·φ(S)·P(lead goes in | h)·P(√((M + h/2 − S)² + e_y²) ≤ R)·P(complete | h, S) dS dh,
//!
//! of which the first chance depends on h alone and the second on h/2 − S alone. Both are costly, and
//! kept as [`Table`]s. A pencil is complete at the datum edge where S ≥ max(0, h) − a, and at the far
//! one where S ≤ W_b and S ≤ W_t + h, with the wood a, W_b and W_t that is left outside it on average.
//!
//! The expected number of good pencils of a row is the sum of these chances, whatever their faults
//! have in common: expectation is linear.

use super::chance::within_circle;
use super::normal::{Bend, Normal};
use super::scale::{Scale, norm};
use super::table::Table;
use crate::accuracy::Accuracy;
use crate::barrel::Barrel;
use crate::quantity::Length;
use crate::rules::Rules;
use std::cell::OnceCell;

const SLACK: f64 = Length::SLACK.in_millimetres();

/// Chances of pencils of one barrel made with one accuracy.
#[derive(Debug, Clone)]
pub(crate) struct Goodness {
    scale: Scale,
    /// Diameter of the whole groove, mm.
    groove: f64,
    /// Mean diameter of the lead, mm.
    lead: f64,
    /// The eccentricity limit, mm.
    limit: f64,
    inside: OnceCell<f64>,
    tables: OnceCell<Tables>,
}

/// Wood outside the outer pencils where every error is at its mean, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Edges {
    /// Outside the first pencil, at the datum edge.
    pub(crate) datum: f64,
    /// Outside the last pencil, on the bottom slat.
    pub(crate) bottom: f64,
    /// Outside the last pencil, on the top slat.
    pub(crate) top: f64,
}

/// Where a pencil lies in its row; a single one is first and last.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Position {
    pub(crate) first: bool,
    pub(crate) last: bool,
}

#[derive(Debug, Clone)]
struct Tables {
    /// That the lead goes in, by the size of h.
    admitted: Table,
    /// That it is centred, by the size of h/2 − S.
    centred: Table,
    /// Ends of `centred` that an integral is parted at.
    parted: Vec<f64>,
}

/// Steps from a place where a normal chance changes, in deviations, between which the rule of 16
/// points keeps about ten digits.
const STEPS: [f64; 5] = [-6.0, -2.0, 0.0, 2.0, 6.0];

/// The places at such steps round some places, each with a width.
fn around(places: &[(f64, f64)]) -> Vec<f64> {
    let mut breaks = Vec::with_capacity(places.len() * STEPS.len());
    for (place, width) in places {
        for step in STEPS {
            breaks.push(place + step * width);
        }
    }
    breaks
}

impl Goodness {
    pub(super) const fn new(scale: Scale, groove: f64, lead: f64, limit: f64) -> Self {
        Self {
            scale,
            groove,
            lead,
            limit,
            inside: OnceCell::new(),
            tables: OnceCell::new(),
        }
    }

    /// Those of a barrel made by the rules.
    pub(crate) fn of(barrel: &Barrel, rules: &Rules, accuracy: &Accuracy) -> Self {
        let lead = barrel.lead_diameter();
        let groove = lead + rules.clearance * 2.0;
        Self::new(
            Scale::new(accuracy),
            groove.in_millimetres(),
            lead.in_millimetres(),
            rules.eccentricity.in_millimetres(),
        )
    }

    /// Expected good pencils of a row, with an error below 1e-8.
    pub(crate) fn of_row(&self, count: u32, edges: Edges) -> f64 {
        outer(count)
            .map(|position| self.at(position, edges))
            .fold(self.inner_ones(count), |sum, chance| sum + chance)
    }

    /// What [`Self::of_row`] is at least and at most, told without integrals over the edges.
    pub(crate) fn bounds_of_row(&self, count: u32, edges: Edges) -> (f64, f64) {
        let inner = self.inner_ones(count);
        outer(count).fold((inner, inner), |(least, most), position| {
            let (low, high) = self.bounds(position, edges);
            (least + low, most + high)
        })
    }

    fn inner_ones(&self, count: u32) -> f64 {
        f64::from(count.saturating_sub(2)) * self.inside()
    }

    /// The chance of a good pencil at a position, with an error below 1e-9.
    pub(crate) fn at(&self, position: Position, edges: Edges) -> f64 {
        /// Where no more is open it is not asked for.
        const OPEN: f64 = 1e-10;
        let (least, most) = self.bounds(position, edges);
        if most - least < OPEN {
            return most;
        }
        self.integral(position, edges).max(least).min(most)
    }

    /// A pencil is good no more often than one inside, nor than it keeps clear of one edge of one
    /// slat; and it is lost no more often than one inside and at each edge taken together.
    fn bounds(&self, position: Position, edges: Edges) -> (f64, f64) {
        let Scale { shift, width, .. } = self.scale;
        let place = self.place().deviation;
        let over = |used: bool, left: f64, parts: [f64; 2]| {
            if used {
                Normal::new(0.0, norm([place, parts[0], parts[1]])).exceeds(left)
            } else {
                0.0
            }
        };
        let Position { first, last } = position;
        let lost = [
            over(first, edges.datum, [0.0, 0.0]),
            over(first, edges.datum, [shift, 0.0]),
            over(last, edges.bottom, [width, 0.0]),
            over(last, edges.top, [width, shift]),
        ];
        let inside = self.inside();
        let most = lost.iter().fold(inside, |most, lost| most.min(1.0 - lost));
        let least = inside - lost.iter().sum::<f64>();
        (least.max(0.0), most)
    }

    /// S = s + X.
    fn place(&self) -> Normal {
        Normal::new(0.0, norm([self.scale.cutter, self.scale.shaping, 0.0]))
    }

    /// The deviation of M = (g_b + g_t)/2 + (f_b + f_t)/2.
    fn middle(&self) -> f64 {
        norm([self.scale.grooves_apart / 2.0, self.scale.heads_middle, 0.0])
    }

    fn integral(&self, position: Position, edges: Edges) -> f64 {
        let Position { first, last } = position;
        let Edges { datum, bottom, top } = edges;
        let Tables {
            admitted,
            centred,
            parted,
        } = self.tables();
        let (place, width) = (self.place(), self.scale.width);
        let apart = norm([self.apart(), self.scale.lead, 0.0]);
        let room = self.groove - self.lead;
        let blurred = norm([place.deviation, self.middle(), 0.0]);
        // What is certain is held against a limit like any other size, rounding forgiven.
        let slack = if place.deviation > 0.0 { 0.0 } else { SLACK };
        let far = norm([place.deviation, width, 0.0]);
        let mut breaks = around(&[
            (room, apart),
            (-room, apart),
            (2.0 * self.limit, 2.0 * blurred),
            (-2.0 * self.limit, 2.0 * blurred),
            (datum, place.deviation),
            (-top, far),
        ]);
        breaks.extend([bottom - top, bottom + datum, -datum - top]);
        self.shift().expected_between(breaks, &mut |h| {
            let goes_in = admitted.at(h.abs());
            if goes_in < 1e-15 {
                return 0.0;
            }
            let least = if first {
                h.max(0.0) - datum - slack
            } else {
                f64::NEG_INFINITY
            };
            let over = [bottom, top + h].map(|mean| Normal::new(mean, width));
            let mut breaks = if last {
                around(&over.map(|over| (over.mean, width)))
            } else {
                Vec::new()
            };
            breaks.push(least);
            for end in parted {
                breaks.extend([h / 2.0 - end, h / 2.0 + end]);
            }
            let lies_well = place.expected_between(breaks, &mut |s| {
                if s < least {
                    return 0.0;
                }
                let complete = if last {
                    over[0].at_least(s) * over[1].at_least(s)
                } else {
                    1.0
                };
                complete * centred.at((h / 2.0 - s).abs())
            });
            goes_in * lies_well
        })
    }

    fn tables(&self) -> &Tables {
        self.tables.get_or_init(|| {
            let centred = self.centred();
            // Twice as far apart as the ends of a table is enough for an integral.
            let mut parted = centred.ends().to_vec();
            let least = 3.0 * self.middle();
            parted.dedup_by(|next, kept| *next <= *kept + least);
            Tables {
                admitted: self.admitted(),
                centred,
                parted,
            }
        })
    }

    fn admitted(&self) -> Table {
        let (apart, depths) = (self.apart(), self.scale.depths);
        let blurred = norm([apart, self.scale.lead, 0.0]);
        let room = self.groove - self.lead;
        let mut ends = vec![0.0, 2.0 * depths, 6.0 * depths];
        ends.extend((-4..4).map(|step| room + f64::from(2 * step) * blurred));
        let last = room.max(0.0) + 8.0 * blurred + SLACK;
        ends.retain(|end| (0.0..last).contains(end));
        ends.push(last);
        Table::new(ends, apart, |h| self.lead_goes_in(h, 0.0))
    }

    fn centred(&self) -> Table {
        /// Halvings of what is left to the limit, near which a half chord has a root.
        const HALVINGS: i32 = 20;
        let (middle, upright) = (self.middle(), self.scale.upright);
        let limit = self.limit + SLACK;
        let mut ends: Vec<f64> = (0..HALVINGS)
            .map(|k| limit * (1.0 - 1.0 / f64::from(1_u32 << k)))
            .collect();
        let heights = [-8.0, -4.0, -2.0, 0.0, 2.0, 4.0, 8.0]
            .map(|step| upright.mean.abs() + step * upright.deviation);
        let chords = heights
            .into_iter()
            .filter(|height| (0.0..limit).contains(height))
            .map(|height| ((limit - height) * (limit + height)).sqrt());
        ends.extend(chords);
        ends.extend((-4..4).map(|step| limit + f64::from(2 * step) * middle));
        let last = limit + 8.0 * middle;
        ends.retain(|end| (0.0..last).contains(end));
        ends.push(last);
        Table::new(ends, middle, |off| {
            within_circle(Normal::new(off, middle), upright, self.limit)
        })
    }

    fn shift(&self) -> Normal {
        Normal::new(0.0, self.scale.shift)
    }

    /// The deviation of x_t − x_b without the shift h of the slats.
    fn apart(&self) -> f64 {
        self.scale.apart_without_shift().deviation
    }

    /// The chance of a pencil that is complete for certain: given the shift of the slats, the lead's
    /// place and its going in are independent.
    pub(crate) fn inside(&self) -> f64 {
        *self.inside.get_or_init(|| {
            let scale = &self.scale;
            let without = scale.across_without_shift();
            let sideways = self.groove - self.lead;
            let apart = norm([self.apart(), scale.lead, 0.0]);
            let bends = [
                (sideways, apart),
                (-sideways, apart),
                (2.0 * self.limit, 2.0 * without.deviation),
                (-2.0 * self.limit, 2.0 * without.deviation),
            ];
            let bends = bends.map(|(place, width)| Bend { place, width });
            self.shift().expected(&bends, |h| {
                let goes_in = self.lead_goes_in(h, 0.0);
                let across = Normal::new(h / 2.0, without.deviation);
                if goes_in > 0.0 {
                    goes_in * within_circle(across, scale.upright, self.limit)
                } else {
                    0.0
                }
            })
        })
    }

    /// The chance that the lead goes in, whatever the shift of the slats.
    pub(super) fn goes_in(&self) -> f64 {
        self.lead_goes_in(0.0, self.scale.shift)
    }

    /// The chance that the lead goes in, for a known part of the shift u and a deviation of the
    /// unknown part of h: the expected value over the lead of the chances sideways and upright.
    fn lead_goes_in(&self, known: f64, shift: f64) -> f64 {
        let scale = &self.scale;
        let sideways = self.groove - self.lead;
        let (apart, depths) = (
            Normal::new(known, norm([self.apart(), shift, 0.0])),
            Normal::new(0.0, scale.depths),
        );
        let bends = [
            (sideways - known.abs(), apart.deviation),
            (sideways + known.abs(), apart.deviation),
            (sideways, depths.deviation),
        ];
        let bends = bends.map(|(place, width)| Bend { place, width });
        Normal::new(0.0, scale.lead).expected(&bends, |lead| {
            let room = sideways - lead;
            if room < -SLACK {
                0.0
            } else {
                apart.between(-room, room) * depths.at_least(-room)
            }
        })
    }
}

/// The outer positions of a row of so many.
fn outer(count: u32) -> impl Iterator<Item = Position> {
    let position = |first, last| Position { first, last };
    let outer = match count {
        0 => [None, None],
        1 => [Some(position(true, true)), None],
        _ => [Some(position(true, false)), Some(position(false, true))],
    };
    outer.into_iter().flatten()
}
