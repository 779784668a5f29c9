//! What tests ask of ink: where its texts lie and what lies beneath them.

use drawing::letters::text_width;
use drawing::{Anchor, Colour, Ink, Spot};

/// A text's letters as a turned rectangle: as wide as they are, from capitals' top to baseline.
pub(crate) fn text_corners(item: &Ink) -> Option<[Spot; 4]> {
    let Ink::Text { at, text, size, weight, anchor, turn_rad, .. } = item else { return None };
    let width = text_width(text, *size, *weight);
    let left = match anchor {
        Anchor::Start => 0.0,
        Anchor::Middle => -width / 2.0,
        Anchor::End => -width,
    };
    let (half, sin, cos) = (size * drawing::letters::BASELINE, turn_rad.sin(), turn_rad.cos());
    let place = |x: f32, y: f32| [at[0] + x * cos - y * sin, at[1] + x * sin + y * cos];
    Some([place(left, -half), place(left + width, -half), place(left + width, half), place(left, half)])
}

/// Whether two convex shapes share more than their edges.
pub(crate) fn overlap(a: &[Spot; 4], b: &[Spot; 4]) -> bool {
    let axes = |shape: &[Spot; 4]| {
        [(0, 1), (1, 2)].map(|(from, to)| {
            let way = [shape[to][0] - shape[from][0], shape[to][1] - shape[from][1]];
            let length = way[0].hypot(way[1]).max(1e-9);
            [way[0] / length, way[1] / length]
        })
    };
    let span = |shape: &[Spot; 4], axis: [f32; 2]| {
        let places = shape.map(|at| at[0] * axis[0] + at[1] * axis[1]);
        (places.iter().copied().fold(f32::MAX, f32::min), places.iter().copied().fold(f32::MIN, f32::max))
    };
    axes(a).into_iter().chain(axes(b)).all(|axis| {
        let ((a_low, a_high), (b_low, b_high)) = (span(a, axis), span(b, axis));
        a_low + 0.01 < b_high && b_low + 0.01 < a_high
    })
}

/// Every two texts that overlap.
pub(crate) fn overlaps(ink: &[Ink]) -> Vec<(String, String)> {
    let texts: Vec<(&Ink, [Spot; 4])> =
        ink.iter().filter_map(|item| text_corners(item).map(|corners| (item, corners))).collect();
    let says = |item: &Ink| if let Ink::Text { text, .. } = item { text.clone() } else { String::new() };
    let mut pairs = Vec::new();
    for (index, a) in texts.iter().enumerate() {
        for b in &texts[index + 1..] {
            if overlap(&a.1, &b.1) {
                pairs.push((says(a.0), says(b.0)));
            }
        }
    }
    pairs
}

/// Whether every number of the ink is finite.
pub(crate) fn finite(ink: &[Ink]) -> bool {
    let all = |spots: &[Spot]| spots.iter().flatten().all(|px| px.is_finite());
    ink.iter().all(|item| match item {
        Ink::Area { rings, .. } => rings.iter().all(|ring| all(ring)),
        Ink::Line { spots, width, .. } => all(spots) && width.is_finite(),
        Ink::Disc { middle, radius, .. } => all(&[*middle]) && radius.is_finite(),
        Ink::Text { at, size, turn_rad, .. } => all(&[*at]) && size.is_finite() && turn_rad.is_finite(),
    })
}

/// Contrast of two colours (WCAG 2.2, relative luminance and contrast ratio).
pub(crate) fn contrast(a: Colour, b: Colour) -> f64 {
    let (a, b) = (luminance(a), luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

/// Relative luminance (WCAG 2.2).
pub(crate) fn luminance(colour: Colour) -> f64 {
    let part = |index: usize| {
        let share = f64::from(colour[index]) / 255.0;
        if share <= 0.04045 { share / 12.92 } else { ((share + 0.055) / 1.055).powf(2.4) }
    };
    0.2126 * part(0) + 0.7152 * part(1) + 0.0722 * part(2)
}

/// A colour laid over another.
pub(crate) fn over(top: Colour, ground: Colour) -> Colour {
    let share = f64::from(top[3]) / 255.0;
    let part = |index: usize| (f64::from(top[index]) * share + f64::from(ground[index]) * (1.0 - share)).round() as u8;
    [part(0), part(1), part(2), 255]
}

/// The colour of the areas under a spot once the first items of ink are down.
pub(crate) fn ground(ink: &[Ink], spot: Spot, paper: Colour) -> Colour {
    ink.iter().fold(paper, |ground, item| match item {
        Ink::Area { rings, fill } if rings.iter().filter(|ring| inside(ring, spot)).count() % 2 == 1 => {
            over(*fill, ground)
        }
        Ink::Disc { middle, radius, fill: Some(fill), .. }
            if (middle[0] - spot[0]).hypot(middle[1] - spot[1]) < *radius =>
        {
            over(*fill, ground)
        }
        _ => ground,
    })
}

fn inside(ring: &[Spot], at: Spot) -> bool {
    let mut inside = false;
    for (index, a) in ring.iter().enumerate() {
        let b = ring[(index + ring.len() - 1) % ring.len()];
        if (a[1] > at[1]) != (b[1] > at[1]) && at[0] < a[0] + (at[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0]) {
            inside = !inside;
        }
    }
    inside
}
