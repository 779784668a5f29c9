//! What the window is about, without a window: the plan, what follows from it, and what the keeper is at.
//!
//! Views read the [`Editor`] and say [`Message`]s; nothing else changes it. Every change of the plan is an
//! `Edit` through `plan`'s history. What follows from the plan is worked out here in two parts: the cheap one at
//! once, so that every figure and mark follows a drag within its frame; what an animal feels is asked of the
//! worker ([`Editor::request`]) and marked as stale until it answers.

mod hold;

use std::collections::BTreeMap;

use care::Findings;
use drawing::{Drawing, Scene, Theme, Thing, View};
use plan::{Edit, History, Plan, Point, Run, Shape};
use words::texts::Window as Text;
use words::{Units, Words};
use workup::{Depth, RunWorkup, Workup};

use crate::tool::{Hand, Tool};
use crate::worker::{Answer, Request};
use hold::Held;

/// Free space left round the plan when it is fitted into the map, pixels.
const FIT_MARGIN_PX: f32 = 56.0;

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

/// What a view, the keyboard or the worker says to the editor.
#[derive(Clone, Debug)]
pub enum Message {
    /// Open a page.
    Open(Page),
    /// Pick something, or nothing.
    Pick(Option<Thing>),
    /// Something is under the pointer, or nothing.
    Hover(Option<Thing>),
    /// Make an edit, as a step of its own or within the open one.
    Make(Edit),
    /// The edits that follow are one step, until [`Message::End`].
    Begin,
    /// The step is done.
    End,
    /// Take a tool to hand.
    Use(Tool),
    /// The hand did something with the tool.
    Hand(Hand),
    /// Take hold of a corner, or of a side to make a corner of it, at a place.
    Grab(Thing, Point),
    /// What is held goes to a place.
    Drag(Point),
    /// Let go.
    Drop,
    /// Move the picked corner by so many metres east and north.
    Nudge(f64, f64),
    /// Take out what is picked.
    Remove,
    /// Esc: let go of what is held, leave the tool, or pick nothing.
    Escape,
    /// Take the last step back.
    Undo,
    /// Do it again.
    Redo,
    /// Show figures in those units.
    Units(Units),
    /// Show that theme.
    Theme(Theme),
    /// Show or fold the figures behind the corners' sentences.
    Why(bool),
    /// Show or fold the table of all runs.
    Compare(bool),
    /// The map has that size.
    Size([f32; 2]),
    /// Show all of the plan.
    Fit,
    /// Zoom about a spot of the map.
    Zoom(f64, drawing::Spot),
    /// Move the map right and down by so many pixels.
    Pan(f32, f32),
    /// The worker's answer.
    Worked(Answer),
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
    findings: Findings,
    drawing: Drawing,
    stamp: u64,
    touches: BTreeMap<String, Touch>,
    touches_of: Option<u64>,
    request: Option<Request>,
    run: usize,
    picked: Option<Thing>,
    page: Page,
    tool: Tool,
    held: Option<Held>,
    why: bool,
    compare: bool,
    notice: Option<Text>,
    view: View,
    fitted: bool,
}

impl Editor {
    /// An editor of a plan.
    pub fn new(plan: Plan, words: Words) -> Self {
        let mut editor = Self {
            history: History::default(),
            words,
            workup: Workup::default(),
            findings: Findings::default(),
            drawing: Drawing::default(),
            stamp: 0,
            touches: BTreeMap::new(),
            touches_of: None,
            request: None,
            run: 0,
            picked: None,
            page: Page::default(),
            tool: Tool::default(),
            held: None,
            why: false,
            compare: plan.runs.len() > 1,
            notice: None,
            view: View::fit(None, [800.0, 600.0], FIT_MARGIN_PX, Theme::Light),
            fitted: true,
            plan,
        };
        editor.changed();
        editor.fit();
        editor
    }

