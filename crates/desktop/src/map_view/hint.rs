//! One line in a corner of the map: what the tool waits for, what the keys do, or what could not be done.
//!
//! It stands at the foot, beside the scale, and steps to the top where less of what is drawn is under it.

use std::sync::Arc;

use drawing::Thing;
use egui::{Galley, Id, Painter, Rect, Role, Sense, Shape, Stroke, Ui, WidgetInfo, pos2, vec2};
use words::texts::{Faults, Guides, Power, Shaping, Taping, Underlay, Window as Text};

use super::at_pointer::AtPointer;
use super::{FOOT_PX, RIGHT_PX, resting};
use crate::editor::{Editor, Pictured, hiding};
use crate::theme::{self, colour};
use crate::tool::{Drawn, Tool};
use crate::{icons, leading, many};

/// A hint narrower than this stands over the scale, pixels.
const LEAST_HINT_PX: f32 = 240.0;
/// From the map's left edge, and from its upper one.
const EDGE_PX: f32 = 20.0;
/// Round a post or a corner stand its number and its plate, pixels.
const AROUND_PX: f32 = 20.0;

/// A corner of what is picked is worth so many posts.
const HANDLE_POSTS: usize = 50;

/// One line at the foot of the map: what the tool waits for, or what could not be done.
pub(crate) fn hint_text(editor: &Editor) -> Option<String> {
    if let Some(hint) = many::hint(editor) {
        return Some(hint);
    }
    let words = editor.words();
    if let Some(notice) = editor.notice_underlay() {
        return Some(words.text(notice).to_owned());
    }
    if let Some(led) = editor.led().filter(|_| editor.notice().is_none()) {
        return Some(led.to_owned());
    }
    let rests = editor.notice().is_none() && *editor.tool() == Tool::Pick && editor.shape_told().is_none();
    let sign = || stake_hovered(editor).or_else(|| energizer_hovered(editor));
    if let Some(behind) = rests.then(|| sign().or_else(|| resting::behind(editor))).flatten() {
        return Some(behind);
    }
    let text = match (editor.notice(), editor.tool()) {
        (Some(notice), _) => words.text(notice),
        (None, Tool::Tape(tape)) if tape.done => words.text(Guides::HintTaped),
        (None, Tool::Tape(_)) => words.text(Guides::HintTape),
        (None, Tool::Pick) if let Some(told) = editor.shape_told().or_else(|| editor.shape_hint()) => words.text(told),
        (None, Tool::Try(_)) => words.text(Faults::HintFault),
        (None, Tool::Outline { of: Drawn::Coop, .. }) if editor.plan().coop.is_some() => {
            words.text(Shaping::HintMoveCoop)
        }
        (None, Tool::Outline { of: Drawn::Coop | Drawn::FurtherCoop, .. }) => words.text(Shaping::HintPlaceCoop),
        (None, Tool::Outline { of: Drawn::TapePoint, .. }) => words.text(Taping::Hint),
        (None, Tool::Outline { of: Drawn::Branch, .. }) => words.text(Power::HintBranch),
        (None, Tool::Outline { of: Drawn::Height, .. }) => words.text(words::texts::Slope::HintHeight),
        (None, Tool::Outline { of: Drawn::EarthStake(_), .. }) => words.text(words::texts::Earth::HintStake),
        (None, Tool::Outline { of: Drawn::Drop(_), .. }) => words.text(Underlay::HintDrop),
        (None, Tool::Outline { of: Drawn::Feed(_), .. }) => words.text(Underlay::HintFeed),
        (None, Tool::Outline { of: Drawn::Energizer(_), .. }) => words.text(words::texts::Damp::HintEnergizer),
        (None, Tool::Outline { of: Drawn::Label, .. }) => words.text(Underlay::HintLabel),
        (None, Tool::Outline { of: Drawn::Known, corners, .. }) => words.text(match corners.len() {
            0 => Underlay::HintKnownFirst,
            1 => Underlay::HintKnownSecond,
            _ => Underlay::HintKnownType,
        }),
        (None, Tool::Outline { of, .. }) if of.is_place() => words.text(Shaping::HintPoint),
        (None, Tool::Outline { of, .. }) if !of.closes() => words.text(Shaping::HintPath),
        (None, Tool::Outline { corners, .. }) if corners.len() < crate::tool::FEWEST_CORNERS => {
            words.text(Text::HintFirstCorners)
        }
        (None, Tool::Outline { .. }) => words.text(Text::HintMoreCorners),
        (None, Tool::Pick) if editor.is_catchable() => words.text(Shaping::HintFree),
        (None, Tool::Pick) if on_picked_whole(editor) && picked_is_locked(editor) => words.text(Text::IsLocked),
        (None, Tool::Pick) if on_picked(editor) && editor.side_to_type().is_some() => words.text(Shaping::SideHint),
        (None, Tool::Pick) if on_picked(editor) && editor.place_to_type().is_some() => words.text(Shaping::PlaceHint),
        (None, Tool::Pick) if on_picked_whole(editor) => words.text(Shaping::WholeHint),
        (None, Tool::Pick) => {
            return sign()
                .or_else(|| resting::whole_of_picked(editor))
                .or_else(|| resting::not_picked(editor))
                .or_else(|| picture_not_shown(editor));
        }
    };
    Some(text.to_owned())
}

