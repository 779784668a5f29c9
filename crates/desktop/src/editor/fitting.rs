//! The run in hand made of whole panels: the worker looks for the outline, the editor takes it as one step.

use plan::{Deed, Edit, PinKind, Shape};
use workup::{FitRefusal, Fitted};

use super::Editor;
use crate::worker::FitAsked;

/// What came of a fit.
pub type FitAnswer = Result<Fitted, FitRefusal>;

/// How far a fit has come.
#[derive(Clone, Debug, Default)]
pub(super) enum Fitting {
    /// None was asked for, or the plan changed since.
    #[default]
    None,
    /// The worker is yet to be asked.
    ToAsk(FitAsked),
    /// The worker was asked.
    Asked,
    /// It answered; the plan had that revision when the answer was taken in.
    Answered(FitAsked, Box<FitAnswer>, u64),
}

impl Editor {
    /// Whether a fit is being looked for.
    pub fn is_fitting(&self) -> bool {
        matches!(self.fitting, Fitting::ToAsk(_) | Fitting::Asked)
    }

    /// How many panels the last fit was to double back, and what came of it, while it is about the run in hand and the
    /// plan is as it left it.
    pub fn fit_answer(&self) -> Option<(u32, &FitAnswer)> {
        match &self.fitting {
            Fitting::Answered(asked, answer, revision)
                if *revision == self.history.revision() && self.run().is_some_and(|(run, _)| run.id == asked.run) =>
            {
                Some((asked.double_back, answer))
            }
            _ => None,
        }
    }

    pub(super) fn ask_fit(&mut self, double_back: u32) {
        self.unpinned = 0;
        if let Some((run, _)) = self.run() {
            self.fitting = Fitting::ToAsk(FitAsked { run: run.id.clone(), double_back });
            self.to_ask = true;
        }
    }

    /// Pins that the last fit took out.
    pub fn unpinned(&self) -> usize {
        self.unpinned
    }

    /// The fit that goes into a request, once.
    pub(super) fn take_fit(&mut self) -> Option<FitAsked> {
        let Fitting::ToAsk(asked) = &mut self.fitting else { return None };
        let asked = std::mem::take(asked);
        self.fitting = Fitting::Asked;
        Some(asked)
    }

    /// The plan changed: what was asked is of no use any more.
    pub(super) fn give_up_fit(&mut self) {
        if self.is_fitting() {
            self.fitting = Fitting::None;
        }
    }

    /// Takes an answer in: an outline that was found becomes the run's.
    pub(super) fn fitted(&mut self, asked: FitAsked, answer: FitAnswer) {
        if let Ok(fitted) = &answer {
            self.lay_fitted(&asked.run, fitted);
        }
        self.fitting = Fitting::Answered(asked, Box::new(answer), self.history.revision());
    }

    /// The nearest outline in place of one that does not exist becomes the run's.
    pub(super) fn take_nearest(&mut self) {
        let Fitting::Answered(asked, answer, _) = &self.fitting else { return };
        if self.fit_answer().is_none() {
            return;
        }
        if let Err(FitRefusal { nearest: Some(nearest), .. }) = answer.as_ref() {
            let (run, nearest) = (asked.run.clone(), nearest.as_ref().clone());
            self.fitted(FitAsked { run, double_back: nearest.double_back }, Ok(nearest));
        }
    }

    /// A run with a start of its own keeps one, where the fitted chain begins.
    fn lay_fitted(&mut self, id: &str, fitted: &Fitted) {
        let Some(run) = self.plan.runs.iter().find(|run| run.id == id) else { return };
        let outline = fitted.outline.clone();
        let edit = if run.start_m.is_some() || !run.pins.is_empty() {
            let mut run = run.clone();
            run.outline = outline;
            if run.start_m.is_some() {
                run.start_m = Some(fitted.start_m);
                run.reversed = Some(fitted.reversed);
                run.nets = Some(fitted.nets.clone());
            }
            // Pins of the sketch would pull the chain off the corners that it was fitted to.
            let pins = run.pins.len();
            run.pins.retain(|pin| pin.kind == PinKind::Net);
            self.unpinned = pins - run.pins.len();
            Edit::SetRun { run: Box::new(run) }
        } else {
            Edit::SetOutline { shape: Shape::Run(id.to_owned()), outline }
        };
        self.history.begin_called(Deed::FitNets);
        self.make_all(vec![edit]);
        self.history.end();
    }
}
