//! The run in hand made of whole panels: the worker looks for the outline, the editor takes it as one step.

use plan::{Deed, Edit, Shape};
use workup::{FitRefusal, Fitted};

use super::Editor;

/// What came of a fit.
pub type FitAnswer = Result<Fitted, FitRefusal>;

/// How far a fit has come.
#[derive(Clone, Debug, Default)]
pub(super) enum Fitting {
    /// None was asked for, or the plan changed since.
    #[default]
    None,
    /// The worker is yet to be asked about the run of that id.
    ToAsk(String),
    /// The worker was asked.
    Asked,
    /// It answered about the run of that id; the plan had that revision when the answer was taken in.
    Answered(String, Box<FitAnswer>, u64),
}

impl Editor {
    /// Whether a fit is being looked for.
    pub fn is_fitting(&self) -> bool {
        matches!(self.fitting, Fitting::ToAsk(_) | Fitting::Asked)
    }

    /// What came of the last fit, while it is about the run in hand and the plan is as it left it.
    pub fn fit_answer(&self) -> Option<&FitAnswer> {
        match &self.fitting {
            Fitting::Answered(id, answer, revision)
                if *revision == self.history.revision() && self.run().is_some_and(|(run, _)| run.id == *id) =>
            {
                Some(answer)
            }
            _ => None,
        }
    }

    pub(super) fn ask_fit(&mut self) {
        if let Some((run, _)) = self.run() {
            self.fitting = Fitting::ToAsk(run.id.clone());
            self.to_ask = true;
        }
    }

    /// The run whose fit goes into a request, once.
    pub(super) fn take_fit(&mut self) -> Option<String> {
        let Fitting::ToAsk(id) = &mut self.fitting else { return None };
        let id = std::mem::take(id);
        self.fitting = Fitting::Asked;
        Some(id)
    }

    /// The plan changed: what was asked is of no use any more.
    pub(super) fn give_up_fit(&mut self) {
        if self.is_fitting() {
            self.fitting = Fitting::None;
        }
    }

    /// Takes an answer in: an outline that was found becomes the run's.
    pub(super) fn fitted(&mut self, id: String, answer: FitAnswer) {
        if let Ok(fitted) = &answer {
            self.lay_fitted(&id, fitted);
        }
        self.fitting = Fitting::Answered(id, Box::new(answer), self.history.revision());
    }

    /// The nearest outline in place of one that does not exist becomes the run's.
    pub(super) fn take_nearest(&mut self) {
        let Fitting::Answered(id, answer, _) = &self.fitting else { return };
        if self.fit_answer().is_none() {
            return;
        }
        if let Err(FitRefusal { nearest: Some(nearest), .. }) = answer.as_ref() {
            let (id, nearest) = (id.clone(), nearest.as_ref().clone());
            self.fitted(id, Ok(nearest));
        }
    }

    /// A run with a start of its own keeps one, where the fitted chain begins.
    fn lay_fitted(&mut self, id: &str, fitted: &Fitted) {
        let Some(run) = self.plan.runs.iter().find(|run| run.id == id) else { return };
        let outline = fitted.outline.clone();
        let edit = if run.start_m.is_some() {
            let mut run = run.clone();
            run.outline = outline;
            run.start_m = Some(fitted.start_m);
            run.reversed = Some(fitted.reversed);
            run.nets = Some(fitted.nets.clone());
            Edit::SetRun { run: Box::new(run) }
        } else {
            Edit::SetOutline { shape: Shape::Run(id.to_owned()), outline }
        };
        self.history.begin_called(Deed::FitNets);
        self.make_all(vec![edit]);
        self.history.end();
    }
}
