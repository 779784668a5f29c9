//! On the map nothing that is written is cut by something painted over it: neither by the guides and the entry of what is
//! unrolled, nor by ring and cross of what is picked.

use crate::hand::{self, Desk, click, click_on, example, on_page, say, spot, window};
use desktop::editor::{Message, Page};
use drawing::Thing;
use egui::{Event, Pos2, Rect, Shape, vec2};
use egui_kittest::kittest::Queryable;
use plan::Point;
use words::Words;

/// Round the ring and on the cross, pixels.
const REACH: f32 = 6.0;

fn map(desk: &Desk) -> Rect {
    desk.get_by_label(window(desk).editor().words().text(words::texts::Window::Map)).rect()
}

/// The letters of a text: from the capitals' top to the baseline, as far as they lie level.
fn letters(shape: &Shape) -> Option<(String, Rect)> {
    let Shape::Text(text) = shape else { return None };
    let said = text.galley.text().trim().to_owned();
    let all = text.galley.rect.translate(text.pos.to_vec2());
    // A corner's number stands on a plate of its own, and goes under another with it.
    let bold =
        text.galley.job.sections.iter().any(|section| format!("{:?}", section.format.font_id.family).contains("emi"));
    let on_plate = bold && said.chars().all(|letter| letter.is_ascii_digit());
    let level = text.angle.abs() < 1e-3 && !said.is_empty() && text.galley.rows.len() == 1 && !on_plate;
    level.then(|| (said, Rect::from_center_size(all.center(), vec2(all.width() - 1.0, all.height() * 0.5))))
}

/// What a shape puts down that hides what lies beneath, as a box.
fn cover(shape: &Shape) -> Option<Rect> {
    match shape {
        Shape::Path(path) if path.closed && path.fill.is_opaque() => Some(path.visual_bounding_rect()),
        Shape::Rect(rect) if rect.fill.is_opaque() => Some(rect.rect),
        Shape::Circle(circle) if circle.fill.is_opaque() => Some(circle.visual_bounding_rect()),
        Shape::LineSegment { points, .. } => Some(Rect::from_two_pos(points[0], points[1]).expand(0.5)),
        _ => None,
    }
}

/// Every text on the map that something painted later lies over, or another text.
fn spoiled(desk: &Desk) -> Vec<String> {
    let map = map(desk).shrink(1.0);
    let shapes: Vec<&Shape> = desk.output().shapes.iter().map(|clipped| &clipped.shape).collect();
    let mut spoiled = Vec::new();
    for (index, shape) in shapes.iter().enumerate() {
        let Some((said, place)) = letters(shape).filter(|(_, place)| map.contains_rect(*place)) else { continue };
        for over in &shapes[index + 1..] {
            if let Some((other, over)) = letters(over).filter(|(_, over)| over.intersects(place)) {
                spoiled.push(format!("{said:?} at {place:?} under {other:?} at {over:?}"));
            } else if let Some(over) = cover(over).filter(|over| over.intersects(place.shrink(1.0))) {
                spoiled.push(format!("{said:?} at {place:?} under a mark at {over:?}"));
            }
        }
    }
    spoiled
}

/// Unrolls over the run that is there; nothing of either cuts a word of the other, wherever the hand is.
#[test]
fn what_is_unrolled_over_a_run_cuts_none_of_its_words() {
    let mut desk = on_page(example(), Page::Run, [1280.0, 800.0], Words::default());
    click_on(&mut desk, "Unroll a run");
    let mut looked = 0;
    for corner in [Point::new(36.0, 24.0), Point::new(58.0, 22.0), Point::new(60.0, 44.0)] {
        let at = spot(&desk, corner);
        click(&mut desk, at);
        for (right, down) in [(-160.0, -90.0), (-60.0, 70.0), (20.0, -120.0), (90.0, 40.0), (170.0, -30.0)] {
            desk.event(Event::PointerMoved(at + vec2(right, down)));
            desk.run();
            assert!(window(&desk).editor().in_hand().is_some());
            let spoiled = spoiled(&desk);
            assert!(spoiled.is_empty(), "after {corner:?}, {right} {down} on: {spoiled:#?}");
            looked += 1;
        }
    }
    assert_eq!(looked, 15);
}

#[test]
fn no_word_lies_under_ring_and_cross_of_a_picked_run_at_any_zoom() {
    let mut desk = on_page(example(), Page::Run, [1280.0, 800.0], Words::default());
    say(&mut desk, Message::Pick(Some(Thing::Run { run: 0 })));
    for by in [1.0, 1.6, 1.6, 1.6, 0.3] {
        let middle = map(&desk).size() / 2.0;
        say(&mut desk, Message::Zoom(by, [middle.x, middle.y]));
        let spoiled = spoiled(&desk);
        assert!(spoiled.is_empty(), "{by}: {spoiled:#?}");
    }
}

/// Where the key of volts or the map's edge would lie over the ring, it stands inside, and turns the run there.
#[test]
fn the_ring_of_a_picked_run_keeps_off_the_key_and_the_edge() {
    let mut desk = on_page(example(), Page::Power, [1280.0, 800.0], Words::default());
    say(&mut desk, Message::Pick(Some(Thing::Run { run: 0 })));
    let top = |desk: &Desk| spot(desk, window(desk).editor().turn_ring().unwrap());
    let key = |desk: &Desk| {
        let [left, top, right, foot] = window(desk).editor().view().kept[1].expect("a key of volts");
        let key = Rect::from_min_max(Pos2::new(left, top), Pos2::new(right, foot));
        key.translate(map(desk).min.to_vec2())
    };
    let stood = key(&desk);
    // Under the key, and just under the edge.
    for to in [
        Pos2::new(stood.center().x, stood.bottom() + 14.0),
        Pos2::new(map(&desk).left() + 300.0, map(&desk).top() + 12.0),
    ] {
        let by = to - top(&desk);
        say(&mut desk, Message::Pan(by.x, by.y));
        let circles: Vec<Pos2> = desk
            .output()
            .shapes
            .iter()
            .filter_map(|clipped| match &clipped.shape {
                Shape::Circle(circle) if (circle.radius - REACH).abs() < 0.1 => Some(circle.center),
                _ => None,
            })
            .collect();
        // Over the side or under it; the key makes way for the run's corners, the ring for the key.
        let at = |off: f32| circles.iter().find(|at| at.distance(top(&desk) + vec2(0.0, off)) < 0.5).copied();
        let ring = at(-30.0).or_else(|| at(30.0)).unwrap_or_else(|| panic!("{circles:?}, not at {:?}", top(&desk)));
        let key = key(&desk);
        assert!(!circles.iter().any(|at| key.expand(REACH).contains(*at)), "{circles:?} on {key:?}");
        assert!(map(&desk).contains_rect(Rect::from_center_size(ring, vec2(2.0, 2.0) * REACH)), "{ring:?}");
        let was = window(&desk).editor().plan().runs[0].outline.clone();
        hand::drag(&mut desk, ring, ring + vec2(40.0, 30.0));
        assert_ne!(window(&desk).editor().plan().runs[0].outline, was, "it turns");
        say(&mut desk, Message::Undo);
        assert_eq!(window(&desk).editor().plan().runs[0].outline, was);
    }
}
