//! The picture beneath the map: read beside the window, painted beneath everything, and its two known points.
//!
//! A thread reads and shrinks the file once for each path and fingerprint that the plan states; the window keeps it as
//! one texture, and its place is four corners of a mesh.

use std::path::PathBuf;

use egui::{Color32, ColorImage, Mesh, Painter, Pos2, Rect, Shape, Stroke, TextureHandle, TextureOptions, pos2, vec2};
use exchange::underlay::{Picture, PictureError};

use crate::editor::{Editor, Message, Pictured, UnderlayMessage};
use crate::errand::Errand;
use crate::theme::{self, colour};
use crate::{map_view, pen, shelf};

/// The longest side of the texture, pixels.
pub(crate) const MOST_PX: u32 = 4096;
/// Radius of the ring of a known point.
const KNOWN_PX: f32 = 6.0;

/// Which picture: its file, and the fingerprint that it should have.
type Key = (PathBuf, String);

struct Job {
    key: Key,
    most_px: u32,
}

type Answer = (Key, Result<(Picture, String), PictureError>);

/// The picture as it is painted.
pub(crate) struct Pictures {
    errand: Errand<Job, Answer>,
    key: Option<Key>,
    shown: Option<(TextureHandle, [f32; 2])>,
}

impl Pictures {
    /// Starts the thread; `told` is called from it when a picture was read.
    pub(crate) fn start(told: impl Fn() + Send + 'static) -> Self {
        let errand = Errand::start(move |desk: &crate::errand::Desk<Job, Answer>, job: Job| {
            let read = shelf::picture(&job.key.0, job.most_px);
            desk.answer((job.key, read));
            told();
        });
        Self { errand, key: None, shown: None }
    }

    /// Takes what was read, and asks for what the plan now states; what the editor should know of it.
    pub(crate) fn follow(&mut self, ctx: &egui::Context, editor: &Editor) -> Option<Message> {
        let stated = editor.plan().underlay.as_ref();
        let wanted = stated.map(|one| (shelf::beside(editor.file(), &one.path), one.sha256.clone()));
        if wanted == self.key {
            let (key, read) = self.errand.taken()?;
            if self.key.as_ref() != Some(&key) {
                return None;
            }
            return Some(self.told(ctx, &key, read));
        }
        let same_file = self.key.as_ref().map(|key| &key.0) == wanted.as_ref().map(|key| &key.0);
        // A change that is taken as right is no other picture.
        if let (true, Some(key), Pictured::Shown { changed, size_px }) = (same_file, &wanted, editor.pictured())
            && changed.as_ref() == Some(&key.1)
        {
            self.key = wanted;
            let pictured = Pictured::Shown { changed: None, size_px: *size_px };
            return Some(Message::Underlay(UnderlayMessage::Read(pictured)));
        }
        self.key.clone_from(&wanted);
        self.shown = None;
        self.errand.stop();
        let pictured = match wanted {
            Some(key) => {
                let side = ctx.input(|input| input.max_texture_side);
                let most_px = u32::try_from(side).unwrap_or(MOST_PX).min(MOST_PX);
                self.errand.give(Job { key, most_px });
                Pictured::Waiting
            }
            None => Pictured::Nothing,
        };
        Some(Message::Underlay(UnderlayMessage::Read(pictured)))
    }

    fn told(&mut self, ctx: &egui::Context, key: &Key, read: Result<(Picture, String), PictureError>) -> Message {
        let pictured = match read {
            Ok((picture, fingerprint)) => {
                let size = picture.shown_px.map(|side| side as usize);
                let image = ColorImage::from_rgba_unmultiplied(size, &picture.rgba);
                let texture = ctx.load_texture("underlay", image, TextureOptions::LINEAR);
                self.shown = Some((texture, picture.filled));
                let changed = Some(fingerprint).filter(|now| !key.1.is_empty() && !now.eq_ignore_ascii_case(&key.1));
                Pictured::Shown { changed, size_px: picture.size_px }
            }
            Err(error) => Pictured::Refused(error),
        };
        Message::Underlay(UnderlayMessage::Read(pictured))
    }

    /// Paints the picture on the paper.
    pub(crate) fn paint(&self, painter: &Painter, editor: &Editor, rect: Rect) {
        let Some(underlay) = editor.plan().underlay.as_ref().filter(|underlay| !underlay.hidden) else { return };
        let p = editor.theme().palette();
        let view = editor.view();
        let spots = underlay.corners().map(|at| {
            let [right, down] = view.spot(at);
            rect.min + vec2(right, down)
        });
        if !spots.iter().all(|spot| spot.is_finite()) {
            return;
        }
        let Some((texture, [wide, tall])) = &self.shown else {
            // Where it would lie.
            let ring = [spots[0], spots[1], spots[2], spots[3], spots[0]];
            painter.extend(Shape::dashed_line(&ring, Stroke::new(1.0, colour(p.ink2)), 2.0, 4.0));
            return;
        };
        let tint = Color32::from_white_alpha((underlay.opacity() * 255.0).round() as u8);
        let mut mesh = Mesh::with_texture(texture.id());
        let corners = [pos2(0.0, 0.0), pos2(*wide, 0.0), pos2(*wide, *tall), pos2(0.0, *tall)];
        for (pos, uv) in spots.into_iter().zip(corners) {
            mesh.vertices.push(egui::epaint::Vertex { pos, uv, color: tint });
        }
        mesh.add_triangle(0, 1, 2);
        mesh.add_triangle(0, 2, 3);
        painter.add(Shape::mesh(mesh));
    }
}

/// The two known points, lettered, and the tape between them.
pub(crate) fn known_points(painter: &Painter, editor: &Editor, on_sheet: &impl Fn(plan::Point) -> Pos2) {
    let p = editor.theme().palette();
    let (ink, sheet) = (colour(p.pick), colour(p.sheet));
    let spots: Vec<Pos2> = editor.known_points().iter().map(|&at| on_sheet(at)).collect();
    let pointer = match editor.tool() {
        crate::tool::Tool::Outline { pointer: Some(pointer), .. } if spots.len() == 1 => Some(on_sheet(*pointer)),
        _ => None,
    };
    let tape: Vec<Pos2> = spots.iter().copied().chain(pointer).collect();
    if tape.len() == 2 {
        painter.add(Shape::line(tape.clone(), Stroke::new(4.0, sheet)));
        painter.extend(Shape::dashed_line(&tape, Stroke::new(1.5, ink), 2.0, 4.0));
    }
    for (spot, letter) in spots.into_iter().zip(["A", "B"]) {
        let arms = [vec2(KNOWN_PX + 4.0, 0.0), vec2(0.0, KNOWN_PX + 4.0)].map(|arm| [spot - arm, spot + arm]);
        for line in arms.iter().map(|arm| arm.to_vec()).chain([map_view::round(spot, KNOWN_PX)]) {
            pen::bed(painter, editor, line, 2.0);
        }
        painter.circle(spot, KNOWN_PX, sheet, Stroke::new(2.0, ink));
        for arm in arms {
            painter.line_segment(arm, Stroke::new(1.5, ink));
        }
        let plate = Rect::from_center_size(spot + vec2(16.0, -14.0), vec2(18.0, 18.0));
        painter.add(Shape::convex_polygon(crate::icons::cut_plate(plate, 5.0), sheet, Stroke::new(1.5, ink)));
        let font = theme::semi_bold(12.0);
        painter.text(plate.center(), egui::Align2::CENTER_CENTER, letter, font, colour(p.ink));
    }
}
