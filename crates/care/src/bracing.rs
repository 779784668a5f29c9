//! Soil, braces and wind in words, and what the keeper should know of them.
//!
//! The sentences are shared by the window, the report and the sheet, so that each is worded once.

use plan::{BraceKind, ByFoot, Run, SoilTable, SoilWord, Today};
use words::Words;
use words::texts::{Bracing as Text, Power};
use workup::bracing::{Evidence, GoesOver, Holding, Kit, Mend, MendKind, SoilFound, Wind};
use workup::{Corner, RunWorkup, Verdict};

use crate::limits::{OWN_FORMAT, STATICS, WIND};
use crate::{Finding, Look, Severity, run_name};

/// What a corner does with what is set, not what it would do without.
pub fn verdict(corner: &Corner) -> Text {
    match (corner.braced, corner.verdict) {
        (_, Verdict::None) => Text::Stands,
        (true, _) if corner.holds => Text::HeldByBrace,
        (true, Verdict::Required) => Text::StillLeans,
        (_, Verdict::Advised) => Text::MayLean,
        (false, Verdict::Required) => Text::WillLean,
    }
}

/// A class's word as it is said.
pub fn class_word(word: SoilWord) -> Text {
    match word {
        SoilWord::VerySoft => Text::VerySoft,
        SoilWord::Soft => Text::Soft,
        SoilWord::SoftToFirm => Text::SoftToFirm,
        SoilWord::Medium => Text::Medium,
        SoilWord::Firm => Text::Firm,
        SoilWord::FirmToStiff => Text::FirmToStiff,
        SoilWord::Stiff => Text::Stiff,
        SoilWord::VeryStiff => Text::VeryStiff,
        SoilWord::Hard => Text::Hard,
        SoilWord::VeryLoose => Text::VeryLoose,
        SoilWord::Loose => Text::Loose,
        SoilWord::Dense => Text::Dense,
        SoilWord::VeryDense => Text::VeryDense,
    }
}

/// How a spike goes in, as it is said.
pub fn foot_word(foot: ByFoot) -> Text {
    match foot {
        ByFoot::PushesIn => Text::PushesIn,
        ByFoot::Firm => Text::FirmFoot,
        ByFoot::NeedsBar => Text::NeedsBar,
        ByFoot::Refuses => Text::Refuses,
    }
}

/// The ground in two or three words, such as `firm clay`: the class's own where one counts.
pub fn kind(words: Words, soil: &SoilFound) -> String {
    if let (Evidence::Class, Some(table), Some(word)) = (soil.evidence, soil.table, soil.word) {
        let text = if table.is_clay() { Text::KindOfClay } else { Text::KindOfSand };
        return words.say(text, &[("class", words.text(class_word(word)))]);
    }
    let text = match soil.holding {
        _ if soil.refuses => Text::KindNothing,
        Holding::Sand(..) => Text::KindSand,
        Holding::Clay(kpa) => match SoilTable::word_of_clay(kpa) {
            SoilWord::VerySoft => Text::KindVerySoft,
            SoilWord::Soft => Text::KindSoft,
            SoilWord::Stiff => Text::KindStiff,
            SoilWord::VeryStiff => Text::KindVeryStiff,
            SoilWord::Hard => Text::KindHard,
            _ => Text::KindFirm,
        },
    };
    words.text(text).to_owned()
}

/// On what the soil rests, and how the ground is today where that is said.
pub fn soil_line(words: Words, soil: &SoilFound) -> String {
    let rests = rests_on(words, soil);
    today_line(words, soil).map_or(rests.clone(), |today| format!("{rests} {today}"))
}

/// How the ground is today, in a sentence; `None` where nothing is said of it.
pub fn today_line(words: Words, soil: &SoilFound) -> Option<String> {
    let word = words.text(today_word(soil.today?));
    Some(words.say(Power::TodaySaid, &[("word", word)]))
}

