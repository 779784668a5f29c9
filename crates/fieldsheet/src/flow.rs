//! Blocks onto pages: two stacks side by side, each block whole where a page can hold it.

use drawing::{Anchor, Scene};

use crate::contents::{Block, Contents};
use crate::map;
use crate::page::Page;
use crate::paper::{GUTTER, Paper};
use crate::rows::Row;
use crate::setting::{FIGURE, HEAD, LABEL, PRINT, SMALL_STRONG, Sheet, TITLE};

/// From the top of a block to its first row.
const BLOCK_HEAD: f32 = 17.0;
/// Between two blocks of a stack.
const BETWEEN: f32 = 9.0;
/// The foot of every page, with the air above it.
const FOOT: f32 = 25.0;
/// From the top to under the rule below the title.
const TITLE_HEIGHT: f32 = 25.0;
/// The row of figures, with two lines of label.
const FIGURES_HEIGHT: f32 = 40.0;

/// The pages of one run.
pub(crate) fn pages(scene: &Scene<'_>, run: usize, contents: Contents, paper: Paper) -> Vec<Page> {
    let [left, right] = paper.sides();
    let [top, bottom] = paper.ends();
    let below_title = top + TITLE_HEIGHT;
    let map_top = below_title + FIGURES_HEIGHT;
    let below_map = map_top + paper.map_height() + BETWEEN;
    let foot = bottom - FOOT;

    let starts = [below_map, below_title + 6.0];
    let left_columns = paper.columns(0, 4);
    let right_columns = paper.columns(4, 2);
    let stacks = [
        (left_columns, stack(contents.left, left_columns, starts, foot)),
        (right_columns, stack(contents.right, right_columns, starts, foot)),
    ];
    let count = stacks.iter().map(|(_, placed)| placed.last().map_or(1, |last| last.page + 1)).max().unwrap_or(1);

    let drawn = map::map(scene, run, &contents.readings, [left, map_top, right, map_top + paper.map_height()]);
    let mut map = Some(drawn.framed);
    let mut sheets: Vec<Sheet> = (0..count).map(|_| Sheet::default()).collect();
    for (page, sheet) in sheets.iter_mut().enumerate() {
        let page_of = scene
            .words
            .say(words::texts::Sheet::PageOf, &[("page", &(page + 1).to_string()), ("pages", &count.to_string())]);
        head(sheet, &contents.title, &contents.day, &page_of, paper);
        footer(sheet, &contents.foot, paper);
    }
    figures(&mut sheets[0], &contents.figures, below_title, paper);
    sheets[0].0.extend(drawn.over);
    for (columns, placed) in stacks {
        for block in placed {
            put(&mut sheets[block.page], &block.block, columns, block.top);
        }
    }
    sheets.into_iter().map(|sheet| Page { size: paper.size(), map: map.take(), ink: sheet.0 }).collect()
}

fn head(sheet: &mut Sheet, title: &str, day: &str, page_of: &str, paper: Paper) {
    let [left, right] = paper.sides();
    let [top, _] = paper.ends();
    let aside = HEAD.width(day).max(LABEL.width(page_of));
    let middle = top + 8.0;
    house_mark(sheet, left, middle);
    let start = left + 24.0;
    sheet.left(start, middle, TITLE, &TITLE.fitted(title, right - start - aside - GUTTER));
    if day.is_empty() {
        sheet.right(right, top + 13.0, LABEL, page_of);
    } else {
        sheet.right(right, top + 3.5, HEAD, day);
        sheet.right(right, top + 15.0, LABEL, page_of);
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

fn figures(sheet: &mut Sheet, figures: &[(String, String)], top: f32, paper: Paper) {
    for (index, (figure, label)) in figures.iter().enumerate() {
        let [left, right] = paper.columns(index as u8, 1);
        // The last one may reach into the margin's air of nobody: it has no neighbour to run into.
        sheet.left(left, top + 10.0, FIGURE, &FIGURE.fitted(figure, right - left + 4.0));
        for (line, words) in LABEL.wrapped(label, right - left).iter().take(2).enumerate() {
            sheet.left(left, top + 22.5 + 9.5 * line as f32, LABEL, words);
        }
    }
}

fn footer(sheet: &mut Sheet, [first, left_words, right_words]: &[String; 3], paper: Paper) {
    let [left, right] = paper.sides();
    let [_, bottom] = paper.ends();
    sheet.rule(left, right, bottom - FOOT + 2.0, 0.5, PRINT.hairline);
    sheet.left(left, bottom - 16.0, SMALL_STRONG, first);
    let room = right - left - LABEL.width(right_words) - GUTTER;
    sheet.left(left, bottom - 5.0, LABEL, &LABEL.fitted(left_words, room));
    sheet.right(right, bottom - 5.0, LABEL, right_words);
}

fn put(sheet: &mut Sheet, block: &Block, [left, right]: [f32; 2], top: f32) {
    let aside = LABEL.width(&block.aside);
    sheet.left(left, top + 5.0, HEAD, &HEAD.fitted(&block.head, right - left - aside - 4.0));
    sheet.text(right, top + 5.5, Anchor::End, LABEL, &block.aside);
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
    page: usize,
    top: f32,
}

fn height(block: &Block, width: f32) -> f32 {
    BLOCK_HEAD + block.rows.iter().map(|row| row.height(width)).sum::<f32>()
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
        placed.push(Placed { block, page, top: filled[page] });
        filled[page] += height + BETWEEN;
    }
    placed.sort_by_key(|block| block.page);
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
