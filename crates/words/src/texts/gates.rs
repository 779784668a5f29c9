//! Pins and gates: on their page, in the report, and what can be wrong with them.

use crate::message::texts;

texts! {
    /// Pins and gates: on their page, in the report, and what can be wrong with them.
    Gates {
        Pins: "Pins" => "Anheftungen",
        PinsAside: "the rest is chosen round them" => "das Übrige wird danach gewählt",
        NoPins: "Nothing is fixed. Pick a corner or a post to pin the start, a join, a net or the corner there."
            => "Nichts ist festgelegt. Eine Ecke oder einen Pfahl anklicken, um dort den Anfang, eine Verbindung, ein Netz oder die Ecke anzuheften.",
        PickToPin: "Pick a corner or a post to pin more."
            => "Eine Ecke oder einen Pfahl anklicken, um mehr anzuheften.",
        PinStart: "Start {at}" => "Anfang {at}",
        PinJoin: "Join {at}" => "Verbindung {at}",
        PinCorner: "Corner {number} on a post" => "Ecke {number} auf einem Pfahl",
        PinLostCorner: "A corner on a post" => "Eine Ecke auf einem Pfahl",
        PinNet: "Net {net} {at}" => "Netz {net} {at}",
        PinLine: "{pin}: {cost}" => "{pin}: {cost}",
        AtCorner: "at corner {number}" => "an Ecke {number}",
        PastCorner: "{along} past corner {number}" => "{along} hinter Ecke {number}",
        CostsNothing: "costs nothing" => "kostet nichts",
        Costs: "costs {cost}" => "kostet {cost}",
        CostsAbout: "costs about {cost}" => "kostet etwa {cost}",
        CostFollows: "cost follows" => "Kosten folgen",
        Kept: "kept" => "eingehalten",
        NotKept: "cannot be kept" => "nicht einzuhalten",
        PinStartHere: "Start the chain at {place}" => "Die Netzkette an {place} beginnen",
        PinJoinHere: "Pin a join at {place}" => "Eine Verbindung an {place} anheften",
        PinCornerHere: "Pin {place} to a post" => "{place} an einen Pfahl heften",
        PinNetHere: "Pin net {net} at {place}" => "Netz {net} an {place} anheften",
        CornerPlace: "corner {number}" => "Ecke {number}",
        PostPlace: "post {number}" => "Pfahl {number}",
        TakeOutPin: "Take out the pin: {pin}" => "Anheftung herausnehmen: {pin}",
        MoveToPost: "Move corner {number} to a post, {miss} off"
            => "Ecke {number} auf einen Pfahl schieben, {miss} weit",
        Gates: "Gates" => "Tore",
        GatesAside: "drawn shut" => "geschlossen gezeichnet",
        NoGates: "No gate yet. A gate opens a join and lays back the panels beside it."
            => "Noch kein Tor. Ein Tor öffnet eine Verbindung und legt die Felder daneben zurück.",
        AddFoot: "A gate on foot" => "Fußgängertor",
        AddWheels: "A gate for a quad" => "Tor für ein Quad",
        AddCoop: "A gate for the coop" => "Tor für den Stall",
        Foot: "On foot" => "Zu Fuß",
        Wheels: "Quad and trailer" => "Quad mit Anhänger",
        Coop: "The coop" => "Der Stall",
        GateNumber: "{kind}, gate {number}" => "{kind}, Tor {number}",
        Width: "Clear width" => "Lichte Weite",
        WidthSaid: "Clear width of gate {number}" => "Lichte Weite von Tor {number}",
        OpensAt: "{clear} clear, at the join {at}" => "{clear} weit, an der Verbindung {at}",
        Clear: "{clear} clear" => "{clear} weit",
        OnePulled: "post {posts} pulled, 1 panel laid back" => "Pfahl {posts} gezogen, 1 Feld zurückgelegt",
        Pulled: "posts {posts} pulled, {panels} panels laid back"
            => "Pfähle {posts} gezogen, {panels} Felder zurückgelegt",
        NonePulled: "no panel can be laid back" => "kein Feld lässt sich zurücklegen",
        Way: "{way} from the gateway" => "{way} ab Zufahrt",
        WayAndCoop: "{way} from the gateway, {inside} from the coop" => "{way} ab Zufahrt, {inside} ab Stall",
        NoJoin: "no join to open" => "keine Verbindung zum Öffnen",
        NoJoinLeft: "no join left to open" => "keine Verbindung mehr zum Öffnen",
        WayFollows: "the way follows" => "der Weg folgt",
        PostsTo: "{first} to {last}" => "{first} bis {last}",
        SheetGate: "{name}: {figures}." => "{name}: {figures}.",
        StepOff: "Energizer off and unclipped; test the net dead at the gate."
            => "Gerät aus und abgeklemmt; am Tor prüfen, dass das Netz spannungsfrei ist.",
        StepShutIn: "Birds shut in before wheels or the coop go through."
            => "Tiere eingesperrt, bevor Räder oder der Stall hindurchfahren.",
        StepOpen: "Untie the join, pull the posts, lay the panels back along the net."
            => "Verbindung lösen, Pfähle ziehen, Felder am Netz entlang zurücklegen.",
        StepShut: "Shut it the same way: posts in, join tied, connectors clipped."
            => "Ebenso schließen: Pfähle setzen, Verbindung binden, Verbinder anklemmen.",
        StepOn: "Energizer on, and a reading past the gate." => "Gerät ein und hinter dem Tor messen.",
        CannotStart: "The chain cannot start at {place} with these nets and pins."
            => "An {place} kann die Netzkette mit diesen Netzen und Anheftungen nicht beginnen.",
        CannotJoin: "No join can stand at {place} with these nets and pins."
            => "An {place} kann mit diesen Netzen und Anheftungen keine Verbindung liegen.",
        CannotCorner: "No post can stand at {place} with these nets and pins."
            => "An {place} kann mit diesen Netzen und Anheftungen kein Pfahl stehen.",
        CannotNet: "Net {net} cannot lie at {place} with these pins."
            => "Netz {net} kann mit diesen Anheftungen nicht an {place} liegen.",
        NoGateway: "no gateway to come from" => "keine Zufahrt, von der man kommt",
        Narrow: "too narrow for a way" => "zu schmal für einen Weg",
        Blocked: "no way from the gateway" => "kein Weg von der Zufahrt",
        CoopBlocked: "no way from the coop" => "kein Weg vom Stall",
        OutOfSteps: "way not worked out" => "Weg nicht berechnet",
        GateLine: "{kind}: {figures}" => "{kind}: {figures}",
        GateHere: "Put gate {number} at the join {place}" => "Tor {number} an die Verbindung setzen: {place}",
        GateAnywhere: "Let the tool choose the join of gate {number}"
            => "Die Verbindung für Tor {number} wählen lassen",
        PinJoinAtGate: "Pin a join where gate {number} is wanted"
            => "Eine Verbindung anheften, wo Tor {number} gewünscht ist",
        TakeOutGate: "Take out gate {number}" => "Tor {number} herausnehmen",
        PowerOff: "Energizer off before a gate is opened; birds shut in before wheels come."
            => "Gerät aus, bevor ein Tor geöffnet wird; Tiere eingesperrt, bevor Räder kommen.",
        PlaceGateway: "Set gateway" => "Zufahrt setzen",
        FindPinLost: "{run}: the pin \u{201c}{pin}\u{201d} stands at no corner: take it out, or set it at one."
            => "{run}: Die Anheftung „{pin}“ steht an keiner Ecke: herausnehmen oder an eine Ecke setzen.",
        FindPinBroken: "{run}: the pin \u{201c}{pin}\u{201d} cannot be kept with these nets and the pins before it: take one of them out."
            => "{run}: Die Anheftung „{pin}“ lässt sich mit diesen Netzen und den Anheftungen davor nicht halten: eine davon herausnehmen.",
        FindPinFixed: "{run}: the pin \u{201c}{pin}\u{201d} is not kept, because the plan fixes where the chain starts: take start_m out."
            => "{run}: Die Anheftung „{pin}“ wird nicht gehalten, weil der Plan den Anfang der Netzkette festlegt: start_m herausnehmen.",
        FindNoJoin: "{run} has no join, so no gate can be opened: two nets have to meet on the line."
            => "{run} hat keine Verbindung, daher lässt sich kein Tor öffnen: Zwei Netze müssen auf der Linie zusammentreffen.",
        FindOffJoin: "{run}: gate {number} opens {far} from where it is wanted, for nets open at joins only."
            => "{run}: Tor {number} öffnet {far} neben der gewünschten Stelle, denn Netze lassen sich nur an Verbindungen öffnen.",
        FindOffJoinMend: "Pin a join where the gate is wanted" => "Eine Verbindung anheften, wo das Tor gewünscht ist",
        FindJoinTaken: "{run}: gate {number} opens {far} from where it is wanted, for gate {other} opens the join there."
            => "{run}: Tor {number} öffnet {far} neben der gewünschten Stelle, denn die Verbindung dort öffnet Tor {other}.",
        FindNoneLeft: "{run}: no join is left for gate {number}, for the other gates open them all."
            => "{run}: Für Tor {number} ist keine Verbindung übrig, die anderen Tore öffnen alle.",
        FindNoneLeftMend: "Take out a gate, or use more and shorter nets"
            => "Ein Tor herausnehmen oder mehr und kürzere Netze nehmen",
        FindOverlap: "{run}: gate {number} runs into what gate {other} opens: the posts between them cannot hold both."
            => "{run}: Tor {number} reicht in das hinein, was Tor {other} öffnet: Die Pfähle dazwischen können nicht beide halten.",
        FindOverlapMend: "Make one of them narrower, or set it at another join"
            => "Eines davon schmaler machen oder an eine andere Verbindung setzen",
        FindNarrow: "{run}: gate {number} should be {width} wide, and only {clear} opens there before a corner or a net’s last panel."
            => "{run}: Tor {number} soll {width} weit sein, und nur {clear} öffnen sich dort bis zu einer Ecke oder zum letzten Feld eines Netzes.",
        FindNarrowMend: "Set it at another join" => "An eine andere Verbindung setzen",
        FindCorner: "{run}: gate {number} opens {far} from a corner: keep {limit} off, for the netting on both sides holds a corner’s post."
            => "{run}: Tor {number} öffnet {far} neben einer Ecke: {limit} Abstand halten, denn einen Eckpfahl hält das Netz auf beiden Seiten.",
        FindWet: "{run}: gate {number} stands on the wet ground at {keep_out}: feet and wheels make mud of it; set it elsewhere."
            => "{run}: Tor {number} steht auf nassem Boden ({keep_out}): Füße und Räder machen Schlamm daraus; anderswohin setzen.",
        FindNoWay: "{run}: no way as wide as gate {number} leads there from the gateway without crossing a net or what is kept off."
            => "{run}: Von der Zufahrt führt kein Weg in der Weite von Tor {number} dorthin, ohne ein Netz oder Gesperrtes zu queren.",
        FindNoWayMend: "Set the gate at another join, or move what stands between"
            => "Das Tor an eine andere Verbindung setzen oder versetzen, was im Weg steht",
        FindCoopBlocked: "{run}: no way as wide as gate {number} leads there from the coop."
            => "{run}: Vom Stall führt kein Weg in der Weite von Tor {number} dorthin.",
        FindOutOfSteps: "{run}: the way to gate {number} was not worked out, so much stands about; walk it before anything drives there."
            => "{run}: Der Weg zu Tor {number} wurde nicht berechnet, so viel steht umher; erst abgehen, bevor dort etwas fährt.",
        FindGatewayOff: "The gateway lies {off} off the paddock’s edge, where nobody comes in: put it on the edge."
            => "Die Zufahrt liegt {off} vom Rand der Koppel, dort kommt niemand herein: auf den Rand setzen.",
        FindNoGateway: "{run}: say where the gateway is, so that the way to its gates can be drawn."
            => "{run}: Angeben, wo die Zufahrt ist, damit sich der Weg zu den Toren zeichnen lässt.",
        FindWheelsNarrow: "{run}: gate {number} is {width} wide, and a quad wants {limit}."
            => "{run}: Tor {number} ist {width} weit, und ein Quad braucht {limit}.",
        FindCoopNarrow: "{run}: gate {number} is {width} wide, and the coop is {limit}."
            => "{run}: Tor {number} ist {width} weit, und der Stall ist {limit} breit.",
        FindPowerOff: "{run} opens at a gate: energizer off and unclipped before it is untied, birds shut in, and nothing on wheels over a net."
            => "{run} öffnet sich an einem Tor: Gerät aus und abgeklemmt, bevor gelöst wird, Tiere eingesperrt, und nichts auf Rädern über ein Netz.",
        TheDip: "the dip" => "Senke",
    }
}
