//! The report's keys `soil`, and of a run `brace_detail` and `wind`. A promise like the rest of the report.
//!
//! All three are `null` where the plan says nothing of soil classes, pulls, corners seen, wind, or braces beyond their
//! stake: reports of such plans stay as they were.

use plan::{BraceKind, Plan, Point};
use schemars::JsonSchema;
use serde::Serialize;
use workup::bracing::{Bracing, Detail, GoesOver, Holding, Judged, Kit, Mend, MendKind, SoilFound};
use workup::{RunWorkup, Workup};

/// The soil that the braces reckon with.
#[derive(Serialize, JsonSchema)]
pub(crate) struct Soil {
    /// On what it rests; of several the first of this order from the end: a corner seen outweighs all.
    #[schemars(extend("enum" = ["default", "by_foot", "class", "stated", "pull_test", "corners_seen"]))]
    evidence: &'static str,
    /// On what it rested before corners were seen.
    before: &'static str,
    /// Undrained strength, dry, kilopascals; `null` of a sand.
    undrained_strength_kpa: Option<f64>,
    /// Angle of friction, degrees; `null` of a clay.
    friction_angle_deg: Option<f64>,
    /// Lower end of the class that counts, kilopascals or degrees; `null` where it is open, where none counts, and where a
    /// corner seen outweighs it.
    low: Option<f64>,
    /// Upper end of it.
    high: Option<f64>,
    /// The table of that class: the set of words.
    table: Option<&'static str>,
    /// The word of that class.
    class: Option<&'static str>,
    /// Whether the ground is wet.
    wet: bool,
    /// What wet ground holds of dry, a share.
    wet_factor: f64,
    /// Whether nothing that is driven into it can be relied on.
    refuses: bool,
    /// Where the figure comes from.
    source: &'static str,
    /// What each corner seen says, in the plan's order.
    corners_seen: Vec<Seen>,
}

/// What a corner seen says.
#[derive(Serialize, JsonSchema)]
struct Seen {
    /// Whether it stood.
    stood: bool,
    /// How far the line turned there, degrees; `null` where nobody knows.
    turn_deg: Option<f64>,
    /// The pull there, newtons.
    pull_n: Option<f64>,
    /// The strength that just holds that pull, dry, kilopascals.
    strength_kpa: Option<f64>,
    /// Whether the strength rests on it.
    counts: bool,
}

/// Braces and wind of a run.
#[derive(Serialize, JsonSchema)]
pub(crate) struct OfRun {
    /// One for each of `corners`, in its order.
    brace_detail: Option<Vec<DetailOut>>,
    /// The wind on its straights.
    wind: Option<WindOut>,
    /// What to take along for the braces that are stated or needed.
    brace_kits: Option<Vec<KitOut>>,
}

/// Braces that are made of the same.
#[derive(Serialize, JsonSchema)]
struct KitOut {
    /// How many.
    count: usize,
    /// What they are: `guy` or `post`.
    #[schemars(extend("enum" = ["guy", "post"]))]
    kind: &'static str,
    /// Pegs to each; 0 of a post.
    pegs: u32,
    /// Length of a peg or post in the ground, metres.
    length_m: f64,
    /// Whether an earth stake is the first peg of each, carried with the earth; absent where none is.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    #[schemars(default)]
    earth_stake: bool,
    /// Minutes to set each, on soft ground by day.
    minutes: f64,
}

/// A corner or end in detail.
#[derive(Serialize, JsonSchema)]
struct DetailOut {
    /// Ratio of what its spikes hold to the pull; `null` where nothing pulls.
    safety: Option<f64>,
    /// Wanted ratio of hold to pull.
    wanted: f64,
    /// The brace that the plan states, judged.
    stated: Option<JudgedOut>,
    /// What would mend it, each way that is to be had; empty where it stands or its brace holds.
    mends: Vec<MendOut>,
    /// The place in `mends` of the cheapest that holds.
    cheapest: Option<usize>,
}

