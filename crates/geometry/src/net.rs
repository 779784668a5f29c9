//! A roll of netting as the geometry sees it: a row of panels between posts, metres.
//!
//! A net of `p` panels has `p + 1` posts, one at either end. It cannot be cut and is not turned end for end.

/// A stated length and the sum of the stated panels may differ by this much, metres.
pub const PANEL_SUM_TOLERANCE_M: f64 = 1e-3;

/// More panels than this in one net are taken for a slip of the pen.
pub const MAX_PANELS: usize = 10_000;

/// One kind of net: the places of its posts along it, from its first post.
#[derive(Debug, Clone, PartialEq)]
pub struct Net {
    /// Distance of every post from the first one, ascending, starting with 0.
    posts_m: Vec<f64>,
}

/// Why a net cannot be built.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum NetFault {
    /// There is no panel.
    #[error("a net needs at least one panel")]
    NoPanels,
    /// More than [`MAX_PANELS`].
    #[error("a net of {0} panels is beyond any roll: state at most {MAX_PANELS}")]
    TooManyPanels(usize),
    /// A length that is not a positive finite number; the panel's number where panels are stated one by one.
    #[error("a length of {length_m} m is no net: state a positive number of metres")]
    BadLength {
        /// The length stated, metres.
        length_m: f64,
        /// The panel, counted from 0, where they are stated one by one.
        panel: Option<usize>,
    },
}

impl NetFault {
    /// A name that stays the same in every version.
    pub fn id(&self) -> &'static str {
        match self {
            NetFault::NoPanels => "net/no-panels",
            NetFault::TooManyPanels(_) => "net/too-many-panels",
            NetFault::BadLength { .. } => "net/bad-length",
        }
    }
}

impl Net {
    /// A net of `panels` equal panels, `length_m` long in all.
    pub fn equal(length_m: f64, panels: usize) -> Result<Net, NetFault> {
        if panels == 0 {
            return Err(NetFault::NoPanels);
        }
        if panels > MAX_PANELS {
            return Err(NetFault::TooManyPanels(panels));
        }
        if !is_length(length_m) {
            return Err(NetFault::BadLength { length_m, panel: None });
        }
        // Each place from the length itself, so that rounding does not add up along the net.
        let posts_m = (0..=panels).map(|post| length_m * post as f64 / panels as f64).collect();
        Ok(Net { posts_m })
    }

    /// A net whose panels are stated one by one, from its first post on, metres.
    pub fn unequal(panels_m: &[f64]) -> Result<Net, NetFault> {
        if panels_m.is_empty() {
            return Err(NetFault::NoPanels);
        }
        if panels_m.len() > MAX_PANELS {
            return Err(NetFault::TooManyPanels(panels_m.len()));
        }
        let mut posts_m = vec![0.0];
        let mut sum_m = 0.0;
        for (panel, &length_m) in panels_m.iter().enumerate() {
            if !is_length(length_m) {
                return Err(NetFault::BadLength { length_m, panel: Some(panel) });
            }
            sum_m += length_m;
            posts_m.push(sum_m);
        }
        Ok(Net { posts_m })
    }

    /// Length from first to last post, metres.
    pub fn length_m(&self) -> f64 {
        self.posts_m[self.posts_m.len() - 1]
    }

    /// Number of panels.
    pub fn panels(&self) -> usize {
        self.posts_m.len() - 1
    }

    /// Distance of every post from the first one, ascending from 0, metres.
    pub fn posts_m(&self) -> &[f64] {
        &self.posts_m
    }

    /// The length of each panel, metres.
    pub fn panel_lengths_m(&self) -> impl Iterator<Item = f64> + '_ {
        self.posts_m.windows(2).map(|pair| pair[1] - pair[0])
    }

    /// Whether stated panels sum to the stated length within [`PANEL_SUM_TOLERANCE_M`].
    pub fn panels_agree(length_m: f64, panels_m: &[f64]) -> bool {
        let sum_m: f64 = panels_m.iter().sum();
        (sum_m - length_m).abs() <= PANEL_SUM_TOLERANCE_M + f64::EPSILON * length_m.abs()
    }
}

/// A length that a keeper could mean: positive, finite, at most 1,000 km.
fn is_length(length_m: f64) -> bool {
    length_m > 0.0 && length_m <= 1e6
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop")]
    use super::*;

    #[test]
    fn posts_of_equal_panels_close_on_the_length() {
        let net = Net::equal(50.0, 14).unwrap();
        assert_eq!(net.panels(), 14);
        assert_eq!(net.length_m(), 50.0);
        assert!(net.panel_lengths_m().all(|panel_m| (panel_m - 50.0 / 14.0).abs() < 1e-12));
    }

    #[test]
    fn unequal_panels_keep_their_order() {
        let net = Net::unequal(&[4.0, 4.0, 2.5]).unwrap();
        assert_eq!(net.posts_m(), [0.0, 4.0, 8.0, 10.5]);
        assert!(Net::panels_agree(10.501, &[4.0, 4.0, 2.5]));
        assert!(!Net::panels_agree(10.502, &[4.0, 4.0, 2.5]));
    }

    #[test]
    fn what_is_no_net_is_refused_with_its_place() {
        assert_eq!(Net::equal(50.0, 0), Err(NetFault::NoPanels));
        assert_eq!(Net::unequal(&[]), Err(NetFault::NoPanels));
        assert!(matches!(Net::equal(50.0, 20_000), Err(NetFault::TooManyPanels(20_000))));
        for bad in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            assert!(matches!(Net::equal(bad, 3), Err(NetFault::BadLength { panel: None, .. })));
            assert!(matches!(Net::unequal(&[1.0, bad]), Err(NetFault::BadLength { panel: Some(1), .. })));
        }
    }
}
