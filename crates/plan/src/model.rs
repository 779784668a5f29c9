//! The plan as the code works with it: statements only, `None` where the keeper said nothing.
//!
//! Units stand in the names. Places are metres east and north of the plan's origin. `rest` carries the
//! keys that this version does not know, so that they are written back.

use serde::{Deserialize, Serialize};

use crate::defaults;
pub use crate::rates::Rates;

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

/// A closed line of places.
pub type Boundary = Vec<Point>;

/// The ground that the flock may use, and what stands on it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ground {
    /// Outline of the paddock; empty where none is stated.
    pub boundary: Boundary,
    /// Places that a run keeps off.
    pub keep_outs: Vec<KeepOut>,
    /// Things that can hurt.
    pub hazards: Vec<Hazard>,
    /// The soil.
    pub soil: Soil,
    /// Unknown keys.
    pub rest: Rest,
}

/// A place that a run keeps off.
#[derive(Clone, Debug, PartialEq)]
pub struct KeepOut {
    /// Its name.
    pub name: String,
    /// Its outline.
    pub outline: Vec<Point>,
    /// Straight distance kept from it, metres.
    pub clearance_m: Option<f64>,
    /// Whether it may stand inside a run.
    pub may_enclose: Option<bool>,
    /// Whether it is water: a pond, a ditch, a stream.
    pub water: bool,
    /// Unknown keys.
    pub rest: Rest,
}

impl KeepOut {
    /// The clearance, stated or assumed, metres.
    pub fn clearance_m(&self) -> f64 {
        self.clearance_m.unwrap_or(defaults::CLEARANCE_M)
    }

    /// Whether a run may go round it.
    pub fn may_enclose(&self) -> bool {
        self.may_enclose.unwrap_or(defaults::MAY_ENCLOSE)
    }
}

/// What kind of hazard a path is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum HazardKind {
    /// A power or telephone line overhead.
    OverheadLine,
    /// A road, footpath or other public way.
    PublicWay,
    /// A fence fed by another energizer.
    OtherEnergisedFence,
    /// An earth that is not this fence's: supply, telephone, lightning, rails, metal pipes.
    ForeignEarth,
}

/// A thing that can hurt, drawn as a path (or one point).
#[derive(Clone, Debug, PartialEq)]
pub struct Hazard {
    /// Its kind.
    pub kind: HazardKind,
    /// Its name; empty where none is stated.
    pub name: String,
    /// Its path.
    pub path: Vec<Point>,
    /// Voltage of an overhead line, kilovolts.
    pub line_voltage_kv: Option<f64>,
    /// Whether warning signs face a public way.
    pub signed: bool,
    /// Whether an unpowered gate or stile lets a public way through.
    pub unpowered_gate: bool,
    /// Unknown keys.
    pub rest: Rest,
}

/// The soil, as far as it is stated.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Soil {
    /// Resistivity, ohm metres.
    pub resistivity_ohm_m: Option<f64>,
    /// Undrained shear strength of a clay, kilopascals.
    pub undrained_strength_kpa: Option<f64>,
    /// Friction angle of a sand, degrees.
    pub friction_angle_deg: Option<f64>,
    /// Unit weight of a sand, kilonewtons per cubic metre.
    pub unit_weight_kn_per_m3: Option<f64>,
    /// Whether it is wet, which halves what a spike holds.
    pub wet: Option<bool>,
    /// Unknown keys.
    pub rest: Rest,
}

impl Soil {
    /// Resistivity, stated or assumed, ohm metres.
    pub fn resistivity_ohm_m(&self) -> f64 {
        self.resistivity_ohm_m.unwrap_or(defaults::RESISTIVITY_OHM_M)
    }

    /// Whether the ground is wet.
    pub fn wet(&self) -> bool {
        self.wet.unwrap_or(defaults::WET)
    }

    /// Unit weight of the sand, stated or assumed, kilonewtons per cubic metre.
    pub fn unit_weight_kn_per_m3(&self) -> f64 {
        self.unit_weight_kn_per_m3.unwrap_or(defaults::UNIT_WEIGHT_KN_PER_M3)
    }
}

