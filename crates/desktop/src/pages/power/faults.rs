//! Try a fault: what can be put onto the netting, and the list of what is there.

use care::fault_said::{self, GRASS};
use drawing::Thing;
use egui::{Id, Ui, vec2};
use plan::{Edit, Fault, FaultKind, LeakageZone, Run, Today};
use words::texts::{About, Faults as Text};
use words::{Measure, Range, Words};
use workup::Lay;
use workup::faults::land;

use crate::editor::Message;
use crate::field::{self, Label, Shown};
use crate::icons::Icon;
use crate::kit;
use crate::pages::{Desk, picks_told};
use crate::theme;
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
/// More ohms than this conduct nothing.
const OHMS: Range = Range::up_to(10_000_000.0);
/// More lines than any net has.
const MOST_LINES: f64 = 1_000.0;

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run) {
    let words = desk.words;
    desk.section(ui, words.text(Text::Try), words.text(Text::TryAside), About::Faults);
    ui.add_space(8.0);
    buttons(ui, desk);
    if !run.is_tried() {
        ui.add_space(6.0);
        desk.second(ui, words.text(Text::NoFaults));
        return;
    }
    ui.add_space(8.0);
    kit::rule(ui, desk.p);
    let mut count = 0;
    for branch in run.lines() {
        // One that could not be laid is told of among the findings.
        let Some((alone, lay)) = desk.editor.on_line(desk.editor.run_index(), branch) else { continue };
        for (index, fault) in alone.faults.iter().enumerate() {
            let on = On { run, alone: &alone, lay: &lay, branch, index };
            self::fault(ui, desk, &on, fault);
        }
        for (index, zone) in alone.leakage_zones.iter().enumerate() {
            let on = On { run, alone: &alone, lay: &lay, branch, index };
            self::zone(ui, desk, &on, zone);
        }
        count += alone.faults.len() + alone.leakage_zones.len();
    }
    if count > 1 {
        ui.add_space(8.0);
        if kit::link(ui, words.text(Text::TakeAll), desk.p).clicked() {
            set(desk, run, |run| *run = run.untried());
        }
    }
}

/// What can be said of a fault or a stretch of grass of the run in hand, wherever it is picked.
pub(in crate::pages) fn fields(ui: &mut Ui, desk: &mut Desk<'_>, thing: Thing) {
    let editor = desk.editor;
    let (branch, index) = match thing.zone().unwrap_or(thing) {
        Thing::Fault { branch, fault, .. } => (branch, fault),
        Thing::Zone { branch, zone, .. } => (branch, zone),
        _ => return,
    };
    let Some((run, _)) = editor.run() else { return };
    let Some((alone, lay)) = editor.on_line(editor.run_index(), branch) else { return };
    let on = On { run, alone: &alone, lay: &lay, branch, index };
    if thing.zone().is_some() {
        if let Some(zone) = alone.leakage_zones.get(index) {
            zone_fields(ui, desk, &on, zone);
        }
    } else if let Some(fault) = alone.faults.get(index) {
        fault_fields(ui, desk, &on, fault);
    }
}

/// What a fault or a stretch is on: a run's line, or one of its branches as a run by itself.
struct On<'a> {
    run: &'a Run,
    alone: &'a Run,
    lay: &'a Lay,
    branch: Option<usize>,
    /// Its place in that line's list.
    index: usize,
}

impl On<'_> {
    /// Its number for the fields' names, no two of which are alike.
    fn number(&self, words: Words) -> String {
        let number = (self.index + 1).to_string();
        match self.branch {
            None => number,
            Some(branch) => words.say(Text::OnBranch, &[("number", &number), ("branch", &(branch + 1).to_string())]),
        }
    }

    /// States the fault anew with a change.
    fn set_fault(&self, desk: &mut Desk<'_>, change: impl FnOnce(&mut Fault)) {
        set(desk, self.run, |run| {
            if let Some(fault) = run.faults_on_mut(self.branch).and_then(|faults| faults.get_mut(self.index)) {
                change(fault);
            }
        });
    }

    /// States the stretch anew with a change.
    fn set_zone(&self, desk: &mut Desk<'_>, change: impl FnOnce(&mut LeakageZone)) {
        set(desk, self.run, |run| {
            if let Some(zone) = run.zones_on_mut(self.branch).and_then(|zones| zones.get_mut(self.index)) {
                change(zone);
            }
        });
    }
}

fn buttons(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p) = (desk.words, desk.p);
    let room = ui.available_width();
    let width = |columns: f32| ((room - (columns - 1.0) * APART) / columns).floor();
    let names = TRIALS.iter().map(|(trial, ..)| trial.name()).chain([Text::DryEarth]);
    let longest = names.map(|name| kit::width(ui, words.text(name), theme::medium(13.0))).fold(0.0, f32::max);
    // As many columns as the longest word allows.
    let columns = [3.0, 2.0].into_iter().find(|&columns| kit::TILE + longest <= width(columns)).unwrap_or(1.0);
    let wide = width(columns);
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

