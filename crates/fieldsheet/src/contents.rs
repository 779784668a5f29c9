//! What the sheet of one run says, as blocks of rows: no places, no sizes.
//!
//! Every figure comes from the workup through `words`; what is added here is the order in which things are told.

mod corners;
mod gates;
mod packing;
mod readings;
mod slope;
mod tape;

use care::Finding;
use drawing::Scene;
use plan::Run;
use words::Words;
use words::texts::Sheet as Text;
use workup::{Corner, Lay, RunWorkup};

use crate::day::Day;
use crate::map::{Marked, Spotted};
use crate::rows::Row;

/// A block: a head, a word beside it, and rows that may be parted.
#[derive(Clone)]
pub(crate) struct Block {
    pub(crate) head: String,
    pub(crate) aside: String,
    pub(crate) rows: Vec<Row>,
}

/// The sheet of one run.
pub(crate) struct Contents {
    /// The run's name.
    pub(crate) title: String,
    /// The day that it is for.
    pub(crate) day: String,
    /// The plan's name, and which of its runs this is where it has several.
    pub(crate) of: String,
    /// Six figures, each with what it tells.
    pub(crate) figures: Vec<(String, String)>,
    /// Blocks on the four columns at the left.
    pub(crate) left: Vec<Block>,
    /// Blocks on the two columns at the right.
    pub(crate) right: Vec<Block>,
    /// Blocks below all of those, two side by side.
    pub(crate) below: Vec<Block>,
    /// How the corners are set out, where the others leave room: else on a page behind them.
    pub(crate) setting_out: Option<Block>,
    /// Head of the lines to write on.
    pub(crate) notes: String,
    /// Foot of every page: what comes first, then what is assumed.
    pub(crate) foot: [String; 2],
    /// Letters of the readings and their places.
    pub(crate) readings: Vec<Spotted>,
    /// Names of the branches' corners and their places.
    pub(crate) marked: Vec<Marked>,
    /// Known places that corners are taped from, those that the map takes in.
    pub(crate) known: Vec<Marked>,
}

/// One run of a scene.
#[derive(Clone, Copy)]
pub(crate) struct Look<'a> {
    pub(crate) scene: Scene<'a>,
    pub(crate) index: usize,
    pub(crate) run: &'a Run,
    pub(crate) worked: Option<&'a RunWorkup>,
    pub(crate) words: Words,
}

impl<'a> Look<'a> {
    pub(crate) fn at(scene: &Scene<'a>, index: usize) -> Option<Self> {
        let run = scene.plan.runs.get(index)?;
        Some(Self { scene: *scene, index, run, worked: scene.workup.runs.get(index), words: scene.words })
    }

