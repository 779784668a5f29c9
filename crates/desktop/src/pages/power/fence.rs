//! The fence as it is: what its joins and its lead resist, and whether the gate is clipped round.

use egui::{Id, Ui};
use plan::lead::{Conductor, WIRE_M};
use plan::{Edit, Run};
use words::texts::{About, Damp, Faults as Text};
use words::{METRES_PER_FOOT, Measure, Range, Units};
use workup::Lay;

use crate::editor::Message;
use crate::field::{self, Shown};
use crate::pages::Desk;

/// What may be typed: more would be a break.
const OHMS: Range = Range::zero_to(100_000.0);
const LEAD_M: Range = Range::up_to(10_000.0);

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, lay: &Lay) {
    let (words, p) = (desk.words, desk.p);
    desk.section(ui, words.text(Text::Fence), "", About::Stated);
    ui.add_space(6.0);
    let mut changed = run.clone();
    let read = || field::or_nothing(field::figure(words, Measure::Ohms, OHMS));
    let shown = Shown::of(words, Measure::Ohms, run.join_ohm.unwrap_or(0.0), run.join_ohm.is_none());
    if let Some(ohm) = field::line(ui, p, Id::unique(("join ohm", &run.id)), words.text(Text::JoinOhm), &shown, read())
    {
        changed.join_ohm = ohm;
    }
    let lead_ohm = workup::lead::lead(desk.editor.plan(), run).ohm;
    let shown = Shown::of(words, Measure::Ohms, lead_ohm, run.lead_ohm.is_none());
    if let Some(ohm) = field::line(ui, p, Id::unique(("lead ohm", &run.id)), words.text(Text::LeadOhm), &shown, read())
    {
        changed.lead_ohm = ohm;
        // Ohms that are stated are of whatever it is made of.
        changed.lead_of = run.lead_of.filter(|_| ohm.is_none());
    }
    lead(ui, desk, run, &mut changed);
    if lay.is_ring() {
        gate(ui, desk, run, &mut changed);
    }
    if changed != *run {
        desk.said.say(Message::Make(Edit::SetRun { run: Box::new(changed) }));
    }
}

/// The lead by conductor and length, from which its ohms follow where they are not stated.
fn lead(ui: &mut Ui, desk: &Desk<'_>, run: &Run, changed: &mut Run) {
    let (words, p) = (desk.words, desk.p);
    let plan = desk.editor.plan();
    let stands = workup::lead::lead(plan, run);
    let options = [
        (Some(Conductor::Steel), words.text(Text::Steel)),
        (Some(Conductor::Aluminium), words.text(Text::Aluminium)),
        (Some(Conductor::Copper), words.text(Text::Copper)),
        (Some(Conductor::NetLine), words.text(Text::NetLine)),
    ];
    if let Some(of) = field::choice(ui, p, words.text(Text::LeadOf), &options, Some(run.lead_of)) {
        // What it is made of tells its ohms from now on.
        (changed.lead_of, changed.lead_ohm) = (of, None);
    }
    let shown = match stands.length_m {
        Some(length_m) => Shown::of(words, Measure::Length, length_m, run.lead_m.is_none()),
        None => Shown::nothing(words, Measure::Length),
    };
    let read = field::or_nothing(field::figure(words, Measure::Length, LEAD_M));
    if let Some(length_m) =
        field::line(ui, p, Id::unique(("lead length", &run.id)), words.text(Text::LeadLength), &shown, read)
    {
        changed.lead_m = length_m;
        // Ohms that were measured stand whatever the length.
        if length_m.is_some() && run.lead_of.is_none() && run.lead_ohm.is_none() {
            changed.lead_of = Some(Conductor::Steel);
        }
    }
    if let (None, Some(apart_m)) = (run.lead_m, stands.apart_m) {
        ui.add_space(4.0);
        desk.second(ui, &words.say(Damp::LeadFollows, &[("length", &words.length(apart_m))]));
    }
    ui.add_space(4.0);
    let net_ohm_per_m = workup::lead::net_line_ohm_per_m(plan, run);
    // Metres in the unit that stands in the sentence: a kilometre and a metre, or a thousand feet and a foot.
    let (unit_m, why, wire) = match words.units {
        Units::Metric => (1.0, Text::LeadWhy, format!("{} mm", words.number(WIRE_M * 1e3, 1))),
        Units::Feet => (METRES_PER_FOOT, Text::LeadWhyFeet, words.fine_length(WIRE_M)),
    };
    let per_km = |wire: Conductor| words.number(wire.ohm_per_m(net_ohm_per_m) * 1e3 * unit_m, 1);
    let places = [
        ("wire", wire),
        ("steel", per_km(Conductor::Steel)),
        ("aluminium", per_km(Conductor::Aluminium)),
        ("copper", per_km(Conductor::Copper)),
        ("net", words.number(net_ohm_per_m * unit_m, 1)),
    ];
    let places: Vec<(&str, &str)> = places.iter().map(|(name, ohm)| (*name, ohm.as_str())).collect();
    desk.second(ui, &words.say(why, &places));
}

/// Whether the live lines go round through the gate, and what both ways read.
fn gate(ui: &mut Ui, desk: &Desk<'_>, run: &Run, changed: &mut Run) {
    let (words, p) = (desk.words, desk.p);
    ui.add_space(10.0);
    let options = [(true, words.text(Text::Clipped)), (false, words.text(Text::OnlyTied))];
    if let Some(clipped) = field::choice(ui, p, words.text(Text::Loop), &options, Some(run.live_loop())) {
        changed.live_loop = Some(clipped);
    }
    ui.add_space(4.0);
    match desk.editor.study() {
        None => desk.second(ui, words.text(Text::LoopReadsSoon)),
        Some((study, stale)) => {
            if let Some(kv) = study.gate_kv {
                let figure = |kv: f64| {
                    let text = words.kilovolts(kv);
                    if stale { format!("({text})") } else { text }
                };
                let [clipped, tied] = kv.map(figure);
                desk.second(ui, &words.say(Text::LoopReads, &[("clipped", &clipped), ("tied", &tied)]));
            }
        }
    }
    ui.add_space(4.0);
    desk.second(ui, words.text(Text::LoopWhy));
}
