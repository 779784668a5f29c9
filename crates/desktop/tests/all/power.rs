//! The page about volts: which energizer holds, what animals feel, the pulse over time, the earth, the ground today.

use crate::hand;
use crate::hand::{Desk, click_on, example, says, window};
use desktop::editor::{Message, Page};
use drawing::Thing;
use egui_kittest::kittest::{NodeT, Queryable};
use plan::{Plan, Today};
use words::Words;

/// A window on the page about volts, when everything is reckoned.
fn open(plan: Plan) -> Desk {
    hand::on_page(plan, Page::Power, [1280.0, 3200.0], Words::default())
}

#[test]
fn the_plot_of_energizers_and_its_sentences_say_what_was_reckoned() {
    let mut plan = example();
    let mut twice = plan.store.energizers[0].clone();
    twice.id = "large".to_owned();
    twice.stored_j = Some(4.0);
    twice.output_j_at_500_ohm = Some(3.2);
    twice.kv_at_500_ohm = Some(6.3);
    plan.store.energizers.push(twice);
    let desk = open(plan);
    let (study, _) = window(&desk).editor().study().unwrap();
    let choice = study.choice.as_ref().unwrap();
    assert!(desk.query_all_by_label("Which energizer").count() >= 2, "a head and a picture");
    let [field, large] = [&choice.units[0], &choice.units[1]].map(|unit| unit.holds(choice.target_kv, |kv| kv.likely));
    assert!(large > field && field >= 1);
    assert!(says(&desk, &format!("Field keeps 4.0 kV at the weakest post on up to {field} of these nets as they are")));
    assert!(says(&desk, &format!("Large keeps 4.0 kV at the weakest post on up to {large} of these nets as they are")));
    let least = choice.least_stored_j.likely[2].unwrap();
    // Rounded up: a little less does not hold.
    let least = Words::default().number_up(least, if least < 1.0 { 2 } else { 1 });
    assert!(says(&desk, &format!("For 3 nets: {least} J as they are")), "{least}");
}

#[test]
fn what_reads_like_the_target_and_is_below_it_is_told_from_it() {
    let mut plan = example();
    let (study_kv, held) = {
        let desk = open(plan.clone());
        let unit = &window(&desk).editor().study().unwrap().0.choice.as_ref().unwrap().units[0];
        (unit.weakest_kv[2].likely, unit.holds(4.0, |kv| kv.likely))
    };
    assert!(held > 0);
    // A target a hair above what three nets hold.
    plan.target_kv = Some(study_kv + 1e-3);
    let desk = open(plan);
    let below = Words::default().kilovolts_below(study_kv, study_kv + 1e-3);
    assert!(says(&desk, "on up to 2 of these nets") && says(&desk, &format!("On 3 nets it holds {below}.")), "{below}");
}

#[test]
fn another_energizer_feeds_the_run_from_where_they_are_compared() {
    let mut plan = example();
    let own = plan.store.energizers[0].clone();
    plan.runs[0].energizer = Some(own.id.clone());
    plan.store.energizers.push(plan::Energizer { id: "large".to_owned(), stored_j: Some(4.0), ..own.clone() });
    let mut desk = open(plan);
    assert!(!says(&desk, &format!("Feed this run from {}", own.id)));
    click_on(&mut desk, "Feed this run from large");
    assert_eq!(window(&desk).editor().plan().runs[0].energizer.as_deref(), Some("large"));
}

#[test]
fn animals_stand_in_a_table_at_the_post_that_is_picked_and_no_person_has_a_figure() {
    let mut desk = open(example());
    let weakest = window(&desk).editor().run().unwrap().1.volts.as_ref().unwrap().weakest.unwrap();
    assert!(says(&desk, &format!("What an animal would feel at post {}", weakest.post + 1)));
    for who in ["Fox: ", "Dog: ", "Hen: ", "Sheep: "] {
        assert!(says(&desk, who), "{who}");
    }
    assert!(says(&desk, "People keep off: wet hands"));
    assert!(desk.query_all_by_label_contains("Person: ").next().is_none());
    desk.state_mut().as_mut().unwrap().say(Message::Pick(Some(Thing::Post { run: 0, post: 3 })));
    desk.state_mut().as_mut().unwrap().say(Message::Open(Page::Power));
    desk.run();
    assert!(says(&desk, "What an animal would feel at post 4") && says(&desk, "The pulse at post 4"));
    let (study, _) = window(&desk).editor().study().unwrap();
    let fox = study.feels.iter().find(|one| one.who == workup::power::Who::Fox).unwrap().posts[3];
    assert!(says(&desk, &format!("Fox: {:.1} kV on damp soil", fox.kv)));
}

