//! A run: its ground, its strip and its netting.

use std::f64::consts::FRAC_PI_2;

use plan::{Point, Run, RunStatus};
use workup::{LaidBranch, Lay, RunWorkup, Sample, SampleOf};

use super::track::{SAME_M, Track};
use super::{Scene, Sheet};
use crate::shape::{Form, Role, Thing};

/// A run with what follows for it, and its track where it could be laid.
pub(crate) struct RunLine<'a> {
    /// Its place in the plan.
    pub(crate) index: usize,
    pub(crate) run: &'a Run,
    pub(crate) worked: Option<&'a RunWorkup>,
    pub(crate) laid: Option<(&'a Lay, Track)>,
}

impl<'a> RunLine<'a> {
    /// The run of that place in the plan.
    pub(crate) fn new(scene: &Scene<'a>, index: usize) -> Option<Self> {
        let run = scene.plan.runs.get(index)?;
        let worked = scene.workup.run(&run.id);
        let laid = worked
            .and_then(|worked| worked.lay.as_ref())
            .and_then(|lay| Some((lay, Track::new(&lay.vertices, lay.closed, lay.line_m)?)));
        Some(Self { index, run, worked, laid })
    }

    /// Every run of the plan.
    pub(crate) fn all(scene: &Scene<'a>) -> Vec<Self> {
        (0..scene.plan.runs.len()).filter_map(|index| Self::new(scene, index)).collect()
    }

    /// The run as a thing to pick.
    pub(crate) fn thing(&self) -> Thing {
        Thing::Run { run: self.index }
    }

    /// The vertex of the stated outline that a vertex of the track stands for: repeats were left out of the track.
    pub(crate) fn stated_vertex(&self, vertex: usize) -> usize {
        let Some((_, track)) = &self.laid else { return vertex };
        let Some(&(place, _)) = track.vertices().get(vertex) else { return vertex };
        let near = |stated: &Point| (stated.east_m - place.east_m).hypot(stated.north_m - place.north_m) < SAME_M / 2.0;
        // The same place may be stated twice, far apart in the outline; the first from here on is meant.
        (vertex..self.run.outline.len()).find(|&index| near(&self.run.outline[index])).unwrap_or(vertex)
    }
}

/// Where a place of the chain lies along the line, metres, not yet held to it.
pub(crate) fn along_m(lay: &Lay, chain_m: f64) -> f64 {
    if lay.reversed { lay.start_m - chain_m } else { lay.start_m + chain_m }
}

/// Whether the netting closes a ring.
pub(crate) fn is_ring(lay: &Lay) -> bool {
    lay.closed && lay.short_m < SAME_M
}

/// The ground that a run encloses and the strip.
pub(super) fn ground(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    let encloses = run.laid.as_ref().map_or(run.run.closed(), |(lay, _)| lay.closed);
    // Ground that a wall shuts in is filled like any other.
    let ring = run.worked.and_then(|worked| worked.closing.as_ref()?.ring());
    if let Some(ring) = ring.filter(|_| !encloses) {
        sheet.area(Role::RunGround, vec![ring.to_vec()], Some(run.thing()));
    } else if encloses && run.run.outline.len() >= 3 {
        sheet.area(Role::RunGround, vec![run.run.outline.clone()], Some(run.thing()));
    }
    let Some(strip) = run.worked.and_then(|worked| worked.strip.as_ref()) else { return };
    if run.run.status == RunStatus::Past {
        return;
    }
    for rings in &strip.polygons {
        if rings.first().is_some_and(|ring| ring.len() >= 3) {
            sheet.area(Role::Strip, rings.clone(), None);
        }
    }
    let walk = run.worked.and_then(|worked| worked.mow_walk.as_ref()).filter(|_| strip.passes <= MOST_PASSES);
    for line in walk.iter().flat_map(|walk| &walk.lines) {
        let places = line.points.iter().map(|at| Point::new(at.east_m, at.north_m)).collect();
        sheet.path(Role::StripPass, places, line.closed, None);
    }
}

