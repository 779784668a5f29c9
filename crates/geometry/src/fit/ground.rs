//! The ground that an outline may take: the paddock less the keep-outs with their clearances.
//!
//! Metres. [`FreeGround::holds`] is the judge: an outline that it refuses is never returned. [`FreeGround::walls`] helps
//! the search towards it: at a shape that trespasses it names straight walls which push the nearest corner or side
//! back, each true only near that shape. The walls of [`FreeGround::hull`] are kept by every allowed outline.

use geo::{ConvexHull, MultiPoint};

use super::shape::Wall;
use crate::{Outline, Point, Vector, region};

/// Distances are kept to within this, metres.
const KEPT_M: f64 = 5e-7;

/// Corners and sides this near to a limit are held off it before they cross it, metres.
const NEAR_M: f64 = 1.0;

/// A place that the line keeps off.
#[derive(Debug, Clone)]
pub struct KeepOff {
    /// Its outline, closed.
    pub outline: Outline,
    /// Straight distance that the line keeps from it, metres, round at its corners.
    pub clearance_m: f64,
    /// Whether the outline may go round it.
    pub may_enclose: bool,
}

/// Where an outline may lie.
#[derive(Debug, Clone, Default)]
pub struct FreeGround {
    /// The paddock; without one all ground is free.
    pub boundary: Option<Outline>,
    /// What the line keeps off.
    pub keep_offs: Vec<KeepOff>,
}

impl FreeGround {
    /// Whether a closed outline lies inside the boundary and off every keep-out.
    pub fn holds(&self, outline: &Outline) -> bool {
        self.boundary.as_ref().is_none_or(|boundary| region::inside(outline, boundary))
            && self.keep_offs.iter().all(|keep_off| keep_off.clears(outline))
    }

    /// Half-planes `n p >= b` that hold the whole boundary.
    pub(super) fn hull(&self) -> Vec<(Vector, f64)> {
        let Some(boundary) = &self.boundary else { return Vec::new() };
        let hull = boundary.points().map(|point| geo::Point::from(region::coord(point))).collect::<MultiPoint>();
        let ring: Vec<Vector> = hull.convex_hull().exterior().coords().map(|at| Vector::new(at.x, at.y)).collect();
        ring.windows(2)
            .filter(|pair| (pair[1] - pair[0]).length() > 0.0)
            .map(|pair| {
                let inward = (pair[1] - pair[0]).unit().left();
                (inward, inward.dot(pair[0]))
            })
            .collect()
    }

    /// Choices of [`FreeGround::walls`] run from 0 to this.
    pub(super) const LAST_CHOICE: usize = 2;

    /// Walls that push a trespassing shape back; `choice` counts the sides by which a place that is enclosed may leave,
    /// from the one that gives way the least.
    pub(super) fn walls(&self, at: &[Vector], choice: usize) -> Vec<Wall> {
        let points: Vec<Point> = at.iter().map(|&way| Point::default() + way).collect();
        let outline = Outline::closed(&points);
        let out = if signed_area(at) >= 0.0 { -1.0 } else { 1.0 };
        // The last choice holds nothing off before it trespasses: a wall that is near may bar the way round.
        let (choice, near_m) = if choice == Self::LAST_CHOICE { (0, 0.01) } else { (choice, NEAR_M) };
        let mut walls = Vec::new();
        if let Some(boundary) = &self.boundary {
            boundary_walls(boundary, &points, &outline, out, near_m, &mut walls);
        }
        for keep_off in &self.keep_offs {
            keep_off.walls(&points, &outline, out, choice, near_m, &mut walls);
        }
        walls
    }
}

/// Twice the area's half, positive counter-clockwise.
pub(super) fn signed_area(at: &[Vector]) -> f64 {
    (0..at.len()).map(|index| at[index].cross(at[(index + 1) % at.len()])).sum::<f64>() / 2.0
}

fn way(point: Point) -> Vector {
    point - Point::default()
}

/// The wall that keeps the place at `share` of side `side` on the side of `through` to which `normal` points.
fn wall(points: &[Point], side: usize, share: f64, normal: Vector, through: Point) -> Wall {
    let next = (side + 1) % points.len();
    Wall {
        parts: [(side, normal * (1.0 - share)), (next, normal * share)],
        least_m: normal.dot(way(through)),
        always: false,
    }
}

/// Nearest place of a stretch to a point: its share of the stretch, 0 to 1.
fn foot((from, to): (Point, Point), point: Point) -> f64 {
    let along = to - from;
    ((point - from).dot(along) / along.dot(along).max(1e-300)).clamp(0.0, 1.0)
}

fn boundary_walls(
    boundary: &Outline,
    points: &[Point],
    outline: &Outline,
    out: f64,
    near_m: f64,
    walls: &mut Vec<Wall>,
) {
    let inward = if boundary.is_counter_clockwise() { 1.0 } else { -1.0 };
    for (corner, &point) in points.iter().enumerate() {
        let contained = region::contains(boundary, point);
        let nearest_m = region::distance_to_m(boundary, point);
        for (from, to) in boundary.sides() {
            let share = foot((from, to), point);
            let normal = (to - from).unit().left() * inward;
            let inside_m = normal.dot(point - from);
            let apart_m = from.towards(to, share).distance_m(point);
            // The sides nearest to a corner outside, and those that a corner inside is near to.
            let near = if contained { apart_m < near_m && inside_m >= -1e-9 } else { apart_m <= nearest_m + 1e-9 };
            if near && (contained || inside_m < 1e-9) {
                walls.push(wall(points, corner, 0.0, normal, from));
            }
        }
    }
    // A dent of the boundary that reaches across a side.
    for vertex in boundary.vertices().iter().filter(|vertex| vertex.signed_turn_rad * inward < 0.0) {
        let near = outline.nearest_along(vertex.at).1;
        if region::contains(outline, vertex.at) || near < near_m {
            push_out(points, out, &[vertex.at], 0.0, 0, walls);
        }
    }
}

