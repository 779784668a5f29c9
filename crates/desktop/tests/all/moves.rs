//! The page about where the flock goes next, driven by what its parts are called.

use crate::hand;
use crate::hand::example;
use desktop::editor::{Message, Page};
use drawing::Thing;
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use moves::{Motion, over_side};
use plan::{Plan, RunStatus};
use words::Words;
use workup::Depth;

type Opened = hand::Desk;

fn open(plan: Plan, size: [f32; 2]) -> Opened {
    hand::on_page(plan, Page::Moves, size, Words::default())
}

fn now(harness: &Opened) -> Plan {
    harness.state().as_ref().unwrap().editor().plan().clone()
}

fn click(harness: &mut Opened, label: &str) {
    harness.get_by_label(label).click();
    harness.run();
}

#[test]
fn the_sides_are_listed_with_what_stays_on_the_one_that_is_chosen() {
    let mut harness = open(example(), [1280.0, 1100.0]);
    let plan = example();
    let worked = workup::workup(&plan, Depth::Quick);
    let lay = worked.runs[0].lay.as_ref().unwrap();
    let next = over_side(&plan, &plan.runs[0], Some(lay), 1, Motion::TurnOver).unwrap();
    let stays = next.stays.unwrap();
    let row = format!("Side 2–3, {}, {} panels: Danger", Words::default().length(next.shared_m), stays.panels);
    click(&mut harness, &row);
    let picked = harness.state().as_ref().unwrap().editor().picked();
    assert_eq!(picked, Some(Thing::RunSide { run: 0, side: 1 }));
    harness.get_by_label("Turned over side 2–3");
    let (metres, unit) = Words::default().length_parts(stays.netting_m);
    harness.get_by_label(&format!("{metres} {unit} netting stays"));
    harness.get_by_label(&format!("{}  posts stay", stays.posts.len()));
    harness.get_by_label(&format!("{}  posts to move", lay.posts.len() - stays.posts.len()));
    // Of the mirrored run: 2-3 faces the pond and the power line.
    harness.get_by_label("Keep-outs: it does not keep off them");
    harness.get_by_label("The coop: has to be towed there");
    assert!(harness.query_all_by_label_contains("Danger: ").count() > 0);
    assert_eq!(now(&harness), plan, "looking changes nothing");
}

#[test]
fn what_is_kept_is_one_run_more_and_one_step() {
    let mut harness = open(example(), [1280.0, 1100.0]);
    let plan = example();
    click(&mut harness, "Shift over");
    harness.get_by_label_contains("Shifted over side");
    click(&mut harness, "Turn over");
    click(&mut harness, "Keep it as the next run");
    let kept = now(&harness);
    assert_eq!(kept.runs.len(), 2);
    assert_eq!(kept.runs[0], plan.runs[0]);
    let next = &kept.runs[1];
    assert_eq!((next.id.as_str(), next.name.as_str(), next.status), ("run-2", "Run 2", RunStatus::Option));
    assert_eq!(
        (&next.coop, &next.energizer, &next.nets),
        (&plan.runs[0].coop, &plan.runs[0].energizer, &plan.runs[0].nets)
    );
    assert!(next.feed_at.is_some() && next.feed_at != plan.runs[0].feed_at);
    harness.get_by_label("This ground is Run 2 of the plan already.");
    assert!(harness.query_by_label("Keep it as the next run").is_none());

    click(&mut harness, "Take Run 2 in hand");
    assert_eq!(harness.state().as_ref().unwrap().editor().run_index(), 1);
    assert_eq!(harness.state().as_ref().unwrap().editor().page(), Page::Moves);
    harness.get_by_label_contains("Where next");

    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(now(&harness), plan, "one step takes it back");
}

#[test]
fn a_run_that_is_kept_is_never_called_what_another_is() {
    let mut plan = example();
    plan.runs[0].name = "Run 2".to_owned();
    let mut harness = open(plan, [1280.0, 1100.0]);
    click(&mut harness, "Keep it as the next run");
    assert_eq!(now(&harness).runs[1].name, "Run 3");
}

#[test]
fn pushed_over_a_slanting_side_nothing_stays_and_the_page_says_so() {
    let mut harness = open(example(), [1280.0, 1100.0]);
    click(&mut harness, "Shift over");
    harness.get_by_label_contains("Nothing stays standing");
}

#[test]
fn the_ghost_is_there_only_while_the_page_is_open() {
    // Ghosts are the only thing of that colour here: ask the shapes that are painted.
    let mut harness = open(example(), [1280.0, 800.0]);
    harness.run();
    let fill = drawing::Theme::Light.palette().ghost_fill;
    let painted = |harness: &Opened| {
        let clipped = &harness.output().shapes;
        let of_fill = |colour: egui::Color32| {
            let near = |(one, other): (u8, u8)| one.abs_diff(other) < 4;
            colour.a() == fill[3] && colour.to_srgba_unmultiplied().into_iter().zip(fill).all(near)
        };
        clipped.iter().any(|one| match &one.shape {
            egui::Shape::Mesh(mesh) => mesh.vertices.iter().any(|vertex| of_fill(vertex.color)),
            egui::Shape::Path(path) => of_fill(path.fill),
            _ => false,
        })
    };
    assert!(painted(&harness));
    harness.state_mut().as_mut().unwrap().say(Message::Open(Page::Run));
    harness.run();
    assert!(!painted(&harness));
}

