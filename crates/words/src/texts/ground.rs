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
