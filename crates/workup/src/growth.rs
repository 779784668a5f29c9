//! Days until the grass under the line reaches its lowest live line: (height of the line - height of the cut) / growth.
//!
//! Slow, mean and fast growth stand side by side, because the mean of a sward says nothing of single tall tips, and it
//! is the tips that touch. Metres, days. Sources: docs/sources.md, husbandry 5.3 (mean: farm measurements over 250 kg
//! of dry matter a centimetre, from memory; fast: leaf and stem growth of single plants, from memory).

use plan::Plan;

use crate::model::Lay;

/// Growth in a cold or dry time, of the mean sward in spring, and of fast tips, metres a day.
pub const GROWTH_M_PER_DAY: [f64; 3] = [0.0006, 0.0024, 0.010];

/// Days until the grass reaches the lowest live line; 0 where the cut leaves it there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GrassDays {
    /// Height of the lowest live line of the run's nets, metres.
    pub lowest_live_m: f64,
    /// Height of the cut, metres.
    pub cut_m: f64,
    /// With slow growth.
    pub slow: f64,
    /// With mean growth.
    pub mean: f64,
    /// With fast growth.
    pub fast: f64,
}

/// For the nets of a run; `None` without one.
pub(crate) fn days(plan: &Plan, lay: &Lay) -> Option<GrassDays> {
    let kinds = lay.nets_needed.keys().filter_map(|kind| plan.net_kind(kind));
    let heights_m = kinds.flat_map(|net| net.live_line_heights_m().iter().copied());
    let lowest_live_m = heights_m.min_by(f64::total_cmp)?;
    let cut_m = plan.store.mower.cut_height_m();
    let [slow, mean, fast] = GROWTH_M_PER_DAY.map(|growth| days_until(lowest_live_m, cut_m, growth));
    Some(GrassDays { lowest_live_m, cut_m, slow, mean, fast })
}

/// Days from one height to another at so many metres a day.
pub fn days_until(live_m: f64, cut_m: f64, growth_m_per_day: f64) -> f64 {
    ((live_m - cut_m) / growth_m_per_day).max(0.0)
}

#[cfg(test)]
mod tests {
    use super::days_until;

    #[test]
    fn grass_reaches_the_line_when_the_facts_say() {
        // live m, cut m, growth m/d, days, tolerance; husbandry 5.3 and N38 (derived there).
        for (live_m, cut_m, growth, want, tolerance) in [
            (0.050, 0.025, 0.0024, 10.4, 0.05),
            (0.050, 0.025, 0.0034, 7.4, 0.05),
            (0.050, 0.025, 0.005, 5.0, 1e-9),
            (0.050, 0.025, 0.010, 2.5, 1e-9),
            (0.050, 0.025, 0.015, 1.7, 0.05),
            (0.050, 0.040, 0.0024, 4.2, 0.05),
            (0.050, 0.040, 0.010, 1.0, 1e-9),
            (0.050, 0.060, 0.010, 0.0, 1e-9),
        ] {
            let got = days_until(live_m, cut_m, growth);
            assert!((got - want).abs() <= tolerance, "{live_m} {cut_m} {growth}: {got}, {want} expected");
        }
    }
}
