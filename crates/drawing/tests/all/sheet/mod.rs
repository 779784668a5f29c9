//! What tests ask of ink: where its texts lie and what lies beneath them.

pub(crate) mod seen;

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

/// Every text that something is put down over, or that lies across a stroke of a mark with no plate between: what the
/// text says, and what spoils it.
pub(crate) fn spoiled(ink: &[Ink], marks: &[Colour]) -> Vec<(String, String)> {
    let mut spoiled = Vec::new();
    for (index, item) in ink.iter().enumerate() {
        let (Ink::Text { text, .. }, Some(letters)) = (item, text_corners(item)) else { continue };
        let over = ink[index + 1..].iter().find(|other| touches(other, &letters));
        let plate = ink[..index].iter().rposition(|other| carries(other, &letters)).map_or(0, |plate| plate + 1);
        let across = ink[plate..index].iter().find(|other| is_mark(other, marks) && touches(other, &letters));
        spoiled.extend(over.map(|over| (text.clone(), format!("under {over:?}"))));
        spoiled.extend(across.map(|across| (text.clone(), format!("across {across:?}"))));
    }
    spoiled
}

/// Whether an item is a stroke of one of those colours.
fn is_mark(item: &Ink, marks: &[Colour]) -> bool {
    match item {
        Ink::Line { width, colour, .. } => *width >= 1.2 && marks.contains(colour),
        Ink::Disc { edge: Some((_, colour)), .. } => marks.contains(colour),
        _ => false,
    }
}

/// Whether an opaque area lies under all of some letters.
fn carries(item: &Ink, letters: &[Spot; 4]) -> bool {
    match item {
        Ink::Area { rings, fill } if fill[3] == 255 => {
            rings.len() == 1 && letters.iter().all(|at| inside(&rings[0], *at))
        }
        Ink::Disc { middle, radius, fill: Some(_), .. } => letters.iter().all(|at| apart(*at, *middle) < *radius),
        _ => false,
    }
}

/// Whether an item other than a text puts something down on letters.
fn touches(item: &Ink, letters: &[Spot; 4]) -> bool {
    let sides = |ring: &[Spot], closed: bool| -> Vec<[Spot; 2]> {
        let closing = closed.then(|| [ring[ring.len() - 1], ring[0]]);
        ring.windows(2).map(|pair| [pair[0], pair[1]]).chain(closing).collect()
    };
    let crossed = |ring: &[Spot], closed: bool| sides(ring, closed).iter().any(|side| meets(letters, side));
    match item {
        Ink::Area { rings, .. } => rings.iter().any(|ring| crossed(ring, true) || inside(ring, letters[0])),
        Ink::Line { spots, closed, .. } => crossed(spots, *closed && spots.len() > 2),
        Ink::Disc { middle, radius, fill, edge } => {
            let nearest = sides(letters, true).iter().map(|side| from_side(side, *middle)).fold(f32::MAX, f32::min);
            let within = inside(letters, *middle);
            let farthest = letters.iter().map(|at| apart(*at, *middle)).fold(0.0, f32::max);
            let thick = edge.map_or(0.0, |edge| edge.0 / 2.0);
            (nearest < radius + thick || within) && (fill.is_some() || farthest > radius - thick)
        }
        Ink::Text { .. } => false,
    }
}

fn apart(a: Spot, b: Spot) -> f32 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

/// Distance of a spot from a side.
fn from_side([from, to]: &[Spot; 2], at: Spot) -> f32 {
    let way = [to[0] - from[0], to[1] - from[1]];
    let squared = (way[0] * way[0] + way[1] * way[1]).max(1e-9);
    let share = (((at[0] - from[0]) * way[0] + (at[1] - from[1]) * way[1]) / squared).clamp(0.0, 1.0);
    apart(at, [from[0] + share * way[0], from[1] + share * way[1]])
}

/// Whether a side passes through a turned rectangle.
fn meets(letters: &[Spot; 4], [from, to]: &[Spot; 2]) -> bool {
    let [a, b, _, d] = *letters;
    let axis = |to: Spot| [to[0] - a[0], to[1] - a[1]];
    let (mut enter, mut leave) = (0.0_f32, 1.0_f32);
    for axis in [axis(b), axis(d)] {
        let squared = (axis[0] * axis[0] + axis[1] * axis[1]).max(1e-9);
        let share = |at: &Spot| ((at[0] - a[0]) * axis[0] + (at[1] - a[1]) * axis[1]) / squared;
        let (start, end) = (share(from), share(to));
        let way = end - start;
        if way.abs() < 1e-9 {
            if !(0.0..=1.0).contains(&start) {
                return false;
            }
            continue;
        }
        let (one, other) = (-start / way, (1.0 - start) / way);
        enter = enter.max(one.min(other));
        leave = leave.min(one.max(other));
    }
    enter < leave
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
