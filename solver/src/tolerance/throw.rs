//! One throw of the dice: the standard normal numbers that a sandwich is made with.

use super::generator::Generator;
use super::ziggurat::Ziggurat;

/// Standard normal numbers, one for each sum of errors.
///
/// They are thrown in this order, the pencils from the datum edge. So two layouts of the same
/// sandwich that differ in pitch, count or accuracy can be made with the same throw, and what
/// differs between them is their own doing.
#[derive(Debug, Clone, Default)]
pub(super) struct Throw {
    pub(super) common: Common,
    pub(super) pencils: Vec<Pencil>,
}

/// What is common to the sandwich.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Common {
    pub(super) heads_middle: f64,
    pub(super) heads_apart: f64,
    pub(super) shift: f64,
    pub(super) shaping: f64,
    pub(super) upright: f64,
    pub(super) depths: f64,
    pub(super) bottom_width: f64,
    pub(super) top_width: f64,
    /// What the place of the groove leaves open of the shaping cutter, of the first pencil.
    pub(super) first_cutter: f64,
    /// The same of the last pencil.
    pub(super) last_cutter: f64,
}

/// What is a pencil's own.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Pencil {
    pub(super) off_cutter: f64,
    pub(super) grooves_apart: f64,
    pub(super) lead: f64,
}

impl Throw {
    /// For so many pencils.
    pub(super) fn new(pencils: usize) -> Self {
        Self {
            common: Common::default(),
            pencils: vec![Pencil::default(); pencils],
        }
    }

    /// The throw of a sandwich by its number.
    pub(super) fn again(&mut self, ziggurat: &Ziggurat, seed: u64, sandwich: u64) {
        let mut generator = Generator::stream(seed, sandwich);
        let mut number = || ziggurat.number(&mut generator);
        self.common = Common {
            heads_middle: number(),
            heads_apart: number(),
            shift: number(),
            shaping: number(),
            upright: number(),
            depths: number(),
            bottom_width: number(),
            top_width: number(),
            first_cutter: number(),
            last_cutter: number(),
        };
        for pencil in &mut self.pencils {
            *pencil = Pencil {
                off_cutter: number(),
                grooves_apart: number(),
                lead: number(),
            };
        }
    }
}
