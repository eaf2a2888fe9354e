//! Random bits, the same on every machine.

/// xoshiro256++ (D. Blackman and S. Vigna, "Scrambled linear pseudorandom number generators",
/// 2021), seeded from SplitMix64 (G. Steele, D. Lea and C. Flood, "Fast splittable pseudorandom
/// number generators", 2014) as its authors advise.
///
/// Whole-number arithmetic only, so nothing in it depends on the machine.
#[derive(Debug, Clone)]
pub(super) struct Generator([u64; 4]);

/// The step of SplitMix64: 2⁶⁴ over the golden ratio, odd.
const STEP: u64 = 0x9e37_79b9_7f4a_7c15;

impl Generator {
    /// The generator of one of many streams of a seed.
    ///
    /// The states of all streams are drawn from one SplitMix64 sequence, four numbers for each;
    /// as a sequence of a counter it is entered anywhere. So a stream does not depend on those
    /// before it, and no two have the same state.
    pub(super) const fn stream(seed: u64, stream: u64) -> Self {
        let first = seed.wrapping_add(STEP.wrapping_mul(stream.wrapping_mul(4)));
        Self([
            mixed(first.wrapping_add(STEP)),
            mixed(first.wrapping_add(STEP.wrapping_mul(2))),
            mixed(first.wrapping_add(STEP.wrapping_mul(3))),
            mixed(first.wrapping_add(STEP.wrapping_mul(4))),
        ])
    }

    /// Any 64 bits.
    #[inline]
    pub(super) const fn bits(&mut self) -> u64 {
        let [a, b, c, d] = self.0;
        let result = a.wrapping_add(d).rotate_left(23).wrapping_add(a);
        let (c, d) = (c ^ a, d ^ b);
        self.0 = [a ^ d, b ^ c, c ^ (b << 17), d.rotate_left(45)];
        result
    }

    /// A number from 0 up to 1, in steps of 2⁻⁵³.
    pub(super) fn share(&mut self) -> f64 {
        (self.bits() >> 11) as f64 * (1.0 / (1_u64 << 53) as f64)
    }
}

/// The output function of SplitMix64.
const fn mixed(mut bits: u64) -> u64 {
    bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    bits ^ (bits >> 31)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_numbers_are_those_of_the_reference_program() {
        // State 1, 2, 3, 4; the first ten of the authors' C program (from memory).
        let mut generator = Generator([1, 2, 3, 4]);
        let expected: [u64; 10] = [
            41_943_041,
            58_720_359,
            3_588_806_011_781_223,
            3_591_011_842_654_386,
            9_228_616_714_210_784_205,
            9_973_669_472_204_895_162,
            14_011_001_112_246_962_877,
            12_406_186_145_184_390_807,
            15_849_039_046_786_891_736,
            10_450_023_813_501_588_000,
        ];
        for number in expected {
            assert_eq!(generator.bits(), number);
        }
    }

    #[test]
    fn the_states_are_successive_numbers_of_splitmix() {
        // The first three of seed 1234567, from the authors' program (from memory).
        let first = Generator::stream(1_234_567, 0).0;
        assert_eq!(
            first[..3],
            [
                6_457_827_717_110_365_317,
                3_203_168_211_198_807_973,
                9_817_491_932_198_370_423
            ]
        );
        let later = Generator::stream(1_234_567_u64.wrapping_add(STEP.wrapping_mul(8)), 0).0;
        assert_eq!(Generator::stream(1_234_567, 2).0, later);
    }

    #[test]
    fn shares_lie_from_0_up_to_1() {
        let mut generator = Generator::stream(5, u64::MAX);
        assert!((0..10_000).all(|_| (0.0..1.0).contains(&generator.share())));
    }
}
