//! `netfold fit`: the nearest outline of whole panels, as JSON or as a page.
//!
//! Where no such outline exists it exits 2, with a sentence on standard error or, asked for JSON, with an object on
//! standard output that holds the reason and the nearest that does exist. Input that cannot be used is one sentence
//! either way.

use std::path::Path;
use std::process::ExitCode;

use anyhow::{Result, anyhow};
use plan::{Plan, Shape};
use serde_json::{Map, Value, json};
use words::{Words, texts::Fitting as Text};
use workup::fit::{FitReason, FitRefusal, Fitted, GivenUp, Unlaid, fit};

use crate::{commands, files};

/// Less than this is missing to rounding, metres.
const LEAST_SHORT_M: f64 = 0.005;

/// Fits a run of the plan in a file.
pub(crate) fn run(path: &Path, run: &str, double_back: u32, as_json: bool, words: Words) -> Result<ExitCode> {
    let plan = commands::open(path, words)?.plan;
    match fit(&plan, run, double_back) {
        Ok(fitted) => {
            let bytes = if as_json { lines(&object(run, &fitted)) } else { page(&plan, run, &fitted, words) };
            files::print(bytes.as_bytes())?;
            Ok(ExitCode::SUCCESS)
        }
        Err(refusal) if as_json && refusal.is_impossible() => {
            files::print(lines(&refused(run, &refusal, words)).as_bytes())?;
            Ok(ExitCode::from(2))
        }
        Err(refusal) => Err(anyhow!(sentence(&plan, path, run, &refusal, words))),
    }
}

fn lines(value: &Value) -> String {
    format!("{value:#}\n")
}

/// The answer; its keys are a promise: add, never rename.
fn object(run: &str, fitted: &Fitted) -> Value {
    let mut object = Map::new();
    object.insert("possible".into(), true.into());
    object.insert("run".into(), run.into());
    if let Value::Object(rest) = outline(fitted) {
        object.extend(rest);
    }
    Value::Object(object)
}

fn outline(fitted: &Fitted) -> Value {
    let at = |point: plan::Point| json!([point.east_m, point.north_m]);
    let mut value = json!({
        "outline": fitted.outline.iter().copied().map(at).collect::<Vec<_>>(),
        "side_panels": fitted.side_panels,
        "side_m": fitted.side_m,
        "moved_rms_m": fitted.moved_rms_m,
        "bound_rms_m": fitted.bound_rms_m,
        "line_m": fitted.line_m,
        "double_back": fitted.double_back,
        "spare_m": fitted.spare_m,
        "nets": fitted.nets,
        "start_m": fitted.start_m,
        "reversed": fitted.reversed,
        "no_rectangle": fitted.no_rectangle,
        "draw_in": fitted.draw_in.map(|drawn| json!({
            "corner": drawn.corner,
            "at": at(drawn.at),
            "to": at(drawn.to),
            "by_m": drawn.by_m,
            "gives_m": drawn.gives_m,
        })),
    });
    // Only ground that is not level has more to say.
    if let Some(slope) = &fitted.slope {
        value["slope"] = json!({
            "whole": slope.unlaid.is_none(),
            "why": slope.unlaid.map(|unlaid| match unlaid {
                Unlaid::NoRoom => "no_room",
                Unlaid::NotWhole => "not_whole",
            }),
            "level_side_m": slope.level_m,
            "short_m": slope.short_m,
        });
    }
    value
}

fn refused(run: &str, refusal: &FitRefusal, words: Words) -> Value {
    json!({
        "possible": false,
        "run": run,
        "id": refusal.reason.id(),
        "reason": why(&refusal.reason, words),
        "nearest": refusal.nearest.as_deref().map(outline),
        "given_up": refusal.given_up.map(|given_up| match given_up {
            GivenUp::DoubleBack { asked, panels } => json!({ "double_back": panels, "asked": asked }),
            GivenUp::Corners { corners } => json!({ "corners": corners }),
        }),
    })
}

