//! What to mind before a machine is set by these numbers.

use crate::feed::{FeedProblem, KnifeMarks};
use crate::figure;
use crate::knife::{Blade, Knife};
use crate::layout::Layout;
use crate::tooling::HeadKind;

/// Something to mind.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Caution {
    /// A check of the layout fails.
    ChecksFail,
    /// Numbers are for planning.
    Planning,
    /// The marked speed.
    MarkedSpeed,
    /// Guards and power.
    Guards,
    /// Dust.
    Dust,
    /// Coats and leads for children.
    Children,
    /// A knife has upright sides.
    Rubbing {
        /// The knife.
        blade: Blade,
        /// Its sides that need clearance, of one pencil.
        sides: usize,
    },
    /// The marks of a head are farther apart than those of a good finish.
    CoarseMarks {
        /// The head.
        head: HeadKind,
        /// Its marks in an inch.
        per_inch: f64,
    },
    /// A head leaves wood uncut.
    WoodLeftUncut {
        /// The head.
        head: HeadKind,
    },
}

impl Caution {
    /// Marks in an inch that a good finish has at least; a trade journal's rule.
    pub const FINE_MARKS: f64 = 20.0;

    pub(super) fn of(
        layout: &Layout,
        knives: &[Knife],
        marks: &[Result<KnifeMarks, FeedProblem>; 3],
    ) -> Vec<Self> {
        let mut cautions = Vec::new();
        if !layout.fits() {
            cautions.push(Self::ChecksFail);
        }
        cautions.extend([Self::Planning, Self::MarkedSpeed, Self::Guards, Self::Dust]);
        cautions.push(Self::Children);
        cautions.extend(knives.iter().filter_map(|knife| {
            let (blade, sides) = (knife.blade(), knife.rubbing().len());
            (sides > 0).then_some(Self::Rubbing { blade, sides })
        }));
        for (head, marks) in HeadKind::ALL.into_iter().zip(marks) {
            match marks {
                Ok(KnifeMarks { per_inch, .. }) if *per_inch < Self::FINE_MARKS => {
                    let per_inch = *per_inch;
                    cautions.push(Self::CoarseMarks { head, per_inch });
                }
                Ok(_) => {}
                Err(_) => cautions.push(Self::WoodLeftUncut { head }),
            }
        }
        cautions
    }

    /// The words for it.
    #[must_use]
    pub fn text(self) -> String {
        match self {
            Self::ChecksFail => {
                "A check of this layout fails: mend it before a machine is set by it.".to_owned()
            }
            Self::Planning => {
                "These numbers are for planning. Local rules, the limits of the maker of the machine and licensed practice decide.".to_owned()
            }
            Self::MarkedSpeed => {
                "Never turn a head faster than is marked on it.".to_owned()
            }
            Self::Guards => {
                "Guards on; lock the power out before a cutter is touched.".to_owned()
            }
            Self::Dust => {
                "Draw dust off where it arises: wood dust harms health, and that of some cedars sensitises.".to_owned()
            }
            Self::Children => {
                "Coats and leads for children need the tests of the market they are sold in.".to_owned()
            }
            Self::Rubbing { blade, sides } => format!(
                "{}: {sides} of the sides of each pencil stand too upright; grind side clearance there, or they rub and burn.",
                blade.label()
            ),
            Self::CoarseMarks { head, per_inch } => format!(
                "{}: {} knife marks in an inch; a good finish has at least {}.",
                head.label(),
                figure::plain(per_inch, 1),
                figure::plain(Self::FINE_MARKS, 0)
            ),
            Self::WoodLeftUncut { head } => format!(
                "{}: the wood runs past between two knives; feed slower, or turn the head faster.",
                head.label()
            ),
        }
    }
}
