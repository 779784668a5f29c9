//! From shapes in metres to ink in pixels, for a view: every symbol at three distances.
//!
//! A tour: [`trace`] and [`blocks`] are the geometry of the sheet; `pen` puts down plates, lines and texts; then
//! come the symbols of the ground, of the net and of what stands on it; `states` marks what is picked; `words`
//! finds room for the labels. Sizes are pixels throughout. Everything is worked out in `f64` about the view's
//! middle; an `f32` is born when ink is put down.

pub(crate) mod blocks;
mod damp;
mod earths;
pub(crate) mod faults;
pub(crate) mod features;
mod filled;
pub(crate) mod gates;
mod ghost;
pub(crate) mod ground;
mod hazards;
pub(crate) mod net;
pub(crate) mod numbers;
pub(crate) mod pen;
pub(crate) mod readings;
mod shade;
pub(crate) mod signs;
mod slope;
mod states;
pub(crate) mod tags;
mod taped;
pub(crate) mod trace;
pub(crate) mod words;

use plan::Point;
use workup::unroll::Unrolled;

use crate::bedding::bedded;
use crate::ghost::{Ghost, GhostMark};
use crate::ink::{Ink, in_theme};
use crate::palette::{Palette, Theme};
use crate::shape::{Drawing, Form, Role, Shape, Thing};
use crate::taken::Taken;
use crate::told::Told;
use crate::view::{Distance, View};
use blocks::Block;
use filled::Filled;
use pen::Pen;
use trace::{Knot, Px, Window};

/// Ink beyond the view's edge by more than this is left out, pixels: no symbol is larger.
const MARGIN_PX: f64 = 80.0;
/// Below this a run is a speck: net, plate and dangers are all that is drawn of it, pixels a metre.
const SPECK_PX_PER_M: f64 = 0.8;

impl Drawing {
    /// The drawing in ink, in the order in which it is painted; all of it lies within the view or just beyond.
    pub fn ink(&self, view: &View) -> Vec<Ink> {
        self.ink_with(view, None)
    }

    /// The same with a run that is only thought of: it lies on the ground, beneath every net, a stretch of
    /// a line over them.
    pub fn ink_with(&self, view: &View, ghost: Option<&Ghost>) -> Vec<Ink> {
        self.ink_and_taken(view, ghost).0
    }

    /// The same, and what of the sheet its words and signs take: what is written over it later keeps clear of that.
    pub fn ink_and_taken(&self, view: &View, ghost: Option<&Ghost>) -> (Vec<Ink>, Taken) {
        let UnderHand { map, taken, .. } = self.ink_under(view, ghost, None);
        (map, taken)
    }

    /// The same with a run in the hand over it, which is inked apart: the words of both keep off the signs of both and
    /// off what closes that run, and of two that want one place those in the hand have it.
    pub fn ink_under(&self, view: &View, ghost: Option<&Ghost>, hand: Option<(&Self, &Unrolled)>) -> UnderHand {
        let mut map = Inker::new(self, view);
        map.bare_ground();
        map.signs(ghost);
        let mut hand = hand.map(|(hand, unrolled)| {
            let mut over = Inker::new(hand, view);
            over.signs(None);
            over.lines.extend(crate::unroll::closing_lines(view, unrolled));
            over
        });
        if let Some(hand) = &mut hand {
            hand.keep_off(&map);
            hand.words();
            map.keep_off(hand);
        }
        map.words();
        map.damp_hatch();
        if view.theme != Theme::Contrast {
            map.tufts();
        }
        let mut taken = map.takes();
        if let Some(hand) = &hand {
            taken.extend(hand.takes());
        }
        let put_down = |ink: Vec<Ink>| {
            let ink = in_theme(ink, view.theme);
            if view.underlay { bedded(ink, view.theme) } else { ink }
        };
        let hand = hand.map(|hand| put_down(hand.pen.ink)).unwrap_or_default();
        UnderHand { map: put_down(map.pen.ink), hand, taken }
    }
}

