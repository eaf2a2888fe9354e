//! From a project that may be wrong to an order plan that can be searched for.

use super::candidate::{LaidSetup, Shop};
use crate::cutter_set::CutterSet;
use crate::field::{Field, Problem, Typed};
use crate::order_plan::{
    Laid, LineSetup, OrderPlanData, OrderPlanFault, OrderPlanLimits, OrderPlanProgress,
    PencilDemand, plan_orders,
};
use crate::project::{Entry, Project, ProjectDraft, Way, told_once};
use crate::saw_shop::SawShopDraft;
use crate::seam::Seam;
use crate::search_rules::SearchDraft;
use crate::supply::Supplies;
use crate::title_block::TitleBlock;
use crate::tooling::{CutDraft, HeadDraft};

use super::reading::OrderAnswer;

/// An order plan that can be searched for, and what everything in it is called.
#[derive(Debug, Clone, PartialEq)]
pub struct OrderJob {
    pub(super) data: OrderPlanData,
    /// The layouts, in the order of the set-ups of the data.
    pub(super) setups: Vec<LaidSetup>,
    /// The pencils of the data: barrels by their places in the project.
    pub(super) barrels: Vec<usize>,
    /// What the pencils of the data are called.
    pub(super) pencils: Vec<String>,
    /// What the slat stocks are called.
    pub(super) stocks: Vec<String>,
    /// What the cutter sets are called.
    pub(super) sets: Vec<String>,
    /// Who makes each offer.
    pub(super) suppliers: Vec<String>,
    /// What the periods are called.
    pub(super) periods: Vec<String>,
}

impl ProjectDraft {
    /// The order plan of the project, or everything that stands in its way.
    ///
    /// Every barrel that is ordered is laid on each pair of slats that a search may try, each usual way
    /// round, with each cutter set that is owned and serves it, or as close as the land allows where
    /// none does. The errors of the line of the layout and the yields of the run tell how many pencils
    /// come out good; the shares thrown out that the rules tell are not counted beside them. Orders of
    /// one barrel are one demand.
    ///
    /// # Errors
    /// Every problem of the project but for those of the saw shop, the heads, the cut, and the turn of
    /// the layout, on which no order plan rests; every limit of an order plan that is broken.
    ///
    /// ```
    /// # use solver::*;
    /// # use solver::order_plan::OrderPlanLimits;
    /// # fn draft() -> ProjectDraft {
    /// #     let entry = |id| Id(id);
    /// #     ProjectDraft {
    /// #         name: String::new(),
    /// #         barrels: vec![Entry { id: entry(1), draft: BarrelDraft::new("Office", Shape::Hexagonal) }],
    /// #         slats: vec![Entry { id: entry(2), draft: SlatDraft::new("74 × 5") }],
    /// #         species: Vec::new(), conditions: ConditionsDraft::new(), cutter_sets: Vec::new(),
    /// #         rules: RulesDraft::new(), accuracies: Vec::new(),
    /// #         layout: LayoutDraft { barrel: entry(1), top: entry(2), bottom: entry(2),
    /// #             way: Way::Usual(Seam::ThroughFaces), turn: Typed::Number(0.0), accuracy: entry(3) },
    /// #         search: SearchDraft::new(), orders: vec![OrderDraft::new(entry(1))],
    /// #         saw_shop: SawShopDraft::new(), heads: [const { HeadDraft::new() }; 3],
    /// #         cut: CutDraft::new(), run: RunDraft::new(), supply: SupplyDraft::new(),
    /// #         title_block: solver::TitleBlock::new(), set_aside: None,
    /// #     }
    /// # }
    /// let mut project = draft(); // 100 gross of one pencil, slats in packs of 600 for 100.00
    /// project.run.yields = [const { Typed::Number(100.0) }; 5];
    /// project.offer_each_stock();
    /// let job = project.check_order_plan().unwrap();
    /// let answer = job.answer(&OrderPlanLimits::default(), &mut |_| true).unwrap();
    /// // 14 400 pencils, ten a sandwich: 2 880 slats, five packs.
    /// assert_eq!(answer.reckoning.unwrap().total, 50_000.0);
    /// ```
    pub fn check_order_plan(&self) -> Result<OrderJob, Vec<Problem>> {
        let rest = self.for_orders();
        let project = rest.check()?;
        let supplies = rest.check_supply()?;
        self.job(&project, &supplies)
    }

    /// The project with first values in what no order plan rests on: two projects that are alike in this
    /// have the same order plan.
    #[must_use]
    pub fn for_orders(&self) -> Self {
        let mut rest = self.clone();
        rest.name.clear();
        rest.set_aside = None;
        rest.title_block = TitleBlock::new();
        rest.saw_shop = SawShopDraft::new();
        rest.heads = [const { HeadDraft::new() }; 3];
        rest.cut = CutDraft::new();
        rest.layout.way = Way::Usual(Seam::AnyWay);
        rest.layout.turn = Typed::initial(Field::Turn);
        rest.search = SearchDraft {
            pairs: self.search.pairs,
            ..SearchDraft::new()
        };
        rest
    }

