//! Other shapes of the same nets: what is asked, what the searcher found, which one is looked at, and taking it.

mod basis;
mod table;
mod taking;

use drawing::Ghost;
use exchange::compare::{Better, Column};
use exchange::shapes;
use workup::candidates::{Ask, Candidate, CandidateFault, CandidateNote, FREE_SIDES, Family};
use workup::stocking;

use super::{Editor, Page};
use crate::facts;
use crate::searcher::{ByFamily, Found, Job};

use basis::Basis;
pub use table::{Row, RowOf};
pub use taking::Taken;

/// A found shape by what does not change while it grows: its family, and the wall that it leans on.
pub type ShapeKey = (Family, Option<usize>);

/// What a view says about other shapes.
#[derive(Clone, Debug)]
pub enum ShapesMessage {
    /// Open the page of other shapes, or go back to the run.
    Open(bool),
    /// Ask for so many nets.
    Nets(u32),
    /// Ask that the coop lies inside, or no more.
    Coop(bool),
    /// Ask for shapes that borrow a wall, or no more.
    Walls(bool),
    /// Ask for a free outline of so many sides.
    Sides(u32),
    /// Search again.
    Look,
    /// Leave the search where it is.
    Stop,
    /// The searcher found more.
    Found(Box<Found>),
    /// Look at a shape, or at none.
    Choose(Option<ShapeKey>),
    /// The pointer is on a shape's row, or on none.
    Hover(Option<ShapeKey>),
    /// Order the table by a column; once more turns the order.
    Sort(Column),
    /// The shape becomes the run in hand.
    Take(ShapeKey),
    /// The shape becomes a run of its own beside the others.
    Keep(ShapeKey),
}

/// How far a search has come.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Progress {
    /// Nothing is searched.
    #[default]
    Rests,
    /// The searcher is yet to be asked.
    ToAsk,
    /// It searches the nets that were asked for.
    Looks,
    /// Those are searched; the other counts of nets follow.
    Counts,
}

/// Everything about other shapes.
#[derive(Clone, Debug)]
pub struct Shapes {
    open: bool,
    nets: Option<u32>,
    coop: bool,
    walls: bool,
    sides: u32,
    number: u64,
    progress: Progress,
    /// Whether the searcher is to let go.
    to_stop: bool,
    of: Option<Basis>,
    found: Vec<Candidate>,
    notes: Vec<CandidateNote>,
    fault: Option<CandidateFault>,
    by_nets: Vec<(u32, ByFamily)>,
    chosen: Option<ShapeKey>,
    hovered: Option<ShapeKey>,
    sort: Option<(Column, bool)>,
    /// What was just taken, until anything else changes.
    taken: Option<Taken>,
}

impl Default for Shapes {
    fn default() -> Self {
        Self {
            open: false,
            nets: None,
            coop: false,
            walls: false,
            sides: FREE_SIDES,
            number: 0,
            progress: Progress::Rests,
            to_stop: false,
            of: None,
            found: Vec::new(),
            notes: Vec::new(),
            fault: None,
            by_nets: Vec::new(),
            chosen: None,
            hovered: None,
            sort: None,
            taken: None,
        }
    }
}

fn key(candidate: &Candidate) -> ShapeKey {
    (candidate.family, candidate.wall)
}

impl Shapes {
    /// Whether the page of other shapes is open.
    pub fn is_open(&self) -> bool {
        self.open
    }

    /// How far the search has come.
    pub fn progress(&self) -> Progress {
        self.progress
    }

    /// Whether the coop has to lie inside, and whether walls may be borrowed.
    pub fn wants(&self) -> (bool, bool) {
        (self.coop, self.walls)
    }

    /// Sides of the free outline.
    pub fn sides(&self) -> u32 {
        self.sides
    }

    /// What was found, the largest first.
    pub fn found(&self) -> &[Candidate] {
        &self.found
    }

    /// What should be known about the ground.
    pub fn notes(&self) -> &[CandidateNote] {
        &self.notes
    }

    /// Why there is nothing.
    pub fn fault(&self) -> Option<&CandidateFault> {
        self.fault.as_ref()
    }

    /// The largest ground of each family by count of nets.
    pub fn by_nets(&self) -> &[(u32, ByFamily)] {
        &self.by_nets
    }

    /// The shape that is looked at.
    pub fn chosen(&self) -> Option<&Candidate> {
        self.of_key(self.chosen?)
    }

    /// What was just taken; `None` once anything else changed or the page was left.
    pub fn taken(&self) -> Option<&Taken> {
        self.taken.as_ref()
    }

    /// The shape whose row the pointer is on.
    pub fn hovered(&self) -> Option<ShapeKey> {
        self.hovered
    }

    /// The key of the shape that is looked at.
    pub fn chosen_key(&self) -> Option<ShapeKey> {
        self.chosen
    }

    /// The shape of that key.
    pub fn of_key(&self, wanted: ShapeKey) -> Option<&Candidate> {
        self.found.iter().find(|candidate| key(candidate) == wanted)
    }

    /// The column by which the table is ordered, and whether the least comes first.
    pub fn sort(&self) -> Option<(Column, bool)> {
        self.sort
    }

    fn forget(&mut self) {
        self.found.clear();
        self.notes.clear();
        self.fault = None;
        self.by_nets.clear();
        self.hovered = None;
    }
}

impl Editor {
    /// Everything about other shapes.
    pub fn shapes(&self) -> &Shapes {
        &self.shapes
    }

