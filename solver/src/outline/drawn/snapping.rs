//! Where a point that is moved comes to lie.

use super::DrawnPath;
use crate::decimal::Decimal;
use crate::quantity::Point;
use crate::unit::LengthUnit;

/// What draws a moved point to itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Snap {
    /// The unit of the grid.
    pub unit: LengthUnit,
    /// Whether the grid is the finer one: 0.01 mm or 0.001 in, not 0.05 mm or 1/64 in.
    pub fine: bool,
    /// From how far the axes, and the height and width of another node, draw a point to them, mm.
    pub reach: f64,
}

impl Snap {
    /// The place for a point: each coordinate on that of an axis or of another of the points where
    /// one is within reach, the nearest first, and otherwise on the grid.
    ///
    /// ```
    /// use solver::{LengthUnit, Point, Snap};
    /// let snap = Snap { unit: LengthUnit::Millimetre, fine: false, reach: 0.1 };
    /// let others = [Point { x: 2.517, y: 3.0 }];
    /// let at = snap.place(Point { x: 2.56, y: 1.234 }, &others);
    /// assert_eq!((at.x, at.y), (2.517, 1.25));
    /// ```
    #[must_use]
    pub fn place(&self, wanted: Point, others: &[Point]) -> Point {
        let along = |wanted: f64, of: fn(&Point) -> f64| {
            let lines = others.iter().map(of).chain([0.0]);
            let near = lines.filter(|line| (line - wanted).abs() <= self.reach);
            near.min_by(|one, other| (one - wanted).abs().total_cmp(&(other - wanted).abs()))
                .unwrap_or_else(|| self.on_grid(wanted))
        };
        Point {
            x: along(wanted.x, |point| point.x),
            y: along(wanted.y, |point| point.y),
        }
    }

    /// The nearest length of the grid, mm.
    #[must_use]
    pub fn on_grid(&self, millimetres: f64) -> f64 {
        // A float that is none becomes 0, and one that is too large the largest.
        let count = (millimetres.abs() / self.step()).round() as u128;
        let value = self.steps(count.min(1_000_000_000));
        if millimetres < 0.0 {
            0.0 - value
        } else {
            value
        }
    }

    /// One step of the grid, mm.
    #[must_use]
    pub fn step(&self) -> f64 {
        self.steps(1)
    }

    /// So many steps, mm: what is round in the unit is exactly that.
    fn steps(&self, count: u128) -> f64 {
        let (step, places) = match (self.unit, self.fine) {
            (LengthUnit::Millimetre, false) => (5, -2),
            (LengthUnit::Millimetre, true) => (1, -2),
            (LengthUnit::Inch, false) => (15_625, -6),
            (LengthUnit::Inch, true) => (1, -3),
        };
        let steps = Decimal::new(count * step, places);
        steps.times(self.unit.scale()).to_f64()
    }
}

impl DrawnPath {
    /// The nodes but for one: what draws that one to itself.
    #[must_use]
    pub fn others(&self, node: usize) -> Vec<Point> {
        let nodes = self.nodes.iter().enumerate();
        let others = nodes.filter(|(place, _)| *place != node);
        others.map(|(_, node)| node.at).collect()
    }
}
