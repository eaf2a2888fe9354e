//! Whatever stands in the fields, it is refused in words or worked with; nothing stops the program.

mod designer;
mod measured;
mod path;
mod pencil;
mod project;
mod sawing;
mod setting;

use path::any_path;
use project::any_project;
use proptest::prelude::*;
use solver::order_plan::OrderPlanLimits;
use solver::purchase::{PencilOrder, PurchaseDraft, PurchaseLimits, SlatStock, plan};
use solver::{
    Accuracy, Aim, Angle, Answer, AxisChoice, Barrel, CutterSet, Drawing, Found, Goal, Length,
    LengthUnit, MOST_PIECES, Obstacle, Outline, Pairs, PathProblem, Place, Project, ProjectDraft,
    Question, Rules, RulesDraft, SearchRules, Setup, Shape, Sheet, Slat, Spacing, Turns, Typed,
    compare_plans, draw_barrel, draw_costs, draw_sandwich, draw_stairs, lay_out, rank, search,
    staircase, thresholds,
};
use tests::shop;

const UNITS: [LengthUnit; 2] = [LengthUnit::Millimetre, LengthUnit::Inch];

fn readable(text: &str) -> bool {
    !text.is_empty() && !text.contains("NaN") && !text.contains("inf")
}

fn drawn(drawing: &Drawing) -> Result<(), TestCaseError> {
    prop_assert!(drawing.width.is_finite() && drawing.height.is_finite());
    prop_assert!(readable(&drawing.description));
    let shown = format!("{:?} {:?}", drawing.shapes, drawing.dimensions);
    prop_assert!(readable(&shown), "{}", shown);
    Ok(())
}

/// The purchase of a project's order book, each barrel the best way round on each stock.
fn book(project: &Project) -> PurchaseDraft {
    let pencils = |barrel: usize, slat: usize| {
        let ways: Vec<Angle> = project.barrels[barrel].usual_turns();
        let (barrel, slats) = (&project.barrels[barrel], &project.slats[slat..=slat]);
        let ranked = rank(
            barrel,
            slats,
            &ways,
            &project.rules,
            Aim::Pencils,
            &mut |_| (),
        );
        ranked[0].layout.pencils()
    };
    let stock = |slat: &solver::Slat| {
        let supply = slat.supply();
        SlatStock {
            pack_slats: supply.pack_slats,
            pack_price: supply.pack_price,
            on_hand: u64::from(supply.on_hand),
            pack_limit: supply.pack_limit,
        }
    };
    let stocks = 0..project.slats.len();
    let row = |barrel| stocks.clone().map(|slat| pencils(barrel, slat)).collect();
    PurchaseDraft {
        orders: project
            .orders
            .iter()
            .map(|order| PencilOrder {
                pencils: u64::from(order.pencils),
            })
            .collect(),
        stocks: project.slats.iter().map(stock).collect(),
        yields: project
            .orders
            .iter()
            .map(|order| row(order.barrel))
            .collect(),
    }
}

/// What a search is asked of a project: its first sound barrel on all sound stocks.
struct Asked {
    barrel: Barrel,
    slats: Vec<Slat>,
    sets: Vec<CutterSet>,
    rules: Rules,
    search: SearchRules,
    accuracy: Option<Accuracy>,
}

impl Asked {
    fn of(draft: &ProjectDraft) -> Option<Self> {
        let barrels = draft.barrels.iter();
        let slats = 0..draft.slats.len();
        let sets = draft.cutter_sets.iter();
        // The search finds the spacing, so what stands there has no say.
        let rules = RulesDraft {
            spacing: Spacing::Closest,
            ..draft.rules.clone()
        };
        Some(Self {
            barrel: barrels
                .filter_map(|entry| entry.draft.check().ok())
                .next()?,
            slats: slats.filter_map(|at| draft.check_slat(at).ok()).collect(),
            sets: sets.filter_map(|entry| entry.draft.check().ok()).collect(),
            rules: rules.check().ok()?,
            search: draft.search.check().ok()?,
            accuracy: draft.check_accuracy().ok(),
        })
    }

    fn question(&self) -> Question<'_> {
        Question {
            barrel: &self.barrel,
            slats: &self.slats,
            sets: &self.sets,
            rules: &self.rules,
            search: &self.search,
            accuracy: self.accuracy.as_ref(),
        }
    }
}

