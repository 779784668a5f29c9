//! The earth of a run: its stakes as they stand, their figures, or the resistance that was measured.

use drawing::Thing;
use egui::{Align2, Id, Role, Sense, Stroke, Ui, WidgetInfo, pos2, vec2};
use plan::{BraceKind, Point, Run};
use words::texts::{About, Store as Text};
use words::texts::{Damp, Earth, Window};
use words::{Measure, Range};
use workup::Corner;

use super::{Desk, Figure, Owner, set_run, set_store};
use crate::editor::Message;
use crate::icons::Icon;
use crate::kit;
use crate::pages::picks;
use crate::theme::{self, colour};
use crate::tool::{Drawn, Tool, apart_m};

/// Most earth stakes that are drawn, and that the buttons go to.
const MOST_DRAWN: u32 = 9;

const COUNT: Figure = Figure::new(Text::Stakes, Measure::Count, Range::between(1.0, 100.0));
const SPACING: Figure = Figure::new(Text::StakesApart, Measure::Length, Range::between(0.1, 100.0));
const LENGTH: Figure = Figure::new(Text::StakeInGround, Measure::Length, Range::between(0.1, 10.0));
const THICKNESS: Figure = Figure::new(Text::StakeThick, Measure::Thin, Range::between(0.001, 0.2));
const LEAD: Figure = Figure::new(Text::EarthLead, Measure::Length, Range::between(0.1, 1000.0));
const MEASURED: Figure = Figure::new(Text::MeasuredEarth, Measure::Ohms, Range::between(0.1, 100_000.0));

pub(in crate::pages) fn show(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run) {
    let words = desk.words;
    let volts = desk.editor.run().and_then(|(_, worked)| worked.volts.as_ref());
    let kept = volts
        .map_or_else(String::new, |volts| words.say(Window::EarthKeeps, &[("kv", &words.kilovolts(volts.earth_kv))]));
    desk.section(ui, words.text(Window::Earth), &kept, About::Earth);
    ui.add_space(8.0);
    let name = words.text(Text::EarthStakesOf);
    let owner = Owner { id: owner_id(&run.id), name };
    let mut changed = run.clone();
    if run.earth_ohm.is_none() {
        stakes(ui, desk, run, owner, &mut changed);
        owner.stated(ui, desk, &LEAD, &mut changed.earth_stakes.lead_m, run.earth_stakes.lead_m());
        ui.add_space(4.0);
        desk.second(ui, words.text(Damp::EarthLeadWhy));
        ui.add_space(4.0);
    }
    // An emptied field goes back to the stakes.
    owner.stated(ui, desk, &MEASURED, &mut changed.earth_ohm, run.earth_ohm);
    if run.earth_ohm.is_some() {
        ui.add_space(4.0);
        desk.second(ui, words.text(Text::MeasuredEarthWhy));
    }
    set_run(desk, changed);
}

fn stakes(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, owner: Owner<'_>, changed: &mut Run) {
    let words = desk.words;
    let count = run.earth_stakes.count();
    let stake = &desk.editor.plan().store.earth_stake;
    ui.horizontal(|ui| {
        drawn(ui, count, &in_words(desk, run), desk);
        ui.add_space(8.0);
        let p = desk.p;
        let in_row = run.earth_stakes.places.is_empty();
        if kit::icon_button(ui, Icon::Less, words.text(Window::FewerStakes), count > 1, true, p).clicked() {
            if in_row {
                changed.earth_stakes.count = Some(count - 1);
            } else {
                changed.earth_stakes.places.pop();
            }
        }
        let more = count < MOST_DRAWN;
        if kit::icon_button(ui, Icon::More, words.text(Window::MoreStakes), more, true, p).clicked() {
            if in_row {
                changed.earth_stakes.count = Some(count + 1);
            } else {
                changed.earth_stakes.places.extend(workup::earth::one_more(run));
            }
        }
    });
    ui.add_space(6.0);
    if run.earth_stakes.places.is_empty() {
        owner.counted(ui, desk, &COUNT, &mut changed.earth_stakes.count, count);
        if count > 1 {
            let spacing_m = run.earth_stakes.spacing_m();
            owner.stated(ui, desk, &SPACING, &mut changed.earth_stakes.spacing_m, spacing_m);
        }
    } else {
        on_map(ui, desk, run);
    }
    to_map(ui, desk, run, changed);
    let mut store = desk.editor.plan().store.clone();
    owner.stated(ui, desk, &LENGTH, &mut store.earth_stake.length_m, stake.length_m());
    owner.stated(ui, desk, &THICKNESS, &mut store.earth_stake.diameter_m, stake.diameter_m());
    set_store(desk, store);
}

