//! What is half drawn is forgiven as the plan is: taken up and set again corner by corner, kept in the hand while pages are
//! turned, and laid by for another tool.
//!
//! It stands in the one order with the steps of the plan: what was taken up or laid by after so many steps comes back when
//! as many are done.

use words::texts::Window as Text;

use super::Editor;
use crate::tool::{Hand, Tool};

/// What was half drawn when another tool was taken, and after how many steps of the plan.
#[derive(Debug)]
pub(super) struct LaidBy {
    tool: Tool,
    after: usize,
}

impl Editor {
    /// Whether something is drawn in part, which no plan holds yet.
    pub fn is_half_drawn(&self) -> bool {
        self.tool.is_half_drawn()
    }

    /// Whether something is drawn in part, in the hand or laid by, that leaving the plan would lose.
    pub fn has_unfinished(&self) -> bool {
        self.is_half_drawn() || !self.laid_by.is_empty()
    }

    /// Whether undoing is about what is drawn.
    pub(super) fn undoes_drawn(&self) -> bool {
        self.tool.set_count() > 0 || self.laid_by.last().is_some_and(|laid| laid.after == self.steps_done())
    }

    /// Whether redoing is about what is drawn: steps of the plan that were taken back after it come first.
    pub(super) fn redoes_drawn(&self) -> bool {
        self.tool.lifted_count() > 0 && self.lifted_after <= self.steps_done()
    }

    fn steps_done(&self) -> usize {
        self.steps().done().len()
    }

    /// Takes up the last corner, or takes back into the hand what was laid by.
    pub(super) fn undo_drawn(&mut self) {
        if self.tool.set_count() > 0 {
            self.hand(Hand::Back);
        } else if let Some(laid) = self.laid_by.pop() {
            self.take_tool(laid.tool);
        }
    }

    /// A corner is taken up: it is set again before any step of the plan that follows is done again.
    pub(super) fn lifts(&mut self) {
        self.lifted_after = self.steps_done();
    }

    /// Makes room in the hand for another tool.
    pub(super) fn lay_by(&mut self) {
        if self.is_half_drawn() {
            let after = self.steps_done();
            self.laid_by.push(LaidBy { tool: std::mem::take(&mut self.tool), after });
            self.notice = Some(Text::LaidBy);
        }
    }

    /// Takes a tool to hand.
    pub(super) fn take_tool(&mut self, tool: Tool) {
        self.tool = tool;
        self.chosen.by_rectangle = false;
        self.snapped = None;
        self.unguided();
        self.pick(None);
    }
}
