//! The figures of the next corner, as far as they are typed.

use plan::Point;

/// What was typed of the next corner; what was not follows the pointer.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Typed {
    /// Length of its side, metres.
    pub side_m: Option<f64>,
    /// How far the line turns into its side, degrees, to whichever hand the pointer is; of a first side its bearing,
    /// clockwise from north.
    pub turn_deg: Option<f64>,
    /// Of a first corner, or of what is one place: how far east of the plan's origin, metres.
    pub east_m: Option<f64>,
    /// How far north of it, metres.
    pub north_m: Option<f64>,
}

impl Typed {
    /// Where the next corner stands, with the pointer there.
    pub fn place(self, corners: &[Point], pointer: Point) -> Point {
        let Some(&last) = corners.last() else {
            let (east_m, north_m) = (self.east_m.unwrap_or(pointer.east_m), self.north_m.unwrap_or(pointer.north_m));
            return Point::new(east_m, north_m);
        };
        if self == Self::default() {
            return pointer;
        }
        let (east, north) = (pointer.east_m - last.east_m, pointer.north_m - last.north_m);
        let bearing_rad = match (self.turn_deg, corners) {
            (None, _) => east.atan2(north),
            (Some(bearing_deg), [_]) => bearing_deg.to_radians(),
            (Some(turn_deg), [.., before, last]) => {
                let (along_east, along_north) = (last.east_m - before.east_m, last.north_m - before.north_m);
                let to_the_right = along_north * east - along_east * north >= 0.0;
                along_east.atan2(along_north) + if to_the_right { turn_deg } else { -turn_deg }.to_radians()
            }
            (Some(_), []) => return pointer,
        };
        let side_m = self.side_m.unwrap_or_else(|| east.hypot(north));
        Point::new(last.east_m + side_m * bearing_rad.sin(), last.north_m + side_m * bearing_rad.cos())
    }
}