/// How far the energizer under the pointer stands from what its leads go to.
fn energizer_hovered(editor: &Editor) -> Option<String> {
    let Some(Thing::Energizer { run }) = editor.hovered().filter(|_| editor.held_from().is_none()) else { return None };
    Some(care::stands_said(editor.plan(), editor.plan().runs.get(run)?, editor.words()))
}

/// How far off what the earth stake under the pointer stands.
fn stake_hovered(editor: &Editor) -> Option<String> {
    let Some(Thing::EarthStake { run, stake }) = editor.hovered().filter(|_| editor.held_from().is_none()) else {
        return None;
    };
    let words = editor.words();
    let all = workup::earth::stakes(editor.plan(), editor.workup(), run);
    let off = all.get(stake).map_or_else(
        || words.text(words::texts::Earth::NotPlaced).to_owned(),
        |one| care::earths::said(editor.plan(), editor.workup(), run, one, words),
    );
    Some(words.say(words::texts::Earth::StakeSaid, &[("number", &(stake + 1).to_string()), ("said", &off)]))
}

/// The line as it is painted.
pub(super) struct Hint {
    /// Its plate.
    pub(super) plate: Rect,
    galley: Arc<Galley>,
}

impl Hint {
    /// It, where there is one.
    pub(super) fn of(painter: &Painter, editor: &Editor, rect: Rect, at_pointer: &AtPointer) -> Option<Self> {
        // What could be done to a side gives way to its figures while those are typed.
        if at_pointer.side.is_some() && editor.notice().is_none() {
            return None;
        }
        let (plate, galley) = laid(painter, editor, rect, at_pointer)?;
        Some(Self { plate, galley })
    }

    /// Paints it; a screen reader reads it too.
    pub(super) fn paint(self, ui: &Ui, painter: &Painter, editor: &Editor) {
        // What keys do while something is led is told where the hand is.
        if leading::hint(ui.ctx(), editor).is_none() {
            let response = ui.interact(self.plate, Id::unique("hint of the map"), Sense::hover());
            response.widget_info(|| WidgetInfo::labeled(Role::Label, true, self.galley.text()));
        }
        let p = editor.theme().palette();
        let edge = Stroke::new(1.5, colour(p.pick));
        painter.add(Shape::convex_polygon(icons::cut_plate(self.plate, 7.0), colour(p.sheet), edge));
        painter.galley(self.plate.min + vec2(12.0, 6.0), self.galley, colour(p.ink));
    }
}

