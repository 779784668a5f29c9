//! The list of everything on the map, and the nodes that a screen reader walks.

use crate::hand;
use crate::hand::{Desk, click_on, example, on_page, plan_of, plans, settle, window};
use desktop::editor::{ManyMessage, Message, Page};
use drawing::Thing;
use egui::accesskit::{Action, Role};
use egui::{Event, Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use plan::{Deed, Hazard, HazardKind, NetKind, Plan, Point, Rest, Run};
use words::Words;

fn desk(plan: Plan, page: Page) -> Desk {
    let mut desk = on_page(plan, page, [1280.0, 800.0], Words::default());
    settle(&mut desk);
    desk
}

fn press(desk: &mut Desk, key: Key) {
    desk.key_press(key);
    desk.run();
}

fn types(desk: &mut Desk, text: &str) {
    desk.event(Event::Text(text.to_owned()));
    desk.run();
}

fn picked(desk: &Desk) -> Option<Thing> {
    window(desk).editor().picked()
}

/// Role, name and value of every node.
fn tree(desk: &Desk) -> Vec<(Role, String, String)> {
    let nodes = desk.root().children_recursive();
    let told = nodes.map(|node| {
        let node = node.accesskit_node();
        let value = node.value().unwrap_or_default();
        // What only tells has its words as its value.
        (node.role(), node.label().filter(|label| !label.is_empty()).unwrap_or_else(|| value.clone()), value)
    });
    told.collect()
}

fn rows(desk: &Desk) -> Vec<String> {
    tree(desk).into_iter().filter(|(role, ..)| *role == Role::Row).map(|(_, name, _)| name).collect()
}

/// Every node that a keeper can act on has a role and a name.
fn check_names(desk: &Desk, about: &str) -> usize {
    let mut count = 0;
    for node in desk.root().children_recursive() {
        let node = node.accesskit_node();
        let acts = [Action::Click, Action::Focus].into_iter().any(|action| node.data().supports_action(action));
        if !acts || matches!(node.role(), Role::ScrollView | Role::Window | Role::ScrollBar) {
            continue;
        }
        count += 1;
        let named = node.label().is_some_and(|label| !label.trim().is_empty());
        assert!(named, "{about}: {:?} {:?} at {:?} has no name", node.role(), node.value(), node.bounding_box());
        let vague = matches!(node.role(), Role::Unknown | Role::GenericContainer);
        assert!(!vague, "{about}: {:?} has no role", node.label());
    }
    count
}

#[test]
fn the_list_opens_by_its_key_and_is_walked_without_moving_anything() {
    let mut desk = desk(example(), Page::Run);
    press(&mut desk, Key::L);
    let first = rows(&desk);
    assert!(first[0].starts_with("Paddock: "), "{first:?}");
    press(&mut desk, Key::ArrowDown);
    assert_eq!(picked(&desk), Some(Thing::KeepOut { keep_out: 0 }), "heads are passed by");
    press(&mut desk, Key::ArrowDown);
    press(&mut desk, Key::ArrowUp);
    assert_eq!(picked(&desk), Some(Thing::KeepOut { keep_out: 0 }));
    press(&mut desk, Key::End);
    assert!(matches!(picked(&desk), Some(Thing::Finding { .. })));
    press(&mut desk, Key::Home);
    assert_eq!(picked(&desk), Some(Thing::Boundary));
    assert_eq!(*window(&desk).editor().plan(), example(), "arrows walk the list");
    assert!(window(&desk).editor().is_listing());
    press(&mut desk, Key::L);
    assert!(!window(&desk).editor().is_listing() && rows(&desk).iter().all(|row| !row.starts_with("Paddock: ")));
    // Now they nudge what is picked.
    press(&mut desk, Key::ArrowDown);
    assert_ne!(*window(&desk).editor().plan(), example());
}

#[test]
fn every_finding_is_listed_with_its_sentence_and_leads_to_its_page() {
    // High enough for every row.
    let mut desk = on_page(example(), Page::Book, [1280.0, 9000.0], Words::default());
    settle(&mut desk);
    press(&mut desk, Key::L);
    let findings = window(&desk).editor().findings().clone();
    let listed = rows(&desk);
    for finding in findings.runs.iter().flatten().chain(&findings.plan) {
        let count = listed.iter().filter(|row| **row == finding.message).count();
        let same = findings.runs.iter().flatten().chain(&findings.plan).filter(|one| one.message == finding.message);
        assert_eq!(count, same.count(), "{}", finding.message);
    }
    let (place, buried) = findings.plan.iter().enumerate().find(|(_, one)| one.id == "buried-services").unwrap();
    assert!(buried.at.is_empty(), "it has no place on the map");
    assert_eq!(window(&desk).editor().page(), Page::Book);
    click_on(&mut desk, &buried.message);
    assert_eq!(picked(&desk), Some(Thing::Finding { run: None, finding: place }));
    assert_eq!(window(&desk).editor().page(), Page::Ground);
    assert!(window(&desk).editor().is_listing(), "the list stays until it is left");
    press(&mut desk, Key::Enter);
    assert!(!window(&desk).editor().is_listing());
    assert_eq!(window(&desk).editor().page(), Page::Ground);
    desk.get_by_label_contains(&buried.message);
    // One of a run goes to the page that tells of it.
    press(&mut desk, Key::L);
    let weak = findings.runs[0].iter().find(|one| one.id == "not-measured").unwrap();
    click_on(&mut desk, &weak.message);
    assert_eq!(window(&desk).editor().page(), Page::Book);
    press(&mut desk, Key::Enter);
    assert!(!window(&desk).editor().is_listing());
    assert_eq!(window(&desk).editor().led(), Some(&*weak.message));
}

#[test]
fn the_list_has_every_thing_with_its_figures() {
    let mut desk = desk(example(), Page::Run);
    press(&mut desk, Key::L);
    let mut seen = std::collections::BTreeSet::new();
    for _ in 0..8 {
        seen.extend(rows(&desk));
        press(&mut desk, Key::PageDown);
    }
    let has = |start: &str| seen.iter().any(|row| row.starts_with(start));
    for start in [
        "Paddock: ",
        "Pond: ",
        "Old well: 9 m²",
        "11 kV line: ",
        "Footpath: ",
        "Coop quince: 90 hens",
        "Round Quince House: ",
        "Corner 1 of Round Quince House: 24.0 m east, 17.4 m north",
        "Net 1 of Round Quince House: 50.0 m",
        "Energizer of Round Quince House",
        "Feed point of Round Quince House",
    ] {
        assert!(has(start), "{start} in {seen:?}");
    }
    let lay = window(&desk).editor().run().unwrap().1.lay.clone().unwrap();
    let nets = seen.iter().filter(|row| row.starts_with("Net ")).count();
    assert_eq!(nets, lay.nets.len());
    let run = seen.iter().find(|row| row.starts_with("Round Quince House: ")).unwrap();
    assert!(run.contains("m²") && run.contains("nets") && run.contains("kV"), "{run}");
}

#[test]
fn typing_finds_and_a_click_picks_and_names_are_given() {
    let mut desk = desk(example(), Page::Ground);
    press(&mut desk, Key::L);
    desk.key_press_modifiers(Modifiers::COMMAND, Key::F);
    desk.run();
    types(&mut desk, "well");
    let found = rows(&desk);
    assert!(
        found.iter().all(|row| row.to_lowercase().contains("well")) && found.len() == 5,
        "a well and its corners: {found:?}"
    );
    press(&mut desk, Key::ArrowDown);
    assert_eq!(picked(&desk), Some(Thing::KeepOut { keep_out: 1 }));
    press(&mut desk, Key::F2);
    hand::overtype(&mut desk, "Dry well");
    assert_eq!(window(&desk).editor().plan().ground.keep_outs[1].name, "Dry well");
    click_on(&mut desk, "Corner 1 of Dry well: 121.0 m east, 34.0 m north");
    assert_eq!(picked(&desk), Some(Thing::KeepOutCorner { keep_out: 1, vertex: 0 }));
    hand::fill(&mut desk, "East of Corner 1 of Dry well", "120.5");
    let plan = window(&desk).editor().plan().clone();
    assert_eq!(plan.ground.keep_outs[1].outline[0], Point::new(120.5, 34.0));
    hand::fill(&mut desk, "North of Corner 1 of Dry well", "far");
    desk.key_press(Key::Escape);
    desk.run();
    assert_eq!(*window(&desk).editor().plan(), plan, "what is no figure changes nothing");
    assert_eq!(window(&desk).editor().deeds().0, [Deed::KeepOuts, Deed::MoveCorner]);
}

#[test]
fn a_run_is_named_in_the_list() {
    let mut desk = desk(example(), Page::Run);
    desk.state_mut().as_mut().unwrap().say(Message::Pick(Some(Thing::Run { run: 0 })));
    press(&mut desk, Key::L);
    press(&mut desk, Key::F2);
    hand::overtype(&mut desk, "By the gate");
    assert_eq!(window(&desk).editor().plan().runs[0].name, "By the gate");
    assert_eq!(window(&desk).editor().deeds().0, [Deed::Rename]);
}

#[test]
fn what_has_no_name_of_its_own_says_so_and_the_row_keeps_the_keys() {
    let mut desk = desk(example(), Page::Ground);
    press(&mut desk, Key::L);
    desk.key_press_modifiers(Modifiers::COMMAND, Key::F);
    desk.run();
    types(&mut desk, "well");
    press(&mut desk, Key::ArrowDown);
    press(&mut desk, Key::ArrowDown);
    let corner = |vertex| Some(Thing::KeepOutCorner { keep_out: 1, vertex });
    assert_eq!(picked(&desk), corner(0));
    press(&mut desk, Key::F2);
    desk.get_by_label("That has no name of its own.");
    press(&mut desk, Key::ArrowDown);
    assert_eq!(picked(&desk), corner(1), "the arrows still walk the list");
    assert_eq!(plan_of(&desk), example());
}

#[test]
fn rows_hide_and_lock_by_click_and_by_key_and_pick_several() {
    let mut desk = desk(example(), Page::Ground);
    press(&mut desk, Key::L);
    click_on(&mut desk, "Hide Pond");
    assert!(window(&desk).editor().plan().ground.keep_outs[0].hidden);
    click_on(&mut desk, "Show Pond");
    click_on(&mut desk, "Lock 11 kV line");
    assert!(window(&desk).editor().plan().ground.hazards[0].locked);
    // The keyboard stands on the row of the switch; a click takes it to another.
    click_on(&mut desk, "Pond: 450 m²");
    press(&mut desk, Key::H);
    press(&mut desk, Key::K);
    let pond = window(&desk).editor().plan().ground.keep_outs[0].clone();
    assert!(pond.hidden && pond.locked);
    desk.key_press_modifiers(Modifiers::SHIFT, Key::H);
    desk.run();
    assert!(!window(&desk).editor().plan().ground.keep_outs[0].hidden);
    assert_eq!(
        window(&desk).editor().deeds().0,
        [Deed::Hide, Deed::Hide, Deed::Lock, Deed::Hide, Deed::Lock, Deed::Hide]
    );
    desk.state_mut().as_mut().unwrap().say(Message::Many(ManyMessage::Also(Thing::Hazard { hazard: 1 })));
    desk.run();
    let chosen = tree(&desk);
    assert!(chosen.iter().any(|(role, name, _)| *role == Role::Row && name.starts_with("Footpath")));
    assert_eq!(window(&desk).editor().chosen().len(), 2);
}

#[test]
fn enter_opens_the_page_that_is_about_a_row_and_escape_leaves() {
    let mut desk = desk(example(), Page::Run);
    press(&mut desk, Key::L);
    press(&mut desk, Key::ArrowDown);
    press(&mut desk, Key::Enter);
    assert_eq!(window(&desk).editor().page(), Page::Ground);
    assert_eq!(picked(&desk), Some(Thing::KeepOut { keep_out: 0 }));
    assert!(!window(&desk).editor().is_listing());
    press(&mut desk, Key::L);
    press(&mut desk, Key::Escape);
    press(&mut desk, Key::Escape);
    assert!(!window(&desk).editor().is_listing() && picked(&desk).is_none());
}

#[test]
fn of_ten_thousand_things_only_the_rows_in_sight_are_made() {
    let earth = |index: usize| Hazard {
        name: format!("Earth {index}"),
        ..Hazard::new(HazardKind::ForeignEarth, vec![Point::new((index % 100) as f64, (index / 100) as f64)])
    };
    let mut plan = Plan::default();
    plan.ground.hazards = (0..10_000).map(earth).collect();
    let mut desk = desk(plan, Page::Ground);
    press(&mut desk, Key::L);
    assert!(rows(&desk).len() < 60, "{} rows", rows(&desk).len());
    press(&mut desk, Key::End);
    let last = rows(&desk);
    assert!(last.len() < 60);
    // The last rows are the findings'; above them the last of the earths.
    assert!(last.iter().any(|row| row.starts_with("Earth 9999")), "{last:?}");
    let nodes = tree(&desk).len();
    assert!(nodes < 900, "{nodes} nodes");
}

#[test]
fn every_node_that_can_be_acted_on_has_a_role_and_a_name_on_every_page() {
    for page in Page::ALL {
        let mut desk = desk(example(), page);
        let count = check_names(&desk, &format!("{page:?}"));
        assert!(count > 20, "{page:?}: {count}");
        press(&mut desk, Key::L);
        check_names(&desk, &format!("the list over {page:?}"));
    }
}

#[test]
fn so_has_every_one_while_lists_menus_questions_and_tools_are_open() {
    let open = |about: &str, mut desk: Desk, does: &dyn Fn(&mut Desk)| {
        let before = check_names(&desk, about);
        does(&mut desk);
        desk.run_steps(8);
        let count = check_names(&desk, about);
        assert_ne!(count, before, "{about} changed nothing that can be acted on");
    };
    let run = || desk(example(), Page::Run);
    let commands = |desk: &mut Desk, text: &str| {
        desk.key_press_modifiers(Modifiers::COMMAND, Key::K);
        desk.run();
        types(desk, text);
    };
    open("the commands", run(), &|desk| commands(desk, ""));
    open("the commands that are found", run(), &|desk| commands(desk, "paddock"));
    open("the chooser", run(), &|desk| desk.key_press_modifiers(Modifiers::COMMAND, Key::O));
    open("the plan's menu", run(), &|desk| click_on(desk, "Kettle Field, first grass"));
    open("the first question", hand::cold(), &|desk| click_on(desk, "Start with your own rolls"));
    let mut unrolling = run();
    click_on(&mut unrolling, "Unroll a run");
    open("a run that is unrolled", unrolling, &|desk| {
        let at = hand::spot(desk, Point::new(20.0, 20.0));
        hand::click(desk, at);
        desk.event(Event::PointerMoved(at + egui::vec2(80.0, -20.0)));
    });
}

#[test]
fn the_paddock_has_its_node_on_every_page() {
    for page in Page::ALL {
        let told = tree(&desk(example(), page));
        let paddock = told.iter().find(|(role, name, _)| *role == Role::Button && name == "Paddock on the map");
        assert!(paddock.is_some_and(|(_, _, figures)| !figures.is_empty()), "{page:?}");
    }
}

/// Two runs of ten nets each.
fn twenty_nets() -> Plan {
    let mut plan = example();
    let kind = NetKind { count: Some(20), ..NetKind::new("roll", 50.0, 14) };
    plan.store.nets = vec![kind];
    plan.ground = plan::Ground::default();
    plan.readings.clear();
    let square = |id: &str, east_m: f64| {
        let outline = [(0.0, 0.0), (125.0, 0.0), (125.0, 125.0), (0.0, 125.0)];
        let outline = outline.map(|(east, north)| Point::new(east + east_m, north)).to_vec();
        Run { id: id.to_owned(), outline, nets: Some(vec!["roll".to_owned(); 10]), ..Run::default() }
    };
    plan.runs = vec![square("east", 200.0), square("west", 0.0)];
    plan
}

#[test]
fn the_tree_of_twenty_nets_has_each_run_net_corner_and_brace_runs_before_their_parts() {
    let desk = desk(twenty_nets(), Page::Run);
    let tree = tree(&desk);
    let place =
        |name: &str| tree.iter().position(|(_, label, _)| label == name || label.starts_with(&format!("{name}: ")));
    for run in ["east", "west"] {
        let whole = place(&format!("{run} on the map")).unwrap_or_else(|| panic!("{run} in {tree:?}"));
        let figures = &tree[whole].2;
        assert!(figures.contains("m²") && figures.contains("10 nets"), "{figures}");
        let mut last = whole;
        for corner in 1..=4 {
            let at = place(&format!("Corner {corner} of {run}")).unwrap();
            assert!(at > last, "corners in order");
            last = at;
        }
        for net in 1..=10 {
            let at = place(&format!("Net {net} of {run}")).unwrap_or_else(|| panic!("net {net} of {run}"));
            assert!(at > last, "nets after corners");
            last = at;
        }
        let worked = window(&desk).editor().workup().runs.iter().find(|worked| worked.id == run).unwrap();
        let lay = worked.lay.clone().unwrap();
        let braces = lay.corners.iter().filter(|corner| corner.braced || corner.verdict != workup::Verdict::None);
        let told =
            tree.iter().filter(|(_, label, _)| label.starts_with("Brace at") && label.contains(&format!("of {run}")));
        assert_eq!(told.count(), braces.count());
    }
    assert!(place("east on the map") < place("west on the map"));
}

/// The example with a hedge, shade, a hollow, words, a drop point, an energizer, a picture, a gate, a fault and other grass:
/// and with what is told in whole sentences.
fn drawn_on() -> Plan {
    let mut plan = plans::drawn_on(example());
    "Oaks".clone_into(&mut plan.ground.shade[0].name);
    let outline = [(2.0, 2.0), (8.0, 2.0), (8.0, 6.0), (2.0, 6.0)].map(Point::from).to_vec();
    plan.ground.damp = vec![plan::Damp { name: "Hollow".to_owned(), outline, ..plan::Damp::default() }];
    plan.underlay = Some(plan::Underlay { locked: true, ..plans::picture("pictures/air.png") });
    let run = &mut plan.runs[0];
    run.energizer_at = Some(Point::new(12.0, 12.0));
    run.gates = vec![plan::Gate::new(plan::GateKind::Wheels)];
    run.pins = vec![plan::Pin::new(plan::PinKind::Corner, run.outline[1])];
    run.leakage_zones = vec![plan::LeakageZone { from_m: 4.0, to_m: 12.0, s_per_m: 1e-4, rest: Rest::new() }];
    let (at, kind) = (run.outline[2], plan::FaultKind::Short);
    run.faults = vec![plan::Fault { at, kind, ohm: Some(300.0), lines: None, cause: None, rest: Rest::new() }];
    plan
}

#[test]
fn what_is_drawn_on_the_ground_has_its_row_its_switches_and_its_node() {
    let mut desk = on_page(drawn_on(), Page::Run, [1280.0, 1600.0], Words::default());
    settle(&mut desk);
    let told = tree(&desk);
    let node = |name: &str| told.iter().find(|(role, label, _)| *role == Role::Button && label == name);
    let figures = |name: &str| node(name).unwrap_or_else(|| panic!("{name} in {told:?}")).2.clone();
    assert_eq!(figures("Hedge 1 on the map"), "30 m, does not hold birds");
    assert_eq!(figures("Oaks on the map"), "12 m²");
    assert_eq!(figures("Hollow on the map"), "24 m²");
    assert_eq!(figures("Label: Trough"), "15.0 m east, 40.0 m north");
    assert_eq!(figures("Drop point of Round Quince House"), "12.0 m east, 20.0 m north");
    assert!(node("The picture underneath on the map").is_none(), "the page about the ground has it");
    press(&mut desk, Key::L);
    let mut seen = std::collections::BTreeSet::new();
    for _ in 0..12 {
        seen.extend(rows(&desk));
        press(&mut desk, Key::PageDown);
    }
    for row in [
        "The picture underneath: air.png, 0.50 m a pixel",
        "Hedge 1: 30 m, does not hold birds",
        "Oaks: 12 m²",
        "Hollow: 24 m²",
        "Trough: 15.0 m east, 40.0 m north",
        "Drop point of Round Quince House: 12.0 m east, 20.0 m north",
    ] {
        assert!(seen.contains(row), "{row} in {seen:?}");
    }
    press(&mut desk, Key::Home);
    for name in
        ["Hide Hedge 1", "Lock Oaks", "Lock Hollow", "Hide Paddock", "Lock Paddock", "Hide The picture underneath"]
    {
        click_on(&mut desk, name);
    }
    let plan = window(&desk).editor().plan().clone();
    assert!(
        plan.walls[0].hidden
            && plan.ground.shade[0].locked
            && plan.ground.damp[0].locked
            && plan.underlay.as_ref().unwrap().hidden
    );
    assert!(plan.ground.boundary_hidden && plan.ground.boundary_locked);
    assert!(tree(&desk).iter().all(|(role, name, _)| *role != Role::Button || name != "Hedge 1 on the map"));
    click_on(&mut desk, "Unlock The picture underneath");
    assert!(!window(&desk).editor().plan().underlay.as_ref().unwrap().locked);
    click_on(&mut desk, "Trough: 15.0 m east, 40.0 m north");
    assert_eq!(picked(&desk), Some(Thing::Label { label: 0 }));
    press(&mut desk, Key::F2);
    hand::overtype(&mut desk, "Water trough");
    assert_eq!(window(&desk).editor().plan().labels[0].text, "Water trough");
    hand::fill(&mut desk, "Name of Water trough", " ");
    assert_eq!(window(&desk).editor().plan().labels[0].text, "Water trough", "words that say nothing are none");
    click_on(&mut desk, "Hide Coop quince");
    click_on(&mut desk, "Lock Coop quince");
    let coop = window(&desk).editor().plan().coop.clone().unwrap();
    assert!(coop.hidden && coop.locked);
}

#[test]
fn the_ground_page_has_the_nodes_of_the_paddock_and_of_the_picture() {
    let desk = desk(drawn_on(), Page::Ground);
    let told = tree(&desk);
    for name in
        ["Paddock on the map", "The picture underneath", "Point 1 of Hedge 1", "Corner 1 of Oaks", "Corner 1 of Hollow"]
    {
        assert!(told.iter().any(|(role, label, _)| *role == Role::Button && label == name), "{name} in {told:?}");
    }
}

/// Everything that is painted in the list's place, in its rows: its words, whether they were cut, and where they end.
fn painted(desk: &Desk) -> Vec<(String, bool, f32)> {
    fn of(shape: &egui::Shape, found: &mut Vec<(String, bool, f32, egui::Rect)>) {
        match shape {
            egui::Shape::Vec(shapes) => shapes.iter().for_each(|shape| of(shape, found)),
            egui::Shape::Text(text) => {
                let rect = text.visual_bounding_rect();
                found.push((text.galley.text().to_owned(), text.galley.elided, rect.right(), rect));
            }
            _ => {}
        }
    }
    let mut found = Vec::new();
    desk.output().shapes.iter().for_each(|one| of(&one.shape, &mut found));
    let row = |node: &egui_kittest::Node<'_>| node.accesskit_node().role() == Role::Row;
    let rows: Vec<egui::Rect> = desk.root().children_recursive().filter(row).map(|node| node.rect()).collect();
    let inside =
        |rect: &egui::Rect| rows.iter().any(|row| row.y_range().contains(rect.center().y) && row.left() < rect.right());
    found.into_iter().filter(|(.., rect)| inside(rect)).map(|(text, cut, right, _)| (text, cut, right)).collect()
}

#[test]
fn no_row_is_cut_short_in_either_language_and_unit_at_either_size() {
    for size in [[1280.0, 800.0], [900.0, 600.0]] {
        for language in words::Language::ALL {
            for units in [words::Units::Metric, words::Units::Feet] {
                let mut desk = on_page(drawn_on(), Page::Run, size, Words { language, units });
                settle(&mut desk);
                press(&mut desk, Key::L);
                press(&mut desk, Key::Home);
                let mut seen = 0;
                for _ in 0..24 {
                    let painted = painted(&desk);
                    seen += painted.len();
                    for (text, cut, right) in painted {
                        assert!(!cut, "{text:?} at {size:?} in {language:?}, {units:?}");
                        assert!(right < size[0], "{text:?} ends at {right}");
                    }
                    press(&mut desk, Key::PageDown);
                }
                assert!(seen > 100, "{seen} words");
            }
        }
    }
}

#[test]
fn the_list_fills_the_page_and_keeps_what_is_picked_in_sight() {
    for size in [[1280.0, 800.0], [900.0, 600.0]] {
        let mut desk = on_page(drawn_on(), Page::Run, size, Words::default());
        settle(&mut desk);
        press(&mut desk, Key::L);
        desk.state_mut().as_mut().unwrap().say(Message::Pick(None));
        desk.run();
        desk.run();
        let row = |node: &egui_kittest::Node<'_>| node.accesskit_node().role() == Role::Row;
        let foot = |desk: &Desk| {
            desk.root().children_recursive().filter(row).map(|node| node.rect().bottom()).fold(0.0_f32, f32::max)
        };
        let figures = desk.get_by_label_contains("↑ ↓ walk").rect();
        assert!(
            foot(&desk) > figures.top() - 44.0,
            "rows reach down to the keys: {} of {}",
            foot(&desk),
            figures.top()
        );
        // The last row in sight is picked: its fields take room, and it stays.
        press(&mut desk, Key::Home);
        press(&mut desk, Key::PageDown);
        press(&mut desk, Key::ArrowUp);
        desk.run();
        desk.run();
        let picked = picked(&desk).unwrap();
        let stands = desk
            .root()
            .children_recursive()
            .filter(row)
            .any(|node| node.accesskit_node().is_focused() && node.rect().bottom() < size[1] - 90.0);
        assert!(stands, "{picked:?} at {size:?}");
    }
}

#[test]
fn the_row_of_a_brace_lights_its_stake_and_leads_to_what_holds_the_corner() {
    let mut desk = desk(example(), Page::Ground);
    press(&mut desk, Key::L);
    types_in_filter(&mut desk, "Brace at corner 2");
    let row = desk
        .query_all_by_label_contains("Brace at corner 2 of ")
        .find(|node| node.accesskit_node().role() == Role::Row);
    let at = row.unwrap().rect().center();
    let ink = |desk: &Desk| {
        let editor = window(desk).editor();
        editor.drawing().ink(editor.view())
    };
    desk.event(Event::PointerMoved(egui::pos2(300.0, 300.0)));
    desk.run();
    let (was, corner) = (ink(&desk), window(&desk).editor().plan().runs[0].outline[1]);
    desk.event(Event::PointerMoved(at));
    desk.run();
    let Some(Thing::Brace { run: 0, corner: place }) = window(&desk).editor().hovered() else {
        panic!("{:?}", window(&desk).editor().hovered());
    };
    let editor = window(&desk).editor();
    let stake = editor.workup().runs[0].lay.as_ref().unwrap().corners[place].stake.at;
    // One ring more, nearer to the stake than to the corner.
    let is_ring = |item: &drawing::Ink| matches!(item, drawing::Ink::Disc { fill: None, edge: Some(_), .. });
    let rings: Vec<drawing::Ink> = ink(&desk).into_iter().filter(|item| is_ring(item) && !was.contains(item)).collect();
    let [drawing::Ink::Disc { middle: spot, .. }] = rings[..] else { panic!("{rings:?}") };
    let apart = |at: plan::Point| {
        let [right, down] = editor.view().spot(at);
        (spot[0] - right).hypot(spot[1] - down)
    };
    assert!(
        apart(stake) < apart(corner) && apart(stake) < 20.0,
        "{} off the stake, {} off the corner",
        apart(stake),
        apart(corner)
    );
    hand::click(&mut desk, at);
    assert_eq!(picked(&desk), Some(Thing::Brace { run: 0, corner: place }));
    press(&mut desk, Key::Enter);
    assert_eq!((window(&desk).editor().page(), window(&desk).editor().is_listing()), (Page::Run, false));
    assert!(desk.query_all_by_label_contains("at corner 2").any(|node| node.rect().left() > 800.0));
}

fn types_in_filter(desk: &mut Desk, text: &str) {
    desk.get_by_label("Find in the list").focus();
    desk.run();
    types(desk, text);
}
