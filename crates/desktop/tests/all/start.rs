//! From a cold start to figures with nothing but rolls, and the way back.

use crate::hand;
use crate::hand::{click_on, cold, drag, settle, spot, window};
use desktop::editor::{Lesson, Message, SaveState};
use drawing::{Form, Role, Thing};
use egui::Key;
use egui_kittest::kittest::{NodeT, Queryable};
use plan::Point;
use words::Words;

#[test]
fn two_clicks_from_the_example_to_figures() {
    let mut desk = cold();
    desk.get_by_label("example farm");
    // The first button of the head is the way to the keeper's own plan.
    click_on(&mut desk, "Start with your own rolls");
    desk.get_by_label("How much netting do you have?");
    assert!(desk.query_by_label("Kettle Field, first grass").is_none());
    click_on(&mut desk, "Lay it out");
    settle(&mut desk);
    let editor = window(&desk).editor();
    let (run, worked) = editor.run().unwrap();
    let lay = worked.lay.as_ref().unwrap();
    assert_eq!((run.outline.len(), lay.nets.len(), lay.posts.len()), (4, 2, 28));
    assert!(lay.corner_miss_m < 1e-6 && lay.spare_m < 1e-6, "whole panels: every corner on a post, nothing over");
    let strip = worked.strip.as_ref().unwrap();
    let weakest = worked.volts.as_ref().unwrap().weakest.unwrap();
    let words = Words::default();
    desk.get_by_label("Nets 2 of 2");
    desk.get_by_label("Posts 28");
    desk.get_by_label(&format!("Braces {} needed", lay.braces()));
    let (ground, unit) = words.area_parts(strip.area_m2);
    desk.get_by_label(&format!("Strip {ground} {unit} · {} min", words.minutes_figure(strip.minutes)));
    let said = words.likely_kilovolts(weakest.peak_kv, weakest.low_kv, weakest.high_kv);
    desk.get_by_label(&format!("Weakest {said}, not measured yet"));
}

#[test]
fn what_is_typed_is_followed_at_once_and_a_bad_answer_is_said() {
    let mut desk = cold();
    click_on(&mut desk, "Start with your own rolls");
    for (label, bad, sentence) in [
        ("Rolls", "two", "“two” is no number"),
        ("Rolls", "-3", "Less than nothing"),
        ("Rolls", "0", "Nothing at all"),
        ("Length of one", "10000000", "too much here"),
        ("Length of one", "", "Nothing is typed yet"),
        ("Posts on one", "1", "too little here"),
    ] {
        let before = window(&desk).editor().question().unwrap().rolls;
        hand_type(&mut desk, label, bad);
        assert_eq!(window(&desk).editor().question().unwrap().rolls, before, "{label}: {bad:?} was taken");
        // Nothing is refused while it is being typed.
        assert_eq!(desk.query_all_by_label_contains(sentence).count(), 0, "{label}: {bad:?} is half a word yet");
        desk.key_press(Key::Tab);
        desk.run();
        assert!(desk.query_all_by_label_contains(sentence).count() > 0, "{label}: {bad:?} is answered");
        assert_eq!(window(&desk).editor().question().unwrap().rolls, before, "{label}: {bad:?} was taken");
        click_on(&mut desk, "Lay it out");
        assert!(
            window(&desk).editor().question().is_some(),
            "{label}: {bad:?} stands there, an older answer was laid out"
        );
    }
    // All that is to be mended is said, each with its field.
    for said in ["Rolls: Nothing at all", "Length of one: Nothing is typed yet", "Posts on one: "] {
        assert!(desk.query_all_by_label_contains(said).count() > 0, "{said}");
    }
    for (label, text, want) in [
        ("Rolls", "3", (3, 50.0, 14)),
        ("Length of one", "25,5", (3, 25.5, 14)),
        ("Length of one", "164 ft", (3, 164.0 * 0.3048, 14)),
        ("Posts on one", "16", (3, 164.0 * 0.3048, 16)),
    ] {
        hand_type(&mut desk, label, text);
        let rolls = window(&desk).editor().question().unwrap().rolls;
        assert_eq!((rolls.count, rolls.posts), (want.0, want.2), "{label}: {text}");
        assert!((rolls.length_m - want.1).abs() < 1e-9, "{label}: {text}: {}", rolls.length_m);
    }
    click_on(&mut desk, "Rolls: more");
    assert_eq!(window(&desk).editor().question().unwrap().rolls.count, 4);
}

