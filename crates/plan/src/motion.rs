//! Moving and turning whole things: every place that belongs to a thing goes with it.

use crate::model::{Coop, Point, Run};

/// A motion of the plane that leaves every length as it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Motion {
    /// So many metres east and north.
    Shift {
        /// East, metres.
        east_m: f64,
        /// North, metres.
        north_m: f64,
    },
    /// A turn about a place, radians clockwise as a compass counts.
    Turn {
        /// What stays where it is.
        about: Point,
        /// Clockwise, radians.
        clockwise_rad: f64,
    },
    /// A mirror image over a line through a place.
    Mirror {
        /// A place on the line.
        through: Point,
        /// Where the line points, radians clockwise from north.
        bearing_rad: f64,
    },
}

impl Motion {
    /// Where a place goes.
    pub fn of(self, at: Point) -> Point {
        match self {
            Self::Shift { east_m, north_m } => Point::new(at.east_m + east_m, at.north_m + north_m),
            Self::Turn { about, clockwise_rad } => {
                let (sin, cos) = clockwise_rad.sin_cos();
                let (east_m, north_m) = (at.east_m - about.east_m, at.north_m - about.north_m);
                Point::new(about.east_m + cos * east_m + sin * north_m, about.north_m - sin * east_m + cos * north_m)
            }
            Self::Mirror { through, bearing_rad } => {
                let (sin, cos) = bearing_rad.sin_cos();
                let (east_m, north_m) = (at.east_m - through.east_m, at.north_m - through.north_m);
                // Twice the way back to the line, square to it.
                let off_m = 2.0 * (cos * east_m - sin * north_m);
                Point::new(at.east_m - off_m * cos, at.north_m + off_m * sin)
            }
        }
    }

    /// Where something points afterwards that pointed there, degrees clockwise from north; `None` where a motion turns
    /// nothing.
    pub fn heading_deg(self, was_deg: f64) -> Option<f64> {
        match self {
            Self::Shift { .. } => None,
            Self::Turn { clockwise_rad, .. } => (clockwise_rad != 0.0).then(|| was_deg + clockwise_rad.to_degrees()),
            Self::Mirror { bearing_rad, .. } => Some(2.0 * bearing_rad.to_degrees() - was_deg),
        }
    }
}

impl Run {
    /// The run after a motion, with every place of it; of a mirror image what lay to the left of the outline lies to the
    /// right.
    #[must_use]
    pub fn moved(&self, motion: Motion) -> Self {
        let mut run = self.carried(|at| motion.of(at));
        if matches!(motion, Motion::Mirror { .. }) {
            std::mem::swap(&mut run.strip_left_m, &mut run.strip_right_m);
        }
        run
    }

    /// The run with another outline of as many corners; what a side is stated to rise stays with its side.
    #[must_use]
    pub fn reshaped(&self, outline: Vec<Point>) -> Self {
        let corners = self.outline.len();
        let mut run = Self { outline, ..self.clone() };
        if run.outline.len() != corners {
            return run;
        }
        for slope in &mut run.side_slopes {
            let Some(side) = self.side_at(slope.at) else { continue };
            let ends = |outline: &[Point]| (outline[side], outline[(side + 1) % corners]);
            let (from, to) = ends(&run.outline);
            if (from, to) == ends(&self.outline) {
                continue;
            }
            slope.at = Point::new(f64::midpoint(from.east_m, to.east_m), f64::midpoint(from.north_m, to.north_m));
        }
        run
    }

    /// The run with every place of it carried along.
    #[must_use]
    pub fn carried(&self, to: impl Fn(Point) -> Point) -> Self {
        let mut run = self.clone();
        run.places_mut().for_each(|at| *at = to(*at));
        run
    }

    /// Every place that belongs to it.
    pub(crate) fn places(&self) -> Vec<Point> {
        let mut run = self.clone();
        run.places_mut().map(|at| *at).collect()
    }

