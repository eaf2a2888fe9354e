//! Independent truths: brute force over every purchase of tiny books, and dynamic programming
//! for one order of ordinary size.

use super::*;

/// A small generator of whole numbers, so that the books are the same in every run.
struct Dice(u64);

impl Dice {
    /// A number from 0 to `most`.
    fn roll(&mut self, most: u64) -> u64 {
        // The SplitMix64 step with its usual constants.
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        (z ^ (z >> 31)) % (most + 1)
    }

    fn tiny_book(&mut self) -> PurchaseDraft {
        let orders = 1 + self.roll(2);
        let stocks = 1 + self.roll(2);
        let price = [1, 5, 100][self.roll(2) as usize];
        let row = |dice: &mut Self| SlatStock {
            pack_slats: 1 + dice.roll(6) as u32,
            pack_price: price * dice.roll(7) as i64,
            on_hand: dice.roll(5),
            pack_limit: (dice.roll(2) > 0).then(|| dice.roll(4) as u32),
        };
        PurchaseDraft {
            orders: (0..orders)
                .map(|_| PencilOrder {
                    pencils: self.roll(14),
                })
                .collect(),
            stocks: (0..stocks).map(|_| row(self)).collect(),
            yields: (0..orders)
                .map(|_| (0..stocks).map(|_| self.roll(5) as u32).collect())
                .collect(),
        }
    }
}

/// Fewest sandwiches for the orders from `order` on, or the most pencils, by trying all runs.
fn fewest_sandwiches(book: &PurchaseDraft, order: usize, left: &mut [u64]) -> Option<u64> {
    if order == book.orders.len() {
        return Some(0);
    }
    fewest_for_order(book, order, 0, book.orders[order].pencils, left)
}

fn fewest_for_order(
    book: &PurchaseDraft,
    order: usize,
    stock: usize,
    short: u64,
    left: &mut [u64],
) -> Option<u64> {
    if short == 0 {
        return fewest_sandwiches(book, order + 1, left);
    }
    if stock == book.stocks.len() {
        return None;
    }
    let yields = u64::from(book.yields[order][stock]);
    let most = if yields == 0 {
        0
    } else {
        short.div_ceil(yields).min(left[stock])
    };
    let tries = (0..=most).filter_map(|run| {
        left[stock] -= run;
        let rest = fewest_for_order(
            book,
            order,
            stock + 1,
            short.saturating_sub(run * yields),
            left,
        );
        left[stock] += run;
        rest.map(|rest| rest + run)
    });
    tries.min()
}

/// Fewest missing pencils, by trying all runs.
fn fewest_missing(
    book: &PurchaseDraft,
    order: usize,
    stock: usize,
    short: u64,
    left: &mut [u64],
) -> u64 {
    if order == book.orders.len() {
        return 0;
    }
    if stock == book.stocks.len() {
        let next = book.orders.get(order + 1).map_or(0, |order| order.pencils);
        return short + fewest_missing(book, order + 1, 0, next, left);
    }
    let yields = u64::from(book.yields[order][stock]);
    let most = if yields == 0 {
        0
    } else {
        short.div_ceil(yields).min(left[stock])
    };
    let tries = (0..=most).map(|run| {
        left[stock] -= run;
        let missing = fewest_missing(
            book,
            order,
            stock + 1,
            short.saturating_sub(run * yields),
            left,
        );
        left[stock] += run;
        missing
    });
    tries.min().expect("no run is one of the tries")
}

/// Packs of a stock beyond which one more cannot help, counted by hand.
fn most_packs(book: &PurchaseDraft, stock: usize) -> u64 {
    // One pencil a sandwich at worst.
    let wanted: u64 = book.orders.iter().map(|order| 2 * order.pencils).sum();
    let slats = &book.stocks[stock];
    let wanted = wanted.div_ceil(u64::from(slats.pack_slats));
    slats
        .pack_limit
        .map_or(wanted, |limit| wanted.min(u64::from(limit)))
}

fn sandwiches(slats: &SlatStock, packs: u64) -> u64 {
    (slats.on_hand + packs * u64::from(slats.pack_slats)) / 2
}

/// Least cost and, at that cost, fewest sandwiches, by trying all packs.
fn by_trying_all(book: &PurchaseDraft) -> Option<(i64, u64)> {
    let mut best = None;
    try_packs(book, 0, 0, &mut Vec::new(), &mut best);
    best
}

fn try_packs(
    book: &PurchaseDraft,
    stock: usize,
    cost: i64,
    left: &mut Vec<u64>,
    best: &mut Option<(i64, u64)>,
) {
    if best.is_some_and(|(least, _)| cost > least) {
        return;
    }
    let Some(slats) = book.stocks.get(stock) else {
        if let Some(sandwiches) = fewest_sandwiches(book, 0, left) {
            *best = Some(best.map_or((cost, sandwiches), |best| best.min((cost, sandwiches))));
        }
        return;
    };
    let wanted: u64 = book.orders.iter().map(|order| order.pencils).sum();
    for packs in 0..=most_packs(book, stock) {
        // More sandwiches than pencils change nothing, so the table stays small.
        left.push(sandwiches(slats, packs).min(wanted));
        try_packs(
            book,
            stock + 1,
            cost + slats.pack_price * packs as i64,
            left,
            best,
        );
        left.pop();
    }
}

