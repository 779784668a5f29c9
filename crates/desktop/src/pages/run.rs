//! The page about runs: the run in hand, its nets, its corners as sentences, the strip to mow.

use drawing::Thing;
use egui::{Align2, Id, Rect, Sense, Stroke, Ui, Vec2, pos2, vec2};
use plan::{NetKind, Run, RunStatus, Shape};
use words::texts::{About, Compare, Window as Text};
use workup::{Corner, Lay, Verdict};

use super::{
    Desk, assumed, bracing, branches, coop, findings, fitting, gates, mow, picked, quiet, setting_up, sides, slope,
    store,
};
use crate::editor::{Message, Page, ShapesMessage};
use crate::facts;
use crate::icons::{self, Icon};
use crate::kit;
use crate::theme::{self, colour};
use crate::tool::{Drawn, Tool};

/// Width kept for a laid net, for one rolled up, and the height of their rows.
const COMB: f32 = 62.0;
const COIL: f32 = 30.0;
const NET_ROW: f32 = 24.0;

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let Some((run, worked)) = editor.run() else {
        kit::title(ui, words.text(Text::NoRunTitle), "", words.text(Text::NoRunSentence), p);
        tools(ui, desk);
        store::nets(ui, desk);
        findings(ui, desk);
        return;
    };
    let number = (editor.run_index() + 1).to_string();
    let count = editor.plan().runs.len();
    let aside = if count > 1 {
        words.say(Text::RunOf, &[("number", &number), ("count", &count.to_string())])
    } else {
        words.say(Text::RunNumber, &[("number", &number)])
    };
    let sentence = facts::ground(words, editor.plan(), run, worked);
    kit::title(ui, care::run_name(run), &aside, &sentence, p);
    setting_up::lead(ui, desk, worked);
    tools(ui, desk);
    fitting::show(ui, desk, run, worked);
    if count > 1 && !editor.compare() {
        runs(ui, desk);
    }
    if let Some(lay) = &worked.lay {
        nets(ui, desk, lay);
        branches::show(ui, desk, run, lay);
        corners(ui, desk, run, lay);
        gates::to_posts(ui, desk, run, lay);
    }
    let index = editor.run_index();
    let shape = Shape::Run(run.id.clone());
    sides::show(ui, desk, &shape, &run.outline, run.closed(), |side| Thing::RunSide { run: index, side });
    coop::show(ui, desk, run);
    bracing::show(ui, desk, run, worked);
    mow::show(ui, desk, run, worked);
    if let Some(lay) = &worked.lay {
        gates::gates(ui, desk, run, worked, lay);
        gates::pins(ui, desk, run, lay);
    }
    slope::show(ui, desk, run, worked);
    setting_up::show(ui, desk, worked);
    store::on_run_page(ui, desk);
    findings(ui, desk);
    assumed::show(ui, desk, Page::Run);
}

fn tools(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    ui.add_space(14.0);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(6.0, 6.0);
        let on = editor.tool().draws(Drawn::Run);
        if kit::button(ui, Icon::Coil, words.text(words::texts::Unroll::Start), on, p).clicked() {
            desk.said.say(if on { Message::Escape } else { Message::Use(Tool::outline(Drawn::Run)) });
        }
        super::tape_button(ui, desk);
        if kit::button(ui, Icon::Shapes, words.text(Compare::OtherShapes), false, p).clicked() {
            desk.said.say(Message::Shapes(ShapesMessage::Open(true)));
        }
        if !editor.plan().runs.is_empty() {
            branches::button(ui, desk);
        }
        if editor.plan().runs.len() > 1
            && kit::button(ui, Icon::Compare, words.text(Text::SideBySide), editor.compare(), p).clicked()
        {
            desk.said.say(Message::Compare(!editor.compare()));
        }
    });
    picked::tools(ui, desk);
}

