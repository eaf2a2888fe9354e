//! What the next pencil costs, and the stairs of slat width.

use super::{Trace, UNITS};
use crate::cases::{any_barrel_draft, any_rules_draft, any_slat_draft, any_turn};
use crate::dice::Dice;
use solver::{
    ConditionsDraft, CutDraft, Entry, HeadDraft, Id, LayoutDraft, Length, MoistureSource,
    ProjectDraft, RunDraft, SawShopDraft, SearchDraft, Shape, Sheet, SpeciesDraft, Threshold,
    Typed, Way, draw_stairs, staircase, thresholds,
};

impl Trace {
    /// One project of each shape: every threshold lays out some dozen times.
    pub(super) fn thresholds(&mut self) {
        for (case, shape) in (0..).zip(Shape::ALL) {
            let mut dice = Dice::new(7_000_000 + case);
            let project = any_project(&mut dice, shape);
            match thresholds(&project, 5000.0) {
                Ok(table) => table.iter().for_each(|row| self.threshold(row)),
                Err(problems) => self.line("thresholds", &format!("{case} {problems:?}")),
            }
            self.stairs(&project);
            self.gains(&project);
        }
    }

    fn threshold(&mut self, row: &Threshold) {
        self.numbers("threshold", &[row.today]);
        for change in row.down.iter().chain(&row.up) {
            let worth = change.worth;
            let worth = worth.map_or([0.0; 2], |worth| [worth.per_gross, worth.per_year]);
            let numbers = [
                change.at,
                change.step,
                f64::from(change.across_before),
                f64::from(change.across_after),
                f64::from(change.pencils_before),
                f64::from(change.pencils_after),
                worth[0],
                worth[1],
            ];
            self.numbers("change", &numbers);
            let told = (change.unmade, &change.flipped);
            self.line("flipped", &format!("{:?} {told:?}", row.input));
        }
    }

    fn stairs(&mut self, project: &ProjectDraft) {
        let Ok(parts) = project.check_layout() else {
            return;
        };
        let (from, to) = (Length::millimetres(30.0), Length::millimetres(110.0));
        let steps = staircase(&parts, from, to);
        for step in &steps {
            let pencils = f64::from(step.pencils);
            self.numbers("step", &[step.from.in_millimetres(), pencils]);
        }
        let today = [(parts.top.width(), parts.top.name().to_owned())];
        for unit in UNITS {
            let sheet = Sheet {
                width: 600.0,
                row: 28.0,
                text: 64.0,
                unit,
            };
            let chart = draw_stairs(&steps, (from, to), &today, &sheet);
            for text in [&chart.grid, &chart.axes, &chart.stairs, &chart.description] {
                self.line("stairs", text);
            }
            for label in &chart.labels {
                self.numbers("label", &[label.x, label.y]);
            }
        }
    }
}

/// A barrel of a shape on two stocks of one species, which have moved in the air of the shop.
fn any_project(dice: &mut Dice, shape: Shape) -> ProjectDraft {
    let barrel = any_barrel_draft(dice, shape);
    let slats = [11, 12].map(|id| {
        let mut draft = any_slat_draft(dice);
        draft.species = Some(Id(21));
        draft.moisture = Typed::Number(dice.between(4.0, 20.0));
        Entry { id: Id(id), draft }
    });
    let mut conditions = ConditionsDraft::new();
    conditions.source = MoistureSource::Air;
    conditions.humidity = Typed::Number(dice.between(20.0, 80.0));
    let bottom = dice.one_of(&[11, 12]);
    ProjectDraft {
        name: String::new(),
        barrels: vec![Entry {
            id: Id(1),
            draft: barrel,
        }],
        slats: slats.to_vec(),
        species: vec![Entry {
            id: Id(21),
            draft: SpeciesDraft::new("Wood"),
        }],
        conditions,
        cutter_sets: Vec::new(),
        rules: any_rules_draft(dice),
        search: SearchDraft::new(),
        layout: LayoutDraft {
            barrel: Id(1),
            top: Id(11),
            bottom: Id(bottom),
            way: Way::Turned,
            turn: Typed::Number(any_turn(dice).in_degrees()),
            accuracy: Id(0),
        },
        orders: Vec::new(),
        saw_shop: SawShopDraft::new(),
        heads: [const { HeadDraft::new() }; 3],
        cut: CutDraft::new(),
        run: RunDraft::new(),
        supply: solver::SupplyDraft::new(),
        title_block: solver::TitleBlock::new(),
        set_aside: None,
        accuracies: Vec::new(),
    }
}
