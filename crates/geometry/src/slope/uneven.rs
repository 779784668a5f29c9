//! Panels under which the ground dips away from the bottom line or rises into it.
//!
//! The bottom line is taut from the foot of one post to the foot of the next. Where the ground lies below that chord
//! there is a gap; where it lies above by more than the lowest live line, that line drags. Both are taken along the
//! line in plan. A panel that cuts across a corner goes straight from post to post, and is judged by the ground under that
//! straight way where it is known; else along the line. A further post stands on the ground and makes two chords of one.

use super::Profile;
use crate::{MEET_M, Outline, Placement, Point};

/// More further posts than this in one panel are no mend: the line goes elsewhere, or the ground is filled.
const MOST_POSTS: usize = 3;

/// Places beside the breaks of the ground at which a further post is tried, evenly along the panel.
const EVEN_PLACES: usize = 15;

/// Of a panel over very broken ground so many breaks are tried.
const MOST_BREAKS: usize = 24;

/// The ground under a straight stretch from one place to another, past vertices of the line.
pub type Across<'a> = dyn Fn(&[usize], Point, Point) -> Option<Profile> + 'a;

/// What to look for.
pub struct UnevenRequest<'a> {
    /// The line, laid on the ground.
    pub outline: &'a Outline,
    /// The ground along it.
    pub profile: &'a Profile,
    /// The nets on it.
    pub placement: &'a Placement,
    /// The gap under the bottom line that is allowed, metres.
    pub gap_m: f64,
    /// Height of the lowest live line of each kind of net, metres.
    pub live_m: &'a [f64],
    /// The ground under a straight stretch that leaves the line at those of its vertices; `None` where it is not known.
    pub across: &'a Across<'a>,
}

/// A place and how far off the ground is there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Worst {
    /// Along the outline, metres.
    pub along_m: f64,
    /// Where.
    pub at: Point,
    /// How far the ground lies from the bottom line, metres.
    pub by_m: f64,
}

/// A panel over uneven ground.
#[derive(Debug, Clone, PartialEq)]
pub struct Uneven {
    /// The post where it begins, in chain order: a number of [`Placement::posts`].
    pub post: usize,
    /// The widest gap, where it is more than is allowed.
    pub dip: Option<Worst>,
    /// The highest ground, where it is above the lowest live line.
    pub ridge: Option<Worst>,
    /// Where further posts go; empty where no three of them mend it.
    pub posts: Vec<(f64, Point)>,
}

/// The ground under a panel: the widest gap and the highest ground over the chord, metres, each with its place in plan.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PanelGround {
    /// Widest gap below the chord, 0 or above.
    pub gap_m: f64,
    /// Where.
    pub gap_at_m: f64,
    /// Highest ground above the chord, 0 or above.
    pub over_m: f64,
    /// Where.
    pub over_at_m: f64,
}

impl Profile {
    /// The ground under a bottom line from one place in plan to another.
    pub fn under(&self, from_m: f64, to_m: f64) -> PanelGround {
        let ends = (self.up_m(from_m), self.up_m(to_m));
        let mut ground = PanelGround { gap_m: 0.0, gap_at_m: from_m, over_m: 0.0, over_at_m: from_m };
        // The ground is straight between breaks, so it is farthest from the chord at one.
        for at_m in self.breaks(from_m, to_m) {
            let chord_m = ends.0 + (at_m - from_m) / (to_m - from_m) * (ends.1 - ends.0);
            let below_m = chord_m - self.up_m(at_m);
            if below_m > ground.gap_m {
                (ground.gap_m, ground.gap_at_m) = (below_m, at_m);
            }
            if -below_m > ground.over_m {
                (ground.over_m, ground.over_at_m) = (-below_m, at_m);
            }
        }
        ground
    }
}

