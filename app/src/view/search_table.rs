//! The best layouts found: one table, sorted by any column, each row ready to be laid.

use super::answered::answered;
use super::live::live;
use super::search_form::SearchForm;
use crate::protocol::{FoundRow, Progress, Searched};
use crate::workbench::{Searches, Workbench, is_laid, lay_found};
use leptos::prelude::*;
use solver::{Goal, LengthUnit, Way, figure};
use std::cmp::Ordering;

/// A column of the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Column {
    Slats,
    Set,
    Lies,
    Axis,
    Pitch,
    Pencils,
    Margin,
    Wood,
    Money,
    Good,
    GoodMoney,
    Best,
}

impl Column {
    const ALL: [Self; 12] = [
        Self::Slats,
        Self::Set,
        Self::Lies,
        Self::Axis,
        Self::Pitch,
        Self::Pencils,
        Self::Margin,
        Self::Wood,
        Self::Money,
        Self::Good,
        Self::GoodMoney,
        Self::Best,
    ];

    fn label(self, unit: LengthUnit) -> String {
        let length = unit.label();
        match self {
            Self::Slats => "Slats".to_owned(),
            Self::Set => "Cutters".to_owned(),
            Self::Lies => "Lies".to_owned(),
            Self::Axis => format!("Axis height, {length}"),
            Self::Pitch => format!("Pitch, {length}"),
            Self::Pencils => "Pencils".to_owned(),
            Self::Margin => format!("Margin, {length}"),
            Self::Wood => format!("Wood a gross, {}", unit.volume_label()),
            Self::Money => "Money a gross".to_owned(),
            Self::Good => "Good pencils".to_owned(),
            Self::GoodMoney => "Money a good gross".to_owned(),
            Self::Best => "Best for".to_owned(),
        }
    }

    const fn is_figure(self) -> bool {
        matches!(
            self,
            Self::Axis
                | Self::Pitch
                | Self::Pencils
                | Self::Margin
                | Self::Wood
                | Self::Money
                | Self::Good
                | Self::GoodMoney
        )
    }

    fn compare(self, one: &FoundRow, other: &FoundRow) -> Ordering {
        match self {
            Self::Slats => slats(one).cmp(&slats(other)),
            Self::Set => cutters(one).cmp(&cutters(other)),
            Self::Lies => one.turn_degrees.total_cmp(&other.turn_degrees),
            Self::Axis => one.axis_height_mm.total_cmp(&other.axis_height_mm),
            Self::Pitch => one.pitch_mm.total_cmp(&other.pitch_mm),
            Self::Pencils => one.pencils.cmp(&other.pencils),
            Self::Margin => one.margin_mm.total_cmp(&other.margin_mm),
            Self::Wood => one.wood_per_gross_mm3.total_cmp(&other.wood_per_gross_mm3),
            Self::Money => one.money_per_gross.total_cmp(&other.money_per_gross),
            Self::Good => known(one.good, -1.0).total_cmp(&known(other.good, -1.0)),
            Self::GoodMoney => {
                let money = |row: &FoundRow| known(row.money_per_good_gross, f64::INFINITY);
                money(one).total_cmp(&money(other))
            }
            // A row without a goal stands behind all that have one.
            Self::Best => {
                let first = |row: &FoundRow| row.best_under.first().copied();
                let none = |row: &FoundRow| first(row).is_none();
                none(one)
                    .cmp(&none(other))
                    .then(first(one).cmp(&first(other)))
            }
        }
    }
}

/// A number, or what stands for one that is not told.
fn known(number: Option<f64>, otherwise: f64) -> f64 {
    number.unwrap_or(otherwise)
}

/// The best layouts, searched anew with every change.
#[component]
pub(crate) fn SearchTable() -> impl IntoView {
    let question = expect_context::<Searches>().layouts;
    let (state, busy) = (question.state(), question.busy());
    let show = |searched: Searched| view! { <Rows searched/> }.into_any();
    let body = move || answered(state.get(), None, show);
    let running = move || {
        busy.get().map(|progress| {
            let words = match progress {
                Some(Progress::Laid { done, of }) => {
                    format!("{done} of {of} pairs of slats compared …")
                }
                _ => "Comparing slats, cutters and turns …".to_owned(),
            };
            view! {
                <span>{words}</span>
                <button type="button" on:click=move |_| question.stop()>"Stop searching"</button>
            }
        })
    };
    view! {
        <section class="result found" aria-labelledby="found-title">
            <h2 id="found-title">"Best layouts found"</h2>
            <SearchForm/>
            <div class="running" role="status">{live(running)}</div>
            {live(body)}
        </section>
    }
}

