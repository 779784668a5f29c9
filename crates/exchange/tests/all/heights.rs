//! Heights in: Esri ASCII grids and GeoTIFFs over a plan's ground, and what is refused.

use std::io::Cursor;

use exchange::heights::{HeightsError, Import, Note, read, sentence};
use exchange::projection::{Degrees, Local, TransverseMercator, WGS_84};
use plan::{HeightGrid, Origin, Plan, Point, Rest};
use tiff::encoder::{TiffEncoder, colortype::Gray32Float};
use tiff::tags::Tag;
use words::Words;

/// A field of 20 m by 12 m whose south-west corner is the origin.
fn field(origin: Option<(f64, f64)>) -> Plan {
    let mut plan = Plan::default();
    plan.ground.boundary = [(0.0, 0.0), (20.0, 0.0), (20.0, 12.0), (0.0, 12.0)].map(Point::from).to_vec();
    plan.origin = origin.map(|(latitude_deg, longitude_deg)| Origin { latitude_deg, longitude_deg, rest: Rest::new() });
    plan
}

/// A tilted plane, so that every way of sampling gives the same heights.
fn plane(east_m: f64, north_m: f64) -> f64 {
    50.0 + 0.1 * east_m - 0.05 * north_m
}

fn ascii(first: (f64, f64), cell: f64, (columns, rows): (usize, usize), up: impl Fn(f64, f64) -> f64) -> String {
    let mut text = format!(
        "ncols {columns}\nnrows {rows}\nxllcenter {}\nyllcenter {}\ncellsize {cell}\nNODATA_value -9999\n",
        first.0, first.1
    );
    for row in (0..rows).rev() {
        let line: Vec<String> = (0..columns)
            .map(|column| format!("{:.6}", up(first.0 + cell * column as f64, first.1 + cell * row as f64)))
            .collect();
        text.push_str(&line.join(" "));
        text.push('\n');
    }
    text
}

struct Tags {
    scale: (f64, f64),
    /// North-western corner of the first pixel.
    corner: (f64, f64),
    keys: Vec<(u16, u16)>,
    no_data: Option<&'static str>,
}

/// A GeoTIFF whose rows run from the north.
fn geotiff(tags: &Tags, (columns, rows): (u32, u32), up: impl Fn(u32, u32) -> f32) -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    let mut encoder = TiffEncoder::new(&mut bytes).unwrap();
    let mut image = encoder.new_image::<Gray32Float>(columns, rows).unwrap();
    let directory = image.encoder();
    directory.write_tag(Tag::ModelPixelScaleTag, &[tags.scale.0, tags.scale.1, 0.0][..]).unwrap();
    directory.write_tag(Tag::ModelTiepointTag, &[0.0, 0.0, 0.0, tags.corner.0, tags.corner.1, 0.0][..]).unwrap();
    if !tags.keys.is_empty() {
        let mut keys: Vec<u16> = vec![1, 1, 0, tags.keys.len() as u16];
        keys.extend(tags.keys.iter().flat_map(|&(code, value)| [code, 0, 1, value]));
        directory.write_tag(Tag::GeoKeyDirectoryTag, &keys[..]).unwrap();
    }
    if let Some(no_data) = tags.no_data {
        directory.write_tag(Tag::GdalNodata, no_data).unwrap();
    }
    let heights: Vec<f32> =
        (0..rows).flat_map(|row| (0..columns).map(move |column| (column, row))).map(|(c, r)| up(c, r)).collect();
    image.write_data(&heights).unwrap();
    bytes.into_inner()
}

fn at(grid: &HeightGrid, index: usize) -> Point {
    let columns = grid.columns as usize;
    Point::new(
        grid.south_west.east_m + grid.cell_m * (index % columns) as f64,
        grid.south_west.north_m + grid.cell_m * (index / columns) as f64,
    )
}

/// The heights are those of the plane wherever one is known, and known over the field.
fn is_the_plane(import: &Import, plane: impl Fn(Point) -> f64, tolerance_m: f64) {
    let grid = &import.grid;
    let mut over_field = 0;
    for (index, up_m) in grid.up_m.iter().enumerate() {
        let at = at(grid, index);
        let inside = (0.0..=20.0).contains(&at.east_m) && (0.0..=12.0).contains(&at.north_m);
        match up_m {
            Some(up_m) => assert!((up_m - plane(at)).abs() < tolerance_m, "{at:?}: {up_m} {}", plane(at)),
            None => assert!(!inside, "no height at {at:?}"),
        }
        over_field += usize::from(inside);
    }
    assert!(over_field as f64 > 0.8 * 20.0 * 12.0 / (grid.cell_m * grid.cell_m), "{over_field}");
}

