//! All runs side by side: each row the same figures, its netting unfolded, a kite where a corner needs a brace.
//!
//! A column's best is semibold, a column alike is all second ink. Columns that find no room are left out, the
//! unfolded line first.

use drawing::Thing;
use egui::{Align2, Id, Rect, Role, ScrollArea, Sense, Stroke, Ui, UiBuilder, WidgetInfo, pos2, vec2};
use plan::Run;
use words::Words;
use words::texts::Window as Text;
use workup::{Lay, RunWorkup, Verdict};

use crate::editor::{Editor, Message};
use crate::kit::{self, Measure, ROW};
use crate::said::Said;
use crate::theme::{self, colour};

const HEAD: f32 = 70.0;
/// Width kept for the name of a run.
const NAME: f32 = 168.0;
/// The unfolded line is shown where at least this is left for it.
const LEAST_LINE: f32 = 120.0;

pub(super) fn height(runs: usize, window: f32) -> f32 {
    let most = if window < 700.0 { 160.0 } else { 280.0 };
    (HEAD + ROW * runs as f32 + 16.0).min(most)
}

/// One column: its head, its width, and its value of a run.
struct Column {
    head: Text,
    width: f32,
    /// Which is better: more, fewer, or neither.
    better: Better,
    value: fn(&RunWorkup) -> Option<f64>,
    show: fn(Words, &RunWorkup, f64) -> (String, String),
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Better {
    More,
    Fewer,
    Neither,
}

const COLUMNS: [Column; 9] = [
    Column {
        head: Text::Area,
        width: 82.0,
        better: Better::More,
        value: |run| run.lay.as_ref().map(|lay| lay.area_m2),
        show: |words, _, value| parts(words.area_parts(value)),
    },
    Column {
        head: Text::Nets,
        width: 44.0,
        better: Better::Fewer,
        value: |run| run.lay.as_ref().map(|lay| lay.nets.len() as f64),
        show: |words, _, value| plain(words.number(value, 0)),
    },
    Column {
        head: Text::Posts,
        width: 48.0,
        better: Better::Fewer,
        value: |run| run.lay.as_ref().map(|lay| lay.posts.len() as f64),
        show: |words, _, value| plain(words.number(value, 0)),
    },
    Column {
        head: Text::OnPosts,
        width: 66.0,
        better: Better::More,
        value: |run| run.lay.as_ref().map(on_posts_share),
        show: |words, run, _| plain(run.lay.as_ref().map_or_else(String::new, |lay| on_posts(words, lay))),
    },
    Column {
        head: Text::Braces,
        width: 58.0,
        better: Better::Fewer,
        value: |run| run.lay.as_ref().map(|lay| lay.braces() as f64),
        show: |words, _, value| plain(words.number(value, 0)),
    },
    Column {
        head: Text::Strip,
        width: 66.0,
        better: Better::Fewer,
        value: |run| run.strip.as_ref().map(|strip| strip.area_m2),
        show: |words, _, value| parts(words.area_parts(value)),
    },
    Column {
        head: Text::Mow,
        width: 62.0,
        better: Better::Fewer,
        value: |run| run.strip.as_ref().map(|strip| strip.minutes),
        show: |words, _, value| (words.minutes_figure(value), words.text(Text::MinutesUnit).to_owned()),
    },
    Column {
        head: Text::SetUp,
        width: 62.0,
        better: Better::Fewer,
        value: |run| run.lay.as_ref().map(|lay| lay.set_up_minutes),
        show: |words, _, value| (words.minutes_figure(value), words.text(Text::MinutesUnit).to_owned()),
    },
    Column {
        head: Text::Weakest,
        width: 92.0,
        better: Better::Neither,
        value: |run| run.volts.as_ref().and_then(|volts| volts.weakest).map(|weakest| weakest.peak_kv),
        show: |words, run, _| {
            let weakest = run.volts.as_ref().and_then(|volts| volts.weakest);
            (weakest.map_or_else(String::new, |weakest| crate::facts::weakest(words, &weakest)), "kV".to_owned())
        },
    },
];

fn parts((figure, unit): (String, &'static str)) -> (String, String) {
    (figure, unit.to_owned())
}

fn plain(figure: String) -> (String, String) {
    (figure, String::new())
}

fn on_posts_share(lay: &Lay) -> f64 {
    let (on, all) = lay.corners_on_posts();
    if all == 0 { 1.0 } else { on as f64 / all as f64 }
}

fn on_posts(words: Words, lay: &Lay) -> String {
    let (on, all) = lay.corners_on_posts();
    words.say(Text::OnPostsOf, &[("on", &on.to_string()), ("all", &all.to_string())])
}

pub(super) fn show(ui: &mut Ui, rect: Rect, editor: &Editor, said: &mut Said) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let inner = rect.shrink2(vec2(24.0, 0.0));
    let count = editor.plan().runs.len().to_string();
    let title = words.say(Text::CompareTitle, &[("count", &count)]);
    let at = inner.min + vec2(0.0, 14.0);
    let drawn = ui.painter().text(at, Align2::LEFT_TOP, &title, theme::semi_bold(13.0), colour(p.ink));
    ui.interact(drawn, Id::unique("compare title"), Sense::hover())
        .widget_info(|| WidgetInfo::labeled(Role::Heading, true, &title));
    let shown = columns(inner.width());
    let rights = rights(&shown, inner.right());
    let first_left = rights.first().zip(shown.first()).map_or(inner.right(), |(right, column)| right - column.width);
    let line = Rect::from_x_y_ranges(inner.left() + NAME..=first_left - 24.0, rect.y_range());
    let has_line = line.width() >= LEAST_LINE;
    let head_y = inner.top() + HEAD - 14.0;
    let head = |at: f32, anchor: Align2, text: Text| {
        ui.painter().text(pos2(at, head_y), anchor, words.text(text), theme::regular(11.0), colour(p.ink2));
    };
    head(inner.left(), Align2::LEFT_CENTER, Text::RunHead);
    if has_line {
        head(line.left(), Align2::LEFT_CENTER, Text::LineFromCorner1);
    }
    for (column, &right) in shown.iter().zip(&rights) {
        head(right, Align2::RIGHT_CENTER, column.head);
    }
    ui.painter().hline(inner.x_range(), inner.top() + HEAD - 1.0, Stroke::new(1.0, colour(p.rule)));
    let body =
        Rect::from_min_max(pos2(inner.left() - 10.0, inner.top() + HEAD), pos2(inner.right() + 10.0, inner.bottom()));
    let longest_m =
        editor.workup().runs.iter().filter_map(|run| run.lay.as_ref()).map(|lay| lay.line_m).fold(0.0, f64::max);
    let mut inside = ui.new_child(UiBuilder::new().id_salt("compare").max_rect(body));
    ScrollArea::vertical().id_salt("compare rows").auto_shrink(false).show(&mut inside, |ui| {
        ui.set_clip_rect(body.intersect(ui.clip_rect()));
        for (index, (run, worked)) in editor.plan().runs.iter().zip(&editor.workup().runs).enumerate() {
            let row = one_row(ui, inner, index, run, worked, editor, said);
            for (column, &right) in shown.iter().zip(&rights) {
                cell(ui, row, right, column, worked, editor);
            }
            if has_line && let Some(lay) = &worked.lay {
                unfolded(ui, Rect::from_x_y_ranges(line.x_range(), row.y_range()), lay, longest_m, editor);
            }
        }
    });
}

/// The columns that find room beside the name.
fn columns(width: f32) -> Vec<&'static Column> {
    let mut shown: Vec<&Column> = COLUMNS.iter().collect();
    // Posts, then minutes of set-up, then the strip's ground give way; ground, nets and volts never do.
    for gives_way in [Text::Posts, Text::SetUp, Text::Strip] {
        if NAME + shown.iter().map(|column| column.width + 8.0).sum::<f32>() <= width {
            break;
        }
        shown.retain(|column| column.head != gives_way);
    }
    shown
}

