//! The first start: one question inside the dashed outline of the very run that it will lay, and what is shown
//! next on the map once it is laid.

use drawing::Palette;
use egui::{
    Align2, FontId, Id, Key, Modifiers, Painter, Pos2, Rect, Role, Sense, Shape, Stroke, Ui, UiBuilder, Vec2, pos2,
    vec2,
};
use plan::{Point, Rolls, defaults};
use words::texts::Rolls as Text;
use words::{Measure, Range, Words};

use crate::asking::Ask;
use crate::editor::{Editor, Lesson, Message, Page};
use crate::icons::{self, Icon};
use crate::said::Said;
use crate::theme::{self, colour};
use crate::{field, kit, map_view};

/// More rolls, metres or posts than this are a slip of the pen.
const ROLLS: Range = Range::between(1.0, 200.0);
const LENGTH_M: Range = Range::between(1.0, 500.0);
const POSTS: Range = Range::between(2.0, 200.0);
/// Size of the block with the question, points.
const BLOCK: Vec2 = vec2(410.0, 268.0);
/// Distance of the crosses on bare ground, metres.
const CROSSES_M: f64 = 10.0;

/// Bare ground: a small cross each ten metres, as far as they stand apart enough.
pub(crate) fn crosses(painter: &Painter, editor: &Editor, rect: Rect) {
    let view = editor.view();
    let apart = (CROSSES_M * view.px_per_m) as f32;
    if apart < 40.0 {
        return;
    }
    let ink = Stroke::new(1.0, theme::thinned(editor.theme().palette().rule, 0.5));
    let low = view.place([0.0, rect.height()]);
    let high = view.place([rect.width(), 0.0]);
    let steps = |from: f64, to: f64| ((from / CROSSES_M).ceil() as i64)..=((to / CROSSES_M).floor() as i64);
    for east in steps(low.east_m, high.east_m) {
        for north in steps(low.north_m, high.north_m) {
            let [x, y] = view.spot(Point::new(east as f64 * CROSSES_M, north as f64 * CROSSES_M));
            let at = rect.min + vec2(x, y);
            painter.hline(at.x - 3.0..=at.x + 3.0, at.y, ink);
            painter.vline(at.x, at.y - 3.0..=at.y + 3.0, ink);
        }
    }
}

/// The question, over the whole map; `covered` where another stands over it, whose keys are not for this one.
pub(crate) fn show(ui: &mut Ui, rect: Rect, editor: &Editor, covered: bool, said: &mut Said) {
    let asked = Id::unique("the question was asked");
    let Some(question) = editor.question() else {
        ui.data_mut(|data| data.remove_temp::<bool>(asked));
        return;
    };
    // The first figure is typed at once, unless the keys are yet to take back or do again.
    if !covered && !question.stands_again() && ui.data(|data| data.get_temp::<bool>(asked)).is_none() {
        ui.data_mut(|data| data.insert_temp(asked, true));
        field::next(ui, Some(rolls_field(editor.words())));
    }
    let (words, p, rolls) = (editor.words(), editor.theme().palette(), question.rolls);
    // The map beneath is not to be dragged or picked while it asks.
    ui.interact(rect, Id::unique("under the question"), Sense::click_and_drag());
    let painter = ui.painter().with_clip_rect(rect);
    painter.rect_filled(rect, 0.0, colour(p.paper));
    crosses(&painter, editor, rect);
    let middle = pos2(rect.center().x, rect.center().y - 24.0);
    let room = rect.size() - vec2(140.0, 144.0);
    let dashed = outline(rolls, middle, room);
    painter.rect_filled(dashed, 0.0, colour(p.sheet));
    let corners =
        [dashed.left_top(), dashed.right_top(), dashed.right_bottom(), dashed.left_bottom(), dashed.left_top()];
    painter.extend(Shape::dashed_line(&corners, Stroke::new(1.75, colour(p.ink2)), 7.0, 4.0));
    if let Some((long, short)) = rolls.sides() {
        teeth(&painter, dashed, long, short, colour(p.ink2));
        let side = |panels: u32| {
            let length = words.length(f64::from(panels) * rolls.panel_m());
            words.say(Text::SidePanels, &[("length", &length), ("panels", &panels.to_string())])
        };
        let font = theme::medium(12.0);
        let over = pos2(dashed.center().x, dashed.top() - 18.0);
        painter.text(over, Align2::CENTER_CENTER, side(long), font.clone(), colour(p.ink2));
        turned(&painter, pos2(dashed.left() - 20.0, dashed.center().y), &side(short), font, p);
    }
    let block = Rect::from_center_size(middle, BLOCK.min(rect.size() - Vec2::splat(24.0)));
    // Where the outline is smaller than the question, the question stands on a ground of its own.
    let ground = block.expand(14.0);
    if !dashed.contains_rect(ground) {
        painter.rect_filled(ground, 2.0, colour(p.sheet));
    }
    let mut inside = ui.new_child(UiBuilder::new().id_salt("question").max_rect(block));
    inside.spacing_mut().item_spacing = vec2(8.0, 0.0);
    ask(&mut inside, rolls, editor, covered, said);
    let below = dashed.bottom().max(block.bottom().max(inside.min_rect().bottom()) + 14.0) + 22.0;
    let ways = Rect::from_min_max(pos2(block.left(), below), pos2(rect.right() - 8.0, rect.bottom()));
    other_ways(ui, ways, editor, said);
}

