//! The plan as the code works with it: statements only, `None` where the keeper said nothing.
//!
//! Units stand in the names. Places are metres east and north of the plan's origin. `rest` carries the
//! keys that this version does not know, so that they are written back.

mod bracing;
mod coop;
mod features;
mod gate;
mod ground;
mod heights;
mod reading;
mod run;
mod season;
mod store;
mod underlay;

use serde::{Deserialize, Serialize};

use crate::defaults;
pub use crate::rates::Rates;
pub use bracing::{ByFoot, CornerSeen, PullTest, SoilClass, SoilTable, SoilWord};
pub use coop::{Coop, CoopKind, DoorSide, Flock};
pub use features::{Damp, Label, LabelSize, Shade, TapeLetter, TapePoint, Wall, WallKind};
pub use gate::{Gate, GateKind, Gateway, Pin, PinKind};
pub use ground::{Boundary, Ground, Hazard, HazardKind, KeepOut, Soil};
pub use heights::{HeightGrid, SideSlope, SpotHeight, drawn_out};
pub use reading::{Reading, ReadingKind};
pub use run::{
    BraceKind, Branch, EarthStakes, Fault, FaultCause, FaultKind, LeakageZone, MowWay, Run, RunStatus, StatedBrace,
};
pub use season::Season;
pub use store::{BraceRule, EarthStake, Energizer, Mower, NetKind, Store};
pub use underlay::{KnownError, Underlay, World};

/// Keys that this version does not know, kept to be written back.
pub type Rest = serde_json::Map<String, serde_json::Value>;

/// A place, metres east and north of the plan's origin; `[east_m, north_m]` in the file.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(from = "(f64, f64)", into = "(f64, f64)")]
pub struct Point {
    /// Metres east of the origin.
    pub east_m: f64,
    /// Metres north of the origin.
    pub north_m: f64,
}

impl Point {
    /// The place that many metres east and north of the origin.
    pub const fn new(east_m: f64, north_m: f64) -> Self {
        Self { east_m, north_m }
    }
}

impl schemars::JsonSchema for Point {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Point".into()
    }

    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        let mut schema = <(f64, f64)>::json_schema(generator);
        schema.insert("description".to_owned(), "`[east_m, north_m]`, metres from the plan's origin.".into());
        schema
    }
}

impl From<(f64, f64)> for Point {
    fn from((east_m, north_m): (f64, f64)) -> Self {
        Self { east_m, north_m }
    }
}

impl From<Point> for (f64, f64) {
    fn from(point: Point) -> Self {
        (point.east_m, point.north_m)
    }
}

/// The whole document.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Plan {
    /// The plan's name.
    pub title: String,
    /// Where its coordinates start on the globe.
    pub origin: Option<Origin>,
    /// The ground.
    pub ground: Ground,
    /// What the keeper owns.
    pub store: Store,
    /// Volts asked for at the weakest post, kilovolts.
    pub target_kv: Option<f64>,
    /// The coop that moves.
    pub coop: Option<Coop>,
    /// Further coops.
    pub other_coops: Vec<Coop>,
    /// The runs, options and standing ones alike.
    pub runs: Vec<Run>,
    /// Heights at single spots.
    pub heights: Vec<SpotHeight>,
    /// Walls, hedges and fences that may serve as a side.
    pub walls: Vec<Wall>,
    /// Words on the map.
    pub labels: Vec<Label>,
    /// Places that are found again on the ground, from which corners are taped out: from the two with a letter.
    pub tape_points: Vec<TapePoint>,
    /// The picture beneath it.
    pub underlay: Option<Underlay>,
    /// What is asked of a season.
    pub season: Season,
    /// What the keeper measured.
    pub readings: Vec<Reading>,
    /// Unknown keys.
    pub rest: Rest,
}

/// The plan's origin on WGS 84.
#[derive(Clone, Debug, PartialEq)]
pub struct Origin {
    /// Latitude, degrees, north positive.
    pub latitude_deg: f64,
    /// Longitude, degrees, east positive.
    pub longitude_deg: f64,
    /// Unknown keys.
    pub rest: Rest,
}

impl Plan {
    /// Volts asked for at the weakest post, stated or assumed, kilovolts.
    pub fn target_kv(&self) -> f64 {
        self.target_kv.unwrap_or(defaults::TARGET_KV)
    }

    /// Everything that the map leaves out is shown.
    pub fn show_all(&mut self) {
        let ground = &mut self.ground;
        let outlines = ground.keep_outs.iter_mut().map(|one| &mut one.hidden);
        let outlines = outlines.chain(ground.shade.iter_mut().map(|one| &mut one.hidden));
        let outlines = outlines.chain(ground.damp.iter_mut().map(|one| &mut one.hidden));
        let lines = ground.hazards.iter_mut().map(|one| &mut one.hidden);
        let lines = lines.chain(self.walls.iter_mut().map(|one| &mut one.hidden));
        let coops = self.coop.iter_mut().chain(&mut self.other_coops).map(|one| &mut one.hidden);
        let runs = self.runs.iter_mut().map(|one| &mut one.hidden);
        let words = self.labels.iter_mut().map(|one| &mut one.hidden);
        let picture = self.underlay.iter_mut().map(|one| &mut one.hidden);
        let all = outlines.chain(lines).chain(coops).chain(runs).chain(words).chain(picture);
        all.chain([&mut ground.boundary_hidden]).for_each(|hidden| *hidden = false);
    }

