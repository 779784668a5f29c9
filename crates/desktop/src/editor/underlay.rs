//! The picture beneath the map: which one, what became of it, and its place by two known points.

use exchange::underlay::PictureError;
use plan::{Deed, Edit, Point, Underlay};
use words::texts::Underlay as Text;

use super::Editor;
use crate::tool::{Drawn, Hand, Tool, apart_m};

/// Two known points nearer than this are one on the screen, pixels.
const ONE_PLACE_PX: f64 = 6.0;
/// How much of the view a picture fills that says nothing of where it lies.
const FILLS: f64 = 0.8;
/// A picture whose middle lies farther off than this is in another grid, metres: no pasture is so wide.
const ELSEWHERE_M: f64 = 20_000.0;

/// What is said about the picture beneath the map.
#[derive(Clone, Debug)]
pub enum UnderlayMessage {
    /// Lay this one underneath.
    Bring(Box<Underlay>),
    /// What became of the file.
    Read(Pictured),
    /// The two points that are known lie so many metres apart, and the second in that bearing from the first, degrees.
    Known(f64, Option<f64>),
    /// The file is right as it is now.
    TakeChanged,
}

/// What became of the picture's file.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Pictured {
    /// There is none.
    #[default]
    Nothing,
    /// It is being read.
    Waiting,
    /// It is shown; its fingerprint where that is not the one that the plan states.
    Shown {
        /// The file's own.
        changed: Option<String>,
        /// Width and height, pixels.
        size_px: [u32; 2],
    },
    /// It is not shown.
    Refused(PictureError),
}

impl Editor {
    /// What became of the picture's file.
    pub fn pictured(&self) -> &Pictured {
        &self.pictured
    }

    /// Whether a picture is seen beneath the map.
    pub(super) fn shows_picture(&self) -> bool {
        matches!(self.pictured, Pictured::Shown { .. })
            && self.plan.underlay.as_ref().is_some_and(|underlay| !underlay.hidden && underlay.opacity() > 0.0)
    }

    pub(super) fn underlay_said(&mut self, said: UnderlayMessage) {
        match said {
            UnderlayMessage::Bring(underlay) => {
                let mut underlay = *underlay;
                if let Some(world) = underlay.world_m {
                    // Metres of another grid: what they say of scale and turn holds all the same.
                    let [one, _, other, _] = underlay.corners();
                    let middle = Point::new(one.east_m.midpoint(other.east_m), one.north_m.midpoint(other.north_m));
                    if apart_m(middle, self.view.middle) > ELSEWHERE_M {
                        let to = self.view.middle;
                        let (east_m, north_m) = (to.east_m - middle.east_m, to.north_m - middle.north_m);
                        underlay.world_m = Some(world.moved(plan::Motion::Shift { east_m, north_m }));
                        self.notice_underlay = Some(Text::WorldElsewhere);
                    }
                }
                if underlay.world_m.is_none()
                    && let Some(size_px) = underlay.size_px
                {
                    underlay.world_m = Some(plan::World::about(self.view.middle, size_px, self.filling_m(size_px)));
                    underlay.by_eye = true;
                }
                let corners = underlay.corners();
                self.make(Edit::SetUnderlay { underlay: Some(underlay) });
                self.pick(Some(drawing::Thing::Underlay));
                self.go_to_places(&corners);
            }
            UnderlayMessage::Read(pictured) => {
                self.pictured = pictured;
                self.stamp += 1;
            }
            UnderlayMessage::Known(apart_m, bearing_deg) => self.place_by_known(apart_m, bearing_deg),
            UnderlayMessage::TakeChanged => {
                if let (Some(mut underlay), Pictured::Shown { changed: Some(now), size_px }) =
                    (self.plan.underlay.clone(), self.pictured.clone())
                {
                    (underlay.sha256, underlay.size_px) = (now, Some(size_px));
                    self.make(Edit::SetUnderlay { underlay: Some(underlay) });
                }
            }
        }
    }

    /// The width at which a picture lies within the view, metres.
    fn filling_m(&self, [wide, tall]: [u32; 2]) -> f64 {
        let [room_wide, room_tall] = self.view.size.map(|side| FILLS * f64::from(side) / self.view.px_per_m);
        room_wide.min(room_tall * f64::from(wide) / f64::from(tall.max(1)))
    }

    /// The known points that were clicked.
    pub fn known_points(&self) -> &[Point] {
        match &self.tool {
            Tool::Outline { of: Drawn::Known, corners, .. } => corners,
            _ => &[],
        }
    }

    /// Whether a click would set the second known point where the first is.
    pub(super) fn is_one_place(&mut self, hand: Hand) -> bool {
        let (&[first], Hand::Click { at, .. }) = (self.known_points(), hand) else { return false };
        let one = apart_m(first, at) * self.view.px_per_m <= ONE_PLACE_PX;
        if one {
            self.notice_underlay = Some(Text::OnePlace);
        }
        one
    }

    fn place_by_known(&mut self, apart_m: f64, bearing_deg: Option<f64>) {
        let (Some(underlay), &[from, to]) = (self.plan.underlay.clone(), self.known_points()) else { return };
        if underlay.locked {
            self.notice_underlay = Some(Text::LockedNow);
            return;
        }
        match underlay.world_m().known([from, to], apart_m, bearing_deg) {
            Ok(world) => {
                let underlay = Underlay { world_m: Some(world), by_eye: false, ..underlay };
                self.one_step(Deed::Move, vec![Edit::SetUnderlay { underlay: Some(underlay) }]);
                self.tool = Tool::Pick;
                self.pick(Some(drawing::Thing::Underlay));
            }
            Err(error) => {
                self.notice_underlay = Some(match error {
                    plan::KnownError::OnePlace => Text::OnePlace,
                    plan::KnownError::NoDistance => Text::NoDistance,
                });
            }
        }
    }

    /// What could not be done with the picture.
    pub fn notice_underlay(&self) -> Option<Text> {
        self.notice_underlay
    }
}
