//! Signs that stand on the map: energizer and earth, braces and corner plates.

use plan::Point;

use super::pen::{Type, plate_ring};
use super::trace::{self, Px, add, right, scaled, sub, toward};
use super::{Inker, blocks::Block};
use crate::ink::{Anchor, Weight};
use crate::palette::{Colour, Palette};
use crate::shape::{GOES_OVER, Role, Thing};
use crate::view::{Distance, View};

/// How far a corner's plate keeps off the net where no brace stands, pixels.
const PLATE_OFF: f64 = 14.0;

/// How far outside the net the sign of a post that goes over stands, pixels.
const GOES_OVER_OFF: f64 = 17.0;

/// A corner's plate: the corner's place, the plate's middle and outward from the corner.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Plate {
    pub(crate) place: Point,
    pub(crate) middle: Px,
    pub(crate) outward: Px,
}

/// Size of a corner's plate at a distance.
pub(crate) fn plate_size(distance: Distance) -> f64 {
    match distance {
        Distance::Near => 18.0,
        Distance::Middle => 14.0,
        Distance::Far => 5.0,
    }
}

/// A guy's length on the sheet: true, but long enough to be seen.
pub(crate) fn guy_px(view: &View, guy_m: f64) -> f64 {
    (guy_m * view.px_per_m).max(if view.distance() == Distance::Near { 15.0 } else { 12.0 })
}

/// Length and width of a brace's kite.
fn kite_size(distance: Distance) -> (f64, f64) {
    match distance {
        Distance::Near => (11.0, 8.0),
        Distance::Middle => (8.8, 6.4),
        Distance::Far => (9.0, 6.0),
    }
}

/// Where a corner's plate stands: out along the bisector, beyond the brace.
pub(crate) fn plate_middle(view: &View, corner: Px, outward: Px, guy_m: Option<f64>) -> Px {
    let distance = view.distance();
    let half = plate_size(distance) / 2.0;
    let clear = match (guy_m, distance) {
        (_, Distance::Far) => return plate_middle_far(corner, outward),
        (Some(guy_m), _) => guy_px(view, guy_m) + kite_size(distance).0 + 3.5,
        (None, Distance::Middle) => PLATE_OFF - 3.0,
        (None, Distance::Near) => PLATE_OFF,
    };
    // The plate's nearest corner or side comes no nearer than that.
    toward(corner, outward, clear + half / outward[0].abs().max(outward[1].abs()).max(0.5))
}

/// Where the small square stands that is a corner's plate from afar, or where plates are crowded.
fn plate_middle_far(corner: Px, outward: Px) -> Px {
    let half = plate_size(Distance::Far) / 2.0;
    toward(corner, outward, 5.0 + half / outward[0].abs().max(outward[1].abs()).max(0.5))
}

impl super::pen::Pen {
    /// A plate with a number, or any few letters.
    pub(crate) fn number_plate(&mut self, palette: &Palette, middle: Px, text: &str, size: f64, picked: bool) {
        let font = if size >= 18.0 { 12.0 } else { 11.0 };
        let kind = Type::new(font, Weight::SemiBold, if picked { palette.sheet } else { palette.ink });
        let width = plate_width(text, size, kind);
        let (fill, edge) = if picked { (palette.pick, palette.pick) } else { (palette.sheet, palette.ink) };
        self.edged(&plate_ring(middle, width, size, 5.0 * size / 18.0), fill, 1.5, edge);
        self.text(middle, text, kind, Anchor::Middle);
    }
}

/// Width of a number's plate: as wide as high, wider for long numbers.
pub(super) fn plate_width(text: &str, size: f64, kind: Type) -> f64 {
    (kind.width(text) + 8.0).max(size)
}

/// What the plate of a corner's number takes, where it stands whole: not from afar, nor in the room of another.
pub(crate) fn number_block(view: &View, middle: Px, number: usize, numbers: &[Block]) -> Option<Block> {
    let size = plate_size(view.distance());
    let kind = Type::new(12.0, Weight::SemiBold, view.theme.palette().ink);
    let block = Block::new(middle, plate_width(&number.to_string(), size, kind) + 3.0, size + 3.0);
    (view.distance() != Distance::Far && !numbers.iter().any(|other| other.overlaps(&block))).then_some(block)
}

/// How far a roll's number stands inside the net, how large it is, and how long its arrow is, pixels.
pub(crate) const ROLL_OFF: f64 = 15.0;
pub(crate) const ROLL_RADIUS: f64 = 7.0;
/// Between the two rings of its coil.
pub(crate) const ROLL_COIL: f64 = 2.5;
const ROLL_ARROW: f64 = 14.0;
/// Length of the arrow at a corner to draw in, pixels.
const DRAW_IN: f64 = 16.0;

