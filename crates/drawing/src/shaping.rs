//! What is shown round a corner while it keeps something: the line on which it goes, thin.

use plan::Point;

use crate::ink::{Ink, in_theme};
use crate::inking::pen::Pen;
use crate::inking::trace::Px;
use crate::view::View;

/// The line's stroke and its dash, pixels.
const WIDE_PX: f64 = 1.25;
const DASH: [f32; 2] = [5.0, 3.0];

/// The ellipse or arc on which a corner goes.
pub fn kept(view: &View, line: &[Point], closed: bool) -> Vec<Ink> {
    let colours = view.theme.palette();
    let mut pen = Pen::default();
    let line: Vec<Px> = line.iter().map(|&at| view.px(at)).collect();
    if closed {
        pen.dashed_ring(&line, WIDE_PX, colours.pick, Some(DASH));
    } else {
        pen.dashed(&line, WIDE_PX, colours.pick, Some(DASH));
    }
    in_theme(pen.ink, view.theme)
}
