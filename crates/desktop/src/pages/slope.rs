//! The slope of a run: what its line takes along the ground, what each side rises by hand, dips and ridges.

use drawing::Thing;
use egui::{Id, Ui};
use plan::{Edit, Point, Run, SideSlope};
use words::texts::{About, Slope as Text};
use words::{Measure, Range, Typed, Words};
use workup::slope::Uneven;
use workup::{RunWorkup, Slope};

use super::Desk;
use crate::editor::Message;
use crate::field::{self, Label, Shown};
use crate::kit;
use crate::theme::{self, colour};

/// What a side may rise, metres; more is no field's.
const RISE_M: Range = Range::between(-1_000.0, 1_000.0);
/// One up in so many.
const ONE_IN: Range = Range::between(1.0, 10_000.0);
const PERCENT: Range = Range::between(0.01, 100.0);
const DEGREES: Range = Range::between(0.01, 45.0);
/// What stands before the colon: nearly always one.
const UP: Range = Range::up_to(10_000.0);
/// What may stand between the two figures of a steepness.
const BETWEEN: [&str; 4] = [":", " in ", " zu ", " auf "];
/// A rise and a share to name as examples.
const USUAL_RISE_M: f64 = 1.2;
const USUAL_SHARE: f64 = 0.12;
const GAP_M: Range = Range::zero_to(1.0);
/// More sides than this are a traced line: heights tell its slope.
const MOST_SIDES: usize = 24;
/// More panels than this are told by their number.
const MOST_ROWS: usize = 10;

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, worked: &RunWorkup) {
    let (words, p) = (desk.words, desk.p);
    let aside = match &worked.slope {
        Some(slope) => words.say(Text::SurfaceAside, &[("surface", &words.length(slope.surface_m))]),
        None => words.text(Text::Level).to_owned(),
    };
    desk.section(ui, words.text(Text::Head), &aside, About::Slopes);
    ui.add_space(6.0);
    if let Some(slope) = &worked.slope {
        desk.second(ui, &care::slope_line(words, slope));
        ui.add_space(4.0);
    }
    let id = Id::unique(("sides rise", &run.id));
    let open = ui.data(|data| data.get_temp::<bool>(id)).unwrap_or(!run.side_slopes.is_empty());
    if kit::link(ui, words.text(if open { Text::FoldSides } else { Text::ShowSides }), p).clicked() {
        ui.data_mut(|data| data.insert_temp(id, !open));
    }
    if open {
        ui.add_space(6.0);
        desk.second(ui, words.text(Text::RiseHint));
        ui.add_space(4.0);
        sides(ui, desk, run, worked);
    }
    if let Some(slope) = &worked.slope {
        gap(ui, desk, run, slope);
        uneven(ui, desk, worked, slope);
    }
}

/// What a side is stated to rise.
#[derive(Clone, Copy)]
enum Rise {
    Metres(f64),
    OneIn(f64),
}

fn sides(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, worked: &RunWorkup) {
    let words = desk.words;
    let corners = run.outline.len();
    let sides = if run.closed() { corners } else { corners.saturating_sub(1) };
    if corners < 2 || sides > MOST_SIDES {
        return;
    }
    for side in 0..sides {
        let (from, to) = (side, (side + 1) % corners);
        let numbers = [("from", (from + 1).to_string()), ("to", (to + 1).to_string())];
        let numbers = numbers.each_ref().map(|(name, number)| (*name, number.as_str()));
        let (label, said) = (words.say(Text::RisesField, &numbers), words.say(Text::RisesLabel, &numbers));
        let found = worked.slope.as_ref().and_then(|slope| slope.sides.iter().find(|one| one.vertex == side));
        let stated = run.side_slope(side);
        let shown = match (stated.and_then(|slope| slope.rises_m), stated.and_then(|slope| slope.one_in), found) {
            (Some(rises_m), ..) => Shown::of(words, Measure::Length, rises_m, false),
            (None, Some(one_in), _) => Shown { figure: one_in_shown(words, one_in), unit: "", assumed: false },
            (None, None, Some(found)) => Shown::of(words, Measure::Length, found.rises_m, true),
            (None, None, None) => Shown::of(words, Measure::Length, 0.0, true),
        };
        let id = Id::unique(("side rises", &run.id, side));
        let (one, other) = (run.outline[from], run.outline[to]);
        let level_m = (other.east_m - one.east_m).hypot(other.north_m - one.north_m);
        let read = field::or_nothing(|text: &str| rise(words, text, level_m));
        let top = ui.cursor().top();
        if let Some(rise) = field::line(ui, desk.p, id, Label { shown: &label, said: &said }, &shown, read) {
            let middle = Point::new(f64::midpoint(one.east_m, other.east_m), f64::midpoint(one.north_m, other.north_m));
            let stated = rise.map(|rise| match rise {
                Rise::Metres(rises_m) => SideSlope { rises_m: Some(rises_m), ..SideSlope::at(middle) },
                Rise::OneIn(one_in) => SideSlope { one_in: Some(one_in), ..SideSlope::at(middle) },
            });
            desk.said.say(Message::Make(Edit::SetRun { run: Box::new(run.with_side_slope(side, stated)) }));
        }
        let row = egui::Rect::from_x_y_ranges(ui.max_rect().x_range(), top..=ui.cursor().top());
        if ui.rect_contains_pointer(row) {
            desk.said.hovered = desk.said.hovered.or(Some(Thing::RunSide { run: desk.editor.run_index(), side }));
        }
    }
}