/// What the keeper owns.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Store {
    /// Nets by kind.
    pub nets: Vec<NetKind>,
    /// Energizers by kind.
    pub energizers: Vec<Energizer>,
    /// Braces.
    pub brace: BraceRule,
    /// The mower.
    pub mower: Mower,
    /// Earth stakes.
    pub earth_stake: EarthStake,
    /// How long setting up and taking down take.
    pub rates: Rates,
    /// Unknown keys.
    pub rest: Rest,
}

/// One kind of net.
#[derive(Clone, Debug, PartialEq)]
pub struct NetKind {
    /// Its id, unique among nets.
    pub id: String,
    /// How many the keeper owns.
    pub count: Option<u32>,
    /// Length, metres.
    pub length_m: f64,
    /// Equal panels, where no lengths are given.
    pub panels: Option<u32>,
    /// Lengths of unequal panels in the direction of the chain, metres.
    pub panel_lengths_m: Option<Vec<f64>>,
    /// Height, metres.
    pub height_m: Option<f64>,
    /// Heights of the live lines, metres.
    pub live_line_heights_m: Option<Vec<f64>>,
    /// Resistance of one live line, ohms per metre.
    pub line_resistance_ohm_per_m: Option<f64>,
    /// Tension of the whole net, newtons.
    pub tension_n: Option<f64>,
    /// Spikes under one post.
    pub spikes_per_post: Option<u32>,
    /// Length of a spike, metres.
    pub spike_length_m: Option<f64>,
    /// Diameter of a spike, metres.
    pub spike_diameter_m: Option<f64>,
    /// Mass with its posts, kilograms.
    pub mass_kg: Option<f64>,
    /// Unknown keys.
    pub rest: Rest,
}

impl NetKind {
    /// A net of which no more is stated than every net has.
    pub fn new(id: impl Into<String>, length_m: f64, panels: u32) -> Self {
        Self {
            id: id.into(),
            count: None,
            length_m,
            panels: Some(panels),
            panel_lengths_m: None,
            height_m: None,
            live_line_heights_m: None,
            line_resistance_ohm_per_m: None,
            tension_n: None,
            spikes_per_post: None,
            spike_length_m: None,
            spike_diameter_m: None,
            mass_kg: None,
            rest: Rest::new(),
        }
    }

    /// How many the keeper owns, stated or assumed.
    pub fn count(&self) -> u32 {
        self.count.unwrap_or(defaults::NET_COUNT)
    }

    /// Height, stated or assumed, metres.
    pub fn height_m(&self) -> f64 {
        self.height_m.unwrap_or(defaults::NET_HEIGHT_M)
    }

    /// Heights of the live lines, stated or assumed, metres.
    pub fn live_line_heights_m(&self) -> &[f64] {
        self.live_line_heights_m.as_deref().unwrap_or(&defaults::LIVE_LINE_HEIGHTS_M)
    }

    /// Resistance of one live line, stated or assumed, ohms per metre.
    pub fn line_resistance_ohm_per_m(&self) -> f64 {
        self.line_resistance_ohm_per_m.unwrap_or(defaults::LINE_RESISTANCE_OHM_PER_M)
    }

    /// Tension of the whole net, stated or assumed, newtons.
    pub fn tension_n(&self) -> f64 {
        self.tension_n.unwrap_or(defaults::TENSION_N)
    }

    /// Spikes under one post, stated or assumed.
    pub fn spikes_per_post(&self) -> u32 {
        self.spikes_per_post.unwrap_or(defaults::SPIKES_PER_POST)
    }

    /// Length of a spike, stated or assumed, metres.
    pub fn spike_length_m(&self) -> f64 {
        self.spike_length_m.unwrap_or(defaults::SPIKE_LENGTH_M)
    }

    /// Diameter of a spike, stated or assumed, metres.
    pub fn spike_diameter_m(&self) -> f64 {
        self.spike_diameter_m.unwrap_or(defaults::SPIKE_DIAMETER_M)
    }

    /// Mass with its posts, stated or assumed, kilograms.
    pub fn mass_kg(&self) -> f64 {
        self.mass_kg.unwrap_or(defaults::MASS_KG_PER_M * self.length_m)
    }

