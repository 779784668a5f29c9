//! Words of the first start, when the keeper has nothing but rolls.

use crate::message::texts;

texts! {
    /// Words of the first start, when the keeper has nothing but rolls.
    Rolls {
        Question: "How much netting do you have?" => "Wie viel Netz haben Sie?",
        Count: "Count the posts on one roll, both ends included."
            => "Zählen Sie die Pfähle einer Rolle, beide Enden mitgezählt.",
        Rolls: "Rolls" => "Rollen",
        LengthOfOne: "Length of one" => "Länge je Rolle",
        PostsOnOne: "Posts on one" => "Pfähle je Rolle",
        Fewer: "{label}: fewer" => "{label}: weniger",
        More: "{label}: more" => "{label}: mehr",
        Summary: "{panels} panels of {panel} on each, {line} of line in all."
            => "{panels} Felder zu {panel} je Rolle, insgesamt {line} Linie.",
        OneDoubled: "{panels} panels of {panel} on each, {line} of line; one panel is left over and doubled back."
            => "{panels} Felder zu {panel} je Rolle, {line} Linie; ein Feld bleibt übrig und wird zurückgeschlagen.",
        TooFew: "Four panels are the fewest that close round ground: say more rolls, or more posts on one."
            => "Mindestens vier Felder umschließen eine Fläche: mehr Rollen oder mehr Pfähle je Rolle angeben.",
        LayItOut: "Lay it out" => "Auslegen",
        AllElse: "All else is assumed, marked so, and yours to change."
            => "Alles Übrige ist angenommen, so gekennzeichnet und von Ihnen zu ändern.",
        BareHead: "This plan is empty. How many rolls do you have?" => "Dieser Plan ist leer. Wie viele Rollen haben Sie?",
        LookRound: "Look round the example farm" => "Beispielhof ansehen",
        BackToPlan: "Back to the plan" => "Zurück zum Plan",
        DrawFirst: "Draw the paddock first" => "Erst die Koppel zeichnen",
        BringIn: "Bring in a boundary" => "Grenze einlesen",

        FirstTitle: "Your first run" => "Ihr erster Auslauf",
        FirstSentence: "It is laid out when you have said what you own."
            => "Er wird ausgelegt, wenn Sie gesagt haben, was Sie besitzen.",
        AssumedUntil: "Assumed until you say" => "Angenommen, bis Sie es sagen",
        CanWait: "all of it can wait" => "alles hat Zeit",
        CoopAndFlock: "Coop and flock" => "Stall und Schar",
        CoopIs: "{length} × {width}, {birds} hens" => "{length} × {width}, {birds} Hennen",
        Netting: "Netting" => "Netz",
        NettingIs: "{height} high, one spike a post" => "{height} hoch, eine Spitze je Pfahl",
        Ground: "Ground" => "Boden",
        GroundIs: "firm clay, not wet" => "steifer Ton, nicht nass",
        Grass: "Grass on the line" => "Gras an der Linie",
        GrassIs: "touching" => "berührend",
        Energizer: "Energizer" => "Weidezaungerät",
        EnergizerIs: "{joules} J, one earth stake" => "{joules} J, ein Erdstab",
        Mowing: "Strip, mower" => "Streifen, Mäher",
        MowingIs: "{strip}, {cut}" => "{strip}, {cut}",
        Target: "Target" => "Ziel",
        ReadThen: "What you will read then" => "Was Sie dann lesen",
        ReadGround: "how much ground the rolls close round" => "wie viel Fläche die Rollen umschließen",
        ReadCorners: "which corners lean in without a brace" => "welche Ecken sich ohne Abspannung neigen",
        ReadMow: "what to mow before you set up" => "was vor dem Aufbau zu mähen ist",
        ReadVolts: "what volts the far side holds" => "welche Spannung die ferne Seite hält",

        CodesFirst: "Local codes and licensed practice come before anything that this plan says."

            => "Örtliche Vorschriften und zugelassene Fachleute gehen allem vor, was dieser Plan sagt.",

        DragIt: "Drag it onto your ground" => "Auf Ihr Gelände ziehen",
        DragHow: "by the ground inside it, or by the coop" => "an der Fläche darin oder am Stall",
        ReadLine: "then read the line below" => "dann die Zeile darunter lesen",

        StartOwn: "Start with your own rolls" => "Mit eigenen Rollen beginnen",
        SidePanels: "{length} · {panels} panels" => "{length} · {panels} Felder",
    }
}
