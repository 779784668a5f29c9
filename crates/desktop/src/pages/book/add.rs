//! One more reading: what, where, how much, when.

use drawing::Thing;
use egui::{Id, Ui};
use fieldsheet::Day;
use plan::{Edit, Reading, ReadingKind, Rest};
use words::texts::Book as Text;
use words::{Measure, Range, Words};

use super::place::{self, Places};
use crate::editor::Message;
use crate::field::{self, Label, Shown};
use crate::icons::Icon;
use crate::kit;
use crate::pages::Desk;
use crate::theme::{self, colour};

/// The most that is taken for a reading: no energizer of this kind gives more (EN 60335-2-76 allows 10 kV; room for a
/// meter that reads high), and no battery of one holds more.
const MOST_KV: f64 = 15.0;
const MOST_BATTERY_V: f64 = 60.0;
/// The most that is taken for a place along a line that could not be laid, metres.
const MOST_ALONG_M: f64 = 1e5;

const KINDS: [ReadingKind; 5] =
    [ReadingKind::FenceKv, ReadingKind::EarthKv, ReadingKind::EnergizerKv, ReadingKind::BatteryV, ReadingKind::Ticking];

/// A reading that is being written.
#[derive(Clone, PartialEq)]
struct Draft {
    /// Whether its fields are shown.
    open: bool,
    kind: ReadingKind,
    along_m: Option<f64>,
    value: Option<f64>,
    when: String,
    /// What was picked when the place was last taken from it.
    taken_from: Option<Thing>,
    /// What is missing.
    missing: Option<Text>,
}

impl Default for Draft {
    fn default() -> Self {
        Self {
            open: false,
            kind: ReadingKind::FenceKv,
            along_m: None,
            value: None,
            when: String::new(),
            taken_from: None,
            missing: None,
        }
    }
}

impl Draft {
    fn has_place(&self) -> bool {
        matches!(self.kind, ReadingKind::FenceKv | ReadingKind::Ticking)
    }

    fn has_value(&self) -> bool {
        self.kind != ReadingKind::Ticking
    }

    /// The reading, or what is missing.
    fn reading(&self, run: &str) -> Result<Reading, Text> {
        let along_m = self.along_m.filter(|_| self.has_place());
        let value = self.value.filter(|_| self.has_value());
        if self.has_place() && along_m.is_none() {
            return Err(Text::NeedPlace);
        }
        if self.has_value() && value.is_none() {
            return Err(Text::NeedValue);
        }
        let mut rest = Rest::new();
        if !self.when.is_empty() {
            rest.insert("when".to_owned(), self.when.as_str().into());
        }
        Ok(Reading { run: run.to_owned(), kind: self.kind, along_m, value, rest })
    }
}

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, places: &Places<'_>, empty: bool) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let id = Id::unique(("book draft", editor.epoch(), places.run.id.as_str()));
    // Where nothing was read yet, there is nothing to look at but the fields.
    let fresh = || Draft { open: empty, ..Draft::default() };
    let was: Draft = ui.data(|data| data.get_temp(id)).unwrap_or_else(fresh);
    let mut draft = was.clone();

    // What is picked anew says where.
    let picked = editor.picked();
    if draft.taken_from != picked {
        draft.taken_from = picked;
        if let Some(along_m) = picked.and_then(|thing| places.of(editor.run_index(), thing)) {
            draft.along_m = Some(along_m);
            draft.missing = None;
            // A reading that is picked is looked at; any other place is where one more is taken.
            draft.open |= !matches!(picked, Some(Thing::Reading { .. }));
        }
    }
    ui.add_space(14.0);
    if kit::button(ui, Icon::More, words.text(Text::Add), draft.open, p).clicked() {
        draft.open = !draft.open;
    }
    if draft.open {
        ui.add_space(12.0);
        form(ui, desk, places, &mut draft, id);
    }
    if draft != was {
        ui.data_mut(|data| data.insert_temp(id, draft));
        ui.ctx().request_repaint();
    }
}

