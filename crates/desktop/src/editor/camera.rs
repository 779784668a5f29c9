//! The map's camera, where all of the plan is to be in sight.

use drawing::View;
use plan::Point;

use super::Editor;

/// Free space left round the plan when it is fitted into the map, pixels; more where nothing but runs is there,
/// whose plates and leads stand outside them.
const FIT_MARGIN_PX: f32 = 56.0;
const FIT_BARE_PX: f32 = 100.0;

impl Editor {
    pub(super) fn fit(&mut self) {
        // Ways and lines may run off the map; the paddock and the runs may not.
        let ground = &self.plan.ground;
        let places = ground.boundary.iter().chain(self.plan.runs.iter().flat_map(|run| &run.outline));
        // Where there is neither, the picture is what is to be seen.
        let picture = self.plan.underlay.as_ref().map(plan::Underlay::corners);
        let bounds = bounds(places).or_else(|| bounds(picture.iter().flatten())).or_else(|| self.drawing.bounds());
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
