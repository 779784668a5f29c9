//! GeoJSON in, out, and out and in again.

use exchange::geojson::{ExportError, ImportError, ImportNote, MAX_POSITIONS, read, write};
use plan::{HazardKind, Origin, Plan, Point, Rest};
use proptest::prelude::*;
use serde_json::Value;
use workup::Workup;

const LIBERTY_ISLAND: &[u8] = include_bytes!("../../../../tests/data/liberty-island.geojson");

fn area_m2(outline: &[Point]) -> f64 {
    let next = outline.iter().cycle().skip(1);
    let twice: f64 = outline.iter().zip(next).map(|(a, b)| a.east_m * b.north_m - b.east_m * a.north_m).sum();
    (twice / 2.0).abs()
}

fn refused(text: &str) -> ImportError {
    read(text.as_bytes()).unwrap_err()
}

#[test]
fn a_real_island_has_the_area_that_others_found() {
    let import = read(LIBERTY_ISLAND).unwrap();
    assert_eq!(import.notes, []);
    assert_eq!(import.plan.title, "Liberty Island");
    assert_eq!(import.plan.ground.boundary.len(), 47);
    let got = area_m2(&import.plan.ground.boundary);
    // Scale within 300 m of the origin is off by 1e-9; the positions are rounded to 0.1 mm.
    for (want_m2, tolerance, source) in [
        (59_470.964, 1e-7, "geodesic area on WGS 84, tests/data/README.md"),
        (14.7 * 4_046.856_422_4, 4e-3, "14.7 acres, National Park Service, from memory, to three digits"),
    ] {
        assert!((got / want_m2 - 1.0).abs() < tolerance, "{got:.4}; {source}: {want_m2:.4}");
    }
    let origin = import.plan.origin.unwrap();
    assert_eq!((origin.latitude_deg, origin.longitude_deg), (40.68982, -74.04514));
}

#[test]
fn every_kind_of_file_that_holds_a_polygon_is_read() {
    let polygon = r#"{"type":"Polygon","coordinates":[[[10,50],[10.001,50],[10.001,50.001],[10,50.001],[10,50]],
        [[10.0002,50.0002],[10.0002,50.0004],[10.0004,50.0004],[10.0002,50.0002]]]}"#;
    let feature = format!(r#"{{"type":"Feature","properties":{{"name":" Far Bank "}},"geometry":{polygon}}}"#);
    let collection = format!(r#"{{"type":"FeatureCollection","features":[{feature}]}}"#);
    let gathered = format!(r#"{{"type":"GeometryCollection","geometries":[{polygon}]}}"#);
    let mut outlines = Vec::new();
    for (text, title) in [(polygon, ""), (&feature, "Far Bank"), (&collection, "Far Bank"), (&gathered, "")] {
        let import = read(text.as_bytes()).unwrap();
        assert_eq!(import.notes, []);
        assert_eq!(import.plan.title, title);
        assert_eq!(import.plan.ground.keep_outs.len(), 1);
        assert_eq!(import.plan.ground.keep_outs[0].name, "hole 1");
        assert_eq!(import.plan.ground.keep_outs[0].outline.len(), 3);
        outlines.push(import.plan.ground.boundary);
    }
    assert!(outlines.iter().all(|outline| outline.len() == 4 && *outline == outlines[0]));
    // A thousandth of a degree at 50 north: 71.70 m by 111.23 m (facts 8.5's formulas).
    assert!((outlines[0][1].east_m - outlines[0][0].east_m - 71.695).abs() < 0.01);
    assert!((outlines[0][2].north_m - outlines[0][1].north_m - 111.229).abs() < 0.01);
}

#[test]
fn the_largest_polygon_is_taken_and_the_rest_are_told() {
    let text = r#"{"type":"FeatureCollection","features":[
        {"type":"Feature","properties":{"name":"shed"},"geometry":{"type":"Point","coordinates":[10,50]}},
        {"type":"Feature","properties":null,"geometry":null},
        {"type":"Feature","properties":{"name":"two meadows"},"geometry":{"type":"MultiPolygon","coordinates":[
            [[[10,50],[10.001,50],[10.001,50.001],[10,50]]],
            [[[10,50],[10.002,50],[10.002,50.002],[10,50.002]]]]}}]}"#;
    let import = read(text.as_bytes()).unwrap();
    assert_eq!(import.plan.title, "two meadows");
    assert_eq!(import.plan.ground.boundary.len(), 4);
    assert_eq!(
        import.notes,
        [
            ImportNote::RingClosed { path: "features[2].geometry.coordinates[1][0]".to_owned() },
            ImportNote::PolygonsLeftOut { polygons: 1 },
            ImportNote::ShapesLeftOut { shapes: 1 },
        ]
    );
}

