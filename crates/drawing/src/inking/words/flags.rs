//! The flag of the weakest post, and what is supposed of a fault: an edged plate on a leader.

use super::super::Inker;
use super::super::blocks::Block;
use super::super::pen::Type;
use super::super::trace::{Px, toward};
use super::{Ground, Label, Layout};
use crate::ink::Weight;

/// A leader as long as that is better than no figure, pixels.
const FARS: &[f64] = &[100.0, 140.0];

impl Inker<'_> {
    /// The flag of the weakest post, its wordings ever shorter.
    pub(super) fn weakest(&self, label: &Label<'_>) -> Vec<Layout> {
        label.texts.iter().flat_map(|text| self.flags(label, text)).collect()
    }

    fn flags(&self, label: &Label<'_>, text: &str) -> Vec<Layout> {
        let kind = Type::new(11.0, Weight::SemiBold, self.palette.ink);
        let text = self.figure(text);
        let (width, height) = (kind.width(&text) + 16.0, 20.0);
        let outward = label.toward;
        let [side_x, side_y] = [outward[0].signum(), outward[1].signum()];
        let ways = [
            outward,
            [side_x, 0.0],
            [side_x * 0.8, 0.6],
            [side_x * 0.8, -0.6],
            [side_x * 0.6, 0.8],
            [side_x * 0.6, -0.8],
            [0.0, side_y],
            [0.0, -side_y],
            [-side_x, 0.0],
        ];
        let mut layouts = Vec::new();
        // Outside before inside.
        let (inside, outside): (Vec<Px>, Vec<Px>) =
            ways.into_iter().partition(|way| way[0] * outward[0] + way[1] * outward[1] < -0.1);
        let near: &[f64] = &[26.0, 44.0, 70.0];
        let tries = [(&outside, near), (&inside, near), (&outside, FARS), (&inside, FARS)];
        for (ways, fars) in tries {
            for (&far, &way) in fars.iter().flat_map(|far| ways.iter().map(move |way| (far, way))) {
                let support = width / 2.0 * way[0].abs() + height / 2.0 * way[1].abs();
                let middle = toward(label.at, way, far + support);
                let side = if way[0] * outward[0] + way[1] * outward[1] < 0.0 { -1.0 } else { 1.0 };
                let from = toward(label.at, outward, side * self.net_style().half());
                let mut layout = Layout::one(middle, &text, kind, Ground::Flag { from, middle, width, height });
                layout.blocks = vec![Block::new(middle, width, height)];
                layouts.push(layout);
            }
        }
        layouts
    }
}
