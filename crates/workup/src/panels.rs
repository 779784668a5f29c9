//! Sides of a run counted in panels of its nets.
//!
//! Where every net of the run has the same equal panels a side is so many of them long, wherever its posts fall. Where
//! panels differ they are counted from the post nearest to the side's first corner on, as the chain lies now. Metres
//! along the ground wherever heights are known.

use geometry::guides::{Beside, Netting};
use plan::{Plan, Point, Run};

use crate::Known;
use crate::model::Lay;
use crate::slope::SideOnGround;

/// The one panel that all nets on the line are made of, metres; `None` where they differ or none lies.
fn like_panel_m(plan: &Plan, lay: &Lay) -> Option<f64> {
    let panels = lay.nets.iter().map(|net| {
        let kind = plan.net_kind(&net.kind)?;
        let count = kind.panel_count();
        (kind.panel_lengths_m.is_none() && count > 0).then(|| kind.length_m / count as f64)
    });
    let panels: Vec<f64> = panels.collect::<Option<_>>()?;
    let first = *panels.first()?;
    let like = first > 0.0 && first.is_finite() && panels.iter().all(|panel_m| (panel_m - first).abs() < 1e-9);
    like.then_some(first)
}

/// The lengths along the ground at which a side is whole panels.
#[derive(Clone, Debug, PartialEq)]
enum Marks {
    /// So many times the one panel.
    Like(f64),
    /// Where the posts stand from the one nearest to the side's first corner on.
    Chain(Vec<f64>),
}

impl Marks {
    /// From a corner on, as the chain lies now; `None` where the lay has no such corner to count from.
    fn of(plan: &Plan, lay: &Lay, corner: Point) -> Option<Self> {
        like_panel_m(plan, lay).map(Self::Like).or_else(|| posts_from(lay, corner).map(Self::Chain))
    }

    /// How many panels come nearest to a length.
    fn nearest(&self, length_m: f64) -> Option<u32> {
        match self {
            Self::Like(panel_m) => Some((length_m / panel_m).round().clamp(1.0, f64::from(u32::MAX)) as u32),
            Self::Chain(posts_m) => {
                let after = posts_m.partition_point(|&post_m| post_m < length_m);
                let off_m = |place: &usize| posts_m.get(*place).map_or(f64::INFINITY, |at| (at - length_m).abs());
                let nearest = [after.saturating_sub(1), after];
                let place = nearest.into_iter().min_by(|one, other| off_m(one).total_cmp(&off_m(other)))?;
                posts_m.get(place).and_then(|_| u32::try_from(place + 1).ok())
            }
        }
    }

    /// The length of so many; `None` where the nets have no so many.
    fn length_m(&self, panels: u32) -> Option<f64> {
        match self {
            Self::Like(panel_m) => (panels > 0).then(|| panel_m * f64::from(panels)),
            Self::Chain(posts_m) => posts_m.get(panels.checked_sub(1)? as usize).copied(),
        }
    }
}

/// Where its posts stand from the one nearest to a corner on, metres beyond that one.
fn posts_from(lay: &Lay, corner: Point) -> Option<Vec<f64>> {
    let &(_, corner_m) = lay.vertices.iter().find(|(at, _)| *at == corner)?;
    let mut posts: Vec<f64> = lay.posts.iter().map(|post| post.along_m).collect();
    posts.sort_by(f64::total_cmp);
    // The two posts of a join are one place.
    posts.dedup_by(|one, other| (*one - *other).abs() < geometry::MEET_M);
    let from_m =
        posts.iter().copied().min_by(|one, other| (one - corner_m).abs().total_cmp(&(other - corner_m).abs()))?;
    let ahead = |post_m: f64| if lay.closed { (post_m - from_m).rem_euclid(lay.line_m) } else { post_m - from_m };
    let mut ahead: Vec<f64> = posts.into_iter().map(ahead).filter(|&post_m| post_m > geometry::MEET_M).collect();
    ahead.sort_by(f64::total_cmp);
    Some(ahead)
}

/// The panels that a side of a run is long, from that corner on; `None` where they are not whole, to within what meets,
/// and where a part of the side has no netting.
pub fn of_side(plan: &Plan, lay: &Lay, corner: Point, side_m: f64) -> Option<u32> {
    let from_m = lay.vertices.iter().find(|(at, _)| *at == corner).map(|(_, along_m)| *along_m);
    if from_m.is_some_and(|from_m| !lay.is_netted(from_m, from_m + side_m)) {
        return None;
    }
    let marks = Marks::of(plan, lay, corner)?;
    let panels = marks.nearest(side_m)?;
    (marks.length_m(panels)? - side_m).abs().lt(&geometry::MEET_M).then_some(panels)
}

/// The length that so many panels have from that corner on, metres; `None` where the nets have no so many.
pub fn length_m(plan: &Plan, lay: &Lay, corner: Point, panels: u32) -> Option<f64> {
    Marks::of(plan, lay, corner)?.length_m(panels)
}

