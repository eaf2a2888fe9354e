//! What the parts of a project are called in a text.

use solver::ProjectDraft;

/// The name of a barrel by its place in the list.
pub(crate) fn barrel(draft: &ProjectDraft, at: usize) -> String {
    or_number(&draft.barrels[at].draft.name, "Barrel", at)
}

/// The name of a slat stock by its place in the list.
pub(crate) fn slat(draft: &ProjectDraft, at: usize) -> String {
    or_number(&draft.slats[at].draft.name, "Slat stock", at)
}

/// The name of a cutter set by its place in the list.
pub(crate) fn cutter_set(draft: &ProjectDraft, at: usize) -> String {
    or_number(&draft.cutter_sets[at].draft.name, "Cutter set", at)
}

/// The name of a line of machines by its place in the list.
pub(crate) fn line(draft: &ProjectDraft, at: usize) -> String {
    or_number(&draft.accuracies[at].draft.name, "Line", at)
}

/// The name of a plank by its place in the list.
pub(crate) fn plank(draft: &ProjectDraft, at: usize) -> String {
    or_number(&draft.saw_shop.planks[at].draft.name, "Plank", at)
}

/// The name of a blank by its place in the list.
pub(crate) fn blank(draft: &ProjectDraft, at: usize) -> String {
    or_number(&draft.saw_shop.blanks[at].draft.name, "Blank", at)
}

/// The name, or the kind with its number in the list where it has none.
fn or_number(name: &str, kind: &str, at: usize) -> String {
    match name.trim() {
        "" => format!("{kind} {}", at + 1),
        name => name.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_has_no_name_has_a_number() {
        let mut draft = app::demo::project();
        draft.slats[1].draft.name = "  ".to_owned();
        assert_eq!(slat(&draft, 1), "Slat stock 2");
        assert_eq!(barrel(&draft, 0), "Writer, hexagonal");
        assert_eq!(cutter_set(&draft, 2), "Wide head, sevens");
    }
}
