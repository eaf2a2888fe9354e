//! Finished pencils: what is told of them, their surface and their drawing.

use super::Trace;
use crate::dice::Dice;
use solver::{
    Barrel, BarrelDraft, FinishedPencil, LengthUnit, Paper, PaperSize, Shape, Sight, Typed,
    draw_pencil,
};

impl Trace {
    /// Of a barrel, with a finish that the dice choose.
    pub(super) fn pencil(&mut self, barrel: &Barrel, dice: &mut Dice) {
        let mut draft = BarrelDraft::new("", Shape::Round).finish;
        draft.point_angle = Typed::Number(dice.between(15.0, 60.0));
        draft.dip = Typed::Number(dice.one_of(&[0.0, 12.0]));
        draft.fall = Typed::Number(dice.between(0.01, 0.3));
        draft.tin_height = Typed::Number(dice.between(8.0, 40.0));
        "Any imprint".clone_into(&mut draft.imprint);
        let finish = match draft.check(barrel) {
            Ok(finish) => finish,
            Err(problems) => {
                for problem in problems {
                    self.line("finish", &problem.to_string());
                }
                return;
            }
        };
        let pencil = FinishedPencil::new(barrel.clone(), finish, 0.41, 1.98);
        let facts = pencil.facts();
        let rows = facts.rows().into_iter();
        let told: Vec<f64> = rows
            .flat_map(|fact| [fact.made, fact.sharpened])
            .flatten()
            .collect();
        self.numbers("pencil", &told);
        self.line("facts", &facts.csv(LengthUnit::Inch));
        let surface = pencil.surface();
        let corners = surface.corners.iter().map(|number| number.to_bits());
        let bits = corners.chain(surface.triangles.iter().copied());
        // Thousands of corners are told by a sum in which the place of each counts (FNV-1a).
        let sum = bits.fold(0xcbf2_9ce4_8422_2325_u64, |sum, bits| {
            (sum ^ u64::from(bits)).wrapping_mul(0x0100_0000_01b3)
        });
        self.line(
            "surface",
            &format!("{} {sum:016x}", surface.triangles.len()),
        );
        let view = pencil
            .viewpoint(Sight::Point)
            .moved(0.2, 0.1)
            .matrix(&pencil);
        self.numbers("view", &view.map(f64::from));
        let paper = Paper {
            size: PaperSize::A4,
            landscape: false,
        };
        self.drawing(&draw_pencil(&pencil, paper, LengthUnit::Millimetre).drawing);
    }
}
