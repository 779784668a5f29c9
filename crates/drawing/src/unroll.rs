//! What is shown round a run while it is unrolled: the curve that closes it, the ground beyond it, the side still to come.
//!
//! Its nets and corners are drawn as any run's. Ground out of reach is screened and ruled; ground at rest is ruled the
//! other way.

use plan::Point;
use words::Words;
use words::texts::Unroll as Text;
use workup::unroll::Unrolled;

use crate::ink::{Anchor, Ink, Weight, in_theme};
use crate::inking::blocks::Block;
use crate::inking::pen::{Pen, Type, plate_ring};
use crate::inking::trace::{Px, add, apart, direction, from_the_middle, lerp, right, toward};
use crate::palette::Palette;
use crate::taken::Taken;
use crate::view::View;

/// Places of the curve's ring: at any size of screen it looks round.
const RING: usize = 180;
/// Between two lines of the ruling, pixels, square to them.
const RULED_EACH_PX: f64 = 12.0;
/// The curve's stroke, the closing side's and its dash.
const CURVE_PX: f64 = 2.0;
const SIDE_PX: f64 = 1.75;
const DASH: [f32; 2] = [7.0, 4.0];
/// Plates keep so far from the map's edges.
const EDGE_PX: f64 = 20.0;
/// A corner's circle takes so much, pixels.
const CORNER_PX: f64 = 20.0;
/// How far from the closing side its length may stand, pixels.
const BESIDE_PX: [f64; 7] = [0.0, 24.0, -24.0, 48.0, -48.0, 72.0, -72.0];
/// A side shorter than this has no room for its words, pixels.
const WORDED_PX: f64 = 90.0;

/// What lies beneath the nets in hand.
pub fn reach(view: &View, unrolled: &Unrolled) -> Vec<Ink> {
    let colours = view.theme.palette();
    let mut pen = Pen::default();
    if unrolled.closing.is_none() {
        return Vec::new();
    }
    let ring = curve_ring(view, unrolled);
    // Where these nets close it from nowhere, nowhere is in reach.
    beyond(&mut pen, view, ring.as_deref().unwrap_or_default(), colours);
    if let Some(ring) = &ring {
        pen.ring(ring, CURVE_PX, colours.ink);
    }
    if let Some([from, to]) = side_to_come(view, unrolled) {
        pen.dashed(&[from, to], SIDE_PX, colours.ink, Some(DASH));
    }
    in_theme(pen.ink, view.theme)
}

/// The curve that closes the run, where there is one.
fn curve_ring(view: &View, unrolled: &Unrolled) -> Option<Vec<Px>> {
    let curve = unrolled.closing?.curve?;
    Some(curve.ring(RING).into_iter().map(|at| view.px(Point::new(at.east_m, at.north_m))).collect())
}

/// What closes the run in the hand: the curve, and the side still to come.
pub(crate) fn closing_lines(view: &View, unrolled: &Unrolled) -> Vec<[Px; 2]> {
    let ring = curve_ring(view, unrolled).unwrap_or_default();
    let curve = ring.iter().zip(ring.iter().cycle().skip(1)).map(|(&from, &to)| [from, to]);
    curve.chain(side_to_come(view, unrolled)).collect()
}

/// From the corner in hand back to the first.
fn side_to_come(view: &View, unrolled: &Unrolled) -> Option<[Px; 2]> {
    let (first, last) = (unrolled.corners.first()?, unrolled.corners.last()?);
    (unrolled.corners.len() > 2).then(|| [view.px(*last), view.px(*first)])
}

