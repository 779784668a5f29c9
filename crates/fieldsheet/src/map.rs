//! The map on paper: the one drawing, at a round scale.
//!
//! A pixel of the drawing is 1/96 inch here, so that its smallest letters (11 px) come to 8.25 points.

use care::{Finding, Findings};
use drawing::{Distance, Drawing, Form, Ink, Role, Scene, Spot, Theme, View, furniture};
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

/// So many scales are tried, from the largest that the places fit in.
const TRIED: usize = 4;

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

/// A branch's corner or a known place as the table of corners by tape calls it.
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
    let [left, top, ..] = frame;
    let alone = Alone::of(scene, run);
    let drawing = drawing::map(&alone.scene(scene));
    let mut places = places(scene, run, &drawing, alone.run);
    places.extend(contents.known.iter().map(|known| known.at));
    let paper = Paper { scene, drawing: &drawing, run: alone.run, places: &places, frame };
    let scale = paper.scale();
    let view = paper.view(scale);
    let onto_page = |at: Spot| paper.onto(at);
    let mut over = Sheet::default();
    let at_first = paper.ink(drawing.ink(&view));
    let mut room = Room::of(&at_first, frame);
    let furniture = Furniture::of(&paper, scale, &mut room);
    // Where scale and north had to stand on words, those step aside.
    let kept = room.standing().map(|part| part.map(|part| paper.off(part)));
    let mut ink = paper.ink(drawing.ink(&View { kept, ..view }));
    let mut room = room.over(&ink);
    if let Some([x, y]) = furniture.bar_at {
        let said_width = furniture.said_width();
        over.area([x + left - 1.0, y + top - BAR_HEIGHT, x + left + said_width, y + top], PRINT.sheet);
        over.left(x + left + 2.0, y + top - 9.0, STRONG, &furniture.said);
    }

    let middle = onto_page(view.spot(middle(&places)));
    // Seen from afar the drawing has no corner numbers and no letters, and the sheet's table asks for them.
    if view.distance() == Distance::Far {
        for known in &contents.known {
            let at = onto_page(view.spot(known.at));
            if let Some([x, y]) = room.take(at, [middle[0] - at[0], middle[1] - at[1]]) {
                over.plate(x - PLATE / 2.0, y, &known.name);
            }
        }
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
    ink.extend(furniture.ink);
    over.open_box(frame, 0.8, PRINT.hairline);
    Map { framed: Framed { frame, ink }, over: over.0 }
}

/// A run's map before it has a scale.
struct Paper<'a> {
    scene: &'a Scene<'a>,
    drawing: &'a Drawing,
    /// The run's place in the drawing.
    run: usize,
    /// What must be in sight.
    places: &'a [Point],
    frame: [f32; 4],
}

impl Paper<'_> {
    /// Width and height, pixels of the drawing.
    fn size(&self) -> [f32; 2] {
        let [left, top, right, bottom] = self.frame;
        [(right - left) / PX, (bottom - top) / PX]
    }

    fn view(&self, scale: u32) -> View {
        let px_per_m = 1000.0 / f64::from(scale) * PX_PER_MM;
        let whole = View::fit(None, self.size(), 0.0, Theme::Print);
        View { middle: middle(self.places), px_per_m, ..whole }
    }

    fn onto(&self, [x, y]: Spot) -> Spot {
        [self.frame[0] + x * PX, self.frame[1] + y * PX]
    }

    /// A box of the page on the drawing.
    fn off(&self, [left, top, right, bottom]: [f32; 4]) -> [f32; 4] {
        let off = |x: f32, y: f32| [(x - self.frame[0]) / PX, (y - self.frame[1]) / PX];
        let ([left, top], [right, bottom]) = (off(left, top), off(right, bottom));
        [left, top, right, bottom]
    }

    fn ink(&self, ink: Vec<Ink>) -> Vec<Ink> {
        ink.into_iter().map(|item| on_page(item, |at| self.onto(at))).collect()
    }

    /// The largest scale that everything fits in; a smaller one where that would hide a corner.
    fn scale(&self) -> u32 {
        let first = largest(self.places, self.size());
        let tried = || SCALES.into_iter().filter(|&scale| scale >= first).take(TRIED);
        let sound = tried().find(|&scale| self.spoils(scale) == 0);
        sound.or_else(|| tried().min_by_key(|&scale| self.spoils(scale))).unwrap_or(first)
    }

    /// How many plates of corners would lie beyond the frame, and one more where the net would lie under the bar.
    fn spoils(&self, scale: u32) -> usize {
        let (view, size) = (self.view(scale), self.size());
        let plates = self.drawing.plate_boxes(&view, self.run).into_iter();
        let cut = plates.filter(|plate| !is_within(*plate, size)).count();
        let ink = self.ink(self.drawing.ink(&view));
        cut + usize::from(Furniture::of(self, scale, &mut Room::of(&ink, self.frame)).covers)
    }
}

