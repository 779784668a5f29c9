//! What the window is about, without a window: the plan, what follows from it, and what the keeper is at.
//!
//! Views read the [`Editor`] and say [`Message`]s; nothing else changes it. Every change of the plan is an
//! `Edit` through `plan`'s history. What follows from the plan is worked out here in two parts: the cheap one at
//! once, so that every figure and mark follows a drag within its frame; what an animal feels, what pins cost and the ways
//! to gates are asked of the worker ([`Editor::request`]) and marked as stale or waiting until it answers.

mod bracing;
mod document;
pub(crate) mod faults;
mod first;
mod fitting;
mod gates;
mod hold;
mod message;
mod pins;
mod reckoning;
mod rework;
mod shapes;
mod snap;
mod whole;

use std::collections::BTreeMap;
use std::path::PathBuf;
use std::sync::Arc;

use care::{Findings, Rounds};
use drawing::{Drawing, Scene, Theme, Thing, View};
use plan::{Deed, Edit, History, Plan, Point, Run, Shape};
use words::Words;
use words::texts::Window as Text;
use workup::{Known, RunWorkup, Workup};

use crate::tool::{Hand, Tool};
use crate::worker::{Answer, Request};
use fitting::Fitting;
use hold::Held;

pub use bracing::BracingMessage;
pub use document::SaveState;
pub use faults::{Curve, trial_fault};
pub use first::{Lesson, Question};
pub use fitting::FitAnswer;
pub use message::Message;
pub use shapes::{Progress, Row, RowOf, ShapeKey, Shapes, ShapesMessage};
pub use snap::Snapped;

/// Free space left round the plan when it is fitted into the map, pixels; more where nothing but runs is there,
/// whose plates and leads stand outside them.
const FIT_MARGIN_PX: f32 = 56.0;
const FIT_BARE_PX: f32 = 100.0;

/// The pages beside the map.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Page {
    /// The paddock, what stands on it, its soil.
    Ground,
    /// The runs.
    #[default]
    Run,
    /// Volts.
    Power,
    /// Where the flock goes next.
    Moves,
    /// What was read.
    Book,
    /// Paper.
    Sheet,
}

impl Page {
    /// The pages in the head's order.
    pub const ALL: [Self; 6] = [Self::Ground, Self::Run, Self::Power, Self::Moves, Self::Book, Self::Sheet];
}

/// What an animal feels at the weakest post.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Touch {
    /// Peak across its body, kilovolts.
    pub kv: f64,
    /// Energy in its body, joules.
    pub j: f64,
}

/// Everything the window shows, and the one place where it changes.
pub struct Editor {
    plan: Plan,
    history: History,
    words: Words,
    workup: Workup,
    /// What the worker searched for, which the quick part takes over where nothing of it changed.
    known: Known,
    /// The plan that the workup is of, where all of it was worked out.
    worked_of: Option<Plan>,
    rounds: Rounds,
    findings: Findings,
    drawing: Drawing,
    stamp: u64,
    touches: BTreeMap<String, Touch>,
    touches_of: Option<u64>,
    /// Whether the worker is yet to be asked.
    to_ask: bool,
    fitting: Fitting,
    /// Pins that the last fit took out.
    unpinned: usize,
    shapes: Shapes,
    reckoning: reckoning::Reckoning,
    run: usize,
    picked: Option<Thing>,
    page: Page,
    tool: Tool,
    held: Option<Held>,
    why: bool,
    compare: bool,
    notice: Option<Text>,
    snapped: Option<Snapped>,
    sound: faults::Sound,
    curve: Option<Curve>,
    question: Option<Question>,
    lesson: Lesson,
    file: Option<PathBuf>,
    saved: Option<Plan>,
    as_saved: bool,
    example: bool,
    epoch: u64,
    view: View,
    /// Whether the page's part about the wind is in sight.
    looks_at_wind: bool,
    fitted: bool,
}