/// Walls of the one side (of the rank `choice` in what it gives way) that is pushed so that all `obstacles` lie outside
/// of it, at `clearance_m`.
fn push_out(points: &[Point], out: f64, obstacles: &[Point], clearance_m: f64, choice: usize, walls: &mut Vec<Wall>) {
    let count = points.len();
    let depth_m = |side: usize| {
        let (from, to) = (points[side], points[(side + 1) % count]);
        let normal = (to - from).unit().left() * out;
        let deepest = obstacles.iter().map(|&at| clearance_m - normal.dot(at - from)).fold(0.0, f64::max);
        // A side that the obstacle does not stand before is no help.
        let apart = obstacles
            .iter()
            .map(|&at| {
                let share = (at - from).dot(to - from) / (to - from).dot(to - from).max(1e-300);
                (share - share.clamp(0.0, 1.0)).abs() * from.distance_m(to)
            })
            .fold(f64::INFINITY, f64::min);
        deepest + 3.0 * apart
    };
    let mut ranked: Vec<usize> = (0..count).collect();
    ranked.sort_by(|&one, &other| depth_m(one).total_cmp(&depth_m(other)));
    let Some(&side) = ranked.get(choice) else { return };
    let (from, to) = (points[side], points[(side + 1) % count]);
    let normal = (to - from).unit().left() * -out;
    for &at in obstacles {
        walls.push(wall(points, side, foot((from, to), at), normal, at + normal * clearance_m));
    }
}

impl KeepOff {
    /// Whether the line keeps its distance and what may not be enclosed is not.
    fn clears(&self, outline: &Outline) -> bool {
        let off = region::distance_within_m(outline, &self.outline, self.clearance_m + NEAR_M)
            >= self.clearance_m - if self.clearance_m > 0.0 { KEPT_M } else { 0.0 };
        off && !outline.sides().any(|side| self.is_cut_by(side)) && (self.may_enclose || !self.is_in(outline))
    }

    /// Whether a stretch goes through it, beyond touching its edge.
    fn is_cut_by(&self, (from, to): (Point, Point)) -> bool {
        let stretch = Outline::open(&[from, to]);
        let mut shares: Vec<f64> =
            region::crossings(&stretch, &self.outline).into_iter().map(|(at, _)| foot((from, to), at)).collect();
        shares.extend([0.0, 1.0]);
        shares.sort_by(f64::total_cmp);
        shares.windows(2).any(|pair| {
            let middle = from.towards(to, f64::midpoint(pair[0], pair[1]));
            region::contains(&self.outline, middle) && region::distance_to_m(&self.outline, middle) > KEPT_M
        })
    }

    /// Whether any of it lies inside an outline, beyond touching its line.
    fn is_in(&self, outline: &Outline) -> bool {
        self.outline.points().any(|at| region::contains(outline, at) && region::distance_to_m(outline, at) > KEPT_M)
    }

    fn walls(&self, points: &[Point], outline: &Outline, out: f64, choice: usize, near_m: f64, walls: &mut Vec<Wall>) {
        let reach_m = self.clearance_m + near_m;
        let apart_m = region::distance_within_m(outline, &self.outline, reach_m);
        let swallowed = !self.may_enclose && self.is_in(outline);
        let cut = outline.sides().any(|side| self.is_cut_by(side));
        if apart_m > reach_m && !swallowed && !cut {
            return;
        }
        let count = points.len();
        let edge: Vec<Point> = self.outline.points().collect();
        // A corner that stands in it leaves by its nearest edge.
        let mut left = false;
        for (corner, &point) in points.iter().enumerate() {
            if region::contains(&self.outline, point) {
                let (along_m, apart_m) = self.outline.nearest_along(point);
                let nearest = self.outline.at(along_m);
                let normal = if apart_m > 1e-9 {
                    (nearest - point).unit()
                } else {
                    self.outline.direction_at(along_m).left()
                        * if self.outline.is_counter_clockwise() { -1.0 } else { 1.0 }
                };
                walls.push(wall(points, corner, 0.0, normal, nearest + normal * self.clearance_m));
                left = true;
            }
        }
        if left {
            return;
        }
        if swallowed || cut {
            let inside = edge.iter().filter(|&&at| region::contains(outline, at)).count();
            let keep_in = self.may_enclose && 2 * inside > edge.len();
            push_out(points, if keep_in { -out } else { out }, &edge, self.clearance_m, choice, walls);
            return;
        }
        // Every pair that is near has its wall, so that the nearest may change without a wall appearing from nowhere.
        let mut part = |side: usize, share: f64, here: Point, there: Point| {
            let apart_m = here.distance_m(there);
            if apart_m > 1e-9 && apart_m < reach_m {
                let normal = (here - there).unit();
                walls.push(wall(points, side, share, normal, there + normal * self.clearance_m));
            }
        };
        for side in 0..count {
            let (from, to) = (points[side], points[(side + 1) % count]);
            part(side, 0.0, from, self.outline.at(self.outline.nearest_along(from).0));
            for &at in &edge {
                let share = foot((from, to), at);
                if share > 0.0 && share < 1.0 {
                    part(side, share, from.towards(to, share), at);
                }
            }
        }
    }
}
