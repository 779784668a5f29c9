//! Faults that are tried on the page about volts, on the map and on the line; joins, lead and gate; a curve kept.

use crate::hand;
use crate::hand::{Desk, click, click_on, deeds, drag, example, fill, says, spot, window};
use desktop::editor::{Message, Page};
use drawing::Thing;
use egui::Key;
use egui_kittest::kittest::Queryable;
use plan::{FaultKind, Plan, Point, Run, Today};
use words::Words;

/// A window on the page about volts that shows all of it.
fn open(plan: Plan) -> Desk {
    hand::on_page(plan, Page::Power, [1280.0, 3600.0], Words::default())
}

fn run(desk: &Desk) -> &Run {
    &window(desk).editor().plan().runs[0]
}

fn weakest_kv(desk: &Desk) -> f64 {
    window(desk).editor().run().unwrap().1.volts.as_ref().unwrap().weakest.unwrap().peak_kv
}

/// Amid the second side.
fn amid(desk: &Desk) -> Point {
    let outline = &run(desk).outline;
    let (one, other) = (outline[1], outline[2]);
    Point::new(f64::midpoint(one.east_m, other.east_m), f64::midpoint(one.north_m, other.north_m))
}

#[test]
fn a_branch_is_one_click_one_step_and_the_volts_sink_at_once_beside_the_sound_fence() {
    let mut desk = open(example());
    let (before, sound_kv) = (deeds(&desk), weakest_kv(&desk));
    click_on(&mut desk, "Branch");
    let at = amid(&desk);
    let place = spot(&desk, at);
    desk.event(egui::Event::PointerMoved(place + egui::vec2(6.0, 6.0)));
    desk.run();
    let shown = window(&desk).editor().snapped().unwrap();
    assert!(shown.reason.starts_with("Branch: 1.0 kΩ to the ground, "), "{}", shown.reason);
    assert!((shown.at.east_m - at.east_m).hypot(shown.at.north_m - at.north_m) < 2.0);
    click(&mut desk, place);
    let fault = run(&desk).faults[0].clone();
    assert_eq!((fault.kind, fault.ohm, deeds(&desk)), (FaultKind::Short, Some(1_000.0), before + 1));
    let editor = window(&desk).editor();
    assert_eq!(editor.picked(), Some(Thing::Fault { run: 0, branch: None, fault: 0 }));
    let sound = editor.sound().unwrap();
    assert_eq!(sound.posts_kv.len(), 45);
    assert!((sound.weakest.peak_kv - sound_kv).abs() < 1e-6, "the sound fence is the one before");
    assert!(weakest_kv(&desk) < sound_kv - 0.2);
    assert!(says(&desk, "Fallen branch ") && says(&desk, "past corner 2: 1.0 kΩ"));
    desk.state_mut().as_mut().unwrap().say(Message::Undo);
    desk.run();
    assert!(run(&desk).faults.is_empty());
    assert!((weakest_kv(&desk) - sound_kv).abs() < 1e-9);
}

#[test]
fn every_button_puts_what_it_says_and_the_list_takes_it_out() {
    let mut desk = open(example());
    let place = spot(&desk, amid(&desk));
    for (index, (label, kind, ohm, lines)) in [
        ("Peg", FaultKind::Short, Some(50.0), None),
        ("Cut line", FaultKind::LineBreak, None, Some(1)),
        ("Bad join", FaultKind::Join, Some(1_000.0), None),
        ("Dead net", FaultKind::Break, None, None),
    ]
    .into_iter()
    .enumerate()
    {
        click_on(&mut desk, label);
        click(&mut desk, place);
        let fault = &run(&desk).faults[index];
        assert_eq!((fault.kind, fault.ohm, fault.lines), (kind, ohm, lines), "{label}");
    }
    let lines = window(&desk).editor().plan().store.nets[0].live_line_heights_m().len();
    assert!(says(&desk, &format!("1 of {lines} lines")), "the net's own lines are counted");
    let count = deeds(&desk);
    click_on(&mut desk, "Take all away");
    assert_eq!((run(&desk).faults.len(), deeds(&desk)), (0, count + 1));
    click_on(&mut desk, "Long grass");
    click(&mut desk, place);
    let zone = run(&desk).leakage_zones[0].clone();
    assert!((zone.to_m - zone.from_m - 10.0).abs() < 1e-6 && (zone.s_per_m - 1e-4).abs() < 1e-12);
    assert!(says(&desk, "Long, wet grass: 10.0 m"));
    fill(&mut desk, "End of grass 1", "70");
    assert!((run(&desk).leakage_zones[0].to_m - 70.0).abs() < 1e-9);
    click_on(&mut desk, "Take out long, wet grass");
    assert!(run(&desk).leakage_zones.is_empty());
    click_on(&mut desk, "Dry earth");
    assert_eq!(window(&desk).editor().plan().ground.today, Some(Today::Dry));
    click_on(&mut desk, "Dry earth");
    assert_eq!(window(&desk).editor().plan().ground.today, None);
}

