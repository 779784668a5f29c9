//! The run that is previewed, worked out as if it stood in the plan, once for every state of the plan.

use std::sync::Arc;

use care::{Finding, Severity, Subject};
use drawing::Thing;
use egui::{Id, Ui};
use moves::{Motion, Next, over_side};
use plan::{Plan, Run, RunStatus};
use words::texts::Window;
use workup::{Depth, RunWorkup, StillToMow, Strip, still_to_mow};

use super::LEAST_GRAZED_M2;
use crate::editor::page_of_finding;
use crate::editor::{Editor, Page};
use crate::pages::kept::kept;
use crate::tool::apart_m;

/// The finding about the ground that is mended at the run.
const LEAVES_PADDOCK: &str = "leaves-paddock";
/// The finding that says where the coop is not yet.
pub(super) const COOP_OUTSIDE: &str = "coop-outside";

/// The finding that says that a coop stands in the net.
const COOP_CUT: &str = "coop-cut";

/// Of more sides than this only the chosen one is worked out.
const MOST_COMPARED: usize = 12;

/// Corners of two outlines nearer than this are one, metres.
const SAME_PLACE_M: f64 = 0.01;

/// A side that the run in hand can be moved over.
pub(super) struct Side {
    /// The stated corner where it starts.
    pub(super) vertex: usize,
    /// The numbers of its corners.
    pub(super) from: String,
    pub(super) to: String,
    /// Its letter, as the next run over it is called.
    pub(super) letter: String,
    pub(super) length_m: f64,
    /// Whole panels on it, where the run could be laid.
    pub(super) panels: Option<usize>,
}

/// A next run with what follows for it.
pub(super) struct Ahead {
    pub(super) next: Next,
    pub(super) worked: RunWorkup,
    /// What is left to mow, since the strip of the run in hand is mown.
    pub(super) still_to_mow: Option<StillToMow>,
    pub(super) findings: Vec<Finding>,
}

impl Ahead {
    /// Whether there is a finding of that id.
    pub(super) fn found(&self, id: &str) -> bool {
        self.findings.iter().any(|finding| finding.id == id)
    }

    /// What is found about the ground, and every danger; the coop is yet to be towed.
    pub(super) fn of_ground(&self) -> impl Iterator<Item = &Finding> {
        self.findings.iter().filter(|one| {
            let about_ground = one.severity == Severity::Danger
                || page_of_finding(one, false) == Page::Ground
                || one.id == LEAVES_PADDOCK;
            about_ground && one.severity != Severity::Note && one.id != COOP_OUTSIDE
        })
    }

    /// The less, the better: what is found weighs first, then ground that is not fresh, then what has to be moved.
    fn cost(&self) -> (Option<Severity>, usize, [f64; 2]) {
        let stays_m = self.next.stays.as_ref().map_or(self.next.shared_m, |stays| stays.netting_m);
        let grazed_m2 = Some(self.next.grazed_m2).filter(|&grazed_m2| grazed_m2 > LEAST_GRAZED_M2).unwrap_or(0.0);
        (self.of_ground().map(|one| one.severity).max(), self.of_ground().count(), [grazed_m2, -stays_m])
    }
}

/// The sides of the run in hand over which it can go.
pub(super) fn sides(ui: &Ui, editor: &Editor) -> Arc<Vec<Side>> {
    let key = (editor.stamp(), editor.run_index());
    kept(ui, Id::unique("moves sides"), key, || {
        let Some((run, worked)) = editor.run() else { return Vec::new() };
        let corners = run.outline.len();
        let side = |vertex: usize| {
            let next = over_side(editor.plan(), run, worked.lay.as_ref(), vertex, Motion::TurnOver)?;
            let letter = u8::try_from(vertex).ok().filter(|number| *number < 26);
            Some(Side {
                vertex,
                from: (vertex + 1).to_string(),
                to: ((vertex + 1) % corners + 1).to_string(),
                letter: letter.map_or_else(|| (vertex + 1).to_string(), |number| char::from(b'A' + number).to_string()),
                length_m: next.shared_m,
                panels: next.stays.map(|stays| stays.panels),
            })
        };
        (0..corners).filter_map(side).collect()
    })
}

