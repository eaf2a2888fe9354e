//! The faces of a barrel, and what of them takes an imprint.

use super::rest::rests;
use crate::outline::{Outline, Segment};
use crate::quantity::{Direction, Length, Point};

/// A face of a barrel: where it can lie on a table, about its lead axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Face {
    /// Its outward normal.
    pub normal: Direction,
    /// From the lead axis to the plane that touches it.
    pub distance: Length,
    /// Where what takes an imprint begins beside the foot of the axis, clockwise; at most 0.
    pub from: Length,
    /// Where it ends, counter-clockwise; at least 0.
    pub to: Length,
    /// Whether it is flat.
    pub is_flat: bool,
}

impl Face {
    /// Width of what takes an imprint.
    #[must_use]
    pub fn width(&self) -> Length {
        self.to - self.from
    }

    /// Its middle, counter-clockwise from the foot of the axis.
    #[must_use]
    pub fn middle(&self) -> Length {
        (self.from + self.to) / 2.0
    }

    /// The faces of an outline: the uppermost first, the others counter-clockwise. A circle has one.
    ///
    /// Of a flat face its straight side takes the imprint; of a curved one what falls away from the
    /// plane that touches it by no more than `fall`, which of a circle of radius R is the chord
    /// 2·√(2R·fall − fall²).
    pub(super) fn all(outline: &Outline, fall: Length) -> Vec<Self> {
        let mut normals: Vec<Direction> = rests(&outline.reaches(), Point::AXIS)
            .into_iter()
            .map(|rest| rest.normal)
            .collect();
        if normals.is_empty() {
            normals.push(Direction::UP);
        }
        // Heights that differ only by rounding are the same; then the one to the right is first.
        let place = |normal: &Direction| ((normal.y * 1e9).round(), normal.x);
        let mut first = 0;
        for (k, normal) in normals.iter().enumerate() {
            if place(normal) > place(&normals[first]) {
                first = k;
            }
        }
        normals.rotate_left(first);
        normals
            .into_iter()
            .map(|normal| Self::at(outline, normal, fall))
            .collect()
    }

    fn at(outline: &Outline, normal: Direction, fall: Length) -> Self {
        /// Normals whose cosine is nearer to 1 than this are the same.
        const HAIR: f64 = 1e-15;
        let distance = outline.support(normal);
        // With the face on top, what lies counter-clockwise of its foot lies to the left.
        let upright = outline.turned(normal.mirrored().turned(Direction::UP));
        let flat = upright.segments().iter().find_map(|segment| match segment {
            Segment::Line(line)
                if line.normal.y > 1.0 - HAIR && line.to.x <= 0.0 && line.from.x >= 0.0 =>
            {
                Some((line.to.x, line.from.x))
            }
            _ => None,
        });
        let curved = || {
            let level = distance - fall;
            // A plane may bridge a hollow, of which nothing takes an imprint.
            let sideways = outline.turned(normal.mirrored());
            let reach = sideways
                .level_crossings(Length::ZERO)
                .into_iter()
                .fold(0.0, f64::max);
            let solid = level.fits_in(Length::millimetres(reach));
            let (left, right) = upright.chord(level).filter(|_| solid)?;
            (left <= Length::ZERO && right >= Length::ZERO)
                .then(|| (left.in_millimetres(), right.in_millimetres()))
        };
        let (left, right) = flat.or_else(curved).unwrap_or((0.0, 0.0));
        Self {
            normal,
            distance,
            from: Length::millimetres(-right),
            to: Length::millimetres(-left),
            is_flat: flat.is_some(),
        }
    }
}
