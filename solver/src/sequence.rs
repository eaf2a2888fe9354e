//! Lists put in order.

use std::cmp::Ordering;

/// The items in an order; equals keep theirs.
///
/// The same as [`slice::sort_by`], which is compiled anew for each kind of item and weighs four
/// kilobytes each time in a browser. For short lists; a long one is sorted faster where it lies.
pub(crate) fn in_order<T>(items: Vec<T>, order: impl Fn(&T, &T) -> Ordering) -> Vec<T> {
    let places = places_in_order(items.len(), &|one, other| order(&items[one], &items[other]));
    let mut items: Vec<Option<T>> = items.into_iter().map(Some).collect();
    let taken = places.into_iter().map(|place| items[place].take());
    taken.flatten().collect()
}

/// The places of a list in an order; equals keep theirs.
pub(crate) fn places_in_order(
    count: usize,
    order: &dyn Fn(usize, usize) -> Ordering,
) -> Vec<usize> {
    let mut places: Vec<usize> = (0..count).collect();
    places.sort_by(|one, other| order(*one, *other));
    places
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn a_list_comes_in_the_order_of_the_standard_sort(list in prop::collection::vec((0_u8..9, any::<u32>()), 0..60)) {
            let mut expected = list.clone();
            expected.sort_by_key(|(key, _)| *key);
            prop_assert_eq!(in_order(list, |one, other| one.0.cmp(&other.0)), expected);
        }
    }
}
