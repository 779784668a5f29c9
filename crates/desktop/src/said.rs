//! What the views say in one frame: messages in order, and what lies under the pointer.

use drawing::Thing;

use crate::editor::Message;

/// What was said in this frame.
#[derive(Default)]
pub(crate) struct Said {
    /// Messages, in order.
    pub(crate) messages: Vec<Message>,
    /// What the pointer is on, in whichever view.
    pub(crate) hovered: Option<Thing>,
}

impl Said {
    /// Says a message.
    pub(crate) fn say(&mut self, message: Message) {
        self.messages.push(message);
    }
}
