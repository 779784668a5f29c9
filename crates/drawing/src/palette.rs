//! Every colour, by role, for each theme; and the scale of volts.
//!
//! No other file names a colour. Contrast against the grounds is measured by a test: 4.5 for text, 3 for
//! marks (WCAG 2.2); in high contrast 7 and 4.5. The volts' scale is cividis, which is perceptually even and reads alike for
//! colour-blind eyes (Nuñez, Anderton and Renslow, PLOS ONE 13(7), 2018).

/// Red, green, blue, opacity; sRGB, not premultiplied.
pub type Colour = [u8; 4];

/// A theme.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Theme {
    /// Ink on paper.
    #[default]
    Light,
    /// The same by lamp light.
    Dark,
    /// White on black with heavier strokes, for eyes that need it.
    Contrast,
    /// Ink on white paper, for print.
    Print,
}

impl Theme {
    /// Those of a screen, in the order in which they are offered.
    pub const OF_SCREENS: [Self; 3] = [Self::Light, Self::Dark, Self::Contrast];
}

/// The colours of one theme, by role.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Palette {
    /// The page and everything that lies on it.
    pub sheet: Colour,
    /// Ground of the map beyond the paddock, and the head.
    pub paper: Colour,
    /// The paddock.
    pub grass: Colour,
    /// Ground inside a run.
    pub run: Colour,
    /// The mown strip.
    pub strip: Colour,
    /// Edge of the mown strip; ornament only.
    pub strip_edge: Colour,
    /// Water.
    pub water: Colour,
    /// Text, posts.
    pub ink: Colour,
    /// Second text, public way.
    pub ink2: Colour,
    /// Borders, ruling.
    pub rule: Colour,
    /// Ornament only.
    pub hairline: Colour,
    /// Tufts of grass; ornament only.
    pub tuft: Colour,
    /// Edge of the net.
    pub edge: Colour,
    /// Between the dashes of a core whose volts are low, which are dark in every theme.
    pub dash_gap: Colour,
    /// Picked, links, notes.
    pub pick: Colour,
    /// Fill of what is picked.
    pub picked_row: Colour,
    /// Hazards, limits.
    pub danger: Colour,
    /// Next runs.
    pub ghost: Colour,
    /// Fill of next runs.
    pub ghost_fill: Colour,
    /// The target line.
    pub green: Colour,
    /// Edge of water.
    pub water_edge: Colour,
    /// Fill of a hedge.
    pub hedge: Colour,
    /// Edge of a hedge and of shade.
    pub hedge_edge: Colour,
    /// Laid over ground in shade.
    pub shade: Colour,
    /// Laid over ground that is out of reach.
    pub screen: Colour,
    /// Its ruling; ornament only.
    pub screen_rule: Colour,
    /// Fill of a danger tag.
    pub danger_fill: Colour,
    /// Strokes on a danger tag.
    pub danger_stroke: Colour,
    /// Fill of a warning tag.
    pub warning_fill: Colour,
    /// Strokes on a warning tag.
    pub warning_stroke: Colour,
}

const fn hex(rgb: u32) -> Colour {
    [(rgb >> 16) as u8, (rgb >> 8) as u8, rgb as u8, 255]
}

const fn half_clear(rgb: u32) -> Colour {
    [(rgb >> 16) as u8, (rgb >> 8) as u8, rgb as u8, 128]
}

const LIGHT: Palette = Palette {
    sheet: hex(0xFBF8F1),
    paper: hex(0xF1EBDD),
    grass: hex(0xE3E6D0),
    run: hex(0xD9E0C1),
    strip: hex(0xF4EFCB),
    strip_edge: hex(0xD8CE9C),
    water: hex(0xCBDDE4),
    ink: hex(0x26221B),
    ink2: hex(0x5A5346),
    rule: hex(0x7D735F),
    hairline: hex(0xD9D0BD),
    tuft: hex(0xC6CCB0),
    edge: hex(0x26221B),
    dash_gap: hex(0xFBF8F1),
    pick: hex(0x00629B),
    picked_row: hex(0xD6E6EF),
    danger: hex(0x9E4100),
    ghost: hex(0x84406B),
    ghost_fill: half_clear(0xE6D3DC),
    green: hex(0x00694D),
    water_edge: hex(0x2B6A88),
    hedge: hex(0xA9BB97),
    hedge_edge: hex(0x4F6B45),
    shade: [0xB0, 0xCC, 0x94, 40],
    screen: [0xB9, 0xAF, 0x98, 107],
    screen_rule: [0x8F, 0x85, 0x70, 150],
    danger_fill: hex(0xD55E00),
    danger_stroke: hex(0xFBF8F1),
    warning_fill: hex(0xE69F00),
    warning_stroke: hex(0x26221B),
};

