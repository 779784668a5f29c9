//! Runs that share ground: options of one plan often lie over each other.

use plan::{Plan, Point, RunStatus};

use super::track::{inside, middle};

/// For each run of a plan, the runs whose ground overlaps its own; runs that only touch do not, nor do past ones.
pub(super) fn rivals(plan: &Plan) -> Vec<Vec<usize>> {
    let grounds: Vec<Option<Ground<'_>>> = plan
        .runs
        .iter()
        .map(|run| if run.status == RunStatus::Past { None } else { Ground::new(&run.outline) })
        .collect();
    let share = |a: usize, b: usize| match (&grounds[a], &grounds[b]) {
        (Some(a), Some(b)) => a.overlaps(b),
        _ => false,
    };
    let all = 0..plan.runs.len();
    all.clone().map(|run| all.clone().filter(|&other| other != run && share(run, other)).collect()).collect()
}

/// For each option of a plan, the runs along whose sides one of its own lies for some way: it waits for the netting of
/// those that stand, and of the one that is worked on.
pub(super) fn waiting(plan: &Plan) -> Vec<Vec<usize>> {
    let grounds: Vec<Option<Ground<'_>>> = plan
        .runs
        .iter()
        .map(|run| if run.status == RunStatus::Past { None } else { Ground::new(&run.outline) })
        .collect();
    let beside = |run: usize, other: usize| match (&grounds[run], &grounds[other]) {
        (Some(one), Some(two)) => run != other && one.lies_beside(two),
        _ => false,
    };
    let all = 0..plan.runs.len();
    let of = |run: usize| match plan.runs[run].status {
        RunStatus::Option => all.clone().filter(|&other| beside(run, other)).collect(),
        _ => Vec::new(),
    };
    all.clone().map(of).collect()
}

/// Sides that lie on each other for less than this are taken to meet in a corner, metres.
const LEAST_BESIDE_M: f64 = 0.5;
/// And a side farther off than this lies beside, not on, the other, metres.
const ON_SIDE_M: f64 = 0.02;

fn runs_along((from, to): (Point, Point), (start, end): (Point, Point)) -> bool {
    let (east, north) = (to.east_m - from.east_m, to.north_m - from.north_m);
    let length_m = east.hypot(north);
    if length_m < LEAST_BESIDE_M {
        return false;
    }
    let off_m = |at: Point| turn(from, to, at).abs() / length_m;
    let along_m = |at: Point| ((at.east_m - from.east_m) * east + (at.north_m - from.north_m) * north) / length_m;
    let (one_m, other_m) = (along_m(start), along_m(end));
    let shared_m = one_m.max(other_m).min(length_m) - one_m.min(other_m).max(0.0);
    off_m(start) < ON_SIDE_M && off_m(end) < ON_SIDE_M && shared_m > LEAST_BESIDE_M
}

fn sides(outline: &[Point]) -> Vec<(Point, Point)> {
    let next = outline.iter().skip(1).chain(outline.first());
    outline.iter().copied().zip(next.copied()).collect()
}

/// An outline with its bounds.
struct Ground<'a> {
    outline: &'a [Point],
    low: Point,
    high: Point,
}

impl<'a> Ground<'a> {
    fn new(outline: &'a [Point]) -> Option<Self> {
        let (mut low, mut high) = (*outline.first()?, *outline.first()?);
        for place in outline {
            low = Point::new(low.east_m.min(place.east_m), low.north_m.min(place.north_m));
            high = Point::new(high.east_m.max(place.east_m), high.north_m.max(place.north_m));
        }
        Some(Self { outline, low, high })
    }

    fn overlaps(&self, other: &Self) -> bool {
        let apart = self.low.east_m >= other.high.east_m
            || other.low.east_m >= self.high.east_m
            || self.low.north_m >= other.high.north_m
            || other.low.north_m >= self.high.north_m;
        if apart {
            return false;
        }
        let holds =
            |outer: &Self, inner: &Self| middle(inner.outline).is_some_and(|middle| inside(outer.outline, middle.0));
        holds(self, other) || holds(other, self) || self.crosses(other)
    }

    /// Whether a side of one lies on a side of the other for some way.
    fn lies_beside(&self, other: &Self) -> bool {
        let apart = self.low.east_m > other.high.east_m + ON_SIDE_M
            || other.low.east_m > self.high.east_m + ON_SIDE_M
            || self.low.north_m > other.high.north_m + ON_SIDE_M
            || other.low.north_m > self.high.north_m + ON_SIDE_M;
        if apart {
            return false;
        }
        let theirs = sides(other.outline);
        sides(self.outline).into_iter().any(|side| theirs.iter().any(|&other| runs_along(side, other)))
    }

    /// Whether a side of one passes through a side of the other; touching does not count.
    fn crosses(&self, other: &Self) -> bool {
        let theirs = sides(other.outline);
        sides(self.outline).into_iter().any(|(a, b)| {
            theirs.iter().any(|&(c, d)| {
                turn(a, b, c) * turn(a, b, d) < -LEAST_TURN_M4 && turn(c, d, a) * turn(c, d, b) < -LEAST_TURN_M4
            })
        })
    }
}

/// Sides that cross by less than this are taken to touch: about a centimetre on sides of ten metres.
const LEAST_TURN_M4: f64 = 0.01;

/// Twice the area of a triangle, positive where it turns left, square metres.
fn turn(a: Point, b: Point, c: Point) -> f64 {
    (b.east_m - a.east_m) * (c.north_m - a.north_m) - (b.north_m - a.north_m) * (c.east_m - a.east_m)
}

#[cfg(test)]
mod tests {
    use plan::{Plan, Point, Run, RunStatus};

    use super::{rivals, waiting};

    fn square(id: &str, east_m: f64, status: RunStatus) -> Run {
        let corner = |east: f64, north: f64| Point::new(east_m + east, north);
        let outline = vec![corner(0.0, 0.0), corner(10.0, 0.0), corner(10.0, 10.0), corner(0.0, 10.0)];
        Run { id: id.into(), outline, status, ..Run::default() }
    }

    #[test]
    fn runs_that_overlap_are_rivals_and_neighbours_are_not() {
        let option = RunStatus::Option;
        let runs = [(0.0, option), (4.0, option), (14.0, option), (0.5, RunStatus::Past)];
        let runs = runs.iter().enumerate().map(|(index, &(east_m, status))| square(&index.to_string(), east_m, status));
        let plan = Plan { runs: runs.collect(), ..Plan::default() };
        // The third shares a side with the second and no ground.
        assert_eq!(rivals(&plan), [vec![1], vec![0], vec![], vec![]]);
    }

    #[test]
    fn an_option_waits_for_the_run_that_it_shares_a_side_with() {
        let runs = [(0.0, RunStatus::Standing), (10.0, RunStatus::Option), (20.5, RunStatus::Option)];
        let runs = runs.iter().enumerate().map(|(index, &(east_m, status))| square(&index.to_string(), east_m, status));
        let mut plan = Plan { runs: runs.collect(), ..Plan::default() };
        assert_eq!(waiting(&plan), [vec![], vec![0], vec![]]);
        // Of two options each would use the other's side.
        plan.runs[0].status = RunStatus::Option;
        assert_eq!(waiting(&plan), [vec![1], vec![0], vec![]]);
        plan.runs[0].status = RunStatus::Past;
        assert_eq!(waiting(&plan), [const { Vec::<usize>::new() }; 3]);
    }
}
