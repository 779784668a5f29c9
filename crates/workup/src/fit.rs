//! A run's sketch to the nearest outline of whole panels, through [`geometry::fit`].
//!
//! The nets are those of the run's workup: the ones that it names, else those that the store gives for its line. The
//! ground is the paddock less the keep-outs with their clearances. Where no such outline exists the refusal says why and
//! carries the nearest that does, with what was given up: more panels doubled back, fewer of them, or corners. Metres.
//!
//! Where heights are known the outline is laid on the ground: its sides are whole panels along the surface, and what they
//! measure on the map stands beside. Where no such outline is found the one that comes near is told with what it lacks.
//!
//! A run whose chain has a fixed start keeps the order and the direction of its nets; its start moves to where the
//! fitted chain begins.

mod answer;

pub use answer::{FitReason, FitRefusal, Fitted, FittedSlope, GivenUp};
pub use geometry::fit::Unlaid;
use geometry::fit::{Fit, FitFault, FitRequest, FitSearch, FreeGround, KeepOff, NoFit};
use geometry::{Net, Outline};
use plan::{Plan, Run, Shape};

use crate::draw_in;
use crate::model::Trouble;
use crate::slope::{Heights, Measure};
use crate::values::{self, Bad};
use crate::{nets, outlines, place};

/// Steps of each attempt at the nearest outline where the one asked for does not exist.
const NEAREST_STEPS: u64 = 6_000;

/// So many panels more doubled back without coming nearer end the look for the nearest.
const FARTHER: usize = 3;

/// Fits the run of that id, with so many panels doubled back.
pub fn fit(plan: &Plan, run: &str, double_back: u32) -> Result<Fitted, FitRefusal> {
    let mut fitting = Fitting::new(plan, run, double_back)?;
    while fitting.step() {}
    fitting.finish()
}

/// A fit under way: a value that is stepped, so that a worker can leave it.
#[derive(Clone, Debug)]
pub struct Fitting {
    task: Task,
    double_back: usize,
    /// The search, or what stood in its way from the start.
    search: Result<FitSearch, FitReason>,
}

impl Fitting {
    /// Sets a fit up.
    pub fn new(plan: &Plan, run: &str, double_back: u32) -> Result<Fitting, FitRefusal> {
        let task = Task::of(plan, run)?;
        let double_back = double_back as usize;
        let search = task.search(&task.sketch, double_back);
        if let Err(reason) = &search
            && !FitRefusal::from(reason.clone()).is_impossible()
        {
            return Err(reason.clone().into());
        }
        Ok(Fitting { task, double_back, search })
    }

    /// Goes on by one step; `false` when there is nothing left to do or the budget is spent.
    pub fn step(&mut self) -> bool {
        match &mut self.search {
            Ok(search) => search.step() && search.steps() < geometry::fit::DEFAULT_BUDGET_STEPS,
            Err(_) => false,
        }
    }

    /// The answer as far as it is known; where there is none, looks for the nearest that exists.
    pub fn finish(self) -> Result<Fitted, FitRefusal> {
        let reason = match &self.search {
            Ok(search) => match self.task.found(search, self.double_back) {
                Ok(fitted) => return Ok(fitted),
                Err(why) => self.task.why(why, self.double_back),
            },
            Err(reason) => reason.clone(),
        };
        let nearest = self.task.nearest(&reason, self.double_back);
        let (nearest, given_up) = nearest.map(|(fitted, given_up)| (Box::new(fitted), given_up)).unzip();
        Err(FitRefusal { reason, nearest, given_up })
    }
}

/// A run in the terms of geometry.
#[derive(Clone, Debug)]
struct Task {
    sketch: Outline,
    kinds: Vec<Net>,
    ids: Vec<String>,
    nets: Vec<usize>,
    kept_order: bool,
    reversed: bool,
    ground: FreeGround,
    /// Where the run's ground is not level.
    slope: Option<Measure>,
}

