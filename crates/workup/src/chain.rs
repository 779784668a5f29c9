//! A run's netting as `electrical` sees it: stretches, joins, breaks and shorts along the chain.
//!
//! Places on the plan act at the nearest point of the line. Along the outline they are `along_m`, along the
//! chain `chain_m`; a ring's closing join is at the chain's start and counts as a join, and spare netting
//! hangs before it. Branches follow it in the order in which they were laid.
//! Joins with a resistance stand in the earthed lines as well, faults do not.

use electrical::{Branch, Chain, Closing, EarthedStretch, Join, Line, PartialCapacitance, Place, Short, Stretch};
use geometry::{Outline, Placement};
use plan::{FaultKind, Plan, Run};

use crate::branches::BranchLine;
use crate::lay;
use crate::model::Trouble;
use crate::point;

/// Radius of a twine of hair-fine wires, metres: the filaments lie on its surface (docs/sources.md, electrical 4.1).
const LINE_RADIUS_M: f64 = 1e-3;

/// A run's netting and what of it is to be read: its marks are the posts in order, then one a fault; those of a branch its
/// posts, then those folded back, then one a fault.
pub(crate) struct Netting {
    pub(crate) line: Line,
    /// Of the line's branches the first that was stated: spare netting comes before.
    pub(crate) first_branch: usize,
    /// The feed's place along the outline and the chain, metres.
    pub(crate) feed: (f64, f64),
    /// Each fault's place along the outline and the chain, metres.
    pub(crate) faults: Vec<(f64, f64)>,
    /// The same of each branch, along its own outline and chain.
    pub(crate) on_branches: Vec<Vec<(f64, f64)>>,
}

/// Electrical figures of one kind of net.
struct Kind {
    lines: usize,
    r_line_ohm_per_m: f64,
    /// Of the live lines to earth.
    c_f_per_m: f64,
    /// Of lines that are earthed: how many, and their capacitances.
    earthed: Option<(usize, PartialCapacitance)>,
}

impl Kind {
    fn stretch(&self, (from_m, to_m): (f64, f64), r_ohm_per_m: f64, g_s_per_m: f64) -> Stretch {
        Stretch { from_m, to_m, r_ohm_per_m, g_s_per_m, c_f_per_m: self.c_f_per_m }
    }

    /// The earthed lines beside a stretch.
    fn earthed(&self, from_m: f64, to_m: f64) -> Option<EarthedStretch> {
        let (lines, c) = self.earthed?;
        Some(EarthedStretch {
            from_m,
            to_m,
            r_ohm_per_m: self.r_line_ohm_per_m / lines as f64,
            c_f_per_m: c.earthed,
            to_live_f_per_m: c.between,
        })
    }
}

/// The electrical figures of all kinds, as far as the run uses them.
fn kinds(plan: &Plan, used: impl Fn(usize) -> bool) -> Result<Vec<Kind>, Trouble> {
    let mut kinds = Vec::with_capacity(plan.store.nets.len());
    for (index, net) in plan.store.nets.iter().enumerate() {
        let (live_m, earthed_m) = (net.live_line_heights_m(), net.earthed_line_heights_m());
        let c = if earthed_m.is_empty() {
            electrical::capacitance_per_m(live_m, LINE_RADIUS_M).map(|c| (c, None))
        } else {
            let partial = electrical::partial_capacitance_per_m(live_m, earthed_m, LINE_RADIUS_M);
            partial.map(|c| (c.live, Some((earthed_m.len(), c))))
        };
        let (c_f_per_m, earthed) = match c {
            Ok(c) => c,
            Err(_) if used(index) => return Err(Trouble::LiveLines { net: net.id.clone() }),
            Err(_) => (0.0, None),
        };
        let r_line_ohm_per_m = net.line_resistance_ohm_per_m();
        kinds.push(Kind { lines: live_m.len(), r_line_ohm_per_m, c_f_per_m, earthed });
    }
    Ok(kinds)
}

