//! What the hint says while no tool is at work: why a run is an outline alone, and what a click and a drag would do.

use drawing::{Behind, Thing};
use words::texts::Resting as Text;

use super::can_be_held;
use crate::editor::Editor;
use crate::editor::hiding::is_locked;
use crate::roster::{self, Item};

/// Why a run that is under the pointer, or that what is picked lies over, is drawn as an outline alone; or that two runs
/// are stated to stand on the same ground.
pub(super) fn behind(editor: &Editor) -> Option<String> {
    let (drawing, picked) = (editor.drawing(), editor.picked());
    let name = |run: usize| roster::name(editor, Item::Thing(Thing::Run { run }));
    let say = |text: Text, run: usize, other: usize| {
        editor.words().say(text, &[("run", &*name(run)), ("other", &*name(other))])
    };
    let hovered = editor.hovered().filter(|_| editor.held_from().is_none()).and_then(Thing::run);
    if let Some((run, behind)) = hovered.and_then(|run| Some((run, drawing.behind(run, picked)?))) {
        return Some(match behind {
            Behind::Over(other) => say(Text::OutlineOver, run, other),
            Behind::Beside(other) => say(Text::OutlineBeside, run, other),
        });
    }
    let run = picked.and_then(Thing::run)?;
    if let Some(other) = drawing.stands_on(run) {
        return Some(say(Text::BothStand, run, other));
    }
    let rivals = drawing.rivals.get(run)?;
    let other = rivals.iter().copied().find(|&other| drawing.behind(other, picked) == Some(Behind::Over(run)))?;
    Some(say(Text::LiesOver, run, other))
}

/// With a corner or a side picked, a drag of what it belongs to moves that whole.
pub(super) fn whole_of_picked(editor: &Editor) -> Option<String> {
    let (thing, picked) = (editor.hovered()?, editor.picked()?);
    let drags = editor.held_from().is_none() && thing != picked && thing == picked.whole();
    let drags = drags && can_be_held(thing, Some(picked)) && !is_locked(editor.plan(), thing);
    (drags && !matches!(thing, Thing::Boundary))
        .then(|| editor.words().say(Text::DragsWhole, &[("thing", &roster::full_name(editor, Item::Thing(thing)))]))
}

/// What a press on something that is not picked does: a click picks it, and only then a drag moves it.
pub(super) fn not_picked(editor: &Editor) -> Option<String> {
    let thing = editor.hovered().filter(|_| editor.held_from().is_none())?;
    let whole = thing.whole();
    let on_ground = matches!(whole, Thing::Boundary | Thing::Underlay);
    if on_ground || can_be_held(thing, editor.picked()) || !can_be_held(thing, Some(thing)) {
        return None;
    }
    if is_locked(editor.plan(), thing) || super::is_lesson(editor, thing) || editor.is_one_of_several(thing) {
        return None;
    }
    // A post is dragged with its run.
    let moves = if let Thing::Post { run, .. } = thing { Thing::Run { run } } else { whole };
    Some(editor.words().say(Text::NotPicked, &[("thing", &roster::full_name(editor, Item::Thing(moves)))]))
}
