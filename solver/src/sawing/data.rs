//! The planks, the blanks and the saws, first as a draft and then checked.
//!
//! Whole numbers throughout: micrometres, hundredths of the currency, pieces. So a plan and its
//! bound can be recounted without rounding.

use super::board::Board;

/// Most kinds of plank.
pub const MOST_PLANKS: usize = 64;
/// Most kinds of blank.
pub const MOST_BLANKS: usize = 200;
/// Most blanks of one kind.
pub const MOST_DEMAND: u64 = 10_000_000;
/// Most blanks of all kinds, and most planks of one kind on hand.
pub const MOST_PIECES: u64 = 100_000_000;
/// Longest plank or blank, micrometres: 30 m.
pub const MOST_LENGTH: i64 = 30_000_000;
/// Widest plank or blank, micrometres: 2 m.
pub const MOST_WIDTH: i64 = 2_000_000;
/// Thickest plank or blank, micrometres: 0.5 m.
pub const MOST_THICKNESS: i64 = 500_000;
/// Widest kerf, micrometres: 50 mm.
pub const MOST_KERF: i64 = 50_000;
/// Highest price of a plank, and of a metre of offcut, hundredths of the currency.
pub const MOST_PRICE: i64 = 100_000_000;

/// Length, width and thickness, micrometres.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Dimensions {
    /// Along the grain.
    pub length: i64,
    /// Across the grain, the wide face.
    pub width: i64,
    /// Across the grain, the narrow face.
    pub thickness: i64,
}

impl Dimensions {
    /// Length × width × thickness in whole cubic millimetres, rounded to the nearest.
    #[must_use]
    pub fn cubic_millimetres(&self) -> i64 {
        let product = i128::from(self.length) * i128::from(self.width) * i128::from(self.thickness);
        // Within the greatest sizes below 3·10¹⁰.
        ((product + 500_000_000) / 1_000_000_000) as i64
    }
}

/// A kind of plank.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct PlankStock {
    /// As bought.
    pub size: Dimensions,
    /// Cut off each end, the cut included, micrometres.
    pub end_trim: i64,
    /// Ripped off each edge, the cut included, micrometres.
    pub edge_trim: i64,
    /// Price of a plank, hundredths of the currency.
    pub price: i64,
    /// Planks that can be had; `None` is as many as wanted.
    pub on_hand: Option<u64>,
}

/// A kind of blank. Its width lies in the thickness of the plank, and its thickness is ripped
/// across the width of the plank.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct BlankOrder {
    /// As sawn.
    pub size: Dimensions,
    /// Blanks wanted.
    pub demand: u64,
    /// What a blank beyond the demand is worth, hundredths of the currency.
    pub over_worth: i64,
    /// How many blanks beyond the demand are worth that; more are worth nothing.
    pub most_over: u64,
}

/// What is left at the end of a plank and can be used again.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct OffcutWorth {
    /// Shorter ones are waste, micrometres.
    pub shortest: i64,
    /// Worth of a metre, hundredths of the currency.
    pub metre: i64,
}

impl OffcutWorth {
    /// Worth of an offcut of this length, micrometres, in whole hundredths, rounded down.
    ///
    /// ```
    /// use solver::sawing::OffcutWorth;
    /// let worth = OffcutWorth { shortest: 500_000, metre: 150 };
    /// assert_eq!((worth.of(499_999), worth.of(500_000), worth.of(1_010_000)), (0, 75, 151));
    /// ```
    #[must_use]
    pub const fn of(&self, length: i64) -> i64 {
        if length < self.shortest {
            0
        } else {
            // What is beyond the ranges is worth as much as can be counted.
            length.saturating_mul(self.metre) / 1_000_000
        }
    }
}

/// What is made as small as possible.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SawingAim {
    /// Price of the planks, less the worth of offcuts and of blanks beyond the demand; hundredths of
    /// the currency.
    Cost,
    /// Planks.
    Planks,
    /// Volume of the planks, whole cubic millimetres, each plank rounded.
    Volume,
}

impl SawingAim {
    /// Every aim.
    pub const ALL: [Self; 3] = [Self::Cost, Self::Planks, Self::Volume];
}

