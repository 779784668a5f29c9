//! GeoJSON (RFC 7946) in and out.
//!
//! [`read`] makes the ground of a plan from a polygon: the outline of a paddock and the holes in it.
//! [`write()`] puts a plan and what follows from it on the globe, for other people's maps. Geographic
//! coordinates exist only here and in the plan's origin; the way between is [`crate::projection`].
//!
//! Whoever reads a stranger's file is careful: its size, the count of its positions and the depth of its
//! nesting are bounded, and each refusal names the place in the file.

mod polygons;
mod reading;
mod rings;
mod writing;

pub use reading::read;
pub use writing::write;

use plan::Plan;

/// The largest file that is read, bytes.
pub const MAX_BYTES: usize = 64 * 1024 * 1024;
/// The most positions that are read; a survey of a whole estate has fewer.
pub const MAX_POSITIONS: usize = 100_000;
/// The greatest width or height of a paddock, kilometres; beyond it the file is not one of a paddock.
pub const MAX_EXTENT_KM: f64 = 100.0;
/// What the exported features call themselves, in their property `role`.
pub mod role {
    /// The paddock's outline.
    pub const PADDOCK: &str = "paddock";
    /// A place that a run keeps off.
    pub const KEEP_OUT: &str = "keep_out";
}

/// What was made of a file.
#[derive(Clone, Debug, PartialEq)]
pub struct Import {
    /// A plan with a title, an origin, a boundary and keep-outs, and nothing else.
    pub plan: Plan,
    /// What the reader noticed, in the order met.
    pub notes: Vec<ImportNote>,
}

/// Something that the reader noticed and the keeper should know.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ImportNote {
    /// Other polygons of the file were left out.
    PolygonsLeftOut {
        /// How many.
        polygons: usize,
    },
    /// Points and lines of the file were left out.
    ShapesLeftOut {
        /// How many.
        shapes: usize,
    },
    /// A ring did not return to its start, against the standard, and was closed.
    RingClosed {
        /// Where it stands in the file.
        path: String,
    },
    /// The file names coordinates of another kind than the standard's.
    OtherCoordinates {
        /// The name that it gives.
        name: String,
    },
}

/// Why a file cannot be read as GeoJSON. Its words are made by [`crate::refusal`]; the display here is
/// for developers.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ImportError {
    /// `import/too-large`: more bytes than [`MAX_BYTES`].
    #[error("import/too-large: {bytes} bytes")]
    TooLarge {
        /// Bytes in the file.
        bytes: usize,
    },
    /// `import/not-json`: no JSON at that place.
    #[error("import/not-json: line {line}, column {column}")]
    NotJson {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
    },
    /// `import/cut-short`: the file ends too early.
    #[error("import/cut-short: line {line}")]
    CutShort {
        /// Line at which it ends, from 1.
        line: usize,
    },
    /// `import/not-finite`: a number too large to be one.
    #[error("import/not-finite: line {line}, column {column}")]
    NotFinite {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
    },
    /// `import/not-geojson`: JSON, but of another kind.
    #[error("import/not-geojson: {found}")]
    NotGeoJson {
        /// What it says that it is; empty where it says nothing.
        found: String,
    },
    /// `import/bad-shape`: a part that is not as the standard has it.
    #[error("import/bad-shape: {path}: {problem}")]
    BadShape {
        /// Where it stands in the file; empty where that is not known.
        path: String,
        /// What is wrong.
        problem: String,
    },
    /// `import/no-polygon`: nothing in it has an inside.
    #[error("import/no-polygon: {shapes} other shapes")]
    NoPolygon {
        /// How many points and lines it has.
        shapes: usize,
    },
    /// `import/too-many-positions`: more than [`MAX_POSITIONS`].
    #[error("import/too-many-positions: {positions}")]
    TooManyPositions {
        /// How many at least.
        positions: usize,
    },
    /// `import/too-few-positions`: a ring with fewer than four.
    #[error("import/too-few-positions: {path}: {positions}")]
    TooFewPositions {
        /// Where the ring stands in the file.
        path: String,
        /// How many it has.
        positions: usize,
    },
    /// `import/swapped`: latitude before longitude.
    #[error("import/swapped: {path}: [{first}, {second}]")]
    Swapped {
        /// Where the position stands in the file.
        path: String,
        /// Its first number.
        first: f64,
        /// Its second number.
        second: f64,
    },
    /// `import/not-degrees`: numbers that are no longitude and latitude.
    #[error("import/not-degrees: {path}: [{first}, {second}]")]
    NotDegrees {
        /// Where the position stands in the file.
        path: String,
        /// Its first number.
        first: f64,
        /// Its second number.
        second: f64,
    },
    /// `import/too-wide`: more than [`MAX_EXTENT_KM`] across.
    #[error("import/too-wide: {path}: {across_km} km")]
    TooWide {
        /// Where the polygon stands in the file.
        path: String,
        /// Its width or height, whichever is greater, kilometres.
        across_km: f64,
    },
}

/// Why a plan cannot be written as GeoJSON.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ExportError {
    /// `export/no-origin`: the plan does not say where on the globe it lies.
    #[error("export/no-origin")]
    NoOrigin,
    /// `export/origin-not-on-the-globe`: its origin is no place on the globe.
    #[error("export/origin-not-on-the-globe: latitude {latitude_deg}, longitude {longitude_deg}")]
    OriginNotOnTheGlobe {
        /// What stands as latitude, degrees.
        latitude_deg: f64,
        /// What stands as longitude, degrees.
        longitude_deg: f64,
    },
    /// `export/too-far`: a place farther from the origin than the projection reaches.
    #[error("export/too-far: {path}")]
    TooFar {
        /// Where it stands in the plan.
        path: String,
    },
}
