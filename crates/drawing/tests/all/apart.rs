//! What is written and what stands for something keep apart: words off circles, plates off sides, tags off coops; and a
//! run's name finds room on its ground wherever there is some.

use crate::hand;
use crate::sheet;
use care::Severity;
use drawing::{Drawing, Form, Ink, LineView, Role, Spot, Theme, Thing, View, line, map};
use plan::{Label, Point, Reading, ReadingKind, Rest};
use workup::unroll::Unrolled;

const SCALES: [f64; 7] = [1.5, 3.0, 5.0, 8.0, 11.0, 18.0, 40.0];

fn view(drawing: &Drawing, px_per_m: f64, theme: Theme) -> View {
    View { px_per_m, ..View::fit(drawing.bounds(), [1280.0, 800.0], 20.0, theme) }
}

fn says(ink: &[Ink], wanted: &str) -> bool {
    ink.iter().any(|item| matches!(item, Ink::Text { text, .. } if text == wanted))
}

/// Left, top, right and bottom of the plates on a leader that say volts.
fn flags(ink: &[Ink]) -> Vec<[f32; 4]> {
    let flag = |three: &[Ink]| match three {
        [area @ Ink::Area { .. }, Ink::Line { closed: true, .. }, Ink::Text { text, .. }] if text.contains(" kV") => {
            area.area_box()
        }
        _ => None,
    };
    ink.windows(3).filter_map(flag).collect()
}

/// Whether a segment passes through a box.
fn passes([left, top, right, foot]: [f32; 4], from: Spot, to: Spot) -> bool {
    (0..=400).map(|step| step as f32 / 400.0).any(|share| {
        let at = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
        at[0] > left && at[0] < right && at[1] > top && at[1] < foot
    })
}

/// Every thing that a drawing has, once.
fn things(drawing: &Drawing) -> Vec<Thing> {
    let mut things: Vec<Thing> = Vec::new();
    for thing in drawing.shapes().filter_map(|shape| shape.thing) {
        if !things.contains(&thing) {
            things.push(thing);
        }
    }
    things
}

#[test]
fn no_words_lie_on_the_circle_round_what_is_picked_or_under_the_pointer() {
    let hand = hand::field();
    let drawing = map(&hand.scene());
    let p = Theme::Light.palette();
    let mut circles = 0;
    for thing in things(&drawing) {
        for px_per_m in SCALES {
            let rests = view(&drawing, px_per_m, Theme::Light);
            for (picked, hovered) in [(Some(thing), None), (None, Some(thing))] {
                let ink = drawing.ink(&View { picked, hovered, ..rests });
                let round = |item: &&Ink| matches!(item, Ink::Disc { fill: None, edge: Some(_), .. });
                circles += ink.iter().filter(round).count();
                let spoiled = sheet::spoiled(&ink, &[p.pick, p.ink, p.edge]);
                // A corner's number stands on a plate of its own, and a figure of the unit's on its block.
                assert!(spoiled.is_empty(), "{thing:?} at {px_per_m}: {spoiled:?}");
                assert!(sheet::overlaps(&ink).is_empty(), "{thing:?} at {px_per_m}");
            }
        }
    }
    assert!(circles > 300, "{circles} circles");
}

/// Three runs close to each other, of which two share ground and one is not laid.
fn crowded() -> hand::Hand {
    let mut hand = hand::field();
    let beside = [(62.0, 14.0), (96.0, 6.0), (104.0, 28.0), (71.0, 38.0)];
    hand::lay(&mut hand, "Beside", None, &hand::further(&beside));
    hand::lay(&mut hand, "Over", None, &hand::further(&[(30.0, 46.0), (62.0, 52.0), (60.0, 74.0), (28.0, 70.0)]));
    let outline = hand::points(&[(16.0, 6.0), (60.0, 3.0), (58.0, 14.0), (20.0, 16.0)]);
    hand.plan.runs.push(plan::Run { id: "bare".into(), outline, ..plan::Run::default() });
    hand.plan.runs.iter_mut().for_each(|run| run.status = plan::RunStatus::Option);
    hand
}