/// The run to be, as large as the room allows and at least as large as looks like ground.
fn outline(rolls: Rolls, middle: Pos2, room: Vec2) -> Rect {
    let (long, short) = rolls.sides().map_or((7.0, 6.0), |(long, short)| (long as f32, short as f32));
    let scale = (room.x / long).min(room.y / short);
    Rect::from_center_size(middle, vec2(long, short) * scale)
}

fn teeth(painter: &Painter, rect: Rect, long: u32, short: u32, ink: egui::Color32) {
    let pen = Stroke::new(1.5, ink);
    // More teeth than fit apart would be a grey band.
    if rect.width() / long as f32 >= 4.0 {
        for step in 1..long {
            let x = rect.left() + rect.width() * step as f32 / long as f32;
            painter.vline(x, rect.top() - 9.0..=rect.top() - 3.0, pen);
            painter.vline(x, rect.bottom() + 3.0..=rect.bottom() + 9.0, pen);
        }
    }
    if rect.height() / short as f32 >= 4.0 {
        for step in 1..short {
            let y = rect.top() + rect.height() * step as f32 / short as f32;
            painter.hline(rect.left() - 9.0..=rect.left() - 3.0, y, pen);
            painter.hline(rect.right() + 3.0..=rect.right() + 9.0, y, pen);
        }
    }
}

/// Words turned to be read from the right.
fn turned(painter: &Painter, middle: Pos2, words: &str, font: FontId, p: &Palette) {
    let galley = painter.layout_no_wrap(words.to_owned(), font, colour(p.ink2));
    let at = middle + vec2(-galley.size().y / 2.0, galley.size().x / 2.0);
    let text = egui::epaint::TextShape::new(at, galley, colour(p.ink2)).with_angle(-std::f32::consts::FRAC_PI_2);
    painter.add(text);
}

/// The field for how many rolls there are.
fn rolls_field(words: Words) -> Id {
    Id::unique(("rolls field", words.text(Text::Rolls)))
}

