//! The nets on the line and the corners, through `geometry`.

use std::collections::BTreeMap;

use geometry::{FixedStart, Net, Outline, Placement, PlacementFault, PlacementRequest};
use plan::{Plan, Run, Shape};

use crate::bracing::{Judging, Kit, SoilFound};
use crate::branches::{self, BranchLine};
use crate::model::{Bend, Best, Corner, LaidNet, Lay, Post, RunWorkup, Stake, Trouble, Verdict};
use crate::slope::Heights;
use crate::values::Bad;
use crate::{Depth, Known, nets, outlines, pins::Pins, place, point, slope};

/// Minutes to set up beside the braces: 5, and 10 a net (common practice, no source; facts of the trade). A brace takes
/// what its kit does, 2 minutes where it is a guy with one stake.
const SET_UP_MINUTES: (f64, f64) = (5.0, 10.0);

/// Nets longer together than this are a slip of the pen, metres: the pulse needs a node every two metres.
pub(crate) const LONGEST_CHAIN_M: f64 = 1e5;

/// A run's line and what stands on it, in the types of `geometry`.
pub(crate) struct Line {
    /// The line on the ground, along which nets are laid.
    pub(crate) outline: Outline,
    /// The same line in plan.
    pub(crate) level: Outline,
    pub(crate) placement: Option<Placement>,
    /// What hangs on it, where its own nets are laid.
    pub(crate) branches: Vec<BranchLine>,
    /// Its corners, where they can be judged.
    pub(crate) judging: Option<Judging>,
}

/// Everything that the search for a placement round pins rests on.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Question {
    outline: Outline,
    kinds: Vec<Net>,
    nets: Vec<usize>,
    pins: Vec<geometry::Pin>,
    feed: Option<geometry::Point>,
    fixed: Option<FixedStart>,
}

/// How long may be searched, and what is known from before.
pub(crate) struct Search<'a> {
    pub(crate) depth: Depth,
    pub(crate) known: &'a mut Known,
}

impl Search<'_> {
    /// The placement, and whether what its pins cost was found out.
    fn placed(
        &mut self,
        plan: &Plan,
        run: &Run,
        request: &mut PlacementRequest<'_>,
    ) -> Result<(Placement, bool), PlacementFault> {
        if let Some(placement) = self.known.held.placed(plan, run, request) {
            return Ok((placement, request.pins.is_empty()));
        }
        if request.pins.is_empty() {
            return geometry::place(request).map(|placement| (placement, true));
        }
        let question = Question {
            outline: request.outline.clone(),
            kinds: request.kinds.to_vec(),
            nets: request.nets.to_vec(),
            pins: request.pins.to_vec(),
            feed: request.feed,
            fixed: request.fixed,
        };
        if let Some((of, placement)) = self.known.placements.get(&run.id)
            && *of == question
        {
            return Ok((placement.clone(), true));
        }
        request.costs = self.depth == Depth::Full;
        let placement = geometry::place(request)?;
        if request.costs {
            self.known.placements.insert(run.id.clone(), (question, placement.clone()));
        }
        Ok((placement, request.costs))
    }
}

