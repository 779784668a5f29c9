//! The window's pen: ink of `drawing` as shapes of egui. It decides nothing.
//!
//! Concave areas become triangles, with a hair of their own colour round them where they are opaque, because
//! egui smooths the edges of convex areas only. Triangles of ink that is the same as before are kept: in a drag most
//! of a map is. Words are laid out anew in every frame that is painted (egui keeps laid out words) so that they stay
//! right when the font's texture is rebuilt.

use std::collections::BTreeMap;
use std::sync::Arc;

use drawing::letters::BASELINE;
use drawing::{Anchor, Ink, Spot};
use egui::epaint::{TessellationOptions, Tessellator, TextShape};
use egui::{Color32, Mesh, Painter, Pos2, Rect, Shape, Stroke, Vec2, pos2, vec2};

use crate::editor::Editor;
use crate::theme;

/// Ink made ready for a place of the window: paint it as often as you like.
#[derive(Default)]
pub(crate) struct Painted {
    items: Vec<Item>,
    /// The pieces that were made into triangles, by their fingerprint, and for what pen that was.
    pieces: BTreeMap<u64, Piece>,
    pen: Option<(Pos2, f32, TessellationOptions)>,
}

enum Item {
    Piece(u64),
    Text { at: Pos2, text: String, font: egui::FontId, colour: Color32, anchor: Anchor, turn_rad: f32 },
}

/// Ink between two texts, and its triangles.
struct Piece {
    ink: Vec<Ink>,
    mesh: Arc<Mesh>,
}

/// A piece ends after about so many items, where an item's own fingerprint says so: what stands before or behind in
/// the ink then changes no piece.
const PIECE_ITEMS: u64 = 12;

impl Painted {
    /// Ink made ready, with its upper left corner at a place of the window.
    pub(crate) fn of(ctx: &egui::Context, ink: &[Ink], corner: Pos2) -> Self {
        let mut painted = Self::default();
        painted.renew(ctx, ink, corner);
        painted
    }

    /// The same for other ink; what did not change is kept.
    pub(crate) fn renew(&mut self, ctx: &egui::Context, ink: &[Ink], corner: Pos2) {
        let pen = (corner, ctx.pixels_per_point(), ctx.tessellation_options(|options| *options));
        let mut before = std::mem::take(&mut self.pieces);
        if self.pen != Some(pen) {
            before.clear();
            self.pen = Some(pen);
        }
        let mut tessellator = Tessellator::new(pen.1, pen.2, [1, 1], Vec::new());
        self.items.clear();
        for piece in pieces(ink) {
            if let [Ink::Text { at, text, size, weight, colour, anchor, turn_rad }] = piece {
                self.items.push(Item::Text {
                    at: spot(*at, corner.to_vec2()),
                    text: text.clone(),
                    font: theme::font(*size, *weight),
                    colour: theme::colour(*colour),
                    anchor: *anchor,
                    turn_rad: *turn_rad,
                });
                continue;
            }
            let mut fingerprint = piece.iter().map(fingerprint).fold(0, mixed);
            while self.pieces.get(&fingerprint).is_some_and(|other| other.ink != piece) {
                fingerprint = fingerprint.wrapping_add(1);
            }
            let kept = before.remove(&fingerprint).or_else(|| self.pieces.remove(&fingerprint));
            let made = kept.filter(|kept| kept.ink == piece).unwrap_or_else(|| {
                let mut mesh = Mesh::default();
                let mut shapes = Vec::with_capacity(piece.len());
                for item in piece {
                    ready(item, corner.to_vec2(), &mut shapes);
                }
                for shape in shapes {
                    tessellator.tessellate_shape(shape, &mut mesh);
                }
                Piece { ink: piece.to_vec(), mesh: Arc::new(mesh) }
            });
            self.pieces.insert(fingerprint, made);
            self.items.push(Item::Piece(fingerprint));
        }
    }

    /// Paints it.
    pub(crate) fn paint(&self, painter: &Painter) {
        for item in &self.items {
            match item {
                Item::Piece(fingerprint) => {
                    if let Some(piece) = self.pieces.get(fingerprint) {
                        painter.add(Shape::Mesh(Arc::clone(&piece.mesh)));
                    }
                }
                Item::Text { at, text, font, colour, anchor, turn_rad } => {
                    let galley = painter.layout_no_wrap(text.clone(), font.clone(), *colour);
                    let across = match anchor {
                        Anchor::Start => 0.0,
                        Anchor::Middle => galley.size().x / 2.0,
                        Anchor::End => galley.size().x,
                    };
                    // The middle of the letters, not of the line, passes through the place.
                    let line = galley.rows.first().map_or(galley.size().y / 2.0, |row| row_middle(row, font.size));
                    let back = egui::emath::Rot2::from_angle(*turn_rad) * vec2(across, line);
                    painter.add(TextShape::new(*at - back, galley, *colour).with_angle(*turn_rad));
                }
            }
        }
    }
}