/// An answer holds layouts that fit, in numbers, or tells in words why there is none.
fn answered(question: &Question<'_>, answer: &Answer) -> Result<(), TestCaseError> {
    let found: Vec<&Found> = answer
        .best
        .iter()
        .flatten()
        .chain(&answer.frontier)
        .collect();
    for found in &found {
        let layout = lay_out(&Setup {
            barrel: question.barrel,
            turn: found.turn,
            top: &question.slats[found.top],
            bottom: &question.slats[found.bottom],
            rules: &found.rules(question.rules),
        });
        prop_assert!(layout.fits(), "{:?} {:?}", found, layout.checks());
        prop_assert_eq!(layout.pencils(), found.pencils);
        prop_assert!(readable(&format!("{found:?}")), "{:?}", found);
    }
    let reason = answer.obstacle.as_ref();
    prop_assert_eq!(found.is_empty(), reason.is_some());
    for goal in Goal::ALL {
        let is_empty = answer.best[goal as usize].is_empty();
        // Errors may be unknown, or leave no pencil good.
        prop_assert!(is_empty == found.is_empty() || goal == Goal::Good && is_empty);
    }
    for found in &found {
        let all = f64::from(found.pencils);
        prop_assert_eq!(found.good.is_some(), question.accuracy.is_some());
        prop_assert!(
            found.good.is_none_or(|good| (0.0..=all).contains(&good)),
            "{:?}",
            found
        );
        prop_assert!(
            found.good_money.is_none_or(|money| money >= 0.0),
            "{:?}",
            found
        );
    }
    if let Some(Obstacle::Nearest { checks, .. }) = reason {
        for check in checks {
            prop_assert!(readable(&check.statement(LengthUnit::Millimetre)));
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1500, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_layout_is_drawn_or_refused_in_words(
        draft in any_project(), width in 280.0_f64..1600.0, text in 56.0_f64..96.0,
    ) {
        match draft.check_layout() {
            Ok(parts) => {
                let setup = parts.setup();
                let layout = lay_out(&setup);
                for unit in UNITS {
                    for check in layout.checks() {
                        prop_assert!(readable(&check.statement(unit)));
                    }
                    let sheet = Sheet { width, row: 44.0, text, unit };
                    drawn(&draw_sandwich(&setup, &layout, &sheet))?;
                    drawn(&draw_barrel(&parts.barrel, &sheet))?;
                }
                if let Some(balance) = layout.balance() {
                    prop_assert!((0.0..=1.0).contains(&balance.yielded()));
                }
            }
            Err(problems) => {
                let missing = draft.barrel_place(draft.layout.barrel).is_none()
                    || draft.slat_place(draft.layout.top).is_none()
                    || draft.slat_place(draft.layout.bottom).is_none();
                prop_assert!(missing || !problems.is_empty());
                for problem in problems {
                    prop_assert!(!matches!(problem.place, Place::Order(_) | Place::Search | Place::SawShop | Place::Head(_) | Place::Cut | Place::Run | Place::Stage(_)));
                    for unit in UNITS {
                        // What was typed may be quoted, so any text may stand here.
                        prop_assert!(!problem.problem.message(unit).is_empty());
                    }
                }
            }
        }
    }

    #[test]
    fn any_project_is_planned_or_refused_in_words(draft in any_project()) {
        match draft.check() {
            Ok(project) => {
                // A price of two decimals and a count within their ranges are always accepted.
                let data = book(&project).check().expect("a checked project keeps every range");
                let limits = PurchaseLimits { time: None, nodes: 20 };
                let outcome = plan(&data, &limits, &mut |_| {});
                prop_assert!(outcome.is_ok(), "{:?}", outcome);
            }
            Err(problems) => {
                prop_assert!(!problems.is_empty());
                for problem in problems {
                    prop_assert!(!problem.problem.message(LengthUnit::Millimetre).is_empty());
                }
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_orders_are_planned_or_refused_in_words(draft in any_project()) {
        let mut draft = draft;
        draft.offer_each_stock();
        match draft.check_order_plan() {
            Ok(job) => {
                let limits = OrderPlanLimits { steps: 5, gap: 0 };
                let answer = job.answer(&limits, &mut |_| true);
                prop_assert!(answer.is_ok(), "{:?}", answer);
                if let Some((plan, reckoning)) = answer.ok().and_then(|answer| answer.plan.zip(answer.reckoning)) {
                    for stock in job.unbought(&plan.packs).into_iter().take(1) {
                        let price = job.paying_price(stock, plan.cost.total(), &limits).sentence();
                        prop_assert!(readable(&price), "{}", price);
                    }
                    for stock in job.run_stocks(&plan.runs).into_iter().take(1) {
                        let by = Length::millimetres(1.0);
                        let wider = draft.with_wider_slats(stock, by, [0, 0], &limits);
                        prop_assert!(wider.is_none_or(|wider| readable(&wider.sentence(LengthUnit::Inch))));
                    }
                    let totals = reckoning.totals();
                    for line in compare_plans(&totals, &totals) {
                        prop_assert!(!line.differs(LengthUnit::Millimetre));
                    }
                    let sheet = Sheet { width: 300.0, row: 28.0, text: 64.0, unit: LengthUnit::Millimetre };
                    prop_assert!(readable(&draw_costs(&totals, &sheet).description));
                }
            }
            Err(problems) => {
                prop_assert!(!problems.is_empty());
                for problem in problems {
                    prop_assert!(!problem.problem.message(LengthUnit::Millimetre).is_empty());
                }
            }
        }
    }

    #[test]
    fn any_search_finds_what_fits_or_says_why_nothing_does(draft in any_project()) {
        let Some(asked) = Asked::of(&draft) else {
            prop_assert!(draft.check().is_err());
            return Ok(());
        };
        let question = asked.question();
        answered(&question, &search(&question, &mut |_, _| ()))?;
    }

    #[test]
    fn any_stairs_rise_and_are_drawn(
        draft in any_project(), from in -50.0_f64..300.0, run in -50.0_f64..300.0,
    ) {
        let Ok(parts) = draft.check_layout() else {
            return Ok(());
        };
        let range = (Length::millimetres(from), Length::millimetres(from + run));
        let steps = staircase(&parts, range.0, range.1);
        for pair in steps.windows(2) {
            prop_assert!(pair[0].from < pair[1].from && pair[0].pencils != pair[1].pencils);
        }
        let today = [(parts.top.width(), parts.top.name().to_owned())];
        for unit in UNITS {
            let sheet = Sheet { width: 600.0, row: 28.0, text: 64.0, unit };
            let chart = draw_stairs(&steps, range, &today, &sheet);
            prop_assert!(readable(&chart.description));
            prop_assert!(readable(&format!("{} {}", chart.stairs, chart.axes)) , "{:?}", chart);
        }
    }

    #[test]
    fn any_path_is_an_outline_or_refused(path in any_path(), across in -3.0_f64..3.0) {
        let size = Length::millimetres(8.0);
        match Outline::from_path(&path, size, Length::millimetres(across), Length::ZERO) {
            Ok(outline) => {
                let extents = outline.extents();
                prop_assert!((extents.width() - size).abs() < Length::millimetres(1e-4));
                prop_assert!(outline.area().in_square_millimetres() > 0.0);
                prop_assert!(outline.segments().len() <= MOST_PIECES);
            }
            Err(PathProblem::Unreadable { at }) => prop_assert!(at <= path.chars().count() + 1),
            Err(PathProblem::Open { gap }) => prop_assert!(gap.in_millimetres() > 0.0),
            Err(_) => {}
        }
    }
}

proptest! {
    // Each lays out some hundreds of times.
    #![proptest_config(ProptestConfig { cases: 40, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_thresholds_are_numbers_beyond_todays(draft in any_project()) {
        match thresholds(&draft, 5000.0) {
            Ok(table) => {
                prop_assert!(draft.check_layout().is_ok());
                for row in table {
                    prop_assert!(row.down.iter().all(|change| change.at < row.today));
                    prop_assert!(row.up.iter().all(|change| change.at > row.today));
                    prop_assert!(readable(&format!("{row:?}")), "{:?}", row);
                }
            }
            Err(_) => prop_assert!(draft.check_layout().is_err()),
        }
    }
}

#[test]
fn a_thousand_stocks_are_searched_at_once() {
    let widths = (0..1000_u32).map(|k| 40.0 + f64::from(k % 100) * 0.7);
    let slats: Vec<Slat> = widths
        .zip((0..1000_u32).map(|k| 3.0 + f64::from(k / 100) * 0.5))
        .map(|(width, thickness)| shop::slat(width, thickness))
        .collect();
    let search_rules = SearchRules {
        turns: Turns::Any,
        axis: AxisChoice::Any,
        pairs: Pairs::Same,
        new_set_price: Some(48_000),
        year_gross: 5000.0,
    };
    let rules = shop::rules(|_| ());
    for shape in [Shape::Hexagonal, Shape::Free] {
        let barrel = shop::changed_barrel(shape, 8.0, 0.5, |draft| {
            draft.path = "M0 3 A4 4 0 0 1 8 3 A9 9 0 0 0 7 6 L1 6 A9 9 0 0 0 0 3 Z".to_owned();
            draft.lead_diameter = Typed::Number(2.0);
        });
        let question = Question {
            barrel: &barrel,
            slats: &slats,
            sets: &[],
            rules: &rules,
            search: &search_rules,
            accuracy: None,
        };
        let mut told = 0;
        let answer = search(&question, &mut |_, _| told += 1);
        assert_eq!((told, answer.compared), (1000, 1000));
        assert!(
            answer.obstacle.is_none(),
            "{shape:?}: {:?}",
            answer.obstacle
        );
        answered(&question, &answer).expect("every layout found can be laid");
    }
}
