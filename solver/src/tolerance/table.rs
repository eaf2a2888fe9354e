//! A function that is costly to evaluate, kept as polynomials.

/// Terms of each polynomial.
const TERMS: usize = 16;

/// A function of one number, piece by piece as a polynomial in Chebyshev form.
///
/// On a piece from a to b, with t = (2x − a − b)/(b − a) and the values f_j at the roots
/// t_j = cos(π(j + ½)/N) of T_N, the polynomial is ½c₀ + Σ c_k·T_k(t) with
/// c_k = 2/N · Σ f_j·cos(πk(j + ½)/N); summed by Clenshaw's recurrence (W. H. Press et al.,
/// *Numerical Recipes*, section 5.8). The roots lie inside, so a step at the end of a piece does no
/// harm. Beyond its last piece the function is 0.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Table {
    ends: Vec<f64>,
    pieces: Vec<[f64; TERMS]>,
}

impl Table {
    /// A function from the first end to the last one, smooth between two neighbours of them; ends
    /// nearer than `least` to the one before are left out.
    pub(super) fn new(mut ends: Vec<f64>, least: f64, value: impl Fn(f64) -> f64) -> Self {
        ends.sort_by(f64::total_cmp);
        ends.dedup_by(|next, kept| *next <= *kept + least);
        let angle = |k: usize, j: usize| {
            let step = std::f64::consts::PI / TERMS as f64;
            libm::cos(step * k as f64 * (j as f64 + 0.5))
        };
        let pieces = ends.windows(2).map(|piece| {
            let (middle, half) = (
                f64::midpoint(piece[0], piece[1]),
                (piece[1] - piece[0]) / 2.0,
            );
            let values: [f64; TERMS] = std::array::from_fn(|j| value(middle + half * angle(1, j)));
            std::array::from_fn(|k| {
                let sum: f64 = (0..TERMS).map(|j| values[j] * angle(k, j)).sum();
                sum * 2.0 / TERMS as f64
            })
        });
        Self {
            pieces: pieces.collect(),
            ends,
        }
    }

    /// The value at a place, 0 beyond the ends.
    pub(super) fn at(&self, x: f64) -> f64 {
        let after = self.ends.partition_point(|end| *end <= x);
        let (Some(from), Some(to)) = (self.ends.get(after.wrapping_sub(1)), self.ends.get(after))
        else {
            return 0.0;
        };
        let t = ((x - from) + (x - to)) / (to - from);
        let (mut one, mut before) = (0.0, 0.0);
        let [first, rest @ ..] = &self.pieces[after - 1];
        for term in rest.iter().rev() {
            (one, before) = (2.0 * t * one - before + term, one);
        }
        t * one - before + first / 2.0
    }

    /// Where its pieces end.
    pub(super) fn ends(&self) -> &[f64] {
        &self.ends
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quadrature;

    #[test]
    fn a_smooth_function_keeps_twelve_digits() {
        let table = Table::new(vec![0.0, 1.0, 2.0, 4.0], 0.0, libm::exp);
        for step in 0..400 {
            let x = f64::from(step) / 100.0;
            assert!((table.at(x) / libm::exp(x) - 1.0).abs() < 1e-12, "{x}");
        }
        assert_eq!((table.at(-0.1), table.at(4.0)), (0.0, 0.0));
        let whole = quadrature::pieces(0.0, 4.0, table.ends().to_vec(), |x| table.at(x));
        assert!((whole / libm::expm1(4.0) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_step_between_two_pieces_stays_a_step() {
        let step = |x: f64| if x < 0.3 { 1.0 } else { 0.0 };
        let table = Table::new(vec![0.0, 0.3, 0.3, 1.0], 0.0, step);
        assert!((table.at(0.299_999_9) - 1.0).abs() < 1e-14);
        assert!(table.at(0.3).abs() < 1e-14);
    }

    #[test]
    fn ends_that_are_one_make_no_piece() {
        let table = Table::new(vec![1.0, 0.0, 1.0 + 1e-9], 1e-6, |x| x);
        assert_eq!(table.ends(), [0.0, 1.0]);
    }
}