#[test]
fn a_bad_join_lands_on_a_join_and_the_plate_names_its_nets() {
    let mut desk = open(example());
    click_on(&mut desk, "Bad join");
    let place = spot(&desk, amid(&desk));
    click(&mut desk, place);
    let lay = window(&desk).editor().run().unwrap().1.lay.as_ref().unwrap();
    let at = run(&desk).faults[0].at;
    let near = |join: Point| (join.east_m - at.east_m).hypot(join.north_m - at.north_m) < 1e-6;
    assert!(lay.join_places().into_iter().any(|(_, join)| near(join)));
    let plate = window(&desk).editor().drawing().shapes().find_map(|shape| match &shape.form {
        drawing::Form::Label { texts, .. } if shape.thing == Some(Thing::Fault { run: 0, branch: None, fault: 0 }) => {
            Some(texts[0].clone())
        }
        _ => None,
    });
    let plate = plate.unwrap();
    assert!(plate.starts_with("What if: bad join, 1.0 kΩ, nets "), "{plate}");
    fill(&mut desk, "Resistance of fault 1", "2500");
    assert_eq!(run(&desk).faults[0].ohm, Some(2_500.0));
}

#[test]
fn a_fault_is_picked_dragged_along_the_net_and_deleted() {
    let mut desk = open(example());
    click_on(&mut desk, "Peg");
    let place = spot(&desk, amid(&desk));
    click(&mut desk, place);
    let (was, count) = (run(&desk).faults[0].at, deeds(&desk));
    let from = spot(&desk, was);
    let next = run(&desk).outline[2];
    let to = from + 0.5 * (spot(&desk, next) - from) + egui::vec2(5.0, -5.0);
    drag(&mut desk, from, to);
    let now = run(&desk).faults[0].at;
    assert!((now.east_m - was.east_m).hypot(now.north_m - was.north_m) > 1.0);
    let lay = window(&desk).editor().run().unwrap().1.lay.as_ref().unwrap();
    assert!(lay.nearest_m(now).unwrap().1 < 1e-6, "it stays on the net");
    assert_eq!(deeds(&desk), count + 1, "a drag is one step");
    // On the unfolded line too.
    let line = desk.get_by_label("The run unfolded").rect();
    let x = |desk: &Desk| {
        let lay = window(desk).editor().run().unwrap().1.lay.as_ref().unwrap();
        let along_m = lay.nearest_m(run(desk).faults[0].at).unwrap().0;
        line.left() + 40.0 + (line.width() - 80.0) * (along_m / lay.line_m) as f32
    };
    let from = egui::pos2(x(&desk), line.top() + 30.0);
    drag(&mut desk, from, from + egui::vec2(40.0, 0.0));
    assert!((x(&desk) - from.x - 40.0).abs() < 1.5, "{} from {}", x(&desk), from.x);
    desk.key_press(Key::Delete);
    desk.run();
    assert!(run(&desk).faults.is_empty());
}