/// The runs, to pick one.
fn runs(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let count = editor.plan().runs.len().to_string();
    desk.section(ui, words.text(Text::Runs), &count, About::Runs);
    kit::rule(ui, p);
    for (index, (run, worked)) in editor.plan().runs.iter().zip(&editor.workup().runs).enumerate() {
        let thing = Thing::Run { run: index };
        let picked = editor.run_index() == index;
        let name = care::run_name(run);
        let (rect, response) = kit::row(ui, Id::unique(("run row", index)), picked, false, name, p);
        if response.hovered() {
            desk.said.hovered = desk.said.hovered.or(Some(thing));
        }
        if response.clicked() {
            desk.said.say(Message::Pick(Some(thing)));
        }
        let plate = Rect::from_center_size(rect.left_center() + vec2(9.0, 0.0), Vec2::splat(18.0));
        icons::number_plate(ui.painter(), plate, &(index + 1).to_string(), picked, p);
        let galley = kit::shortened(ui, name, theme::regular(13.0), colour(p.ink), rect.width() - 120.0);
        ui.painter().galley(pos2(rect.left() + 28.0, rect.center().y - galley.size().y / 2.0), galley, colour(p.ink));
        if let Some(figure) = care::closing_said::figure(worked, words) {
            quiet(ui, rect.right(), rect.center().y, &figure, p);
        }
    }
}

fn nets(ui: &mut Ui, desk: &mut Desk<'_>, lay: &Lay) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let (laid, owned) = (lay.nets.len(), facts::owned(editor.plan()) as usize);
    let left = owned.saturating_sub(laid);
    // Which count is the run's and which the store's.
    let text = match left {
        0 if laid > owned => Text::LaidMissing,
        0 => Text::LaidAllOfStore,
        _ => Text::LaidOfStore,
    };
    let aside = words.say(text, &[("laid", &laid.to_string()), ("owned", &owned.to_string())]);
    desk.section(ui, words.text(Text::Nets), &aside, About::NetsOfRun);
    ui.add_space(8.0);
    let missing = laid.saturating_sub(owned);
    combs(ui, laid, missing, left, p);
    ui.add_space(6.0);
    let mut kinds: Vec<&NetKind> = Vec::new();
    for net in &lay.nets {
        if let Some(kind) = editor.plan().net_kind(&net.kind)
            && !kinds.iter().any(|known| known.id == kind.id)
        {
            kinds.push(kind);
        }
    }
    for kind in kinds {
        desk.second(ui, &net_in_words(desk, kind));
    }
    beside_others(ui, desk);
}

/// How the nets of several runs are counted: options each by itself, and what stands is not there for another.
fn beside_others(ui: &mut Ui, desk: &Desk<'_>) {
    let (words, plan) = (desk.words, desk.editor.plan());
    let Some((run, _)) = desk.editor.run() else { return };
    let others = || plan.runs.iter().zip(&desk.editor.workup().runs).filter(|(other, _)| other.id != run.id);
    let is_option = |run: &Run| run.status == RunStatus::Option;
    if is_option(run) && others().any(|(other, _)| is_option(other)) {
        desk.second(ui, words.text(Text::EachAlone));
    }
    let standing = others().filter(|(other, _)| other.status == RunStatus::Standing);
    let count: u32 =
        standing.filter_map(|(_, worked)| worked.lay.as_ref()).flat_map(|lay| lay.nets_needed.values()).sum();
    if count > 0 {
        desk.second(ui, &words.say(Text::StandElsewhere, &[("count", &count.to_string())]));
    }
}

/// Nets laid, of which the last ones are missing in the store, and rolls left.
fn combs(ui: &mut Ui, laid: usize, missing: usize, left: usize, p: &drawing::Palette) {
    let wide = ui.available_width();
    let mut places: Vec<Vec2> = Vec::new();
    let mut at = Vec2::ZERO;
    for index in 0..laid + left {
        let width = if index < laid { COMB } else { COIL };
        if at.x + width > wide + 12.0 {
            at = vec2(0.0, at.y + NET_ROW);
        }
        // Beyond four rows the figures at the right say how many there are.
        if at.y >= 4.0 * NET_ROW {
            break;
        }
        places.push(at);
        at.x += width;
    }
    let tall = places.last().map_or(0.0, |last| last.y + NET_ROW);
    let (rect, _) = ui.allocate_exact_size(vec2(wide, tall), Sense::hover());
    for (index, &place) in places.iter().enumerate() {
        let corner = rect.min + place;
        if index < laid { comb(ui, corner, index + missing >= laid, p) } else { coil(ui, corner, p) }
    }
}

/// Nets begun and rolls left, while a run is unrolled.
pub(super) fn rolls(ui: &mut Ui, begun: usize, left: usize, p: &drawing::Palette) {
    combs(ui, begun, 0, left, p);
}

