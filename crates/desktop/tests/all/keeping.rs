//! Nothing is lost: saving, refusing, closing, and what a window that fell leaves behind.

use crate::hand;
use std::path::{Path, PathBuf};

use crate::hand::{Desk, EXAMPLE, click_on, fill, open, say, settle, window};
use desktop::Opening;
use desktop::editor::{Message, SaveState};
use drawing::{Theme, Thing};
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use words::{Language, Units, Words};

fn on_plan(path: &Path, folder: Option<&Path>) -> Desk {
    let plan = plan::read(&std::fs::read(path).unwrap()).unwrap().plan;
    let (path, folder) = (Some(path.to_path_buf()), folder.map(Path::to_path_buf));
    open(Opening { plan, path, folder, ..Opening::default() }, [1280.0, 800.0])
}

fn plan_in(folder: &Path) -> PathBuf {
    let path = folder.join("field.netfold.json");
    std::fs::write(&path, EXAMPLE).unwrap();
    path
}

fn nudge(desk: &mut Desk) {
    say(desk, Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 2 })));
    say(desk, Message::Nudge(0.5, 0.25));
}

/// The host asks whether the window may close: its button was pressed, or Ctrl+Q.
fn asked_to_close(desk: &mut Desk) -> bool {
    let ctx = desk.ctx.clone();
    desk.state_mut().as_mut().unwrap().asked_to_close(&ctx)
}

#[test]
fn ctrl_s_writes_the_file_and_keeps_the_one_before() {
    let folder = tempfile::tempdir().unwrap();
    let path = plan_in(folder.path());
    let mut desk = on_plan(&path, None);
    desk.get_by_label("saved");
    nudge(&mut desk);
    desk.get_by_label("unsaved changes");
    assert_eq!(window(&desk).editor().save_state(), SaveState::Changed);
    desk.key_press_modifiers(Modifiers::COMMAND, Key::S);
    desk.run();
    desk.get_by_label("saved");
    let read = plan::read(&std::fs::read(&path).unwrap()).unwrap().plan;
    assert_eq!(read, *window(&desk).editor().plan());
    assert_eq!(std::fs::read(folder.path().join("field.netfold.json.bak")).unwrap(), EXAMPLE);
    // Undo past the save is a change again, and redo is not.
    desk.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    desk.run();
    desk.get_by_label("unsaved changes");
    desk.key_press_modifiers(Modifiers::COMMAND, Key::Y);
    desk.run();
    desk.get_by_label("saved");
}

#[test]
fn a_plan_without_a_file_asks_where_to_and_does_not_write_over_one_unasked() {
    let folder = tempfile::tempdir().unwrap();
    plan_in(folder.path());
    let mut desk = hand::cold();
    click_on(&mut desk, "Start with your own rolls");
    click_on(&mut desk, "Lay it out");
    settle(&mut desk);
    desk.key_press_modifiers(Modifiers::COMMAND, Key::S);
    desk.run();
    desk.get_by_label("Save the plan");
    fill(&mut desk, "Folder", &folder.path().display().to_string());
    desk.get_by_label("File field.netfold.json");
    fill(&mut desk, "File name", "field");
    desk.get_by_label_contains("field.netfold.json is there already");
    assert_eq!(std::fs::read(folder.path().join("field.netfold.json")).unwrap(), EXAMPLE);
    fill(&mut desk, "File name", "mine");
    settle(&mut desk);
    let path = folder.path().join("mine.netfold.json").canonicalize().unwrap();
    let editor = window(&desk).editor();
    assert_eq!(editor.file().unwrap().canonicalize().unwrap(), path);
    assert_eq!(plan::read(&std::fs::read(&path).unwrap()).unwrap().plan, *editor.plan());
    assert_eq!(editor.save_state(), SaveState::Saved);
}

#[test]
fn a_failed_save_leaves_the_file_and_says_why() {
    let folder = tempfile::tempdir().unwrap();
    let path = plan_in(folder.path());
    let mut desk = on_plan(&path, None);
    nudge(&mut desk);
    // The folder's name is taken by a file meanwhile: nothing can be written there, even by who may all.
    let away = folder.path().with_extension("away");
    std::fs::rename(folder.path(), &away).unwrap();
    std::fs::write(folder.path(), b"in the way").unwrap();
    desk.key_press_modifiers(Modifiers::COMMAND, Key::S);
    desk.run();
    desk.get_by_label("That did not work");
    desk.get_by_label_contains("The plan is still open here");
    click_on(&mut desk, "Understood");
    assert_eq!(window(&desk).editor().save_state(), SaveState::Changed);
    std::fs::remove_file(folder.path()).unwrap();
    std::fs::rename(&away, folder.path()).unwrap();
    assert_eq!(std::fs::read(&path).unwrap(), EXAMPLE);
}

