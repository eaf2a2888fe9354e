//! The nearest change of a barrel that gains a pencil, or keeps the count on a cheaper stock.

use super::Input;
use super::search::{Laid, Search};
use crate::field::{Field, Place, Problem, Typed};
use crate::outline::Snap;
use crate::project::{ProjectDraft, Way};
use crate::quantity::Length;
use crate::sequence::in_order;
use crate::unit::LengthUnit;

/// How far a designer lets the sizes of the barrel move, either way; nothing where one is to stay.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GainLimits {
    /// The size that defines the outline, over the coat.
    pub size: Length,
    /// The radius of its corners, over the coat.
    pub corner: Length,
    /// The coat.
    pub coat: Length,
}

/// What is gained.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum GainKind {
    /// More pencils from a sandwich of a stock.
    MorePencils,
    /// As many pencils as today from a stock whose slats cost less.
    CheaperStock,
}

/// What is known of how near a change is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum GainProof {
    /// No smaller change of this size alone will do, to 1e-7 mm, as thresholds are found.
    Smallest,
    /// Of a free outline's width or coat: the first that lasts for more than a two-hundredth of the
    /// limit.
    SmallestOfSteps,
    /// Two sizes together: the second was tried in [`PAIR_STEPS`] equal steps of its limit either way,
    /// and the first is the smallest that will do with it. A nearer pair may lie between the steps.
    Tried,
}

/// The steps of the limit, either way, in which the second of two sizes is tried.
pub const PAIR_STEPS: u32 = 10;

/// A size of the barrel that is changed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GainStep {
    /// The size.
    pub field: Field,
    /// What stands there today, mm.
    pub from: f64,
    /// What is to stand there, mm.
    pub to: f64,
}

/// A change of the barrel, and what it brings.
#[derive(Debug, Clone, PartialEq)]
pub struct Gain {
    /// What is gained.
    pub kind: GainKind,
    /// The stock on which it is, by its place in the list of the project.
    pub slat: usize,
    /// The way round.
    pub way: Way,
    /// One size, or two together.
    pub steps: Vec<GainStep>,
    /// How far it is from today: the shares of their limits that the steps take, added.
    pub distance: f64,
    /// Pencils from a sandwich today: of that stock, or of the stock that a cheaper one stands in for.
    pub pencils_before: u32,
    /// Pencils from a sandwich of that stock after the change.
    pub pencils_after: u32,
    /// Price of the slats of a gross today, in hundredths of the currency; nothing where none is made.
    pub price_before: Option<f64>,
    /// Price of the slats of a gross after the change.
    pub price_after: Option<f64>,
    /// What is known of how near it is.
    pub proof: GainProof,
}

/// A count that is asked of a stock.
struct Target {
    kind: GainKind,
    slat: usize,
    across: u32,
    pencils_before: u32,
    price_before: Option<f64>,
}

/// What a stock gives today, at its best way round.
struct Today {
    across: u32,
    pencils: u32,
    price: Option<f64>,
}

/// The nearest changes of the barrel of the layout, within limits, that gain one more pencil on a
/// stock, or as many as today's stock gives on one whose slats cost less: for each the nearest of one
/// size alone, and only where none will do, of two together. The nearest comes first.
///
/// Every way round in common use is tried, both slats of the one stock. With a size x of today's value
/// x₀ and limit L the distance of a change is |x − x₀|/L, summed over its sizes.
///
/// Of one size the answer is exact, as the [`thresholds`](super::thresholds) are: at least so many lie
/// side by side, the barrel can be made, and each check passes on one side of a single value, or
/// between known places where they can turn back, so that all of them hold together over an interval
/// whose nearer end is found by bisection. Two sizes are tried, not proved. Each answer is laid out
/// once more before it is told.
///
/// `each` hears how many stocks are done, and of how many.
///
/// # Errors
/// What stands in the way of the layout of today, as [`ProjectDraft::check_layout`].
pub fn nearest_gains(
    project: &ProjectDraft,
    limits: &GainLimits,
    each: &mut dyn FnMut(u32, u32),
) -> Result<Vec<Gain>, Vec<Problem>> {
    let today = Laid::new(project.check_layout()?);
    let shape = today.parts().barrel.shape();
    let Some(barrel) = project.barrel_place(project.layout.barrel) else {
        return Ok(Vec::new());
    };
    let mut sizes = vec![
        (shape.size_field(), limits.size),
        (Field::Coat, limits.coat),
    ];
    if shape.has_corners() {
        sizes.insert(1, (Field::CornerRadius, limits.corner));
    }
    sizes.retain(|(_, limit)| *limit > Length::SLACK);
    let ways: Vec<Way> = shape.seams().iter().map(|seam| Way::Usual(*seam)).collect();
    let mut laying = Laying {
        draft: project.clone(),
        barrel,
        ways,
        is_free: shape == crate::shape::Shape::Free,
    };
    let stocks: Vec<Option<Today>> = (0..project.slats.len())
        .map(|slat| laying.today(slat))
        .collect();
    let reference = project.slat_place(project.layout.bottom);
    let mut gains = Vec::new();
    let of = project.slats.len() as u32;
    for slat in 0..project.slats.len() {
        for target in targets(project, &stocks, reference, slat) {
            let mut found: Vec<Gain> = Vec::new();
            for size in &sizes {
                found.extend(laying.nearest(&target, *size));
            }
            if found.is_empty() {
                for (at, first) in sizes.iter().enumerate() {
                    for second in &sizes[at + 1..] {
                        found.extend(laying.nearest_pair(&target, *first, *second));
                    }
                }
            }
            let nearest = in_order(found, |one, other| one.distance.total_cmp(&other.distance));
            gains.extend(nearest.into_iter().next());
        }
        each(slat as u32 + 1, of);
    }
    Ok(in_order(gains, |one, other| {
        one.distance.total_cmp(&other.distance)
    }))
}

