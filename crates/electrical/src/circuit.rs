//! The circuit as the keeper built it: an energizer, an earth, and the runs on its terminals.
//!
//! Plain data, SI units. A [`Chain`] is a row of nets, end to end, and a place on it is metres from
//! its start. A [`Line`] is one run: its chain, open or closed to a ring, with branches (spare
//! netting is one) and the place where the lead feeds it. A [`Circuit`] is one energizer with every
//! line joined at its terminals.
//!
//! At a join two posts stand at one place with the join's resistance between them, so a place has
//! a [`Side`]. Places nearer than [`PLACE_TOLERANCE_M`] are one.

use crate::source::Source;

/// Places on a chain nearer than this are one place, metres.
pub const PLACE_TOLERANCE_M: f64 = 1e-6;

/// Which side of a join or break a place lies on, in the direction of the chain.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// Nearer the chain's start.
    Before,
    /// Nearer the chain's end.
    After,
}

/// A place on a chain. Where no join or break lies there, both sides are the same node.
///
/// On a ring start and end are one place: before 0 is the chain's end, after the end is its start,
/// with the closing join between them. On an open chain before 0 is the start itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Place {
    /// Metres from the chain's start.
    pub at_m: f64,
    /// Which side of a join or break at this place.
    pub side: Side,
}

impl Place {
    /// The place on the side nearer the chain's start.
    pub fn before(at_m: f64) -> Self {
        Self { at_m, side: Side::Before }
    }

    /// The place on the side nearer the chain's end.
    pub fn after(at_m: f64) -> Self {
        Self { at_m, side: Side::After }
    }
}

/// A piece of a chain with constant figures. Stretches follow one another without a gap, from 0.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stretch {
    /// Start, metres along the chain.
    pub from_m: f64,
    /// End, metres along the chain.
    pub to_m: f64,
    /// Resistance of all live lines in parallel, ohms per metre; 0 is allowed.
    pub r_ohm_per_m: f64,
    /// Leakage to remote earth, siemens per metre; 0 is allowed.
    pub g_s_per_m: f64,
    /// Capacitance to earth, farads per metre; 0 is allowed.
    pub c_f_per_m: f64,
}

/// A resistance in series with the chain. Several at one place add up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Join {
    /// Metres along the chain.
    pub at_m: f64,
    /// Ohms; 0 leaves the join ideal, so that its two posts are one node.
    pub ohm: f64,
}

/// A resistance from a place on the chain to remote earth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Short {
    /// Where it touches.
    pub at: Place,
    /// Ohms; taken as at least a microohm.
    pub ohm: f64,
}

/// Earthed lines beside the live ones over a piece of a chain: a ladder of its own.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EarthedStretch {
    /// Start, metres along the chain.
    pub from_m: f64,
    /// End, metres along the chain.
    pub to_m: f64,
    /// Resistance of all earthed lines in parallel, ohms per metre; 0 is allowed.
    pub r_ohm_per_m: f64,
    /// Capacitance to remote earth, farads per metre; 0 is allowed.
    pub c_f_per_m: f64,
    /// Capacitance to the live lines, farads per metre; 0 is allowed.
    pub to_live_f_per_m: f64,
}

/// The earthed lines of a chain that is wired alternately. They are tied to the energizer's earth pole where the feed
/// lies; where netting without them comes between, what lies beyond floats.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Earthed {
    /// Where there are any, in order; gaps are netting without earthed lines.
    pub stretches: Vec<EarthedStretch>,
    /// Resistances in series with them.
    pub joins: Vec<Join>,
    /// Resistance of the closing join of a ring, ohms.
    pub closing_ohm: f64,
}

/// A row of netting from end to end with what lies on it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Chain {
    /// The netting, contiguous from 0 to the chain's length.
    pub stretches: Vec<Stretch>,
    /// Resistances in series.
    pub joins: Vec<Join>,
    /// Places where every live line is open, metres.
    pub breaks: Vec<f64>,
    /// Resistances to earth.
    pub shorts: Vec<Short>,
    /// Where voltages are wanted: posts, and whatever else is to be read. Each is a node.
    pub marks: Vec<Place>,
    /// Earthed lines; a stretch's capacitance is then that of its live lines to remote earth beside them.
    pub earthed: Earthed,
}

impl Chain {
    /// One stretch of even netting, nothing on it.
    pub fn even(length_m: f64, r_ohm_per_m: f64, g_s_per_m: f64, c_f_per_m: f64) -> Self {
        Self {
            stretches: vec![Stretch { from_m: 0.0, to_m: length_m, r_ohm_per_m, g_s_per_m, c_f_per_m }],
            ..Self::default()
        }
    }

    /// The chain's length, metres; 0 where it has no stretch.
    pub fn length_m(&self) -> f64 {
        self.stretches.last().map_or(0.0, |last| last.to_m)
    }
}

/// What the two ends of a line's chain do.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Closing {
    /// They stay apart.
    Open,
    /// They are joined to a ring through so many ohms (0: an ideal join).
    Ring {
        /// Resistance of the closing join, ohms.
        ohm: f64,
    },
}

/// A chain whose start hangs on a place of a line's chain; its end is open.
///
/// Spare netting, doubled back, is a branch at `Place::before(length)`: before a ring's closing.
#[derive(Debug, Clone, PartialEq)]
pub struct Branch {
    /// Where it hangs on the line's chain.
    pub at: Place,
    /// Its netting.
    pub chain: Chain,
}

