//! The answer for eyes.

use solver::{
    LengthUnit, OrderAnswer, OrderEnd, OrderReckoning, PeriodReckoning, SlatOrder, StoreAccount,
    figure,
};

use super::Planned;
use crate::note::{Column, Note};

/// The verdict, what is run, bought, sawn and stored, what it costs, what would save, what clashes.
pub(super) fn write(planned: &Planned<'_>, unit: LengthUnit) -> String {
    let mut note = Note::new();
    note.title(planned.project);
    let Ok(answer) = &planned.answer else {
        note.line("The plan did not stand its recount, so it is not told. Change a number a little and try again");
        return note.finish();
    };
    for line in verdict(answer, unit) {
        note.line(&line);
    }
    for clash in &answer.clashes {
        note.line(&format!("  {}", clash.sentence(unit)));
    }
    if let Some(reckoning) = &answer.reckoning {
        for period in &reckoning.periods {
            runs(&mut note, period);
        }
        purchases(&mut note, reckoning);
        sawn(&mut note, reckoning);
        stores(&mut note, "Pencils", reckoning, &reckoning.pencils);
        stores(&mut note, "Slats, usable", reckoning, &reckoning.slats);
        costs(&mut note, reckoning, unit);
        worths(&mut note, answer, unit);
        slack(&mut note, answer);
    }
    if let Some((file, problem)) = &planned.list {
        let file = file.display();
        note.title("Purchase list");
        note.line(&match problem {
            None => format!("Written to {file}"),
            Some(problem) => format!("{file} cannot be written: {problem}"),
        });
    }
    note.finish()
}

/// How good the plan is.
fn verdict(answer: &OrderAnswer, unit: LengthUnit) -> Vec<String> {
    let shown = |amount: Option<i64>| amount.map(|amount| answer.aim.shown(amount, unit));
    let value = shown(answer.value).unwrap_or_default();
    let bound = shown(answer.bound).map(|bound| format!("No plan comes to less than {bound}"));
    let gap = answer.gap.unwrap_or(0.0);
    let told = match answer.end {
        OrderEnd::Proved => return vec![format!("Proved best: {value}")],
        OrderEnd::WithinGap => format!(
            "A good plan, not proved best: {value}, a gap of {}",
            figure::ratio_fine(gap)
        ),
        OrderEnd::NoPlan if answer.clashes.is_empty() => {
            "There is no plan: fractions of packs and sandwiches would do, whole ones do not"
                .to_owned()
        }
        OrderEnd::NoPlan => {
            return vec!["There is no plan; these cannot be kept together:".to_owned()];
        }
        OrderEnd::NoneFound => "No plan was found; there may be one. Allow more steps".to_owned(),
    };
    std::iter::once(told).chain(bound).collect()
}

/// What is run in a period.
fn runs(note: &mut Note, period: &PeriodReckoning) {
    note.title(&format!("Runs in {}", period.name));
    let head = [
        "Sandwiches",
        "Pencil",
        "Bottom slat",
        "Top slat",
        "Way round",
        "Cutter set",
        "Pencils each",
        "Good, all",
        "Hours",
    ];
    let mut rows = vec![head.map(str::to_owned)];
    for run in &period.runs {
        rows.push([
            figure::count(run.sandwiches),
            run.pencil.clone(),
            run.bottom.clone(),
            run.top.clone(),
            run.way.to_owned(),
            run.set
                .clone()
                .unwrap_or_else(|| "made to measure".to_owned()),
            figure::count(u64::from(run.pencils_per_sandwich)),
            figure::plain(run.good, 1),
            figure::plain(run.hours, 2),
        ]);
    }
    let (words, figures) = (Column::Words, Column::Figures);
    if !period.runs.is_empty() {
        let columns = [
            figures, words, words, words, words, words, figures, figures, figures,
        ];
        note.table(columns, &rows);
    }
    let limit = (period.hours_limit).map_or_else(String::new, |limit| {
        format!(" of {}", figure::plain(limit, 2))
    });
    note.line(&format!(
        "Machine hours {}{limit}",
        figure::plain(period.hours, 2)
    ));
}

