//! In what order the run is set up and taken down, how far that is to walk and how long it takes.
//!
//! Rolls lie at a drop point. A net may be rolled out from either of its ends; its posts are trodden in on the way back,
//! so its work ends where it began, and the next roll is fetched from there. A join is tied when the later of its two
//! nets is trodden in, for the feet pass both ends then. The search over orders and ends is in [`trips`]; what does not
//! depend on the order (looking round, the walk along each net, the braces, the power) is added in [`up`] and [`down`].
//! Ways are straight, also past what cannot be crossed: that is an assumption. Metres, minutes.
//! Sources: the order of the work, docs/sources.md, husbandry 1.2 (S13); the rates, the plan's table.

mod bound;
mod down;
mod hands;
mod joins;
mod model;
pub mod trips;
mod up;

use geometry::{MEET_M, Outline, Placement, Point};
use plan::{Plan, Run};

pub use model::{Doing, RollWork, Step, Work};

use crate::bracing::Kit;
use crate::lead;
use crate::model::RunWorkup;
use crate::slope::Slope;
use crate::values::Bad;
use crate::{place, point};
use hands::Hands;

/// A net as it lies: where its two ends stand, and what is on it.
#[derive(Clone, Debug)]
struct Roll {
    kind: String,
    length_m: f64,
    posts: usize,
    /// First and last post's places in the chain's direction.
    ends: [Point; 2],
    /// Braces whose nearest post is on it, each as many times as it takes longer than one with a single stake.
    braces: f64,
    /// Further posts under it.
    further: usize,
}

/// Where a brace is set, and what it is made of.
struct Braced {
    at: Point,
    kit: Kit,
}

/// What both pieces of work are made of.
struct Site<'a> {
    plan: &'a Plan,
    run: &'a Run,
    outline: &'a Outline,
    placement: &'a Placement,
    hands: Hands,
    rolls: Vec<Roll>,
    /// Nets and places of the joins: the net before, the net after.
    joins: Vec<joins::Join>,
    /// Corners and ends that have a brace or need one.
    braced: Vec<Braced>,
    /// Further posts at dips and ridges, in chain order.
    further: Vec<Point>,
    drop_at: Point,
    feed_at: Point,
    /// Where the energizer stands, where that is stated to be apart from the feed point: it is switched on and off there.
    energizer_at: Option<Point>,
    /// How far that is from the feed point, metres.
    energizer_apart_m: Option<f64>,
}

impl Site<'_> {
    /// Where power is seen to on the way to the energizer: the lead's clip, then the switch.
    fn power_at(&self) -> Vec<Point> {
        std::iter::once(self.feed_at).chain(self.energizer_at).collect()
    }
}

/// Works out both, where the nets lie and the corners are judged.
pub(crate) fn add(
    plan: &Plan,
    run: &Run,
    outline: &Outline,
    placement: Option<&Placement>,
    bad: &Bad,
    worked: &mut RunWorkup,
) {
    let (Some(lay), Some(placement)) = (&worked.lay, placement) else { return };
    if bad.any("store.rates.") || !lay.corners_judged {
        return;
    }
    let Some(drop_at) = plan.drop_at(run) else { return };
    let needed = lay.corners.iter().filter(|corner| corner.needs_brace());
    let braced: Vec<Braced> = needed.map(|corner| Braced { at: point(corner.at), kit: corner.kit }).collect();
    let energizer_apart_m = lead::lead(plan, run).apart_m.filter(|&apart_m| apart_m > MEET_M);
    let site = Site {
        plan,
        run,
        outline,
        placement,
        hands: Hands::of(&plan.store.rates, &plan.ground),
        rolls: rolls(plan, placement, &braced, worked.slope.as_ref()),
        joins: joins::of(placement),
        braced,
        further: worked.slope.iter().flat_map(Slope::posts).map(point).collect(),
        drop_at: point(drop_at),
        feed_at: lead::feed(run).map_or(point(drop_at), point),
        energizer_at: energizer_apart_m.and(run.energizer_at).map(point),
        energizer_apart_m,
    };
    let mow_minutes = worked.strip.as_ref().map_or(0.0, |strip| strip.minutes);
    let set_up = up::work(&site, mow_minutes);
    let taking_down = down::work(&site, &set_up);
    // Rates beyond reason give minutes beyond numbers: not worked out rather than wrong.
    if !(set_up.minutes_high.is_finite() && taking_down.minutes_high.is_finite()) {
        return;
    }
    worked.taking_down = Some(taking_down);
    if plan.store.rates.stated()
        && let Some(lay) = &mut worked.lay
    {
        lay.set_up_minutes = set_up.minutes_low;
    }
    worked.set_up = Some(set_up);
}

