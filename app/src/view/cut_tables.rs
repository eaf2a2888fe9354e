//! What a plan of cuts comes to, as tables: planks to take, blanks sawn, where the wood goes.

use super::live::live;
use crate::download;
use crate::workbench::{Planned, Workbench};
use leptos::prelude::*;
use solver::sawing::{SawingList, SawingNames, SawnClass};
use solver::{LengthUnit, Volume, figure};
use std::sync::Arc;

/// The heading of a column, and whether figures stand in it.
pub(crate) type Heading = (&'static str, bool);

/// A table with a name for each row.
pub(crate) fn plain_table(headings: &[Heading], rows: AnyView, foot: AnyView) -> AnyView {
    let headings = headings.iter().map(|&(heading, is_figure)| {
        view! { <th scope="col" class:figure=is_figure>{heading}</th> }
    });
    let headings = headings.collect_view();
    view! {
        <table>
            <thead><tr>{headings}</tr></thead>
            <tbody>{rows}</tbody>
            <tfoot>{foot}</tfoot>
        </table>
    }
    .into_any()
}

/// The same in a frame that scrolls.
fn table(label: &'static str, headings: &[Heading], rows: AnyView, foot: AnyView) -> AnyView {
    scrolled(label, plain_table(headings, rows, foot))
}

/// A table in a frame that scrolls.
pub(crate) fn scrolled(label: &'static str, table: AnyView) -> AnyView {
    view! { <div class="scroll" tabindex="0" role="group" aria-label=label>{table}</div> }
        .into_any()
}

/// A row: its name, and figures of which the strong one is what is looked for.
pub(crate) fn row(name: String, figures: Vec<String>, strong: usize) -> AnyView {
    let figures = figures.into_iter().enumerate().map(|(at, figure)| {
        view! { <td class="figure" class:strong=at == strong>{figure}</td> }
    });
    view! { <tr><th scope="row">{name}</th>{figures.collect_view()}</tr> }.into_any()
}

/// The planks to take.
#[component]
pub(crate) fn Bill(planned: Arc<Planned>) -> impl IntoView {
    let list = &planned.list;
    let rows = list.bill.iter().map(|line| {
        let figures = vec![
            figure::count(line.planks),
            figure::money(line.price),
            figure::money(line.cost),
        ];
        row(planned.names().plank(line.plank), figures, 0)
    });
    let reckoning = &planned.reckoning;
    let less = [
        ("Less offcuts to keep", reckoning.offcuts),
        ("Less blanks beyond those wanted", reckoning.over),
    ];
    let less = less.into_iter().filter(|(_, worth)| *worth > 0);
    let less = less.map(|(name, worth)| {
        let figures = vec![String::new(), String::new(), figure::money(-worth)];
        row(name.to_owned(), figures, 3)
    });
    let together = vec![
        figure::count(list.planks),
        String::new(),
        figure::money(list.cost - reckoning.offcuts - reckoning.over),
    ];
    let foot = row("Together".to_owned(), together, 3);
    let headings = [
        ("Take", false),
        ("Planks", true),
        ("Price of one", true),
        ("Price", true),
    ];
    let rows = rows.chain(less).collect_view().into_any();
    table("Planks to take", &headings, rows, foot)
}

/// The blanks that come of the plan.
#[component]
pub(crate) fn Blanks(planned: Arc<Planned>) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let headings = [
        ("Blank", false),
        ("Wanted", true),
        ("Sawn", true),
        ("Beyond", true),
        ("Missing", true),
        ("Length × width × thickness as sawn", true),
    ];
    let rows = {
        let planned = Arc::clone(&planned);
        move || {
            let unit = bench.unit.get();
            let lines = planned.reckoning.blanks.iter().zip(planned.data().blanks());
            let rows = lines.enumerate().map(|(blank, (line, order))| {
                let size = order.size;
                let sizes = [size.length, size.width, size.thickness];
                let sizes = sizes
                    .map(|size| figure::micrometres(size, unit))
                    .join(" × ");
                let figures = vec![
                    figure::count(line.wanted),
                    figure::count(line.made),
                    figure::count(line.over),
                    figure::count(line.short),
                    format!("{sizes}{}{}", figure::THIN_SPACE, unit.label()),
                ];
                row(planned.names().blank(blank), figures, 1)
            });
            rows.collect_view()
        }
    };
    let rows = live(rows).into_any();
    table(
        "Blanks that come of the plan",
        &headings,
        rows,
        ().into_any(),
    )
}

/// Where the wood of the planks goes; classes that take none are left out.
#[component]
pub(crate) fn Balance(planned: Arc<Planned>) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let volume =
        |volume: Volume, unit: LengthUnit| figure::timber(volume.in_cubic_millimetres(), unit);
    let rows = {
        let planned = Arc::clone(&planned);
        move || {
            let (balance, unit) = (&planned.balance, bench.unit.get());
            let classes = SawnClass::ALL.into_iter();
            let classes = classes.filter(|class| balance.cubic_micrometres(*class) > 0);
            let rows = classes.map(|class| {
                let figures = vec![
                    volume(balance.volume(class), unit),
                    figure::ratio(balance.share(class)),
                ];
                row(class.label().to_owned(), figures, 2)
            });
            rows.collect_view()
        }
    };
    let rows = live(rows).into_any();
    let foot = move || {
        let whole = volume(planned.balance.planks(), bench.unit.get());
        row("Planks".to_owned(), vec![whole, figure::ratio(1.0)], 2)
    };
    let headings = [("Wood goes to", false), ("Volume", true), ("Share", true)];
    let label = "Where the wood of the planks goes";
    table(label, &headings, rows, live(foot).into_any())
}

/// The plan as files for a spreadsheet.
#[component]
pub(crate) fn Files(planned: Arc<Planned>) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let save = move |name: &str, write: fn(&SawingList, &SawingNames<'_>, LengthUnit) -> String| {
        let unit = bench.unit.get_untracked();
        let text = write(&planned.list, &planned.names(), unit);
        bench.tell(&download::list(name, &text));
    };
    let save_bill = save.clone();
    view! {
        <div class="actions">
            <button type="button" on:click=move |_| save("cuts.csv", SawingList::cuts_csv)>"Save the cuts as CSV"</button>
            <button type="button" on:click=move |_| save_bill("planks.csv", |list, names, _| list.bill_csv(names))>"Save the planks as CSV"</button>
            <button type="button" on:click=|_| { let _ = window().print(); }>"Print the saw-shop sheet"</button>
        </div>
    }
}
