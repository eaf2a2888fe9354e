//! Found layouts, laid out once more.

use super::{Answer, Found, Question};
use crate::layout::{Layout, Measure, Setup, lay_out};
use crate::quantity::Length;

impl Question<'_> {
    /// Whether a found layout comes out when it is laid out: it fits, with as many pencils and the
    /// same margin. The search works with the hull of the wood, the layout with the wood itself, so
    /// what one of them got wrong the other would not.
    #[must_use]
    pub fn confirms(&self, found: &Found) -> bool {
        /// Margins nearer than this are the same, mm: what is forgiven in one length, for each of the
        /// two edges, the width and the pitch that may enter.
        const SAME: f64 = 4.0 * Length::SLACK.in_millimetres();
        let layout = laid(self, found);
        layout.fits()
            && layout.pencils() == found.pencils
            && (margin(&layout) - found.margin.in_millimetres()).abs() <= SAME
    }

    /// Leaves out of an answer what does not come out as found, and tells how many layouts those are.
    /// Where there are any, nothing is proved: what is left holds, but a better one may be missing.
    pub fn keep_confirmed(&self, answer: &mut Answer) -> usize {
        let mut left_out = 0;
        for found in answer.best.iter_mut().chain([&mut answer.frontier]) {
            let before = found.len();
            found.retain(|found| self.confirms(found));
            left_out += before - found.len();
        }
        left_out
    }
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
    use crate::quantity::Angle;
    use crate::rules::{Rules, RulesDraft};
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

    fn rules(bond: f64, axis_height: f64, relief: f64) -> Rules {
        let mut draft = RulesDraft::new();
        draft.bond = Typed::Number(bond);
        draft.axis_height = Typed::Number(axis_height);
        draft.relief = Typed::Number(relief);
        draft.check().unwrap()
    }

    /// Asks something of a search of two stocks and a cutter set with any turn.
    fn searched(
        barrel: &Barrel,
        rules: &Rules,
        axis: AxisChoice,
        ask: impl FnOnce(&Question<'_>, Answer),
    ) {
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
            rules,
            search: &draft.check().unwrap(),
            accuracy: None,
        };
        ask(&question, search(&question, &mut |_, _| ()));
    }

    /// Every row of an answer comes out.
    fn check(question: &Question<'_>, answer: Answer) {
        assert!(answer.obstacle.is_some() || !answer.frontier.is_empty());
        for found in answer.best.iter().flatten().chain(&answer.frontier) {
            let layout = laid(question, found);
            let failed: Vec<_> = layout
                .checks()
                .iter()
                .filter(|check| check.outcome == Outcome::Failed)
                .collect();
            assert!(
                question.confirms(found),
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
                    searched(&barrel, &rules(1.2, 0.0, 0.0), axis, check);
                }
            }
        }
    }

    #[test]
    fn a_layout_that_is_not_as_found_is_not_confirmed() {
        let barrel = drawn("M0 0 H8 V8 H0 Z", 7.0, 2.0, 0.0).unwrap();
        searched(
            &barrel,
            &rules(1.2, 0.0, 0.0),
            AxisChoice::Any,
            |question, answer| {
                let found = answer.frontier[0];
                assert!(question.confirms(&found));
                let wrong: [fn(&mut Found); 4] = [
                    |found| found.pencils += 1,
                    |found| found.pitch = found.pitch - Length::millimetres(3.0),
                    |found| found.margin += Length::millimetres(1e-7),
                    |found| found.turn = Angle::degrees(45.0),
                ];
                for spoil in wrong {
                    let mut spoilt = found;
                    spoil(&mut spoilt);
                    assert!(!question.confirms(&spoilt), "{spoilt:?}");
                }
            },
        );
    }

    #[test]
    fn what_is_not_confirmed_is_left_out_and_counted() {
        let barrel = drawn("M0 0 H8 V8 H0 Z", 7.0, 2.0, 0.0).unwrap();
        let rules = rules(1.2, 0.0, 0.0);
        searched(&barrel, &rules, AxisChoice::Any, |question, mut answer| {
            let whole = answer.clone();
            assert_eq!(question.keep_confirmed(&mut answer), 0);
            assert_eq!(answer, whole);
            answer.frontier[0].pencils += 1;
            answer.best[0].insert(0, answer.frontier[0]);
            assert_eq!(question.keep_confirmed(&mut answer), 2);
            assert_eq!(answer.frontier, whole.frontier[1..]);
            assert_eq!(answer.best, whole.best);
        });
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(128))]

        #[test]
        fn any_curved_outline_is_laid_as_found(
            path in any_curved_path(), width in 5.0_f64..9.0, lead in 0.5_f64..2.0,
            coat in prop::sample::select(vec![0.0, 0.01, 0.04, 0.08]), any_axis in any::<bool>(),
            bond in 0.3_f64..2.5, axis_height in prop::sample::select(vec![0.0, -0.2, 0.3]),
            relief in prop::sample::select(vec![0.0, 5.0, 15.0]),
        ) {
            if let Some(barrel) = drawn(&path, width, lead, coat) {
                let axis = if any_axis { AxisChoice::Any } else { AxisChoice::AsInRules };
                searched(&barrel, &rules(bond, axis_height, relief), axis, check);
            }
        }
    }
}
