//! What follows from a plan, as values: lengths in metres, forces in newtons, volts in kilovolts.
//!
//! A part is `None` where it cannot be computed; the [`Trouble`] beside it says why. Nothing here is
//! ever saved.

use std::collections::BTreeMap;

use plan::Point;

use crate::bracing::{Bracing, Kit, SoilFound};
use crate::gates::GateWork;
use crate::growth::GrassDays;
use crate::pins::PinWork;
use crate::setting_up::Work;
use crate::slope::Slope;

/// Everything that follows from a plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Workup {
    /// Each run of the plan, in its order.
    pub runs: Vec<RunWorkup>,
    /// What concerns the plan as a whole.
    pub troubles: Vec<Trouble>,
    /// Area of the paddock, square metres; 0 where none is stated.
    pub paddock_m2: f64,
    /// Length of the paddock's boundary, metres; 0 where none can be built.
    pub paddock_round_m: f64,
    /// Nets of each kind that the standing runs use.
    pub standing: BTreeMap<String, u32>,
    /// The soil that the braces reckon with.
    pub soil: Option<SoilFound>,
}

impl Workup {
    /// The run of that id.
    pub fn run(&self, id: &str) -> Option<&RunWorkup> {
        self.runs.iter().find(|run| run.id == id)
    }
}

/// Everything that follows for one run.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct RunWorkup {
    /// The run's id.
    pub id: String,
    /// Length of its line in plan, metres, with or without nets.
    pub line_m: Option<f64>,
    /// Area that it encloses, square metres; 0 for an open line.
    pub area_m2: Option<f64>,
    /// Its line and nets.
    pub lay: Option<Lay>,
    /// Where hardly any netting is spare: the corner to draw in.
    pub draw_in: Option<crate::DrawIn>,
    /// Its corners in detail, and the wind on it.
    pub bracing: Option<Bracing>,
    /// The ground along its line; `None` where nothing is known of its heights.
    pub slope: Option<Slope>,
    /// The ground to mow.
    pub strip: Option<Strip>,
    /// What is still to mow of it where nets that stand have been mown for already; `None` where that is all of it.
    pub still_to_mow: Option<StillToMow>,
    /// The lines walked behind the mower.
    pub mow_walk: Option<geometry::Passes>,
    /// When the grass will touch.
    pub grass: Option<GrassDays>,
    /// The order in which it is set up.
    pub set_up: Option<Work>,
    /// The order in which it is taken down.
    pub taking_down: Option<Work>,
    /// Its gates, in the order stated; empty where the nets could not be laid.
    pub gates: Vec<GateWork>,
    /// The pulse.
    pub volts: Option<Volts>,
    /// What is wrong with it.
    pub troubles: Vec<Trouble>,
}

impl RunWorkup {
    /// Whether a pin's cost or the way to a gate is yet to be worked out.
    pub fn waits(&self) -> bool {
        let pins = self.lay.iter().flat_map(|lay| &lay.pins);
        self.gates.iter().any(crate::gates::GateWork::waits) || pins.into_iter().any(|pin| pin.waits)
    }
}

/// How the nets fall on the line.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Lay {
    /// Whether the outline closes.
    pub closed: bool,
    /// The vertices, without repeats, with each one's place along the line, metres. Along the line is along the ground
    /// wherever heights are known of it.
    pub vertices: Vec<(Point, f64)>,
    /// Length of the line along the ground, metres.
    pub line_m: f64,
    /// Area enclosed, square metres; 0 for an open line.
    pub area_m2: f64,
    /// Netting beyond the line, metres.
    pub spare_m: f64,
    /// Line without netting, metres.
    pub short_m: f64,
    /// Nets on the line by kind.
    pub nets_needed: BTreeMap<String, u32>,
    /// Where the chain starts along the line, metres.
    pub start_m: f64,
    /// Whether the chain runs against the outline.
    pub reversed: bool,
    /// Sum of the distances from corners to posts, metres.
    pub corner_miss_m: f64,
    /// A proven lower bound of that sum, where the orders were too many to try.
    pub corner_miss_bound_m: Option<f64>,
    /// What would have been best, where the start is fixed or something is pinned.
    pub best: Option<Best>,
    /// What became of the pins, in the order stated.
    pub pins: Vec<PinWork>,
    /// The nets in the chain's order.
    pub nets: Vec<LaidNet>,
    /// The posts on the line, in the chain's order.
    pub posts: Vec<Post>,
    /// The posts that are folded back beyond the line's end.
    pub spare_posts: Vec<Post>,
    /// Corners along the outline, then ends of the netting.
    pub corners: Vec<Corner>,
    /// Whether the corners could be judged; where not, `corners` and `bends` are empty.
    pub corners_judged: bool,
    /// Gentle bends whose posts will lean.
    pub bends: Vec<Bend>,
    /// Lines of netting that hang on it, as far as they could be laid.
    pub branches: Vec<LaidBranch>,
    /// Minutes to set it all up.
    pub set_up_minutes: f64,
}

