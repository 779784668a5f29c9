//! Which soil the braces reckon with, and on what evidence.
//!
//! Corners that stood or leaned outweigh the keeper's own pull, that a stated strength or angle, that a class of a table,
//! that the spike under the foot; where nothing is stated the default counts. A corner that stood says that the ground
//! holds at least so much, one that leaned that it holds less: they bound what the next evidence says. What was measured
//! counts as a clay's strength, also in sand: a clay gives longer stakes less than a sand would, so it errs downwards.
//! Strengths are those of dry ground; what was measured in the wet is brought up to it by the wet factor.

use geometry::{Outline, Spike, broms_clay_strength_pa, corner_pull_n};
use plan::{ByFoot, NetKind, Plan, SoilTable, SoilWord, Today, defaults};

use crate::model::Trouble;
use crate::point;

/// On what a soil rests, the weakest first.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Evidence {
    /// Nothing: the default.
    #[default]
    Default,
    /// A spike under the foot.
    ByFoot,
    /// A class of a named table.
    Class,
    /// A strength or an angle as stated.
    Stated,
    /// The keeper's own pull.
    PullTest,
    /// Corners that stood or leaned.
    CornersSeen,
}

impl Evidence {
    /// Its name in the report.
    pub const fn id(self) -> &'static str {
        match self {
            Self::Default => "default",
            Self::ByFoot => "by_foot",
            Self::Class => "class",
            Self::Stated => "stated",
            Self::PullTest => "pull_test",
            Self::CornersSeen => "corners_seen",
        }
    }
}

/// What the ground is made of, with what it holds by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Holding {
    /// A clay of that undrained strength, kilopascals.
    Clay(f64),
    /// A sand of that angle of friction, degrees, and weight, kilonewtons per cubic metre.
    Sand(f64, f64),
}

/// The soil that the braces reckon with.
#[derive(Clone, Debug, PartialEq)]
pub struct SoilFound {
    /// What it rests on.
    pub evidence: Evidence,
    /// What it rested on before corners were seen; the same where none bound it.
    pub before: Evidence,
    /// What it holds by, dry.
    pub holding: Holding,
    /// The range of its class, kPa or degrees; an open end is `None`. Where a class or the foot counts and no corner seen
    /// outweighs it.
    pub range: Option<(Option<f64>, Option<f64>)>,
    /// The table of that class.
    pub table: Option<SoilTable>,
    /// The word of that class.
    pub word: Option<SoilWord>,
    /// The spike under the foot, where it counts.
    pub by_foot: Option<ByFoot>,
    /// How the ground is today, where it is said.
    pub today: Option<Today>,
    /// Whether it is wet.
    pub wet: bool,
    /// What wet ground holds of dry, a share.
    pub wet_factor: f64,
    /// Whether nothing in it can be relied on.
    pub refuses: bool,
    /// Where the figure comes from.
    pub source: &'static str,
    /// What each corner seen says, in the plan's order; one without a turn says nothing.
    pub seen: Vec<SeenSays>,
}

/// What a corner seen says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeenSays {
    /// Whether it stood.
    pub stood: bool,
    /// How far the line turned there, degrees; `None` where that is not known.
    pub turn_deg: Option<f64>,
    /// The pull there, newtons.
    pub pull_n: Option<f64>,
    /// The strength that just holds that pull, dry, kilopascals.
    pub strength_kpa: Option<f64>,
    /// Whether it is the one that the strength rests on.
    pub counts: bool,
}

/// A corner is the one that was seen within this distance, metres: a step.
const SEEN_WITHIN_M: f64 = 1.0;

/// A corner that leaned held less than its pull; by how much is not known, so a twentieth less is taken (common practice,
/// no source).
const LEANED_SHARE: f64 = 0.95;

/// Where what was measured comes from.
const PULLED: &str = "the keeper’s own pull; Broms, J. Soil Mech. Found. Div. ASCE 90 (1964), the other way round";
const SEEN: &str = "corners seen by the keeper; Broms, J. Soil Mech. Found. Div. ASCE 90 (1964), the other way round";
/// Where a class under the foot comes from.
const FOOT: &str =
    "common practice for the spike under the foot, no source; its strength by US Army TM 5-818-1, table 2-2";
const STATED: &str = "as stated";
const DEFAULT: &str = "upper end of medium clay, US Army TM 5-818-1, table 2-2; common practice to assume it";

impl SoilFound {
    /// The ground as it is, wet or dry, for `geometry`.
    pub fn soil(&self) -> geometry::Soil {
        let dry = match self.holding {
            Holding::Clay(kpa) => geometry::Soil::Clay { undrained_strength_pa: kpa * 1e3 },
            Holding::Sand(deg, weight) => {
                geometry::Soil::Sand { friction_angle_rad: deg.to_radians(), unit_weight_n_per_m3: weight * 1e3 }
            }
        };
        if self.wet { dry.weakened(self.wet_factor) } else { dry }
    }
}

