//! Sheets of paper, standard scales, and drawings that are as large on paper as they say.

use super::Drawing;
use crate::figure;
use crate::quantity::Length;
use crate::unit::LengthUnit;

/// Pixels of a drawing in a millimetre of paper: 96 in an inch, as a pixel of CSS is defined (W3C,
/// CSS Values and Units Level 3, section 6.2).
pub const PIXELS_PER_MILLIMETRE: f64 = 96.0 / 25.4;

/// A sheet of paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Paper {
    /// Its size.
    pub size: PaperSize,
    /// Whether it lies on its long side.
    pub landscape: bool,
}

/// A size of paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum PaperSize {
    /// A4: 210 × 297 mm (ISO 216).
    A4,
    /// US Letter: 8½ × 11 in (ANSI/ASME Y14.1, size A).
    Letter,
}

impl PaperSize {
    /// Every size.
    pub const ALL: [Self; 2] = [Self::A4, Self::Letter];

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::A4 => "A4",
            Self::Letter => "US Letter",
        }
    }

    /// Its short and its long side.
    #[must_use]
    pub const fn sides(self) -> (Length, Length) {
        match self {
            Self::A4 => (Length::millimetres(210.0), Length::millimetres(297.0)),
            Self::Letter => (Length::millimetres(215.9), Length::millimetres(279.4)),
        }
    }
}

impl Paper {
    /// What is left free on every side: printers do not reach the edge. Common practice, no source.
    pub const MARGIN: Length = Length::millimetres(10.0);

    /// The sheet across.
    #[must_use]
    pub const fn width(self) -> Length {
        let (short, long) = self.size.sides();
        if self.landscape { long } else { short }
    }

    /// The sheet upright.
    #[must_use]
    pub const fn height(self) -> Length {
        let (short, long) = self.size.sides();
        if self.landscape { short } else { long }
    }

    /// What can be printed on across.
    ///
    /// ```
    /// use solver::{Length, Paper, PaperSize};
    /// let paper = Paper { size: PaperSize::A4, landscape: true };
    /// assert_eq!(paper.printable_width(), Length::millimetres(277.0));
    /// ```
    #[must_use]
    pub fn printable_width(self) -> Length {
        self.width() - Self::MARGIN * 2.0
    }
}

/// A scale after ISO 5455: 1:1, enlargements like 2:1, reductions like 1:2.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Scale {
    /// Millimetres of paper.
    paper: u32,
    /// Millimetres that are drawn on them.
    real: u32,
}

impl Scale {
    /// Full size, 1:1.
    pub const FULL: Self = Self { paper: 1, real: 1 };

    /// The enlargements that are tried, the largest first. ISO 5455 names those up to 50:1 and goes
    /// on in tens.
    const ENLARGED: [u32; 5] = [50, 20, 10, 5, 2];

    /// The reductions that are tried after full size, the least first. ISO 5455 goes on from 1:10 in
    /// tens.
    const REDUCED: [u32; 6] = [2, 5, 10, 20, 50, 100];

    /// The largest at which a size fits in a room on paper; nothing where it does not fit in full
    /// size.
    ///
    /// ```
    /// use solver::{Length, Scale};
    /// let fits = |size, room| Scale::largest_that_fits(Length::millimetres(size), Length::millimetres(room));
    /// assert_eq!(fits(74.0, 161.0).unwrap().label(), "2:1");
    /// assert_eq!(fits(200.0, 161.0), None);
    /// ```
    #[must_use]
    pub fn largest_that_fits(size: Length, room: Length) -> Option<Self> {
        let enlarged = Self::ENLARGED.map(|paper| Self { paper, real: 1 });
        let mut scales = enlarged.into_iter().chain([Self::FULL]);
        scales.find(|scale| (size * scale.factor()).fits_in(room))
    }

    /// The same for a view that need not be in full size; nothing where it does not fit a hundred times
    /// smaller.
    ///
    /// ```
    /// use solver::{Length, Scale};
    /// let of_a_view = |size, room| Scale::of_a_view(Length::millimetres(size), Length::millimetres(room));
    /// assert_eq!(of_a_view(200.0, 161.0).unwrap().label(), "1:2");
    /// assert_eq!(of_a_view(5.0, 27.0).unwrap().label(), "5:1");
    /// assert_eq!(of_a_view(20_000.0, 161.0), None);
    /// ```
    #[must_use]
    pub fn of_a_view(size: Length, room: Length) -> Option<Self> {
        let mut reduced = Self::REDUCED
            .map(|real| Self { paper: 1, real })
            .into_iter();
        Self::largest_that_fits(size, room)
            .or_else(|| reduced.find(|scale| (size * scale.factor()).fits_in(room)))
    }

    /// Millimetres of paper in a millimetre.
    #[must_use]
    pub fn factor(self) -> f64 {
        f64::from(self.paper) / f64::from(self.real)
    }

    /// As it is written on the sheet, like 5:1 or 1:2.
    #[must_use]
    pub fn label(self) -> String {
        format!("{}:{}", self.paper, self.real)
    }
}

/// What keeps a drawing from a sheet of paper.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum PaperProblem {
    /// It is too wide for the sheet.
    TooWide {
        /// What it takes across.
        needed: Length,
        /// What can be printed on across.
        printable: Length,
    },
}

impl PaperProblem {
    /// What is wrong, against what, and what to try.
    ///
    /// ```
    /// use solver::{Length, LengthUnit, PaperProblem};
    /// let (needed, printable) = (Length::millimetres(204.0), Length::millimetres(190.0));
    /// let told = PaperProblem::TooWide { needed, printable }.message(LengthUnit::Millimetre);
    /// assert!(told.starts_with("It takes 204.00\u{202f}mm across"));
    /// ```
    #[must_use]
    pub fn message(self, unit: LengthUnit) -> String {
        let Self::TooWide { needed, printable } = self;
        let [needed, printable] = [needed, printable]
            .map(|length| figure::length_with_unit(length.in_millimetres(), unit));
        format!(
            "It takes {needed} across, and {printable} can be printed on: turn the paper, or take a larger sheet"
        )
    }
}

/// A drawing and the scale at which it lies on paper.
#[derive(Debug, Clone, PartialEq)]
pub struct ScaledDrawing {
    /// The drawing, with [`PIXELS_PER_MILLIMETRE`].
    pub drawing: Drawing,
    /// Its scale.
    pub scale: Scale,
}

impl Drawing {
    /// Width on paper.
    #[must_use]
    pub fn paper_width(&self) -> Length {
        Length::millimetres(self.width / PIXELS_PER_MILLIMETRE)
    }

    /// Height on paper.
    #[must_use]
    pub fn paper_height(&self) -> Length {
        Length::millimetres(self.height / PIXELS_PER_MILLIMETRE)
    }
}
