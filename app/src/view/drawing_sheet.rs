//! A drawing whose driving dimensions are fields, with gauges for what can be slid.

use super::number_field::{Look, NumberField};
use super::sliding_gauge::{Gauge, GaugeGrip, GaugeMark};
use super::wood_balance::Lit;
use crate::workbench::{Slot, Workbench};
use leptos::html::Div;
use leptos::prelude::*;
use send_wrapper::SendWrapper;
use solver::{Dimension, Drawing, Edge, Grip, ProjectDraft, Sheet, Size, Style, WoodClass};
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::ResizeObserver;

/// The sheet to draw for: as wide as its place on the page, with rows for finger or mouse.
#[derive(Clone, Copy)]
pub(crate) struct SheetSize {
    width: RwSignal<f64>,
    finger: RwSignal<bool>,
}

impl SheetSize {
    /// A sheet that is measured once it stands on the page.
    pub(crate) fn new() -> Self {
        Self {
            width: RwSignal::new(0.0),
            finger: RwSignal::new(false),
        }
    }

    /// The sheet, or nothing before it was measured.
    pub(crate) fn sheet(&self, bench: Workbench) -> Option<Sheet> {
        let width = self.width.get();
        let (row, text) = if self.finger.get() {
            (48.0, 76.0)
        } else {
            (26.0, 66.0)
        };
        (width > 0.0).then(|| Sheet {
            width,
            row,
            text,
            unit: bench.unit.get(),
        })
    }

    /// Measures the element now and whenever it changes.
    fn watch(self, element: &web_sys::Element) {
        let measured = element.clone();
        let measure = move || {
            self.width.set(f64::from(measured.client_width()));
            let coarse = window().match_media("(pointer: coarse)").ok().flatten();
            self.finger.set(coarse.is_some_and(|query| query.matches()));
        };
        measure();
        let on_resize = Closure::<dyn FnMut()>::new(measure);
        // Without an observer the drawing keeps the width it started with.
        if let Ok(observer) = ResizeObserver::new(on_resize.as_ref().unchecked_ref()) {
            observer.observe(element);
            let kept = SendWrapper::new((observer, on_resize));
            on_cleanup(move || kept.0.disconnect());
        }
    }
}

/// The driving sizes that have no field on a drawing: those it found no place for, or all while
/// there is nothing to draw.
pub(crate) fn homeless_slots(
    drawing: Option<&Drawing>,
    all: &[Size],
    project: &ProjectDraft,
) -> Vec<Slot> {
    let sizes = drawing.map_or(all, |drawing| drawing.unplaced.as_slice());
    let mut slots: Vec<Slot> = Vec::new();
    for slot in sizes
        .iter()
        .filter_map(|size| Slot::of_size(*size, project))
    {
        if !slots.contains(&slot) {
            slots.push(slot);
        }
    }
    slots
}

/// A drawing with fields for its driving dimensions.
#[component]
pub(crate) fn DrawingSheet(
    /// The drawing, once the sheet is measured and there is something to draw.
    drawing: Memo<Option<Drawing>>,
    /// The sheet it is drawn for.
    size: SheetSize,
    /// A name for the drawing.
    title: &'static str,
    /// Which part of the page this is, for the names of elements.
    context: &'static str,
    /// Whether the drawing no longer shows what is asked.
    #[prop(into)]
    stale: Signal<bool>,
    /// The class of wood to light up.
    #[prop(optional)]
    lit: Option<Lit>,
) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let frame = NodeRef::<Div>::new();
    Effect::new(move |_| {
        if let Some(frame) = frame.get() {
            size.watch(&frame);
        }
    });

    let view_box = move || {
        drawing.with(|drawing| {
            drawing
                .as_ref()
                .map(|drawing| format!("0 0 {:.0} {:.0}", drawing.width, drawing.height))
        })
    };
    let height = move || {
        drawing.with(|drawing| {
            drawing
                .as_ref()
                .map_or(0.0, |drawing| drawing.height.round())
        })
    };
    let shapes = move || {
        drawing.with(|drawing| {
            let shapes = drawing
                .as_ref()
                .map(|drawing| drawing.shapes.as_slice())
                .unwrap_or_default();
            shapes
                .iter()
                .map(|shape| {
                    let style = shape.style;
                    view! {
                        <path
                            class=style_name(style)
                            fill=hatching(style, context)
                            class:lit=move || matches!((style, lit.and_then(|lit| lit.class())),
                                (Style::Wood(class), Some(lit)) if class == lit)
                            d=shape.path.clone()
                        />
                    }
                })
                .collect_view()
        })
    };
    let lines = move || {
        drawing.with(|drawing| {
            let dimensions = drawing
                .as_ref()
                .map(|drawing| drawing.dimensions.as_slice())
                .unwrap_or_default();
            dimensions.iter().map(dimension_lines).collect_view()
        })
    };
    let labels = move || {
        drawing.with(|drawing| {
            let labels = drawing.as_ref().map(|drawing| drawing.labels.as_slice()).unwrap_or_default();
            labels
                .iter()
                .map(|label| {
                    view! {
                        <text class="label" x=format!("{:.1}", label.x) y=format!("{:.1}", label.y)>{label.text.clone()}</text>
                    }
                })
                .collect_view()
        })
    };
    let description =
        move || drawing.with(|drawing| drawing.as_ref().map(|drawing| drawing.description.clone()));
    let driving = Memo::new(move |_| {
        drawing.with(|drawing| {
            let dimensions = drawing
                .as_ref()
                .map(|drawing| drawing.dimensions.as_slice())
                .unwrap_or_default();
            let project = bench.project();
            dimensions
                .iter()
                .filter(|dimension| dimension.driving)
                .filter_map(|dimension| {
                    Some((
                        dimension.size,
                        Slot::of_size(dimension.size, &project.read())?,
                    ))
                })
                .collect::<Vec<_>>()
        })
    });
    let gauges = Grip::ALL.map(|grip| Gauge::new(grip, drawing));
    let title_id = format!("{context}-drawing-title");
    let description_id = format!("{context}-drawing-description");
    let named_by = format!("{title_id} {description_id}");
    view! {
        <div class="sheet" class:stale=stale node_ref=frame>
            <svg
                role="img"
                viewBox=view_box
                style:height=move || format!("{}px", height())
                aria-labelledby=named_by
            >
                <title id=title_id>{title}</title>
                <desc id=description_id>{description}</desc>
                <defs>
                    <pattern id=format!("{context}-rising") class="hatching" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                        <rect width="5" height="5"/>
                        <line x1="0" y1="0" x2="0" y2="5"/>
                    </pattern>
                    <pattern id=format!("{context}-falling") class="hatching" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
                        <rect width="5" height="5"/>
                        <line x1="0" y1="0" x2="0" y2="5"/>
                    </pattern>
                </defs>
                <g class="part">{shapes}</g>
                <g class="dimensions">{lines}</g>
                <g class="labels">{labels}</g>
                {gauges.map(|gauge| view! { <GaugeMark gauge stale/> }).collect_view()}
            </svg>
            <For
                each=move || driving.get()
                key=|entry| *entry
                children=move |(measured, at)| view! { <DrivingField drawing measured at context/> }
            />
            {gauges.map(|gauge| view! { <GaugeGrip gauge stale/> }).collect_view()}
        </div>
    }
}

