//! Whether words and marks stand out from what is really seen beside them: from the fills and beds of the ink, and from
//! whatever lies beneath it all.

use super::{contrast, inside, over, text_corners};
use drawing::{Colour, Ink, Palette, Spot, Theme};

/// The colours that cover a spot, from the lowest.
type Layers = Vec<Colour>;

/// What a theme owes text and marks (WCAG 2.2, 1.4.3 and 1.4.11; in high contrast 1.4.6 and half as much again).
pub(crate) fn owed(theme: Theme) -> [f64; 2] {
    if theme == Theme::Contrast { [7.0, 4.5] } else { [4.5, 3.0] }
}

/// What stands out too little from what is seen there, over each of some grounds; and how many words and marks were
/// measured.
pub(crate) fn too_faint(ink: &[Ink], theme: Theme, beneath: &[Colour]) -> (Vec<String>, [usize; 2]) {
    let (palette, [of_text, of_marks]) = (theme.palette(), owed(theme));
    let (mut faults, mut counts) = (Vec::new(), [0, 0]);
    let boxes: Vec<[f32; 4]> = ink.iter().map(reach).collect();
    let layers = |ink: &[Ink], at: Spot| -> Layers {
        let near = ink.iter().zip(&boxes).filter(|(_, [left, top, right, foot])| {
            (*left..=*right).contains(&at[0]) && (*top..=*foot).contains(&at[1])
        });
        near.filter_map(|(item, _)| covering(item, at)).collect()
    };
    for (index, item) in ink.iter().enumerate() {
        let fails = |layers: &[Colour], colour: Colour, least: f64| {
            beneath.iter().find_map(|&ground| {
                let seen = layers.iter().fold(ground, |seen, &colour| over(colour, seen));
                let ratio = contrast(over(colour, seen), seen);
                (ratio < least).then(|| format!("over {ground:?}: {ratio:.2} on {seen:?}"))
            })
        };
        if let (Ink::Text { text, colour, .. }, Some(letters)) = (item, text_corners(item)) {
            let fault = within(&letters).find_map(|at| fails(&layers(&ink[..index], at), *colour, of_text));
            counts[0] += 1;
            faults.extend(fault.map(|fault| format!("\"{text}\" {fault}")));
            continue;
        }
        let Some((colour, beside)) = mark(item, palette) else { continue };
        // Beside one mark another may lie: then it is that which stands out.
        let open = |layers: &Layers| layers.last().is_none_or(|&top| is_ground(top, palette));
        let open: Vec<Layers> = beside.into_iter().map(|at| layers(ink, at)).filter(open).collect();
        counts[1] += usize::from(!open.is_empty());
        let fault = open.iter().find_map(|layers| fails(layers, colour, of_marks));
        faults.extend(fault.map(|fault| format!("{colour:?} of {} {fault}", kind(item))));
    }
    (faults, counts)
}

fn kind(item: &Ink) -> String {
    let said = format!("{item:?}");
    said.chars().take(120).collect()
}

/// The colours in which something is marked.
fn marks(p: &Palette) -> [Colour; 10] {
    [p.ink, p.ink2, p.rule, p.edge, p.pick, p.danger, p.ghost, p.green, p.water_edge, p.hedge_edge]
}

/// What is no mark of its own: fills of ground, plates and beds, crosses and tufts. An edge of the strip that a mark crosses
/// hides nothing of it.
fn is_ground(colour: Colour, p: &Palette) -> bool {
    colour[3] < 255 || [p.sheet, p.paper, p.grass, p.run, p.strip, p.water, p.hairline, p.tuft].contains(&colour)
}

