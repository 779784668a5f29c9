//! The page about the ground: the paddock, the coop, what a run keeps off, what can hurt, the soil.

pub(super) mod coops;
pub(super) mod damp;
pub(super) mod features;
pub(super) mod fields;
pub(super) mod heights;
pub(super) mod lead;
mod soil;
pub(super) mod taping;
mod underlay;

use drawing::Thing;
use egui::{Align2, Id, Rect, Role, Sense, Stroke, StrokeKind, Ui, Vec2, WidgetInfo, pos2, vec2};
use plan::{HazardKind, KeepOut, Shape};
use words::texts::{About, Files, Gates, Shaping, Window as Text};

use super::{Desk, assumed, findings, picked, sides};
use crate::asking::Ask;
use crate::editor::{Editor, Message, Page};
use crate::facts;
use crate::icons::Icon;
use crate::kit::{self, ROW};
use crate::roster::{self, Item};
use crate::theme::{self, colour};
use crate::tool::{Drawn, Tool};

const KINDS: [(HazardKind, Text); 4] = [
    (HazardKind::OverheadLine, Text::OverheadLines),
    (HazardKind::PublicWay, Text::PublicWays),
    (HazardKind::OtherEnergisedFence, Text::OtherFences),
    (HazardKind::ForeignEarth, Text::ForeignEarths),
];

/// The field for what is typed next once the hand set something with a tool: the words of a label, the distance of known
/// points.
pub(crate) fn typed_next(was: &Tool, editor: &Editor) -> Option<Id> {
    let Tool::Outline { of, corners, .. } = was else { return None };
    match (of, editor.picked()) {
        (Drawn::Label, Some(Thing::Label { label })) if *editor.tool() == Tool::Pick => {
            Some(features::label_field(label))
        }
        (Drawn::TapePoint, Some(Thing::TapePoint { point })) if *editor.tool() == Tool::Pick => {
            Some(taping::name_id(point))
        }
        (Drawn::Known, _) if corners.len() < of.fewest() && editor.known_points().len() == of.fewest() => {
            Some(underlay::apart_field())
        }
        _ => None,
    }
}

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let boundary = &editor.plan().ground.boundary;
    let paddock_m2 = editor.workup().paddock_m2;
    let (aside, sentence) = if boundary.is_empty() {
        (String::new(), words.text(Text::NoPaddock).to_owned())
    } else {
        let round = words.far(editor.workup().paddock_round_m);
        let sentence = words.say(Text::PaddockSentence, &[("area", &words.area(paddock_m2)), ("round", &round)]);
        (words.field(paddock_m2), sentence)
    };
    let leads = lead::of(desk);
    match leads {
        Some(thing) => lead::title(ui, desk, thing, &sentence),
        None => kit::title(ui, words.text(Text::ThePaddock), &aside, &sentence, p),
    }
    ui.add_space(14.0);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(6.0, 6.0);
        tool(ui, desk, Drawn::Paddock, Icon::Outline, words.text(Text::DrawPaddock));
        if kit::button(ui, Icon::BringIn, words.text(Text::BringInShort), false, p)
            .on_hover_text(words.text(Files::BringInTitle))
            .clicked()
        {
            desk.said.ask(Ask::BringIn);
        }
        tool(ui, desk, Drawn::KeepOut, Icon::KeepOut, words.text(Shaping::DrawKeepOut));
        tool(ui, desk, Drawn::Water, Icon::Water, words.text(Shaping::DrawWater));
        tool(ui, desk, Drawn::Coop, Icon::Coop, words.text(Shaping::PlaceCoop));
        tool(ui, desk, Drawn::Gateway, Icon::Gate, words.text(Gates::PlaceGateway));
        features::tools(ui, desk);
        damp::tool(ui, desk);
        super::tape_button(ui, desk);
    });
    picked::tools(ui, desk);
    if let Some(thing) = leads {
        ui.add_space(6.0);
        lead::fields(ui, desk, thing);
    }
    picked_sides(ui, desk);
    if leads.is_some() {
        desk.section(ui, words.text(Text::ThePaddock), &aside, About::Paddock);
        desk.second(ui, &sentence);
    }
    coops::show(ui, desk);
    keep_outs(ui, desk);
    features::walls(ui, desk);
    hazards(ui, desk);
    features::shade(ui, desk);
    damp::places(ui, desk);
    features::labels(ui, desk);
    if lead::of(desk) != Some(Thing::Underlay) {
        underlay::show(ui, desk);
    }
    heights::show(ui, desk);
    taping::show(ui, desk);
    soil(ui, desk);
    findings(ui, desk);
    assumed::show(ui, desk, Page::Ground);
}

