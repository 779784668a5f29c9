//! A run while it is unrolled: its nets along what is drawn, as they lie so far and as they would lie if it closed here.
//!
//! Both are worked out and drawn as any run is, each in a plan of its own that holds nothing but it: what the keeper
//! stated is not touched before the run is closed. Volts come when it is laid.

use care::Findings;
use drawing::{About, Drawing, Role, Scene};
use plan::{Coop, Plan, Point, Run, Store};
use words::Words;
use words::texts::Unroll as Text;
use workup::unroll::{Caught, Rolls, Unrolled, catch, unroll};
use workup::{Depth, RunWorkup, Workup};

use super::{Editor, Snapped};
use crate::tool::{Drawn, FEWEST_CORNERS, Hand, Tool, Typed, apart_m};

/// How near a curve that closes the run catches its corner, pixels.
const CURVE_PX: f64 = 14.0;
/// A corner nearer to the first is that one, metres.
const HOME_M: f64 = 0.01;

/// A run in hand.
#[derive(Debug)]
pub struct InHand {
    /// The nets that are there for it.
    pub rolls: Rolls,
    /// How they lie along what is drawn.
    pub unrolled: Unrolled,
    /// As it lies so far, open.
    pub drawn: Sketch,
    /// As it would lie if it closed here.
    pub closed: Option<Sketch>,
    /// What all of it follows from: the tool, the plan's revision, the words.
    of: (Tool, u64, Words),
}

impl InHand {
    /// As it is shown: back on its first corner it is closed.
    pub fn shown(&self) -> &Sketch {
        self.closed.as_ref().filter(|_| is_home(&self.unrolled)).unwrap_or(&self.drawn)
    }
}

/// Whether the corner in hand is the first one.
fn is_home(unrolled: &Unrolled) -> bool {
    unrolled.corners.len() > FEWEST_CORNERS && unrolled.closing.is_some_and(|closing| closing.side_m < HOME_M)
}

/// A run that is worked out and drawn by itself.
#[derive(Debug)]
pub struct Sketch {
    plan: Plan,
    workup: Workup,
    findings: Findings,
    /// Its map.
    pub drawing: Drawing,
}

impl Sketch {
    fn of(run: Run, around: Plan, words: Words) -> Self {
        let plan = Plan { runs: vec![run], ..around };
        let (mut workup, findings) = (workup::workup(&plan, Depth::Quick), Findings::default());
        workup.runs.iter_mut().for_each(|run| run.volts = None);
        let drawing = drawing::map(&Scene { plan: &plan, workup: &workup, findings: &findings, words });
        let drawing = drawing.only(|shape| is_netting(shape.role));
        Self { plan, workup, findings, drawing }
    }

    /// What its line is drawn from.
    pub fn scene(&self, words: Words) -> Scene<'_> {
        Scene { plan: &self.plan, workup: &self.workup, findings: &self.findings, words }
    }

    /// The run and what follows for it.
    pub fn run(&self) -> Option<(&Run, &RunWorkup)> {
        self.plan.runs.first().zip(self.workup.runs.first())
    }
}

/// Whether a shape is part of what is unrolled: braces, rolls and the energizer come when it is laid. Where no net can be
/// laid, since the line crosses itself, the line stays.
fn is_netting(role: Role) -> bool {
    matches!(
        role,
        Role::Net
            | Role::Outline
            | Role::Gap
            | Role::Post { .. }
            | Role::Join
            | Role::EndPost
            | Role::Corner { .. }
            | Role::Words { about: About::Side { .. } }
    )
}

impl Editor {
    /// The run that is being unrolled.
    pub fn in_hand(&self) -> Option<&InHand> {
        self.in_hand.as_deref()
    }

    /// Whether a side of it is drawn.
    pub fn has_side_in_hand(&self) -> bool {
        self.in_hand().is_some_and(|in_hand| in_hand.unrolled.corners.len() > 1)
    }

    /// The run that figures are about: the one being unrolled as if it closed here, else the one in hand.
    pub fn shown_run(&self) -> Option<(&Run, &RunWorkup)> {
        match &self.in_hand {
            Some(in_hand) if in_hand.unrolled.corners.len() > 1 => {
                in_hand.closed.as_ref().unwrap_or(&in_hand.drawn).run()
            }
            _ => self.run(),
        }
    }

