//! How fast the window follows the hand, how still it is when nothing happens, and how much it keeps.
//!
//! Each figure is told beside its target: 99 of 100 frames within 8 ms with more than 1,000 things on the map,
//! within 16 ms with 10,000; none without a hand; within 20 MB after 10,000 edits. A part's name (`drag`, `pan`,
//! `list`, `idle`, `memory`, `search`) or a farm's size (`10`, `20`, `130`) measures that alone.
#![allow(missing_docs, reason = "criterion's macros make public items of their own")]
#![allow(
    clippy::unwrap_used,
    clippy::disallowed_methods,
    clippy::print_stdout,
    reason = "a bench looks at clocks, may stop and prints"
)]

#[path = "frames/desk.rs"]
mod desk;
#[path = "frames/farm.rs"]
mod farm;

use std::time::{Duration, Instant};

use criterion::Criterion;
use desk::{Desk, Took};
use desktop::editor::{ManyMessage, Message, Page, Progress, ShapesMessage};
use desktop::tool::{Drawn, Hand, Tool};
use drawing::Thing;
use egui::{Event, Key, Modifiers, MouseWheelSource, MouseWheelUnit, Pos2, TouchPhase, Vec2};
use plan::Plan;

/// Frames of one drag.
const FRAMES: usize = 600;
/// A frame each so often while something is dragged: a screen of 120 Hz.
const PACE: Duration = Duration::from_micros(8333);
/// Edits before memory is measured first, and from there to where it is measured again.
const WARM: usize = 500;
const EDITS: usize = 10_000;
/// The two ways in which memory is measured, and after how many edits the plan is opened anew, which forgets its
/// steps.
const MEMORY: [(&str, Option<usize>); 2] = [("memory-kept", None), ("memory-forgotten", Some(250))];
/// How far a dragged corner goes about where it was, points.
const CIRCLE: f32 = 20.0;

fn main() {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    if let [measured] = &arguments[..]
        && let Some((_, forget_each)) = MEMORY.iter().find(|(name, _)| name == measured)
    {
        println!("{}", growth_mb(&farm::ten_nets(), *forget_each));
        return;
    }
    let parts = ["drag", "gates", "pan", "list", "idle", "memory", "search"];
    let named = arguments.iter().any(|argument| parts.contains(&argument.as_str()));
    let wants = |part: &str| !named || arguments.iter().any(|argument| argument == part);
    let plans = [
        ("10 nets", "8 ms", farm::ten_nets()),
        ("20 runs, 100 nets", "8 ms", farm::of_runs(20)),
        ("130 runs, 10,000 things", "16 ms", farm::of_runs(130)),
    ];
    let sizes: Vec<String> = arguments.iter().filter(|argument| argument.parse::<usize>().is_ok()).cloned().collect();
    let sized = |name: &str| sizes.is_empty() || sizes.iter().any(|size| name.split(' ').next() == Some(size));
    let gated = [
        ("10 nets, a gate and two pins", "8 ms", farm::gated(false)),
        ("10 nets, two pins and a gate that is shut off", "8 ms", farm::gated(true)),
    ];
    if wants("drag") {
        for (name, target, plan) in plans.iter().chain(&gated).filter(|(name, ..)| sized(name)) {
            drags(name, target, plan);
        }
    }
    if arguments.iter().any(|argument| argument == "gates") {
        for (name, target, plan) in &gated {
            drags(name, target, plan);
        }
    }
    if wants("pan") {
        for (name, target, plan) in plans.iter().filter(|(name, ..)| sized(name)) {
            moves(name, target, plan);
        }
    }
    if wants("list") {
        lists("10,000 words on the map", "16 ms", &farm::of_words(10_000));
        for (name, target, plan) in plans[1..].iter().filter(|(name, ..)| sized(name)) {
            lists(name, target, plan);
        }
    }
    if wants("idle") {
        idle(&plans[1].2);
    }
    if wants("memory") {
        memory();
    }
    if wants("search") {
        search();
    }
    if !named {
        let mut criterion = Criterion::default().configure_from_args();
        for (name, target, plan) in plans {
            let mut desk = Desk::open(plan);
            let corner = take_hold(&mut desk);
            let mut step = 0;
            criterion.bench_function(&format!("frame of a drag, {name} (target {target})"), |bench| {
                bench.iter(|| {
                    step += 1;
                    desk.move_to(on_circle(corner, step))
                });
            });
        }
        criterion.final_summary();
    }
}