    /// Takes a message.
    pub fn receive(&mut self, message: Message) {
        if !matches!(message, Message::Hover(_) | Message::Size(_) | Message::Worked(_)) {
            self.notice = None;
        }
        match message {
            Message::Open(page) => {
                self.page = page;
                self.tool = Tool::Pick;
            }
            Message::Pick(thing) => self.pick(thing),
            Message::Hover(thing) => self.view.hovered = thing,
            Message::Make(edit) => self.make(edit),
            Message::Begin => self.history.begin(),
            Message::End => self.history.end(),
            Message::Use(tool) => {
                self.tool = tool;
                self.pick(None);
            }
            Message::Hand(hand) => self.hand(hand),
            Message::Grab(thing, at) => self.grab(thing, at),
            Message::Drag(to) => self.drag(to),
            Message::Drop => self.let_go(),
            Message::Nudge(east_m, north_m) => self.nudge(east_m, north_m),
            Message::Remove => self.remove(),
            Message::Escape => self.escape(),
            Message::Undo => self.turn(History::undo),
            Message::Redo => self.turn(History::redo),
            Message::Units(units) => {
                self.words.units = units;
                self.say();
            }
            Message::Theme(theme) => self.view.theme = theme,
            Message::Why(open) => self.why = open,
            Message::Compare(open) => self.compare = open,
            Message::Size(size) => {
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
            Message::Worked(answer) => self.worked(answer),
        }
        self.view.picked = self.picked;
        self.view.handles = self.picked.is_some();
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

    /// Whether the figures behind the corners' sentences are shown.
    pub fn why(&self) -> bool {
        self.why
    }

    /// Whether the table of all runs is shown.
    pub fn compare(&self) -> bool {
        self.compare && self.plan.runs.len() > 1
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

    /// What the worker should be asked, once.
    pub fn request(&mut self) -> Option<Request> {
        self.request.take()
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
        match self.history.apply(&mut self.plan, edit) {
            Ok(()) => self.changed(),
            // Views offer only what the plan has; a message that came too late is no matter.
            Err(error) => tracing::debug!(%error, "an edit was not made"),
        }
    }

    fn turn(&mut self, which: fn(&mut History, &mut Plan) -> bool) {
        self.held = None;
        if which(&mut self.history, &mut self.plan) {
            self.changed();
        }
    }

    fn hand(&mut self, hand: Hand) {
        let (tool, edit) = std::mem::take(&mut self.tool).step(hand, &self.plan);
        self.tool = tool;
        if let Some(mut edit) = edit {
            let thing = match &mut edit {
                Edit::AddRun { index, run } => {
                    run.name = self.words.say(Text::RunNumber, &[("number", &(*index + 1).to_string())]);
                    Thing::Run { run: *index }
                }
                _ => Thing::Boundary,
            };
            self.make(edit);
            self.pick(Some(thing));
        }
    }

    fn escape(&mut self) {
        if self.held.is_some() {
            let moved = self.held.as_ref().is_some_and(|held| held.moved);
            self.let_go();
            if moved {
                self.turn(History::undo);
            }
        } else if self.tool == Tool::Pick {
            self.pick(None);
        } else {
            self.hand(Hand::Leave);
        }
    }

    fn worked(&mut self, answer: Answer) {
        if answer.revision != self.history.revision() {
            return;
        }
        self.touches = answer.workup.runs.iter().filter_map(touch).collect();
        self.touches_of = Some(answer.revision);
        self.workup = answer.workup;
    }

    /// The plan changed: what is cheap follows at once, the rest is asked for.
    fn changed(&mut self) {
        self.workup = workup::workup(&self.plan, Depth::Quick);
        self.run = self.run.min(self.plan.runs.len().saturating_sub(1));
        self.picked = self.picked.filter(|&thing| self.exists(thing));
        self.view.hovered = self.view.hovered.filter(|&thing| self.exists(thing));
        self.request = Some(Request { revision: self.history.revision(), plan: self.plan.clone() });
        self.say();
    }

    /// Puts what follows into words and lines.
    fn say(&mut self) {
        self.findings = care::findings(&self.plan, &self.workup, self.words);
        self.drawing = drawing::map(&self.scene());
        self.drawing.foremost = Some(self.run);
        self.stamp += 1;
    }

    fn fit(&mut self) {
        // Ways and lines may run off the map; the paddock and the runs may not.
        let ground = &self.plan.ground;
        let places = ground.boundary.iter().chain(self.plan.runs.iter().flat_map(|run| &run.outline));
        let bounds = bounds(places).or_else(|| self.drawing.bounds());
        let fit = View::fit(bounds, self.view.size, FIT_MARGIN_PX, self.view.theme);
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
    let sample = volts.samples.get(volts.weakest?.post)?;
    Some((run.id.clone(), Touch { kv: sample.animal_kv?, j: sample.animal_j? }))
}

/// The page that is about a thing, where picking it opens one.
fn page_of(thing: Thing) -> Option<Page> {
    match thing {
        Thing::Energizer { .. } | Thing::Feed { .. } | Thing::EarthStakes { .. } => Some(Page::Power),
        Thing::Boundary
        | Thing::BoundaryCorner { .. }
        | Thing::BoundarySide { .. }
        | Thing::KeepOut { .. }
        | Thing::KeepOutCorner { .. }
        | Thing::KeepOutSide { .. }
        | Thing::Hazard { .. }
        | Thing::HazardCorner { .. } => Some(Page::Ground),
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