#[component]
fn Rows(searched: Searched) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let unit = bench.unit;
    let sorted_by = RwSignal::new((Column::Wood, false));
    let left_out = searched
        .left_out
        .iter()
        .map(|stock| format!("{}: {}", stock.slat_name, stock.problems.join("; ")))
        .chain(searched.sets_left_out.iter().cloned())
        .map(|words| view! { <li>{words}</li> })
        .collect_view();
    if let Some(obstacle) = searched.obstacle {
        return view! {
            <p class="empty problem">{obstacle}</p>
            <ul class="left-out">{left_out}</ul>
        }
        .into_any();
    }
    let heads = Column::ALL
        .map(|column| {
            let order = move || match sorted_by.get() {
                (by, false) if by == column => "ascending",
                (by, true) if by == column => "descending",
                _ => "none",
            };
            let sort = move |_| {
                sorted_by.update(|(by, down)| {
                    *down = *by == column && !*down;
                    *by = column;
                });
            };
            let tools = (column == Column::Slats)
                .then(|| view! { <th scope="col"><span class="unseen">"Lay out"</span></th> });
            view! {
                <th scope="col" class:figure=column.is_figure() aria-sort=order>
                    <button type="button" class="link" on:click=sort>{live(move || column.label(unit.get()))}</button>
                </th>
                {tools}
            }
        })
        .collect_view();
    let rows = StoredValue::new(searched.rows);
    let body = move || {
        let (by, down) = sorted_by.get();
        let mut rows = rows.get_value();
        rows.sort_by(|one, other| {
            let order = by.compare(one, other);
            if down { order.reverse() } else { order }
        });
        rows.into_iter()
            .map(|row| view! { <Found row/> })
            .collect_view()
    };
    let compared = figure::count(searched.compared.pieces());
    let is_proved = searched.unconfirmed == 0;
    let proved = if is_proved {
        format!(
            "Proved: all {compared} combinations of slats and cutters were compared, with turns and heights worked out, not sampled. The height of the axis is looked for no farther than the groove radius.{}",
            if searched.without_good.is_none() {
                " Good pencils are what the errors of the chosen line leave on average, worked out without dice."
            } else {
                ""
            }
        )
    } else {
        let unconfirmed = figure::count(u64::from(searched.unconfirmed));
        format!(
            "Not proved: of all {compared} combinations of slats and cutters, {unconfirmed} layouts did not come out when they were laid out once more, and are left out. What is listed holds; a better one may be missing."
        )
    };
    let more = (searched.more > 0).then(|| {
        let more = figure::count(u64::from(searched.more));
        view! { <p class="empty">{more}" more are not shown."</p> }
    });
    view! {
        <p class="proof" class:proved=is_proved class:open=!is_proved>{proved}</p>
        <div class="scroll" tabindex="0" role="group" aria-label="Layouts found">
            <table>
                <thead><tr>{heads}</tr></thead>
                <tbody>{live(body)}</tbody>
            </table>
        </div>
        {more}
        {searched.without_good.map(|why| view! { <p class="empty problem">{why}</p> })}
        <ul class="left-out">{left_out}</ul>
    }
    .into_any()
}

