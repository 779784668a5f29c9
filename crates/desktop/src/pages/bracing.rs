//! What holds the corners, the cheapest way first and one click from being taken, and what the wind does.
//!
//! The corner that is dealt with is the picked one, else the one whose row was clicked, else the first. Which row that was
//! and the ghost of a cut that the map shows are remembered by egui alone.

use std::sync::Arc;

use drawing::{Ghost, Thing};
use egui::{Align2, Id, Rect, Sense, Ui, Vec2, pos2, vec2};
use plan::{Edit, Run};
use words::texts::{About, Bracing as Text, Window};
use words::{Measure, Range};
use workup::bracing::{Detail, Kit, Mend, Wind};
use workup::{Corner, Lay, RunWorkup};

use super::{Desk, ghosts};
use crate::editor::{BracingMessage, Editor, Message, Page};
use crate::facts;
use crate::field::{self, Shown};
use crate::icons::{self, Icon};
use crate::kit;
use crate::theme::{self, colour};

/// Where egui remembers the ghost, the corner that is dealt with, whether the comparison is open.
const GHOST: &str = "cut ghost";
const DEALT: &str = "corner dealt with";
const OPEN: &str = "mends open";

/// The wind that may be typed, metres a second.
const WIND: Range = Range::zero_to(60.0);

/// The share of a fouled net's face that may be typed.
const FOULED: Range = Range::between(0.01, 1.0);

/// A corner with what is set there, or what mends it.
struct Wanting<'a> {
    index: usize,
    corner: &'a Corner,
    detail: &'a Detail,
    /// Its number on the map; none of an end.
    number: Option<usize>,
}

/// The ghost of a cut corner, while the page about runs is open.
pub(crate) fn ghost(ui: &Ui, editor: &Editor) -> Option<Arc<Ghost>> {
    ghosts::given(ui, GHOST)
        .filter(|_| editor.page() == Page::Run && !editor.shapes().is_open() && editor.run().is_some())
}

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, worked: &RunWorkup) {
    let (Some(lay), Some(bracing)) = (&worked.lay, &worked.bracing) else {
        ghosts::give(ui, GHOST, None);
        return;
    };
    let held: Vec<Wanting<'_>> = lay
        .corners
        .iter()
        .zip(&bracing.details)
        .enumerate()
        .filter(|(_, (_, detail))| detail.stated.is_some() || !detail.mends.is_empty())
        .map(|(index, (corner, detail))| Wanting {
            index,
            corner,
            detail,
            number: corner.vertex.map(|vertex| vertex + 1),
        })
        .collect();
    let picked = picked_corner(desk.editor, run, lay);
    let at_corner = |brace: usize| bracing.details.iter().any(|detail| detail.braces.contains(&brace));
    let strays: Vec<usize> = (0..run.braces.len()).filter(|&brace| !at_corner(brace)).collect();
    let ghost = mends(ui, desk, run, &held, &strays, picked);
    ghosts::give(ui, GHOST, ghost);
    if let Some(index) = picked.filter(|&index| !lay.corners[index].braced && !lay.corners[index].end) {
        logged(ui, desk, index, &lay.corners[index]);
    }
    wind(ui, desk, &bracing.wind);
}

/// The corner of the lay that is picked, or whose brace is.
fn picked_corner(editor: &Editor, run: &Run, lay: &Lay) -> Option<usize> {
    match editor.picked()? {
        Thing::RunCorner { run: of, vertex } if of == editor.run_index() => {
            let is_it = |corner: &Corner| !corner.end && facts::stated_vertex(run, corner) == Some(vertex);
            lay.corners.iter().position(is_it)
        }
        Thing::Brace { run: of, corner } if of == editor.run_index() => {
            Some(corner).filter(|&at| at < lay.corners.len())
        }
        _ => None,
    }
}

