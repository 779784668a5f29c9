//! Outlines of a plan shaped by hand: where a corner in the hand may go, a side slid, an outline squared up or doubled
//! beside. The maths is `geometry`'s; here it meets the plan's outlines.

use geometry::{AngleArc, ClosingCurve};
use plan::{Motion, Plan, Point, Shape};

use crate::point;

/// Places of a curve's line: at any size of screen it looks round.
const LINE: usize = 180;
/// Two sides this near are as long and parallel: a centimetre is what is paced, metres.
const LIKE_M: f64 = 0.01;

/// What a corner keeps while it is dragged.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Keep {
    /// Nothing.
    #[default]
    Free,
    /// The length of its two sides together, and so that of the line.
    Length,
    /// Its angle.
    Angle,
}

/// Whether a shape's last corner leads to its first.
pub fn is_closed(plan: &Plan, shape: &Shape) -> bool {
    match shape {
        Shape::Run(id) => plan.run(id).is_some_and(plan::Run::closed),
        Shape::Boundary | Shape::KeepOut(_) | Shape::Shade(_) | Shape::Damp(_) => true,
        Shape::Branch(..) | Shape::Wall(_) | Shape::Hazard(_) => false,
    }
}

/// The corners before and after one; an end of an open line lacks one of them.
pub fn neighbours(plan: &Plan, shape: &Shape, corner: usize) -> [Option<Point>; 2] {
    let (outline, closed) = (plan.outline(shape).unwrap_or_default(), is_closed(plan, shape));
    let count = outline.len();
    if corner >= count || count < 2 {
        return [None, None];
    }
    let before = if corner > 0 { Some(corner - 1) } else { closed.then_some(count - 1) };
    let after = if corner + 1 < count { Some(corner + 1) } else { closed.then_some(0) };
    [before, after].map(|index| index.map(|index| outline[index]))
}

/// Where a corner may go that keeps something.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Way {
    /// The ellipse about its neighbours; about one alone a circle.
    Curve(ClosingCurve),
    /// The arc through its neighbours.
    Arc(AngleArc),
    /// The side between them, for a corner in line.
    Line(Point, Point),
}

impl Way {
    /// The way of a corner that stands there; `None` where it goes free.
    pub fn of(keep: Keep, neighbours: [Option<Point>; 2], at: Point) -> Option<Self> {
        let here = point(at);
        match (keep, neighbours) {
            (Keep::Free, _) | (_, [None, None]) | (Keep::Angle, [None, _] | [_, None]) => None,
            (Keep::Length, [Some(only), None] | [None, Some(only)]) => {
                let only = point(only);
                ClosingCurve::new(only, only, 2.0 * only.distance_m(here)).map(Self::Curve)
            }
            (Keep::Length, [Some(before), Some(after)]) => {
                let (one, other) = (point(before), point(after));
                let sum_m = one.distance_m(here) + here.distance_m(other);
                // In line there is no longer way than straight on.
                let curve = ClosingCurve::new(one, other, sum_m).filter(|_| sum_m > one.distance_m(other) + 1e-9);
                Some(curve.map_or(Self::Line(before, after), Self::Curve))
            }
            (Keep::Angle, [Some(before), Some(after)]) => {
                let arc = AngleArc::through(point(before), here, point(after));
                Some(arc.map_or(Self::Line(before, after), Self::Arc))
            }
        }
    }

    /// The place of it nearest to another; `None` where that lies behind an arc.
    pub fn nearest(&self, at: Point) -> Option<Point> {
        match *self {
            Self::Curve(curve) => Some(placed(curve.nearest(point(at)))),
            Self::Arc(arc) => arc.nearest(point(at)).map(placed),
            Self::Line(from, to) => {
                let (from, way) = (point(from), point(to) - point(from));
                let share = (point(at) - from).dot(way) / way.dot(way);
                (0.0..=1.0).contains(&share).then(|| placed(from + way * share))
            }
        }
    }