/// What is asked of a stock: one more than it gives, and as many as today's where it costs less.
fn targets(
    project: &ProjectDraft,
    stocks: &[Option<Today>],
    reference: Option<usize>,
    slat: usize,
) -> Vec<Target> {
    let Some(today) = stocks.get(slat).and_then(Option::as_ref) else {
        return Vec::new();
    };
    let mut targets = vec![Target {
        kind: GainKind::MorePencils,
        slat,
        across: today.across + 1,
        pencils_before: today.pencils,
        price_before: today.price,
    }];
    let price = |slat: usize| {
        let slat = project.check_slat(slat).ok()?;
        Some(slat.supply().slat_price())
    };
    if let Some(reference) = reference
        && let Some(other) = stocks.get(reference).and_then(Option::as_ref)
        && let (Some(here), Some(there)) = (price(slat), price(reference))
        && here < there
        && today.across < other.across
    {
        targets.push(Target {
            kind: GainKind::CheaperStock,
            slat,
            across: other.across,
            pencils_before: other.pencils,
            price_before: other.price,
        });
    }
    targets
}

/// The barrel laid on one stock after the other.
struct Laying {
    draft: ProjectDraft,
    barrel: usize,
    ways: Vec<Way>,
    is_free: bool,
}

impl Laying {
    fn put(&mut self, slat: usize, way: Way) {
        let id = self.draft.slats[slat].id;
        self.draft.layout.top = id;
        self.draft.layout.bottom = id;
        self.draft.layout.way = way;
    }

    fn laid(&self) -> Option<Laid> {
        self.draft.check_layout().ok().map(Laid::new)
    }

    /// What a stock gives today; nothing where it cannot be laid on.
    fn today(&mut self, slat: usize) -> Option<Today> {
        let mut best: Option<Today> = None;
        for way in self.ways.clone() {
            self.put(slat, way);
            let laid = self.laid()?;
            let pencils = laid.layout().pencils();
            let across = if pencils > 0 {
                laid.layout().across()
            } else {
                0
            };
            if best.as_ref().is_none_or(|best| across > best.across) {
                let price = laid.price_of_gross();
                best = Some(Today {
                    across,
                    pencils,
                    price,
                });
            }
        }
        best
    }

    /// The nearest change of one size that gives a stock so many, at any way round.
    fn nearest(&mut self, target: &Target, (field, limit): (Field, Length)) -> Option<Gain> {
        let (from, found) = self.search(target, field, limit)?;
        let (way, at, laid) = found;
        let steps = vec![GainStep {
            field,
            from,
            to: at,
        }];
        let drawn = self.is_free && matches!(field, Field::BarrelWidth | Field::Coat);
        let proof = if drawn {
            GainProof::SmallestOfSteps
        } else {
            GainProof::Smallest
        };
        let distance = (at - from).abs() / limit.in_millimetres();
        Some(target.gain(way, steps, distance, &laid, proof))
    }

