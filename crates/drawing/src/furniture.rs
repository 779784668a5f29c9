//! What lies on the map but belongs to the sheet: scale bar, north and the key of volts, each on a plate.

use words::texts::Map as Text;
use words::{METRES_PER_FOOT, Words};

use crate::ink::{Anchor, Ink, Spot, Weight};
use crate::inking::net::NetStyle;
use crate::inking::pen::{Pen, Type, plate_ring};
use crate::inking::trace::{Knot, Px, add};
use crate::palette::{Palette, Theme};
use crate::view::{Distance, View};

/// Longest scale bar, pixels: with its figures, its unit and the north arrow it fits into [`SCALE_PX`].
const LONGEST_BAR_PX: f64 = 170.0;
/// Length of the key of volts, pixels.
const KEY_PX: f64 = 176.0;
/// Height of the plates of scale bar and north.
pub const PLATE_PX: f64 = 44.0;
/// Width that scale bar and north take together, at most.
pub const SCALE_PX: f32 = 260.0;
/// Height of the key of volts.
const VOLTS_KEY_PX: f32 = 59.0;
/// Height of the line below it that tells where earth stakes would earth best.
const EARTH_KEY_PX: f32 = 32.0;
/// So near to a spot its handle reaches.
const HANDLE_PX: f32 = 8.0;
/// Room between a plate's edge and what lies on it.
const MARGIN_PX: f64 = 8.0;

/// Which parts of a view the furniture takes: scale bar and north at the lower right, a key of that size, where there
/// is one, at the upper right, or over the scale bar where it covers fewer of the spots that are to stay free; `right` and
/// `foot` are the plates' distances from the edges.
pub fn kept(size: [f32; 2], right: f32, foot: f32, key: Option<[f32; 2]>, free: &[Spot]) -> [Option<[f32; 4]>; 2] {
    let [width, height] = size;
    let scale = [width - right - SCALE_PX, height - foot - PLATE_PX as f32, width - right, height - foot];
    let key = key.map(|[wide, high]| {
        let at = |top: f32| [width - right - wide, top, width - right, top + high];
        let covers = |&[left, top, right, foot]: &[f32; 4]| {
            let [across, down] = [left - HANDLE_PX..=right + HANDLE_PX, top - HANDLE_PX..=foot + HANDLE_PX];
            free.iter().filter(|[x, y]| across.contains(x) && down.contains(y)).count()
        };
        let [upper, lower] = [at(right), at(scale[1] - MARGIN_PX as f32 - high)];
        if covers(&lower) < covers(&upper) { lower } else { upper }
    });
    [Some(scale), key]
}

/// How wide and how high the key is: of volts up to twice a target, kilovolts, and below it, where that is told, the line
/// on where earth stakes would earth best.
pub fn key_size(words: Words, target_kv: f64, tells_earth: bool) -> [f32; 2] {
    if tells_earth {
        [earth_key_px(words, target_kv) as f32, VOLTS_KEY_PX + EARTH_KEY_PX]
    } else {
        [volts_key_px(words, target_kv) as f32, VOLTS_KEY_PX]
    }
}

/// The letters of the key.
fn key_type(colours: &Palette) -> Type {
    Type::new(11.0, Weight::Medium, colours.ink)
}

/// The last figure of the key of volts, and how far it and the unit reach beyond the colours.
fn key_end(words: Words, target_kv: f64) -> (String, f64) {
    let most_kv = 2.0 * target_kv;
    let last = words.number(most_kv, usize::from((most_kv - most_kv.round()).abs() > 1e-6));
    let kind = key_type(Theme::Light.palette());
    let after = kind.width(&last) / 2.0 + 4.0 + kind.width(words.text(Text::Kilovolts));
    (last, after)
}

/// Width of the plate of the key of volts.
fn volts_key_px(words: Words, target_kv: f64) -> f64 {
    KEY_PX + key_end(words, target_kv).1 + 2.0 * MARGIN_PX + 4.0
}

/// Width of the plate of the line below it: that of the key of volts, where its words are no longer.
fn earth_key_px(words: Words, target_kv: f64) -> f64 {
    let text = key_type(Theme::Light.palette()).width(words.text(Text::EarthBest));
    (text + 2.0 * MARGIN_PX + 28.0).max(volts_key_px(words, target_kv))
}

