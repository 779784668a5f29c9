//! Three small plots: ground by the proportion of a rectangle, by the count of nets, and by the minutes of setting up.
//!
//! Lines are named where they run; the keeper's own is solid, what is looked at is in the ghost's colour.

use egui::{Align2, Rect, Stroke, Ui, pos2, vec2};
use egui_plot::{HLine, LineStyle, VLine};
use exchange::shapes;
use words::texts::{About, Compare as Text};
use workup::candidates::{Family, Proportions, proportions};

use crate::pages::Desk;
use crate::pages::plot::{self, Frame, Name, RIGHT, below, dots, line, name_lines, plot, round_range};
use crate::theme::{self, colour};

/// The longest rectangle that is plotted.
const LONGEST: f64 = 3.0;
pub(super) fn show(ui: &mut Ui, desk: &mut Desk<'_>) {
    if desk.editor.shapes().found().is_empty() {
        return;
    }
    by_proportion(ui, desk);
    by_nets(ui, desk);
    by_minutes(ui, desk);
}

/// Ground of the keeper's own run, square metres.
fn own_m2(desk: &Desk<'_>) -> Option<f64> {
    super::own(desk)?.area_m2
}

fn by_proportion(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let Some(first) = editor.shapes().found().iter().find(|one| one.wall.is_none()) else { return };
    let Proportions { curve, whole } = proportions(editor.plan(), &first.nets, LONGEST);
    let lines: Vec<(Family, f64)> = editor
        .shapes()
        .found()
        .iter()
        .filter(|one| one.wall.is_none() && !matches!(one.family, Family::Square | Family::Rectangle))
        .map(|one| (one.family, one.area_m2))
        .collect();
    let own = own_m2(desk);
    let values = lines.iter().map(|line| line.1).chain(own).chain(curve.iter().map(|at| at[1]));
    let y = round_range(values, words.area_unit_m2());
    let aside = words.text(Text::OpenGround);
    desk.section(ui, words.text(Text::GroundByProportion), aside, About::Shapes);
    let frame = area_frame(ui, desk, words.text(Text::GroundByProportion), (1.0, LONGEST), y);
    let chosen = editor.shapes().chosen().map(|one| one.family);
    plot(ui, "ground by proportion", &frame, |plot| {
        plot.line(line("rectangle", curve).stroke(Stroke::new(1.75, colour(p.ink))));
        if let Some(own) = own {
            plot.hline(HLine::new("yours", own).stroke(Stroke::new(1.5, colour(p.ink))).allow_hover(false));
        }
        for &(family, area_m2) in &lines {
            let loud = chosen == Some(family);
            let pen = if loud { Stroke::new(2.0, colour(p.ghost)) } else { Stroke::new(1.25, colour(p.ink2)) };
            let style = if loud { LineStyle::Dashed { length: 7.0 } } else { LineStyle::Dotted { spacing: 5.0 } };
            plot.hline(HLine::new(family.id(), area_m2).stroke(pen).style(style).allow_hover(false));
        }
        plot.points(dots("whole panels", whole, p));
    });
    let mut names: Vec<Name> = lines
        .iter()
        .map(|&(family, at)| Name { at, text: shapes::family(family, words).to_owned(), loud: chosen == Some(family) })
        .collect();
    names.extend(own.map(|at| Name { at, text: words.text(Text::Yours).to_owned(), loud: false }));
    name_lines(ui, desk, &frame, names);
    let wide = |text: Text| crate::kit::width(ui, words.text(text), theme::regular(11.0));
    let ends = wide(Text::Square).max(wide(Text::ThreeToOne)) + wide(Text::TwoToOne) / 2.0 + 6.0;
    let room = frame.x_of(2.0) - frame.x_of(1.0);
    for (x, text, anchor) in [
        (1.0, Text::Square, Align2::LEFT_TOP),
        (2.0, Text::TwoToOne, Align2::CENTER_TOP),
        (LONGEST, Text::ThreeToOne, Align2::RIGHT_TOP),
    ] {
        // Where there is no room for three names, those of the ends stand.
        if text == Text::TwoToOne && ends > room {
            continue;
        }
        below(ui, desk, &frame, x, words.text(text), anchor, false);
    }
}

fn by_nets(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let by_nets = editor.shapes().by_nets();
    if by_nets.len() < 2 {
        return;
    }
    let mut families: Vec<Family> = by_nets.iter().flat_map(|(_, found)| found.iter().map(|one| one.0)).collect();
    families.sort();
    families.dedup();
    let line_of = |family: Family| -> Vec<[f64; 2]> {
        let at = |(nets, found): &(u32, Vec<(Family, f64)>)| {
            found.iter().find(|one| one.0 == family).map(|one| [f64::from(*nets), one.1])
        };
        by_nets.iter().filter_map(at).collect()
    };
    let lines: Vec<(Family, Vec<[f64; 2]>)> = families.into_iter().map(|family| (family, line_of(family))).collect();
    let most = by_nets.iter().map(|(nets, _)| *nets).max().unwrap_or(2);
    let values = lines.iter().flat_map(|(_, points)| points.iter().map(|at| at[1])).chain([0.0]);
    let y = round_range(values, words.area_unit_m2());
    let owned = words.say(Text::YouOwn, &[("count", &editor.nets_owned().to_string())]);
    desk.section(ui, words.text(Text::GroundByNets), &owned, About::Shapes);
    let frame = area_frame(ui, desk, words.text(Text::GroundByNets), (1.0, f64::from(most)), y);
    let chosen = editor.shapes().chosen().map(|one| one.family);
    let nets = f64::from(editor.shapes_nets());
    plot(ui, "ground by nets", &frame, |plot| {
        let here = Stroke::new(1.0, colour(p.ink2));
        plot.vline(VLine::new("nets", nets).stroke(here).style(LineStyle::Dotted { spacing: 4.0 }).allow_hover(false));
        for (family, points) in &lines {
            let loud = chosen == Some(*family);
            let pen = if loud { Stroke::new(2.25, colour(p.ghost)) } else { Stroke::new(1.25, colour(p.ink)) };
            plot.line(line(family.id(), points.clone()).stroke(pen));
        }
    });
    let names = lines.iter().filter_map(|(family, points)| {
        let at = points.last()?[1];
        Some(Name { at, text: shapes::family(*family, words).to_owned(), loud: chosen == Some(*family) })
    });
    name_lines(ui, desk, &frame, names.collect());
    for count in 1..=most {
        let x = f64::from(count);
        below(ui, desk, &frame, x, &count.to_string(), Align2::CENTER_TOP, (x - nets).abs() < 0.5);
    }
}

