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
        Panels: "{length} · {count} panels" => "{length} · {count} Felder",
        OnePanel: "{length} · 1 panel" => "{length} · 1 Feld",
        Joules: "{figure} J" => "{figure} J",
        WeakestRange: "{range} kV at post {post}, not measured yet"
            => "{range} kV an Pfahl {post}, noch nicht gemessen",
        RangeAtPost: "{range} kV at post {post}" => "{range} kV an Pfahl {post}",
        RangeAlone: "{range} kV" => "{range} kV",
        OverheadLine: "Overhead line" => "Freileitung",
        PublicWay: "Public way" => "Öffentlicher Weg",
        OtherFence: "Other electric fence" => "Anderer Elektrozaun",
        ForeignEarth: "Other earth" => "Fremde Erdung",
        Net: "Net {number}" => "Netz {number}",
        PostNumber: "post {number}" => "Pfahl {number}",
        Gap: "{length} open" => "{length} offen",
        NotLaid: "This line cannot be laid out yet: see what is found."
            => "Diese Linie lässt sich noch nicht legen: siehe die Hinweise.",
    }
}
