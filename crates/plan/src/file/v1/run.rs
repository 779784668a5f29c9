//! A run, in version 1.

use super::{Gate, Pin, SideSlope, empty};
use crate::defaults;
use crate::file::mirror::mirrored;
use crate::lead::Conductor;
use crate::model::{BraceKind, FaultCause, FaultKind, MowWay, Point, RunStatus};

mirrored! {
    /// One line of netting and the ground that it encloses.
    Run {
        /// Its id, unique among runs.
        id: String,
        /// Its name.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        name: String,
        /// Its outline.
        outline: Vec<Point>,
        /// Whether the outline closes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::CLOSED))]
        closed: Option<bool>,
        /// Ids of its nets in order; left out, the tool chooses from the store.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        nets: Option<Vec<String>>,
        /// Id of the coop inside.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        coop: Option<String>,
        /// Whether it stands.
        #[serde(default)]
        status: RunStatus,
        /// Id of its energizer; left out, the store's first.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        energizer: Option<String>,
        /// Where the live lead meets the net; left out, its first vertex.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        feed_at: Option<Point>,
        /// Where the energizer stands; left out, at the feed point.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        energizer_at: Option<Point>,
        /// Its earth stakes.
        #[serde(default = "empty::<EarthStakes>")]
        earth_stakes: EarthStakes,
        /// Measured resistance of its earth, ohms, in place of the stakes'.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        earth_ohm: Option<f64>,
        /// Leakage, siemens per metre of net.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::LEAKAGE_S_PER_M))]
        leakage_s_per_m: Option<f64>,
        /// Stretches of other leakage; of overlapping ones the later counts.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        leakage_zones: Vec<LeakageZone>,
        /// Resistance of every join, ohms; left out, joins are ideal.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        join_ohm: Option<f64>,
        /// Resistance of the lead to the fence, ohms.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::LEAD_OHM))]
        lead_ohm: Option<f64>,
        /// What that lead is made of, where its ohms are not stated: a solid wire of 2.5 mm, or one line of the net.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        lead_of: Option<Conductor>,
        /// How long it is, metres; left out, as far as the energizer stands from the feed point.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        lead_m: Option<f64>,
        /// Where the chain starts, fixed, metres along the outline.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        start_m: Option<f64>,
        /// Whether a chain with a fixed start runs against the outline.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = false))]
        reversed: Option<bool>,
        /// Width of the mown strip, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::STRIP_WIDTH_M))]
        strip_width_m: Option<f64>,
        /// How far the strip reaches to the left of the outline as it is stated, metres; left out, half its width.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        strip_left_m: Option<f64>,
        /// How far it reaches to the right, metres; left out, half its width.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        strip_right_m: Option<f64>,
        /// How the strip is mown.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = MowWay::BetweenCanes))]
        mow_way: Option<MowWay>,
        /// Where the rolls lie before setting up; left out, the feed point, else the boundary's nearest corner.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        drop_at: Option<Point>,
        /// Where the rolls are laid after taking down; left out, where they lay before.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        next_drop_at: Option<Point>,
        /// Whether the live lines are clipped together where the chain closes.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::LIVE_LOOP))]
        live_loop: Option<bool>,
        /// Braces that stand or are decided.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        braces: Vec<StatedBrace>,
        /// Faults that are there or tried.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        faults: Vec<Fault>,
        /// What is fixed of how its nets fall; of pins that contradict each other the earlier counts.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        pins: Vec<Pin>,
        /// Where it opens.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        gates: Vec<Gate>,
        /// Lines of netting that hang on it, their live lines joined to it.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        branches: Vec<Branch>,
        /// What sides rise, by hand; it counts before the heights of spots and grid.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        side_slopes: Vec<SideSlope>,
        /// The gap under the bottom line that is allowed, metres; left out, 0.075, and 0.05 with young birds.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::GAP_UNDER_NET_M))]
        gap_under_net_m: Option<f64>,
        /// Whether the map leaves it out; it counts all the same, and paper shows it.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        hidden: bool,
        /// Whether the hand on the map leaves it where it is.
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        locked: bool,
    }

    /// A line of netting that hangs on a run's.
    Branch {
        /// Where it hangs, metres along the run's outline.
        from_m: f64,
        /// Its own line, from that place on.
        outline: Vec<Point>,
        /// Ids of its nets in order, from the run on.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        nets: Vec<String>,
        /// Stretches of other leakage, metres along its own line; of overlapping ones the later counts.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        leakage_zones: Vec<LeakageZone>,
        /// Faults that are there or tried, at the nearest place of its own line.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        faults: Vec<Fault>,
    }

    /// A run's earth stakes: in line, or each at its place.
    EarthStakes {
        /// How many stand in line.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::EARTH_STAKE_COUNT))]
        count: Option<u32>,
        /// Distance between neighbours in line, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::EARTH_STAKE_SPACING_M))]
        spacing_m: Option<f64>,
        /// Where the first of the line stands.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        at: Option<Point>,
        /// Where each stands: all there are; `count` and `at` are passed over, and `spacing_m` is for one more.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        places: Vec<Point>,
        /// How long the lead from the energizer to the nearest stake is, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::EARTH_LEAD_M))]
        lead_m: Option<f64>,
    }

    /// A stretch of the line with a leakage of its own.
    LeakageZone {
        /// Start along the outline, metres.
        from_m: f64,
        /// End along the outline, metres; before the start where it runs over the first vertex.
        to_m: f64,
        /// Leakage, siemens per metre.
        s_per_m: f64,
    }

    /// A brace that the keeper has decided on.
    StatedBrace {
        /// The corner that it holds.
        at: Point,
        /// What it is made of.
        #[serde(default)]
        kind: BraceKind,
        /// Distance from the vertex to its stake, metres.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        stand_off_m: Option<f64>,
        /// Angle of the guy to the ground, degrees; left out, as the stand-off makes it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        guy_angle_deg: Option<f64>,
        /// Height at which the guy is tied to its post, metres; left out, as the store says.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        guy_height_m: Option<f64>,
        /// Pegs in line; left out, as the store says.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pegs: Option<u32>,
        /// Length of a peg, metres; left out, the store's stake.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        peg_length_m: Option<f64>,
        /// Diameter of a peg, metres; left out, the store's stake.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        peg_diameter_m: Option<f64>,
    }

    /// A fault at a place.
    Fault {
        /// Where.
        at: Point,
        /// What.
        kind: FaultKind,
        /// Its resistance, ohms, for a short or a join.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        ohm: Option<f64>,
        /// How many live lines are broken, for broken lines.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        lines: Option<u32>,
        /// What a short is made of; it changes no figure.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        cause: Option<FaultCause>,
    }
}
