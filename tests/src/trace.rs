//! Everything the solver shows, as bit patterns, for a fixed set of cases.

mod cutters;
mod designer;
mod found;
mod measured;
mod order_jobs;
mod orders;
mod pencil;
mod sawing;
mod setting;
mod thresholds;
mod timber;
mod tolerance;

use crate::cases::{ODD_TURNS, any_barrel, any_book, any_rules, any_slat, any_turn};
use crate::dice::Dice;
use solver::entry::{self, Dimension};
use solver::purchase::{PurchaseLimits, plan};
use solver::{
    Aim, Angle, Barrel, Drawing, Layout, LengthUnit, Measure, RulesDraft, Setup, Sheet, Slat,
    WoodClass, draw_barrel, draw_sandwich, figure, lay_out, rank,
};
use std::fmt::Write;

#[cfg(target_arch = "wasm32")]
use wasm_bindgen::prelude::wasm_bindgen;

/// Layouts that are traced; of every eighth the drawings as well.
const LAYOUTS: u64 = 320;
const UNITS: [LengthUnit; 2] = [LengthUnit::Millimetre, LengthUnit::Inch];
/// The trace: one line for each thing that is shown.
#[must_use]
#[cfg_attr(target_arch = "wasm32", wasm_bindgen)]
pub fn trace() -> String {
    let mut trace = Trace(String::new());
    for case in 0..LAYOUTS {
        trace.layout(case);
    }
    trace.rankings();
    trace.entries();
    trace.figures();
    trace.purchases();
    trace.paths();
    trace.timber();
    trace.searches();
    trace.thresholds();
    trace.measured();
    trace.tolerances();
    trace.sawing();
    trace.orders();
    trace.order_jobs();
    trace.cutters();
    trace.shaping();
    trace.0
}

/// The text in the making.
struct Trace(String);

impl Trace {
    fn line(&mut self, name: &str, text: &str) {
        // Writing to a string cannot fail.
        let _ = writeln!(self.0, "{name} {text}");
    }

    fn numbers(&mut self, name: &str, numbers: &[f64]) {
        let bits: Vec<String> = numbers
            .iter()
            .map(|number| format!("{:016x}", number.to_bits()))
            .collect();
        self.line(name, &bits.join(" "));
    }

    fn layout(&mut self, case: u64) {
        let mut dice = Dice::new(case);
        let Some(barrel) = any_barrel(&mut dice) else {
            self.line("barrel", &format!("{case} cannot be made"));
            return;
        };
        let (Some(top), Some(bottom)) = (any_slat(&mut dice), any_slat(&mut dice)) else {
            self.line("slat", &format!("{case} cannot be had"));
            return;
        };
        let Some(rules) = any_rules(&mut dice) else {
            self.line("rules", &format!("{case} cannot be kept"));
            return;
        };
        let bottom = if dice.bits().is_multiple_of(2) {
            &top
        } else {
            &bottom
        };
        let setup = Setup {
            barrel: &barrel,
            turn: any_turn(&mut dice),
            top: &top,
            bottom,
            rules: &rules,
        };
        let layout = lay_out(&setup);
        self.line("layout", &format!("{case} {}", layout.pencils()));
        self.sizes(&layout);
        self.checks(&layout);
        self.balance(&layout);
        if case.is_multiple_of(8) {
            for unit in UNITS {
                let sheet = Sheet {
                    width: dice.between(280.0, 1600.0),
                    row: dice.between(24.0, 48.0),
                    text: dice.between(56.0, 96.0),
                    unit,
                };
                self.drawing(&draw_sandwich(&setup, &layout, &sheet));
                self.drawing(&draw_barrel(&barrel, &sheet));
            }
            self.pencil(&barrel, &mut dice);
            self.setting(&setup, &layout, &mut dice);
        }
    }

    fn sizes(&mut self, layout: &Layout) {
        let extents = layout.extents();
        let groove = layout.groove_shape();
        let lengths = [
            layout.pitch(),
            layout.parting(),
            layout.datum_edge(),
            layout.far_edge(),
            extents.left,
            extents.right,
            extents.up,
            extents.down,
            groove.radius(),
            groove.top_depth(),
            groove.bottom_depth(),
            layout.finished().perimeter(),
            layout.bare().perimeter(),
        ];
        self.numbers("sizes", &lengths.map(|length| length.in_millimetres()));
        let areas = [
            layout.bare().area(),
            layout.finished().area(),
            groove.section(),
        ];
        self.numbers("areas", &areas.map(|area| area.in_square_millimetres()));
        let centroid = layout.bare().centroid();
        self.numbers("centroid", &[centroid.x, centroid.y]);
        let centres: Vec<f64> = layout
            .grooves()
            .iter()
            .map(|groove| groove.centre.in_millimetres())
            .collect();
        self.numbers("grooves", &centres);
    }

    fn checks(&mut self, layout: &Layout) {
        for check in layout.checks() {
            let number = |measure| match measure {
                Measure::Length(length) => length.in_millimetres(),
                Measure::Angle(angle) => angle.in_degrees(),
            };
            let numbers = [check.found, check.asked, check.margin()].map(number);
            self.numbers(check.rule.label(), &numbers);
            for unit in UNITS {
                self.line("statement", &check.statement(unit));
            }
        }
    }

    fn balance(&mut self, layout: &Layout) {
        let Some(balance) = layout.balance() else {
            return;
        };
        for class in WoodClass::ALL {
            let section = balance.section(class).unwrap_or_default();
            let numbers = [
                section.in_square_millimetres(),
                balance.volume(class).in_cubic_millimetres(),
                balance.share(class),
            ];
            self.numbers(class.label(), &numbers);
        }
        let bought = balance.bought().in_cubic_millimetres();
        self.numbers("bought", &[bought, balance.yielded()]);
    }

