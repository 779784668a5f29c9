use super::{Drawn, Hand, Tool};
use plan::{Edit, Plan, Point, Run, Shape};

fn click(east_m: f64, north_m: f64) -> Hand {
    Hand::Click { at: Point::new(east_m, north_m), reach_m: 0.5 }
}

fn draw(of: Drawn, plan: &Plan, hands: &[Hand]) -> (Tool, Option<Edit>) {
    let mut state = (Tool::outline(of), None);
    for &hand in hands {
        assert!(state.1.is_none(), "nothing may follow the edit");
        state = state.0.step(hand, plan);
    }
    state
}

#[test]
fn clicks_and_enter_draw_a_run_with_a_free_name() {
    let plan = Plan { runs: vec![Run { id: "run-2".to_owned(), ..Run::default() }], ..Plan::default() };
    let (tool, edit) =
        draw(Drawn::Run, &plan, &[click(0.0, 0.0), click(10.0, 0.0), click(10.0, 0.0), click(10.0, 10.0), Hand::Close]);
    assert_eq!(tool, Tool::Pick);
    let Some(Edit::AddRun { index: 1, run }) = edit else { panic!("{edit:?}") };
    assert_eq!(run.id, "run-3");
    assert_eq!(run.outline.len(), 3, "a click on the last corner adds none");
}

#[test]
fn a_click_on_the_first_corner_closes_and_backspace_takes_up_the_last() {
    let (tool, edit) = draw(
        Drawn::Paddock,
        &Plan::default(),
        &[
            click(0.0, 0.0),
            click(10.0, 0.0),
            click(55.0, 5.0),
            Hand::Back,
            click(10.0, 10.0),
            Hand::Move(Point::new(3.0, 3.0)),
            click(0.2, 0.2),
        ],
    );
    assert_eq!(tool, Tool::Pick);
    let outline = vec![Point::new(0.0, 0.0), Point::new(10.0, 0.0), Point::new(10.0, 10.0)];
    assert_eq!(edit, Some(Edit::SetOutline { shape: Shape::Boundary, outline }));
}

#[test]
fn a_tape_goes_from_place_to_place_and_begins_anew_once_it_is_done() {
    let plan = Plan::default();
    let laid = |hands: &[Hand]| {
        let tool = hands.iter().fold(Tool::tape(), |tool, &hand| tool.step(hand, &plan).0);
        let Tool::Tape(tape) = tool else { panic!("it stays a tape") };
        tape
    };
    let first = [click(0.0, 0.0), Hand::Move(Point::new(3.0, 4.0))];
    assert_eq!(laid(&first).all(), [Point::new(0.0, 0.0), Point::new(3.0, 4.0)]);
    let done = [first[0], first[1], Hand::Close, Hand::Move(Point::new(9.0, 9.0))];
    assert_eq!(laid(&done).all().len(), 2, "what is done stays");
    let anew = [done[0], done[1], done[2], click(7.0, 7.0)];
    assert_eq!(laid(&anew).all(), [Point::new(7.0, 7.0)]);
    assert_eq!(Tool::tape().step(Hand::Leave, &plan), (Tool::Pick, None));
}

#[test]
fn enter_takes_the_corner_at_the_pointer_but_no_double() {
    let plan = Plan::default();
    let corners = [click(0.0, 0.0), click(10.0, 0.0), click(10.0, 10.0)];
    let drawn = |of: Drawn, last: &[Hand]| {
        let (tool, edit) = draw(of, &plan, &[&corners[..], last].concat());
        assert_eq!(tool, Tool::Pick);
        match edit {
            Some(Edit::AddRun { run, .. }) => run.outline.len(),
            Some(Edit::SetWalls { walls }) => walls[0].path.len(),
            other => panic!("{other:?}"),
        }
    };
    let move_to = |east_m: f64, north_m: f64| Hand::Move(Point::new(east_m, north_m));
    assert_eq!(drawn(Drawn::Run, &[move_to(0.0, 10.0), Hand::CloseHere]), 4);
    assert_eq!(drawn(Drawn::Run, &[move_to(10.0, 10.0), Hand::CloseHere]), 3, "no double of the last");
    assert_eq!(drawn(Drawn::Run, &[move_to(0.0, 0.0), Hand::CloseHere]), 3, "none on the first");
    assert_eq!(drawn(Drawn::Run, &[move_to(0.0, 10.0), Hand::Off, Hand::CloseHere]), 3, "off the map");
    assert_eq!(drawn(Drawn::Run, &[move_to(0.0, 10.0), Hand::Close]), 3, "a double click set its own");
    let wall = Drawn::Wall(plan::WallKind::Wall);
    assert_eq!(drawn(wall, &[move_to(0.0, 0.0), Hand::CloseHere]), 4, "a path may come back to its start");
}

#[test]
fn two_corners_do_not_close_and_esc_leaves() {
    let plan = Plan::default();
    let (tool, edit) = draw(Drawn::Run, &plan, &[click(0.0, 0.0), click(10.0, 0.0), Hand::Close]);
    assert!(tool.draws(Drawn::Run) && edit.is_none());
    assert_eq!(tool.step(Hand::Leave, &plan), (Tool::Pick, None));
}
