//! Which coop a run has: stated, or the one that stands in it; its name, and the runs that name it.

use crate::hand;
use crate::hand::{Desk, click, click_on, example, fill, on_page, plan_of, says, spot, window};
use desktop::editor::{Editor, ManyMessage, Message, Page};
use drawing::Thing;
use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use plan::{Edit, Plan, Point};
use words::Words;

/// The example with a second run over the same ground that names no coop.
fn two_runs() -> Plan {
    let mut plan = example();
    let mut second = plan.runs[0].clone();
    (second.id, second.name, second.coop) = ("run-2".to_owned(), "Run 2".to_owned(), None);
    plan.runs.push(second);
    plan
}

#[test]
fn the_flock_stays_with_the_run_it_stands_in_when_the_run_that_named_it_goes() {
    let mut desk = on_page(two_runs(), Page::Run, [1280.0, 3200.0], Words::default());
    let say = |desk: &mut Desk, message: Message| {
        desk.state_mut().as_mut().unwrap().say(message);
        desk.run();
    };
    say(&mut desk, Message::Pick(Some(Thing::Run { run: 0 })));
    say(&mut desk, Message::Remove);
    assert_eq!(plan_of(&desk).runs.len(), 1);
    let birds = plan_of(&desk).coop.unwrap().birds();
    assert!(says(&desk, &format!("for {birds} hens")), "the title counts the flock");
    assert!(says(&desk, "that is assumed"));
    assert!(plan::assumed(&plan_of(&desk)).iter().any(|one| one.key == "runs[0].coop"));
    // Moved out of it, the flock is asked about.
    let finds = |desk: &Desk, id: &str| window(desk).editor().findings().all().any(|one| one.id == id);
    assert!(!finds(&desk, "coop-in-no-run"));
    let mut coop = plan_of(&desk).coop.unwrap();
    coop.at = Point::new(-40.0, -40.0);
    say(&mut desk, Message::Make(Edit::SetCoop { coop: Some(coop) }));
    assert!(finds(&desk, "coop-in-no-run"));
    assert!(says(&desk, "No coop stands in it."));
    // Stated on its page, it is the run's, and then it stands outside it.
    let id = plan_of(&desk).coop.unwrap().id;
    click_on(&mut desk, &id);
    assert_eq!(plan_of(&desk).runs[0].coop.as_ref(), Some(&id));
    assert!(finds(&desk, "coop-outside") && !finds(&desk, "coop-in-no-run"));
    click_on(&mut desk, "the one in it");
    assert_eq!(plan_of(&desk).runs[0].coop, None);
}

#[test]
fn an_assumed_coop_goes_along_with_its_run_and_to_the_next() {
    let mut plan = example();
    plan.runs[0].coop = None;
    let was = plan.coop.clone().unwrap();
    let mut editor = Editor::new(plan, Words::default());
    editor.receive(Message::Pick(Some(Thing::Run { run: 0 })));
    editor.receive(Message::Nudge(2.0, 0.0));
    assert!((editor.plan().coop.as_ref().unwrap().at.east_m - was.at.east_m - 2.0).abs() < 1e-9);
    let (run, worked) = editor.run().unwrap();
    let next = moves::over_side(editor.plan(), run, worked.lay.as_ref(), 1, moves::Motion::TurnOver).unwrap();
    assert_eq!(next.run.coop, Some(was.id), "it is to be towed there");
}

#[test]
fn a_coop_that_gets_another_name_keeps_its_runs() {
    let mut desk = on_page(example(), Page::Ground, [1280.0, 3200.0], Words::default());
    fill(&mut desk, "Name of the coop", "Ark");
    let named = plan_of(&desk);
    assert_eq!((named.coop.unwrap().id.as_str(), named.runs[0].coop.as_deref()), ("Ark", Some("Ark")));
    plan::read(&plan::write(&plan_of(&desk))).unwrap();
    assert_eq!(window(&desk).editor().deeds().0.len(), 1);
    fill(&mut desk, "Name of the coop", " ");
    assert_eq!(plan_of(&desk).coop.unwrap().id, "Ark", "a coop without a name could not be meant");
    desk.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    desk.run();
    assert_eq!(plan_of(&desk), example());
}