#[test]
fn an_outline_across_the_antimeridian_stays_whole() {
    let text = r#"{"type":"Polygon","coordinates":[[[179.999,-16.8],[-179.999,-16.8],[-179.999,-16.799],
        [179.999,-16.799],[179.999,-16.8]]]}"#;
    let import = read(text.as_bytes()).unwrap();
    let origin = import.plan.origin.unwrap();
    assert!((origin.longitude_deg.abs() - 180.0).abs() < 1e-9);
    let east: Vec<f64> = import.plan.ground.boundary.iter().map(|at| at.east_m).collect();
    assert!(east[1] - east[0] > 200.0 && east[1] - east[0] < 220.0, "{east:?}");
}

#[test]
fn what_cannot_be_read_is_refused_with_its_place() {
    let ring = |coordinates: &str| format!(r#"{{"type":"Polygon","coordinates":[[{coordinates}]]}}"#);
    let path = |at: &str| at.to_owned();
    for (text, want) in [
        (String::new(), ImportError::CutShort { line: 1 }),
        ("{\"type\":\n\"Polygon\"".to_owned(), ImportError::CutShort { line: 2 }),
        ("no".to_owned(), ImportError::NotJson { line: 1, column: 2 }),
        ("[]".to_owned(), ImportError::NotGeoJson { found: String::new() }),
        (r#"{"type":"Topology"}"#.to_owned(), ImportError::NotGeoJson { found: path("Topology") }),
        (r#"{"format":"netfold-plan"}"#.to_owned(), ImportError::NotGeoJson { found: path("netfold-plan") }),
        (r#"{"type":"Point","coordinates":[1,2]}"#.to_owned(), ImportError::NoPolygon { shapes: 1 }),
        (r#"{"type":"FeatureCollection","features":[]}"#.to_owned(), ImportError::NoPolygon { shapes: 0 }),
        (r#"{"type":"Polygon","coordinates":[]}"#.to_owned(), ImportError::NoPolygon { shapes: 0 }),
        (ring("[1,2],[1,3],[2,2]"), ImportError::TooFewPositions { path: path("coordinates[0]"), positions: 3 }),
        (ring(""), ImportError::TooFewPositions { path: path("coordinates[0]"), positions: 0 }),
        (
            ring("[10,50],[10,50.1],[\"a\",50],[10,50]"),
            ImportError::BadShape { path: path("coordinates[0][2][0]"), problem: path("not a number") },
        ),
        (
            ring("[10,50],[10,null],[10,50]"),
            ImportError::BadShape { path: path("coordinates[0][1][1]"), problem: path("not a number") },
        ),
        (
            ring("[10,50],[10,95],[10.1,50],[10,50]"),
            ImportError::Swapped { path: path("coordinates[0][1]"), first: 10.0, second: 95.0 },
        ),
        (
            ring("[604000,5762000],[604100,5762000],[604100,5762100],[604000,5762000]"),
            ImportError::NotDegrees { path: path("coordinates[0][0]"), first: 604_000.0, second: 5_762_000.0 },
        ),
        (
            ring("[-16.8,179.99],[-16.8,179.98],[-16.7,179.98],[-16.8,179.99]"),
            ImportError::Swapped { path: path("coordinates[0][0]"), first: -16.8, second: 179.99 },
        ),
    ] {
        assert_eq!(refused(&text), want, "{text}");
    }
    assert!(matches!(refused(&ring("[1e999,2],[1,3],[2,2],[1,2]")), ImportError::NotFinite { line: 1, .. }));
    assert!(matches!(refused(&ring("[10],[10],[10],[10]")), ImportError::BadShape { .. }));
    assert!(matches!(refused(r#"{"type":"Polygon"}"#), ImportError::BadShape { .. }));
    assert!(matches!(refused(r#"{"type":"Feature","geometry":7}"#), ImportError::BadShape { .. }));
    match refused(&ring("[10,50],[12,50],[12,52],[10,50]")) {
        ImportError::TooWide { path, across_km } => {
            assert_eq!(path, "coordinates");
            assert!((across_km - 222.6).abs() < 0.1);
        }
        other => panic!("{other}"),
    }
    assert!(read(&[0xFF, 0xFE]).is_err());
}

#[test]
fn a_stranger_cannot_make_the_reader_work_without_end() {
    let many = "[10,50],".repeat(MAX_POSITIONS + 1);
    let text = format!(r#"{{"type":"Polygon","coordinates":[[{many}[10,50]]]}}"#);
    assert_eq!(refused(&text), ImportError::TooManyPositions { positions: MAX_POSITIONS + 2 });
    let features = r#"{"type":"Feature","geometry":null},"#.repeat(600_000);
    let text = format!(r#"{{"type":"FeatureCollection","features":[{features}]}}"#);
    assert!(matches!(refused(&text), ImportError::TooManyPositions { .. }));
    let deep = r#"{"type":"GeometryCollection","geometries":["#.repeat(50_000);
    assert!(matches!(refused(&deep), ImportError::NotJson { .. }));
    let deep = "[".repeat(100_000);
    assert!(matches!(refused(&deep), ImportError::NotJson { .. }));
    assert_eq!(read(&vec![b' '; 64 * 1024 * 1024 + 1]), Err(ImportError::TooLarge { bytes: 64 * 1024 * 1024 + 1 }));
}

fn demo() -> Plan {
    plan::read(include_bytes!("../../../../assets/demo/kettle-field.netfold.json")).unwrap().plan
}

#[test]
fn what_is_written_reads_back_within_a_millimetre() {
    let plan = demo();
    let bytes = write(&plan, &workup::workup(&plan, workup::Depth::Quick)).unwrap();
    let back = read(&bytes).unwrap().plan;
    assert_eq!(back.title, plan.title);
    let moved = moved_between(&plan, &back);
    let near = |want: &[Point], got: &[Point]| {
        assert_eq!(want.len(), got.len());
        // The reader may start the ring elsewhere or run it the other way.
        for at in want {
            let nearest = got
                .iter()
                .map(|got| (got.east_m + moved.east_m - at.east_m).hypot(got.north_m + moved.north_m - at.north_m))
                .fold(f64::INFINITY, f64::min);
            assert!(nearest < 1e-3, "{nearest}");
        }
    };
    near(&plan.ground.boundary, &back.ground.boundary);
    assert_eq!(back.ground.keep_outs.len(), 2);
    for (want, got) in plan.ground.keep_outs.iter().zip(&back.ground.keep_outs) {
        assert_eq!((&want.name, want.clearance_m, want.water), (&got.name, got.clearance_m, got.water));
        near(&want.outline, &got.outline);
    }
}

/// Where the second plan's origin lies in the first one's metres. The two planes are turned against each other
/// by the convergence of meridians, which over a field is some micrometres.
fn moved_between(first: &Plan, second: &Plan) -> Point {
    let degrees = |origin: &Option<Origin>| {
        let origin = origin.as_ref().unwrap();
        exchange::projection::Degrees { latitude_deg: origin.latitude_deg, longitude_deg: origin.longitude_deg }
    };
    exchange::projection::Local::about(degrees(&first.origin)).unwrap().to_metres(degrees(&second.origin)).unwrap()
}

#[test]
fn what_is_written_is_geojson_as_the_standard_has_it() {
    let plan = demo();
    let worked = workup::workup(&plan, workup::Depth::Quick);
    let bytes = write(&plan, &worked).unwrap();
    assert_eq!(bytes, write(&plan, &worked).unwrap(), "the same plan gives the same bytes");
    let value: Value = serde_json::from_slice(&bytes).unwrap();
    let features = value["features"].as_array().unwrap();
    let count = |role: &str| features.iter().filter(|feature| feature["properties"]["role"] == role).count();
    let lay = worked.runs[0].lay.as_ref().unwrap();
    assert_eq!((count("paddock"), count("keep_out"), count("hazard"), count("run")), (1, 2, 2, 1));
    assert_eq!((count("post"), count("corner")), (lay.posts.len(), lay.corners.len()));
    assert_eq!(count("join"), 2);
    assert_eq!((count("strip"), count("coop"), count("feed"), count("earth_stakes")), (1, 1, 1, 1));
    assert!(count("stake") > 0);
    let mut rings = 0;
    for feature in features {
        let polygons = match feature["geometry"]["type"].as_str().unwrap() {
            "Polygon" => vec![feature["geometry"]["coordinates"].clone()],
            "MultiPolygon" => feature["geometry"]["coordinates"].as_array().unwrap().clone(),
            _ => continue,
        };
        for polygon in polygons {
            for (index, ring) in polygon.as_array().unwrap().iter().enumerate() {
                let ring: Vec<Point> = ring
                    .as_array()
                    .unwrap()
                    .iter()
                    .map(|at| Point::new(at[0].as_f64().unwrap(), at[1].as_f64().unwrap()))
                    .collect();
                assert!(ring.len() >= 4 && ring.first() == ring.last());
                let about = ring[0];
                let twice: f64 = ring
                    .windows(2)
                    .map(|side| {
                        (side[0].east_m - about.east_m) * (side[1].north_m - about.north_m)
                            - (side[1].east_m - about.east_m) * (side[0].north_m - about.north_m)
                    })
                    .sum();
                assert_eq!(twice > 0.0, index == 0, "an outer ring runs counter-clockwise, a hole clockwise");
                rings += 1;
            }
        }
    }
    assert!(rings >= 7);
    assert_eq!(plan.ground.hazards[0].kind, HazardKind::OverheadLine);
    let line = features.iter().find(|feature| feature["properties"]["kind"] == "overhead_line").unwrap();
    assert_eq!(line["properties"]["line_voltage_kv"], 11.0);
}

#[test]
fn a_plan_that_is_nowhere_is_not_written() {
    let nowhere = Plan { origin: None, ..demo() };
    assert_eq!(write(&nowhere, &Workup::default()), Err(ExportError::NoOrigin));
    let origin = |latitude_deg| Some(Origin { latitude_deg, longitude_deg: 0.0, rest: Rest::new() });
    let off = Plan { origin: origin(91.0), ..demo() };
    assert!(matches!(write(&off, &Workup::default()), Err(ExportError::OriginNotOnTheGlobe { .. })));
    let mut far = demo();
    far.ground.boundary[2].east_m = 200_000.0;
    assert_eq!(write(&far, &Workup::default()), Err(ExportError::TooFar { path: "ground.boundary".to_owned() }));
    assert!(write(&Plan { origin: origin(10.0), ..Plan::default() }, &Workup::default()).is_ok());
}

/// Something like coordinates: lists in lists, with odd things among the numbers.
fn coordinates() -> impl Strategy<Value = Value> {
    let number = prop_oneof![
        8 => (-180.0_f64..180.0).prop_map(Value::from),
        4 => (-0.01_f64..0.01).prop_map(|deg| Value::from(45.0 + deg)),
        1 => Just(Value::from(1e308)),
        1 => Just(Value::Null),
        1 => Just(Value::from("north")),
    ];
    let position = prop_oneof![
        12 => prop::collection::vec((-0.01_f64..0.01).prop_map(|deg| Value::from(45.0 + deg)), 2..4),
        1 => prop::collection::vec(number, 0..4),
    ];
    let ring = prop::collection::vec(position.prop_map(Value::from), 0..7).prop_map(Value::from);
    ring.prop_recursive(3, 40, 4, |inner| prop::collection::vec(inner, 0..4).prop_map(Value::from))
}

proptest! {
    #[test]
    fn no_file_stops_the_reader(
        bytes in prop::collection::vec(any::<u8>(), 0..200),
        kinds in prop::collection::vec(
            prop::sample::select(vec![
                "Polygon", "MultiPolygon", "Point", "LineString", "MultiPoint", "MultiLineString", "GeometryCollection",
            ]),
            1..5,
        ),
        coordinates in prop::collection::vec(coordinates(), 5),
    ) {
        let _refused_or_read = read(&bytes);
        let features: Vec<Value> = kinds
            .iter()
            .zip(&coordinates)
            .map(|(kind, coordinates)| {
                let geometry = serde_json::json!({ "type": kind, "coordinates": coordinates, "geometries": [] });
                serde_json::json!({ "type": "Feature", "properties": { "role": "paddock" }, "geometry": geometry })
            })
            .collect();
        for value in [serde_json::json!({ "type": "FeatureCollection", "features": features }), features[0].clone()] {
            if let Ok(import) = read(value.to_string().as_bytes()) {
                let boundary = &import.plan.ground.boundary;
                prop_assert!(boundary.len() >= 3);
                prop_assert!(boundary.iter().all(|at| at.east_m.abs() <= 1e5 && at.north_m.abs() <= 1e5));
                prop_assert!(write(&import.plan, &Workup::default()).is_ok());
            }
        }
    }
}

#[test]
fn walls_shade_words_and_drop_points_are_features_with_their_roles() {
    let mut plan = demo();
    plan.walls = vec![plan::Wall {
        name: "Lane wall".to_owned(),
        path: vec![Point::new(0.0, 0.0), Point::new(30.0, 0.0)],
        holds_birds: Some(true),
        ..plan::Wall::default()
    }];
    let outline = vec![Point::new(5.0, 5.0), Point::new(9.0, 5.0), Point::new(9.0, 9.0)];
    plan.ground.shade = vec![plan::Shade { name: "Oaks".to_owned(), outline, ..plan::Shade::default() }];
    plan.labels = vec![plan::Label { at: Point::new(3.0, 3.0), text: "trough".to_owned(), ..plan::Label::default() }];
    plan.runs[0].drop_at = Some(Point::new(2.0, 1.0));
    let written: Value = serde_json::from_slice(&write(&plan, &Workup::default()).unwrap()).unwrap();
    let of = |role: &str| {
        let all = written["features"].as_array().unwrap();
        all.iter().find(|one| one["properties"]["role"] == role).unwrap_or_else(|| panic!("{role}"))
    };
    assert_eq!(of("wall")["geometry"]["type"], "LineString");
    assert_eq!(of("wall")["properties"]["holds_birds"], true);
    assert_eq!(
        (of("shade")["geometry"]["type"].as_str(), of("shade")["properties"]["name"].as_str()),
        (Some("Polygon"), Some("Oaks"))
    );
    assert_eq!(of("label")["properties"]["text"], "trough");
    assert_eq!(of("drop_point")["geometry"]["type"], "Point");
}