impl Inker<'_> {
    /// An arrow from a corner to the inside.
    pub(super) fn draw_in(&mut self, at: Px, way: Px) {
        let (from, tip) = (toward(at, way, 5.0), toward(at, way, 5.0 + DRAW_IN));
        self.arrow(from, tip, way, self.palette.ink);
        self.taken.push(Block::new(toward(at, way, 5.0 + DRAW_IN / 2.0), DRAW_IN, DRAW_IN));
    }

    fn arrow(&mut self, from: Px, tip: Px, way: Px, ink: Colour) {
        self.pen.line(&[from, tip], 1.25, ink);
        let (barb, side) = (toward(tip, way, -4.5), right(way));
        self.pen.line(&[add(barb, scaled(side, 3.0)), tip, add(barb, scaled(side, -3.0))], 1.25, ink);
    }

    /// A roll's number in a ring, with an arrow the way it is rolled out.
    pub(super) fn roll(&mut self, at: Px, way: Px, outward: Px, number: usize) {
        let colours = self.palette;
        let middle = toward(at, outward, -ROLL_OFF);
        let tip = toward(middle, way, ROLL_RADIUS + ROLL_COIL + ROLL_ARROW);
        let (half_arrow, wide) = (ROLL_ARROW / 2.0, 2.0 * (ROLL_RADIUS + ROLL_COIL) + ROLL_ARROW);
        let turn_rad = way[1].atan2(way[0]);
        let block = Block::turned(toward(middle, way, half_arrow), wide, 2.0 * (ROLL_RADIUS + ROLL_COIL), turn_rad);
        // On a short side the number of a corner or a plate stands there already.
        if self.taken.overlaps(&block) {
            return;
        }
        self.arrow(toward(middle, way, ROLL_RADIUS + ROLL_COIL), tip, way, colours.ink2);
        // A roll seen from above: a coil about its number, nothing like a corner's plate or a reading's ring.
        self.pen.disc(middle, ROLL_RADIUS + ROLL_COIL, Some(colours.sheet), Some((1.0, colours.ink2)));
        self.pen.disc(middle, ROLL_RADIUS, Some(colours.sheet), Some((1.0, colours.ink2)));
        self.pen.text(middle, &number.to_string(), Type::new(11.0, Weight::SemiBold, colours.ink2), Anchor::Middle);
        self.taken.push(block);
    }

    pub(super) fn wire(&mut self, role: Role, places: &[Point]) {
        let (colours, scale) = (self.palette, self.sign_scale());
        let far = self.distance == Distance::Far;
        let points = self.pxs(places);
        let pieces = self.seen(&points, false);
        match role {
            Role::Lead => {
                for piece in &pieces {
                    let line = piece.points();
                    self.pen.line(&line, if far { 1.25 } else { 3.0 * scale + 1.0 }, colours.ink);
                    if !far {
                        self.pen.line(&line, 3.0 * scale - 1.0, colours.sheet);
                    }
                }
                self.take_line(&points, false);
            }
            Role::EarthLead => {
                self.seen_line(places, false, 1.25, colours.ink, Some([3.0, 3.0]));
                self.take_line(&points, false);
            }
            Role::Guy { needed } if !far => {
                let &[post, stake] = &points[..] else { return };
                let Some(way) = trace::direction(post, stake) else { return };
                let end = toward(post, way, guy_px(self.view, trace::apart(post, stake) / self.view.px_per_m));
                for piece in self.seen(&[post, end], false) {
                    self.pen.dashed(&piece.points(), 1.5, colours.ink, (!needed).then_some([3.0, 3.0]));
                }
                self.take_line(&[post, end], false);
            }
            _ => {}
        }
    }

    /// The kite of a brace, its foot where the stake stands.
    ///
    /// Filled where it is needed or stands, open where it is advised, half filled where it stands and is too weak.
    pub(super) fn brace(&mut self, stake: Px, away: Px, [needed, weak]: [bool; 2], guy_m: f64) {
        if self.distance == Distance::Far {
            return;
        }
        let (length, width) = kite_size(self.distance);
        let foot = self.kite_foot(stake, away, guy_m);
        let at = |along: f64, aside: f64| toward(toward(foot, away, along), right(away), aside);
        let ring = [at(0.0, 0.0), at(length * 0.36, width / 2.0), at(length, 0.0), at(length * 0.36, -width / 2.0)];
        let fill = if needed && !weak { self.palette.ink } else { self.palette.sheet };
        self.pen.edged(&ring, fill, 1.25, self.palette.ink);
        if weak {
            self.pen.polygon(&[ring[0], ring[1], ring[2]], self.palette.ink);
        }
        self.taken.push(Block::new(at(length / 2.0, 0.0), length, length));
    }

    /// Where a brace's kite begins: a guy that is drawn longer than it is takes its kite along.
    fn kite_foot(&self, stake: Px, away: Px, guy_m: f64) -> Px {
        toward(stake, away, guy_px(self.view, guy_m) - self.px_of(guy_m))
    }

    /// The middle of a brace's kite.
    pub(super) fn kite_middle(&self, stake: Px, away: Px, guy_m: f64) -> Px {
        toward(self.kite_foot(stake, away, guy_m), away, kite_size(self.distance).0 / 2.0)
    }

    /// A post that leans over its ground, beside the net on the outer side: it goes over first in the wind.
    pub(super) fn goes_over(&mut self, at: Px, outward: Px) {
        if self.distance == Distance::Far {
            return;
        }
        let scale = self.sign_scale();
        let middle = toward(at, outward, GOES_OVER_OFF * scale);
        let strokes = GOES_OVER.map(|stroke| stroke.map(|off| add(middle, scaled(off, scale))));
        for (width, colour) in [(4.5, self.palette.sheet), (1.75, self.palette.ink)] {
            for stroke in &strokes {
                self.pen.line(stroke, width, colour);
            }
        }
        self.taken.push(Block::new(middle, 15.0 * scale, 12.0 * scale));
    }

    pub(super) fn feed(&mut self, at: Px) {
        let (colours, scale) = (self.palette, self.sign_scale());
        if self.distance == Distance::Far {
            self.pen.disc(at, 2.5, Some(colours.ink), Some((1.0, colours.sheet)));
            return;
        }
        self.pen.disc(at, 5.0 * scale, Some(colours.sheet), Some((1.5, colours.ink)));
        self.pen.disc(at, 1.75 * scale, Some(colours.ink), None);
        self.taken.push(Block::new(at, 14.0, 14.0));
    }

    /// A block with one pulse cut out.
    pub(super) fn energizer(&mut self, at: Px) {
        let colours = self.palette;
        if self.distance == Distance::Far {
            self.pen.polygon(&plate_ring(at, 8.0, 8.0, 0.0), colours.ink);
            self.pen.line(&[add(at, [-2.0, 2.0]), add(at, [2.0, -2.0])], 1.25, colours.sheet);
            self.taken.push(Block::new(at, 12.0, 12.0));
            return;
        }
        let scale = self.sign_scale();
        self.pen.polygon(&plate_ring(at, 18.0 * scale, 16.0 * scale, 0.0), colours.ink);
        let pulse = [[-6.0, 4.0], [-3.0, 4.0], [-0.5, -4.5], [2.5, 4.0], [6.0, 4.0]];
        self.pen.line(&pulse.map(|spot| add(at, scaled(spot, scale))), 1.5 * scale, colours.sheet);
        self.taken.push(Block::new(at, 22.0 * scale, 20.0 * scale));
    }

    /// The standard sign of an earth (IEC 60617), its lead from above.
    pub(super) fn earth_stake(&mut self, at: Px) {
        let (colour, scale) = (self.palette.ink, self.sign_scale());
        let bars: &[(f64, f64)] = match self.distance {
            Distance::Far => &[(4.0, 4.0), (2.0, 7.0)],
            _ => &[(6.5, 6.0), (4.0, 9.0), (1.5, 12.0)],
        };
        self.pen.line(&[at, add(at, [0.0, bars[0].1 * scale])], 1.5, colour);
        for &(half, down) in bars {
            let middle = add(at, [0.0, down * scale]);
            let bar = [half * scale, 0.0];
            self.pen.line(&[sub(middle, bar), add(middle, bar)], 1.5, colour);
        }
        self.taken.push(Block::new(add(at, [0.0, 6.0 * scale]), 17.0 * scale, 18.0 * scale));
    }

    /// A corner's plate with its number; a small square from afar, and where another plate stands in its room.
    pub(super) fn corner(
        &mut self,
        thing: Option<Thing>,
        place: Point,
        corner: Px,
        outward: Px,
        number: usize,
        guy_m: Option<f64>,
    ) {
        let size = plate_size(self.distance);
        let middle = plate_middle(self.view, corner, outward, guy_m);
        let picked = thing.is_some() && thing == self.view.picked;
        let colours = self.palette;
        let Some(block) = number_block(self.view, middle, number, &self.numbers) else {
            let square = plate_size(Distance::Far);
            let at = plate_middle_far(corner, outward);
            self.pen.polygon(&plate_ring(at, square, square, 0.0), if picked { colours.pick } else { colours.ink });
            self.taken.push(Block::new(at, square, square));
            self.plates.push(Plate { place, middle, outward });
            return;
        };
        self.pen.number_plate(colours, middle, &number.to_string(), size, picked);
        if thing.is_some() && thing == self.view.hovered && !picked {
            let [width, height] = block.size();
            self.pen.ring(&plate_ring(middle, width + 4.5, height + 4.5, 6.5), 1.5, colours.ink);
        }
        self.numbers.push(block);
        self.taken.push(block.grown(0.5));
        self.plates.push(Plate { place, middle, outward });
    }
}
