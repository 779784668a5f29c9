//! The soil in fields: first by the foot, then, for who wants it, by a class, by a pull, by corners seen. Each commit is
//! one edit.

use egui::{Align2, Id, Ui, pos2};
use plan::{ByFoot, Edit, PullTest, Soil, SoilClass, SoilTable, SoilWord};
use words::texts::{Bracing as Text, Ground};
use words::{Measure, Range};

use super::Desk;
use crate::editor::Message;
use crate::field::{self, Label, Shown};
use crate::icons::Icon;
use crate::kit;
use crate::theme::{self, colour};

/// What may be typed: kilograms of pull, metres up, a share.
const PULL_KG: Range = Range::up_to(2_000.0);
const HEIGHT_M: Range = Range::zero_to(2.0);
const WET_SHARE: Range = Range::between(0.05, 1.0);

/// Where egui remembers whether the rest is open.
const OPEN: &str = "soil open";

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    let words = desk.words;
    let soil = desk.editor.plan().ground.soil.clone();
    let mut changed = by_foot(ui, desk, &soil).or_else(|| wet(ui, desk, &soil));
    if let Some(found) = &desk.editor.workup().soil {
        ui.add_space(6.0);
        desk.second(ui, &care::bracing::soil_line(words, found));
    }
    ui.add_space(6.0);
    let id = Id::unique(OPEN);
    let open = ui.data(|data| data.get_temp::<bool>(id)).unwrap_or(false);
    if kit::link(ui, words.text(if open { Text::FoldExactly } else { Text::MoreExactly }), desk.p).clicked() {
        ui.data_mut(|data| data.insert_temp(id, !open));
    }
    if open {
        ui.add_space(6.0);
        changed = changed.or(class(ui, desk, &soil));
        changed = changed.or(pull(ui, desk, &soil));
        changed = changed.or(seen(ui, desk, &soil));
    }
    if let Some(soil) = changed {
        desk.said.say(Message::Make(Edit::SetSoil { soil }));
    }
}

/// Without what was said of the clay or sand another way; what was measured stays.
fn unsaid(soil: &Soil) -> Soil {
    Soil {
        undrained_strength_kpa: None,
        friction_angle_deg: None,
        unit_weight_kn_per_m3: None,
        class: None,
        ..soil.clone()
    }
}

fn by_foot(ui: &mut Ui, desk: &Desk<'_>, soil: &Soil) -> Option<Soil> {
    let words = desk.words;
    // What outweighs the foot shows in the sentence below; the foot's own statement stays in sight.
    let options = ByFoot::ALL.map(|foot| (foot, words.text(care::bracing::foot_word(foot))));
    let said = words.text(Text::ByFoot);
    let mut changed = None;
    for (row, two) in options.chunks(2).enumerate() {
        let shown = if row == 0 { said } else { "" };
        if let Some(foot) = field::choice(ui, desk.p, Label { shown, said }, two, soil.by_foot) {
            changed = Some(Soil { by_foot: Some(foot), ..unsaid(soil) });
        }
    }
    changed
}

fn wet(ui: &mut Ui, desk: &Desk<'_>, soil: &Soil) -> Option<Soil> {
    let words = desk.words;
    let options = [(true, words.text(Ground::Wet)), (false, words.text(Ground::NotWet))];
    let wet = field::choice(ui, desk.p, words.text(Ground::SoilWet), &options, Some(desk.editor.plan().ground.wet()))?;
    Some(Soil { wet: Some(wet), ..soil.clone() })
}

/// The set of words, then the word.
fn class(ui: &mut Ui, desk: &Desk<'_>, soil: &Soil) -> Option<Soil> {
    let (words, p) = (desk.words, desk.p);
    let mut changed = None;
    let on = soil.class.as_ref().map(|class| class.table);
    let first = |table: SoilTable| table.classes()[table.classes().len() / 2].name;
    let options = [
        (Some(SoilTable::American), words.text(Text::American)),
        (Some(SoilTable::British), words.text(Text::British)),
        (Some(SoilTable::Sands), words.text(Text::Sands)),
        (None, words.text(Text::NoClass)),
    ];
    let said = words.text(Text::WordSet);
    for (row, two) in options.chunks(2).enumerate() {
        let shown = if row == 0 { said } else { "" };
        if let Some(table) = field::choice(ui, p, Label { shown, said }, two, Some(on)) {
            let class = table.map(|table| of_class(table, first(table)));
            changed = Some(Soil { class, ..unsaid(soil) });
        }
    }
    if let Some(class) = &soil.class {
        let word = |name: SoilWord| (name, words.text(care::bracing::class_word(name)));
        let options: Vec<_> = class.table.classes().iter().map(|class| word(class.name)).collect();
        let said = words.text(Text::ClassWord);
        for (row, some) in options.chunks(3).enumerate() {
            let shown = if row == 0 { said } else { "" };
            if let Some(name) = field::choice(ui, p, Label { shown, said }, some, Some(class.name)) {
                changed = Some(Soil { class: Some(of_class(class.table, name)), ..unsaid(soil) });
            }
        }
        ui.add_space(4.0);
        desk.second(ui, words.text(Text::ClassWhy));
        ui.add_space(6.0);
    }
    changed
}

