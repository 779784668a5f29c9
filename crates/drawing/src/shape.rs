//! What a drawing is made of: shapes in metres, each with a role and, where it can be picked, its thing.
//!
//! Nothing here knows of a screen: sizes in pixels, colours and what is left out at a distance are decided
//! when a [`Drawing`] is inked for a view.

mod role;
mod thing;

use plan::Point;

pub use role::{About, GOES_OVER, Priority, Role};
pub use thing::Thing;

/// The form of a shape, metres.
#[derive(Clone, Debug, PartialEq)]
pub enum Form {
    /// An area: its outer ring, then its holes, not closed by a repeated place.
    Area {
        /// The rings.
        rings: Vec<Vec<Point>>,
    },
    /// A path.
    Path {
        /// Its places.
        points: Vec<Point>,
        /// Whether it returns to its start.
        closed: bool,
        /// Volts at each place, kilovolts; empty where there are none.
        kv: Vec<f64>,
    },
    /// A sign at a place.
    Mark {
        /// The place.
        at: Point,
        /// Where it points, radians, counter-clockwise from east.
        toward_rad: f64,
    },
    /// Words at a place.
    Label {
        /// The place.
        at: Point,
        /// Where they may be moved, radians, counter-clockwise from east.
        toward_rad: f64,
        /// What they say; the role tells whether these are lines or ever shorter wordings.
        texts: Vec<String>,
        /// Which go first.
        priority: Priority,
    },
}

/// One thing drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Shape {
    /// What it stands for.
    pub role: Role,
    /// Its form.
    pub form: Form,
    /// What it is when picked.
    pub thing: Option<Thing>,
    /// The run that it is part of.
    pub run: Option<usize>,
}

/// A plan drawn: shapes in the order in which they are painted, words last.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawing {
    /// What each part of the map drew: of a part that did not change nothing is moved when the map is drawn again.
    pub(crate) parts: Vec<Vec<Shape>>,
    /// Volts asked for at the weakest post, kilovolts: the middle of the volts' scale.
    pub target_kv: f64,
    /// The run that is worked on: of options that share ground, it is shown and the others are ghosts. What is picked
    /// in a view goes before it; where it is `None` the first of them is shown.
    pub foremost: Option<usize>,
    /// What is picked beside what is picked in a view.
    pub chosen: Vec<Thing>,
    /// The words that signs are told in.
    pub words: words::Words,
    /// For each run, the runs that share ground with it.
    pub rivals: Vec<Vec<usize>>,
    /// For each option, the runs on whose sides one of its own lies: it waits for the netting of those that stand, and
    /// of the one that is worked on.
    pub waiting: Vec<Vec<usize>>,
    /// For each run, whether it is one of several ways that things could go.
    pub options: Vec<bool>,
}

/// Why a run is shown as a ghost.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Behind {
    /// It lies on the ground of that run.
    Over(usize),
    /// It waits for the netting of that run, on whose side one of its own lies.
    Beside(usize),
}

impl Drawing {
    /// The shapes.
    pub fn shapes(&self) -> std::iter::Flatten<std::slice::Iter<'_, Vec<Shape>>> {
        self.parts.iter().flatten()
    }

    /// The drawing with those shapes alone.
    #[must_use]
    pub fn only(mut self, kept: impl Fn(&Shape) -> bool) -> Self {
        self.parts.iter_mut().for_each(|part| part.retain(&kept));
        self
    }

    /// The shapes that are no post, handle or side: what nearly every look through the drawing is after, and few of them.
    pub(crate) fn marked(&self) -> Vec<&Shape> {
        let plain = |role: Role| matches!(role, Role::Post { .. } | Role::SparePost | Role::Handle | Role::Side);
        self.shapes().filter(|shape| !plain(shape.role)).collect()
    }

    /// For each run, whether it is shown as a ghost: an option that shares ground with a run that is shown, or that
    /// waits for the netting of a side that stands or is worked on.
    pub(crate) fn ghosts(&self, picked: Option<Thing>) -> Vec<bool> {
        let lead = picked.and_then(Thing::run).or(self.foremost);
        let mut order: Vec<usize> = (0..self.rivals.len()).collect();
        order.sort_by_key(|&run| (Some(run) != lead, self.options[run], run));
        let mut shown = vec![false; self.rivals.len()];
        for run in order {
            let waits = || self.waiting[run].iter().any(|&other| self.is_waited_for(other, lead));
            let shares = || self.rivals[run].iter().any(|&rival| shown.get(rival) == Some(&true));
            shown[run] = !self.options[run] || Some(run) == lead || !(shares() || waits());
        }
        shown.into_iter().map(|shown| !shown).collect()
    }

    /// Whether an option beside that run waits for its netting: it stands, or is worked on.
    fn is_waited_for(&self, other: usize, lead: Option<usize>) -> bool {
        !self.options[other] || Some(other) == lead
    }

    /// For which run that one is shown as a ghost, and why; `None` where it is shown whole.
    pub fn behind(&self, run: usize, picked: Option<Thing>) -> Option<Behind> {
        let ghosts = self.ghosts(picked);
        if ghosts.get(run) != Some(&true) {
            return None;
        }
        let lead = picked.and_then(Thing::run).or(self.foremost);
        let first = |others: &[usize]| {
            let shown = others.iter().copied().filter(|&other| !ghosts[other]);
            shown.min_by_key(|&other| (Some(other) != lead, other))
        };
        let over = first(&self.rivals[run]).map(Behind::Over);
        over.or_else(|| {
            let waited: Vec<usize> =
                self.waiting[run].iter().copied().filter(|&other| self.is_waited_for(other, lead)).collect();
            first(&waited).map(Behind::Beside)
        })
    }

    /// The first run that stands on the same ground as a run that stands too: of one of them the plan cannot be true.
    pub fn stands_on(&self, run: usize) -> Option<usize> {
        let stands = |run: usize| self.options.get(run) == Some(&false);
        self.rivals.get(run)?.iter().copied().find(|&other| stands(run) && stands(other))
    }

    /// The least east and north and the greatest, over every finite place; `None` where nothing is drawn.
    pub fn bounds(&self) -> Option<(Point, Point)> {
        let mut bounds: Option<(Point, Point)> = None;
        let mut add = |place: &Point| {
            if !(place.east_m.is_finite() && place.north_m.is_finite()) {
                return;
            }
            let (low, high) = bounds.get_or_insert((*place, *place));
            *low = Point::new(low.east_m.min(place.east_m), low.north_m.min(place.north_m));
            *high = Point::new(high.east_m.max(place.east_m), high.north_m.max(place.north_m));
        };
        // The ground goes by what is stated on it, however far a picture reaches.
        for shape in self.shapes().filter(|shape| shape.role != Role::Underlay) {
            match &shape.form {
                Form::Area { rings } => rings.iter().flatten().for_each(&mut add),
                Form::Path { points, .. } => points.iter().for_each(&mut add),
                Form::Mark { at, .. } | Form::Label { at, .. } => add(at),
            }
        }
        bounds
    }
}