impl Lay {
    /// The same with branches: their nets are counted, with so many minutes each.
    pub(crate) fn with_branches(mut self, branches: Vec<LaidBranch>, minutes_a_net: f64) -> Self {
        for net in branches.iter().flat_map(|branch| &branch.nets) {
            *self.nets_needed.entry(net.kind.clone()).or_insert(0) += 1;
            self.set_up_minutes += minutes_a_net;
        }
        self.branches = branches;
        self
    }

    /// The post that is weakest: on the line, or on a branch.
    pub fn weakest(&self, weakest: &Weakest) -> Option<&Post> {
        let posts = match weakest.branch {
            None => &self.posts,
            Some(branch) => &self.branches.get(branch)?.posts,
        };
        posts.get(weakest.post)
    }

    /// Joins between nets on the line, a ring's closing one included.
    pub fn joins(&self) -> usize {
        let all: usize = self.nets_needed.values().map(|&count| count as usize).sum();
        let hanging: usize = self.branches.iter().map(|branch| branch.nets.len()).sum();
        let on_line = all.saturating_sub(hanging);
        let ring = self.closed && self.short_m < geometry::MEET_M;
        on_line.saturating_sub(usize::from(!ring))
    }

    /// Whether the inside of a ring lies to the left of its outline as stated.
    pub fn left_is_inside(&self) -> bool {
        let places: Vec<geometry::Point> = self.vertices.iter().map(|vertex| crate::point(vertex.0)).collect();
        geometry::Outline::closed(&places).is_counter_clockwise()
    }

    /// Where nets join on the line, along it: metres and places; a ring's closing join among them.
    pub fn join_places(&self) -> Vec<(f64, Point)> {
        let between = self.posts.windows(2).filter(|pair| pair[0].net != pair[1].net).map(|pair| &pair[1]);
        let ring = self.closed && self.short_m < geometry::MEET_M;
        let closing = self.posts.first().filter(|_| ring);
        let mut places: Vec<(f64, Point)> = between.chain(closing).map(|post| (post.along_m, post.at)).collect();
        places.sort_by(|a, b| a.0.total_cmp(&b.0));
        places
    }

    /// Corners and ends that have a brace or need one.
    pub fn braces(&self) -> usize {
        self.corners.iter().filter(|corner| corner.needs_brace()).count()
    }

    /// Corners for which a brace is advised beside those.
    pub fn braces_advised(&self) -> usize {
        self.corners.iter().filter(|corner| corner.brace_advised()).count()
    }

    /// Corners on posts, and all corners; ends are neither.
    pub fn corners_on_posts(&self) -> (usize, usize) {
        let corners = || self.corners.iter().filter(|corner| !corner.end);
        (corners().filter(|corner| corner.to_post_m < geometry::MEET_M).count(), corners().count())
    }
}

impl Lay {
    /// The braces that are decided or have to be, by what they are made of, each with how many there are.
    pub fn kits(&self) -> Vec<(Kit, usize)> {
        let mut kits: Vec<(Kit, usize)> = Vec::new();
        for corner in self.corners.iter().filter(|corner| corner.needs_brace()) {
            match kits.iter_mut().find(|(kit, _)| *kit == corner.kit) {
                Some((_, count)) => *count += 1,
                None => kits.push((corner.kit, 1)),
            }
        }
        kits
    }
}

impl Corner {
    /// Whether the net cuts across it, for it stands on no post; an end does not.
    pub fn is_between_posts(&self) -> bool {
        !self.end && self.to_post_m >= geometry::MEET_M
    }

    /// Whether a brace is decided here or has to be.
    pub fn needs_brace(&self) -> bool {
        self.braced || self.verdict == Verdict::Required
    }

    /// Whether the brace that the keeper stated here is too weak.
    pub fn brace_too_weak(&self) -> bool {
        self.braced && !self.holds
    }

    /// Whether a brace is advised here and not decided.
    pub fn brace_advised(&self) -> bool {
        !self.braced && self.verdict == Verdict::Advised
    }
}

