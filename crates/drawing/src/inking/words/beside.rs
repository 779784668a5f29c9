//! Words beside a line: names of hazards and of ghosts.

use plan::{HazardKind, Point};

use super::super::Inker;
use super::super::pen::Type;
use super::super::trace::{self, Px, add, right, scaled, toward};
use super::{Ground, Label, Layout};
use crate::ink::Weight;

impl Inker<'_> {
    /// A hazard's name beside its line, where the line is seen.
    pub(super) fn hazard(&self, label: &Label<'_>, kind: HazardKind) -> Vec<Layout> {
        let colours = self.palette;
        let colour = if kind == HazardKind::PublicWay { colours.ink2 } else { colours.danger };
        let font = Type::new(11.0, Weight::Medium, colour);
        let text = &label.texts[0];
        let half = font.width(text) / 2.0;
        let Some(&(_, path)) = self.hazards.iter().find(|(thing, _)| *thing == label.thing) else {
            return [[0.0, 22.0], [0.0, -22.0], [half + 18.0, 0.0], [-half - 18.0, 0.0]]
                .map(|off| Layout::one(add(label.at, off), text, font, Ground::Any))
                .into();
        };
        let clear = if kind == HazardKind::PublicWay { 18.0 } else { 16.0 };
        self.beside_path(path, half, clear).into_iter().map(|at| Layout::one(at, text, font, Ground::Clear)).collect()
    }

    /// Places beside the seen part of a path for upright words of that half width.
    pub(super) fn beside_path(&self, path: &[Point], half: f64, clear: f64) -> Vec<Px> {
        let view = trace::Window { low: [0.0; 2], high: self.view.size.map(f64::from) };
        let knots: Vec<trace::Knot> = path.iter().map(|&place| trace::Knot { at: self.px(place), kv: 0.0 }).collect();
        let pieces = trace::clip(&knots, false, &view);
        let longest =
            pieces.iter().max_by(|a, b| trace::line_length(&a.points()).total_cmp(&trace::line_length(&b.points())));
        let Some(line) = longest.map(trace::Piece::points) else { return Vec::new() };
        let length = trace::line_length(&line);
        let mut places = Vec::new();
        for share in [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9] {
            let Some(&(at, way)) = trace::walk(&line, false, share * length, f64::INFINITY).first() else { continue };
            let side = right(way);
            // Below or to the left first: the map is read from there.
            let side = if side[1] > 0.2 || (side[1].abs() <= 0.2 && side[0] < 0.0) { side } else { scaled(side, -1.0) };
            let support = half * side[0].abs() + 6.0 * side[1].abs();
            places.push(toward(at, side, clear + support - 6.0));
            places.push(toward(at, side, -(clear + support - 6.0)));
        }
        places
    }
}