/// Builds the line, lays the nets on it and judges the corners.
#[allow(clippy::too_many_arguments, reason = "each is a part of the plan that was made ready once for all runs")]
pub(crate) fn line(
    plan: &Plan,
    run: &Run,
    heights: &Heights,
    bad: &Bad,
    soil: &SoilFound,
    chosen: &mut nets::Chosen,
    search: &mut Search<'_>,
    worked: &mut RunWorkup,
) -> Option<Line> {
    let shape = Shape::Run(run.id.clone());
    let level = outlines::build(&shape, &run.outline, run.closed(), &mut worked.troubles)?;
    worked.line_m = Some(level.length_m());
    worked.area_m2 = Some(level.area_m2());
    let ground = slope::ground(run, &level, heights);
    let outline = ground.as_ref().map_or_else(|| level.clone(), |ground| level.over(&ground.profile));
    let placed = placed(plan, run, &outline, bad, chosen, search, &mut worked.troubles);
    let costed = placed.as_ref().is_none_or(|placed| placed.1);
    let placement = placed.map(|placed| placed.0);
    let mut branches = Vec::new();
    let mut judging = None;
    if let Some(placement) = &placement {
        branches = branches::lines(plan, run, &outline, heights, bad, &mut worked.troubles);
        let own = Bad::of(&worked.troubles);
        let laid = branches.iter().map(|branch| branches::laid(plan, &outline, branch)).collect();
        judging = judgeable(placement, bad, &own).then(|| Judging::of(plan, run, &outline, placement, soil));
        let lay = lay(plan, run, &outline, placement, soil, judging.as_ref());
        let mut lay = lay.with_branches(laid, SET_UP_MINUTES.1);
        lay.pins.iter_mut().for_each(|pin| pin.waits = pin.kept && !costed && !(lay.closed && run.start_m.is_some()));
        worked.lay = Some(lay);
    }
    worked.slope = ground.map(|ground| ground.slope(plan, run, &outline, placement.as_ref()));
    if let (Some(lay), Some(slope)) = (&mut worked.lay, &worked.slope) {
        lay.set_up_minutes += plan.store.rates.further_post_minutes() * slope.posts().count() as f64;
    }
    if let Some(lay) = &mut worked.lay {
        lay.set_up_minutes *= plan.ground.factors().minutes;
    }
    Some(Line { outline, level, placement, branches, judging })
}

fn placed(
    plan: &Plan,
    run: &Run,
    outline: &Outline,
    bad: &Bad,
    chosen: &mut nets::Chosen,
    search: &mut Search<'_>,
    troubles: &mut Vec<Trouble>,
) -> Option<(Placement, bool)> {
    let used = nets::of(plan, run, outline.length_m(), chosen);
    if used.is_empty() {
        troubles.push(Trouble::NoNets);
        return None;
    }
    let broken = |&kind: &usize| {
        let key = |name: &str| format!("store.nets[{kind}].{name}");
        bad.any(&key("length_m")) || bad.any(&key("panel")) || bad.sum_of(&plan.store.nets[kind].id)
    };
    if used.iter().any(broken) {
        return None;
    }
    let chain_m: f64 = used.iter().map(|&kind| plan.store.nets[kind].length_m).sum();
    if chain_m > LONGEST_CHAIN_M {
        troubles.push(Trouble::ChainTooLong { length_m: chain_m });
        return None;
    }
    // Kinds that this run does not use may be broken; they stand in as anything.
    let kinds: Vec<Net> = plan
        .store
        .nets
        .iter()
        .map(|net| nets::built(net).or_else(|_| Net::equal(1.0, 1)))
        .collect::<Result<_, _>>()
        .ok()?;
    let pins = Pins::of(plan, run, outline);
    let mut request = PlacementRequest::new(outline, &kinds, &used);
    request.pins = &pins.pins;
    request.feed = run.feed_at.map(point);
    request.fixed = run.start_m.map(|start_m| FixedStart { start_m, reversed: run.reversed.unwrap_or(false) });
    match search.placed(plan, run, &mut request) {
        Ok(placed) => Some(placed),
        Err(PlacementFault::TooManyPosts { posts }) => {
            troubles.push(Trouble::TooManyPosts { posts });
            None
        }
        Err(_) => {
            troubles.push(Trouble::NoNets);
            None
        }
    }
}

