//! Decimal digits as a person writes them, exact where binary numbers are not.
//!
//! A number that is typed or shown passes through here, so that `0.1 in` is 2.54 mm and not
//! its neighbour, and 1.005 is rounded as its digits say.

/// The number `digits · 10^exponent`, never negative.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Decimal {
    digits: u128,
    exponent: i32,
}

impl Decimal {
    /// One.
    pub(crate) const ONE: Self = Self::new(1, 0);
    /// Millimetres in an inch, 25.4.
    pub(crate) const INCH: Self = Self::new(254, -1);

    /// The number `digits · 10^exponent`.
    pub(crate) const fn new(digits: u128, exponent: i32) -> Self {
        Self { digits, exponent }
    }

    /// The number written `whole.fraction · 10^exponent`; both texts hold ASCII digits only.
    ///
    /// Digits beyond the 28th weigh less than 1e-27 of the whole and are dropped.
    pub(crate) fn written(whole: &str, fraction: &str, exponent: i32) -> Self {
        const FULL: u128 = 10_u128.pow(27);
        let mut number = Self::new(0, exponent);
        let whole = whole.bytes().map(|digit| (digit, 0));
        let fraction = fraction.bytes().map(|digit| (digit, -1));
        for (digit, step) in whole.chain(fraction) {
            if number.digits < FULL {
                number.digits = number.digits * 10 + u128::from(digit - b'0');
                number.exponent += step;
            } else {
                number.exponent += step + 1;
            }
        }
        number
    }

    /// The fewest digits that still mean this very `value`, which is finite and not negative.
    pub(crate) fn shortest(value: f64) -> Self {
        let text = format!("{value:e}");
        let (mantissa, exponent) = text.split_once('e').expect("`{:e}` writes an exponent");
        let (whole, fraction) = mantissa.split_once('.').unwrap_or((mantissa, ""));
        let exponent = exponent.parse().expect("`{:e}` writes a whole exponent");
        Self::written(whole, fraction, exponent)
    }

    /// The digits, without their exponent.
    pub(crate) fn digits(self) -> u128 {
        self.digits
    }

    /// The power of ten of the last digit.
    pub(crate) fn exponent(self) -> i32 {
        self.exponent
    }

    /// The product with a short number such as a unit's size.
    pub(crate) fn times(self, other: Self) -> Self {
        Self::new(self.digits * other.digits, self.exponent + other.exponent)
    }

    /// Rounded to `places` decimals, a half going up, as one does by hand.
    ///
    /// Meant for the digits of [`shortest`](Self::shortest): at most 17 of them.
    pub(crate) fn rounded(self, places: usize) -> Self {
        let last = -i32::try_from(places).unwrap_or(i32::MAX);
        match last.saturating_sub(self.exponent) {
            ..=0 => self,
            surplus @ 1..=20 => {
                let power = 10_u128.pow(surplus.unsigned_abs());
                Self::new((self.digits + power / 2) / power, last)
            }
            _ => Self::new(0, last),
        }
    }

    /// The digits before and after the decimal point; the second text may be empty.
    pub(crate) fn positional(self) -> (String, String) {
        let mut whole = self.digits.to_string();
        let shift = self.exponent.unsigned_abs() as usize;
        if self.digits == 0 {
            return (whole, String::new());
        }
        if self.exponent >= 0 {
            whole.extend(std::iter::repeat_n('0', shift));
            return (whole, String::new());
        }
        let padded = format!("{whole:0>width$}", width = shift + 1);
        let (whole, fraction) = padded.split_at(padded.len() - shift);
        (whole.to_owned(), fraction.to_owned())
    }

    /// The nearest `f64`.
    pub(crate) fn to_f64(self) -> f64 {
        format!("{}e{}", self.digits, self.exponent)
            .parse()
            .expect("digits, e and an exponent are a number")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check_rounded(value: f64, places: usize, expected: (&str, &str)) {
        let (whole, fraction) = Decimal::shortest(value).rounded(places).positional();
        assert_eq!((whole.as_str(), fraction.as_str()), expected);
    }

    #[test]
    fn a_half_goes_up_as_the_digits_say() {
        check_rounded(1.005, 2, ("1", "01"));
    }
    #[test]
    fn a_little_less_than_half_goes_down() {
        check_rounded(1.0049999, 2, ("1", "00"));
    }
    #[test]
    fn nines_carry_over() {
        check_rounded(99.999, 2, ("100", "00"));
    }
    #[test]
    fn a_speck_rounds_to_nothing() {
        check_rounded(5e-324, 2, ("0", ""));
    }
    #[test]
    fn half_of_the_last_place_is_one_of_it() {
        check_rounded(0.005, 2, ("0", "01"));
    }
    #[test]
    fn large_numbers_keep_their_zeros() {
        check_rounded(1e20, 2, ("100000000000000000000", ""));
    }
    #[test]
    fn more_digits_than_fit_keep_their_weight() {
        let long = Decimal::written(&"9".repeat(40), &"9".repeat(40), 0).to_f64();
        assert_eq!(long, 1e40);
        let small = Decimal::written("", &format!("{}1", "0".repeat(60)), 0).to_f64();
        assert_eq!(small, 1e-61);
    }
}
