//! What the window remembers between starts: theme, language, units, size, and the plan that was open.
//!
//! A small JSON file in the folder that the program was given. What cannot be read is as if it were not there: a
//! setting is never worth a question.

#![allow(clippy::disallowed_methods, reason = "only cli and desktop touch files")]

use std::path::{Path, PathBuf};

use drawing::Theme;
use safekeeping::Disk;
use serde::{Deserialize, Serialize};
use words::{Language, Units, Words};

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
    last_plan: Option<PathBuf>,
}

/// Names of the themes in the file.
const THEMES: [(Theme, &str); 3] = [(Theme::Light, "light"), (Theme::Dark, "dark"), (Theme::Contrast, "contrast")];

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

    /// The plan that was open last.
    pub fn last_plan(&self) -> Option<&Path> {
        self.last_plan.as_deref()
    }

    /// What a window shows now.
    pub(crate) fn of(theme: Theme, words: Words, zoom: f32, plan: Option<&Path>) -> Self {
        Self {
            theme: THEMES.into_iter().find(|(one, _)| *one == theme).map(|(_, name)| name.to_owned()),
            language: Some(words.language.tag().to_owned()),
            feet: words.units == Units::Feet,
            size_percent: Some((zoom * 100.0).round() as u32),
            last_plan: plan.map(|path| path.canonicalize().unwrap_or_else(|_| path.to_path_buf())),
        }
    }
}
