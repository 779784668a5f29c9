//! Words on the map: what they say and where they belong. Whether they find room is decided in ink.

use std::f64::consts::{FRAC_PI_2, PI};

use care::names::{self, Named};
use plan::{CoopKind, Energizer, HazardKind, Point, RunStatus};
use words::texts::Map as Text;

use super::run::{RunLine, is_ring, post_kv};
use super::signs::Power;
use super::track::{self, SAME_M, Track};
use super::{Legend, Sheet, ground};
use crate::shape::{About, Priority, Thing};

/// Names of keep-outs and hazards.
pub(super) fn ground(sheet: &mut Sheet<'_>) {
    let stated = &sheet.scene.plan.ground;
    for (index, keep_out) in
        stated.keep_outs.iter().enumerate().filter(|(_, keep_out)| !keep_out.name.is_empty() && !keep_out.hidden)
    {
        let Some((at, _)) = track::middle(&keep_out.outline) else { continue };
        let reach = |place: &Point| (place.north_m - at.north_m).abs();
        let half_m = keep_out.outline.iter().map(reach).fold(0.0, f64::max) + keep_out.clearance_m().max(0.0);
        let legend = Legend {
            about: About::KeepOut { half_m },
            at,
            toward_rad: -FRAC_PI_2,
            texts: vec![keep_out.name.clone()],
            priority: Priority::Ground,
        };
        sheet.label(legend, Some(Thing::KeepOut { keep_out: index }));
    }
    for (index, hazard) in stated.hazards.iter().enumerate().filter(|(_, hazard)| !hazard.hidden) {
        let Some(&at) = hazard.path.first() else { continue };
        let words = sheet.scene.words;
        let kind = words.text(match hazard.kind {
            HazardKind::OverheadLine => Text::OverheadLine,
            HazardKind::PublicWay => Text::PublicWay,
            HazardKind::OtherEnergisedFence => Text::OtherFence,
            HazardKind::ForeignEarth => Text::ForeignEarth,
        });
        let name = names::on_map(sheet.scene.plan, words, Named::Hazard(index), kind);
        let legend = Legend {
            about: About::Hazard { kind: hazard.kind },
            at,
            toward_rad: -FRAC_PI_2,
            texts: vec![name],
            priority: if hazard.kind == HazardKind::PublicWay { Priority::Ground } else { Priority::Danger },
        };
        sheet.label(legend, Some(Thing::Hazard { hazard: index }));
    }
}

/// A run's words: its name and ground, its sides, its energizer and its volts.
pub(super) fn run(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    name(sheet, run);
    if run.run.status == RunStatus::Past {
        return;
    }
    if let Some((_, track)) = &run.laid {
        sides(sheet, run, track);
        energizer(sheet, run, track);
        weakest(sheet, run, track);
        posts(sheet, run, track);
    }
}

fn name(sheet: &mut Sheet<'_>, run: &RunLine<'_>) {
    let (plan, words) = (sheet.scene.plan, sheet.scene.words);
    let Some((inside, depth_m)) = track::middle(&run.run.outline) else { return };
    let number = run.index + 1;
    let coop = plan.coops_in(run.run).find(|coop| track::inside(&run.run.outline, coop.at));
    let (at, coop_m) = match coop {
        Some(coop) => {
            let (length, width) = (coop.length_m() / 2.0, coop.width_m() / 2.0);
            let heading = ground::heading_rad(coop);
            (coop.at, length * heading.sin().abs() + width * heading.cos().abs())
        }
        None => (inside, 0.0),
    };
    let name = match run.run.name.as_str() {
        "" => words.say(Text::Run, &[("number", &number.to_string())]),
        name => name.to_owned(),
    };
    let mut texts = vec![name];
    texts.extend(run.worked.and_then(|worked| care::closing_said::figure(worked, words)));
    if let Some(flock) = plan.flock(run.run).filter(|_| coop.is_some()) {
        let [one, several] = match flock.kind {
            CoopKind::Layer => [Text::OneHen, Text::Hens],
            CoopKind::Pullet => [Text::OnePullet, Text::Pullets],
            CoopKind::Chick => [Text::OneChick, Text::Chicks],
            CoopKind::Duck => [Text::OneDuck, Text::Ducks],
            CoopKind::Goose => [Text::OneGoose, Text::Geese],
            CoopKind::Turkey => [Text::OneTurkey, Text::Turkeys],
            CoopKind::Table | CoopKind::Other => [Text::OneBird, Text::Birds],
        };
        let birds = if flock.birds == 1 { one } else { several };
        texts.push(words.say(birds, &[("count", &words.number(f64::from(flock.birds), 0))]));
    }
    let named = !run.run.name.is_empty();
    let about = About::Run { number, named, room_m: 2.0 * depth_m, coop_m };
    let legend = Legend { about, at, toward_rad: FRAC_PI_2, texts, priority: Priority::Run };
    sheet.label(legend, Some(run.thing()));
}

