//! The map on paper: the one drawing, at a round scale.
//!
//! A pixel of the drawing is 1/96 inch here, so that its smallest letters (11 px) come to 8.25 points.

use care::{Finding, Findings};
use drawing::{Distance, Ink, Scene, Spot, Theme, View, furniture};
use plan::{Plan, Point, Run, RunStatus};
use words::texts::Sheet as Text;
use workup::{SampleOf, Workup};

use crate::contents::Contents;
use crate::page::Framed;
use crate::room::{Room, Side, moved};
use crate::setting::{PLATE, PRINT, STRONG, Sheet};

/// Points in a pixel of the drawing.
const PX: f32 = 72.0 / 96.0;
/// Pixels of the drawing in a millimetre.
const PX_PER_MM: f64 = 96.0 / 25.4;
/// Kept free between the run and the frame, millimetres: a corner's plate and a little air.
const AIR_MM: f64 = 7.5;
/// Round scales, largest first, as scale rulers have them.
const SCALES: [u32; 20] = [
    100, 200, 250, 300, 400, 500, 750, 1000, 1250, 1500, 2000, 2500, 5000, 7500, 10_000, 20_000, 25_000, 50_000,
    100_000, 200_000,
];

/// Height of the ground that is kept clear under the words of the scale, points.
const BAR_HEIGHT: f32 = 18.0;

/// A reading's letter and its place.
pub(crate) struct Spotted {
    pub(crate) letter: String,
    /// Its place; none where the plan states none.
    pub(crate) at: Option<Point>,
    /// Whether it is read on the line; else at the earth stakes.
    pub(crate) on_line: bool,
}

/// A branch's corner as the table of corners by tape calls it.
pub(crate) struct Marked {
    pub(crate) name: String,
    pub(crate) at: Point,
}

/// The map of one run.
pub(crate) struct Map {
    /// Its ink and frame, to be cut off there.
    pub(crate) framed: Framed,
    /// What lies over it: the frame, the scale, the letters of readings.
    pub(crate) over: Vec<Ink>,
}

/// Draws the map of a run into a frame (left, top, right, bottom, points).
pub(crate) fn map(scene: &Scene<'_>, run: usize, contents: &Contents, frame: [f32; 4]) -> Map {
    let [left, top, right, bottom] = frame;
    let size = [(right - left) / PX, (bottom - top) / PX];
    let places = places(scene, run);
    let (scale, view) = view(&places, size);
    let alone = Alone::of(scene, run);
    let onto_page = |[x, y]: Spot| [left + x * PX, top + y * PX];
    let on_page = |ink: Vec<Ink>| ink.into_iter().map(|item| on_page(item, onto_page)).collect::<Vec<_>>();
    let mut ink = on_page(drawing::map(&alone.scene(scene)).ink(&view));

    let mut over = Sheet::default();
    let mut furniture = Vec::new();
    let mut room = Room::of(&ink, frame);
    let bar = on_page(furniture::scale_bar(&view, scene.words, [0.0, 0.0]));
    let said = scene.words.say(Text::Scale, &[("scale", &scene.words.number(f64::from(scale), 0))]);
    let said_width = STRONG.width(&said) + 8.0;
    if let Some([x, y]) = room.corner(&bar, said_width, [Side::Bottom, Side::Top]) {
        furniture.extend(moved(bar, [x, y]));
        over.area([x + left - 1.0, y + top - BAR_HEIGHT, x + left + said_width, y + top], PRINT.sheet);
        over.left(x + left + 2.0, y + top - 9.0, STRONG, &said);
    }
    let north = on_page(furniture::north(Theme::Print, scene.words, [0.0, 0.0]));
    if let Some(by) = room.corner(&north, 0.0, [Side::Top, Side::Bottom]) {
        furniture.extend(moved(north, by));
    }

    let middle = onto_page(view.spot(middle(&places)));
    // Seen from afar the drawing has no corner numbers, and the sheet's table asks for them.
    if view.distance() == Distance::Far {
        for (number, at, stake) in corners(scene, run) {
            let (at, stake) = (onto_page(view.spot(at)), onto_page(view.spot(stake)));
            if let Some([x, y]) = room.take(at, [stake[0] - at[0], stake[1] - at[1]]) {
                over.plate(x - PLATE / 2.0, y, &number);
            }
        }
    }
    for corner in &contents.marked {
        let at = onto_page(view.spot(corner.at));
        if let Some([x, y]) = room.take(at, [middle[0] - at[0], middle[1] - at[1]].map(|part| -part)) {
            over.plate(x - PLATE / 2.0, y, &corner.name);
        }
    }
    for reading in &contents.readings {
        let Some(at) = reading.at.map(|at| onto_page(view.spot(at))) else { continue };
        let inward = [middle[0] - at[0], middle[1] - at[1]];
        let toward = if reading.on_line { inward } else { inward.map(|part| -part) };
        if let Some(ring) = room.take(at, toward) {
            over.ring(ring, &reading.letter);
        }
    }
    ink.extend(furniture);
    over.open_box(frame, 0.8, PRINT.hairline);
    Map { framed: Framed { frame, ink }, over: over.0 }
}

/// A scene without what the sheet of one run leaves out: runs that are other choices or past, and the tags of
/// findings that are no dangers, since its tables tell of those.
struct Alone {
    plan: Plan,
    workup: Workup,
    findings: Findings,
}