/// More passes than this are a grey blur.
const MOST_PASSES: u32 = 12;

/// In which order the rolls are laid: a number where each begins, on the inner side, and the way it is rolled out.
pub(super) fn rolls(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    let Some((lay, track)) = run.laid.as_ref().filter(|_| run.run.status != RunStatus::Past) else { return };
    let Some(work) = run.worked.and_then(|worked| worked.set_up.as_ref()).filter(|work| work.order.len() > 1) else {
        return;
    };
    // Of the last nets a part, or all, may be left over: what of one stands is marked.
    for (roll, [start_m, end_m]) in work.standing(lay) {
        let in_m = ROLL_SHARE * (end_m - start_m);
        let chain_m = if roll.forward { start_m + in_m } else { end_m - in_m };
        let along_m = along_m(lay, chain_m);
        let outward_rad = track.square_outward(along_m);
        // The outer side is to the right of the drawn net; the chain may run either way round.
        let with_outline = roll.forward != lay.reversed;
        let turn_rad = if with_outline == track.outside_right() { FRAC_PI_2 } else { -FRAC_PI_2 };
        let at = track.at(along_m);
        sheet.mark(Role::Roll { number: roll.number, outward_rad }, at, outward_rad + turn_rad, None);
    }
}

/// The corner to draw in where hardly any netting is spare.
pub(super) fn draw_in(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    let drawn = run.worked.and_then(|worked| worked.draw_in.as_ref()).filter(|_| run.run.status != RunStatus::Past);
    if let Some(drawn) = drawn {
        let way = [drawn.to.east_m - drawn.at.east_m, drawn.to.north_m - drawn.at.north_m];
        sheet.mark(Role::DrawIn, drawn.at, way[1].atan2(way[0]), None);
    }
}

/// A roll's number stands so far into it, clear of its first post and of the corner that it may begin at.
const ROLL_SHARE: f64 = 0.12;

/// Netting, posts, joins, ends, spare and gap; the bare outline where the run was not laid or stood once.
pub(super) fn netting(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    let laid = run.laid.as_ref().filter(|_| run.run.status != RunStatus::Past);
    let Some((lay, track)) = laid else {
        sheet.path(Role::Outline, run.run.outline.clone(), run.run.closed(), Some(run.thing()));
        return;
    };
    let covered_m = lay.covered_m();
    if covered_m < lay.line_m {
        let points = chain(lay, track, covered_m, lay.line_m, &[]).into_iter().map(|knot| knot.0).collect();
        sheet.path(Role::Gap, points, false, Some(run.thing()));
    }
    if lay.spare_m >= SAME_M {
        let from_m = (lay.line_m - lay.spare_m).max(0.0);
        let points = chain(lay, track, from_m, lay.line_m, &[]).into_iter().map(|knot| knot.0).collect();
        sheet.path(Role::Spare, points, false, None);
        for post in lay.spare_posts.iter().filter(|post| post.chain_m < 2.0 * lay.line_m) {
            let inward = track.outward(post.along_m) + std::f64::consts::PI;
            sheet.mark(Role::SparePost, post.at, inward, None);
        }
    }
    for (index, branch) in lay.branches.iter().enumerate() {
        let samples = run.worked.and_then(|worked| worked.volts.as_ref()?.branches.get(index));
        self::branch(sheet, run, branch, samples.map_or(&[], Vec::as_slice));
    }
    net(sheet, run, lay, track, covered_m);
    posts(sheet, run, lay, track, covered_m);
}