/// Whether something else is picked than in the frame before, so that the page is to be read from its beginning.
pub(super) fn leads_anew(ui: &Ui, desk: &Desk<'_>) -> bool {
    let (id, now) = (Id::unique("what leads the ground page"), lead::of(desk));
    let was = ui.data_mut(|data| std::mem::replace(data.get_temp_mut_or_default::<Option<Thing>>(id), now));
    now.is_some() && now != was
}

/// What a thing is called, numbered among its like where it has no name.
fn name_of(desk: &Desk<'_>, thing: Thing) -> String {
    roster::name(desk.editor, Item::Thing(thing))
}

/// A button that takes a drawing tool to hand, or lays it down.
fn tool(ui: &mut Ui, desk: &mut Desk<'_>, drawn: Drawn, icon: Icon, label: &str) {
    let on = desk.editor.tool().draws(drawn);
    if kit::button(ui, icon, label, on, desk.p).clicked() {
        desk.said.say(if on { Message::Escape } else { Message::Use(Tool::outline(drawn)) });
    }
}

/// The sides of the paddock or the keep-out that is picked.
fn picked_sides(ui: &mut Ui, desk: &mut Desk<'_>) {
    let ground = &desk.editor.plan().ground;
    match desk.editor.picked() {
        Some(Thing::Boundary | Thing::BoundaryCorner { .. } | Thing::BoundarySide { .. }) => {
            sides::show(ui, desk, &Shape::Boundary, &ground.boundary, true, |side| Thing::BoundarySide { side });
        }
        Some(
            Thing::KeepOut { keep_out } | Thing::KeepOutCorner { keep_out, .. } | Thing::KeepOutSide { keep_out, .. },
        ) => {
            let Some(stated) = ground.keep_outs.get(keep_out) else { return };
            sides::show(ui, desk, &Shape::KeepOut(keep_out), &stated.outline, true, |side| Thing::KeepOutSide {
                keep_out,
                side,
            });
        }
        _ => {}
    }
}

fn keep_outs(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    desk.section(ui, words.text(Text::KeepOuts), "", About::KeepOuts);
    if editor.plan().ground.keep_outs.is_empty() {
        ui.add_space(6.0);
        desk.second(ui, words.text(Text::NoKeepOuts));
        return;
    }
    kit::rule(ui, p);
    for (index, keep_out) in editor.plan().ground.keep_outs.iter().enumerate() {
        let thing = Thing::KeepOut { keep_out: index };
        let is_it = |other: Option<Thing>| {
            matches!(
                other,
                Some(Thing::KeepOut { keep_out } | Thing::KeepOutCorner { keep_out, .. } | Thing::KeepOutSide { keep_out, .. })
                    if keep_out == index
            )
        };
        let name = &*name_of(desk, thing);
        let rule = rule_of(desk, keep_out);
        let label = format!("{name}: {rule}");
        let id = Id::unique(("keep-out row", index));
        let (rect, response) = kit::row(ui, id, is_it(editor.picked()), is_it(editor.hovered()), &label, p);
        if response.hovered() {
            desk.said.hovered = desk.said.hovered.or(Some(thing));
        }
        if response.clicked() {
            desk.said.say(Message::Pick(Some(thing)));
        }
        let y = rect.center().y;
        kit::cell(ui, pos2(rect.left(), y), Align2::LEFT_CENTER, name, theme::regular(13.0), colour(p.ink));
        kit::cell(ui, pos2(rect.right(), y), Align2::RIGHT_CENTER, &rule, theme::regular(13.0), colour(p.ink2));
    }
}

fn rule_of(desk: &Desk<'_>, keep_out: &KeepOut) -> String {
    let words = desk.words;
    if keep_out.may_enclose() {
        words.text(Text::MayStandInside).to_owned()
    } else if keep_out.clearance_m() > 0.0 {
        words.say(Text::KeptOff, &[("clearance", &words.length(keep_out.clearance_m()))])
    } else {
        words.text(Text::KeptOut).to_owned()
    }
}

