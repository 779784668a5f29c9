//! Lengths, turns and area beside what is drawn or dragged, on small plates that never lie on each other.

use plan::Point;
use words::Words;

use crate::ink::{Anchor, Ink, Weight, in_theme};
use crate::inking::blocks::Block;
use crate::inking::pen::{Pen, Type};
use crate::inking::trace::{Px, add, apart, direction, from_the_middle, lerp, right, scaled, toward};
use crate::taken::Taken;
use crate::view::{Distance, View};

/// What is shown of an outline.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shown {
    /// The outline.
    pub outline: Vec<Point>,
    /// Whether it closes.
    pub closed: bool,
    /// The sides whose lengths are shown, by their first corners.
    pub sides: Vec<usize>,
    /// The corners whose turns are shown.
    pub turns: Vec<usize>,
    /// The area, square metres, and the corner beside which it is shown; in the middle where that is `None`.
    pub area: Option<(f64, Option<usize>)>,
    /// Whether the map says its lengths and its area already, where it is near enough.
    pub labelled: bool,
}

/// A side shorter than this has no plate, pixels.
const LEAST_SIDE_PX: f64 = 18.0;
/// Radius of a turn's arc.
const ARC_PX: f64 = 22.0;
/// Side of the square at a corner.
const CORNER_PX: f64 = 10.0;

impl Shown {
    /// The corners of a side; `None` where there is none.
    pub fn side(&self, side: usize) -> Option<[Point; 2]> {
        let count = self.outline.len();
        let end = if self.closed { (side + 1) % count.max(1) } else { side + 1 };
        Some([*self.outline.get(side)?, *self.outline.get(end)?])
    }

    /// How far the line turns at a corner, degrees; `None` where it does not.
    pub fn turn_deg(&self, corner: usize) -> Option<f64> {
        let [before, at, after] = self.around(corner)?;
        let way = |from: Point, to: Point| [to.east_m - from.east_m, to.north_m - from.north_m];
        let (one, other) = (way(before, at), way(at, after));
        let (cross, dot) = (one[0] * other[1] - one[1] * other[0], one[0] * other[0] + one[1] * other[1]);
        (cross != 0.0 || dot != 0.0).then(|| cross.atan2(dot).to_degrees().abs())
    }

    fn around(&self, corner: usize) -> Option<[Point; 3]> {
        let count = self.outline.len();
        if count < 3 || corner >= count || (!self.closed && (corner == 0 || corner + 1 == count)) {
            return None;
        }
        Some([self.outline[(corner + count - 1) % count], self.outline[corner], self.outline[(corner + 1) % count]])
    }
}

/// The plates, clear of what is `taken`, of the corners and of each other; what finds no room is left out.
pub fn ink(view: &View, words: Words, all: &[Shown], mut taken: Taken) -> Vec<Ink> {
    let colours = view.theme.palette();
    for &corner in all.iter().flat_map(|shown| &shown.outline) {
        taken.block(Block::new(view.px(corner), CORNER_PX, CORNER_PX));
    }
    let mut sheet = Sheet {
        pen: Pen::default(),
        taken,
        size: view.size.map(f64::from),
        kind: Type::new(11.0, Weight::Medium, colours.ink),
        view,
    };
    for shown in all {
        if !shown.labelled || view.distance() == Distance::Far {
            sheet.area(shown, words);
            for &side in &shown.sides {
                sheet.side(shown, side, words);
            }
        }
        for &corner in &shown.turns {
            sheet.turn(shown, corner, words);
        }
    }
    in_theme(sheet.pen.ink, view.theme)
}

struct Sheet<'a> {
    pen: Pen,
    taken: Taken,
    size: Px,
    kind: Type,
    view: &'a View,
}

