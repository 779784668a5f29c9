//! Words on the map: each finds room or is left out; none overlaps another, a sign, or the view's edge.
//!
//! Labels take their turn by priority, those of what is picked first. Every label has a few layouts, best first;
//! the first that fits is taken. Words that cross a line lie on a plate.
//!
//! A tour: `run`, `side`, `beside` and `flags` lay out what needs more than a few places about a spot; `inside` looks
//! through the ground of a run whose name found no room; `numbers` counts the posts once everything else has its place.

mod beside;
mod flags;
mod inside;
mod numbers;
mod run;
mod side;
#[cfg(test)]
mod tests;

pub(crate) use numbers::every;

use plan::Point;

use super::Inker;
use super::blocks::Block;
use super::features;
use super::pen::{Type, plate_ring, text_block};
use super::trace::{self, Px, add, toward};
use crate::ink::{Anchor, Weight};
use crate::shape::{About, Form, Priority, Role, Shape, Thing};
use crate::told::Told;
use crate::view::Distance;

/// Words keep this far from the view's edge, pixels.
const EDGE_PX: f64 = 4.0;
/// Words keep this far from other words and signs.
const GAP_PX: f64 = 3.0;
/// A leader may start under the sign of its own post, a join or an end, and the circle round it, pixels.
const SIGN_PX: f64 = 16.0;
/// Figures of volts along one run are at least so far apart.
const FIGURES_PX: f64 = 150.0;
/// No words stand farther than this and their own width from what they are about, pixels, where the ground that they
/// speak of has no size of its own.
const REACH_PX: f64 = 160.0;
/// Heights of spots are at least so far apart, and farther where the ground is seen from afar.
const HEIGHTS_PX: f64 = 90.0;
const HEIGHTS_FAR_PX: f64 = 170.0;

/// One line of words where it would stand.
#[derive(Clone)]
struct Line {
    at: Px,
    text: String,
    kind: Type,
    anchor: Anchor,
    turn_rad: f64,
}

/// A way to lay a label out.
struct Layout {
    lines: Vec<Line>,
    /// What it fills.
    blocks: Vec<Block>,
    /// How far it keeps from other words and signs.
    gap: f64,
    ground: Ground,
}

/// What words lie on.
#[derive(Clone, Copy, PartialEq)]
enum Ground {
    /// The map, or a plate where they would cross a line.
    Any,
    /// The map, never across a line.
    Clear,
    /// An edged plate at the end of a leader from a place.
    Flag { from: Px, middle: Px, width: f64, height: f64 },
    /// Beneath a run's number plate.
    Plate { middle: Px },
}

/// How far words at a side stand from the net's axis: off the strip, unless it is so wide that they would leave
/// their side.
fn side_off(strip: f64) -> f64 {
    let beside_strip = strip + 10.0;
    if beside_strip > 44.0 { 20.0 } else { beside_strip.max(17.0) }
}

/// Whether any of those lines touches a block.
fn crosses(block: &Block, lines: &[[Px; 2]]) -> bool {
    let reach = block.reach();
    let near = |&[from, to]: &[Px; 2]| {
        (0..2).all(|axis| from[axis].min(to[axis]) <= reach.high[axis] && from[axis].max(to[axis]) >= reach.low[axis])
    };
    lines.iter().filter(|line| near(line)).any(|&[from, to]| block.meets(from, to))
}

/// Where a leader from a place meets a flag.
fn leader_end(from: Px, middle: Px, width: f64, height: f64) -> Px {
    [
        from[0].clamp(middle[0] - width / 2.0, middle[0] + width / 2.0),
        from[1].clamp(middle[1] - height / 2.0, middle[1] + height / 2.0),
    ]
}

impl Layout {
    fn of(lines: Vec<Line>, ground: Ground) -> Self {
        let blocks =
            lines.iter().map(|line| text_block(line.at, &line.text, line.kind, line.anchor, line.turn_rad)).collect();
        Self { lines, blocks, gap: GAP_PX, ground }
    }

    fn one(at: Px, text: &str, kind: Type, ground: Ground) -> Self {
        let line = Line { at, text: text.to_owned(), kind, anchor: Anchor::Middle, turn_rad: 0.0 };
        Self::of(vec![line], ground)
    }
}

/// A label that waits for room.
struct Label<'a> {
    about: About,
    at: Px,
    toward: Px,
    texts: &'a [String],
    thing: Option<Thing>,
    priority: Priority,
}