#[test]
fn esc_leaves_and_bad_input_gets_one_sentence() {
    let mut desk = open(example());
    let count = deeds(&desk);
    click_on(&mut desk, "Branch");
    // Far off every net.
    let map = desk.get_by_label("Map").rect();
    click(&mut desk, map.left_top() + egui::vec2(6.0, 6.0));
    assert_eq!(deeds(&desk), count);
    assert_eq!(
        window(&desk).editor().notice().map(|text| Words::default().text(text)),
        Some("No net lies there: click on the net itself.")
    );
    desk.key_press(Key::Escape);
    desk.run();
    assert_eq!(*window(&desk).editor().tool(), desktop::tool::Tool::Pick);
    click_on(&mut desk, "Cut line");
    let place = spot(&desk, amid(&desk));
    click(&mut desk, place);
    fill(&mut desk, "Lines broken at fault 1", "40");
    assert_eq!(run(&desk).faults[0].lines, Some(1));
    assert!(says(&desk, " live lines; type 1 to "));
    desk.key_press(Key::Escape);
    desk.run();
    click_on(&mut desk, "Branch");
    let other = spot(&desk, run(&desk).outline[0])
        + 0.4 * (spot(&desk, run(&desk).outline[1]) - spot(&desk, run(&desk).outline[0]));
    click(&mut desk, other);
    for bad in ["0", "-5"] {
        fill(&mut desk, "Resistance of fault 2", bad);
        assert_eq!(run(&desk).faults[1].ohm, Some(1_000.0), "{bad}");
        desk.key_press(Key::Escape);
        desk.run();
    }
}

#[test]
fn joins_lead_and_gate_are_stated_and_both_readings_stand_side_by_side() {
    let mut desk = open(example());
    fill(&mut desk, "Each join", "40");
    assert_eq!(run(&desk).join_ohm, Some(40.0));
    let count = deeds(&desk);
    fill(&mut desk, "Length of the lead", "200");
    // 34.6 ohms a kilometre of steel.
    let lead_ohm = |desk: &Desk| workup::lead::lead(window(desk).editor().plan(), run(desk)).ohm;
    assert!((lead_ohm(&desk) - 6.93).abs() < 0.02, "{}", lead_ohm(&desk));
    assert_eq!((run(&desk).lead_m, run(&desk).lead_of), (Some(200.0), Some(plan::lead::Conductor::Steel)));
    assert_eq!(deeds(&desk), count + 1);
    click_on(&mut desk, "copper");
    assert!((lead_ohm(&desk) - 0.70).abs() < 0.02, "{}", lead_ohm(&desk));
    click_on(&mut desk, "only tied");
    assert_eq!(run(&desk).live_loop, Some(false));
    assert!(says(&desk, "A ring hides a single break"));
    hand::settle(&mut desk);
    let [clipped, tied] = window(&desk).editor().study().unwrap().0.gate_kv.unwrap();
    assert!(clipped > tied && (tied - weakest_kv(&desk)).abs() < 1e-6);
    assert!(says(&desk, &format!("Weakest post clipped round {clipped:.1} kV, only tied {tied:.1} kV.")));
}

#[test]
fn a_curve_is_kept_beside_what_comes_until_it_is_let_go() {
    let mut desk = open(example());
    let then_kv = weakest_kv(&desk);
    let count = deeds(&desk);
    click_on(&mut desk, "Keep this curve");
    assert_eq!(deeds(&desk), count, "nothing of the plan changes");
    fill(&mut desk, "Each join", "300");
    let curve = window(&desk).editor().curves().next().unwrap().clone();
    assert_eq!(curve.weakest_kv, Some(then_kv));
    let now_kv = weakest_kv(&desk);
    assert!(now_kv < then_kv);
    let told = format!("Kept 1: joins of 0 Ω. Weakest post then {then_kv:.1} kV, now {now_kv:.1} kV.");
    assert!(says(&desk, &told));
    // A ring closes: its curve goes on from its end to its start.
    let lay = window(&desk).editor().run().unwrap().1.lay.as_ref().unwrap();
    let (first, last) = (curve.along[0], curve.along[curve.along.len() - 1]);
    assert_eq!((first.0, last.0), (0.0, lay.line_m));
    assert!((first.1 - last.1).abs() < 1e-9);
    // The same post over time, then and now.
    hand::settle(&mut desk);
    let pulse = curve.pulse.as_ref().unwrap();
    let now = &window(&desk).editor().study().unwrap().0.pulse.as_ref().unwrap().posts_kv[20];
    let most = |kv: &[f64]| kv.iter().copied().fold(0.0, f64::max);
    assert!(most(&pulse.posts_kv[20]) > most(now));
    assert!(says(&desk, "Kept 1: joins of 0 Ω, at this post."));
    click_on(&mut desk, "Let kept 1 go");
    assert_eq!(window(&desk).editor().curves().count(), 0);
}

