//! Readings: what the keeper measured, a sign at each place with the newest figure.

use std::f64::consts::{FRAC_PI_2, PI};

use plan::{Plan, Reading, ReadingKind, RunStatus};
use words::texts::Book as Text;

use super::run::RunLine;
use super::signs::Power;
use super::{Scene, Sheet};
use crate::shape::{Form, Priority, Role, Thing};

/// Readings nearer than this along the line were taken at one place, metres.
const SAME_PLACE_M: f64 = 0.5;

/// The day of a reading as the file states it, an ISO date with or without a time; empty where none is stated.
pub fn when(reading: &Reading) -> &str {
    let Some(stated) = reading.rest.get("when") else { return "" };
    stated.as_str().unwrap_or_default()
}

/// The readings of a run, oldest first: their places in the plan's list. Those of one day, and those without a day
/// among themselves, stay in the list's order; those without a day come first.
pub fn of_run(plan: &Plan, run: &str) -> Vec<usize> {
    let mut places: Vec<usize> = (0..plan.readings.len()).filter(|&index| plan.readings[index].run == run).collect();
    // ISO dates sort as text; a zone is not looked at.
    places.sort_by_key(|&index| when(&plan.readings[index]));
    places
}

/// Those readings of a run that are the newest of their kind at their place, oldest first.
pub fn newest(plan: &Plan, run: &str) -> Vec<usize> {
    let all = of_run(plan, run);
    let superseded = |place: usize, index: usize| {
        let reading = &plan.readings[index];
        all[place + 1..].iter().any(|&later| {
            let later = &plan.readings[later];
            let near = match (reading.along_m, later.along_m) {
                (Some(one), Some(other)) => (one - other).abs() < SAME_PLACE_M,
                (None, None) => true,
                _ => false,
            };
            later.kind == reading.kind && near
        })
    };
    all.iter().enumerate().filter(|&(place, &index)| !superseded(place, index)).map(|(_, &index)| index).collect()
}

/// The figure on the sign of a reading; `None` where it has no sign on the line.
pub(crate) fn figure(scene: &Scene<'_>, reading: &Reading) -> Option<String> {
    match reading.kind {
        ReadingKind::FenceKv => Some(scene.words.kilovolts_figure(reading.value?)),
        ReadingKind::Ticking => Some(scene.words.text(Text::TickingSign).to_owned()),
        ReadingKind::EarthKv | ReadingKind::EnergizerKv | ReadingKind::BatteryV => None,
    }
}

/// Signs along the line, and at the earth stakes the volts that were read there.
pub(super) fn signs(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    let Some((_, track)) = run.laid.as_ref().filter(|_| run.run.status != RunStatus::Past) else { return };
    let (plan, words) = (sheet.scene.plan, sheet.scene.words);
    for index in newest(plan, &run.run.id) {
        let reading = &plan.readings[index];
        let thing = Thing::Reading { run: run.index, reading: index };
        let (at, toward_rad, text, on_earth) = match (reading.kind, reading.along_m, figure(&sheet.scene, reading)) {
            (_, Some(along_m), Some(text)) if along_m.is_finite() => {
                (track.at(along_m), track.square_outward(along_m) + PI, text, false)
            }
            (ReadingKind::EarthKv, _, _) => {
                let stake = Power::of(run, track).and_then(|power| power.stakes.last().copied());
                let Some((at, kv)) = stake.zip(reading.value) else { continue };
                (at, -FRAC_PI_2, words.kilovolts_figure(kv), true)
            }
            _ => continue,
        };
        let form = Form::Label { at, toward_rad, texts: vec![text], priority: Priority::Weakest };
        sheet.push(Role::Reading { on_earth }, form, Some(thing));
    }
}
