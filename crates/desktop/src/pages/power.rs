//! The page about volts: the energizer and its earth in words, the weakest post, what an animal would feel.

mod choice;
mod curve;
mod earthing;
mod faults;
mod feel;
mod fence;

use care::fault_said::GRASS;
use drawing::Thing;
use egui::Ui;
use plan::{Edit, Energizer, Run};
use words::texts::Window as Text;
use workup::Volts;

use super::{Desk, assumed, findings, store};
use crate::editor::{Message, Page};
use crate::facts;
use crate::kit::{self, Figure, Stop};
use crate::theme::{self, colour};

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let Some((run, worked)) = editor.run() else {
        kit::title(ui, words.text(Text::Power), "", words.text(Text::NoRunSentence), p);
        store::energizers(ui, desk);
        return;
    };
    let unit = store::energizer_of(editor.plan(), run);
    let name = unit.map_or_else(|| words.text(Text::AnEnergizer).to_owned(), |unit| words::capital(&unit.id));
    let assumed_unit = Energizer::assumed();
    let sheet = unit.unwrap_or(&assumed_unit);
    let sentence = words.say(
        Text::EnergizerInWords,
        &[
            ("energizer", name.as_str()),
            ("joules", &joules(desk, sheet.stored_j())),
            ("free", &words.kilovolts(sheet.no_load_kv())),
            ("loaded", &words.kilovolts(sheet.kv_at_500_ohm())),
        ],
    );
    let number = words.say(Text::RunNumber, &[("number", &(editor.run_index() + 1).to_string())]);
    let title = words.say(Text::VoltsOn, &[("run", care::run_name(run))]);
    kit::title(ui, &title, &number, &sentence, p);
    ui.add_space(16.0);
    match &worked.volts {
        Some(volts) => peaks(ui, desk, run, volts),
        None => desk.second(ui, words.text(Text::NoVolts)),
    }
    if let Some(lay) = &worked.lay {
        faults::show(ui, desk, run, lay);
        curve::show(ui, desk, worked);
    }
    grass(ui, desk, run);
    if let Some(lay) = &worked.lay {
        fence::show(ui, desk, run, lay);
    }
    store::earth(ui, desk, run);
    let study = editor.study();
    if let (Some((study, _)), Some(lay)) = (study, &worked.lay) {
        earthing::show(ui, desk, study, run, lay);
    }
    store::energizers(ui, desk);
    choice::show(ui, desk);
    if let Some((study, stale)) = study
        && let Some(volts) = &worked.volts
        && let Some(post) = post_in_hand(desk, volts)
    {
        feel::feel(ui, desk, study, stale, post);
        if let Some(pulse) = &study.pulse {
            feel::shape(ui, desk, pulse, study.sound.as_ref(), post);
        }
    }
    findings(ui, desk);
    assumed::show(ui, desk, Page::Power);
}

fn joules(desk: &Desk<'_>, joules: f64) -> String {
    desk.words.number(joules, usize::from(joules < 10.0 && (joules - joules.round()).abs() >= 0.05))
}

fn peaks(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, volts: &Volts) {
    let (words, p) = (desk.words, desk.p);
    let feed = words.kilovolts_figure(volts.feed_kv);
    let earth = words.kilovolts_figure(volts.earth_kv);
    let assumed = run.leakage_s_per_m.is_none();
    let kv = words.text(Text::Kilovolts);
    let weakest = volts.weakest.as_ref().map(|one| {
        let at = words.say(Text::WeakestPost, &[("post", &words.post_number(one.post, one.branch))]);
        (facts::weakest(words, one), at, one.measured)
    });
    let mut figures = vec![Figure { value: &feed, unit: kv, label: words.text(Text::AtTheFeed), assumed }];
    if let Some((figure, label, _)) = &weakest {
        figures.push(Figure { value: figure, unit: kv, label, assumed });
    }
    figures.push(Figure { value: &earth, unit: kv, label: words.text(Text::OnTheEarth), assumed });
    kit::figures(ui, &figures, p);
    if weakest.is_some_and(|(_, _, measured)| !measured) {
        ui.add_space(8.0);
        desk.second(ui, words.text(Text::RangeWhy));
    }
}

