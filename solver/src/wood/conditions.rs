//! The moisture content of the slats when they are grooved.

use super::equilibrium_moisture;
use crate::field::{Field, FieldProblem, Typed};

/// Where the moisture content at grooving is taken from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum MoistureSource {
    /// It is given, as a meter reads it.
    Typed,
    /// It is that at which wood comes to rest in the air of the shop.
    Air,
}

impl MoistureSource {
    /// Every source.
    pub const ALL: [Self; 2] = [Self::Typed, Self::Air];

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Typed => "As measured",
            Self::Air => "From the air of the shop",
        }
    }
}

/// The conditions at grooving as they are being described; they may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct ConditionsDraft {
    /// Which of the numbers count.
    pub source: MoistureSource,
    /// Moisture content of the slats, where it is given.
    pub moisture: Typed,
    /// Temperature of the air, where the moisture content is taken from it.
    pub temperature: Typed,
    /// Relative humidity of the air, where the moisture content is taken from it.
    pub humidity: Typed,
}

/// The conditions at grooving.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Conditions {
    /// Moisture content of the slats, percent, at least 0.
    pub moisture: f64,
}

impl ConditionsDraft {
    /// A given moisture content, with the first value in every field.
    #[must_use]
    pub const fn new() -> Self {
        Self {
            source: MoistureSource::Typed,
            moisture: Typed::initial(Field::GroovingMoisture),
            temperature: Typed::initial(Field::AirTemperature),
            humidity: Typed::initial(Field::AirHumidity),
        }
    }

    /// The conditions, or everything that is wrong with them. What does not count may hold
    /// anything.
    ///
    /// # Errors
    /// One problem for each field that counts and cannot be read or lies outside its range.
    ///
    /// ```
    /// use solver::{ConditionsDraft, MoistureSource};
    /// let mut draft = ConditionsDraft::new();
    /// assert_eq!(draft.check().unwrap().moisture, 8.0);
    /// draft.source = MoistureSource::Air; // 20 °C, 42 %
    /// assert!((draft.check().unwrap().moisture - 8.0).abs() < 0.1);
    /// ```
    pub fn check(&self) -> Result<Conditions, Vec<FieldProblem>> {
        let moisture = match self.source {
            MoistureSource::Typed => self
                .moisture
                .read(Field::GroovingMoisture)
                .map_err(|problem| vec![problem])?,
            MoistureSource::Air => {
                let temperature = self.temperature.read(Field::AirTemperature);
                match (temperature, self.humidity.read(Field::AirHumidity)) {
                    (Ok(celsius), Ok(percent)) => equilibrium_moisture(celsius, percent / 100.0),
                    (temperature, humidity) => {
                        let problems = temperature.err().into_iter().chain(humidity.err());
                        return Err(problems.collect());
                    }
                }
            }
        };
        Ok(Conditions { moisture })
    }
}

impl Default for ConditionsDraft {
    fn default() -> Self {
        Self::new()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_does_not_count_may_hold_anything() {
        let wrong = Typed::Text("later".into());
        let mut draft = ConditionsDraft::new();
        draft.temperature = wrong.clone();
        draft.humidity = wrong.clone();
        assert!(draft.check().is_ok());
        draft.source = MoistureSource::Air;
        assert_eq!(draft.check().unwrap_err().len(), 2);
        draft = ConditionsDraft::new();
        draft.source = MoistureSource::Air;
        draft.moisture = wrong;
        assert!(draft.check().is_ok());
    }
}
