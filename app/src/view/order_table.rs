//! The order book.

use super::keyed::keyed;
use super::layout_place::{choices, read_id};
use super::live::live;
use super::number_field::{Look, NumberField};
use super::problem_list::named;
use super::when::When;
use crate::workbench::{Slot, Workbench};
use leptos::prelude::*;
use solver::OrderDraft;

/// The lines of the order book: change, add, delete.
#[component]
pub(crate) fn OrderTable() -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let lines = Memo::new(move |_| project.read().orders.len());
    let add = move |_| {
        bench.change(|project| {
            project.orders.push(OrderDraft::new(project.layout.barrel));
        });
    };
    view! {
        <section class="result orders" aria-labelledby="orders-title">
            <h2 id="orders-title">"Order book"</h2>
            <When holds=move || lines.get() == 0>
                <p class="empty">"No orders yet. Add one to see which slats to buy."</p>
            </When>
            <When holds=move || { lines.get() > 0 }>
                <table class="entry">
                    <thead>
                        <tr>
                            <th scope="col" class="figure">"Order"</th>
                            <th scope="col">"Pencil"</th>
                            <th scope="col" class="figure">"Ordered, gross of 144"</th>
                            <th scope="col"><span class="unseen">"Change the list"</span></th>
                        </tr>
                    </thead>
                    <tbody>
                        {keyed(move || Vec::from_iter(0..lines.get()), |at| view! { <OrderRow at/> })}
                    </tbody>
                </table>
            </When>
            <button type="button" on:click=add>"Add an order"</button>
        </section>
    }
}

#[component]
fn OrderRow(at: usize) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let project = bench.project();
    let options = move || {
        let project = project.read();
        project.orders.get(at).map(|order| {
            let barrels = project.barrels.iter().enumerate();
            let names =
                barrels.map(|(place, entry)| (entry.id, named(&entry.draft.name, "Barrel", place)));
            choices(names.collect(), order.barrel)
        })
    };
    let pick = move |event| {
        if let Some(id) = read_id(&event_target_value(&event)) {
            bench.change(|project| {
                if let Some(order) = project.orders.get_mut(at) {
                    order.barrel = id;
                }
            });
        }
    };
    let delete = move |_| {
        bench.change(|project| {
            if at < project.orders.len() {
                project.orders.remove(at);
            }
        });
        bench.tell("Order deleted. Undo brings it back.");
    };
    view! {
        <tr>
            <th scope="row" class="figure">{at + 1}</th>
            <td><select aria-label=format!("Pencil of order {}", at + 1) on:change=pick>{live(options)}</select></td>
            <td>
                <NumberField
                    at=Slot::Order(at)
                    context="table"
                    look=Look::Bare
                    name=Signal::derive(move || format!("Gross of order {}", at + 1))
                />
            </td>
            <td class="tools">
                <button type="button" on:click=delete aria-label=format!("Delete order {}", at + 1)>"Delete"</button>
            </td>
        </tr>
    }
}
