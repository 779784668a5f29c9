//! Words of the fit to whole nets.

use crate::message::texts;

texts! {
    /// Words of the fit to whole nets.
    Fitting {
        Fit: "Fit to whole nets" => "Auf ganze Netze einpassen",
        Looking: "Looking for the nearest outline of whole panels …"
            => "Der nächste Umriss aus ganzen Feldern wird gesucht …",
        IsWhole: "Every side is whole panels now: {sides}. The corners moved by {moved} or so."
            => "Jede Seite hat jetzt ganze Felder: {sides}. Die Ecken sind um etwa {moved} gewandert.",
        WasWhole: "Every side is whole panels: {sides}." => "Jede Seite hat ganze Felder: {sides}.",
        IsWholeOnSlope: "Every side is whole panels along the ground now: {sides}. The corners moved by {moved} or so."
            => "Jede Seite hat jetzt am Boden entlang ganze Felder: {sides}. Die Ecken sind um etwa {moved} gewandert.",
        WasWholeOnSlope: "Every side is whole panels along the ground: {sides}."
            => "Jede Seite hat am Boden entlang ganze Felder: {sides}.",
        NearlyOnSlope: "On this slope the sides are not quite whole panels: {sides} come nearest. The corners moved by {moved} or so."
            => "An diesem Hang haben die Seiten nicht genau ganze Felder: {sides} kommen am nächsten. Die Ecken sind um etwa {moved} gewandert.",
        Unpinned: "Every corner stands on a post, so the pins of the line before are taken out; gates look for their joins anew."
            => "Jede Ecke steht auf einem Pfahl, daher sind die Anheftungen der früheren Linie herausgenommen; Tore suchen ihre Verbindung neu.",
        ShorterOnMap: "On the map they are {level} in all, for {line} of ground."
            => "Auf der Karte sind sie zusammen {level}, für {line} am Boden.",
        NotWholeOnSlope: "No outline was found whose sides are whole panels along the ground as the heights have it: corners will fall between posts. Look over the heights, or draw the corners elsewhere."
            => "Es fand sich kein Umriss, dessen Seiten bei diesen Höhen am Boden entlang ganze Felder haben: Ecken werden zwischen Pfähle fallen. Die Höhen durchsehen oder die Ecken anders zeichnen.",
        NoRoomOnSlope: "The outlines whose sides are whole panels along the ground leave the paddock, come too near a keep-out or cross themselves: corners will fall between posts. Draw the corners elsewhere."
            => "Die Umrisse, deren Seiten am Boden entlang ganze Felder haben, verlassen die Koppel, kommen einer Sperrfläche zu nahe oder kreuzen sich selbst: Ecken werden zwischen Pfähle fallen. Die Ecken anders zeichnen.",
        ShortOnSlope: "Along the ground the line is {short} longer than its nets, so the run stays open. Double one panel more back."
            => "Am Boden entlang ist die Linie {short} länger als ihre Netze, der Auslauf bleibt also offen. Ein Feld mehr zurückschlagen.",
        PanelsDoubled: "Panels doubled back" => "Felder zurückgeschlagen",
        DoubledBack: "{panels}, {spare}, doubled back along the line."
            => "{panels}, {spare}, entlang der Linie zurückgeschlagen.",
        CannotFit: "No outline of whole panels: {reason}." => "Kein Umriss aus ganzen Feldern: {reason}.",
        NotYet: "mend first what is found about this run, its nets and its ground"
            => "erst beheben, was zu diesem Auslauf, seinen Netzen und seinem Gelände gefunden ist",
        TakeNearest: "Take the nearest" => "Den nächsten nehmen",
        Title: "{run}, fitted to whole nets" => "{run}, auf ganze Netze eingepasst",
        Sides: "Sides" => "Seiten",
        Side: "corner {from} to {to}: {panels}, {length}" => "Ecke {from} bis {to}: {panels}, {length}",
        SideOnSlope: "corner {from} to {to}: {panels}, {length} along the ground, {level} on the map"
            => "Ecke {from} bis {to}: {panels}, {length} am Boden entlang, {level} auf der Karte",
        OnePanel: "1 panel" => "1 Feld",
        Panels: "{panels} panels" => "{panels} Felder",
        Line: "Line" => "Linie",
        LineWhole: "{line}, all of {nets}" => "{line}, ganz aus {nets}",
        LineDoubled: "{line}, all of {nets} but {panels} ({spare}) doubled back"
            => "{line}, ganz aus {nets}, davon {panels} ({spare}) zurückgeschlagen",
        Moved: "Moved" => "Bewegt",
        MovedNearest: "the corners by {moved} (root mean square); nothing nearer exists"
            => "die Ecken um {moved} (quadratisches Mittel); Näheres gibt es nicht",
        MovedBound: "the corners by {moved} (root mean square); nothing below {bound} exists"
            => "die Ecken um {moved} (quadratisches Mittel); unter {bound} gibt es nichts",
        MovedOnSlope: "the corners by {moved} (root mean square); on a slope it is not proved that nothing nearer exists"
            => "die Ecken um {moved} (quadratisches Mittel); am Hang ist nicht bewiesen, dass es nichts Näheres gibt",
        Corners: "Corners" => "Ecken",
        Corner: "{number}: {east} east, {north} north" => "{number}: {east} Ost, {north} Nord",
        NoRectangle: "No rectangle exists on an odd number of panels, so this is another four-sided outline: with one panel more doubled back a rectangle can be made."
            => "Mit einer ungeraden Zahl von Feldern gibt es kein Rechteck, daher ist dies ein anderes Viereck: Mit einem Feld mehr zurückgeschlagen wird ein Rechteck möglich.",
        DrawIn: "Ground is never level, and less than 1 % of the line is spare: set corner {corner} last and draw it in as far as the ground takes up, by {by} for {gives}."
            => "Der Boden ist nie eben, und weniger als 1 % der Linie ist übrig: Ecke {corner} zuletzt setzen und so weit einziehen, wie der Boden verlangt, um {by} für {gives}.",
        Codes: "Local codes and licensed practice come before anything that this plan says."
            => "Örtliche Vorschriften und zugelassene Fachleute gehen allem vor, was dieser Plan sagt.",

        // Why a run cannot be fitted.
        NoSuchRun: "{file}: there is no run “{run}”: name one of the plan’s ({known})."
            => "{file}: Es gibt keinen Auslauf „{run}“: einen des Plans nennen ({known}).",
        NoSuchRunAtAll: "{file}: there is no run “{run}”, as the plan has none: draw one first."
            => "{file}: Es gibt keinen Auslauf „{run}“, denn der Plan hat keinen: erst einen zeichnen.",
        Open: "{file}: run “{run}” is an open line, and only a closed one is fitted: close it first."
            => "{file}: Auslauf „{run}“ ist eine offene Linie, und nur eine geschlossene lässt sich einpassen: erst schließen.",
        UnbuiltRun: "{file}: the outline of run “{run}” cannot be built: draw at least three corners and no crossing."
            => "{file}: Der Umriss von Auslauf „{run}“ lässt sich nicht bilden: mindestens drei Ecken und keine Kreuzung zeichnen.",
        UnbuiltBoundary: "{file}: the paddock’s outline cannot be built, so nothing can be kept inside it: mend ground.boundary first."
            => "{file}: Der Umriss der Koppel lässt sich nicht bilden, daher kann nichts darin gehalten werden: erst ground.boundary berichtigen.",
        UnbuiltKeepOut: "{file}: the outline of keep-out {number} cannot be built, so nothing can be kept off it: mend ground.keep_outs[{index}] first."
            => "{file}: Der Umriss von Sperrfläche {number} lässt sich nicht bilden, daher kann nichts Abstand davon halten: erst ground.keep_outs[{index}] berichtigen.",
        NoNets: "{file}: run “{run}” has no net, and the store has none left for it: add one."
            => "{file}: Auslauf „{run}“ hat kein Netz, und das Lager hat keines mehr dafür: eines hinzufügen.",
        BadNet: "{file}: the net “{net}” has a length or panels that no net can have: correct them in the store."
            => "{file}: Das Netz „{net}“ hat eine Länge oder Felder, die kein Netz haben kann: im Lager berichtigen.",
        TooManyCorners: "{file}: run “{run}” has {corners} corners, too many to fit: leave at most {most}."
            => "{file}: Auslauf „{run}“ hat {corners} Ecken, zu viele zum Einpassen: höchstens {most} lassen.",
        TooManyPanels: "{file}: the nets of run “{run}” have {panels} panels, too many to fit: at most {most}."
            => "{file}: Die Netze von Auslauf „{run}“ haben {panels} Felder, zu viele zum Einpassen: höchstens {most}.",

        // Why no outline exists, without and with the plan's file.
        OfRun: "{file}: run “{run}” cannot be fitted: {reason}. {nearest}"
            => "{file}: Auslauf „{run}“ lässt sich nicht einpassen: {reason}. {nearest}",
        TooFewPanels: "{panels} panels make no {corners} sides" => "{panels} Felder ergeben keine {corners} Seiten",
        NeverCloses: "with {panels} panels on {corners} sides, one side is always as long as the rest together"
            => "mit {panels} Feldern auf {corners} Seiten ist immer eine Seite so lang wie die übrigen zusammen",
        NoRoomAll: "however {panels} panels are shared out over these corners, no outline was found inside the paddock and off the keep-outs"
            => "wie auch immer {panels} Felder auf diese Ecken verteilt werden, es fand sich kein Umriss innerhalb der Koppel und abseits der Sperrflächen",
        NoRoomFound: "no outline of {panels} panels with these corners was found inside the paddock and off the keep-outs"
            => "es fand sich kein Umriss aus {panels} Feldern mit diesen Ecken innerhalb der Koppel und abseits der Sperrflächen",
        NearestDoubled: "The nearest that closes has {panels} doubled back in place of {asked}."
            => "Der nächste, der sich schließt, hat {panels} zurückgeschlagen statt {asked}.",
        NearestCorners: "The nearest that closes has {corners} corners."
            => "Der nächste, der sich schließt, hat {corners} Ecken.",
        NoNearest: "Nothing near it was found that does: change the sketch or the nets."
            => "In der Nähe fand sich keiner, der sich schließt: die Skizze oder die Netze ändern.",
    }
}
