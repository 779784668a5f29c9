//! A picture underneath the map: brought in, placed, told of where it is missing or bad.

use std::path::{Path, PathBuf};

use crate::hand::{
    self, Desk, click, click_on, deeds, editor, example, fill, over, plan_of, plans, say, says, spot, undo,
};
use desktop::Opening;
use desktop::editor::{Message, Page, Pictured};
use desktop::tool::{Drawn, Tool};
use drawing::{Theme, Thing};
use egui::epaint::ColorMode;
use egui::{Color32, Key, Pos2, Shape};
use egui_kittest::kittest::Queryable;
use exchange::underlay::PictureError;
use plan::{Plan, Point, Underlay};

const SIZE: [f32; 2] = [1280.0, 3000.0];

/// A folder with a plan's file, and the plan open on the page about the ground.
fn open(folder: &Path, plan: Plan) -> Desk {
    let path = folder.join("farm.netfold.json");
    std::fs::write(&path, plan::write(&plan)).unwrap();
    let mut desk = hand::open(Opening { plan, path: Some(path), ..Opening::default() }, SIZE);
    say(&mut desk, Message::Open(Page::Ground));
    read(&mut desk);
    desk
}

/// A PNG of one colour.
fn png(wide: u32, tall: u32) -> Vec<u8> {
    let mut map = tiny_skia::Pixmap::new(wide, tall).unwrap();
    map.fill(tiny_skia::Color::from_rgba8(60, 90, 40, 255));
    map.encode_png().unwrap()
}

/// Waits until the picture was read.
fn read(desk: &mut Desk) {
    hand::wait(desk, "the picture", |window| *window.editor().pictured() != Pictured::Waiting);
}

fn underlay(path: &str, sha256: String, size_px: [u32; 2]) -> Underlay {
    Underlay { sha256, size_px: Some(size_px), ..plans::picture(path) }
}

fn with_underlay(sha256: String) -> Plan {
    Plan { underlay: Some(underlay("air.png", sha256, [160, 120])), ..example() }
}

/// Chooses a file in the chooser.
fn choose(desk: &mut Desk, folder: &Path, name: &str) {
    fill(desk, "Folder", folder.to_str().unwrap());
    fill(desk, "File name", name);
    desk.run();
}

#[test]
fn a_picture_is_brought_in_placed_by_its_world_file_and_saved_by_its_path_from_the_plan() {
    let dir = tempfile::tempdir().unwrap();
    std::fs::create_dir(dir.path().join("pictures")).unwrap();
    let bytes = png(160, 120);
    std::fs::write(dir.path().join("pictures/air.png"), &bytes).unwrap();
    std::fs::write(dir.path().join("pictures/air.pgw"), "0.5\n0\n0\n-0.5\n0.25\n59.75\n").unwrap();
    let mut desk = open(dir.path(), example());
    assert!(says(&desk, "An aerial picture"));
    click_on(&mut desk, "Lay a picture underneath");
    choose(&mut desk, &dir.path().join("pictures"), "air.png");
    read(&mut desk);
    let laid = editor(&desk).plan().underlay.clone().unwrap();
    assert_eq!(laid, underlay("pictures/air.png", exchange::underlay::fingerprint(&bytes), [160, 120]));
    assert_eq!(laid.corners()[3], Point::new(0.0, 0.0));
    assert_eq!(*editor(&desk).pictured(), Pictured::Shown { changed: None, size_px: [160, 120] });
    assert!(says(&desk, "air.png: 160 × 120 pixels, 0.50 m each."));
    assert!(editor(&desk).view().underlay, "fills let it through");
    // Saved elsewhere it is named from there.
    std::fs::create_dir(dir.path().join("deep")).unwrap();
    desk.key_press_modifiers(egui::Modifiers::COMMAND | egui::Modifiers::SHIFT, Key::S);
    desk.run();
    choose(&mut desk, &dir.path().join("deep"), "other.netfold.json");
    read(&mut desk);
    let saved = plan::read(&std::fs::read(dir.path().join("deep/other.netfold.json")).unwrap()).unwrap().plan;
    assert_eq!(saved.underlay.unwrap().path, "../pictures/air.png");
    assert!(matches!(editor(&desk).pictured(), Pictured::Shown { changed: None, .. }));
    // Taken out, and back by undo.
    click_on(&mut desk, "Take the picture out");
    assert!(editor(&desk).plan().underlay.is_none());
    read(&mut desk);
    assert_eq!(*editor(&desk).pictured(), Pictured::Nothing);
    undo(&mut desk);
    read(&mut desk);
    assert!(matches!(editor(&desk).pictured(), Pictured::Shown { .. }));
}