/// The best placement, beside a fixed or pinned one.
#[derive(Clone, Debug, PartialEq)]
pub struct Best {
    /// Where its chain starts, metres along the outline.
    pub start_m: f64,
    /// Whether its chain runs against the outline.
    pub reversed: bool,
    /// Kinds of its nets in order.
    pub nets: Vec<String>,
    /// Its sum of misses, metres.
    pub corner_miss_m: f64,
}

/// One net in the chain.
#[derive(Clone, Debug, PartialEq)]
pub struct LaidNet {
    /// Its kind.
    pub kind: String,
    /// Start along the chain, metres.
    pub start_m: f64,
    /// End along the chain, metres.
    pub end_m: f64,
}

/// A line of netting that hangs on a run's. Its posts and nets are counted for themselves.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LaidBranch {
    /// Its place in the run's list of branches.
    pub branch: usize,
    /// Where it hangs along the run's outline, metres.
    pub from_m: f64,
    /// That place.
    pub at: Point,
    /// The vertices of its own line, each with its place along it, metres.
    pub vertices: Vec<(Point, f64)>,
    /// Length of its line, metres.
    pub line_m: f64,
    /// Netting beyond it, metres.
    pub spare_m: f64,
    /// Line without netting, metres.
    pub short_m: f64,
    /// Its nets, from the run on.
    pub nets: Vec<LaidNet>,
    /// Its posts on its line, from the run on.
    pub posts: Vec<Post>,
    /// Posts that are folded back.
    pub spare_posts: Vec<Post>,
}

/// One post.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Post {
    /// Where it stands.
    pub at: Point,
    /// Along the outline, metres.
    pub along_m: f64,
    /// Along the chain, metres.
    pub chain_m: f64,
    /// Its net, from 0 in the chain's order.
    pub net: usize,
    /// Its number on that net, from 0.
    pub post: usize,
}

impl Post {
    /// A post as it was placed.
    pub(crate) fn of(placed: &geometry::Post) -> Self {
        let geometry::Post { at, along_m, chain_m, net, post } = *placed;
        Self { at: crate::place(at), along_m, chain_m, net, post }
    }
}

/// Whether a corner wants a brace.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// It stands.
    #[default]
    None,
    /// It may lean.
    Advised,
    /// It will lean in.
    Required,
}

/// A corner, or an end of the netting.
#[derive(Clone, Debug, PartialEq)]
pub struct Corner {
    /// Where.
    pub at: Point,
    /// Along the outline, metres.
    pub along_m: f64,
    /// Number of its vertex, from 0; `None` for an end.
    pub vertex: Option<usize>,
    /// Exterior turn, degrees, positive.
    pub turn_deg: f64,
    /// Distance along the line to the nearest post, metres.
    pub to_post_m: f64,
    /// Pull, newtons.
    pub pull_n: f64,
    /// What its post's spikes hold, newtons.
    pub hold_n: f64,
    /// Whether the netting ends here.
    pub end: bool,
    /// Whether the run dents here, so that the stake stands inside.
    pub dents: bool,
    /// Whether it wants a brace.
    pub verdict: Verdict,
    /// Whether the keeper stated a brace here.
    pub braced: bool,
    /// Whether that brace holds as much as is wanted, as [`crate::bracing`] judges it.
    pub holds: bool,
    /// What that brace is made of, or one of the store's where none is stated.
    pub kit: Kit,
    /// The brace's stake.
    pub stake: Stake,
}

/// A brace's stake.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stake {
    /// Where it stands.
    pub at: Point,
    /// From the vertex, metres.
    pub stand_off_m: f64,
    /// What it holds, newtons.
    pub hold_n: f64,
}

/// A stretch of gentle turns whose posts pull more than they hold.
#[derive(Clone, Debug, PartialEq)]
pub struct Bend {
    /// The first post's place.
    pub first: Point,
    /// Its place along the line, metres.
    pub first_along_m: f64,
    /// The last post's place.
    pub last: Point,
    /// Its place along the line, metres.
    pub last_along_m: f64,
    /// The worst pull, newtons.
    pub pull_n: f64,
    /// What the post holds there, newtons.
    pub hold_n: f64,
}

/// The ground to mow.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Strip {
    /// Its width, metres.
    pub width_m: f64,
    /// Its area, square metres.
    pub area_m2: f64,
    /// Times round.
    pub passes: u32,
    /// Metres walked.
    pub walk_m: f64,
    /// Minutes mowed.
    pub minutes: f64,
    /// Minutes by its area, the mower's speed and width, and the share of the time in which it mows.
    pub minutes_by_area: f64,
    /// Its outlines: one exterior ring and its holes each, for drawing.
    pub polygons: Vec<Vec<Vec<Point>>>,
}