#[test]
fn the_plate_of_the_weakest_post_lies_across_no_side_of_any_run() {
    let hand = crowded();
    let drawing = map(&hand.scene());
    let mut seen = 0;
    for theme in [Theme::Light, Theme::Print] {
        for px_per_m in SCALES {
            for run in 0..hand.plan.runs.len() {
                let view = View { picked: Some(Thing::Run { run }), ..view(&drawing, px_per_m, theme) };
                for flag in flags(&drawing.ink(&view)) {
                    seen += 1;
                    for (other, of) in hand.plan.runs.iter().enumerate() {
                        let spots: Vec<Spot> = of.outline.iter().map(|&at| view.spot(at)).collect();
                        for (index, &from) in spots.iter().enumerate() {
                            let crossed = passes(flag, from, spots[(index + 1) % spots.len()]);
                            assert!(!crossed, "run {run} at {px_per_m}: {flag:?} on side {index} of {other}");
                        }
                    }
                }
            }
        }
    }
    assert!(seen > 20, "{seen} plates");
}

#[test]
fn nothing_is_written_under_scale_key_ring_and_cross() {
    let hand = crowded();
    let drawing = map(&hand.scene());
    for px_per_m in SCALES {
        let rests = view(&drawing, px_per_m, Theme::Light);
        // Where the names stand that nothing keeps off.
        let marks: Vec<Spot> = drawing
            .ink(&rests)
            .iter()
            .filter_map(|item| match item {
                Ink::Text { at, text, .. } if text.len() > 2 => Some(*at),
                _ => None,
            })
            .collect();
        for at in marks {
            let part = [at[0] - 8.0, at[1] - 8.0, at[0] + 8.0, at[1] + 8.0];
            for view in [View { held: [None, Some(part)], ..rests }, View { kept: [Some(part), None], ..rests }] {
                let corners = [[part[0], part[1]], [part[2], part[1]], [part[2], part[3]], [part[0], part[3]]];
                for item in drawing.ink(&view) {
                    let Ink::Text { text, .. } = &item else { continue };
                    // Corners keep their plates.
                    let plate = text.chars().all(|letter| letter.is_ascii_digit());
                    let over = sheet::text_corners(&item).is_some_and(|letters| sheet::overlap(&letters, &corners));
                    assert!(plate || !over, "{text} at {px_per_m} under {part:?}");
                }
            }
        }
    }
}

#[test]
fn a_tag_stands_beside_a_coop_and_is_picked_there() {
    let mut hand = hand::field();
    let at = hand.plan.coop.as_ref().unwrap().at;
    let places = [at, Point::new(at.east_m + 1.5, at.north_m + 0.5), Point::new(at.east_m - 2.0, at.north_m)];
    hand.findings.runs = vec![places.iter().map(|&at| hand::finding(Severity::Warning, vec![at])).collect()];
    let drawing = map(&hand.scene());
    let coop = drawing.shapes().find_map(|shape| match (&shape.form, shape.role) {
        (Form::Mark { at, toward_rad }, Role::Coop { length_m, width_m, .. }) => {
            Some((*at, *toward_rad, length_m, width_m))
        }
        _ => None,
    });
    let (at, toward_rad, length_m, width_m) = coop.unwrap();
    let fill = Theme::Light.palette().warning_fill;
    let mut seen = 0;
    for px_per_m in [3.0, 6.0, 9.0, 12.0, 15.0] {
        let view = View { middle: at, ..view(&drawing, px_per_m, Theme::Light) };
        let corner = |along: f64, across: f64| {
            let (sin, cos) = toward_rad.sin_cos();
            let (x, y) = (along * length_m / 2.0, across * width_m / 2.0);
            view.spot(Point::new(at.east_m + x * cos - y * sin, at.north_m + x * sin + y * cos))
        };
        let walls = [corner(-1.0, -1.0), corner(1.0, -1.0), corner(1.0, 1.0), corner(-1.0, 1.0)];
        for item in drawing.ink(&view) {
            let Ink::Area { rings, fill: of } = &item else { continue };
            if *of != fill || rings[0].len() != 5 {
                continue;
            }
            seen += 1;
            let [left, top, right, foot] = item.area_box().unwrap();
            let body = [[left, top], [right, top], [right, foot], [left, foot]];
            assert!(!sheet::overlap(&body, &walls), "{px_per_m}: {body:?} on {walls:?}");
            let thing = drawing.thing_at(&view, [rings[0][3][0], rings[0][3][1] - 9.0], 8.0);
            assert!(matches!(thing, Some(Thing::Finding { .. })), "{px_per_m}: {thing:?}");
        }
    }
    assert!(seen >= 10, "{seen} tags");
}

