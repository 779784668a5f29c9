//! Labels that lie far off are passed over, and no label that could be seen is.

use plan::{Coop, KeepOut, Label as Written, NetKind, Plan, Point, Rest, Run, SpotHeight, Wall};
use words::Words;

use super::super::Inker;
use crate::map::Scene;
use crate::palette::Theme;
use crate::shape::{About, Drawing, Thing};
use crate::view::View;

/// A farm with one of everything that is called something, all within 40 m of the origin.
fn farm() -> Plan {
    let outline = |half_m: f64| {
        [(-half_m, -half_m), (half_m, -half_m), (half_m, half_m), (-half_m, half_m)].map(Point::from).to_vec()
    };
    let run =
        Run { id: "run-1".to_owned(), name: "The long way round".to_owned(), outline: outline(15.0), ..Run::default() };
    let mut plan =
        Plan { runs: vec![run], coop: Some(Coop::new("house".to_owned(), Point::new(0.0, 0.0))), ..Plan::default() };
    plan.store.nets.push(NetKind { count: Some(3), ..NetKind::new("long", 40.0, 12) });
    plan.ground.keep_outs = vec![KeepOut {
        name: "Old orchard".to_owned(),
        outline: outline(20.0),
        clearance_m: Some(2.0),
        may_enclose: None,
        water: false,
        hidden: false,
        locked: false,
        rest: Rest::new(),
    }];
    let path = vec![Point::new(-5.0, 25.0), Point::new(5.0, 25.0)];
    plan.walls = vec![Wall { name: "Churchyard wall".to_owned(), path, ..Wall::default() }];
    plan.labels = vec![Written { text: "water trough".to_owned(), at: Point::new(0.0, 30.0), ..Written::default() }];
    plan.heights = vec![SpotHeight { at: Point::new(0.0, -30.0), up_m: 101.5, rest: Rest::new() }];
    plan
}

fn drawn(plan: &Plan) -> Drawing {
    let (workup, words) = (workup::workup(plan, workup::Depth::Quick), Words::default());
    let findings = care::findings(plan, &workup, words);
    crate::map::map(&Scene { plan, workup: &workup, findings: &findings, words })
}

/// Views about places so far east of the origin that the labels leave the sheet one after the other.
fn views() -> impl Iterator<Item = View> {
    let size = [400.0, 300.0];
    let look =
        move |middle: Point, px_per_m: f64| View { middle, px_per_m, ..View::fit(None, size, 0.0, Theme::Light) };
    [0.5, 4.0, 12.0].into_iter().flat_map(move |px_per_m| {
        let steps = (0..60).map(move |step| f64::from(step) * 12.0 / px_per_m);
        steps
            .flat_map(move |far_m| [Point::new(far_m, 0.0), Point::new(-far_m, 0.0), Point::new(0.0, far_m)])
            .map(move |middle| look(middle, px_per_m))
    })
}

#[test]
fn what_lies_off_has_no_layout_that_could_be_seen() {
    let drawing = drawn(&farm());
    let (mut off, mut seen) = (0, 0);
    for view in views() {
        let inker = Inker::new(&drawing, &view);
        for label in drawing.shapes().filter_map(|shape| inker.label(shape)) {
            let fits = inker.layouts(&label).iter().any(|layout| inker.has_room(layout, &[]));
            let lies_off = inker.lies_off(&label);
            assert!(!(fits && lies_off), "{:?} about {:?} at {:?} in {view:?}", label.texts, label.about, label.at);
            off += usize::from(lies_off);
            seen += usize::from(fits);
        }
    }
    // Of both there are plenty, or nothing was asked.
    assert!(off > 500 && seen > 500, "{off} lie off, {seen} fit");
}

#[test]
fn every_label_a_kilometre_off_is_passed_over_but_those_that_look_for_their_line() {
    let drawing = drawn(&farm());
    let far =
        View { middle: Point::new(1_000.0, 0.0), px_per_m: 20.0, ..View::fit(None, [400.0, 300.0], 0.0, Theme::Light) };
    let inker = Inker::new(&drawing, &far);
    let labels: Vec<_> = drawing.shapes().filter_map(|shape| inker.label(shape)).collect();
    let of = |thing: Thing| labels.iter().filter(move |label| label.thing == Some(thing));
    for thing in [
        Thing::Run { run: 0 },
        Thing::KeepOut { keep_out: 0 },
        Thing::Wall { wall: 0 },
        Thing::Label { label: 0 },
        Thing::Height { height: 0 },
    ] {
        let mut told = of(thing).filter(|label| !matches!(label.about, About::Side { .. })).peekable();
        assert!(told.peek().is_some(), "{thing:?} is called something");
        assert!(told.all(|label| inker.lies_off(label)), "{thing:?}");
    }
    let sides: Vec<_> = labels.iter().filter(|label| matches!(label.about, About::Side { .. })).collect();
    assert!(!sides.is_empty() && sides.iter().all(|label| !inker.lies_off(label)));
}
