//! The words of a document where only a few answers are possible.

use schemars::JsonSchema;
use serde::Serialize;
use solver::tolerance::Fault;
use solver::{Blade, Check, HeadKind, Measure, Outcome, Rule, Stage, StagePiece, Term, WoodClass};

/// Declares the words that stand for the variants of a choice of the solver.
macro_rules! words {
    ($(#[$doc:meta])* $name:ident for $solver:ty { $($variant:ident,)+ }) => {
        $(#[$doc])*
        #[derive(Debug, Serialize, JsonSchema)]
        #[serde(rename_all = "snake_case")]
        pub(super) enum $name {
            $($variant,)+
        }

        impl From<$solver> for $name {
            fn from(value: $solver) -> Self {
                match value {
                    $(<$solver>::$variant => Self::$variant,)+
                }
            }
        }
    };
}

words! {
    /// A rule of the trade that a layout is held against.
    RuleWord for Rule {
        Width, Edge, Land, TopThickness, BottomThickness, TopFloor, BottomFloor, Wall, Bond,
        OpenGroove, Length, Undercut, Relief,
    }
}

words! {
    /// How a check came out: `noted` is allowed, but worth knowing.
    OutcomeWord for Outcome { Passed, Noted, Failed, }
}

words! {
    /// A class of wood in the balance.
    WoodWord for WoodClass {
        Pencils, Grooves, Corners, Parting, Edges, Faces, Kerf, Ends, RejectedSlats,
        RejectedPencils,
    }
}

words! {
    /// What is wrong with a pencil: the lead off centre, the wall too thin, half grooves that do
    /// not let the lead in, an outer pencil over the edge of a slat.
    FaultWord for Fault { Eccentric, ThinWall, TightGroove, Incomplete, }
}

words! {
    /// An error of the machines, the slats or the leads.
    ErrorWord for Term {
        GroovePosition, ShapingPosition, LeadDiameter, GrooveHead, GrooveDepth, SlatWidth,
        BottomThickness, GlueShift, ShapingAcross, ShapingUp,
    }
}

words! {
    /// A knife, in the order of the work.
    KnifeWord for Blade { TopGrooves, BottomGrooves, Top, Bottom, }
}

words! {
    /// A head of the line.
    HeadWord for HeadKind { Groove, Top, Bottom, }
}

words! {
    /// A stage of the work.
    StageWord for Stage { Grooving, Gluing, Shaping, Coating, Finishing, }
}

words! {
    /// What a stage counts.
    PieceWord for StagePiece { Slats, Sandwiches, Pencils, }
}

/// The unit of the sizes of a check.
#[derive(Debug, Serialize, JsonSchema)]
pub(super) enum UnitWord {
    /// Millimetres.
    #[serde(rename = "mm")]
    Millimetres,
    /// Degrees.
    #[serde(rename = "degrees")]
    Degrees,
}

/// A rule held against a layout.
#[derive(Debug, Serialize, JsonSchema)]
pub(super) struct CheckLine {
    /// The rule.
    rule: RuleWord,
    /// How it came out.
    outcome: OutcomeWord,
    /// The unit of the three numbers below.
    unit: UnitWord,
    /// What is there.
    found: f64,
    /// What is asked.
    asked: f64,
    /// What is there beyond what is asked; negative where the check fails.
    margin: f64,
}

impl From<&Check> for CheckLine {
    fn from(check: &Check) -> Self {
        let number = |measure: Measure| match measure {
            Measure::Length(length) => length.in_millimetres(),
            Measure::Angle(angle) => angle.in_degrees(),
        };
        Self {
            rule: check.rule.into(),
            outcome: check.outcome.into(),
            unit: match check.found {
                Measure::Length(_) => UnitWord::Millimetres,
                Measure::Angle(_) => UnitWord::Degrees,
            },
            found: number(check.found),
            asked: number(check.asked),
            margin: number(check.margin()),
        }
    }
}
