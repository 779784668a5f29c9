//! The sign of a reading: a board with a needle and a figure, its foot on the line.

use super::Inker;
use super::blocks::Block;
use super::filled::Filled;
use super::pen::{Pen, Type, plate_ring};
use super::trace::{self, Px, add, toward};
use crate::ink::{Anchor, Weight};
use crate::palette::Colour;
use crate::shape::{Form, Role, Shape};
use crate::view::{Distance, View};

/// The foot stands so far off the net's axis, and is so long and so wide, pixels.
const OFF_PX: f64 = 5.0;
/// Below a stake its foot stands under the earth's sign.
const BELOW_EARTH_PX: f64 = 14.0;
const FOOT_PX: f64 = 8.0;
const FOOT_HALF_PX: f64 = 4.5;
/// By so much a foot may be longer.
const LONGER_PX: [f64; 3] = [0.0, 8.0, 16.0];

/// A sign where it stands.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Board {
    tip: Px,
    middle: Px,
    width: f64,
    height: f64,
}

impl Board {
    /// The sign whose foot stands by a spot of the net, off in a direction: beside a steep line, above or below a level one.
    pub(crate) fn new(spot: Px, way: Px, distance: Distance, on_earth: bool) -> Self {
        let (width, height) = match distance {
            Distance::Near => (52.0, 18.0),
            Distance::Middle => (36.0, 16.0),
            Distance::Far => (9.0, 7.0),
        };
        let square = if way[0].abs() > way[1].abs() { [way[0].signum(), 0.0] } else { [0.0, way[1].signum()] };
        let tip = toward(spot, way, if on_earth { BELOW_EARTH_PX } else { OFF_PX });
        let half = if square[1] == 0.0 { width / 2.0 } else { height / 2.0 };
        let foot = if distance == Distance::Far { FOOT_PX / 2.0 } else { FOOT_PX };
        Self { tip, middle: toward(tip, square, foot + half), width, height }
    }

    /// A sign over a level line, with a body of that size.
    pub(crate) fn over(tip: Px, foot: f64, width: f64, height: f64) -> Self {
        Self { tip, middle: add(tip, [0.0, -foot - height / 2.0]), width, height }
    }

    /// The same sign with its body slid over its foot, or on a longer foot, as gets it off other signs; where nothing
    /// does, as it was.
    pub(crate) fn clear_of(self, signs: &Filled) -> Self {
        let covers = |board: &Self| signs.overlaps(&board.block());
        let [right, down] = trace::sub(self.middle, self.tip);
        let beside = down.abs() <= self.height / 2.0;
        let (away, along, half) = if beside {
            ([right.signum(), 0.0], [0.0, 1.0], self.height / 2.0)
        } else {
            ([0.0, down.signum()], [1.0, 0.0], self.width / 2.0)
        };
        let moved = |(longer, share): (f64, f64)| {
            let slid = toward(self.middle, along, share * (half - FOOT_HALF_PX).max(0.0));
            Self { middle: toward(slid, away, longer), ..self }
        };
        let ways = LONGER_PX.into_iter().flat_map(|longer| [0.0, 0.5, -0.5, 1.0, -1.0].map(|share| (longer, share)));
        ways.map(moved).find(|board| !covers(board)).unwrap_or(self)
    }

    /// Left, top, right and foot of its body.
    pub(crate) fn body(&self) -> [f64; 4] {
        let (x, y) = (self.middle[0], self.middle[1]);
        [x - self.width / 2.0, y - self.height / 2.0, x + self.width / 2.0, y + self.height / 2.0]
    }

    /// Whether a spot lies on its body.
    pub(crate) fn holds(&self, at: Px) -> bool {
        let [left, top, right, foot] = self.body();
        at[0] >= left && at[0] <= right && at[1] >= top && at[1] <= foot
    }

    fn block(&self) -> Block {
        Block::new(self.middle, self.width + 3.0, self.height + 3.0)
    }

