//! Outlines as stated to outlines that can be built, with what is wrong with them.

use geometry::{Outline, OutlineFault};
use plan::{Plan, Point, Run, Shape};

use crate::model::{OutlineTrouble, Trouble};
use crate::{place, point};

/// The outline, where it can be built; troubles are added either way.
pub(crate) fn build(shape: &Shape, points: &[Point], closed: bool, troubles: &mut Vec<Trouble>) -> Option<Outline> {
    let stated: Vec<_> = points.iter().copied().map(point).collect();
    let mut fatal = false;
    for fault in geometry::check_outline(&stated, closed) {
        fatal |= fault.is_fatal();
        let fault = match fault {
            OutlineFault::TooFewPoints { count } => {
                OutlineTrouble::TooFewCorners { corners: count, needs: if closed { 3 } else { 2 } }
            }
            OutlineFault::TooManyCorners { count } => {
                OutlineTrouble::TooManyCorners { corners: count, limit: geometry::MAX_VERTICES }
            }
            OutlineFault::NotFinite { index } | OutlineFault::TooFar { index } => {
                OutlineTrouble::TooFar { corner: index, at: points[index] }
            }
            OutlineFault::RepeatedVertex { index } => OutlineTrouble::Repeated { corner: index, at: points[index] },
            OutlineFault::CrossesItself { first, second, at } => {
                OutlineTrouble::CrossesItself { side: first, other: second, at: place(at) }
            }
            OutlineFault::ZeroArea => OutlineTrouble::NoArea,
        };
        troubles.push(Trouble::Outline { shape: shape.clone(), fault });
    }
    if fatal {
        return None;
    }
    Some(if closed { Outline::closed(&stated) } else { Outline::open(&stated) })
}

/// A run's outline, where it can be built.
pub(crate) fn of_run(run: &Run) -> Option<Outline> {
    build(&Shape::Run(run.id.clone()), &run.outline, run.closed(), &mut Vec::new())
}

/// A branch's outline, where it can be built.
pub(crate) fn of_branch(run: &Run, branch: usize) -> Option<Outline> {
    let stated: Vec<_> = run.branches.get(branch)?.outline.iter().copied().map(point).collect();
    let fatal = geometry::check_outline(&stated, false).iter().any(OutlineFault::is_fatal);
    (!fatal).then(|| Outline::open(&stated))
}

/// The paddock, the keep-outs and damp ground, as far as they can be built.
pub(crate) struct Ground {
    boundary: Option<Outline>,
    /// Keep-outs that could be built.
    pub(crate) keep_outs: Vec<Outline>,
    /// Damp ground by its place in the list, as far as it could be built.
    pub(crate) damp: Vec<Option<Outline>>,
}

impl Ground {
    pub(crate) fn of(plan: &Plan, troubles: &mut Vec<Trouble>) -> Self {
        let boundary = if plan.ground.boundary.is_empty() {
            None
        } else {
            build(&Shape::Boundary, &plan.ground.boundary, true, troubles)
        };
        let mut keep_outs = Vec::new();
        for (index, keep_out) in plan.ground.keep_outs.iter().enumerate() {
            keep_outs.extend(build(&Shape::KeepOut(index), &keep_out.outline, true, troubles));
        }
        let damp = plan.ground.damp.iter().enumerate();
        let damp = damp.map(|(index, damp)| build(&Shape::Damp(index), &damp.outline, true, troubles)).collect();
        Self { boundary, keep_outs, damp }
    }

    /// The paddock's outline, where one is stated and could be built.
    pub(crate) fn boundary(&self) -> Option<&Outline> {
        self.boundary.as_ref()
    }

    pub(crate) fn paddock_m2(&self) -> f64 {
        self.boundary.as_ref().map_or(0.0, Outline::area_m2)
    }

    pub(crate) fn paddock_round_m(&self) -> f64 {
        self.boundary.as_ref().map_or(0.0, Outline::length_m)
    }
}