fn rolls(plan: &Plan, placement: &Placement, braced: &[Braced], slope: Option<&Slope>) -> Vec<Roll> {
    let mut posts: Vec<Vec<Point>> = vec![Vec::new(); placement.nets.len()];
    for post in placement.posts.iter().chain(&placement.spare_posts) {
        posts[post.net].push(post.at);
    }
    let mut rolls: Vec<Roll> = placement
        .nets
        .iter()
        .zip(&posts)
        .map(|(net, posts)| Roll {
            kind: plan.store.nets[net.kind].id.clone(),
            length_m: net.end_m - net.start_m,
            posts: posts.len(),
            ends: [posts[0], posts[posts.len() - 1]],
            braces: 0.0,
            further: 0,
        })
        .collect();
    for Braced { at, kit } in braced {
        let nearest = placement.posts.iter().min_by(|a, b| a.at.distance_m(*at).total_cmp(&b.at.distance_m(*at)));
        if let Some(post) = nearest {
            rolls[post.net].braces += kit.share(&plan.store);
        }
    }
    for panel in slope.iter().flat_map(|slope| &slope.uneven) {
        rolls[placement.posts[panel.post].net].further += panel.posts.len();
    }
    rolls
}

/// A piece of work in the making: where one stands, and what was done.
struct Making<'a> {
    hands: &'a Hands,
    here: Point,
    steps: Vec<Step>,
}

impl Making<'_> {
    /// Goes on from here to the first of `places` with empty hands; leaves at the last.
    fn walk(&mut self, places: &[Point]) -> f64 {
        let mut walked_m = 0.0;
        for &at in places {
            walked_m += self.here.distance_m(at);
            self.here = at;
        }
        walked_m
    }

    fn step(&mut self, what: Doing, net: Option<usize>, places: &[Point], on_foot: (f64, f64), minutes: f64) {
        let (walk_m, carry_m) = on_foot;
        let minutes = minutes + walk_m * self.hands.walk + carry_m * self.hands.carry;
        let places = places.iter().copied().map(place).collect();
        self.steps.push(Step { what, places, net, walk_m, carry_m, minutes });
    }

    /// All of it; the mower's minutes stay apart. `slack` is what the walk's bound lies below its minutes.
    fn done(self, order: Vec<RollWork>, site: &Site<'_>, (drop_at, drop_assumed): (Point, bool), slack: f64) -> Work {
        let mowing = |step: &&Step| matches!(step.what, Doing::Mow(_));
        let mow_minutes: f64 = self.steps.iter().filter(mowing).map(|step| step.minutes).sum();
        let minutes_low = self.steps.iter().filter(|step| !mowing(step)).map(|step| step.minutes).sum::<f64>();
        Work {
            drop_at: place(drop_at),
            drop_assumed,
            energizer_apart_m: site.energizer_apart_m,
            walk_m: self.steps.iter().map(|step| step.walk_m).sum(),
            carry_m: self.steps.iter().map(|step| step.carry_m).sum(),
            minutes_low,
            minutes_high: minutes_low * self.hands.first_time,
            minutes_bound: minutes_low - slack,
            mow_minutes,
            order,
            steps: self.steps,
        }
    }
}
