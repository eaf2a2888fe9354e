//! The same random numbers on every machine.

/// SplitMix64 (Steele, Lea & Flood, "Fast splittable pseudorandom number generators", 2014):
/// whole-number arithmetic only, so nothing in it depends on the machine.
pub(crate) struct Dice(u64);

impl Dice {
    pub(crate) const fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// Any 64 bits.
    pub(crate) const fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut bits = self.0;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        bits ^ (bits >> 31)
    }

    /// A number from `least` up to `most`, in steps of 2⁻⁵³ of the range.
    pub(crate) fn between(&mut self, least: f64, most: f64) -> f64 {
        let share = (self.bits() >> 11) as f64 / (1_u64 << 53) as f64;
        least + (most - least) * share
    }

    /// One of a list that is not empty.
    pub(crate) fn one_of<T: Copy>(&mut self, list: &[T]) -> T {
        let place = self.bits() % list.len() as u64;
        list[place as usize]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_numbers_are_those_of_the_paper() {
        // The first three of seed 1234567, from the reference program of the authors
        // (from memory).
        let mut dice = Dice::new(1_234_567);
        let expected = [
            6_457_827_717_110_365_317,
            3_203_168_211_198_807_973,
            9_817_491_932_198_370_423,
        ];
        assert_eq!([dice.bits(), dice.bits(), dice.bits()], expected);
    }

    #[test]
    fn numbers_stay_in_their_range() {
        let mut dice = Dice::new(7);
        assert!((0..1000).all(|_| (2.0..3.0).contains(&dice.between(2.0, 3.0))));
    }
}
