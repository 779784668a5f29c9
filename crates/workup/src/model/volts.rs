//! The pulse on the fence.

use plan::Point;

/// The pulse on the fence.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Volts {
    /// Peak at the feed point, kilovolts.
    pub feed_kv: f64,
    /// Peak of the energizer's earth pole against remote earth, kilovolts.
    pub earth_kv: f64,
    /// The first rush there, kilovolts.
    pub earth_rush_kv: f64,
    /// Resistance of the earth stakes, ohms.
    pub earth_ohm: f64,
    /// Energy that leaves the energizer's capacitor, joules.
    pub energy_j: f64,
    /// How the data sheet was fitted.
    pub source: SourceFit,
    /// A sample for every post on the line in their order, then the feed, then the faults.
    pub samples: Vec<Sample>,
    /// For each of [`crate::Lay::branches`] a sample for every one of its posts, then for its faults.
    pub branches: Vec<Vec<Sample>>,
    /// The weakest post; `None` where there is none.
    pub weakest: Option<Weakest>,
    /// The fence without the run's faults, in the same grass; `None` where it has none.
    pub sound: Option<Sound>,
}

impl Volts {
    /// The weakest post on the line itself, whatever hangs on it.
    pub fn weakest_on_line(&self) -> Option<usize> {
        let posts = self.samples.iter().filter_map(|sample| match sample.of {
            SampleOf::Post(post) => Some((post, sample.peak_kv)),
            _ => None,
        });
        let least = posts.min_by(|one, other| one.1.total_cmp(&other.1))?;
        let stated = self.weakest.filter(|weakest| weakest.branch.is_none()).map(|weakest| weakest.post);
        Some(stated.unwrap_or(least.0))
    }

    /// What the post that is the weakest now would hold without the run's faults, kilovolts.
    pub fn weakest_sound_kv(&self) -> Option<f64> {
        let weakest = self.weakest?;
        self.sound.as_ref()?.post_kv(weakest.post, weakest.branch)
    }

    /// The weakest post of the sound fence, where that is another than the weakest now.
    pub fn weakest_elsewhere(&self) -> Option<SoundWeakest> {
        let (now, sound) = (self.weakest?, self.sound.as_ref()?.weakest);
        Some(sound).filter(|sound| (sound.post, sound.branch) != (now.post, now.branch))
    }

    /// The sample of the weakest post.
    pub fn weakest_sample(&self) -> Option<&Sample> {
        let weakest = self.weakest?;
        match weakest.branch {
            None => &self.samples,
            Some(branch) => self.branches.get(branch)?,
        }
        .get(weakest.post)
    }
}

/// The pulse on a run's fence as it would be without its faults. Stretches of other grass are how the fence stands, and
/// stay.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sound {
    /// Peak at every post on the line, kilovolts.
    pub posts_kv: Vec<f64>,
    /// The same for each of [`crate::Lay::branches`].
    pub branches_kv: Vec<Vec<f64>>,
    /// The post that is the weakest then.
    pub weakest: SoundWeakest,
}

impl Sound {
    /// Peak at a post of the line or of a branch, kilovolts.
    pub fn post_kv(&self, post: usize, branch: Option<usize>) -> Option<f64> {
        let posts = branch.map_or(Some(&self.posts_kv), |branch| self.branches_kv.get(branch));
        posts?.get(post).copied()
    }
}

/// The weakest post of a sound fence.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct SoundWeakest {
    /// Its place in [`crate::Lay::posts`], or in its branch's.
    pub post: usize,
    /// The place of its branch in [`crate::Lay::branches`]; `None` on the line.
    pub branch: Option<usize>,
    /// Along the outline, metres; on a branch, where that hangs.
    pub along_m: f64,
    /// Its peak, kilovolts.
    pub peak_kv: f64,
}

/// An energizer's equivalent circuit.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct SourceFit {
    /// Volts on its capacitor, kilovolts.
    pub v0_kv: f64,
    /// Its resistance, ohms.
    pub r_ohm: f64,
    /// Its capacitance, nanofarads.
    pub c_nf: f64,
    /// Its inductance, millihenries; 0 where the data sheet needs none.
    pub l_mh: f64,
}

/// What a sample stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SampleOf {
    /// A post: its place in [`crate::Lay::posts`].
    Post(usize),
    /// The feed point.
    Feed,
    /// A fault: its place in its line's list.
    Fault(usize),
}

/// Volts at a place of the line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sample {
    /// What stands there.
    pub of: SampleOf,
    /// Where.
    pub at: Point,
    /// Along the outline, metres.
    pub along_m: f64,
    /// Along the chain, metres.
    pub chain_m: f64,
    /// Peak from the live lines to remote earth, kilovolts.
    pub peak_kv: f64,
    /// The same with long wet grass all along.
    pub low_kv: f64,
    /// The same with a clean, dry net.
    pub high_kv: f64,
    /// Peak across an animal's body, kilovolts; `None` where it was not asked for.
    pub animal_kv: Option<f64>,
    /// Energy in that body, joules.
    pub animal_j: Option<f64>,
}

/// The weakest post, and the range in which it lies until a reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weakest {
    /// Its place in [`crate::Lay::posts`], or in its branch's.
    pub post: usize,
    /// The place of its branch in [`crate::Lay::branches`]; `None` on the line.
    pub branch: Option<usize>,
    /// Where it stands.
    pub at: Point,
    /// Along the outline, metres; on a branch, where that hangs.
    pub along_m: f64,
    /// Its peak at the stated or assumed leakage, kilovolts.
    pub peak_kv: f64,
    /// The weakest post's peak in long wet grass, kilovolts.
    pub low_kv: f64,
    /// The weakest post's peak on a clean dry net, kilovolts.
    pub high_kv: f64,
    /// Whether a reading of this run's volts exists.
    pub measured: bool,
}
