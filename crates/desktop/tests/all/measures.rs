//! What is measured while something is drawn or dragged stands clear of the map's plates and words, of the circle at the
//! corner in hand and of what is said at the pointer.

use crate::hand::{Desk, button, click, click_on, example, on_page, spot, window};
use desktop::editor::{Message, Page};
use egui::{Event, Pos2, Rect, Shape, vec2};
use egui_kittest::kittest::Queryable;
use plan::Point;
use words::Words;

/// A plate reaches so far beyond its words.
const PLATE_PX: f32 = 3.0;
/// Radius of the circle at the corner in hand.
const CIRCLE_PX: f32 = 9.0;

/// Level words on the map, as they were painted last.
struct Written {
    text: String,
    place: Rect,
    /// Whether they stand on a plate or a sign of the map's.
    plated: bool,
}

/// All of them; those on plates are bold, but for the weakest post's volts and what is said at the pointer.
fn words_on_map(desk: &Desk) -> Vec<Written> {
    fn add(shape: &Shape, clip: Rect, all: &mut Vec<Written>) {
        match shape {
            Shape::Vec(shapes) => shapes.iter().for_each(|shape| add(shape, clip, all)),
            Shape::Text(text) if text.angle.abs() < 1e-6 => {
                let place = text.visual_bounding_rect();
                if clip.contains(place.center()) {
                    let font = &text.galley.job.sections[0].format.font_id;
                    let words = text.galley.text().to_owned();
                    let bold = format!("{:?}", font.family).to_lowercase().contains("semi");
                    let plated = (bold && font.size < 12.5 && !words.contains("House")) || words.contains(" kV, ");
                    all.push(Written { text: words, place, plated });
                }
            }
            _ => {}
        }
    }
    let map = desk.get_by_label("Map").rect();
    let mut all = Vec::new();
    for clipped in &desk.output().shapes {
        add(&clipped.shape, clipped.clip_rect.intersect(map), &mut all);
    }
    all
}

/// What the window measures now, in the words that are written on the map.
fn measured(desk: &Desk) -> Vec<String> {
    let (editor, words) = (window(desk).editor(), Words::default());
    let mut all = Vec::new();
    for shown in editor.dimensions() {
        let sides = shown.sides.iter().filter_map(|&side| shown.side(side));
        all.extend(sides.map(|[from, to]| words.length((to.east_m - from.east_m).hypot(to.north_m - from.north_m))));
        all.extend(shown.turns.iter().filter_map(|&corner| shown.turn_deg(corner)).map(|turn| words.degrees(turn)));
        all.extend(shown.area.map(|(area_m2, _)| words.area(area_m2)));
    }
    all
}

/// Asserts that nothing measured lies on other words, or only on plain ones; how many measures there were.
fn assert_clear(desk: &Desk, measures: &dyn Fn(&str) -> bool, even_words: bool) -> usize {
    let (own, others): (Vec<_>, Vec<_>) = words_on_map(desk).into_iter().partition(|one| measures(&one.text));
    let entry = desk.query_all_by_label_contains(" left on net ").map(|node| node.rect()).next();
    for (index, one) in own.iter().enumerate() {
        let place = one.place.expand(PLATE_PX);
        for other in others.iter().filter(|other| even_words || other.plated).chain(&own[index + 1..]) {
            let there = other.place.shrink(1.0);
            assert!(!place.intersects(there), "{:?} at {place:?} lies on {:?} at {there:?}", one.text, other.text);
        }
        assert!(entry.is_none_or(|entry| !entry.intersects(place)), "{:?} lies under the entry", one.text);
    }
    own.len()
}

fn moves(desk: &mut Desk, to: Pos2) {
    desk.event(Event::PointerMoved(to));
    desk.run();
}

#[test]
fn while_an_outline_is_drawn_its_measures_keep_off_the_plates_of_a_run() {
    let mut desk = on_page(example(), Page::Ground, [1280.0, 800.0], Words::default());
    click_on(&mut desk, "Keep-out");
    // The weakest post's flag lies between these corners.
    let flag = |desk: &Desk| words_on_map(desk).into_iter().find(|one| one.text.contains("4.2 kV,")).unwrap().place;
    let about = flag(&desk);
    for corner in [about.left_top() + vec2(-90.0, -70.0), about.right_top() + vec2(60.0, -60.0)] {
        click(&mut desk, corner);
    }
    let mut seen = 0;
    for step in 0..24 {
        let to = about.center() + vec2(-110.0 + 12.0 * step as f32, 20.0 + 5.0 * step as f32);
        moves(&mut desk, to);
        let measured = measured(&desk);
        assert!(measured.iter().any(|text| text.contains("m²")), "an area is measured");
        seen += assert_clear(&desk, &|text| measured.iter().any(|one| one == text), true);
    }
    assert!(seen > 48, "only {seen} measures found room");
    // The flag stays: looking for it stops the test where it is gone.
    flag(&desk);
}

#[test]
fn while_a_corner_is_dragged_its_measures_keep_off_the_entry_at_the_pointer() {
    let mut desk = on_page(example(), Page::Ground, [1280.0, 800.0], Words::default());
    desk.state_mut().as_mut().unwrap().say(Message::Pick(Some(drawing::Thing::BoundaryCorner { vertex: 2 })));
    desk.run();
    let at = window(&desk).editor().plan().ground.boundary[2];
    let from = spot(&desk, at);
    moves(&mut desk, from);
    button(&desk, from, true);
    desk.run();
    let mut seen = 0;
    for step in 1..20 {
        moves(&mut desk, from + vec2(-14.0 * step as f32, 9.0 * step as f32));
        let measured = measured(&desk);
        assert!(!measured.is_empty());
        seen += assert_clear(&desk, &|text| measured.iter().any(|one| one == text), true);
    }
    assert!(seen > 38, "only {seen} measures found room");
}

#[test]
fn while_a_run_is_unrolled_what_is_missing_to_close_keeps_off_circles_plates_and_words() {
    let mut desk = on_page(example(), Page::Run, [1280.0, 800.0], Words::default());
    click_on(&mut desk, "Unroll a run");
    // Its first sides enclose the other run, so that the side to come crosses all that is written on it.
    let outline = window(&desk).editor().plan().runs[0].outline.clone();
    let place = |east: f64, north: f64| Point::new(outline[0].east_m + east, outline[0].north_m + north);
    for corner in [place(-6.0, 8.0), place(-3.0, 40.0)] {
        let at = spot(&desk, corner);
        click(&mut desk, at);
    }
    let mut seen = 0;
    for step in 0..24 {
        let corner = place(20.0 + 0.8 * f64::from(step), 44.0 - 1.5 * f64::from(step));
        let to = spot(&desk, corner);
        moves(&mut desk, to);
        let is_measure = |text: &str| text.ends_with(" to close");
        seen += assert_clear(&desk, &is_measure, false);
        let in_hand = *window(&desk).editor().in_hand().unwrap().unrolled.corners.last().unwrap();
        let circle = Rect::from_center_size(spot(&desk, in_hand), vec2(CIRCLE_PX, CIRCLE_PX) * 2.0);
        for one in words_on_map(&desk).iter().filter(|one| is_measure(&one.text)) {
            assert!(!one.place.expand(PLATE_PX).intersects(circle), "{} lies on the circle at the corner", one.text);
        }
    }
    assert!(seen > 16, "only {seen} of 24 were told");
}
