//! Lines of netting that hang on a run's: their nets laid along a line of their own.
//!
//! A branch's first net starts where the branch hangs, its nets follow in the order stated, and what is longer than its
//! line is doubled back. Where heights are known its line lies on the ground as a run's does; nothing is stated by hand of
//! what its sides rise. See the model's page for what is left out of a branch.

use geometry::{Net, Outline, Placement, PlacementRequest};
use plan::{Branch, Plan, Run};

use crate::model::{BranchTrouble, LaidBranch, LaidNet, Lay, Post, Trouble};
use crate::slope::{Heights, Measure};
use crate::values::Bad;
use crate::{nets, place, point};

/// A branch's line may start so far from the run's, metres.
pub const BRANCH_REACH_M: f64 = 1.0;

/// A branch in the types of `geometry`.
pub(crate) struct BranchLine {
    /// Its place in the run's list.
    pub(crate) stated: usize,
    /// Where it hangs along the run's outline, metres.
    pub(crate) from_m: f64,
    /// Its line on the ground.
    pub(crate) outline: Outline,
    pub(crate) placement: Placement,
}

/// A drawn branch takes no more nets than this.
const MOST_NETS: f64 = 100.0;

/// The run's branches, as far as they can be built.
pub(crate) fn lines(
    plan: &Plan,
    run: &Run,
    line: &Outline,
    heights: &Heights,
    bad: &Bad,
    troubles: &mut Vec<Trouble>,
) -> Vec<BranchLine> {
    let mut lines = Vec::with_capacity(run.branches.len());
    for (stated, branch) in run.branches.iter().enumerate() {
        let mut trouble = |fault| troubles.push(Trouble::Branch { branch: stated, fault });
        let points: Vec<_> = branch.outline.iter().copied().map(point).collect();
        if geometry::check_outline(&points, false).iter().any(geometry::OutlineFault::is_fatal) {
            trouble(BranchTrouble::NoLine);
            continue;
        }
        let outline = on_ground(run, branch, heights, Outline::open(&points));
        let from_m =
            if line.is_closed() { line.wrap_m(branch.from_m) } else { branch.from_m.clamp(0.0, line.length_m()) };
        let (hangs_at, starts_at) = (line.at(from_m), outline.at(0.0));
        if (branch.from_m - from_m).abs() > BRANCH_REACH_M {
            trouble(BranchTrouble::Beyond { from_m: branch.from_m, line_m: line.length_m() });
        } else if hangs_at.distance_m(starts_at) > BRANCH_REACH_M {
            let off_m = hangs_at.distance_m(starts_at);
            trouble(BranchTrouble::OffLine { off_m, at: place(starts_at) });
        }
        let used: Vec<usize> =
            branch.nets.iter().filter_map(|id| plan.store.nets.iter().position(|net| net.id == *id)).collect();
        if used.is_empty() {
            trouble(BranchTrouble::NoNets);
            continue;
        }
        let broken = |&kind: &usize| {
            let key = |name: &str| format!("store.nets[{kind}].{name}");
            bad.any(&key("length_m")) || bad.any(&key("panel")) || bad.sum_of(&plan.store.nets[kind].id)
        };
        let length_m: f64 = used.iter().map(|&kind| plan.store.nets[kind].length_m).sum();
        if used.iter().any(broken) {
            continue;
        }
        if length_m > crate::lay::LONGEST_CHAIN_M {
            troubles.push(Trouble::ChainTooLong { length_m });
            continue;
        }
        let kinds: Result<Vec<Net>, _> =
            plan.store.nets.iter().map(|net| nets::built(net).or_else(|_| Net::equal(1.0, 1))).collect();
        let Ok(kinds) = kinds else { continue };
        match geometry::place_in_order(&PlacementRequest::new(&outline, &kinds, &used)) {
            Ok(placement) => lines.push(BranchLine { stated, from_m, outline, placement }),
            Err(geometry::PlacementFault::TooManyPosts { posts }) => troubles.push(Trouble::TooManyPosts { posts }),
            Err(_) => troubles.push(Trouble::Branch { branch: stated, fault: BranchTrouble::NoLine }),
        }
    }
    lines
}

