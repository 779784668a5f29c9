//! What a keeper asks of a run first leads its page, and what a keeper asks of its volts leads theirs.

use crate::hand::{Desk, example, on_page, window};
use desktop::editor::Page;
use egui_kittest::kittest::Queryable;
use words::{Language, Words};

fn top(desk: &Desk, label: &str) -> f32 {
    desk.get_by_label(label).rect().top()
}

#[test]
fn the_minutes_of_the_work_lead_the_page_about_a_run() {
    for size in [[1280.0, 800.0], [900.0, 600.0]] {
        let desk = on_page(example(), Page::Run, size, Words::default());
        let (_, worked) = window(&desk).editor().run().unwrap();
        let (up, down) = (worked.set_up.as_ref().unwrap(), worked.taking_down.as_ref().unwrap());
        let mow = worked.strip.as_ref().unwrap().minutes;
        let tools = top(&desk, "Unroll a run");
        let sheets = worked.lay.as_ref().unwrap().set_up_minutes;
        assert!((sheets - up.minutes_low).abs() > 1.0, "by the step it takes another time");
        for (minutes, label) in [(sheets, "to set up"), (down.minutes_low, "to take down"), (mow, "to mow")] {
            let label = format!("{minutes:.0} min {label}");
            assert!(top(&desk, &label) < tools, "{label}");
        }
        // Two figures of one work: what each is stands beside them.
        let first = format!(
            "{sheets:.0} min to set up is a rule of thumb, so much a net and a brace. Step by step it is {:.0} min with practice, {:.0} the first time; taking down the first time {:.0}.",
            up.minutes_low, up.minutes_high, down.minutes_high
        );
        assert!(desk.query_all_by_label_contains(&first).next().is_some(), "{first}");
    }
}

#[test]
fn once_it_is_stated_how_long_things_take_there_is_one_figure_of_setting_up() {
    for (language, rule, steps) in [
        (Language::English, "rule of thumb", "Setting up step by step"),
        (Language::German, "Faustregel", "Aufbau Schritt für Schritt"),
    ] {
        let words = Words { language, ..Words::default() };
        let says = |plan: plan::Plan, what: &str| {
            let desk = on_page(plan, Page::Run, [1280.0, 4000.0], words);
            desk.query_all_by_label_contains(what).count()
        };
        // Beside the figures that lead the page, and where the steps are.
        assert_eq!((says(example(), rule), says(example(), steps)), (2, 0), "{language:?}");
        let mut stated = example();
        stated.store.rates.unroll_minutes = Some(2.0);
        assert_eq!((says(stated.clone(), rule), says(stated, steps)), (0, 1), "{language:?}");
    }
}

#[test]
fn the_volts_lead_their_page_before_any_button() {
    for language in [Language::English, Language::German, Language::Longer] {
        let words = Words { language, ..Words::default() };
        let desk = on_page(example(), Page::Power, [900.0, 600.0], words);
        let feed = words.text(words::texts::Window::AtTheFeed);
        let volts =
            desk.query_all_by_label_contains(feed).map(|node| node.rect().bottom()).fold(f32::INFINITY, f32::min);
        let tool = top(&desk, words.text(words::texts::Damp::PlaceEnergizer));
        let trials = top(&desk, words.text(words::texts::Faults::Branch));
        assert!(volts < 250.0 && volts < trials && trials < tool, "{language:?}: {volts}, {trials}, {tool}");
    }
}
