//! One finding, and the findings of a plan.

use plan::Point;

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
        Self { id, severity, message, mend, why, at: Vec::new(), source, other: None }
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
