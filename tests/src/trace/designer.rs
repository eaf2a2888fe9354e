//! What the designer of a barrel is shown: handles, points, gains, barrels side by side.

use super::{Trace, UNITS};
use crate::cases::any_barrel_draft;
use crate::dice::Dice;
use solver::{
    DrawnPath, Edit, GainLimits, Length, Point, ProjectDraft, Shape, Sheet, Snap, StretchKind,
    Symmetry, compare_barrels, draw_end_view, draw_nodes, draw_outlines, nearest_gains,
};

/// Barrels whose handles and points are traced.
const BARRELS: u64 = 48;

impl Trace {
    pub(super) fn shaping(&mut self) {
        for case in 0..BARRELS {
            let mut dice = Dice::new(9_100_000 + case);
            let shape = Shape::ALL[(case % 7) as usize];
            let draft = any_barrel_draft(&mut dice, shape);
            let (x, y) = (dice.between(-8.0, 8.0), dice.between(-8.0, 8.0));
            for unit in UNITS {
                let snap = Snap {
                    unit,
                    fine: case.is_multiple_of(2),
                    reach: 0.1,
                };
                for handle in draft.handles() {
                    let moved = [
                        handle.value_at(Point { x, y }, &snap),
                        handle.stepped(3, &snap),
                    ];
                    let moved = moved.map(|value| value.map_or(-1.0, Length::in_millimetres));
                    let (at, along) = (handle.at, handle.along);
                    let numbers = [at.x, at.y, along.x, along.y, moved[0], moved[1]];
                    self.numbers("handle", &numbers);
                }
            }
            if let Some(path) = draft.drawn_path() {
                self.points(&path, Point { x, y });
                if let Ok(barrel) = draft.check() {
                    let sheet = Sheet {
                        width: 600.0,
                        row: 28.0,
                        text: 64.0,
                        unit: UNITS[0],
                    };
                    let (_, view) = draw_end_view(&barrel, &sheet, None);
                    self.line("nodes", &format!("{:?}", draw_nodes(&path, &view)));
                    self.drawing(&draw_outlines(&[&barrel], &sheet));
                }
            }
        }
    }

    fn points(&mut self, path: &DrawnPath, to: Point) {
        self.line("path", &path.text());
        for symmetry in Symmetry::ALL {
            let made = path.made(symmetry);
            let bent = made.edited(Edit::Bend(1, StretchKind::Curve), symmetry);
            let edited = bent.edited(Edit::ShiftNode(1, to), symmetry);
            let pulled = edited.edited(Edit::Pull(0, to), symmetry);
            let added = pulled.edited(Edit::AddNode(0, 0.3), symmetry);
            self.line("edited", &added.text());
        }
    }

    /// The nearest gains of a project, and its barrels side by side.
    pub(super) fn gains(&mut self, project: &ProjectDraft) {
        let limits = GainLimits {
            size: Length::millimetres(0.4),
            corner: Length::millimetres(0.3),
            coat: Length::millimetres(0.05),
        };
        match nearest_gains(project, &limits, &mut |_, _| ()) {
            Ok(gains) => {
                for gain in gains {
                    let steps = gain.steps.iter().map(|step| step.to);
                    self.numbers("gain", &steps.collect::<Vec<_>>());
                    self.numbers("distance", &[gain.distance]);
                    let told = (gain.kind, gain.slat, gain.pencils_after, gain.proof);
                    self.line("gained", &format!("{told:?}"));
                }
            }
            Err(problems) => self.line("gains", &format!("{problems:?}")),
        }
        let ids: Vec<_> = project.barrels.iter().map(|entry| entry.id).collect();
        for unit in UNITS {
            self.line("barrels", &compare_barrels(project, &ids).csv(unit));
        }
    }
}
