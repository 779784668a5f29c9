//! The smallest window, in German and with longer words: each figure whole, everything in reach, the plan in sight.

use crate::hand::{Desk, example, on_page, settle, spot, window};
use desktop::editor::{Message, Page};
use egui::accesskit::Role;
use egui::{Rect, Vec2, vec2};
use egui_kittest::kittest::{NodeT, Queryable};
use words::texts::{Many, Window as Text};
use words::{Language, Units, Words};

const SMALL: [f32; 2] = [900.0, 600.0];
const LANGUAGES: [Language; 3] = [Language::English, Language::German, Language::Longer];

fn words(language: Language) -> Words {
    Words { language, units: Units::Metric }
}

fn all() -> Rect {
    Rect::from_min_size(egui::Pos2::ZERO, Vec2::from(SMALL))
}

/// What stands at the foot, from left to right: what is said, and where.
fn foot(desk: &Desk) -> Vec<(String, Rect)> {
    let nodes =
        desk.query_all_by_role(Role::Button).filter(|node| (SMALL[1] - 48.0..SMALL[1]).contains(&node.rect().top()));
    let mut found: Vec<_> = nodes.filter_map(|node| Some((node.accesskit_node().label()?, node.rect()))).collect();
    found.sort_by(|one, other| one.1.left().total_cmp(&other.1.left()));
    found
}

/// Every text that is painted, with its place.
fn texts(desk: &Desk) -> Vec<(String, Rect)> {
    fn of(shape: &egui::Shape, found: &mut Vec<(String, Rect)>) {
        match shape {
            egui::Shape::Text(text) => {
                found.push((text.galley.text().to_owned(), text.galley.rect.translate(text.pos.to_vec2())));
            }
            egui::Shape::Vec(all) => all.iter().for_each(|shape| of(shape, found)),
            _ => {}
        }
    }
    let mut found = Vec::new();
    desk.output().shapes.iter().for_each(|one| of(&one.shape, &mut found));
    found
}

#[test]
fn no_figure_at_the_foot_is_without_its_unit_and_none_runs_into_another() {
    for language in LANGUAGES {
        let words = words(language);
        let desk = on_page(example(), Page::Run, SMALL, words);
        let foot = foot(&desk);
        for pair in foot.windows(2) {
            // Each answers a little beyond its own words.
            assert!(pair[0].1.right() - 6.0 <= pair[1].1.left() + 6.0, "{language:?}: {pair:?}");
        }
        assert!(foot.iter().all(|(_, place)| all().expand(8.0).contains_rect(*place)), "{language:?}: {foot:?}");
        let painted = texts(&desk);
        let worked = window(&desk).editor().run().unwrap().1;
        let (line, unit) = words.length_parts(worked.lay.as_ref().unwrap().line_m);
        let (strip, ground) = words.area_parts(worked.strip.as_ref().unwrap().area_m2);
        let mut told = 0;
        for (label, figure, unit) in [(Text::Length, line, unit), (Text::Strip, strip, ground)] {
            let label = words.text(label);
            let Some((_, place)) = foot.iter().find(|(said, _)| said.starts_with(&format!("{label} {figure}"))) else {
                continue;
            };
            let here = |text: &str| painted.iter().any(|(said, at)| said == text && place.contains_rect(*at));
            assert!(here(&figure) && here(unit), "{language:?}: {label} {figure} {unit}");
            told += 1;
        }
        assert!(told > 0, "{language:?}: {foot:?}");
        for must in [Text::Weakest, Text::Findings] {
            let must = words.text(must);
            assert!(foot.iter().any(|(said, _)| said.starts_with(must)), "{language:?}: {must}");
        }
    }
}

#[test]
fn the_list_of_everything_is_reached_from_the_head() {
    for language in LANGUAGES {
        let words = words(language);
        let mut desk = on_page(example(), Page::Run, SMALL, words);
        let button = |desk: &Desk| {
            let label = words.text(Many::Everything);
            let mut all = desk.query_all_by_label(label).filter(|node| node.accesskit_node().role() == Role::Button);
            all.next().map(|node| node.rect())
        };
        let place = button(&desk).expect("the button is there");
        assert!(all().contains_rect(place) && place.bottom() <= 44.0, "{language:?}: {place:?}");
        crate::hand::click(&mut desk, place.center());
        settle(&mut desk);
        assert!(window(&desk).editor().is_listing(), "{language:?}");
    }
}

#[test]
fn no_plate_of_an_open_page_touches_the_name_beside_it() {
    for (size, language) in [(SMALL, 0), (SMALL, 1), (SMALL, 2), ([1280.0, 800.0], 0), ([1280.0, 800.0], 1)] {
        let words = words(LANGUAGES[language]);
        let mut desk = on_page(example(), Page::Run, size, words);
        let names =
            [Text::Ground, Text::Run, Text::Power, Text::Moves, Text::Book, Text::Sheet].map(|name| words.text(name));
        for (index, page) in Page::ALL.into_iter().enumerate() {
            desk.state_mut().as_mut().unwrap().say(Message::Open(page));
            settle(&mut desk);
            // A tab answers on all of its plate but 2 px at either side.
            let plate = desk.get_by_role_and_label(Role::Tab, names[index]).rect().expand2(vec2(2.0, 0.0));
            let painted: Vec<_> = texts(&desk).into_iter().filter(|(_, at)| at.bottom() <= 44.0).collect();
            for (other, name) in names.iter().enumerate().filter(|(other, _)| *other != index) {
                let at = painted
                    .iter()
                    .filter(|(said, _)| said == name)
                    .map(|(_, at)| *at)
                    .max_by(|a, b| a.left().total_cmp(&b.left()));
                let at = at.unwrap_or_else(|| panic!("{name} is painted"));
                let apart = if other < index { plate.left() - at.right() } else { at.left() - plate.right() };
                assert!(apart >= 4.0, "{size:?}: {} is {apart} from the plate of {}", name, names[index]);
            }
            let own = painted
                .iter()
                .filter(|(said, _)| said == names[index])
                .map(|(_, at)| *at)
                .max_by(|a, b| a.left().total_cmp(&b.left()));
            let own = own.unwrap();
            assert!(plate.left() + 6.0 <= own.left() && own.right() + 6.0 <= plate.right(), "{own:?} in {plate:?}");
            assert!(plate.right() <= size[0] - 1.0, "{plate:?}");
        }
    }
}

#[test]
fn the_plan_is_in_sight_at_first_and_when_the_window_was_larger() {
    let in_sight = |desk: &Desk, language: Language| {
        let map = desk.get_by_label(words(language).text(Text::Map)).rect();
        let plan = window(desk).editor().plan();
        let places = plan.ground.boundary.iter().chain(&plan.runs[0].outline);
        for &at in places {
            assert!(
                map.shrink(8.0).contains(spot(desk, at)),
                "{language:?}: {at:?} is at {:?} of {map:?}",
                spot(desk, at)
            );
        }
    };
    for language in LANGUAGES {
        for page in Page::ALL {
            let desk = on_page(example(), page, SMALL, words(language));
            in_sight(&desk, language);
        }
        let mut desk = on_page(example(), Page::Run, [1600.0, 1000.0], words(language));
        desk.set_size(Vec2::from(SMALL));
        settle(&mut desk);
        in_sight(&desk, language);
    }
}
