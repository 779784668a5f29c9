//! Try a fault: what can be put onto the netting, and the list of what is there.

use care::fault_said::{self, GRASS};
use drawing::Thing;
use egui::{Align2, Id, Ui, pos2, vec2};
use plan::{Edit, Fault, FaultKind, LeakageZone, Run, Today};
use words::texts::Faults as Text;
use words::{Measure, Range};
use workup::Lay;
use workup::faults::land;

use crate::editor::Message;
use crate::field::{self, Label, Shown};
use crate::icons::Icon;
use crate::kit;
use crate::pages::{Desk, picks};
use crate::theme::{self, colour};
use crate::tool::{Tool, Trial};

/// What can be tried: icon, what it means.
const TRIALS: [(Trial, Icon, Text); 6] = [
    (Trial::Branch, Icon::Branch, Text::BranchMeans),
    (Trial::LongGrass, Icon::Grass, Text::LongGrassMeans),
    (Trial::Peg, Icon::Peg, Text::PegMeans),
    (Trial::CutLine, Icon::CutLine, Text::CutLineMeans),
    (Trial::BadJoin, Icon::BadJoin, Text::BadJoinMeans),
    (Trial::DeadNet, Icon::DeadNet, Text::DeadNetMeans),
];
/// Space between two buttons.
const APART: f32 = 8.0;
/// Three buttons side by side want so much room.
const THREE_PX: f32 = 300.0;
/// More ohms than this conduct nothing.
const OHMS: Range = Range::up_to(10_000_000.0);
/// More lines than any net has.
const MOST_LINES: f64 = 1_000.0;

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, lay: &Lay) {
    let words = desk.words;
    desk.section(ui, words.text(Text::Try), words.text(Text::TryAside));
    ui.add_space(8.0);
    buttons(ui, desk);
    if run.faults.is_empty() && run.leakage_zones.is_empty() {
        ui.add_space(6.0);
        desk.second(ui, words.text(Text::NoFaults));
        return;
    }
    ui.add_space(8.0);
    kit::rule(ui, desk.p);
    for (index, fault) in run.faults.iter().enumerate() {
        self::fault(ui, desk, run, lay, index, fault);
    }
    for (index, zone) in run.leakage_zones.iter().enumerate() {
        self::zone(ui, desk, run, lay, index, zone);
    }
    if run.faults.len() + run.leakage_zones.len() > 1 {
        ui.add_space(8.0);
        if kit::link(ui, words.text(Text::TakeAll), desk.p).clicked() {
            set(desk, run, |run| {
                run.faults.clear();
                run.leakage_zones.clear();
            });
        }
    }
}

fn buttons(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p) = (desk.words, desk.p);
    let columns = if ui.available_width() >= THREE_PX { 3.0 } else { 2.0 };
    let wide = ((ui.available_width() - (columns - 1.0) * APART) / columns).floor();
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(APART, APART);
        for (trial, icon, means) in TRIALS {
            let on = *desk.editor.tool() == Tool::Try(trial);
            let button = kit::tile(ui, icon, words.text(trial.name()), on, wide, p).on_hover_text(words.text(means));
            if button.clicked() {
                desk.said.say(Message::Use(if on { Tool::Pick } else { Tool::Try(trial) }));
            }
        }
        let dry = desk.editor.plan().ground.today == Some(Today::Dry);
        let name = words.text(Text::DryEarth);
        let button = kit::tile(ui, Icon::DryEarth, name, dry, wide, p).on_hover_text(words.text(Text::DryEarthMeans));
        if button.clicked() {
            desk.said.say(Message::Make(Edit::SetToday { today: (!dry).then_some(Today::Dry) }));
        }
    });
}

/// States the run anew with a change.
fn set(desk: &mut Desk<'_>, run: &Run, change: impl FnOnce(&mut Run)) {
    let mut changed = run.clone();
    change(&mut changed);
    if changed != *run {
        desk.said.say(Message::Make(Edit::SetRun { run: Box::new(changed) }));
    }
}

/// A row that picks its thing; whether that is picked.
fn row(ui: &mut Ui, desk: &mut Desk<'_>, thing: Thing, left: &str, right: &str) -> bool {
    let p = desk.p;
    let label = if right.is_empty() { left.to_owned() } else { format!("{left}: {right}") };
    let id = Id::unique(("fault row", thing));
    let (rect, picked) = picks(ui, desk, id, thing, &label);
    let y = rect.center().y;
    let right = kit::cell(ui, pos2(rect.right(), y), Align2::RIGHT_CENTER, right, theme::regular(13.0), colour(p.ink2));
    let font = if picked { theme::medium(13.0) } else { theme::regular(13.0) };
    let left = kit::shortened(ui, left, font, colour(p.ink), right.left() - rect.left() - 12.0);
    ui.painter().galley(pos2(rect.left(), y - left.size().y / 2.0), left, colour(p.ink));
    picked
}

