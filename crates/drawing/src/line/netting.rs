//! The netting of the unfolded line: net, gap, spare and the nets' names.

use words::texts::{Closing, Map as Text};

use super::Unroll;
use crate::ink::Weight;
use crate::inking::net::NetStyle;
use crate::inking::pen::Type;
use crate::inking::trace::{Knot, from_the_middle};
use crate::map::run::{along_m, is_ring, kv_at, samples};
use crate::map::track::SAME_M;
use crate::told::Told;
use crate::view::Distance;

/// Half the room that a net's name takes over the line, with the rings round what stands below, pixels.
const NAME_PX: f64 = 9.0;

impl Unroll<'_> {
    /// Stretches of the line that the chain covers between two of its places: from and to along the line, metres,
    /// and the chain's place at each. Two where the chain runs over the line's start.
    fn stretches(&self, from_m: f64, to_m: f64) -> Vec<[(f64, f64); 2]> {
        let Some((lay, track)) = &self.run.laid else { return Vec::new() };
        let line_m = track.line_m();
        let start_m = lay.start_m.clamp(0.0, line_m);
        // The chain's start parts the line; on each part the chain's place is along's, shifted or mirrored.
        let parts = [(0.0, start_m, lay.reversed), (start_m, line_m, !lay.reversed)];
        let chain = |along_m: f64, plain: bool| {
            let way = if lay.reversed { start_m - along_m } else { along_m - start_m };
            if plain { way } else { way + line_m }
        };
        let mut stretches = Vec::new();
        for (low_m, high_m, plain) in parts {
            let (a, b) = (chain(low_m, plain), chain(high_m, plain));
            let (first, last) = (a.min(b).max(from_m), a.max(b).min(to_m));
            if last - first > 1e-9 {
                let along = |chain_m: f64| low_m + (chain_m - a) * (high_m - low_m) / (b - a);
                let mut ends = [(along(first), first), (along(last), last)];
                ends.sort_by(|a, b| a.0.total_cmp(&b.0));
                stretches.push(ends);
            }
        }
        stretches
    }

    pub(super) fn net(&mut self) {
        let Some((lay, _)) = &self.run.laid else { return };
        let covered_m = lay.covered_m();
        let samples = samples(self.run);
        let style = NetStyle::new(self.view.theme, Distance::Near, self.scene.plan.target_kv(), self.view.stale);
        let axis = self.rows.axis;
        if lay.spare_m >= SAME_M {
            let from_m = (lay.line_m - lay.spare_m).max(0.0);
            for [from, to] in self.stretches(from_m, lay.line_m) {
                let (from, to) = (self.x(from.0), self.x(to.0));
                self.pen.line(&[[from, axis + 8.0], [to, axis + 8.0]], 1.5, self.colours.edge);
            }
            let fold = self.x(self.track.held(along_m(lay, lay.line_m)));
            // On a ring the chain ends where it starts; at the line's own end the fold stands there.
            let fold = if !lay.reversed && is_ring(lay) && lay.start_m < SAME_M { self.right } else { fold };
            self.pen.line(&[[fold, axis], [fold, axis + 8.75]], 1.5, self.colours.edge);
        }
        for ends in self.stretches(covered_m, lay.line_m) {
            let line = ends.map(|end| [self.x(end.0), axis]);
            self.pen.dashed(&line, 1.5, self.colours.danger, Some([7.0, 4.0]));
        }
        for [from, to] in self.stretches(0.0, covered_m) {
            let (low, high) = (from.1.min(to.1), from.1.max(to.1));
            let along = |chain_m: f64| from.0 + (chain_m - from.1) * (to.0 - from.0) / (to.1 - from.1);
            let kv = |chain_m: f64| kv_at(&samples, chain_m).unwrap_or(0.0);
            let mut knots = vec![(from.0, kv(from.1)), (to.0, kv(to.1))];
            let between = samples.iter().filter(|sample| sample.0 >= low && sample.0 <= high);
            let mut inner: Vec<(f64, f64)> = between.map(|&(chain_m, kv)| (along(chain_m), kv)).collect();
            if to.1 < from.1 {
                inner.reverse();
            }
            knots.splice(1..1, inner);
            knots.sort_by(|a, b| a.0.total_cmp(&b.0));
            let knots: Vec<Knot> =
                knots.iter().map(|&(along_m, kv)| Knot { at: [self.x(along_m), axis], kv }).collect();
            style.draw(&mut self.pen, &knots, false, !samples.is_empty());
        }
    }

    /// Names of the nets over brackets, and what is open: they are put down beside the signs that stand there.
    pub(super) fn nets(&mut self) {
        let (Some(row), Some((lay, _))) = (self.rows.brackets, &self.run.laid) else { return };
        let words = self.scene.words;
        let covered_m = lay.covered_m();
        let kind = Type::new(11.0, Weight::Medium, self.colours.ink2);
        for (index, net) in lay.nets.iter().enumerate() {
            let name = words.say(Text::Net, &[("number", &(index + 1).to_string())]);
            let stretches = self.stretches(net.start_m, net.end_m.min(covered_m));
            for [from, to] in stretches {
                self.bracket(row, self.x(from.0), self.x(to.0), &name, kind);
            }
        }
        if covered_m < lay.line_m {
            let text = words.say(Closing::Gap, &[("length", &words.length(lay.short_m))]);
            let kind = Type { colour: self.colours.danger, ..kind };
            for [from, to] in self.stretches(covered_m, lay.line_m) {
                let (from, to) = (self.x(from.0), self.x(to.0));
                if to - from > kind.width(&text) + 12.0 {
                    self.figure(Told::Gap, [f64::midpoint(from, to), row], &text, kind);
                }
            }
        }
    }

    /// A bracket from a net's start to its end, broken for its name where there is room: amid it, or as near to there as
    /// no sign reaches up.
    fn bracket(&mut self, row: f64, from: f64, to: f64, name: &str, kind: Type) {
        let (from, to) = (from + 8.0, to - 8.0);
        if to - from < 8.0 {
            return;
        }
        let half = kind.width(name) / 2.0 + 8.0;
        let rule = self.colours.rule;
        let within = |middle: &f64| middle - from > half + 8.0 && to - middle > half + 8.0;
        let free = |middle: &f64| !self.is_taken([middle - half, row - NAME_PX, middle + half, row + NAME_PX]);
        let middles = from_the_middle().map(|share| from + share * (to - from));
        if let Some(middle) = middles.filter(within).find(free) {
            self.pen.line(&[[from, row + 5.0], [from, row], [middle - half, row]], 1.0, rule);
            self.pen.line(&[[middle + half, row], [to, row], [to, row + 5.0]], 1.0, rule);
            self.figure(Told::Net, [middle, row], name, kind);
        } else {
            self.pen.line(&[[from, row + 5.0], [from, row], [to, row], [to, row + 5.0]], 1.0, rule);
        }
    }
}
