//! The store's fields: what cannot be used is refused at the field and changes nothing; what can is one step.

use crate::hand;
use crate::hand::example;
use desktop::editor::{Message, Page};
use drawing::Thing;
use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use plan::Plan;
use words::{Units, Words};

type Opened = hand::Desk;

fn open(plan: Plan, page: Page, units: Units) -> Opened {
    hand::on_page(plan, page, [1280.0, 5200.0], Words { units, ..Words::default() })
}

fn plan_of(harness: &Opened) -> Plan {
    harness.state().as_ref().unwrap().editor().plan().clone()
}

fn steps(harness: &Opened) -> usize {
    harness.state().as_ref().unwrap().editor().deeds().0.len()
}

/// Types over what stands in a field, without leaving it.
fn type_into(harness: &mut Opened, field: &str, text: &str) {
    harness.get_by_label(field).focus();
    harness.step();
    harness.step();
    if text.is_empty() {
        harness.key_press(Key::Delete);
    } else {
        harness.event(egui::Event::Text(text.to_owned()));
    }
    harness.step();
}

fn enter(harness: &mut Opened, field: &str, text: &str) {
    type_into(harness, field, text);
    harness.key_press(Key::Enter);
    harness.step();
    harness.step();
}

fn leave(harness: &mut Opened) {
    harness.key_press(Key::Escape);
    harness.step();
    harness.step();
}

fn stands(harness: &Opened, field: &str) -> String {
    harness.get_by_label(field).accesskit_node().value().unwrap_or_default()
}

fn says(harness: &Opened, part: &str) -> bool {
    harness.query_all_by_label_contains(part).next().is_some()
}

/// A field: its page, its name, a figure that it takes, the same in other words or units, and what it states.
struct Field {
    page: Page,
    name: &'static str,
    good: &'static str,
    otherwise: &'static str,
    value: f64,
    stated: fn(&Plan) -> Option<f64>,
    may_stay_unsaid: bool,
}

