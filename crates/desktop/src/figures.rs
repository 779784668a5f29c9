//! The line of figures at the foot: always in sight, a click opens where a figure comes from.
//!
//! Where room is short they come nearer to one another, what is told beside a figure goes, then the strip, then posts
//! and so on: rather fewer figures than one without its unit. The weakest post and the findings never go.

use std::sync::Arc;

use care::Severity;
use drawing::Theme;
use egui::{Align2, Galley, Id, Rect, Role, Sense, Stroke, Ui, UiBuilder, WidgetInfo, pos2, vec2};
use plan::Today;
use words::texts::{About, Power, Window as Text};
use words::{Units, Words};
use workup::Lay;

use crate::editor::{Editor, Message, Page};
use crate::facts;
use crate::found;
use crate::icons::{self, Icon};
use crate::kit::{self, Measure};
use crate::menus;
use crate::said::Said;
use crate::theme::{self, colour};

/// Height of the line.
pub(crate) const HEIGHT: f32 = 48.0;
/// Space between two figures.
const GAP: f32 = 28.0;
/// Figures come as near as this before one gives way.
const LEAST_GAP: f32 = 14.0;
/// Width of units and theme at the right.
const RIGHT: f32 = TODAY + 118.0;
/// Width of the findings where there is room: a tag and a figure of each weight.
const FINDINGS: f32 = 132.0;
/// Width of the ground today.
const TODAY: f32 = 92.0;

struct One {
    label: &'static str,
    figure: String,
    unit: String,
    /// The unit alone, where there is no room for what is told beside it.
    brief: Option<String>,
    opens: Page,
    assumed: bool,
    kind: Kind,
    /// Whether the line is longer than its nets.
    short: bool,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    Run,
    Nets,
    Line,
    Spare,
    Posts,
    Braces,
    Strip,
    Weakest,
}

/// Shows the figures of the run in hand.
pub(crate) fn show(ui: &mut Ui, rect: Rect, editor: &Editor, said: &mut Said) {
    let p = editor.theme().palette();
    ui.painter().rect_filled(rect, 0.0, colour(p.sheet));
    ui.painter().hline(rect.x_range(), rect.top() + 0.5, Stroke::new(1.0, colour(p.rule)));
    let margin = if rect.width() < 1000.0 { 16.0 } else { 24.0 };
    let room = rect.width() - 2.0 * margin - RIGHT;
    // They stand at one place, whatever the figures before them come to.
    let least = if rect.width() < 1000.0 { 0.0 } else { FINDINGS };
    let findings_width = findings_width(ui, editor).max(least);
    let mut shown = ones(editor);
    let width = |shown: &[One], briefly: bool, gap: f32| -> f32 {
        shown
            .iter()
            .map(|one| measure(ui, one, briefly, editor).size().x.max(label(ui, one, editor).size().x) + gap)
            .sum()
    };
    let fits = |shown: &[One], briefly: bool, gap: f32| width(shown, briefly, gap) + findings_width <= room;
    let told = [(false, GAP), (false, 20.0), (true, 20.0), (true, LEAST_GAP)];
    let (briefly, gap) =
        told.into_iter().find(|&(briefly, gap)| fits(&shown, briefly, gap)).unwrap_or((true, LEAST_GAP));
    // What is missing stays longer than what is left over.
    let spare = |short: bool| move |one: &One| one.kind == Kind::Spare && one.short == short;
    let of = |kind: Kind| move |one: &One| one.kind == kind;
    let giving_way: [&dyn Fn(&One) -> bool; 8] = [
        &of(Kind::Strip),
        &of(Kind::Posts),
        &spare(false),
        &of(Kind::Run),
        &of(Kind::Line),
        &of(Kind::Braces),
        &spare(true),
        &of(Kind::Nets),
    ];
    for gives_way in giving_way {
        if fits(&shown, briefly, gap) {
            break;
        }
        shown.retain(|one| !gives_way(one));
    }
    let mut left = rect.left() + margin;
    for one in &shown {
        left += figure(ui, pos2(left, rect.top()), one, briefly, editor, said) + gap;
    }
    let at = pos2(rect.right() - margin - RIGHT - findings_width, rect.top());
    findings(ui, at, findings_width, editor, said);
    switches(ui, Rect::from_min_max(pos2(rect.right() - margin - RIGHT, rect.top()), rect.max), editor, said);
}

/// Less than this is missing to rounding, metres.
const LEAST_SHORT_M: f64 = 0.005;

