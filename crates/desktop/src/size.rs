//! The size of all of the window: what the keeper chose, and how much of it the window has room for.
//!
//! Larger text leaves fewer points for the window's parts. What is chosen stands even where the window is too small
//! for it now, and is taken as soon as there is room.

use egui::{Context, Id, Rect, Ui, Vec2, vec2};
use words::Words;
use words::texts::Files as Text;

use crate::theme::{self, colour};
use crate::{editor::Editor, kit};

/// Sizes that all of the window can have, percent.
const SIZES: [u32; 5] = [75, 100, 125, 150, 200];
/// The fewest points in which the window's parts find room.
const LEAST_POINTS: Vec2 = vec2(820.0, 540.0);
/// Sizes that differ by less are one.
const SAME: f32 = 1e-3;

fn kept() -> Id {
    Id::unique("chosen size")
}

/// The size that was chosen, 1 as the window is made.
pub(crate) fn chosen(ctx: &Context) -> f32 {
    ctx.data(|data| data.get_temp(kept())).unwrap_or(1.0)
}

/// Chooses the size of the menu that comes nearest.
pub(crate) fn choose(ctx: &Context, size: f32) {
    let off = |percent: &u32| (*percent as f32 / 100.0 - size).abs();
    let nearest = SIZES.into_iter().min_by(|one, other| off(one).total_cmp(&off(other)));
    let size = nearest.map_or(1.0, |percent| percent as f32 / 100.0);
    ctx.data_mut(|data| data.insert_temp(kept(), size));
    ctx.request_repaint();
}

/// Chooses the next larger size, or the next smaller.
pub(crate) fn step(ctx: &Context, larger: bool) {
    let now = chosen(ctx) * 100.0;
    let next = if larger {
        SIZES.into_iter().find(|&percent| percent as f32 > now + 0.5)
    } else {
        SIZES.into_iter().rev().find(|&percent| (percent as f32) < now - 0.5)
    };
    if let Some(percent) = next {
        choose(ctx, percent as f32 / 100.0);
    }
}

/// Gives the window the chosen size, or as much of it as its parts find room with.
pub(crate) fn fit(ctx: &Context, all: Rect) {
    let zoom = ctx.zoom_factor();
    let most = (zoom * all.width() / LEAST_POINTS.x).min(zoom * all.height() / LEAST_POINTS.y).max(1.0);
    let size = chosen(ctx).min(most);
    if (zoom - size).abs() > SAME {
        ctx.set_zoom_factor(size);
    }
}

/// The choices, and what the window allows where it is less than what is chosen.
pub(crate) fn choices(ui: &mut Ui, editor: &Editor) {
    let (words, p) = (editor.words(), editor.theme().palette());
    let now = chosen(ui.ctx());
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 2.0;
        for percent in SIZES {
            let size = percent as f32 / 100.0;
            if kit::choice(ui, &words.percent(f64::from(size)), (now - size).abs() < SAME, p).clicked() {
                choose(ui.ctx(), size);
            }
        }
    });
    if let Some(sentence) = allowed(ui.ctx(), words) {
        ui.add_space(4.0);
        kit::prose(ui, &sentence, theme::regular(11.0), colour(p.ink2));
    }
}

fn allowed(ctx: &Context, words: Words) -> Option<String> {
    let size = ctx.zoom_factor();
    let less = size < chosen(ctx) - SAME;
    less.then(|| words.say(Text::SizeAllowed, &[("size", &words.percent(f64::from(size)))]))
}
