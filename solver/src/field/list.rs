//! Every field of a project, in the order of the chain from barrel to order.

/// A number that is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Field {
    /// Finished diameter of a round barrel.
    Diameter,
    /// Finished distance between opposite faces of a hexagonal barrel.
    AcrossFlats,
    /// Finished height of a triangular barrel, face to opposite rounded corner.
    Height,
    /// Sides of a polygonal barrel.
    Sides,
    /// Finished diameter of the circle inscribed in a polygonal barrel.
    Inscribed,
    /// Finished overall width of an oval, flat or free barrel, as it is drawn.
    BarrelWidth,
    /// Finished overall height of an oval, flat or free barrel, as it is drawn.
    BarrelHeight,
    /// Finished radius of bulging faces; none where faces are flat.
    FaceRadius,
    /// Finished radius of the corners.
    CornerRadius,
    /// Lead axis to the right of the centre of area of a free outline.
    AxisAcross,
    /// Lead axis above the centre of area of a free outline.
    AxisUp,
    /// How far a size may move in a search for a gain; kept by nobody.
    GainReach,
    /// Path data of a free outline: text, not a number.
    Path,
    /// A point of a free outline to the right of the lead axis; kept in the path.
    PointAcross,
    /// A point of a free outline above the lead axis; kept in the path.
    PointUp,
    /// Coat build per side.
    Coat,
    /// Length of the pencil.
    PencilLength,
    /// Diameter of the lead.
    LeadDiameter,
    /// Angle between the two sides of the point, as a sharpener cuts it.
    PointAngle,
    /// Length of the dip at the other end.
    DipLength,
    /// The face that is imprinted, counted from the uppermost.
    ImprintFace,
    /// What an imprint leaves free at each edge of its face.
    ImprintMargin,
    /// What an imprint leaves free at both ends.
    ImprintEnd,
    /// How far a curved face may fall away under an imprint.
    FaceFall,
    /// Density of the dry coat.
    CoatDensity,
    /// Inner width of a tin.
    TinWidth,
    /// Inner height of a tin.
    TinHeight,
    /// Inner length of a tin.
    TinLength,
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
    /// Moisture content of the slats as delivered.
    DeliveryMoisture,
    /// Slats in a pack.
    PackSlats,
    /// Price of a pack.
    PackPrice,
    /// Slats on hand.
    OnHand,
    /// Most packs that can be bought.
    PackLimit,
    /// Radial shrinkage of a species, green to ovendry.
    RadialShrinkage,
    /// Tangential shrinkage of a species, green to ovendry.
    TangentialShrinkage,
    /// Moisture content below which a species shrinks.
    FibreSaturation,
    /// Moisture content of the slats when they are grooved.
    GroovingMoisture,
    /// Temperature of the air in the shop.
    AirTemperature,
    /// Relative humidity of the air in the shop.
    AirHumidity,
    /// Distance between the cutters of a set.
    SetPitch,
    /// Most grooves that a cutter set makes side by side.
    SetMost,
    /// Price of a cutter set that is still to be paid.
    SetPrice,
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
    /// Most grooves side by side.
    MostAcross,
    /// Least wood cut off each end of the slat.
    EndTrim,
    /// Wood the saw takes between two pencils of one slat length.
    SawKerf,
    /// Share of slats that are thrown out.
    SlatRejects,
    /// Share of pencils that are thrown out.
    PencilRejects,
    /// Error of the place of each groove across the slat.
    GroovePosition,
    /// Error of the place of each shaping cutter across the sandwich.
    ShapingPosition,
    /// Error of the diameter of each lead.
    LeadSpread,
    /// Error of the groove head against the fence, common to a slat.
    GrooveHead,
    /// Error of the groove depth, common to a slat.
    GrooveDepth,
    /// Error of the width of a slat.
    WidthSpread,
    /// Error of the thickness of the bottom slat.
    ThicknessSpread,
    /// Shift of the top slat on the bottom slat at gluing.
    GlueShift,
    /// Error of the shaping head sideways, common to a sandwich.
    ShapingAcross,
    /// Error of the shaping head up and down, common to a sandwich.
    ShapingUp,
    /// Standard deviations that the ± limits of errors stand for.
    Sigmas,
    /// How far the mean width of the slats lies above nominal.
    WidthOffset,
    /// How far the mean thickness of the bottom slat lies above nominal.
    ThicknessOffset,
    /// Turn of the barrel about its lead.
    Turn,
    /// Price of a cutter set made to measure.
    NewSetPrice,
    /// Pencils made in a year, in gross.
    YearGross,
    /// Length of a plank as bought.
    PlankLength,
    /// Width of a plank as bought.
    PlankWidth,
    /// Thickness of a plank as bought.
    PlankThickness,
    /// Price of a plank.
    PlankPrice,
    /// Planks that can be had.
    PlanksOnHand,
    /// Wood cut off each end of a plank.
    PlankEndTrim,
    /// Wood ripped off each edge of a plank.
    PlankEdgeTrim,
    /// Length of a blank as sawn.
    BlankLength,
    /// Width of a blank as sawn, in the thickness of the plank.
    BlankWidth,
    /// Thickness of a blank as sawn, across the width of the plank.
    BlankThickness,
    /// What dressing takes off the length of a slat.
    LengthDressing,
    /// What dressing takes off the width of a slat.
    WidthDressing,
    /// What dressing takes off the thickness of a slat.
    ThicknessDressing,
    /// Blanks wanted.
    BlanksWanted,
    /// Worth of a blank beyond those wanted.
    BlankOverWorth,
    /// How many blanks beyond those wanted are worth that.
    MostOver,
    /// Wood a crosscut of a plank takes.
    CrosscutKerf,
    /// Wood a rip cut of a section takes.
    RipKerf,
    /// Moisture content of the wood when it is sawn.
    SawnMoisture,
    /// The shortest offcut that can be used again.
    ShortestOffcut,
    /// Worth of a metre of offcut.
    OffcutPrice,
    /// Diameter of the cutting circle of a cutterhead, at its deepest cut.
    HeadDiameter,
    /// Hook angle of the knives of a cutterhead.
    HookAngle,
    /// Knives of a cutterhead that cut.
    CuttingKnives,
    /// Speed of a cutterhead.
    HeadSpeed,
    /// Greatest speed that is marked on a cutterhead.
    MarkedSpeed,
    /// Speed at which wood is fed to the cutterheads.
    FeedSpeed,
    /// Wanted distance between knife marks.
    MarkPitch,
    /// Wanted height of the waves between knife marks.
    WaveHeight,
    /// How far shaping knives cut past the line where pencils part.
    Overcut,
    /// Lean of the sides of the overcut.
    OvercutDraft,
    /// How far the diameter of a lead may lie from nominal.
    LeadTolerance,
    /// Density of lead stock.
    LeadDensity,
    /// Share of leads that break before they are glued in.
    LeadBreakage,
    /// Glue on a square metre of glue line.
    GlueSpread,
    /// Pressure on the glue line in the clamp.
    ClampPressure,
    /// Hours a load stays in the clamp.
    PressHours,
    /// Sandwiches clamped at once.
    PressLoad,
    /// Share of a liquid coat that stays on the pencil.
    CoatSolids,
    /// Times a pencil is coated.
    CoatPasses,
    /// Basic specific gravity of the wood.
    SpecificGravity,
    /// Volumetric shrinkage of the wood, green to ovendry.
    VolumetricShrinkage,
    /// Share of pieces that pass a stage of the work.
    StageYield,
    /// Good pencils wanted of a run, in gross.
    RunGross,
    /// Period at whose end an order is due.
    DuePeriod,
    /// Hours that the machines can run in a period.
    MachineHours,
    /// Price of an hour of the machines.
    MachineHourPrice,
    /// Machine time of a sandwich, seconds.
    SandwichSeconds,
    /// Cost of a change-over.
    ChangeoverCost,
    /// Machine time of a change-over, minutes.
    ChangeoverMinutes,
    /// Cost of holding a thousand pencils for a period.
    PencilHolding,
    /// Cost of holding a thousand slats for a period.
    SlatHolding,
    /// Price of a thousand leads.
    LeadPrice,
    /// Price of the glue of a thousand sandwiches.
    GluePrice,
    /// Price of the coat of a thousand pencils.
    CoatPrice,
    /// What a tonne of chips brings.
    ChipPrice,
    /// Least certified share of the wood that is bought and sawn.
    CertifiedShare,
    /// Most pencils stored.
    PencilStore,
    /// Most slats stored.
    SlatStore,
    /// Most that a plan may cost.
    CostLimit,
    /// Most timber that a plan may take, cubic metres.
    TimberLimit,
    /// Most change-overs of a plan.
    ChangeoverLimit,
    /// Packs of an order from which a price holds.
    TierFrom,
    /// What an order costs beside its packs.
    OrderCost,
    /// Fewest packs of an order.
    LeastOrder,
    /// Most packs of an order.
    MostOrder,
    /// Periods from order to use.
    LeadPeriods,
    /// Cost of a thousand slats sawn in the works.
    SawnCost,
    /// Most slats sawn in a period.
    SawnMost,
    /// Pencils of an order that lie in the store.
    PencilsOnHand,
    /// Pencils ordered, in gross.
    OrderGross,
}

