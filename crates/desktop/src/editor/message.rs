//! What the views, the keyboard and the threads beside the window say to the editor.

use std::path::PathBuf;

use drawing::{Theme, Thing};
use plan::{Edit, Plan, Point, Rolls, Shape};
use words::{Language, Units};

use super::{BracingMessage, Grid, Lesson, ManyMessage, Page, ShapesMessage, ShapingMessage, UnderlayMessage};
use crate::reckoner::Reckoned;
use crate::tool::{Hand, Tool};
use crate::worker::Answer;

/// What a view, the keyboard or the worker says to the editor.
#[derive(Clone, Debug)]
pub enum Message {
    /// Open a page.
    Open(Page),
    /// Pick something, or nothing.
    Pick(Option<Thing>),
    /// Go where a finding is mended.
    Mend(Thing),
    /// Something is under the pointer, or nothing.
    Hover(Option<Thing>),
    /// Make an edit, as a step of its own or within the open one.
    Make(Edit),
    /// The edits that follow are one step, until [`Message::End`].
    Begin,
    /// The step is done.
    End,
    /// Take a tool to hand.
    Use(Tool),
    /// Open a page and take a tool of it to hand.
    UseOn(Page, Tool),
    /// Catch the hand by that grid.
    Grid(Grid),
    /// Keep dimensions beside what is picked, or not.
    KeepDimensions(bool),
    /// Fold the page away, or unfold it.
    Fold(bool),
    /// The hand did something with the tool.
    Hand(Hand),
    /// Whether nothing catches what is drawn or dragged from now on.
    Free(bool),
    /// Take hold of a corner, of a side by its middle to make a corner of it, or of a whole, at a place.
    Grab(Thing, Point),
    /// Take hold of what is picked by its turning ring.
    GrabTurn(Point),
    /// What is held goes to a place.
    Drag(Point),
    /// The hand rests with what is held.
    Rest,
    /// Let go.
    Drop,
    /// Move what is picked by so many metres east and north.
    Nudge(f64, f64),
    /// Put a thing that is one place there.
    PutAt(Thing, Point),
    /// Move an end of the stretch that is picked, the last or the first, by so many metres east and north.
    NudgeEnd(bool, f64, f64),
    /// Hang a branch of a run at a place of the run's line, metres along it.
    HangAt(usize, usize, f64),
    /// Turn what is picked by so many degrees clockwise.
    Turn(f64),
    /// Give a side of an outline a length, metres.
    SideLength(Shape, usize, f64),
    /// Make the run in hand of whole panels, with so many doubled back.
    FitNets(u32),
    /// Take the nearest outline where none of whole panels exists.
    TakeNearest,
    /// Something about what holds the corners.
    Bracing(BracingMessage),
    /// Something about several things, the clipboard, or what is hidden and locked.
    Many(ManyMessage),
    /// Something about other shapes of the same nets.
    Shapes(ShapesMessage),
    /// Move a corner of the run in hand, by its place in the outline, to a post.
    ToPost(usize),
    /// Something about the shape of what is picked.
    Shaping(ShapingMessage),
    /// Make a second one of what is picked.
    Duplicate,
    /// Take out what is picked.
    Remove,
    /// Esc: let go of what is held, leave the tool, or pick nothing.
    Escape,
    /// Take the last step back.
    Undo,
    /// Do it again.
    Redo,
    /// Go to a place in the list of what was done: so many steps.
    GoTo(usize),
    /// Show figures in those units.
    Units(Units),
    /// Speak that language.
    Language(Language),
    /// Show that theme.
    Theme(Theme),
    /// Show or fold the figures behind the corners' sentences.
    Why(bool),
    /// Show or fold the table of all runs.
    Compare(bool),
    /// The map has that size, and something lies on those parts of it.
    Size([f32; 2], [Option<[f32; 4]>; 2]),
    /// Show all of the plan.
    Fit,
    /// Have that run and the one in hand in sight, where it is not yet.
    InSight(usize),
    /// Zoom about a spot of the map.
    Zoom(f64, drawing::Spot),
    /// Move the map right and down by so many pixels.
    Pan(f32, f32),
    /// Keep the volts along the line of the run in hand as they are, beside what comes.
    KeepCurve,
    /// Let the kept curve of that number of the run in hand go, from 0.
    LetCurveGo(usize),
    /// The worker's answer.
    Worked(Box<Answer>),
    /// The reckoner's answer.
    Reckoned(Box<Reckoned>),
    /// Ask the keeper how many rolls there are.
    AskRolls,
    /// The answer, as it is typed.
    Rolls(Rolls),
    /// Lay the rolls out.
    LayOut,
    /// Back from the question.
    LeaveQuestion,
    /// Begin with an empty plan.
    StartEmpty,
    /// The lesson on the map was learnt, or is not wanted.
    Learnt(Lesson),
    /// The example farm is open.
    Example(Box<Plan>),
    /// Another plan is open, from that file.
    Opened(Box<Plan>, Option<PathBuf>),
    /// What a crash left behind is open.
    Recovered(Box<Plan>, Option<PathBuf>),
    /// The plan was written to that file.
    Saved(PathBuf),
    /// Take a boundary and what it brings into the plan.
    BringIn(Box<Plan>),
    /// Something about the picture beneath the map.
    Underlay(UnderlayMessage),
    /// Take a grid of heights into the plan.
    BringHeights(Box<exchange::heights::Import>),
}
