//! The set-up order and the taking down as values: steps with their places, metres and minutes.

use plan::{MowWay, Point};

use crate::Lay;

/// A piece of work from the first step to the last.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Work {
    /// Where the rolls lie before setting up, or are laid after taking down.
    pub drop_at: Point,
    /// Whether that place is assumed.
    pub drop_assumed: bool,
    /// How far the energizer stands from the feed point, metres; `None` where it stands at it.
    pub energizer_apart_m: Option<f64>,
    /// The rolls in the order in which they are worked on.
    pub order: Vec<RollWork>,
    /// The steps; the number of a step is its place here and one.
    pub steps: Vec<Step>,
    /// Metres walked with empty hands.
    pub walk_m: f64,
    /// Metres walked with a roll in hand.
    pub carry_m: f64,
    /// Minutes of practised hands, mowing apart.
    pub minutes_low: f64,
    /// Minutes the first time, mowing apart.
    pub minutes_high: f64,
    /// No order of the rolls takes practised hands fewer minutes.
    pub minutes_bound: f64,
    /// Minutes behind the mower, which are not in the others; 0 where nothing is mown.
    pub mow_minutes: f64,
}

impl Work {
    /// The rolls in their order of which something stands on the line, with the part of the chain that does, metres. One
    /// that is wholly left over is worked on as well, and has no place of its own on the map.
    pub fn standing<'a>(&'a self, lay: &'a Lay) -> impl Iterator<Item = (&'a RollWork, [f64; 2])> {
        self.order.iter().filter_map(|roll| Some((roll, lay.stands_m(roll.net)?)))
    }
}

/// One roll at work: from which end to which.
#[derive(Clone, Debug, PartialEq)]
pub struct RollWork {
    /// Its net, from 0 in the chain's order.
    pub net: usize,
    /// How it is spoken of: its place in the order of setting up, from 1.
    pub number: usize,
    /// Its kind.
    pub kind: String,
    /// The trip that it goes with, from 0.
    pub trip: usize,
    /// Where rolling out or folding begins.
    pub from: Point,
    /// Where it ends.
    pub to: Point,
    /// Whether that is in the chain's direction.
    pub forward: bool,
}

/// One step of the work.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What is done.
    pub what: Doing,
    /// Where: the places in the order in which they are come to.
    pub places: Vec<Point>,
    /// The net that it is done to, from 0 in the chain's order.
    pub net: Option<usize>,
    /// Metres walked with empty hands, the way there included.
    pub walk_m: f64,
    /// Metres walked with a roll in hand.
    pub carry_m: f64,
    /// Minutes of practised hands, walking included; those of [`Doing::Mow`] are the mower's.
    pub minutes: f64,
}

/// What is done in a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doing {
    /// Walk the line with the energizer off; look up and down.
    Look,
    /// Set canes at the corners on that walk.
    Canes,
    /// Mow the strip.
    Mow(MowWay),
    /// After mowing along the standing net: set it up again in the middle of the swath.
    Restand,
    /// Carry so many rolls from where they lie.
    Carry(usize),
    /// Roll the net out.
    RollOut,
    /// Go back and tread in its posts.
    TreadIn,
    /// Tie and clip its joins to nets that stand.
    Tie,
    /// Brace corners and ends on a walk round the line.
    Brace,
    /// Set further posts at dips and ridges.
    FurtherPosts,
    /// Clip on the energizer and switch it on.
    Power,
    /// Read at the far end.
    FarReading,
    /// Only now the birds.
    Birds,
    /// Switch off, unclip, test dead.
    PowerOff,
    /// Open the gate join.
    OpenGate,
    /// Go to the net: its joins are open already.
    GoTo,
    /// Untie the net's joins to nets that still stand.
    Untie,
    /// Draw its braces, fold it panel by panel and tie the bundle.
    Fold,
    /// Carry so many rolls to where the next run begins.
    CarryAway(usize),
}

impl Doing {
    /// Its stable id in the report.
    pub fn id(self) -> &'static str {
        match self {
            Self::Look => "look",
            Self::Canes => "canes",
            Self::Mow(_) => "mow",
            Self::Restand => "restand",
            Self::Carry(_) => "carry",
            Self::RollOut => "roll_out",
            Self::TreadIn => "tread_in",
            Self::Tie => "tie",
            Self::Brace => "brace",
            Self::FurtherPosts => "further_posts",
            Self::Power => "power",
            Self::FarReading => "far_reading",
            Self::Birds => "birds",
            Self::PowerOff => "power_off",
            Self::OpenGate => "open_gate",
            Self::GoTo => "go_to",
            Self::Untie => "untie",
            Self::Fold => "fold",
            Self::CarryAway(_) => "carry_away",
        }
    }

    /// Every id, in the order of the work.
    pub const IDS: [&'static str; 19] = [
        "look",
        "canes",
        "mow",
        "carry",
        "roll_out",
        "tread_in",
        "tie",
        "restand",
        "brace",
        "further_posts",
        "power",
        "far_reading",
        "birds",
        "power_off",
        "open_gate",
        "go_to",
        "untie",
        "fold",
        "carry_away",
    ];
}