fn ones(editor: &Editor) -> Vec<One> {
    let words = editor.words();
    let one = |kind, label: Text, figure: String, unit: String, opens| One {
        label: words.text(label),
        figure,
        unit,
        brief: None,
        opens,
        assumed: false,
        kind,
        short: false,
    };
    let none = || "–".to_owned();
    let run = editor.shown_run();
    let lay = run.and_then(|(_, worked)| worked.lay.as_ref());
    let mut ones = Vec::new();
    if editor.plan().runs.len() > 1
        && let Some((run, _)) = run
    {
        ones.push(one(Kind::Run, Text::Run, care::run_name(run).to_owned(), String::new(), Page::Run));
    }
    let owned = facts::owned(editor.plan()).to_string();
    let used = lay.map_or_else(|| "0".to_owned(), |lay| lay.nets.len().to_string());
    let nets = words.say(Text::UsedOfOwned, &[("used", &used), ("owned", &owned)]);
    ones.push(one(Kind::Nets, Text::Nets, nets, String::new(), Page::Run));
    let length = |metres: Option<f64>| metres.map_or_else(|| (none(), ""), |metres| words.length_parts(metres));
    let (line, unit) = length(lay.map(|lay| lay.line_m));
    let short_m = lay.map_or(0.0, |lay| lay.short_m);
    let unit = match run {
        Some((_, worked)) => care::closing_said::unit_of_line(worked, unit, words),
        None => unit.to_owned(),
    };
    ones.push(one(Kind::Line, Text::Length, line, unit, Page::Run));
    let (label, metres) =
        if short_m >= LEAST_SHORT_M { (Text::Short, Some(short_m)) } else { (Text::Spare, lay.map(|lay| lay.spare_m)) };
    let (spare, unit) = length(metres);
    let short = short_m >= LEAST_SHORT_M;
    ones.push(One { short, ..one(Kind::Spare, label, spare, unit.to_owned(), Page::Run) });
    let posts = lay.map_or_else(none, |lay| words.number(lay.posts.len() as f64, 0));
    ones.push(one(Kind::Posts, Text::Posts, posts, String::new(), Page::Run));
    let (braces, more) = braces(words, lay);
    ones.push(one(Kind::Braces, Text::Braces, braces, more, Page::Run));
    let (strip, unit, brief) = match run.and_then(|(_, worked)| worked.strip.as_ref()) {
        Some(strip) => {
            let (figure, unit) = words.area_parts(strip.area_m2);
            let minutes = words.minutes_figure(strip.minutes);
            let more = words.say(Text::AreaAndMinutes, &[("unit", unit), ("minutes", &minutes)]);
            (figure, more, Some(unit.to_owned()))
        }
        None => (none(), String::new(), None),
    };
    ones.push(One {
        brief,
        assumed: run.is_some_and(|(run, _)| run.strip_is_assumed()),
        ..one(Kind::Strip, Text::Strip, strip, unit, Page::Run)
    });
    let weakest = run.and_then(|(run, worked)| Some((run, worked.volts.as_ref()?.weakest?)));
    let (figure, unit, brief) = match weakest {
        Some((run, weakest)) => {
            let (figure, after) = care::volts_said::weakest_parts(&weakest, words);
            let reserve = (!weakest.measured).then(|| words.text(Text::NotMeasuredYet).to_owned());
            let tried = care::volts_said::tried(run, words);
            let unit: Vec<String> = [Some(after.clone()), tried, reserve].into_iter().flatten().collect();
            let briefly = care::volts_said::tried_briefly(run, words);
            let brief: Vec<String> = [Some(after), briefly].into_iter().flatten().collect();
            (figure, unit.join(", "), Some(brief.join(", ")))
        }
        None => (none(), String::new(), None),
    };
    ones.push(One {
        brief,
        assumed: weakest.is_some() && run.is_some_and(|(run, _)| run.leakage_s_per_m.is_none()),
        ..one(Kind::Weakest, Text::Weakest, figure, unit, Page::Power)
    });
    ones
}

/// Braces and how far they are: needed, set in part or all set, too weak.
fn braces(words: Words, lay: Option<&Lay>) -> (String, String) {
    let Some(lay) = lay else { return ("–".to_owned(), String::new()) };
    let (needed, advised) = facts::braces(lay);
    let set = lay.corners.iter().filter(|corner| corner.braced).count();
    let weak = lay.corners.iter().filter(|corner| corner.brace_too_weak()).count();
    let (figure, set_figure) = (needed.to_string(), set.to_string());
    let places = [("used", set_figure.as_str()), ("owned", figure.as_str())];
    match (needed - set, weak, advised) {
        (0, 0, _) if set > 0 => (figure, words.text(Text::BracesSet).to_owned()),
        // What fails comes before what is missing.
        (_, weak, _) if weak > 0 => (figure, words.say(Text::BracesTooWeak, &[("weak", &weak.to_string())])),
        (left, ..) if set > 0 => {
            (words.say(Text::UsedOfOwned, &places), words.say(Text::BracesToSet, &[("left", &left.to_string())]))
        }
        (_, _, 0) => (figure, words.text(Text::BracesNeeded).to_owned()),
        _ => (figure, words.say(Text::PlusAdvised, &[("advised", &advised.to_string())])),
    }
}