impl Editor {
    /// An editor of a plan.
    pub fn new(plan: Plan, words: Words) -> Self {
        let mut editor = Self {
            history: History::default(),
            words,
            workup: Workup::default(),
            known: Known::default(),
            worked_of: None,
            rounds: Rounds::default(),
            findings: Findings::default(),
            drawing: Drawing::default(),
            stamp: 0,
            touches: BTreeMap::new(),
            touches_of: None,
            to_ask: false,
            fitting: Fitting::default(),
            unpinned: 0,
            shapes: Shapes::default(),
            reckoning: reckoning::Reckoning::default(),
            run: 0,
            picked: None,
            page: Page::default(),
            tool: Tool::default(),
            held: None,
            why: false,
            compare: plan.runs.len() > 1,
            notice: None,
            snapped: None,
            sound: faults::Sound::default(),
            curve: None,
            question: None,
            lesson: Lesson::Done,
            file: None,
            saved: Some(plan.clone()),
            as_saved: true,
            example: false,
            epoch: 0,
            view: View::fit(None, [800.0, 600.0], FIT_MARGIN_PX, Theme::Light),
            looks_at_wind: false,
            fitted: true,
            plan,
        };
        editor.changed();
        editor.fit();
        editor
    }

    /// Takes a message.
    pub fn receive(&mut self, message: Message) {
        if !matches!(
            message,
            Message::Hover(_)
                | Message::Hand(Hand::Move(_))
                | Message::Size(..)
                | Message::Worked(_)
                | Message::Reckoned(_)
                | Message::Shapes(_)
        ) {
            self.notice = None;
        }
        // The last lesson goes when the keeper goes on.
        if self.lesson == Lesson::ReadLine && matches!(message, Message::Open(_) | Message::Use(_) | Message::Make(_)) {
            self.lesson = Lesson::Done;
        }
        match message {
            Message::Open(page) => {
                // The page's own name leads back from other shapes.
                if page == Page::Run && self.page == Page::Run && self.shapes.is_open() {
                    self.shapes_said(ShapesMessage::Open(false));
                }
                self.page = page;
                self.tool = Tool::Pick;
                self.snapped = None;
                self.reckon_sound();
            }
            Message::Pick(thing) => self.pick(thing),
            Message::Hover(thing) => self.view.hovered = thing,
            Message::Make(edit) => self.make(edit),
            Message::Begin => self.history.begin(),
            Message::End => self.history.end(),
            Message::Use(tool) => {
                self.tool = tool;
                self.snapped = None;
                self.pick(None);
            }
            Message::Hand(hand) => self.hand(hand),
            Message::Grab(thing, at) => self.grab(thing, at),
            Message::GrabTurn(at) => self.grab_turn(at),
            Message::Drag(to) => self.drag(to),
            Message::Drop => self.let_go(),
            // Nothing else is done to the plan while something is in the hand.
            Message::FitNets(_)
            | Message::TakeNearest
            | Message::Nudge(..)
            | Message::Turn(_)
            | Message::SideLength(..)
            | Message::ToPost(_)
            | Message::Duplicate
            | Message::Remove
            | Message::Bracing(_)
                if self.held.is_some() => {}
            Message::FitNets(double_back) => self.ask_fit(double_back),
            Message::Bracing(said) => self.bracing_said(said),
            Message::TakeNearest => self.take_nearest(),
            Message::Nudge(east_m, north_m) => self.nudge(east_m, north_m),
            Message::Turn(clockwise_deg) => self.turn_by(clockwise_deg),
            Message::SideLength(shape, side, length_m) => self.side_length(shape, side, length_m),
            Message::ToPost(corner) => self.move_to_post(corner),
            Message::Duplicate => self.duplicate(),
            Message::Remove => self.remove(),
            Message::Escape => self.escape(),
            Message::Undo => self.turn(History::undo),
            Message::Redo => self.turn(History::redo),
            Message::GoTo(steps) => self.go_to(steps),
            Message::Units(units) => {
                self.words.units = units;
                self.say(None);
            }
            Message::Theme(theme) => self.view.theme = theme,
            Message::Why(open) => self.why = open,
            Message::Compare(open) => self.compare = open,
            Message::Shapes(said) => self.shapes_said(said),
            Message::Size(size, kept) => {
                self.view.kept = kept;
                if size != self.view.size {
                    self.view.size = size;
                    // Nothing jumps from under the hand.
                    if self.fitted && self.held.is_none() {
                        self.fit();
                    }
                }
            }
            Message::Fit => self.fit(),
            Message::Zoom(by, about) => {
                self.view = self.view.zoomed(by, about);
                self.fitted = false;
            }
            Message::Pan(right_px, down_px) => {
                self.view = self.view.moved(right_px, down_px);
                self.fitted = false;
            }
            Message::KeepCurve => self.keep_curve(),
            Message::NameCurve(name) => self.name_curve(name),
            Message::LetCurveGo => self.curve = None,
            Message::Worked(answer) => self.worked(*answer),
            Message::Reckoned(reckoned) => self.reckoned(*reckoned),
            Message::AskRolls => self.ask_rolls(),
            Message::Rolls(rolls) => self.answer_rolls(rolls),
            Message::LayOut => self.lay_out(),
            Message::LeaveQuestion => self.leave_question(),
            Message::StartEmpty => self.start_empty(),
            Message::Learnt(lesson) => self.lesson = lesson,
            Message::Example(plan) => {
                self.replace(*plan, None);
                self.mark_example();
            }
            Message::Opened(plan, file) => self.replace(*plan, file),
            Message::Recovered(plan, file) => self.recovered(*plan, file),
            Message::Saved(file) => self.saved(file),
            Message::BringIn(plan) => self.bring_in(*plan),
            Message::BringHeights(import) => self.bring_heights(*import),
        }
        self.view.picked = self.picked;
        self.view.handles = self.picked.is_some();
        let wind = self.looks_at_wind || self.plan.ground.wind_m_per_s.is_some();
        self.view.wind = wind && self.page == Page::Run;
        if self.drawing.foremost != Some(self.run) {
            self.drawing.foremost = Some(self.run);
            self.stamp += 1;
        }
    }