/// The fields of the lead and of a stake's length.
pub(in crate::pages) const LEAD_FIELD: Text = LEAD.label;
pub(in crate::pages) const LENGTH_FIELD: Text = LENGTH.label;

fn owner_id(run: &str) -> Id {
    Id::unique(("earth field", run))
}

/// A field of the earth of a run.
pub(in crate::pages) fn field_id(run: &str, label: &str) -> Id {
    owner_id(run).with(label)
}

/// The row of an earth stake.
pub(in crate::pages) fn row_id(stake: Thing) -> Id {
    Id::unique(("earth stake row", stake))
}

/// Every stake that stands on the map: its row picks it, and tells how far off what it stands.
fn on_map(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let index = editor.run_index();
    kit::rule(ui, p);
    for (stake, one) in workup::earth::stakes(editor.plan(), editor.workup(), index).iter().enumerate() {
        let number = (stake + 1).to_string();
        let thing = Thing::EarthStake { run: index, stake };
        let name = words.say(Earth::StakeRow, &[("number", &number)]);
        let short = care::earths::holds(editor.workup(), index, one, words);
        let short = short.or_else(|| care::earths::off_net(one, words)).unwrap_or_default();
        let said = care::earths::said(editor.plan(), editor.workup(), index, one, words);
        let id = row_id(thing);
        let (rect, picked) = picks(ui, desk, id, thing, &format!("{name}: {said}"));
        let y = rect.center().y;
        let font = if picked { theme::medium(13.0) } else { theme::regular(13.0) };
        kit::cell(ui, pos2(rect.left(), y), Align2::LEFT_CENTER, &name, font, colour(p.ink));
        kit::cell(ui, pos2(rect.right(), y), Align2::RIGHT_CENTER, &short, theme::regular(13.0), colour(p.ink2));
        if picked {
            ui.add_space(4.0);
            desk.second(ui, &format!("{}.", words::capital(&said)));
            ui.add_space(4.0);
            if kit::link(ui, &words.say(Earth::TakeOut, &[("number", &number)]), p).clicked() {
                desk.said.say(Message::Remove);
            }
            ui.add_space(6.0);
        }
    }
    ui.add_space(6.0);
    if kit::link(ui, words.text(Earth::RowAgain), p).clicked() {
        let mut again = run.clone();
        again.earth_stakes.at = run.earth_stakes.first();
        again.earth_stakes.count = Some(run.earth_stakes.count());
        again.earth_stakes.places.clear();
        set_run(desk, again);
    }
    ui.add_space(6.0);
}

/// The tool that puts a stake on the map, and the brace's stake that may be one.
fn to_map(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, changed: &mut Run) {
    let (words, p) = (desk.words, desk.p);
    let of = Drawn::EarthStake(desk.editor.run_index());
    let on = desk.editor.tool().draws(of);
    let brace = brace_to_share(desk, run);
    ui.add_space(4.0);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(6.0, 6.0);
        let known = !workup::earth::known(run).is_empty();
        let label = words.text(if known { Earth::OneMoreHere } else { Earth::PlaceStake });
        if kit::button(ui, Icon::More, label, on, p).clicked() {
            desk.said.say(if on { Message::Escape } else { Message::Use(Tool::outline(of)) });
        }
        if let Some((corner, at)) = brace {
            let label = corner.vertex.map_or_else(
                || words.text(Earth::BraceTooEnd).to_owned(),
                |vertex| words.say(Earth::BraceToo, &[("number", &(vertex + 1).to_string())]),
            );
            if kit::word_button(ui, &label, false, p).clicked() {
                *changed = shared(desk, run, at);
            }
        }
    });
    if let Some((corner, _)) = brace {
        let length = words.length(desk.editor.plan().store.earth_stake.length_m().max(corner.kit.length_m));
        let off = words.fine_length(corner.stake.stand_off_m);
        ui.add_space(4.0);
        desk.second(ui, &words.say(Earth::BraceTooWhy, &[("length", &length), ("off", &off)]));
    }
    ui.add_space(6.0);
}