const fn field(
    page: Page,
    name: &'static str,
    [good, otherwise]: [&'static str; 2],
    value: f64,
    stated: fn(&Plan) -> Option<f64>,
) -> Field {
    Field { page, name, good, otherwise, value, stated, may_stay_unsaid: true }
}

fn fields() -> Vec<Field> {
    let (run, power) = (Page::Run, Page::Power);
    let needed = |field: Field| Field { may_stay_unsaid: false, ..field };
    vec![
        field(run, "How many, long", ["7", "7.0"], 7.0, |plan| plan.store.nets[0].count.map(f64::from)),
        needed(field(run, "Length, long", ["12,5", "12.5 m"], 12.5, |plan| Some(plan.store.nets[0].length_m))),
        needed(field(run, "Length, long", ["12' 6\"", "12 ft 6 in"], 3.81, |plan| Some(plan.store.nets[0].length_m))),
        needed(field(run, "Posts on one, long", ["11", "11.0"], 10.0, |plan| plan.store.nets[0].panels.map(f64::from))),
        field(run, "Height, long", ["112,5", "1.125 m"], 1.125, |plan| plan.store.nets[0].height_m),
        field(run, "Length of the stake, Braces", ["45", "0,45 m"], 0.45, |plan| plan.store.brace.stake_length_m),
        field(run, "Thickness of the stake, Braces", ["14", "1.4 cm"], 0.014, |plan| plan.store.brace.stake_diameter_m),
        field(run, "Guy above the ground, Braces", ["6,5", "65 mm"], 0.065, |plan| plan.store.brace.loop_height_m),
        field(run, "Stake off the net, Braces", ["1.2", "120 cm"], 1.2, |plan| plan.store.brace.stand_off_m),
        field(run, "Hold, times the pull, Braces", ["3", "3,0"], 3.0, |plan| plan.store.brace.safety_factor),
        field(run, "Width of a cut, Mower", ["21 in", "53.34"], 0.5334, |plan| plan.store.mower.width_m),
        field(run, "Overlap of two cuts, Mower", ["15", "15 %"], 0.15, |plan| plan.store.mower.overlap),
        field(power, "Stored, field", ["1.5", "1500 mJ"], 1.5, |plan| plan.store.energizers[0].stored_j),
        field(power, "Without a load, field", ["8,5", "8500 V"], 8.5, |plan| plan.store.energizers[0].no_load_kv),
        field(power, "At 500\u{a0}Ω, volts, field", ["4.2", "4,2 kV"], 4.2, |plan| {
            plan.store.energizers[0].kv_at_500_ohm
        }),
        field(power, "At 500\u{a0}Ω, energy out, field", ["0,6", "600 mJ"], 0.6, |plan| {
            plan.store.energizers[0].output_j_at_500_ohm
        }),
        field(power, "How many, field", ["2", "2.0"], 2.0, |plan| plan.store.energizers[0].count.map(f64::from)),
        field(power, "Stakes, earth stakes", ["4", "4."], 4.0, |plan| plan.runs[0].earth_stakes.count.map(f64::from)),
        field(power, "Apart, earth stakes", ["2,5", "250 cm"], 2.5, |plan| plan.runs[0].earth_stakes.spacing_m),
        field(power, "Length in the ground, earth stakes", ["1.5", "150 cm"], 1.5, |plan| {
            plan.store.earth_stake.length_m
        }),
        field(power, "Thickness, earth stakes", ["16", "1,6 cm"], 0.016, |plan| plan.store.earth_stake.diameter_m),
        field(power, "Measured resistance, earth stakes", ["42", "42 ohm"], 42.0, |plan| plan.runs[0].earth_ohm),
    ]
}

#[test]
fn what_cannot_be_used_is_refused_at_the_field_and_esc_restores_it() {
    for page in [Page::Run, Page::Power] {
        let mut harness = open(example(), page, Units::Metric);
        let (plan, before) = (plan_of(&harness), steps(&harness));
        for field in fields().iter().filter(|field| field.page == page) {
            let shown = stands(&harness, field.name);
            for (typed, sentence) in [
                ("fifty", "“fifty” is no number; type figures, such as "),
                ("-3", "Less than nothing does not work here; type it without the minus."),
                ("999999999999", "That is too much here; type "),
                ("1,200", "“1,200” may be 1200 or 1.2; type the one that you mean."),
                ("3 stone", "“stone” "),
            ] {
                enter(&mut harness, field.name, typed);
                assert!(says(&harness, sentence), "{}: {typed:?} was not refused by {sentence:?}", field.name);
                assert_eq!(plan_of(&harness), plan, "{}: {typed:?} changed the plan", field.name);
                assert_eq!(stands(&harness, field.name), typed, "what was typed stays");
                leave(&mut harness);
                assert!(!says(&harness, sentence), "{}: the sentence stays after Esc", field.name);
                assert_eq!(stands(&harness, field.name), shown, "Esc restores");
            }
            if !field.may_stay_unsaid {
                enter(&mut harness, field.name, "");
                assert!(says(&harness, "Nothing is typed yet; type a figure, such as "), "{}", field.name);
                leave(&mut harness);
            }
        }
        assert_eq!((plan_of(&harness), steps(&harness)), (plan, before));
    }
}

#[test]
fn a_good_figure_is_one_step_however_it_is_written() {
    for page in [Page::Run, Page::Power] {
        let mut harness = open(example(), page, Units::Metric);
        for field in fields().iter().filter(|field| field.page == page) {
            for typed in [field.good, field.otherwise] {
                let (plan, before) = (plan_of(&harness), steps(&harness));
                enter(&mut harness, field.name, typed);
                let stated = (field.stated)(&plan_of(&harness)).unwrap();
                assert!((stated - field.value).abs() < 1e-12, "{}: {typed:?} stated {stated}", field.name);
                assert_eq!(steps(&harness), before + 1, "{}: {typed:?}", field.name);
                harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
                harness.run();
                assert_eq!(plan_of(&harness), plan, "{}: one step takes it back", field.name);
            }
        }
    }
}

#[test]
fn an_emptied_field_takes_its_statement_back() {
    for page in [Page::Run, Page::Power] {
        let mut harness = open(example(), page, Units::Metric);
        for field in fields().iter().filter(|field| field.page == page && field.may_stay_unsaid) {
            // One stake alone has no neighbour, and a measured earth no stakes.
            enter(&mut harness, field.name, field.good);
            enter(&mut harness, field.name, "");
            if field.name.starts_with("Stakes") {
                assert!(harness.query_by_label("Apart, earth stakes").is_none());
                harness.get_by_label("One stake more").click();
                harness.run();
                continue;
            }
            assert_eq!((field.stated)(&plan_of(&harness)), None, "{}", field.name);
            let count = steps(&harness);
            enter(&mut harness, field.name, "");
            assert_eq!(steps(&harness), count, "{}: nothing stated is nothing to take back", field.name);
        }
    }
}

#[test]
fn a_bare_figure_is_in_the_units_that_are_shown() {
    let mut harness = open(example(), Page::Run, Units::Feet);
    assert_eq!(stands(&harness, "Length, long"), "164.04");
    enter(&mut harness, "Length, long", "164");
    assert!((plan_of(&harness).store.nets[0].length_m - 49.9872).abs() < 1e-12);
    assert_eq!(stands(&harness, "Length, long"), "164");
    enter(&mut harness, "Width of a cut, Mower", "21");
    assert!((plan_of(&harness).store.mower.width_m.unwrap() - 0.5334).abs() < 1e-12);
    enter(&mut harness, "Height, long", "9 ft");
    assert_eq!(stands(&harness, "Height, long"), "108");
}

#[test]
fn leaving_a_field_commits_and_looking_at_it_does_not() {
    let mut harness = open(example(), Page::Run, Units::Metric);
    let before = steps(&harness);
    harness.get_by_label("Length, long").focus();
    harness.run();
    harness.key_press(Key::Tab);
    harness.run();
    assert_eq!(steps(&harness), before, "nothing was typed");
    type_into(&mut harness, "Length, long", "40");
    harness.key_press(Key::Tab);
    harness.run();
    harness.run();
    assert_eq!((plan_of(&harness).store.nets[0].length_m, steps(&harness)), (40.0, before + 1));
    assert!(harness.get_by_label("Posts on one, long").accesskit_node().is_focused(), "Tab goes to the next field");

    type_into(&mut harness, "Length, long", "41");
    harness.get_by_label("Ground").click();
    harness.run();
    harness.run();
    assert_eq!((plan_of(&harness).store.nets[0].length_m, steps(&harness)), (41.0, before + 2), "a click elsewhere");
}

#[test]
fn the_windows_keys_are_quiet_while_a_field_is_typed_into() {
    let mut harness = open(example(), Page::Run, Units::Metric);
    harness.state_mut().as_mut().unwrap().say(Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 0 })));
    harness.run();
    let (plan, picked) = (plan_of(&harness), Some(Thing::RunCorner { run: 0, vertex: 0 }));
    type_into(&mut harness, "Length, long", "9");
    for key in [Key::Delete, Key::ArrowLeft, Key::ArrowUp, Key::F] {
        harness.key_press(key);
        harness.run();
    }
    leave(&mut harness);
    assert_eq!(plan_of(&harness), plan);
    assert_eq!(harness.state().as_ref().unwrap().editor().picked(), picked, "Esc was the field's");
    harness.key_press(Key::Escape);
    harness.run();
    assert_eq!(harness.state().as_ref().unwrap().editor().picked(), None, "the next Esc is the window's");
}

