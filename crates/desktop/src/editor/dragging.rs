//! What is held goes where the hand leads it, and is let go.

use plan::{Edit, Motion, Plan, Point};
use words::texts::Window as Text;
use workup::Lay;

use super::hold::Hold;
use super::whole::Whole;
use super::{Editor, Lesson, Snapped};

/// A start that goes less far than this is where it was, metres: posts are a matter of centimetres.
const ELSEWHERE_M: f64 = 1.0;

impl Editor {
    pub(super) fn drag(&mut self, to: Point) {
        let Some(held) = self.held.clone() else { return };
        let shift = Motion::Shift { east_m: to.east_m - held.from.east_m, north_m: to.north_m - held.from.north_m };
        self.snapped = None;
        let edits = match &held.what {
            Hold::Corner(_) => {
                // The corner keeps its distance from the pointer, so that it does not jump into it.
                let hand = shift.of(held.was);
                return self.lead_corner(|grip| grip.hand = hand);
            }
            Hold::Slide(slide) => {
                let hand = [to.east_m - held.from.east_m, to.north_m - held.from.north_m];
                let edit = self.slid_to(slide, hand);
                let told = self.snapped.take();
                return self.slid(edit, told);
            }
            Hold::Pivot(_) => return self.pivot_to(shift.of(held.was)),
            Hold::Whole(whole) => {
                let own = whole.shape();
                let places = whole.places();
                // The one of its corners that comes nearest to something takes the whole there.
                // A metal stake goes onto no post.
                let uncaught = matches!(whole, Whole::EarthStakes(..) | Whole::Underlay(_) | Whole::Label(..));
                let places = if uncaught { Vec::new() } else { places };
                let free: Vec<Point> = places.iter().map(|&place| shift.of(place)).collect();
                let caught = self.guide_whole(own.as_ref(), &free).map(|(place, snapped)| (free[place], snapped));
                let motion = match &caught {
                    Some((free, snapped)) => Motion::Shift {
                        east_m: to.east_m - held.from.east_m + snapped.at.east_m - free.east_m,
                        north_m: to.north_m - held.from.north_m + snapped.at.north_m - free.north_m,
                    },
                    None => shift,
                };
                self.snapped = caught.map(|(_, snapped)| snapped);
                whole.moved(&self.plan, motion)
            }
            Hold::Many(many, about) => {
                let bearing = |about: Point, at: Point| (at.east_m - about.east_m).atan2(at.north_m - about.north_m);
                return match *about {
                    Some(about) => self.many_turned(many, about, bearing(about, to) - bearing(about, held.from)),
                    None => {
                        self.many_shifted(many, to.east_m - held.from.east_m, to.north_m - held.from.north_m);
                    }
                };
            }
            Hold::Turn(whole, about) => {
                let bearing = |at: Point| (at.east_m - about.east_m).atan2(at.north_m - about.north_m);
                whole.moved(&self.plan, Motion::Turn { about: *about, clockwise_rad: bearing(to) - bearing(held.from) })
            }
            Hold::Door(coop) => vec![Self::door_to(coop, shift.of(held.was))],
            &Hold::Gate(run, gate) => {
                let edit = self.gate_to(run, gate, shift.of(held.was));
                if let Some(edit) = edit {
                    self.make(edit);
                    if let Some(held) = &mut self.held {
                        held.moved = true;
                    }
                }
                self.snapped = self.gate_at_hand(run, gate);
                return;
            }
            &Hold::Fault(run, branch, fault) => {
                let edit = self.fault_to(run, branch, fault, shift.of(held.was));
                return self.slid(edit, self.fault_at_hand(run, branch, fault, shift.of(held.was)));
            }
            Hold::EarthStake(run, stake, stand) => {
                let edit = self.stake_to(*run, *stake, stand, shift.of(held.was));
                let (run, stake) = (*run, *stake);
                self.slid(edit, None);
                self.snapped = self.stake_at_hand(run, stake);
                return;
            }
            &Hold::Energizer(run) => {
                let edit = self.energizer_to(run, shift.of(held.was));
                self.slid(edit, None);
                self.snapped = self.energizer_at_hand(run);
                return;
            }
            Hold::Zone(run, branch, zone, was) => {
                let edit = self.zone_to((*run, *branch, *zone), was, held.from, to);
                self.slid(edit, None);
                self.snapped = self.zone_at_hand(*run, *branch, *zone);
                return;
            }
            &Hold::ZoneEnd(run, branch, zone, last) => {
                if let Some((edit, told)) = self.zone_end_to((run, branch, zone, last), shift.of(held.was), true) {
                    self.slid(edit, Some(told));
                }
                return;
            }
            Hold::Hanging(run, branch, whole, was) => {
                if let Some((edit, told)) = self.hanging_to((*run, *branch, *whole), was, shift.of(held.was), true) {
                    self.slid(edit, Some(told));
                }
                return;
            }
        };
        if let Some(held) = &mut self.held {
            held.moved = true;
        }
        self.make_as_said(edits);
    }

    pub(super) fn let_go(&mut self) {
        let moved_whole = self.held.as_ref().is_some_and(|held| held.moved && matches!(held.what, Hold::Whole(_)));
        if moved_whole && self.lesson == Lesson::Drag {
            self.lesson = Lesson::ReadLine;
        }
        let from = self.led_from();
        self.unhold();
        self.snapped = None;
        self.unguided();
        self.history.end();
        if let Some(from) = from
            && self.chained_anew(from)
        {
            self.notice = Some(Text::ChainedAnew);
        }
    }

    /// What is led lies as it will when it is let go, so that the hand sees it before.
    pub(super) fn rest(&mut self) {
        if let Some(from) = self.led_from() {
            self.known.let_go();
            self.chained_anew(from);
            self.hold_chains();
        }
    }

    /// The plan from which chains were kept, where a run's line was led since.
    fn led_from(&mut self) -> Option<Plan> {
        let from = self.held_from.take()?;
        let led = from.runs.iter().zip(&self.plan.runs).any(|(was, is)| was.id == is.id && was.outline != is.outline);
        if led {
            return Some(*from);
        }
        self.held_from = Some(from);
        None
    }

    /// Of lines that were led the best chains are searched for; whether one lies otherwise than it was led.
    fn chained_anew(&mut self, from: Plan) -> bool {
        let pairs = self.plan.runs.iter().zip(&from.runs).enumerate();
        let led = pairs.filter(|(_, (is, was))| is.outline != was.outline).map(|(run, _)| run);
        let lays: Vec<(usize, Lay)> =
            led.filter_map(|run| Some((run, self.workup.runs.get(run)?.lay.clone()?))).collect();
        self.worked_of = self.worked_of.is_some().then_some(from);
        self.changed();
        let is = |run: usize| self.workup.runs.get(run).and_then(|worked| worked.lay.as_ref());
        lays.iter().any(|(run, was)| is(*run).is_some_and(|is| !is.lies_as(was, ELSEWHERE_M)))
    }

    /// What slides along its line was moved by an edit, or stays.
    fn slid(&mut self, edit: Option<Edit>, snapped: Option<Snapped>) {
        if let Some(edit) = edit {
            self.make(edit);
            if let Some(held) = &mut self.held {
                held.moved = true;
            }
        }
        self.snapped = snapped;
    }
}
