//! The window's icon: the mark of the house on a plate with a cut corner.

use drawing::{Colour, Theme};
use tiny_skia::{Color, FillRule, LineJoin, Paint, PathBuilder, Pixmap, Stroke, Transform};

use crate::icons::{MARK, MARK_LINE, MARK_POST};

/// Its side, pixels.
const SIDE: u32 = 128;
/// The mark's box, and the plate round it.
const BOX: f32 = 24.0;

/// The icon's pixels.
pub(crate) fn icon() -> egui::IconData {
    let scale = SIDE as f32 / (BOX + 8.0);
    let mut pixmap = Pixmap::new(SIDE, SIDE).expect("a square of some pixels");
    draw(&mut pixmap, Transform::from_translate(4.0, 4.0).post_scale(scale, scale))
        .expect("the mark's paths are finite");
    let rgba = pixmap
        .pixels()
        .iter()
        .flat_map(|pixel| {
            let pixel = pixel.demultiply();
            [pixel.red(), pixel.green(), pixel.blue(), pixel.alpha()]
        })
        .collect();
    egui::IconData { rgba, width: SIDE, height: SIDE }
}

fn paint([red, green, blue, opacity]: Colour) -> Paint<'static> {
    let mut paint = Paint { anti_alias: true, ..Paint::default() };
    paint.set_color(Color::from_rgba8(red, green, blue, opacity));
    paint
}

fn draw(pixmap: &mut Pixmap, to_pixels: Transform) -> Option<()> {
    let p = Theme::Light.palette();
    let mut plate = PathBuilder::new();
    for (index, (x, y)) in [(-3.0, -3.0), (21.0, -3.0), (27.0, 3.0), (27.0, 27.0), (-3.0, 27.0)].into_iter().enumerate()
    {
        if index == 0 { plate.move_to(x, y) } else { plate.line_to(x, y) }
    }
    plate.close();
    let plate = plate.finish()?;
    pixmap.fill_path(&plate, &paint(p.sheet), FillRule::Winding, to_pixels, None);
    let edge = Stroke { width: 1.25, line_join: LineJoin::Miter, ..Stroke::default() };
    pixmap.stroke_path(&plate, &paint(p.ink), &edge, to_pixels, None);
    let mut line = PathBuilder::new();
    for (index, [x, y]) in MARK.into_iter().enumerate() {
        if index == 0 { line.move_to(x, y) } else { line.line_to(x, y) }
    }
    let pen = Stroke { width: MARK_LINE, ..Stroke::default() };
    pixmap.stroke_path(&line.finish()?, &paint(p.ink), &pen, to_pixels, None);
    for [x, y] in MARK {
        let post = PathBuilder::from_circle(x, y, MARK_POST)?;
        pixmap.fill_path(&post, &paint(p.ink), FillRule::Winding, to_pixels, None);
    }
    Some(())
}

#[cfg(test)]
mod tests {
    #[test]
    fn the_icon_has_its_pixels() {
        let icon = super::icon();
        assert_eq!(icon.rgba.len(), (icon.width * icon.height * 4) as usize);
        let inked = icon.rgba.chunks_exact(4).filter(|pixel| pixel[3] == 255 && pixel[0] < 80).count();
        assert!(inked > 500, "{inked} pixels of ink");
    }
}
