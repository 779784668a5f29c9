//! What lies under a spot of the map: corners before sides before areas.

use care::Severity;
use plan::Point;

use crate::ink::Spot;
use crate::inking::blocks::Block;
use crate::inking::faults::{self, ZONE_OFF_PX};
use crate::inking::features::label_holds;
use crate::inking::gates::laid_back_px;
use crate::inking::numbers::Number;
use crate::inking::readings::{self, Board};
use crate::inking::trace::{self, Px};
use crate::inking::{self, signs, tags};
use crate::map::track::inside;
use crate::shape::{About, Drawing, Form, Role, Shape, Thing};
use crate::view::{Distance, View};

/// A post is picked from no farther than this, so that the side between posts can be picked too, pixels.
const POST_REACH_PX: f64 = 7.0;

/// A coop's door is picked where it is at least so far off its middle, pixels.
const DOOR_OFF_PX: f64 = 10.0;

/// A stretch of grass is picked from no farther than this, pixels.
const ZONE_REACH_PX: f64 = 5.0;

/// What belongs to a gate is picked from no farther than this, pixels.
const GATE_REACH_PX: f64 = 6.0;

/// What is picked first where several things are in reach.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Rank {
    Corner,
    Mark,
    Post,
    Side,
}

impl Drawing {
    /// The number of the roll whose sign lies under a spot of the sheet: nothing to pick, but something to be told of.
    pub fn roll_at(&self, view: &View, spot: Spot) -> Option<usize> {
        if view.distance() == Distance::Far {
            return None;
        }
        let at = spot.map(f64::from);
        self.shapes().find_map(|shape| {
            let (Role::Roll { number, outward_rad }, Form::Mark { at: place, .. }) = (shape.role, &shape.form) else {
                return None;
            };
            let inward = trace::heading(outward_rad).map(|way| -way);
            let middle = trace::toward(view.px(*place), inward, signs::ROLL_OFF);
            ((middle[0] - at[0]).hypot(middle[1] - at[1]) <= signs::ROLL_RADIUS + signs::ROLL_COIL + 2.0)
                .then_some(number)
        })
    }

    /// The thing under a spot, within so many pixels: corners, then marks, posts and sides, then areas.
    ///
    /// Corners and sides of paddock and keep-outs are in reach only while handles are shown, so that they do not
    /// hide what stands on them.
    pub fn thing_at(&self, view: &View, spot: Spot, reach_px: f32) -> Option<Thing> {
        let at = spot.map(f64::from);
        let reach = f64::from(reach_px);
        let marked = self.marked();
        let ghosts = self.ghosts(view.picked);
        let ghost = |shape: &Shape| shape.run.is_some_and(|run| ghosts.get(run) == Some(&true));
        let shown: Vec<&Shape> = marked.iter().copied().filter(|shape| !ghost(shape)).collect();
        let around = self.around(&shown, view);
        let on_number = around.numbers.iter().find(|number| number.block.holds(at));
        let numbered = on_number.map(|number| (Rank::Corner, 0.0, number.thing));
        let mut best: Option<(Rank, f64, Thing)> = numbered;
        for shape in self.shapes() {
            let Some(thing) = shape.thing else { continue };
            // A ghost shows its corners and sides alone.
            if ghost(shape) && !matches!(shape.role, Role::Handle | Role::Side) {
                continue;
            }
            let Some((rank, far)) = distance(shape, view, at, &around) else { continue };
            let within = if rank == Rank::Post { reach.min(POST_REACH_PX) } else { reach };
            let better = best.is_none_or(|(first, nearest, _)| rank < first || (rank == first && far < nearest));
            if far <= within && better {
                best = Some((rank, far, thing));
            }
        }
        let place = view.place(spot);
        best.map(|best| best.2)
            .or_else(|| area_at(&marked, place, |shape| !ghost(shape)))
            .or_else(|| area_at(&marked, place, ghost))
    }
}

impl Drawing {
    /// Left, top, right and foot of the plates of a run's corners in a view, pixels of the sheet.
    pub fn plate_boxes(&self, view: &View, run: usize) -> Vec<[f32; 4]> {
        let own: Vec<&Shape> = self.marked().into_iter().filter(|shape| shape.run == Some(run)).collect();
        let half = signs::plate_size(view.distance()) / 2.0;
        let around = |[x, y]: Px| [x - half, y - half, x + half, y + half].map(|side| side as f32);
        own.iter().filter_map(|shape| plate(shape, view)).map(|plate| around(plate.middle)).collect()
    }
}

/// The plate of a corner.
fn plate(shape: &Shape, view: &View) -> Option<signs::Plate> {
    let (Role::Corner { guy_m, .. }, Form::Mark { at, toward_rad }) = (shape.role, &shape.form) else { return None };
    let outward = trace::heading(*toward_rad);
    Some(signs::Plate { place: *at, middle: signs::plate_middle(view, view.px(*at), outward, guy_m), outward })
}

