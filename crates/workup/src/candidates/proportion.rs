//! Ground of a rectangle by its proportion, with the same nets on open ground: a curve, and the whole panels on it.

use geometry::shapes::rectangle_area_m2;
use plan::{NetKind, Plan};

/// Panels whose lengths differ by less are alike, metres.
const ALIKE_M: f64 = 1e-6;
/// Points of the curve for each step of one in the proportion.
const POINTS: u32 = 30;

/// Ground by proportion: pairs of length over width, and square metres.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Proportions {
    /// Every proportion from the square on.
    pub curve: Vec<[f64; 2]>,
    /// Those whose sides are all whole panels.
    pub whole: Vec<[f64; 2]>,
}

/// The rectangles of some nets up to `longest` times as long as wide; nothing where a net is not known.
///
/// ```
/// # use plan::{NetKind, Plan};
/// let mut plan = Plan::default();
/// plan.store.nets.push(NetKind::new("long", 50.0, 13));
/// let found = workup::candidates::proportions(&plan, &["long".into(), "long".into()], 3.0);
/// assert_eq!(found.curve.first(), Some(&[1.0, 625.0]));
/// // Two nets of 13 panels make 6 by 7 at best (docs/sources.md, husbandry N03).
/// let squarest = found.whole.last().unwrap();
/// assert!((squarest[0] - 7.0 / 6.0).abs() < 1e-12 && (squarest[1] - 621.302).abs() < 1e-3);
/// ```
pub fn proportions(plan: &Plan, nets: &[String], longest: f64) -> Proportions {
    let kinds: Option<Vec<&NetKind>> = nets.iter().map(|id| plan.net_kind(id)).collect();
    let Some(kinds) = kinds.filter(|kinds| !kinds.is_empty()) else { return Proportions::default() };
    let net_m: f64 = kinds.iter().map(|kind| kind.length_m).sum();
    let steps = ((longest - 1.0).max(0.0) * f64::from(POINTS)).ceil() as u32;
    let at = |step: u32| 1.0 + (longest - 1.0) * f64::from(step) / f64::from(steps.max(1));
    let curve = (0..=steps).map(at).map(|proportion| [proportion, rectangle_area_m2(net_m, proportion)]).collect();
    Proportions { curve, whole: whole(&kinds, longest) }
}

/// Both sides whole panels: half of all panels, divided in two.
fn whole(kinds: &[&NetKind], longest: f64) -> Vec<[f64; 2]> {
    let panel_m = |kind: &NetKind| {
        (kind.panel_lengths_m.is_none() && kind.panel_count() > 0).then(|| kind.length_m / kind.panel_count() as f64)
    };
    let Some(first_m) = panel_m(kinds[0]) else { return Vec::new() };
    let alike = kinds.iter().all(|kind| panel_m(kind).is_some_and(|panel_m| (panel_m - first_m).abs() < ALIKE_M));
    let panels: usize = kinds.iter().map(|kind| kind.panel_count()).sum();
    if !alike || !panels.is_multiple_of(2) {
        return Vec::new();
    }
    let half = panels / 2;
    (1..=half / 2)
        .map(|short| (short as f64, (half - short) as f64))
        .filter(|(short, long)| long / short <= longest)
        .map(|(short, long)| [long / short, short * long * first_m * first_m])
        .collect()
}