/// What is written over the nets in hand: the turn into the side in hand, how long the closing side is, what closes on the
/// curve and what lies beyond it; each clear of what is taken, and left out where nothing is free.
pub fn told(view: &View, words: Words, unrolled: &Unrolled, mut taken: Taken) -> Vec<Ink> {
    let mut pen = Pen::default();
    let colours = view.theme.palette();
    for &corner in &*unrolled.corners {
        taken.block(Block::new(view.px(corner), CORNER_PX, CORNER_PX));
    }
    turn(&mut pen, view, words, unrolled, &mut taken);
    let Some(closing) = unrolled.closing else { return in_theme(pen.ink, view.theme) };
    if let Some([from, to]) = side_to_come(view, unrolled).filter(|[from, to]| apart(*from, *to) > WORDED_PX) {
        let text = words.say(Text::ToClose, &[("length", &words.length(closing.side_m))]);
        let across = direction(from, to).map_or([0.0, 1.0], right);
        // On the side, its middle first, or beside it where too much is written there.
        let places = BESIDE_PX
            .into_iter()
            .flat_map(|off| from_the_middle().map(move |share| toward(lerp(from, to, share), across, off)));
        let kind = Type::new(11.0, Weight::Medium, colours.ink);
        let size = plate_size(kind, &text);
        // It is what the hand looks for.
        if let Some(middle) = taken.room_or_words(view, size, places) {
            put(&mut pen, middle, &text, kind, 0.0, colours);
        }
    }
    let said = |one: Text, many: Text| match closing.nets {
        1 => words.text(one).to_owned(),
        nets => words.say(many, &[("nets", &nets.to_string())]),
    };
    let text = said(Text::OutOfReachOne, Text::OutOfReach);
    let half = Type::new(12.0, Weight::Medium, colours.ink).width(&text) / 2.0 + 8.0;
    let corner = [f64::from(view.size[0]) - EDGE_PX - half, EDGE_PX + 12.0];
    let places = (0..6).map(|line| add(corner, [0.0, 26.0 * f64::from(line)]));
    plate(&mut pen, places, &text, 12.0, 0.0, (view, &mut taken));
    if let Some(ring) = curve_ring(view, unrolled) {
        on_curve(&mut pen, &ring, &said(Text::ClosesHereOne, Text::ClosesHere), (view, &mut taken));
    }
    in_theme(pen.ink, view.theme)
}

/// The plane beyond a ring, all of it where there is none: screened, and ruled from the lower left to the upper right.
fn beyond(pen: &mut Pen, view: &View, ring: &[Px], colours: &Palette) {
    let [width, height] = view.size.map(f64::from);
    let around = |axis: usize, end: f64| {
        let sides = ring.iter().map(|at| at[axis]);
        (sides.clone().fold(0.0_f64, f64::min) - 8.0, sides.fold(end, f64::max) + 8.0)
    };
    let ((left, right), (top, foot)) = (around(0, width), around(1, height));
    let plane = vec![[left, top], [right, top], [right, foot], [left, foot]];
    let hole = Some(ring.to_vec()).filter(|ring| !ring.is_empty());
    pen.area(std::iter::once(plane).chain(hole).collect(), colours.screen);
    // Along a line of the ruling right + down is the same.
    let step = RULED_EACH_PX * std::f64::consts::SQRT_2;
    let lines = ((width + height) / step).ceil() as u32;
    for sum in (0..=lines).map(|line| f64::from(line) * step) {
        let (from, to) = ((sum - height).max(0.0), sum.min(width));
        if from >= to {
            continue;
        }
        let at = |x: f64| [x, sum - x];
        let mut cut = |from: f64, to: f64| {
            if to - from > 1.0 {
                pen.line(&[at(from), at(to)], 1.0, colours.screen_rule);
            }
        };
        match across(ring, sum) {
            Some((enter, leave)) => {
                cut(from, to.min(enter));
                cut(from.max(leave), to);
            }
            None => cut(from, to),
        }
    }
}

/// Where a line right + down = `sum` crosses a convex ring, by their way to the right.
fn across(ring: &[Px], sum: f64) -> Option<(f64, f64)> {
    let mut crossed: Option<(f64, f64)> = None;
    for (index, &one) in ring.iter().enumerate() {
        let other = ring[(index + 1) % ring.len()];
        let (before, after) = (one[0] + one[1] - sum, other[0] + other[1] - sum);
        if (before < 0.0) != (after < 0.0) {
            let x = one[0] + (other[0] - one[0]) * before / (before - after);
            crossed = Some(crossed.map_or((x, x), |(low, high)| (low.min(x), high.max(x))));
        }
    }
    crossed
}