#[test]
fn three_set_ups_are_kept_at_a_time_each_named_by_what_was_different() {
    let mut desk = open(example());
    let say = |desk: &mut Desk, message: Message| {
        desk.state_mut().as_mut().unwrap().say(message);
        desk.run();
    };
    let set = |desk: &mut Desk, change: &dyn Fn(&mut plan::Run)| {
        let mut run = run(desk).clone();
        change(&mut run);
        say(desk, Message::Make(plan::Edit::SetRun { run: Box::new(run) }));
    };
    click_on(&mut desk, "Keep this curve");
    assert!(says(&desk, "Kept 1: as now."));
    set(&mut desk, &|run| run.earth_stakes.count = Some(5));
    let soil = plan::Soil { resistivity_ohm_m: Some(1_000.0), ..window(&desk).editor().plan().ground.soil.clone() };
    say(&mut desk, Message::Make(plan::Edit::SetSoil { soil }));
    click_on(&mut desk, "Keep this curve");
    set(&mut desk, &|run| run.leakage_s_per_m = Some(1e-4));
    click_on(&mut desk, "Keep this curve");
    assert!(desk.query_by_label("Keep this curve").is_none(), "three at most");
    say(&mut desk, Message::KeepCurve);
    let names = |desk: &Desk| -> Vec<String> {
        let editor = window(desk).editor();
        editor.curves().enumerate().map(|(number, curve)| editor.curve_name(number, curve)).collect()
    };
    let kept = names(&desk);
    assert_eq!(kept.len(), 3);
    assert!(kept[0].starts_with("kept 1: ") && kept[0].contains("grass") && kept[0].contains("soil of "), "{kept:?}");
    assert!(kept[0].ends_with(" …"), "{kept:?}");
    assert!(kept[1].contains("grass") && !kept[1].contains("soil") && !kept[1].contains("stake"), "{kept:?}");
    assert_eq!(kept[2], "kept 3: as now");
    // The second goes: the third moves up. Another plan lets all of them go.
    click_on(&mut desk, "Let kept 2 go");
    assert_eq!(names(&desk)[1], "kept 2: as now");
    say(&mut desk, Message::Undo);
    assert!(names(&desk)[1].starts_with("kept 2: ") && names(&desk)[1].contains("grass"));
}

#[test]
fn the_sound_fence_stands_in_the_same_grass() {
    let mut plan = example();
    let zone = plan::LeakageZone { from_m: 5.0, to_m: 40.0, s_per_m: 1e-4, rest: plan::Rest::new() };
    plan.runs[0].leakage_zones = vec![zone];
    let mut desk = open(plan);
    assert!(window(&desk).editor().sound().is_none(), "grass is no fault");
    let in_grass_kv = weakest_kv(&desk);
    click_on(&mut desk, "Branch");
    let place = spot(&desk, amid(&desk));
    click(&mut desk, place);
    let least_kv = window(&desk).editor().sound().unwrap().weakest.peak_kv;
    assert!((least_kv - in_grass_kv).abs() < 1e-6, "{least_kv} against {in_grass_kv}");
    assert!(weakest_kv(&desk) < in_grass_kv - 0.1);
}

