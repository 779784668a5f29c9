//! The ground as it is: walls that a run ends on, shade, words, the door, the drop point.

use crate::hand::{click, click_on, deeds, drag, editor, example, fill, on_page, say, says, spot, undo};
use desktop::editor::{Message, Page};
use drawing::Thing;
use egui::{Key, Pos2, vec2};
use egui_kittest::kittest::Queryable;
use plan::{Label, LabelSize, Plan, Point, Shade, Wall, WallKind};
use words::Words;

const SIZE: [f32; 2] = [1280.0, 3000.0];

#[test]
fn words_dropped_on_the_map_are_typed_at_once() {
    let mut desk = on_page(example(), Page::Ground, SIZE, Words::default());
    click_on(&mut desk, "Label");
    let at = spot(&desk, Point::new(12.0, 50.0));
    click(&mut desk, at);
    desk.key_press(Key::T);
    desk.event(egui::Event::Text("Trough 2".to_owned()));
    desk.run();
    desk.key_press(Key::Enter);
    desk.run();
    assert_eq!(editor(&desk).plan().labels.last().map(|label| label.text.as_str()), Some("Trough 2"));
    assert_eq!(*editor(&desk).tool(), desktop::tool::Tool::Pick);
}

#[test]
fn the_number_of_a_corner_under_the_ring_is_taken_where_it_is_drawn() {
    let corners = [(0.0, 20.0), (-20.0, 0.0), (0.0, -20.0), (20.0, 0.0)].map(Point::from);
    let mut plan = Plan::default();
    plan.ground.keep_outs = vec![plan::KeepOut::new(corners.to_vec())];
    let mut desk = on_page(plan, Page::Ground, [1280.0, 800.0], Words::default());
    say(&mut desk, Message::Pick(Some(Thing::KeepOut { keep_out: 0 })));
    // The ring stands over the top corner, so that its number stands below: beyond the corner's own reach.
    let corner = spot(&desk, corners[0]);
    let mut over = |down: f32| {
        desk.event(egui::Event::PointerMoved(corner + vec2(0.0, down)));
        desk.run();
        editor(&desk).hovered()
    };
    assert_eq!(over(15.0), Some(Thing::KeepOutCorner { keep_out: 0, vertex: 0 }));
    assert_ne!(over(-15.0), Some(Thing::KeepOutCorner { keep_out: 0, vertex: 0 }), "nothing of it stands there");
}

/// A plan of bare ground with two nets and a hedge along its south.
fn hedged() -> Plan {
    let mut plan = example();
    plan.runs.clear();
    plan.readings.clear();
    plan.ground.keep_outs.clear();
    plan.ground.hazards.clear();
    let path = vec![Point::new(5.0, 12.0), Point::new(75.0, 12.0)];
    let (name, kind) = ("South hedge".to_owned(), Some(WallKind::Hedge));
    plan.walls = vec![Wall { name, kind, path, holds_birds: Some(true), ..Wall::default() }];
    plan
}

#[test]
fn a_run_that_is_unrolled_onto_a_hedge_stays_open_there() {
    let mut desk = on_page(hedged(), Page::Ground, SIZE, Words::default());
    say(&mut desk, Message::Open(Page::Run));
    desk.key_press(Key::R);
    desk.run();
    for at in [Point::new(20.0, 12.2), Point::new(20.0, 40.0), Point::new(45.0, 40.0), Point::new(45.0, 12.2)] {
        let at = spot(&desk, at);
        click(&mut desk, at);
    }
    assert!(editor(&desk).snapped().is_some_and(|caught| caught.reason.contains("South hedge")));
    desk.key_press(Key::Enter);
    desk.run();
    let run = &editor(&desk).plan().runs[0];
    assert_eq!(run.closed, Some(false));
    let last = run.outline.last().unwrap();
    assert!((last.north_m - 12.0).abs() < 1e-9, "{last:?}");
    assert_eq!(editor(&desk).picked(), Some(Thing::Run { run: 0 }));
    assert!(editor(&desk).run().unwrap().1.lay.as_ref().is_some_and(|lay| !lay.closed));
    assert_eq!(deeds(&desk), 1);
    // Without a wall at its end it closes as before.
    undo(&mut desk);
    desk.key_press(Key::R);
    desk.run();
    for at in [Point::new(20.0, 20.0), Point::new(20.0, 40.0), Point::new(45.0, 40.0)] {
        let at = spot(&desk, at);
        click(&mut desk, at);
    }
    desk.key_press(Key::Enter);
    desk.run();
    assert_eq!(editor(&desk).plan().runs[0].closed, None);
}

