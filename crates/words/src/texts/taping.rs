//! Known places that corners are taped from.

use crate::message::texts;

texts! {
    /// Known places that corners are taped from.
    Taping {
        Head: "Known places" => "Bekannte Orte",
        None: "No known place is stated: put down two that you find again on the ground, such as a gatepost and the corner of a shed. The sheet then tapes corners from them."
            => "Kein bekannter Ort ist angegeben: zwei setzen, die sich am Boden wiederfinden, etwa einen Torpfosten und eine Schuppenecke. Das Blatt misst dann Ecken von dort ein.",
        One: "The sheet tapes from {name}. A second place, well apart, sets corners by two tapes."
            => "Das Blatt misst von {name}. Ein zweiter Ort, weit genug entfernt, legt Ecken mit zwei Bändern fest.",
        Two: "The sheet tapes from these two every corner where the tapes cross well, the others from corners that stand."
            => "Das Blatt misst von diesen beiden jede Ecke ein, in der sich die Bänder gut kreuzen, die übrigen von Ecken, die stehen.",
        More: "The sheet tapes from {one} and {other}; a place without a letter is not taped from. Pick it to give it one."
            => "Das Blatt misst von {one} und {other}; von einem Ort ohne Buchstaben wird nicht gemessen. Ihn wählen, um ihm einen zu geben.",
        OneOfMore: "The sheet tapes from {name} alone. Pick another place and give it the other letter: two tapes set a corner."
            => "Das Blatt misst nur von {name}. Einen anderen Ort wählen und ihm den anderen Buchstaben geben: Zwei Bänder legen eine Ecke fest.",
        Letter: "Taped from as" => "Gemessen ab",
        NotTaped: "not taped from" => "nicht gemessen",
        Put: "Known place" => "Bekannter Ort",
        Command: "Put down a known place to tape corners from" => "Bekannten Ort setzen, von dem Ecken eingemessen werden",
        Hint: "Click a place that you find again on the ground: a gatepost, the corner of a shed. Esc leaves."
            => "Einen Ort anklicken, der sich am Boden wiederfindet: Torpfosten, Schuppenecke. Esc bricht ab.",
        Called: "{letter} {name}" => "{letter} {name}",
        Place: "Known place {letter}" => "Bekannter Ort {letter}",
        PlaceNumber: "Known place {number}" => "Bekannter Ort {number}",
    }
}