/// What is to be sawn from what, as it was described.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct SawingDraft {
    /// The kinds of plank.
    pub planks: Vec<PlankStock>,
    /// The kinds of blank.
    pub blanks: Vec<BlankOrder>,
    /// Wood a crosscut takes, micrometres.
    pub crosscut_kerf: i64,
    /// Wood a rip cut takes, micrometres.
    pub rip_kerf: i64,
    /// What offcuts are worth, if anything; counts for [`SawingAim::Cost`] only.
    pub offcuts: Option<OffcutWorth>,
    /// What is made small.
    pub aim: SawingAim,
}

/// What is to be sawn from what, checked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SawingData {
    draft: SawingDraft,
    boards: Vec<Board>,
    counts_missing: bool,
}

impl SawingDraft {
    /// Planks and blanks of one size across: what is cut along a length only. A blank takes its whole
    /// length of the plank, and each cut between two takes the kerf. The classical problem of cutting
    /// stock, for `pieces` of a length and a number each.
    ///
    /// ```
    /// use solver::sawing::{SawingDraft, SawingLimits, SawingOutcome, saw};
    /// // Chvátal, Linear Programming (1983), chapter 13: 453 rolls.
    /// let draft = SawingDraft::along(100, 0, &[(45, 97), (36, 610), (31, 395), (14, 211)]);
    /// let outcome = saw(&draft.check().unwrap(), &SawingLimits::default(), &mut |_| true).unwrap();
    /// let SawingOutcome::Proved { plan, .. } = outcome else { panic!("proved") };
    /// assert_eq!(plan.planks(), 453);
    /// ```
    #[must_use]
    pub fn along(length: i64, kerf: i64, pieces: &[(i64, u64)]) -> Self {
        let size = |length| Dimensions {
            length,
            width: 1,
            thickness: 1,
        };
        Self {
            planks: vec![PlankStock {
                size: size(length),
                end_trim: 0,
                edge_trim: 0,
                price: 1,
                on_hand: None,
            }],
            blanks: pieces
                .iter()
                .map(|&(length, demand)| BlankOrder {
                    size: size(length),
                    demand,
                    over_worth: 0,
                    most_over: 0,
                })
                .collect(),
            crosscut_kerf: kerf,
            rip_kerf: 0,
            offcuts: None,
            aim: SawingAim::Planks,
        }
    }

    /// Turns the draft into data that can be planned, or names every rule it breaks.
    ///
    /// # Errors
    /// One [`SawingProblem`] for each number outside its range, and for each blank that fits no plank.
    ///
    /// ```
    /// use solver::sawing::{SawingDraft, SawingProblem};
    /// let draft = SawingDraft::along(1_000, 3, &[(1_001, 5), (0, 1)]);
    /// let problems = draft.check().unwrap_err();
    /// assert!(matches!(problems[0], SawingProblem::BlankSize { blank: 1 }));
    /// ```
    pub fn check(self) -> Result<SawingData, Vec<SawingProblem>> {
        let mut problems = Vec::new();
        self.check_planks(&mut problems);
        self.check_blanks(&mut problems);
        self.check_saws(&mut problems);
        if !problems.is_empty() {
            return Err(problems);
        }
        let boards: Vec<Board> = (0..self.planks.len())
            .map(|plank| Board::of(&self, plank))
            .collect();
        for (blank, order) in self.blanks.iter().enumerate() {
            let fits = boards.iter().any(|board| board.takes(blank));
            if order.demand > 0 && !fits {
                let size = order.size;
                problems.push(SawingProblem::FitsNoPlank { blank, size });
            }
        }
        if problems.is_empty() {
            Ok(SawingData {
                draft: self,
                boards,
                counts_missing: false,
            })
        } else {
            Err(problems)
        }
    }