impl Inker<'_> {
    pub(super) fn words(&mut self) {
        let before = self.taken.len();
        let drawing = self.drawing;
        let mut labels: Vec<Label<'_>> = self.marked.iter().filter_map(|shape| self.label(shape)).collect();
        let picked_run = self.view.picked.and_then(Thing::run);
        labels.sort_by_key(|label| {
            let weakest = label.about == About::Weakest && picked_run.is_some();
            let picked = label.thing.is_some() && label.thing == self.view.picked;
            let picked = picked || (weakest && label.thing.and_then(Thing::run) == picked_run);
            (label.priority != Priority::Danger, !picked, label.priority)
        });
        // The weakest post has its figure on a flag.
        let weakest = labels.iter().filter(|label| label.about == About::Weakest);
        let mut figures: Vec<(Option<usize>, Px)> =
            weakest.map(|label| (label.thing.and_then(Thing::run), label.at)).collect();
        let mut heights: Vec<Px> = Vec::new();
        let grounds: Vec<(Thing, &[Point])> = self.grounds();
        for label in labels {
            let run = label.thing.and_then(Thing::run);
            let picked = label.thing.is_some() && label.thing == self.view.picked;
            if label.about == About::Height && !picked {
                let apart = if self.distance == Distance::Far { HEIGHTS_FAR_PX } else { HEIGHTS_PX };
                if !self.sees(label.at) || heights.iter().any(|&at| trace::apart(at, label.at) < apart) {
                    continue;
                }
            }
            if matches!(label.about, About::Post { .. }) {
                let near = |&(of, at): &(Option<usize>, Px)| of == run && trace::apart(at, label.at) < FIGURES_PX;
                let at_corner = || self.plates.iter().any(|plate| trace::apart(self.px(plate.place), label.at) < 30.0);
                if !self.sees(label.at) || figures.iter().any(near) || at_corner() {
                    continue;
                }
            }
            // Of many runs, the one that is picked speaks; from afar, where none is, the one in hand.
            let silent = if picked_run.is_some() {
                picked_run != run
            } else {
                self.distance == Distance::Far && run != drawing.foremost.or(Some(0))
            };
            if label.about == About::Weakest && silent {
                continue;
            }
            if label.about == About::WhatIf && label.thing != self.view.picked {
                continue;
            }
            let layouts = if self.lies_off(&label) { Vec::new() } else { self.layouts(&label) };
            let found = layouts.iter().position(|layout| self.has_room(layout, &self.lines));
            // A flag is a plate: rather than say nothing it lies over lines, as few as can be, but never over a net.
            let found = found.or_else(|| {
                let flags = layouts.iter().enumerate().filter(|(_, layout)| {
                    matches!(layout.ground, Ground::Flag { .. }) && self.has_room(layout, &self.nets)
                });
                let over = |layout: &Layout| {
                    self.lines
                        .iter()
                        .filter(|line| layout.blocks.iter().any(|block| block.meets(line[0], line[1])))
                        .count()
                };
                flags.min_by_key(|(_, layout)| over(layout)).map(|(index, _)| index)
            });
            let found = found.and_then(|index| layouts.into_iter().nth(index));
            let found = found.or_else(|| self.on_its_ground(&label, &grounds));
            if let Some(layout) = found {
                if matches!(label.about, About::Post { .. }) {
                    figures.push((run, label.at));
                }
                if label.about == About::Height {
                    heights.push(label.at);
                }
                self.put(layout, &label);
            }
        }
        self.post_numbers();
        self.said = self.taken.blocks()[before..].to_vec();
    }

    /// A run's name elsewhere on its ground.
    fn on_its_ground(&self, label: &Label<'_>, grounds: &[(Thing, &[Point])]) -> Option<Layout> {
        let About::Run { number, named, .. } = label.about else { return None };
        if self.ghosts.get(number - 1) == Some(&true) {
            return None;
        }
        let (_, ground) = grounds.iter().find(|(thing, _)| Some(*thing) == label.thing)?;
        self.inside(label, named, ground)
    }

    fn label<'b>(&self, shape: &'b Shape) -> Option<Label<'b>> {
        let names = matches!(shape.role, Role::Words { about: About::Run { .. } });
        let small =
            matches!(shape.role, Role::Words { about: About::Post { .. } | About::Side { .. } | About::Energizer });
        if (self.is_ghost(shape) && !names) || (small && self.distance == Distance::Far) {
            return None;
        }
        match (&shape.form, shape.role) {
            (Form::Label { at, toward_rad, texts, priority }, Role::Words { about }) if !texts.is_empty() => {
                let (at, toward) = (self.px(*at), trace::heading(*toward_rad));
                Some(Label { about, at, toward, texts, thing: shape.thing, priority: *priority })
            }
            _ => None,
        }
    }

    /// Whether a label stands so far beyond the view's edge that none of its layouts could be seen. Those of sides and
    /// hazards look for the seen part of their line.
    fn lies_off(&self, label: &Label<'_>) -> bool {
        let reach = REACH_PX
            + match label.about {
                About::Side { .. } | About::Hazard { .. } => return false,
                About::Run { number, .. } if self.ghosts.get(number - 1) == Some(&true) => return false,
                About::Run { room_m, coop_m, .. } => self.px_of(room_m + coop_m),
                About::KeepOut { half_m } => self.px_of(half_m),
                About::Post { strip_m } => self.px_of(strip_m),
                About::Wall => self.px_of(features::HEDGE_M),
                About::Weakest | About::WhatIf | About::Label { .. } | About::Energizer | About::Height => 0.0,
            };
        let beyond =
            |axis: usize| (self.window.low[axis] - label.at[axis]).max(label.at[axis] - self.window.high[axis]);
        let off = beyond(0).max(beyond(1));
        let width = || label.texts.iter().map(|text| Type::new(16.0, Weight::SemiBold, self.palette.ink).width(text));
        off > reach && off > reach + width().fold(0.0, f64::max)
    }

    /// Whether a layout lies on free ground, within the view, clear of those lines where it must be.
    fn has_room(&self, layout: &Layout, lines: &[[Px; 2]]) -> bool {
        let [width, height] = self.view.size.map(f64::from);
        let clear = |block: &Block| {
            let inside = block.corners().iter().all(|at| {
                at[0] >= EDGE_PX && at[1] >= EDGE_PX && at[0] <= width - EDGE_PX && at[1] <= height - EDGE_PX
            });
            inside && !self.taken.overlaps(&block.grown(layout.gap))
        };
        let crossed = || {
            let over = |lines: &[[Px; 2]]| layout.blocks.iter().any(|block| crosses(&block.grown(2.0), lines));
            over(lines) || over(&self.rings)
        };
        layout.blocks.iter().all(clear)
            && match layout.ground {
                Ground::Any | Ground::Plate { .. } => true,
                Ground::Clear => !crossed(),
                Ground::Flag { from, middle, width, height } => {
                    !crossed() && self.leads(from, leader_end(from, middle, width, height), lines)
                }
            }
    }

    /// Whether a leader may run from a place to a flag: over no sign, and over no line but the one it starts at.
    fn leads(&self, from: Px, to: Px, lines: &[[Px; 2]]) -> bool {
        let Some(way) = trace::direction(from, to) else { return true };
        let length = trace::apart(from, to);
        let leader = |start: f64| {
            let middle = toward(from, way, f64::midpoint(start, length));
            Block::turned(middle, (length - start).max(0.0), 1.0, way[1].atan2(way[0]))
        };
        !self.taken.overlaps(&leader(SIGN_PX)) && !crosses(&leader(SIGN_PX), lines)
    }

    fn put(&mut self, layout: Layout, label: &Label<'_>) {
        let colours = self.palette;
        let picked = label.thing.is_some() && label.thing == self.view.picked;
        match layout.ground {
            Ground::Flag { from, middle, width, height } => {
                let leader = [from, leader_end(from, middle, width, height)];
                self.pen.line(&leader, 1.0, colours.ink);
                self.take_line(&leader, false);
                let edge = if picked { colours.pick } else { colours.ink };
                self.pen.edged(&plate_ring(middle, width, height, 4.0), colours.sheet, 1.5, edge);
                self.flags.push(Block::new(middle, width, height));
            }
            Ground::Plate { middle } => {
                if let About::Run { number, .. } = label.about {
                    self.pen.number_plate(colours, middle, &number.to_string(), 18.0, picked);
                    self.flags.push(Block::new(middle, 18.0, 18.0));
                }
            }
            Ground::Any => {
                let crosses = |block: &Block| crosses(&block.grown(1.0), &self.lines);
                let crossing: Vec<Block> = layout.blocks.iter().copied().filter(crosses).collect();
                for block in crossing {
                    self.pen.polygon(&block.grown(2.0).corners(), colours.sheet);
                }
            }
            Ground::Clear => {}
        }
        for line in &layout.lines {
            self.pen.turned_text(line.at, &line.text, line.kind, line.anchor, line.turn_rad);
        }
        let told = Told::of(label.about);
        self.told.extend(told.iter().flat_map(|&told| layout.blocks.iter().map(move |&block| (block, told))));
        self.taken.extend(layout.blocks);
    }

    fn layouts(&self, label: &Label<'_>) -> Vec<Layout> {
        let colours = self.palette;
        match label.about {
            About::Weakest | About::WhatIf => self.weakest(label),
            About::Run { number, .. } if self.ghosts.get(number - 1) == Some(&true) => self.ghost(label),
            About::Run { room_m, coop_m, named, .. } => {
                if self.distance == Distance::Far {
                    self.far_run(label, named, self.px_of(room_m), self.px_of(coop_m))
                } else {
                    self.run(label, self.px_of(room_m), self.px_of(coop_m))
                }
            }
            About::Side { length_m, strip_m } => self.side(label, self.px_of(length_m), self.px_of(strip_m)),
            About::Hazard { kind } => self.hazard(label, kind),
            About::KeepOut { half_m } => {
                let kind = Type::new(11.0, Weight::Medium, colours.ink);
                let (text, reach) = (&label.texts[0], self.px_of(half_m));
                let half = kind.width(text) / 2.0;
                [
                    (label.at, Ground::Clear),
                    (add(label.at, [0.0, reach + 12.0]), Ground::Any),
                    (add(label.at, [0.0, -reach - 12.0]), Ground::Any),
                    (add(label.at, [reach + half + 10.0, 0.0]), Ground::Any),
                ]
                .map(|(at, ground)| Layout::one(at, text, kind, ground))
                .into()
            }
            About::Wall => {
                let kind = Type::new(11.0, Weight::Medium, colours.ink);
                let (text, half) = (&label.texts[0], kind.width(&label.texts[0]) / 2.0);
                let away = self.px_of(features::HEDGE_M).max(6.0) + 10.0;
                [[0.0, away], [0.0, -away], [half + away, 0.0], [-half - away, 0.0]]
                    .map(|off| Layout::one(add(label.at, off), text, kind, Ground::Any))
                    .into()
            }
            About::Label { large } => {
                let kind = features::label_type(large, colours.ink);
                let text = &label.texts[0];
                let picked = label.thing.is_some() && label.thing == self.view.picked;
                // What is picked stays where the hand has it.
                let downs: &[f64] = if picked { &[0.0] } else { &[0.0, 16.0, -16.0] };
                let way = |&down: &f64| Layout::one(add(label.at, [0.0, down]), text, kind, Ground::Any);
                downs.iter().map(way).collect()
            }
            About::Energizer => {
                let kind = Type::new(11.0, Weight::Regular, colours.ink);
                let (text, away) = (&label.texts[0], 20.0 * self.sign_scale());
                let aside = away + kind.width(text) / 2.0;
                [[0.0, -away], [0.0, away], [-aside, 0.0], [aside, 0.0]]
                    .map(|off| Layout::one(add(label.at, off), text, kind, Ground::Clear))
                    .into()
            }
            About::Height => {
                let kind = Type::new(11.0, Weight::Regular, colours.ink2);
                // From afar to the decimetre, or to the foot: nothing finer can be seen there.
                let fine =
                    self.distance != Distance::Far || label.thing.is_some_and(|thing| self.view.picked == Some(thing));
                let text = if fine { &label.texts[0] } else { &label.texts[label.texts.len() - 1] };
                let aside = kind.width(text) / 2.0 + 11.0;
                [[aside, 0.0], [-aside, 0.0], [0.0, -16.0], [0.0, 16.0]]
                    .map(|off| Layout::one(add(label.at, off), text, kind, Ground::Clear))
                    .into()
            }
            About::Post { strip_m } => {
                let kind = Type::new(11.0, Weight::Medium, colours.ink);
                // With its unit, or without where there is no room for both.
                let layout = |text: &String| {
                    let text = self.figure(text);
                    let (across, up) = (kind.width(&text) / 2.0 * label.toward[0].abs(), 5.0 * label.toward[1].abs());
                    let off = side_off(self.px_of(strip_m)) - 5.0 + across.hypot(up);
                    let mut layout = Layout::one(toward(label.at, label.toward, off), &text, kind, Ground::Clear);
                    // Well apart from a side's length, or the two would be read as one.
                    layout.gap = 12.0;
                    layout
                };
                label.texts.iter().map(layout).collect()
            }
        }
    }

    /// A figure, in brackets where it belongs to an earlier state of the plan.
    fn figure(&self, text: &str) -> String {
        if self.view.stale { format!("({text})") } else { text.to_owned() }
    }
}
