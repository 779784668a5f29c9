//! How many earth stakes are worth driving, wet and dry, and what the shorted-fence test would read.
//!
//! What reaches the animal decides, not a number of stakes: one more is worth driving where it gives the animal at the
//! weakest post [`WORTH`] more. The test is that of the handbooks (docs/sources.md, electrical 6.4): the live lines are
//! shorted to soil far from the energizer until the fence there reads less than a kilovolt, and the earth pole is read
//! against a probe. It wants [`FAR_M`] between short and stakes, for the ground round both must not touch.

use electrical::{Animal, Circuit, Place, PulseSolver, Short};
use plan::{Plan, Today};

use super::feel::Who;
use super::fence::Fence;

/// One more stake is worth driving where it gives the animal so much more, as a share: common practice, no source.
pub const WORTH: f64 = 0.05;
/// The most stakes that are looked at.
pub const MOST_STAKES: u32 = 9;
/// How far from the stakes the short of the test has to be, metres (BC Ministry of Agriculture, factsheet 382.600-1).
pub const FAR_M: f64 = 100.0;
/// To how much the test shorts the fence, kilovolts (the same).
pub const SHORTED_KV: f64 = 1.0;
/// What the farm-fence rule allows on the earth meanwhile, kilovolts (the rule most often printed; 0.2 to 0.8 stand too).
pub const RULE_KV: f64 = 0.3;

/// What so many stakes give.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stakes {
    /// How many: of those whose places are stated the first, and any more in line beyond the last.
    pub count: u32,
    /// Their resistance, ohms.
    pub ohm: f64,
    /// Kilovolts across a fox at the weakest post.
    pub animal_kv: f64,
}

/// Stakes in one state of the ground.
#[derive(Clone, Debug, PartialEq)]
pub struct StakesIn {
    /// Which ground.
    pub today: Today,
    /// From one stake on.
    pub by_count: Vec<Stakes>,
    /// The count after which one more is not worth driving; the most that was looked at where all are.
    pub needed: u32,
}

/// What the shorted-fence test would read on this fence.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EarthTest {
    /// The post farthest from the earth stakes, or from the feed where their place is not stated, in the order of the lay's posts.
    pub post: usize,
    /// How far it is, straight, metres.
    pub far_m: f64,
    /// Kilovolts at the feed and at that post, as the fence stands.
    pub sound_kv: [f64; 2],
    /// The short that brings the post to [`SHORTED_KV`], ohms, and what the earth pole reads then, kilovolts; `None`
    /// where the fence is too small for the test or reads less than that already.
    pub shorted: Option<(f64, f64)>,
}

impl EarthTest {
    /// Whether the fence reaches far enough for the test to read what it should.
    pub fn reaches(&self) -> bool {
        self.far_m >= FAR_M
    }
}

/// Stakes in wet, damp and dry ground; empty where the earth is measured or nothing can be worked out.
pub fn stakes(plan: &Plan, run: &str) -> Vec<StakesIn> {
    let Some(stated) = plan.runs.iter().find(|other| other.id == run) else { return Vec::new() };
    if stated.earth_ohm.is_some() {
        return Vec::new();
    }
    [Today::Wet, Today::Damp, Today::Dry].into_iter().filter_map(|today| stakes_in(plan, run, today)).collect()
}

fn stakes_in(plan: &Plan, run: &str, today: Today) -> Option<StakesIn> {
    let mut there = plan.clone();
    there.ground.today = Some(today);
    let fence = Fence::of(&there, run)?;
    let soil_ohm_m = there.ground.resistivity_today_ohm_m();
    let body = Who::Fox.body();
    let animal = Animal { body_ohm: body.body_ohm, feet_ohm: electrical::foot_ohm(soil_ohm_m, body.foot_m, body.feet) };
    let stated = there.runs.iter().find(|other| other.id == run)?;
    let weakest = fence.weakest_post()?;
    let mut by_count = Vec::new();
    for count in 1..=MOST_STAKES {
        let ohm = crate::earth::ohm(&there, stated, count as usize)?;
        let with = fence.over(ohm, &there, run);
        let animal_kv = with.touched(&animal, |touch| touch.peak_v / 1e3)?[weakest];
        by_count.push(Stakes { count, ohm, animal_kv });
    }
    // Behind a break nothing is felt, whatever the earth is.
    if by_count.iter().any(|one| one.animal_kv <= 0.0) {
        return None;
    }
    let enough = by_count.windows(2).find(|pair| pair[1].animal_kv < pair[0].animal_kv * (1.0 + WORTH));
    let needed = enough.map_or(MOST_STAKES, |pair| pair[0].count);
    Some(StakesIn { today, by_count, needed })
}

