//! The ground's shape under a run: dips, ridges, steep stretches, and heights that are not there.

use geometry::{Outline, Point as At, region};
use plan::{Run, defaults::COMMON_PRACTICE};
use words::texts::Slope as Text;
use words::{Measure, Words};
use workup::slope::{STEEP_OVER_M, STEEPEST, Uneven};
use workup::{Evidence, RunWorkup, Slope};

use crate::limits::OWN_FORMAT;
use crate::{Finding, Look, Severity, run_name};

/// The source of what a straight bottom line does over uneven ground.
const GEOMETRY: &str = "geometry; the gap allowed is common practice, no source";
/// Heights farther apart than this show no dip under a panel, metres.
const COARSE_M: f64 = 2.0;
/// Sides that miss their closing by less than this are stated to the centimetre, metres.
const CLOSES_M: f64 = 0.1;
/// Less of a line than this without a height is not worth a word, metres.
const LITTLE_M: f64 = 0.5;

pub(crate) fn of_run(look: Look<'_>, run: &Run, worked: &RunWorkup) -> Vec<Finding> {
    let Some(slope) = &worked.slope else {
        return off_the_grid(look, run, worked).into_iter().collect();
    };
    let words = look.words;
    let name = run_name(run);
    let mut found = Vec::new();
    if slope.steepest.slope > STEEPEST {
        let over_m = STEEP_OVER_M.min(slope.level_m);
        let places = [
            ("run", name),
            ("steep", &words.percent(slope.steepest.slope)),
            ("over", &words.length(over_m)),
            ("limit", &words.percent(STEEPEST)),
        ];
        found.push(
            Finding::new("slope-steep", Severity::Warning, COMMON_PRACTICE)
                .says(words.say(Text::Steep, &places))
                .at([slope.steepest.at]),
        );
    }
    found.extend(dips(look, name, slope));
    found.extend(ridges(look, name, slope));
    for (id, text, length_m) in
        [("heights-missing", Text::Unknown, slope.unknown_m), ("heights-beyond", Text::Beyond, slope.beyond_m)]
    {
        if length_m > LITTLE_M {
            let severity = if id == "heights-missing" { Severity::Warning } else { Severity::Note };
            let places = [("run", name), ("length", &words.length(length_m))];
            found.push(Finding::new(id, severity, OWN_FORMAT).says(words.say(text, &places)));
        }
    }
    if slope.closing_m.abs() > CLOSES_M {
        found.push(not_closing(look, run, slope));
    }
    if look.plan.ground.height_grid.is_some() && !slope.sides.iter().any(|side| side.evidence == Evidence::Grid) {
        found.extend(off_the_grid(look, run, worked));
    }
    found
}

/// Rises of a ring that do not sum to nothing; the mend names the sides that nothing is stated of.
fn not_closing(look: Look<'_>, run: &Run, slope: &Slope) -> Finding {
    let words = look.words;
    let rises = slope.closing_m > 0.0;
    let sides = slope.sides.iter().enumerate();
    let level: Vec<usize> =
        sides.filter(|(_, side)| side.evidence == Evidence::Level).map(|(index, _)| index).collect();
    let mend = if level.is_empty() {
        words.text(Text::CorrectASide).to_owned()
    } else {
        let named = |side: usize| {
            let (from, to) = (slope.sides[side].vertex, slope.sides[(side + 1) % slope.sides.len()].vertex);
            words.say(Text::SideNamed, &[("from", &(from + 1).to_string()), ("to", &(to + 1).to_string())])
        };
        let sides = match level.as_slice() {
            &[one] => named(one),
            &[one, other] => words.say(Text::AndLast, &[("first", &named(one)), ("last", &named(other))]),
            many => words.say(Text::TheOtherSides, &[("count", &many.len().to_string())]),
        };
        words.say(if rises { Text::SayWhatFalls } else { Text::SayWhatRises }, &[("sides", &sides)])
    };
    // The place is where the line would not meet itself.
    let places = [("run", run_name(run)), ("by", &words.fine_length(slope.closing_m.abs())), ("mend", &mend)];
    Finding::new("sides-do-not-close", Severity::Note, "geometry")
        .says(words.say(if rises { Text::RisesTooMuch } else { Text::FallsTooMuch }, &places))
        .at(run.outline.first().copied())
}