/// The topmost area, of those that count, that holds a place.
fn area_at(marked: &[&Shape], place: Point, counts: impl Fn(&Shape) -> bool) -> Option<Thing> {
    let holds = |shape: &Shape| match (&shape.form, shape.role) {
        (Form::Area { rings }, _) => rings.first().is_some_and(|ring| inside(ring, place)),
        (Form::Mark { at, toward_rad }, Role::Coop { length_m, width_m, .. }) => {
            let (east, north) = (place.east_m - at.east_m, place.north_m - at.north_m);
            let along = east * toward_rad.cos() + north * toward_rad.sin();
            let across = north * toward_rad.cos() - east * toward_rad.sin();
            along.abs() <= length_m / 2.0 && across.abs() <= width_m / 2.0
        }
        _ => false,
    };
    let found = marked.iter().rev().find(|shape| shape.thing.is_some() && counts(shape) && holds(shape));
    found.and_then(|shape| shape.thing)
}

/// Where those signs stand that give way to others.
struct Around<'a> {
    /// The points of tags.
    tags: Vec<(&'a Shape, Px)>,
    /// The boards of readings.
    boards: Vec<(&'a Shape, Board)>,
    /// The numbers of the corners that are in hand.
    numbers: Vec<Number>,
}

impl Drawing {
    /// Where tags and the boards of readings are drawn.
    fn around<'a>(&self, shown: &[&'a Shape], view: &View) -> Around<'a> {
        let (mut plates, mut numbers) = (Vec::new(), Vec::<Block>::new());
        for shape in inking::picked_first(shown, view).into_iter().filter(|_| !inking::specks(view)) {
            let (Role::Corner { number, .. }, Some(plate)) = (shape.role, plate(shape, view)) else { continue };
            if inking::sees(view, view.px(plate.place)) {
                numbers.extend(signs::number_block(view, plate.middle, number, &numbers));
                plates.push(plate);
            }
        }
        let in_hand = self.numbers_in_hand(view, &mut numbers);
        let mut signs = self.taken_by_signs(shown, view);
        let tags = tags::tags(shown, view, &plates, signs.iter().chain(&numbers).copied());
        let scale = tags::tag_scale(view.distance());
        signs.extend(tags.iter().rev().map(|&(_, point)| tags::tag_body(point, scale)));
        let boards = readings::boards(shown.iter().copied(), view, (&signs, &numbers));
        Around { tags, boards, numbers: in_hand }
    }
}

