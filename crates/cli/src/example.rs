//! The example farm: a farm, a flock and a store that exist nowhere else.

use std::path::Path;

use anyhow::{Result, anyhow};
use words::{Words, texts::Errors};

use crate::arguments::Format;
use crate::commands::Worked;
use crate::files;

/// The example that the window opens on: a run of five corners from three rolls.
const FARM: (&str, &[u8]) =
    ("kettle-field.netfold.json", include_bytes!("../../../assets/demo/kettle-field.netfold.json"));
/// A square and a rectangle for the same ground.
const COMPARED: (&str, &[u8]) =
    ("square-or-rectangle.netfold.json", include_bytes!("../../../assets/demo/square-or-rectangle.netfold.json"));

/// The example farm, opened.
pub(crate) fn farm() -> plan::Opened {
    plan::read(FARM.1).expect("the example is a plan, as a test shows")
}

/// Writes the example's plans, map and reports into a folder, which may not hold any of them yet.
pub(crate) fn write(folder: &Path, words: Words) -> Result<()> {
    let worked = Worked::of(farm(), words);
    let compared = Worked::of(plan::read(COMPARED.1).expect("the example is a plan, as a test shows"), words);
    let made = [
        (FARM.0, FARM.1.to_vec()),
        (COMPARED.0, COMPARED.1.to_vec()),
        ("kettle-field.png", worked.picture(Format::Png, None, FARM.0)?),
        ("kettle-field.svg", worked.picture(Format::Svg, None, FARM.0)?),
        ("kettle-field.report.json", worked.report()),
        ("kettle-field.report.txt", worked.page().into_bytes()),
        ("square-or-rectangle.report.txt", compared.page().into_bytes()),
    ];
    let shown = files::name(folder);
    if let Some((name, _)) = made.iter().find(|(name, _)| folder.join(name).exists()) {
        return Err(anyhow!(words.say(Errors::FileExists, &[("folder", &shown), ("file", name)])));
    }
    std::fs::create_dir_all(folder).map_err(|_| anyhow!(words.say(Errors::FolderUnmakable, &[("folder", &shown)])))?;
    for (name, bytes) in &made {
        files::write(&folder.join(name), bytes, words)?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    #[test]
    fn the_examples_are_plans() {
        for (name, bytes) in [super::FARM, super::COMPARED] {
            let opened = plan::read(bytes).unwrap_or_else(|error| panic!("{name}: {error}"));
            assert!(opened.unknown.is_empty(), "{name}: {:?}", opened.unknown);
        }
    }
}
