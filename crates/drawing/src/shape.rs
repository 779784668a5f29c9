//! What a drawing is made of: shapes in metres, each with a role and, where it can be picked, its thing.
//!
//! Nothing here knows of a screen: sizes in pixels, colours and what is left out at a distance are decided
//! when a [`Drawing`] is inked for a view.

use plan::{DoorSide, FaultKind, HazardKind, Point, WallKind};

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
    /// A post on a run's line.
    Post {
        /// The run.
        run: usize,
        /// Its place in the lay's posts.
        post: usize,
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

    /// The whole that it is a corner, a side, an end or a door of; what is none of those is a whole itself.
    pub fn whole(self) -> Self {
        match self {
            Self::RunCorner { run, .. } | Self::RunSide { run, .. } => Self::Run { run },
            Self::BoundaryCorner { .. } | Self::BoundarySide { .. } => Self::Boundary,
            Self::KeepOutCorner { keep_out, .. } | Self::KeepOutSide { keep_out, .. } => Self::KeepOut { keep_out },
            Self::HazardCorner { hazard, .. } => Self::Hazard { hazard },
            Self::WallCorner { wall, .. } => Self::Wall { wall },
            Self::ShadeCorner { shade, .. } | Self::ShadeSide { shade, .. } => Self::Shade { shade },
            Self::CoopDoor => Self::Coop { coop: 0 },
            one => one.hanging().or(one.zone()).unwrap_or(one),
        }
    }

    /// The run that it belongs to.
    pub fn run(self) -> Option<usize> {
        match self {
            Self::RunCorner { run, .. }
            | Self::RunSide { run, .. }
            | Self::Run { run }
            | Self::Post { run, .. }
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

/// The strokes of a [`Role::GoesOver`] about its middle, pixels: the ground, and the post that leans over it.
pub const GOES_OVER: [[[f64; 2]; 2]; 2] = [[[-5.5, 4.0], [5.5, 4.0]], [[-2.5, 4.0], [3.5, -4.0]]];

/// What a shape stands for, with the little that its symbol needs to know.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Role {
    /// Ground of the paddock.
    Paddock,
    /// Its outline.
    PaddockEdge,
    /// Ground inside a run.
    RunGround,
    /// The mown strip.
    Strip,
    /// A line to walk behind the mower.
    StripPass,
    /// Water that a run keeps off.
    Water,
    /// Any other place that a run keeps off.
    KeepOut,
    /// The clearance kept from one.
    Clearance {
        /// Whether it is kept from water.
        water: bool,
    },
    /// A thing that can hurt.
    Hazard {
        /// Its kind.
        kind: HazardKind,
    },
    /// A coop; its mark points along its length.
    Coop {
        /// Length, metres.
        length_m: f64,
        /// Width, metres.
        width_m: f64,
        /// In which wall its door is.
        door: DoorSide,
    },
    /// The foot of a coop's ramp; its mark points out of the door.
    Door {
        /// How far it is off the coop's middle, metres.
        off_m: f64,
    },
    /// The picture beneath the map: no ink of the drawing's.
    Underlay,
    /// A wall, a hedge or a permanent fence.
    Wall {
        /// What it is.
        kind: WallKind,
        /// Whether it holds birds.
        holds: bool,
    },
    /// Shade.
    Shade,
    /// Where rolls are put down.
    Drop,
    /// A run that could not be laid: its outline as stated.
    Outline,
    /// Netting on the line; a path with the outer side to its right.
    Net,
    /// Line without netting; the outer side is to its right.
    Gap,
    /// Netting doubled back along its last panels; the outer side is to its right.
    Spare,
    /// A post of the netting that is doubled back; its mark points inward.
    SparePost,
    /// A post; its mark points outward, as do those of join, end and corner.
    Post {
        /// Its place in the lay's posts.
        number: usize,
    },
    /// Where a roll is begun, and the way it is rolled out.
    Roll {
        /// Its place in the order of setting up, from 1.
        number: usize,
        /// Towards the outside of the run, radians, counter-clockwise from east.
        outward_rad: f64,
    },
    /// A corner to draw in where hardly any netting is spare; its mark points to where.
    DrawIn,
    /// Two posts of neighbouring nets, tied.
    Join,
    /// The last post where the netting ends.
    EndPost,
    /// A corner of the line.
    Corner {
        /// Its number, from 1.
        number: usize,
        /// How far its brace stands outside, metres; `None` where there is none or it stands inside.
        guy_m: Option<f64>,
    },
    /// A guy line from a post to its stake.
    Guy {
        /// Whether it is needed or stands, rather than advised.
        needed: bool,
    },
    /// A brace's stake; its mark points away from the post.
    Brace {
        /// Whether it is needed or stands, rather than advised.
        needed: bool,
        /// Whether it stands and is too weak.
        weak: bool,
        /// From its post, metres.
        guy_m: f64,
    },
    /// The live lead, from the energizer to the net.
    Lead,
    /// Where the lead meets the net.
    Feed,
    /// The energizer.
    Energizer,
    /// The lead from the energizer to its earth stakes.
    EarthLead,
    /// One earth stake.
    EarthStake,
    /// The way from the gateway to a gate, or from a coop to its gate.
    Way,
    /// Where the end of a shut gate's leaf goes when it opens, from where it stands shut.
    Swing {
        /// What it hangs on.
        hinge: Point,
    },
    /// Where panels lie that were laid back; the outer side is to its right.
    LaidBack,
    /// A post that is pulled to open a gate; its mark points outward.
    PulledPost,
    /// A pin; its mark points inward.
    Pin {
        /// Whether it is kept.
        kept: bool,
    },
    /// A fault of the fence; its mark points outward.
    Fault {
        /// What is wrong.
        kind: FaultKind,
    },
    /// A stretch of other grass along the net; the outer side is to its right.
    Zone {
        /// Whether it leaks more than the rest of the line.
        more: bool,
    },
    /// An end of such a stretch; its mark points outward.
    ZoneEnd,
    /// The way into the paddock.
    Gateway,
    /// A reading: its label points to where its sign stands.
    Reading {
        /// Whether it was taken at an earth stake, whose own sign hangs there, and not on the net.
        on_earth: bool,
    },
    /// A spot whose height is known.
    Height,
    /// Where the ground leaves a gap under the net; its mark points inward, as does a ridge's.
    Dip,
    /// Where the ground rises into the net.
    Ridge,
    /// Where a post beside the net's own goes.
    FurtherPost,
    /// A post, or two at a join, that goes over first in the wind; its mark points outward.
    GoesOver,
    /// A finding's place; its mark points to where there is room.
    Tag {
        /// How much it weighs.
        severity: care::Severity,
        /// Whether it stands at a corner, beside the corner's plate.
        at_corner: bool,
    },
    /// A vertex of a stated outline: picked and dragged, and drawn while the outline is in hand.
    Handle,
    /// A side of a stated outline: likewise.
    Side,
    /// Words.
    Words {
        /// What they tell.
        about: About,
    },
}

/// What words on the map tell, which decides their weight, colour and place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum About {
    /// The weakest post: a plate on a leader, outward.
    Weakest,
    /// What is supposed of a fault or a stretch of grass: likewise, while it is picked.
    WhatIf,
    /// A run: its name, its ground, and its birds where it has a coop.
    Run {
        /// Its number, from 1.
        number: usize,
        /// Whether it has a name that says more than its number.
        named: bool,
        /// Diameter of the largest circle on its ground, metres.
        room_m: f64,
        /// How far a coop in the middle reaches up, metres; 0 where there is none.
        coop_m: f64,
    },
    /// A side of a run: its length and panels, or its length alone, along the inner side.
    Side {
        /// Its length, metres.
        length_m: f64,
        /// Half the strip's width, metres: the words keep off it where they can.
        strip_m: f64,
    },
    /// A hazard.
    Hazard {
        /// Its kind.
        kind: HazardKind,
    },
    /// A keep-out or water.
    KeepOut {
        /// How far it reaches up and down from its middle, metres.
        half_m: f64,
    },
    /// A wall, a hedge or a permanent fence: its name.
    Wall,
    /// Words that the keeper wrote.
    Label {
        /// Whether they are large.
        large: bool,
    },
    /// An energizer.
    Energizer,
    /// How high a spot is.
    Height,
    /// Volts at a post.
    Post {
        /// Half the strip's width, metres, as for a side.
        strip_m: f64,
    },
}

/// Which words go first where room is short.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Priority {
    /// Dangers.
    Danger,
    /// The weakest post.
    Weakest,
    /// Runs.
    Run,
    /// Sides.
    Side,
    /// What stands on the ground.
    Ground,
    /// Volts at posts.
    Post,
    /// How high spots are: they step back behind everything else.
    Height,
}

