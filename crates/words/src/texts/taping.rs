//! Known places that corners are taped from.

use crate::message::texts;

texts! {
    /// Known places that corners are taped from.
    Taping {
        Head: "Known places" => "Bekannte Orte",
        None: "No known place is stated: put down two that you find again on the ground, such as a gatepost and the corner of a shed. The sheet then tapes every corner from them."
            => "Kein bekannter Ort ist angegeben: zwei setzen, die sich am Boden wiederfinden, etwa einen Torpfosten und eine Schuppenecke. Das Blatt misst dann jede Ecke von dort ein.",
        One: "The sheet tapes from {name}. A second place, well apart, sets every corner by two tapes."
            => "Das Blatt misst von {name}. Ein zweiter Ort, weit genug entfernt, legt jede Ecke mit zwei Bändern fest.",
        Two: "The sheet tapes every corner from these two." => "Das Blatt misst jede Ecke von diesen beiden ein.",
        More: "The sheet tapes from {one} and {other}; the others are kept." => "Das Blatt misst von {one} und {other}; die übrigen bleiben stehen.",
        Put: "Known place" => "Bekannter Ort",
        Command: "Put down a known place to tape corners from" => "Bekannten Ort setzen, von dem Ecken eingemessen werden",
        Hint: "Click a place that you find again on the ground: a gatepost, the corner of a shed. Esc leaves."
            => "Einen Ort anklicken, der sich am Boden wiederfindet: Torpfosten, Schuppenecke. Esc bricht ab.",
        Called: "{letter} {name}" => "{letter} {name}",
        Place: "Known place {letter}" => "Bekannter Ort {letter}",
        PlaceNumber: "Known place {number}" => "Bekannter Ort {number}",
    }
}
