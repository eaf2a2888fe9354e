//! Up to four barrels of a project side by side: what they are, what each stock gives of them, and
//! what a gross takes, each against one of them.

use super::{Line, Part, Value, Verdict, Wish};
use crate::barrel::Barrel;
use crate::csv;
use crate::figure;
use crate::outline::Segment;
use crate::project::{Id, ProjectDraft};
use crate::quantity::{Angle, Length};
use crate::ranking::{Aim, Candidate, rank};
use crate::rules::{RulesDraft, Spacing};
use crate::slat::Slat;
use crate::unit::LengthUnit;

/// The most barrels that are held side by side.
pub const MOST_COMPARED: usize = 4;
/// The most stocks that have a line of their own.
pub const MOST_STOCKS: usize = 20;

/// Barrels side by side.
#[derive(Debug, Clone, PartialEq)]
pub struct BarrelTable {
    /// The barrels that can be made, in the order they were asked for, the one to compare with first.
    pub barrels: Vec<(Id, Barrel)>,
    /// The lines, in the order a designer reads them.
    pub lines: Vec<BarrelLine>,
}

/// One line of barrels side by side.
#[derive(Debug, Clone, PartialEq)]
pub struct BarrelLine {
    /// What is compared; of a stock its name.
    pub label: String,
    /// Whether it tells the pencils that a stock gives.
    pub of_stock: bool,
    /// What each barrel has there; `None` where it has no such thing.
    pub values: Vec<Option<Value>>,
    wish: Wish,
}

/// Holds barrels of a project side by side, at most [`MOST_COMPARED`], each against the first.
///
/// The pencils of a stock are those of its best way round, under the machining rules of the project
/// with the grooves as close as they allow; of the needs of a gross those of the stock on which it
/// costs least. A cutter set is one of the project that serves the barrel and loses no pencil on that
/// stock. Barrels that are not in the project, or cannot be made, are left out, and stocks beyond the
/// first [`MOST_STOCKS`] that can be laid on.
#[must_use]
pub fn compare_barrels(project: &ProjectDraft, barrels: &[Id]) -> BarrelTable {
    let mut made: Vec<(Id, Barrel)> = Vec::new();
    for id in barrels {
        let at = project.barrel_place(*id);
        if made.len() == MOST_COMPARED {
            break;
        }
        if let Some(barrel) = at.and_then(|at| project.barrels[at].draft.check().ok()) {
            made.push((*id, barrel));
        }
    }
    let stocks = (0..project.slats.len()).filter_map(|at| project.check_slat(at).ok());
    let slats: Vec<Slat> = stocks.take(MOST_STOCKS).collect();
    let laid: Vec<LaidBarrel> = made
        .iter()
        .map(|(id, barrel)| LaidBarrel::new(project, *id, barrel, &slats))
        .collect();
    let mut table = BarrelTable {
        lines: Vec::with_capacity(16 + slats.len()),
        barrels: made,
    };
    table.sizes(project);
    for (at, slat) in slats.iter().enumerate() {
        let values = laid
            .iter()
            .map(|laid| Some(Value::Count(u64::from(laid.pencils(at)))));
        let values = values.collect();
        table.line(slat.name(), true, Wish::More, values);
    }
    table.gross(&laid, &slats);
    table
}

impl BarrelTable {
    fn line(&mut self, label: &str, of_stock: bool, wish: Wish, values: Vec<Option<Value>>) {
        if values.iter().any(Option::is_some) {
            self.lines.push(BarrelLine {
                label: label.to_owned(),
                of_stock,
                values,
                wish,
            });
        }
    }

    fn each(&mut self, label: &str, wish: Wish, read: impl Fn(&Barrel) -> Option<Value>) {
        let values = self.barrels.iter().map(|(_, barrel)| read(barrel));
        let values = values.collect();
        self.line(label, false, wish, values);
    }