/// A line of netting that hangs on the run's, with its posts; what is folded back is not drawn.
fn branch(sheet: &mut Sheet<'_>, run: &RunLine<'_>, branch: &LaidBranch, samples: &[Sample]) {
    let Some(track) = Track::new(&branch.vertices, false, branch.line_m) else { return };
    let covered_m = if branch.short_m < SAME_M { branch.line_m } else { branch.line_m - branch.short_m };
    let mut kv: Vec<(f64, f64)> = samples.iter().map(|sample| (sample.along_m, sample.peak_kv)).collect();
    // Faults come after the posts that they are between.
    kv.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut stops: Vec<f64> = branch.vertices.iter().map(|vertex| vertex.1).chain(kv.iter().map(|one| one.0)).collect();
    stops.extend([0.0, covered_m]);
    stops.retain(|&stop| stop <= covered_m);
    stops.sort_by(f64::total_cmp);
    stops.dedup_by(|later, kept| *later - *kept < 1e-6);
    let volts = stops.iter().map(|&stop| kv_at(&kv, stop).filter(|kv| kv.is_finite())).collect::<Option<Vec<f64>>>();
    let points = stops.iter().map(|&stop| track.at(stop)).collect();
    let thing = Some(Thing::Branch { run: run.index, branch: branch.branch });
    sheet.push(Role::Net, Form::Path { points, closed: false, kv: volts.unwrap_or_default() }, thing);
    if covered_m < branch.line_m {
        let places = [track.at(covered_m)].into_iter();
        let rest = branch.vertices.iter().filter(|vertex| vertex.1 > covered_m).map(|vertex| vertex.0);
        sheet.path(Role::Gap, places.chain(rest).collect(), false, thing);
    }
    for (index, post) in branch.posts.iter().enumerate() {
        let twin = branch.posts.get(index + 1).is_some_and(|next| (next.chain_m - post.chain_m).abs() < SAME_M);
        let role = match post.post {
            // Where it hangs the run's own netting stands.
            0 if post.net == 0 => continue,
            _ if twin => continue,
            0 => Role::Join,
            _ if index + 1 == branch.posts.len() => Role::EndPost,
            number => Role::Post { number },
        };
        sheet.mark(role, post.at, track.outward(post.along_m), None);
    }
}

/// Volts along the chain: places, metres, in their order, and kilovolts. Two samples of one place are a step.
pub(crate) fn samples(run: &RunLine<'_>) -> Vec<(f64, f64)> {
    let mut samples: Vec<(f64, f64)> = run
        .worked
        .and_then(|worked| worked.volts.as_ref())
        .map(|volts| volts.samples.iter().map(|sample| (sample.chain_m, sample.peak_kv)).collect())
        .unwrap_or_default();
    samples.retain(|sample| sample.0.is_finite() && sample.1.is_finite());
    samples.sort_by(|a, b| a.0.total_cmp(&b.0));
    samples
}

fn net(sheet: &mut Sheet<'_>, run: &RunLine<'_>, lay: &Lay, track: &Track, covered_m: f64) {
    let samples = samples(run);
    let knots = chain(lay, track, 0.0, covered_m, &samples);
    let (points, kv): (Vec<Point>, Vec<Option<f64>>) = knots.into_iter().unzip();
    let kv = kv.into_iter().collect::<Option<Vec<f64>>>().unwrap_or_default();
    let form = Form::Path { points, closed: is_ring(lay), kv };
    sheet.push(Role::Net, form, Some(run.thing()));
}

/// Places of the chain from one metre to another, with volts between samples, the outside to the right.
fn chain(lay: &Lay, track: &Track, from_m: f64, to_m: f64, samples: &[(f64, f64)]) -> Vec<(Point, Option<f64>)> {
    let mut stops: Vec<(f64, Option<f64>)> = vec![(from_m, kv_at(samples, from_m)), (to_m, kv_at(samples, to_m))];
    for &(_, vertex_m) in track.vertices() {
        let from_start = if lay.reversed { lay.start_m - vertex_m } else { vertex_m - lay.start_m };
        let chain_m = if track.closed() { from_start.rem_euclid(track.line_m()) } else { from_start };
        stops.push((chain_m, kv_at(samples, chain_m)));
    }
    stops.extend(samples.iter().map(|&(chain_m, kv)| (chain_m, Some(kv))));
    stops.retain(|stop| stop.0 >= from_m && stop.0 <= to_m);
    // A stable sort keeps two samples of one place in their order: a step in volts stays a step.
    stops.sort_by(|a, b| a.0.total_cmp(&b.0));
    if lay.reversed == track.outside_right() {
        stops.reverse();
    }
    stops.into_iter().map(|(chain_m, kv)| (track.at(along_m(lay, chain_m)), kv)).collect()
}

