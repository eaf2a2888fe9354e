//! What `layout` prints.

use app::project_file::WayWord;
use schemars::JsonSchema;
use serde::Serialize;
use solver::{Groove, GrossNeeds, Layout, WoodBalance, WoodClass};

use super::words::{CheckLine, WoodWord};
use super::{Named, VERSION};
use crate::layout::Laid;

/// What `slatwright layout` prints.
#[derive(Debug, Serialize, JsonSchema)]
pub(crate) struct LayoutDocument {
    /// Tells this document from others.
    #[schemars(extend("const" = "slatwright-layout"))]
    format: &'static str,
    /// The version of this document.
    #[schemars(extend("const" = VERSION))]
    version: u32,
    /// What the project is called.
    project: String,
    /// The barrel.
    barrel: Named,
    /// The slat stock above the glue plane.
    top: Named,
    /// The slat stock below the glue plane.
    bottom: Named,
    /// How the barrel is turned.
    way: WayWord,
    /// The turn of the barrel, degrees counter-clockwise from standing on a face or as drawn.
    turn_degrees: f64,
    /// Whether every check passes.
    fits: bool,
    /// Pencils from one sandwich; 0 where a check fails.
    pencils: u32,
    /// Grooves that fit side by side, whatever the other checks say.
    across: u32,
    /// Pencils from one slat length.
    lengths: u32,
    /// Distance between neighbouring groove centres, mm.
    pitch_mm: f64,
    /// Wood between two neighbouring pencils at their closest, mm.
    parting_mm: f64,
    /// Wood outside the first pencil, on the datum edge, mm.
    datum_edge_mm: f64,
    /// Wood outside the last pencil on the narrowest slat allowed for, mm.
    far_edge_mm: f64,
    /// The shape that all grooves share.
    groove_shape: GrooveShapeLine,
    /// The grooves from the datum edge.
    grooves: Vec<GrooveLine>,
    /// Every check.
    checks: Vec<CheckLine>,
    /// Where the wood of one sandwich goes; `null` where a check fails.
    balance: Option<Balance>,
    /// What a gross of good pencils takes; `null` where a check fails.
    gross: Option<Gross>,
}

/// The shape of a groove in both slats.
#[derive(Debug, Serialize, JsonSchema)]
struct GrooveShapeLine {
    /// Radius, mm.
    radius_mm: f64,
    /// Height of the lead axis above the glue plane, mm.
    axis_height_mm: f64,
    /// Depth in the top slat from the glue plane, mm.
    top_depth_mm: f64,
    /// Depth in the bottom slat from the glue plane, mm.
    bottom_depth_mm: f64,
}

/// One groove.
#[derive(Debug, Serialize, JsonSchema)]
pub(super) struct GrooveLine {
    /// Its number, from 1 at the datum edge.
    number: u32,
    /// Its centre from the datum edge, mm.
    centre_mm: f64,
}

/// Where the wood of one sandwich goes; the classes add up to the wood bought.
#[derive(Debug, Serialize, JsonSchema)]
struct Balance {
    /// Wood bought for one sandwich, mm³.
    bought_mm3: f64,
    /// Wood of good pencils over wood bought, 0 to 1.
    yielded: f64,
    /// The classes.
    classes: Vec<WoodLine>,
}

/// A class of wood.
#[derive(Debug, Serialize, JsonSchema)]
struct WoodLine {
    /// The class.
    class: WoodWord,
    /// Section of all pencils side by side, mm²; `null` for kerf, ends and what is thrown out.
    section_mm2: Option<f64>,
    /// Volume, mm³.
    volume_mm3: f64,
    /// Share in the wood bought, 0 to 1.
    share: f64,
}

/// What a gross of 144 good pencils takes.
#[derive(Debug, Serialize, JsonSchema)]
struct Gross {
    /// Slats, not rounded.
    slats: f64,
    /// Wood of those slats, mm³.
    wood_mm3: f64,
    /// Price of those slats at the pack price, in hundredths of the currency.
    price_hundredths: f64,
}

impl From<&Laid<'_>> for LayoutDocument {
    fn from(laid: &Laid<'_>) -> Self {
        let (draft, layout) = (laid.draft, &laid.layout);
        let slat = |at: usize| Named::of(&draft.slats[at], |slat| &slat.name);
        Self {
            format: "slatwright-layout",
            version: VERSION,
            project: draft.name.clone(),
            barrel: Named::of(&draft.barrels[laid.barrel], |barrel| &barrel.name),
            top: slat(laid.top),
            bottom: slat(laid.bottom),
            way: draft.layout_way().into(),
            turn_degrees: laid.turn.in_degrees(),
            fits: layout.fits(),
            pencils: layout.pencils(),
            across: layout.across(),
            lengths: layout.lengths(),
            pitch_mm: layout.pitch().in_millimetres(),
            parting_mm: layout.parting().in_millimetres(),
            datum_edge_mm: layout.datum_edge().in_millimetres(),
            far_edge_mm: layout.far_edge().in_millimetres(),
            groove_shape: GrooveShapeLine::from(layout),
            grooves: layout.grooves().iter().map(GrooveLine::from).collect(),
            checks: layout.checks().iter().map(CheckLine::from).collect(),
            balance: layout.balance().map(Balance::from),
            gross: laid.needs.as_ref().map(Gross::from),
        }
    }
}

impl From<&Groove> for GrooveLine {
    fn from(groove: &Groove) -> Self {
        Self {
            number: groove.number,
            centre_mm: groove.centre.in_millimetres(),
        }
    }
}

impl From<&Layout> for GrooveShapeLine {
    fn from(layout: &Layout) -> Self {
        let shape = layout.groove_shape();
        Self {
            radius_mm: shape.radius().in_millimetres(),
            axis_height_mm: shape.axis_height().in_millimetres(),
            top_depth_mm: shape.top_depth().in_millimetres(),
            bottom_depth_mm: shape.bottom_depth().in_millimetres(),
        }
    }
}

impl From<&WoodBalance> for Balance {
    fn from(balance: &WoodBalance) -> Self {
        let class = |class: WoodClass| WoodLine {
            class: class.into(),
            section_mm2: (balance.section(class)).map(solver::Area::in_square_millimetres),
            volume_mm3: balance.volume(class).in_cubic_millimetres(),
            share: balance.share(class),
        };
        Self {
            bought_mm3: balance.bought().in_cubic_millimetres(),
            yielded: balance.yielded(),
            classes: WoodClass::ALL.map(class).into(),
        }
    }
}

impl From<&GrossNeeds> for Gross {
    fn from(needs: &GrossNeeds) -> Self {
        Self {
            slats: needs.slats,
            wood_mm3: needs.wood.in_cubic_millimetres(),
            price_hundredths: needs.price,
        }
    }
}
