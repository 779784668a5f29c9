//! Words of the fields on the page about the ground.

use crate::message::texts;

texts! {
    /// Words of the fields on the page about the ground.
    Ground {
        Coop: "Coop",
        NoCoop: "No coop stands on the plan; place one where it stands or will stand.",
        Birds: "Birds",
        KindOfBird: "Kind",
        Hens: "hens",
        Pullets: "pullets",
        Chicks: "chicks",
        Table: "table",
        Ducks: "ducks",
        Geese: "geese",
        Turkeys: "turkeys",
        Other: "other",
        Length: "Length",
        Width: "Width",
        Heading: "Heading",
        CoopField: "{field} of the coop",

        Name: "Name",
        Clearance: "Keep off by",
        MayEnclose: "May stand inside a run",
        IsWater: "Is water",
        Yes: "yes",
        No: "no",
        FieldOf: "{field} of {name}",
        LineVoltage: "Line voltage",
        Signed: "Signs face it",
        Gate: "Gate or stile in it",

        SoilWet: "After rain",
        Wet: "wet",
        NotWet: "not wet",
    }
}