    fn drawing(&mut self, drawing: &Drawing) {
        self.numbers("drawing", &[drawing.width, drawing.height]);
        for shape in &drawing.shapes {
            self.line("shape", &format!("{:?} {}", shape.style, shape.path));
        }
        for dimension in &drawing.dimensions {
            let area = dimension.area;
            self.numbers("area", &[area.x, area.y, area.width, area.height]);
            let (sign, text) = (dimension.sign, &dimension.text);
            let (lines, arrows) = (&dimension.lines, &dimension.arrows);
            let text = format!("{:?} {sign}{text} {lines} {arrows}", dimension.size);
            self.line("dimension", &text);
        }
        for label in &drawing.labels {
            self.numbers("label", &[label.x, label.y]);
        }
        self.line("unplaced", &format!("{:?}", drawing.unplaced));
        self.line("description", &drawing.description);
    }

    fn rankings(&mut self) {
        let mut dice = Dice::new(1_000_000);
        let slats: Vec<Slat> = (0..24).filter_map(|_| any_slat(&mut dice)).collect();
        let ways = ODD_TURNS.map(Angle::degrees);
        let barrels: Vec<Barrel> = (0..6).filter_map(|_| any_barrel(&mut dice)).collect();
        let Some(rules) = RulesDraft::new().check().ok() else {
            return;
        };
        for barrel in &barrels {
            for aim in [Aim::Pencils, Aim::Wood] {
                for candidate in rank(barrel, &slats, &ways, &rules, aim, &mut |_| ()) {
                    let name = format!("{aim:?} {} {}", candidate.slat, candidate.way);
                    let needs = candidate.needs.map_or([0.0; 3], |needs| {
                        [needs.slats, needs.wood.in_cubic_millimetres(), needs.price]
                    });
                    self.numbers(&name, &needs);
                }
            }
        }
    }

    fn entries(&mut self) {
        const TYPED: [&str; 20] = [
            "7.2",
            "7,2",
            "1 234.5",
            "1e-3",
            "½",
            "5/16 in",
            "1 3/8\"",
            "74 - 2*1.5 mm",
            "(7,2 + 0,4) × 9",
            "0.1 in + 0.2 mm",
            "1,234",
            "3 cm / 7",
            "22.5°",
            "12 %",
            "-0",
            "1e11 × 9.99",
            "1e-99",
            "wide",
            "",
            "1/3 + 1/7",
        ];
        const DIMENSIONS: [Dimension; 6] = [
            Dimension::Length,
            Dimension::Angle,
            Dimension::Count,
            Dimension::Money,
            Dimension::Percent,
            Dimension::Plain,
        ];
        for text in TYPED {
            for dimension in DIMENSIONS {
                for unit in UNITS {
                    match entry::read(text, dimension, unit) {
                        Ok(value) => self.numbers(text, &[value]),
                        Err(problem) => self.line(text, &problem.to_string()),
                    }
                }
            }
        }
    }

    fn figures(&mut self) {
        let mut dice = Dice::new(2_000_000);
        let mut values = vec![0.0, -0.0, 7.125, 1.005, -1e-9, 5e-324, 1e308, f64::INFINITY];
        values.extend((0..200).map(|_| dice.between(-5000.0, 5000.0)));
        values.extend((0..100).map(|_| f64::from_bits(dice.bits())));
        for value in values {
            let shown = [
                figure::length(value, LengthUnit::Millimetre),
                figure::length(value, LengthUnit::Inch),
                figure::length_exact(value, LengthUnit::Inch),
                figure::exact(value),
                figure::area(value, LengthUnit::Inch),
                figure::volume(value, LengthUnit::Inch),
                figure::angle(value),
                figure::ratio(value),
                figure::plain(value, 7),
            ];
            self.line("figures", &shown.join(" "));
        }
    }

    fn purchases(&mut self) {
        for case in 0..12 {
            let mut dice = Dice::new(3_000_000 + case);
            let limits = PurchaseLimits {
                time: None,
                nodes: 200,
            };
            match any_book(&mut dice).check() {
                Ok(data) => {
                    let mut steps = Vec::new();
                    let outcome = plan(&data, &limits, &mut |step| steps.push(step));
                    self.line("purchase", &format!("{outcome:?} {steps:?}"));
                }
                Err(problems) => self.line("purchase", &format!("{problems:?}")),
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_trace_is_the_same_every_time_and_tells_of_everything() {
        let text = trace();
        assert_eq!(text, trace());
        let lines = |start: &str| text.lines().filter(|line| line.starts_with(start)).count();
        // Most cases can be laid, and many of these fit.
        assert!(lines("layout ") > 200, "{}", lines("layout "));
        assert!(lines("bought ") > 50, "{}", lines("bought "));
        let names = [
            "dimension ",
            "Wood ",
            "figures ",
            "statement ",
            "purchase ",
            "orders Ok(",
            "worths ",
            "outline ",
            "reach ",
            "undercut ",
            "inset ",
            "emc ",
            "moved ",
            "grooved ",
            "found ",
            "threshold ",
            "change ",
            "step ",
            "stairs ",
            "sample ",
            "bounds ",
            "capability ",
            "normality ",
            "needed ",
            "classes ",
            "histogram ",
            "readings ",
            "set use ",
            "set made ",
            "set offered ",
            "set new ",
            "set saves ",
            "set line ",
        ];
        for name in names {
            assert!(lines(name) > 10, "{name} {}", lines(name));
        }
        assert!(text.contains("Proved"));
    }
}
