//! Stretches of other grass in the hand: slid along their line, or drawn out and in by one end. An end is caught by posts
//! and corners of its line, and never passes the other.

use drawing::Thing;
use plan::{Edit, LeakageZone, Motion, Point, Rest, defaults};
use words::texts::Faults as Text;
use workup::Lay;

use super::faults::set;
use super::hold::{Held, Hold};
use super::{Editor, Snapped};

/// Long grass that is tried goes so far, metres: common practice, no source.
const LONG_GRASS_M: f64 = 10.0;
/// A stretch is drawn in to no less than this, metres.
const LEAST_M: f64 = 0.1;
/// Nearer than this a place along a line is the line's beginning, metres.
const START_M: f64 = 1e-9;

/// Long grass about a place of the line, held to the ends of an open one.
pub(super) fn long_grass(lay: &Lay, along_m: f64) -> LeakageZone {
    let whole_m = LONG_GRASS_M.min(lay.line_m);
    let from_m = along_m - whole_m / 2.0;
    let (from_m, to_m) = if lay.closed && whole_m >= lay.line_m {
        // All the way round: it would end where it begins, and be nothing.
        (0.0, lay.line_m)
    } else if lay.closed {
        (lay.held_m(from_m), lay.held_m(from_m + whole_m))
    } else {
        let from_m = from_m.clamp(0.0, lay.line_m - whole_m);
        (from_m, from_m + whole_m)
    };
    LeakageZone { from_m, to_m, s_per_m: defaults::LEAKAGE_LONG_WET_S_PER_M, rest: Rest::new() }
}

/// A stretch with one end at another place along its line; it keeps its other end, is never turned round, and on a ring
/// goes the shorter way to that place from where the end is.
fn with_end(lay: &Lay, zone: &LeakageZone, last: bool, at_m: f64) -> LeakageZone {
    if !lay.closed {
        // What is stated beyond an end of the line is taken at that end.
        let mut from_m = zone.from_m.clamp(0.0, (lay.line_m - LEAST_M).max(0.0));
        let mut to_m = zone.to_m.clamp(LEAST_M.min(lay.line_m), lay.line_m);
        if last {
            to_m = at_m.max(from_m + LEAST_M).min(lay.line_m);
        } else {
            from_m = at_m.min(to_m - LEAST_M).max(0.0);
        }
        return LeakageZone { from_m, to_m, ..zone.clone() };
    }
    let is_m = if last { zone.to_m } else { zone.from_m };
    let by_m = (at_m - is_m + lay.line_m / 2.0).rem_euclid(lay.line_m) - lay.line_m / 2.0;
    let grown_m = care::fault_said::zone_m(lay, zone) + if last { by_m } else { -by_m };
    let long_m = grown_m.min(lay.line_m - LEAST_M).max(LEAST_M);
    let (from_m, to_m) = if last {
        (zone.from_m, lay.held_m(zone.from_m + long_m))
    } else {
        (lay.held_m(zone.to_m - long_m), zone.to_m)
    };
    // What ends where the line begins ends at its end.
    LeakageZone { from_m, to_m: if to_m < START_M { lay.line_m } else { to_m }, ..zone.clone() }
}

impl Editor {
    /// A stretch, or an end of one, in the hand.
    pub(super) fn zone_to_hold(&mut self, thing: Thing, at: Point) -> Option<Held> {
        let (what, was) = match thing {
            Thing::Zone { run, branch, zone } => {
                let (stated, lay) = self.on_line(run, branch)?;
                let stated = stated.leakage_zones.get(zone)?;
                (Hold::Zone(run, branch, zone, stated.clone()), lay.place_at(stated.from_m)?)
            }
            Thing::ZoneEnd { run, branch, zone, last } => {
                (Hold::ZoneEnd(run, branch, zone, last), self.zone_end_at(run, branch, zone, last)?)
            }
            _ => return None,
        };
        self.take_up(Some(thing));
        self.history.begin_called(plan::Deed::Move);
        Some(Held { what, from: at, was, moved: false })
    }