/// Every corner that is braced or wants it, each braced one to be taken back by a click, and what the one that is dealt
/// with may get; the ghost of its cut.
///
/// A row stays where it is when its brace is set or taken back, and so do the buttons below.
fn mends(
    ui: &mut Ui,
    desk: &mut Desk<'_>,
    run: &Run,
    held: &[Wanting<'_>],
    strays: &[usize],
    picked: Option<usize>,
) -> Option<Ghost> {
    let (words, p) = (desk.words, desk.p);
    if held.is_empty() && strays.is_empty() {
        return None;
    }
    let wanting: Vec<&Wanting<'_>> = held.iter().filter(|one| !one.detail.mends.is_empty()).collect();
    let aside = if wanting.is_empty() { Text::MendsDone } else { Text::MendsAside };
    desk.section(ui, words.text(Text::Mends), words.text(aside), About::Holds);
    kit::rule(ui, p);
    let clicked = ui.data(|data| data.get_temp::<usize>(Id::unique(DEALT)));
    let of = |index: Option<usize>| wanting.iter().copied().find(|one| Some(one.index) == index);
    let dealt = of(picked).or_else(|| of(clicked)).or(wanting.first().copied());
    for one in held {
        row(ui, desk, run, one, dealt.is_some_and(|dealt| dealt.index == one.index));
    }
    for &brace in strays {
        stray(ui, desk, run, brace);
    }
    let dealt = dealt?;
    ui.add_space(8.0);
    let ghost = actions(ui, desk, &wanting, dealt, picked.is_some());
    ui.add_space(6.0);
    compared(ui, desk, dealt);
    ghost
}

/// The row of a corner of the lay among what holds them.
pub(super) fn mend_row(corner: usize) -> Id {
    Id::unique(("mend row", corner))
}

fn row(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, one: &Wanting<'_>, dealt: bool) {
    let (words, p) = (desk.words, desk.p);
    let thing = facts::stated_vertex(run, one.corner)
        .filter(|_| !one.corner.end)
        .map(|vertex| Thing::RunCorner { run: desk.editor.run_index(), vertex });
    let (way, cost) = match (&one.detail.stated, one.detail.cheapest()) {
        (Some(judged), _) => (care::bracing::kit(words, one.corner.kit), care::bracing::times(words, judged.safety)),
        (None, Some(mend)) => (care::bracing::mend(words, mend), minutes(desk, mend)),
        (None, None) => (words.text(Text::NothingHolds).to_owned(), String::new()),
    };
    let name = one.number.map_or_else(
        || words.text(Window::End).to_owned(),
        |number| words.say(Window::CornerNumber, &[("number", &number.to_string())]),
    );
    let what = format!("{way}, {cost}");
    let label = format!("{}: {name}", what.trim_end_matches(", "));
    let hovered = thing.is_some() && desk.editor.hovered() == thing;
    let id = mend_row(one.index);
    // A way that is long takes a second line, and then the cost stands on the first.
    let taken =
        if one.detail.stated.is_some() { TAKE_BACK + KITE } else { kit::width(ui, &cost, theme::regular(13.0)) };
    let room = ui.available_width() - 30.0 - 20.0 - taken;
    let lines = ui.painter().layout(way.clone(), theme::regular(13.0), colour(p.ink), room).size().y;
    let tall = kit::ROW.max(lines + 12.0);
    let (rect, response) = kit::tall_row(ui, id, (dealt, hovered), &label, tall, p);
    if response.hovered() {
        desk.said.hovered = desk.said.hovered.or(thing);
    }
    if response.clicked() {
        ui.data_mut(|data| data.insert_temp(Id::unique(DEALT), one.index));
        desk.said.say(Message::Pick(thing));
    }
    let y = rect.center().y;
    let plate = Rect::from_center_size(pos2(rect.left() + 9.0, y), Vec2::splat(18.0));
    match one.number {
        Some(number) => icons::number_plate(ui.painter(), plate, &number.to_string(), dealt, p),
        None => icons::end_post(ui.painter(), plate.center(), p),
    }
    let mut end = rect.right();
    if one.detail.stated.is_some() {
        let label = match one.number {
            Some(number) => words.say(Text::TakeBackAt, &[("number", &number.to_string())]),
            None => words.text(Text::TakeBackEnd).to_owned(),
        };
        if take_back(ui, rect, &label, p) {
            desk.said.say(Message::Bracing(BracingMessage::TakeBack(one.index)));
        }
        end -= TAKE_BACK;
    }
    let cell = kit::cell(ui, pos2(end, y), Align2::RIGHT_CENTER, &cost, theme::regular(13.0), colour(p.ink2));
    let mut room = cell.left() - 12.0;
    if one.detail.stated.is_some() {
        let kite = if one.corner.holds { icons::Kite::Needed } else { icons::Kite::Weak };
        // All in one column, however wide the figures are.
        room = room.min(end - KITE);
        icons::kite(ui.painter(), pos2(room + 4.0, y), kite, p);
        room -= 8.0;
    }
    way_of(ui, rect, &way, room, p);
}

/// Room for the button that takes a brace back, and from there to the kites.
const TAKE_BACK: f32 = 26.0;
const KITE: f32 = 44.0;

/// A row's way of holding, left of `end`.
fn way_of(ui: &Ui, rect: Rect, way: &str, end: f32, p: &drawing::Palette) {
    let left = rect.left() + 30.0;
    let galley = ui.painter().layout(way.to_owned(), theme::regular(13.0), colour(p.ink), end - left);
    ui.painter().galley(pos2(left, rect.center().y - galley.size().y / 2.0), galley, colour(p.ink));
}

/// The button at a row's end that takes its brace back.
fn take_back(ui: &mut Ui, rect: Rect, label: &str, p: &drawing::Palette) -> bool {
    let at = Rect::from_center_size(pos2(rect.right() - 10.0, rect.center().y), Vec2::splat(kit::BUTTON));
    let mut inside = ui.new_child(egui::UiBuilder::new().max_rect(at));
    kit::icon_button(&mut inside, Icon::TakeOut, label, true, false, p).clicked()
}

/// A brace that stands at no corner.
fn stray(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, brace: usize) {
    let (words, p) = (desk.words, desk.p);
    let kit = Kit::of(&desk.editor.plan().store.brace, run.braces.get(brace));
    let rect = kit::fact(ui, "", "", p);
    icons::end_post(ui.painter(), pos2(rect.left() + 9.0, rect.center().y), p);
    let way = words.say(Text::StrayBrace, &[("brace", &care::bracing::kit(words, kit))]);
    way_of(ui, rect, &way, rect.right() - TAKE_BACK, p);
    if take_back(ui, rect, words.text(Text::TakeBackStray), p) {
        desk.said.say(Message::Bracing(BracingMessage::TakeBackStray(brace)));
    }
}

/// A mend's minutes of work.
fn minutes(desk: &Desk<'_>, mend: &Mend) -> String {
    format!("{} {}", desk.words.number(mend.minutes, 1), desk.words.text(Window::MinutesUnit))
}

/// What the corner that is dealt with may get, one click each; the ghost of its cut.
fn actions(
    ui: &mut Ui,
    desk: &mut Desk<'_>,
    wanting: &[&Wanting<'_>],
    dealt: &Wanting<'_>,
    picked: bool,
) -> Option<Ghost> {
    let (words, p) = (desk.words, desk.p);
    let number = dealt.number.map(|number| number.to_string()).unwrap_or_default();
    let cut = dealt.detail.mends.iter().enumerate().find_map(|(index, mend)| Some((index, mend, mend.cut.as_ref()?)));
    let ghost = cut.map(|(_, _, cut)| Ghost::stretch(cut.places.clone()));
    let mut shown = ghost.clone().filter(|_| picked);
    let braces = wanting.iter().filter(|one| Editor::cheapest_brace(one.detail).is_some()).count();
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(6.0, 6.0);
        if let Some((index, _)) = Editor::cheapest_brace(dealt.detail) {
            let label = match dealt.number {
                Some(_) => words.say(Text::SetBraceAt, &[("number", &number)]),
                None => words.text(Text::SetBraceEnd).to_owned(),
            };
            if kit::word_button(ui, &label, false, p).clicked() {
                desk.said.say(Message::Bracing(BracingMessage::Take(dealt.index, index)));
            }
        }
        if braces > 1 {
            let label = words.say(Text::SetAll, &[("count", &braces.to_string())]);
            if kit::word_button(ui, &label, false, p).clicked() {
                desk.said.say(Message::Bracing(BracingMessage::SetAll));
            }
        }
        if let Some((index, _, cut)) = cut {
            let places = [("number", number.as_str()), ("posts", &cut.places.len().to_string())];
            let response = kit::word_button(ui, &words.say(Text::CutAt, &places), false, p);
            if response.hovered() || response.has_focus() {
                shown.clone_from(&ghost);
            }
            if response.clicked() {
                shown = None;
                desk.said.say(Message::Bracing(BracingMessage::Take(dealt.index, index)));
            }
        }
    });
    if let Some((_, mend, _)) = cut {
        ui.add_space(4.0);
        let figures = care::bracing::mend(words, mend);
        desk.second(ui, &format!("{}: {}.", words::capital(&figures), care::bracing::mend_cost(words, mend)));
        if let Some(off) = care::bracing::cut_off_posts(words, mend) {
            desk.second(ui, &off);
        }
    }
    if dealt.detail.stated.is_some() {
        ui.add_space(4.0);
        let better = dealt.detail.cheapest().map(|mend| care::bracing::mend(words, mend));
        let text = match &better {
            Some(mend) => words.say(Text::BraceHoldsNot, &[("mend", mend)]),
            None => words.text(Text::BraceHoldsNotAtAll).to_owned(),
        };
        desk.second(ui, &text);
    }
    shown
}

