//! What the report says where something cannot be told.

use serde_json::{Value, json};
use workup::{Depth, Workup};

fn report(change: impl FnOnce(&mut Workup)) -> Value {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../assets/demo/kettle-field.netfold.json");
    let plan = plan::read(&std::fs::read(path).unwrap()).unwrap().plan;
    let mut worked = workup::workup(&plan, Depth::Quick);
    change(&mut worked);
    let findings = care::findings(&plan, &worked, words::Words::default());
    serde_json::from_slice(&exchange::report::json(&plan, &worked, &findings)).unwrap()
}

#[test]
fn a_weakest_post_that_no_list_has_is_null_and_never_the_first() {
    let weakest = |report: &Value| report["runs"][0]["voltage"]["weakest"].clone();
    let told = weakest(&report(|_| ()));
    assert!(told["net"].is_u64() && told["post"].is_u64(), "{told}");
    let unlisted = weakest(&report(|worked| {
        let weakest = worked.runs[0].volts.as_mut().unwrap().weakest.as_mut().unwrap();
        weakest.post = 100_000;
    }));
    assert_eq!((&unlisted["net"], &unlisted["post"]), (&json!(null), &json!(null)), "{unlisted}");
    assert_eq!(unlisted["peak_kv"], told["peak_kv"]);
}
