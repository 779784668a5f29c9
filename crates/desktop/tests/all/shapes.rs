//! Other shapes in the window: looked for, compared, looked at on the map, taken with one click.

use crate::hand;
use crate::hand::{Desk, click_on, fill, on_page, settle, window};
use desktop::editor::{Message, Page, Progress, RowOf};
use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use exchange::compare::Column;
use plan::{Coop, Deed, KeepOut, NetKind, Plan, Point, Run};
use words::Words;

/// A long run of two nets of 14 panels, far from the most that they enclose, an oak, and a coop.
fn plan() -> Plan {
    let at = |east: f64, north: f64| Point::new(east, north);
    let outline = |corners: &[(f64, f64)]| corners.iter().map(|&(east, north)| at(east, north)).collect::<Vec<_>>();
    let mut plan = Plan::default();
    plan.ground.boundary = outline(&[(0.0, 0.0), (80.0, 0.0), (80.0, 60.0), (0.0, 60.0)]);
    let oak = outline(&[(60.0, 40.0), (63.0, 40.0), (63.0, 43.0), (60.0, 43.0)]);
    plan.ground.keep_outs.push(KeepOut { name: "oak".to_owned(), ..KeepOut::new(oak) });
    plan.coop = Some(Coop::new("house", at(20.0, 14.0)));
    plan.store.nets.push(NetKind { count: Some(2), ..NetKind::new("long", 50.0, 14) });
    let outline = outline(&[(10.0, 10.0), (45.0, 10.0), (45.0, 22.0), (10.0, 22.0)]);
    plan.runs.push(Run { id: "run-1".to_owned(), name: "Long one".to_owned(), outline, ..Run::default() });
    plan
}

fn open(plan: Plan) -> Desk {
    let mut desk = on_page(plan, Page::Run, [1440.0, 2200.0], Words::default());
    settle(&mut desk);
    desk
}

fn looked(plan: Plan) -> Desk {
    let mut desk = open(plan);
    click_on(&mut desk, "Other shapes");
    settle(&mut desk);
    desk
}

fn column(desk: &Desk, column: Column) -> Vec<f64> {
    let rows = window(desk).editor().compared();
    rows.iter().filter_map(|row| column.value(&row.entry.figures)).collect()
}

fn area_m2(desk: &Desk) -> f64 {
    window(desk).editor().workup().runs[0].lay.as_ref().unwrap().area_m2
}

/// The middle of the row of the largest shape that is not the keeper's own, and the shape's label.
fn first_shape(desk: &Desk) -> String {
    let rows = window(desk).editor().compared();
    let row = rows.iter().find(|row| matches!(row.what, RowOf::Shape(_))).unwrap();
    format!("{}: Ground ", row.entry.name)
}

#[test]
fn the_largest_of_each_family_stands_beside_the_keepers_run() {
    let mut desk = looked(plan());
    desk.get_by_label("Same nets, other shapes");
    let editor = window(&desk).editor();
    assert!(editor.shapes().found().len() >= 5, "a family is missing");
    let rows = editor.compared();
    assert_eq!(rows.iter().filter(|row| matches!(row.what, RowOf::Run(_))).count(), 1);
    for family in ["Square: Ground", "Round: Ground", "Long one: Ground"] {
        desk.get_by_label_contains(family);
    }
    let areas = column(&desk, Column::Ground);
    assert!(areas.is_sorted_by(|one, next| one >= next), "{areas:?}");
    // Ground of every count of nets that the store has.
    let counts: Vec<u32> = editor.shapes().by_nets().iter().map(|(count, _)| *count).collect();
    assert_eq!(counts, [1, 2]);
    for plot in ["Ground by proportion", "Ground by nets", "Ground by minutes of setting up"] {
        assert!(desk.query_all_by_label(plot).count() > 0, "{plot}");
    }
    let best = rows[0].entry.figures.area_m2.unwrap();
    let more = Words::default().area(best - area_m2(&desk));
    desk.get_by_label_contains(&format!("takes in most: {more} more than yours"));

    click_on(&mut desk, "Back to your run");
    assert_eq!(window(&desk).editor().compared().len(), 1);
    assert!(desk.query_by_label("Same nets, other shapes").is_none());
}

