//! How long placing nets and cutting the strip takes: a run of 10 nets, one of 100, unlike nets, and the strip of each.

use std::f64::consts::TAU;
use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use geometry::{
    Mower, Net, Outline, Pin, PinKind, PlacementRequest, Point, StripRequest, StripWidth, check_outline, place, strip,
};

/// A lumpy closed outline of `corners` corners, about `length_m` round.
fn lumpy(corners: usize, length_m: f64) -> Outline {
    let points: Vec<Point> = (0..corners)
        .map(|corner| {
            let angle = corner as f64 / corners as f64 * TAU;
            let radius_m = length_m / 7.0 * (1.0 + 0.2 * (corner as f64 * 2.3).sin());
            Point::new(radius_m * angle.cos(), radius_m * angle.sin())
        })
        .collect();
    Outline::closed(&points)
}

fn kinds() -> Vec<Net> {
    [(50.0, 14), (50.0, 22), (25.0, 8)]
        .map(|(length_m, panels)| Net::equal(length_m, panels).expect("a net of the trade"))
        .into()
}

fn placement(c: &mut Criterion) {
    let kinds = kinds();
    let cases = [
        ("10 equal nets, 8 corners", lumpy(8, 500.0), vec![0; 10]),
        ("100 equal nets, 20 corners", lumpy(20, 5000.0), vec![0; 100]),
        ("10 nets of 2 kinds, 8 corners", lumpy(8, 500.0), [0, 1].repeat(5)),
        ("20 nets of 3 kinds, 8 corners", lumpy(8, 800.0), [0, 1, 2, 0].repeat(5)),
        ("100 nets of 2 kinds, 20 corners", lumpy(20, 5000.0), [0, 1].repeat(50)),
    ];
    for (name, outline, nets) in &cases {
        c.bench_function(&format!("place {name}"), |b| {
            b.iter(|| place(black_box(&PlacementRequest::new(outline, &kinds, nets))));
        });
    }
}

/// A smooth closed outline of `corners` corners, `length_m` round.
fn smooth(corners: usize, length_m: f64) -> Outline {
    let ring = |scale: f64| {
        let points: Vec<Point> = (0..corners)
            .map(|corner| corner as f64 / corners as f64 * TAU)
            .map(|angle| (angle + 0.04 * (7.0 * angle).sin(), scale * (1.0 + 0.15 * (2.0 * angle + 0.5).sin())))
            .map(|(angle, radius_m)| Point::new(radius_m * angle.cos(), radius_m * angle.sin()))
            .collect();
        Outline::closed(&points)
    };
    ring(length_m / ring(1.0).length_m())
}

/// On 60 corners, without pins and with three: a join, a corner on a post, a kind of net. What each pin costs is a search
/// of its own, so three pins are five searches.
fn sixty_corners(c: &mut Criterion) {
    let kinds: Vec<Net> = [(50.0, 14), (35.0, 11), (25.0, 8)]
        .map(|(length_m, panels)| Net::equal(length_m, panels).expect("a net of the trade"))
        .into();
    let cases = [
        ("20 equal nets", smooth(60, 995.0), vec![0; 20]),
        ("8 nets of three lengths", smooth(60, 303.0), vec![0, 1, 2, 0, 1, 2, 0, 1]),
        ("20 nets of three lengths", smooth(60, 735.0), [0, 1, 2, 0, 2].repeat(4)),
    ];
    for (name, outline, nets) in &cases {
        let free = place(&PlacementRequest::new(outline, &kinds, nets)).expect("placed");
        eprintln!("{name}: {:.3} m, bound {:?}", free.corner_miss_m, free.bound_m);
        c.bench_function(&format!("place on 60 corners {name}"), |b| {
            b.iter(|| place(black_box(&PlacementRequest::new(outline, &kinds, nets))));
        });
        let line_m = outline.length_m();
        let corner_m = outline.vertices()[20].along_m;
        let last = *nets.last().expect("a net");
        let pins = [
            Pin { along_m: 0.1 * line_m, what: PinKind::Join },
            Pin { along_m: corner_m, what: PinKind::Post },
            Pin { along_m: 0.6 * line_m, what: PinKind::Net { kind: last } },
        ];
        for count in [1, 3] {
            let pins = &pins[..count];
            let request = PlacementRequest { pins, ..PlacementRequest::new(outline, &kinds, nets) };
            let placed = place(&request).expect("placed");
            eprintln!("  {count} pins: {:.3} m, bound {:?}, {:?}", placed.corner_miss_m, placed.bound_m, placed.pins);
            c.bench_function(&format!("place on 60 corners {name}, {count} pins"), |b| {
                b.iter(|| place(black_box(&request)));
            });
        }
    }
}

fn mown(c: &mut Criterion) {
    let mower = Mower { width_m: 0.53, overlap: 0.1, speed_m_per_s: 1.11 };
    for (corners, length_m) in [(8, 500.0), (20, 5000.0), (500, 5000.0)] {
        let outline = lumpy(corners, length_m);
        let request = StripRequest { outline: &outline, width: StripWidth::even(1.2), keep_outs: &[], mower };
        c.bench_function(&format!("strip {corners} corners"), |b| b.iter(|| strip(black_box(&request))));
    }
    let points: Vec<Point> = lumpy(2000, 5000.0).points().collect();
    c.bench_function("check outline of 2000 corners", |b| b.iter(|| check_outline(black_box(&points), true)));
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(10).measurement_time(std::time::Duration::from_secs(2));
    targets = placement, sixty_corners, mown
}
criterion_main!(benches);
