//! One run with all its parts.

use std::collections::BTreeMap;

use care::Finding;
use plan::Plan;
use schemars::JsonSchema;
use serde::Serialize;

use super::corners::{Corner, DrawIn, corner, drawn_in};
use super::netting::{Best, Branch, Net, Post, best, branch, net, post};
use super::said::{FindingOut, finding};
use super::voltage::{Voltage, voltage};

/// One run.
#[derive(Serialize, JsonSchema)]
pub(super) struct Run {
    /// The run's id.
    id: String,
    /// Its name, or its id.
    name: String,
    /// Length of the line in plan, metres.
    line_m: Option<f64>,
    /// Area that the outline encloses, square metres, whether or not netting closes it; 0 for an open line.
    area_m2: Option<f64>,
    /// What shuts the run, and what of it is open.
    closing: Option<Closing>,
    /// Netting beyond the line, metres.
    spare_m: Option<f64>,
    /// Where less than 1 % of the line is spare: the corner that is set last, and how far to draw it in.
    draw_in: Option<DrawIn>,
    /// Line without netting, metres.
    short_m: Option<f64>,
    /// Nets on the line by kind.
    nets_needed: Option<BTreeMap<String, u32>>,
    /// Where the chain starts, metres along the outline.
    start_m: Option<f64>,
    /// Whether the chain runs against the outline.
    reversed: Option<bool>,
    /// Sum of the distances from corners to posts, metres.
    corner_miss_m: Option<f64>,
    /// A proven lower bound of that sum, where the orders were too many to try.
    #[serde(skip_serializing_if = "Option::is_none")]
    corner_miss_bound_m: Option<f64>,
    /// What would have been best, where the start is fixed or something is pinned.
    #[serde(skip_serializing_if = "Option::is_none")]
    best: Option<Best>,
    /// Nets in chain order.
    nets: Option<Vec<Net>>,
    /// Posts on the line in chain order.
    posts: Option<Vec<Post>>,
    /// Posts folded back beyond the line's end.
    spare_posts: Option<Vec<Post>>,
    /// Lines of netting that hang on it; absent where there are none.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    branches: Vec<Branch>,
    /// Corners along the outline, and ends of the netting.
    corners: Option<Vec<Corner>>,
    /// How they are set out by tape; `null` where the outline is no line.
    set_out: Option<super::tape::SetOut>,
    /// The ground to mow.
    strip: Option<Strip>,
    /// Minutes to set up: 5, 10 a net and 2 a brace; `set_up.minutes_low` where the plan states rates.
    set_up_minutes: Option<f64>,
    /// Earth stakes at stated places.
    #[serde(flatten)]
    earths: crate::earths::OfRun,
    /// Setting up, taking down and mowing.
    #[serde(flatten)]
    work: crate::work::keys::OfRun,
    /// Pins and gates.
    #[serde(flatten)]
    gates: crate::gates::OfRun,
    /// Braces in detail, and wind.
    #[serde(flatten)]
    bracing: crate::bracing::keys::OfRun,
    /// The ground along the line.
    #[serde(flatten)]
    slope: crate::slope::OfRun,
    /// The pulse.
    voltage: Option<Voltage>,
    /// What the keeper should know.
    findings: Vec<FindingOut>,
}

/// What shuts a run, and what of it is open.
#[derive(Serialize, JsonSchema)]
pub(super) struct Closing {
    /// What shuts it; `null` where nothing does.
    by: Option<ShutBy>,
    /// Ground that is shut in, square metres; `null` where the run is open.
    ground_m2: Option<f64>,
    /// The gap, metres: 0 where nothing of it is open.
    open_m: f64,
    /// Along the other things that shut it, metres; 0 where netting alone does.
    along_sides_m: f64,
    /// The walls, hedges and fences that shut it, or may where it is open, by their places in the plan from 0.
    walls: Vec<usize>,
    /// The ids of the runs whose netting does.
    runs: Vec<String>,
}

/// What shuts a run.
#[derive(Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
enum ShutBy {
    /// Its own netting.
    Netting,
    /// Its netting with walls, hedges or fences that hold birds, or nets that stand.
    Sides,
}

fn closing(plan: &Plan, closing: &workup::Closing) -> Closing {
    let along_m = |counts: bool| if counts { closing.gap_m } else { 0.0 };
    let sides = || closing.sides().iter();
    Closing {
        by: match closing.by {
            workup::ShutBy::Netting => Some(ShutBy::Netting),
            workup::ShutBy::Sides { .. } => Some(ShutBy::Sides),
            workup::ShutBy::Nothing { .. } => None,
        },
        ground_m2: closing.ground_m2,
        open_m: along_m(!closing.is_shut()),
        along_sides_m: along_m(closing.is_shut()),
        walls: sides().filter_map(|side| side.wall()).collect(),
        runs: sides().filter_map(|side| Some(plan.runs.get(side.run()?)?.id.clone())).collect(),
    }
}

/// The ground to mow.
#[derive(Serialize, JsonSchema)]
pub(super) struct Strip {
    /// Area, square metres.
    area_m2: f64,
    /// Times round.
    passes: u32,
    /// Metres walked.
    walk_m: f64,
    /// Minutes mowed.
    minutes: f64,
}

pub(super) fn run(
    plan: &Plan,
    stated: &plan::Run,
    worked: &workup::RunWorkup,
    earths: crate::earths::OfRun,
    findings: &[Finding],
) -> Run {
    let lay = worked.lay.as_ref();
    let taped = workup::tape::taped(plan, stated);
    Run {
        id: worked.id.clone(),
        name: care::run_name(stated).to_owned(),
        line_m: worked.line_m,
        area_m2: worked.area_m2,
        closing: worked.closing.as_ref().map(|closing| self::closing(plan, closing)),
        spare_m: lay.map(|lay| lay.spare_m),
        draw_in: worked.draw_in.map(drawn_in),
        short_m: lay.map(|lay| lay.short_m),
        nets_needed: lay.map(|lay| lay.nets_needed.clone()),
        start_m: lay.map(|lay| lay.start_m),
        reversed: lay.map(|lay| lay.reversed),
        corner_miss_m: lay.map(|lay| lay.corner_miss_m),
        corner_miss_bound_m: lay.and_then(|lay| lay.corner_miss_bound_m),
        best: lay.and_then(|lay| lay.best.as_ref()).map(best),
        nets: lay.map(|lay| lay.nets.iter().map(net).collect()),
        posts: lay.map(|lay| lay.posts.iter().map(post).collect()),
        spare_posts: lay.map(|lay| lay.spare_posts.iter().map(post).collect()),
        branches: lay.map(|lay| lay.branches.iter().map(branch).collect()).unwrap_or_default(),
        corners: lay
            .filter(|lay| lay.corners_judged)
            .map(|lay| lay.corners.iter().map(|one| corner(one, taped.as_ref())).collect()),
        set_out: taped.as_ref().map(super::tape::set_out),
        strip: worked.strip.as_ref().map(|strip| Strip {
            area_m2: strip.area_m2,
            passes: strip.passes,
            walk_m: strip.walk_m,
            minutes: strip.minutes,
        }),
        set_up_minutes: lay.filter(|lay| lay.corners_judged).map(|lay| lay.set_up_minutes),
        earths,
        work: crate::work::keys::of_run(worked),
        gates: crate::gates::of_run(stated, worked),
        bracing: crate::bracing::keys::of_run(plan, worked),
        slope: crate::slope::of_run(worked),
        voltage: worked.volts.as_ref().zip(lay).map(|(volts, lay)| voltage(volts, stated, lay)),
        findings: findings.iter().map(finding).collect(),
    }
}
