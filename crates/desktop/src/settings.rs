//! What the window remembers between starts: theme, language, units, size, the grid, whether dimensions stay, and the plan
//! that was open.
//!
//! A small JSON file in the folder that the program was given. What cannot be read is as if it were not there: a
//! setting is never worth a question.

#![allow(clippy::disallowed_methods, reason = "only cli and desktop touch files")]

use std::path::{Path, PathBuf};

use drawing::Theme;
use safekeeping::Disk;
use serde::{Deserialize, Serialize};
use words::{Language, Units};

use crate::editor::{Editor, Grid};

/// The file's name in the folder.
const NAME: &str = "settings.json";

/// What is remembered; what is not stated is as at the first start.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Settings {
    theme: Option<String>,
    language: Option<String>,
    feet: bool,
    size_percent: Option<u32>,
    grid: Option<String>,
    keep_dimensions: bool,
    last_plan: Option<PathBuf>,
}

/// Names of the themes in the file.
const THEMES: [(Theme, &str); 3] = [(Theme::Light, "light"), (Theme::Dark, "dark"), (Theme::Contrast, "contrast")];

/// Names of the grids in the file.
const GRIDS: [(Grid, &str); 4] = [(Grid::Off, "off"), (Grid::One, "one"), (Grid::Five, "five"), (Grid::Ten, "ten")];

impl Settings {
    /// Reads them from a folder.
    pub fn read(folder: &Path) -> Self {
        std::fs::read(folder.join(NAME)).ok().and_then(|bytes| serde_json::from_slice(&bytes).ok()).unwrap_or_default()
    }

    /// Writes them into a folder.
    pub(crate) fn write(&self, folder: &Path) {
        let bytes = serde_json::to_vec_pretty(self).unwrap_or_default();
        let written = std::fs::create_dir_all(folder)
            .map_err(|error| error.to_string())
            .and_then(|()| safekeeping::replace(&Disk, &folder.join(NAME), &bytes).map_err(|error| error.to_string()));
        if let Err(error) = written {
            tracing::warn!(%error, "settings were not kept");
        }
    }

    /// The theme.
    pub fn theme(&self) -> Theme {
        let kept = THEMES.into_iter().find(|(_, name)| self.theme.as_deref() == Some(name));
        kept.map_or(Theme::Light, |(theme, _)| theme)
    }

    /// The language.
    pub fn language(&self) -> Language {
        self.language.as_deref().and_then(Language::of_tag).unwrap_or_default()
    }

    /// The units.
    pub fn units(&self) -> Units {
        if self.feet { Units::Feet } else { Units::Metric }
    }

    /// Size of all of the window, 1 as it is made.
    pub fn zoom(&self) -> f32 {
        self.size_percent.map_or(1.0, |percent| percent.clamp(50, 300) as f32 / 100.0)
    }

    /// The grid that catches the hand.
    pub fn grid(&self) -> Grid {
        let kept = GRIDS.into_iter().find(|(_, name)| self.grid.as_deref() == Some(name));
        kept.map_or(Grid::Off, |(grid, _)| grid)
    }

    /// Whether dimensions stay beside what is picked.
    pub fn keeps_dimensions(&self) -> bool {
        self.keep_dimensions
    }

    /// The plan that was open last.
    pub fn last_plan(&self) -> Option<&Path> {
        self.last_plan.as_deref()
    }

    /// What a window shows now; the plan that was open last stays so while one without a file is.
    pub(crate) fn of(editor: &Editor, zoom: f32, last: &Self) -> Self {
        let (words, plan) = (editor.words(), editor.file().or(last.last_plan()));
        let theme = THEMES.into_iter().find(|(one, _)| *one == editor.theme());
        let grid = GRIDS.into_iter().find(|(one, _)| *one == editor.grid());
        Self {
            theme: theme.map(|(_, name)| name.to_owned()),
            language: Some(words.language.tag().to_owned()),
            feet: words.units == Units::Feet,
            size_percent: Some((zoom * 100.0).round() as u32),
            grid: grid.map(|(_, name)| name.to_owned()),
            keep_dimensions: editor.keeps_dimensions(),
            last_plan: plan.map(|path| path.canonicalize().unwrap_or_else(|_| path.to_path_buf())),
        }
    }
}
