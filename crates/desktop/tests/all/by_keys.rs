//! What the pointer does, done by keys: a corner put into a side, a side slid, the map moved, several things picked.

use crate::hand::{Desk, click_on, deeds, editor, example, on_page, plan_of, say, undo};
use desktop::editor::{Message, Page};
use drawing::Thing;
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use plan::{Deed, Plan, Point};
use words::Words;

const SHIFT: Modifiers = Modifiers::SHIFT;
const NONE: Modifiers = Modifiers::NONE;
const CTRL: Modifiers = Modifiers::COMMAND;

fn desk(plan: Plan, page: Page) -> Desk {
    on_page(plan, page, [1280.0, 800.0], Words::default())
}

fn press(desk: &mut Desk, modifiers: Modifiers, key: Key) {
    desk.key_press_modifiers(modifiers, key);
    desk.run();
}

fn types(desk: &mut Desk, text: &str) {
    desk.event(egui::Event::Text(text.to_owned()));
    desk.run();
}

fn near(one: Point, east_m: f64, north_m: f64) -> bool {
    (one.east_m - east_m).hypot(one.north_m - north_m) < 1e-9
}

/// A run of 30 m by 20 m.
fn oblong() -> Plan {
    let mut plan = example();
    plan.runs.truncate(1);
    plan.runs[0].outline = [(20.0, 20.0), (50.0, 20.0), (50.0, 40.0), (20.0, 40.0)].map(Point::from).to_vec();
    plan.runs[0].pins.clear();
    plan.runs[0].feed_at = None;
    plan.runs[0].braces.clear();
    plan
}

#[test]
fn a_key_puts_a_corner_into_the_middle_of_the_picked_side_and_picks_it() {
    let was = oblong();
    let mut desk = desk(was.clone(), Page::Run);
    // The outline's table picks a side without a pointer.
    desk.get_by_label("Pick side 2 to 3").focus();
    desk.run();
    press(&mut desk, NONE, Key::Enter);
    assert_eq!(editor(&desk).picked(), Some(Thing::RunSide { run: 0, side: 1 }));
    press(&mut desk, NONE, Key::I);
    let outline = plan_of(&desk).runs[0].outline.clone();
    assert!(outline.len() == 5 && near(outline[2], 50.0, 30.0), "{outline:?}");
    assert_eq!(editor(&desk).picked(), Some(Thing::RunCorner { run: 0, vertex: 2 }));
    assert_eq!(editor(&desk).deeds().0, [Deed::InsertCorner], "one step");
    undo(&mut desk);
    assert_eq!(plan_of(&desk), was);
    // The last side, back to the first corner, by the list of commands.
    say(&mut desk, Message::Pick(Some(Thing::RunSide { run: 0, side: 3 })));
    press(&mut desk, CTRL, Key::K);
    types(&mut desk, "insert a corner in this side");
    press(&mut desk, NONE, Key::Enter);
    let outline = plan_of(&desk).runs[0].outline.clone();
    assert!(outline.len() == 5 && near(outline[4], 20.0, 30.0), "{outline:?}");
    undo(&mut desk);
    // With nothing picked it is said what is missing.
    press(&mut desk, NONE, Key::Escape);
    press(&mut desk, NONE, Key::Escape);
    press(&mut desk, NONE, Key::I);
    desk.get_by_label("Pick a side first.");
    assert_eq!(plan_of(&desk), was);
}

