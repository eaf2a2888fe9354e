//! Order plans of invented projects: set-ups, what plans come to, what is asked beside them, charts.

use solver::order_plan::{OrderPlanLimits, PlanAim};
use solver::{
    BarrelDraft, ConditionsDraft, CutDraft, Entry, HeadDraft, Id, LayoutDraft, Length, LengthUnit,
    OrderDraft, OrderReckoning, PeriodDraft, ProjectDraft, RulesDraft, RunDraft, SawShopDraft,
    Seam, SearchDraft, Shape, Sheet, SlatDraft, StoreAccount, StoreRow, SupplyDraft, TitleBlock,
    Typed, Way, compare_plans, draw_costs, draw_stores,
};

use super::Trace;
use crate::dice::Dice;

/// Few enough to be quick in a browser.
const LIMITS: OrderPlanLimits = OrderPlanLimits { steps: 60, gap: 0 };
const SHEET: Sheet = Sheet {
    width: 600.0,
    row: 28.0,
    text: 64.0,
    unit: LengthUnit::Millimetre,
};

impl Trace {
    pub(super) fn order_jobs(&mut self) {
        let mut before = None;
        for case in 0..6 {
            let draft = any_project(&mut Dice::new(11_000_000 + case));
            let Ok(job) = draft.check_order_plan() else {
                self.line("job", "cannot be planned");
                continue;
            };
            self.line("job", &format!("{:?}", job.setups()));
            let Ok(answer) = job.answer(&LIMITS, &mut |_| true) else {
                self.line("job", "did not stand its recount");
                continue;
            };
            self.line("job", &format!("{answer:?}"));
            let (Some(plan), Some(reckoning)) = (&answer.plan, &answer.reckoning) else {
                continue;
            };
            for stock in job.unbought(&plan.packs) {
                let price = job.paying_price(stock, plan.cost.total(), &LIMITS);
                self.line("price", &price.sentence());
            }
            let now = [plan.value(answer.aim), answer.bound.unwrap_or_default()];
            for stock in job.run_stocks(&plan.runs) {
                let wider = draft.with_wider_slats(stock, Length::millimetres(1.0), now, &LIMITS);
                self.line("wider", &format!("{wider:?}"));
            }
            let totals = reckoning.totals();
            if let Some(before) = &before {
                self.line("plans", &format!("{:?}", compare_plans(before, &totals)));
            }
            before = Some(totals);
            self.line("costs", &format!("{:?}", draw_costs(&totals, &SHEET)));
            self.line("stores", &stores(reckoning));
        }
    }
}

fn stores(reckoning: &OrderReckoning) -> String {
    let row = |account: &StoreAccount| StoreRow {
        name: account.name.clone(),
        stands: account.stands(),
    };
    let rows: Vec<StoreRow> = reckoning.slats.iter().map(row).collect();
    let periods: Vec<String> = (reckoning.periods.iter())
        .map(|period| period.name.clone())
        .collect();
    format!("{:?}", draw_stores(&rows, &periods, &SHEET))
}

/// Three slat stocks, two pencils, one to three periods.
fn any_project(dice: &mut Dice) -> ProjectDraft {
    fn entry<T>((id, draft): (u32, T)) -> Entry<T> {
        Entry { id: Id(id), draft }
    }
    let barrels = [("Office", Shape::Hexagonal), ("Chalk", Shape::Round)];
    let barrels = (1..).zip(barrels.map(|(name, shape)| BarrelDraft::new(name, shape)));
    let mut slat = |id: u32| {
        let mut draft = SlatDraft::new(&format!("Stock {id}"));
        draft.width = Typed::Number((dice.between(66.0, 80.0) * 10.0).round() / 10.0);
        draft.pack_price = Typed::Number(dice.between(80.0, 130.0).round());
        draft.on_hand = Typed::Number((dice.bits() % 500) as f64);
        (id, draft)
    };
    let slats: Vec<_> = [11, 12, 13].map(&mut slat).into_iter().map(entry).collect();
    let periods = 1 + dice.bits() % 3;
    let mut order = |barrel| OrderDraft {
        gross: Typed::Number((20 + dice.bits() % 60) as f64),
        due: Typed::Number((1 + dice.bits() % periods) as f64),
        on_hand: Typed::Number((dice.bits() % 900) as f64),
        ..OrderDraft::new(Id(barrel))
    };
    let mut project = ProjectDraft {
        name: String::new(),
        orders: [1, 2, 1].map(&mut order).to_vec(),
        barrels: barrels.map(entry).collect(),
        slats,
        species: Vec::new(),
        conditions: ConditionsDraft::new(),
        cutter_sets: Vec::new(),
        rules: RulesDraft::new(),
        accuracies: Vec::new(),
        layout: LayoutDraft {
            barrel: Id(1),
            top: Id(11),
            bottom: Id(11),
            way: Way::Usual(Seam::ThroughFaces),
            turn: Typed::Number(0.0),
            accuracy: Id(99),
        },
        search: SearchDraft::new(),
        saw_shop: SawShopDraft::new(),
        heads: [const { HeadDraft::new() }; 3],
        cut: CutDraft::new(),
        run: RunDraft::new(),
        supply: SupplyDraft {
            periods: (0..periods).map(|_| PeriodDraft::new("")).collect(),
            hour_price: Typed::Number(40.0),
            changeover_cost: Typed::Number(15.0),
            lead_price: Typed::Number(12.0),
            chip_price: Typed::Number(30.0),
            slat_holding: Typed::Number(1.0),
            aim: dice.one_of(&PlanAim::ALL),
            ..SupplyDraft::new()
        },
        title_block: TitleBlock::default(),
        set_aside: None,
    };
    project.offer_each_stock();
    project
}
