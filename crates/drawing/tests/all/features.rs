//! Walls, shade, words, drop points and the coop's door: drawn, picked; and all of it legible over any picture.

use drawing::{Colour, Form, Ink, Role, Theme, Thing, View};
use plan::{
    Coop, Damp, DoorSide, Hazard, HazardKind, KeepOut, Label, LabelSize, Plan, Point, Run, Shade, TapeLetter, Wall,
    WallKind,
};

fn plan() -> Plan {
    let path = |north_m: f64| vec![Point::new(0.0, north_m), Point::new(40.0, north_m)];
    let wall = |kind: WallKind, north_m: f64| Wall {
        name: String::new(),
        kind: Some(kind),
        path: path(north_m),
        holds_birds: Some(kind == WallKind::Hedge),
        ..Wall::default()
    };
    let mut plan = Plan {
        walls: vec![wall(WallKind::Wall, 0.0), wall(WallKind::Hedge, 10.0), wall(WallKind::Fence, 20.0)],
        labels: vec![Label {
            at: Point::new(20.0, 35.0),
            text: "Trough".to_owned(),
            size: Some(LabelSize::Large),
            ..Label::default()
        }],
        coop: Some(Coop::new("hut", Point::new(50.0, 15.0))),
        ..Plan::default()
    };
    let outline = vec![Point::new(45.0, 30.0), Point::new(55.0, 30.0), Point::new(50.0, 38.0)];
    plan.ground.shade = vec![Shade { outline, ..Shade::default() }];
    plan.runs = vec![Run { id: "r".to_owned(), drop_at: Some(Point::new(10.0, 30.0)), ..Run::default() }];
    plan
}

fn drawn(plan: &Plan) -> drawing::Drawing {
    let worked = workup::workup(plan, workup::Depth::Quick);
    let findings = care::Findings::default();
    drawing::map(&drawing::Scene { plan, workup: &worked, findings: &findings, words: words::Words::default() })
}

fn view(theme: Theme) -> View {
    View::fit(Some((Point::new(-5.0, -5.0), Point::new(60.0, 45.0))), [900.0, 700.0], 10.0, theme)
}

#[test]
fn each_is_picked_where_it_is_seen() {
    let plan = plan();
    let (drawing, view) = (drawn(&plan), view(Theme::Light));
    let at = |east_m: f64, north_m: f64| drawing.thing_at(&view, view.spot(Point::new(east_m, north_m)), 9.0);
    assert_eq!(at(12.0, 0.2), Some(Thing::Wall { wall: 0 }));
    assert_eq!(at(12.0, 9.8), Some(Thing::Wall { wall: 1 }));
    assert_eq!(at(12.0, 20.0), Some(Thing::Wall { wall: 2 }));
    assert_eq!(at(50.0, 33.0), Some(Thing::Shade { shade: 0 }));
    assert_eq!(at(20.0, 35.0), Some(Thing::Label { label: 0 }));
    // From the head of their letters to their foot, and no farther.
    let [right, down] = view.spot(Point::new(20.0, 35.0));
    for (off, label) in [(-11.5, None), (-10.5, Some(0)), (10.5, Some(0)), (11.5, None)] {
        let picked = drawing.thing_at(&view, [right, down + off], 9.0);
        assert_eq!(picked, label.map(|label| Thing::Label { label }), "{off} px below");
    }
    assert_eq!(at(10.0, 30.0), Some(Thing::Drop { run: 0 }));
    let door = plan.coop.as_ref().unwrap().door_at();
    assert_eq!(at(door.east_m, door.north_m), Some(Thing::CoopDoor));
    assert_eq!(at(50.0, 15.0), Some(Thing::Coop { coop: 0 }));
    assert_eq!(at(0.0, 40.0), None);
}

#[test]
fn a_wall_has_two_lines_and_blocks_a_hedge_rounds_and_what_holds_birds_bars_at_its_ends() {
    let all = plan();
    let only = |wall: usize| {
        let plan = Plan { walls: vec![all.walls[wall].clone()], ..Plan::default() };
        drawn(&plan).ink(&view(Theme::Light))
    };
    let bare = drawn(&Plan::default()).ink(&view(Theme::Light)).len();
    let lines = |ink: &[Ink]| ink.iter().filter(|item| matches!(item, Ink::Line { .. })).count();
    let discs = |ink: &[Ink]| ink.iter().filter(|item| matches!(item, Ink::Disc { .. })).count();
    let view = view(Theme::Light);
    let long_px = 40.0 * view.px_per_m;
    // A bed, two edges, and a joint each 24 px.
    let joints = ((long_px - 12.0) / 24.0).floor() as usize + 1;
    assert!(lines(&only(0)) >= joints + 3 && discs(&only(0)) == 0);
    assert!(discs(&only(1)) > 20, "{}", discs(&only(1)));
    let areas = only(2).iter().filter(|item| matches!(item, Ink::Area { .. })).count();
    assert!(areas >= (long_px / 18.0) as usize, "{areas}");
    assert!(only(2).len() > bare);
}

