//! The search as a value: all families side by side, each step one family's.

use super::bound;
use super::field::{Field, Off, Ring};
use super::fits::apart;
use super::frame::{Frame, on_grid};
use super::free;
use super::request::{Family, GroundNote, Largest, LargestFault, LargestRequest, WholePanels};
use super::tasks::{Asked, Task};
use super::wall::Wall;
use super::{MOST_FREE_SIDES, contact};
use crate::{Outline, Point, check_outline, region};

/// Families with a middle or against a wall, in the order of searching; free outlines come after them.
const FAMILIES: [Family; 5] = [Family::Square, Family::Rectangle, Family::Hexagon, Family::Octagon, Family::Round];

/// A line longer than this, in sides of a square of the paddock's area, limits nothing.
const LONGEST: f64 = 1e3;

/// The largest run of each family, growing step by step.
///
/// ```
/// use geometry::Outline;
/// use geometry::largest::{Family, LargestRequest, LargestSearch, Panels, FREE_SIDES};
///
/// let paddock = [(0.0, 0.0), (80.0, 0.0), (80.0, 60.0), (0.0, 60.0)].map(geometry::Point::from);
/// let mut search = LargestSearch::new(&LargestRequest {
///     boundary: Outline::closed(&paddock),
///     keep_outs: Vec::new(),
///     hold: None,
///     towards: None,
///     net_m: 100.0,
///     panels: Panels { count: 28, equal: true },
///     walls: Vec::new(),
///     free_sides: FREE_SIDES,
/// })?;
/// while search.step() {}
/// let square = search.best().into_iter().find(|found| found.family == Family::Square).expect("it fits");
/// assert!((square.area_m2 - 625.0).abs() < 1e-6 && square.area_bound_m2 < 625.01);
/// # Ok::<(), geometry::largest::LargestFault>(())
/// ```
#[derive(Debug, Clone)]
pub struct LargestSearch {
    frame: Frame,
    asked: Asked,
    tasks: Vec<Task>,
    notes: Vec<GroundNote>,
    turn: usize,
}

impl LargestSearch {
    /// The search for an answer; nothing is searched yet.
    pub fn new(request: &LargestRequest) -> Result<Self, LargestFault> {
        sound(&request.boundary).map_err(|fault| LargestFault::Boundary { fault })?;
        for (index, off) in request.keep_outs.iter().enumerate() {
            sound(&off.outline).map_err(|fault| LargestFault::KeepOut { index, fault })?;
            if !(off.clearance_m.is_finite() && off.clearance_m >= 0.0) {
                return Err(LargestFault::Number { what: "a keep-out's clearance" });
            }
        }
        if !(request.net_m.is_finite() && request.net_m > 0.0) {
            return Err(LargestFault::Number { what: "the nets' length" });
        }
        if request.panels.count < 3 || !(3..=MOST_FREE_SIDES).contains(&request.free_sides) {
            return Err(LargestFault::Number { what: "the number of panels or sides" });
        }
        let frame = Frame::of(&request.boundary);
        let asked = asked(&frame, request);
        held(&asked.field)?;
        let mut tasks: Vec<Task> = FAMILIES.iter().map(|&family| Task::new(family, &asked, None)).collect();
        tasks.push(Task::new(Family::Free, &asked, None));
        for (index, &(from, to)) in request.walls.iter().enumerate() {
            let (from, to) = (frame.enter(from), frame.enter(to));
            if from.distance_m(to) > 1e-6 {
                for wall in [Wall { from, to }, Wall { from: to, to: from }] {
                    let families = FAMILIES.into_iter().chain([Family::Free]);
                    tasks.extend(families.map(|family| Task::new(family, &asked, Some((index, wall)))));
                }
            }
        }
        let notes = notes(request, &asked.field);
        Ok(Self { frame, asked, tasks, notes, turn: 0 })
    }

    /// Goes on a little; `false` once there is no more to do.
    pub fn step(&mut self) -> bool {
        let is_free = |task: &Task| task.family == Family::Free;
        // Free outlines wait for the shapes that they start from.
        let open = |task: &Task, free: bool| !task.done && is_free(task) == free;
        let first_free = self.tasks.iter().any(|task| open(task, false));
        let count = self.tasks.len();
        let next =
            (0..count).map(|ahead| (self.turn + ahead) % count).find(|&index| open(&self.tasks[index], !first_free));
        let Some(index) = next else { return false };
        self.tasks[index].step(&self.asked);
        self.turn = index + 1;
        if first_free && !self.tasks.iter().any(|task| open(task, false)) {
            self.start_free();
        }
        self.tasks.iter().any(|task| !task.done)
    }

    fn start_free(&mut self) {
        let from = |task: &Task| task.wall.map(|wall| (wall.0, wall.1.from));
        let ends = |task: &Task| task.ends().into_iter().map(|end| (from(task), end)).collect::<Vec<_>>();
        let found: Vec<_> = self.tasks.iter().flat_map(ends).collect();
        for task in self.tasks.iter_mut().filter(|task| task.family == Family::Free) {
            let wall = from(task);
            let like = found.iter().filter(|other| other.0 == wall).map(|other| other.1.clone());
            task.start_from(like, &self.asked);
        }
    }