/// The shorted-fence test; `None` where the run's volts cannot be worked out.
pub fn earth_test(plan: &Plan, run: &str) -> Option<EarthTest> {
    let fence = Fence::of(plan, run)?;
    let stated = plan.runs.iter().find(|other| other.id == run)?;
    let mut stand = crate::earth::known(stated);
    if stand.is_empty() {
        stand.push(stated.feed_at.or(stated.outline.first().copied())?);
    }
    // The ground round the short must touch that round no stake.
    let off_m = |at: plan::Point, stake: &plan::Point| (at.east_m - stake.east_m).hypot(at.north_m - stake.north_m);
    let far = |at: plan::Point| stand.iter().map(|stake| off_m(at, stake)).fold(f64::INFINITY, f64::min);
    let (post, far_m) =
        fence.stands.iter().map(|&at| far(at)).enumerate().max_by(|one, other| one.1.total_cmp(&other.1))?;
    let sound = fence.peaks_v(&fence.circuit)?;
    let no_load_v = fence.circuit.source.v0;
    let kv = |volts: f64| volts.min(no_load_v) / 1e3;
    let sound_kv = [kv(sound.0), kv(sound.1[post])];
    let mut test = EarthTest { post, far_m, sound_kv, shorted: None };
    if test.reaches() && sound_kv[1] > SHORTED_KV {
        test.shorted = shorted(&fence, post);
    }
    Some(test)
}

/// The short at a post that brings it to [`SHORTED_KV`], and the rise of the earth pole then.
fn shorted(fence: &Fence, post: usize) -> Option<(f64, f64)> {
    let at = fence.circuit.lines[fence.line].chain.marks[post];
    let with = |ohm: f64| {
        let mut circuit = fence.circuit.clone();
        circuit.lines[fence.line].chain.shorts.push(Short { at: Place { ..at }, ohm });
        circuit
    };
    let reads_kv = |ohm: f64| fence.peaks_v(&with(ohm)).map(|(_, posts)| posts[post] / 1e3);
    // More ohms read more volts: halve the span of their logarithm.
    let (mut low, mut high) = (1e-2_f64, 1e6_f64);
    while high / low > 1.001 {
        let middle = (low * high).sqrt();
        if reads_kv(middle)? < SHORTED_KV { low = middle } else { high = middle }
    }
    let rise = electrical::earth_rise(&with(low)).ok()?;
    Some((low, rise.peak_v / 1e3))
}

impl Fence {
    /// Peaks at the feed and at every post, volts.
    pub(crate) fn peaks_v(&self, circuit: &Circuit) -> Option<(f64, Vec<f64>)> {
        let accuracy = electrical::Accuracy { energy: false, ..electrical::Accuracy::default() };
        let mut pulse = electrical::Pulse::default();
        PulseSolver::new().pulse_into(circuit, &accuracy, &mut pulse).ok()?;
        let line = &pulse.lines[self.line];
        Some((line.feed.volts, line.chain.marks[..self.posts].iter().map(|peak| peak.volts).collect()))
    }

    fn weakest_post(&self) -> Option<usize> {
        let (_, posts) = self.peaks_v(&self.circuit)?;
        (0..posts.len()).min_by(|&one, &other| posts[one].total_cmp(&posts[other]))
    }

    /// The same fence over another earth; other runs on its terminals keep theirs.
    fn over(&self, ohm: f64, plan: &Plan, run: &str) -> Self {
        let own = plan.runs.iter().find(|other| other.id == run).and_then(|run| crate::volts::earth_ohm(plan, run));
        let others_s = own.map_or(0.0, |own| (1.0 / self.circuit.earth_ohm - 1.0 / own).max(0.0));
        let alone = self.circuit.lines.len() == 1;
        let earth_ohm = if alone { ohm } else { 1.0 / (1.0 / ohm + others_s) };
        Self {
            circuit: Circuit { earth_ohm, ..self.circuit.clone() },
            stands: self.stands.clone(),
            kinds: self.kinds.clone(),
            branches: self.branches.clone(),
            ..*self
        }
    }
}
