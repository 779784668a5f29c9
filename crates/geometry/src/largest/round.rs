//! Round: a regular polygon with sides of one panel, as many corners as fit and the nets have panels.
//!
//! A number of corners is tried by climbs and by branch and bound: it fits, it is refuted, or it is left undecided.
//! First on the ground alone, without what has to be held and without keep-outs that may be enclosed: whatever is
//! free is free there too, and where n corners fit there n - 1 fit as well (the circle in the n-gon of side p,
//! p / (2 tan(pi/n)), holds that round the (n-1)-gon, p / (2 sin(pi/(n-1))), from n = 6 on), so the numbers are halved.
//! Where something was left out, the numbers from there down are tried by climbs until one fits, then those above it
//! thoroughly.

use std::f64::consts::PI;

use super::branch::{Branch, Pose};
use super::field::Field;
use super::kind::Kind;

/// Steps given to one number of corners before it is left undecided; the first of them climb.
const STEPS_EACH: u32 = 8;
/// Steps in all on the numbers above the one that fits.
const STEPS_ABOVE: u32 = 64;
/// Corners of the polygon that scouts for places, its steps, and a line that no paddock needs.
const SCOUT: (u32, u32, f64) = (12, 6, 1e2);

/// The search for the number of corners.
#[derive(Debug, Clone)]
pub(super) struct Round {
    panel: f64,
    /// No more than so many fit, or they were left undecided.
    most: u32,
    /// So many fit.
    pub(super) best: Option<(u32, Pose)>,
    /// The greatest number left undecided.
    undecided: u32,
    stage: Stage,
    /// The ground without what may be enclosed or has to be held.
    bare: Field,
    /// Whether that is the ground itself.
    is_bare: bool,
    /// Where rounds, of whatever number, are large.
    places: Vec<Pose>,
    trying: Option<(u32, Branch, u32)>,
    /// Steps left for numbers above the one that fits.
    left: u32,
}

#[derive(Debug, Clone)]
enum Stage {
    /// Looks for places.
    Scout(Box<Branch>, u32),
    /// On the bare ground: so many corners fit there.
    Halve(u32),
    /// From the most downward by climbs, until one fits.
    Down(u32),
    /// From the most downward to the one that fits, thoroughly.
    Above,
}

impl Round {
    pub(super) fn new(field: &Field, panel: f64, panels: u32, area_bound: f64) -> Self {
        let most = (3..=panels).rev().find(|&n| crate::shapes::regular_area_m2(f64::from(n) * panel, n) <= area_bound);
        let bare = Field {
            offs: field.offs.iter().filter(|off| !off.may_enclose).cloned().collect(),
            hold: Vec::new(),
            ..field.clone()
        };
        Self {
            panel,
            most: most.unwrap_or(0),
            best: None,
            undecided: 0,
            stage: Stage::Scout(Box::new(Branch::new(Kind::Regular(SCOUT.0), SCOUT.2)), 0),
            is_bare: field.hold.is_empty() && bare.offs.len() == field.offs.len(),
            bare,
            places: Vec::new(),
            trying: None,
            left: STEPS_ABOVE,
        }
    }

    fn fitting(&self) -> u32 {
        self.best.map_or(2, |best| best.0)
    }

    pub(super) fn is_done(&self) -> bool {
        match self.stage {
            _ if self.most <= self.fitting() => true,
            Stage::Down(number) => number < 3,
            Stage::Above => self.left == 0,
            Stage::Scout(..) | Stage::Halve(_) => false,
        }
    }

    /// No round of more corners fits.
    pub(super) fn most(&self) -> u32 {
        self.most.max(self.undecided).max(self.best.map_or(0, |best| best.0))
    }

    pub(super) fn step(&mut self, field: &Field, looks: u32) {
        if self.is_done() {
            return;
        }
        match &mut self.stage {
            Stage::Scout(branch, used) => {
                branch.step(&self.bare, looks);
                *used += 1;
                if *used >= SCOUT.1 {
                    self.places.extend(branch.ends());
                    self.stage = Stage::Halve(2);
                }
            }
            &mut Stage::Halve(low) => self.halve(low, looks),
            &mut Stage::Down(number) => {
                let mut branch = self.branch(number);
                // Enough to climb from all places, not to look into cells.
                while !branch.has_climbed() {
                    branch.step(field, looks);
                }
                if let Some(pose) = fit(&branch) {
                    self.best = Some((number, pose));
                    self.stage = Stage::Above;
                } else {
                    self.stage = Stage::Down(number - 1);
                }
            }
            Stage::Above => {
                self.left -= 1;
                let number = self.most;
                let (mut branch, used) = self.tried(number);
                branch.step(field, looks);
                if let Some(pose) = fit(&branch) {
                    self.best = Some((number, pose));
                } else {
                    self.missed(number, branch, used);
                }
            }
        }
    }

    /// A step on the bare ground, where at least `low` corners fit.
    fn halve(&mut self, low: u32, looks: u32) {
        if self.most <= low {
            if self.most < 3 || self.is_bare {
                self.most = self.most.min(self.fitting());
            } else {
                self.stage = Stage::Down(self.most);
            }
            return;
        }
        // The most is tried first: often the nets and not the ground are the limit.
        let first = low == 2 && self.undecided == 0 && self.trying.is_none();
        let number = match &self.trying {
            Some((number, ..)) => *number,
            None if first => self.most,
            None => (low + self.most).div_ceil(2),
        };
        let (mut branch, used) = self.tried(number);
        branch.step(&self.bare, looks);
        if let Some(pose) = fit(&branch) {
            self.places.push(pose);
            self.stage = Stage::Halve(number);
            if self.is_bare {
                self.best = Some((number, pose));
            }
        } else {
            self.missed(number, branch, used);
        }
    }

    /// A number that did not fit in this step: it is too many, it had its steps, or it is tried on.
    fn missed(&mut self, number: u32, branch: Branch, used: u32) {
        if branch.bound() < branch.cap() {
            self.most = number - 1;
        } else if used + 1 >= STEPS_EACH {
            self.undecided = self.undecided.max(number);
            self.most = number - 1;
        } else {
            self.trying = Some((number, branch, used + 1));
        }
    }

    fn branch(&self, number: u32) -> Branch {
        Branch::aiming(Kind::Regular(number), f64::from(number) * self.panel, &self.places)
    }

    /// The search for that number and the steps that it has had.
    fn tried(&mut self, number: u32) -> (Branch, u32) {
        match self.trying.take() {
            Some((_, branch, used)) => (branch, used),
            None => (self.branch(number), 0),
        }
    }

    /// Area of the round of so many corners.
    pub(super) fn area(&self, number: u32) -> f64 {
        let n = f64::from(number);
        if number < 3 { 0.0 } else { n * self.panel * self.panel / (4.0 * (PI / n).tan()) }
    }
}

/// The full size, where the search has it.
fn fit(branch: &Branch) -> Option<Pose> {
    branch.best.filter(|best| best.scale >= branch.cap() * (1.0 - 1e-12))
}
