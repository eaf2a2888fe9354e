//! From a saw shop that may be wrong to what can be sawn.

use super::BlankDraft;
use super::blank::Becomes;
use crate::field::{Cause, Field, FieldProblem, Place, Problem, Typed};
use crate::project::{Entry, Id, ProjectDraft, keep, one, placed, told_once};
use crate::sawing::{Dimensions, SawingData, SawingDraft, SawingProblem};
use crate::wood::Movement;

impl ProjectDraft {
    /// What the saw shop is to saw from what, or everything that stands in its way. Planks and
    /// blanks keep their places in the lists.
    ///
    /// # Errors
    /// Every problem of the planks, at [`Place::Plank`]; of the blanks, at [`Place::Blank`]; of the
    /// saws, at [`Place::SawShop`]; of a slat stock that a blank becomes and of its species, at
    /// their places; every blank wanted that fits no plank, whatever may be typed where a number
    /// cannot be read. Where each is in order, every limit of sawing that they break together.
    ///
    /// ```
    /// # use solver::{AccuracyDraft, BarrelDraft, ConditionsDraft, Id, LayoutDraft, ProjectDraft, RulesDraft, SearchDraft, Seam, Shape, Way};
    /// use solver::{BlankDraft, Entry, PlankDraft, SawShopDraft, Typed, sawing};
    /// # let layout = LayoutDraft {
    /// #     barrel: Id(1), top: Id(2), bottom: Id(2), way: Way::Usual(Seam::AnyWay),
    /// #     turn: Typed::empty(), accuracy: Id(3),
    /// # };
    /// # let project = ProjectDraft {
    /// #     name: String::new(), barrels: vec![], slats: vec![], species: vec![],
    /// #     conditions: ConditionsDraft::new(), cutter_sets: vec![], rules: RulesDraft::new(),
    /// #     accuracies: vec![], layout, search: SearchDraft::new(), orders: vec![],
    /// #     saw_shop: SawShopDraft::new(), heads: [const { solver::HeadDraft::new() }; 3],
    /// #     cut: solver::CutDraft::new(), run: solver::RunDraft::new(), supply: solver::SupplyDraft::new(),
    /// #     title_block: solver::TitleBlock::new(), set_aside: None,
    /// # };
    /// let mut project = project; // without planks and blanks
    /// assert!(project.check_sawing().is_err());
    /// let plank = PlankDraft::new("3 m");
    /// project.saw_shop.planks.push(Entry { id: Id(7), draft: plank });
    /// let mut blank = BlankDraft::new("Slats");
    /// blank.thickness = Typed::Number(6.2);
    /// project.saw_shop.blanks.push(Entry { id: Id(8), draft: blank });
    /// let data = project.check_sawing().unwrap();
    /// assert_eq!(data.blanks()[0].size.thickness, 6_200);
    /// let outcome = sawing::saw(&data, &sawing::SawingLimits::default(), &mut |_| true).unwrap();
    /// assert!(matches!(outcome, sawing::SawingOutcome::Proved { .. }));
    /// ```
    pub fn check_sawing(&self) -> Result<SawingData, Vec<Problem>> {
        let shop = &self.saw_shop;
        let mut problems = Vec::new();
        let saws = keep(placed(shop.saws(), Place::SawShop), &mut problems);
        let planks: Vec<_> = (shop.planks.iter().enumerate())
            .filter_map(|(at, plank)| {
                keep(placed(plank.draft.check(), Place::Plank(at)), &mut problems)
            })
            .collect();
        let blanks: Vec<_> = (0..shop.blanks.len())
            .filter_map(|at| keep(self.with_blank(at, BlankDraft::check_as), &mut problems))
            .collect();
        let is_read = problems.is_empty();
        problems.extend(self.blanks_that_fit_no_plank());
        match saws {
            Some(saws) if is_read => {
                let draft = SawingDraft {
                    planks,
                    blanks,
                    crosscut_kerf: saws.crosscut_kerf,
                    rip_kerf: saws.rip_kerf,
                    offcuts: saws.offcuts,
                    aim: shop.aim,
                };
                draft.check().map_err(|found| {
                    problems.extend(found.into_iter().map(|problem| self.place_of(problem)));
                    told_once(problems)
                })
            }
            _ => Err(told_once(problems)),
        }
    }

    /// The size of a blank as it is sawn: as typed, or of the slat that it becomes.
    ///
    /// # Errors
    /// Every problem of its size, at [`Place::Blank`]; of the slat stock that it becomes, at
    /// [`Place::Slat`]; of the species, at [`Place::Species`]; of the moisture at sawing, at
    /// [`Place::SawShop`]. An empty list when there is no blank at that place of the list.
    pub fn sawn_size(&self, at: usize) -> Result<Dimensions, Vec<Problem>> {
        self.with_blank(at, BlankDraft::size)
    }

    /// The blanks wanted that no plank can be long, wide and thick enough for, as far as the fields
    /// that this rests on can be read.
    fn blanks_that_fit_no_plank(&self) -> Vec<Problem> {
        let planks = &self.saw_shop.planks;
        let blanks = self.saw_shop.blanks.iter().enumerate();
        let unfit = blanks.filter_map(|(blank, entry)| {
            let wanted = entry.draft.demand.read(Field::BlanksWanted).ok()?;
            let size = self.sawn_size(blank).ok()?;
            let fits = planks.iter().any(|plank| plank.draft.may_hold(&size));
            let problem = SawingProblem::FitsNoPlank { blank, size };
            (wanted > 0.0 && !fits && !planks.is_empty()).then(|| self.place_of(problem))
        });
        unfit.collect()
    }

