//! The join that is opened, and the panels on either side of it that are laid back.

use geometry::{MEET_M, Outline, Placement, ways};

use super::{Near, Opening, Site, TO_CORNER_M};
use crate::place;

/// More panels than this are not laid back on one side.
const MOST_PANELS: usize = 12;

/// A join on the line.
#[derive(Clone, Copy, Debug)]
pub(super) struct Join {
    /// Net before and net after, in chain order.
    pub(super) nets: (usize, usize),
    /// Distance in the chain, metres: the line's length where a ring closes.
    chain_m: f64,
    /// Along the outline, metres.
    pub(super) along_m: f64,
    /// Whether the net before it may be laid back: not where spare netting hangs on it.
    before_folds: bool,
}

/// A join with the panels that are laid back beside it.
#[derive(Clone, Debug)]
pub(super) struct Choice {
    pub(super) join: Join,
    panels: (usize, usize),
    /// Metres opened before and after the join.
    opened_m: (f64, f64),
    /// Rules that it breaks, the weightiest first: too narrow, into another gate's opening, too near to a corner, on ground
    /// to keep off.
    pub(super) broken: [bool; 4],
    /// Posts that are pulled.
    pub(super) pulled: usize,
}

/// The joins on the line, in the chain's order; a ring's closing one last.
pub(super) fn joins(placement: &Placement) -> Vec<Join> {
    let on_line = placement.nets_on_line().count();
    let mut joins: Vec<Join> = (1..on_line)
        .map(|net| {
            let chain_m = placement.nets[net].start_m;
            Join { nets: (net - 1, net), chain_m, along_m: placement.along_m(chain_m), before_folds: true }
        })
        .collect();
    if placement.is_ring() && on_line > 0 {
        joins.push(Join {
            nets: (on_line - 1, 0),
            chain_m: placement.line_m,
            along_m: placement.along_m(0.0),
            before_folds: !placement.has_spare(),
        });
    }
    joins
}

/// The opening of a join that breaks the fewest rules and pulls the fewest posts.
pub(super) fn best(site: &Site<'_>, join: Join, width_m: f64, others: &[(f64, f64)]) -> Choice {
    let (before_m, after_m) = (folds_m(site.placement, join, true), folds_m(site.placement, join, false));
    let none = Choice { join, panels: (0, 0), opened_m: (0.0, 0.0), broken: [true; 4], pulled: 0 };
    let mut best = none;
    for (before, &b_m) in before_m.iter().enumerate() {
        // No more panels of the other net than the width wants, or all where it wants more.
        let enough = after_m.iter().position(|a_m| b_m + a_m >= width_m - geometry::EQUAL_SUMS_M);
        for after in (0..=enough.unwrap_or(after_m.len() - 1)).rev() {
            let choice = looked_at(site, join, (before, after), (b_m, after_m[after]), width_m, others);
            let Some(choice) = choice else { continue };
            let opened_m = |choice: &Choice| choice.opened_m.0 + choice.opened_m.1;
            let better = match choice.broken.cmp(&best.broken) {
                std::cmp::Ordering::Less => true,
                std::cmp::Ordering::Greater => false,
                // Too narrow either way: the wider one; else the one with less to pull, of one net rather than two.
                std::cmp::Ordering::Equal if choice.broken[0] => opened_m(&choice) > opened_m(&best),
                std::cmp::Ordering::Equal => {
                    let cost = |choice: &Choice| (choice.pulled, choice.panels.0 > 0 && choice.panels.1 > 0);
                    cost(&choice) < cost(&best)
                }
            };
            if better {
                best = choice;
            }
            break;
        }
    }
    best
}

/// How much opens with 0, 1, 2, ... panels of the net before or after a join laid back, metres; one panel stays.
fn folds_m(placement: &Placement, join: Join, before: bool) -> Vec<f64> {
    if before && !join.before_folds {
        return vec![0.0];
    }
    let (net, end_m) = if before { (join.nets.0, join.chain_m) } else { (join.nets.1, join.chain_m) };
    let end_m = if !before && net == 0 { 0.0 } else { end_m };
    let mut from_m: Vec<f64> = placement
        .posts
        .iter()
        .filter(|post| post.net == net)
        .map(|post| (post.chain_m - end_m).abs())
        .map(|from_m| if from_m < MEET_M { 0.0 } else { from_m })
        .collect();
    from_m.sort_by(f64::total_cmp);
    from_m.truncate((from_m.len() - 1).clamp(1, MOST_PANELS + 1));
    from_m
}

/// The stretch of the outline that is opened: where it begins and how long it is, metres along it.
fn stretch_m(site: &Site<'_>, join: Join, opened_m: (f64, f64)) -> (f64, f64) {
    let length_m = opened_m.0 + opened_m.1;
    let from_m = if site.placement.reversed { join.along_m - opened_m.1 } else { join.along_m - opened_m.0 };
    (site.outline.wrap_m(from_m), length_m)
}