/// One run: a chain, open or a ring, its branches, and where the lead meets it.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// The nets on the line, in chain order.
    pub chain: Chain,
    /// Open, or closed to a ring.
    pub closing: Closing,
    /// What hangs on it.
    pub branches: Vec<Branch>,
    /// Where the energizer's live lead meets it.
    pub feed: Place,
    /// Resistance of that lead, ohms; 0 is allowed.
    pub lead_ohm: f64,
}

impl Line {
    /// An open line fed at its start through an ideal lead.
    pub fn open(chain: Chain) -> Self {
        Self { chain, closing: Closing::Open, branches: Vec::new(), feed: Place::after(0.0), lead_ohm: 0.0 }
    }

    /// A ring with an ideal closing join, fed at its start through an ideal lead.
    pub fn ring(chain: Chain) -> Self {
        Self { closing: Closing::Ring { ohm: 0.0 }, ..Self::open(chain) }
    }
}

/// One energizer, its earth, and every line joined at its terminals.
#[derive(Debug, Clone, PartialEq)]
pub struct Circuit {
    /// The energizer.
    pub source: Source,
    /// From the energizer's earth pole to remote earth, ohms; 0 is allowed.
    pub earth_ohm: f64,
    /// The runs on its terminals; at least one.
    pub lines: Vec<Line>,
}

impl Circuit {
    /// Whether any of its netting is wired alternately.
    pub fn is_woven(&self) -> bool {
        let woven = |chain: &Chain| !chain.earthed.stretches.is_empty();
        self.lines.iter().any(|line| woven(&line.chain) || line.branches.iter().any(|branch| woven(&branch.chain)))
    }
}

/// Where nodes are laid besides the places that a chain names.
///
/// Between neighbouring nodes `d` metres apart, half of the shunt stands at each end; where
/// `r g d²` exceeds `rg_limit` the piece is cut evenly into pieces of at most `fine_m`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mesh {
    /// Largest `r g d²` left in one piece.
    pub rg_limit: f64,
    /// Longest piece where that is exceeded, metres.
    pub fine_m: f64,
}

impl Default for Mesh {
    fn default() -> Self {
        Self { rg_limit: 1e-3, fine_m: 2.0 }
    }
}

impl Mesh {
    /// Nodes only where the chain names a place.
    pub fn as_named() -> Self {
        Self { rg_limit: f64::INFINITY, fine_m: f64::INFINITY }
    }
}

/// One figure for every mark and every short of a chain, in the order in which they were given.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ChainReadings<T> {
    /// At the marks.
    pub marks: Vec<T>,
    /// At the shorts.
    pub shorts: Vec<T>,
}

/// One figure for every place of a line that is read.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LineReadings<T> {
    /// Where the lead meets the line.
    pub feed: T,
    /// On the line's own chain.
    pub chain: ChainReadings<T>,
    /// On each branch, in the order given.
    pub branches: Vec<ChainReadings<T>>,
}

/// Why a circuit cannot be computed. `line` and `branch` count from 0 in the order given;
/// a `branch` of `None` is the line's own chain.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum CircuitFault {
    /// No line at all.
    #[error("the circuit has no line; give at least one")]
    NoLine,
    /// A figure of the source or the earth is out of range.
    #[error("{what} is {value}; it must be finite and {must}")]
    Figure {
        /// Which figure.
        what: &'static str,
        /// What was given.
        value: f64,
        /// What it must be.
        must: &'static str,
    },
    /// A figure on a line is out of range.
    #[error("line {line}: {what} is {value}; it must be finite and {must}")]
    LineFigure {
        /// Which line.
        line: usize,
        /// Which branch.
        branch: Option<usize>,
        /// Which figure.
        what: &'static str,
        /// What was given.
        value: f64,
        /// What it must be.
        must: &'static str,
    },
    /// A chain without netting.
    #[error("line {line}: a chain has no netting; give it a stretch of some length")]
    Empty {
        /// Which line.
        line: usize,
        /// Which branch.
        branch: Option<usize>,
    },
    /// The stretches of a chain leave a gap or overlap.
    #[error(
        "line {line}: the netting must follow without a gap from 0, but a stretch starts at {from_m} m where {wanted_m} m is due"
    )]
    Gap {
        /// Which line.
        line: usize,
        /// Which branch.
        branch: Option<usize>,
        /// Where the stretch starts.
        from_m: f64,
        /// Where the one before it ends.
        wanted_m: f64,
    },
    /// A place lies beyond the chain.
    #[error("line {line}: {what} at {at_m} m lies beyond the chain of {length_m} m")]
    Beyond {
        /// Which line.
        line: usize,
        /// Which branch.
        branch: Option<usize>,
        /// What lies there.
        what: &'static str,
        /// Where it lies.
        at_m: f64,
        /// How long the chain is.
        length_m: f64,
    },
}

impl CircuitFault {
    /// A stable name of the fault.
    pub fn id(&self) -> &'static str {
        match self {
            Self::NoLine => "electrical/no-line",
            Self::Figure { .. } => "electrical/figure",
            Self::LineFigure { .. } => "electrical/line-figure",
            Self::Empty { .. } => "electrical/empty-chain",
            Self::Gap { .. } => "electrical/gap",
            Self::Beyond { .. } => "electrical/beyond-chain",
        }
    }
}
