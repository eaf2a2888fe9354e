//! What leaves the office for the machine: knives, heights, marks, materials, files.

use super::Trace;
use crate::dice::Dice;
use solver::{
    Conditions, CutDraft, Head, HeadDraft, Layout, LengthUnit, Paper, PaperSize, RunDraft, Setting,
    Setup, TrueSize, Typed, draw_gauge, draw_head, draw_knife, draw_to_scale, figure, run_needs,
    set_up,
};

impl Trace {
    /// Of a layout, with heads and a cut that the dice choose.
    pub(super) fn setting(&mut self, setup: &Setup<'_>, layout: &Layout, dice: &mut Dice) {
        let heads = [any_head(dice), any_head(dice), any_head(dice)];
        let mut cut = CutDraft::new();
        cut.feed = Typed::Number(dice.between(1.0, 60.0));
        cut.overcut = Typed::Number(dice.between(0.0, 0.4));
        cut.draft = Typed::Number(dice.between(0.0, 30.0));
        let conditions = Conditions {
            moisture: dice.between(4.0, 14.0),
        };
        let ([Some(groove), Some(top), Some(bottom)], Ok(cut)) = (heads, cut.check()) else {
            self.line("heads", "cannot turn");
            return;
        };
        match set_up(setup, layout, &[groove, top, bottom], &cut, conditions) {
            Ok(setting) => self.set_machine(&setting),
            Err(problems) => {
                for problem in problems {
                    self.line("knife", &problem.to_string());
                }
            }
        }
        let paper = Paper {
            size: dice.one_of(&PaperSize::ALL),
            landscape: dice.bits().is_multiple_of(2),
        };
        match draw_to_scale(setup, layout, paper, LengthUnit::Millimetre) {
            Ok(drawn) => self.line("section", &drawn.drawing.to_svg(&drawn.scale.label())),
            Err(problem) => self.line("section", &problem.message(LengthUnit::Inch)),
        }
        match draw_gauge(setup, layout, paper, LengthUnit::Inch) {
            Ok(gauge) => self.drawing(&gauge),
            Err(problem) => self.line("gauge", &problem.message(LengthUnit::Millimetre)),
        }
        let Ok(run) = RunDraft::new().check() else {
            self.line("run", "cannot be reckoned");
            return;
        };
        match run_needs(setup, layout, &run, conditions) {
            Some(needs) => self.numbers(
                "run",
                &[
                    needs.sandwiches as f64,
                    needs.leads.mass,
                    needs.glue.mass,
                    needs.clamp.force,
                    needs.coat.litres,
                    needs.wood.density,
                    needs.wood.chip_mass,
                ],
            ),
            None => self.line("run", "no pencil comes of it"),
        }
    }

    fn set_machine(&mut self, setting: &Setting) {
        for height in &setting.heights {
            let lengths = [height.tip, height.surface, height.axis];
            let lengths = lengths.map(|length| length.in_millimetres());
            self.numbers("height", &lengths);
            self.line("to set", &lengths.map(figure::sixty_fourths).join(", "));
            if let Some(head) = draw_head(setting, height.blade, LengthUnit::Inch) {
                self.drawing(&head);
            }
        }
        for marks in setting.marks.iter().flatten() {
            let lengths = [marks.pitch, marks.wave];
            self.numbers("marks", &lengths.map(|length| length.in_millimetres()));
        }
        for knife in &setting.knives {
            self.line("knife", &TrueSize::of_knife(knife, "Knife").to_dxf());
            let paper = Paper {
                size: PaperSize::A4,
                landscape: true,
            };
            if let Ok(drawn) = draw_knife(knife, paper, LengthUnit::Inch) {
                self.drawing(&drawn.drawing);
            }
        }
    }
}

fn any_head(dice: &mut Dice) -> Option<Head> {
    let mut draft = HeadDraft::new();
    draft.diameter = Typed::Number(dice.between(60.0, 200.0));
    draft.hook = Typed::Number(dice.between(0.0, 45.0));
    draft.knives = Typed::Number(dice.one_of(&[1.0, 2.0, 4.0, 6.0]));
    draft.check().ok()
}
