//! The lines of a comparison, each taken from both layouts in the same way.

use super::{Laid, Line, Part, Value, Wish};
use crate::field::Field;
use crate::layout::{Check, Rule, WoodClass};
use crate::quantity::Length;
use crate::ranking::GrossNeeds;
use crate::rules::{PitchRule, Rules, Spacing};
use crate::slat::Slat;

/// Every line that at least one of the layouts has.
pub(super) fn all(first: Laid<'_>, second: Laid<'_>) -> Vec<Line> {
    let mut table = Table {
        laid: [first, second],
        lines: Vec::with_capacity(64),
    };
    table.result();
    table.gross();
    table.pencil();
    table.slats();
    table.machining();
    table.checks();
    table.wood();
    table.lines
}

/// How a length is read from a part of a layout.
type Read<T> = fn(&T) -> Length;

struct Table<'a> {
    laid: [Laid<'a>; 2],
    lines: Vec<Line>,
}

impl<'a> Table<'a> {
    /// A line with what `read` finds in each layout, unless it finds nothing in both.
    fn line(
        &mut self,
        part: Part,
        label: &'static str,
        wish: Wish,
        read: &dyn Fn(&Laid<'a>) -> Option<Value>,
    ) {
        let values = [read(&self.laid[0]), read(&self.laid[1])];
        if values.iter().any(Option::is_some) {
            self.lines.push(Line {
                part,
                label,
                values,
                wish,
            });
        }
    }

    fn length(&mut self, part: Part, label: &'static str, read: &dyn Fn(&Laid<'a>) -> Length) {
        self.line(part, label, Wish::Nothing, &|laid| {
            Some(Value::Length(read(laid)))
        });
    }

    fn result(&mut self) {
        let part = Part::Result;
        self.line(part, "Pencils from a sandwich", Wish::More, &|laid| {
            Some(Value::Count(u64::from(laid.layout.pencils())))
        });
        self.line(part, "Side by side", Wish::Nothing, &|laid| {
            Some(Value::Count(u64::from(laid.layout.across())))
        });
        self.line(part, "From one slat length", Wish::Nothing, &|laid| {
            Some(Value::Count(u64::from(laid.layout.lengths())))
        });
        self.line(
            part,
            "Wood bought that is in pencils",
            Wish::More,
            &|laid| {
                let balance = laid.layout.balance()?;
                Some(Value::Share(balance.yielded()))
            },
        );
        self.line(part, "Margin for error", Wish::More, &|laid| {
            Some(Value::Length(laid.layout.margin()))
        });
        self.length(part, "Pitch", &|laid| laid.layout.pitch());
        self.length(part, "Wood between neighbours", &|laid| {
            laid.layout.parting()
        });
        self.line(part, "First groove", Wish::Nothing, &|laid| {
            let first = laid.layout.grooves().first()?;
            Some(Value::Length(first.centre))
        });
        self.length(part, "Edge at the datum", &|laid| laid.layout.datum_edge());
        self.length(part, "Edge at the far side", &|laid| laid.layout.far_edge());
        self.length(part, "Groove depth, top", &|laid| {
            laid.layout.groove_shape().top_depth()
        });
        self.length(part, "Groove depth, bottom", &|laid| {
            laid.layout.groove_shape().bottom_depth()
        });
    }

    fn gross(&mut self) {
        let needs = |laid: &Laid<'_>| GrossNeeds::of(&laid.setup(), laid.layout);
        let part = Part::Gross;
        self.line(part, "Slats", Wish::Less, &|laid| {
            Some(Value::Pieces(needs(laid)?.slats))
        });
        self.line(part, "Wood", Wish::Less, &|laid| {
            Some(Value::Volume(needs(laid)?.wood))
        });
        self.line(part, "Money for slats", Wish::Less, &|laid| {
            Some(Value::Money(needs(laid)?.price))
        });
    }

    fn pencil(&mut self) {
        let part = Part::Pencil;
        self.line(part, "Barrel", Wish::Nothing, &|laid| {
            Some(Value::Words(laid.parts.barrel.name().to_owned()))
        });
        self.line(part, "Shape", Wish::Nothing, &|laid| {
            Some(Value::Words(laid.parts.barrel.shape().label().to_owned()))
        });
        self.line(part, label(Field::Turn), Wish::Nothing, &|laid| {
            Some(Value::Angle(laid.parts.turn))
        });
        self.length(part, "Width over the coat, as it lies", &|laid| {
            laid.layout.finished().extents().width()
        });
        self.length(part, "Height over the coat, as it lies", &|laid| {
            laid.layout.finished().extents().height()
        });
        self.line(part, label(Field::CornerRadius), Wish::Nothing, &|laid| {
            let barrel = &laid.parts.barrel;
            let rounded = barrel.shape().has_corners();
            rounded.then(|| Value::Length(barrel.corner_radius()))
        });
        self.length(part, label(Field::Coat), &|laid| laid.parts.barrel.coat());
        self.length(part, label(Field::PencilLength), &|laid| {
            laid.parts.barrel.length()
        });
        self.length(part, label(Field::LeadDiameter), &|laid| {
            laid.parts.barrel.lead_diameter()
        });
    }

