//! Each corner and end judged, once: what pulls, what holds, which brace is stated for it, and whether that holds.
//!
//! This is the one rule of what "holds" means, whatever else a plan says: a brace holds where the least ratio of hold to
//! load (of a guy sideways and upwards at its peg, and at the post's foot; of a brace post with the corner's own) is at
//! least the safety factor, 2 unless stated (docs/sources.md, husbandry 2.5 "FS 2 normal" and 11b). Map, page, sheet,
//! report and findings read it from [`crate::Corner::holds`].

use geometry::{
    BracePost, Corner, CornerRequest, Guy, NetForces, Outline, Placement, Spike, StakeKind, brace_post, guy,
};
use plan::{BraceKind, BraceRule, Plan, Run, StatedBrace};

use super::model::Judged;
use super::soil::SoilFound;
use crate::point;

/// Share by which a ratio may fall short, room for rounding.
pub(super) const GRAIN: f64 = 1e-9;

/// What the corners of a run are judged with, beside its line.
pub(crate) struct Parts {
    pub(super) kinds: Vec<NetForces>,
    stake: StakeKind,
    stand_offs: Vec<(geometry::Point, f64)>,
}

impl Parts {
    fn of(plan: &Plan, run: &Run) -> Self {
        let forces = |net: &plan::NetKind| NetForces {
            tension_n: net.tension_n(),
            height_m: net.height_m(),
            spikes_per_post: net.spikes_per_post(),
            spike: Spike { length_m: net.spike_length_m(), diameter_m: net.spike_diameter_m() },
        };
        let brace = &plan.store.brace;
        // As if no net were too low for it; which one stands there is known once the corners are.
        let stand_off_m = |stated: &StatedBrace| brace.guy_of(stated, f64::INFINITY).1;
        Self {
            kinds: plan.store.nets.iter().map(forces).collect(),
            stake: StakeKind {
                spike: Spike { length_m: brace.stake_length_m(), diameter_m: brace.stake_diameter_m() },
                loop_height_m: brace.loop_height_m(),
                stand_off_m: brace.stand_off_m(),
            },
            stand_offs: run.braces.iter().map(|stated| (point(stated.at), stand_off_m(stated))).collect(),
        }
    }

    /// What `geometry` is asked; the soil comes as wet as it is.
    pub(crate) fn request<'a>(
        &'a self,
        plan: &Plan,
        outline: &'a Outline,
        placement: &'a Placement,
        soil: &SoilFound,
    ) -> CornerRequest<'a> {
        CornerRequest {
            outline,
            placement,
            kinds: &self.kinds,
            soil: soil.soil(),
            wet: false,
            safety_factor: plan.store.brace.safety_factor(),
            stake: self.stake,
            stand_offs: &self.stand_offs,
            stated_within_m: StatedBrace::REACH_M,
        }
    }
}

/// The corners and ends of a run, judged.
pub(crate) struct Judging {
    pub(crate) parts: Parts,
    /// Every corner and end, in the lay's order.
    pub(crate) corners: Vec<Corner>,
    /// The brace that is stated for each, judged.
    pub(crate) stated: Vec<Option<Judged>>,
}

impl Judging {
    pub(crate) fn of(plan: &Plan, run: &Run, outline: &Outline, placement: &Placement, soil: &SoilFound) -> Self {
        let parts = Parts::of(plan, run);
        let request = parts.request(plan, outline, placement, soil);
        let judge = Judge { rule: &plan.store.brace, request };
        let mut corners = geometry::corners(&request);
        for corner in &mut corners {
            if let Some(&number) = corner.stated.last() {
                // A guy is tied no higher than the net that stands at its corner, and by an angle its peg then stands nearer.
                let (_, stand_off_m) = judge.rule.guy_of(&run.braces[number], judge.own(corner).height_m);
                corner.stake.stand_off_m = stand_off_m;
                corner.stake.at = corner.at + corner.stake.away * stand_off_m;
            }
        }
        let of = |corner: &Corner| corner.stated.last().map(|&number| judge.brace(corner, &run.braces[number]));
        let stated = corners.iter().map(of).collect();
        Self { parts, corners, stated }
    }
}

/// What the corner's own post is: height of its net, and its spikes.
pub(super) struct Own {
    pub(super) height_m: f64,
    spike: Spike,
    spikes: u32,
}

/// What braces are judged by.
pub(super) struct Judge<'a> {
    pub(super) rule: &'a BraceRule,
    pub(super) request: CornerRequest<'a>,
}

impl Judge<'_> {
    /// Ratio of what a post's spikes hold to the pull.
    pub(super) fn safety(pull_n: f64, hold_n: f64) -> f64 {
        if pull_n > 0.0 { hold_n / pull_n } else { f64::INFINITY }
    }

    /// The weakest post at a corner.
    pub(super) fn own(&self, corner: &Corner) -> Own {
        let (placement, soil) = (self.request.placement, self.request.soil);
        let kind = |&post: &usize| placement.nets[placement.posts[post].net].kind;
        let weakest = corner.posts.iter().map(kind).filter_map(|kind| self.request.kinds.get(kind)).min_by(|a, b| {
            let hold =
                |one: &NetForces| f64::from(one.spikes_per_post) * soil.hold_n(one.spike, one.height_m / 2.0, false);
            hold(a).total_cmp(&hold(b))
        });
        weakest.map_or(Own { height_m: 1.0, spike: Spike { length_m: 0.0, diameter_m: 0.0 }, spikes: 0 }, |one| Own {
            height_m: one.height_m,
            spike: one.spike,
            spikes: one.spikes_per_post,
        })
    }

    /// Judges a brace at a corner.
    pub(super) fn brace(&self, corner: &Corner, brace: &StatedBrace) -> Judged {
        let (rule, own) = (self.rule, self.own(corner));
        let enough = |safety: f64| safety >= self.request.safety_factor * (1.0 - GRAIN);
        let pull_height_m = own.height_m / 2.0;
        if brace.kind == BraceKind::Post {
            let post = Spike { length_m: rule.post_length_m(), diameter_m: rule.post_diameter_m() };
            let own_hold_n = corner.hold_n;
            let hold_n = brace_post(&BracePost { soil: self.request.soil, pull_height_m, post, own_hold_n });
            let safety = Self::safety(corner.pull_n, hold_n);
            let holds = enough(safety);
            return Judged { kind: brace.kind, guy: None, tied_m: None, hold_n: Some(hold_n), safety, holds };
        }
        let (tied_m, stand_off_m) = rule.guy_of(brace, own.height_m);
        let forces = guy(&Guy {
            soil: self.request.soil,
            pull_n: corner.pull_n,
            pull_height_m,
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
        let holds = enough(safety);
        Judged { kind: brace.kind, guy: Some(forces), tied_m: Some(tied_m), hold_n: None, safety, holds }
    }
}
