//! Icons and small signs, drawn as shapes: a 16 point grid, 1.5 strokes, no fill but dots.

mod drawn;
mod signs;

pub(crate) use drawn::icon;
pub(crate) use signs::{
    Kite, MARK, MARK_LINE, MARK_POST, TAG, chevron, cut_plate, end_post, goes_over, kite, mark, number_plate,
    small_outline, tag,
};

/// What an icon shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Icon {
    /// An outline with its corners.
    Outline,
    /// An arrow that hooks back.
    Undo,
    /// An arrow that hooks forward.
    Redo,
    /// Four corners: all of the plan in sight.
    Fit,
    /// Rows side by side.
    Compare,
    /// A square within a hexagon: other shapes.
    Shapes,
    /// A sheet with a turned corner.
    Paper,
    /// A sun: the light theme.
    Light,
    /// A moon: the dark theme.
    Dark,
    /// One more.
    More,
    /// One less.
    Less,
    /// The page before.
    Before,
    /// The page after.
    After,
    /// A roll of netting being unrolled.
    Coil,
    /// A fringe in a box: a keep-out.
    KeepOut,
    /// Waves: water.
    Water,
    /// A gable and a door: the coop.
    Coop,
    /// A field gate: the gateway.
    Gate,
    /// An arrow into a box: something brought in.
    BringIn,
    /// A box with three ticks: a tape.
    Tape,
    /// Lines one below the other: a list.
    List,
    /// A clock turned back: what was done.
    History,
    /// A ring and its handle: find.
    Find,
    /// Two squares: a second one.
    Double,
    /// A cross: taken out.
    TakeOut,
    /// A cross over a slope: a height.
    Height,
    /// A stem with two arms on the ground: a fallen branch.
    Branch,
    /// A bolt bent once: long grass.
    Grass,
    /// A T over a wedge: a peg.
    Peg,
    /// Two ends with bars: a cut line.
    CutLine,
    /// Three dots: a bad join.
    BadJoin,
    /// Two ends and a cross between: a dead net.
    DeadNet,
    /// Ground with cracks: a dry earth.
    DryEarth,
    /// Courses of blocks: a wall.
    Wall,
    /// Rounds in a row: a hedge.
    Hedge,
    /// Rails on two posts: a permanent fence.
    Fence,
    /// A crown on its stem: shade.
    Shade,
    /// A letter: words.
    Letter,
    /// Rolls on the ground: the drop point.
    Drop,
    /// A hill under a sun, in a frame: a picture.
    Picture,
    /// Two rings and the tape between them: known points.
    Known,
    /// A lead that meets a net: the feed.
    Feed,
    /// A box with a pulse: the energizer.
    Energizer,
    /// Level strokes in staggered rows: damp ground.
    Damp,
    /// An open eye: shown.
    Eye,
    /// A closed eye: hidden.
    Shut,
    /// A closed lock.
    Locked,
    /// An open lock.
    Unlocked,
    /// A square and a right angle in its corner: squared up.
    Square,
    /// A corner cut over two posts.
    CutCorner,
    /// Two wedges either side of an upright line: east and west change places.
    MirrorEast,
    /// Two wedges either side of a level line: north and south do.
    MirrorNorth,
    /// Two wedges either side of a slanted line: mirrored over a side.
    MirrorSide,
    /// Two outlines that share a side, the second mirrored.
    Beside,
    /// Two outlines alike that share a side.
    BesideAsIs,
    /// A cross at a corner and an arc: turned about it.
    Pivot,
    /// A cross in a ring: turned about the middle.
    PivotMiddle,
}
