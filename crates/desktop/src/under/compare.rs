//! Runs and shapes side by side: each row the same figures, its netting unfolded, a kite where a corner needs a brace.
//!
//! A column's best is semibold, a column alike is all second ink. Columns that find no room are left out, the unfolded
//! line first. A click on a head orders the rows by it, one more turns the order.

use drawing::Thing;
use egui::{Align2, Id, Rect, Role, ScrollArea, Sense, Stroke, Ui, UiBuilder, WidgetInfo, pos2, vec2};
use exchange::compare::{Better, Column};
use words::Words;
use words::texts::{Compare, Window as Text};
use workup::{Lay, Verdict};

use crate::editor::{Editor, Message, Row, RowOf, ShapesMessage};
use crate::kit::{self, Measure, ROW};
use crate::said::Said;
use crate::theme::{self, colour};
use crate::{facts, icons};

const HEAD: f32 = 70.0;
/// Width kept for the name of a row.
const NAME: f32 = 168.0;
/// The unfolded line is shown where at least this is left for it.
const LEAST_LINE: f32 = 120.0;
/// Space between two columns, and for the arrow after a head.
const GAP: f32 = 8.0;
const ARROW: f32 = 11.0;
/// What gives way where there is no room, the first first; ground, nets and volts never do.
const GIVES_WAY: [Column; 6] =
    [Column::Posts, Column::Mow, Column::OnPosts, Column::Spare, Column::SetUp, Column::Strip];

pub(super) fn height(rows: usize, window: f32) -> f32 {
    let most = if window < 700.0 { 160.0 } else { 280.0 };
    (HEAD + ROW * rows as f32 + 16.0).min(most)
}

/// Width of a column: of its figures, or of its head with the arrow of its order.
fn width(ui: &Ui, words: Words, column: Column) -> f32 {
    let head = kit::width(ui, words.text(column.head()), theme::semi_bold(11.0)) + ARROW;
    let figures: f32 = match column {
        Column::Ground => 82.0,
        Column::Birds => 52.0,
        Column::Nets => 44.0,
        Column::Spare => 72.0,
        Column::Braces => 58.0,
        Column::Posts => 48.0,
        Column::OnPosts | Column::Strip => 66.0,
        Column::Mow | Column::SetUp => 62.0,
        Column::Weakest => 92.0,
    };
    figures.max(head)
}

pub(super) fn show(ui: &mut Ui, rect: Rect, editor: &Editor, said: &mut Said) {
    let p = editor.theme().palette();
    let inner = rect.shrink2(vec2(24.0, 0.0));
    let rows = editor.compared();
    title(ui, inner, &rows, editor);
    let widths = |column: Column| width(ui, editor.words(), column);
    let shown = columns(inner.width(), widths);
    let rights = rights(&shown, inner.right(), widths);
    let first_left = rights.first().zip(shown.first()).map_or(inner.right(), |(right, &column)| right - widths(column));
    let line = Rect::from_x_y_ranges(inner.left() + NAME..=first_left - 24.0, rect.y_range());
    let has_line = line.width() >= LEAST_LINE;
    heads(ui, inner, &shown, &rights, has_line.then_some(line.left()), editor, said);
    ui.painter().hline(inner.x_range(), inner.top() + HEAD - 1.0, Stroke::new(1.0, colour(p.rule)));
    let body =
        Rect::from_min_max(pos2(inner.left() - 10.0, inner.top() + HEAD), pos2(inner.right() + 10.0, inner.bottom()));
    let longest_m = rows.iter().filter_map(|row| lay(editor, row.what)).map(|lay| lay.line_m).fold(0.0, f64::max);
    let mut over = None;
    let mut inside = ui.new_child(UiBuilder::new().id_salt("compare").max_rect(body));
    let columns: Vec<(Told, f32)> =
        shown.iter().zip(&rights).map(|(&column, &right)| (Told::of(column, &rows, editor.words()), right)).collect();
    // Rows out of sight are neither worded nor painted.
    inside.spacing_mut().item_spacing.y = 0.0;
    let scrolled = ScrollArea::vertical().id_salt("compare rows").auto_shrink(false);
    scrolled.show_rows(&mut inside, ROW, rows.len(), |ui, in_sight| {
        ui.set_clip_rect(body.intersect(ui.clip_rect()));
        for row in &rows[in_sight] {
            let (place, is_over) = one_row(ui, inner, row, editor, said);
            if let RowOf::Shape(key) = row.what
                && is_over
            {
                over = Some(key);
            }
            for (told, right) in &columns {
                cell(ui, place, *right, told, row, editor);
            }
            if has_line && let Some(lay) = lay(editor, row.what) {
                unfolded(ui, Rect::from_x_y_ranges(line.x_range(), place.y_range()), lay, longest_m, editor);
            }
        }
    });
    if over != editor.shapes().hovered() {
        said.say(Message::Shapes(ShapesMessage::Hover(over)));
    }
}

