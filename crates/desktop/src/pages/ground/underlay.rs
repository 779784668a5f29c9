//! The picture beneath the map on the ground page: brought in, placed by two known points, seen more or less, locked.

use drawing::Thing;
use egui::{Id, Key, Ui, vec2};
use plan::{Edit, Underlay};
use words::texts::{About, Ground, Underlay as Text};
use words::{Measure, Range};

use super::{Desk, tool};
use crate::asking::Ask;
use crate::editor::{Message, Pictured, UnderlayMessage};
use crate::field::{self, Label, Shown};
use crate::icons::Icon;
use crate::kit::{self, Stop};
use crate::theme::{self, colour};
use crate::tool::Drawn;

/// Distances between two known points, metres.
const APART_M: Range = Range::between(0.01, 100_000.0);
const BEARING_DEG: Range = Range::zero_to(360.0);
/// Below this it could not be told from the paper.
const LEAST_OPACITY: f64 = 0.05;

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    let words = desk.words;
    let underlay = desk.editor.plan().underlay.clone();
    desk.section(ui, words.text(Text::Head), "", About::Picture);
    ui.add_space(6.0);
    let Some(underlay) = underlay else {
        desk.second(ui, words.text(Text::None));
        ui.add_space(6.0);
        bring(ui, desk, Text::Bring);
        return;
    };
    fields(ui, desk, &underlay);
}

/// What became of it, how much of it is seen, and what can be done with it.
pub(super) fn fields(ui: &mut Ui, desk: &mut Desk<'_>, underlay: &Underlay) {
    let (words, p) = (desk.words, desk.p);
    state(ui, desk, underlay);
    ui.add_space(8.0);
    strength(ui, desk, underlay);
    let options = [(true, words.text(Ground::Yes)), (false, words.text(Ground::No))];
    let label = Label::from(words.text(Text::Locked));
    if let Some(locked) = field::choice(ui, p, label, &options, Some(underlay.locked)) {
        set(desk, Underlay { locked, ..underlay.clone() });
    }
    ui.add_space(6.0);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(6.0, 6.0);
        if !underlay.locked {
            tool(ui, desk, Drawn::Known, Icon::Known, words.text(Text::Known));
        }
        bring(ui, desk, Text::BringOther);
        if kit::button(ui, Icon::TakeOut, words.text(Text::TakeOut), false, p).clicked() {
            desk.said.say(Message::Make(Edit::SetUnderlay { underlay: None }));
        }
    });
    if desk.editor.tool().draws(Drawn::Known) {
        known(ui, desk);
    }
}

fn bring(ui: &mut Ui, desk: &mut Desk<'_>, text: Text) {
    if kit::button(ui, Icon::Picture, desk.words.text(text), false, desk.p).clicked() {
        desk.said.ask(Ask::BringPicture);
    }
}

fn set(desk: &mut Desk<'_>, underlay: Underlay) {
    desk.said.say(Message::Make(Edit::SetUnderlay { underlay: Some(underlay) }));
}

/// What became of the file, and whether the picture is to scale.
fn state(ui: &mut Ui, desk: &mut Desk<'_>, underlay: &Underlay) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    // A plan of another system may part folders its own way.
    let file = underlay.path.rsplit(['/', '\\']).next().unwrap_or(&underlay.path);
    let trouble = |ui: &mut Ui, sentence: &str| {
        kit::prose(ui, sentence, theme::medium(13.0), colour(p.danger));
    };
    match editor.pictured() {
        Pictured::Nothing | Pictured::Waiting => desk.second(ui, words.text(Text::Reading)),
        Pictured::Refused(error) => trouble(ui, &exchange::underlay::sentence(words, file, error)),
        Pictured::Shown { changed, size_px } => {
            if changed.is_some() {
                trouble(ui, &words.say(Text::Changed, &[("file", file)]));
                ui.add_space(6.0);
                if kit::word_button(ui, words.text(Text::TakeChanged), false, p).clicked() {
                    desk.said.say(Message::Underlay(UnderlayMessage::TakeChanged));
                }
                ui.add_space(6.0);
            }
            let [wide, tall] = size_px.map(|side| words.number(f64::from(side), 0));
            let metres = words.fine_length(underlay.world_m().metres_a_pixel());
            let places = [("file", file), ("wide", &*wide), ("tall", &*tall), ("metres", &*metres)];
            let sentence = words.say(Text::Sentence, &places);
            let response = kit::prose(ui, &sentence, theme::regular(12.0), colour(p.ink2));
            if response.hovered() {
                desk.said.hovered = desk.said.hovered.or(Some(Thing::Underlay));
            }
            if !underlay.is_to_scale() {
                ui.add_space(4.0);
                kit::prose(ui, words.text(Text::NotPlaced), theme::medium(13.0), colour(p.ink));
            }
        }
    }
}

