//! Edits that keep a path symmetric: what is done to one part is done to its images.

use super::around::part_angle;
use super::{Arm, DrawnArc, DrawnPath, Joint, Node, Stretch, StretchKind};
use crate::quantity::{Direction, Point};

/// What an outline is kept alike with while it is edited.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Symmetry {
    /// Nothing.
    Free,
    /// Its mirror image, left and right of the upright through the lead axis.
    LeftRight,
    /// Its mirror image, above and below the level through the lead axis.
    UpDown,
    /// Itself, turned by such a part of a whole turn about the lead axis; 2 or more.
    Turns(u32),
}

/// One change of a path.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Edit {
    /// A node is moved, with its arms.
    ShiftNode(usize, Point),
    /// The end of an arm of a node is moved.
    ShiftArm(usize, Arm, Point),
    /// A node is put on a stretch, at a share of its way.
    AddNode(usize, f64),
    /// A node is taken out.
    RemoveNode(usize),
    /// A stretch becomes of another kind.
    Bend(usize, StretchKind),
    /// A stretch is drawn so that its middle comes to a point.
    Pull(usize, Point),
    /// A joint becomes smooth or a corner.
    Join(usize, Joint),
}

/// How near a node lies to an axis to count as on it, and to the image of another, mm.
pub(super) const SAME: f64 = 1e-6;
/// How near to an axis a node may be moved that does not lie on it, mm.
const BESIDE: f64 = 0.05;

impl Symmetry {
    /// The ones that can be chosen.
    pub const ALL: [Self; 8] = [
        Self::Free,
        Self::LeftRight,
        Self::UpDown,
        Self::Turns(2),
        Self::Turns(3),
        Self::Turns(4),
        Self::Turns(5),
        Self::Turns(6),
    ];

    /// The words for it.
    #[must_use]
    pub fn label(self) -> String {
        match self {
            Self::Free => "None".to_owned(),
            Self::LeftRight => "Left and right".to_owned(),
            Self::UpDown => "Above and below".to_owned(),
            Self::Turns(parts) => format!("Turned, {parts}-fold"),
        }
    }
}

impl DrawnPath {
    /// The path after an edit, with what the symmetry asks for done to its images.
    ///
    /// A path that is not symmetric becomes so: the part that was edited is kept. Nodes on the line of
    /// a mirror stay on it, and others on their side.
    ///
    /// ```
    /// use solver::{DrawnPath, Edit, Point, Symmetry};
    /// let path = DrawnPath::read("M4 4 L0 4 L-4 4 L-4 -4 L0 -4 L4 -4 Z").unwrap();
    /// let edit = Edit::ShiftNode(0, Point { x: 5.0, y: -4.0 });
    /// let wider = path.edited(edit, Symmetry::LeftRight);
    /// assert_eq!((wider.nodes()[0].at.x, wider.nodes()[2].at.x), (5.0, -5.0));
    /// ```
    #[must_use]
    pub fn edited(&self, edit: Edit, symmetry: Symmetry) -> Self {
        match symmetry {
            Symmetry::Free => self.changed(edit),
            Symmetry::LeftRight => self.edited_beside(edit),
            Symmetry::UpDown => {
                // What is above is to the right, once it is turned.
                let turned = match edit {
                    Edit::ShiftNode(node, to) => Edit::ShiftNode(node, quarter_back(to)),
                    Edit::ShiftArm(node, arm, to) => Edit::ShiftArm(node, arm, quarter_back(to)),
                    Edit::Pull(stretch, to) => Edit::Pull(stretch, quarter_back(to)),
                    other => other,
                };
                let edited = self.turned_by(Direction::DOWN, -90.0).edited_beside(turned);
                edited.turned_by(Direction::UP, 90.0)
            }
            Symmetry::Turns(parts) => self.edited_around(edit, parts.max(2)),
        }
    }