#[test]
fn no_two_coops_have_one_name() {
    let mut plan = example();
    let mut other = plan.coop.clone().unwrap();
    other.id = "Ark".to_owned();
    plan.other_coops.push(other);
    let mut editor = Editor::new(plan, Words::default());
    editor.receive(Message::Many(ManyMessage::Rename(Thing::Coop { coop: 0 }, "Ark".to_owned())));
    assert_eq!(editor.plan().coop.as_ref().unwrap().id, "Ark 2");
}

#[test]
fn the_list_names_the_coop_by_its_key() {
    let mut desk = on_page(example(), Page::Ground, [1280.0, 800.0], Words::default());
    desk.state_mut().as_mut().unwrap().say(Message::Pick(Some(Thing::Coop { coop: 0 })));
    for key in [Key::L, Key::F2] {
        desk.key_press(key);
        desk.run();
    }
    hand::overtype(&mut desk, "Ark");
    assert_eq!(plan_of(&desk).coop.unwrap().id, "Ark");
}

#[test]
fn a_further_coop_is_set_down_by_its_button_its_command_and_doubled() {
    let mut desk = on_page(example(), Page::Ground, [1280.0, 2600.0], Words::default());
    let own = plan_of(&desk).coop.unwrap();
    // The tool that there was moves the one there is, and says so.
    let at = desk.get_by_role_and_label(Role::Button, "Coop").rect().center();
    click(&mut desk, at);
    assert!(says(&desk, "it moves there. “Another coop” sets down one more."));
    desk.key_press(Key::Escape);
    desk.run();
    click_on(&mut desk, "Another coop");
    assert!(says(&desk, "Click where the coop’s middle stands."));
    let at = spot(&desk, Point::new(20.0, 60.0));
    click(&mut desk, at);
    let plan = plan_of(&desk);
    assert_eq!((plan.coop.as_ref(), plan.other_coops.len()), (Some(&own), 1));
    let other = &plan.other_coops[0];
    assert!((other.at.east_m - 20.0).abs() < 0.5 && (other.at.north_m - 60.0).abs() < 0.5 && other.id != own.id);
    assert_eq!(window(&desk).editor().picked(), Some(Thing::Coop { coop: 1 }));
    // By its command a third, which is not the second moved.
    desk.key_press_modifiers(Modifiers::COMMAND, Key::K);
    desk.run();
    desk.event(egui::Event::Text("place another coop".to_owned()));
    desk.run();
    desk.key_press(Key::Enter);
    desk.run();
    let at = spot(&desk, Point::new(30.0, 62.0));
    click(&mut desk, at);
    assert_eq!(plan_of(&desk).coops().count(), 3);
    // And one like it beside it.
    click_on(&mut desk, "Double it");
    let plan = plan_of(&desk);
    let ids: std::collections::BTreeSet<&str> = plan.coops().map(|coop| coop.id.as_str()).collect();
    assert_eq!((plan.coops().count(), ids.len()), (4, 4), "each by its own name");
    assert_eq!(window(&desk).editor().picked(), Some(Thing::Coop { coop: 3 }));
    for count in [3, 2, 1] {
        desk.key_press_modifiers(Modifiers::COMMAND, Key::Z);
        desk.run();
        assert_eq!(plan_of(&desk).coops().count(), count);
    }
}