/// A branch's line on the ground; as it is where that is level.
fn on_ground(run: &Run, branch: &Branch, heights: &Heights, level: Outline) -> Outline {
    Measure::of(&branch.alone(run), heights).and_then(|measure| measure.laid(&level)).unwrap_or(level)
}

/// How the nets fall on a branch.
pub(crate) fn laid(plan: &Plan, line: &Outline, branch: &BranchLine) -> LaidBranch {
    let placement = &branch.placement;
    LaidBranch {
        branch: branch.stated,
        from_m: branch.from_m,
        at: place(line.at(branch.from_m)),
        vertices: branch.outline.vertices().iter().map(|vertex| (place(vertex.at), vertex.along_m)).collect(),
        line_m: branch.outline.length_m(),
        spare_m: placement.spare_m,
        short_m: placement.short_m,
        nets: placement
            .nets
            .iter()
            .map(|net| LaidNet { kind: plan.store.nets[net.kind].id.clone(), start_m: net.start_m, end_m: net.end_m })
            .collect(),
        posts: placement.posts.iter().map(Post::of).collect(),
        spare_posts: placement.spare_posts.iter().map(Post::of).collect(),
    }
}

impl LaidBranch {
    /// The branch as a lay by itself, an open line from where it hangs: what is asked of a run's line is asked of a branch's
    /// likewise.
    pub fn alone(&self) -> Lay {
        Lay {
            vertices: self.vertices.clone(),
            line_m: self.line_m,
            spare_m: self.spare_m,
            short_m: self.short_m,
            nets: self.nets.clone(),
            posts: self.posts.clone(),
            spare_posts: self.spare_posts.clone(),
            ..Lay::default()
        }
    }
}

impl Lay {
    /// Of its branches the one that was stated at that place, where it could be laid.
    pub fn branch(&self, stated: usize) -> Option<&LaidBranch> {
        self.branches.iter().find(|branch| branch.branch == stated)
    }
}

/// A drawn line as a branch of a run: it starts at the nearest place of the run's line, and takes as many nets of the
/// run's first kind as reach along it; and how far off it was drawn, metres. `None` where the run has no line or the
/// store no net.
pub fn hang(plan: &Plan, run: &Run, drawn: &[plan::Point]) -> Option<(plan::Branch, f64)> {
    let points: Vec<_> = run.outline.iter().copied().map(point).collect();
    if geometry::check_outline(&points, run.closed()).iter().any(geometry::OutlineFault::is_fatal) {
        return None;
    }
    let heights = Heights::of(plan, &mut Vec::new());
    let level = if run.closed() { Outline::closed(&points) } else { Outline::open(&points) };
    let line = Measure::of(run, &heights).and_then(|measure| measure.laid(&level)).unwrap_or(level);
    let (from_m, off_m) = line.nearest_along(point(*drawn.first()?));
    let mut outline = drawn.to_vec();
    outline[0] = place(line.at(from_m));
    let named = run.nets.as_ref().and_then(|nets| nets.first()).and_then(|id| plan.net_kind(id));
    let kind = named.or(plan.store.nets.first())?;
    let mut branch = Branch { from_m, outline, ..Branch::default() };
    let points: Vec<_> = branch.outline.iter().copied().map(point).collect();
    let length_m = if geometry::check_outline(&points, false).iter().any(geometry::OutlineFault::is_fatal) {
        Outline::open(&points).length_m()
    } else {
        on_ground(run, &branch, &heights, Outline::open(&points)).length_m()
    };
    let reach = (length_m / kind.length_m).ceil();
    let count = if reach.is_finite() { reach.clamp(1.0, MOST_NETS) as usize } else { 1 };
    branch.nets = vec![kind.id.clone(); count];
    Some((branch, off_m))
}
