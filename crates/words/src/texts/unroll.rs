//! Words of a run while it is being unrolled.

use crate::message::texts;

texts! {
    /// Words of a run while it is being unrolled.
    Unroll {
        Start: "Unroll a run" => "Auslauf abrollen",
        Title: "Unrolling" => "Abrollen",
        FollowsPointer: "Corner {number} follows the pointer" => "Ecke {number} folgt dem Zeiger",
        SecondCorner: "Lead on to where the second corner stands" => "Weiterführen bis zur zweiten Ecke",
        FirstCorner: "Press where the first corner stands" => "Drücken, wo die erste Ecke steht",
        IfClosedHere: "if closed here" => "hier geschlossen",
        EachIfClosed: "for each bird" => "je Tier",
        Braces: "braces" => "Abspannungen",

        LeftOnNet: "{length} left on net {net}" => "noch {length} auf Netz {net}",
        LeftInStore: "{count} more in the store" => "{count} weitere im Lager",
        NoneInStore: "the last one" => "das letzte",
        NoNets: "no net is left in the store" => "kein Netz mehr im Lager",
        NoNetsYet: "no net is in the store yet" => "noch kein Netz im Lager",
        NoNetsHow: "No net is in the store yet, so the line has no posts. Add your nets on page Run, or start with your own rolls."
            => "Noch kein Netz im Lager, darum hat die Linie keine Pfähle. Die Netze auf der Seite „Auslauf“ hinzufügen oder mit eigenen Rollen beginnen.",
        ShortOfClosing: "out of reach: {length} short to close from here"
            => "außer Reichweite: {length} fehlen, um hier zu schließen",
        Beyond: "{length} more than the store holds" => "{length} mehr, als das Lager hat",

        Side: "Side" => "Seite",
        Panels: "Panels" => "Felder",
        Turn: "Turn" => "Knick",
        Bearing: "Bearing" => "Richtung",

        PlaceSets: "from the plan’s origin: Enter sets it" => "vom Ursprung des Plans: Eingabe setzt",

        OnCurveAndPost: "{nets} nets close it exactly, on a post"
            => "{nets} Netze schließen ihn genau, an einem Pfahl",
        OnCurveAndPostOne: "1 net closes it exactly, on a post" => "1 Netz schließt ihn genau, an einem Pfahl",
        OnCurve: "{nets} nets close it exactly" => "{nets} Netze schließen ihn genau",
        OnCurveOne: "1 net closes it exactly" => "1 Netz schließt ihn genau",
        OnPosts: "on a post, {panels} panels on" => "an einem Pfahl, {panels} Felder weiter",
        OnPost: "on a post, 1 panel on" => "an einem Pfahl, 1 Feld weiter",
        Free: "free: no post stands here" => "frei: hier steht kein Pfahl",
        OnFirst: "closes on corner 1" => "schließt an Ecke 1",

        ClosesHere: "{nets} nets close here" => "{nets} Netze schließen hier",
        ClosesHereOne: "1 net closes here" => "1 Netz schließt hier",
        OutOfReach: "Ruled ground is out of reach of {nets} nets"
            => "Schraffiertes liegt außer Reichweite von {nets} Netzen",
        OutOfReachOne: "Ruled ground is out of reach of 1 net" => "Schraffiertes liegt außer Reichweite von 1 Netz",
        ToClose: "{length} to close" => "{length} bis zum Schluss",

        Sides: "Sides" => "Seiten",
        Length: "Length" => "Länge",
        TurnAfter: "Turn after" => "Knick danach",
        RollsOfRun: "Rolls for this run" => "Rollen für diesen Auslauf",
        RollsOfRunAside: "{left} of {owned} still rolled up" => "{left} von {owned} noch aufgerollt",

        WhileYouDraw: "While you draw" => "Beim Zeichnen",
        KeyEnter: "close the run here" => "den Auslauf hier schließen",
        KeyTab: "type the side, its panels or the turn" => "Seite, ihre Felder oder den Knick eintippen",
        KeyAlt: "let go of posts and curves" => "von Pfählen und Kurven lösen",
        KeyBack: "take up the last corner" => "letzte Ecke aufnehmen",
        KeyUndo: "the same; with Shift set it again" => "ebenso; mit Umschalttaste wieder setzen",
        KeyEsc: "roll it all up" => "alles wieder aufrollen",
        KeyArrows: "move it, Space sets a corner" => "bewegen, Leertaste setzt eine Ecke",
    }
}
