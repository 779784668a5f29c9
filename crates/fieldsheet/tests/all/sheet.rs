//! What the sheet says, as ink and as a file.

use crate::case::{Case, MM, demo, german, round, texts, unmade};
use drawing::Ink;
use fieldsheet::{Day, Page, Paper, Runs, SheetError, pages, sheet};
use plan::{Plan, Point};
use words::Words;

#[test]
fn the_example_stands_on_one_page_of_either_paper_and_is_set_out_by_tape_on_a_second() {
    for paper in [Paper::A4, Paper::Letter] {
        let pages = Case::demo().pages(paper);
        assert_eq!(pages.len(), 2, "{paper:?}");
        assert!(texts(&pages[1]).contains(&"Corners by tape") && texts(&pages[1]).contains(&"Notes"));
        let texts = texts(&pages[0]);
        for want in [
            "Round Quince House",
            "for Friday 18 June 2027",
            "Kettle Field, first grass · sheet 1 of 2",
            "1:500",
            "Take along",
        ] {
            assert!(texts.contains(&want), "{paper:?}: {want} is missing in {texts:?}");
        }
        assert!(texts.iter().any(|text| text.contains("Local codes and licensed practice come before")));
        assert!(texts.iter().any(|text| text.contains("not measured yet")));
        assert!(!texts.iter().any(|text| text.contains('…')), "nothing of the example is cut: {texts:?}");
    }
}

#[test]
fn every_corner_is_listed_once_however_many_there_are() {
    for corners in [26, 70] {
        let case = Case::of(round(corners), Words::default());
        let pages = case.pages(Paper::A4);
        assert!(pages.len() > 1);
        let count = |wanted: &str| pages.iter().flat_map(texts).filter(|text| *text == wanted).count();
        let judged = &case.workup.runs[0].lay.as_ref().unwrap().corners;
        for number in (1..=corners).filter(|number| *number > 9) {
            let listed = judged.iter().filter(|corner| corner.vertex == Some(number - 1)).count();
            // Once in the table; posts and distances are other texts, or the same number by chance.
            assert!(count(&number.to_string()) >= listed, "corner {number}");
        }
        let stakes = pages.iter().flat_map(texts).filter(|text| text.ends_with("outside")).count();
        let wanted = judged.iter().filter(|corner| corner.verdict != workup::Verdict::None).count();
        assert_eq!(stakes, wanted);
        assert_eq!(count("the corner"), count("Corners and braces"), "each part of the table has its heads");
    }
}

#[test]
fn the_sheet_says_what_the_workup_says() {
    let case = Case::demo();
    let pages = case.pages(Paper::A4);
    let texts = texts(&pages[0]);
    let lay = case.workup.runs[0].lay.as_ref().unwrap();
    let volts = case.workup.runs[0].volts.as_ref().unwrap();
    let words = Words::default();
    let weakest = volts.weakest.unwrap();
    let outline = &case.plan.runs[0].outline;
    let side_m = (outline[1].east_m - outline[0].east_m).hypot(outline[1].north_m - outline[0].north_m);
    for want in [
        lay.posts.len().to_string(),
        words.kilovolts(weakest.peak_kv),
        format!("weakest, {}", words.kilovolts_range(weakest.low_kv, weakest.high_kv)),
        words.kilovolts(volts.feed_kv),
        words.area(case.workup.runs[0].strip.as_ref().unwrap().area_m2),
        format!("{} min", words.minutes_figure(lay.set_up_minutes)),
        words.length_parts(side_m).0,
    ] {
        assert!(texts.contains(&want.as_str()), "{want} is missing in {texts:?}");
    }
}

