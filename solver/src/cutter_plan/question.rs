//! Cutter sets planned from a project that may be wrong.

use super::{CutterPlan, CutterQuestion, plan_cutters};
use crate::field::{Place, Problem};
use crate::project::{Id, ProjectDraft, Way, placed};
use crate::rules::Spacing;
use crate::seam::Seam;

impl ProjectDraft {
    /// Plans cutter sets for the order book, as [`plan_cutters`]; one made to measure costs what the
    /// search for a layout counts with. Barrels, stocks, sets and orders keep their places in the lists.
    ///
    /// # Errors
    /// Every problem of the barrels, stocks, species, conditions, cutter sets, rules, orders and the
    /// search. The layout that is looked at, the spacing, accuracies, saw shop, heads and run have no
    /// say and may hold anything.
    ///
    /// ```
    /// # use solver::{BarrelDraft, ConditionsDraft, CutDraft, Entry, HeadDraft, Id, LayoutDraft, ProjectDraft, RulesDraft, RunDraft, SawShopDraft, SearchDraft, Seam, Shape, SlatDraft, Way};
    /// use solver::{CutterSetDraft, OrderDraft, Typed};
    /// # let layout = LayoutDraft {
    /// #     barrel: Id(1), top: Id(2), bottom: Id(2), way: Way::Usual(Seam::ThroughFaces),
    /// #     turn: Typed::empty(), accuracy: Id(3),
    /// # };
    /// # let project = ProjectDraft {
    /// #     name: String::new(),
    /// #     barrels: vec![Entry { id: Id(1), draft: BarrelDraft::new("Office", Shape::Hexagonal) }],
    /// #     slats: vec![Entry { id: Id(2), draft: SlatDraft::new("74 × 5") }], species: vec![],
    /// #     conditions: ConditionsDraft::new(), cutter_sets: vec![], rules: RulesDraft::new(),
    /// #     accuracies: vec![], layout, search: SearchDraft::new(), orders: vec![],
    /// #     saw_shop: SawShopDraft::new(), heads: [const { HeadDraft::new() }; 3],
    /// #     cut: CutDraft::new(), run: RunDraft::new(), supply: solver::SupplyDraft::new(),
    /// #     title_block: solver::TitleBlock::new(), set_aside: None,
    /// # };
    /// let mut project = project; // one barrel, one stock
    /// project.orders.push(OrderDraft { gross: Typed::Number(100.0), ..OrderDraft::new(Id(1)) });
    /// let mut tens = CutterSetDraft::new("Tens");
    /// tens.pitch = Typed::Number(7.24);
    /// project.cutter_sets.push(Entry { id: Id(7), draft: tens });
    /// assert_eq!(project.plan_cutters().unwrap().serving(0), [0]);
    /// project.orders[0].gross = Typed::Text("many".into());
    /// assert!(project.plan_cutters().is_err());
    /// ```
    pub fn plan_cutters(&self) -> Result<CutterPlan, Vec<Problem>> {
        let mut draft = self.clone();
        draft.layout.way = Way::Usual(Seam::AnyWay);
        draft.rules.spacing = Spacing::Closest;
        draft.accuracies.clear();
        draft.clear_making();
        let project = draft.check()?;
        let search = placed(draft.search.check(), Place::Search)?;
        // Each has been checked with the project.
        let sets = (draft.cutter_sets.iter().enumerate())
            .map(|(at, set)| placed(set.draft.check(), Place::CutterSet(at)))
            .collect::<Result<Vec<_>, _>>()?;
        let barrels: Vec<Id> = draft.barrels.iter().map(|barrel| barrel.id).collect();
        Ok(plan_cutters(&CutterQuestion {
            project: &project,
            barrels: &barrels,
            sets: &sets,
            new_price: search.new_set_price,
        }))
    }
}