fn ask(ui: &mut Ui, rolls: Rolls, editor: &Editor, covered: bool, said: &mut Said) {
    let (words, p) = (editor.words(), editor.theme().palette());
    ui.add_space(8.0);
    let head = kit::prose(ui, words.text(Text::Question), theme::semi_bold(20.0), colour(p.ink));
    head.widget_info(|| egui::WidgetInfo::labeled(Role::Heading, true, words.text(Text::Question)));
    ui.add_space(4.0);
    kit::prose(ui, words.text(Text::Count), theme::regular(13.0), colour(p.ink2));
    ui.add_space(18.0);
    let steps = [
        Step::new(Text::Rolls, Measure::Count, ROLLS, f64::from(rolls.count), 1.0),
        Step::new(Text::LengthOfOne, Measure::Length, LENGTH_M, rolls.length_m, 5.0),
        Step::new(Text::PostsOnOne, Measure::Count, POSTS, f64::from(rolls.posts), 1.0),
    ];
    let mut refused = None;
    let mut values = [None; 3];
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = 16.0;
        for (step, value) in steps.iter().zip(&mut values) {
            match step.show(ui, words, p) {
                Some(Came::Answer(typed)) => *value = Some(typed),
                Some(Came::Refused(sentence)) => refused = Some(sentence),
                Some(Came::Left) => said.say(Message::Escape),
                Some(Came::Back(before, sentence)) => {
                    *value = Some(before);
                    refused = Some(sentence);
                }
                None => {}
            }
        }
    });
    let [count, length_m, posts] = values;
    let answer = Rolls {
        count: count.map_or(rolls.count, |count| count as u32),
        length_m: length_m.unwrap_or(rolls.length_m),
        posts: posts.map_or(rolls.posts, |posts| posts as u32),
    };
    ui.add_space(14.0);
    let can = answer.sides().is_some();
    // Half a figure is on the way to a whole one: nothing is refused before it is said to be all.
    let typing = steps.iter().any(|step| ui.memory(|memory| memory.has_focus(step.id(words))));
    // Enter on a button beside a figure is that button's.
    let on_button = ui.memory(egui::Memory::focused).is_some_and(|id| steps.iter().all(|step| step.id(words) != id));
    let entered = !covered && !on_button && refused.is_none() && ui.input(|input| input.key_pressed(Key::Enter));
    let (sentence, ink) = match refused {
        Some(sentence) => (sentence, colour(p.danger)),
        None if !can && typing => (" ".to_owned(), colour(p.ink2)),
        None if !can => (words.text(Text::TooFew).to_owned(), colour(p.danger)),
        None => (summary(words, answer), colour(p.ink2)),
    };
    // Under the hand nothing moves: the longest sentence has its room.
    let font = theme::regular(13.0);
    let tall = |text: String| ui.painter().layout(text, font.clone(), ink, ui.available_width()).size().y;
    let room = tall(sums(words, answer, Text::OneDoubled)).max(tall(words.text(Text::TooFew).to_owned()));
    let top = ui.cursor().top();
    kit::prose(ui, &sentence, font.clone(), ink);
    ui.add_space((room - (ui.cursor().top() - top)).max(0.0) + 16.0);
    ui.horizontal(|ui| {
        let lay = kit::button(ui, Icon::Coil, words.text(Text::LayItOut), true, p);
        let (rect, _) = ui.allocate_exact_size(vec2(60.0, 32.0), Sense::hover());
        let hint = words.keys("Enter");
        ui.painter().text(
            rect.left_center() + vec2(4.0, 0.0),
            Align2::LEFT_CENTER,
            hint,
            theme::regular(13.0),
            colour(p.ink2),
        );
        if answer != rolls {
            said.say(Message::Rolls(answer));
        }
        if lay.clicked() || (entered && can) {
            said.say(Message::LayOut);
        }
    });
    ui.add_space(16.0);
    kit::prose(ui, words.text(Text::AllElse), theme::regular(12.0), colour(p.ink2));
}

fn summary(words: Words, rolls: Rolls) -> String {
    sums(words, rolls, if rolls.left_over() > 0 { Text::OneDoubled } else { Text::Summary })
}

fn sums(words: Words, rolls: Rolls, text: Text) -> String {
    words.say(
        text,
        &[
            ("panels", &rolls.panels_each().to_string()),
            ("panel", &words.fine_length(rolls.panel_m())),
            ("line", &words.length(rolls.line_m())),
        ],
    )
}

/// What came of a field.
enum Came {
    /// A figure.
    Answer(f64),
    /// Words that stand there and cannot be used, and why.
    Refused(String),
    /// Such words were just said to be all: the figure from before they were typed holds, and why.
    Back(f64, String),
    /// Esc, with nothing typed: out of all of it.
    Left,
}

/// A field 40 high with its figure at 20, and one more or less of it; what is typed follows at once.
struct Step {
    label: Text,
    measure: Measure,
    range: Range,
    now: f64,
    by: f64,
}

