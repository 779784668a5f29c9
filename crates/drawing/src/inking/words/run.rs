//! Names of runs: over their ground, beside a ghost, or on a number plate from afar.

use super::super::Inker;
use super::super::blocks::Block;
use super::super::pen::Type;
use super::super::trace::{Px, add, toward};
use super::{Ground, Label, Layout, Line, crosses};
use crate::ink::{Anchor, Weight};
use crate::shape::{Form, Role, Thing};

/// Side of a number's plate with its edge.
const PLATE_PX: f64 = 20.0;

impl Inker<'_> {
    /// A run's name over its ground or its birds, above a coop or in the middle.
    pub(super) fn run(&self, label: &Label<'_>, room: f64, coop: f64) -> Vec<Layout> {
        let clear = coop + if coop > 0.0 { 24.0 } else { 0.0 };
        let mut layouts = Vec::new();
        let spots: &[f64] = if coop > 0.0 { &[-1.0, 1.0] } else { &[0.0] };
        for &side in spots {
            layouts.push(self.named(label, true, add(label.at, [0.0, side * clear]), 0.0));
        }
        for &side in spots {
            layouts.push(self.named(label, false, add(label.at, [0.0, side * (clear - 6.0)]), 0.0));
        }
        for off in [-0.25, 0.25] {
            layouts.push(self.named(label, false, add(label.at, [0.0, off * room]), 0.0));
        }
        layouts
    }

    /// A run's name about a place, level or along a direction, over the rest that is told of it where that is said too.
    pub(super) fn named(&self, label: &Label<'_>, with_rest: bool, middle: Px, turn_rad: f64) -> Layout {
        let name = Type::new(12.0, Weight::SemiBold, self.palette.ink);
        let second = Type::new(11.0, Weight::Regular, self.palette.ink2);
        let down = [-turn_rad.sin(), turn_rad.cos()];
        let line = |off: f64, text: String, kind: Type| Line {
            at: toward(middle, down, off),
            text,
            kind,
            anchor: Anchor::Middle,
            turn_rad,
        };
        let mut lines = vec![line(if with_rest { -8.0 } else { 0.0 }, label.texts[0].clone(), name)];
        let below = label.texts[1..].join(" · ");
        if with_rest && !below.is_empty() {
            lines.push(line(8.0, below, second));
        }
        Layout::of(lines, Ground::Clear)
    }

    /// A ghost's name beside its outline.
    pub(super) fn ghost(&self, label: &Label<'_>) -> Vec<Layout> {
        let kind = Type::new(11.0, Weight::Medium, self.palette.ghost);
        let text = &label.texts[0];
        let outline = self.marked.iter().find_map(|shape| match (&shape.form, shape.role) {
            (Form::Area { rings }, Role::RunGround) if shape.thing == label.thing => rings.first().cloned(),
            (Form::Path { points, .. }, Role::Net | Role::Outline) if shape.thing == label.thing => {
                Some(points.clone())
            }
            _ => None,
        });
        let Some(mut outline) = outline else { return Vec::new() };
        outline.extend(outline.first().copied());
        self.beside_path(&outline, kind.width(text) / 2.0, 14.0)
            .into_iter()
            .map(|at| Layout::one(at, text, kind, Ground::Clear))
            .collect()
    }

    /// From afar: a number plate with name and ground; below 100 px the ground goes, then the name.
    pub(super) fn far_run(&self, label: &Label<'_>, named: bool, room: f64, coop: f64) -> Vec<Layout> {
        let keeps_all = label.thing.and_then(Thing::run).is_some()
            && label.thing.and_then(Thing::run) == self.view.picked.and_then(Thing::run);
        let most = if keeps_all || room >= 100.0 { 2 } else { usize::from(room >= 40.0) };
        let mut layouts = Vec::new();
        for count in (0..=most.min(far_lines(label, named))).rev() {
            // Above a coop, or in the middle.
            let half = 10.0 + 7.5 * count as f64;
            for down in if coop > 0.0 { [-half - 14.0, half + 12.0, 0.0] } else { [0.0, -0.2 * room, 0.2 * room] } {
                let layout = self.numbered(label, named, count, add(label.at, [0.0, down]));
                if count == 0 || !layout.blocks.iter().any(|block| crosses(&block.grown(2.0), &self.lines)) {
                    layouts.push(layout);
                }
            }
        }
        layouts
    }

    /// A number plate over so many lines about a place.
    pub(super) fn numbered(&self, label: &Label<'_>, named: bool, count: usize, middle: Px) -> Layout {
        let colours = self.palette;
        let kinds = [Type::new(11.0, Weight::SemiBold, colours.ink), Type::new(11.0, Weight::Regular, colours.ink2)];
        let words = label.texts.iter().zip(kinds).skip(usize::from(!named)).take(count);
        let top = add(middle, [0.0, -7.5 * count as f64]);
        let lines = words.enumerate().map(|(row, (text, kind))| Line {
            at: add(top, [0.0, 19.0 + 15.0 * row as f64]),
            text: text.clone(),
            kind,
            anchor: Anchor::Middle,
            turn_rad: 0.0,
        });
        let mut layout = Layout::of(lines.collect(), Ground::Plate { middle: top });
        layout.blocks.push(Block::new(top, PLATE_PX, PLATE_PX));
        layout
    }
}

/// How many lines there are to tell under a run's plate, which says as much as the name of a run without one.
pub(super) fn far_lines(label: &Label<'_>, named: bool) -> usize {
    label.texts.len().min(2) - usize::from(!named)
}