fn one_in_shown(words: Words, one_in: f64) -> String {
    let so_many = words.typed_parts(Measure::Number, one_in.abs()).0;
    let text = if one_in < 0.0 { Text::OneDownIn } else { Text::OneUpIn };
    words.say(text, &[("count", &so_many)])
}

/// Reads `1.2`, `4 ft`, `1 in 8`, `1 : 8`, `-1 in 8`, `12.5 %` or `7°`.
fn rise(words: Words, text: &str, level_m: f64) -> Result<Rise, String> {
    let refused = |refused: Typed| refused.sentence(words);
    let plain: String = text.trim().replace(['−', '–'], "-").to_lowercase();
    let (down, rest) = match plain.strip_prefix('-') {
        Some(rest) => (-1.0, rest.trim_start()),
        None => (1.0, plain.as_str()),
    };
    let parted = BETWEEN.iter().find_map(|between| rest.split_once(between));
    if let Some((up, along)) = parted.filter(|(up, along)| !up.trim().is_empty() && !along.trim().is_empty()) {
        let up = words.read(Measure::Number, up, UP).map_err(refused)?;
        let along = words.read(Measure::Number, along, ONE_IN).map_err(refused)?;
        let one_in = along / up;
        let is_ground = (ONE_IN.least..=ONE_IN.most).contains(&one_in);
        return is_ground.then_some(Rise::OneIn(down * one_in)).ok_or_else(|| not_so_steep(words, text));
    }
    if let Some(percent) = rest.strip_suffix('%') {
        let read = words.read(Measure::Number, percent, PERCENT).map_err(refused)?;
        return Ok(Rise::OneIn(down * 100.0 / read));
    }
    if let Some(degrees) = rest.strip_suffix(['°', 'º', '˚']) {
        let read = words.read(Measure::Degrees, degrees, DEGREES).map_err(refused)?;
        return Ok(Rise::OneIn(down / read.to_radians().tan()));
    }
    // Steeper than one in one is no ground that a net stands on.
    let most_m = RISE_M.most.min(level_m);
    words.read(Measure::Length, text, Range::between(-most_m, most_m)).map(Rise::Metres).map_err(|why| match why {
        Typed::NotANumber { .. } | Typed::UnknownUnit { .. } => not_so_steep(words, text),
        why => refused(why),
    })
}

/// What is said of words that are no steepness: every way to type one.
fn not_so_steep(words: Words, typed: &str) -> String {
    let (rise, share) = (words.fine_length(USUAL_RISE_M), words.percent(USUAL_SHARE));
    words.say(Text::NoRise, &[("typed", typed.trim()), ("rise", &rise), ("share", &share)])
}

fn gap(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, slope: &Slope) {
    let words = desk.words;
    ui.add_space(4.0);
    let shown = Shown::of(words, Measure::Small, slope.allowed_gap_m, run.gap_under_net_m.is_none());
    let read = field::or_nothing(field::figure(words, Measure::Small, GAP_M));
    let id = Id::unique(("gap under net", &run.id));
    if let Some(gap_under_net_m) = field::line(ui, desk.p, id, words.text(Text::GapField), &shown, read) {
        let run = Run { gap_under_net_m, ..run.clone() };
        desk.said.say(Message::Make(Edit::SetRun { run: Box::new(run) }));
    }
}