#[test]
fn dangers_come_first_and_a_run_that_is_not_laid_says_so() {
    let mut beneath = demo();
    beneath.ground.hazards[0].path = vec![Point::new(40.0, 96.0), Point::new(45.0, -10.0)];
    let case = Case::of(beneath, Words::default());
    let danger = case.findings.all().find(|finding| finding.severity == care::Severity::Danger).unwrap();
    let pages = case.pages(Paper::A4);
    let texts_of_first = texts(&pages[0]);
    let heads = ["Look out here", "Corners and braces"];
    let order: Vec<&str> = texts_of_first.iter().copied().filter(|text| heads.contains(text)).collect();
    assert_eq!(order, heads);
    let opening: String = danger.message.chars().take(30).collect();
    assert!(texts_of_first.iter().any(|text| text.starts_with(&opening)), "{opening}");

    let case = Case::of(unmade(), Words::default());
    let pages = case.pages(Paper::A4);
    assert!(texts(&pages[0]).iter().any(|text| text.starts_with("This run could not be laid out")));
}

#[test]
fn a_run_that_stays_open_is_told_where_the_keeper_looks_first() {
    let mut open = demo();
    open.runs[0].outline[1].east_m += 1.2;
    let case = Case::of(open, Words::default());
    let short = case.findings.all().find(|finding| finding.id == "net-too-short").unwrap();
    let opening: String = short.message.chars().take(30).collect();
    let pages = case.pages(Paper::A4);
    let texts = texts(&pages[0]);
    assert!(texts.contains(&"Look out here") && texts.iter().any(|text| text.starts_with(&opening)), "{texts:?}");
}

#[test]
fn a_run_that_is_not_there_is_refused() {
    let case = Case::demo();
    let asked = sheet(&case.scene(), Runs::One(7), None, Paper::A4);
    assert_eq!(asked, Err(SheetError::NoSuchRun { run: 7 }));
    let bare = Case::of(Plan { runs: Vec::new(), ..demo() }, Words::default());
    assert_eq!(sheet(&bare.scene(), Runs::All, None, Paper::A4), Err(SheetError::NoRuns));
}

#[test]
fn the_same_scene_gives_the_same_bytes() {
    let case = Case::demo();
    let day = Day::new(2027, 6, 18);
    let bytes = sheet(&case.scene(), Runs::All, day, Paper::A4).unwrap();
    assert!(bytes.starts_with(b"%PDF-1."));
    assert!(bytes == sheet(&case.scene(), Runs::All, day, Paper::A4).unwrap());
    for clock in ["CreationDate", "ModDate"] {
        let found = bytes.windows(clock.len()).any(|part| part == clock.as_bytes());
        assert!(!found, "a file without a clock says no {clock}");
    }
}

#[test]
fn how_the_ground_is_today_is_said_where_it_is_stated() {
    let said = |today: Option<plan::Today>| {
        let mut plan = demo();
        plan.runs.truncate(1);
        plan.ground.today = today;
        let case = Case::of(plan, Words::default());
        case.pages(Paper::A4).iter().flat_map(texts).collect::<Vec<_>>().join(" ").contains("Ground today: wet")
    };
    assert!(said(Some(plan::Today::Wet)) && !said(None));
}

#[test]
fn what_to_take_along_names_what_the_braces_are_made_of() {
    let said = |change: &dyn Fn(&mut Plan)| {
        let mut plan = demo();
        plan.runs.truncate(1);
        change(&mut plan);
        let case = Case::of(plan, Words::default());
        let pages = case.pages(Paper::A4);
        pages.iter().flat_map(texts).map(str::to_owned).collect::<Vec<_>>()
    };
    let plain = said(&|_| ());
    assert!(plain.iter().any(|text| text.starts_with("guys with stakes")), "{plain:?}");
    let set = said(&|plan| {
        let brace = |at: Point| plan::StatedBrace { at, ..plan::StatedBrace::default() };
        let outline = plan.runs[0].outline.clone();
        let two = plan::StatedBrace { pegs: Some(2), peg_length_m: Some(0.45), ..brace(outline[0]) };
        plan.runs[0].braces = vec![two, plan::StatedBrace { kind: plan::BraceKind::Post, ..brace(outline[1]) }];
    });
    for want in ["guy with 2 pegs of 0.45 m", "brace post, 0.45 m deep"] {
        assert!(set.iter().any(|text| text.starts_with(want)), "{want}: {set:?}");
    }
}

