//! Blocks onto pages: two stacks side by side and pairs of blocks below them, each block whole where a page can hold it.

use drawing::{Anchor, Scene};

use crate::contents::{Block, Contents};
use crate::map;
use crate::page::Page;
use crate::paper::{GUTTER, MM, Paper};
use crate::rows::Row;
use crate::setting::{FIGURE, HEAD, LABEL, LEADING, PRINT, SMALL_STRONG, Sheet, TITLE};

/// From the top of a block to its first row.
const BLOCK_HEAD: f32 = 17.0;
/// Between two blocks of a stack.
const BETWEEN: f32 = 9.0;
/// Between two lines to write on by hand.
const WRITTEN: f32 = 8.0 * MM;
/// The foot of every page, with the air above it.
const FOOT: f32 = 25.0;
/// From the top to under the rule below the title.
const TITLE_HEIGHT: f32 = 25.0;
/// The map is no lower than this, and gives up height by so much at a time, points.
const LEAST_MAP: f32 = 75.0 * MM;
const MAP_STEP: f32 = 2.0 * MM;
/// The row of figures with one line of label, and each further line.
const FIGURES_HEIGHT: f32 = 30.5;
const LABEL_LINE: f32 = 9.5;
/// The labels take this many lines of room at least.
const LABEL_LINES: usize = 2;

/// The sheets of one run, whose heads wait for the count of the whole print.
pub(crate) struct Unnumbered {
    pages: Vec<Page>,
    title: String,
    day: String,
    of: String,
}

/// Puts the head onto every page: whose it is, and which of all pages of the print.
pub(crate) fn numbered(runs: Vec<Unnumbered>, words: words::Words, paper: Paper) -> Vec<Page> {
    let count: usize = runs.iter().map(|run| run.pages.len()).sum();
    let mut all = Vec::with_capacity(count);
    for Unnumbered { pages, title, day, of } in runs {
        for mut page in pages {
            let places = [("page", &*(all.len() + 1).to_string()), ("pages", &*count.to_string())];
            let page_of = words.say(words::texts::Sheet::PageOf, &places);
            let mut sheet = Sheet::default();
            head(&mut sheet, &title, [&day, &of, &page_of], paper);
            page.ink.splice(0..0, sheet.0);
            all.push(page);
        }
    }
    all
}

/// The pages of one run.
pub(crate) fn pages(scene: &Scene<'_>, run: usize, contents: Contents, paper: Paper) -> Unnumbered {
    let [left, right] = paper.sides();
    let [top, bottom] = paper.ends();
    let below_title = top + TITLE_HEIGHT;
    let map_top = below_title + figures_height(&contents.figures, paper);
    let below_map = map_top + paper.map_height() + BETWEEN;
    let foot = bottom - FOOT;

    // The map gives up height, down to its least, where that brings the sheet onto fewer pages, or more of it onto the
    // first; else it stays as large as it can be.
    let shrunk = (0..).map(|step| step as f32 * MAP_STEP).take_while(|less| paper.map_height() - less >= LEAST_MAP);
    let laid = shrunk
        .map(|less| (less, Laid::of(&contents, paper, [below_map - less, below_title + 6.0], foot)))
        .min_by_key(|(_, laid)| laid.cost())
        .expect("the map at its full height is one of them");
    let (map_height, mut laid) = (paper.map_height() - laid.0, laid.1);
    if let Some(block) = &contents.setting_out {
        laid.add(block, paper.columns(0, 4), below_title + 6.0, foot);
    }
    let count = laid.count();

    let drawn = map::map(scene, run, &contents, [left, map_top, right, map_top + map_height]);
    let mut map = Some(drawn.framed);
    let mut sheets: Vec<Sheet> = (0..count).map(|_| Sheet::default()).collect();
    for sheet in &mut sheets {
        footer(sheet, &contents.foot, paper);
    }
    figures(&mut sheets[0], &contents.figures, below_title, paper);
    sheets[0].0.extend(drawn.over);
    // What a second page has left over is for the pencil.
    if let Some(top) = laid.filled.last().filter(|_| count > 1) {
        notes(sheets.last_mut().expect("there are pages"), &contents.notes, [left, right], [*top, foot]);
    }
    for block in &laid.blocks {
        put(&mut sheets[block.page], &block.block, block.columns, block.top);
    }
    let pages = sheets.into_iter().map(|sheet| Page { size: paper.size(), map: map.take(), ink: sheet.0 }).collect();
    Unnumbered { pages, title: contents.title, day: contents.day, of: contents.of }
}