/// Every way that was looked at, on demand.
fn compared(ui: &mut Ui, desk: &mut Desk<'_>, dealt: &Wanting<'_>) {
    let (words, p) = (desk.words, desk.p);
    let id = Id::unique(OPEN);
    let open = ui.data(|data| data.get_temp::<bool>(id)).unwrap_or(false);
    let label = match (open, dealt.number) {
        (true, _) => words.text(Text::FoldMends).to_owned(),
        (false, Some(number)) => words.say(Text::WhyMends, &[("number", &number.to_string())]),
        (false, None) => words.text(Text::WhyMendsEnd).to_owned(),
    };
    if kit::link(ui, &label, p).clicked() {
        ui.data_mut(|data| data.insert_temp(id, !open));
    }
    if !open {
        return;
    }
    let wide = ui.available_width();
    let ends = [wide * 0.78, wide];
    let (rect, _) = ui.allocate_exact_size(vec2(wide, 20.0), Sense::hover());
    let head = |text: Text, at: f32, anchor: Align2| {
        let at = pos2(rect.left() + at, rect.bottom());
        kit::cell(ui, at, anchor, words.text(text), theme::regular(11.0), colour(p.ink2));
    };
    head(Text::HeadWay, 0.0, Align2::LEFT_BOTTOM);
    head(Text::HeadHolds, ends[0], Align2::RIGHT_BOTTOM);
    head(Text::HeadInAll, ends[1], Align2::RIGHT_BOTTOM);
    kit::rule(ui, p);
    for (index, mend) in dealt.detail.mends.iter().enumerate() {
        let best = dealt.detail.cheapest == Some(index);
        let (way, times) = (care::bracing::mend(words, mend), care::bracing::times(words, mend.safety));
        let minutes = minutes(desk, mend);
        let ink = colour(if mend.holds { p.ink } else { p.ink2 });
        let font = if best { theme::medium(13.0) } else { theme::regular(13.0) };
        let galley = ui.painter().layout(way.clone(), font.clone(), ink, ends[0] - 48.0);
        let tall = kit::ROW.max(galley.size().y + 10.0);
        let (rect, response) = ui.allocate_exact_size(vec2(wide, tall), Sense::hover());
        let label = format!("{way}: {times}, {minutes}");
        response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, &label));
        let y = rect.center().y;
        ui.painter().galley(pos2(rect.left(), y - galley.size().y / 2.0), galley, ink);
        kit::cell(ui, pos2(rect.left() + ends[0], y), Align2::RIGHT_CENTER, &times, font.clone(), ink);
        kit::cell(ui, pos2(rect.left() + ends[1], y), Align2::RIGHT_CENTER, &minutes, font, ink);
        ui.painter().hline(rect.x_range(), rect.bottom() - 0.5, egui::Stroke::new(1.0, colour(p.hairline)));
    }
    ui.add_space(6.0);
    if let Some(text) = guy_in_words(desk, dealt) {
        desk.second(ui, &text);
        ui.add_space(4.0);
    }
    let carry = words.number(desk.editor.plan().store.brace.carry_minutes(), 1);
    desk.second(ui, &words.say(Text::CostWhy, &[("carry", &carry)]));
}

