//! The wind on a run, clean and fouled: when its posts go over, and which go first.

use geometry::gusts::{GustRequest, Stretch, first, stretches};
use geometry::statics::solidity;
use plan::NetKind;
use plan::defaults::bracing as table;

use super::Site;
use super::model::{GoesOver, Wind};
use crate::place;
use crate::values::STRONGEST_WIND;

pub(super) fn wind(site: &Site<'_>, corners: &[geometry::Corner]) -> Wind {
    let (nets, request) = (&site.plan.store.nets, &site.judge.request);
    let clean: Vec<f64> = nets.iter().map(clean_share).collect();
    // One that no net has is a finding, and what is assumed stands in.
    let fouled_share = site.plan.ground.fouled_share.filter(|&share| share > 0.0 && share <= 1.0);
    let fouled_share = fouled_share.unwrap_or(table::FOULED_SHARE);
    // Grass only ever adds to the strands that are there.
    let fouled: Vec<f64> = clean.iter().map(|&share| share.max(fouled_share)).collect();
    // One that blows nowhere is a finding, and nothing is reckoned with it.
    let wanted_m_per_s = site.plan.ground.wind_m_per_s.filter(|wind| (0.0..=STRONGEST_WIND).contains(wind));
    let over = |shares: &[f64]| {
        let found = stretches(&GustRequest {
            outline: site.outline,
            placement: request.placement,
            kinds: request.kinds,
            solidity: shares,
            corners,
            soil: request.soil,
        });
        goes_over(site, &found, wanted_m_per_s)
    };
    let used: Vec<usize> = request.placement.nets_on_line().map(|net| net.kind).collect();
    let most =
        |shares: &[f64]| used.iter().filter_map(|&kind| shares.get(kind)).fold(0.0, |most: f64, &one| most.max(one));
    Wind {
        wanted_m_per_s,
        clean_share: most(&clean),
        fouled_share: most(&fouled),
        clean: over(&clean),
        fouled: over(&fouled),
    }
}

/// Share of a clean net's face that is strand: its live lines and the dead one at the bottom, and its stays.
fn clean_share(net: &NetKind) -> f64 {
    let lines = (net.live_line_heights_m().len() + 1) as f64;
    let line_share = (lines * table::LINE_THICKNESS_M / net.height_m()).min(1.0);
    solidity(line_share, table::STAY_SHARE)
}

fn goes_over(site: &Site<'_>, found: &[Stretch], wanted_m_per_s: Option<f64>) -> Option<GoesOver> {
    let alike = first(found);
    let stretch = *alike.first()?;
    let standing = stretch.first()?;
    let free = || found.iter().flat_map(|stretch| &stretch.standing);
    let first_post = *standing.posts.first()?;
    Some(GoesOver {
        limit_m_per_s: stretch.limit_m_per_s,
        posts: alike.iter().flat_map(|one| &one.standing).flat_map(|one| one.posts.iter().copied()).collect(),
        alike: alike.len(),
        first_post,
        at: place(site.judge.request.placement.posts[first_post].at),
        stretch_m: stretch.length_m,
        over: wanted_m_per_s.map(|wind| free().filter(|one| one.limit_m_per_s < wind).map(|one| one.posts.len()).sum()),
        free: free().map(|one| one.posts.len()).sum(),
    })
}
