//! The page about where the flock goes next.

use egui::Ui;
use words::texts::Moves as Text;

use super::Desk;
use crate::kit;

pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    kit::title(ui, desk.words.text(Text::Title), "", "", desk.p);
}
