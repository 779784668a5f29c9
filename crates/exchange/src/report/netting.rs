//! Nets, posts, branches and the placement that would have been best.

use plan::Point;
use schemars::JsonSchema;
use serde::Serialize;

/// The best placement, beside a fixed or pinned one.
#[derive(Serialize, JsonSchema)]
pub(super) struct Best {
    /// Where its chain starts, metres along the outline.
    start_m: f64,
    /// Whether its chain runs against the outline.
    reversed: bool,
    /// Kinds of its nets in order.
    nets: Vec<String>,
    /// Its sum of misses, metres.
    corner_miss_m: f64,
}

/// One net.
#[derive(Serialize, JsonSchema)]
pub(super) struct Net {
    /// Its kind.
    kind: String,
    /// Start along the chain, metres.
    start_m: f64,
    /// End along the chain, metres.
    end_m: f64,
}

/// One post.
#[derive(Serialize, JsonSchema)]
#[expect(clippy::struct_field_names, reason = "the file's own word")]
pub(super) struct Post {
    /// Where it stands.
    at: Point,
    /// Along the outline, metres.
    along_m: f64,
    /// Its net, from 0.
    net: usize,
    /// Its number on that net, from 0.
    post: usize,
}

/// A line of netting that hangs on a run's.
#[derive(Serialize, JsonSchema)]
#[expect(clippy::struct_field_names, reason = "the file's own word")]
pub(super) struct Branch {
    /// Its place in the run's list, from 0.
    branch: usize,
    /// Where it hangs along the run's outline, metres.
    from_m: f64,
    /// That place.
    at: Point,
    /// Length of its line, metres.
    line_m: f64,
    /// Netting beyond it, metres.
    spare_m: f64,
    /// Line without netting, metres.
    short_m: f64,
    /// Its nets, from the run on.
    nets: Vec<Net>,
    /// Its posts on its line; `along_m` is along its own outline.
    posts: Vec<Post>,
}

pub(super) fn net(net: &workup::LaidNet) -> Net {
    Net { kind: net.kind.clone(), start_m: net.start_m, end_m: net.end_m }
}

pub(super) fn post(post: &workup::Post) -> Post {
    Post { at: post.at, along_m: post.along_m, net: post.net, post: post.post }
}

pub(super) fn branch(branch: &workup::LaidBranch) -> Branch {
    Branch {
        branch: branch.branch,
        from_m: branch.from_m,
        at: branch.at,
        line_m: branch.line_m,
        spare_m: branch.spare_m,
        short_m: branch.short_m,
        nets: branch.nets.iter().map(net).collect(),
        posts: branch.posts.iter().map(post).collect(),
    }
}

pub(super) fn best(best: &workup::Best) -> Best {
    Best { start_m: best.start_m, reversed: best.reversed, nets: best.nets.clone(), corner_miss_m: best.corner_miss_m }
}
