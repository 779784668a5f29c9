//! The lead from the energizer to the fence: how far it has to go, how long it is and what it resists.
//!
//! The one place where that is worked out. Distances are straight, on the ground. An energizer whose place is not stated
//! stands at the feed point, so that nothing is said of how far off it is.

use plan::{Plan, Point, Run, defaults};

use crate::{outlines, place, point};

/// A lead shorter than its way by less than this reaches, metres: nobody measures one to the centimetre.
pub const SHORT_M: f64 = 0.05;

/// The lead of a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lead {
    /// From the energizer to where the lead meets the net, straight, metres; `None` where the energizer's place is not
    /// stated.
    pub apart_m: Option<f64>,
    /// Its length, stated or as far as the two are apart, metres.
    pub length_m: Option<f64>,
    /// What it resists: as stated, else its conductor over its length, ohms.
    pub ohm: f64,
}

impl Lead {
    /// How much too short it is stated to be, metres.
    pub fn short_m(&self) -> Option<f64> {
        let short_m = self.apart_m? - self.length_m?;
        (short_m > SHORT_M).then_some(short_m)
    }
}

/// The lead of a run.
pub fn lead(plan: &Plan, run: &Run) -> Lead {
    let apart_m = run.energizer_at.zip(feed(run)).map(|(from, to)| point(from).distance_m(point(to)));
    let length_m = run.lead_m.or(apart_m);
    let made = run.lead_of.zip(length_m).map(|(of, length_m)| of.ohm_per_m(net_line_ohm_per_m(plan, run)) * length_m);
    Lead { apart_m, length_m, ohm: run.lead_ohm.or(made).unwrap_or(defaults::LEAD_OHM) }
}

/// What one live line of the run's netting resists, ohms per metre: of its first net, else of the store's.
pub fn net_line_ohm_per_m(plan: &Plan, run: &Run) -> f64 {
    let own = run.nets.iter().flatten().next().and_then(|id| plan.net_kind(id));
    own.or(plan.store.nets.first())
        .map_or(defaults::LINE_RESISTANCE_OHM_PER_M, plan::NetKind::line_resistance_ohm_per_m)
}

/// Where the lead meets the net: the place of the line that is nearest to the stated one; the first vertex where none is.
pub fn feed(run: &Run) -> Option<Point> {
    let first = run.outline.first().copied();
    let Some(stated) = run.feed_at else { return first };
    let line = outlines::of_run(run);
    Some(line.map_or(stated, |line| place(line.at(line.nearest_along(point(stated)).0))))
}

/// Where the energizer stands: as stated, else at the feed point.
pub fn energizer(run: &Run) -> Option<Point> {
    run.energizer_at.or_else(|| feed(run))
}
