//! A page as ink: what the pen writes and a window can preview.

use drawing::Ink;

/// One page, in points from its top left corner.
#[derive(Clone, Debug, PartialEq)]
pub struct Page {
    /// Width and height.
    pub size: [f32; 2],
    /// The map, which is cut off at its frame; it is painted first.
    pub map: Option<Framed>,
    /// Everything else.
    pub ink: Vec<Ink>,
}

/// Ink that is cut off at a frame.
#[derive(Clone, Debug, PartialEq)]
pub struct Framed {
    /// Left, top, right and bottom of the frame.
    pub frame: [f32; 4],
    /// The ink.
    pub ink: Vec<Ink>,
}
