//! What is still to be sawn, and from how many planks.

use super::data::SawingData;
use super::pattern::CutPattern;

/// What is still to be sawn. All of it at first.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub(super) struct Needs {
    /// Blanks wanted of each kind.
    pub(super) wanted: Vec<u64>,
    /// Blanks beyond those that are worth something.
    pub(super) over: Vec<u64>,
    /// Planks left of each kind.
    pub(super) planks: Vec<Range>,
}

/// How many planks of a kind are sawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) struct Range {
    /// No fewer.
    pub(super) least: u64,
    /// No more; `None` is as many as wanted.
    pub(super) most: Option<u64>,
}

impl Needs {
    /// All that is wanted.
    pub(super) fn of(data: &SawingData) -> Self {
        let blanks = data.blanks();
        Self {
            wanted: blanks.iter().map(|blank| blank.demand).collect(),
            over: (0..blanks.len())
                .map(|blank| data.over_worth(blank).1)
                .collect(),
            planks: (data.planks().iter())
                .map(|plank| Range {
                    least: 0,
                    most: plank.on_hand,
                })
                .collect(),
        }
    }

    /// Most blanks of each kind that are of use.
    pub(super) fn most(&self) -> Vec<u64> {
        let pairs = self.wanted.iter().zip(&self.over);
        pairs.map(|(wanted, over)| wanted + over).collect()
    }

    /// The same with at most so many planks of a kind, and with more; nothing of a part that no plan
    /// can be in, and nothing at all where there is no such plank.
    pub(super) fn parted(
        &self,
        plank: usize,
        at_most: u64,
    ) -> Option<(Option<Self>, Option<Self>)> {
        let range = *self.planks.get(plank)?;
        let with = |least: u64, most: Option<u64>| {
            most.is_none_or(|most| most >= least).then(|| {
                let mut part = self.clone();
                part.planks[plank] = Range { least, most };
                part
            })
        };
        let fewer = range.most.map_or(at_most, |most| most.min(at_most));
        let more = at_most.checked_add(1)?.max(range.least);
        Some((with(range.least, Some(fewer)), with(more, range.most)))
    }

    /// Whether a kind of plank is used up.
    pub(super) fn is_out_of(&self, plank: usize) -> bool {
        self.planks[plank].most == Some(0)
    }

    /// Whether nothing is wanted any more.
    pub(super) fn is_met(&self) -> bool {
        self.wanted.iter().all(|&wanted| wanted == 0)
    }

    /// How often a pattern can be sawn before it makes more than is of use, or the planks run out.
    pub(super) fn room_for(&self, pattern: &CutPattern) -> u64 {
        let made = pattern.made(self.wanted.len());
        let useful = (0..made.len())
            .filter(|&blank| made[blank] > 0)
            .map(|blank| (self.wanted[blank] + self.over[blank]) / made[blank])
            .min()
            .unwrap_or(0);
        self.planks[pattern.plank]
            .most
            .map_or(useful, |left| left.min(useful))
    }

    /// Takes off what so many planks sawn like this give. What is too many is not counted.
    pub(super) fn take(&mut self, pattern: &CutPattern, count: u64) {
        let made = pattern.made(self.wanted.len());
        for (blank, made) in made.into_iter().enumerate() {
            let made = made * count;
            let wanted = self.wanted[blank].min(made);
            self.wanted[blank] -= wanted;
            self.over[blank] = self.over[blank].saturating_sub(made - wanted);
        }
        let range = &mut self.planks[pattern.plank];
        range.least = range.least.saturating_sub(count);
        range.most = range.most.map(|left| left.saturating_sub(count));
    }
}
