//! Sides of a run counted in panels of its nets.
//!
//! Where every net of the run has the same equal panels a side is so many of them long, wherever its posts fall. Where
//! panels differ they are counted from the post nearest to the side's first corner on, as the chain lies now. Metres
//! along the ground wherever heights are known.

use plan::{Plan, Point};

use crate::model::Lay;

/// A side this near to whole panels is so many, metres.
const WHOLE_M: f64 = 1e-3;

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

/// The panels that a side of a run is long, from that corner on; `None` where they are not whole.
pub fn of_side(plan: &Plan, lay: &Lay, corner: Point, side_m: f64) -> Option<u32> {
    if let Some(panel_m) = like_panel_m(plan, lay) {
        let count = (side_m / panel_m).round();
        let whole = count >= 1.0 && count < f64::from(u32::MAX) && (count * panel_m - side_m).abs() < WHOLE_M;
        return whole.then_some(count as u32);
    }
    let place = posts_from(lay, corner)?.into_iter().position(|post_m| (post_m - side_m).abs() < WHOLE_M)?;
    u32::try_from(place + 1).ok()
}

/// The length that so many panels have from that corner on, metres; `None` where the nets have no so many.
pub fn length_m(plan: &Plan, lay: &Lay, corner: Point, panels: u32) -> Option<f64> {
    match like_panel_m(plan, lay) {
        Some(panel_m) => (panels > 0).then(|| panel_m * f64::from(panels)),
        None => posts_from(lay, corner)?.get(panels.checked_sub(1)? as usize).copied(),
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
        assert_eq!(length_m(&plan, &lay, corner, 7), Some(17.5));
        assert_eq!(length_m(&plan, &lay, corner, 0), None);
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
}
