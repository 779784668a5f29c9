//! Setting of type: lines of text, rules, boxes and plates, as ink.

use drawing::letters::text_width;
use drawing::{Anchor, Colour, Ink, Palette, Theme, Weight};

/// The colours of print.
pub(crate) const PRINT: &Palette = Theme::Print.palette();

/// How a text is set.
#[derive(Clone, Copy)]
pub(crate) struct Type {
    pub(crate) size: f32,
    pub(crate) weight: Weight,
    pub(crate) colour: Colour,
}

/// From one line of small type to the next.
pub(crate) const LEADING: f32 = 10.5;
/// To this size a line may shrink before it is cut off, points: smaller is not read in a field.
const SMALLEST: f32 = 8.0;

impl Type {
    const fn new(size: f32, weight: Weight, colour: Colour) -> Self {
        Self { size, weight, colour }
    }

    pub(crate) fn width(self, text: &str) -> f32 {
        text_width(text, self.size, self.weight)
    }

    /// The text, or as much of its start as fits, with an ellipsis.
    pub(crate) fn fitted(self, text: &str, width: f32) -> String {
        if self.width(text) <= width {
            return text.to_owned();
        }
        let mut cut = text.to_owned();
        while cut.pop().is_some() {
            let ending = format!("{}…", cut.trim_end());
            if self.width(&ending) <= width {
                return ending;
            }
        }
        String::new()
    }

    /// The text in one line, in smaller letters where it is long; in several where even those are too wide.
    pub(crate) fn lines(self, text: &str, width: f32) -> (Self, Vec<String>) {
        let asked = self.size * width / self.width(text).max(f32::MIN_POSITIVE);
        let least = SMALLEST.min(self.size);
        let set = Self { size: asked.clamp(least, self.size), ..self };
        // What the smaller size was made for is not wrapped for a rounding.
        let lines = if asked >= least { vec![text.to_owned()] } else { set.wrapped(text, width) };
        (set, lines)
    }

    /// How much higher than one line a text stands in so much room.
    pub(crate) fn more(self, text: &str, width: f32) -> f32 {
        self.lines(text, width).1.len().saturating_sub(1) as f32 * LEADING
    }

    /// The text in lines that fit, a new one at each line end; a word that is wider than a line is cut.
    pub(crate) fn wrapped(self, text: &str, width: f32) -> Vec<String> {
        text.lines().flat_map(|line| self.wrapped_line(line, width)).collect()
    }

    fn wrapped_line(self, text: &str, width: f32) -> Vec<String> {
        let mut lines = Vec::new();
        let mut line = String::new();
        for word in text.split_whitespace() {
            let longer = if line.is_empty() { word.to_owned() } else { format!("{line} {word}") };
            if self.width(&longer) <= width {
                line = longer;
            } else {
                if !line.is_empty() {
                    lines.push(line);
                }
                line = self.fitted(word, width);
            }
        }
        if !line.is_empty() {
            lines.push(line);
        }
        lines
    }
}

pub(crate) const TITLE: Type = Type::new(16.5, Weight::SemiBold, PRINT.ink);
pub(crate) const FIGURE: Type = Type::new(12.0, Weight::SemiBold, PRINT.ink);
pub(crate) const HEAD: Type = Type::new(10.0, Weight::SemiBold, PRINT.ink);
pub(crate) const BODY: Type = Type::new(9.0, Weight::Regular, PRINT.ink);
pub(crate) const STRONG: Type = Type::new(9.0, Weight::SemiBold, PRINT.ink);
pub(crate) const SECOND: Type = Type::new(9.0, Weight::Regular, PRINT.ink2);
pub(crate) const SMALL: Type = Type::new(8.25, Weight::Regular, PRINT.ink);
pub(crate) const SMALL_STRONG: Type = Type::new(8.25, Weight::SemiBold, PRINT.ink);
pub(crate) const LABEL: Type = Type::new(8.25, Weight::Regular, PRINT.ink2);

/// Ink being put down.
#[derive(Default)]
pub(crate) struct Sheet(pub(crate) Vec<Ink>);

