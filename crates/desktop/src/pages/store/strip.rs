//! How far the strip reaches to either side of the line.

use egui::{Id, Ui};
use plan::{Edit, Run};
use words::texts::Store as Text;
use words::{Measure, Range};
use workup::RunWorkup;

use super::{Desk, Figure, Owner};
use crate::editor::Message;

const SIDE: Range = Range::zero_to(50.0);

/// Two fields: inside and outside of a ring, left and right of a line that is open.
pub(in crate::pages) fn show(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, worked: &RunWorkup) {
    let name = care::run_name(run);
    let owner = Owner { id: Id::unique(("strip field", &run.id)), name };
    let [left_m, right_m] = run.strip_sides_m();
    let mut stated = run.clone();
    // Either side is assumed until it is said, or the width of both together is.
    let width = run.strip_width_m.map(|width_m| width_m / 2.0);
    let (mut left, mut right) = (run.strip_left_m.or(width), run.strip_right_m.or(width));
    let was = (left, right);
    let closed = worked.lay.as_ref().filter(|lay| lay.closed);
    let labels = match closed {
        Some(lay) if lay.left_is_inside() => [Text::StripInside, Text::StripOutside],
        Some(_) => [Text::StripOutside, Text::StripInside],
        None => [Text::StripLeft, Text::StripRight],
    };
    let [of_left, of_right] = labels.map(|label| Figure::new(label, Measure::Length, SIDE));
    owner.stated(ui, desk, &of_left, &mut left, left_m);
    owner.stated(ui, desk, &of_right, &mut right, right_m);
    if (left, right) != was {
        // Said side by side, the width of both together says nothing more.
        (stated.strip_width_m, stated.strip_left_m, stated.strip_right_m) = (None, left, right);
        desk.said.say(Message::Make(Edit::SetRun { run: Box::new(stated) }));
    }
}