    /// Panels on one net.
    pub fn panel_count(&self) -> usize {
        match (&self.panel_lengths_m, self.panels) {
            (Some(lengths), _) => lengths.len(),
            (None, Some(panels)) => panels as usize,
            (None, None) => 0,
        }
    }
}

/// One kind of energizer, from its data sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Energizer {
    /// Its id, unique among energizers.
    pub id: String,
    /// How many the keeper owns.
    pub count: Option<u32>,
    /// Stored energy, joules.
    pub stored_j: Option<f64>,
    /// No-load voltage, kilovolts.
    pub no_load_kv: Option<f64>,
    /// Voltage at 500 ohms, kilovolts.
    pub kv_at_500_ohm: Option<f64>,
    /// Output at 500 ohms, joules.
    pub output_j_at_500_ohm: Option<f64>,
    /// Unknown keys.
    pub rest: Rest,
}

impl Energizer {
    /// The energizer that is assumed where the store has none.
    pub fn assumed() -> Self {
        Self {
            id: String::new(),
            count: None,
            stored_j: None,
            no_load_kv: None,
            kv_at_500_ohm: None,
            output_j_at_500_ohm: None,
            rest: Rest::new(),
        }
    }

    /// How many the keeper owns, stated or assumed.
    pub fn count(&self) -> u32 {
        self.count.unwrap_or(defaults::ENERGIZER_COUNT)
    }

    /// No-load voltage, stated or assumed, kilovolts.
    pub fn no_load_kv(&self) -> f64 {
        self.no_load_kv.unwrap_or(defaults::NO_LOAD_KV)
    }

    /// Voltage at 500 ohms, stated or assumed in the default's proportion, kilovolts.
    pub fn kv_at_500_ohm(&self) -> f64 {
        self.kv_at_500_ohm.unwrap_or(self.no_load_kv() * defaults::KV_AT_500_OHM / defaults::NO_LOAD_KV)
    }

    /// Output at 500 ohms, stated or assumed in the default's proportion, joules.
    pub fn output_j_at_500_ohm(&self) -> f64 {
        self.output_j_at_500_ohm
            .unwrap_or(self.stored_j.unwrap_or(defaults::STORED_J) * defaults::OUTPUT_J_AT_500_OHM / defaults::STORED_J)
    }

    /// Stored energy, stated or assumed, joules.
    pub fn stored_j(&self) -> f64 {
        self.stored_j.unwrap_or(defaults::STORED_J)
    }
}

/// The keeper's braces.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BraceRule {
    /// Length of the stake, metres.
    pub stake_length_m: Option<f64>,
    /// Diameter of the stake, metres.
    pub stake_diameter_m: Option<f64>,
    /// Height of the guy's loop on the stake, metres.
    pub loop_height_m: Option<f64>,
    /// Distance from the net to the stake, metres.
    pub stand_off_m: Option<f64>,
    /// Unknown keys.
    pub rest: Rest,
}

impl BraceRule {
    /// Length of the stake, stated or assumed, metres.
    pub fn stake_length_m(&self) -> f64 {
        self.stake_length_m.unwrap_or(defaults::BRACE_STAKE_LENGTH_M)
    }

    /// Diameter of the stake, stated or assumed, metres.
    pub fn stake_diameter_m(&self) -> f64 {
        self.stake_diameter_m.unwrap_or(defaults::BRACE_STAKE_DIAMETER_M)
    }

    /// Height of the loop, stated or assumed, metres.
    pub fn loop_height_m(&self) -> f64 {
        self.loop_height_m.unwrap_or(defaults::BRACE_LOOP_HEIGHT_M)
    }

    /// The stand-off, stated or assumed, metres.
    pub fn stand_off_m(&self) -> f64 {
        self.stand_off_m.unwrap_or(defaults::STAND_OFF_M)
    }
}

/// The keeper's mower.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Mower {
    /// Cut, metres.
    pub width_m: Option<f64>,
    /// Share of a cut that overlaps the one before.
    pub overlap: Option<f64>,
    /// Walking speed, metres a second.
    pub speed_m_per_s: Option<f64>,
    /// Share of the time in which it mows.
    pub efficiency: Option<f64>,
    /// Height of the cut, metres.
    pub cut_height_m: Option<f64>,
    /// Unknown keys.
    pub rest: Rest,
}

