//! Every field of the project in one table: label, unit, range, first value, and what it means.

use crate::entry::Dimension;

/// A number that is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Field {
    /// Finished diameter of a round barrel.
    Diameter,
    /// Finished distance between opposite faces of a hexagonal barrel.
    AcrossFlats,
    /// Finished height of a triangular barrel, face to opposite rounded corner.
    Height,
    /// Finished radius of the corners.
    CornerRadius,
    /// Coat build per side.
    Coat,
    /// Length of the pencil.
    PencilLength,
    /// Diameter of the lead.
    LeadDiameter,
    /// Length of the slat along the grain.
    SlatLength,
    /// Width of the slat.
    SlatWidth,
    /// Thickness of the slat.
    SlatThickness,
    /// What a delivered slat may lack in width.
    WidthTolerance,
    /// What a delivered slat may lack in thickness.
    ThicknessTolerance,
    /// Slats in a pack.
    PackSlats,
    /// Price of a pack.
    PackPrice,
    /// Slats on hand.
    OnHand,
    /// Most packs that can be bought.
    PackLimit,
    /// Radial clearance of the groove round the lead.
    Clearance,
    /// Height of the lead axis above the glue plane.
    AxisHeight,
    /// Least wood turned to chips between two pencils.
    Land,
    /// Least wood outside the outer pencils.
    EdgeAllowance,
    /// Least wood taken off each outer face.
    PlaningAllowance,
    /// Least wood under a groove before planing.
    Floor,
    /// Least wall round the lead.
    Wall,
    /// How far a lead may sit off centre.
    Eccentricity,
    /// Least glued width on each side of the lead.
    Bond,
    /// Least lean of a side from upright.
    Relief,
    /// Given distance between groove centres.
    Pitch,
    /// Turn of the barrel about its lead.
    Turn,
    /// Pencils ordered, in gross.
    OrderGross,
}

/// What a field may hold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spec {
    /// The name in front of the field, in sentence case.
    pub label: &'static str,
    /// What sort of quantity it is.
    pub dimension: Dimension,
    /// Least value: mm, degrees, pieces or currency.
    pub least: f64,
    /// Greatest value, in the same unit.
    pub most: f64,
    /// The value a new project starts with, and an example of a good one.
    pub initial: f64,
    /// Whether the field may stay empty.
    pub optional: bool,
    /// One sentence that explains the term.
    pub meaning: &'static str,
}

impl Field {
    /// Every field there is, in the order of the chain from barrel to order.
    pub const ALL: [Self; 29] = [
        Self::Diameter,
        Self::AcrossFlats,
        Self::Height,
        Self::CornerRadius,
        Self::Coat,
        Self::PencilLength,
        Self::LeadDiameter,
        Self::SlatLength,
        Self::SlatWidth,
        Self::SlatThickness,
        Self::WidthTolerance,
        Self::ThicknessTolerance,
        Self::PackSlats,
        Self::PackPrice,
        Self::OnHand,
        Self::PackLimit,
        Self::Clearance,
        Self::AxisHeight,
        Self::Land,
        Self::EdgeAllowance,
        Self::PlaningAllowance,
        Self::Floor,
        Self::Wall,
        Self::Eccentricity,
        Self::Bond,
        Self::Relief,
        Self::Pitch,
        Self::Turn,
        Self::OrderGross,
    ];