const DARK: Palette = Palette {
    sheet: hex(0x22201B),
    paper: hex(0x191814),
    grass: hex(0x262A1F),
    run: hex(0x2E3425),
    strip: hex(0x3D3B27),
    strip_edge: hex(0x555032),
    water: hex(0x1F3540),
    ink: hex(0xF0EADC),
    ink2: hex(0xB9B09D),
    rule: hex(0x938A76),
    hairline: hex(0x3A362D),
    tuft: hex(0x3B4231),
    edge: hex(0xCFC6B2),
    dash_gap: hex(0xCFC6B2),
    pick: hex(0x56B4E9),
    picked_row: hex(0x1C3442),
    danger: hex(0xF08A3C),
    ghost: hex(0xDE9DC1),
    ghost_fill: half_clear(0x46323F),
    green: hex(0x3DBF98),
    water_edge: hex(0x7FBBD8),
    hedge: hex(0x3B4D33),
    hedge_edge: hex(0x8FAE80),
    shade: [0x0B, 0x12, 0x08, 110],
    screen: [0x0C, 0x0B, 0x09, 140],
    screen_rule: [0x6E, 0x67, 0x57, 170],
    danger_fill: hex(0xD55E00),
    danger_stroke: hex(0xF0EADC),
    warning_fill: hex(0xE69F00),
    warning_stroke: hex(0x22201B),
};

const CONTRAST: Palette = Palette {
    sheet: hex(0x000000),
    paper: hex(0x000000),
    grass: hex(0x000000),
    run: hex(0x0E120A),
    strip: hex(0x262300),
    strip_edge: hex(0x8A7F3A),
    water: hex(0x001A28),
    ink: hex(0xFFFFFF),
    ink2: hex(0xE2DED4),
    rule: hex(0xFFFFFF),
    hairline: hex(0x6A665C),
    tuft: hex(0x000000),
    edge: hex(0xFFFFFF),
    dash_gap: hex(0xFFFFFF),
    pick: hex(0x6CCBFF),
    picked_row: hex(0x00263D),
    danger: hex(0xFFA763),
    ghost: hex(0xFFB6DE),
    ghost_fill: half_clear(0x3A2433),
    green: hex(0x62E2BC),
    water_edge: hex(0x8FD3F5),
    hedge: hex(0x24381C),
    hedge_edge: hex(0xB7E3A3),
    shade: half_clear(0x24381C),
    screen: [0x30, 0x30, 0x30, 150],
    screen_rule: [0x9A, 0x9A, 0x9A, 255],
    danger_fill: hex(0xB84A00),
    danger_stroke: hex(0xFFFFFF),
    warning_fill: hex(0xE69F00),
    warning_stroke: hex(0x000000),
};

const PRINT: Palette = Palette {
    sheet: hex(0xFFFFFF),
    paper: hex(0xFFFFFF),
    grass: hex(0xFFFFFF),
    run: hex(0xFFFFFF),
    strip: hex(0xEEEEE6),
    strip_edge: hex(0xB0B0A8),
    water: hex(0xE6ECEF),
    ink: hex(0x000000),
    ink2: hex(0x404040),
    rule: hex(0x606060),
    hairline: hex(0xC8C8C8),
    tuft: hex(0xC8C8C8),
    edge: hex(0x000000),
    dash_gap: hex(0xFFFFFF),
    pick: hex(0x000000),
    picked_row: hex(0xEEEEEE),
    danger: hex(0x000000),
    ghost: hex(0x404040),
    ghost_fill: half_clear(0xEEEEEE),
    green: hex(0x000000),
    water_edge: hex(0x303030),
    hedge: hex(0xE0E6DA),
    hedge_edge: hex(0x404040),
    shade: half_clear(0xE0E6DA),
    screen: [0xE4, 0xE4, 0xE4, 128],
    screen_rule: [0xB0, 0xB0, 0xB0, 255],
    danger_fill: hex(0xFFFFFF),
    danger_stroke: hex(0x000000),
    warning_fill: hex(0xFFFFFF),
    warning_stroke: hex(0x000000),
};

