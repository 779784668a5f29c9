//! The camera: which part of the ground is shown, how large, and in what state.
//!
//! Places are `f64` metres; the middle of the view is subtracted before anything becomes an `f32` spot, so
//! that a plan far from its origin is as sharp as one beside it. North is up.

use plan::Point;

use crate::ink::Spot;
use crate::palette::Theme;
use crate::shape::Thing;

/// Fewest pixels a metre that a view may have.
pub const LEAST_PX_PER_M: f64 = 0.02;
/// Most pixels a metre that a view may have.
pub const MOST_PX_PER_M: f64 = 400.0;
/// Ground that is shown where there is nothing to fit, metres across.
const EMPTY_M: f64 = 60.0;
/// Spots farther than this from the view's corner are held there, pixels: beyond any screen, within any pen.
const FARTHEST_PX: f64 = 1e6;

/// What is shown, and how.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct View {
    /// The place in the middle.
    pub middle: Point,
    /// Pixels (or points) a metre.
    pub px_per_m: f64,
    /// Width and height, pixels.
    pub size: [f32; 2],
    /// The theme.
    pub theme: Theme,
    /// What is picked.
    pub picked: Option<Thing>,
    /// What is under the pointer.
    pub hovered: Option<Thing>,
    /// Whether the figures belong to an earlier state of the plan.
    pub stale: bool,
    /// Whether the outline that is picked shows its handles.
    pub handles: bool,
    /// Whether the posts that go over first in the wind are marked.
    pub wind: bool,
    /// Whether it is marked where the earth stakes of the run that is worked on would earth best.
    pub earth: bool,
    /// Whether a picture lies beneath: fills let it through, lines and words keep their own ground.
    pub underlay: bool,
    /// Parts of the sheet on which something else lies: left, top, right, bottom. No words are put there.
    pub kept: [Option<[f32; 4]>; 2],
    /// Likewise what the hand takes hold of, over all that is drawn: the ring and the cross of what is picked.
    pub held: [Option<[f32; 4]>; 2],
}

/// How close up a view is: which form of a symbol it shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Distance {
    /// Below 4 pixels a metre.
    Far,
    /// From 4 to 10.
    Middle,
    /// From 10.
    Near,
}

impl View {
    /// A view that shows those bounds with a margin round them; 60 m about the origin where there are none.
    pub fn fit(bounds: Option<(Point, Point)>, size: [f32; 2], margin_px: f32, theme: Theme) -> Self {
        let half_m = EMPTY_M / 2.0;
        let (low, high) = bounds.unwrap_or((Point::new(-half_m, -half_m), Point::new(half_m, half_m)));
        let room = |side: f32| f64::from((side - 2.0 * margin_px).max(1.0));
        // A single place still needs some ground about it.
        let across = |low: f64, high: f64| (high - low).max(1.0);
        let px_per_m = (room(size[0]) / across(low.east_m, high.east_m))
            .min(room(size[1]) / across(low.north_m, high.north_m))
            .clamp(LEAST_PX_PER_M, MOST_PX_PER_M);
        let middle = Point::new(f64::midpoint(low.east_m, high.east_m), f64::midpoint(low.north_m, high.north_m));
        Self {
            middle,
            px_per_m,
            size,
            theme,
            picked: None,
            hovered: None,
            stale: false,
            handles: false,
            wind: false,
            earth: false,
            underlay: false,
            kept: [None; 2],
            held: [None; 2],
        }
    }

    /// Where a place lies on the sheet.
    pub fn spot(&self, place: Point) -> Spot {
        self.px(place).map(|px| px.clamp(-FARTHEST_PX, FARTHEST_PX) as f32)
    }

    /// Where a place lies on the sheet, before it becomes a spot.
    pub(crate) fn px(&self, place: Point) -> [f64; 2] {
        [
            f64::from(self.size[0]) / 2.0 + (place.east_m - self.middle.east_m) * self.px_per_m,
            f64::from(self.size[1]) / 2.0 - (place.north_m - self.middle.north_m) * self.px_per_m,
        ]
    }

    /// The place under a spot of the sheet.
    pub fn place(&self, spot: Spot) -> Point {
        Point::new(
            self.middle.east_m + (f64::from(spot[0]) - f64::from(self.size[0]) / 2.0) / self.px_per_m,
            self.middle.north_m - (f64::from(spot[1]) - f64::from(self.size[1]) / 2.0) / self.px_per_m,
        )
    }

    /// The same view at another scale, with the place under that spot held still.
    pub fn zoomed(&self, by: f64, about: Spot) -> Self {
        let held = self.place(about);
        let px_per_m = (self.px_per_m * by).clamp(LEAST_PX_PER_M, MOST_PX_PER_M);
        let ratio = self.px_per_m / px_per_m;
        let middle = Point::new(
            held.east_m + (self.middle.east_m - held.east_m) * ratio,
            held.north_m + (self.middle.north_m - held.north_m) * ratio,
        );
        Self { middle, px_per_m, ..*self }
    }

    /// The same view moved so that the sheet goes right and down by those pixels.
    pub fn moved(&self, right_px: f32, down_px: f32) -> Self {
        let middle = Point::new(
            self.middle.east_m - f64::from(right_px) / self.px_per_m,
            self.middle.north_m + f64::from(down_px) / self.px_per_m,
        );
        Self { middle, ..*self }
    }

    /// How close up it is.
    pub fn distance(&self) -> Distance {
        if self.px_per_m < 4.0 {
            Distance::Far
        } else if self.px_per_m < 10.0 {
            Distance::Middle
        } else {
            Distance::Near
        }
    }
}