/// The scale and the north arrow, where they stand on a map.
struct Furniture {
    ink: Vec<Ink>,
    /// How far the bar is moved from the page's corner.
    bar_at: Option<Spot>,
    /// The scale in words.
    said: String,
    /// Whether they cover the net, a sign or words.
    covers: bool,
}

impl Furniture {
    fn of(paper: &Paper<'_>, scale: u32, room: &mut Room<'_>) -> Self {
        let (words, view) = (paper.scene.words, paper.view(scale));
        let said = words.say(Text::Scale, &[("scale", &words.number(f64::from(scale), 0))]);
        let mut furniture = Self { ink: Vec::new(), bar_at: None, said, covers: false };
        let bar = paper.ink(furniture::scale_bar(&view, words, [0.0, 0.0]));
        if let Some(bar_in) = room.corner(&bar, furniture.said_width(), [Side::Bottom, Side::Top]) {
            furniture.ink.extend(moved(bar, bar_in.by));
            (furniture.bar_at, furniture.covers) = (Some(bar_in.by), bar_in.covers);
        }
        let north = paper.ink(furniture::north(Theme::Print, words, [0.0, 0.0]));
        if let Some(north_in) = room.corner(&north, 0.0, [Side::Top, Side::Bottom]) {
            furniture.ink.extend(moved(north, north_in.by));
            furniture.covers |= north_in.covers;
        }
        furniture
    }

    fn said_width(&self) -> f32 {
        STRONG.width(&self.said) + 8.0
    }
}

/// Whether a box of the drawing lies within a map of that size.
fn is_within([left, top, right, bottom]: [f32; 4], size: [f32; 2]) -> bool {
    left >= 0.0 && top >= 0.0 && right <= size[0] && bottom <= size[1]
}

/// A scene without what the sheet of one run leaves out: runs that are other choices or past, and the tags of
/// findings that are no dangers, since its tables tell of those.
struct Alone {
    /// The place of the run among those that are left.
    run: usize,
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
        let own = kept.iter().position(|index| *index == run).unwrap_or_default();
        Self {
            run: own,
            plan,
            workup: Workup { runs: pick(&scene.workup.runs, &kept), ..scene.workup.clone() },
            findings,
        }
    }

    fn scene<'a>(&'a self, whole: &Scene<'_>) -> Scene<'a> {
        Scene { plan: &self.plan, workup: &self.workup, findings: &self.findings, words: whole.words }
    }
}

