//! The weakest post's volts in words: what is likely first, the band beside it, and which faults are counted in it. One
//! wording for map, window, sheet, page and findings.

use plan::Run;
use words::Words;
use words::texts::Faults as Text;
use workup::{Lay, Volts, Weakest};

use crate::fault_said::{name_within, zone_ends_within, zone_within};

/// The weakest post's figure, and its unit with the band: `about 1.5` and `kV, 1.1 – 6.0`.
pub fn weakest_parts(weakest: &Weakest, words: Words) -> (String, String) {
    words.likely_kilovolts_parts(weakest.peak_kv, weakest.low_kv, weakest.high_kv)
}

/// The same in one: `about 1.5 kV, 1.1 – 6.0`.
pub fn weakest(weakest: &Weakest, words: Words) -> String {
    words.likely_kilovolts(weakest.peak_kv, weakest.low_kv, weakest.high_kv)
}

/// That faults are counted, for where there is little room: `with 1 fault`; `None` where nothing is tried.
pub fn tried(run: &Run, words: Words) -> Option<String> {
    match run.faults_count() {
        0 if run.is_tried() => Some(words.text(Text::TriedGrass).to_owned()),
        0 => None,
        1 => Some(words.text(Text::TriedOne).to_owned()),
        count => Some(words.say(Text::TriedMany, &[("count", &count.to_string())])),
    }
}

/// The same for where there is next to none: `1 fault`.
pub fn tried_briefly(run: &Run, words: Words) -> Option<String> {
    match run.faults_count() {
        0 => tried(run, words),
        1 => Some(words.text(Text::BriefOne).to_owned()),
        count => Some(words.say(Text::BriefMany, &[("count", &count.to_string())])),
    }
}

/// That faults are counted, and which: `with 1 fault (peg 6.2 m past corner 3)`; stretches of other grass among them.
pub fn tried_and_which(run: &Run, lay: &Lay, words: Words) -> Option<String> {
    let tried = tried(run, words)?;
    let mut names = Vec::new();
    for line in run.lines() {
        let (alone, laid) = match line {
            None => (None, None),
            // One that could not be laid carries no volts, and is told of among the findings.
            Some(branch) => match (run.branches.get(branch), lay.branch(branch)) {
                (Some(stated), Some(laid)) => (Some(stated.alone(run)), Some(laid.alone())),
                _ => continue,
            },
        };
        let (alone, laid) = (alone.as_ref().unwrap_or(run), laid.as_ref().unwrap_or(lay));
        names.extend(alone.faults.iter().map(|fault| name_within(alone, laid, line, fault, words)));
        names.extend(alone.leakage_zones.iter().map(|zone| {
            let ends = zone_ends_within(laid, line, zone, words);
            format!("{} {ends}", zone_within(zone, words))
        }));
    }
    Some(words.say(Text::TriedNamed, &[("tried", &tried), ("names", &names.join("; "))]))
}

/// What the post that is the weakest now would hold without the faults, and which post would be the weakest then where
/// that is another; `None` where there are no faults.
pub fn sound(volts: &Volts, words: Words) -> Option<String> {
    let weakest = volts.weakest?;
    let say = |text, post, branch, kv| {
        let places = [("post", &*words.post_number(post, branch)), ("kv", &*words.kilovolts(kv))];
        words.say(text, &places)
    };
    let here = say(Text::SoundHere, weakest.post, weakest.branch, volts.weakest_sound_kv()?);
    let elsewhere = volts.weakest_elsewhere();
    let elsewhere = elsewhere.map(|then| say(Text::SoundElsewhere, then.post, then.branch, then.peak_kv));
    Some([Some(here), elsewhere].into_iter().flatten().collect::<Vec<_>>().join(" "))
}
