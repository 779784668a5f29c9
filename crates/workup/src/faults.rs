//! Where a fault lands: the nearest place of the netting, or the nearest join for one in series there; and the line's
//! places, both ways.

use plan::{FaultKind, Point, Run};

use crate::model::Lay;

/// What a fault acts on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Landing {
    /// The place on the netting.
    pub at: Point,
    /// That place along the outline, metres.
    pub along_m: f64,
    /// How far from the wanted place it is, metres.
    pub off_m: f64,
    /// The net it is in, by its place in [`Lay::nets`]; for a join the one before it.
    pub net: usize,
    /// For a join the net behind it.
    pub behind: Option<usize>,
}

/// Why a fault lands nowhere.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoLanding {
    /// The line has no netting at the place that is nearest.
    NoNet,
    /// No two nets are joined on the line.
    NoJoin,
}

/// Where a fault of some kind lands that is wanted at a place.
pub fn land(run: &Run, lay: &Lay, kind: FaultKind, wanted: Point) -> Result<Landing, NoLanding> {
    let (along_m, off_m) = lay.nearest_m(wanted).ok_or(NoLanding::NoNet)?;
    let chain_m = lay.chain_m(along_m);
    let covered_m = lay.covered_m();
    if kind == FaultKind::Join {
        return joins(run, lay)
            .into_iter()
            .min_by(|one, other| lay.apart_m(one.0, chain_m).total_cmp(&lay.apart_m(other.0, chain_m)))
            .and_then(|(at_m, net, behind)| {
                let along_m = lay.along_m(at_m);
                let at = lay.place_at(along_m)?;
                let off_m = (at.east_m - wanted.east_m).hypot(at.north_m - wanted.north_m);
                Some(Landing { at, along_m, off_m, net, behind: Some(behind) })
            })
            .ok_or(NoLanding::NoJoin);
    }
    if chain_m > covered_m {
        return Err(NoLanding::NoNet);
    }
    let at = lay.place_at(along_m).ok_or(NoLanding::NoNet)?;
    let net = lay.nets.partition_point(|net| net.end_m <= chain_m).min(lay.nets.len().saturating_sub(1));
    if lay.nets.is_empty() {
        return Err(NoLanding::NoNet);
    }
    Ok(Landing { at, along_m, off_m, net, behind: None })
}

/// Joins that current passes: metres of the chain, the net before and the net behind. A gate that is only tied passes none.
fn joins(run: &Run, lay: &Lay) -> Vec<(f64, usize, usize)> {
    let covered_m = lay.covered_m();
    let nets = lay.nets.iter().enumerate().skip(1);
    let between = nets.filter(|(_, net)| net.start_m < covered_m).map(|(index, net)| (net.start_m, index - 1, index));
    let last = lay.nets.partition_point(|net| net.start_m < covered_m).saturating_sub(1);
    let closing = (lay.is_ring() && run.live_loop() && !lay.nets.is_empty()).then_some((0.0, last, 0));
    between.chain(closing).collect()
}

impl Lay {
    /// Whether the netting closes a ring.
    pub fn is_ring(&self) -> bool {
        self.closed && self.short_m < geometry::MEET_M
    }

    /// The place along the chain of one along the outline, metres.
    fn chain_m(&self, along_m: f64) -> f64 {
        let from_start_m = if self.reversed { self.start_m - along_m } else { along_m - self.start_m };
        if self.closed { from_start_m.rem_euclid(self.line_m) } else { from_start_m.clamp(0.0, self.line_m) }
    }

    fn along_m(&self, chain_m: f64) -> f64 {
        let along_m = if self.reversed { self.start_m - chain_m } else { self.start_m + chain_m };
        self.held_m(along_m)
    }

    /// Distance between two places of the chain, round the ring where it is one.
    fn apart_m(&self, one_m: f64, other_m: f64) -> f64 {
        let straight_m = (one_m - other_m).abs();
        if self.is_ring() { straight_m.min(self.line_m - straight_m) } else { straight_m }
    }

    /// A place along the outline, held to its ends or taken round the ring, metres.
    pub fn held_m(&self, along_m: f64) -> f64 {
        if self.closed && self.line_m > 0.0 {
            along_m.rem_euclid(self.line_m)
        } else {
            along_m.clamp(0.0, self.line_m.max(0.0))
        }
    }

    /// The sides: both ends, each with its place along the line.
    fn sides(&self) -> impl Iterator<Item = ((Point, f64), (Point, f64))> + '_ {
        let closing = self.vertices.last().copied().zip(self.vertices.first().copied());
        let closing = closing.filter(|_| self.closed).map(|(last, first)| (last, (first.0, self.line_m)));
        self.vertices.windows(2).map(|pair| (pair[0], pair[1])).chain(closing)
    }

    /// Where a place along the outline lies; `None` without a line.
    pub fn place_at(&self, along_m: f64) -> Option<Point> {
        let along_m = self.held_m(along_m);
        let (from, to) = self.sides().find(|(_, to)| along_m <= to.1).or_else(|| self.sides().last())?;
        let part = if to.1 > from.1 { ((along_m - from.1) / (to.1 - from.1)).clamp(0.0, 1.0) } else { 0.0 };
        let share = |from: f64, to: f64| from + (to - from) * part;
        Some(Point::new(share(from.0.east_m, to.0.east_m), share(from.0.north_m, to.0.north_m)))
    }

    /// The place along the outline nearest to one of the ground, and how far off it is, metres; `None` without a line.
    pub fn nearest_m(&self, wanted: Point) -> Option<(f64, f64)> {
        let off = |(from, to): ((Point, f64), (Point, f64))| {
            let (east, north) = (to.0.east_m - from.0.east_m, to.0.north_m - from.0.north_m);
            let (off_east, off_north) = (wanted.east_m - from.0.east_m, wanted.north_m - from.0.north_m);
            let squared = east * east + north * north;
            let part =
                if squared > 0.0 { ((off_east * east + off_north * north) / squared).clamp(0.0, 1.0) } else { 0.0 };
            (from.1 + (to.1 - from.1) * part, (off_east - east * part).hypot(off_north - north * part))
        };
        self.sides().map(off).filter(|found| found.1.is_finite()).min_by(|one, other| one.1.total_cmp(&other.1))
    }
}