    fn sizes(&mut self, project: &ProjectDraft) {
        let length = |length: Length| Some(Value::Length(length));
        self.each("Kind", Wish::Nothing, |barrel| {
            Some(Value::Words(barrel.shape().label().to_owned()))
        });
        self.each("Width over the coat", Wish::Nothing, |barrel| {
            length(barrel.finished(Angle::ZERO).extents().width())
        });
        self.each("Height over the coat", Wish::Nothing, |barrel| {
            length(barrel.finished(Angle::ZERO).extents().height())
        });
        self.each("Corner radius", Wish::Nothing, |barrel| {
            let has_corners = barrel.shape().has_corners();
            has_corners.then(|| Value::Length(barrel.corner_radius()))
        });
        self.each("Coat", Wish::Nothing, |barrel| length(barrel.coat()));
        self.each("Lead diameter", Wish::Nothing, |barrel| {
            length(barrel.lead_diameter())
        });
        self.each("Girth over the coat", Wish::Nothing, |barrel| {
            length(barrel.finished(Angle::ZERO).perimeter())
        });
        self.each("Widest flat face", Wish::Nothing, |barrel| {
            widest_face(barrel).map(Value::Length)
        });
        let clearance = project.check_rules().map(|rules| rules.clearance);
        self.each("Least wall, lead centred", Wish::More, |barrel| {
            let groove = barrel.lead_diameter() / 2.0 + *clearance.as_ref().ok()?;
            length(barrel.bare(Angle::ZERO).least_distance() - groove)
        });
        self.each("Wood and lead in a pencil", Wish::Nothing, |barrel| {
            let area = barrel.bare(Angle::ZERO).area();
            Some(Value::Volume(area * barrel.length()))
        });
    }

    fn gross(&mut self, laid: &[LaidBarrel], slats: &[Slat]) {
        let of_cheapest = |read: &dyn Fn(&Candidate) -> Option<Value>| {
            let values = laid.iter().map(|laid| read(laid.cheapest()?));
            values.collect::<Vec<_>>()
        };
        let stock =
            of_cheapest(&|best| Some(Value::Words(slats.get(best.slat)?.name().to_owned())));
        self.line(
            "Stock on which a gross costs least",
            false,
            Wish::Nothing,
            stock,
        );
        let money = of_cheapest(&|best| Some(Value::Money(best.needs?.price)));
        self.line("Price of the slats of a gross", false, Wish::Less, money);
        let wood = of_cheapest(&|best| Some(Value::Volume(best.needs?.wood)));
        self.line("Wood of a gross", false, Wish::Less, wood);
        let pieces = of_cheapest(&|best| Some(Value::Pieces(best.needs?.slats)));
        self.line("Slats of a gross", false, Wish::Less, pieces);
        let pitch = of_cheapest(&|best| Some(Value::Length(best.layout.pitch())));
        self.line("Closest pitch there", false, Wish::Nothing, pitch);
        let sets = laid.iter().map(|laid| {
            laid.cheapest()?;
            let name = laid.set.clone();
            Some(Value::Words(name.unwrap_or_else(|| "a new one".to_owned())))
        });
        let sets = sets.collect();
        self.line("Cutter set", false, Wish::Nothing, sets);
    }

    /// The table as CSV text: a column for each barrel, and one for its difference from the first.
    /// Figures stand with their units, as they are shown.
    #[must_use]
    pub fn csv(&self, unit: LengthUnit) -> String {
        let mut header = vec!["Compared".to_owned()];
        for (at, (_, barrel)) in self.barrels.iter().enumerate() {
            header.push(csv::text(barrel.name()));
            if at > 0 {
                header.push("Difference".to_owned());
            }
        }
        let mut table = csv::Table::headed(&header);
        for line in &self.lines {
            let mut cells = vec![csv::text(&line.title())];
            for at in 0..self.barrels.len() {
                cells.push(csv::text(&line.text(at, unit)));
                if at > 0 {
                    cells.push(csv::text(&line.change(at, unit).unwrap_or_default()));
                }
            }
            table.row(&cells);
        }
        table.done()
    }
}

