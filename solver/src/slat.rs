//! A stock of slats: size, what it may lack, how it moves, and how it is bought.

use crate::field::{Field, FieldProblem, Typed};
use crate::project::Id;
use crate::quantity::{Length, Volume};
use crate::wood::{Conditions, Movement, Sawing, Species};

/// A slat stock as it is being described; it may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct SlatDraft {
    /// What it is called.
    pub name: String,
    /// Length along the grain.
    pub length: Typed,
    /// Nominal width.
    pub width: Typed,
    /// Nominal thickness.
    pub thickness: Typed,
    /// What a slat may lack in width.
    pub width_tolerance: Typed,
    /// What a slat may lack in thickness.
    pub thickness_tolerance: Typed,
    /// The species of the wood; without one the slats do not move.
    pub species: Option<Id>,
    /// Moisture content at which the slats have these sizes; not read without a species.
    pub moisture: Typed,
    /// How the growth rings run.
    pub sawing: Sawing,
    /// Slats in a pack.
    pub pack_slats: Typed,
    /// Price of a pack.
    pub pack_price: Typed,
    /// Slats on hand.
    pub on_hand: Typed,
    /// Most packs that can be bought; empty for no limit.
    pub pack_limit: Typed,
}

/// A slat stock that can be worked with.
#[derive(Debug, Clone, PartialEq)]
pub struct Slat {
    name: String,
    length: Length,
    width: Length,
    thickness: Length,
    width_tolerance: Length,
    thickness_tolerance: Length,
    movement: Movement,
    supply: Supply,
}

/// How a slat stock is bought.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Supply {
    /// Slats in a pack, at least 1.
    pub pack_slats: u32,
    /// Price of a pack in hundredths of the currency.
    pub pack_price: i64,
    /// Slats on hand.
    pub on_hand: u32,
    /// Most packs that can be bought, or no limit.
    pub pack_limit: Option<u32>,
}

impl Supply {
    /// Price of one slat: that of a pack, P, over the slats in it, n, as P/n, in hundredths of the
    /// currency.
    ///
    /// ```
    /// use solver::{SlatDraft, Typed};
    /// let mut draft = SlatDraft::new("74 × 5");
    /// (draft.pack_slats, draft.pack_price) = (Typed::Number(400.0), Typed::Number(120.0));
    /// assert_eq!(draft.check().unwrap().supply().slat_price(), 30.0);
    /// ```
    #[must_use]
    pub fn slat_price(&self) -> f64 {
        self.pack_price as f64 / f64::from(self.pack_slats)
    }
}

impl SlatDraft {
    /// A new stock, with the first value in every field, no species and no limit on packs.
    #[must_use]
    pub fn new(name: &str) -> Self {
        Self {
            name: name.to_owned(),
            length: Typed::initial(Field::SlatLength),
            width: Typed::initial(Field::SlatWidth),
            thickness: Typed::initial(Field::SlatThickness),
            width_tolerance: Typed::initial(Field::WidthTolerance),
            thickness_tolerance: Typed::initial(Field::ThicknessTolerance),
            species: None,
            moisture: Typed::initial(Field::DeliveryMoisture),
            sawing: Sawing::Flat,
            pack_slats: Typed::initial(Field::PackSlats),
            pack_price: Typed::initial(Field::PackPrice),
            on_hand: Typed::initial(Field::OnHand),
            pack_limit: Typed::empty(),
        }
    }

    /// The stock as delivered, or every rule it breaks. What it is at the groove head, with its
    /// species and the moisture there, is known to the project.
    ///
    /// # Errors
    /// One problem for each field that cannot be read or lies outside its range.
    ///
    /// ```
    /// use solver::{Length, SlatDraft, Typed};
    /// let mut draft = SlatDraft::new("Seven-ply");
    /// draft.width_tolerance = Typed::Number(0.2);
    /// assert_eq!(draft.check().unwrap().guaranteed_width(), Length::millimetres(73.8));
    /// ```
    pub fn check(&self) -> Result<Slat, Vec<FieldProblem>> {
        let mut problems = Vec::new();
        let mut read = |typed: &Typed, field| {
            typed.read(field).unwrap_or_else(|problem| {
                problems.push(problem);
                0.0
            })
        };
        let length = Length::millimetres(read(&self.length, Field::SlatLength));
        let width = Length::millimetres(read(&self.width, Field::SlatWidth));
        let thickness = Length::millimetres(read(&self.thickness, Field::SlatThickness));
        let width_tolerance =
            Length::millimetres(read(&self.width_tolerance, Field::WidthTolerance));
        let thickness_tolerance =
            Length::millimetres(read(&self.thickness_tolerance, Field::ThicknessTolerance));
        // The ranges of the fields lie within u32, and a price of two decimals within i64.
        let supply = Supply {
            pack_slats: read(&self.pack_slats, Field::PackSlats) as u32,
            pack_price: (read(&self.pack_price, Field::PackPrice) * 100.0).round() as i64,
            on_hand: read(&self.on_hand, Field::OnHand) as u32,
            pack_limit: self.pack_limit.read_optional(Field::PackLimit).map_or_else(
                |problem| {
                    problems.push(problem);
                    None
                },
                |limit| limit.map(|packs| packs as u32),
            ),
        };
        if problems.is_empty() {
            let name = self.name.clone();
            Ok(Slat {
                name,
                length,
                width,
                thickness,
                width_tolerance,
                thickness_tolerance,
                movement: Movement::NONE,
                supply,
            })
        } else {
            Err(problems)
        }
    }
}