impl Mower {
    /// Cut, stated or assumed, metres.
    pub fn width_m(&self) -> f64 {
        self.width_m.unwrap_or(defaults::MOWER_WIDTH_M)
    }

    /// Overlap, stated or assumed, a share of the cut.
    pub fn overlap(&self) -> f64 {
        self.overlap.unwrap_or(defaults::MOWER_OVERLAP)
    }

    /// Speed, stated or assumed, metres a second.
    pub fn speed_m_per_s(&self) -> f64 {
        self.speed_m_per_s.unwrap_or(defaults::MOWER_SPEED_M_PER_S)
    }

    /// Height of the cut, stated or assumed, metres.
    pub fn cut_height_m(&self) -> f64 {
        self.cut_height_m.unwrap_or(defaults::CUT_HEIGHT_M)
    }
}

/// One earth stake of the keeper's.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct EarthStake {
    /// Length in the ground, metres.
    pub length_m: Option<f64>,
    /// Diameter, metres.
    pub diameter_m: Option<f64>,
    /// Unknown keys.
    pub rest: Rest,
}

impl EarthStake {
    /// Length, stated or assumed, metres.
    pub fn length_m(&self) -> f64 {
        self.length_m.unwrap_or(defaults::EARTH_STAKE_LENGTH_M)
    }

    /// Diameter, stated or assumed, metres.
    pub fn diameter_m(&self) -> f64 {
        self.diameter_m.unwrap_or(defaults::EARTH_STAKE_DIAMETER_M)
    }
}

/// What lives in a coop.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum CoopKind {
    /// Laying hens.
    #[default]
    Layer,
    /// Young hens before lay.
    Pullet,
    /// Chicks.
    Chick,
    /// Table birds.
    Table,
    /// Ducks.
    Duck,
    /// Geese.
    Goose,
    /// Turkeys.
    Turkey,
    /// Something else.
    Other,
}

/// A movable coop.
#[derive(Clone, Debug, PartialEq)]
pub struct Coop {
    /// Its id, unique among coops.
    pub id: String,
    /// Its middle.
    pub at: Point,
    /// Which way its length points, degrees clockwise from north.
    pub heading_deg: Option<f64>,
    /// Length, metres.
    pub length_m: Option<f64>,
    /// Width, metres.
    pub width_m: Option<f64>,
    /// Birds in it.
    pub birds: Option<u32>,
    /// What birds.
    pub kind: Option<CoopKind>,
    /// Unknown keys.
    pub rest: Rest,
}

impl Coop {
    /// Its corners, from the one ahead on the right, counter-clockwise: its length points along the heading.
    pub fn corners(&self) -> [Point; 4] {
        let (sin, cos) = self.heading_deg().to_radians().sin_cos();
        [(1.0, 1.0), (1.0, -1.0), (-1.0, -1.0), (-1.0, 1.0)].map(|(ahead, right)| {
            let (ahead_m, right_m) = (ahead * self.length_m() / 2.0, right * self.width_m() / 2.0);
            Point::new(self.at.east_m + ahead_m * sin + right_m * cos, self.at.north_m + ahead_m * cos - right_m * sin)
        })
    }

    /// A coop of which no more is stated than where it stands.
    pub fn new(id: impl Into<String>, at: Point) -> Self {
        Self {
            id: id.into(),
            at,
            heading_deg: None,
            length_m: None,
            width_m: None,
            birds: None,
            kind: None,
            rest: Rest::new(),
        }
    }

    /// Heading, stated or assumed, degrees clockwise from north.
    pub fn heading_deg(&self) -> f64 {
        self.heading_deg.unwrap_or(defaults::HEADING_DEG)
    }

    /// Length, stated or assumed, metres.
    pub fn length_m(&self) -> f64 {
        self.length_m.unwrap_or(defaults::COOP_LENGTH_M)
    }

    /// Width, stated or assumed, metres.
    pub fn width_m(&self) -> f64 {
        self.width_m.unwrap_or(defaults::COOP_WIDTH_M)
    }

    /// Birds, stated or assumed.
    pub fn birds(&self) -> u32 {
        self.birds.unwrap_or(defaults::BIRDS)
    }

    /// Kind of bird, stated or assumed.
    pub fn kind(&self) -> CoopKind {
        self.kind.unwrap_or_default()
    }
}