/// The scale bar on a plate whose lower right corner is at a spot: the longest round length that stays short.
pub fn scale_bar(view: &View, words: Words, corner: Spot) -> Vec<Ink> {
    let (unit_m, unit) = match words.units {
        words::Units::Metric => (1.0, "m"),
        words::Units::Feet => (METRES_PER_FOOT, "ft"),
    };
    let unit_px = unit_m * view.px_per_m;
    if !(unit_px > 0.0 && unit_px.is_finite()) {
        return Vec::new();
    }
    let round = round_below(LONGEST_BAR_PX / unit_px);
    let bar = round * unit_px;
    let colours = view.theme.palette();
    let kind = Type::new(11.0, Weight::Medium, colours.ink);
    let decimals = (-(round / 2.0).log10().floor()).clamp(0.0, 3.0) as usize;
    let figure = |share: f64| words.number(round * share, decimals_of(round * share, decimals));
    let last = figure(1.0);
    let last_half = kind.width(&last) / 2.0;
    let unit_width = kind.width(unit) + 4.0;
    let [right, foot] = corner.map(f64::from);
    let end = right - MARGIN_PX - last_half - unit_width;
    let (start, axis) = (end - bar, foot - MARGIN_PX - 5.0);
    let mut pen = Pen::default();
    let (left, top) = (start - MARGIN_PX - 4.0, foot - PLATE_PX);
    plate(&mut pen, colours, [left, top], [right, foot]);
    for part in 0..4 {
        let from = start + bar * f64::from(part) / 4.0;
        let middle = [from + bar / 8.0, axis];
        let fill = if part % 2 == 0 { colours.ink } else { colours.sheet };
        pen.polygon(&plate_ring(middle, bar / 4.0, 4.0, 0.0), fill);
    }
    pen.ring(&plate_ring([start + bar / 2.0, axis], bar, 4.0, 0.0), 1.0, colours.ink);
    for (share, text) in [(0.0, "0".to_owned()), (0.5, figure(0.5)), (1.0, last)] {
        pen.text([start + bar * share, axis - 12.0], &text, kind, Anchor::Middle);
    }
    pen.text([end + last_half + 4.0, axis - 12.0], unit, kind, Anchor::Start);
    pen.ink
}

/// The fewest decimals, of no more than so many, that say a number as well: a round half of a round length needs none.
fn decimals_of(number: f64, most: usize) -> usize {
    let left = |decimals: usize| {
        let scaled = number * 10_f64.powf(decimals as f64);
        (scaled - scaled.round()).abs()
    };
    (0..most).find(|&decimals| left(decimals) < 1e-6).unwrap_or(most)
}

/// The greatest of 1, 2 and 5 times a power of ten that is no more than a number.
fn round_below(number: f64) -> f64 {
    let decade = 10_f64.powf(number.log10().floor());
    [5.0, 2.0, 1.0]
        .into_iter()
        .map(|lead| lead * decade)
        .find(|&round| round <= number * (1.0 + 1e-9))
        .unwrap_or(decade)
}

/// The north arrow on a plate whose lower right corner is at a spot: north is up.
pub fn north(theme: Theme, words: Words, corner: Spot) -> Vec<Ink> {
    let colours = theme.palette();
    let [right, foot] = corner.map(f64::from);
    let mut pen = Pen::default();
    plate(&mut pen, colours, [right - 28.0, foot - PLATE_PX], [right, foot]);
    let middle = right - 14.0;
    let (top, base, notch) = (foot - 38.5, foot - 18.5, foot - 22.5);
    let arrow: [Px; 4] = [[middle, top], [middle + 5.5, base], [middle, notch], [middle - 5.5, base]];
    pen.polygon(&arrow, colours.sheet);
    pen.polygon(&[[middle, top], [middle, notch], [middle - 5.5, base]], colours.ink);
    pen.ring(&arrow, 1.0, colours.ink);
    let kind = Type::new(11.0, Weight::SemiBold, colours.ink);
    pen.text([middle, foot - 10.0], words.text(Text::North), kind, Anchor::Middle);
    pen.ink
}

