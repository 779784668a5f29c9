//! The pins as a chain sees them from where it starts.

use super::NEAR_M;
use crate::placement::chain::{Lattice, Line};
use crate::placement::pins::{Pin, PinKind};

/// The pins as a chain sees them from its start: places in its direction, metres.
#[derive(Debug, Clone, Default)]
pub(super) struct Seen {
    pub(super) joins_m: Vec<f64>,
    pub(super) posts_m: Vec<f64>,
    /// Places and classes of nets.
    pub(super) nets: Vec<(f64, usize)>,
    /// The class that the first net has to be of.
    pub(super) first: Option<usize>,
}

/// The pins in the chain's direction from a start; one of a net at the start itself comes as all ways to keep it.
pub(super) fn seen(pins: &[Pin], lattice: &Lattice<'_>, start_m: f64, reversed: bool) -> Vec<Seen> {
    let Line { length_m: line_m, closed } = lattice.line;
    let mut seen = Seen::default();
    let mut at_start: Vec<usize> = Vec::new();
    let class = |kind: usize| lattice.kinds.iter().position(|kinds| kinds.contains(&kind)).unwrap_or(usize::MAX);
    for pin in pins {
        let mut place_m = crate::placement::lay::chain_m(line_m, closed, start_m, reversed, pin.along_m);
        if closed && line_m - place_m < NEAR_M {
            place_m = 0.0;
        }
        match pin.what {
            PinKind::Start => {}
            PinKind::Join => seen.joins_m.push(place_m),
            PinKind::Post => seen.posts_m.push(place_m),
            PinKind::Net { kind } if place_m <= NEAR_M => at_start.push(class(kind)),
            PinKind::Net { kind } => seen.nets.push((place_m, class(kind))),
        }
    }
    at_start.sort_unstable();
    at_start.dedup();
    let closing_m = lattice.covered_m() - 10.0 * NEAR_M;
    let first = |class: usize| Seen { first: Some(class), ..seen.clone() };
    let last = |of: &Seen, class: usize| {
        let mut of = of.clone();
        of.nets.push((closing_m, class));
        of
    };
    match at_start[..] {
        [] => vec![seen],
        [class] if lattice.is_ring() => vec![first(class), last(&seen, class)],
        [class] => vec![first(class)],
        [one, other] if lattice.is_ring() => vec![last(&first(one), other), last(&first(other), one)],
        _ => Vec::new(),
    }
}