fn head(sheet: &mut Sheet, title: &str, [day, of, page_of]: [&str; 3], paper: Paper) {
    let [left, right] = paper.sides();
    let [top, _] = paper.ends();
    // A long name of the plan gives way before the page's number does, and both leave the title most of the line.
    let most = (right - left) * 0.45;
    let below = if of.is_empty() {
        page_of.to_owned()
    } else {
        let after = format!(" · {page_of}");
        LABEL.fitted(of, most - LABEL.width(&after)) + &after
    };
    let aside = HEAD.width(day).max(LABEL.width(&below));
    let middle = top + 8.0;
    house_mark(sheet, left, middle);
    let start = left + 24.0;
    sheet.within(start, middle, TITLE, title, right - start - aside - GUTTER);
    if day.is_empty() {
        sheet.right(right, top + 13.0, LABEL, &below);
    } else {
        sheet.right(right, top + 3.5, HEAD, day);
        sheet.right(right, top + 15.0, LABEL, &below);
    }
    sheet.rule(left, right, top + TITLE_HEIGHT - 2.0, 1.2, PRINT.ink);
}

/// A net folded over four posts: the mark of the house.
fn house_mark(sheet: &mut Sheet, left: f32, middle: f32) {
    let spots = vec![
        [left + 1.5, middle + 4.0],
        [left + 6.0, middle - 4.0],
        [left + 11.5, middle + 4.0],
        [left + 16.5, middle - 4.0],
    ];
    for spot in &spots {
        sheet.0.push(drawing::Ink::Disc { middle: *spot, radius: 1.9, fill: Some(PRINT.ink), edge: None });
    }
    sheet.line(spots, false, 1.4, PRINT.ink);
}

/// How high the row of figures is: as the longest label asks.
fn figures_height(figures: &[(String, String)], paper: Paper) -> f32 {
    let [left, right] = paper.columns(0, 1);
    let lines = figures.iter().map(|(_, label)| LABEL.wrapped(label, right - left).len()).max().unwrap_or(0);
    FIGURES_HEIGHT + LABEL_LINE * (lines.max(LABEL_LINES) - 1) as f32
}

fn figures(sheet: &mut Sheet, figures: &[(String, String)], top: f32, paper: Paper) {
    for (index, (figure, label)) in figures.iter().enumerate() {
        let [left, right] = paper.columns(index as u8, 1);
        // The last one may reach into the margin's air of nobody: it has no neighbour to run into.
        sheet.within(left, top + 10.0, FIGURE, figure, right - left + 4.0);
        for (line, words) in LABEL.wrapped(label, right - left).iter().enumerate() {
            sheet.left(left, top + 22.5 + LABEL_LINE * line as f32, LABEL, words);
        }
    }
}

fn footer(sheet: &mut Sheet, [first, assumed]: &[String; 2], paper: Paper) {
    let [left, right] = paper.sides();
    let [_, bottom] = paper.ends();
    sheet.rule(left, right, bottom - FOOT + 2.0, 0.5, PRINT.hairline);
    sheet.left(left, bottom - 16.0, SMALL_STRONG, first);
    sheet.right(right, bottom - 5.0, LABEL, assumed);
}

/// Ruled lines to write on, where there is room for a few.
fn notes(sheet: &mut Sheet, head: &str, [left, right]: [f32; 2], [top, foot]: [f32; 2]) {
    if foot - top < BLOCK_HEAD + 3.0 * WRITTEN {
        return;
    }
    sheet.left(left, top + 5.0, HEAD, head);
    sheet.rule(left, right, top + BLOCK_HEAD - 4.0, 0.8, PRINT.ink);
    let mut y = top + BLOCK_HEAD - 4.0 + WRITTEN;
    while y <= foot - BETWEEN {
        sheet.rule(left, right, y, 0.5, PRINT.hairline);
        y += WRITTEN;
    }
}

/// The words beside a block's head in lines below it, where they find no room beside it.
fn aside_below(block: &Block, width: f32) -> Vec<String> {
    let beside = width - LABEL.width(&block.aside) - 4.0;
    if block.aside.is_empty() || HEAD.lines(&block.head, beside).1.len() < 2 {
        return Vec::new();
    }
    LABEL.wrapped(&block.aside, width)
}

fn put(sheet: &mut Sheet, block: &Block, [left, right]: [f32; 2], top: f32) {
    let below = aside_below(block, right - left);
    let beside = if below.is_empty() { LABEL.width(&block.aside) + 4.0 } else { 0.0 };
    sheet.within(left, top + 5.0, HEAD, &block.head, right - left - beside);
    if below.is_empty() {
        sheet.text(right, top + 5.5, Anchor::End, LABEL, &block.aside);
    }
    for (index, line) in below.iter().enumerate() {
        sheet.left(left, top + 5.5 + LEADING * (index + 1) as f32, LABEL, line);
    }
    let top = top + below.len() as f32 * LEADING;
    sheet.rule(left, right, top + BLOCK_HEAD - 4.0, 0.8, PRINT.ink);
    let mut y = top + BLOCK_HEAD - 2.0;
    for row in &block.rows {
        row.put(sheet, [left, right], y);
        y += row.height(right - left);
    }
}

/// A block and where it stands.
struct Placed {
    block: Block,
    columns: [f32; 2],
    page: usize,
    top: f32,
}

/// Every block in its place.
struct Laid {
    blocks: Vec<Placed>,
    /// Where they end on each page.
    filled: Vec<f32>,
}

