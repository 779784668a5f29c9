//! Corners by tape in words: one wording for report and sheet.

use plan::Plan;
use words::Words;
use words::texts::Sheet as Text;
use workup::tape::{KnownPlace, TapedBranch, TapedCorner, TapedFrom, TapedRun};

/// How one corner is set, cell by cell.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TapedRow {
    /// What the corner is called on the map: its number, of a branch with a letter before it.
    pub name: String,
    /// The distances and where each begins; `–` where there is none.
    pub tapes: [String; 2],
    /// On which side it lies.
    pub lies: String,
    /// How far it is to the next.
    pub next: String,
}

impl TapedRow {
    /// Its cells behind the name.
    pub fn cells(self) -> [String; 4] {
        let [first, second] = self.tapes;
        [first, second, self.lies, self.next]
    }
}

/// The heads over those cells.
pub fn heads(words: Words) -> [&'static str; 4] {
    [Text::HeadTape, Text::HeadSecondTape, Text::HeadLies, Text::HeadNext].map(|head| words.text(head))
}

/// The run's corners in the order in which they are set.
pub fn rows(taped: &TapedRun, words: Words) -> Vec<TapedRow> {
    taped.corners.iter().map(|corner| row(taped, None, corner, words)).collect()
}

/// The corners of each branch, under a sentence that says where they belong.
pub fn branches(taped: &TapedRun, words: Words) -> Vec<(String, Vec<TapedRow>)> {
    let of_branch = |index: usize| {
        let branch = &taped.branches[index];
        let number = (branch.branch + 1).to_string();
        let rows = branch.corners.iter().map(|corner| row(taped, Some(index), corner, words));
        let text = if branch.on_line { Text::TapeBranch } else { Text::TapeBranchOff };
        (words.say(text, &[("number", &number)]), rows.collect())
    };
    (0..taped.branches.len()).map(of_branch).collect()
}

/// What the corners of the run's branches are called on paper, with the branch and the corner by their places in the plan.
pub fn branch_names(taped: &TapedRun, words: Words) -> Vec<(String, usize, usize)> {
    let named = |index: usize| {
        let branch = &taped.branches[index];
        let name = move |corner: usize| (name(taped, Some(index), corner, words), branch.branch, corner);
        branch.corners.iter().map(move |one| name(one.corner))
    };
    (0..taped.branches.len()).flat_map(named).collect()
}

/// `P gatepost, Q coop corner`; where no place is known, how long a tape it takes.
pub fn known(plan: &Plan, taped: &TapedRun, words: Words) -> String {
    if taped.known.is_empty() {
        return words.say(Text::LongestTape, &[("length", &words.fine_length(taped.longest_m))]);
    }
    taped.known.iter().map(|known| called(plan, *known)).collect::<Vec<_>>().join(", ")
}

/// A known place by its letter and its name: `P gatepost`.
pub fn called(plan: &Plan, known: KnownPlace) -> String {
    let name = plan.tape_points.get(known.point).map_or("", |point| point.name.as_str());
    format!("{} {name}", known.letter.as_str()).trim_end().to_owned()
}

/// How it is read, and what shows whether it came out right.
pub fn note(taped: &TapedRun, words: Words) -> String {
    let number = |corner: &TapedCorner| (corner.corner + 1).to_string();
    let toward = taped.corners.iter().find(|corner| corner.is_free_in_direction()).map(number);
    let loose = taped.corners.first().filter(|corner| corner.tapes.is_empty()).map(number);
    let begin = match (loose, toward) {
        (Some(first), Some(second)) => words.say(Text::TapeFirst, &[("corner", &first), ("second", &second)]),
        (None, Some(only)) => words.say(Text::TapeToward, &[("corner", &only)]),
        _ => String::new(),
    };
    let check = taped.check.map(|(one, other, metres)| {
        let [one, other] = [one, other].map(|corner| (corner + 1).to_string());
        words.say(Text::TapeCheck, &[("one", &one), ("other", &other), ("length", &length(taped, metres, words))])
    });
    let said = [begin, words.text(Text::TapeHow).to_owned(), check.unwrap_or_default()];
    said.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" ")
}

fn length(taped: &TapedRun, metres: f64, words: Words) -> String {
    words.fine_length_in_column(metres, taped.longest_m)
}

/// A corner's name: branches are counted through, so that no two corners of a run are called alike.
fn name(taped: &TapedRun, branch: Option<usize>, corner: usize, words: Words) -> String {
    let Some(branch) = branch else { return (corner + 1).to_string() };
    // A corner that repeats the one before it is no row, but its number stays its own.
    let stated = |branch: &TapedBranch| branch.corners.iter().map(|corner| corner.corner + 1).max().unwrap_or(0);
    let before: usize = taped.branches.iter().take(branch).map(stated).sum();
    words.say(Text::CornerOfBranch, &[("number", &(before + corner + 1).to_string())])
}

fn row(taped: &TapedRun, branch: Option<usize>, corner: &TapedCorner, words: Words) -> TapedRow {
    let none = || "–".to_owned();
    let tape = |index: usize| {
        corner.tapes.get(index).map_or_else(none, |&(from, metres)| {
            let from = match from {
                TapedFrom::Known(index) => taped.known.get(index).map_or("", |known| known.letter.as_str()).to_owned(),
                TapedFrom::Corner(corner) => name(taped, None, corner, words),
                TapedFrom::OfBranch(corner) => name(taped, branch, corner, words),
            };
            words.say(Text::TapeFrom, &[("length", &length(taped, metres, words)), ("from", &from)])
        })
    };
    let lies = match (corner.tapes.len(), corner.left) {
        (2, Some(true)) => words.text(Text::LiesLeft).to_owned(),
        (2, Some(false)) => words.text(Text::LiesRight).to_owned(),
        (2, None) => words.text(Text::LiesInLine).to_owned(),
        _ => none(),
    };
    TapedRow {
        name: name(taped, branch, corner.corner, words),
        tapes: [tape(0), tape(1)],
        lies,
        next: corner.next_m.map_or_else(none, |next_m| length(taped, next_m, words)),
    }
}
