//! Undo and redo over whole states.

/// States that came before and after the present one.
#[derive(Debug, Clone)]
pub struct History<State, Mark> {
    past: Vec<State>,
    future: Vec<State>,
    /// What the last change was made to, while it is still being made.
    open: Option<Mark>,
}

/// Steps that are kept.
const MOST_STEPS: usize = 200;

impl<State, Mark> Default for History<State, Mark> {
    fn default() -> Self {
        Self {
            past: Vec::new(),
            future: Vec::new(),
            open: None,
        }
    }
}

impl<State: Clone + PartialEq, Mark: PartialEq> History<State, Mark> {
    /// Notes the present state before it changes. Changes under the same mark that follow
    /// each other are one step, until [`Self::close`].
    pub fn before(&mut self, present: &State, mark: Option<Mark>) {
        self.future.clear();
        if mark.is_some() && self.open == mark {
            return;
        }
        self.open = mark;
        self.past.push(present.clone());
        if self.past.len() > MOST_STEPS {
            self.past.remove(0);
        }
    }

    /// Ends the step that is being made.
    pub fn close(&mut self) {
        self.open = None;
    }

    /// The state before the step that is being made under a mark; the step is forgotten.
    pub fn abandon(&mut self, mark: &Mark) -> Option<State> {
        if self.open.as_ref() != Some(mark) {
            return None;
        }
        self.open = None;
        self.past.pop()
    }

    /// The state before the last step that changed something; the present goes to the future.
    pub fn undo(&mut self, present: &State) -> Option<State> {
        self.open = None;
        while let Some(state) = self.past.pop() {
            if state != *present {
                self.future.push(present.clone());
                return Some(state);
            }
        }
        None
    }

    /// The state after the last step that was undone; the present goes to the past.
    pub fn redo(&mut self, present: &State) -> Option<State> {
        self.open = None;
        let state = self.future.pop()?;
        self.past.push(present.clone());
        Some(state)
    }

    /// Whether there is a step to undo.
    pub fn can_undo(&self, present: &State) -> bool {
        self.past.iter().any(|state| state != present)
    }

    /// Whether there is a step to redo.
    pub fn can_redo(&self) -> bool {
        !self.future.is_empty()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keystrokes_in_one_field_are_one_step() {
        let mut history = History::default();
        history.before(&"7", Some("width"));
        history.before(&"74", Some("width"));
        assert_eq!(history.undo(&"74.5"), Some("7"));
        assert_eq!(history.undo(&"7"), None);
        assert_eq!(history.redo(&"7"), Some("74.5"));
    }

    #[test]
    fn a_closed_step_is_not_added_to() {
        let mut history = History::default();
        history.before(&1, Some("width"));
        history.close();
        history.before(&2, Some("width"));
        assert_eq!(history.undo(&3), Some(2));
        assert_eq!(history.undo(&2), Some(1));
    }

    #[test]
    fn an_abandoned_step_leaves_nothing_to_undo_or_redo() {
        let mut history = History::default();
        history.before(&1, Some("pitch"));
        history.before(&2, Some("pitch"));
        assert_eq!(history.abandon(&"pitch"), Some(1));
        assert!(!history.can_undo(&1) && !history.can_redo());
    }

    #[test]
    fn only_an_open_step_of_the_same_mark_is_abandoned() {
        let mut history = History::default();
        history.before(&1, Some("pitch"));
        assert_eq!(history.abandon(&"edge"), None);
        history.close();
        assert_eq!(history.abandon(&"pitch"), None);
        assert_eq!(history.undo(&2), Some(1));
    }

    #[test]
    fn a_step_that_changed_nothing_is_passed_over() {
        let mut history = History::<_, ()>::default();
        history.before(&1, None);
        history.before(&2, None);
        assert_eq!(history.undo(&2), Some(1));
    }

    #[test]
    fn a_new_change_forgets_what_was_undone() {
        let mut history = History::<_, ()>::default();
        history.before(&1, None);
        assert_eq!(history.undo(&2), Some(1));
        history.before(&1, None);
        assert!(!history.can_redo());
    }

    #[test]
    fn only_so_many_steps_are_kept() {
        let mut history = History::<_, ()>::default();
        for step in 0..MOST_STEPS + 50 {
            history.before(&step, None);
        }
        assert_eq!(history.past.len(), MOST_STEPS);
    }
}
