//! What holds a corner, taken: braces stated, or the corner cut, each as one step.

use drawing::Thing;
use plan::{CornerSeen, Deed, Edit, Run, StatedBrace};
use words::texts::Shape as Text;
use workup::bracing::{Detail, Mend, cut_over_posts, cut_run};

use super::Editor;

/// Over so many posts a keeper cuts a corner by hand; what holds by itself may take more.
const CUT_POSTS: usize = 2;

/// What a view says about braces of the run in hand; corners are places in its lay's list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BracingMessage {
    /// Take a way of holding a corner: the corner's place, then the mend's in its list.
    Take(usize, usize),
    /// Set the cheapest brace at every corner and end where one holds.
    SetAll,
    /// Take back what is set at a corner.
    TakeBack(usize),
    /// Take back a brace that stands at no corner, by its place in the run's list.
    TakeBackStray(usize),
    /// A corner without a brace stood, or leaned.
    Saw(usize, bool),
    /// The part about the wind is in sight, or no longer.
    LookAtWind(bool),
}

impl Editor {
    /// The run in hand's corners in detail, in its lay's order.
    pub fn corner_details(&self) -> &[Detail] {
        let worked = self.run().and_then(|(_, worked)| worked.bracing.as_ref());
        worked.map_or(&[], |bracing| bracing.details.as_slice())
    }

    /// Whether the page's part about the wind is in sight.
    pub fn looks_at_wind(&self) -> bool {
        self.looks_at_wind
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
                let cheapest = |(corner, detail)| Some((corner, Self::cheapest_brace(detail)?.1.brace.clone()?));
                let braces: Vec<_> = self.corner_details().iter().enumerate().filter_map(cheapest).collect();
                self.set_braces(braces);
            }
            BracingMessage::TakeBack(corner) => {
                let braces = self.corner_details().get(corner).map(|detail| detail.braces.clone());
                self.take_back(&braces.unwrap_or_default());
            }
            BracingMessage::TakeBackStray(brace) => self.take_back(&[brace]),
            BracingMessage::Saw(corner, stood) => self.saw(corner, stood),
            BracingMessage::LookAtWind(looks) => self.looks_at_wind = looks,
        }
    }

    fn take_mend(&mut self, corner: usize, mend: usize) {
        let Some(mend) = self.corner_details().get(corner).and_then(|detail| detail.mends.get(mend)) else { return };
        if let Some(brace) = mend.brace.clone() {
            self.set_braces(vec![(corner, brace)]);
        } else if let Some(cut) = &mend.cut
            && let Some(run) = self.run().and_then(|(run, _)| cut_run(&self.plan, run, cut))
        {
            // The vertices that follow have other numbers now.
            self.pick(None);
            self.one_step_called(Deed::CutCorner, run);
        }
    }

    /// Cuts the picked corner of a run over two posts: its turn is shared between them.
    pub(super) fn cut_corner(&mut self) {
        let Some(Thing::RunCorner { run, vertex }) = self.picked.filter(|_| !self.has_several()) else {
            self.shape_told = Some(Text::PickCornerOfRun);
            return;
        };
        if self.unlocked().is_empty() {
            return;
        }
        let worked = self.workup.runs.get(run).and_then(|worked| worked.lay.as_ref());
        let found = self.plan.runs.get(run).zip(worked);
        let cut = found.and_then(|(stated, lay)| {
            // What is stated for the corner goes with it.
            let place = lay.corners.iter().position(|corner| corner.vertex == Some(vertex));
            let details = self.workup.runs[run].bracing.as_ref().map_or(&[][..], |bracing| &bracing.details);
            let braces = place.and_then(|place| details.get(place)).map_or(&[][..], |detail| &detail.braces);
            cut_over_posts(&self.plan, stated, lay, (vertex, braces), CUT_POSTS)
        });
        match cut {
            Some(cut) => {
                self.one_step_called(Deed::CutCorner, cut);
                self.pick(Some(Thing::RunCorner { run, vertex }));
            }
            None => self.shape_told = Some(Text::CornerNotCut),
        }
    }

    /// Sets braces at corners, each in place of what was set there.
    fn set_braces(&mut self, braces: Vec<(usize, StatedBrace)>) {
        if braces.is_empty() {
            return;
        }
        let details = self.corner_details();
        let was = braces.iter().filter_map(|(corner, _)| details.get(*corner)).flat_map(|detail| &detail.braces);
        let was: Vec<usize> = was.copied().collect();
        let Some(mut run) = self.run_without(&was) else { return };
        run.braces.extend(braces.into_iter().map(|(_, brace)| brace));
        self.one_step_called(Deed::Brace, run);
    }

    fn take_back(&mut self, braces: &[usize]) {
        if let Some(run) = self.run_without(braces).filter(|_| !braces.is_empty()) {
            self.one_step_called(Deed::TakeBrace, run);
        }
    }

    /// The run in hand without those of its braces, by their places in its list.
    fn run_without(&self, braces: &[usize]) -> Option<Run> {
        let (run, _) = self.run()?;
        let kept = run.braces.iter().enumerate().filter(|(number, _)| !braces.contains(number));
        Some(Run { braces: kept.map(|(_, brace)| brace.clone()).collect(), ..run.clone() })
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
