//! From a stranger's bytes to the ground of a plan.

use ::geojson::{GeoJson, Position};
use plan::{KeepOut, Origin, Plan, Point, Rest};
use serde::Deserialize;
use serde_json::Value;

use super::polygons::{Polygon, Shapes};
use super::{Import, ImportError, ImportNote, MAX_BYTES, MAX_EXTENT_KM, MAX_POSITIONS, role};
use crate::projection::{Degrees, Local, wrapped};

/// Kilometres in a degree of latitude, as near as a bound needs it.
const KM_PER_DEGREE: f64 = 111.3;
/// The longest name that is taken over, characters.
const LONGEST_NAME: usize = 120;

/// Reads the outline of a paddock from GeoJSON.
///
/// The largest polygon becomes the boundary, its holes keep-outs; a name of the feature becomes the title. In a
/// file of our own making the features say which is which. The origin is the centre of the boundary's bounds,
/// rounded to 1e-5 degrees (about a metre), so that metres stay small.
///
/// # Errors
/// See [`ImportError`]: the first trouble met, with its place.
pub fn read(bytes: &[u8]) -> Result<Import, ImportError> {
    let geojson = parse(bytes)?;
    let mut notes = Vec::new();
    if let Some(name) = other_coordinates(&geojson) {
        notes.push(ImportNote::OtherCoordinates { name });
    }
    let shapes = Shapes::of(&geojson)?;
    let chosen = choose(&shapes)?;
    let boundary = &shapes.polygons[chosen];
    let own: Vec<&Polygon<'_>> = if is_a(boundary, role::PADDOCK) {
        shapes.polygons.iter().filter(|polygon| is_a(polygon, role::KEEP_OUT)).collect()
    } else {
        Vec::new()
    };

    let outline = degrees(boundary, 0, &mut notes)?;
    let origin = centre(&outline, &boundary.path)?;
    let ground = Ground::about(origin);
    let mut plan = Plan {
        title: boundary.name().map(shortened).unwrap_or_default(),
        origin: Some(Origin {
            latitude_deg: origin.latitude_deg,
            longitude_deg: origin.longitude_deg,
            rest: Rest::new(),
        }),
        ..Plan::default()
    };
    plan.ground.boundary = ground.metres(&outline, &boundary.path)?;
    for hole in 1..boundary.rings.len() {
        let outline = ground.metres(&degrees(boundary, hole, &mut notes)?, &boundary.path)?;
        plan.ground.keep_outs.push(keep_out(format!("hole {hole}"), outline));
    }
    for polygon in &own {
        let outline = ground.metres(&degrees(polygon, 0, &mut notes)?, &polygon.path)?;
        plan.ground.keep_outs.push(KeepOut {
            clearance_m: polygon.number("clearance_m"),
            may_enclose: polygon.yes("may_enclose"),
            water: polygon.yes("water").unwrap_or(false),
            ..keep_out(polygon.name().map(shortened).unwrap_or_default(), outline)
        });
    }
    let polygons = shapes.polygons.len() - 1 - own.len();
    if polygons > 0 {
        notes.push(ImportNote::PolygonsLeftOut { polygons });
    }
    if shapes.others > 0 {
        notes.push(ImportNote::ShapesLeftOut { shapes: shapes.others });
    }
    Ok(Import { plan, notes })
}

fn parse(bytes: &[u8]) -> Result<GeoJson, ImportError> {
    if bytes.len() > MAX_BYTES {
        return Err(ImportError::TooLarge { bytes: bytes.len() });
    }
    // Every value but the first of a list follows a comma, and every list opens with a bracket: so these bound
    // the memory that the values take, before any is made. Four to a position leaves room for heights.
    let opened = bytes.iter().filter(|byte| matches!(byte, b'[' | b'{' | b',')).count();
    if opened > 10 * MAX_POSITIONS {
        return Err(ImportError::TooManyPositions { positions: opened / 10 });
    }
    let bytes = bytes.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(bytes);
    let value: Value = serde_json::from_slice(bytes).map_err(|error| {
        let (line, column) = (error.line().max(1), error.column().max(1));
        if error.is_eof() {
            ImportError::CutShort { line }
        } else if error.to_string().contains("out of range") {
            ImportError::NotFinite { line, column }
        } else {
            ImportError::NotJson { line, column }
        }
    })?;
    const KINDS: [&str; 9] = [
        "FeatureCollection",
        "Feature",
        "Polygon",
        "MultiPolygon",
        "GeometryCollection",
        "Point",
        "MultiPoint",
        "LineString",
        "MultiLineString",
    ];
    let kind = ["type", "format"].iter().find_map(|key| value.get(key)?.as_str()).unwrap_or_default();
    if !KINDS.contains(&kind) {
        return Err(ImportError::NotGeoJson { found: shortened(kind) });
    }
    GeoJson::deserialize(&value).map_err(|error| match odd_coordinate(&value, String::new()) {
        Some(path) => ImportError::BadShape { path, problem: "not a number".to_owned() },
        None => ImportError::BadShape { path: String::new(), problem: shortened(&error.to_string()) },
    })
}

/// The place of the first thing among coordinates that is no number.
fn odd_coordinate(value: &Value, path: String) -> Option<String> {
    fn within(value: &Value, path: String) -> Option<String> {
        match value {
            Value::Array(values) => {
                values.iter().enumerate().find_map(|(index, value)| within(value, format!("{path}[{index}]")))
            }
            Value::Number(_) => None,
            _ => Some(path),
        }
    }
    let key_path = |key: &str| if path.is_empty() { key.to_owned() } else { format!("{path}.{key}") };
    match value {
        Value::Object(entries) => entries.iter().find_map(|(key, value)| match key.as_str() {
            "coordinates" => within(value, key_path(key)),
            "geometry" | "geometries" | "features" => odd_coordinate(value, key_path(key)),
            _ => None,
        }),
        Value::Array(values) => {
            values.iter().enumerate().find_map(|(index, value)| odd_coordinate(value, format!("{path}[{index}]")))
        }
        _ => None,
    }
}

