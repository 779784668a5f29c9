//! What is said at a field whose words cannot be used: what is wrong, and what to type.

use crate::message::texts;

texts! {
    /// What is said at a field whose words cannot be used: what is wrong, and what to type.
    Field {
        Empty: "Nothing is typed yet; type a figure, such as {example}.",
        NotANumber: "“{typed}” is no number; type figures, such as {example}.",
        Negative: "Less than nothing does not work here; type it without the minus.",
        Zero: "Nothing at all does not work here; type more than 0, such as {example}.",
        TooSmall: "That is too little here; type {least} or more.",
        TooLarge: "That is too much here; type {most} or less.",
        NotWhole: "Only whole ones count; type {below} or {above}.",
        UnknownUnit: "“{unit}” is no unit for this; type {known}, or the figure alone.",
        NoUnit: "“{unit}” does not belong here; type the figure alone, such as {example}.",
        Ambiguous: "“{typed}” may be {whole} or {fraction}; type the one that you mean.",
        Or: "{first} or {last}",
    }
}
