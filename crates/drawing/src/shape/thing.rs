//! What can be picked on the map.

/// Something on the map that can be picked. Numbers are places in the plan's own lists, from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Thing {
    /// A corner of a run's outline.
    RunCorner {
        /// The run.
        run: usize,
        /// The vertex in the run's stated outline.
        vertex: usize,
    },
    /// A side of a run's outline, from its vertex to the next.
    RunSide {
        /// The run.
        run: usize,
        /// The vertex where it starts.
        side: usize,
    },
    /// A run: its ground.
    Run {
        /// The run.
        run: usize,
    },
    /// A corner of the paddock.
    BoundaryCorner {
        /// The vertex.
        vertex: usize,
    },
    /// A side of the paddock.
    BoundarySide {
        /// The vertex where it starts.
        side: usize,
    },
    /// The paddock.
    Boundary,
    /// A corner of a keep-out.
    KeepOutCorner {
        /// The keep-out.
        keep_out: usize,
        /// The vertex.
        vertex: usize,
    },
    /// A side of a keep-out.
    KeepOutSide {
        /// The keep-out.
        keep_out: usize,
        /// The vertex where it starts.
        side: usize,
    },
    /// A keep-out.
    KeepOut {
        /// The keep-out.
        keep_out: usize,
    },
    /// A point of a hazard's path.
    HazardCorner {
        /// The hazard.
        hazard: usize,
        /// The point.
        vertex: usize,
    },
    /// A hazard: its path.
    Hazard {
        /// The hazard.
        hazard: usize,
    },
    /// A coop: 0 is the plan's coop where it has one, then the other coops.
    Coop {
        /// The coop.
        coop: usize,
    },
    /// A spot height.
    Height {
        /// Its place in the plan's heights.
        height: usize,
    },
    /// A known place that corners are taped from.
    TapePoint {
        /// Its place in the plan's tape points.
        point: usize,
    },
    /// A post on a run's line.
    Post {
        /// The run.
        run: usize,
        /// Its place in the lay's posts.
        post: usize,
    },
    /// The brace of a corner, or of an end of the netting: its stake.
    Brace {
        /// The run.
        run: usize,
        /// The corner's place in the lay's corners.
        corner: usize,
    },
    /// Where a run's live lead meets its net.
    Feed {
        /// The run.
        run: usize,
    },
    /// A run's energizer.
    Energizer {
        /// The run.
        run: usize,
    },
    /// A run's earth stakes, all together.
    EarthStakes {
        /// The run.
        run: usize,
    },
    /// One of a run's earth stakes.
    EarthStake {
        /// The run.
        run: usize,
        /// Its place among them.
        stake: usize,
    },
    /// A reading that has a sign.
    Reading {
        /// The run that it was taken on.
        run: usize,
        /// Its place in the plan's readings.
        reading: usize,
    },
    /// A gate of a run.
    Gate {
        /// The run.
        run: usize,
        /// Its place in the run's gates.
        gate: usize,
    },
    /// A pin of a run.
    Pin {
        /// The run.
        run: usize,
        /// Its place in the run's pins.
        pin: usize,
    },
    /// A fault of a run, there or tried.
    Fault {
        /// The run.
        run: usize,
        /// The branch that it is on; `None` on the run's own line.
        branch: Option<usize>,
        /// Its place in that line's faults.
        fault: usize,
    },
    /// A stretch of a run with a leakage of its own.
    Zone {
        /// The run.
        run: usize,
        /// The branch that it is on; `None` on the run's own line.
        branch: Option<usize>,
        /// Its place in that line's stretches.
        zone: usize,
    },
    /// An end of such a stretch.
    ZoneEnd {
        /// The run.
        run: usize,
        /// The branch that it is on; `None` on the run's own line.
        branch: Option<usize>,
        /// The stretch's place in that line's stretches.
        zone: usize,
        /// Whether it is where the stretch ends, and not where it starts.
        last: bool,
    },
    /// Netting that hangs on a run.
    Branch {
        /// The run.
        run: usize,
        /// Its place in the run's branches.
        branch: usize,
    },
    /// A corner of a branch's line; its first is where it hangs.
    BranchCorner {
        /// The run.
        run: usize,
        /// Its place in the run's branches.
        branch: usize,
        /// The vertex.
        vertex: usize,
    },
    /// A side of a branch's line.
    BranchSide {
        /// The run.
        run: usize,
        /// Its place in the run's branches.
        branch: usize,
        /// The vertex where it starts.
        side: usize,
    },
    /// The gateway.
    Gateway,
    /// A point of a wall's path.
    WallCorner {
        /// The wall.
        wall: usize,
        /// The point.
        vertex: usize,
    },
    /// A wall, a hedge or a permanent fence.
    Wall {
        /// Its place in the plan's walls.
        wall: usize,
    },
    /// A corner of shade.
    ShadeCorner {
        /// The shade.
        shade: usize,
        /// The vertex.
        vertex: usize,
    },
    /// A side of shade.
    ShadeSide {
        /// The shade.
        shade: usize,
        /// The vertex where it starts.
        side: usize,
    },
    /// Shade.
    Shade {
        /// Its place in the ground's shade.
        shade: usize,
    },
    /// A corner of damp ground.
    DampCorner {
        /// The damp ground.
        damp: usize,
        /// The vertex.
        vertex: usize,
    },
    /// A side of damp ground.
    DampSide {
        /// The damp ground.
        damp: usize,
        /// The vertex where it starts.
        side: usize,
    },
    /// Damp ground.
    Damp {
        /// Its place in the ground's damp places.
        damp: usize,
    },
    /// Words that the keeper wrote.
    Label {
        /// Their place in the plan's labels.
        label: usize,
    },
    /// Where a run's rolls are put down.
    Drop {
        /// The run.
        run: usize,
    },
    /// The door of the plan's coop.
    CoopDoor,
    /// The picture beneath the map.
    Underlay,
    /// A finding.
    Finding {
        /// The run; `None` for the plan as a whole.
        run: Option<usize>,
        /// Its place among them.
        finding: usize,
    },
}

