//! What would hold a corner or an end, and what each way costs.
//!
//! The cost is one figure in minutes: the work, so many minutes for each thing carried there and back, and at a corner
//! that is cut what is lost by it: the ground, each square metre for what the run's took to set up, or the netting that is
//! left over, each metre for what the line's took, whichever is more (they are two sides of one loss); nothing at a dent,
//! where ground is won. The rates are the store's;
//! where none is stated, common practice without a source.

use geometry::{BracePost, Guy, MOST_CUT_POSTS, Outline, Spike, Verdict, bend_verdict, brace_post, corner_pull_n, guy};
use plan::defaults::bracing as table;
use plan::{BraceKind, StatedBrace};

use super::model::{CutMend, Detail, Judged, Mend, MendKind};
use super::{Site, cut};
use crate::place;

/// Longer pegs that are had, metres (common practice, no source).
const LONGER_M: [f64; 2] = [0.45, 0.6];

/// Share by which a ratio may fall short, room for rounding.
const GRAIN: f64 = 1e-9;

/// The angle at which a corner is advised a brace whatever the numbers say, degrees (geometry's own limit).
const BRACE_ANGLE_DEG: f64 = 30.0;

/// What a guy carries beside its pegs: the line itself. A brace post has its tie.
const ONE_LINE: u32 = 1;

/// The details of a corner or end.
pub(super) fn detail(site: &Site<'_>, corner: &geometry::Corner) -> Detail {
    let wanted = site.plan.store.brace.safety_factor();
    let safety = if corner.pull_n > 0.0 { corner.hold_n / corner.pull_n } else { f64::INFINITY };
    let stated = stated_brace(site, corner).map(|brace| judge(site, corner, brace, wanted));
    let settled = stated.as_ref().is_some_and(|judged| judged.holds);
    let mends = if corner.brace == Verdict::None || settled { Vec::new() } else { mends(site, corner, wanted) };
    let holding = mends.iter().enumerate().filter(|(_, mend)| mend.holds);
    let cheapest = holding.min_by(|a, b| a.1.cost_minutes.total_cmp(&b.1.cost_minutes)).map(|(index, _)| index);
    Detail { safety, stated, mends, cheapest }
}

/// The brace that the keeper stated for this corner: the nearest within a step.
fn stated_brace<'a>(site: &Site<'a>, corner: &geometry::Corner) -> Option<&'a StatedBrace> {
    let off_m = |brace: &StatedBrace| corner.at.distance_m(crate::point(brace.at));
    let near = site.run.braces.iter().filter(|brace| off_m(brace) <= StatedBrace::REACH_M);
    near.min_by(|a, b| off_m(a).total_cmp(&off_m(b)))
}

/// What the corner's own post is: height of its net, and its spikes.
struct Own {
    height_m: f64,
    spike: Spike,
    spikes: u32,
}

fn own(site: &Site<'_>, corner: &geometry::Corner) -> Own {
    let kind = |&post: &usize| site.placement.nets[site.placement.posts[post].net].kind;
    let weakest = corner.posts.iter().map(kind).filter_map(|kind| site.request.kinds.get(kind)).min_by(|a, b| {
        let hold = |one: &geometry::NetForces| {
            f64::from(one.spikes_per_post) * site.request.soil.hold_n(one.spike, one.height_m / 2.0, false)
        };
        hold(a).total_cmp(&hold(b))
    });
    weakest.map_or(Own { height_m: 1.0, spike: Spike { length_m: 0.0, diameter_m: 0.0 }, spikes: 0 }, |one| Own {
        height_m: one.height_m,
        spike: one.spike,
        spikes: one.spikes_per_post,
    })
}

