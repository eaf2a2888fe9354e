//! The order book of a project: what to plan, and the plan as a timber buyer reads it.

mod list;
#[cfg(test)]
mod tests;

pub use list::{Purchase, PurchaseList, RunLine, StockLine, Totals};

use crate::barrel::Barrel;
use crate::layout::{Setup, lay_out};
use crate::project::{Order, Project};
use crate::purchase::{
    Obstacle, PencilOrder, PlanFault, Progress, PurchaseData, PurchaseDraft, PurchaseLimits,
    PurchaseOutcome, PurchasePlan, PurchaseProblem, SlatStock, plan,
};
use crate::ranking::GROSS;
use crate::rules::Rules;
use crate::seam::Seam;
use crate::slat::Slat;

/// An order book that can be planned: what one sandwich of each stock gives of each order.
#[derive(Debug, Clone)]
pub struct OrderBook<'a> {
    project: &'a Project,
    /// `best[order][stock]`
    best: Vec<Vec<Option<BestSeam>>>,
    data: PurchaseData,
}

/// The usual way round that gives most pencils of a barrel from a sandwich of a stock.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct BestSeam {
    /// The way round; of equals, the one listed first for the shape.
    pub seam: Seam,
    /// Pencils from one sandwich, at least 1.
    pub pencils: u32,
}

impl<'a> OrderBook<'a> {
    /// Lays every barrel that is ordered on every stock, each usual way round.
    ///
    /// Both slats of a sandwich are of one stock. Pencils lie as close as the land allows, as many
    /// as fit: the spacing of the rules is that of the layout that is looked at, of one barrel.
    /// Orders of the same barrel stay apart. So many
    /// pencils are planned that those ordered are left when slats and pencils are thrown out.
    ///
    /// # Errors
    /// Every limit of a purchase that the book breaks: too many orders, stocks or pencils.
    ///
    /// ```
    /// use solver::{BarrelDraft, Order, OrderBook, Project, Purchase, RulesDraft, Shape, SlatDraft};
    /// use solver::purchase::PurchaseLimits;
    /// let project = Project {
    ///     barrels: vec![BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap()],
    ///     slats: vec![SlatDraft::new("74 × 5").check().unwrap()], // a pack of 600 for 100.00
    ///     rules: RulesDraft::new().check().unwrap(),
    ///     orders: vec![Order { barrel: 0, pencils: 10 * 144, on_hand: 0 }],
    /// };
    /// let book = OrderBook::new(&project).unwrap();
    /// let purchase = book.purchase(&PurchaseLimits::default(), &mut |_| {}).unwrap();
    /// let Purchase::Cheapest { list, .. } = purchase else { panic!("one pack is proved") };
    /// // Ten pencils a sandwich: 144 sandwiches, 288 slats, one pack.
    /// assert_eq!((list.runs[0].sandwiches, list.stocks[0].packs), (144, 1));
    /// assert_eq!(list.totals.cost_per_gross, Some(1000.0));
    /// ```
    pub fn new(project: &'a Project) -> Result<Self, Vec<PurchaseProblem>> {
        let rules = project.rules.for_any_pencil();
        let mut draft = PurchaseDraft {
            orders: (project.orders.iter())
                .map(|order| pencil_order(order, &project.rules))
                .collect(),
            stocks: project.slats.iter().map(slat_stock).collect(),
            yields: vec![vec![0; project.slats.len()]; project.orders.len()],
        };
        // The limits first: they keep the number of layouts small.
        draft.clone().check()?;
        let mut laid: Vec<Option<Vec<Option<BestSeam>>>> = vec![None; project.barrels.len()];
        let best: Vec<Vec<Option<BestSeam>>> = project
            .orders
            .iter()
            .map(|order| {
                let row = laid[order.barrel].get_or_insert_with(|| {
                    let barrel = &project.barrels[order.barrel];
                    let best = |slat| BestSeam::find(barrel, slat, &rules);
                    project.slats.iter().map(best).collect()
                });
                row.clone()
            })
            .collect();
        let pencils = |best: &Option<BestSeam>| best.map_or(0, |best| best.pencils);
        draft.yields = best
            .iter()
            .map(|row| row.iter().map(pencils).collect())
            .collect();
        let data = draft.check()?;
        Ok(Self {
            project,
            best,
            data,
        })
    }

    /// What is planned.
    #[must_use]
    pub const fn data(&self) -> &PurchaseData {
        &self.data
    }