fn hand_type(desk: &mut hand::Desk, label: &str, text: &str) {
    click_on(desk, label);
    desk.key_press_modifiers(egui::Modifiers::COMMAND, Key::A);
    desk.run();
    if text.is_empty() {
        desk.key_press(Key::Backspace);
    } else {
        desk.event(egui::Event::Text(text.to_owned()));
    }
    desk.run();
}

#[test]
fn the_rolls_have_the_keys_and_the_way_on_stays_under_the_hand() {
    for language in words::Language::ALL {
        let words = Words { language, ..Words::default() };
        let opening = desktop::Opening { plan: hand::example(), words, ..desktop::Opening::default() };
        let mut desk = hand::open(opening, [1280.0, 800.0]);
        let lay = words.text(words::texts::Rolls::LayItOut);
        desk.key_press_modifiers(egui::Modifiers::COMMAND, Key::N);
        desk.run();
        let stood = desk.get_by_label(lay).rect();
        desk.event(egui::Event::Text("3".to_owned()));
        desk.run();
        assert_eq!(window(&desk).editor().question().unwrap().rolls.count, 3);
        desk.key_press(Key::Tab);
        desk.run();
        assert_eq!(desk.get_by_label(lay).rect(), stood, "one panel over is a longer sentence");
        hand::click(&mut desk, stood.center());
        settle(&mut desk);
        assert_eq!(window(&desk).editor().plan().store.nets[0].count, Some(3));
    }
}

#[test]
fn an_odd_panel_is_doubled_back() {
    let mut desk = cold();
    click_on(&mut desk, "Start with your own rolls");
    hand_type(&mut desk, "Rolls", "3");
    click_on(&mut desk, "Lay it out");
    settle(&mut desk);
    let (_, worked) = window(&desk).editor().run().unwrap();
    let lay = worked.lay.as_ref().unwrap();
    assert!((lay.spare_m - 50.0 / 13.0).abs() < 1e-6, "39 panels: one is over, {} m", lay.spare_m);
}

#[test]
fn the_first_run_is_dragged_onto_the_ground_with_its_coop() {
    let mut desk = cold();
    click_on(&mut desk, "Start with your own rolls");
    click_on(&mut desk, "Lay it out");
    settle(&mut desk);
    let editor = window(&desk).editor();
    assert_eq!(editor.lesson(), Lesson::Drag);
    let ground = spot(&desk, Point::new(6.0, -4.0));
    let (run, coop) = (editor.plan().runs[0].clone(), editor.plan().coop.clone().unwrap());
    drag(&mut desk, ground, ground + egui::vec2(60.0, 30.0));
    let editor = window(&desk).editor();
    let px_per_m = editor.view().px_per_m;
    let (moved, coop_moved) = (&editor.plan().runs[0], editor.plan().coop.as_ref().unwrap());
    let east_m = moved.outline[0].east_m - run.outline[0].east_m;
    assert!((east_m - 60.0 / px_per_m).abs() < 0.1, "{east_m}");
    assert!((coop_moved.at.east_m - coop.at.east_m - east_m).abs() < 1e-9, "the coop goes along");
    assert_eq!(editor.lesson(), Lesson::ReadLine);
    desk.key_press_modifiers(egui::Modifiers::COMMAND, Key::Z);
    desk.run();
    let editor = window(&desk).editor();
    assert_eq!(editor.plan().runs[0], run, "one step");
    assert_eq!(editor.plan().coop.as_ref(), Some(&coop));
    assert_eq!(editor.deeds().0, [plan::Deed::LayOut]);
    assert_eq!(editor.lesson(), Lesson::ReadLine);
    hand::say(&mut desk, Message::Pick(Some(Thing::Run { run: 0 })));
    hand::say(&mut desk, Message::Remove);
    assert_eq!(window(&desk).editor().lesson(), Lesson::Done, "no line is left to be read");
}

#[test]
fn the_question_is_left_with_esc_and_the_example_is_as_it_was() {
    let mut desk = cold();
    let before = window(&desk).editor().plan().clone();
    click_on(&mut desk, "Start with your own rolls");
    desk.key_press(Key::Escape);
    desk.run();
    settle(&mut desk);
    assert_eq!(*window(&desk).editor().plan(), before);
    assert_eq!(window(&desk).editor().save_state(), SaveState::Example);
    click_on(&mut desk, "Start with your own rolls");
    click_on(&mut desk, "Look round the example farm");
    settle(&mut desk);
    assert_eq!(*window(&desk).editor().plan(), before);
    desk.get_by_label("example farm");
}

