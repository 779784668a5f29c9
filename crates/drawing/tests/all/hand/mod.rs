//! A plan and its workup made by hand, so that drawings are tested without the rooms that work plans out.
//!
//! The figures are plausible, not right: nets fall on the line from a stated start, volts fall off evenly with
//! the distance from the feed. Nothing here is compared with a figure of the real rooms.

use std::collections::BTreeMap;

use care::{Finding, Findings, Severity};
use plan::{Coop, EarthStakes, Hazard, HazardKind, KeepOut, Plan, Point, Rest, Run};
use workup::bracing::Kit;
use workup::{Corner, LaidNet, Lay, Post, RunWorkup, Sample, SampleOf, Stake, Strip, Verdict, Volts, Weakest, Workup};

/// Everything that a scene needs.
pub(crate) struct Hand {
    pub(crate) plan: Plan,
    pub(crate) workup: Workup,
    pub(crate) findings: Findings,
}

impl Hand {
    pub(crate) fn scene(&self) -> drawing::Scene<'_> {
        drawing::Scene {
            plan: &self.plan,
            workup: &self.workup,
            findings: &self.findings,
            words: words::Words::default(),
        }
    }

    /// The post that the wind takes first.
    pub(crate) fn goes_over(&self) -> workup::bracing::GoesOver {
        let lay = self.workup.runs[0].lay.as_ref().unwrap();
        let post = lay.posts.len() / 3;
        workup::bracing::GoesOver {
            limit_m_per_s: 9.0,
            posts: vec![post],
            alike: 1,
            first_post: post,
            at: lay.posts[post].at,
            stretch_m: 20.0,
            over: None,
            free: 8,
        }
    }
}

pub(crate) fn points(places: &[(f64, f64)]) -> Vec<Point> {
    places.iter().copied().map(Point::from).collect()
}

/// How a run is laid by hand.
pub(crate) struct Laying {
    pub(crate) outline: Vec<Point>,
    pub(crate) closed: bool,
    pub(crate) nets: usize,
    pub(crate) panels: u32,
    pub(crate) length_m: f64,
    pub(crate) start_m: f64,
    pub(crate) reversed: bool,
    pub(crate) feed_m: f64,
    pub(crate) feed_kv: f64,
    pub(crate) far_kv: f64,
    pub(crate) strip_m: f64,
}

/// A run beside or over that of the [`field`], of three nets of 12 panels.
pub(crate) fn further(outline: &[(f64, f64)]) -> Laying {
    Laying {
        outline: points(outline),
        closed: true,
        nets: 3,
        panels: 12,
        length_m: 40.0,
        start_m: 0.0,
        reversed: false,
        feed_m: 110.0,
        feed_kv: 5.0,
        far_kv: 4.0,
        strip_m: 1.2,
    }
}

