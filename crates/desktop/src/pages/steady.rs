//! What the hand is on stays where it is while lines above it come and go.
//!
//! A figure that is typed may settle a finding or bring one: lines over the field vanish or appear, and the next row would
//! stand where the hand was. The field that has the keyboard, or what was clicked last on the page, is held where it
//! stands in the window; the page moves about it.

use egui::scroll_area::ScrollAreaOutput;
use egui::{Context, Id, Rect, ScrollArea};

use crate::editor::Page;

/// Lines that move by less are where they were, points.
const STILL: f32 = 0.5;

/// What is held, and how far below the page's beginning it stands.
#[derive(Clone, Copy, Default)]
struct Held {
    on: Option<Id>,
    below: f32,
    /// Where the page is to be scrolled to in the next frame, so that it stays where it stands in the window.
    to: Option<f32>,
}

/// Begins the page anew: nothing is held.
pub(super) fn from_the_top(ctx: &Context, page: Page) {
    ctx.data_mut(|data| data.insert_temp(kept(page), Held { to: Some(0.0), ..Held::default() }));
}

/// The page's scroll area, moved about what is held.
pub(super) fn scrolled(ctx: &Context, page: Page, area: ScrollArea) -> ScrollArea {
    let to = ctx.data_mut(|data| data.get_temp_mut_or_default::<Held>(kept(page)).to.take());
    match to {
        Some(offset) => area.vertical_scroll_offset(offset),
        None => area,
    }
}

/// Holds what the hand is on; `top` is where the page's content begins in the window. What stands beside the content, as
/// the names at its foot do, does not move with it and holds nothing.
pub(super) fn hold(
    ctx: &Context,
    page: Page,
    (rect, top): (Rect, f32),
    beside: impl Fn(Id) -> bool,
    output: &ScrollAreaOutput<()>,
) {
    let held = ctx.data_mut(|data| *data.get_temp_mut_or_default::<Held>(kept(page)));
    let clicked = ctx.interaction_snapshot(|now| now.clicked);
    let focused = || ctx.memory(egui::Memory::focused);
    let Some(on) = clicked.or_else(focused).or(held.on) else { return };
    let Some(place) = ctx.read_response(on).map(|response| response.rect) else { return };
    let mut now = Held { on: Some(on), below: place.top() - top, to: None };
    if !rect.x_range().contains(place.center().x) || beside(on) {
        // The hand went elsewhere.
        now = Held::default();
    } else if held.on == Some(on) && (now.below - held.below).abs() > STILL {
        // No farther than the page goes: beyond it would spring back, and come again.
        let most = (output.content_size.y - output.inner_rect.height()).max(0.0);
        now.to = Some((output.state.clamped_offset().y + now.below - held.below).clamp(0.0, most));
        ctx.request_discard("lines above the hand came or went");
    }
    ctx.data_mut(|data| data.insert_temp(kept(page), now));
}

fn kept(page: Page) -> Id {
    Id::unique(("what the hand is on", page))
}