/// What is bought, and what each supplier gets.
fn purchases(note: &mut Note, reckoning: &OrderReckoning) {
    note.title("Purchase list");
    if reckoning.orders.is_empty() {
        note.line("Nothing is bought");
        return;
    }
    let head = [
        "Order in",
        "Comes in",
        "Supplier",
        "Slat stock",
        "Packs",
        "Slats",
        "From packs",
        "Each",
        "Price",
    ];
    let mut rows = vec![head.map(str::to_owned)];
    rows.extend(reckoning.orders.iter().map(order));
    let (words, figures) = (Column::Words, Column::Figures);
    let columns = [
        words, words, words, words, figures, figures, figures, figures, figures,
    ];
    note.table(columns, &rows);
    note.title("Suppliers");
    let mut rows = vec![["Supplier", "Orders", "Packs", "Price"].map(str::to_owned)];
    for total in &reckoning.suppliers {
        rows.push([
            total.supplier.clone(),
            figure::count(total.orders),
            figure::count(total.packs),
            figure::money(total.price),
        ]);
    }
    note.table([words, figures, figures, figures], &rows);
}

fn order(order: &SlatOrder) -> [String; 9] {
    [
        order.ordered.clone(),
        order.comes.clone().unwrap_or_default(),
        order.supplier.clone(),
        order.stock.clone(),
        figure::count(order.packs),
        figure::count(order.slats),
        figure::count(u64::from(order.from_packs)),
        figure::money(order.pack_price),
        figure::money(order.price),
    ]
}

/// What is sawn in the works.
fn sawn(note: &mut Note, reckoning: &OrderReckoning) {
    if reckoning.sawn.is_empty() {
        return;
    }
    note.title("Sawn in the works");
    let mut rows = vec![["Period", "Slat stock", "Usable slats"].map(str::to_owned)];
    for lot in &reckoning.sawn {
        rows.push([
            lot.period.clone(),
            lot.stock.clone(),
            figure::count(lot.slats),
        ]);
    }
    note.table([Column::Words, Column::Words, Column::Figures], &rows);
}

/// What comes, goes and stays, period by period.
fn stores(note: &mut Note, title: &str, reckoning: &OrderReckoning, accounts: &[StoreAccount]) {
    note.title(title);
    let head = ["Period", "Of", "Comes", "Goes", "Kept", "Over"];
    let mut rows = vec![head.map(str::to_owned)];
    for account in accounts {
        for (at, period) in reckoning.periods.iter().enumerate() {
            let figure_of = |row: &[u64]| figure::count(row.get(at).copied().unwrap_or(0));
            rows.push([
                period.name.clone(),
                account.name.clone(),
                figure_of(&account.comes),
                figure_of(&account.goes),
                figure_of(&account.kept),
                figure_of(&account.spare),
            ]);
        }
    }
    let (words, figures) = (Column::Words, Column::Figures);
    note.table([words, words, figures, figures, figures, figures], &rows);
}

/// What it costs, by kind.
fn costs(note: &mut Note, reckoning: &OrderReckoning, unit: LengthUnit) {
    note.title("Costs");
    let mut rows: Vec<[String; 2]> = (reckoning.costs.iter())
        .map(|cost| [cost.label.to_owned(), figure::money_rounded(cost.amount)])
        .collect();
    rows.push(["All".to_owned(), figure::money_rounded(reckoning.total)]);
    if let Some(gross) = reckoning.cost_per_gross {
        rows.push(["For a gross".to_owned(), figure::money_rounded(gross)]);
    }
    let timber = reckoning.timber.in_cubic_millimetres();
    rows.push(["Timber".to_owned(), figure::timber(timber, unit)]);
    rows.push([
        "Change-overs".to_owned(),
        figure::count(reckoning.changeovers),
    ]);
    note.table([Column::Words, Column::Figures], &rows);
}

/// What would save.
fn worths(note: &mut Note, answer: &OrderAnswer, unit: LengthUnit) {
    if answer.worths.is_empty() {
        return;
    }
    note.title("What would save, with set-ups, orders and tiers as they are");
    let rows: Vec<[String; 2]> = (answer.worths.iter())
        .map(|worth| [worth.change.clone(), answer.aim.shown(worth.saves, unit)])
        .collect();
    note.table([Column::Words, Column::Figures], &rows);
}

/// What the limits of suppliers leave.
fn slack(note: &mut Note, answer: &OrderAnswer) {
    if answer.slack.is_empty() {
        return;
    }
    note.title("What suppliers have left");
    for line in &answer.slack {
        note.line(&line.sentence());
    }
}