/// The answer as a page of plain text.
fn page(plan: &Plan, run: &str, fitted: &Fitted, words: Words) -> String {
    let named = plan
        .runs
        .iter()
        .find(|known| known.id == run)
        .map_or(run, |known| if known.name.is_empty() { run } else { &known.name });
    let title = words.say(Text::Title, &[("run", named)]);
    let mut lines = vec![title.clone(), "=".repeat(title.chars().count()), String::new()];
    let mut row = |label: Option<Text>, figures: &str| {
        lines.push(format!("{:<9}{figures}", label.map_or("", |label| words.text(label))));
    };
    let corners = fitted.side_panels.len();
    for (side, (&panels, &side_m)) in fitted.side_panels.iter().zip(&fitted.side_m).enumerate() {
        let mut places = vec![
            ("from", (side + 1).to_string()),
            ("to", ((side + 1) % corners + 1).to_string()),
            ("panels", count(panels, words)),
            ("length", words.length(side_m)),
        ];
        let level_m = fitted.slope.as_ref().map(|slope| slope.level_m[side]);
        places.extend(level_m.map(|level_m| ("level", words.length(level_m))));
        let text = if level_m.is_some() { Text::SideOnSlope } else { Text::Side };
        row((side == 0).then_some(Text::Sides), &say(words, text, &places));
    }
    let nets = nets(&fitted.nets);
    let line = if fitted.double_back == 0 {
        say(words, Text::LineWhole, &[("line", words.length(fitted.line_m)), ("nets", nets)])
    } else {
        let places = [
            ("line", words.length(fitted.line_m)),
            ("nets", nets),
            ("panels", count(fitted.double_back, words)),
            ("spare", words.length(fitted.spare_m)),
        ];
        say(words, Text::LineDoubled, &places)
    };
    row(Some(Text::Line), &line);
    let nearest = fitted.moved_rms_m - fitted.bound_rms_m < 1e-6;
    let moved = [("moved", words.length(fitted.moved_rms_m)), ("bound", words.length(fitted.bound_rms_m))];
    let text = match (&fitted.slope, nearest) {
        (Some(_), _) => Text::MovedOnSlope,
        (None, true) => Text::MovedNearest,
        (None, false) => Text::MovedBound,
    };
    row(Some(Text::Moved), &say(words, text, &moved));
    for (corner, at) in fitted.outline.iter().enumerate() {
        let places = [
            ("number", (corner + 1).to_string()),
            ("east", words.length(at.east_m)),
            ("north", words.length(at.north_m)),
        ];
        row((corner == 0).then_some(Text::Corners), &say(words, Text::Corner, &places));
    }
    lines.push(String::new());
    if let Some(slope) = &fitted.slope {
        lines.extend(slope.unlaid.map(|unlaid| {
            let text = match unlaid {
                Unlaid::NoRoom => Text::NoRoomOnSlope,
                Unlaid::NotWhole => Text::NotWholeOnSlope,
            };
            words.text(text).to_owned()
        }));
        if slope.short_m >= LEAST_SHORT_M {
            lines.push(say(words, Text::ShortOnSlope, &[("short", words.fine_length(slope.short_m))]));
        }
    }
    if fitted.no_rectangle {
        lines.push(words.text(Text::NoRectangle).to_owned());
    }
    if let Some(drawn) = fitted.draw_in {
        let places = [
            ("corner", (drawn.corner + 1).to_string()),
            ("by", words.length(drawn.by_m)),
            ("gives", words.length(drawn.gives_m)),
        ];
        lines.push(say(words, Text::DrawIn, &places));
    }
    lines.push(words.text(Text::Codes).to_owned());
    lines.join("\n") + "\n"
}

fn say(words: Words, text: Text, places: &[(&str, String)]) -> String {
    let places: Vec<(&str, &str)> = places.iter().map(|(name, value)| (*name, value.as_str())).collect();
    words.say(text, &places)
}

