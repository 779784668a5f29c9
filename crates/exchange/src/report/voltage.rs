//! The pulse: volts at every place, and the weakest post.

use schemars::JsonSchema;
use serde::Serialize;
use workup::SampleOf;

/// The pulse.
#[derive(Serialize, JsonSchema)]
pub(super) struct Voltage {
    /// Peak at the feed point, kilovolts.
    feed_kv: f64,
    /// Peak of the energizer's earth pole against remote earth, kilovolts.
    earth_kv: f64,
    /// The first rush there, kilovolts.
    earth_rush_kv: f64,
    /// Resistance of the earth stakes, ohms.
    earth_ohm: f64,
    /// Posts on the line in their order, then the feed, then the faults, then of each branch its posts and its faults.
    samples: Vec<Sample>,
    /// The weakest post.
    weakest: Option<Weakest>,
    /// What the weakest post of the fence without the run's faults would hold, kilovolts: `sound.weakest.peak_kv`; absent
    /// where it has none.
    #[serde(skip_serializing_if = "Option::is_none")]
    sound_kv: Option<f64>,
    /// The fence without the run's faults, in the same grass; absent where it has none.
    #[serde(skip_serializing_if = "Option::is_none")]
    sound: Option<Sound>,
    /// How many stated faults these figures count; absent where there are none.
    #[serde(skip_serializing_if = "Option::is_none")]
    faults_counted: Option<usize>,
}

/// Volts at a place.
#[derive(Serialize, JsonSchema)]
pub(super) struct Sample {
    /// Along the outline, metres.
    along_m: f64,
    /// Peak from the live lines to remote earth, kilovolts.
    peak_kv: f64,
    /// Peak across an animal's body, kilovolts.
    animal_kv: Option<f64>,
    /// Energy in that body, joules.
    animal_j: Option<f64>,
    /// The post's net, from 0; absent at the feed and at faults.
    #[serde(skip_serializing_if = "Option::is_none")]
    net: Option<usize>,
    /// The post's number on its net, from 0.
    #[serde(skip_serializing_if = "Option::is_none")]
    post: Option<usize>,
    /// The branch that it is on, from 0; absent on the line. `along_m` is then along the branch's outline.
    #[serde(skip_serializing_if = "Option::is_none")]
    branch: Option<usize>,
    /// `feed` or `fault`; absent at a post.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schemars(extend("enum" = ["feed", "fault", null]))]
    of: Option<&'static str>,
}

/// The weakest post.
#[derive(Serialize, JsonSchema)]
pub(super) struct Weakest {
    /// Along the outline, metres.
    along_m: f64,
    /// Its peak, kilovolts.
    peak_kv: f64,
    /// In long wet grass, kilovolts.
    low_kv: f64,
    /// On a clean dry net, kilovolts.
    high_kv: f64,
    /// Whether a reading of this run's volts exists.
    measured: bool,
    /// Its net, from 0; `null` where the report lists no such post.
    net: Option<usize>,
    /// Its number on that net, from 0; `null` likewise.
    post: Option<usize>,
    /// The branch that it stands on, from 0; absent on the line.
    #[serde(skip_serializing_if = "Option::is_none")]
    branch: Option<usize>,
}

/// The fence without the run's faults.
#[derive(Serialize, JsonSchema)]
pub(super) struct Sound {
    /// What `weakest`, the weakest post now, would hold, kilovolts.
    weakest_post_kv: Option<f64>,
    /// The post that would be the weakest then: the same one or another.
    weakest: SoundWeakest,
}

/// The weakest post of the fence without the run's faults.
#[derive(Serialize, JsonSchema)]
pub(super) struct SoundWeakest {
    /// Along the outline, metres.
    along_m: f64,
    /// Its peak, kilovolts.
    peak_kv: f64,
    /// Its net, from 0; `null` where the report lists no such post.
    net: Option<usize>,
    /// Its number on that net, from 0; `null` likewise.
    post: Option<usize>,
    /// The branch that it stands on, from 0; absent on the line.
    #[serde(skip_serializing_if = "Option::is_none")]
    branch: Option<usize>,
}

pub(super) fn voltage(volts: &workup::Volts, run: &plan::Run, lay: &workup::Lay) -> Voltage {
    let number = |branch: usize| lay.branches.get(branch).map(|branch| branch.branch);
    let sample = |branch: Option<usize>, sample: &workup::Sample| {
        let posts = match branch {
            None => Some(&lay.posts),
            Some(branch) => lay.branches.get(branch).map(|branch| &branch.posts),
        };
        let (post, of) = match sample.of {
            SampleOf::Post(index) => (posts.and_then(|posts| posts.get(index)), None),
            SampleOf::Feed => (None, Some("feed")),
            SampleOf::Fault(_) => (None, Some("fault")),
        };
        Sample {
            along_m: sample.along_m,
            peak_kv: sample.peak_kv,
            animal_kv: sample.animal_kv,
            animal_j: sample.animal_j,
            net: post.map(|post| post.net),
            post: post.map(|post| post.post),
            branch: branch.and_then(number),
            of,
        }
    };
    Voltage {
        feed_kv: volts.feed_kv,
        earth_kv: volts.earth_kv,
        earth_rush_kv: volts.earth_rush_kv,
        earth_ohm: volts.earth_ohm,
        samples: {
            let on_branches = volts.branches.iter().enumerate();
            let on_branches =
                on_branches.flat_map(|(branch, samples)| samples.iter().map(move |one| (Some(branch), one)));
            let all = volts.samples.iter().map(|one| (None, one)).chain(on_branches);
            all.map(|(branch, one)| sample(branch, one)).collect()
        },
        weakest: volts.weakest.map(|weakest| {
            let post = lay.post(weakest.post, weakest.branch);
            Weakest {
                along_m: weakest.along_m,
                peak_kv: weakest.peak_kv,
                low_kv: weakest.low_kv,
                high_kv: weakest.high_kv,
                measured: weakest.measured,
                net: post.map(|post| post.net),
                post: post.map(|post| post.post),
                branch: weakest.branch.and_then(number),
            }
        }),
        sound_kv: volts.sound.as_ref().map(|sound| sound.weakest.peak_kv),
        sound: volts.sound.as_ref().map(|sound| {
            let weakest = sound.weakest;
            let post = lay.post(weakest.post, weakest.branch);
            Sound {
                weakest_post_kv: volts.weakest_sound_kv(),
                weakest: SoundWeakest {
                    along_m: weakest.along_m,
                    peak_kv: weakest.peak_kv,
                    net: post.map(|post| post.net),
                    post: post.map(|post| post.post),
                    branch: weakest.branch.and_then(number),
                },
            }
        }),
        faults_counted: Some(run.faults_count()).filter(|&count| count > 0),
    }
}