/// Its words laid out, and where their plate stands.
fn laid(painter: &Painter, editor: &Editor, rect: Rect, at_pointer: &AtPointer) -> Option<(Rect, Arc<Galley>)> {
    let text = hint_text(editor)?;
    // What the keys do, unless something could not be done.
    let keys = leading::hint(painter.ctx(), editor).filter(|_| editor.notice().is_none());
    let text = keys.map_or(text, str::to_owned);
    let p = editor.theme().palette();
    // Beside the scale where there is room for it, else over it: the scale is always in sight.
    let beside = rect.width() - 2.0 * RIGHT_PX - drawing::furniture::SCALE_PX - 36.0;
    let over = beside < LEAST_HINT_PX;
    let room = if over { rect.width() - 2.0 * RIGHT_PX - 24.0 } else { beside }.min(rect.width() * 0.6);
    let galley = painter.layout(text, theme::medium(13.0), colour(p.ink), room);
    let foot = if over { FOOT_PX + drawing::furniture::PLATE_PX as f32 + 8.0 } else { FOOT_PX };
    let size = galley.size() + vec2(24.0, 12.0);
    let left = rect.left() + EDGE_PX;
    let plate = place(
        editor,
        (rect, at_pointer),
        Rect::from_min_size(pos2(left, rect.bottom() - foot - size.y), size),
        Rect::from_min_size(pos2(left, rect.top() + EDGE_PX), size),
    );
    Some((plate, galley))
}

/// At the foot, unless less of what is drawn lies under the top; clear of what stands at the pointer in any case.
fn place(editor: &Editor, (rect, at_pointer): (Rect, &AtPointer), foot: Rect, top: Rect) -> Rect {
    let covered = |plate: Rect| at_pointer.all().any(|entry| entry.intersects(plate));
    match (covered(foot), covered(top)) {
        (true, false) => return top,
        (false, true) => return foot,
        _ => {}
    }
    let in_hand = editor.in_hand().and_then(|in_hand| in_hand.shown().run()).map(|(_, worked)| worked);
    let worked = editor.workup().runs.iter().chain(in_hand);
    let posts = worked.filter_map(|worked| worked.lay.as_ref()).flat_map(|lay| lay.posts.iter().map(|post| post.at));
    let drawn = editor.tool().corners_here();
    let on_map = |at| super::on_map(rect, editor, at);
    let (around_foot, around_top) = (foot.expand(AROUND_PX), top.expand(AROUND_PX));
    let (mut at_foot, mut at_top) = (0, 0);
    // What the hand can take hold of goes before what is merely seen.
    let (seen, held) =
        (posts.chain(drawn).map(|at| (at, 1)), editor.handles().into_iter().map(|at| (at, HANDLE_POSTS)));
    for (at, posts) in seen.chain(held) {
        let spot = on_map(at);
        at_foot += posts * usize::from(around_foot.contains(spot));
        at_top += posts * usize::from(around_top.contains(spot));
    }
    if at_top < at_foot { top } else { foot }
}

/// That the plan's picture is missing or bad: the page that says why need not be open.
fn picture_not_shown(editor: &Editor) -> Option<String> {
    let is_wanted = editor.plan().underlay.as_ref().is_some_and(|underlay| !underlay.hidden);
    let is_refused = matches!(editor.pictured(), Pictured::Refused(_));
    (is_wanted && is_refused).then(|| editor.words().text(Text::PictureNotShown).to_owned())
}

fn picked_is_locked(editor: &Editor) -> bool {
    editor.picked().is_some_and(|thing| hiding::is_locked(editor.plan(), thing))
}

/// Whether the pointer is on what is picked.
fn on_picked(editor: &Editor) -> bool {
    editor.held_from().is_none() && editor.hovered().is_some_and(|thing| Some(thing) == editor.picked())
}

/// Whether the pointer is on something picked that can be moved whole.
fn on_picked_whole(editor: &Editor) -> bool {
    editor.held_from().is_none()
        && editor.turn_ring().is_some()
        && editor.hovered().is_some_and(|thing| Some(thing) == editor.picked())
}
