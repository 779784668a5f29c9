//! The page about volts: the energizer and its earth in words, the weakest post, what an animal would feel.

mod choice;
mod curve;
mod damper;
mod earthing;
pub(super) mod energizer;
pub(super) mod faults;
mod feel;
mod fence;
mod scale;

use drawing::Thing;
use egui::Ui;
use plan::{Energizer, Run};
use words::texts::{About, Window as Text};
use workup::Volts;

use super::{Desk, assumed, findings, store};
use crate::editor::Page;
use crate::kit::{self, Figure};

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let Some((run, worked)) = editor.run() else {
        kit::title(ui, words.text(Text::Power), "", words.text(Text::PowerNoRun), p);
        super::way_to_a_run(ui, desk);
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
    ui.add_space(14.0);
    match &worked.volts {
        Some(volts) => peaks(ui, desk, run, volts),
        None => desk.second(ui, words.text(Text::NoVolts)),
    }
    if worked.lay.is_some() {
        faults::show(ui, desk, run);
        curve::show(ui, desk, worked);
    }
    scale::grass(ui, desk, run);
    scale::soil(ui, desk);
    energizer::show(ui, desk, run);
    if let Some(lay) = &worked.lay {
        fence::show(ui, desk, run, lay);
    }
    store::earth::show(ui, desk, run);
    damper::show(ui, desk, run, worked);
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
        let post = words.say(Text::WeakestPost, &[("post", &words.post_number(one.post, one.branch))]);
        let band = words.kilovolts_range(one.low_kv, one.high_kv);
        (care::volts_said::weakest_parts(one, words).0, format!("{band}, {post}"), one.measured)
    });
    let mut figures = vec![Figure {
        value: &feed,
        unit: kv,
        label: words.text(Text::AtTheFeed),
        about: words.text(About::FeedKv),
        assumed,
    }];
    if let Some((figure, label, _)) = &weakest {
        figures.push(Figure { value: figure, unit: kv, label, about: words.text(About::Weakest), assumed });
    }
    figures.push(Figure {
        value: &earth,
        unit: kv,
        label: words.text(Text::OnTheEarth),
        about: words.text(About::EarthKv),
        assumed,
    });
    kit::figures(ui, &figures, p);
    let lay = desk.editor.run().and_then(|(_, worked)| worked.lay.as_ref());
    if let Some(tried) = lay.and_then(|lay| care::volts_said::tried_and_which(run, lay, words)) {
        ui.add_space(8.0);
        let counted = words.say(words::texts::Faults::CountedHere, &[("tried", &tried)]);
        let sound = care::volts_said::sound(volts, words);
        desk.second(ui, &[Some(counted), sound].into_iter().flatten().collect::<Vec<_>>().join(" "));
    }
    if weakest.is_some_and(|(_, _, measured)| !measured) {
        ui.add_space(8.0);
        let stated = volts.weakest.filter(|_| !assumed).map(|weakest| words.kilovolts(weakest.peak_kv));
        let why = stated.map_or_else(
            || words.text(Text::RangeWhy).to_owned(),
            |kv| words.say(words::texts::Power::RangeStated, &[("kv", &kv)]),
        );
        desk.second(ui, &why);
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
