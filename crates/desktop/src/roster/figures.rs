//! The figures of entries: what a row says beside its name.

use care::fault_said;
use drawing::Thing;
use plan::{Flock, Point};
use words::Words;
use words::texts::{Many as Text, Taping, Underlay};
use workup::{Corner, Verdict};

use super::{Item, at, lay};
use crate::editor::Editor;
use crate::editor::chosen::coop_at;
use crate::facts;

/// A place in words.
pub(crate) fn place(words: Words, at: Point) -> String {
    words.say(Text::Place, &[("east", &words.length(at.east_m)), ("north", &words.length(at.north_m))])
}

/// The figures of an entry; empty where it has none.
pub(crate) fn figures(editor: &Editor, item: Item) -> String {
    let (words, plan) = (editor.words(), editor.plan());
    let thing = match item {
        Item::Head(_) => return String::new(),
        Item::Net { run, net } => {
            let kind = lay(editor, run).and_then(|lay| lay.nets.get(net)).and_then(|net| plan.net_kind(&net.kind));
            return kind.map(|kind| words.length(kind.length_m)).unwrap_or_default();
        }
        Item::Brace { run, corner } => {
            let corner = lay(editor, run).and_then(|lay| lay.corners.get(corner));
            return corner.map(|corner| words.text(brace(corner)).to_owned()).unwrap_or_default();
        }
        Item::Thing(brace @ Thing::Brace { .. }) => return figures(editor, Item::of(brace)),
        Item::Thing(thing) => thing,
    };
    match thing {
        Thing::Run { run } => run_figures(editor, run),
        Thing::Boundary => words.field(editor.workup().paddock_m2),
        Thing::KeepOut { keep_out } => {
            plan.ground.keep_outs.get(keep_out).map(|one| words.area(area_m2(&one.outline))).unwrap_or_default()
        }
        Thing::Hazard { hazard } => plan.ground.hazards.get(hazard).map_or_else(String::new, |one| {
            let long_m = long_m(&one.path);
            match one.line_voltage_kv {
                Some(kv) => words.kilovolts(kv),
                None if long_m > 0.0 => words.far(long_m),
                None => one.path.first().map(|&at| place(words, at)).unwrap_or_default(),
            }
        }),
        Thing::Wall { wall } => plan.walls.get(wall).map_or_else(String::new, |one| {
            let holds = words.text(if one.holds_birds() { Underlay::HoldsThem } else { Underlay::HoldsNone });
            words.say(Text::AndThat, &[("one", &words.far(long_m(&one.path))), ("other", holds)])
        }),
        Thing::Shade { shade } => {
            plan.ground.shade.get(shade).map(|one| words.area(area_m2(&one.outline))).unwrap_or_default()
        }
        Thing::Damp { damp } => {
            plan.ground.damp.get(damp).map(|one| words.area(area_m2(&one.outline))).unwrap_or_default()
        }
        Thing::Underlay => plan.underlay.as_ref().map_or_else(String::new, |underlay| {
            let file = underlay.path.rsplit('/').next().unwrap_or_default();
            let a_pixel = words.fine_length(underlay.world_m().metres_a_pixel());
            words.say(Underlay::Scale, &[("file", file), ("metres", &a_pixel)])
        }),
        Thing::Height { height } => plan.heights.get(height).map(|one| words.length(one.up_m)).unwrap_or_default(),
        Thing::Coop { coop } => Flock::of(coop_at(plan, coop)).map_or_else(String::new, |flock| {
            format!("{} {}", words.number(f64::from(flock.birds), 0), facts::birds(words, flock))
        }),
        Thing::Branch { run, branch } => {
            let laid = lay(editor, run).and_then(|lay| lay.branches.iter().find(|laid| laid.branch == branch));
            laid.map(|laid| words.length(laid.line_m)).unwrap_or_default()
        }
        Thing::Gate { run, gate } => {
            let worked = editor.workup().runs.get(run).and_then(|worked| worked.gates.get(gate));
            worked
                .and_then(|gate| gate.opening.as_ref())
                .map(|open| care::gate_said::clear(open, words))
                .unwrap_or_default()
        }
        Thing::Pin { run, pin } => {
            let stated = plan.runs.get(run).and_then(|run| run.pins.get(pin));
            let laid = lay(editor, run).and_then(|lay| Some((lay, lay.pins.get(pin)?)));
            stated.zip(laid).map(|(stated, (lay, pin))| care::pin_name(words, lay, stated, pin)).unwrap_or_default()
        }
        Thing::Energizer { run } => plan.runs.get(run).map_or_else(String::new, |run| {
            let own = run.energizer.as_deref().or(plan.store.energizers.first().map(|one| one.id.as_str()));
            let unit = own.unwrap_or_default();
            match workup::lead::lead(plan, run).apart_m {
                Some(apart_m) => {
                    let feed = words.length(apart_m);
                    words.say(words::texts::Damp::EnergizerFigures, &[("unit", unit), ("feed", &feed)])
                }
                None => unit.to_owned(),
            }
        }),
        Thing::Zone { run, branch, zone } => editor.on_line(run, branch).map_or_else(String::new, |(alone, lay)| {
            alone
                .leakage_zones
                .get(zone)
                .map(|zone| fault_said::zone_ends(&lay, branch, zone, words))
                .unwrap_or_default()
        }),
        Thing::Reading { reading, .. } => {
            let value = plan.readings.get(reading).and_then(|reading| reading.value);
            value.map(|value| words.number(value, 1)).unwrap_or_default()
        }
        Thing::TapePoint { point } => plan.tape_points.get(point).map_or_else(String::new, |one| {
            let place = place(words, one.at);
            if workup::tape::known(plan).iter().any(|known| known.point == point) {
                return place;
            }
            words.say(Text::AndThat, &[("one", &place), ("other", words.text(Taping::NotTaped))])
        }),
        Thing::Finding { .. } => String::new(),
        thing => at(editor, Item::Thing(thing)).map(|at| place(words, at)).unwrap_or_default(),
    }
}

