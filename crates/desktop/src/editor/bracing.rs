//! What holds a corner, taken: braces stated, or the corner cut, each as one step.

use plan::{CornerSeen, Deed, Edit, Run, StatedBrace};
use workup::bracing::{Detail, Mend, cut_run};

use super::Editor;
use crate::tool::apart_m;

/// What a view says about braces of the run in hand; corners are places in its lay's list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BracingMessage {
    /// Take a way of holding a corner: the corner's place, then the mend's in its list.
    Take(usize, usize),
    /// Set the cheapest brace at every corner and end where one holds.
    SetAll,
    /// A corner without a brace stood, or leaned.
    Saw(usize, bool),
}

impl Editor {
    /// The run in hand's corners in detail, in its lay's order.
    pub fn corner_details(&self) -> &[Detail] {
        let worked = self.run().and_then(|(_, worked)| worked.bracing.as_ref());
        worked.map_or(&[], |bracing| bracing.details.as_slice())
    }

    /// The cheapest brace that holds a corner; a cut is none.
    pub fn cheapest_brace(detail: &Detail) -> Option<(usize, &Mend)> {
        let braces = detail.mends.iter().enumerate().filter(|(_, mend)| mend.holds && mend.brace.is_some());
        braces.min_by(|a, b| a.1.cost_minutes.total_cmp(&b.1.cost_minutes))
    }

    pub(super) fn bracing_said(&mut self, message: BracingMessage) {
        match message {
            BracingMessage::Take(corner, mend) => self.take_mend(corner, mend),
            BracingMessage::SetAll => {
                let braces = self.corner_details().iter().filter_map(Self::cheapest_brace);
                let braces: Vec<StatedBrace> = braces.filter_map(|(_, mend)| mend.brace.clone()).collect();
                self.set_braces(braces);
            }
            BracingMessage::Saw(corner, stood) => self.saw(corner, stood),
        }
    }

    fn take_mend(&mut self, corner: usize, mend: usize) {
        let Some(mend) = self.corner_details().get(corner).and_then(|detail| detail.mends.get(mend)) else { return };
        if let Some(brace) = mend.brace.clone() {
            self.set_braces(vec![brace]);
        } else if let Some(cut) = &mend.cut
            && let Some(run) = self.run().and_then(|(run, _)| cut_run(run, cut))
        {
            // The vertices that follow have other numbers now.
            self.pick(None);
            self.one_step_called(Deed::CutCorner, run);
        }
    }

    fn set_braces(&mut self, braces: Vec<StatedBrace>) {
        let Some((run, _)) = self.run() else { return };
        if braces.is_empty() {
            return;
        }
        let mut run = run.clone();
        let near = |one: &StatedBrace| braces.iter().any(|brace| apart_m(one.at, brace.at) <= StatedBrace::REACH_M);
        run.braces.retain(|one| !near(one));
        run.braces.extend(braces);
        self.one_step_called(Deed::Brace, run);
    }

    fn one_step_called(&mut self, deed: Deed, run: Run) {
        self.history.begin_called(deed);
        self.make_all(vec![Edit::SetRun { run: Box::new(run) }]);
        self.history.end();
    }

    /// Logs a corner with its turn, so that it says what it says when the run has moved on.
    fn saw(&mut self, corner: usize, stood: bool) {
        let seen = self.run().and_then(|(run, worked)| {
            let corner = worked.lay.as_ref()?.corners.get(corner).filter(|corner| !corner.end)?;
            Some(CornerSeen {
                run: Some(run.id.clone()),
                at: corner.at,
                stood,
                turn_deg: Some(corner.turn_deg),
                wet: self.plan.ground.soil.wet,
                ..CornerSeen::default()
            })
        });
        let Some(seen) = seen else { return };
        let mut soil = self.plan.ground.soil.clone();
        soil.corners_seen.push(seen);
        self.make(Edit::SetSoil { soil });
    }
}