#[test]
fn a_missing_a_changed_a_cut_and_a_huge_picture_are_said_and_the_plan_opens() {
    let dir = tempfile::tempdir().unwrap();
    let file: PathBuf = dir.path().join("air.png");
    let bytes = png(160, 120);
    let right = exchange::underlay::fingerprint(&bytes);

    let mut desk = open(dir.path(), with_underlay(right.clone()));
    assert_eq!(*editor(&desk).pictured(), Pictured::Refused(PictureError::Missing));
    assert!(says(&desk, "air.png is not there") && !editor(&desk).plan().runs.is_empty());
    assert!(!editor(&desk).view().underlay);
    say(&mut desk, Message::Open(Page::Run));
    let said = words::Words::default().text(words::texts::Window::PictureNotShown);
    assert!(desk.query_by_label(said).is_some(), "said on the map, whatever page is open");

    std::fs::write(&file, png(160, 121)).unwrap();
    let mut desk = open(dir.path(), with_underlay(right.clone()));
    assert!(says(&desk, "air.png has changed since it was laid here"));
    click_on(&mut desk, "It lies right");
    read(&mut desk);
    assert!(
        !says(&desk, "has changed since")
            && editor(&desk).plan().underlay.as_ref().unwrap().size_px == Some([160, 121])
    );
    assert_eq!(deeds(&desk), 1);

    std::fs::write(&file, &bytes[..bytes.len() / 2]).unwrap();
    let desk = open(dir.path(), with_underlay(right.clone()));
    assert!(says(&desk, "air.png is cut short or damaged"));

    // The head alone says 40,000 x 40,000.
    let mut huge = bytes.clone();
    huge[16..20].copy_from_slice(&40_000_u32.to_be_bytes());
    huge[20..24].copy_from_slice(&40_000_u32.to_be_bytes());
    let mut crc = u32::MAX;
    for &byte in &huge[12..29] {
        crc ^= u32::from(byte);
        (0..8).for_each(|_| crc = if crc & 1 == 1 { (crc >> 1) ^ 0xedb8_8320 } else { crc >> 1 });
    }
    huge[29..33].copy_from_slice(&(!crc).to_be_bytes());
    std::fs::write(&file, &huge).unwrap();
    let desk = open(dir.path(), with_underlay(right.clone()));
    assert!(says(&desk, "air.png is 40,000 × 40,000 pixels"));

    std::fs::write(&file, b"no picture").unwrap();
    let desk = open(dir.path(), with_underlay(right));
    assert!(says(&desk, "air.png is neither PNG nor JPEG"));
}

#[test]
fn a_world_file_of_no_size_is_refused_in_the_chooser() {
    let dir = tempfile::tempdir().unwrap();
    std::fs::write(dir.path().join("air.png"), png(16, 12)).unwrap();
    std::fs::write(dir.path().join("air.pgw"), "0\n0\n0\n-0.5\n0\n0\n").unwrap();
    let mut desk = open(dir.path(), example());
    click_on(&mut desk, "Lay a picture underneath");
    choose(&mut desk, dir.path(), "air.png");
    assert!(says(&desk, "By air.pgw a pixel is no size at all"));
    click_on(&mut desk, "Understood");
    assert!(editor(&desk).plan().underlay.is_none() && deeds(&desk) == 0);
}

#[test]
fn a_picture_that_says_nothing_of_its_place_lies_in_the_middle_of_the_view_and_is_not_to_scale() {
    let dir = tempfile::tempdir().unwrap();
    std::fs::write(dir.path().join("air.png"), png(160, 120)).unwrap();
    let mut desk = open(dir.path(), example());
    say(&mut desk, Message::Pan(140.0, -80.0));
    let seen = *editor(&desk).view();
    click_on(&mut desk, "Lay a picture underneath");
    choose(&mut desk, dir.path(), "air.png");
    read(&mut desk);
    let corners = editor(&desk).plan().underlay.as_ref().unwrap().corners();
    for corner in corners {
        let [right, down] = seen.spot(corner);
        assert!((0.0..seen.size[0]).contains(&right) && (0.0..seen.size[1]).contains(&down), "{right} {down}");
    }
    let middle =
        Point::new(corners[0].east_m.midpoint(corners[2].east_m), corners[0].north_m.midpoint(corners[2].north_m));
    assert!((middle.east_m - seen.middle.east_m).hypot(middle.north_m - seen.middle.north_m) < 1e-9, "{middle:?}");
    let wide_m = corners[1].east_m - corners[0].east_m;
    let tall_m = corners[0].north_m - corners[3].north_m;
    let share =
        (wide_m * seen.px_per_m / f64::from(seen.size[0])).max(tall_m * seen.px_per_m / f64::from(seen.size[1]));
    assert!((share - 0.8).abs() < 1e-6, "{share}");
    assert!(says(&desk, "It is not to scale yet"));
    assert!(plan::assumed(editor(&desk).plan()).iter().any(|one| one.key == "underlay.world_m"));
    // Shifted by hand it is still not to scale; kept in the file, it still says so.
    desk.key_press(Key::ArrowRight);
    desk.run();
    let again = plan::read(&plan::write(editor(&desk).plan())).unwrap().plan;
    assert!(!again.underlay.unwrap().is_to_scale());
}