impl BarrelLine {
    /// What is compared, in words.
    #[must_use]
    pub fn title(&self) -> String {
        if self.of_stock {
            format!("Pencils on {}", self.label)
        } else {
            self.label.clone()
        }
    }

    /// What a barrel has there, as it is shown; a dash where it has no such thing.
    #[must_use]
    pub fn text(&self, at: usize, unit: LengthUnit) -> String {
        let value = self.values.get(at).and_then(Option::as_ref);
        value.map_or_else(|| figure::NO_FIGURE.to_owned(), |value| value.text(unit))
    }

    /// How much more or less it has than the first, with sign and unit; nothing for the first, and
    /// where no change is shown.
    #[must_use]
    pub fn change(&self, at: usize, unit: LengthUnit) -> Option<String> {
        self.pair(at)?.change(unit)
    }

    /// Whether it is better or worse than the first, where that can be said.
    #[must_use]
    pub fn verdict(&self, at: usize, unit: LengthUnit) -> Option<Verdict> {
        self.pair(at)?.verdict(unit)
    }

    /// The first and another as a line of two.
    fn pair(&self, at: usize) -> Option<Line> {
        (at > 0).then(|| Line {
            part: Part::Pencil,
            label: "",
            values: [0, at].map(|at| self.values.get(at).cloned().flatten()),
            wish: self.wish,
        })
    }
}

/// A barrel on every stock, each at its best way round.
struct LaidBarrel {
    best: Vec<Candidate>,
    set: Option<String>,
}

impl LaidBarrel {
    fn new(project: &ProjectDraft, id: Id, barrel: &Barrel, slats: &[Slat]) -> Self {
        let rules = |spacing| RulesDraft {
            spacing,
            ..project.rules.clone()
        };
        let ways = barrel.usual_turns();
        let Ok(closest) = rules(Spacing::Closest).check() else {
            return Self {
                best: Vec::new(),
                set: None,
            };
        };
        let best = rank(barrel, slats, &ways, &closest, Aim::Pencils, &mut |_| ());
        let mut laid = Self { best, set: None };
        if let Some(cheapest) = laid.cheapest().cloned() {
            let stock = &slats[cheapest.slat..=cheapest.slat];
            let mut sets = project.cutter_sets.iter().filter_map(|entry| {
                let set = entry.draft.check().ok()?;
                let rules = rules(Spacing::Set).check_with(Some(&set)).ok()?;
                let found = rank(barrel, stock, &ways, &rules, Aim::Pencils, &mut |_| ());
                let pencils = found.first().map_or(0, |found| found.layout.pencils());
                let serves = set.serves(id) && pencils >= cheapest.layout.pencils();
                serves.then(|| entry.draft.name.clone())
            });
            laid.set = sets.next();
        }
        laid
    }

    /// Pencils of a stock at its best way round.
    fn pencils(&self, slat: usize) -> u32 {
        let of_stock = self.best.iter().filter(|found| found.slat == slat);
        of_stock
            .map(|found| found.layout.pencils())
            .max()
            .unwrap_or(0)
    }

    /// Where a gross costs least; of equals where it takes least wood.
    fn cheapest(&self) -> Option<&Candidate> {
        let needed = |found: &&Candidate| {
            found
                .needs
                .map(|needs| (needs.price, needs.wood.in_cubic_millimetres()))
        };
        let sound = self.best.iter().filter(|found| found.needs.is_some());
        sound.min_by(|one, other| {
            let (one, other) = (needed(one), needed(other));
            let (one, other) = (one.unwrap_or_default(), other.unwrap_or_default());
            one.0.total_cmp(&other.0).then(one.1.total_cmp(&other.1))
        })
    }
}

/// The longest straight side over the coat: what takes an imprint.
fn widest_face(barrel: &Barrel) -> Option<Length> {
    let outline = barrel.finished(Angle::ZERO);
    let sides = outline
        .segments()
        .iter()
        .filter_map(|segment| match segment {
            Segment::Line(line) => Some(line.from.distance(line.to)),
            Segment::Arc(_) => None,
        });
    sides.reduce(Length::max)
}