#[test]
fn after_a_corner_of_whatever_is_drawn_one_is_put_in_and_a_locked_one_stays() {
    let mut was = oblong();
    let path = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0)].map(Point::from).to_vec();
    was.walls = vec![plan::Wall { path, ..plan::Wall::default() }];
    let hung = [(50.0, 30.0), (60.0, 30.0), (60.0, 40.0)].map(Point::from).to_vec();
    was.runs[0].branches = vec![plan::Branch { from_m: 40.0, outline: hung, ..plan::Branch::default() }];
    let wall = |vertex| Thing::WallCorner { wall: 0, vertex };
    let branch = |vertex| Thing::BranchCorner { run: 0, branch: 0, vertex };
    let mut desk = desk(was.clone(), Page::Ground);
    for (picked, corner, at) in [
        (wall(0), wall(1), (5.0, 0.0)),
        // The last corner of a path has only the side before it.
        (wall(2), wall(2), (10.0, 5.0)),
        (branch(0), branch(1), (55.0, 30.0)),
        (branch(2), branch(2), (60.0, 35.0)),
        (Thing::BranchSide { run: 0, branch: 0, side: 1 }, branch(2), (60.0, 35.0)),
        (Thing::RunCorner { run: 0, vertex: 3 }, Thing::RunCorner { run: 0, vertex: 4 }, (20.0, 30.0)),
    ] {
        say(&mut desk, Message::Pick(Some(picked)));
        press(&mut desk, NONE, Key::I);
        assert_eq!(editor(&desk).picked(), Some(corner), "{picked:?}");
        let now = plan_of(&desk);
        let found = match corner {
            Thing::WallCorner { vertex, .. } => now.walls[0].path[vertex],
            Thing::BranchCorner { vertex, .. } => now.runs[0].branches[0].outline[vertex],
            Thing::RunCorner { vertex, .. } => now.runs[0].outline[vertex],
            _ => unreachable!(),
        };
        assert!(near(found, at.0, at.1), "{picked:?}: {found:?}");
        undo(&mut desk);
        assert_eq!(plan_of(&desk), was, "{picked:?}");
    }
    was.walls[0].locked = true;
    let mut desk = self::desk(was.clone(), Page::Ground);
    say(&mut desk, Message::Pick(Some(wall(0))));
    press(&mut desk, NONE, Key::I);
    assert_eq!(plan_of(&desk), was);
    desk.get_by_label_contains("It is locked");
}

#[test]
fn arrows_slide_a_picked_side_square_to_itself() {
    let was = oblong();
    let mut desk = desk(was.clone(), Page::Run);
    say(&mut desk, Message::Pick(Some(Thing::RunSide { run: 0, side: 1 })));
    press(&mut desk, NONE, Key::ArrowRight);
    press(&mut desk, SHIFT, Key::ArrowRight);
    let outline = plan_of(&desk).runs[0].outline.clone();
    assert!(near(outline[1], 51.1, 20.0) && near(outline[2], 51.1, 40.0), "{outline:?}");
    assert!(near(outline[0], 20.0, 20.0) && near(outline[3], 20.0, 40.0), "the other side stays");
    assert_eq!(editor(&desk).deeds().0, [Deed::SlideSide, Deed::SlideSide], "named as the drag is");
    // Along itself it does not go, and that is said.
    press(&mut desk, NONE, Key::ArrowUp);
    assert_eq!(plan_of(&desk).runs[0].outline, outline);
    desk.get_by_label_contains("runs along the side");
    assert_eq!(deeds(&desk), 2);
    // Back, and by a panel of its net.
    undo(&mut desk);
    undo(&mut desk);
    assert_eq!(plan_of(&desk), was);
    press(&mut desk, CTRL, Key::ArrowLeft);
    let panel_m = 50.0 / 14.0;
    let outline = plan_of(&desk).runs[0].outline.clone();
    assert!(near(outline[1], 50.0 - panel_m, 20.0), "{outline:?}");

    // A slanting side goes by as much of the arrow as is square to it; its neighbours keep their lines.
    let mut slanting = oblong();
    slanting.runs[0].outline[2] = Point::new(60.0, 40.0);
    let mut desk = self::desk(slanting, Page::Run);
    say(&mut desk, Message::Pick(Some(Thing::RunSide { run: 0, side: 1 })));
    press(&mut desk, SHIFT, Key::ArrowRight);
    let outline = plan_of(&desk).runs[0].outline.clone();
    // A metre east is as far along both level neighbours.
    assert!(near(outline[1], 51.0, 20.0) && near(outline[2], 61.0, 40.0), "{outline:?}");
    press(&mut desk, NONE, Key::ArrowUp);
    let outline = plan_of(&desk).runs[0].outline.clone();
    // It rises 2 in 1: what goes 0.1 m north past it is 0.05 m to its west.
    assert!(near(outline[1], 50.95, 20.0) && near(outline[2], 60.95, 40.0), "{outline:?}");
}

