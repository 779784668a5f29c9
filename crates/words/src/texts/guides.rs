//! Words of what catches the hand, of dimensions and of the tape.

use crate::message::texts;

texts! {
    /// Words of what catches the hand, of dimensions and of the tape.
    Guides {
        OwnSide: "side {from} to {to}" => "Seite {from}–{to}",
        SideOfRun: "side {from} to {to} of {name}" => "Seite {from}–{to} von {name}",
        SideOfPaddock: "side {from} to {to} of the paddock" => "Seite {from}–{to} der Koppel",
        SideOfOther: "side {from} to {to} ({name})" => "Seite {from}–{to} ({name})",
        OwnCorner: "corner {number}" => "Ecke {number}",
        OnCornerOf: "on corner {number} ({name})" => "auf Ecke {number} ({name})",
        CornerOf: "corner {number} ({name})" => "Ecke {number} ({name})",
        OnPointOf: "on point {number} ({name})" => "auf Punkt {number} ({name})",

        OnSide: "on {side}" => "auf {side}",
        AlongSide: "along {side}" => "entlang {side}",
        SquareTo: "square to {side}" => "rechtwinklig zu {side}",
        SquareCorner: "a square corner" => "rechter Winkel",
        ParallelTo: "parallel to {side}" => "parallel zu {side}",
        InLineWith: "in line with {side}" => "in der Flucht von {side}",
        AsLongAs: "as long as {side}" => "so lang wie {side}",
        Panels: "{panels} panels" => "{panels} Felder",
        OnePanel: "1 panel" => "1 Feld",
        OnGrid: "on the grid of {step}" => "auf dem Raster von {step}",
        Of: "{what}: {reason}" => "{what}: {reason}",

        Grid: "Grid" => "Raster",
        GridOff: "Off" => "Aus",
        GridIs: "Grid: {step}" => "Raster: {step}",
        KeepDimensions: "Keep dimensions" => "Maße stehen lassen",
        DimensionsNode: "Dimensions: {figures}" => "Maße: {figures}",
        SideFigure: "side {from} to {to} {length}" => "Seite {from}–{to} {length}",
        TurnFigure: "turn at corner {number} {degrees}" => "Knick an Ecke {number} {degrees}",
        AreaFigure: "area {area}" => "Fläche {area}",

        Tape: "Tape" => "Maßband",
        TapeTool: "Measure with the tape" => "Mit dem Maßband messen",
        HintTape: "Click or drag from one place to the next, Enter ends it. Ctrl C copies what it says, Esc puts it away."
            => "Von Ort zu Ort klicken oder ziehen, die Eingabetaste beendet es. Strg C kopiert die Maße, Esc legt es weg.",
        HintTaped: "Ctrl C copies what it says. Click to measure anew, Esc puts it away."
            => "Strg C kopiert die Maße. Klicken misst neu, Esc legt es weg.",
        Leg: "{length}, {degrees} {point}" => "{length}, {degrees} {point}",
        OnGround: "along the ground {length}" => "am Boden entlang {length}",
        InAll: "{length} in all" => "{length} zusammen",
        TapeNode: "Tape: {figures}" => "Maßband: {figures}",
        North: "north" => "Nord",
        NorthEast: "north-east" => "Nordost",
        East: "east" => "Ost",
        SouthEast: "south-east" => "Südost",
        South: "south" => "Süd",
        SouthWest: "south-west" => "Südwest",
        West: "west" => "West",
        NorthWest: "north-west" => "Nordwest",
    }
}
