//! The dimensions beside what is drawn, dragged, or picked and kept: lengths, turns, area.

use drawing::Thing;
use drawing::dimensions::Shown;
use plan::{Plan, Point, Shape};
use words::texts::Guides as Text;
use workup::shaping::is_closed;

use super::hold::Hold;
use super::snap::point;
use super::{Editor, corner_of};
use crate::tool::{Drawn, Tool};

impl Editor {
    /// The dimensions that are shown: of what is drawn, dragged, or picked and kept.
    pub fn dimensions(&self) -> Vec<Shown> {
        let drawn = match &self.tool {
            Tool::Outline { of, corners, pointer: Some(pointer), typed, .. } if *of != Drawn::Run => {
                of_drawn(*of, corners, typed.place(corners, *pointer))
            }
            _ => None,
        };
        let held = self.held.as_ref().and_then(|held| match &held.what {
            Hold::Corner(grip) => of_dragged(&self.plan, &grip.shape, grip.corner),
            Hold::Slide(slide) => of_slid(&self.plan, &slide.shape, slide.side),
            _ => None,
        });
        let kept = self.picked.filter(|_| self.keeps_dimensions() && self.tool == Tool::Pick && held.is_none());
        let kept = kept.and_then(|thing| of_kept(&self.plan, thing));
        drawn.into_iter().chain(held).chain(kept).collect()
    }

    /// The dimensions in words.
    pub fn dimensions_said(&self) -> Option<String> {
        let words = self.words;
        let mut figures = Vec::new();
        for shown in self.dimensions() {
            for &side in &shown.sides {
                let Some([from, to]) = shown.side(side) else { continue };
                let (one, other) = ((side + 1).to_string(), ((side + 1) % shown.outline.len() + 1).to_string());
                let length = words.length(crate::tool::apart_m(from, to));
                figures.push(words.say(Text::SideFigure, &[("from", &one), ("to", &other), ("length", &length)]));
            }
            for &corner in &shown.turns {
                let Some(turn_deg) = shown.turn_deg(corner) else { continue };
                let (number, degrees) = ((corner + 1).to_string(), words.degrees(turn_deg));
                figures.push(words.say(Text::TurnFigure, &[("number", &number), ("degrees", &degrees)]));
            }
            if let Some((area_m2, _)) = shown.area {
                figures.push(words.say(Text::AreaFigure, &[("area", &words.area(area_m2))]));
            }
        }
        (!figures.is_empty()).then(|| words.say(Text::DimensionsNode, &[("figures", &figures.join(", "))]))
    }
}

fn area_m2(outline: &[Point], closed: bool) -> Option<f64> {
    let places: Vec<_> = outline.iter().copied().map(point).collect();
    (closed && places.len() > 2).then(|| geometry::Outline::closed(&places).area_m2())
}

/// The side in hand, the turn before it and, where it closes, the last side and the area.
fn of_drawn(of: Drawn, corners: &[Point], next: Point) -> Option<Shown> {
    let last = corners.len().checked_sub(1)?;
    let outline: Vec<Point> = corners.iter().copied().chain([next]).collect();
    let closed = of.closes() && outline.len() > 2;
    let mut shown = Shown { sides: vec![last], turns: vec![last], closed, ..Shown::default() };
    if closed {
        shown.sides.push(last + 1);
        shown.turns.extend([last + 1, 0]);
        shown.area = area_m2(&outline, true).map(|area_m2| (area_m2, Some(last + 1)));
    }
    shown.outline = outline;
    Some(shown)
}

/// Lengths beside a corner and its turn; a run's own lengths stand on its sides.
fn of_dragged(plan: &Plan, shape: &Shape, corner: usize) -> Option<Shown> {
    let (outline, closed) = (plan.outline(shape)?.to_vec(), is_closed(plan, shape));
    let count = outline.len();
    let before = (corner + count.max(1) - 1) % count.max(1);
    let area = area_m2(&outline, closed).map(|area_m2| (area_m2, Some(corner)));
    let mut turns = vec![corner, before, (corner + 1) % count.max(1)];
    turns.dedup();
    let labelled = matches!(shape, Shape::Run(_));
    Some(Shown { outline, closed, sides: vec![before, corner], turns, area, labelled })
}

/// Lengths of a side that slides and of its neighbours, the turns at its ends, the area.
fn of_slid(plan: &Plan, shape: &Shape, side: usize) -> Option<Shown> {
    let (outline, closed) = (plan.outline(shape)?.to_vec(), is_closed(plan, shape));
    let count = outline.len().max(1);
    let (before, after) = ((side + count - 1) % count, (side + 1) % count);
    let mut sides = vec![before, side, after];
    sides.dedup();
    // Clear of the cross in the middle.
    let area = area_m2(&outline, closed).map(|area_m2| (area_m2, Some(side)));
    let labelled = matches!(shape, Shape::Run(_));
    Some(Shown { outline, closed, sides, turns: vec![side, after], area, labelled })
}

/// All lengths and turns of what is picked, and its area.
fn of_kept(plan: &Plan, thing: Thing) -> Option<Shown> {
    let shape = shape_of(plan, thing)?;
    let (outline, closed) = (plan.outline(&shape)?.to_vec(), is_closed(plan, &shape));
    let all: Vec<usize> = (0..outline.len()).collect();
    let area = area_m2(&outline, closed).map(|area_m2| (area_m2, None));
    let labelled = matches!(shape, Shape::Run(_));
    Some(Shown { outline, closed, sides: all.clone(), turns: all, area, labelled })
}

/// The outline that a thing is or belongs to.
fn shape_of(plan: &Plan, thing: Thing) -> Option<Shape> {
    if let Some((shape, _)) = corner_of(plan, thing) {
        return Some(shape);
    }
    let run = |run: usize| plan.runs.get(run).map(|run| run.id.clone());
    match thing {
        Thing::Run { run: index } | Thing::RunSide { run: index, .. } => run(index).map(Shape::Run),
        Thing::Boundary | Thing::BoundarySide { .. } => Some(Shape::Boundary),
        Thing::KeepOut { keep_out } | Thing::KeepOutSide { keep_out, .. } => Some(Shape::KeepOut(keep_out)),
        Thing::Branch { run: index, branch }
        | Thing::BranchSide { run: index, branch, .. }
        | Thing::BranchCorner { run: index, branch, .. } => run(index).map(|id| Shape::Branch(id, branch)),
        _ => None,
    }
}
