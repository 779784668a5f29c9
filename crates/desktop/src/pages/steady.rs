//! What the hand is on stays where it is while lines above it come and go, and what was asked for comes into sight.
//!
//! A figure that is typed may settle a finding or bring one: lines over the field vanish or appear, and the next row would
//! stand where the hand was. The field that has the keyboard, or what was clicked last on the page, is held where it
//! stands in the window; the page moves about it.
//!
//! What is asked for is looked for once the page is laid out, since only then is it known where it stands. The page is
//! laid out again from there within the same frame, and what came into sight is then held like all else: what is worked
//! out meanwhile beside the window makes lines above it that would push it out again.

use egui::scroll_area::ScrollAreaOutput;
use egui::{Context, Id, LayerId, Rect, Response, ScrollArea};

use crate::editor::Page;

/// Lines that move by less are where they were, points.
const STILL: f32 = 0.5;
/// Space kept between what came into sight and the page's edges.
const AIR: f32 = 24.0;
/// Space over the head of a section that was asked for.
const OVER_HEAD: f32 = 8.0;
/// Space over a row that is brought up: what it stands under is in sight.
const OVER_ROW: f32 = 72.0;
/// So often the page is laid out for what was asked for before it is let be.
const PASSES: u8 = 8;

/// Something on a page that is found again in the next frame.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Mark {
    /// What can be clicked or typed into.
    Widget(Id),
    /// The same, brought up so that what stands under it is in sight too.
    Row(Id),
    /// A section by its name.
    Section(String),
    /// The page's beginning.
    Top,
    /// The first of those that is on the page.
    First(Vec<Mark>),
}

/// What is held, and how far below the page's beginning it stands.
#[derive(Clone, Default)]
struct Held {
    on: Option<Mark>,
    /// Whether it was asked for: then it is held although the keyboard is elsewhere.
    asked: bool,
    below: f32,
    /// Where the page is to be scrolled to in the next frame, so that it stays where it stands in the window.
    to: Option<f32>,
}

/// A page as it was laid out in this frame.
pub(super) struct Laid<'a> {
    /// Its place in the window.
    pub(super) rect: Rect,
    /// What it is painted on: a menu lies over it and is no part of it.
    pub(super) layer: LayerId,
    /// How much of it the names at its foot cover.
    pub(super) foot: f32,
    /// Where its content begins in the window.
    pub(super) top: f32,
    /// Its sections, with the height at which each begins.
    pub(super) sections: &'a [(f32, String)],
}

impl Laid<'_> {
    /// Whether something stands on this page; what is out of sight on it reaches nowhere in the window.
    fn is_on(&self, response: &Response) -> bool {
        let seen = response.interact_rect;
        let beside = seen.is_positive() && !self.rect.intersects(seen);
        response.layer_id == self.layer && self.rect.x_range().contains(response.rect.center().x) && !beside
    }

    /// From where to where something reaches; `None` where it is not on this page.
    fn place(&self, ctx: &Context, mark: &Mark) -> Option<Rect> {
        match mark {
            Mark::Top => Some(Rect::from_x_y_ranges(self.rect.x_range(), self.top..=self.top)),
            Mark::First(marks) => marks.iter().find_map(|mark| self.place(ctx, mark)),
            Mark::Widget(id) | Mark::Row(id) => ctx.read_response(*id).map(|response| response.rect),
            Mark::Section(name) => {
                let (top, _) = self.sections.iter().find(|(_, head)| head == name)?;
                Some(Rect::from_x_y_ranges(self.rect.x_range(), *top..=*top))
            }
        }
    }

    /// The one of several marks that is on this page.
    fn meant(&self, ctx: &Context, mark: Mark) -> Mark {
        let Mark::First(marks) = mark else { return mark };
        let here = marks.iter().find(|mark| self.place(ctx, mark).is_some()).cloned();
        here.unwrap_or(Mark::First(marks))
    }

    /// How far down the page has to go for a place to be in sight.
    fn short_of(&self, mark: &Mark, place: Rect) -> f32 {
        match mark {
            Mark::Row(_) => return place.top() - OVER_ROW - self.rect.top(),
            Mark::Section(_) => return place.top() - OVER_HEAD - self.rect.top(),
            Mark::Top => return place.top() - self.rect.top(),
            Mark::Widget(_) | Mark::First(_) => {}
        }
        let (above, below) =
            (place.top() - AIR - self.rect.top(), place.bottom() + AIR - (self.rect.bottom() - self.foot));
        // What is higher than the page is read from its beginning.
        if above < 0.0 { above } else { below.min(above).max(0.0) }
    }
}