impl Laid {
    /// Two stacks side by side, and what comes below them: two blocks beside each other, one as wide as the left stack.
    fn of(contents: &Contents, paper: Paper, starts: [f32; 2], foot: f32) -> Self {
        let (left, right) = (paper.columns(0, 4), paper.columns(4, 2));
        // One alone stands in the left stack, whose columns it would take anyhow.
        let mut stacked = contents.left.clone();
        let below = if contents.below.len() > 1 { contents.below.as_slice() } else { &[] };
        if below.is_empty() {
            stacked.extend(contents.below.iter().cloned());
        }
        let mut blocks = stack(stacked, left, starts, foot);
        blocks.extend(stack(contents.right.clone(), right, starts, foot));
        let pages = blocks.iter().map(|block| block.page + 1).max().unwrap_or(1);
        // Where the stacks end on each page.
        let mut filled: Vec<f32> = (0..pages).map(|page| if page == 0 { starts[0] } else { starts[1] }).collect();
        for placed in &blocks {
            let end = placed.top + height(&placed.block, placed.columns[1] - placed.columns[0]) + BETWEEN;
            filled[placed.page] = filled[placed.page].max(end);
        }
        let columns = [paper.columns(0, 3), paper.columns(3, 3)];
        let most = foot - starts[1];
        for pair in below.chunks(columns.len()) {
            let parts: Vec<Vec<Block>> =
                pair.iter().zip(&columns).map(|(block, at)| parted(block.clone(), at[1] - at[0], most)).collect();
            let tall = |part: usize| {
                let of =
                    |(block, at): (&Vec<Block>, &[f32; 2])| block.get(part).map(|block| height(block, at[1] - at[0]));
                parts.iter().zip(&columns).filter_map(of).fold(0.0, f32::max)
            };
            for part in 0..parts.iter().map(Vec::len).max().unwrap_or(0) {
                let tall = tall(part);
                let page = filled.iter().position(|top| top + tall <= foot).unwrap_or_else(|| {
                    filled.push(starts[1]);
                    filled.len() - 1
                });
                for (block, &columns) in parts.iter().zip(&columns) {
                    if let Some(block) = block.get(part) {
                        blocks.push(Placed { block: block.clone(), columns, page, top: filled[page] });
                    }
                }
                filled[page] += tall + BETWEEN;
            }
        }
        Self { blocks, filled }
    }

    /// Adds a block below all others, on the first page with room for it, else on one more.
    fn add(&mut self, block: &Block, columns: [f32; 2], start: f32, foot: f32) {
        let width = columns[1] - columns[0];
        for block in parted(block.clone(), width, foot - start) {
            let height = height(&block, width);
            let page = self.filled.iter().position(|top| top + height <= foot).unwrap_or_else(|| {
                self.filled.push(start);
                self.filled.len() - 1
            });
            self.blocks.push(Placed { block, columns, page, top: self.filled[page] });
            self.filled[page] += height + BETWEEN;
        }
    }

    fn count(&self) -> usize {
        self.blocks.iter().map(|block| block.page + 1).max().unwrap_or(1)
    }

    /// What is better the less of it: pages, then blocks that are not on the first.
    fn cost(&self) -> (usize, usize) {
        (self.count(), self.blocks.iter().filter(|block| block.page > 0).count())
    }
}

fn height(block: &Block, width: f32) -> f32 {
    BLOCK_HEAD
        + aside_below(block, width).len() as f32 * LEADING
        + block.rows.iter().map(|row| row.height(width)).sum::<f32>()
}

/// Places the blocks of a stack, each on the first page with room below what stands there already; the first page
/// starts at the first of `starts`, the others at the second. A block that no page can hold is parted.
fn stack(blocks: Vec<Block>, [left, right]: [f32; 2], starts: [f32; 2], foot: f32) -> Vec<Placed> {
    let width = right - left;
    let most = foot - starts[1];
    let mut filled = vec![starts[0]];
    let mut placed = Vec::new();
    for block in blocks.into_iter().flat_map(|block| parted(block, width, most)) {
        let height = height(&block, width);
        let page = filled.iter().position(|top| top + height <= foot).unwrap_or_else(|| {
            filled.push(starts[1]);
            filled.len() - 1
        });
        placed.push(Placed { block, columns: [left, right], page, top: filled[page] });
        filled[page] += height + BETWEEN;
    }
    placed
}

/// The block in parts that a page can hold, each with the block's head and the heads of its columns.
fn parted(block: Block, width: f32, most: f32) -> Vec<Block> {
    if height(&block, width) <= most {
        return vec![block];
    }
    let Block { head, aside, rows } = block;
    let empty = || Block { head: head.clone(), aside: aside.clone(), rows: Vec::new() };
    let mut parts = vec![empty()];
    for row in rows {
        let last = parts.last_mut().expect("there is a part to begin with");
        if height(last, width) + row.height(width) > most && !last.rows.is_empty() {
            let heads = last.rows.first().and_then(Row::heads);
            parts.push(empty());
            let next = parts.last_mut().expect("one was pushed");
            next.rows.extend(heads);
            next.rows.push(row);
        } else {
            last.rows.push(row);
        }
    }
    parts
}
