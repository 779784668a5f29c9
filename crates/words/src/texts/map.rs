//! Words on the map and on the unfolded line.

use crate::message::texts;

texts! {
    /// Words on the map and on the unfolded line.
    Map {
        Target: "target",
        North: "N",
        Kilovolts: "kV",
        Run: "Run {number}",
        Hens: "{count} hens",
        Pullets: "{count} pullets",
        Chicks: "{count} chicks",
        Ducks: "{count} ducks",
        Geese: "{count} geese",
        Turkeys: "{count} turkeys",
        Birds: "{count} birds",
        Panels: "{length} · {count} panels",
        OnePanel: "{length} · 1 panel",
        Joules: "{figure} J",
        Weakest: "{kv} at post {post}, weakest",
        AtPost: "{kv} at post {post}",
        WeakestRange: "{range} kV at post {post}, not measured yet",
        RangeAtPost: "{range} kV at post {post}",
        RangeAlone: "{range} kV",
        OverheadLine: "Overhead line",
        PublicWay: "Public way",
        OtherFence: "Other electric fence",
        ForeignEarth: "Other earth",
        Net: "Net {number}",
        PostNumber: "post {number}",
        Gap: "{length} open",
        NotLaid: "This line cannot be laid out yet: see what is found.",
    }
}
