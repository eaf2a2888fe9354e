//! The card of a barrel: one printed page with its outline, its sizes and what the woodshop says.

use super::drawn::Hatching;
use super::live::live;
use super::office::page_of;
use super::paper_drawing::PaperDrawing;
use super::shaping::Shaping;
use crate::preference;
use crate::protocol::RankedRow;
use crate::workbench::{JobState, Jobs, Workbench};
use leptos::prelude::*;
use solver::{
    Angle, Barrel, LengthUnit, Outcome, Paper, PaperSize, Rule, Way, draw_barrel_to_scale,
    draw_pencil, figure,
};

/// The part of the page that holds the patterns of hatching.
const CONTEXT: &str = "card";
/// Stocks that find room.
const MOST_STOCKS: usize = 14;

/// The paper of the card, and whether it is what is printed. A handle.
#[derive(Clone, Copy)]
pub(crate) struct Card {
    size: RwSignal<PaperSize>,
    /// Whether the card is printed, and not the place as it stands.
    pub(crate) printing: RwSignal<bool>,
}

impl Card {
    /// On the paper that was used last.
    pub(crate) fn new() -> Self {
        let size = RwSignal::new(preference::paper());
        Effect::new(move |_| preference::keep_paper(size.get()));
        Self {
            size,
            printing: RwSignal::new(false),
        }
    }

    fn print(self) {
        self.printing.set(true);
        request_animation_frame(move || {
            // A page that may not print leaves it to the browser's own command.
            let _ = window().print();
            self.printing.set(false);
        });
    }
}

/// The choice of the paper, and the button.
#[component]
pub(crate) fn CardTools(card: Card) -> impl IntoView {
    let shaping = expect_context::<Shaping>();
    let stale = shaping.stale();
    let nothing = move || stale.get() || shaping.barrel.with(Option::is_none);
    let sizes = PaperSize::ALL
        .map(|each| {
            view! {
                <button
                    type="button"
                    aria-pressed=move || if card.size.get() == each { "true" } else { "false" }
                    on:click=move |_| card.size.set(each)
                >
                    {each.label()}
                </button>
            }
        })
        .collect_view();
    view! {
        <div class="actions">
            <button type="button" disabled=nothing on:click=move |_| card.print()>"Print the barrel card"</button>
            <span class="units" role="group" aria-label="Paper">{sizes}</span>
        </div>
    }
}

/// The card, which is made when it is printed: nothing of it waits on a hand that shapes the barrel.
#[component]
pub(crate) fn BarrelCard(
    /// Its paper.
    card: Card,
    /// The checks that are told of.
    checks: &'static [Rule],
) -> impl IntoView {
    live(move || {
        card.printing
            .get()
            .then(|| view! { <CardPage card checks/> })
    })
}

