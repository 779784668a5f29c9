//! What a figure on the map or on the unfolded line is, its unit and where it comes from, while the pointer rests on it.

use drawing::Told;
use egui::{Id, Rect, Response, Sense, Ui};
use words::Words;
use words::texts::About;

/// Says of a figure what it is, at the pointer.
pub(crate) fn say(response: &Response, words: Words, about: About) {
    response.clone().on_hover_text_at_pointer(words.text(about));
}

/// The same of figures that are painted into a part of the window.
pub(crate) fn say_in(ui: &Ui, part: Rect, id: &str, words: Words, about: About) {
    say(&ui.interact(part, Id::unique(("figures told", id)), Sense::hover()), words, about);
}

/// What is said of a figure of a drawing.
pub(crate) fn of(told: Told) -> About {
    match told {
        Told::Weakest => About::Weakest,
        Told::Run => About::RunGround,
        Told::Side => About::SideOnMap,
        Told::Volts => About::VoltsHere,
        Told::Post => About::PostNumber,
        Told::Height => About::Heights,
        Told::OverheadLine => About::OverheadLine,
        Told::Along => About::Along,
        Told::Net => About::NetOnLine,
        Told::Gap => About::Short,
    }
}
