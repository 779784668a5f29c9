//! Other people's formats in and out: GeoJSON, SVG, PNG, and the report.
//!
//! Bytes come in and go out; no file is touched. [`projection`] is the way between degrees and metres, [`geojson`]
//! reads an outline and writes a plan, [`heights`] reads an Esri ASCII grid or a GeoTIFF, [`refusal`] puts into one
//! sentence why something cannot be read or written.

pub(crate) mod bracing;
pub mod compare;
pub(crate) mod earths;
pub mod gates;
pub mod geojson;
pub mod heights;
pub mod page;
pub mod picture;
pub mod png;
pub mod power;
pub mod projection;
pub mod refusal;
pub mod report;
pub mod shapes;
pub(crate) mod slope;
pub mod spice;
pub mod svg;
pub(crate) mod tape;
pub mod underlay;
pub mod work;