    /// Where a run's rolls lie, stated or assumed: the feed point, else the corner of the boundary that is nearest to
    /// the run's first vertex, else that vertex. `None` for a run without a vertex.
    pub fn drop_at(&self, run: &Run) -> Option<Point> {
        let first = *run.outline.first()?;
        let off_m = |at: &Point| (at.east_m - first.east_m).hypot(at.north_m - first.north_m);
        let corner = || self.ground.boundary.iter().min_by(|a, b| off_m(a).total_cmp(&off_m(b))).copied();
        Some(run.drop_at.or(run.feed_at).or_else(corner).unwrap_or(first))
    }

    /// Length and diameter of the spike that was pulled, stated or assumed, metres.
    pub fn pulled_spike_m(&self, test: &PullTest) -> (f64, f64) {
        let first = self.store.nets.first();
        let length_m = || first.map_or(defaults::SPIKE_LENGTH_M, NetKind::spike_length_m);
        let diameter_m = || first.map_or(defaults::SPIKE_DIAMETER_M, NetKind::spike_diameter_m);
        (test.spike_length_m.unwrap_or_else(length_m), test.spike_diameter_m.unwrap_or_else(diameter_m))
    }

    /// Spikes under the post that was pulled, stated or assumed.
    pub fn pulled_spikes(&self, test: &PullTest) -> u32 {
        let first = self.store.nets.first();
        test.spikes.unwrap_or_else(|| first.map_or(defaults::SPIKES_PER_POST, NetKind::spikes_per_post))
    }

    /// The gap under a run's bottom line that is allowed, stated or by its birds, metres.
    pub fn gap_under_net_m(&self, run: &Run) -> f64 {
        let young = |coop: &Coop| matches!(coop.kind(), CoopKind::Chick | CoopKind::Pullet);
        let young = self.coops_in(run).any(young) || self.coop_of(run).is_some_and(young);
        let by_birds_m = if young { defaults::GAP_UNDER_NET_YOUNG_M } else { defaults::GAP_UNDER_NET_M };
        run.gap_under_net_m.unwrap_or(by_birds_m)
    }

    /// Whether anything is known of the ground's height along a run.
    pub fn knows_heights(&self, run: &Run) -> bool {
        !run.side_slopes.is_empty() || self.heights.len() > 1 || self.ground.height_grid.is_some()
    }

    /// The run of that id.
    pub fn run(&self, id: &str) -> Option<&Run> {
        self.runs.iter().find(|run| run.id == id)
    }

    /// The kind of net of that id.
    pub fn net_kind(&self, id: &str) -> Option<&NetKind> {
        self.store.nets.iter().find(|net| net.id == id)
    }

    /// All coops, the plan's own first.
    pub fn coops(&self) -> impl Iterator<Item = &Coop> {
        self.coop.iter().chain(&self.other_coops)
    }

    /// The coop of a run: the one that it names; of a run that names none, assumed, the first that stands in it.
    pub fn coop_in(&self, run: &Run) -> Option<&Coop> {
        match &run.coop {
            Some(id) => self.coop(id),
            None => self.coops().find(|coop| run.surrounds(coop.at)),
        }
    }

    /// All coops of a run: its own first, then every other that stands in it and that no other run names.
    pub fn coops_in<'a>(&'a self, run: &'a Run) -> impl Iterator<Item = &'a Coop> {
        let own = self.coop_in(run);
        let of_another = |coop: &Coop| {
            let mut others = self.runs.iter().filter(|other| other.id != run.id && other.status != RunStatus::Past);
            others.any(|other| other.coop.as_ref() == Some(&coop.id))
        };
        let further = self
            .coops()
            .filter(move |coop| own.is_none_or(|own| own.id != coop.id) && run.surrounds(coop.at) && !of_another(coop));
        own.into_iter().chain(further)
    }

    /// The birds of a run: those of all its coops together; `None` where it has none.
    pub fn flock(&self, run: &Run) -> Option<Flock> {
        Flock::of(self.coops_in(run))
    }

    /// The one run that a coop goes along with: the only one that names it; where none does, the only one that has it.
    pub fn run_round(&self, coop: &Coop) -> Option<usize> {
        let only = |has: &dyn Fn(&Run) -> bool| {
            let mut all = self.runs.iter().enumerate().filter(|(_, run)| has(run)).map(|(index, _)| index);
            let first = all.next();
            (first, all.next().is_some())
        };
        match only(&|run| run.coop.as_ref() == Some(&coop.id)) {
            (None, _) => match only(&|run| self.coops_in(run).any(|one| one.id == coop.id)) {
                (first, false) => first,
                _ => None,
            },
            (first, false) => first,
            _ => None,
        }
    }

    /// Coops with a flock that belong to no run: none names them, and they stand in none. Nothing is told where there is no run yet, or an open one, which may hold them with its wall.
    pub fn coops_without_run(&self) -> Vec<&Coop> {
        let open = self.runs.iter().any(|run| !run.closed() && run.coop.is_none());
        if self.runs.is_empty() || open {
            return Vec::new();
        }
        // A run that is a memory holds no flock.
        let runs = || self.runs.iter().filter(|run| run.status != RunStatus::Past);
        let has = |coop: &&Coop| runs().any(|run| self.coops_in(run).any(|one| one.id == coop.id));
        self.coops().filter(|coop| coop.birds.is_some_and(|birds| birds > 0) && !has(coop)).collect()
    }

    /// The coop of that id.
    pub fn coop(&self, id: &str) -> Option<&Coop> {
        self.coop.iter().chain(&self.other_coops).find(|coop| coop.id == id)
    }
}
