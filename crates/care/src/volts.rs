//! The weakest post against the keeper's target.

use plan::{Run, defaults};
use words::texts::{self, Findings as Text};
use workup::RunWorkup;

use crate::limits::{FAULT_KV, FAULT_SOURCE};
use crate::{Finding, Look, Severity, Subject, run_name, volts_said};

pub(crate) fn of_run(look: Look<'_>, run: &Run, worked: &RunWorkup) -> Vec<Finding> {
    let Some(volts) = &worked.volts else { return Vec::new() };
    let Some(weakest) = volts.weakest else { return Vec::new() };
    let mut found = Vec::new();
    let words = look.words;
    let at = weakest.at;
    let post = || weakest.branch.map_or(Subject::Post(weakest.post), |_| Subject::Whole);
    let target_kv = look.plan.target_kv();
    let tried = worked.lay.as_ref().and_then(|lay| volts_said::tried_and_which(run, lay, words));
    let and_tried = tried
        .as_ref()
        .map_or_else(String::new, |tried| format!(" {}", words.say(texts::Faults::AndTried, &[("tried", tried)])));
    let (text, id, source) = if weakest.peak_kv < FAULT_KV && target_kv >= FAULT_KV {
        (Text::FaultyPost, "weak-post", FAULT_SOURCE)
    } else {
        let source = if look.plan.target_kv.is_some() { "the keeper’s own target" } else { defaults::TARGET_SOURCE };
        (Text::WeakPost, "weak-post", source)
    };
    if weakest.peak_kv < target_kv {
        // Where the fence would hold without its faults, they are what there is to mend.
        let by_faults = volts.sound.as_ref().is_some_and(|sound| sound.weakest.peak_kv >= target_kv);
        let first = (run.lines()).find_map(|line| (!run.faults_on(line).is_empty()).then_some(Subject::Fault(line, 0)));
        let subject = first.filter(|_| by_faults).unwrap_or_else(post);
        let mend = if by_faults { Text::WeakPostFaulty } else { Text::WeakPostMend };
        let why = look.say(
            Text::WeakPostWhy,
            &[("low", &words.kilovolts(weakest.low_kv)), ("high", &words.kilovolts(weakest.high_kv))],
        );
        let why = [Some(why), volts_said::sound(volts, words)].into_iter().flatten().collect::<Vec<_>>().join(" ");
        found.push(
            Finding::new(id, Severity::Warning, source)
                .about(subject)
                .says(look.say(
                    text,
                    &[
                        ("run", run_name(run)),
                        ("tried", &and_tried),
                        ("peak", &words.kilovolts_below(weakest.peak_kv, target_kv)),
                        ("target", &words.kilovolts(target_kv)),
                    ],
                ))
                .mends(words.text(mend))
                .because(why)
                .at([at]),
        );
    }
    if !weakest.measured {
        let called = look.say(Text::Post, &[("number", &words.post_number(weakest.post, weakest.branch))]);
        found.push(
            Finding::new("not-measured", Severity::Note, defaults::COMMON_PRACTICE)
                .about(post())
                .says(look.say(
                    Text::NotMeasured,
                    &[
                        ("run", run_name(run)),
                        ("weakest", &volts_said::weakest(&weakest, words)),
                        ("tried", &tried.map_or_else(String::new, |tried| format!(", {tried}"))),
                    ],
                ))
                .mends(look.say(Text::NotMeasuredMend, &[("post", &called)]))
                .at([at]),
        );
    }
    found
}
