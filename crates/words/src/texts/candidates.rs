//! Words of the largest runs: the table's heads, and why there are none.

use crate::message::texts;

texts! {
    /// Words of the largest runs: the table's heads, and why there are none.
    Candidates {
        Square: "square" => "Quadrat",
        Rectangle: "rectangle" => "Rechteck",
        Hexagon: "six sides" => "Sechseck",
        Octagon: "eight sides" => "Achteck",
        Round: "round" => "Kreisform",
        Free: "free" => "freie Form",
        AtWall: "{family}, at wall {number}" => "{family} an Wand {number}",
        Title: "The largest runs with {nets}, the largest first"
            => "Die größten Ausläufe mit {nets}, der größte zuerst",
        OneNet: "1 net" => "1 Netz",
        Nets: "{count} nets" => "{count} Netzen",
        Shape: "shape" => "Form",
        Area: "area" => "Fläche",
        NoLarger: "none larger than" => "keine größer als",
        Line: "line" => "Linie",
        Spare: "spare" => "übrig",
        Corners: "corners" => "Ecken",
        Braces: "braces" => "Abspannungen",
        Strip: "strip" => "Mähstreifen",
        Minutes: "minutes" => "Minuten",
        Weakest: "weakest post" => "schwächster Pfahl",
        WholePanels: "whole panels" => "ganze Felder",
        Unknown: "–" => "–",
        Short: "short {length}" => "fehlt {length}",
        NoWarranty: "Only what is drawn is looked at. Local codes come first; walk the ground before you set up."
            => "Berücksichtigt ist nur, was gezeichnet ist. Örtliche Vorschriften gehen vor; vor dem Aufbauen das Gelände abgehen.",

        NoteOutside: "The keep-out “{name}” lies outside the paddock and makes no difference."

            => "Die Sperrfläche „{name}“ liegt außerhalb der Koppel und macht keinen Unterschied.",
        NoteOverlap: "The keep-outs “{first}” and “{second}” overlap; the runs keep off both."
            => "Die Sperrflächen „{first}“ und „{second}“ überlappen sich; die Ausläufe bleiben von beiden weg.",
        NoteParts: "The keep-outs cut the paddock into {count} parts; each run lies in one of them."
            => "Die Sperrflächen zerschneiden die Koppel in {count} Teile; jeder Auslauf liegt in einem davon.",
        NoteSlope: "The ground is not level: each shape is drawn in until its nets close along the ground. One that is short cannot be, where it lies."
            => "Das Gelände ist nicht eben: Jede Form wird eingezogen, bis sich ihre Netze am Boden entlang schließen. Bei einer, der etwas fehlt, geht das dort nicht, wo sie liegt.",
        NoteNoWall: "No wall in the plan is marked as fit to hold the birds, so no side is borrowed."
            => "Keine Wand im Plan ist so gekennzeichnet, dass sie die Tiere halten kann, darum wird keine Seite mitgenutzt.",

        Refused: "{file}: {sentence}" => "{file}: {sentence}",
        RefusedAt: "{file}, {key}: {sentence}" => "{file}, {key}: {sentence}",
        NoBoundary: "There is no paddock to look in: draw its boundary first."
            => "Es gibt keine Koppel, in der gesucht werden kann: erst ihre Grenze zeichnen.",
        BadBoundary: "The boundary of the paddock encloses no ground: draw it anew, with at least three corners."
            => "Die Grenze der Koppel umschließt nichts: neu zeichnen, mit mindestens drei Ecken.",
        CrossedBoundary: "The boundary of the paddock crosses itself at {at}, so it is in two parts: pull the corners apart there, or keep one part."
            => "Die Grenze der Koppel kreuzt sich selbst bei {at}, ist also in zwei Teilen: dort die Ecken auseinanderziehen oder einen Teil behalten.",
        BadKeepOut: "The keep-out “{name}” crosses itself or encloses nothing: draw it anew or take it out."
            => "Die Sperrfläche „{name}“ kreuzt sich selbst oder umschließt nichts: neu zeichnen oder herausnehmen.",
        BadClearance: "A keep-out has a clearance that is no distance: state zero or more."
            => "Eine Sperrfläche hat einen Abstand, der keiner ist: null oder mehr angeben.",
        NoNets: "The store has no nets: state at least one." => "Das Lager hat keine Netze: mindestens eines angeben.",
        NetsAsked: "The store has {owned} nets and {asked} were asked for: ask for 1 to {owned}, or state more."
            => "Netze im Lager: {owned}, verlangt: {asked}; 1 bis {owned} verlangen oder mehr angeben.",
        BadNet: "The net “{id}” has no usable length or panels: correct it there."
            => "Das Netz „{id}“ hat keine brauchbare Länge oder keine brauchbaren Felder: dort berichtigen.",
        TooFewPanels: "{panels} panels enclose no ground: ask for more nets."
            => "{panels} Felder umschließen nichts: mehr Netze verlangen.",
        SidesAsked: "A free outline of {asked} sides is not searched: ask for 3 to {most}."
            => "Ein freier Umriss mit {asked} Seiten wird nicht gesucht: 3 bis {most} verlangen.",
        NoCoop: "No coop is stated to go round: state one, or ask without it."
            => "Kein Stall ist angegeben, um den es gehen soll: einen angeben oder ohne ihn suchen.",
        BadCoop: "The coop’s length, width or clearance is no size: correct it."
            => "Länge, Breite oder Abstand des Stalls ist kein Maß: berichtigen.",
        CoopOutside: "The coop does not stand inside the paddock with its clearance, so no run can hold it: move the coop or the boundary."
            => "Der Stall steht mit seinem Abstand nicht in der Koppel, darum kann ihn kein Auslauf aufnehmen: den Stall oder die Grenze verschieben.",
        CoopInKeepOut: "The coop stands in the keep-out “{name}” or its clearance, so no run can hold it: move one of them."
            => "Der Stall steht in der Sperrfläche „{name}“ oder ihrem Abstand, darum kann ihn kein Auslauf aufnehmen: eines von beiden verschieben.",
        NothingFits: "No shape fits on the ground that the keep-outs leave: look at their outlines and clearances."
            => "Keine Form passt auf das Gelände, das die Sperrflächen lassen: ihre Umrisse und Abstände ansehen.",
        NothingFitsCoop: "No shape of these nets fits round the coop on this ground: ask for more nets, without the coop, or move the coop."
            => "Keine Form aus diesen Netzen passt auf diesem Gelände um den Stall: mehr Netze verlangen, ohne den Stall suchen oder den Stall verschieben.",
    }
}