/// A corner is dragged on every page with all of the plan in sight, then nearer; then the pointer moves alone.
fn drags(name: &str, target: &str, plan: &Plan) {
    let mut desk = Desk::open(plan.clone());
    println!("{name}: {} things", things(&desk));
    for page in Page::ALL {
        desk.say(Message::Open(page));
        desk.settle();
        tell(&format!("drag, {name}, all in sight, page {page:?} (target {target})"), &drag(&mut desk));
    }
    desk.say(Message::Open(Page::Run));
    for px_per_m in [5.0, 11.0] {
        desk.settle();
        let view = *desk.window.editor().view();
        let corner = desk.window.editor().plan().runs[0].outline[1];
        desk.say(Message::Zoom(px_per_m / view.px_per_m, view.spot(corner)));
        desk.settle();
        tell(&format!("drag, {name}, {px_per_m} px/m, page Run (target {target})"), &drag(&mut desk));
    }
    desk.say(Message::Fit);
    desk.settle();
    let map = desk.map();
    let across = |step: usize| {
        let share = step as f32 / FRAMES as f32;
        let up = (share * 20.0).fract();
        Pos2::new(map.left() + map.width() * share, map.bottom() - map.height() * up)
    };
    let took = paced(&mut desk, across);
    tell(&format!("pointer over the map, {name} (target {target})"), &took);
}

/// The map is moved and zoomed, and a run is unrolled over it.
fn moves(name: &str, target: &str, plan: &Plan) {
    let mut desk = Desk::open(plan.clone());
    let paced = |what: &str, desk: &mut Desk, message: &dyn Fn(usize) -> Message| {
        let since = Instant::now();
        let took: Vec<Took> = (1..=FRAMES)
            .map(|step| {
                std::thread::sleep((since + PACE * step as u32).saturating_duration_since(Instant::now()));
                desk.timed(message(step))
            })
            .collect();
        tell(&format!("{what}, {name} (target {target})"), &took);
    };
    let size = desk.window.editor().view().size;
    let middle = size.map(|side| side / 2.0);
    let turning = |step: usize| Vec2::angled(step as f32 * 0.05) * 6.0;
    paced("moving the map", &mut desk, &|step| Message::Pan(turning(step).x, turning(step).y));
    paced("zooming the map", &mut desk, &|step| {
        Message::Zoom(if step % 200 < 100 { 1.03 } else { 1.0 / 1.03 }, middle)
    });
    desk.say(Message::Fit);
    desk.say(Message::UseOn(Page::Run, Tool::outline(Drawn::Run)));
    desk.settle();
    let view = *desk.window.editor().view();
    let place = |share: [f32; 2]| view.place([size[0] * share[0], size[1] * share[1]]);
    for corner in [[0.4, 0.6], [0.6, 0.6], [0.62, 0.45]] {
        desk.say(Message::Hand(Hand::Click { at: place(corner), reach_m: 0.1 }));
    }
    paced("unrolling", &mut desk, &|step| {
        let at = turning(step) / 60.0;
        Message::Hand(Hand::Move(place([0.45 + at.x, 0.4 + at.y])))
    });
}