/// Whether a run is a thought, a fence or a memory.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum RunStatus {
    /// One of several ways that the run could go.
    #[default]
    Option,
    /// It stands in the field and uses up the store.
    Standing,
    /// It stood once.
    Past,
}

/// How the strip is mown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum MowWay {
    /// Between canes at the corners, before the nets are rolled out.
    #[default]
    BetweenCanes,
    /// Along the standing net, which is then laid aside and set up again in the middle of the swath.
    AlongNet,
    /// Not at all: the grass is short.
    NotAtAll,
}

/// One line of netting and the ground that it encloses.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Run {
    /// Its id, unique among runs.
    pub id: String,
    /// Its name; empty where none is stated.
    pub name: String,
    /// Its outline.
    pub outline: Vec<Point>,
    /// Whether the outline closes.
    pub closed: Option<bool>,
    /// Kinds of its nets in order; `None` lets the tool choose from the store.
    pub nets: Option<Vec<String>>,
    /// The coop inside.
    pub coop: Option<String>,
    /// Whether it stands.
    pub status: RunStatus,
    /// Kind of its energizer; `None` is the store's first.
    pub energizer: Option<String>,
    /// Where the live lead meets the net.
    pub feed_at: Option<Point>,
    /// Its earth stakes.
    pub earth_stakes: EarthStakes,
    /// Measured resistance of its earth, ohms, in place of the stakes'.
    pub earth_ohm: Option<f64>,
    /// Leakage, siemens per metre of net.
    pub leakage_s_per_m: Option<f64>,
    /// Stretches of other leakage.
    pub leakage_zones: Vec<LeakageZone>,
    /// Resistance of every join, ohms; `None` is an ideal join.
    pub join_ohm: Option<f64>,
    /// Resistance of the lead to the fence, ohms.
    pub lead_ohm: Option<f64>,
    /// Where the chain starts, fixed, metres along the outline.
    pub start_m: Option<f64>,
    /// Whether a chain with a fixed start runs against the outline.
    pub reversed: Option<bool>,
    /// Width of the mown strip, metres.
    pub strip_width_m: Option<f64>,
    /// How the strip is mown.
    pub mow_way: Option<MowWay>,
    /// Where the rolls lie before setting up: a gateway, a trailer. It stays there when the run is moved.
    pub drop_at: Option<Point>,
    /// Where the rolls are laid after taking down: where the next run begins.
    pub next_drop_at: Option<Point>,
    /// Whether the live lines are clipped together where the chain closes.
    pub live_loop: Option<bool>,
    /// Braces that stand or are decided.
    pub braces: Vec<StatedBrace>,
    /// Faults that are there or tried.
    pub faults: Vec<Fault>,
    /// Unknown keys.
    pub rest: Rest,
}

impl Run {
    /// Whether the outline closes, stated or assumed.
    pub fn closed(&self) -> bool {
        self.closed.unwrap_or(defaults::CLOSED)
    }

    /// Leakage, stated or assumed, siemens per metre.
    pub fn leakage_s_per_m(&self) -> f64 {
        self.leakage_s_per_m.unwrap_or(defaults::LEAKAGE_S_PER_M)
    }

    /// Resistance of the lead, stated or assumed, ohms.
    pub fn lead_ohm(&self) -> f64 {
        self.lead_ohm.unwrap_or(defaults::LEAD_OHM)
    }

    /// Width of the strip, stated or assumed, metres.
    pub fn strip_width_m(&self) -> f64 {
        self.strip_width_m.unwrap_or(defaults::STRIP_WIDTH_M)
    }

    /// How the strip is mown, stated or assumed.
    pub fn mow_way(&self) -> MowWay {
        self.mow_way.unwrap_or_default()
    }

    /// Whether the live loop is closed, stated or assumed.
    pub fn live_loop(&self) -> bool {
        self.live_loop.unwrap_or(defaults::LIVE_LOOP)
    }
}

/// A run's earth stakes, in line.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct EarthStakes {
    /// How many.
    pub count: Option<u32>,
    /// Distance between neighbours, metres.
    pub spacing_m: Option<f64>,
    /// Where the first stands.
    pub at: Option<Point>,
    /// Unknown keys.
    pub rest: Rest,
}