    /// The plan.
    pub fn plan(&self) -> &Plan {
        &self.plan
    }

    /// What follows from it.
    pub fn workup(&self) -> &Workup {
        &self.workup
    }

    /// What the keeper should know.
    pub fn findings(&self) -> &Findings {
        &self.findings
    }

    /// Everything a drawing is made of.
    pub fn scene(&self) -> Scene<'_> {
        Scene { plan: &self.plan, workup: &self.workup, findings: &self.findings, words: self.words }
    }

    /// The map.
    pub fn drawing(&self) -> &Drawing {
        &self.drawing
    }

    /// Counts the changes of what is drawn: ink of the same stamp and view is the same.
    pub fn stamp(&self) -> u64 {
        self.stamp
    }

    /// The camera.
    pub fn view(&self) -> &View {
        &self.view
    }

    /// Language and units.
    pub fn words(&self) -> Words {
        self.words
    }

    /// The theme.
    pub fn theme(&self) -> Theme {
        self.view.theme
    }

    /// The open page.
    pub fn page(&self) -> Page {
        self.page
    }

    /// The tool at hand.
    pub fn tool(&self) -> &Tool {
        &self.tool
    }

    /// What is picked.
    pub fn picked(&self) -> Option<Thing> {
        self.picked
    }

    /// What is under the pointer.
    pub fn hovered(&self) -> Option<Thing> {
        self.view.hovered
    }

    /// Where what is held was, while it is dragged.
    pub fn held_from(&self) -> Option<Point> {
        self.held.as_ref().map(|held| held.was)
    }

    /// What caught the thing in the hand, or the corner about to be drawn.
    pub fn snapped(&self) -> Option<&Snapped> {
        self.snapped.as_ref()
    }

    /// The question that stands on the map.
    pub fn question(&self) -> Option<&Question> {
        self.question.as_ref()
    }

    /// What the keeper is shown next after the first run was laid.
    pub fn lesson(&self) -> Lesson {
        self.lesson
    }

    /// What was done, the first step first, and what was taken back, the next first.
    pub fn deeds(&self) -> (Vec<Deed>, Vec<Deed>) {
        (self.history.done().collect(), self.history.undone().collect())
    }

    /// Every edit that took effect since this was last asked: what the journal keeps.
    pub fn take_applied(&mut self) -> Vec<Edit> {
        self.history.take_applied()
    }

    /// Whether the figures behind the corners' sentences are shown.
    pub fn why(&self) -> bool {
        self.why
    }

    /// Whether the table of all runs is shown, with other shapes or without.
    pub fn compare(&self) -> bool {
        (self.compare && self.plan.runs.len() > 1) || self.shapes.is_open()
    }

    /// Something to be said about the last thing done.
    pub fn notice(&self) -> Option<Text> {
        self.notice
    }

    /// The place of the run in hand.
    pub fn run_index(&self) -> usize {
        self.run
    }

    /// The run in hand, and what follows for it.
    pub fn run(&self) -> Option<(&Run, &RunWorkup)> {
        self.plan.runs.get(self.run).zip(self.workup.runs.get(self.run))
    }

    /// What an animal feels at the weakest post of a run, and whether that belongs to an earlier plan.
    pub fn touch(&self, run: &str) -> Option<(Touch, bool)> {
        let stale = self.touches_of != Some(self.history.revision());
        self.touches.get(run).map(|&touch| (touch, stale))
    }

    /// Whether there is a step to take back.
    pub fn can_undo(&self) -> bool {
        self.history.can_undo()
    }

    /// Whether there is a step to do again.
    pub fn can_redo(&self) -> bool {
        self.history.can_redo()
    }

    /// What the worker should be asked, once. While something is in the hand the next frame would ask anew, and the
    /// worker would only slow it down.
    pub fn request(&mut self) -> Option<Request> {
        let asks = self.to_ask && self.held.is_none();
        self.to_ask &= !asks;
        if !asks {
            return None;
        }
        Some(Request { revision: self.history.revision(), plan: self.plan.clone(), fit: self.take_fit() })
    }

    /// Whether the worker's answer to the plan as it is has come.
    pub fn is_full(&self) -> bool {
        self.touches_of == Some(self.history.revision())
    }

    fn pick(&mut self, thing: Option<Thing>) {
        self.take_up(thing);
        if let Some(page) = thing.and_then(page_of) {
            self.page = page;
        }
    }

    /// Picks something without opening its page.
    fn take_up(&mut self, thing: Option<Thing>) {
        self.picked = thing;
        if let Some(run) = thing.and_then(Thing::run) {
            self.run = run;
            self.drawing.foremost = Some(run);
        }
    }

    fn make(&mut self, edit: Edit) {
        self.make_all(vec![edit]);
    }

    /// Makes edits; what follows from the plan is worked out once, after the last.
    fn make_all(&mut self, edits: Vec<Edit>) {
        for edit in edits {
            let edit = pins::with_pins(&self.plan, edit);
            // Views offer only what the plan has; a message that came too late is no matter.
            if let Err(error) = self.history.apply(&mut self.plan, edit) {
                tracing::debug!(%error, "an edit was not made");
            }
        }
        self.changed();
    }

    fn turn(&mut self, which: fn(&mut History, &mut Plan) -> bool) {
        self.held = None;
        self.snapped = None;
        if which(&mut self.history, &mut self.plan) {
            self.changed();
        }
    }

    /// Undoes or redoes until so many steps are done.
    fn go_to(&mut self, steps: usize) {
        while self.history.done().len() > steps && self.history.can_undo() {
            self.turn(History::undo);
        }
        while self.history.done().len() < steps && self.history.can_redo() {
            self.turn(History::redo);
        }
    }

    /// Takes in a paddock that was read from a file, as one step.
    fn bring_in(&mut self, brought: Plan) {
        // A plan that has its place on the globe keeps it, and what is brought comes into its metres.
        let moved = match (&self.plan.origin, &brought.origin) {
            (Some(own), Some(theirs)) => exchange::projection::between(theirs, own),
            _ => None,
        };
        let to = |at: Point| moved.as_ref().and_then(|moved| moved.of(at)).unwrap_or(at);
        let outline = brought.ground.boundary.iter().map(|&at| to(at)).collect();
        let mut keep_outs = self.plan.ground.keep_outs.clone();
        keep_outs.extend(brought.ground.keep_outs.into_iter().map(|mut keep_out| {
            keep_out.outline.iter_mut().for_each(|at| *at = to(*at));
            keep_out
        }));
        let origin = self.plan.origin.clone().or(brought.origin);
        self.history.begin();
        self.make_all(vec![
            Edit::SetOutline { shape: Shape::Boundary, outline },
            Edit::SetOrigin { origin },
            Edit::SetKeepOuts { keep_outs },
        ]);
        self.history.end();
        self.pick(Some(Thing::Boundary));
        self.fit();
    }

    /// Takes in heights that were read from a file, as one step.
    fn bring_heights(&mut self, import: exchange::heights::Import) {
        let origin = self.plan.origin.clone().or(import.origin);
        self.history.begin();
        self.make_all(vec![Edit::SetOrigin { origin }, Edit::SetHeightGrid { grid: Some(Arc::new(import.grid)) }]);
        self.history.end();
    }

    fn hand(&mut self, hand: Hand) {
        if let Tool::Try(trial) = self.tool {
            return self.try_out(trial, hand);
        }
        let hand = self.caught(hand);
        let (tool, edit) = std::mem::take(&mut self.tool).step(hand, &self.plan);
        self.tool = tool;
        if self.tool == Tool::Pick {
            self.snapped = None;
        }
        if let Some(mut edit) = edit {
            let thing = match &mut edit {
                Edit::AddRun { index, run } => {
                    run.name = self.words.say(Text::RunNumber, &[("number", &(*index + 1).to_string())]);
                    Thing::Run { run: *index }
                }
                Edit::SetKeepOuts { keep_outs } => Thing::KeepOut { keep_out: keep_outs.len().saturating_sub(1) },
                Edit::SetHazards { hazards } => Thing::Hazard { hazard: hazards.len().saturating_sub(1) },
                Edit::SetHeights { heights } => Thing::Height { height: heights.len().saturating_sub(1) },
                Edit::SetCoop { .. } => Thing::Coop { coop: 0 },
                Edit::SetGateway { .. } => Thing::Gateway,
                Edit::SetRun { run } => {
                    let index = self.plan.runs.iter().position(|other| other.id == run.id);
                    Thing::Run { run: index.unwrap_or(self.run) }
                }
                _ => Thing::Boundary,
            };
            self.make(edit);
            self.pick(Some(thing));
        }
    }

    /// A hand that draws is caught by posts and corners, as one that drags is.
    fn caught(&mut self, hand: Hand) -> Hand {
        let at = match hand {
            Hand::Move(at) | Hand::Click { at, .. } => at,
            Hand::Close | Hand::Back | Hand::Leave => {
                self.snapped = None;
                return hand;
            }
        };
        self.snapped = self.catch(None, at);
        let at = self.snapped.as_ref().map_or(at, |snapped| snapped.at);
        match hand {
            Hand::Click { reach_m, .. } => Hand::Click { at, reach_m },
            _ => Hand::Move(at),
        }
    }

    fn escape(&mut self) {
        if self.question.is_some() {
            self.leave_question();
        } else if self.held.is_some() {
            self.held = None;
            self.snapped = None;
            if self.history.cancel(&mut self.plan) {
                self.changed();
            }
        } else if self.tool == Tool::Pick && self.picked.is_none() && self.shapes.is_open() {
            self.shapes_said(ShapesMessage::Open(false));
        } else if self.tool == Tool::Pick {
            self.pick(None);
        } else {
            self.hand(Hand::Leave);
        }
    }

    /// What is known from one workup to the next.
    pub fn known(&self) -> &Known {
        &self.known
    }

    fn worked(&mut self, answer: Answer) {
        if answer.revision != self.history.revision() {
            return;
        }
        self.touches = answer.workup.runs.iter().filter_map(touch).collect();
        self.touches_of = Some(answer.revision);
        let waited = self.workup.runs.iter().any(RunWorkup::waits);
        self.workup = answer.workup;
        self.known = answer.known;
        if waited {
            // Ways are drawn, and what is shut off is found.
            self.say(None);
        }
        if let Some((asked, fitted)) = answer.fitted {
            self.fitted(asked, fitted);
        }
    }

    /// The plan changed: what is cheap follows at once, the rest is asked for.
    fn changed(&mut self) {
        let (workup, mut touched) =
            rework::quick(&self.plan, self.worked_of.as_ref(), std::mem::take(&mut self.workup), &mut self.known);
        self.workup = workup;
        self.worked_of = self.question.is_none().then(|| self.plan.clone());
        self.as_saved = self.saved.as_ref() == Some(&self.plan);
        if self.question.is_some() {
            self.workup.runs.iter_mut().for_each(|run| run.volts = None);
            touched = None;
        }
        self.run = self.run.min(self.plan.runs.len().saturating_sub(1));
        self.picked = self.picked.filter(|&thing| self.exists(thing));
        self.view.hovered = self.view.hovered.filter(|&thing| self.exists(thing));
        // What is not laid out yet has no volts to be worked out.
        self.to_ask = self.question.is_none();
        self.give_up_fit();
        self.shapes_follow();
        self.say(touched.as_deref());
        self.reckon_sound();
    }

    /// Puts what follows into words and lines, for the runs that were touched where nothing else changed.
    fn say(&mut self, touched: Option<&[usize]>) {
        self.findings = self.rounds.findings(&self.plan, &self.workup, self.words, touched);
        let was = std::mem::take(&mut self.drawing);
        self.drawing = drawing::map_again(&self.scene(), was, touched);
        self.drawing.foremost = Some(self.run);
        self.stamp += 1;
    }

    fn fit(&mut self) {
        // Ways and lines may run off the map; the paddock and the runs may not.
        let ground = &self.plan.ground;
        let places = ground.boundary.iter().chain(self.plan.runs.iter().flat_map(|run| &run.outline));
        let bounds = bounds(places).or_else(|| self.drawing.bounds());
        let [width, height] = self.view.size;
        let bare = ground.boundary.is_empty();
        let margin_px = if bare { FIT_BARE_PX } else { FIT_MARGIN_PX };
        // The key over and the scale under bare ground are as high as the plates there.
        let height = if bare && height > 480.0 { height - 60.0 } else { height };
        let fit = View::fit(bounds, [width, height], margin_px, self.view.theme);
        self.view = View { middle: fit.middle, px_per_m: fit.px_per_m, ..self.view };
        self.fitted = true;
    }
}