/// What concerns the heights of the whole plan.
pub(crate) fn of_plan(look: Look<'_>) -> Option<Finding> {
    let grid = look.plan.ground.height_grid.as_ref().filter(|grid| grid.cell_m > COARSE_M)?;
    let cell = look.words.length(grid.cell_m);
    Some(
        Finding::new("heights-coarse", Severity::Note, COMMON_PRACTICE)
            .says(look.words.say(Text::GridCoarse, &[("cell", &cell)])),
    )
}

/// A grid that the run never meets, where nothing else is known of the run.
fn off_the_grid(look: Look<'_>, run: &Run, worked: &RunWorkup) -> Option<Finding> {
    let grid = look.plan.ground.height_grid.as_ref()?;
    let lay = worked.lay.as_ref()?;
    // By hand or by spots the run is known all the same, and a grid with holes is spoken of elsewhere.
    let (low, high) = (grid.south_west, grid.north_east());
    let corners = [(low.east_m, low.north_m), (high.east_m, low.north_m), (high.east_m, high.north_m)];
    let square =
        Outline::closed(&corners.into_iter().chain([(low.east_m, high.north_m)]).map(At::from).collect::<Vec<_>>());
    let points: Vec<At> = lay.vertices.iter().map(|(at, _)| At::new(at.east_m, at.north_m)).collect();
    let line = if lay.closed { Outline::closed(&points) } else { Outline::open(&points) };
    // An open line has no area, and a line may cross the grid without a corner in it.
    let meets = region::distance_between_m(&line, &square) <= 0.0
        || points.first().is_some_and(|&at| region::contains(&square, at))
        || region::overlap_area_m2(&line, &square) > 0.0;
    (!meets).then(|| {
        Finding::new("heights-elsewhere", Severity::Warning, OWN_FORMAT)
            .says(look.words.say(Text::GridOff, &[("run", run_name(run))]))
    })
}

fn dips(look: Look<'_>, name: &str, slope: &Slope) -> Option<Finding> {
    let words = look.words;
    let gap_m = slope.dips().map(|(_, dip)| dip.by_m).reduce(f64::max)?;
    let panels = panels(look, slope.dips().count());
    let places = [
        ("run", name),
        ("panels", &*panels),
        ("gap", &words.fine_length(gap_m)),
        ("allowed", &words.fine_length(slope.allowed_gap_m)),
    ];
    let posts: Vec<usize> = slope.dips().map(|(panel, _)| panel.posts.len()).collect();
    Some(
        Finding::new("dip-under-net", Severity::Warning, GEOMETRY)
            .says(words.say(Text::Dip, &places))
            .mends(mend(look, &posts))
            .because(words.say(Text::UnevenWhy, &[("how", how(look, slope))]))
            .at(slope.dips().map(|(_, dip)| dip.at)),
    )
}

fn ridges(look: Look<'_>, name: &str, slope: &Slope) -> Option<Finding> {
    let words = look.words;
    let over_m = slope.ridges().map(|(_, ridge)| ridge.by_m).reduce(f64::max)?;
    let panels = panels(look, slope.ridges().count());
    let places = [("run", name), ("panels", &*panels), ("over", &words.fine_length(over_m))];
    let posts: Vec<usize> = slope.ridges().map(|(panel, _)| panel.posts.len()).collect();
    Some(
        Finding::new("ridge-under-net", Severity::Warning, GEOMETRY)
            .says(words.say(Text::Ridge, &places))
            .mends(mend(look, &posts))
            .because(words.say(Text::UnevenWhy, &[("how", how(look, slope))]))
            .at(slope.ridges().map(|(_, ridge)| ridge.at)),
    )
}

fn panels(look: Look<'_>, count: usize) -> String {
    match count {
        1 => look.words.text(Text::PanelOne).to_owned(),
        count => look.words.say(Text::Panels, &[("count", &count.to_string())]),
    }
}