/// A drawing in ink with what is in the hand over it.
#[derive(Clone, Debug, Default)]
pub struct UnderHand {
    /// Ink of the drawing.
    pub map: Vec<Ink>,
    /// Ink of what is in the hand, over it.
    pub hand: Vec<Ink>,
    /// What of the sheet the words and signs of both take.
    pub taken: Taken,
}

/// A drawing being inked.
pub(crate) struct Inker<'a> {
    drawing: &'a Drawing,
    /// What of the drawing is no post, handle or side.
    marked: Vec<&'a Shape>,
    /// The paths of hazards.
    hazards: Vec<(Option<Thing>, &'a [Point])>,
    view: &'a View,
    palette: &'static Palette,
    distance: Distance,
    window: Window,
    pen: Pen,
    /// For each run, whether it is a ghost.
    ghosts: Vec<bool>,
    /// Where words may not go.
    taken: Filled,
    /// What of that its own signs take.
    stood: Vec<Block>,
    /// What its own words take.
    said: Vec<Block>,
    /// Figures among them.
    told: Vec<(Block, Told)>,
    /// Where numbers of corners stand.
    numbers: Vec<Block>,
    /// Lines that words cross only on a plate.
    lines: Vec<[Px; 2]>,
    /// Nets and the sides of runs without any, which nothing crosses.
    nets: Vec<[Px; 2]>,
    /// Circles round marks that are picked or under the pointer: no sign gives way to them, words do.
    circles: Vec<Block>,
    /// Posts, which stand off the words of their own run.
    teeth: Vec<[Px; 2]>,
    /// Boxes round what is picked: words keep off them, leaders do not.
    rings: Vec<[Px; 2]>,
    /// Words on plates of their own.
    flags: Vec<Block>,
    plates: Vec<signs::Plate>,
    /// Signs that tags and the boards of readings keep off.
    signs: Vec<Block>,
    /// Where in the ink the tufts of the grass go, once it is known where words stand.
    grass: Option<usize>,
    /// Likewise the strokes of each damp ground.
    wet: Vec<(usize, Vec<[Px; 2]>)>,
}

impl<'a> Inker<'a> {
    fn new(drawing: &'a Drawing, view: &'a View) -> Self {
        let [width, height] = view.size.map(f64::from);
        let marked = drawing.marked();
        let mut taken = Filled::new([width, height]);
        taken.extend(view.kept.iter().chain(&view.held).flatten().map(|&kept| Block::of(kept.map(f64::from))));
        Self {
            drawing,
            view,
            palette: view.theme.palette(),
            distance: view.distance(),
            window: window(view),
            pen: Pen::default(),
            ghosts: drawing.ghosts(view.picked),
            taken,
            stood: Vec::new(),
            said: Vec::new(),
            told: Vec::new(),
            numbers: Vec::new(),
            lines: Vec::new(),
            nets: Vec::new(),
            circles: Vec::new(),
            teeth: Vec::new(),
            rings: Vec::new(),
            flags: Vec::new(),
            plates: Vec::new(),
            signs: drawing.taken_by_signs(&marked, view),
            grass: None,
            wet: Vec::new(),
            hazards: marked.iter().filter_map(|shape| hazard_path(shape)).collect(),
            marked,
        }
    }

    /// Everything but the words.
    fn signs(&mut self, ghost: Option<&Ghost>) {
        let built =
            |shape: &Shape| matches!(shape.role, Role::Net | Role::Outline | Role::Gap | Role::Guy { .. } | Role::Way);
        let drawing = self.drawing;
        let mut shapes = drawing.shapes().peekable();
        while let Some(shape) = shapes.next_if(|shape| !built(shape)) {
            self.symbol(shape);
        }
        let over = |ghost: &&Ghost| matches!(ghost.mark, GhostMark::Places | GhostMark::Open(_));
        if let Some(ghost) = ghost.filter(|ghost| !over(ghost)) {
            self.thought(ghost);
        }
        shapes.for_each(|shape| self.symbol(shape));
        self.ghosts();
        self.states();
        for shape in picked_first(&self.marked, self.view) {
            self.plate(shape);
        }
        self.number_corners();
        self.tags();
        if let Some(ghost) = ghost.filter(over) {
            self.thought(ghost);
        }
        self.readings();
        let circles = std::mem::take(&mut self.circles);
        self.taken.extend(circles);
        self.stood = self.taken.blocks().to_vec();
    }