    /// What the field may hold. Ranges are common practice with room to spare, no source.
    ///
    /// ```
    /// use solver::Field;
    /// assert_eq!(Field::SlatWidth.spec().label, "Slat width");
    /// ```
    #[must_use]
    pub const fn spec(self) -> Spec {
        use Dimension::{Angle, Count, Length, Money, Plain};
        match self {
            Self::Diameter => spec(
                "Diameter",
                Length,
                3.0,
                40.0,
                7.3,
                "Finished diameter over the coat.",
            ),
            Self::AcrossFlats => spec(
                "Across flats",
                Length,
                3.0,
                40.0,
                7.0,
                "Finished distance from a face to the opposite face, over the coat.",
            ),
            Self::Height => spec(
                "Height",
                Length,
                3.0,
                40.0,
                7.6,
                "Finished distance from a face to the opposite rounded corner, as a caliper reads it.",
            ),
            Self::CornerRadius => spec(
                "Corner radius",
                Length,
                0.0,
                20.0,
                0.5,
                "Radius of the rounded corners, over the coat.",
            ),
            Self::Coat => spec(
                "Coat",
                Length,
                0.0,
                1.0,
                0.08,
                "Thickness of the paint on each side; the wood is smaller by this much.",
            ),
            Self::PencilLength => spec(
                "Pencil length",
                Length,
                20.0,
                400.0,
                175.0,
                "Length of one pencil along the grain.",
            ),
            Self::LeadDiameter => spec(
                "Lead diameter",
                Length,
                0.5,
                12.0,
                2.2,
                "Diameter of the lead that is laid in the groove.",
            ),
            Self::SlatLength => spec(
                "Slat length",
                Length,
                20.0,
                500.0,
                184.0,
                "Length of the slat along the grain.",
            ),
            Self::SlatWidth => spec(
                "Slat width",
                Length,
                20.0,
                200.0,
                74.0,
                "Width of the slat across the grain, from the datum edge.",
            ),
            Self::SlatThickness => spec(
                "Slat thickness",
                Length,
                2.0,
                30.0,
                5.0,
                "Thickness of one slat as it comes to the groove head.",
            ),
            Self::WidthTolerance => spec(
                "Width shortfall",
                Length,
                0.0,
                5.0,
                0.0,
                "What a delivered slat may lack in width; the layout counts on the rest.",
            ),
            Self::ThicknessTolerance => spec(
                "Thickness shortfall",
                Length,
                0.0,
                1.0,
                0.0,
                "What a delivered slat may lack in thickness; the layout counts on the rest.",
            ),
            Self::PackSlats => spec(
                "Slats per pack",
                Count,
                1.0,
                1_000_000.0,
                600.0,
                "Slats are bought in whole packs of this many.",
            ),
            Self::PackPrice => spec(
                "Price per pack",
                Money,
                0.0,
                1_000_000.0,
                100.0,
                "Price of one whole pack, in your currency.",
            ),
            Self::OnHand => spec(
                "Slats on hand",
                Count,
                0.0,
                100_000_000.0,
                0.0,
                "Slats in store; they are used before any are bought.",
            ),
            Self::PackLimit => Spec {
                optional: true,
                ..spec(
                    "Most packs",
                    Count,
                    0.0,
                    1_000_000.0,
                    100.0,
                    "Most packs the supplier can deliver; empty means as many as needed.",
                )
            },
            Self::Clearance => spec(
                "Groove clearance",
                Length,
                0.0,
                1.0,
                0.05,
                "Gap between lead and groove, all round; the glue needs it.",
            ),
            Self::AxisHeight => spec(
                "Axis above glue plane",
                Length,
                -5.0,
                5.0,
                0.0,
                "0 lays half the lead in each slat; above 0 sinks it deeper into the top slat.",
            ),
            Self::Land => spec(
                "Land",
                Length,
                0.0,
                10.0,
                0.4,
                "Wood the shaping cutters turn to chips between two neighbouring pencils.",
            ),
            Self::EdgeAllowance => spec(
                "Edge allowance",
                Length,
                0.0,
                30.0,
                1.0,
                "Least wood left outside the outer pencils, on both sides.",
            ),
            Self::PlaningAllowance => spec(
                "Planing allowance",
                Length,
                0.0,
                5.0,
                0.25,
                "Least wood taken off each outer face of the sandwich.",
            ),
            Self::Floor => spec(
                "Groove floor",
                Length,
                0.0,
                10.0,
                1.5,
                "Least wood under a groove, before the faces are planed.",
            ),
            Self::Wall => spec(
                "Least wall",
                Length,
                0.0,
                10.0,
                1.0,
                "Least wood between the groove and the outside of the bare pencil.",
            ),
            Self::Eccentricity => spec(
                "Lead off centre",
                Length,
                0.0,
                2.0,
                0.3,
                "How far a lead may sit off centre; the wall must still be there.",
            ),
            Self::Bond => spec(
                "Least bond width",
                Length,
                0.0,
                10.0,
                1.2,
                "Least glued width on each side of the lead; a narrow seam splits in the sharpener.",
            ),
            Self::Relief => spec(
                "Least relief",
                Angle,
                0.0,
                30.0,
                0.0,
                "Least lean of a straight side from upright; 0° lets upright faces pass with a note.",
            ),
            Self::Pitch => spec(
                "Pitch",
                Length,
                3.0,
                80.0,
                7.5,
                "Distance between neighbouring groove centres.",
            ),
            Self::Turn => spec(
                "Turn",
                Angle,
                -360.0,
                360.0,
                0.0,
                "Turn of the barrel about its lead, from standing on a face.",
            ),
            Self::OrderGross => spec(
                "Ordered",
                Plain,
                0.0,
                100_000.0,
                100.0,
                "Pencils ordered, in gross of 144.",
            ),
        }
    }
}

const fn spec(
    label: &'static str,
    dimension: Dimension,
    least: f64,
    most: f64,
    initial: f64,
    meaning: &'static str,
) -> Spec {
    Spec {
        label,
        dimension,
        least,
        most,
        initial,
        optional: false,
        meaning,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_first_value_lies_in_its_range() {
        for field in Field::ALL {
            let Spec {
                least,
                most,
                initial,
                ..
            } = field.spec();
            assert!(least <= initial && initial <= most, "{field:?}");
        }
    }

    #[test]
    fn the_list_of_all_fields_has_each_once() {
        let mut fields = Field::ALL.to_vec();
        fields.dedup();
        assert_eq!(fields.len(), Field::ALL.len());
        assert_eq!(
            Field::ALL
                .iter()
                .position(|field| *field == Field::OrderGross),
            Some(Field::ALL.len() - 1)
        );
    }
}
