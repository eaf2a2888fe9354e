//! Plans parted by how many planks of each kind they saw.
//!
//! A relaxation may mix planks of several kinds in fractions that no plan can. So plans are parted
//! into those that saw at most so many planks of a kind and those that saw more; each part has its
//! relaxation and its bound, and the part with the least bound is parted next. The least bound of
//! all parts is a bound for all plans.

use super::certificate::Certificate;
use super::needs::Needs;
use super::proof::Proof;
use super::search::Search;

/// How plans are relaxed, and how whole plans come of it.
pub(super) trait Method {
    /// What a relaxation finds.
    type Relaxation: Clone;

    /// Relaxes the plans of a part, which is near another one; nothing where the limits are reached
    /// or the solver fails.
    fn relax(
        &mut self,
        search: &mut Search<'_>,
        needs: &Needs,
        near: Option<&Self::Relaxation>,
    ) -> Option<Self::Relaxation>;

    /// What the relaxation proves, and the bound.
    fn proved(relaxation: &Self::Relaxation) -> (&Certificate, i64);

    /// Planks of each kind in the mixture.
    fn planks(search: &Search<'_>, relaxation: &Self::Relaxation) -> Vec<f64>;

    /// Looks for plans of a part for the first time, the second and so on; whether another look may find
    /// more. The planks are whole numbers if they are told.
    fn look(
        &mut self,
        search: &mut Search<'_>,
        needs: &Needs,
        relaxation: &Self::Relaxation,
        planks: Option<&[u64]>,
        looks: u32,
    ) -> bool;
}

/// The parts, as a tree; the first is the root.
pub(super) struct Branches<M: Method> {
    method: M,
    nodes: Vec<Node<M::Relaxation>>,
}

enum Node<R> {
    Part(Part<R>),
    Parted {
        plank: usize,
        at_most: u64,
        fewer: usize,
        more: usize,
    },
}

/// Plans that are not parted, or not yet.
struct Part<R> {
    needs: Needs,
    /// No plan of it costs less.
    bound: i64,
    certificate: Certificate,
    /// Nothing once there is no more to do, or where the limits were reached.
    relaxation: Option<R>,
    /// How often plans were looked for.
    looks: u32,
}

/// Sums of shares nearer to a whole number than this are whole.
const ROUGH: f64 = 1e-6;

impl<M: Method> Branches<M> {
    /// Parts the plans until the best is proved, nothing is left to do, or the limits are reached.
    pub(super) fn grow(search: &mut Search<'_>, needs: Needs, method: M) -> Proof {
        let nodes = Vec::new();
        let mut branches = Self { method, nodes };
        let root = Certificate::trivial(search.data);
        branches.add(search, needs, None, &root);
        loop {
            search.tell_bound(branches.bound());
            if search.is_over() {
                return branches.proof(0);
            }
            let Some(at) = branches.next(search) else {
                return branches.proof(0);
            };
            branches.work(search, at);
        }
    }

    /// Takes in a part, relaxed. What is certified of the whole holds for a part too.
    fn add(
        &mut self,
        search: &mut Search<'_>,
        needs: Needs,
        near: Option<&M::Relaxation>,
        whole: &Certificate,
    ) -> usize {
        let relaxation = self.method.relax(search, &needs, near);
        let mut certificate = whole.clone();
        let mut bound = whole.bound(search.data, &needs);
        if let Some(relaxation) = &relaxation {
            let (own, proved) = M::proved(relaxation);
            if proved > bound {
                (certificate, bound) = (own.clone(), proved);
            }
        }
        self.nodes.push(Node::Part(Part {
            needs,
            bound,
            certificate,
            relaxation,
            looks: 0,
        }));
        self.nodes.len() - 1
    }

    fn parts(&self) -> impl Iterator<Item = (usize, &Part<M::Relaxation>)> {
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

    /// The part with the least bound that may hold a better plan, of those least looked at.
    fn next(&self, search: &Search<'_>) -> Option<usize> {
        self.parts()
            .filter(|(_, part)| part.relaxation.is_some() && search.is_open(part.bound))
            .min_by_key(|(_, part)| (part.looks, part.bound))
            .map(|(at, _)| at)
    }

    /// Looks for plans of a part, and parts it where the planks are no whole numbers.
    fn work(&mut self, search: &mut Search<'_>, at: usize) {
        let Node::Part(part) = &mut self.nodes[at] else {
            return;
        };
        let Some(relaxation) = part.relaxation.take() else {
            return;
        };
        part.looks += 1;
        let looks = part.looks;
        let (needs, certificate, bound) =
            (part.needs.clone(), part.certificate.clone(), part.bound);
        let sums = M::planks(search, &relaxation);
        let broken = most_broken(&sums);
        let whole: Vec<u64> = sums.iter().map(|sum| sum.round() as u64).collect();
        let planks = broken.is_none().then_some(&whole[..]);
        let again = self.method.look(search, &needs, &relaxation, planks, looks);
        if search.is_over() || !search.is_open(bound) {
            return;
        }
        let Some((plank, at_most)) = broken else {
            if again && let Node::Part(part) = &mut self.nodes[at] {
                part.relaxation = Some(relaxation);
            }
            return;
        };
        let Some((Some(below), Some(above))) = needs.parted(plank, at_most) else {
            return;
        };
        let fewer = self.add(search, below, Some(&relaxation), &certificate);
        let more = self.add(search, above, Some(&relaxation), &certificate);
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

/// The kind of plank whose number is farthest from a whole one, and the whole number below.
fn most_broken(sums: &[f64]) -> Option<(usize, u64)> {
    let off = |sum: f64| (sum - sum.round()).abs();
    (0..sums.len())
        .filter(|&plank| off(sums[plank]) > ROUGH)
        .max_by(|&one, &other| off(sums[one]).total_cmp(&off(sums[other])))
        .map(|plank| (plank, sums[plank].floor() as u64))
}