    /// Keeps words off what another drawing on the same sheet has put down.
    fn keep_off(&mut self, other: &Self) {
        self.taken.extend(other.taken.blocks().iter().copied());
        self.lines.extend(&other.lines);
        self.lines.extend(&other.teeth);
        self.nets.extend(&other.nets);
        self.rings.extend(&other.rings);
    }

    /// What of the sheet it takes.
    fn takes(&self) -> Taken {
        let taken = Taken::new(self.stood.clone(), self.said.clone(), self.nets.clone(), self.flags.clone());
        taken.telling(self.told.clone())
    }

    fn px(&self, place: Point) -> Px {
        self.view.px(place)
    }

    fn pxs(&self, places: &[Point]) -> Vec<Px> {
        places.iter().map(|&place| self.px(place)).collect()
    }

    /// Pixels of a length on the ground.
    fn px_of(&self, metres: f64) -> f64 {
        metres * self.view.px_per_m
    }

    /// Whether a sign at that spot can be seen.
    fn sees(&self, at: Px) -> bool {
        self.window.holds(at)
    }

    /// Size of a sign: whole when near, less when not.
    fn sign_scale(&self) -> f64 {
        if self.distance == Distance::Near { 1.0 } else { 0.8 }
    }

    /// Whether runs are specks.
    fn specks(&self) -> bool {
        specks(self.view)
    }

    /// Whether colour carries no meaning, as on paper.
    fn prints(&self) -> bool {
        self.view.theme == Theme::Print
    }

    /// The seen pieces of a path.
    fn seen(&self, points: &[Px], closed: bool) -> Vec<trace::Piece> {
        let knots: Vec<Knot> = points.iter().map(|&at| Knot { at, kv: 0.0 }).collect();
        trace::clip(&knots, closed, &self.window)
    }

    /// Takes a line so that words cross it only on a plate.
    fn take_line(&mut self, points: &[Px], closed: bool) {
        self.lines.extend(segments(points, closed));
    }

    /// Takes the box round what is picked.
    fn take_ring(&mut self, points: &[Px]) {
        self.rings.extend(segments(points, true));
    }

    /// Takes a net so that nothing crosses it.
    fn take_net(&mut self, points: &[Px], closed: bool) {
        self.nets.extend(segments(points, closed));
        self.take_line(points, closed);
    }

    /// Whether a shape is part of a run that is a ghost.
    fn is_ghost(&self, shape: &Shape) -> bool {
        shape.run.is_some_and(|run| self.ghosts.get(run) == Some(&true))
    }

    fn symbol(&mut self, shape: &Shape) {
        if self.is_ghost(shape) || (shape.role == Role::EarthBest && !self.drawing.shows_best(self.view, shape)) {
            return;
        }
        match (&shape.form, shape.role) {
            (Form::Area { rings }, role) => self.area(role, rings),
            (Form::Path { points, closed, kv }, Role::Net) => self.net(points, *closed, kv),
            (Form::Path { points, closed, .. }, role) => self.path(role, points, *closed),
            (Form::Mark { at, toward_rad }, role) => {
                let at = self.px(*at);
                let drawn = !self.specks() || matches!(role, Role::Hazard { .. });
                if drawn && self.sees(at) {
                    self.mark(role, at, trace::heading(*toward_rad));
                }
            }
            (Form::Label { .. }, _) => {}
        }
    }

    fn path(&mut self, role: Role, points: &[Point], closed: bool) {
        match role {
            Role::StripPass | Role::PaddockEdge | Role::Clearance { .. } => self.ground_line(role, points, closed),
            Role::Hazard { kind } => self.hazard_path(kind, points),
            Role::Wall { kind, holds } => self.wall(kind, holds, points),
            Role::Way | Role::Swing { .. } | Role::LaidBack if !self.specks() => self.gate_line(role, points),
            Role::Zone { more } if !self.specks() => self.zone(points, more),
            Role::Outline | Role::Gap | Role::Spare => self.bare_line(role, points, closed),
            Role::Lead | Role::EarthLead | Role::Guy { .. } if !self.specks() => self.wire(role, points),
            _ => {}
        }
    }

