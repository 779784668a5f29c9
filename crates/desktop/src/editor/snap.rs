//! What a corner in the hand takes hold of: posts and corners of other things, with the reason in words.

use plan::{Plan, Point, Shape};
use words::Words;
use words::texts::{Shaping as Text, Window};
use workup::Workup;

use crate::tool::apart_m;

/// Where a corner was caught, and why.
#[derive(Clone, Debug, PartialEq)]
pub struct Snapped {
    /// The place.
    pub at: Point,
    /// What stands there, in words.
    pub reason: String,
}

/// What can be taken hold of, by its number.
#[derive(Clone, Copy)]
enum Hold {
    RunCorner(usize, usize),
    Post(usize, usize),
    PaddockCorner(usize),
    KeepOutCorner(usize, usize),
}

/// The nearest post or corner of something other than `own` within `reach_m` of a place; of equals, a corner.
pub(super) fn snap(
    plan: &Plan,
    workup: &Workup,
    words: Words,
    own: Option<&Shape>,
    at: Point,
    reach_m: f64,
) -> Option<Snapped> {
    let (reach, place, hold) = all(plan, workup, own)
        .map(|(place, hold)| (apart_m(place, at), place, hold))
        .min_by(|one, other| one.0.total_cmp(&other.0))?;
    (reach <= reach_m).then(|| Snapped { at: place, reason: reason(plan, words, hold) })
}

/// Every place that can be taken hold of, corners before posts.
fn all<'a>(plan: &'a Plan, workup: &'a Workup, own: Option<&'a Shape>) -> impl Iterator<Item = (Point, Hold)> + 'a {
    let is_own_run = move |run: usize| matches!(own, Some(Shape::Run(id)) if plan.runs[run].id == *id);
    let run_corners = (0..plan.runs.len()).filter(move |&run| !is_own_run(run)).flat_map(|run| {
        let corners = plan.runs[run].outline.iter().enumerate();
        corners.map(move |(corner, &at)| (at, Hold::RunCorner(run, corner)))
    });
    let paddock = plan.ground.boundary.iter().enumerate().filter(move |_| own != Some(&Shape::Boundary));
    let paddock = paddock.map(|(corner, &at)| (at, Hold::PaddockCorner(corner)));
    let keep_outs = plan.ground.keep_outs.iter().enumerate();
    let keep_outs = keep_outs.filter(move |(index, _)| own != Some(&Shape::KeepOut(*index)));
    let keep_outs = keep_outs.flat_map(|(index, keep_out)| {
        keep_out.outline.iter().enumerate().map(move |(corner, &at)| (at, Hold::KeepOutCorner(index, corner)))
    });
    let posts = workup.runs.iter().take(plan.runs.len()).enumerate();
    let posts = posts.filter(move |(run, _)| !is_own_run(*run)).flat_map(|(run, worked)| {
        let posts = worked.lay.iter().flat_map(|lay| &lay.posts).enumerate();
        posts.map(move |(post, one)| (one.at, Hold::Post(run, post)))
    });
    run_corners.chain(paddock).chain(keep_outs).chain(posts)
}

fn reason(plan: &Plan, words: Words, hold: Hold) -> String {
    let number = |index: usize| (index + 1).to_string();
    match hold {
        Hold::RunCorner(run, corner) => {
            words.say(Text::OnCorner, &[("number", &number(corner)), ("name", care::run_name(&plan.runs[run]))])
        }
        Hold::Post(run, post) => {
            words.say(Text::OnPost, &[("number", &number(post)), ("name", care::run_name(&plan.runs[run]))])
        }
        Hold::PaddockCorner(corner) => words.say(Text::OnPaddockCorner, &[("number", &number(corner))]),
        Hold::KeepOutCorner(index, corner) => {
            let name = &plan.ground.keep_outs[index].name;
            let name = if name.is_empty() { words.text(Window::AKeepOut) } else { name };
            words.say(Text::OnCorner, &[("number", &number(corner)), ("name", name)])
        }
    }
}