/// The key of the volts' colours on a plate whose upper right corner is at a spot: the net itself, swelling, from
/// 0 to twice a target, kilovolts.
pub fn volts_key(theme: Theme, words: Words, target_kv: f64, corner: Spot) -> Vec<Ink> {
    if !(target_kv > 0.0 && target_kv.is_finite()) {
        return Vec::new();
    }
    let colours = theme.palette();
    let kind = key_type(colours);
    let most_kv = 2.0 * target_kv;
    let step_kv = round_below(most_kv / 4.0).max(most_kv / 8.0);
    let decimals = usize::from((step_kv - step_kv.round()).abs() > 1e-6);
    let unit = words.text(Text::Kilovolts);
    let (last, after) = key_end(words, target_kv);
    let [right, top] = corner.map(f64::from);
    let end = right - MARGIN_PX - after;
    let start = end - KEY_PX;
    let axis = top + MARGIN_PX + 5.0;
    let mut pen = Pen::default();
    plate(&mut pen, colours, [right - volts_key_px(words, target_kv), top], [right, axis + 46.0]);
    let style = NetStyle::new(theme, Distance::Near, target_kv, false);
    style.draw(&mut pen, &[Knot { at: [start, axis], kv: 0.0 }, Knot { at: [end, axis], kv: most_kv }], false, true);
    let x = |kv: f64| start + KEY_PX * kv / most_kv;
    let mut tick = |kv: f64, long: bool| {
        let at = [x(kv), axis + 8.0];
        let colour = if long { colours.ink } else { colours.ink2 };
        pen.line(&[at, add(at, [0.0, if long { 6.0 } else { 3.0 }])], if long { 1.5 } else { 1.0 }, colour);
    };
    let steps = (most_kv / step_kv - 1e-6).floor() as u32;
    for step in 0..=steps {
        tick(f64::from(step) * step_kv, false);
    }
    tick(most_kv, false);
    tick(target_kv, true);
    let mut taken: Vec<(f64, f64)> = Vec::new();
    let mut figure = |kv: f64, text: String| {
        let half = kind.width(&text) / 2.0 + 2.0;
        if taken.iter().all(|&(from, to)| x(kv) + half < from || x(kv) - half > to) {
            taken.push((x(kv) - half, x(kv) + half));
            pen.text([x(kv), axis + 21.0], &text, kind, Anchor::Middle);
        }
    };
    figure(most_kv, last);
    let target_decimals = usize::from((target_kv - target_kv.round()).abs() > 1e-6);
    figure(target_kv, words.number(target_kv, target_decimals));
    for step in 0..=steps {
        let kv = f64::from(step) * step_kv;
        figure(kv, words.number(kv, if step == 0 { 0 } else { decimals }));
    }
    pen.text([end + after, axis + 21.0], unit, kind, Anchor::End);
    let second = Type::new(11.0, Weight::Regular, colours.ink2);
    pen.text([x(target_kv), axis + 36.0], words.text(Text::Target), second, Anchor::Middle);
    pen.ink
}

/// The line of the key that tells where earth stakes would earth best, on a plate whose upper right corner is at a spot.
pub fn earth_key(theme: Theme, words: Words, target_kv: f64, corner: Spot) -> Vec<Ink> {
    let colours = theme.palette();
    let kind = key_type(colours);
    let text = words.text(Text::EarthBest);
    let [right, top] = corner.map(f64::from);
    let foot = top + f64::from(EARTH_KEY_PX);
    let left = right - earth_key_px(words, target_kv);
    let mut pen = Pen::default();
    plate(&mut pen, colours, [left, top], [right, foot]);
    let middle = f64::midpoint(top, foot);
    pen.earth_best(colours, [left + MARGIN_PX + 12.0, middle + 2.5], 0.8);
    pen.text([left + MARGIN_PX + 28.0, middle], text, kind, Anchor::Start);
    pen.ink
}

/// A plain plate: what lies under it does not show through.
fn plate(pen: &mut Pen, colours: &Palette, low: Px, high: Px) {
    pen.polygon(&[low, [high[0], low[1]], high, [low[0], high[1]]], colours.sheet);
}

#[cfg(test)]
mod tests {
    use super::{earth_key, kept, key_size, north, round_below, scale_bar, volts_key};
    use crate::ink::Ink;
    use crate::palette::Theme;
    use crate::view::View;
    use words::{Language, Units, Words};

    #[test]
    fn a_scale_bar_says_its_figures_in_every_language() {
        for (px_per_m, language, want) in [
            (80.0, Language::English, ["0", "1", "2", "m"]),
            (150.0, Language::English, ["0", "0.5", "1", "m"]),
            (150.0, Language::German, ["0", "0,5", "1", "m"]),
            (800.0, Language::German, ["0", "0,1", "0,2", "m"]),
            (0.08, Language::English, ["0", "1,000", "2,000", "m"]),
            (0.08, Language::German, ["0", "1.000", "2.000", "m"]),
            (0.02, Language::German, ["0", "2.500", "5.000", "m"]),
        ] {
            let view = View { px_per_m, ..View::fit(None, [600.0, 600.0], 0.0, Theme::Light) };
            let ink = scale_bar(&view, Words { language, ..Words::default() }, [580.0, 580.0]);
            let texts: Vec<&str> = ink
                .iter()
                .filter_map(|item| match item {
                    Ink::Text { text, .. } => Some(text.as_str()),
                    _ => None,
                })
                .collect();
            assert_eq!(texts, want, "{px_per_m} pixels a metre");
        }
    }

