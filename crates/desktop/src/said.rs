//! What the views say in one frame: messages in order, and what lies under the pointer.

use drawing::Thing;

use crate::asking::Ask;
use crate::editor::Message;

/// What was said in this frame.
#[derive(Default)]
pub(crate) struct Said {
    /// Messages, in order.
    pub(crate) messages: Vec<Message>,
    /// What is asked of the window that needs files or a question first.
    pub(crate) asks: Vec<Ask>,
    /// What the pointer is on, in whichever view.
    pub(crate) hovered: Option<Thing>,
}

impl Said {
    /// Says a message.
    pub(crate) fn say(&mut self, message: Message) {
        self.messages.push(message);
    }

    /// Asks for something that needs files or a question first.
    pub(crate) fn ask(&mut self, ask: Ask) {
        self.asks.push(ask);
    }
}
