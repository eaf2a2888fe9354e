//! Names on poles: each beside its pole, in the lowest row in which it covers no other name and
//! no other pole.
//!
//! Which name comes first decides how many find a place, and no single order is best: names to
//! the right of their poles never stand in each other's way from the right to the left, but the
//! last ones may run off the sheet. So a few orders are tried, and the best one is kept.

use super::Label;
use super::axis::{GAP, LINE, text_width};

/// Rows of names over a chart.
const MOST_ROWS: usize = 6;
/// Space between a pole and its name, px.
const STAND_OFF: f64 = 4.0;
/// The longest name, as a share of the sheet.
const LONGEST: f64 = 0.45;
/// A name that is cut keeps this much, px, or is left out.
const SHORTEST: f64 = 40.0;

/// A name in its place.
#[derive(Debug, Clone, PartialEq)]
struct Flag {
    /// Its row, from 0 next to the chart.
    row: usize,
    /// Where it begins and ends, px.
    span: (f64, f64),
    /// The name, or as much of it as there is room for.
    text: String,
}

/// The upper end of each pole, px down the sheet, and the name there; nothing for a name that
/// finds no place.
type Raised = Vec<(f64, Option<Label>)>;

/// The side of its pole on which a name stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Side {
    Left,
    Right,
}

/// Names that have found a place, each with the place of its pole, px.
#[derive(Debug, Default)]
struct Placed(Vec<(f64, Flag)>);

/// Names over a chart on a sheet of a width, in as many rows as needed under the title of its
/// upright axis. Returns where the chart begins, px down the sheet, and the names.
///
/// `poles` are the places of the poles, px, from left to right, each with its name.
pub(super) fn raise(poles: &[(f64, String)], width: f64) -> (f64, Raised) {
    let flags = arrange(poles, (GAP / 2.0, width - GAP / 2.0));
    let rows = flags.iter().flatten().map(|flag| flag.row + 1).max();
    // The number of the highest level stands half over the chart.
    let top = GAP + LINE + rows.unwrap_or(0) as f64 * LINE + LINE / 2.0 + GAP;
    let raised = |flag: Option<Flag>| {
        flag.map_or((top, None), |flag| {
            let y = top - LINE / 2.0 - GAP - (flag.row as f64 + 0.5) * LINE;
            let label = Label {
                x: f64::midpoint(flag.span.0, flag.span.1),
                y,
                text: flag.text,
            };
            // A pole ends a little under the upper edge of its name.
            (y - LINE / 2.0 + 2.0, Some(label))
        })
    };
    (top, flags.into_iter().map(raised).collect())
}

/// Finds places for names between two limits, px; nothing for a name that finds none.
///
/// `poles` are the places of the poles, px, from left to right, each with its name.
fn arrange(poles: &[(f64, String)], limits: (f64, f64)) -> Vec<Option<Flag>> {
    let either = [
        vec![Side::Right, Side::Left],
        vec![Side::Left, Side::Right],
        vec![Side::Right],
        vec![Side::Left],
    ];
    let rightwards: Vec<usize> = (0..poles.len()).collect();
    let leftwards: Vec<usize> = rightwards.iter().rev().copied().collect();
    let mut best: Vec<Option<Flag>> = vec![None; poles.len()];
    for sides in either {
        for order in [&leftwards, &rightwards] {
            let mut placed = Placed::default();
            let mut flags = vec![None; poles.len()];
            for &k in order {
                let (pole, name) = &poles[k];
                flags[k] = placed.place(*pole, name, &sides, limits);
            }
            if merit(&flags) > merit(&best) {
                best = flags;
            }
        }
    }
    best
}

/// What makes one arrangement better than another: more names, more of each, fewer rows.
fn merit(flags: &[Option<Flag>]) -> (usize, usize, usize) {
    let shown: Vec<&Flag> = flags.iter().flatten().collect();
    let letters = shown.iter().map(|flag| flag.text.chars().count()).sum();
    let rows = shown.iter().map(|flag| flag.row).max().unwrap_or(0);
    (shown.len(), letters, MOST_ROWS - rows)
}