    #[test]
    fn scale_bar_and_north_lie_on_what_is_kept_for_them_at_every_scale() {
        let size = [900.0, 600.0];
        let [left, top, right, foot] = kept(size, 20.0, 16.0, None, &[])[0].unwrap();
        for language in [Language::English, Language::German] {
            for units in [Units::Metric, Units::Feet] {
                let words = Words { language, units };
                let scales = (0..400).map(|step| 0.02 * 1.025_f64.powi(step));
                for px_per_m in scales.filter(|&scale| scale < 400.0) {
                    let view = View { px_per_m, ..View::fit(None, size, 0.0, Theme::Light) };
                    let mut ink = scale_bar(&view, words, [right - 40.0, foot]);
                    ink.extend(north(Theme::Light, words, [right, foot]));
                    let plates = ink.iter().filter_map(|item| match item {
                        Ink::Area { rings, .. } => Some(rings.concat()),
                        _ => None,
                    });
                    for [x, y] in plates.flatten() {
                        assert!(x >= left && x <= right && y >= top && y <= foot, "{px_per_m} {units:?}: {x}, {y}");
                    }
                }
            }
        }
    }

    #[test]
    fn what_the_key_keeps_is_all_that_it_draws_on() {
        let size = [900.0, 600.0];
        let right = 20.0;
        for language in [Language::English, Language::German] {
            let words = Words { language, ..Words::default() };
            for (target_kv, tells_earth) in [(4.0, false), (4.0, true), (5.25, false), (5.25, true), (12.25, false)] {
                let mut ink = volts_key(Theme::Light, words, target_kv, [size[0] - right, right]);
                if tells_earth {
                    let below = right + key_size(words, target_kv, false)[1];
                    ink.extend(earth_key(Theme::Light, words, target_kv, [size[0] - right, below]));
                }
                let key = key_size(words, target_kv, tells_earth);
                let [left, top, end, foot] = kept(size, right, right, Some(key), &[])[1].unwrap();
                let drawn = ink.iter().filter_map(|item| match item {
                    Ink::Area { rings, .. } => Some(rings.concat()),
                    _ => None,
                });
                let (mut leftmost, mut lowest) = (f32::INFINITY, 0.0_f32);
                for [x, y] in drawn.flatten() {
                    assert!(x >= left - 0.01 && x <= end + 0.01 && y >= top - 0.01 && y <= foot + 0.01, "{language:?}");
                    (leftmost, lowest) = (leftmost.min(x), lowest.max(y));
                }
                // No more than it draws on, either.
                assert!((leftmost - left).abs() < 0.01 && (lowest - foot).abs() < 0.01, "{language:?} {target_kv}");
            }
        }
    }

    #[test]
    fn the_key_makes_way_for_spots_that_are_to_stay_free() {
        let place = |free: &[[f32; 2]]| kept([900.0, 600.0], 20.0, 16.0, Some([220.0, 59.0]), free)[1].unwrap();
        let (upper, lower) = (place(&[]), place(&[[700.0, 50.0]]));
        assert_eq!(upper, [660.0, 20.0, 880.0, 79.0]);
        // Over the scale bar, clear of it.
        assert_eq!((lower[0], lower[2]), (upper[0], upper[2]));
        assert!(lower[1] > 400.0 && lower[3] < 600.0 - 16.0 - 44.0, "{lower:?}");
        // A handle reaches beyond its spot; what is far off makes no odds, and of two evils the first.
        assert_eq!(place(&[[700.0, 84.0]]), lower);
        assert_eq!(place(&[[300.0, 50.0], [700.0, 300.0]]), upper);
        assert_eq!(place(&[[700.0, 50.0], [700.0, lower[1] + 9.0]]), upper);
    }

    #[test]
    fn round_lengths_are_the_longest_that_fit() {
        for (number, want) in [(200.0, 200.0), (199.0, 100.0), (0.07, 0.05), (5.0, 5.0), (49.9, 20.0)] {
            assert!((round_below(number) - want).abs() < 1e-9, "{number}");
        }
    }
}
