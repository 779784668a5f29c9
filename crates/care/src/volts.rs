//! The weakest post against the keeper's target.

use plan::{Run, defaults};
use words::texts::Findings as Text;
use workup::RunWorkup;

use crate::limits::{FAULT_KV, FAULT_SOURCE};
use crate::{Finding, Look, Severity, run_name};

pub(crate) fn of_run(look: Look<'_>, run: &Run, worked: &RunWorkup) -> Vec<Finding> {
    let Some(volts) = &worked.volts else { return Vec::new() };
    let Some(weakest) = volts.weakest else { return Vec::new() };
    let mut found = Vec::new();
    let words = look.words;
    let at = weakest.at;
    let target_kv = look.plan.target_kv();
    let (text, id, source) = if weakest.peak_kv < FAULT_KV && target_kv >= FAULT_KV {
        (Text::FaultyPost, "weak-post", FAULT_SOURCE)
    } else {
        let source = if look.plan.target_kv.is_some() { "the keeper’s own target" } else { defaults::TARGET_SOURCE };
        (Text::WeakPost, "weak-post", source)
    };
    if weakest.peak_kv < target_kv {
        found.push(
            Finding::new(id, Severity::Warning, source)
                .says(look.say(
                    text,
                    &[
                        ("run", run_name(run)),
                        ("peak", &words.kilovolts(weakest.peak_kv)),
                        ("target", &words.kilovolts(target_kv)),
                    ],
                ))
                .mends(words.text(Text::WeakPostMend))
                .because(look.say(
                    Text::WeakPostWhy,
                    &[("low", &words.kilovolts(weakest.low_kv)), ("high", &words.kilovolts(weakest.high_kv))],
                ))
                .at([at]),
        );
    }
    if !weakest.measured {
        let post = look.say(Text::Post, &[("number", &words.post_number(weakest.post, weakest.branch))]);
        found.push(
            Finding::new("not-measured", Severity::Note, defaults::COMMON_PRACTICE)
                .says(look.say(
                    Text::NotMeasured,
                    &[("run", run_name(run)), ("range", &words.kilovolts_range(weakest.low_kv, weakest.high_kv))],
                ))
                .mends(look.say(Text::NotMeasuredMend, &[("post", &post)]))
                .at([at]),
        );
    }
    found
}