    fn places_mut(&mut self) -> impl Iterator<Item = &mut Point> {
        let signs = self.feed_at.iter_mut().chain(self.energizer_at.iter_mut()).chain(self.earth_stakes.at.iter_mut());
        let signs = signs.chain(self.earth_stakes.places.iter_mut());
        let faults = self.faults.iter_mut().map(|fault| &mut fault.at);
        let braces = self.braces.iter_mut().map(|brace| &mut brace.at);
        let pins = self.pins.iter_mut().map(|pin| &mut pin.at);
        let gates = self.gates.iter_mut().filter_map(|gate| gate.at.as_mut());
        let slopes = self.side_slopes.iter_mut().map(|slope| &mut slope.at);
        let branches = self.branches.iter_mut().flat_map(|branch| {
            let faults = branch.faults.iter_mut().map(|fault| &mut fault.at);
            branch.outline.iter_mut().chain(faults)
        });
        let own =
            self.outline.iter_mut().chain(signs).chain(faults).chain(braces).chain(pins).chain(gates).chain(slopes);
        own.chain(branches)
    }
}

impl Coop {
    /// The coop after a motion: a turn turns its heading too.
    #[must_use]
    pub fn moved(&self, motion: Motion) -> Self {
        let turned_deg = motion.heading_deg(self.heading_deg());
        let heading_deg = turned_deg.map_or(self.heading_deg, |turned_deg| Some(turned_deg.rem_euclid(360.0)));
        Self { at: motion.of(self.at), heading_deg, ..self.clone() }
    }
}

#[cfg(test)]
mod tests {
    use super::Motion;
    use crate::model::{EarthStakes, Point, Run};

    #[test]
    fn a_quarter_turn_clockwise_takes_north_to_east() {
        let turn = Motion::Turn { about: Point::new(1.0, 1.0), clockwise_rad: std::f64::consts::FRAC_PI_2 };
        let to = turn.of(Point::new(1.0, 3.0));
        assert!((to.east_m - 3.0).abs() < 1e-12 && (to.north_m - 1.0).abs() < 1e-12, "{to:?}");
    }

    #[test]
    fn a_mirror_image_lies_as_far_beyond_its_line_and_comes_back() {
        // Over the line to the north-east east and north change places.
        let through = Point::new(2.0, 1.0);
        let over = |bearing_deg: f64| Motion::Mirror { through, bearing_rad: bearing_deg.to_radians() };
        let to = over(45.0).of(Point::new(5.0, 1.0));
        assert!((to.east_m - 2.0).abs() < 1e-12 && (to.north_m - 4.0).abs() < 1e-12, "{to:?}");
        let north_south = over(0.0).of(Point::new(5.0, 7.0));
        assert!((north_south.east_m + 1.0).abs() < 1e-12 && (north_south.north_m - 7.0).abs() < 1e-12);
        let (one, other) = (Point::new(-3.5, 8.25), Point::new(4.0, -2.0));
        let apart = |one: Point, other: Point| (one.east_m - other.east_m).hypot(one.north_m - other.north_m);
        for bearing_deg in [0.0, 17.0, 90.0, 211.0] {
            let motion = over(bearing_deg);
            assert!(apart(motion.of(motion.of(one)), one) < 1e-12);
            assert!((apart(motion.of(one), motion.of(other)) - apart(one, other)).abs() < 1e-12);
            assert!((motion.heading_deg(motion.heading_deg(30.0).unwrap()).unwrap() - 30.0).abs() < 1e-12);
        }
        // What points along the line goes on doing so.
        assert_eq!(over(90.0).heading_deg(90.0), Some(90.0));
    }

    #[test]
    fn what_belongs_to_a_run_goes_with_it() {
        let places = vec![Point::new(0.0, 4.0), Point::new(1.0, 5.0)];
        let earth_stakes = EarthStakes { places, ..EarthStakes::default() };
        let outline = vec![Point::new(0.0, 0.0)];
        let energizer_at = Some(Point::new(1.0, -2.0));
        let run = Run { outline, feed_at: Some(Point::new(1.0, 0.0)), energizer_at, earth_stakes, ..Run::default() };
        let to = run.carried(|at| Motion::Shift { east_m: 2.0, north_m: -1.0 }.of(at));
        assert_eq!((to.outline[0], to.feed_at), (Point::new(2.0, -1.0), Some(Point::new(3.0, -1.0))));
        assert_eq!(to.energizer_at, Some(Point::new(3.0, -3.0)));
        assert_eq!(to.earth_stakes.places, [Point::new(2.0, 3.0), Point::new(3.0, 4.0)]);
    }
}
