//! The binary as a script sees it: exit codes, streams, files.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use serde_json::{Value, json};

struct Field {
    folder: tempfile::TempDir,
}

impl Field {
    fn new() -> Self {
        Self { folder: tempfile::tempdir().unwrap() }
    }

    fn file(&self, name: &str, bytes: impl AsRef<[u8]>) -> PathBuf {
        let path = self.folder.path().join(name);
        std::fs::write(&path, bytes).unwrap();
        path
    }

    fn netfold(&self, arguments: &[&str]) -> Output {
        Command::new(env!("CARGO_BIN_EXE_netfold"))
            .args(arguments)
            .current_dir(self.folder.path())
            .env_remove("DISPLAY")
            .env_remove("WAYLAND_DISPLAY")
            .env_remove("WAYLAND_SOCKET")
            .env_remove("NETFOLD_LOG")
            .output()
            .unwrap()
    }

    fn names(&self) -> Vec<String> {
        let entries = std::fs::read_dir(self.folder.path()).unwrap();
        let mut names: Vec<_> = entries.map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
        names.sort();
        names
    }

    /// The one sentence with which a command is refused: nothing on standard output, no file left behind.
    fn refused(&self, arguments: &[&str]) -> String {
        let before = self.names();
        let output = self.netfold(arguments);
        assert_eq!(output.status.code(), Some(2), "{arguments:?}: {output:?}");
        assert!(output.stdout.is_empty(), "{arguments:?}");
        let said = String::from_utf8(output.stderr).unwrap();
        assert!(said.ends_with('\n') && said.trim_end().lines().count() == 1, "{arguments:?}: {said}");
        assert!(said.chars().count() <= 501, "{arguments:?}: {} characters", said.chars().count());
        assert_eq!(self.names(), before, "{arguments:?}");
        said
    }
}

fn demo(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("../../assets/demo/{name}.netfold.json"))
}

fn done(output: &Output) -> String {
    assert_eq!(output.status.code(), Some(0), "{output:?}");
    String::from_utf8(output.stdout.clone()).unwrap()
}

#[test]
fn without_a_display_the_example_is_written_and_said() {
    let field = Field::new();
    for folder in ["netfold-example", "netfold-example-2"] {
        let output = field.netfold(&[]);
        assert_eq!(done(&output), "");
        let said = String::from_utf8(output.stderr).unwrap();
        assert!(said.trim_end().lines().count() == 1 && said.contains(folder), "{said}");
        let plan = field.folder.path().join(folder).join("kettle-field.netfold.json");
        assert!(plan::read(&std::fs::read(plan).unwrap()).is_ok());
        for made in ["kettle-field.png", "kettle-field.report.json", "kettle-field.report.txt"] {
            assert!(field.folder.path().join(folder).join(made).metadata().unwrap().len() > 1000, "{made}");
        }
    }
    field.refused(&[demo("kettle-field").to_str().unwrap()]);
}

#[test]
fn every_subcommand_does_its_work() {
    let field = Field::new();
    let plan = demo("kettle-field");
    let plan = plan.to_str().unwrap();
    let report: Value = serde_json::from_str(&done(&field.netfold(&["report", plan, "--json"]))).unwrap();
    assert_eq!(report["format"], "netfold-report");
    assert_eq!(report["runs"][0]["nets_needed"], json!({ "long": 3 }));
    let page = done(&field.netfold(&["report", plan]));
    assert!(page.contains("not measured yet") && page.contains("will lean in"), "{page}");
    let compared = done(&field.netfold(&["report", demo("square-or-rectangle").to_str().unwrap()]));
    assert!(compared.contains("Side by side") && compared.contains("625 m²"), "{compared}");
    let check = done(&field.netfold(&["check", plan]));
    assert!(check.contains("corner-leans"), "{check}");
    for of in ["plan", "report"] {
        let schema: Value = serde_json::from_str(&done(&field.netfold(&["schema", of]))).unwrap();
        assert!(schema["properties"]["format"].is_object());
    }
    for (to, magic) in [("geojson", "{"), ("svg", "<"), ("png", "\u{fffd}PNG"), ("csv", "name,area_m2,")] {
        done(&field.netfold(&["export", plan, "--to", to, "-o", "out"]));
        let bytes = std::fs::read(field.folder.path().join("out")).unwrap();
        assert!(String::from_utf8_lossy(&bytes).trim_start().starts_with(magic), "{to}");
    }
    done(&field.netfold(&["sheet", plan, "-o", "sheet.pdf"]));
    assert!(std::fs::read(field.folder.path().join("sheet.pdf")).unwrap().starts_with(b"%PDF-"));
    done(&field.netfold(&["demo", "-o", "farm"]));
    assert!(field.refused(&["demo", "-o", "farm"]).contains("already"));
    assert!(done(&field.netfold(&["--version"])).starts_with("netfold 0."));
    assert!(done(&field.netfold(&["--help"])).contains("report"));
}

