//! Between a barrel and the path that draws its outline.

use super::BarrelDraft;
use crate::field::{Field, Typed};
use crate::outline::{DrawnPath, Outline, PathProblem};
use crate::quantity::{Angle, Length, Point};
use crate::shape::Shape;

/// How much a factor may differ from 1, and a way from nothing (mm), for a path to lie where it is
/// drawn: what rounding leaves of widths and centres.
const AS_DRAWN: f64 = 1e-8;

impl BarrelDraft {
    /// The path of the finished outline as it lies round the lead axis, y up, mm: of a free outline the
    /// one that is drawn, even where it meets itself or misses the axis; of every other kind its lines
    /// and arcs. Nothing where a size is no number, or the path cannot be read.
    ///
    /// ```
    /// use solver::{BarrelDraft, Shape};
    /// let path = BarrelDraft::new("Office", Shape::Round).drawn_path().unwrap();
    /// // Four quarter turns, from the right.
    /// assert_eq!(path.nodes().len(), 4);
    /// assert_eq!(path.nodes()[0].at.x, 3.65);
    /// ```
    #[must_use]
    pub fn drawn_path(&self) -> Option<DrawnPath> {
        if self.shape != Shape::Free {
            let barrel = self.check().ok()?;
            return Some(match self.shape {
                Shape::Oval if barrel.finished(Angle::ZERO).segments().len() > 2 => {
                    let extents = barrel.finished(Angle::ZERO).extents();
                    DrawnPath::ellipse(extents.width(), extents.height())
                }
                _ => DrawnPath::of_outline(&barrel.finished(Angle::ZERO)),
            });
        }
        let path = DrawnPath::read(&self.path)?;
        let size = self.size.read(Field::BarrelWidth).ok()?;
        let across = self.axis_across.read(Field::AxisAcross).ok()?;
        let up = self.axis_up.read(Field::AxisUp).ok()?;
        let (width, centre) = path.measure();
        let centre = centre?;
        let factor = size / width.in_millimetres();
        let (x, y) = (-centre.x * factor - across, -centre.y * factor - up);
        let as_drawn = (factor - 1.0).abs() < AS_DRAWN && x.abs() < AS_DRAWN && y.abs() < AS_DRAWN;
        (factor.is_finite()).then(|| {
            if as_drawn {
                path
            } else {
                path.placed(factor, x, y)
            }
        })
    }

    /// Where the path of a free outline cannot be made, mm from the lead axis: where it meets itself, both
    /// ends of a gap, or the axis that it does not go round. None of any other kind, or where the path
    /// cannot be read.
    ///
    /// ```
    /// use solver::{BarrelDraft, Shape};
    /// let mut draft = BarrelDraft::new("Bow tie", Shape::Free);
    /// draft.path = "M-4 3 L4 -3 V3 L-4 -2 Z".to_owned();
    /// assert_eq!(draft.flaws().len(), 1);
    /// draft.path = "M0 0 H8 V6 H0 Z".to_owned();
    /// assert!(draft.flaws().is_empty());
    /// ```
    #[must_use]
    pub fn flaws(&self) -> Vec<Point> {
        if self.shape != Shape::Free {
            return Vec::new();
        }
        let read = |typed: &Typed, field| typed.read(field).map(Length::millimetres);
        let (Ok(size), Ok(across), Ok(up)) = (
            read(&self.size, Field::BarrelWidth),
            read(&self.axis_across, Field::AxisAcross),
            read(&self.axis_up, Field::AxisUp),
        ) else {
            return Vec::new();
        };
        match Outline::from_path(&self.path, size, across, up) {
            Err(PathProblem::CrossesItself { at }) => vec![Point {
                x: at.x - across.in_millimetres(),
                y: at.y - up.in_millimetres(),
            }],
            Err(PathProblem::Open { .. }) => {
                let path = self.drawn_path();
                let ends = path.as_ref().map(DrawnPath::nodes);
                let ends = ends.and_then(|nodes| Some([nodes.first()?.at, nodes.last()?.at]));
                ends.into_iter().flatten().collect()
            }
            Err(PathProblem::AxisOutside) => vec![Point::AXIS],
            _ => Vec::new(),
        }
    }

    /// Makes it a free outline of a path that lies round the lead axis, y up, mm: as wide as it is drawn,
    /// and the axis where it is.
    pub fn draw(&mut self, path: &DrawnPath) {
        // To a millionth of a micrometre: what rounding leaves is not shown.
        let clean = |millimetres: f64| (millimetres * 1e9).round() / 1e9 + 0.0;
        let (width, centre) = path.measure();
        self.shape = Shape::Free;
        self.path = path.text();
        self.size = Typed::Number(clean(width.in_millimetres()));
        if let Some(centre) = centre {
            self.axis_across = Typed::Number(clean(-centre.x));
            self.axis_up = Typed::Number(clean(-centre.y));
        }
    }
}
