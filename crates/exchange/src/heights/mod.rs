//! Heights from other people's surveys: an Esri ASCII grid or a GeoTIFF, clipped to the ground of a plan.
//!
//! [`read`] takes the bytes and the plan and gives the grid that the plan then holds in plain form, in its own metres.
//! A grid in the plan's own metres is clipped as it is; one in WGS 84 degrees or in a UTM zone of WGS 84 is sampled anew,
//! straight between its four neighbours, at its own spacing. Everything else is refused in a sentence, since heights at
//! a wrong place or in a wrong unit look like any others. Formats: the Esri ASCII raster as its makers describe it;
//! GeoTIFF, OGC 19-008r4.

mod ascii;
mod clip;
mod geotiff;
mod sentence;

use plan::{HeightGrid, Origin, Plan};

pub use sentence::{note, sentence};

/// The largest file that is read, bytes.
pub const MAX_BYTES: usize = 64 * 1024 * 1024;
/// The most heights that a file may hold.
pub const MOST_READ: usize = 16_000_000;
/// The most heights that a plan takes over: a plan stays a file that a hand can read and a drag can carry.
pub const MOST_KEPT: usize = 200_000;
/// Ground kept round the paddock and the runs, metres.
pub const MARGIN_M: f64 = 5.0;
/// Neighbouring heights steeper than this count as a slip of the pen.
pub const STEEPEST: f64 = workup::slope::STEEPEST;
/// Where more than this share of neighbours is steeper, the heights are in another unit.
const STEEP_SHARE: f64 = 0.1;

/// What was made of a file.
#[derive(Clone, Debug, PartialEq)]
pub struct Import {
    /// The heights, in the plan's metres.
    pub grid: HeightGrid,
    /// Where the plan's metres start, where it had not said and the file says.
    pub origin: Option<Origin>,
    /// What the reader noticed.
    pub notes: Vec<Note>,
}

/// Something that the keeper should know.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Note {
    /// So many heights are missing over the ground.
    Holes {
        /// How many.
        holes: usize,
    },
    /// The file does not say what its metres count from; they fit the plan as a UTM zone.
    TakenAsUtm {
        /// The zone.
        zone: u32,
    },
    /// The file does not say so, but its places are degrees.
    TakenAsDegrees,
    /// The heights stand too far apart to show a dip under a panel.
    Coarse {
        /// Metres from one to the next.
        cell_m: f64,
    },
}

/// Why a file gives no heights. Its words are made by [`sentence`]; the display here is for developers.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum HeightsError {
    /// `heights/too-large`
    #[error("heights/too-large: {bytes} bytes")]
    TooLarge {
        /// Bytes in the file.
        bytes: usize,
    },
    /// `heights/no-grid`: neither of the two formats.
    #[error("heights/no-grid")]
    NoGrid,
    /// `heights/header`: a line of the header is missing or is no figure that it can be.
    #[error("heights/header: {key}")]
    Header {
        /// The key.
        key: &'static str,
    },
    /// `heights/not-a-number`
    #[error("heights/not-a-number: line {line}: {found}")]
    NotANumber {
        /// Line, from 1.
        line: usize,
        /// What stands there.
        found: String,
    },
    /// `heights/count`: more or fewer heights than the header says.
    #[error("heights/count: {found} of {wanted}")]
    Count {
        /// Heights found.
        found: usize,
        /// Heights that the header says.
        wanted: usize,
    },
    /// `heights/tiff`: a TIFF that cannot be read.
    #[error("heights/tiff: {problem}")]
    Tiff {
        /// The reader's complaint.
        problem: String,
    },
    /// `heights/no-place`: a TIFF without a place on the ground.
    #[error("heights/no-place")]
    NoPlace,
    /// `heights/turned`: rows that do not run east.
    #[error("heights/turned")]
    Turned,
    /// `heights/projection`: a projection that is not worked with.
    #[error("heights/projection: {code}")]
    Projection {
        /// Its code, or 0 where it has none.
        code: u32,
    },
    /// `heights/unit`: lengths or heights in another unit than metres.
    #[error("heights/unit: {code}")]
    Unit {
        /// Its code.
        code: u32,
    },
    /// `heights/no-origin`: places on the globe, and a plan without an origin.
    #[error("heights/no-origin")]
    NoOrigin,
    /// `heights/cell`: cells of a size that no survey of a field has.
    #[error("heights/cell: {cell}")]
    Cell {
        /// The size as it stands in the file.
        cell: f64,
    },
    /// `heights/wrong-place`: the heights lie elsewhere.
    #[error("heights/wrong-place: {off_m} m off")]
    WrongPlace {
        /// How far from the plan's ground, metres.
        off_m: f64,
    },
    /// `heights/all-holes`: no height over the plan's ground.
    #[error("heights/all-holes")]
    AllHoles,
    /// `heights/steep`: heights in another unit.
    #[error("heights/steep: {share}")]
    Steep {
        /// Share of neighbours that are steeper than any field.
        share: f64,
    },
    /// `heights/too-many`: more heights over the ground than a plan takes.
    #[error("heights/too-many: {heights}")]
    TooMany {
        /// How many.
        heights: usize,
    },
}

/// What a file's places count from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Frame {
    /// It does not say.
    Unsaid,
    /// WGS 84 degrees.
    Degrees,
    /// A UTM zone of WGS 84.
    Utm {
        /// 1 to 60.
        zone: u32,
        /// Whether it is counted from the equator north.
        north: bool,
    },
}

/// Heights as a file has them: columns run east, rows run north.
#[derive(Debug)]
struct Raster {
    frame: Frame,
    /// Place of the first height, in the file's own unit.
    first: (f64, f64),
    /// From one height to the next, east and north.
    step: (f64, f64),
    columns: usize,
    rows: usize,
    /// Row after row from the south.
    up_m: Vec<Option<f64>>,
}

/// Whether a file begins as one of the two formats does.
pub fn is_heights(bytes: &[u8]) -> bool {
    geotiff::is_tiff(bytes) || ascii::is_ascii(bytes)
}

/// Reads heights for the ground of a plan; for a plan without ground, all of them.
///
/// # Errors
/// See [`HeightsError`].
pub fn read(bytes: &[u8], plan: &Plan) -> Result<Import, HeightsError> {
    if bytes.len() > MAX_BYTES {
        return Err(HeightsError::TooLarge { bytes: bytes.len() });
    }
    let raster = if geotiff::is_tiff(bytes) {
        geotiff::read(bytes)?
    } else if ascii::is_ascii(bytes) {
        ascii::read(bytes)?
    } else {
        return Err(HeightsError::NoGrid);
    };
    clip::clip(&raster, plan)
}