/// How many are compared, and how birds are counted.
fn title(ui: &Ui, inner: Rect, rows: &[Row], editor: &Editor) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let shapes = rows.iter().filter(|row| matches!(row.what, RowOf::Shape(_))).count();
    let (runs, shapes) = ((rows.len() - shapes).to_string(), shapes.to_string());
    let title = if editor.shapes().is_open() {
        words.say(Compare::TitleShapes, &[("runs", &runs), ("shapes", &shapes)])
    } else {
        words.say(Text::CompareTitle, &[("count", &runs)])
    };
    let at = inner.min + vec2(0.0, 14.0);
    let drawn = ui.painter().text(at, Align2::LEFT_TOP, &title, theme::semi_bold(13.0), colour(p.ink));
    ui.interact(drawn, Id::unique("compare title"), Sense::hover())
        .widget_info(|| WidgetInfo::labeled(Role::Heading, true, &title));
    let aside = facts::birds_by_rule(words, editor.plan());
    // Beside the title, else below it.
    let room = inner.right() - drawn.right() - 14.0;
    let beside = kit::width(ui, &aside, theme::regular(12.0)) <= room;
    let (size, room) = if beside { (12.0, room) } else { (11.0, inner.width()) };
    let aside = kit::shortened(ui, &aside, theme::regular(size), colour(p.ink2), room);
    let at = if beside {
        pos2(drawn.right() + 14.0, drawn.center().y - aside.size().y / 2.0)
    } else {
        pos2(drawn.left(), drawn.bottom())
    };
    ui.painter().galley(at, aside, colour(p.ink2));
}

/// The heads of the table, each a button that orders the rows by its column.
fn heads(ui: &Ui, inner: Rect, shown: &[Column], rights: &[f32], line: Option<f32>, editor: &Editor, said: &mut Said) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let y = inner.top() + HEAD - 14.0;
    let plain = |at: f32, text: &str| {
        ui.painter().text(pos2(at, y), Align2::LEFT_CENTER, text, theme::regular(11.0), colour(p.ink2));
    };
    plain(inner.left(), words.text(Compare::Shape));
    if let Some(left) = line {
        plain(left, words.text(Text::LineFromCorner1));
    }
    let sorted = editor.shapes().sort().or(editor.shapes().is_open().then_some((Column::Ground, false)));
    for (&column, &right) in shown.iter().zip(rights) {
        let name = words.text(column.head());
        let order = sorted.filter(|(by, _)| *by == column).map(|(_, least_first)| least_first);
        let (text, font, ink) = match order {
            Some(true) => (format!("{name} ↑"), theme::semi_bold(11.0), p.ink),
            Some(false) => (format!("{name} ↓"), theme::semi_bold(11.0), p.ink),
            None => (name.to_owned(), theme::regular(11.0), p.ink2),
        };
        let drawn = ui.painter().text(pos2(right, y), Align2::RIGHT_CENTER, text, font, colour(ink));
        let reach = Rect::from_min_max(pos2(drawn.left().min(right - 30.0), y - 12.0), pos2(right + 2.0, y + 12.0));
        let response = ui.interact(reach, Id::unique(("compare head", name)), Sense::click());
        let label = words.say(Compare::OrderBy, &[("column", name)]);
        response.widget_info(|| WidgetInfo::selected(Role::Button, true, order.is_some(), &label));
        kit::focus_ring(ui, &response, p);
        if response.hovered() {
            ui.painter().hline(drawn.x_range(), drawn.bottom() + 1.0, Stroke::new(1.0, colour(p.ink)));
        }
        if response.on_hover_cursor(egui::CursorIcon::PointingHand).clicked() {
            said.say(Message::Shapes(ShapesMessage::Sort(column)));
        }
    }
}