/// A five-corner run with three nets of 14 panels in a paddock with a pond, a path and an overhead line.
pub(crate) fn field() -> Hand {
    let laying = Laying {
        outline: points(&[(23.96, 17.42), (59.62, 15.5), (68.91, 38.71), (60.18, 59.83), (30.34, 52.56)]),
        closed: true,
        nets: 3,
        panels: 14,
        length_m: 50.0,
        start_m: 0.0,
        reversed: false,
        feed_m: 143.0,
        feed_kv: 5.4,
        far_kv: 4.2,
        strip_m: 2.0,
    };
    let mut plan = Plan { title: "Kettle Field".into(), target_kv: Some(4.0), ..Plan::default() };
    plan.ground.boundary =
        points(&[(2.0, 4.0), (78.0, 6.5), (126.0, 2.0), (142.0, 46.0), (122.0, 82.0), (70.0, 76.0), (8.0, 68.0)]);
    plan.ground.keep_outs = vec![
        keep_out(
            "Pond",
            &[
                (100.5, 44.0),
                (100.9, 48.9),
                (98.8, 53.2),
                (94.5, 56.4),
                (90.0, 58.0),
                (86.5, 57.4),
                (83.9, 54.6),
                (81.5, 49.9),
                (79.5, 44.0),
                (79.1, 38.1),
                (81.2, 33.4),
                (85.5, 30.6),
                (90.0, 30.0),
                (93.5, 31.6),
                (96.1, 34.8),
                (98.5, 39.1),
            ],
            2.0,
            true,
        ),
        keep_out("Old well", &[(121.0, 34.0), (124.0, 34.0), (124.0, 37.0), (121.0, 37.0)], 3.0, false),
    ];
    plan.ground.hazards = vec![
        hazard(HazardKind::OverheadLine, "11 kV line", &[(112.0, 96.0), (104.0, -10.0)]),
        hazard(HazardKind::PublicWay, "Footpath", &[(-10.0, -1.5), (60.0, -0.5), (150.0, -4.0)]),
        hazard(HazardKind::OtherEnergisedFence, "", &[(4.0, 60.0), (18.0, 74.0), (40.0, 80.0)]),
        hazard(HazardKind::ForeignEarth, "", &[(8.0, 34.0)]),
    ];
    plan.coop = Some(coop("quince", Point::new(44.0, 35.0), 66.0, 90));
    let mut hand = Hand { plan, workup: Workup::default(), findings: Findings::default() };
    lay(&mut hand, "Round Quince House", Some("quince"), &laying);
    hand.plan.runs[0].earth_stakes = EarthStakes {
        count: Some(2),
        spacing_m: Some(3.0),
        at: Some(Point::new(16.0, 22.0)),
        ..EarthStakes::default()
    };
    hand.findings.runs = vec![vec![
        finding(Severity::Warning, vec![Point::new(60.18, 59.83)]),
        finding(Severity::Note, vec![Point::new(23.96, 17.42)]),
        finding(Severity::Danger, vec![Point::new(66.0, 31.4)]),
    ]];
    hand
}

/// Two nets of 13 panels round a coop on bare ground, as a first plan has them.
pub(crate) fn bare() -> Hand {
    let plan = Plan { coop: Some(coop("coop", Point::new(13.46, 11.55), 90.0, 100)), ..Plan::default() };
    let mut hand = Hand { plan, workup: Workup::default(), findings: Findings::default() };
    let panel_m = 50.0 / 13.0;
    let laying = Laying {
        outline: points(&[(0.0, 0.0), (7.0 * panel_m, 0.0), (7.0 * panel_m, 6.0 * panel_m), (0.0, 6.0 * panel_m)]),
        closed: true,
        nets: 2,
        panels: 13,
        length_m: 50.0,
        start_m: 0.0,
        reversed: false,
        feed_m: 24.0 * panel_m,
        feed_kv: 4.6,
        far_kv: 4.4,
        strip_m: 1.2,
    };
    lay(&mut hand, "Your first run", Some("coop"), &laying);
    hand
}

/// Fifty runs of three nets each in rows, a large farm's worth.
pub(crate) fn farm(runs: usize) -> Hand {
    let mut plan = Plan::default();
    plan.ground.boundary = points(&[(-20.0, -20.0), (600.0, -20.0), (600.0, 340.0), (-20.0, 340.0)]);
    let mut hand = Hand { plan, workup: Workup::default(), findings: Findings::default() };
    for index in 0..runs {
        let (east, north) = ((index % 10) as f64 * 58.0, (index / 10) as f64 * 62.0);
        let corner = |x: f64, y: f64| (east + x, north + y);
        let outline =
            points(&[corner(2.0, 1.0), corner(40.0, 0.0), corner(48.0, 22.0), corner(38.0, 42.0), corner(0.0, 36.0)]);
        let laying = Laying {
            outline,
            closed: true,
            nets: 3,
            panels: 14,
            length_m: 50.0,
            start_m: 0.0,
            reversed: index % 2 == 1,
            feed_m: 20.0,
            feed_kv: 2.0 + index as f64 / 10.0,
            far_kv: 1.0 + index as f64 / 10.0,
            strip_m: 1.2,
        };
        lay(&mut hand, "", None, &laying);
    }
    hand
}

