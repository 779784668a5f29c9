//! The greatest voltage at every place, from samples at the steps.
//!
//! A peak is the top of a parabola through three samples ([`vertex`]); the first instant counts as well (a node without
//! capacitance jumps there), and so does the end (where nothing leaks, the greatest value is an asymptote).

use super::Peak;

/// Voltages below so much of `V0` do not count: 0.1 % of 0.5 % of the no-load figure.
pub(crate) const NEGLIGIBLE: f64 = 5e-6;
/// Samples lower than so much of the peak so far have no top above it between them: steps are an eighth of the time, or
/// an eightieth of a period.
const STILL_NEAR: f64 = 0.98;
/// How much of a peak at the first instant may be gone by the first sample.
pub(crate) const FIRST_DROP: f64 = 2e-4;

/// What is known of the peak at one place, none where the pulse never comes.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Track {
    /// Where it stands among the voltages that are noted.
    place: Option<usize>,
    at_once_v: f64,
    first_v: f64,
    last_v: f64,
    pub(crate) best: Peak,
}

/// The peaks of all places. Voltages are noted as they come, and looked at a block at a time: most places have no
/// peak in a block, and the highest of its samples tells.
#[derive(Debug, Clone, Default)]
pub(crate) struct Peaks {
    pub(super) tracks: Vec<Track>,
    /// Voltages of the last two samples already looked at and of all since, row after row, with their times.
    noted_v: Vec<f64>,
    times_s: Vec<f64>,
    /// The highest of all but the first of them, at every place.
    highest_v: Vec<f64>,
    /// What does not count.
    pub(super) counts_v: f64,
    /// The least peak so far of all places that the pulse reaches.
    pub(super) lowest_v: f64,
}

impl Peaks {
    /// Begins with the first instant's voltages, and with where among them each place stands.
    pub(crate) fn start(&mut self, v0: f64, volts: &[f64], places: impl Iterator<Item = Option<usize>>) {
        self.counts_v = NEGLIGIBLE * v0;
        self.tracks.clear();
        self.tracks.extend(places.map(|place| {
            let volts = place.map_or(0.0, |place| volts[place]);
            Track { place, ..Track::new(volts) }
        }));
        // Before the first instant there is no sample that it could be a top against.
        self.noted_v.clear();
        self.noted_v.resize(volts.len(), f64::INFINITY);
        self.noted_v.extend_from_slice(volts);
        self.times_s.clear();
        self.times_s.extend([0.0; 2]);
        self.highest_v.clear();
        self.highest_v.extend_from_slice(volts);
        self.find_lowest();
    }

    /// Notes the voltages of a step.
    pub(crate) fn note(&mut self, volts: &[f64], time_s: f64) {
        self.noted_v.extend_from_slice(volts);
        self.times_s.push(time_s);
        for (highest_v, now_v) in self.highest_v.iter_mut().zip(volts) {
            // Not `max`: this one is a single instruction, and no voltage is a NaN.
            *highest_v = if *highest_v > *now_v { *highest_v } else { *now_v };
        }
    }

    /// Looks at what was noted since the last time.
    pub(crate) fn look(&mut self) {
        let Self { tracks, noted_v, times_s, highest_v, .. } = self;
        let nodes = highest_v.len();
        let last = times_s.len() - 1;
        if last < 2 {
            return;
        }
        for track in tracks.iter_mut() {
            let Some(place) = track.place else { continue };
            let volts = |sample: usize| noted_v[sample * nodes + place];
            if times_s[1] <= 0.0 {
                track.first_v = volts(2);
            }
            track.last_v = volts(last);
            let highest_v = highest_v[place];
            if track.last_v >= highest_v {
                // Still rising: any top before is lower.
                if track.last_v > track.best.volts {
                    track.best = Peak { volts: track.last_v, at_s: times_s[last] };
                }
            } else if highest_v > STILL_NEAR * track.best.volts {
                for (first, times_s) in times_s.windows(3).enumerate() {
                    let around_v = [volts(first), volts(first + 1), volts(first + 2)];
                    track.sample(around_v, [times_s[0], times_s[1], times_s[2]], self.counts_v);
                }
            }
        }
        highest_v.copy_from_slice(&noted_v[last * nodes..]);
        noted_v.drain(..(last - 1) * nodes);
        times_s.drain(..last - 1);
        self.find_lowest();
    }

    fn find_lowest(&mut self) {
        let reached = self.tracks.iter().filter(|track| track.place.is_some());
        self.lowest_v = reached.fold(f64::INFINITY, |least, track| least.min(track.best.volts));
    }

    /// The peaks, in the order of the places.
    pub(crate) fn found(&self) -> impl Iterator<Item = Peak> + '_ {
        self.tracks.iter().map(|track| track.best)
    }

    /// Whether one of them is too early for a first block of that length.
    pub(crate) fn are_early(&self, first_block_s: f64) -> bool {
        self.tracks.iter().any(|track| track.is_early(first_block_s, self.counts_v))
    }

    /// Whether every place that the pulse reaches has come down from its peak.
    pub(super) fn all_fall(&self) -> bool {
        self.tracks.iter().all(|track| track.last_v < track.best.volts || track.best.volts <= self.counts_v)
    }
}

impl Track {
    /// Begins with the first instant's voltage.
    fn new(at_once_v: f64) -> Self {
        let best = Peak { volts: at_once_v, at_s: 0.0 };
        Self { place: None, at_once_v, first_v: at_once_v, last_v: at_once_v, best }
    }

    /// Whether a peak that counts fell among the first block's steps, where they are too coarse, or
    /// may have fallen between the first instant and the first sample.
    fn is_early(&self, first_block_s: f64, counts_v: f64) -> bool {
        let Peak { volts, at_s } = self.best;
        if at_s > 0.0 {
            at_s <= first_block_s && volts - self.at_once_v > counts_v
        } else {
            self.at_once_v - self.first_v > FIRST_DROP * volts + counts_v
        }
    }

    /// Takes the last of three samples. A top below `counts_v` is left as sampled: far out, before the pulse comes,
    /// there are many.
    fn sample(&mut self, around_v: [f64; 3], times_s: [f64; 3], counts_v: f64) {
        let [earlier_v, last_v, now_v] = around_v;
        if last_v >= now_v && last_v > earlier_v && last_v > counts_v {
            if let Some(top) = vertex(around_v, times_s, self.best.volts) {
                self.best = top;
            }
        } else if now_v > self.best.volts {
            self.best = Peak { volts: now_v, at_s: times_s[2] };
        }
    }
}

/// Top of the parabola through three samples of which the middle one is the greatest: over the
/// logarithm of time, where a pulse's rise and fall are nearly alike, or over time from its start.
/// `None` where it is not above `best_v`.
pub(crate) fn vertex(volts: [f64; 3], times_s: [f64; 3], best_v: f64) -> Option<Peak> {
    let logarithmic = times_s[0] > 0.0;
    let [a, b, c] = if logarithmic { times_s.map(f64::ln) } else { times_s };
    let rising = (volts[1] - volts[0]) / (b - a);
    let falling = (volts[2] - volts[1]) / (c - b);
    let bend = (falling - rising) / (c - a);
    if bend >= 0.0 {
        return (volts[1] > best_v).then_some(Peak { volts: volts[1], at_s: times_s[1] });
    }
    let slope = rising + bend * (b - a);
    let top_v = volts[1] - slope * slope / (4.0 * bend);
    (top_v > best_v).then(|| {
        let top = b - slope / (2.0 * bend);
        Peak { volts: top_v, at_s: if logarithmic { top.exp() } else { top } }
    })
}