impl Theme {
    /// The colours of this theme.
    pub const fn palette(self) -> &'static Palette {
        match self {
            Self::Light => &LIGHT,
            Self::Dark => &DARK,
            Self::Contrast => &CONTRAST,
            Self::Print => &PRINT,
        }
    }
}

/// Cividis at the places, of 255, between which it is all but straight: within 2 of 255 of the published table.
const CIVIDIS: [(f64, u32); 13] = [
    (0.0, 0x00224E),
    (20.0, 0x003070),
    (23.0, 0x013271),
    (29.0, 0x143670),
    (42.0, 0x2A3F6D),
    (74.0, 0x4D556C),
    (119.0, 0x757575),
    (138.0, 0x868379),
    (181.0, 0xB0A571),
    (216.0, 0xD5C25E),
    (239.0, 0xEFD748),
    (252.0, 0xFEE434),
    (255.0, 0xFEE838),
];

/// Colour of a voltage, kilovolts: cividis from 0 to twice the target, so that its grey middle lies on the target.
///
/// What lies beyond is held at the ends; without a sound figure the colour is that of 0 kV.
pub fn volts(kv: f64, target_kv: f64) -> Colour {
    let share = kv / (2.0 * target_kv);
    let step = if share.is_finite() { share.clamp(0.0, 1.0) * 255.0 } else { 0.0 };
    let next = CIVIDIS.iter().position(|&(place, _)| place >= step).unwrap_or(CIVIDIS.len() - 1).max(1);
    let ((before, from), (after, to)) = (CIVIDIS[next - 1], CIVIDIS[next]);
    let (from, to) = (hex(from), hex(to));
    let part = (step - before) / (after - before);
    let blend = |index: usize| {
        let (from, to) = (f64::from(from[index]), f64::from(to[index]));
        (from + (to - from) * part).round() as u8
    };
    [blend(0), blend(1), blend(2), 255]
}

/// The same colour, half clear.
pub const fn half([red, green, blue, _]: Colour) -> Colour {
    [red, green, blue, 128]
}

/// Halfway between two colours: what a half clear colour looks like on a ground, without seams where it overlaps.
pub fn blended(colour: Colour, ground: Colour) -> Colour {
    std::array::from_fn(|part| colour[part].midpoint(ground[part]))
}

#[cfg(test)]
mod tests {
    use super::{Colour, volts};

    /// Relative luminance (WCAG 2.2).
    fn luminance(colour: Colour) -> f64 {
        let part = |index: usize| {
            let share = f64::from(colour[index]) / 255.0;
            if share <= 0.04045 { share / 12.92 } else { ((share + 0.055) / 1.055).powf(2.4) }
        };
        0.2126 * part(0) + 0.7152 * part(1) + 0.0722 * part(2)
    }

    #[test]
    fn more_volts_are_always_lighter() {
        let mut last = -1.0;
        for step in 0..=96 {
            let here = luminance(volts(8.0 * f64::from(step) / 96.0, 4.0));
            assert!(here > last, "step {step}: {here} after {last}");
            last = here;
        }
    }

    #[test]
    fn the_scale_is_cividis_about_the_target() {
        // Places of 255 in the published table of 256 colours (Nuñez, Anderton and Renslow, 2018, data S1 as matplotlib
        // carries it), 0 to 255 each.
        for (place, want) in [
            (0.0, [0, 34, 78]),
            (64.0, [67, 78, 108]),
            (127.5, [125, 124, 120]),
            (191.0, [187, 173, 108]),
            (255.0, [254, 232, 56]),
        ] {
            let got = volts(2.0 * 3.0 * place / 255.0, 3.0);
            for part in 0..3 {
                assert!((i32::from(got[part]) - want[part]).abs() <= 2, "{place}: {got:?}, table {want:?}");
            }
        }
        assert_eq!(volts(99.0, 4.0), volts(8.0, 4.0));
        assert_eq!(volts(-1.0, 4.0), volts(0.0, 4.0));
        assert_eq!(volts(f64::NAN, 4.0), volts(0.0, 4.0));
        assert_eq!(volts(3.0, 0.0), volts(0.0, 4.0));
    }
}