/// The panels over uneven ground, in chain order.
pub fn uneven(request: &UnevenRequest<'_>) -> Vec<Uneven> {
    let UnevenRequest { outline, profile, placement, gap_m, .. } = *request;
    let whole_m = profile.level_m();
    let mut found = Vec::new();
    for (index, post) in placement.posts.iter().enumerate() {
        let to_chain_m = match placement.posts.get(index + 1) {
            Some(next) if next.net == post.net => next.chain_m,
            // The last panel goes on to the line's end, where the rest is folded back.
            None if !placement.falls_short() => placement.line_m,
            _ => continue,
        };
        if to_chain_m - post.chain_m < MEET_M {
            continue;
        }
        let along = |chain_m: f64| placement.along_m(chain_m.min(placement.line_m));
        let (mut from_m, mut to_m) = (profile.level_of(along(post.chain_m)), profile.level_of(along(to_chain_m)));
        if placement.reversed {
            std::mem::swap(&mut from_m, &mut to_m);
        }
        if to_m <= from_m {
            to_m += whole_m;
        }
        let live_m = request.live_m[placement.nets[post.net].kind];
        let on_line = |level_m: f64| {
            let level_m = if outline.is_closed() { level_m.rem_euclid(whole_m) } else { level_m };
            let along_m = profile.along_of(level_m);
            (along_m, outline.at(along_m))
        };
        let corners = corners_between(outline, profile, from_m, to_m);
        let ends = (on_line(from_m).1, on_line(to_m).1);
        let straight = if corners.is_empty() { None } else { (request.across)(&corners, ends.0, ends.1) };
        let (profile, from_m, to_m) = match &straight {
            Some(straight) => (straight, 0.0, straight.level_m()),
            None => (profile, from_m, to_m),
        };
        let ground = profile.under(from_m, to_m);
        let is_dip = ground.gap_m > gap_m + GRAIN_M;
        let is_ridge = ground.over_m > live_m + GRAIN_M;
        if !is_dip && !is_ridge {
            continue;
        }
        let place = |level_m: f64| match &straight {
            None => on_line(level_m),
            Some(straight) => {
                let at = ends.0.towards(ends.1, level_m / straight.level_m());
                (outline.nearest_along(at).0, at)
            }
        };
        let worst = |level_m: f64, by_m: f64| {
            let (along_m, at) = place(level_m);
            Worst { along_m, at, by_m }
        };
        let mend = Mend { profile, from_m, to_m, gap_m, live_m };
        found.push(Uneven {
            post: index,
            dip: is_dip.then(|| worst(ground.gap_at_m, ground.gap_m)),
            ridge: is_ridge.then(|| worst(ground.over_at_m, ground.over_m)),
            posts: mend.posts().into_iter().map(place).collect(),
        });
    }
    found
}

/// The corners of the line strictly between two places in plan.
fn corners_between(outline: &Outline, profile: &Profile, from_m: f64, to_m: f64) -> Vec<usize> {
    let whole_m = profile.level_m();
    let within = |level_m: f64| level_m > from_m + MEET_M && level_m < to_m - MEET_M;
    let at_m = |vertex: usize| profile.level_of(outline.vertices()[vertex].along_m);
    let corners = outline.corners().map(|(vertex, _)| vertex);
    corners.filter(|&vertex| within(at_m(vertex)) || within(at_m(vertex) + whole_m)).collect()
}

/// Rounding that a gap may carry, metres.
const GRAIN_M: f64 = 1e-9;

struct Mend<'a> {
    profile: &'a Profile,
    from_m: f64,
    to_m: f64,
    gap_m: f64,
    live_m: f64,
}