    /// It as a line, and whether that closes.
    pub fn line(&self) -> (Vec<Point>, bool) {
        match *self {
            Self::Curve(curve) => (curve.ring(LINE).into_iter().map(placed).collect(), true),
            Self::Arc(arc) => (arc.line(LINE).into_iter().map(placed).collect(), false),
            Self::Line(from, to) => (vec![from, to], false),
        }
    }
}

/// What is typed of a corner; metres and degrees.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct CornerTyped {
    /// Length of the side that leads to it, metres.
    pub before_m: Option<f64>,
    /// Length of the side that leads from it, metres.
    pub after_m: Option<f64>,
    /// How far the line turns there, degrees; to which hand is as it lies.
    pub turn_deg: Option<f64>,
}

impl CornerTyped {
    /// The place with those figures nearest to another; `None` where there is none.
    pub fn place(self, neighbours: [Option<Point>; 2], near: Point) -> Option<Point> {
        let figures = geometry::CornerFigures {
            before_m: self.before_m,
            after_m: self.after_m,
            turn_rad: self.turn_deg.map(f64::to_radians),
        };
        let at = match neighbours {
            [Some(before), Some(after)] => figures.place(point(before), point(after), point(near))?,
            [Some(only), None] => on_circle(only, near, self.before_m)?,
            [None, Some(only)] => on_circle(only, near, self.after_m)?,
            [None, None] => point(near),
        };
        at.is_finite().then(|| placed(at))
    }
}

fn on_circle(only: Point, near: Point, length_m: Option<f64>) -> Option<geometry::Point> {
    let (only, near) = (point(only), point(near));
    let Some(length_m) = length_m else { return Some(near) };
    ClosingCurve::new(only, only, 2.0 * length_m)?.on_way(near - only)
}

/// How far the line turns at a corner, degrees, to either hand; `None` at an end.
pub fn turn_deg(neighbours: [Option<Point>; 2], at: Point) -> Option<f64> {
    let [Some(before), Some(after)] = neighbours else { return None };
    Some(geometry::turn_rad(point(before), point(at), point(after)).abs().to_degrees())
}

/// Where a side points, degrees clockwise from north.
pub fn bearing_deg(from: Point, to: Point) -> f64 {
    let bearing = (to.east_m - from.east_m).atan2(to.north_m - from.north_m).to_degrees().rem_euclid(360.0);
    // What rounds to a whole turn is north.
    if bearing >= 359.999_999 { 0.0 } else { bearing }
}

/// The far corner of a side with that bearing, its length kept.
pub fn at_bearing(from: Point, to: Point, bearing_deg: f64) -> Point {
    let (sin, cos) = bearing_deg.to_radians().sin_cos();
    let side_m = point(from).distance_m(point(to));
    Point::new(from.east_m + side_m * sin, from.north_m + side_m * cos)
}

/// The far corner of a side with that length on the map and that bearing, each its own where none is given; `None` of a
/// side without a direction that is made longer.
pub fn side_end([from, to]: [Point; 2], length_m: Option<f64>, bearing_deg: Option<f64>) -> Option<Point> {
    let to = bearing_deg.map_or(to, |bearing_deg| at_bearing(from, to, bearing_deg));
    match length_m {
        None => Some(to),
        Some(length_m) => plan::drawn_out(&[from, to], 0, length_m).map(|(_, _, to)| to),
    }
}

/// How far a hand that went so far slides a side, metres to its left; `None` where there is no such side.
pub fn slides_m(outline: &[Point], side: usize, hand: [f64; 2]) -> Option<f64> {
    let (from, to) = (point(*outline.get(side)?), point(outline[(side + 1) % outline.len()]));
    Some(geometry::Vector::new(hand[0], hand[1]).dot((to - from).unit().left()))
}