impl Placed {
    /// Finds the lowest row for a name on one of the sides, the best first.
    fn place(&mut self, pole: f64, name: &str, sides: &[Side], limits: (f64, f64)) -> Option<Flag> {
        let most = (limits.1 - limits.0) * LONGEST;
        let candidates: Vec<(String, (f64, f64))> = sides
            .iter()
            .filter_map(|side| {
                let room = match side {
                    Side::Right => limits.1 - pole,
                    Side::Left => pole - limits.0,
                } - STAND_OFF;
                // With two sides to choose from, a name goes where it need not be cut further.
                let most = if sides.len() > 1 {
                    most
                } else {
                    most.min(room)
                };
                let text = shortened(name, most);
                let width = text_width(&text);
                let span = match side {
                    Side::Right => (pole + STAND_OFF, pole + STAND_OFF + width),
                    Side::Left => (pole - STAND_OFF - width, pole - STAND_OFF),
                };
                let whole = text == name || most >= SHORTEST;
                (whole && width <= room).then_some((text, span))
            })
            .collect();
        let (row, (text, span)) = (0..MOST_ROWS)
            .flat_map(|row| candidates.iter().map(move |candidate| (row, candidate)))
            .find(|(row, (_, span))| self.is_free(pole, *row, *span))?;
        let flag = Flag {
            row,
            span: *span,
            text: text.clone(),
        };
        self.0.push((pole, flag.clone()));
        Some(flag)
    }

    fn is_free(&self, pole: f64, row: usize, span: (f64, f64)) -> bool {
        let covers = |span: (f64, f64), pole: f64| {
            span.0 - STAND_OFF / 2.0 < pole && pole < span.1 + STAND_OFF / 2.0
        };
        self.0.iter().all(|(other_pole, other)| {
            let apart = span.1 + GAP <= other.span.0 || other.span.1 + GAP <= span.0;
            // A pole stands in its own row and in all below it.
            let over_pole = other.row >= row && covers(span, *other_pole);
            let under_name = other.row <= row && covers(other.span, pole);
            (other.row != row || apart) && !over_pole && !under_name
        })
    }
}

/// A text of at most a width, px: cut, with three dots where something is missing.
fn shortened(text: &str, most: f64) -> String {
    if text_width(text) <= most {
        return text.to_owned();
    }
    let room = most - text_width("…");
    let mut kept = String::new();
    for letter in text.chars() {
        kept.push(letter);
        if text_width(&kept) > room {
            kept.pop();
            break;
        }
    }
    kept.truncate(kept.trim_end_matches([' ', ',']).len());
    kept.push('…');
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Row, and whether to the right of its pole, of names at poles on a sheet of 400 px.
    fn check(poles: &[(f64, &str)], expected: &[Option<(usize, bool)>]) {
        let named: Vec<(f64, String)> = poles
            .iter()
            .map(|&(pole, name)| (pole, name.to_owned()))
            .collect();
        let found: Vec<_> = arrange(&named, (0.0, 400.0))
            .iter()
            .zip(poles)
            .map(|(flag, (pole, _))| flag.as_ref().map(|flag| (flag.row, flag.span.0 > *pole)))
            .collect();
        assert_eq!(found, expected);
    }

    #[test]
    fn a_name_that_fits_stays_whole_and_a_long_one_is_cut() {
        assert_eq!(shortened("Seven", 100.0), "Seven");
        assert_eq!(shortened("Seven, eight, nine", 75.0), "Seven…");
        assert_eq!(shortened("Seven", 0.0), "…");
    }

    #[test]
    fn names_far_apart_stand_in_one_row() {
        let right = Some((0, true));
        check(
            &[(10.0, "Narrow"), (150.0, "Usual"), (300.0, "Wide")],
            &[right; 3],
        );
    }

    #[test]
    fn names_at_nearly_one_place_stand_on_both_sides_and_then_in_rows() {
        let poles = [
            (200.0, "Usual"),
            (200.1, "Usual"),
            (200.2, "Usual"),
            (200.3, "Usual"),
        ];
        let expected = [
            Some((1, false)),
            Some((1, true)),
            Some((0, false)),
            Some((0, true)),
        ];
        check(&poles, &expected);
    }

    #[test]
    fn at_the_end_of_the_sheet_a_name_stands_to_the_left() {
        check(&[(390.0, "Wide")], &[Some((0, false))]);
    }

    #[test]
    fn what_finds_no_place_is_left_out() {
        let poles = [(200.0, "Usual"); 20];
        let named = poles.map(|(pole, name)| (pole, name.to_owned()));
        let found = arrange(&named, (0.0, 400.0));
        assert_eq!(found.iter().flatten().count(), 2 * MOST_ROWS);
    }
}
