//! A grip in somebody's hand: pressed, moved and let go by mouse, finger or pen, or moved by keys.

use super::{Grip, Shaping};
use leptos::prelude::*;
use solver::{BarrelDraft, DrawnPath, Edit, EndView, Field, Point, Shape, SizeHandle, Snap};
use wasm_bindgen::JsCast;
use web_sys::{Event, FocusOptions, HtmlElement, KeyboardEvent, PointerEvent};

/// What is in the hand, and how everything was when it was taken.
#[derive(Debug, Clone)]
pub(super) struct Held {
    grip: Grip,
    pointer: i32,
    /// Where the pointer was pressed, px of the window.
    pressed: (f64, f64),
    /// Where the grip stood, px of the sheet.
    from: (f64, f64),
    view: EndView,
    draft: BarrelDraft,
    /// Whether it has been moved.
    moved: bool,
}

/// A pointer that trembles moves nothing, px.
const TREMBLE: f64 = 2.0;
/// From how near others draw a point to their height and width, px.
const DRAWS: f64 = 6.0;

impl Held {
    pub(super) const fn view(&self) -> EndView {
        self.view
    }

    pub(super) fn handles(&self) -> Vec<SizeHandle> {
        self.draft.handles()
    }
}

impl Shaping {
    pub(super) fn is_held(&self, grip: Grip) -> bool {
        self.held
            .with(|held| held.as_ref().is_some_and(|held| held.grip == grip))
    }

    pub(super) fn press(&self, grip: Grip, event: &PointerEvent) {
        const MAIN_BUTTON: i16 = 0;
        if !event.is_primary() || event.button() != MAIN_BUTTON {
            return;
        }
        let from = untrack(|| self.place(grip));
        let view = self
            .drawn
            .with_untracked(|drawn| drawn.as_ref().map(|(_, view)| *view));
        let (Some(from), Some(view), Some(draft), Some(element)) =
            (from, view, self.draft(), element_of(event))
        else {
            return;
        };
        event.prevent_default();
        let options = FocusOptions::new();
        options.set_prevent_scroll(true);
        // Without focus it still moves; without capture it stops at its own edge.
        let _ = element.focus_with_options(&options);
        let _ = element.set_pointer_capture(event.pointer_id());
        self.bench.leave_field();
        self.choose(grip);
        self.held.set(Some(Held {
            grip,
            pointer: event.pointer_id(),
            pressed: (f64::from(event.client_x()), f64::from(event.client_y())),
            from,
            view,
            draft,
            moved: false,
        }));
    }

    pub(super) fn drag(&self, event: &PointerEvent) {
        let wanted = self.held.try_update_untracked(|held| {
            let held = held
                .as_mut()
                .filter(|held| held.pointer == event.pointer_id())?;
            let (x, y) = (
                f64::from(event.client_x()) - held.pressed.0,
                f64::from(event.client_y()) - held.pressed.1,
            );
            held.moved |= x.abs().max(y.abs()) >= TREMBLE;
            let point = held.view.point(held.from.0 + x, held.from.1 + y);
            held.moved.then(|| (held.clone(), point))
        });
        if let Some((held, point)) = wanted.flatten() {
            let reach = held.view.length(DRAWS);
            let snap = self.snap(event.shift_key(), reach);
            match held.grip {
                Grip::Size(field) => {
                    let handles = held.draft.handles();
                    if let Some(handle) = handles.iter().find(|handle| handle.field == field) {
                        self.put_size(field, handle.value_at(point, &snap));
                    }
                }
                grip => {
                    if let Some(path) = held.draft.drawn_path() {
                        let others = match grip {
                            Grip::Node(node) => path.others(node),
                            _ => Vec::new(),
                        };
                        self.put_point(grip, &path, snap.place(point, &others));
                    }
                }
            }
        }
    }

    /// Lets go; says whether this pointer held anything.
    pub(super) fn release(&self, event: &PointerEvent) -> bool {
        // The place may have been left with something in the hand.
        let holds = self.held.try_with_untracked(|held| {
            held.as_ref()
                .is_some_and(|held| held.pointer == event.pointer_id())
        });
        let holds = holds.unwrap_or(false);
        if holds {
            self.held.set(None);
        }
        holds
    }

    /// Takes back what was moved since the grip was taken.
    pub(super) fn take_back(&self, grip: Grip) {
        self.held.set(None);
        self.bench.take_back(grip.slot(self.id()));
    }