/// The list of everything is opened, walked page by page and scrolled; and a corner is dragged beside it.
fn lists(name: &str, target: &str, plan: &Plan) {
    let mut desk = Desk::open(plan.clone());
    desk.say(Message::Pick(None));
    let opened = desk.timed(Message::Many(ManyMessage::List(true)));
    desk.settle();
    println!("list, {name}: opened in {:.2} ms", opened.busy.as_secs_f64() * 1e3);
    let paced = |what: &str, desk: &mut Desk, events: &dyn Fn(usize) -> Vec<Event>| {
        let since = Instant::now();
        let took: Vec<Took> = (1..=FRAMES)
            .map(|step| {
                std::thread::sleep((since + PACE * step as u32).saturating_duration_since(Instant::now()));
                desk.frame(events(step))
            })
            .collect();
        tell(&format!("list, {what}, {name} (target {target})"), &took);
    };
    let key =
        |key: Key| Event::Key { key, physical_key: None, pressed: true, repeat: false, modifiers: Modifiers::NONE };
    paced("walked by its keys", &mut desk, &|step| vec![key(if step % 150 == 0 { Key::Home } else { Key::PageDown })]);
    let page = Pos2::new(desk.map().right() + 120.0, desk.map().center().y);
    paced("scrolled", &mut desk, &|step| {
        let delta = Vec2::new(0.0, if step % 200 < 100 { -900.0 } else { 900.0 });
        let (unit, phase, source) = (MouseWheelUnit::Point, TouchPhase::Move, MouseWheelSource::Unknown);
        let wheel = Event::MouseWheel { unit, delta, phase, source, modifiers: Modifiers::NONE };
        vec![Event::PointerMoved(page), wheel]
    });
    // What is left of the scrolling is the list's, and would zoom the map under the pointer.
    desk.settle();
    tell(&format!("list, drag beside it, {name} (target {target})"), &drag(&mut desk));
}

/// How many things the map shows: what stands on the ground, posts, corners, readings.
fn things(desk: &Desk) -> usize {
    let (plan, workup) = (desk.window.editor().plan(), desk.window.editor().workup());
    let laid = workup.runs.iter().filter_map(|run| run.lay.as_ref());
    let on_runs: usize = laid.map(|lay| lay.posts.len() + lay.corners.len()).sum();
    on_runs + plan.ground.keep_outs.len() + plan.ground.hazards.len() + plan.readings.len()
}

/// Takes hold of a corner of a run and says where it lies. Far out, marks lie over corners: the first that can be
/// caught is taken.
fn take_hold(desk: &mut Desk) -> Pos2 {
    let corners: Vec<_> =
        desk.window.editor().plan().runs.iter().flat_map(|run| run.outline.iter().skip(1)).copied().collect();
    for corner in corners {
        let corner = desk.spot(corner);
        desk.move_to(corner);
        if !matches!(desk.window.editor().hovered(), Some(Thing::RunCorner { .. })) {
            continue;
        }
        desk.press(corner);
        desk.move_to(on_circle(corner, 0));
        assert!(desk.window.editor().held_from().is_some(), "the corner was not caught");
        return corner;
    }
    panic!("no corner can be caught");
}

fn on_circle(middle: Pos2, step: usize) -> Pos2 {
    middle + Vec2::angled(step as f32 * 0.07) * CIRCLE
}

fn drag(desk: &mut Desk) -> Vec<Took> {
    let corner = take_hold(desk);
    let took = paced(desk, |step| on_circle(corner, step));
    desk.release(corner);
    desk.say(Message::Undo);
    desk.settle();
    took
}

/// Moves the pointer, a frame for every place, no faster than a screen shows them.
fn paced(desk: &mut Desk, at: impl Fn(usize) -> Pos2) -> Vec<Took> {
    let since = Instant::now();
    (1..=FRAMES)
        .map(|step| {
            let next = since + PACE * step as u32;
            std::thread::sleep(next.saturating_duration_since(Instant::now()));
            desk.move_to(at(step))
        })
        .collect()
}

fn tell(name: &str, took: &[Took]) {
    let part = |of: fn(&Took) -> Duration, share: f64| {
        let mut all: Vec<Duration> = took.iter().map(of).collect();
        all.sort();
        let index = (share * all.len() as f64).ceil() as usize;
        all[index.clamp(1, all.len()) - 1].as_secs_f64() * 1e3
    };
    let busy = |share| part(|took| took.busy, share);
    println!(
        "{name}: median {:.2} ms, p99 {:.2} ms, max {:.2} ms of {} frames (by the clock p99 {:.2} ms)",
        busy(0.5),
        busy(0.99),
        busy(1.0),
        took.len(),
        part(|took| took.clock, 0.99),
    );
}

