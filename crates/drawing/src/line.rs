//! The run unfolded as one straight line: the same marks as on the map, in their order.
//!
//! The line starts at corner 1, where the outline does, and runs as the outline does; the outside is up.

mod faults;
mod gates;
mod netting;
mod numbers;
mod readings;
mod signs;

use words::texts::Map as Text;

use crate::ink::{Anchor, Ink, Spot, Weight, in_theme};
use crate::inking::pen::{Pen, Type};
use crate::map::Scene;
use crate::map::run::RunLine;
use crate::map::track::Track;
use crate::palette::{Palette, Theme};
use crate::shape::Thing;
use crate::told::Told;

/// How the unfolded line is shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LineView {
    /// Width, pixels.
    pub width: f32,
    /// Height, pixels; below 120 the nets' names are left out, below 100 all but net, joins, feed, corner plates and posts'
    /// numbers.
    pub height: f32,
    /// The theme.
    pub theme: Theme,
    /// What is picked.
    pub picked: Option<Thing>,
    /// What is under the pointer.
    pub hovered: Option<Thing>,
    /// Whether the figures belong to an earlier state of the plan.
    pub stale: bool,
}

/// The unfolded line in ink, and its axis.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LineDrawing {
    /// The ink, from the line's upper left corner.
    pub ink: Vec<Ink>,
    /// Where the line starts, pixels from the left.
    pub left: f32,
    /// Where the line ends, pixels from the left.
    pub right: f32,
    /// Height of the net's axis, pixels from the top.
    pub axis: f32,
    /// Length of the line, metres; 0 where there is none.
    pub line_m: f64,
    /// What can be picked, first things first: the thing and its box.
    places: Vec<(Thing, [f32; 4])>,
    /// Figures, each with its box.
    told: Vec<(Told, [f64; 4])>,
}

impl LineDrawing {
    /// What the figure at a spot is.
    pub fn told_at(&self, spot: Spot) -> Option<Told> {
        let [x, y] = spot.map(f64::from);
        let holds = |&&(_, [left, top, right, foot]): &&(Told, [f64; 4])| {
            (left..=right).contains(&x) && (top..=foot).contains(&y)
        };
        self.told.iter().find(holds).map(|&(told, _)| told)
    }

    /// The place along the line at a spot, metres; `None` beside the line.
    pub fn along_at(&self, x: f32) -> Option<f64> {
        let share = f64::from(x - self.left) / f64::from(self.right - self.left);
        (self.line_m > 0.0 && (0.0..=1.0).contains(&share)).then_some(share * self.line_m)
    }

    /// Where a place along the line lies, pixels from the left.
    pub fn x_of(&self, along_m: f64) -> f32 {
        if self.line_m > 0.0 {
            self.left + (self.right - self.left) * (along_m / self.line_m) as f32
        } else {
            self.left
        }
    }

    /// The thing under a spot of the line, within so many pixels: corners, then feed, posts and sides.
    pub fn thing_at(&self, [x, y]: Spot, reach_px: f32) -> Option<Thing> {
        let beyond = |[left, top, right, foot]: [f32; 4]| {
            let (across, down) = ((left - x).max(x - right).max(0.0), (top - y).max(y - foot).max(0.0));
            across.hypot(down)
        };
        let nearest = |rank: fn(Thing) -> u8, of: u8| {
            self.places
                .iter()
                .filter(|place| rank(place.0) == of)
                .map(|place| (beyond(place.1), place.0))
                .filter(|place| place.0 <= reach_px)
                .min_by(|a, b| a.0.total_cmp(&b.0))
                .map(|place| place.1)
        };
        let rank = |thing: Thing| match thing {
            Thing::RunCorner { .. }
            | Thing::Finding { .. }
            | Thing::Reading { .. }
            | Thing::Fault { .. }
            | Thing::ZoneEnd { .. } => 0,
            Thing::Feed { .. } | Thing::Gate { .. } | Thing::Pin { .. } | Thing::Zone { .. } => 1,
            Thing::Post { .. } => 2,
            _ => 3,
        };
        (0..=3).find_map(|of| nearest(rank, of))
    }
}

