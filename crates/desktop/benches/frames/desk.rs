//! The real window on a bare egui context: frames are timed as the program's host times them, the interface and
//! its triangles together, without what waits for the screen.

use std::sync::{Arc, Mutex, PoisonError};
use std::time::{Duration, Instant};

use desktop::Window;
use desktop::editor::{Message, Page};
use egui::{Context, Event, Id, Modifiers, PointerButton, Pos2, RawInput, Rect, Vec2};
use plan::{Plan, Point};
use words::Words;

/// Width and height of the window, points.
const SIZE: Vec2 = Vec2::new(1280.0, 800.0);

/// What a frame took.
#[derive(Clone, Copy)]
pub(crate) struct Took {
    /// Without the time in which the system ran something else.
    pub(crate) busy: Duration,
    /// By the clock.
    pub(crate) clock: Duration,
}

/// A window at work.
pub(crate) struct Desk {
    ctx: Context,
    pub(crate) window: Window,
    since: Instant,
    /// When the next frame was asked for.
    due: Arc<Mutex<Option<Instant>>>,
}

impl Desk {
    /// A window of a plan, settled.
    pub(crate) fn open(plan: Plan) -> Self {
        let ctx = Context::default();
        let due = Arc::new(Mutex::new(None::<Instant>));
        let theirs = Arc::clone(&due);
        ctx.set_request_repaint_callback(move |info| {
            let at = Instant::now().checked_add(info.delay);
            let mut due = theirs.lock().unwrap_or_else(PoisonError::into_inner);
            *due = match (*due, at) {
                (Some(one), Some(other)) => Some(one.min(other)),
                (one, other) => one.or(other),
            };
        });
        let window = Window::new(&ctx, plan, None, Words::default());
        let mut desk = Self { ctx, window, since: Instant::now(), due };
        desk.settle();
        desk
    }

    /// Says something as a view would.
    pub(crate) fn say(&mut self, message: Message) {
        self.window.say(message);
    }

    /// One frame.
    pub(crate) fn frame(&mut self, events: Vec<Event>) -> Took {
        *self.due.lock().unwrap() = None;
        let input = RawInput {
            screen_rect: Some(Rect::from_min_size(Pos2::ZERO, SIZE)),
            time: Some(self.since.elapsed().as_secs_f64()),
            events,
            ..RawInput::default()
        };
        let (waited, from) = (waited(), Instant::now());
        let output = self.ctx.run_ui(input, |ui| self.window.ui(ui));
        let triangles = self.ctx.tessellate(output.shapes, output.pixels_per_point);
        let clock = from.elapsed();
        assert!(!triangles.is_empty(), "an empty frame measures nothing");
        Took { busy: clock.saturating_sub(self::waited().saturating_sub(waited)), clock }
    }

    /// One frame after a message, the message included.
    pub(crate) fn timed(&mut self, message: Message) -> Took {
        let (waited, from) = (waited(), Instant::now());
        self.say(message);
        let clock = from.elapsed();
        let said = Took { busy: clock.saturating_sub(self::waited().saturating_sub(waited)), clock };
        let frame = self.frame(Vec::new());
        Took { busy: said.busy + frame.busy, clock: said.clock + frame.clock }
    }

    /// Paints the frame that was asked for, if its time has come; says whether there was one.
    pub(crate) fn frame_if_due(&mut self) -> bool {
        let is_due = self.due.lock().unwrap().is_some_and(|due| due <= Instant::now());
        if is_due {
            self.frame(Vec::new());
        }
        is_due
    }

    /// Whether a frame is asked for, now or later.
    pub(crate) fn is_asked(&self) -> bool {
        self.due.lock().unwrap().is_some()
    }

    /// Frames until the worker has answered and nothing more is to be painted.
    pub(crate) fn settle(&mut self) {
        self.frame(Vec::new());
        for _ in 0..10_000 {
            if !self.frame_if_due() {
                let editor = self.window.editor();
                // What is reckoned beside the window for the page about volts comes as one more frame.
                let reckoned = editor.page() != Page::Power || editor.study().is_some_and(|(_, stale)| !stale);
                if editor.is_full() && reckoned && !self.is_asked() {
                    return;
                }
                std::thread::sleep(Duration::from_millis(1));
            }
        }
        panic!("the window never came to rest");
    }

    /// Where a place of the plan lies on the screen.
    pub(crate) fn spot(&self, at: Point) -> Pos2 {
        let map = self.map();
        let [right, down] = self.window.editor().view().spot(at);
        map.min + egui::vec2(right, down)
    }

    /// Where the map lies.
    pub(crate) fn map(&self) -> Rect {
        self.ctx.read_response(Id::unique("map")).expect("the window has a map").rect
    }

    /// Presses the button on a spot.
    pub(crate) fn press(&mut self, at: Pos2) {
        self.frame(vec![Event::PointerMoved(at)]);
        self.frame(vec![button(at, true)]);
    }

    /// Moves the pointer.
    pub(crate) fn move_to(&mut self, at: Pos2) -> Took {
        self.frame(vec![Event::PointerMoved(at)])
    }

    /// Lets go of the button.
    pub(crate) fn release(&mut self, at: Pos2) {
        self.frame(vec![button(at, false)]);
    }
}

fn button(pos: Pos2, pressed: bool) -> Event {
    Event::PointerButton { pos, button: PointerButton::Primary, pressed, modifiers: Modifiers::NONE }
}

/// For how long this thread could have run and did not, where the system tells (Linux).
fn waited() -> Duration {
    let told = std::fs::read_to_string("/proc/thread-self/schedstat").unwrap_or_default();
    Duration::from_nanos(told.split_whitespace().nth(1).and_then(|word| word.parse().ok()).unwrap_or(0))
}
