//! Pins: what the keeper fixes of a placement, which of them can be kept together, and what each costs.
//!
//! The best placement that keeps the pins is searched for as exactly as the one without ([`super::pinned`]). A pin that
//! contradicts those listed before it, or that no chain of these nets can keep, is left out and said to be broken. What
//! a pin costs is the sum of misses with it less the sum without it, all other kept pins staying: metres.

use super::chain::Chosen;
use super::{EQUAL_SUMS_M, MEET_M, Placement, PlacementRequest, lay, pinned};

/// A pin holds where what it asks for stands within this of its place, metres.
pub const HELD_M: f64 = 1e-6;

/// Something that the keeper fixed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pin {
    /// Its place along the outline, metres.
    pub along_m: f64,
    /// What has to be there.
    pub what: PinKind,
}

/// What has to be at a pin's place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PinKind {
    /// The start of the chain; on an open line, the end that is nearer.
    Start,
    /// A join of two nets; a ring's closing one counts.
    Join,
    /// A post: a corner that the net does not cut across.
    Post,
    /// A net of a kind, from its first post to its last.
    Net {
        /// A number of the request's `kinds`.
        kind: usize,
    },
}

/// What became of a pin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PinOutcome {
    /// Whether the placement keeps it.
    pub kept: bool,
    /// Metres of misses that it costs; `None` where it is not kept, where a fixed start leaves nothing to choose, or
    /// where it was not asked for ([`PlacementRequest::costs`]).
    pub cost_m: Option<f64>,
    /// Whether both sums behind that cost are proved to be the least.
    pub proven: bool,
}

/// The best placement that keeps the pins, and what became of each. `free` is the best without any.
pub(super) fn placed(request: &PlacementRequest<'_>, free: &Placement) -> (Placement, Vec<PinOutcome>) {
    let all: Vec<usize> = (0..request.pins.len()).collect();
    let solve = |numbers: &[usize]| solved(request, free, numbers);
    let (kept, placement) = if let Some(placement) = solve(&all) {
        (all, placement)
    } else {
        let (mut kept, mut best) = (Vec::new(), free.clone());
        for number in all {
            let more: Vec<usize> = kept.iter().copied().chain([number]).collect();
            if let Some(placement) = solve(&more) {
                (kept, best) = (more, placement);
            }
        }
        (kept, best)
    };
    let outcome = |number: usize| {
        if !kept.contains(&number) {
            return PinOutcome { kept: false, cost_m: None, proven: true };
        }
        if !request.costs {
            return PinOutcome { kept: true, cost_m: None, proven: true };
        }
        let others: Vec<usize> = kept.iter().copied().filter(|&other| other != number).collect();
        // With fewer pins there is a placement wherever there is one with more; the budget may hide it.
        let without = solve(&others);
        let (sum_m, bound_m) = without.map_or((0.0, Some(0.0)), |placed| (placed.corner_miss_m, placed.bound_m));
        let cost_m = (placement.corner_miss_m - sum_m).max(0.0);
        let cost_m = if cost_m <= EQUAL_SUMS_M { 0.0 } else { cost_m };
        PinOutcome { kept: true, cost_m: Some(cost_m), proven: bound_m.is_none() && placement.bound_m.is_none() }
    };
    let outcomes = (0..request.pins.len()).map(outcome).collect();
    (placement, outcomes)
}

/// Which pins a placement keeps that was fixed without them.
pub(super) fn looked_at(request: &PlacementRequest<'_>, placement: &Placement) -> Vec<PinOutcome> {
    let outcome = |&pin: &Pin| PinOutcome { kept: placement.holds(pin), cost_m: None, proven: true };
    request.pins.iter().map(outcome).collect()
}

fn solved(request: &PlacementRequest<'_>, free: &Placement, numbers: &[usize]) -> Option<Placement> {
    let pins: Vec<Pin> = numbers.iter().map(|&number| request.pins[number]).collect();
    // What holds anyway changes nothing.
    if pins.iter().all(|&pin| free.holds(pin)) {
        return Some(free.clone());
    }
    let chosen: Chosen = pinned::choose(request, &pins)?;
    let placement = lay::lay(request, &chosen);
    pins.iter().all(|&pin| placement.holds(pin)).then_some(placement)
}

impl Placement {
    /// Whether what a pin asks for is there.
    pub fn holds(&self, pin: Pin) -> bool {
        let line_m = self.line_m;
        let apart_m = |one_m: f64, other_m: f64| {
            let apart_m = (one_m - other_m).abs();
            if self.closed { apart_m.min(line_m - apart_m) } else { apart_m }
        };
        let at_m = self.chain_at_m(pin.along_m);
        match pin.what {
            PinKind::Start if self.closed => apart_m(at_m, 0.0) <= HELD_M,
            PinKind::Start => at_m <= line_m / 2.0 + HELD_M,
            PinKind::Join => {
                let nets: Vec<_> = self.nets_on_line().collect();
                let between = nets.windows(2).any(|pair| apart_m(pair[0].end_m, at_m) <= HELD_M);
                between || (self.is_ring() && apart_m(at_m, 0.0) <= HELD_M)
            }
            PinKind::Post => self.nearest_posts(pin.along_m).0 <= HELD_M,
            PinKind::Net { kind } => {
                let covers = |net: &super::PlacedNet| {
                    let within = |place_m: f64| (net.start_m - HELD_M..=net.end_m + HELD_M).contains(&place_m);
                    // Round a ring the last net ends where the first begins.
                    let last_of_ring = self.is_ring() && at_m <= HELD_M && net.end_m >= line_m - MEET_M;
                    net.kind == kind && (within(at_m) || last_of_ring)
                };
                self.nets_on_line().any(covers)
            }
        }
    }
}