/// Half the width of a run's strip, metres.
fn strip_m(run: &RunLine<'_>) -> f64 {
    run.worked.and_then(|worked| worked.strip.as_ref()).map_or(0.0, |strip| strip.width_m / 2.0)
}

fn sides(sheet: &mut Sheet<'_>, run: &RunLine<'_>, track: &Track) {
    let words = sheet.scene.words;
    let strip_m = strip_m(run);
    for side in 0..track.sides() {
        let ((start, start_m), (end, end_m)) = track.side(side);
        let length = words.length(end_m - start_m);
        let lay = run.laid.as_ref().map(|(lay, _)| *lay);
        let panels = lay.and_then(|lay| workup::panels::of_side(sheet.scene.plan, lay, start, end_m - start_m));
        let mut texts = vec![length.clone()];
        if let Some(panels) = panels {
            let text = if panels == 1 { Text::OnePanel } else { Text::Panels };
            texts.insert(0, words.say(text, &[("length", &length), ("count", &panels.to_string())]));
        }
        let at = Point::new(f64::midpoint(start.east_m, end.east_m), f64::midpoint(start.north_m, end.north_m));
        let legend = Legend {
            about: About::Side { length_m: end_m - start_m, strip_m },
            at,
            toward_rad: track.outward_of_side(side) + PI,
            texts,
            priority: Priority::Side,
        };
        sheet.label(legend, Some(Thing::RunSide { run: run.index, side: run.stated_vertex(side) }));
    }
}

fn energizer(sheet: &mut Sheet<'_>, run: &RunLine<'_>, track: &Track) {
    let plan = sheet.scene.plan;
    let unit = match &run.run.energizer {
        Some(id) => plan.store.energizers.iter().find(|unit| unit.id == *id),
        None => plan.store.energizers.first(),
    };
    let stored_j = unit.map_or_else(|| Energizer::assumed().stored_j(), Energizer::stored_j);
    let Some(power) = Power::of(run, track) else { return };
    let words = sheet.scene.words;
    let decimals = usize::from((stored_j - stored_j.round()).abs() > 0.01);
    let legend = Legend {
        about: About::Energizer,
        at: power.energizer,
        toward_rad: FRAC_PI_2,
        texts: vec![words.say(Text::Joules, &[("figure", &words.number(stored_j, decimals))])],
        priority: Priority::Ground,
    };
    sheet.label(legend, Some(Thing::Energizer { run: run.index }));
}

fn weakest(sheet: &mut Sheet<'_>, run: &RunLine<'_>, track: &Track) {
    let words = sheet.scene.words;
    let Some(volts) = run.worked.and_then(|worked| worked.volts.as_ref()) else { return };
    let Some(weakest) = volts.weakest else { return };
    let post = words.post_number(weakest.post, weakest.branch);
    let figure = care::volts_said::weakest(&weakest, words);
    // Whatever the room, a figure that counts faults says so; after the post, which is where it is least and no fault's.
    let counting = |said: String| match care::volts_said::tried(run.run, words) {
        Some(tried) => format!("{said}, {tried}"),
        None => said,
    };
    let said = |text| counting(words.say(text, &[("weakest", &figure), ("post", &post)]));
    let mut texts = vec![said(Text::WeakestThere)];
    if !weakest.measured {
        texts.insert(0, said(Text::WeakestUnmeasured));
    }
    // The shortest wording for where there is little room.
    texts.push(counting(figure.clone()));
    let legend = Legend {
        about: About::Weakest,
        at: weakest.at,
        toward_rad: track.outward(weakest.along_m),
        texts,
        priority: Priority::Weakest,
    };
    let on_line = weakest.branch.is_none().then_some(Thing::Post { run: run.index, post: weakest.post });
    sheet.label(legend, on_line.or(Some(run.thing())));
}

fn posts(sheet: &mut Sheet<'_>, run: &RunLine<'_>, track: &Track) {
    let Some((lay, _)) = &run.laid else { return };
    let words = sheet.scene.words;
    for (index, post) in lay.posts.iter().enumerate() {
        let Some(kv) = post_kv(run, index).filter(|kv| kv.is_finite()) else { continue };
        if is_ring(lay) && index > 0 && (post.chain_m - lay.line_m).abs() < SAME_M {
            continue;
        }
        let legend = Legend {
            about: About::Post { strip_m: strip_m(run) },
            at: post.at,
            toward_rad: track.outward(post.along_m) + PI,
            texts: vec![words.kilovolts(kv), words.kilovolts_figure(kv)],
            priority: Priority::Post,
        };
        sheet.label(legend, Some(Thing::Post { run: run.index, post: index }));
    }
}