fn label(ui: &Ui, one: &One, editor: &Editor) -> Arc<Galley> {
    ui.painter().layout_no_wrap(one.label.to_owned(), theme::regular(11.0), colour(editor.theme().palette().ink2))
}

fn measure(ui: &Ui, one: &One, briefly: bool, editor: &Editor) -> Measure {
    let p = editor.theme().palette();
    // The weakest post never goes without its unit, its band and the faults that it counts.
    let unit = one.brief.as_ref().filter(|_| briefly).unwrap_or(&one.unit);
    Measure::new(ui, &one.figure, unit, theme::semi_bold(15.0), colour(p.ink), p)
}

fn figure(ui: &mut Ui, corner: egui::Pos2, one: &One, briefly: bool, editor: &Editor, said: &mut Said) -> f32 {
    let p = editor.theme().palette();
    let (label, measure) = (label(ui, one, editor), measure(ui, one, briefly, editor));
    let width = label.size().x.max(measure.size().x);
    let rect = Rect::from_min_size(corner, vec2(width, HEIGHT)).expand2(vec2(6.0, -3.0));
    let response = ui.interact(rect, Id::unique(("figure", one.kind as u8)), Sense::click());
    let spoken = format!("{} {} {}", one.label, one.figure, one.unit);
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, spoken.trim()));
    let painter = ui.painter();
    if response.hovered() {
        painter.rect_filled(rect, theme::RADIUS, colour(p.paper));
    }
    painter.galley(corner + vec2(0.0, 7.0), label, colour(p.ink2));
    let below = corner + vec2(0.0, 21.0);
    if one.assumed {
        let right = corner.x + measure.figure_width();
        kit::dots(painter, corner.x, right, below.y + measure.size().y + 0.5, p);
    }
    measure.paint(painter, below);
    kit::focus_ring(ui, &response, p);
    let response = response.on_hover_text(editor.words().text(about(one)));
    if response.on_hover_cursor(egui::CursorIcon::PointingHand).clicked() {
        said.say(Message::Open(one.opens));
    }
    width
}

/// What a figure is, its unit and where it comes from.
fn about(one: &One) -> About {
    match one.kind {
        Kind::Run => About::Run,
        Kind::Nets => About::Nets,
        Kind::Line => About::Line,
        Kind::Spare if one.short => About::Short,
        Kind::Spare => About::Spare,
        Kind::Posts => About::Posts,
        Kind::Braces => About::Braces,
        Kind::Strip => About::Strip,
        Kind::Weakest => About::Weakest,
    }
}

const TAGS: [Severity; 3] = [Severity::Danger, Severity::Warning, Severity::Note];

fn counts(editor: &Editor) -> Vec<(Severity, usize)> {
    let weighs = |severity: Severity| editor.open_findings().filter(|(_, found)| found.severity == severity).count();
    TAGS.into_iter().map(|severity| (severity, weighs(severity))).filter(|(_, count)| *count > 0).collect()
}

fn findings_width(ui: &Ui, editor: &Editor) -> f32 {
    let p = editor.theme().palette();
    let digits =
        |count: usize| ui.painter().layout_no_wrap(count.to_string(), theme::semi_bold(15.0), colour(p.ink)).size().x;
    let tags: f32 = counts(editor).iter().map(|&(_, count)| 20.0 + digits(count) + 14.0).sum();
    tags.max(60.0)
}

