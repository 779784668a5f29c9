//! What shapes an outline, on its page: what a dragged corner keeps, a turn that is typed.

use egui::{Id, Ui};
use words::texts::Shape as Text;
use words::{Measure, Range};
use workup::shaping::Keep;

use super::Desk;
use crate::editor::{Message, ShapingMessage};
use crate::field::{self, Shown};

/// What a corner keeps while it is dragged.
pub(super) fn corner_choice(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p) = (desk.words, desk.p);
    let options = [
        (Keep::Free, words.text(Text::Free)),
        (Keep::Length, words.text(Text::KeepsLength)),
        (Keep::Angle, words.text(Text::KeepsAngle)),
    ];
    if let Some(keep) = field::choice(ui, p, words.text(Text::Corner), &options, Some(desk.editor.keep())) {
        desk.said.say(Message::Shaping(ShapingMessage::Keep(keep)));
    }
}

/// A turn that is typed, of what is picked or else of the run in hand.
pub(super) fn turn_by(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p) = (desk.words, desk.p);
    let read = field::figure(words, Measure::Degrees, Range::between(-360.0, 360.0));
    let shown = Shown::of(words, Measure::Degrees, 0.0, false);
    if let Some(turn) = field::line(ui, p, Id::unique("turn by"), words.text(Text::TurnBy), &shown, read) {
        desk.said.say(Message::Turn(turn));
    }
}