/// The guyed corner whose stake may be the earth as well: the picked one, else the one in the dampest ground within reach,
/// else the one with the shortest lead to the energizer; far enough off the net, and with no earth stake in it yet.
fn brace_to_share<'a>(desk: &Desk<'a>, run: &Run) -> Option<(&'a Corner, Point)> {
    let (_, worked) = desk.editor.run()?;
    let lay = worked.lay.as_ref()?;
    let fits = |corner: &&Corner| {
        let guyed = corner.needs_brace() && corner.kit.kind == BraceKind::Guy && !corner.kit.earth;
        guyed && corner.stake.stand_off_m >= care::STAKE_TO_NET_M && corner.stake.at.east_m.is_finite()
    };
    let picked = match desk.editor.picked() {
        Some(Thing::RunCorner { run: of, vertex }) if of == desk.editor.run_index() => Some(vertex),
        _ => None,
    };
    let energizer = workup::lead::energizer(run)?;
    let lead_m = |corner: &Corner| apart_m(corner.stake.at, energizer);
    let damp = worked.dampest.as_ref().and_then(|best| lay.corners.get(best.corner?));
    let in_damp = |corner: &Corner| damp.is_some_and(|damp| damp.stake == corner.stake);
    let in_hand = |corner: &Corner| picked.is_some() && crate::facts::stated_vertex(run, corner) == picked;
    let corner = lay.corners.iter().filter(fits).min_by(|one, other| {
        let first = in_hand(other).cmp(&in_hand(one)).then(in_damp(other).cmp(&in_damp(one)));
        first.then(lead_m(one).total_cmp(&lead_m(other)))
    })?;
    Some((corner, corner.stake.at))
}

/// The run with the nearest earth stake that holds no corner yet standing in a brace's stake's place, or one more there.
fn shared(desk: &Desk<'_>, run: &Run, at: Point) -> Run {
    let mut stand = workup::earth::places(run);
    if stand.is_empty() {
        // A row that stands nowhere yet begins in the brace's stake, and stays as long as it is.
        let row = workup::earth::row(run, at, run.feed_at.or(run.outline.first().copied()));
        return crate::editor::earth::placed(run, row);
    }
    let all = workup::earth::stakes(desk.editor.plan(), desk.editor.workup(), desk.editor.run_index());
    let free = all.iter().enumerate().filter(|(_, one)| one.corner.is_none()).map(|(stake, _)| stake);
    let nearest = free.min_by(|&one, &other| apart_m(stand[one], at).total_cmp(&apart_m(stand[other], at)));
    match nearest {
        Some(nearest) => stand[nearest] = at,
        None => stand.push(at),
    }
    crate::editor::earth::placed(run, stand)
}

fn in_words(desk: &Desk<'_>, run: &Run) -> String {
    let words = desk.words;
    let length = words.length(desk.editor.plan().store.earth_stake.length_m());
    let spacing = words.length(run.earth_stakes.spacing_m());
    let placed = run.earth_stakes.places.len();
    if placed > 0 {
        let text = if placed == 1 { Earth::OnePlaced } else { Earth::Placed };
        return words.say(text, &[("count", &placed.to_string()), ("length", &length)]);
    }
    match run.earth_stakes.count() {
        0 => words.text(Window::NoStakes).to_owned(),
        1 => words.say(Window::OneStake, &[("length", &length)]),
        count => {
            let count = count.to_string();
            words.say(Window::Stakes, &[("count", &count), ("length", &length), ("spacing", &spacing)])
        }
    }
}

fn drawn(ui: &mut Ui, count: u32, label: &str, desk: &Desk<'_>) {
    let p = desk.p;
    let wide = (ui.available_width() - 68.0).max(40.0);
    let (rect, response) = ui.allocate_exact_size(vec2(wide, 40.0), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, label));
    let painter = ui.painter();
    let ground = rect.top() + 8.0;
    painter.hline(rect.x_range(), ground, Stroke::new(1.0, colour(p.rule)));
    let step = (rect.width() / (count.max(1) as f32 + 0.5)).min(40.0);
    for stake in 0..count.min(MOST_DRAWN) {
        let x = rect.left() + 14.0 + step * stake as f32;
        let (top, tip) = (ground - 5.0, ground + 26.0);
        painter.vline(x, top..=tip - 5.0, Stroke::new(1.75, colour(p.ink)));
        let point = vec![pos2(x - 3.5, tip - 7.0), pos2(x + 3.5, tip - 7.0), pos2(x, tip)];
        painter.add(egui::Shape::convex_polygon(point, colour(p.ink), Stroke::NONE));
    }
}
