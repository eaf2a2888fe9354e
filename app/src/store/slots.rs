//! The two places that take turns, and the choice between them.

use super::{Damage, Generation, Record, StoreProblem};

/// One of the two places for a stored copy.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slot {
    /// The first place, used by the first save.
    A,
    /// The second place.
    B,
}

impl Slot {
    /// Both places.
    pub const BOTH: [Self; 2] = [Self::A, Self::B];

    /// The name under which the database keeps it.
    pub fn key(self) -> &'static str {
        match self {
            Self::A => "a",
            Self::B => "b",
        }
    }

    /// The place whose turn comes after this one.
    pub fn other(self) -> Self {
        match self {
            Self::A => Self::B,
            Self::B => Self::A,
        }
    }
}

/// What lies in the two places, as stored: `None` where nothing was ever written.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Slots {
    /// What lies in [`Slot::A`].
    pub a: Option<String>,
    /// What lies in [`Slot::B`].
    pub b: Option<String>,
}

/// The project as read from the store.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Loaded {
    /// The project.
    pub text: String,
    /// The save it comes from.
    pub generation: Generation,
    /// True when a newer copy is damaged, so that this is the one before the last save.
    pub is_older_copy: bool,
}

/// Where a copy lies, or will lie, and under which number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Place {
    /// Which of the two places.
    pub slot: Slot,
    /// The number of the save.
    pub generation: Generation,
}

impl Place {
    /// Where the next save goes when the newest copy lies here.
    pub fn next(self) -> Self {
        Self {
            slot: self.slot.other(),
            generation: self.generation.next(),
        }
    }

    /// The string to store here for `text`.
    pub fn stored(self, text: &str) -> String {
        Record {
            generation: self.generation,
            text: text.to_owned(),
        }
        .encode()
    }
}

impl Slots {
    /// Both places from what the database keeps in them.
    pub fn new(a: Option<String>, b: Option<String>) -> Self {
        Self { a, b }
    }

    /// The newest whole copy, or `None` where nothing was ever saved.
    ///
    /// # Errors
    /// [`StoreProblem::Damaged`] when something was saved and no copy of it is whole.
    pub fn newest(&self) -> Result<Option<Loaded>, StoreProblem> {
        if self.a.is_none() && self.b.is_none() {
            return Ok(None);
        }
        let (slot, record) = self.newest_whole().ok_or(StoreProblem::Damaged)?;
        Ok(Some(Loaded {
            is_older_copy: self.is_damaged_and_newer(slot.other(), record.generation),
            generation: record.generation,
            text: record.text,
        }))
    }

    /// Where the next save goes: never over the newest whole copy.
    ///
    /// ```
    /// # use app::store::{Slot, Slots};
    /// let mut slots = Slots::default();
    /// let first = slots.next_place();
    /// assert_eq!((first.slot, first.generation.number()), (Slot::A, 1));
    /// slots.a = Some(first.stored("{}"));
    /// let second = slots.next_place();
    /// assert_eq!((second.slot, second.generation.number()), (Slot::B, 2));
    /// ```
    pub fn next_place(&self) -> Place {
        if let Some((slot, Record { generation, .. })) = self.newest_whole() {
            return Place { slot, generation }.next();
        }
        // Nothing whole: spare what may still be legible, if there is an empty place.
        let slot = match (&self.a, &self.b) {
            (Some(_), None) => Slot::B,
            _ => Slot::A,
        };
        Place {
            slot,
            generation: Generation::new(1),
        }
    }

    /// Whether one of the places holds `text` as saved under `generation`, and whole.
    pub fn hold(&self, generation: Generation, text: &str) -> bool {
        Slot::BOTH.into_iter().any(|slot| {
            matches!(
                self.record(slot),
                Some(Ok(record)) if record.generation == generation && record.text == text
            )
        })
    }

    fn stored(&self, slot: Slot) -> Option<&str> {
        match slot {
            Slot::A => self.a.as_deref(),
            Slot::B => self.b.as_deref(),
        }
    }

    fn record(&self, slot: Slot) -> Option<Result<Record, Damage>> {
        self.stored(slot).map(Record::decode)
    }