#[test]
fn laying_out_is_one_step_that_is_undone_and_redone() {
    let mut desk = cold();
    click_on(&mut desk, "Start with your own rolls");
    click_on(&mut desk, "Lay it out");
    settle(&mut desk);
    let laid = window(&desk).editor().plan().clone();
    assert_eq!(window(&desk).editor().deeds(), (vec![plan::Deed::LayOut], Vec::new()));
    desk.key_press_modifiers(egui::Modifiers::COMMAND, Key::Z);
    settle(&mut desk);
    desk.get_by_label("How much netting do you have?");
    assert_eq!(window(&desk).editor().deeds(), (Vec::new(), vec![plan::Deed::LayOut]));
    desk.key_press_modifiers(egui::Modifiers::COMMAND | egui::Modifiers::SHIFT, Key::Z);
    settle(&mut desk);
    assert_eq!(*window(&desk).editor().plan(), laid);
    assert!(window(&desk).editor().save_state().is_unsaved());
}

/// The key of volts comes once they are worked out: a corner of what was laid out steps from under it, with its plate.
/// A first run, laid out in a window of that size.
fn laid_out(size: [f32; 2]) -> hand::Desk {
    let mut desk = hand::open(desktop::Opening { plan: hand::example(), ..Default::default() }, size);
    desk.key_press_modifiers(egui::Modifiers::COMMAND, Key::N);
    desk.run();
    desk.key_press(Key::Enter);
    settle(&mut desk);
    desk
}

#[test]
fn no_plate_of_the_map_covers_a_corner_of_what_was_laid_out() {
    const PLATE_PX: f32 = 34.0;
    let mut would = 0;
    for [wide, high] in [[900.0, 600.0], [1280.0, 800.0]] {
        let desk = laid_out([wide, high]);
        let editor = window(&desk).editor();
        let (view, outline) = (editor.view(), &editor.run().unwrap().0.outline);
        let under = |view: &drawing::View, [left, top, right, foot]: [f32; 4]| {
            let seen = |at: &Point| {
                let [x, y] = view.spot(*at);
                (left - PLATE_PX..right + PLATE_PX).contains(&x) && (top - PLATE_PX..foot + PLATE_PX).contains(&y)
            };
            outline.iter().filter(|at| seen(at)).count()
        };
        for plate in view.kept.iter().flatten() {
            assert_eq!(under(view, *plate), 0, "{wide} x {high}: under {plate:?}");
        }
        // Fitted as it is while no key is there.
        let ends = |of: fn(&Point) -> f64| {
            let all = outline.iter().map(of);
            (all.clone().fold(f64::INFINITY, f64::min), all.fold(f64::NEG_INFINITY, f64::max))
        };
        let (east, north) = (ends(|at| at.east_m), ends(|at| at.north_m));
        let bounds = (Point::new(east.0, north.0), Point::new(east.1, north.1));
        let bare = drawing::View::fit(Some(bounds), view.size, 100.0, view.theme);
        would += view.kept[1].map_or(0, |key| under(&bare, key));
    }
    assert!(would > 0, "no key was in the way");
}

#[test]
fn what_feeds_the_run_is_in_sight_too() {
    for [wide, high] in [[900.0, 600.0], [1280.0, 800.0]] {
        let desk = laid_out([wide, high]);
        let editor = window(&desk).editor();
        let fed = editor.drawing().shapes().filter_map(|shape| match (&shape.form, shape.role) {
            (Form::Mark { at, .. }, Role::Energizer | Role::EarthStake) => Some(editor.view().spot(*at)),
            _ => None,
        });
        let fed: Vec<[f32; 2]> = fed.collect();
        assert_eq!(fed.len(), 2, "an energizer and its stake");
        let [width, height] = editor.view().size;
        assert!(
            fed.iter().all(|&[x, y]| (12.0..width - 12.0).contains(&x) && (12.0..height - 12.0).contains(&y)),
            "{wide} x {high}: {fed:?} on a map of {width} x {height}"
        );
    }
}

