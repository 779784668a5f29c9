//! A run's netting as `electrical` sees it: stretches, joins, breaks and shorts along the chain.
//!
//! Places on the plan act at the nearest point of the line. Along the outline they are `along_m`, along the
//! chain `chain_m`; a ring's closing join is at the chain's start and counts as a join, and spare netting
//! hangs before it.

use electrical::{Branch, Chain, Closing, Join, Line, Place, Short, Stretch};
use geometry::{Outline, Placement};
use plan::{FaultKind, Plan, Run};

use crate::model::Trouble;
use crate::point;

/// Radius of a twine of hair-fine wires, metres: the filaments lie on its surface (docs/sources.md, electrical 4.1).
const LINE_RADIUS_M: f64 = 1e-3;

/// A run's netting and what of it is to be read: its marks are the posts in order, then one a fault.
pub(crate) struct Netting {
    pub(crate) line: Line,
    /// The feed's place along the outline and the chain, metres.
    pub(crate) feed: (f64, f64),
    /// Each fault's place along the outline and the chain, metres.
    pub(crate) faults: Vec<(f64, f64)>,
}

/// Electrical figures of one kind of net.
struct Kind {
    lines: usize,
    r_line_ohm_per_m: f64,
    c_f_per_m: f64,
}

/// Turns a run into netting with the leakage that it states, or with one leakage everywhere.
pub(crate) fn netting(
    plan: &Plan,
    run: &Run,
    outline: &Outline,
    placement: &Placement,
    leakage_s_per_m: Option<f64>,
) -> Result<Netting, Trouble> {
    let mut kinds = Vec::with_capacity(plan.store.nets.len());
    for (index, net) in plan.store.nets.iter().enumerate() {
        let heights_m = net.live_line_heights_m();
        let used = placement.nets.iter().any(|laid| laid.kind == index);
        let c_f_per_m = match electrical::capacitance_per_m(heights_m, LINE_RADIUS_M) {
            Ok(c_f_per_m) => c_f_per_m,
            Err(_) if used => return Err(Trouble::LiveLines { net: net.id.clone() }),
            Err(_) => 0.0,
        };
        kinds.push(Kind { lines: heights_m.len(), r_line_ohm_per_m: net.line_resistance_ohm_per_m(), c_f_per_m });
    }

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

    let mut chain = Chain { stretches: build.stretches(&broken), ..Chain::default() };
    let mut breaks: Vec<f64> = Vec::new();
    for (fault, &(_, chain_m)) in run.faults.iter().zip(&faults) {
        let all_broken = fault.kind == FaultKind::LineBreak && build.all_broken(&broken, chain_m);
        if fault.kind == FaultKind::Break || all_broken {
            breaks.push(chain_m);
        }
        if fault.kind == FaultKind::Short {
            chain.shorts.push(Short { at: build.side_of(chain_m), ohm: fault.ohm.unwrap_or(0.0) });
        }
    }
    chain.breaks = breaks;

    let ring = placement.is_ring() && run.live_loop();
    let mut join_ohm: Vec<(f64, f64)> =
        build.joins().into_iter().map(|at_m| (at_m, run.join_ohm.unwrap_or(0.0))).collect();
    let mut closing_ohm = run.join_ohm.unwrap_or(0.0);
    for (fault, &(_, chain_m)) in run.faults.iter().zip(&faults) {
        if fault.kind == FaultKind::Join {
            let ohm = fault.ohm.unwrap_or(0.0);
            let nearest =
                join_ohm.iter_mut().min_by(|a, b| build.apart_m(a.0, chain_m).total_cmp(&build.apart_m(b.0, chain_m)));
            let closing_m = if ring { build.apart_m(0.0, chain_m) } else { f64::INFINITY };
            match nearest {
                Some((at_m, sum)) if build.apart_m(*at_m, chain_m) <= closing_m => *sum += ohm,
                _ => closing_ohm += ohm,
            }
        }
    }
    chain.joins = join_ohm.into_iter().filter(|(_, ohm)| *ohm > 0.0).map(|(at_m, ohm)| Join { at_m, ohm }).collect();

    for post in &placement.posts {
        let at_m = post.chain_m.min(covered_m);
        // A net's first post stands after its join, its last one before the next.
        chain.marks.push(if post.post == 0 { Place::after(at_m) } else { Place::before(at_m) });
    }
    for &(_, chain_m) in &faults {
        chain.marks.push(build.side_of(chain_m));
    }

    let feed = build.chain_place(run.feed_at.or(run.outline.first().copied()).unwrap_or_default());
    let line = Line {
        branches: build.spare(&broken).into_iter().collect(),
        chain,
        closing: if ring { Closing::Ring { ohm: closing_ohm } } else { Closing::Open },
        feed: Place::after(feed.1),
        lead_ohm: run.lead_ohm(),
    };
    Ok(Netting { line, feed, faults })
}

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
        let chain_m = self.placement.chain_at_m(along_m);
        if chain_m <= self.covered_m {
            return (along_m, chain_m);
        }
        let to_start_m = if self.outline.is_closed() { self.placement.line_m - chain_m } else { f64::INFINITY };
        (along_m, if to_start_m < chain_m - self.covered_m { 0.0 } else { self.covered_m })
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

    /// The netting on the line, cut where a net or a zone of leakage ends.
    fn stretches(&self, broken: &[usize]) -> Vec<Stretch> {
        let mut cuts_m = vec![0.0, self.covered_m];
        cuts_m.extend(self.placement.nets.iter().map(|net| net.end_m));
        if self.leakage_s_per_m.is_none() {
            let ends = self.run.leakage_zones.iter().flat_map(|zone| [zone.from_m, zone.to_m]);
            cuts_m.extend(ends.map(|along_m| self.placement.chain_at_m(along_m)));
        }
        cuts_m.retain(|&at_m| (0.0..=self.covered_m).contains(&at_m));
        cuts_m.sort_by(f64::total_cmp);
        // A sliver thinner than the tolerance of places joins its neighbour.
        cuts_m.dedup_by(|next, kept| *next - *kept < electrical::circuit::PLACE_TOLERANCE_M);
        if let Some(last) = cuts_m.last_mut() {
            *last = self.covered_m;
        }
        cuts_m
            .windows(2)
            .filter_map(|pair| {
                let middle_m = 0.5 * (pair[0] + pair[1]);
                let net = self.net_at(middle_m)?;
                Some(Stretch {
                    from_m: pair[0],
                    to_m: pair[1],
                    r_ohm_per_m: self.r_ohm_per_m(net, broken[net]),
                    g_s_per_m: self.leakage_at(self.placement.along_m(middle_m)),
                    c_f_per_m: self.kinds[self.placement.nets[net].kind].c_f_per_m,
                })
            })
            .collect()
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
        let g_s_per_m = self.leakage_s_per_m.unwrap_or(self.run.leakage_s_per_m() * self.leakage_factor);
        let mut chain = Chain::default();
        let mut from_m = 0.0;
        for (index, net) in self.placement.nets.iter().enumerate().filter(|(_, net)| net.end_m > self.covered_m) {
            let to_m = net.end_m - self.covered_m;
            if let Some(ohm) = self.run.join_ohm.filter(|&ohm| ohm > 0.0 && net.start_m >= self.covered_m) {
                chain.joins.push(Join { at_m: from_m, ohm });
            }
            chain.stretches.push(Stretch {
                from_m,
                to_m,
                r_ohm_per_m: self.r_ohm_per_m(index, broken[index]),
                g_s_per_m,
                c_f_per_m: self.kinds[net.kind].c_f_per_m,
            });
            from_m = to_m;
        }
        // Every post is a node, read or not: long spare of high resistance is cut there.
        let posts = self.placement.spare_posts.iter().map(|post| post.chain_m - self.covered_m);
        chain.marks.extend(posts.filter(|&at_m| at_m > 0.0 && at_m <= from_m).map(Place::before));
        (!chain.stretches.is_empty()).then(|| Branch { at: Place::before(self.covered_m), chain })
    }
}