/// The form of a shape, metres.
#[derive(Clone, Debug, PartialEq)]
pub enum Form {
    /// An area: its outer ring, then its holes, not closed by a repeated place.
    Area {
        /// The rings.
        rings: Vec<Vec<Point>>,
    },
    /// A path.
    Path {
        /// Its places.
        points: Vec<Point>,
        /// Whether it returns to its start.
        closed: bool,
        /// Volts at each place, kilovolts; empty where there are none.
        kv: Vec<f64>,
    },
    /// A sign at a place.
    Mark {
        /// The place.
        at: Point,
        /// Where it points, radians, counter-clockwise from east.
        toward_rad: f64,
    },
    /// Words at a place.
    Label {
        /// The place.
        at: Point,
        /// Where they may be moved, radians, counter-clockwise from east.
        toward_rad: f64,
        /// What they say; the role tells whether these are lines or ever shorter wordings.
        texts: Vec<String>,
        /// Which go first.
        priority: Priority,
    },
}

/// One thing drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Shape {
    /// What it stands for.
    pub role: Role,
    /// Its form.
    pub form: Form,
    /// What it is when picked.
    pub thing: Option<Thing>,
    /// The run that it is part of.
    pub run: Option<usize>,
}

/// A plan drawn: shapes in the order in which they are painted, words last.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawing {
    /// The shapes.
    pub shapes: Vec<Shape>,
    /// How many of them each part of the map drew, in order.
    pub(crate) parts: Vec<usize>,
    /// Volts asked for at the weakest post, kilovolts: the middle of the volts' scale.
    pub target_kv: f64,
    /// The run that is worked on: of options that share ground, it is shown and the others are ghosts. What is picked
    /// in a view goes before it; where it is `None` the first of them is shown.
    pub foremost: Option<usize>,
    /// What is picked beside what is picked in a view.
    pub chosen: Vec<Thing>,
    /// The words that signs are told in.
    pub words: words::Words,
    /// For each run, the runs that share ground with it.
    pub rivals: Vec<Vec<usize>>,
    /// For each run, whether it is an option that waits for the netting of a side that stands.
    pub waiting: Vec<bool>,
    /// For each run, whether it is one of several ways that things could go.
    pub options: Vec<bool>,
}