impl Alone {
    fn of(scene: &Scene<'_>, run: usize) -> Self {
        let kept = |(index, stated): &(usize, &Run)| *index == run || stated.status == RunStatus::Standing;
        let kept: Vec<usize> = scene.plan.runs.iter().enumerate().filter(kept).map(|(index, _)| index).collect();
        fn pick<T: Clone>(all: &[T], kept: &[usize]) -> Vec<T> {
            kept.iter().filter_map(|index| all.get(*index).cloned()).collect()
        }
        let dangers = |findings: &[Finding]| -> Vec<Finding> {
            findings.iter().filter(|finding| finding.may_hurt()).cloned().collect()
        };
        let mut findings = Findings { runs: pick(&scene.findings.runs, &kept), plan: dangers(&scene.findings.plan) };
        findings.runs.iter_mut().for_each(|found| *found = dangers(found));
        // Paper shows what the window hides: a line overhead is there all the same.
        let mut plan = Plan { runs: pick(&scene.plan.runs, &kept), ..scene.plan.clone() };
        plan.show_all();
        Self { plan, workup: Workup { runs: pick(&scene.workup.runs, &kept), ..scene.workup.clone() }, findings }
    }

    fn scene<'a>(&'a self, whole: &Scene<'_>) -> Scene<'a> {
        Scene { plan: &self.plan, workup: &self.workup, findings: &self.findings, words: whole.words }
    }
}

/// The places that must be in sight: the run, what stands round it, and its coop.
fn places(scene: &Scene<'_>, run: usize) -> Vec<Point> {
    let mut places = Vec::new();
    let Some(stated) = scene.plan.runs.get(run) else { return places };
    places.extend(&stated.outline);
    places.extend(stated.branches.iter().flat_map(|branch| &branch.outline));
    places.extend(stated.feed_at);
    places.extend(stated.energizer_at);
    places.extend(workup::earth::known(stated));
    if let Some(worked) = scene.workup.runs.get(run) {
        if let Some(lay) = &worked.lay {
            places.extend(lay.corners.iter().map(|corner| corner.stake.at));
        }
        if let Some(volts) = &worked.volts {
            let all = volts.samples.iter().chain(volts.branches.iter().flatten());
            let faults = all.filter(|sample| matches!(sample.of, SampleOf::Fault(_)));
            places.extend(faults.map(|sample| sample.at));
        }
    }
    places.extend(scene.plan.coop_in(stated).map(|coop| coop.at));
    places.retain(|at| at.east_m.is_finite() && at.north_m.is_finite());
    places
}

/// The numbers of a run's corners, their places and those of their stakes.
fn corners(scene: &Scene<'_>, run: usize) -> Vec<(String, Point, Point)> {
    let lay = scene.workup.runs.get(run).and_then(|worked| worked.lay.as_ref());
    lay.map_or(&[][..], |lay| &lay.corners)
        .iter()
        .filter_map(|corner| Some(((corner.vertex? + 1).to_string(), corner.at, corner.stake.at)))
        .collect()
}

/// Least and greatest east and north.
fn bounds(places: &[Point]) -> [f64; 4] {
    places.iter().fold([f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY], |bounds, at| {
        [bounds[0].min(at.east_m), bounds[1].min(at.north_m), bounds[2].max(at.east_m), bounds[3].max(at.north_m)]
    })
}

fn middle(places: &[Point]) -> Point {
    let [west, south, east, north] = bounds(places);
    if west > east {
        return Point::new(0.0, 0.0);
    }
    Point::new(f64::midpoint(west, east), f64::midpoint(south, north))
}

/// The largest round scale at which all places keep some air to the frame, and the view at that scale.
fn view(places: &[Point], size: [f32; 2]) -> (u32, View) {
    let [west, south, east, north] = bounds(places);
    let room_mm = size.map(|px| f64::from(px) / PX_PER_MM - 2.0 * AIR_MM);
    let fits = |scale: u32| {
        let mm_per_m = 1000.0 / f64::from(scale);
        (east - west) * mm_per_m <= room_mm[0] && (north - south) * mm_per_m <= room_mm[1]
    };
    // Without a place nothing is measured: a usual scale will do.
    let scale = if places.is_empty() {
        500
    } else {
        SCALES.into_iter().find(|scale| fits(*scale)).unwrap_or(SCALES[SCALES.len() - 1])
    };
    let px_per_m = 1000.0 / f64::from(scale) * PX_PER_MM;
    let whole = View::fit(None, size, 0.0, Theme::Print);
    (scale, View { middle: middle(places), px_per_m, ..whole })
}

/// An item of the map, moved and scaled onto the page.
fn on_page(item: Ink, onto_page: impl Fn(Spot) -> Spot) -> Ink {
    let all = |spots: Vec<Spot>| spots.into_iter().map(&onto_page).collect::<Vec<_>>();
    match item {
        Ink::Area { rings, fill } => Ink::Area { rings: rings.into_iter().map(all).collect(), fill },
        Ink::Line { spots, closed, width, colour, dash } => Ink::Line {
            spots: all(spots),
            closed,
            width: width * PX,
            colour,
            dash: dash.map(|dash| dash.map(|length| length * PX)),
        },
        Ink::Disc { middle, radius, fill, edge } => Ink::Disc {
            middle: onto_page(middle),
            radius: radius * PX,
            fill,
            edge: edge.map(|(width, colour)| (width * PX, colour)),
        },
        Ink::Text { at, text, size, weight, colour, anchor, turn_rad } => {
            Ink::Text { at: onto_page(at), text, size: size * PX, weight, colour, anchor, turn_rad }
        }
    }
}
