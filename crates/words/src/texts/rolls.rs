//! Words of the first start, when the keeper has nothing but rolls.

use crate::message::texts;

texts! {
    /// Words of the first start, when the keeper has nothing but rolls.
    Rolls {
        Question: "How much netting do you have?",
    }
}
