//! The store on the pages: what the keeper owns, in fields, each on the page that it matters to.
//!
//! Every commit is one edit, `SetStore` or `SetRun`. An emptied field takes its statement back, and what is assumed
//! stands in again, dotted. Ranges only keep out slips of the pen; what follows from a figure is told by the findings.

pub(super) mod earth;
mod energizers;
mod nets;
mod rates;
mod strip;
mod tools;

use egui::{Align2, Context, Id, Stroke, Ui, pos2, vec2};
use plan::{Edit, Plan, Run, Store};
use words::texts::Store as Text;
use words::{Measure, Range};

pub(super) use energizers::{
    of_run as energizer_of, row as energizer_row, show as energizers, unfold as unfold_energizer,
};
pub(super) use nets::{row as net_row, show as nets, unfold as unfold_net};
pub(super) use rates::show as rates;
pub(super) use strip::show as strip;

use super::Desk;
use crate::editor::Message;
use crate::field::{self, Label, Shown};
use crate::icons;
use crate::kit;
use crate::theme::{self, colour};

/// From a kind's row to its fields.
const INSET: f32 = 20.0;
/// The most letters of a name.
const LONGEST_NAME: usize = 40;
/// More of a kind than this is a slip of the pen.
const MOST_OF_A_KIND: f64 = 999.0;

/// Nets, braces and mower: what the page about runs rests on.
pub(super) fn on_run_page(ui: &mut Ui, desk: &mut Desk<'_>) {
    nets::show(ui, desk);
    tools::braces(ui, desk);
    tools::mower(ui, desk);
}

/// Whose figures are being typed: the root of its fields' ids, and its name for a screen reader.
#[derive(Clone, Copy)]
struct Owner<'a> {
    id: Id,
    name: &'a str,
}

/// A figure of the store: its label, what it measures, what is allowed.
struct Figure {
    label: Text,
    measure: Measure,
    range: Range,
}

impl Figure {
    const fn new(label: Text, measure: Measure, range: Range) -> Self {
        Self { label, measure, range }
    }
}

impl Owner<'_> {
    /// The id of one of its fields, and what a screen reader calls it.
    fn field(self, desk: &Desk<'_>, label: Text) -> (Id, String) {
        let field = desk.words.text(label);
        (self.id.with(field), desk.words.say(Text::FieldOf, &[("field", field), ("of", self.name)]))
    }

    /// A field for a figure that may stay unsaid, with what stands in then; a commit is written into `statement`.
    fn stated(
        self,
        ui: &mut Ui,
        desk: &Desk<'_>,
        figure: &Figure,
        statement: &mut Option<f64>,
        value: impl Into<Option<f64>>,
    ) {
        let shown = match value.into() {
            Some(value) => Shown::of(desk.words, figure.measure, value, statement.is_none()),
            None => Shown::nothing(desk.words, figure.measure),
        };
        let read = field::or_nothing(field::figure(desk.words, figure.measure, figure.range));
        let (id, said) = self.field(desk, figure.label);
        let label = Label { shown: desk.words.text(figure.label), said: &said };
        if let Some(stated) = field::line(ui, desk.p, id, label, &shown, read) {
            *statement = stated;
        }
    }

    /// A field for a whole number that may stay unsaid.
    fn counted(self, ui: &mut Ui, desk: &Desk<'_>, figure: &Figure, statement: &mut Option<u32>, value: u32) {
        let shown = Shown::of(desk.words, Measure::Count, f64::from(value), statement.is_none());
        let read = field::or_nothing(field::count(desk.words, figure.range));
        let (id, said) = self.field(desk, figure.label);
        let label = Label { shown: desk.words.text(figure.label), said: &said };
        if let Some(stated) = field::line(ui, desk.p, id, label, &shown, read) {
            *statement = stated;
        }
    }

    /// A field for its name, which no other of `names` may have.
    fn renamed(self, ui: &mut Ui, desk: &Desk<'_>, names: &[&str]) -> Option<String> {
        let words = desk.words;
        let read = |text: &str| match text.trim() {
            "" => Err(words.text(Text::NoName).to_owned()),
            name if name.chars().count() > LONGEST_NAME => {
                Err(words.say(Text::LongName, &[("most", &LONGEST_NAME.to_string())]))
            }
            name if name != self.name && names.contains(&name) => Err(words.text(Text::SameName).to_owned()),
            name => Ok(name.to_owned()),
        };
        let (id, said) = self.field(desk, Text::Name);
        let label = Label { shown: words.text(Text::Name), said: &said };
        field::text(ui, desk.p, id, label, self.name, read).filter(|name| name != self.name)
    }
}

/// States the store anew, where anything changed.
fn set_store(desk: &mut Desk<'_>, store: Store) {
    if store != desk.editor.plan().store {
        desk.said.say(Message::Make(Edit::SetStore { store: Box::new(store) }));
    }
}

