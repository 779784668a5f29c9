//! What can be done to what is picked: a row of small buttons under the page's tools.
//!
//! The row keeps its height while nothing is picked, so that a click on the map moves nothing under the pointer.

use drawing::Thing;
use egui::{Align, Layout, Ui, vec2};
use words::texts::{Shape, Shaping};

use super::Desk;
use crate::editor::{Editor, Message, Over, Page, ShapingMessage};
use crate::icons::Icon;
use crate::kit;
use crate::theme::{self, colour};

/// Width of a button; in a narrow page they stand closer.
const WIDE: f32 = 28.0;

/// A button: its icon, what it is called, what it says.
type Button = (Icon, &'static str, Message);

pub(super) fn tools(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p) = (desk.words, desk.p);
    let buttons = buttons(desk);
    ui.add_space(6.0);
    let (wide, layout) = (ui.available_width(), Layout::left_to_right(Align::Center));
    ui.allocate_ui_with_layout(vec2(wide, kit::BUTTON), layout, |ui| {
        ui.set_min_height(kit::BUTTON);
        ui.spacing_mut().item_spacing.x = 0.0;
        if buttons.is_empty() {
            kit::prose(ui, words.text(Shaping::PickedHint), theme::regular(12.0), colour(p.ink2));
        }
        let each = WIDE.min(wide / buttons.len().max(1) as f32);
        for (icon, name, message) in buttons {
            if kit::icon_close(ui, icon, name, each, p).clicked() {
                desk.said.say(message);
            }
        }
    });
}

/// What can be done to what is picked, where it belongs to one of the pages of what is drawn.
fn buttons(desk: &Desk<'_>) -> Vec<Button> {
    let (words, editor) = (desk.words, desk.editor);
    let Some(picked) = editor.picked() else { return Vec::new() };
    let mut buttons = Vec::new();
    if doubles(picked) {
        buttons.push((Icon::Double, words.text(Shaping::Duplicate), Message::Duplicate));
    }
    if goes(editor, picked) {
        buttons.push((Icon::TakeOut, words.text(Shaping::Delete), Message::Remove));
    }
    if !editor.mirrors() {
        return buttons;
    }
    // A branch is mirrored alone.
    let outline = editor.shaped().is_some();
    let corner = matches!(picked, Thing::RunCorner { .. } | Thing::BoundaryCorner { .. } | Thing::KeepOutCorner { .. });
    let shaping = [
        (outline, Icon::Square, Shape::SquareUp, ShapingMessage::SquareUp),
        (matches!(picked, Thing::RunCorner { .. }), Icon::CutCorner, Shape::CutCorner, ShapingMessage::CutCorner),
        (true, Icon::MirrorEast, Shape::MirrorEastWest, ShapingMessage::Mirror(Over::EastWest)),
        (true, Icon::MirrorNorth, Shape::MirrorNorthSouth, ShapingMessage::Mirror(Over::NorthSouth)),
        (editor.has_side(), Icon::MirrorSide, Shape::MirrorOverSide, ShapingMessage::Mirror(Over::Side)),
        (editor.shares_side(), Icon::Beside, Shape::BesideMirrored, ShapingMessage::Beside(true)),
        (editor.shares_side(), Icon::BesideAsIs, Shape::BesideShifted, ShapingMessage::Beside(false)),
        (corner, Icon::Pivot, Shape::TurnHere, ShapingMessage::PivotHere),
        (editor.has_pivot(), Icon::PivotMiddle, Shape::TurnMiddle, ShapingMessage::PivotMiddle),
    ];
    let shaping = shaping.into_iter().filter(|(shown, ..)| *shown);
    buttons.extend(shaping.map(|(_, icon, name, said)| (icon, words.text(name), Message::Shaping(said))));
    buttons
}

/// Whether there can be a second one of it.
fn doubles(thing: Thing) -> bool {
    let whole = thing.whole();
    matches!(
        whole,
        Thing::Run { .. }
            | Thing::KeepOut { .. }
            | Thing::Wall { .. }
            | Thing::Shade { .. }
            | Thing::Damp { .. }
            | Thing::Label { .. }
            | Thing::Coop { .. }
    )
}

/// Whether it can be taken out from here: what stands on the ground, a run, where its rolls are put down. No side goes
/// alone, nor does a door; what belongs to another page goes there.
fn goes(editor: &Editor, thing: Thing) -> bool {
    match thing {
        Thing::RunSide { .. } | Thing::BoundarySide { .. } | Thing::CoopDoor | Thing::Finding { .. } => false,
        Thing::Run { .. } | Thing::RunCorner { .. } | Thing::Drop { .. } => true,
        thing => editor.page_about(thing) == Page::Ground,
    }
}
