//! What a page's figures assume: every statement that the plan leaves out, in words, with what stands in.

use egui::{Id, Ui};
use plan::Assumed;
use words::Words;
use words::texts::About;
use words::texts::{Bracing, Damp, Window as Text};

use super::Desk;
use crate::editor::Page;
use crate::kit;

/// How the value that stands in is said.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Said {
    Length,
    FineLength,
    Force,
    Count,
    Kilovolts,
    Joules,
    Share,
    Minutes,
    Seconds,
    Times,
    Area,
    /// Of several lengths the least.
    Lowest,
    Nothing,
}

/// By the last part of a key: the page that it matters to, its name, how its value is said.
const TABLE: [(&str, Page, Text, Said); 60] = [
    ("coop", Page::Run, Text::KeyCoop, Said::Nothing),
    ("today.resistivity", Page::Power, Text::KeyTodaySoil, Said::Times),
    ("today.leakage", Page::Power, Text::KeyTodayGrass, Said::Times),
    ("today.mass", Page::Sheet, Text::KeyTodayMass, Said::Times),
    ("today.minutes", Page::Run, Text::KeyTodayMinutes, Said::Times),
    ("line_voltage_kv", Page::Ground, Text::KeyLineVoltage, Said::Kilovolts),
    ("resistivity_ohm_m", Page::Power, Text::KeyResistivity, Said::Nothing),
    ("undrained_strength_kpa", Page::Ground, Text::KeyStrength, Said::Nothing),
    ("unit_weight_kn_per_m3", Page::Ground, Text::KeyWeight, Said::Nothing),
    ("wet", Page::Ground, Text::KeyWet, Said::Nothing),
    ("height_m", Page::Run, Text::KeyHeight, Said::Length),
    ("live_line_heights_m", Page::Power, Text::KeyLiveLines, Said::Lowest),
    ("line_resistance_ohm_per_m", Page::Power, Text::KeyLineResistance, Said::Nothing),
    ("tension_n", Page::Run, Text::KeyTension, Said::Force),
    ("spikes_per_post", Page::Run, Text::KeySpikes, Said::Count),
    ("spike_length_m", Page::Run, Text::KeySpikeLength, Said::FineLength),
    ("spike_diameter_m", Page::Run, Text::KeySpikeDiameter, Said::FineLength),
    ("stored_j", Page::Power, Text::KeyStored, Said::Joules),
    ("no_load_kv", Page::Power, Text::KeyNoLoad, Said::Kilovolts),
    ("kv_at_500_ohm", Page::Power, Text::KeyLoaded, Said::Kilovolts),
    ("output_j_at_500_ohm", Page::Power, Text::KeyOutput, Said::Joules),
    ("stake_length_m", Page::Run, Text::KeyStakeLength, Said::FineLength),
    ("stake_diameter_m", Page::Run, Text::KeyStakeDiameter, Said::FineLength),
    ("loop_height_m", Page::Run, Text::KeyLoopHeight, Said::FineLength),
    ("stand_off_m", Page::Run, Text::KeyStandOff, Said::Length),
    ("width_m", Page::Run, Text::KeyMowerWidth, Said::FineLength),
    ("overlap", Page::Run, Text::KeyOverlap, Said::Share),
    ("speed_m_per_s", Page::Run, Text::KeySpeed, Said::Nothing),
    ("min_m2_per_bird", Page::Run, Text::KeyGroundABird, Said::Area),
    ("target_kv", Page::Power, Text::KeyTarget, Said::Kilovolts),
    ("feed_at", Page::Power, Text::KeyFeed, Said::Nothing),
    ("earth_stakes.count", Page::Power, Text::KeyEarthStakes, Said::Count),
    ("spacing_m", Page::Power, Text::KeySpacing, Said::Length),
    ("leakage_s_per_m", Page::Power, Text::KeyLeakage, Said::Nothing),
    ("strip_width_m", Page::Run, Text::KeyStrip, Said::Length),
    ("unroll_minutes", Page::Run, Text::KeyUnroll, Said::Minutes),
    ("tread_post_s", Page::Run, Text::KeyTread, Said::Seconds),
    ("join_minutes", Page::Run, Text::KeyJoin, Said::Minutes),
    ("draw_brace_minutes", Page::Run, Text::KeyDrawBrace, Said::Minutes),
    ("brace_minutes", Page::Run, Text::KeyBraceMinutes, Said::Minutes),
    ("further_post_minutes", Page::Run, Text::KeyFurtherPost, Said::Minutes),
    ("power_minutes", Page::Run, Text::KeyPower, Said::Minutes),
    ("fold_minutes", Page::Run, Text::KeyFold, Said::Minutes),
    ("pull_post_s", Page::Run, Text::KeyPull, Said::Seconds),
    ("untie_minutes", Page::Run, Text::KeyUntie, Said::Minutes),
    ("walk_m_per_s", Page::Run, Text::KeyWalk, Said::Nothing),
    ("carry_m_per_s", Page::Run, Text::KeyCarry, Said::Nothing),
    ("first_time_factor", Page::Run, Text::KeyFirstTime, Said::Times),
    ("two_people_factor", Page::Run, Text::KeyTwoPeople, Said::Share),
    ("stony_factor", Page::Run, Text::KeyStony, Said::Times),
    ("long_grass_factor", Page::Run, Text::KeyLongGrass, Said::Times),
    ("rain_factor", Page::Run, Text::KeyRain, Said::Times),
    ("dark_factor", Page::Run, Text::KeyDark, Said::Times),
    ("rolls_a_trip", Page::Run, Text::KeyRollsATrip, Said::Count),
    ("people", Page::Run, Text::KeyPeople, Said::Count),
    ("cut_height_m", Page::Run, Text::KeyCutHeight, Said::FineLength),
    ("drop_at", Page::Run, Text::KeyDrop, Said::Nothing),
    ("efficiency", Page::Run, Text::KeyEfficiency, Said::Share),
    ("gateway.at", Page::Ground, Text::KeyGateway, Said::Nothing),
    ("gap_under_net_m", Page::Run, Text::KeyGap, Said::FineLength),
];