/// No hand, a pointer that rests on a corner: a window on each page, all in the same 10 s.
fn idle(plan: &Plan) {
    let mut desks: Vec<Desk> = Page::ALL
        .into_iter()
        .map(|page| {
            let mut desk = Desk::open(plan.clone());
            desk.say(Message::Open(page));
            desk.settle();
            let corner = desk.spot(plan.runs[0].outline[1]);
            desk.move_to(corner);
            desk.settle();
            desk
        })
        .collect();
    let (until, mut frames) = (Instant::now() + Duration::from_secs(10), 0);
    while Instant::now() < until {
        frames += desks.iter_mut().map(|desk| usize::from(desk.frame_if_due())).sum::<usize>();
        std::thread::sleep(Duration::from_millis(4));
    }
    let asked = desks.iter().filter(|desk| desk.is_asked()).count();
    println!("idle for 10 s on {} pages (target 0 frames): {frames} frames, {asked} more asked for", desks.len());
}

/// The pointer over the map while other shapes are looked for, and again when they are found.
fn search() {
    let mut desk = Desk::open(farm::searched());
    let shapes = |desk: &mut Desk, message: ShapesMessage| desk.say(Message::Shapes(message));
    desk.say(Message::Open(Page::Run));
    shapes(&mut desk, ShapesMessage::Open(true));
    let map = desk.map();
    let at = |step: usize| map.min + map.size() * (step as f32 / FRAMES as f32);
    let (mut during, since) = (Vec::new(), Instant::now());
    for step in 1..=FRAMES {
        std::thread::sleep((since + PACE * step as u32).saturating_duration_since(Instant::now()));
        let took = desk.move_to(at(step));
        if desk.window.editor().shapes().progress() == Progress::Rests {
            shapes(&mut desk, ShapesMessage::Look);
        } else {
            during.push(took);
        }
    }
    tell("pointer while other shapes are looked for, 4 nets", &during);
    while desk.window.editor().shapes().progress() != Progress::Rests {
        desk.move_to(at(0));
        std::thread::sleep(PACE);
    }
    tell("pointer when they are found", &paced(&mut desk, at));
}

/// What so many edits leave behind, each in a program of its own: memory that was given back is used again.
fn memory() {
    let [kept_mb, forgotten_mb] = MEMORY.map(|(name, _)| {
        let this = std::env::current_exe().unwrap();
        let told = std::process::Command::new(this).arg(name).output().unwrap().stdout;
        String::from_utf8(told).unwrap().trim().parse::<f64>().unwrap()
    });
    println!(
        "memory after {EDITS} edits, 10 nets (target 20 MB): {kept_mb:+.1} MB; {forgotten_mb:+.1} MB where steps are forgotten"
    );
}

fn growth_mb(plan: &Plan, forget_each: Option<usize>) -> f64 {
    let mut desk = Desk::open(plan.clone());
    let mut before_mb = 0.0;
    for edit in 0..WARM + EDITS {
        if edit == WARM {
            desk.settle();
            before_mb = resident_mb();
        }
        if forget_each.is_some_and(|each| edit % each == 0) {
            desk.say(Message::Opened(Box::new(plan.clone()), None));
            desk.settle();
        }
        make(&mut desk, edit);
        // Now and then the hand rests until the worker has said everything.
        if edit % 10 == 0 {
            desk.settle();
        }
    }
    desk.settle();
    resident_mb() - before_mb
}

/// One edit: drags, undo, redo, a run added and taken out again.
fn make(desk: &mut Desk, edit: usize) {
    match edit % 6 {
        0 | 1 => {
            let corner = desk.spot(desk.window.editor().plan().runs[0].outline[edit % 2 + 1]);
            desk.press(corner);
            for step in 0..3 {
                desk.move_to(corner + Vec2::angled((edit + step) as f32) * 12.0);
            }
            desk.release(corner + Vec2::angled((edit + 2) as f32) * 12.0);
            return;
        }
        2 => desk.say(Message::Undo),
        3 => desk.say(Message::Redo),
        4 => {
            desk.say(Message::Pick(Some(Thing::Run { run: 0 })));
            desk.say(Message::Duplicate);
        }
        _ => {
            desk.say(Message::Pick(Some(Thing::Run { run: 1 })));
            desk.say(Message::Remove);
        }
    }
    desk.frame(Vec::new());
}

/// Memory that this program holds (Linux; 0 elsewhere).
fn resident_mb() -> f64 {
    let told = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = told.lines().find_map(|line| line.strip_prefix("VmRSS:"));
    let kb: f64 = line.and_then(|line| line.split_whitespace().next()?.parse().ok()).unwrap_or(0.0);
    kb / 1024.0
}