#[test]
fn a_refused_figure_stays_until_it_is_mended() {
    let mut harness = open(example(), Page::Run, Units::Metric);
    type_into(&mut harness, "Length, long", "fifty");
    harness.key_press(Key::Tab);
    harness.run();
    harness.run();
    assert!(says(&harness, "“fifty” is no number"));
    enter(&mut harness, "Height, long", "120");
    assert_eq!(plan_of(&harness).store.nets[0].height_m, Some(1.2), "another field goes on");
    assert_eq!(stands(&harness, "Length, long"), "fifty");
    enter(&mut harness, "Length, long", "55");
    assert!(!says(&harness, "“fifty” is no number"));
    assert!((plan_of(&harness).store.nets[0].length_m - 55.0).abs() < 1e-12);
}

#[test]
fn a_refusal_speaks_in_the_unit_that_is_shown() {
    let mut harness = open(example(), Page::Run, Units::Metric);
    enter(&mut harness, "Width of a cut, Mower", "900000 m");
    assert!(says(&harness, " cm or less."));
    harness.state_mut().as_mut().unwrap().say(Message::Units(Units::Feet));
    harness.run();
    harness.run();
    assert!(!says(&harness, " cm or less."), "the centimetres are gone with the unit");
}

#[test]
fn the_names_at_the_foot_of_a_page_lead_there() {
    let mut harness = hand::on_page(example(), Page::Run, [1280.0, 800.0], Words::default());
    let head =
        |harness: &Opened, name: &str| harness.get_by_role_and_label(egui::accesskit::Role::Heading, name).rect().top();
    assert!(head(&harness, "Wind") > 680.0, "it lies below");
    let at = harness.get_by_role_and_label(egui::accesskit::Role::Link, "Wind").rect().center();
    hand::click(&mut harness, at);
    for _ in 0..40 {
        harness.step();
    }
    assert!(head(&harness, "Wind") < 300.0, "a click brought them in sight: {}", head(&harness, "Wind"));
}

