//! Figures of whatever is drawn, typed at the pointer: its first corner by coordinates, the next by side and turn.

use crate::hand::{Desk, click, deeds, editor, example, on_page, plan_of, say, window};
use crate::picked_entries::at_work;
use crate::snapping::{self, clicks, press};
use desktop::editor::{Message, Page};
use desktop::tool::{Drawn, Tool};
use egui::{Event, Key};
use egui_kittest::kittest::Queryable;
use plan::{HazardKind, Plan, Point, WallKind};
use words::{Language, Words};

/// Every kind that is drawn by its corners, but a run, which has an entry of its own.
const DRAWN: [Drawn; 9] = [
    Drawn::Paddock,
    Drawn::KeepOut,
    Drawn::Water,
    Drawn::Shade,
    Drawn::Damp,
    Drawn::Wall(WallKind::Hedge),
    Drawn::Hazard(HazardKind::OverheadLine),
    Drawn::Hazard(HazardKind::PublicWay),
    Drawn::Branch,
];

/// Bare ground of 100 m by 80 m with the example's first run on it.
fn field() -> Plan {
    let mut plan = example();
    plan.heights.clear();
    plan.ground.height_grid = None;
    plan.ground.keep_outs.clear();
    plan.ground.hazards.clear();
    plan.ground.gateway = None;
    plan.runs.truncate(1);
    plan
}

fn drawing(of: Drawn, words: Words) -> Desk {
    let mut desk = on_page(field(), Page::Ground, [1280.0, 800.0], words);
    say(&mut desk, Message::Use(Tool::outline(of)));
    // Nothing that stands there catches the first corner.
    say(&mut desk, Message::Free(true));
    desk
}

fn points(desk: &mut Desk, east_m: f64, north_m: f64) {
    snapping::points(desk, Point::new(east_m, north_m));
}

/// Types as a keyboard does, one letter in a frame; a digit is a key too.
pub(crate) fn types(desk: &mut Desk, text: &str) {
    for letter in text.chars() {
        if let Some(key) = Key::from_name(&letter.to_string()) {
            desk.key_press(key);
        }
        desk.event(Event::Text(letter.to_string()));
        desk.run();
    }
}

fn corners(desk: &Desk) -> Vec<Point> {
    let Tool::Outline { corners, .. } = editor(desk).tool() else { panic!("{:?}", editor(desk).tool()) };
    corners.clone()
}

pub(crate) fn is_off(from: Point, to: Point, east_m: f64, north_m: f64) -> bool {
    (to.east_m - from.east_m - east_m).hypot(to.north_m - from.north_m - north_m) > 1e-9
}

#[test]
fn the_side_and_the_turn_of_whatever_is_drawn_are_typed_at_the_pointer() {
    for of in DRAWN {
        let mut desk = drawing(of, Words::default());
        assert!(desk.query_by_label("Side").is_none(), "{of:?}: no side before a corner is set");
        clicks(&mut desk, 30.0, 25.0);
        points(&mut desk, 38.0, 33.0);
        desk.get_by_label("corner 2, free");
        // The first side: its length at once, Tab leads to its bearing, Enter sets the corner.
        types(&mut desk, "12.5");
        press(&mut desk, Key::Tab);
        assert!(desk.query_by_label("Turn").is_none(), "{of:?}: a first side has a bearing");
        desk.get_by_label("Bearing");
        types(&mut desk, "90");
        press(&mut desk, Key::Enter);
        // The next one turns, to the hand where the pointer is.
        points(&mut desk, 50.0, 15.0);
        types(&mut desk, "7");
        press(&mut desk, Key::Tab);
        desk.get_by_label("Turn");
        types(&mut desk, "90");
        press(&mut desk, Key::Enter);
        let corners = corners(&desk);
        assert_eq!(corners.len(), 3, "{of:?}");
        assert!(!is_off(corners[0], corners[1], 12.5, 0.0), "{of:?}: {corners:?}");
        assert!(!is_off(corners[1], corners[2], 0.0, -7.0), "{of:?}: {corners:?}");
        assert_eq!(editor(&desk).page(), Page::Ground, "{of:?}: digits turn no page meanwhile");
    }
}