#[component]
fn Found(row: FoundRow) -> impl IntoView {
    let bench = expect_context::<Workbench>();
    let unit = bench.unit;
    let way: Way = row.way.into();
    let lies = match way {
        Way::Usual(_) => way.label().to_owned(),
        Way::Turned => format!("Turned {}", figure::angle(row.turn_degrees)),
    };
    let goals = row.best_under.iter();
    let mut goals: Vec<&str> = goals.map(|&goal| Goal::from(goal).label()).collect();
    if goals.is_empty() {
        goals.push("Between wood and margin");
    }
    let length = move |mm: f64| move || figure::length(mm, unit.get());
    let full = move |mm: f64| move || figure::length_exact(mm, unit.get());
    let laid = {
        let row = row.clone();
        Memo::new(move |_| is_laid(&bench.project().read(), &row))
    };
    let stored = StoredValue::new(row.clone());
    let lay = move |_| stored.with_value(|row| bench.change(|project| lay_found(project, row)));
    view! {
        <tr class:chosen=laid>
            <th scope="row">{slats(&row)}</th>
            <td class="tools">
                {live(move || if laid.get() {
                    view! { <span class="here">"On the drawing"</span> }.into_any()
                } else {
                    view! { <button type="button" on:click=lay>"Lay out"</button> }.into_any()
                })}
            </td>
            <td>{cutters(&row)}</td>
            <td>{lies}</td>
            <td class="figure" title=full(row.axis_height_mm)>{length(row.axis_height_mm)}</td>
            <td class="figure" title=full(row.pitch_mm)>{length(row.pitch_mm)}</td>
            <td class="figure strong">{row.pencils}</td>
            <td class="figure" title=full(row.margin_mm)>{length(row.margin_mm)}</td>
            <td class="figure">{live(move || figure::volume(row.wood_per_gross_mm3, unit.get()))}</td>
            <td class="figure">{figure::money_rounded(row.money_per_gross)}</td>
            <td class="figure">{told(row.good.map(|good| figure::plain(good, 3)))}</td>
            <td class="figure">{told(row.money_per_good_gross.map(figure::money_rounded))}</td>
            <td>{goals.join(", ")}</td>
        </tr>
    }
}

/// A figure, or a dash where there is none.
fn told(figure: Option<String>) -> String {
    figure.unwrap_or_else(|| "–".to_owned())
}

/// The slats of a row in words.
fn slats(row: &FoundRow) -> String {
    if row.top == row.bottom {
        row.top_name.clone()
    } else {
        format!("{} over {}", row.top_name, row.bottom_name)
    }
}

/// The cutters of a row in words.
fn cutters(row: &FoundRow) -> String {
    row.set_name.clone().unwrap_or_else(|| "New set".to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project_file::WayWord;
    use crate::protocol::GoalWord;

    fn row(pencils: u32, best_under: Vec<GoalWord>) -> FoundRow {
        FoundRow {
            top: 1,
            top_name: "Wide".to_owned(),
            bottom: 2,
            bottom_name: "Thin".to_owned(),
            set: None,
            set_name: None,
            way: WayWord::AnyWay,
            turn_degrees: 0.0,
            axis_height_mm: 0.0,
            pitch_mm: 7.5,
            across: pencils,
            pencils,
            margin_mm: 0.1,
            wood_per_gross_mm3: 1e6,
            money_per_gross: 500.0,
            good: Some(f64::from(pencils) - 0.01),
            money_per_good_gross: None,
            best_under,
            on_frontier: true,
        }
    }

    #[test]
    fn rows_without_a_goal_stand_behind_those_with_one() {
        let (none, wood) = (row(9, Vec::new()), row(8, vec![GoalWord::Wood]));
        let pencils = row(10, vec![GoalWord::Pencils, GoalWord::Wood]);
        assert_eq!(Column::Best.compare(&wood, &none), Ordering::Less);
        assert_eq!(Column::Best.compare(&pencils, &wood), Ordering::Less);
        assert_eq!(Column::Pencils.compare(&pencils, &wood), Ordering::Greater);
        assert_eq!(Column::Good.compare(&pencils, &wood), Ordering::Greater);
    }

    #[test]
    fn rows_without_money_for_good_pencils_stand_behind_those_with_it() {
        let (none, mut some) = (row(9, Vec::new()), row(8, Vec::new()));
        some.money_per_good_gross = Some(700.0);
        assert_eq!(Column::GoodMoney.compare(&some, &none), Ordering::Less);
        assert_eq!(told(None), "–");
    }

    #[test]
    fn two_stocks_and_new_cutters_are_told_in_words() {
        let row = row(9, Vec::new());
        assert_eq!(
            (slats(&row).as_str(), cutters(&row).as_str()),
            ("Wide over Thin", "New set")
        );
    }
}
