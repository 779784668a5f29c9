//! What follows from the plan: the cheap part at once, the rest from the worker.

use workup::{Known, RunWorkup};

use super::{Editor, Touch, rework};
use crate::worker::{Answer, Request};

impl Editor {
    /// What the worker should be asked, once. While something is in the hand the next frame would ask anew, and the
    /// worker would only slow it down.
    pub fn request(&mut self) -> Option<Request> {
        let asks = self.to_ask && self.held.is_none();
        self.to_ask &= !asks;
        if !asks {
            return None;
        }
        Some(Request { revision: self.history.revision(), plan: self.plan.clone(), fit: self.take_fit() })
    }

    /// Whether the worker's answer to the plan as it is has come.
    pub fn is_full(&self) -> bool {
        self.touches_of == Some(self.history.revision())
    }

    /// What is known from one workup to the next.
    pub fn known(&self) -> &Known {
        &self.known
    }

    pub(super) fn worked(&mut self, answer: Answer) {
        if answer.revision != self.history.revision() {
            return;
        }
        self.touches = answer.workup.runs.iter().filter_map(touch).collect();
        self.touches_of = Some(answer.revision);
        let waited = self.workup.runs.iter().any(RunWorkup::waits);
        self.workup = answer.workup;
        self.known.learn(answer.known);
        if waited {
            // Ways are drawn, and what is shut off is found.
            self.say(None);
        }
        if let Some((asked, fitted)) = answer.fitted {
            self.fitted(asked, fitted);
        }
    }

    /// The plan changed: what is cheap follows at once, the rest is asked for.
    pub(super) fn changed(&mut self) {
        let (workup, mut touched) =
            rework::quick(&self.plan, self.worked_of.as_ref(), std::mem::take(&mut self.workup), &mut self.known);
        self.workup = workup;
        self.worked_of = self.question.is_none().then(|| self.plan.clone());
        self.as_saved = self.saved.as_ref() == Some(&self.plan);
        if self.question.is_some() {
            self.workup.runs.iter_mut().for_each(|run| run.volts = None);
            touched = None;
        }
        self.run = self.run.min(self.plan.runs.len().saturating_sub(1));
        self.lose_curves();
        self.picked = self.picked.filter(|&thing| self.exists(thing));
        let others = std::mem::take(&mut self.chosen.others);
        self.chosen.others = others.into_iter().filter(|&thing| self.exists(thing)).collect();
        self.picked = self.picked.or_else(|| self.chosen.others.pop());
        self.view.hovered = self.view.hovered.filter(|&thing| self.exists(thing));
        // What is not laid out yet has no volts to be worked out.
        self.to_ask = self.question.is_none();
        self.give_up_fit();
        self.shapes_follow();
        self.say(touched.as_deref());
    }

    /// Puts what follows into words and lines, for the runs that were touched where nothing else changed.
    pub(super) fn say(&mut self, touched: Option<&[usize]>) {
        self.findings = self.rounds.findings(&self.plan, &self.workup, self.words, touched);
        let was = std::mem::take(&mut self.drawing);
        self.drawing = drawing::map_again(&self.scene(), was, touched);
        self.drawing.foremost = Some(self.run);
        self.drawing.chosen.clone_from(&self.chosen.others);
        self.stamp += 1;
    }
}

fn touch(run: &RunWorkup) -> Option<(String, Touch)> {
    let volts = run.volts.as_ref()?;
    let sample = volts.weakest_sample()?;
    Some((run.id.clone(), Touch { kv: sample.animal_kv?, j: sample.animal_j? }))
}
