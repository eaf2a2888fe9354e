//! Drawings as plain data: paths, dimensions and labels on a sheet, in pixels, y down.
//!
//! Whoever shows a drawing decides colours and line widths by [`Style`]; every place and
//! every number is decided here. Dimensions step outwards until nothing overlaps; a driving
//! dimension that finds no place is listed in [`Drawing::unplaced`], so that it can be
//! asked for elsewhere. Sizes that can be slid have a [`Handle`].

mod axis;
mod barrel;
mod bars;
mod columns;
mod curve;
mod cut;
mod describe;
mod flags;
mod gauge;
mod grade;
mod handle;
mod head;
mod histogram;
mod knife;
mod nodes;
mod overlay;
mod paper;
mod path;
mod pencil;
mod placement;
mod sandwich;
mod scatter;
mod stairs;
mod store_rows;
#[cfg(test)]
mod tests;
mod waterfall;

pub use barrel::{EndView, draw_barrel, draw_barrel_to_scale, draw_end_view};
pub use bars::BarChart;
pub use columns::{ColumnChart, draw_columns};
pub use curve::{CurveChart, Pick, PickMark, draw_curve};
pub use cut::draw_cut;
pub use gauge::draw_gauge;
pub use grade::Grade;
pub use handle::{Grip, Handle, Stride};
pub use head::draw_head;
pub use histogram::{HistogramChart, LimitLine, LimitSide, draw_histogram};
pub use knife::draw_knife;
pub use nodes::{ArmMark, NodeMark, NodeMarks, draw_nodes};
pub use overlay::draw_outlines;
pub use paper::{PIXELS_PER_MILLIMETRE, Paper, PaperProblem, PaperSize, Scale, ScaledDrawing};
pub use pencil::draw_pencil;
pub use sandwich::{draw_good_map, draw_pair, draw_sandwich, draw_to_scale};
pub use scatter::draw_scatter;
pub use stairs::{Chart, Marker, draw_stairs};
pub use store_rows::{StoreRow, draw_stores};
pub use waterfall::draw_costs;

use crate::finish::Colour;
use crate::layout::WoodClass;
use crate::sawing::SawnClass;
use crate::unit::LengthUnit;

/// The sheet a drawing is made for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sheet {
    /// Width, px. Less than [`Sheet::LEAST_WIDTH`] is drawn as that.
    pub width: f64,
    /// Height of a row of dimensions, px: a finger needs more than a mouse. 16 to 64.
    pub row: f64,
    /// Room for the text of one dimension, px, 32 to 100.
    pub text: f64,
    /// Unit of the dimensions.
    pub unit: LengthUnit,
}

impl Sheet {
    /// The narrowest sheet that can be drawn on, px.
    pub const LEAST_WIDTH: f64 = 280.0;

    /// The sheet with sizes that can be drawn on, whatever was asked for.
    fn usable(self) -> Self {
        // Neither bound is kept by a number that is none: `max` and `min` then give the bound.
        let within = |size: f64, least: f64, most: f64| size.max(least).min(most);
        Self {
            width: within(self.width, Self::LEAST_WIDTH, 10_000.0),
            row: within(self.row, 16.0, 64.0),
            text: within(self.text, 32.0, 100.0),
            unit: self.unit,
        }
    }
}

/// A drawing that is ready to be shown.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    /// Width, px.
    pub width: f64,
    /// Height, px.
    pub height: f64,
    /// Paths, in the order they are painted.
    pub shapes: Vec<Shape>,
    /// Dimensions with their lines and the place of their text.
    pub dimensions: Vec<Dimension>,
    /// Short texts: groove numbers, the names of views and of blanks, scales.
    pub labels: Vec<Label>,
    /// Gauges by which sizes can be slid, from the top of the sheet down.
    pub handles: Vec<Handle>,
    /// Driving dimensions that found no place on this sheet.
    pub unplaced: Vec<Size>,
    /// The drawing in words.
    pub description: String,
}

/// A path and what it stands for.
#[derive(Debug, Clone, PartialEq)]
pub struct Shape {
    /// What it stands for.
    pub style: Style,
    /// SVG path data.
    pub path: String,
}

/// What a path stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Style {
    /// A slat as it comes to the groove head.
    Slat,
    /// Wood that goes to a class of the balance.
    Wood(WoodClass),
    /// The part of a pencil in the top slat, hatched.
    TopHalf,
    /// The part of a pencil in the bottom slat, hatched the other way.
    BottomHalf,
    /// The outline of the bare pencil.
    Pencil,
    /// The outline of a pencil that the slats cannot give.
    Clash,
    /// The outline of a pencil with the mark of how many are good at its place.
    Graded(Grade),
    /// The outline over the coat.
    Coat,
    /// The groove.
    Groove,
    /// The lead.
    Lead,
    /// The glue plane.
    Seam,
    /// A centre line.
    Centre,
    /// The circle of an enlarged detail, and its lines to the place it shows.
    Detail,
    /// The circle that the tip of a knife runs on.
    CuttingCircle,
    /// The table of a machine.
    Table,
    /// A level or a circle that is only meant: how far a lead may lie off centre, the table where it is
    /// open.
    Limit,
    /// Places of leads within that limit.
    CentredLead,
    /// Places of leads beyond it.
    StrayLead,
    /// A length to measure by.
    ScaleBar,
    /// The end of a partial view.
    Break,
    /// One of several outlines that are held against each other, by its place among them: a solid line
    /// for the first, a dashed, a dotted and a chain line for the others.
    Compared(u8),
    /// What no level head reaches, or where a cutter flank rubs more than is allowed.
    OutOfReach,
    /// A plank as bought.
    Plank,
    /// Blanks ripped from it.
    Blank,
    /// Wood of a plank that comes to no blank. Kerfs are solid; an offcut to keep is plain; trims,
    /// short offcuts and what is left across a section are hatched narrow.
    SawnOff(SawnClass),
    /// Filled with a colour: coat, dip, lead of a finished pencil.
    Filled(Colour),
    /// Bare wood of a finished pencil.
    BareWood,
    /// The room of an imprint.
    Imprint,
}

