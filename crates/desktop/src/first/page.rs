//! The page beside the question: what is assumed until it is said otherwise, and what will be read.

use drawing::Palette;
use egui::Ui;
use plan::defaults;
use words::Words;
use words::texts::Rolls as Text;

use crate::kit;
use crate::theme::{self, colour};

/// The page while the question stands: what is assumed, and what will be read.
pub(crate) fn page(ui: &mut Ui, words: Words, p: &Palette) {
    kit::title(ui, words.text(Text::FirstTitle), "", words.text(Text::FirstSentence), p);
    ui.add_space(kit::BETWEEN);
    kit::section(ui, words.text(Text::AssumedUntil), words.text(Text::CanWait), p);
    kit::rule(ui, p);
    let coop = plan::Rolls::default().lay_out().and_then(|plan| plan.coop);
    if let Some(coop) = coop {
        let places = [
            ("length", words.length(coop.length_m())),
            ("width", words.length(coop.width_m())),
            ("birds", coop.birds().to_string()),
        ];
        let places = places.each_ref().map(|(name, value)| (*name, value.as_str()));
        kit::fact(ui, words.text(Text::CoopAndFlock), &words.say(Text::CoopIs, &places), p);
    }
    let netting = words.say(Text::NettingIs, &[("height", &words.length(defaults::NET_HEIGHT_M))]);
    kit::fact(ui, words.text(Text::Netting), &netting, p);
    kit::fact(ui, words.text(Text::Ground), words.text(Text::GroundIs), p);
    kit::fact(ui, words.text(Text::Grass), words.text(Text::GrassIs), p);
    let energizer = words.say(Text::EnergizerIs, &[("joules", &words.number(defaults::STORED_J, 0))]);
    kit::fact(ui, words.text(Text::Energizer), &energizer, p);
    let (strip, cut) = (words.length(defaults::STRIP_WIDTH_M), words.fine_length(defaults::MOWER_WIDTH_M));
    let mowing = words.say(Text::MowingIs, &[("strip", &strip), ("cut", &cut)]);
    kit::fact(ui, words.text(Text::Mowing), &mowing, p);
    kit::fact(ui, words.text(Text::Target), &words.kilovolts(defaults::TARGET_KV), p);
    ui.add_space(kit::BETWEEN);
    kit::section(ui, words.text(Text::ReadThen), "", p);
    ui.add_space(6.0);
    for text in [Text::ReadGround, Text::ReadCorners, Text::ReadMow, Text::ReadVolts] {
        ui.add_space(4.0);
        kit::prose(ui, &format!("–  {}", words.text(text)), theme::regular(13.0), colour(p.ink));
    }
    ui.add_space(kit::BETWEEN);
    kit::prose(ui, words.text(Text::CodesFirst), theme::regular(12.0), colour(p.ink2));
}
