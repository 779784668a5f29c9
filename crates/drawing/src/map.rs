//! The plan as a drawing, in metres: what lies below first, words last.

mod earths;
pub(crate) mod faults;
mod features;
pub(crate) mod gates;
mod ground;
mod legends;
pub mod readings;
mod rivals;
pub(crate) mod run;
pub(crate) mod signs;
mod slope;
pub(crate) mod tags;
pub(crate) mod track;

use care::Findings;
use plan::{Plan, Point, RunStatus};
use words::Words;
use workup::Workup;

use crate::shape::{About, Drawing, Form, Priority, Role, Shape, Thing};
use run::RunLine;

/// Everything that is drawn, and the words to say it in.
#[derive(Clone, Copy, Debug)]
pub struct Scene<'a> {
    /// What the keeper stated.
    pub plan: &'a Plan,
    /// What follows from it.
    pub workup: &'a Workup,
    /// What the keeper should know.
    pub findings: &'a Findings,
    /// Language and units.
    pub words: Words,
}

/// Draws a plan. A run that could not be laid is drawn as its outline alone.
pub fn map(scene: &Scene<'_>) -> Drawing {
    map_again(scene, Drawing::default(), None)
}

/// Draws a plan that was drawn before. Of the runs that are not `touched`, nor of anything else that they are drawn
/// from, nothing changed since; `None` where anything may have. Findings may have changed.
pub fn map_again(scene: &Scene<'_>, was: Drawing, touched: Option<&[usize]>) -> Drawing {
    let touched = touched.filter(|_| was.rivals.len() == scene.plan.runs.len());
    let parts = Vec::with_capacity(was.parts.len());
    let kept = touched.map(|touched| Kept { parts: was.parts.into_iter(), touched });
    let mut sheet = Sheet { scene: *scene, run: None, shapes: Vec::new(), parts, kept };
    let runs: Vec<RunLine<'_>> = RunLine::all(scene);
    sheet.part(features::underlay);
    sheet.part(ground::paddock);
    sheet.each(&runs, run::ground);
    sheet.part(|sheet| {
        features::shade(sheet);
        features::damp(sheet);
        ground::features(sheet);
        features::walls(sheet);
        ground::coops(sheet);
        gates::gateway(sheet);
        slope::heights(sheet);
    });
    sheet.each(&runs, gates::ways);
    sheet.each(&runs, |sheet, run| {
        // A guy starts beneath the net that it holds.
        signs::braces(sheet, run);
        run::netting(sheet, run);
        slope::uneven(sheet, run);
        faults::zones(sheet, run);
        signs::gusts(sheet, run);
        signs::power(sheet, run);
        features::drop(sheet, run);
        signs::corners(sheet, run);
        run::draw_in(sheet, run);
        run::rolls(sheet, run);
        gates::signs(sheet, run);
        faults::signs(sheet, run);
    });
    sheet.part(|sheet| {
        ground::handles(sheet);
        features::handles(sheet);
        features::tape_points(sheet);
    });
    sheet.each(&runs, run::handles);
    sheet.part(|sheet| earths::best(sheet, &runs));
    sheet.part(|sheet| tags::tags(sheet, &runs));
    sheet.each(&runs, readings::signs);
    sheet.part(|sheet| {
        features::words(sheet);
        legends::ground(sheet);
        slope::labels(sheet);
    });
    sheet.each(&runs, faults::words);
    sheet.each(&runs, legends::run);
    Drawing {
        parts: sheet.parts,
        target_kv: scene.plan.target_kv(),
        words: scene.words,
        foremost: None,
        chosen: Vec::new(),
        rivals: shown(scene.plan, rivals::rivals(scene.plan)),
        waiting: shown(scene.plan, rivals::waiting(scene.plan)),
        options: scene.plan.runs.iter().map(|run| run.status == RunStatus::Option).collect(),
    }
}

/// What runs are to each run, among those that are shown.
fn shown(plan: &Plan, mut others: Vec<Vec<usize>>) -> Vec<Vec<usize>> {
    let hidden = |run: usize| plan.runs.get(run).is_some_and(|run| run.hidden);
    for (run, of_run) in others.iter_mut().enumerate() {
        of_run.retain(|&other| !hidden(run) && !hidden(other));
    }
    others
}

/// The drawing in the making.
pub(crate) struct Sheet<'a> {
    scene: Scene<'a>,
    /// The run that is being drawn.
    run: Option<usize>,
    /// What was drawn of the part that is being drawn.
    shapes: Vec<Shape>,
    parts: Vec<Vec<Shape>>,
    kept: Option<Kept<'a>>,
}

/// The drawing before, whose parts come in the same order.
struct Kept<'a> {
    parts: std::vec::IntoIter<Vec<Shape>>,
    touched: &'a [usize],
}

impl Sheet<'_> {
    /// Draws something of every run.
    fn each(&mut self, runs: &[RunLine<'_>], draw: impl Fn(&mut Self, &RunLine<'_>)) {
        for run in runs {
            self.run = Some(run.index);
            // A hidden run keeps its empty place among the parts.
            self.part(|sheet| {
                if !run.run.hidden {
                    draw(sheet, run);
                }
            });
        }
        self.run = None;
    }

    /// Draws a part, or takes it from the drawing before where it is of a run that did not change.
    fn part(&mut self, draw: impl FnOnce(&mut Self)) {
        let is_kept = |touched: &[usize]| self.run.is_some_and(|run| !touched.contains(&run));
        let before = self.kept.as_mut().and_then(|kept| kept.parts.next().filter(|_| is_kept(kept.touched)));
        let part = before.unwrap_or_else(|| {
            draw(self);
            std::mem::take(&mut self.shapes)
        });
        self.parts.push(part);
    }

    fn push(&mut self, role: Role, form: Form, thing: Option<Thing>) {
        self.shapes.push(Shape { role, form, thing, run: self.run });
    }

    fn area(&mut self, role: Role, rings: Vec<Vec<Point>>, thing: Option<Thing>) {
        self.push(role, Form::Area { rings }, thing);
    }

    fn path(&mut self, role: Role, points: Vec<Point>, closed: bool, thing: Option<Thing>) {
        self.push(role, Form::Path { points, closed, kv: Vec::new() }, thing);
    }

    fn mark(&mut self, role: Role, at: Point, toward_rad: f64, thing: Option<Thing>) {
        self.push(role, Form::Mark { at, toward_rad }, thing);
    }

    fn label(&mut self, label: Legend, thing: Option<Thing>) {
        let Legend { about, at, toward_rad, texts, priority } = label;
        self.push(Role::Words { about }, Form::Label { at, toward_rad, texts, priority }, thing);
    }

    /// Handles of a stated outline: one for each vertex and each side.
    fn handles(
        &mut self,
        outline: &[Point],
        closed: bool,
        corner: impl Fn(usize) -> Thing,
        side: impl Fn(usize) -> Thing,
    ) {
        for (index, &at) in outline.iter().enumerate() {
            if let Some(&next) = outline.get(index + 1).or(outline.first().filter(|_| closed)) {
                self.path(Role::Side, vec![at, next], false, Some(side(index)));
            }
        }
        for (index, &at) in outline.iter().enumerate() {
            self.mark(Role::Handle, at, 0.0, Some(corner(index)));
        }
    }
}

/// Words in the making.
struct Legend {
    about: About,
    at: Point,
    toward_rad: f64,
    texts: Vec<String>,
    priority: Priority,
}

/// Ground of an outline, square metres.
pub fn area_m2(outline: &[Point]) -> f64 {
    track::signed_area_m2(outline).abs()
}
