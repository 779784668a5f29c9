//! What each message does.

use super::shapes::ShapesMessage;
use super::{BracingMessage, Editor, Lesson, Message, Page, UnderlayMessage};
use crate::tool::{Hand, Tool};

impl Editor {
    /// Takes a message.
    pub fn receive(&mut self, message: Message) {
        if !matches!(
            message,
            Message::Hover(_)
                | Message::Hand(Hand::Move(_) | Hand::Off)
                | Message::Size(..)
                | Message::Free(_)
                // A hand that drags what is locked still reads why it does not follow.
                | Message::Pan(..)
                | Message::Drag(_)
                | Message::Rest
                | Message::Drop
                | Message::Worked(_)
                | Message::Reckoned(_)
                | Message::Shapes(_)
                | Message::Bracing(BracingMessage::LookAtWind(_))
        ) {
            self.notice = None;
            self.led = None;
            if !matches!(message, Message::Underlay(UnderlayMessage::Read(_))) {
                self.notice_underlay = None;
            }
            // What a drag could not do is said while the hand goes on.
            if !matches!(message, Message::Drag(_) | Message::Rest | Message::Drop | Message::Pan(..)) {
                self.shape_told = None;
            }
        }
        // The last lesson goes when the keeper goes on.
        if self.lesson == Lesson::ReadLine && matches!(message, Message::Open(_) | Message::Use(_) | Message::Make(_)) {
            self.lesson = Lesson::Done;
        }
        if self.lesson == Lesson::Drag && matches!(message, Message::Use(_)) {
            self.lesson = Lesson::Done;
        }
        match message {
            Message::Open(page) => {
                // The page's own name leads back from other shapes.
                if page == Page::Run && self.page == Page::Run && self.shapes.is_open() {
                    self.shapes_said(ShapesMessage::Open(false));
                }
                self.page = page;
                self.folded = false;
                // A line that is begun stays in the hand: figures of another page may be wanted for its next corner.
                if !self.is_half_drawn() {
                    self.tool = Tool::Pick;
                    self.snapped = None;
                }
                self.chosen.by_rectangle = false;
                self.chosen.listing = false;
            }
            Message::Pick(thing) => self.pick(thing),
            Message::Mend(finding) => self.mend(finding),
            Message::Hover(thing) => self.view.hovered = thing,
            Message::Make(edit) => self.make(edit),
            Message::Begin => self.history.begin(),
            Message::End => self.history.end(),
            Message::Use(tool) => {
                self.lay_by();
                self.take_tool(tool);
            }
            Message::UseOn(page, tool) => {
                self.receive(Message::Open(page));
                self.receive(Message::Use(tool));
            }
            Message::Fold(folded) => self.folded = folded,
            Message::Grid(grid) => self.set_grid(grid),
            Message::KeepDimensions(keep) => self.keep_dimensions(keep),
            Message::Hand(hand) => self.hand(hand),
            Message::Grab(thing, at) => self.grab(thing, at),
            Message::GrabTurn(at) => self.grab_turn(at),
            Message::Drag(to) => self.drag(to),
            Message::Rest => self.rest(),
            Message::Drop => self.let_go(),
            Message::Free(free) => self.free = free,
            // Nothing else is done to the plan while something is in the hand.
            Message::FitNets(_)
            | Message::TakeNearest
            | Message::Nudge(..)
            | Message::NudgeEnd(..)
            | Message::PutAt(..)
            | Message::HangAt(..)
            | Message::Turn(_)
            | Message::SideLength(..)
            | Message::ToPost(_)
            | Message::Duplicate
            | Message::Remove
            | Message::Bracing(_)
            | Message::Many(_)
                if self.held.is_some() => {}
            Message::FitNets(double_back) => self.ask_fit(double_back),
            Message::Bracing(said) => self.bracing_said(said),
            Message::Many(said) => self.many_said(said),
            Message::TakeNearest => self.take_nearest(),
            Message::Nudge(east_m, north_m) => self.nudge(east_m, north_m),
            Message::PutAt(thing, to) => self.put_at(thing, to),
            Message::NudgeEnd(last, east_m, north_m) => self.nudge_end(last, east_m, north_m),
            Message::HangAt(run, branch, from_m) => self.hang_at(run, branch, from_m),
            Message::Turn(clockwise_deg) => self.turn_by(clockwise_deg),
            Message::SideLength(shape, side, length_m) => self.side_length(shape, side, length_m),
            Message::ToPost(corner) => self.move_to_post(corner),
            Message::Shaping(said) => self.shape_said(said),
            Message::Duplicate => self.duplicate(),
            Message::Remove => self.remove(),
            Message::Escape => self.escape(),
            Message::Undo => self.undo(),
            Message::Redo => self.redo(),
            Message::GoTo(steps) => self.go_to(steps),
            Message::Units(units) => {
                self.words.units = units;
                self.snapped = None;
                self.say(None);
            }
            Message::Language(language) => {
                self.words.language = language;
                // What caught the hand was said in the words of before.
                self.snapped = None;
                self.say(None);
            }
            Message::Theme(theme) => self.view.theme = theme,
            Message::Why(open) => self.why = open,
            Message::Compare(open) => self.compare = open,
            Message::Shapes(said) => self.shapes_said(said),
            Message::Size(size, kept) => {
                let comes = kept.iter().zip(&self.view.kept).any(|(now, was)| now.is_some() && was.is_none());
                self.view.kept = kept;
                if size != self.view.size {
                    self.resized(size);
                } else if comes {
                    self.clear_of_plates();
                }
            }
            Message::Fit => self.fit(),
            Message::InSight(run) => self.bring_in_sight(run),
            Message::Zoom(by, about) => {
                self.view = self.view.zoomed(by, about);
                self.fitted = None;
            }
            Message::Pan(right_px, down_px) => {
                self.view = self.view.moved(right_px, down_px);
                self.fitted = None;
            }
            Message::KeepCurve => self.keep_curve(),
            Message::LetCurveGo(number) => self.let_curve_go(number),
            Message::Worked(answer) => self.worked(*answer),
            Message::Reckoned(reckoned) => self.reckoned(*reckoned),
            Message::AskRolls => self.ask_rolls(),
            Message::Rolls(rolls) => self.answer_rolls(rolls),
            Message::LayOut => self.lay_out(),
            Message::LeaveQuestion => self.leave_question(),
            Message::StartEmpty => self.start_empty(),
            Message::Learnt(lesson) => self.lesson = lesson,
            Message::Example(plan) => {
                self.replace(*plan, None);
                self.mark_example();
            }
            Message::Opened(plan, file) => self.replace(*plan, file),
            Message::Recovered(plan, file) => self.recovered(*plan, file),
            Message::Saved(file) => self.saved(file),
            Message::BringIn(plan) => self.bring_in(*plan),
            Message::BringHeights(import) => self.bring_heights(*import),
            Message::Underlay(said) => self.underlay_said(said),
        }
        self.unroll_on();
        self.view.picked = self.picked;
        self.view.handles = self.picked.is_some();
        self.view.underlay = self.shows_picture();
        let wind = self.looks_at_wind || self.plan.ground.wind_m_per_s.is_some();
        self.view.wind = wind && self.page == Page::Run;
        self.view.earth = self.page == Page::Power;
        if self.drawing.foremost != Some(self.run) {
            self.drawing.foremost = Some(self.run);
            self.stamp += 1;
        }
        if self.drawing.chosen != self.chosen.others {
            self.drawing.chosen.clone_from(&self.chosen.others);
            self.stamp += 1;
        }
    }
}
