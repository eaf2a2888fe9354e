//! A drawing whose driving dimensions are fields, with gauges for what can be slid.

use super::drawn::{DrawnDimensions, DrawnLabels, DrawnShapes, Hatching, dimension_of, labels_of};
use super::keyed::keyed;
use super::live::live;
use super::number_field::{Look, NumberField};
use super::sliding_gauge::{Gauge, GaugeGrip, GaugeMark};
use super::wood_balance::Lit;
use crate::workbench::{Slot, Workbench};
use leptos::html::Div;
use leptos::prelude::*;
use send_wrapper::SendWrapper;
use solver::{Drawing, Edge, Grip, ProjectDraft, Sheet, Size};
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

    /// Measures an element as soon as it stands on the page, and whenever it changes.
    pub(crate) fn watch(self, frame: NodeRef<Div>) {
        Effect::new(move |_| {
            if let Some(frame) = frame.get() {
                self.measure(&frame);
            }
        });
    }

    /// Measures an element now and whenever it changes.
    pub(crate) fn measure(self, element: &web_sys::Element) {
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
    size.watch(frame);

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
                <Hatching context/>
                <DrawnShapes drawing context lit/>
                <DrawnDimensions drawing/>
                <DrawnLabels labels=labels_of(drawing)/>
                {gauges.map(|gauge| view! { <GaugeMark gauge stale/> }).collect_view()}
            </svg>
            {keyed(
                move || driving.get(),
                move |(measured, at)| view! { <DrivingField drawing measured at context/> },
            )}
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
    let dimension = dimension_of(drawing, measured);
    // A number may change without the place of its field, and a place without its side.
    let area = Memo::new(move |_| Some(dimension.read().as_ref()?.area));
    let side = Memo::new(move |_| Some(dimension.read().as_ref()?.near));
    let sign = Memo::new(move |_| dimension.read().as_ref().map_or("", |found| found.sign));
    let pixels = move |pick: fn(&solver::SheetArea) -> f64| {
        area.with(|area| area.as_ref().map(|area| format!("{:.1}px", pick(area))))
    };
    let near = move |edge| side.get() == Some(edge);
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
            <span class="sign" aria-hidden="true">{live(move || sign.get())}</span>
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
