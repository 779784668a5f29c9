//! Names of things in sentences.

use plan::{Coop, Shape};
use words::capital;
use words::texts::Findings as Text;

use crate::Look;
use crate::names::{self, Named};

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

    /// A thing on the ground amid a sentence.
    pub(crate) fn amid(self, named: Named) -> String {
        names::amid(self.plan, self.words, named)
    }

    /// A thing on the ground at the beginning of a sentence.
    pub(crate) fn first(self, named: Named) -> String {
        names::first(self.plan, self.words, named)
    }

    /// A coop at the beginning of a sentence: of several by its name or number.
    pub(crate) fn coop(self, coop: &Coop) -> String {
        let several = self.plan.coops().nth(1).is_some();
        if several { names::coop(self.words, coop) } else { self.words.text(Text::TheCoop).to_owned() }
    }

    /// A shape at the beginning of a sentence.
    pub(crate) fn shape(self, shape: &Shape) -> String {
        match shape {
            Shape::Boundary => self.words.text(Text::ThePaddock).to_owned(),
            Shape::Run(id) => self.plan.run(id).map_or_else(|| id.clone(), |run| crate::run_name(run).to_owned()),
            Shape::KeepOut(index) => self.first(Named::KeepOut(*index)),
            Shape::Damp(index) => self.first(Named::Damp(*index)),
            Shape::Hazard(index) => self.first(Named::Hazard(*index)),
            Shape::Wall(index) => self.first(Named::Wall(*index)),
            Shape::Shade(index) => self.first(Named::Shade(*index)),
            Shape::Branch(id, index) => capital(&self.branch(&self.shape(&Shape::Run(id.clone())), *index)),
        }
    }

    /// A side of an outline by its corners, as tables call it: `1 to 2`.
    pub(crate) fn side(self, shape: &Shape, side: usize) -> String {
        let corners = self.plan.outline(shape).map_or(side + 2, <[_]>::len).max(1);
        let [from, to] = [side, (side + 1) % corners].map(|corner| (corner + 1).to_string());
        self.say(Text::SideEnds, &[("from", &from), ("to", &to)])
    }

    /// A branch amid a sentence.
    pub(crate) fn branch(self, run: &str, index: usize) -> String {
        let number = (index + 1).to_string();
        self.words.say(words::texts::Power::BranchOfRun, &[("number", &number), ("run", run)])
    }
}