#[test]
fn a_fault_is_told_beside_the_sound_fence() {
    let mut plan = example();
    let at = plan.runs[0].outline[2];
    let rest = plan::Rest::new();
    plan.runs[0].faults =
        vec![plan::Fault { at, kind: plan::FaultKind::Short, ohm: Some(300.0), lines: None, cause: None, rest }];
    let desk = open(plan);
    let volts = window(&desk).editor().run().unwrap().1.volts.as_ref().unwrap();
    let (sound_kv, samples) = (&volts.sound.as_ref().unwrap().posts_kv, &volts.samples);
    assert_eq!(sound_kv.len(), 45);
    assert!(sound_kv.iter().zip(samples).all(|(sound, sample)| *sound > sample.peak_kv + 0.5));
    assert!(says(&desk, "dotted: the sound fence"));
}

#[test]
fn the_earth_test_opens_and_says_that_a_small_fence_reads_falsely() {
    let mut desk = open(example());
    assert!(says(&desk, "Worth driving: "));
    click_on(&mut desk, "Test the earth on this fence");
    assert!(says(&desk, "here it reads falsely") && says(&desk, "Read the far post instead"));
    click_on(&mut desk, "Fold the test");
    assert!(!says(&desk, "here it reads falsely"));
}

#[test]
fn the_ground_today_is_one_switch_and_one_step() {
    let mut desk = open(example());
    let before = window(&desk).editor().deeds().0.len();
    let weakest = |desk: &Desk| window(desk).editor().run().unwrap().1.volts.as_ref().unwrap().weakest.unwrap().peak_kv;
    let damp_kv = weakest(&desk);
    click_on(&mut desk, "Ground today damp");
    click_on(&mut desk, "wet");
    assert_eq!(window(&desk).editor().plan().ground.today, Some(Today::Wet));
    assert_eq!(window(&desk).editor().deeds().0.len(), before + 1);
    assert!(weakest(&desk) < damp_kv, "wet grass leaks five times as much");
    assert!(
        desk.query_by_label("Ground today wet")
            .is_some_and(|node| node.accesskit_node().role() == egui::accesskit::Role::Button)
    );
    desk.state_mut().as_mut().unwrap().say(Message::Undo);
    desk.run();
    assert_eq!(window(&desk).editor().plan().ground.today, None);
}

#[test]
fn a_branch_is_drawn_from_the_line_on_and_taken_out_again() {
    let mut plan = example();
    plan.store.nets[0].count = Some(9);
    let mut desk = hand::on_page(plan, Page::Run, [1280.0, 1400.0], Words::default());
    let steps = window(&desk).editor().deeds().0.len();
    let outline = window(&desk).editor().plan().runs[0].outline.clone();
    let weakest = |desk: &Desk| window(desk).editor().run().unwrap().1.volts.as_ref().unwrap().weakest.unwrap().peak_kv;
    let before_kv = weakest(&desk);
    click_on(&mut desk, "Draw a branch");
    // From a metre beside the middle of the first side, straight away from the run's middle.
    let middle = |one: plan::Point, other: plan::Point| {
        plan::Point::new(0.5 * (one.east_m + other.east_m), 0.5 * (one.north_m + other.north_m))
    };
    let from = middle(outline[0], outline[1]);
    let to = plan::Point::new(from.east_m, from.north_m - 12.0);
    for at in [plan::Point::new(from.east_m, from.north_m - 0.6), to] {
        let at = hand::spot(&desk, at);
        hand::click(&mut desk, at);
    }
    desk.key_press(egui::Key::Enter);
    hand::settle(&mut desk);
    let editor = window(&desk).editor();
    let branches = &editor.plan().runs[0].branches;
    assert_eq!((branches.len(), branches[0].nets.len()), (1, 1));
    let length_m = (outline[1].east_m - outline[0].east_m).hypot(outline[1].north_m - outline[0].north_m);
    assert!((branches[0].from_m - length_m / 2.0).abs() < 0.5, "{}", branches[0].from_m);
    assert_eq!(editor.deeds().0.len(), steps + 1);
    assert!(weakest(&desk) < before_kv, "one net more hangs on the energizer");
    assert!(says(&desk, "Branch 1, "));
    click_on(&mut desk, "Take branch 1 out");
    assert!(window(&desk).editor().plan().runs[0].branches.is_empty());
}

