//! What is left of pencils and sandwiches from stage to stage.

/// One whole, in millionths.
pub const MILLION: u32 = 1_000_000;

/// Share of what enters each stage that leaves it sound, millionths: 1 000 000 loses nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StageYields {
    /// Sandwiches whose leads lie as they should.
    pub laying: u32,
    /// Sandwiches that hold after gluing.
    pub gluing: u32,
    /// Pencils that come whole from the shaping cutters.
    pub shaping: u32,
    /// Pencils whose coat is sound.
    pub coating: u32,
    /// Pencils whose point stands.
    pub sharpening: u32,
    /// Pencils that pass the last look.
    pub inspection: u32,
}

impl Default for StageYields {
    /// Nothing is lost.
    fn default() -> Self {
        Self {
            laying: MILLION,
            gluing: MILLION,
            shaping: MILLION,
            coating: MILLION,
            sharpening: MILLION,
            inspection: MILLION,
        }
    }
}

impl StageYields {
    /// All six, in the order of the work.
    #[must_use]
    pub const fn all(&self) -> [u32; 6] {
        [
            self.laying,
            self.gluing,
            self.shaping,
            self.coating,
            self.sharpening,
            self.inspection,
        ]
    }

    /// Good pencils to expect from one sandwich, millionths, rounded down: those laid, times the
    /// share of them whose errors are small enough, times the share that each stage leaves.
    ///
    /// The product is kept to 10⁻¹⁸ of a pencil from stage to stage.
    ///
    /// ```
    /// use solver::order_plan::StageYields;
    /// let stages = StageYields { gluing: 990_000, inspection: 980_000, ..StageYields::default() };
    /// // 9 · 0.95 · 0.99 · 0.98 = 8.29521
    /// assert_eq!(stages.good_pencils(9, 950_000), 8_295_210);
    /// ```
    #[must_use]
    pub fn good_pencils(&self, laid: u32, good: u32) -> u64 {
        const KEPT: u128 = 1_000_000_000_000;
        let laid = u128::from(laid) * u128::from(good) * KEPT;
        let left = self.all().iter().fold(laid, |left, &stage| {
            left * u128::from(stage) / u128::from(MILLION)
        });
        // Below 2³² · 2³² where no share is above one.
        (left / KEPT) as u64
    }
}

/// What the materials of a sandwich and its pencils cost. Hundredths of the currency for a thousand.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Materials {
    /// A thousand leads.
    pub thousand_leads: i64,
    /// Glue for a thousand sandwiches.
    pub thousand_glued: i64,
    /// Coat for a thousand pencils.
    pub thousand_coated: i64,
}

impl Materials {
    /// Cost of the materials of one sandwich with so many leads, in thousandths of a hundredth,
    /// rounded to the nearest: leads for all that are laid, glue for what is well laid, coat for the
    /// pencils that come from the cutters.
    ///
    /// ```
    /// use solver::order_plan::{Materials, StageYields};
    /// let materials = Materials { thousand_leads: 700, thousand_glued: 500, thousand_coated: 300 };
    /// let stages = StageYields { laying: 900_000, ..StageYields::default() };
    /// // 9 · 700 + 0.9 · 500 + 9 · 0.9 · 300
    /// assert_eq!(materials.of_sandwich(9, &stages), 9_180);
    /// ```
    #[must_use]
    pub fn of_sandwich(&self, leads: u32, stages: &StageYields) -> i64 {
        let million = i128::from(MILLION);
        let [laying, gluing, shaping, ..] = stages.all().map(i128::from);
        let leads = i128::from(leads);
        let cubed = million * million * million;
        let sum = leads * i128::from(self.thousand_leads) * cubed
            + laying * i128::from(self.thousand_glued) * million * million
            + leads * laying * gluing * shaping * i128::from(self.thousand_coated);
        // Below 2⁶³ within the ranges of the draft.
        ((sum + cubed / 2).div_euclid(cubed)) as i64
    }
}
