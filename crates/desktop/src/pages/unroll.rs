//! The page while a run is unrolled: what it would enclose if it closed here, its sides, what is left, and the keys.

use egui::{Align2, Id, Sense, Stroke, StrokeKind, Ui, pos2, vec2};
use words::texts::{About, Unroll as Text, Window};

use super::Desk;
use crate::editor::InHand;
use crate::kit::{self, Figure};
use crate::theme::{self, colour};
use crate::tool::{FEWEST_CORNERS, Tool, apart_m};
use crate::{commands, facts, icons};

/// Height of a key's row and of the key, and the key's least width.
const KEY_ROW: f32 = 27.0;
const KEY: f32 = 20.0;
const LEAST_KEY: f32 = 72.0;

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, in_hand: &InHand) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let Tool::Outline { corners, .. } = editor.tool() else { return };
    let number = (editor.plan().runs.len() + 1).to_string();
    let aside = words.say(Window::RunNumber, &[("number", &number)]);
    let sentence = match corners.len() {
        0 => words.text(Text::FirstCorner).to_owned(),
        set => words.say(Text::FollowsPointer, &[("number", &(set + 1).to_string())]),
    };
    kit::title(ui, words.text(Text::Title), &aside, &sentence, p);
    ui.add_space(14.0);
    if kit::button(ui, icons::Icon::Coil, words.text(Text::Start), true, p).clicked() {
        desk.said.say(crate::editor::Message::Escape);
    }
    let closed = in_hand.closed.as_ref().and_then(|closed| closed.run());
    if let Some(lay) = closed.and_then(|(_, worked)| worked.lay.as_ref()) {
        ui.add_space(16.0);
        let (area, unit) = words.area_parts(lay.area_m2);
        let birds = editor.plan().coop.as_ref().and_then(|coop| coop.birds);
        let each = birds
            .and_then(|birds| workup::stocking::each_m2(lay.area_m2, birds))
            .map(|each_m2| words.area_each(each_m2));
        let (needed, advised) = facts::braces(lay);
        let braces = (needed + advised).to_string();
        let mut figures = vec![Figure {
            value: &area,
            unit,
            label: words.text(Text::IfClosedHere),
            about: words.text(About::Ground),
            assumed: false,
        }];
        if let Some((figure, unit)) = each.as_deref().and_then(|each| each.rsplit_once(' ')) {
            figures.push(Figure {
                value: figure,
                unit,
                label: words.text(Text::EachIfClosed),
                about: words.text(About::Each),
                assumed: false,
            });
        }
        figures.push(Figure {
            value: &braces,
            unit: "",
            label: words.text(Text::Braces),
            about: words.text(About::BracesIfClosed),
            assumed: false,
        });
        kit::figures(ui, &figures, p);
    }
    sides(ui, desk, in_hand, corners.len());
    store(ui, desk, in_hand);
    keys(ui, desk);
}