/// The least east and north and the greatest of some places; `None` where there are none.
fn bounds<'a>(places: impl Iterator<Item = &'a Point>) -> Option<(Point, Point)> {
    places.filter(|at| at.east_m.is_finite() && at.north_m.is_finite()).fold(None, |bounds, at| {
        let (low, high) = bounds.unwrap_or((*at, *at));
        Some((
            Point::new(low.east_m.min(at.east_m), low.north_m.min(at.north_m)),
            Point::new(high.east_m.max(at.east_m), high.north_m.max(at.north_m)),
        ))
    })
}

fn touch(run: &RunWorkup) -> Option<(String, Touch)> {
    let volts = run.volts.as_ref()?;
    let sample = volts.weakest_sample()?;
    Some((run.id.clone(), Touch { kv: sample.animal_kv?, j: sample.animal_j? }))
}

/// The page that is about a thing, where picking it opens one.
fn page_of(thing: Thing) -> Option<Page> {
    match thing {
        Thing::Energizer { .. }
        | Thing::Feed { .. }
        | Thing::EarthStakes { .. }
        | Thing::Fault { .. }
        | Thing::Zone { .. } => Some(Page::Power),
        Thing::Reading { .. } => Some(Page::Book),
        Thing::Boundary
        | Thing::Gateway
        | Thing::BoundaryCorner { .. }
        | Thing::BoundarySide { .. }
        | Thing::KeepOut { .. }
        | Thing::KeepOutCorner { .. }
        | Thing::KeepOutSide { .. }
        | Thing::Hazard { .. }
        | Thing::HazardCorner { .. }
        | Thing::Height { .. } => Some(Page::Ground),
        _ => None,
    }
}

/// The shape and corner that a thing is.
pub(crate) fn corner_of(plan: &Plan, thing: Thing) -> Option<(Shape, usize)> {
    match thing {
        Thing::RunCorner { run, vertex } => Some((Shape::Run(plan.runs.get(run)?.id.clone()), vertex)),
        Thing::BoundaryCorner { vertex } => Some((Shape::Boundary, vertex)),
        Thing::KeepOutCorner { keep_out, vertex } => Some((Shape::KeepOut(keep_out), vertex)),
        _ => None,
    }
}