impl Mend<'_> {
    /// How far a chord is off, in parts of what is allowed: up to 1 it may stand.
    fn off(&self, from_m: f64, to_m: f64) -> f64 {
        let ground = self.profile.under(from_m, to_m);
        let part = |by_m: f64, allowed_m: f64| if by_m <= GRAIN_M { 0.0 } else { by_m / (allowed_m + GRAIN_M) };
        part(ground.gap_m, self.gap_m).max(part(ground.over_m, self.live_m))
    }

    /// The fewest further posts with which every chord may stand, and of those places the ones that leave the least.
    fn posts(&self) -> Vec<f64> {
        let mut places = self.profile.breaks(self.from_m, self.to_m);
        if places.len() > MOST_BREAKS {
            let every = places.len().div_ceil(MOST_BREAKS);
            places = places.into_iter().step_by(every).collect();
        }
        let part = |number: usize| self.from_m + (self.to_m - self.from_m) * number as f64 / (EVEN_PLACES + 1) as f64;
        places.extend((1..=EVEN_PLACES).map(part));
        places.sort_by(f64::total_cmp);
        places.insert(0, self.from_m);
        places.push(self.to_m);
        let count = places.len();
        let off: Vec<Vec<f64>> = (0..count)
            .map(|from| (0..count).map(|to| if to > from { self.off(places[from], places[to]) } else { 0.0 }).collect())
            .collect();
        // worst[k][j]: the least worst chord from the first post to place j with k posts between; by whom it is reached.
        let mut worst: Vec<(f64, usize)> = (0..count).map(|to| (off[0][to], 0)).collect();
        let mut ways: Vec<Vec<(f64, usize)>> = vec![worst.clone()];
        for _ in 0..MOST_POSTS {
            let next: Vec<(f64, usize)> = (0..count)
                .map(|to| {
                    (1..to.max(1))
                        .map(|by| (worst[by].0.max(off[by][to]), by))
                        .min_by(|a, b| a.0.total_cmp(&b.0))
                        .unwrap_or((f64::INFINITY, 0))
                })
                .collect();
            ways.push(next.clone());
            worst = next;
            if worst[count - 1].0 <= 1.0 {
                let mut posts = Vec::new();
                let mut at = count - 1;
                for way in ways[1..].iter().rev() {
                    at = way[at].1;
                    posts.push(places[at]);
                }
                posts.reverse();
                return posts;
            }
        }
        Vec::new()
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Grid, SideHeights, Surface};
    use super::*;
    use crate::{Net, PlacementRequest, ground, place};

    /// A valley along the line: one row of heights, east from 0.
    fn valley(up_m: &[f64], cell_m: f64) -> Grid {
        let row: Vec<Option<f64>> = up_m.iter().copied().map(Some).collect();
        let up_m = row.iter().chain(&row).copied().collect();
        Grid::new(Point::new(0.0, -cell_m / 2.0), cell_m, row.len(), up_m).expect("a grid")
    }

    fn laid(surface: &dyn Surface, line_m: f64, panels: usize) -> (Outline, Profile, Placement) {
        let level = Outline::open(&[Point::default(), Point::new(line_m, 0.0)]);
        let profile = Profile::new(&level, |_| SideHeights::Over(surface)).expect("a line");
        let outline = level.over(&profile);
        let net = Net::equal(outline.length_m(), panels).expect("a net");
        let placement = place(&PlacementRequest::new(&outline, &[net], &[0])).expect("placed");
        (outline, profile, placement)
    }

    #[test]
    fn a_ditch_in_the_middle_wants_one_post_at_its_bottom() {
        // 0.3 m deep at the middle of a panel of 3.5 m: 51 mm of net, a gap of 300 mm (docs/sources.md, husbandry 7).
        let surface = valley(&[0.0, -0.3, 0.0], 1.75);
        let (outline, profile, placement) = laid(&surface, 3.5, 1);
        assert!((profile.surface_m() - 3.5 - 0.051).abs() < 5e-4, "{}", profile.surface_m());
        let found = uneven(&UnevenRequest {
            outline: &outline,
            profile: &profile,
            placement: &placement,
            gap_m: 0.075,
            live_m: &[0.05],
            across: &|_, _, _| None,
        });
        assert_eq!(found.len(), 1);
        let dip = found[0].dip.expect("a dip");
        assert!((dip.by_m - 0.3).abs() < 1e-9 && (dip.at.east_m - 1.75).abs() < 1e-9, "{dip:?}");
        assert!(found[0].ridge.is_none());
        assert_eq!(found[0].posts.len(), 1);
        assert!((found[0].posts[0].1.east_m - 1.75).abs() < 1e-9);
    }

    #[test]
    fn a_round_hollow_leaves_the_sagitta() {
        // facts N34: R 20 m, 3.5 m between posts: 76.56 mm.
        let (radius_m, cell_m) = (20.0, 0.0875);
        let up_m: Vec<f64> = (0..=40).map(|n| (f64::from(n) * cell_m - 1.75).powi(2) / (2.0 * radius_m)).collect();
        let surface = valley(&up_m, cell_m);
        let (_, profile, _) = laid(&surface, 3.5, 1);
        let gap_m = profile.under(0.0, 3.5).gap_m;
        assert!((gap_m - ground::sagitta_m(3.5, radius_m)).abs() < 1e-9, "{gap_m}");
    }

    #[test]
    fn a_ridge_drags_where_it_is_above_the_live_line() {
        let surface = valley(&[0.0, 0.0, 0.2, 0.0, 0.0], 1.0);
        let (outline, profile, placement) = laid(&surface, 4.0, 1);
        let look = |live_m: f64| {
            uneven(&UnevenRequest {
                outline: &outline,
                profile: &profile,
                placement: &placement,
                gap_m: 0.075,
                live_m: &[live_m],
                across: &|_, _, _| None,
            })
        };
        assert!(look(0.25).is_empty());
        let found = look(0.05);
        assert!((found[0].ridge.expect("a ridge").by_m - 0.2).abs() < 1e-9);
        // A post on the top alone leaves 0.1 m under both halves; so further ones go to its foot.
        assert!(found[0].dip.is_none() && found[0].posts.len() > 1, "{found:?}");
    }

    #[test]
    fn a_panel_across_a_corner_is_judged_where_it_hangs() {
        // A hole of half a metre at the corner itself; straight across, 0.7 m off, the ground is level.
        let up_m = (0..9 * 9).map(|node| Some(if node == 4 * 9 + 4 { -0.5 } else { 0.0 })).collect();
        let surface = Grid::new(Point::new(-2.0, -2.0), 0.5, 9, up_m).expect("a grid");
        let level = Outline::open(&[(-1.0, 0.0), (0.0, 0.0), (0.0, 1.0)].map(Point::from));
        let profile = Profile::new(&level, |_| SideHeights::Over(&surface)).expect("a line");
        let outline = level.over(&profile);
        let net = Net::equal(outline.length_m(), 1).expect("a net");
        let placement = place(&PlacementRequest::new(&outline, &[net], &[0])).expect("placed");
        let look = |across: &Across<'_>| {
            let (outline, profile, placement) = (&outline, &profile, &placement);
            uneven(&UnevenRequest { outline, profile, placement, gap_m: 0.075, live_m: &[0.05], across })
        };
        let along = look(&|_, _, _| None);
        assert!((along[0].dip.expect("the hole").by_m - 0.5).abs() < 1e-9, "along the line it lies under the panel");
        let straight = |vertices: &[usize], from: Point, to: Point| {
            assert_eq!(vertices, [1]);
            assert!(from.distance_m(Point::new(-1.0, 0.0)) < 1e-9 && to.distance_m(Point::new(0.0, 1.0)) < 1e-9);
            Profile::new(&Outline::open(&[from, to]), |_| SideHeights::Over(&surface))
        };
        assert!(look(&straight).is_empty());
        // A bump half way across is found there, and so is the post that mends it.
        let bump = |_: &[usize], from: Point, to: Point| {
            let up_m = (0..9 * 9).map(|node| Some(if node == 5 * 9 + 3 { 0.3 } else { 0.0 })).collect();
            let surface = Grid::new(Point::new(-2.0, -2.0), 0.5, 9, up_m)?;
            Profile::new(&Outline::open(&[from, to]), |_| SideHeights::Over(&surface))
        };
        let found = look(&bump);
        let ridge = found[0].ridge.expect("the bump");
        assert!((ridge.by_m - 0.3).abs() < 1e-9 && ridge.at.distance_m(Point::new(-0.5, 0.5)) < 1e-9, "{ridge:?}");
        assert!(found[0].posts.iter().all(|(_, at)| (at.north_m - at.east_m - 1.0).abs() < 1e-9), "{found:?}");
    }
}
