//! Says how far a job has come, but not too often: every message costs the page a moment.

/// The most messages about one job.
const MOST: u32 = 50;

/// Whether the report of `done` of `of` is worth a message; the last one always is.
pub(super) const fn is_told(done: u32, of: u32) -> bool {
    done == of || done.is_multiple_of(of.div_ceil(MOST))
}

/// Thins out the reports of a job of unknown length.
#[derive(Debug, Default)]
pub(super) struct Sparing {
    heard: u32,
}

impl Sparing {
    /// Whether the next report is worth a message: the first sixteen are, of the next sixteen
    /// every second, of the next thirty-two every fourth, and so on, eight each time.
    ///
    /// A job of 100 000 reports sends about a hundred messages, one of 100 about forty.
    pub(super) fn tells_next(&mut self) -> bool {
        const ALL_OF_THE_FIRST: u32 = 16;
        self.heard = self.heard.saturating_add(1);
        let step = match (self.heard - 1) / ALL_OF_THE_FIRST {
            0 => 1,
            many => 2_u32 << many.ilog2(),
        };
        self.heard.is_multiple_of(step)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn counted(of: u32) -> usize {
        (1..=of).filter(|&done| is_told(done, of)).count()
    }

    fn told_of(reports: u32) -> usize {
        let mut sparing = Sparing::default();
        (0..reports).filter(|_| sparing.tells_next()).count()
    }

    #[test]
    fn a_long_count_has_few_messages_and_a_short_one_all() {
        assert_eq!(counted(4), 4);
        assert_eq!(counted(50), 50);
        assert_eq!(counted(51), 26);
        assert_eq!(counted(8_000), 50);
        assert_eq!(counted(0), 0);
    }

    #[test]
    fn the_end_is_always_told() {
        for of in 1..200 {
            assert!(is_told(of, of));
        }
    }

    #[test]
    fn reports_without_end_are_thinned_out() {
        assert_eq!(told_of(16), 16);
        assert_eq!(told_of(32), 24);
        assert_eq!(told_of(64), 32);
        assert_eq!(told_of(512), 56);
        assert!(told_of(100_000) < 120);
    }
}