fn strength(ui: &mut Ui, desk: &mut Desk<'_>, underlay: &Underlay) {
    let (words, p) = (desk.words, desk.p);
    let stops = [(0.1, Text::Faint), (0.5, Text::Half), (1.0, Text::Full)];
    let stops = stops.map(|(place, name)| Stop { place, name: words.text(name) });
    let percent = words.number(underlay.opacity() * 100.0, 0);
    let value = words.say(Text::StrengthIs, &[("percent", &percent)]);
    kit::fact(ui, words.text(Text::Strength), &value, p);
    let (response, moved) = kit::slider(ui, words.text(Text::Strength), &value, underlay.opacity(), &stops, p);
    if response.drag_started() {
        desk.said.say(Message::Begin);
    }
    if let Some(opacity) = moved {
        let opacity = (opacity.max(LEAST_OPACITY) * 100.0).round() / 100.0;
        // A hand that holds still says nothing again.
        if (opacity - underlay.opacity()).abs() > 1e-9 {
            set(desk, Underlay { opacity: Some(opacity), ..underlay.clone() });
        }
    }
    if response.drag_stopped() {
        desk.said.say(Message::End);
    }
}

/// What was typed of two known points: how far apart, and the bearing.
#[derive(Clone, Copy, Default)]
struct Typed {
    apart_m: Option<f64>,
    bearing_deg: Option<f64>,
}

/// The field for how far apart the known points are.
pub(super) fn apart_field() -> Id {
    Id::unique("known points").with("apart")
}

fn known(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p) = (desk.words, desk.p);
    ui.add_space(8.0);
    if desk.editor.known_points().len() < 2 {
        desk.second(ui, words.text(Text::KnownSentence));
        return;
    }
    let id = Id::unique("known points");
    let mut typed = ui.data(|data| data.get_temp::<Typed>(id)).unwrap_or_default();
    let mut committed = false;
    let shown = |measure: Measure, value: Option<f64>| match value {
        Some(value) => Shown::of(words, measure, value, false),
        None => Shown::nothing(words, measure),
    };
    let apart = shown(Measure::Length, typed.apart_m);
    let read = field::or_nothing(field::figure(words, Measure::Length, APART_M));
    if let Some(apart_m) = field::line(ui, p, apart_field(), words.text(Text::KnownApart), &apart, read) {
        (typed.apart_m, committed) = (apart_m, true);
    }
    let bearing = shown(Measure::Degrees, typed.bearing_deg);
    let read = field::or_nothing(field::figure(words, Measure::Degrees, BEARING_DEG));
    if let Some(bearing_deg) = field::line(ui, p, id.with("bearing"), words.text(Text::KnownBearing), &bearing, read) {
        (typed.bearing_deg, committed) = (bearing_deg, true);
    }
    let entered = committed && ui.input(|input| input.key_pressed(Key::Enter));
    ui.data_mut(|data| data.insert_temp(id, typed));
    ui.add_space(6.0);
    if let Some(apart_m) = typed.apart_m
        && (kit::word_button(ui, words.text(Text::KnownDo), true, p).clicked() || entered)
    {
        desk.said.say(Message::Underlay(UnderlayMessage::Known(apart_m, typed.bearing_deg)));
        ui.data_mut(|data| data.remove_temp::<Typed>(id));
    }
}
