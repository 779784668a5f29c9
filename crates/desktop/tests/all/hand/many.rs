//! Several things in the hand: picked, pressed, copied; and plans with much on them.

use super::{Desk, example, on_page, plans, window};
use desktop::editor::{Editor, ManyMessage, Message, Page};
use drawing::Thing;
use egui::{Event, Key, Modifiers, OutputCommand, PointerButton, Pos2};
use plan::Point;
use words::Words;

pub(crate) const POND: Thing = Thing::KeepOut { keep_out: 0 };
pub(crate) const WELL: Thing = Thing::KeepOut { keep_out: 1 };
pub(crate) const LINE: Thing = Thing::Hazard { hazard: 0 };
pub(crate) const RUN: Thing = Thing::Run { run: 0 };
pub(crate) const COOP: Thing = Thing::Coop { coop: 0 };
pub(crate) fn desk(page: Page) -> Desk {
    on_page(example(), page, [1280.0, 800.0], Words::default())
}

pub(crate) fn editor() -> Editor {
    Editor::new(example(), Words::default())
}

pub(crate) fn many(editor: &mut Editor, said: ManyMessage) {
    editor.receive(Message::Many(said));
}

pub(crate) fn pick(editor: &mut Editor, things: &[Thing]) {
    editor.receive(Message::Pick(None));
    for &thing in things {
        many(editor, ManyMessage::Also(thing));
    }
}

pub(crate) fn click_with(desk: &mut Desk, at: Pos2, modifiers: Modifiers) {
    desk.event(Event::PointerMoved(at));
    desk.run();
    for pressed in [true, false] {
        desk.event_modifiers(
            Event::PointerButton { pos: at, button: PointerButton::Primary, pressed, modifiers },
            modifiers,
        );
        desk.run();
    }
}

pub(crate) fn drag_with(desk: &mut Desk, from: Pos2, to: Pos2, modifiers: Modifiers) {
    let button = |desk: &Desk, pos: Pos2, pressed: bool| {
        desk.event_modifiers(
            Event::PointerButton { pos, button: PointerButton::Primary, pressed, modifiers },
            modifiers,
        );
    };
    desk.event(Event::PointerMoved(from));
    desk.run();
    button(desk, from, true);
    desk.run();
    for step in 1..=4 {
        desk.event_modifiers(Event::PointerMoved(from + (to - from) * step as f32 / 4.0), modifiers);
        desk.run();
    }
    button(desk, to, false);
    desk.run();
}

pub(crate) fn press(desk: &mut Desk, modifiers: Modifiers, key: Key) {
    desk.key_press_modifiers(modifiers, key);
    desk.run();
}

pub(crate) fn chosen(desk: &Desk) -> Vec<Thing> {
    let mut chosen = window(desk).editor().chosen();
    chosen.sort_unstable();
    chosen
}

/// What went to the clipboard in the last frame.
pub(crate) fn copied(desk: &Desk) -> Option<String> {
    let commands = &desk.output().platform_output.commands;
    commands.iter().rev().find_map(|command| match command {
        OutputCommand::CopyText(text) => Some(text.clone()),
        _ => None,
    })
}

/// Copies what is picked: the frame of the key itself is the one that has the command.
pub(crate) fn copy(desk: &mut Desk, event: Event) -> String {
    desk.event(event);
    for _ in 0..4 {
        desk.step();
        if let Some(text) = copied(desk) {
            desk.run();
            return text;
        }
    }
    String::new()
}

pub(crate) const WALL: Thing = Thing::Wall { wall: 0 };
pub(crate) const SHADE: Thing = Thing::Shade { shade: 0 };
pub(crate) const WORDS: Thing = Thing::Label { label: 0 };
pub(crate) const DROP: Thing = Thing::Drop { run: 0 };
pub(crate) const PICTURE: Thing = Thing::Underlay;

/// The example, drawn on.
pub(crate) fn drawn_on() -> plan::Plan {
    plans::drawn_on(example())
}

/// A place of each of what is drawn on the ground.
pub(crate) fn drawn_at(plan: &plan::Plan) -> Vec<Point> {
    let wall = plan.walls.first().map(|wall| wall.path[1]);
    let shade = plan.ground.shade.first().map(|shade| shade.outline[2]);
    let words = plan.labels.first().map(|label| label.at);
    let picture = plan.underlay.as_ref().map(|underlay| underlay.corners()[1]);
    [wall, shade, words, plan.runs.first().and_then(|run| run.drop_at), picture].into_iter().flatten().collect()
}

pub(crate) const GATE: Thing = Thing::Gate { run: 0, gate: 0 };
pub(crate) const GRASS: Thing = Thing::Zone { run: 0, branch: None, zone: 0 };
pub(crate) const BRANCH: Thing = Thing::Branch { run: 0, branch: 0 };

/// The joins of the example's run that lie farthest south-west and north-east.
pub(crate) fn far_joins() -> [Point; 2] {
    let editor = editor();
    let joins = editor.workup().runs[0].lay.as_ref().unwrap().join_places().into_iter().map(|(_, at)| at);
    let off_m = |at: &Point| at.east_m + at.north_m;
    let least = joins.clone().min_by(|one, other| off_m(one).total_cmp(&off_m(other))).unwrap();
    let most = joins.max_by(|one, other| off_m(one).total_cmp(&off_m(other))).unwrap();
    [least, most]
}

/// The example with a gate, a stretch of grass and a branch.
pub(crate) fn with_sliding() -> plan::Plan {
    let mut plan = example();
    let run = &mut plan.runs[0];
    run.gates = vec![plan::Gate { at: Some(far_joins()[0]), ..plan::Gate::new(plan::GateKind::Foot) }];
    run.leakage_zones = vec![plan::LeakageZone { from_m: 4.0, to_m: 12.0, s_per_m: 1e-4, rest: plan::Rest::new() }];
    let first = run.outline[0];
    run.branches = vec![plan::Branch {
        from_m: 0.0,
        outline: vec![first, Point::new(first.east_m - 10.0, first.north_m - 10.0)],
        nets: Vec::new(),
        leakage_zones: Vec::new(),
        faults: Vec::new(),
        rest: plan::Rest::new(),
    }];
    plan
}

pub(crate) const HOLLOW: Thing = Thing::Damp { damp: 0 };
pub(crate) const UNIT: Thing = Thing::Energizer { run: 0 };

/// The example with a hollow, and an energizer that stands beside its run.
pub(crate) fn with_hollow() -> plan::Plan {
    let mut plan = example();
    let outline = [(2.0, 2.0), (11.0, 2.0), (11.0, 9.0)].map(Point::from).to_vec();
    plan.ground.damp = vec![plan::Damp { name: "Hollow".to_owned(), outline, ..plan::Damp::default() }];
    plan.runs[0].energizer_at = Some(Point::new(12.0, 12.0));
    plan
}