    pub(super) fn key(&self, grip: Grip, event: &KeyboardEvent) {
        if event.ctrl_key() || event.meta_key() || event.alt_key() {
            return;
        }
        let key = event.key();
        let (x, y) = match key.as_str() {
            "Escape" => return self.take_back(grip),
            "ArrowRight" => (1, 0),
            "ArrowLeft" => (-1, 0),
            "ArrowUp" => (0, 1),
            "ArrowDown" => (0, -1),
            "PageUp" => (0, 10),
            "PageDown" => (0, -10),
            "Home" | "End" | "Delete" | "Backspace" | "Insert" => (0, 0),
            _ => return,
        };
        event.prevent_default();
        // What is in the hand is not moved by keys as well.
        if self.held.with_untracked(Option::is_some) {
            return;
        }
        let snap = self.snap(event.shift_key(), 0.0);
        match grip {
            Grip::Size(field) => {
                let handles = self.handles.get_untracked();
                let Some(handle) = handles.iter().find(|handle| handle.field == field) else {
                    return;
                };
                match key.as_str() {
                    "Home" => self.put_size(field, Some(handle.range.0)),
                    "End" => self.put_size(field, Some(handle.range.1)),
                    _ if x + y != 0 => self.put_size(field, handle.stepped(x + y, &snap)),
                    _ => {}
                }
            }
            grip => {
                let Some(path) = self.path.get_untracked() else {
                    return;
                };
                match (key.as_str(), grip) {
                    ("Delete" | "Backspace", Grip::Node(node)) => {
                        self.edit(Edit::RemoveNode(node));
                    }
                    ("Insert", _) => self.add_point(),
                    _ if x != 0 || y != 0 => {
                        if let Some(at) = grip.at(&path) {
                            let step = snap.step();
                            let moved = |from: f64, steps: i32| {
                                if steps == 0 {
                                    from
                                } else {
                                    snap.on_grid(from + step * f64::from(steps))
                                }
                            };
                            let to = Point {
                                x: moved(at.x, x),
                                y: moved(at.y, y),
                            };
                            self.put_point(grip, &path, to);
                        }
                    }
                    _ => {}
                }
            }
        }
    }

    /// The tools work on the point of a grip from now on.
    pub(super) fn choose(&self, grip: Grip) {
        if let Some(node) = grip.node()
            && self.chosen.get_untracked() != node
        {
            self.chosen.set(node);
        }
    }

    /// Makes an edit a step of its own.
    pub(super) fn edit(&self, edit: Edit) {
        if let Some(path) = self.path.get_untracked() {
            let edited = path.edited(edit, self.symmetry.get_untracked());
            self.bench.leave_field();
            self.bench.draw(self.id(), &edited);
            self.bench.leave_field();
            let last = edited.nodes().len().saturating_sub(1);
            self.chosen.update(|chosen| *chosen = (*chosen).min(last));
        }
    }

    /// Puts a point in the middle of the stretch after the chosen one.
    pub(super) fn add_point(&self) {
        let chosen = self.chosen.get_untracked();
        self.edit(Edit::AddNode(chosen, 0.5));
        self.chosen.set(chosen + 1);
    }

    /// Makes the barrel a free outline of the same form.
    pub(super) fn make_free(&self) {
        let Some(path) = self.draft().as_ref().and_then(BarrelDraft::drawn_path) else {
            return;
        };
        self.bench.leave_field();
        self.bench.draw(self.id(), &path);
        self.bench.leave_field();
        self.chosen.set(0);
    }

    pub(super) fn put_point(&self, grip: Grip, path: &DrawnPath, to: Point) {
        let edit = match grip {
            Grip::Size(_) => return,
            Grip::Node(node) => Edit::ShiftNode(node, to),
            Grip::Arm(node, arm) => Edit::ShiftArm(node, arm, to),
            Grip::Middle(stretch) => Edit::Pull(stretch, to),
        };
        let edited = path.edited(edit, self.symmetry.get_untracked());
        self.bench.draw(self.id(), &edited);
    }

    fn put_size(&self, field: Field, value: Option<solver::Length>) {
        let slot = Grip::Size(field).slot(self.id());
        self.bench.slide_to(slot, SizeHandle::typed(value));
    }

    fn snap(&self, fine: bool, reach: f64) -> Snap {
        let unit = self.bench.unit.get_untracked();
        Snap { unit, fine, reach }
    }

    /// Whether the barrel is a free outline.
    pub(super) fn is_free(&self) -> bool {
        let project = self.bench.project();
        crate::workbench::barrel_shape(&project.read()) == Some(Shape::Free)
    }
}

/// The grip at which something happened.
fn element_of(event: &Event) -> Option<HtmlElement> {
    event
        .current_target()
        .and_then(|target| target.dyn_into().ok())
}
