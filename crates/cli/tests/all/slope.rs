//! Heights by the command line: brought into a plan, and what the report then says.

use std::io::Cursor;
use std::path::Path;
use std::process::{Command, Output};

use serde_json::{Value, json};
use tiff::encoder::{TiffEncoder, colortype::Gray32Float};
use tiff::tags::Tag;

fn netfold(folder: &Path, arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_netfold")).args(arguments).current_dir(folder).output().unwrap()
}

fn report(folder: &Path, plan: &str) -> Value {
    let output = netfold(folder, &["report", plan, "--json"]);
    assert_eq!(output.status.code(), Some(0), "{output:?}");
    serde_json::from_slice(&output.stdout).unwrap()
}

/// A square of 25 m and two nets that close on it where it is level.
fn field(folder: &Path) {
    let net = json!({ "id": "long", "count": 3, "length_m": 50.0, "panels": 14 });
    let square = [[0.0, 0.0], [25.0, 0.0], [25.0, 25.0], [0.0, 25.0]];
    let run = json!({ "id": "run-1", "outline": square, "nets": ["long", "long"] });
    let plan = json!({ "format": "netfold-plan", "version": 1, "store": { "nets": [net] }, "runs": [run] });
    std::fs::write(folder.join("field.netfold.json"), plan.to_string()).unwrap();
}

/// 20 % up to the east, with a ditch of 0.3 m along one column of heights.
fn up(column: u32) -> f32 {
    0.2 * column as f32 - if column == 20 { 0.3 } else { 0.0 }
}

fn ascii() -> String {
    let row: Vec<String> = (0..50).map(|column| up(column).to_string()).collect();
    let rows = vec![row.join(" "); 50].join("\n");
    format!("ncols 50\nnrows 50\nxllcenter -10\nyllcenter -10\ncellsize 1\nnodata_value -9999\n{rows}\n")
}

fn geotiff() -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    let mut encoder = TiffEncoder::new(&mut bytes).unwrap();
    let mut image = encoder.new_image::<Gray32Float>(50, 50).unwrap();
    image.encoder().write_tag(Tag::ModelPixelScaleTag, &[1.0, 1.0, 0.0][..]).unwrap();
    image.encoder().write_tag(Tag::ModelTiepointTag, &[0.0, 0.0, 0.0, -10.5, 39.5, 0.0][..]).unwrap();
    let heights: Vec<f32> = (0..2_500).map(|place| up(place % 50)).collect();
    image.write_data(&heights).unwrap();
    bytes.into_inner()
}

#[test]
fn both_formats_give_the_same_surface_and_dips() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path();
    field(folder);
    let level = report(folder, "field.netfold.json");
    assert_eq!(level["runs"][0]["slope"], Value::Null);
    std::fs::write(folder.join("clip.asc"), ascii()).unwrap();
    std::fs::write(folder.join("clip.tif"), geotiff()).unwrap();
    let mut found = Vec::new();
    for clip in ["clip.asc", "clip.tif"] {
        let output = netfold(folder, &["import", clip, "--into", "field.netfold.json", "-o", "with.netfold.json"]);
        assert_eq!(output.status.code(), Some(0), "{output:?}");
        assert!(output.stderr.is_empty(), "{output:?}");
        let report = report(folder, "with.netfold.json");
        let run = &report["runs"][0];
        // Two sides of 25 m at 20 % with a ditch of one metre either way, two level ones.
        let ditch = 1.0_f64.hypot(0.1) + 1.0_f64.hypot(0.5);
        let surface_m = 2.0 * (23.0 * 1.0_f64.hypot(0.2) + ditch) + 50.0;
        let near = |key: &Value, want: f64| (key.as_f64().unwrap() - want).abs() < 2e-3;
        assert!(near(&run["slope"]["surface_m"], surface_m), "{} {surface_m}", run["slope"]["surface_m"]);
        assert!(near(&run["slope"]["level_m"], 100.0) && near(&run["line_m"], 100.0));
        assert!(near(&run["short_m"], surface_m - 100.0), "{}", run["short_m"]);
        let uneven = run["slope"]["uneven"].as_array().unwrap();
        // Where a post stands in the ditch itself, its rims drag instead.
        for north_m in [0.0, 25.0] {
            let of_side = |panel: &&Value| {
                let worst = if panel["dip"].is_null() { &panel["ridge"] } else { &panel["dip"] };
                let at = |axis: usize| worst["at"][axis].as_f64().unwrap();
                (at(0) - 10.0).abs() < 1.0 + 1e-6 && (at(1) - north_m).abs() < 1e-6
            };
            assert!(uneven.iter().any(|panel| of_side(&panel)), "{north_m}: {uneven:?}");
        }
        for panel in uneven {
            assert!(!panel["further_posts"].as_array().unwrap().is_empty(), "{panel}");
        }
        let ids: Vec<&str> =
            run["findings"].as_array().unwrap().iter().map(|one| one["id"].as_str().unwrap()).collect();
        assert!(ids.contains(&"dip-under-net") && ids.contains(&"net-too-short"), "{ids:?}");
        assert_eq!(run["slope"]["sides"][0]["known"], "grid");
        found.push(run["slope"].clone());
    }
    let text = netfold(folder, &["report", "with.netfold.json"]);
    let text = String::from_utf8(text.stdout).unwrap();
    assert!(text.contains("on the ground for 100.00 m on the map") && text.contains(" dips, "), "{text}");
    // Without a plan the heights make one of their own.
    let output = netfold(folder, &["import", "clip.tif", "-o", "bare.netfold.json"]);
    assert_eq!(output.status.code(), Some(0), "{output:?}");
    let bare = plan::read(&std::fs::read(folder.join("bare.netfold.json")).unwrap()).unwrap().plan;
    assert_eq!(bare.ground.height_grid.unwrap().up_m.len(), 2_500);
}

