//! The lines of a drawing. Elements stay on the page while a dimension is typed or slid; only
//! what has changed in them is set anew.

use super::keyed::keyed;
use super::live::live;
use super::wood_balance::Lit;
use leptos::prelude::*;
use solver::sawing::SawnClass;
use solver::{Dimension, Drawing, Edge, Grade, Label, Size, Style, WoodClass};

/// The paths of a drawing, in the order they are painted.
#[component]
pub(crate) fn DrawnShapes(
    /// The drawing.
    drawing: Memo<Option<Drawing>>,
    /// Which part of the page this is: hatching is found by it.
    context: &'static str,
    /// The class of wood to light up.
    lit: Option<Lit>,
) -> impl IntoView {
    let shapes = Memo::new(move |_| {
        drawing.with(|drawing| {
            let shapes = drawing.iter().flat_map(|drawing| &drawing.shapes);
            numbered(shapes.map(|shape| shape.style))
        })
    });
    let path = move |(style, number): (Style, usize)| {
        drawing.with(|drawing| {
            let shapes = drawing.iter().flat_map(|drawing| &drawing.shapes);
            let mut alike = shapes.filter(|shape| shape.style == style);
            alike.nth(number).map(|shape| shape.path.clone())
        })
    };
    let is_lit = move |style| match (style, lit) {
        (Style::Wood(class), Some(lit)) => lit.class() == Some(class),
        _ => false,
    };
    let shape = move |key: (Style, usize)| {
        let style = key.0;
        view! {
            <path
                class=style_name(style)
                fill=hatching(style, context)
                class:lit=move || is_lit(style)
                d=move || path(key)
            />
        }
    };
    view! {
        <g class="part">{keyed(move || shapes.get(), shape)}</g>
    }
}

/// A name for each part of a drawing that lasts while others come and go: its kind, and how many of
/// that kind come before it.
fn numbered<Kind: Copy + PartialEq>(kinds: impl Iterator<Item = Kind>) -> Vec<(Kind, usize)> {
    let mut names: Vec<(Kind, usize)> = Vec::new();
    for kind in kinds {
        let before = names.iter().rev().find(|(other, _)| *other == kind);
        names.push((kind, before.map_or(0, |(_, number)| number + 1)));
    }
    names
}

/// The dimensions of a drawing: their lines, and the numbers that follow from others.
#[component]
pub(crate) fn DrawnDimensions(
    /// The drawing.
    drawing: Memo<Option<Drawing>>,
) -> impl IntoView {
    let sizes = Memo::new(move |_| {
        drawing.with(|drawing| {
            let dimensions = drawing.iter().flat_map(|drawing| &drawing.dimensions);
            numbered(dimensions.map(|dimension| dimension.size))
        })
    });
    let lines = move |(size, number): (Size, usize)| {
        let dimension = numbered_dimension(drawing, size, number);
        let class = move || match dimension.read().as_ref() {
            Some(dimension) if dimension.driving => "dimension drives",
            _ => "dimension driven",
        };
        let near = Memo::new(move |_| Some(near_class(dimension.read().as_ref()?.near)));
        // A driving number is shown by its field; this text takes its place on paper.
        let (x, y) = (
            move || Some(place(text_place(dimension.read().as_ref()?).0)),
            move || Some(place(text_place(dimension.read().as_ref()?).1)),
        );
        let number = move || {
            let dimension = dimension.read();
            let dimension = dimension.as_ref()?;
            Some(format!("{}{}", dimension.sign, dimension.text))
        };
        view! {
            <g class=class>
                <path class="lines" d=move || Some(dimension.read().as_ref()?.lines.clone())/>
                <path class="arrows" d=move || Some(dimension.read().as_ref()?.arrows.clone())/>
                <text class=move || near.get() x=x y=y>
                    <title>{size.label()}</title>
                    {live(number)}
                </text>
            </g>
        }
    };
    view! {
        <g class="dimensions">{keyed(move || sizes.get(), lines)}</g>
    }
}

/// One dimension of a drawing.
pub(crate) fn dimension_of(drawing: Memo<Option<Drawing>>, size: Size) -> Memo<Option<Dimension>> {
    numbered_dimension(drawing, size, 0)
}

/// One of several dimensions of a size.
fn numbered_dimension(
    drawing: Memo<Option<Drawing>>,
    size: Size,
    number: usize,
) -> Memo<Option<Dimension>> {
    Memo::new(move |_| {
        drawing.with(|drawing| {
            let dimensions = drawing.iter().flat_map(|drawing| &drawing.dimensions);
            let mut alike = dimensions.filter(|dimension| dimension.size == size);
            alike.nth(number).cloned()
        })
    })
}

/// The patterns of hatched wood, found by the name of the part of the page they stand in.
#[component]
pub(crate) fn Hatching(context: &'static str) -> impl IntoView {
    let patterns = [
        ("rising", "rotate(45)"),
        ("falling", "rotate(-45)"),
        ("narrow", "rotate(45) scale(0.6)"),
    ]
    .map(|(name, turn)| {
        view! {
            <pattern id=format!("{context}-{name}") class=format!("hatching {name}") width="5" height="5" patternUnits="userSpaceOnUse" patternTransform=turn>
                <rect width="5" height="5"/>
                <line x1="0" y1="0" x2="0" y2="5"/>
            </pattern>
        }
    });
    view! { <defs>{patterns.into_iter().collect_view()}</defs> }
}

