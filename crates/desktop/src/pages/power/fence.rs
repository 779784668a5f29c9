//! The fence as it is: what its joins and its lead resist, and whether the gate is clipped round.

use egui::{Id, Ui};
use plan::lead::Conductor;
use plan::{Edit, Run};
use words::texts::Faults as Text;
use words::{Measure, Range};
use workup::Lay;

use crate::editor::Message;
use crate::field::{self, Shown};
use crate::pages::Desk;

/// What may be typed: more would be a break.
const OHMS: Range = Range::zero_to(100_000.0);
const LEAD_M: Range = Range::up_to(10_000.0);

/// A lead by its conductor and length, as egui alone remembers it, and the ohms that this made.
#[derive(Clone, Copy, PartialEq)]
struct Lead {
    /// `None` is one line of the net.
    wire: Option<Conductor>,
    length_m: Option<f64>,
    made_ohm: f64,
}

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, lay: &Lay) {
    let (words, p) = (desk.words, desk.p);
    desk.section(ui, words.text(Text::Fence), "");
    ui.add_space(6.0);
    let mut changed = run.clone();
    let read = || field::or_nothing(field::figure(words, Measure::Ohms, OHMS));
    let shown = Shown::of(words, Measure::Ohms, run.join_ohm.unwrap_or(0.0), run.join_ohm.is_none());
    if let Some(ohm) = field::line(ui, p, Id::unique(("join ohm", &run.id)), words.text(Text::JoinOhm), &shown, read())
    {
        changed.join_ohm = ohm;
    }
    let shown = Shown::of(words, Measure::Ohms, run.lead_ohm(), run.lead_ohm.is_none());
    if let Some(ohm) = field::line(ui, p, Id::unique(("lead ohm", &run.id)), words.text(Text::LeadOhm), &shown, read())
    {
        changed.lead_ohm = ohm;
    }
    lead(ui, desk, run, lay, &mut changed);
    if lay.is_ring() {
        gate(ui, desk, run, &mut changed);
    }
    if changed != *run {
        desk.said.say(Message::Make(Edit::SetRun { run: Box::new(changed) }));
    }
}

/// The lead by conductor and length, written as its ohms.
fn lead(ui: &mut Ui, desk: &Desk<'_>, run: &Run, lay: &Lay, changed: &mut Run) {
    let (words, p) = (desk.words, desk.p);
    let nets = &desk.editor.plan().store.nets;
    let net = lay.nets.first().and_then(|laid| nets.iter().find(|net| net.id == laid.kind));
    let net_ohm_per_m = net.map_or(plan::defaults::LINE_RESISTANCE_OHM_PER_M, plan::NetKind::line_resistance_ohm_per_m);
    let ohm_per_m = |wire: Option<Conductor>| wire.map_or(net_ohm_per_m, Conductor::ohm_per_m);
    let id = Id::unique(("lead made of", &run.id));
    let kept = ui.data(|data| data.get_temp::<Lead>(id));
    // Ohms that were stated since are of another lead.
    let own = kept.map(|lead| match lead.length_m {
        Some(_) if run.lead_ohm != Some(lead.made_ohm) => Lead { length_m: None, ..lead },
        _ => lead,
    });
    let mut lead = own.unwrap_or(Lead { wire: Some(Conductor::Steel), length_m: None, made_ohm: 0.0 });
    let before = lead;
    let options = [
        (Some(Conductor::Steel), words.text(Text::Steel)),
        (Some(Conductor::Aluminium), words.text(Text::Aluminium)),
        (Some(Conductor::Copper), words.text(Text::Copper)),
        (None, words.text(Text::NetLine)),
    ];
    if let Some(wire) = field::choice(ui, p, words.text(Text::LeadOf), &options, Some(lead.wire)) {
        lead.wire = wire;
    }
    let shown = match lead.length_m {
        Some(length_m) => Shown::of(words, Measure::Length, length_m, false),
        None => Shown::nothing(words, Measure::Length),
    };
    let read = field::figure(words, Measure::Length, LEAD_M);
    if let Some(length_m) =
        field::line(ui, p, Id::unique(("lead length", &run.id)), words.text(Text::LeadLength), &shown, read)
    {
        lead.length_m = Some(length_m);
    }
    if lead != before {
        if let Some(length_m) = lead.length_m {
            // To a hundredth: more would be a promise.
            lead.made_ohm = (ohm_per_m(lead.wire) * length_m * 100.0).round() / 100.0;
            changed.lead_ohm = Some(lead.made_ohm);
        }
        ui.data_mut(|data| data.insert_temp(id, lead));
    }
    ui.add_space(4.0);
    let per_km = |wire: Conductor| words.number(wire.ohm_per_m() * 1e3, 1);
    let places = [
        ("steel", per_km(Conductor::Steel)),
        ("aluminium", per_km(Conductor::Aluminium)),
        ("copper", per_km(Conductor::Copper)),
        ("net", words.number(net_ohm_per_m, 1)),
    ];
    let places: Vec<(&str, &str)> = places.iter().map(|(name, ohm)| (*name, ohm.as_str())).collect();
    desk.second(ui, &words.say(Text::LeadWhy, &places));
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
    let Some((study, stale)) = desk.editor.study() else {
        desk.second(ui, words.text(Text::LoopReadsSoon));
        return;
    };
    if let Some(kv) = study.gate_kv {
        let figure = |kv: f64| {
            let text = words.kilovolts(kv);
            if stale { format!("({text})") } else { text }
        };
        let [clipped, tied] = kv.map(figure);
        desk.second(ui, &words.say(Text::LoopReads, &[("clipped", &clipped), ("tied", &tied)]));
        ui.add_space(4.0);
    }
    desk.second(ui, words.text(Text::LoopWhy));
}
