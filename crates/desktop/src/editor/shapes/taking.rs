//! Taking a found shape: as the line of the run in hand, or as a run of its own.

use exchange::shapes;
use plan::{Deed, Edit, Run};
use workup::candidates::Candidate;

use super::ShapeKey;
use crate::editor::Editor;

/// A shape that was taken from the page of other shapes.
#[derive(Clone, Debug)]
pub struct Taken {
    /// Which it is.
    pub key: ShapeKey,
    /// The shape, as it was found.
    pub shape: Box<Candidate>,
    /// The name of its run where it stands beside the keeper's own, and does not take its place.
    pub beside: Option<String>,
}

impl Editor {
    /// The outline and nets of a found shape become those of the run in hand; without a run, a run of its own.
    pub(super) fn take_shape(&mut self, wanted: ShapeKey) {
        let Some(candidate) = self.shapes.of_key(wanted).cloned() else { return };
        let Some((run, _)) = self.run() else { return self.keep_shape(wanted) };
        let shape = Box::new(candidate.clone());
        let taken = Run {
            outline: candidate.run.outline,
            closed: candidate.run.closed,
            nets: candidate.run.nets,
            // What is said of places on the old line is true of it alone.
            start_m: None,
            reversed: None,
            braces: Vec::new(),
            leakage_zones: Vec::new(),
            pins: Vec::new(),
            gates: Vec::new(),
            side_slopes: Vec::new(),
            strip_width_m: candidate.run.strip_width_m,
            strip_left_m: None,
            strip_right_m: None,
            ..run.clone()
        };
        // Its sides answer to none of the old line's.
        let run = workup::taken_to_nearest(&self.plan, run, &taken);
        self.history.begin_called(Deed::TakeShape);
        self.make_as_said(vec![Edit::SetRun { run: Box::new(run) }]);
        self.history.end();
        self.shapes.taken = Some(Taken { key: wanted, shape, beside: None });
    }

    /// A found shape becomes a run of its own.
    pub(super) fn keep_shape(&mut self, wanted: ShapeKey) {
        let Some(candidate) = self.shapes.of_key(wanted).cloned() else { return };
        let name = self.plan.free_run_name(&shapes::title(&candidate, self.words));
        let ids: Vec<&str> = self.plan.runs.iter().map(|run| run.id.as_str()).collect();
        let own = candidate.run.id.clone();
        let numbered = (2..).map(|number| format!("{own}-{number}"));
        let id = std::iter::once(own.clone()).chain(numbered).find(|id| !ids.contains(&id.as_str())).unwrap_or(own);
        let index = self.plan.runs.len();
        let shape = Box::new(candidate.clone());
        let run = Run { id, name: name.clone(), ..candidate.run };
        self.history.begin_called(Deed::TakeShape);
        let in_hand = self.run;
        self.make_all(vec![Edit::AddRun { index, run: Box::new(run) }]);
        self.history.end();
        self.shapes.taken = Some(Taken { key: wanted, shape, beside: Some(name) });
        // The keeper's own stays the one that the others are weighed against.
        if index > 0 {
            self.run = in_hand;
            self.drawing.foremost = Some(in_hand);
        }
    }
}