    /// Where an end of a stretch lies.
    fn zone_end_at(&self, run: usize, branch: Option<usize>, zone: usize, last: bool) -> Option<Point> {
        let (stated, lay) = self.on_line(run, branch)?;
        let zone = stated.leakage_zones.get(zone)?;
        lay.place_at(if last { zone.to_m } else { zone.from_m })
    }

    /// The edit that slides a stretch along its line by as much as the pointer went along it.
    pub(super) fn zone_to(
        &self,
        (run, branch, zone): (usize, Option<usize>, usize),
        was: &LeakageZone,
        from: Point,
        to: Point,
    ) -> Option<Edit> {
        let (_, lay) = self.on_line(run, branch)?;
        let by_m = lay.nearest_m(to)?.0 - lay.nearest_m(from)?.0;
        let (from_m, to_m) = if lay.closed {
            (lay.held_m(was.from_m + by_m), lay.held_m(was.to_m + by_m))
        } else {
            let by_m = by_m.max(-was.from_m.min(was.to_m)).min((lay.line_m - was.to_m.max(was.from_m)).max(0.0));
            (was.from_m + by_m, was.to_m + by_m)
        };
        self.zone_set((run, branch, zone), LeakageZone { from_m, to_m, ..was.clone() })
    }

    /// The edit that states a stretch anew; `None` where it is so.
    fn zone_set(&self, (run, branch, zone): (usize, Option<usize>, usize), to: LeakageZone) -> Option<Edit> {
        let mut run = self.plan.runs.get(run)?.clone();
        let stated = run.zones_on_mut(branch)?.get_mut(zone)?;
        if *stated == to {
            return None;
        }
        *stated = to;
        Some(set(run))
    }

    /// A stretch in the hand in words: its grass, how long it is, from where to where.
    pub(super) fn zone_at_hand(&self, run: usize, branch: Option<usize>, zone: usize) -> Option<Snapped> {
        let (stated, lay) = self.on_line(run, branch)?;
        let zone = stated.leakage_zones.get(zone)?;
        let long_m = care::fault_said::zone_m(&lay, zone);
        let (name, length) = (care::fault_said::zone(zone, self.words), self.words.length(long_m));
        let reason = self.words.say(Text::ZoneLong, &[("name", &name), ("length", &length)]);
        Some(Snapped { at: lay.place_at(zone.from_m + long_m / 2.0)?, reason })
    }

    /// An end of a stretch goes to the place of its line nearest to a wanted one, or to what catches it there: the edit,
    /// where it is not there yet, and what is told of it.
    pub(super) fn zone_end_to(
        &self,
        (run, branch, zone, last): (usize, Option<usize>, usize, bool),
        wanted: Point,
        caught: bool,
    ) -> Option<(Option<Edit>, Snapped)> {
        let (stated, lay) = self.on_line(run, branch)?;
        let stated = stated.leakage_zones.get(zone)?;
        let at_m = lay.nearest_m(wanted)?.0;
        let post = self.caught_on_line(&lay, at_m).filter(|_| caught);
        let to = with_end(&lay, stated, last, post.map_or(at_m, |post| post.0));
        let end_m = if last { to.to_m } else { to.from_m };
        let place = match post.and_then(|post| post.1).filter(|_| branch.is_none()) {
            Some(post) => self.words.say(Text::AtPost, &[("number", &(post + 1).to_string())]),
            None => care::fault_said::end_place(self.words, &lay, branch, lay.held_m(end_m)),
        };
        let name = care::fault_said::zone(&to, self.words);
        let length = self.words.length(care::fault_said::zone_m(&lay, &to));
        let text = if last { Text::ZoneHeldTo } else { Text::ZoneHeldFrom };
        let reason = self.words.say(text, &[("name", &name), ("length", &length), ("place", &place)]);
        let snapped = Snapped { at: lay.place_at(end_m)?, reason };
        Some((self.zone_set((run, branch, zone), to), snapped))
    }

