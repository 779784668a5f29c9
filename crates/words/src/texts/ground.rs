//! Words of the fields on the page about the ground.

use crate::message::texts;

texts! {
    /// Words of the fields on the page about the ground.
    Ground {
        Coop: "Coop" => "Stall",
        NoCoop: "No coop stands on the plan; place one where it stands or will stand."
            => "Auf dem Plan steht kein Stall; einen setzen, wo er steht oder stehen wird.",
        Birds: "Birds" => "Tiere",
        KindOfBird: "Kind" => "Art",
        Hens: "hens" => "Hennen",
        Pullets: "pullets" => "Junghennen",
        Chicks: "chicks" => "Küken",
        Table: "table birds" => "Masttiere",
        Ducks: "ducks" => "Enten",
        Geese: "geese" => "Gänse",
        Turkeys: "turkeys" => "Puten",
        Other: "other" => "andere",
        Length: "Length" => "Länge",
        Width: "Width" => "Breite",
        Heading: "Heading" => "Richtung",
        CoopField: "{field} of the coop" => "{field} (Stall)",

        CoopOfRun: "Which coop" => "Welcher Stall",
        ByPlace: "the one in it" => "der darin",
        CoopAssumed: "{coop} stands in it, with {count} {birds}: that is assumed." => "{coop} steht darin, mit {count} {birds}: Das ist angenommen.",
        CoopStated: "{coop}, with {count} {birds}." => "{coop}, mit {count} {birds}.",
        CoopsAssumed: "{coops} and {last} stand in it, with {count} {birds} in all: that is assumed."
            => "{coops} und {last} stehen darin, mit zusammen {count} {birds}: Das ist angenommen.",
        CoopsStated: "{coops} and {last} belong to it, with {count} {birds} in all: what else stands in it counts too."
            => "{coops} und {last} gehören dazu, mit zusammen {count} {birds}: Was sonst darin steht, zählt mit.",
        CoopNone: "No coop stands in it." => "Es steht kein Stall darin.",
        Name: "Name" => "Name",
        Clearance: "Keep off by" => "Abstand",
        MayEnclose: "May stand inside a run" => "Darf im Auslauf liegen",
        IsWater: "Is water" => "Ist Wasser",
        Yes: "yes" => "ja",
        No: "no" => "nein",
        FieldOf: "{field} of {name}" => "{field}: {name}",
        LineVoltage: "Line voltage" => "Leitungsspannung",
        Signed: "Signs face it" => "Schilder zum Weg",
        Gate: "Gate or stile in it" => "Tor oder Übertritt",

        SoilWet: "After rain" => "Nach Regen",
        Wet: "wet" => "nass",
        NotWet: "not wet" => "nicht nass",
    }
}
