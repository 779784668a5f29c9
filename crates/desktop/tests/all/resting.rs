//! What the map says while no tool is at work: why a run is an outline alone, and what a press on what is not picked does.

use crate::hand::{Desk, button, click, drag, example, on_page, say, says, spot, window};
use desktop::editor::{Message, Page};
use drawing::Thing;
use egui::{Event, Key, Pos2, Rect, vec2};
use egui_kittest::kittest::Queryable;
use plan::{Plan, Point, RunStatus};
use words::{Language, Units, Words};

/// Inside the example's run, off all that stands in it.
const INSIDE: Point = Point { east_m: 55.0, north_m: 40.0 };
/// And so far east of it lies the other run.
const FAR_M: f64 = 62.0;

/// The example with a second run like the first, apart from it.
fn two_runs(status: RunStatus) -> Plan {
    let mut plan = example();
    let mut second = plan.runs[0].carried(|at| Point::new(at.east_m + FAR_M, at.north_m));
    (second.id, second.name, second.coop) = ("run-2".to_owned(), "Lower run".to_owned(), None);
    plan.runs.push(second);
    plan.runs.iter_mut().for_each(|run| run.status = status);
    plan
}

fn point_at(desk: &mut Desk, at: Pos2) {
    desk.event(Event::PointerMoved(at));
    desk.run();
    desk.run();
}

fn on(plan: Plan, page: Page) -> Desk {
    on_page(plan, page, [1280.0, 800.0], Words::default())
}

#[test]
fn a_run_that_is_led_over_another_says_why_that_becomes_an_outline() {
    const LIES_OVER: &str = "Lower run lies on the ground of Round Quince House, which is drawn as an outline";
    let mut desk = on(two_runs(RunStatus::Option), Page::Run);
    say(&mut desk, Message::Pick(Some(Thing::Run { run: 1 })));
    let from = spot(&desk, Point::new(INSIDE.east_m + FAR_M, INSIDE.north_m));
    let over = spot(&desk, Point::new(INSIDE.east_m - 5.0, INSIDE.north_m));
    point_at(&mut desk, from);
    button(&desk, from, true);
    desk.run();
    assert!(!says(&desk, LIES_OVER));
    for step in 1..=4 {
        point_at(&mut desk, from + (over - from) * step as f32 / 4.0);
    }
    assert!(says(&desk, LIES_OVER), "as soon as it happens");
    assert!(says(&desk, "drag one off the other, or click the outline"), "with its mend");
    button(&desk, over, false);
    desk.run();
    assert!(says(&desk, LIES_OVER), "and while it is so");
    // The outline says it of itself, and a click on it takes it in hand.
    let outline = desk.state().as_ref().unwrap().editor().plan().runs[0].outline.clone();
    let side = spot(
        &desk,
        Point::new(
            f64::midpoint(outline[4].east_m, outline[0].east_m),
            f64::midpoint(outline[4].north_m, outline[0].north_m),
        ),
    );
    point_at(&mut desk, side);
    assert!(says(&desk, "Round Quince House is an outline because it lies on the ground of Lower run"));
    click(&mut desk, side);
    assert_eq!(window(&desk).editor().run_index(), 0);
    point_at(&mut desk, side + vec2(-60.0, 0.0));
    assert!(says(&desk, "Round Quince House lies on the ground of Lower run"), "now the other is one");
    // Taken back they lie apart.
    desk.key_press_modifiers(egui::Modifiers::COMMAND, Key::Z);
    desk.run();
    assert!(!says(&desk, "on the ground of"));
}

#[test]
fn two_that_are_stated_to_stand_are_told_from_two_options() {
    let mut plan = two_runs(RunStatus::Standing);
    plan.runs[1] = plan.runs[1].carried(|at| Point::new(at.east_m - FAR_M + 8.0, at.north_m));
    let mut desk = on(plan, Page::Run);
    say(&mut desk, Message::Pick(Some(Thing::Run { run: 1 })));
    assert!(says(&desk, "Lower run and Round Quince House are both stated to stand, and lie over each other"));
}

#[test]
fn a_next_run_beside_the_one_in_hand_is_an_outline_and_says_whose_netting_it_uses() {
    let mut plan = example();
    plan.runs[0].status = RunStatus::Option;
    let next = moves::over_side(&plan, &plan.runs[0], None, 4, moves::Motion::TurnOver).unwrap().run;
    plan.runs.push(plan::Run { name: "Next".to_owned(), ..next });
    let mut desk = on(plan, Page::Run);
    let outline = window(&desk).editor().plan().runs[1].outline.clone();
    let west = outline.iter().min_by(|one, other| one.east_m.total_cmp(&other.east_m)).unwrap();
    let corner = spot(&desk, *west);
    point_at(&mut desk, corner);
    assert!(says(&desk, "Next is an outline because it uses netting of Round Quince House"));
    click(&mut desk, corner);
    assert_eq!(window(&desk).editor().run_index(), 1, "a click shows it whole");
    assert!(!says(&desk, "Next is an outline"));
}