pub(crate) fn finding(severity: Severity, at: Vec<Point>) -> Finding {
    Finding {
        id: "by-hand",
        severity,
        message: "By hand.".into(),
        mend: String::new(),
        why: String::new(),
        at,
        source: "none",
        subject: care::Subject::Whole,
        other: None,
    }
}

pub(crate) fn keep_out(name: &str, outline: &[(f64, f64)], clearance_m: f64, water: bool) -> KeepOut {
    KeepOut { name: name.into(), clearance_m: Some(clearance_m), water, ..KeepOut::new(points(outline)) }
}

pub(crate) fn hazard(kind: HazardKind, name: &str, path: &[(f64, f64)]) -> Hazard {
    Hazard { name: name.into(), ..Hazard::new(kind, points(path)) }
}

pub(crate) fn coop(id: &str, at: Point, heading_deg: f64, birds: u32) -> Coop {
    Coop {
        id: id.into(),
        at,
        heading_deg: Some(heading_deg),
        door: None,
        length_m: None,
        width_m: None,
        birds: Some(birds),
        kind: None,
        hidden: false,
        locked: false,
        rest: Rest::new(),
    }
}

/// Adds a run, laid by hand.
pub(crate) fn lay(hand: &mut Hand, name: &str, coop: Option<&str>, how: &Laying) {
    let id = format!("run-{}", hand.plan.runs.len() + 1);
    let count = how.outline.len();
    let mut along_m = 0.0;
    let mut vertices = Vec::new();
    for index in 0..count {
        vertices.push((how.outline[index], along_m));
        if index + 1 < count || how.closed {
            along_m += apart(how.outline[index], how.outline[(index + 1) % count]);
        }
    }
    let line_m = along_m;
    let netting_m = how.nets as f64 * how.length_m;
    let place = |chain_m: f64| {
        let along = if how.reversed { how.start_m - chain_m } else { how.start_m + chain_m };
        let along = if how.closed { along.rem_euclid(line_m) } else { along.clamp(0.0, line_m) };
        (at(&vertices, how, line_m, along), along)
    };
    let (mut posts, mut spare_posts, mut nets) = (Vec::new(), Vec::new(), Vec::new());
    for net in 0..how.nets {
        let start_m = net as f64 * how.length_m;
        nets.push(LaidNet { kind: "long".into(), start_m, end_m: start_m + how.length_m });
        for post in 0..=how.panels as usize {
            let chain_m = start_m + how.length_m * post as f64 / f64::from(how.panels);
            if chain_m <= line_m + 0.01 {
                let (at, along_m) = place(chain_m.min(line_m));
                posts.push(Post { at, along_m, chain_m: chain_m.min(line_m), net, post });
            } else {
                let (at, along_m) = place(2.0 * line_m - chain_m);
                spare_posts.push(Post { at, along_m, chain_m, net, post });
            }
        }
    }
    let covered_m = netting_m.min(line_m);
    let mut corners = Vec::new();
    for (index, &(at, along_m)) in vertices.iter().enumerate() {
        if !how.closed && (index == 0 || index + 1 == count) {
            continue;
        }
        let (before, after) = (how.outline[(index + count - 1) % count], how.outline[(index + 1) % count]);
        let (a, b) = (bearing(before, at), bearing(at, after));
        let turn = (b - a + std::f64::consts::PI).rem_euclid(2.0 * std::f64::consts::PI) - std::f64::consts::PI;
        let out = a + turn / 2.0 - std::f64::consts::FRAC_PI_2;
        let dents = turn < 0.0;
        let out = if dents { out + std::f64::consts::PI } else { out };
        let to_post_m = posts.iter().map(|post| (post.along_m - along_m).abs()).fold(f64::INFINITY, f64::min);
        corners.push(Corner {
            at,
            along_m,
            vertex: Some(index),
            turn_deg: turn.to_degrees().abs(),
            to_post_m,
            pull_n: 141.0,
            hold_n: 98.0,
            end: false,
            dents,
            verdict: if turn.abs() > 0.8 { Verdict::Required } else { Verdict::Advised },
            braced: false,
            holds: false,
            kit: Kit { kind: plan::BraceKind::Guy, pegs: 1, length_m: 0.3, earth: false },
            stake: Stake {
                at: Point::new(at.east_m + out.cos(), at.north_m + out.sin()),
                stand_off_m: 1.0,
                hold_n: 400.0,
            },
        });
    }
    let volts = (how.feed_kv > 0.0).then(|| {
        let far = |along_m: f64| {
            let apart = (along_m - how.feed_m).abs();
            if how.closed { apart.min(line_m - apart) } else { apart }
        };
        let kv = |along_m: f64| how.feed_kv + (how.far_kv - how.feed_kv) * far(along_m) / (line_m / 2.0);
        let mut samples: Vec<Sample> = posts
            .iter()
            .enumerate()
            .map(|(index, post)| sample(SampleOf::Post(index), post.at, post.along_m, post.chain_m, kv(post.along_m)))
            .collect();
        let chain_m = if how.reversed { how.start_m - how.feed_m } else { how.feed_m - how.start_m };
        let feed = (at(&vertices, how, line_m, how.feed_m), chain_m.rem_euclid(line_m));
        samples.push(sample(SampleOf::Feed, feed.0, how.feed_m, feed.1, how.feed_kv));
        let worst = (0..posts.len()).min_by(|&a, &b| samples[a].peak_kv.total_cmp(&samples[b].peak_kv));
        let weakest = worst.map(|post| Weakest {
            post,
            branch: None,
            at: posts[post].at,
            along_m: posts[post].along_m,
            peak_kv: samples[post].peak_kv,
            low_kv: 1.2,
            high_kv: 5.9,
            measured: hand.plan.runs.is_empty(),
        });
        Volts { feed_kv: how.feed_kv, samples, weakest, ..Volts::default() }
    });
    let strip = Strip {
        width_m: how.strip_m,
        area_m2: line_m * how.strip_m,
        passes: (how.strip_m / 0.477).ceil() as u32,
        walk_m: 600.0,
        minutes: 9.0,
        minutes_by_area: 9.0,
        polygons: if how.closed {
            vec![vec![grown(&how.outline, how.strip_m / 2.0), grown(&how.outline, -how.strip_m / 2.0)]]
        } else {
            Vec::new()
        },
    };
    let lay = Lay {
        closed: how.closed,
        line_m,
        area_m2: if how.closed { area(&how.outline).abs() } else { 0.0 },
        spare_m: (netting_m - line_m).max(0.0),
        short_m: (line_m - covered_m).max(0.0),
        nets_needed: BTreeMap::from([("long".to_owned(), how.nets as u32)]),
        start_m: how.start_m,
        reversed: how.reversed,
        nets,
        posts,
        spare_posts,
        corners,
        corners_judged: true,
        vertices,
        ..Lay::default()
    };
    hand.plan.runs.push(Run {
        id: id.clone(),
        name: name.into(),
        outline: how.outline.clone(),
        closed: Some(how.closed),
        coop: coop.map(str::to_owned),
        ..Run::default()
    });
    hand.workup.runs.push(RunWorkup { id, lay: Some(lay), strip: Some(strip), volts, ..RunWorkup::default() });
    workup::close(&hand.plan, &mut hand.workup.runs);
}