impl Thing {
    /// What it is a corner, a side, an end or a door of; itself where it is whole.
    pub fn whole(self) -> Self {
        match self {
            Self::RunCorner { run, .. } | Self::RunSide { run, .. } => Self::Run { run },
            Self::BoundaryCorner { .. } | Self::BoundarySide { .. } => Self::Boundary,
            Self::KeepOutCorner { keep_out, .. } | Self::KeepOutSide { keep_out, .. } => Self::KeepOut { keep_out },
            Self::HazardCorner { hazard, .. } => Self::Hazard { hazard },
            Self::WallCorner { wall, .. } => Self::Wall { wall },
            Self::ShadeCorner { shade, .. } | Self::ShadeSide { shade, .. } => Self::Shade { shade },
            Self::DampCorner { damp, .. } | Self::DampSide { damp, .. } => Self::Damp { damp },
            Self::CoopDoor => Self::Coop { coop: 0 },
            whole => self.zone().or_else(|| self.hanging()).unwrap_or(whole),
        }
    }

    /// The stretch of grass that it is, or that it is an end of.
    pub fn zone(self) -> Option<Self> {
        match self {
            Self::Zone { .. } => Some(self),
            Self::ZoneEnd { run, branch, zone, .. } => Some(Self::Zone { run, branch, zone }),
            _ => None,
        }
    }

    /// The branch that it is, or that it is a corner or a side of.
    pub fn hanging(self) -> Option<Self> {
        match self {
            Self::Branch { run, branch }
            | Self::BranchCorner { run, branch, .. }
            | Self::BranchSide { run, branch, .. } => Some(Self::Branch { run, branch }),
            _ => None,
        }
    }

    /// The run that it belongs to.
    pub fn run(self) -> Option<usize> {
        match self {
            Self::RunCorner { run, .. }
            | Self::RunSide { run, .. }
            | Self::Run { run }
            | Self::Post { run, .. }
            | Self::Brace { run, .. }
            | Self::Reading { run, .. }
            | Self::Feed { run }
            | Self::Drop { run }
            | Self::Gate { run, .. }
            | Self::Pin { run, .. }
            | Self::Fault { run, .. }
            | Self::Zone { run, .. }
            | Self::ZoneEnd { run, .. }
            | Self::Branch { run, .. }
            | Self::BranchCorner { run, .. }
            | Self::BranchSide { run, .. }
            | Self::Energizer { run }
            | Self::EarthStakes { run }
            | Self::EarthStake { run, .. } => Some(run),
            Self::Finding { run, .. } => run,
            _ => None,
        }
    }
}
