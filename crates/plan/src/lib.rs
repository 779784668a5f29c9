//! The document: what the keeper states about the ground, the store, the flock and the runs.
//!
//! A tour: [`model`] is the plan as the code works with it; [`mod@file`] reads and writes
//! `.netfold.json`; [`defaults`] holds what stands in for a statement that was not made, with its
//! source; [`edit`] is every change a keeper can make, with its inverse, [`mod@between`] the edits from one
//! plan to another; [`history`] is undo and redo;
//! [`motion`] moves and turns whole things; [`rolls`] is the first plan of a keeper who has nothing but rolls;
//! [`rates`] is how long hands take; [`soils`] holds the published classes of soil, [`bracing`] what is said of braces and
//! wind; [`keys`] finds misspelt keys; [`schema`] is the published description of the file.
//!
//! **Invariants.** A [`Plan`] holds statements only: no figure in it was computed. Whatever a statement
//! leaves out is `None` here and is filled in by an accessor that reads [`defaults`], so that what rests
//! on a default can always be told apart. This crate knows nothing of nets falling on lines, of volts,
//! of the screen or of words; it opens no file and reads no clock.

pub mod assumed;
pub mod between;
pub mod bracing;
pub mod deed;
pub mod defaults;
pub mod edit;
pub mod file;
pub mod history;
pub mod keys;
pub mod lead;
pub mod model;
pub mod motion;
pub mod naming;
pub mod rates;
pub mod resistivity;
pub mod rolls;
pub mod schema;
pub mod soils;
pub mod today;

pub use assumed::{Assumed, assumed};
pub use between::between;
pub use deed::Deed;
pub use edit::{Edit, EditError, Shape};
pub use file::{Opened, ReadError, read, write};
pub use history::History;
pub use model::{
    Boundary, BraceKind, BraceRule, Branch, ByFoot, Coop, CoopKind, CornerSeen, Damp, DoorSide, EarthStake,
    EarthStakes, Energizer, Fault, FaultCause, FaultKind, Flock, Gate, GateKind, Gateway, Ground, Hazard, HazardKind,
    HeightGrid, KeepOut, KnownError, Label, LabelSize, LeakageZone, MowWay, Mower, NetKind, Origin, Pin, PinKind, Plan,
    Point, PullTest, Reading, ReadingKind, Rest, Run, RunStatus, Season, Shade, SideSlope, Soil, SoilClass, SoilTable,
    SoilWord, SpotHeight, StatedBrace, Store, TapeLetter, TapePoint, Underlay, Wall, WallKind, World, drawn_out,
};
pub use motion::Motion;
pub use naming::free_name;
pub use rates::Rates;
pub use rolls::Rolls;
pub use today::Today;