#[test]
fn a_paddock_that_is_typed_round_is_stated_by_those_figures_in_one_step() {
    let mut desk = drawing(Drawn::Paddock, Words::default());
    let before = deeds(&desk);
    clicks(&mut desk, 20.0, 15.0);
    for (side, turn, towards) in [("40", "90", (60.0, 15.5)), ("30", "90", (60.0, 45.0)), ("40", "90", (20.0, 45.0))] {
        points(&mut desk, towards.0, towards.1);
        types(&mut desk, side);
        press(&mut desk, Key::Tab);
        types(&mut desk, turn);
        press(&mut desk, Key::Enter);
    }
    press(&mut desk, Key::Enter);
    let outline = plan_of(&desk).ground.boundary;
    assert_eq!(outline.len(), 4, "{outline:?}");
    for (corner, east_m, north_m) in [(1, 40.0, 0.0), (2, 40.0, 30.0), (3, 0.0, 30.0)] {
        assert!(!is_off(outline[0], outline[corner], east_m, north_m), "{outline:?}");
    }
    assert_eq!(deeds(&desk), before + 1);
}

#[test]
fn a_figure_that_cannot_be_used_is_said_under_the_entry_and_sets_nothing() {
    let mut desk = drawing(Drawn::KeepOut, Words::default());
    clicks(&mut desk, 30.0, 25.0);
    points(&mut desk, 38.0, 25.0);
    types(&mut desk, "7 ha");
    press(&mut desk, Key::Enter);
    desk.get_by_label_contains("“ha” is no unit for this");
    assert_eq!(corners(&desk).len(), 1, "no corner was set");
    // It stays to be mended.
    press(&mut desk, Key::Backspace);
    press(&mut desk, Key::Backspace);
    press(&mut desk, Key::Backspace);
    assert!(desk.query_by_label_contains("is no unit").is_none());
    press(&mut desk, Key::Enter);
    let set = corners(&desk);
    let side_m = (set[1].east_m - set[0].east_m).hypot(set[1].north_m - set[0].north_m);
    assert!((side_m - 7.0).abs() < 1e-9, "{set:?}");
}

#[test]
fn esc_gives_back_to_the_pointer_and_then_leaves_the_tool() {
    let mut desk = drawing(Drawn::Shade, Words::default());
    clicks(&mut desk, 30.0, 25.0);
    points(&mut desk, 38.0, 25.0);
    types(&mut desk, "20");
    assert!(editor(&desk).tool().is_typed());
    press(&mut desk, Key::Escape);
    assert!(!editor(&desk).tool().is_typed());
    clicks(&mut desk, 38.0, 25.0);
    let set = corners(&desk);
    assert!((set[1].east_m - set[0].east_m - 8.0).abs() < 0.2, "the pointer leads again: {set:?}");
    press(&mut desk, Key::Escape);
    assert_eq!(*window(&desk).editor().tool(), Tool::Pick);
}

#[test]
fn what_is_typed_is_not_caught_by_what_stands_beside_it() {
    let mut desk = drawing(Drawn::Wall(WallKind::Wall), Words::default());
    say(&mut desk, Message::Free(false));
    let corner = plan_of(&desk).ground.boundary[0];
    clicks(&mut desk, corner.east_m + 20.0, corner.north_m + 1.0);
    points(&mut desk, corner.east_m + 20.5, corner.north_m + 0.5);
    types(&mut desk, "9");
    points(&mut desk, corner.east_m + 0.1, corner.north_m + 0.1);
    assert!(editor(&desk).snapped().is_none(), "a typed side is that side");
    press(&mut desk, Key::Enter);
    let set = corners(&desk);
    let side_m = (set[1].east_m - set[0].east_m).hypot(set[1].north_m - set[0].north_m);
    assert!((side_m - 9.0).abs() < 1e-9, "{set:?}");
}

#[test]
fn the_entry_speaks_german() {
    let words = Words { language: Language::German, ..Words::default() };
    let mut desk = drawing(Drawn::Paddock, words);
    clicks(&mut desk, 30.0, 25.0);
    points(&mut desk, 38.0, 33.0);
    for label in ["Seite", "Richtung", "Ecke 2, frei"] {
        desk.get_by_label(label);
    }
    clicks(&mut desk, 38.0, 25.0);
    points(&mut desk, 38.0, 31.0);
    desk.get_by_label("Knick");
}