/// What of a strip is not mown yet.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct StillToMow {
    /// Its area, square metres.
    pub area_m2: f64,
    /// Metres walked behind the mower.
    pub walk_m: f64,
    /// Minutes mowed.
    pub minutes: f64,
}

/// The pulse on the fence.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Volts {
    /// Peak at the feed point, kilovolts.
    pub feed_kv: f64,
    /// Peak of the energizer's earth pole against remote earth, kilovolts.
    pub earth_kv: f64,
    /// The first rush there, kilovolts.
    pub earth_rush_kv: f64,
    /// Resistance of the earth stakes, ohms.
    pub earth_ohm: f64,
    /// Energy that leaves the energizer's capacitor, joules.
    pub energy_j: f64,
    /// How the data sheet was fitted.
    pub source: SourceFit,
    /// A sample for every post on the line in their order, then the feed, then the faults.
    pub samples: Vec<Sample>,
    /// For each of [`Lay::branches`] a sample for every one of its posts.
    pub branches: Vec<Vec<Sample>>,
    /// The weakest post; `None` where there is none.
    pub weakest: Option<Weakest>,
}

impl Volts {
    /// The weakest post on the line itself, whatever hangs on it.
    pub fn weakest_on_line(&self) -> Option<usize> {
        let posts = self.samples.iter().filter_map(|sample| match sample.of {
            SampleOf::Post(post) => Some((post, sample.peak_kv)),
            _ => None,
        });
        let least = posts.min_by(|one, other| one.1.total_cmp(&other.1))?;
        let stated = self.weakest.filter(|weakest| weakest.branch.is_none()).map(|weakest| weakest.post);
        Some(stated.unwrap_or(least.0))
    }

    /// The sample of the weakest post.
    pub fn weakest_sample(&self) -> Option<&Sample> {
        let weakest = self.weakest?;
        match weakest.branch {
            None => &self.samples,
            Some(branch) => self.branches.get(branch)?,
        }
        .get(weakest.post)
    }
}

/// An energizer's equivalent circuit.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct SourceFit {
    /// Volts on its capacitor, kilovolts.
    pub v0_kv: f64,
    /// Its resistance, ohms.
    pub r_ohm: f64,
    /// Its capacitance, nanofarads.
    pub c_nf: f64,
    /// Its inductance, millihenries; 0 where the data sheet needs none.
    pub l_mh: f64,
}

/// What a sample stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SampleOf {
    /// A post: its place in [`Lay::posts`].
    Post(usize),
    /// The feed point.
    Feed,
    /// A fault: its place in the run's list.
    Fault(usize),
}

/// Volts at a place of the line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sample {
    /// What stands there.
    pub of: SampleOf,
    /// Where.
    pub at: Point,
    /// Along the outline, metres.
    pub along_m: f64,
    /// Along the chain, metres.
    pub chain_m: f64,
    /// Peak from the live lines to remote earth, kilovolts.
    pub peak_kv: f64,
    /// The same with long wet grass all along.
    pub low_kv: f64,
    /// The same with a clean, dry net.
    pub high_kv: f64,
    /// Peak across an animal's body, kilovolts; `None` where it was not asked for.
    pub animal_kv: Option<f64>,
    /// Energy in that body, joules.
    pub animal_j: Option<f64>,
}

/// The weakest post, and the range in which it lies until a reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weakest {
    /// Its place in [`Lay::posts`], or in its branch's.
    pub post: usize,
    /// The place of its branch in [`Lay::branches`]; `None` on the line.
    pub branch: Option<usize>,
    /// Where it stands.
    pub at: Point,
    /// Along the outline, metres; on a branch, where that hangs.
    pub along_m: f64,
    /// Its peak at the stated or assumed leakage, kilovolts.
    pub peak_kv: f64,
    /// The weakest post's peak in long wet grass, kilovolts.
    pub low_kv: f64,
    /// The weakest post's peak on a clean dry net, kilovolts.
    pub high_kv: f64,
    /// Whether a reading of this run's volts exists.
    pub measured: bool,
}

