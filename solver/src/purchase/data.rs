//! The order book, the slat stocks and the yields, first as a draft and then checked.

/// Most pencils an order book may ask for in all.
pub const MOST_PENCILS: u64 = 100_000_000;
/// Most orders in one book, and most slat stocks to choose from.
pub const MOST_LINES: usize = 64;
/// Most slats in one pack.
pub const MOST_PACK_SLATS: u32 = 1_000_000;
/// Highest price of one pack, in hundredths of the currency.
pub const MOST_PACK_PRICE: i64 = 100_000_000;
/// Most slats of one stock on hand.
pub const MOST_ON_HAND: u64 = 1_000_000_000;
/// Most pencils from one sandwich.
pub const MOST_YIELD: u32 = 1_000;

/// One line of the order book.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PencilOrder {
    /// Whole good pencils to deliver; 144 is one gross, 0 asks for nothing.
    pub pencils: u64,
}

/// A kind of slat that lies in the store or can be bought in whole packs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SlatStock {
    /// Slats in one pack, at least one.
    pub pack_slats: u32,
    /// Price of one pack, in hundredths of the currency, not negative.
    pub pack_price: i64,
    /// Slats already in the store, at no further cost.
    pub on_hand: u64,
    /// Most packs the supplier lets go; `None` is as many as wanted.
    pub pack_limit: Option<u32>,
}

/// What the buyer typed: orders, stocks, and the pencils per sandwich of each pair.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PurchaseDraft {
    /// The order book.
    pub orders: Vec<PencilOrder>,
    /// The slats to choose from.
    pub stocks: Vec<SlatStock>,
    /// `yields[order][stock]`: pencils of that order from one sandwich of that stock, 0 when
    /// the pencil cannot be made from it.
    pub yields: Vec<Vec<u32>>,
}

impl PurchaseDraft {
    /// Turns the draft into data that can be planned, or names every rule it breaks.
    ///
    /// # Errors
    ///
    /// One [`PurchaseProblem`] for each number outside its range and each missing row or column.
    ///
    /// ```
    /// use solver::purchase::{PencilOrder, PurchaseDraft, PurchaseProblem, SlatStock};
    ///
    /// let stock = SlatStock { pack_slats: 0, pack_price: -1, on_hand: 0, pack_limit: None };
    /// let draft = PurchaseDraft {
    ///     orders: vec![PencilOrder { pencils: 144 }],
    ///     stocks: vec![stock],
    ///     yields: vec![vec![9]],
    /// };
    /// assert_eq!(draft.check().unwrap_err().len(), 2);
    /// ```
    pub fn check(self) -> Result<PurchaseData, Vec<PurchaseProblem>> {
        let mut problems = Vec::new();
        self.check_orders(&mut problems);
        self.check_stocks(&mut problems);
        self.check_yields(&mut problems);
        if problems.is_empty() {
            Ok(PurchaseData { draft: self })
        } else {
            Err(problems)
        }
    }

    fn check_orders(&self, problems: &mut Vec<PurchaseProblem>) {
        let lines = self.orders.len();
        if lines > MOST_LINES {
            problems.push(PurchaseProblem::TooManyOrders { lines });
        }
        let pencils: u128 = self
            .orders
            .iter()
            .map(|order| u128::from(order.pencils))
            .sum();
        if pencils > u128::from(MOST_PENCILS) {
            problems.push(PurchaseProblem::TooManyPencils { pencils });
        }
    }

    fn check_stocks(&self, problems: &mut Vec<PurchaseProblem>) {
        let lines = self.stocks.len();
        if lines > MOST_LINES {
            problems.push(PurchaseProblem::TooManyStocks { lines });
        }
        for (stock, slats) in self.stocks.iter().enumerate() {
            if !(1..=MOST_PACK_SLATS).contains(&slats.pack_slats) {
                let pack_slats = slats.pack_slats;
                problems.push(PurchaseProblem::PackSlats { stock, pack_slats });
            }
            if !(0..=MOST_PACK_PRICE).contains(&slats.pack_price) {
                let pack_price = slats.pack_price;
                problems.push(PurchaseProblem::PackPrice { stock, pack_price });
            }
            if slats.on_hand > MOST_ON_HAND {
                let on_hand = slats.on_hand;
                problems.push(PurchaseProblem::OnHand { stock, on_hand });
            }
        }
    }

    fn check_yields(&self, problems: &mut Vec<PurchaseProblem>) {
        let (rows, orders) = (self.yields.len(), self.orders.len());
        if rows != orders {
            problems.push(PurchaseProblem::YieldRows { rows, orders });
        }
        let stocks = self.stocks.len();
        for (order, row) in self.yields.iter().enumerate() {
            let columns = row.len();
            if columns != stocks {
                problems.push(PurchaseProblem::YieldColumns {
                    order,
                    columns,
                    stocks,
                });
            }
            for (stock, &pencils) in row.iter().enumerate() {
                if pencils > MOST_YIELD {
                    problems.push(PurchaseProblem::Yield {
                        order,
                        stock,
                        pencils,
                    });
                }
            }
        }
    }
}

