//! The page about readings: what is weakest as read, all readings of the run in hand, one more.
//!
//! Nothing here is fitted: a reading stands beside what the model says is likely at that place, and the page says so.

mod add;
mod place;

use drawing::Thing;
use drawing::map::readings;
use egui::{Align2, Id, Rect, Role, Sense, Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2};
use plan::{Edit, ReadingKind};
use words::texts::{About, Book as Text};

use self::place::Places;
use super::{Desk, findings};
use crate::editor::Message;
use crate::icons::Icon;
use crate::kit;
use crate::theme::{self, colour};

/// Height of a reading's row: place and figure over kind and day.
const ROW: f32 = 44.0;
/// Letters of a day, and of a day with its hour and minute, as they are stated.
const ISO_DAY: usize = 10;
const ISO_MINUTE: usize = 16;

/// A day, with the hour and minute where they are stated; what goes beyond those stands in the tooltip.
fn day_and_hour(when: &str) -> String {
    match (when.get(..ISO_DAY), when.get(ISO_DAY + 1..ISO_MINUTE)) {
        (Some(day), Some(hour)) if when[ISO_DAY..].starts_with('T') => format!("{day} {hour}"),
        _ => when.to_owned(),
    }
}

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let Some((run, worked)) = editor.run() else {
        kit::title(ui, words.text(Text::Title), "", words.text(Text::NoRun), p);
        super::way_to_a_run(ui, desk);
        return;
    };
    let places = Places { plan: editor.plan(), run, worked, words };
    let of = readings::of_run(editor.plan(), &run.id);
    let aside = words.say(Text::OfRun, &[("number", &(editor.run_index() + 1).to_string())]);
    kit::title(ui, words.text(Text::Title), &aside, &weakest(&places, &of), p);
    if let Some(target) = places.under_target(&of) {
        ui.add_space(6.0);
        let text = words.say(Text::UnderTarget, &[("target", &words.kilovolts(target))]);
        kit::prose(ui, &text, theme::medium(13.0), colour(p.danger));
    }
    if places.weakest_read(&of).is_some()
        && let Some(weakest) = worked.volts.as_ref().and_then(|volts| volts.weakest)
    {
        ui.add_space(6.0);
        let (low, high) = (words.kilovolts(weakest.low_kv), words.kilovolts(weakest.high_kv));
        desk.second(ui, &words.say(Text::NotFitted, &[("low", &low), ("high", &high)]));
    }
    add::show(ui, desk, &places, of.is_empty());
    list(ui, desk, &places, &of);
    findings(ui, desk);
}

/// The weakest post in a sentence: as read, beside what is likely there.
fn weakest(places: &Places<'_>, of: &[usize]) -> String {
    let words = places.words;
    let Some(reading) = places.weakest_read(of) else {
        return words.text(if of.is_empty() { Text::NothingRead } else { Text::NoFenceRead }).to_owned();
    };
    let (place, read) = (places.name(reading), words.kilovolts(reading.value.unwrap_or_default()));
    let when = readings::when(reading);
    let day = if when.is_empty() { String::new() } else { words.say(Text::OnDay, &[("day", &day_and_hour(when))]) };
    let said = [("place", place.as_str()), ("read", read.as_str()), ("day", day.as_str())];
    match places.likely_kv(reading) {
        Some(kv) => {
            let likely = words.kilovolts(kv);
            words.say(Text::WeakestRead, &[said[0], said[1], said[2], ("likely", &likely)])
        }
        None => words.say(Text::WeakestReadAlone, &said),
    }
}

/// Every reading of the run, newest last.
fn list(ui: &mut Ui, desk: &mut Desk<'_>, places: &Places<'_>, of: &[usize]) {
    let (words, p) = (desk.words, desk.p);
    if of.is_empty() {
        return;
    }
    let count = match of.len() {
        1 => words.text(Text::CountOne).to_owned(),
        count => words.say(Text::Count, &[("count", &count.to_string())]),
    };
    desk.section(ui, words.text(Text::Readings), &count, About::Readings);
    kit::rule(ui, p);
    for &index in of {
        row(ui, desk, places, index);
    }
}