/// Keys whose last part means something else in another place.
const ELSEWHERE: [(&str, &str, Page, Text, Said); 5] = [
    ("runs[", "width_m", Page::Run, Text::KeyGateWidth, Said::Length),
    ("store.nets", "count", Page::Run, Text::KeyNetCount, Said::Count),
    ("store.energizers", "count", Page::Power, Text::KeyEnergizerCount, Said::Count),
    ("store.earth_stake.length_m", "length_m", Page::Power, Text::KeyEarthLength, Said::Length),
    ("store.earth_stake.diameter_m", "diameter_m", Page::Power, Text::KeyEarthDiameter, Said::FineLength),
];

/// What is assumed about braces and wind, by the end of a key; these are looked for first.
const OF_BRACES: [(&str, Page, Bracing, Said); 18] = [
    ("ground.soil.wet_factor", Page::Ground, Bracing::KeyWetFactor, Said::Share),
    ("pull_test.height_m", Page::Ground, Bracing::KeyPullHeight, Said::FineLength),
    ("pull_test.spike_length_m", Page::Ground, Bracing::KeyPullLength, Said::FineLength),
    ("pull_test.spike_diameter_m", Page::Ground, Bracing::KeyPullThick, Said::FineLength),
    ("pull_test.spikes", Page::Ground, Bracing::KeyPullSpikes, Said::Count),
    ("pull_test.wet", Page::Ground, Bracing::KeyPullWet, Said::Nothing),
    ("].wet", Page::Ground, Bracing::KeySeenWet, Said::Nothing),
    ("ground.fouled_share", Page::Run, Bracing::KeyFouled, Said::Share),
    ("brace.guy_height_m", Page::Run, Bracing::KeyGuyHeight, Said::Length),
    ("brace.pegs", Page::Run, Bracing::KeyPegs, Said::Count),
    ("brace.post_length_m", Page::Run, Bracing::KeyPostLength, Said::FineLength),
    ("brace.post_diameter_m", Page::Run, Bracing::KeyPostThick, Said::FineLength),
    ("brace.safety_factor", Page::Run, Bracing::KeySafety, Said::Times),
    ("brace.longer_peg_minutes", Page::Run, Bracing::KeyLongerPeg, Said::Minutes),
    ("brace.second_peg_minutes", Page::Run, Bracing::KeySecondPeg, Said::Minutes),
    ("brace.post_minutes", Page::Run, Bracing::KeyPostMinutes, Said::Minutes),
    ("brace.cut_post_minutes", Page::Run, Bracing::KeyCutMinutes, Said::Minutes),
    ("brace.carry_minutes", Page::Run, Bracing::KeyCarryMinutes, Said::Minutes),
];

