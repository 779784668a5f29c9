//! What the window is about, without a window: the plan, what follows from it, and what the keeper is at.
//!
//! Views read the [`Editor`] and say [`Message`]s; nothing else changes it. Every change of the plan is an
//! `Edit` through `plan`'s history. What follows from the plan is worked out here in two parts: the cheap one at
//! once, so that every figure and mark follows a drag within its frame; what an animal feels, what pins cost and the ways
//! to gates are asked of the worker ([`Editor::request`]) and marked as stale or waiting until it answers.

mod along;
mod bracing;
mod bringing;
mod camera;
pub(crate) mod chosen;
mod clip;
mod coops;
mod cornering;
pub(crate) mod curves;
mod dimensions;
mod document;
mod doubling;
mod dragging;
pub(crate) mod earth;
pub(crate) mod energizer;
mod faults;
mod features;
mod first;
mod fitting;
mod following;
mod gates;
mod guiding;
mod half_drawn;
mod hand;
mod hanging;
pub(crate) mod hiding;
mod hold;
pub(crate) mod known_places;
mod mending;
mod message;
mod nudging;
mod page;
mod pins;
mod placing;
mod reading;
mod receiving;
mod reckoning;
mod removing;
mod rework;
mod shapes;
mod shaping;
mod sides;
mod snap;
mod taping;
mod underlay;
mod unrolling;
mod whole;
mod zones;

use std::collections::BTreeMap;
use std::path::PathBuf;

use care::{Findings, Rounds};
use drawing::{Drawing, Theme, Thing, View};
use plan::{Deed, Edit, History, Plan, Shape};
use words::Words;
use words::texts::Window as Text;
use workup::shaping::Keep;
use workup::{Known, Workup};

use crate::tool::Tool;
use fitting::Fitting;
use hold::Held;

pub use bracing::BracingMessage;
pub use chosen::ManyMessage;
pub use cornering::CornerInHand;
pub use curves::Curve;
pub use document::SaveState;
pub use faults::trial_fault;
pub use first::{Lesson, Question};
pub use fitting::FitAnswer;
pub use guiding::Grid;
pub(crate) use mending::leads;
pub use message::Message;
pub use page::Page;
pub(crate) use page::page_of_finding;
pub use shapes::{Progress, Row, RowOf, ShapeKey, Shapes, ShapesMessage, Taken};
pub use shaping::{Over, ShapingMessage};
pub use snap::Snapped;
pub use underlay::{Pictured, UnderlayMessage};
pub use unrolling::{InHand, Sketch};

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
    /// What is picked beside it.
    chosen: chosen::Chosen,
    page: Page,
    tool: Tool,
    /// What was half drawn when another tool was taken, the last last.
    laid_by: Vec<half_drawn::LaidBy>,
    /// How many steps were done when a corner was taken up.
    lifted_after: usize,
    held: Option<Held>,
    /// The plan as it was when that was taken hold of.
    held_from: Option<Box<Plan>>,
    /// What moves in one step goes from where it was as the step began.
    way: along::Way,
    why: bool,
    compare: bool,
    notice: Option<Text>,
    /// What was found where the keeper was led to mend it, in words.
    led: Option<String>,
    notice_underlay: Option<words::texts::Underlay>,
    /// What became of the picture beneath the map.
    pictured: Pictured,
    snapped: Option<Snapped>,
    guiding: guiding::Guiding,
    /// What corners keep while they are dragged.
    keep: Keep,
    /// What a thing turns about, where that was chosen.
    pivot: Option<(Thing, shaping::Pivot)>,
    /// Why the last thing about a shape was not done.
    shape_told: Option<words::texts::Shape>,
    /// The run that is being unrolled.
    in_hand: Option<Box<unrolling::InHand>>,
    /// Whether nothing catches what is drawn or dragged.
    free: bool,
    /// Whether the page is folded away.
    folded: bool,
    curves: Vec<Curve>,
    question: Option<Question>,
    /// The question that laid the plan out, behind its first step.
    answered: Option<Box<Question>>,
    lesson: Lesson,
    file: Option<PathBuf>,
    saved: Option<Plan>,
    as_saved: bool,
    example: bool,
    epoch: u64,
    view: View,
    /// Whether the page's part about the wind is in sight.
    looks_at_wind: bool,
    /// What is kept in sight; nothing once the keeper panned or zoomed.
    fitted: Option<camera::InSight>,
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
            chosen: chosen::Chosen::default(),
            page: Page::default(),
            tool: Tool::default(),
            laid_by: Vec::new(),
            lifted_after: 0,
            held: None,
            held_from: None,
            way: along::Way::default(),
            why: false,
            compare: plan.runs.len() > 1,
            notice: None,
            led: None,
            notice_underlay: None,
            pictured: Pictured::default(),
            snapped: None,
            guiding: guiding::Guiding::default(),
            keep: Keep::default(),
            pivot: None,
            shape_told: None,
            in_hand: None,
            free: false,
            folded: false,
            curves: Vec::new(),
            question: None,
            answered: None,
            lesson: Lesson::Done,
            file: None,
            saved: Some(plan.clone()),
            as_saved: true,
            example: false,
            epoch: 0,
            view: View::fit(None, [800.0, 600.0], 0.0, Theme::Light),
            looks_at_wind: false,
            fitted: None,
            plan,
        };
        editor.changed();
        editor.fit();
        editor
    }

    fn pick(&mut self, thing: Option<Thing>) {
        self.take_up(thing);
        if let Some(page) = thing.and_then(|thing| self.opens(thing)) {
            self.page = page;
        }
    }

    /// Picks something without opening its page.
    fn take_up(&mut self, thing: Option<Thing>) {
        self.picked = thing;
        self.chosen.others.clear();
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
            let named = Deed::of(&edit, &self.plan);
            let edit = self.way.with_line(&self.history, &self.plan, edit);
            // What goes along does not change what was done.
            let alone = !self.history.is_open() && Deed::of(&edit, &self.plan) != named;
            if alone {
                self.history.begin_called(named);
            }
            self.apply(edit);
            if alone {
                self.history.end();
            }
        }
        self.changed();
    }

    /// Makes edits as one step that is called so.
    fn one_step(&mut self, deed: Deed, edits: Vec<Edit>) {
        self.history.begin_called(deed);
        self.make_all(edits);
        self.history.end();
    }

    /// Makes edits that say themselves where everything on a run's line goes.
    fn make_as_said(&mut self, edits: Vec<Edit>) {
        for edit in edits {
            self.apply(edit);
        }
        self.way = along::Way::default();
        self.changed();
    }

    fn apply(&mut self, edit: Edit) {
        // Views offer only what the plan has; a message that came too late is no matter.
        if let Err(error) = self.history.apply(&mut self.plan, edit) {
            tracing::debug!(%error, "an edit was not made");
        }
    }

    fn turn(&mut self, which: fn(&mut History, &mut Plan) -> bool) {
        // Whether there is a step to take or not, what was led is searched for as if it was let go.
        self.let_go();
        if which(&mut self.history, &mut self.plan) {
            self.find_curves();
            self.changed();
        }
    }

    /// Undoes or redoes until so many steps are done.
    fn go_to(&mut self, steps: usize) {
        while self.steps().done().len() > steps && self.steps().can_undo() {
            self.undo_step();
        }
        while self.steps().done().len() < steps && self.steps().can_redo() {
            self.redo_step();
        }
    }
}