    /// The best way round for an order on a stock, or `None` when none fits.
    ///
    /// # Panics
    /// When there is no such order or stock.
    #[must_use]
    pub fn best_seam(&self, order: usize, stock: usize) -> Option<BestSeam> {
        self.best[order][stock]
    }

    /// Finds the packs that fill the book at least cost.
    ///
    /// # Errors
    /// As [`plan()`]: a fault of the search, never of the book.
    pub fn purchase(
        &self,
        limits: &PurchaseLimits,
        progress: &mut dyn FnMut(Progress),
    ) -> Result<Purchase, PlanFault> {
        plan(&self.data, limits, progress).map(|outcome| self.read(&outcome))
    }

    /// An outcome of [`data`](Self::data) as a buyer reads it.
    ///
    /// # Panics
    /// When the outcome is that of other data.
    #[must_use]
    pub fn read(&self, outcome: &PurchaseOutcome) -> Purchase {
        match outcome {
            PurchaseOutcome::Proved { plan, fewest_slats } => Purchase::Cheapest {
                list: self.list(plan),
                fewest_slats: *fewest_slats,
            },
            PurchaseOutcome::WithinGap { plan, bound } => Purchase::WithinGap {
                list: self.list(plan),
                bound: *bound,
                // A gap is open only above a bound of at least 0, so the cost is above 0.
                gap: (plan.cost - bound) as f64 / plan.cost as f64,
            },
            PurchaseOutcome::NoneFound { bound } => Purchase::NoneFound { bound: *bound },
            PurchaseOutcome::Impossible { obstacles } => Purchase::Impossible {
                obstacles: obstacles.iter().map(|each| self.sentence(each)).collect(),
            },
        }
    }

    fn list(&self, plan: &PurchasePlan) -> PurchaseList {
        let stocks: Vec<StockLine> = (0..self.project.slats.len())
            .map(|stock| self.stock_line(plan, stock))
            .filter(|line| line.packs > 0 || line.slats_used > 0)
            .collect();
        let runs = self.run_lines(plan);
        let wood =
            |line: &StockLine| self.project.slats[line.stock].volume() * (line.slats_bought as f64);
        let ordered = |order: &Order| u64::from(order.pencils);
        let pencils_ordered: u64 = self.project.orders.iter().map(ordered).sum();
        let gross_ordered = pencils_ordered as f64 / f64::from(GROSS);
        let totals = Totals {
            cost: plan.cost,
            slats_bought: stocks.iter().map(|line| line.slats_bought).sum(),
            slats_used: plan.slats_used,
            wood_bought: stocks.iter().map(wood).sum(),
            pencils_ordered,
            pencils_over: self.pencils_over(&runs),
            cost_per_gross: (pencils_ordered > 0).then(|| plan.cost as f64 / gross_ordered),
        };
        PurchaseList {
            stocks,
            runs,
            totals,
        }
    }

    /// Good pencils beyond the orders, to be expected of all runs.
    fn pencils_over(&self, runs: &[RunLine]) -> u64 {
        let share = self.project.rules.good_share();
        let over = |(place, order): (usize, &Order)| {
            let laid: u64 = (runs.iter().filter(|run| run.order == place))
                .map(|run| run.pencils)
                .sum();
            // A plan fills every order, so but for rounding at least what is ordered is good.
            ((laid as f64 * share) as u64).saturating_sub(u64::from(order.to_make()))
        };
        self.project.orders.iter().enumerate().map(over).sum()
    }

    fn stock_line(&self, plan: &PurchasePlan, stock: usize) -> StockLine {
        let supply = self.data.stocks()[stock];
        let packs = plan.packs[stock];
        let slats_bought = packs * u64::from(supply.pack_slats);
        let slats_used = 2 * plan.runs.iter().map(|row| row[stock]).sum::<u64>();
        StockLine {
            stock,
            packs,
            slats_bought,
            cost: supply.pack_price * packs.cast_signed(),
            slats_used,
            slats_from_hand: slats_used.min(supply.on_hand),
            // The recount of the plan holds the slats used against those to be had.
            slats_left: (supply.on_hand + slats_bought).saturating_sub(slats_used),
        }
    }

