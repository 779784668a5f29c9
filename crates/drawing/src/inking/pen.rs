//! The pen: lines, areas, plates and texts put down as ink.

use super::blocks::Block;
use super::trace::Px;
use crate::ink::{Anchor, Ink, Spot, Weight};
use crate::letters::text_width;
use crate::palette::Colour;

/// A text's looks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Type {
    pub(crate) size: f32,
    pub(crate) weight: Weight,
    pub(crate) colour: Colour,
}

impl Type {
    pub(crate) fn new(size: f32, weight: Weight, colour: Colour) -> Self {
        Self { size, weight, colour }
    }

    /// Width of a text in this type.
    pub(crate) fn width(self, text: &str) -> f64 {
        f64::from(text_width(text, self.size, self.weight))
    }
}

/// Ink put down so far.
#[derive(Default)]
pub(crate) struct Pen {
    pub(crate) ink: Vec<Ink>,
}

/// A spot from a place in pixels.
pub(crate) fn spot(at: Px) -> Spot {
    at.map(|px| px as f32)
}

fn spots(points: &[Px]) -> Vec<Spot> {
    points.iter().map(|&at| spot(at)).collect()
}

impl Pen {
    /// Puts an item down; one that is not finite, of a plan without sense, is left out.
    fn put(&mut self, item: Ink) {
        let all = |spots: &[Spot]| spots.iter().flatten().all(|px| px.is_finite());
        let sound = match &item {
            Ink::Area { rings, .. } => rings.iter().all(|ring| all(ring)),
            Ink::Line { spots, .. } => all(spots),
            Ink::Disc { middle, radius, .. } => all(&[*middle]) && radius.is_finite(),
            Ink::Text { at, turn_rad, .. } => all(&[*at]) && turn_rad.is_finite(),
        };
        if sound {
            self.ink.push(item);
        }
    }

    pub(crate) fn area(&mut self, rings: Vec<Vec<Px>>, fill: Colour) {
        if rings.first().is_some_and(|ring| ring.len() >= 3) {
            let rings = rings.iter().filter(|ring| ring.len() >= 3).map(|ring| spots(ring)).collect();
            self.put(Ink::Area { rings, fill });
        }
    }

    pub(crate) fn polygon(&mut self, ring: &[Px], fill: Colour) {
        self.area(vec![ring.to_vec()], fill);
    }

    pub(crate) fn line(&mut self, points: &[Px], width: f64, colour: Colour) {
        self.dashed(points, width, colour, None);
    }

    pub(crate) fn dashed(&mut self, points: &[Px], width: f64, colour: Colour, dash: Option<[f32; 2]>) {
        if points.len() >= 2 {
            let spots = spots(points);
            self.put(Ink::Line { spots, closed: false, width: width as f32, colour, dash });
        }
    }

    pub(crate) fn ring(&mut self, points: &[Px], width: f64, colour: Colour) {
        self.dashed_ring(points, width, colour, None);
    }

    pub(crate) fn dashed_ring(&mut self, points: &[Px], width: f64, colour: Colour, dash: Option<[f32; 2]>) {
        if points.len() >= 3 {
            let spots = spots(points);
            self.put(Ink::Line { spots, closed: true, width: width as f32, colour, dash });
        } else {
            self.dashed(points, width, colour, dash);
        }
    }

    pub(crate) fn disc(&mut self, middle: Px, radius: f64, fill: Option<Colour>, edge: Option<(f64, Colour)>) {
        let edge = edge.map(|(width, colour)| (width as f32, colour));
        self.put(Ink::Disc { middle: spot(middle), radius: radius as f32, fill, edge });
    }

    /// A filled shape with an edge.
    pub(crate) fn edged(&mut self, ring: &[Px], fill: Colour, width: f64, edge: Colour) {
        self.polygon(ring, fill);
        self.ring(ring, width, edge);
    }

    pub(crate) fn text(&mut self, at: Px, text: &str, kind: Type, anchor: Anchor) {
        self.turned_text(at, text, kind, anchor, 0.0);
    }

    pub(crate) fn turned_text(&mut self, at: Px, text: &str, kind: Type, anchor: Anchor, turn_rad: f64) {
        self.put(Ink::Text {
            at: spot(at),
            text: text.to_owned(),
            size: kind.size,
            weight: kind.weight,
            colour: kind.colour,
            anchor,
            turn_rad: turn_rad as f32,
        });
    }
}

/// The ring of a plate: upright, its upper right corner cut.
pub(crate) fn plate_ring(middle: Px, width: f64, height: f64, cut: f64) -> Vec<Px> {
    let (left, right) = (middle[0] - width / 2.0, middle[0] + width / 2.0);
    let (top, foot) = (middle[1] - height / 2.0, middle[1] + height / 2.0);
    vec![[left, top], [right - cut, top], [right, top + cut], [right, foot], [left, foot]]
}

/// The block of a text with that anchor and turn.
pub(crate) fn text_block(at: Px, text: &str, kind: Type, anchor: Anchor, turn_rad: f64) -> Block {
    let width = kind.width(text);
    let shift = match anchor {
        Anchor::Start => width / 2.0,
        Anchor::Middle => 0.0,
        Anchor::End => -width / 2.0,
    };
    let middle = [at[0] + shift * turn_rad.cos(), at[1] + shift * turn_rad.sin()];
    // From above the capitals to below the descenders, about the middle line.
    Block::turned(middle, width + 2.0, f64::from(kind.size) * f64::from(crate::letters::LINE_HEIGHT), turn_rad)
}
