//! The best filling of a length, exact, in whole numbers.
//!
//! Of two fillings that end where no more than the other's does, the one worth more is kept: the
//! list of those that none beats is carried from piece to piece (Nemhauser & Ullmann 1969). It is
//! never longer than the length in steps of the common divisor of the pieces, and most often far
//! shorter, whatever the unit. A filling that cannot reach the best known one any more is dropped:
//! it gains at most its free length at the rate of the best piece to come.

/// A piece, some of which are laid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Piece {
    /// Length it takes, above 0.
    pub(super) take: i64,
    /// Worth of one, 0 or more.
    pub(super) value: i64,
    /// Most of them.
    pub(super) most: u64,
}

/// A filling, and its worth.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Filling {
    /// How many of each piece.
    pub(super) counts: Vec<u64>,
    /// Worth of the pieces and of the rest.
    pub(super) value: i64,
}

/// A filling of the pieces looked at so far.
#[derive(Clone, Copy)]
struct Reached {
    used: i64,
    value: i64,
    /// The last step to it.
    step: u32,
}

/// So many of one piece put on top of another filling.
#[derive(Clone, Copy)]
struct Step {
    before: u32,
    piece: u32,
    count: u64,
}

/// No step: the empty filling.
const NONE: u32 = u32::MAX;

/// The best fillings of a length, best first, each with another worth, and at most so many of them;
/// only the first is sure to be the best of its place. `rest` is the worth of what is left of the
/// length and grows with it; `None` is none.
///
/// Fillings worth the same: the one that takes less length.
pub(super) fn fill(
    length: i64,
    pieces: &[Piece],
    rest: Option<&dyn Fn(i64) -> i64>,
    most_fillings: usize,
) -> Vec<Filling> {
    let order = by_rate(pieces);
    let mut steps: Vec<Step> = Vec::new();
    let mut reached = vec![Reached {
        used: 0,
        value: 0,
        step: NONE,
    }];
    let mut least = if rest.is_none() {
        quick(length, pieces, &order)
    } else {
        0
    };
    for (place, &at) in order.iter().enumerate() {
        let piece = pieces[at];
        let mut left = piece.most.min((length / piece.take).unsigned_abs());
        let mut chunk = 1;
        while left > 0 {
            let count = chunk.min(left);
            left -= count;
            chunk *= 2;
            reached = with_more(&reached, length, piece, at, count, &mut steps);
        }
        if rest.is_none() {
            let rate = order.get(place + 1).map_or(0.0, |&next| {
                pieces[next].value as f64 / pieces[next].take as f64
            });
            // What rounding of the product may lose is given back.
            let reach = |filling: &Reached| {
                filling.value as f64 * (1.0 + 1e-12)
                    + (length - filling.used) as f64 * rate * (1.0 + 1e-12)
                    + 1.0
            };
            least = reached.last().map_or(least, |most| most.value.max(least));
            let floor = least as f64;
            reached.retain(|filling| reach(filling) >= floor);
        }
    }
    best_of(length, pieces, rest, most_fillings, &reached, &steps)
}

/// The pieces worth something, most worth for a length first.
fn by_rate(pieces: &[Piece]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..pieces.len())
        .filter(|&at| pieces[at].value > 0 && pieces[at].most > 0)
        .collect();
    order.sort_by(|&one, &other| {
        let (one, other) = (&pieces[one], &pieces[other]);
        let left = i128::from(one.value) * i128::from(other.take);
        let right = i128::from(other.value) * i128::from(one.take);
        right.cmp(&left).then(other.take.cmp(&one.take))
    });
    order
}

/// Worth of laying as many as fit of each piece in turn.
fn quick(length: i64, pieces: &[Piece], order: &[usize]) -> i64 {
    let mut free = length;
    let mut value = 0;
    for &at in order {
        let piece = pieces[at];
        let count = piece
            .most
            .min((free / piece.take).unsigned_abs())
            .cast_signed();
        free -= count * piece.take;
        value = count.saturating_mul(piece.value).saturating_add(value);
    }
    value
}

/// The fillings that none beats, of those reached and those with so many pieces more.
fn with_more(
    reached: &[Reached],
    length: i64,
    piece: Piece,
    at: usize,
    count: u64,
    steps: &mut Vec<Step>,
) -> Vec<Reached> {
    let take = piece.take * count.cast_signed();
    // What is beyond counting is worth more than any plank may be.
    let value = piece.value.saturating_mul(count.cast_signed());
    let mut merged: Vec<Reached> = Vec::with_capacity(reached.len() * 2);
    let mut old = reached.iter().peekable();
    let mut new = reached
        .iter()
        .take_while(|filling| filling.used + take <= length)
        .peekable();
    loop {
        let takes_old = match (old.peek(), new.peek()) {
            (None, None) => return merged,
            (Some(_), None) => true,
            (None, Some(_)) => false,
            (Some(old), Some(new)) => {
                (old.used, new.value.saturating_add(value)) <= (new.used + take, old.value)
            }
        };
        let best = merged.last().map_or(-1, |filling| filling.value);
        if takes_old {
            let filling = old.next().copied();
            merged.extend(filling.filter(|filling| filling.value > best));
        } else if let Some(filling) = new.next()
            && filling.value.saturating_add(value) > best
        {
            let step = steps.len() as u32;
            steps.push(Step {
                before: filling.step,
                piece: at as u32,
                count,
            });
            merged.push(Reached {
                used: filling.used + take,
                value: filling.value.saturating_add(value),
                step,
            });
        }
    }
}

fn best_of(
    length: i64,
    pieces: &[Piece],
    rest: Option<&dyn Fn(i64) -> i64>,
    most_fillings: usize,
    reached: &[Reached],
    steps: &[Step],
) -> Vec<Filling> {
    let worth = |filling: &Reached| {
        filling
            .value
            .saturating_add(rest.map_or(0, |rest| rest(length - filling.used)))
    };
    let mut ends: Vec<&Reached> = reached.iter().collect();
    ends.sort_by(|one, other| {
        worth(other)
            .cmp(&worth(one))
            .then(one.used.cmp(&other.used))
    });
    ends.truncate(most_fillings);
    let filling = |end: &Reached| {
        let mut counts = vec![0; pieces.len()];
        let mut at = end.step;
        while let Some(step) = steps.get(at as usize) {
            counts[step.piece as usize] += step.count;
            at = step.before;
        }
        Filling {
            counts,
            value: worth(end),
        }
    };
    ends.into_iter().map(filling).collect()
}
