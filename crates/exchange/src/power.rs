//! The choice of an energizer as others read it: whether a data sheet agrees with itself, in a sentence, and the
//! answer's keys.

use plan::Energizer;
use serde_json::{Value, json};
use words::texts::Store as Text;
use words::{Measure, Words};
use workup::SheetTrouble;
use workup::power::{ByGrass, Choice, SourceModel};

/// Whether the sheet of an energizer agrees with itself, in a sentence.
pub fn data_sheet(unit: &Energizer, model: Result<SourceModel, SheetTrouble>, words: Words) -> String {
    let text = match model {
        Err(fault) => contradiction(unit, fault),
        Ok(SourceModel::Rlc) => Text::FitsSlowly,
        Ok(SourceModel::Rc) if stated(unit) == [true; 4] => Text::Fits,
        Ok(SourceModel::Rc) => Text::FitsAssumed,
    };
    let name = if unit.id.is_empty() { words.text(Text::TheAssumedOne) } else { &unit.id };
    let joules = |value: f64| words.typed_parts(Measure::Joules, value).0;
    words.say(
        text,
        &[
            ("name", &words::capital(name)),
            ("free", &words.kilovolts(unit.no_load_kv())),
            ("loaded", &words.kilovolts(unit.kv_at_500_ohm())),
            ("stored", &joules(unit.stored_j())),
            ("out", &joules(unit.output_j_at_500_ohm())),
        ],
    )
}

/// Which figures of the sheet are stated: stored, without a load, volts and joules at 500 ohms.
fn stated(unit: &Energizer) -> [bool; 4] {
    [
        unit.stored_j.is_some(),
        unit.no_load_kv.is_some(),
        unit.kv_at_500_ohm.is_some(),
        unit.output_j_at_500_ohm.is_some(),
    ]
}

fn contradiction(unit: &Energizer, fault: SheetTrouble) -> Text {
    let [stored, free, loaded, out] = stated(unit);
    match fault {
        SheetTrouble::LoadedAboveNoLoad if free && loaded => Text::LoadedNotLess,
        SheetTrouble::LoadedAboveNoLoad => Text::LoadedNotLessAssumed,
        // What comes out is held against a stated store alone.
        SheetTrouble::OutputAboveStored => Text::MoreOut,
        SheetTrouble::NoCircuit if stored && free && loaded && out => Text::NoCircuit,
        SheetTrouble::NoCircuit => Text::NoCircuitAssumed,
    }
}

/// The answer; its keys are a promise: add, never rename.
pub fn value(plan: &plan::Plan, choice: &Choice, words: Words) -> Value {
    let assumed = Energizer::assumed();
    let energizers = choice.units.iter().map(|unit| {
        let sheet = plan.store.energizers.iter().find(|other| other.id == unit.id).unwrap_or(&assumed);
        let curve = |of: fn(&ByGrass<f64>) -> f64| unit.weakest_kv.iter().map(of).collect::<Vec<f64>>();
        json!({
            "id": unit.id,
            "model": match unit.model {
                Ok(SourceModel::Rc) => "rc",
                Ok(SourceModel::Rlc) => "rlc",
                Err(_) => "none",
            },
            "reason": data_sheet(sheet, unit.model, words),
            "weakest_kv_by_nets": curve(|kv| kv.likely),
            "weakest_kv_by_nets_clean": curve(|kv| kv.clean),
            "weakest_kv_by_nets_overgrown": curve(|kv| kv.overgrown),
            "holds_nets": unit.model.is_ok().then(|| unit.holds(choice.target_kv, |kv| kv.likely)),
        })
    });
    json!({
        "run": choice.run,
        "target_kv": choice.target_kv,
        "earth_ohm": choice.earth_ohm,
        "energizers": energizers.collect::<Vec<_>>(),
        "least_stored_j": {
            "by_nets": choice.least_stored_j.likely,
            "by_nets_clean": choice.least_stored_j.clean,
            "by_nets_overgrown": choice.least_stored_j.overgrown,
        },
    })
}