impl Task {
    fn of(plan: &Plan, id: &str) -> Result<Task, FitReason> {
        let run = plan.runs.iter().find(|run| run.id == id).ok_or(FitReason::NoSuchRun)?;
        if !run.closed() {
            return Err(FitReason::Open);
        }
        let build = |shape: Shape, points: &[plan::Point]| {
            outlines::build(&shape, points, true, &mut Vec::new()).ok_or(FitReason::Unbuilt { shape })
        };
        let sketch = build(Shape::Run(run.id.clone()), &run.outline)?;
        let mut ground = FreeGround::default();
        if !plan.ground.boundary.is_empty() {
            ground.boundary = Some(build(Shape::Boundary, &plan.ground.boundary)?);
        }
        for (index, keep_out) in plan.ground.keep_outs.iter().enumerate() {
            ground.keep_offs.push(KeepOff {
                outline: build(Shape::KeepOut(index), &keep_out.outline)?,
                clearance_m: keep_out.clearance_m().max(0.0),
                // Water is never enclosed, whatever else is said of it.
                may_enclose: keep_out.may_enclose() && !keep_out.water,
            });
        }
        let heights = Heights::of(plan, &mut Vec::new());
        let used = used(plan, run, &heights);
        if used.is_empty() {
            return Err(FitReason::NoNets);
        }
        let bad = Bad::of(&values::of_plan(plan));
        let mut kinds = Vec::with_capacity(plan.store.nets.len());
        for (kind, net) in plan.store.nets.iter().enumerate() {
            let key = |name: &str| format!("store.nets[{kind}].{name}");
            let broken = bad.any(&key("length_m")) || bad.any(&key("panel")) || bad.sum_of(&net.id);
            match nets::built(net) {
                Ok(built) if !broken => kinds.push(built),
                _ if used.contains(&kind) => return Err(FitReason::BadNet { net: net.id.clone() }),
                // Kinds that this run does not use stand in as anything.
                _ => kinds.push(Net::equal(1.0, 1).expect("one panel of a metre is a net")),
            }
        }
        Ok(Task {
            sketch,
            kinds,
            ids: plan.store.nets.iter().map(|net| net.id.clone()).collect(),
            nets: used,
            kept_order: run.start_m.is_some(),
            reversed: run.reversed.unwrap_or(false),
            ground,
            slope: Measure::of(run, &heights),
        })
    }

    fn panels(&self) -> usize {
        self.nets.iter().map(|&kind| self.kinds[kind].panels()).sum()
    }

    fn search(&self, sketch: &Outline, double_back: usize) -> Result<FitSearch, FitReason> {
        let mut request = FitRequest::new(sketch, &self.kinds, &self.nets);
        request.kept_order = self.kept_order;
        request.reversed = self.reversed;
        request.double_back = double_back;
        request.ground = Some(&self.ground);
        if let Some(slope) = &self.slope {
            request.stretch = slope.line_m(sketch) / sketch.length_m();
        }
        FitSearch::new(&request).map_err(|fault| match fault {
            FitFault::Open => FitReason::Open,
            FitFault::Corners { corners } => FitReason::TooManyCorners { corners, most: geometry::fit::MAX_CORNERS },
            FitFault::TooManyPanels { panels } => {
                FitReason::TooManyPanels { panels, most: geometry::fit::MAX_FIT_PANELS }
            }
            FitFault::TooFewPanels { panels, corners } => FitReason::TooFewPanels { panels, corners },
            FitFault::NoNets | FitFault::UnknownKind { .. } => FitReason::NoNets,
        })
    }

    fn why(&self, why: NoFit, double_back: usize) -> FitReason {
        let panels = self.panels().saturating_sub(double_back);
        match why {
            NoFit::NeverCloses => FitReason::NeverCloses { panels, corners: self.sketch.vertices().len() },
            NoFit::NoRoom { all_tried } => FitReason::NoRoom { panels, all_tried },
        }
    }

    /// The nearest outline that exists where the one asked for does not.
    fn nearest(&self, reason: &FitReason, double_back: usize) -> Option<(Fitted, GivenUp)> {
        let all = self.panels();
        let corners = self.sketch.vertices().len();
        let with = |panels: usize| {
            let fitted = self.attempt(&self.sketch, panels)?;
            let given_up = GivenUp::DoubleBack { asked: count(double_back), panels: count(panels) };
            Some((fitted, given_up))
        };
        if matches!(reason, FitReason::TooFewPanels { .. }) {
            // Fewer doubled back, where that was too much; else fewer corners.
            let fewer = (0..=all.saturating_sub(corners).min(double_back)).rev().take(8);
            if all >= corners && double_back > 0 {
                return fewer.into_iter().find_map(with);
            }
            let sketch = flattest_left_out(&self.sketch, all.saturating_sub(double_back).max(3))?;
            let fitted = self.attempt(&sketch, double_back)?;
            return Some((fitted, GivenUp::Corners { corners: sketch.vertices().len() }));
        }
        // More doubled back: by twice as many until one is found, then the fewest between, then on while that comes nearer
        // (the longest line that finds room lies in folds, far from the sketch).
        let most = all.saturating_sub(corners);
        let (mut fails, mut more) = (double_back, 1);
        let mut found = loop {
            let panels = (double_back + more).min(most);
            if panels <= fails {
                return None;
            }
            match with(panels) {
                Some(found) => break (panels, found),
                None => fails = panels,
            }
            more *= 2;
        };
        while found.0 - fails > 1 {
            let middle = usize::midpoint(fails, found.0);
            match with(middle) {
                Some(better) => found = (middle, better),
                None => fails = middle,
            }
        }
        let mut farther = 0;
        for panels in found.0 + 1..=most {
            match with(panels) {
                Some(next) if next.0.moved_rms_m < found.1.0.moved_rms_m => (found, farther) = ((panels, next), 0),
                _ => farther += 1,
            }
            if farther == FARTHER {
                break;
            }
        }
        Some(found.1)
    }