#[test]
fn a_click_on_a_head_orders_the_rows_and_one_more_turns_the_order() {
    let mut desk = looked(plan());
    click_on(&mut desk, "Order by Braces");
    let braces = column(&desk, Column::Braces);
    assert!(braces.is_sorted() && braces.first() != braces.last(), "{braces:?}");
    click_on(&mut desk, "Order by Braces");
    let braces = column(&desk, Column::Braces);
    assert!(braces.is_sorted_by(|one, next| one >= next), "{braces:?}");
    click_on(&mut desk, "Order by Birds");
    let birds = column(&desk, Column::Birds);
    assert!(birds.is_sorted_by(|one, next| one >= next), "more birds first: {birds:?}");
}

#[test]
fn a_row_lies_on_the_map_and_becomes_the_run_as_one_step() {
    let mut desk = looked(plan());
    let before = area_m2(&desk);
    let label = first_shape(&desk);
    let row = desk.get_by_label_contains(&label).rect().center();
    assert!(window(&desk).editor().shape_ghost().is_none());
    desk.event(egui::Event::PointerMoved(row));
    desk.run();
    assert!(window(&desk).editor().shape_ghost().is_some(), "the shape under the pointer lies on the map");
    hand::click(&mut desk, row);
    desk.event(egui::Event::PointerMoved(egui::pos2(5.0, 5.0)));
    desk.run();
    assert!(window(&desk).editor().shape_ghost().is_some(), "what was picked stays on the map");
    let picked = window(&desk).editor().shapes().chosen().unwrap().clone();

    click_on(&mut desk, "Make it the run");
    settle(&mut desk);
    assert!((area_m2(&desk) - picked.area_m2).abs() < 1e-6 && picked.area_m2 > before * 1.2);
    assert_eq!(window(&desk).editor().plan().runs.len(), 1);
    assert_eq!(window(&desk).editor().plan().runs[0].name, "Long one", "it is the same run in another shape");
    assert_eq!(window(&desk).editor().deeds().0, [Deed::TakeShape]);
    // It says what happened, with the way back, and forgets it once that was taken.
    assert_eq!(desk.query_all_by_label_contains("is the run now").count(), 1);
    assert!(desk.query_by_label("Make it the run").is_none());
    // What was said is said anew in another language.
    let mut speak = |language| {
        desk.state_mut().as_mut().unwrap().say(Message::Language(language));
        desk.run();
        let said = desk.query_all_by_label_contains("ist jetzt der Auslauf").next();
        said.map(|node| node.accesskit_node().value().unwrap_or_default())
    };
    let german = speak(words::Language::German).unwrap();
    assert!(!german.contains("Largest") && german.starts_with('„'), "{german}");
    assert!(speak(words::Language::English).is_none());
    click_on(&mut desk, "Take that back");
    desk.run();
    assert_eq!(*window(&desk).editor().plan(), plan());
    assert_eq!(desk.query_all_by_label_contains("is the run now").count(), 0);
    assert!(window(&desk).editor().shapes().taken().is_none());
}

#[test]
fn a_shape_is_kept_beside_the_run() {
    let mut desk = looked(plan());
    let label = first_shape(&desk);
    desk.get_by_label_contains(&label).click();
    desk.run();
    click_on(&mut desk, "Keep it beside yours");
    settle(&mut desk);
    let runs = &window(&desk).editor().plan().runs;
    assert_eq!((runs.len(), &runs[0]), (2, &plan().runs[0]));
    assert_eq!(window(&desk).editor().run_index(), 0, "the keeper's own stays in hand");
    assert_eq!(desk.query_all_by_label_contains("stands beside yours now, as run 2").count(), 1);
    desk.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    desk.run();
    assert_eq!(*window(&desk).editor().plan(), plan());
}

#[test]
fn a_search_is_stopped_and_begun_again() {
    let mut wide = plan();
    for corner in &mut wide.ground.boundary {
        *corner = Point::new(corner.east_m * 6.0, corner.north_m * 6.0);
    }
    wide.store.nets[0].count = Some(6);
    let mut desk = open(wide);
    desk.get_by_label("Other shapes").click();
    desk.step();
    desk.step();
    desk.get_by_label("Stop looking").click();
    desk.run();
    assert_eq!(window(&desk).editor().shapes().progress(), Progress::Rests);
    assert!(window(&desk).editor().shapes().by_nets().len() < 6, "it was let go");
    click_on(&mut desk, "Look again");
    settle(&mut desk);
    assert_eq!(window(&desk).editor().shapes().by_nets().len(), 6);
}

