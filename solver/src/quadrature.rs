//! Integrals of smooth functions over a few pieces.

/// Abscissae above 0 and weights of the Gauss–Legendre rule of 16 points on −1 to 1 (Abramowitz
/// and Stegun, *Handbook of Mathematical Functions*, Table 25.4; computed anew with 30 digits).
/// It is exact for polynomials up to degree 31.
const RULE: [(f64, f64); 8] = [
    (0.095_012_509_837_637_44, 0.189_450_610_455_068_5),
    (0.281_603_550_779_258_9, 0.182_603_415_044_923_6),
    (0.458_016_777_657_227_4, 0.169_156_519_395_002_54),
    (0.617_876_244_402_643_7, 0.149_595_988_816_576_73),
    (0.755_404_408_355_003, 0.124_628_971_255_533_87),
    (0.865_631_202_387_831_7, 0.095_158_511_682_492_78),
    (0.944_575_023_073_232_6, 0.062_253_523_938_647_894),
    (0.989_400_934_991_649_9, 0.027_152_459_411_754_096),
];

/// The integral of a function over one piece.
pub(crate) fn piece(from: f64, to: f64, mut value: impl FnMut(f64) -> f64) -> f64 {
    let (middle, half) = ((from + to) / 2.0, (to - from) / 2.0);
    let mut sum = 0.0;
    for (place, weight) in RULE {
        sum += weight * (value(middle - half * place) + value(middle + half * place));
    }
    sum * half
}

/// The integral from one end to the other, piece by piece between the breaks that lie inside.
///
/// It is as good as the function is smooth between two breaks.
pub(crate) fn pieces(
    from: f64,
    to: f64,
    breaks: impl IntoIterator<Item = f64>,
    mut value: impl FnMut(f64) -> f64,
) -> f64 {
    let (mut sum, mut last) = (0.0, from);
    for end in in_order(from, to, breaks.into_iter().collect()) {
        if last < end {
            sum += piece(last, end, &mut value);
            last = end;
        }
    }
    sum
}

/// The breaks inside and the end, from the least.
fn in_order(from: f64, to: f64, mut ends: Vec<f64>) -> Vec<f64> {
    ends.retain(|at| from < *at && *at < to);
    ends.push(to);
    ends.sort_by(f64::total_cmp);
    ends
}

#[cfg(test)]
mod tests {
    use super::*;

    fn power(x: f64, exponent: u32) -> f64 {
        (0..exponent).fold(1.0, |product, _| product * x)
    }

    #[test]
    fn a_piece_is_exact_up_to_degree_31() {
        for degree in 0..32 {
            let found = piece(-0.5, 1.5, |x| power(x, degree));
            let exact = (power(1.5, degree + 1) - power(-0.5, degree + 1)) / f64::from(degree + 1);
            assert!(
                (found / exact - 1.0).abs() < 1e-13,
                "{degree}: {found}, {exact}"
            );
        }
        let missed = piece(-1.0, 1.0, |x| power(x, 32)) * 16.5 - 1.0;
        assert!(missed.abs() > 1e-13, "degree 32 is not");
    }

    #[test]
    fn a_bend_at_a_break_costs_nothing() {
        let found = pieces(-1.0, 2.0, [0.25, 5.0, f64::NAN], |x| (x - 0.25_f64).abs());
        let exact = (1.25 * 1.25 + 1.75 * 1.75) / 2.0;
        assert!((found - exact).abs() < 1e-15);
        assert_eq!(pieces(2.0, -1.0, [0.0], |x| x), 0.0);
    }
}