/// Place of a leakage on the scale of grass, 0 to 1: even steps from stop to stop, by proportion between them.
fn place_of(leakage_s_per_m: f64) -> f64 {
    let steps = (GRASS.len() - 1) as f64;
    for (index, pair) in GRASS.windows(2).enumerate() {
        let (low, high) = (pair[0].1, pair[1].1);
        if leakage_s_per_m <= high {
            let share = (leakage_s_per_m.max(low) / low).ln() / (high / low).ln();
            return (index as f64 + share) / steps;
        }
    }
    1.0
}

/// Leakage at a place on the scale of grass.
fn leakage_at(place: f64) -> f64 {
    let steps = (GRASS.len() - 1) as f64;
    let index = ((place * steps).floor().max(0.0) as usize).min(GRASS.len() - 2);
    let (low, high) = (GRASS[index].1, GRASS[index + 1].1);
    let share = (place * steps - index as f64).clamp(0.0, 1.0);
    // Close to a stop is the stop.
    if share < 0.04 {
        low
    } else if share > 0.96 {
        high
    } else {
        low * (high / low).powf(share)
    }
}

fn grass(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run) {
    let (words, p) = (desk.words, desk.p);
    let place = place_of(run.leakage_s_per_m());
    let nearest = GRASS.iter().min_by(|a, b| (place_of(a.1) - place).abs().total_cmp(&(place_of(b.1) - place).abs()));
    let value = nearest.map_or("", |(name, _)| words.text(*name));
    let aside = if run.leakage_s_per_m.is_none() { words.text(Text::AssumedWord) } else { "" };
    let response = desk.section(ui, words.text(Text::GrassOnTheNet), aside);
    if run.leakage_s_per_m.is_none() {
        let width = ui.painter().layout_no_wrap(aside.to_owned(), theme::regular(12.0), colour(p.ink2)).size().x;
        kit::dots(ui.painter(), response.rect.right() - width, response.rect.right(), response.rect.bottom(), p);
    }
    ui.add_space(6.0);
    let stops = GRASS.map(|(name, leakage)| Stop { place: place_of(leakage), name: words.text(name) });
    let (response, moved) = kit::slider(ui, words.text(Text::GrassOnTheNet), value, place, &stops, p);
    if response.drag_started() {
        desk.said.say(Message::Begin);
    }
    if let Some(moved) = moved {
        let leakage_s_per_m = Some(leakage_at(moved));
        if leakage_s_per_m != run.leakage_s_per_m {
            desk.said.say(Message::Make(Edit::SetRun { run: Box::new(Run { leakage_s_per_m, ..run.clone() }) }));
        }
    }
    if response.drag_stopped() {
        desk.said.say(Message::End);
    }
}

/// The post that is looked at: the one that is picked, else the weakest.
fn post_in_hand(desk: &Desk<'_>, volts: &Volts) -> Option<usize> {
    let index = desk.editor.run_index();
    match desk.editor.picked() {
        Some(Thing::Post { run, post }) if run == index => Some(post),
        _ => volts.weakest_on_line(),
    }
}

#[cfg(test)]
mod tests {
    use super::{GRASS, leakage_at, place_of};

    #[test]
    fn grass_goes_to_leakage_and_back() {
        for (_, stop) in GRASS {
            assert!((leakage_at(place_of(stop)) / stop - 1.0).abs() < 1e-9);
        }
        for step in 0..=100 {
            let place = f64::from(step) / 100.0;
            let back = place_of(leakage_at(place));
            // Near a stop the slider snaps to it: 4 % of a third.
            assert!((back - place).abs() < 0.04 / 3.0 + 1e-9, "{place} became {back}");
        }
        assert!(place_of(1.0) <= 1.0 && place_of(0.0) >= 0.0);
    }
}
