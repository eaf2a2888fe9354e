//! Dice against integrals, certainty without errors, and what must grow when something shrinks.

mod any_accuracy;
mod certainty;
mod choices;
mod dice;
mod expected;
mod shares;

use super::*;
use crate::accuracy::{Accuracy, AccuracyDraft, Term};
use crate::barrel::{Barrel, BarrelDraft};
use crate::field::Typed;
use crate::layout::{Layout, Setup, lay_out};
use crate::quantity::Angle;
use crate::rules::{Rules, RulesDraft};
use crate::shape::Shape;
use crate::slat::{Slat, SlatDraft};

/// A layout and what it is laid from.
struct Laid {
    barrel: Barrel,
    slat: Slat,
    rules: Rules,
    turn: Angle,
}

impl Laid {
    /// Hexagons seam through faces on slats of a width.
    fn hexagons(width: f64) -> Self {
        Self::of(Shape::Hexagonal, width, 30.0, &|_| ())
    }

    fn of(shape: Shape, width: f64, turn: f64, change: &dyn Fn(&mut RulesDraft)) -> Self {
        let mut barrel = BarrelDraft::new("", shape);
        barrel.path = "M0 0 H2 A2 2 0 0 0 6 0 H8 V8 H0 Z".to_owned();
        let barrel = barrel.check().unwrap();
        let mut slat = SlatDraft::new("");
        slat.width = Typed::Number(width);
        let mut rules = RulesDraft::new();
        change(&mut rules);
        Self {
            barrel,
            slat: slat.check().unwrap(),
            rules: rules.check().unwrap(),
            turn: Angle::degrees(turn),
        }
    }

    fn setup(&self) -> Setup<'_> {
        Setup {
            barrel: &self.barrel,
            turn: self.turn,
            top: &self.slat,
            bottom: &self.slat,
            rules: &self.rules,
        }
    }

    fn layout(&self) -> Layout {
        lay_out(&self.setup())
    }

    fn trial(&self, accuracy: &Accuracy) -> Trial {
        Trial::new(&self.setup(), &self.layout(), accuracy)
    }
}

/// An accuracy without any error but those named.
fn errors(named: &[(Term, f64)]) -> Accuracy {
    let mut draft = AccuracyDraft::new("");
    for term in Term::ALL {
        draft.error_mut(term).size = Typed::Number(0.0);
    }
    for (term, deviation) in named {
        draft.error_mut(*term).size = Typed::Number(*deviation);
    }
    draft.check().unwrap()
}

fn run(trial: &Trial, seed: u64, blocks: u64) -> Tally {
    trial.simulate(seed, 0..blocks, &mut |_| true)
}

fn term_size(term: Term) -> f64 {
    term.field().spec().initial
}