#[test]
fn the_door_stands_in_the_wall_that_is_said_and_points_where_it_is_held() {
    let coop = Coop { heading_deg: Some(0.0), ..Coop::new("hut", Point::new(0.0, 0.0)) };
    let out = |side: DoorSide| Coop { door: Some(side), ..coop.clone() }.door_at();
    assert!(out(DoorSide::Right).east_m > 1.2 && out(DoorSide::Left).east_m < -1.2);
    assert!(out(DoorSide::Ahead).north_m > 3.0 && out(DoorSide::Behind).north_m < -3.0);
    for side in [DoorSide::Right, DoorSide::Left, DoorSide::Ahead, DoorSide::Behind] {
        let held = Coop { door: Some(side), ..coop.clone() }.with_door_towards(Point::new(7.0, 7.0));
        let door = held.door_at();
        assert!((door.east_m - door.north_m).abs() < 1e-9 && door.east_m > 0.0, "{side:?}: {door:?}");
    }
    assert_eq!(coop.with_door_towards(coop.at), coop);
}

#[test]
fn a_picture_is_no_ink_and_no_ground_of_the_drawing() {
    let mut plan = plan();
    let (bounds, ink) = (drawn(&plan).bounds(), drawn(&plan).ink(&view(Theme::Light)));
    plan.underlay = Some(plan::Underlay { size_px: Some([4000, 4000]), ..plan::Underlay::new("air.png".to_owned()) });
    let with = drawn(&plan);
    assert_eq!((with.bounds(), with.ink(&view(Theme::Light))), (bounds, ink));
    assert!(with.shapes().any(|shape| shape.role == Role::Underlay && matches!(shape.form, Form::Area { .. })));
}

#[test]
fn over_a_picture_words_lie_on_plates_and_fills_let_it_through() {
    let mut plan = plan();
    plan.ground.boundary =
        vec![Point::new(-4.0, -4.0), Point::new(58.0, -4.0), Point::new(58.0, 44.0), Point::new(-4.0, 44.0)];
    let (drawing, plain) = (drawn(&plan), view(Theme::Light));
    let palette = Theme::Light.palette();
    let filled = |ink: &[Ink], colour: Colour| {
        ink.iter().filter(|item| matches!(item, Ink::Area { fill, .. } if *fill == colour)).count()
    };
    let (without, with) = (drawing.ink(&plain), drawing.ink(&View { underlay: true, ..plain }));
    assert!(filled(&without, palette.grass) == 1 && filled(&with, palette.grass) == 0);
    assert!(filled(&with, palette.sheet) > filled(&without, palette.sheet), "the words' plates");
}

#[test]
fn of_known_places_the_two_that_lie_apart_have_their_letters() {
    let known = |east_m: f64| plan::TapePoint { at: Point::new(east_m, 40.0), ..plan::TapePoint::default() };
    // The second stands on the first, so that the third counts.
    let plan = Plan { tape_points: vec![known(5.0), known(5.0), known(25.0), known(45.0)], ..Plan::default() };
    let drawing = drawn(&plan);
    let letters: Vec<Option<TapeLetter>> = drawing
        .shapes()
        .filter_map(|shape| if let Role::TapePoint { letter } = shape.role { Some(letter) } else { None })
        .collect();
    assert_eq!(letters, [Some(TapeLetter::P), None, Some(TapeLetter::Q), None]);
    for theme in [Theme::Light, Theme::Dark, Theme::Contrast, Theme::Print] {
        let view = view(theme);
        let texts: Vec<(String, [f32; 2])> = drawing
            .ink(&view)
            .into_iter()
            .filter_map(|item| if let Ink::Text { text, at, .. } = item { Some((text, at)) } else { None })
            .collect();
        let spots = [5.0, 25.0].map(|east_m| view.spot(Point::new(east_m, 40.0)));
        assert_eq!(texts, [("P".to_owned(), spots[0]), ("Q".to_owned(), spots[1])], "{theme:?}");
    }
    let view = view(Theme::Light);
    let at = |east_m: f64, right: f32| {
        let [x, y] = view.spot(Point::new(east_m, 40.0));
        drawing.thing_at(&view, [x + right, y], 9.0)
    };
    assert_eq!(at(45.0, 0.0), Some(Thing::TapePoint { point: 3 }));
    assert_eq!(at(25.0, 10.0), Some(Thing::TapePoint { point: 2 }), "anywhere on its diamond");
    assert_eq!(at(25.0, 30.0), None);
}