    fn slats(&mut self) {
        let alike = |laid: &Laid<'_>| laid.parts.top == laid.parts.bottom;
        if self.laid.iter().all(alike) {
            self.slat(Part::Slats, &|laid| &laid.parts.bottom);
        } else {
            self.slat(Part::TopSlat, &|laid| &laid.parts.top);
            self.slat(Part::BottomSlat, &|laid| &laid.parts.bottom);
        }
    }

    fn slat(&mut self, part: Part, slat: &dyn Fn(&Laid<'a>) -> &'a Slat) {
        self.line(part, "Stock", Wish::Nothing, &|laid| {
            Some(Value::Words(slat(laid).name().to_owned()))
        });
        self.length(part, label(Field::SlatLength), &|laid| slat(laid).length());
        self.length(part, label(Field::SlatWidth), &|laid| slat(laid).width());
        self.length(part, "Width guaranteed at the groove head", &|laid| {
            slat(laid).guaranteed_width()
        });
        self.length(part, label(Field::SlatThickness), &|laid| {
            slat(laid).thickness()
        });
        self.length(part, "Thickness guaranteed at the groove head", &|laid| {
            slat(laid).guaranteed_thickness()
        });
    }

    fn machining(&mut self) {
        let part = Part::Machining;
        let rules = |laid: &Laid<'a>| -> &'a Rules { &laid.parts.rules };
        self.line(part, "Spacing", Wish::Nothing, &|laid| {
            let spacing = match rules(laid).spacing {
                PitchRule::Closest => Spacing::Closest,
                PitchRule::Spread => Spacing::Spread,
                PitchRule::Given(_) => Spacing::Given,
                PitchRule::OfSet(_) => Spacing::Set,
            };
            Some(Value::Words(spacing.label().to_owned()))
        });
        self.line(part, "Cutter set", Wish::Nothing, &|laid| {
            laid.parts.cutter_set.clone().map(Value::Words)
        });
        self.line(part, label(Field::MostAcross), Wish::Nothing, &|laid| {
            rules(laid).most.map(|most| Value::Count(u64::from(most)))
        });
        let lengths: [(Field, Read<Rules>); 11] = [
            (Field::Clearance, |rules| rules.clearance),
            (Field::AxisHeight, |rules| rules.axis_height),
            (Field::Land, |rules| rules.land),
            (Field::EdgeAllowance, |rules| rules.edge),
            (Field::PlaningAllowance, |rules| rules.planing),
            (Field::Floor, |rules| rules.floor),
            (Field::Wall, |rules| rules.wall),
            (Field::Eccentricity, |rules| rules.eccentricity),
            (Field::Bond, |rules| rules.bond),
            (Field::EndTrim, |rules| rules.end_trim),
            (Field::SawKerf, |rules| rules.saw_kerf),
        ];
        for (field, read) in lengths {
            self.length(part, label(field), &|laid| read(rules(laid)));
        }
        self.line(part, label(Field::Relief), Wish::Nothing, &|laid| {
            Some(Value::Angle(rules(laid).relief))
        });
        self.line(part, label(Field::SlatRejects), Wish::Nothing, &|laid| {
            Some(Value::Share(rules(laid).slat_rejects))
        });
        self.line(part, label(Field::PencilRejects), Wish::Nothing, &|laid| {
            Some(Value::Share(rules(laid).pencil_rejects))
        });
    }

    fn checks(&mut self) {
        for rule in Rule::ALL {
            self.line(Part::Checks, rule.label(), Wish::Pass, &|laid| {
                let mut checks = laid.layout.checks().iter();
                let check: &Check = checks.find(|check| check.rule == rule)?;
                Some(Value::Margin(check.margin(), check.outcome))
            });
        }
    }

    fn wood(&mut self) {
        for class in WoodClass::ALL {
            self.line(Part::Wood, class.label(), Wish::Nothing, &|laid| {
                let share = laid.layout.balance()?.share(class);
                Some(Value::Share(share))
            });
        }
    }
}

/// The name of a field.
const fn label(field: Field) -> &'static str {
    field.spec().label
}
