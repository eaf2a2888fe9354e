//! Good pencils from tolerances against tables, closed forms, an independent library of
//! distributions, and a plain program of the same model.

mod dice;
mod distributions;
mod reference;
mod tables;

use solver::tolerance::Trial;
use solver::{
    Accuracy, AccuracyDraft, Length, Offsets, Rules, RulesDraft, Setup, Shape, Term, Typed, lay_out,
};
use tests::shop;

/// An accuracy without any error but those named, standard deviations in mm.
fn errors(named: &[(Term, f64)]) -> Accuracy {
    let mut draft = AccuracyDraft::new("");
    for term in Term::ALL {
        draft.error_mut(term).size = Typed::Number(0.0);
    }
    for (term, deviation) in named {
        draft.error_mut(*term).size = Typed::Number(*deviation);
    }
    draft.check().expect("the errors lie in their ranges")
}

/// The same with bottom slats too thick on average, which lifts the lead by as much.
fn lifted(accuracy: Accuracy, by: f64) -> Accuracy {
    let offsets = Offsets {
        bottom_thickness: Length::millimetres(by),
        ..Offsets::default()
    };
    accuracy.with_offsets(offsets).expect("a number")
}

/// Rules under which a lead off centre by more than a limit is the only fault there can be.
fn only_off_centre(limit: f64, most: f64) -> Rules {
    shop::rules(|rules: &mut RulesDraft| {
        rules.eccentricity = Typed::Number(limit);
        rules.most = Typed::Number(most);
        rules.wall = Typed::Number(0.0);
        rules.clearance = Typed::Number(1.0);
        rules.edge = Typed::Number(10.0);
    })
}

/// Round pencils of 14 mm on wide slats, with room for any error of the tests, made by some rules.
fn roomy(rules: &Rules, accuracy: &Accuracy) -> Trial {
    let barrel = shop::barrel(Shape::Round, 14.0, 0.0);
    let slat = shop::slat(200.0, 12.0);
    let setup = Setup {
        barrel: &barrel,
        turn: solver::Angle::ZERO,
        top: &slat,
        bottom: &slat,
        rules,
    };
    Trial::new(&setup, &lay_out(&setup), accuracy)
}

fn close(found: f64, expected: f64, relative: f64) {
    assert!(
        (found / expected - 1.0).abs() < relative,
        "found {found:e}, expected {expected:e}"
    );
}
