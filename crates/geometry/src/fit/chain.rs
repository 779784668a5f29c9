//! The rings of panels that the nets can make: each order, direction and panel at the first corner that differs.
//!
//! Metres. Panels are told apart by their length only ([`SAME_PANEL_M`]), so equal nets make one ring whatever their
//! number. The panels doubled back are the chain's last and stand in no ring.

use std::collections::BTreeSet;

use crate::Net;

/// Panels whose lengths differ by less are one kind, metres.
const SAME_PANEL_M: f64 = 1e-9;

/// More orders of unlike nets than this are not all tried.
const MOST_ORDERS: usize = 720;

/// More rings than this are not all tried.
const MOST_RINGS: usize = 4096;

/// Panels in a ring, as they follow one another from the first corner along the outline.
#[derive(Debug, Clone)]
pub(super) struct Ring {
    /// Distance of every post from the first corner, from 0 to the length of the ring.
    pub(super) posts_m: Vec<f64>,
    /// Kinds of the nets in chain order.
    pub(super) order: Vec<usize>,
    /// Whether the chain runs against the outline.
    pub(super) reversed: bool,
    /// Place of the chain's start along the outline.
    pub(super) start_m: f64,
}

/// The rings, and whether they are all that there are.
pub(super) struct Rings {
    pub(super) all: Vec<Ring>,
    pub(super) complete: bool,
    /// Whether all panels are of one length.
    pub(super) equal: bool,
}

/// Makes them; `kept_order` keeps the nets and their direction as listed.
pub(super) fn rings(kinds: &[Net], nets: &[usize], double_back: usize, kept_order: bool, reversed: bool) -> Rings {
    let listed = panels(kinds, nets, double_back);
    let equal = listed.iter().all(|&panel_m| (panel_m - listed[0]).abs() < SAME_PANEL_M);
    let mut made = Rings { all: Vec::new(), complete: true, equal };
    if equal {
        made.all.push(ring(&listed, 0, nets.to_vec(), reversed && kept_order));
        return made;
    }
    let (orders, all) = if kept_order { (vec![nets.to_vec()], true) } else { orders(nets) };
    made.complete = all;
    let directions: &[bool] = match (kept_order, reversed) {
        (true, true) => &[true],
        (true, false) => &[false],
        _ => &[false, true],
    };
    let mut known: BTreeSet<Vec<i64>> = BTreeSet::new();
    for order in orders {
        let chain = panels(kinds, &order, double_back);
        for &reversed in directions {
            let mut round = chain.clone();
            if reversed {
                round.reverse();
            }
            for first in 0..round.len() {
                let key = (0..round.len()).map(|place| (round[(first + place) % round.len()] * 1e8).round() as i64);
                if !known.insert(key.collect()) {
                    continue;
                }
                if made.all.len() == MOST_RINGS {
                    made.complete = false;
                    return made;
                }
                made.all.push(ring(&round, first, order.clone(), reversed));
            }
        }
    }
    made
}

/// Lengths of the panels on the line, in chain order.
fn panels(kinds: &[Net], nets: &[usize], double_back: usize) -> Vec<f64> {
    let mut lengths_m: Vec<f64> = nets.iter().flat_map(|&kind| kinds[kind].panel_lengths_m()).collect();
    lengths_m.truncate(lengths_m.len().saturating_sub(double_back));
    lengths_m
}

fn ring(round: &[f64], first: usize, order: Vec<usize>, reversed: bool) -> Ring {
    let mut posts_m = vec![0.0];
    let equal = round.iter().all(|&panel_m| (panel_m - round[0]).abs() < SAME_PANEL_M);
    let mut at_m = 0.0;
    for place in 0..round.len() {
        at_m += round[(first + place) % round.len()];
        // Each place from the panel itself, so that rounding does not add up.
        posts_m.push(if equal { round[0] * (place + 1) as f64 } else { at_m });
    }
    let start_m = if first == 0 { 0.0 } else { posts_m[round.len() - first] };
    Ring { posts_m, order, reversed, start_m }
}

/// Every distinct order of the nets, the listed one first, and whether those are all.
fn orders(nets: &[usize]) -> (Vec<Vec<usize>>, bool) {
    let mut sorted = nets.to_vec();
    sorted.sort_unstable();
    let mut all = vec![nets.to_vec()];
    loop {
        if sorted != nets {
            if all.len() == MOST_ORDERS {
                return (all, false);
            }
            all.push(sorted.clone());
        }
        // The next order by the alphabet.
        let Some(rise) = (1..sorted.len()).rev().find(|&at| sorted[at - 1] < sorted[at]) else { return (all, true) };
        let above = (rise..sorted.len()).rev().find(|&at| sorted[at] > sorted[rise - 1]).unwrap_or(rise);
        sorted.swap(rise - 1, above);
        sorted[rise..].reverse();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equal_nets_make_one_ring_and_a_short_panel_one_for_each_place() {
        let equal = Net::equal(50.0, 14).unwrap();
        let made = rings(std::slice::from_ref(&equal), &[0, 0], 0, false, false);
        assert!(made.equal && made.complete && made.all.len() == 1);
        assert!((made.all[0].posts_m[28] - 100.0).abs() < 1e-12);
        let short = Net::unequal(&[3.0, 3.0, 1.0]).unwrap();
        let made = rings(std::slice::from_ref(&short), &[0, 0], 0, false, false);
        assert!(!made.equal && made.all.len() == 3, "{}", made.all.len());
        for ring in &made.all {
            let start = ring.posts_m.iter().any(|post_m| (post_m - ring.start_m).abs() < 1e-9);
            assert!(start && (ring.posts_m[6] - 14.0).abs() < 1e-12);
        }
        assert_eq!(rings(&[equal, short], &[0, 1], 0, false, false).all.len(), 34);
    }
}