#[test]
fn what_is_not_picked_says_that_a_click_comes_first_on_every_page() {
    const NOT_PICKED: &str = "Click Round Quince House to pick it, then drag it.";
    for page in [Page::Ground, Page::Run, Page::Power, Page::Moves, Page::Book] {
        let mut desk = on(example(), page);
        // A tool that was put away leaves the hand as it was.
        say(&mut desk, Message::Use(desktop::tool::Tool::tape()));
        desk.key_press(Key::Escape);
        desk.run();
        let at = spot(&desk, INSIDE);
        point_at(&mut desk, at);
        assert!(says(&desk, NOT_PICKED), "{page:?}");
        let (was, middle) = (window(&desk).editor().plan().clone(), window(&desk).editor().view().middle);
        drag(&mut desk, at, at + vec2(40.0, 0.0));
        assert_eq!(*window(&desk).editor().plan(), was, "{page:?}: a drag moves the map");
        assert!(window(&desk).editor().view().middle != middle, "{page:?}");
        let at = spot(&desk, INSIDE);
        click(&mut desk, at);
        assert_eq!(window(&desk).editor().picked(), Some(Thing::Run { run: 0 }), "{page:?}");
        point_at(&mut desk, at);
        assert!(!says(&desk, NOT_PICKED) && says(&desk, "Drag it to move it"), "{page:?}");
        drag(&mut desk, at, at + vec2(40.0, 0.0));
        let now = window(&desk).editor().plan().runs[0].outline.clone();
        let moved: Vec<f64> = now.iter().zip(&was.runs[0].outline).map(|(now, was)| now.east_m - was.east_m).collect();
        assert!(moved.iter().all(|by_m| *by_m > 1.0 && (by_m - moved[0]).abs() < 1e-6), "{page:?}: {moved:?}");
    }
}

#[test]
fn with_one_of_its_corners_picked_a_run_is_dragged_whole_and_says_so() {
    let mut desk = on(example(), Page::Run);
    say(&mut desk, Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 1 })));
    let (at, was) = (spot(&desk, INSIDE), window(&desk).editor().plan().runs[0].outline.clone());
    point_at(&mut desk, at);
    assert!(says(&desk, "A drag here moves all of Round Quince House."));
    drag(&mut desk, at, at + vec2(40.0, 0.0));
    let now = &window(&desk).editor().plan().runs[0].outline;
    assert!(now.iter().zip(&was).all(|(now, was)| now.east_m > was.east_m + 1.0));
}

#[test]
fn german_says_it_too() {
    let words = Words { language: Language::German, units: Units::Metric };
    let mut desk = on_page(example(), Page::Run, [1280.0, 800.0], words);
    let at = spot(&desk, INSIDE);
    point_at(&mut desk, at);
    assert!(says(&desk, "Round Quince House anklicken wählt aus"));
}

#[test]
fn the_hint_stands_clear_of_the_entry_at_a_corner_in_the_hand() {
    let mut desk = on(example(), Page::Run);
    let hint = |desk: &Desk| desk.get_by_label_contains("Posts and corners catch it").rect();
    let fields = |desk: &Desk| {
        ["Side from corner 5", "Side to corner 2"]
            .map(|label| desk.get_by_label(label).rect().expand2(vec2(12.0, 20.0)))
    };
    // Corner 1 is led down the map's left edge, where the hint stands at rest.
    let from = spot(&desk, example().runs[0].outline[0]);
    point_at(&mut desk, from);
    button(&desk, from, true);
    desk.run();
    let map = desk.get_by_label("Map").rect();
    let mut met = 0;
    for down in 0..12 {
        let to = map.left_bottom() + vec2(90.0, -20.0 - 14.0 * down as f32);
        point_at(&mut desk, to);
        let entry = fields(&desk);
        met += usize::from(entry[0].left() < map.left() + 400.0);
        assert!(entry.iter().all(|field| !hint(&desk).intersects(*field)), "{:?} {entry:?}", hint(&desk));
    }
    assert!(met > 6, "the entry was where the hint stands at rest");
}

#[test]
fn the_entry_at_a_corner_in_the_hand_leaves_its_plate_and_the_weakest_figure_in_sight() {
    let mut desk = on(example(), Page::Run);
    let map = desk.get_by_label("Map").rect();
    let from = spot(&desk, example().runs[0].outline[3]);
    point_at(&mut desk, from);
    button(&desk, from, true);
    desk.run();
    // How many plates on leaders, and how many signs about the corner, lie under a part of the screen.
    let under = |desk: &Desk, part: Rect, corner: Pos2| {
        let editor = window(desk).editor();
        let (_, taken) = editor.drawing().ink_and_taken(editor.view(), None);
        let part = part.translate(-map.min.to_vec2());
        let part = [part.left(), part.top(), part.right(), part.bottom()];
        (taken.flags_under(part), taken.signs_under(part, (corner - map.min.to_vec2()).into(), 64.0).0)
    };
    let mut would = (0, 0);
    for right in 0..5 {
        for down in 0..5 {
            let to = from + vec2(-40.0 + 30.0 * right as f32, -10.0 + 22.0 * down as f32);
            point_at(&mut desk, to);
            let corner = window(&desk).editor().plan().runs[0].outline[3];
            let corner = spot(&desk, corner);
            let [one, other] = ["Side from corner 3", "Side to corner 5"].map(|label| desk.get_by_label(label).rect());
            let entry = Rect::from_min_max(one.left_top() - vec2(50.0, 14.0), other.right_bottom() + vec2(60.0, 40.0));
            let covers = under(&desk, entry, corner);
            assert_eq!(covers, (0, 0), "{right} {down}");
            // Straight beyond the corner, as near as it stands where nothing is in its way.
            let nearest = Rect::from_min_size(corner + vec2(28.0, -28.0 - 84.0), vec2(356.0, 84.0));
            let covers = under(&desk, nearest, corner);
            would = (would.0 + covers.0, would.1 + covers.1);
        }
    }
    assert!(would.0 > 0 && would.1 > 0, "nothing was in the way: {would:?}");
}