/// Two sides of a run counted in whole panels while a hand moves the corners between them: the one that leads there from a
/// corner that stays, and the one that leads on to another. As the chain lay and the ground was known when it was taken
/// hold of.
///
/// Where panels differ the side that leads on is not counted: where the chain meets it hangs on the very corner that moves.
#[derive(Clone, Debug, Default)]
pub struct Ruler {
    sides: [Option<(Marks, SideOnGround)>; 2],
}

impl Ruler {
    /// For two sides by their first corners.
    pub fn of(plan: &Plan, run: &Run, lay: &Lay, sides: [Option<usize>; 2], known: &mut Known) -> Self {
        let heights = known.surfaces.heights(plan, &mut Vec::new());
        let mut ruled = sides.map(|side| {
            let side = side?;
            let marks = Marks::of(plan, lay, *run.outline.get(side)?)?;
            Some((marks, SideOnGround::of(run, side, &heights)))
        });
        let [_, on] = &mut ruled;
        on.take_if(|(marks, _)| matches!(marks, Marks::Chain(_)));
        Self { sides: ruled }
    }

    fn side(&self, beside: Beside) -> Option<&(Marks, SideOnGround)> {
        let [before, after] = &self.sides;
        match beside {
            Beside::Before => before.as_ref(),
            Beside::After => after.as_ref(),
        }
    }
}

impl Netting for Ruler {
    fn panels(&self, beside: Beside, from: geometry::Point, to: geometry::Point) -> Option<u32> {
        let (marks, ground) = self.side(beside)?;
        marks.nearest(ground.along_m(from, to))
    }

    fn reach_m(&self, beside: Beside, from: geometry::Point, towards: geometry::Point, panels: u32) -> Option<f64> {
        let (marks, ground) = self.side(beside)?;
        ground.on_map_m(from, towards, marks.length_m(panels)?)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Depth, workup};
    use plan::{NetKind, Run, Store};

    /// A run of 40 by 30 with those nets from its first corner on.
    fn laid(kinds: &[NetKind], nets: &[&str]) -> (Plan, Lay) {
        let outline = [(0.0, 0.0), (40.0, 0.0), (40.0, 30.0), (0.0, 30.0)].map(Point::from).to_vec();
        let nets = Some(nets.iter().map(|id| (*id).to_owned()).collect());
        let run = Run { id: "run".to_owned(), outline, nets, start_m: Some(0.0), ..Run::default() };
        let store = Store { nets: kinds.to_vec(), ..Store::default() };
        let plan = Plan { store, runs: vec![run], ..Plan::default() };
        let lay = workup(&plan, Depth::Quick).runs.remove(0).lay.unwrap();
        (plan, lay)
    }

    fn kind(id: &str, length_m: f64, panels: u32) -> NetKind {
        NetKind::new(id, length_m, panels)
    }

    #[test]
    fn like_panels_are_counted_wherever_posts_fall() {
        let (plan, lay) = laid(&[kind("long", 50.0, 20), kind("short", 25.0, 10)], &["long", "long", "short", "short"]);
        let corner = Point::new(40.0, 0.0);
        assert_eq!(of_side(&plan, &lay, corner, 30.0), Some(12));
        assert_eq!(of_side(&plan, &lay, corner, 31.0), None);
        // Whole is what meets: to within a centimetre.
        assert_eq!(of_side(&plan, &lay, corner, 30.009), Some(12));
        assert_eq!(of_side(&plan, &lay, corner, 30.011), None);
        assert_eq!(length_m(&plan, &lay, corner, 7), Some(17.5));
        assert_eq!(length_m(&plan, &lay, corner, 0), None);
    }

    #[test]
    fn a_side_without_netting_has_no_panels_wherever_the_bare_stretch_lies() {
        let sides = [(0.0, 37.5), (37.5, 12.5), (50.0, 37.5), (87.5, 12.5)];
        let corners = [(0.0, 0.0), (37.5, 0.0), (37.5, 12.5), (0.0, 12.5)].map(Point::from);
        // 50 m of netting for 100 m of line: from the first corner on, against it, and over it.
        for (start_m, reversed, netted) in [
            (0.0, false, [true, true, false, false]),
            (0.0, true, [false, false, true, true]),
            (87.5, false, [true, false, false, true]),
            (50.0, true, [true, true, false, false]),
        ] {
            let run = Run {
                id: "run".to_owned(),
                outline: corners.to_vec(),
                nets: Some(vec!["long".to_owned()]),
                start_m: Some(start_m),
                reversed: Some(reversed),
                ..Run::default()
            };
            let store = Store { nets: vec![kind("long", 50.0, 20)], ..Store::default() };
            let plan = Plan { store, runs: vec![run], ..Plan::default() };
            let lay = workup(&plan, Depth::Quick).runs.remove(0).lay.unwrap();
            for ((corner, (from_m, side_m)), netted) in corners.into_iter().zip(sides).zip(netted) {
                let panels = of_side(&plan, &lay, corner, side_m);
                assert_eq!(panels.is_some(), netted, "from {start_m}, reversed {reversed}: side at {from_m} m");
            }
        }
    }

