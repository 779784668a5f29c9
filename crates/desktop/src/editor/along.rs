//! What is on a run's line goes along, whoever moves the line: the hand, a figure, a fit, a list.
//!
//! What is led over the ground in one step, frame by frame or key by key, takes along what was on it as it began: what it
//! merely passes stays, and led back it leaves everything to the bit as it was. So the runs are kept as they were when the
//! step began ([`Way`]), and each edit that says where a line goes is made from there.

use drawing::Thing;
use plan::{Branch, Edit, History, Plan, Point, Run, Shape};

/// The runs as they were when the open step began.
#[derive(Debug, Default)]
pub(super) struct Way {
    began_at: Option<u64>,
    runs: Vec<Run>,
    /// What the arrow keys moved last, and the revision that they left.
    by_keys: Option<(Vec<Thing>, u64)>,
}

impl Way {
    /// The edit with what is on the line that it moves taken along. Whatever that is not is left as it was said.
    pub(super) fn with_line(&mut self, history: &History, plan: &Plan, edit: Edit) -> Edit {
        if history.began_at() != self.began_at {
            self.began_at = history.began_at();
            self.runs = self.began_at.map(|_| plan.runs.clone()).unwrap_or_default();
        }
        let Some((here, now)) = moved(plan, &edit) else { return edit };
        let began = self.runs.iter_mut().find(|run| run.id == here.id);
        let led = began.as_deref().and_then(|was| Some((was, led(was, here, &now)?)));
        let along = if let Some((was, led)) = led {
            workup::taken_along(plan, was, &led)
        } else {
            let along = workup::taken_along(plan, here, &now);
            // Where more was said than where the line goes, the way begins anew.
            if let Some(began) = began {
                began.clone_from(&along);
            }
            along
        };
        if along == now { edit } else { Edit::SetRun { run: Box::new(along) } }
    }

    /// The arrow keys move these once more: with nothing else done meanwhile, on the way that they began.
    pub(super) fn goes_on_by_keys(&mut self, history: &History, things: &[Thing]) {
        if self.by_keys.as_ref().is_some_and(|(last, left)| last == things && *left == history.revision()) {
            self.began_at = history.began_at();
        }
    }

    /// The arrow keys moved these.
    pub(super) fn went_by_keys(&mut self, history: &History, things: Vec<Thing>) {
        self.by_keys = Some((things, history.revision()));
    }
}

/// A run as it was with its lines led to where an edit leads them from `here` to `now`; `None` where the edit says more
/// than that, or sides do not answer to sides.
fn led(was: &Run, here: &Run, now: &Run) -> Option<Run> {
    let answers = |one: &[Branch]| {
        one.len() == now.branches.len()
            && one.iter().zip(&now.branches).all(|(one, now)| one.outline.len() == now.outline.len())
    };
    if was.outline.len() != now.outline.len() || !answers(&was.branches) || !answers(&here.branches) {
        return None;
    }
    let with_lines = |of: &Run| {
        let mut led = Run { outline: now.outline.clone(), ..of.clone() };
        for (led, (here, now)) in led.branches.iter_mut().zip(here.branches.iter().zip(&now.branches)) {
            if now.outline != here.outline {
                led.outline.clone_from(&now.outline);
            }
            if now.from_m != here.from_m {
                led.from_m = now.from_m;
            }
        }
        led
    };
    (with_lines(here) == *now).then(|| with_lines(was))
}

/// The run that an edit is about and what it makes of it, where it may move a line.
fn moved<'a>(plan: &'a Plan, edit: &Edit) -> Option<(&'a Run, Run)> {
    if let Edit::SetRun { run } = edit {
        let was = plan.run(&run.id)?;
        return Some((was, (**run).clone()));
    }
    let (Edit::SetOutline { shape, .. }
    | Edit::MoveCorner { shape, .. }
    | Edit::InsertCorner { shape, .. }
    | Edit::RemoveCorner { shape, .. }) = edit
    else {
        return None;
    };
    let (Shape::Run(id) | Shape::Branch(id, _)) = shape else { return None };
    let was = plan.run(id)?;
    let mut run = was.clone();
    let outline = match shape {
        Shape::Branch(_, branch) => &mut run.branches.get_mut(*branch)?.outline,
        _ => &mut run.outline,
    };
    redrawn(outline, edit)?;
    Some((was, run))
}

