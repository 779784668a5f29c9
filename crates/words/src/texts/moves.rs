//! Words of the page about where the flock goes next.

use crate::message::texts;

texts! {
    /// Words of the page about where the flock goes next.
    Moves {
        Title: "Where next",
    }
}