    #[test]
    fn unlike_panels_are_counted_along_the_chain() {
        // 50 m in fives from the first corner on, then 90 m in threes.
        let (plan, lay) = laid(&[kind("fives", 50.0, 10), kind("threes", 90.0, 30)], &["fives", "threes"]);
        assert_eq!(length_m(&plan, &lay, Point::new(0.0, 0.0), 8), Some(40.0));
        assert_eq!(of_side(&plan, &lay, Point::new(0.0, 0.0), 40.0), Some(8));
        // From 40 m on: two fives, then threes.
        let from = Point::new(40.0, 0.0);
        assert!((length_m(&plan, &lay, from, 4).unwrap() - 16.0).abs() < 1e-9);
        assert_eq!(length_m(&plan, &lay, from, 4000), None);
        assert_eq!(length_m(&plan, &lay, Point::new(1.0, 1.0), 4), None, "no corner");
    }

    /// Where a ruler's panels reach to from one corner on the way to a place.
    fn reached(ruler: &Ruler, from: (f64, f64), towards: (f64, f64), panels: u32) -> Option<Point> {
        let (from, towards) = (geometry::Point::from(from), geometry::Point::from(towards));
        let reach_m = ruler.reach_m(Beside::Before, from, towards, panels)?;
        Some(crate::place(from + (towards - from).unit() * reach_m))
    }

    /// Length along the ground of a run's side, as its workup has it.
    fn ground_m(plan: &Plan, side: usize) -> f64 {
        workup(plan, Depth::Quick).runs[0].slope.as_ref().unwrap().sides[side].surface_m
    }

    #[test]
    fn on_a_slope_panels_reach_as_far_as_the_worked_out_ground_says() {
        let (mut plan, lay) = laid(&[kind("long", 50.0, 20)], &["long", "long", "long"]);
        let height = |east_m: f64, north_m: f64, up_m: f64| plan::SpotHeight {
            at: Point::new(east_m, north_m),
            up_m,
            rest: plan::Rest::new(),
        };
        plan.heights =
            vec![height(-9.0, -9.0, 0.0), height(60.0, -9.0, 11.0), height(20.0, 13.0, 4.0), height(9.0, 60.0, 25.0)];
        for stated in [None, Some((Some(6.0), None)), Some((None, Some(4.0)))] {
            let mut plan = plan.clone();
            if let Some((rises_m, one_in)) = stated {
                let at = Point::new(40.0, 15.0);
                plan.runs[0].side_slopes = vec![plan::SideSlope { at, rises_m, one_in, rest: plan::Rest::new() }];
            }
            let ruler = Ruler::of(&plan, &plan.runs[0], &lay, [Some(1), Some(2)], &mut Known::default());
            for (panels, towards) in [(9, (44.0, 26.0)), (13, (40.0, 33.0)), (16, (29.0, 40.0))] {
                let to = reached(&ruler, (40.0, 0.0), towards, panels).unwrap();
                let mut moved = plan.clone();
                let mut outline = moved.runs[0].outline.clone();
                outline[2] = to;
                moved.runs[0] = moved.runs[0].reshaped(outline);
                let off_m = ground_m(&moved, 1) - 2.5 * f64::from(panels);
                assert!(off_m.abs() < 1e-9, "{panels} panels, {stated:?}: off by {off_m} m");
                let counted = ruler.panels(Beside::Before, crate::point(Point::new(40.0, 0.0)), crate::point(to));
                assert_eq!(counted, Some(panels));
            }
        }
    }

    #[test]
    fn unlike_panels_are_counted_up_to_the_corner_in_hand_and_not_beyond_it() {
        let (plan, lay) = laid(&[kind("fives", 50.0, 10), kind("threes", 90.0, 30)], &["fives", "threes"]);
        let ruler = Ruler::of(&plan, &plan.runs[0], &lay, [Some(1), Some(2)], &mut Known::default());
        // From 40 m on: two fives, then threes.
        let to = reached(&ruler, (40.0, 0.0), (40.0, 30.0), 6).unwrap();
        assert!((to.north_m - 22.0).abs() < 1e-9, "{to:?}");
        let mut moved = plan.clone();
        moved.runs[0].outline[2] = to;
        let lay = workup(&moved, Depth::Quick).runs.remove(0).lay.unwrap();
        assert_eq!(of_side(&moved, &lay, Point::new(40.0, 0.0), 22.0), Some(6), "the chain's start is stated");
        assert!(lay.posts.iter().any(|post| (post.along_m - 62.0).abs() < 1e-9), "and a post stands there");
        let (from, towards) = (geometry::Point::new(0.0, 30.0), geometry::Point::new(40.0, 30.0));
        assert_eq!(ruler.panels(Beside::After, from, towards), None);
    }
}
