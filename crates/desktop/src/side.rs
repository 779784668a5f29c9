//! The figures of a side of an outline, worked out and read in one place: the outline's table types them, and the entry at
//! a side that is picked.

use plan::{Plan, Point, Run, Shape};
use words::texts::{Shape as Text, Shaping};
use words::{Measure, Range, Words};
use workup::shaping::{at_bearing, bearing_deg, side_end};
use workup::slope::{NoSide, side_on_map_m};
use workup::{Lay, Slope, panels};

use crate::editor::Editor;
use crate::field;
use crate::tool::apart_m;

/// A side longer than this is a slip of the pen, metres.
const SIDE_M: Range = Range::between(0.1, 10_000.0);
/// Bearings; below nothing they count the other way.
const BEARING_DEG: Range = Range::between(-360.0, 360.0);
/// The most panels of a side.
const MOST_PANELS: f64 = 9_999.0;

/// A side of an outline.
pub(crate) struct Side<'a> {
    words: Words,
    plan: &'a Plan,
    /// Its run and the ground under it, where that is known.
    on_ground: Option<(&'a Run, &'a Slope)>,
    /// How the nets of its run lie now.
    lay: Option<&'a Lay>,
    /// The corner where it starts, from 0.
    from: usize,
    /// Whether it is netted: panels are told of a run's own sides.
    pub(crate) has_nets: bool,
    /// Where it starts and where it ends.
    pub(crate) ends: [Point; 2],
    /// The numbers of its corners.
    pub(crate) numbers: [String; 2],
}

impl<'a> Side<'a> {
    /// A side by the corner where it starts, from 0; `None` where the shape has none.
    pub(crate) fn of(editor: &'a Editor, shape: &Shape, side: usize) -> Option<Self> {
        let plan = editor.plan();
        let outline = plan.outline(shape)?;
        let to = (side + 1) % outline.len().max(1);
        let ends = [*outline.get(side)?, *outline.get(to)?];
        let at = match shape {
            Shape::Run(id) => plan.runs.iter().position(|run| run.id == *id),
            _ => None,
        };
        let worked = at.and_then(|at| editor.workup().runs.get(at));
        let slope = worked.and_then(|worked| worked.slope.as_ref());
        Some(Self {
            words: editor.words(),
            plan,
            on_ground: at.and_then(|at| plan.runs.get(at)).zip(slope),
            lay: worked.and_then(|worked| worked.lay.as_ref()),
            from: side,
            has_nets: at.is_some(),
            ends,
            numbers: [side, to].map(|corner| (corner + 1).to_string()),
        })
    }

    /// A text about it, which names it by its corners.
    pub(crate) fn say(&self, text: impl words::Message) -> String {
        let [from, to] = &self.numbers;
        self.words.say(text, &[("from", from.as_str()), ("to", to.as_str())])
    }

    /// Whether its length is the one along the ground.
    pub(crate) fn is_on_ground(&self) -> bool {
        self.on_ground.is_some()
    }

    /// Its length, along the ground where that is known, metres.
    pub(crate) fn length_m(&self) -> f64 {
        let found = self.on_ground.and_then(|(_, slope)| slope.sides.iter().find(|one| one.vertex == self.from));
        let [start, end] = self.ends;
        found.map_or_else(|| apart_m(start, end), |found| found.surface_m)
    }

    /// How many panels it is where it is so long; nothing where they are not whole.
    pub(crate) fn panels(&self, length_m: f64) -> String {
        let panels = self.lay.and_then(|lay| panels::of_side(self.plan, lay, self.ends[0], length_m));
        panels.map_or_else(String::new, |panels| panels.to_string())
    }

    /// Where it points, degrees clockwise from north.
    pub(crate) fn bearing_deg(&self) -> f64 {
        let [start, end] = self.ends;
        bearing_deg(start, end)
    }

    /// A length that is typed, metres along the ground.
    pub(crate) fn read_length(&self, text: &str) -> Result<f64, String> {
        field::figure(self.words, Measure::Length, SIDE_M)(text)
    }

    /// A count of panels that is typed, as the length that they have along the ground, metres.
    pub(crate) fn read_panels(&self, text: &str) -> Result<f64, String> {
        let count = field::count(self.words, Range::between(1.0, MOST_PANELS))(text)?;
        let along_m = self.lay.and_then(|lay| panels::length_m(self.plan, lay, self.ends[0], count));
        along_m.ok_or_else(|| self.words.text(Text::NoSuchPanels).to_owned())
    }

    /// A bearing that is typed, degrees.
    pub(crate) fn read_bearing(&self, text: &str) -> Result<f64, String> {
        field::figure(self.words, Measure::Degrees, BEARING_DEG)(text)
    }

    /// Where it would end, so long along the ground and with that bearing, each its own where none is given.
    pub(crate) fn end(&self, length_m: Option<f64>, bearing_deg: Option<f64>) -> Option<Point> {
        let on_map_m = length_m.map(|length_m| self.on_map_m(length_m, bearing_deg)).transpose().ok()?;
        side_end(self.ends, on_map_m, bearing_deg)
    }

    /// How long it is on the map where it is that long along the ground, with that bearing or its own: a corner is moved on
    /// the map.
    pub(crate) fn on_map_m(&self, length_m: f64, bearing_deg: Option<f64>) -> Result<f64, String> {
        let Some((run, _)) = self.on_ground else { return Ok(length_m) };
        let on_map_m = match bearing_deg {
            None => side_on_map_m(self.plan, run, self.from, length_m),
            Some(bearing_deg) => {
                let (mut run, [start, end]) = (run.clone(), self.ends);
                let far = (self.from + 1) % run.outline.len().max(1);
                if let Some(corner) = run.outline.get_mut(far) {
                    *corner = at_bearing(start, end, bearing_deg);
                }
                side_on_map_m(self.plan, &run, self.from, length_m)
            }
        };
        on_map_m.map_err(|why| {
            let text = match why {
                NoSide::TooShort => Shaping::SideTooShort,
                NoSide::NotBuilt => Shaping::SideNotBuilt,
            };
            self.words.text(text).to_owned()
        })
    }
}
