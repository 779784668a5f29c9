//! Ink: what every pen can put down, in pixels or points from the top left corner.
//!
//! The window, SVG, PNG and PDF each have a pen of their own that paints these five kinds of item in
//! order and decides nothing.

use crate::palette::{Colour, Theme};

/// A place on the sheet: right, then down.
pub type Spot = [f32; 2];

/// Weight of the one font family.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Weight {
    /// 400.
    #[default]
    Regular,
    /// 500.
    Medium,
    /// 600.
    SemiBold,
}

/// Which part of a text stands at its place, along its own direction.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Anchor {
    /// Its start.
    Start,
    /// Its middle.
    #[default]
    Middle,
    /// Its end.
    End,
}

/// One item of ink.
#[derive(Clone, Debug, PartialEq)]
pub enum Ink {
    /// An area: its outer ring, then its holes (even-odd).
    Area {
        /// The rings, not closed by a repeated spot.
        rings: Vec<Vec<Spot>>,
        /// Its colour.
        fill: Colour,
    },
    /// A line, mitred.
    Line {
        /// Its spots.
        spots: Vec<Spot>,
        /// Whether it returns to its start.
        closed: bool,
        /// Its width.
        width: f32,
        /// Its colour.
        colour: Colour,
        /// Dash and gap.
        dash: Option<[f32; 2]>,
    },
    /// A disc or ring.
    Disc {
        /// Its middle.
        middle: Spot,
        /// Its radius.
        radius: f32,
        /// Its fill.
        fill: Option<Colour>,
        /// Width and colour of its edge.
        edge: Option<(f32, Colour)>,
    },
    /// A line of text; its middle line passes through its place.
    Text {
        /// Its place.
        at: Spot,
        /// What it says.
        text: String,
        /// Height of the font, pixels.
        size: f32,
        /// Weight of the font.
        weight: Weight,
        /// Its colour.
        colour: Colour,
        /// Which part stands at its place.
        anchor: Anchor,
        /// Its turn about its place, clockwise on the sheet, radians.
        turn_rad: f32,
    },
}

impl Ink {
    /// Left, top, right and bottom of an area; `None` of what is none.
    pub fn area_box(&self) -> Option<[f32; 4]> {
        let Self::Area { rings, .. } = self else { return None };
        let mut spots = rings.iter().flatten();
        let &[x, y] = spots.next()?;
        Some(spots.fold([x, y, x, y], |[left, top, right, bottom], &[x, y]| {
            [left.min(x), top.min(y), right.max(x), bottom.max(y)]
        }))
    }
}

/// A line through some spots on a pen's own kind of path, which is moved, drawn on and closed by those; one that is not
/// finite, or no line, is left out.
pub fn trace<Path>(
    path: &mut Path,
    spots: &[Spot],
    closed: bool,
    [move_to, line_to]: [fn(&mut Path, f32, f32); 2],
    close: fn(&mut Path),
) {
    if spots.len() < 2 || !spots.iter().flatten().all(|px| px.is_finite()) {
        return;
    }
    move_to(path, spots[0][0], spots[0][1]);
    for &[x, y] in &spots[1..] {
        line_to(path, x, y);
    }
    if closed {
        close(path);
    }
}

/// How much heavier every stroke is in high contrast, pixels.
const HEAVIER_PX: f32 = 0.5;

/// Ink as that theme puts it down.
pub(crate) fn in_theme(mut ink: Vec<Ink>, theme: Theme) -> Vec<Ink> {
    if theme == Theme::Contrast {
        for item in &mut ink {
            match item {
                Ink::Line { width, .. } | Ink::Disc { edge: Some((width, _)), .. } => *width += HEAVIER_PX,
                Ink::Area { .. } | Ink::Disc { .. } | Ink::Text { .. } => {}
            }
        }
    }
    ink
}