    /// Lets a blank become a slat of a stock, or none; then the sizes that followed from the slat stay
    /// as they were, as typed ones. Does nothing when there is no blank at that place of the list.
    pub fn set_blank_slat(&mut self, at: usize, slat: Option<Id>) {
        let sawn = self.sawn_size(at);
        let Some(Entry { draft: blank, .. }) = self.saw_shop.blanks.get_mut(at) else {
            return;
        };
        if let (Some(_), None, Ok(size)) = (blank.slat, slat, sawn) {
            let typed = |micrometres: i64| Typed::Number(micrometres as f64 / 1000.0);
            blank.length = typed(size.length);
            blank.width = typed(size.width);
            blank.thickness = typed(size.thickness);
        }
        blank.slat = slat;
    }

    /// Reads a blank with the slat that it becomes, if it becomes one.
    fn with_blank<T>(
        &self,
        at: usize,
        read: fn(&BlankDraft, Option<&Becomes<'_>>) -> Result<T, Vec<FieldProblem>>,
    ) -> Result<T, Vec<Problem>> {
        let blank = &self.saw_shop.blanks.get(at).ok_or_else(Vec::new)?.draft;
        let here = Place::Blank(at);
        let Some(id) = blank.slat else {
            return placed(read(blank, None), here);
        };
        let place = self.slat_place(id).ok_or_else(|| {
            let (field, cause) = (Field::LengthDressing, Cause::NoSuchStock);
            let problem = FieldProblem { field, cause };
            vec![Problem {
                place: here,
                problem,
            }]
        })?;
        let mut problems = Vec::new();
        let slat = self.slats[place].draft.check();
        let slat = keep(placed(slat, Place::Slat(place)), &mut problems);
        let movement = keep(self.movement_to_delivery(place), &mut problems);
        match (slat, movement) {
            (Some(slat), Some(movement)) => {
                let becomes = Becomes {
                    slat: &slat,
                    movement,
                };
                placed(read(blank, Some(&becomes)), here)
            }
            _ => Err(problems),
        }
    }

    /// How the wood of a slat stock moves from the saw to its delivery; without a species it stays
    /// as it is.
    fn movement_to_delivery(&self, at: usize) -> Result<Movement, Vec<Problem>> {
        let slat = &self.slats[at].draft;
        let Some(id) = slat.species else {
            return Ok(Movement::NONE);
        };
        let mut problems = Vec::new();
        let delivered = slat.moisture.read(Field::DeliveryMoisture);
        let delivered = keep(one(delivered, Place::Slat(at)), &mut problems);
        let sawn = self.saw_shop.moisture.read(Field::SawnMoisture);
        let sawn = keep(one(sawn, Place::SawShop), &mut problems);
        let species = match self.species_place(id) {
            Some(place) => {
                let species = self.species[place].draft.check();
                keep(placed(species, Place::Species(place)), &mut problems)
            }
            None => {
                let (field, cause) = (Field::DeliveryMoisture, Cause::NoSuchSpecies);
                let gone = Err(FieldProblem { field, cause });
                keep(one(gone, Place::Slat(at)), &mut problems)
            }
        };
        match (species, sawn, delivered) {
            (Some(species), Some(sawn), Some(delivered)) => {
                Ok(Movement::new(&species, slat.sawing, sawn, delivered))
            }
            _ => Err(problems),
        }
    }

    /// Everything that is wrong in the saw shop itself; what stands elsewhere is told there.
    pub(crate) fn problems_of_sawing(&self) -> Vec<Problem> {
        let mut problems = self.check_sawing().err().unwrap_or_default();
        problems.retain(|Problem { place, problem }| match place {
            // A shop that is not filled in yet is no mistake.
            Place::SawShop => problem.cause != Cause::Sawing(SawingProblem::NoPlanks),
            Place::Plank(_) | Place::Blank(_) => true,
            _ => false,
        });
        problems
    }

    /// Where a broken limit of sawing is mended.
    fn place_of(&self, problem: SawingProblem) -> Problem {
        let (place, field) = match problem {
            SawingProblem::PlankSize { plank } => (Place::Plank(plank), Field::PlankLength),
            SawingProblem::Trim { plank } => (Place::Plank(plank), Field::PlankEndTrim),
            SawingProblem::Price { plank, .. } => (Place::Plank(plank), Field::PlankPrice),
            SawingProblem::OnHand { plank, .. } => (Place::Plank(plank), Field::PlanksOnHand),
            SawingProblem::BlankSize { blank } | SawingProblem::FitsNoPlank { blank, .. } => {
                let becomes = self.saw_shop.blanks.get(blank);
                let is_typed = becomes.is_none_or(|blank| blank.draft.slat.is_none());
                let field = if is_typed {
                    Field::BlankLength
                } else {
                    Field::LengthDressing
                };
                (Place::Blank(blank), field)
            }
            SawingProblem::Demand { blank, .. } => (Place::Blank(blank), Field::BlanksWanted),
            SawingProblem::OverWorth { blank, .. } => (Place::Blank(blank), Field::BlankOverWorth),
            SawingProblem::Kerf { .. } => (Place::SawShop, Field::CrosscutKerf),
            SawingProblem::DearOffcut { plank } => (Place::Plank(plank), Field::PlankPrice),
            SawingProblem::Offcuts => (Place::SawShop, Field::ShortestOffcut),
            SawingProblem::NoPlanks
            | SawingProblem::TooManyPlanks { .. }
            | SawingProblem::TooManyBlanks { .. }
            | SawingProblem::TooManyPieces { .. } => (Place::SawShop, Field::CrosscutKerf),
        };
        let cause = Cause::Sawing(problem);
        let problem = FieldProblem { field, cause };
        Problem { place, problem }
    }
}