#[test]
fn earth_stakes_at_their_places_are_told_and_one_that_is_a_braces_is_carried_once() {
    let guys = |texts: &[String]| texts.iter().any(|text| text.starts_with("guy, an earth stake is its stake"));
    let said = |places: Vec<Point>| {
        let mut plan = demo();
        plan.runs.truncate(1);
        plan.runs[0].earth_stakes = plan::EarthStakes { places, ..plan::EarthStakes::default() };
        let case = Case::of(plan, Words::default());
        let pages = case.pages(Paper::A4);
        pages.iter().flat_map(texts).map(str::to_owned).collect::<Vec<_>>()
    };
    let row = said(Vec::new());
    assert!(row.iter().any(|text| text.starts_with("Earth, lead, switch on")) && !guys(&row), "{row:?}");
    let demo = demo();
    let lay = workup::workup(&demo, workup::Depth::Full).runs.remove(0).lay.unwrap();
    let brace = lay.corners.iter().find(|corner| corner.needs_brace()).unwrap();
    let far = Point::new(
        brace.at.east_m + 4.0 * (brace.stake.at.east_m - brace.at.east_m),
        brace.at.north_m + 4.0 * (brace.stake.at.north_m - brace.at.north_m),
    );
    let placed = said(vec![brace.stake.at, far]);
    assert!(guys(&placed), "{placed:?}");
    assert!(placed.iter().any(|text| text.starts_with("earth stakes, 1.0 m")), "{placed:?}");
    assert!(placed.join(" ").contains("Stakes as on the map, lead, on"), "{placed:?}");
}

#[test]
fn gates_are_told_with_their_posts_and_the_order_of_opening() {
    let mut plan = demo();
    plan.runs.truncate(1);
    assert!(
        !Case::of(plan.clone(), Words::default()).pages(Paper::A4).iter().any(|page| texts(page).contains(&"Gates"))
    );
    plan.runs[0].gates = vec![plan::Gate::new(plan::GateKind::Foot), plan::Gate::new(plan::GateKind::Wheels)];
    let case = Case::of(plan, Words::default());
    let pages = case.pages(Paper::A4);
    let said: String = pages.iter().flat_map(texts).collect::<Vec<_>>().join(" ");
    let worked = &case.workup.runs[0];
    for gate in &worked.gates {
        // The same figures as on the page beside the map and in the report, whatever lines they are set in.
        let figures = care::gate_said::figures(gate, worked.lay.as_ref().unwrap(), case.words).join("; ");
        assert!(said.contains(&figures), "{figures:?} not in {said}");
        let opening = gate.opening.as_ref().unwrap();
        assert!(figures.contains(&format!(" {}", opening.pulled[0] + 1)), "{figures}");
    }
    let at = |words: &str| said.find(words).unwrap_or_else(|| panic!("{words:?} not in {said}"));
    let steps = care::gate_said::steps(case.words).map(at);
    assert!(steps.is_sorted(), "{steps:?}");
    assert!(steps[0] > at("Gates"));
}