fn lay(
    plan: &Plan,
    run: &Run,
    outline: &Outline,
    placement: &Placement,
    soil: &SoilFound,
    judging: Option<&Judging>,
) -> Lay {
    let id = |kind: usize| plan.store.nets[kind].id.clone();
    let mut nets_needed = BTreeMap::new();
    for net in placement.nets_on_line() {
        *nets_needed.entry(id(net.kind)).or_insert(0) += 1;
    }
    let corners_judged = judging.is_some();
    let judged = judging.map(|judging| corners(plan, run, outline, placement, soil, judging));
    let (corners, bends) = judged.unwrap_or_default();
    let (base, a_net) = SET_UP_MINUTES;
    let mut lay = Lay {
        closed: outline.is_closed(),
        vertices: outline.vertices().iter().map(|vertex| (place(vertex.at), vertex.along_m)).collect(),
        line_m: outline.length_m(),
        area_m2: outline.area_m2(),
        spare_m: placement.spare_m,
        short_m: placement.short_m,
        start_m: placement.start_m,
        reversed: placement.reversed,
        corner_miss_m: placement.corner_miss_m,
        corner_miss_bound_m: placement.bound_m,
        best: placement.best.as_ref().map(|best| Best {
            start_m: best.start_m,
            reversed: best.reversed,
            nets: best.order.iter().copied().map(id).collect(),
            corner_miss_m: best.corner_miss_m,
        }),
        nets: placement
            .nets
            .iter()
            .map(|net| LaidNet { kind: id(net.kind), start_m: net.start_m, end_m: net.end_m })
            .collect(),
        posts: placement.posts.iter().map(Post::of).collect(),
        spare_posts: placement.spare_posts.iter().map(Post::of).collect(),
        pins: Pins::of(plan, run, outline).worked(run, outline, &placement.pins),
        set_up_minutes: 0.0,
        nets_needed,
        corners,
        corners_judged,
        bends,
        branches: Vec::new(),
    };
    let needed = lay.corners.iter().filter(|corner| corner.needs_brace());
    let braces: f64 = needed.map(|corner| corner.kit.minutes(&plan.store)).sum();
    lay.set_up_minutes = base + a_net * lay.nets.len() as f64 + braces;
    lay
}

/// Whether every figure that the corners are judged with is one.
fn judgeable(placement: &Placement, bad: &Bad, own: &Bad) -> bool {
    const OF_NET: [&str; 3] = ["height_m", "tension_n", "spike"];
    const OF_GROUND: [&str; 7] = [
        "ground.soil.undrained",
        "ground.soil.friction",
        "ground.soil.unit",
        "ground.soil.wet_factor",
        "ground.soil.pull_test",
        "ground.soil.corners_seen",
        "store.brace.",
    ];
    let bad_net =
        |net: &geometry::PlacedNet| OF_NET.iter().any(|name| bad.any(&format!("store.nets[{}].{name}", net.kind)));
    // Of the run itself: a brace of its own that nothing can be built with.
    let of_brace = [".guy_", ".pegs", ".peg_"].iter().any(|name| own.any(name));
    !(OF_GROUND.iter().any(|part| bad.any(part)) || placement.nets.iter().any(bad_net) || of_brace)
}

/// The corners and the gentle bends, as judged.
fn corners(
    plan: &Plan,
    run: &Run,
    outline: &Outline,
    placement: &Placement,
    soil: &SoilFound,
    judging: &Judging,
) -> (Vec<Corner>, Vec<Bend>) {
    let request = judging.parts.request(plan, outline, placement, soil);
    let corners = judging
        .corners
        .iter()
        .zip(&judging.stated)
        .map(|(corner, stated)| Corner {
            at: place(corner.at),
            along_m: corner.along_m,
            vertex: outline
                .vertices()
                .iter()
                .position(|vertex| !corner.end && (vertex.along_m - corner.along_m).abs() < geometry::SAME_PLACE_M),
            turn_deg: corner.turn_rad.to_degrees(),
            to_post_m: corner.to_post_m,
            pull_n: corner.pull_n,
            hold_n: corner.hold_n,
            end: corner.end,
            dents: corner.dents,
            verdict: match corner.brace {
                geometry::Verdict::None => Verdict::None,
                geometry::Verdict::Advised => Verdict::Advised,
                geometry::Verdict::Required => Verdict::Required,
            },
            braced: stated.is_some(),
            kit: Kit::of(&plan.store.brace, corner.stated.last().map(|&number| &run.braces[number]))
                .on_earth(crate::earth::is_stake(run, place(corner.stake.at))),
            holds: stated.as_ref().is_some_and(|judged| judged.holds),
            stake: Stake {
                at: place(corner.stake.at),
                stand_off_m: corner.stake.stand_off_m,
                hold_n: corner.stake.hold_n,
            },
        })
        .collect();
    let bends = geometry::leaning_bends(&request)
        .iter()
        .map(|bend| {
            let (first, last) = (&placement.posts[bend.first_post], &placement.posts[bend.last_post]);
            Bend {
                first: place(first.at),
                first_along_m: first.along_m,
                last: place(last.at),
                last_along_m: last.along_m,
                pull_n: bend.pull_n,
                hold_n: bend.hold_n,
            }
        })
        .collect();
    (corners, bends)
}
