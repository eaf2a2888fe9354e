//! Every table and every drawing of the place that is looked at, as files.

use super::live::live;
use super::setting_files::save_file;
use super::shown::Shown;
use crate::workbench::Workbench;
use leptos::html::Details;
use leptos::prelude::*;

/// The files of a place: a list that is made when it is unfolded, as tables and drawings come and go.
#[component]
pub(crate) fn PlaceFiles() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let names = RwSignal::new(Vec::<(String, &'static str)>::new());
    let look = move || {
        let all = Shown::all().into_iter();
        names.set(all.map(|shown| (shown.name, shown.end)).collect());
    };
    // What was listed of another place is not there any more.
    let place = bench.place;
    let fold = NodeRef::<Details>::new();
    Effect::new(move |_| {
        place.track();
        names.set(Vec::new());
        if let Some(fold) = fold.get_untracked() {
            // Open, it would list nothing.
            let _ = fold.remove_attribute("open");
        }
    });
    let save = move |wanted: Option<&(String, &'static str)>| {
        let is_wanted = |shown: &Shown| {
            wanted.is_none_or(|(name, end)| shown.name == *name && shown.end == *end)
        };
        let mut found = Shown::all();
        found.retain(is_wanted);
        if found.is_empty() {
            bench.tell("It is not there any more: look again.");
        }
        for shown in found {
            save_file(bench, &shown.name, shown.end, &shown.text());
        }
    };
    let list = move || {
        let buttons = names.get().into_iter().map(|wanted| {
            let end = wanted.1.to_uppercase();
            let label = format!("{}, {end}", wanted.0);
            view! { <button type="button" on:click=move |_| save(Some(&wanted))>{label}</button> }
        });
        buttons.collect_view()
    };
    view! {
        <details class="place-files" node_ref=fold on:toggle=move |_| look()>
            <summary>"Tables and drawings of this place as files"</summary>
            <p class="hint">"A table is saved as CSV and a drawing as SVG, with what they show here and now. A browser may ask whether so many files are welcome at once."</p>
            <div class="actions">
                <button type="button" on:click=move |_| look()>"Look again"</button>
                <button type="button" class="all" on:click=move |_| save(None)>"Save all of them"</button>
                {live(list)}
            </div>
        </details>
    }
}