/// Turns a run into netting with the leakage that it states, or with one leakage everywhere.
pub(crate) fn netting(
    plan: &Plan,
    run: &Run,
    laid: &lay::Line,
    placement: &Placement,
    leakage_s_per_m: Option<f64>,
) -> Result<Netting, Trouble> {
    let outline = &laid.outline;
    let uses = |placement: &Placement, kind: usize| placement.nets.iter().any(|net| net.kind == kind);
    let kinds =
        kinds(plan, |kind| uses(placement, kind) || laid.branches.iter().any(|branch| uses(&branch.placement, kind)))?;

    let covered_m = placement.covered_m();
    let build = Build {
        run,
        outline,
        placement,
        kinds: &kinds,
        covered_m,
        leakage_s_per_m,
        leakage_factor: plan.ground.factors().leakage,
    };
    let faults: Vec<(f64, f64)> = run.faults.iter().map(|fault| build.chain_place(fault.at)).collect();
    let broken = build.broken_lines(&faults);

    let mut chain = Chain::default();
    build.stretches(&broken, covered_m, &mut chain);
    chain.earthed.joins = build.earthed_joins(build.joins().into_iter());
    chain.earthed.closing_ohm = run.join_ohm.unwrap_or(0.0);
    build.tried(&faults, &broken, &mut chain);

    let ring = placement.is_ring() && run.live_loop();
    let (joins, closing_ohm) = build.joined(build.joins(), &faults, ring);
    chain.joins = joins;

    for post in &placement.posts {
        let at_m = post.chain_m.min(covered_m);
        // A net's first post stands after its join, its last one before the next.
        chain.marks.push(if post.post == 0 { Place::after(at_m) } else { Place::before(at_m) });
    }
    for &(_, chain_m) in &faults {
        chain.marks.push(build.side_of(chain_m));
    }

    let feed = build.chain_place(run.feed_at.or(run.outline.first().copied()).unwrap_or_default());
    let mut branches: Vec<Branch> = build.spare(&broken).into_iter().collect();
    let first_branch = branches.len();
    let mut on_branches = Vec::with_capacity(laid.branches.len());
    for branch in &laid.branches {
        let (built, faults) = build.branch(branch);
        branches.push(built);
        on_branches.push(faults);
    }
    let line = Line {
        branches,
        chain,
        closing: if ring { Closing::Ring { ohm: closing_ohm } } else { Closing::Open },
        feed: Place::after(feed.1),
        lead_ohm: crate::lead::lead(plan, run).ohm,
    };
    Ok(Netting { line, first_branch, feed, faults, on_branches })
}

#[derive(Clone, Copy)]
struct Build<'a> {
    run: &'a Run,
    outline: &'a Outline,
    placement: &'a Placement,
    kinds: &'a [Kind],
    covered_m: f64,
    leakage_s_per_m: Option<f64>,
    /// What the ground today multiplies the stated leakage by.
    leakage_factor: f64,
}