fn of_class(table: SoilTable, name: SoilWord) -> SoilClass {
    SoilClass { table, name, rest: plan::Rest::new() }
}

/// The keeper's own pull; an emptied pull takes the whole test back.
fn pull(ui: &mut Ui, desk: &Desk<'_>, soil: &Soil) -> Option<Soil> {
    let (words, p) = (desk.words, desk.p);
    let mut changed = None;
    ui.add_space(8.0);
    kit::prose(ui, words.text(Text::PullTest), theme::medium(13.0), colour(p.ink));
    desk.second(ui, words.text(Text::PullTestWhy));
    ui.add_space(4.0);
    let test = soil.pull_test.as_deref().cloned().unwrap_or_default();
    let shown = match test.pull_kg() {
        Some(kilograms) => Shown::of(words, Measure::Mass, kilograms, false),
        None => Shown::nothing(words, Measure::Mass),
    };
    let id = Id::unique("pull test");
    let read = field::or_nothing(field::figure(words, Measure::Mass, PULL_KG));
    if let Some(pull_kg) = field::line(ui, p, id.with("pull"), words.text(Text::PulledAt), &shown, read) {
        let test = pull_kg.map(|pull_kg| PullTest { pull_n: None, pull_kg: Some(pull_kg), ..test.clone() });
        changed = Some(Soil { pull_test: test.map(Box::new), ..soil.clone() });
    }
    if soil.pull_test.is_some() {
        let shown = Shown::of(words, Measure::Small, test.height_m(), test.height_m.is_none());
        let read = field::or_nothing(field::figure(words, Measure::Small, HEIGHT_M));
        if let Some(height_m) = field::line(ui, p, id.with("height"), words.text(Text::PulledHeight), &shown, read) {
            changed = Some(Soil { pull_test: Some(Box::new(PullTest { height_m, ..test.clone() })), ..soil.clone() });
        }
        let options = [(true, words.text(Ground::Wet)), (false, words.text(Ground::NotWet))];
        if let Some(wet) = field::choice(ui, p, words.text(Text::PulledGround), &options, Some(test.wet())) {
            changed = Some(Soil { pull_test: Some(Box::new(PullTest { wet: Some(wet), ..test })), ..soil.clone() });
        }
    }
    let shown = Shown::of(words, Measure::Percent, soil.wet_factor(), soil.wet_factor.is_none());
    let read = field::or_nothing(field::figure(words, Measure::Percent, WET_SHARE));
    if let Some(wet_factor) = field::line(ui, p, id.with("wet"), words.text(Text::WetHolds), &shown, read) {
        changed = Some(Soil { wet_factor, ..soil.clone() });
    }
    changed
}

/// Corners seen, each to be taken out again.
fn seen(ui: &mut Ui, desk: &Desk<'_>, soil: &Soil) -> Option<Soil> {
    let (words, p) = (desk.words, desk.p);
    let mut changed = None;
    ui.add_space(8.0);
    kit::prose(ui, words.text(Text::CornersSeen), theme::medium(13.0), colour(p.ink));
    desk.second(ui, words.text(Text::CornersSeenWhy));
    let says = desk.editor.workup().soil.as_ref().map_or(&[][..], |found| found.seen.as_slice());
    for (index, (one, says)) in soil.corners_seen.iter().zip(says).enumerate() {
        let turn = says.turn_deg.map_or_else(|| words.text(Text::SeenNoTurn).to_owned(), |deg| words.degrees(deg));
        let text = words.say(if one.stood { Text::SeenStood } else { Text::SeenLeaned }, &[("turn", &turn)]);
        let counts = if says.counts { words.text(Text::SeenCounts) } else { "" };
        let rect = kit::fact(ui, &text, "", p);
        let label = words.say(Text::SeenTakeOut, &[("number", &(index + 1).to_string())]);
        let at =
            egui::Rect::from_center_size(pos2(rect.right() - 12.0, rect.center().y), egui::Vec2::splat(kit::BUTTON));
        kit::cell(
            ui,
            pos2(at.left() - 10.0, rect.center().y),
            Align2::RIGHT_CENTER,
            counts,
            theme::regular(12.0),
            colour(p.ink2),
        );
        let mut inside = ui.new_child(egui::UiBuilder::new().max_rect(at));
        if kit::icon_button(&mut inside, Icon::TakeOut, &label, true, false, p).clicked() {
            let mut soil = soil.clone();
            soil.corners_seen.remove(index);
            changed = Some(soil);
        }
    }
    changed
}