/// What is assumed of the energizer's place, its earth lead and damp ground, by both ends of a key; likewise.
const OF_EARTH: [((&str, &str), Damp, Said); 3] = [
    (("runs[", ".energizer_at"), Damp::KeyEnergizer, Said::Nothing),
    (("runs[", ".earth_stakes.lead_m"), Damp::KeyEarthLead, Said::Length),
    (("ground.damp[", ".resistivity_ohm_m"), Damp::KeySoil, Said::Nothing),
];

/// A key's name, from the table that has it.
#[derive(Clone, Copy)]
enum Name {
    Window(Text),
    Bracing(Bracing),
    Underlay(words::texts::Underlay),
    Damp(words::texts::Damp),
}

impl Name {
    fn said(self, words: Words) -> &'static str {
        match self {
            Self::Window(text) => words.text(text),
            Self::Bracing(text) => words.text(text),
            Self::Underlay(text) => words.text(text),
            Self::Damp(text) => words.text(text),
        }
    }
}

fn entry(key: &str) -> Option<(Page, Name, Said)> {
    if let Some(&(_, page, name, said)) = OF_BRACES.iter().find(|(end, ..)| key.ends_with(end)) {
        return Some((page, Name::Bracing(name), said));
    }
    if key == "underlay.world_m" {
        return Some((Page::Ground, Name::Underlay(words::texts::Underlay::KeyUnderlay), Said::Nothing));
    }
    if let Some(&(_, name, said)) =
        OF_EARTH.iter().find(|((start, end), ..)| key.starts_with(start) && key.ends_with(end))
    {
        return Some((Page::Power, Name::Damp(name), said));
    }
    let (page, name, said) = window_entry(key)?;
    Some((page, Name::Window(name), said))
}

fn window_entry(key: &str) -> Option<(Page, Text, Said)> {
    let elsewhere =
        ELSEWHERE.iter().find(|(start, end, ..)| key.starts_with(start) && key.ends_with(&format!(".{end}")));
    if let Some(&(_, _, page, name, said)) = elsewhere {
        return Some((page, name, said));
    }
    let matches = |end: &str| key == end || key.strip_suffix(end).is_some_and(|before| before.ends_with('.'));
    TABLE.iter().find(|(end, ..)| matches(end)).map(|&(_, page, name, said)| (page, name, said))
}

fn value(words: Words, assumed: &Assumed, said: Said) -> String {
    let lowest = || assumed.value.as_array()?.iter().filter_map(serde_json::Value::as_f64).reduce(f64::min);
    let number = if said == Said::Lowest { lowest() } else { assumed.value.as_f64() };
    let Some(number) = number else { return String::new() };
    match said {
        Said::Length => words.length(number),
        Said::FineLength | Said::Lowest => words.fine_length(number),
        Said::Force => words.force(number),
        Said::Count => words.number(number, 0),
        Said::Kilovolts => words.kilovolts(number),
        Said::Joules => words.joules(number),
        Said::Share => words.percent(number),
        Said::Minutes => words.minutes_each(number),
        Said::Seconds => words.seconds(number),
        Said::Times => words.number(number, 2),
        Said::Area => words.area_each(number),
        Said::Nothing => String::new(),
    }
}

