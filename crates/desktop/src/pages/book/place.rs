//! Where a reading was taken, what it showed, and what was likely there.

use drawing::Thing;
use drawing::map::readings;
use plan::{Plan, Reading, ReadingKind, Run};
use words::Words;
use words::texts::Book as Text;
use workup::{RunWorkup, SampleOf};

use crate::tool::apart_m;

/// A place this near to a corner or post along the line is there, metres.
const THERE_M: f64 = 0.25;

/// What a kind of reading is called.
pub(super) fn kind(kind: ReadingKind) -> Text {
    match kind {
        ReadingKind::FenceKv => Text::FenceKv,
        ReadingKind::EarthKv => Text::EarthKv,
        ReadingKind::EnergizerKv => Text::EnergizerKv,
        ReadingKind::BatteryV => Text::BatteryV,
        ReadingKind::Ticking => Text::Ticking,
    }
}

/// A run whose places are named.
#[derive(Clone, Copy)]
pub(super) struct Places<'a> {
    pub(super) plan: &'a Plan,
    pub(super) run: &'a Run,
    pub(super) worked: &'a RunWorkup,
    pub(super) words: Words,
}

impl Places<'_> {
    /// Length of the line, metres; `None` where the run could not be laid.
    pub(super) fn line_m(&self) -> Option<f64> {
        self.worked.lay.as_ref().map(|lay| lay.line_m)
    }

    /// Distance along the line between two places of it, the short way round a ring, metres.
    fn off_m(&self, one_m: f64, other_m: f64) -> f64 {
        let straight_m = (one_m - other_m).abs();
        match &self.worked.lay {
            Some(lay) if lay.closed => straight_m.min((lay.line_m - straight_m).abs()),
            _ => straight_m,
        }
    }

    /// The post nearest to a place along the line: its place in the lay's posts.
    pub(super) fn post(&self, along_m: f64) -> Option<usize> {
        let posts = &self.worked.lay.as_ref()?.posts;
        let far = |post: &usize| self.off_m(posts[*post].along_m, along_m);
        (0..posts.len()).min_by(|one, other| far(one).total_cmp(&far(other)))
    }

    /// A place along the line in words: the corner or post that stands there, else the distance from corner 1.
    pub(super) fn along(&self, along_m: f64) -> String {
        let words = self.words;
        let vertices = self.worked.lay.iter().flat_map(|lay| &lay.vertices);
        let corner = vertices.map(|&(_, corner_m)| corner_m).position(|corner_m| self.off_m(corner_m, along_m) < 0.05);
        if let Some(corner) = corner {
            return words.say(Text::AtCorner, &[("number", &(corner + 1).to_string())]);
        }
        let posts = self.worked.lay.as_ref().map(|lay| &lay.posts);
        match self.post(along_m).zip(posts) {
            Some((post, posts)) if self.off_m(posts[post].along_m, along_m) < THERE_M => {
                words.say(Text::AtPost, &[("number", &(post + 1).to_string())])
            }
            _ => words.say(Text::AtMetres, &[("length", &words.length(along_m))]),
        }
    }

    /// Where a reading was taken, in words.
    pub(super) fn name(&self, reading: &Reading) -> String {
        let there = match (reading.kind, reading.along_m) {
            (ReadingKind::FenceKv | ReadingKind::Ticking, Some(along_m)) => return self.along(along_m),
            (ReadingKind::FenceKv | ReadingKind::Ticking, None) => Text::Anywhere,
            (ReadingKind::EarthKv, _) => Text::AtEarth,
            (ReadingKind::EnergizerKv, _) => Text::AtEnergizer,
            (ReadingKind::BatteryV, _) => Text::AtBattery,
        };
        self.words.text(there).to_owned()
    }

    /// What was read, with its unit.
    pub(super) fn value(&self, reading: &Reading) -> String {
        let words = self.words;
        match (reading.kind, reading.value) {
            (ReadingKind::Ticking, _) => words.text(Text::TickingValue).to_owned(),
            (_, None) => words.text(Text::NoValue).to_owned(),
            (ReadingKind::BatteryV, Some(volts)) => words.say(Text::Volts, &[("volts", &words.number(volts, 1))]),
            (_, Some(kv)) => words.kilovolts(kv),
        }
    }

    /// What the model holds for likely where a reading was taken, kilovolts: on the fence at the nearest post, at the
    /// earth stakes as it is.
    pub(super) fn likely_kv(&self, reading: &Reading) -> Option<f64> {
        let volts = self.worked.volts.as_ref()?;
        match reading.kind {
            ReadingKind::FenceKv => {
                let post = self.post(reading.along_m?)?;
                let of_post = volts.samples.iter().find(|sample| sample.of == SampleOf::Post(post));
                of_post.map(|sample| sample.peak_kv)
            }
            ReadingKind::EarthKv => Some(volts.earth_kv),
            ReadingKind::EnergizerKv | ReadingKind::BatteryV | ReadingKind::Ticking => None,
        }
    }

    /// The least of the newest readings of posts.
    pub(super) fn weakest_read(&self, of: &[usize]) -> Option<&Reading> {
        let newest = readings::newest(self.plan, &self.run.id);
        of.iter()
            .filter(|index| newest.contains(index))
            .map(|&index| &self.plan.readings[index])
            .filter(|reading| reading.kind == ReadingKind::FenceKv)
            .filter_map(|reading| Some((reading, reading.value.filter(|value| value.is_finite())?)))
            .min_by(|one, other| one.1.total_cmp(&other.1))
            .map(|(reading, _)| reading)
    }

    /// The volts that the keeper asks for, kilovolts, where less was read.
    pub(super) fn under_target(&self, of: &[usize]) -> Option<f64> {
        let (read_kv, target_kv) = (self.weakest_read(of)?.value?, self.plan.target_kv());
        (read_kv < target_kv).then_some(target_kv)
    }

    /// Where along the line a thing of this run stands, metres.
    pub(super) fn of(&self, run_index: usize, thing: Thing) -> Option<f64> {
        let lay = self.worked.lay.as_ref()?;
        match thing {
            Thing::Post { run, post } if run == run_index => lay.posts.get(post).map(|post| post.along_m),
            Thing::RunCorner { run, vertex } if run == run_index => {
                let at = *self.run.outline.get(vertex)?;
                lay.vertices.iter().find(|(place, _)| apart_m(*place, at) < 1e-6).map(|&(_, along_m)| along_m)
            }
            Thing::Feed { run } if run == run_index => {
                let samples = &self.worked.volts.as_ref()?.samples;
                samples.iter().find(|sample| sample.of == SampleOf::Feed).map(|sample| sample.along_m)
            }
            Thing::Reading { run, reading } if run == run_index => self.plan.readings.get(reading)?.along_m,
            _ => None,
        }
    }
}
