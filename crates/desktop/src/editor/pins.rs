//! Corners that go to a post, and pins that go with their corner.

use plan::{Deed, Edit, Pin, PinKind, Plan, Run, Shape};
use workup::pins::corner_of;

use super::Editor;

impl Editor {
    /// Moves a corner of the run in hand, by its place in the outline, to a post: one step.
    pub(super) fn move_to_post(&mut self, corner: usize) {
        let Some(run) = self.plan.runs.get(self.run) else { return };
        let Some(found) = workup::pins::corner_to_post(&self.plan, run, corner) else { return };
        let mut moved = run.clone();
        if let Some(at) = moved.outline.get_mut(corner) {
            *at = found.to;
        }
        take_along(run, &mut moved);
        if found.pin {
            moved.pins.push(Pin::new(PinKind::Corner, found.to));
        }
        self.history.begin_called(Deed::MoveCorner);
        self.make(Edit::SetRun { run: Box::new(moved) });
        self.history.end();
    }
}

/// The edit with the pins of the corners that it moves taken along, whoever moves them: the hand, a figure, a fit.
pub(super) fn with_pins(plan: &Plan, edit: Edit) -> Edit {
    let moved = match &edit {
        Edit::MoveCorner { shape: Shape::Run(id), corner, to } => plan.run(id).and_then(|run| {
            let mut moved = run.clone();
            *moved.outline.get_mut(*corner)? = *to;
            Some((run, moved))
        }),
        Edit::SetOutline { shape: Shape::Run(id), outline } => {
            plan.run(id).map(|run| (run, Run { outline: outline.clone(), ..run.clone() }))
        }
        Edit::SetRun { run: set } => plan.run(&set.id).map(|run| (run, (**set).clone())),
        _ => None,
    };
    if let Some((run, mut moved)) = moved
        && take_along(run, &mut moved)
    {
        return Edit::SetRun { run: Box::new(moved) };
    }
    edit
}

/// Takes the pins of corners to where the corners went, where nothing else was done to the pins; whether any went.
pub(super) fn take_along(was: &Run, run: &mut Run) -> bool {
    if was.outline.len() != run.outline.len() || was.pins != run.pins || was.outline == run.outline {
        return false;
    }
    let mut went = false;
    for pin in run.pins.iter_mut().filter(|pin| pin.kind == PinKind::Corner) {
        let corner = corner_of(&was.outline, pin.at).filter(|&corner| was.outline[corner] != run.outline[corner]);
        if let Some(corner) = corner {
            pin.at = run.outline[corner];
            went = true;
        }
    }
    went
}

#[cfg(test)]
mod tests {
    use super::*;
    use plan::Point;

    fn pinned() -> Plan {
        let square = [(0.0, 0.0), (30.0, 0.0), (30.0, 30.0), (0.0, 30.0)].map(Point::from).to_vec();
        let pins =
            vec![Pin::new(PinKind::Corner, Point::new(30.2, 29.9)), Pin::new(PinKind::Join, Point::new(30.0, 30.0))];
        Plan { runs: vec![Run { id: "run".to_owned(), outline: square, pins, ..Run::default() }], ..Plan::default() }
    }

    fn after(edit: Edit) -> Run {
        let mut plan = pinned();
        let edit = with_pins(&plan, edit);
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
            assert_eq!(run.pins[1].at, Point::new(30.0, 30.0), "a join stays where it is pinned");
        }
        let other = Edit::MoveCorner { shape, corner: 0, to };
        assert_eq!(
            with_pins(&pinned(), other.clone()),
            Edit::MoveCorner { shape: Shape::Run("run".to_owned()), corner: 0, to }
        );
        // Whoever sets the pin sets where it is.
        let mut unpinned = pinned().runs[0].clone();
        unpinned.outline[2] = to;
        unpinned.pins.pop();
        assert_eq!(after(Edit::SetRun { run: Box::new(unpinned.clone()) }), unpinned);
    }
}
