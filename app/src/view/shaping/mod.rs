//! Shaping the barrel by hand, on its drawing: its sizes, and the points of a free outline.

mod grip;
mod hand;
mod handles;
mod point_field;
mod point_table;
mod stocks;
mod tools;

pub(crate) use handles::Handles;
pub(crate) use point_table::PointTable;
pub(crate) use stocks::StockTable;
pub(crate) use tools::OutlineTools;

use super::drawing_sheet::SheetSize;
use crate::workbench::Workbench;
use grip::Grip;
use hand::Held;
use leptos::prelude::*;
use solver::{
    Barrel, BarrelDraft, Drawing, DrawnPath, EndView, Id, NodeMarks, Shape, SizeHandle, Symmetry,
    draw_end_view, draw_nodes,
};

/// The barrel that is shaped, and what of it is in the hand. A handle: copies share it.
#[derive(Clone, Copy)]
pub(crate) struct Shaping {
    bench: Workbench,
    /// The barrel of the project, or the last good one and that it is no longer what is asked.
    pub(crate) barrel: Memo<Option<(Barrel, bool)>>,
    /// Its drawing, and where it lies there.
    drawn: Memo<Option<(Drawing, EndView)>>,
    /// The path of a free outline round the lead axis.
    path: Memo<Option<DrawnPath>>,
    /// The points of that path on the drawing.
    marks: Memo<Option<NodeMarks>>,
    /// The handles of its sizes.
    handles: Memo<Vec<SizeHandle>>,
    held: RwSignal<Option<Held>>,
    /// The point that the tools work on.
    chosen: RwSignal<usize>,
    symmetry: RwSignal<Symmetry>,
}

impl Shaping {
    /// The barrel of the layout on a sheet.
    pub(crate) fn new(bench: Workbench, size: SheetSize) -> Self {
        let held = RwSignal::new(None::<Held>);
        let draft = Memo::new(move |_| draft_of(bench));
        let barrel = Memo::new(move |last: Option<&Option<(Barrel, bool)>>| {
            let draft = draft.read();
            match draft.as_ref()?.check() {
                Ok(barrel) => Some((barrel, false)),
                Err(_) => last.cloned().flatten().map(|(barrel, _)| (barrel, true)),
            }
        });
        // What is in the hand stays where it is taken hold of.
        let view = Memo::new(move |_| held.with(|held| held.as_ref().map(Held::view)));
        let drawn = Memo::new(move |_| {
            let (sheet, view) = (size.sheet(bench)?, view.get());
            let barrel = barrel.read();
            let (barrel, _) = barrel.as_ref()?;
            Some(draw_end_view(barrel, &sheet, view))
        });
        let path = Memo::new(move |last: Option<&Option<DrawnPath>>| {
            let draft = draft.read();
            let draft = draft.as_ref().filter(|draft| draft.shape == Shape::Free)?;
            // A point in the hand is not taken away, whatever becomes of the path.
            let last = || held.with(|held| held.as_ref().and_then(|_| last.cloned().flatten()));
            draft.drawn_path().or_else(last)
        });
        let marks = Memo::new(move |_| {
            let (path, drawn) = (path.read(), drawn.read());
            Some(draw_nodes(path.as_ref()?, &drawn.as_ref()?.1))
        });
        let handles = Memo::new(move |_| {
            let handles = draft.with(|draft| draft.as_ref().map(BarrelDraft::handles));
            let handles = handles.unwrap_or_default();
            if handles.is_empty() {
                held.with(|held| held.as_ref().map(Held::handles).unwrap_or_default())
            } else {
                handles
            }
        });
        let (chosen, symmetry) = (RwSignal::new(0), RwSignal::new(Symmetry::Free));
        // Another barrel is not made symmetric unasked.
        let id = Memo::new(move |_| bench.project().read().layout.barrel);
        Effect::new(move |_| {
            id.track();
            chosen.set(0);
            symmetry.set(Symmetry::Free);
        });
        Self {
            bench,
            barrel,
            drawn,
            path,
            marks,
            handles,
            held,
            chosen,
            symmetry,
        }
    }

    /// The drawing alone.
    pub(crate) fn drawing(&self) -> Memo<Option<Drawing>> {
        let drawn = self.drawn;
        Memo::new(move |_| drawn.with(|drawn| drawn.as_ref().map(|(drawing, _)| drawing.clone())))
    }

    /// Whether the drawing no longer shows what is asked.
    pub(crate) fn stale(&self) -> Signal<bool> {
        let barrel = self.barrel;
        Signal::derive(move || {
            barrel.with(|barrel| barrel.as_ref().is_some_and(|(_, stale)| *stale))
        })
    }

    /// The barrel of the layout, as it stands in the project.
    fn draft(&self) -> Option<BarrelDraft> {
        let bench = self.bench;
        untrack(|| draft_of(bench))
    }

    fn id(&self) -> Id {
        self.bench.project().read_untracked().layout.barrel
    }

    /// What can be taken in the hand, in the order of the tabulator.
    fn grips(&self) -> Vec<Grip> {
        let sizes = self.handles.with(|handles| {
            let fields = handles.iter().map(|handle| Grip::Size(handle.field));
            fields.collect::<Vec<_>>()
        });
        let points = self.marks.with(|marks| {
            let marks = marks.iter();
            let of_one = marks.flat_map(|marks| {
                let middles = (0..marks.nodes.len()).map(Grip::Middle);
                let ends = marks.ends.iter().map(|end| Grip::Arm(end.node, end.arm));
                let nodes = (0..marks.nodes.len()).map(Grip::Node);
                middles.chain(ends).chain(nodes)
            });
            of_one.collect::<Vec<_>>()
        });
        sizes.into_iter().chain(points).collect()
    }

    /// Where a grip stands on the sheet, px.
    fn place(&self, grip: Grip) -> Option<(f64, f64)> {
        match grip {
            Grip::Size(field) => {
                let (handles, drawn) = (self.handles.read(), self.drawn.read());
                let handle = handles.iter().find(|handle| handle.field == field)?;
                Some(drawn.as_ref()?.1.place(handle.at))
            }
            Grip::Node(node) => Some(self.marks.read().as_ref()?.nodes.get(node)?.at),
            Grip::Middle(stretch) => Some(self.marks.read().as_ref()?.nodes.get(stretch)?.middle),
            Grip::Arm(node, arm) => {
                let marks = self.marks.read();
                let mut ends = marks.as_ref()?.ends.iter();
                let end = ends.find(|end| (end.node, end.arm) == (node, arm))?;
                Some(end.at)
            }
        }
    }
}

fn draft_of(bench: Workbench) -> Option<BarrelDraft> {
    let project = bench.project();
    let project = project.read();
    let at = project.barrel_place(project.layout.barrel)?;
    Some(project.barrels[at].draft.clone())
}
