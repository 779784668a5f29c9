//! Slopes at the window: by hand on the Run page, spots on the Ground page, dips in sight.

use crate::hand;
use crate::hand::{click, click_on, drag, example, fill, on_page, says, spot, window};
use desktop::Opening;
use desktop::editor::{Message, Page};
use drawing::{Role, Thing};
use egui::Key;
use egui_kittest::kittest::Queryable;
use plan::{HeightGrid, Plan, Point, Rest};
use words::Words;

fn desk(plan: Plan, page: Page) -> hand::Desk {
    on_page(plan, page, [1280.0, 3000.0], Words::default())
}

fn surface_m(desk: &hand::Desk) -> f64 {
    window(desk).editor().run().unwrap().1.slope.as_ref().unwrap().surface_m
}

#[test]
fn a_side_is_said_to_rise_in_metres_or_one_in_so_many() {
    let plan = example();
    let outline = plan.runs[0].outline.clone();
    let apart_m = |a: Point, b: Point| (a.east_m - b.east_m).hypot(a.north_m - b.north_m);
    let side_m = apart_m(outline[0], outline[1]);
    let mut desk = desk(plan, Page::Run);
    let level_m = window(&desk).editor().run().unwrap().1.line_m.unwrap();
    assert!(window(&desk).editor().run().unwrap().1.slope.is_none());
    assert!(desk.query_by_label("Gap allowed under the net").is_none(), "without heights nothing is asked of the gap");
    let spare_m = window(&desk).editor().run().unwrap().1.lay.as_ref().unwrap().spare_m;
    click_on(&mut desk, "Say what the sides rise");
    desk.run();
    fill(&mut desk, "What side 1 to 2 rises", "4");
    let want_m = level_m - side_m + side_m.hypot(4.0);
    assert!((surface_m(&desk) - want_m).abs() < 1e-9, "{} {want_m}", surface_m(&desk));
    let lay = window(&desk).editor().run().unwrap().1.lay.clone().unwrap();
    assert!((lay.spare_m - lay.short_m - (spare_m - (want_m - level_m))).abs() < 1e-9);
    for (typed, one_in) in [("1 in 8", 8.0), ("-1 in 12,5", -12.5), ("1:20", 20.0), ("10 %", 10.0)] {
        fill(&mut desk, "What side 1 to 2 rises", typed);
        let slopes = &window(&desk).editor().plan().runs[0].side_slopes;
        assert_eq!(slopes.len(), 1, "{typed}");
        assert!((slopes[0].one_in.unwrap() - one_in).abs() < 1e-9, "{typed}");
        let want_m = level_m - side_m + side_m.hypot(side_m / one_in);
        assert!((surface_m(&desk) - want_m).abs() < 1e-9, "{typed}");
    }
    // Nonsense stays in the field and changes nothing; nothing at all takes the slope back.
    fill(&mut desk, "What side 1 to 2 rises", "1 in none");
    assert!((surface_m(&desk) - (level_m - side_m + side_m.hypot(side_m / 10.0))).abs() < 1e-9);
    desk.key_press(Key::Escape);
    desk.run();
    window_say(&mut desk, Message::Undo);
    let slope = &window(&desk).editor().plan().runs[0].side_slopes[0];
    assert_eq!(slope.one_in, Some(20.0), "each typed rise is one step");
}

#[test]
fn a_sides_field_and_its_label_on_the_map_tell_one_figure_along_the_ground() {
    let mut desk = desk(example(), Page::Run);
    click_on(&mut desk, "Say what the sides rise");
    desk.run();
    fill(&mut desk, "What side 1 to 2 rises", "4");
    fill(&mut desk, "Length of side 1 to 2", "30");
    let editor = window(&desk).editor();
    let outline = &editor.plan().runs[0].outline;
    let on_map_m = (outline[1].east_m - outline[0].east_m).hypot(outline[1].north_m - outline[0].north_m);
    assert!((on_map_m - (900.0_f64 - 16.0).sqrt()).abs() < 1e-6, "{on_map_m}");
    let labels: Vec<&String> = editor
        .drawing()
        .shapes()
        .filter(|shape| shape.thing == Some(Thing::RunSide { run: 0, side: 0 }))
        .filter_map(|shape| if let drawing::Form::Label { texts, .. } = &shape.form { texts.last() } else { None })
        .collect();
    assert_eq!(labels, ["30.0 m"]);
    // Shorter than it rises: a sentence, and the plan stays.
    let before = window(&desk).editor().plan().clone();
    fill(&mut desk, "Length of side 1 to 2", "3.5");
    assert!(says(&desk, "Along the ground no side is that short here"));
    assert_eq!(*window(&desk).editor().plan(), before);
}

fn window_say(desk: &mut hand::Desk, message: Message) {
    desk.state_mut().as_mut().unwrap().say(message);
    desk.run();
}

