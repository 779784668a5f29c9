//! Figures of a run as they are told in more than one place of the window.

use plan::{CoopKind, Flock, Plan, Run};
use words::Words;
use words::texts::{Compare, Window as Text};
use workup::{Corner, Lay, RunWorkup, Workup};

/// Braces that a lay needs (or that are decided), and those that are advised beside them.
pub(crate) fn braces(lay: &Lay) -> (usize, usize) {
    (lay.braces(), lay.braces_advised())
}

/// How birds are counted, in a few words: `2.5 m² a bird, your own figure, rounded down`.
pub(crate) fn birds_by_rule(words: Words, plan: &Plan) -> String {
    match workup::stocking::chosen(plan) {
        Some(rule) => {
            let assumed = rule.id == workup::stocking::OWN && plan.season.min_m2_per_bird.is_none();
            let name = words.text(if assumed { Compare::AssumedRule } else { rule_name(rule.id) });
            words.say(Compare::BirdsBy, &[("each", &words.area_each(rule.m2_per_bird)), ("rule", name)])
        }
        None => words.text(Compare::NoRule).to_owned(),
    }
}

/// What a rule of ground a bird is called.
pub(crate) fn rule_name(id: &str) -> Compare {
    match id {
        "eu_free_range_rotated" => Compare::EuFreeRangeRotated,
        "eu_free_range" => Compare::EuFreeRange,
        "eu_organic_layer" => Compare::EuOrganicLayer,
        "eu_organic_table_mobile" => Compare::EuOrganicTableMobile,
        "eu_organic_duck" => Compare::EuOrganicDuck,
        "eu_organic_turkey" => Compare::EuOrganicTurkey,
        "eu_organic_goose" => Compare::EuOrganicGoose,
        "eu_free_range_table" => Compare::EuFreeRangeTable,
        "eu_traditional_table" => Compare::EuTraditionalTable,
        "au_label" => Compare::AuLabel,
        "au_code" => Compare::AuCode,
        "nz_code" => Compare::NzCode,
        "us_organic_layer" => Compare::UsOrganicLayer,
        _ => Compare::OwnRule,
    }
}

/// Nets that the keeper owns.
pub(crate) fn owned(plan: &Plan) -> u64 {
    plan.store.nets.iter().map(|net| u64::from(net.count())).sum()
}

/// What birds are called after their number.
pub(crate) fn birds(words: Words, flock: Flock) -> &'static str {
    let [one, several] = match flock.kind {
        CoopKind::Layer => [Text::Hen, Text::Hens],
        CoopKind::Pullet => [Text::Pullet, Text::Pullets],
        CoopKind::Chick => [Text::Chick, Text::Chicks],
        CoopKind::Table => [Text::TableBird, Text::TableBirds],
        CoopKind::Duck => [Text::Duck, Text::Ducks],
        CoopKind::Goose => [Text::Goose, Text::Geese],
        CoopKind::Turkey => [Text::Turkey, Text::Turkeys],
        CoopKind::Other => [Text::Bird, Text::Birds],
    };
    words.text(if flock.birds == 1 { one } else { several })
}

/// A run's ground in a sentence, with its birds where it has some; of one that is open what closes it.
pub(crate) fn ground(words: Words, plan: &Plan, run: &Run, worked: &RunWorkup) -> String {
    let Some(lay) = &worked.lay else { return words.text(Text::NotLaid).to_owned() };
    let ground = |ground_m2| shut_in(words, plan, run, worked, lay, ground_m2);
    care::closing_said::sentence(plan, worked, words, ground).unwrap_or_default()
}

/// Ground that is shut in, for the birds on it or by the line round it.
fn shut_in(words: Words, plan: &Plan, run: &Run, worked: &RunWorkup, lay: &Lay, ground_m2: f64) -> String {
    let area = words.area(ground_m2);
    match plan.flock(run).and_then(|flock| Some((flock, worked.each_bird_m2(flock.birds)?))) {
        Some((flock, each_m2)) => words.say(
            Text::GroundForBirds,
            &[
                ("area", &area),
                ("count", &words.number(f64::from(flock.birds), 0)),
                ("birds", birds(words, flock)),
                ("each", &words.area_each(each_m2)),
            ],
        ),
        // What else is round it is said after it.
        _ if worked.closing.as_ref().is_some_and(|closing| closing.ring().is_some()) => area,
        _ => words.say(Text::GroundOnLine, &[("area", &area), ("line", &words.length(lay.line_m))]),
    }
}

/// The soil in plain words.
pub(crate) fn soil(words: Words, plan: &Plan, workup: &Workup) -> String {
    let kind = workup.soil.as_ref().map_or_else(String::new, |soil| care::bracing::kind(words, soil));
    let wet = words.text(if plan.ground.wet() { Text::SoilWet } else { Text::SoilNotWet });
    words.say(Text::Soil, &[("kind", &kind), ("wet", wet)])
}

/// The stated vertex that a corner of the lay stands on.
pub(crate) fn stated_vertex(run: &Run, corner: &Corner) -> Option<usize> {
    let near = |place: &plan::Point| crate::tool::apart_m(*place, corner.at) < 1e-6;
    run.outline.iter().position(near)
}
