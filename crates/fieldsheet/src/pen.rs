//! The PDF pen: ink as a file (ISO 32000, PDF 1.7).
//!
//! Letters are set from the bundled fonts, embedded as subsets, without kerning, as [`drawing::letters`] measures
//! them; no font of the machine is used. There is no clock in the file and its ids are hashes of its contents, so
//! the same ink gives the same bytes.

use drawing::letters::BASELINE;
use drawing::{Anchor, Colour, Ink, Spot, Weight};
use krilla::color::rgb;
use krilla::geom::{Path, PathBuilder, Point, Rect, Transform};
use krilla::metadata::Metadata;
use krilla::num::NormalizedF32;
use krilla::page::PageSettings;
use krilla::paint::{Fill, FillRule, LineCap, LineJoin, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::text::{Font, GlyphId, KrillaGlyph};
use krilla::{Document, SerializeSettings};
use ttf_parser::Face;

use crate::page::Page;

const REGULAR: &[u8] = include_bytes!("../../../assets/fonts/ibm-plex-sans/IBMPlexSans_400Regular.ttf");
const MEDIUM: &[u8] = include_bytes!("../../../assets/fonts/ibm-plex-sans/IBMPlexSans_500Medium.ttf");
const SEMI_BOLD: &[u8] = include_bytes!("../../../assets/fonts/ibm-plex-sans/IBMPlexSans_600SemiBold.ttf");

/// Mitres longer than this many widths are cut off, as the other pens do.
const MITRE_LIMIT: f32 = 4.0;
/// A quarter of a circle as one cubic: the distance of its handles, in radii (4/3 tan(π/8)).
const CIRCLE_HANDLE: f32 = 0.552_284_8;

/// Writes pages as a PDF file.
pub(crate) fn write(pages: &[Page], title: &str, language: &str) -> Result<Vec<u8>, String> {
    let settings = SerializeSettings { enable_tagging: false, ..SerializeSettings::default() };
    let mut document = Document::new_with(settings);
    document.set_metadata(
        Metadata::new().title(title.to_owned()).language(language.to_owned()).creator("Netfold".to_owned()),
    );
    let fonts = Fonts::bundled();
    for page in pages {
        let [width, height] = page.size;
        let settings = PageSettings::from_wh(width, height).expect("paper has a size");
        let mut started = document.start_page_with(settings);
        let mut surface = started.surface();
        if let Some(map) = &page.map {
            let [left, top, right, bottom] = map.frame;
            let clip = Rect::from_ltrb(left, top, right, bottom).and_then(|rect| {
                let mut path = PathBuilder::new();
                path.push_rect(rect);
                path.finish()
            });
            if let Some(clip) = clip {
                surface.push_clip_path(&clip, &FillRule::NonZero);
                map.ink.iter().for_each(|item| fonts.draw(&mut surface, item));
                surface.pop();
            }
        }
        page.ink.iter().for_each(|item| fonts.draw(&mut surface, item));
        surface.finish();
        started.finish();
    }
    document.finish().map_err(|error| error.to_string())
}

struct Fonts([(Font, Face<'static>); 3]);

impl Fonts {
    fn bundled() -> Self {
        Self([REGULAR, MEDIUM, SEMI_BOLD].map(|file| {
            let font = Font::new(file.into(), 0).expect("the bundled fonts are sound");
            (font, Face::parse(file, 0).expect("the bundled fonts are sound"))
        }))
    }

    fn draw(&self, surface: &mut Surface<'_>, item: &Ink) {
        match item {
            Ink::Area { rings, fill } => {
                let mut path = PathBuilder::new();
                for ring in rings.iter().filter(|ring| ring.len() >= 3) {
                    trace(&mut path, ring, true);
                }
                paint(surface, path.finish(), Some((*fill, FillRule::EvenOdd)), None);
            }
            Ink::Line { spots, closed, width, colour, dash } => {
                let mut path = PathBuilder::new();
                trace(&mut path, spots, *closed);
                paint(surface, path.finish(), None, stroke(*width, *colour, *dash));
            }
            Ink::Disc { middle, radius, fill, edge } => {
                let fill = fill.map(|fill| (fill, FillRule::NonZero));
                let edge = edge.and_then(|(width, colour)| stroke(width, colour, None));
                paint(surface, circle(*middle, *radius), fill, edge);
            }
            Ink::Text { at, text, size, weight, colour, anchor, turn_rad } => {
                if !at.iter().chain([size, turn_rad]).all(|value| value.is_finite()) || text.is_empty() {
                    return;
                }
                let (font, face) = &self.0[match weight {
                    Weight::Regular => 0,
                    Weight::Medium => 1,
                    Weight::SemiBold => 2,
                }];
                let (glyphs, width) = glyphs(face, text);
                let x = match anchor {
                    Anchor::Start => 0.0,
                    Anchor::Middle => -width * size / 2.0,
                    Anchor::End => -width * size,
                };
                let (sin, cos) = turn_rad.sin_cos();
                surface.push_transform(&Transform::from_row(cos, sin, -sin, cos, at[0], at[1]));
                surface.set_stroke(None);
                surface.set_fill(Some(fill(*colour, FillRule::NonZero)));
                surface.draw_glyphs(Point::from_xy(x, BASELINE * size), &glyphs, font.clone(), text, *size, false);
                surface.pop();
            }
        }
    }
}

/// The glyphs of a text and its width, in heights of the font.
fn glyphs(face: &Face<'_>, text: &str) -> (Vec<KrillaGlyph>, f32) {
    let units = f32::from(face.units_per_em());
    let mut width = 0.0;
    let glyphs = text
        .char_indices()
        .map(|(start, letter)| {
            let glyph = face.glyph_index(letter).unwrap_or_default();
            let advance = f32::from(face.glyph_hor_advance(glyph).unwrap_or_default()) / units;
            width += advance;
            let letters = start..start + letter.len_utf8();
            KrillaGlyph::new(GlyphId::new(u32::from(glyph.0)), advance, 0.0, 0.0, 0.0, letters, None)
        })
        .collect();
    (glyphs, width)
}

fn paint(surface: &mut Surface<'_>, path: Option<Path>, area: Option<(Colour, FillRule)>, line: Option<Stroke>) {
    let Some(path) = path else { return };
    if area.is_none() && line.is_none() {
        return;
    }
    surface.set_fill(area.map(|(colour, rule)| fill(colour, rule)));
    surface.set_stroke(line);
    surface.draw_path(&path);
}

fn opacity([_, _, _, opacity]: Colour) -> NormalizedF32 {
    NormalizedF32::new(f32::from(opacity) / 255.0).unwrap_or(NormalizedF32::ONE)
}

fn fill(colour: Colour, rule: FillRule) -> Fill {
    let [red, green, blue, _] = colour;
    Fill { paint: rgb::Color::new(red, green, blue).into(), opacity: opacity(colour), rule }
}

fn stroke(width: f32, colour: Colour, dash: Option<[f32; 2]>) -> Option<Stroke> {
    let [red, green, blue, _] = colour;
    width.is_finite().then(|| Stroke {
        paint: rgb::Color::new(red, green, blue).into(),
        width,
        miter_limit: MITRE_LIMIT,
        line_cap: LineCap::Butt,
        line_join: LineJoin::Miter,
        opacity: opacity(colour),
        dash: dash.map(|dash| StrokeDash { array: dash.to_vec(), offset: 0.0 }),
    })
}

fn trace(path: &mut PathBuilder, spots: &[Spot], closed: bool) {
    drawing::ink::trace(path, spots, closed, [PathBuilder::move_to, PathBuilder::line_to], PathBuilder::close);
}

fn circle([x, y]: Spot, radius: f32) -> Option<Path> {
    if !(x.is_finite() && y.is_finite() && radius.is_finite()) {
        return None;
    }
    let mut path = PathBuilder::new();
    path.move_to(x + radius, y);
    // From each quarter's end to the next: cosine and sine of the two.
    for [from_x, from_y, to_x, to_y] in
        [[1.0, 0.0, 0.0, 1.0], [0.0, 1.0, -1.0, 0.0], [-1.0, 0.0, 0.0, -1.0], [0.0, -1.0, 1.0, 0.0_f32]]
    {
        let handle = CIRCLE_HANDLE;
        path.cubic_to(
            x + radius * (from_x - handle * from_y),
            y + radius * (from_y + handle * from_x),
            x + radius * (to_x + handle * to_y),
            y + radius * (to_y - handle * to_x),
            x + radius * to_x,
            y + radius * to_y,
        );
    }
    path.close();
    path.finish()
}
