//! The words a file uses where only a few answers are possible.

use serde::{Deserialize, Serialize};
use solver::order_plan::{PlanAim, Pricing};
use solver::sawing::SawingAim;
use solver::{
    AxisChoice, MoistureSource, Pairs, Reading, Sawing, Seam, Shape, Spacing, Turns, Way,
};

/// A choice that a file keeps as one of a few words.
pub(super) trait Word: Copy + 'static {
    /// Every word with what it stands for, as serde writes it.
    const WORDS: &'static [(&'static str, Self)];
}

/// Declares a choice once: its words, and what they stand for in the solver.
macro_rules! words {
    ($(#[$doc:meta])* $name:ident for $solver:ty {
        $($(#[$variant_doc:meta])* $variant:ident = $word:literal is $value:pat => $made:expr,)+
    }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        pub enum $name {
            $($(#[$variant_doc])* #[serde(rename = $word)] $variant,)+
        }

        impl Word for $name {
            const WORDS: &'static [(&'static str, Self)] = &[$(($word, Self::$variant)),+];
        }

        impl From<$solver> for $name {
            fn from(value: $solver) -> Self {
                match value {
                    $($value => Self::$variant,)+
                }
            }
        }

        impl From<$name> for $solver {
            fn from(word: $name) -> Self {
                match word {
                    $($name::$variant => $made,)+
                }
            }
        }
    };
}

words! {
    /// The kind of outline.
    ShapeWord for Shape {
        /// A circle.
        Round = "round" is Shape::Round => Shape::Round,
        /// Six equal faces.
        Hexagonal = "hexagonal" is Shape::Hexagonal => Shape::Hexagonal,
        /// Three equal faces.
        Triangular = "triangular" is Shape::Triangular => Shape::Triangular,
        /// Any number of equal faces.
        Polygonal = "polygonal" is Shape::Polygonal => Shape::Polygonal,
        /// An ellipse.
        Oval = "oval" is Shape::Oval => Shape::Oval,
        /// A rectangle with rounded corners.
        Flat = "flat" is Shape::Flat => Shape::Flat,
        /// Any closed curve.
        Free = "free" is Shape::Free => Shape::Free,
    }
}

words! {
    /// How the grooves are spaced.
    SpacingWord for Spacing {
        /// As close as the land allows.
        Closest = "closest" is Spacing::Closest => Spacing::Closest,
        /// Spread out until the edges have just their allowance.
        Spread = "spread" is Spacing::Spread => Spacing::Spread,
        /// At a given pitch.
        Given = "given" is Spacing::Given => Spacing::Given,
        /// At the pitch of a cutter set.
        Set = "set" is Spacing::Set => Spacing::Set,
    }
}

words! {
    /// How the size of an error is meant.
    ReadingWord for Reading {
        /// One standard deviation.
        Deviation = "deviation" is Reading::Deviation => Reading::Deviation,
        /// ± limits.
        Limits = "limits" is Reading::Limits => Reading::Limits,
    }
}

words! {
    /// How the growth rings run in a slat.
    SawingWord for Sawing {
        /// Along the width.
        Flat = "flat" is Sawing::Flat => Sawing::Flat,
        /// Along the thickness.
        Quarter = "quarter" is Sawing::Quarter => Sawing::Quarter,
    }
}

words! {
    /// Where the moisture content at grooving is taken from.
    MoistureSourceWord for MoistureSource {
        /// It is given.
        Typed = "typed" is MoistureSource::Typed => MoistureSource::Typed,
        /// From the air of the shop.
        Air = "air" is MoistureSource::Air => MoistureSource::Air,
    }
}

words! {
    /// Which turns a search tries.
    TurnsWord for Turns {
        /// The ways in common use.
        Usual = "usual" is Turns::Usual => Turns::Usual,
        /// Every angle.
        Any = "any" is Turns::Any => Turns::Any,
    }
}

words! {
    /// Which heights of the lead axis a search tries.
    AxisWord for AxisChoice {
        /// The one of the machining rules.
        AsInRules = "as in rules" is AxisChoice::AsInRules => AxisChoice::AsInRules,
        /// Every one that fits.
        Any = "any" is AxisChoice::Any => AxisChoice::Any,
    }
}

words! {
    /// Which two slats make a sandwich in a search.
    PairsWord for Pairs {
        /// Two of one stock.
        Same = "same" is Pairs::Same => Pairs::Same,
        /// Any two stocks.
        Any = "any" is Pairs::Any => Pairs::Any,
    }
}

words! {
    /// What is made as small as possible in sawing.
    AimOfSawingWord for SawingAim {
        /// The cost.
        Cost = "cost" is SawingAim::Cost => Self::Cost,
        /// The number of planks.
        Planks = "planks" is SawingAim::Planks => Self::Planks,
        /// The wood.
        Volume = "wood" is SawingAim::Volume => Self::Volume,
    }
}

words! {
    /// What a price of an offer is asked for.
    PricingWord for Pricing {
        /// For every pack of an order that reaches it.
        AllUnits = "all packs" is Pricing::AllUnits => Self::AllUnits,
        /// For the packs of an order from its first one on.
        Incremental = "further packs" is Pricing::Incremental => Self::Incremental,
    }
}

words! {
    /// What is made as small as possible in an order plan.
    AimOfPlanWord for PlanAim {
        /// The cost.
        Cost = "cost" is PlanAim::Cost => Self::Cost,
        /// The timber bought and sawn.
        Timber = "timber" is PlanAim::Timber => Self::Timber,
        /// The number of change-overs.
        Changeovers = "change-overs" is PlanAim::Changeovers => Self::Changeovers,
    }
}

words! {
    /// How a barrel is turned.
    WayWord for Way {
        /// A round barrel looks the same every way.
        AnyWay = "any way" is Way::Usual(Seam::AnyWay) => Self::Usual(Seam::AnyWay),
        /// A hexagon with faces up and down.
        ThroughCorners = "through corners"
            is Way::Usual(Seam::ThroughCorners) => Self::Usual(Seam::ThroughCorners),
        /// A hexagon with corners up and down.
        ThroughFaces = "through faces"
            is Way::Usual(Seam::ThroughFaces) => Self::Usual(Seam::ThroughFaces),
        /// A triangle standing on a face.
        BaseDown = "base down" is Way::Usual(Seam::BaseDown) => Self::Usual(Seam::BaseDown),
        /// A triangle standing on a corner.
        BaseUp = "base up" is Way::Usual(Seam::BaseUp) => Self::Usual(Seam::BaseUp),
        /// A triangle with one face upright.
        PointSideways = "point sideways"
            is Way::Usual(Seam::PointSideways) => Self::Usual(Seam::PointSideways),
        /// A polygon with a face down.
        FaceDown = "face down" is Way::Usual(Seam::FaceDown) => Self::Usual(Seam::FaceDown),
        /// A polygon with a corner down.
        CornerDown = "corner down" is Way::Usual(Seam::CornerDown) => Self::Usual(Seam::CornerDown),
        /// A flat or oval outline on its wide side.
        LyingFlat = "lying flat" is Way::Usual(Seam::LyingFlat) => Self::Usual(Seam::LyingFlat),
        /// A flat or oval outline on its narrow side.
        OnEdge = "on edge" is Way::Usual(Seam::OnEdge) => Self::Usual(Seam::OnEdge),
        /// A free outline as it is drawn.
        AsDrawn = "as drawn" is Way::Usual(Seam::AsDrawn) => Self::Usual(Seam::AsDrawn),
        /// A free outline a quarter turn to the left.
        QuarterLeft = "quarter left" is Way::Usual(Seam::QuarterLeft) => Self::Usual(Seam::QuarterLeft),
        /// A free outline upside down.
        UpsideDown = "upside down" is Way::Usual(Seam::UpsideDown) => Self::Usual(Seam::UpsideDown),
        /// A free outline a quarter turn to the right.
        QuarterRight = "quarter right" is Way::Usual(Seam::QuarterRight) => Self::Usual(Seam::QuarterRight),
        /// At an angle that is given.
        Turned = "turned" is Way::Turned => Self::Turned,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check<W: Word + Serialize>() {
        for (word, choice) in W::WORDS {
            assert_eq!(serde_json::to_value(choice).unwrap(), *word);
        }
    }

    #[test]
    fn the_tables_hold_what_is_written() {
        check::<ShapeWord>();
        check::<SpacingWord>();
        check::<WayWord>();
        check::<SawingWord>();
        check::<MoistureSourceWord>();
        check::<TurnsWord>();
        check::<AxisWord>();
        check::<PairsWord>();
        check::<AimOfSawingWord>();
        check::<PricingWord>();
        check::<AimOfPlanWord>();
    }

    #[test]
    fn there_and_back() {
        for (_, word) in WayWord::WORDS {
            assert_eq!(WayWord::from(Way::from(*word)), *word);
        }
        for shape in Shape::ALL {
            assert_eq!(Shape::from(ShapeWord::from(shape)), shape);
        }
        for (_, word) in SpacingWord::WORDS {
            assert_eq!(SpacingWord::from(Spacing::from(*word)), *word);
        }
        for sawing in Sawing::ALL {
            assert_eq!(Sawing::from(SawingWord::from(sawing)), sawing);
        }
        for source in MoistureSource::ALL {
            assert_eq!(
                MoistureSource::from(MoistureSourceWord::from(source)),
                source
            );
        }
        for turns in Turns::ALL {
            assert_eq!(Turns::from(TurnsWord::from(turns)), turns);
        }
        for axis in AxisChoice::ALL {
            assert_eq!(AxisChoice::from(AxisWord::from(axis)), axis);
        }
        for pairs in Pairs::ALL {
            assert_eq!(Pairs::from(PairsWord::from(pairs)), pairs);
        }
        for aim in SawingAim::ALL {
            assert_eq!(SawingAim::from(AimOfSawingWord::from(aim)), aim);
        }
        for aim in PlanAim::ALL {
            assert_eq!(PlanAim::from(AimOfPlanWord::from(aim)), aim);
        }
        for pricing in [Pricing::AllUnits, Pricing::Incremental] {
            assert_eq!(Pricing::from(PricingWord::from(pricing)), pricing);
        }
    }
}
