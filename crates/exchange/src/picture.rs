//! The map as a picture: its ink with scale bar, north and the key of volts.

use drawing::{Colour, Ink, Scene, Theme, View, furniture};

/// Margin round the map, pixels.
const MARGIN_PX: f32 = 56.0;
/// Between scale, north and key and the edges, pixels.
const EDGE_PX: f32 = 20.0;

/// Ink of the whole map and its background, for a picture of that size.
pub fn map(scene: &Scene<'_>, size: [f32; 2], theme: Theme) -> (Vec<Ink>, Colour) {
    let drawing = drawing::map(scene);
    let target_kv = scene.plan.target_kv();
    let key = furniture::key_size(scene.words, target_kv, false);
    let kept = furniture::kept(size, EDGE_PX, EDGE_PX, Some(key), &[]);
    let view = View { kept, ..View::fit(drawing.bounds(), size, MARGIN_PX, theme) };
    let [right, foot] = size.map(|side| side - EDGE_PX);
    let mut ink = drawing.ink(&view);
    ink.extend(furniture::scale_bar(&view, scene.words, [right - 40.0, foot]));
    ink.extend(furniture::north(theme, scene.words, [right, foot]));
    ink.extend(furniture::volts_key(theme, scene.words, target_kv, [right, EDGE_PX]));
    (ink, theme.palette().paper)
}
