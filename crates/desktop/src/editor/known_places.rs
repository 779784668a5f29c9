//! Known places that corners are taped from: each keeps its letter, whatever becomes of the others.
//!
//! A file need not state letters: then they go by the order of the list. So before one is put down, taken out or called
//! otherwise, those that go by it are stated.

use plan::{Plan, TapeLetter, TapePoint};

/// The places of a plan, those that are taped from with their letters stated.
pub(crate) fn lettered(plan: &Plan) -> Vec<TapePoint> {
    let mut points = plan.tape_points.clone();
    for known in workup::tape::known(plan) {
        points[known.point].letter = Some(known.letter);
    }
    points
}

/// With one more, which takes the first letter that is free.
pub(crate) fn with(plan: &Plan, point: TapePoint) -> Vec<TapePoint> {
    let mut points = lettered(plan);
    let free = |letter: &TapeLetter| points.iter().all(|one| one.letter != Some(*letter));
    let letter = TapeLetter::ALL.into_iter().find(free);
    points.push(TapePoint { letter, ..point });
    points
}

/// With a letter for one of them; the place that had it takes in return what this one had.
pub(crate) fn called(plan: &Plan, point: usize, letter: TapeLetter) -> Vec<TapePoint> {
    let mut points = lettered(plan);
    let Some(was) = points.get(point).map(|one| one.letter) else { return points };
    points.iter_mut().filter(|one| one.letter == Some(letter)).for_each(|one| one.letter = was);
    points[point].letter = Some(letter);
    points
}