fn uneven(ui: &mut Ui, desk: &mut Desk<'_>, worked: &RunWorkup, slope: &Slope) {
    let (words, p) = (desk.words, desk.p);
    if worked.lay.is_none() {
        return;
    }
    let count = slope.uneven.len().to_string();
    desk.section(ui, words.text(Text::DipsHead), if slope.uneven.is_empty() { "" } else { &count }, About::Dips);
    ui.add_space(6.0);
    if slope.uneven.is_empty() {
        let gap = words.typed_parts(Measure::Small, slope.allowed_gap_m);
        desk.second(ui, &words.say(Text::NoneUneven, &[("gap", &format!("{} {}", gap.0, gap.1))]));
        return;
    }
    kit::rule(ui, p);
    for panel in slope.uneven.iter().take(MOST_ROWS) {
        let top = ui.cursor().top();
        ui.add_space(5.0);
        kit::prose(ui, &care::panel_said(words, panel), theme::regular(13.0), colour(p.ink));
        ui.add_space(3.0);
        let row = egui::Rect::from_x_y_ranges(ui.max_rect().x_range(), top..=ui.cursor().top());
        if ui.rect_contains_pointer(row) {
            desk.said.hovered = desk.said.hovered.or(Some(post(desk, panel)));
        }
    }
    if slope.uneven.len() > MOST_ROWS {
        let more = (slope.uneven.len() - MOST_ROWS).to_string();
        desk.second(ui, &words.say(Text::MoreUneven, &[("count", &more)]));
    }
}

fn post(desk: &Desk<'_>, panel: &Uneven) -> Thing {
    Thing::Post { run: desk.editor.run_index(), post: panel.post }
}

#[cfg(test)]
mod tests {
    use words::{Language, Units, Words};

    use super::{Rise, rise};

    const ENGLISH: Words = Words { language: Language::English, units: Units::Metric };
    const GERMAN: Words = Words { language: Language::German, units: Units::Metric };

    #[test]
    fn a_steepness_is_read_however_it_is_written() {
        for (words, typed, one_in) in [
            (ENGLISH, "1 in 8", 8.0),
            (ENGLISH, "1:8", 8.0),
            (ENGLISH, "1 : 8", 8.0),
            (ENGLISH, " 1 :8 ", 8.0),
            (ENGLISH, "−1 : 8", -8.0),
            (ENGLISH, "- 1 in 8.5", -8.5),
            (ENGLISH, "2 : 16", 8.0),
            (GERMAN, "1 : 8,5", 8.5),
            (GERMAN, "1 zu 8", 8.0),
            (GERMAN, "1 auf 8", 8.0),
            (ENGLISH, "12.5 %", 8.0),
            (ENGLISH, "12.5%", 8.0),
            (GERMAN, "-12,5 %", -8.0),
            (ENGLISH, "7°", 8.144_346),
            (GERMAN, "−7 °", -8.144_346),
            (ENGLISH, "45°", 1.0),
        ] {
            match rise(words, typed, 40.0) {
                Ok(Rise::OneIn(read)) => assert!((read - one_in).abs() < 1e-6, "{typed:?}: {read}"),
                Ok(Rise::Metres(metres)) => panic!("{typed:?} was read as {metres} m"),
                Err(refused) => panic!("{typed:?}: {refused}"),
            }
        }
        assert!(matches!(rise(ENGLISH, "1.2", 40.0), Ok(Rise::Metres(metres)) if (metres - 1.2).abs() < 1e-12));
    }

    #[test]
    fn what_is_no_steepness_is_refused_in_a_sentence_that_names_the_ways() {
        let ways = "type a rise such as 1.20 m, or how steep it is: 1 in 8, 12 % or 7°.";
        for typed in ["steep", "1 :", ": 8", "8 : 1", "1 : 8 : 9", "7 grad up", "12 kg"] {
            let refused = rise(ENGLISH, typed, 40.0).err().unwrap_or_default();
            assert!(
                refused == format!("“{typed}” says no rise; {ways}") || refused.contains("is no number"),
                "{refused}"
            );
        }
        for (typed, sentence) in [
            ("50°", "That is too much here; type 45° or less."),
            ("101 %", "That is too much here; type 100 or less."),
            ("1 : 0", "Nothing at all does not work here; type more than 0, such as 2."),
            ("41", "That is too much here; type 40 m or less."),
        ] {
            assert_eq!(rise(ENGLISH, typed, 40.0).err().as_deref(), Some(sentence));
        }
    }
}
