//! What shapes stand for: the sign that each gets, and what words tell.

use plan::{DoorSide, FaultKind, HazardKind, Point, TapeLetter, WallKind};

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
    /// Damp ground.
    Damp,
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
    /// Where a run's earth stakes would earth best: suggested, not stated.
    EarthBest,
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
    /// A known place that corners are taped from.
    TapePoint {
        /// Its letter; `None` where others count.
        letter: Option<TapeLetter>,
    },
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
