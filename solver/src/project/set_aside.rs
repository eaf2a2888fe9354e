//! A layout that is set aside, and laid out again.

use super::{Entry, Id, ProjectDraft};
use crate::materials::RunDraft;
use crate::saw_shop::SawShopDraft;
use crate::supply::SupplyDraft;
use crate::title_block::TitleBlock;
use crate::tooling::{CutDraft, HeadDraft};
use std::sync::Arc;

impl ProjectDraft {
    /// Sets the layout that is looked at aside as it is now, in the place of the one that was.
    pub fn set_layout_aside(&mut self) {
        self.set_aside = Some(Arc::new(self.layout_alone()));
    }

    /// Lays out again what was set aside, and sets aside what was looked at. Barrel, slats,
    /// species, cutter set, conditions, rules and accuracy are then as they were; those that have gone since
    /// come back at the end of their lists. Does nothing when none is set aside.
    pub fn change_places(&mut self) {
        let Some(aside) = self.set_aside.take() else {
            return;
        };
        self.set_layout_aside();
        bring_back(&mut self.barrels, &aside.barrels);
        bring_back(&mut self.slats, &aside.slats);
        bring_back(&mut self.species, &aside.species);
        bring_back(&mut self.cutter_sets, &aside.cutter_sets);
        bring_back(&mut self.accuracies, &aside.accuracies);
        self.conditions = aside.conditions.clone();
        self.rules = aside.rules.clone();
        self.layout = aside.layout.clone();
    }

    /// Only what the layout that is looked at rests on, with the search of the project.
    #[must_use]
    pub fn layout_alone(&self) -> Self {
        let layout = &self.layout;
        let slats = only(&self.slats, |id| id == layout.top || id == layout.bottom);
        let of_slats = |id| slats.iter().any(|slat| slat.draft.species == Some(id));
        Self {
            name: String::new(),
            barrels: only(&self.barrels, |id| id == layout.barrel),
            species: only(&self.species, of_slats),
            conditions: self.conditions.clone(),
            cutter_sets: only(&self.cutter_sets, |id| self.rules.cutter_set == Some(id)),
            rules: self.rules.clone(),
            accuracies: only(&self.accuracies, |id| id == layout.accuracy),
            layout: layout.clone(),
            search: self.search.clone(),
            orders: Vec::new(),
            saw_shop: SawShopDraft::new(),
            heads: [const { HeadDraft::new() }; 3],
            cut: CutDraft::new(),
            run: RunDraft::new(),
            supply: SupplyDraft::new(),
            title_block: TitleBlock::new(),
            set_aside: None,
            slats,
        }
    }
}

fn only<T: Clone>(entries: &[Entry<T>], wanted: impl Fn(Id) -> bool) -> Vec<Entry<T>> {
    let wanted = entries.iter().filter(|entry| wanted(entry.id));
    wanted.cloned().collect()
}

fn bring_back<T: Clone>(entries: &mut Vec<Entry<T>>, kept: &[Entry<T>]) {
    for entry in kept {
        match entries.iter_mut().find(|other| other.id == entry.id) {
            Some(other) => other.draft = entry.draft.clone(),
            None => entries.push(entry.clone()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::tests::{project, with_the_set};
    use super::*;
    use crate::field::Typed;

    #[test]
    fn only_what_the_layout_rests_on_is_set_aside() {
        let mut draft = project();
        with_the_set(&mut draft);
        draft.slats[0].draft.species = Some(Id(6));
        draft.set_layout_aside();
        let aside = draft.set_aside.clone().unwrap();
        assert_eq!(aside.names().collect::<Vec<_>>(), [1, 3, 6, 7, 8]);
        assert!(aside.orders.is_empty() && aside.set_aside.is_none());
        assert_eq!(aside.check_layout(), draft.check_layout());
    }

    #[test]
    fn what_was_set_aside_does_not_change_with_the_project_and_comes_back_as_it_was() {
        let mut draft = project();
        let before = draft.check_layout().unwrap();
        draft.set_layout_aside();
        draft.barrels[0].draft.size = Typed::Number(7.4);
        draft.rules.land = Typed::Number(0.9);
        draft.layout.top = Id(4);
        let after = draft.check_layout().unwrap();
        assert_ne!(after, before);

        draft.change_places();
        assert_eq!(draft.check_layout().unwrap(), before);
        let aside = draft.set_aside.clone().unwrap();
        assert_eq!(aside.check_layout().unwrap(), after);

        draft.change_places();
        assert_eq!(draft.check_layout().unwrap(), after);
    }

    #[test]
    fn what_has_gone_since_comes_back_under_its_name_which_nobody_took() {
        let mut draft = project();
        draft.layout.top = Id(4);
        draft.layout.bottom = Id(4);
        draft.cutter_sets.clear();
        draft.species.clear();
        draft.accuracies.clear();
        draft.set_layout_aside();
        draft.slats.retain(|slat| slat.id != Id(4));
        draft.layout.top = Id(3);
        draft.layout.bottom = Id(3);
        assert_eq!(draft.free_id(), Id(5), "4 is kept for what was set aside");

        draft.change_places();
        assert_eq!(draft.slat_place(Id(4)), Some(1));
        assert_eq!((draft.layout.top, draft.layout.bottom), (Id(4), Id(4)));
    }

    #[test]
    fn with_nothing_set_aside_nothing_changes_places() {
        let mut draft = project();
        let before = draft.clone();
        draft.change_places();
        assert_eq!(draft, before);
    }
}
