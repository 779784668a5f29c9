//! The page of keys: every command that has some, by its head, in two columns.

use words::Words;
use words::texts::Commands as Text;

use crate::page::Page;
use crate::paper::Paper;
use crate::setting::{BODY, HEAD, LABEL, PRINT, STRONG, Sheet, TITLE};
use crate::{SheetError, pen};

/// Height of a row, and from one head's rows to the next head.
const ROW: f32 = 15.0;
const BETWEEN: f32 = 12.0;
/// From a head to its first row, and from the top to the first head.
const HEAD_HEIGHT: f32 = 20.0;
const TITLE_HEIGHT: f32 = 40.0;

/// Keys under a head: what it is called, then each command with its keys.
pub type Group = (String, Vec<(String, String)>);

/// The page of keys as a PDF file.
///
/// # Errors
/// [`SheetError::NotWritten`].
pub fn keys(words: Words, groups: &[Group], paper: Paper) -> Result<Vec<u8>, SheetError> {
    let pages = key_pages(words, groups, paper);
    let (title, language) = (words.text(Text::KeysTitle), words.language.tag());
    pen::write(&pages, title, language).map_err(|problem| SheetError::NotWritten { problem })
}

/// The page of keys as ink: as many pages as they fill.
pub fn key_pages(words: Words, groups: &[Group], paper: Paper) -> Vec<Page> {
    let [top, bottom] = paper.ends();
    let columns = [paper.columns(0, 3), paper.columns(3, 3)];
    let mut sheets = vec![Sheet::default()];
    let (mut column, mut y) = (0, top + TITLE_HEIGHT);
    for (head, rows) in groups {
        // A head never stands alone at the foot of a column, and its rows stay together where a column can hold them.
        let tall = |(name, keys): &(String, String)| ROW + BODY.more(name, room(columns[0], keys));
        let height = HEAD_HEIGHT + rows.iter().map(tall).sum::<f32>();
        let whole = height <= bottom - top - TITLE_HEIGHT;
        let first = rows.first().map_or(0.0, tall);
        if y + if whole { height } else { HEAD_HEIGHT + first } > bottom {
            turn(&mut sheets, &mut column, &mut y, top + TITLE_HEIGHT);
        }
        let at = sheets.len() - 1;
        let [left, right] = columns[column];
        sheets[at].left(left, y + 8.0, HEAD, &HEAD.fitted(head, right - left));
        y += HEAD_HEIGHT;
        for row in rows {
            let ((name, keys), tall) = (row, tall(row));
            if y + tall > bottom {
                turn(&mut sheets, &mut column, &mut y, top + TITLE_HEIGHT);
            }
            let at = sheets.len() - 1;
            let [left, right] = columns[column];
            sheets[at].right(right, y + tall / 2.0, STRONG, keys);
            sheets[at].lines(left, y + tall / 2.0, BODY, name, room([left, right], keys));
            sheets[at].rule(left, right, y + tall, 0.4, PRINT.hairline);
            y += tall;
        }
        y += BETWEEN;
    }
    let [left, right] = paper.sides();
    for sheet in &mut sheets {
        sheet.left(left, top + 8.0, TITLE, words.text(Text::KeysTitle));
        sheet.right(right, top + 8.0, LABEL, "Netfold");
        sheet.rule(left, right, top + 24.0, 0.8, PRINT.ink);
    }
    sheets.into_iter().map(|sheet| Page { size: paper.size(), map: None, ink: sheet.0 }).collect()
}

/// Room in a column for what keys do, before the keys.
fn room([left, right]: [f32; 2], keys: &str) -> f32 {
    right - left - STRONG.width(keys) - 10.0
}

/// On to the next column, or to the first of a further page.
fn turn(sheets: &mut Vec<Sheet>, column: &mut usize, y: &mut f32, top: f32) {
    *column = (*column + 1) % 2;
    *y = top;
    if *column == 0 {
        sheets.push(Sheet::default());
    }
}
