//! The list of all that was found, over the foot.

use crate::message::texts;

texts! {
    /// The list of all that was found, over the foot.
    Found {
        How: "The gravest first. A click leads to where it is mended."
            => "Das Schwerste zuerst. Ein Klick führt dorthin, wo es sich beheben lässt.",
        OnPage: "{finding} Page {page}." => "{finding} Seite {page}.",
    }
}