#[test]
fn walls_are_drawn_named_told_dragged_doubled_and_taken_out() {
    let mut plan = hedged();
    plan.walls.clear();
    let mut desk = on_page(plan, Page::Ground, SIZE, Words::default());
    assert!(says(&desk, "None drawn. A run may end on one that holds birds."));
    click_on(&mut desk, "Fence");
    for at in [Point::new(10.0, 8.0), Point::new(60.0, 8.0), Point::new(60.0, 30.0)] {
        let at = spot(&desk, at);
        click(&mut desk, at);
    }
    desk.key_press(Key::Enter);
    desk.run();
    let wall = &editor(&desk).plan().walls[0];
    assert_eq!((wall.kind(), wall.path.len(), wall.holds_birds), (WallKind::Fence, 3, None));
    assert_eq!(editor(&desk).picked(), Some(Thing::Wall { wall: 0 }));
    fill(&mut desk, "Name of Fence 1", "Lane fence");
    assert_eq!(editor(&desk).plan().walls[0].name, "Lane fence");
    assert!(says(&desk, "Lane fence: does not hold birds"));
    // One step for a corner dragged; an arrow moves it too.
    let (from, before) = (spot(&desk, Point::new(60.0, 30.0)), deeds(&desk));
    drag(&mut desk, from, from + vec2(0.0, -30.0));
    assert_eq!(deeds(&desk), before + 1);
    let up = editor(&desk).plan().walls[0].path[2];
    assert!(up.north_m > 30.5 && (up.east_m - 60.0).abs() < 2.0);
    desk.get_by_label("Point 3 of Lane fence");
    say(&mut desk, Message::Pick(Some(Thing::Wall { wall: 0 })));
    click_on(&mut desk, "Double it");
    assert_eq!(editor(&desk).plan().walls.len(), 2);
    desk.key_press(Key::Delete);
    desk.run();
    assert_eq!(editor(&desk).plan().walls.len(), 1);
    undo(&mut desk);
    undo(&mut desk);
    assert_eq!((editor(&desk).plan().walls.len(), editor(&desk).plan().walls[0].path[2]), (1, up));
}