fn sides(ui: &mut Ui, desk: &mut Desk<'_>, in_hand: &InHand, set: usize) {
    let (words, p, unrolled) = (desk.words, desk.p, &in_hand.unrolled);
    let corners = &unrolled.corners;
    if corners.len() < 2 {
        return;
    }
    desk.section(ui, words.text(Text::Sides), "", About::Sides);
    let wide = ui.available_width();
    let ends = [0.44, 0.72, 1.0].map(|share| share * wide);
    let (head, _) = ui.allocate_exact_size(vec2(wide, 20.0), Sense::hover());
    for (text, end) in [Text::Panels, Text::Length, Text::TurnAfter].into_iter().zip(ends) {
        let at = pos2(head.left() + end, head.bottom() - 4.0);
        kit::cell(ui, at, Align2::RIGHT_BOTTOM, words.text(text), theme::regular(11.0), colour(p.ink2));
    }
    kit::rule(ui, p);
    let closes = corners.len() >= FEWEST_CORNERS;
    let count = if closes { corners.len() } else { corners.len() - 1 };
    for side in 0..count {
        let (one, other) = (corners[side], corners[(side + 1) % corners.len()]);
        let length_m = apart_m(one, other);
        let panels = in_hand.rolls.panels(unrolled.along_m[side], unrolled.along_m[side] + length_m);
        let turn = unrolled.turns_deg.get((side + 1) % corners.len()).copied().unwrap_or(0.0);
        let turns = closes;
        let in_hand = side + 1 == set;
        let label = words.say(
            words::texts::Shaping::SideFromTo,
            &[("from", &(side + 1).to_string()), ("to", &((side + 1) % corners.len() + 1).to_string())],
        );
        let (rect, _) = kit::row(ui, Id::unique(("side in hand", side)), in_hand, false, &label, p);
        let ink = colour(if closes && side + 1 == count { p.ink2 } else { p.ink });
        let font = if in_hand { theme::medium(13.0) } else { theme::regular(13.0) };
        let y = rect.center().y;
        kit::cell(ui, pos2(rect.left(), y), Align2::LEFT_CENTER, &label, font.clone(), ink);
        let cells = [
            panels.map_or_else(|| "–".to_owned(), |panels| panels.to_string()),
            words.length(length_m),
            if turns { words.degrees(turn) } else { String::new() },
        ];
        for (text, end) in cells.iter().zip(ends) {
            kit::cell(ui, pos2(rect.left() + end, y), Align2::RIGHT_CENTER, text, font.clone(), ink);
        }
    }
}

fn store(ui: &mut Ui, desk: &mut Desk<'_>, in_hand: &InHand) {
    let (words, p, unrolled) = (desk.words, desk.p, &in_hand.unrolled);
    // Before the first corner is set no roll is begun.
    let begun = matches!(desk.editor.tool(), Tool::Outline { corners, .. } if !corners.is_empty());
    let left = if begun { unrolled.in_store } else { in_hand.rolls.count() };
    let places = [("left", left.to_string()), ("owned", in_hand.rolls.count().to_string())];
    let places = places.each_ref().map(|(name, figure)| (*name, figure.as_str()));
    desk.section(ui, words.text(Text::RollsOfRun), &words.say(Text::RollsOfRunAside, &places), About::RollsOfRun);
    ui.add_space(8.0);
    if desk.editor.plan().store.nets.is_empty() {
        desk.second(ui, words.text(Text::NoNetsHow));
    }
    super::run::rolls(ui, in_hand.rolls.count() - left, left, p);
}

fn keys(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p) = (desk.words, desk.p);
    desk.section(ui, words.text(Text::WhileYouDraw), "", None);
    ui.add_space(6.0);
    let named = commands::WHILE_UNROLLING.map(|(keys, does)| (words.keys(keys), does));
    let widest = named.iter().map(|(keys, _)| kit::width(ui, keys, theme::medium(11.0))).fold(0.0, f32::max);
    let key = vec2((widest + 16.0).max(LEAST_KEY), KEY);
    for (keys, does) in named {
        let room = ui.available_width() - key.x - 12.0;
        let galley = ui.painter().layout(words.text(does).to_owned(), theme::regular(12.0), colour(p.ink), room);
        let tall = KEY_ROW.max(galley.size().y + 4.0);
        let (row, _) = ui.allocate_exact_size(vec2(ui.available_width(), tall), Sense::hover());
        let place = egui::Rect::from_min_size(pos2(row.left(), row.center().y - key.y / 2.0), key);
        ui.painter().rect_stroke(place, theme::RADIUS, Stroke::new(1.0, colour(p.rule)), StrokeKind::Inside);
        ui.painter().text(place.center(), Align2::CENTER_CENTER, keys, theme::medium(11.0), colour(p.ink));
        let at = pos2(place.right() + 12.0, row.center().y - galley.size().y / 2.0);
        ui.painter().galley(at, galley, colour(p.ink));
    }
}
