//! A found shape laid on ground that is not level: a little smaller, so that its nets close along the surface.
//!
//! The search is one on the map. Where its line is longer on the ground than the nets, the shape is drawn in about a place
//! that it holds, to the greatest size at which they close; of the places tried the one that leaves it largest on free
//! ground. No larger run of the family exists than the search proved: ground is never shorter than the map. What closes on
//! whole panels is fitted to them anew, along the ground. Metres.

use geometry::fit::{FitRequest, FitSearch, FreeGround, KeepOff};
use geometry::largest::{Hold, Largest, LargestRequest, WholePanels};
use geometry::{Net, Outline, Point, region};

use crate::slope::Measure;

/// Corners about which a shape is drawn in, at most.
const MOST_CORNERS: usize = 8;
/// A line this near to the nets' length is as long, metres.
const CLOSE_M: f64 = 1e-9;
/// Halvings and chords to the size at which the nets close.
const ROUNDS: usize = 60;
/// Clearances are kept to within this, metres.
const KEPT_M: f64 = 5e-7;
/// Steps of the fit to whole panels: its sketch is of whole panels on the map, so it is found at once.
const WHOLE_STEPS: u64 = 400;

/// How a shape lies on ground that is not level.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OnSlope {
    /// Its size over that of the shape found on the map.
    pub share: f64,
    /// Netting that it lacks along the ground, metres; 0 where it closes.
    pub short_m: f64,
}

/// The ground of a search, where it is not level.
#[derive(Clone, Debug)]
pub(super) struct Sloped {
    measure: Measure,
    free: FreeGround,
    hold: Option<Hold>,
    net_m: f64,
    panel_m: f64,
}

impl Sloped {
    pub(super) fn new(measure: Measure, question: &LargestRequest) -> Self {
        let keep_offs = question.keep_outs.iter().map(|keep_out| KeepOff {
            outline: keep_out.outline.clone(),
            clearance_m: keep_out.clearance_m,
            may_enclose: keep_out.may_enclose,
        });
        Self {
            measure,
            free: FreeGround { boundary: Some(question.boundary.clone()), keep_offs: keep_offs.collect() },
            hold: question.hold.clone(),
            net_m: question.net_m,
            panel_m: question.net_m / f64::from(question.panels.count.max(1)),
        }
    }

    /// The shape as it closes on the ground, and how; `whole` says whether its whole panels are looked for, too.
    pub(super) fn laid(&self, found: &Largest, whole: bool) -> (Largest, OnSlope) {
        let line =
            |points: &[Point]| if found.wall.is_some() { Outline::open(points) } else { Outline::closed(points) };
        let over_m = |points: &[Point]| self.measure.line_m(&line(points)) - self.net_m;
        let whole_panels = if whole { self.whole(found) } else { None };
        let as_found_m = over_m(&found.outline);
        if as_found_m <= CLOSE_M {
            return (Largest { whole_panels, ..found.clone() }, OnSlope { share: 1.0, short_m: 0.0 });
        }
        let mut best: Option<(f64, Vec<Point>)> = None;
        for about in abouts(found) {
            let sized = |share: f64| drawn_in(&found.outline, about, share);
            let Some(share) = largest_share(|share| over_m(&sized(share))) else { continue };
            let points = sized(share);
            if best.as_ref().is_none_or(|(most, _)| share > *most) && self.holds(&points, found.wall.is_some()) {
                best = Some((share, points));
            }
        }
        match best {
            Some((share, outline)) => {
                let line_m = line(&outline).length_m();
                let area_m2 = found.area_m2 * share * share;
                let laid = Largest { outline, area_m2, line_m, whole_panels, ..found.clone() };
                (laid, OnSlope { share, short_m: 0.0 })
            }
            None => (Largest { whole_panels, ..found.clone() }, OnSlope { share: 1.0, short_m: as_found_m }),
        }
    }

    fn holds(&self, points: &[Point], walled: bool) -> bool {
        // A wall's side is no net, and may lie on the paddock's edge or on what the wall belongs to.
        let line = Outline::closed(points);
        let off = |at: &Point, clearance_m: f64| {
            region::contains(&line, *at) && region::distance_to_m(&line, *at) >= clearance_m - KEPT_M
        };
        let held = self.hold.as_ref();
        (walled || self.free.holds(&line))
            && held.is_none_or(|hold| hold.places.iter().all(|at| off(at, hold.clearance_m)))
    }

    /// The outline nearest to the one of whole panels on the map whose sides are whole along the ground.
    fn whole(&self, found: &Largest) -> Option<WholePanels> {
        let level = found.whole_panels.as_ref().filter(|_| found.wall.is_none())?;
        let panels: u32 = level.side_panels.iter().sum();
        let net = Net::equal(self.panel_m * f64::from(panels), panels as usize).ok()?;
        let sketch = Outline::closed(&level.outline);
        let mut request = FitRequest::new(&sketch, std::slice::from_ref(&net), &[0]);
        request.ground = Some(&self.free);
        let mut search = FitSearch::new(&request).ok()?;
        while search.step() && search.steps() < WHOLE_STEPS {}
        let fit = search.over(&|outline| Some(self.measure.sides_m(outline))).ok()?.ok()?;
        let area_m2 = Outline::closed(&fit.outline).area_m2();
        let side_panels = fit.side_panels.iter().map(|&panels| panels as u32).collect();
        Some(WholePanels { outline: fit.outline, side_panels, area_m2 })
    }
}

/// Places about which a shape may be drawn in: its middle and some corners; against a wall its foot on the wall.
fn abouts(found: &Largest) -> Vec<Point> {
    let corners = &found.outline;
    if let (Some(_), Some(&first), Some(&last)) = (found.wall, corners.first(), corners.last()) {
        return vec![first.towards(last, 0.5), first, last];
    }
    let origin = corners.first().copied().unwrap_or_default();
    let sum = corners.iter().fold(geometry::Vector::default(), |sum, &at| sum + (at - origin));
    let middle = origin + sum * (1.0 / corners.len().max(1) as f64);
    let every = corners.len().div_ceil(MOST_CORNERS).max(1);
    std::iter::once(middle).chain(corners.iter().copied().step_by(every)).collect()
}

fn drawn_in(points: &[Point], about: Point, share: f64) -> Vec<Point> {
    points.iter().map(|&at| about + (at - about) * share).collect()
}

/// The greatest share below one at which the line is no longer than its nets; `None` where it is at none from a half on.
fn largest_share(over_m: impl Fn(f64) -> f64) -> Option<f64> {
    let (mut low, mut high) = (0.5, 1.0);
    let (mut low_m, mut high_m) = (over_m(low), over_m(high));
    if low_m > CLOSE_M {
        return None;
    }
    for round in 0..ROUNDS {
        if low_m.abs() <= CLOSE_M || high - low < 1e-15 {
            break;
        }
        // By the chord, and every third time by halves, so that neither end stays where it is.
        let chord = low + (high - low) * low_m / (low_m - high_m);
        let middle = if round % 3 == 2 { f64::midpoint(low, high) } else { chord.clamp(low, high) };
        let middle_m = over_m(middle);
        if middle_m > 0.0 { (high, high_m) = (middle, middle_m) } else { (low, low_m) = (middle, middle_m) }
    }
    Some(low)
}