#[test]
fn a_file_that_is_no_plan_is_refused_and_the_open_plan_stays() {
    let folder = tempfile::tempdir().unwrap();
    let path = plan_in(folder.path());
    std::fs::write(folder.path().join("other.netfold.json"), b"{ \"format\": \"recipe\" }").unwrap();
    let mut desk = on_plan(&path, None);
    let before = window(&desk).editor().plan().clone();
    desk.key_press_modifiers(Modifiers::COMMAND, Key::O);
    desk.run();
    fill(&mut desk, "File name", "other.netfold.json");
    desk.get_by_label("That did not work");
    desk.get_by_label_contains("other.netfold.json");
    click_on(&mut desk, "Understood");
    assert_eq!(*window(&desk).editor().plan(), before);
    // The name has the keys again, and is replaced by what is typed.
    desk.event(egui::Event::Text("third".to_owned()));
    desk.run();
    let field = desk.get_by_role_and_label(egui::accesskit::Role::TextInput, "File name");
    assert_eq!(egui_kittest::kittest::NodeT::accesskit_node(&field).value().as_deref(), Some("third"));
}

#[test]
fn closing_with_unsaved_work_asks() {
    let folder = tempfile::tempdir().unwrap();
    let path = plan_in(folder.path());
    let mut desk = on_plan(&path, None);
    assert!(asked_to_close(&mut desk), "nothing is unsaved");
    let mut desk = on_plan(&path, None);
    nudge(&mut desk);
    assert!(!asked_to_close(&mut desk));
    desk.run();
    desk.get_by_label("Save what you changed?");
    click_on(&mut desk, "Keep working");
    assert!(desk.query_by_label("Save what you changed?").is_none());
    assert!(!asked_to_close(&mut desk));
    desk.run();
    click_on(&mut desk, "Save");
    assert!(asked_to_close(&mut desk));
    let read = plan::read(&std::fs::read(&path).unwrap()).unwrap().plan;
    assert_eq!(read, *window(&desk).editor().plan());
}

/// Types over what stands in a field, without Enter.
fn begins_to_type(desk: &mut Desk, label: &str, text: &str) {
    desk.get_by_label(label).focus();
    desk.run();
    hand::over(desk, text);
}

/// Whether the window told its host to close.
fn closes(desk: &mut Desk) -> bool {
    desk.step();
    let mut told = false;
    for _ in 0..4 {
        let output = desk.output().viewport_output.values();
        told |= output.flat_map(|one| &one.commands).any(|one| *one == egui::ViewportCommand::Close);
        desk.step();
    }
    told
}

#[test]
fn what_stands_half_typed_is_committed_before_closing_asks() {
    let folder = tempfile::tempdir().unwrap();
    let path = plan_in(folder.path());
    let mut desk = on_plan(&path, None);
    desk.key_press(Key::Num1);
    settle(&mut desk);
    begins_to_type(&mut desk, "Birds of the coop", "77");
    assert!(!asked_to_close(&mut desk), "nothing is decided before the field is read");
    desk.run();
    desk.get_by_label("Save what you changed?");
    assert_eq!(window(&desk).editor().plan().coop.as_ref().unwrap().birds, Some(77));
    click_on(&mut desk, "Save");
    assert!(asked_to_close(&mut desk));
    let read = plan::read(&std::fs::read(&path).unwrap()).unwrap().plan;
    assert_eq!(read.coop.unwrap().birds, Some(77));

    // A name as well, in the menu of the plan.
    let mut desk = on_plan(&path, None);
    click_on(&mut desk, "Plan: new, open, save");
    begins_to_type(&mut desk, "Name of the plan", "Second grass");
    assert!(!asked_to_close(&mut desk));
    desk.run();
    desk.get_by_label("Save what you changed?");
    assert_eq!(window(&desk).editor().plan().title, "Second grass");

    // A field in which the keys merely stand holds nothing back: the window closes by itself.
    let mut desk = on_plan(&path, None);
    desk.get_by_label("Length of side 1 to 2").focus();
    desk.run();
    assert!(!asked_to_close(&mut desk));
    assert!(closes(&mut desk));
    assert!(asked_to_close(&mut desk));
}