    /// The ring of body and foot, grown outward.
    fn ring(&self, by: f64) -> Vec<Px> {
        let [left, top, right, foot] = self.body();
        let (left, top, right, foot) = (left - by, top - by, right + by, foot + by);
        let (half, tip) = (FOOT_HALF_PX.min(self.height / 2.0), self.tip);
        let [x, y] = self.middle;
        let (level, down) = ((tip[1] - y).abs() <= self.height / 2.0, tip[1] > y);
        match (level, tip[0] < x, down) {
            (true, true, _) => {
                vec![[left, top], [right, top], [right, foot], [left, foot], [left, y + half], tip, [left, y - half]]
            }
            (true, false, _) => {
                vec![[left, top], [right, top], [right, y - half], tip, [right, y + half], [right, foot], [left, foot]]
            }
            (false, _, true) => {
                vec![[left, top], [right, top], [right, foot], [x + half, foot], tip, [x - half, foot], [left, foot]]
            }
            (false, _, false) => {
                vec![[left, top], [x - half, top], tip, [x + half, top], [right, top], [right, foot], [left, foot]]
            }
        }
    }
}

impl Pen {
    /// A sign: body and foot, and where there is room its needle and figure.
    pub(crate) fn board(&mut self, board: &Board, text: &str, colours: &crate::Palette, edge: Colour, width: f64) {
        self.edged(&board.ring(0.0), colours.sheet, width, edge);
        if board.height < 10.0 {
            return;
        }
        let size = if board.height < 16.0 { 11.0 } else { 12.0 };
        let kind = Type::new(size, Weight::SemiBold, colours.ink);
        let [x, y] = board.middle;
        let mut at = [x, y];
        if board.width >= 50.0 && kind.width(text) <= board.width - 26.0 {
            let left = x - board.width / 2.0 + 8.0;
            let foot = y + 4.5;
            self.line(&[[left + 5.5, y - 4.5], [left, foot], [left + 9.0, foot]], 1.5, colours.ink);
            at[0] += 8.0;
        }
        self.text(at, text, kind, Anchor::Middle);
    }
}

/// The signs of those readings where they stand, the newest first: one over another, or over a corner's number, stays
/// small. They are drawn there, and picked there.
pub(crate) fn boards<'a>(
    shown: impl DoubleEndedIterator<Item = &'a Shape>,
    view: &View,
    (signs, numbers): (&[Block], &[Block]),
) -> Vec<(&'a Shape, Board)> {
    let mut stand: Vec<(&Shape, Board)> = Vec::new();
    if super::specks(view) {
        return stand;
    }
    let filled = |blocks: &[Block]| {
        let mut filled = Filled::new(view.size.map(f64::from));
        filled.extend(blocks.iter().copied());
        filled
    };
    let (signs, mut crowd) = (filled(signs), filled(numbers));
    // The newest comes last in the drawing and finds its room first.
    for shape in shown.rev() {
        let (Form::Label { at, toward_rad, .. }, Role::Reading { on_earth }) = (&shape.form, shape.role) else {
            continue;
        };
        let (spot, way) = (view.px(*at), trace::heading(*toward_rad));
        if !super::sees(view, spot) {
            continue;
        }
        let board = Board::new(spot, way, view.distance(), on_earth).clear_of(&signs);
        let crowded = crowd.overlaps(&board.block());
        let board = if crowded { Board::new(spot, way, Distance::Far, on_earth) } else { board };
        crowd.push(board.block());
        stand.push((shape, board));
    }
    stand
}

impl Inker<'_> {
    /// The signs, the first that find room: one over another stays small.
    pub(super) fn readings(&mut self) {
        let shown = self.marked.iter().copied().filter(|shape| !self.is_ghost(shape));
        for (shape, board) in boards(shown, self.view, (&self.signs, &self.numbers)) {
            let Form::Label { texts, .. } = &shape.form else { continue };
            let (picked, hovered) = (self.view.picked == shape.thing, self.view.hovered == shape.thing);
            let (edge, width) = if picked { (self.palette.pick, 2.0) } else { (self.palette.ink, 1.5) };
            let text = texts.first().map_or("", String::as_str);
            self.pen.board(&board, text, self.palette, edge, width);
            if hovered && !picked {
                let [left, top, right, foot] = board.body();
                let ring = plate_ring(board.middle, right - left + 7.5, foot - top + 7.5, 0.0);
                self.pen.ring(&ring, 1.5, self.palette.ink);
            }
            self.taken.push(board.block());
        }
    }
}
