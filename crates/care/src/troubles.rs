//! What could not be built, in words.

use plan::{Run, Shape};
use words::texts::{Bracing, Findings as Text};
use workup::{BranchTrouble, Must, OutlineTrouble, Part, RunWorkup, SheetTrouble, Trouble};

use crate::limits::OWN_FORMAT;
use crate::{Finding, Look, Severity, Subject, run_name};

/// The most places that one finding names; more tell a keeper nothing and a map cannot show them.
const MOST_PLACES: usize = 100;

pub(crate) fn of_run(look: Look<'_>, run: &Run, worked: &RunWorkup) -> Vec<Finding> {
    findings(look, run_name(run), &worked.troubles)
}

pub(crate) fn of_plan(look: Look<'_>) -> Vec<Finding> {
    findings(look, "", &look.workup.troubles)
}

/// A finding a trouble, but like troubles of one outline are one finding with several places.
fn findings(look: Look<'_>, run: &str, troubles: &[Trouble]) -> Vec<Finding> {
    let mut found: Vec<(Option<&Shape>, Finding)> = Vec::new();
    for trouble in troubles {
        let next = finding(look, run, trouble);
        let Trouble::Outline { shape, .. } = trouble else {
            found.push((None, next));
            continue;
        };
        match found.iter_mut().find(|(of, kept)| *of == Some(shape) && kept.id == next.id) {
            Some((_, kept)) if kept.at.len() < MOST_PLACES => kept.at.extend(next.at),
            Some(_) => {}
            None => found.push((Some(shape), next)),
        }
    }
    found.into_iter().map(|(_, finding)| finding).collect()
}

fn finding(look: Look<'_>, run: &str, trouble: &Trouble) -> Finding {
    let new = |id, severity| Finding::new(id, severity, OWN_FORMAT);
    let warning = Severity::Warning;
    match trouble {
        Trouble::Outline { shape, fault } => {
            let corner = match *fault {
                OutlineTrouble::TooFar { corner, .. } | OutlineTrouble::Repeated { corner, .. } => Some(corner),
                OutlineTrouble::CrossesItself { side, .. } => Some(side),
                _ => None,
            };
            outline(look, shape, *fault).about(Subject::Outline(shape.clone(), corner))
        }
        Trouble::BadValue { key, value, must } => {
            let must = match must {
                Must::BePositive => Text::MustBePositive,
                Must::NotBeNegative => Text::MustNotBeNegative,
                Must::BeAtLeastOne => Text::MustBeAtLeastOne,
                Must::BeAShare => Text::MustBeAShare,
                Must::BeAnAngle => Text::MustBeAnAngle,
                Must::NotBeZero => Text::MustNotBeZero,
                Must::BeSmaller => Text::MustBeSmaller,
                Must::BeAPart if key == "ground.fouled_share" => {
                    let share = look.words.number(plan::defaults::bracing::FOULED_SHARE, 1);
                    return bad_value(look, key, *value, Bracing::MustBeAPart)
                        .because(look.words.say(Bracing::ReckonedWith, &[("value", &share)]));
                }
                Must::BeAPart => return bad_value(look, key, *value, Bracing::MustBeAPart),
                Must::BeATurn => return bad_value(look, key, *value, Bracing::MustBeATurn),
                Must::BeAWind => return bad_value(look, key, *value, Bracing::MustBeAWind),
            };
            bad_value(look, key, *value, must)
        }
        Trouble::PanelSum { net, sum_m, length_m } => {
            new("panel-sum", warning).about(Subject::Net(net.clone())).says(look.say(
                Text::PanelSum,
                &[
                    ("net", net),
                    ("sum", &look.words.fine_length(*sum_m)),
                    ("length", &look.words.fine_length(*length_m)),
                ],
            ))
        }
        Trouble::NoNets => new("no-nets", warning).says(look.say(Text::NoNets, &[("run", run)])),
        Trouble::TooManyPosts { posts } => new("too-many-posts", warning)
            .says(look.say(Text::TooManyPosts, &[("run", run), ("posts", &look.words.number(*posts as f64, 0))])),
        Trouble::ChainTooLong { length_m } => new("chain-too-long", warning)
            .says(look.say(Text::ChainTooLong, &[("run", run), ("length", &look.words.far(*length_m))])),
        Trouble::Branch { branch, fault } => {
            let number = (branch + 1).to_string();
            let new = |id, severity| new(id, severity).about(Subject::Branch(*branch));
            let said = |text, off: &str| look.say(text, &[("run", run), ("branch", &number), ("off", off)]);
            match fault {
                BranchTrouble::NoNets => new("branch-no-nets", warning).says(said(Text::BranchNoNets, "")),
                BranchTrouble::NoLine => new("branch-no-line", warning).says(said(Text::BranchNoLine, "")),
                BranchTrouble::Beyond { from_m, line_m } => {
                    let line = look.words.length(*line_m);
                    let places = [("from", &*look.words.length(*from_m)), ("line", &*line)];
                    new("branch-off-line", warning)
                        .says(look.say(Text::BranchBeyond, &[[("run", run), ("branch", &*number)], places].concat()))
                }
                BranchTrouble::OffLine { off_m, at } => new("branch-off-line", warning)
                    .says(said(Text::BranchOffLine, &look.words.length(*off_m)))
                    .at([*at]),
            }
        }
        Trouble::Beyond { part } => {
            let (id, text) = match part {
                Part::Volts => ("no-volts", Text::BeyondVolts),
                Part::Strip => ("no-strip", Text::BeyondStrip),
            };
            new(id, warning).says(look.say(text, &[("run", run)]))
        }
        Trouble::StakesTogether { one, other, at } => {
            let subject = Subject::EarthStake(*other);
            let [one, other] = [one, other].map(|number| (number + 1).to_string());
            new("earth-stakes-together", warning)
                .about(subject)
                .says(look.say(Text::StakesTogether, &[("run", run), ("one", &one), ("other", &other)]))
                .at([*at])
        }
        Trouble::TooManyStakes { count, at } => {
            let limit = workup::earth::MOST_STAKES.to_string();
            new("earth-stakes-many", warning)
                .says(look.say(Text::TooManyStakes, &[("run", run), ("count", &count.to_string()), ("limit", &limit)]))
                .at([*at])
        }
        Trouble::DataSheet { energizer, fault } => {
            let text = match fault {
                SheetTrouble::LoadedAboveNoLoad => Text::SheetLoaded,
                SheetTrouble::OutputAboveStored => Text::SheetOutput,
                SheetTrouble::NoCircuit => Text::SheetNoCircuit,
            };
            Finding::new("data-sheet", warning, "the energizer’s equivalent circuit; see the model’s page")
                .about(Subject::Unit(energizer.clone()))
                .says(look.say(text, &[("energizer", energizer)]))
        }
        Trouble::LiveLines { net } => {
            new("live-lines", warning).about(Subject::Net(net.clone())).says(look.say(Text::LiveLines, &[("net", net)]))
        }
        Trouble::NoSuchClass { table, name } => crate::bracing::no_such_class(look, *table, *name),
        Trouble::SeenNowhere { index } => crate::bracing::seen_nowhere(look, *index),
        Trouble::SeenContradict { stood, leaned } => crate::bracing::contradict(look, *stood, *leaned),
        Trouble::HeightGrid { heights, columns } => new("height-grid", warning).says(look.words.say(
            words::texts::Slope::GridBroken,
            &[("heights", &look.words.number(*heights as f64, 0)), ("columns", &columns.to_string())],
        )),
        Trouble::TwoSoils => new("two-soils", Severity::Note).says(look.words.text(Text::TwoSoils)),
    }
}

