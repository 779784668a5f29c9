//! Chains while their line is in the hand: each keeps its start, its direction and its order, so that no label of a net or
//! a post jumps under the hand. Once let go, the best chain is searched for as ever.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use geometry::{FixedStart, Outline, Placement, PlacementRequest};
use plan::{Plan, Run};

use crate::along;
use crate::model::{Lay, Workup};
use crate::slope::Heights;

/// A run's chain as it was when its line was taken hold of.
#[derive(Clone, Debug)]
struct Chain {
    run: Run,
    /// Its line on the ground; found as it is first led.
    line: OnceLock<Option<Outline>>,
    start: FixedStart,
    /// The kinds in chain order.
    order: Vec<String>,
}

/// The chains of all runs while something is in the hand.
#[derive(Clone, Debug, Default)]
pub(crate) struct Held {
    heights: Heights,
    /// By run.
    chains: BTreeMap<String, Chain>,
}

impl Held {
    /// The chains of a plan as they lie.
    pub(crate) fn of(plan: &Plan, worked: &Workup, heights: Heights) -> Self {
        let chain = |run: &Run, lay: &Lay| {
            let start = FixedStart { start_m: lay.start_m, reversed: lay.reversed };
            let order = lay.nets.iter().map(|net| net.kind.clone()).collect();
            Chain { run: run.clone(), line: OnceLock::new(), start, order }
        };
        let laid = plan.runs.iter().zip(&worked.runs).filter_map(|(run, worked)| Some((run, worked.lay.as_ref()?)));
        Self { heights, chains: laid.map(|(run, lay)| (run.id.clone(), chain(run, lay))).collect() }
    }

    /// The chain in the hand on the run's line as that is now; `None` where the line was not led anywhere, where the keeper
    /// fixed a start, where the nets are others, and where a pin would not hold.
    pub(crate) fn placed(&self, plan: &Plan, run: &Run, request: &PlacementRequest<'_>) -> Option<Placement> {
        let chain =
            self.chains.get(&run.id).filter(|chain| request.fixed.is_none() && chain.run.outline != run.outline)?;
        let kind = |id: &String| plan.store.nets.iter().position(|net| net.id == *id);
        let order: Vec<usize> = chain.order.iter().map(kind).collect::<Option<_>>()?;
        let sorted = |nets: &[usize]| {
            let mut nets = nets.to_vec();
            nets.sort_unstable();
            nets
        };
        if sorted(&order) != sorted(request.nets) || chain.run.closed() != run.closed() {
            return None;
        }
        let was = chain.line.get_or_init(|| along::laid(&chain.run, &self.heights)).as_ref()?;
        let by_side = chain.run.outline.len() == run.outline.len();
        let start_m = along::led_m([was, request.outline], by_side, chain.start.start_m);
        let start = FixedStart { start_m, ..chain.start };
        let placement = geometry::place_from(&PlacementRequest { nets: &order, ..*request }, start).ok()?;
        placement.pins.iter().all(|pin| pin.kept).then_some(placement)
    }
}
