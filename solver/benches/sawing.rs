//! How fast the plan of the cuts is, beside a plain way of finding only its bound.
//!
//! A two-stage shop like that of the invented works, and cutting stock of forty lengths. The plain
//! way is the textbook's: columns are generated for the linear relaxation, and a plank is priced by a
//! dynamic program over every step of its length and of its width (Gilmore and Gomory 1961 and 1965),
//! with nothing left out of it. It ends with a bound in fractions of planks; the plan, whole planks
//! and a proof are not its business. What is wanted of the plan: no plan below that bound, and none
//! dearer than taking sections first-fit, longest first.

#![expect(clippy::print_stdout, reason = "a benchmark speaks to the terminal")]

use criterion::{BenchmarkId, Criterion};
use good_lp::{Expression, Solution, SolverModel, Variable, microlp, variable, variables};
use solver::sawing::{
    BlankOrder, Dimensions, PlankStock, SawingAim, SawingData, SawingDraft, SawingLimits,
    SawingOutcome, saw,
};
use std::hint::black_box;
use std::time::{Duration, Instant};

/// Planks of three kinds for three kinds of blank, in micrometres. All sizes are whole tenths of a
/// millimetre, which the tables of the plain way live on; the plan knows nothing of it.
fn two_stage() -> SawingDraft {
    let plank = |length, width, thickness, price| PlankStock {
        size: Dimensions {
            length,
            width,
            thickness,
        },
        end_trim: 20_000,
        edge_trim: 4_000,
        price,
        on_hand: None,
    };
    let blank = |length, width, thickness, demand| BlankOrder {
        size: Dimensions {
            length,
            width,
            thickness,
        },
        demand,
        over_worth: 0,
        most_over: 0,
    };
    SawingDraft {
        planks: vec![
            plank(3_050_000, 205_000, 80_000, 2_360),
            plank(2_440_000, 280_000, 80_000, 2_690),
            plank(1_830_000, 155_000, 83_000, 1_020),
        ],
        blanks: vec![
            blank(186_000, 76_100, 5_900, 5_400),
            blank(190_000, 78_200, 6_100, 2_600),
            blank(181_000, 76_500, 7_700, 1_500),
        ],
        crosscut_kerf: 4_000,
        rip_kerf: 1_600,
        offcuts: None,
        aim: SawingAim::Cost,
    }
}

/// Forty lengths by a linear congruential generator (Knuth, The Art of Computer Programming 2, 3.2.1),
/// of a twentieth to a half of the stock.
fn cutting_stock() -> SawingDraft {
    let mut state = 1_u32;
    let mut next = |from: u32, to: u32| {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        from + (state >> 8) % (to - from)
    };
    let mut pieces: Vec<(i64, u64)> = Vec::new();
    while pieces.len() < 40 {
        let length = i64::from(next(500, 5_000));
        if pieces.iter().all(|(other, _)| *other != length) {
            pieces.push((length, u64::from(next(1, 100))));
        }
    }
    SawingDraft::along(10_000, 0, &pieces)
}

/// A plank sawn in one way: its weight, and how many of each blank come of it.
struct Column {
    weight: f64,
    made: Vec<f64>,
}

/// The plain way: the shop in steps of a common size.
struct Plain<'a> {
    draft: &'a SawingDraft,
    data: &'a SawingData,
    /// Micrometres of a step.
    step: i64,
}

/// What fills a length best: its worth, and how many of each item.
struct Filled {
    worth: f64,
    counts: Vec<f64>,
}

/// The best filling of a room with items of a size and a worth each, by a table over every step.
fn fill(room: usize, items: &[(usize, f64)]) -> Filled {
    let mut table = vec![(0.0_f64, usize::MAX); room + 1];
    for at in 1..=room {
        table[at] = (table[at - 1].0, usize::MAX);
        for (item, &(size, worth)) in items.iter().enumerate() {
            if size <= at && table[at - size].0 + worth > table[at].0 {
                table[at] = (table[at - size].0 + worth, item);
            }
        }
    }
    let mut counts = vec![0.0; items.len()];
    let mut at = room;
    while at > 0 {
        match table[at].1 {
            usize::MAX => at -= 1,
            item => {
                counts[item] += 1.0;
                at -= items[item].0;
            }
        }
    }
    Filled {
        worth: table[room].0,
        counts,
    }
}

