//! The fit to whole panels against an exhaustive search by another method, and its laws.

use geometry::fit::{Fit, FitRequest, FreeGround, KeepOff, NoFit, fit};
use geometry::{Net, Outline, Point, check_outline, region};
use proptest::prelude::*;

/// A stream of even numbers in [0, 1): the test's own, so that it tries the same sketches every time.
struct Dice(u64);

impl Dice {
    fn roll(&mut self) -> f64 {
        // The multiplier and the step of Knuth's MMIX generator.
        self.0 = self.0.wrapping_mul(6364136223846793005).wrapping_add(1442695040888963407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }
}

/// A lumpy sketch of so many corners, about `round_m` round.
fn lumpy(dice: &mut Dice, corners: usize, round_m: f64, lump: f64) -> Vec<Point> {
    let turned = dice.roll() * std::f64::consts::TAU;
    (0..corners)
        .map(|corner| {
            let angle = turned + (corner as f64 + 0.5 * dice.roll()) / corners as f64 * std::f64::consts::TAU;
            let radius_m = round_m / 6.0 * (1.0 + lump * (dice.roll() - 0.5));
            Point::new(200.0 + radius_m * angle.cos(), -70.0 + radius_m * angle.sin())
        })
        .collect()
}

/// The sketch at another size: so far round.
fn sized(sketch: &[Point], round_m: f64) -> Vec<Point> {
    let factor = round_m / sides_m(sketch).iter().sum::<f64>();
    sketch.iter().map(|at| Point::new(factor * at.east_m, factor * at.north_m)).collect()
}

fn rms_m(sketch: &[Point], outline: &[Point]) -> f64 {
    let sum: f64 = sketch.iter().zip(outline).map(|(one, other)| one.distance_m(*other).powi(2)).sum();
    (sum / sketch.len() as f64).sqrt()
}

fn sides_m(outline: &[Point]) -> Vec<f64> {
    (0..outline.len()).map(|side| outline[side].distance_m(outline[(side + 1) % outline.len()])).collect()
}

/// Corners for given sides by another way: each side is a spring of growing stiffness (Levenberg and Marquardt).
fn by_springs(sketch: &[Point], start: &[Point], sides_m: &[f64]) -> Vec<Point> {
    let corners = sketch.len();
    let n = 2 * corners;
    let mut at: Vec<f64> = start.iter().flat_map(|point| [point.east_m, point.north_m]).collect();
    let goal: Vec<f64> = sketch.iter().flat_map(|point| [point.east_m, point.north_m]).collect();
    let cost = |at: &[f64], stiff: f64| -> f64 {
        let moved: f64 = at.iter().zip(&goal).map(|(one, other)| (one - other).powi(2)).sum();
        moved + (0..corners).map(|side| stiff * stretch(at, side, sides_m).0.powi(2)).sum::<f64>()
    };
    for stiff in [1.0, 10.0, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8] {
        let mut damp = 1e-3;
        for _ in 0..60 {
            let mut matrix = vec![vec![0.0; n + 1]; n];
            for index in 0..n {
                matrix[index][index] = 1.0 + damp;
                matrix[index][n] = goal[index] - at[index];
            }
            for side in 0..corners {
                let (off_m, way) = stretch(&at, side, sides_m);
                let next = (side + 1) % corners;
                let slots = [2 * side, 2 * side + 1, 2 * next, 2 * next + 1];
                let slope = [-way[0], -way[1], way[0], way[1]];
                for (&row, from) in slots.iter().zip(slope) {
                    for (&column, to) in slots.iter().zip(slope) {
                        matrix[row][column] += stiff * from * to;
                    }
                    matrix[row][n] -= stiff * off_m * from;
                }
            }
            let step = eliminate(matrix);
            let next: Vec<f64> = at.iter().zip(&step).map(|(one, step)| one + step).collect();
            if cost(&next, stiff) < cost(&at, stiff) {
                at = next;
                damp = (damp * 0.2_f64).max(1e-12);
            } else {
                damp *= 8.0;
                if damp > 1e9 {
                    break;
                }
            }
        }
    }
    at.chunks_exact(2).map(|pair| Point::new(pair[0], pair[1])).collect()
}

fn stretch(at: &[f64], side: usize, sides_m: &[f64]) -> (f64, [f64; 2]) {
    let next = (side + 1) % sides_m.len();
    let (east, north) = (at[2 * next] - at[2 * side], at[2 * next + 1] - at[2 * side + 1]);
    let length_m = east.hypot(north).max(1e-9);
    (length_m - sides_m[side], [east / length_m, north / length_m])
}

fn eliminate(mut matrix: Vec<Vec<f64>>) -> Vec<f64> {
    let n = matrix.len();
    for pivot in 0..n {
        let best = (pivot..n).max_by(|&a, &b| matrix[a][pivot].abs().total_cmp(&matrix[b][pivot].abs())).unwrap();
        matrix.swap(pivot, best);
        for row in pivot + 1..n {
            let share = matrix[row][pivot] / matrix[pivot][pivot];
            let above = matrix[pivot].clone();
            for (value, above) in matrix[row].iter_mut().zip(&above).skip(pivot) {
                *value -= share * above;
            }
        }
    }
    for row in (0..n).rev() {
        let sum: f64 = (row + 1..n).map(|column| matrix[row][column] * matrix[column][n]).sum();
        matrix[row][n] = (matrix[row][n] - sum) / matrix[row][row];
    }
    matrix.into_iter().map(|row| row[n]).collect()
}

/// Every way to share `panels` out over `sides`, at least one each.
fn shares(panels: usize, sides: usize) -> Vec<Vec<usize>> {
    if sides == 1 {
        return vec![vec![panels]];
    }
    (1..=panels + 1 - sides)
        .flat_map(|first| {
            shares(panels - first, sides - 1).into_iter().map(move |mut rest| {
                rest.insert(0, first);
                rest
            })
        })
        .collect()
}

/// The least move over every share of the panels round `ring`, from each of its posts, each corner's reflection tried as
/// a start, simple outlines only.
fn exhausted(sketch: &[Point], ring: &[f64]) -> Option<f64> {
    let panels = ring.len();
    let total_m: f64 = ring.iter().sum();
    let equal = ring.iter().all(|&panel_m| panel_m == ring[0]);
    let mut least: Option<f64> = None;
    let firsts = if equal { 1 } else { panels };
    let all = (0..firsts).flat_map(|first| shares(panels, sketch.len()).into_iter().map(move |share| (first, share)));
    for (first, share) in all {
        let mut at = first;
        let mut side_m = |count: usize| {
            at += count;
            (at - count..at).map(|panel| ring[panel % panels]).sum::<f64>()
        };
        let sides: Vec<f64> = share.iter().map(|&count| side_m(count)).collect();
        if sides.iter().any(|&side_m| 2.0 * side_m >= total_m - 1e-9) {
            continue;
        }
        // The springs cannot do better than half the squared differences of length, a quarter each: proven, and coarse.
        let drawn = sides_m(sketch);
        let gap: f64 = sides.iter().zip(&drawn).map(|(one, other)| (one - other).powi(2)).sum();
        if least.is_some_and(|least| (gap / 4.0 / sketch.len() as f64).sqrt() > least) {
            continue;
        }
        let mut starts = vec![sketch.to_vec()];
        for corner in 0..sketch.len() {
            let (before, after) =
                (sketch[(corner + sketch.len() - 1) % sketch.len()], sketch[(corner + 1) % sketch.len()]);
            let mut laid_over = sketch.to_vec();
            laid_over[corner] = before + (after - sketch[corner]);
            starts.push(laid_over);
        }
        for start in starts {
            let outline = by_springs(sketch, &start, &sides);
            let exact = sides_m(&outline).iter().zip(&sides).all(|(one, other)| (one - other).abs() < 1e-4);
            if exact && check_outline(&outline, true).is_empty() {
                let rms = rms_m(sketch, &outline);
                least = Some(least.map_or(rms, |least| least.min(rms)));
            }
        }
    }
    least
}

fn assert_whole(sketch: &[Point], found: &Fit, panel_m: f64, panels: usize) {
    assert_eq!(found.side_panels.iter().sum::<usize>(), panels);
    assert!(found.side_panels.iter().all(|&count| count >= 1));
    for (length_m, &count) in sides_m(&found.outline).iter().zip(&found.side_panels) {
        assert!((length_m - count as f64 * panel_m).abs() < 1e-9, "{length_m} for {count}");
    }
    assert!(check_outline(&found.outline, true).is_empty());
    assert!((rms_m(sketch, &found.outline) - found.moved_rms_m).abs() < 1e-9);
    assert!(found.bound_rms_m <= found.moved_rms_m);
}

#[test]
fn it_is_never_farther_than_an_exhaustive_search() {
    let mut dice = Dice(7);
    let (mut proven, mut tried) = (0, 0);
    for case in 0..24 {
        let corners = 3 + case % 3;
        let panels = corners + 2 + (dice.roll() * [10.0, 7.0, 4.0][case % 3]) as usize;
        let panel_m = 3.0 + dice.roll();
        let round_m = panels as f64 * panel_m * (0.55 + 0.95 * dice.roll());
        let sketch = lumpy(&mut dice, corners, round_m, 0.6);
        if !check_outline(&sketch, true).is_empty() {
            continue;
        }
        let roll = Net::equal(panel_m * panels as f64, panels).unwrap();
        let found = fit(&FitRequest::new(&Outline::closed(&sketch), &[roll], &[0])).unwrap();
        let least = exhausted(&sketch, &vec![panel_m; panels]);
        match (found, least) {
            (Ok(found), Some(least)) => {
                assert_whole(&sketch, &found, panel_m, panels);
                assert!(found.moved_rms_m <= least + 1e-5, "case {case}: {} against {least}", found.moved_rms_m);
                assert!(found.bound_rms_m <= least + 1e-5, "case {case}: bound {} against {least}", found.bound_rms_m);
                tried += 1;
                proven += usize::from(found.moved_rms_m - found.bound_rms_m < 1e-9);
            }
            (Err(_), None) => {}
            (found, least) => panic!("case {case}: {found:?} against {least:?}"),
        }
    }
    assert!(tried > 20 && proven * 10 >= tried * 8, "{proven} of {tried} proven");
}

#[test]
fn unequal_panels_start_where_they_serve_best() {
    let mut dice = Dice(23);
    for case in 0..10 {
        let corners = 3 + case % 2;
        let long_m = 3.0 + dice.roll();
        let short_m = 0.4 * long_m;
        let net = Net::unequal(&[long_m, long_m, short_m]).unwrap();
        let plain = Net::equal(2.0 * long_m, 2).unwrap();
        let double_back = case % 3;
        let mut ring = vec![long_m, long_m, short_m, long_m, long_m, long_m, long_m, short_m];
        ring.truncate(8 - double_back);
        let round_m = ring.iter().sum::<f64>() * (0.9 + 0.2 * dice.roll());
        let sketch = lumpy(&mut dice, corners, round_m, 0.5);
        let outline = Outline::closed(&sketch);
        let (kinds, nets) = ([net, plain], [0, 1, 0]);
        let mut request = FitRequest { double_back, kept_order: true, ..FitRequest::new(&outline, &kinds, &nets) };
        let found = fit(&request).unwrap().unwrap();
        let least = exhausted(&sketch, &ring).unwrap();
        assert!((found.moved_rms_m - least).abs() < 1e-5, "case {case}: {} against {least}", found.moved_rms_m);
        assert!((found.moved_rms_m - found.bound_rms_m).abs() < 1e-9, "case {case}");
        for (length_m, side_m) in sides_m(&found.outline).iter().zip(&found.side_m) {
            assert!((length_m - side_m).abs() < 1e-9);
        }
        // Every corner on a post of the chain that starts where the answer says.
        let line_m: f64 = ring.iter().sum();
        let mut posts = vec![0.0];
        posts.extend(ring.iter().scan(0.0, |at, panel| {
            *at += panel;
            Some(*at)
        }));
        let mut along_m = 0.0;
        for side_m in &found.side_m {
            let chain_m = (along_m - found.start_m).rem_euclid(line_m);
            assert!(posts.iter().any(|post_m| (post_m - chain_m).abs() < 1e-9), "case {case}: {chain_m}");
            along_m += side_m;
        }
        // Nets in any order and direction come at least as near.
        request.kept_order = false;
        let free = fit(&request).unwrap().unwrap();
        assert!(free.moved_rms_m <= found.moved_rms_m + 1e-9);
    }
}

#[test]
fn a_long_fence_is_fitted_within_its_budget_and_proven() {
    let mut dice = Dice(5);
    for case in 0..4 {
        let sketch = lumpy(&mut dice, 8, 60.0 * 3.5, 0.6);
        let roll = Net::equal(70.0, 20).unwrap();
        let found = fit(&FitRequest::new(&Outline::closed(&sketch), &[roll], &[0; 3])).unwrap().unwrap();
        assert_whole(&sketch, &found, 3.5, 60);
        assert!((found.moved_rms_m - found.bound_rms_m).abs() < 1e-9, "case {case}");
    }
}

#[test]
fn what_never_closes_is_told_from_what_has_no_room() {
    let outline = |points: &[(f64, f64)]| Outline::closed(&points.iter().copied().map(Point::from).collect::<Vec<_>>());
    let triangle = outline(&[(0.0, 0.0), (6.0, 0.0), (3.0, 5.0)]);
    let four = Net::equal(14.0, 4).unwrap();
    assert_eq!(fit(&FitRequest::new(&triangle, std::slice::from_ref(&four), &[0])).unwrap(), Err(NoFit::NeverCloses));
    let long = Net::unequal(&[20.0, 3.0, 3.0, 3.0]).unwrap();
    assert_eq!(fit(&FitRequest::new(&triangle, &[long], &[0])).unwrap(), Err(NoFit::NeverCloses));
    let ground =
        FreeGround { boundary: Some(outline(&[(0.0, 0.0), (3.0, 0.0), (3.0, 3.0), (0.0, 3.0)])), keep_offs: vec![] };
    let square = outline(&[(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)]);
    let request = FitRequest { ground: Some(&ground), ..FitRequest::new(&square, std::slice::from_ref(&four), &[0]) };
    assert!(matches!(fit(&request).unwrap(), Err(NoFit::NoRoom { .. })));
}

fn moved(points: &[Point], turn_rad: f64, mirror: bool, by: (f64, f64)) -> Vec<Point> {
    let (sin, cos) = turn_rad.sin_cos();
    let one = |point: &Point| {
        let north_m = if mirror { -point.north_m } else { point.north_m };
        Point::new(point.east_m * cos - north_m * sin + by.0, point.east_m * sin + north_m * cos + by.1)
    };
    points.iter().map(one).collect()
}

/// A paddock about the sketch, now tight, now wide, and keep-outs on its line and beside it.
fn ground_of(dice: &mut Dice, sketch: &[Point], turn: impl Fn(&[Point]) -> Vec<Point>) -> FreeGround {
    let middle = sketch.iter().fold((0.0, 0.0), |sum, at| (sum.0 + at.east_m, sum.1 + at.north_m));
    let middle = Point::new(middle.0 / sketch.len() as f64, middle.1 / sketch.len() as f64);
    let share = 1.02 + 0.3 * dice.roll();
    let boundary: Vec<Point> = sketch.iter().map(|&at| middle.towards(at, share)).collect();
    let keep_offs = (0..2)
        .map(|index| {
            let corner = (dice.roll() * sketch.len() as f64) as usize % sketch.len();
            let on_line = sketch[corner].towards(sketch[(corner + 1) % sketch.len()], 0.2 + 0.6 * dice.roll());
            let at = middle.towards(on_line, 0.85 + 0.2 * dice.roll());
            let size_m = 0.5 + 1.5 * dice.roll();
            let square = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)]
                .map(|(east, north)| Point::new(at.east_m + size_m * east, at.north_m + size_m * north));
            KeepOff { outline: Outline::closed(&turn(&square)), clearance_m: dice.roll(), may_enclose: index == 1 }
        })
        .collect();
    FreeGround { boundary: Some(Outline::closed(&turn(&boundary))), keep_offs }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, ..ProptestConfig::default() })]

    #[test]
    fn moving_turning_and_mirroring_the_sketch_does_the_same_to_the_answer(
        seed in 0_u64..1_000_000, corners in 3_usize..7, turn_rad in 0.0..6.3_f64, mirror: bool,
        east_m in -1e5..1e5_f64, north_m in -1e5..1e5_f64,
    ) {
        let mut dice = Dice(seed);
        let round_m = 28.0 * 3.5 * (0.9 + 0.2 * dice.roll());
        let sketch = lumpy(&mut dice, corners, round_m, 0.5);
        let roll = Net::equal(49.0, 14).unwrap();
        let of = |points: &[Point]| {
            fit(&FitRequest::new(&Outline::closed(points), std::slice::from_ref(&roll), &[0, 0])).unwrap().unwrap()
        };
        let (here, there) = (of(&sketch), of(&moved(&sketch, turn_rad, mirror, (east_m, north_m))));
        prop_assert_eq!(&here.side_panels, &there.side_panels);
        for (one, other) in moved(&here.outline, turn_rad, mirror, (east_m, north_m)).iter().zip(&there.outline) {
            prop_assert!(one.distance_m(*other) < 1e-6);
        }
        // Moving the corners of the answer's own sketch back changes nothing.
        prop_assert!(of(&here.outline).moved_rms_m < 1e-6);
    }

    #[test]
    fn an_answer_lies_on_free_ground_and_never_nearer_than_without(
        seed in 0_u64..1_000_000, corners in 3_usize..6, turn_rad in 0.0..6.3_f64,
    ) {
        let mut dice = Dice(seed);
        let sketch = sized(&lumpy(&mut dice, corners, 56.0, 0.4), 56.0);
        let ground = ground_of(&mut dice, &sketch, <[Point]>::to_vec);
        let roll = Net::equal(56.0, 16).unwrap();
        let outline = Outline::closed(&sketch);
        let open = FitRequest { budget_steps: 3_000, ..FitRequest::new(&outline, std::slice::from_ref(&roll), &[0]) };
        let request = FitRequest { ground: Some(&ground), ..open };
        let without = fit(&open).unwrap().unwrap();
        if let Ok(found) = fit(&request).unwrap() {
            assert_whole(&sketch, &found, 3.5, 16);
            prop_assert!(found.moved_rms_m >= without.bound_rms_m - 1e-9);
            let line = Outline::closed(&found.outline);
            prop_assert!(region::inside(&line, ground.boundary.as_ref().unwrap()));
            for keep_off in &ground.keep_offs {
                prop_assert!(region::distance_between_m(&line, &keep_off.outline) >= keep_off.clearance_m - 1e-6);
                let enclosed = keep_off.outline.points().any(|at| region::contains(&line, at));
                prop_assert!(keep_off.may_enclose || !enclosed);
            }
            // Turned together, sketch and ground turn the answer.
            let turn = |points: &[Point]| moved(points, turn_rad, false, (0.0, 0.0));
            let mut again = Dice(seed);
            let sketch = sized(&lumpy(&mut again, corners, 56.0, 0.4), 56.0);
            let ground = ground_of(&mut again, &sketch, turn);
            let outline = Outline::closed(&turn(&sketch));
            let there = fit(&FitRequest { sketch: &outline, ground: Some(&ground), ..open }).unwrap();
            let there_m = there.map_or(f64::INFINITY, |there| there.moved_rms_m);
            prop_assert!((there_m - found.moved_rms_m).abs() < 1e-4, "{} {}", there_m, found.moved_rms_m);
        }
    }
}