#[test]
fn an_ascii_grid_in_the_plans_metres_is_clipped_as_it_stands() {
    let text = ascii((-30.0, -40.0), 1.0, (90, 100), plane);
    let import = read(text.as_bytes(), &field(None)).unwrap();
    assert!(import.notes.is_empty() && import.origin.is_none());
    assert_eq!((import.grid.south_west, import.grid.cell_m), (Point::new(-5.0, -5.0), 1.0));
    assert_eq!((import.grid.columns, import.grid.rows()), (31, 23));
    is_the_plane(&import, |at| plane(at.east_m, at.north_m), 6e-4);
}

#[test]
fn corners_and_centres_of_cells_are_half_a_cell_apart() {
    let head = "NCOLS 2\nNROWS 2\nXLLCORNER -10\nYLLCORNER -10\nCELLSIZE 20\n1 2\n3 nan\n";
    let import = read(head.as_bytes(), &field(None)).unwrap();
    assert_eq!(import.grid.south_west, Point::new(0.0, 0.0));
    // The northern row stands first in the file.
    assert_eq!(import.grid.up_m, [Some(3.0), None, Some(1.0), Some(2.0)]);
    assert_eq!(import.notes, [Note::Holes { holes: 1 }, Note::Coarse { cell_m: 20.0 }]);
}

#[test]
fn a_grid_of_a_utm_zone_lands_on_the_plan() {
    // 9 degrees east is the meridian of zone 32; 1.2 degrees off it the zone's north leans by about a degree.
    let origin = (48.0, 10.2);
    let mercator = TransverseMercator::new(WGS_84, 0.9996);
    let local = Local::about(Degrees { latitude_deg: origin.0, longitude_deg: origin.1 }).unwrap();
    let to_utm = |at: Point| {
        let degrees = local.to_degrees(at).unwrap();
        let (east, north) =
            mercator.forward(degrees.latitude_deg.to_radians(), (degrees.longitude_deg - 9.0).to_radians());
        (east + 500_000.0, north)
    };
    let zero = to_utm(Point::default());
    let leans = to_utm(Point::new(20.0, 0.0)).1 - zero.1;
    assert!(leans.abs() > 0.2, "the zone must lean for this test to tell: {leans}");
    let up = |east: f64, north: f64| 300.0 + 0.2 * (east - zero.0) - 0.1 * (north - zero.1);
    let want = |at: Point| {
        let (east, north) = to_utm(at);
        up(east, north)
    };
    let corner = ((zero.0 - 30.0).floor(), (zero.1 + 40.0).floor());
    let tags = Tags {
        scale: (1.0, 1.0),
        corner,
        keys: vec![(1024, 1), (1025, 1), (3072, 32_632), (3076, 9001)],
        no_data: None,
    };
    let tiff = geotiff(&tags, (80, 80), |column, row| {
        up(corner.0 + f64::from(column) + 0.5, corner.1 - f64::from(row) - 0.5) as f32
    });
    let import = read(&tiff, &field(Some(origin))).unwrap();
    assert!(import.notes.is_empty(), "{:?}", import.notes);
    is_the_plane(&import, want, 2e-3);
    // An ASCII grid does not say its zone; at this place it can only be that one.
    let text = ascii((corner.0, corner.1 - 80.0), 1.0, (80, 80), up);
    let import = read(text.as_bytes(), &field(Some(origin))).unwrap();
    assert_eq!(import.notes, [Note::TakenAsUtm { zone: 32 }]);
    is_the_plane(&import, want, 2e-3);
    // An empty plan begins in the middle of the heights.
    let import = read(&tiff, &Plan::default()).unwrap();
    let origin = import.origin.unwrap();
    assert!((origin.latitude_deg - 48.0).abs() < 1e-3 && (origin.longitude_deg - 10.2).abs() < 1e-3);
    assert!(import.grid.up_m.iter().flatten().count() > 70 * 70);
}

#[test]
fn a_grid_in_degrees_lands_on_the_plan_too() {
    let origin = (-33.5, 18.4);
    let local = Local::about(Degrees { latitude_deg: origin.0, longitude_deg: origin.1 }).unwrap();
    let want = |at: Point| {
        let degrees = local.to_degrees(at).unwrap();
        80.0 + 1e4 * (degrees.longitude_deg - origin.1) + 5e3 * (degrees.latitude_deg - origin.0)
    };
    let step = 1e-5;
    let corner = (origin.1 - 4e-4, origin.0 + 5e-4);
    let tags = Tags {
        scale: (step, step),
        corner,
        keys: vec![(1024, 2), (1025, 2), (2048, 4326), (2054, 9102)],
        no_data: Some("-32768"),
    };
    let tiff = geotiff(&tags, (100, 100), |column, row| {
        let (east, north) = (corner.0 + step * f64::from(column), corner.1 - step * f64::from(row));
        if column == 0 { -32768.0 } else { (80.0 + 1e4 * (east - origin.1) + 5e3 * (north - origin.0)) as f32 }
    });
    let import = read(&tiff, &field(Some(origin))).unwrap();
    is_the_plane(&import, want, 2e-3);
    assert_eq!(read(&tiff, &field(None)), Err(HeightsError::NoOrigin));
}

