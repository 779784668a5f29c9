//! Beds: the sheet's own colour round every mark and beneath every word, as maps lay them over a photograph, so that
//! both keep their contrast over any picture however strong it is.
//!
//! All beds lie together above the fills and beneath every mark: the bed of one mark hides no other. Where no picture
//! lies beneath there are none.

use crate::ink::Ink;
use crate::inking::blocks::Block;
use crate::inking::pen::{Type, spot, text_block};
use crate::inking::trace::Px;
use crate::palette::{Colour, Palette, Theme};

/// How far a bed reaches beyond its mark, pixels.
pub const BED_PX: f32 = 1.75;
/// And beyond words.
const WORDS_PX: f64 = 1.5;

/// Ink as it lies over a picture: what covers ground, then the beds, then every mark and word in its order.
pub fn bedded(ink: Vec<Ink>, theme: Theme) -> Vec<Ink> {
    let palette = theme.palette();
    let (mut bedded, marks): (Vec<Ink>, Vec<Ink>) = ink.into_iter().partition(|item| is_ground(item, palette));
    for mark in &marks {
        bed(mark, palette.sheet, &mut bedded);
    }
    bedded.extend(marks);
    bedded
}

/// Half clear fills, and what is ornament only.
fn is_ground(item: &Ink, palette: &Palette) -> bool {
    match item {
        Ink::Area { fill, .. } => fill[3] < u8::MAX,
        Ink::Line { colour, .. } => {
            [palette.hairline, palette.tuft, palette.strip_edge, palette.screen_rule].contains(colour)
        }
        Ink::Disc { .. } | Ink::Text { .. } => false,
    }
}

/// The bed of a mark or a word.
fn bed(mark: &Ink, sheet: Colour, beds: &mut Vec<Ink>) {
    let line = |spots: &[[f32; 2]], closed: bool, width: f32| Ink::Line {
        spots: spots.to_vec(),
        closed,
        width: width + 2.0 * BED_PX,
        colour: sheet,
        dash: None,
    };
    match mark {
        // A plate of the sheet's colour has its bed at its edge.
        Ink::Area { fill: colour, .. } | Ink::Line { colour, .. } if *colour == sheet => {}
        Ink::Area { rings, .. } => beds.extend(rings.iter().map(|ring| line(ring, true, 0.0))),
        Ink::Line { spots, closed, width, .. } => beds.push(line(spots, *closed, *width)),
        Ink::Disc { middle, radius, fill, edge } => {
            let edge = edge.map_or(0.0, |(width, _)| width);
            beds.push(Ink::Disc {
                middle: *middle,
                radius: if fill.is_some() { radius + edge / 2.0 + BED_PX } else { *radius },
                fill: fill.map(|_| sheet),
                edge: fill.is_none().then_some((edge + 2.0 * BED_PX, sheet)),
            });
        }
        Ink::Text { at, text, size, weight, colour, anchor, turn_rad } => {
            let kind = Type::new(*size, *weight, *colour);
            let words: Block = text_block(at.map(f64::from), text, kind, *anchor, f64::from(*turn_rad));
            let ring = words.grown(WORDS_PX).corners().map(|corner: Px| spot(corner)).to_vec();
            beds.push(Ink::Area { rings: vec![ring], fill: sheet });
        }
    }
}