#[test]
fn tab_goes_from_field_to_field_and_the_arrows_step_a_figure() {
    let mut desk = cold();
    click_on(&mut desk, "Start with your own rolls");
    let has_keys = |desk: &hand::Desk, label: &str| {
        let field = desk.get_by_label(label);
        field.accesskit_node().is_focused()
    };
    click_on(&mut desk, "Rolls");
    for label in ["Length of one", "Posts on one", "Lay it out"] {
        desk.key_press(Key::Tab);
        desk.run();
        assert!(has_keys(&desk, label), "{label}");
    }
    let rolls = |desk: &hand::Desk| window(desk).editor().question().unwrap().rolls;
    let before = rolls(&desk);
    click_on(&mut desk, "Rolls");
    for _ in 0..2 {
        desk.key_press(Key::ArrowUp);
        desk.run();
    }
    desk.key_press(Key::ArrowDown);
    desk.run();
    assert_eq!(rolls(&desk).count, before.count + 1);
    assert!(has_keys(&desk, "Rolls"));
}

/// A desk on which an empty plan was begun by the plan's menu.
fn emptied() -> hand::Desk {
    let mut desk = cold();
    click_on(&mut desk, "Plan: new, open, save");
    click_on(&mut desk, "New, empty");
    settle(&mut desk);
    assert!(window(&desk).editor().question().is_none(), "nobody is asked who wants it empty");
    desk
}

#[test]
fn an_empty_plan_shows_the_ways_in_until_something_is_done() {
    const ASKS: &str = "This plan is empty. How many rolls do you have?";
    let mut desk = emptied();
    desk.get_by_label(ASKS);
    // The map beneath is as any other.
    let at = desk.get_by_label("Map").rect().left_top() + egui::vec2(60.0, 60.0);
    drag(&mut desk, at, at + egui::vec2(40.0, 0.0));
    desk.key_press(Key::R);
    desk.run();
    assert!(desk.query_by_label(ASKS).is_none(), "a tool in the hand is a way in");
    assert!(window(&desk).editor().in_hand().is_some());
    desk.get_by_label_contains("No net is in the store yet");
    assert!(!hand::says(&desk, "no net is left"));
    hand::click(&mut desk, at + egui::vec2(100.0, 100.0));
    desk.get_by_label_contains("no net is in the store yet");
    desk.key_press(Key::Escape);
    desk.run();
    // Nets can be stated before there is a run.
    click_on(&mut desk, "Add a kind of net");
    assert_eq!(window(&desk).editor().plan().store.nets.len(), 1);
    assert!(desk.query_by_label(ASKS).is_none(), "it is no longer empty");

    let mut desk = emptied();
    click_on(&mut desk, "Start with your own rolls");
    desk.get_by_label("How much netting do you have?");
    click_on(&mut desk, "Back to the plan");
    desk.get_by_label(ASKS);
    desk.get_by_label("Start with your own rolls").focus();
    desk.run();
    desk.key_press(Key::Enter);
    desk.run();
    click_on(&mut desk, "Lay it out");
    settle(&mut desk);
    assert!(desk.query_by_label(ASKS).is_none());
    assert_eq!(window(&desk).editor().plan().runs.len(), 1);

    let mut desk = emptied();
    click_on(&mut desk, "Draw the paddock first");
    assert!(window(&desk).editor().tool().draws(desktop::tool::Drawn::Paddock));
    desk.key_press(Key::Escape);
    desk.run();
    click_on(&mut desk, "Bring in a boundary");
    desk.get_by_label("File name");
    desk.key_press(Key::Escape);
    desk.run();
    click_on(&mut desk, "Look round the example farm");
    settle(&mut desk);
    desk.get_by_label("example farm");
    assert!(desk.query_by_label(ASKS).is_none());
}

#[test]
fn what_an_empty_plan_holds_already_is_not_left_unasked() {
    let mut desk = emptied();
    hand::say(&mut desk, Message::Make(plan::Edit::SetTitle { title: "Lower meadow".to_owned() }));
    click_on(&mut desk, "Start with your own rolls");
    desk.get_by_label("Save what you changed?");
}

#[test]
fn the_example_is_a_way_on_from_the_question_too() {
    let mut desk = emptied();
    desk.key_press_modifiers(egui::Modifiers::COMMAND, Key::N);
    desk.run();
    for way in ["Back to the plan", "Draw the paddock first", "Bring in a boundary"] {
        desk.get_by_label(way);
    }
    click_on(&mut desk, "Look round the example farm");
    settle(&mut desk);
    assert_eq!(*window(&desk).editor().plan(), hand::example());
    assert_eq!(window(&desk).editor().save_state(), SaveState::Example);
}
