//! The knives that cut a layout: the edge in the section of the wood, stretched to the face of a
//! knife that stands at a hook angle in a turning head.

mod edge;
mod fit;
mod problem;
mod stretch;
#[cfg(test)]
mod tests;

pub use problem::KnifeProblem;

use crate::layout::{Layout, Setup};
use crate::outline::Segment;
use crate::quantity::{Length, Point};
use crate::tooling::{Cut, Head, HeadKind};
use edge::Section;
use stretch::Stretch;

/// Which edge of the set of a layout a knife has.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Blade {
    /// The grooves of the top slat.
    TopGrooves,
    /// The grooves of the bottom slat.
    BottomGrooves,
    /// The upper half of the pencils.
    Top,
    /// The lower half of the pencils.
    Bottom,
}

impl Blade {
    /// Every one, in the order of the work.
    pub const ALL: [Self; 4] = [
        Self::TopGrooves,
        Self::BottomGrooves,
        Self::Top,
        Self::Bottom,
    ];

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::TopGrooves => "Groove cutter, top slat",
            Self::BottomGrooves => "Groove cutter, bottom slat",
            Self::Top => "Top knife",
            Self::Bottom => "Bottom knife",
        }
    }

    /// The head it stands in.
    #[must_use]
    pub const fn head(self) -> HeadKind {
        match self {
            Self::TopGrooves | Self::BottomGrooves => HeadKind::Groove,
            Self::Top => HeadKind::Top,
            Self::Bottom => HeadKind::Bottom,
        }
    }

    /// Whether it cuts from above, as the section lies: its farthest point looks down.
    #[must_use]
    pub const fn cuts_downwards(self) -> bool {
        matches!(self, Self::BottomGrooves | Self::Top)
    }
}

/// A knife: its edge on its own face, at true size, over the whole width of the sandwich.
#[derive(Debug, Clone, PartialEq)]
pub struct Knife {
    blade: Blade,
    head: Head,
    edge: Vec<Segment>,
    section: Vec<Segment>,
    tip: Length,
    depth: Length,
    stretched: Length,
    rubbing: Vec<(Point, Point)>,
    first_ends: Length,
}

/// A joint of an edge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct KnifePoint {
    /// From the datum edge of the slats.
    pub across: Length,
    /// Above the farthest point of the edge, square to the table: as the wood is cut.
    pub height: Length,
    /// Above the farthest point of the edge, on the face of the knife: as the knife is ground.
    pub on_face: Length,
    /// Radius of the arc to the next joint, on the face; none where a straight line leads there.
    pub radius: Option<Length>,
}

impl Knife {
    /// How far the fitted edge may lie from the true one, mm.
    pub const TOLERANCE: Length = Length::millimetres(1e-4);

    /// Which edge it has.
    #[must_use]
    pub const fn blade(&self) -> Blade {
        self.blade
    }

    /// The head it stands in.
    #[must_use]
    pub const fn head(&self) -> &Head {
        &self.head
    }

    /// The edge on the face of the knife, from the datum edge across: x from the datum edge, y from
    /// the farthest point of the edge, as the section lies. A knife that cuts downwards has its edge
    /// at y ≥ 0, one that cuts upwards at y ≤ 0.
    ///
    /// Joints are exact, straight lines stay straight where they are level or upright, and other
    /// pieces are lines and smooth arcs within [`TOLERANCE`](Self::TOLERANCE).
    #[must_use]
    pub fn edge(&self) -> &[Segment] {
        &self.edge
    }

    /// The edge as it cuts the wood, square to the table, in the section of the sandwich: x from the
    /// datum edge, y from the glue plane.
    #[must_use]
    pub fn section(&self) -> &[Segment] {
        &self.section
    }

    /// Height of the farthest point of the edge above the glue plane.
    #[must_use]
    pub const fn tip(&self) -> Length {
        self.tip
    }

    /// Depth of the edge square to the table, from its farthest point to its nearest.
    #[must_use]
    pub const fn depth(&self) -> Length {
        self.depth
    }

    /// The same depth on the face of the knife.
    #[must_use]
    pub const fn stretched_depth(&self) -> Length {
        self.stretched
    }

    /// Sides of the first pencil, and of the land behind it where that slopes, that stand upright or lean
    /// less than the relief of the rules: there the flank of the knife needs side clearance. The others follow at the pitch. Ends are in the
    /// section of the sandwich: x from the datum edge, y from the glue plane.
    #[must_use]
    pub fn rubbing(&self) -> &[(Point, Point)] {
        &self.rubbing
    }

    /// The joints of the edge from the datum edge to halfway between the first pencil and the second:
    /// the others follow at the pitch.
    #[must_use]
    pub fn pencil_points(&self) -> Vec<KnifePoint> {
        let mut points = self.points();
        points.retain(|point| point.across <= self.first_ends);
        points
    }

    /// Every joint of the edge, from the datum edge across.
    #[must_use]
    pub fn points(&self) -> Vec<KnifePoint> {
        let stretch = Stretch::new(&self.head);
        let sign = if self.blade.cuts_downwards() {
            1.0
        } else {
            -1.0
        };
        let point = |at: Point, radius| {
            let on_face = Length::millimetres(at.y * sign);
            KnifePoint {
                across: Length::millimetres(at.x),
                height: stretch.height(on_face),
                on_face,
                radius,
            }
        };
        let starts = self.edge.iter().map(|piece| {
            let radius = match piece {
                Segment::Line(_) => None,
                Segment::Arc(arc) => Some(Length::millimetres(arc.radius.abs())),
            };
            point(piece.start(), radius)
        });
        let end = self.edge.last().map(|piece| point(piece.end(), None));
        starts.chain(end).collect()
    }
}

