//! Faults that are stated and cannot be what is meant.

use plan::{FaultKind, Run};
use words::texts::Findings as Text;
use workup::faults::{NoLanding, land};
use workup::{Lay, RunWorkup};

use crate::limits::OWN_FORMAT;
use crate::{Finding, Look, Severity, Subject, fault_said, run_name};

/// Farther than this from the line a fault is not on it, metres.
const OFF_LINE_M: f64 = 1.0;

pub(crate) fn of_run(look: Look<'_>, run: &Run, worked: &RunWorkup) -> Vec<Finding> {
    let Some(lay) = &worked.lay else { return Vec::new() };
    let mut found = on_line(look, run, run_name(run), lay, None);
    for (number, branch) in run.branches.iter().enumerate() {
        let Some(laid) = lay.branch(number) else { continue };
        let name = look.branch(run_name(run), number);
        found.extend(on_line(look, &branch.alone(run), &name, &laid.alone(), Some(number)));
    }
    found
}

/// Of one line of netting, which is called so.
fn on_line(look: Look<'_>, run: &Run, name: &str, lay: &Lay, branch: Option<usize>) -> Vec<Finding> {
    let mut found = Vec::new();
    for (index, fault) in run.faults.iter().enumerate() {
        let number = (index + 1).to_string();
        let kind = fault_said::called(fault, look.words);
        let mut say = |id: &'static str, text: Text, more: &[(&str, &str)]| {
            let mut places = vec![("number", number.as_str()), ("kind", kind), ("run", name)];
            places.extend(more);
            let told = Finding::new(id, Severity::Note, OWN_FORMAT).says(look.say(text, &places)).at([fault.at]);
            found.push(told.about(Subject::Fault(branch, index)));
        };
        let landed = land(run, lay, fault.kind, fault.at);
        match landed {
            Err(NoLanding::NoNet) => say("fault-off-net", Text::FaultOffNet, &[]),
            Err(NoLanding::NoJoin) => say("fault-no-join", Text::FaultNoJoin, &[]),
            // A bad join goes to the nearest one, however far that is.
            Ok(landing) if fault.kind != FaultKind::Join && landing.off_m > OFF_LINE_M => {
                say("fault-off-net", Text::FaultBesideNet, &[("off", &look.words.length(landing.off_m))]);
            }
            Ok(_) => {}
        }
        let ohms = matches!(fault.kind, FaultKind::Short | FaultKind::Join);
        if ohms && fault.ohm.is_none_or(|ohm| ohm == 0.0) {
            let text = if fault.kind == FaultKind::Join { Text::FaultJoinNoOhm } else { Text::FaultDeadShort };
            say("fault-no-ohm", text, &[]);
        }
        if let (FaultKind::LineBreak, Ok(landing)) = (fault.kind, landed)
            && let Some(lines) = fault_said::live_lines(look.plan, lay, landing.net)
        {
            let stated = fault.lines.unwrap_or(1);
            if stated == 0 || stated > lines {
                let text = if lines == 1 { Text::FaultLinesOne } else { Text::FaultLines };
                say("fault-lines", text, &[("stated", &stated.to_string()), ("lines", &lines.to_string())]);
            }
        }
    }
    found
}
