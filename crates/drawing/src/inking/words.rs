//! Words on the map: each finds room or is left out; none overlaps another, a sign, or the view's edge.
//!
//! Labels take their turn by priority, those of what is picked first. Every label has a few layouts, best first;
//! the first that fits is taken. Words that cross a line lie on a plate.

use std::f64::consts::{FRAC_PI_2, PI};

use plan::{HazardKind, Point};

use super::Inker;
use super::blocks::Block;
use super::pen::{Type, plate_ring, text_block};
use super::trace::{self, Px, add, right, scaled, toward};
use crate::ink::{Anchor, Weight};
use crate::shape::{About, Form, Priority, Role, Shape, Thing};
use crate::view::Distance;

/// Words keep this far from the view's edge, pixels.
const EDGE_PX: f64 = 4.0;
/// Words keep this far from other words and signs.
const GAP_PX: f64 = 3.0;
/// A leader may start under the sign of its own post, a join or an end, pixels.
const SIGN_PX: f64 = 12.0;
/// Figures of volts along one run are at least so far apart.
const FIGURES_PX: f64 = 150.0;

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
        let drawing = self.drawing;
        let mut labels: Vec<Label<'_>> = drawing.shapes.iter().filter_map(|shape| self.label(shape)).collect();
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
        for label in labels {
            let run = label.thing.and_then(Thing::run);
            if matches!(label.about, About::Post { .. }) {
                let near = |&(of, at): &(Option<usize>, Px)| of == run && trace::apart(at, label.at) < FIGURES_PX;
                let at_corner = || self.plates.iter().any(|plate| trace::apart(self.px(plate.place), label.at) < 30.0);
                if !self.sees(label.at) || figures.iter().any(near) || at_corner() {
                    continue;
                }
            }
            // Of many runs, the one that is picked speaks.
            let silent = if picked_run.is_some() { picked_run != run } else { self.distance == Distance::Far };
            if label.about == About::Weakest && silent {
                continue;
            }
            if label.about == About::WhatIf && label.thing != self.view.picked {
                continue;
            }
            let layouts = self.layouts(&label);
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
            if let Some(layout) = found.and_then(|index| layouts.into_iter().nth(index)) {
                if matches!(label.about, About::Post { .. }) {
                    figures.push((run, label.at));
                }
                self.put(layout, &label);
            }
        }
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

    /// Whether a layout lies on free ground, within the view, clear of those lines where it must be.
    fn has_room(&self, layout: &Layout, lines: &[[Px; 2]]) -> bool {
        let [width, height] = self.view.size.map(f64::from);
        let clear = |block: &Block| {
            let inside = block.corners().iter().all(|at| {
                at[0] >= EDGE_PX && at[1] >= EDGE_PX && at[0] <= width - EDGE_PX && at[1] <= height - EDGE_PX
            });
            inside && !self.taken.iter().any(|taken| taken.overlaps(&block.grown(layout.gap)))
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
        !self.taken.iter().any(|taken| taken.overlaps(&leader(SIGN_PX))) && !crosses(&leader(SIGN_PX), lines)
    }

    fn put(&mut self, layout: Layout, label: &Label<'_>) {
        let colours = self.palette;
        let picked = label.thing.is_some() && label.thing == self.view.picked;
        match layout.ground {
            Ground::Flag { from, middle, width, height } => {
                self.pen.line(&[from, leader_end(from, middle, width, height)], 1.0, colours.ink);
                let edge = if picked { colours.pick } else { colours.ink };
                self.pen.edged(&plate_ring(middle, width, height, 4.0), colours.sheet, 1.5, edge);
            }
            Ground::Plate { middle } => {
                if let About::Run { number, .. } = label.about {
                    self.pen.number_plate(colours, middle, &number.to_string(), 18.0, picked);
                }
            }
            Ground::Any => {
                let crossing: Vec<Block> =
                    layout.blocks.iter().copied().filter(|block| crosses(&block.grown(1.0), &self.lines)).collect();
                for block in crossing {
                    self.pen.polygon(&block.grown(2.0).corners(), colours.sheet);
                }
            }
            Ground::Clear => {}
        }
        for line in &layout.lines {
            self.pen.turned_text(line.at, &line.text, line.kind, line.anchor, line.turn_rad);
        }
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
                let text = &label.texts[0];
                let aside = kind.width(text) / 2.0 + 11.0;
                [[aside, 0.0], [-aside, 0.0], [0.0, -16.0], [0.0, 16.0]]
                    .map(|off| Layout::one(add(label.at, off), text, kind, Ground::Any))
                    .into()
            }
            About::Post { strip_m } => {
                let kind = Type::new(11.0, Weight::Medium, colours.ink);
                let text = self.figure(&label.texts[0]);
                let (across, up) = (kind.width(&text) / 2.0 * label.toward[0].abs(), 5.0 * label.toward[1].abs());
                let off = side_off(self.px_of(strip_m)) - 5.0 + across.hypot(up);
                let mut layout = Layout::one(toward(label.at, label.toward, off), &text, kind, Ground::Clear);
                // Well apart from a side's length, or the two would be read as one.
                layout.gap = 12.0;
                vec![layout]
            }
        }
    }

    /// A figure, in brackets where it belongs to an earlier state of the plan.
    fn figure(&self, text: &str) -> String {
        if self.view.stale { format!("({text})") } else { text.to_owned() }
    }

    /// The flag of the weakest post, its wordings ever shorter.
    fn weakest(&self, label: &Label<'_>) -> Vec<Layout> {
        label.texts.iter().flat_map(|text| self.flags(label, text)).collect()
    }

    fn flags(&self, label: &Label<'_>, text: &str) -> Vec<Layout> {
        let kind = Type::new(11.0, Weight::SemiBold, self.palette.ink);
        let text = self.figure(text);
        let (width, height) = (kind.width(&text) + 16.0, 20.0);
        let outward = label.toward;
        let [side_x, side_y] = [outward[0].signum(), outward[1].signum()];
        let ways = [
            outward,
            [side_x, 0.0],
            [side_x * 0.8, 0.6],
            [side_x * 0.8, -0.6],
            [side_x * 0.6, 0.8],
            [side_x * 0.6, -0.8],
            [0.0, side_y],
            [0.0, -side_y],
            [-side_x, 0.0],
        ];
        let mut layouts = Vec::new();
        // Outside before inside.
        let (inside, outside): (Vec<Px>, Vec<Px>) =
            ways.into_iter().partition(|way| way[0] * outward[0] + way[1] * outward[1] < -0.1);
        let tries = [(&outside, [26.0, 44.0, 70.0]), (&inside, [26.0, 44.0, 70.0])];
        for (ways, fars) in tries {
            for (&far, &way) in fars.iter().flat_map(|far| ways.iter().map(move |way| (far, way))) {
                let support = width / 2.0 * way[0].abs() + height / 2.0 * way[1].abs();
                let middle = toward(label.at, way, far + support);
                let side = if way[0] * outward[0] + way[1] * outward[1] < 0.0 { -1.0 } else { 1.0 };
                let from = toward(label.at, outward, side * self.net_style().half());
                let mut layout = Layout::one(middle, &text, kind, Ground::Flag { from, middle, width, height });
                layout.blocks = vec![Block::new(middle, width, height)];
                layouts.push(layout);
            }
        }
        layouts
    }

    /// A run's name over its ground or its birds, above a coop or in the middle.
    fn run(&self, label: &Label<'_>, room: f64, coop: f64) -> Vec<Layout> {
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
    fn ghost(&self, label: &Label<'_>) -> Vec<Layout> {
        let kind = Type::new(11.0, Weight::Medium, self.palette.ghost);
        let text = &label.texts[0];
        let outline = self.drawing.shapes.iter().find_map(|shape| match (&shape.form, shape.role) {
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
    fn far_run(&self, label: &Label<'_>, named: bool, room: f64, coop: f64) -> Vec<Layout> {
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

    /// A side's length along its inner side, read from below or from the right.
    fn side(&self, label: &Label<'_>, length: f64, strip: f64) -> Vec<Layout> {
        let kind = Type::new(11.0, Weight::Medium, self.palette.ink2);
        let inward = label.toward;
        let along = right(inward);
        let mut turn = along[1].atan2(along[0]);
        if turn >= FRAC_PI_2 - 1e-9 {
            turn -= PI;
        } else if turn < -FRAC_PI_2 - 1e-9 {
            turn += PI;
        }
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

    /// A hazard's name beside its line, where the line is seen.
    fn hazard(&self, label: &Label<'_>, kind: HazardKind) -> Vec<Layout> {
        let colours = self.palette;
        let colour = if kind == HazardKind::PublicWay { colours.ink2 } else { colours.danger };
        let font = Type::new(11.0, Weight::Medium, colour);
        let text = &label.texts[0];
        let half = font.width(text) / 2.0;
        let path = self.drawing.shapes.iter().find_map(|shape| match (&shape.form, shape.role) {
            (Form::Path { points, .. }, Role::Hazard { .. }) if shape.thing == label.thing => Some(points.clone()),
            _ => None,
        });
        let Some(path) = path else {
            return [[0.0, 22.0], [0.0, -22.0], [half + 18.0, 0.0], [-half - 18.0, 0.0]]
                .map(|off| Layout::one(add(label.at, off), text, font, Ground::Any))
                .into();
        };
        let clear = if kind == HazardKind::PublicWay { 18.0 } else { 16.0 };
        self.beside_path(&path, half, clear).into_iter().map(|at| Layout::one(at, text, font, Ground::Clear)).collect()
    }

    /// Places beside the seen part of a path for upright words of that half width.
    fn beside_path(&self, path: &[Point], half: f64, clear: f64) -> Vec<Px> {
        let view = trace::Window { low: [0.0; 2], high: self.view.size.map(f64::from) };
        let knots: Vec<trace::Knot> = path.iter().map(|&place| trace::Knot { at: self.px(place), kv: 0.0 }).collect();
        let pieces = trace::clip(&knots, false, &view);
        let longest =
            pieces.iter().max_by(|a, b| trace::line_length(&a.points()).total_cmp(&trace::line_length(&b.points())));
        let Some(line) = longest.map(trace::Piece::points) else { return Vec::new() };
        let length = trace::line_length(&line);
        let mut places = Vec::new();
        for share in [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9] {
            let Some(&(at, way)) = trace::walk(&line, false, share * length, f64::INFINITY).first() else { continue };
            let side = right(way);
            // Below or to the left first: the map is read from there.
            let side = if side[1] > 0.2 || (side[1].abs() <= 0.2 && side[0] < 0.0) { side } else { scaled(side, -1.0) };
            let support = half * side[0].abs() + 6.0 * side[1].abs();
            places.push(toward(at, side, clear + support - 6.0));
            places.push(toward(at, side, -(clear + support - 6.0)));
        }
        places
    }
}