fn findings(ui: &mut Ui, corner: egui::Pos2, width: f32, editor: &Editor, said: &mut Said) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let rect = Rect::from_min_size(corner, vec2(width, HEIGHT)).expand2(vec2(6.0, -3.0));
    let response = ui.interact(rect, Id::unique("findings figure"), Sense::click());
    let counts = counts(editor);
    let spoken: Vec<String> =
        counts.iter().map(|&(severity, count)| words.say(spoken(severity), &[("count", &count.to_string())])).collect();
    let spoken = if spoken.is_empty() { words.text(Text::None).to_owned() } else { spoken.join(", ") };
    let head = words.text(Text::Findings);
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, format!("{head} {spoken}")));
    let painter = ui.painter();
    if response.hovered() {
        painter.rect_filled(rect, theme::RADIUS, colour(p.paper));
    }
    painter.text(corner + vec2(0.0, 7.0), Align2::LEFT_TOP, head, theme::regular(11.0), colour(p.ink2));
    if counts.is_empty() {
        let at = corner + vec2(0.0, 21.0);
        painter.text(at, Align2::LEFT_TOP, words.text(Text::None), theme::semi_bold(15.0), colour(p.ink));
    }
    let mut left = corner.x;
    for &(severity, count) in &counts {
        icons::tag(painter, pos2(left, corner.y + 22.0), severity, p);
        let at = pos2(left + 20.0, corner.y + 21.0);
        let drawn = painter.text(at, Align2::LEFT_TOP, count, theme::semi_bold(15.0), colour(p.ink));
        left = drawn.right() + 14.0;
    }
    kit::focus_ring(ui, &response, p);
    let response = response.on_hover_text(words.text(About::Findings));
    found::list(&response.on_hover_cursor(egui::CursorIcon::PointingHand), editor, said);
}

fn spoken(severity: Severity) -> Text {
    match severity {
        Severity::Danger => Text::CountDangers,
        Severity::Warning => Text::CountWarnings,
        Severity::Note => Text::CountNotes,
    }
}

/// The ground today: its word, which opens the four.
fn today(ui: &mut Ui, rect: Rect, editor: &Editor, said: &mut Said) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let place = rect.shrink2(vec2(0.0, 3.0));
    let response = ui.interact(place, Id::unique("ground today"), Sense::click());
    let now = editor.plan().ground.today;
    let head = words.text(Power::GroundToday);
    let word = words.text(menus::today_words(now.unwrap_or(Today::Damp)).0);
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, format!("{head} {word}")));
    let painter = ui.painter();
    if response.hovered() {
        painter.rect_filled(place, theme::RADIUS, colour(p.paper));
    }
    let left = place.left() + 6.0;
    painter.text(pos2(left, rect.top() + 7.0), Align2::LEFT_TOP, head, theme::regular(11.0), colour(p.ink2));
    let at = pos2(left, rect.top() + 23.0);
    let drawn = painter.text(at, Align2::LEFT_TOP, word, theme::semi_bold(13.0), colour(p.ink));
    if now.is_none() {
        kit::dots(painter, drawn.left(), drawn.right(), drawn.bottom(), p);
    }
    icons::chevron(painter, pos2(drawn.right() + 10.0, drawn.center().y + 1.0), colour(p.ink2));
    kit::focus_ring(ui, &response, p);
    menus::today(&response.on_hover_cursor(egui::CursorIcon::PointingHand), editor, said);
}

fn switches(ui: &mut Ui, rect: Rect, editor: &Editor, said: &mut Said) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let (of_today, rect) = rect.split_left_right_at_x(rect.left() + TODAY);
    today(ui, of_today, editor, said);
    let units = Rect::from_min_max(rect.min, pos2(rect.right() - 40.0, rect.bottom())).shrink2(vec2(0.0, 3.0));
    let response = ui.interact(units, Id::unique("units"), Sense::click());
    let (now, other) = match words.units {
        Units::Metric => (Text::Metres, Units::Feet),
        Units::Feet => (Text::Feet, Units::Metric),
    };
    let (head, figure) = (words.text(Text::Units), words.text(now));
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, format!("{head} {figure}")));
    let painter = ui.painter();
    if response.hovered() {
        painter.rect_filled(units, theme::RADIUS, colour(p.paper));
    }
    let right = units.right() - 8.0;
    painter.text(pos2(right, rect.top() + 7.0), Align2::RIGHT_TOP, head, theme::regular(11.0), colour(p.ink2));
    painter.text(pos2(right, rect.top() + 23.0), Align2::RIGHT_TOP, figure, theme::semi_bold(13.0), colour(p.ink));
    kit::focus_ring(ui, &response, p);
    if response.on_hover_cursor(egui::CursorIcon::PointingHand).clicked() {
        said.say(Message::Units(other));
    }
    let button = Rect::from_min_size(pos2(rect.right() - 32.0, rect.top() + 8.0), egui::Vec2::splat(32.0));
    let icon = if editor.theme() == Theme::Dark { Icon::Dark } else { Icon::Light };
    let mut inside = ui.new_child(UiBuilder::new().id_salt("view").max_rect(button));
    menus::view(&kit::icon_button(&mut inside, icon, words.text(Text::View), true, false, p), editor, said);
}