#[test]
fn sides_on_the_ground_slide_by_arrows_too() {
    let mut was = oblong();
    let square = [(84.0, 60.0), (104.0, 60.0), (104.0, 76.0), (84.0, 76.0)].map(Point::from).to_vec();
    was.ground.shade.push(plan::Shade { outline: square, ..plan::Shade::default() });
    let mut desk = desk(was.clone(), Page::Ground);
    let boundary = was.ground.boundary.clone();
    for thing in [Thing::ShadeSide { shade: 0, side: 0 }, Thing::BoundarySide { side: 0 }] {
        say(&mut desk, Message::Pick(Some(thing)));
        press(&mut desk, SHIFT, Key::ArrowDown);
        assert_eq!(editor(&desk).deeds().0.last(), Some(&Deed::SlideSide), "{thing:?}");
    }
    let now = plan_of(&desk);
    assert!(near(now.ground.shade[0].outline[0], 84.0, 59.0) && near(now.ground.shade[0].outline[2], 104.0, 76.0));
    assert_ne!(now.ground.boundary[0], boundary[0]);
    assert_eq!(now.ground.boundary[2], boundary[2]);
}

#[test]
fn with_nothing_picked_the_arrows_move_the_map() {
    let mut desk = desk(example(), Page::Run);
    press(&mut desk, NONE, Key::Escape);
    assert!(editor(&desk).picked().is_none());
    let (was, size) = (editor(&desk).view().middle, editor(&desk).view().size);
    let metres = |px: f32, desk: &Desk| f64::from(px) / editor(desk).view().px_per_m;
    press(&mut desk, NONE, Key::ArrowRight);
    press(&mut desk, NONE, Key::ArrowUp);
    let now = editor(&desk).view().middle;
    assert!((now.east_m - was.east_m - metres(size[0] / 8.0, &desk)).abs() < 1e-6, "an eighth of the map: {now:?}");
    assert!((now.north_m - was.north_m - metres(size[1] / 8.0, &desk)).abs() < 1e-6);
    press(&mut desk, NONE, Key::ArrowDown);
    press(&mut desk, NONE, Key::ArrowLeft);
    press(&mut desk, SHIFT, Key::ArrowLeft);
    let now = editor(&desk).view().middle;
    assert!((was.east_m - now.east_m - metres(size[0] * 0.75, &desk)).abs() < 1e-6, "{now:?}");
    assert_eq!(plan_of(&desk), example());
    // What is picked goes instead.
    say(&mut desk, Message::Pick(Some(Thing::Run { run: 0 })));
    press(&mut desk, NONE, Key::ArrowRight);
    assert_eq!(editor(&desk).view().middle, now);
    assert_ne!(plan_of(&desk), example());
}

#[test]
fn the_map_goes_along_where_the_keys_draw_off_it() {
    let mut desk = desk(example(), Page::Run);
    press(&mut desk, NONE, Key::R);
    let was = editor(&desk).view().middle;
    press(&mut desk, NONE, Key::ArrowRight);
    assert_eq!(editor(&desk).view().middle, was, "well on the map nothing moves");
    for key in [Key::ArrowRight, Key::ArrowDown] {
        for _ in 0..120 {
            desk.key_press(key);
        }
        desk.run();
    }
    let (view, at) = (editor(&desk).view(), editor(&desk).tool().pointer().unwrap());
    let [x, y] = view.spot(at);
    assert!((40.0..view.size[0] - 40.0).contains(&x) && (40.0..view.size[1] - 40.0).contains(&y), "{x}, {y}");
    assert!(view.middle.east_m > was.east_m && view.middle.north_m < was.north_m);
}

