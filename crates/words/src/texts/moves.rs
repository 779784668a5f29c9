//! Words of the page about where the flock goes next.

use crate::message::texts;

texts! {
    /// Words of the page about where the flock goes next.
    Moves {
        Title: "Where next" => "Wohin als Nächstes",
        FromRun: "from run {number}" => "von Auslauf {number}",
        Sentence: "Leave one side standing and carry the rest of the netting over it."
            => "Eine Seite stehen lassen und das übrige Netz hinübertragen.",
        NoRun: "No run yet: lay one out first, then see here where it may go."
            => "Noch kein Auslauf: erst einen auslegen, dann hier sehen, wohin er gehen kann.",
        ToRunPage: "Lay out a run" => "Auslauf auslegen",
        CannotMove: "This outline encloses no ground that could be moved; the findings on the page Run say why."
            => "Dieser Umriss umschließt keine Fläche, die umziehen könnte; die Hinweise auf der Seite „Auslauf“ sagen, warum.",

        OverWhich: "Over which side" => "Über welche Seite",
        TurnOver: "Turn over" => "Umklappen",
        Shift: "Shift over" => "Verschieben",
        TurnOverSays: "Mirrored in the side: it stays standing from end to end."
            => "An der Seite gespiegelt: Sie bleibt von Ende zu Ende stehen.",
        ShiftSays: "Pushed straight over the side, as deep as the run is."
            => "Gerade über die Seite geschoben, so weit, wie der Auslauf tief ist.",
        Side: "Side {from}–{to}" => "Seite {from}–{to}",
        SideRow: "{side}, {length}, {panels}" => "{side}, {length}, {panels}",
        OnePanel: "1 panel" => "1 Feld",
        Panels: "{count} panels" => "{count} Felder",

        NextHead: "Turned over side {from}–{to}" => "Über Seite {from}–{to} geklappt",
        NextHeadShift: "Shifted over side {from}–{to}" => "Über Seite {from}–{to} geschoben",
        NettingStays: "netting stays" => "Netz bleibt",
        PostsStay: "posts stay" => "Pfähle bleiben",
        PostsMove: "posts to move" => "Pfähle umsetzen",
        NothingStays: "Nothing stays standing: pushed over this side the run meets it in a corner alone. Turned over it, the whole side stays."
            => "Nichts bleibt stehen: Über diese Seite geschoben trifft ihn der Auslauf nur in einer Ecke. Umgeklappt bleibt die ganze Seite.",
        NotLaid: "The nets of this run cannot be laid, so what stays is not known."
            => "Die Netze dieses Auslaufs lassen sich nicht legen, daher ist nicht bekannt, was bleibt.",
        Nets: "Nets that stay" => "Netze, die bleiben",
        NetsWhole: "{whole} whole, {part} in part" => "{whole} ganz, {part} zum Teil",
        NetsPart: "{part} in part" => "{part} zum Teil",
        NetsNone: "none" => "keine",
        ShortOnSlope: "On the slope there its nets are {short} short along the ground: once it is the run, draw in a corner away from the side that stays."
            => "Am Hang fehlen den Netzen dort {short} am Boden entlang: Sobald es der Auslauf ist, eine Ecke abseits der stehenden Seite einziehen.",
        FreshGround: "Fresh ground" => "Frische Fläche",
        FreshOfAll: "Fresh is what lies in no run that stands or has stood; shared ground counts once. How long it has rested is not recorded."
            => "Frisch ist, was in keinem Auslauf liegt, der steht oder gestanden hat; Gemeinsames zählt einmal. Wie lange es geruht hat, ist nicht festgehalten.",
        LeftToMow: "Left to mow" => "Noch zu mähen",
        LeftToMowFigures: "{area}, {minutes} min" => "{area}, {minutes} min",
        GrazedAgain: "Grazed twice" => "Zweimal beweidet",
        Paddock: "The paddock" => "Die Koppel",
        PaddockInside: "it lies inside" => "er liegt darin",
        PaddockLeft: "it leaves the paddock" => "er verlässt die Koppel",
        NoPaddock: "none is drawn" => "keine gezeichnet",
        KeepOuts: "Keep-outs" => "Sperrflächen",
        KeepOutsClear: "it keeps off them" => "er hält Abstand",
        KeepOutsMet: "it does not keep off them" => "er hält keinen Abstand",
        KeepOutsNone: "none are drawn" => "keine gezeichnet",
        Coop: "The coop" => "Der Stall",
        CoopTowed: "has to be towed there" => "muss dorthin gezogen werden",
        CoopInside: "stands inside already" => "steht schon darin",
        Weakest: "Weakest post" => "Schwächster Pfahl",
        WeakestRange: "{weakest}, not measured" => "{weakest}, nicht gemessen",
        NotKnown: "cannot be worked out" => "nicht zu berechnen",
        NoWarranty: "Only what is drawn is looked at. Local codes come first; walk the ground before you move."
            => "Beachtet wird nur, was gezeichnet ist. Örtliche Vorschriften gehen vor; das Gelände abgehen, bevor Sie umziehen.",

        Keep: "Keep it as the next run" => "Als nächsten Auslauf behalten",
        Kept: "This ground is {run} of the plan already." => "Diese Fläche ist im Plan schon {run}.",
        TakeInHand: "Take {run} in hand" => "{run} auswählen",
        Runs: "Runs of the plan" => "Ausläufe des Plans",
    }
}
