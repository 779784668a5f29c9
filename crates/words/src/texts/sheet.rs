//! The printed sheet.

use crate::message::texts;

texts! {
    /// The printed sheet.
    Sheet {
        // Head and foot.
        ForDay: "for {day}" => "für {day}",
        Day: "{weekday} {day} {month} {year}" => "{weekday}, {day}. {month} {year}",
        Monday: "Monday" => "Montag",
        Tuesday: "Tuesday" => "Dienstag",
        Wednesday: "Wednesday" => "Mittwoch",
        Thursday: "Thursday" => "Donnerstag",
        Friday: "Friday" => "Freitag",
        Saturday: "Saturday" => "Samstag",
        Sunday: "Sunday" => "Sonntag",
        January: "January" => "Januar",
        February: "February" => "Februar",
        March: "March" => "März",
        April: "April" => "April",
        May: "May" => "Mai",
        June: "June" => "Juni",
        July: "July" => "Juli",
        August: "August" => "August",
        September: "September" => "September",
        October: "October" => "Oktober",
        November: "November" => "November",
        December: "December" => "Dezember",
        PageOf: "sheet {page} of {pages}" => "Blatt {page} von {pages}",
        RunOf: "run {run} of {runs}" => "Auslauf {run} von {runs}",
        Assumed: "{count} figures rest on what the plan does not say; the report lists them."
            => "{count} Angaben beruhen auf dem, was der Plan nicht sagt; der Bericht nennt sie.",
        AssumedOne: "One figure rests on what the plan does not say; the report lists it."
            => "Eine Angabe beruht auf dem, was der Plan nicht sagt; der Bericht nennt sie.",

        // The row of figures.
        NetsFigure: "nets, {length}" => "Netze, {length}",
        NetFigure: "net, {length}" => "Netz, {length}",
        PostsFigure: "posts" => "Pfähle",
        BracesFigure: "braces" => "Abspannungen",
        BraceFigure: "brace" => "Abspannung",
        ToMow: "to mow first" => "zuerst zu mähen",
        ForOnePerson: "for one person" => "für eine Person",
        Minutes: "{minutes} min" => "{minutes} min",
        WeakestNotMeasured: "weakest, {band}\nnot measured yet" => "schwächster, {band}\nnoch ungemessen",
        WeakestMeasured: "weakest, {band}\nat post {post}" => "schwächster, {band}\nan Pfahl {post}",
        NotWorkedOut: "not worked out" => "nicht berechnet",
        Kilovolts: "kV" => "kV",

        // The map.
        Scale: "1:{scale}" => "1:{scale}",

        // Dangers.
        Dangers: "Look out here" => "Hier aufpassen",
        NotLaid: "This run could not be laid out: see what the report finds wrong with it."
            => "Dieser Auslauf ließ sich nicht legen: im Bericht nachsehen, was daran falsch ist.",

        // Faults.
        Tried: "Faults counted here" => "Mitgerechnete Fehler",

        // Corners.
        Corners: "Corners and braces" => "Ecken und Abspannungen",
        AlongTheLine: "lengths in {unit}, along from corner 1" => "Längen in {unit}, entlang ab Ecke 1",
        HeadAlong: "along" => "entlang",
        HeadNext: "to next" => "nächste",
        HeadTurn: "turn" => "Knick",
        HeadPost: "post" => "Pfahl",
        HeadCorner: "the corner" => "die Ecke",
        HeadStake: "stake off the net" => "Pflock vom Netz",
        End: "end" => "Ende",
        WillLean: "will lean in: brace it" => "neigt sich: abspannen",
        MayLean: "may lean: better braced" => "besser abspannen",
        Stands: "stands" => "steht",
        EndWillLean: "open end: brace it" => "freies Ende: abspannen",
        Braced: "braced as planned" => "planmäßig abgespannt",
        BraceWeak: "its brace is too weak" => "Halt zu schwach",
        Outside: "{off} outside" => "{off} außen",
        Inside: "{off} inside" => "{off} innen",
        InLine: "{off} in line" => "{off} in Linie",
        CornersNotJudged: "The pull at the corners could not be worked out."
            => "Der Zug an den Ecken ließ sich nicht berechnen.",
        CheapestHold: "{corners}: what holds most cheaply: {mend}." => "{corners}: was am günstigsten hält: {mend}.",
        NoCorners: "The line has no corner that turns 5° or more."
            => "Die Linie hat keine Ecke mit einem Knick von 5° oder mehr.",

        // Volts.
        Readings: "Readings" => "Messwerte",
        ReadingsHow: "expected above, yours in the box" => "oben erwartet, Ihrer ins Kästchen",
        ReadingsHowUnmeasured: "not measured yet: expected above, yours in the box"
            => "noch nicht gemessen: oben erwartet, Ihrer ins Kästchen",
        FeedPoint: "feed point" => "Einspeisung",
        PostNumber: "post {post}" => "Pfahl {post}",
        EarthStake: "earth stake" => "Erdstab",
        Weakest: "weakest" => "schwächster",
        Farthest: "far end" => "fernes Ende",
        InBetween: "in between" => "dazwischen",
        Along: "{off} along" => "bei {off}",
        ToAProbe: "to a soil probe" => "gegen Sonde",
        NoVolts: "Volts could not be worked out." => "Die Spannung ließ sich nicht berechnen.",

        // Take along.
        TakeAlong: "Take along" => "Mitnehmen",
        NetsOf: "nets “{kind}”, {length}" => "Netze „{kind}“, {length}",
        NetOf: "net “{kind}”, {length}" => "Netz „{kind}“, {length}",
        Guys: "guys with stakes" => "Abspannleinen mit Pflock",
        Guy: "guy with its stake" => "Abspannleine mit Pflock",
        GuysOnEarth: "guys, each with an earth stake as its stake" => "Leinen, Pflock ist ein Erdstab",
        GuysOnEarthMore: "guys with {pegs} of {length} each behind an earth stake"
            => "Leinen am Erdstab, je {pegs} × {length} dahinter",
        GuyOnEarth: "guy, an earth stake is its stake" => "Leine, Pflock ist ein Erdstab",
        GuyOnEarthMore: "guy with {pegs} of {length} behind an earth stake"
            => "Leine am Erdstab, {pegs} × {length} dahinter",
        GuysPeg: "guys with a peg of {length}" => "Leinen mit Hering, {length}",
        GuyPeg: "guy with a peg of {length}" => "Leine mit Hering, {length}",
        GuysPegs: "guys with {pegs} pegs of {length} each" => "Leinen mit je {pegs} Heringen, {length}",
        GuyPegs: "guy with {pegs} pegs of {length}" => "Leine mit {pegs} Heringen, {length}",
        BracePosts: "brace posts, {length} deep" => "Stützpfähle, {length} tief",
        BracePost: "brace post, {length} deep" => "Stützpfahl, {length} tief",
        AdvisedGuys: "more guys, advised" => "weitere Abspannleinen, ratsam",
        AdvisedGuy: "more guy, advised" => "weitere Abspannleine, ratsam",
        EarthStakes: "earth stakes, {length}" => "Erdstäbe, {length}",
        EarthStakeOf: "earth stake, {length}" => "Erdstab, {length}",
        Energizer: "energizer and lead" => "Weidezaungerät mit Zuleitung",
        EnergizerOf: "energizer “{kind}”, lead" => "Gerät „{kind}“, Zuleitung",
        Signs: "warning signs for the way" => "Warnschilder für den Weg",
        Tools: "voltmeter, hammer, tape, ties" => "Prüfer, Hammer, Maß, Schnur",
        NetMass: "{mass} of netting" => "{mass} Netz",

        // In this order.
        Order: "In this order" => "In dieser Reihenfolge",
        OrderLook: "Look up, ask what lies buried" => "Hochsehen, Vergrabenes erfragen",
        OrderMow: "Mow the strip, {passes} passes" => "Mähstreifen mähen, {passes} Bahnen",
        OrderMowOnce: "Mow the strip, one pass" => "Mähstreifen mähen, eine Bahn",
        OrderShut: "Birds shut in, energizer off" => "Tiere eingesperrt, Gerät aus",
        ByTape: "Corners by tape" => "Ecken mit dem Maßband",
        LongestTape: "longest {length}" => "längstes Maß {length}",
        HeadTape: "first tape" => "erstes Maß",
        HeadSecondTape: "second tape" => "zweites Maß",
        HeadLies: "lies" => "liegt",
        TapeFrom: "{length} from {from}" => "{length} ab {from}",
        LiesLeft: "left" => "links",
        LiesRight: "right" => "rechts",
        LiesInLine: "in line" => "in der Linie",
        TapeFirst: "Set corner {corner} where the map has it, corner {second} from there in the direction the map shows, then the others in this order."
            => "Ecke {corner} setzen, wo die Karte sie hat, Ecke {second} von dort in die Richtung, die die Karte zeigt, dann die anderen in dieser Folge.",
        TapeToward: "Set corner {corner} in the direction the map shows, then the others in this order."
            => "Ecke {corner} in der Richtung setzen, die die Karte zeigt, dann die anderen in dieser Folge.",
        TapeHow: "A corner is where its two tapes cross, left or right of the way from the first place to the second. Hold the tape level."
            => "Eine Ecke ist, wo ihre zwei Maße sich treffen, links oder rechts des Wegs vom ersten Ort zum zweiten. Maßband waagrecht halten.",
        TapeBranch: "Branch {number}, once the run’s corners stand; its first lies on the line."
            => "Abzweig {number}, wenn die Ecken des Auslaufs stehen; seine erste liegt auf der Linie.",
        TapeBranchOff: "Branch {number}, once the run’s corners stand."
            => "Abzweig {number}, wenn die Ecken des Auslaufs stehen.",
        CornerOfBranch: "B{number}" => "Z{number}",
        TapeOffMap: "{place} lies off this map: {length} from corner {corner}, at {degrees} ({point})."
            => "{place} liegt nicht auf dieser Karte: {length} von Ecke {corner}, Richtung {degrees} ({point}).",
        TapeCheck: "Check: {one} to {other} is {length}." => "Probe: {one} bis {other} sind {length}.",
        OrderStart: "First post {off} past corner {corner}" => "Erster Pfahl {off} hinter Ecke {corner}",
        OrderStartAt: "First post at corner {corner}" => "Erster Pfahl an Ecke {corner}",
        OrderStartAlong: "First post {off} along the line" => "Erster Pfahl bei {off} der Linie",
        OrderToward: "Lay on toward corner {corner}" => "In Richtung Ecke {corner} weiterlegen",
        OrderRolls: "Rolls {first} to {last}, first toward corner {corner}"
            => "Rollen {first} bis {last}, erst Richtung Ecke {corner}",
        OrderOnward: "Lay on along the line" => "Entlang der Linie weiterlegen",
        OrderSpikes: "Spikes in full depth, joins tied" => "Spitzen ganz ein, Netze verbunden",
        OrderBrace: "Braces, as listed" => "Abspannungen, wie aufgeführt",
        OrderEarthPlaced: "Stakes as on the map, lead, on" => "Erdstäbe wie auf der Karte, ein",
        OrderEarth: "Earth, lead, switch on" => "Erdung, Zuleitung, einschalten",
        OrderRead: "Read {first} to {last}, then open" => "{first} bis {last} messen, dann öffnen",

        // Slope and wind.
        SlopeAndWind: "Slope and wind" => "Hang und Wind",
        Notes: "Notes" => "Notizen",

        // Cautions.
        BeforeYouStart: "Before you start" => "Bevor Sie anfangen",
        NoProof: "no proof that a fence is safe or lawful" => "kein Nachweis, dass ein Zaun sicher oder zulässig ist",
        CautionOff: "Energizer off and lead unclipped before you touch net, stake or join; test first."
            => "Erst Gerät aus, Zuleitung ab, prüfen; dann Netz, Pflock, Stab oder Verbindung anfassen.",
        CautionPeople: "Keep children, pets and people with heart devices away, and your head off the net."
            => "Kinder, Haustiere, Leute mit Herzschrittmacher o. Ä. fernhalten, Kopf weg vom Netz.",
        CautionTwo: "One energizer to a fence, its earth {off} from any other earth; no barbed wire near."
            => "Ein Gerät je Zaun, seine Erdung {off} von jeder anderen; kein Stacheldraht in der Nähe.",
        CautionBuried: "Ask about buried pipes and cables before driving stakes; keep metal stakes off the net."
            => "Vor dem Einschlagen nach Rohren und Kabeln fragen; Metallpflöcke fern vom Netz.",
        CautionOverhead: "Keep out from under power lines and carry posts level; signs where the public passes."
            => "Nicht unter Freileitungen, Pfähle waagrecht tragen; Schilder, wo Leute vorbeigehen.",
        CautionMow: "Mow with birds, children, net and cord well clear; at thunder stop and switch off."
            => "Tiere, Kinder, Netz, Schnur beim Mähen weit weg; bei Donner aufhören und abschalten.",
        CodesFirst: "Local codes and licensed practice come before anything on this sheet."
            => "Örtliche Vorschriften und zugelassene Fachleute gehen allem auf diesem Blatt vor.",
    }
}