/// What is assumed on this page; the list opens on demand.
pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, page: Page) {
    let words = desk.words;
    let run = format!("runs[{}].", desk.editor.run_index());
    let all = plan::assumed(desk.editor.plan());
    let here: Vec<(&Assumed, Name, Said)> = all
        .iter()
        .filter(|one| !one.key.starts_with("runs[") || one.key.starts_with(&run))
        .filter_map(|one| entry(&one.key).map(|(of, name, said)| (of, one, name, said)))
        .filter(|(of, ..)| *of == page)
        .map(|(_, one, name, said)| (one, name, said))
        .collect();
    if here.is_empty() {
        return;
    }
    let count = here.len().to_string();
    let things = words.say(if here.len() == 1 { Text::OneThing } else { Text::Things }, &[("count", &count)]);
    desk.section(ui, words.text(Text::AssumedHere), &things, About::Assumed);
    ui.add_space(6.0);
    desk.second(ui, words.text(Text::DotsMean));
    ui.add_space(4.0);
    let id = Id::unique(("assumed open", page));
    let open = ui.data(|data| data.get_temp::<bool>(id)).unwrap_or(false);
    let label = words.text(if open { Text::FoldThem } else { Text::GoThrough });
    if kit::link(ui, label, desk.p).clicked() {
        ui.data_mut(|data| data.insert_temp(id, !open));
    }
    if open {
        ui.add_space(6.0);
        kit::rule(ui, desk.p);
        for (one, name, said) in here {
            kit::fact(ui, name.said(words), &value(words, one, said), desk.p);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::entry;

    #[test]
    fn every_assumed_key_has_a_name() {
        let text = r#"{ "format": "netfold-plan", "version": 1,
            "ground": { "damp": [ { "outline": [[0, 0], [9, 0], [9, 9]] } ], "hazards": [ { "kind": "overhead_line", "path": [[0, 0], [9, 9]] } ],
                        "soil": { "friction_angle_deg": 30.0 } },
            "store": { "nets": [ { "id": "a", "length_m": 50, "panels": 14 } ], "energizers": [ { "id": "e" } ] },
            "heights": [ { "at": [0, 0], "up_m": 1 }, { "at": [9, 0], "up_m": 2 } ],
            "coop": { "id": "house", "at": [6, 3] },
            "runs": [ { "id": "r", "outline": [[0, 0], [9, 0], [9, 9]], "earth_stakes": { "count": 2 },
                        "gates": [ { "kind": "foot" } ] } ] }"#;
        let mut keys: Vec<String> = Vec::new();
        for plan in [
            plan::read(text.as_bytes()).map(|opened| opened.plan).ok(),
            plan::read(text.replace("\"friction_angle_deg\": 30.0", "").as_bytes()).map(|opened| opened.plan).ok(),
            plan::read(text.replace("\"earth_stakes\": { \"count\": 2 },", "").as_bytes())
                .map(|opened| opened.plan)
                .ok(),
        ] {
            let plan = plan.expect("the test's plan reads");
            keys.extend(plan::assumed(&plan).into_iter().map(|assumed| assumed.key));
        }
        let braces = r#"{ "format": "netfold-plan", "version": 1, "store": { "nets": [ { "id": "a", "length_m": 50, "panels": 14 } ] },
            "ground": { "soil": { "wet": true, "pull_test": { "pull_kg": 4 },
                        "corners_seen": [ { "at": [0, 0], "stood": true, "turn_deg": 90 } ] } },
            "runs": [ { "id": "r", "outline": [[0, 0], [9, 0], [9, 9]] } ] }"#;
        let plan = plan::read(braces.as_bytes()).expect("the test's plan reads").plan;
        let said: Vec<String> = plan::assumed(&plan).into_iter().map(|assumed| assumed.key).collect();
        for (end, ..) in super::OF_BRACES {
            assert!(said.iter().any(|key| key.ends_with(end)), "{end} is assumed nowhere");
        }
        keys.extend(said);
        assert!(keys.len() > 60, "{}", keys.len());
        for key in keys {
            assert!(entry(&key).is_some(), "{key} has no name");
        }
    }
}
