//! Words about opening, saving and what a crash left behind.

use crate::message::texts;

texts! {
    /// Words about opening, saving and what a crash left behind.
    Files {
        Save: "Save",
    }
}