/// Whether two stretches, each by its beginning and length, share more than an end.
pub(super) fn overlap(outline: &Outline, one: (f64, f64), other: (f64, f64)) -> bool {
    let grain_m = geometry::EQUAL_SUMS_M;
    if one.1.min(other.1) < grain_m {
        return false;
    }
    let off_m = other.0 - one.0;
    if !outline.is_closed() {
        return off_m < one.1 - grain_m && -off_m < other.1 - grain_m;
    }
    let off_m = off_m.rem_euclid(outline.length_m());
    off_m < one.1 - grain_m || outline.length_m() - off_m < other.1 - grain_m
}

/// Distance along the line from a stretch to the nearest corner, metres, 0 where it ends at one; and whether one lies in it.
fn to_corner_m(outline: &Outline, (from_m, length_m): (f64, f64)) -> (Option<f64>, bool) {
    let line_m = outline.length_m();
    let (mut least_m, mut within): (Option<f64>, bool) = (None, false);
    for (_, corner) in outline.corners() {
        let after_m = corner.along_m - from_m;
        let after_m = if outline.is_closed() { after_m.rem_euclid(line_m) } else { after_m };
        let grain_m = geometry::EQUAL_SUMS_M;
        within |= after_m > grain_m && after_m < length_m - grain_m;
        let before_m = if outline.is_closed() { (line_m - after_m).min(after_m.abs()) } else { (-after_m).abs() };
        let apart_m = if (0.0..=length_m).contains(&after_m) { 0.0 } else { before_m.min((after_m - length_m).abs()) };
        least_m = Some(least_m.map_or(apart_m, |least_m| least_m.min(apart_m)));
    }
    (least_m, within)
}

fn looked_at(
    site: &Site<'_>,
    join: Join,
    panels: (usize, usize),
    opened_m: (f64, f64),
    width_m: f64,
    others: &[(f64, f64)],
) -> Option<Choice> {
    let stretch = stretch_m(site, join, opened_m);
    let (corner_m, within) = to_corner_m(site.outline, stretch);
    if within {
        return None;
    }
    let gap = ways::stretch(site.outline, stretch.0, stretch.1.max(MEET_M));
    let broken = [
        stretch.1 < width_m - geometry::EQUAL_SUMS_M,
        others.iter().any(|&other| overlap(site.outline, stretch, other)),
        corner_m.is_some_and(|corner_m| corner_m < TO_CORNER_M),
        site.off.iter().any(|off| off.too_near_m(&gap).is_some()),
    ];
    Some(Choice { join, panels, opened_m, broken, pulled: panels.0 + panels.1 })
}

/// The stretch of a choice along the outline, metres.
pub(super) fn gap_m(site: &Site<'_>, choice: &Choice) -> (f64, f64) {
    stretch_m(site, choice.join, choice.opened_m)
}

/// What a choice opens.
pub(super) fn opening(site: &Site<'_>, choice: &Choice) -> Opening {
    let Site { outline, placement, .. } = *site;
    let (from_m, length_m) = gap_m(site, choice);
    let gap = ways::stretch(outline, from_m, length_m);
    let join = choice.join;
    let posts = |net: usize, before: bool, panels: usize| {
        let mut posts: Vec<usize> =
            (0..placement.posts.len()).filter(|&post| placement.posts[post].net == net).collect();
        if before {
            posts.reverse();
        }
        posts.truncate(panels + 1);
        posts
    };
    let (mut pulled, mut leaves, mut laid_back) = (Vec::new(), Vec::new(), Vec::new());
    let join_at = outline.at(join.along_m);
    for (net, before, panels, opened_m) in [
        (join.nets.0, true, choice.panels.0, choice.opened_m.0),
        (join.nets.1, false, choice.panels.1, choice.opened_m.1),
    ] {
        if panels == 0 {
            continue;
        }
        let mut posts = posts(net, before, panels);
        let Some(hinge) = posts.pop() else { continue };
        pulled.extend(posts);
        let hinge = placement.posts[hinge];
        leaves.push((place(hinge.at), place(join_at)));
        // Away from the opening, along the outline or against it.
        let onward = before == placement.reversed;
        let from_m = if onward { hinge.along_m } else { hinge.along_m - opened_m };
        let mut lies: Vec<_> = ways::stretch(outline, from_m, opened_m).points().map(place).collect();
        if !onward {
            lies.reverse();
        }
        laid_back.push(lies);
    }
    pulled.sort_unstable();
    let near = site.off.iter().filter_map(|off| Some(Near { kind: off.kind, apart_m: off.too_near_m(&gap)? }));
    Opening {
        join: place(join_at),
        join_along_m: join.along_m,
        nets: join.nets,
        from_m,
        at: place(outline.at(from_m + length_m / 2.0)),
        clear_m: length_m,
        gap: gap.points().map(place).collect(),
        pulled,
        panels: choice.panels.0 + choice.panels.1,
        leaves,
        laid_back,
        to_corner_m: to_corner_m(outline, (from_m, length_m)).0,
        near: near.collect(),
    }
}