/// The shape and corner that a thing is.
pub(crate) fn corner_of(plan: &Plan, thing: Thing) -> Option<(Shape, usize)> {
    match thing {
        Thing::RunCorner { run, vertex } => Some((Shape::Run(plan.runs.get(run)?.id.clone()), vertex)),
        Thing::BoundaryCorner { vertex } => Some((Shape::Boundary, vertex)),
        Thing::KeepOutCorner { keep_out, vertex } => Some((Shape::KeepOut(keep_out), vertex)),
        Thing::WallCorner { wall, vertex } => Some((Shape::Wall(wall), vertex)),
        Thing::ShadeCorner { shade, vertex } => Some((Shape::Shade(shade), vertex)),
        Thing::DampCorner { damp, vertex } => Some((Shape::Damp(damp), vertex)),
        Thing::HazardCorner { hazard, vertex } => Some((Shape::Hazard(hazard), vertex)),
        // The first is where it hangs, and stays on the run's line.
        Thing::BranchCorner { run, branch, vertex } if vertex > 0 => {
            Some((Shape::Branch(plan.runs.get(run)?.id.clone(), branch), vertex))
        }
        _ => None,
    }
}

/// The thing that a corner of a shape is.
pub(crate) fn corner_thing(plan: &Plan, shape: &Shape, vertex: usize) -> Option<Thing> {
    let run = |id: &String| plan.runs.iter().position(|run| run.id == *id);
    Some(match shape {
        Shape::Boundary => Thing::BoundaryCorner { vertex },
        Shape::KeepOut(keep_out) => Thing::KeepOutCorner { keep_out: *keep_out, vertex },
        Shape::Wall(wall) => Thing::WallCorner { wall: *wall, vertex },
        Shape::Shade(shade) => Thing::ShadeCorner { shade: *shade, vertex },
        Shape::Damp(damp) => Thing::DampCorner { damp: *damp, vertex },
        Shape::Hazard(hazard) => Thing::HazardCorner { hazard: *hazard, vertex },
        Shape::Run(id) => Thing::RunCorner { run: run(id)?, vertex },
        Shape::Branch(id, branch) => Thing::BranchCorner { run: run(id)?, branch: *branch, vertex },
    })
}
