//! Findings: one sentence each, its mend, and the figures behind it.

use crate::message::texts;

texts! {
    /// What the tool noticed, as sentences.
    Findings {
        NetTooShort: "{run}: the nets end {short} before the line does, so the run stays open."
            => "{run}: Die Netze enden {short} vor dem Ende der Linie, der Auslauf bleibt also offen.",
        NetTooShortMend: "Add a net or draw it smaller" => "Ein Netz hinzufügen oder kleiner zeichnen",
        NetTooShortWhy: "Line {line}, nets {nets}." => "Linie {line}, Netze {nets}.",
        SpareNetting: "{run}: {spare} of netting is left over; double it back along its last panels, never leave it coiled on the grass."
            => "{run}: {spare} Netz bleiben übrig; entlang der letzten Felder zurückschlagen, nie aufgerollt im Gras liegen lassen.",
        CornerBetweenPosts: "{corners} of {run} falls {miss} from a post: the net will cut across it."
            => "{corners} von {run} liegt {miss} neben einem Pfahl: Das Netz wird sie abschneiden.",
        CornersBetweenPosts: "{corners} of {run} fall between posts, up to {miss} off: the net will cut across them."
            => "{corners} von {run} liegen zwischen Pfählen, bis zu {miss} daneben: Das Netz wird sie abschneiden.",
        CornerBetweenPostsMend: "Move the corner to a post" => "Die Ecke auf einen Pfahl schieben",
        CornerLeans: "{corners} of {run} will lean in: give it a brace."
            => "{corners} von {run} wird sich nach innen neigen: eine Abspannung setzen.",
        CornersLean: "{corners} of {run} will lean in: give each a brace."
            => "{corners} von {run} werden sich nach innen neigen: jeweils eine Abspannung setzen.",
        CornerMayLean: "{corners} of {run} may lean when the ground is wet or the wind blows: a brace is advised."
            => "{corners} von {run}: Neigen nach innen ist möglich, wenn der Boden nass ist oder Wind weht; eine Abspannung ist ratsam.",
        CornerLeansWhy: "The net pulls there with {pull}; one post’s spikes hold {hold} in this ground."
            => "Das Netz zieht dort mit {pull}; die Spitzen eines Pfahls halten {hold} in diesem Boden.",
        EndNeedsBrace: "{run}: the netting ends in the open; brace each end along the line."
            => "{run}: Das Netz endet frei; jedes Ende in Richtung der Linie abspannen.",
        EndNeedsBraceWhy: "An end pulls with {pull}; one post’s spikes hold {hold} in this ground."
            => "Ein Ende zieht mit {pull}; die Spitzen eines Pfahls halten {hold} in diesem Boden.",
        EndToLookAt: "{wall} at the end of {run}: whether it holds birds is not said; look along it for a gap where one gets through, under or over."
            => "{wall} am Ende von {run}: Ob das Tiere hält, ist nicht angegeben; nachsehen, ob irgendwo ein Tier hindurch-, darunter- oder darüberkommt.",
        EndToLookAtMend: "Look, then say on the Ground page whether it holds birds"
            => "Nachsehen und auf der Seite „Gelände“ angeben, ob es Tiere hält",
        EndHoldsNoBirds: "{wall} at the end of {run} is stated not to hold birds: they get out there."
            => "{wall} am Ende von {run}: Es ist angegeben, dass das keine Tiere hält; dort kommen sie hinaus.",
        EndHoldsNoBirdsMend: "Close the line, or end it on something that holds birds"
            => "Die Linie schließen oder an etwas enden lassen, das Tiere hält",
        EndInTheOpen: "{run} is open with a coop in it, and ends where nothing is drawn that holds birds: they walk out round the end."
            => "{run} ist offen und hat einen Stall, und endet, wo nichts gezeichnet ist, das Tiere hält: Sie laufen um das Ende herum hinaus.",
        EndInTheOpenMend: "Close the line, or draw the wall, hedge or fence that it ends on"
            => "Die Linie schließen oder die Mauer, die Hecke oder den Zaun zeichnen, an dem sie endet",
        EndsApart: "{run} ends on two things that are not drawn to meet ({one}, {other}): look whether a bird gets out between them."
            => "{run} endet an zweierlei, das sich in der Zeichnung nicht trifft ({one}, {other}): nachsehen, ob dazwischen ein Tier hinauskommt.",
        BraceTooWeak: "{corners} of {run}: the brace that is set is too weak; take what the page about the run offers for it."
            => "{corners} von {run}: Die gesetzte Abspannung ist zu schwach; nehmen, was die Seite „Auslauf“ dafür anbietet.",
        BraceTooWeakWhy: "The net pulls there with {pull}; the brace holds {hold}, and {wanted} times the pull is asked for."
            => "Das Netz zieht dort mit {pull}; die Abspannung hält {hold}, verlangt ist das {wanted}-Fache des Zugs.",
        BraceInside: "{corners} of {run} points inward, so its stake stands inside the run, where birds and mower go: flag it."
            => "{corners} von {run}: nach innen gerichtet, der Spannpflock steht also im Auslauf, wo Tiere und Mäher gehen: gut sichtbar markieren.",
        BendLeans: "{run}: the posts of a gentle bend lean in, although no corner there is sharp; brace the middle of the bend."
            => "{run}: Die Pfähle einer sanften Biegung neigen sich nach innen, obwohl dort keine Ecke scharf ist; die Mitte der Biegung abspannen.",
        BendLeansWhy: "Pull {pull} at the worst post, hold {hold}." => "Zug {pull} am schlimmsten Pfahl, Halt {hold}.",
        WeakPost: "{run} holds about {peak} at its weakest post with the grass as stated{tried}, and {target} is asked for."
            => "{run} hält beim angegebenen Gras{tried} am schwächsten Pfahl etwa {peak}, verlangt sind {target}.",
        FaultOffNet: "Fault {number} of {run}, a {kind}, is where no net lies; it acts at the nearest end of the netting: move it onto the net."
            => "Fehler {number} von {run} ({kind}) liegt, wo kein Netz steht; er wirkt am nächsten Netzende: auf das Netz schieben.",
        FaultBesideNet: "Fault {number} of {run}, a {kind}, is {off} off the net; it acts at the nearest place of it: move it onto the net."
            => "Fehler {number} von {run} ({kind}) liegt {off} neben dem Netz; er wirkt an dessen nächster Stelle: auf das Netz schieben.",
        FaultNoJoin: "Fault {number} of {run} is a bad join, and its line has no join: it does nothing."
            => "Fehler {number} von {run} ist eine schlechte Verbindung, und der Auslauf hat keine Verbindung: Er bewirkt nichts.",
        FaultJoinNoOhm: "Fault {number} of {run} is a bad join without a resistance: it does nothing until `ohm` is above 0."
            => "Fehler {number} von {run} ist eine schlechte Verbindung ohne Widerstand: Er bewirkt nichts, bis `ohm` über 0 liegt.",
        FaultDeadShort: "Fault {number} of {run} is a short of 0 Ω, so nothing is left to read there: state `ohm` for grass, a branch or a peg."
            => "Fehler {number} von {run} ist ein Kurzschluss von 0 Ω, dort bleibt nichts zu messen: `ohm` für Gras, einen Ast oder einen Hering angeben.",
        FaultLines: "Fault {number} of {run} breaks {stated} live lines; its net has {lines}: state 1 to {lines}."
            => "Fehler {number} von {run}: unterbrochene stromführende Litzen {stated}, sein Netz hat {lines}: 1 bis {lines} angeben.",
        FaultLinesOne: "Fault {number} of {run} breaks {stated} live lines; its net has 1: state 1."
            => "Fehler {number} von {run}: unterbrochene stromführende Litzen {stated}, sein Netz hat 1: 1 angeben.",
        FaultyPost: "{run} holds only about {peak} at its weakest post with the grass as stated{tried}: that counts as a fault."
            => "{run} hält beim angegebenen Gras{tried} am schwächsten Pfahl nur etwa {peak}: Das gilt als Fehler.",
        WeakPostMend: "Mow under the line, better the earth, or take a stronger energizer"
            => "Unter der Linie mähen, die Erdung verbessern oder ein stärkeres Weidezaungerät nehmen",
        WeakPostFaulty: "Mend what is stated there, or take it out where it was only tried"
            => "Beheben, was dort angegeben ist, oder herausnehmen, was nur ausprobiert war",
        WeakPostWhy: "{low} in long wet grass, {high} on a clean dry net."
            => "{low} in hohem nassem Gras, {high} bei sauberem trockenem Netz.",
        NotMeasured: "{run}: the weakest post reads {weakest}{tried}, not measured yet: how the grass touches the net is not known before a reading."
            => "{run}: Der schwächste Pfahl zeigt {weakest}{tried}, noch nicht gemessen: Wie das Gras das Netz berührt, ist vor einer Messung nicht bekannt.",
        NotMeasuredMend: "Read the volts at {post}" => "Die Spannung an {post} messen",
        StakeNearNet: "{run}: a metal stake stands {distance} from the net and may short it; set it at least {limit} off."
            => "{run}: Ein Pflock oder Stab aus Metall steht {distance} vom Netz und kann es kurzschließen; mindestens {limit} Abstand lassen.",
        OutlineFewCorners: "{shape} has {corners} corners and needs {needs}: draw the rest."
            => "{shape}: {corners} von {needs} nötigen Ecken: die übrigen zeichnen.",
        OutlineOneCorner: "{shape} has 1 corner and needs {needs}: draw the rest."
            => "{shape}: 1 von {needs} nötigen Ecken: die übrigen zeichnen.",
        OutlineManyCorners: "{shape} has {corners} corners, and at most {limit} can be worked out: simplify the outline."
            => "{shape} hat {corners} Ecken, höchstens {limit} lassen sich berechnen: den Umriss vereinfachen.",
        OutlineTooFar: "{shape}: corner {corner} lies too far from the plan’s origin; type its place again or move the origin."
            => "{shape}: Ecke {corner} liegt zu weit vom Nullpunkt des Plans; ihren Ort neu eintippen oder den Nullpunkt verlegen.",
        OutlineRepeats: "{shape}: corner {corner} stands on the one before it and is passed over; take it out."
            => "{shape}: Ecke {corner} liegt auf der vorigen und wird übergangen; herausnehmen.",
        OutlineCrosses: "{shape} crosses itself where side {side} meets side {other}: drag a corner until it does not."
            => "{shape} kreuzt sich selbst, wo Seite {side} auf Seite {other} trifft: eine Ecke ziehen, bis sich nichts mehr kreuzt.",
        SideEnds: "{from} to {to}" => "{from}–{to}",
        OutlineNoArea: "{shape} encloses no ground: drag a corner away from the line."
            => "{shape} umschließt keine Fläche: eine Ecke von der Linie wegziehen.",
        KeepOutCrossed: "{run} goes through {keep_out}: lay it round."
            => "{run} geht durch {keep_out}: außen herum legen.",
        KeepOutTouched: "{run} comes too near to {keep_out}: keep {clearance} off."
            => "{run} kommt zu nahe an {keep_out} heran: {clearance} Abstand halten.",
        KeepOutEnclosed: "{run} goes round {keep_out}, which may not stand inside."
            => "{run} umschließt {keep_out}; innen darf das nicht liegen.",
        LeavesPaddock: "{run} leaves the paddock." => "{run} verlässt die Koppel.",
        LeavesPaddockMend: "Drag its corners inside" => "Die Ecken nach innen ziehen",
        StoreTooSmall: "{run} wants {wanted} of the nets called {net}, and the store has {owned}."
            => "{run} braucht vom Netz {net} {wanted} Stück, das Lager hat {owned}.",
        StandingTooMany: "The standing runs use {wanted} of the nets called {net}, and the store has {owned}."
            => "Die stehenden Ausläufe brauchen vom Netz {net} {wanted} Stück, das Lager hat {owned}.",
        CoopInNoRun: "{coop} stands in no run, and its flock of {count} with it: put it into a run or lay a run round it."
            => "{coop} steht in keinem Auslauf und damit auch nicht seine {count} Tiere: in einen Auslauf setzen oder einen darum legen.",
        CoopInNoRunOne: "{coop} stands in no run, and its one bird with it: put it into a run or lay a run round it."
            => "{coop} steht in keinem Auslauf und damit auch nicht sein einziges Tier: in einen Auslauf setzen oder einen darum legen.",
        CoopOutside: "{coop} stands outside {run}: move the coop or the run."
            => "{coop} steht außerhalb von {run}: den Stall oder den Auslauf versetzen.",
        CoopCut: "{coop} stands in the net of {run}: move the coop, or the corners beside it."
            => "{coop} steht im Netz von {run}: den Stall oder die Ecken daneben versetzen.",
        OverheadLineCrossed: "{run} goes beneath {hazard}: keep out from under it; where that cannot be, cross at a right angle, low, with nothing long carried upright."
            => "{run} unterquert {hazard}: Bleiben Sie unter der Leitung weg; wo das nicht geht, im rechten Winkel und niedrig queren, nichts Langes aufrecht tragen.",
        OverheadLineCrossedWhy: "It crosses at {angle}." => "Winkel der Querung: {angle}.",
        OverheadLineNear: "{run} comes within {distance} of {hazard}: keep {limit} away on the ground, and carry posts level."
            => "{run} kommt bis auf {distance} an {hazard} heran: am Boden {limit} Abstand halten und Pfähle waagrecht tragen.",
        FenceNear: "{run} comes within {distance} of {hazard}, which another energizer feeds: keep {limit} between the two, so that nobody can touch both."
            => "{run} und {hazard} liegen {distance} auseinander und hängen an verschiedenen Weidezaungeräten: {limit} Abstand halten, damit niemand beide zugleich berühren kann.",
        RunsNear: "{run} and {other} stand {distance} apart on different energizers: keep {limit} between them, so that nobody can touch both."
            => "{run} und {other} stehen {distance} auseinander an verschiedenen Weidezaungeräten: {limit} Abstand halten, damit niemand beide zugleich berühren kann.",
        RunsOverlap: "{run} and {other} are both stated to stand and share {area} of ground, which is counted twice."
            => "{run} und {other} sind beide als stehend angegeben und haben {area} Boden gemeinsam, der doppelt zählt.",
        RunsOverlapMend: "Drag one off the other" => "Einen vom anderen wegziehen",
        ForeignEarthUnplaced: "{run}: say where its earth stake stands, so that its distance from {hazard} can be checked; keep {limit} between the two."
            => "{run}: Angeben, wo der Erdstab steht, damit sich prüfen lässt, wie weit {hazard} entfernt ist; {limit} Abstand halten.",
        ForeignEarthNear: "{run}: its earth stakes come within {distance} of {hazard}: keep {limit} between the two."
            => "{run}: Die Erdstäbe kommen bis auf {distance} an {hazard} heran: {limit} Abstand halten.",
        EarthsNear: "{run} and {other}: earth stakes of two energizers stand {distance} apart: keep {limit} between them, or each fence lifts the other’s earth."
            => "{run} und {other}: Erdstäbe zweier Weidezaungeräte stehen {distance} auseinander: {limit} dazwischen einhalten, sonst hebt jeder Zaun die Erdung des anderen an.",
        EarthRowsNear: "{run} and {other}: earth stakes of two energizers may come within {distance} of each other, for which way a row of them runs is not stated: keep {limit} between them, or each fence lifts the other’s earth."
            => "{run} und {other}: Erdstäbe zweier Geräte können sich bis auf {distance} nahe kommen, denn wohin eine Reihe läuft, ist nicht angegeben: {limit} Abstand halten, sonst hebt jeder Zaun die Erdung des anderen an.",
        EarthStakesDiffer: "{run}: the number of earth stakes is stated as {stated}, and on the map it is {placed}; the map counts: state no number beside places."
            => "{run}: Als Anzahl der Erdstäbe ist {stated} angegeben, auf der Karte ist sie {placed}; es gilt die Karte: neben Orten keine Anzahl angeben.",
        EarthFirstDiffers: "{run}: the first earth stake is stated at two places; the one among `places` counts: take `at` out."
            => "{run}: Der erste Erdstab ist an zwei Orten angegeben; es gilt der unter `places`: `at` herausnehmen.",
        EarthStakeWeak: "{run}: the brace’s stake that is also the earth stake is weaker than the brace was worked out with: drive one of {length} in the ground and {thick} thick, or more."
            => "{run}: Der Pflock der Abspannung, der zugleich Erdstab ist, ist schwächer, als für die Abspannung gerechnet: einen einschlagen, der mindestens {length} im Boden steckt und {thick} dick ist.",
        StakesTogether: "{run}: earth stakes {one} and {other} stand at one place, so the volts cannot be worked out: move one, or take it out."
            => "{run}: Die Erdstäbe {one} und {other} stehen an einem Ort, die Spannung lässt sich daher nicht berechnen: einen verschieben oder herausnehmen.",
        TooManyStakes: "{run}: {count} earth stakes are on the map, and at most {limit} can be worked out: take some out."
            => "{run}: {count} Erdstäbe sind auf der Karte, und höchstens {limit} lassen sich berechnen: einige herausnehmen.",
        PublicWayCrossed: "{run} crosses {hazard}: leave an unpowered gate or stile there, with signs, and ask who is responsible for the way."
            => "{run} und {hazard} kreuzen sich: dort ein stromloses Tor oder einen Übertritt lassen, mit Schildern, und fragen, wer für den Weg zuständig ist.",
        PublicWayUnsigned: "{run} stands beside {hazard} without warning signs: hang {signs}, one at least every {spacing}."
            => "{run} und {hazard} liegen ohne Warnschilder nebeneinander: {signs} aufhängen, mindestens alle {spacing} eines.",
        HazardNoPath: "{hazard} has no place on the map, so nothing could be checked against it: draw it."
            => "{hazard} ist auf der Karte nirgends eingezeichnet, daher ließ sich kein Abstand prüfen: einzeichnen.",
        BadValue: "{key} is {value}, and it must {must}." => "{key} ist {value} und muss {must}.",
        MustBePositive: "be above zero" => "über null liegen",
        MustNotBeNegative: "be zero or above" => "null oder größer sein",
        MustBeAtLeastOne: "be at least one" => "mindestens eins sein",
        MustBeAShare: "be zero or above and below one" => "null oder größer und kleiner als eins sein",
        MustBeAnAngle: "lie between 0 and 90 degrees" => "zwischen 0 und 90 Grad liegen",
        MustNotBeZero: "not be zero or next to it" => "sich deutlich von null unterscheiden",
        MustBeSmaller: "be smaller than that" => "kleiner sein",
        PanelSum: "The panels of net {net} sum to {sum} and the net is {length} long: correct one of them."
            => "Die Felder von Netz {net} ergeben zusammen {sum}, und das Netz ist {length} lang: eines von beiden berichtigen.",
        NoNets: "{run} has no nets: put some in the store." => "{run} hat keine Netze: welche ins Lager aufnehmen.",
        TooManyPosts: "{run} would have {posts} posts, more than can be worked out: take fewer nets."
            => "{run} hätte {posts} Pfähle, mehr als sich berechnen lassen: weniger Netze nehmen.",
        ChainTooLong: "{run}: its nets are {length} long together, more than can be worked out: take fewer."
            => "{run}: Die Netze sind zusammen {length} lang, mehr als sich berechnen lässt: weniger nehmen.",
        EnergizerAbove: "Energizer {energizer}: {joules} J into 500 Ω is more than the {limit} J of one that is limited in energy, and its current is above the standard’s line; read its data sheet again, or have it looked at."
            => "Weidezaungerät {energizer}: {joules} J an 500 Ω sind mehr als die {limit} J eines energiebegrenzten Geräts, und sein Strom liegt über der Linie der Norm; das Datenblatt noch einmal lesen oder das Gerät prüfen lassen.",
        EnergizerAboveWhy: "{ampere} A over {milliseconds} ms into 500 Ω. {clause}."
            => "{ampere} A über {milliseconds} ms an 500 Ω. {clause}.",
        EnergizerLong: "Energizer {energizer}: the figures of its data sheet make an impulse of {milliseconds} ms, and the standard allows {limit} ms; read it again."
            => "Weidezaungerät {energizer}: Aus den Werten des Datenblatts folgt ein Impuls von {milliseconds} ms, die Norm erlaubt {limit} ms; noch einmal lesen.",
        ResistivityOdd: "The ground is stated at {stated} Ω m, and published soils lie between {low} and {high} Ω m, frozen ones above; look for a slip of the pen."
            => "Für den Boden sind {stated} Ω m angegeben; veröffentlichte Böden liegen zwischen {low} und {high} Ω m, gefrorene darüber; auf einen Schreibfehler prüfen.",
        NoEnergizer: "{run}: no energizer is stated, so the volts are those of an assumed one of {joules} J; state yours."
            => "{run}: Kein Weidezaungerät ist angegeben, die Spannung ist daher die eines angenommenen mit {joules} J; geben Sie Ihres an.",
        FeedOffLine: "{run}: the feed point stands {off} from the line; the volts are reckoned as if it fed the nearest place of it. Move it to the line."
            => "{run}: Die Einspeisung liegt {off} von der Linie; gerechnet wird, als speise sie an der nächsten Stelle ein. Auf die Linie schieben.",
        LeakageZero: "{run}: its netting is stated to leak nothing, which none does; even a clean, dry net leaks a little."
            => "{run}: Das Netz soll nichts ableiten, das tut keines; auch ein sauberes, trockenes Netz leitet ein wenig ab.",
        LeakageEnormous: "{run}: more leakage is stated than any grass makes; state less, as of heavy wet growth at the most."
            => "{run}: Mehr Ableitung ist angegeben, als irgendein Gras bewirkt; weniger angeben, höchstens wie bei starkem nassem Bewuchs.",
        AllLinesBroken: "{run}: all {lines} live lines of net {net} are broken, so the pulse does not pass there; mend at least one."
            => "{run}: Von den stromführenden Litzen ({lines}) von Netz {net} ist keine mehr ganz, der Impuls kommt dort nicht durch; mindestens eine flicken.",
        AllLinesBrokenOne: "{run}: the one live line of net {net} is broken, so the pulse does not pass there; mend it."
            => "{run}: Die einzige stromführende Litze von Netz {net} ist unterbrochen, der Impuls kommt dort nicht durch; flicken.",
        BranchNoNets: "{run}: branch {branch} names no net, so it is left out; give it nets, or take it out."
            => "{run}: Abzweig {branch} nennt kein Netz und bleibt daher weg; ihm Netze geben oder ihn herausnehmen.",
        BranchNoLine: "{run}: branch {branch} is no line, so it is left out; give its outline two corners that lie apart."
            => "{run}: Abzweig {branch} ist keine Linie und bleibt daher weg; seinem Umriss zwei Ecken geben, die auseinanderliegen.",
        BranchBeyond: "{run}: branch {branch} is said to hang {from} along a line of {line}; state a place on the line."
            => "{run}: Abzweig {branch} soll bei {from} an einer Linie von {line} hängen; eine Stelle auf der Linie angeben.",
        BranchOffLine: "{run}: branch {branch} starts {off} from the place where it hangs on the line; start its outline there. It is reckoned as tied to the line."
            => "{run}: Abzweig {branch} beginnt {off} neben der Stelle, an der er an der Linie hängt; seinen Umriss dort beginnen. Gerechnet wird, als sei er an die Linie gebunden.",
        OnBranch: "{post} of branch {branch}" => "{post} von Abzweig {branch}",
        BeyondVolts: "{run}: the volts cannot be worked out from these figures together; look for a slip of the pen in energizer, earth stakes, lines and faults."
            => "{run}: Die Spannung lässt sich aus diesen Angaben zusammen nicht berechnen; bei Weidezaungerät, Erdstäben, Litzen und Fehlern nach einem Schreibfehler suchen.",
        BeyondStrip: "{run}: the strip cannot be worked out from these figures together; look for a slip of the pen in its width and the mower."
            => "{run}: Der Mähstreifen lässt sich aus diesen Angaben zusammen nicht berechnen; bei seiner Breite und beim Mäher nach einem Schreibfehler suchen.",
        SheetLoaded: "Energizer {energizer}: its data sheet gives as many volts at 500 Ω as without load, or more; one of the two is misread."
            => "Weidezaungerät {energizer}: Sein Datenblatt gibt an 500 Ω so viel Spannung an wie ohne Last oder mehr; eines von beiden ist falsch gelesen.",
        SheetOutput: "Energizer {energizer}: its data sheet gives more joules out than stored; one of the two is misread."
            => "Weidezaungerät {energizer}: Sein Datenblatt gibt mehr Joule abgegeben als gespeichert an; eines von beiden ist falsch gelesen.",
        SheetNoCircuit: "Energizer {energizer}: no circuit gives the volts and joules of its data sheet together; read it again."
            => "Weidezaungerät {energizer}: Keine Schaltung ergibt Spannung und Joule seines Datenblatts zugleich; noch einmal lesen.",
        LiveLines: "Net {net}: the heights of its live lines leave two of them touching each other or the ground; correct them."
            => "Netz {net}: Nach den Höhen seiner stromführenden Litzen berühren zwei davon einander oder den Boden; berichtigen.",
        TwoSoils: "The soil is stated as a clay and as a sand; the clay counts."
            => "Der Boden ist als Ton und als Sand angegeben; der Ton zählt.",
        UnknownBirdsRule: "Birds are not counted against ground: season.birds_rule names “{rule}”, which is no rule known here; pick one on the Run page under Other shapes."
            => "Die Tiere werden nicht gegen die Fläche gezählt: season.birds_rule nennt „{rule}“, diese Regel ist hier unbekannt; auf der Seite „Auslauf“ unter „Andere Formen“ eine wählen.",
        NoGroundABird: "Birds are not counted against ground: season.min_m2_per_bird has to be above zero."
            => "Die Tiere werden nicht gegen die Fläche gezählt: season.min_m2_per_bird muss über null liegen.",
        UnknownKey: "The file has a key {key} that means nothing here; did you mean {meant}?"
            => "Die Datei hat einen Schlüssel {key}, der hier nichts bedeutet; war {meant} gemeint?",
        OneHidden: "One thing of this plan is hidden on the map. It counts all the same." => "Ein Teil dieses Plans ist auf der Karte ausgeblendet. Er zählt trotzdem mit.",
        OneHazardHidden: "A hazard is hidden on the map. It is there all the same, and on paper it is drawn." => "Eine Gefahr ist auf der Karte ausgeblendet. Sie ist trotzdem da und wird auf Papier gezeichnet.",
        Hidden: "{count} things of this plan are hidden on the map. They count all the same." => "{count} Teile dieses Plans sind auf der Karte ausgeblendet. Sie zählen trotzdem mit.",
        HiddenWithHazards: "{count} things of this plan are hidden on the map, hazards among them: {hazards}. They are there all the same, and on paper they are drawn." => "{count} Teile dieses Plans sind auf der Karte ausgeblendet, darunter Gefahren: {hazards}. Sie sind trotzdem da und werden auf Papier gezeichnet.",
        BuriedServices: "Ask about buried pipes and cables before you drive a stake: they are not on this map."
            => "Fragen Sie nach vergrabenen Rohren und Kabeln, bevor Sie einen Pflock oder Stab einschlagen: Auf dieser Karte stehen sie nicht.",
        LocalCodesFirst: "Local codes and licensed practice come before anything that this plan says."
            => "Örtliche Vorschriften und zugelassene Fachleute gehen allem vor, was dieser Plan sagt.",
        ThePaddock: "The paddock" => "Die Koppel",
        AnEnd: "An end" => "Ein Ende",
        Corner: "Corner {number}" => "Ecke {number}",
        Corners: "Corners {numbers} and {last}" => "Ecken {numbers} und {last}",
        TheOverheadLine: "the overhead line" => "die Freileitung",
        OverheadLineNumber: "overhead line {number}" => "Freileitung {number}",
        ThePublicWay: "the public way" => "der öffentliche Weg",
        PublicWayNumber: "public way {number}" => "öffentlicher Weg {number}",
        TheOtherFence: "the other fence" => "der andere Elektrozaun",
        OtherFenceNumber: "other electric fence {number}" => "anderer Elektrozaun {number}",
        TheForeignEarth: "the other earth" => "die fremde Erdung",
        ForeignEarthNumber: "other earth {number}" => "fremde Erdung {number}",
        TheKeepOut: "the keep-out" => "die Sperrfläche",
        KeepOutNumber: "keep-out {number}" => "Sperrfläche {number}",
        TheWater: "the water" => "das Wasser",
        WaterNumber: "water {number}" => "Wasser {number}",
        TheWall: "the wall" => "die Mauer",
        WallNumber: "wall {number}" => "Mauer {number}",
        TheHedge: "the hedge" => "die Hecke",
        HedgeNumber: "hedge {number}" => "Hecke {number}",
        TheFence: "the permanent fence" => "der feste Zaun",
        FenceNumber: "fence {number}" => "Zaun {number}",
        TheShade: "the shade" => "der Schatten",
        ShadeNumber: "shade {number}" => "Schatten {number}",
        TheDampPlace: "the damp place" => "die feuchte Stelle",
        DampPlaceNumber: "damp place {number}" => "feuchte Stelle {number}",
        TheCoop: "The coop" => "Der Stall",
        CoopNumber: "Coop {number}" => "Stall {number}",
        Post: "post {number}" => "Pfahl {number}",
        ASign: "1 sign" => "1 Schild",
        Signs: "{count} signs" => "{count} Schilder",
    }
}
