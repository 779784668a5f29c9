//! The known places that a run's corners are taped from: which of them its map takes in, and where the others lie.

use care::tape_said;
use plan::{Plan, Point, Run};
use words::Words;
use words::texts::Sheet as Text;
use workup::tape::{KnownPlace, TapedRun};

use crate::map::{Marked, bounds};

/// A known place is on the map where the ground that the map then shows is no more than so many times as far across as
/// the run: any farther, and the run would be too small to read.
const MOST_TIMES: f64 = 2.0;

/// The known places that corners are taped from.
pub(crate) struct Known {
    /// Those that the map takes in, by their letters.
    pub(crate) on_map: Vec<Marked>,
    /// Where each of the others lies, a sentence each.
    pub(crate) off_map: Vec<String>,
}

impl Known {
    pub(crate) fn of(plan: &Plan, run: &Run, taped: &TapedRun, words: Words) -> Self {
        let mut shown: Vec<Point> = run.outline.clone();
        shown.extend(run.branches.iter().flat_map(|branch| &branch.outline));
        let most_m = MOST_TIMES * across_m(&shown);
        let used = taped.known.iter().enumerate().filter(|(index, _)| taped.is_taped_from(*index));
        let mut used: Vec<(f64, KnownPlace, Point)> = used
            .map(|(_, known)| {
                let at = plan.tape_points[known.point].at;
                (across_m(&[&shown[..], &[at]].concat()), *known, at)
            })
            .collect();
        // The nearer one first: where both are too much, it stays.
        used.sort_by(|one, other| one.0.total_cmp(&other.0));
        let mut known = Self { on_map: Vec::new(), off_map: Vec::new() };
        for (_, place, at) in used {
            shown.push(at);
            if across_m(&shown) <= most_m {
                known.on_map.push(Marked { name: place.letter.as_str().to_owned(), at });
            } else {
                shown.pop();
                known.off_map.extend(lies(plan, run, place, at, words));
            }
        }
        known
    }
}

/// How far across the ground of some places is, from corner to corner of the box round them, metres.
fn across_m(places: &[Point]) -> f64 {
    let [west, south, east, north] = bounds(places);
    (east - west).hypot(north - south)
}

/// Where a known place lies as seen from the run's first corner.
fn lies(plan: &Plan, run: &Run, place: KnownPlace, at: Point, words: Words) -> Option<String> {
    let from = run.outline.first()?;
    let (east_m, north_m) = (at.east_m - from.east_m, at.north_m - from.north_m);
    let (degrees, point) = words.bearing(east_m, north_m);
    let said = [
        ("place", tape_said::called(plan, place)),
        ("length", words.length(east_m.hypot(north_m))),
        ("corner", "1".to_owned()),
        ("degrees", degrees),
        ("point", point.to_owned()),
    ];
    Some(words.say(Text::TapeOffMap, &said.each_ref().map(|(name, text)| (*name, text.as_str()))))
}
