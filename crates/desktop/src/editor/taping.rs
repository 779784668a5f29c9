//! What the tape says: the last leg's length and bearing, the way along the ground where heights are known, the sum.

use plan::{Point, Run};
use words::texts::Guides as Text;

use super::Editor;
use crate::tool::{Tool, apart_m};

impl Editor {
    /// Where the tape lies, the hand last while it is not done.
    pub fn taped(&self) -> Option<Vec<Point>> {
        let Tool::Tape(tape) = &self.tool else { return None };
        Some(tape.all())
    }

    /// What the tape says, line by line; `None` while it lies nowhere.
    pub fn tape_said(&self) -> Option<Vec<String>> {
        let (places, words) = (self.taped()?, self.words);
        let [.., from, to] = *places else { return None };
        let (degrees, point) = words.bearing(to.east_m - from.east_m, to.north_m - from.north_m);
        let length = words.length(apart_m(from, to));
        let mut said = vec![words.say(Text::Leg, &[("length", &length), ("degrees", &degrees), ("point", point)])];
        if places.len() > 2 {
            let sum_m = places.windows(2).map(|pair| apart_m(pair[0], pair[1])).sum();
            said.push(words.say(Text::InAll, &[("length", &words.length(sum_m))]));
        }
        if let Some(ground_m) = self.along_ground_m(&places) {
            said.push(words.say(Text::OnGround, &[("length", &words.length(ground_m))]));
        }
        Some(said)
    }

    /// Length of all of the tape along the ground; `None` where no heights are known.
    fn along_ground_m(&self, places: &[Point]) -> Option<f64> {
        let run = Run { outline: places.to_vec(), closed: Some(false), ..Run::default() };
        workup::slope::on_ground(&self.plan, &run).map(|laid| laid.length_m())
    }
}
