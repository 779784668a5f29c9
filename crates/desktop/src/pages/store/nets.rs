//! The keeper's nets: each kind a row that unfolds into its fields.

use egui::{Id, Ui};
use plan::{NetKind, Rolls, Store};
use words::Range;
use words::texts::About;
use words::texts::Store as Text;
use words::{Measure, Words};

use super::{
    Desk, Figure, MOST_OF_A_KIND, Owner, deeds, free_name, inset, kind_row, runs_that, set_run, set_store,
    set_store_and_runs, unfolded,
};
use crate::field::{self, Label, Shown};
use crate::kit;

const LIST: &str = "nets";

/// The row of one, by its name.
pub(in crate::pages) fn row(name: &str) -> Id {
    super::kind_row_id(LIST, name)
}

/// Unfolds one.
pub(in crate::pages) fn unfold(ctx: &egui::Context, name: &str) {
    super::unfold(ctx, LIST, name);
}

const COUNT: Figure = Figure::new(Text::HowMany, Measure::Count, Range::zero_to(MOST_OF_A_KIND));
const HEIGHT: Figure = Figure::new(Text::Height, Measure::Small, Range::between(0.1, 5.0));
const LENGTH_M: Range = Range::between(0.5, 1000.0);
const POSTS: Range = Range::between(2.0, 1000.0);

pub(in crate::pages) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let store = &editor.plan().store;
    let names: Vec<&str> = store.nets.iter().map(|net| net.id.as_str()).collect();
    desk.section(ui, words.text(Text::YourNets), "", About::Stated);
    if store.nets.is_empty() {
        ui.add_space(6.0);
        desk.second(ui, words.text(Text::NoNetsYet));
    } else {
        kit::rule(ui, p);
    }
    let open = unfolded(ui, LIST, &names);
    for (index, net) in store.nets.iter().enumerate() {
        let here = open.as_deref() == Some(net.id.as_str());
        if kind_row(ui, desk, LIST, &net.id, &in_short(words, net), here) {
            inset(ui, |ui| kind(ui, desk, index, net, &names));
        }
    }
    ui.add_space(8.0);
    which_are_taken(ui, desk);
    if kit::link(ui, words.text(Text::AddNet), p).clicked() {
        let name = free_name(words.text(Text::NewNet), &names);
        super::unfold(ui.ctx(), LIST, &name);
        let mut store = store.clone();
        store.nets.push(new_net(name));
        set_store(desk, store);
    }
}

fn in_short(words: Words, net: &NetKind) -> String {
    let (length, unit) = words.typed_parts(Measure::Length, net.length_m);
    words.say(Text::ManyOf, &[("count", &net.count().to_string()), ("length", &format!("{length} {unit}"))])
}

/// A net of which nothing is known but what rolls have at first.
fn new_net(name: String) -> NetKind {
    let roll = Rolls::default();
    NetKind::new(name, roll.length_m, roll.panels_each())
}

fn kind(ui: &mut Ui, desk: &mut Desk<'_>, index: usize, net: &NetKind, names: &[&str]) {
    let words = desk.words;
    let plan = desk.editor.plan();
    let owner = Owner { id: Id::unique(("net field", &net.id)), name: &net.id };
    let mut changed = net.clone();
    if let Some(name) = owner.renamed(ui, desk, names) {
        changed.id = name;
    }
    owner.counted(ui, desk, &COUNT, &mut changed.count, net.count());
    let (id, said) = owner.field(desk, Text::Length);
    let label = Label { shown: words.text(Text::Length), said: &said };
    let shown = Shown::of(words, Measure::Length, net.length_m, false);
    if let Some(length_m) = field::line(ui, desk.p, id, label, &shown, field::figure(words, Measure::Length, LENGTH_M))
    {
        changed.length_m = length_m;
        make_equal(&mut changed, net.panel_count() as u32);
    }
    if let Some(posts) = posts(ui, desk, owner, net) {
        make_equal(&mut changed, posts - 1);
    }
    owner.stated(ui, desk, &HEIGHT, &mut changed.height_m, net.height_m());
    wired(ui, desk, owner, net, &mut changed);
    ui.add_space(4.0);
    desk.second(ui, &panels_in_words(words, net));

    let in_use = runs_that(plan, |run| run.nets.iter().flatten().any(|id| *id == net.id))
        .map(|runs| words.say(Text::NetInUse, &[("runs", &runs)]));
    let (twice, out) = deeds(ui, desk, in_use.as_deref());
    let mut store: Store = plan.store.clone();
    if twice {
        let name = free_name(&net.id, names);
        super::unfold(ui.ctx(), LIST, &name);
        store.nets.insert(index + 1, NetKind { id: name, ..net.clone() });
        set_store(desk, store);
    } else if out {
        store.nets.remove(index);
        set_store(desk, store);
    } else if changed != *net {
        let mut runs = Vec::new();
        if changed.id != net.id {
            super::unfold(ui.ctx(), LIST, &changed.id);
            for run in &plan.runs {
                let mut run = run.clone();
                let mut named = false;
                for id in run.nets.iter_mut().flatten().filter(|id| **id == net.id) {
                    id.clone_from(&changed.id);
                    named = true;
                }
                if named {
                    runs.push(run);
                }
            }
        }
        store.nets[index] = changed;
        set_store_and_runs(desk, store, runs);
    }
}