/// Height of the letters' middle line below the top of their row.
fn row_middle(row: &egui::epaint::text::PlacedRow, size: f32) -> f32 {
    let baseline = row.glyphs.first().map_or(row.size.y * 0.8, |glyph| glyph.pos.y);
    baseline - BASELINE * size
}

fn spot([right, down]: Spot, corner: Vec2) -> Pos2 {
    pos2(right, down) + corner
}

fn spots(of: &[Spot], corner: Vec2) -> Vec<Pos2> {
    of.iter().map(|&at| spot(at, corner)).collect()
}

/// Ink in pieces: each text by itself, and what stands between them.
fn pieces(ink: &[Ink]) -> impl Iterator<Item = &[Ink]> {
    let is_text = |item: &Ink| matches!(item, Ink::Text { .. });
    ink.chunk_by(move |item, next| !is_text(item) && !is_text(next) && !fingerprint(item).is_multiple_of(PIECE_ITEMS))
}

/// Mixes a number into a fingerprint.
fn mixed(fingerprint: u64, number: u64) -> u64 {
    // The multiplier is 2^64 over the golden ratio.
    let mixed = (fingerprint.rotate_left(5) ^ number).wrapping_mul(0x9e37_79b9_7f4a_7c15);
    mixed ^ (mixed >> 32)
}

/// A number that differs, as a rule, for ink that differs.
fn fingerprint(item: &Ink) -> u64 {
    let spots = |of: &[Spot], from: u64| {
        of.iter().flatten().fold(from, |fingerprint, side| mixed(fingerprint, u64::from(side.to_bits())))
    };
    let colour = |of: &drawing::Colour| u64::from(u32::from_le_bytes(theme::colour(*of).to_array()));
    match item {
        Ink::Area { rings, fill } => rings.iter().fold(colour(fill), |fingerprint, ring| spots(ring, fingerprint)),
        Ink::Line { spots: of, closed, width, colour: ink, dash } => {
            let kind = mixed(colour(ink), u64::from(width.to_bits()) << 1 | u64::from(*closed));
            spots(of, spots(dash.as_slice(), kind))
        }
        Ink::Disc { middle, radius, fill, edge } => {
            let colours = fill.iter().chain(edge.iter().map(|edge| &edge.1)).map(colour).fold(0, mixed);
            spots(&[*middle, [*radius, edge.map_or(0.0, |edge| edge.0)]], colours)
        }
        Ink::Text { .. } => 0,
    }
}

fn ready(item: &Ink, corner: Vec2, shapes: &mut Vec<Shape>) {
    match item {
        Ink::Area { rings, fill } => area(rings, theme::colour(*fill), corner, shapes),
        Ink::Line { spots: of, closed, width, colour, dash } => {
            let stroke = Stroke::new(*width, theme::colour(*colour));
            let mut points = distinct(spots(of, corner));
            match dash {
                Some([dash, gap]) => {
                    if *closed && let Some(&first) = points.first() {
                        points.push(first);
                    }
                    shapes.extend(Shape::dashed_line(&points, stroke, *dash, *gap));
                }
                None if *closed => shapes.push(ring(points, stroke)),
                None => shapes.push(Shape::line(points, stroke)),
            }
        }
        Ink::Disc { middle, radius, fill, edge } => {
            shapes.push(Shape::Circle(egui::epaint::CircleShape {
                center: spot(*middle, corner),
                radius: *radius,
                fill: fill.map_or(Color32::TRANSPARENT, theme::colour),
                stroke: edge.map_or(Stroke::NONE, |(width, colour)| Stroke::new(width, theme::colour(colour))),
            }));
        }
        // Words are laid out when they are painted.
        Ink::Text { .. } => {}
    }
}

fn area(rings: &[Vec<Spot>], fill: Color32, corner: Vec2, shapes: &mut Vec<Shape>) {
    if let [ring] = rings
        && is_convex(ring)
    {
        shapes.push(Shape::convex_polygon(spots(ring, corner), fill, Stroke::NONE));
        return;
    }
    let (vertices, indices) = drawing::triangles(rings);
    let mut mesh = Mesh { indices, ..Mesh::default() };
    for at in vertices {
        mesh.colored_vertex(spot(at, corner), fill);
    }
    shapes.push(Shape::mesh(mesh));
    if fill.is_opaque() {
        for ring in rings {
            shapes.push(self::ring(distinct(spots(ring, corner)), Stroke::new(0.5, fill)));
        }
    }
}

/// Places nearer than this are one, pixels: a screen's numbers give no direction between such.
const SAME_PX: f32 = 0.05;

/// A line without places that repeat the one before.
fn distinct(mut points: Vec<Pos2>) -> Vec<Pos2> {
    points.dedup_by(|next, kept| next.distance(*kept) < SAME_PX);
    while points.len() > 2 && points[0].distance(points[points.len() - 1]) < SAME_PX {
        points.pop();
    }
    points
}

