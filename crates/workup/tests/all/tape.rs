//! Corners by tape, of the run and of what hangs on it.

use plan::{Branch, NetKind, Plan, Point, Run, TapeLetter, TapePoint};
use workup::tape::{KnownPlace, TapedFrom, TapedRun, known, taped};

/// A square of 40 m with a branch from the middle of its second side: 20 m out, then 10 m north.
fn farm() -> Plan {
    let at = |places: &[(f64, f64)]| places.iter().copied().map(Point::from).collect::<Vec<_>>();
    let mut plan = Plan::default();
    plan.store.nets.push(NetKind { count: Some(8), ..NetKind::new("long", 40.0, 16) });
    plan.runs.push(Run {
        id: "run".into(),
        outline: at(&[(0.0, 0.0), (40.0, 0.0), (40.0, 40.0), (0.0, 40.0)]),
        branches: vec![Branch {
            from_m: 60.0,
            outline: at(&[(40.0, 20.0), (60.0, 20.0), (60.0, 30.0)]),
            nets: vec!["long".into()],
            ..Branch::default()
        }],
        ..Run::default()
    });
    plan
}

fn of(plan: &Plan) -> TapedRun {
    taped(plan, &plan.runs[0]).expect("it is a line")
}

fn is_near(one: f64, other: f64) -> bool {
    (one - other).abs() < 1e-9
}

#[test]
fn a_branch_hangs_between_two_corners_and_its_own_are_taped_from_what_stands() {
    let plan = farm();
    let set = of(&plan);
    let [branch] = &set.branches[..] else { panic!("{:?}", set.branches) };
    assert_eq!((branch.branch, branch.corners.len()), (0, 3));
    // The middle of a side of 40 m.
    let foot = &branch.corners[0];
    assert_eq!(foot.tapes, [(TapedFrom::Corner(1), 20.0), (TapedFrom::Corner(2), 20.0)]);
    assert_eq!((foot.corner, foot.left, foot.next_m), (0, None, Some(20.0)));
    // East of the way from the foot south to corner 2, which is its left; the diagonal of 20 m by 20 m.
    let second = &branch.corners[1];
    assert_eq!(second.tapes[0], (TapedFrom::OfBranch(0), 20.0));
    assert_eq!(second.tapes[1].0, TapedFrom::Corner(1));
    assert!(is_near(second.tapes[1].1, 20.0 * 2_f64.sqrt()), "{second:?}");
    assert_eq!(second.left, Some(true));
    // Whatever it is taped from, that is how far it is.
    let run = &plan.runs[0];
    for corner in &branch.corners {
        let at = run.branches[0].outline[corner.corner];
        for (from, length_m) in &corner.tapes {
            let from = match from {
                TapedFrom::Corner(corner) => run.outline[*corner],
                TapedFrom::OfBranch(corner) => run.branches[0].outline[*corner],
                TapedFrom::Known(_) => panic!("nothing is known"),
            };
            let far_m = (at.east_m - from.east_m).hypot(at.north_m - from.north_m);
            assert!(is_near(far_m, *length_m), "{corner:?}");
        }
    }
    assert_eq!(branch.corners[2].next_m, None);
}

#[test]
fn the_run_itself_is_set_as_without_the_branch() {
    let with = of(&farm());
    let mut bare = farm();
    bare.runs[0].branches.clear();
    let without = of(&bare);
    assert_eq!((&with.corners, with.check), (&without.corners, without.check));
    assert!(without.branches.is_empty());
}

#[test]
fn known_places_serve_a_branch_too_and_one_that_is_no_line_is_left_out() {
    let mut plan = farm();
    let known = |name: &str, at: (f64, f64)| TapePoint { name: name.to_owned(), at: at.into(), ..TapePoint::default() };
    plan.tape_points = vec![known("gatepost", (70.0, 10.0)), known("oak", (70.0, 50.0))];
    let set = of(&plan);
    let far = &set.branches[0].corners[2];
    // (60, 30) from (70, 10) and (70, 50): both 10 by 20.
    let side = 500_f64.sqrt();
    assert!(far.known_m.iter().all(|&metres| is_near(metres, side)), "{far:?}");
    assert_eq!(far.tapes.iter().map(|tape| tape.0).collect::<Vec<_>>(), [TapedFrom::Known(0), TapedFrom::Known(1)]);
    plan.runs[0].branches[0].outline.truncate(1);
    assert!(of(&plan).branches.is_empty());
}

#[test]
fn a_known_place_keeps_its_letter_and_without_letters_the_first_two_apart_count() {
    let mut plan = farm();
    let point = |east_m: f64, letter| TapePoint { at: Point::new(east_m, -10.0), letter, ..TapePoint::default() };
    let (p, q) = (Some(TapeLetter::P), Some(TapeLetter::Q));
    type Stated<'a> = &'a [(f64, Option<TapeLetter>)];
    type Counts<'a> = &'a [(usize, TapeLetter)];
    let cases: [(Stated<'_>, Counts<'_>); 7] = [
        (&[], &[]),
        (&[(0.0, None), (0.0, None), (9.0, None), (20.0, None)], &[(0, TapeLetter::P), (2, TapeLetter::Q)]),
        // Stated in any order; P comes first.
        (&[(0.0, q), (9.0, None), (20.0, p)], &[(2, TapeLetter::P), (0, TapeLetter::Q)]),
        // P is gone: Q is Q, and one without a letter takes the place of none.
        (&[(9.0, q), (20.0, None)], &[(0, TapeLetter::Q)]),
        (&[(9.0, None), (20.0, p)], &[(1, TapeLetter::P)]),
        // Of two with one letter the first; of two in one place the first.
        (&[(9.0, p), (20.0, p)], &[(0, TapeLetter::P)]),
        (&[(9.0, p), (9.0, q)], &[(0, TapeLetter::P)]),
    ];
    for (points, want) in cases {
        plan.tape_points = points.iter().map(|&(east_m, letter)| point(east_m, letter)).collect();
        let want: Vec<KnownPlace> = want.iter().map(|&(point, letter)| KnownPlace { point, letter }).collect();
        assert_eq!(known(&plan), want, "{points:?}");
        let set = of(&plan);
        assert_eq!(set.known, want);
        // Distances are told in the order of what counts.
        let first = plan.runs[0].outline[set.corners[0].corner];
        let metres = want.iter().map(|known| {
            let at = plan.tape_points[known.point].at;
            (at.east_m - first.east_m).hypot(at.north_m - first.north_m)
        });
        assert!(metres.eq(set.corners[0].known_m.iter().copied()), "{points:?}");
        assert!((0..want.len()).all(|known| set.is_taped_from(known)) && !set.is_taped_from(want.len()), "{points:?}");
    }
}
