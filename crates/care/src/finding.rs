//! One finding, and the findings of a plan.

use plan::{Point, Shape};

/// How much a finding weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// Good to know.
    Note,
    /// It will not work as hoped.
    Warning,
    /// Someone may be hurt.
    Danger,
}

impl Severity {
    /// Its name in the report.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Note => "note",
            Self::Warning => "warning",
            Self::Danger => "danger",
        }
    }
}

/// What a finding is about, where that is one thing of the plan or of what follows from it: what a keeper takes in hand to
/// mend it. Places are those in the lists of the plan, of the run and of its lay.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum Subject {
    /// The run that it is of, or the plan.
    #[default]
    Whole,
    /// An outline or a path, and the corner of it that is meant.
    Outline(Shape, Option<usize>),
    /// A corner of the run's lay, or an end of it, with its brace.
    Corner(usize),
    /// A branch of the run.
    Branch(usize),
    /// A coop: the plan's own where it has one, then the others.
    Coop(usize),
    /// The way into the paddock.
    Gateway,
    /// A post of the run's line.
    Post(usize),
    /// A gate of the run.
    Gate(usize),
    /// A pin of the run.
    Pin(usize),
    /// A fault on the run's line, or on one of its branches.
    Fault(Option<usize>, usize),
    /// A stretch of grass on the run's line, or on one of its branches.
    Zone(Option<usize>, usize),
    /// An earth stake of the run.
    EarthStake(usize),
    /// Where the run's energizer stands.
    Energizer,
    /// Where the run is fed.
    Feed,
    /// An energizer of the store, by its id.
    Unit(String),
    /// A net of the store, by its id.
    Net(String),
    /// A figure, by its key in the file, such as `store.nets[0].length_m`.
    Figure(String),
}

/// Something that the keeper should know.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// Its stable id, such as `corner-leans`.
    pub id: &'static str,
    /// How much it weighs.
    pub severity: Severity,
    /// One sentence, without jargon.
    pub message: String,
    /// What mends it, in a few words; empty where the sentence says it.
    pub mend: String,
    /// The figures behind it; empty where there are none.
    pub why: String,
    /// Where; empty where it has no place.
    pub at: Vec<Point>,
    /// The publication, `common practice, no source`, or `from memory`.
    pub source: &'static str,
    /// What it is about.
    pub subject: Subject,
    /// The id of another run that it is about as well: of two runs it stands with the later one alone.
    pub other: Option<String>,
}

/// Warnings that are about someone's safety all the same: a shock that strays, one that is too strong, a danger that
/// could not be looked at.
const ABOUT_SAFETY: [&str; 6] = [
    "stake-near-net",
    "earths-near",
    "foreign-earth-unchecked",
    "hazard-without-path",
    "energizer-above-limit",
    "energizer-long-impulse",
];

/// The findings of a plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Findings {
    /// Those of each run, in the plan's order.
    pub runs: Vec<Vec<Finding>>,
    /// Those of the plan as a whole.
    pub plan: Vec<Finding>,
}

impl Findings {
    /// All of them, the whole plan's first.
    pub fn all(&self) -> impl Iterator<Item = &Finding> {
        self.plan.iter().chain(self.runs.iter().flatten())
    }
}

impl Finding {
    /// Whether it goes onto the paper that is taken into the field, as what may hurt someone there.
    pub fn may_hurt(&self) -> bool {
        self.severity == Severity::Danger || ABOUT_SAFETY.contains(&self.id)
    }

    /// A finding that says nothing yet.
    pub(crate) fn new(id: &'static str, severity: Severity, source: &'static str) -> Self {
        let (message, mend, why) = (String::new(), String::new(), String::new());
        Self { id, severity, message, mend, why, at: Vec::new(), source, subject: Subject::Whole, other: None }
    }

    /// Its sentence.
    pub(crate) fn says(mut self, message: impl Into<String>) -> Self {
        self.message = message.into();
        self
    }

    /// Its mend.
    pub(crate) fn mends(mut self, mend: impl Into<String>) -> Self {
        self.mend = mend.into();
        self
    }

    /// Its figures.
    pub(crate) fn because(mut self, why: impl Into<String>) -> Self {
        self.why = why.into();
        self
    }

    /// What it is about.
    pub(crate) fn about(mut self, subject: Subject) -> Self {
        self.subject = subject;
        self
    }

    /// The other run that it is about.
    pub(crate) fn with(mut self, other: &str) -> Self {
        self.other = Some(other.to_owned());
        self
    }

    /// Its places.
    pub(crate) fn at(mut self, places: impl IntoIterator<Item = Point>) -> Self {
        self.at.extend(places);
        self
    }
}