/// The short texts of a drawing.
pub(crate) fn labels_of(drawing: Memo<Option<Drawing>>) -> Memo<Vec<Label>> {
    Memo::new(move |_| {
        drawing.with(|drawing| {
            let labels = drawing.as_ref().map(|drawing| drawing.labels.clone());
            labels.unwrap_or_default()
        })
    })
}

/// Short texts: groove numbers, the names of views, the numbers of axes.
#[component]
pub(crate) fn DrawnLabels(
    /// The texts.
    #[prop(into)]
    labels: Signal<Vec<Label>>,
) -> impl IntoView {
    let count = Memo::new(move |_| labels.read().len());
    let label = move |at: usize| {
        let label = Memo::new(move |_| labels.read().get(at).cloned());
        view! {
            <text
                class="label"
                x=move || Some(place(label.read().as_ref()?.x))
                y=move || Some(place(label.read().as_ref()?.y))
            >
                {live(move || Some(label.read().as_ref()?.text.clone()))}
            </text>
        }
    };
    view! {
        <g class="labels">{keyed(move || Vec::from_iter(0..count.get()), label)}</g>
    }
}

/// A place on the sheet, px, as an attribute.
pub(crate) fn place(pixels: f64) -> String {
    format!("{pixels:.1}")
}

/// Where the number of a driven dimension stands: in its box, near its line.
fn text_place(dimension: &Dimension) -> (f64, f64) {
    /// Half the height of a line, and the space beside a number, px.
    const HALF_LINE: f64 = 11.0;
    const BESIDE: f64 = 5.0;
    let area = dimension.area;
    let (x, y) = (area.x + area.width / 2.0, area.y + area.height / 2.0);
    match dimension.near {
        Edge::Top => (x, area.y + HALF_LINE),
        Edge::Bottom => (x, area.y + area.height - HALF_LINE),
        Edge::Left => (area.x + BESIDE, y),
        Edge::Right => (area.x + area.width - BESIDE, y),
    }
}

const fn near_class(near: Edge) -> &'static str {
    match near {
        Edge::Top => "near-top",
        Edge::Bottom => "near-bottom",
        Edge::Left => "near-left",
        Edge::Right => "near-right",
    }
}

/// The fill of hatched wood, whose pattern is a part of the same drawing, and of what has a colour of
/// its own.
fn hatching(style: Style, context: &str) -> Option<String> {
    match style {
        Style::TopHalf => Some(format!("url(#{context}-rising)")),
        Style::BottomHalf => Some(format!("url(#{context}-falling)")),
        Style::SawnOff(class) if is_waste(class) => Some(format!("url(#{context}-narrow)")),
        Style::Filled(colour) => Some(colour.text()),
        _ => None,
    }
}

const fn style_name(style: Style) -> &'static str {
    match style {
        Style::Slat => "slat",
        Style::Wood(class) => match class {
            WoodClass::Pencils => "wood wood-pencils",
            WoodClass::Grooves => "wood wood-grooves",
            WoodClass::Corners => "wood wood-corners",
            WoodClass::Parting => "wood wood-parting",
            WoodClass::Edges => "wood wood-edges",
            WoodClass::Faces => "wood wood-faces",
            WoodClass::Kerf => "wood wood-kerf",
            WoodClass::Ends => "wood wood-ends",
            WoodClass::RejectedSlats => "wood wood-rejected-slats",
            WoodClass::RejectedPencils => "wood wood-rejected-pencils",
        },
        Style::TopHalf => "half top",
        Style::BottomHalf => "half bottom",
        Style::Pencil => "pencil",
        Style::Clash => "pencil clash",
        Style::Graded(grade) => match grade {
            Grade::Sound => "pencil",
            Grade::Fair => "pencil fair",
            Grade::Poor => "pencil poor",
        },
        Style::Coat => "coat",
        Style::Groove => "groove",
        Style::Lead => "lead",
        Style::Seam => "seam",
        Style::Centre => "centre",
        Style::Detail => "detail",
        Style::Limit => "limit",
        Style::CentredLead => "centred-lead",
        Style::StrayLead => "stray-lead",
        Style::ScaleBar => "scale-bar",
        Style::Break => "break",
        Style::CuttingCircle | Style::Table => "pencil",
        Style::OutOfReach => "out-of-reach",
        Style::Compared(0) => "pencil compared",
        Style::Compared(1) => "pencil compared dashed",
        Style::Compared(2) => "pencil compared dotted",
        Style::Compared(_) => "pencil compared chain",
        Style::Plank => "plank",
        Style::Blank => "blank",
        Style::SawnOff(class) if is_waste(class) => "half off",
        Style::SawnOff(SawnClass::KeptOffcuts) => "kept",
        Style::SawnOff(_) => "kerf",
        Style::Filled(_) => "filled",
        Style::BareWood => "bare-wood",
        Style::Imprint => "imprint",
    }
}

/// Waste that is hatched: kerfs are solid, and offcuts to keep are plain.
const fn is_waste(class: SawnClass) -> bool {
    !matches!(
        class,
        SawnClass::RipKerfs | SawnClass::CrosscutKerfs | SawnClass::KeptOffcuts
    )
}