#[test]
fn what_stands_in_a_field_and_cannot_be_read_is_asked_about_too() {
    let folder = tempfile::tempdir().unwrap();
    let path = plan_in(folder.path());
    let mut desk = on_plan(&path, None);
    desk.key_press(Key::Num1);
    settle(&mut desk);
    begins_to_type(&mut desk, "Birds of the coop", "a few");
    assert!(!asked_to_close(&mut desk));
    desk.run();
    desk.get_by_label("Leave what is typed?");
    click_on(&mut desk, "Keep working");
    desk.get_by_label_contains("“a few” is no number");
    assert!(!asked_to_close(&mut desk), "it still stands there");
    desk.run();
    click_on(&mut desk, "Close without it");
    assert!(asked_to_close(&mut desk));
    assert_eq!(std::fs::read(&path).unwrap(), EXAMPLE);

    // Of what is unsaved besides is asked next; and once the field is mended nothing is held back.
    let mut desk = on_plan(&path, None);
    desk.key_press(Key::Num1);
    settle(&mut desk);
    nudge(&mut desk);
    desk.key_press(Key::Num1);
    settle(&mut desk);
    begins_to_type(&mut desk, "Birds of the coop", "a few");
    desk.key_press_modifiers(Modifiers::COMMAND, Key::N);
    desk.run();
    desk.key_press(Key::Tab);
    desk.run();
    desk.key_press(Key::Enter);
    desk.run();
    desk.get_by_label("Save what you changed?");
    // One more Enter is the new question's first choice, not the button that stands where the last one was.
    let save = desk.get_by_label("Save");
    assert!(egui_kittest::kittest::NodeT::accesskit_node(&save).is_focused());
    click_on(&mut desk, "Keep working");
    fill(&mut desk, "Birds of the coop", "80");
    desk.key_press_modifiers(Modifiers::COMMAND, Key::N);
    desk.run();
    desk.get_by_label("Save what you changed?");
}

#[test]
fn a_line_half_drawn_is_asked_about_before_it_is_left() {
    let folder = tempfile::tempdir().unwrap();
    let path = plan_in(folder.path());
    let mut desk = on_plan(&path, None);
    desk.key_press(Key::R);
    desk.run();
    assert!(asked_to_close(&mut on_plan(&path, None)));
    for (east, north) in [(90.0, 10.0), (110.0, 10.0), (110.0, 30.0)] {
        let at = hand::spot(&desk, plan::Point::new(east, north));
        hand::click(&mut desk, at);
    }
    let drawn = window(&desk).editor().tool().set_count();
    assert_eq!((drawn, window(&desk).editor().save_state()), (3, SaveState::Saved));
    assert!(!asked_to_close(&mut desk));
    desk.run();
    desk.get_by_label("Leave what is half drawn?");
    // The keys are the question's: Tab walks its buttons, Esc leaves it, and the line stays as it was.
    desk.key_press(Key::Tab);
    desk.run();
    let without = desk.get_by_label("Close without it");
    assert!(egui_kittest::kittest::NodeT::accesskit_node(&without).is_focused());
    desk.key_press(Key::Escape);
    desk.run();
    assert_eq!(window(&desk).editor().tool().set_count(), 3, "the line is still in the hand");
    for (modifiers, key) in [(Modifiers::COMMAND, Key::O), (Modifiers::COMMAND, Key::N)] {
        desk.key_press_modifiers(modifiers, key);
        desk.run();
        desk.get_by_label("Leave what is half drawn?");
        click_on(&mut desk, "Keep working");
    }
    assert!(!asked_to_close(&mut desk));
    desk.run();
    click_on(&mut desk, "Close without it");
    assert!(asked_to_close(&mut desk));
}

#[test]
fn another_plan_is_opened_only_once_unsaved_work_is_answered_for() {
    let folder = tempfile::tempdir().unwrap();
    let path = plan_in(folder.path());
    let mut desk = on_plan(&path, None);
    nudge(&mut desk);
    desk.key_press_modifiers(Modifiers::COMMAND, Key::N);
    desk.run();
    desk.get_by_label("Save what you changed?");
    desk.key_press(Key::Escape);
    desk.run();
    assert_eq!(window(&desk).editor().save_state(), SaveState::Changed, "Esc changes nothing");
    desk.key_press_modifiers(Modifiers::COMMAND, Key::N);
    desk.run();
    click_on(&mut desk, "Go on without saving");
    desk.get_by_label("How much netting do you have?");
}