fn by_minutes(ui: &mut Ui, desk: &mut Desk<'_>) {
    let (words, p, editor) = (desk.words, desk.p, desk.editor);
    let chosen = editor.shapes().chosen_key();
    let mut all: Vec<(f64, f64, String, bool)> = Vec::new();
    let braces = |count: Option<usize>| match count {
        None => words.text(Text::Unknown).to_owned(),
        Some(0) => words.text(Text::BracesNone).to_owned(),
        Some(1) => words.text(Text::BracesOne).to_owned(),
        Some(count) => words.say(Text::BracesMany, &[("count", &count.to_string())]),
    };
    let dot = |name: &str, figures: &workup::Compared, loud: bool| {
        let said = words.say(Text::DotBraces, &[("name", name), ("braces", &braces(figures.braces))]);
        Some((figures.set_up_minutes?, figures.area_m2?, said, loud))
    };
    all.extend(super::own(desk).and_then(|own| dot(words.text(Text::Yours), &own, false)));
    all.extend(
        editor
            .shapes()
            .found()
            .iter()
            .filter_map(|one| dot(&shapes::name(one, words), &one.compared, chosen == Some((one.family, one.wall)))),
    );
    if all.len() < 2 {
        return;
    }
    // A dot at the very edge would be cut in half.
    let beside = |value: f64| [value * 0.99, value * 1.01];
    let x = round_range(all.iter().flat_map(|dot| beside(dot.0)), 1.0);
    let y = round_range(all.iter().flat_map(|dot| beside(dot.1)), words.area_unit_m2());
    desk.section(ui, words.text(Text::WorkByGround), "", About::Shapes);
    let frame = area_frame(ui, desk, words.text(Text::WorkByGround), x, y);
    let (loud, quiet): (Vec<_>, Vec<_>) = all.iter().partition(|dot| dot.3);
    plot(ui, "ground by minutes", &frame, |plot| {
        plot.points(dots("shapes", quiet.iter().map(|dot| [dot.0, dot.1]).collect(), p));
        let chosen = dots("chosen", loud.iter().map(|dot| [dot.0, dot.1]).collect(), p);
        plot.points(chosen.color(colour(p.ghost)).filled(true).radius(5.0));
    });
    // A name stands right of its dot, or left of it near the right edge; one that finds no room is left out.
    let mut taken: Vec<Rect> = all
        .iter()
        .map(|dot| Rect::from_center_size(pos2(frame.x_of(dot.0), frame.y_of(dot.1)), vec2(10.0, 10.0)))
        .collect();
    for (minutes, area_m2, said, loud) in loud.iter().chain(&quiet) {
        let ink = if *loud { p.ghost } else { p.ink2 };
        let galley = ui.painter().layout_no_wrap(said.clone(), theme::regular(11.0), colour(ink));
        let spot = pos2(frame.x_of(*minutes), frame.y_of(*area_m2));
        let size = galley.size();
        let rightward = spot + vec2(8.0, -size.y / 2.0);
        let leftward = spot + vec2(-8.0 - size.x, -size.y / 2.0);
        // Right of the figures of the ground, up to the page's edge.
        let wide = frame.rect.left()..=frame.rect.right() + RIGHT;
        let place = [rightward, leftward].into_iter().map(|at| Rect::from_min_size(at, size)).find(|place| {
            wide.contains(&place.left())
                && wide.contains(&place.right())
                && !taken.iter().any(|other| other.intersects(place.shrink(1.0)))
        });
        if let Some(place) = place {
            ui.painter().galley(place.min, galley, colour(ink));
            taken.push(place);
        }
    }
    for (minutes, anchor) in [(x.0, Align2::LEFT_TOP), (x.1, Align2::RIGHT_TOP)] {
        let text = format!("{} {}", words.minutes_figure(minutes), words.text(Text::MinutesUnit));
        below(ui, desk, &frame, minutes, &text, anchor, false);
    }
}

/// A frame with the ground at its hairlines.
fn area_frame(ui: &mut Ui, desk: &Desk<'_>, name: &str, x: (f64, f64), y: (f64, f64)) -> Frame {
    let words = desk.words;
    let unit_m2 = words.area_unit_m2();
    plot::frame(ui, desk, name, x, y, unit_m2, |at, decimals| words.number(at / unit_m2, decimals))
}