    /// What should be known about the ground.
    pub fn notes(&self) -> &[GroundNote] {
        &self.notes
    }

    /// The largest found so far of each family, free and against each wall, the largest first.
    pub fn best(&self) -> Vec<Largest> {
        let mut best: Vec<Largest> = Vec::new();
        let unit_m2 = self.frame.unit_m * self.frame.unit_m;
        for task in &self.tasks {
            let Some(found) = &task.found else { continue };
            let leave = |corners: &[Point]| corners.iter().map(|&at| self.frame.leave(at)).collect::<Vec<_>>();
            let wall = task.wall.map(|wall| wall.0);
            let area_m2 = free::area(&found.corners) * unit_m2;
            let largest = Largest {
                family: task.family,
                wall,
                outline: leave(&found.corners),
                area_m2,
                line_m: free::netted(&found.corners, wall.is_some()) * self.frame.unit_m,
                area_bound_m2: (task.bound(&self.asked) * unit_m2).max(area_m2),
                whole_panels: found.whole.as_ref().map(|(corners, sides)| WholePanels {
                    outline: leave(corners),
                    side_panels: sides.clone(),
                    area_m2: free::area(corners) * unit_m2,
                }),
            };
            // The two sides of a wall are one entry.
            match best.iter_mut().find(|other| other.family == task.family && other.wall == wall) {
                Some(other) if other.area_m2 < largest.area_m2 => *other = largest,
                Some(_) => {}
                None => best.push(largest),
            }
        }
        best.sort_by(|one, two| two.area_m2.total_cmp(&one.area_m2).then(one.family.cmp(&two.family)));
        best
    }
}

fn sound(outline: &Outline) -> Result<(), Option<crate::OutlineFault>> {
    if !outline.is_closed() {
        return Err(None);
    }
    let points: Vec<Point> = outline.points().collect();
    match check_outline(&points, true).into_iter().find(crate::OutlineFault::is_fatal) {
        Some(fault) => Err(Some(fault)),
        None => Ok(()),
    }
}

fn asked(frame: &Frame, request: &LargestRequest) -> Asked {
    let unit = 1.0 / frame.unit_m;
    let ring = |outline: &Outline| {
        let mut ring: Vec<Point> = outline.points().map(|at| frame.enter(at)).collect();
        if !outline.is_counter_clockwise() {
            ring.reverse();
        }
        Ring::new(ring)
    };
    let offs = request.keep_outs.iter().map(|off| Off {
        ring: ring(&off.outline),
        clearance: on_grid(off.clearance_m * unit),
        may_enclose: off.may_enclose,
    });
    let hold = request.hold.clone().unwrap_or_default();
    let field = Field {
        boundary: ring(&request.boundary),
        offs: offs.collect(),
        hold: hold.places.iter().map(|&at| frame.enter(at)).collect(),
        hold_clearance: on_grid(hold.clearance_m * unit),
    };
    let ground_bound = bound::ground(&field);
    Asked {
        field,
        towards: request.towards.map(|at| frame.enter(at)),
        line: on_grid((request.net_m * unit).min(LONGEST)),
        panels: request.panels.count,
        equal: request.panels.equal,
        free_sides: request.free_sides,
        ground_bound,
    }
}

/// Whether what has to be held can be at all.
fn held(field: &Field) -> Result<(), LargestFault> {
    for &at in &field.hold {
        let near = field.hold_clearance * (1.0 - 1e-9);
        if !contact::contains(&field.boundary.points, at) || apart(&field.boundary.points, at) < near {
            return Err(LargestFault::HoldOutside);
        }
        for (index, off) in field.offs.iter().enumerate() {
            // One that may be enclosed may stand beside it.
            let near = if off.may_enclose { 0.0 } else { near + off.clearance * (1.0 - 1e-9) };
            let within = contact::contains(&off.ring.points, at) || apart(&off.ring.points, at) < near;
            let held_over = off.ring.points.iter().any(|&corner| contact::contains(&field.hold, corner));
            if within || held_over {
                return Err(LargestFault::HoldInKeepOut { index });
            }
        }
    }
    Ok(())
}

fn notes(request: &LargestRequest, field: &Field) -> Vec<GroundNote> {
    let mut notes = Vec::new();
    let meet = |one: &Outline, other: &Outline| {
        region::distance_within_m(one, other, 0.0) <= 0.0
            || region::contains(one, other.at(0.0))
            || region::contains(other, one.at(0.0))
    };
    for (index, off) in request.keep_outs.iter().enumerate() {
        if !meet(&request.boundary, &off.outline) {
            notes.push(GroundNote::KeepOutOutside { index });
        }
        for (second, other) in request.keep_outs.iter().enumerate().skip(index + 1) {
            if meet(&off.outline, &other.outline) && region::overlap_area_m2(&off.outline, &other.outline) > 0.0 {
                notes.push(GroundNote::KeepOutsOverlap { first: index, second });
            }
        }
    }
    let count = bound::part_count(field);
    if count > 1 {
        notes.push(GroundNote::PaddockInParts { count });
    }
    notes
}