#[test]
fn shade_is_drawn_and_words_are_written_typed_dragged_and_sized() {
    let mut desk = on_page(hedged(), Page::Ground, SIZE, Words::default());
    click_on(&mut desk, "Shade");
    for at in [Point::new(60.0, 30.0), Point::new(70.0, 30.0), Point::new(65.0, 40.0)] {
        let at = spot(&desk, at);
        click(&mut desk, at);
    }
    desk.key_press(Key::Enter);
    desk.run();
    assert_eq!(editor(&desk).plan().ground.shade[0].outline.len(), 3);
    assert_eq!(editor(&desk).picked(), Some(Thing::Shade { shade: 0 }));
    fill(&mut desk, "Name of Shade 1", "Oaks");
    assert_eq!(
        editor(&desk).plan().ground.shade,
        [Shade {
            name: "Oaks".to_owned(),
            outline: editor(&desk).plan().ground.shade[0].outline.clone(),
            ..Shade::default()
        }]
    );
    click_on(&mut desk, "Label");
    let place = Point::new(30.0, 45.0);
    let at = spot(&desk, place);
    click(&mut desk, at);
    assert_eq!(editor(&desk).picked(), Some(Thing::Label { label: 0 }));
    fill(&mut desk, "Text of Label", "Trough");
    click_on(&mut desk, "large");
    let Label { text, size, .. } = &editor(&desk).plan().labels[0];
    assert_eq!((text.as_str(), *size), ("Trough", Some(LabelSize::Large)));
    desk.get_by_label("Label: Trough");
    let before = deeds(&desk);
    drag(&mut desk, at, at + vec2(40.0, 0.0));
    let moved = editor(&desk).plan().labels[0].at;
    assert!(moved.east_m > 31.0 && deeds(&desk) == before + 1, "{moved:?}");
    // Emptied words are none.
    click_on(&mut desk, "Text of Trough");
    desk.key_press_modifiers(egui::Modifiers::COMMAND, Key::A);
    desk.key_press(Key::Backspace);
    desk.run();
    desk.key_press(Key::Enter);
    desk.run();
    assert!(editor(&desk).plan().labels.is_empty());
    undo(&mut desk);
    assert_eq!(editor(&desk).plan().labels[0].at, moved);
    say(&mut desk, Message::Pick(Some(Thing::Label { label: 0 })));
    desk.key_press(Key::Delete);
    desk.run();
    assert!(editor(&desk).plan().labels.is_empty());
}

#[test]
fn the_door_that_is_dragged_turns_the_coop_and_its_wall_is_chosen() {
    let mut desk = on_page(hedged(), Page::Ground, SIZE, Words::default());
    let coop = editor(&desk).plan().coop.clone().unwrap();
    say(&mut desk, Message::Pick(Some(Thing::CoopDoor)));
    let from = spot(&desk, coop.door_at());
    let before = deeds(&desk);
    // From wherever it is to the far side of the coop.
    let middle = spot(&desk, coop.at);
    let over: Pos2 = middle + (middle - from);
    drag(&mut desk, from, over);
    let turned = editor(&desk).plan().coop.clone().unwrap();
    let by = (turned.heading_deg() - coop.heading_deg()).rem_euclid(360.0);
    assert!((by - 180.0).abs() < 3.0 && deeds(&desk) == before + 1, "{by}");
    assert_eq!(turned.at, coop.at);
    click_on(&mut desk, "left");
    assert_eq!(editor(&desk).plan().coop.as_ref().unwrap().door, Some(plan::DoorSide::Left));
    undo(&mut desk);
    undo(&mut desk);
    assert_eq!(editor(&desk).plan().coop.as_ref(), Some(&coop));
}

#[test]
fn drop_point_and_feed_are_placed_by_tools_of_their_pages() {
    let mut desk = on_page(example(), Page::Run, SIZE, Words::default());
    let before = deeds(&desk);
    click_on(&mut desk, "Drop point");
    let at = spot(&desk, Point::new(12.0, 8.0));
    click(&mut desk, at);
    let dropped = editor(&desk).plan().runs[0].drop_at.unwrap();
    assert!((dropped.east_m - 12.0).abs() < 0.2 && deeds(&desk) == before + 1);
    assert_eq!(editor(&desk).picked(), Some(Thing::Drop { run: 0 }));
    drag(&mut desk, at, at + vec2(30.0, 0.0));
    assert!(editor(&desk).plan().runs[0].drop_at.unwrap().east_m > dropped.east_m + 1.0);
    desk.key_press(Key::Delete);
    desk.run();
    assert_eq!(editor(&desk).plan().runs[0].drop_at, None);

    say(&mut desk, Message::Open(Page::Power));
    click_on(&mut desk, "Feed on the map");
    let corner = editor(&desk).plan().runs[0].outline[1];
    let at = spot(&desk, corner);
    click(&mut desk, at);
    assert_eq!(editor(&desk).plan().runs[0].feed_at, Some(corner), "caught by the corner");
    assert_eq!(editor(&desk).picked(), Some(Thing::Feed { run: 0 }));
}
