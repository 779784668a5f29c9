//! The report: everything that follows from a plan, as JSON for other people's scripts.
//!
//! The keys are a promise: add, never rename. SI units, the unit in the key, figures not rounded; what cannot
//! be computed is `null`. The types here are the file's own, apart from the workup's.

use std::collections::BTreeMap;

use care::{Finding, Findings};
use plan::{Plan, Point};
use schemars::JsonSchema;
use serde::Serialize;
use serde_json::Value;
use workup::{SampleOf, Verdict, Workup};

/// What the first key of a report says.
pub const FORMAT: &str = "netfold-report";
/// The version that this program writes.
pub const VERSION: u32 = 1;

/// What follows from a plan.
#[derive(Serialize, JsonSchema)]
#[schemars(title = "Netfold report")]
struct Report {
    /// Always `netfold-report`.
    #[schemars(extend("const" = FORMAT))]
    format: &'static str,
    /// The version of the report.
    #[schemars(extend("const" = VERSION))]
    version: u32,
    /// The plan's name.
    title: String,
    /// Each run, in the plan's order.
    runs: Vec<Run>,
    /// The soil that the braces reckon with; `null` where the plan says nothing new of soil, braces or wind.
    soil: Option<crate::bracing::keys::Soil>,
    /// Findings of the plan as a whole.
    findings: Vec<FindingOut>,
    /// What rests on a default.
    assumed: Vec<Assumed>,
}

/// One run.
#[derive(Serialize, JsonSchema)]
struct Run {
    /// The run's id.
    id: String,
    /// Its name, or its id.
    name: String,
    /// Length of the line in plan, metres.
    line_m: Option<f64>,
    /// Area enclosed, square metres; 0 for an open line.
    area_m2: Option<f64>,
    /// Netting beyond the line, metres.
    spare_m: Option<f64>,
    /// Where less than 1 % of the line is spare: the corner that is set last, and how far to draw it in.
    draw_in: Option<DrawIn>,
    /// Line without netting, metres.
    short_m: Option<f64>,
    /// Nets on the line by kind.
    nets_needed: Option<BTreeMap<String, u32>>,
    /// Where the chain starts, metres along the outline.
    start_m: Option<f64>,
    /// Whether the chain runs against the outline.
    reversed: Option<bool>,
    /// Sum of the distances from corners to posts, metres.
    corner_miss_m: Option<f64>,
    /// A proven lower bound of that sum, where the orders were too many to try.
    #[serde(skip_serializing_if = "Option::is_none")]
    corner_miss_bound_m: Option<f64>,
    /// What would have been best, where the start is fixed or something is pinned.
    #[serde(skip_serializing_if = "Option::is_none")]
    best: Option<Best>,
    /// Nets in chain order.
    nets: Option<Vec<Net>>,
    /// Posts on the line in chain order.
    posts: Option<Vec<Post>>,
    /// Posts folded back beyond the line's end.
    spare_posts: Option<Vec<Post>>,
    /// Lines of netting that hang on it; absent where there are none.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    branches: Vec<Branch>,
    /// Corners along the outline, and ends of the netting.
    corners: Option<Vec<Corner>>,
    /// The ground to mow.
    strip: Option<Strip>,
    /// Minutes to set up: 5, 10 a net and 2 a brace; `set_up.minutes_low` where the plan states rates.
    set_up_minutes: Option<f64>,
    /// Setting up, taking down and mowing.
    #[serde(flatten)]
    work: crate::work::keys::OfRun,
    /// Pins and gates.
    #[serde(flatten)]
    gates: crate::gates::OfRun,
    /// Braces in detail, and wind.
    #[serde(flatten)]
    bracing: crate::bracing::keys::OfRun,
    /// The ground along the line.
    #[serde(flatten)]
    slope: crate::slope::OfRun,
    /// The pulse.
    voltage: Option<Voltage>,
    /// What the keeper should know.
    findings: Vec<FindingOut>,
}