    fn check_planks(&self, problems: &mut Vec<SawingProblem>) {
        let lines = self.planks.len();
        if lines == 0 {
            problems.push(SawingProblem::NoPlanks);
        }
        if lines > MOST_PLANKS {
            problems.push(SawingProblem::TooManyPlanks { lines });
        }
        for (plank, stock) in self.planks.iter().enumerate() {
            if !is_size(&stock.size) {
                problems.push(SawingProblem::PlankSize { plank });
            }
            if !(0..=MOST_LENGTH).contains(&stock.end_trim)
                || !(0..=MOST_WIDTH).contains(&stock.edge_trim)
                || 2 * stock.end_trim >= stock.size.length
                || 2 * stock.edge_trim >= stock.size.width
            {
                problems.push(SawingProblem::Trim { plank });
            }
            if !(0..=MOST_PRICE).contains(&stock.price) {
                let price = stock.price;
                problems.push(SawingProblem::Price { plank, price });
            }
            if self.aim == SawingAim::Cost
                && let Some(worth) = self.offcuts
                && worth.of(stock.size.length) > stock.price
            {
                problems.push(SawingProblem::DearOffcut { plank });
            }
            if let Some(on_hand) = stock.on_hand.filter(|&on_hand| on_hand > MOST_PIECES) {
                problems.push(SawingProblem::OnHand { plank, on_hand });
            }
        }
    }

    fn check_blanks(&self, problems: &mut Vec<SawingProblem>) {
        let lines = self.blanks.len();
        if lines > MOST_BLANKS {
            problems.push(SawingProblem::TooManyBlanks { lines });
        }
        for (blank, order) in self.blanks.iter().enumerate() {
            if !is_size(&order.size) {
                problems.push(SawingProblem::BlankSize { blank });
            }
            if order.demand > MOST_DEMAND || order.most_over > MOST_DEMAND {
                let demand = order.demand.max(order.most_over);
                problems.push(SawingProblem::Demand { blank, demand });
            }
            if !(0..=MOST_PRICE).contains(&order.over_worth) {
                let worth = order.over_worth;
                problems.push(SawingProblem::OverWorth { blank, worth });
            }
        }
        let pieces: u128 = self
            .blanks
            .iter()
            .map(|order| u128::from(order.demand) + u128::from(order.most_over))
            .sum();
        if pieces > u128::from(MOST_PIECES) {
            problems.push(SawingProblem::TooManyPieces { pieces });
        }
    }

    fn check_saws(&self, problems: &mut Vec<SawingProblem>) {
        for kerf in [self.crosscut_kerf, self.rip_kerf] {
            if !(0..=MOST_KERF).contains(&kerf) {
                problems.push(SawingProblem::Kerf { kerf });
            }
        }
        if let Some(worth) = self.offcuts
            && (!(1..=MOST_LENGTH).contains(&worth.shortest)
                || !(0..=MOST_PRICE).contains(&worth.metre))
        {
            problems.push(SawingProblem::Offcuts);
        }
    }
}

fn is_size(size: &Dimensions) -> bool {
    (1..=MOST_LENGTH).contains(&size.length)
        && (1..=MOST_WIDTH).contains(&size.width)
        && (1..=MOST_THICKNESS).contains(&size.thickness)
}

impl SawingData {
    /// What was described.
    #[must_use]
    pub const fn draft(&self) -> &SawingDraft {
        &self.draft
    }

    /// The kinds of plank.
    #[must_use]
    pub fn planks(&self) -> &[PlankStock] {
        &self.draft.planks
    }

    /// The kinds of blank.
    #[must_use]
    pub fn blanks(&self) -> &[BlankOrder] {
        &self.draft.blanks
    }

    /// What each plank can be sawn into, in the order of the planks.
    pub(super) fn boards(&self) -> &[Board] {
        &self.boards
    }

    /// The same with another question: how few blanks must be missing.
    pub(super) fn counting_missing(&self) -> Self {
        Self {
            counts_missing: true,
            ..self.clone()
        }
    }

    /// Whether it is the number of missing blanks that is made small.
    pub(super) const fn counts_missing(&self) -> bool {
        self.counts_missing
    }

    /// What a plank of this kind adds to what is made small.
    #[must_use]
    pub fn weight(&self, plank: usize) -> i64 {
        if self.counts_missing {
            return 0;
        }
        let stock = &self.draft.planks[plank];
        match self.draft.aim {
            SawingAim::Cost => stock.price,
            SawingAim::Planks => 1,
            SawingAim::Volume => stock.size.cubic_millimetres(),
        }
    }

    /// What an offcut of this length takes off what is made small.
    #[must_use]
    pub fn offcut_worth(&self, length: i64) -> i64 {
        match (self.draft.aim, self.draft.offcuts) {
            (SawingAim::Cost, Some(worth)) if !self.counts_missing => worth.of(length),
            _ => 0,
        }
    }