/// Words on the curve, where it runs lowest to the right within the map.
fn on_curve(pen: &mut Pen, ring: &[Px], text: &str, (view, taken): (&View, &mut Taken)) {
    let kind = Type::new(12.0, Weight::Medium, view.theme.palette().ink);
    let half = kind.width(text) / 2.0 + 8.0;
    let [width, height] = view.size.map(f64::from);
    // The lower right belongs to scale and north, the lower left to the hint.
    let free =
        |at: &&Px| at[0] > half + EDGE_PX && at[0] < width - half - EDGE_PX && at[1] > 64.0 && at[1] < height - 88.0;
    let mut places: Vec<Px> = ring.iter().filter(free).copied().collect();
    places.sort_by(|one, other| (other[0] + other[1]).total_cmp(&(one[0] + one[1])));
    plate(pen, places, text, 12.0, 5.0, (view, taken));
}

/// A plate at the first of some places that has room; whether one has.
fn plate(
    pen: &mut Pen,
    places: impl IntoIterator<Item = Px>,
    text: &str,
    size: f32,
    cut: f64,
    (view, taken): (&View, &mut Taken),
) -> bool {
    let colours = view.theme.palette();
    let kind = Type::new(size, Weight::Medium, colours.ink);
    let Some(middle) = taken.room(view, plate_size(kind, text), places) else { return false };
    put(pen, middle, text, kind, cut, colours);
    true
}

fn plate_size(kind: Type, text: &str) -> [f64; 2] {
    [kind.width(text) + 14.0, f64::from(kind.size) + 9.0]
}

fn put(pen: &mut Pen, middle: Px, text: &str, kind: Type, cut: f64, colours: &Palette) {
    let [width, height] = plate_size(kind, text);
    let ring = plate_ring(middle, width, height, cut);
    if cut > 0.0 {
        pen.edged(&ring, colours.sheet, 1.25, colours.ink);
    } else {
        pen.polygon(&ring, colours.sheet);
    }
    pen.text(middle, text, kind, Anchor::Middle);
}

/// The turn into the side in hand: an arc from the line that went on, with its degrees.
fn turn(pen: &mut Pen, view: &View, words: Words, unrolled: &Unrolled, taken: &mut Taken) {
    let [.., before, corner, next] = *unrolled.corners else { return };
    let Some(&turn_deg) = unrolled.turns_deg.get(unrolled.corners.len() - 2) else { return };
    let [before, corner, next] = [before, corner, next].map(|at| view.px(at));
    let (Some(on), Some(away)) = (direction(before, corner), direction(corner, next)) else { return };
    let radius = 34.0;
    if apart(corner, next) < radius + 8.0 {
        return;
    }
    let ink2 = view.theme.palette().ink2;
    let (from_rad, turn_rad) =
        (on[1].atan2(on[0]), (on[0] * away[1] - on[1] * away[0]).atan2(on[0] * away[0] + on[1] * away[1]));
    let at = |share: f64, far: f64| {
        let (sine, cosine) = (from_rad + share * turn_rad).sin_cos();
        add(corner, [cosine * far, sine * far])
    };
    let places = [18.0, 36.0].into_iter().flat_map(|off| [0.5, 0.3, 0.7].map(|share| at(share, radius + off)));
    if plate(pen, places, &words.degrees(turn_deg), 11.0, 0.0, (view, taken)) {
        pen.dashed(&[at(0.0, 8.0), at(0.0, radius + 10.0)], 1.0, ink2, Some([2.0, 3.0]));
        let arc: Vec<Px> = (0..=12).map(|step| at(f64::from(step) / 12.0, radius)).collect();
        pen.line(&arc, 1.0, ink2);
    }
}