/// The word for the ground today.
pub fn today_word(today: Today) -> Power {
    match today {
        Today::Dry => Power::Dry,
        Today::Damp => Power::Damp,
        Today::Wet => Power::Wet,
        Today::Frozen => Power::Frozen,
    }
}

/// On what the soil rests, in a sentence that names the set of words where a class counts.
fn rests_on(words: Words, soil: &SoilFound) -> String {
    let class = |word: SoilWord| words.text(class_word(word)).to_owned();
    let kind = kind(words, soil);
    let line = match (soil.evidence, soil.table, soil.word) {
        (Evidence::Default, ..) => words.say(Text::LineDefault, &[("kind", &kind)]),
        (Evidence::ByFoot, Some(table), Some(word)) => words.say(
            Text::LineByFoot,
            &[("kind", &kind), ("class", &class(word)), ("source", words.source(table.source()))],
        ),
        (Evidence::ByFoot, ..) => words.text(Text::LineRefuses).to_owned(),
        (Evidence::Class, Some(SoilTable::Sands), Some(word)) => {
            let class = words::capital(&class(word));
            words.say(Text::LineSand, &[("class", &class), ("source", words.source(SoilTable::Sands.source()))])
        }
        (Evidence::Class, Some(table), Some(word)) => {
            let set = if table == SoilTable::British { Text::SetBritish } else { Text::SetAmerican };
            let places = [
                ("class", &words::capital(&class(word))[..]),
                ("set", words.text(set)),
                ("source", words.source(table.source())),
            ];
            words.say(Text::LineClass, &places)
        }
        (Evidence::Class | Evidence::Stated, ..) => words.text(Text::LineStated).to_owned(),
        (Evidence::PullTest, ..) => words.say(Text::LinePulled, &[("kind", &kind)]),
        (Evidence::CornersSeen, ..) => words.say(Text::LineSeen, &[("kind", &kind)]),
    };
    if !soil.wet || soil.refuses {
        return line;
    }
    let share = words.percent(soil.wet_factor);
    format!("{line} {}", words.say(Text::WetAs, &[("share", &share)]))
}

/// A mend in a few words, such as `guy to a peg of 0.30 m`.
pub fn mend(words: Words, mend: &Mend) -> String {
    let length = words.fine_length(mend.length_m);
    match (mend.kind, &mend.cut) {
        (_, Some(cut)) => words
            .say(Text::CutOver, &[("posts", &cut.places.len().to_string()), ("turn", &words.degrees(cut.turn_deg))]),
        (MendKind::LongerPeg, _) => words.say(Text::LongerPeg, &[("length", &length)]),
        (MendKind::LongerPegs, _) => words.say(Text::LongerPegs, &[("length", &length)]),
        (MendKind::BracePost, _) => {
            kit(words, Kit { kind: BraceKind::Post, pegs: 0, length_m: mend.length_m, earth: false })
        }
        (MendKind::Guy | MendKind::SecondPeg | MendKind::CutCorner, _) => {
            kit(words, Kit { kind: BraceKind::Guy, pegs: mend.pegs, length_m: mend.length_m, earth: false })
        }
    }
}

/// What a brace is made of, in the words of a mend.
pub fn kit(words: Words, kit: Kit) -> String {
    let length = words.fine_length(kit.length_m);
    match (kit.kind, kit.own_pegs()) {
        (BraceKind::Guy, 0) if kit.earth => words.text(Text::GuyOnEarth).to_owned(),
        (BraceKind::Guy, pegs) if kit.earth => {
            words.say(Text::GuyOnEarthMore, &[("pegs", &pegs.to_string()), ("length", &length)])
        }
        (BraceKind::Post, _) => words.say(Text::BracePost, &[("length", &length)]),
        (BraceKind::Guy, 0 | 1) => words.say(Text::Guy, &[("length", &length)]),
        (BraceKind::Guy, 2) => words.say(Text::GuyTwo, &[("length", &length)]),
        (BraceKind::Guy, pegs) => words.say(Text::GuyMany, &[("pegs", &pegs.to_string()), ("length", &length)]),
    }
}

