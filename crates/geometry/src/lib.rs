//! From an outline to net placement, corners, braces and the mown strip: pure maths in metres and newtons.
//!
//! The tour, in the order in which a plan is worked out:
//!
//! 1. [`Point`] and [`Outline`]: a line on the ground, closed or open; [`check_outline`] says what is wrong with one.
//! 2. [`Net`] and [`place`]: how the rolls fall round the line, where every post stands, what is spare or short.
//! 3. [`Soil`], [`Spike`] and [`corners`]: pull and hold at every corner and end, the verdict and the stake.
//!    [`guy`], [`brace_post`] and [`cut_corner`]: what mends a corner; [`gusts`]: what the wind does along the straights.
//! 4. [`strip`]: the ground mown under and beside the line; [`passes()`]: the lines walked behind the mower.
//! 5. [`region`]: inside, overlap, distance and crossings of outlines.
//! 6. [`ways`]: the shortest way round what may not be crossed.
//! 7. [`statics`], [`ground`], [`mowing`], [`shapes`]: the small formulas of the trade.
//! 8. [`slope`]: the ground's shape: metres of net along it, gaps under it, where it drags.
//! 9. [`largest`]: the largest run that so much net encloses, for each family of shapes, beside a proved bound.
//! 10. [`fit`]: a sketch to the nearest outline whose every side is a whole number of panels, beside a proved bound.
//! 11. [`ClosingCurve`], [`AngleArc`]: where a corner may go that keeps the length of net or its angle; [`guides`]: what
//!     it lines up with; [`slide_side`], [`square_up`], [`shift_to_share`], [`CornerFigures`]: an outline shaped by hand.
//! 12. [`tape`]: corners set out on the ground by their distances from what stands already.
//!
//! Coordinates are metres east and north of an arbitrary origin, angles radians, forces newtons, stresses pascals.
//! Nothing here knows of files, screens, clocks or electricity. Nothing panics on any finite input.
//!
//! ```
//! use geometry::{Net, Outline, PlacementRequest, Point, place};
//!
//! let square = Outline::closed(&[(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)].map(Point::from));
//! let roll = Net::equal(50.0, 14).expect("fourteen panels of a positive length");
//! let placed = place(&PlacementRequest::new(&square, &[roll], &[0, 0])).expect("two nets of a known kind");
//! assert!(placed.corner_miss_m < 1e-9, "every corner on a post");
//! assert!(placed.spare_m < 1e-9 && placed.short_m < 1e-9);
//! ```

mod bracing;
mod closing;
mod corner;
mod cut;
pub mod fit;
pub mod ground;
pub mod guides;
pub mod gusts;
mod holding;
pub mod largest;
pub mod mowing;
mod net;
mod outline;
mod outline_fault;
mod passes;
mod placement;
mod point;
pub mod region;
pub mod shapes;
mod shaping;
pub mod slope;
mod span;
pub mod standing;
pub mod statics;
mod strip;
pub mod tape;
pub mod ways;

pub use bracing::{BracePost, Guy, GuyForces, PEG_IN_LINE_SHARE, brace_post, guy};
pub use closing::{AngleArc, ClosingCurve};
pub use corner::{
    ADVISED_TURN_RAD, Corner, CornerRequest, LeaningBend, NetForces, Stake, StakeKind, Verdict, bend_verdict, corners,
    leaning_bends,
};
pub use cut::{Cut, MOST_CUT_POSTS, cut_corner, cut_corner_over};
pub use holding::{
    CLAY_ADHESION, Soil, Spike, WET_SHARE, broms_clay_n, broms_clay_strength_pa, broms_sand_n, corner_pull_n,
    passive_pressure_ratio, uplift_clay_n, uplift_sand_n,
};
pub use net::{MAX_PANELS, Net, NetFault, PANEL_SUM_TOLERANCE_M};
pub use outline::{CORNER_TURN_RAD, Outline, SAME_PLACE_M, Vertex};
pub use outline_fault::{FARTHEST_M, MAX_VERTICES, OutlineFault, check_outline};
pub use passes::{PassLine, Passes, PassesRequest, SHARP_TURN_RAD, passes};
pub use placement::{
    Best, CornerMiss, DEFAULT_BUDGET_STEPS, EQUAL_SUMS_M, FixedStart, HELD_M, MAX_CHAIN_POSTS, MEET_M, Pin, PinKind,
    PinOutcome, PlacedNet, Placement, PlacementFault, PlacementRequest, Post, place, place_from, place_in_order,
};
pub use point::{Point, Vector};
pub use shaping::{CornerFigures, shift_to_share, slide_side, square_up, turn_rad};
pub use span::span_m;
pub use strip::{Mower, Strip, StripPolygon, StripRequest, StripWidth, still_to_mow_m2, strip, strip_pieces};
