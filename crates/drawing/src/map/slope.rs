//! Spot heights, and where the ground dips or rises under a run.

use std::f64::consts::{FRAC_PI_2, PI};

use plan::RunStatus;

use super::run::RunLine;
use super::{Legend, Sheet};
use crate::shape::{About, Priority, Role, Thing};

/// More spots than this are a survey and not labelled.
const MOST_LABELS: usize = 2_000;

/// A mark for every spot height.
pub(super) fn heights(sheet: &mut Sheet<'_>) {
    for (height, stated) in sheet.scene.plan.heights.iter().enumerate() {
        sheet.mark(Role::Height, stated.at, FRAC_PI_2, Some(Thing::Height { height }));
    }
}

/// How high they are.
pub(super) fn labels(sheet: &mut Sheet<'_>) {
    let words = sheet.scene.words;
    for (height, stated) in sheet.scene.plan.heights.iter().enumerate().take(MOST_LABELS) {
        let legend = Legend {
            about: About::Height,
            at: stated.at,
            toward_rad: FRAC_PI_2,
            texts: vec![words.height(stated.up_m), words.length(stated.up_m)],
            priority: Priority::Height,
        };
        sheet.label(legend, Some(Thing::Height { height }));
    }
}

/// Dips, ridges and further posts of a run; the signs stand inside the line.
pub(super) fn uneven(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    let Some((_, track)) = &run.laid else { return };
    let Some(slope) = run.worked.and_then(|worked| worked.slope.as_ref()) else { return };
    if run.run.status == RunStatus::Past {
        return;
    }
    for panel in &slope.uneven {
        for post in &panel.posts {
            sheet.mark(Role::FurtherPost, post.at, track.square_outward(post.along_m), None);
        }
        for (role, worst) in [(Role::Dip, &panel.dip), (Role::Ridge, &panel.ridge)] {
            if let Some(worst) = worst {
                sheet.mark(role, worst.at, track.square_outward(worst.along_m) + PI, None);
            }
        }
    }
}