/// The outline with a side slid so many metres to its left; `None` where it cannot.
pub fn slid(outline: &[Point], closed: bool, side: usize, by_m: f64) -> Option<Vec<Point>> {
    let points: Vec<_> = outline.iter().copied().map(point).collect();
    Some(geometry::slide_side(&points, closed, side, by_m)?.into_iter().map(placed).collect())
}

/// The outline squared up, its corners moved least; `None` where that leaves none.
pub fn squared(outline: &[Point], closed: bool) -> Option<Vec<Point>> {
    let points: Vec<_> = outline.iter().copied().map(point).collect();
    Some(geometry::square_up(&points, closed)?.into_iter().map(placed).collect())
}

/// The motion that puts a second one of a closed outline beside it with a side in common: its mirror image over the side,
/// or the outline as it is, where it has a like side.
pub fn beside(outline: &[Point], side: usize, mirrored: bool) -> Option<Motion> {
    let (&from, &to) = (outline.get(side)?, outline.get((side + 1) % outline.len())?);
    if mirrored {
        return Some(Motion::Mirror {
            through: from,
            bearing_rad: (to.east_m - from.east_m).atan2(to.north_m - from.north_m),
        });
    }
    let points: Vec<_> = outline.iter().copied().map(point).collect();
    let shift = geometry::shift_to_share(&points, side, LIKE_M)?;
    Some(Motion::Shift { east_m: shift.east, north_m: shift.north })
}

fn placed(at: geometry::Point) -> Point {
    Point::new(at.east_m, at.north_m)
}

#[cfg(test)]
mod tests {
    use super::*;
    use plan::Run;
    use proptest::prelude::*;

    fn apart_m(one: Point, other: Point) -> f64 {
        (one.east_m - other.east_m).hypot(one.north_m - other.north_m)
    }

    fn line_m(outline: &[Point]) -> f64 {
        outline.iter().zip(outline.iter().cycle().skip(1)).map(|(one, other)| apart_m(*one, *other)).sum()
    }

    fn square() -> Plan {
        let outline = [(0.0, 0.0), (40.0, 0.0), (40.0, 30.0), (0.0, 30.0)].map(Point::from).to_vec();
        Plan { runs: vec![Run { id: "run".to_owned(), outline, ..Run::default() }], ..Plan::default() }
    }

    #[test]
    fn ends_of_an_open_line_have_one_neighbour_and_swing_about_it() {
        let mut plan = square();
        plan.runs[0].closed = Some(false);
        let shape = Shape::Run("run".to_owned());
        assert_eq!(neighbours(&plan, &shape, 0), [None, Some(Point::new(40.0, 0.0))]);
        assert_eq!(neighbours(&plan, &shape, 3), [Some(Point::new(40.0, 30.0)), None]);
        assert_eq!(neighbours(&plan, &shape, 4), [None, None]);
        let end = neighbours(&plan, &shape, 0);
        let way = Way::of(Keep::Length, end, Point::new(0.0, 0.0)).unwrap();
        let at = way.nearest(Point::new(40.0, 99.0)).unwrap();
        assert!(apart_m(at, Point::new(40.0, 40.0)) < 1e-9, "{at:?}");
        assert_eq!(Way::of(Keep::Angle, end, Point::new(0.0, 0.0)), None);
        let typed = CornerTyped { after_m: Some(25.0), ..CornerTyped::default() };
        assert!(apart_m(typed.place(end, Point::new(0.0, 0.0)).unwrap(), Point::new(15.0, 0.0)) < 1e-9);
    }

    #[test]
    fn a_corner_in_line_stays_on_its_side() {
        let line = [Some(Point::new(0.0, 0.0)), Some(Point::new(10.0, 0.0))];
        for keep in [Keep::Length, Keep::Angle] {
            let way = Way::of(keep, line, Point::new(4.0, 0.0)).unwrap();
            assert_eq!(way.nearest(Point::new(7.0, 3.0)), Some(Point::new(7.0, 0.0)));
            assert_eq!(way.nearest(Point::new(17.0, 3.0)), None);
        }
    }

