//! A hand on the window without a screen: what the tests share.

pub(crate) mod many;
pub(crate) mod plans;

use desktop::editor::{Editor, Message, Page, Progress};
use desktop::{Opening, Window};
use egui::{Key, Modifiers, Pos2};
use egui_kittest::kittest::Queryable;
use egui_kittest::{Harness, HarnessBuilder};
use plan::{Plan, Point};
use words::Words;

/// A window under test.
pub(crate) type Desk = Harness<'static, Option<Window>>;

/// The example farm's file.
pub(crate) const EXAMPLE: &[u8] = include_bytes!("../../../../../assets/demo/kettle-field.netfold.json");

/// Opens a window.
pub(crate) fn open(opening: Opening, size: [f32; 2]) -> Desk {
    let mut desk = built(Harness::builder().with_size(size), opening, Vec::new());
    settle(&mut desk);
    desk
}

/// A window in a harness of some kind, before its first frame; what is said to it comes first.
pub(crate) fn built(builder: HarnessBuilder<Option<Window>>, opening: Opening, messages: Vec<Message>) -> Desk {
    let mut made = Some((opening, messages));
    builder.with_step_dt(1.0 / 60.0).with_max_steps(30).build_ui_state(
        move |ui, window: &mut Option<Window>| {
            let window = window.get_or_insert_with(|| {
                let (opening, messages) = made.take().unwrap();
                let mut window = Window::open(ui.ctx(), opening);
                for message in messages {
                    window.say(message);
                }
                window
            });
            window.ui(ui);
        },
        None,
    )
}

/// The example farm.
pub(crate) fn example() -> Plan {
    plan::read(EXAMPLE).unwrap().plan
}

/// A window of a plan on a page.
pub(crate) fn on_page(plan: Plan, page: Page, size: [f32; 2], words: Words) -> Desk {
    let mut desk = open(Opening { plan, words, ..Opening::default() }, size);
    desk.state_mut().as_mut().unwrap().say(Message::Open(page));
    settle(&mut desk);
    desk
}

/// A window on the example farm, as the program opens it at its first start.
pub(crate) fn cold() -> Desk {
    let example = example();
    let opening = Opening { plan: example.clone(), is_example: true, example: Some(example), ..Opening::default() };
    open(opening, [1280.0, 800.0])
}

/// Runs until what is worked out beside the window, volts and other shapes too, has come and nothing is to be painted.
pub(crate) fn settle(desk: &mut Desk) {
    wait(desk, "what is worked out beside the window", |window| {
        let editor = window.editor();
        let reckoned = editor.page() != Page::Power || editor.study().is_some_and(|(_, stale)| !stale);
        let searched = !editor.shapes().is_open() || editor.shapes().progress() == Progress::Rests;
        let full = editor.is_full() && !editor.is_fitting();
        editor.question().is_some() || full && reckoned && searched
    });
}

/// Runs until something has come. How long a loaded machine takes is no matter of the test's, so the wait is long.
pub(crate) fn wait(desk: &mut Desk, what: &str, has_come: impl Fn(&Window) -> bool) {
    for _ in 0..12_000 {
        desk.run();
        if has_come(window(desk)) {
            desk.run();
            return;
        }
        std::thread::sleep(std::time::Duration::from_millis(5));
    }
    panic!("{what} never came");
}

/// The window.
pub(crate) fn window(desk: &Desk) -> &Window {
    desk.state().as_ref().unwrap()
}

/// What the window is at work on.
pub(crate) fn editor(desk: &Desk) -> &Editor {
    window(desk).editor()
}

/// The plan as it stands.
pub(crate) fn plan_of(desk: &Desk) -> Plan {
    window(desk).editor().plan().clone()
}

/// How many steps can be taken back.
pub(crate) fn deeds(desk: &Desk) -> usize {
    window(desk).editor().deeds().0.len()
}

/// Says something to the window, as a view would.
pub(crate) fn say(desk: &mut Desk, message: Message) {
    desk.state_mut().as_mut().unwrap().say(message);
    desk.run();
}

/// Takes the last step back.
pub(crate) fn undo(desk: &mut Desk) {
    say(desk, Message::Undo);
}

/// Whether a text stands somewhere in the window.
pub(crate) fn says(desk: &Desk, part: &str) -> bool {
    desk.query_all_by_label_contains(part).next().is_some()
}

/// Where text is painted in the window that is none of a node's words alone, such as on the map.
pub(crate) fn painted(desk: &Desk, is: impl Fn(&str) -> bool) -> Vec<egui::Rect> {
    fn texts(shape: &egui::Shape, found: &mut Vec<(String, egui::Rect)>) {
        match shape {
            egui::Shape::Text(text) => found.push((text.galley.text().to_owned(), text.visual_bounding_rect())),
            egui::Shape::Vec(all) => all.iter().for_each(|one| texts(one, found)),
            _ => {}
        }
    }
    let mut found = Vec::new();
    desk.output().shapes.iter().for_each(|clipped| texts(&clipped.shape, &mut found));
    found.into_iter().filter(|(text, _)| is(text)).map(|(_, place)| place).collect()
}

/// Where a place of the plan lies on the screen.
pub(crate) fn spot(desk: &Desk, at: Point) -> Pos2 {
    let map = desk.get_by_label(window(desk).editor().words().text(words::texts::Window::Map)).rect();
    let [right, down] = window(desk).editor().view().spot(at);
    map.min + egui::vec2(right, down)
}

/// Presses or lets go of the pointer's button.
pub(crate) fn button(desk: &Desk, at: Pos2, pressed: bool) {
    desk.event(egui::Event::PointerMoved(at));
    let (button, modifiers) = (egui::PointerButton::Primary, Modifiers::NONE);
    desk.event(egui::Event::PointerButton { pos: at, button, pressed, modifiers });
}

/// Clicks at a spot.
pub(crate) fn click(desk: &mut Desk, at: Pos2) {
    desk.event(egui::Event::PointerMoved(at));
    desk.run();
    button(desk, at, true);
    desk.run();
    button(desk, at, false);
    desk.run();
}

/// Clicks what is called so.
pub(crate) fn click_on(desk: &mut Desk, label: &str) {
    let at = desk.get_by_label(label).rect().center();
    click(desk, at);
}

/// Takes hold of a spot and leads it to another, where it is held.
pub(crate) fn hold(desk: &mut Desk, from: Pos2, to: Pos2) {
    desk.event(egui::Event::PointerMoved(from));
    desk.run();
    button(desk, from, true);
    desk.run();
    for step in 1..=4 {
        desk.event(egui::Event::PointerMoved(from + (to - from) * step as f32 / 4.0));
        desk.run();
    }
}

/// Drags from one spot to another.
pub(crate) fn drag(desk: &mut Desk, from: Pos2, to: Pos2) {
    hold(desk, from, to);
    button(desk, to, false);
    desk.run();
}

/// Types over what stands in a field, which may lie below what is in sight, and Enter.
pub(crate) fn fill(desk: &mut Desk, label: &str, text: &str) {
    desk.get_by_label(label).focus();
    desk.run();
    overtype(desk, text);
}

/// Types over what stands in the field that has the focus.
pub(crate) fn over(desk: &mut Desk, text: &str) {
    desk.key_press_modifiers(Modifiers::COMMAND, Key::A);
    desk.run();
    desk.event(egui::Event::Text(text.to_owned()));
    desk.run();
}

/// Types over what stands in the field that has the focus, and Enter.
pub(crate) fn overtype(desk: &mut Desk, text: &str) {
    over(desk, text);
    desk.key_press(Key::Enter);
    desk.run();
}
