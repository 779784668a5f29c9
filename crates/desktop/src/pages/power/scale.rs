//! What nobody measures, as a scale of words to slide along: how grass touches the net, and what soil the stakes and
//! feet stand in. Equal steps from word to word, by proportion between them.

use care::fault_said::GRASS;
use egui::Ui;
use plan::{Edit, Run, Soil};
use words::Message as Wording;
use words::texts::About;
use words::texts::{Power, Window as Text};

use crate::editor::Message;
use crate::kit::{self, Stop};
use crate::pages::Desk;
use crate::theme::{self, colour};

/// Soils, ohm metres: each within the ranges of both published tables that have its word (`plan::resistivity`).
const SOILS: [(Power, f64); 5] = [
    (Power::Marsh, 30.0),
    (Power::Loam, plan::defaults::RESISTIVITY_OHM_M),
    (Power::MoistSand, 300.0),
    (Power::DrySand, 1000.0),
    (Power::Stones, 3000.0),
];
/// Closer to a word than this, as a share of the way to the next, is the word.
const SNAP: f64 = 0.04;

/// Words and their figures, the least first.
struct Scale<'a, W>(&'a [(W, f64)]);

impl<W> Scale<'_, W> {
    /// Place of a figure, 0 to 1.
    fn place_of(&self, figure: f64) -> f64 {
        let steps = (self.0.len() - 1) as f64;
        for (index, pair) in self.0.windows(2).enumerate() {
            let (low, high) = (pair[0].1, pair[1].1);
            if figure <= high {
                let share = (figure.max(low) / low).ln() / (high / low).ln();
                return (index as f64 + share) / steps;
            }
        }
        1.0
    }

    /// The figure at a place.
    fn at(&self, place: f64) -> f64 {
        let steps = (self.0.len() - 1) as f64;
        let index = ((place * steps).floor().max(0.0) as usize).min(self.0.len() - 2);
        let (low, high) = (self.0[index].1, self.0[index + 1].1);
        let share = (place * steps - index as f64).clamp(0.0, 1.0);
        if share < SNAP {
            low
        } else if share > 1.0 - SNAP {
            high
        } else {
            low * (high / low).powf(share)
        }
    }

    /// The word nearest to a figure.
    fn nearest(&self, figure: f64) -> &W {
        let place = self.place_of(figure);
        let off = |one: &&(W, f64)| (self.place_of(one.1) - place).abs();
        let nearest = self.0.iter().min_by(|one, other| off(one).total_cmp(&off(other)));
        &nearest.unwrap_or(&self.0[0]).0
    }
}

/// One slider; the figure where it was moved to.
fn slide<W: Wording + Copy>(
    ui: &mut Ui,
    desk: &mut Desk<'_>,
    head: &str,
    scale: &Scale<'_, W>,
    figure: f64,
    is_assumed: bool,
) -> Option<f64> {
    let (words, p) = (desk.words, desk.p);
    let aside = if is_assumed { words.text(Text::AssumedWord) } else { "" };
    let response = desk.section(ui, head, aside, About::Slider);
    if is_assumed {
        let width = ui.painter().layout_no_wrap(aside.to_owned(), theme::regular(12.0), colour(p.ink2)).size().x;
        kit::dots(ui.painter(), response.rect.right() - width, response.rect.right(), response.rect.bottom(), p);
    }
    ui.add_space(6.0);
    let stops: Vec<Stop<'_>> =
        scale.0.iter().map(|&(name, figure)| Stop { place: scale.place_of(figure), name: words.text(name) }).collect();
    let value = words.text(*scale.nearest(figure));
    let (response, moved) = kit::slider(ui, head, value, scale.place_of(figure), &stops, p);
    if response.drag_started() {
        desk.said.say(Message::Begin);
    }
    if response.drag_stopped() {
        desk.said.say(Message::End);
    }
    moved.map(|place| scale.at(place))
}

/// How grass touches the net of a run.
pub(super) fn grass(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run) {
    let head = desk.words.text(Text::GrassOnTheNet);
    let is_assumed = run.leakage_s_per_m.is_none();
    let moved = slide(ui, desk, head, &Scale(&GRASS), run.leakage_s_per_m(), is_assumed);
    if moved.is_some() && moved != run.leakage_s_per_m {
        let changed = Run { leakage_s_per_m: moved, ..run.clone() };
        desk.said.say(Message::Make(Edit::SetRun { run: Box::new(changed) }));
    }
}

/// What soil the stakes and the animals stand in.
pub(super) fn soil(ui: &mut Ui, desk: &mut Desk<'_>) {
    let head = desk.words.text(Power::SoilSlider);
    let soil = desk.editor.plan().ground.soil.clone();
    let is_assumed = soil.resistivity_ohm_m.is_none();
    let moved = slide(ui, desk, head, &Scale(&SOILS), soil.resistivity_ohm_m(), is_assumed);
    if moved.is_some() && moved != soil.resistivity_ohm_m {
        let soil = Soil { resistivity_ohm_m: moved, ..soil };
        desk.said.say(Message::Make(Edit::SetSoil { soil }));
    }
}

#[cfg(test)]
mod tests {
    use super::{GRASS, SNAP, SOILS, Scale};

    fn goes_there_and_back<W>(scale: &Scale<'_, W>) {
        let steps = (scale.0.len() - 1) as f64;
        for (_, stop) in scale.0 {
            assert!((scale.at(scale.place_of(*stop)) / stop - 1.0).abs() < 1e-9);
        }
        for step in 0..=100 {
            let place = f64::from(step) / 100.0;
            let back = scale.place_of(scale.at(place));
            // Near a word the slider snaps to it.
            assert!((back - place).abs() < SNAP / steps + 1e-9, "{place} became {back}");
        }
        assert!(scale.place_of(1e9) <= 1.0 && scale.place_of(0.0) >= 0.0);
    }

    #[test]
    fn figures_go_to_places_and_back() {
        goes_there_and_back(&Scale(&GRASS));
        goes_there_and_back(&Scale(&SOILS));
    }

    #[test]
    fn every_soil_lies_within_its_published_range() {
        use plan::resistivity::DIN;
        let range =
            |word: &str| DIN.iter().find(|soil| soil.soil == word).map(|soil| (soil.low_ohm_m, soil.high_ohm_m));
        let rows = ["marsh", "arable soil, loam, clay, moist gravel", "moist sand", "dry sand or gravel", "rocky soil"];
        for (row, (_, ohm_m)) in rows.into_iter().zip(SOILS) {
            let (low, high) = range(row).expect("a row of the table");
            assert!((low..=high).contains(&ohm_m), "{row}: {ohm_m}");
        }
    }
}
