//! How birds are counted against ground: the rule in a few words, and the others on demand.

use egui::{Align2, Id, Ui, pos2};
use plan::{Edit, Season};
use words::texts::{About, Compare as Text};
use words::{Measure, Range};
use workup::stocking::{self, OWN, RULES};

use crate::editor::Message;
use crate::facts;
use crate::field::{self, Shown};
use crate::kit;
use crate::pages::Desk;
use crate::theme::{self, colour};

const GROUND_A_BIRD: Range = Range::between(0.05, 1000.0);

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p) = (desk.words, desk.p);
    let season = desk.editor.plan().season.clone();
    desk.section(ui, words.text(Text::BirdsHead), "", About::Birds);
    ui.add_space(6.0);
    kit::prose(ui, &facts::birds_by_rule(words, desk.editor.plan()), theme::regular(13.0), colour(p.ink));
    if let Some(rule) = stocking::chosen(desk.editor.plan()).filter(|rule| rule.id != OWN) {
        ui.add_space(4.0);
        desk.second(ui, desk.words.source(rule.source));
    }
    let mut stated: Option<Season> = None;
    if season.birds_rule() == OWN {
        ui.add_space(4.0);
        let shown = Shown::of(words, Measure::Area, season.min_m2_per_bird(), season.min_m2_per_bird.is_none());
        let read = field::or_nothing(field::figure(words, Measure::Area, GROUND_A_BIRD));
        let id = Id::unique("ground a bird");
        if let Some(min_m2_per_bird) = field::line(ui, p, id, words.text(Text::OwnField), &shown, read) {
            stated = Some(Season { min_m2_per_bird, ..season.clone() });
        }
    }
    ui.add_space(8.0);
    let id = Id::unique("bird rules open");
    let open: bool = ui.data(|data| data.get_temp(id)).unwrap_or_default();
    let label = words.text(if open { Text::FoldRules } else { Text::ChangeRule });
    if kit::link(ui, label, p).clicked() {
        ui.data_mut(|data| data.insert_temp(id, !open));
    }
    if open {
        ui.add_space(6.0);
        desk.second(ui, words.text(Text::RulesDiffer));
        ui.add_space(4.0);
        kit::rule(ui, p);
        let own = (OWN, season.min_m2_per_bird());
        for (rule, m2_per_bird) in std::iter::once(own).chain(RULES.iter().map(|rule| (rule.id, rule.m2_per_bird))) {
            let (name, each) = (words.text(facts::rule_name(rule)), words.area_each(m2_per_bird));
            let picked = season.birds_rule() == rule;
            let label = format!("{name}: {each}");
            let (rect, response) = kit::row(ui, Id::unique(("bird rule", rule)), picked, false, &label, p);
            let y = rect.center().y;
            let galley = kit::shortened(ui, name, theme::regular(13.0), colour(p.ink), rect.width() - 76.0);
            ui.painter().galley(pos2(rect.left(), y - galley.size().y / 2.0), galley, colour(p.ink));
            kit::cell(ui, pos2(rect.right(), y), Align2::RIGHT_CENTER, &each, theme::regular(13.0), colour(p.ink));
            if response.clicked() && !picked {
                let birds_rule = (rule != OWN).then(|| rule.to_owned());
                stated = Some(Season { birds_rule, ..season.clone() });
            }
        }
    }
    if let Some(season) = stated {
        desk.said.say(Message::Make(Edit::SetSeason { season }));
    }
}