    /// The path made symmetric: the right half, the upper one, or the part that begins with its first
    /// node, is kept.
    #[must_use]
    pub fn made(&self, symmetry: Symmetry) -> Self {
        match symmetry {
            Symmetry::Free => self.clone(),
            Symmetry::LeftRight => self.mirrored_from(1.0),
            Symmetry::UpDown => {
                let turned = self.turned_by(Direction::DOWN, -90.0).mirrored_from(1.0);
                turned.turned_by(Direction::UP, 90.0)
            }
            Symmetry::Turns(parts) => self.made_around(parts.max(2)),
        }
    }

    /// Whether it is symmetric already: whether every node has its image, to a millionth of a
    /// millimetre.
    #[must_use]
    pub fn is(&self, symmetry: Symmetry) -> bool {
        let image = |point: Point| match symmetry {
            Symmetry::Free => point,
            Symmetry::LeftRight => mirror(point),
            Symmetry::UpDown => Point {
                y: 0.0 - point.y,
                ..point
            },
            Symmetry::Turns(parts) => point.turned(part_angle(parts.max(2), 1).direction()),
        };
        self.nodes.iter().all(|node| {
            let image = image(node.at);
            let mut others = self.nodes.iter();
            others.any(|other| image.distance(other.at).in_millimetres() <= SAME)
        })
    }

    pub(super) fn changed(&self, edit: Edit) -> Self {
        let mut path = self.clone();
        match edit {
            Edit::ShiftNode(node, to) => path.shift_node(node, to),
            Edit::ShiftArm(node, arm, to) => path.shift_arm(node, arm, to),
            Edit::AddNode(stretch, share) => {
                path.add_node(stretch, share);
            }
            Edit::RemoveNode(node) => {
                path.remove_node(node);
            }
            Edit::Bend(stretch, kind) => path.bend(stretch, kind),
            Edit::Pull(stretch, to) => path.pull(stretch, to),
            Edit::Join(node, joint) => path.join(node, joint),
        }
        path
    }

    fn edited_beside(&self, edit: Edit) -> Self {
        let x = |node: usize| self.nodes.get(node).map_or(0.0, |node| node.at.x);
        let (edit, side) = match edit {
            Edit::ShiftNode(node, to) => {
                let from = x(node);
                let kept = if from.abs() <= SAME {
                    0.0
                } else {
                    from.signum() * (to.x * from.signum()).max(BESIDE)
                };
                (Edit::ShiftNode(node, Point { x: kept, ..to }), from)
            }
            Edit::ShiftArm(node, arm, to) => {
                // An arm on the line of the mirror has its image on the other side.
                let on_line = x(node).abs() <= SAME;
                let side = self.arm(node, arm).map_or(0.0, |end| end.x);
                (edit, if on_line { side + to.x } else { x(node) })
            }
            Edit::AddNode(stretch, share) => {
                (edit, self.along(stretch, share).map_or(0.0, |at| at.x))
            }
            Edit::Bend(stretch, _) | Edit::Pull(stretch, _) => {
                (edit, self.along(stretch, 0.5).map_or(0.0, |at| at.x))
            }
            Edit::RemoveNode(node) | Edit::Join(node, _) => (edit, x(node)),
        };
        self.changed(edit).mirrored_from(side)
    }

    /// The half on one side of the upright through the axis, with its mirror image for the other.
    fn mirrored_from(&self, side: f64) -> Self {
        let mut path = self.clone();
        path.cut_at_upright();
        let on_line = |node: &&Node| node.at.x == 0.0;
        let ends = || path.nodes.iter().filter(on_line);
        let upper = ends().max_by(|one, other| one.at.y.total_cmp(&other.at.y));
        let lower = ends().min_by(|one, other| one.at.y.total_cmp(&other.at.y));
        let place = |end: Option<&Node>| path.nodes.iter().position(|node| Some(node) == end);
        let (Some(upper), Some(lower)) = (place(upper), place(lower)) else {
            return self.clone();
        };
        if upper == lower {
            return self.clone();
        }
        let run = |from: usize, to: usize| {
            let mut run = Vec::new();
            let mut at = from;
            while at != to {
                run.push(at);
                at = path.after(at);
            }
            run
        };
        let lean = |run: &[usize]| {
            let xs = run.iter().flat_map(|k| {
                let middle = path.along(*k, 0.5).map_or(0.0, |at| at.x);
                [path.nodes[*k].at.x, middle]
            });
            xs.sum::<f64>()
        };
        let (one, other) = (run(lower, upper), run(upper, lower));
        let wanted = if side < 0.0 { -1.0 } else { 1.0 };
        let (kept, end) = if lean(&one) * wanted >= lean(&other) * wanted {
            (one, upper)
        } else {
            (other, lower)
        };
        let mut nodes: Vec<Node> = kept.iter().map(|k| path.nodes[*k]).collect();
        let mut at = path.nodes[end].at;
        for k in kept.iter().rev() {
            let node = path.nodes[*k];
            let onward = match node.onward {
                Stretch::Line => Stretch::Line,
                Stretch::Arc(arc) => Stretch::Arc(arc.mirrored_and_reversed()),
                Stretch::Curve { first, second } => Stretch::Curve {
                    first: mirror(second),
                    second: mirror(first),
                },
            };
            nodes.push(Node { at, onward });
            at = mirror(node.at);
        }
        Self { nodes }.in_the_order_of(self)
    }

