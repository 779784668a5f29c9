//! What the rooms that know no words name in English is known to the texts, so that it is named in every language.

use std::collections::BTreeSet;

use words::{Language, Words};
use workup::power::Who;
use workup::{Depth, workup};

#[test]
fn every_source_has_its_german() {
    let mut sources: BTreeSet<&'static str> = BTreeSet::new();
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../assets/demo");
    let mut plans = vec![plan::Plan::default()];
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.to_string_lossy().ends_with(".netfold.json") {
            plans.push(plan::read(&std::fs::read(path).unwrap()).unwrap().plan);
        }
    }
    assert!(plans.len() > 2);
    for plan in &plans {
        let worked = workup(plan, Depth::Full);
        sources.extend(plan::assumed(plan).iter().map(|assumed| assumed.source));
        sources.extend(care::findings(plan, &worked, Words::default()).all().map(|finding| finding.source));
    }
    sources.extend(Who::ALL.iter().map(|who| who.body().source));
    sources.extend(workup::stocking::RULES.iter().map(|rule| rule.source));
    sources.extend([plan::SoilTable::British, plan::SoilTable::Sands].map(plan::SoilTable::source));
    assert!(sources.len() > 20, "{sources:?}");
    let german = Words { language: Language::German, ..Words::default() };
    for source in sources {
        // A standard's name and its number are the same in both.
        let names_alone = german.source(source) == source;
        assert!(!names_alone, "{source:?} is not among the texts");
    }
}