#[test]
fn a_picture_laid_far_off_by_its_world_file_is_gone_to() {
    let dir = tempfile::tempdir().unwrap();
    std::fs::write(dir.path().join("air.png"), png(160, 120)).unwrap();
    std::fs::write(dir.path().join("air.pgw"), "0.5\n0\n0\n-0.5\n900\n700\n").unwrap();
    let mut desk = open(dir.path(), example());
    click_on(&mut desk, "Lay a picture underneath");
    choose(&mut desk, dir.path(), "air.png");
    read(&mut desk);
    let view = editor(&desk).view();
    for corner in editor(&desk).plan().underlay.as_ref().unwrap().corners() {
        let [right, down] = view.spot(corner);
        assert!((0.0..view.size[0]).contains(&right) && (0.0..view.size[1]).contains(&down), "{right} {down}");
    }
}

#[test]
fn a_picture_that_was_cut_short_is_refused_before_it_is_taken() {
    let dir = tempfile::tempdir().unwrap();
    let bytes = png(160, 120);
    std::fs::write(dir.path().join("air.png"), &bytes[..bytes.len() * 2 / 3]).unwrap();
    let mut desk = open(dir.path(), example());
    click_on(&mut desk, "Lay a picture underneath");
    choose(&mut desk, dir.path(), "air.png");
    assert!(says(&desk, "air.png is cut short or damaged"));
    click_on(&mut desk, "Understood");
    assert!(editor(&desk).plan().underlay.is_none() && deeds(&desk) == 0);
}

#[test]
fn two_known_points_and_their_distance_place_the_picture() {
    let dir = tempfile::tempdir().unwrap();
    let bytes = png(160, 120);
    std::fs::write(dir.path().join("air.png"), &bytes).unwrap();
    let mut desk = open(dir.path(), with_underlay(exchange::underlay::fingerprint(&bytes)));
    let was = editor(&desk).plan().underlay.clone().unwrap();
    click_on(&mut desk, "Two known points");
    let (a, b) = (Point::new(10.0, 10.0), Point::new(50.0, 10.0));
    let at = spot(&desk, a);
    click(&mut desk, at);
    // The same place again is refused in a sentence, and the first stays; clicked at once it would be a double click.
    desk.run_steps(60);
    click(&mut desk, at);
    assert_eq!(editor(&desk).known_points().len(), 1);
    assert_eq!(editor(&desk).notice_underlay(), Some(words::texts::Underlay::OnePlace));
    let to = spot(&desk, b);
    click(&mut desk, to);
    let [from, to] = editor(&desk).known_points() else { panic!("two points") };
    let (from, to) = (*from, *to);
    // Where it is told to be typed, it is typed: the field has the keys.
    over(&mut desk, "zero");
    desk.key_press(Key::Enter);
    desk.run();
    assert_eq!(editor(&desk).page(), Page::Ground);
    assert_eq!(editor(&desk).plan().underlay.as_ref(), Some(&was), "what is no figure places nothing");
    over(&mut desk, "80");
    desk.key_press(Key::Tab);
    desk.run();
    over(&mut desk, "0");
    desk.key_press(Key::Enter);
    desk.run();
    let now = editor(&desk).plan().underlay.clone().unwrap().world_m.unwrap();
    // The spots of the picture that were clicked lie 80 m apart now, the second north of the first.
    let px = |at: Point| [at.east_m / 0.5, (60.0 - at.north_m) / 0.5];
    let (a, b) = (now.place(px(from)), now.place(px(to)));
    assert!((a.east_m - from.east_m).abs() < 1e-6 && (a.north_m - from.north_m).abs() < 1e-6);
    assert!((b.east_m - a.east_m).abs() < 1e-6 && (b.north_m - a.north_m - 80.0).abs() < 1e-6, "{a:?} {b:?}");
    assert_eq!(deeds(&desk), 1);
    assert_eq!(editor(&desk).picked(), Some(Thing::Underlay));
    undo(&mut desk);
    assert_eq!(editor(&desk).plan().underlay.as_ref(), Some(&was));
}