#[test]
fn slope_and_wind_are_told_where_the_plan_states_them_and_the_map_gives_way_for_one_page() {
    let pages_of = |change: &dyn Fn(&mut Plan)| {
        let mut plan = demo();
        plan.runs.truncate(1);
        change(&mut plan);
        let case = Case::of(plan, Words::default());
        let pages = case.pages(Paper::A4);
        (case, pages)
    };
    let said = |pages: &[Page]| pages.iter().flat_map(texts).collect::<Vec<_>>().join(" ");
    let (_, bare) = pages_of(&|_| ());
    for head in ["Slope", "Wind", "Slope and wind"] {
        assert!(!bare.iter().flat_map(texts).any(|text| text == head), "{head}");
    }
    let rise = |plan: &mut Plan| {
        let (from, to) = (plan.runs[0].outline[0], plan.runs[0].outline[1]);
        let at = Point::new(f64::midpoint(from.east_m, to.east_m), f64::midpoint(from.north_m, to.north_m));
        plan.runs[0].side_slopes = vec![plan::SideSlope { rises_m: Some(2.0), ..plan::SideSlope::at(at) }];
    };
    let (case, sloped) = pages_of(&rise);
    let line = care::slope_line(case.words, case.workup.runs[0].slope.as_ref().unwrap());
    assert!(said(&sloped).contains(&line), "{line}: {}", said(&sloped));
    let (case, both) = pages_of(&|plan| {
        rise(plan);
        plan.ground.wind_m_per_s = Some(14.0);
    });
    let wind = &case.workup.runs[0].bracing.as_ref().unwrap().wind;
    for line in [care::bracing::wind_line(case.words, wind), care::bracing::wind_asked_line(case.words, wind).unwrap()]
    {
        assert!(said(&both).contains(&line), "{line}: {}", said(&both));
    }
    let (_, both) = pages_of(&|plan| plan.runs[0].gates = vec![plan::Gate::new(plan::GateKind::Foot)]);
    // The map gives up height before anything goes to a second page.
    let tall = |pages: &[Page]| {
        let frame = pages[0].map.as_ref().unwrap().frame;
        frame[3] - frame[1]
    };
    // All but the corners by tape, which stand on a page behind.
    assert_eq!((bare.len(), both.len()), (2, 2));
    assert!(tall(&both) < tall(&bare) && tall(&both) >= 74.9 * MM, "{} {}", tall(&both), tall(&bare));
    // Where it must, gates and slope stand side by side, and the rest of that page is for the pencil.
    let (_, two) = pages_of(&|plan| {
        rise(plan);
        plan.ground.wind_m_per_s = Some(14.0);
        plan.runs[0].gates = vec![plan::Gate::new(plan::GateKind::Foot)];
    });
    let last = two.last().unwrap();
    let top = |head: &str| {
        last.ink.iter().find_map(|item| match item {
            Ink::Text { at, text, .. } if text == head => Some(at[1]),
            _ => None,
        })
    };
    assert!(two.len() > 1 && top("Gates").is_some() && top("Gates") == top("Slope and wind"), "{:?}", texts(last));
    assert!(top("Notes") > top("Gates"));
}

#[test]
fn a_fault_that_is_tried_is_said_on_the_sheet_with_the_sound_figure_beside_it() {
    let sound_case = Case::demo();
    let mut tried = demo();
    let at = tried.runs[0].outline[2];
    let rest = plan::Rest::new();
    tried.runs[0].faults =
        vec![plan::Fault { at, kind: plan::FaultKind::Short, ohm: Some(50.0), lines: None, cause: None, rest }];
    let case = Case::of(tried, Words::default());
    let pages = case.pages(Paper::A4);
    let said = texts(&pages[0]).join(" ");
    assert!(!texts(&sound_case.pages(Paper::A4)[0]).join(" ").contains("ault"));
    assert!(said.contains("with 1 fault") && said.contains("Counted with 1 fault (short at corner 3)."), "{said}");
    let without = sound_case.workup.runs[0].volts.as_ref().unwrap();
    let now = case.workup.runs[0].volts.as_ref().unwrap().weakest.unwrap();
    let then = without.weakest.unwrap();
    assert_ne!(now.post, then.post);
    let kv = |kv| case.words.kilovolts(kv);
    for sentence in [
        format!(
            "Without faults post {}, the weakest now, would hold about {}.",
            now.post + 1,
            kv(without.samples[now.post].peak_kv)
        ),
        format!("The weakest would then be post {}, at about {}.", then.post + 1, kv(then.peak_kv)),
    ] {
        assert!(said.contains(&sentence), "{sentence} is not in {said}");
    }
}

