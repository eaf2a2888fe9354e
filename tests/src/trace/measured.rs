//! Measurements of lots: what they tell, what is read of a text, and their histogram.

use super::{Trace, UNITS};
use crate::cases::{any_limits, any_list, any_measurements};
use crate::dice::Dice;
use solver::measured::{Confidence, Interval, Limits, Sample, read};
use solver::{Length, LengthUnit, Sheet, draw_histogram};

impl Trace {
    pub(super) fn measured(&mut self) {
        for case in 0..48 {
            let mut dice = Dice::new(8_000_000 + case);
            if let Some(sample) = Sample::new(&any_measurements(&mut dice)) {
                self.sample(&sample, any_limits(&mut dice).as_ref(), &mut dice);
            }
            let list = any_list(&mut dice);
            for unit in UNITS {
                self.line("readings", &format!("{:?}", read(&list, unit)));
            }
        }
    }

    fn sample(&mut self, sample: &Sample, limits: Option<&Limits>, dice: &mut Dice) {
        let sizes = [
            sample.mean(),
            sample.median(),
            sample.deviation().unwrap_or_default(),
            sample.least(),
            sample.greatest(),
        ];
        self.numbers("sample", &sizes.map(Length::in_millimetres));
        let Some(confidence) = Confidence::new(dice.between(0.5, 0.9999)) else {
            return;
        };
        let bounds = [
            sample.mean_interval(confidence),
            sample.deviation_interval(confidence),
        ];
        for Interval { from, to } in bounds.into_iter().flatten() {
            self.numbers("bounds", &[from, to].map(Length::in_millimetres));
        }
        if let Some(limits) = limits {
            let outside = sample.outside(limits);
            let expected = outside.expected.unwrap_or_default();
            let counts = [outside.below as f64, outside.above as f64];
            self.numbers(
                "outside",
                &[counts[0], counts[1], outside.counted, expected],
            );
            if let Ok(capability) = sample.capability(limits, confidence) {
                for ratio in capability.cp.into_iter().chain([capability.cpk]) {
                    let Interval { from, to } = ratio.interval;
                    self.numbers("capability", &[ratio.value, from, to]);
                }
            }
        }
        self.line("normality", &format!("{:?}", sample.normality()));
        self.line("outliers", &format!("{:?}", sample.outliers()));
        let half_width = Length::millimetres(dice.between(0.002, 0.2));
        let for_mean = sample.needed_for_mean(half_width, confidence);
        let for_deviation = sample.needed_for_deviation(dice.between(0.05, 1.0), confidence);
        self.line("needed", &format!("{for_mean:?} {for_deviation:?}"));
        let classes = sample.histogram();
        let sizes = [classes.from(), classes.width()].map(Length::in_millimetres);
        self.numbers("classes", &sizes);
        self.line("counts", &format!("{:?}", classes.counts()));
        self.histogram(sample, limits, dice.between(280.0, 1200.0));
    }

    fn histogram(&mut self, sample: &Sample, limits: Option<&Limits>, width: f64) {
        for unit in UNITS {
            let sheet = Sheet {
                width,
                row: 28.0,
                text: 64.0,
                unit,
            };
            let size = match unit {
                LengthUnit::Millimetre => "Width",
                LengthUnit::Inch => "Thickness",
            };
            let chart = draw_histogram(sample, limits, size, &sheet);
            self.line("histogram", &format!("{chart:?}"));
        }
    }
}