/// How far a shape is from a spot, pixels, and its rank; `None` where it is picked as an area, or not at all.
fn distance(shape: &Shape, view: &View, spot: Px, around: &Around<'_>) -> Option<(Rank, f64)> {
    match (&shape.form, shape.role) {
        (Form::Mark { at: place, toward_rad }, role) => {
            let at = view.px(*place);
            let far = trace::apart(at, spot);
            match role {
                Role::Handle => {
                    let of_run = matches!(shape.thing, Some(Thing::RunCorner { .. } | Thing::BranchCorner { .. }));
                    (of_run || view.handles).then_some((Rank::Corner, far))
                }
                Role::Corner { guy_m, .. } => {
                    let middle = signs::plate_middle(view, at, trace::heading(*toward_rad), guy_m);
                    // Anywhere on the plate is at hand.
                    let beyond = trace::apart(middle, spot) - signs::plate_size(view.distance()) / 2.0;
                    Some((Rank::Corner, beyond.max(0.0)))
                }
                Role::Tag { severity, .. } => {
                    let scale = tags::tag_scale(view.distance());
                    let &(_, point) = around.tags.iter().find(|(of, _)| std::ptr::eq(*of, shape))?;
                    let beyond = trace::apart([point[0], point[1] - 11.0 * scale], spot) - 10.0 * scale;
                    // A tag lies on top, the heaviest above the others: what its body covers is out of sight.
                    let depth = match severity {
                        Severity::Danger => -3.0,
                        Severity::Warning => -2.0,
                        Severity::Note => -1.0,
                    };
                    (beyond <= 0.0).then_some((Rank::Corner, depth))
                }
                Role::Energizer => Some((Rank::Mark, (far - 8.0).max(0.0))),
                Role::Fault { .. } => Some((Rank::Corner, (far - 6.0).max(0.0))),
                Role::ZoneEnd => {
                    let bar = faults::zone_end(at, trace::heading(*toward_rad), view.distance());
                    let beyond = trace::from_segment(bar[0], bar[1], spot);
                    (beyond <= ZONE_REACH_PX).then_some((Rank::Corner, beyond))
                }
                Role::Door { off_m } => {
                    // Of a coop drawn small the door is too near its middle to be told from it.
                    let reach = if view.picked == shape.thing { 9.0 } else { 6.0 };
                    (far <= reach && off_m * view.px_per_m >= DOOR_OFF_PX).then_some((Rank::Corner, far))
                }
                Role::Drop | Role::TapePoint { .. } => Some((Rank::Mark, (far - 6.0).max(0.0))),
                Role::Feed | Role::EarthStake | Role::Gateway | Role::Hazard { .. } | Role::Height => {
                    Some((Rank::Mark, far))
                }
                Role::PulledPost | Role::Pin { .. } => {
                    let reach = if matches!(role, Role::Pin { .. }) { 14.0 } else { 15.0 };
                    let head = trace::toward(at, trace::heading(*toward_rad), reach);
                    let shown = view.distance() != Distance::Far || matches!(role, Role::Pin { .. });
                    shown.then(|| (Rank::Mark, trace::apart(head, spot)))
                }
                Role::Post { number } => {
                    let shown = match view.distance() {
                        Distance::Near => true,
                        Distance::Middle => number.is_multiple_of(2),
                        Distance::Far => false,
                    };
                    shown.then_some((Rank::Post, far))
                }
                Role::Join | Role::EndPost if view.distance() != Distance::Far => Some((Rank::Post, far)),
                _ => None,
            }
        }
        (Form::Label { .. }, Role::Reading { .. }) => {
            // Its foot leaves the post beneath to be picked.
            let (_, board) = around.boards.iter().find(|(of, _)| std::ptr::eq(*of, shape))?;
            board.holds(spot).then_some((Rank::Mark, 0.0))
        }
        (Form::Label { at: place, texts, .. }, Role::Words { about: About::Label { large } }) => {
            label_holds(view, *place, texts, large, spot).then_some((Rank::Mark, 0.0))
        }
        (Form::Path { points, .. }, Role::Zone { .. }) => {
            let band = trace::aside(&points.iter().map(|&at| view.px(at)).collect::<Vec<_>>(), false, ZONE_OFF_PX);
            let far = from_line(&band, spot);
            // Beside the net, so that posts and sides stay at hand.
            (far <= ZONE_REACH_PX).then_some((Rank::Mark, far))
        }
        (Form::Path { points, .. }, Role::Swing { hinge }) if view.distance() != Distance::Far => {
            gate_body(points, hinge, view, spot, shape.thing.is_some() && shape.thing == view.picked)
        }
        (Form::Path { points, .. }, Role::LaidBack) if view.distance() != Distance::Far => {
            let lies = trace::aside(
                &points.iter().map(|&at| view.px(at)).collect::<Vec<_>>(),
                false,
                laid_back_px(view.distance()),
            );
            let far = from_line(&lies, spot);
            (far <= GATE_REACH_PX).then_some((Rank::Mark, far))
        }
        (Form::Path { points, .. }, Role::EarthLead) => {
            // All of the earth is taken by its wire, where no sign is nearer.
            let wire: Vec<Px> = points.iter().map(|&at| view.px(at)).collect();
            let far =
                wire.windows(2).map(|pair| trace::from_segment(pair[0], pair[1], spot)).fold(f64::INFINITY, f64::min);
            Some((Rank::Side, far))
        }
        (Form::Path { points, .. }, Role::Side) => {
            let of_run = matches!(
                shape.thing,
                Some(Thing::RunSide { .. } | Thing::BranchSide { .. } | Thing::Hazard { .. } | Thing::Wall { .. })
            );
            let &[from, to] = &points[..] else { return None };
            (of_run || view.handles).then(|| (Rank::Side, trace::from_segment(view.px(from), view.px(to), spot)))
        }
        _ => None,
    }
}

/// How far a spot is from a gate: the ground that its leaf sweeps, and once it is picked the shut leaf too, which is
/// the net's own till then.
fn gate_body(swing: &[Point], hinge_at: Point, view: &View, spot: Px, picked: bool) -> Option<(Rank, f64)> {
    let arc: Vec<Px> = swing.iter().map(|&at| view.px(at)).collect();
    let (hinge, end) = (view.px(hinge_at), *arc.first()?);
    let from_leaf = trace::from_segment(hinge, end, spot);
    if !picked && from_leaf <= POST_REACH_PX {
        return None;
    }
    let place = view.place(spot.map(|px| px as f32));
    let swept: Vec<Point> = std::iter::once(hinge_at).chain(swing.iter().copied()).collect();
    if inside(&swept, place) {
        return Some((Rank::Mark, 0.0));
    }
    let far = from_line(&arc, spot).min(if picked { from_leaf } else { f64::INFINITY });
    (far <= GATE_REACH_PX).then_some((Rank::Mark, far))
}

/// Distance of a spot from a line.
fn from_line(line: &[Px], spot: Px) -> f64 {
    line.windows(2).map(|pair| trace::from_segment(pair[0], pair[1], spot)).fold(f64::INFINITY, f64::min)
}
