//! Words of shaping an outline: squared up, mirrored, doubled beside, its sides and corners by their figures.

use crate::message::texts;

texts! {
    /// Words of shaping an outline.
    Shape {
        SquareUp: "Square it up" => "Rechtwinklig machen",
        MirrorEastWest: "Mirror it east to west" => "Ost und West spiegeln",
        MirrorNorthSouth: "Mirror it north to south" => "Nord und Süd spiegeln",
        MirrorOverSide: "Mirror it over the picked side" => "An der gewählten Seite spiegeln",
        BesideMirrored: "Double it beside, mirrored, sharing the picked side" => "Daneben verdoppeln, gespiegelt, mit der gewählten Seite",
        BesideShifted: "Double it beside as it is, sharing the picked side" => "Daneben verdoppeln wie es ist, mit der gewählten Seite",
        CutCorner: "Cut this corner over two posts" => "Diese Ecke über zwei Pfähle abschneiden",
        PickCornerOfRun: "Pick a corner of a run first." => "Zuerst eine Ecke eines Auslaufs wählen.",
        CornerNotCut: "This corner cannot be cut over two posts: no net stands there, it does not turn, or a side beside it is too short for that."
            => "Diese Ecke lässt sich nicht über zwei Pfähle abschneiden: Dort steht kein Netz, sie knickt nicht, oder eine Seite daneben ist zu kurz dafür.",
        SomeSides: "Sides {from} to {to} of {sides} stand here: pick a side or a corner on the map to see those about it."
            => "Hier stehen die Seiten {from} bis {to} von {sides}: eine Seite oder Ecke auf der Karte wählen, um die um sie herum zu sehen.",
        InsertCorner: "Insert a corner in this side, or in the side after this corner"
            => "In diese Seite eine Ecke einfügen, oder in die Seite nach dieser Ecke",
        TurnHere: "Turn it about this corner" => "Um diese Ecke drehen",
        TurnMiddle: "Turn it about its middle" => "Um die Mitte drehen",
        TurnBy: "Turn it by" => "Drehen um",

        Corner: "A dragged corner" => "Eine gezogene Ecke",
        Free: "goes free" => "geht frei",
        KeepsLength: "keeps length" => "hält die Länge",
        KeepsAngle: "keeps angle" => "hält den Winkel",
        CornerFree: "Let a dragged corner go free" => "Gezogene Ecken frei lassen",
        CornerLength: "Keep the length while a corner is dragged" => "Beim Ziehen einer Ecke die Länge halten",
        CornerAngle: "Keep the angle while a corner is dragged" => "Beim Ziehen einer Ecke den Winkel halten",
        HintFree: "Posts and corners catch it, Alt lets go. L keeps the length, A the angle. Figures can be typed." => "Pfähle und Ecken fangen sie, Alt löst. L hält die Länge, A den Winkel. Zahlen lassen sich eintippen.",
        HintLength: "The line keeps its length. L lets the corner go, A keeps the angle. Figures can be typed." => "Die Linie behält ihre Länge. L lässt die Ecke los, A hält den Winkel. Zahlen lassen sich eintippen.",
        HintAngle: "The corner keeps its angle. A lets it go, L keeps the length. Figures can be typed." => "Die Ecke behält ihren Winkel. A lässt sie los, L hält die Länge. Zahlen lassen sich eintippen.",
        HintSlide: "The side stays parallel, its neighbours follow. Guides catch it, Alt lets go." => "Die Seite bleibt parallel, ihre Nachbarn folgen. Hilfslinien fangen sie, Alt löst.",
        HintPivot: "It turns about where the cross stands. Corners catch the cross." => "Gedreht wird um das Kreuz. Ecken fangen das Kreuz.",
        OnEllipse: "length kept: {length} on both sides" => "Länge gehalten: {length} auf beiden Seiten",
        OnArc: "angle kept: turns {angle}" => "Winkel gehalten: Knick {angle}",
        FreeCorner: "corner {number}, free" => "Ecke {number}, frei",

        Table: "Outline" => "Umriss",
        TableAside: "type a figure" => "Zahl eintippen",
        Side: "Side" => "Seite",
        CornerHead: "Corner" => "Ecke",
        Length: "Length" => "Länge",
        Panels: "Panels" => "Felder",
        Bearing: "Bearing" => "Richtung",
        Turn: "Turn" => "Knick",
        East: "East" => "Ost",
        North: "North" => "Nord",
        Before: "from {number}" => "von {number}",
        After: "to {number}" => "bis {number}",
        PickSideOf: "Pick side {from} to {to}" => "Seite {from} bis {to} wählen",
        PickCornerOf: "Pick corner {number}" => "Ecke {number} wählen",
        PanelsOf: "Panels of side {from} to {to}" => "Felder der Seite {from} bis {to}",
        BearingOf: "Bearing of side {from} to {to}" => "Richtung der Seite {from} bis {to}",
        TurnOf: "Turn of corner {number}" => "Knick der Ecke {number}",
        EastOf: "East of corner {number}" => "Ost der Ecke {number}",
        NorthOf: "North of corner {number}" => "Nord der Ecke {number}",
        SideBefore: "Side from corner {number}" => "Seite von Ecke {number}",
        SideAfter: "Side to corner {number}" => "Seite bis Ecke {number}",

        SideSets: "side {from} to {to}: Enter sets it, Esc leaves it" => "Seite {from} bis {to}: Eingabe setzt, Esc lässt sie",

        CannotClose: "No corner has these figures: its two sides do not meet so." => "Keine Ecke hat diese Maße: Die beiden Seiten treffen sich so nicht.",
        NoSuchPanels: "The nets of this run have no so many panels from this corner on." => "Die Netze dieses Auslaufs haben von dieser Ecke an keine so vielen Felder.",
        NotSquare: "It cannot be squared up: a side would vanish, or the outline cross itself." => "Rechtwinklig geht es nicht: Eine Seite fiele weg, oder der Umriss kreuzte sich.",
        SideNotSlid: "This side cannot slide: a neighbour runs along it." => "Diese Seite lässt sich nicht verschieben: Ein Nachbar läuft an ihr entlang.",
        AlongSide: "That way runs along the side, which slides only square to itself."
            => "Diese Richtung läuft an der Seite entlang, die sich nur quer zu sich verschiebt.",
        KeptThere: "Kept as it is, this corner cannot go that way." => "So gehalten kann diese Ecke nicht dorthin.",
        PickSide: "Pick a side first." => "Zuerst eine Seite wählen.",
        PickOutline: "Pick an outline first." => "Zuerst einen Umriss wählen.",
        NothingLike: "It has no other side as long and parallel: mirrored it shares this one." => "Es hat keine gleich lange, parallele Seite: Gespiegelt teilt es diese.",

        DoneSlideSide: "slid a side" => "Seite verschoben",
        DoneKeepLength: "moved a corner, length kept" => "Ecke verschoben, Länge gehalten",
        DoneKeepAngle: "moved a corner, angle kept" => "Ecke verschoben, Winkel gehalten",
        DoneSquareUp: "squared it up" => "rechtwinklig gemacht",
        DoneMirror: "mirrored it" => "gespiegelt",
        DoneBeside: "doubled it beside" => "daneben verdoppelt",
        DoneBearing: "set a side’s bearing" => "Richtung einer Seite gesetzt",
        DonePanels: "set a side’s panels" => "Felder einer Seite gesetzt",
        DonePlace: "set a corner’s place" => "Ort einer Ecke gesetzt",
        DoneCornerTurn: "set a corner’s turn" => "Knick einer Ecke gesetzt",
        DoneFigures: "set a corner by figures" => "Ecke nach Zahlen gesetzt",
    }
}