    /// Works the run in hand out anew, or lets it go with its tool.
    pub(super) fn unroll_on(&mut self) {
        let Tool::Outline { of: Drawn::Run, corners, pointer, typed, .. } = &self.tool else {
            if self.in_hand.take().is_some() {
                self.stamp += 1;
            }
            return;
        };
        let of = (self.tool.clone(), self.history.revision(), self.words);
        if self.in_hand.as_ref().is_some_and(|in_hand| in_hand.of == of) {
            return;
        }
        let next = pointer.map(|pointer| typed.place(corners, pointer));
        let next = next.filter(|&next| corners.last().is_none_or(|&last| apart_m(last, next) > 1e-6));
        let places: Vec<Point> = corners.iter().copied().chain(next).collect();
        let rolls = Rolls::of(&self.plan);
        let unrolled = unroll(&rolls, places);
        let Store { nets, brace, mower, rates, .. } = self.plan.store.clone();
        let store = Store { nets, brace, mower, rates, ..Store::default() };
        // Back on its first corner it has that one once.
        let apart = unrolled.corners.len() - usize::from(is_home(&unrolled));
        let run = |closed: bool, nets: Vec<String>| Run {
            id: String::from("in hand"),
            name: self.words.text(Text::Title).to_owned(),
            outline: unrolled.corners[..if closed { apart } else { unrolled.corners.len() }].to_vec(),
            closed: Some(closed),
            nets: Some(nets),
            start_m: Some(0.0),
            ..Run::default()
        };
        let bare = Plan { store: store.clone(), ..Plan::default() };
        let drawn = Sketch::of(run(false, rolls.ids(&self.plan, unrolled.begun)), bare, self.words);
        let closes = unrolled.closing.filter(|_| unrolled.corners.len() >= FEWEST_CORNERS);
        let closed = closes.map(|closing| {
            // Soil and keep-outs weigh on corners and strip; where others stand does not.
            let ground = self.plan.ground.clone();
            let coop: Option<Coop> = self.plan.coop.clone();
            Sketch::of(
                run(true, rolls.closing_ids(&self.plan, &closing)),
                Plan { ground, coop, store, ..Plan::default() },
                self.words,
            )
        });
        self.in_hand = Some(Box::new(InHand { rolls, unrolled, drawn, closed, of }));
        self.stamp += 1;
    }

    /// The nets that a run was unrolled with, where the store has several kinds: what was shown is what is laid.
    pub(super) fn unrolled_nets(&self, outline: &[Point]) -> Option<Vec<String>> {
        let rolls = Rolls::of(&self.plan);
        let closing = unroll(&rolls, outline.to_vec()).closing?;
        rolls.are_mixed().then(|| rolls.closing_ids(&self.plan, &closing))
    }

    /// A corner of a run that is unrolled, caught by its first corner, by what stands, by the curve and by its posts.
    pub(super) fn caught_unrolling(&mut self, hand: Hand) -> Hand {
        let Tool::Outline { of: Drawn::Run, corners, typed, .. } = &self.tool else { return hand };
        if matches!(hand, Hand::Type(_) | Hand::Set | Hand::Back | Hand::Again | Hand::Off) {
            self.snapped = None;
        }
        let (at, reach_m) = match hand {
            Hand::Move(at) => (at, None),
            Hand::Click { at, reach_m } => (at, Some(reach_m)),
            _ => return hand,
        };
        self.snapped = None;
        if *typed != Typed::default() || self.free {
            return hand;
        }
        let first = corners.first().filter(|_| corners.len() >= FEWEST_CORNERS);
        let caught = match first {
            Some(&first) if apart_m(first, at) * self.view.px_per_m <= CURVE_PX => {
                Some(Snapped { at: first, reason: self.words.text(Text::OnFirst).to_owned() })
            }
            _ => self.caught_by_netting(at),
        };
        let at = caught.as_ref().map_or(at, |caught| caught.at);
        self.snapped = caught;
        match reach_m {
            Some(reach_m) => Hand::Click { at, reach_m },
            None => Hand::Move(at),
        }
    }

    /// By what stands, by the curve, else by the way of the side and the posts along it.
    fn caught_by_netting(&mut self, at: Point) -> Option<Snapped> {
        let Tool::Outline { corners, .. } = &self.tool else { return None };
        let (corners, reach_m) = (corners.clone(), CURVE_PX / self.view.px_per_m);
        let landing = self.guide_landing(at);
        if landing.is_some() {
            return landing;
        }
        let rolls = Rolls::of(&self.plan);
        let caught = |at: Point| catch(&rolls, &corners, at, reach_m);
        let free = caught(at);
        if let Some((at, caught @ (Caught::Curve { .. } | Caught::CurveAndPost { .. }))) = free {
            return Some(Snapped { at, reason: reason(caught, self.words) });
        }
        // Along a guide's way the posts catch as on any other.
        if let Some(way) = self.guide_way(at) {
            let on_post = match caught(way.at) {
                Some((at, Caught::Post { panels })) => Some((at, Caught::Post { panels })),
                _ => None,
            };
            let Some((at, post)) = on_post else { return Some(way) };
            self.guided_to(at);
            // One reason is enough: the mark and the turn's degrees show the other.
            return Some(Snapped { at, reason: reason(post, self.words) });
        }
        free.map(|(at, caught)| Snapped { at, reason: reason(caught, self.words) })
    }
}

fn reason(caught: Caught, words: Words) -> String {
    let say = |one: Text, many: Text, count: usize| match count {
        1 => words.text(one).to_owned(),
        _ => words.say(many, &[("nets", &count.to_string()), ("panels", &count.to_string())]),
    };
    match caught {
        Caught::CurveAndPost { nets, .. } => say(Text::OnCurveAndPostOne, Text::OnCurveAndPost, nets),
        Caught::Curve { nets } => say(Text::OnCurveOne, Text::OnCurve, nets),
        Caught::Post { panels } => say(Text::OnPost, Text::OnPosts, panels),
    }
}
