//! A species of wood and how much it shrinks.

use crate::field::{Field, FieldProblem, Typed};

/// A species as it is being described; it may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct SpeciesDraft {
    /// What it is called.
    pub name: String,
    /// Radial shrinkage from green to ovendry.
    pub radial: Typed,
    /// Tangential shrinkage from green to ovendry.
    pub tangential: Typed,
    /// Moisture content at which shrinkage begins.
    pub fibre_saturation: Typed,
}

/// A species that can be worked with. All numbers are in percent.
#[derive(Debug, Clone, PartialEq)]
pub struct Species {
    name: String,
    radial: f64,
    tangential: f64,
    fibre_saturation: f64,
}

impl SpeciesDraft {
    /// A new species, with the first value in every field.
    #[must_use]
    pub fn new(name: &str) -> Self {
        Self {
            name: name.to_owned(),
            radial: Typed::initial(Field::RadialShrinkage),
            tangential: Typed::initial(Field::TangentialShrinkage),
            fibre_saturation: Typed::initial(Field::FibreSaturation),
        }
    }

    /// The species, or every rule it breaks.
    ///
    /// # Errors
    /// One problem for each field that cannot be read or lies outside its range.
    ///
    /// ```
    /// use solver::{SpeciesDraft, Typed};
    /// let mut draft = SpeciesDraft::new("Cedar");
    /// assert_eq!(draft.check().unwrap().tangential(), 5.2);
    /// draft.radial = Typed::Number(33.0);
    /// assert!(draft.check().is_err());
    /// ```
    pub fn check(&self) -> Result<Species, Vec<FieldProblem>> {
        let mut problems = Vec::new();
        let mut read = |typed: &Typed, field| {
            typed.read(field).unwrap_or_else(|problem| {
                problems.push(problem);
                0.0
            })
        };
        let species = Species {
            name: self.name.clone(),
            radial: read(&self.radial, Field::RadialShrinkage),
            tangential: read(&self.tangential, Field::TangentialShrinkage),
            fibre_saturation: read(&self.fibre_saturation, Field::FibreSaturation),
        };
        if problems.is_empty() {
            Ok(species)
        } else {
            Err(problems)
        }
    }
}

impl Species {
    /// Woods that pencils are made of, to begin with: copies to be changed as a shop knows better.
    ///
    /// Shrinkage in percent from green to ovendry: USDA Forest Products Laboratory, *Wood
    /// Handbook*, FPL-GTR-190, Table 4-3; eastern white pine (Table 4-3) and jelutong (Table 4-4)
    /// are from memory. Shrinkage begins at 30 % moisture content, in western redcedar at 22 %
    /// (a footnote there, from memory).
    ///
    /// ```
    /// use solver::Species;
    /// let woods = Species::handbook();
    /// assert!(woods.iter().all(|wood| wood.check().is_ok()));
    /// assert_eq!(woods[0].name, "Incense-cedar");
    /// ```
    #[must_use]
    pub fn handbook() -> Vec<SpeciesDraft> {
        /// Name, radial, tangential, begin of shrinkage.
        const TABLE: [(&str, f64, f64, f64); 9] = [
            ("Incense-cedar", 3.3, 5.2, 30.0),
            ("American basswood", 6.6, 9.3, 30.0),
            ("Yellow-poplar", 4.6, 8.2, 30.0),
            ("Western redcedar", 2.4, 5.0, 22.0),
            ("Port-Orford-cedar", 4.6, 6.9, 30.0),
            ("Eastern redcedar", 3.1, 4.7, 30.0),
            ("Quaking aspen", 3.5, 6.7, 30.0),
            ("Eastern white pine", 2.1, 6.1, 30.0),
            ("Jelutong", 2.3, 5.5, 30.0),
        ];
        TABLE
            .iter()
            .map(
                |&(name, radial, tangential, fibre_saturation)| SpeciesDraft {
                    name: name.to_owned(),
                    radial: Typed::Number(radial),
                    tangential: Typed::Number(tangential),
                    fibre_saturation: Typed::Number(fibre_saturation),
                },
            )
            .collect()
    }

    /// What it is called.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Radial shrinkage from green to ovendry, percent.
    #[must_use]
    pub const fn radial(&self) -> f64 {
        self.radial
    }

    /// Tangential shrinkage from green to ovendry, percent.
    #[must_use]
    pub const fn tangential(&self) -> f64 {
        self.tangential
    }

    /// Moisture content at which shrinkage begins, percent.
    #[must_use]
    pub const fn fibre_saturation(&self) -> f64 {
        self.fibre_saturation
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_bad_field_is_reported_at_once() {
        let mut draft = SpeciesDraft::new("");
        draft.radial = Typed::Number(20.1);
        draft.tangential = Typed::Text("much".into());
        draft.fibre_saturation = Typed::Number(14.0);
        let fields: Vec<Field> = draft
            .check()
            .unwrap_err()
            .into_iter()
            .map(|problem| problem.field)
            .collect();
        assert_eq!(
            fields,
            [
                Field::RadialShrinkage,
                Field::TangentialShrinkage,
                Field::FibreSaturation
            ]
        );
    }
}
