//! Names of runs: over their ground, beside a ghost, or on a number plate from afar.

use super::super::Inker;
use super::super::blocks::Block;
use super::super::pen::Type;
use super::super::trace::{Px, add};
use super::{Ground, Label, Layout, Line, crosses};
use crate::ink::{Anchor, Weight};
use crate::shape::{Form, Role, Thing};

impl Inker<'_> {
    /// A run's name over its ground or its birds, above a coop or in the middle.
    pub(super) fn run(&self, label: &Label<'_>, room: f64, coop: f64) -> Vec<Layout> {
        let colours = self.palette;
        let name = Type::new(12.0, Weight::SemiBold, colours.ink);
        let second = Type::new(11.0, Weight::Regular, colours.ink2);
        let text = &label.texts[0];
        let line = |at: Px, text: &str, kind: Type| Line {
            at,
            text: text.to_owned(),
            kind,
            anchor: Anchor::Middle,
            turn_rad: 0.0,
        };
        let below = label.texts[1..].join(" · ");
        let both = |middle: Px| {
            let mut lines = vec![line(add(middle, [0.0, -8.0]), text, name)];
            if !below.is_empty() {
                lines.push(line(add(middle, [0.0, 8.0]), &below, second));
            }
            Layout::of(lines, Ground::Clear)
        };
        let only = |middle: Px| Layout::of(vec![line(middle, text, name)], Ground::Clear);
        let clear = coop + if coop > 0.0 { 24.0 } else { 0.0 };
        let mut layouts = Vec::new();
        let spots: &[f64] = if coop > 0.0 { &[-1.0, 1.0] } else { &[0.0] };
        for &side in spots {
            layouts.push(both(add(label.at, [0.0, side * clear])));
        }
        for &side in spots {
            layouts.push(only(add(label.at, [0.0, side * (clear - 6.0)])));
        }
        for off in [-0.25, 0.25] {
            layouts.push(only(add(label.at, [0.0, off * room])));
        }
        layouts
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
        let colours = self.palette;
        let keeps_all = label.thing.and_then(Thing::run).is_some()
            && label.thing.and_then(Thing::run) == self.view.picked.and_then(Thing::run);
        let kinds = [Type::new(11.0, Weight::SemiBold, colours.ink), Type::new(11.0, Weight::Regular, colours.ink2)];
        // The plate says as much as the name of a run without one.
        let first = usize::from(!named);
        let words: Vec<(&String, Type)> = label.texts.iter().zip(kinds).skip(first).collect();
        let most = if keeps_all || room >= 100.0 { 2 } else { usize::from(room >= 40.0) };
        let mut layouts = Vec::new();
        for count in (0..=most.min(words.len())).rev() {
            // Above a coop, or in the middle.
            let half = 10.0 + 7.5 * count as f64;
            for down in if coop > 0.0 { [-half - 14.0, half + 12.0, 0.0] } else { [0.0, -0.2 * room, 0.2 * room] } {
                let middle = add(label.at, [0.0, down]);
                let top = add(middle, [0.0, -7.5 * count as f64]);
                let lines: Vec<Line> = (0..count)
                    .map(|row| Line {
                        at: add(top, [0.0, 19.0 + 15.0 * row as f64]),
                        text: words[row].0.clone(),
                        kind: words[row].1,
                        anchor: Anchor::Middle,
                        turn_rad: 0.0,
                    })
                    .collect();
                let mut layout = Layout::of(lines, Ground::Plate { middle: top });
                layout.blocks.push(Block::new(top, 20.0, 20.0));
                let fits =
                    keeps_all || layout.lines.iter().all(|line| line.kind.width(&line.text) < room.max(48.0) * 1.3);
                if fits && (count == 0 || !layout.blocks.iter().any(|block| crosses(&block.grown(2.0), &self.lines))) {
                    layouts.push(layout);
                }
            }
        }
        layouts
    }
}