#[test]
fn what_a_window_that_fell_left_behind_is_offered_and_is_the_same_plan() {
    let folder = tempfile::tempdir().unwrap();
    let path = plan_in(folder.path());
    let mut desk = on_plan(&path, Some(folder.path()));
    nudge(&mut desk);
    say(&mut desk, Message::Nudge(1.0, 0.0));
    say(&mut desk, Message::Undo);
    let lost = window(&desk).editor().plan().clone();
    // Dropped with unsaved work that nobody was asked about: as after a fall.
    drop(desk);
    assert_eq!(std::fs::read(&path).unwrap(), EXAMPLE);

    let mut desk = on_plan(&path, Some(folder.path()));
    desk.get_by_label("Netfold ended without saving");
    desk.get_by_label_contains("Kettle Field, first grass was left with");
    click_on(&mut desk, "Take it back");
    settle(&mut desk);
    let editor = window(&desk).editor();
    assert_eq!(*editor.plan(), lost);
    assert_eq!(editor.save_state(), SaveState::Changed);
    assert_eq!(editor.file(), Some(path.as_path()));
    // A second fall loses nothing either.
    drop(desk);
    let mut desk = on_plan(&path, Some(folder.path()));
    click_on(&mut desk, "Throw it away");
    desk.run();
    drop(desk);
    let desk = on_plan(&path, Some(folder.path()));
    assert!(desk.query_by_label("Netfold ended without saving").is_none());
}

#[test]
fn theme_units_and_size_are_remembered() {
    let folder = tempfile::tempdir().unwrap();
    let path = plan_in(folder.path());
    let mut desk = on_plan(&path, Some(folder.path()));
    say(&mut desk, Message::Units(Units::Feet));
    click_on(&mut desk, "Theme, language and size");
    click_on(&mut desk, "High contrast");
    click_on(&mut desk, "Deutsch");
    click_on(&mut desk, "125 %");
    desk.run();
    drop(desk);
    let desk = on_plan(&path, Some(folder.path()));
    assert!((desk.ctx.zoom_factor() - 1.25).abs() < 1e-6);
    let editor = window(&desk).editor();
    let words = Words { language: Language::German, units: Units::Feet };
    assert_eq!((editor.theme(), editor.words()), (Theme::Contrast, words));
    let settings = desktop::Settings::read(folder.path());
    assert_eq!(settings.last_plan().unwrap(), path.canonicalize().unwrap());
}

#[test]
fn a_run_that_is_taken_out_takes_its_readings_along_so_that_the_file_reads() {
    let folder = tempfile::tempdir().unwrap();
    let path = plan_in(folder.path());
    let mut opened = plan::read(EXAMPLE).unwrap().plan;
    opened.readings.push(plan::Reading {
        run: opened.runs[0].id.clone(),
        kind: plan::ReadingKind::FenceKv,
        along_m: Some(3.0),
        value: Some(4.1),
        rest: plan::Rest::new(),
    });
    std::fs::write(&path, plan::write(&opened)).unwrap();
    let mut desk = on_plan(&path, None);
    say(&mut desk, Message::Pick(Some(Thing::Run { run: 0 })));
    say(&mut desk, Message::Remove);
    desk.key_press_modifiers(Modifiers::COMMAND, Key::S);
    desk.run();
    desk.get_by_label("saved");
    let read = plan::read(&std::fs::read(&path).unwrap()).unwrap().plan;
    assert!(read.runs.is_empty() && read.readings.is_empty());
    desk.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    desk.run();
    assert_eq!(*window(&desk).editor().plan(), opened, "one step");
}

#[test]
fn the_sheet_follows_the_plan_and_writes_over_nothing_unasked() {
    let folder = tempfile::tempdir().unwrap();
    let path = plan_in(folder.path());
    let paper = folder.path().join("field.pdf");
    std::fs::write(&paper, b"a sheet of another year").unwrap();
    let mut desk = on_plan(&path, None);
    say(&mut desk, Message::Open(desktop::editor::Page::Sheet));
    click_on(&mut desk, "Write the sheet");
    desk.get_by_label_contains("is there already");
    assert_eq!(std::fs::read(&paper).unwrap(), b"a sheet of another year");
    click_on(&mut desk, "Write the sheet");
    assert!(std::fs::read(&paper).unwrap().starts_with(b"%PDF-"));
    // Another plan proposes a name of its own.
    say(&mut desk, Message::AskRolls);
    say(&mut desk, Message::LayOut);
    settle(&mut desk);
    say(&mut desk, Message::Open(desktop::editor::Page::Sheet));
    let field = desk.get_by_role_and_label(egui::accesskit::Role::TextInput, "File");
    assert_eq!(egui_kittest::kittest::NodeT::accesskit_node(&field).value().as_deref(), Some("plan.pdf"));
}

