//! Words of the tools that shape what is drawn, and of the list of what was done.

use crate::message::texts;

texts! {
    /// Words of the tools that shape what is drawn, and of the list of what was done.
    Shaping {
        Duplicate: "Duplicate",
    }
}