impl Build<'_> {
    /// The nearest place of the line, along the outline and along the chain. A place in the gap of a chain
    /// that falls short acts at the nearer end of the netting.
    fn chain_place(&self, at: plan::Point) -> (f64, f64) {
        let (along_m, _) = self.outline.nearest_along(point(at));
        (along_m, self.chain_m_at(along_m))
    }

    /// The place along the chain of one along the outline.
    fn chain_m_at(&self, along_m: f64) -> f64 {
        let chain_m = self.placement.chain_at_m(along_m);
        if chain_m <= self.covered_m {
            return chain_m;
        }
        let to_start_m = if self.outline.is_closed() { self.placement.line_m - chain_m } else { f64::INFINITY };
        if to_start_m < chain_m - self.covered_m { 0.0 } else { self.covered_m }
    }

    fn side_of(&self, chain_m: f64) -> Place {
        if chain_m >= self.covered_m { Place::before(chain_m) } else { Place::after(chain_m) }
    }

    /// Distance between two places of the chain, round the ring where it is one.
    fn apart_m(&self, one_m: f64, other_m: f64) -> f64 {
        let straight_m = (one_m - other_m).abs();
        if self.placement.is_ring() { straight_m.min(self.covered_m - straight_m) } else { straight_m }
    }

    /// Joins between nets on the line, metres along the chain.
    fn joins(&self) -> Vec<f64> {
        self.placement.nets.iter().skip(1).map(|net| net.start_m).filter(|&at_m| at_m < self.covered_m).collect()
    }

    /// The net at a place of the chain.
    fn net_at(&self, chain_m: f64) -> Option<usize> {
        // Nets follow one another without a gap; what lies beyond the last one is its own.
        let nets = &self.placement.nets;
        let index = nets.partition_point(|net| net.end_m <= chain_m);
        Some(index.min(nets.len().checked_sub(1)?))
    }

    /// Broken live lines of each net.
    fn broken_lines(&self, faults: &[(f64, f64)]) -> Vec<usize> {
        let mut broken = vec![0_usize; self.placement.nets.len()];
        for (fault, &(_, chain_m)) in self.run.faults.iter().zip(faults) {
            if fault.kind == FaultKind::LineBreak
                && let Some(net) = self.net_at(chain_m)
            {
                broken[net] = broken[net].saturating_add(fault.lines.unwrap_or(1) as usize);
            }
        }
        broken
    }

    fn all_broken(&self, broken: &[usize], chain_m: f64) -> bool {
        self.net_at(chain_m).is_some_and(|net| broken[net] >= self.kinds[self.placement.nets[net].kind].lines)
    }

    /// Resistance of a net's live lines in parallel. All broken is a break at its place, not a resistance.
    fn r_ohm_per_m(&self, net: usize, broken: usize) -> f64 {
        let kind = &self.kinds[self.placement.nets[net].kind];
        let whole = if broken >= kind.lines { kind.lines } else { kind.lines - broken };
        kind.r_line_ohm_per_m / whole as f64
    }

    /// Joins of the earthed lines; one beside netting that has none joins nothing.
    fn earthed_joins(&self, at_m: impl Iterator<Item = f64>) -> Vec<Join> {
        let ohm = self.run.join_ohm.filter(|&ohm| ohm > 0.0 && self.kinds.iter().any(|kind| kind.earthed.is_some()));
        let Some(ohm) = ohm else { return Vec::new() };
        at_m.map(|at_m| Join { at_m, ohm }).collect()
    }

    /// Shorts, and what opens every live line.
    fn tried(&self, faults: &[(f64, f64)], broken: &[usize], chain: &mut Chain) {
        for (fault, &(_, chain_m)) in self.run.faults.iter().zip(faults) {
            let all_broken = fault.kind == FaultKind::LineBreak && self.all_broken(broken, chain_m);
            if fault.kind == FaultKind::Break || all_broken {
                chain.breaks.push(chain_m);
            }
            if fault.kind == FaultKind::Short {
                chain.shorts.push(Short { at: self.side_of(chain_m), ohm: fault.ohm.unwrap_or(0.0) });
            }
        }
    }

    /// The joins that conduct badly, of those at some places, and what the closing one of a ring has. A bad join lies at
    /// the nearest on the line.
    fn joined(&self, at_m: Vec<f64>, faults: &[(f64, f64)], ring: bool) -> (Vec<Join>, f64) {
        let own_ohm = self.run.join_ohm.unwrap_or(0.0);
        let mut join_ohm: Vec<(f64, f64)> = at_m.into_iter().map(|at_m| (at_m, own_ohm)).collect();
        let mut closing_ohm = own_ohm;
        for (fault, &(_, chain_m)) in self.run.faults.iter().zip(faults) {
            if fault.kind == FaultKind::Join {
                let ohm = fault.ohm.unwrap_or(0.0);
                let apart = |join: &(f64, f64)| self.apart_m(join.0, chain_m);
                let on_line = join_ohm.iter_mut().filter(|join| join.0 < self.covered_m);
                let nearest = on_line.min_by(|a, b| apart(a).total_cmp(&apart(b)));
                let closing_m = if ring { self.apart_m(0.0, chain_m) } else { f64::INFINITY };
                match nearest {
                    Some((at_m, sum)) if self.apart_m(*at_m, chain_m) <= closing_m => *sum += ohm,
                    _ => closing_ohm += ohm,
                }
            }
        }
        let joins = join_ohm.into_iter().filter(|(_, ohm)| *ohm > 0.0).map(|(at_m, ohm)| Join { at_m, ohm });
        (joins.collect(), closing_ohm)
    }

    /// Leakage where no zone is, siemens per metre.
    fn plain_leakage(&self) -> f64 {
        self.leakage_s_per_m.unwrap_or(self.run.leakage_s_per_m() * self.leakage_factor)
    }

    /// The netting up to a place of the chain, cut where a net or a zone of leakage ends; zones are on the line alone.
    fn stretches(&self, broken: &[usize], end_m: f64, chain: &mut Chain) {
        let mut cuts_m = vec![0.0, end_m];
        cuts_m.extend(self.placement.nets.iter().map(|net| net.end_m));
        if self.leakage_s_per_m.is_none() && !self.run.leakage_zones.is_empty() {
            cuts_m.push(self.covered_m);
            let ends = self.run.leakage_zones.iter().flat_map(|zone| [zone.from_m, zone.to_m]);
            cuts_m.extend(ends.map(|along_m| self.placement.chain_at_m(along_m)));
        }
        cuts_m.retain(|&at_m| (0.0..=end_m).contains(&at_m));
        cuts_m.sort_by(f64::total_cmp);
        // A sliver thinner than the tolerance of places joins its neighbour.
        cuts_m.dedup_by(|next, kept| *next - *kept < electrical::circuit::PLACE_TOLERANCE_M);
        if let Some(last) = cuts_m.last_mut() {
            *last = end_m;
        }
        for pair in cuts_m.windows(2) {
            let middle_m = 0.5 * (pair[0] + pair[1]);
            let Some(net) = self.net_at(middle_m) else { continue };
            let kind = &self.kinds[self.placement.nets[net].kind];
            let g_s_per_m = if middle_m > self.covered_m {
                self.plain_leakage()
            } else {
                self.leakage_at(self.placement.along_m(middle_m))
            };
            let between_m = (pair[0], pair[1]);
            chain.stretches.push(kind.stretch(between_m, self.r_ohm_per_m(net, broken[net]), g_s_per_m));
            chain.earthed.stretches.extend(kind.earthed(pair[0], pair[1]));
        }
    }

    /// Leakage at a place along the outline; of overlapping zones the later counts.
    fn leakage_at(&self, along_m: f64) -> f64 {
        if let Some(everywhere) = self.leakage_s_per_m {
            return everywhere;
        }
        let zone = self.run.leakage_zones.iter().rev().find(|zone| {
            if zone.from_m <= zone.to_m {
                zone.from_m <= along_m && along_m < zone.to_m
            } else {
                along_m >= zone.from_m || along_m < zone.to_m
            }
        });
        zone.map_or(self.run.leakage_s_per_m(), |zone| zone.s_per_m) * self.leakage_factor
    }

    /// The netting beyond the line's end, an open branch there.
    fn spare(&self, broken: &[usize]) -> Option<Branch> {
        if !self.placement.has_spare() {
            return None;
        }
        let g_s_per_m = self.plain_leakage();
        let mut chain = Chain::default();
        let mut from_m = 0.0;
        for (index, net) in self.placement.nets.iter().enumerate().filter(|(_, net)| net.end_m > self.covered_m) {
            let to_m = net.end_m - self.covered_m;
            if let Some(ohm) = self.run.join_ohm.filter(|&ohm| ohm > 0.0 && net.start_m >= self.covered_m) {
                chain.joins.push(Join { at_m: from_m, ohm });
                chain.earthed.joins.push(Join { at_m: from_m, ohm });
            }
            let kind = &self.kinds[net.kind];
            chain.stretches.push(kind.stretch((from_m, to_m), self.r_ohm_per_m(index, broken[index]), g_s_per_m));
            chain.earthed.stretches.extend(kind.earthed(from_m, to_m));
            from_m = to_m;
        }
        // Every post is a node, read or not: long spare of high resistance is cut there.
        let posts = self.placement.spare_posts.iter().map(|post| post.chain_m - self.covered_m);
        chain.marks.extend(posts.filter(|&at_m| at_m > 0.0 && at_m <= from_m).map(Place::before));
        (!chain.stretches.is_empty()).then(|| Branch { at: Place::before(self.covered_m), chain })
    }

    /// A branch: all of its netting, doubled back or not; its first net is tied to the line without a join's resistance.
    /// Zones and faults act on it as they do on a run's line; each fault's place along its outline and chain, metres.
    fn branch(&self, branch: &BranchLine) -> (Branch, Vec<(f64, f64)>) {
        let at = self.side_of(self.chain_m_at(branch.from_m));
        let placement = &branch.placement;
        let alone = self.run.branches[branch.stated].alone(self.run);
        let length_m = placement.nets.last().map_or(0.0, |net| net.end_m);
        let covered_m = placement.covered_m().min(length_m);
        let own = Build { run: &alone, outline: &branch.outline, placement, covered_m, ..*self };
        let faults: Vec<(f64, f64)> = alone.faults.iter().map(|fault| own.chain_place(fault.at)).collect();
        let broken = own.broken_lines(&faults);
        let mut chain = Chain::default();
        own.stretches(&broken, length_m, &mut chain);
        own.tried(&faults, &broken, &mut chain);
        let joins: Vec<f64> = placement.nets.iter().skip(1).map(|net| net.start_m).collect();
        chain.joins = own.joined(joins.clone(), &faults, false).0;
        chain.earthed.joins = own.earthed_joins(joins.into_iter());
        let side = |post: &geometry::Post| {
            let at_m = post.chain_m.min(length_m);
            if post.post == 0 { Place::after(at_m) } else { Place::before(at_m) }
        };
        chain.marks.extend(placement.posts.iter().chain(&placement.spare_posts).map(side));
        chain.marks.extend(faults.iter().map(|&(_, chain_m)| own.side_of(chain_m)));
        (Branch { at, chain }, faults)
    }
}
