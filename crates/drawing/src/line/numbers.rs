//! Numbers of posts over the unfolded line, under it where the line is small: every so many as there is room for.
//!
//! They are put down last: where a sign stands over the line, its post has none.

use words::texts::Map as Text;

use super::Unroll;
use crate::ink::Weight;
use crate::inking::pen::Type;
use crate::inking::words::every;
use crate::map::run::is_ring;
use crate::map::track::SAME_M;
use crate::shape::Thing;
use crate::told::Told;

/// Numbered posts are at least so far apart, pixels.
const APART_PX: f64 = 48.0;
/// Air between a number and what stands beside it.
const AIR_PX: f64 = 3.0;

impl Unroll<'_> {
    pub(super) fn numbers(&mut self) {
        let Some((lay, _)) = &self.run.laid else { return };
        let Some(panel_m) = (lay.posts.len() > 1).then(|| lay.line_m / (lay.posts.len() - 1) as f64) else { return };
        let panel_px = panel_m * (self.right - self.left) / self.track.line_m();
        let Some(every) = every(panel_px, APART_PX) else { return };
        let kind = Type::new(11.0, Weight::Regular, self.colours.ink2);
        let axis = self.rows.axis;
        let below = !self.rows.posts;
        let (row, tooth) = if below { (axis + 14.0, [4.0, 8.0]) } else { (axis - 18.5, [-3.0, -12.5]) };
        // The last post of a ring stands beside its first.
        let wraps = |post: &workup::Post| is_ring(lay) && (post.chain_m - lay.line_m).abs() < SAME_M;
        let mut stands: Vec<(usize, f64)> = lay
            .posts
            .iter()
            .enumerate()
            .filter(|(index, post)| (index + 1).is_multiple_of(every) && !wraps(post))
            .map(|(index, post)| (index + 1, self.x(self.track.held(post.along_m))))
            .collect();
        // Read from the left, the first with room for a word says what is counted.
        stands.sort_by(|a, b| a.1.total_cmp(&b.1));
        let mut said = false;
        for (number, x) in stands {
            let number = number.to_string();
            let word = (!said).then(|| self.scene.words.say(Text::PostNumber, &[("number", &number)]));
            for text in word.iter().chain([&number]) {
                let half = kind.width(text) / 2.0;
                let place = [x - half - AIR_PX, row - 5.0, x + half + AIR_PX, row + 5.0];
                if !self.is_taken(place) {
                    self.pen.line(&[[x, axis + tooth[0]], [x, axis + tooth[1]]], 1.5, self.colours.ink);
                    self.figure(Told::Post, [x, row], text, kind);
                    self.above.push(place);
                    said |= *text != number;
                    break;
                }
            }
        }
    }

    /// Whether a sign or a number stands in that box: left, top, right and foot.
    pub(super) fn is_taken(&self, place: [f64; 4]) -> bool {
        let over =
            |other: &[f64; 4]| place[0] < other[2] && other[0] < place[2] && place[1] < other[3] && other[1] < place[3];
        let stands = |thing: Thing| !matches!(thing, Thing::Post { .. } | Thing::RunSide { .. } | Thing::Run { .. });
        let signs = self.places.iter().filter(|(thing, _)| stands(*thing));
        place[0] < 2.0
            || place[2] > f64::from(self.view.width) - 2.0
            || self.above.iter().any(over)
            || signs.map(|(_, place)| place.map(f64::from)).any(|other| over(&other))
    }
}
