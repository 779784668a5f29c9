//! The sides of an outline, each with its length in a field: typing one moves the side's far corner along it.

use drawing::Thing;
use egui::{Id, Rect, Ui};
use plan::{Point, Run, Shape};
use words::texts::Shaping as Text;
use words::{Measure, Range};
use workup::Slope;
use workup::slope::{NoSide, side_on_map_m};

use super::Desk;
use crate::editor::Message;
use crate::field::{self, Label, Shown};
use crate::tool::apart_m;

/// A side longer than this is a slip of the pen, metres.
const SIDE_M: Range = Range::between(0.1, 10_000.0);
/// More sides than this are a traced line: its corners are dragged, not typed.
const MOST_SIDES: usize = 24;

/// Shows them under a head of their own; `thing` names a side for the map. Where the ground of a run's sides is known,
/// their lengths are those along the ground, as on the map and on the unrolled line.
pub(super) fn show(
    ui: &mut Ui,
    desk: &mut Desk<'_>,
    shape: &Shape,
    outline: &[Point],
    closed: bool,
    on_ground: Option<(&Run, &Slope)>,
    thing: impl Fn(usize) -> Thing,
) {
    if count(outline, closed) == 0 {
        return;
    }
    let words = desk.words;
    let aside = if on_ground.is_some() { Text::SidesAsideGround } else { Text::SidesAside };
    desk.section(ui, words.text(Text::Sides), words.text(aside));
    ui.add_space(6.0);
    rows(ui, desk, shape, outline, closed, on_ground, thing);
}

/// How many sides are shown: those of an outline that is no traced line.
fn count(outline: &[Point], closed: bool) -> usize {
    let corners = outline.len();
    let sides = if closed { corners } else { corners.saturating_sub(1) };
    if corners < 2 || sides > MOST_SIDES { 0 } else { sides }
}

/// Their rows alone; those of a branch are told from the run's own.
pub(super) fn rows(
    ui: &mut Ui,
    desk: &mut Desk<'_>,
    shape: &Shape,
    outline: &[Point],
    closed: bool,
    on_ground: Option<(&Run, &Slope)>,
    thing: impl Fn(usize) -> Thing,
) {
    let (words, plan, corners) = (desk.words, desk.editor.plan(), outline.len());
    for side in 0..count(outline, closed) {
        let (from, to) = (side, (side + 1) % corners);
        let numbers = [("from", (from + 1).to_string()), ("to", (to + 1).to_string())];
        let numbers = numbers.each_ref().map(|(name, number)| (*name, number.as_str()));
        let (shown, own) = (words.say(Text::SideFromTo, &numbers), words.say(Text::SideLabel, &numbers));
        let said = match shape {
            Shape::Branch(_, branch) => {
                words.say(Text::OfBranch, &[("side", &own), ("branch", &(branch + 1).to_string())])
            }
            _ => own,
        };
        let found = on_ground.and_then(|(_, slope)| slope.sides.iter().find(|one| one.vertex == side));
        let length_m = found.map_or_else(|| apart_m(outline[from], outline[to]), |found| found.surface_m);
        let id = Id::unique(("side length", shape, side));
        let figure = field::figure(words, Measure::Length, SIDE_M);
        // The field is of the ground, and a corner is moved on the map.
        let read = |text: &str| {
            let typed_m = figure(text)?;
            let on_map = on_ground.map_or(Ok(typed_m), |(run, _)| side_on_map_m(plan, run, side, typed_m));
            on_map.map_err(|why| {
                let text = match why {
                    NoSide::TooShort => Text::SideTooShort,
                    NoSide::NotBuilt => Text::SideNotBuilt,
                };
                words.text(text).to_owned()
            })
        };
        let value = Shown::of(words, Measure::Length, length_m, false);
        let top = ui.cursor().top();
        if let Some(length_m) = field::line(ui, desk.p, id, Label { shown: &shown, said: &said }, &value, read) {
            desk.said.say(Message::SideLength(shape.clone(), side, length_m));
        }
        let row = Rect::from_x_y_ranges(ui.max_rect().x_range(), top..=ui.cursor().top());
        if ui.rect_contains_pointer(row) {
            desk.said.hovered = desk.said.hovered.or(Some(thing(side)));
        }
    }
}
