//! Heights on the ground page: spots put down on the map and typed here, and a grid brought in.

use drawing::Thing;
use egui::{Id, Rect, Ui, vec2};
use plan::Edit;
use words::texts::{About, Slope as Text};
use words::{Measure, Range};

use super::{Desk, tool};
use crate::asking::Ask;
use crate::editor::Message;
use crate::field::{self, Label, Shown};
use crate::icons::Icon;
use crate::kit;
use crate::tool::Drawn;

/// Heights over any level, metres.
const UP_M: Range = Range::between(-10_000.0, 10_000.0);
/// Of more spots than this the last ones are listed: the others are picked on the map.
const MOST_ROWS: usize = 24;

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p) = (desk.words, desk.p);
    let ground = &desk.editor.plan().ground;
    let heights = &desk.editor.plan().heights;
    let count = if heights.is_empty() { String::new() } else { heights.len().to_string() };
    desk.section(ui, words.text(Text::HeightsHead), &count, About::Heights);
    ui.add_space(6.0);
    let sentence = match (heights.len(), &ground.height_grid) {
        (0, None) => words.text(Text::HeightsNone).to_owned(),
        (0, Some(_)) => String::new(),
        (1, _) => words.text(Text::HeightsOne).to_owned(),
        (count, _) => words.say(Text::HeightsSome, &[("count", &count.to_string())]),
    };
    if !sentence.is_empty() {
        desk.second(ui, &sentence);
        ui.add_space(4.0);
    }
    // Of many the last ones: what was just put down is among them; and the one that is picked.
    let first = heights.len().saturating_sub(MOST_ROWS);
    if let Some(Thing::Height { height }) = desk.editor.picked().filter(|_| first > 0)
        && height < first
    {
        spot(ui, desk, height);
    }
    for index in first..heights.len() {
        spot(ui, desk, index);
    }
    if first > 0 {
        ui.add_space(4.0);
        desk.second(ui, &words.say(Text::HeightsMore, &[("count", &first.to_string())]));
    }
    if let Some(grid) = &ground.height_grid {
        let holes = grid.up_m.iter().filter(|up_m| up_m.is_none()).count();
        let places = [
            ("columns", &*grid.columns.to_string()),
            ("rows", &*grid.rows().to_string()),
            ("cell", &*words.length(grid.cell_m)),
        ];
        let mut sentence = words.say(Text::GridSentence, &places);
        if holes > 0 {
            let holes = words.number(holes as f64, 0);
            sentence = format!("{sentence} {}", words.say(Text::GridHoles, &[("holes", &holes)]));
        }
        ui.add_space(4.0);
        desk.second(ui, &sentence);
    }
    ui.add_space(6.0);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(6.0, 6.0);
        tool(ui, desk, Drawn::Height, Icon::Height, words.text(Text::PutHeight));
        if kit::button(ui, Icon::BringIn, words.text(Text::BringGrid), false, p)
            .on_hover_text(words.text(Text::BringGridTitle))
            .clicked()
        {
            desk.said.ask(Ask::BringHeights);
        }
        if ground.height_grid.is_some()
            && kit::button(ui, Icon::TakeOut, words.text(Text::TakeGrid), false, p).clicked()
        {
            desk.said.say(Message::Make(Edit::SetHeightGrid { grid: None }));
        }
    });
}

/// One spot: its height in a field; an emptied field takes the spot out.
pub(in crate::pages) fn spot(ui: &mut Ui, desk: &mut Desk<'_>, index: usize) {
    let words = desk.words;
    let heights = &desk.editor.plan().heights;
    let number = (index + 1).to_string();
    let shown = words.say(Text::HeightRow, &[("number", &number)]);
    let said = words.say(Text::HeightLabel, &[("number", &number)]);
    let id = Id::unique(("spot height", index));
    let value = Shown::of(words, Measure::Length, heights[index].up_m, false);
    let read = field::or_nothing(field::figure(words, Measure::Length, UP_M));
    let top = ui.cursor().top();
    if let Some(up_m) = field::line(ui, desk.p, id, Label { shown: &shown, said: &said }, &value, read) {
        let mut heights = heights.clone();
        match up_m {
            Some(up_m) => heights[index].up_m = up_m,
            None => drop(heights.remove(index)),
        }
        desk.said.say(Message::Make(Edit::SetHeights { heights }));
    }
    let row = Rect::from_x_y_ranges(ui.max_rect().x_range(), top..=ui.cursor().top());
    if ui.rect_contains_pointer(row) {
        desk.said.hovered = desk.said.hovered.or(Some(Thing::Height { height: index }));
    }
}