fn run_figures(editor: &Editor, run: usize) -> String {
    let words = editor.words();
    let Some(worked) = editor.workup().runs.get(run) else { return String::new() };
    let Some(lay) = &worked.lay else {
        return worked.line_m.map(|line_m| words.length(line_m)).unwrap_or_default();
    };
    let (line, nets) = (words.length(lay.line_m), lay.nets.len().to_string());
    let figures = match care::closing_said::figure(worked, words) {
        Some(ground) => words.say(Text::RunFigures, &[("area", &ground), ("line", &line), ("nets", &nets)]),
        None => words.say(Text::NetsAndLine, &[("line", &line), ("nets", &nets)]),
    };
    match worked.volts.as_ref().and_then(|volts| volts.weakest.as_ref()) {
        Some(weakest) => {
            // A row has room for what is likely; the band stands where the run is in hand.
            let likely = format!("{} kV", care::volts_said::weakest_parts(weakest, words).0);
            words.say(Text::WithVolts, &[("figures", &figures), ("volts", &likely)])
        }
        None => figures,
    }
}

fn brace(corner: &Corner) -> Text {
    match corner.verdict {
        _ if corner.brace_too_weak() => Text::Weak,
        _ if corner.braced => Text::Set,
        Verdict::Advised => Text::Advised,
        _ => Text::Needed,
    }
}

/// How long a line is, metres.
fn long_m(path: &[Point]) -> f64 {
    path.windows(2).map(|pair| crate::tool::apart_m(pair[0], pair[1])).sum()
}

fn area_m2(outline: &[Point]) -> f64 {
    let Some(&from) = outline.first() else { return 0.0 };
    let local = |at: &Point| (at.east_m - from.east_m, at.north_m - from.north_m);
    let pairs = outline.iter().zip(outline.iter().cycle().skip(1));
    let twice: f64 = pairs.map(|(one, other)| (local(one), local(other))).map(|(a, b)| a.0 * b.1 - a.1 * b.0).sum();
    twice.abs() / 2.0
}
