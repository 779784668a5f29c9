//! Why a part cannot be computed.

use plan::Point;

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
    /// Two earth stakes at one place.
    StakesTogether {
        /// The one, from 0.
        one: usize,
        /// The other, from 0.
        other: usize,
        /// Where.
        at: plan::Point,
    },
    /// More earth stakes on the map than are worked out.
    TooManyStakes {
        /// How many.
        count: u32,
        /// Where the first stands that is too many.
        at: plan::Point,
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
