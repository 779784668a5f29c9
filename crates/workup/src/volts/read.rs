//! What was read on the posts, faults and feed of one run, as samples in kilovolts.

use electrical::{LineReadings, Peak, Touch};

use crate::chain::Netting;
use crate::lay::Line;
use crate::model::{Sample, SampleOf};
use crate::place;

/// Peaks nearer than this, as a share, are equal; the first post in the chain is then the weakest.
const EQUAL_SHARE: f64 = 1e-9;

/// What was read on one run.
pub(super) struct Read<'a> {
    pub(super) line: &'a Line,
    pub(super) netting: &'a Netting,
    pub(super) posts: usize,
    pub(super) peaks: &'a LineReadings<Peak>,
    /// Peaks with long wet grass all along, and with a clean, dry net.
    pub(super) range: [&'a LineReadings<Peak>; 2],
    pub(super) touches: Option<&'a LineReadings<Touch>>,
    pub(super) no_load_v: f64,
}

/// The weakest post.
pub(super) struct Found {
    pub(super) post: usize,
    pub(super) branch: Option<usize>,
    pub(super) at: plan::Point,
    pub(super) along_m: f64,
    pub(super) volts: f64,
}

impl Read<'_> {
    /// Peaks of all posts on the line, then of those on each branch, with the branch.
    pub(super) fn posts<'b, T: Copy>(
        &self,
        of: &'b LineReadings<T>,
    ) -> impl Iterator<Item = (Option<usize>, usize, T)> + use<'b, '_, T> {
        let on_line = of.chain.marks[..self.posts].iter().enumerate().map(|(post, figure)| (None, post, *figure));
        let on_branches = self.line.branches.iter().enumerate().flat_map(move |(branch, line)| {
            let marks = &of.branches[self.netting.first_branch + branch].marks[..line.placement.posts.len()];
            marks.iter().enumerate().map(move |(post, figure)| (Some(branch), post, *figure))
        });
        on_line.chain(on_branches)
    }

    pub(super) fn least_v(&self, peaks: &LineReadings<Peak>) -> f64 {
        self.posts(peaks).map(|(_, _, peak)| peak.volts).fold(f64::INFINITY, f64::min)
    }

    /// The weakest post over line and branches; of equals the first.
    pub(super) fn weakest(&self, peaks: &LineReadings<Peak>) -> Option<Found> {
        let most_v = self.least_v(peaks) + EQUAL_SHARE * self.no_load_v;
        let (branch, post, peak) = self.posts(peaks).find(|(_, _, peak)| peak.volts <= most_v)?;
        let (at, along_m) = match branch {
            None => {
                let stands = self.line.placement.as_ref()?.posts.get(post)?;
                (stands.at, stands.along_m)
            }
            Some(branch) => {
                let line = &self.line.branches[branch];
                (line.placement.posts.get(post)?.at, line.from_m)
            }
        };
        Some(Found { post, branch, at: place(at), along_m, volts: peak.volts })
    }

    /// A sample for every post of each branch, then for every fault on it.
    pub(super) fn branches(&self) -> Vec<Vec<Sample>> {
        let mut touches = self.touches.map(|touches| self.posts(touches));
        let mut samples: Vec<Vec<Sample>> = self.line.branches.iter().map(|_| Vec::new()).collect();
        let [low, high] = self.range.map(|range| self.posts(range));
        for (((branch, post, peak), low), high) in self.posts(self.peaks).zip(low).zip(high) {
            let touch = touches.as_mut().and_then(Iterator::next).map(|(_, _, touch)| touch);
            if let Some(branch) = branch {
                let stands = &self.line.branches[branch].placement.posts[post];
                let sample =
                    self.sample(SampleOf::Post(post), (stands.along_m, stands.chain_m), [peak, low.2, high.2], touch);
                samples[branch].push(Sample { at: place(stands.at), ..sample });
            }
        }
        for (branch, line) in self.line.branches.iter().enumerate() {
            let placement = &line.placement;
            let first = placement.posts.len() + placement.spare_posts.len();
            for (fault, &at) in self.netting.on_branches[branch].iter().enumerate() {
                let of = self.netting.first_branch + branch;
                let peak = |peaks: &LineReadings<Peak>| peaks.branches[of].marks[first + fault];
                let peaks = [self.peaks, self.range[0], self.range[1]].map(peak);
                let touch = self.touches.map(|touches| touches.branches[of].marks[first + fault]);
                let sample = self.sample(SampleOf::Fault(fault), at, peaks, touch);
                samples[branch].push(Sample { at: place(line.outline.at(at.0)), ..sample });
            }
        }
        samples
    }

    fn sample(
        &self,
        of: SampleOf,
        (along_m, chain_m): (f64, f64),
        [peak, low, high]: [Peak; 3],
        touch: Option<Touch>,
    ) -> Sample {
        let kv = |peak: Peak| peak.volts.min(self.no_load_v) / 1e3;
        Sample {
            of,
            at: place(self.line.outline.at(along_m)),
            along_m,
            chain_m,
            peak_kv: kv(peak),
            low_kv: kv(low),
            high_kv: kv(high),
            animal_kv: touch.map(|touch| touch.peak_v / 1e3),
            animal_j: touch.map(|touch| touch.energy_j),
        }
    }

    pub(super) fn samples(&self) -> Vec<Sample> {
        let placement = self.line.placement.as_ref();
        let posts = placement.map_or(&[][..], |placement| &placement.posts);
        let all = [self.peaks, self.range[0], self.range[1]];
        let marks = |mark: usize| all.map(|peaks| peaks.chain.marks[mark]);
        let touch = |mark: usize| self.touches.map(|touches| touches.chain.marks[mark]);
        let mut samples: Vec<Sample> = posts
            .iter()
            .enumerate()
            .map(|(index, post)| {
                let sample =
                    self.sample(SampleOf::Post(index), (post.along_m, post.chain_m), marks(index), touch(index));
                Sample { at: place(post.at), ..sample }
            })
            .collect();
        let feed_touch = self.touches.map(|touches| touches.feed);
        samples.push(self.sample(SampleOf::Feed, self.netting.feed, all.map(|peaks| peaks.feed), feed_touch));
        for (fault, &at) in self.netting.faults.iter().enumerate() {
            let mark = self.posts + fault;
            samples.push(self.sample(SampleOf::Fault(fault), at, marks(mark), touch(mark)));
        }
        samples
    }
}