/// The places that must be in sight: the run, what stands round it, its coops, and where the drawing puts what is stated
/// nowhere.
fn places(scene: &Scene<'_>, run: usize, drawing: &Drawing, drawn: usize) -> Vec<Point> {
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
    places.extend(scene.plan.coops_in(stated).map(|coop| coop.at));
    let signs = drawing.shapes().filter(|shape| shape.run == Some(drawn));
    places.extend(signs.filter_map(|shape| match (&shape.form, shape.role) {
        (Form::Mark { at, .. }, Role::Energizer | Role::EarthStake | Role::Feed) => Some(*at),
        _ => None,
    }));
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
pub(crate) fn bounds(places: &[Point]) -> [f64; 4] {
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

/// The largest round scale at which all places keep some air to the frame.
fn largest(places: &[Point], size: [f32; 2]) -> u32 {
    let [west, south, east, north] = bounds(places);
    let room_mm = size.map(|px| f64::from(px) / PX_PER_MM - 2.0 * AIR_MM);
    let fits = |scale: u32| {
        let mm_per_m = 1000.0 / f64::from(scale);
        (east - west) * mm_per_m <= room_mm[0] && (north - south) * mm_per_m <= room_mm[1]
    };
    // Without a place nothing is measured: a usual scale will do.
    if places.is_empty() {
        return 500;
    }
    SCALES.into_iter().find(|scale| fits(*scale)).unwrap_or(SCALES[SCALES.len() - 1])
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

#[cfg(test)]
mod tests {
    use super::*;
    use plan::NetKind;

    const FRAME: [f32; 4] = [40.0, 105.0, 555.0, 420.0];

    /// A run of so many rolls as a rectangle, with nothing stated but that; at the scale that is taken and at the
    /// largest one.
    fn spoiled(nets: usize, share: f64) -> [usize; 2] {
        let mut plan = Plan::default();
        plan.store.nets.push(NetKind::new("roll", 50.0, 13));
        let (round_m, wide) = (50.0 * nets as f64, share);
        let (east, north) = (round_m / 2.0 * wide, round_m / 2.0 * (1.0 - wide));
        let outline = [(0.0, 0.0), (east, 0.0), (east, north), (0.0, north)].map(Point::from).to_vec();
        plan.runs.push(Run { id: "run".to_owned(), outline, ..Run::default() });
        let workup = workup::workup(&plan, workup::Depth::Quick);
        let words = words::Words::default();
        let findings = care::findings(&plan, &workup, words);
        let scene = Scene { plan: &plan, workup: &workup, findings: &findings, words };
        let alone = Alone::of(&scene, 0);
        let drawing = drawing::map(&alone.scene(&scene));
        let places = places(&scene, 0, &drawing, alone.run);
        let paper = Paper { scene: &scene, drawing: &drawing, run: alone.run, places: &places, frame: FRAME };
        let [taken, most] = [paper.scale(), largest(&places, paper.size())];
        assert!(taken >= most);
        [taken, most].map(|scale| paper.spoils(scale))
    }

    /// Words of the keeper's own all over the ground: wherever scale and north stand, those beneath step aside.
    #[test]
    fn no_words_lie_under_scale_and_north() {
        let mut plan = Plan::default();
        plan.store.nets.push(NetKind::new("roll", 50.0, 13));
        let outline = [(0.0, 0.0), (60.0, 0.0), (60.0, 40.0), (0.0, 40.0)].map(Point::from).to_vec();
        plan.runs.push(Run { id: "run".to_owned(), outline, ..Run::default() });
        let places =
            (-10..=20).flat_map(|column| (-12..=24).map(move |row| (f64::from(column) * 5.0, f64::from(row) * 2.5)));
        plan.labels = places
            .map(|at| plan::Label { text: "stone".to_owned(), at: Point::from(at), ..plan::Label::default() })
            .collect();
        let workup = workup::workup(&plan, workup::Depth::Quick);
        let words = words::Words::default();
        let findings = care::findings(&plan, &workup, words);
        let scene = Scene { plan: &plan, workup: &workup, findings: &findings, words };
        let contents = crate::contents::Look::at(&scene, 0).unwrap().contents(None);
        let ink = map(&scene, 0, &contents, FRAME).framed.ink;
        let stones = ink.iter().filter(|item| matches!(item, Ink::Text { text, .. } if text == "stone")).count();
        assert!(stones > 100, "{stones} stones");
        for (index, item) in ink.iter().enumerate() {
            let Ink::Text { at: [x, y], text, .. } = item else { continue };
            let over = ink[index + 1..]
                .iter()
                .filter_map(Ink::area_box)
                .find(|[left, top, right, foot]| x > left && x < right && y > top && y < foot);
            assert!(over.is_none(), "{text} under {over:?}");
        }
    }

    #[test]
    fn no_corner_lies_under_the_bar_or_beyond_the_frame() {
        let cases = || (2..9).flat_map(|nets| [0.3, 0.5, 0.54, 0.7].map(|share| (nets, share)));
        let all: Vec<[usize; 2]> = cases().map(|(nets, share)| spoiled(nets, share)).collect();
        assert!(all.iter().all(|[taken, _]| *taken == 0), "{all:?}");
        assert!(all.iter().any(|[_, most]| *most > 0), "the largest scale would have done: {all:?}");
    }
}