fn count(panels: u32, words: Words) -> String {
    match panels {
        1 => words.text(Text::OnePanel).to_owned(),
        _ => words.say(Text::Panels, &[("panels", &panels.to_string())]),
    }
}

/// Nets by kind in the order in which they come: `2 long, 1 short`.
fn nets(ids: &[String]) -> String {
    let mut kinds: Vec<(&str, usize)> = Vec::new();
    for id in ids {
        match kinds.iter_mut().find(|(kind, _)| kind == id) {
            Some((_, count)) => *count += 1,
            None => kinds.push((id, 1)),
        }
    }
    kinds.into_iter().map(|(kind, count)| format!("{count} {kind}")).collect::<Vec<_>>().join(", ")
}

/// Why no outline exists, without a full stop.
fn why(reason: &FitReason, words: Words) -> String {
    let (text, panels, corners) = match *reason {
        FitReason::TooFewPanels { panels, corners } => (Text::TooFewPanels, panels, corners),
        FitReason::NeverCloses { panels, corners } => (Text::NeverCloses, panels, corners),
        FitReason::NoRoom { panels, all_tried: true } => (Text::NoRoomAll, panels, 0),
        FitReason::NoRoom { panels, all_tried: false } => (Text::NoRoomFound, panels, 0),
        _ => return reason.to_string(),
    };
    words.say(text, &[("panels", &panels.to_string()), ("corners", &corners.to_string())])
}

fn sentence(plan: &Plan, path: &Path, run: &str, refusal: &FitRefusal, words: Words) -> String {
    let mut places = vec![("file", files::name(path)), ("run", run.to_owned())];
    let text = match &refusal.reason {
        FitReason::NoSuchRun if plan.runs.is_empty() => Text::NoSuchRunAtAll,
        FitReason::NoSuchRun => {
            places.push(("known", plan.runs.iter().map(|run| run.id.as_str()).collect::<Vec<_>>().join(", ")));
            Text::NoSuchRun
        }
        FitReason::Open => Text::Open,
        FitReason::Unbuilt { shape: Shape::Run(_) | Shape::Branch(..) } => Text::UnbuiltRun,
        // Walls, shade, damp ground and hazards are no outlines that a fit goes by.
        FitReason::Unbuilt {
            shape: Shape::Boundary | Shape::Wall(_) | Shape::Shade(_) | Shape::Damp(_) | Shape::Hazard(_),
        } => Text::UnbuiltBoundary,
        FitReason::Unbuilt { shape: Shape::KeepOut(index) } => {
            places.extend([("number", (index + 1).to_string()), ("index", index.to_string())]);
            Text::UnbuiltKeepOut
        }
        FitReason::NoNets => Text::NoNets,
        FitReason::BadNet { net } => {
            places.push(("net", net.clone()));
            Text::BadNet
        }
        FitReason::TooManyCorners { corners, most } => {
            places.extend([("corners", corners.to_string()), ("most", most.to_string())]);
            Text::TooManyCorners
        }
        FitReason::TooManyPanels { panels, most } => {
            places.extend([("panels", panels.to_string()), ("most", most.to_string())]);
            Text::TooManyPanels
        }
        FitReason::TooFewPanels { .. } | FitReason::NeverCloses { .. } | FitReason::NoRoom { .. } => {
            let nearest = match refusal.given_up {
                Some(GivenUp::DoubleBack { asked, panels }) => {
                    let places = [("panels", count(panels, words)), ("asked", asked.to_string())];
                    say(words, Text::NearestDoubled, &places)
                }
                Some(GivenUp::Corners { corners }) => {
                    say(words, Text::NearestCorners, &[("corners", corners.to_string())])
                }
                None => words.text(Text::NoNearest).to_owned(),
            };
            places.extend([("reason", why(&refusal.reason, words)), ("nearest", nearest)]);
            Text::OfRun
        }
    };
    say(words, text, &places)
}