/// Compares one book with brute force; tells whether it could be filled.
fn check_against_all(book: &PurchaseDraft) -> bool {
    let outcome = outcome_of(book.clone());
    match (by_trying_all(book), &outcome) {
        (Some((cost, sandwiches)), PurchaseOutcome::Proved { plan, fewest_slats }) => {
            assert_eq!(plan.cost, cost, "{book:?}");
            assert!(
                !fewest_slats || plan.slats_used == 2 * sandwiches,
                "{outcome:?} {sandwiches} {book:?}"
            );
            assert!(*fewest_slats, "tiny books are settled: {book:?}");
            true
        }
        (None, PurchaseOutcome::Impossible { obstacles }) => {
            let stocks = book.stocks.iter().enumerate();
            let mut left: Vec<u64> = stocks
                .map(|(stock, slats)| sandwiches(slats, most_packs(book, stock)))
                .collect();
            match &obstacles[..] {
                [Obstacle::Competing { short, at_least }] => {
                    let least = fewest_missing(book, 0, 0, book.orders[0].pencils, &mut left);
                    assert_eq!((*at_least, short.iter().sum()), (least, least), "{book:?}");
                }
                lone => lone
                    .iter()
                    .for_each(|obstacle| check_lone(book, obstacle, &left)),
            }
            false
        }
        (expected, outcome) => panic!("{expected:?} {outcome:?} {book:?}"),
    }
}

fn check_lone(book: &PurchaseDraft, obstacle: &Obstacle, left: &[u64]) {
    match obstacle {
        Obstacle::NoStock { order } => {
            assert!(book.yields[*order].iter().all(|&yields| yields == 0))
        }
        Obstacle::TooFewSlats { order, short, .. } => {
            let single = PurchaseDraft {
                orders: vec![book.orders[*order]],
                stocks: book.stocks.clone(),
                yields: vec![book.yields[*order].clone()],
            };
            let least = fewest_missing(&single, 0, 0, single.orders[0].pencils, &mut left.to_vec());
            assert_eq!(*short, least, "{book:?}");
        }
        Obstacle::Competing { .. } => panic!("named together with lone obstacles: {book:?}"),
    }
}

/// Runs brute force on so many tiny books.
fn check_tiny_books(books: u32) {
    let mut dice = Dice(20_240_601);
    let filled = (0..books)
        .filter(|_| check_against_all(&dice.tiny_book()))
        .count();
    let (least, most) = (books as usize / 5, books as usize * 4 / 5);
    assert!(
        (least..=most).contains(&filled),
        "a one-sided sample: {filled} of {books}"
    );
}

#[test]
fn tiny_books_agree_with_trying_all() {
    check_tiny_books(2_000);
}

#[test]
fn the_sequence_of_lines_does_not_change_the_cost() {
    let mut dice = Dice(7);
    for _ in 0..300 {
        let book = dice.tiny_book();
        let mut turned = book.clone();
        turned.orders.reverse();
        turned.yields.reverse();
        turned.stocks.reverse();
        turned.yields.iter_mut().for_each(|row| row.reverse());
        let cost = |book: PurchaseDraft| match outcome_of(book) {
            PurchaseOutcome::Proved { plan, .. } => Some((plan.cost, plan.slats_used)),
            _ => None,
        };
        assert_eq!(cost(book.clone()), cost(turned), "{book:?}");
    }
}

/// Least cost of one order by dynamic programming over the pencils still missing; every pack
/// holds an even number of slats and nothing is on hand, so a pack is a fixed number of pencils.
fn one_order_by_tables(book: &PurchaseDraft) -> Option<i64> {
    let pencils = book.orders[0].pencils as usize;
    let mut least = vec![None; pencils + 1];
    least[0] = Some(0);
    for (slats, &yields) in book.stocks.iter().zip(&book.yields[0]) {
        let pack_pencils = (slats.pack_slats / 2 * yields) as usize;
        for _ in 0..slats.pack_limit.expect("each stock is limited") {
            for made in (0..=pencils).rev() {
                let before: Option<i64> = least[made];
                let Some(before) = before else { continue };
                let after = &mut least[pencils.min(made + pack_pencils)];
                let cost = before + slats.pack_price;
                *after = Some(after.map_or(cost, |known: i64| known.min(cost)));
            }
        }
    }
    least[pencils]
}

#[test]
fn one_order_agrees_with_dynamic_programming() {
    let mut dice = Dice(99);
    let mut filled = 0;
    for _ in 0..60 {
        let stocks = 3 + dice.roll(3);
        let stock = |dice: &mut Dice| {
            let pack = 2 * (5 + dice.roll(45));
            // About ten hundredths a slat, give or take a tenth: close rivals.
            let price = (pack * (90 + dice.roll(20)) / 10) as i64;
            (pack as u32, price, 0, Some(1 + dice.roll(11) as u32))
        };
        let rows: Vec<StockRow> = (0..stocks).map(|_| stock(&mut dice)).collect();
        let yields: Vec<u32> = (0..stocks).map(|_| 7 + dice.roll(3) as u32).collect();
        let book = draft(&[1_000 + dice.roll(4_000)], &rows, &[&yields]);
        let proved = match outcome_of(book.clone()) {
            PurchaseOutcome::Proved { plan, .. } => Some(plan.cost),
            PurchaseOutcome::Impossible { .. } => None,
            unproved => panic!("{unproved:?} {book:?}"),
        };
        assert_eq!(proved, one_order_by_tables(&book), "{book:?}");
        filled += usize::from(proved.is_some());
    }
    assert!(filled > 30, "most books can be filled: {filled}");
}