impl Step {
    const SIZE: Vec2 = vec2(126.0, 40.0);

    fn new(label: Text, measure: Measure, range: Range, now: f64, by: f64) -> Self {
        Self { label, measure, range, now, by }
    }

    fn id(&self, words: Words) -> Id {
        Id::unique(("rolls field", words.text(self.label)))
    }

    fn read(&self, words: Words, text: &str) -> Result<f64, String> {
        let read = match self.measure {
            Measure::Count => words.read_count(text, self.range).map(f64::from),
            measure => words.read(measure, text, self.range),
        };
        read.map_err(|typed| typed.sentence(words))
    }

    /// What was typed or stepped to, or why it cannot be used.
    fn show(&self, ui: &mut Ui, words: Words, p: &Palette) -> Option<Came> {
        let name = words.text(self.label);
        let mut came = None;
        ui.vertical(|ui| {
            ui.set_width(Self::SIZE.x);
            let head = kit::prose(ui, name, theme::regular(12.0), colour(p.ink2));
            // Beside the name: a long figure fills its field.
            let (_, unit) = words.typed_parts(self.measure, self.now);
            let at = pos2(ui.max_rect().left() + Self::SIZE.x, head.rect.center().y);
            ui.painter().text(at, Align2::RIGHT_CENTER, unit, theme::regular(12.0), colour(p.ink2));
            ui.add_space(5.0);
            let (rect, _) = ui.allocate_exact_size(Self::SIZE, Sense::hover());
            let id = self.id(words);
            came = self.entry(ui, rect, id, head.id, words, p);
            for (index, (icon, by, said)) in
                [(Icon::Less, -self.by, Text::Fewer), (Icon::More, self.by, Text::More)].into_iter().enumerate()
            {
                let left = rect.right() - 56.0 + 28.0 * index as f32;
                let pen = Stroke::new(1.0, colour(p.hairline));
                ui.painter().vline(left, rect.top() + 9.0..=rect.bottom() - 9.0, pen);
                let place = Rect::from_min_size(pos2(left - 2.0, rect.top() + 4.0), vec2(32.0, 32.0));
                let mut inside = ui.new_child(UiBuilder::new().id_salt(("step", index)).max_rect(place));
                let say = words.say(said, &[("label", name)]);
                if kit::icon_in_field(&mut inside, icon, &say, p).clicked() {
                    came = Some(self.stepped(ui, words, by));
                }
            }
        });
        came
    }

    /// One step up or down from what holds, in place of what was being typed.
    fn stepped(&self, ui: &Ui, words: Words, by: f64) -> Came {
        let id = self.id(words);
        ui.data_mut(|data| {
            data.remove_temp::<String>(id.with("draft"));
            data.remove_temp::<bool>(id.with("refused"));
        });
        let (next, _) = words.typed_parts(self.measure, self.now + by);
        self.read(words, &next).map_or_else(Came::Refused, Came::Answer)
    }