/// What is wrong with an outline.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum OutlineTrouble {
    /// Fewer distinct corners than it needs.
    TooFewCorners {
        /// Distinct corners that it has.
        corners: usize,
        /// Corners that it needs.
        needs: usize,
    },
    /// More corners than are worked out.
    TooManyCorners {
        /// Corners that it has.
        corners: usize,
        /// Corners that are worked out.
        limit: usize,
    },
    /// A corner farther from the origin than is worked out.
    TooFar {
        /// The corner, from 0.
        corner: usize,
        /// Where.
        at: Point,
    },
    /// A corner at the place of the one before it; it is passed over.
    Repeated {
        /// The corner, from 0.
        corner: usize,
        /// Where.
        at: Point,
    },
    /// It crosses or touches itself.
    CrossesItself {
        /// The first side, from 0.
        side: usize,
        /// The other side, from 0.
        other: usize,
        /// Where.
        at: Point,
    },
    /// It encloses nothing.
    NoArea,
}

/// Why a part cannot be computed, or what was passed over. `care` makes findings of them.
#[derive(Clone, Debug, PartialEq)]
pub enum Trouble {
    /// An outline that cannot be built, or not as stated.
    Outline {
        /// Whose.
        shape: plan::Shape,
        /// What is wrong.
        fault: OutlineTrouble,
    },
    /// A value that nothing can be built with.
    BadValue {
        /// The key, such as `store.nets[0].length_m`.
        key: String,
        /// The value.
        value: f64,
        /// What it must be.
        must: Must,
    },
    /// Panel lengths that do not sum to the net's length.
    PanelSum {
        /// The kind of net.
        net: String,
        /// What they sum to, metres.
        sum_m: f64,
        /// The length stated, metres.
        length_m: f64,
    },
    /// A run for which the store has no net.
    NoNets,
    /// More posts in one chain than are worked out.
    TooManyPosts {
        /// Posts of all its nets.
        posts: usize,
    },
    /// Nets that are longer together than is worked out.
    ChainTooLong {
        /// Their length, metres.
        length_m: f64,
    },
    /// A branch that cannot be laid, or not where it is stated.
    Branch {
        /// Its place in the run's list, from 0.
        branch: usize,
        /// What is wrong.
        fault: BranchTrouble,
    },
    /// Figures that each may be, and that together are beyond working out.
    Beyond {
        /// What is left out.
        part: Part,
    },
    /// A data sheet that contradicts itself.
    DataSheet {
        /// The energizer.
        energizer: String,
        /// What contradicts what.
        fault: SheetTrouble,
    },
    /// Live lines that the capacitance cannot be worked out for: two at one height, or one on the ground.
    LiveLines {
        /// The kind of net.
        net: String,
    },
    /// A class that its table does not have; it is passed over.
    NoSuchClass {
        /// The table.
        table: plan::SoilTable,
        /// The word.
        name: plan::SoilWord,
    },
    /// A corner seen of which nobody knows how far it turned; it is passed over.
    SeenNowhere {
        /// Its place in the list, from 0.
        index: usize,
    },
    /// A corner that stood where the ground would have to be stronger than one that leaned allows; the one that leaned
    /// counts.
    SeenContradict {
        /// The one that stood, from 0.
        stood: usize,
        /// The one that leaned, from 0.
        leaned: usize,
    },
    /// A grid of heights that has no whole rows, or no cells.
    HeightGrid {
        /// Heights in it.
        heights: usize,
        /// Heights in a row.
        columns: u32,
    },
    /// A soil stated both as a clay and as a sand; the clay counts.
    TwoSoils,
}

/// What is wrong with a branch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BranchTrouble {
    /// It names no net.
    NoNets,
    /// Its outline is no line.
    NoLine,
    /// The line has no such place.
    Beyond {
        /// Where it is said to hang, metres along the line.
        from_m: f64,
        /// How long the line is, metres.
        line_m: f64,
    },
    /// Its outline does not start where it hangs.
    OffLine {
        /// How far apart they are, metres.
        off_m: f64,
        /// Where it starts.
        at: Point,
    },
}

/// A part of what follows for a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The strip to mow.
    Strip,
    /// The pulse.
    Volts,
}

/// What a value must be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Must {
    /// Above zero.
    BePositive,
    /// Zero or above.
    NotBeNegative,
    /// At least one.
    BeAtLeastOne,
    /// Zero or above and below one.
    BeAShare,
    /// Between 0 and 90.
    BeAnAngle,
    /// Above zero and at most one.
    BeAPart,
    /// Above 0 and at most 180.
    BeATurn,
    /// A wind that blows on earth.
    BeAWind,
    /// Anything but zero or next to it.
    NotBeZero,
    /// Small enough to be worked out.
    BeSmaller,
}

/// What contradicts what on a data sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SheetTrouble {
    /// As many volts under load as without, or more.
    LoadedAboveNoLoad,
    /// More energy out than stored.
    OutputAboveStored,
    /// No circuit of these parts gives those figures.
    NoCircuit,
}
