//! The rows before they are painted: which there are, how high each is, and its words laid out.

use std::collections::BTreeMap;
use std::sync::Arc;

use drawing::Thing;
use egui::text::{Galley, LayoutJob};
use egui::{Color32, FontId, Rangef, Rect, Ui, pos2};
use plan::Point;
use words::Words;
use words::texts::Many as Text;

use crate::editor::Editor;
use crate::roster::{self, Entry, Item};
use crate::theme;

/// Height of a row of one line: a part, a head.
pub(super) const ROW: f32 = 26.0;
/// Height of a row whose figures stand under its name.
const TALL: f32 = 42.0;
/// What a row has over and under its words.
const AIR: f32 = 8.0;
/// A place as long as most are written, metres.
const A_PLACE: Point = Point::new(188.8, 188.8);
/// How much deeper each level stands.
const STEP: f32 = 14.0;

/// What the entries are made from: the drawing's stamp and whether the worker has answered to it, whose corners are told,
/// what is typed to find, the words and the pen.
type Key = (u64, bool, Option<Thing>, String, Words, Pen);

/// The entries, and what they were made from.
#[derive(Default)]
pub(crate) struct ListSheet {
    key: Option<Key>,
    pub(super) entries: Vec<Entry>,
    /// Whether a part has no room for its figures beside its name.
    pub(super) narrow: bool,
    /// Where each row begins, and where the last ends.
    pub(super) tops: Vec<f32>,
    /// How many things there are, heads not counted.
    pub(super) things: usize,
    sentences: Sentences,
}

/// Width of the rows, and pixels of a point: words laid out for one pen may be higher for another.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Pen {
    wide: f32,
    pixels: f32,
}

/// How high sentences are in the rows of a pen. That follows from their words alone, whatever they are about: of a
/// thousand findings only those that say something new are laid out.
#[derive(Default)]
struct Sentences {
    pen: Pen,
    high: BTreeMap<(u8, String, String), f32>,
}

impl ListSheet {
    pub(super) fn renew(&mut self, ui: &Ui, editor: &Editor, filter: &str, wide: f32) {
        let pen = Pen { wide, pixels: ui.pixels_per_point() };
        let key = (editor.stamp(), editor.is_full(), roster::opened(editor), filter.to_owned(), editor.words(), pen);
        if self.key.as_ref() == Some(&key) {
            return;
        }
        self.entries = roster::entries(editor, !filter.is_empty());
        let asked: Vec<String> = filter.to_lowercase().split_whitespace().map(str::to_owned).collect();
        if !asked.is_empty() {
            self.entries.retain(|entry| {
                let text = format!("{} {}", roster::full_name(editor, entry.item), roster::figures(editor, entry.item));
                let text = text.to_lowercase();
                !matches!(entry.item, Item::Head(_)) && asked.iter().all(|word| text.contains(word))
            });
        }
        self.things = self.entries.iter().filter(|entry| !matches!(entry.item, Item::Head(_))).count();
        self.narrow = is_narrow(ui, editor.words(), wide);
        let was = std::mem::replace(&mut self.sentences, Sentences { pen, high: BTreeMap::new() });
        let mut was = if was.pen == pen { was.high } else { BTreeMap::new() };
        let mut top = 0.0;
        self.tops.clear();
        self.tops.push(top);
        for &entry in &self.entries {
            top += if roster::is_sentence(entry.item) {
                self.sentences.high(ui, editor, entry, &mut was)
            } else if is_tall(entry.item, self.narrow) {
                TALL
            } else {
                ROW
            };
            self.tops.push(top);
        }
        self.key = Some(key);
    }

    /// The row at a height.
    pub(super) fn at(&self, y: f32) -> usize {
        self.tops.partition_point(|&top| top <= y).saturating_sub(1).min(self.entries.len().saturating_sub(1))
    }

    /// How far a page reaches from a row.
    pub(super) fn page(&self, from: usize, high: f32) -> usize {
        self.at(self.tops[from] + high).saturating_sub(from + 1).max(1)
    }
}