    /// How many nets other shapes are looked for with.
    pub fn shapes_nets(&self) -> u32 {
        let laid = self.run().and_then(|(_, worked)| worked.lay.as_ref()).map_or(0, |lay| lay.nets.len() as u32);
        let owned = self.nets_owned();
        self.shapes.nets.unwrap_or(if laid == 0 { owned } else { laid }).clamp(1, owned.max(1))
    }

    /// How many nets the store has.
    pub fn nets_owned(&self) -> u32 {
        u32::try_from(facts::owned(&self.plan)).unwrap_or(u32::MAX)
    }

    /// The shape under the pointer, else the one that is looked at, for the map.
    pub fn shape_ghost(&self) -> Option<Ghost> {
        if !self.shapes.open || self.page != Page::Run {
            return None;
        }
        let candidate =
            self.shapes.hovered.and_then(|hovered| self.shapes.of_key(hovered)).or_else(|| self.shapes.chosen())?;
        Some(Ghost::named(shapes::name(candidate, self.words), candidate.outline.clone(), candidate.wall.is_none()))
    }

    /// What the searcher is to do: a job, or to let go of one.
    pub fn search_request(&mut self) -> Option<Option<Job>> {
        if self.shapes.progress == Progress::ToAsk && self.held.is_none() {
            self.shapes.number += 1;
            self.shapes.progress = Progress::Looks;
            self.shapes.to_stop = false;
            self.shapes.of = Some(Basis::of(&self.plan, self.run().map(|(run, _)| run)));
            let Shapes { coop, walls, sides, number, .. } = self.shapes;
            let like = self.run().map(|(run, _)| run.id.clone());
            let ask = Ask { nets: self.shapes_nets(), coop, walls, free_sides: sides, like };
            return Some(Some(Job { number, plan: self.plan.clone(), ask, owned: self.nets_owned() }));
        }
        std::mem::take(&mut self.shapes.to_stop).then_some(None)
    }

    pub(super) fn shapes_said(&mut self, message: ShapesMessage) {
        let shapes = &mut self.shapes;
        match message {
            ShapesMessage::Open(true) => self.open_shapes(),
            ShapesMessage::Open(false) => {
                shapes.open = false;
                shapes.taken = None;
                self.stop_search();
            }
            ShapesMessage::Nets(nets) => {
                shapes.nets = Some(nets);
                self.look_for_shapes();
            }
            ShapesMessage::Coop(inside) => {
                shapes.coop = inside;
                self.look_for_shapes();
            }
            ShapesMessage::Walls(borrowed) => {
                shapes.walls = borrowed;
                self.look_for_shapes();
            }
            ShapesMessage::Sides(sides) => {
                shapes.sides = sides;
                self.look_for_shapes();
            }
            ShapesMessage::Look => self.look_for_shapes(),
            ShapesMessage::Stop => self.stop_search(),
            ShapesMessage::Found(found) => self.shapes_found(*found),
            ShapesMessage::Choose(chosen) => shapes.chosen = chosen,
            ShapesMessage::Hover(hovered) => shapes.hovered = hovered,
            ShapesMessage::Sort(column) => {
                let least_first = column.better() == Better::Fewer;
                shapes.sort = match shapes.sort {
                    Some((sorted, least_first)) if sorted == column => Some((column, !least_first)),
                    _ => Some((column, least_first)),
                };
            }
            ShapesMessage::Take(wanted) => self.take_shape(wanted),
            ShapesMessage::Keep(wanted) => self.keep_shape(wanted),
        }
    }

    fn stop_search(&mut self) {
        if self.shapes.progress != Progress::Rests {
            self.shapes.progress = Progress::Rests;
            self.shapes.to_stop = true;
        }
    }

    fn look_for_shapes(&mut self) {
        self.shapes.forget();
        self.shapes.progress = Progress::ToAsk;
    }

    /// Whether what was found is of the ground, the store and the run as they are.
    fn found_for_this(&self) -> bool {
        self.shapes.of.as_ref().is_some_and(|of| of.holds(&self.plan, self.run().map(|(run, _)| run)))
    }

    /// The page was opened: what was found for this ground before is good still.
    fn open_shapes(&mut self) {
        self.shapes.open = true;
        if !self.found_for_this() || self.shapes.found.is_empty() {
            self.look_for_shapes();
        }
    }

    /// The plan changed: shapes that were found for another ground are none.
    pub(super) fn shapes_follow(&mut self) {
        self.shapes.taken = None;
        let rule = stocking::chosen(&self.plan);
        for candidate in &mut self.shapes.found {
            candidate.compared = std::mem::take(&mut candidate.compared).counted(rule);
        }
        if self.shapes.of.is_none() || self.found_for_this() {
            return;
        }
        self.shapes.of = None;
        self.shapes.forget();
        self.shapes.to_stop = true;
        self.shapes.progress = if self.shapes.open { Progress::ToAsk } else { Progress::Rests };
    }

    fn shapes_found(&mut self, found: Found) {
        let shapes = &mut self.shapes;
        if found.number != shapes.number || !matches!(shapes.progress, Progress::Looks | Progress::Counts) {
            return;
        }
        shapes.progress = match (found.all_done, found.done) {
            (true, _) => Progress::Rests,
            (false, true) => Progress::Counts,
            (false, false) => Progress::Looks,
        };
        shapes.by_nets = found.by_nets;
        match found.candidates {
            Ok((candidates, notes)) => {
                shapes.found = candidates;
                shapes.notes = notes;
            }
            Err(fault) => shapes.fault = Some(fault),
        }
    }
}
