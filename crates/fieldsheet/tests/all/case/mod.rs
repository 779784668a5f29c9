//! Plans whose sheets are looked at, and what is on a page: what the tests share.

use care::Findings;
use drawing::{Ink, Scene};
use fieldsheet::{Day, Page, Paper, Runs, pages};
use plan::{Plan, Point};
use words::{Language, Words};
use workup::{Depth, Workup};

/// Points in a millimetre.
pub(crate) const MM: f32 = 72.0 / 25.4;

pub(crate) struct Case {
    pub(crate) plan: Plan,
    pub(crate) workup: Workup,
    pub(crate) findings: Findings,
    pub(crate) words: Words,
}

impl Case {
    pub(crate) fn of(plan: Plan, words: Words) -> Self {
        let workup = workup::workup(&plan, Depth::Full);
        let findings = care::findings(&plan, &workup, words);
        Self { plan, workup, findings, words }
    }

    pub(crate) fn demo() -> Self {
        Self::of(demo(), Words::default())
    }

    pub(crate) fn scene(&self) -> Scene<'_> {
        Scene { plan: &self.plan, workup: &self.workup, findings: &self.findings, words: self.words }
    }

    pub(crate) fn pages(&self, paper: Paper) -> Vec<Page> {
        pages(&self.scene(), Runs::All, Day::new(2027, 6, 18), paper).unwrap()
    }
}

pub(crate) fn demo() -> Plan {
    plan::read(include_bytes!("../../../../../assets/demo/kettle-field.netfold.json")).unwrap().plan
}

/// The example's run as a regular ring of many corners.
pub(crate) fn round(corners: usize) -> Plan {
    let mut plan = demo();
    plan.runs.truncate(1);
    plan.runs[0].outline = (0..corners)
        .map(|corner| {
            let turn = std::f64::consts::TAU * corner as f64 / corners as f64;
            Point::new(45.0 + 23.0 * turn.cos(), 38.0 + 23.0 * turn.sin())
        })
        .collect();
    plan
}

/// The example with a run of two corners, which nothing can be built with.
pub(crate) fn unmade() -> Plan {
    let mut plan = demo();
    plan.runs[0].outline.truncate(2);
    plan
}

/// The example with everything that has a name called by a long one.
pub(crate) fn long_names() -> Plan {
    let mut plan = round(26);
    plan.title = "A very long name for a field that nobody could ever fit into one line of any paper ".repeat(3);
    plan.runs[0].name = "The long run round everything that there is on the far side of the brook ".repeat(3);
    plan.store.energizers[0].id = "the one with the green lid that hums when it is cold ".repeat(3);
    plan.runs[0].energizer = None;
    plan
}

/// The example with gates, a side that rises and a wind: every block that a sheet has.
pub(crate) fn every_block() -> Plan {
    let mut plan = demo();
    plan.runs.truncate(1);
    let run = &mut plan.runs[0];
    let (from, to) = (run.outline[0], run.outline[1]);
    let at = Point::new(f64::midpoint(from.east_m, to.east_m), f64::midpoint(from.north_m, to.north_m));
    run.side_slopes = vec![plan::SideSlope { rises_m: Some(2.0), ..plan::SideSlope::at(at) }];
    run.gates = vec![plan::Gate::new(plan::GateKind::Foot)];
    plan.ground.wind_m_per_s = Some(14.0);
    plan
}

pub(crate) fn texts(page: &Page) -> Vec<&str> {
    let text = |item: &'_ Ink| matches!(item, Ink::Text { .. });
    page.ink
        .iter()
        .filter(|item| text(item))
        .map(|item| match item {
            Ink::Text { text, .. } => text.as_str(),
            _ => "",
        })
        .collect()
}

pub(crate) fn german() -> Words {
    Words { language: Language::German, ..Words::default() }
}

pub(crate) fn longer() -> Words {
    Words { language: Language::Longer, ..Words::default() }
}
