//! Lengths along the sides of a run.

use super::super::Inker;
use super::super::pen::Type;
use super::super::trace::{self, right, toward};
use super::{Ground, Label, Layout, Line, side_off};
use crate::ink::{Anchor, Weight};

impl Inker<'_> {
    /// A side's length along its inner side, read from below or from the right.
    pub(super) fn side(&self, label: &Label<'_>, length: f64, strip: f64) -> Vec<Layout> {
        let kind = Type::new(11.0, Weight::Medium, self.palette.ink2);
        let inward = label.toward;
        let along = right(inward);
        let turn = trace::upright(along);
        let off = side_off(strip);
        let (from, to) = (toward(label.at, along, -length / 2.0), toward(label.at, along, length / 2.0));
        let Some(piece) = self.seen(&[from, to], false).into_iter().next() else { return Vec::new() };
        let (from, to) = (piece.knots[0].at, piece.knots[1].at);
        let room = trace::apart(from, to);
        let mut layouts = Vec::new();
        for text in label.texts {
            if kind.width(text) + 28.0 > room {
                continue;
            }
            for share in [0.5, 0.36, 0.64, 0.25, 0.75] {
                if (0.5 - (share - 0.5_f64).abs()) * room < kind.width(text) / 2.0 + 14.0 {
                    continue;
                }
                let at = toward(trace::lerp(from, to, share), inward, off);
                let line = Line { at, text: text.clone(), kind, anchor: Anchor::Middle, turn_rad: turn };
                layouts.push(Layout::of(vec![line], Ground::Clear));
            }
        }
        layouts
    }
}
