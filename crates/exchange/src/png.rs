//! The PNG pen: ink as pixels (PNG, ISO/IEC 15948).
//!
//! Letters are drawn from the outlines of the bundled font, without kerning, as [`drawing::letters`] measures
//! them. The same ink gives the same bytes.

use drawing::letters::BASELINE;
use drawing::{Anchor, Colour, Ink, Spot, Weight};
use tiny_skia::{Color, FillRule, LineJoin, Paint, Path, PathBuilder, Pixmap, Stroke, StrokeDash, Transform};
use ttf_parser::{Face, GlyphId, OutlineBuilder};

const REGULAR: &[u8] = include_bytes!("../../../assets/fonts/ibm-plex-sans/IBMPlexSans_400Regular.ttf");
const MEDIUM: &[u8] = include_bytes!("../../../assets/fonts/ibm-plex-sans/IBMPlexSans_500Medium.ttf");
const SEMI_BOLD: &[u8] = include_bytes!("../../../assets/fonts/ibm-plex-sans/IBMPlexSans_600SemiBold.ttf");

/// Most pixels on one side of a picture; a larger one is drawn at a smaller scale.
pub const MOST_PX: f32 = 8192.0;
/// Mitres longer than this many widths are cut off, as SVG does.
const MITRE_LIMIT: f32 = 4.0;

/// Draws ink as a PNG file, `scale` pixels for each unit of the ink.
///
/// A picture has at least one pixel and at most [`MOST_PX`] on each side. Items with a place or size that is
/// not finite are left out.
pub fn write(ink: &[Ink], size: [f32; 2], background: Colour, scale: f32) -> Vec<u8> {
    let size = size.map(|px| if px.is_finite() { px.max(1.0) } else { 1.0 });
    let scale = if scale.is_finite() { scale } else { 1.0 };
    let scale = scale.max(1e-3).min(MOST_PX / size[0].max(size[1]));
    let [width, height] = size.map(|px| ((px * scale).round() as u32).max(1));
    let mut pixmap = Pixmap::new(width, height).expect("sides between one pixel and the most");
    pixmap.fill(color(background));
    let pen = Pen { fonts: Fonts::bundled(), to_pixels: Transform::from_scale(scale, scale) };
    for item in ink {
        pen.draw(&mut pixmap, item);
    }
    pixmap.encode_png().expect("pixels in memory can be written as a file")
}

/// Width, height and the pixels of a picture, row by row.
#[cfg(test)]
fn pixels(png: &[u8]) -> Option<(u32, u32, Vec<Colour>)> {
    let pixmap = Pixmap::decode_png(png).ok()?;
    let plain = |pixel: &tiny_skia::PremultipliedColorU8| {
        let pixel = pixel.demultiply();
        [pixel.red(), pixel.green(), pixel.blue(), pixel.alpha()]
    };
    Some((pixmap.width(), pixmap.height(), pixmap.pixels().iter().map(plain).collect()))
}

struct Pen {
    fonts: Fonts,
    to_pixels: Transform,
}

impl Pen {
    fn draw(&self, pixmap: &mut Pixmap, item: &Ink) {
        match item {
            Ink::Area { rings, fill } => {
                let mut path = PathBuilder::new();
                for ring in rings.iter().filter(|ring| ring.len() >= 3) {
                    trace(&mut path, ring, true);
                }
                self.fill(pixmap, path.finish(), *fill, FillRule::EvenOdd);
            }
            Ink::Line { spots, closed, width, colour, dash } => {
                let mut path = PathBuilder::new();
                trace(&mut path, spots, *closed);
                let dash = dash.and_then(|[dash, gap]| StrokeDash::new(vec![dash, gap], 0.0));
                self.stroke(pixmap, path.finish(), *width, *colour, dash);
            }
            Ink::Disc { middle, radius, fill, edge } => {
                let circle = PathBuilder::from_circle(middle[0], middle[1], *radius);
                if let Some(fill) = fill {
                    self.fill(pixmap, circle.clone(), *fill, FillRule::Winding);
                }
                if let Some((width, colour)) = edge {
                    self.stroke(pixmap, circle, *width, *colour, None);
                }
            }
            Ink::Text { at, text, size, weight, colour, anchor, turn_rad } => {
                let path = self.fonts.outlines(*weight, text, *size, *anchor).and_then(|path| {
                    let place = Transform::from_translate(at[0], at[1]);
                    path.transform(place.pre_concat(Transform::from_rotate(turn_rad.to_degrees())))
                });
                self.fill(pixmap, path, *colour, FillRule::Winding);
            }
        }
    }

    fn fill(&self, pixmap: &mut Pixmap, path: Option<Path>, colour: Colour, rule: FillRule) {
        if let Some(path) = path {
            pixmap.fill_path(&path, &paint(colour), rule, self.to_pixels, None);
        }
    }

    fn stroke(&self, pixmap: &mut Pixmap, path: Option<Path>, width: f32, colour: Colour, dash: Option<StrokeDash>) {
        if let Some(path) = path
            && width.is_finite()
        {
            let stroke =
                Stroke { width, dash, line_join: LineJoin::Miter, miter_limit: MITRE_LIMIT, ..Stroke::default() };
            pixmap.stroke_path(&path, &paint(colour), &stroke, self.to_pixels, None);
        }
    }
}

fn trace(path: &mut PathBuilder, spots: &[Spot], closed: bool) {
    drawing::ink::trace(path, spots, closed, [PathBuilder::move_to, PathBuilder::line_to], PathBuilder::close);
}