#[test]
fn on_the_unfolded_line_no_sign_reaches_up_to_the_name_of_a_net() {
    let mut hand = hand::field();
    let lay = hand.workup.runs[0].lay.clone().unwrap();
    let mut beside = 0;
    for shift in 0..14 {
        let at = lay.posts[15 + shift].at;
        hand.findings.runs = vec![vec![hand::finding(Severity::Warning, vec![at])]];
        for picked in [None, Some(Thing::Finding { run: Some(0), finding: 0 })] {
            let view =
                LineView { width: 900.0, height: 128.0, theme: Theme::Light, picked, hovered: None, stale: false };
            let line = line(&hand.scene(), 0, &view);
            for item in &line.ink {
                let Ink::Text { text, at, .. } = item else { continue };
                if !text.starts_with("Net ") {
                    continue;
                }
                let letters = sheet::text_corners(item).unwrap();
                let thing = line.thing_at([f32::midpoint(letters[3][0], letters[2][0]), letters[3][1] + 4.0], 2.0);
                assert!(!matches!(thing, Some(Thing::Finding { .. })), "{text} over a tag at {at:?}");
                let middle = f32::midpoint(line.x_of(50.0), line.x_of(100.0));
                beside += usize::from(text == "Net 2" && (at[0] - middle).abs() > 4.0);
            }
            assert!(says(&line.ink, "Net 2"), "post {}", 16 + shift);
        }
    }
    assert!(beside > 0, "the name was in nobody's way");
}

/// However a run lies on the sheet, its name is told while there is room for it on its ground.
#[test]
fn a_large_run_is_named_wherever_it_lies() {
    let mut hand = hand::field();
    // Words of the keeper's own stand on the best places: its middle, and over and under the coop.
    let coop = hand.plan.coop.as_ref().unwrap().at;
    let places = (-2..=2).flat_map(|row| [(-4.0, row), (4.0, row)]);
    hand.plan.labels = places
        .map(|(east_m, row)| Label {
            text: "here we dug a deep drain".into(),
            at: Point::new(coop.east_m + east_m, coop.north_m + 3.0 * f64::from(row)),
            ..Label::default()
        })
        .collect();
    let drawing = map(&hand.scene());
    let name = "Round Quince House";
    for px_per_m in [8.0, 11.0, 15.0, 22.0, 40.0] {
        for (east_m, north_m) in [(44.0, 36.0), (60.0, 36.0), (30.0, 24.0), (44.0, 55.0), (66.0, 40.0)] {
            let middle = Point::new(east_m, north_m);
            let ink = drawing.ink(&View { middle, ..view(&drawing, px_per_m, Theme::Light) });
            assert!(says(&ink, name), "{px_per_m} about {east_m} {north_m}");
            assert!(sheet::overlaps(&ink).is_empty(), "{px_per_m} about {east_m} {north_m}");
        }
    }
    // A long narrow one is named along it, and one that is too small by its number.
    let mut narrow = hand::field();
    narrow.plan.coop = None;
    narrow.plan.runs.clear();
    (narrow.workup.runs, narrow.findings.runs) = (Vec::new(), Vec::new());
    let strip = hand::Laying {
        outline: hand::points(&[(10.0, 10.0), (14.5, 10.0), (60.0, 55.5), (60.0, 60.0)]),
        ..hand::further(&[])
    };
    hand::lay(&mut narrow, "Along the old lane", None, &strip);
    let drawing = map(&narrow.scene());
    let turned = |px_per_m: f64| {
        drawing.ink(&view(&drawing, px_per_m, Theme::Light)).into_iter().find_map(|item| match item {
            Ink::Text { text, turn_rad, .. } if text == "Along the old lane" => Some(turn_rad),
            _ => None,
        })
    };
    assert!(turned(11.0).is_some_and(|turn| (turn + std::f32::consts::FRAC_PI_4).abs() < 0.01), "{:?}", turned(11.0));
    let small = drawing.ink(&view(&drawing, 7.0, Theme::Light));
    assert!(says(&small, "Along the old lane") || says(&small, "1"), "neither name nor number");
}