/// A laid net: its line and its posts; open strokes where the store has none.
fn comb(ui: &Ui, corner: egui::Pos2, missing: bool, p: &drawing::Palette) {
    let pen = Stroke::new(1.75, colour(if missing { p.danger } else { p.ink }));
    let (left, right, foot) = (corner.x, corner.x + 48.0, corner.y + 14.0);
    if missing {
        let line = [pos2(left, foot), pos2(right, foot)];
        ui.painter().extend(egui::Shape::dashed_line(&line, pen, 4.0, 3.0));
    } else {
        ui.painter().hline(left - 0.9..=right + 0.9, foot, pen);
    }
    for post in 0..5 {
        let x = left + 12.0 * post as f32;
        ui.painter().vline(x, foot - 8.0..=foot, pen);
    }
}

/// A net rolled up.
fn coil(ui: &Ui, corner: egui::Pos2, p: &drawing::Palette) {
    let middle = corner + vec2(12.0, 9.0);
    let pen = Stroke::new(1.25, colour(p.ink2));
    ui.painter().circle_stroke(middle, 8.5, pen);
    ui.painter().circle_stroke(middle, 5.0, pen);
    ui.painter().circle_filled(middle, 2.0, colour(p.ink2));
}

fn net_in_words(desk: &Desk<'_>, kind: &NetKind) -> String {
    let words = desk.words;
    let name = words::capital(&kind.id);
    let (length, panels) = (words.far_parts(kind.length_m), kind.panel_count());
    let length = format!("{} {}", length.0, length.1);
    let panels_text = panels.to_string();
    if kind.panel_lengths_m.is_some() || panels == 0 {
        return words.say(Text::NetUnequal, &[("name", &name), ("length", &length), ("panels", &panels_text)]);
    }
    let panel = words.fine_length(kind.length_m / panels as f64);
    words.say(Text::NetEqual, &[("name", &name), ("length", &length), ("panels", &panels_text), ("panel", &panel)])
}

fn corners(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, lay: &Lay) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    desk.section(ui, words.text(Text::Corners), &facts::soil(words, editor.plan(), editor.workup()), About::Corners);
    if !lay.corners_judged {
        ui.add_space(6.0);
        desk.second(ui, words.text(Text::CornersNotJudged));
        return;
    }
    let why = editor.why();
    let wide = ui.available_width();
    // Columns end at these shares of the width.
    let ends = [0.24, 0.46, 0.66, 0.86].map(|share| share * wide);
    if why {
        let (rect, _) = ui.allocate_exact_size(vec2(wide, 20.0), Sense::hover());
        for (text, end) in [Text::Turn, Text::ToPost, Text::Pull, Text::Hold].into_iter().zip(ends) {
            let at = pos2(rect.left() + end, rect.bottom());
            kit::cell(ui, at, Align2::RIGHT_BOTTOM, words.text(text), theme::regular(11.0), colour(p.ink2));
        }
    }
    kit::rule(ui, p);
    for (index, corner) in lay.corners.iter().enumerate() {
        corner_row(ui, desk, run, index, corner, why.then_some(ends));
    }
    if lay.corners.is_empty() {
        ui.add_space(6.0);
        desk.second(ui, words.text(Text::NoCorners));
        return;
    }
    ui.add_space(8.0);
    let worst = lay.corners.iter().max_by(|a, b| a.pull_n.total_cmp(&b.pull_n));
    let label = match (why, worst) {
        (true, _) | (_, None) => words.text(Text::WhyFold).to_owned(),
        (false, Some(worst)) => {
            words.say(Text::Why, &[("angle", &words.degrees(worst.turn_deg)), ("pull", &words.force(worst.pull_n))])
        }
    };
    if kit::link(ui, &label, p).clicked() {
        desk.said.say(Message::Why(!why));
    }
}

/// Room for the kite between what a corner does and what to do, and the column of the latter.
const KITE: f32 = 28.0;
const BRACES: f32 = 96.0;