#[test]
fn a_boundary_is_brought_in_as_one_step_and_a_bad_file_leads_back_to_the_choice() {
    let folder = tempfile::tempdir().unwrap();
    let island = include_bytes!("../../../../tests/data/liberty-island.geojson");
    std::fs::write(folder.path().join("island.geojson"), island).unwrap();
    std::fs::write(folder.path().join("empty.geojson"), b"{ \"type\": \"FeatureCollection\", \"features\": [] }")
        .unwrap();
    let mut desk = on_plan(&plan_in(folder.path()), None);
    let before = window(&desk).editor().plan().clone();
    say(&mut desk, Message::Open(desktop::editor::Page::Ground));
    click_on(&mut desk, "Bring in");
    fill(&mut desk, "File name", "empty.geojson");
    desk.get_by_label("That did not work");
    click_on(&mut desk, "Understood");
    assert_eq!(*window(&desk).editor().plan(), before);
    fill(&mut desk, "File name", "island.geojson");
    settle(&mut desk);
    let plan = window(&desk).editor().plan();
    assert!(plan.ground.boundary.len() > 3 && plan.origin.is_some());
    assert_ne!(plan.ground.boundary, before.ground.boundary);
    assert_eq!(window(&desk).editor().deeds().0.len(), 1);
    desk.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    desk.run();
    assert_eq!(*window(&desk).editor().plan(), before);
}

#[test]
fn what_is_only_asked_about_is_not_saved_over_the_open_plan() {
    let folder = tempfile::tempdir().unwrap();
    let path = plan_in(folder.path());
    let mut desk = on_plan(&path, None);
    desk.key_press_modifiers(Modifiers::COMMAND, Key::N);
    desk.run();
    desk.get_by_label("How much netting do you have?");
    desk.key_press_modifiers(Modifiers::COMMAND, Key::S);
    desk.run();
    assert_eq!(std::fs::read(&path).unwrap(), EXAMPLE);
    desk.key_press(Key::Escape);
    desk.run();
    settle(&mut desk);
    assert_eq!(window(&desk).editor().save_state(), SaveState::Saved);
    assert_eq!(*window(&desk).editor().plan(), plan::read(EXAMPLE).unwrap().plan);
}

#[test]
fn of_two_falls_one_is_taken_back_and_the_other_is_offered_again() {
    let folder = tempfile::tempdir().unwrap();
    let path = plan_in(folder.path());
    let mut desk = on_plan(&path, Some(folder.path()));
    nudge(&mut desk);
    drop(desk);
    let mut desk = on_plan(&path, Some(folder.path()));
    click_on(&mut desk, "Ask again next time");
    say(&mut desk, Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 1 })));
    say(&mut desk, Message::Nudge(-2.0, 0.0));
    drop(desk);
    let journals = || std::fs::read_dir(folder.path().join("journals")).unwrap().count();
    assert_eq!(journals(), 2);
    let mut desk = on_plan(&path, Some(folder.path()));
    click_on(&mut desk, "Take it back");
    desk.run();
    assert!(desk.query_by_label("Netfold ended without saving").is_none(), "one plan is open at a time");
    drop(desk);
    assert_eq!(journals(), 2, "the one that was taken back and the one that was not");
}

#[test]
fn ctrl_s_beside_a_field_commits_it_and_saves() {
    let folder = tempfile::tempdir().unwrap();
    let path = plan_in(folder.path());
    let mut desk = on_plan(&path, None);
    desk.get_by_label("Length of side 1 to 2").focus();
    desk.run();
    desk.key_press_modifiers(Modifiers::COMMAND, Key::A);
    desk.run();
    desk.event(egui::Event::Text("31".to_owned()));
    desk.run();
    desk.key_press_modifiers(Modifiers::COMMAND, Key::S);
    desk.run();
    desk.get_by_label("saved");
    let outline = plan::read(&std::fs::read(&path).unwrap()).unwrap().plan.runs[0].outline.clone();
    let side_m = (outline[1].east_m - outline[0].east_m).hypot(outline[1].north_m - outline[0].north_m);
    assert!((side_m - 31.0).abs() < 1e-9, "{side_m}");
}

#[test]
fn figures_in_an_entry_on_the_map_are_asked_about_before_closing() {
    let folder = tempfile::tempdir().unwrap();
    let path = plan_in(folder.path());
    let mut desk = on_plan(&path, None);
    hand::say(&mut desk, Message::Pick(Some(Thing::RunSide { run: 0, side: 0 })));
    desk.key_press(Key::Enter);
    desk.run();
    desk.event(egui::Event::Text("20".to_owned()));
    desk.run();
    assert!(!asked_to_close(&mut desk));
    desk.run();
    desk.get_by_label("Leave what is typed?");
    click_on(&mut desk, "Close without it");
    assert!(asked_to_close(&mut desk));
    assert_eq!(std::fs::read(&path).unwrap(), EXAMPLE);
}
