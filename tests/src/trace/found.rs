//! Free outlines as they are read, and layouts as a search finds them.

use super::Trace;
use crate::cases::{
    any_barrel_draft, any_path, any_rules, any_search, any_set, any_slat, any_turn,
};
use crate::dice::Dice;
use solver::{
    AccuracyDraft, CutterSet, Found, Goal, Length, LengthUnit, Obstacle, Outline, Question, Shape,
    Slat, Typed, search,
};

/// Paths that are read.
const PATHS: u64 = 40;
/// Searches for a barrel of each shape.
const OF_EACH: u64 = 3;

impl Trace {
    pub(super) fn paths(&mut self) {
        for case in 0..PATHS {
            let mut dice = Dice::new(5_000_000 + case);
            let path = any_path(&mut dice);
            let width = Length::millimetres(dice.between(5.0, 12.0));
            let [across, up] = [0, 1].map(|_| Length::millimetres(dice.between(-0.5, 0.5)));
            match Outline::from_path(&path, width, across, up) {
                Ok(outline) => self.outline(&outline.turned(any_turn(&mut dice).direction())),
                Err(problem) => self.line("path", &format!("{case} {problem:?}")),
            }
        }
    }

    fn outline(&mut self, outline: &Outline) {
        let centroid = outline.centroid();
        let numbers = [
            outline.segments().len() as f64,
            outline.area().in_square_millimetres(),
            outline.perimeter().in_millimetres(),
            outline.least_distance().in_millimetres(),
            centroid.x,
            centroid.y,
        ];
        self.numbers("outline", &numbers);
        for reach in outline.reaches() {
            let (centre, from, to) = (reach.centre, reach.from, reach.to);
            let numbers = [centre.x, centre.y, reach.radius, from.x, from.y, to.x, to.y];
            self.numbers("reach", &numbers);
        }
        if let Some(undercut) = outline.undercut() {
            let (at, depth) = (undercut.at, undercut.depth.in_millimetres());
            self.numbers("undercut", &[at.x, at.y, depth]);
        }
        match outline.inset(Length::millimetres(0.1)) {
            Some(inner) => {
                let (area, girth) = (inner.area(), inner.perimeter());
                let numbers = [area.in_square_millimetres(), girth.in_millimetres()];
                self.numbers("inset", &numbers);
            }
            None => self.line("inset", "falls apart"),
        }
    }

    pub(super) fn searches(&mut self) {
        for case in 0..OF_EACH * Shape::ALL.len() as u64 {
            let mut dice = Dice::new(6_000_000 + case);
            let shape = Shape::ALL[case as usize % Shape::ALL.len()];
            let barrel = any_barrel_draft(&mut dice, shape).check();
            let slats: Vec<Slat> = (0..6).filter_map(|_| any_slat(&mut dice)).collect();
            let sets: Vec<CutterSet> = (0..3).filter_map(|_| any_set(&mut dice)).collect();
            let (Ok(barrel), Some(rules), Some(asked)) =
                (barrel, any_rules(&mut dice), any_search(&mut dice))
            else {
                self.line("search", &format!("{case} cannot be asked"));
                continue;
            };
            let mut accuracy = AccuracyDraft::new("");
            accuracy.glue_shift.size = Typed::Number(dice.between(0.0, 0.2));
            let Ok(accuracy) = accuracy.check() else {
                self.line("search", &format!("{case} has no line"));
                continue;
            };
            self.searched(&Question {
                barrel: &barrel,
                slats: &slats,
                sets: &sets,
                rules: &rules,
                search: &asked,
                accuracy: Some(&accuracy),
            });
        }
    }

    fn searched(&mut self, question: &Question<'_>) {
        let answer = search(question, &mut |_, _| ());
        self.line("search", &answer.compared.to_string());
        for (goal, best) in Goal::ALL.into_iter().zip(&answer.best) {
            self.line(goal.label(), &best.len().to_string());
            best.iter().for_each(|found| self.found(found));
        }
        self.line("frontier", &answer.frontier.len().to_string());
        answer.frontier.iter().for_each(|found| self.found(found));
        match &answer.obstacle {
            Some(Obstacle::Nearest { checks, .. }) => {
                for check in checks {
                    self.line("obstacle", &check.statement(LengthUnit::Millimetre));
                }
            }
            other => self.line("obstacle", &format!("{other:?}")),
        }
    }

    fn found(&mut self, found: &Found) {
        let numbers = [
            found.top as f64,
            found.bottom as f64,
            found.set.map_or(-1.0, |set| set as f64),
            found.turn.in_degrees(),
            found.axis_height.in_millimetres(),
            found.pitch.in_millimetres(),
            f64::from(found.across),
            f64::from(found.pencils),
            found.margin.in_millimetres(),
            found.wood.in_cubic_millimetres(),
            found.money,
            found.good.unwrap_or(-1.0),
            found.good_money.unwrap_or(-1.0),
        ];
        self.numbers("found", &numbers);
    }
}