/// The figures of the cheapest guy, or of the first.
fn guy_in_words(desk: &Desk<'_>, dealt: &Wanting<'_>) -> Option<String> {
    let words = desk.words;
    let guys = || dealt.detail.mends.iter().filter_map(|mend| Some((mend, mend.judged.as_ref()?.guy?)));
    let cheapest = dealt.detail.cheapest();
    let best = guys().find(|(mend, _)| cheapest.is_some_and(|best| std::ptr::eq(best, *mend)));
    let (mend, guy) = best.or_else(|| guys().next())?;
    let rule = &desk.editor.plan().store.brace;
    let tied_m = mend.judged.as_ref().and_then(|judged| judged.tied_m).unwrap_or(rule.guy_height_m());
    let angle_deg = (guy.lift_n / guy.level_n).atan().to_degrees();
    Some(words.say(
        Text::GuyWhy,
        &[
            ("tied", &words.fine_length(tied_m)),
            ("angle", &words.degrees(angle_deg)),
            ("tension", &words.force(guy.tension_n)),
            ("level", &words.force(guy.level_n)),
            ("lift", &words.force(guy.lift_n)),
            ("side", &words.force(guy.side_hold_n)),
            ("up", &words.force(guy.lift_hold_n)),
            ("wanted", &words.number(rule.safety_factor(), 1)),
        ],
    ))
}

