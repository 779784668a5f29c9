//! The figures by which runs and candidates are weighed against one another: one row each.

use crate::{RunWorkup, Weakest, stocking::StockingRule};

/// One row: what follows for a run, as far as it could be worked out.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Compared {
    /// Area enclosed, square metres.
    pub area_m2: Option<f64>,
    /// Birds that the chosen rule allows on it.
    pub birds: Option<u32>,
    /// Nets in the chain.
    pub nets: Option<usize>,
    /// Netting beyond the line, metres; below zero what is missing of it.
    pub spare_m: Option<f64>,
    /// Posts on the line.
    pub posts: Option<usize>,
    /// Corners on posts, and all corners.
    pub on_posts: Option<(usize, usize)>,
    /// Corners and ends that have a brace or need one.
    pub braces: Option<usize>,
    /// Ground to mow, square metres.
    pub strip_m2: Option<f64>,
    /// Minutes of mowing.
    pub mow_minutes: Option<f64>,
    /// Minutes to set up.
    pub set_up_minutes: Option<f64>,
    /// The weakest post.
    pub weakest: Option<Weakest>,
}

impl Compared {
    /// The row of a run.
    pub fn of(worked: &RunWorkup, rule: Option<StockingRule>) -> Self {
        let lay = worked.lay.as_ref();
        // What is open encloses nothing.
        let area_m2 = worked.ground_m2();
        let judged = lay.filter(|lay| lay.corners_judged);
        Self {
            area_m2,
            birds: rule.zip(area_m2).map(|(rule, area_m2)| rule.birds(area_m2)),
            nets: lay.map(|lay| lay.nets.len()),
            spare_m: lay.map(|lay| if lay.short_m >= geometry::MEET_M { -lay.short_m } else { lay.spare_m }),
            posts: lay.map(|lay| lay.posts.len()),
            on_posts: judged.map(crate::Lay::corners_on_posts),
            braces: judged.map(crate::Lay::braces),
            strip_m2: worked.strip.as_ref().map(|strip| strip.area_m2),
            mow_minutes: worked.strip.as_ref().map(|strip| strip.minutes),
            set_up_minutes: lay.map(|lay| lay.set_up_minutes),
            weakest: worked.volts.as_ref().and_then(|volts| volts.weakest),
        }
    }

    /// The same with birds counted by another rule.
    pub fn counted(self, rule: Option<StockingRule>) -> Self {
        Self { birds: rule.zip(self.area_m2).map(|(rule, area_m2)| rule.birds(area_m2)), ..self }
    }

    /// The same with ground that is enclosed together with a wall.
    pub fn with_area(self, area_m2: f64, rule: Option<StockingRule>) -> Self {
        Self { area_m2: Some(area_m2), ..self }.counted(rule)
    }
}