/// What a mend costs, in a few words.
pub fn mend_cost(words: Words, mend: &Mend) -> String {
    let minutes = words.number(mend.minutes, 1);
    let Some(cut) = &mend.cut else {
        return words.say(Text::MendCost, &[("minutes", &minutes), ("things", &mend.carried.to_string())]);
    };
    let (area, spare) = (words.area(cut.lost_m2.abs()), words.length(cut.shorter_m));
    let text = if cut.lost_m2 > 0.0 {
        Text::CutCost
    } else if cut.lost_m2 < 0.0 {
        Text::CutCostWon
    } else {
        Text::CutCostOpen
    };
    words.say(text, &[("minutes", &minutes), ("area", &area), ("spare", &spare)])
}

/// Where the places of a cut fall from the posts, in a sentence; `None` where they meet or nobody knows yet.
pub fn cut_off_posts(words: Words, mend: &Mend) -> Option<String> {
    let off_m = mend.cut.as_ref()?.off_post_m.filter(|off_m| *off_m >= geometry::MEET_M)?;
    Some(words.say(Text::CutOffPosts, &[("off", &words.fine_length(off_m))]))
}

/// A ratio of hold to pull, such as `2.6×`.
pub fn times(words: Words, safety: f64) -> String {
    let shown = if safety.is_finite() { words.number(safety.min(99.0), 1) } else { words.number(99.0, 0) };
    words.say(Text::Times, &[("times", &shown)])
}

/// The posts that go over first, as the map counts them, at the beginning of a sentence.
pub fn first_posts(words: Words, over: &GoesOver) -> String {
    posts_said(words, over, [Text::WindOnePost, Text::WindPosts, Text::WindAlike])
}

/// The same within a sentence.
pub fn first_posts_within(words: Words, over: &GoesOver) -> String {
    posts_said(words, over, [Text::WindOnePostWithin, Text::WindPostsWithin, Text::WindAlikeWithin])
}

fn posts_said(words: Words, over: &GoesOver, [one, several, alike]: [Text; 3]) -> String {
    let mut posts = over.posts.clone();
    posts.sort_unstable();
    // Neighbours are told as one; over the chain's start the numbers begin anew.
    let mut ranges: Vec<(usize, usize)> = Vec::new();
    for post in posts {
        match ranges.last_mut() {
            Some((_, last)) if post <= *last + 1 => *last = post,
            _ => ranges.push((post, post)),
        }
    }
    let number = |post: usize| (post + 1).to_string();
    match ranges.as_slice() {
        [] => String::new(),
        &[(only, last)] if only == last => words.say(one, &[("first", &number(only))]),
        many if many.len() > MOST_RANGES => words.say(alike, &[("count", &over.alike.to_string())]),
        many => {
            let range = |&(first, last): &(usize, usize)| {
                if first == last {
                    return number(first);
                }
                words.say(Text::WindRange, &[("first", &number(first)), ("last", &number(last))])
            };
            let ranges: Vec<String> = many.iter().map(range).collect();
            words.say(several, &[("ranges", &ranges.join(", "))])
        }
    }
}

/// More ranges of posts than this tell a keeper less than how many straights they are of.
const MOST_RANGES: usize = 3;

/// The wind on a run in a sentence.
pub fn wind_line(words: Words, wind: &Wind) -> String {
    let (Some(clean), Some(fouled)) = (&wind.clean, &wind.fouled) else {
        return words.text(Text::WindNone).to_owned();
    };
    words.say(
        Text::WindSentence,
        &[
            ("clean", &words.wind(clean.limit_m_per_s)),
            ("fouled", &words.wind(fouled.limit_m_per_s)),
            ("posts", &first_posts(words, fouled)),
        ],
    )
}

