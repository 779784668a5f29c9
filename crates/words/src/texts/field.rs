//! What is said at a field whose words cannot be used: what is wrong, and what to type.

use crate::message::texts;

texts! {
    /// What is said at a field whose words cannot be used: what is wrong, and what to type.
    Field {
        Empty: "Nothing is typed yet; type a figure, such as {example}."
            => "Noch ist nichts eingetippt; eine Zahl eintippen, etwa {example}.",
        NotANumber: "“{typed}” is no number; type figures, such as {example}."
            => "„{typed}“ ist keine Zahl; Ziffern eintippen, etwa {example}.",
        Negative: "Less than nothing does not work here; type it without the minus."
            => "Weniger als nichts geht hier nicht; ohne das Minus eintippen.",
        Zero: "Nothing at all does not work here; type more than 0, such as {example}."
            => "Gar nichts geht hier nicht; mehr als 0 eintippen, etwa {example}.",
        TooSmall: "That is too little here; type {least} or more."
            => "Das ist hier zu wenig; {least} oder mehr eintippen.",
        TooLarge: "That is too much here; type {most} or less."
            => "Das ist hier zu viel; {most} oder weniger eintippen.",
        NotWhole: "Only whole ones count; type {below} or {above}."
            => "Nur ganze zählen; {below} oder {above} eintippen.",
        UnknownUnit: "“{unit}” is no unit for this; type {known}, or the figure alone."
            => "„{unit}“ ist dafür keine Einheit; {known} eintippen, oder nur die Zahl.",
        NoUnit: "“{unit}” does not belong here; type the figure alone, such as {example}."
            => "„{unit}“ gehört hier nicht hin; nur die Zahl eintippen, etwa {example}.",
        Ambiguous: "“{typed}” may be {whole} or {fraction}; type the one that you mean."
            => "„{typed}“ kann {whole} oder {fraction} sein; eintippen, was gemeint ist.",
        Or: "{first} or {last}" => "{first} oder {last}",
    }
}
