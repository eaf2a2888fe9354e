//! Planks in fractions: patterns are found as they are needed, and the bound is made safe.
//!
//! Column generation (Gilmore & Gomory 1961): the master values the blanks, the pricing finds the
//! planks worth more than they cost, and these join the master, until there is none. The values are
//! floating point and prove nothing; rounded down to whole numbers and priced exactly they are a
//! certificate in every round, and the best of them is kept.

use std::collections::BTreeSet;

use super::certificate::Certificate;
use super::column::Column;
use super::data::SawingData;
use super::master::{Costs, Dual, shares};
use super::needs::Needs;
use super::pattern::CutPattern;
use super::pricing::{Priced, Values, price};

/// What planks in fractions cost.
#[derive(Clone, Debug)]
pub(super) struct Relaxation {
    /// The patterns known at the end, with the shares a best mixture has of them.
    pub(super) columns: Vec<Column>,
    /// In the order of the columns.
    pub(super) shares: Vec<f64>,
    /// The best certificate met.
    pub(super) certificate: Certificate,
    /// What it proves for these needs.
    pub(super) bound: i64,
}

impl Relaxation {
    /// The patterns known.
    pub(super) fn patterns(&self) -> Vec<CutPattern> {
        let columns = self.columns.iter();
        columns.map(|column| column.pattern.clone()).collect()
    }
}

/// A plank worth more than it costs by less than this part of the dearest is as good as found.
const TOLERANCE: f64 = 1e-9;
/// Values are whole numbers of this part of the dearest plank.
const FINENESS: f64 = (1_i64 << 44) as f64;
/// Patterns that cost more than their blanks are worth by less than this part of the dearest plank
/// may have a share.
const TIGHT: f64 = 1e-6;
/// Patterns handed on for each kind of blank.
const KEPT: usize = 3;
/// Patterns taken in of one kind of plank in a round.
const PATTERNS: usize = 4;

/// Solves the relaxation. `go_on` is asked after each round and may stop.
pub(super) fn relax(
    data: &SawingData,
    needs: &Needs,
    known: &[CutPattern],
    go_on: &mut dyn FnMut() -> bool,
) -> Option<Relaxation> {
    let planks = data.planks().len();
    let dearest = (0..planks)
        .map(|plank| data.weight(plank))
        .max()
        .unwrap_or(0)
        .max(1);
    let unit = dearest as f64;
    let most = needs.most();
    let mut columns: Vec<Column> = Vec::new();
    let mut met: BTreeSet<CutPattern> = BTreeSet::new();
    for pattern in begin(data, needs, &most).iter().chain(known) {
        if let Some(column) = Column::of(data, needs, pattern.clone())
            && met.insert(pattern.clone())
        {
            columns.push(column);
        }
    }
    let short = if data.counts_missing() {
        vec![1.0; most.len()]
    } else {
        shortages(&columns, most.len(), unit)
    };
    let costs = Costs { unit, short };
    let mut dual = Dual::solve(data, needs, &costs, &columns)?;
    let mut best = Certificate::trivial(data);
    let mut bound = best.bound(data, needs);
    loop {
        let mut certificate = whole_numbers(data, needs, (dual.values(), dual.tolls()), unit);
        let priced = price_all(data, needs, &certificate, &most);
        let mut new = worth_more(data, needs, &certificate, &priced);
        new.retain(|column| met.insert(column.pattern.clone()));
        mend(data, needs, &mut certificate, &priced);
        let proved = certificate.bound(data, needs);
        if proved >= bound && certificate.is_counted(data, needs) {
            (best, bound) = (certificate, proved);
        }
        if new.is_empty() || !go_on() {
            break;
        }
        for column in new {
            dual = dual.with(&costs, &column)?;
            columns.push(column);
        }
    }
    let (columns, tight) = cheapest_first(columns, &dual, unit, KEPT * most.len());
    // Only patterns that cost what their blanks are worth have a share.
    let mut shares = shares(data, needs, &costs, &columns[..tight])?;
    shares.resize(columns.len(), 0.0);
    Some(Relaxation {
        columns,
        shares,
        certificate: best,
        bound,
    })
}

/// The certificate that follows from values and tolls, mended where they are not quite right, and what
/// it proves.
pub(super) fn certify(
    data: &SawingData,
    needs: &Needs,
    values_and_tolls: (Vec<f64>, Vec<f64>),
    unit: f64,
) -> (Certificate, i64) {
    let mut certificate = whole_numbers(data, needs, values_and_tolls, unit);
    let priced = price_all(data, needs, &certificate, &needs.most());
    mend(data, needs, &mut certificate, &priced);
    if !certificate.is_counted(data, needs) {
        certificate = Certificate::trivial(data);
    }
    let bound = certificate.bound(data, needs);
    (certificate, bound)
}

/// Values and tolls of a master as whole numbers, rounded towards 0.
fn whole_numbers(
    data: &SawingData,
    needs: &Needs,
    (values, tolls): (Vec<f64>, Vec<f64>),
    unit: f64,
) -> Certificate {
    let scale = (FINENESS / unit) as i64;
    let whole = |value: f64| (value * unit * scale as f64) as i64;
    let most_value = if data.counts_missing() {
        scale
    } else {
        i64::MAX
    };
    let values = values.into_iter();
    let tolls = tolls.into_iter().enumerate();
    Certificate {
        values: values
            .map(|value| whole(value.max(0.0)).min(most_value))
            .collect(),
        tolls: tolls
            .map(|(plank, toll)| {
                let has_limit = needs.planks[plank].most.is_some();
                let toll = if has_limit { toll } else { toll.min(0.0) };
                whole(toll).max(-scale * data.weight(plank))
            })
            .collect(),
        scale,
    }
}

