//! What planks and blanks are called.

/// The names of the planks and of the blanks, in their order. One that has none goes by its number,
/// counted from 1.
///
/// ```
/// use solver::sawing::SawingNames;
/// let blanks = ["Office".to_owned(), " ".to_owned()];
/// let names = SawingNames { planks: &[], blanks: &blanks };
/// assert_eq!(names.blank(0), "Office");
/// assert_eq!(names.blank(1), "Blank 2");
/// assert_eq!(names.plank(4), "Plank 5");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SawingNames<'a> {
    /// The planks.
    pub planks: &'a [String],
    /// The blanks.
    pub blanks: &'a [String],
}

impl SawingNames<'_> {
    /// The name of a plank.
    #[must_use]
    pub fn plank(&self, plank: usize) -> String {
        named(self.planks, plank, "Plank")
    }

    /// The name of a blank.
    #[must_use]
    pub fn blank(&self, blank: usize) -> String {
        named(self.blanks, blank, "Blank")
    }
}

fn named(names: &[String], place: usize, kind: &str) -> String {
    match names.get(place).map(|name| name.trim()) {
        Some(name) if !name.is_empty() => name.to_owned(),
        _ => format!("{kind} {}", place.saturating_add(1)),
    }
}
