//! Corners that go to a post, and pins that go with their corner.

use plan::{Deed, Edit, Pin, PinKind, Point, Run, Shape};

use super::Editor;

impl Editor {
    /// Moves a corner of the run in hand, by its place in the outline, to a post: one step.
    pub(super) fn move_to_post(&mut self, corner: usize) {
        let Some(run) = self.plan.runs.get(self.run) else { return };
        let Some(found) = workup::pins::corner_to_post(&self.plan, run, corner) else { return };
        let shape = Shape::Run(run.id.clone());
        let mut edits = self.corner_moved(shape, corner, found.to);
        if found.pin {
            let mut run = edits
                .iter()
                .find_map(|edit| if let Edit::SetRun { run } = edit { Some((**run).clone()) } else { None })
                .unwrap_or_else(|| with_corner(run, corner, found.to));
            run.pins.push(Pin::new(PinKind::Corner, found.to));
            edits.retain(|edit| !matches!(edit, Edit::SetRun { .. }));
            edits.push(Edit::SetRun { run: Box::new(run) });
        }
        self.history.begin_called(Deed::MoveCorner);
        self.make_all(edits);
        self.history.end();
    }

    /// The edits that move a corner: a pin that holds it to a post goes along.
    pub(super) fn corner_moved(&self, shape: Shape, corner: usize, to: Point) -> Vec<Edit> {
        let follow = match &shape {
            Shape::Run(id) => self.plan.run(id).and_then(|run| followed(run, corner, to)),
            Shape::Boundary | Shape::KeepOut(_) => None,
        };
        let follow = follow.map(|run| Edit::SetRun { run: Box::new(run) });
        [Edit::MoveCorner { shape, corner, to }].into_iter().chain(follow).collect()
    }
}

fn with_corner(run: &Run, corner: usize, to: Point) -> Run {
    let mut run = run.clone();
    if let Some(at) = run.outline.get_mut(corner) {
        *at = to;
    }
    run
}

/// The run with that corner moved and its pins at it; `None` where none is there.
fn followed(run: &Run, corner: usize, to: Point) -> Option<Run> {
    let was = *run.outline.get(corner)?;
    let is_there = |pin: &Pin| pin.kind == PinKind::Corner && pin.at == was;
    if !run.pins.iter().any(is_there) {
        return None;
    }
    let mut run = with_corner(run, corner, to);
    run.pins.iter_mut().filter(|pin| is_there(pin)).for_each(|pin| pin.at = to);
    Some(run)
}
