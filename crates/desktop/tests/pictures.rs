//! How the window looks: few pictures, kept beside the test. Update with `UPDATE_SNAPSHOTS=1`.
//!
//! They need a Vulkan driver, a software one will do; a missing one fails.
#![cfg(feature = "pictures")]
#![allow(clippy::unwrap_used, reason = "a test may stop")]

use desktop::Window;
use desktop::editor::{Message, Page};
use drawing::Theme;
use egui_kittest::{Harness, SnapshotResults};
use words::Words;

const EXAMPLE: &[u8] = include_bytes!("../../../assets/demo/kettle-field.netfold.json");
const TWO_RUNS: &[u8] = include_bytes!("../../../assets/demo/square-or-rectangle.netfold.json");

fn picture(results: &mut SnapshotResults, name: &str, bytes: &[u8], size: [f32; 2], page: Page, theme: Theme) {
    let plan = plan::read(bytes).unwrap().plan;
    let mut made = Some(plan);
    let mut harness = Harness::builder().with_size(size).with_step_dt(1.0 / 60.0).wgpu().build_ui_state(
        move |ui, window: &mut Option<Window>| {
            let window = window.get_or_insert_with(|| {
                let mut window = Window::new(ui.ctx(), made.take().unwrap(), None, Words::default());
                window.say(Message::Open(page));
                window.say(Message::Theme(theme));
                window
            });
            window.ui(ui);
        },
        None,
    );
    for _ in 0..2000 {
        harness.run();
        if harness.state().as_ref().unwrap().editor().is_full() {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(5));
    }
    harness.run();
    results.add(harness.try_snapshot(name));
}

#[test]
fn the_window_looks_as_it_did() {
    const USUAL: [f32; 2] = [1280.0, 800.0];
    let mut results = SnapshotResults::new();
    picture(&mut results, "run-light-1280", EXAMPLE, USUAL, Page::Run, Theme::Light);
    picture(&mut results, "run-dark-1280", EXAMPLE, USUAL, Page::Run, Theme::Dark);
    picture(&mut results, "ground-light-1280", EXAMPLE, USUAL, Page::Ground, Theme::Light);
    picture(&mut results, "power-dark-1280", EXAMPLE, USUAL, Page::Power, Theme::Dark);
    picture(&mut results, "sheet-light-1280", EXAMPLE, USUAL, Page::Sheet, Theme::Light);
    picture(&mut results, "power-light-1920", EXAMPLE, [1920.0, 1080.0], Page::Power, Theme::Light);
    picture(&mut results, "two-runs-light-1920", TWO_RUNS, [1920.0, 1080.0], Page::Run, Theme::Light);
    picture(&mut results, "run-light-900", EXAMPLE, [900.0, 600.0], Page::Run, Theme::Light);
}