/// The columns that find room beside the name.
fn columns(room: f32, width: impl Fn(Column) -> f32) -> Vec<Column> {
    let mut shown = Column::ALL.to_vec();
    for gives_way in GIVES_WAY {
        if NAME + shown.iter().map(|&column| width(column) + GAP).sum::<f32>() <= room {
            break;
        }
        shown.retain(|&column| column != gives_way);
    }
    shown
}

/// Where each column ends.
fn rights(shown: &[Column], right: f32, width: impl Fn(Column) -> f32) -> Vec<f32> {
    let mut at = right;
    let mut rights: Vec<f32> = shown
        .iter()
        .rev()
        .map(|&column| {
            let here = at;
            at -= width(column) + GAP;
            here
        })
        .collect();
    rights.reverse();
    rights
}

fn lay(editor: &Editor, what: RowOf) -> Option<&Lay> {
    match what {
        RowOf::Run(index) => editor.workup().runs.get(index)?.lay.as_ref(),
        RowOf::Shape(key) => editor.shapes().of_key(key)?.worked.lay.as_ref(),
    }
}

/// A row as it is read out: its name and every figure, shown or not.
fn spoken(row: &Row, editor: &Editor) -> String {
    let words = editor.words();
    let figures = Column::ALL.iter().filter_map(|&column| {
        let (figure, unit) = column.shown(&row.entry.figures, words)?;
        Some(format!("{} {figure} {unit}", words.text(column.head())).trim_end().to_owned())
    });
    format!("{}: {}", row.entry.name, figures.collect::<Vec<_>>().join(", "))
}

