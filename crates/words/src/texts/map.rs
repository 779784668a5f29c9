//! Words on the map and on the unfolded line.

use crate::message::texts;

texts! {
    /// Words on the map and on the unfolded line.
    Map {
        Target: "target" => "Ziel",
        North: "N" => "N",
        Kilovolts: "kV" => "kV",
        Run: "Run {number}" => "Auslauf {number}",
        Hens: "{count} hens" => "{count} Hennen",
        Pullets: "{count} pullets" => "{count} Junghennen",
        Chicks: "{count} chicks" => "{count} Küken",
        Ducks: "{count} ducks" => "{count} Enten",
        Geese: "{count} geese" => "{count} Gänse",
        Turkeys: "{count} turkeys" => "{count} Puten",
        Birds: "{count} birds" => "{count} Tiere",
        OneHen: "1 hen" => "1 Henne",
        OnePullet: "1 pullet" => "1 Junghenne",
        OneChick: "1 chick" => "1 Küken",
        OneDuck: "1 duck" => "1 Ente",
        OneGoose: "1 goose" => "1 Gans",
        OneTurkey: "1 turkey" => "1 Pute",
        OneBird: "1 bird" => "1 Tier",
        EarthBest: "earth stakes earth best here" => "hier erden die Erdstäbe am besten",
        Panels: "{length} · {count} panels" => "{length} · {count} Felder",
        OnePanel: "{length} · 1 panel" => "{length} · 1 Feld",
        Joules: "{figure} J" => "{figure} J",
        Likely: "about {figure}" => "etwa {figure}",
        WeakestUnmeasured: "{weakest} at post {post}, not measured yet"
            => "{weakest} an Pfahl {post}, noch nicht gemessen",
        WeakestThere: "{weakest} at post {post}" => "{weakest} an Pfahl {post}",
        OverheadLine: "Overhead line" => "Freileitung",
        PublicWay: "Public way" => "Öffentlicher Weg",
        OtherFence: "Other electric fence" => "Anderer Elektrozaun",
        ForeignEarth: "Other earth" => "Fremde Erdung",
        Net: "Net {number}" => "Netz {number}",
        PostNumber: "post {number}" => "Pfahl {number}",
        RollSaid: "Roll {number} in the order of laying: begin here and unroll the way the arrow points."
            => "Rolle {number} in der Reihenfolge des Auslegens: hier beginnen und in Pfeilrichtung ausrollen.",
        NotLaid: "This line cannot be laid out yet: see what is found."
            => "Diese Linie lässt sich noch nicht legen: siehe die Hinweise.",
    }
}
