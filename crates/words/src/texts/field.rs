//! What is said at a field whose words cannot be used.

use crate::message::texts;

texts! {
    /// What is said at a field whose words cannot be used.
    Field {
        NotANumber: "“{typed}” is no number; type figures, such as {example}.",
    }
}
