//! What a page gives the map to show from the next frame on, remembered by egui alone.

use std::sync::Arc;

use drawing::Ghost;
use egui::{Id, Ui};

/// What was given under that name.
pub(super) fn given(ui: &Ui, name: &str) -> Option<Arc<Ghost>> {
    ui.data(|data| data.get_temp::<Option<Arc<Ghost>>>(Id::unique(name))).flatten()
}

/// Gives the map a ghost, or none.
pub(super) fn give(ui: &Ui, name: &str, ghost: Option<Ghost>) {
    if given(ui, name).as_deref() != ghost.as_ref() {
        ui.data_mut(|data| data.insert_temp(Id::unique(name), ghost.map(Arc::new)));
        ui.ctx().request_repaint();
    }
}