    fn job(&self, project: &Project, supplies: &Supplies) -> Result<OrderJob, Vec<Problem>> {
        let mut barrels: Vec<usize> = Vec::new();
        let mut pencils: Vec<PencilDemand> = Vec::new();
        for (order, &due) in project.orders.iter().zip(&supplies.due) {
            let pencil = barrels.iter().position(|&barrel| barrel == order.barrel);
            let pencil = pencil.unwrap_or_else(|| {
                barrels.push(order.barrel);
                pencils.push(PencilDemand {
                    holding: supplies.pencil_holding,
                    ..PencilDemand::due(&vec![0; supplies.periods()])
                });
                pencils.len() - 1
            });
            pencils[pencil].due[due] += u64::from(order.pencils);
            pencils[pencil].on_hand += u64::from(order.on_hand);
        }
        let setups = self.setups(project, &barrels, supplies);
        let stocks: Vec<(u64, u32)> = (project.slats.iter())
            .map(|slat| {
                let volume = slat.volume().in_cubic_millimetres().round();
                // The ranges of the sizes lie within u32.
                (u64::from(slat.supply().on_hand), volume as u32)
            })
            .collect();
        let mut draft = supplies.draft(&stocks);
        draft.pencils = pencils;
        draft.setups = setups
            .iter()
            .map(|laid| LineSetup {
                laid: vec![Laid {
                    pencil: barrels
                        .iter()
                        .position(|&barrel| barrel == laid.barrel)
                        .unwrap_or(0),
                    leads: laid.pencils,
                    good: laid.good,
                }],
                bottom: laid.bottom,
                top: laid.top,
                milliseconds: supplies.milliseconds,
                changeover_cost: vec![supplies.changeover_cost; supplies.periods()],
                changeover_seconds: supplies.changeover_seconds,
                // A thousand sandwiches of so many grams are as many kilograms.
                credit: supplies.chip_price * i64::from(laid.chips) / 1_000,
            })
            .collect();
        let data = draft.check().map_err(|found| {
            let placed = found
                .into_iter()
                .map(|problem| self.place_of_supply(problem));
            told_once(placed.collect())
        })?;
        let called = |names: Vec<&str>, kind: &str| -> Vec<String> {
            let names = names.into_iter().enumerate();
            names.map(|(at, name)| called(name, kind, at)).collect()
        };
        let pencils = barrels.iter().map(|&at| called_barrel(&self.barrels, at));
        let pencils = pencils.collect();
        let supply = &self.supply;
        Ok(OrderJob {
            data,
            setups,
            barrels,
            pencils,
            stocks: called(names(&self.slats, |slat| &slat.name), "Slat stock"),
            sets: called(names(&self.cutter_sets, |set| &set.name), "Cutter set"),
            suppliers: called(names(&supply.offers, |offer| &offer.supplier), "Offer"),
            periods: called(
                supply
                    .periods
                    .iter()
                    .map(|period| period.name.as_str())
                    .collect(),
                "Period",
            ),
        })
    }

    /// The layouts of the barrels at these places.
    fn setups(&self, project: &Project, barrels: &[usize], supplies: &Supplies) -> Vec<LaidSetup> {
        let accuracy = self.check_accuracy().ok();
        let shop = Shop {
            slats: &project.slats,
            pairs: self.search.pairs,
            rules: &project.rules,
            accuracy: accuracy.as_ref(),
            density: supplies.density,
            sells_chips: supplies.chip_price > 0,
        };
        let owned: Vec<(usize, CutterSet)> = (self.cutter_sets.iter().enumerate())
            .filter_map(|(at, set)| Some((at, set.draft.check().ok()?)))
            .filter(|(_, set)| set.price() == 0)
            .collect();
        let laid = barrels.iter().flat_map(|&at| {
            let id = self.barrels[at].id;
            let serving: Vec<(usize, CutterSet)> = (owned.iter())
                .filter(|(_, set)| set.serves(id))
                .cloned()
                .collect();
            shop.layouts((at, &project.barrels[at]), &serving)
        });
        laid.collect()
    }
}

impl OrderJob {
    /// What is planned.
    #[must_use]
    pub const fn data(&self) -> &OrderPlanData {
        &self.data
    }

    /// The layouts that the line can be set up for, in the order of the set-ups of [`Self::data`].
    #[must_use]
    pub fn setups(&self) -> &[LaidSetup] {
        &self.setups
    }

    /// What a slat stock is called.
    pub(super) fn stock(&self, place: usize) -> &str {
        self.stocks.get(place).map_or("", String::as_str)
    }

    /// Searches for the plan, and reads it.
    ///
    /// # Errors
    /// As [`plan_orders`]: a fault of the search, never of the project.
    pub fn answer(
        &self,
        limits: &OrderPlanLimits,
        progress: &mut dyn FnMut(&OrderPlanProgress<'_>) -> bool,
    ) -> Result<OrderAnswer, OrderPlanFault> {
        let outcome = plan_orders(&self.data, limits, progress)?;
        Ok(self.read(&outcome))
    }
}

fn names<T>(entries: &[Entry<T>], name: impl Fn(&T) -> &String) -> Vec<&str> {
    entries
        .iter()
        .map(|entry| name(&entry.draft).as_str())
        .collect()
}

fn called_barrel(barrels: &[Entry<crate::barrel::BarrelDraft>], at: usize) -> String {
    called(&barrels[at].draft.name, "Barrel", at)
}

/// The name, or the kind with its number in the list where it has none.
fn called(name: &str, kind: &str, at: usize) -> String {
    match name.trim() {
        "" => format!("{kind} {}", at + 1),
        name => name.to_owned(),
    }
}
