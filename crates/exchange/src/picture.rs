//! The map as a picture: its ink with scale bar, north and the key of volts.

use drawing::{Colour, Ink, Scene, Theme, View, furniture};

/// Margin round the map, pixels.
const MARGIN_PX: f32 = 56.0;

/// Ink of the whole map and its background, for a picture of that size.
pub fn map(scene: &Scene<'_>, size: [f32; 2], theme: Theme) -> (Vec<Ink>, Colour) {
    let drawing = drawing::map(scene);
    let view = View::fit(drawing.bounds(), size, MARGIN_PX, theme);
    let mut ink = drawing.ink(&view);
    ink.extend(furniture::scale_bar(&view, scene.words, [size[0] - 72.0, size[1] - 20.0]));
    ink.extend(furniture::north(theme, scene.words, [size[0] - 20.0, size[1] - 20.0]));
    ink.extend(furniture::volts_key(theme, scene.words, scene.plan.target_kv(), [size[0] - 20.0, 20.0]));
    (ink, theme.palette().paper)
}
