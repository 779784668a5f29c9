//! What would hold a corner or an end, and what each way costs.
//!
//! The cost is one figure in minutes: the work, so many minutes for each thing carried there and back, and at a corner
//! that is cut what is lost by it: the ground, each square metre for what the run's took to set up, or the netting that is
//! left over, each metre for what the line's took, whichever is more (they are two sides of one loss); nothing at a dent,
//! where ground is won. The rates are the store's;
//! where none is stated, common practice without a source.

use geometry::{CornerRequest, MOST_CUT_POSTS, Outline, Verdict, bend_verdict, corner_pull_n};
use plan::{BraceKind, StatedBrace};

use super::judging::{GRAIN, Judge};
use super::kit::Kit;
use super::model::{CutMend, Detail, Judged, Mend, MendKind};
use super::{Site, cut};
use crate::place;

/// Longer pegs that are had, metres (common practice, no source).
const LONGER_M: [f64; 2] = [0.45, 0.6];

/// The details of a corner or end, whose stated brace was judged.
pub(super) fn detail(site: &Site<'_>, corner: &geometry::Corner, stated: Option<&Judged>) -> Detail {
    let settled = stated.is_some_and(|judged| judged.holds);
    let mends = if corner.brace == Verdict::None || settled { Vec::new() } else { mends(site, corner) };
    let holding = mends.iter().enumerate().filter(|(_, mend)| mend.holds);
    let cheapest = holding.min_by(|a, b| a.1.cost_minutes.total_cmp(&b.1.cost_minutes)).map(|(index, _)| index);
    let safety = Judge::safety(corner.pull_n, corner.hold_n);
    Detail { safety, braces: corner.stated.clone(), stated: stated.cloned(), mends, cheapest }
}

/// Every way that is looked at, in the order of [`MendKind::ALL`]; a way that is not to be had is left out.
fn mends(site: &Site<'_>, corner: &geometry::Corner) -> Vec<Mend> {
    let rule = &site.plan.store.brace;
    let pegs = rule.pegs();
    let longer: Vec<f64> = LONGER_M.into_iter().filter(|length_m| *length_m > rule.stake_length_m()).collect();
    let one_length = |kind, pegs: u32, lengths: &[f64]| {
        let ways = lengths.iter().map(|&length_m| guyed(site, corner, kind, pegs, length_m));
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
        Some(posted(site, corner)),
        cut_over(site, corner),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// Minutes of work about a brace, longer in stony ground and as the ground is today.
fn minutes(site: &Site<'_>, minutes: f64) -> f64 {
    let rates = &site.plan.store.rates;
    let today = minutes * site.plan.ground.factors().minutes;
    if rates.stony() { today * rates.stony_factor() } else { today }
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
fn guyed(site: &Site<'_>, corner: &geometry::Corner, kind: MendKind, pegs: u32, length_m: f64) -> Mend {
    let rule = &site.plan.store.brace;
    let differs = |length_m: f64| (length_m - rule.stake_length_m()).abs() > GRAIN;
    let brace = StatedBrace {
        at: place(corner.at),
        kind: BraceKind::Guy,
        pegs: (pegs != rule.pegs()).then_some(pegs),
        peg_length_m: differs(length_m).then_some(length_m),
        ..StatedBrace::default()
    };
    let as_stored = site.judge.brace(corner, &brace);
    let lower = StatedBrace { guy_height_m: Some(site.judge.own(corner).height_m / 2.0), ..brace.clone() };
    let at_pull = site.judge.brace(corner, &lower);
    let (brace, judged) =
        if !as_stored.holds && at_pull.safety > as_stored.safety { (lower, at_pull) } else { (brace, as_stored) };
    costed(site, Mend { length_m, ..set(site, kind, brace, judged) })
}

/// A brace post.
fn posted(site: &Site<'_>, corner: &geometry::Corner) -> Mend {
    let brace = StatedBrace { at: place(corner.at), kind: BraceKind::Post, ..StatedBrace::default() };
    let judged = site.judge.brace(corner, &brace);
    costed(site, set(site, MendKind::BracePost, brace, judged))
}

/// A brace that was judged, and what its kit takes.
fn set(site: &Site<'_>, kind: MendKind, brace: StatedBrace, judged: Judged) -> Mend {
    let kit = Kit::of(&site.plan.store.brace, Some(&brace));
    Mend {
        kind,
        brace: Some(brace),
        length_m: kit.length_m,
        pegs: kit.pegs,
        safety: judged.safety,
        holds: judged.holds,
        judged: Some(judged),
        cut: None,
        minutes: minutes(site, kit.minutes(&site.plan.store)),
        carried: kit.carried(),
        cost_minutes: 0.0,
    }
}

/// The corner cut over the fewest posts at which each turns less than the brace angle and stands.
fn cut_over(site: &Site<'_>, corner: &geometry::Corner) -> Option<Mend> {
    if corner.end || site.outline.vertices().len() > cut::MOST_VERTICES {
        return None;
    }
    let CornerRequest { placement, safety_factor, kinds, .. } = site.judge.request;
    let post = *corner.posts.first()?;
    let net = placement.nets.get(placement.posts[post].net)?;
    let tension_n = kinds.get(net.kind)?.tension_n;
    let kind = &site.plan.store.nets[net.kind];
    let panels = kind.panel_count().max(1) as f64;
    let near = |vertex: &geometry::Vertex| (vertex.along_m - corner.along_m).abs() < geometry::SAME_PLACE_M;
    let vertex = site.outline.vertices().iter().position(near)?;
    for posts in 2..=MOST_CUT_POSTS {
        let turn_rad = corner.turn_rad / posts as f64;
        let pull_n = corner_pull_n(tension_n, turn_rad);
        let stands = bend_verdict(turn_rad, pull_n, corner.hold_n, safety_factor) == Verdict::None
            && pull_n <= corner.hold_n
            && turn_rad < geometry::ADVISED_TURN_RAD - GRAIN;
        if !stands {
            continue;
        }
        let panel_m = kind.length_m / panels;
        let found = cut::places(site.outline, vertex, posts, panel_m, site.measure.as_ref())?;
        if !cut::fits(site, vertex, &found.places) {
            return None;
        }
        let lost_m2 = if corner.dents { -found.ground_m2 } else { found.ground_m2 };
        let lost_m2 = if site.outline.is_closed() { lost_m2 } else { 0.0 };
        let mut cut = CutMend {
            vertex: site.outline.vertices()[vertex].stated,
            braces: corner.stated.clone(),
            places: found.places.iter().copied().map(place).collect(),
            turn_deg: found.turn_rad.to_degrees(),
            pull_n,
            shorter_m: found.shorter_m,
            lost_m2,
            along_m: found.along_m,
            off_post_m: None,
        };
        cut.off_post_m = cut::off_post_m(site, &cut);
        let mend = Mend {
            kind: MendKind::CutCorner,
            brace: None,
            judged: None,
            length_m: 0.0,
            pegs: 0,
            safety: Judge::safety(pull_n, corner.hold_n),
            holds: true,
            // A cane and a look along it have no stone to fear.
            minutes: (posts - 1) as f64 * site.plan.store.brace.cut_post_minutes(),
            carried: 0,
            cost_minutes: 0.0,
            cut: Some(cut),
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