/// The next runs over those sides: of every side where they are few and nothing is in the hand.
pub(super) fn all(ui: &Ui, editor: &Editor, sides: &[Side], motion: Motion) -> Vec<Option<Arc<Ahead>>> {
    let compared = sides.len() <= MOST_COMPARED && editor.held_from().is_none();
    sides.iter().map(|side| if compared { of(ui, editor, side.vertex, motion) } else { None }).collect()
}

/// The side that is picked, else the one shown last while something is in the hand, else the best, else the longest.
pub(super) fn chosen<'a>(
    ui: &Ui,
    editor: &Editor,
    sides: &'a [Side],
    aheads: &[Option<Arc<Ahead>>],
) -> Option<&'a Side> {
    let id = Id::unique("moves side");
    let of_vertex = |vertex: usize| sides.iter().find(|side| side.vertex == vertex);
    let picked = match editor.picked() {
        Some(Thing::RunSide { run, side }) if run == editor.run_index() => of_vertex(side),
        _ => None,
    };
    let last = || {
        let last: Option<usize> = ui.data(|data| data.get_temp(id)).filter(|_| editor.held_from().is_some());
        last.and_then(of_vertex)
    };
    let best = || {
        let worked = sides.iter().zip(aheads).filter_map(|(side, ahead)| Some((side, ahead.as_ref()?.cost())));
        let worked = worked.min_by(|(_, one), (_, other)| {
            let figures = one.2[0].total_cmp(&other.2[0]).then(one.2[1].total_cmp(&other.2[1]));
            (one.0, one.1).cmp(&(other.0, other.1)).then(figures)
        });
        worked.map(|(side, _)| side)
    };
    let longest = || sides.iter().max_by(|one, other| one.length_m.total_cmp(&other.length_m));
    let side = picked.or_else(last).or_else(best).or_else(longest)?;
    ui.data_mut(|data| data.insert_temp(id, side.vertex));
    Some(side)
}

/// The next run over a side, worked out as if it were the plan's only run: what it holds depends on no other.
pub(super) fn of(ui: &Ui, editor: &Editor, vertex: usize, motion: Motion) -> Option<Arc<Ahead>> {
    let key = (editor.stamp(), editor.run_index(), motion);
    let ahead = kept(ui, Id::unique(("moves ahead", vertex)), key, || {
        let (run, worked) = editor.run()?;
        let mut next = over_side(editor.plan(), run, worked.lay.as_ref(), vertex, motion)?;
        let number = (editor.plan().runs.len() + 1).to_string();
        next.run.name = editor.plan().free_run_name(&editor.words().say(Window::RunNumber, &[("number", &number)]));
        let plan = Plan { runs: vec![next.run.clone()], ..editor.plan().clone() };
        let mut workup = workup::knowing(&plan, Depth::Quick, &mut editor.known().of_ground());
        let mut findings = care::of_run(&plan, &workup, editor.words(), 0);
        // Where the run's own coop stands now says nothing of the next run: it is towed.
        let coops = || plan.coop.iter().chain(&plan.other_coops);
        let towed = next.run.coop.as_ref().and_then(|id| coops().position(|coop| coop.id == *id));
        findings.retain(|one| one.id != COOP_CUT || towed.is_none_or(|coop| one.subject != Subject::Coop(coop)));
        let of_next = workup.runs.pop().unwrap_or_default();
        // The strip of the run in hand is mown when the flock moves on, as are those of runs that stand.
        let stand = editor.plan().runs.iter().zip(&editor.workup().runs);
        let stand = stand.filter(|(other, _)| other.status == RunStatus::Standing && other.id != run.id);
        let mown: Vec<&Strip> =
            stand.map(|(_, worked)| worked).chain([worked]).filter_map(|one| one.strip.as_ref()).collect();
        let still_to_mow = still_to_mow(&plan, &next.run, &of_next, &mown);
        Some(Arc::new(Ahead { next, worked: of_next, still_to_mow, findings }))
    });
    (*ahead).clone()
}

/// The run of the plan that lies where that run would.
pub(super) fn kept_as(plan: &Plan, run: &Run) -> Option<usize> {
    let same = |other: &Run| {
        other.outline.len() == run.outline.len()
            && other.outline.iter().zip(&run.outline).all(|(&one, &two)| apart_m(one, two) < SAME_PLACE_M)
    };
    plan.runs.iter().position(same)
}
