//! The tape on the map: a line from place to place, a tick at each, the length of every leg.

use plan::Point;
use words::Words;

use crate::ink::{Anchor, Ink, Weight, in_theme};
use crate::inking::pen::{Pen, Type, plate_ring};
use crate::inking::trace::{apart, direction, lerp, right, toward};
use crate::view::View;

/// A leg has its length written on it where it is longer than this, pixels.
const WORDED_PX: f64 = 70.0;
const TICK_PX: f64 = 7.0;

/// The tape along places; the last leg's own length is said beside its end where `last_said`.
pub fn ink(view: &View, words: Words, places: &[Point], last_said: bool) -> Vec<Ink> {
    let colours = view.theme.palette();
    let kind = Type::new(11.0, Weight::Medium, colours.ink);
    let mut pen = Pen::default();
    let legs = places.len().saturating_sub(1);
    for (leg, pair) in places.windows(2).enumerate() {
        let [from, to] = [view.px(pair[0]), view.px(pair[1])];
        // Dark under light, as a tape is: it shows on every ground.
        pen.line(&[from, to], 4.0, colours.sheet);
        pen.line(&[from, to], 2.0, colours.ink);
        let Some(along) = direction(from, to) else { continue };
        let across = right(along);
        for end in [from, to] {
            pen.line(&[toward(end, across, -TICK_PX), toward(end, across, TICK_PX)], 2.0, colours.ink);
        }
        if apart(from, to) > WORDED_PX && !(last_said && leg + 1 == legs) {
            let length_m = (pair[1].east_m - pair[0].east_m).hypot(pair[1].north_m - pair[0].north_m);
            let (text, middle) = (words.length(length_m), lerp(from, to, 0.5));
            pen.polygon(&plate_ring(middle, kind.width(&text) + 10.0, 17.0, 0.0), colours.sheet);
            pen.text(middle, &text, kind, Anchor::Middle);
        }
    }
    if let [only] = places {
        pen.disc(view.px(*only), 3.5, Some(colours.sheet), Some((2.0, colours.ink)));
    }
    in_theme(pen.ink, view.theme)
}
