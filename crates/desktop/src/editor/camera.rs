//! The map's camera, where all of the plan is to be in sight.

use drawing::{Form, Role, View};
use egui::{Pos2, Rect, pos2};
use plan::{Point, Run};

use super::Editor;
use crate::crossing::runs_through;

/// Free space left round the plan when it is fitted into the map, pixels; more where nothing but runs is there,
/// whose plates and leads stand outside them.
const FIT_MARGIN_PX: f32 = 56.0;
const FIT_BARE_PX: f32 = 100.0;
/// Free space between a run and a plate of the map: a corner's own plate stands there.
const CLEAR_PX: f32 = 34.0;

/// Of so many rooms the view is remembered: those of the pages, not every one that a hand on the window's edge makes.
const MOST_ROOMS: usize = 8;

/// What is kept in sight while the map's room changes: of another room the same ground, and of the same room the same
/// view, whatever was drawn meanwhile.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct InSight {
    bounds: Option<(Point, Point)>,
    bare: bool,
    /// Of each room its size, and the middle and the scale that it was shown with.
    shown: Vec<([f32; 2], Point, f64)>,
}

impl Editor {
    /// Shows all of the plan.
    pub(super) fn fit(&mut self) {
        // Ways and lines may run off the map; the paddock, the runs and what feeds them may not.
        let ground = &self.plan.ground;
        let feeds = self.drawing.shapes().filter_map(|shape| match (&shape.form, shape.role) {
            (Form::Mark { at, .. }, Role::Energizer | Role::EarthStake) => Some(at),
            _ => None,
        });
        let places = ground.boundary.iter().chain(self.plan.runs.iter().flat_map(|run| &run.outline)).chain(feeds);
        // Where there is neither, the picture is what is to be seen.
        let picture = self.plan.underlay.as_ref().map(plan::Underlay::corners);
        let bounds = bounds(places).or_else(|| bounds(picture.iter().flatten())).or_else(|| self.drawing.bounds());
        self.see(bounds, ground.boundary.is_empty());
    }

    /// Shows places in the middle of the map, and keeps them in sight.
    pub(super) fn go_to_places(&mut self, places: &[Point]) {
        self.see(bounds(places.iter()), false);
    }

    /// Moves the map until a run and the one in hand are in sight, with the plates of their corners; where they are
    /// already, nothing moves.
    pub(super) fn bring_in_sight(&mut self, run: usize) {
        let outlines = [run, self.run].into_iter().filter_map(|run| self.plan.runs.get(run));
        let places: Vec<Point> = outlines.flat_map(|run| run.outline.iter().copied()).collect();
        let [width, height] = self.view.size;
        let room = Rect::from_min_max(pos2(0.0, 0.0), pos2(width, height)).shrink(CLEAR_PX);
        let sees = |&at: &Point| room.contains(self.view.spot(at).into());
        let both = [run, self.run].into_iter().filter_map(|run| self.plan.runs.get(run));
        if !places.iter().all(sees) || lie_under_plates(&self.view, both) {
            self.see(bounds(places.iter()), false);
        }
    }

    fn see(&mut self, bounds: Option<(Point, Point)>, bare: bool) {
        self.fitted = Some(InSight { bounds, bare, shown: Vec::new() });
        self.keep_in_sight();
    }

    /// The map's room changed.
    pub(super) fn resized(&mut self, size: [f32; 2]) {
        self.view.size = size;
        // Nothing jumps from under the hand; what was panned or zoomed keeps its middle and its scale.
        if self.held.is_none() {
            self.keep_in_sight();
        }
    }

    /// A plate came onto the map: where it lies over what is kept in sight, that steps aside.
    pub(super) fn clear_of_plates(&mut self) {
        let covered = self.is_covered(&self.view);
        if let Some(in_sight) = self.fitted.as_mut().filter(|_| covered && self.held.is_none()) {
            in_sight.shown.clear();
            self.keep_in_sight();
        }
    }

