//! The window: map, unfolded line, pages, figures.
//!
//! A tour. [`editor`] is what the window is about without a window: the plan, its history, what follows from it;
//! [`tool`] and [`worker`] serve it. [`Window`] lays the parts out and lets each say what the hand did:
//! `map_view`, `under` (what lies under the map), `pages`, `head`, `figures`. `pen` paints ink of `drawing`,
//! `kit` and `icons` are the few widgets, `theme` holds fonts and visuals. [`run`] opens it all on the screen.
//!
//! **Invariants.** Views paint what the editor has and say messages; they compute nothing about a plan. Every
//! colour comes from `drawing`'s palette, every text from `words`. An idle window paints nothing.

mod about;
mod allocator;
mod asking;
mod chooser;
mod commands;
mod coordinates_entry;
mod corner;
mod crossing;
pub mod editor;
mod entry;
mod errand;
mod facts;
mod field;
mod figures;
mod finder;
mod first;
mod first_corner;
mod found;
mod head;
mod icons;
mod journal;
mod kit;
mod leading;
mod many;
mod map_view;
mod measured;

mod menus;
mod next_corner;
mod nodes;
mod pages;
mod pen;
mod place_entry;
mod reach;
pub mod reckoner;
mod roster;
mod said;
pub mod searcher;
mod settings;
mod shelf;
mod side;
mod side_entry;
mod size;
mod smoke;
mod theme;
pub mod tool;
mod typing;
mod under;
mod underlay;
mod unroll;
mod window;
mod window_icon;
pub mod worker;

use std::path::PathBuf;
use std::time::Instant;

pub use settings::Settings;
pub use smoke::Smoke;
pub use window::{Opening, Window};

/// Width and height of the window when it opens, points.
const SIZE: [f32; 2] = [1280.0, 800.0];
/// The smallest that it may be.
const LEAST: [f32; 2] = [900.0, 600.0];

/// What the program opens the window with.
pub struct Start {
    /// The plan and what goes with it.
    pub opening: Opening,
    /// The theme that it opens in, where it is not the one remembered.
    pub theme: Option<drawing::Theme>,
    /// The page that it opens on.
    pub page: editor::Page,
    /// Draw a few frames and end: a check that a window opens at all.
    pub smoke: Option<Smoke>,
    /// When the program started, for the time to the first frame.
    pub since: Instant,
}

/// Why there is no window.
#[derive(Debug, thiserror::Error)]
pub enum DesktopError {
    /// `desktop/no-window`: the screen or its driver refused.
    #[error("desktop/no-window: {why}")]
    NoWindow {
        /// What was said.
        why: String,
    },
    /// `desktop/no-picture`: the picture of a smoke run was not written.
    #[error("desktop/no-picture: {path}: {why}")]
    NoPicture {
        /// Where to.
        path: PathBuf,
        /// What was said.
        why: String,
    },
}

/// Opens the window and returns when it is closed.
///
/// # Errors
/// [`DesktopError`] where no window can be opened, or a smoke run's picture cannot be written.
pub fn run(start: Start) -> Result<(), DesktopError> {
    let size = start.smoke.as_ref().map_or(SIZE, |smoke| smoke.size);
    let options = eframe::NativeOptions {
        viewport: egui::ViewportBuilder::default()
            .with_title("Netfold")
            .with_app_id("netfold")
            .with_inner_size(size)
            .with_min_inner_size(LEAST)
            .with_icon(window_icon::icon()),
        renderer: eframe::Renderer::Glow,
        system_font_fallback: false,
        persist_window: false,
        dithering: false,
        ..eframe::NativeOptions::default()
    };
    let (outcome, smoke) = smoke::Outcome::new();
    let made = move |creation: &eframe::CreationContext<'_>| -> Result<Box<dyn eframe::App>, _> {
        Ok(Box::new(smoke::Host::new(&creation.egui_ctx, start, smoke)))
    };
    eframe::run_native("netfold", options, Box::new(made))
        .map_err(|error| DesktopError::NoWindow { why: error.to_string() })?;
    outcome.finish()
}