fn hazards(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    desk.section(ui, words.text(Text::AskedOfGround), "", About::Hazards);
    kit::rule(ui, p);
    let all = &editor.plan().ground.hazards;
    for (kind, name) in KINDS {
        let drawn: Vec<_> = all.iter().enumerate().filter(|(_, hazard)| hazard.kind == kind).collect();
        let name = words.text(name);
        let found = match drawn.as_slice() {
            [] => words.text(Text::NoneDrawn).to_owned(),
            [(_, one)] if !one.name.is_empty() => words.say(Text::OneDrawn, &[("name", &one.name)]),
            many => words.say(Text::ManyDrawn, &[("count", &many.len().to_string())]),
        };
        let label = format!("{name}: {found}");
        let font = theme::regular(13.0);
        let (name_wide, found_wide) = (kit::width(ui, name, font.clone()), kit::width(ui, &found, font.clone()));
        // What is drawn stands below its name where one line has no room for both.
        let below = 20.0 + name_wide + 12.0 + found_wide > ui.available_width();
        let tall = if below { ROW + 18.0 } else { ROW };
        let rect = if let Some(&(index, _)) = drawn.first() {
            let thing = Thing::Hazard { hazard: index };
            let is_it = |other: Option<Thing>| {
                matches!(other, Some(Thing::Hazard { hazard } | Thing::HazardCorner { hazard, .. })
                    if drawn.iter().any(|(index, _)| *index == hazard))
            };
            let id = Id::unique(("hazard row", kind as u8));
            let state = (is_it(editor.picked()), is_it(editor.hovered()));
            let (rect, response) = kit::tall_row(ui, id, state, &label, tall, p);
            if response.hovered() {
                desk.said.hovered = desk.said.hovered.or(Some(thing));
            }
            if response.clicked() {
                desk.said.say(Message::Pick(Some(thing)));
            }
            rect
        } else {
            let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), tall), Sense::hover());
            response.widget_info(|| WidgetInfo::labeled(Role::Label, true, &label));
            ui.painter().hline(rect.x_range(), rect.bottom() - 0.5, Stroke::new(1.0, colour(p.hairline)));
            rect
        };
        let y = rect.top() + ROW / 2.0;
        let square = Rect::from_center_size(pos2(rect.left() + 5.0, y), Vec2::splat(10.0));
        if drawn.is_empty() {
            ui.painter().rect_stroke(square, 0.0, Stroke::new(1.5, colour(p.ink)), StrokeKind::Inside);
        } else {
            ui.painter().rect_filled(square, 0.0, colour(p.ink));
        }
        kit::cell(ui, pos2(rect.left() + 20.0, y), Align2::LEFT_CENTER, name, font.clone(), colour(p.ink));
        let galley = kit::shortened(ui, &found, font, colour(p.ink2), rect.width() - 20.0);
        let y = if below { y + 18.0 } else { y };
        ui.painter().galley(pos2(rect.right() - galley.size().x, y - galley.size().y / 2.0), galley, colour(p.ink2));
    }
    ui.add_space(8.0);
    desk.second(ui, words.text(Shaping::Draw));
    ui.add_space(4.0);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(6.0, 6.0);
        for (kind, text) in [
            (HazardKind::OverheadLine, Shaping::DrawOverheadLine),
            (HazardKind::PublicWay, Shaping::DrawPublicWay),
            (HazardKind::OtherEnergisedFence, Shaping::DrawOtherFence),
            (HazardKind::ForeignEarth, Shaping::DrawForeignEarth),
        ] {
            let drawn = Drawn::Hazard(kind);
            let on = editor.tool().draws(drawn);
            if kit::choice(ui, words.text(text), on, p).clicked() {
                desk.said.say(if on { Message::Escape } else { Message::Use(Tool::outline(drawn)) });
            }
        }
    });
}

fn soil(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, editor) = (desk.words, desk.editor);
    desk.section(ui, words.text(Text::SoilHead), &facts::soil(words, editor.plan(), editor.workup()), About::Soil);
    ui.add_space(6.0);
    soil::show(ui, desk);
    let hold_n = editor.run().and_then(|(_, worked)| worked.lay.as_ref()?.corners.first()).map(|corner| corner.hold_n);
    if let Some(hold_n) = hold_n {
        ui.add_space(6.0);
        desk.second(ui, &words.say(Text::SpikesHold, &[("hold", &words.force(hold_n))]));
    }
}
