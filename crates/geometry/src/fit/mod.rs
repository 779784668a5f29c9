//! A sketch to the nearest outline whose every side is a whole number of panels, all panels used.
//!
//! Metres. Nearest means the least sum of squared moves of the corners; the number and the order of the corners stay.
//! Free are the panels of each side (at least one) and, where panels differ in length, the order and the direction of the
//! nets and the panel at the first corner. The outline is simple, lies inside the ground and off the keep-outs.
//!
//! - [`chain`] makes the rings of panels that the nets allow;
//! - [`shape`] finds the corners for given sides;
//! - [`bound`] proves how near any outline can come;
//! - [`search`] chooses the panels, best first, and ends when nothing nearer can exist;
//! - [`ground`] judges where an outline may lie;
//! - [`surface`] lays what was found on ground that is not level;
//! - [`frame`] makes moved, turned and mirrored plans one.
//!
//! The answer carries [`Fit::bound_rms_m`], the proven lower bound of [`Fit::moved_rms_m`]. The two are equal where the
//! search came to its end and the nearest outline could be proven to be it; see [`bound`] for when that is.
//!
//! ```
//! use geometry::fit::{FitRequest, fit};
//! use geometry::{Net, Outline, Point};
//!
//! let sketch = Outline::closed(&[(0.0, 0.0), (24.0, 1.0), (25.0, 26.0), (-1.0, 24.0)].map(Point::from));
//! let roll = Net::equal(50.0, 14).expect("fourteen panels of a positive length");
//! let found = fit(&FitRequest::new(&sketch, &[roll], &[0, 0])).expect("a net of a known kind").expect("room enough");
//! assert_eq!(found.side_panels, [7, 7, 7, 7]);
//! assert!(found.moved_rms_m < 2.0 && (found.bound_rms_m - found.moved_rms_m).abs() < 1e-12);
//! ```

mod bound;
mod chain;
mod dense;
mod frame;
mod ground;
mod qp;
mod search;
mod shape;
mod surface;

pub use surface::Unlaid;

pub use ground::{FreeGround, KeepOff};

use crate::{Net, Outline, Point};

/// Steps after which the best found is taken; one is a step of Newton's, some microseconds for 8 corners.
pub const DEFAULT_BUDGET_STEPS: u64 = 30_000;

/// More corners than this are no sketch.
pub const MAX_CORNERS: usize = 40;

/// More panels than this in one run are beyond what is fitted.
pub const MAX_FIT_PANELS: usize = 4_000;

/// What to fit.
#[derive(Debug, Clone, Copy)]
pub struct FitRequest<'a> {
    /// The sketch, closed.
    pub sketch: &'a Outline,
    /// The kinds of net.
    pub kinds: &'a [Net],
    /// The nets as listed: numbers of `kinds`.
    pub nets: &'a [usize],
    /// Whether the nets stay in the order listed and run in the direction of `reversed`.
    pub kept_order: bool,
    /// With `kept_order`: whether the chain runs against the outline.
    pub reversed: bool,
    /// Panels at the chain's end that are doubled back and stand on no side.
    pub double_back: usize,
    /// Where the outline may lie; everywhere without one.
    pub ground: Option<&'a FreeGround>,
    /// Along the ground over in plan, of the line as a whole: panels count as so much shorter on the map. 1 where the
    /// ground is level; else the answer is laid by [`FitSearch::over`].
    pub stretch: f64,
    /// How much to try, in steps.
    pub budget_steps: u64,
}

impl<'a> FitRequest<'a> {
    /// All panels, on open ground, nets in any order, with [`DEFAULT_BUDGET_STEPS`].
    pub fn new(sketch: &'a Outline, kinds: &'a [Net], nets: &'a [usize]) -> Self {
        Self {
            sketch,
            kinds,
            nets,
            kept_order: false,
            reversed: false,
            double_back: 0,
            ground: None,
            stretch: 1.0,
            budget_steps: DEFAULT_BUDGET_STEPS,
        }
    }
}