#[test]
fn a_board_that_stays_small_is_picked_where_it_is_small() {
    let mut hand = hand::field();
    let reading = |along_m: f64, value: f64| {
        let rest: Rest = [("when".to_owned(), "2027-05-10".into())].into_iter().collect();
        Reading { run: "run-1".into(), kind: ReadingKind::FenceKv, along_m: Some(along_m), value: Some(value), rest }
    };
    // Two so near that one of their boards stays small.
    hand.plan.readings = vec![reading(75.0, 2.6), reading(75.8, 3.9)];
    let drawing = map(&hand.scene());
    let rests = view(&drawing, 11.0, Theme::Light);
    let ink = drawing.ink(&rests);
    assert!(says(&ink, "3.9") && !says(&ink, "2.6"), "the newer has its figure");
    let things: Vec<(Spot, Thing)> = (0..1280)
        .flat_map(|x| (0..800).map(move |y| [x as f32, y as f32]))
        .filter(|&[x, y]| {
            let at = rests.spot(hand.workup.runs[0].lay.as_ref().unwrap().posts[21].at);
            (at[0] - x).abs() < 90.0 && (at[1] - y).abs() < 90.0
        })
        .filter_map(|spot| Some((spot, drawing.thing_at(&rests, spot, 0.0)?)))
        .collect();
    let size = |reading: usize| {
        let of: Vec<Spot> =
            things.iter().filter(|(_, thing)| *thing == Thing::Reading { run: 0, reading }).map(|one| one.0).collect();
        let span = |axis: usize| {
            let low = of.iter().map(|at| at[axis]).fold(f32::MAX, f32::min);
            of.iter().map(|at| at[axis]).fold(f32::MIN, f32::max) - low
        };
        [span(0), span(1)]
    };
    let ([wide, _], [speck, _]) = (size(1), size(0));
    assert!((48.0..=54.0).contains(&wide), "{wide}");
    assert!((6.0..=10.0).contains(&speck), "{speck}");
}

/// What is unrolled over runs that are there: the words of either lie on nothing of the other.
#[test]
fn words_of_the_map_step_back_behind_what_is_in_the_hand() {
    let hand = hand::field();
    let drawing = map(&hand.scene());
    let mut unrolled = hand::field();
    unrolled.plan.runs.clear();
    (unrolled.workup.runs, unrolled.findings.runs) = (Vec::new(), Vec::new());
    (unrolled.plan.coop, unrolled.plan.ground) = (None, plan::Ground::default());
    let outline = [(20.0, 24.0), (55.0, 22.0), (62.0, 47.0), (25.0, 50.0)];
    hand::lay(&mut unrolled, "In the hand", None, &hand::further(&outline));
    let in_hand = map(&unrolled.scene());
    let p = Theme::Light.palette();
    let mut stepped = 0;
    for px_per_m in SCALES {
        let view = view(&drawing, px_per_m, Theme::Light);
        let inked = drawing.ink_under(&view, None, Some((&in_hand, &Unrolled::default())));
        let mut ink = inked.map.clone();
        ink.extend(inked.hand);
        assert!(sheet::overlaps(&ink).is_empty(), "{px_per_m}: {:?}", sheet::overlaps(&ink));
        let numbered = |text: &str| text.chars().all(|letter| letter.is_ascii_digit());
        // The ground in the hand hides the map beneath it, words and all.
        let hidden = |what: &str| what.contains(&format!("fill: {:?}", p.run));
        let spoiled: Vec<_> = sheet::spoiled(&ink, &[p.edge, p.pick])
            .into_iter()
            .filter(|(text, what)| !numbered(text) && !hidden(what))
            .collect();
        assert!(spoiled.is_empty(), "{px_per_m}: {spoiled:?}");
        stepped += usize::from(inked.map != drawing.ink(&view));
    }
    assert!(stepped > 3, "{stepped}");
}

/// What is shown for the moment hides whole words, never a part of one, and no more than it lies on.
#[test]
fn of_words_under_a_plate_nothing_is_left() {
    let drawing = map(&hand::field().scene());
    let view = view(&drawing, 11.0, Theme::Light);
    let (ink, taken) = drawing.ink_and_taken(&view, None);
    let part = [300.0, 200.0, 600.0, 324.0];
    let corners = [[300.0, 200.0], [600.0, 200.0], [600.0, 324.0], [300.0, 324.0]];
    let under = taken.words_under(&[part]);
    let shown = taken.without(&ink, &under);
    let words = |ink: &[Ink]| ink.iter().filter(|item| matches!(item, Ink::Text { .. })).count();
    let cut = |item: &&Ink| {
        let Ink::Text { text, .. } = item else { return false };
        let digits = text.chars().all(|letter| letter.is_ascii_digit()) || text.contains(" kV");
        !digits && sheet::text_corners(item).is_some_and(|letters| sheet::overlap(&letters, &corners))
    };
    assert!(ink.iter().filter(cut).count() > 1, "nothing lies there");
    assert_eq!(shown.iter().filter(cut).count(), 0);
    assert_eq!(words(&ink) - words(&shown), under.len());
    assert_eq!(taken.without(&ink, &[]), ink);
}