#[test]
fn sheets_of_several_runs_say_whose_they_are_and_count_through() {
    let mut two = demo();
    let mut other = two.runs[0].clone();
    other.id = "other".to_owned();
    two.runs = vec![two.runs[0].clone(), other];
    let name = two.runs[0].name.clone();
    let case = Case::of(two, Words::default());
    let pages = pages(&case.scene(), Runs::All, None, Paper::A4).unwrap();
    let count = pages.len();
    for (number, page) in pages.iter().enumerate() {
        let run = if number < count / 2 { 1 } else { 2 };
        let place = format!("Kettle Field, first grass · run {run} of 2 · sheet {} of {count}", number + 1);
        assert!(texts(page).contains(&place.as_str()), "{place}: {:?}", texts(page));
        assert!(texts(page).contains(&name.as_str()));
    }
    let alone = fieldsheet::pages(&case.scene(), Runs::One(1), None, Paper::A4).unwrap();
    assert!(texts(&alone[0]).iter().any(|text| text.ends_with(&format!("run 2 of 2 · sheet 1 of {}", alone.len()))));
}

#[test]
fn the_order_begins_where_the_map_begins_it_and_goes_the_same_way() {
    for (drop_at, reversed) in [((0.0, 0.0), false), ((0.0, 0.0), true), ((80.0, 40.0), false), ((60.0, 70.0), true)] {
        let mut plan = demo();
        plan.runs[0].drop_at = Some(Point::new(drop_at.0, drop_at.1));
        plan.runs[0].reversed = Some(reversed);
        plan.runs[0].start_m = Some(0.0);
        let case = Case::of(plan, Words::default());
        let worked = &case.workup.runs[0];
        let (lay, order) = (worked.lay.as_ref().unwrap(), &worked.set_up.as_ref().unwrap().order);
        // The way of the first roll by its own posts: those next to its beginning.
        let near = |post: &&workup::Post| post.net == order[0].net;
        let mut posts: Vec<&workup::Post> = lay.posts.iter().filter(near).collect();
        let off = |post: &workup::Post| {
            (post.at.east_m - order[0].from.east_m).hypot(post.at.north_m - order[0].from.north_m)
        };
        posts.sort_by(|one, other| off(one).total_cmp(&off(other)));
        let step_m = (posts[1].along_m - posts[0].along_m + 1.5 * lay.line_m).rem_euclid(lay.line_m) - 0.5 * lay.line_m;
        let from_m = posts[0].along_m;
        let ahead = |along_m: f64| (step_m.signum() * (along_m - from_m)).rem_euclid(lay.line_m);
        let next = lay
            .corners
            .iter()
            .filter(|corner| ahead(corner.along_m) > 0.01 && ahead(corner.along_m) < lay.line_m - 0.01)
            .min_by(|one, other| ahead(one.along_m).total_cmp(&ahead(other.along_m)))
            .unwrap();
        let said = format!("Rolls 1 to {}, first toward corner {}", order.len(), next.vertex.unwrap() + 1);
        let pages = case.pages(Paper::A4);
        assert!(texts(&pages[0]).contains(&said.as_str()), "{said}: {:?}", texts(&pages[0]));
    }
}