/// What further posts do: so many for each panel, none where they do not help.
fn mend(look: Look<'_>, posts: &[usize]) -> String {
    let count: usize = posts.iter().sum();
    let text = match (count, posts.contains(&0)) {
        (0, _) => Text::NoFurther,
        (1, false) => Text::FurtherPost,
        (_, false) => Text::FurtherPosts,
        (_, true) => Text::FurtherSome,
    };
    look.words.say(text, &[("count", &count.to_string())])
}

/// How the ground is known, by what most of its sides are known by.
fn how(look: Look<'_>, slope: &Slope) -> &'static str {
    let most = [Evidence::Grid, Evidence::Spots, Evidence::ByHand, Evidence::Level]
        .into_iter()
        .max_by_key(|evidence| slope.sides.iter().filter(|side| side.evidence == *evidence).count())
        .unwrap_or_default();
    known_by(look.words, most)
}

fn known_by(words: Words, evidence: Evidence) -> &'static str {
    words.text(match evidence {
        Evidence::ByHand => Text::ByHand,
        Evidence::Spots => Text::BySpots,
        Evidence::Grid => Text::ByGrid,
        Evidence::Level => Text::ByLevel,
    })
}

/// What the line takes, how far it climbs, and by what that is known.
pub fn slope_line(words: Words, slope: &Slope) -> String {
    let more_m = slope.surface_m - slope.level_m;
    let (level, surface) = (words.length(slope.level_m), words.length(slope.surface_m));
    let places = [("level", &*level), ("surface", &*surface), ("more", &*words.fine_length(more_m))];
    let text = if more_m < 0.005 { Text::SurfaceEqual } else { Text::SurfaceSentence };
    let steep = words.percent(slope.steepest.slope);
    let over = words.length(STEEP_OVER_M.min(slope.level_m));
    let places_of_range = [("range", &*words.length(slope.range_m)), ("over", &*over), ("steep", &*steep)];
    let mut sentences = vec![words.say(text, &places), words.say(Text::RangeSentence, &places_of_range)];
    let known = |evidence: Evidence| slope.sides.iter().filter(|side| side.evidence == evidence).count();
    let all = [Evidence::ByHand, Evidence::Grid, Evidence::Spots, Evidence::Level];
    let how: Vec<String> = all
        .into_iter()
        .filter(|&evidence| known(evidence) > 0)
        .map(|evidence| {
            let name = known_by(words, evidence);
            match known(evidence) {
                count if count == slope.sides.len() => name.to_owned(),
                1 => words.say(Text::KnownSide, &[("how", name)]),
                count => words.say(Text::KnownSides, &[("how", name), ("count", &count.to_string())]),
            }
        })
        .collect();
    sentences.push(words.say(Text::Evidence, &[("how", &how.join(", "))]));
    sentences.join(" ")
}

/// What is wrong under a panel, and where further posts go.
pub fn panel_said(words: Words, panel: &Uneven) -> String {
    let small = |metres: f64| {
        let (figure, unit) = words.typed_parts(Measure::Small, metres);
        format!("{figure} {unit}")
    };
    let post = (panel.post + 1).to_string();
    let said = match (&panel.dip, &panel.ridge) {
        (Some(dip), None) => words.say(Text::DipRow, &[("post", &post), ("by", &small(dip.by_m))]),
        (None, Some(ridge)) => words.say(Text::RidgeRow, &[("post", &post), ("by", &small(ridge.by_m))]),
        (Some(dip), Some(ridge)) => {
            words.say(Text::BothRow, &[("post", &post), ("gap", &small(dip.by_m)), ("over", &small(ridge.by_m))])
        }
        (None, None) => String::new(),
    };
    let along: Vec<String> = panel.posts.iter().map(|post| words.fine_length(post.from_post_m)).collect();
    let mend = match along.split_last() {
        None => words.text(Text::NoPostRow).to_owned(),
        Some((one, [])) => words.say(Text::PostRow, &[("along", one)]),
        Some((last, first)) => {
            let both = words.say(Text::AndLast, &[("first", &first.join(", ")), ("last", last)]);
            words.say(Text::PostsRow, &[("along", &both)])
        }
    };
    format!("{said}; {mend}.")
}