    #[test]
    fn bearings_are_a_compasss() {
        let home = Point::new(1.0, 1.0);
        for (to, bearing) in [((1.0, 5.0), 0.0), ((5.0, 1.0), 90.0), ((1.0, -3.0), 180.0), ((-3.0, 1.0), 270.0)] {
            assert!((bearing_deg(home, Point::from(to)) - bearing).abs() < 1e-12);
            assert!(apart_m(at_bearing(home, Point::new(4.0, 1.0 + 7.0_f64.sqrt()), bearing), Point::from(to)) < 1e-9);
        }
    }

    #[test]
    fn a_second_one_beside_shares_both_corners_of_the_side() {
        let outline = square().runs[0].outline.clone();
        for (side, mirrored) in [(0, true), (1, false), (2, true), (3, false)] {
            let motion = beside(&outline, side, mirrored).unwrap();
            let second: Vec<Point> = outline.iter().map(|&at| motion.of(at)).collect();
            for corner in [outline[side], outline[(side + 1) % 4]] {
                assert!(second.iter().any(|&at| apart_m(at, corner) < 1e-9), "side {side}");
            }
            let middle = second.iter().fold(Point::default(), |sum, at| {
                Point::new(sum.east_m + at.east_m / 4.0, sum.north_m + at.north_m / 4.0)
            });
            assert!(
                !(0.0..40.0).contains(&middle.east_m) || !(0.0..30.0).contains(&middle.north_m),
                "beside, not upon"
            );
        }
        let triangle = [(0.0, 0.0), (10.0, 0.0), (5.0, 8.0)].map(Point::from);
        assert_eq!(beside(&triangle, 0, false), None);
        assert_eq!(beside(&triangle, 7, true), None);
    }

    proptest! {
        #[test]
        fn a_corner_dragged_at_fixed_length_keeps_the_lines(
            corner in 0..4_usize, at in (-40.0..90.0_f64, -40.0..90.0_f64), hands in proptest::collection::vec((-400.0..400.0_f64, -400.0..400.0_f64), 1..9),
        ) {
            let mut plan = square();
            plan.runs[0].outline[corner] = Point::from(at);
            let shape = Shape::Run("run".to_owned());
            let was_m = line_m(&plan.runs[0].outline);
            let beside = neighbours(&plan, &shape, corner);
            prop_assume!(turn_deg(beside, Point::from(at)).is_some_and(|turn| turn > 0.1 && turn < 179.9));
            let length = Way::of(Keep::Length, beside, Point::from(at)).unwrap();
            let angle = Way::of(Keep::Angle, beside, Point::from(at)).unwrap();
            for hand in hands {
                plan.runs[0].outline[corner] = length.nearest(Point::from(hand)).unwrap();
                prop_assert!((line_m(&plan.runs[0].outline) - was_m).abs() < 1e-9);
                if let Some(turned) = angle.nearest(Point::from(hand)) {
                    let off = turn_deg(beside, turned).unwrap() - turn_deg(beside, Point::from(at)).unwrap();
                    prop_assert!(off.abs() < 1e-5, "{off}");
                }
            }
        }

        #[test]
        fn a_slid_side_follows_the_hand_square_to_itself(hand in (-12.0..12.0_f64, -12.0..12.0_f64), side in 0..4_usize) {
            let outline = square().runs[0].outline.clone();
            let by_m = slides_m(&outline, side, [hand.0, hand.1]).unwrap();
            let slid = slid(&outline, true, side, by_m).unwrap();
            let off_m = if side % 2 == 0 { hand.1 } else { hand.0 };
            let moved = apart_m(slid[side], outline[side]);
            prop_assert!((moved - off_m.abs()).abs() < 1e-9);
        }
    }
}
