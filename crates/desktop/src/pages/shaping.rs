//! What shapes an outline, on its page: small buttons beside the page's tools, what a dragged corner keeps, a turn that is
//! typed.

use drawing::Thing;
use egui::{Id, Ui};
use words::texts::Shape as Text;
use words::{Measure, Range};
use workup::shaping::Keep;

use super::Desk;
use crate::editor::{Message, Over, ShapingMessage};
use crate::field::{self, Shown};
use crate::icons::Icon;
use crate::kit;

/// The buttons; they stand where what is picked is an outline, and those of a side only where one is. A branch is mirrored
/// alone.
pub(super) fn buttons(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    if editor.picked().is_none() || !editor.mirrors() {
        return;
    }
    let outline = editor.shaped().is_some();
    // Close beside each other, so that a click on the map does not part the page's tools anew.
    ui.spacing_mut().item_spacing.x = 0.0;
    let corner = matches!(
        editor.picked(),
        Some(Thing::RunCorner { .. } | Thing::BoundaryCorner { .. } | Thing::KeepOutCorner { .. })
    );
    for (shown, icon, name, said) in [
        (outline, Icon::Square, Text::SquareUp, ShapingMessage::SquareUp),
        (true, Icon::MirrorEast, Text::MirrorEastWest, ShapingMessage::Mirror(Over::EastWest)),
        (true, Icon::MirrorNorth, Text::MirrorNorthSouth, ShapingMessage::Mirror(Over::NorthSouth)),
        (editor.has_side(), Icon::MirrorSide, Text::MirrorOverSide, ShapingMessage::Mirror(Over::Side)),
        (editor.shares_side(), Icon::Beside, Text::BesideMirrored, ShapingMessage::Beside(true)),
        (editor.shares_side(), Icon::BesideAsIs, Text::BesideShifted, ShapingMessage::Beside(false)),
        (corner, Icon::Pivot, Text::TurnHere, ShapingMessage::PivotHere),
        (editor.has_pivot(), Icon::PivotMiddle, Text::TurnMiddle, ShapingMessage::PivotMiddle),
    ] {
        if shown && kit::icon_close(ui, icon, words.text(name), p).clicked() {
            desk.said.say(Message::Shaping(said));
        }
    }
}

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
