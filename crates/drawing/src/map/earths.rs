//! Where the earth stakes of a run would earth best, while that is suggested.

use std::f64::consts::FRAC_PI_2;

use super::Sheet;
use super::run::RunLine;
use crate::shape::Role;

/// A sign at every place that a stake of such a run would have. They go by all damp ground and all that stands on it, so
/// that they are drawn anew with every plan.
pub(super) fn best(sheet: &mut Sheet<'_>, runs: &[RunLine<'_>]) {
    for run in runs.iter().filter(|run| !run.run.hidden) {
        let best = run.worked.and_then(|worked| worked.dampest.as_ref()).filter(|best| best.is_better());
        sheet.run = Some(run.index);
        for &at in best.iter().flat_map(|best| &best.places) {
            sheet.mark(Role::EarthBest, at, -FRAC_PI_2, None);
        }
    }
    sheet.run = None;
}