fn fault(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, lay: &Lay, index: usize, fault: &Fault) {
    let (words, p) = (desk.words, desk.p);
    let thing = Thing::Fault { run: desk.editor.run_index(), fault: index };
    let name = fault_said::name(run, lay, fault, words);
    let landed = land(run, lay, fault.kind, fault.at);
    let lines = landed.ok().and_then(|landing| fault_said::live_lines(desk.editor.plan(), lay, landing.net));
    let short = match fault.kind {
        FaultKind::Short | FaultKind::Join => words.ohms(fault.ohm.unwrap_or(0.0)),
        FaultKind::LineBreak => {
            let (count, of) = (fault.lines.unwrap_or(1), lines.unwrap_or(1));
            words.say(Text::LinesOf, &[("count", &count.to_string()), ("lines", &of.to_string())])
        }
        FaultKind::Break => String::new(),
    };
    if !row(ui, desk, thing, &name, &short) {
        return;
    }
    ui.add_space(4.0);
    desk.second(ui, &words::capital(&fault_said::what(desk.editor.plan(), lay, fault, landed, words)));
    let number = (index + 1).to_string();
    let said = |text: Text| words.say(text, &[("number", &number)]);
    match fault.kind {
        FaultKind::Short | FaultKind::Join => {
            let shown = Shown::of(words, Measure::Ohms, fault.ohm.unwrap_or(0.0), fault.ohm.is_none());
            let said = said(Text::OhmsSaid);
            let label = Label { shown: words.text(Text::Ohms), said: &said };
            let read = field::figure(words, Measure::Ohms, OHMS);
            if let Some(ohm) = field::line(ui, p, Id::unique(("fault ohms", thing)), label, &shown, read) {
                set(desk, run, |run| run.faults[index].ohm = Some(ohm));
            }
        }
        FaultKind::LineBreak => {
            let count = fault.lines.unwrap_or(1);
            let shown = Shown::of(words, Measure::Count, f64::from(count), fault.lines.is_none());
            let said = said(Text::LinesSaid);
            let label = Label { shown: words.text(Text::Lines), said: &said };
            let most = lines.unwrap_or(count).max(1);
            let read = |text: &str| {
                let count = field::count(words, Range::between(0.0, MOST_LINES))(text)?;
                let refused = || words.say(Text::MoreLines, &[("lines", &most.to_string())]);
                if (1..=most).contains(&count) { Ok(count) } else { Err(refused()) }
            };
            if let Some(count) = field::line(ui, p, Id::unique(("fault lines", thing)), label, &shown, read) {
                set(desk, run, |run| run.faults[index].lines = Some(count));
            }
        }
        FaultKind::Break => {}
    }
    ui.add_space(4.0);
    if kit::link(ui, &words.say(Text::TakeOutFault, &[("name", &name.to_lowercase())]), p).clicked() {
        set(desk, run, |run| drop(run.faults.remove(index)));
    }
    ui.add_space(8.0);
}

fn zone(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, lay: &Lay, index: usize, zone: &LeakageZone) {
    let (words, p) = (desk.words, desk.p);
    let thing = Thing::Zone { run: desk.editor.run_index(), zone: index };
    let name = fault_said::zone(zone, words);
    let whole_m = if zone.from_m <= zone.to_m { zone.to_m - zone.from_m } else { zone.to_m + lay.line_m - zone.from_m };
    let picked = row(ui, desk, thing, &name, &words.length(whole_m));
    ui.add_space(4.0);
    desk.second(ui, &fault_said::zone_ends(lay, zone, words));
    ui.add_space(4.0);
    if !picked {
        return;
    }
    let number = (index + 1).to_string();
    let said = |text: Text| words.say(text, &[("number", &number)]);
    let on_line = Range::zero_to(lay.line_m);
    for (end, shown, is) in [(Text::FromSaid, Text::From, zone.from_m), (Text::ToSaid, Text::To, zone.to_m)] {
        let said = said(end);
        let label = Label { shown: words.text(shown), said: &said };
        let read = |text: &str| words.read_length(text, on_line).map_err(|refused| refused.sentence(words));
        let shown = Shown::of(words, Measure::Length, is, false);
        if let Some(typed_m) =
            field::line(ui, p, Id::unique(("zone end", thing, end == Text::ToSaid)), label, &shown, read)
        {
            set(desk, run, |run| {
                let zone = &mut run.leakage_zones[index];
                if end == Text::ToSaid { zone.to_m = typed_m } else { zone.from_m = typed_m }
            });
        }
    }
    let options = GRASS.map(|(word, leaks)| (word, (words.text(word), leaks)));
    let said = said(Text::GrassSaid);
    let names = options.map(|(word, (name, _))| (word, name));
    let label = Label { shown: "", said: &said };
    if let Some(word) = field::choice(ui, p, label, &names, Some(fault_said::grass(zone.s_per_m))) {
        let leaks = GRASS.iter().find(|one| one.0 == word).map_or(zone.s_per_m, |one| one.1);
        set(desk, run, |run| run.leakage_zones[index].s_per_m = leaks);
    }
    ui.add_space(4.0);
    if kit::link(ui, &words.say(Text::TakeOutFault, &[("name", &name.to_lowercase())]), p).clicked() {
        set(desk, run, |run| drop(run.leakage_zones.remove(index)));
    }
    ui.add_space(8.0);
}
