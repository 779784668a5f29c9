//! The points of a danger's path in the hand: dragged, put in, taken out, as those of a wall.

use crate::hand::{Desk, drag, example, on_page, spot, window};
use desktop::editor::{Editor, ManyMessage, Message, Page};
use drawing::Thing;
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use plan::{Deed, Point, Wall};
use words::Words;
use words::texts::Window as Text;

const WAY: Thing = Thing::Hazard { hazard: 1 };

fn corner(vertex: usize) -> Thing {
    Thing::HazardCorner { hazard: 1, vertex }
}

fn path(desk: &Desk) -> &[Point] {
    &window(desk).editor().plan().ground.hazards[1].path
}

fn press(desk: &mut Desk, key: Key) {
    desk.key_press(key);
    desk.run();
}

#[test]
fn a_point_is_dragged_put_in_and_taken_out_each_one_step() {
    let mut desk = on_page(example(), Page::Ground, [1280.0, 800.0], Words::default());
    let was = path(&desk).to_vec();
    desk.state_mut().as_mut().unwrap().say(Message::Pick(Some(WAY)));
    desk.run();
    assert!(desk.query_by_label("Point 2 of Footpath").is_some(), "it is told of to who hears the map");
    // By its middle point, free of what stands near.
    desk.event(egui::Event::ModifiersChanged(Modifiers::ALT));
    desk.run();
    let (from, to) = (spot(&desk, was[1]), spot(&desk, Point::new(was[1].east_m + 3.0, was[1].north_m - 5.0)));
    drag(&mut desk, from, to);
    assert_eq!((path(&desk)[0], path(&desk)[2]), (was[0], was[2]), "one point alone");
    let moved = path(&desk)[1];
    assert!((moved.east_m - was[1].east_m - 3.0).abs() < 0.5 && (moved.north_m - was[1].north_m + 5.0).abs() < 0.5);
    assert_eq!(window(&desk).editor().picked(), Some(corner(1)));
    // By the middle of a side a point is put in.
    let middle = Point::new(f64::midpoint(was[2].east_m, moved.east_m), f64::midpoint(was[2].north_m, moved.north_m));
    let (from, to) = (spot(&desk, middle), spot(&desk, Point::new(middle.east_m, middle.north_m + 6.0)));
    drag(&mut desk, from, to);
    assert_eq!((path(&desk).len(), path(&desk)[1], path(&desk)[3]), (4, moved, was[2]));
    assert!((path(&desk)[2].north_m - middle.north_m - 6.0).abs() < 0.5);
    assert_eq!(window(&desk).editor().picked(), Some(corner(2)));
    press(&mut desk, Key::Delete);
    assert_eq!(path(&desk), [was[0], moved, was[2]]);
    assert_eq!(window(&desk).editor().deeds().0, [Deed::MoveCorner, Deed::InsertCorner, Deed::RemoveCorner]);
    for _ in 0..3 {
        desk.key_press_modifiers(Modifiers::COMMAND, Key::Z);
        desk.run();
    }
    assert_eq!(path(&desk), was);
}

#[test]
fn of_two_points_none_is_taken_out_and_the_arrow_keys_move_one() {
    let mut editor = Editor::new(example(), Words::default());
    let was = editor.plan().ground.hazards[0].path.clone();
    let point = Thing::HazardCorner { hazard: 0, vertex: 1 };
    editor.receive(Message::Pick(Some(point)));
    editor.receive(Message::Remove);
    assert_eq!(editor.notice(), Some(Text::FewestOfLine));
    editor.receive(Message::Nudge(1.0, 2.0));
    let now = &editor.plan().ground.hazards[0].path;
    assert_eq!(now[..], [was[0], Point::new(was[1].east_m + 1.0, was[1].north_m + 2.0)]);
    // Of several, too.
    for vertex in [1, 2] {
        editor.receive(Message::Many(ManyMessage::Also(corner(vertex))));
    }
    editor.receive(Message::Remove);
    assert_eq!(editor.plan().ground.hazards[1].path.len(), 2);
    // The whole is taken out by itself.
    editor.receive(Message::Pick(Some(WAY)));
    editor.receive(Message::Remove);
    assert_eq!(editor.plan().ground.hazards.len(), 1);
}

#[test]
fn a_danger_that_is_one_place_is_moved_and_taken_out_whole() {
    let mut plan = example();
    let place = Point::new(-20.0, 30.0);
    plan.ground.hazards[0].kind = plan::HazardKind::ForeignEarth;
    plan.ground.hazards[0].path = vec![place];
    let mut desk = on_page(plan, Page::Ground, [1280.0, 800.0], Words::default());
    let whole = Thing::Hazard { hazard: 0 };
    desk.state_mut().as_mut().unwrap().say(Message::Pick(Some(whole)));
    desk.run();
    let (from, to) = (spot(&desk, place), spot(&desk, Point::new(-12.0, 38.0)));
    drag(&mut desk, from, to);
    let now = window(&desk).editor().plan().ground.hazards[0].path.clone();
    assert!(now.len() == 1 && now[0].east_m > -14.0, "{now:?}");
    press(&mut desk, Key::Delete);
    assert_eq!(window(&desk).editor().plan().ground.hazards.len(), 1);
}

#[test]
fn a_wall_gets_a_point_by_the_middle_of_its_side_and_is_moved_by_the_rest_of_it() {
    let mut plan = example();
    let ends = [Point::new(-40.0, 20.0), Point::new(-10.0, 20.0)];
    plan.walls = vec![Wall { path: ends.to_vec(), ..Wall::default() }];
    let mut editor = Editor::new(plan, Words::default());
    editor.receive(Message::Free(true));
    let whole = Thing::Wall { wall: 0 };
    let lead = |editor: &mut Editor, from: Point, to: Point| {
        editor.receive(Message::Pick(Some(whole)));
        editor.receive(Message::Grab(whole, from));
        editor.receive(Message::Drag(to));
        editor.receive(Message::Drop);
    };
    lead(&mut editor, Point::new(-33.0, 20.0), Point::new(-33.0, 25.0));
    assert_eq!(editor.plan().walls[0].path, ends.map(|end| Point::new(end.east_m, 25.0)));
    lead(&mut editor, Point::new(-25.0, 25.0), Point::new(-25.0, 30.0));
    assert_eq!(editor.plan().walls[0].path[1], Point::new(-25.0, 30.0));
    assert_eq!(editor.deeds().0, [Deed::Move, Deed::InsertCorner]);
}