fn corner_row(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, index: usize, corner: &Corner, ends: Option<[f32; 4]>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let vertex = facts::stated_vertex(run, corner);
    let thing = vertex.filter(|_| !corner.end).map(|vertex| Thing::RunCorner { run: editor.run_index(), vertex });
    let picked = thing.is_some() && editor.picked() == thing;
    let hovered = thing.is_some() && editor.hovered() == thing;
    let number = corner.vertex.map(|vertex| (vertex + 1).to_string());
    let brace = match (corner.braced, corner.verdict) {
        (true, _) if corner.brace_too_weak() => Some(Text::BraceWeak),
        (true, _) => Some(Text::Braced),
        (false, Verdict::Required) => Some(Text::NeedsBrace),
        (false, Verdict::Advised) => Some(Text::BraceAdvised),
        (false, Verdict::None) => None,
    };
    let verdict = || words.text(care::bracing::verdict(corner));
    let sentence = if corner.end { words.text(Text::EndOfNetting) } else { verdict() };
    let label = format!(
        "{}: {sentence}, {}",
        number
            .as_ref()
            .map_or_else(|| words.text(Text::End).to_owned(), |n| words.say(Text::CornerNumber, &[("number", n)])),
        brace.map_or("", |brace| words.text(brace))
    );
    let weight = if picked { theme::medium(13.0) } else { theme::regular(13.0) };
    let brace_wide = brace.map_or(0.0, |brace| kit::width(ui, words.text(brace), weight.clone()));
    let told = 30.0 + kit::width(ui, sentence, weight.clone());
    // What to do stands below what happens where one line has no room for both.
    let below = ends.is_none() && brace.is_some() && told + KITE + brace_wide > ui.available_width();
    let tall = if below { kit::ROW + 18.0 } else { kit::ROW };
    let id = Id::unique(("corner row", index));
    let (rect, response) = kit::tall_row(ui, id, (picked, hovered), label.trim_end_matches(", "), tall, p);
    if response.hovered() {
        desk.said.hovered = desk.said.hovered.or(thing);
    }
    if response.clicked() && thing.is_some() {
        desk.said.say(Message::Pick(thing));
    }
    let y = rect.top() + kit::ROW / 2.0;
    let plate = Rect::from_center_size(pos2(rect.left() + 9.0, y), Vec2::splat(18.0));
    if let Some(number) = &number {
        icons::number_plate(ui.painter(), plate, number, picked, p);
    } else {
        icons::end_post(ui.painter(), plate.center(), p);
    }
    let Some(ends) = ends else {
        kit::cell(ui, pos2(rect.left() + 30.0, y), Align2::LEFT_CENTER, sentence, weight.clone(), colour(p.ink));
        if let Some(brace) = brace {
            // In one column, but never into the words before it nor beyond the row.
            let column = (rect.right() - brace_wide).min(rect.right() - BRACES);
            let (left, y) = if below {
                (rect.left() + 30.0 + KITE - 6.0, y + 18.0)
            } else {
                (column.max(rect.left() + told + KITE), y)
            };
            icons::kite(ui.painter(), pos2(left - 12.0, y), kite_of(corner), p);
            kit::cell(ui, pos2(left, y), Align2::LEFT_CENTER, words.text(brace), weight, colour(p.ink));
        }
        return;
    };
    let corners = editor.run().and_then(|(_, worked)| worked.lay.as_ref()).map_or(&[][..], |lay| &lay.corners);
    let greatest_m = corners.iter().map(|corner| corner.to_post_m).fold(0.0, f64::max);
    let to_post = if corner.to_post_m < 0.005 {
        words.number(0.0, 0)
    } else {
        words.fine_length_in_column(corner.to_post_m, greatest_m)
    };
    let cells = [words.degrees(corner.turn_deg), to_post, words.force(corner.pull_n), words.force(corner.hold_n)];
    for (text, end) in cells.iter().zip(ends) {
        kit::cell(ui, pos2(rect.left() + end, y), Align2::RIGHT_CENTER, text, weight.clone(), colour(p.ink));
    }
    icons::kite(ui.painter(), pos2(rect.right() - 8.0, y), kite_of(corner), p);
}

/// A brace that stands is drawn as one that is needed.
fn kite_of(corner: &Corner) -> icons::Kite {
    match (corner.braced, corner.verdict) {
        (true, _) if corner.brace_too_weak() => icons::Kite::Weak,
        (true, _) | (_, Verdict::Required) => icons::Kite::Needed,
        (_, Verdict::Advised) => icons::Kite::Advised,
        _ => icons::Kite::None,
    }
}
