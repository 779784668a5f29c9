//! The ground along a run: its keys in the report, and its rows in the readable one.

use plan::Point;
use schemars::JsonSchema;
use serde::Serialize;
use words::Words;
use words::texts::Slope as Text;
use workup::slope::{FurtherPost, Worst};
use workup::{Evidence, RunWorkup, Slope};

/// The slope of a run.
#[derive(Serialize, JsonSchema)]
pub(crate) struct OfRun {
    /// The ground along the line; `null` where no height is known. Where it is not, `spare_m`, `short_m` and every
    /// `along_m` and `start_m` of the run are metres along the ground.
    slope: Option<SlopeOut>,
}

/// The ground along a line.
#[derive(Serialize, JsonSchema)]
struct SlopeOut {
    /// Length of the line in plan, metres: the run's `line_m`.
    level_m: f64,
    /// Length of the line along the ground, metres: the net that it takes.
    surface_m: f64,
    /// From the lowest to the highest place of the line, metres.
    range_m: f64,
    /// The steepest two metres: rise over run, without sign.
    steepest: f64,
    /// Where.
    steepest_at: Point,
    /// Each side in order.
    sides: Vec<Side>,
    /// Metres of the line of which no height is known, taken as straight.
    unknown_m: f64,
    /// Metres of the line beyond the outermost spot heights.
    beyond_m: f64,
    /// The gap under the bottom line that is allowed, metres.
    allowed_gap_m: f64,
    /// Panels under which the ground dips or rises too far, in chain order.
    uneven: Vec<Uneven>,
}

/// A side.
#[derive(Serialize, JsonSchema)]
struct Side {
    /// How its ground is known: `level`, `by_hand`, `spots` or `grid`.
    #[schemars(extend("enum" = ["level", "by_hand", "spots", "grid"]))]
    known: &'static str,
    /// How much its end lies above its start, metres.
    rises_m: f64,
    /// Its length in plan, metres.
    level_m: f64,
    /// Its length along the ground, metres.
    surface_m: f64,
}

/// A panel over uneven ground.
#[derive(Serialize, JsonSchema)]
struct Uneven {
    /// The post where it begins: its place in `posts`.
    post: usize,
    /// The widest gap, where it is more than is allowed.
    dip: Option<WorstOut>,
    /// The highest ground, where a live line drags on it.
    ridge: Option<WorstOut>,
    /// Where further posts go; empty where no three mend it.
    further_posts: Vec<Further>,
}

/// Where the ground is farthest from the bottom line.
#[derive(Serialize, JsonSchema)]
struct WorstOut {
    /// Where.
    at: Point,
    /// Along the line, metres.
    along_m: f64,
    /// How far, metres.
    by_m: f64,
}

/// A further post.
#[derive(Serialize, JsonSchema)]
struct Further {
    /// Where.
    at: Point,
    /// Along the line, metres.
    along_m: f64,
    /// From the post where the panel begins, along the net, metres.
    from_post_m: f64,
}

pub(crate) fn of_run(worked: &RunWorkup) -> OfRun {
    OfRun { slope: worked.slope.as_ref().map(out) }
}

fn out(slope: &Slope) -> SlopeOut {
    let worst = |worst: &Worst| WorstOut { at: worst.at, along_m: worst.along_m, by_m: worst.by_m };
    let further = |post: &FurtherPost| Further { at: post.at, along_m: post.along_m, from_post_m: post.from_post_m };
    SlopeOut {
        level_m: slope.level_m,
        surface_m: slope.surface_m,
        range_m: slope.range_m,
        steepest: slope.steepest.slope,
        steepest_at: slope.steepest.at,
        sides: slope
            .sides
            .iter()
            .map(|side| Side {
                known: match side.evidence {
                    Evidence::Level => "level",
                    Evidence::ByHand => "by_hand",
                    Evidence::Spots => "spots",
                    Evidence::Grid => "grid",
                },
                rises_m: side.rises_m,
                level_m: side.level_m,
                surface_m: side.surface_m,
            })
            .collect(),
        unknown_m: slope.unknown_m,
        beyond_m: slope.beyond_m,
        allowed_gap_m: slope.allowed_gap_m,
        uneven: slope
            .uneven
            .iter()
            .map(|panel| Uneven {
                post: panel.post,
                dip: panel.dip.as_ref().map(worst),
                ridge: panel.ridge.as_ref().map(worst),
                further_posts: panel.posts.iter().map(further).collect(),
            })
            .collect(),
    }
}

/// The rows of the readable report: their labels and figures.
pub(crate) fn rows(worked: &RunWorkup, words: Words) -> Vec<(&'static str, String)> {
    let Some(slope) = &worked.slope else { return Vec::new() };
    let steep = words.percent(slope.steepest.slope);
    let places = [
        ("surface", &*words.fine_length(slope.surface_m)),
        ("level", &*words.fine_length(slope.level_m)),
        ("steep", &*steep),
    ];
    let mut rows = vec![(words.text(Text::Row), words.say(Text::RowFigures, &places))];
    if !slope.uneven.is_empty() {
        let places = [
            ("dips", &*slope.dips().count().to_string()),
            ("ridges", &*slope.ridges().count().to_string()),
            ("posts", &*slope.posts().count().to_string()),
        ];
        rows.push((words.text(Text::Uneven), words.say(Text::UnevenFigures, &places)));
    }
    rows
}
