//! The window as eframe hosts it, and the smoke run: a few frames, a picture if asked for, the end.

use std::path::PathBuf;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::time::Instant;

use egui::{ColorImage, Ui, ViewportCommand};

use crate::editor::Message;
use crate::{DesktopError, Start, Window};

/// A run that ends by itself: a check that the window opens, and how it looks.
#[derive(Clone, Debug, PartialEq)]
pub struct Smoke {
    /// Frames to paint before the end, once all figures have come.
    pub frames: u32,
    /// Where the last frame is written as PNG.
    pub picture: Option<PathBuf>,
    /// Width and height of the window, points.
    pub size: [f32; 2],
}

/// How the smoke run ended, on this side of the window.
pub(crate) struct Outcome(Receiver<DesktopError>);

impl Outcome {
    /// The two sides.
    pub(crate) fn new() -> (Self, Sender<DesktopError>) {
        let (sender, receiver) = channel();
        (Self(receiver), sender)
    }

    /// What went wrong, if anything did.
    pub(crate) fn finish(self) -> Result<(), DesktopError> {
        self.0.try_recv().map_or(Ok(()), Err)
    }
}

/// The window in its host.
pub(crate) struct Host {
    window: Window,
    since: Option<Instant>,
    smoke: Option<Smoke>,
    asked: bool,
    failed: Sender<DesktopError>,
}

impl Host {
    pub(crate) fn new(ctx: &egui::Context, start: Start, failed: Sender<DesktopError>) -> Self {
        let mut window = Window::open(ctx, start.opening);
        window.say(Message::Open(start.page));
        if let Some(theme) = start.theme {
            window.say(Message::Theme(theme));
        }
        Self { window, since: Some(start.since), smoke: start.smoke, asked: false, failed }
    }

    /// One frame of the smoke run.
    fn smoke(&mut self, ctx: &egui::Context) {
        let Some(smoke) = &mut self.smoke else { return };
        ctx.request_repaint();
        if smoke.frames > 0 {
            if self.window.editor().is_full() {
                smoke.frames -= 1;
            }
            return;
        }
        let Some(path) = smoke.picture.clone() else {
            ctx.send_viewport_cmd(ViewportCommand::Close);
            return;
        };
        if self.asked {
            return;
        }
        self.asked = true;
        let (failed, ctx_too) = (self.failed.clone(), ctx.clone());
        ctx.request_screenshot(move |image| {
            if let Err(why) = write(&path, &image)
                && failed.send(DesktopError::NoPicture { path, why }).is_err()
            {
                tracing::error!("nobody waits for the picture");
            }
            ctx_too.send_viewport_cmd(ViewportCommand::Close);
        });
    }
}

impl eframe::App for Host {
    fn ui(&mut self, ui: &mut Ui, _: &mut eframe::Frame) {
        self.window.ui(ui);
        if let Some(since) = self.since.take() {
            tracing::info!(ms = since.elapsed().as_millis() as u64, "first frame");
        }
        let ctx = ui.ctx().clone();
        // A smoke run ends by itself, whatever is unsaved.
        if self.smoke.is_none()
            && ctx.input(|input| input.viewport().close_requested())
            && !self.window.asked_to_close(&ctx)
        {
            ctx.send_viewport_cmd(ViewportCommand::CancelClose);
            ctx.request_repaint();
        }
        self.smoke(&ctx);
    }

    fn clear_color(&self, visuals: &egui::Visuals) -> [f32; 4] {
        visuals.panel_fill.to_normalized_gamma_f32()
    }
}

#[allow(clippy::disallowed_methods, reason = "only cli and desktop touch files")]
fn write(path: &std::path::Path, image: &ColorImage) -> Result<(), String> {
    let [width, height] = image.size;
    let bytes: Vec<u8> = image.pixels.iter().flat_map(egui::Color32::to_array).collect();
    let size = tiny_skia::IntSize::from_wh(width as u32, height as u32).ok_or("an empty picture")?;
    let png = tiny_skia::Pixmap::from_vec(bytes, size)
        .ok_or("a picture of another size")?
        .encode_png()
        .map_err(|error| error.to_string())?;
    std::fs::write(path, png).map_err(|error| error.to_string())
}