/// Asks for something to come into sight on the page that is shown next; `None` takes that back.
pub(crate) fn seek(ctx: &Context, mark: Option<Mark>) {
    ctx.data_mut(|data| data.insert_temp(sought(), mark.map(|mark| (mark, PASSES))));
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

/// Brings into sight what was asked for, else holds what the hand is on. What stands beside the content, as the names at
/// its foot do, does not move with it and holds nothing.
pub(super) fn hold(
    ctx: &Context,
    page: Page,
    laid: &Laid<'_>,
    beside: impl Fn(Id) -> bool,
    output: &ScrollAreaOutput<()>,
) {
    let offset = output.state.clamped_offset().y;
    // No farther than the page goes: beyond it would spring back, and come again.
    let most = (output.content_size.y - output.inner_rect.height()).max(0.0);
    let moved = |by: f32| (offset + by).clamp(0.0, most);
    let held = ctx.data_mut(|data| data.get_temp_mut_or_default::<Held>(kept(page)).clone());
    let asked = ctx.data_mut(|data| data.get_temp_mut_or_default::<Option<(Mark, u8)>>(sought()).take());
    let now = if let Some((mark, passes)) = asked {
        let mark = laid.meant(ctx, mark);
        let Some(place) = laid.place(ctx, &mark) else { return };
        let to = moved(laid.short_of(&mark, place));
        let short = (to - offset).abs() > STILL && passes > 0;
        if short {
            ctx.data_mut(|data| data.insert_temp(sought(), Some((mark.clone(), passes - 1))));
        }
        Held { on: Some(mark), asked: true, below: place.top() - laid.top, to: short.then_some(to) }
    } else {
        let clicked = ctx.interaction_snapshot(|now| now.clicked);
        let on_page = |id: Id| ctx.read_response(id).is_none_or(|response| laid.is_on(&response)) && !beside(id);
        let focused = || ctx.memory(egui::Memory::focused).filter(|&id| !held.asked || on_page(id));
        let hand = clicked.or_else(focused);
        let by_keys = clicked.is_none() && hand.is_some() && !ctx.input(|input| input.pointer.any_down());
        let Some(on) = hand.map(Mark::Widget).or_else(|| held.on.clone()) else { return };
        let Some(place) = laid.place(ctx, &on) else { return };
        if hand.is_some_and(|id| !on_page(id)) {
            // The hand went elsewhere.
            Held::default()
        } else {
            let below = place.top() - laid.top;
            let by = if held.on.as_ref() == Some(&on) {
                below - held.below
            } else if by_keys {
                // The keyboard went on to what is out of sight.
                laid.short_of(&on, place)
            } else {
                0.0
            };
            let to = Some(moved(by)).filter(|to| by.abs() > STILL && (to - offset).abs() > STILL);
            Held { on: Some(on), asked: held.asked && hand.is_none(), below, to }
        }
    };
    if now.to.is_some() {
        ctx.request_discard("lines above what is held came or went");
        ctx.request_repaint();
    }
    ctx.data_mut(|data| data.insert_temp(kept(page), now));
}

fn kept(page: Page) -> Id {
    Id::unique(("what the hand is on", page))
}

fn sought() -> Id {
    Id::unique("what is to come into sight")
}
