//! What may be typed after `netfold`.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::error::ErrorKind;
use clap::{CommandFactory, Parser, Subcommand, ValueEnum};

/// Plans portable electric netting for a pastured flock.
#[derive(Debug, Parser)]
#[command(name = "netfold", version, disable_help_subcommand = true)]
pub(crate) struct Arguments {
    /// The plan to open in the window; without one, the example farm.
    pub(crate) plan: Option<PathBuf>,
    /// What to do instead of opening the window.
    #[command(subcommand)]
    pub(crate) command: Option<Command>,
    /// The language of what is printed and written; keys of JSON stay as they are, and the window keeps its own.
    #[arg(long, global = true, value_name = "LANGUAGE")]
    pub(crate) language: Option<Spoken>,
    /// Draw the window, save a picture of it and leave.
    #[arg(long, value_name = "FILE.png", hide = true)]
    pub(crate) smoke: Option<PathBuf>,
}

impl Arguments {
    /// What was typed. A language may stand before a command or after it; a plan before a command would open the window.
    pub(crate) fn typed() -> Result<Self, clap::Error> {
        let typed = Self::try_parse()?;
        match (&typed.command, &typed.plan) {
            (Some(_), Some(plan)) => {
                let told = format!("a command stands first, its plan after it, not '{}' before it", plan.display());
                Err(Self::command().error(ErrorKind::ArgumentConflict, told))
            }
            _ => Ok(typed),
        }
    }
}

/// The subcommands; none needs a display.
#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Print what follows from a plan.
    Report {
        /// The plan.
        plan: PathBuf,
        /// As JSON for other programs.
        #[arg(long)]
        json: bool,
    },
    /// Print the findings of a plan; exits 1 where one is a danger.
    Check {
        /// The plan.
        plan: PathBuf,
    },
    /// Write the field sheet as a PDF.
    Sheet {
        /// The plan.
        plan: PathBuf,
        /// Where to.
        #[arg(short, long)]
        output: PathBuf,
    },
    /// Write the plan's map or positions in another format.
    Export {
        /// The plan.
        plan: PathBuf,
        /// The format.
        #[arg(long)]
        to: Format,
        /// Which run, where the format holds one; the first where none is named.
        #[arg(long, value_name = "ID")]
        run: Option<String>,
        /// Where to.
        #[arg(short, long)]
        output: PathBuf,
    },
    /// Make a plan from a boundary in GeoJSON or from heights in an Esri ASCII grid or a GeoTIFF, or write a plan back.
    Import {
        /// The file.
        file: PathBuf,
        /// The plan that takes the heights, over its own ground.
        #[arg(long, value_name = "PLAN")]
        into: Option<PathBuf>,
        /// Where to.
        #[arg(short, long)]
        output: PathBuf,
    },
    /// Find the nearest outline of whole panels to a run's sketch.
    Fit {
        /// The plan.
        plan: PathBuf,
        /// Which run.
        #[arg(long, value_name = "ID")]
        run: String,
        /// Panels at the chain's end that are doubled back.
        #[arg(long, value_name = "N", default_value_t = 0)]
        double_back: u32,
        /// As JSON for other programs.
        #[arg(long)]
        json: bool,
    },
    /// Find the largest run of each family of shapes.
    Shapes {
        /// The plan.
        plan: PathBuf,
        /// How many nets, the longest of the store.
        #[arg(long)]
        nets: u32,
        /// With the coop and its clearance inside.
        #[arg(long)]
        coop: bool,
        /// With one side borrowed from a wall that holds birds, too.
        #[arg(long)]
        walls: bool,
        /// Sides of the free outline.
        #[arg(long, default_value_t = workup::candidates::FREE_SIDES)]
        sides: u32,
        /// As JSON for other programs.
        #[arg(long)]
        json: bool,
    },
    /// Find which energizer keeps the target on how many nets.
    Power {
        /// The plan.
        plan: PathBuf,
        /// Which run; the first where none is named.
        #[arg(long, value_name = "ID")]
        run: Option<String>,
        /// As JSON for other programs.
        #[arg(long)]
        json: bool,
    },
    /// Print the JSON Schema of a file.
    Schema {
        /// Which.
        of: Described,
    },
    /// Write the example farm's plans, map and report into a folder.
    Demo {
        /// The folder.
        #[arg(short, long)]
        output: PathBuf,
    },
}

/// A language that may be asked for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, ValueEnum)]
pub(crate) enum Spoken {
    /// English.
    #[default]
    En,
    /// German.
    De,
}

impl From<Spoken> for words::Language {
    fn from(spoken: Spoken) -> Self {
        match spoken {
            Spoken::En => Self::English,
            Spoken::De => Self::German,
        }
    }
}

/// A format to export to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Format {
    /// Positions, RFC 7946.
    Geojson,
    /// The map as a vector picture.
    Svg,
    /// The map as a picture.
    Png,
    /// The runs side by side, RFC 4180.
    Csv,
    /// A run's circuit as a netlist in the SPICE language.
    Spice,
}

/// A file that has a schema.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Described {
    /// The plan.
    Plan,
    /// The report.
    Report,
}

/// What clap has to say: help and version as they are, anything else as one line.
pub(crate) fn refused(error: &clap::Error) -> ExitCode {
    match error.kind() {
        ErrorKind::DisplayHelp | ErrorKind::DisplayVersion => {
            // A closed pipe is no trouble of the keeper's.
            let _ = error.print();
            ExitCode::SUCCESS
        }
        _ => {
            let text = error.to_string();
            let lines = text
                .lines()
                .map(str::trim)
                .take_while(|line| !line.starts_with("Usage") && !line.starts_with("For more"));
            let sentence =
                lines.filter(|line| !line.is_empty() && !line.starts_with("tip:")).collect::<Vec<_>>().join(" ");
            let sentence = sentence.trim_start_matches("error: ");
            crate::complain(&format!("{sentence}; `netfold --help` shows what may be asked."));
            ExitCode::from(2)
        }
    }
}
