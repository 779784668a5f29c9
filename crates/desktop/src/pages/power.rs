//! The page about volts: the energizer and its earth in words, the weakest post, what an animal would feel.

use egui::{Role, Sense, Stroke, Ui, WidgetInfo, pos2, vec2};
use plan::{Edit, Energizer, Plan, Run, defaults};
use words::texts::Window as Text;
use workup::Volts;

use super::{Desk, assumed, findings};
use crate::editor::{Message, Page};
use crate::facts;
use crate::icons::Icon;
use crate::kit::{self, Figure, Stop};
use crate::theme::{self, colour};

/// Grass as a scale of leakage, siemens per metre of net: none, touching, long, long and wet. The classes are a
/// working assumption, bracketed by one published range for netting (docs, the model and its limits).
const GRASS: [(Text, f64); 4] = [
    (Text::GrassNone, defaults::LEAKAGE_CLEAN_S_PER_M),
    (Text::GrassTouching, defaults::LEAKAGE_S_PER_M),
    (Text::GrassLong, 5e-5),
    (Text::GrassLongWet, defaults::LEAKAGE_LONG_WET_S_PER_M),
];
/// Most earth stakes that the page offers.
const MOST_STAKES: u32 = 9;

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let Some((run, worked)) = editor.run() else {
        kit::title(ui, words.text(Text::Power), "", words.text(Text::NoRunSentence), p);
        return;
    };
    let unit = energizer(editor.plan(), run);
    let name = unit.map_or_else(|| words.text(Text::AnEnergizer).to_owned(), |unit| capital(&unit.id));
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
    grass(ui, desk, run);
    earth(ui, desk, run);
    if let Some(volts) = &worked.volts {
        animal(ui, desk, run, volts);
    }
    findings(ui, desk);
    assumed::show(ui, desk, Page::Power);
}

fn energizer<'a>(plan: &'a Plan, run: &Run) -> Option<&'a Energizer> {
    match &run.energizer {
        Some(id) => plan.store.energizers.iter().find(|unit| unit.id == *id),
        None => plan.store.energizers.first(),
    }
}

fn capital(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().collect::<String>() + letters.as_str())
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
        let at = words.say(Text::WeakestPost, &[("post", &(one.post + 1).to_string())]);
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

fn earth(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run) {
    let (words, p) = (desk.words, desk.p);
    let volts = desk.editor.run().and_then(|(_, worked)| worked.volts.as_ref());
    let kept = volts
        .map_or_else(String::new, |volts| words.say(Text::EarthKeeps, &[("kv", &words.kilovolts(volts.earth_kv))]));
    desk.section(ui, words.text(Text::Earth), &kept);
    ui.add_space(8.0);
    if run.earth_ohm.is_some() {
        desk.second(ui, words.text(Text::EarthMeasured));
        return;
    }
    let count = run.earth_stakes.count();
    let length = words.length(desk.editor.plan().store.earth_stake.length_m());
    let spacing = words.length(run.earth_stakes.spacing_m());
    let text = match count {
        0 => words.text(Text::NoStakes).to_owned(),
        1 => words.say(Text::OneStake, &[("length", &length)]),
        _ => words.say(Text::Stakes, &[("count", &count.to_string()), ("length", &length), ("spacing", &spacing)]),
    };
    ui.horizontal(|ui| {
        stakes(ui, count, &text, desk);
        ui.add_space(8.0);
        let fewer = kit::icon_button(ui, Icon::Less, words.text(Text::FewerStakes), count > 1, true, p).clicked();
        let more =
            kit::icon_button(ui, Icon::More, words.text(Text::MoreStakes), count < MOST_STAKES, true, p).clicked();
        if fewer || more {
            let mut changed = run.clone();
            changed.earth_stakes.count = Some(if more { count + 1 } else { count - 1 });
            desk.said.say(Message::Make(Edit::SetRun { run: Box::new(changed) }));
        }
    });
    ui.add_space(6.0);
    kit::prose(ui, &text, theme::regular(13.0), colour(p.ink));
}

fn stakes(ui: &mut Ui, count: u32, label: &str, desk: &Desk<'_>) {
    let p = desk.p;
    let wide = (ui.available_width() - 72.0).max(40.0);
    let (rect, response) = ui.allocate_exact_size(vec2(wide, 40.0), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, label));
    let painter = ui.painter();
    let ground = rect.top() + 8.0;
    painter.hline(rect.x_range(), ground, Stroke::new(1.0, colour(p.rule)));
    let step = (rect.width() / (count.max(1) as f32 + 0.5)).min(40.0);
    for stake in 0..count.min(MOST_STAKES) {
        let x = rect.left() + 14.0 + step * stake as f32;
        let (top, tip) = (ground - 5.0, ground + 26.0);
        painter.vline(x, top..=tip - 5.0, Stroke::new(1.75, colour(p.ink)));
        let point = vec![pos2(x - 3.5, tip - 7.0), pos2(x + 3.5, tip - 7.0), pos2(x, tip)];
        painter.add(egui::Shape::convex_polygon(point, colour(p.ink), Stroke::NONE));
    }
}

fn animal(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, volts: &Volts) {
    let (words, p) = (desk.words, desk.p);
    let Some(weakest) = &volts.weakest else { return };
    let head = words.say(Text::AnimalAt, &[("post", &(weakest.post + 1).to_string())]);
    desk.section(ui, &head, "");
    ui.add_space(8.0);
    let bracket = |figure: String, stale: bool| if stale { format!("({figure})") } else { figure };
    let (kv, j) = match desk.editor.touch(&run.id) {
        Some((touch, stale)) => {
            (bracket(words.kilovolts_figure(touch.kv), stale), bracket(words.number(touch.j, 2), stale))
        }
        None => ("–".to_owned(), "–".to_owned()),
    };
    let kilovolts = words.text(Text::Kilovolts);
    kit::figures(
        ui,
        &[
            Figure { value: &kv, unit: kilovolts, label: words.text(Text::ThroughIt), assumed: false },
            Figure { value: &j, unit: "J", label: words.text(Text::EveryPulse), assumed: false },
        ],
        p,
    );
    ui.add_space(8.0);
    desk.second(ui, words.text(Text::AnimalWhy));
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
