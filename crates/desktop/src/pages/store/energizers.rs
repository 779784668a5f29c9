//! The keeper's energizers: the figures of their data sheets, which one the run uses, and whether its sheet agrees
//! with itself.

use egui::{Id, Ui};
use exchange::power::data_sheet;
use plan::{Edit, Energizer, Plan, Run, Store};
use words::texts::{About, Store as Text};
use words::{Measure, Range, Words};
use workup::power::SourceModel;
use workup::{RunWorkup, Trouble};

use super::{
    Desk, Figure, MOST_OF_A_KIND, Owner, deeds, free_name, inset, kind_row, runs_that, set_store, set_store_and_runs,
    unfolded,
};
use crate::editor::Message;
use crate::field;
use crate::kit;
use crate::theme::{self, colour};

const LIST: &str = "energizers";

/// The row of one, by its name.
pub(in crate::pages) fn row(name: &str) -> Id {
    super::kind_row_id(LIST, name)
}

/// Unfolds one.
pub(in crate::pages) fn unfold(ctx: &egui::Context, name: &str) {
    super::unfold(ctx, LIST, name);
}

const COUNT: Figure = Figure::new(Text::HowMany, Measure::Count, Range::zero_to(MOST_OF_A_KIND));
const STORED: Figure = Figure::new(Text::StoredJoules, Measure::Joules, Range::between(0.001, 100.0));
const FREE: Figure = Figure::new(Text::WithoutLoad, Measure::Kilovolts, Range::between(0.1, 20.0));
const LOADED: Figure = Figure::new(Text::KvAtLoad, Measure::Kilovolts, Range::between(0.01, 20.0));
const OUT: Figure = Figure::new(Text::JoulesAtLoad, Measure::Joules, Range::between(0.001, 100.0));

/// The energizer that a run uses: the one that it names, else the store's first.
pub(in crate::pages) fn of_run<'a>(plan: &'a Plan, run: &Run) -> Option<&'a Energizer> {
    match &run.energizer {
        Some(id) => plan.store.energizers.iter().find(|unit| unit.id == *id),
        None => plan.store.energizers.first(),
    }
}

pub(in crate::pages) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let store = &editor.plan().store;
    let names: Vec<&str> = store.energizers.iter().map(|unit| unit.id.as_str()).collect();
    desk.section(ui, words.text(Text::Energizer), "", About::Stated);
    if store.energizers.is_empty() {
        ui.add_space(4.0);
        let assumed = Energizer::assumed();
        let joules = words.typed_parts(Measure::Joules, assumed.stored_j()).0;
        desk.second(ui, &words.say(Text::NoEnergizerYet, &[("joules", &joules)]));
        ui.add_space(6.0);
        the_assumed_one(ui, desk, &assumed);
    } else {
        kit::rule(ui, p);
        let open = unfolded(ui, LIST, &names);
        for (index, unit) in store.energizers.iter().enumerate() {
            let here = open.as_deref() == Some(unit.id.as_str());
            if kind_row(ui, desk, LIST, &unit.id, &in_short(words, unit), here) {
                inset(ui, |ui| kind(ui, desk, index, unit, &names));
            }
        }
    }
    ui.add_space(8.0);
    if let Some((run, worked)) = editor.run() {
        if store.energizers.len() > 1 {
            which(ui, desk, run);
        }
        fit(ui, desk, run, worked);
    }
    if !store.energizers.is_empty() && kit::link(ui, words.text(Text::AddEnergizer), p).clicked() {
        let name = free_name(words.text(Text::NewEnergizer), &names);
        super::unfold(ui.ctx(), LIST, &name);
        let mut store = store.clone();
        store.energizers.push(Energizer { id: name, ..Energizer::assumed() });
        set_store(desk, store);
    }
}

fn in_short(words: Words, unit: &Energizer) -> String {
    let joules = words.typed_parts(Measure::Joules, unit.stored_j()).0;
    words.say(Text::OfJoules, &[("joules", &joules), ("kv", &words.kilovolts(unit.no_load_kv()))])
}

/// The fields of a data sheet; what they state now.
fn sheet(ui: &mut Ui, desk: &Desk<'_>, owner: Owner<'_>, unit: &Energizer) -> Energizer {
    let mut changed = unit.clone();
    // Where the energy out is stated, none is assumed to be stored.
    let stored_j = unit.stored_j.or_else(|| unit.output_j_at_500_ohm.is_none().then(|| unit.stored_j()));
    owner.stated(ui, desk, &STORED, &mut changed.stored_j, stored_j);
    owner.stated(ui, desk, &FREE, &mut changed.no_load_kv, unit.no_load_kv());
    owner.stated(ui, desk, &LOADED, &mut changed.kv_at_500_ohm, unit.kv_at_500_ohm());
    owner.stated(ui, desk, &OUT, &mut changed.output_j_at_500_ohm, unit.output_j_at_500_ohm());
    owner.counted(ui, desk, &COUNT, &mut changed.count, unit.count());
    changed
}