#[test]
fn by_hand_and_by_spots_the_report_follows_the_ground() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path();
    field(folder);
    let plan: Value = serde_json::from_slice(&std::fs::read(folder.join("field.netfold.json")).unwrap()).unwrap();
    let mut by_hand = plan.clone();
    by_hand["runs"][0]["side_slopes"] = json!([
        { "at": [12.5, 0.0], "one_in": 5.0 }, { "at": [12.5, 25.0], "rises_m": -5.0 }
    ]);
    let mut spots = plan.clone();
    spots["heights"] = json!([{ "at": [0.0, 3.0], "up_m": 101.0 }, { "at": [25.0, 3.0], "up_m": 106.0 }]);
    let surface_m = 50.0 + 2.0 * 25.0_f64.hypot(5.0);
    for (name, plan, known) in [("hand.json", by_hand, "by_hand"), ("spots.json", spots, "spots")] {
        std::fs::write(folder.join(name), plan.to_string()).unwrap();
        let report = report(folder, name);
        let run = &report["runs"][0];
        let found_m = run["slope"]["surface_m"].as_f64().unwrap();
        assert!((found_m - surface_m).abs() < 1e-9, "{name}: {found_m}");
        assert!((run["short_m"].as_f64().unwrap() - (surface_m - 100.0)).abs() < 1e-9, "{name}");
        assert_eq!(run["slope"]["sides"][0]["known"], known);
        assert!(report["assumed"].as_array().unwrap().iter().any(|one| one["key"] == "runs[0].gap_under_net_m"));
    }
}

#[test]
fn bad_heights_get_one_sentence_and_leave_no_file() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path();
    field(folder);
    std::fs::write(folder.join("away.asc"), ascii().replace("xllcenter -10", "xllcenter 9000")).unwrap();
    std::fs::write(folder.join("short.asc"), &ascii()[..400]).unwrap();
    std::fs::write(folder.join("noise.tif"), b"II*\0\x08\0\0\0noise").unwrap();
    std::fs::write(folder.join("list.txt"), "1, 2, 3").unwrap();
    for clip in ["away.asc", "short.asc", "noise.tif", "list.txt", "nowhere.asc"] {
        let output = netfold(folder, &["import", clip, "--into", "field.netfold.json", "-o", "out.netfold.json"]);
        assert_eq!(output.status.code(), Some(2), "{clip}: {output:?}");
        assert!(output.stdout.is_empty());
        let said = String::from_utf8(output.stderr).unwrap();
        assert!(said.contains(clip) && said.trim_end().lines().count() == 1 && said.chars().count() <= 501, "{said}");
        assert!(!folder.join("out.netfold.json").exists());
    }
}