/// How many posts go over in the wind that is to be stood; `None` where none is stated.
pub fn wind_asked_line(words: Words, wind: &Wind) -> Option<String> {
    let (stated, clean, fouled) = (wind.wanted_m_per_s?, wind.clean.as_ref()?, wind.fouled.as_ref()?);
    let count = |over: Option<usize>| over.unwrap_or(0).to_string();
    let places = [
        ("wind", &*words.wind(stated)),
        ("clean", &*count(clean.over)),
        ("fouled", &*count(fouled.over)),
        ("free", &*clean.free.to_string()),
    ];
    Some(words.say(Text::WindOver, &places))
}

/// What is found of the ground.
pub(crate) fn of_plan(look: Look<'_>) -> Option<Finding> {
    let refuses = look.workup.soil.as_ref().is_some_and(|soil| soil.refuses);
    (refuses && !look.plan.runs.is_empty()).then(|| {
        Finding::new("soil-refuses", Severity::Warning, plan::defaults::COMMON_PRACTICE)
            .says(look.words.text(Text::SoilRefuses))
    })
}

/// What is found of a run in the wind that it must stand.
pub(crate) fn of_run(look: Look<'_>, run: &Run, worked: &RunWorkup) -> Option<Finding> {
    let wind = &worked.bracing.as_ref()?.wind;
    let (wanted, clean, fouled) = (wind.wanted_m_per_s?, wind.clean.as_ref()?, wind.fouled.as_ref()?);
    let (over, text, severity) = match (clean.over, fouled.over) {
        (Some(1..), _) => (clean, Text::WindOverFinding, Severity::Warning),
        (_, Some(1..)) => (fouled, Text::WindOverFouled, Severity::Note),
        _ => return None,
    };
    let posts = first_posts_within(look.words, over);
    let places = [("run", run_name(run)), ("wind", &look.words.wind(wanted)), ("posts", posts.as_str())];
    let why = [("clean", look.words.wind(clean.limit_m_per_s)), ("fouled", look.words.wind(fouled.limit_m_per_s))];
    Some(
        Finding::new("posts-go-over", severity, WIND)
            .says(look.words.say(text, &places))
            .because(look.words.say(Text::WindOverWhy, &[(why[0].0, &why[0].1), (why[1].0, &why[1].1)]))
            .at([over.at]),
    )
}

/// A class that its table does not have.
pub(crate) fn no_such_class(look: Look<'_>, table: SoilTable, name: SoilWord) -> Finding {
    let words = look.words;
    let known: Vec<&str> = table.classes().iter().map(|class| words.text(class_word(class.name))).collect();
    let word = words.text(class_word(name));
    Finding::new("no-such-class", Severity::Warning, OWN_FORMAT).says(words.say(
        Text::NoSuchClass,
        &[("word", word), ("table", words.source(table.source())), ("known", &known.join(", "))],
    ))
}

/// A corner seen of which nobody knows how far it turned.
pub(crate) fn seen_nowhere(look: Look<'_>, index: usize) -> Finding {
    Finding::new("seen-nowhere", Severity::Note, OWN_FORMAT)
        .says(look.words.say(Text::SeenNowhere, &[("number", &(index + 1).to_string())]))
        .at(look.plan.ground.soil.corners_seen.get(index).map(|seen| seen.at))
}

/// Corners seen that say one thing and its opposite.
pub(crate) fn contradict(look: Look<'_>, stood: usize, leaned: usize) -> Finding {
    let seen = &look.plan.ground.soil.corners_seen;
    let places = [("stood", &(stood + 1).to_string()[..]), ("leaned", &(leaned + 1).to_string())];
    Finding::new("corners-contradict", Severity::Note, STATICS)
        .says(look.words.say(Text::SeenContradict, &places))
        .at([stood, leaned].into_iter().filter_map(|index| seen.get(index)).map(|seen| seen.at))
}