#[test]
fn what_is_no_heights_of_this_ground_gets_one_sentence() {
    let plan = field(Some((48.0, 10.2)));
    let utm = |keys: Vec<(u16, u16)>| {
        let tags = Tags { scale: (1.0, 1.0), corner: (-5.0, 20.0), keys, no_data: None };
        geotiff(&tags, (40, 40), |_, _| 1.0)
    };
    let text = |text: &str| text.as_bytes().to_vec();
    let head = "ncols 3\nnrows 2\nxllcorner 0\nyllcorner 0\ncellsize 5\n";
    let feet = |east_m: f64, north_m: f64| 100.0 * plane(east_m, north_m);
    type Wanted = fn(&HeightsError) -> bool;
    let cases: Vec<(&str, Vec<u8>, Wanted)> = vec![
        ("nothing.asc", text(""), |e| matches!(e, HeightsError::NoGrid)),
        ("cut.asc", text("ncols 3\nnrows 2\nxllcorner"), |e| matches!(e, HeightsError::Header { .. })),
        ("head.asc", text("ncols 3\nnrows 2\nxllcorner 0\ncellsize 5\n1 2 3 4 5 6"), |e| {
            matches!(e, HeightsError::Header { key: "yllcorner" })
        }),
        ("few.asc", text(&format!("{head}1 2 3 4 5")), |e| matches!(e, HeightsError::Count { found: 5, wanted: 6 })),
        ("word.asc", text(&format!("{head}1 2 3\n4 five 6")), |e| {
            matches!(e, HeightsError::NotANumber { line: 7, .. })
        }),
        ("endless.asc", text("ncols 90000\nnrows 90000\nxllcorner 0\nyllcorner 0\ncellsize 1\n"), |e| {
            matches!(e, HeightsError::TooMany { .. })
        }),
        ("holes.asc", text(&ascii((-6.0, -6.0), 1.0, (40, 40), |_, _| -9999.0)), |e| {
            matches!(e, HeightsError::AllHoles)
        }),
        (
            "elsewhere.asc",
            text(&ascii((900.0, 400.0), 1.0, (40, 40), plane)),
            |e| matches!(e, HeightsError::WrongPlace { off_m } if (*off_m - 961.0).abs() < 10.0),
        ),
        ("millimetres.asc", text(&ascii((-6.0, -6.0), 1.0, (40, 40), feet)), |e| {
            matches!(e, HeightsError::Steep { .. })
        }),
        ("kilometres.asc", text(&ascii((-6000.0, -6000.0), 1000.0, (40, 40), |_, _| 1.0)), |e| {
            matches!(e, HeightsError::Cell { .. })
        }),
        ("fine.asc", text(&ascii((-6.0, -6.0), 0.05, (700, 700), |_, _| 1.0)), |e| {
            matches!(e, HeightsError::TooMany { .. })
        }),
        ("feet.tif", utm(vec![(1024, 1), (3072, 32_632), (3076, 9002)]), |e| {
            matches!(e, HeightsError::Unit { code: 9002 })
        }),
        ("up-in-feet.tif", utm(vec![(1024, 1), (3072, 32_632), (4099, 9002)]), |e| {
            matches!(e, HeightsError::Unit { code: 9002 })
        }),
        ("national.tif", utm(vec![(1024, 1), (3072, 27_700)]), |e| {
            matches!(e, HeightsError::Projection { code: 27_700 })
        }),
        ("own.tif", utm(vec![(1024, 1), (3072, 32_767)]), |e| matches!(e, HeightsError::Projection { code: 0 })),
        ("far.tif", utm(vec![(1024, 1), (3072, 32_632)]), |e| matches!(e, HeightsError::WrongPlace { .. })),
        ("cut.tif", utm(vec![])[..60].to_vec(), |e| matches!(e, HeightsError::Tiff { .. })),
    ];
    for (name, bytes, wanted) in cases {
        let error = read(&bytes, &plan).unwrap_err();
        assert!(wanted(&error), "{name}: {error}");
        let said = sentence(Words::default(), name, &error);
        assert!(said.starts_with(name) && said.ends_with('.') && !said.contains('{'), "{said}");
        assert!(said.lines().count() == 1 && said.chars().count() < 400, "{said}");
    }
    let local = utm(vec![]);
    assert!(read(&local, &plan).is_ok(), "without geo keys the plan's own metres");
}

#[test]
fn any_bytes_give_a_grid_or_an_error() {
    let tiff = geotiff(
        &Tags { scale: (1.0, 1.0), corner: (-5.0, 20.0), keys: vec![(1024, 1), (3072, 32_632)], no_data: Some("0") },
        (12, 12),
        |column, row| (column + row) as f32,
    );
    let text = ascii((-6.0, -6.0), 1.0, (30, 30), plane).into_bytes();
    for whole in [tiff, text] {
        for cut in 0..whole.len().min(2_000) {
            drop(read(&whole[..cut], &field(None)));
            let mut turned = whole.clone();
            turned[cut] ^= 0x55;
            drop(read(&turned, &field(None)));
        }
    }
}
