//! Which energizer holds: the weakest post against the count of nets, one line an energizer, and the least stored
//! energy in a sentence.

use egui::{Align2, Stroke, Ui};
use egui_plot::{FilledArea, HLine, LineStyle, VLine};
use words::texts::{About, Map, Power as Text};
use words::{Measure, Words};
use workup::power::{ByGrass, Choice, MOST_NETS, MOST_STORED_J, UnitChoice};

use crate::editor::Message;
use crate::kit;
use crate::pages::plot::{Name, below, frame, line, name_lines, plot};
use crate::pages::{Desk, store};
use crate::theme::{self, colour};

/// Opacity of the band from long wet grass to clean.
const BAND: f32 = 0.13;
/// Counts of nets that are named under the plot.
const NAMED: [usize; 5] = [1, 5, 10, 15, 20];

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p) = (desk.words, desk.p);
    let head = words.text(Text::Choice);
    let Some((study, stale)) = desk.editor.study() else {
        desk.section(ui, head, "", About::Choice);
        ui.add_space(6.0);
        desk.second(ui, words.text(Text::ChoiceLook));
        return;
    };
    let Some(choice) = &study.choice else { return };
    desk.section(ui, head, words.text(Text::ChoiceAside), About::Choice);
    if stale {
        ui.add_space(4.0);
        desk.second(ui, words.text(Text::BeingReckoned));
    }
    let Some((run, _)) = desk.editor.run() else { return };
    let own = store::energizer_of(desk.editor.plan(), run).map_or("", |unit| unit.id.as_str());
    let fits: Vec<&UnitChoice> = choice.units.iter().filter(|unit| unit.model.is_ok()).collect();
    let Some(mine) = fits.iter().find(|unit| unit.id == own).or(fits.first()).copied() else { return };
    let values = fits.iter().flat_map(|unit| &unit.weakest_kv).map(|kv| kv.clean);
    let top_kv = values.fold(choice.target_kv, f64::max).ceil();
    let x = (1.0, MOST_NETS as f64);
    let frame = frame(ui, desk, head, x, (0.0, top_kv), 1.0, |kv, decimals| words.number(kv, decimals));
    let counts: Vec<f64> = (1..=MOST_NETS).map(|count| count as f64).collect();
    let row =
        |unit: &UnitChoice, of: fn(&ByGrass<f64>) -> f64| -> Vec<f64> { unit.weakest_kv.iter().map(of).collect() };
    plot(ui, "which energizer", &frame, |plot| {
        let (low, high) = (row(mine, |kv| kv.overgrown), row(mine, |kv| kv.clean));
        plot.add(
            FilledArea::new("grass", &counts, &low, &high)
                .fill_color(theme::thinned(p.ink, BAND))
                .stroke(Stroke::NONE)
                .allow_hover(false),
        );
        plot.hline(
            HLine::new("target", choice.target_kv)
                .stroke(Stroke::new(1.75, colour(p.green)))
                .style(LineStyle::Dashed { length: 7.0 })
                .allow_hover(false),
        );
        if choice.own_nets > 0 {
            let here = Stroke::new(1.0, colour(p.ink2));
            let at = VLine::new("own nets", choice.own_nets as f64);
            plot.vline(at.stroke(here).style(LineStyle::Dotted { spacing: 4.0 }).allow_hover(false));
        }
        for unit in &fits {
            let loud = std::ptr::eq(*unit, mine);
            let points = unit.weakest_kv.iter().zip(&counts).map(|(kv, &count)| [count, kv.likely]).collect();
            let pen = Stroke::new(if loud { 2.25 } else { 1.25 }, colour(if loud { p.ink } else { p.ink2 }));
            plot.line(line(&unit.id, points).stroke(pen));
        }
    });
    // Named in the middle of the plot's right, where the lines have parted.
    let mut names: Vec<Name> = fits
        .iter()
        .filter_map(|unit| {
            let at = unit.weakest_kv.last()?.likely;
            Some(Name { at, text: name(unit, words), loud: false })
        })
        .collect();
    names.push(Name { at: choice.target_kv, text: words.text(Map::Target).to_owned(), loud: false });
    name_lines(ui, desk, &frame, names);
    for count in NAMED {
        let here = count == choice.own_nets;
        below(ui, desk, &frame, count as f64, &count.to_string(), Align2::CENTER_TOP, here);
    }
    ui.add_space(6.0);
    desk.second(ui, words.text(Text::ShadedGrass));
    ui.add_space(6.0);
    for unit in &fits {
        desk.second(ui, &keeps(unit, choice, words));
        if fits.len() > 1 && unit.id != own {
            ui.add_space(2.0);
            let offer = words.say(Text::FeedFrom, &[("name", &unit.id)]);
            if kit::link(ui, &offer, p).clicked() {
                let changed = plan::Run { energizer: Some(unit.id.clone()), ..run.clone() };
                desk.said.say(Message::Make(plan::Edit::SetRun { run: Box::new(changed) }));
            }
        }
        ui.add_space(4.0);
    }
    if choice.own_nets > 0 && choice.own_nets <= MOST_NETS {
        desk.second(ui, &least(choice, words));
        ui.add_space(4.0);
    }
    desk.second(ui, words.text(Text::ChoiceRing));
}

