//! The choice of an energizer as others read it: whether a data sheet agrees with itself, in a sentence, and the
//! answer's keys.

use plan::Energizer;
use serde_json::{Value, json};
use words::texts::Store as Text;
use words::{Measure, Words};
use workup::SheetTrouble;
use workup::power::{ByGrass, Choice, Felt, SourceModel, Stakes, Study, Who};

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
pub fn value(plan: &plan::Plan, study: &Study, choice: &Choice, words: Words) -> Value {
    let mut value = of_choice(plan, choice, words);
    value["pulse"] = study.pulse.as_ref().map_or(Value::Null, |pulse| {
        json!({
            "times_s": pulse.times_s,
            "feed_kv": pulse.feed_kv,
            "posts_kv": pulse.posts_kv,
            "charge_c": pulse.charge_c,
            "energy_j": pulse.energy_j,
            "duration_s": pulse.duration_s,
        })
    });
    value["animals"] = study
        .feels
        .iter()
        .map(|feels| {
            let row = |of: fn(&Felt) -> f64| feels.posts.iter().map(of).collect::<Vec<f64>>();
            json!({
                "animal": animal_id(feels.who),
                "source": feels.who.body().source,
                "soil_ohm_m": feels.soil_ohm_m,
                "posts_kv": row(|felt| felt.kv),
                "posts_j": row(|felt| felt.j),
                "posts_c": row(|felt| felt.charge_c),
            })
        })
        .collect();
    value["stakes"] = study
        .stakes
        .iter()
        .map(|stakes| {
            let row = |of: fn(&Stakes) -> f64| stakes.by_count.iter().map(of).collect::<Vec<f64>>();
            json!({
                "ground": stakes.today,
                "needed": stakes.needed,
                "ohm_by_count": row(|one| one.ohm),
                "animal_kv_by_count": row(|one| one.animal_kv),
            })
        })
        .collect();
    value["earth_test"] = study.test.as_ref().map_or(Value::Null, |test| {
        json!({
            "post": test.post,
            "far_m": test.far_m,
            "reaches": test.reaches(),
            "feed_kv": test.sound_kv[0],
            "post_kv": test.sound_kv[1],
            "short_ohm": test.shorted.map(|shorted| shorted.0),
            "earth_kv": test.shorted.map(|shorted| shorted.1),
        })
    });
    if let Some([clipped_kv, tied_kv]) = study.gate_kv {
        value["gate"] = json!({ "clipped_round_weakest_kv": clipped_kv, "only_tied_weakest_kv": tied_kv });
    }
    value
}

/// Where the energizer stands and where its stakes would earth best: keys and sentences beside the answer.
pub fn earth(plan: &plan::Plan, run: &plan::Run, worked: &workup::RunWorkup, words: Words) -> Value {
    let json = |value: Option<Value>| value.unwrap_or(Value::Null);
    json!({
        "energizer_place": json(crate::earths::energizer(plan, run).and_then(|one| serde_json::to_value(one).ok())),
        "dampest": json(crate::earths::best(run, worked).and_then(|one| serde_json::to_value(one).ok())),
        "says": earth_said(plan, run, worked, words),
    })
}

/// The same in sentences, for a reader.
pub fn earth_said(plan: &plan::Plan, run: &plan::Run, worked: &workup::RunWorkup, words: Words) -> Vec<String> {
    let damper = care::damper_said(plan, run, worked, words);
    if damper.is_empty() && run.energizer_at.is_none() {
        return Vec::new();
    }
    std::iter::once(care::stands_said(plan, run, words)).chain(damper).collect()
}

/// A kind of animal in the answer.
pub fn animal_id(who: Who) -> &'static str {
    match who {
        Who::Fox => "fox",
        Who::Dog => "dog",
        Who::Hen => "hen",
        Who::Sheep => "sheep",
    }
}

fn of_choice(plan: &plan::Plan, choice: &Choice, words: Words) -> Value {
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
