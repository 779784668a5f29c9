//! Names that keyboards give to keys, where a language has its own.

use crate::message::texts;

texts! {
    /// Names that keyboards give to keys, where a language has its own; letters, arrows, Alt, Tab and Esc are alike in all.
    Keys {
        Ctrl: "Ctrl" => "Strg",
        Shift: "Shift" => "Umschalt",
        Enter: "Enter" => "Eingabe",
        Space: "Space" => "Leertaste",
        Backspace: "Backspace" => "Rücktaste",
        Delete: "Delete" => "Entf",
    }
}