#[test]
fn check_exits_one_where_there_is_a_danger() {
    let field = Field::new();
    let mut plan: Value = serde_json::from_slice(&std::fs::read(demo("kettle-field")).unwrap()).unwrap();
    plan["ground"]["hazards"][0]["path"] = json!([[40, -10], [40, 100]]);
    field.file("under.netfold.json", plan.to_string());
    let output = field.netfold(&["check", "under.netfold.json"]);
    assert_eq!(output.status.code(), Some(1));
    assert!(String::from_utf8(output.stdout).unwrap().contains("danger overhead-line-crossed"));
    assert!(output.stderr.is_empty());
}

#[test]
fn import_makes_a_plan_of_a_boundary_and_writes_a_plan_back() {
    let field = Field::new();
    let ring = json!([[-24.5, 46.5], [-24.499, 46.5], [-24.499, 46.501], [-24.5, 46.501], [-24.5, 46.5]]);
    field.file("field.geojson", json!({ "type": "Polygon", "coordinates": [ring] }).to_string());
    done(&field.netfold(&["import", "field.geojson", "-o", "field.netfold.json"]));
    let made = plan::read(&std::fs::read(field.folder.path().join("field.netfold.json")).unwrap()).unwrap().plan;
    assert_eq!(made.ground.boundary.len(), 4);
    assert!(made.origin.is_some());
    field.file("odd.netfold.json", r#"{"format":"netfold-plan","version":1,"season":{"days":[1,2]}}"#);
    done(&field.netfold(&["import", "odd.netfold.json", "-o", "back.netfold.json"]));
    let back: Value =
        serde_json::from_slice(&std::fs::read(field.folder.path().join("back.netfold.json")).unwrap()).unwrap();
    assert_eq!(back["season"]["days"], json!([1, 2]));
}

#[test]
fn bad_files_get_one_sentence_each() {
    let field = Field::new();
    let says = |name: &str, bytes: &[u8], wanted: &str| {
        field.file(name, bytes);
        let said = field.refused(&["report", name]);
        assert!(said.contains(name) && said.contains(wanted), "{name}: {said}");
    };
    says("empty.json", b"", "line 1");
    says("cut.json", b"{\"format\": \"netfold-plan\",\n\"version\"", "line 2");
    says("noise.json", b"\x89PNG\r\n\x1a\n\x00\x00", "line 1");
    says("other.json", br#"{"type":"FeatureCollection","features":[]}"#, "import");
    says("newer.json", br#"{"format":"netfold-plan","version":7}"#, "7");
    says("type.json", br#"{"format":"netfold-plan","version":1,"target_kv":"four"}"#, "target_kv");
    says("huge.json", br#"{"format":"netfold-plan","version":1,"target_kv":1e999}"#, "line 1");
    says(
        "twice.json",
        br#"{"format":"netfold-plan","version":1,"runs":[{"id":"a","outline":[]},{"id":"a","outline":[]}]}"#,
        "runs[1].id",
    );
    says(
        "nobody.json",
        br#"{"format":"netfold-plan","version":1,"runs":[{"id":"a","outline":[],"nets":["x"]}]}"#,
        "runs[0].nets[0]",
    );
    let long = format!("{{\"format\":\"netfold-plan\",\"version\":1,\"target_kv\":\"{}\"}}", "x".repeat(100_000));
    says("long.json", long.as_bytes(), "target_kv");
    std::fs::create_dir(field.folder.path().join("folder")).unwrap();
    assert!(field.refused(&["report", "folder"]).contains("folder"));
    assert!(field.refused(&["report", "nowhere.json"]).contains("nowhere.json"));
    field.refused(&["report"]);
    field.refused(&["mow", "the", "lawn"]);
    field.refused(&["export", "cut.json", "--to", "dxf", "-o", "x"]);
}

#[test]
fn bad_boundaries_get_one_sentence_each() {
    let field = Field::new();
    let says = |name: &str, boundary: &Value| {
        field.file(name, boundary.to_string());
        let said = field.refused(&["import", name, "-o", "made.netfold.json"]);
        assert!(said.contains(name), "{name}: {said}");
    };
    says("point.geojson", &json!({ "type": "Point", "coordinates": [0, 0] }));
    says("none.geojson", &json!({ "type": "FeatureCollection", "features": [] }));
    says("few.geojson", &json!({ "type": "Polygon", "coordinates": [[[0, 0], [1, 1], [0, 0]]] }));
    says(
        "outside.geojson",
        &json!({ "type": "Polygon", "coordinates": [[[0, 95], [0.001, 95], [0.001, 95.001], [0, 95]]] }),
    );
    says("vast.geojson", &json!({ "type": "Polygon", "coordinates": [[[0, 0], [20, 0], [20, 20], [0, 0]]] }));
    says("list.geojson", &json!([1, 2, 3]));
}

#[test]
fn a_failed_write_leaves_what_was_there() {
    let field = Field::new();
    let plan = demo("kettle-field");
    let plan = plan.to_str().unwrap();
    assert!(field.refused(&["sheet", plan, "-o", "nowhere/sheet.pdf"]).contains("nowhere"));
    std::fs::create_dir(field.folder.path().join("sheet.pdf")).unwrap();
    field.refused(&["sheet", plan, "-o", "sheet.pdf"]);
    // A plan without an origin has no positions to export, and the old file stays.
    field.file("flat.netfold.json", r#"{"format":"netfold-plan","version":1}"#);
    field.file("old.geojson", "old");
    field.refused(&["export", "flat.netfold.json", "--to", "geojson", "-o", "old.geojson"]);
    assert_eq!(std::fs::read(field.folder.path().join("old.geojson")).unwrap(), b"old");
    done(&field.netfold(&["export", "flat.netfold.json", "--to", "svg", "-o", "flat.svg"]));
}

#[test]
fn what_cannot_be_built_is_null_and_still_a_report() {
    let field = Field::new();
    for outline in [
        json!([]),
        json!([[0, 0], [1, 1]]),
        json!([[0, 0], [10, 10], [10, 0], [0, 10]]),
        json!([[0, 0], [1e9, 0], [0, 10]]),
        json!([[0, 0], [0, 0], [0, 0]]),
    ] {
        let plan = json!({ "format": "netfold-plan", "version": 1, "runs": [ { "id": "a", "outline": outline } ],
            "store": { "nets": [ { "id": "n", "length_m": 50, "panels": 14 } ] } });
        field.file("bad.netfold.json", plan.to_string());
        let report: Value =
            serde_json::from_str(&done(&field.netfold(&["report", "bad.netfold.json", "--json"]))).unwrap();
        assert_eq!(report["runs"][0]["line_m"], Value::Null, "{outline}");
        assert!(!report["runs"][0]["findings"].as_array().unwrap().is_empty(), "{outline}");
        for command in ["report", "check"] {
            done(&field.netfold(&[command, "bad.netfold.json"]));
        }
        done(&field.netfold(&["sheet", "bad.netfold.json", "-o", "bad.pdf"]));
        done(&field.netfold(&["export", "bad.netfold.json", "--to", "png", "-o", "bad.png"]));
    }
}
