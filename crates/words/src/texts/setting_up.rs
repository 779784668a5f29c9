//! The steps of setting up and taking down, in the words that are said in the field.

use crate::message::texts;

texts! {
    /// The steps of setting up and taking down, in the words that are said in the field.
    SettingUp {
        ToSetUp: "to set up" => "aufbauen",
        ToTakeDown: "to take down" => "abbauen",
        ToMow: "to mow" => "mähen",
        FirstTime: "Setting up step by step: {low} min with practice, {up} the first time; taking down the first time {down}."
            => "Aufbau Schritt für Schritt: {low} min mit Übung, {up} beim ersten Mal; Abbau beim ersten Mal {down}.",
        FirstTimeByRule: "{rule} min to set up is a rule of thumb, so much a net and a brace. Step by step it is {low} min with practice, {up} the first time; taking down the first time {down}."
            => "{rule} min für den Aufbau sind eine Faustregel, so viel je Netz und je Abspannung. Schritt für Schritt sind es {low} min mit Übung, {up} beim ersten Mal; Abbau beim ersten Mal {down}.",
        SettingUp: "Setting up" => "Aufbau",
        StepsCount: "{count} steps" => "{count} Schritte",
        ShowSetUp: "Go through setting up" => "Den Aufbau durchgehen",
        ShowTakeDown: "Go through taking down" => "Den Abbau durchgehen",
        FoldSetUp: "Fold setting up" => "Aufbau einklappen",
        FoldTakeDown: "Fold taking down" => "Abbau einklappen",
        TakingDown: "Taking down" => "Abbau",
        Minutes: "{low} min for practised hands, {high} the first time; {walk} on foot and {carry} with a roll in hand."
            => "{low} min mit Übung, {high} beim ersten Mal; {walk} zu Fuß und {carry} mit einer Rolle in der Hand.",
        RuleOfThumb: "By rule of thumb it is {minutes} min: so much a net and a brace, whatever the ways are. Tables and the sheet say that until you state how long things take."
            => "Nach der Faustregel sind es {minutes} min: so viel je Netz und je Abspannung, wie weit die Wege auch sind. Tabellen und Blatt sagen das, bis Sie angeben, wie lange die Dinge dauern.",
        Bound: "No order takes practised hands less than {bound} min."
            => "In keiner Reihenfolge geht es mit Übung unter {bound} min.",
        Mowing: "Mowing, {minutes} min, is not in that." => "Das Mähen, {minutes} min, zählt nicht dazu.",
        Steps: "{number}. {step}" => "{number}. {step}",
        StepMinutes: "{step} ({minutes} min)" => "{step} ({minutes} min)",
        Drop: "The rolls lie at {at}." => "Die Rollen liegen bei {at}.",
        DropAssumed: "The rolls are taken to lie at {at}." => "Angenommen ist, dass die Rollen bei {at} liegen.",
        LayAt: "The rolls go to {at}." => "Die Rollen kommen hierhin: {at}.",
        LayAtAssumed: "The rolls are taken to go back to {at}."
            => "Angenommen ist, dass die Rollen hierhin zurückkommen: {at}.",
        AtCorner: "corner {number}" => "Ecke {number}",
        PastCorner: "{length} past corner {number}" => "{length} hinter Ecke {number}",
        At: "{east} east, {north} north" => "{east} Ost, {north} Nord",
        NetOfKind: "net {net}, {kind}" => "Netz {net}, {kind}",
        Look: "Energizer off. Walk the line once: look up for overhead lines, look down for buried services, holes, stones and water; plans or a scan before anything is driven deep."
            => "Gerät aus. Die Linie einmal abgehen: nach oben auf Freileitungen schauen, nach unten auf vergrabene Leitungen, Löcher, Steine und Wasser; Leitungspläne oder eine Ortung, bevor etwas tief eingeschlagen wird.",
        LookUp: "Energizer off. Walk the line once: look up, an overhead line crosses it at {at}; look down for buried services, holes, stones and water; plans or a scan before anything is driven deep."
            => "Gerät aus. Die Linie einmal abgehen: nach oben schauen, eine Freileitung kreuzt sie bei {at}; nach unten auf vergrabene Leitungen, Löcher, Steine und Wasser schauen; Leitungspläne oder eine Ortung, bevor etwas tief eingeschlagen wird.",
        Canes: "Set a cane at each of the {count} corners and ends on that walk."
            => "Auf diesem Gang an jeder Ecke und jedem Ende einen Stecken setzen, insgesamt {count}.",
        MowBetweenCanes: "Mow the strip from cane to cane; pick up stones first, children and birds away."
            => "Den Streifen von Stecken zu Stecken mähen; zuerst Steine auflesen, Kinder und Tiere weg.",
        MowAlongNet: "Energizer off and fence tested dead: mow once along the standing net, lay it flat to the inside, then mow the rest; never over net or cord."
            => "Gerät aus und Zaun als spannungsfrei geprüft: einmal am stehenden Netz entlang mähen, es flach nach innen legen, dann den Rest mähen; nie über Netz oder Schnur.",
        MowNotAtAll: "The grass is short: nothing is mown." => "Das Gras ist kurz: Nichts wird gemäht.",
        Restand: "Set the net up again in the middle of the swath."
            => "Das Netz in der Mitte der gemähten Bahn wieder aufstellen.",
        TakeUp: "Take roll {number} ({kind}) to its end at {at}, where it lies."
            => "Rolle {number} ({kind}) an ihrem Ende bei {at} aufnehmen, dort liegt sie schon.",
        CarryOne: "Carry roll {number} ({kind}) {length} to its end at {at}; posts level, never upright under a line."
            => "Rolle {number} ({kind}) {length} zu ihrem Ende bei {at} tragen; Pfähle waagrecht, nie aufrecht unter einer Leitung.",
        CarryTwo: "Carry roll {number} ({kind}) and the next one {length} to its end at {at}; posts level, never upright under a line."
            => "Rolle {number} ({kind}) und die nächste {length} zu ihrem Ende bei {at} tragen; Pfähle waagrecht, nie aufrecht unter einer Leitung.",
        CarryOn: "Carry the second roll, {number} ({kind}), {length} on to its end at {at}."
            => "Die zweite Rolle, {number} ({kind}), {length} weiter zu ihrem Ende bei {at} tragen.",
        RollOut: "Roll it out to {at}, one panel at a time from the hand."
            => "Bis {at} ausrollen, ein Feld nach dem anderen aus der Hand.",
        TreadIn: "Go back along it and tread in each spike to its full depth."
            => "Daran zurückgehen und jede Spitze in voller Tiefe eintreten.",
        TieOne: "Tie the two posts of the join with both cords and clip it."
            => "Die beiden Pfähle der Verbindung mit beiden Schnüren binden und die Verbindung anklemmen.",
        TieMany: "Tie the posts of the {count} joins with both cords and clip them."
            => "Die Pfähle der {count} Verbindungen mit beiden Schnüren binden und die Verbindungen anklemmen.",
        Brace: "Walk round and brace the {count} corners and ends; no metal may touch a live line."
            => "Ringsum gehen und die Ecken und Enden abspannen, insgesamt {count}; kein Metall darf eine stromführende Litze berühren.",
        FurtherPost: "Set the further post, of wood or plastic, at {at}, and fasten the net to it."
            => "Den Zusatzpfahl, aus Holz oder Kunststoff, bei {at} setzen und das Netz daran befestigen.",
        FurtherPosts: "Set the {count} further posts, of wood or plastic, at dips and ridges, and fasten the net to them."
            => "Die {count} Zusatzpfähle, aus Holz oder Kunststoff, an Senken und Kuppen setzen und das Netz daran befestigen.",
        Power: "Stand clear of the net, clip on the energizer at {at} and switch it on."
            => "Abstand vom Netz nehmen, das Gerät bei {at} anklemmen und einschalten.",
        PowerApart: "Stand clear of the net, clip on the lead at {at}; then go to the energizer, {apart} from there, and switch it on."
            => "Abstand vom Netz nehmen und die Zuleitung bei {at} anklemmen; dann zum Gerät, {apart} von dort, und einschalten.",
        FarReading: "Read the voltage at the far post, {at}." => "Die Spannung am fernen Pfahl messen, {at}.",
        Birds: "Only now let the birds out." => "Erst jetzt die Tiere hinauslassen.",
        PowerOff: "Birds shut in. Energizer off and unclipped at {at}; the fence tested dead before anyone touches it."
            => "Tiere eingesperrt. Gerät aus und bei {at} abgeklemmt; Zaun als spannungsfrei geprüft, bevor jemand ihn berührt.",
        PowerOffApart: "Birds shut in. Energizer off where it stands, {apart} from the net’s clip, then unclipped at {at}; the fence tested dead before anyone touches it."
            => "Tiere eingesperrt. Gerät an seinem Platz aus, {apart} von der Klemme am Netz, dann bei {at} abgeklemmt; Zaun als spannungsfrei geprüft, bevor jemand ihn berührt.",
        OpenGate: "Open the gate join at {at} first." => "Zuerst die Torverbindung bei {at} öffnen.",
        GoTo: "Go to roll {number} ({kind}) at {at}." => "Zu Rolle {number} ({kind}) bei {at} gehen.",
        Untie: "Go to roll {number} ({kind}); untie and unclip its join at {at}."
            => "Zu Rolle {number} ({kind}) gehen; ihre Verbindung bei {at} lösen und abklemmen.",
        UntieMany: "Go to roll {number} ({kind}); untie and unclip its {count} joins."
            => "Zu Rolle {number} ({kind}) gehen; ihre {count} Verbindungen lösen und abklemmen.",
        Fold: "Draw any brace on it and fold it panel by panel to {at}, the end that starts next time; tie the bundle."
            => "Jede Abspannung daran ziehen und das Netz Feld um Feld bis {at} zusammenlegen, zu dem Ende, das nächstes Mal anfängt; das Bündel binden.",
        LayDown: "Lay it there, where the next run begins." => "Dort hinlegen, wo der nächste Auslauf beginnt.",
        CarryAwayOne: "Carry it {length} to where the next run begins."
            => "{length} weit dorthin tragen, wo der nächste Auslauf beginnt.",
        CarryAwayTwo: "Carry both {length} to where the next run begins."
            => "Beide {length} weit dorthin tragen, wo der nächste Auslauf beginnt.",
        Turnings: "Mowing it" => "Beim Mähen",
        TurningsFigures: "turn round or move over {turnings} times, {corners} sharp corners on the way"
            => "Wenden oder Versetzen: {turnings}, scharfe Ecken unterwegs: {corners}",
        StillToMow: "Left to mow" => "Noch zu mähen",
        StillToMowFigures: "{area}, {walk}, {minutes} min; the rest is mown for nets that stand"
            => "{area}, {walk}, {minutes} min; das Übrige ist für stehende Netze gemäht",
        Grass: "Grass back" => "Gras zurück",
        GrassFigures: "at the lowest live line in {fast} days where it grows fast, {mean} on average, {slow} slowly"
            => "nach Tagen an der untersten stromführenden Litze: {fast} bei schnellem Wuchs, {mean} im Mittel, {slow} bei langsamem",
    }
}
