//! What the views read.

use care::{Finding, Findings};
use drawing::{Drawing, Scene, Theme, Thing, View};
use plan::{Deed, Edit, Plan, Point, Run};
use words::Words;
use words::texts::Window as Text;
use workup::{RunWorkup, Workup};

use super::whole::Whole;
use super::{Editor, Lesson, Page, Question, Snapped, Touch};
use crate::tool::Tool;

impl Editor {
    /// The plan.
    pub fn plan(&self) -> &Plan {
        &self.plan
    }

    /// What follows from it.
    pub fn workup(&self) -> &Workup {
        &self.workup
    }

    /// What the keeper should know.
    pub fn findings(&self) -> &Findings {
        &self.findings
    }

    /// One finding, of a run or of the whole plan.
    pub(crate) fn finding(&self, run: Option<usize>, finding: usize) -> Option<&Finding> {
        run.map_or(Some(&self.findings.plan), |run| self.findings.runs.get(run))?.get(finding)
    }

    /// Everything a drawing is made of.
    pub fn scene(&self) -> Scene<'_> {
        Scene { plan: &self.plan, workup: &self.workup, findings: &self.findings, words: self.words }
    }

    /// The map.
    pub fn drawing(&self) -> &Drawing {
        &self.drawing
    }

    /// Counts the changes of what is drawn: ink of the same stamp and view is the same.
    pub fn stamp(&self) -> u64 {
        self.stamp
    }

    /// The camera.
    pub fn view(&self) -> &View {
        &self.view
    }

    /// Language and units.
    pub fn words(&self) -> Words {
        self.words
    }

    /// The theme.
    pub fn theme(&self) -> Theme {
        self.view.theme
    }

    /// The open page.
    pub fn page(&self) -> Page {
        self.page
    }

    /// The tool at hand.
    pub fn tool(&self) -> &Tool {
        &self.tool
    }

    /// What is picked.
    pub fn picked(&self) -> Option<Thing> {
        self.picked
    }

    /// What is under the pointer.
    pub fn hovered(&self) -> Option<Thing> {
        self.view.hovered
    }

    /// Where the hand can take hold of what is picked.
    pub fn handles(&self) -> Vec<Point> {
        let whole = self.picked.and_then(|thing| Whole::of(&self.plan, thing.whole()));
        whole.map_or_else(Vec::new, |whole| whole.places())
    }

    /// Where what is held was, while it is dragged.
    pub fn held_from(&self) -> Option<Point> {
        self.held.as_ref().map(|held| held.was)
    }

    /// What caught the thing in the hand, or the corner about to be drawn.
    pub fn snapped(&self) -> Option<&Snapped> {
        self.snapped.as_ref()
    }

    /// Whether the page is folded away.
    pub fn is_folded(&self) -> bool {
        self.folded
    }

    /// Whether nothing catches what is drawn or dragged.
    pub fn is_free(&self) -> bool {
        self.free
    }

    /// Whether what is in the hand can be caught by posts and corners.
    pub fn is_catchable(&self) -> bool {
        self.held.as_ref().is_some_and(|held| held.what.is_catchable())
    }

    /// The question that stands on the map.
    pub fn question(&self) -> Option<&Question> {
        self.question.as_ref()
    }

    /// What the keeper is shown next after the first run was laid.
    pub fn lesson(&self) -> Lesson {
        // Without a run there is nothing to drag and no line to read.
        if self.run().is_none() { Lesson::Done } else { self.lesson }
    }

    /// Where the earth stakes of the run in hand would earth best, while the open page suggests that.
    pub fn earth_suggested(&self) -> Option<&workup::earth::Dampest> {
        let (run, worked) = self.run().filter(|_| self.page == Page::Power)?;
        worked.dampest.as_ref().filter(|best| best.is_better() && !run.hidden)
    }

    /// What was done, the first step first, and what was taken back, the next first.
    pub fn deeds(&self) -> (Vec<Deed>, Vec<Deed>) {
        (self.steps().done().collect(), self.steps().undone().collect())
    }

    /// Every edit that took effect since this was last asked: what the journal keeps.
    pub fn take_applied(&mut self) -> Vec<Edit> {
        self.history.take_applied()
    }

    /// Whether the figures behind the corners' sentences are shown.
    pub fn why(&self) -> bool {
        self.why
    }

    /// Whether the table of all runs is shown, with other shapes or without.
    pub fn compare(&self) -> bool {
        (self.compare && self.plan.runs.len() > 1) || self.shapes.is_open()
    }

    /// Something to be said about the last thing done.
    pub fn notice(&self) -> Option<Text> {
        self.notice
    }

    /// What was found where the keeper was led to mend it, in words.
    pub fn led(&self) -> Option<&str> {
        self.led.as_deref()
    }

    /// The place of the run in hand.
    pub fn run_index(&self) -> usize {
        self.run
    }

    /// The run in hand, and what follows for it.
    pub fn run(&self) -> Option<(&Run, &RunWorkup)> {
        self.plan.runs.get(self.run).zip(self.workup.runs.get(self.run))
    }

    /// What an animal feels at the weakest post of a run, and whether that belongs to an earlier plan.
    pub fn touch(&self, run: &str) -> Option<(Touch, bool)> {
        let stale = self.touches_of != Some(self.history.revision());
        self.touches.get(run).map(|&touch| (touch, stale))
    }

    /// Whether there is a step to take back.
    pub fn can_undo(&self) -> bool {
        self.undoes_drawn() || self.steps().can_undo()
    }

    /// Whether there is a step to do again.
    pub fn can_redo(&self) -> bool {
        self.redoes_drawn() || self.steps().can_redo()
    }
}
