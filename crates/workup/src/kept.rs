//! What one workup leaves for the next: the surface of heights, triangulated once for as long as they are the same.
//!
//! A workup is the same with it as without: it is looked up by the heights themselves, never by when they came. A grid
//! that a plan shares with its copies is known by being the same one, spot heights by their values.

use std::sync::Arc;

use plan::{HeightGrid, Plan, SpotHeight};

use crate::model::Trouble;
use crate::slope::Heights;

/// What is kept from one workup for the next; cheap to copy.
#[derive(Clone, Debug, Default)]
pub(crate) struct Kept(Option<Arc<Surfaces>>);

#[derive(Debug)]
struct Surfaces {
    spots: Vec<SpotHeight>,
    grid: Option<Arc<HeightGrid>>,
    heights: Heights,
    troubles: Vec<Trouble>,
}

impl Kept {
    /// The heights of a plan, ready to be looked up; what is wrong with them is added to the troubles.
    pub(crate) fn heights(&mut self, plan: &Plan, troubles: &mut Vec<Trouble>) -> Heights {
        let same = |kept: &Surfaces| kept.grid == plan.ground.height_grid && kept.spots == plan.heights;
        if let Some(kept) = self.0.as_deref().filter(|kept| same(kept)) {
            troubles.extend(kept.troubles.iter().cloned());
            return kept.heights.clone();
        }
        let mut own = Vec::new();
        let heights = Heights::of(plan, &mut own);
        troubles.extend(own.iter().cloned());
        self.0 = Some(Arc::new(Surfaces {
            spots: plan.heights.clone(),
            grid: plan.ground.height_grid.clone(),
            heights: heights.clone(),
            troubles: own,
        }));
        heights
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Depth, Known, knowing, workup};
    use plan::{NetKind, Point, Rest, Run};

    fn spot(east_m: f64, north_m: f64, up_m: f64) -> SpotHeight {
        SpotHeight { at: Point::new(east_m, north_m), up_m, rest: Rest::new() }
    }

    fn sloped() -> Plan {
        let mut plan = Plan::default();
        plan.store.nets.push(NetKind { count: Some(3), ..NetKind::new("long", 50.0, 14) });
        let outline = [(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)].map(Point::from).to_vec();
        plan.runs.push(Run { id: "run".to_owned(), outline, ..Run::default() });
        plan.heights = vec![spot(-5.0, -5.0, 0.0), spot(40.0, 0.0, 6.0), spot(0.0, 40.0, 2.0), spot(12.0, 11.0, 3.0)];
        plan
    }

    fn grid(up_m: Vec<Option<f64>>) -> Arc<HeightGrid> {
        let south_west = Point::new(-10.0, -10.0);
        Arc::new(HeightGrid { south_west, cell_m: 50.0, columns: 2, up_m, rest: Rest::new() })
    }

    #[test]
    fn a_workup_is_the_same_with_what_is_kept_whatever_that_is() {
        let mut plans = vec![sloped()];
        let mut change = |change: &dyn Fn(&mut Plan)| {
            let mut plan = plans[plans.len() - 1].clone();
            change(&mut plan);
            plans.push(plan);
        };
        change(&|plan| plan.runs[0].outline[1].east_m = 26.0);
        change(&|plan| plan.heights[3].up_m = 5.0);
        change(&|plan| plan.ground.height_grid = Some(grid(vec![Some(0.0), Some(3.0), Some(1.0), Some(2.0)])));
        change(&|plan| plan.ground.height_grid = Some(grid(vec![Some(0.0), Some(3.0), Some(1.0), Some(9.0)])));
        change(&|plan| plan.ground.height_grid = Some(grid(vec![Some(0.0), Some(3.0), Some(1.0)])));
        change(&|plan| plan.heights.clear());
        change(&|plan| plan.ground.height_grid = None);
        let mut known = Known::default();
        for plan in plans.iter().chain(plans.iter().rev()) {
            for _ in 0..2 {
                assert_eq!(knowing(plan, Depth::Quick, &mut known), workup(plan, Depth::Quick));
            }
        }
    }

    #[test]
    fn heights_are_triangulated_once_for_as_long_as_they_are_the_same() {
        let (mut plan, mut known) = (sloped(), Known::default());
        plan.ground.height_grid = Some(grid(vec![Some(0.0), Some(3.0), Some(1.0), Some(2.0)]));
        let mut surface = |plan: &Plan| {
            knowing(plan, Depth::Quick, &mut known);
            known.surfaces.0.clone().unwrap()
        };
        let first = surface(&plan);
        // A drag of two hundred frames, each on a copy of the plan as the window makes them.
        for step in 0..200 {
            plan = plan.clone();
            plan.runs[0].outline[2] = Point::new(25.0 + 0.01 * f64::from(step), 25.0);
            assert!(Arc::ptr_eq(&surface(&plan), &first), "frame {step}");
        }
        plan.heights[0].up_m = 1.0;
        let other = surface(&plan);
        assert!(!Arc::ptr_eq(&other, &first) && Arc::ptr_eq(&surface(&plan), &other));
        // The copies share the grid.
        assert!(Arc::ptr_eq(plan.ground.height_grid.as_ref().unwrap(), first.grid.as_ref().unwrap()));
    }
}