#[test]
fn heights_are_put_down_on_the_map_and_typed_on_the_page() {
    let mut desk = desk(example(), Page::Ground);
    let (low, high) = (Point::new(14.0, 30.0), Point::new(60.0, 30.0));
    for (number, at, typed) in [(1, low, "101"), (2, high, "106,5")] {
        click_on(&mut desk, "Put down a height");
        let on_map = spot(&desk, at);
        click(&mut desk, on_map);
        let heights = &window(&desk).editor().plan().heights;
        assert_eq!(heights.len(), number);
        assert_eq!(window(&desk).editor().picked(), Some(Thing::Height { height: number - 1 }));
        fill(&mut desk, &format!("Height {number}, up"), typed);
    }
    let heights = window(&desk).editor().plan().heights.clone();
    assert_eq!(heights.iter().map(|height| height.up_m).collect::<Vec<_>>(), [101.0, 106.5]);
    let level_m = window(&desk).editor().run().unwrap().1.line_m.unwrap();
    assert!(surface_m(&desk) > level_m);
    // A spot is dragged, undone, and taken out by emptying its field or by the key.
    let (from, to) = (spot(&desk, heights[0].at), spot(&desk, Point::new(20.0, 34.0)));
    drag(&mut desk, from, to);
    let moved = window(&desk).editor().plan().heights[0].at;
    assert!((moved.east_m - heights[0].at.east_m).abs() > 3.0, "{moved:?}");
    window_say(&mut desk, Message::Undo);
    assert_eq!(window(&desk).editor().plan().heights, heights);
    window_say(&mut desk, Message::Pick(Some(Thing::Height { height: 1 })));
    window_say(&mut desk, Message::Remove);
    assert_eq!(window(&desk).editor().plan().heights.len(), 1);
    assert!(says(&desk, "One height says nothing of a slope"));
    assert!(window(&desk).editor().run().unwrap().1.slope.is_none());
}

#[test]
fn dips_are_drawn_and_told_with_the_post_that_mends_them() {
    let mut plan = example();
    let (columns, rows) = (120_u32, 120_u32);
    let ditch = |east_m: f64| -0.35 * (1.0 - (east_m - 40.0).abs() / 1.2).max(0.0);
    let up_m = (0..columns * rows).map(|node| Some(ditch(f64::from(node % columns) * 0.8))).collect();
    plan.ground.height_grid = Some(std::sync::Arc::new(HeightGrid {
        south_west: Point::new(0.0, -10.0),
        cell_m: 0.8,
        columns,
        up_m,
        rest: Rest::new(),
    }));
    let mut desk = desk(plan, Page::Run);
    let slope = window(&desk).editor().run().unwrap().1.slope.clone().unwrap();
    assert!(slope.dips().count() > 0 && slope.unknown_m == 0.0, "{slope:?}");
    let drawn = |desk: &hand::Desk, role: Role| {
        window(desk).editor().drawing().shapes().filter(|shape| shape.role == role).count()
    };
    assert_eq!(drawn(&desk, Role::Dip), slope.dips().count());
    assert_eq!(drawn(&desk, Role::FurtherPost), slope.posts().count());
    assert!(says(&desk, ": gap ") && says(&desk, "further post"));
    // A wider gap allowed, and the dip is none.
    fill(&mut desk, "Gap allowed under the net", "60");
    assert_eq!(window(&desk).editor().plan().runs[0].gap_under_net_m, Some(0.6));
    assert_eq!(drawn(&desk, Role::Dip), 0);
    // The grid goes as it came, in one step.
    window_say(&mut desk, Message::Open(Page::Ground));
    assert!(says(&desk, "A grid of 120 by 120 heights"));
    click_on(&mut desk, "Take out the grid");
    assert!(window(&desk).editor().plan().ground.height_grid.is_none());
    assert!(window(&desk).editor().run().unwrap().1.slope.is_none());
}

#[test]
fn a_grid_is_brought_in_as_one_step_and_a_bad_file_leads_back_to_the_choice() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("field.netfold.json");
    std::fs::write(&path, hand::EXAMPLE).unwrap();
    let grid = |first: f64| {
        let row: Vec<String> = (0..160).map(|column| format!("{:.2}", 0.1 * f64::from(column))).collect();
        let rows = vec![row.join(" "); 110].join("\n");
        format!("ncols 160\nnrows 110\nxllcenter {first}\nyllcenter -10\ncellsize 1\n{rows}\n")
    };
    std::fs::write(folder.path().join("here.asc"), grid(-8.0)).unwrap();
    std::fs::write(folder.path().join("away.asc"), grid(900_000.0)).unwrap();
    let opening = Opening { plan: example(), path: Some(path), ..Opening::default() };
    let mut desk = hand::open(opening, [1280.0, 2600.0]);
    window_say(&mut desk, Message::Open(Page::Ground));
    let before = window(&desk).editor().plan().clone();
    click_on(&mut desk, "Bring in a grid …");
    fill(&mut desk, "File name", "away.asc");
    assert!(says(&desk, "bring in a clip of this ground"));
    click_on(&mut desk, "Understood");
    assert_eq!(*window(&desk).editor().plan(), before);
    fill(&mut desk, "File name", "here.asc");
    hand::settle(&mut desk);
    let slope = window(&desk).editor().run().unwrap().1.slope.clone().unwrap();
    assert!(slope.surface_m > slope.level_m && slope.unknown_m == 0.0);
    assert!((slope.steepest.slope - 0.1).abs() < 1e-3, "{}", slope.steepest.slope);
    assert_eq!(window(&desk).editor().deeds().0.len(), 1);
    window_say(&mut desk, Message::Undo);
    assert_eq!(*window(&desk).editor().plan(), before);
}

#[test]
fn what_a_side_rises_stays_with_it_however_much_longer_it_is_typed() {
    let mut plan = example();
    let corner = |number: i32| {
        let (sin, cos) = (f64::from(number) * std::f64::consts::FRAC_PI_3).sin_cos();
        Point::new(30.0 + 10.0 * cos, 30.0 + 10.0 * sin)
    };
    plan.runs[0].outline = (0..6).map(corner).collect();
    let mut desk = desk(plan, Page::Run);
    click_on(&mut desk, "Say what the sides rise");
    desk.run();
    fill(&mut desk, "What side 1 to 2 rises", "1");
    fill(&mut desk, "Length of side 1 to 2", "25");
    let run = &window(&desk).editor().plan().runs[0];
    assert!(run.side_slope(0).is_some() && run.side_slope(1).is_none(), "{:?}", run.side_slopes);
}