fn bad_value(look: Look<'_>, key: &str, value: f64, must: impl words::Message) -> Finding {
    let must = look.words.text(must);
    Finding::new("bad-value", Severity::Warning, OWN_FORMAT)
        .about(Subject::Figure(key.to_owned()))
        .says(look.say(Text::BadValue, &[("key", key), ("value", &value.to_string()), ("must", must)]))
}

fn outline(look: Look<'_>, shape: &Shape, fault: OutlineTrouble) -> Finding {
    let name = look.shape(shape);
    let number = |value: usize| look.words.number(value as f64, 0);
    let new = |id| Finding::new(id, Severity::Warning, OWN_FORMAT);
    match fault {
        OutlineTrouble::TooFewCorners { corners, needs } => new("outline-few-corners").says(look.say(
            if corners == 1 { Text::OutlineOneCorner } else { Text::OutlineFewCorners },
            &[("shape", &name), ("corners", &number(corners)), ("needs", &number(needs))],
        )),
        OutlineTrouble::TooManyCorners { corners, limit } => new("outline-many-corners").says(look.say(
            Text::OutlineManyCorners,
            &[("shape", &name), ("corners", &number(corners)), ("limit", &number(limit))],
        )),
        OutlineTrouble::TooFar { corner, at } => new("outline-too-far")
            .says(look.say(Text::OutlineTooFar, &[("shape", &name), ("corner", &number(corner + 1))]))
            .at([at]),
        OutlineTrouble::Repeated { corner, at } => Finding { severity: Severity::Note, ..new("outline-repeats") }
            .says(look.say(Text::OutlineRepeats, &[("shape", &name), ("corner", &number(corner + 1))]))
            .at([at]),
        OutlineTrouble::CrossesItself { side, other, at } => new("outline-crosses")
            .says(look.say(
                Text::OutlineCrosses,
                &[("shape", &name), ("side", &look.side(shape, side)), ("other", &look.side(shape, other))],
            ))
            .at([at]),
        OutlineTrouble::NoArea => new("outline-no-area").says(look.say(Text::OutlineNoArea, &[("shape", &name)])),
    }
}
