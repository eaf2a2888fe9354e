//! A cutterhead: the circle its edge runs on, how its knives stand in it, how fast it turns.

use crate::field::{Cause, Field, FieldProblem, Typed};
use crate::quantity::{Angle, Length};

/// What a cutterhead does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum HeadKind {
    /// It grooves the slats, one at a time.
    Groove,
    /// It shapes the upper half of the pencils, from above.
    Top,
    /// It shapes the lower half from below, and parts them.
    Bottom,
}

impl HeadKind {
    /// Every kind, in the order of the work.
    pub const ALL: [Self; 3] = [Self::Groove, Self::Top, Self::Bottom];

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Groove => "Groove head",
            Self::Top => "Top head",
            Self::Bottom => "Bottom head",
        }
    }
}

/// A cutterhead as it is being described; it may be wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct HeadDraft {
    /// Diameter of the cutting circle at the deepest cut.
    pub diameter: Typed,
    /// Angle between the face of a knife and the radius to its farthest point.
    pub hook: Typed,
    /// Knives that cut.
    pub knives: Typed,
    /// Turns in a minute.
    pub speed: Typed,
    /// The greatest speed that is marked on it.
    pub marked: Typed,
}

/// A cutterhead that can be worked with: it turns, and no faster than is marked on it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Head {
    diameter: Length,
    hook: Angle,
    knives: u32,
    speed: f64,
    marked: f64,
}

impl HeadDraft {
    /// The first value in every field.
    #[must_use]
    pub const fn new() -> Self {
        Self {
            diameter: Typed::initial(Field::HeadDiameter),
            hook: Typed::initial(Field::HookAngle),
            knives: Typed::initial(Field::CuttingKnives),
            speed: Typed::initial(Field::HeadSpeed),
            marked: Typed::initial(Field::MarkedSpeed),
        }
    }

    /// The head, or every rule it breaks.
    ///
    /// # Errors
    /// One problem for each field that cannot be read or lies outside its range, and
    /// [`Cause::OverMarkedSpeed`] where it would turn faster than is marked on it (EN 847-1: the
    /// marked speed is never passed).
    ///
    /// ```
    /// use solver::{HeadDraft, Typed};
    /// let mut draft = HeadDraft::new(); // 125 mm at 9 000 1/min, marked 12 000
    /// assert!((draft.check().unwrap().rim_speed() - 58.9).abs() < 0.01);
    /// draft.speed = Typed::Number(12_001.0);
    /// assert!(draft.check().is_err());
    /// ```
    pub fn check(&self) -> Result<Head, Vec<FieldProblem>> {
        let mut problems = Vec::new();
        let mut read = |typed: &Typed, field| {
            typed.read(field).unwrap_or_else(|problem| {
                problems.push(problem);
                0.0
            })
        };
        let head = Head {
            diameter: Length::millimetres(read(&self.diameter, Field::HeadDiameter)),
            hook: Angle::degrees(read(&self.hook, Field::HookAngle)),
            // The range of the field lies within u32.
            knives: read(&self.knives, Field::CuttingKnives) as u32,
            speed: read(&self.speed, Field::HeadSpeed),
            marked: read(&self.marked, Field::MarkedSpeed),
        };
        // A speed that could not be read is 0 and passes no mark.
        let marks_hold = self.marked.read(Field::MarkedSpeed).is_ok();
        if marks_hold && head.speed > head.marked {
            let (speed, marked) = (head.speed, head.marked);
            let (field, cause) = (Field::HeadSpeed, Cause::OverMarkedSpeed { speed, marked });
            problems.push(FieldProblem { field, cause });
        }
        if problems.is_empty() {
            Ok(head)
        } else {
            Err(problems)
        }
    }
}

impl Default for HeadDraft {
    fn default() -> Self {
        Self::new()
    }
}

impl Head {
    /// Radius R of the circle that the farthest point of the edge runs on: that of the deepest cut.
    #[must_use]
    pub fn radius(&self) -> Length {
        self.diameter / 2.0
    }

    /// Diameter of that circle.
    #[must_use]
    pub const fn diameter(&self) -> Length {
        self.diameter
    }

    /// Angle γ between the face of a knife and the radius to its farthest point, 0 to 89°.
    #[must_use]
    pub const fn hook(&self) -> Angle {
        self.hook
    }

    /// Knives that cut, at least 1.
    #[must_use]
    pub const fn knives(&self) -> u32 {
        self.knives
    }

    /// Turns in a minute, above 0.
    #[must_use]
    pub const fn speed(&self) -> f64 {
        self.speed
    }

    /// The greatest speed that is marked on it, turns in a minute; at least the speed.
    #[must_use]
    pub const fn marked(&self) -> f64 {
        self.marked
    }

    /// Speed of the farthest point of the edge, m/s: π·D·n/60 000, with D in mm and n in 1/min.
    #[must_use]
    pub fn rim_speed(&self) -> f64 {
        rim_speed(self.diameter, self.speed)
    }

    /// Speed of the farthest point of the edge at the marked speed, m/s.
    #[must_use]
    pub fn marked_rim_speed(&self) -> f64 {
        rim_speed(self.diameter, self.marked)
    }
}

fn rim_speed(diameter: Length, speed: f64) -> f64 {
    std::f64::consts::PI * diameter.in_millimetres() * speed / 60_000.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_bad_field_is_reported_at_once() {
        let mut draft = HeadDraft::new();
        draft.diameter = Typed::empty();
        draft.hook = Typed::Number(90.0);
        draft.knives = Typed::Number(0.0);
        draft.speed = Typed::Number(0.0);
        draft.marked = Typed::Text("fast".into());
        let problems = draft.check().unwrap_err();
        let fields: Vec<Field> = problems.iter().map(|problem| problem.field).collect();
        assert_eq!(
            fields,
            [
                Field::HeadDiameter,
                Field::HookAngle,
                Field::CuttingKnives,
                Field::HeadSpeed,
                Field::MarkedSpeed
            ]
        );
    }

    #[test]
    fn a_head_may_turn_as_fast_as_is_marked_and_no_faster() {
        let mut draft = HeadDraft::new();
        draft.speed = Typed::Number(12_000.0);
        assert!(draft.check().is_ok());
        draft.speed = Typed::Number(15_000.0);
        let problems = draft.check().unwrap_err();
        let told = problems[0].to_string();
        assert!(
            told.contains("15\u{202f}000") && told.contains("12\u{202f}000"),
            "{told}"
        );
    }
}