    fn keep_in_sight(&mut self) {
        let Some(mut in_sight) = self.fitted.take() else { return };
        let size = self.view.size;
        let known = in_sight.shown.iter().find(|(of, ..)| *of == size).copied();
        let (_, middle, px_per_m) = known.unwrap_or_else(|| {
            let fit = self.fit_of(in_sight.bounds, in_sight.bare);
            (size, fit.middle, fit.px_per_m)
        });
        if known.is_none() {
            in_sight.shown.truncate(MOST_ROOMS - 1);
            in_sight.shown.insert(0, (size, middle, px_per_m));
        }
        self.view = View { middle, px_per_m, ..self.view };
        self.fitted = Some(in_sight);
    }

    fn fit_of(&self, bounds: Option<(Point, Point)>, bare: bool) -> View {
        let margin_px = if bare { FIT_BARE_PX } else { FIT_MARGIN_PX };
        let fits = self.rooms(margin_px).map(|room| in_room(bounds, self.view, room, margin_px));
        // The largest on which no plate lies over what is fitted; where there is none, the one that leaves most free.
        let clear = fits.iter().filter(|fit| !self.is_covered(fit));
        *clear.max_by(|one, other| one.px_per_m.total_cmp(&other.px_per_m)).unwrap_or(&fits[fits.len() - 1])
    }

    /// Rooms of the map that may be fitted into, from its left, upper, right and lower edge: all of it, then without the
    /// strip that the key of volts, the scale, or both lie on.
    fn rooms(&self, margin_px: f32) -> [[f32; 4]; 5] {
        let [width, height] = self.view.size;
        let [scale, key] = self.view.kept;
        // The margin is free already.
        let more = |inset: f32| (inset + CLEAR_PX - margin_px).max(0.0);
        // The key may have made way, and stand over the scale.
        let (over, under): (Option<[f32; 4]>, Option<[f32; 4]>) =
            key.map_or((None, None), |key| if key[1] < height / 2.0 { (Some(key), None) } else { (None, Some(key)) });
        let foot = under.or(scale).map_or(0.0, |[_, top, ..]| more(height - top));
        let side = scale.map_or(0.0, |[left, ..]| more(width - left));
        let top = over.map_or(0.0, |[_, _, _, bottom]| more(bottom));
        [[0.0; 4], [0.0, 0.0, 0.0, foot], [0.0, top, 0.0, 0.0], [0.0, 0.0, side, 0.0], [0.0, top, 0.0, foot]]
    }

    /// Whether a plate lies over the paddock's edge, or over a run or the plates at its corners.
    fn is_covered(&self, view: &View) -> bool {
        covers(view, &self.plan.ground.boundary, true, 2.0) || lie_under_plates(view, self.plan.runs.iter())
    }
}

/// Whether a plate of the map lies over a corner or a side of those runs.
fn lie_under_plates<'a>(view: &View, mut runs: impl Iterator<Item = &'a Run>) -> bool {
    runs.any(|run| covers(view, &run.outline, run.closed(), CLEAR_PX))
}

/// Whether a plate of the map lies over a line, or so near to it.
fn covers(view: &View, places: &[Point], closed: bool, off: f32) -> bool {
    let ends = places.iter().take(usize::from(closed));
    let line: Vec<Pos2> = places.iter().chain(ends).map(|&at| view.spot(at).into()).collect();
    let mut plates = view.kept.iter().flatten().map(|&[l, t, r, b]| Rect::from_min_max(pos2(l, t), pos2(r, b)));
    plates.any(|plate| runs_through(&line, plate.expand(off)))
}

/// The view that shows bounds in a part of the map.
fn in_room(bounds: Option<(Point, Point)>, view: View, [left, top, right, foot]: [f32; 4], margin_px: f32) -> View {
    let [width, height] = view.size;
    let fit = View::fit(bounds, [width - left - right, height - top - foot], margin_px, view.theme);
    let aside_m = |px: f32| f64::from(px) / 2.0 / fit.px_per_m;
    let middle = Point::new(fit.middle.east_m + aside_m(right - left), fit.middle.north_m + aside_m(top - foot));
    View { middle, px_per_m: fit.px_per_m, ..view }
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