/// One side of 120 m drawn from the west: of four rolls of 50 m two stand, one in part, one is wholly left over.
#[test]
fn the_order_begins_at_a_roll_that_stands_and_that_the_map_numbers() {
    let mut left_over = 0;
    let drops = [(0.0, 0.0), (60.0, -30.0), (120.0, 0.0), (150.0, 60.0)];
    for (drop_at, feed_share) in drops.into_iter().flat_map(|drop| [0.0, 0.6, 0.8, 1.0].map(|share| (drop, share))) {
        let mut plan = demo();
        let kind = plan.store.nets[0].id.clone();
        let length_m = plan.store.nets[0].length_m;
        let run = &mut plan.runs[0];
        run.outline = [(0.0, 0.0), (2.4 * length_m, 0.0)].map(Point::from).to_vec();
        (run.closed, run.nets) = (Some(false), Some(vec![kind; 4]));
        (run.start_m, run.reversed, run.pins) = (Some(0.0), Some(false), Vec::new());
        run.drop_at = Some(Point::new(drop_at.0, drop_at.1));
        run.feed_at = Some(Point::new(feed_share * 2.4 * length_m, 0.0));
        let case = Case::of(plan, Words::default());
        let worked = &case.workup.runs[0];
        let (lay, work) = (worked.lay.as_ref().unwrap(), worked.set_up.as_ref().unwrap());
        let drawing = drawing::map::map(&case.scene());
        let mut numbers: Vec<usize> = drawing
            .shapes()
            .filter_map(|shape| match shape.role {
                drawing::Role::Roll { number, .. } => Some(number),
                _ => None,
            })
            .collect();
        numbers.sort_unstable();
        assert_eq!(numbers, work.standing(lay).map(|(roll, _)| roll.number).collect::<Vec<_>>());
        assert_eq!(numbers.len(), 3, "the map numbers what stands");
        left_over += usize::from(lay.stands_m(work.order[0].net).is_none());
        let first = &work.order[numbers[0] - 1];
        let (start, end) = (lay.nets[first.net].start_m, lay.nets[first.net].end_m.min(lay.line_m));
        let chain_m = if first.forward { start } else { end };
        // The chain may run from either end.
        let from_m = if lay.reversed { lay.start_m - chain_m } else { lay.start_m + chain_m };
        let corner = if first.forward == lay.reversed { 1 } else { 2 };
        let toward = format!("Rolls {} to {}, first toward corner {corner}", numbers[0], numbers[2]);
        let said = texts(&case.pages(Paper::A4)[0]).join("\n");
        let begin = match from_m {
            from_m if from_m < 0.05 => "First post at corner 1".to_owned(),
            from_m if from_m > lay.line_m - 0.05 => "First post at corner 2".to_owned(),
            from_m => format!("First post {} past corner 1", case.words.length(from_m)),
        };
        assert!(said.contains(&begin) && said.contains(&toward), "{begin}; {toward}: {said}");
    }
    assert!(left_over > 0, "in none of these the first roll is left over");
}

/// A square of 25 m: its sides and diagonals; from two known places each corner by Pythagoras.
#[test]
fn corners_are_set_out_by_tape_from_each_other_and_from_known_places() {
    let mut plan = demo();
    plan.runs.truncate(1);
    plan.runs[0].outline = [(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)].map(Point::from).to_vec();
    let said = |plan: &Plan, words: Words| {
        let pages = Case::of(plan.clone(), words).pages(Paper::A4);
        texts(pages.last().unwrap()).join(" ")
    };
    let own = said(&plan, Words::default());
    for want in [
        "longest 35.36 m",
        "25.00 m from 2 35.36 m from 1 right",
        "25.00 m from 3 25.00 m from 1 right",
        "Set corner 1 where the map has it, corner 2 from there in the direction the map shows, then the others in this",
        "Check: 2 to 4 is 35.36 m.",
    ] {
        assert!(own.contains(want), "{want}: {own}");
    }
    assert!(said(&plan, german()).contains("25,00 m ab 2 35,36 m ab 1 rechts"));
    let point = |name: &str, at: (f64, f64)| plan::TapePoint {
        name: name.to_owned(),
        at: at.into(),
        ..plan::TapePoint::default()
    };
    plan.tape_points = vec![point("gatepost", (0.0, -30.0)), point("oak", (40.0, -30.0))];
    let known = said(&plan, Words::default());
    // (0, 0): 30 and 50. (25, 25): 60.42 and 57.01, the roots of 25² + 55² and 15² + 55².
    for want in ["P gatepost, Q oak", "30.00 m from P 50.00 m from Q left", "60.42 m from P 57.01 m from Q left"] {
        assert!(known.contains(want), "{want}: {known}");
    }
    assert!(!known.contains("the map"), "{known}");
    // One known place that corner 1 stands at: where corner 2 lies from there no tape tells.
    plan.tape_points = vec![point("gatepost", (0.0, 0.0))];
    let at_corner = said(&plan, Words::default());
    for want in
        ["1 0.00 m from P – –", "2 25.00 m from", "Set corner 2 in the direction the map shows, then the others"]
    {
        assert!(at_corner.contains(want), "{want}: {at_corner}");
    }
    assert!(!at_corner.contains("in line") && !at_corner.contains("where the map has it"), "{at_corner}");
    // One apart from it: corner 1 is what no tape gives the direction of.
    plan.tape_points = vec![point("gatepost", (0.0, -30.0))];
    let apart = said(&plan, Words::default());
    assert!(apart.contains("Set corner 1 in the direction the map shows, then the others"), "{apart}");
    let turned = said(&plan, german());
    assert!(turned.contains("Ecke 1 in der Richtung setzen, die die Karte zeigt"), "{turned}");
}