    fn lay(self) -> Option<&'a Lay> {
        self.worked?.lay.as_ref()
    }

    fn text(self, text: Text) -> String {
        self.words.text(text).to_owned()
    }

    fn say(self, text: Text, places: &[(&str, &str)]) -> String {
        self.words.say(text, places)
    }

    /// The contents of its sheet.
    pub(crate) fn contents(self, day: Option<Day>) -> Contents {
        let (readings, places) = readings::block(self);
        let left = [self.dangers(), self.tried(), Some(corners::block(self)), readings, Some(self.cautions())];
        let (setting_out, marked, known) = match tape::block(self) {
            Some((block, marked, known)) => (Some(block), marked, known),
            None => (None, Vec::new(), Vec::new()),
        };
        let letters: Vec<String> = places.iter().map(|place| place.letter.clone()).collect();
        Contents {
            title: care::run_name(self.run).to_owned(),
            day: day.map(|day| self.say(Text::ForDay, &[("day", &day.said(self.words))])).unwrap_or_default(),
            of: self.of(),
            figures: self.figures(),
            left: left.into_iter().flatten().collect(),
            right: vec![packing::take_along(self), packing::order(self, &letters)],
            below: [gates::block(self), slope::block(self)].into_iter().flatten().collect(),
            setting_out,
            notes: self.text(Text::Notes),
            foot: [self.text(Text::CodesFirst), self.assumed()],
            readings: places,
            marked,
            known,
        }
    }

    fn figures(self) -> Vec<(String, String)> {
        let none = || ("–".to_owned(), self.text(Text::NotWorkedOut));
        let minutes = |minutes: f64| self.say(Text::Minutes, &[("minutes", &self.words.minutes_figure(minutes))]);
        let Some(lay) = self.lay() else { return vec![none(); 6] };
        let nets = lay.nets.len();
        let length = self.words.length(lay.nets.last().map_or(0.0, |net| net.end_m));
        let net_text = if nets == 1 { Text::NetFigure } else { Text::NetsFigure };
        let braces = lay.braces();
        let strip = self.worked.and_then(|worked| worked.strip.as_ref());
        let weakest = self.worked.and_then(|worked| worked.volts.as_ref()).and_then(|volts| volts.weakest);
        vec![
            (nets.to_string(), self.say(net_text, &[("length", &length)])),
            (lay.posts.len().to_string(), self.text(Text::PostsFigure)),
            if lay.corners_judged {
                let text = if braces == 1 { Text::BraceFigure } else { Text::BracesFigure };
                (braces.to_string(), self.text(text))
            } else {
                none()
            },
            strip.map_or_else(none, |strip| (self.words.area(strip.area_m2), self.text(Text::ToMow))),
            (minutes(lay.set_up_minutes), self.text(Text::ForOnePerson)),
            match weakest {
                None => none(),
                // A reading does not narrow the band yet: it is not fitted.
                Some(weakest) => {
                    let post = self.words.post_number(weakest.post, weakest.branch);
                    let band = self.words.kilovolts_range(weakest.low_kv, weakest.high_kv);
                    let text = if weakest.measured {
                        self.say(Text::WeakestMeasured, &[("band", &band), ("post", &post)])
                    } else {
                        self.say(Text::WeakestNotMeasured, &[("band", &band)])
                    };
                    let tried = care::volts_said::tried(self.run, self.words);
                    let lines: Vec<String> = [Some(text), tried].into_iter().flatten().collect();
                    (self.words.kilovolts(weakest.peak_kv), lines.join("\n"))
                }
            },
        ]
    }

    /// The plan's name, and which of its runs this is: runs may be called alike.
    fn of(self) -> String {
        let runs = self.scene.plan.runs.len();
        let run = (runs > 1)
            .then(|| self.say(Text::RunOf, &[("run", &(self.index + 1).to_string()), ("runs", &runs.to_string())]));
        let title = Some(self.scene.plan.title.clone()).filter(|title| !title.is_empty());
        [title, run].into_iter().flatten().collect::<Vec<_>>().join(" · ")
    }

    /// Which faults the volts on this sheet count, and what the fence would hold without them.
    fn tried(self) -> Option<Block> {
        let (volts, lay) = (self.worked?.volts.as_ref()?, self.lay()?);
        let tried = care::volts_said::tried_and_which(self.run, lay, self.words)?;
        let counted = self.words.say(words::texts::Faults::Counted, &[("tried", &tried)]);
        let said = [Some(counted), care::volts_said::sound(volts, self.words)];
        let rows = said.into_iter().flatten().map(Row::Caution).collect();
        Some(Block { head: self.text(Text::Tried), aside: String::new(), rows })
    }

    /// What may hurt someone at this run, and that it stays open, which keeps no bird in; in the words of its findings.
    fn dangers(self) -> Option<Block> {
        let findings = self.scene.findings;
        let own = findings.runs.get(self.index).map_or(&[][..], Vec::as_slice);
        // What is between two runs stands with one of them and is as near to the other.
        let about_this = |finding: &&Finding| finding.other.as_ref() == Some(&self.run.id);
        let others = findings.runs.iter().flatten().filter(about_this);
        let mut rows: Vec<Row> = own
            .iter()
            .chain(others)
            .chain(&findings.plan)
            .filter(|finding| finding.may_hurt() || finding.id == "net-too-short")
            .map(|finding| Row::Danger(finding.message.clone()))
            .collect();
        // A closed outline without netting all round is among the findings.
        let told = own.iter().any(|finding| finding.id == "net-too-short");
        let open =
            self.worked.and_then(|worked| care::closing_said::open_sentence(self.scene.plan, worked, self.words));
        rows.extend(open.filter(|_| !told).map(Row::Danger));
        if self.lay().is_none() {
            rows.push(Row::Danger(self.text(Text::NotLaid)));
        }
        (!rows.is_empty()).then(|| Block { head: self.text(Text::Dangers), aside: String::new(), rows })
    }

    fn cautions(self) -> Block {
        const CAUTIONS: [Text; 6] = [
            Text::CautionOff,
            Text::CautionPeople,
            Text::CautionTwo,
            Text::CautionBuried,
            Text::CautionOverhead,
            Text::CautionMow,
        ];
        let (off, unit) = self.words.far_parts(FROM_OTHER_EARTH_M);
        let off = format!("{off} {unit}");
        let rows = CAUTIONS.iter().map(|text| Row::Caution(self.say(*text, &[("off", &off)]))).collect();
        Block { head: self.text(Text::BeforeYouStart), aside: self.text(Text::NoProof), rows }
    }

    fn assumed(self) -> String {
        match plan::assumed(self.scene.plan).len() {
            0 => String::new(),
            1 => self.text(Text::AssumedOne),
            count => self.say(Text::Assumed, &[("count", &count.to_string())]),
        }
    }
}

/// The number of a corner or end on the map; none for an end between two vertices.
fn number(lay: &Lay, corner: &Corner) -> Option<usize> {
    let at_vertex = |along_m: f64| (along_m - corner.along_m).abs() < SAME_PLACE_M;
    let vertex = corner.vertex.or_else(|| lay.vertices.iter().position(|(_, along_m)| at_vertex(*along_m)));
    vertex.map(|vertex| vertex + 1)
}

/// Kept between an energizer's earth and any other earth, metres: IEC 60335-2-76, annex BB, as instructions restate it.
const FROM_OTHER_EARTH_M: f64 = 10.0;

/// Places along the line nearer than this are one, metres.
const SAME_PLACE_M: f64 = 1e-3;
