//! One action that makes the run of whole panels, and what came of it in a sentence.

use egui::Ui;
use plan::Run;
use words::texts::Fitting as Text;
use workup::RunWorkup;
use workup::fit::{FitReason, FitRefusal, Fitted, GivenUp, Unlaid};

use super::Desk;
use crate::editor::Message;
use crate::field;
use crate::icons::Icon;
use crate::kit;
use crate::theme::{self, colour};

/// Less than this is missing to rounding, metres.
const LEAST_SHORT_M: f64 = 0.005;
/// More panels doubled back are for another net.
const MOST_DOUBLED_BACK: u32 = 4;
/// Corners that moved by less than this did not move, metres.
const MOVED_M: f64 = 0.005;

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>, run: &Run, worked: &RunWorkup) {
    if !run.closed() {
        return;
    }
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    ui.add_space(8.0);
    let looking = editor.is_fitting();
    if kit::button(ui, Icon::Coil, words.text(Text::Fit), looking, p).clicked() && !looking {
        desk.said.say(Message::FitNets(0));
    }
    if looking {
        ui.add_space(6.0);
        desk.second(ui, words.text(Text::Looking));
        return;
    }
    if let Some((double_back, answer)) = editor.fit_answer() {
        ui.add_space(8.0);
        match answer {
            Ok(fitted) => {
                done(ui, desk, fitted);
                if editor.unpinned() > 0 {
                    ui.add_space(4.0);
                    desk.second(ui, words.text(Text::Unpinned));
                }
            }
            Err(refusal) => refused(ui, desk, refusal),
        }
        let short_m = worked.lay.as_ref().map_or(0.0, |lay| lay.short_m);
        if worked.slope.is_some() && short_m >= LEAST_SHORT_M {
            ui.add_space(4.0);
            desk.second(ui, &words.say(Text::ShortOnSlope, &[("short", &words.fine_length(short_m))]));
        }
        doubled_back(ui, desk, double_back);
    }
    let corner = worked.draw_in.and_then(|drawn| Some((drawn, run.outline.iter().position(|at| *at == drawn.at)?)));
    if let Some((drawn, corner)) = corner {
        ui.add_space(4.0);
        let (corner, by, gives) = ((corner + 1).to_string(), words.length(drawn.by_m), words.length(drawn.gives_m));
        desk.second(ui, &words.say(Text::DrawIn, &[("corner", &corner), ("by", &by), ("gives", &gives)]));
    }
}

/// How many panels are doubled back: another number fits anew.
fn doubled_back(ui: &mut Ui, desk: &mut Desk<'_>, now: u32) {
    let (words, p) = (desk.words, desk.p);
    let names: Vec<String> = (0..=MOST_DOUBLED_BACK).map(|panels| panels.to_string()).collect();
    let options: Vec<(u32, &str)> = (0..).zip(names.iter().map(String::as_str)).collect();
    ui.add_space(6.0);
    if let Some(double_back) = field::choice(ui, p, words.text(Text::PanelsDoubled), &options, Some(now)) {
        desk.said.say(Message::FitNets(double_back));
    }
}

fn done(ui: &mut Ui, desk: &mut Desk<'_>, fitted: &Fitted) {
    let (words, p) = (desk.words, desk.p);
    let sides = fitted.side_panels.iter().map(u32::to_string).collect::<Vec<_>>().join(", ");
    let unlaid = fitted.slope.as_ref().and_then(|slope| slope.unlaid);
    let text = match (&fitted.slope, fitted.moved_rms_m < MOVED_M) {
        (None, true) => Text::WasWhole,
        (None, false) => Text::IsWhole,
        (Some(_), _) if unlaid.is_some() => Text::NearlyOnSlope,
        (Some(_), true) => Text::WasWholeOnSlope,
        (Some(_), false) => Text::IsWholeOnSlope,
    };
    let said = words.say(text, &[("sides", &sides), ("moved", &words.length(fitted.moved_rms_m))]);
    kit::prose(ui, &said, theme::medium(13.0), colour(p.ink));
    let mut more = |text: String| {
        ui.add_space(4.0);
        desk.second(ui, &text);
    };
    if let Some(slope) = &fitted.slope {
        match unlaid {
            None => {
                let level = words.length(slope.level_m.iter().sum());
                more(words.say(Text::ShorterOnMap, &[("level", &level), ("line", &words.length(fitted.line_m))]));
            }
            Some(Unlaid::NoRoom) => more(words.text(Text::NoRoomOnSlope).to_owned()),
            Some(Unlaid::NotWhole) => more(words.text(Text::NotWholeOnSlope).to_owned()),
        }
    }
    if fitted.double_back > 0 {
        let places = [("panels", count(desk, fitted.double_back)), ("spare", words.length(fitted.spare_m))];
        more(words.say(Text::DoubledBack, &[("panels", &places[0].1), ("spare", &places[1].1)]));
    }
    if fitted.no_rectangle {
        more(words.text(Text::NoRectangle).to_owned());
    }
}

fn refused(ui: &mut Ui, desk: &mut Desk<'_>, refusal: &FitRefusal) {
    let (words, p) = (desk.words, desk.p);
    let panels_corners = |text: Text, panels: usize, corners: usize| {
        words.say(text, &[("panels", &panels.to_string()), ("corners", &corners.to_string())])
    };
    let reason = match refusal.reason {
        FitReason::TooFewPanels { panels, corners } => panels_corners(Text::TooFewPanels, panels, corners),
        FitReason::NeverCloses { panels, corners } => panels_corners(Text::NeverCloses, panels, corners),
        FitReason::NoRoom { panels, all_tried: true } => panels_corners(Text::NoRoomAll, panels, 0),
        FitReason::NoRoom { panels, all_tried: false } => panels_corners(Text::NoRoomFound, panels, 0),
        _ => words.text(Text::NotYet).to_owned(),
    };
    kit::prose(ui, &words.say(Text::CannotFit, &[("reason", &reason)]), theme::medium(13.0), colour(p.ink));
    let given_up = match refusal.given_up {
        Some(GivenUp::DoubleBack { asked, panels }) => {
            words.say(Text::NearestDoubled, &[("panels", &count(desk, panels)), ("asked", &asked.to_string())])
        }
        Some(GivenUp::Corners { corners }) => words.say(Text::NearestCorners, &[("corners", &corners.to_string())]),
        None => return,
    };
    ui.add_space(4.0);
    desk.second(ui, &given_up);
    if refusal.nearest.is_some() {
        ui.add_space(6.0);
        if kit::link(ui, words.text(Text::TakeNearest), p).clicked() {
            desk.said.say(Message::TakeNearest);
        }
    }
}

fn count(desk: &Desk<'_>, panels: u32) -> String {
    match panels {
        1 => desk.words.text(Text::OnePanel).to_owned(),
        _ => desk.words.say(Text::Panels, &[("panels", &panels.to_string())]),
    }
}
