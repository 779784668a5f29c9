//! How many earth stakes are worth driving here, and what the shorted-fence test would read.

use egui::{Id, Ui};
use plan::{Run, Today};
use words::Words;
use words::texts::{Earth, Power as Text};
use workup::Lay;
use workup::power::earth::{FAR_M, RULE_KV, SHORTED_KV, WORTH};
use workup::power::{EarthTest, StakesIn, Study};

use crate::kit;
use crate::pages::Desk;

/// Where egui remembers whether the test's steps are open.
const OPEN: &str = "earth test open";

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, study: &Study, run: &Run, lay: &Lay) {
    let words = desk.words;
    if let [wet, damp, dry] = study.stakes.as_slice() {
        ui.add_space(8.0);
        let count = |stakes: &StakesIn| stakes.needed.to_string();
        let least = words.number(100.0 * WORTH, 0);
        let worth = [("wet", count(wet)), ("damp", count(damp)), ("dry", count(dry)), ("worth", least)];
        let worth: Vec<(&str, &str)> = worth.iter().map(|(name, count)| (*name, count.as_str())).collect();
        desk.second(ui, &words.say(Text::StakesWorth, &worth));
        if let Some(sentence) = one_more(damp, run, words) {
            ui.add_space(4.0);
            desk.second(ui, &sentence);
        }
    }
    ui.add_space(4.0);
    let apart = words.far(care::BETWEEN_EARTHS_M);
    desk.second(ui, &words.say(Text::OneStakeForAll, &[("apart", &apart)]));
    if let Some(test) = &study.test {
        self::test(ui, desk, test, lay);
    }
}

/// What one more stake would give in damp ground.
fn one_more(damp: &StakesIn, run: &Run, words: Words) -> Option<String> {
    let count = run.earth_stakes.count();
    let at = |count: u32| damp.by_count.iter().find(|one| one.count == count);
    let (now, more) = (at(count)?, at(count + 1)?);
    debug_assert_eq!(damp.today, Today::Damp);
    let gain = words.number(100.0 * (more.animal_kv / now.animal_kv - 1.0), 0);
    if run.earth_stakes.places.is_empty() {
        return Some(words.say(Text::OneMoreStake, &[("gain", &gain)]));
    }
    let spacing = words.length(run.earth_stakes.spacing_m());
    Some(words.say(Earth::OneMorePlaced, &[("gain", &gain), ("spacing", &spacing)]))
}

fn test(ui: &mut Ui, desk: &mut Desk<'_>, test: &EarthTest, lay: &Lay) {
    let (words, p) = (desk.words, desk.p);
    ui.add_space(6.0);
    let id = Id::unique(OPEN);
    let open = ui.data(|data| data.get_temp::<bool>(id)).unwrap_or(false);
    if kit::link(ui, words.text(if open { Text::FoldTest } else { Text::ShowTest }), p).clicked() {
        ui.data_mut(|data| data.insert_temp(id, !open));
    }
    if !open {
        return;
    }
    ui.add_space(4.0);
    let post = (test.post + 1).to_string();
    let far = words.far(test.far_m);
    let (wants, short, rule) = (words.far(FAR_M), words.kilovolts(SHORTED_KV), words.kilovolts(RULE_KV));
    let kv = test.sound_kv.map(|kv| words.kilovolts(kv));
    let from = lay.posts.get(test.post).map_or_else(String::new, |post| words.far(post.along_m));
    if let Some((ohm, earth_kv)) = test.shorted {
        let earth = words.kilovolts(earth_kv);
        let ohm = words.number(ohm, 0);
        let places = [("post", &*post), ("far", &*far), ("from", &*from), ("earth", &*earth), ("ohm", &*ohm)];
        let places = [&places[..], &[("short", &*short), ("rule", &*rule)]].concat();
        let next = if earth_kv > RULE_KV { Text::TestHigh } else { Text::TestLow };
        for text in [Text::TestSafe, Text::TestShort, Text::TestRead, next, Text::TestRule] {
            desk.second(ui, &words.say(text, &places));
            ui.add_space(4.0);
        }
    } else {
        let places = [("post", &*post), ("far", &*far), ("feed", &*kv[0]), ("kv", &*kv[1])];
        let places = [&places[..], &[("wants", &*wants), ("short", &*short)]].concat();
        let first = if test.reaches() { Text::TestAlreadyLow } else { Text::TestTooNear };
        for text in [first, Text::TestFarPost, Text::TestSafeReading] {
            desk.second(ui, &words.say(text, &places));
            ui.add_space(4.0);
        }
    }
}