    /// The edit of an arrow key: a stretch goes a step along its line, or one end of it does.
    pub(super) fn zone_nudged(&self, thing: Thing, motion: Motion) -> Option<Edit> {
        match thing {
            Thing::Zone { run, branch, zone } => {
                let (stated, lay) = self.on_line(run, branch)?;
                let stated = stated.leakage_zones.get(zone)?;
                let from = lay.place_at(stated.from_m)?;
                self.zone_to((run, branch, zone), stated, from, motion.of(from))
            }
            Thing::ZoneEnd { run, branch, zone, last } => {
                let end = self.zone_end_at(run, branch, zone, last)?;
                self.zone_end_to((run, branch, zone, last), motion.of(end), false)?.0
            }
            _ => None,
        }
    }

    /// An end of the stretch that is picked goes a step.
    pub(super) fn nudge_end(&mut self, last: bool, east_m: f64, north_m: f64) {
        let Some(Thing::Zone { run, branch, zone }) = self.picked.and_then(Thing::zone) else { return };
        let edit = self.zone_nudged(Thing::ZoneEnd { run, branch, zone, last }, Motion::Shift { east_m, north_m });
        self.one_step(plan::Deed::Move, edit.into_iter().collect());
    }
}

#[cfg(test)]
mod tests {
    use super::{LEAST_M, long_grass, with_end};
    use plan::{LeakageZone, Rest};
    use workup::Lay;

    /// Whatever an end is dragged to, the other stays, and what lies between is never turned round nor drawn to nothing.
    #[test]
    fn an_end_goes_anywhere_but_past_the_other() {
        for (closed, from_m, long_m) in
            [(false, 0.0, 0.2), (false, 12.0, 30.0), (true, 3.0, 0.2), (true, 90.0, 25.0), (true, 50.0, 99.0)]
        {
            let lay = Lay { closed, line_m: 100.0, ..Lay::default() };
            let to_m = if closed { lay.held_m(from_m + long_m) } else { from_m + long_m };
            let zone = LeakageZone { from_m, to_m, s_per_m: 1e-4, rest: Rest::new() };
            for at_m in (0..=1000).map(|tenth| f64::from(tenth) / 10.0) {
                for last in [false, true] {
                    let now = with_end(&lay, &zone, last, at_m);
                    let kept = if last {
                        now.from_m.to_bits() == from_m.to_bits()
                    } else {
                        now.to_m.to_bits() == to_m.to_bits()
                    };
                    let long_m = care::fault_said::zone_m(&lay, &now);
                    let on_line = [now.from_m, now.to_m].iter().all(|place_m| (0.0..=100.0).contains(place_m));
                    assert!(kept && on_line, "{now:?} of {zone:?} at {at_m}");
                    assert!((LEAST_M - 1e-9..=100.0).contains(&long_m), "{now:?} of {zone:?} at {at_m}");
                    assert!(closed || now.from_m < now.to_m, "{now:?} of {zone:?} at {at_m}");
                }
            }
        }
    }

    #[test]
    fn long_grass_on_a_short_ring_goes_all_the_way_round() {
        for line_m in [4.0, 10.0, 10.5, 80.0] {
            let lay = Lay { closed: true, line_m, ..Lay::default() };
            for along_m in [0.0, 3.9, line_m / 2.0] {
                let zone = long_grass(&lay, along_m);
                let long_m = care::fault_said::zone_m(&lay, &zone);
                assert!((long_m - line_m.min(10.0)).abs() < 1e-9, "{zone:?} on {line_m}");
            }
        }
    }

    #[test]
    fn a_stretch_that_is_stated_beyond_an_open_lines_end_is_not_turned_round() {
        let lay = Lay { closed: false, line_m: 100.0, ..Lay::default() };
        for (from_m, to_m) in [(120.0, 130.0), (90.0, 130.0), (-30.0, -20.0)] {
            let zone = LeakageZone { from_m, to_m, s_per_m: 1e-4, rest: Rest::new() };
            for at_m in [0.0, 40.0, 100.0] {
                for last in [false, true] {
                    let now = with_end(&lay, &zone, last, at_m);
                    let on_line = 0.0 <= now.from_m && now.to_m <= 100.0;
                    assert!(on_line && now.to_m - now.from_m >= LEAST_M - 1e-9, "{now:?} of {zone:?} at {at_m}");
                }
            }
        }
    }
}