impl Sheet<'_> {
    /// Puts a plate at the first of some places that has room.
    fn plate(&mut self, text: &str, places: impl IntoIterator<Item = Px>) -> bool {
        let Some(middle) = self.taken.room(self.view, self.size_of(text), places) else { return false };
        self.put(middle, text);
        true
    }

    fn size_of(&self, text: &str) -> [f64; 2] {
        [self.kind.width(text) + 10.0, f64::from(self.kind.size) + 6.0]
    }

    fn put(&mut self, middle: Px, text: &str) {
        let [width, height] = self.size_of(text);
        let (ring, colours) = (Block::new(middle, width, height).corners(), self.view.theme.palette());
        self.pen.polygon(&ring, colours.sheet);
        self.pen.ring(&ring, 1.0, colours.rule);
        self.pen.text(middle, text, self.kind, Anchor::Middle);
    }

    fn side(&mut self, shown: &Shown, side: usize, words: Words) {
        let Some(ends) = shown.side(side) else { return };
        let length_m = (ends[1].east_m - ends[0].east_m).hypot(ends[1].north_m - ends[0].north_m);
        let Some([from, to]) = self.seen(ends.map(|at| self.view.px(at))) else { return };
        let (Some(along), true) = (direction(from, to), apart(from, to) >= LEAST_SIDE_PX) else { return };
        let text = words.length(length_m);
        // A plate beside a side is farther off the more it lies along it.
        let half = [self.kind.width(&text) / 2.0 + 5.0, 8.5];
        let across = right(along);
        let off = (half[0] * across[0].abs() + half[1] * across[1].abs()) + 7.0;
        // Beside it, or a plate's height farther off where something stands there.
        let places = [off, off + 20.0].into_iter().flat_map(|off| {
            from_the_middle().flat_map(move |share| {
                let on = lerp(from, to, share);
                [1.0, -1.0].map(|way| toward(on, across, way * off))
            })
        });
        self.plate(&text, places.collect::<Vec<_>>());
    }

    /// The part of a side that is in sight.
    fn seen(&self, [from, to]: [Px; 2]) -> Option<[Px; 2]> {
        let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
        for axis in 0..2 {
            let way = to[axis] - from[axis];
            let (a, b) = ((0.0 - from[axis]) / way, (self.size[axis] - from[axis]) / way);
            if way.abs() < 1e-9 {
                if from[axis] < 0.0 || from[axis] > self.size[axis] {
                    return None;
                }
                continue;
            }
            enter = enter.max(a.min(b));
            leave = leave.min(a.max(b));
        }
        (enter < leave).then(|| [lerp(from, to, enter), lerp(from, to, leave)])
    }

    fn turn(&mut self, shown: &Shown, corner: usize, words: Words) {
        let (Some(turn_deg), Some(around)) = (shown.turn_deg(corner), shown.around(corner)) else { return };
        let [before, at, after] = around.map(|at| self.view.px(at));
        let (Some(on), Some(away)) = (direction(before, at), direction(at, after)) else { return };
        let from_rad = on[1].atan2(on[0]);
        let turn_rad = (on[0] * away[1] - on[1] * away[0]).atan2(on[0] * away[0] + on[1] * away[1]);
        let place = |share: f64, far: f64| {
            let (sine, cosine) = (from_rad + share * turn_rad).sin_cos();
            add(at, [cosine * far, sine * far])
        };
        let text = words.degrees(turn_deg);
        let off = ARC_PX + self.kind.width(&text) / 2.0 + 10.0;
        let near = [place(0.5, off), place(0.3, off + 6.0), place(0.7, off + 6.0), place(0.5, -off)];
        let farther = [0.5, 0.3, 0.7, 0.1, 0.9].map(|share| place(share, off + 22.0));
        let found = self.plate(&text, near.into_iter().chain(farther));
        if found && apart(at, after) > ARC_PX {
            let ink2 = self.view.theme.palette().ink2;
            self.pen.dashed(&[place(0.0, 6.0), place(0.0, ARC_PX + 8.0)], 1.0, ink2, Some([2.0, 3.0]));
            let arc: Vec<Px> = (0..=12).map(|step| place(f64::from(step) / 12.0, ARC_PX)).collect();
            self.pen.line(&arc, 1.0, ink2);
        }
    }

    fn area(&mut self, shown: &Shown, words: Words) {
        let Some((area_m2, beside)) = shown.area else { return };
        let text = words.area(area_m2);
        let count = shown.outline.len() as f64;
        let sum = shown.outline.iter().fold([0.0, 0.0], |sum, &at| add(sum, self.view.px(at)));
        let middle = scaled(sum, 1.0 / count.max(1.0));
        let places = if let Some(&corner) = beside.and_then(|corner| shown.outline.get(corner)) {
            let at = self.view.px(corner);
            // Towards the ground that it is the area of, or aside from there.
            let inward = direction(at, middle).unwrap_or([0.0, 1.0]);
            let aside = right(inward);
            let far = [64.0, 84.0, 104.0, 44.0, 130.0, 160.0];
            let places = [0.0, 40.0, -40.0, 80.0, -80.0];
            places.into_iter().flat_map(|by| far.map(|far| toward(toward(at, inward, far), aside, by))).collect()
        } else {
            let down = [0.0, 24.0, -24.0, 48.0, -48.0];
            let aside = [0.0, 60.0, -60.0, 120.0, -120.0];
            let places = aside.into_iter().flat_map(|aside| down.map(|down| add(middle, [aside, down])));
            places.collect::<Vec<Px>>()
        };
        // There is one, and it is what an outline is drawn for.
        if let Some(middle) = self.taken.room_or_words(self.view, self.size_of(&text), places) {
            self.put(middle, &text);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Shown, ink};
    use crate::ink::Ink;
    use crate::palette::Theme;
    use crate::taken::Taken;
    use crate::view::View;
    use plan::Point;
    use words::Words;

    fn outline(corners: u32, radius_m: f64) -> Shown {
        let at = |corner: u32| {
            let way = std::f64::consts::TAU * f64::from(corner) / f64::from(corners);
            Point::new(radius_m * way.cos(), radius_m * way.sin())
        };
        let all: Vec<usize> = (0..corners as usize).collect();
        Shown {
            outline: (0..corners).map(at).collect(),
            closed: true,
            sides: all.clone(),
            turns: all,
            area: Some((123.0, None)),
            labelled: false,
        }
    }

    /// The plates as they were put down: left, top, right, bottom.
    fn plates(items: &[Ink]) -> Vec<[f32; 4]> {
        let plate = |item: &Ink| match item {
            Ink::Area { rings, .. } => {
                let [x, y] = [0, 1].map(|axis| rings[0].iter().map(move |spot| spot[axis]));
                let low = |of: &mut dyn Iterator<Item = f32>| of.fold(f32::INFINITY, f32::min);
                let high = |of: &mut dyn Iterator<Item = f32>| of.fold(f32::NEG_INFINITY, f32::max);
                Some([low(&mut x.clone()), low(&mut y.clone()), high(&mut x.clone()), high(&mut y.clone())])
            }
            _ => None,
        };
        items.iter().filter_map(plate).collect()
    }

    #[test]
    fn plates_never_lie_on_each_other_nor_on_what_is_taken() {
        let taken = [250.0, 250.0, 350.0, 350.0];
        for (corners, radius_m) in [(4, 20.0), (7, 12.0), (40, 25.0), (90, 4.0)] {
            let view = View::fit(None, [600.0, 600.0], 0.0, Theme::Light);
            let mut there = Taken::default();
            there.take(taken);
            let plates = plates(&ink(&view, Words::default(), &[outline(corners, radius_m)], there));
            let apart = |one: &[f32; 4], other: &[f32; 4]| {
                one[2] <= other[0] || other[2] <= one[0] || one[3] <= other[1] || other[3] <= one[1]
            };
            assert!(corners > 40 || plates.len() > 6, "{corners} corners: {} plates", plates.len());
            for (index, one) in plates.iter().enumerate() {
                assert!(apart(one, &taken), "{one:?}");
                assert!(one[0] >= 0.0 && one[1] >= 0.0 && one[2] <= 600.0 && one[3] <= 600.0, "{one:?}");
                assert!(plates[index + 1..].iter().all(|other| apart(one, other)), "{corners}: {one:?}");
            }
        }
    }

    #[test]
    fn lengths_and_turns_are_those_of_the_outline() {
        let view = View::fit(None, [900.0, 900.0], 0.0, Theme::Light);
        let square = outline(4, 20.0);
        let texts: Vec<String> = ink(&view, Words::default(), &[square], Taken::default())
            .into_iter()
            .filter_map(|item| match item {
                Ink::Text { text, .. } => Some(text),
                _ => None,
            })
            .collect();
        // A square on a diagonal of 40 m has sides of 28.28 m.
        assert_eq!(texts.iter().filter(|text| *text == "28.3 m").count(), 4, "{texts:?}");
        assert_eq!(texts.iter().filter(|text| *text == "90°").count(), 4, "{texts:?}");
        assert_eq!(texts.iter().filter(|text| *text == "123 m²").count(), 1, "{texts:?}");
    }

    #[test]
    fn an_open_line_does_not_turn_at_its_ends() {
        let open = Shown { closed: false, ..outline(5, 10.0) };
        assert_eq!((open.turn_deg(0), open.turn_deg(4)), (None, None));
        assert!((open.turn_deg(2).unwrap() - 72.0).abs() < 1e-9);
        assert_eq!(open.side(4), None);
    }
}
