//! Placement against a plain search that shares nothing with it but the words of the model.
//!
//! The search here knows no lattice, no sweep and no bound: it tries every order of the nets, both directions, every start
//! at which a corner meets a post and a hundred starts between, and measures every corner against every post. On 500
//! outlines from a fixed seed the placement must never be worse, must report what its own posts show, and must obey the
//! tie rules: least sum, least largest miss, start nearest the feed, smaller along, forward, order as listed.

use geometry::{FixedStart, Net, Outline, Placement, PlacementRequest, Point, place};

const EQUAL_M: f64 = 1e-6;
const MEET_M: f64 = 0.01;

/// Steele, Lea and Flood's SplitMix64 (2014): small, and the same numbers on every machine.
struct Dice(u64);

impl Dice {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    fn share(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.share()
    }

    fn below(&mut self, count: usize) -> usize {
        (self.next() % count as u64) as usize
    }
}

/// A case: a line, kinds of net as lists of panels, nets, perhaps a feed.
struct Case {
    points: Vec<Point>,
    closed: bool,
    panels_m: Vec<Vec<f64>>,
    nets: Vec<usize>,
    feed: Option<Point>,
}

fn random_case(dice: &mut Dice, index: usize) -> Case {
    let corners = 3 + dice.below(4);
    let closed = index % 4 != 3;
    // Every other case is made of round numbers, so that ties are common.
    let round = index.is_multiple_of(2);
    let points: Vec<Point> = if round && index.is_multiple_of(3) {
        let (wide, deep) = (f64::from(2 + dice.below(10) as u32), f64::from(2 + dice.below(10) as u32));
        vec![Point::new(0.0, 0.0), Point::new(wide, 0.0), Point::new(wide, deep), Point::new(0.0, deep)]
    } else {
        (0..corners)
            .map(|corner| {
                let angle = (corner as f64 + dice.between(0.0, 0.8)) / corners as f64 * std::f64::consts::TAU;
                let radius_m = dice.between(3.0, 12.0);
                let at = Point::new(radius_m * angle.cos() + 40.0, radius_m * angle.sin() - 7.0);
                if round { Point::new(at.east_m.round(), at.north_m.round()) } else { at }
            })
            .collect()
    };
    let kinds = 1 + dice.below(3);
    let panels_m: Vec<Vec<f64>> = (0..kinds)
        .map(|_| {
            let panels = 1 + dice.below(5);
            let panel_m = if round { f64::from(1 + dice.below(4) as u32) } else { dice.between(1.0, 4.0) };
            let mut lengths_m = vec![panel_m; panels];
            if dice.below(3) == 0 {
                lengths_m[panels - 1] = panel_m / 2.0;
            }
            lengths_m
        })
        .collect();
    let nets = (0..=dice.below(4)).map(|_| dice.below(kinds)).collect();
    let feed = (dice.below(2) == 0).then(|| Point::new(dice.between(25.0, 55.0), dice.between(-20.0, 10.0)));
    Case { points, closed, panels_m, nets, feed }
}

/// What the plain search finds for one start, direction and order.
#[derive(Debug, Clone)]
struct Found {
    sum_m: f64,
    largest_m: f64,
    feed_m: f64,
    start_m: f64,
    reversed: bool,
    order: Vec<usize>,
}

/// Posts in the chain that stand on the line.
fn posts_m(case: &Case, order: &[usize], line_m: f64) -> Vec<f64> {
    let mut posts_m = Vec::new();
    let mut net_m = 0.0;
    for (index, &kind) in order.iter().enumerate() {
        if index > 0 && net_m >= line_m - MEET_M {
            break;
        }
        let mut post_m: f64 = net_m;
        posts_m.push(post_m);
        for panel_m in &case.panels_m[kind] {
            post_m += panel_m;
            if post_m <= line_m + MEET_M {
                posts_m.push(post_m.min(line_m));
            }
        }
        net_m = post_m;
    }
    posts_m
}