/// Depth on the face of a knife of a point that lies a depth d above its farthest one, square to
/// the table:
///
/// K = √(R² − e²) − √((R − d)² − e²), with e = R·sin γ,
///
/// where R is the cutting radius at the farthest point of the edge, the deepest cut, and γ the hook
/// angle there. The face is a plane at the distance e from the axis of the head. Derived in plane
/// geometry; valid for 0 ≤ d < R·(1 − sin γ), and nothing beyond.
///
/// ```
/// use solver::{HeadDraft, Length, knife_stretch};
/// let head = HeadDraft::new().check().unwrap(); // R 62.5, γ 20°
/// let depth = knife_stretch(&head, Length::millimetres(3.5)).unwrap();
/// assert!((depth.in_millimetres() - 3.7394).abs() < 5e-5);
/// ```
#[must_use]
pub fn knife_stretch(head: &Head, depth: Length) -> Option<Length> {
    let stretch = Stretch::new(head);
    (depth >= Length::ZERO && depth < stretch.most()).then(|| stretch.on_face(depth))
}

/// The knives of a layout, in the order of the work: groove cutters of both slats, top knife, bottom
/// knife. A slat that no groove reaches has no groove cutter.
///
/// `heads` are those of [`HeadKind::ALL`]. Beside each pencil a shaping knife cuts past the point
/// where the halves of the pencil part, by the overcut, and leans away from the pencil there by the
/// draft; from one pencil to the next it runs straight, sloping where a lopsided pencil parts at two
/// heights, and outside the outer ones level. The groove
/// cutters leave the glue plane as it is and are level there. All lie as in the section of the glued
/// sandwich; a top slat that is grooved face up is turned end over end, so that its datum edge stays
/// on the fence.
///
/// # Errors
/// Everything that keeps any of them from being made.
///
/// ```
/// use solver::{BarrelDraft, Blade, CutDraft, HeadDraft, RulesDraft, Seam, Setup, Shape, SlatDraft, knives, lay_out};
/// let barrel = BarrelDraft::new("Office", Shape::Round).check().unwrap(); // bare 7.14
/// let slat = SlatDraft::new("74 × 5").check().unwrap();
/// let rules = RulesDraft::new().check().unwrap();
/// let setup = Setup { barrel: &barrel, turn: barrel.turn(Seam::AnyWay), top: &slat, bottom: &slat, rules: &rules };
/// let head = HeadDraft::new().check().unwrap();
/// let cut = CutDraft::new().check().unwrap();
/// let set = knives(&setup, &lay_out(&setup), &[head; 3], &cut).unwrap();
/// assert_eq!(set.len(), 4);
/// // Half the pencil and the overcut: 3.57 + 0.2.
/// assert!((set[2].depth().in_millimetres() - 3.77).abs() < 1e-9);
/// assert_eq!(set[2].blade(), Blade::Top);
/// ```
pub fn knives(
    setup: &Setup<'_>,
    layout: &Layout,
    heads: &[Head; 3],
    cut: &Cut,
) -> Result<Vec<Knife>, Vec<KnifeProblem>> {
    if layout.across() == 0 {
        return Err(vec![KnifeProblem::NoPencils]);
    }
    let mut problems = Vec::new();
    let mut sections = Vec::new();
    match edge::grooves(setup, layout) {
        Ok(grooves) => sections.extend(grooves),
        Err(problem) => problems.push(problem),
    }
    if let Some(undercut) = layout.bare().undercut() {
        problems.push(KnifeProblem::Undercut(undercut));
    } else {
        match edge::shaping(setup, layout, cut) {
            Ok(shaping) => sections.extend(shaping),
            Err(problem) => problems.push(problem),
        }
    }
    let first = layout.grooves().first();
    let first_ends = first.map_or(Length::ZERO, |groove| groove.centre) + layout.pitch() / 2.0;
    let mut knives = Vec::new();
    for section in sections {
        let head = heads[section.blade.head() as usize];
        match ground(section, head, first_ends) {
            Ok(knife) => knives.push(knife),
            Err(problem) => problems.push(problem),
        }
    }
    if problems.is_empty() {
        Ok(knives)
    } else {
        Err(problems)
    }
}

/// The knife that cuts a section.
fn ground(section: Section, head: Head, first_ends: Length) -> Result<Knife, KnifeProblem> {
    let (tip, nearest) = section.reach();
    let Section {
        blade,
        pieces,
        rubbing,
    } = section;
    let stretch = Stretch::new(&head);
    let depth = Length::millimetres((nearest - tip).abs());
    let tip = Length::millimetres(tip);
    let most = stretch.most();
    if depth >= most {
        let (radius, hook) = (head.radius(), head.hook());
        return Err(KnifeProblem::DeeperThanHead {
            blade,
            depth,
            most,
            radius,
            hook,
        });
    }
    let edge = pieces
        .iter()
        .flat_map(|piece| fit::stretched(piece, tip, blade.cuts_downwards(), &stretch))
        .collect();
    Ok(Knife {
        blade,
        head,
        edge,
        section: pieces,
        tip,
        depth,
        stretched: stretch.on_face(depth),
        rubbing,
        first_ends,
    })
}
