//! Where to read the volts, what to expect there, and room to write.

use plan::Point;
use words::texts::Sheet as Text;
use workup::{Lay, Sample, SampleOf, Volts};

use super::{Block, Look};
use crate::map::Spotted;
use crate::rows::{Reading, Row};

/// The block, and each reading's letter and place.
pub(super) fn block(look: Look<'_>) -> (Option<Block>, Vec<Spotted>) {
    let Some(lay) = look.lay() else { return (None, Vec::new()) };
    let head = look.text(Text::Readings);
    let Some(volts) = look.worked.and_then(|worked| worked.volts.as_ref()) else {
        let rows = vec![Row::Plain(look.text(Text::NoVolts))];
        return (Some(Block { head, aside: String::new(), rows }), Vec::new());
    };
    let mut readings = Vec::new();
    let mut places = Vec::new();
    let mut letters = ('a'..='z').map(String::from);
    let mut add = |name: String, place: String, expected: String, at: Option<Point>| {
        let letter = letters.next().unwrap_or_default();
        let on_line = at.is_none() || at != look.run.earth_stakes.first();
        places.push(Spotted { letter: letter.clone(), at, on_line });
        readings.push(Reading { letter, name, place, expected, unit: look.text(Text::Kilovolts) });
    };
    let expected = |kv: f64| look.words.kilovolts(kv);
    let post = |post: usize| look.say(Text::PostNumber, &[("post", &(post + 1).to_string())]);

    let feed = volts.samples.iter().find(|sample| sample.of == SampleOf::Feed);
    let along = feed.map(|feed| look.say(Text::Along, &[("off", &look.words.length(feed.along_m))]));
    let feed_at = feed.map(|feed| feed.at);
    add(look.text(Text::FeedPoint), along.unwrap_or_default(), expected(volts.feed_kv), feed_at);
    if let Some(weakest) = volts.weakest {
        let number = look.words.post_number(weakest.post, weakest.branch);
        let place = look.say(Text::PostNumber, &[("post", &number)]);
        add(look.text(Text::Weakest), place, expected(weakest.peak_kv), Some(weakest.at));
    }
    if let Some((name, third, number)) = feed.and_then(|feed| third_post(lay, volts, feed)) {
        add(look.text(name), post(number), expected(third.peak_kv), Some(third.at));
    }
    let earth_at = look.run.earth_stakes.first();
    add(look.text(Text::EarthStake), look.text(Text::ToAProbe), expected(volts.earth_kv), earth_at);
    let rows = vec![Row::Readings(readings)];
    let measured = volts.weakest.is_none_or(|weakest| weakest.measured);
    let aside = look.text(if measured { Text::ReadingsHow } else { Text::ReadingsHowUnmeasured });
    (Some(Block { head, aside, rows }), places)
}

/// The post farthest from the feed along the netting; where that is the weakest or its neighbour, the one that is
/// farthest from both.
fn third_post<'a>(lay: &Lay, volts: &'a Volts, feed: &Sample) -> Option<(Text, &'a Sample, usize)> {
    let off_m = |a: &Sample, b: &Sample| {
        let straight_m = (a.along_m - b.along_m).abs();
        if lay.closed { straight_m.min(lay.line_m - straight_m) } else { straight_m }
    };
    let posts: Vec<(&Sample, usize)> = volts
        .samples
        .iter()
        .filter_map(|sample| match sample.of {
            SampleOf::Post(post) => Some((sample, post)),
            SampleOf::Feed | SampleOf::Fault(_) => None,
        })
        .collect();
    let farthest =
        |reach: &dyn Fn(&Sample) -> f64| posts.iter().copied().max_by(|(a, _), (b, _)| reach(a).total_cmp(&reach(b)));
    let (far, number) = farthest(&|sample| off_m(sample, feed))?;
    let weakest = volts.weakest.filter(|weakest| weakest.branch.is_none());
    let weakest = weakest.and_then(|weakest| posts.iter().find(|(_, post)| *post == weakest.post));
    let Some((weakest, _)) = weakest else { return Some((Text::Farthest, far, number)) };
    if off_m(far, weakest) > off_m(far, feed) / 4.0 {
        return Some((Text::Farthest, far, number));
    }
    let (between, number) = farthest(&|sample| off_m(sample, feed).min(off_m(sample, weakest)))?;
    Some((Text::InBetween, between, number))
}