#[test]
fn another_ground_is_looked_over_anew() {
    let mut desk = looked(plan());
    let largest = window(&desk).editor().shapes().found()[0].area_m2;
    let mut ground = window(&desk).editor().plan().ground.clone();
    ground.boundary[1].east_m = 24.0;
    ground.boundary[2].east_m = 24.0;
    desk.state_mut().as_mut().unwrap().say(desktop::editor::Message::Make(plan::Edit::SetOutline {
        shape: plan::Shape::Boundary,
        outline: ground.boundary,
    }));
    desk.run();
    settle(&mut desk);
    let found = window(&desk).editor().shapes().found();
    assert!(found[0].area_m2 < largest, "a narrow paddock takes no round run");
    assert!(found.iter().all(|one| one.outline.iter().all(|at| at.east_m <= 24.0 + 1e-6)));
}

#[test]
fn round_the_coop_keeps_it_inside() {
    let mut desk = looked(plan());
    click_on(&mut desk, "Round the coop");
    settle(&mut desk);
    let coop = window(&desk).editor().plan().coop.as_ref().unwrap().at;
    for candidate in window(&desk).editor().shapes().found() {
        let outline = &candidate.outline;
        // Even and odd: how many sides lie east of the coop.
        let crossings = outline.iter().zip(outline.iter().cycle().skip(1)).filter(|(from, to)| {
            let east_m =
                from.east_m + (to.east_m - from.east_m) * (coop.north_m - from.north_m) / (to.north_m - from.north_m);
            (from.north_m > coop.north_m) != (to.north_m > coop.north_m) && east_m > coop.east_m
        });
        assert_eq!(crossings.count() % 2, 1, "{:?}", candidate.family);
    }
}

#[test]
fn the_table_is_copied_as_text_and_saved_as_csv() {
    let folder = tempfile::tempdir().unwrap();
    let mut desk = looked(plan());
    let rows = window(&desk).editor().compared().len();
    desk.get_by_label("Copy the table").click();
    let copied = (0..4).find_map(|_| {
        desk.step();
        desk.output().platform_output.commands.iter().find_map(|command| match command {
            egui::OutputCommand::CopyText(text) => Some(text.clone()),
            _ => None,
        })
    });
    let copied = copied.unwrap();
    assert_eq!(copied.lines().count(), rows + 1);
    assert!(copied.contains("Long one\t") && copied.contains("Round\t"), "{copied}");

    click_on(&mut desk, "Save the table …");
    desk.get_by_label("Save the table");
    fill(&mut desk, "Folder", &folder.path().display().to_string());
    fill(&mut desk, "File name", "shapes");
    let bytes = std::fs::read(folder.path().join("shapes.csv")).unwrap();
    assert_eq!(bytes, window(&desk).editor().table_csv());
    assert_eq!(window(&desk).editor().plan(), &plan(), "a table is no change of the plan");
}

#[test]
fn birds_are_counted_by_the_rule_that_is_picked() {
    let mut desk = looked(plan());
    let own = column(&desk, Column::Birds);
    click_on(&mut desk, "Count by another rule");
    desk.get_by_label_contains("organic geese, EU 2020/464").click();
    desk.run();
    settle(&mut desk);
    settle(&mut desk);
    let geese = column(&desk, Column::Birds);
    let areas = column(&desk, Column::Ground);
    let expected: Vec<f64> = areas.iter().map(|area_m2| (area_m2 / 15.0).floor()).collect();
    assert_eq!(geese, expected);
    assert!(own.iter().zip(&geese).all(|(own, geese)| own > geese));
}

#[test]
fn what_cannot_be_is_said_in_a_sentence() {
    let mut bare = plan();
    bare.ground.boundary.clear();
    let desk = looked(bare);
    desk.get_by_label_contains("There is no paddock to look in");
    let mut far = plan();
    far.coop.as_mut().unwrap().at = Point::new(200.0, 0.0);
    let mut desk = looked(far);
    click_on(&mut desk, "Round the coop");
    settle(&mut desk);
    desk.get_by_label_contains("The coop does not stand inside the paddock");
}
