//! What `docs/` says is what the code does.

use serde_json::Value;

fn top(path: &str) -> String {
    let path = format!("{}/../{path}", env!("CARGO_MANIFEST_DIR"));
    std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{path}: {error}"))
}

#[test]
fn the_published_schemas_are_the_generated_ones() {
    for (file, generated, command) in [
        ("docs/plan.schema.json", plan::schema::plan(), "netfold schema plan"),
        ("docs/report.schema.json", exchange::report::schema(), "netfold schema report"),
    ] {
        let published: Value = serde_json::from_str(&top(file)).unwrap();
        assert!(published == generated, "renew {file}: `{command} > {file}`");
    }
}

#[test]
fn a_report_is_what_its_schema_says() {
    let validator = jsonschema::validator_for(&exchange::report::schema()).unwrap();
    for demo in ["kettle-field", "square-or-rectangle"] {
        let plan = plan::read(top(&format!("assets/demo/{demo}.netfold.json")).as_bytes()).unwrap().plan;
        let worked = workup::workup(&plan, workup::Depth::Full);
        let findings = care::findings(&plan, &worked, words::Words::default());
        let report = exchange::report::json(&plan, &worked, &findings);
        assert_eq!(report, exchange::report::json(&plan, &worked, &findings), "byte-identical");
        let report: Value = serde_json::from_slice(&report).unwrap();
        // What a corner is from a known place is said once: at the corner.
        let told =
            report["runs"].as_array().unwrap().iter().flat_map(|run| run["set_out"]["corners"].as_array().unwrap());
        assert!(told.clone().count() > 0 && told.clone().all(|corner| corner.get("tape_m").is_none()), "{demo}");
        let errors: Vec<String> = validator.iter_errors(&report).map(|error| error.to_string()).collect();
        assert!(errors.is_empty(), "{demo}: {errors:?}");
    }
}

#[test]
fn the_readme_opens_with_the_job_a_picture_and_two_commands() {
    let readme = top("README.md");
    let (picture, commands) = (readme.find("![").unwrap(), readme.find("```").unwrap());
    assert!(readme.find("keeper").unwrap() < picture && picture < commands);
    let block = readme[commands + 3..].split("```").next().unwrap().trim();
    assert_eq!(block, "cargo run --release\ncargo test --workspace");
    let file = readme[picture..].split(['(', ')']).nth(1).unwrap();
    assert!(std::path::Path::new(&format!("{}/../{file}", env!("CARGO_MANIFEST_DIR"))).is_file(), "{file}");
}