/// What counts before corners are looked at.
struct Base {
    evidence: Evidence,
    holding: Holding,
    class: Option<(SoilTable, plan::soils::ClassRange)>,
    by_foot: Option<ByFoot>,
    source: &'static str,
}

/// Finds the soil of a plan, and what could not be used of what is said of it.
pub fn soil(plan: &Plan) -> (SoilFound, Vec<Trouble>) {
    let stated = &plan.ground.soil;
    let mut troubles = Vec::new();
    let base = base(plan, &mut troubles);
    let mut found = SoilFound {
        evidence: base.evidence,
        before: base.evidence,
        holding: base.holding,
        range: base.class.map(|(_, class)| (class.low, class.high)),
        table: base.class.map(|(table, _)| table),
        word: base.class.map(|(_, class)| class.name),
        by_foot: base.by_foot,
        today: plan.ground.today,
        wet: plan.ground.wet(),
        wet_factor: stated.wet_factor(),
        refuses: base.by_foot == Some(ByFoot::Refuses) || plan.ground.factors().hold.is_none(),
        source: base.source,
        seen: stated.corners_seen.iter().map(|seen| says(plan, seen)).collect(),
    };
    for (index, says) in found.seen.iter().enumerate() {
        if says.turn_deg.is_none() {
            troubles.push(Trouble::SeenNowhere { index });
        }
    }
    bound(plan, &mut found, &mut troubles);
    // Whatever the ground holds else: what does not go in holds nothing.
    if plan.ground.factors().hold.is_none() {
        found.holding = Holding::Clay(0.0);
    }
    (found, troubles)
}

fn base(plan: &Plan, troubles: &mut Vec<Trouble>) -> Base {
    let stated = &plan.ground.soil;
    let plain = |evidence, holding, source| Base { evidence, holding, class: None, by_foot: None, source };
    if let Some(test) = &stated.pull_test
        && let Some(pull_n) = test.pull_n()
    {
        let (length_m, diameter_m) = plan.pulled_spike_m(test);
        let each_n = pull_n / f64::from(plan.pulled_spikes(test).max(1));
        let share = if test.wet() { stated.wet_factor() } else { 1.0 };
        if let Some(pa) = broms_clay_strength_pa(each_n, length_m, diameter_m, test.height_m()) {
            return plain(Evidence::PullTest, Holding::Clay(pa / 1e3 / share), PULLED);
        }
    }
    let sand = |deg: f64| Holding::Sand(deg, stated.unit_weight_kn_per_m3());
    match (stated.undrained_strength_kpa, stated.friction_angle_deg) {
        (Some(kpa), _) => return plain(Evidence::Stated, Holding::Clay(kpa), STATED),
        (None, Some(deg)) => return plain(Evidence::Stated, sand(deg), STATED),
        (None, None) => {}
    }
    if let Some(class) = &stated.class {
        if let Some(range) = class.table.class(class.name) {
            let value = range.value(class.table.is_clay());
            let holding = if class.table.is_clay() { Holding::Clay(value) } else { sand(value) };
            let class = (class.table, range);
            let source = class.0.source();
            return Base { evidence: Evidence::Class, holding, class: Some(class), by_foot: None, source };
        }
        troubles.push(Trouble::NoSuchClass { table: class.table, name: class.name });
    }
    if let Some(foot) = stated.by_foot {
        let class = foot.class();
        return Base {
            evidence: Evidence::ByFoot,
            holding: Holding::Clay(class.map_or(0.0, |class| class.value(true))),
            class: class.map(|class| (SoilTable::American, class)),
            by_foot: Some(foot),
            source: FOOT,
        };
    }
    plain(Evidence::Default, Holding::Clay(defaults::UNDRAINED_STRENGTH_KPA), DEFAULT)
}

/// The net that a corner seen is taken to be of: the run's first, else the store's.
fn net_of<'a>(plan: &'a Plan, seen: &plan::CornerSeen) -> Option<&'a NetKind> {
    let run = seen.run.as_deref().and_then(|id| plan.run(id));
    let named = run.and_then(|run| run.nets.as_ref()?.first()).and_then(|id| plan.net_kind(id));
    named.or(plan.store.nets.first())
}