/// An outline of whole panels.
#[derive(Debug, Clone, PartialEq)]
pub struct Fit {
    /// Its corners, in the sketch's order.
    pub outline: Vec<Point>,
    /// Panels from each corner to the next.
    pub side_panels: Vec<usize>,
    /// Length of each side, metres.
    pub side_m: Vec<f64>,
    /// Root of the mean squared move of the corners, metres.
    pub moved_rms_m: f64,
    /// A proven lower bound of it, metres.
    pub bound_rms_m: f64,
    /// Kinds of the nets in chain order.
    pub order: Vec<usize>,
    /// Whether the chain runs against the outline.
    pub reversed: bool,
    /// Where the chain starts along the outline, metres.
    pub start_m: f64,
    /// Whether all panels on the line are of one length.
    pub equal_panels: bool,
    /// Steps that were taken.
    pub steps: u64,
}

/// Why nothing can be fitted at all.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum FitFault {
    /// The sketch is open.
    #[error("only a closed line can be fitted")]
    Open,
    /// Fewer than three corners or more than [`MAX_CORNERS`].
    #[error("a sketch of {corners} corners cannot be fitted: draw 3 to {MAX_CORNERS}")]
    Corners {
        /// Corners of the sketch.
        corners: usize,
    },
    /// There is no net.
    #[error("the run has no net to fit to")]
    NoNets,
    /// A net of a kind that does not exist.
    #[error("net {net} names kind {kind}, which does not exist")]
    UnknownKind {
        /// The net, counted as listed.
        net: usize,
        /// The kind that it names.
        kind: usize,
    },
    /// More than [`MAX_FIT_PANELS`].
    #[error("{panels} panels are too many to fit: keep at most {MAX_FIT_PANELS}")]
    TooManyPanels {
        /// Panels of all nets.
        panels: usize,
    },
    /// Fewer panels on the line than corners.
    #[error("{panels} panels on the line make no {corners} sides")]
    TooFewPanels {
        /// Panels on the line.
        panels: usize,
        /// Corners of the sketch.
        corners: usize,
    },
}

impl FitFault {
    /// A name that stays the same in every version.
    pub fn id(&self) -> &'static str {
        match self {
            FitFault::Open => "fit/open",
            FitFault::Corners { .. } => "fit/corners",
            FitFault::NoNets => "fit/no-nets",
            FitFault::UnknownKind { .. } => "fit/unknown-kind",
            FitFault::TooManyPanels { .. } => "fit/too-many-panels",
            FitFault::TooFewPanels { .. } => "fit/too-few-panels",
        }
    }
}

/// What a search came to without an outline.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoFit {
    /// However the panels are shared out, one side is as long as the rest together.
    NeverCloses,
    /// No outline of the panels that was found lies on free ground without crossing itself.
    NoRoom {
        /// Whether every choice of panels was tried.
        all_tried: bool,
    },
}

/// Fits within the request's budget.
pub fn fit(request: &FitRequest<'_>) -> Result<Result<Fit, NoFit>, FitFault> {
    let mut search = FitSearch::new(request)?;
    while search.step() && search.steps() < request.budget_steps {}
    Ok(search.found())
}

/// A fit under way: a value that is stepped, so that whoever waits can show the best so far or leave.
#[derive(Debug, Clone)]
pub struct FitSearch {
    search: search::Search,
    frame: frame::Frame,
    equal_panels: bool,
    closes: bool,
    stretch: f64,
}

impl FitSearch {
    /// Sets a search up.
    pub fn new(request: &FitRequest<'_>) -> Result<FitSearch, FitFault> {
        let corners = request.sketch.vertices().len();
        check(request, corners)?;
        let frame = frame::Frame::of(request.sketch);
        let sketch = request.sketch.points().map(|at| frame.inward(at)).collect();
        let ground = request.ground.map(|ground| frame.ground(ground)).unwrap_or_default();
        let mut rings =
            chain::rings(request.kinds, request.nets, request.double_back, request.kept_order, request.reversed);
        let equal_panels = rings.equal;
        let stretch = request.stretch;
        for ring in &mut rings.all {
            ring.posts_m.iter_mut().for_each(|post_m| *post_m /= stretch);
            ring.start_m /= stretch;
        }
        let search = search::Search::new(sketch, rings, ground);
        let closes = !search.is_empty();
        Ok(FitSearch { search, frame, equal_panels, closes, stretch })
    }