#[test]
fn several_are_picked_in_the_list_by_keys_alone() {
    const POND: Thing = Thing::KeepOut { keep_out: 0 };
    const WELL: Thing = Thing::KeepOut { keep_out: 1 };
    let mut desk = desk(example(), Page::Ground);
    let chosen = |desk: &Desk| editor(desk).chosen();
    press(&mut desk, NONE, Key::L);
    press(&mut desk, NONE, Key::ArrowDown);
    assert_eq!(chosen(&desk), [POND]);
    // Shift picks on, and back lets go.
    press(&mut desk, SHIFT, Key::ArrowDown);
    press(&mut desk, SHIFT, Key::ArrowDown);
    let corner = |vertex| Thing::KeepOutCorner { keep_out: 0, vertex };
    assert_eq!(chosen(&desk), [corner(1), POND, corner(0)]);
    press(&mut desk, SHIFT, Key::ArrowUp);
    press(&mut desk, SHIFT, Key::ArrowUp);
    assert_eq!(chosen(&desk), [POND]);
    // Ctrl walks past, here over the corners; Space picks one more, and once more lets it go.
    for _ in 0..=example().ground.keep_outs[0].outline.len() {
        press(&mut desk, CTRL, Key::ArrowDown);
    }
    assert_eq!(chosen(&desk), [POND]);
    press(&mut desk, NONE, Key::Space);
    assert_eq!(chosen(&desk), [WELL, POND]);
    press(&mut desk, CTRL, Key::Space);
    assert_eq!(chosen(&desk), [POND]);
    press(&mut desk, SHIFT, Key::Space);
    assert_eq!(chosen(&desk), [WELL, POND]);
    // Both go together, out of the list.
    press(&mut desk, NONE, Key::L);
    press(&mut desk, NONE, Key::ArrowRight);
    let (was, now) = (example(), plan_of(&desk));
    for (now, was) in now.ground.keep_outs.iter().zip(&was.ground.keep_outs) {
        let moved = now.outline[0].east_m - was.outline[0].east_m;
        assert!((moved - 0.1).abs() < 1e-9, "{moved}");
    }
    assert_eq!(editor(&desk).deeds().0, [Deed::Move]);
}

#[test]
fn the_keys_are_in_the_list_of_commands() {
    let mut desk = desk(example(), Page::Run);
    click_on(&mut desk, "Find a command");
    for (typed, found) in [
        ("move the map", "Move the map while nothing is picked, with Shift further"),
        ("slide a picked side", "Slide a picked side square to itself by"),
        ("insert a corner", "Insert a corner in this side, or in the side after this corner"),
        ("pick the next one too", "In the list: pick the next one too"),
    ] {
        press(&mut desk, CTRL, Key::A);
        types(&mut desk, typed);
        desk.get_by_label_contains(found);
    }
}

#[test]
fn shift_to_the_end_of_the_list_picks_all_on_the_way_and_the_last_row_stays_picked() {
    let mut desk = desk(example(), Page::Ground);
    press(&mut desk, NONE, Key::L);
    press(&mut desk, NONE, Key::ArrowDown);
    press(&mut desk, SHIFT, Key::PageDown);
    let all = editor(&desk).chosen();
    assert!(all.len() > 6 && all.contains(&Thing::KeepOutCorner { keep_out: 0, vertex: 3 }), "{all:?}");
    press(&mut desk, NONE, Key::End);
    let last = editor(&desk).chosen();
    assert_eq!(last.len(), 1);
    press(&mut desk, SHIFT, Key::ArrowDown);
    assert_eq!(editor(&desk).chosen(), last, "below the last there is nothing to walk to");
}
