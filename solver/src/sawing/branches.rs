//! Plans parted by how many planks of each kind they saw.
//!
//! The relaxation may mix planks of several kinds in fractions that no plan can. So plans are parted
//! into those that saw at most so many planks of a kind and those that saw more; each part has its
//! relaxation and its bound, and the part with the least bound is parted next. The least bound of
//! all parts is a bound for all plans.

use super::certificate::Certificate;
use super::needs::Needs;
use super::pattern::CutPattern;
use super::proof::Proof;
use super::relaxation::Relaxation;
use super::search::{Effort, Search};

/// The parts, as a tree; the first is the root.
pub(super) struct Branches {
    nodes: Vec<Node>,
}

enum Node {
    Part(Part),
    Parted {
        plank: usize,
        at_most: u64,
        fewer: usize,
        more: usize,
    },
}

/// Plans that are not parted, or not yet.
#[derive(Clone)]
struct Part {
    needs: Needs,
    /// No plan of it costs less.
    bound: i64,
    certificate: Certificate,
    /// Nothing once it has been worked on, or where the limits were reached.
    relaxation: Option<Box<Relaxation>>,
}

/// Sums of shares nearer to a whole number than this are whole.
const ROUGH: f64 = 1e-6;

impl Branches {
    /// Parts the plans until the best is proved, nothing is left to part, or the limits are reached.
    pub(super) fn grow(search: &mut Search<'_>, needs: Needs) -> Proof {
        let mut branches = Self { nodes: Vec::new() };
        let root = Certificate::trivial(search.data);
        branches.add(search, needs, &[], &root);
        let mut effort = Effort::first(search.data);
        loop {
            search.tell_bound(branches.bound());
            if search.is_over() {
                return branches.proof(0);
            }
            let Some(at) = branches.next(search) else {
                return branches.proof(0);
            };
            branches.work(search, at, effort);
            effort = Effort::LATER;
        }
    }

    /// Takes in a part, relaxed. What is certified of the whole holds for a part too.
    fn add(
        &mut self,
        search: &mut Search<'_>,
        needs: Needs,
        known: &[CutPattern],
        whole: &Certificate,
    ) -> usize {
        let relaxation = search.relax(&needs, known);
        let mut certificate = whole.clone();
        let mut bound = whole.bound(search.data, &needs);
        if let Some(relaxation) = &relaxation
            && relaxation.bound > bound
        {
            (certificate, bound) = (relaxation.certificate.clone(), relaxation.bound);
        }
        self.nodes.push(Node::Part(Part {
            needs,
            bound,
            certificate,
            relaxation: relaxation.map(Box::new),
        }));
        self.nodes.len() - 1
    }

    fn parts(&self) -> impl Iterator<Item = (usize, &Part)> {
        self.nodes
            .iter()
            .enumerate()
            .filter_map(|(at, node)| match node {
                Node::Part(part) => Some((at, part)),
                Node::Parted { .. } => None,
            })
    }

    /// No plan costs less.
    fn bound(&self) -> i64 {
        self.parts()
            .map(|(_, part)| part.bound)
            .min()
            .unwrap_or(i64::MIN)
    }

    /// The part with the least bound that has not been worked on and may hold a better plan.
    fn next(&self, search: &Search<'_>) -> Option<usize> {
        self.parts()
            .filter(|(_, part)| part.relaxation.is_some() && search.is_open(part.bound))
            .min_by_key(|(_, part)| part.bound)
            .map(|(at, _)| at)
    }

    /// Dives from a part, and parts it where the sums of shares are no whole numbers.
    fn work(&mut self, search: &mut Search<'_>, at: usize, effort: Effort) {
        let Node::Part(part) = &mut self.nodes[at] else {
            return;
        };
        let Some(relaxation) = part.relaxation.take() else {
            return;
        };
        let part = part.clone();
        // Few detours first: so the early choices are doubted before the late ones are worn out.
        for detours in 0..=effort.detours {
            search.dive(&part.needs, &relaxation, Effort { detours, ..effort });
        }
        if search.is_over() || !search.is_open(part.bound) {
            return;
        }
        let Some((plank, at_most)) = most_broken(&relaxation, part.needs.planks.len()) else {
            return;
        };
        let Some((Some(below), Some(above))) = part.needs.parted(plank, at_most) else {
            return;
        };
        let known = relaxation.patterns();
        let fewer = self.add(search, below, &known, &part.certificate);
        let more = self.add(search, above, &known, &part.certificate);
        self.nodes[at] = Node::Parted {
            plank,
            at_most,
            fewer,
            more,
        };
    }

    fn proof(&self, at: usize) -> Proof {
        match &self.nodes[at] {
            Node::Part(part) => Proof::Certified(part.certificate.clone()),
            Node::Parted {
                plank,
                at_most,
                fewer,
                more,
            } => Proof::Parted {
                plank: *plank,
                at_most: *at_most,
                fewer: Box::new(self.proof(*fewer)),
                more: Box::new(self.proof(*more)),
            },
        }
    }
}

/// The kind of plank whose sum of shares is farthest from a whole number, and the whole number below.
fn most_broken(relaxation: &Relaxation, planks: usize) -> Option<(usize, u64)> {
    let mut sums = vec![0.0; planks];
    for (column, share) in relaxation.columns.iter().zip(&relaxation.shares) {
        sums[column.pattern.plank] += share;
    }
    let off = |sum: f64| (sum - sum.round()).abs();
    (0..planks)
        .filter(|&plank| off(sums[plank]) > ROUGH)
        .max_by(|&one, &other| off(sums[one]).total_cmp(&off(sums[other])))
        .map(|plank| (plank, sums[plank].floor() as u64))
}
