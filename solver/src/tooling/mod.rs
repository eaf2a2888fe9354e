//! The cutterheads of a line, how fast the wood runs past them, and what the shaping knives cut
//! between the pencils.

mod head;

pub use head::{Head, HeadDraft, HeadKind};

use crate::field::{Field, FieldProblem, Typed};
use crate::quantity::{Angle, Length};

/// What is common to the heads of a line, as it is being described; it may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct CutDraft {
    /// How fast the wood is fed, m/min.
    pub feed: Typed,
    /// How far the shaping knives cut past the line where pencils part.
    pub overcut: Typed,
    /// Lean of the sides of the overcut from upright.
    pub draft: Typed,
}

/// What is common to the heads of a line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cut {
    feed: f64,
    overcut: Length,
    draft: Angle,
}

impl CutDraft {
    /// The first value in every field.
    #[must_use]
    pub const fn new() -> Self {
        Self {
            feed: Typed::initial(Field::FeedSpeed),
            overcut: Typed::initial(Field::Overcut),
            draft: Typed::initial(Field::OvercutDraft),
        }
    }

    /// What can be worked with, or every rule that is broken.
    ///
    /// # Errors
    /// One problem for each field that cannot be read or lies outside its range; a feed of 0 does.
    ///
    /// ```
    /// use solver::{CutDraft, Field, Length, Typed};
    /// let mut draft = CutDraft::new();
    /// assert_eq!(draft.check().unwrap().overcut(), Length::millimetres(0.2));
    /// draft.feed = Typed::Number(0.0);
    /// assert_eq!(draft.check().unwrap_err()[0].field, Field::FeedSpeed);
    /// ```
    pub fn check(&self) -> Result<Cut, Vec<FieldProblem>> {
        let mut problems = Vec::new();
        let mut read = |typed: &Typed, field| {
            typed.read(field).unwrap_or_else(|problem| {
                problems.push(problem);
                0.0
            })
        };
        let cut = Cut {
            feed: read(&self.feed, Field::FeedSpeed),
            overcut: Length::millimetres(read(&self.overcut, Field::Overcut)),
            draft: Angle::degrees(read(&self.draft, Field::OvercutDraft)),
        };
        if problems.is_empty() {
            Ok(cut)
        } else {
            Err(problems)
        }
    }
}

impl Default for CutDraft {
    fn default() -> Self {
        Self::new()
    }
}

impl Cut {
    /// How fast the wood is fed, m/min, above 0.
    #[must_use]
    pub const fn feed(&self) -> f64 {
        self.feed
    }

    /// How far the top and the bottom knife each cut past the line where pencils part, at least 0.
    #[must_use]
    pub const fn overcut(&self) -> Length {
        self.overcut
    }

    /// Lean of the sides of the overcut from upright, 0 to 60°.
    #[must_use]
    pub const fn draft(&self) -> Angle {
        self.draft
    }
}