    fn run_lines(&self, plan: &PurchasePlan) -> Vec<RunLine> {
        let mut lines = Vec::new();
        for (order, row) in plan.runs.iter().enumerate() {
            for (stock, &sandwiches) in row.iter().enumerate() {
                if let Some(BestSeam { seam, pencils }) = self.best[order][stock]
                    && sandwiches > 0
                {
                    lines.push(RunLine {
                        order,
                        barrel: self.project.orders[order].barrel,
                        stock,
                        seam,
                        pencils_per_sandwich: pencils,
                        sandwiches,
                        pencils: sandwiches * u64::from(pencils),
                    });
                }
            }
        }
        lines
    }

    /// Why the book cannot be filled, in the names of the shop.
    fn sentence(&self, obstacle: &Obstacle) -> String {
        let rejects = if self.project.rules.good_share() < 1.0 {
            " with rejects"
        } else {
            ""
        };
        match obstacle {
            Obstacle::NoStock { order } if self.project.slats.is_empty() => {
                let name = self.order_name(*order);
                format!("{name} cannot be made, as there is no slat stock: add one")
            }
            Obstacle::NoStock { order } => {
                let name = self.order_name(*order);
                let stocks = self.stock_names(|_| true);
                format!(
                    "{name} fits none of its usual ways round on {stocks}: \
                     add a larger stock, or see in its layout which check fails"
                )
            }
            Obstacle::TooFewSlats { order, most, short } => {
                let name = self.order_name(*order);
                let stocks = self.stock_names(|stock| self.best[*order][stock].is_some());
                format!(
                    "{name} is short by {short} pencils{rejects}: all slats to be had of {stocks} give {most}; \
                     raise the most packs, or add a stock"
                )
            }
            Obstacle::Competing { short, at_least } => {
                let lacking: Vec<String> = (0..short.len())
                    .filter(|&order| short[order] > 0)
                    .map(|order| format!("{} of {}", short[order], self.order_name(order)))
                    .collect();
                let shared = if lacking.is_empty() {
                    String::new()
                } else {
                    format!(", shared out best so far: {}", lacking.join(", "))
                };
                format!(
                    "the orders share too few slats: at least {at_least} pencils will be missing{rejects}{shared}; \
                     raise the most packs, or add a stock"
                )
            }
        }
    }

    fn order_name(&self, order: usize) -> String {
        let barrel = self.project.orders[order].barrel;
        let name = self.project.barrels[barrel].name().trim();
        if name.is_empty() {
            format!("barrel {} of order {}", barrel + 1, order + 1)
        } else {
            format!("“{name}” of order {}", order + 1)
        }
    }

    /// The stocks that are meant, by name; only the first few of many.
    fn stock_names(&self, meant: impl Fn(usize) -> bool) -> String {
        /// More names than this are only counted.
        const MOST_NAMES: usize = 4;
        let names: Vec<String> = (0..self.project.slats.len())
            .filter(|&stock| meant(stock))
            .map(|stock| match self.project.slats[stock].name().trim() {
                "" => format!("slat stock {}", stock + 1),
                name => format!("“{name}”"),
            })
            .collect();
        let told = names.len().min(MOST_NAMES);
        let list = names[..told].join(", ");
        match names.len() - told {
            0 => list,
            more => format!("{list} and {more} more"),
        }
    }
}

impl BestSeam {
    fn find(barrel: &Barrel, slat: &Slat, rules: &Rules) -> Option<Self> {
        let ways = barrel.shape().seams().iter().map(|&seam| {
            let layout = lay_out(&Setup {
                barrel,
                turn: barrel.turn(seam),
                top: slat,
                bottom: slat,
                rules,
            });
            let pencils = layout.pencils();
            Self { seam, pencils }
        });
        // Of equals the first stays, which `max_by_key` would not do.
        ways.filter(|way| way.pencils > 0).reduce(|best, way| {
            if way.pencils > best.pencils {
                way
            } else {
                best
            }
        })
    }
}

/// The pencils to lay for an order: those ordered that are not on hand, and those that will be thrown out.
fn pencil_order(order: &Order, rules: &Rules) -> PencilOrder {
    let pencils = f64::from(order.to_make()) / rules.good_share();
    PencilOrder {
        // The share is at least a hundredth, so this stays far within u64.
        pencils: pencils.ceil() as u64,
    }
}

fn slat_stock(slat: &Slat) -> SlatStock {
    let supply = slat.supply();
    SlatStock {
        pack_slats: supply.pack_slats,
        pack_price: supply.pack_price,
        on_hand: u64::from(supply.on_hand),
        pack_limit: supply.pack_limit,
    }
}
