//! The last plan of cuts, kept by the browser so that loading the page anew does not lose it.
//!
//! Only the plan is kept, which can be recounted. What was proved of it is not, as the proof is not at
//! hand any more.

use crate::preference;
use crate::protocol::Cuts;
use js_sys::JSON;
use serde::{Deserialize, Serialize};
use solver::sawing::{SawingData, verify};
use std::hash::{DefaultHasher, Hash, Hasher};

/// A plan, and what it was asked of.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(super) struct KeptPlan {
    /// The fingerprint of planks, blanks and saws.
    of: String,
    cuts: Cuts,
}

impl KeptPlan {
    /// A plan of these data.
    pub(super) fn new(data: &SawingData, cuts: Cuts) -> Self {
        Self {
            of: fingerprint(data),
            cuts,
        }
    }

    /// The plan; nothing where it is of other data, or does not stand its recount.
    pub(super) fn of(&self, data: &SawingData) -> Option<&Cuts> {
        let stands = |cuts: &Cuts| Some(verify(data, &cuts.plan(data)?).is_ok());
        let is_its = self.of == fingerprint(data) && stands(&self.cuts) == Some(true);
        is_its.then_some(&self.cuts)
    }

    /// The plan kept last, if there is one that can be read.
    pub(super) fn recall() -> Option<Self> {
        let object = JSON::parse(&preference::plan()?).ok()?;
        serde_wasm_bindgen::from_value(object).ok()
    }

    /// Lets the browser keep it in place of the last one.
    pub(super) fn keep(&self) {
        let object = serde_wasm_bindgen::to_value(self).ok();
        let text = object.and_then(|object| JSON::stringify(&object).ok());
        if let Some(text) = text.and_then(|text| text.as_string()) {
            preference::keep_plan(&text);
        }
    }
}

/// Tells data from others. Another build of the page may tell them in another way: then a plan is
/// not found again, and no wrong one is.
fn fingerprint(data: &SawingData) -> String {
    let mut hasher = DefaultHasher::new();
    data.draft().hash(&mut hasher);
    format!("{:016x}", hasher.finish())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demo;
    use crate::protocol::Sawn;
    use solver::Typed;
    use solver::sawing::{SawingLimits, saw};

    fn planned(rip_kerf: f64) -> (SawingData, Cuts) {
        let mut project = demo::project();
        project.saw_shop.rip_kerf = Typed::Number(rip_kerf);
        let data = project.check_sawing().unwrap();
        let limits = SawingLimits { relaxations: 1 };
        let outcome = saw(&data, &limits, &mut |_| true).unwrap();
        let (Sawn::Proved { cuts, .. }
        | Sawn::WithinGap { cuts, .. }
        | Sawn::Short { cuts, .. }
        | Sawn::NoneFound { cuts, .. }) = (&outcome).into();
        (data, cuts)
    }

    #[test]
    fn a_plan_is_found_again_for_the_data_that_it_is_of() {
        let (data, cuts) = planned(1.6);
        let (other, _) = planned(1.7);
        let kept = KeptPlan::new(&data, cuts.clone());
        assert_eq!(kept.of(&data), Some(&cuts));
        assert_eq!(kept.of(&other), None);
    }

    #[test]
    fn a_plan_that_does_not_stand_its_recount_is_none() {
        let (data, _) = planned(1.6);
        // Sawn with a thinner saw, more is made of a plank than there is room for.
        let (_, thinner) = planned(0.0);
        assert_eq!(KeptPlan::new(&data, thinner).of(&data), None);
    }
}