/// Logs what the picked corner did without a brace.
fn logged(ui: &mut Ui, desk: &mut Desk<'_>, index: usize, corner: &Corner) {
    let (words, p) = (desk.words, desk.p);
    let number = corner.vertex.map_or_else(String::new, |vertex| (vertex + 1).to_string());
    ui.add_space(10.0);
    let label = words.say(Text::LoggedAt, &[("number", &number)]);
    let options = [(true, words.text(Text::Stood)), (false, words.text(Text::Leaned))];
    if let Some(stood) = field::choice(ui, p, label.as_str(), &options, None) {
        desk.said.say(Message::Bracing(BracingMessage::Saw(index, stood)));
    }
}

fn wind(ui: &mut Ui, desk: &mut Desk<'_>, wind: &Wind) {
    let (words, p) = (desk.words, desk.p);
    let head = words.text(Text::Wind);
    desk.section(ui, head, "", About::Wind);
    ui.add_space(6.0);
    let sentence = kit::prose(ui, &care::bracing::wind_line(words, wind), theme::regular(13.0), colour(p.ink));
    // What is read here is marked on the map.
    let looks = ui.is_rect_visible(sentence.rect);
    if looks != desk.editor.looks_at_wind() {
        desk.said.say(Message::Bracing(BracingMessage::LookAtWind(looks)));
    }
    if wind.fouled.is_some() {
        ui.add_space(2.0);
        let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 20.0), Sense::hover());
        icons::goes_over(ui.painter(), pos2(rect.left() + 7.0, rect.center().y), p);
        let at = pos2(rect.left() + 20.0, rect.center().y);
        kit::cell(ui, at, Align2::LEFT_CENTER, words.text(Text::MarkedSo), theme::regular(12.0), colour(p.ink2));
    }
    ui.add_space(4.0);
    let ground = &desk.editor.plan().ground;
    let shown = match ground.wind_m_per_s {
        Some(stated) => Shown::of(words, Measure::Wind, stated, false),
        None => Shown::nothing(words, Measure::Wind),
    };
    let read = field::or_nothing(field::figure(words, Measure::Wind, WIND));
    if let Some(wind_m_per_s) = field::line(ui, p, Id::unique("wind field"), words.text(Text::MustStand), &shown, read)
    {
        let fouled_share = ground.fouled_share;
        desk.said.say(Message::Make(Edit::SetWind { wind_m_per_s, fouled_share }));
    }
    let shown = Shown::of(words, Measure::Percent, ground.fouled_share(), ground.fouled_share.is_none());
    let read = field::or_nothing(field::figure(words, Measure::Percent, FOULED));
    let id = Id::unique("fouled field");
    if let Some(fouled_share) = field::line(ui, p, id, words.text(Text::FouledClosed), &shown, read) {
        let wind_m_per_s = ground.wind_m_per_s;
        desk.said.say(Message::Make(Edit::SetWind { wind_m_per_s, fouled_share }));
    }
    if let Some(asked) = care::bracing::wind_asked_line(words, wind) {
        ui.add_space(2.0);
        kit::prose(ui, &asked, theme::regular(13.0), colour(p.ink));
    }
    ui.add_space(4.0);
    desk.second(ui, words.text(Text::WindWhy));
}