/// Judges a brace at a corner.
fn judge(site: &Site<'_>, corner: &geometry::Corner, brace: &StatedBrace, wanted: f64) -> Judged {
    let (rule, own) = (&site.plan.store.brace, own(site, corner));
    let enough = |safety: f64| safety >= wanted * (1.0 - GRAIN);
    if brace.kind == BraceKind::Post {
        let post = Spike { length_m: rule.post_length_m(), diameter_m: rule.post_diameter_m() };
        let pull_height_m = own.height_m / 2.0;
        let hold_n = brace_post(&BracePost { soil: site.request.soil, pull_height_m, post, own_hold_n: corner.hold_n });
        let safety = if corner.pull_n > 0.0 { hold_n / corner.pull_n } else { f64::INFINITY };
        return Judged { kind: brace.kind, guy: None, hold_n: Some(hold_n), safety, holds: enough(safety) };
    }
    let (tied_m, stand_off_m) = rule.guy_of(brace, own.height_m);
    let forces = guy(&Guy {
        soil: site.request.soil,
        pull_n: corner.pull_n,
        pull_height_m: own.height_m / 2.0,
        tied_m,
        angle_rad: tied_m.atan2(stand_off_m),
        peg: Spike {
            length_m: brace.peg_length_m.unwrap_or(rule.stake_length_m()),
            diameter_m: brace.peg_diameter_m.unwrap_or(rule.stake_diameter_m()),
        },
        pegs: brace.pegs.unwrap_or(rule.pegs()),
        loop_m: rule.loop_height_m(),
        spike: own.spike,
        spikes: own.spikes,
    });
    let safety = forces.safety();
    Judged { kind: brace.kind, guy: Some(forces), hold_n: None, safety, holds: enough(safety) }
}

