//! The first plan of a keeper who has nothing but rolls: a rectangle of whole panels round a coop.
//!
//! Metres. The rectangle is as near square as whole panels allow; where the panels are odd in number, one of
//! them does not fit a rectangle and is left over, to be doubled back. Everything else stays unsaid.

use crate::model::{BraceRule, Coop, EarthStake, Mower, NetKind, Plan, Point, Rates, Rest, Run, Store};

/// Rolls of one kind: what a keeper can say without looking anything up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rolls {
    /// How many.
    pub count: u32,
    /// Length of one, metres.
    pub length_m: f64,
    /// Posts on one, both ends included.
    pub posts: u32,
}

impl Default for Rolls {
    /// Two of 50 m with 14 posts: common in the trade (no source).
    fn default() -> Self {
        Self { count: 2, length_m: 50.0, posts: 14 }
    }
}

/// Fewest panels that close round ground as a rectangle.
pub const FEWEST_PANELS: u32 = 4;

impl Rolls {
    /// Panels of one roll.
    pub fn panels_each(self) -> u32 {
        self.posts.saturating_sub(1)
    }

    /// Panels of all rolls.
    pub fn panels(self) -> u32 {
        self.count.saturating_mul(self.panels_each())
    }

    /// Length of one panel, metres.
    pub fn panel_m(self) -> f64 {
        self.length_m / f64::from(self.panels_each().max(1))
    }

    /// Panels along the rectangle's longer and shorter side, or `None` where there are too few.
    pub fn sides(self) -> Option<(u32, u32)> {
        let half = self.panels() / 2;
        (self.panels() >= FEWEST_PANELS && self.length_m > 0.0).then(|| (half.div_ceil(2), half / 2))
    }

    /// Length of the rectangle's line, metres; 0 where there is none.
    pub fn line_m(self) -> f64 {
        let (long, short) = self.sides().unwrap_or_default();
        f64::from(2 * (long + short)) * self.panel_m()
    }

    /// Panels that are left over, to be doubled back.
    pub fn left_over(self) -> u32 {
        let (long, short) = self.sides().unwrap_or_default();
        self.panels().saturating_sub(2 * (long + short))
    }

    /// The plan: corner 1 in the lower left, the coop in the middle at the plan's origin; `None` where the rolls
    /// close round nothing.
    pub fn lay_out(self) -> Option<Plan> {
        let (long, short) = self.sides()?;
        let (east_m, north_m) = (f64::from(long) * self.panel_m() / 2.0, f64::from(short) * self.panel_m() / 2.0);
        let outline = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)]
            .map(|(east, north)| Point::new(east * east_m, north * north_m))
            .to_vec();
        let net = NetKind { count: Some(self.count), ..NetKind::new("roll", self.length_m, self.panels_each()) };
        let coop = Coop::new("coop", Point::new(0.0, 0.0));
        let run = Run { id: "run-1".to_owned(), outline, coop: Some(coop.id.clone()), ..Run::default() };
        let store = Store {
            nets: vec![net],
            energizers: Vec::new(),
            brace: BraceRule::default(),
            mower: Mower::default(),
            earth_stake: EarthStake::default(),
            rates: Rates::default(),
            rest: Rest::new(),
        };
        Some(Plan { store, coop: Some(coop), runs: vec![run], ..Plan::default() })
    }
}

#[cfg(test)]
mod tests {
    use super::Rolls;

    #[test]
    fn rectangles_are_of_whole_panels_and_near_square() {
        // rolls, posts, long side, short side, panels left over
        for (count, posts, long, short, left) in [
            (2, 14, 7, 6, 0),
            (1, 15, 4, 3, 0),
            (3, 14, 10, 9, 1),
            (1, 5, 1, 1, 0),
            (1, 6, 1, 1, 1),
            (4, 15, 14, 14, 0),
        ] {
            let rolls = Rolls { count, length_m: 50.0, posts };
            assert_eq!(rolls.sides(), Some((long, short)), "{rolls:?}");
            assert_eq!(rolls.left_over(), left, "{rolls:?}");
            let plan = rolls.lay_out().unwrap();
            let side_m = plan.runs[0].outline[1].east_m - plan.runs[0].outline[0].east_m;
            assert!((side_m - f64::from(long) * rolls.panel_m()).abs() < 1e-9);
        }
    }

    #[test]
    fn too_few_panels_enclose_nothing() {
        assert_eq!(Rolls { count: 1, length_m: 50.0, posts: 4 }.lay_out(), None);
        assert_eq!(Rolls { count: 0, length_m: 50.0, posts: 14 }.lay_out(), None);
        assert_eq!(Rolls { count: 2, length_m: 50.0, posts: 0 }.lay_out(), None);
    }
}