/// How the net is built: every line live, or live and earthed by turns, the lowest live line staying live.
fn wired(ui: &mut Ui, desk: &Desk<'_>, owner: Owner<'_>, net: &NetKind, changed: &mut NetKind) {
    let words = desk.words;
    let (_, said) = owner.field(desk, Text::LinesWired);
    let label = Label { shown: words.text(Text::LinesWired), said: &said };
    let options = [(false, words.text(Text::AllLive)), (true, words.text(Text::ByTurns))];
    let now = !net.earthed_line_heights_m().is_empty();
    let Some(by_turns) = field::choice(ui, desk.p, label, &options, Some(now)) else { return };
    let mut heights_m = [net.live_line_heights_m(), net.earthed_line_heights_m()].concat();
    heights_m.sort_by(f64::total_cmp);
    let every_other = |first: usize| heights_m.iter().copied().skip(first).step_by(2).collect::<Vec<f64>>();
    if by_turns {
        changed.live_line_heights_m = Some(every_other(0));
        changed.earthed_line_heights_m = Some(every_other(1)).filter(|earthed| !earthed.is_empty());
    } else {
        changed.live_line_heights_m = Some(heights_m);
        changed.earthed_line_heights_m = None;
    }
}

/// Panels of equal length, that many; none where none were stated.
fn make_equal(net: &mut NetKind, panels: u32) {
    net.panel_lengths_m = None;
    net.panels = (panels > 0).then_some(panels);
}

/// Posts on one net: one more than its panels.
fn posts(ui: &mut Ui, desk: &Desk<'_>, owner: Owner<'_>, net: &NetKind) -> Option<u32> {
    let words = desk.words;
    let (id, said) = owner.field(desk, Text::PostsOnOne);
    let label = Label { shown: words.text(Text::PostsOnOne), said: &said };
    let shown = match net.panel_count() {
        0 => Shown::nothing(words, Measure::Count),
        panels => Shown::of(words, Measure::Count, panels as f64 + 1.0, false),
    };
    field::line(ui, desk.p, id, label, &shown, field::count(words, POSTS))
}

fn panels_in_words(words: Words, net: &NetKind) -> String {
    let panels = net.panel_count();
    let number = panels.to_string();
    if panels == 0 {
        words.text(Text::PanelsUnstated).to_owned()
    } else if net.panel_lengths_m.is_some() {
        words.say(Text::PanelsUnequal, &[("panels", &number)])
    } else {
        let panel = words.fine_length(net.length_m / panels as f64);
        words.say(Text::PostsWhy, &[("panels", &number), ("panel", &panel)])
    }
}

/// Names in order, those that follow themselves counted.
fn in_order(words: Words, names: &[String]) -> String {
    let like = names.chunk_by(|one, next| one == next);
    let each = like.filter_map(|chunk| match chunk {
        [] => None,
        [only] => Some(only.clone()),
        [name, ..] => Some(words.say(Text::SoMany, &[("count", &chunk.len().to_string()), ("name", name)])),
    });
    each.collect::<Vec<_>>().join(", ")
}

/// Whether the run in hand names its nets or takes whichever reach round.
fn which_are_taken(ui: &mut Ui, desk: &mut Desk<'_>) {
    let words = desk.words;
    let Some((run, _)) = desk.editor.run() else { return };
    let name = care::run_name(run);
    match &run.nets {
        None if desk.editor.plan().store.nets.is_empty() => return,
        None => desk.second(ui, &words.say(Text::NetsChosen, &[("run", name)])),
        Some(names) => {
            desk.second(ui, &words.say(Text::NetsNamed, &[("run", name), ("names", &in_order(words, names))]));
            ui.add_space(6.0);
            if kit::link(ui, words.text(Text::LetChoose), desk.p).clicked() {
                set_run(desk, plan::Run { nets: None, ..run.clone() });
            }
        }
    }
    ui.add_space(12.0);
}