/// The best placement, beside a fixed or pinned one.
#[derive(Serialize, JsonSchema)]
struct Best {
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
struct Net {
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
struct Post {
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
struct Branch {
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

/// A corner or an end.
#[derive(Serialize, JsonSchema)]
struct Corner {
    /// Where.
    at: Point,
    /// Along the outline, metres.
    along_m: f64,
    /// Exterior turn, degrees, positive.
    turn_deg: f64,
    /// Distance along the line to the nearest post, metres.
    to_post_m: f64,
    /// Pull, newtons.
    pull_n: f64,
    /// What its post's spikes hold, newtons.
    hold_n: f64,
    /// Whether the netting ends here.
    end: bool,
    /// Whether it wants a brace: `none`, `advised` or `required`.
    #[schemars(extend("enum" = ["none", "advised", "required"]))]
    brace: &'static str,
    /// Whether the brace that the plan states here holds as much as is wanted; `null` where it states none.
    brace_holds: Option<bool>,
    /// The brace's stake.
    stake: Stake,
}

/// A brace's stake.
#[derive(Serialize, JsonSchema)]
struct Stake {
    /// Where it stands.
    at: Point,
    /// From the vertex, metres.
    stand_off_m: f64,
    /// What it holds, newtons.
    hold_n: f64,
}

/// A corner drawn in.
#[derive(Serialize, JsonSchema)]
struct DrawIn {
    /// Where it stands.
    at: Point,
    /// Where it stands once drawn in.
    to: Point,
    /// How far that is, metres.
    by_m: f64,
    /// Netting that comes free, metres.
    gives_m: f64,
}

/// The ground to mow.
#[derive(Serialize, JsonSchema)]
struct Strip {
    /// Area, square metres.
    area_m2: f64,
    /// Times round.
    passes: u32,
    /// Metres walked.
    walk_m: f64,
    /// Minutes mowed.
    minutes: f64,
}

/// The pulse.
#[derive(Serialize, JsonSchema)]
struct Voltage {
    /// Peak at the feed point, kilovolts.
    feed_kv: f64,
    /// Peak of the energizer's earth pole against remote earth, kilovolts.
    earth_kv: f64,
    /// The first rush there, kilovolts.
    earth_rush_kv: f64,
    /// Resistance of the earth stakes, ohms.
    earth_ohm: f64,
    /// Posts on the line in their order, then the feed, then the faults, then the posts of branches.
    samples: Vec<Sample>,
    /// The weakest post.
    weakest: Option<Weakest>,
}

/// Volts at a place.
#[derive(Serialize, JsonSchema)]
struct Sample {
    /// Along the outline, metres.
    along_m: f64,
    /// Peak from the live lines to remote earth, kilovolts.
    peak_kv: f64,
    /// Peak across an animal's body, kilovolts.
    animal_kv: Option<f64>,
    /// Energy in that body, joules.
    animal_j: Option<f64>,
    /// The post's net, from 0; absent at the feed and at faults.
    #[serde(skip_serializing_if = "Option::is_none")]
    net: Option<usize>,
    /// The post's number on its net, from 0.
    #[serde(skip_serializing_if = "Option::is_none")]
    post: Option<usize>,
    /// The branch that its post stands on, from 0; absent on the line. `along_m` is then along the branch's outline.
    #[serde(skip_serializing_if = "Option::is_none")]
    branch: Option<usize>,
    /// `feed` or `fault`; absent at a post.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schemars(extend("enum" = ["feed", "fault", null]))]
    of: Option<&'static str>,
}

/// The weakest post.
#[derive(Serialize, JsonSchema)]
struct Weakest {
    /// Along the outline, metres.
    along_m: f64,
    /// Its peak, kilovolts.
    peak_kv: f64,
    /// In long wet grass, kilovolts.
    low_kv: f64,
    /// On a clean dry net, kilovolts.
    high_kv: f64,
    /// Whether a reading of this run's volts exists.
    measured: bool,
    /// Its net, from 0.
    net: usize,
    /// Its number on that net, from 0.
    post: usize,
    /// The branch that it stands on, from 0; absent on the line.
    #[serde(skip_serializing_if = "Option::is_none")]
    branch: Option<usize>,
}

/// What the keeper should know.
#[derive(Serialize, JsonSchema)]
struct FindingOut {
    /// Its stable id.
    id: &'static str,
    /// `danger`, `warning` or `note`.
    #[schemars(extend("enum" = ["danger", "warning", "note"]))]
    severity: &'static str,
    /// One sentence.
    message: String,
    /// What mends it; absent where the sentence says it.
    #[serde(skip_serializing_if = "String::is_empty")]
    mend: String,
    /// The figures behind it; absent where there are none.
    #[serde(skip_serializing_if = "String::is_empty")]
    why: String,
    /// Where: a point, or a list of points; `null` where it has no place.
    at: Option<Places>,
    /// The publication, `common practice, no source`, or `from memory`.
    source: &'static str,
}

/// One place or several.
#[derive(Serialize, JsonSchema)]
#[serde(untagged)]
enum Places {
    /// One.
    One(Point),
    /// Several.
    Many(Vec<Point>),
}

/// What rests on a default.
#[derive(Serialize, JsonSchema)]
struct Assumed {
    /// The key.
    key: String,
    /// The value that stands in.
    value: Value,
    /// Where it comes from.
    source: &'static str,
}

/// JSON Schema (2020-12) of the report.
pub fn schema() -> Value {
    let settings = schemars::generate::SchemaSettings::draft2020_12().for_serialize();
    serde_json::to_value(settings.into_generator().into_root_schema_for::<Report>()).expect("a schema is JSON")
}

/// The report as JSON, with a line end; byte-identical for one plan.
pub fn json(plan: &Plan, workup: &Workup, findings: &Findings) -> Vec<u8> {
    let mut bytes = serde_json::to_vec_pretty(&report(plan, workup, findings))
        .expect("a report has string keys and finite or null numbers only");
    bytes.push(b'\n');
    bytes
}

fn report(plan: &Plan, workup: &Workup, findings: &Findings) -> Report {
    let no_findings = Vec::new();
    Report {
        format: FORMAT,
        version: VERSION,
        title: plan.title.clone(),
        runs: plan
            .runs
            .iter()
            .zip(&workup.runs)
            .enumerate()
            .map(|(index, (stated, worked))| {
                run(plan, stated, worked, findings.runs.get(index).unwrap_or(&no_findings))
            })
            .collect(),
        soil: crate::bracing::keys::soil(plan, workup),
        findings: findings.plan.iter().map(finding).collect(),
        assumed: plan::assumed(plan)
            .into_iter()
            .map(|assumed| Assumed { key: assumed.key, value: assumed.value, source: assumed.source })
            .collect(),
    }
}

fn run(plan: &Plan, stated: &plan::Run, worked: &workup::RunWorkup, findings: &[Finding]) -> Run {
    let lay = worked.lay.as_ref();
    Run {
        id: worked.id.clone(),
        name: care::run_name(stated).to_owned(),
        line_m: worked.line_m,
        area_m2: worked.area_m2,
        spare_m: lay.map(|lay| lay.spare_m),
        draw_in: worked.draw_in.map(|drawn| DrawIn {
            at: drawn.at,
            to: drawn.to,
            by_m: drawn.by_m,
            gives_m: drawn.gives_m,
        }),
        short_m: lay.map(|lay| lay.short_m),
        nets_needed: lay.map(|lay| lay.nets_needed.clone()),
        start_m: lay.map(|lay| lay.start_m),
        reversed: lay.map(|lay| lay.reversed),
        corner_miss_m: lay.map(|lay| lay.corner_miss_m),
        corner_miss_bound_m: lay.and_then(|lay| lay.corner_miss_bound_m),
        best: lay.and_then(|lay| lay.best.as_ref()).map(|best| Best {
            start_m: best.start_m,
            reversed: best.reversed,
            nets: best.nets.clone(),
            corner_miss_m: best.corner_miss_m,
        }),
        nets: lay.map(|lay| lay.nets.iter().map(net).collect()),
        posts: lay.map(|lay| lay.posts.iter().map(post).collect()),
        spare_posts: lay.map(|lay| lay.spare_posts.iter().map(post).collect()),
        branches: lay.map(|lay| lay.branches.iter().map(branch).collect()).unwrap_or_default(),
        corners: lay.filter(|lay| lay.corners_judged).map(|lay| lay.corners.iter().map(corner).collect()),
        strip: worked.strip.as_ref().map(|strip| Strip {
            area_m2: strip.area_m2,
            passes: strip.passes,
            walk_m: strip.walk_m,
            minutes: strip.minutes,
        }),
        set_up_minutes: lay.filter(|lay| lay.corners_judged).map(|lay| lay.set_up_minutes),
        work: crate::work::keys::of_run(worked),
        gates: crate::gates::of_run(stated, worked),
        bracing: crate::bracing::keys::of_run(plan, worked),
        slope: crate::slope::of_run(worked),
        voltage: worked.volts.as_ref().zip(lay).map(|(volts, lay)| voltage(volts, lay)),
        findings: findings.iter().map(finding).collect(),
    }
}

fn post(post: &workup::Post) -> Post {
    Post { at: post.at, along_m: post.along_m, net: post.net, post: post.post }
}

fn net(net: &workup::LaidNet) -> Net {
    Net { kind: net.kind.clone(), start_m: net.start_m, end_m: net.end_m }
}

fn branch(branch: &workup::LaidBranch) -> Branch {
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

fn corner(corner: &workup::Corner) -> Corner {
    Corner {
        at: corner.at,
        along_m: corner.along_m,
        turn_deg: corner.turn_deg,
        to_post_m: corner.to_post_m,
        pull_n: corner.pull_n,
        hold_n: corner.hold_n,
        end: corner.end,
        brace: match corner.verdict {
            Verdict::None => "none",
            Verdict::Advised => "advised",
            Verdict::Required => "required",
        },
        brace_holds: corner.braced.then_some(corner.holds),
        stake: Stake { at: corner.stake.at, stand_off_m: corner.stake.stand_off_m, hold_n: corner.stake.hold_n },
    }
}

fn voltage(volts: &workup::Volts, lay: &workup::Lay) -> Voltage {
    let number = |branch: usize| lay.branches.get(branch).map(|branch| branch.branch);
    let sample = |branch: Option<usize>, sample: &workup::Sample| {
        let posts = match branch {
            None => Some(&lay.posts),
            Some(branch) => lay.branches.get(branch).map(|branch| &branch.posts),
        };
        let (post, of) = match sample.of {
            SampleOf::Post(index) => (posts.and_then(|posts| posts.get(index)), None),
            SampleOf::Feed => (None, Some("feed")),
            SampleOf::Fault(_) => (None, Some("fault")),
        };
        Sample {
            along_m: sample.along_m,
            peak_kv: sample.peak_kv,
            animal_kv: sample.animal_kv,
            animal_j: sample.animal_j,
            net: post.map(|post| post.net),
            post: post.map(|post| post.post),
            branch: branch.and_then(number),
            of,
        }
    };
    Voltage {
        feed_kv: volts.feed_kv,
        earth_kv: volts.earth_kv,
        earth_rush_kv: volts.earth_rush_kv,
        earth_ohm: volts.earth_ohm,
        samples: {
            let on_branches = volts.branches.iter().enumerate();
            let on_branches =
                on_branches.flat_map(|(branch, samples)| samples.iter().map(move |one| (Some(branch), one)));
            let all = volts.samples.iter().map(|one| (None, one)).chain(on_branches);
            all.map(|(branch, one)| sample(branch, one)).collect()
        },
        weakest: volts.weakest.map(|weakest| Weakest {
            along_m: weakest.along_m,
            peak_kv: weakest.peak_kv,
            low_kv: weakest.low_kv,
            high_kv: weakest.high_kv,
            measured: weakest.measured,
            net: lay.weakest(&weakest).map_or(0, |post| post.net),
            post: lay.weakest(&weakest).map_or(0, |post| post.post),
            branch: weakest.branch.and_then(number),
        }),
    }
}

fn finding(finding: &Finding) -> FindingOut {
    FindingOut {
        id: finding.id,
        severity: finding.severity.name(),
        message: finding.message.clone(),
        mend: finding.mend.clone(),
        why: finding.why.clone(),
        at: match finding.at.as_slice() {
            [] => None,
            [one] => Some(Places::One(*one)),
            many => Some(Places::Many(many.to_vec())),
        },
        source: finding.source,
    }
}