/// The field of one driving dimension, on its place of the sheet.
#[component]
fn DrivingField(
    drawing: Memo<Option<Drawing>>,
    measured: Size,
    at: Slot,
    context: &'static str,
) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let dimension = Memo::new(move |_| {
        drawing.with(|drawing| {
            let dimensions = drawing
                .as_ref()
                .map(|drawing| drawing.dimensions.as_slice())
                .unwrap_or_default();
            dimensions
                .iter()
                .find(|dimension| dimension.size == measured)
                .cloned()
        })
    });
    let pixels = move |pick: fn(&solver::SheetArea) -> f64| {
        dimension.with(|dimension| {
            dimension
                .as_ref()
                .map(|dimension| format!("{:.1}px", pick(&dimension.area)))
        })
    };
    let near = move |edge| {
        dimension.with(|dimension| {
            dimension
                .as_ref()
                .is_some_and(|dimension| dimension.near == edge)
        })
    };
    let sign = move || {
        dimension.with(|dimension| dimension.as_ref().map_or("", |dimension| dimension.sign))
    };
    // A barrel's size goes by the name that its shape gives it.
    let name = Signal::derive(move || match measured {
        Size::Barrel => at.field().spec().label.to_owned(),
        Size::SlatWidth | Size::TopThickness | Size::BottomThickness if both_alike(bench) => {
            at.field().spec().label.to_owned()
        }
        _ => measured.label().to_owned(),
    });
    view! {
        <div
            class="driving"
            class=("near-top", move || near(Edge::Top))
            class=("near-bottom", move || near(Edge::Bottom))
            class=("near-left", move || near(Edge::Left))
            class=("near-right", move || near(Edge::Right))
            style:left=move || pixels(|area| area.x)
            style:top=move || pixels(|area| area.y)
            style:width=move || pixels(|area| area.width)
            style:height=move || pixels(|area| area.height)
        >
            <span class="sign" aria-hidden="true">{sign}</span>
            <NumberField at context=field_context(context, measured) look=Look::Bare name/>
        </div>
    }
}

/// The part of the page that a field stands in: when both slats are of one stock, the same
/// number stands on the drawing twice.
const fn field_context(context: &'static str, measured: Size) -> &'static str {
    match measured {
        Size::TopThickness | Size::TopWidth => "drawing-top",
        _ => context,
    }
}

/// Whether both slats of the layout are of one stock.
fn both_alike(bench: Workbench) -> bool {
    let project = bench.project();
    let project = project.read();
    project.layout.top == project.layout.bottom
}

fn dimension_lines(dimension: &Dimension) -> impl IntoView + use<> {
    let class = if dimension.driving {
        "dimension drives"
    } else {
        "dimension driven"
    };
    // A driving number is shown by its field; this text takes its place on paper.
    let (x, y) = text_place(dimension);
    view! {
        <g class=class>
            <path class="lines" d=dimension.lines.clone()/>
            <path class="arrows" d=dimension.arrows.clone()/>
            <text class=near_class(dimension.near) x=format!("{x:.1}") y=format!("{y:.1}")>
                <title>{dimension.size.label()}</title>
                {format!("{}{}", dimension.sign, dimension.text)}
            </text>
        </g>
    }
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

/// The fill of hatched wood; the pattern is a part of the same drawing.
fn hatching(style: Style, context: &str) -> Option<String> {
    match style {
        Style::TopHalf => Some(format!("url(#{context}-rising)")),
        Style::BottomHalf => Some(format!("url(#{context}-falling)")),
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
        Style::Coat => "coat",
        Style::Groove => "groove",
        Style::Lead => "lead",
        Style::Seam => "seam",
        Style::Centre => "centre",
        Style::Break => "break",
        Style::OutOfReach => "out-of-reach",
    }
}
