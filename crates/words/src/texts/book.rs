//! Words of the page about readings.

use crate::message::texts;

texts! {
    /// Words of the page about readings.
    Book {
        Title: "The book",
    }
}
