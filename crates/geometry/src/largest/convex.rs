//! A convex shape that grows about a place: how far until it touches a line, a point or a disc, until it holds one.
//!
//! The shape of scale 1 has its reference at (0, 0), strictly inside. Its gauge of a way is the scale at which its line
//! passes through that way's end; the first touch with a set is the least gauge over the set. Any unit of length.

use crate::Vector;

/// A convex shape of scale 1, counter-clockwise about its reference.
#[derive(Debug, Clone)]
pub(super) struct Convex {
    corners: Vec<Vector>,
    /// Outward normals, length one, each with its side's distance from the reference.
    sides: Vec<(Vector, f64)>,
    /// Distance of the farthest corner.
    reach: f64,
}

impl Convex {
    /// The shape with these corners, counter-clockwise, the reference strictly inside.
    pub(super) fn new(corners: Vec<Vector>) -> Self {
        let count = corners.len();
        let sides = (0..count)
            .map(|index| {
                let way = corners[(index + 1) % count] - corners[index];
                let normal = -direction(way.left());
                (normal, normal.dot(corners[index]))
            })
            .collect();
        let reach = corners.iter().map(|corner| corner.length()).fold(0.0, f64::max);
        Self { corners, sides, reach }
    }

    /// The shape turned about its reference, counter-clockwise.
    pub(super) fn turned(&self, angle: f64) -> Self {
        let (sin, cos) = angle.sin_cos();
        let turned = |at: Vector| Vector::new(at.east * cos - at.north * sin, at.east * sin + at.north * cos);
        Self {
            corners: self.corners.iter().copied().map(turned).collect(),
            sides: self.sides.iter().map(|&(normal, offset)| (turned(normal), offset)).collect(),
            reach: self.reach,
        }
    }

    /// Corners of scale 1.
    pub(super) fn corners(&self) -> &[Vector] {
        &self.corners
    }

    /// Distance of the farthest corner at scale 1.
    pub(super) fn reach(&self) -> f64 {
        self.reach
    }

    /// The scale at which the shape's line passes through `way`.
    pub(super) fn gauge(&self, way: Vector) -> f64 {
        self.sides.iter().map(|(normal, offset)| normal.dot(way) / offset).fold(0.0, f64::max)
    }

    /// The scale at which the growing shape first touches the segment between two ways from its reference.
    ///
    /// Along the segment's whole line the gauge is convex with its least where the corner farthest across the line
    /// meets it; beyond the segment's ends the nearer end counts.
    pub(super) fn touch_segment(&self, from: Vector, to: Vector) -> f64 {
        let way = to - from;
        let mut across = way.left();
        let mut distance = across.dot(from);
        if distance < 0.0 {
            (across, distance) = (-across, -distance);
        }
        let mut farthest = (f64::NEG_INFINITY, Vector::default());
        for &corner in &self.corners {
            let ahead = across.dot(corner);
            if ahead > farthest.0 {
                farthest = (ahead, corner);
            }
        }
        if farthest.0 <= 0.0 {
            return self.gauge(from).min(self.gauge(to));
        }
        let scale = distance / farthest.0;
        let share = (farthest.1 * scale - from).dot(way) / way.dot(way);
        if share < 0.0 {
            self.gauge(from)
        } else if share > 1.0 {
            self.gauge(to)
        } else {
            scale
        }
    }

    /// The scale at which the growing shape first touches the disc of that radius about the end of `way`.
    pub(super) fn touch_disc(&self, way: Vector, radius: f64) -> f64 {
        let mut first = (f64::NEG_INFINITY, 0);
        for (index, (normal, offset)) in self.sides.iter().enumerate() {
            let scale = (normal.dot(way) - radius) / offset;
            if scale > first.0 {
                first = (scale, index);
            }
        }
        let (scale, index) = first;
        if radius <= 0.0 || scale <= 0.0 {
            return scale;
        }
        let normal = self.sides[index].0;
        // Counter-clockwise, a side runs to the left of its outward normal.
        let along = normal.left();
        let (start, end) = (self.corners[index], self.corners[(index + 1) % self.corners.len()]);
        let place = along.dot(way);
        let corner = if place < along.dot(start) * scale {
            start
        } else if place > along.dot(end) * scale {
            end
        } else {
            return scale;
        };
        // |way - scale corner| = radius, the first of two.
        let (square, mixed) = (corner.dot(corner), way.dot(corner));
        let under = mixed * mixed - square * (way.dot(way) - radius * radius);
        if under < 0.0 { scale } else { ((mixed - under.sqrt()) / square).max(scale) }
    }

    /// The least scale at which the shape holds the whole disc of that radius about the end of `way`.
    pub(super) fn holds(&self, way: Vector, radius: f64) -> f64 {
        self.sides.iter().map(|(normal, offset)| (normal.dot(way) + radius) / offset).fold(0.0, f64::max)
    }
}

/// A way at length one. Lengths here are near one, so that nothing can overflow and a plain root will do.
pub(super) fn direction(way: Vector) -> Vector {
    way * (1.0 / way.dot(way).sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square() -> Convex {
        Convex::new([(1.0, 1.0), (-1.0, 1.0), (-1.0, -1.0), (1.0, -1.0)].map(|(e, n)| Vector::new(e, n)).to_vec())
    }

    #[test]
    fn a_square_touches_by_hand() {
        let at = Vector::new;
        let close = |got: f64, want: f64| assert!((got - want).abs() < 1e-12, "{got} {want}");
        close(square().gauge(at(3.0, 2.0)), 3.0);
        // A line aslant, met by a corner; the same line short of that corner; a line along a side.
        close(square().touch_segment(at(4.0, 0.0), at(0.0, 4.0)), 2.0);
        close(square().touch_segment(at(4.0, 0.0), at(3.0, 1.0)), 3.0);
        close(square().touch_segment(at(5.0, -9.0), at(5.0, 9.0)), 5.0);
        close(square().touch_segment(at(5.0, 2.0), at(5.0, 3.0)), 5.0);
        // A disc beside a side and one beyond a corner.
        close(square().touch_disc(at(5.0, 0.5), 2.0), 3.0);
        close(square().touch_disc(at(4.0, 4.0), 2.0), 4.0 - f64::sqrt(2.0));
        close(square().touch_disc(at(-4.0, 4.0), 2.0), 4.0 - f64::sqrt(2.0));
        close(square().holds(at(2.0, -1.0), 0.5), 2.5);
    }
}
