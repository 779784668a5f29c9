//! In which order a run is set up and taken down, on the page about it.

use crate::hand;
use crate::hand::{click_on, example, fill, on_page, settle, window};
use desktop::editor::Page;
use egui_kittest::kittest::Queryable;
use plan::Plan;
use words::Words;

#[test]
fn the_steps_open_on_demand_and_are_those_of_the_report() {
    let mut desk = on_page(example(), Page::Run, [1280.0, 2800.0], Words::default());
    desk.get_by_label("Setting up");
    assert!(desk.query_by_label_contains("Only now let the birds out").is_none());
    desk.get_by_label("Go through setting up").click();
    desk.run();
    desk.run();
    desk.get_by_label_contains("Only now let the birds out");
    let worked = window(&desk).editor().workup().runs[0].clone();
    for line in exchange::work::sentences::lines(&worked, Words::default()) {
        // The report indents and numbers its steps; only those of setting up are open.
        if line.contains("Taking down") {
            break;
        }
        if let Some((_, step)) = line.trim().split_once(". ").filter(|(number, _)| number.parse::<usize>().is_ok()) {
            desk.get_all_by_label_contains(step).next().unwrap();
        }
    }
    desk.get_by_label("Fold setting up").click();
    desk.run();
    desk.run();
    assert!(desk.query_by_label_contains("Only now let the birds out").is_none());
}

#[test]
fn hands_and_weather_change_the_minutes_and_every_rate_can_be_typed() {
    let mut desk = on_page(example(), Page::Run, [1280.0, 5200.0], Words::default());
    settle(&mut desk);
    let minutes = |desk: &hand::Desk| window(desk).editor().workup().runs[0].set_up.as_ref().unwrap().minutes_low;
    let before = minutes(&desk);
    click_on(&mut desk, "rain");
    settle(&mut desk);
    let rain = minutes(&desk);
    assert!(rain > before);
    assert_eq!(window(&desk).editor().plan().store.rates.rain, Some(true));
    click_on(&mut desk, "rain");
    settle(&mut desk);
    assert!((minutes(&desk) - before).abs() < 1e-9);

    click_on(&mut desk, "Change how long each thing takes");
    desk.run();
    fill(&mut desk, "Rolling out one net", "12 min");
    fill(&mut desk, "Walking with a roll", "2,4 km/h");
    settle(&mut desk);
    let rates = window(&desk).editor().plan().store.rates.clone();
    assert_eq!(rates.unroll_minutes, Some(12.0));
    assert!((rates.carry_m_per_s.unwrap() - 2.4 / 3.6).abs() < 1e-12);
    assert!(minutes(&desk) > before);
    fill(&mut desk, "Rolling out one net", "a while");
    desk.get_by_label_contains("“a while”");
    assert_eq!(window(&desk).editor().plan().store.rates, rates, "the old value is kept");
}

#[test]
fn the_strip_is_typed_on_either_side_and_the_mower_whole() {
    let mut desk = on_page(example(), Page::Run, [1280.0, 5200.0], Words::default());
    settle(&mut desk);
    let plan = |desk: &hand::Desk| -> Plan { window(desk).editor().plan().clone() };
    let before = window(&desk).editor().workup().runs[0].strip.clone().unwrap();
    fill(&mut desk, "Inside the net, Round Quince House", "30 cm");
    settle(&mut desk);
    let run = plan(&desk).runs[0].clone();
    assert!([run.strip_left_m, run.strip_right_m].contains(&Some(0.3)));
    let after = window(&desk).editor().workup().runs[0].strip.clone().unwrap();
    assert!(after.area_m2 < before.area_m2);
    fill(&mut desk, "Pace behind it, Mower", "5 km/h");
    fill(&mut desk, "Share of the time it cuts, Mower", "80 %");
    let mower = plan(&desk).store.mower;
    assert!((mower.speed_m_per_s.unwrap() - 5.0 / 3.6).abs() < 1e-12);
    assert!((mower.efficiency.unwrap() - 0.8).abs() < 1e-12);
}