impl Slat {
    /// What it is called.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Length along the grain.
    #[must_use]
    pub const fn length(&self) -> Length {
        self.length
    }

    /// Nominal width as delivered.
    #[must_use]
    pub const fn width(&self) -> Length {
        self.width
    }

    /// Nominal thickness as delivered.
    #[must_use]
    pub const fn thickness(&self) -> Length {
        self.thickness
    }

    /// The same stock at the groove head: of a species, sawn in a way, delivered at a moisture
    /// content in percent and grooved in the conditions given.
    ///
    /// ```
    /// use solver::{Conditions, Length, Sawing, SlatDraft, SpeciesDraft};
    /// let slat = SlatDraft::new("74 × 5").check().unwrap();
    /// let cedar = SpeciesDraft::new("Cedar").check().unwrap(); // 3.3 % radial, 5.2 % tangential
    /// let dry = Conditions { moisture: 8.0 };
    /// let shrunk = slat.conditioned(&cedar, Sawing::Flat, 12.0, &dry);
    /// // C = 0.17333 / 0.96533 / 100 = 0.0017956; 74 · 0.0017956 · 4 = 0.5315.
    /// assert!((shrunk.guaranteed_width().in_millimetres() - 73.4685).abs() < 1e-4);
    /// ```
    #[must_use]
    pub fn conditioned(
        self,
        species: &Species,
        sawing: Sawing,
        delivered: f64,
        conditions: &Conditions,
    ) -> Self {
        let movement = Movement::new(species, sawing, delivered, conditions.moisture);
        Self { movement, ..self }
    }

    /// The same stock, its sizes those at the groove head.
    pub(crate) fn as_grooved(&self) -> Self {
        Self {
            width: self.grooved_width(),
            thickness: self.grooved_thickness(),
            width_tolerance: self.width_tolerance * self.movement.width,
            thickness_tolerance: self.thickness_tolerance * self.movement.thickness,
            movement: Movement::NONE,
            ..self.clone()
        }
    }

    /// Nominal width at the groove head, after the wood has moved.
    #[must_use]
    pub fn grooved_width(&self) -> Length {
        self.width * self.movement.width
    }

    /// Nominal thickness at the groove head, after the wood has moved.
    #[must_use]
    pub fn grooved_thickness(&self) -> Length {
        self.thickness * self.movement.thickness
    }

    /// The width that every slat has at the groove head: nominal less what it may lack, after
    /// the wood has moved.
    #[must_use]
    pub fn guaranteed_width(&self) -> Length {
        (self.width - self.width_tolerance) * self.movement.width
    }

    /// The thickness that every slat has at the groove head: nominal less what it may lack,
    /// after the wood has moved.
    #[must_use]
    pub fn guaranteed_thickness(&self) -> Length {
        (self.thickness - self.thickness_tolerance) * self.movement.thickness
    }

    /// Wood of one slat as bought, at the sizes as delivered.
    #[must_use]
    pub fn volume(&self) -> Volume {
        self.width * self.thickness * self.length
    }

    /// How it is bought.
    #[must_use]
    pub const fn supply(&self) -> Supply {
        self.supply
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_empty_limit_means_no_limit() {
        assert_eq!(
            SlatDraft::new("").check().unwrap().supply().pack_limit,
            None
        );
    }

    #[test]
    fn without_a_species_the_moisture_is_not_read() {
        let mut draft = SlatDraft::new("");
        draft.moisture = Typed::Text("damp".into());
        assert!(draft.check().is_ok());
    }

    #[test]
    fn the_same_moisture_leaves_every_bit_as_it_was() {
        let species = crate::wood::SpeciesDraft::new("").check().unwrap();
        let slat = SlatDraft::new("").check().unwrap();
        let conditions = Conditions { moisture: 8.0 };
        let same = slat
            .clone()
            .conditioned(&species, Sawing::Quarter, 8.0, &conditions);
        assert_eq!(same, slat);
    }

    #[test]
    fn a_quarter_sawn_slat_grows_more_in_thickness() {
        let species = crate::wood::SpeciesDraft::new("").check().unwrap();
        let conditions = Conditions { moisture: 12.0 };
        let slat = SlatDraft::new("").check().unwrap();
        let slat = slat.conditioned(&species, Sawing::Quarter, 8.0, &conditions);
        // Coefficients 0.00112480 radial and 0.00179558 tangential, four percent of moisture.
        let width = slat.guaranteed_width().in_millimetres();
        let thickness = slat.guaranteed_thickness().in_millimetres();
        assert!((width - 74.0 * 1.004_499_2).abs() < 1e-4, "{width}");
        assert!((thickness - 5.0 * 1.007_182_3).abs() < 1e-5, "{thickness}");
        assert_eq!(
            (slat.width(), slat.grooved_width()),
            (Length::millimetres(74.0), slat.guaranteed_width())
        );
    }

    #[test]
    fn every_bad_field_is_reported_at_once() {
        let mut draft = SlatDraft::new("");
        draft.width = Typed::Number(-1.0);
        draft.thickness = Typed::Text("thin".into());
        draft.pack_slats = Typed::Number(2.5);
        draft.pack_limit = Typed::Number(f64::INFINITY);
        let fields: Vec<Field> = draft
            .check()
            .unwrap_err()
            .into_iter()
            .map(|problem| problem.field)
            .collect();
        assert_eq!(
            fields,
            [
                Field::SlatWidth,
                Field::SlatThickness,
                Field::PackSlats,
                Field::PackLimit
            ]
        );
    }
}