/// Volts at a place of the chain, between the samples on either side; `None` without samples.
pub(crate) fn kv_at(samples: &[(f64, f64)], chain_m: f64) -> Option<f64> {
    let after = samples.partition_point(|sample| sample.0 < chain_m);
    match (after.checked_sub(1).and_then(|index| samples.get(index)), samples.get(after)) {
        (Some(a), Some(b)) if b.0 > a.0 => Some(a.1 + (b.1 - a.1) * (chain_m - a.0) / (b.0 - a.0)),
        (_, Some(only)) | (Some(only), None) => Some(only.1),
        (None, None) => None,
    }
}

fn posts(sheet: &mut Sheet<'_>, run: &RunLine<'_>, lay: &Lay, track: &Track, covered_m: f64) {
    let joins = joins_m(lay, covered_m);
    let ends = ends_m(lay, covered_m);
    let stands_at = |places: &[f64], chain_m: f64| places.iter().any(|&place| (place - chain_m).abs() < SAME_M);
    for (index, post) in lay.posts.iter().enumerate() {
        // A join and an end have signs of their own; the chain's last post may stand beside its first.
        let wraps = is_ring(lay) && (post.chain_m - lay.line_m).abs() < SAME_M;
        if !wraps && !stands_at(&joins, post.chain_m) && !stands_at(&ends, post.chain_m) {
            let thing = Some(Thing::Post { run: run.index, post: index });
            sheet.mark(Role::Post { number: post.post }, post.at, track.outward(post.along_m), thing);
        }
    }
    let thing = |chain_m: f64| {
        let post = lay.posts.iter().position(|post| (post.chain_m - chain_m).abs() < SAME_M);
        post.map(|post| Thing::Post { run: run.index, post })
    };
    for (role, places) in [(Role::Join, joins), (Role::EndPost, ends)] {
        for chain_m in places {
            let place_m = along_m(lay, chain_m);
            sheet.mark(role, track.at(place_m), track.outward(place_m), thing(chain_m));
        }
    }
}

/// Where nets join, metres of the chain; the closing join of a ring is at 0.
pub(crate) fn joins_m(lay: &Lay, covered_m: f64) -> Vec<f64> {
    let closing = is_ring(lay).then_some(0.0);
    let between = lay.nets.iter().map(|net| net.end_m).filter(|&end_m| end_m < covered_m - SAME_M);
    closing.into_iter().chain(between).collect()
}

/// Where the netting ends, metres of the chain.
pub(crate) fn ends_m(lay: &Lay, covered_m: f64) -> Vec<f64> {
    if is_ring(lay) { Vec::new() } else { vec![0.0, covered_m] }
}

/// Volts of a post.
pub(crate) fn post_kv(run: &RunLine<'_>, post: usize) -> Option<f64> {
    let volts = run.worked?.volts.as_ref()?;
    // Samples of posts come first and in their order; anything else is looked for.
    let of_post = |sample: &&workup::Sample| sample.of == SampleOf::Post(post);
    volts.samples.get(post).filter(of_post).or_else(|| volts.samples.iter().find(of_post)).map(|sample| sample.peak_kv)
}

/// Handles of a run's outline and of its branches' lines.
pub(super) fn handles(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    let index = run.index;
    sheet.handles(
        &run.run.outline,
        run.run.closed(),
        |vertex| Thing::RunCorner { run: index, vertex },
        |side| Thing::RunSide { run: index, side },
    );
    for (branch, stated) in run.run.branches.iter().enumerate() {
        sheet.handles(
            &stated.outline,
            false,
            |vertex| Thing::BranchCorner { run: index, branch, vertex },
            |side| Thing::BranchSide { run: index, branch, side },
        );
    }
}
