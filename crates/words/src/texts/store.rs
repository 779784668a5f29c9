//! Words of the store: what the keeper owns, in fields.

use crate::message::texts;

texts! {
    /// Words of the store: what the keeper owns, in fields.
    Store {
        YourNets: "Your nets",
    }
}