fn misses(corners_m: &[f64], posts_m: &[f64], line_m: f64, closed: bool, start_m: f64, reversed: bool) -> (f64, f64) {
    let mut sum_m = 0.0;
    let mut largest_m: f64 = 0.0;
    for corner_m in corners_m {
        let mut nearest_m = f64::INFINITY;
        for post_m in posts_m {
            let along_m = if reversed { start_m - post_m } else { start_m + post_m };
            let mut apart_m = (along_m - corner_m).abs();
            if closed {
                apart_m = apart_m.rem_euclid(line_m);
                apart_m = apart_m.min(line_m - apart_m);
            }
            nearest_m = nearest_m.min(apart_m);
        }
        sum_m += nearest_m;
        largest_m = largest_m.max(nearest_m);
    }
    (sum_m, largest_m)
}

fn orders(nets: &[usize]) -> Vec<Vec<usize>> {
    if nets.is_empty() {
        return vec![Vec::new()];
    }
    let mut all = Vec::new();
    for index in 0..nets.len() {
        if nets[..index].contains(&nets[index]) {
            continue;
        }
        let mut rest = nets.to_vec();
        let first = rest.remove(index);
        for mut tail in orders(&rest) {
            tail.insert(0, first);
            all.push(tail);
        }
    }
    all
}

/// Corners measured afresh from the points: exterior turn of 5 degrees or more.
fn corners_m(case: &Case) -> (Vec<f64>, f64) {
    let count = case.points.len();
    let mut along_m = vec![0.0];
    for index in 1..=count {
        along_m.push(along_m[index - 1] + case.points[index - 1].distance_m(case.points[index % count]));
    }
    let line_m = if case.closed { along_m[count] } else { along_m[count - 1] };
    let inner = if case.closed { 0..count } else { 1..count - 1 };
    let corners_m = inner
        .filter(|&index| {
            let (before, here, after) =
                (case.points[(index + count - 1) % count], case.points[index], case.points[(index + 1) % count]);
            let (into, out) = (here - before, after - here);
            let cosine = into.dot(out) / (into.length() * out.length());
            cosine <= 5_f64.to_radians().cos()
        })
        .map(|index| along_m[index])
        .collect();
    (corners_m, line_m)
}

/// Every meeting of a corner and a post, with `samples` starts between in every order.
fn plain_search(case: &Case, outline: &Outline, samples: usize) -> (Vec<Found>, f64) {
    let (corners_m, line_m) = corners_m(case);
    let mut found = Vec::new();
    let mut least_m = f64::INFINITY;
    for order in orders(&case.nets) {
        let posts_m = posts_m(case, &order, line_m);
        for reversed in [false, true] {
            let mut starts_m = Vec::new();
            if !case.closed {
                starts_m.push(if reversed { line_m } else { 0.0 });
            } else if corners_m.is_empty() {
                starts_m.push(case.feed.map_or(0.0, |feed| outline.nearest_along(feed).0));
            } else {
                for corner_m in &corners_m {
                    for post_m in &posts_m {
                        let start_m = if reversed { corner_m + post_m } else { corner_m - post_m };
                        let start_m = start_m.rem_euclid(line_m);
                        starts_m.push(if line_m - start_m < 1e-9 { 0.0 } else { start_m });
                    }
                }
            }
            for &start_m in &starts_m {
                let (sum_m, largest_m) = misses(&corners_m, &posts_m, line_m, case.closed, start_m, reversed);
                let feed_m = case.feed.map_or(0.0, |feed| outline.at(start_m).distance_m(feed));
                least_m = least_m.min(sum_m);
                found.push(Found { sum_m, largest_m, feed_m, start_m, reversed, order: order.clone() });
            }
            if case.closed {
                for sample in 0..samples {
                    let start_m = line_m * (sample as f64 + 0.37) / samples as f64;
                    least_m = least_m.min(misses(&corners_m, &posts_m, line_m, true, start_m, reversed).0);
                }
            }
        }
    }
    (found, least_m)
}

/// The tie rules, one after the other.
fn winners(mut found: Vec<Found>) -> Vec<Found> {
    for key in [|f: &Found| f.sum_m, |f: &Found| f.largest_m, |f: &Found| f.feed_m, |f: &Found| f.start_m] {
        let least = found.iter().map(key).fold(f64::INFINITY, f64::min);
        found.retain(|f| key(f) <= least + EQUAL_M);
    }
    if found.iter().any(|f| !f.reversed) {
        found.retain(|f| !f.reversed);
    }
    found
}

