//! Names of things in sentences.

use plan::{Hazard, HazardKind, Shape};
use words::texts::Findings as Text;

use crate::Look;

impl Look<'_> {
    pub(crate) fn say(self, text: Text, places: &[(&str, &str)]) -> String {
        self.words.say(text, places)
    }

    /// `Corner 4`, or `Corners 1, 3 and 4`.
    pub(crate) fn corners(self, numbers: &[usize]) -> String {
        let as_text: Vec<String> = numbers.iter().map(ToString::to_string).collect();
        match as_text.split_last() {
            Some((last, [])) => self.say(Text::Corner, &[("number", last)]),
            Some((last, rest)) => self.say(Text::Corners, &[("numbers", &rest.join(", ")), ("last", last)]),
            None => String::new(),
        }
    }

    pub(crate) fn hazard(self, hazard: &Hazard) -> String {
        if !hazard.name.is_empty() {
            return hazard.name.clone();
        }
        self.words
            .text(match hazard.kind {
                HazardKind::OverheadLine => Text::OverheadLine,
                HazardKind::PublicWay => Text::PublicWay,
                HazardKind::OtherEnergisedFence => Text::OtherFence,
                HazardKind::ForeignEarth => Text::ForeignEarth,
            })
            .to_owned()
    }

    pub(crate) fn shape(self, shape: &Shape) -> String {
        match shape {
            Shape::Boundary => self.words.text(Text::ThePaddock).to_owned(),
            Shape::Run(id) => self.plan.run(id).map_or_else(|| id.clone(), |run| crate::run_name(run).to_owned()),
            Shape::KeepOut(index) => self.keep_out(*index),
            Shape::Damp(index) => self.damp(*index),
            Shape::Hazard(index) => {
                self.plan.ground.hazards.get(*index).map(|hazard| self.hazard(hazard)).unwrap_or_default()
            }
            Shape::Wall(_) => self.words.text(words::texts::Underlay::AWall).to_owned(),
            Shape::Shade(_) => self.words.text(words::texts::Underlay::AShade).to_owned(),
            Shape::Branch(id, index) => {
                let run = self.shape(&Shape::Run(id.clone()));
                let number = (index + 1).to_string();
                self.words.say(words::texts::Power::BranchOfRun, &[("number", &number), ("run", &run)])
            }
        }
    }

    /// What damp ground is called.
    pub(crate) fn damp(self, index: usize) -> String {
        damp_name(self.plan, self.words, index)
    }

    pub(crate) fn keep_out(self, index: usize) -> String {
        match self.plan.ground.keep_outs.get(index) {
            Some(keep_out) if !keep_out.name.is_empty() => keep_out.name.clone(),
            _ => self.words.text(Text::KeepOut).to_owned(),
        }
    }
}

/// What damp ground is called: by its name, else by what it is.
pub fn damp_name(plan: &plan::Plan, words: words::Words, index: usize) -> String {
    match plan.ground.damp.get(index) {
        Some(damp) if !damp.name.is_empty() => damp.name.clone(),
        _ => words.text(words::texts::Damp::APlace).to_owned(),
    }
}
