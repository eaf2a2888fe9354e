//! The stages that a pencil passes, and what each lets through.

/// A stage of the work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Stage {
    /// Slats are grooved.
    Grooving,
    /// Leads are laid, and two slats are glued to a sandwich.
    Gluing,
    /// Sandwiches are shaped to pencils.
    Shaping,
    /// Pencils are coated.
    Coating,
    /// Pencils are printed, tipped and sorted.
    Finishing,
}

/// What a stage counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum StagePiece {
    /// Slats.
    Slats,
    /// Sandwiches.
    Sandwiches,
    /// Pencils.
    Pencils,
}

/// How many pieces a stage takes in and lets through.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct StageCount {
    /// The stage.
    pub stage: Stage,
    /// Pieces that go in.
    pub taken: u64,
    /// Good pieces that the next stage needs of them.
    pub needed: u64,
}

impl Stage {
    /// Every stage, in the order of the work.
    pub const ALL: [Self; 5] = [
        Self::Grooving,
        Self::Gluing,
        Self::Shaping,
        Self::Coating,
        Self::Finishing,
    ];

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Grooving => "Grooving",
            Self::Gluing => "Laying leads and gluing",
            Self::Shaping => "Shaping",
            Self::Coating => "Coating",
            Self::Finishing => "Finishing and sorting",
        }
    }

    /// What it counts.
    #[must_use]
    pub const fn piece(self) -> StagePiece {
        match self {
            Self::Grooving => StagePiece::Slats,
            Self::Gluing => StagePiece::Sandwiches,
            Self::Shaping | Self::Coating | Self::Finishing => StagePiece::Pencils,
        }
    }
}

impl StagePiece {
    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Slats => "slats",
            Self::Sandwiches => "sandwiches",
            Self::Pencils => "pencils",
        }
    }
}

/// The pieces that must go into a stage that lets a share through, so that so many come out.
pub(super) fn pieces_for(needed: u64, share: f64) -> u64 {
    /// Rounding of the division must not ask for one more.
    const SLACK: f64 = 1e-9;
    // The counts of a run stay far below what a float holds exactly.
    let pieces = needed as f64 / share;
    (pieces * (1.0 - SLACK)).ceil() as u64
}