/// A known place that is taped from is on the map, or the sheet says where it lies.
#[test]
fn known_places_are_on_the_map_where_they_lie_near_and_told_where_they_lie_far() {
    let mut plan = demo();
    plan.runs.truncate(1);
    plan.runs[0].outline = [(0.0, 0.0), (25.0, 0.0), (25.0, 25.0), (0.0, 25.0)].map(Point::from).to_vec();
    let place = |name: &str, at: (f64, f64)| plan::TapePoint {
        name: name.to_owned(),
        at: at.into(),
        ..plan::TapePoint::default()
    };
    // Letters that lie on the map, and all that the sheet says.
    let on_map = |plan: &Plan, words: Words| {
        let case = Case::of(plan.clone(), words);
        let pages = case.pages(Paper::A4);
        let framed = pages[0].map.as_ref().unwrap();
        let [left, top, right, bottom] = framed.frame;
        let within = |[x, y]: [f32; 2]| (left..=right).contains(&x) && (top..=bottom).contains(&y);
        let letters: Vec<String> = framed
            .ink
            .iter()
            .chain(&pages[0].ink)
            .filter_map(|item| match item {
                Ink::Text { text, at, .. } if within(*at) && ["P", "Q"].contains(&text.as_str()) => Some(text.clone()),
                _ => None,
            })
            .collect();
        let said: Vec<String> = pages.iter().flat_map(texts).map(str::to_owned).collect();
        (letters, said.join(" "))
    };
    plan.tape_points = vec![place("gatepost", (0.0, -30.0)), place("oak", (40.0, -30.0))];
    let (letters, said) = on_map(&plan, Words::default());
    assert_eq!(letters, ["P", "Q"]);
    assert!(!said.contains("off this map"), "{said}");
    // 300 m north-east: the run would be a speck beside it. P stays on the map.
    plan.tape_points[1] = place("church", (240.0, 180.0));
    let (letters, said) = on_map(&plan, Words::default());
    assert_eq!(letters, ["P"]);
    assert!(said.contains("Q church lies off this map: 300.0 m from corner 1, at 53° (north-east)."), "{said}");
    let (_, german) = on_map(&plan, german());
    assert!(german.contains("Q church liegt nicht auf dieser Karte: 300,0 m von Ecke 1"), "{german}");
    // One without a letter is not taped from, and not told of.
    plan.tape_points =
        vec![place("gatepost", (0.0, -30.0)), place("oak", (40.0, -30.0)), place("church", (240.0, 180.0))];
    let (letters, said) = on_map(&plan, Words::default());
    assert!(letters == ["P", "Q"] && !said.contains("church"), "{letters:?}");
    // A sheet seen from afar has letters too: a run of 40 nets.
    plan.runs[0].outline = [(0.0, 0.0), (500.0, 0.0), (500.0, 500.0), (0.0, 500.0)].map(Point::from).to_vec();
    plan.tape_points = vec![place("gatepost", (0.0, -120.0)), place("oak", (500.0, -120.0))];
    let (letters, _) = on_map(&plan, Words::default());
    assert_eq!(letters, ["P", "Q"]);
}