#[test]
fn without_a_run_the_page_says_what_to_do() {
    let mut harness = open(Plan::default(), [900.0, 600.0]);
    harness.get_by_label_contains("lay one out first");
    click(&mut harness, "Lay out a run");
    assert_eq!(harness.state().as_ref().unwrap().editor().page(), Page::Run);
}

#[test]
fn an_outline_that_crosses_itself_is_refused_in_words() {
    let mut plan = example();
    plan.runs[0].outline.swap(1, 2);
    let harness = open(plan, [900.0, 600.0]);
    harness.get_by_label_contains("encloses no ground that could be moved");
}

#[test]
fn the_map_goes_to_what_is_kept_out_of_its_sight_and_stays_where_it_is_in_sight() {
    let mut harness = open(example(), [1280.0, 1100.0]);
    let seen = |harness: &Opened| {
        let editor = harness.state().as_ref().unwrap().editor();
        let [width, height] = editor.view().size;
        let within = |at: &plan::Point| {
            let [right, down] = editor.view().spot(*at);
            (0.0..=width).contains(&right) && (0.0..=height).contains(&down)
        };
        editor.plan().runs.iter().flat_map(|run| &run.outline).all(within)
    };
    let say = |harness: &mut Opened, message: Message| {
        harness.state_mut().as_mut().unwrap().say(message);
        harness.run();
    };
    // So near that only the run in hand is in sight.
    let middle = harness.state().as_ref().unwrap().editor().view().size.map(|side| side / 2.0);
    say(&mut harness, Message::Zoom(1.25, middle));
    click(&mut harness, "Keep it as the next run");
    assert_eq!(now(&harness).runs.len(), 2);
    assert!(seen(&harness), "the map goes there");
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(now(&harness).runs.len(), 1, "and that is no step of its own");
    // Far off all is in sight, and nothing moves.
    say(&mut harness, Message::Zoom(0.4, middle));
    let view = *harness.state().as_ref().unwrap().editor().view();
    click(&mut harness, "Keep it as the next run");
    let after = *harness.state().as_ref().unwrap().editor().view();
    assert_eq!((view.middle, view.px_per_m), (after.middle, after.px_per_m));
}

#[test]
fn fresh_ground_leaves_out_every_run_that_stands_or_stood_and_says_so() {
    let sentences = [
        (words::Language::English, "Fresh ground", "Fresh is what lies in no run that stands or has stood"),
        (
            words::Language::German,
            "Frische Fläche",
            "Frisch ist, was in keinem Auslauf liegt, der steht oder gestanden hat",
        ),
    ];
    for (language, label, sentence) in sentences {
        let words = Words { language, ..Words::default() };
        let plan = example();
        let worked = workup::workup(&plan, Depth::Quick);
        let next = over_side(&plan, &plan.runs[0], worked.runs[0].lay.as_ref(), 3, Motion::TurnOver).unwrap();
        let fresh = |plan: Plan| {
            let mut desk = hand::on_page(plan, Page::Moves, [1280.0, 1100.0], words);
            desk.state_mut().as_mut().unwrap().say(Message::Pick(Some(Thing::RunSide { run: 0, side: 3 })));
            hand::settle(&mut desk);
            assert!(hand::says(&desk, sentence));
            move |area_m2: f64| hand::says(&desk, &format!("{label}: {}", words.area(area_m2)))
        };
        let area_m2 = worked.runs[0].area_m2.unwrap();
        assert!(fresh(plan.clone())(area_m2 - next.grazed_m2), "nothing else stands");
        // All of the next run's ground stood once: it is still named, as an option it would be fresh.
        for (status, left_m2) in [(RunStatus::Past, 0.0), (RunStatus::Standing, 0.0), (RunStatus::Option, area_m2)] {
            let mut plan = plan.clone();
            plan.runs.push(plan::Run { id: "rests".to_owned(), status, nets: None, ..next.run.clone() });
            assert!(fresh(plan)(left_m2), "{status:?}");
        }
    }
}

#[test]
fn a_coop_that_is_not_towed_is_told_of_where_the_next_net_would_run_through_it() {
    let mut plan = example();
    let next = over_side(&plan, &plan.runs[0], None, 1, Motion::TurnOver).unwrap().run;
    let [from, to] = [next.outline[3], next.outline[4]];
    let amid = plan::Point::new(from.east_m.midpoint(to.east_m), from.north_m.midpoint(to.north_m));
    let told = |plan: Plan| {
        let mut harness = open(plan, [1280.0, 3000.0]);
        let side = Thing::RunSide { run: 0, side: 1 };
        harness.state_mut().as_mut().unwrap().say(Message::Pick(Some(side)));
        hand::settle(&mut harness);
        harness.query_all_by_label_contains("stands in the net of").count() > 0
    };
    assert!(!told(plan.clone()));
    // Its own coop is towed out of the way.
    let own = plan.coop.as_mut().unwrap();
    let stood = std::mem::replace(&mut own.at, amid);
    assert!(!told(plan.clone()));
    plan.coop.as_mut().unwrap().at = stood;
    plan.other_coops.push(plan::Coop::new("coop-2", amid));
    assert!(told(plan));
}