/// The energizer that stands in where none is stated; the first figure typed makes it the keeper's.
fn the_assumed_one(ui: &mut Ui, desk: &mut Desk<'_>, assumed: &Energizer) {
    // Its fields are those of the one that it becomes, so that the hand stays where it is while it types.
    let name = desk.words.text(Text::TheAssumedOne);
    let owner = Owner { id: Id::unique(("energizer field", desk.words.text(Text::NewEnergizer))), name };
    let changed = sheet(ui, desk, owner, assumed);
    if changed != *assumed {
        let id = desk.words.text(Text::NewEnergizer).to_owned();
        let mut store = desk.editor.plan().store.clone();
        store.energizers.push(Energizer { id, ..changed });
        set_store(desk, store);
    }
}

fn kind(ui: &mut Ui, desk: &mut Desk<'_>, index: usize, unit: &Energizer, names: &[&str]) {
    let words = desk.words;
    let plan = desk.editor.plan();
    let owner = Owner { id: Id::unique(("energizer field", &unit.id)), name: &unit.id };
    let name = owner.renamed(ui, desk, names);
    let mut changed = sheet(ui, desk, owner, unit);
    if let Some(name) = name {
        changed.id = name;
    }
    let in_use = runs_that(plan, |run| run.energizer.as_ref() == Some(&unit.id))
        .map(|runs| words.say(Text::EnergizerInUse, &[("runs", &runs)]));
    let (twice, out) = deeds(ui, desk, in_use.as_deref());
    let mut store: Store = plan.store.clone();
    if twice {
        let name = free_name(&unit.id, names);
        super::unfold(ui.ctx(), LIST, &name);
        store.energizers.insert(index + 1, Energizer { id: name, ..unit.clone() });
        set_store(desk, store);
    } else if out {
        store.energizers.remove(index);
        set_store(desk, store);
    } else if changed != *unit {
        let mut runs = Vec::new();
        if changed.id != unit.id {
            super::unfold(ui.ctx(), LIST, &changed.id);
            let named = plan.runs.iter().filter(|run| run.energizer.as_ref() == Some(&unit.id));
            runs = named.map(|run| Run { energizer: Some(changed.id.clone()), ..run.clone() }).collect();
        }
        store.energizers[index] = changed;
        set_store_and_runs(desk, store, runs);
    }
}

fn which(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run) {
    let plan = desk.editor.plan();
    let options: Vec<(&str, &str)> =
        plan.store.energizers.iter().map(|unit| (unit.id.as_str(), unit.id.as_str())).collect();
    let on = of_run(plan, run).map(|unit| unit.id.as_str());
    if let Some(chosen) = field::choice(ui, desk.p, desk.words.text(Text::ThisRunUses), &options, on) {
        let changed = Run { energizer: Some(chosen.to_owned()), ..run.clone() };
        desk.said.say(Message::Make(Edit::SetRun { run: Box::new(changed) }));
    }
    ui.add_space(6.0);
}

/// Whether the sheet of the run's energizer agrees with itself, in a sentence.
fn fit(ui: &mut Ui, desk: &Desk<'_>, run: &Run, worked: &RunWorkup) {
    let (words, p) = (desk.words, desk.p);
    let assumed = Energizer::assumed();
    let unit = of_run(desk.editor.plan(), run).unwrap_or(&assumed);
    let fault = worked.troubles.iter().find_map(|trouble| match trouble {
        Trouble::DataSheet { energizer, fault } if *energizer == unit.id => Some(*fault),
        _ => None,
    });
    let model = match (fault, &worked.volts) {
        (Some(fault), _) => Err(fault),
        (None, Some(volts)) if volts.source.l_mh > 0.0 => Ok(SourceModel::Rlc),
        (None, Some(_)) => Ok(SourceModel::Rc),
        (None, None) => return,
    };
    let sentence = data_sheet(unit, model, words);
    let ink = if fault.is_some() { p.danger } else { p.ink2 };
    kit::prose(ui, &sentence, theme::regular(12.0), colour(ink));
    ui.add_space(8.0);
}