#[test]
fn a_coop_without_a_name_is_called_by_its_number_everywhere() {
    let mut plan = example();
    plan.runs.truncate(1);
    plan.other_coops.clear();
    let mut desk = on_page(plan, Page::Ground, [1280.0, 3200.0], Words::default());
    for (id, at) in [("coop-2", Point::new(38.0, 44.0)), ("coop-3", Point::new(-30.0, -30.0))] {
        let mut coops = plan_of(&desk).other_coops;
        assert_eq!(plan_of(&desk).free_coop_id(), id);
        coops.push(plan::Coop { birds: Some(40), ..plan::Coop::new(id, at) });
        desk.state_mut().as_mut().unwrap().say(Message::Make(Edit::SetOtherCoops { other_coops: coops }));
        hand::settle(&mut desk);
    }
    desk.get_by_label("Coop 2 on the map");
    desk.state_mut().as_mut().unwrap().say(Message::Pick(Some(Thing::Coop { coop: 1 })));
    desk.run();
    // Its field shows the name that it goes by, and takes another.
    assert_eq!(desk.get_by_role_and_label(Role::TextInput, "Name of Coop 2").value().as_deref(), Some("Coop 2"));
    assert!(!says(&desk, "coop-"), "its id is no word for the keeper");
    assert!(says(&desk, "Coop 3 stands in no run, and its flock of 40 with it"), "the finding");
    desk.state_mut().as_mut().unwrap().say(Message::Open(Page::Run));
    hand::settle(&mut desk);
    desk.get_by_label("Coop 2");
    assert!(!says(&desk, "coop-"));
    desk.key_press(Key::L);
    desk.run();
    assert!(says(&desk, "Coop 2") && !says(&desk, "coop-"), "the list");
    // No other may be called what it goes by.
    desk.state_mut()
        .as_mut()
        .unwrap()
        .say(Message::Many(ManyMessage::Rename(Thing::Coop { coop: 0 }, "Coop 2".to_owned())));
    assert_eq!(plan_of(&desk).coop.unwrap().id, "Coop 4");
    let german = Words { language: words::Language::German, ..Words::default() };
    let plan = plan_of(&desk);
    let desk = on_page(plan, Page::Ground, [1280.0, 3200.0], german);
    desk.get_by_label("Stall 2 auf der Karte");
    assert!(says(&desk, "Stall 3 steht in keinem Auslauf"));
}

#[test]
fn birds_of_a_second_coop_in_the_run_are_counted_with_it() {
    let mut plan = example();
    plan.runs.truncate(1);
    plan.other_coops.clear();
    let own = plan.coop.clone().unwrap();
    let mut desk = on_page(plan, Page::Run, [1280.0, 3200.0], Words::default());
    let birds = own.birds();
    assert!(says(&desk, &format!("for {birds} hens")));
    let at = Point::new(own.at.east_m + 8.0, own.at.north_m);
    let second = plan::Coop { birds: Some(40), ..plan::Coop::new("coop-2", at) };
    let say = |desk: &mut Desk, message: Message| {
        desk.state_mut().as_mut().unwrap().say(message);
        hand::settle(desk);
    };
    say(&mut desk, Message::Make(Edit::SetOtherCoops { other_coops: vec![second.clone()] }));
    let all = birds + 40;
    assert!(says(&desk, &format!("for {all} hens")), "the title");
    let belong =
        format!("{} and Coop 2 belong to it, with {all} hens in all: what else stands in it counts too.", own.id);
    assert!(says(&desk, &belong), "the section");
    assert!(!says(&desk, "stands in no run"));
    // Ducks among them: birds.
    let ducks = plan::Coop { kind: Some(plan::CoopKind::Duck), ..second };
    say(&mut desk, Message::Make(Edit::SetOtherCoops { other_coops: vec![ducks] }));
    assert!(says(&desk, &format!("for {all} birds")));
    // It goes along with the run, alone and among others.
    say(&mut desk, Message::Pick(Some(Thing::Run { run: 0 })));
    say(&mut desk, Message::Nudge(2.0, 0.0));
    let moved = plan_of(&desk);
    let east_m = [moved.coop.as_ref().unwrap().at.east_m - own.at.east_m, moved.other_coops[0].at.east_m - at.east_m];
    assert!(east_m.iter().all(|by| (by - 2.0).abs() < 1e-9), "{east_m:?}");
    say(&mut desk, Message::Many(ManyMessage::Also(Thing::KeepOut { keep_out: 0 })));
    say(&mut desk, Message::Nudge(2.0, 0.0));
    let moved = plan_of(&desk);
    assert!((moved.other_coops[0].at.east_m - at.east_m - 4.0).abs() < 1e-9);
    assert!((moved.coop.as_ref().unwrap().at.east_m - own.at.east_m - 4.0).abs() < 1e-9);
    say(&mut desk, Message::Undo);
    say(&mut desk, Message::Undo);
    let back = plan_of(&desk);
    assert!((back.other_coops[0].at.east_m - at.east_m).abs() < 1e-9, "one step each");
}