#[test]
fn a_locked_picture_stays_and_an_unlocked_one_goes_with_the_arrows() {
    let dir = tempfile::tempdir().unwrap();
    std::fs::write(dir.path().join("air.png"), png(160, 120)).unwrap();
    let mut desk = open(dir.path(), with_underlay(String::new()));
    say(&mut desk, Message::Pick(Some(Thing::Underlay)));
    desk.key_press(Key::ArrowRight);
    desk.run();
    let east_m = |desk: &Desk| editor(desk).plan().underlay.as_ref().unwrap().world_m.unwrap().0[4];
    assert!((east_m(&desk) - 0.35).abs() < 1e-9);
    say(&mut desk, Message::Pick(None));
    let locked = Underlay { locked: true, ..editor(&desk).plan().underlay.clone().unwrap() };
    say(&mut desk, Message::Make(plan::Edit::SetUnderlay { underlay: Some(locked) }));
    say(&mut desk, Message::Pick(Some(Thing::Underlay)));
    say(&mut desk, Message::Nudge(1.0, 0.0));
    assert!((east_m(&desk) - 0.35).abs() < 1e-9);
    assert!(desk.query_by_label("Two known points").is_none());
}

#[test]
fn a_jpeg_is_brought_in_and_its_strength_is_slid_as_one_step() {
    let dir = tempfile::tempdir().unwrap();
    // The patch that reading is tested with.
    std::fs::write(dir.path().join("air.jpg"), include_bytes!("../../../exchange/tests/all/data/patch.jpg")).unwrap();
    let mut desk = open(dir.path(), example());
    click_on(&mut desk, "Lay a picture underneath");
    choose(&mut desk, dir.path(), "air.jpg");
    read(&mut desk);
    assert_eq!(*editor(&desk).pictured(), Pictured::Shown { changed: None, size_px: [48, 32] });
    hand::settle(&mut desk);
    let was = (plan_of(&desk), deeds(&desk));
    let rail = desk.get_by_label("How much of it is seen").rect();
    let at = |share: f32| egui::pos2(rail.left() + 4.0 + (rail.width() - 8.0) * share, rail.top() + 12.0);
    hand::drag(&mut desk, at(0.35), at(0.8));
    let opacity = plan_of(&desk).underlay.unwrap().opacity();
    assert!((opacity - 0.8).abs() < 0.02, "{opacity}");
    assert_eq!(deeds(&desk), was.1 + 1, "a slide is one step");
    undo(&mut desk);
    assert_eq!(plan_of(&desk), was.0);
}

/// The lines that are painted, in their order: their places, width and colour.
fn lines(desk: &Desk) -> Vec<(Vec<Pos2>, f32, Color32)> {
    fn of(shape: &Shape, found: &mut Vec<(Vec<Pos2>, f32, Color32)>) {
        match shape {
            Shape::Vec(shapes) => shapes.iter().for_each(|shape| of(shape, found)),
            Shape::LineSegment { points, stroke } => found.push((points.to_vec(), stroke.width, stroke.color)),
            Shape::Path(path) => {
                if let ColorMode::Solid(colour) = path.stroke.color {
                    found.push((path.points.clone(), path.stroke.width, colour));
                }
            }
            _ => {}
        }
    }
    let mut found = Vec::new();
    desk.output().shapes.iter().for_each(|clipped| of(&clipped.shape, &mut found));
    found
}

/// What the hand draws is told from any picture by a bed of the sheet's colour; without a picture there is none.
#[test]
fn what_the_hand_draws_over_a_picture_lies_on_a_bed() {
    let dir = tempfile::tempdir().unwrap();
    std::fs::write(dir.path().join("air.png"), png(160, 120)).unwrap();
    let p = Theme::Light.palette();
    let colour = |[red, green, blue, _]: drawing::Colour| Color32::from_rgb(red, green, blue);
    for (plan, pictured) in [(with_underlay(String::new()), true), (example(), false)] {
        let mut desk = open(dir.path(), plan);
        say(&mut desk, Message::UseOn(Page::Ground, Tool::outline(Drawn::Shade)));
        let corners = [(90.0, 12.0), (104.0, 12.0), (104.0, 24.0)].map(|at| spot(&desk, Point::from(at)));
        for corner in &corners[..2] {
            click(&mut desk, *corner);
        }
        desk.event(egui::Event::PointerMoved(corners[2]));
        desk.run();
        let lines = lines(&desk);
        let is_along =
            |points: &[Pos2]| points.len() > 1 && points[..2].iter().zip(&corners).all(|(a, b)| a.distance(*b) < 4.0);
        let drawn = lines.iter().rposition(|(points, _, ink)| is_along(points) && *ink == colour(p.pick)).unwrap();
        let bed = lines[..drawn].iter().any(|(points, width, ink)| {
            is_along(points) && *ink == colour(p.sheet) && *width >= lines[drawn].1 + 2.0 * drawing::BED_PX
        });
        assert_eq!(bed, pictured);
    }
}
