//! Braces that hold: the soil and its evidence, each corner in detail with the cheapest mend, the wind on the straights.
//!
//! [`soil()`] weighs what is known of the ground; `mends` lists what would hold a corner and what that costs; [`cut_run`]
//! takes a cut; `wind` says which posts go over first. All of it is cheap enough for every frame of a drag, but for where the
//! nets fall once a corner is cut: that is worked out at full depth.

mod cut;
mod judging;
mod kit;
mod mends;
mod model;
mod soil;
mod wind;

use geometry::Outline;
use plan::{Plan, Run};

pub use cut::{cut_over_posts, cut_run};
pub(crate) use judging::Judging;
pub use kit::Kit;
pub use model::{Bracing, CutMend, Detail, GoesOver, Judged, Mend, MendKind, Wind};
pub use soil::{Evidence, Holding, SeenSays, SoilFound, soil};

use crate::Depth;
use crate::lay::Line;
use crate::model::RunWorkup;
use crate::outlines::Ground;
use crate::slope::{Heights, Measure};
use crate::values::Bad;
use judging::Judge;

/// What the details of a run are worked out from.
struct Site<'a> {
    plan: &'a Plan,
    run: &'a Run,
    outline: &'a Outline,
    judge: Judge<'a>,
    ground: &'a Ground,
    /// The ground's slope, where it is not level.
    measure: Option<Measure>,
    given: Given<'a>,
    /// Whether the run lies inside the paddock.
    inside: bool,
    /// What a square metre of the run cost to set up, minutes.
    minutes_per_m2: f64,
    /// What a metre of its line did.
    minutes_per_m: f64,
}

/// What is known of the whole plan.
#[derive(Clone, Copy)]
pub(crate) struct Given<'a> {
    pub(crate) soil: &'a SoilFound,
    pub(crate) ground: &'a Ground,
    pub(crate) heights: &'a Heights,
    pub(crate) bad: &'a Bad,
    pub(crate) depth: Depth,
}

/// Works out braces and wind of a run whose corners could be judged.
pub(crate) fn add(plan: &Plan, run: &Run, line: &Line, given: Given<'_>, worked: &mut RunWorkup) {
    let (Some(lay), Some(placement), Some(judging)) = (&worked.lay, &line.placement, &line.judging) else { return };
    let Given { soil, ground, .. } = given;
    let outline = &line.outline;
    let measure = worked.slope.as_ref().and_then(|_| Measure::of(run, given.heights));
    let request = judging.parts.request(plan, outline, placement, soil);
    let judge = Judge { rule: &plan.store.brace, request };
    let minutes_per_m2 = if lay.area_m2 > 0.0 { lay.set_up_minutes / lay.area_m2 } else { 0.0 };
    let minutes_per_m = if lay.line_m > 0.0 { lay.set_up_minutes / lay.line_m } else { 0.0 };
    let inside = ground.boundary().is_some_and(|boundary| geometry::region::inside(outline, boundary));
    let site = Site { plan, run, outline, judge, ground, measure, given, inside, minutes_per_m2, minutes_per_m };
    let stated = judging.corners.iter().zip(&judging.stated);
    let details = stated.map(|(corner, stated)| mends::detail(&site, corner, stated.as_ref())).collect();
    let wind = wind::wind(&site, &judging.corners);
    worked.bracing = Some(Bracing { details, wind, wanted: plan.store.brace.safety_factor() });
}
