//! The question itself: how many rolls, how long, with how many posts, and what they will enclose.

use egui::{Align2, Key, Role, Sense, Ui, vec2};
use plan::Rolls;
use words::texts::Rolls as Text;
use words::{Measure, Range, Words};

use super::step::{Came, Step};
use crate::editor::{Editor, Message};
use crate::icons::Icon;
use crate::kit;
use crate::said::Said;
use crate::theme::{self, colour};

/// More rolls, metres or posts than this are a slip of the pen.
const ROLLS: Range = Range::between(1.0, 200.0);
const LENGTH_M: Range = Range::between(1.0, 500.0);
const POSTS: Range = Range::between(2.0, 200.0);

/// Asks, and says what is answered.
pub(super) fn ask(ui: &mut Ui, rolls: Rolls, editor: &Editor, covered: bool, said: &mut Said) {
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
    // What was refused, and of which field.
    let mut refused: Vec<(&str, String)> = Vec::new();
    let mut values = [None; 3];
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = 16.0;
        for (step, value) in steps.iter().zip(&mut values) {
            match step.show(ui, words, p) {
                Some(Came::Answer(typed)) => *value = Some(typed),
                Some(Came::Refused(sentence)) => refused.push((step.name(words), sentence)),
                Some(Came::Left) => said.say(Message::Escape),
                Some(Came::Back(before, sentence)) => {
                    *value = Some(before);
                    refused.push((step.name(words), sentence));
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
    let is_read = refused.is_empty();
    let entered = !covered && !on_button && is_read && ui.input(|input| input.key_pressed(Key::Enter));
    let (sentence, ink) = match &*refused {
        [(_, sentence)] => (sentence.clone(), colour(p.danger)),
        [] if !can && typing => (" ".to_owned(), colour(p.ink2)),
        [] if !can => (words.text(Text::TooFew).to_owned(), colour(p.danger)),
        [] => (summary(words, answer), colour(p.ink2)),
        several => {
            let each: Vec<String> = several.iter().map(|(name, sentence)| format!("{name}: {sentence}")).collect();
            (each.join("\n"), colour(p.danger))
        }
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
        // Nothing is laid out of an older answer than the one that stands in the field.
        if (lay.clicked() && is_read) || (entered && can) {
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