/// Where each column ends.
fn rights(shown: &[&Column], right: f32) -> Vec<f32> {
    let mut at = right;
    let mut rights: Vec<f32> = shown
        .iter()
        .rev()
        .map(|column| {
            let here = at;
            at -= column.width + 8.0;
            here
        })
        .collect();
    rights.reverse();
    rights
}

/// A row as it is read out: its name and every figure, shown or not.
fn spoken(words: Words, name: &str, worked: &RunWorkup) -> String {
    let figures = COLUMNS.iter().filter_map(|column| {
        let (figure, unit) = (column.show)(words, worked, (column.value)(worked)?);
        Some(format!("{} {figure} {unit}", words.text(column.head)).trim_end().to_owned())
    });
    let figures: Vec<String> = figures.collect();
    format!("{name}: {}", figures.join(", "))
}

fn one_row(
    ui: &mut Ui,
    inner: Rect,
    index: usize,
    run: &Run,
    worked: &RunWorkup,
    editor: &Editor,
    said: &mut Said,
) -> Rect {
    let (words, p) = (editor.words(), editor.theme().palette());
    let thing = Thing::Run { run: index };
    let picked = editor.run_index() == index;
    let hovered = editor.hovered().and_then(Thing::run) == Some(index);
    let name = care::run_name(run);
    let label = spoken(words, name, worked);
    let (rect, response) = ui
        .allocate_ui(vec2(inner.width() + 20.0, ROW), |ui| {
            ui.set_max_width(inner.width() + 10.0);
            ui.horizontal(|ui| {
                ui.add_space(10.0);
                ui.vertical(|ui| {
                    ui.set_width(inner.width());
                    kit::row(ui, Id::unique(("compare", index)), picked, hovered, &label, p)
                })
                .inner
            })
            .inner
        })
        .inner;
    if response.hovered() {
        said.hovered = said.hovered.or(Some(thing));
    }
    if response.clicked() {
        said.say(Message::Pick(Some(thing)));
    }
    let font = if picked { theme::semi_bold(13.0) } else { theme::medium(13.0) };
    let number = (index + 1).to_string();
    let plate = Rect::from_center_size(rect.left_center() + vec2(9.0, 0.0), egui::Vec2::splat(18.0));
    crate::icons::number_plate(ui.painter(), plate, &number, picked, p);
    let galley = kit::shortened(ui, name, font, colour(p.ink), NAME - 40.0);
    ui.painter().galley(pos2(rect.left() + 28.0, rect.center().y - galley.size().y / 2.0), galley, colour(p.ink));
    rect
}

