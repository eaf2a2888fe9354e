//! Saw shops with anything in their fields.

use super::project::any_saw_shop;
use super::{UNITS, drawn};
use proptest::prelude::*;
use solver::sawing::{
    SawingBalance, SawingLimits, SawingList, SawingNames, SawingOutcome, SawnClass, saw,
};
use solver::{SawnReckoning, Sheet, draw_cut};

/// Few relaxations: what is found must be right, not good.
const LIMITS: SawingLimits = SawingLimits { relaxations: 8 };

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn any_saw_shop_is_planned_or_refused_in_words(draft in any_saw_shop()) {
        let data = match draft.check_sawing() {
            Ok(data) => data,
            Err(problems) => {
                prop_assert!(!problems.is_empty());
                for problem in problems {
                    for unit in UNITS {
                        prop_assert!(!problem.problem.message(unit).is_empty());
                    }
                }
                return Ok(());
            }
        };
        let outcome = saw(&data, &LIMITS, &mut |_| true);
        prop_assert!(outcome.is_ok(), "{:?}", outcome);
        let Ok(
            SawingOutcome::Proved { plan, .. }
            | SawingOutcome::WithinGap { plan, .. }
            | SawingOutcome::Short { plan, .. }
            | SawingOutcome::NoneFound { plan, .. },
        ) = outcome else {
            return Ok(());
        };
        let list = SawingList::of(&data, &plan).expect("the plan was recounted");
        let reckoning = SawnReckoning::of(&data, &plan);
        let balance = SawingBalance::of(&data, &plan).expect("the plan was recounted");
        let parts: i128 = SawnClass::ALL.iter().map(|class| balance.cubic_micrometres(*class)).sum();
        prop_assert_eq!(parts, balance.planks_in_cubic_micrometres());
        for (line, order) in reckoning.blanks.iter().zip(data.blanks()) {
            prop_assert_eq!(line.made + line.short, order.demand + line.over);
        }
        prop_assert_eq!(list.planks, plan.planks());
        let names = SawingNames { planks: &[], blanks: &[] };
        for (pattern, _) in plan.cuts.iter().take(4) {
            for unit in UNITS {
                let sheet = Sheet { width: 640.0, row: 26.0, text: 66.0, unit };
                let drawing = draw_cut(pattern, &data, &names, &sheet);
                drawn(&drawing.expect("the plan was recounted"))?;
            }
        }
    }
}