    fn attempt(&self, sketch: &Outline, double_back: usize) -> Option<Fitted> {
        let mut search = self.search(sketch, double_back).ok()?;
        while search.step() && search.steps() < NEAREST_STEPS {}
        self.found(&search, double_back).ok()
    }

    /// What a search came to, on the ground as it is.
    fn found(&self, search: &FitSearch, double_back: usize) -> Result<Fitted, NoFit> {
        let level = search.found()?;
        let Some(slope) = &self.slope else { return Ok(self.fitted(&level, double_back, None)) };
        let closed = |fit: &Fit| Outline::closed(&fit.outline);
        let level_m = |fit: &Fit| closed(fit).sides().map(|(from, to)| from.distance_m(to)).collect();
        let laid = search.over(&|outline| Some(slope.sides_m(outline)))?;
        Ok(match laid {
            Ok(laid) => {
                let on_map = FittedSlope { level_m: level_m(&laid), unlaid: None, short_m: 0.0 };
                self.fitted(&laid, double_back, Some((slope, on_map)))
            }
            Err(why) => {
                let side_m = slope.sides_m(&closed(&level));
                let on_map = FittedSlope { level_m: level_m(&level), unlaid: Some(why), short_m: 0.0 };
                self.fitted(&Fit { side_m, bound_rms_m: 0.0, ..level }, double_back, Some((slope, on_map)))
            }
        })
    }

    fn fitted(&self, found: &Fit, double_back: usize, slope: Option<(&Measure, FittedSlope)>) -> Fitted {
        let line_m: f64 = found.side_m.iter().sum();
        let chain_m: f64 = self.nets.iter().map(|&kind| self.kinds[kind].length_m()).sum();
        let over_m = chain_m - line_m;
        let (measure, slope) = slope.unzip();
        let unlaid = slope.as_ref().is_some_and(|slope| slope.unlaid.is_some());
        let slope =
            slope.map(|slope| if unlaid { FittedSlope { short_m: (-over_m).max(0.0), ..slope } } else { slope });
        // All panels on the line leave nothing, whatever rounding says.
        let spare_m = if unlaid {
            over_m.max(0.0)
        } else if double_back == 0 {
            0.0
        } else {
            over_m
        };
        let panels: usize = found.side_panels.iter().sum();
        let ring = Outline::closed(&found.outline);
        let is_short = slope.as_ref().is_some_and(|slope| slope.short_m >= geometry::MEET_M);
        Fitted {
            outline: found.outline.iter().copied().map(place).collect(),
            side_panels: found.side_panels.iter().map(|&panels| count(panels)).collect(),
            side_m: found.side_m.clone(),
            moved_rms_m: found.moved_rms_m,
            bound_rms_m: found.bound_rms_m,
            line_m,
            double_back: count(double_back),
            spare_m,
            nets: found.order.iter().map(|&kind| self.ids[kind].clone()).collect(),
            start_m: found.start_m,
            reversed: found.reversed,
            no_rectangle: found.outline.len() == 4 && found.equal_panels && !panels.is_multiple_of(2),
            draw_in: if is_short {
                None
            } else {
                draw_in::of_ring(&ring, found.start_m, found.reversed, spare_m, measure)
            },
            slope,
        }
    }
}

/// The sketch without its flattest corners, down to so many; `None` where it crosses itself then.
fn flattest_left_out(sketch: &Outline, corners: usize) -> Option<Outline> {
    let mut points: Vec<geometry::Point> = sketch.points().collect();
    while points.len() > corners {
        let outline = Outline::closed(&points);
        let flattest = outline.vertices().iter().min_by(|one, other| one.turn_rad().total_cmp(&other.turn_rad()))?;
        points.remove(flattest.stated);
    }
    let fatal = geometry::check_outline(&points, true).iter().any(geometry::OutlineFault::is_fatal);
    (!fatal).then(|| Outline::closed(&points))
}

/// Kinds of the run's nets, as the workup takes them: runs before it that stand have used up their own.
fn used(plan: &Plan, run: &Run, heights: &Heights) -> Vec<usize> {
    let mut chosen = nets::Chosen::new();
    for other in &plan.runs {
        let mut unheard: Vec<Trouble> = Vec::new();
        let shape = Shape::Run(other.id.clone());
        let Some(line) = outlines::build(&shape, &other.outline, other.closed(), &mut unheard) else { continue };
        let line_m = Measure::of(other, heights).map_or(line.length_m(), |slope| slope.line_m(&line));
        let used = nets::of(plan, other, line_m, &mut chosen);
        if other.id == run.id {
            return used;
        }
    }
    Vec::new()
}

fn count(number: usize) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}
