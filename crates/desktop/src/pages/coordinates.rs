//! Two fields for where something stands, east and north of the plan's origin.

use egui::{Id, Ui};
use plan::Point;
use words::texts::Many as Text;
use words::{Measure, Range};

use super::Desk;
use crate::field::{self, Label, Shown};

/// So far from the origin anything may be typed to stand, metres.
pub(crate) const PLACE_M: Range = Range::between(-100_000.0, 100_000.0);

/// Where something stands.
#[derive(Clone, Copy)]
pub(super) enum Stands {
    /// Where it is stated to stand; it stands somewhere in any case.
    Always(Point),
    /// Where it is stated to stand; an emptied field takes that back.
    Stated(Point),
    /// Where it counts as standing until that is stated.
    Assumed(Point),
}

impl Stands {
    /// Stated, or where it counts as standing; `None` where neither is known.
    pub(super) fn at(stated: Option<Point>, assumed: Option<Point>) -> Option<Self> {
        stated.map(Self::Stated).or(assumed.map(Self::Assumed))
    }
}

/// What was typed of it.
#[derive(Clone, Copy)]
pub(super) enum Typed {
    /// Where it is to stand.
    To(Point),
    /// What was stated is taken back.
    TakenBack,
}

impl Typed {
    /// Where it is to stand; `None` where that is not stated any more.
    pub(super) fn place(self) -> Option<Point> {
        match self {
            Self::To(at) => Some(at),
            Self::TakenBack => None,
        }
    }
}

/// The fields; what was typed, once for each commit. One figure that is typed while nothing was stated states both.
pub(super) fn fields(ui: &mut Ui, desk: &Desk<'_>, id: Id, name: &str, stands: Stands) -> Option<Typed> {
    let words = desk.words;
    let (Stands::Always(at) | Stands::Stated(at) | Stands::Assumed(at)) = stands;
    let mut typed = None;
    for (text, of, value_m) in [(Text::East, Text::EastOf, at.east_m), (Text::North, Text::NorthOf, at.north_m)] {
        let said = words.say(of, &[("thing", name)]);
        let label = Label { shown: words.text(text), said: &said };
        let shown = Shown::of(words, Measure::Length, value_m, matches!(stands, Stands::Assumed(_)));
        let read = |text: &str| match stands {
            Stands::Always(_) => field::figure(words, Measure::Length, PLACE_M)(text).map(Some),
            _ => field::or_nothing(field::figure(words, Measure::Length, PLACE_M))(text),
        };
        if let Some(metres) = field::line(ui, desk.p, id.with(words.text(text)), label, &shown, read) {
            let to = |metres: f64| match text {
                Text::East => Point::new(metres, at.north_m),
                _ => Point::new(at.east_m, metres),
            };
            typed = Some(metres.map_or(Typed::TakenBack, |metres| Typed::To(to(metres))));
        }
    }
    typed
}