/// The table of the paddock's outline calls its corners by numbers: so does the map, while the paddock is picked.
#[test]
fn the_paddocks_corners_have_their_numbers_outside_it_while_it_is_picked() {
    let square = [(0.0, 0.0), (40.0, 0.0), (40.0, 30.0), (0.0, 30.0)].map(Point::from);
    let mut turned_over = square;
    turned_over.reverse();
    for outline in [square, turned_over] {
        let mut plan = Plan::default();
        plan.ground.boundary = outline.to_vec();
        let drawing = drawn(&plan);
        for theme in [Theme::Light, Theme::Dark, Theme::Contrast] {
            for px_per_m in [2.0, 5.0, 14.0] {
                let bare = View { px_per_m, ..view(theme) };
                let numbers = |view: &View| -> Vec<(String, Point)> {
                    let written = drawing.ink(view).into_iter().filter_map(|item| match item {
                        Ink::Text { text, at, .. } if text.len() == 1 => Some((text, view.place(at))),
                        _ => None,
                    });
                    written.collect()
                };
                assert!(numbers(&bare).is_empty(), "not picked, they have none");
                let picked = View { handles: true, picked: Some(Thing::BoundaryCorner { vertex: 2 }), ..bare };
                let shown = numbers(&picked);
                assert_eq!(shown.len(), 4, "{theme:?} at {px_per_m}");
                for (index, (text, at)) in shown.iter().enumerate() {
                    let corner = outline[index];
                    let off_px = (at.east_m - corner.east_m).hypot(at.north_m - corner.north_m) * px_per_m;
                    let inside = (0.0..40.0).contains(&at.east_m) && (0.0..30.0).contains(&at.north_m);
                    assert!(
                        *text == (index + 1).to_string() && off_px < 30.0 && !inside,
                        "{text} at {at:?}, {corner:?}"
                    );
                    let of_corner = Some(Thing::BoundaryCorner { vertex: index });
                    let pick = |view: &View| drawing.thing_at(view, view.spot(*at), 2.0);
                    assert_eq!(pick(&picked), of_corner, "a press on a number takes its corner");
                    assert_ne!(pick(&bare), of_corner);
                }
            }
        }
    }
}

/// Keep-outs, shade, damp ground, walls and hazards are listed by corner too.
#[test]
fn whatever_is_in_hand_on_the_ground_has_its_corners_numbered_and_a_press_takes_them() {
    let square =
        |east_m: f64| [(0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (0.0, 20.0)].map(|(e, n)| Point::new(e + east_m, n));
    let line = |north_m: f64| [0.0, 15.0, 30.0].map(|east_m| Point::new(east_m, north_m)).to_vec();
    let mut plan = Plan::default();
    plan.ground.keep_outs = vec![KeepOut::new(square(0.0).to_vec())];
    plan.ground.shade = vec![Shade { outline: square(40.0).to_vec(), ..Shade::default() }];
    plan.ground.damp = vec![Damp { outline: square(80.0).to_vec(), ..Damp::default() }];
    plan.walls = vec![Wall { path: line(-20.0), ..Wall::default() }];
    plan.ground.hazards = vec![Hazard::new(HazardKind::PublicWay, line(-40.0))];
    let drawing = drawn(&plan);
    type Corner = fn(usize) -> Thing;
    let all: [(Corner, &[Point]); 5] = [
        (|vertex| Thing::KeepOutCorner { keep_out: 0, vertex }, &plan.ground.keep_outs[0].outline),
        (|vertex| Thing::ShadeCorner { shade: 0, vertex }, &plan.ground.shade[0].outline),
        (|vertex| Thing::DampCorner { damp: 0, vertex }, &plan.ground.damp[0].outline),
        (|vertex| Thing::WallCorner { wall: 0, vertex }, &plan.walls[0].path),
        (|vertex| Thing::HazardCorner { hazard: 0, vertex }, &plan.ground.hazards[0].path),
    ];
    for (corner, places) in all {
        let view = View { handles: true, picked: Some(corner(1)), px_per_m: 5.0, ..view(Theme::Light) };
        let numbers_of = |view: &View| -> Vec<(usize, Point)> {
            let number = |item| match item {
                Ink::Text { text, at, .. } => Some((str::parse(&text).ok()?, view.place(at))),
                _ => None,
            };
            drawing.ink(view).into_iter().filter_map(number).collect()
        };
        let numbers = numbers_of(&view);
        let at_first = numbers[0].1;
        assert_eq!(numbers.len(), places.len(), "{:?}", corner(0));
        for (number, at) in numbers {
            let place = places[number - 1];
            let off_px = (at.east_m - place.east_m).hypot(at.north_m - place.north_m) * view.px_per_m;
            assert!(off_px < 30.0, "{number} of {:?} is {off_px} off", corner(0));
            assert_eq!(drawing.thing_at(&view, view.spot(at), 2.0), Some(corner(number - 1)));
        }
        // What the hand takes hold of stands where the first number stood: that one goes to the other side, and is taken there.
        let [right, down] = view.spot(at_first);
        let held = View { held: [Some([right - 6.0, down - 6.0, right + 6.0, down + 6.0]), None], ..view };
        let moved = numbers_of(&held).into_iter().find(|(number, _)| *number == 1).expect("it has room").1;
        assert!((moved.east_m - at_first.east_m).hypot(moved.north_m - at_first.north_m) * view.px_per_m > 20.0);
        assert_eq!(drawing.thing_at(&held, held.spot(moved), 2.0), Some(corner(0)));
        // So small that its numbers would hide it, it has none.
        let far = View { px_per_m: 0.8, ..view };
        assert_eq!(numbers_of(&far), []);
    }
}