fn cell(ui: &Ui, row: Rect, right: f32, column: &Column, worked: &RunWorkup, editor: &Editor) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let Some(value) = (column.value)(worked) else {
        kit::cell(ui, pos2(right, row.center().y), Align2::RIGHT_CENTER, "–", theme::regular(13.0), colour(p.ink2));
        return;
    };
    let (figure, unit) = (column.show)(words, worked, value);
    let shown = |run: &RunWorkup| (column.value)(run).map(|value| (column.show)(words, run, value).0);
    let runs = &editor.workup().runs;
    let alike = runs.iter().all(|run| shown(run).as_deref() == Some(figure.as_str()));
    let values = || runs.iter().filter_map(column.value);
    let best = match column.better {
        Better::More => Some(values().fold(f64::NEG_INFINITY, f64::max)),
        Better::Fewer => Some(values().fold(f64::INFINITY, f64::min)),
        Better::Neither => None,
    };
    // What reads the same as the best is as good.
    let is_best = best.is_some_and(|best| (column.show)(words, worked, best).0 == figure);
    let (font, ink) = if alike {
        (theme::regular(13.0), p.ink2)
    } else if is_best {
        (theme::semi_bold(13.0), p.ink)
    } else {
        (theme::regular(13.0), p.ink)
    };
    let measure = Measure::new(ui, &figure, &unit, font, colour(ink), p);
    let size = measure.size();
    measure.paint(ui.painter(), pos2(right - size.x, row.center().y - size.y / 2.0));
}

/// A run's line from corner 1, to a common scale: posts, joins, and a kite where a corner needs a brace.
fn unfolded(ui: &Ui, rect: Rect, lay: &Lay, longest_m: f64, editor: &Editor) {
    let p = editor.theme().palette();
    let painter = ui.painter();
    let ink = colour(p.ink);
    let y = rect.center().y - 2.0;
    let x_of = |along_m: f64| rect.left() + rect.width() * (along_m / longest_m.max(f64::MIN_POSITIVE)) as f32;
    let end = x_of(lay.line_m);
    let bar = Rect::from_x_y_ranges(rect.left()..=end, y - 1.5..=y + 1.5);
    painter.rect(bar, 0.0, colour(p.sheet), Stroke::new(1.0, ink), egui::StrokeKind::Middle);
    for post in &lay.posts {
        painter.vline(x_of(post.along_m), y - 5.0..=y - 2.0, Stroke::new(1.0, ink));
    }
    let mut joins: Vec<f64> = lay.posts.iter().filter(|post| post.post == 0).map(|post| post.along_m).collect();
    joins.push(lay.line_m);
    for along_m in joins {
        let staple = Rect::from_center_size(pos2(x_of(along_m), y), vec2(4.0, 12.0));
        painter.rect(staple, 0.0, colour(p.sheet), Stroke::new(1.0, ink), egui::StrokeKind::Middle);
    }
    for corner in &lay.corners {
        let tip = pos2(x_of(corner.along_m), y + 11.0);
        let kite = vec![tip, tip + vec2(-2.5, -4.0), tip + vec2(0.0, -6.0), tip + vec2(2.5, -4.0)];
        match corner.verdict {
            Verdict::None => {}
            Verdict::Advised => {
                painter.add(egui::Shape::convex_polygon(kite, egui::Color32::TRANSPARENT, Stroke::new(1.0, ink)));
            }
            Verdict::Required => {
                painter.add(egui::Shape::convex_polygon(kite, ink, Stroke::NONE));
            }
        }
    }
}