impl Sheet {
    /// A line of text with its middle line at `y`.
    pub(crate) fn text(&mut self, x: f32, y: f32, anchor: Anchor, set: Type, text: &str) {
        if text.is_empty() {
            return;
        }
        self.0.push(Ink::Text {
            at: [x, y],
            text: text.to_owned(),
            size: set.size,
            weight: set.weight,
            colour: set.colour,
            anchor,
            turn_rad: 0.0,
        });
    }

    /// A line of text from `x` to the right.
    pub(crate) fn left(&mut self, x: f32, y: f32, set: Type, text: &str) {
        self.text(x, y, Anchor::Start, set, text);
    }

    /// A line of text that starts at `x` and has so much room: in smaller letters where it is long, and cut off where
    /// even those are too wide.
    pub(crate) fn within(&mut self, x: f32, y: f32, set: Type, text: &str, room: f32) {
        let asked = set.size * room / set.width(text).max(f32::MIN_POSITIVE);
        let set = Type { size: asked.clamp(SMALLEST.min(set.size), set.size), ..set };
        // What the smaller size was made for is not cut for a rounding.
        let text = if asked >= set.size { text.to_owned() } else { set.fitted(text, room) };
        self.left(x, y, set, &text);
    }

    /// Text that starts at `x` and has so much room: in as many lines as it takes, `y` in their middle.
    pub(crate) fn lines(&mut self, x: f32, y: f32, set: Type, text: &str, room: f32) {
        let (set, lines) = set.lines(text, room);
        let first = y - 0.5 * (lines.len().saturating_sub(1)) as f32 * LEADING;
        for (index, line) in lines.iter().enumerate() {
            self.left(x, first + index as f32 * LEADING, set, line);
        }
    }

    /// A line of text that ends at `x`.
    pub(crate) fn right(&mut self, x: f32, y: f32, set: Type, text: &str) {
        self.text(x, y, Anchor::End, set, text);
    }

    /// A rule.
    pub(crate) fn rule(&mut self, from: f32, to: f32, y: f32, width: f32, colour: Colour) {
        self.line(vec![[from, y], [to, y]], false, width, colour);
    }

    /// A line, closed or not.
    pub(crate) fn line(&mut self, spots: Vec<[f32; 2]>, closed: bool, width: f32, colour: Colour) {
        self.0.push(Ink::Line { spots, closed, width, colour, dash: None });
    }

    /// A filled rectangle.
    pub(crate) fn area(&mut self, [left, top, right, bottom]: [f32; 4], fill: Colour) {
        self.0.push(Ink::Area { rings: vec![vec![[left, top], [right, top], [right, bottom], [left, bottom]]], fill });
    }

    /// A box to write or tick in.
    pub(crate) fn open_box(&mut self, [left, top, right, bottom]: [f32; 4], width: f32, colour: Colour) {
        self.line(vec![[left, top], [right, top], [right, bottom], [left, bottom]], true, width, colour);
    }

    /// A box for a tick, its left edge at `x`.
    pub(crate) fn tick(&mut self, x: f32, y: f32) {
        let half = TICK / 2.0;
        self.open_box([x, y - half, x + TICK, y + half], 0.8, PRINT.ink);
    }

    /// A corner's plate with its number; its upper right corner is cut, as on the map. `x` is its left edge.
    pub(crate) fn plate(&mut self, x: f32, y: f32, number: &str) {
        let half = PLATE / 2.0;
        let cut = PLATE * 0.28;
        let (right, top, bottom) = (x + PLATE, y - half, y + half);
        let spots = vec![[x, top], [right - cut, top], [right, top + cut], [right, bottom], [x, bottom]];
        self.line(spots, true, 0.8, PRINT.ink);
        self.text(x + half, y, Anchor::Middle, SMALL_STRONG, number);
    }

    /// A ring with a letter, for a place to take a reading at.
    pub(crate) fn ring(&mut self, middle: [f32; 2], letter: &str) {
        self.0.push(Ink::Disc { middle, radius: RING / 2.0, fill: Some(PRINT.sheet), edge: Some((0.8, PRINT.ink)) });
        self.text(middle[0], middle[1], Anchor::Middle, SMALL_STRONG, letter);
    }
}

/// Side of a tick's box.
pub(crate) const TICK: f32 = 9.0;
/// Side of a corner's plate.
pub(crate) const PLATE: f32 = 12.5;
/// Across a reading's ring.
pub(crate) const RING: f32 = 12.5;
