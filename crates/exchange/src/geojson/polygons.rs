//! The polygons of a file, wherever they stand in it.

use ::geojson::{Feature, GeoJson, Geometry, GeometryValue, JsonObject, Position};
use plan::Point;

use super::rings::twice_area;
use super::{ImportError, MAX_POSITIONS};
use crate::projection::wrapped;

/// One polygon and where it stands.
pub(super) struct Polygon<'a> {
    /// The path of its coordinates in the file.
    pub(super) path: String,
    /// Its rings: the outer one, then the holes.
    pub(super) rings: &'a [Vec<Position>],
    /// The properties of its feature.
    pub(super) properties: Option<&'a JsonObject>,
}

/// Everything of a file that matters here.
#[derive(Default)]
pub(super) struct Shapes<'a> {
    /// The polygons, those of a multi-polygon each by itself.
    pub(super) polygons: Vec<Polygon<'a>>,
    /// How many points and lines there are.
    pub(super) others: usize,
    positions: usize,
}

impl<'a> Shapes<'a> {
    /// The shapes of a file.
    pub(super) fn of(geojson: &'a GeoJson) -> Result<Self, ImportError> {
        let mut shapes = Self::default();
        match geojson {
            GeoJson::Geometry(geometry) => shapes.add(geometry, None, "")?,
            GeoJson::Feature(feature) => shapes.add_feature(feature, "")?,
            GeoJson::FeatureCollection(collection) => {
                for (index, feature) in collection.features.iter().enumerate() {
                    shapes.add_feature(feature, &format!("features[{index}]."))?;
                }
            }
        }
        Ok(shapes)
    }

    fn add_feature(&mut self, feature: &'a Feature, place: &str) -> Result<(), ImportError> {
        match &feature.geometry {
            Some(geometry) => self.add(geometry, feature.properties.as_ref(), &format!("{place}geometry.")),
            None => Ok(()),
        }
    }

    /// Adds a geometry. Its depth is bounded by that of the JSON, which the reader bounds.
    fn add(
        &mut self,
        geometry: &'a Geometry,
        properties: Option<&'a JsonObject>,
        place: &str,
    ) -> Result<(), ImportError> {
        match &geometry.value {
            GeometryValue::Polygon { coordinates } => {
                self.add_polygon(coordinates, properties, format!("{place}coordinates"))
            }
            GeometryValue::MultiPolygon { coordinates } => {
                for (index, polygon) in coordinates.iter().enumerate() {
                    self.add_polygon(polygon, properties, format!("{place}coordinates[{index}]"))?;
                }
                Ok(())
            }
            GeometryValue::GeometryCollection { geometries } => {
                for (index, inner) in geometries.iter().enumerate() {
                    self.add(inner, properties, &format!("{place}geometries[{index}]."))?;
                }
                Ok(())
            }
            GeometryValue::Point { .. } => self.add_other(1),
            GeometryValue::MultiPoint { coordinates } | GeometryValue::LineString { coordinates } => {
                self.add_other(coordinates.len())
            }
            GeometryValue::MultiLineString { coordinates } => self.add_other(coordinates.iter().map(Vec::len).sum()),
        }
    }

    fn add_other(&mut self, positions: usize) -> Result<(), ImportError> {
        self.others += 1;
        self.count(positions)
    }

    fn add_polygon(
        &mut self,
        rings: &'a [Vec<Position>],
        properties: Option<&'a JsonObject>,
        path: String,
    ) -> Result<(), ImportError> {
        self.count(rings.iter().map(Vec::len).sum())?;
        // A polygon without a ring is an empty shape, which the standard allows and nothing follows from.
        if !rings.is_empty() {
            self.polygons.push(Polygon { path, rings, properties });
        }
        Ok(())
    }

    fn count(&mut self, positions: usize) -> Result<(), ImportError> {
        self.positions += positions;
        if self.positions > MAX_POSITIONS {
            return Err(ImportError::TooManyPositions { positions: self.positions });
        }
        Ok(())
    }
}

impl Polygon<'_> {
    /// A text among the feature's properties.
    pub(super) fn text(&self, key: &str) -> Option<&str> {
        let text = self.properties?.get(key)?.as_str()?.trim();
        (!text.is_empty()).then_some(text)
    }

    /// A number among the feature's properties.
    pub(super) fn number(&self, key: &str) -> Option<f64> {
        self.properties?.get(key)?.as_f64()
    }

    /// A yes or no among the feature's properties.
    pub(super) fn yes(&self, key: &str) -> Option<bool> {
        self.properties?.get(key)?.as_bool()
    }

    /// Its name, under any of the usual keys.
    pub(super) fn name(&self) -> Option<&str> {
        ["name", "Name", "NAME", "title"].iter().find_map(|key| self.text(key))
    }

    /// A figure that grows with its area, to tell which polygon is the largest: square degrees, with the
    /// degrees of longitude shortened as at its first position.
    pub(super) fn size(&self) -> f64 {
        let ring = &self.rings[0];
        let Some([first_deg, latitude, ..]) = ring.first().map(Position::as_slice) else { return 0.0 };
        let shortened = latitude.to_radians().cos();
        let flat: Vec<Point> = ring
            .iter()
            .filter_map(|position| match position.as_slice() {
                [longitude, latitude, ..] => Some(Point::new(wrapped(longitude - first_deg) * shortened, *latitude)),
                _ => None,
            })
            .collect();
        (twice_area(&flat) / 2.0).abs()
    }
}