/// The page, which is seen on paper only.
#[component]
fn CardPage(card: Card, checks: &'static [Rule]) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let shaping = expect_context::<Shaping>();
    let jobs = expect_context::<Jobs>();
    let size = card.size;
    let paper = move || Paper {
        size: size.get(),
        landscape: false,
    };
    let drawn = Memo::new(move |_| {
        shaping.barrel.with(|barrel| {
            let (barrel, stale) = barrel.as_ref()?;
            // What cannot be made is not sent out.
            let drawn = draw_barrel_to_scale(barrel, paper(), bench.unit.get());
            drawn.filter(|_| !stale)
        })
    });
    let drawing =
        Memo::new(move |_| drawn.with(|drawn| drawn.as_ref().map(|drawn| drawn.drawing.clone())));
    let side = Memo::new(move |_| {
        let project = bench.project();
        let project = project.read();
        let pencil = project.check_pencil(project.layout.barrel).ok()?;
        Some(draw_pencil(&pencil, paper(), bench.unit.get()).drawing)
    });
    let scale = move || drawn.with(|drawn| drawn.as_ref().map(|drawn| drawn.scale.label()));
    let title = move || {
        shaping
            .barrel
            .with(|barrel| barrel.as_ref().map(|(barrel, _)| barrel.name().to_owned()))
    };
    let facts = move || {
        let unit = bench.unit.get();
        shaping
            .barrel
            .with(|barrel| barrel.as_ref().map(|(barrel, _)| facts(barrel, unit)))
    };
    let said = move || {
        let unit = bench.unit.get();
        let layout = bench.layout().read();
        let told = layout.iter().flat_map(|shown| shown.layout.checks());
        let told = told.filter(|check| checks.contains(&check.rule)).map(|check| {
            let outcome = match check.outcome {
                Outcome::Passed => "Pass",
                Outcome::Noted => "Note",
                Outcome::Failed => "Fail",
            };
            view! { <tr><td class="strong">{outcome}</td><th scope="row">{check.rule.label()}</th><td>{check.statement(unit)}</td></tr> }
        });
        view! { <table><tbody>{told.collect_view()}</tbody></table> }
    };
    let stocks = move || match jobs.ranking().get() {
        JobState::Done(ranking) => stocks(ranking.rows).into_any(),
        _ => ().into_any(),
    };
    view! {
        <article class=move || format!("office-sheet {}", page_of(paper())) aria-label="Barrel card">
            <svg class="unseen" aria-hidden="true"><Hatching context=CONTEXT/></svg>
            <div class="sheet paper"><PaperDrawing drawing context=CONTEXT/></div>
            <div class="sheet paper"><PaperDrawing drawing=side context=CONTEXT/></div>
            <div class="halves">
                <section><h3>"Sizes"</h3>{live(facts)}</section>
                <section><h3>"On each stock"</h3>{live(stocks)}</section>
            </div>
            <section><h3>"What the woodshop says"</h3>{live(said)}</section>
            <dl class="title-block">
                <div class="owner"><dt>"Owner"</dt><dd></dd></div>
                <div class="title"><dt>"Title"</dt><dd>{live(title)}</dd></div>
                <div class="works"><dt>"Project"</dt><dd>{live(move || bench.project().read().name.clone())}</dd></div>
                <div class="type"><dt>"Document type"</dt><dd>"Barrel card"</dd></div>
                <div class="page"><dt>"Scale"</dt><dd>{live(scale)}</dd></div>
                <div class="format"><dt>"Paper, unit"</dt><dd>{live(move || size.get().label())}", "{live(move || bench.unit.get().label())}</dd></div>
                <div class="number"><dt>"Number"</dt><dd></dd></div>
                <div class="date"><dt>"Date of issue"</dt><dd></dd></div>
                <div class="creator"><dt>"Created by"</dt><dd></dd></div>
                <div class="approver"><dt>"Approved by"</dt><dd></dd></div>
            </dl>
        </article>
    }
}

fn facts(barrel: &Barrel, unit: LengthUnit) -> impl IntoView + use<> {
    let length = |length: solver::Length| figure::length_with_unit(length.in_millimetres(), unit);
    let outline = barrel.finished(Angle::ZERO);
    let extents = outline.extents();
    let area = figure::area(outline.area().in_square_millimetres(), unit);
    let mut rows = vec![
        ("Kind", barrel.shape().label().to_owned()),
        ("Width over the coat", length(extents.width())),
        ("Height over the coat", length(extents.height())),
        ("Coat, each side", length(barrel.coat())),
        ("Lead diameter", length(barrel.lead_diameter())),
        ("Pencil length", length(barrel.length())),
        ("Girth over the coat", length(outline.perimeter())),
        (
            "Section over the coat",
            format!("{area}{}{}", figure::THIN_SPACE, unit.area_label()),
        ),
    ];
    if barrel.shape().has_corners() {
        rows.insert(3, ("Corner radius", length(barrel.corner_radius())));
    }
    let rows = rows.into_iter().map(|(name, value)| {
        view! { <tr><th scope="row">{name}</th><td class="figure">{value}</td></tr> }
    });
    view! { <table><tbody>{rows.collect_view()}</tbody></table> }
}

fn stocks(rows: Vec<RankedRow>) -> impl IntoView {
    let mut shown: Vec<RankedRow> = Vec::new();
    for row in rows {
        if !shown.iter().any(|other| other.slat == row.slat) && shown.len() < MOST_STOCKS {
            shown.push(row);
        }
    }
    let rows = shown.into_iter().map(|row| {
        let way: Way = row.way.into();
        let price = row.price_per_gross.map_or_else(|| figure::NO_FIGURE.to_owned(), figure::money_rounded);
        view! { <tr><th scope="row">{row.slat_name}</th><td class="figure strong">{row.pencils}</td><td>{way.label()}</td><td class="figure">{price}</td></tr> }
    });
    view! {
        <table>
            <thead><tr><th scope="col">"Stock"</th><th scope="col" class="figure">"Pencils"</th><th scope="col">"Lies"</th><th scope="col" class="figure">"Price a gross"</th></tr></thead>
            <tbody>{rows.collect_view()}</tbody>
        </table>
    }
}