#[test]
fn a_kind_of_net_is_added_copied_renamed_and_taken_out() {
    let mut harness = open(example(), Page::Run, Units::Metric);
    let first = plan_of(&harness);
    assert!(harness.query_by_label("Take it out").is_none(), "a run names it");
    enter(&mut harness, "Name, long", "");
    assert!(says(&harness, "It needs a name; type a word or two."));
    leave(&mut harness);

    let before = steps(&harness);
    enter(&mut harness, "Name, long", "Long one");
    let plan = plan_of(&harness);
    assert_eq!(plan.store.nets[0].id, "Long one");
    assert!(plan.runs[0].nets.iter().flatten().all(|name| name == "Long one"), "{:?}", plan.runs[0].nets);
    assert_eq!(steps(&harness), before + 1, "with the run that names it, one step");
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(plan_of(&harness), first);

    harness.get_by_label("long: 5\u{a0}×\u{a0}50 m").click();
    harness.run();
    if harness.query_by_label("Make another like it").is_none() {
        harness.get_by_label("long: 5\u{a0}×\u{a0}50 m").click();
        harness.run();
    }
    harness.get_by_label("Make another like it").click();
    harness.run();
    assert_eq!(plan_of(&harness).store.nets.len(), 2);
    enter(&mut harness, "Name, long 2", "long");
    assert!(says(&harness, "Another one is called that; type a name of its own."));
    leave(&mut harness);
    harness.get_by_label("Take it out").click();
    harness.run();
    assert_eq!(plan_of(&harness), first);

    harness.get_by_label("Add a kind of net").click();
    harness.run();
    enter(&mut harness, "Length, net", "25");
    let plan = plan_of(&harness);
    assert_eq!((plan.store.nets[1].id.as_str(), plan.store.nets[1].length_m), ("net", 25.0));
    harness.get_by_label("Take whichever reach round instead").click();
    harness.run();
    assert_eq!(plan_of(&harness).runs[0].nets, None);
}

#[test]
fn a_data_sheet_that_contradicts_itself_is_told_by_its_figures() {
    let mut harness = open(example(), Page::Power, Units::Metric);
    assert!(says(&harness, "Field fits its sheet: 7.0 kV without a load falls to 5.0 kV"));
    enter(&mut harness, "At 500\u{a0}Ω, volts, field", "7.5");
    assert!(says(&harness, "7.5 kV at 500\u{a0}Ω is not less than 7.0 kV without a load. One of the two is misread."));
    enter(&mut harness, "At 500\u{a0}Ω, volts, field", "5");
    enter(&mut harness, "At 500\u{a0}Ω, energy out, field", "1.1");
    assert!(says(&harness, "1.1 J come out, but only 1 J are stored. One of the two is misread."));
    enter(&mut harness, "Stored, field", "");
    assert!(says(&harness, "the dotted figures are assumed"), "what is not stated contradicts nothing");
    assert_eq!(stands(&harness, "Stored, field"), "", "none is assumed to be stored");
    enter(&mut harness, "At 500\u{a0}Ω, energy out, field", "");
    assert_eq!(stands(&harness, "Stored, field"), "1");
    enter(&mut harness, "Without a load, field", "");
    enter(&mut harness, "At 500\u{a0}Ω, volts, field", "9");
    assert!(says(&harness, "9.0 kV at 500\u{a0}Ω is not less than 7.0 kV without a load, of which one is assumed."));
}

#[test]
fn the_first_figure_typed_makes_the_assumed_energizer_the_keepers() {
    let mut plan = example();
    plan.store.energizers.clear();
    plan.runs[0].energizer = None;
    let mut harness = open(plan, Page::Power, Units::Metric);
    enter(&mut harness, "Stored, assumed energizer", "2");
    let plan = plan_of(&harness);
    assert_eq!(plan.store.energizers.len(), 1);
    assert_eq!((plan.store.energizers[0].stored_j, plan.store.energizers[0].no_load_kv), (Some(2.0), None));

    harness.get_by_label("Add an energizer").click();
    harness.run();
    harness.get_by_label("energizer 2").click();
    harness.run();
    assert_eq!(plan_of(&harness).runs[0].energizer.as_deref(), Some("energizer 2"));
    assert!(harness.query_by_label("Take it out").is_none(), "this run names it");
}

#[test]
fn every_net_of_odd_statements_is_shown_without_a_stop() {
    let mut plan = example();
    plan.store.nets[0].panels = None;
    plan.store.nets[0].length_m = 0.0;
    plan.store.energizers[0].no_load_kv = Some(-4.0);
    plan.store.earth_stake.length_m = Some(1e300);
    plan.store.brace.stake_length_m = Some(-0.0);
    plan.runs[0].earth_stakes.count = Some(u32::MAX);
    for page in [Page::Run, Page::Power] {
        let mut harness = open(plan.clone(), page, Units::Feet);
        harness.run();
        if page == Page::Run {
            assert!(says(&harness, "How many posts stand on it?"));
            enter(&mut harness, "Posts on one, long", "15");
            assert_eq!(plan_of(&harness).store.nets[0].panels, Some(14));
        }
    }
}