/// A rule the draft breaks. Orders and stocks are counted from 0 in the fields and from 1 in
/// the messages.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum PurchaseProblem {
    /// More orders than [`MOST_LINES`].
    #[error("the book has {lines} orders, at most {MOST_LINES} can be planned at once")]
    TooManyOrders {
        /// Orders in the draft.
        lines: usize,
    },
    /// More stocks than [`MOST_LINES`].
    #[error("there are {lines} slat stocks, at most {MOST_LINES} can be compared at once")]
    TooManyStocks {
        /// Stocks in the draft.
        lines: usize,
    },
    /// More pencils in all than [`MOST_PENCILS`].
    #[error("the book asks for {pencils} pencils, at most {MOST_PENCILS} can be planned at once")]
    TooManyPencils {
        /// Pencils of all orders together.
        pencils: u128,
    },
    /// A pack without slats, or with more than [`MOST_PACK_SLATS`].
    #[error("a pack of stock {} has {pack_slats} slats, it may have 1 to {MOST_PACK_SLATS}", stock + 1)]
    PackSlats {
        /// The stock.
        stock: usize,
        /// Slats per pack in the draft.
        pack_slats: u32,
    },
    /// A negative price, or one above [`MOST_PACK_PRICE`].
    #[error("a pack of stock {} costs {pack_price} hundredths, it may cost 0 to {MOST_PACK_PRICE}", stock + 1)]
    PackPrice {
        /// The stock.
        stock: usize,
        /// Price in the draft, hundredths of the currency.
        pack_price: i64,
    },
    /// More slats in the store than [`MOST_ON_HAND`].
    #[error("stock {} has {on_hand} slats on hand, at most {MOST_ON_HAND} are allowed", stock + 1)]
    OnHand {
        /// The stock.
        stock: usize,
        /// Slats on hand in the draft.
        on_hand: u64,
    },
    /// The yield table has another number of rows than there are orders.
    #[error("the yield table has {rows} rows for {orders} orders")]
    YieldRows {
        /// Rows in the draft.
        rows: usize,
        /// Orders in the draft.
        orders: usize,
    },
    /// A row of the yield table has another number of columns than there are stocks.
    #[error("the yields of order {} name {columns} stocks, there are {stocks}", order + 1)]
    YieldColumns {
        /// The order.
        order: usize,
        /// Columns of its row.
        columns: usize,
        /// Stocks in the draft.
        stocks: usize,
    },
    /// More pencils from a sandwich than [`MOST_YIELD`].
    #[error("a sandwich of stock {} gives {pencils} pencils of order {}, at most {MOST_YIELD} are allowed", stock + 1, order + 1)]
    Yield {
        /// The order.
        order: usize,
        /// The stock.
        stock: usize,
        /// Pencils per sandwich in the draft.
        pencils: u32,
    },
}

/// Orders, stocks and yields that keep all ranges of this module; made by
/// [`PurchaseDraft::check`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PurchaseData {
    draft: PurchaseDraft,
}

impl PurchaseData {
    /// The order book.
    #[must_use]
    pub fn orders(&self) -> &[PencilOrder] {
        &self.draft.orders
    }

    /// The slats to choose from.
    #[must_use]
    pub fn stocks(&self) -> &[SlatStock] {
        &self.draft.stocks
    }

    /// Pencils of an order from one sandwich of a stock, 0 when it cannot be made from it.
    ///
    /// # Panics
    ///
    /// When there is no such order or stock.
    #[must_use]
    pub fn pencils_per_sandwich(&self, order: usize, stock: usize) -> u64 {
        u64::from(self.draft.yields[order][stock])
    }

    /// Sandwiches that fill an order from one stock alone; `None` when it cannot be made from it.
    pub(super) fn sandwiches_alone(&self, order: usize, stock: usize) -> Option<u64> {
        let pencils = self.pencils_per_sandwich(order, stock);
        (pencils > 0).then(|| self.orders()[order].pencils.div_ceil(pencils))
    }

    /// Sandwiches of a stock beyond which one more is of no use to any order.
    pub(super) fn useful_sandwiches(&self, stock: usize) -> u64 {
        (0..self.orders().len())
            .filter_map(|order| self.sandwiches_alone(order, stock))
            .sum()
    }

    /// Packs beyond which one more is of no use, or not to be had.
    pub(super) fn useful_packs(&self, stock: usize) -> u64 {
        let wanted = self.packs_for(stock, self.useful_sandwiches(stock));
        let limit = self.stocks()[stock].pack_limit;
        limit.map_or(wanted, |limit| wanted.min(u64::from(limit)))
    }

    /// Fewest packs that, with the slats on hand, give so many sandwiches.
    pub(super) fn packs_for(&self, stock: usize, sandwiches: u64) -> u64 {
        let slats = &self.stocks()[stock];
        (2 * sandwiches)
            .saturating_sub(slats.on_hand)
            .div_ceil(u64::from(slats.pack_slats))
    }

    /// Sandwiches that the slats on hand and so many packs give.
    pub(super) fn sandwiches_from(&self, stock: usize, packs: u64) -> u64 {
        let slats = &self.stocks()[stock];
        (slats.on_hand + packs * u64::from(slats.pack_slats)) / 2
    }

    /// Largest number that divides every pack price, at least one: every cost is a multiple.
    pub(super) fn price_step(&self) -> i64 {
        let prices = self.stocks().iter().map(|slats| slats.pack_price);
        prices.fold(0, greatest_common_divisor).max(1)
    }
}

fn greatest_common_divisor(a: i64, b: i64) -> i64 {
    if b == 0 {
        a
    } else {
        greatest_common_divisor(b, a % b)
    }
}
