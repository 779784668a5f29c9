//! What stands at the pointer: found once a frame, since to find room for an entry all that the map has drawn is asked.

use drawing::Taken;
use egui::{Rect, Ui};

use crate::editor::Editor;
use crate::{corner, first_corner, measured, next_corner, place_entry, side_entry, unroll};

/// Where it stands on the map.
pub(super) struct AtPointer {
    /// The entry of a run that is unrolled.
    pub(super) unroll: Option<Rect>,
    /// The entry of the first corner of what is drawn.
    pub(super) first_corner: Option<Rect>,
    /// The entry of the next corner of anything else that is drawn.
    pub(super) next_corner: Option<Rect>,
    /// The entry of a corner in the hand.
    pub(super) corner: Option<Rect>,
    /// The entry of a side that is picked and typed.
    pub(super) side: Option<Rect>,
    /// The entry of a corner or a place that is picked and typed.
    pub(super) place: Option<Rect>,
    /// Why the corner in the hand is where it is.
    reason: Option<Rect>,
}

impl AtPointer {
    pub(super) fn of(ui: &Ui, rect: Rect, editor: &Editor, map: &Taken) -> Self {
        Self {
            unroll: unroll::place(rect, editor, map),
            first_corner: first_corner::place(ui, rect, editor, map),
            next_corner: next_corner::place(rect, editor, map),
            corner: corner::place(rect, editor, map),
            side: side_entry::place(ui, rect, editor, map),
            place: place_entry::place(ui, rect, editor, map),
            reason: measured::reason(rect, editor),
        }
    }

    /// All of it.
    pub(super) fn all(&self) -> impl Iterator<Item = Rect> {
        [self.unroll, self.first_corner, self.next_corner, self.corner, self.side, self.place, self.reason]
            .into_iter()
            .flatten()
    }
}