/// States the store anew together with runs that name what was renamed, as one step.
fn set_store_and_runs(desk: &mut Desk<'_>, store: Store, runs: Vec<Run>) {
    if runs.is_empty() {
        return set_store(desk, store);
    }
    desk.said.say(Message::Begin);
    set_store(desk, store);
    for run in runs {
        desk.said.say(Message::Make(Edit::SetRun { run: Box::new(run) }));
    }
    desk.said.say(Message::End);
}

/// States a run anew, where anything changed.
fn set_run(desk: &mut Desk<'_>, changed: Run) {
    if desk.editor.plan().run(&changed.id) != Some(&changed) {
        desk.said.say(Message::Make(Edit::SetRun { run: Box::new(changed) }));
    }
}

/// A name that none of those has: the wish, or the wish with a number after it.
fn free_name(wish: &str, taken: &[&str]) -> String {
    let numbered = (2..).map(|number| format!("{wish} {number}"));
    let mut names = std::iter::once(wish.to_owned()).chain(numbered);
    names.find(|name| !taken.contains(&name.as_str())).unwrap_or_else(|| wish.to_owned())
}

/// The names of the runs for which something holds, for a sentence; `None` where there is none.
fn runs_that(plan: &Plan, holds: impl Fn(&Run) -> bool) -> Option<String> {
    let names: Vec<&str> = plan.runs.iter().filter(|run| holds(run)).map(care::run_name).collect();
    (!names.is_empty()).then(|| names.join(", "))
}

/// Which kind of a list is unfolded: the one that was clicked, at first the only one.
fn unfolded(ui: &Ui, list: &'static str, names: &[&str]) -> Option<String> {
    let kept = ui.data(|data| data.get_temp::<String>(Id::unique(("unfolded", list))));
    match kept {
        Some(name) if name.is_empty() || names.contains(&name.as_str()) => Some(name),
        _ if names.len() == 1 => names.first().map(|&name| name.to_owned()),
        _ => None,
    }
}

/// Unfolds a kind of a list; an empty name folds all.
fn unfold(ctx: &Context, list: &'static str, name: &str) {
    ctx.data_mut(|data| data.insert_temp(Id::unique(("unfolded", list)), name.to_owned()));
}

fn kind_row_id(list: &'static str, name: &str) -> Id {
    Id::unique(("kind row", list, name))
}

/// The row of a kind, which unfolds its fields; whether they are shown.
fn kind_row(ui: &mut Ui, desk: &Desk<'_>, list: &'static str, name: &str, tells: &str, open: bool) -> bool {
    let p = desk.p;
    let label = format!("{name}: {tells}");
    let (rect, response) = kit::row(ui, kind_row_id(list, name), false, false, &label, p);
    if response.clicked() {
        unfold(ui.ctx(), list, if open { "" } else { name });
    }
    let middle = pos2(rect.left() + 6.0, rect.center().y);
    if open {
        icons::chevron(ui.painter(), middle, colour(p.ink2));
    } else {
        let points = vec![middle + vec2(-2.5, -5.0), middle + vec2(2.5, 0.0), middle + vec2(-2.5, 5.0)];
        ui.painter().add(egui::Shape::line(points, Stroke::new(1.5, colour(p.ink2))));
    }
    let told = kit::cell(
        ui,
        rect.right_center(),
        Align2::RIGHT_CENTER,
        tells,
        theme::regular(13.0),
        colour(if open { p.ink2 } else { p.ink }),
    );
    let room = told.left() - rect.left() - INSET - 12.0;
    let font = if open { theme::medium(13.0) } else { theme::regular(13.0) };
    let galley = kit::shortened(ui, name, font, colour(p.ink), room);
    ui.painter().galley(pos2(rect.left() + INSET, rect.center().y - galley.size().y / 2.0), galley, colour(p.ink));
    open
}

/// Fields under the row of their kind.
fn inset(ui: &mut Ui, add: impl FnOnce(&mut Ui)) {
    ui.add_space(4.0);
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = 0.0;
        ui.add_space(INSET);
        ui.vertical(|ui| {
            ui.spacing_mut().item_spacing.x = 6.0;
            ui.set_width(ui.available_width());
            add(ui);
        });
    });
    ui.add_space(12.0);
}

/// Two things to do with a kind; the second only where nothing stands against it, else why not.
fn deeds(ui: &mut Ui, desk: &Desk<'_>, in_use: Option<&str>) -> (bool, bool) {
    let (words, p) = (desk.words, desk.p);
    ui.add_space(6.0);
    if let Some(why) = in_use {
        desk.second(ui, why);
        ui.add_space(4.0);
    }
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 20.0;
        let twice = kit::link(ui, words.text(Text::Duplicate), p).clicked();
        let out = in_use.is_none() && kit::link(ui, words.text(Text::TakeOut), p).clicked();
        (twice, out)
    })
    .inner
}

#[cfg(test)]
mod tests {
    use super::free_name;

    #[test]
    fn a_new_name_is_none_of_the_old() {
        assert_eq!(free_name("net", &[]), "net");
        assert_eq!(free_name("net", &["net", "net 2"]), "net 3");
    }
}