fn placed(case: &Case, outline: &Outline) -> Placement {
    let kinds: Vec<Net> = case.panels_m.iter().map(|panels_m| Net::unequal(panels_m).unwrap()).collect();
    place(&PlacementRequest { feed: case.feed, ..PlacementRequest::new(outline, &kinds, &case.nets) }).unwrap()
}

fn outline_of(case: &Case) -> Outline {
    if case.closed { Outline::closed(&case.points) } else { Outline::open(&case.points) }
}

#[test]
fn never_worse_than_a_plain_search_and_ties_obeyed() {
    let mut dice = Dice(20_270_401);
    let mut tried = 0;
    let mut tied = 0;
    for index in 0.. {
        if tried == 500 {
            break;
        }
        let case = random_case(&mut dice, index);
        let outline = outline_of(&case);
        if outline.vertices().len() != case.points.len() || outline.length_m() < 4.0 {
            continue; // Rounding put two corners on one spot; the measure below does not clean.
        }
        tried += 1;
        let placement = placed(&case, &outline);
        let (found, least_m) = plain_search(&case, &outline, 100);
        let got_m = placement.corner_miss_m;
        assert!(got_m <= least_m + 1e-7, "case {index}: {got_m} m, the plain search finds {least_m} m");
        assert!(placement.bound_m.is_none(), "case {index}: so few orders are all tried");

        // The sum is what the placement's own posts show.
        let (corners_m, line_m) = corners_m(&case);
        let shown_m = posts_m(&case, &placement.order, line_m);
        let (sum_m, largest_m) =
            misses(&corners_m, &shown_m, line_m, case.closed, placement.start_m, placement.reversed);
        assert!((sum_m - got_m).abs() < 1e-9, "case {index}: reported {got_m} m, its posts show {sum_m} m");
        assert!((largest_m - placement.largest_miss_m).abs() < 1e-9, "case {index}");

        let best = winners(found);
        assert!(
            best.iter().any(|f| (f.start_m - placement.start_m).abs() < 2e-6
                && f.reversed == placement.reversed
                && (largest_m - f.largest_m).abs() < 2e-6),
            "case {index}: start {} reversed {} largest {largest_m}, the tie rules give {best:?}",
            placement.start_m,
            placement.reversed,
        );
        if best.len() > 1 {
            tied += 1;
        }
        if best.iter().any(|f| f.order == case.nets) {
            assert_eq!(placement.order, case.nets, "case {index}: the order as listed comes first");
        } else {
            assert!(best.iter().any(|f| f.order == placement.order), "case {index}: {:?}", placement.order);
        }
    }
    assert!(tied > 50, "only {tied} cases had a tie: the test would show nothing");
}

#[test]
fn a_fixed_start_is_kept_and_the_best_stands_beside_it() {
    let mut dice = Dice(7);
    for index in 0..60 {
        let case = random_case(&mut dice, index);
        let outline = outline_of(&case);
        let free = placed(&case, &outline);
        let kinds: Vec<Net> = case.panels_m.iter().map(|panels_m| Net::unequal(panels_m).unwrap()).collect();
        let start_m = dice.between(0.0, outline.length_m());
        let fixed = Some(FixedStart { start_m, reversed: index.is_multiple_of(3) });
        let request =
            PlacementRequest { feed: case.feed, fixed, ..PlacementRequest::new(&outline, &kinds, &case.nets) };
        let kept = place(&request).unwrap();
        if !case.closed {
            assert_eq!(kept, free, "an open line ignores a stated start");
            continue;
        }
        assert!((kept.start_m - start_m).abs() < 1e-8);
        assert_eq!((kept.reversed, &kept.order), (index.is_multiple_of(3), &case.nets));
        let best = kept.best.unwrap();
        assert_eq!((best.start_m, best.reversed), (free.start_m, free.reversed));
        assert_eq!((&best.order, best.corner_miss_m), (&free.order, free.corner_miss_m));
        assert!(kept.corner_miss_m >= free.corner_miss_m - 1e-9);
    }
}