    /// Goes on by one step; `false` when there is nothing left to do.
    pub fn step(&mut self) -> bool {
        self.search.step();
        !self.search.is_done()
    }

    /// Steps taken so far.
    pub fn steps(&self) -> u64 {
        self.search.steps
    }

    /// The best so far with what is proven so far.
    pub fn found(&self) -> Result<Fit, NoFit> {
        let Some(best) = &self.search.best else {
            return Err(if self.closes && self.search.closed_any() {
                NoFit::NoRoom { all_tried: self.search.is_done() }
            } else {
                NoFit::NeverCloses
            });
        };
        let ring = &self.search.rings[best.ring];
        let corners = best.at.len() as f64;
        let rms_m = |cost_m2: f64| (2.0 * cost_m2 / corners).sqrt();
        let posts = best.posts.windows(2);
        Ok(Fit {
            outline: best.at.iter().map(|&way| self.frame.outward(way)).collect(),
            side_panels: posts.clone().map(|pair| (pair[1] - pair[0]) as usize).collect(),
            side_m: posts.map(|pair| ring.posts_m[pair[1] as usize] - ring.posts_m[pair[0] as usize]).collect(),
            moved_rms_m: rms_m(best.cost_m2),
            bound_rms_m: rms_m(self.search.bound_m2()),
            order: ring.order.clone(),
            reversed: ring.reversed,
            start_m: ring.start_m,
            equal_panels: self.equal_panels,
            steps: self.search.steps,
        })
    }

    /// The best so far laid on ground that is not level: every side whole panels along it. `ground_m` measures the sides of
    /// an outline along the ground. [`Fit::side_m`] and [`Fit::start_m`] are then metres of ground, and nothing is proved:
    /// [`Fit::bound_rms_m`] is 0.
    pub fn over(&self, ground_m: &dyn Fn(&Outline) -> Option<Vec<f64>>) -> Result<Result<Fit, Unlaid>, NoFit> {
        let found = self.found()?;
        let Some(best) = &self.search.best else { return Ok(Err(Unlaid::NotWhole)) };
        let measure = |at: &[crate::Vector]| {
            let outline = Outline::closed(&at.iter().map(|&way| self.frame.outward(way)).collect::<Vec<_>>());
            ground_m(&outline).filter(|sides_m| sides_m.len() == at.len())
        };
        let laid = match surface::over(&self.search, self.stretch, &measure) {
            Some(Ok(laid)) => laid,
            Some(Err(why)) => return Ok(Err(why)),
            None => return Ok(Err(Unlaid::NotWhole)),
        };
        let ring = &self.search.rings[best.ring];
        let posts = laid.posts.windows(2);
        let side_m = |pair: &[u32]| (ring.posts_m[pair[1] as usize] - ring.posts_m[pair[0] as usize]) * self.stretch;
        Ok(Ok(Fit {
            outline: laid.at.iter().map(|&way| self.frame.outward(way)).collect(),
            side_panels: posts.clone().map(|pair| (pair[1] - pair[0]) as usize).collect(),
            side_m: posts.map(side_m).collect(),
            moved_rms_m: (2.0 * laid.cost_m2 / laid.at.len() as f64).sqrt(),
            bound_rms_m: 0.0,
            start_m: ring.start_m * self.stretch,
            ..found
        }))
    }
}

fn check(request: &FitRequest<'_>, corners: usize) -> Result<(), FitFault> {
    if !request.sketch.is_closed() {
        return Err(FitFault::Open);
    }
    if !(3..=MAX_CORNERS).contains(&corners) {
        return Err(FitFault::Corners { corners });
    }
    if request.nets.is_empty() {
        return Err(FitFault::NoNets);
    }
    let mut panels = 0_usize;
    for (net, &kind) in request.nets.iter().enumerate() {
        let known = request.kinds.get(kind).ok_or(FitFault::UnknownKind { net, kind })?;
        panels += known.panels();
    }
    if panels > MAX_FIT_PANELS {
        return Err(FitFault::TooManyPanels { panels });
    }
    let panels = panels.saturating_sub(request.double_back);
    if panels < corners {
        return Err(FitFault::TooFewPanels { panels, corners });
    }
    Ok(())
}
