//! Power on demand: what the pulse page asks for beyond each run's volts.
//!
//! - [`pulse`]: the pulse over time at every post, and what it carries;
//! - [`feel`]: what a fox, a dog, a hen and a sheep would feel, on soil from damp to very dry;
//! - [`earth`]: how many stakes are worth driving, and what the shorted-fence test reads;
//! - [`turns`]: what nets wired by turns gain in dry soil, and what that costs;
//! - [`mod@choice`]: which energizer keeps the target on how many nets, over this earth, clean to overgrown.
//!
//! All of it is worked out when asked for and not with every edit: it takes many pulses.

pub mod choice;
pub mod earth;
pub mod feel;
mod fence;
pub mod pulse;
pub mod turns;

use plan::Plan;

pub use electrical::SourceModel;

pub use choice::{ByGrass, Choice, MOST_NETS, MOST_STORED_J, UnitChoice, choice};
pub use earth::{EarthTest, Stakes, StakesIn, earth_test, stakes};
pub use feel::{Body, Feels, Felt, SOILS_OHM_M, Who, feels};
pub use pulse::{PulseShape, pulse_shape, width_s};
pub use turns::{ByTurns, by_turns};

/// All of it for one run.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Study {
    /// Which energizer holds.
    pub choice: Option<Choice>,
    /// The pulse over time.
    pub pulse: Option<PulseShape>,
    /// The same without the run's faults, where it has any.
    pub sound: Option<PulseShape>,
    /// What animals feel, by soil.
    pub feels: Vec<Feels>,
    /// Stakes in wet, damp and dry ground.
    pub stakes: Vec<StakesIn>,
    /// The shorted-fence test.
    pub test: Option<EarthTest>,
    /// Nets wired by turns beside the same with every line live.
    pub turns: Option<ByTurns>,
    /// The weakest post of a ring with its gate clipped round, and only tied, kilovolts.
    pub gate_kv: Option<[f64; 2]>,
}

/// Works all of it out for a run.
pub fn study(plan: &Plan, run: &str) -> Study {
    let sound = sound(plan, run);
    Study {
        sound: sound.as_ref().and_then(|plan| pulse_shape(plan, run)),
        choice: choice(plan, run),
        pulse: pulse_shape(plan, run),
        feels: feels(plan, run),
        stakes: stakes(plan, run),
        test: earth_test(plan, run),
        turns: by_turns(plan, run),
        gate_kv: gate_kv(plan, run),
    }
}

/// The weakest post with the live lines clipped together round the ring, and with the gate only tied, kilovolts; `None`
/// for a line that closes no ring.
pub fn gate_kv(plan: &Plan, run: &str) -> Option<[f64; 2]> {
    let index = plan.runs.iter().position(|other| other.id == run)?;
    let weakest_kv = |clipped: bool| {
        let mut plan = plan.clone();
        plan.runs[index].live_loop = Some(clipped);
        let fence = fence::Fence::of(&plan, run).filter(|fence| fence.is_ring)?;
        fence.peaks_kv().into_iter().min_by(f64::total_cmp)
    };
    Some([weakest_kv(true)?, weakest_kv(false)?])
}

/// The plan without a run's faults; `None` where it has none. Stretches of other grass are no fault: they are how the
/// fence stands, and a sound fence stands in the same grass.
fn sound(plan: &Plan, run: &str) -> Option<Plan> {
    let index = plan.runs.iter().position(|other| other.id == run)?;
    if !plan.runs[index].has_faults() {
        return None;
    }
    let mut sound = plan.clone();
    sound.runs[index] = plan.runs[index].sound();
    Some(sound)
}

/// A run's circuit, for what writes it in another form.
#[derive(Clone, Debug, PartialEq)]
pub struct Wiring {
    /// The run's id.
    pub run: String,
    /// The circuit, with every run on its terminals.
    pub circuit: electrical::Circuit,
    /// The run's place in it.
    pub line: usize,
    /// Posts on the run's line: the first of its marks.
    pub posts: usize,
    /// Branches that are stated: their place among the line's, and how many posts they have.
    pub branches: Vec<(usize, usize)>,
}

/// The circuit of a run; `None` where its volts cannot be worked out.
pub fn wiring(plan: &Plan, run: &str) -> Option<Wiring> {
    let fence = fence::Fence::of(plan, run)?;
    Some(Wiring {
        run: run.to_owned(),
        circuit: fence.circuit,
        line: fence.line,
        posts: fence.posts,
        branches: fence.branches,
    })
}

/// The plan on a soil of so many ohm metres, whatever the word for today is.
fn on_soil(plan: &Plan, soil_ohm_m: f64) -> Plan {
    let mut there = plan.clone();
    let factor = there.ground.factors().resistivity;
    there.ground.soil.resistivity_ohm_m = Some(soil_ohm_m / factor);
    there
}
