//! The feed, and the knife marks it leaves: either gives the other.

use super::live::live;
use super::number_field::NumberField;
use crate::workbench::{Slot, Workbench};
use leptos::prelude::*;
use solver::{FeedProblem, Field, Head, HeadKind, KnifeMarks, Length, LengthUnit, Typed, figure};

/// The feed that a wish for the marks of a head gives.
type Asked = fn(&Head, Length) -> Result<KnifeMarks, FeedProblem>;

/// The field of the feed, and what takes the feed that gives certain marks.
#[component]
pub(crate) fn FeedForm() -> impl IntoView {
    let head = RwSignal::new(HeadKind::Top);
    let heads = HeadKind::ALL
        .map(|kind| {
            view! { <option value=(kind as usize).to_string() selected=move || head.get() == kind>{kind.label()}</option> }
        })
        .into_iter()
        .collect_view();
    let pick = move |event| {
        let place = event_target_value(&event).parse::<usize>().ok();
        if let Some(kind) = place.and_then(|place| HeadKind::ALL.get(place)) {
            head.set(*kind);
        }
    };
    let wish = move |field: Field, give: Asked| wish(head, field, give);
    view! {
        <fieldset class="feed">
            <legend>"Feed and knife marks"</legend>
            <NumberField at=Slot::Cut(Field::FeedSpeed) context="column"/>
            <div class="field row">
                <label for="marked-head">"Feed for the marks of"</label>
                <select id="marked-head" on:change=pick>{heads}</select>
            </div>
            {wish(Field::MarkPitch, KnifeMarks::with_pitch)}
            {wish(Field::WaveHeight, KnifeMarks::with_wave)}
        </fieldset>
    }
}

/// What is asked of the marks: a number that is not kept, as the feed that it gives is.
fn wish(head: RwSignal<HeadKind>, field: Field, give: Asked) -> AnyView {
    let bench = expect_context::<Workbench>();
    // What was typed, and what it meant in the unit of then.
    let text = RwSignal::new(String::new());
    let typed = RwSignal::new(Typed::empty());
    let shown = move || {
        let (text, unit) = (text.get(), bench.unit.get());
        typed.with(|typed| {
            if *typed == Typed::new(&text, field, unit) {
                text
            } else {
                typed.full(field, unit)
            }
        })
    };
    let take_in = move |event| {
        let now = event_target_value(&event);
        typed.set(Typed::new(&now, field, bench.unit.get_untracked()));
        text.set(now);
    };
    let marks = Memo::new(move |_| {
        let head = bench.project().read().heads[head.get() as usize].check();
        let unit = bench.unit.get();
        typed.with(|typed| feed_for(typed, field, head.ok().as_ref(), give, unit))
    });
    let id = format!("wish-{field:?}");
    let told = format!("{id}-told");
    let wrong = move || marks.with(|marks| matches!(marks, Some(Err(_))));
    let words = move || match marks.get()? {
        Ok(marks) => Some(format!("Gives a feed of {} m/min.", feed_text(marks.feed))),
        Err(problem) => Some(problem),
    };
    let take = move |_| {
        let Some(Ok(marks)) = marks.get_untracked() else {
            return;
        };
        bench.change(|project| project.cut.feed = Typed::Number(marks.feed));
        let feed = feed_text(marks.feed);
        bench.tell(&format!(
            "The feed is {feed} m/min now. Undo brings the last one back."
        ));
    };
    let unit = move || format!(", {}", bench.unit.get().label());
    let spec = field.spec();
    view! {
        <div class="field row wish">
            <label for=id.clone()>{spec.label} <span class="unit">{live(unit)}</span></label>
            <input
                type="text"
                id=id
                class="number"
                class:wrong=wrong
                inputmode="decimal"
                autocomplete="off"
                spellcheck="false"
                prop:value=shown
                aria-invalid=move || if wrong() { "true" } else { "false" }
                aria-describedby=told.clone()
                on:input=take_in
            />
            <p class="told" class:problem=wrong id=told role="status">{live(words)}</p>
            <button
                type="button"
                aria-label=format!("Take this feed for the {}", spec.label.to_lowercase())
                aria-disabled=move || if marks.with(|marks| matches!(marks, Some(Ok(_)))) { "false" } else { "true" }
                on:click=take
            >
                "Take this feed"
            </button>
        </div>
    }
    .into_any()
}

/// The marks that are asked for, or why they cannot be had; nothing while nothing is asked.
fn feed_for(
    typed: &Typed,
    field: Field,
    head: Option<&Head>,
    give: Asked,
    unit: LengthUnit,
) -> Option<Result<KnifeMarks, String>> {
    let asked = match typed.read_optional(field) {
        Ok(asked) => Length::millimetres(asked?),
        Err(problem) => return Some(Err(problem.message(unit))),
    };
    let Some(head) = head else {
        return Some(Err("Mend this head below first".to_owned()));
    };
    let marks = give(head, asked).map_err(|problem| problem.message(unit));
    Some(marks.and_then(|marks| {
        let feed = Typed::Number(marks.feed).read(Field::FeedSpeed);
        feed.map(|_| marks).map_err(|problem| problem.message(unit))
    }))
}

/// A feed as it is set.
fn feed_text(feed: f64) -> String {
    figure::plain(feed, 2)
}