/// A brace judged.
#[derive(Serialize, JsonSchema)]
struct JudgedOut {
    /// Whether it holds as much as is wanted.
    holds: bool,
    /// The least ratio of hold to load.
    safety: Option<f64>,
    /// Along the guy, newtons.
    tension_n: Option<f64>,
    /// Level part of it, newtons.
    level_n: Option<f64>,
    /// Up at the peg, and down the post, newtons.
    uplift_n: Option<f64>,
    /// Left to the post's spikes at the ground, newtons.
    foot_n: Option<f64>,
    /// From the post to the peg, metres.
    reach_m: Option<f64>,
    /// What the pegs hold sideways, newtons.
    side_hold_n: Option<f64>,
    /// What they hold against being drawn out, newtons.
    lift_hold_n: Option<f64>,
    /// What the spikes hold at the ground, newtons.
    foot_hold_n: Option<f64>,
    /// What post and brace post hold together, newtons.
    post_hold_n: Option<f64>,
}

/// Something that may mend a corner.
#[derive(Serialize, JsonSchema)]
struct MendOut {
    /// What it is.
    #[schemars(extend("enum" = MendKind::IDS))]
    kind: &'static str,
    /// Whether it holds.
    holds: bool,
    /// Ratio of hold to load at its weakest.
    safety: Option<f64>,
    /// Length of a peg or post in the ground, metres; absent for a cut.
    #[serde(skip_serializing_if = "Option::is_none")]
    length_m: Option<f64>,
    /// Pegs; absent for a post or a cut.
    #[serde(skip_serializing_if = "Option::is_none")]
    pegs: Option<u32>,
    /// Minutes of work.
    minutes: f64,
    /// Things to carry there and back.
    carried: u32,
    /// Minutes with what is carried and what ground is lost.
    cost_minutes: f64,
    /// The brace judged; absent for a cut.
    #[serde(skip_serializing_if = "Option::is_none")]
    brace: Option<JudgedOut>,
    /// The cut; absent for a brace.
    #[serde(skip_serializing_if = "Option::is_none")]
    cut: Option<CutOut>,
}

/// A corner cut over several posts.
#[derive(Serialize, JsonSchema)]
struct CutOut {
    /// The places that stand in for the corner.
    places: Vec<Point>,
    /// Turn at each of them, degrees.
    turn_deg: f64,
    /// Pull at each of them, newtons.
    pull_n: f64,
    /// So much shorter is the line, metres.
    shorter_m: f64,
    /// Ground lost, square metres; negative where it is won.
    lost_m2: f64,
    /// How far the places lie from posts at most, once the nets fall anew, metres.
    off_post_m: Option<f64>,
}

/// The wind on a run.
#[derive(Serialize, JsonSchema)]
struct WindOut {
    /// The wind that it must stand, metres a second, as stated.
    wanted_m_per_s: Option<f64>,
    /// With a clean net; `null` where no post stands free of a brace.
    clean: Option<OverOut>,
    /// With a fouled one.
    fouled: Option<OverOut>,
}

/// When posts go over.
#[derive(Serialize, JsonSchema)]
struct OverOut {
    /// Share of the net's face that is closed.
    solidity: f64,
    /// The wind at which the first go over, metres a second.
    limit_m_per_s: f64,
    /// The posts of the straight that goes first, or of several that are alike, as places in `posts`, from 0.
    first_posts: Vec<usize>,
    /// How many straights are alike in that.
    alike: usize,
    /// The one in the middle of the first.
    first_post: usize,
    /// Where that stands.
    at: Point,
    /// Length of that straight, metres.
    straight_m: f64,
    /// Posts that have gone over in the wind that it must stand.
    over: Option<usize>,
    /// Posts that stand free of a brace.
    free: usize,
}

/// The soil's keys.
pub(crate) fn soil(plan: &Plan, workup: &Workup) -> Option<Soil> {
    workup.soil.as_ref().filter(|_| plan::bracing::stated(plan)).map(soil_out)
}