    /// The field itself: the arrow keys step its figure. What cannot be read stays, and is refused once it is said to be all by Enter or by leaving; the
    /// last good answer holds meanwhile. Esc brings back what stood there before.
    fn entry(&self, ui: &mut Ui, rect: Rect, id: Id, head: Id, words: Words, p: &Palette) -> Option<Came> {
        let focused = ui.memory(|memory| memory.has_focus(id));
        let edge = if focused { Stroke::new(2.0, colour(p.pick)) } else { Stroke::new(1.0, colour(p.rule)) };
        ui.painter().rect(rect, 2.0, colour(p.sheet), edge, egui::StrokeKind::Inside);
        let draft = id.with("draft");
        let (figure, _) = words.typed_parts(self.measure, self.now);
        let mut text = ui.data(|data| data.get_temp::<String>(draft)).unwrap_or(figure);
        let room = Rect::from_min_max(rect.min + vec2(10.0, 6.0), pos2(rect.right() - 58.0, rect.bottom() - 6.0));
        let edit = egui::TextEdit::singleline(&mut text)
            .id(id)
            .frame(egui::Frame::NONE)
            .font(theme::medium(20.0))
            .margin(Vec2::ZERO)
            .desired_width(room.width());
        let presses =
            |key| move |input: &mut egui::InputState| input.count_and_consume_key(Modifiers::NONE, key) as f64;
        let steps =
            if focused { ui.input_mut(presses(Key::ArrowUp)) - ui.input_mut(presses(Key::ArrowDown)) } else { 0.0 };
        let response = ui.put(room, edit).labelled_by(head);
        if steps != 0.0 {
            return Some(self.stepped(ui, words, steps * self.by));
        }
        if response.gained_focus()
            && let Some(state) = egui::TextEdit::load_state(ui.ctx(), id)
        {
            field::mark_all(ui.ctx(), id, state, &text);
        }
        let before = id.with("before");
        if response.gained_focus() {
            ui.data_mut(|data| data.insert_temp(before, self.now));
        }
        let refused = id.with("refused");
        if response.changed() {
            ui.data_mut(|data| data.remove_temp::<bool>(refused));
        }
        let read = self.read(words, &text);
        let forget = |ui: &Ui| {
            ui.data_mut(|data| {
                data.remove_temp::<String>(draft);
                data.remove_temp::<bool>(refused);
            });
        };
        if response.lost_focus() {
            let was = ui.data(|data| data.get_temp::<f64>(before)).unwrap_or(self.now);
            let (escaped, entered) = ui.input(|input| (input.key_pressed(Key::Escape), input.key_pressed(Key::Enter)));
            return match read {
                Err(sentence) if !escaped => {
                    ui.data_mut(|data| {
                        data.insert_temp(draft, text);
                        data.insert_temp(refused, true);
                    });
                    if entered {
                        response.request_focus();
                    }
                    Some(Came::Back(was, sentence))
                }
                Ok(now) if escaped && now == was => {
                    forget(ui);
                    Some(Came::Left)
                }
                _ => {
                    forget(ui);
                    escaped.then_some(Came::Answer(was))
                }
            };
        }
        let stands = ui.data(|data| data.get_temp::<bool>(refused)).is_some();
        if response.has_focus() {
            ui.data_mut(|data| data.insert_temp(draft, text));
        }
        match read {
            Ok(_) if stands => {
                forget(ui);
                None
            }
            Ok(typed) => response.has_focus().then_some(Came::Answer(typed)),
            Err(sentence) => stands.then_some(Came::Refused(sentence)),
        }
    }
}

/// The page while the question stands: what is assumed, and what will be read.
pub(crate) fn page(ui: &mut Ui, words: Words, p: &Palette) {
    kit::title(ui, words.text(Text::FirstTitle), "", words.text(Text::FirstSentence), p);
    ui.add_space(kit::BETWEEN);
    kit::section(ui, words.text(Text::AssumedUntil), words.text(Text::CanWait), p);
    kit::rule(ui, p);
    let coop = plan::Rolls::default().lay_out().and_then(|plan| plan.coop);
    if let Some(coop) = coop {
        let places = [
            ("length", words.length(coop.length_m())),
            ("width", words.length(coop.width_m())),
            ("birds", coop.birds().to_string()),
        ];
        let places = places.each_ref().map(|(name, value)| (*name, value.as_str()));
        kit::fact(ui, words.text(Text::CoopAndFlock), &words.say(Text::CoopIs, &places), p);
    }
    let netting = words.say(Text::NettingIs, &[("height", &words.length(defaults::NET_HEIGHT_M))]);
    kit::fact(ui, words.text(Text::Netting), &netting, p);
    kit::fact(ui, words.text(Text::Ground), words.text(Text::GroundIs), p);
    kit::fact(ui, words.text(Text::Grass), words.text(Text::GrassIs), p);
    let energizer = words.say(Text::EnergizerIs, &[("joules", &words.number(defaults::STORED_J, 0))]);
    kit::fact(ui, words.text(Text::Energizer), &energizer, p);
    let (strip, cut) = (words.length(defaults::STRIP_WIDTH_M), words.fine_length(defaults::MOWER_WIDTH_M));
    let mowing = words.say(Text::MowingIs, &[("strip", &strip), ("cut", &cut)]);
    kit::fact(ui, words.text(Text::Mowing), &mowing, p);
    kit::fact(ui, words.text(Text::Target), &words.kilovolts(defaults::TARGET_KV), p);
    ui.add_space(kit::BETWEEN);
    kit::section(ui, words.text(Text::ReadThen), "", p);
    ui.add_space(6.0);
    for text in [Text::ReadGround, Text::ReadCorners, Text::ReadMow, Text::ReadVolts] {
        ui.add_space(4.0);
        kit::prose(ui, &format!("–  {}", words.text(text)), theme::regular(13.0), colour(p.ink));
    }
    ui.add_space(kit::BETWEEN);
    kit::prose(ui, words.text(Text::CodesFirst), theme::regular(12.0), colour(p.ink2));
}