impl Drawing {
    /// For each run, whether it is shown as a ghost: an option that shares ground with a run that is shown, or that
    /// waits for the netting of a side that stands.
    pub(crate) fn ghosts(&self, picked: Option<Thing>) -> Vec<bool> {
        let lead = picked.and_then(Thing::run).or(self.foremost);
        let mut order: Vec<usize> = (0..self.rivals.len()).collect();
        order.sort_by_key(|&run| (Some(run) != lead, self.options[run], run));
        let mut shown = vec![false; self.rivals.len()];
        for run in order {
            let waits = || self.waiting.get(run) == Some(&true);
            let shares = || self.rivals[run].iter().any(|&rival| shown.get(rival) == Some(&true));
            shown[run] = !self.options[run] || Some(run) == lead || !(shares() || waits());
        }
        shown.into_iter().map(|shown| !shown).collect()
    }

    /// The least east and north and the greatest, over every finite place; `None` where nothing is drawn.
    pub fn bounds(&self) -> Option<(Point, Point)> {
        let mut bounds: Option<(Point, Point)> = None;
        let mut add = |place: &Point| {
            if !(place.east_m.is_finite() && place.north_m.is_finite()) {
                return;
            }
            let (low, high) = bounds.get_or_insert((*place, *place));
            *low = Point::new(low.east_m.min(place.east_m), low.north_m.min(place.north_m));
            *high = Point::new(high.east_m.max(place.east_m), high.north_m.max(place.north_m));
        };
        // The ground goes by what is stated on it, however far a picture reaches.
        for shape in self.shapes.iter().filter(|shape| shape.role != Role::Underlay) {
            match &shape.form {
                Form::Area { rings } => rings.iter().flatten().for_each(&mut add),
                Form::Path { points, .. } => points.iter().for_each(&mut add),
                Form::Mark { at, .. } | Form::Label { at, .. } => add(at),
            }
        }
        bounds
    }
}