impl Plain<'_> {
    /// Whole steps of a length; those of this bench are whole.
    fn steps(&self, micrometres: i64) -> usize {
        assert_eq!(micrometres % self.step, 0, "sizes in whole steps");
        (micrometres / self.step) as usize
    }

    /// The plank of a kind that is worth most, by a table for each length of section and one for the
    /// plank.
    fn price(&self, plank: usize, values: &[f64]) -> (f64, Column) {
        let (draft, stock) = (self.draft, &self.draft.planks[plank]);
        let mut lengths: Vec<i64> = draft.blanks.iter().map(|blank| blank.size.length).collect();
        lengths.sort_unstable();
        lengths.dedup();
        let width = self.steps(stock.size.width - 2 * stock.edge_trim + draft.rip_kerf);
        let sections: Vec<(usize, Filled, Vec<usize>)> = lengths
            .iter()
            .map(|&length| {
                let of_it = |blank: &usize| {
                    let size = draft.blanks[*blank].size;
                    size.length == length && size.width <= stock.size.thickness
                };
                let blanks: Vec<usize> = (0..draft.blanks.len()).filter(of_it).collect();
                let item = |&blank: &usize| {
                    let take = draft.blanks[blank].size.thickness + draft.rip_kerf;
                    (self.steps(take), values[blank])
                };
                let items: Vec<(usize, f64)> = blanks.iter().map(item).collect();
                let take = self.steps(length + draft.crosscut_kerf);
                (take, fill(width, &items), blanks)
            })
            .collect();
        let items: Vec<(usize, f64)> = sections
            .iter()
            .map(|(take, section, _)| (*take, section.worth))
            .collect();
        let length = self.steps(stock.size.length - 2 * stock.end_trim + draft.crosscut_kerf);
        let filled = fill(length, &items);
        let mut made = vec![0.0; draft.blanks.len()];
        for ((_, section, blanks), count) in sections.iter().zip(&filled.counts) {
            for (blank, pieces) in blanks.iter().zip(&section.counts) {
                made[*blank] += count * pieces;
            }
        }
        let weight = self.data.weight(plank) as f64;
        (filled.worth, Column { weight, made })
    }

    /// The bound of the relaxation.
    fn bound(&self) -> f64 {
        let blanks = self.draft.blanks.len();
        let planks = self.draft.planks.len();
        // Each blank alone: what the first values are bounded by.
        let alone = |blank: usize| {
            let mut values = vec![0.0; blanks];
            values[blank] = 1.0;
            (0..planks).map(move |plank| (plank, values.clone()))
        };
        let mut columns: Vec<Column> = (0..blanks)
            .flat_map(alone)
            .map(|(plank, values)| self.price(plank, &values).1)
            .filter(|column| column.made.iter().any(|made| *made > 0.0))
            .collect();
        loop {
            let (values, bound) = self.values(&columns);
            let before = columns.len();
            for plank in 0..planks {
                let (worth, column) = self.price(plank, &values);
                if worth > column.weight * (1.0 + 1e-9) {
                    columns.push(column);
                }
            }
            if columns.len() == before {
                return bound;
            }
        }
    }

    /// The values of the blanks, which the columns hold down, and what is wanted at these values.
    fn values(&self, columns: &[Column]) -> (Vec<f64>, f64) {
        let mut model = variables!();
        let values: Vec<Variable> = model.add_vector(variable().min(0.0), self.draft.blanks.len());
        let wanted: Expression = (self.draft.blanks.iter().zip(&values))
            .map(|(blank, value)| blank.demand as f64 * *value)
            .sum();
        let mut model = model.maximise(wanted.clone()).using(microlp);
        for column in columns {
            let worth: Expression = (column.made.iter().zip(&values))
                .map(|(made, value)| *made * *value)
                .sum();
            model.add_constraint(worth.leq(column.weight));
        }
        let solution = model.solve().expect("bounded by the blanks alone");
        let values = values.iter().map(|value| solution.value(*value)).collect();
        (values, solution.eval(wanted))
    }
}