fn color([red, green, blue, opacity]: Colour) -> Color {
    Color::from_rgba8(red, green, blue, opacity)
}

fn paint(colour: Colour) -> Paint<'static> {
    let mut paint = Paint { anti_alias: true, ..Paint::default() };
    paint.set_color(color(colour));
    paint
}

struct Fonts([Face<'static>; 3]);

impl Fonts {
    fn bundled() -> Self {
        Self([REGULAR, MEDIUM, SEMI_BOLD].map(|file| Face::parse(file, 0).expect("the bundled fonts are sound")))
    }

    /// The outlines of a text at its size, with its anchor and its middle line at the origin.
    fn outlines(&self, weight: Weight, text: &str, size: f32, anchor: Anchor) -> Option<Path> {
        let face = match weight {
            Weight::Regular => &self.0[0],
            Weight::Medium => &self.0[1],
            Weight::SemiBold => &self.0[2],
        };
        let scale = size / f32::from(face.units_per_em());
        let glyphs: Vec<(GlyphId, f32)> = text
            .chars()
            .map(|letter| face.glyph_index(letter).unwrap_or_default())
            .map(|glyph| (glyph, f32::from(face.glyph_hor_advance(glyph).unwrap_or_default()) * scale))
            .collect();
        let width: f32 = glyphs.iter().map(|(_, advance)| advance).sum();
        let x = match anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => -width / 2.0,
            Anchor::End => -width,
        };
        let mut tracer = Tracer { path: PathBuilder::new(), x, y: BASELINE * size, scale };
        for (glyph, advance) in glyphs {
            face.outline_glyph(glyph, &mut tracer);
            tracer.x += advance;
        }
        tracer.path.finish()
    }
}

/// Takes outlines in font units, up, and lays them on a line of text, down.
struct Tracer {
    path: PathBuilder,
    x: f32,
    y: f32,
    scale: f32,
}

impl Tracer {
    fn spot(&self, x: f32, y: f32) -> (f32, f32) {
        (self.x + x * self.scale, self.y - y * self.scale)
    }
}

impl OutlineBuilder for Tracer {
    fn move_to(&mut self, x: f32, y: f32) {
        let (x, y) = self.spot(x, y);
        self.path.move_to(x, y);
    }

    fn line_to(&mut self, x: f32, y: f32) {
        let (x, y) = self.spot(x, y);
        self.path.line_to(x, y);
    }

    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        let ((x1, y1), (x, y)) = (self.spot(x1, y1), self.spot(x, y));
        self.path.quad_to(x1, y1, x, y);
    }

    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        let ((x1, y1), (x2, y2), (x, y)) = (self.spot(x1, y1), self.spot(x2, y2), self.spot(x, y));
        self.path.cubic_to(x1, y1, x2, y2, x, y);
    }

    fn close(&mut self) {
        self.path.close();
    }
}

#[cfg(test)]
mod tests {
    use drawing::{Anchor, Ink, Weight};

    use super::{MOST_PX, pixels, write};

    const WHITE: [u8; 4] = [255; 4];
    const BLUE: [u8; 4] = [0, 0, 255, 255];

    #[test]
    fn an_area_with_a_hole_covers_what_it_should() {
        let square = |low: f32, high: f32| vec![[low, low], [high, low], [high, high], [low, high]];
        let ink = [Ink::Area { rings: vec![square(2.0, 8.0), square(4.0, 6.0)], fill: BLUE }];
        let png = write(&ink, [10.0, 10.0], WHITE, 2.0);
        let (width, height, pixels) = pixels(&png).unwrap();
        assert_eq!((width, height), (20, 20));
        assert_eq!(pixels.iter().filter(|&&pixel| pixel == BLUE).count(), 12 * 12 - 4 * 4);
        assert_eq!(png, write(&ink, [10.0, 10.0], WHITE, 2.0));
    }

    #[test]
    fn text_stands_with_its_middle_line_and_anchor_at_its_place() {
        let ink = [Ink::Text {
            at: [50.0, 20.0],
            text: "H".to_owned(),
            size: 20.0,
            weight: Weight::SemiBold,
            colour: BLUE,
            anchor: Anchor::Middle,
            turn_rad: 0.0,
        }];
        let (width, _, pixels) = pixels(&write(&ink, [100.0, 40.0], WHITE, 1.0)).unwrap();
        let inked: Vec<(u32, u32)> = (0..)
            .zip(&pixels)
            .filter(|(_, pixel)| pixel[0] < 128)
            .map(|(index, _): (u32, _)| (index % width, index / width))
            .collect();
        let middle = |low: u32, high: u32| f64::midpoint(f64::from(low), f64::from(high) + 1.0);
        let (xs, ys): (Vec<_>, Vec<_>) = inked.into_iter().unzip();
        let x = middle(*xs.iter().min().unwrap(), *xs.iter().max().unwrap());
        let y = middle(*ys.iter().min().unwrap(), *ys.iter().max().unwrap());
        assert!((x - 50.0).abs() <= 1.0 && (y - 20.0).abs() <= 1.0, "({x}, {y})");
    }

    #[test]
    fn sizes_out_of_reason_are_held() {
        for size in [[0.0, 0.0], [f32::NAN, -3.0], [1e9, 10.0]] {
            let (width, height, _) = pixels(&write(&[], size, WHITE, 1.0)).unwrap();
            assert!((1..=MOST_PX as u32).contains(&width) && (1..=MOST_PX as u32).contains(&height));
        }
    }
}