    /// Puts a node wherever it crosses the upright through the axis, exactly on it.
    fn cut_at_upright(&mut self) {
        for node in 0..self.nodes.len() {
            let at = self.nodes[node].at;
            if at.x != 0.0 && at.x.abs() <= SAME {
                self.shift_node(node, Point { x: 0.0, ..at });
            }
        }
        let mut stretch = 0;
        while stretch < self.nodes.len() {
            let (from, to) = (
                self.nodes[stretch].at.x,
                self.nodes[self.after(stretch)].at.x,
            );
            if from * to < 0.0 {
                // Halved as long as a share has bits.
                let (mut near, mut far) = (0.0, 1.0);
                for _ in 0..60 {
                    let middle = f64::midpoint(near, far);
                    let x = self.along(stretch, middle).map_or(0.0, |at| at.x);
                    if x * from > 0.0 {
                        near = middle;
                    } else {
                        far = middle;
                    }
                }
                if let Some(node) = self.add_node(stretch, far) {
                    let at = self.nodes[node].at;
                    self.shift_node(node, Point { x: 0.0, ..at });
                    stretch = node;
                }
            }
            stretch += 1;
        }
    }

    /// The same path, begun where its nodes are nearest to those of another, where it has as many.
    fn in_the_order_of(mut self, other: &Self) -> Self {
        /// Of more nodes only so many are held against each other.
        const MOST: usize = 40;
        let whole = self.nodes.len();
        if whole != other.nodes.len() {
            return self;
        }
        let miss = |shift: &usize| {
            let pairs = (0..whole.min(MOST)).map(|k| {
                let one = self.nodes[(k + shift) % whole].at;
                one.distance(other.nodes[k].at).in_millimetres()
            });
            pairs.sum::<f64>()
        };
        let best = (0..whole).min_by(|one, other| miss(one).total_cmp(&miss(other)));
        self.nodes.rotate_left(best.unwrap_or(0));
        self
    }

    /// The path turned about the axis by an angle whose direction is given too.
    fn turned_by(&self, turn: Direction, degrees: f64) -> Self {
        let nodes = self.nodes.iter().map(|node| Node {
            at: node.at.turned(turn),
            onward: match node.onward {
                Stretch::Line => Stretch::Line,
                Stretch::Arc(arc) => Stretch::Arc(turned_arc(arc, degrees)),
                Stretch::Curve { first, second } => Stretch::Curve {
                    first: first.turned(turn),
                    second: second.turned(turn),
                },
            },
        });
        Self {
            nodes: nodes.collect(),
        }
    }
}

fn quarter_back(point: Point) -> Point {
    point.turned(Direction::DOWN)
}

fn mirror(point: Point) -> Point {
    Point {
        x: 0.0 - point.x,
        y: point.y,
    }
}

/// A circle is as it was, however it is turned.
pub(super) fn turned_arc(arc: DrawnArc, degrees: f64) -> DrawnArc {
    let rotation = if arc.is_circular() {
        arc.rotation
    } else {
        // Half a turn brings an ellipse back.
        (arc.rotation + degrees) % 180.0
    };
    DrawnArc { rotation, ..arc }
}
