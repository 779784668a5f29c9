//! The largest runs in words: what a shape is called, what should be known, and why there is none.

use words::{Words, texts::Candidates as Text};
use workup::candidates::{Candidate, CandidateFault, CandidateNote, Family};

/// What a family is called.
pub fn family(family: Family, words: Words) -> &'static str {
    words.text(match family {
        Family::Square => Text::Square,
        Family::Rectangle => Text::Rectangle,
        Family::Hexagon => Text::Hexagon,
        Family::Octagon => Text::Octagon,
        Family::Round => Text::Round,
        Family::Free => Text::Free,
    })
}

/// What a candidate is called: its family, and the wall that it leans on.
pub fn name(one: &Candidate, words: Words) -> String {
    let family = family(one.family, words);
    match one.wall {
        Some(wall) => words.say(Text::AtWall, &[("family", family), ("number", &(wall + 1).to_string())]),
        None => family.to_owned(),
    }
}

/// The same as a head of its own.
pub fn title(one: &Candidate, words: Words) -> String {
    words::capital(&name(one, words))
}

/// What should be known, as one sentence.
pub fn noted(note: &CandidateNote, words: Words) -> String {
    match note {
        CandidateNote::KeepOutOutside { name } => words.say(Text::NoteOutside, &[("name", name)]),
        CandidateNote::KeepOutsOverlap { first, second } => {
            words.say(Text::NoteOverlap, &[("first", first), ("second", second)])
        }
        CandidateNote::PaddockInParts { count } => words.say(Text::NoteParts, &[("count", &count.to_string())]),
        CandidateNote::Slope => words.text(Text::NoteSlope).to_owned(),
        CandidateNote::NoWall => words.text(Text::NoteNoWall).to_owned(),
    }
}

/// Why there are no candidates, as one sentence.
pub fn refused(fault: &CandidateFault, words: Words) -> String {
    match fault {
        CandidateFault::NoBoundary => words.text(Text::NoBoundary).to_owned(),
        CandidateFault::BadBoundary { at: Some(at) } => {
            let at = words.place(at.east_m, at.north_m);
            words.say(Text::CrossedBoundary, &[("at", &at)])
        }
        CandidateFault::BadBoundary { at: None } => words.text(Text::BadBoundary).to_owned(),
        CandidateFault::BadKeepOut { name } => words.say(Text::BadKeepOut, &[("name", name)]),
        CandidateFault::BadClearance => words.text(Text::BadClearance).to_owned(),
        CandidateFault::NoNets => words.text(Text::NoNets).to_owned(),
        CandidateFault::NetsAsked { asked, owned } => {
            words.say(Text::NetsAsked, &[("asked", &asked.to_string()), ("owned", &owned.to_string())])
        }
        CandidateFault::BadNet { id } => words.say(Text::BadNet, &[("id", id)]),
        CandidateFault::TooFewPanels { panels } => words.say(Text::TooFewPanels, &[("panels", &panels.to_string())]),
        CandidateFault::Sides { asked, most } => {
            words.say(Text::SidesAsked, &[("asked", &asked.to_string()), ("most", &most.to_string())])
        }
        CandidateFault::NoCoop => words.text(Text::NoCoop).to_owned(),
        CandidateFault::BadCoop => words.text(Text::BadCoop).to_owned(),
        CandidateFault::CoopOutside => words.text(Text::CoopOutside).to_owned(),
        CandidateFault::CoopInKeepOut { name } => words.say(Text::CoopInKeepOut, &[("name", name)]),
        CandidateFault::NothingFits { coop: false } => words.text(Text::NothingFits).to_owned(),
        CandidateFault::NothingFits { coop: true } => words.text(Text::NothingFitsCoop).to_owned(),
    }
}

/// The same for a file: its name and the place in it come first.
pub fn refused_of_file(fault: &CandidateFault, file: &str, words: Words) -> String {
    let sentence = refused(fault, words);
    match fault.key() {
        Some(key) => words.say(Text::RefusedAt, &[("file", file), ("key", key), ("sentence", &sentence)]),
        None => words.say(Text::Refused, &[("file", file), ("sentence", &sentence)]),
    }
}