/// Every way that is looked at, in the order of [`MendKind::ALL`]; a way that is not to be had is left out.
fn mends(site: &Site<'_>, corner: &geometry::Corner, wanted: f64) -> Vec<Mend> {
    let rule = &site.plan.store.brace;
    let pegs = rule.pegs();
    let longer: Vec<f64> = LONGER_M.into_iter().filter(|length_m| *length_m > rule.stake_length_m()).collect();
    let one_length = |kind, pegs: u32, lengths: &[f64]| {
        let ways = lengths.iter().map(|&length_m| guyed(site, corner, wanted, kind, pegs, length_m));
        let mut last = None;
        for mend in ways {
            let holds = mend.holds;
            last = Some(mend);
            if holds {
                break;
            }
        }
        last
    };
    let stake = [rule.stake_length_m()];
    [
        one_length(MendKind::Guy, pegs, &stake),
        one_length(MendKind::LongerPeg, pegs, &longer),
        one_length(MendKind::SecondPeg, pegs.max(2), &stake).filter(|_| pegs < 2),
        one_length(MendKind::LongerPegs, pegs.max(2), &longer).filter(|_| pegs < 2),
        Some(posted(site, corner, wanted)),
        cut_over(site, corner, wanted),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// Minutes of work about a brace, longer in stony ground.
fn minutes(site: &Site<'_>, minutes: f64) -> f64 {
    let rates = &site.plan.store.rates;
    if rates.stony() { minutes * rates.stony_factor() } else { minutes }
}

fn costed(site: &Site<'_>, mend: Mend) -> Mend {
    let carrying = f64::from(mend.carried) * site.plan.store.brace.carry_minutes();
    let lost = mend.cut.as_ref().map_or(0.0, |cut| {
        let (ground, net) = (cut.lost_m2 * site.minutes_per_m2, cut.shorter_m * site.minutes_per_m);
        if cut.lost_m2 < 0.0 { 0.0 } else { ground.max(net).max(0.0) }
    });
    Mend { cost_minutes: mend.minutes + carrying + lost, ..mend }
}

/// A guy with so many pegs of that length: tied where the store says, or, where the post's foot would give way by that,
/// at the height of the pull.
fn guyed(site: &Site<'_>, corner: &geometry::Corner, wanted: f64, kind: MendKind, pegs: u32, length_m: f64) -> Mend {
    let rule = &site.plan.store.brace;
    let differs = |length_m: f64| (length_m - rule.stake_length_m()).abs() > GRAIN;
    let brace = StatedBrace {
        at: place(corner.at),
        kind: BraceKind::Guy,
        pegs: (pegs != rule.pegs()).then_some(pegs),
        peg_length_m: differs(length_m).then_some(length_m),
        ..StatedBrace::default()
    };
    let as_stored = judge(site, corner, &brace, wanted);
    let lower = StatedBrace { guy_height_m: Some(own(site, corner).height_m / 2.0), ..brace.clone() };
    let at_pull = judge(site, corner, &lower, wanted);
    let (brace, judged) =
        if !as_stored.holds && at_pull.safety > as_stored.safety { (lower, at_pull) } else { (brace, as_stored) };
    let extra = f64::from(pegs - 1);
    let steps = ((length_m - rule.stake_length_m()) / table::LONGER_PEG_STEP_M).max(0.0);
    let work = site.plan.store.rates.brace_minutes()
        + extra * rule.second_peg_minutes()
        + steps * rule.longer_peg_minutes() * f64::from(pegs);
    let mend = Mend {
        kind,
        brace: Some(brace),
        length_m,
        pegs,
        safety: judged.safety,
        holds: judged.holds,
        judged: Some(judged),
        cut: None,
        minutes: minutes(site, work),
        carried: ONE_LINE + pegs,
        cost_minutes: 0.0,
    };
    costed(site, mend)
}

/// A brace post.
fn posted(site: &Site<'_>, corner: &geometry::Corner, wanted: f64) -> Mend {
    let brace = StatedBrace { at: place(corner.at), kind: BraceKind::Post, ..StatedBrace::default() };
    let judged = judge(site, corner, &brace, wanted);
    let rule = &site.plan.store.brace;
    let mend = Mend {
        kind: MendKind::BracePost,
        brace: Some(brace),
        length_m: rule.post_length_m(),
        pegs: 0,
        safety: judged.safety,
        holds: judged.holds,
        judged: Some(judged),
        cut: None,
        minutes: minutes(site, rule.post_minutes()),
        carried: ONE_LINE + 1,
        cost_minutes: 0.0,
    };
    costed(site, mend)
}

/// The corner cut over the fewest posts at which each turns less than the brace angle and stands.
fn cut_over(site: &Site<'_>, corner: &geometry::Corner, wanted: f64) -> Option<Mend> {
    if corner.end || site.outline.vertices().len() > cut::MOST_VERTICES {
        return None;
    }
    let post = *corner.posts.first()?;
    let net = site.placement.nets.get(site.placement.posts[post].net)?;
    let tension_n = site.request.kinds.get(net.kind)?.tension_n;
    let kind = &site.plan.store.nets[net.kind];
    let panels = kind.panel_count().max(1) as f64;
    let near = |vertex: &geometry::Vertex| (vertex.along_m - corner.along_m).abs() < geometry::SAME_PLACE_M;
    let vertex = site.outline.vertices().iter().position(near)?;
    for posts in 2..=MOST_CUT_POSTS {
        let turn_rad = corner.turn_rad / posts as f64;
        let pull_n = corner_pull_n(tension_n, turn_rad);
        let stands = bend_verdict(turn_rad, pull_n, corner.hold_n, wanted) == Verdict::None
            && pull_n <= corner.hold_n
            && turn_rad.to_degrees() < BRACE_ANGLE_DEG - GRAIN;
        if !stands {
            continue;
        }
        let found = geometry::cut_corner(site.outline, vertex, posts, kind.length_m / panels)?;
        if !cut::fits(site, vertex, &found.places) {
            return None;
        }
        let lost_m2 = if corner.dents { -found.ground_m2 } else { found.ground_m2 };
        let lost_m2 = if site.outline.is_closed() { lost_m2 } else { 0.0 };
        let mend = Mend {
            kind: MendKind::CutCorner,
            brace: None,
            judged: None,
            length_m: 0.0,
            pegs: 0,
            safety: if pull_n > 0.0 { corner.hold_n / pull_n } else { f64::INFINITY },
            holds: true,
            // A cane and a look along it have no stone to fear.
            minutes: (posts - 1) as f64 * site.plan.store.brace.cut_post_minutes(),
            carried: 0,
            cost_minutes: 0.0,
            cut: Some(CutMend {
                vertex: site.outline.vertices()[vertex].stated,
                places: found.places.iter().copied().map(place).collect(),
                turn_deg: found.turn_rad.to_degrees(),
                pull_n,
                shorter_m: found.shorter_m,
                lost_m2,
                set_back_m: found.set_back_m,
            }),
        };
        return Some(costed(site, mend));
    }
    None
}

/// Whether an outline can be built.
pub(super) fn builds(points: &[geometry::Point], closed: bool) -> Option<Outline> {
    let fatal = geometry::check_outline(points, closed).iter().any(geometry::OutlineFault::is_fatal);
    (!fatal).then(|| if closed { Outline::closed(points) } else { Outline::open(points) })
}
