//! Numbers of posts along the net: every so many as there is room for, outside, each at a longer tooth.
//!
//! They count along the nets as they are laid, as every page and the sheet speak of a post. The first with room for
//! a word says what is counted.

use words::texts::Map as Text;

use super::super::Inker;
use super::super::blocks::Block;
use super::super::pen::{Type, text_block};
use super::super::trace::{self, Px, toward};
use super::{EDGE_PX, crosses};
use crate::ink::{Anchor, Weight};
use crate::shape::{Form, Role, Thing};
use crate::told::Told;
use crate::view::Distance;

/// Numbered posts of one run are at least so far apart along it, pixels.
const APART_PX: f64 = 62.0;
/// Every so many posts: the first of these that leaves room.
const STEPS: [usize; 8] = [1, 5, 10, 20, 50, 100, 200, 500];
/// Numbers keep so far from what stands there.
const GAP_PX: f64 = 2.5;

/// A post that is seen, and outward from it.
struct Stand {
    post: usize,
    at: Px,
    outward: Px,
}

/// Of posts a panel apart, every how many gets its number where numbers need so much room.
pub(crate) fn every(panel_px: f64, apart_px: f64) -> Option<usize> {
    STEPS.into_iter().find(|&step| step as f64 * panel_px >= apart_px)
}

impl Inker<'_> {
    pub(super) fn post_numbers(&mut self) {
        // On paper there is no coming nearer.
        if self.specks() || (self.distance == Distance::Far && !self.prints()) {
            return;
        }
        let drawing = self.drawing;
        let mut of_runs: Vec<Vec<Stand>> = drawing.rivals.iter().map(|_| Vec::new()).collect();
        for shape in drawing.shapes() {
            if let (
                Form::Mark { at, toward_rad },
                Role::Post { .. } | Role::Join | Role::EndPost,
                Some(Thing::Post { post, .. }),
            ) = (&shape.form, shape.role, shape.thing)
                && let Some(stands) = shape.run.and_then(|run| of_runs.get_mut(run))
                && !self.is_ghost(shape)
            {
                stands.push(Stand { post, at: self.px(*at), outward: trace::heading(*toward_rad) });
            }
        }
        let lead = self.view.picked.and_then(Thing::run).or(drawing.foremost);
        if let Some(stands) = lead.and_then(|run| of_runs.get_mut(run)).map(std::mem::take) {
            self.numbers_of(stands);
        }
        for stands in of_runs {
            self.numbers_of(stands);
        }
    }

    /// Numbers the posts of a run.
    fn numbers_of(&mut self, mut stands: Vec<Stand>) {
        if !stands.iter().any(|stand| self.sees(stand.at)) {
            return;
        }
        stands.sort_by_key(|stand| stand.post);
        let panels: Vec<f64> = stands
            .windows(2)
            .filter(|pair| pair[1].post == pair[0].post + 1)
            .map(|pair| trace::apart(pair[0].at, pair[1].at))
            .filter(|&px| px > 0.5)
            .collect();
        if panels.is_empty() {
            return;
        }
        let Some(every) = every(panels.iter().sum::<f64>() / panels.len() as f64, APART_PX) else { return };
        let mut said = false;
        for stand in &stands {
            if (stand.post + 1).is_multiple_of(every) && self.sees(stand.at) {
                said |= self.post_number(stand, !said);
            }
        }
    }

    /// Puts a number down where there is room, with the word before it where there is room for that too; whether there was.
    fn post_number(&mut self, stand: &Stand, with_word: bool) -> bool {
        let kind = Type::new(11.0, Weight::Regular, self.palette.ink2);
        let number = (stand.post + 1).to_string();
        let tooth = match self.distance {
            Distance::Near => 13.0,
            Distance::Middle => 10.0,
            Distance::Far => 7.0,
        };
        let word = with_word.then(|| self.drawing.words.say(Text::PostNumber, &[("number", &number)]));
        for text in word.iter().chain([&number]) {
            let support = kind.width(text) / 2.0 * stand.outward[0].abs() + 5.0 * stand.outward[1].abs();
            let at = toward(stand.at, stand.outward, tooth + 4.0 + support);
            let block = text_block(at, text, kind, Anchor::Middle, 0.0);
            if self.is_free(&block) {
                let foot = toward(stand.at, stand.outward, 3.0);
                self.pen.line(&[foot, toward(stand.at, stand.outward, tooth)], 1.5, self.palette.ink);
                self.pen.text(at, text, kind, Anchor::Middle);
                self.taken.push(block);
                self.told.push((block, Told::Post));
                return *text != number;
            }
        }
        false
    }

    fn is_free(&self, block: &Block) -> bool {
        let [width, height] = self.view.size.map(f64::from);
        let inside = block
            .corners()
            .iter()
            .all(|at| at[0] >= EDGE_PX && at[1] >= EDGE_PX && at[0] <= width - EDGE_PX && at[1] <= height - EDGE_PX);
        let grown = block.grown(GAP_PX);
        inside && !self.taken.overlaps(&grown) && !crosses(&grown, &self.lines) && !crosses(&grown, &self.rings)
    }
}
