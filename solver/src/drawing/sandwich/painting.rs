//! The paths of a sandwich, from the slats up to the centre lines.

use super::Artist;
use crate::drawing::axis::{evenly, thinned};
use crate::drawing::path::{Path, View};
use crate::drawing::{Grade, Label, Shape, Style};
use crate::layout::{Outcome, Rule, Setup, WoodClass};
use crate::outline::Outline;
use crate::quantity::{Angle, Direction, Length};
use std::f64::consts::FRAC_1_SQRT_2;

/// Which view is painted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Scene<'a> {
    Whole,
    Detail,
    /// The whole width with the grade of each pencil.
    Graded(&'a [Grade]),
}

impl Scene<'_> {
    /// The grade of a pencil, where the view shows one.
    fn grade(self, pencil: usize) -> Option<Grade> {
        match self {
            Scene::Graded(grades) => grades.get(pencil).copied(),
            Scene::Whole | Scene::Detail => None,
        }
    }
}

impl Artist<'_> {
    /// Paints slats, pencils and, where the layout fits, the wood that goes to waste.
    pub(super) fn paint(
        &mut self,
        view: &View,
        centres: &[Length],
        shown: Length,
        scene: Scene<'_>,
    ) {
        let Setup {
            barrel,
            top: upper,
            bottom: lower,
            rules,
            ..
        } = *self.setup;
        let layout = self.layout;
        let (top_end, bottom_end) = (upper.width().min(shown), lower.width().min(shown));
        for (slat, end, face) in [
            (upper, top_end, upper.thickness()),
            (lower, bottom_end, -lower.thickness()),
        ] {
            let path = if end < slat.width() {
                // A slat that goes on beyond the view has no edge there.
                let (start, end) = (view.x(Length::ZERO), view.x(end));
                let (seam, face) = (view.y(Length::ZERO), view.y(face));
                Path::new().run(&[(end, seam), (start, seam), (start, face), (end, face)])
            } else {
                Path::new().rectangle(view, Length::ZERO, Length::ZERO, end, face)
            };
            self.add(Style::Slat, path);
        }
        if layout.fits() {
            self.paint_waste(view, centres, top_end, bottom_end, scene);
        }
        let clash = layout.checks().iter().any(|check| {
            let sizes = matches!(
                check.rule,
                Rule::Width | Rule::Edge | Rule::Land | Rule::TopThickness | Rule::BottomThickness
            );
            sizes && check.outcome == Outcome::Failed
        });
        let seam_end = top_end.min(bottom_end);
        // What all pencils have alike is one path; each outline is one of its own.
        let of = |centres: &[Length], draw: &dyn Fn(Path, &View) -> Path| {
            centres.iter().fold(Path::new(), |path, &centre| {
                draw(path, &view.at(centre, rules.axis_height))
            })
        };
        let of_all = |draw: &dyn Fn(Path, &View) -> Path| of(centres, draw);
        // What is lost is not hatched, so that its mark can be seen.
        let sound = |k: &usize| matches!(scene.grade(*k), None | Some(Grade::Sound));
        let hatched: Vec<Length> = (0..centres.len())
            .filter(sound)
            .map(|k| centres[k])
            .collect();
        let level = -rules.axis_height;
        let halves = [
            (
                Style::TopHalf,
                of(&hatched, &|path, pencil| {
                    path.above(pencil, layout.bare(), level)
                }),
            ),
            (
                Style::BottomHalf,
                of(&hatched, &|path, pencil| {
                    path.below(pencil, layout.bare(), level)
                }),
            ),
        ];
        for (style, path) in halves {
            self.add(style, path);
        }
        self.add(
            Style::Seam,
            Path::new().run(&[
                (view.x(Length::ZERO), view.origin.y),
                (view.x(seam_end), view.origin.y),
            ]),
        );
        let grooves = of_all(&|path, pencil| path.groove(pencil, layout.groove_shape()));
        self.add(Style::Groove, grooves);
        let radius = barrel.lead_diameter() / 2.0;
        self.add(
            Style::Lead,
            of_all(&|path, pencil| path.circle(pencil, radius)),
        );
        if scene == Scene::Detail && barrel.coat() > Length::ZERO {
            let coats = of_all(&|path, pencil| path.outline(pencil, layout.finished()));
            self.add(Style::Coat, coats);
        }
        for (k, &centre) in centres.iter().enumerate() {
            let pencil = view.at(centre, rules.axis_height);
            let outline = Path::new().outline(&pencil, layout.bare());
            match scene.grade(k) {
                Some(grade) => {
                    let marked = marked(outline, &pencil, layout.bare(), grade);
                    self.add(Style::Graded(grade), marked);
                }
                None if clash => self.add(Style::Clash, outline),
                None => self.add(Style::Pencil, outline),
            }
        }
        self.paint_out_of_reach(view, centres);
        // Centre lines end 4 px beyond what they run through.
        let (over, under) = (
            view.y(upper.thickness()) - 4.0,
            view.y(-lower.thickness()) + 4.0,
        );
        let reach = layout.extents();
        let centre_lines = of_all(&|path, pencil| {
            let (x, y) = (pencil.origin.x, pencil.origin.y);
            let upright = path.run(&[(x, over), (x, under)]);
            match scene {
                Scene::Whole | Scene::Graded(_) => upright,
                Scene::Detail => upright.run(&[
                    (pencil.x(-reach.left) - 4.0, y),
                    (pencil.x(reach.right) + 4.0, y),
                ]),
            }
        });
        self.add(Style::Centre, centre_lines);
        if scene == Scene::Detail && shown < upper.width().max(lower.width()) {
            let (x, over, under) = (
                view.x(shown),
                view.y(upper.thickness()),
                view.y(-lower.thickness()),
            );
            self.add(Style::Break, break_line(x, over - 6.0, under + 6.0));
        }
    }

    /// Hollows that no level head reaches, and upright sides where the relief fails.
    fn paint_out_of_reach(&mut self, view: &View, centres: &[Length]) {
        /// A mark is no smaller than this, px.
        const LEAST_MARK: f64 = 4.0;
        let (layout, rules) = (self.layout, self.setup.rules);
        let failed = |rule| {
            let mut checks = layout.checks().iter();
            checks.any(|check| check.rule == rule && check.outcome == Outcome::Failed)
        };
        let undercut = layout.bare().undercut();
        let rubbing = if failed(Rule::Relief) {
            rules.relief
        } else {
            Angle::ZERO
        };
        for &centre in centres {
            let mut path = Path::new();
            if let Some(undercut) = undercut {
                let (x, y) = (
                    Length::millimetres(undercut.at.x),
                    Length::millimetres(undercut.at.y),
                );
                let mark = (undercut.depth / 2.0).max(Length::millimetres(LEAST_MARK / view.scale));
                path = path.circle(&view.at(centre + x, rules.axis_height + y), mark);
            }
            let pencil = view.at(centre, rules.axis_height);
            for side in layout.bare().sides_within(rubbing) {
                path = path.side(&pencil, side);
            }
            self.add(Style::OutOfReach, path);
        }
    }

    /// The classes of waste, for a layout that fits.
    fn paint_waste(
        &mut self,
        view: &View,
        centres: &[Length],
        top_end: Length,
        bottom_end: Length,
        scene: Scene<'_>,
    ) {
        let Setup {
            top: upper,
            bottom: lower,
            rules,
            ..
        } = *self.setup;
        let extents = self.layout.extents();
        let (over, under) = (
            rules.axis_height + extents.up,
            rules.axis_height - extents.down,
        );
        let (first, last) = (
            centres[0] - extents.left,
            centres[centres.len() - 1] + extents.right,
        );
        let faces = Path::new()
            .rectangle(view, Length::ZERO, over, top_end, upper.thickness())
            .rectangle(view, Length::ZERO, -lower.thickness(), bottom_end, under);
        self.add(Style::Wood(WoodClass::Faces), faces);
        let mut edges = Path::new().rectangle(view, Length::ZERO, under, first, over);
        let mut parting = Path::new();
        match scene {
            Scene::Whole | Scene::Graded(_) => {
                edges = edges
                    .rectangle(view, last, Length::ZERO, top_end, over)
                    .rectangle(view, last, under, bottom_end, Length::ZERO);
            }
            Scene::Detail => {
                parting = parting.rectangle(view, last, under, top_end.min(bottom_end), over)
            }
        }
        for pair in centres.windows(2) {
            parting = parting.rectangle(
                view,
                pair[0] + extents.right,
                under,
                pair[1] - extents.left,
                over,
            );
        }
        self.add(Style::Wood(WoodClass::Edges), edges);
        self.add(Style::Wood(WoodClass::Parting), parting);
        let mut corners = Path::new();
        for &centre in centres {
            let pencil = view.at(centre, rules.axis_height);
            corners = corners.rectangle(
                view,
                centre - extents.left,
                under,
                centre + extents.right,
                over,
            );
            corners = corners.outline(&pencil, self.layout.bare());
        }
        self.add(Style::Wood(WoodClass::Corners), corners);
    }

    /// Numbers over the grooves: all, or the first, the last and some between where they crowd.
    pub(super) fn number_grooves(&mut self, view: &View, y: f64) {
        let grooves = self.layout.grooves().iter();
        let labels: Vec<Label> = grooves
            .map(|groove| Label {
                x: view.x(groove.centre),
                y,
                text: groove.number.to_string(),
            })
            .collect();
        let order = evenly(&labels, &[0, labels.len().saturating_sub(1)]);
        self.labels.extend(thinned(labels, &order, &[]));
    }

    fn add(&mut self, style: Style, path: Path) {
        let path = path.done();
        if !path.is_empty() {
            self.shapes.push(Shape { style, path });
        }
    }
}