/// Other ways in, small, beneath the outline.
fn other_ways(ui: &mut Ui, rect: Rect, editor: &Editor, said: &mut Said) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let mut inside = ui.new_child(UiBuilder::new().id_salt("ways").max_rect(rect));
    inside.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 22.0;
        let back = if editor.came_from_example() { Text::LookRound } else { Text::BackToPlan };
        if kit::link(ui, words.text(back), p).clicked() {
            said.say(Message::LeaveQuestion);
        }
        if kit::link(ui, words.text(Text::DrawFirst), p).clicked() {
            said.say(Message::StartEmpty);
            said.say(Message::Open(Page::Ground));
            said.say(Message::Use(crate::tool::Tool::outline(crate::tool::Drawn::Paddock)));
        }
        if kit::link(ui, words.text(Text::BringIn), p).clicked() {
            said.say(Message::StartEmpty);
            said.ask(Ask::BringIn);
        }
    });
}

/// What the keeper is shown next, inside the first run and over the unfolded line.
pub(crate) fn lesson(ui: &Ui, rect: Rect, editor: &Editor) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let painter = ui.painter().with_clip_rect(rect);
    match editor.lesson() {
        Lesson::Done => {}
        // Elsewhere the map is smaller or shows something else.
        Lesson::Drag if !matches!(editor.page(), Page::Run | Page::Ground) => {}
        Lesson::Drag => {
            let Some((run, _)) = editor.run() else { return };
            let lowest_m = run.outline.iter().map(|at| at.north_m).fold(f64::INFINITY, f64::min);
            let count = run.outline.len().max(1) as f64;
            let at = Point::new(run.outline.iter().map(|at| at.east_m).sum::<f64>() / count, lowest_m);
            let [x, y] = editor.view().spot(at);
            let head =
                painter.layout_no_wrap(words.text(Text::DragIt).to_owned(), theme::semi_bold(14.0), colour(p.ink));
            let how =
                painter.layout_no_wrap(words.text(Text::DragHow).to_owned(), theme::regular(12.0), colour(p.ink2));
            let size = vec2(head.size().x.max(how.size().x) + 40.0, head.size().y + how.size().y + 18.0);
            let foot = (rect.top() + y - 44.0).min(rect.bottom() - 60.0);
            let plate = Rect::from_center_size(pos2(rect.left() + x, foot - size.y / 2.0), size);
            let edge = Stroke::new(1.5, colour(p.pick));
            painter.add(Shape::convex_polygon(icons::cut_plate(plate, 7.0), colour(p.sheet), edge));
            let middle = plate.center().x;
            painter.galley(pos2(middle - head.size().x / 2.0, plate.top() + 8.0), head.clone(), colour(p.ink));
            let under = plate.top() + 10.0 + head.size().y;
            painter.galley(pos2(middle - how.size().x / 2.0, under), how, colour(p.ink2));
        }
        Lesson::ReadLine if map_view::hint_text(editor).is_some() => {}
        Lesson::ReadLine => {
            let at = pos2(rect.center().x, rect.bottom() - 34.0);
            let text = words.text(Text::ReadLine);
            painter.text(at, Align2::CENTER_CENTER, text, theme::medium(13.0), colour(p.ink));
            icons::chevron(&painter, at + vec2(0.0, 18.0), colour(p.ink));
        }
    }
}