    fn mark(&mut self, role: Role, at: Px, toward: Px) {
        match role {
            Role::Coop { length_m, width_m, door } => self.coop(at, toward, [length_m, width_m], door),
            Role::Drop => self.drop_point(at),
            Role::Door { .. } => self.door(at),
            Role::Hazard { kind } => self.hazard_place(kind, at),
            Role::Post { number } => self.post(at, toward, number),
            Role::SparePost => self.spare_post(at, toward),
            Role::Join => self.join(at, toward),
            Role::EndPost => self.end_post(at, toward),
            Role::Feed => self.feed(at),
            Role::Energizer => self.energizer(at),
            Role::EarthStake => self.earth_stake(at),
            Role::EarthBest => self.earth_best(at),
            Role::PulledPost => self.pulled_post(at, toward),
            Role::Pin { kept } => self.pin(at, toward, kept),
            Role::Gateway => self.gateway(at),
            Role::Height => self.height(at),
            Role::TapePoint { letter } => self.tape_point(at, letter),
            Role::Dip => self.dip(at, toward),
            Role::Ridge => self.ridge(at, toward),
            Role::FurtherPost => self.further_post(at),
            Role::GoesOver if self.view.wind => self.goes_over(at, toward),
            _ => {}
        }
    }

    /// Plates, which lie above the lines and what is marked on them.
    fn plate(&mut self, shape: &Shape) {
        let Form::Mark { at, toward_rad } = shape.form else { return };
        if self.is_ghost(shape) {
            return;
        }
        let spot = self.px(at);
        if !self.sees(spot) {
            return;
        }
        match shape.role {
            Role::Corner { number, guy_m } if !self.specks() => {
                self.corner(shape.thing, at, spot, trace::heading(toward_rad), number, guy_m);
            }
            Role::Brace { needed, weak, guy_m } if !self.specks() => {
                self.brace(spot, trace::heading(toward_rad), [needed, weak], guy_m);
            }
            Role::Fault { kind } if !self.specks() => self.fault(shape.thing, spot, kind),
            Role::ZoneEnd if !self.specks() => self.zone_end(shape.thing, spot, trace::heading(toward_rad)),
            Role::DrawIn if self.distance != Distance::Far => self.draw_in(spot, trace::heading(toward_rad)),
            Role::Roll { number, outward_rad } if self.distance != Distance::Far => {
                self.roll(spot, trace::heading(toward_rad), trace::heading(outward_rad), number);
            }
            _ => {}
        }
    }
}

/// Shapes in the order in which they find room: what is picked first.
pub(crate) fn picked_first<'a>(marked: &[&'a Shape], view: &View) -> Vec<&'a Shape> {
    let picked = |shape: &&Shape| shape.thing.is_some() && shape.thing == view.picked;
    let (mut first, then): (Vec<&Shape>, Vec<&Shape>) = marked.iter().copied().partition(picked);
    first.extend(then);
    first
}

/// What of the sheet is inked.
fn window(view: &View) -> Window {
    let [width, height] = view.size.map(f64::from);
    Window { low: [-MARGIN_PX; 2], high: [width + MARGIN_PX, height + MARGIN_PX] }
}

/// Whether a sign at that spot can be seen.
pub(crate) fn sees(view: &View, at: Px) -> bool {
    window(view).holds(at)
}

/// Whether runs are specks.
pub(crate) fn specks(view: &View) -> bool {
    view.px_per_m < SPECK_PX_PER_M
}

/// The path of a hazard that has one.
fn hazard_path(shape: &Shape) -> Option<(Option<Thing>, &[Point])> {
    match (&shape.form, shape.role) {
        (Form::Path { points, .. }, Role::Hazard { .. }) => Some((shape.thing, points)),
        _ => None,
    }
}

/// The segments of a line.
fn segments(points: &[Px], closed: bool) -> impl Iterator<Item = [Px; 2]> + '_ {
    let last = points.len().saturating_sub(usize::from(!closed));
    (0..last).map(|index| [points[index], points[(index + 1) % points.len()]])
}
