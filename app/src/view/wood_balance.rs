//! Where the wood goes: a bar, and the same as a table.

use super::live::live;
use super::when::When;
use crate::workbench::Workbench;
use leptos::prelude::*;
use solver::{Volume, WoodBalance, WoodClass, figure};

/// The class of wood that is lit on the drawing: the one pointed at, or else the one pinned.
#[derive(Clone, Copy)]
pub(crate) struct Lit {
    pointed: RwSignal<Option<WoodClass>>,
    pinned: RwSignal<Option<WoodClass>>,
}

impl Lit {
    /// Nothing is lit.
    pub(crate) fn new() -> Self {
        Self {
            pointed: RwSignal::new(None),
            pinned: RwSignal::new(None),
        }
    }

    /// The class to light up.
    pub(crate) fn class(&self) -> Option<WoodClass> {
        self.pointed.get().or(self.pinned.get())
    }

    /// Keeps a class lit, or lets go of it.
    fn pin(&self, class: WoodClass) {
        self.pinned
            .update(|pinned| *pinned = (*pinned != Some(class)).then_some(class));
    }
}

/// The class name of a class of wood.
pub(crate) const fn class_name(class: WoodClass) -> &'static str {
    match class {
        WoodClass::Pencils => "pencils",
        WoodClass::Grooves => "grooves",
        WoodClass::Corners => "corners",
        WoodClass::Parting => "parting",
        WoodClass::Edges => "edges",
        WoodClass::Faces => "faces",
        WoodClass::Kerf => "kerf",
        WoodClass::Ends => "ends",
        WoodClass::RejectedSlats => "rejected-slats",
        WoodClass::RejectedPencils => "rejected-pencils",
    }
}

/// The wood balance of one sandwich; classes that take no wood are left out. The class that is pointed at or focused lights up on
/// the drawing.
#[component]
pub(crate) fn WoodBalanceTable(
    /// The class that is lit on the drawing.
    lit: Lit,
) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let balance = Memo::new(move |_| {
        bench.layout().with(|shown| {
            shown
                .as_ref()
                .and_then(|shown| shown.layout.balance().copied())
        })
    });
    view! {
        <section class="result balance" aria-labelledby="balance-title">
            <h2 id="balance-title">"Where the wood of a sandwich goes"</h2>
            <When holds=move || balance.with(Option::is_none)>
                <p class="empty">"A check fails, so there is no balance yet. Mend the check that fails first."</p>
            </When>
            <When holds=move || balance.with(Option::is_some)>
                <Bar balance/>
                <Table balance lit/>
            </When>
        </section>
    }
}

/// Whether a class takes no wood, so that there is nothing to show of it.
fn is_empty(balance: Memo<Option<WoodBalance>>, class: WoodClass) -> bool {
    balance.with(|balance| balance.is_none_or(|balance| balance.volume(class) == Volume::ZERO))
}

#[component]
fn Bar(balance: Memo<Option<WoodBalance>>) -> impl IntoView {
    let parts = WoodClass::ALL
        .map(|class| {
            let share = move || {
                let balance = balance.get()?;
                Some(format!("{:.6}", balance.share(class).max(0.0)))
            };
            view! { <span class=format!("wood-{}", class_name(class)) style:flex-grow=share hidden=move || is_empty(balance, class)></span> }
        })
        .collect_view();
    view! { <div class="wood-bar" aria-hidden="true">{parts}</div> }
}

#[component]
fn Table(balance: Memo<Option<WoodBalance>>, lit: Lit) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let unit = bench.unit;
    let volume = move |pick: &dyn Fn(WoodBalance) -> Volume| {
        balance
            .get()
            .map(|balance| figure::volume(pick(balance).in_cubic_millimetres(), unit.get()))
    };
    let rows = WoodClass::ALL
        .map(|class| {
            let section = move || {
                balance.get()?.section(class).map_or_else(
                    || Some(figure::NO_FIGURE.to_owned()),
                    |section| Some(figure::area(section.in_square_millimetres(), unit.get())),
                )
            };
            let share = move || Some(figure::ratio(balance.get()?.share(class)));
            view! {
                <tr
                    class=format!("wood-{}", class_name(class))
                    hidden=move || is_empty(balance, class)
                    class:lit=move || lit.class() == Some(class)
                    on:mouseenter=move |_| lit.pointed.set(Some(class))
                    on:mouseleave=move |_| lit.pointed.set(None)
                >
                    <th scope="row">
                        <button
                            type="button"
                            class="swatch-name"
                            aria-pressed=move || if lit.pinned.get() == Some(class) { "true" } else { "false" }
                            title="Show on the drawing"
                            on:click=move |_| lit.pin(class)
                        >
                            <span class="swatch" aria-hidden="true"></span>
                            {class.label()}
                        </button>
                    </th>
                    <td class="figure">{live(section)}</td>
                    <td class="figure">{live(move || volume(&|balance| balance.volume(class)))}</td>
                    <td class="figure">{live(share)}</td>
                </tr>
            }
        })
        .collect_view();
    view! {
        <table>
            <thead>
                <tr>
                    <th scope="col">"Goes to"</th>
                    <th scope="col" class="figure">"Section, " {live(move || unit.get().area_label())}</th>
                    <th scope="col" class="figure">"Volume, " {live(move || unit.get().volume_label())}</th>
                    <th scope="col" class="figure">"Share"</th>
                </tr>
            </thead>
            <tbody>{rows}</tbody>
            <tfoot>
                <tr>
                    <th scope="row">"Bought"</th>
                    <td></td>
                    <td class="figure">{live(move || volume(&|balance| balance.bought()))}</td>
                    <td class="figure">{figure::ratio(1.0)}</td>
                </tr>
            </tfoot>
        </table>
    }
}