impl Field {
    /// Every field there is, in the order of the chain from barrel to order.
    pub const ALL: [Self; 150] = [
        Self::Diameter,
        Self::AcrossFlats,
        Self::Height,
        Self::Sides,
        Self::Inscribed,
        Self::BarrelWidth,
        Self::BarrelHeight,
        Self::FaceRadius,
        Self::CornerRadius,
        Self::AxisAcross,
        Self::AxisUp,
        Self::GainReach,
        Self::Path,
        Self::PointAcross,
        Self::PointUp,
        Self::Coat,
        Self::PencilLength,
        Self::LeadDiameter,
        Self::PointAngle,
        Self::DipLength,
        Self::ImprintFace,
        Self::ImprintMargin,
        Self::ImprintEnd,
        Self::FaceFall,
        Self::CoatDensity,
        Self::TinWidth,
        Self::TinHeight,
        Self::TinLength,
        Self::SlatLength,
        Self::SlatWidth,
        Self::SlatThickness,
        Self::WidthTolerance,
        Self::ThicknessTolerance,
        Self::DeliveryMoisture,
        Self::PackSlats,
        Self::PackPrice,
        Self::OnHand,
        Self::PackLimit,
        Self::RadialShrinkage,
        Self::TangentialShrinkage,
        Self::FibreSaturation,
        Self::GroovingMoisture,
        Self::AirTemperature,
        Self::AirHumidity,
        Self::SetPitch,
        Self::SetMost,
        Self::SetPrice,
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
        Self::MostAcross,
        Self::EndTrim,
        Self::SawKerf,
        Self::SlatRejects,
        Self::PencilRejects,
        Self::GroovePosition,
        Self::ShapingPosition,
        Self::LeadSpread,
        Self::GrooveHead,
        Self::GrooveDepth,
        Self::WidthSpread,
        Self::ThicknessSpread,
        Self::GlueShift,
        Self::ShapingAcross,
        Self::ShapingUp,
        Self::Sigmas,
        Self::WidthOffset,
        Self::ThicknessOffset,
        Self::Turn,
        Self::NewSetPrice,
        Self::YearGross,
        Self::PlankLength,
        Self::PlankWidth,
        Self::PlankThickness,
        Self::PlankPrice,
        Self::PlanksOnHand,
        Self::PlankEndTrim,
        Self::PlankEdgeTrim,
        Self::BlankLength,
        Self::BlankWidth,
        Self::BlankThickness,
        Self::LengthDressing,
        Self::WidthDressing,
        Self::ThicknessDressing,
        Self::BlanksWanted,
        Self::BlankOverWorth,
        Self::MostOver,
        Self::CrosscutKerf,
        Self::RipKerf,
        Self::SawnMoisture,
        Self::ShortestOffcut,
        Self::OffcutPrice,
        Self::HeadDiameter,
        Self::HookAngle,
        Self::CuttingKnives,
        Self::HeadSpeed,
        Self::MarkedSpeed,
        Self::FeedSpeed,
        Self::MarkPitch,
        Self::WaveHeight,
        Self::Overcut,
        Self::OvercutDraft,
        Self::LeadTolerance,
        Self::LeadDensity,
        Self::LeadBreakage,
        Self::GlueSpread,
        Self::ClampPressure,
        Self::PressHours,
        Self::PressLoad,
        Self::CoatSolids,
        Self::CoatPasses,
        Self::SpecificGravity,
        Self::VolumetricShrinkage,
        Self::StageYield,
        Self::RunGross,
        Self::DuePeriod,
        Self::MachineHours,
        Self::MachineHourPrice,
        Self::SandwichSeconds,
        Self::ChangeoverCost,
        Self::ChangeoverMinutes,
        Self::PencilHolding,
        Self::SlatHolding,
        Self::LeadPrice,
        Self::GluePrice,
        Self::CoatPrice,
        Self::ChipPrice,
        Self::CertifiedShare,
        Self::PencilStore,
        Self::SlatStore,
        Self::CostLimit,
        Self::TimberLimit,
        Self::ChangeoverLimit,
        Self::TierFrom,
        Self::OrderCost,
        Self::LeastOrder,
        Self::MostOrder,
        Self::LeadPeriods,
        Self::SawnCost,
        Self::SawnMost,
        Self::PencilsOnHand,
        Self::OrderGross,
    ];

    /// Whether it is an error of a machine, of which hundredths of a millimetre tell too little.
    #[must_use]
    pub const fn is_error(self) -> bool {
        matches!(
            self,
            Self::GroovePosition
                | Self::ShapingPosition
                | Self::LeadSpread
                | Self::GrooveHead
                | Self::GrooveDepth
                | Self::WidthSpread
                | Self::ThicknessSpread
                | Self::GlueShift
                | Self::ShapingAcross
                | Self::ShapingUp
                | Self::WidthOffset
                | Self::ThicknessOffset
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_list_of_all_fields_has_each_once() {
        for (place, field) in Field::ALL.into_iter().enumerate() {
            assert_eq!(field as usize, place, "{field:?}");
        }
        assert_eq!(Field::ALL.last(), Some(&Field::OrderGross));
    }
}