impl EarthStakes {
    /// How many, stated or assumed.
    pub fn count(&self) -> u32 {
        self.count.unwrap_or(defaults::EARTH_STAKE_COUNT)
    }

    /// Distance between neighbours, stated or assumed, metres.
    pub fn spacing_m(&self) -> f64 {
        self.spacing_m.unwrap_or(defaults::EARTH_STAKE_SPACING_M)
    }
}

/// A stretch of the line with a leakage of its own.
#[derive(Clone, Debug, PartialEq)]
pub struct LeakageZone {
    /// Start along the outline, metres.
    pub from_m: f64,
    /// End along the outline, metres; before the start where the stretch runs over the first vertex.
    pub to_m: f64,
    /// Leakage, siemens per metre.
    pub s_per_m: f64,
    /// Unknown keys.
    pub rest: Rest,
}

/// What a brace is made of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum BraceKind {
    /// A guy line to a stake.
    #[default]
    Guy,
    /// A post of its own.
    Post,
}

/// A brace that the keeper has decided on.
#[derive(Clone, Debug, PartialEq)]
pub struct StatedBrace {
    /// The corner that it holds, by place.
    pub at: Point,
    /// What it is made of.
    pub kind: BraceKind,
    /// Distance from the vertex to its stake, metres.
    pub stand_off_m: Option<f64>,
    /// Unknown keys.
    pub rest: Rest,
}

/// What is wrong at a place of the fence.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum FaultKind {
    /// A resistance from the live lines to the ground.
    Short,
    /// Every live line is open.
    Break,
    /// Some live lines of one net are broken.
    LineBreak,
    /// A resistance in series at the nearest join.
    Join,
}

/// A fault at a place.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// Where.
    pub at: Point,
    /// What.
    pub kind: FaultKind,
    /// Its resistance, ohms, for a short or a join.
    pub ohm: Option<f64>,
    /// How many live lines are broken, for broken lines.
    pub lines: Option<u32>,
    /// Unknown keys.
    pub rest: Rest,
}

/// What a reading tells of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum ReadingKind {
    /// A post, to a probe in the soil, kilovolts.
    FenceKv,
    /// The energizer's earth pole, to a probe, kilovolts.
    EarthKv,
    /// The energizer's poles with the fence unclipped, kilovolts.
    EnergizerKv,
    /// The battery, volts.
    BatteryV,
    /// Ticking heard at that place.
    Ticking,
}

/// A measurement that the keeper took.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// The run that it was taken on.
    pub run: String,
    /// What was read.
    pub kind: ReadingKind,
    /// Where along the outline, metres.
    pub along_m: Option<f64>,
    /// The value, in the unit of its kind.
    pub value: Option<f64>,
    /// Everything else that the file says of it.
    pub rest: Rest,
}

impl Plan {
    /// Volts asked for at the weakest post, stated or assumed, kilovolts.
    pub fn target_kv(&self) -> f64 {
        self.target_kv.unwrap_or(defaults::TARGET_KV)
    }

    /// Where a run's rolls lie, stated or assumed: the feed point, else the corner of the boundary that is nearest to
    /// the run's first vertex, else that vertex. `None` for a run without a vertex.
    pub fn drop_at(&self, run: &Run) -> Option<Point> {
        let first = *run.outline.first()?;
        let off_m = |at: &Point| (at.east_m - first.east_m).hypot(at.north_m - first.north_m);
        let corner = || self.ground.boundary.iter().min_by(|a, b| off_m(a).total_cmp(&off_m(b))).copied();
        Some(run.drop_at.or(run.feed_at).or_else(corner).unwrap_or(first))
    }

    /// The run of that id.
    pub fn run(&self, id: &str) -> Option<&Run> {
        self.runs.iter().find(|run| run.id == id)
    }

    /// The kind of net of that id.
    pub fn net_kind(&self, id: &str) -> Option<&NetKind> {
        self.store.nets.iter().find(|net| net.id == id)
    }

    /// The coop of that id.
    pub fn coop(&self, id: &str) -> Option<&Coop> {
        self.coop.iter().chain(&self.other_coops).find(|coop| coop.id == id)
    }
}