fn fault(ui: &mut Ui, desk: &mut Desk<'_>, on: &On<'_>, fault: &Fault) {
    let words = desk.words;
    let &On { alone, lay, branch, index, .. } = on;
    let thing = Thing::Fault { run: desk.editor.run_index(), branch, fault: index };
    let name = fault_said::name(alone, lay, branch, fault, words);
    let landed = land(alone, lay, fault.kind, fault.at);
    let lines = landed.ok().and_then(|landing| fault_said::live_lines(desk.editor.plan(), lay, landing.net));
    let short = match fault.kind {
        FaultKind::Short | FaultKind::Join => words.ohms(fault.ohm.unwrap_or(0.0)),
        FaultKind::LineBreak => {
            let (count, of) = (fault.lines.unwrap_or(1), lines.unwrap_or(1));
            words.say(Text::LinesOf, &[("count", &count.to_string()), ("lines", &of.to_string())])
        }
        FaultKind::Break => String::new(),
    };
    if picks_told(ui, desk, thing, &name, &short) {
        fault_fields(ui, desk, on, fault);
    }
}

/// What can be said of a fault.
fn fault_fields(ui: &mut Ui, desk: &mut Desk<'_>, on: &On<'_>, fault: &Fault) {
    let (words, p) = (desk.words, desk.p);
    let &On { alone, lay, branch, index, .. } = on;
    let thing = Thing::Fault { run: desk.editor.run_index(), branch, fault: index };
    let landed = land(alone, lay, fault.kind, fault.at);
    let lines = landed.ok().and_then(|landing| fault_said::live_lines(desk.editor.plan(), lay, landing.net));
    ui.add_space(4.0);
    desk.second(ui, &words::capital(&fault_said::what(desk.editor.plan(), lay, fault, landed, words)));
    let number = on.number(words);
    let said = |text: Text| words.say(text, &[("number", &number)]);
    match fault.kind {
        FaultKind::Short | FaultKind::Join => {
            let shown = Shown::of(words, Measure::Ohms, fault.ohm.unwrap_or(0.0), fault.ohm.is_none());
            let said = said(Text::OhmsSaid);
            let label = Label { shown: words.text(Text::Ohms), said: &said };
            let read = field::figure(words, Measure::Ohms, OHMS);
            if let Some(ohm) = field::line(ui, p, Id::unique(("fault ohms", thing)), label, &shown, read) {
                on.set_fault(desk, |fault| fault.ohm = Some(ohm));
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
                on.set_fault(desk, |fault| fault.lines = Some(count));
            }
        }
        FaultKind::Break => {}
    }
    ui.add_space(4.0);
    let name = fault_said::name_within(alone, lay, branch, fault, words);
    if kit::link(ui, &words.say(Text::TakeOutFault, &[("name", &name)]), p).clicked() {
        set(desk, on.run, |run| {
            run.faults_on_mut(branch).map(|faults| faults.remove(index));
        });
    }
    ui.add_space(8.0);
}

fn zone(ui: &mut Ui, desk: &mut Desk<'_>, on: &On<'_>, zone: &LeakageZone) {
    let words = desk.words;
    let &On { lay, branch, index, .. } = on;
    let thing = Thing::Zone { run: desk.editor.run_index(), branch, zone: index };
    let name = fault_said::zone(zone, words);
    let by_row = picks_told(ui, desk, thing, &name, &words.length(fault_said::zone_m(lay, zone)));
    // Its fields stay open while one of its ends is picked.
    let picked = by_row || desk.editor.picked().and_then(Thing::zone) == Some(thing);
    ui.add_space(4.0);
    desk.second(ui, &fault_said::zone_ends(lay, branch, zone, words));
    ui.add_space(4.0);
    if picked {
        zone_fields(ui, desk, on, zone);
    }
}

/// What can be said of a stretch of grass.
fn zone_fields(ui: &mut Ui, desk: &mut Desk<'_>, on: &On<'_>, zone: &LeakageZone) {
    let (words, p) = (desk.words, desk.p);
    let &On { lay, branch, index, .. } = on;
    let thing = Thing::Zone { run: desk.editor.run_index(), branch, zone: index };
    let number = on.number(words);
    let said = |text: Text| words.say(text, &[("number", &number)]);
    let on_line = Range::zero_to(lay.line_m);
    for (end, shown, is) in [(Text::FromSaid, Text::From, zone.from_m), (Text::ToSaid, Text::To, zone.to_m)] {
        let said = said(end);
        let shown = if branch.is_some() && shown == Text::From { Text::FromBranch } else { shown };
        let label = Label { shown: words.text(shown), said: &said };
        let read = |text: &str| words.read_length(text, on_line).map_err(|refused| refused.sentence(words));
        let shown = Shown::of(words, Measure::Length, is, false);
        if let Some(typed_m) =
            field::line(ui, p, Id::unique(("zone end", thing, end == Text::ToSaid)), label, &shown, read)
        {
            on.set_zone(desk, |zone| if end == Text::ToSaid { zone.to_m = typed_m } else { zone.from_m = typed_m });
        }
    }
    let options = GRASS.map(|(word, leaks)| (word, (words.text(word), leaks)));
    let said = said(Text::GrassSaid);
    let names = options.map(|(word, (name, _))| (word, name));
    let label = Label { shown: "", said: &said };
    if let Some(word) = field::choice(ui, p, label, &names, Some(fault_said::grass(zone.s_per_m))) {
        let leaks = GRASS.iter().find(|one| one.0 == word).map_or(zone.s_per_m, |one| one.1);
        on.set_zone(desk, |zone| zone.s_per_m = leaks);
    }
    ui.add_space(4.0);
    let name = fault_said::zone_within(zone, words);
    if kit::link(ui, &words.say(Text::TakeOutFault, &[("name", &name)]), p).clicked() {
        set(desk, on.run, |run| {
            run.zones_on_mut(branch).map(|zones| zones.remove(index));
        });
    }
    ui.add_space(8.0);
}