impl Sentences {
    /// How high a sentence's row is, as it was said before or laid out now.
    fn high(&mut self, ui: &Ui, editor: &Editor, entry: Entry, was: &mut BTreeMap<(u8, String, String), f32>) -> f32 {
        let said = (entry.level, roster::name(editor, entry.item), roster::figures(editor, entry.item));
        let kept = self.high.get(&said).copied().or_else(|| was.remove(&said));
        let high = kept.unwrap_or_else(|| {
            let room = reach(entry, self.pen.wide).span();
            let inks = [Color32::PLACEHOLDER; 2];
            (RowWords::new(ui, entry, true, [&said.1, &said.2], inks, [room; 2]).high() + AIR).max(ROW).round()
        });
        self.high.insert(said, high);
        high
    }
}

pub(super) fn is_tall(item: Item, narrow: bool) -> bool {
    roster::has_two_lines(item) || (narrow && !matches!(item, Item::Head(_)))
}

/// Whether a corner's name and place have no room beside each other: words of another language, larger figures.
fn is_narrow(ui: &Ui, words: Words, wide: f32) -> bool {
    let corner = Entry { item: Item::Thing(Thing::BoundaryCorner { vertex: 9 }), level: 2 };
    let name = words.say(Text::Corner, &[("number", "10")]);
    let (room, place) = (reach(corner, wide).span(), roster::place(words, A_PLACE));
    let inks = [Color32::PLACEHOLDER; 2];
    !RowWords::new(ui, corner, false, [&name, &place], inks, [room; 2]).is_whole()
}

/// A row's words laid out in a width; a whole's name is set stronger.
pub(super) struct RowWords {
    name: Arc<Galley>,
    figures: Arc<Galley>,
    /// Whether the figures stand under the name.
    under: bool,
}

impl RowWords {
    /// The name and the figures in their inks, beside each other or, as far as they reach, in lines of their own.
    pub(super) fn new(
        ui: &Ui,
        entry: Entry,
        under: bool,
        [name, figures]: [&str; 2],
        inks: [Color32; 2],
        [top, wide]: [f32; 2],
    ) -> Self {
        let lay = |text: &str, font: FontId, ink: Color32, room: f32| {
            let mut job = LayoutJob::simple(text.to_owned(), font, ink, room.max(0.0));
            // A sentence goes on in further lines.
            job.wrap.max_rows = if roster::is_sentence(entry.item) { usize::MAX } else { 1 };
            ui.painter().layout_job(job)
        };
        let strong = entry.level == 1 && !roster::is_sentence(entry.item);
        let font = if strong { theme::medium(13.0) } else { theme::regular(13.0) };
        let figures = lay(figures, theme::regular(12.0), inks[1], if under { wide } else { wide * 0.7 });
        let room = if under { top } else { top - figures.size().x - 10.0 };
        Self { name: lay(name, font, inks[0], room), figures, under }
    }

    pub(super) fn high(&self) -> f32 {
        let figures = if self.figures.text().is_empty() { 0.0 } else { self.figures.size().y };
        if self.under { self.name.size().y + figures } else { self.name.size().y.max(figures) }
    }

    pub(super) fn is_whole(&self) -> bool {
        !self.name.elided && !self.figures.elided
    }

    pub(super) fn paint(self, ui: &Ui, cells: Rect, inks: [Color32; 2]) {
        let top = cells.center().y - self.high() / 2.0;
        if self.under {
            let under = top + self.name.size().y;
            ui.painter().galley(pos2(cells.left(), top), self.name, inks[0]);
            ui.painter().galley(pos2(cells.left(), under), self.figures, inks[1]);
        } else {
            let (left, right) = (cells.left(), cells.right() - self.figures.size().x);
            let (name, figures) = (self.name.size().y / 2.0, self.figures.size().y / 2.0);
            ui.painter().galley(pos2(left, cells.center().y - name), self.name, inks[0]);
            ui.painter().galley(pos2(right, cells.center().y - figures), self.figures, inks[1]);
        }
    }
}

/// From where to where a row's words go, in its own width.
pub(super) fn reach(entry: Entry, wide: f32) -> Rangef {
    Rangef::new(8.0 + STEP * f32::from(entry.level.saturating_sub(1)), wide - 8.0)
}
