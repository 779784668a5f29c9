//! Several things at once: what is picked beside what is picked, and what can be said about all of it.
//!
//! `Editor::picked` stays the foremost, whose page is open; the others stand beside it.

mod everything;
mod many;
mod places;
mod together;
mod without;

use drawing::Thing;
use plan::Point;

use super::page::{page_of, page_of_finding};
use super::{Editor, Page};
use crate::tool::Tool;

pub(super) use many::Many;
pub(crate) use places::coop_at;
pub(super) use places::{middle, places_of};
pub(super) use without::{coop_out, fewest, in_use};

/// What is said about several things, their clipboard, and what of the map is hidden or locked.
#[derive(Clone, Debug)]
pub enum ManyMessage {
    /// Pick something beside what is picked, or let go of it.
    Also(Thing),
    /// Pick what lies wholly between two corners of a rectangle; beside what is picked, or in its place.
    Within(Point, Point, bool),
    /// Pick everything of the kind that the open page is about.
    All,
    /// Whether a drag draws a rectangle to pick by.
    ByRectangle(bool),
    /// Move what is picked by so many panels of its net east and north.
    NudgePanels(f64, f64),
    /// Put what is picked on the clipboard.
    Copy,
    /// The same, and take it out.
    Cut,
    /// Put in what stands on the clipboard: with its middle at a place, or a step beside where it was.
    Paste(String, Option<Point>),
    /// Hide something, or show it.
    Hide(Thing, bool),
    /// Hide what is picked, or show it where all of it is hidden.
    HidePicked,
    /// Show everything that is hidden.
    ShowAll,
    /// Lock something, or unlock it.
    Lock(Thing, bool),
    /// Lock what is picked, or unlock it where all of it is locked.
    LockPicked,
    /// Give something a name.
    Rename(Thing, String),
    /// A name was asked for where there is none to give.
    NoName,
    /// Open the list of everything on the map, or close it.
    List(bool),
}

/// What is picked beside the foremost, and how more is picked.
#[derive(Clone, Debug, Default)]
pub(super) struct Chosen {
    /// The others, in the order in which they were picked.
    pub(super) others: Vec<Thing>,
    /// Whether a drag draws a rectangle.
    pub(super) by_rectangle: bool,
    /// Whether the list of everything is open.
    pub(super) listing: bool,
    /// What is to go to the clipboard.
    pub(super) copied: Option<String>,
}

/// What is picked by a click with Shift on a thing: the whole of a side, a door or a post; `None` for what only tells.
fn choosable(thing: Thing) -> Option<Thing> {
    match thing {
        Thing::Post { run, .. } => Some(Thing::Run { run }),
        Thing::RunSide { .. }
        | Thing::BoundarySide { .. }
        | Thing::KeepOutSide { .. }
        | Thing::ShadeSide { .. }
        | Thing::DampSide { .. }
        | Thing::BranchSide { .. }
        | Thing::ZoneEnd { .. }
        | Thing::CoopDoor => Some(thing.whole()),
        Thing::Reading { .. } | Thing::Finding { .. } | Thing::Brace { .. } => None,
        thing => Some(thing),
    }
}

impl Editor {
    /// Everything that is picked, the foremost first.
    pub fn chosen(&self) -> Vec<Thing> {
        self.picked.into_iter().chain(self.chosen.others.iter().copied()).collect()
    }

    /// Whether more than one thing is picked.
    pub fn has_several(&self) -> bool {
        self.picked.is_some() && !self.chosen.others.is_empty()
    }

    /// Whether a thing, or the whole that it is a side of, is one of several that are picked.
    pub fn is_one_of_several(&self, thing: Thing) -> bool {
        let is_chosen = |thing: Thing| self.picked == Some(thing) || self.chosen.others.contains(&thing);
        let of_run = || thing.run().is_some_and(|run| is_chosen(Thing::Run { run }));
        self.has_several() && (is_chosen(thing) || choosable(thing).is_some_and(is_chosen) || of_run())
    }

    /// Whether a drag draws a rectangle to pick by.
    pub fn picks_by_rectangle(&self) -> bool {
        self.chosen.by_rectangle && self.tool == Tool::Pick
    }

    /// Whether the list of everything on the map is open.
    pub fn is_listing(&self) -> bool {
        self.chosen.listing && self.question.is_none()
    }

    /// The page that picking a thing opens: of a finding the one that it stands on.
    pub(super) fn opens(&self, thing: Thing) -> Option<Page> {
        match thing {
            Thing::Finding { run, finding } => {
                self.finding(run, finding).map(|one| page_of_finding(one, run.is_none()))
            }
            thing => page_of(thing),
        }
    }

    /// The page that is about a thing: its own, else the open one.
    pub(crate) fn page_about(&self, thing: Thing) -> Page {
        let own = matches!(thing, Thing::Coop { .. }).then_some(Page::Ground);
        let of_run = || thing.run().map(|_| Page::Run);
        self.opens(thing).or(own).or_else(of_run).unwrap_or(self.page)
    }

    /// What is to go to the clipboard, once.
    pub fn take_copied(&mut self) -> Option<String> {
        self.chosen.copied.take()
    }

    pub(super) fn many_said(&mut self, said: ManyMessage) {
        if self.question.is_some() {
            return;
        }
        match said {
            ManyMessage::Also(thing) => self.pick_also(thing),
            ManyMessage::Within(one, other, also) => self.pick_within(one, other, also),
            ManyMessage::All => self.pick_things(self.all_of_page()),
            ManyMessage::ByRectangle(on) => {
                self.lay_by();
                self.tool = Tool::Pick;
                self.snapped = None;
                self.chosen.by_rectangle = on;
            }
            ManyMessage::NudgePanels(east, north) => {
                if let Some(panel_m) = self.panel_of_picked_m() {
                    self.nudge(east * panel_m, north * panel_m);
                }
            }
            ManyMessage::Copy => self.copy(),
            ManyMessage::Cut => {
                self.copy();
                if self.chosen.copied.is_some() {
                    self.remove();
                }
            }
            ManyMessage::Paste(text, at) => self.paste(&text, at),
            ManyMessage::Hide(thing, hidden) => self.hide(&[thing], hidden),
            ManyMessage::HidePicked => self.hide_picked(),
            ManyMessage::ShowAll => self.show_all(),
            ManyMessage::Lock(thing, locked) => self.lock(&[thing], locked),
            ManyMessage::LockPicked => self.lock_picked(),
            ManyMessage::Rename(thing, name) => self.rename(thing, name),
            ManyMessage::NoName => self.notice = Some(words::texts::Window::NoName),
            ManyMessage::List(open) => {
                self.chosen.listing = open;
                self.folded &= !open;
            }
        }
    }

    fn pick_also(&mut self, thing: Thing) {
        let Some(thing) = choosable(thing) else { return };
        if self.picked == Some(thing) {
            self.picked = self.chosen.others.pop();
        } else if let Some(place) = self.chosen.others.iter().position(|&other| other == thing) {
            self.chosen.others.remove(place);
        } else {
            self.chosen.others.extend(self.picked);
            self.foremost(thing);
        }
    }

    fn foremost(&mut self, thing: Thing) {
        self.picked = Some(thing);
        if let Some(run) = thing.run() {
            self.run = run;
        }
    }

    /// Picks several things in place of what was picked, the last of them foremost.
    pub(super) fn pick_things(&mut self, mut things: Vec<Thing>) {
        let last = things.pop();
        self.picked = None;
        if let Some(last) = last {
            self.foremost(last);
        }
        self.chosen.others = things;
    }
}