fn says(plan: &Plan, seen: &plan::CornerSeen) -> SeenSays {
    let turn_deg = seen.turn_deg.or_else(|| turn_deg(plan, seen));
    let net = net_of(plan, seen);
    let tension_n = net.map_or(defaults::TENSION_N, NetKind::tension_n);
    let height_m = net.map_or(defaults::NET_HEIGHT_M, NetKind::height_m);
    let spike = Spike {
        length_m: net.map_or(defaults::SPIKE_LENGTH_M, NetKind::spike_length_m),
        diameter_m: net.map_or(defaults::SPIKE_DIAMETER_M, NetKind::spike_diameter_m),
    };
    let spikes = f64::from(net.map_or(defaults::SPIKES_PER_POST, NetKind::spikes_per_post).max(1));
    let share = if seen.wet() { plan.ground.soil.wet_factor() } else { 1.0 };
    let pull_n = turn_deg.map(|deg| corner_pull_n(tension_n, deg.to_radians()));
    let strength_kpa = pull_n
        .and_then(|pull_n| broms_clay_strength_pa(pull_n / spikes, spike.length_m, spike.diameter_m, height_m / 2.0))
        .map(|pa| pa / 1e3 / share);
    SeenSays { stood: seen.stood, turn_deg, pull_n, strength_kpa, counts: false }
}

/// How far a run turns where a corner was seen.
fn turn_deg(plan: &Plan, seen: &plan::CornerSeen) -> Option<f64> {
    let of_run = |run: &&plan::Run| seen.run.as_ref().is_none_or(|id| *id == run.id);
    let at = point(seen.at);
    let mut nearest: Option<(f64, f64)> = None;
    for run in plan.runs.iter().filter(of_run) {
        let points: Vec<_> = run.outline.iter().copied().map(point).collect();
        let outline = if run.closed() { Outline::closed(&points) } else { Outline::open(&points) };
        for (_, vertex) in outline.corners() {
            let off_m = vertex.at.distance_m(at);
            if off_m <= SEEN_WITHIN_M && nearest.is_none_or(|(least_m, _)| off_m < least_m) {
                nearest = Some((off_m, vertex.turn_rad().to_degrees()));
            }
        }
    }
    nearest.map(|(_, deg)| deg)
}

/// Lets the corners seen bound the strength; where they contradict each other, the one that leaned counts.
fn bound(plan: &Plan, found: &mut SoilFound, troubles: &mut Vec<Trouble>) {
    let of = |stood: bool| {
        let says = found.seen.iter().enumerate().filter(move |(_, one)| one.stood == stood);
        says.filter_map(|(index, one)| one.strength_kpa.map(|kpa| (index, kpa)))
    };
    let stood = of(true).max_by(|a, b| a.1.total_cmp(&b.1));
    let leaned = of(false).min_by(|a, b| a.1.total_cmp(&b.1)).map(|(index, kpa)| (index, kpa * LEANED_SHARE));
    if let (Some((one, low)), Some((other, high))) = (stood, leaned)
        && low > high
    {
        troubles.push(Trouble::SeenContradict { stood: one, leaned: other });
    }
    // What it holds as a clay at the spike that was seen; a sand is compared by that.
    let as_clay_kpa = |index: usize| match found.holding {
        Holding::Clay(kpa) => Some(kpa),
        Holding::Sand(deg, weight) => {
            let net = net_of(plan, &plan.ground.soil.corners_seen[index]);
            let spike = Spike {
                length_m: net.map_or(defaults::SPIKE_LENGTH_M, NetKind::spike_length_m),
                diameter_m: net.map_or(defaults::SPIKE_DIAMETER_M, NetKind::spike_diameter_m),
            };
            let height_m = net.map_or(defaults::NET_HEIGHT_M, NetKind::height_m) / 2.0;
            let sand =
                geometry::Soil::Sand { friction_angle_rad: deg.to_radians(), unit_weight_n_per_m3: weight * 1e3 };
            let held_n = sand.hold_n(spike, height_m, false);
            broms_clay_strength_pa(held_n, spike.length_m, spike.diameter_m, height_m).map(|pa| pa / 1e3)
        }
    };
    let raised = stood.filter(|&(index, low)| as_clay_kpa(index).is_some_and(|kpa| kpa < low));
    let lowered = leaned.filter(|&(index, high)| as_clay_kpa(index).is_some_and(|kpa| kpa > high));
    let beyond = |(index, low): (usize, f64)| match leaned {
        Some((other, high)) if low > high => (other, high),
        _ => (index, low),
    };
    if let Some((index, kpa)) = lowered.or(raised.map(beyond)) {
        found.evidence = Evidence::CornersSeen;
        // The class is outweighed, and with it what it stands for.
        (found.range, found.table, found.word, found.by_foot) = (None, None, None, None);
        found.holding = Holding::Clay(kpa);
        found.source = SEEN;
        found.refuses = plan.ground.factors().hold.is_none();
        found.seen[index].counts = true;
    }
}