    fn newest_whole(&self) -> Option<(Slot, Record)> {
        Slot::BOTH
            .into_iter()
            .filter_map(|slot| Some((slot, self.record(slot)?.ok()?)))
            .max_by_key(|(_, record)| record.generation)
    }

    /// A header too damaged to tell its age counts as newer: better one warning too many.
    fn is_damaged_and_newer(&self, slot: Slot, than: Generation) -> bool {
        match self.record(slot) {
            Some(Err(Damage { claimed })) => claimed.is_none_or(|claimed| claimed > than),
            Some(Ok(_)) | None => false,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn whole(generation: u64, text: &str) -> Option<String> {
        let generation = Generation::new(generation);
        let text = text.to_owned();
        Some(Record { generation, text }.encode())
    }

    fn torn(generation: u64, text: &str) -> Option<String> {
        let mut stored = whole(generation, text)?;
        stored.pop();
        Some(stored)
    }

    fn loads(a: Option<String>, b: Option<String>, text: &str, is_older_copy: bool) {
        let loaded = Slots::new(a, b).newest().unwrap().unwrap();
        assert_eq!((&*loaded.text, loaded.is_older_copy), (text, is_older_copy));
    }

    fn places(a: Option<String>, b: Option<String>, slot: Slot, generation: u64) {
        let place = Slots::new(a, b).next_place();
        assert_eq!((place.slot, place.generation.number()), (slot, generation));
    }

    #[test]
    fn an_empty_store_loads_nothing() {
        assert_eq!(Slots::default().newest(), Ok(None));
    }

    #[test]
    fn the_only_copy_loads() {
        loads(whole(1, "one"), None, "one", false);
        loads(None, whole(1, "one"), "one", false);
    }

    #[test]
    fn the_newer_copy_loads() {
        loads(whole(1, "one"), whole(2, "two"), "two", false);
        loads(whole(3, "three"), whole(2, "two"), "three", false);
    }

    #[test]
    fn generations_compare_as_numbers() {
        loads(whole(9, "nine"), whole(10, "ten"), "ten", false);
    }

    #[test]
    fn a_damaged_newer_copy_falls_back_and_says_so() {
        loads(whole(1, "one"), torn(2, "two"), "one", true);
    }

    #[test]
    fn a_damaged_older_copy_is_no_fall_back() {
        loads(torn(1, "one"), whole(2, "two"), "two", false);
    }

    #[test]
    fn an_illegible_copy_counts_as_newer() {
        loads(whole(1, "one"), Some("?".to_owned()), "one", true);
    }

    #[test]
    fn two_damaged_copies_are_a_problem() {
        let slots = Slots::new(torn(1, "one"), torn(2, "two"));
        assert_eq!(slots.newest(), Err(StoreProblem::Damaged));
        let slots = Slots::new(torn(1, "one"), None);
        assert_eq!(slots.newest(), Err(StoreProblem::Damaged));
    }

    #[test]
    fn saves_take_turns() {
        places(None, None, Slot::A, 1);
        places(whole(1, "one"), None, Slot::B, 2);
        places(whole(1, "one"), whole(2, "two"), Slot::A, 3);
        places(whole(3, "three"), whole(2, "two"), Slot::B, 4);
    }

    #[test]
    fn the_only_whole_copy_is_never_written_over() {
        places(torn(3, "three"), whole(2, "two"), Slot::A, 3);
        places(whole(1, "one"), torn(2, "two"), Slot::B, 2);
    }

    #[test]
    fn with_nothing_whole_the_empty_place_comes_first() {
        places(torn(1, "one"), None, Slot::B, 1);
        places(None, torn(1, "one"), Slot::A, 1);
        places(torn(1, "one"), torn(2, "two"), Slot::A, 1);
    }

    #[test]
    fn the_read_back_wants_text_and_generation() {
        let slots = Slots::new(whole(1, "one"), whole(2, "two"));
        assert!(slots.hold(Generation::new(2), "two"));
        assert!(slots.hold(Generation::new(1), "one"));
        assert!(!slots.hold(Generation::new(1), "two"));
        assert!(!Slots::new(torn(2, "two"), None).hold(Generation::new(2), "two"));
    }
}