/// The name of coordinates other than WGS 84 that a file of the old standard (2008) may give.
fn other_coordinates(geojson: &GeoJson) -> Option<String> {
    let members = match geojson {
        GeoJson::Geometry(geometry) => &geometry.foreign_members,
        GeoJson::Feature(feature) => &feature.foreign_members,
        GeoJson::FeatureCollection(collection) => &collection.foreign_members,
    };
    let name = members.as_ref()?.get("crs")?.get("properties")?.get("name")?.as_str()?;
    let usual = ["CRS84", "EPSG::4326", "EPSG:4326", "OGC:CRS84"].iter().any(|usual| name.ends_with(usual));
    (!usual).then(|| shortened(name))
}

fn is_a(polygon: &Polygon<'_>, role: &str) -> bool {
    polygon.text("role") == Some(role)
}

/// Which polygon is the paddock: the one that says so, else the largest.
fn choose(shapes: &Shapes<'_>) -> Result<usize, ImportError> {
    let said = shapes.polygons.iter().any(|polygon| is_a(polygon, role::PADDOCK));
    shapes
        .polygons
        .iter()
        .enumerate()
        .filter(|(_, polygon)| !said || is_a(polygon, role::PADDOCK))
        // The first of equals: the greatest, and then the least index.
        .max_by(|(at, a), (bt, b)| a.size().total_cmp(&b.size()).then(bt.cmp(at)))
        .map(|(index, _)| index)
        .ok_or(ImportError::NoPolygon { shapes: shapes.others })
}

/// The positions of a ring, checked, without the repeated last one.
fn degrees(polygon: &Polygon<'_>, ring: usize, notes: &mut Vec<ImportNote>) -> Result<Vec<Degrees>, ImportError> {
    let path = format!("{}[{ring}]", polygon.path);
    let positions = &polygon.rings[ring];
    if positions.len() < 4 {
        return Err(ImportError::TooFewPositions { path, positions: positions.len() });
    }
    let mut degrees = Vec::with_capacity(positions.len());
    for (index, position) in positions.iter().enumerate() {
        degrees.push(place(position, || format!("{path}[{index}]"))?);
    }
    if degrees.first() == degrees.last() {
        degrees.pop();
    } else {
        notes.push(ImportNote::RingClosed { path });
    }
    Ok(degrees)
}

fn place(position: &Position, path: impl Fn() -> String) -> Result<Degrees, ImportError> {
    let &[longitude_deg, latitude_deg, ..] = position.as_slice() else {
        return Err(ImportError::BadShape { path: path(), problem: "fewer than two numbers".to_owned() });
    };
    let in_range = longitude_deg.abs() <= 180.0 && latitude_deg.abs() <= 90.0;
    let in_range_swapped = latitude_deg.abs() <= 180.0 && longitude_deg.abs() <= 90.0;
    match (in_range, in_range_swapped) {
        (true, _) => Ok(Degrees { latitude_deg, longitude_deg }),
        (false, true) => Err(ImportError::Swapped { path: path(), first: longitude_deg, second: latitude_deg }),
        (false, false) => Err(ImportError::NotDegrees { path: path(), first: longitude_deg, second: latitude_deg }),
    }
}

/// The centre of the bounds, rounded to 1e-5 degrees.
fn centre(outline: &[Degrees], path: &str) -> Result<Degrees, ImportError> {
    // Longitudes are taken from the first one, so that an outline across the antimeridian stays whole.
    let first_deg = outline[0].longitude_deg;
    let bounds = |values: &mut dyn Iterator<Item = f64>| {
        values.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| (low.min(value), high.max(value)))
    };
    let (south, north) = bounds(&mut outline.iter().map(|place| place.latitude_deg));
    let (west, east) = bounds(&mut outline.iter().map(|place| wrapped(place.longitude_deg - first_deg)));
    let latitude_deg = f64::midpoint(south, north);
    let high_km = (north - south) * KM_PER_DEGREE;
    let wide_km = (east - west) * KM_PER_DEGREE * latitude_deg.to_radians().cos();
    let across_km = high_km.max(wide_km);
    if across_km > MAX_EXTENT_KM {
        return Err(ImportError::TooWide { path: path.to_owned(), across_km });
    }
    let rounded = |degrees: f64| (degrees * 1e5).round() / 1e5;
    Ok(Degrees {
        latitude_deg: rounded(latitude_deg),
        longitude_deg: rounded(wrapped(first_deg + f64::midpoint(west, east))),
    })
}

/// The way to metres about an origin.
struct Ground(Local);

impl Ground {
    fn about(origin: Degrees) -> Self {
        Self(Local::about(origin).expect("the centre of places on the globe is on the globe"))
    }

    fn metres(&self, outline: &[Degrees], path: &str) -> Result<Vec<Point>, ImportError> {
        let too_wide = |_| ImportError::TooWide { path: path.to_owned(), across_km: MAX_EXTENT_KM };
        outline.iter().map(|place| self.0.to_metres(*place).map_err(too_wide)).collect()
    }
}

fn keep_out(name: String, outline: Vec<Point>) -> KeepOut {
    KeepOut { name, ..KeepOut::new(outline) }
}

fn shortened(text: &str) -> String {
    text.chars().filter(|letter| !letter.is_control()).take(LONGEST_NAME).collect()
}