/// Every kind of plank, priced at the values of a certificate.
fn price_all(
    data: &SawingData,
    needs: &Needs,
    certificate: &Certificate,
    most: &[u64],
) -> Vec<Priced> {
    let values = Values {
        blanks: &certificate.values,
        unit: certificate.scale,
        most,
    };
    let none = || Priced {
        most: 0,
        patterns: Vec::new(),
    };
    (0..needs.planks.len())
        .map(|plank| {
            if needs.is_out_of(plank) {
                none()
            } else {
                price(data, plank, values, PATTERNS)
            }
        })
        .collect()
}

/// The patterns whose blanks are worth more than their plank costs.
fn worth_more(
    data: &SawingData,
    needs: &Needs,
    certificate: &Certificate,
    priced: &[Priced],
) -> Vec<Column> {
    let patterns = priced.iter().flat_map(|priced| &priced.patterns);
    let columns = patterns.filter_map(|pattern| Column::of(data, needs, pattern.clone()));
    let pays = |column: &Column| {
        let made = column.made.iter();
        let worth: f64 = made
            .map(|&(blank, made)| made as f64 * certificate.values[blank] as f64)
            .sum();
        let toll = certificate.tolls[column.pattern.plank] as f64;
        worth > column.weight as f64 * certificate.scale as f64 + toll + TOLERANCE * FINENESS
    };
    columns.filter(pays).collect()
}

/// The columns by what they cost beyond the worth of their blanks, so many of them or all that cost no
/// more; and how many those are.
fn cheapest_first(
    columns: Vec<Column>,
    dual: &Dual,
    unit: f64,
    most: usize,
) -> (Vec<Column>, usize) {
    let (values, tolls) = (dual.values(), dual.tolls());
    let slack = |column: &Column| {
        let made = column.made.iter();
        let worth: f64 = made.map(|&(blank, made)| made as f64 * values[blank]).sum();
        column.weight as f64 / unit + tolls[column.pattern.plank] - worth
    };
    let mut ranked: Vec<(f64, Column)> = columns
        .into_iter()
        .map(|column| (slack(&column), column))
        .collect();
    ranked.sort_by(|(one, _), (other, _)| one.total_cmp(other));
    let tight = ranked
        .iter()
        .take_while(|(slack, _)| *slack <= TIGHT)
        .count();
    ranked.truncate(tight.max(most));
    let columns: Vec<Column> = ranked.into_iter().map(|(_, column)| column).collect();
    let tight = tight.min(columns.len());
    (columns, tight)
}

/// Patterns of one kind of blank each, so that every value is bounded.
fn begin(data: &SawingData, needs: &Needs, most: &[u64]) -> Vec<CutPattern> {
    let mut patterns = Vec::new();
    for plank in 0..data.planks().len() {
        if needs.is_out_of(plank) {
            continue;
        }
        for blank in 0..most.len() {
            if most[blank] == 0 || !data.boards()[plank].takes(blank) {
                continue;
            }
            let mut alone = vec![0; most.len()];
            alone[blank] = 1;
            let values = Values {
                blanks: &alone,
                unit: 0,
                most,
            };
            patterns.extend(price(data, plank, values, 1).patterns);
        }
    }
    patterns
}

/// What a missing blank costs: far more than it takes of a plank that holds it alone.
fn shortages(columns: &[Column], blanks: usize, unit: f64) -> Vec<f64> {
    let mut fair = vec![f64::INFINITY; blanks];
    for column in columns {
        if let [(blank, made)] = column.made[..] {
            fair[blank] = fair[blank].min(column.weight as f64 / unit / made as f64);
        }
    }
    fair.into_iter()
        .map(|fair| {
            if fair.is_finite() {
                (fair * DEAR).max(1e-6)
            } else {
                1.0
            }
        })
        .collect()
}

/// How many times as dear a missing blank is as one that is sawn.
const DEAR: f64 = 1000.0;

/// Makes the condition of a certificate hold, where planks are worth more than it allows.
fn mend(data: &SawingData, needs: &Needs, certificate: &mut Certificate, priced: &[Priced]) {
    let old = certificate.scale;
    for (plank, priced) in priced.iter().enumerate() {
        let weight = data.weight(plank);
        let least = weight - data.offcut_worth(data.boards()[plank].length);
        let over = i128::from(priced.most)
            - i128::from(old) * i128::from(weight)
            - i128::from(certificate.tolls[plank]);
        if over <= 0 || needs.is_out_of(plank) {
            continue;
        }
        if least > 0 {
            let scale = i128::from(old) + (over + i128::from(least) - 1) / i128::from(least);
            certificate.scale = certificate
                .scale
                .max(scale.min(i128::from(i64::MAX)) as i64);
        } else if needs.planks[plank].most.is_some() {
            certificate.tolls[plank] += over as i64;
        } else {
            for slice in data.boards()[plank]
                .strips
                .iter()
                .flat_map(|strip| &strip.slices)
            {
                certificate.values[slice.blank] = 0;
            }
        }
    }
}