/// The outline of a pencil with the mark of its grade: a rising stroke through the axis from side
/// to side, and a falling one.
fn marked(outline: Path, pencil: &View, bare: &Outline, grade: Grade) -> Path {
    let strokes: &[f64] = match grade {
        Grade::Sound => &[],
        Grade::Fair => &[1.0],
        Grade::Poor => &[1.0, -1.0],
    };
    strokes.iter().fold(outline, |path, slope| {
        // Turned back by the angle of the stroke, the outline is crossed by a level line.
        let turn = Direction {
            x: FRAC_1_SQRT_2,
            y: -FRAC_1_SQRT_2 * slope,
        };
        match bare.turned(turn).chord(Length::ZERO) {
            Some((from, to)) => path.run(&[from, to].map(|end| {
                let run = end * FRAC_1_SQRT_2;
                (pencil.x(run), pencil.y(run * *slope))
            })),
            None => path,
        }
    })
}

/// The zigzag that ends a partial view.
fn break_line(x: f64, from: f64, to: f64) -> Path {
    let middle = (from + to) / 2.0;
    Path::new().run(&[
        (x, from),
        (x, middle - 8.0),
        (x - 5.0, middle - 3.0),
        (x + 5.0, middle + 3.0),
        (x, middle + 8.0),
        (x, to),
    ])
}