fn sample(of: SampleOf, at: Point, along_m: f64, chain_m: f64, peak_kv: f64) -> Sample {
    Sample { of, at, along_m, chain_m, peak_kv, low_kv: peak_kv, high_kv: peak_kv, animal_kv: None, animal_j: None }
}

fn apart(a: Point, b: Point) -> f64 {
    (a.east_m - b.east_m).hypot(a.north_m - b.north_m)
}

fn bearing(from: Point, to: Point) -> f64 {
    (to.north_m - from.north_m).atan2(to.east_m - from.east_m)
}

fn area(ring: &[Point]) -> f64 {
    (0..ring.len())
        .map(|index| {
            let (a, b) = (ring[index], ring[(index + 1) % ring.len()]);
            (a.east_m * b.north_m - b.east_m * a.north_m) / 2.0
        })
        .sum()
}

fn at(vertices: &[(Point, f64)], how: &Laying, line_m: f64, along_m: f64) -> Point {
    let count = vertices.len();
    for index in 0..count {
        let from = vertices[index];
        let to = match vertices.get(index + 1) {
            Some(&to) => to,
            None if how.closed => (vertices[0].0, line_m),
            None => return from.0,
        };
        if along_m <= to.1 + 1e-9 {
            let part = if to.1 > from.1 { (along_m - from.1) / (to.1 - from.1) } else { 0.0 };
            return Point::new(
                from.0.east_m + (to.0.east_m - from.0.east_m) * part,
                from.0.north_m + (to.0.north_m - from.0.north_m) * part,
            );
        }
    }
    vertices[0].0
}

