//! Normally distributed random numbers.

use super::generator::Generator;
use std::f64::consts::FRAC_1_SQRT_2;

const LAYERS: usize = 256;
/// Where the tail begins with 256 layers, so that all have the same area: R of the paper below.
const TAIL: f64 = 3.654_152_885_361_009;

/// The ziggurat method (G. Marsaglia and W. W. Tsang, "The ziggurat method for generating random
/// variables", *Journal of Statistical Software* 5, 2000), with separate bits for the layer and
/// for the place in it, as J. A. Doornik ("An improved ziggurat method to generate normal random
/// samples", 2005) asks for.
///
/// Under exp(−x²/2), layer 0 is the box up to R with the tail beyond, and the others are boxes as
/// wide as the curve is at their foot; all have the area V. Of 100 numbers 99 need one
/// multiplication and one comparison. Tables, wedge and tail go through `libm`, so that the same
/// bits give the same number on every machine.
#[derive(Debug, Clone)]
pub(super) struct Ziggurat {
    layers: Box<[Layer; LAYERS]>,
}

#[derive(Debug, Clone, Copy, Default)]
struct Layer {
    /// Its width at the foot; of layer 0 that of a box of the same area.
    foot: f64,
    /// Its width at the top: up to there the whole layer lies under the curve.
    top: f64,
    /// The curve at the foot and at the top.
    low: f64,
    high: f64,
}

impl Ziggurat {
    pub(super) fn new() -> Self {
        let curve = |x: f64| libm::exp(-0.5 * x * x);
        let tail = (std::f64::consts::PI / 2.0).sqrt() * libm::erfc(TAIL * FRAC_1_SQRT_2);
        let area = TAIL * curve(TAIL) + tail;
        let mut layers = Box::new([Layer::default(); LAYERS]);
        let (mut foot, mut low) = (TAIL, curve(TAIL));
        let last = LAYERS - 1;
        for (k, layer) in layers.iter_mut().enumerate() {
            if k == 0 {
                *layer = Layer {
                    foot: area / low,
                    top: TAIL,
                    low: 0.0,
                    high: low,
                };
                continue;
            }
            let high = if k == last { 1.0 } else { low + area / foot };
            let top = if k == last {
                0.0
            } else {
                (-2.0 * libm::log(high)).sqrt()
            };
            *layer = Layer {
                foot,
                top,
                low,
                high,
            };
            (foot, low) = (top, high);
        }
        Self { layers }
    }

    /// A number of the standard normal distribution.
    #[inline]
    pub(super) fn number(&self, generator: &mut Generator) -> f64 {
        loop {
            let bits = generator.bits();
            // The lowest 8 bits choose the layer, the highest 53 the place from −1 up to 1.
            let layer = &self.layers[(bits & 0xff) as usize];
            let place = ((bits as i64) >> 11) as f64 * (1.0 / (1_u64 << 52) as f64);
            let number = place * layer.foot;
            if number.abs() < layer.top {
                return number;
            }
            if let Some(number) = beside(layer, number, generator) {
                return number;
            }
        }
    }
}

/// A number from the tail or from the wedge beside the curve, if it lies under the curve.
#[cold]
fn beside(layer: &Layer, number: f64, generator: &mut Generator) -> Option<f64> {
    if layer.low == 0.0 {
        // Marsaglia's tail: exponential numbers until one lies under the curve.
        loop {
            let beyond = -libm::log(1.0 - generator.share()) / TAIL;
            let height = -libm::log(1.0 - generator.share());
            if 2.0 * height > beyond * beyond {
                return Some((TAIL + beyond).copysign(number));
            }
        }
    }
    let height = layer.low + (layer.high - layer.low) * generator.share();
    (height < libm::exp(-0.5 * number * number)).then_some(number)
}

#[cfg(test)]
mod tests {
    use super::super::normal::Normal;
    use super::*;

    #[test]
    fn all_layers_have_the_same_area_and_the_last_ends_at_the_top() {
        let ziggurat = Ziggurat::new();
        let area = ziggurat.layers[0].foot * ziggurat.layers[0].high;
        // V of 256 layers, computed with 30 digits; the paper prints 0.00492867323399.
        assert!((area - 0.004_928_673_233_974_655).abs() < 1e-17, "{area}");
        for layer in &ziggurat.layers[1..] {
            let found = layer.foot * (layer.high - layer.low);
            assert!((found / area - 1.0).abs() < 1e-11, "{found}");
        }
    }

    fn numbers(count: usize) -> Vec<f64> {
        let ziggurat = Ziggurat::new();
        let mut generator = Generator::stream(2, 7);
        (0..count)
            .map(|_| ziggurat.number(&mut generator))
            .collect()
    }

    /// Moments of the standard normal distribution within five standard errors: the k-th power
    /// has the mean (k − 1)!! for even k and 0 for odd k.
    #[test]
    fn moments_are_those_of_the_normal_distribution() {
        let numbers = numbers(2_000_000);
        let means = [0.0, 1.0, 0.0, 3.0, 0.0, 15.0];
        // The variance of the k-th power is (2k − 1)!! − mean².
        let double_factorials = [1.0, 3.0, 15.0, 105.0, 945.0, 10_395.0];
        for (k, (mean, double)) in (1..).zip(means.into_iter().zip(double_factorials)) {
            let power = |x: &f64| (0..k).fold(1.0, |product, _| product * x);
            let found = numbers.iter().map(power).sum::<f64>() / numbers.len() as f64;
            let error = ((double - mean * mean) / numbers.len() as f64).sqrt();
            assert!(
                (found - mean).abs() < 5.0 * error,
                "{k}: {found} for {mean}"
            );
        }
    }

    /// Counts in 80 equal steps and in both tails, one of which begins where the table ends, by
    /// chi-squared: with 84 classes it stays below 140 but once in 10 000 (mean 83, deviation 12.9).
    #[test]
    fn counts_are_those_of_the_normal_distribution() {
        let numbers = numbers(2_000_000);
        let mut bounds: Vec<f64> = (-40..=40).map(|step| f64::from(step) * 0.09).collect();
        bounds.extend([-TAIL, TAIL]);
        bounds.sort_by(f64::total_cmp);
        let mut counts = vec![0_u32; bounds.len() + 1];
        for number in &numbers {
            counts[bounds.partition_point(|bound| bound <= number)] += 1;
        }
        let standard = Normal::new(0.0, 1.0);
        let mut square = 0.0;
        for (class, count) in counts.into_iter().enumerate() {
            let low = class
                .checked_sub(1)
                .map_or(f64::NEG_INFINITY, |below| bounds[below]);
            let high = bounds.get(class).copied().unwrap_or(f64::INFINITY);
            let expected = standard.between(low, high) * numbers.len() as f64;
            square += (f64::from(count) - expected) * (f64::from(count) - expected) / expected;
        }
        assert!(square < 140.0, "{square}");
    }

    #[test]
    fn the_tail_is_that_of_the_normal_distribution() {
        let numbers = numbers(4_000_000);
        let standard = Normal::new(0.0, 1.0);
        for bound in [TAIL, 4.0, 4.5] {
            let expected = 2.0 * standard.at_least(bound) * numbers.len() as f64;
            let found = numbers
                .iter()
                .filter(|number| number.abs() >= bound)
                .count() as f64;
            assert!(
                (found - expected).abs() < 5.0 * expected.sqrt(),
                "{bound}: {found} for {expected}"
            );
        }
    }
}
