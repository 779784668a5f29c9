//! Pins, gates and the gateway, in version 1.

use crate::defaults;
use crate::file::mirror::mirrored;
use crate::model::{GateKind, PinKind, Point};

mirrored! {
    /// Something fixed of how the nets fall; the rest is chosen round it.
    Pin {
        /// What is pinned: the chain's start, a join, a corner that has to be on a post, or a kind of net.
        kind: PinKind,
        /// Where; the line's nearest place counts, and for a corner the nearest corner within a metre.
        at: Point,
        /// Id of the kind of net, for a pinned net.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        net: Option<String>,
    }

    /// A place where the run opens: a join is untied and panels beside it are laid back. Drawn shut.
    Gate {
        /// Who goes through.
        #[serde(default)]
        kind: GateKind,
        /// Where; the nearest join is opened. Left out, the tool chooses the join.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        at: Option<Point>,
        /// Clear width, metres; left out, 1 on foot, 2.5 for wheels, the coop's width and 1 for a coop.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schemars(extend("default" = defaults::FOOT_GATE_M))]
        width_m: Option<f64>,
    }

    /// The way into the paddock.
    Gateway {
        /// Where.
        at: Point,
    }
}
