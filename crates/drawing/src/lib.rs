//! The map as a list of shapes with a role each, and as ink for any pen.
//!
//! Two steps, both pure: [`map()`] turns plan, workup and findings into a [`Drawing`], in metres, with no screen in
//! sight; [`Drawing::ink`] turns that into [`Ink`] for a [`View`] of some scale and theme. The run unfolded as one
//! straight line under the map is [`line()`], scale bar, north and the key of volts are in [`furniture`], what a hand
//! lines up with is in [`guides`] and [`dimensions`], and a run that is only thought of is a [`Ghost`]. Painters
//! (window, SVG, PNG, PDF) paint ink in order and decide nothing.
//!
//! A tour: [`shape`] says what a drawing is made of; `map/` draws the plan; [`view`] is the camera; `inking/`
//! holds the symbols at three distances and the labels; [`pick`] finds what lies under a spot; [`palette`]
//! holds every colour, [`letters`] the widths of the font; [`triangles()`] fills concave areas.

mod bedding;
pub mod dimensions;
pub mod furniture;
pub mod ghost;
pub mod guides;
pub mod ink;
mod inking;
pub mod letters;
pub mod line;
pub mod map;
pub mod palette;
pub mod pick;
pub mod shape;
pub mod shaping;
pub mod taken;
pub mod tape;
pub mod told;
pub mod triangles;
pub mod unroll;
pub mod view;

pub use bedding::{BED_PX, bedded};
pub use ghost::{Ghost, GhostMark, OpenGate};
pub use ink::{Anchor, Ink, Spot, Weight};
pub use inking::UnderHand;
pub use line::{LineDrawing, LineView, line};
pub use map::{Scene, map, map_again};
pub use palette::{Colour, Palette, Theme};
pub use shape::{About, Behind, Drawing, Form, GOES_OVER, Role, Shape, Thing};
pub use taken::Taken;
pub use told::Told;
pub use triangles::triangles;
pub use view::{Distance, View};