    /// What a blank beyond the demand takes off what is made small, for so many of them.
    #[must_use]
    pub fn over_worth(&self, blank: usize) -> (i64, u64) {
        let order = &self.draft.blanks[blank];
        if self.draft.aim == SawingAim::Cost && order.over_worth > 0 && !self.counts_missing {
            (order.over_worth, order.most_over)
        } else {
            (0, 0)
        }
    }
}

/// What keeps planks and blanks from being planned. Lines are counted from 0 in the fields and from
/// 1 in the messages.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum SawingProblem {
    /// There is nothing to saw from.
    #[error("there is no plank to saw from")]
    NoPlanks,
    /// The list of planks is too long.
    #[error("{lines} kinds of plank are more than {MOST_PLANKS}")]
    TooManyPlanks {
        /// Kinds of plank.
        lines: usize,
    },
    /// The list of blanks is too long.
    #[error("{lines} kinds of blank are more than {MOST_BLANKS}")]
    TooManyBlanks {
        /// Kinds of blank.
        lines: usize,
    },
    /// A plank has no size, or is beyond what is counted.
    #[error("plank {}: length, width and thickness must be above 0 and at most 30 m, 2 m and 0.5 m", plank + 1)]
    PlankSize {
        /// The plank.
        plank: usize,
    },
    /// Nothing is left between the trims.
    #[error("plank {}: the trims must be 0 or more and leave some of the plank", plank + 1)]
    Trim {
        /// The plank.
        plank: usize,
    },
    /// A price out of range, hundredths.
    #[error("plank {}: the price must be from 0 to 1 000 000; it is {}", plank + 1, hundredths(*price))]
    Price {
        /// The plank.
        plank: usize,
        /// What stands there.
        price: i64,
    },
    /// Too many planks.
    #[error("plank {}: {on_hand} on hand are more than {MOST_PIECES}", plank + 1)]
    OnHand {
        /// The plank.
        plank: usize,
        /// What stands there.
        on_hand: u64,
    },
    /// A blank has no size, or is beyond what is counted.
    #[error("blank {}: length, width and thickness must be above 0 and at most 30 m, 2 m and 0.5 m", blank + 1)]
    BlankSize {
        /// The blank.
        blank: usize,
    },
    /// Too many of one blank.
    #[error("blank {}: {demand} are more than {MOST_DEMAND}", blank + 1)]
    Demand {
        /// The blank.
        blank: usize,
        /// What stands there.
        demand: u64,
    },
    /// The worth of a blank too many is out of range, hundredths.
    #[error("blank {}: the worth of one too many must be from 0 to 1 000 000; it is {}", blank + 1, hundredths(*worth))]
    OverWorth {
        /// The blank.
        blank: usize,
        /// What stands there.
        worth: i64,
    },
    /// Too many blanks in all.
    #[error("{pieces} blanks in all are more than {MOST_PIECES}")]
    TooManyPieces {
        /// Blanks wanted and worth having beyond.
        pieces: u128,
    },
    /// A kerf out of range, micrometres.
    #[error("a kerf must be from 0 to 50 mm; it is {} mm", millimetres(*kerf))]
    Kerf {
        /// What stands there.
        kerf: i64,
    },
    /// The worth of offcuts is out of range.
    #[error(
        "the shortest offcut must be above 0 and at most 30 m, its worth from 0 to 1 000 000 a metre"
    )]
    Offcuts,
    /// A plank would be worth more as an offcut.
    #[error("plank {}: an offcut of its length would be worth more than the plank costs; make a metre of offcut cheaper or the plank dearer", plank + 1)]
    DearOffcut {
        /// The plank.
        plank: usize,
    },
    /// No plank is long, wide and thick enough between its trims.
    #[error("blank {} fits no plank: it takes one of at least {} × {} × {} mm between the trims", blank + 1, millimetres(size.length), millimetres(size.thickness), millimetres(size.width))]
    FitsNoPlank {
        /// The blank.
        blank: usize,
        /// Its size; its width is the least thickness of the plank, its thickness the least width.
        size: Dimensions,
    },
}

/// Hundredths of the currency in the currency.
fn hundredths(amount: i64) -> f64 {
    amount as f64 / 100.0
}

/// Micrometres as millimetres, all digits.
fn millimetres(micrometres: i64) -> f64 {
    micrometres as f64 / 1000.0
}