#[test]
fn sliding_the_soil_is_one_step_and_the_volts_follow() {
    let mut desk = open(example());
    let steps = window(&desk).editor().deeds().0.len();
    let earth = |desk: &Desk| window(desk).editor().run().unwrap().1.volts.as_ref().unwrap().earth_ohm;
    let before = earth(&desk);
    let slider = desk.get_by_role_and_label(egui::accesskit::Role::Slider, "Soil at the stakes").rect();
    let at = |share: f32| egui::pos2(slider.left() + share * slider.width(), slider.top() + 12.0);
    hand::drag(&mut desk, at(0.25), at(0.75));
    let soil = &window(&desk).editor().plan().ground.soil;
    assert!((soil.resistivity_ohm_m.unwrap() - 1000.0).abs() < 60.0, "{:?}", soil.resistivity_ohm_m);
    assert!(earth(&desk) > 5.0 * before);
    assert_eq!(window(&desk).editor().deeds().0.len(), steps + 1);
}

#[test]
fn a_fitted_view_leaves_the_runs_clear_of_the_scale_and_the_key() {
    for size in [[900.0, 600.0], [1280.0, 800.0]] {
        for outline in [
            [(0.0, 0.0), (60.0, 0.0), (60.0, 35.0), (0.0, 35.0)],
            [(0.0, 0.0), (99.0, 1.0), (99.0, 30.0), (40.0, 30.0)],
            [(60.0, 30.0), (99.0, 30.0), (99.0, 59.0), (60.0, 59.0)],
        ] {
            let mut plan = example();
            let at = |(east, north): (f64, f64)| plan::Point::new(east, north);
            plan.runs.truncate(1);
            plan.runs[0].outline = outline.map(at).to_vec();
            plan.ground.boundary = [(0.0, 0.0), (100.0, 0.0), (100.0, 60.0), (0.0, 60.0)].map(at).to_vec();
            let mut desk = hand::on_page(plan, Page::Power, size, Words::default());
            desk.state_mut().as_mut().unwrap().say(Message::Fit);
            desk.run();
            let editor = window(&desk).editor();
            let view = editor.view();
            for place in &editor.plan().runs[0].outline {
                let [x, y] = view.spot(*place);
                for [left, top, right, foot] in view.kept.into_iter().flatten() {
                    let clear = x < left - 20.0 || x > right + 20.0 || y < top - 20.0 || y > foot + 20.0;
                    assert!(clear, "{size:?} {outline:?}: corner at {x}, {y} under a plate");
                }
            }
        }
    }
}

#[test]
fn the_sign_of_a_roll_says_what_it_is_under_the_pointer() {
    let mut desk = hand::on_page(example(), Page::Run, [1280.0, 800.0], Words::default());
    let sign = {
        let (editor, map) = (window(&desk).editor(), desk.get_by_label("Map").rect());
        let spots = (0..map.width() as usize)
            .step_by(6)
            .flat_map(|x| (0..map.height() as usize).step_by(6).map(move |y| [x as f32, y as f32]));
        let [x, y] = spots.into_iter().find(|spot| editor.drawing().roll_at(editor.view(), *spot) == Some(1)).unwrap();
        map.min + egui::vec2(x, y)
    };
    assert!(!says(&desk, "in the order of laying"));
    desk.event(egui::Event::PointerMoved(sign));
    desk.run();
    desk.run();
    assert!(says(&desk, "Roll 1 in the order of laying: begin here"));
}

#[test]
fn the_key_makes_way_for_a_corner_that_the_hand_can_take_but_stays_while_it_is_led() {
    let mut desk = open(example());
    let key = |desk: &Desk| window(desk).editor().view().kept[1].unwrap();
    let upper = key(&desk);
    let thing = Thing::RunCorner { run: 0, vertex: 1 };
    let at = window(&desk).editor().plan().runs[0].outline[1];
    // The map is moved until the corner lies under the key.
    let [x, y] = window(&desk).editor().view().spot(at);
    let under = [upper[0].midpoint(upper[2]) - x, upper[1].midpoint(upper[3]) - y];
    hand::say(&mut desk, Message::Pan(under[0], under[1]));
    assert_eq!(key(&desk), upper, "nothing is picked");
    hand::say(&mut desk, Message::Pick(Some(thing)));
    desk.run();
    let lower = key(&desk);
    assert!(lower[1] > upper[3], "{lower:?}");
    // It can be taken and led; the key does not jump meanwhile, wherever the corner goes.
    let from = hand::spot(&desk, at);
    hand::button(&desk, from, true);
    desk.step();
    for step in 1..=10_u8 {
        let share = f32::from(step) / 10.0;
        let to = from + egui::vec2(-20.0 * share, (lower[1] + 10.0 - upper[1]) * share);
        desk.event(egui::Event::PointerMoved(to));
        desk.step();
        assert_eq!(key(&desk), lower);
    }
    assert_ne!(window(&desk).editor().plan().runs[0].outline[1], at);
    hand::say(&mut desk, Message::Escape);
    hand::button(&desk, from, false);
    hand::say(&mut desk, Message::Pick(None));
    desk.run();
    assert_eq!(key(&desk), upper);
}