/// A closed line. egui mitres the corners of one without a limit, and cuts off sharp ones on an open line only: a ring
/// with a sharp corner is painted as an open line, from the middle of a side round to there again.
fn ring(mut points: Vec<Pos2>, stroke: Stroke) -> Shape {
    let count = points.len();
    let sharp = count > 2
        && (0..count).any(|index| {
            let (before, here, after) =
                (points[(index + count - 1) % count], points[index], points[(index + 1) % count]);
            (here - before).normalized().dot((after - here).normalized()) < 0.0
        });
    if !sharp {
        return Shape::closed_line(points, stroke);
    }
    let middle = points[0].lerp(points[count - 1], 0.5);
    points.insert(0, middle);
    points.push(middle);
    Shape::line(points, stroke)
}

/// Whether a ring turns one way only, and once round.
fn is_convex(ring: &[Spot]) -> bool {
    let count = ring.len();
    let (mut left, mut right, mut turned_rad) = (false, false, 0.0_f32);
    for index in 0..count {
        let [a, b, c] = [ring[index], ring[(index + 1) % count], ring[(index + 2) % count]];
        let (along, onward) = ([b[0] - a[0], b[1] - a[1]], [c[0] - b[0], c[1] - b[1]]);
        let cross = along[0] * onward[1] - along[1] * onward[0];
        left |= cross > 0.0;
        right |= cross < 0.0;
        turned_rad += cross.atan2(along[0] * onward[0] + along[1] * onward[1]);
    }
    !(left && right) && turned_rad.abs() < 1.5 * std::f32::consts::TAU
}

/// A bed of the sheet's colour for a line of the hand's that is painted after it, where a picture lies beneath the map.
pub(crate) fn bed(painter: &Painter, editor: &Editor, line: Vec<Pos2>, width: f32) {
    if editor.view().underlay {
        let sheet = theme::colour(editor.theme().palette().sheet);
        painter.add(Shape::line(line, Stroke::new(width + 2.0 * drawing::BED_PX, sheet)));
    }
}

/// The part of a painter for one part of the window.
pub(crate) fn inside(painter: &Painter, rect: Rect) -> Painter {
    painter.with_clip_rect(rect.intersect(painter.clip_rect()))
}

/// The same ink at another size.
pub(crate) fn scaled(ink: &[Ink], by: f32) -> Vec<Ink> {
    let spots = |of: &[Spot]| -> Vec<Spot> { of.iter().map(|at| at.map(|side| side * by)).collect() };
    ink.iter()
        .map(|item| match item {
            Ink::Area { rings, fill } => {
                Ink::Area { rings: rings.iter().map(|ring| spots(ring)).collect(), fill: *fill }
            }
            Ink::Line { spots: of, closed, width, colour, dash } => Ink::Line {
                spots: spots(of),
                closed: *closed,
                width: width * by,
                colour: *colour,
                dash: dash.map(|dash| dash.map(|length| length * by)),
            },
            Ink::Disc { middle, radius, fill, edge } => Ink::Disc {
                middle: middle.map(|side| side * by),
                radius: radius * by,
                fill: *fill,
                edge: edge.map(|(width, colour)| (width * by, colour)),
            },
            Ink::Text { at, text, size, weight, colour, anchor, turn_rad } => Ink::Text {
                at: at.map(|side| side * by),
                text: text.clone(),
                size: size * by,
                weight: *weight,
                colour: *colour,
                anchor: *anchor,
                turn_rad: *turn_rad,
            },
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::{distinct, ring};
    use egui::epaint::{Mesh, TessellationOptions, Tessellator};
    use egui::{Color32, Pos2, Shape, Stroke, pos2};

    /// How far ink reaches beyond the places that it was drawn through.
    fn reach(shape: Shape, points: &[Pos2]) -> f32 {
        let mut tessellator = Tessellator::new(1.0, TessellationOptions::default(), [1, 1], Vec::new());
        let mut mesh = Mesh::default();
        tessellator.tessellate_shape(shape, &mut mesh);
        let away = |at: Pos2| points.iter().map(|point| point.distance(at)).fold(f32::INFINITY, f32::min);
        mesh.vertices.iter().map(|vertex| away(vertex.pos)).fold(0.0, f32::max)
    }

    #[test]
    fn a_sharp_corner_shoots_no_ink_off_the_sheet() {
        let stroke = Stroke::new(6.0, Color32::BLACK);
        let needle = vec![pos2(0.0, 0.0), pos2(200.0, 0.5), pos2(0.0, 1.0)];
        assert!(reach(Shape::closed_line(needle.clone(), stroke), &needle) > 100.0, "what it guards against");
        // The painted ring's middle places count as places of its own.
        let middle = needle[0].lerp(needle[2], 0.5);
        assert!(reach(ring(needle.clone(), stroke), &[&needle[..], &[middle]].concat()) < 12.0);
    }

    #[test]
    fn places_too_near_to_give_a_direction_are_one() {
        let near = pos2(500.0, 300.0);
        let points = vec![near, pos2(500.000_03, 300.0), pos2(600.0, 300.0), pos2(500.0, 400.0), near];
        assert_eq!(distinct(points), [near, pos2(600.0, 300.0), pos2(500.0, 400.0)]);
    }
}