/// Draws a run of the plan as one straight line that starts at corner 1, as its outline does.
///
/// Without such a run nothing is drawn; a run that could not be laid is said to be so.
pub fn line(scene: &Scene<'_>, run: usize, view: &LineView) -> LineDrawing {
    let Some(run) = RunLine::new(scene, run) else { return LineDrawing::default() };
    let colours = view.theme.palette();
    let rows = Rows::of(view.height);
    let (left, right) = (MARGIN_PX, f64::from(view.width) - MARGIN_PX);
    let mut pen = Pen::default();
    let laid = run.laid.as_ref().filter(|_| right > left + 40.0);
    let Some((_, track)) = laid else {
        let kind = Type::new(13.0, Weight::Regular, colours.ink2);
        let text = scene.words.text(Text::NotLaid);
        if run.laid.is_none() && kind.width(text) + 16.0 < f64::from(view.width) {
            let middle = [f64::from(view.width) / 2.0, f64::from(view.height) / 2.0];
            pen.text(middle, text, kind, Anchor::Middle);
        }
        return LineDrawing { ink: pen.ink, ..LineDrawing::default() };
    };
    let mut unroll = Unroll {
        scene,
        run: &run,
        track,
        view,
        colours,
        rows,
        left,
        right,
        pen,
        places: Vec::new(),
        told: Vec::new(),
        above: Vec::new(),
    };
    unroll.net();
    unroll.sides();
    unroll.posts();
    unroll.gates();
    unroll.zones();
    unroll.feed();
    unroll.rings();
    unroll.tags(scene.findings);
    unroll.readings();
    unroll.corners();
    unroll.faults();
    unroll.nets();
    unroll.numbers();
    LineDrawing {
        left: left as f32,
        right: right as f32,
        axis: rows.axis as f32,
        line_m: track.line_m(),
        ink: in_theme(unroll.pen.ink, view.theme),
        places: unroll.places,
        told: unroll.told,
    }
}

/// Room at both ends of the line.
const MARGIN_PX: f64 = 40.0;
/// Heights of what stands on the line, pixels from the top; `None` is left out.
#[derive(Clone, Copy)]
struct Rows {
    brackets: Option<f64>,
    axis: f64,
    plates: f64,
    distances: Option<f64>,
    posts: bool,
}

impl Rows {
    fn of(height: f32) -> Self {
        let height = f64::from(height);
        if height >= 120.0 {
            let axis = (height - 128.0).mul_add(0.5, 51.0);
            let (brackets, distances) = (Some(axis - 30.0), Some(axis + 52.0));
            Self { brackets, axis, plates: axis + 31.0, distances, posts: true }
        } else if height >= 100.0 {
            let axis = 30.0;
            Self { brackets: None, axis, plates: axis + 31.0, distances: Some(axis + 52.0), posts: true }
        } else {
            let axis = height * 16.0 / 56.0;
            Self { brackets: None, axis, plates: axis + 24.0, distances: None, posts: false }
        }
    }
}

struct Unroll<'a> {
    scene: &'a Scene<'a>,
    run: &'a RunLine<'a>,
    track: &'a Track,
    view: &'a LineView,
    colours: &'static Palette,
    rows: Rows,
    left: f64,
    right: f64,
    pen: Pen,
    places: Vec<(Thing, [f32; 4])>,
    told: Vec<(Told, [f64; 4])>,
    /// What else stands over or under the line: left, top, right and foot. No number is put there.
    above: Vec<[f64; 4]>,
}

impl Unroll<'_> {
    fn x(&self, along_m: f64) -> f64 {
        self.left + (self.right - self.left) * along_m / self.track.line_m()
    }

    /// Puts a figure down amid a spot, and notes what it is.
    fn figure(&mut self, told: Told, at: [f64; 2], text: &str, kind: Type) {
        let [half, up] = [kind.width(text) / 2.0 + 3.0, f64::from(kind.size) / 2.0 + 2.0];
        self.told.push((told, [at[0] - half, at[1] - up, at[0] + half, at[1] + up]));
        self.pen.text(at, text, kind, Anchor::Middle);
    }
}