/// A counter-clockwise ring grown by so many metres, mitred.
fn grown(ring: &[Point], by_m: f64) -> Vec<Point> {
    let count = ring.len();
    (0..count)
        .map(|index| {
            let (before, here, after) = (ring[(index + count - 1) % count], ring[index], ring[(index + 1) % count]);
            let (a, b) = (
                bearing(before, here) - std::f64::consts::FRAC_PI_2,
                bearing(here, after) - std::f64::consts::FRAC_PI_2,
            );
            let (east, north) = (a.cos() + b.cos(), a.sin() + b.sin());
            let half = f64::midpoint(east * east, north * north);
            Point::new(here.east_m + by_m * east / half, here.north_m + by_m * north / half)
        })
        .collect()
}

/// Runs of every kind beside each other: strong and weak, short and spare, open, dented, without volts, not laid.
pub(crate) fn kinds() -> Hand {
    let mut plan = Plan::default();
    plan.ground.boundary = points(&[(-8.0, -8.0), (112.0, -8.0), (112.0, 66.0), (-8.0, 66.0)]);
    let mut hand = Hand { plan, workup: Workup::default(), findings: Findings::default() };
    let box_at = |east: f64, north: f64| {
        points(&[(east, north), (east + 26.0, north), (east + 26.0, north + 20.0), (east, north + 20.0)])
    };
    let base = |outline: Vec<Point>| Laying {
        outline,
        closed: true,
        nets: 2,
        panels: 13,
        length_m: 50.0,
        start_m: 0.0,
        reversed: false,
        feed_m: 30.0,
        feed_kv: 7.5,
        far_kv: 0.4,
        strip_m: 1.2,
    };
    let spare = base(box_at(0.0, 0.0));
    lay(&mut hand, "Spare and steep", None, &spare);
    let short = Laying { nets: 1, length_m: 80.0, start_m: 20.0, feed_kv: 1.9, far_kv: 1.2, ..base(box_at(38.0, 0.0)) };
    lay(&mut hand, "Short and weak", None, &short);
    let dented = points(&[(76.0, 0.0), (104.0, 0.0), (104.0, 22.0), (91.0, 12.0), (76.0, 22.0)]);
    let dented =
        Laying { nets: 3, length_m: 38.0, panels: 11, start_m: 40.0, reversed: true, feed_kv: 0.0, ..base(dented) };
    lay(&mut hand, "Dented, no volts", None, &dented);
    let open = Laying {
        closed: false,
        feed_kv: 5.0,
        far_kv: 4.0,
        ..base(points(&[(0.0, 34.0), (30.0, 32.0), (40.0, 54.0), (10.0, 58.0)]))
    };
    lay(&mut hand, "Open line", None, &open);
    let clockwise = points(&[(58.0, 34.0), (58.0, 56.0), (80.0, 56.0), (84.0, 34.0)]);
    let clockwise =
        Laying { nets: 2, length_m: 46.0, start_m: 30.0, feed_m: 0.0, feed_kv: 4.2, far_kv: 3.8, ..base(clockwise) };
    lay(&mut hand, "Clockwise", None, &clockwise);
    hand.plan.runs.push(Run {
        id: "crossed".into(),
        name: "Not laid".into(),
        outline: points(&[(94.0, 34.0), (108.0, 56.0), (108.0, 34.0), (94.0, 56.0)]),
        ..Run::default()
    });
    hand
}