/// An outline after an edit of it; `None` where that cannot be made.
fn redrawn(points: &mut Vec<Point>, edit: &Edit) -> Option<()> {
    match edit {
        Edit::SetOutline { outline, .. } => points.clone_from(outline),
        Edit::MoveCorner { corner, to, .. } => *points.get_mut(*corner)? = *to,
        Edit::InsertCorner { corner, at, .. } if *corner <= points.len() => points.insert(*corner, *at),
        Edit::RemoveCorner { corner, .. } if *corner < points.len() => drop(points.remove(*corner)),
        _ => return None,
    }
    Some(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use plan::{Branch, Pin, PinKind};

    fn pinned() -> Plan {
        let square = [(0.0, 0.0), (30.0, 0.0), (30.0, 30.0), (0.0, 30.0)].map(Point::from).to_vec();
        let pins =
            vec![Pin::new(PinKind::Corner, Point::new(30.2, 29.9)), Pin::new(PinKind::Join, Point::new(30.0, 30.0))];
        Plan { runs: vec![Run { id: "run".to_owned(), outline: square, pins, ..Run::default() }], ..Plan::default() }
    }

    fn with_line(plan: &Plan, edit: Edit) -> Edit {
        Way::default().with_line(&History::default(), plan, edit)
    }

    fn after(edit: Edit) -> Run {
        let mut plan = pinned();
        let edit = with_line(&plan, edit);
        drop(plan.apply(edit).unwrap());
        plan.runs.remove(0)
    }

    #[test]
    fn a_corner_takes_its_pin_along_whoever_moves_it() {
        let shape = Shape::Run("run".to_owned());
        let to = Point::new(33.0, 31.0);
        let mut outline = pinned().runs[0].outline.clone();
        outline[2] = to;
        let set = Run { outline: outline.clone(), name: "fitted".to_owned(), ..pinned().runs[0].clone() };
        for edit in [
            Edit::MoveCorner { shape: shape.clone(), corner: 2, to },
            Edit::SetOutline { shape: shape.clone(), outline },
            Edit::SetRun { run: Box::new(set) },
        ] {
            let run = after(edit);
            assert_eq!((run.outline[2], run.pins[0].at), (to, to));
            assert_eq!(run.pins[1].at, to, "a join that is pinned on the line goes with it");
        }
        let other = Edit::MoveCorner { shape, corner: 0, to };
        assert_eq!(
            with_line(&pinned(), other.clone()),
            Edit::MoveCorner { shape: Shape::Run("run".to_owned()), corner: 0, to }
        );
        // Whoever sets the pin sets where it is.
        let mut unpinned = pinned().runs[0].clone();
        unpinned.outline[2] = to;
        unpinned.pins.pop();
        assert_eq!(after(Edit::SetRun { run: Box::new(unpinned.clone()) }), unpinned);
    }

    #[test]
    fn nothing_on_the_line_leaves_the_edit_as_it_is() {
        let mut plan = pinned();
        plan.runs[0].pins.clear();
        let shape = Shape::Run("run".to_owned());
        let edit = Edit::MoveCorner { shape, corner: 2, to: Point::new(33.0, 31.0) };
        assert_eq!(with_line(&plan, edit.clone()), edit);
        let edit = Edit::RemoveCorner { shape: Shape::Run("run".to_owned()), corner: 9 };
        assert_eq!(with_line(&plan, edit.clone()), edit);
    }

    #[test]
    fn a_corner_that_is_put_in_or_taken_out_takes_the_branch_to_the_nearest_place() {
        let mut plan = pinned();
        plan.runs[0].pins.clear();
        let outline = vec![Point::new(30.0, 15.0), Point::new(40.0, 15.0)];
        plan.runs[0].branches = vec![Branch { from_m: 45.0, outline, ..Branch::default() }];
        let shape = Shape::Run("run".to_owned());
        // Off the side by 3 m at its middle: the branch goes there.
        let edit = Edit::InsertCorner { shape: shape.clone(), corner: 2, at: Point::new(33.0, 15.0) };
        let edit = with_line(&plan, edit);
        assert!(matches!(&edit, Edit::SetRun { .. }), "{edit:?}");
        plan.apply(edit).unwrap();
        let branch = &plan.runs[0].branches[0];
        assert!(branch.outline[0].east_m > 32.0 && branch.outline[1].east_m > 42.0, "{branch:?}");
        let edit = with_line(&plan, Edit::RemoveCorner { shape, corner: 2 });
        plan.apply(edit).unwrap();
        let branch = &plan.runs[0].branches[0];
        assert!((branch.outline[0].east_m - 30.0).abs() < 1e-9 && branch.outline.len() == 2, "{branch:?}");
        assert!((branch.from_m - branch.outline[0].north_m - 30.0).abs() < 1e-9, "{branch:?}");
    }
}