    /// The nearest change of two sizes that gives a stock so many: the second in steps of its limit.
    fn nearest_pair(
        &mut self,
        target: &Target,
        (first, reach): (Field, Length),
        (second, limit): (Field, Length),
    ) -> Option<Gain> {
        let from = self.number(second)?;
        let mut best: Option<Gain> = None;
        let steps = PAIR_STEPS as i32;
        let coarse = Snap {
            unit: LengthUnit::Millimetre,
            fine: true,
            reach: 0.0,
        };
        for step in (-steps..=steps).filter(|step| *step != 0) {
            let share = f64::from(step) / f64::from(steps);
            let value = coarse.on_grid(from + limit.in_millimetres() * share);
            let spec = second.spec();
            let beside = (value - from).abs() / limit.in_millimetres();
            let is_new = value >= spec.least && value <= spec.most && beside > 0.0;
            // No pair that takes more than the best one so far is nearer.
            if !is_new || best.as_ref().is_some_and(|best| best.distance <= beside) {
                continue;
            }
            self.put_number(second, value);
            let found = self.search(target, first, reach);
            self.put_number(second, from);
            let Some((today, (way, at, laid))) = found else {
                continue;
            };
            let distance = beside + (at - today).abs() / reach.in_millimetres();
            if best.as_ref().is_none_or(|best| distance < best.distance) {
                let steps = [(first, today, at), (second, from, value)];
                let steps = steps.map(|(field, from, to)| GainStep { field, from, to });
                best = Some(target.gain(way, steps.to_vec(), distance, &laid, GainProof::Tried));
            }
        }
        best
    }

    /// What stands in a size today, and the nearest value of it within a limit that gives a stock so
    /// many, with the way round and what is laid there.
    fn search(
        &mut self,
        target: &Target,
        field: Field,
        limit: Length,
    ) -> Option<(f64, (Way, f64, Laid))> {
        let input = Input {
            place: Place::Barrel(self.barrel),
            field,
        };
        let today = self.number(field)?;
        let spec = field.spec();
        let reach = limit.in_millimetres();
        let bounds = [
            (today - reach).max(spec.least),
            (today + reach).min(spec.most),
        ];
        let mut best: Option<(Way, f64, Laid)> = None;
        for way in self.ways.clone() {
            self.put(target.slat, way);
            let Some(before) = self.laid() else {
                continue;
            };
            for bound in bounds {
                let mut search = Search::new(&mut self.draft, input, today, &before);
                let found = search.first_sound(bound, target.across);
                search.put_back();
                let nearer = |at: f64| {
                    best.as_ref()
                        .is_none_or(|(_, best, _)| (at - today).abs() < (best - today).abs())
                };
                if let Some((at, laid)) = found
                    && nearer(at)
                {
                    best = Some((way, at, laid));
                }
            }
        }
        best.map(|best| (today, best))
    }

    fn number(&mut self, field: Field) -> Option<f64> {
        let place = Place::Barrel(self.barrel);
        let typed = Input { place, field }.typed_mut(&mut self.draft)?;
        typed.read(field).ok()
    }

    fn put_number(&mut self, field: Field, value: f64) {
        let place = Place::Barrel(self.barrel);
        if let Some(typed) = (Input { place, field }).typed_mut(&mut self.draft) {
            *typed = Typed::Number(value);
        }
    }
}

impl Target {
    fn gain(
        &self,
        way: Way,
        steps: Vec<GainStep>,
        distance: f64,
        laid: &Laid,
        proof: GainProof,
    ) -> Gain {
        Gain {
            kind: self.kind,
            slat: self.slat,
            way,
            steps,
            distance,
            pencils_before: self.pencils_before,
            pencils_after: laid.layout().pencils(),
            price_before: self.price_before,
            price_after: laid.price_of_gross(),
            proof,
        }
    }
}

impl Gain {
    /// The project with the change in it: the sizes of its barrel, and the layout on that stock.
    #[must_use]
    pub fn applied(&self, project: &ProjectDraft) -> ProjectDraft {
        let mut changed = project.clone();
        let barrel = project.barrel_place(project.layout.barrel);
        for step in &self.steps {
            let place = barrel.map(Place::Barrel);
            let field = step.field;
            let input = place.map(|place| Input { place, field });
            if let Some(typed) = input.and_then(|input| input.typed_mut(&mut changed)) {
                *typed = Typed::Number(step.to);
            }
        }
        if let Some(slat) = project.slats.get(self.slat) {
            changed.layout.top = slat.id;
            changed.layout.bottom = slat.id;
            changed.layout.way = self.way;
        }
        changed
    }

    /// The same change with sizes as they are shown, where they do as well: rounded away from today's.
    #[must_use]
    pub fn rounded(&self, project: &ProjectDraft, unit: LengthUnit) -> Self {
        let mut rounded = self.clone();
        for step in &mut rounded.steps {
            step.to = crate::figure::length_away(step.to, step.from, unit);
        }
        let holds = rounded
            .applied(project)
            .check_layout()
            .is_ok_and(|parts| Laid::new(parts).layout().pencils() == self.pencils_after);
        if holds { rounded } else { self.clone() }
    }
}