fn form(ui: &mut Ui, desk: &mut Desk<'_>, places: &Places<'_>, draft: &mut Draft, id: Id) {
    let (words, p) = (desk.words, desk.p);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = egui::vec2(4.0, 4.0);
        for kind in KINDS {
            if kit::choice(ui, words.text(place::kind(kind)), draft.kind == kind, p).clicked() && draft.kind != kind {
                draft.kind = kind;
                draft.value = None;
                draft.missing = None;
            }
        }
    });
    ui.add_space(6.0);
    desk.second(ui, words.text(how(draft.kind)));
    ui.add_space(8.0);
    if draft.has_place() {
        whereabouts(ui, desk, places, draft, id);
    }
    if draft.has_value() {
        let (measure, unit, most) = match draft.kind {
            ReadingKind::BatteryV => (Measure::Number, "V", MOST_BATTERY_V),
            _ => (Measure::Kilovolts, "kV", MOST_KV),
        };
        let figure = draft.value.map_or_else(String::new, |value| words.typed_parts(measure, value).0);
        let shown = Shown { figure, unit, assumed: false };
        let read = |text: &str| {
            let text = text.trim();
            // A battery's volts may be typed with their unit.
            let bare = if unit == "V" { text.trim_end_matches(['v', 'V']) } else { text };
            words.read(measure, bare, Range::zero_to(most)).map_err(|refused| refused.sentence(words))
        };
        let field = id.with(("value", draft.kind as u8));
        if let Some(value) = field::line(ui, p, field, words.text(Text::Value), &shown, read) {
            draft.value = Some(value);
            draft.missing = None;
        }
    }
    let label = Label { shown: words.text(Text::DayShort), said: words.text(Text::Day) };
    if let Some(when) = field::text(ui, p, id.with("when"), label, &draft.when, |text| day(words, text)) {
        draft.when = when;
    }
    if draft.when.is_empty() {
        ui.add_space(2.0);
        desk.second(ui, words.text(Text::DayHow));
    }
    ui.add_space(8.0);
    if kit::button(ui, Icon::More, words.text(Text::AddIt), false, p).clicked() {
        match draft.reading(&places.run.id) {
            Ok(reading) => {
                let mut readings = places.plan.readings.clone();
                readings.push(reading);
                desk.said.say(Message::Make(Edit::SetReadings { readings }));
                let when = std::mem::take(&mut draft.when);
                *draft = Draft { open: true, kind: draft.kind, when, taken_from: draft.taken_from, ..Draft::default() };
            }
            Err(missing) => draft.missing = Some(missing),
        }
    }
    if let Some(missing) = draft.missing {
        ui.add_space(6.0);
        kit::prose(ui, words.text(missing), theme::medium(13.0), colour(p.danger));
    }
}

fn how(kind: ReadingKind) -> Text {
    match kind {
        ReadingKind::FenceKv => Text::HowFence,
        ReadingKind::EarthKv => Text::HowEarth,
        ReadingKind::EnergizerKv => Text::HowEnergizer,
        ReadingKind::BatteryV => Text::HowBattery,
        ReadingKind::Ticking => Text::HowTicking,
    }
}

/// Where: from what is picked, or typed.
fn whereabouts(ui: &mut Ui, desk: &mut Desk<'_>, places: &Places<'_>, draft: &mut Draft, id: Id) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    if let Some(along_m) = draft.along_m {
        kit::fact(ui, words.text(Text::Place), &places.along(along_m), p);
    } else {
        desk.second(ui, words.text(Text::PickPlace));
        let weakest = places.worked.volts.as_ref().and_then(|volts| volts.weakest);
        // Readings stand along the line; a branch has none of its own yet.
        let weakest = weakest.filter(|weakest| weakest.branch.is_none());
        if let Some(weakest) = weakest {
            ui.add_space(6.0);
            let label = words.say(Text::TakeWeakest, &[("number", &(weakest.post + 1).to_string())]);
            if kit::link(ui, &label, p).clicked() {
                let thing = Thing::Post { run: editor.run_index(), post: weakest.post };
                desk.said.say(Message::Pick(Some(thing)));
            }
        }
        ui.add_space(6.0);
    }
    let shown = match draft.along_m {
        Some(along_m) => Shown::of(words, Measure::Length, along_m, false),
        None => Shown::nothing(words, Measure::Length),
    };
    let line_m = places.line_m();
    let read = |text: &str| {
        let along_m = words
            .read(Measure::Length, text, Range::zero_to(MOST_ALONG_M))
            .map_err(|refused| refused.sentence(words))?;
        match line_m {
            Some(line_m) if along_m > line_m => Err(words.say(Text::BeyondLine, &[("length", &words.length(line_m))])),
            _ => Ok(along_m),
        }
    };
    if let Some(along_m) = field::line(ui, p, id.with("along"), words.text(Text::Where), &shown, read) {
        draft.along_m = Some(along_m);
        draft.missing = None;
    }
}

/// A day as it is typed: nothing, or an ISO date that the calendar has.
fn day(words: Words, text: &str) -> Result<String, String> {
    let text = text.trim();
    if text.is_empty() || is_day(text) {
        return Ok(text.to_owned());
    }
    let shown: String = text.chars().take(24).collect();
    Err(words.say(Text::NotADay, &[("typed", &shown), ("example", "2027-05-01")]))
}

fn is_day(text: &str) -> bool {
    let parts: Vec<&str> = text.split('-').collect();
    let &[year, month, day] = &parts[..] else { return false };
    let digits = |part: &str, count: usize| part.len() == count && part.bytes().all(|byte| byte.is_ascii_digit());
    if !(digits(year, 4) && digits(month, 2) && digits(day, 2)) {
        return false;
    }
    let parsed = || Some((year.parse().ok()?, month.parse().ok()?, day.parse().ok()?));
    parsed().and_then(|(year, month, day)| Day::new(year, month, day)).is_some()
}

#[cfg(test)]
mod tests {
    use super::is_day;

    #[test]
    fn only_days_of_the_calendar_are_days() {
        for day in ["2027-05-01", "2028-02-29", "1999-12-31"] {
            assert!(is_day(day), "{day}");
        }
        for no_day in
            ["2027-02-29", "2027-5-1", "01.05.2027", "2027-13-01", "2027-05", "2027-05-01T08:00", "-", "", "²027-05-01"]
        {
            assert!(!is_day(no_day), "{no_day}");
        }
    }
}