/// What it comes to when sections of one kind of blank are sawn from planks of one kind, longest
/// first, each from the first plank that has room, with the kind of plank that makes it least.
fn first_fit(draft: &SawingDraft, data: &SawingData) -> i64 {
    let cost = |plank: usize| {
        let stock = &draft.planks[plank];
        let length = stock.size.length - 2 * stock.end_trim + draft.crosscut_kerf;
        let width = stock.size.width - 2 * stock.edge_trim + draft.rip_kerf;
        let mut order: Vec<&BlankOrder> = draft.blanks.iter().collect();
        order.sort_by_key(|blank| -blank.size.length);
        let mut left: Vec<i64> = Vec::new();
        for blank in order {
            let take = blank.size.length + draft.crosscut_kerf;
            let pieces = width / (blank.size.thickness + draft.rip_kerf);
            if blank.size.width > stock.size.thickness || take > length || pieces < 1 {
                return None;
            }
            for _ in 0..blank.demand.div_ceil(pieces.unsigned_abs()) {
                match left.iter_mut().find(|left| **left >= take) {
                    Some(left) => *left -= take,
                    None => left.push(length - take),
                }
            }
        }
        Some(data.weight(plank) * left.len() as i64)
    };
    let costs = (0..draft.planks.len()).filter_map(cost);
    costs.min().expect("a kind of plank takes all blanks")
}

/// The plan: what it comes to, and what no plan comes below.
fn planned(data: &SawingData) -> (i64, i64) {
    let outcome = saw(black_box(data), &SawingLimits::default(), &mut |_| true);
    match outcome.expect("a plan stands its recount") {
        SawingOutcome::Proved { plan, .. } => (plan.cost, plan.cost),
        SawingOutcome::WithinGap { plan, bound, .. } => (plan.cost, bound),
        _ => panic!("there are planks without end"),
    }
}

/// The shortest of some runs: what the machine can do when nothing else disturbs it.
fn shortest(runs: u32, mut work: impl FnMut()) -> Duration {
    let run = |_| {
        let start = Instant::now();
        work();
        start.elapsed()
    };
    (0..runs).map(run).min().unwrap_or_default()
}

fn main() {
    let cases = [
        ("two-stage shop", two_stage(), 100),
        ("cutting stock of 40 lengths", cutting_stock(), 1),
    ];
    let cases = cases.map(|(name, draft, step)| {
        let data = draft.clone().check().expect("usual sizes are sound");
        (name, draft, data, step)
    });
    let mut criterion = Criterion::default()
        .warm_up_time(Duration::from_millis(300))
        .measurement_time(Duration::from_secs(2))
        .sample_size(10)
        .configure_from_args();
    let mut group = criterion.benchmark_group("plan of the cuts");
    for (name, _, data, _) in &cases {
        group.bench_function(BenchmarkId::from_parameter(name), |bencher| {
            bencher.iter(|| planned(data));
        });
    }
    group.finish();

    for (name, draft, data, step) in &cases {
        let plain = Plain {
            draft,
            data,
            step: *step,
        };
        let (cost, bound) = planned(data);
        let (relaxed, fitted) = (plain.bound(), first_fit(draft, data));
        assert!(
            bound as f64 >= relaxed * (1.0 - 1e-6),
            "{name}: no plan below {bound}, though its relaxation comes to {relaxed}"
        );
        assert!(
            bound <= cost && cost <= fitted,
            "{name}: {bound} {cost} {fitted}"
        );
        let ours = shortest(5, || {
            planned(data);
        });
        let theirs = shortest(2, || {
            black_box(plain.bound());
        });
        let ratio = theirs.as_secs_f64() / ours.as_secs_f64().max(1e-9);
        println!(
            "{name}: {ours:?} to a plan at {cost}, no plan below {bound}, first fit {fitted}; the plain \
             bound {relaxed:.1} in {theirs:?}, {ratio:.1} times as long"
        );
    }
}
