//! Earth stakes on the map: placed, dragged, one that holds a corner as well, and how far off what each stands.

use crate::message::texts;

texts! {
    /// Earth stakes on the map: placed, dragged, one that holds a corner as well, and how far off what each stands.
    Earth {
        PlaceStake: "Place on the map" => "Auf die Karte setzen",
        OneMoreHere: "One more on the map" => "Noch einen auf die Karte",
        HintStake: "Click where the earth stake goes: damp ground, off the net; a brace’s stake takes it in. Esc leaves."
            => "Dorthin klicken, wo der Erdstab hinkommt: feuchter Boden, abseits vom Netz; der Pflock einer Abspannung nimmt ihn auf. Esc bricht ab.",
        StakeSaid: "Earth stake {number}: {said}." => "Erdstab {number}: {said}.",
        AndNext: "{said}, {next}" => "{said}, {next}",
        StakeOf: "Earth stake {number} of {run}" => "Erdstab {number} von {run}",
        StakeRow: "Stake {number}" => "Stab {number}",
        OffTheNet: "{off} off the net" => "{off} vom Netz",
        FromTheFeed: "{off} from the feed point" => "{off} von der Einspeisung",
        FromTheNext: "{off} from the next stake" => "{off} vom nächsten Stab",
        FromForeign: "{off} from {hazard}" => "{off} Abstand: {hazard}",
        FromRun: "{off} from the earth of {run}" => "{off} von der Erdung von {run}",
        HoldsCorner: "holds corner {number} too" => "hält auch Ecke {number}",
        HoldsEnd: "holds an end too" => "hält auch ein Ende",
        NotPlaced: "drawn in a row, for its place is not stated: drag it to where it stands"
            => "in einer Reihe gezeichnet, denn der Ort ist nicht angegeben: dorthin ziehen, wo er steht",
        OnePlaced: "1 stake of {length}, where it stands" => "1 Erdstab von {length}, wo er steht",
        Placed: "{count} stakes of {length}, each where it stands"
            => "{count} Erdstäbe von {length}, jeder, wo er steht",
        TakeOut: "Take out stake {number}" => "Stab {number} herausnehmen",
        RowAgain: "All in a row again" => "Alle wieder in eine Reihe",
        OnBrace: "The brace’s stake: one for both" => "Der Pflock der Abspannung: einer für beides",
        BraceToo: "Earth at corner {number}’s brace" => "Erdung an der Abspannung von Ecke {number}",
        BraceTooEnd: "Earth at the end’s brace" => "Erdung an der Abspannung des Endes",
        BraceTooWhy: "One galvanised stake of {length} is then brace and earth, {off} off the net, and carried once. Its guy is cord, never wire."
            => "Ein verzinkter Stab von {length} ist dann Abspannung und Erdung, {off} vom Netz, und wird nur einmal getragen. Seine Leine ist Schnur, niemals Draht.",
        OneMorePlaced: "One more, {spacing} beyond the last, would give it {gain} % more in damp ground."
            => "Noch einer, {spacing} hinter dem letzten, gäbe in feuchtem Boden {gain} % mehr.",
    }
}
