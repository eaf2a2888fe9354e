//! Printed values and worked examples.

use crate::{close, errors, lifted, only_off_centre, roomy};
use solver::{AccuracyDraft, Reading, Term, Typed};

/// P(all n of |0.03 Z₀ + 0.04 Zᵢ| ≤ 0.1): a shift common to n pencils and one of each pencil's own.
/// Computed by quadrature with 15 digits.
const ALL_GOOD: [(f64, f64); 4] = [
    (1.0, 0.954_499_736_103_642),
    (5.0, 0.814_250_867_684_272),
    (8.0, 0.735_462_277_476_81),
    (9.0, 0.712_497_376_881_725),
];

#[test]
fn pencils_that_share_an_error_fail_together() {
    let accuracy = errors(&[(Term::ShapingAcross, 0.03), (Term::ShapingPosition, 0.04)]);
    for (pencils, expected) in ALL_GOOD {
        let trial = roomy(&only_off_centre(0.1, pencils), &accuracy);
        assert_eq!(trial.across(), pencils as usize);
        let tally = trial.simulate(6, 0..300, &mut |_| true);
        let sandwiches = tally.sandwiches() as f64;
        let all = tally.histogram()[trial.across()] as f64 / sandwiches;
        let error = (expected * (1.0 - expected) / sandwiches).sqrt();
        assert!(
            (all - expected).abs() < 5.0 * error,
            "{pencils}: {all} for {expected}"
        );
        // What one pencil does alone is the first row, whatever their number.
        close(trial.prospect().centred, ALL_GOOD[0].1, 1e-12);
    }
}

#[test]
fn a_stack_of_four_adds_up_as_root_of_the_sum_of_squares() {
    // Budynas and Nisbett, Shigley's Mechanical Engineering Design, Example 1–3: four parts of
    // ± 0.003, 0.001, 0.005 and 0.001 make a gap that is ± 0.010 in the worst case; the root of
    // the sum of the squares is ± 0.006 (computed). Limits at three standard deviations hold
    // 99.73 % of the parts, and of the gaps. Grooves and heads of two slats count half each, so
    // one of them stands for its part with √2 as much.
    let mut draft = AccuracyDraft::new("");
    for term in Term::ALL {
        draft.error_mut(term).size = Typed::Number(0.0);
    }
    let root = std::f64::consts::SQRT_2;
    for (term, limits) in [
        (Term::ShapingPosition, 0.003),
        (Term::ShapingAcross, 0.001),
        (Term::GroovePosition, 0.005 * root),
        (Term::GrooveHead, 0.001 * root),
    ] {
        draft.error_mut(term).size = Typed::Number(limits);
        draft.error_mut(term).reading = Reading::Limits;
    }
    let accuracy = draft.check().expect("the errors lie in their ranges");
    // 1 − 2·Q(3), from the upper tail 0.00134989803163009.
    let trial = roomy(&only_off_centre(0.006, 1.0), &accuracy);
    close(
        trial.prospect().centred,
        1.0 - 2.0 * 0.001_349_898_031_630_09,
        1e-12,
    );
    // The worst case is five standard deviations: 2·Q(5) = 5.733e-7 lie beyond.
    let trial = roomy(&only_off_centre(0.010, 1.0), &accuracy);
    close(1.0 - trial.prospect().centred, 5.733_031_4e-7, 1e-6);
}

#[test]
fn a_process_off_its_middle_leaves_as_much_out_as_the_handbook_says() {
    // NIST/SEMATECH e-Handbook of Statistical Methods, 6.1.6 (from memory): limits 8 and 20,
    // mean 16, standard deviation 2: 2.278 % out. In tenths: ± 0.6 about 0.2 off.
    let accuracy = lifted(errors(&[(Term::BottomThickness, 0.2)]), 0.2);
    let out = 1.0
        - roomy(&only_off_centre(0.6, 1.0), &accuracy)
            .prospect()
            .centred;
    assert_eq!(format!("{:.3}", out * 100.0), "2.278");
}

#[test]
fn a_centred_process_leaves_out_what_its_capability_says() {
    // Parts in a million 2·Q(3·Cp), computed.
    for (sigmas, parts) in [(3.0, 2699.796), (4.0, 63.342), (5.0, 0.573_303)] {
        let accuracy = errors(&[(Term::ShapingUp, 0.3 / sigmas)]);
        let out = 1.0
            - roomy(&only_off_centre(0.3, 1.0), &accuracy)
                .prospect()
                .centred;
        assert!((out * 1e6 / parts - 1.0).abs() < 1e-5, "{sigmas}: {out}");
    }
}