#[test]
fn the_first_corner_and_what_is_one_place_are_typed_by_their_coordinates() {
    let first = |plan: &Plan, of: Drawn| match of {
        Drawn::Coop => plan.coop.as_ref().map(|coop| coop.at),
        Drawn::Gateway => plan.ground.gateway.as_ref().map(|gateway| gateway.at),
        Drawn::Energizer(run) => plan.runs[run].energizer_at,
        Drawn::Height => plan.heights.last().map(|height| height.at),
        Drawn::Label => plan.labels.last().map(|label| label.at),
        _ => None,
    };
    let places = [Drawn::Coop, Drawn::Gateway, Drawn::Energizer(0), Drawn::Height, Drawn::Label];
    for of in places.into_iter().chain([Drawn::Paddock, Drawn::Run]) {
        let mut desk = at_work(Page::Ground);
        let before = deeds(&desk);
        say(&mut desk, Message::Use(Tool::outline(of)));
        assert!(desk.query_by_label_contains("Enter sets it").is_none(), "{of:?}: nothing stands in the way till then");
        types(&mut desk, "21.5");
        assert_eq!(editor(&desk).page(), Page::Ground, "{of:?}: a digit turns no page");
        desk.get_by_label("from the plan’s origin: Enter sets it");
        press(&mut desk, Key::Tab);
        types(&mut desk, "14");
        press(&mut desk, Key::Enter);
        let stands = if of.is_place() { first(&plan_of(&desk), of) } else { corners(&desk).first().copied() };
        assert_eq!(stands, Some(Point::new(21.5, 14.0)), "{of:?}");
        assert_eq!(deeds(&desk), before + usize::from(of.is_place()), "{of:?}");
        assert!(desk.query_by_label_contains("Enter sets it").is_none(), "{of:?}");
    }
}

#[test]
fn a_coordinate_that_is_not_typed_follows_the_pointer_and_esc_gives_it_back() {
    let mut desk = at_work(Page::Ground);
    say(&mut desk, Message::Use(Tool::outline(Drawn::Gateway)));
    points(&mut desk, 50.0, 10.0);
    types(&mut desk, "33");
    points(&mut desk, 50.0, 20.0);
    assert!(editor(&desk).tool().is_typed());
    press(&mut desk, Key::Escape);
    assert!(!editor(&desk).tool().is_typed());
    assert!(editor(&desk).tool().draws(Drawn::Gateway), "the first Esc is the entry's");
    types(&mut desk, "33");
    clicks(&mut desk, 50.0, 20.0);
    let at = plan_of(&desk).ground.gateway.unwrap().at;
    assert!((at.east_m - 33.0).abs() < 1e-9 && (at.north_m - 20.0).abs() < 0.2, "{at:?}");
}

#[test]
fn a_branch_hangs_on_the_line_with_its_first_corner_so_that_its_first_side_is_as_typed() {
    let mut desk = at_work(Page::Run);
    say(&mut desk, Message::Use(Tool::outline(Drawn::Branch)));
    // A little beside the line.
    types(&mut desk, "42");
    press(&mut desk, Key::Tab);
    types(&mut desk, "20");
    press(&mut desk, Key::Enter);
    let first = corners(&desk)[0];
    assert!(!is_off(Point::new(40.0, 20.0), first, 0.0, 0.0), "{first:?}");
    points(&mut desk, 55.0, 22.0);
    types(&mut desk, "17.5");
    press(&mut desk, Key::Tab);
    types(&mut desk, "90");
    press(&mut desk, Key::Enter);
    press(&mut desk, Key::Enter);
    let branch = plan_of(&desk).runs[0].branches.last().unwrap().outline.clone();
    assert!(!is_off(branch[0], branch[1], 17.5, 0.0), "{branch:?}");
}

#[test]
fn a_coordinate_that_is_out_of_sight_leads_no_pointer() {
    let mut desk = drawing(Drawn::Gateway, Words::default());
    points(&mut desk, 20.0, 20.0);
    types(&mut desk, "33");
    // The page has the keys now.
    click(&mut desk, egui::pos2(1100.0, 60.0));
    desk.run();
    clicks(&mut desk, 50.0, 40.0);
    let at = plan_of(&desk).ground.gateway.unwrap().at;
    assert!((at.east_m - 50.0).abs() < 0.3 && (at.north_m - 40.0).abs() < 0.3, "{at:?}");
}

#[test]
fn a_coordinate_west_of_the_origin_begins_with_its_sign() {
    let mut desk = drawing(Drawn::Gateway, Words::default());
    points(&mut desk, 20.0, 20.0);
    let px_per_m = editor(&desk).view().px_per_m;
    desk.key_press(Key::Minus);
    desk.event(Event::Text("-".to_owned()));
    desk.run();
    types(&mut desk, "12");
    press(&mut desk, Key::Enter);
    assert_eq!(plan_of(&desk).ground.gateway.unwrap().at.east_m, -12.0);
    assert_eq!(editor(&desk).view().px_per_m, px_per_m, "and the map keeps its scale");
}
