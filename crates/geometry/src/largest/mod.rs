//! The largest run that so much net encloses on a piece of ground, for each family of shapes.
//!
//! Squares, rectangles of any proportion, regular hexagons and octagons, rounds with a post at every corner, and free
//! outlines of so many sides; each also with one side borrowed from a wall. The line stays inside the paddock and keeps
//! its clearance from every keep-out; one that may not be enclosed stays outside. Metres, square metres.
//!
//! [`LargestSearch`] is long work as a value: [`LargestSearch::step`] until it says that it is done, looking at
//! [`LargestSearch::best`] whenever wanted. The same question gives the same answers, in the same number of steps.
//!
//! The tour: `frame` makes moved, turned and scaled paddocks one; `convex` and `field` say exactly how far a shape can
//! grow at a place; `branch` searches place, angle and proportion with a proved bound; `polish` climbs to the last
//! digit (with `contact` and `lp`); `round`, `wall` and `free` are the families that differ; `place` settles where a
//! shape goes that fits in many places; `bound` holds what no outline exceeds; `whole` the nearest of whole panels.
//!
//! **What is proved.** `area_bound_m2` is the least of: the isoperimetric bound of the family, the largest connected
//! part of the free ground, and, for shapes with a middle, the greatest bound of a cell that branch and bound has not
//! refuted. For free outlines and those against walls only the first two: what is found is the best near many starts.
//! Bounds hold to rounding; cells that promise less than 1e-4 more in size are not
//! looked at, and the bound then stands that much above the answer.

mod bound;
mod branch;
mod contact;
mod convex;
mod field;
mod fits;
mod frame;
mod free;
mod kind;
mod lp;
mod place;
mod polish;
mod request;
mod round;
mod search;
mod tasks;
mod wall;
mod whole;

pub use request::{Family, GroundNote, Hold, KeepOff, Largest, LargestFault, LargestRequest, Panels, WholePanels};
pub use search::LargestSearch;

/// Sides of a free outline at most.
pub const MOST_FREE_SIDES: u32 = 12;
/// Sides of a free outline unless asked for otherwise: as many as the largest regular family has.
pub const FREE_SIDES: u32 = 8;
