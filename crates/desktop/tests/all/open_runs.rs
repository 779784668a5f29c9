//! A run that is open says so wherever its ground would be told: by how much, and what closes it.

use crate::hand::{Desk, example, on_page, says, window};
use desktop::editor::{ManyMessage, Message, Page};
use egui::accesskit::Role;
use egui_kittest::kittest::{NodeT, Queryable};
use plan::{Plan, Point, Run, Wall};
use words::{Language, Units, Words};

/// 120 m of line round 900 m² and 100 m of netting, beside the example's own run.
fn short() -> Plan {
    let mut plan = example();
    let net = plan.store.nets[0].id.clone();
    let outline = [(5.0, 5.0), (35.0, 5.0), (35.0, 35.0), (5.0, 35.0)].map(Point::from).to_vec();
    plan.runs[0].outline = outline;
    plan.runs[0].nets = Some(vec![net; 2]);
    let second = Run { id: "other".to_owned(), name: "Other".to_owned(), ..example().runs[0].clone() };
    plan.runs.push(second);
    plan
}

/// 100 m of netting from one end of a wall to the other.
fn walled(holds_birds: Option<bool>) -> Plan {
    let mut plan = example();
    let net = plan.store.nets[0].id.clone();
    let run = &mut plan.runs[0];
    run.outline = [(10.0, 10.0), (10.0, 50.0), (30.0, 50.0), (30.0, 10.0)].map(Point::from).to_vec();
    (run.closed, run.nets, run.coop) = (Some(false), Some(vec![net; 2]), None);
    let path = [(8.0, 10.0), (32.0, 10.0)].map(Point::from).to_vec();
    plan.walls = vec![Wall { path, holds_birds, ..Wall::default() }];
    plan
}

/// The figure at the foot whose label begins so.
fn figure(desk: &Desk, label: &str) -> String {
    let mut all = desk.query_all_by_role(Role::Button).filter_map(|node| node.accesskit_node().label());
    all.find(|said| said.starts_with(label)).unwrap_or_else(|| panic!("no figure {label}"))
}

#[test]
fn the_page_the_foot_and_the_lists_say_the_same() {
    let english = [
        "Open: 20.0 m of 120.0 m of line are without netting. A further roll closes it, or a wall",
        "Line 120.0 m, open",
        "Short 20.0 m",
        "20.0 m open",
    ];
    let german = [
        "Offen: 20,0 m von 120,0 m Linie ohne Netz. Eine weitere Rolle schließt ihn, oder",
        "Linie 120,0 m, offen",
        "Fehlt 20,0 m",
        "20,0 m offen",
    ];
    for (language, [sentence, line, missing, open]) in [(Language::English, english), (Language::German, german)] {
        let words = Words { language, units: Units::Metric };
        let mut desk = on_page(short(), Page::Run, [1280.0, 1400.0], words);
        assert!(says(&desk, sentence), "{sentence}");
        assert!(!says(&desk, "900 m²"), "no ground of what is open");
        let labels = [line, missing].map(|said| said.split_once(' ').unwrap().0);
        assert_eq!(labels.map(|label| figure(&desk, label)), [line, missing]);
        desk.state_mut().as_mut().unwrap().say(Message::Many(ManyMessage::List(true)));
        desk.run();
        assert!(says(&desk, open), "the list: {open}");
        assert!(!says(&desk, "900 m²"));
    }
}

#[test]
fn a_wall_closes_it_once_it_is_stated_to_hold_birds() {
    for (language, holds_birds, wants) in [
        (
            Language::English,
            None,
            [
                "Open: 100.0 m of line, 20.0 m without netting from end to end. The wall from end to end",
                "Line 100.0 m, 20.0 m open",
            ],
        ),
        (
            Language::German,
            None,
            ["Offen: 100,0 m Linie, von Ende zu Ende 20,0 m ohne Netz. Die Mauer von", "Linie 100,0 m, 20,0 m offen"],
        ),
        (Language::English, Some(true), ["800 m². Shut by 100.0 m of line and 20.0 m along the wall.", "Line 100.0 m"]),
        (Language::German, Some(true), ["800 m². Geschlossen durch 100,0 m Linie und 20,0 m entlang", "Linie 100,0 m"]),
    ] {
        let words = Words { language, units: Units::Metric };
        let desk = on_page(walled(holds_birds), Page::Run, [1280.0, 1000.0], words);
        assert!(says(&desk, wants[0]), "{wants:?}");
        let label = wants[1].split_once(' ').unwrap().0;
        assert_eq!(figure(&desk, label), wants[1]);
        let open = window(&desk).editor().run().unwrap().1.ground_m2().is_none();
        assert_eq!(open, holds_birds.is_none());
    }
}

#[test]
fn a_run_that_ends_on_a_net_that_stands_follows_that_net_while_it_is_dragged() {
    let mut plan = walled(None);
    plan.walls.clear();
    let net = plan.store.nets[0].id.clone();
    let outline = [(0.0, 10.0), (40.0, 10.0), (40.0, -15.0), (0.0, -15.0)].map(Point::from).to_vec();
    let status = plan::RunStatus::Standing;
    let nets = Some(vec![net; 3]);
    plan.runs.push(Run { id: "other".to_owned(), outline, nets, status, ..Run::default() });
    let mut desk = on_page(plan.clone(), Page::Run, [1280.0, 900.0], Words::default());
    let shut = |desk: &Desk| window(desk).editor().workup().runs[0].ground_m2().is_some();
    assert!(shut(&desk));
    let mut other = plan.runs[1].clone();
    other.outline.iter_mut().for_each(|corner| corner.north_m -= 5.0);
    desk.state_mut().as_mut().unwrap().say(Message::Make(plan::Edit::SetRun { run: Box::new(other) }));
    assert!(!shut(&desk), "in the very frame");
    desk.run();
    assert!(says(&desk, "Open: 100.0 m of line, 20.0 m without netting from end to end."));
}