fn row(ui: &mut Ui, desk: &mut Desk<'_>, places: &Places<'_>, index: usize) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let reading = &places.plan.readings[index];
    let thing = Thing::Reading { run: editor.run_index(), reading: index };
    let (picked, hovered) = (editor.picked() == Some(thing), editor.hovered() == Some(thing));
    let (place, value) = (places.name(reading), places.value(reading));
    let when = readings::when(reading);
    let kind = words.text(place::kind(reading.kind));
    let day = if when.is_empty() { String::new() } else { words.say(Text::OnDay, &[("day", &day_and_hour(when))]) };
    let said = [("place", place.as_str()), ("kind", kind), ("value", value.as_str()), ("day", day.as_str())];
    let label = words.say(Text::RowSaid, &said);

    let expected = places.likely_kv(reading).map(|kv| words.kilovolts(kv));
    let beside = match (reading.kind, expected) {
        (ReadingKind::FenceKv, Some(kv)) => words.say(Text::KindExpected, &[("kind", kind), ("expected", &kv)]),
        (ReadingKind::EarthKv, Some(kv)) => words.say(Text::Expected, &[("expected", &kv)]),
        (ReadingKind::FenceKv, None) => kind.to_owned(),
        (ReadingKind::EnergizerKv, _) => words.text(Text::Unclipped).to_owned(),
        (ReadingKind::Ticking, _) => words.text(Text::Heard).to_owned(),
        (ReadingKind::EarthKv, None) | (ReadingKind::BatteryV, _) => String::new(),
    };
    let shown_day = if when.is_empty() { words.text(Text::NoDay).to_owned() } else { day_and_hour(when) };
    let small = theme::regular(12.0);
    let wide = ui.available_width();
    let day = kit::shortened(ui, &shown_day, small.clone(), colour(p.ink2), wide * 0.5);
    // The day stands below what was expected where one line has no room for both.
    let below_it = kit::width(ui, &beside, small.clone()) > wide - 36.0 - day.size().x - 12.0;
    let tall = if below_it { ROW + 15.0 } else { ROW };
    let (rect, _) = ui.allocate_exact_size(vec2(wide, tall), Sense::hover());
    let reach = Rect::from_min_max(rect.min - vec2(8.0, 0.0), pos2(rect.right() - 32.0, rect.bottom()));
    let response = ui.interact(reach, Id::unique(("reading row", index)), Sense::click());
    response.widget_info(|| WidgetInfo::selected(Role::Row, true, picked, &label));
    if picked {
        ui.painter().rect_filled(reach, 0.0, colour(p.picked_row));
    }
    ui.painter().hline(rect.x_range(), rect.bottom() - 0.5, Stroke::new(1.0, colour(p.hairline)));
    if (hovered || response.hovered()) && !picked {
        ui.painter().rect_stroke(reach.shrink(0.75), 0.0, Stroke::new(1.5, colour(p.ink)), StrokeKind::Inside);
    }
    kit::focus_ring(ui, &response, p);
    if response.hovered() {
        desk.said.hovered = desk.said.hovered.or(Some(thing));
    }
    let response = response.on_hover_cursor(egui::CursorIcon::PointingHand);
    if when.len() > ISO_MINUTE {
        kit::explain(ui, &response, when);
    }
    if response.clicked() {
        desk.said.say(Message::Pick(Some(thing)));
    }

    let (above, below) = (rect.top() + 14.0, rect.top() + 31.0);
    let right = rect.right() - 36.0;
    let weight = if picked { theme::semi_bold(13.0) } else { theme::medium(13.0) };
    kit::cell(ui, pos2(right, above), Align2::RIGHT_CENTER, &value, weight, colour(p.ink));
    kit::cell(ui, pos2(rect.left(), above), Align2::LEFT_CENTER, &place, theme::regular(13.0), colour(p.ink));
    let beside = kit::shortened(ui, &beside, small, colour(p.ink2), right - rect.left());
    ui.painter().galley(pos2(rect.left(), below - beside.size().y / 2.0), beside, colour(p.ink2));
    let below = if below_it { below + 15.0 } else { below };
    ui.painter().galley(pos2(right - day.size().x, below - day.size().y / 2.0), day, colour(p.ink2));

    let at = Rect::from_center_size(pos2(rect.right() - 12.0, rect.center().y), egui::Vec2::splat(24.0));
    let mut inside = ui.new_child(egui::UiBuilder::new().id_salt(("remove reading", index)).max_rect(at));
    let remove = words.say(Text::Remove, &[("place", &place)]);
    if kit::icon_button(&mut inside, Icon::Less, &remove, true, true, p).clicked() {
        let mut readings = places.plan.readings.clone();
        readings.remove(index);
        desk.said.say(Message::Make(Edit::SetReadings { readings }));
    }
}
