//! Found layouts, laid out once more.
//!
//! The search works with the hull of the wood, the laying out with the wood itself as it lies; so
//! what one of them gets wrong the other does not. Every layout that is told has to come out as it was
//! found.

use super::{Found, Question};
use crate::layout::{Layout, Measure, Setup, lay_out};
use crate::quantity::Length;

/// Whether a layout comes out as it was found: it fits, with as many pencils and the same margin.
pub(super) fn comes_out(question: &Question<'_>, found: &Found) -> bool {
    /// Margins nearer than this are the same, mm: what is forgiven in one length, for each of the two
    /// edges, the width and the pitch that may enter.
    const SAME: f64 = 4.0 * Length::SLACK.in_millimetres();
    let layout = laid(question, found);
    layout.fits()
        && layout.pencils() == found.pencils
        && (margin(&layout) - found.margin.in_millimetres()).abs() <= SAME
}

/// A found layout, laid by the rules it says.
pub(super) fn laid(question: &Question<'_>, found: &Found) -> Layout {
    lay_out(&Setup {
        barrel: question.barrel,
        turn: found.turn,
        top: &question.slats[found.top],
        bottom: &question.slats[found.bottom],
        rules: &found.rules(question.rules),
    })
}

/// The least margin of a layout in the room of its slats, mm.
pub(super) fn margin(layout: &Layout) -> f64 {
    let counted = layout
        .checks()
        .iter()
        .filter(|check| check.rule.counts_in_margin());
    counted
        .map(|check| match check.margin() {
            Measure::Length(margin) => margin.in_millimetres(),
            Measure::Angle(_) => f64::INFINITY,
        })
        .fold(f64::INFINITY, f64::min)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::barrel::{Barrel, BarrelDraft};
    use crate::cutter_set::CutterSetDraft;
    use crate::field::Typed;
    use crate::layout::Outcome;
    use crate::outline::any_path::any_curved_path;
    use crate::rules::RulesDraft;
    use crate::search::search;
    use crate::search_rules::{AxisChoice, Pairs, SearchDraft, Turns};
    use crate::shape::Shape;
    use crate::slat::{Slat, SlatDraft};
    use proptest::prelude::*;

    fn drawn(path: &str, width: f64, lead: f64, coat: f64) -> Option<Barrel> {
        let mut draft = BarrelDraft::new("", Shape::Free);
        draft.path = path.to_owned();
        draft.size = Typed::Number(width);
        draft.lead_diameter = Typed::Number(lead);
        draft.coat = Typed::Number(coat);
        draft.check().ok()
    }

    fn slat(width: f64, thickness: f64) -> Slat {
        let mut draft = SlatDraft::new("");
        draft.width = Typed::Number(width);
        draft.thickness = Typed::Number(thickness);
        draft.check().unwrap()
    }

    /// Searches two stocks and a cutter set with any turn, and holds every row against laying it out.
    fn check(barrel: &Barrel, axis: AxisChoice) {
        let mut set = CutterSetDraft::new("");
        set.pitch = Typed::Number(8.1);
        set.most = Typed::Number(9.0);
        let mut draft = SearchDraft::new();
        (draft.turns, draft.axis, draft.pairs) = (Turns::Any, axis, Pairs::Any);
        draft.new_set_price = Typed::Number(300.0);
        let question = Question {
            barrel,
            slats: &[slat(66.0, 6.4), slat(74.0, 7.6)],
            sets: &[set.check().unwrap()],
            rules: &RulesDraft::new().check().unwrap(),
            search: &draft.check().unwrap(),
        };
        let answer = search(&question, &mut |_, _| ());
        for found in answer.best.iter().flatten().chain(&answer.frontier) {
            let layout = laid(&question, found);
            let failed: Vec<_> = layout
                .checks()
                .iter()
                .filter(|check| check.outcome == Outcome::Failed)
                .collect();
            assert!(
                comes_out(&question, found),
                "{found:?} came out with {} pencils, a margin of {} and failed {failed:?}",
                layout.pencils(),
                margin(&layout)
            );
        }
    }

    #[test]
    fn outlines_of_smooth_curves_are_laid_as_found() {
        for path in [
            "M5 2 C 4 0 0 1 1 5 C 2 8 4 9 5 9 C 6 9 8 8 9 5 C 10 1 6 0 5 2 Z",
            "M9 5 A3.02 3.17 0 0 1 5 9 Q1.714 8.286 1 5 A2.24 5.5 0 0 1 5 1 Q8.286 1.714 9 5Z",
            "M4 8 C 0 5 0 0 4 2 C 8 0 8 5 4 8 Z",
        ] {
            for (width, coat) in [(7.0, 0.0), (7.0, 0.03), (7.0, 0.08), (10.0, 0.08)] {
                let barrel = drawn(path, width, 1.0, coat).unwrap();
                for axis in [AxisChoice::AsInRules, AxisChoice::Any] {
                    check(&barrel, axis);
                }
            }
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(128))]

        #[test]
        fn any_curved_outline_is_laid_as_found(
            path in any_curved_path(), width in 5.0_f64..9.0, lead in 0.5_f64..2.0,
            coat in prop::sample::select(vec![0.0, 0.01, 0.04, 0.08]), any_axis in any::<bool>(),
        ) {
            if let Some(barrel) = drawn(&path, width, lead, coat) {
                check(&barrel, if any_axis { AxisChoice::Any } else { AxisChoice::AsInRules });
            }
        }
    }
}