/// A row's frame and name; where to paint, and whether the pointer is on it.
fn one_row(ui: &mut Ui, inner: Rect, row: &Row, editor: &Editor, said: &mut Said) -> (Rect, bool) {
    let p = editor.theme().palette();
    let chosen = editor.shapes().chosen_key();
    let (id, picked, hovered) = match row.what {
        RowOf::Run(index) => {
            let hovered = editor.hovered().and_then(Thing::run) == Some(index);
            // While a shape is looked at, that is what is picked; the run keeps its filled number.
            let picked = editor.run_index() == index && (chosen.is_none() || !editor.shapes().is_open());
            (Id::unique(("compare", index)), picked, hovered)
        }
        RowOf::Shape(key) => {
            (Id::unique(("compare shape", key)), chosen == Some(key), editor.shapes().hovered() == Some(key))
        }
    };
    let label = spoken(row, editor);
    let (rect, response) = ui
        .allocate_ui(vec2(inner.width() + 20.0, ROW), |ui| {
            ui.set_max_width(inner.width() + 10.0);
            ui.horizontal(|ui| {
                ui.add_space(10.0);
                ui.vertical(|ui| {
                    ui.set_width(inner.width());
                    kit::row(ui, id, picked, hovered, &label, p)
                })
                .inner
            })
            .inner
        })
        .inner;
    if response.hovered()
        && let RowOf::Run(run) = row.what
    {
        said.hovered = said.hovered.or(Some(Thing::Run { run }));
    }
    if response.clicked() {
        said.say(match row.what {
            RowOf::Run(run) => Message::Pick(Some(Thing::Run { run })),
            RowOf::Shape(key) => Message::Shapes(ShapesMessage::Choose(Some(key).filter(|_| chosen != Some(key)))),
        });
    }
    let font = if picked { theme::semi_bold(13.0) } else { theme::medium(13.0) };
    let middle = rect.left_center() + vec2(9.0, 0.0);
    match row.what {
        RowOf::Run(index) => {
            let plate = Rect::from_center_size(middle, egui::Vec2::splat(18.0));
            let in_hand = editor.run_index() == index;
            icons::number_plate(ui.painter(), plate, &(index + 1).to_string(), in_hand, p);
        }
        RowOf::Shape(key) => {
            if let Some(candidate) = editor.shapes().of_key(key) {
                let pen = Stroke::new(1.5, colour(p.ghost));
                icons::small_outline(ui.painter(), middle, 14.0, &candidate.outline, pen);
            }
        }
    }
    let galley = kit::shortened(ui, &row.entry.name, font, colour(p.ink), NAME - 40.0);
    ui.painter().galley(pos2(rect.left() + 28.0, rect.center().y - galley.size().y / 2.0), galley, colour(p.ink));
    (rect, response.hovered())
}

/// What is told of a column as a whole.
struct Told {
    column: Column,
    /// The best figure, as it is read and as a value.
    best: Option<(String, Option<f64>)>,
    /// Whether every row reads the same.
    alike: bool,
}

impl Told {
    fn of(column: Column, rows: &[Row], words: Words) -> Self {
        let shown = |row: &Row| column.shown(&row.entry.figures, words).map(|(figure, _)| figure);
        let value = |row: &&Row| column.value(&row.entry.figures).unwrap_or(f64::NAN);
        let best = match column.better() {
            Better::More => rows.iter().max_by(|one, other| number_first(value(one), value(other), -1.0)),
            Better::Fewer => rows.iter().min_by(|one, other| number_first(value(one), value(other), 1.0)),
            Better::Neither => None,
        };
        let best = best.and_then(|best| Some((shown(best)?, column.value(&best.entry.figures))));
        let first = rows.first().and_then(shown);
        let alike = first.is_some() && rows.iter().all(|row| shown(row) == first);
        Self { column, best, alike }
    }
}

fn cell(ui: &Ui, place: Rect, right: f32, told: &Told, row: &Row, editor: &Editor) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let Some((figure, unit)) = told.column.shown(&row.entry.figures, words) else {
        let text = words.text(Compare::Unknown);
        kit::cell(ui, pos2(right, place.center().y), Align2::RIGHT_CENTER, text, theme::regular(13.0), colour(p.ink2));
        return;
    };
    // What reads the same as the best is as good.
    let is_best = told.best.as_ref().is_some_and(|(best, value)| {
        *best == figure || (value.is_some() && *value == told.column.value(&row.entry.figures))
    });
    let (font, ink) = if told.alike {
        (theme::regular(13.0), p.ink2)
    } else if is_best {
        (theme::semi_bold(13.0), p.ink)
    } else {
        (theme::regular(13.0), p.ink)
    };
    let measure = Measure::new(ui, &figure, unit, font, colour(ink), p);
    let size = measure.size();
    measure.paint(ui.painter(), pos2(right - size.x, place.center().y - size.y / 2.0));
}

/// Orders figures so that one that could not be worked out is never the best: `end` says where it stands.
fn number_first(one: f64, other: f64, end: f64) -> std::cmp::Ordering {
    let or_last = |value: f64| if value.is_nan() { end * f64::INFINITY } else { value };
    or_last(one).total_cmp(&or_last(other))
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