#[test]
fn what_moves_the_volts_unnamed_is_something_else_and_what_was_kept_goes_with_its_run() {
    let mut desk = open(example());
    let say = |desk: &mut Desk, message: Message| {
        desk.state_mut().as_mut().unwrap().say(message);
        desk.run();
    };
    let name = |desk: &Desk| {
        let editor = window(desk).editor();
        editor.curves().next().map(|curve| editor.curve_name(0, curve))
    };
    say(&mut desk, Message::KeepCurve);
    // What moves no volts is no difference.
    let keep_outs = Vec::new();
    say(&mut desk, Message::Make(plan::Edit::SetKeepOuts { keep_outs }));
    assert_eq!(name(&desk).as_deref(), Some("kept 1: as now"));
    let store = window(&desk).editor().plan().store.clone();
    let mut longer = store.clone();
    longer.earth_stake.length_m = Some(2.0);
    let mut other = store.clone();
    other.energizers[0].no_load_kv = Some(other.energizers[0].no_load_kv() * 0.8);
    for store in [longer, other] {
        say(&mut desk, Message::Make(plan::Edit::SetStore { store: Box::new(store) }));
        assert_eq!(name(&desk).as_deref(), Some("kept 1: something else"));
        say(&mut desk, Message::Undo);
        assert_eq!(name(&desk).as_deref(), Some("kept 1: as now"));
    }
    let mut moved = run(&desk).clone();
    moved.start_m = Some(3.3);
    say(&mut desk, Message::Make(plan::Edit::SetRun { run: Box::new(moved) }));
    assert_eq!(name(&desk).as_deref(), Some("kept 1: something else"));
    say(&mut desk, Message::Undo);
    // It comes back with its run, as often as that is taken out.
    let own = run(&desk).clone();
    let index = window(&desk).editor().run_index();
    say(&mut desk, Message::Make(plan::Edit::RemoveRun { id: own.id.clone() }));
    assert_eq!(window(&desk).editor().curves().count(), 0);
    for said in [Message::Undo, Message::Redo, Message::Undo] {
        let is_there = matches!(said, Message::Undo);
        say(&mut desk, said);
        assert_eq!(name(&desk).is_some(), is_there);
    }
    assert_eq!(name(&desk).as_deref(), Some("kept 1: as now"));
    // Another run that is given the id of one that is gone was never kept.
    say(&mut desk, Message::Make(plan::Edit::RemoveRun { id: own.id.clone() }));
    say(&mut desk, Message::Make(plan::Edit::AddRun { index, run: Box::new(own) }));
    assert_eq!(name(&desk), None);
}

#[test]
fn a_fault_that_is_tried_is_said_wherever_its_volts_are_shown() {
    let mut desk = open(example());
    let sound_kv = weakest_kv(&desk);
    assert!(says(&desk, "It then stands in the plan: figures, findings and sheet count it"));
    click_on(&mut desk, "Peg");
    let at = spot(&desk, amid(&desk));
    click(&mut desk, at);
    hand::settle(&mut desk);
    let (words, editor) = (Words::default(), window(&desk).editor());
    let (run, worked) = editor.run().unwrap();
    let (lay, volts) = (worked.lay.as_ref().unwrap(), worked.volts.as_ref().unwrap());
    let which = care::volts_said::tried_and_which(run, lay, words).unwrap();
    assert!(which.starts_with("with 1 fault (peg ") && which.contains("past corner 2"), "{which}");
    assert!((volts.sound.as_ref().unwrap().weakest.peak_kv - sound_kv).abs() < 1e-9);
    let (now, then) = (volts.weakest.unwrap(), volts.sound.as_ref().unwrap().weakest);
    assert!(now.post != then.post && volts.weakest_elsewhere() == Some(then), "{} and {}", now.post, then.post);
    let here_kv = words.kilovolts(volts.weakest_sound_kv().unwrap());
    let weakest = care::volts_said::weakest(&volts.weakest.unwrap(), words);
    assert!(weakest.starts_with(&format!("about {}, ", words.kilovolts(volts.weakest.unwrap().peak_kv))), "{weakest}");
    for said in [
        format!("Weakest {weakest}, with 1 fault, not measured yet"),
        format!(
            "The figures, the findings and the sheet are {which}. Without faults post {}, the weakest now, would hold \
             about {here_kv}. The weakest would then be post {}, at about {}.",
            now.post + 1,
            then.post + 1,
            words.kilovolts(sound_kv)
        ),
    ] {
        assert!(says(&desk, &said), "{said}");
    }
    let findings: Vec<&str> = editor.findings().runs[0].iter().map(|finding| finding.message.as_str()).collect();
    for (id, part) in
        [("holds only about", format!(" and {which}: that counts")), ("not measured yet", format!(", {which}, not"))]
    {
        assert!(findings.iter().any(|text| text.contains(id) && text.contains(&part)), "{id}: {findings:?}");
    }
    let page = exchange::page::text(editor.plan(), editor.workup(), editor.findings(), words);
    assert!(page.contains(&format!("Counted {which}.")), "{page}");
}

#[test]
fn grass_that_is_stated_changes_the_figure_of_the_weakest_post_everywhere() {
    let mut plan = example();
    plan.runs[0].leakage_s_per_m = Some(5e-5);
    let desk = open(plan);
    let likely = weakest_kv(&desk);
    assert!(says(&desk, &format!("Weakest about {}", Words::default().kilovolts(likely))));
}
