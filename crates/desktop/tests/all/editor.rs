//! What the window is about, without a window: messages in, plan and figures out.

use desktop::editor::{Editor, Message};
use desktop::worker::{Answer, Worker};
use drawing::Thing;
use plan::{Edit, Point, Shape};
use words::Words;
use words::texts::Window;
use workup::{Depth, Known};

const EXAMPLE: &[u8] = include_bytes!("../../../../assets/demo/kettle-field.netfold.json");

fn editor() -> Editor {
    Editor::new(plan::read(EXAMPLE).unwrap().plan, Words::default())
}

fn answer(editor: &mut Editor) -> Answer {
    let request = editor.request().unwrap();
    let mut known = Known::default();
    let workup = workup::knowing(&request.plan, Depth::Full, &mut known);
    Answer { revision: request.revision, workup, known, fitted: None }
}

#[test]
fn what_an_animal_feels_is_stale_until_the_worker_answers() {
    let mut editor = editor();
    assert_eq!(editor.touch("run-1"), None, "nothing is known yet");
    let first = answer(&mut editor);
    editor.receive(Message::Worked(Box::new(first)));
    let (touch, stale) = editor.touch("run-1").unwrap();
    assert!(!stale && editor.is_full());

    let shape = Shape::Run("run-1".to_owned());
    editor.receive(Message::Make(Edit::MoveCorner { shape, corner: 0, to: Point::new(10.0, 10.0) }));
    assert_eq!(editor.touch("run-1"), Some((touch, true)), "the old value stays and is marked");
    assert!(!editor.is_full());
    let second = answer(&mut editor);
    editor.receive(Message::Worked(Box::new(second)));
    let (now, stale) = editor.touch("run-1").unwrap();
    assert!(!stale);
    assert!((now.kv - touch.kv).abs() > 1e-6, "a longer line is felt less");
}

#[test]
fn an_answer_to_an_earlier_plan_is_dropped() {
    let mut editor = editor();
    let late = answer(&mut editor);
    editor.receive(Message::Make(Edit::SetTitle { title: "Another".to_owned() }));
    editor.receive(Message::Worked(Box::new(late)));
    assert!(!editor.is_full());
    assert_eq!(editor.touch("run-1"), None);
}

#[test]
fn a_side_taken_hold_of_gets_a_corner_in_one_step() {
    let mut editor = editor();
    let before = editor.plan().clone();
    editor.receive(Message::Free(true));
    editor.receive(Message::Grab(Thing::RunSide { run: 0, side: 1 }, Point::new(64.0, 27.0)));
    editor.receive(Message::Drag(Point::new(70.0, 25.0)));
    editor.receive(Message::Drag(Point::new(72.0, 24.0)));
    editor.receive(Message::Drop);
    assert_eq!(editor.plan().runs[0].outline.len(), 6);
    assert_eq!(editor.plan().runs[0].outline[2], Point::new(72.0, 24.0));
    assert_eq!(editor.picked(), Some(Thing::RunCorner { run: 0, vertex: 2 }));
    editor.receive(Message::Undo);
    assert_eq!(*editor.plan(), before);
    editor.receive(Message::Redo);
    assert_eq!(editor.plan().runs[0].outline[2], Point::new(72.0, 24.0));
}

#[test]
fn a_triangle_keeps_its_corners_and_says_so() {
    let mut editor = editor();
    for _ in 0..2 {
        editor.receive(Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 0 })));
        editor.receive(Message::Remove);
    }
    assert_eq!(editor.plan().runs[0].outline.len(), 3);
    editor.receive(Message::Pick(Some(Thing::RunCorner { run: 0, vertex: 0 })));
    editor.receive(Message::Remove);
    assert_eq!(editor.plan().runs[0].outline.len(), 3);
    assert_eq!(editor.notice(), Some(Window::FewestCorners));
}

#[test]
fn what_is_picked_is_forgotten_when_it_is_gone() {
    let mut editor = editor();
    editor.receive(Message::Pick(Some(Thing::Run { run: 0 })));
    editor.receive(Message::Remove);
    assert_eq!((editor.plan().runs.len(), editor.picked(), editor.run_index()), (0, None, 0));
    assert!(editor.run().is_none());
    editor.receive(Message::Undo);
    assert_eq!(editor.plan().runs.len(), 1);
}

#[test]
fn the_worker_answers_the_latest_request() {
    let (sender, receiver) = std::sync::mpsc::channel();
    let worker = Worker::start(move || sender.send(()).unwrap());
    let mut editor = editor();
    for step in 0..20 {
        let title = format!("step {step}");
        editor.receive(Message::Make(Edit::SetTitle { title }));
        worker.ask(editor.request().unwrap());
    }
    while !editor.is_full() {
        receiver.recv_timeout(std::time::Duration::from_mins(1)).unwrap();
        if let Some(answer) = worker.answer() {
            editor.receive(Message::Worked(Box::new(answer)));
        }
    }
}

#[test]
fn the_font_has_every_letter_that_is_shown() {
    let texts = words::texts::wordings(words::Language::English).into_iter();
    for text in texts.chain(["→ − – · × Ω µ ² ° ½"]) {
        for letter in text.chars().filter(|letter| !letter.is_control()) {
            let known = drawing::letters::advance(letter, drawing::Weight::Medium).is_some();
            assert!(known, "no glyph for {letter:?} in {text:?}");
        }
    }
}