/// The colour of a mark, and spots just beside it.
fn mark(item: &Ink, palette: &Palette) -> Option<(Colour, Vec<Spot>)> {
    let is_mark = |colour: &Colour| marks(palette).contains(colour);
    match item {
        Ink::Line { spots, width, colour, .. } if is_mark(colour) => Some((*colour, beside(spots, width / 2.0 + 0.75))),
        Ink::Area { rings, fill } if is_mark(fill) => {
            let closed: Vec<Spot> = rings[0].iter().chain(rings[0].first()).copied().collect();
            Some((*fill, beside(&closed, 0.75)))
        }
        Ink::Disc { middle, radius, fill, edge } => {
            let colour = edge.map(|edge| edge.1).or(*fill).filter(|colour| is_mark(colour))?;
            let off = radius + edge.map_or(0.0, |edge| edge.0 / 2.0) + 0.75;
            let round = (0..8_u8).map(|part| f32::from(part) * std::f32::consts::TAU / 8.0);
            Some((colour, round.map(|turn| [middle[0] + off * turn.cos(), middle[1] + off * turn.sin()]).collect()))
        }
        _ => None,
    }
}

/// Spots at both sides of some of a line's segments.
fn beside(spots: &[Spot], off: f32) -> Vec<Spot> {
    let every = (spots.len() / 6).max(1);
    let pairs = spots.windows(2).step_by(every).filter_map(|pair| {
        let way = [pair[1][0] - pair[0][0], pair[1][1] - pair[0][1]];
        let length = way[0].hypot(way[1]);
        (length > 1e-3).then(|| {
            let middle = [f32::midpoint(pair[0][0], pair[1][0]), f32::midpoint(pair[0][1], pair[1][1])];
            let across = [-way[1] / length * off, way[0] / length * off];
            [1.0, -1.0].map(|side| [middle[0] + side * across[0], middle[1] + side * across[1]])
        })
    });
    pairs.flatten().collect()
}

/// Spots all over some letters.
fn within(&[a, b, _, d]: &[Spot; 4]) -> impl Iterator<Item = Spot> {
    let at = move |right: f32, down: f32| {
        [0, 1].map(|axis| a[axis] + right * (b[axis] - a[axis]) + down * (d[axis] - a[axis]))
    };
    [0.0, 0.25, 0.5, 0.75, 1.0].into_iter().flat_map(move |right| [0.0, 0.5, 1.0].map(|down| at(right, down)))
}

/// Left, top, right and foot of what an item may cover.
fn reach(item: &Ink) -> [f32; 4] {
    let round = |spots: &mut dyn Iterator<Item = &Spot>, by: f32| {
        spots.fold([f32::MAX, f32::MAX, f32::MIN, f32::MIN], |[left, top, right, foot], [x, y]| {
            [left.min(x - by), top.min(y - by), right.max(x + by), foot.max(y + by)]
        })
    };
    match item {
        Ink::Area { rings, .. } => round(&mut rings.iter().flatten(), 0.0),
        Ink::Line { spots, width, .. } => round(&mut spots.iter(), width / 2.0),
        Ink::Disc { middle, radius, edge, .. } => {
            round(&mut std::iter::once(middle), radius + edge.map_or(0.0, |edge| edge.0 / 2.0))
        }
        Ink::Text { at, .. } => round(&mut std::iter::once(at), 0.0),
    }
}

/// The colour with which an item covers a spot.
fn covering(item: &Ink, at: Spot) -> Option<Colour> {
    match item {
        Ink::Area { rings, fill } => (rings.iter().filter(|ring| inside(ring, at)).count() % 2 == 1).then_some(*fill),
        Ink::Line { spots, closed, width, colour, dash: None } => {
            let closing = closed.then(|| [spots[spots.len() - 1], spots[0]]);
            let mut sides = spots.windows(2).map(|pair| [pair[0], pair[1]]).chain(closing);
            sides.any(|side| super::from_side(&side, at) <= width / 2.0).then_some(*colour)
        }
        Ink::Disc { middle, radius, fill, edge } => {
            let off = super::apart(*middle, at);
            let on_edge = edge.filter(|(width, _)| (off - radius).abs() <= width / 2.0);
            on_edge.map(|(_, colour)| colour).or(fill.filter(|_| off < *radius))
        }
        // Dashes lie on a bed, or on ground, as their gaps do.
        Ink::Line { .. } | Ink::Text { .. } => None,
    }
}
