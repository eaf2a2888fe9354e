//! Planks cut up at random to the last micrometre, so that the least number is known, and instances of
//! the generator CUTGEN1 (Gau & Wäscher 1995), which are held against their wood.

use super::solved;
use solver::sawing::SawingDraft;

/// Lehmer's generator, as CUTGEN1 prescribes it.
struct Dice(u64);

impl Dice {
    /// From 0 to 1.
    fn share(&mut self) -> f64 {
        self.0 = self.0 * 16_807 % 2_147_483_647;
        self.0 as f64 / 2_147_483_647.0
    }

    /// From `low` to `high`, both possible.
    fn between(&mut self, low: i64, high: i64) -> i64 {
        low + (self.share() * (high - low + 1) as f64) as i64
    }
}

/// Pieces of one length counted together, longest first.
fn gathered(mut lengths: Vec<i64>) -> Vec<(i64, u64)> {
    lengths.sort_unstable_by(|one, other| other.cmp(one));
    lengths
        .chunk_by(|one, other| one == other)
        .map(|alike| (alike[0], alike.len() as u64))
        .collect()
}

#[test]
fn planks_cut_up_with_their_kerfs_are_put_together_again() {
    for seed in 1..=6_u32 {
        let mut dice = Dice(u64::from(seed) * 1_000 + 7);
        let (length, kerf, planks) = (3_600, 4, 8 + 4 * i64::from(seed % 3));
        let mut pieces = Vec::new();
        for _ in 0..planks {
            let mut left = length;
            while left > 1_700 {
                let piece = dice.between(400, 1_200);
                pieces.push(piece);
                left -= piece + kerf;
            }
            pieces.push(left);
        }
        let data = SawingDraft::along(length, kerf, &gathered(pieces))
            .check()
            .expect("pieces that fit");
        let (plan, _, meets) = solved(&data, 400);
        assert!(
            meets && plan.cost == planks,
            "seed {seed}: {} of {planks}",
            plan.cost
        );
    }
}

#[test]
fn triplets_are_put_together_again() {
    for seed in 1..=4_u32 {
        let mut dice = Dice(u64::from(seed) * 1_000 + 11);
        let mut pieces = Vec::new();
        let planks = 12 + i64::from(seed);
        for _ in 0..planks {
            let first = dice.between(380, 490);
            let second = dice.between(250, (1_000 - first) / 2);
            pieces.extend([first, second, 1_000 - first - second]);
        }
        let data = SawingDraft::along(1_000, 0, &gathered(pieces))
            .check()
            .expect("pieces that fit");
        let (plan, _, meets) = solved(&data, 400);
        assert!(
            meets && plan.cost == planks,
            "seed {seed}: {} of {planks}",
            plan.cost
        );
    }
}

/// m kinds between two shares of a length of 1000, with a mean demand, by CUTGEN1.
fn cutgen1(dice: &mut Dice, kinds: usize, shares: (f64, f64), mean: f64) -> Vec<(i64, u64)> {
    let mut lengths: Vec<i64> = (0..kinds)
        .map(|_| {
            let thrown = dice.share();
            ((shares.0 + (shares.1 - shares.0) * thrown) * 1_000.0 + thrown) as i64
        })
        .collect();
    lengths.sort_unstable_by(|one, other| other.cmp(one));
    let parts: Vec<f64> = (0..kinds).map(|_| dice.share()).collect();
    let all: f64 = parts.iter().sum();
    let total = kinds as f64 * mean;
    let mut pieces: Vec<(i64, u64)> = Vec::new();
    let mut left = total as u64;
    for (at, (length, part)) in lengths.into_iter().zip(parts).enumerate() {
        let share = ((part / all * total + 0.5) as u64).max(1);
        let demand = if at + 1 == kinds { left.max(1) } else { share };
        left = left.saturating_sub(demand);
        match pieces.last_mut() {
            Some((known, demands)) if *known == length => *demands += demand,
            _ => pieces.push((length, demand)),
        }
    }
    pieces
}

#[test]
fn the_generator_makes_the_published_sample() {
    // Gau & Wäscher 1995: the first instance of 10 kinds from 0.375 to 0.625, mean demand 50.
    let first = cutgen1(&mut Dice(1994), 10, (0.375, 0.625), 50.0);
    let published = [
        (577, 63),
        (570, 64),
        (544, 85),
        (539, 84),
        (526, 54),
        (512, 20),
        (504, 24),
        (459, 31),
        (446, 48),
        (378, 27),
    ];
    assert_eq!(first, published);
}

#[test]
fn instances_of_the_generator_are_proved() {
    let mut dice = Dice(1994);
    for kinds in [10, 20, 40] {
        for shares in [(0.01, 0.2), (0.01, 0.8), (0.2, 0.8)] {
            for mean in [10.0, 100.0] {
                let pieces = cutgen1(&mut dice, kinds, shares, mean);
                let wood: i64 = pieces
                    .iter()
                    .map(|(length, demand)| length * demand.cast_signed())
                    .sum();
                let data = SawingDraft::along(1_000, 0, &pieces)
                    .check()
                    .expect("pieces that fit");
                let (plan, _, meets) = solved(&data, 400);
                assert!(meets, "{kinds} kinds, {shares:?}, {mean}");
                assert!(plan.cost >= (wood + 999) / 1_000);
            }
        }
    }
}
