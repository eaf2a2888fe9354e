//! The barrel for another's Slatwright, and as a drawing to send.

use super::barrel_card::{Card, CardTools};
use super::file_menu::Files;
use super::live::live;
use super::setting_files::{save_file, titled};
use super::shaping::Shaping;
use crate::project_file::{barrel_fragment, write_barrel_file};
use crate::workbench::Workbench;
use leptos::prelude::*;
use solver::{Angle, BarrelDraft, Drawing, TrueSize};

/// The barrel as an address, as a file, and as drawings.
#[component]
pub(crate) fn BarrelSharing(
    /// The card to print.
    card: Card,
) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let shaping = expect_context::<Shaping>();
    let files = expect_context::<Files>();
    let draft = move || -> Option<BarrelDraft> {
        let project = bench.project();
        let project = project.read_untracked();
        let at = project.barrel_place(project.layout.barrel)?;
        Some(project.barrels[at].draft.clone())
    };
    let shown = RwSignal::new(None::<String>);
    let link = move |_| {
        let Some(draft) = draft() else {
            return;
        };
        let location = window().location();
        let (origin, path) = (location.origin(), location.pathname());
        let page = origin.unwrap_or_default() + &path.unwrap_or_default();
        let link = page + &barrel_fragment(&draft);
        // A browser that gives no way to the clipboard leaves the link to be copied by hand.
        let _ = window().navigator().clipboard().write_text(&link);
        shown.set(Some(link));
        bench.tell("The link is copied, and stands below. It holds this barrel alone and needs no network.");
    };
    let file = move |_| {
        if let Some(draft) = draft() {
            save_file(
                bench,
                &draft.name,
                "slatwright-barrel.json",
                &write_barrel_file(&draft),
            );
        }
    };
    let outline = move |end: &'static str, write: fn(&TrueSize) -> String| {
        shaping.barrel.with_untracked(|barrel| {
            if let Some((barrel, false)) = barrel {
                let outline = barrel.finished(Angle::ZERO);
                let file = TrueSize::of_outline(&outline, barrel.name());
                save_file(
                    bench,
                    &format!("{} outline", barrel.name()),
                    end,
                    &write(&file),
                );
            }
        });
    };
    let drawing = shaping.drawing();
    let view_file = move |_| {
        let drawing: Option<Drawing> = drawing.get_untracked();
        if let Some(drawing) = drawing {
            save_file(
                bench,
                "End view",
                "svg",
                &drawing.to_svg(&titled(bench, "End view")),
            );
        }
    };
    let not_good = move || {
        shaping
            .barrel
            .with(|barrel| !matches!(barrel, Some((_, false))))
    };
    view! {
        <section class="result sharing" aria-labelledby="sharing-title">
            <h2 id="sharing-title">"Send this barrel"</h2>
            <div class="actions">
                <button type="button" on:click=link>"Copy a link to it"</button>
                <button type="button" on:click=file>"Save it as a file"</button>
                <button type="button" on:click=move |_| files.pick()>"Add one from a file"</button>
                <button type="button" disabled=not_good on:click=view_file>"End view as SVG"</button>
                <button type="button" disabled=not_good on:click=move |_| outline("svg", TrueSize::to_svg)>"Outline as SVG"</button>
                <button type="button" disabled=not_good on:click=move |_| outline("dxf", TrueSize::to_dxf)>"Outline as DXF"</button>
            </div>
            <CardTools card/>
            {live(move || shown.get().map(|link| view! {
                <textarea class="link" readonly rows="3" aria-label="Link to this barrel">{link}</textarea>
            }))}
            <p class="hint">"Link and file hold the barrel alone. Opened in another’s Slatwright they add it to the project there; nothing is sent anywhere, and outlines are those over the coat."</p>
        </section>
    }
}