/// A size that a dimension shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Size {
    /// Width of the bottom slat, and of both when they are alike.
    SlatWidth,
    /// Width of the top slat where it differs.
    TopWidth,
    /// Thickness of the top slat.
    TopThickness,
    /// Thickness of the bottom slat.
    BottomThickness,
    /// Diameter, distance across flats, or height of the finished barrel.
    Barrel,
    /// Finished corner radius.
    CornerRadius,
    /// Coat build per side.
    Coat,
    /// Diameter of the lead.
    Lead,
    /// Wood between neighbours.
    Land,
    /// Distance between groove centres.
    Pitch,
    /// First groove centre from the datum edge.
    FirstGroove,
    /// Wood outside the first pencil.
    Edge,
    /// Wood planed off the top.
    TopPlaning,
    /// Wood planed off the bottom.
    BottomPlaning,
    /// Overall width of the finished barrel, standing on a face.
    BarrelWidth,
    /// Overall height of the finished barrel, standing on a face.
    BarrelHeight,
    /// Least wall without eccentricity.
    Wall,
    /// Length of a plank.
    PlankLength,
    /// Width of a plank.
    PlankWidth,
    /// Length of a section of a plank, and of its blanks.
    SectionLength,
    /// Length that is left of a plank.
    OffcutLength,
    /// The axis of a head above the table.
    HeadAxis,
    /// The tip of a knife above the table.
    KnifeTip,
    /// How deep a knife cuts.
    CutDepth,
    /// Thickness of the wood that lies on the table.
    WoodOnTable,
    /// The finished face above the table.
    FinishedFace,
    /// Length of the pencil.
    PencilLength,
    /// Length of the dip.
    Dip,
    /// Where the imprint may begin and end.
    Imprint,
    /// How much of the lead is bare.
    BareLead,
    /// Where the paint edge is nearest to the tip.
    PaintFrom,
    /// Where the paint edge is farthest from the tip.
    PaintTo,
}

impl Size {
    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::SlatWidth => "Slat width",
            Self::TopWidth => "Top slat width",
            Self::TopThickness => "Top slat thickness",
            Self::BottomThickness => "Bottom slat thickness",
            Self::Barrel => "Finished size",
            Self::CornerRadius => "Corner radius",
            Self::Coat => "Coat",
            Self::Lead => "Lead diameter",
            Self::Land => "Land",
            Self::Pitch => "Pitch",
            Self::FirstGroove => "First groove from the datum edge",
            Self::Edge => "Edge",
            Self::TopPlaning => "Planed off the top",
            Self::BottomPlaning => "Planed off the bottom",
            Self::BarrelWidth => "Overall width",
            Self::BarrelHeight => "Overall height",
            Self::Wall => "Wall",
            Self::PlankLength => "Plank length",
            Self::PlankWidth => "Plank width",
            Self::SectionLength => "Section length",
            Self::OffcutLength => "Offcut length",
            Self::HeadAxis => "Head axis above the table",
            Self::KnifeTip => "Tip of the knife above the table",
            Self::CutDepth => "Depth of the cut",
            Self::WoodOnTable => "Wood on the table",
            Self::FinishedFace => "Finished face above the table",
            Self::PencilLength => "Pencil length",
            Self::Dip => "Dip",
            Self::Imprint => "Room of the imprint",
            Self::BareLead => "Bare lead",
            Self::PaintFrom => "Paint edge, nearest",
            Self::PaintTo => "Paint edge, farthest",
        }
    }
}

/// A dimension with its lines and the place of its text.
#[derive(Debug, Clone, PartialEq)]
pub struct Dimension {
    /// What it measures.
    pub size: Size,
    /// Whether it can be typed over; a driven one follows from others.
    pub driving: bool,
    /// A sign in front of the number: ⌀, R or nothing.
    pub sign: &'static str,
    /// The number, as it is shown.
    pub text: String,
    /// Extension and dimension lines, SVG path data.
    pub lines: String,
    /// Arrow heads, SVG path data, to be filled.
    pub arrows: String,
    /// The box of the text, px.
    pub area: Area,
    /// The edge of the box at which its line lies: the text stands near it.
    pub near: Edge,
}

/// An edge of a rectangle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Edge {
    /// The upper one.
    Top,
    /// The lower one.
    Bottom,
    /// The left one.
    Left,
    /// The right one.
    Right,
}

/// A rectangle on the sheet, px.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Area {
    /// Left edge.
    pub x: f64,
    /// Upper edge.
    pub y: f64,
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
}

impl Area {
    /// Whether two rectangles share more than a border.
    #[must_use]
    pub fn overlaps(&self, other: &Self) -> bool {
        self.x < other.x + other.width
            && other.x < self.x + self.width
            && self.y < other.y + other.height
            && other.y < self.y + self.height
    }
}

/// A short text, centred on its place.
#[derive(Debug, Clone, PartialEq)]
pub struct Label {
    /// Centre, px.
    pub x: f64,
    /// Middle of the line, px.
    pub y: f64,
    /// The text.
    pub text: String,
}
