//! What every field may hold, in one table: label, unit, range, first value, and what it means.

use super::Field;
use crate::entry::Dimension;

/// What a field may hold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spec {
    /// The name in front of the field, in sentence case.
    pub label: &'static str,
    /// What sort of quantity it is.
    pub dimension: Dimension,
    /// Least value: mm, degrees, pieces, percent or currency.
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
    /// What the field may hold. Ranges are common practice with room to spare, no source.
    ///
    /// ```
    /// use solver::Field;
    /// assert_eq!(Field::SlatWidth.spec().label, "Slat width");
    /// ```
    #[must_use]
    pub const fn spec(self) -> Spec {
        use Dimension::{Angle, Count, Length, Money, Percent, Plain};
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
            Self::Sides => spec("Sides", Count, 3.0, 24.0, 8.0, "Number of equal faces."),
            Self::Inscribed => spec(
                "Inscribed diameter",
                Length,
                3.0,
                40.0,
                7.0,
                "Finished diameter of the largest circle that fits in the outline, over the coat.",
            ),
            Self::BarrelWidth => spec(
                "Barrel width",
                Length,
                3.0,
                40.0,
                10.0,
                "Finished overall width over the coat, lying flat or as drawn.",
            ),
            Self::BarrelHeight => spec(
                "Barrel height",
                Length,
                3.0,
                40.0,
                7.0,
                "Finished overall height over the coat, lying flat or as drawn.",
            ),
            Self::FaceRadius => Spec {
                optional: true,
                ..spec(
                    "Face radius",
                    Length,
                    2.0,
                    1_000.0,
                    20.0,
                    "Radius of faces that bulge outwards, over the coat; empty means flat faces.",
                )
            },
            Self::CornerRadius => spec(
                "Corner radius",
                Length,
                0.0,
                20.0,
                0.5,
                "Radius of the rounded corners, over the coat.",
            ),
            Self::AxisAcross => spec(
                "Lead axis across",
                Length,
                -20.0,
                20.0,
                0.0,
                "How far the lead axis lies to the right of the centre of area of the outline as drawn.",
            ),
            Self::Path => spec(
                "Outline path",
                Plain,
                0.0,
                0.0,
                0.0,
                "Path data of SVG: one closed curve of M, L, H, V, C, S, Q, T, A and Z, in any unit; it is fitted to the width.",
            ),
            Self::AxisUp => spec(
                "Lead axis up",
                Length,
                -20.0,
                20.0,
                0.0,
                "How far the lead axis lies above the centre of area of the outline as drawn.",
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
            Self::DeliveryMoisture => spec(
                "Moisture as delivered",
                Percent,
                0.0,
                30.0,
                8.0,
                "Moisture content at which the slats have the sizes given.",
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
            Self::RadialShrinkage => spec(
                "Radial shrinkage",
                Percent,
                0.0,
                20.0,
                3.3,
                "Shrinkage across the growth rings, from green to ovendry.",
            ),
            Self::TangentialShrinkage => spec(
                "Tangential shrinkage",
                Percent,
                0.0,
                20.0,
                5.2,
                "Shrinkage along the growth rings, from green to ovendry.",
            ),
            Self::FibreSaturation => spec(
                "Fibre saturation",
                Percent,
                15.0,
                35.0,
                30.0,
                "Moisture content at which drying wood begins to shrink.",
            ),
            Self::GroovingMoisture => spec(
                "Moisture at grooving",
                Percent,
                0.0,
                30.0,
                8.0,
                "Moisture content of the slats when they come to the groove head.",
            ),
            Self::AirTemperature => spec(
                "Air temperature, °C",
                Plain,
                -10.0,
                60.0,
                20.0,
                "Temperature of the air in which the slats have come to rest, in degrees Celsius.",
            ),
            Self::AirHumidity => spec(
                "Relative humidity",
                Percent,
                0.0,
                95.0,
                42.0,
                "Relative humidity of the air in which the slats have come to rest.",
            ),
            Self::SetPitch => spec(
                "Set pitch",
                Length,
                3.0,
                80.0,
                7.5,
                "Distance between neighbouring cutters of the set.",
            ),
            Self::SetMost => spec(
                "Set cutters",
                Count,
                1.0,
                60.0,
                10.0,
                "Most grooves that the head carries side by side.",
            ),
            Self::SetPrice => spec(
                "Set price",
                Money,
                0.0,
                1_000_000.0,
                0.0,
                "What is still to be paid for the set; 0 when it is owned.",
            ),
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
            Self::MostAcross => Spec {
                optional: true,
                ..spec(
                    "Most across",
                    Count,
                    1.0,
                    200.0,
                    10.0,
                    "Most grooves side by side, however wide the slat; empty means as many as fit.",
                )
            },
            Self::EndTrim => spec(
                "End trim",
                Length,
                0.0,
                50.0,
                0.0,
                "Least wood cut off each end of the slat.",
            ),
            Self::SawKerf => spec(
                "Saw kerf",
                Length,
                0.0,
                10.0,
                2.0,
                "Wood the saw takes between two pencils when a slat gives several lengths.",
            ),
            Self::SlatRejects => spec(
                "Slats rejected",
                Percent,
                0.0,
                90.0,
                0.0,
                "Share of the slats bought that are thrown out before they are glued.",
            ),
            Self::PencilRejects => spec(
                "Pencils rejected",
                Percent,
                0.0,
                90.0,
                0.0,
                "Share of the pencils made that are thrown out.",
            ),
            Self::GroovePosition => error(
                "Groove position",
                0.01,
                "How far each groove lies from its place across the slat, by itself; the first value is an assumption for a common shop.",
            ),
            Self::ShapingPosition => error(
                "Shaping cutter",
                0.02,
                "How far each shaping cutter stands from its place across the sandwich, by itself; the first value is an assumption for a common shop.",
            ),
            Self::LeadSpread => error(
                "Lead diameter spread",
                0.01,
                "How far the diameter of each lead is off; the first value is an assumption for a common shop.",
            ),
            Self::GrooveHead => error(
                "Groove head to fence",
                0.015,
                "How far the groove head stands off sideways from the fence, alike for all grooves of a slat; the first value is an assumption for a common shop.",
            ),
            Self::GrooveDepth => error(
                "Groove depth",
                0.02,
                "How far the grooves of a slat are too deep or too shallow, alike for all of them; the first value is an assumption for a common shop.",
            ),
            Self::WidthSpread => error(
                "Slat width spread",
                0.05,
                "How far the width of a slat is off; the first value is an assumption for a common shop.",
            ),
            Self::ThicknessSpread => error(
                "Bottom slat thickness",
                0.03,
                "How far the thickness of the bottom slat is off; the sandwich is shaped from its bottom face; the first value is an assumption for a common shop.",
            ),
            Self::GlueShift => error(
                "Shift at gluing",
                0.02,
                "How far the top slat slides sideways on the bottom slat when the sandwich is glued; the first value is an assumption for a common shop.",
            ),
            Self::ShapingAcross => error(
                "Shaping head sideways",
                0.03,
                "How far the shaping head stands off sideways, alike for all pencils of a sandwich; the first value is an assumption for a common shop.",
            ),
            Self::ShapingUp => error(
                "Shaping head up and down",
                0.03,
                "How far the shaping head stands too high or too low, alike for all pencils of a sandwich; the first value is an assumption for a common shop.",
            ),
            Self::Sigmas => spec(
                "Sigmas of ± limits",
                Plain,
                1.0,
                8.0,
                3.0,
                "How many standard deviations the ± limits stand for; 3 leaves 0.27 % beyond them.",
            ),
            Self::WidthOffset => spec(
                "Mean slat width over nominal",
                Length,
                -5.0,
                5.0,
                0.0,
                "How far the mean width of the slats lies above their nominal width at the groove head, as measured; below 0 they are narrower.",
            ),
            Self::ThicknessOffset => spec(
                "Mean bottom slat over nominal",
                Length,
                -5.0,
                5.0,
                0.0,
                "How far the mean thickness of the bottom slat lies above its nominal thickness at the groove head, as measured; the lead sits higher by as much.",
            ),
            Self::Turn => spec(
                "Turn",
                Angle,
                -360.0,
                360.0,
                0.0,
                "Turn of the barrel about its lead, from standing on a face.",
            ),
            Self::NewSetPrice => Spec {
                optional: true,
                ..spec(
                    "New set price",
                    Money,
                    0.0,
                    1_000_000.0,
                    500.0,
                    "Price of a cutter set made to measure; empty means none is bought.",
                )
            },
            Self::YearGross => spec(
                "Gross a year",
                Plain,
                1.0,
                1_000_000.0,
                1_000.0,
                "Pencils of this kind made in a year, in gross of 144.",
            ),
            Self::PlankLength => spec(
                "Plank length",
                Length,
                50.0,
                30_000.0,
                3_000.0,
                "Length of the plank along the grain, as bought.",
            ),
            Self::PlankWidth => spec(
                "Plank width",
                Length,
                10.0,
                2_000.0,
                200.0,
                "Width of the plank as bought; the thickness of the blanks is ripped across it.",
            ),
            Self::PlankThickness => spec(
                "Plank thickness",
                Length,
                5.0,
                500.0,
                80.0,
                "Thickness of the plank as bought; the width of the blanks lies in it.",
            ),
            Self::PlankPrice => spec(
                "Plank price",
                Money,
                0.0,
                1_000_000.0,
                20.0,
                "Price of one plank, in your currency.",
            ),
            Self::PlanksOnHand => Spec {
                optional: true,
                ..spec(
                    "Planks to be had",
                    Count,
                    0.0,
                    100_000_000.0,
                    100.0,
                    "Most planks that can be sawn; empty means as many as wanted.",
                )
            },
            Self::PlankEndTrim => spec(
                "Plank end trim",
                Length,
                0.0,
                2_000.0,
                20.0,
                "Wood cut off each end of the plank, the cut included.",
            ),
            Self::PlankEdgeTrim => spec(
                "Plank edge trim",
                Length,
                0.0,
                500.0,
                4.0,
                "Wood ripped off each edge of the plank, the cut included.",
            ),
            Self::BlankLength => spec(
                "Blank length",
                Length,
                20.0,
                2_000.0,
                186.0,
                "Length of the blank along the grain, as sawn.",
            ),
            Self::BlankWidth => spec(
                "Blank width",
                Length,
                5.0,
                500.0,
                76.0,
                "Width of the blank as sawn; it lies in the thickness of the plank.",
            ),
            Self::BlankThickness => spec(
                "Blank thickness",
                Length,
                1.0,
                500.0,
                6.0,
                "Thickness of the blank as sawn; it is ripped across the width of the plank.",
            ),
            Self::LengthDressing => spec(
                "Dressing of length",
                Length,
                0.0,
                50.0,
                2.0,
                "What dressing takes off the dry blank in length, both ends together.",
            ),
            Self::WidthDressing => spec(
                "Dressing of width",
                Length,
                0.0,
                20.0,
                1.5,
                "What dressing takes off the dry blank in width, both edges together.",
            ),
            Self::ThicknessDressing => spec(
                "Dressing of thickness",
                Length,
                0.0,
                10.0,
                0.8,
                "What dressing takes off the dry blank in thickness, both faces together.",
            ),
            Self::BlanksWanted => spec(
                "Blanks wanted",
                Count,
                0.0,
                10_000_000.0,
                1_000.0,
                "Blanks that the plan has to give.",
            ),
            Self::BlankOverWorth => spec(
                "Worth of one more",
                Money,
                0.0,
                1_000_000.0,
                0.0,
                "What a blank beyond those wanted is worth; it counts where the cost is made small.",
            ),
            Self::MostOver => spec(
                "Most beyond",
                Count,
                0.0,
                10_000_000.0,
                0.0,
                "How many blanks beyond those wanted are worth that; more are worth nothing.",
            ),
            Self::CrosscutKerf => spec(
                "Crosscut kerf",
                Length,
                0.0,
                50.0,
                4.0,
                "Wood the saw takes between two sections of a plank.",
            ),
            Self::RipKerf => spec(
                "Rip kerf",
                Length,
                0.0,
                50.0,
                1.6,
                "Wood the saw takes between two blanks of a section.",
            ),
            Self::SawnMoisture => spec(
                "Moisture at sawing",
                Percent,
                0.0,
                200.0,
                12.0,
                "Moisture content of the wood when it is sawn, against the weight of the dry wood; green wood may hold more than its own weight.",
            ),
            Self::ShortestOffcut => Spec {
                optional: true,
                ..spec(
                    "Shortest offcut",
                    Length,
                    1.0,
                    30_000.0,
                    500.0,
                    "The shortest end of a plank that can be used again; empty means none is.",
                )
            },
            Self::OffcutPrice => spec(
                "Offcut worth a metre",
                Money,
                0.0,
                1_000_000.0,
                1.0,
                "What a metre of such an end is worth; it counts where the cost is made small.",
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

/// An error of the machines. First values are from experience of the trade, no source.
const fn error(label: &'static str, initial: f64, meaning: &'static str) -> Spec {
    spec(label, Dimension::Length, 0.0, 5.0, initial, meaning)
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
}