fn soil_out(soil: &SoilFound) -> Soil {
    let (kpa, deg) = match soil.holding {
        Holding::Clay(kpa) => (Some(kpa), None),
        Holding::Sand(deg, _) => (None, Some(deg)),
    };
    Soil {
        evidence: soil.evidence.id(),
        before: soil.before.id(),
        undrained_strength_kpa: kpa,
        friction_angle_deg: deg,
        low: soil.range.and_then(|range| range.0),
        high: soil.range.and_then(|range| range.1),
        table: soil.table.map(plan::SoilTable::id),
        class: soil.word.map(plan::SoilWord::id),
        wet: soil.wet,
        wet_factor: soil.wet_factor,
        refuses: soil.refuses,
        source: soil.source,
        corners_seen: soil
            .seen
            .iter()
            .map(|seen| Seen {
                stood: seen.stood,
                turn_deg: seen.turn_deg,
                pull_n: seen.pull_n,
                strength_kpa: seen.strength_kpa,
                counts: seen.counts,
            })
            .collect(),
    }
}

/// The keys of one run.
pub(crate) fn of_run(plan: &Plan, worked: &RunWorkup) -> OfRun {
    let bracing = worked.bracing.as_ref().filter(|_| plan::bracing::stated(plan));
    OfRun {
        brace_detail: bracing.map(|bracing| bracing.details.iter().map(|detail| detail_out(detail, bracing)).collect()),
        wind: bracing.map(|bracing| WindOut {
            wanted_m_per_s: bracing.wind.wanted_m_per_s,
            clean: bracing.wind.clean.as_ref().map(|over| over_out(over, bracing.wind.clean_share)),
            fouled: bracing.wind.fouled.as_ref().map(|over| over_out(over, bracing.wind.fouled_share)),
        }),
        brace_kits: worked.lay.as_ref().filter(|_| bracing.is_some()).map(|lay| {
            let out = |&(kit, count): &(Kit, usize)| KitOut {
                count,
                kind: if kit.kind == BraceKind::Post { "post" } else { "guy" },
                pegs: kit.pegs,
                length_m: kit.length_m,
                earth_stake: kit.earth,
                minutes: kit.minutes(&plan.store),
            };
            lay.kits().iter().map(out).collect()
        }),
    }
}

/// JSON has no infinity.
fn finite(value: f64) -> Option<f64> {
    value.is_finite().then_some(value)
}

fn detail_out(detail: &Detail, bracing: &Bracing) -> DetailOut {
    DetailOut {
        safety: finite(detail.safety),
        wanted: bracing.wanted,
        stated: detail.stated.as_ref().map(judged_out),
        mends: detail.mends.iter().map(mend_out).collect(),
        cheapest: detail.cheapest,
    }
}

fn judged_out(judged: &Judged) -> JudgedOut {
    let guy = judged.guy.as_ref();
    JudgedOut {
        holds: judged.holds,
        safety: finite(judged.safety),
        tension_n: guy.map(|guy| guy.tension_n),
        level_n: guy.map(|guy| guy.level_n),
        uplift_n: guy.map(|guy| guy.lift_n),
        foot_n: guy.map(|guy| guy.foot_n),
        reach_m: guy.map(|guy| guy.reach_m),
        side_hold_n: guy.map(|guy| guy.side_hold_n),
        lift_hold_n: guy.map(|guy| guy.lift_hold_n),
        foot_hold_n: guy.map(|guy| guy.foot_hold_n),
        post_hold_n: judged.hold_n,
    }
}

fn mend_out(mend: &Mend) -> MendOut {
    MendOut {
        kind: mend.kind.id(),
        holds: mend.holds,
        safety: finite(mend.safety),
        length_m: mend.cut.is_none().then_some(mend.length_m),
        pegs: (mend.pegs > 0).then_some(mend.pegs),
        minutes: mend.minutes,
        carried: mend.carried,
        cost_minutes: mend.cost_minutes,
        brace: mend.judged.as_ref().map(judged_out),
        cut: mend.cut.as_ref().map(|cut| CutOut {
            places: cut.places.clone(),
            turn_deg: cut.turn_deg,
            pull_n: cut.pull_n,
            shorter_m: cut.shorter_m,
            lost_m2: cut.lost_m2,
            off_post_m: cut.off_post_m,
        }),
    }
}

fn over_out(over: &GoesOver, solidity: f64) -> OverOut {
    OverOut {
        solidity,
        limit_m_per_s: over.limit_m_per_s,
        first_posts: over.posts.clone(),
        alike: over.alike,
        first_post: over.first_post,
        at: over.at,
        straight_m: over.stretch_m,
        over: over.over,
        free: over.free,
    }
}