fn name(unit: &UnitChoice, words: Words) -> String {
    if unit.id.is_empty() { words.text(words::texts::Window::AnEnergizer).to_owned() } else { unit.id.clone() }
}

/// On how many nets an energizer keeps the target, in a sentence.
fn keeps(unit: &UnitChoice, choice: &Choice, words: Words) -> String {
    let count = |of: fn(&ByGrass<f64>) -> f64| match unit.holds(choice.target_kv, of) {
        0 => words.text(Text::KeepsNone).to_owned(),
        1 => words.text(Text::KeepsOne).to_owned(),
        MOST_NETS => words.say(Text::KeepsAll, &[("most", &MOST_NETS.to_string())]),
        count => words.say(Text::KeepsMany, &[("count", &count.to_string())]),
    };
    let keeps = words.say(
        Text::Keeps,
        &[
            ("name", &words::capital(&name(unit, words))),
            ("target", &words.kilovolts(choice.target_kv)),
            ("likely", &count(|kv| kv.likely)),
            ("clean", &count(|kv| kv.clean)),
            ("overgrown", &count(|kv| kv.overgrown)),
        ],
    );
    // What reads like the target elsewhere, rounded, and is below it, is said so.
    let most = unit.holds(choice.target_kv, |kv| kv.likely);
    match unit.weakest_kv.get(most).map(|kv| kv.likely) {
        Some(kv) if words.kilovolts(kv) == words.kilovolts(choice.target_kv) => {
            let (nets, kv) = (of_nets(most + 1, words), words.kilovolts_below(kv, choice.target_kv));
            format!("{keeps} {}", words.say(Text::KeepsAlmost, &[("nets", &nets), ("kv", &kv)]))
        }
        _ => keeps,
    }
}

fn of_nets(count: usize, words: Words) -> String {
    match count {
        1 => words.text(Text::OneNet).to_owned(),
        count => words.say(Text::OfNets, &[("count", &count.to_string())]),
    }
}

/// The least stored energy for the run's own count of nets, in a sentence.
fn least(choice: &Choice, words: Words) -> String {
    let nets = of_nets(choice.own_nets, words);
    let free_kv = plan::Energizer::assumed().no_load_kv();
    if choice.target_kv >= free_kv {
        let places = [("target", &*words.kilovolts(choice.target_kv)), ("free", &*words.kilovolts(free_kv))];
        return words.say(Text::NoneReaches, &places);
    }
    let joules = |row: &[Option<f64>]| {
        let Some(joules) = row[choice.own_nets - 1] else {
            let most = words.typed_parts(Measure::Joules, MOST_STORED_J).0;
            return words.say(Text::LeastOver, &[("most", &most)]);
        };
        // To two figures, more would be a promise; upward, as a little less does not hold.
        let decimals = if joules < 1.0 { 2 } else { usize::from(joules < 10.0) };
        words.say(Text::LeastJoules, &[("joules", &words.number_up(joules, decimals))])
    };
    let least = &choice.least_stored_j;
    words.say(
        Text::LeastFor,
        &[
            ("nets", &nets),
            ("likely", &joules(&least.likely)),
            ("clean", &joules(&least.clean)),
            ("overgrown", &joules(&least.overgrown)),
        ],
    )
}
