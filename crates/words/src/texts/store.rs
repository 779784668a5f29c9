//! Words of the store: what the keeper owns, in fields.

use crate::message::texts;

texts! {
    /// Words of the store: what the keeper owns, in fields.
    Store {
        YourNets: "Your nets" => "Ihre Netze",
        NoNetsYet: "None stated yet. Add the kind that you have."
            => "Noch keine angegeben. Die Sorte hinzufügen, die Sie haben.",
        ManyOf: "{count}\u{a0}×\u{a0}{length}" => "{count}\u{a0}×\u{a0}{length}",
        FieldOf: "{field}, {of}" => "{field}, {of}",
        Name: "Name" => "Name",
        HowMany: "How many" => "Wie viele",
        Length: "Length" => "Länge",
        PostsOnOne: "Posts on one" => "Pfähle je Rolle",
        Height: "Height" => "Höhe",
        PostsWhy: "Both ends counted; {panels} panels of {panel}."
            => "Beide Enden mitgezählt; {panels} Felder zu {panel}.",
        PanelsUnequal: "Its {panels} panels are stated one by one. Another length or number of posts makes them equal."
            => "Die {panels} Felder sind einzeln angegeben. Eine andere Länge oder Pfahlzahl macht sie gleich.",
        PanelsUnstated: "How many posts stand on it? Without that it cannot be laid."
            => "Wie viele Pfähle stehen daran? Ohne das lässt es sich nicht legen.",
        AddNet: "Add a kind of net" => "Netzsorte hinzufügen",
        Duplicate: "Make another like it" => "Noch eines dieser Art anlegen",
        TakeOut: "Take it out" => "Herausnehmen",
        NetInUse: "{runs} names it, so it stays in the store." => "Genannt von {runs}, daher bleibt es im Lager.",
        NetsChosen: "For {run} the fewest that reach round are taken, whichever they are."
            => "Für {run} werden die wenigsten genommen, die herumreichen, gleich welche.",
        SoMany: "{count}\u{a0}×\u{a0}{name}" => "{count}\u{a0}×\u{a0}{name}",
        NetsNamed: "{run} names its nets in order: {names}." => "{run} nennt seine Netze der Reihe nach: {names}.",
        LetChoose: "Take whichever reach round instead" => "Stattdessen nehmen, was herumreicht",
        NewNet: "net" => "Netz",
        SameName: "Another one is called that; type a name of its own."
            => "Ein anderes heißt schon so; einen eigenen Namen eintippen.",
        NoName: "It needs a name; type a word or two." => "Es braucht einen Namen; ein, zwei Wörter eintippen.",
        LongName: "That is too long for a name; type {most} letters or fewer."
            => "Das ist zu lang für einen Namen; höchstens {most} Buchstaben eintippen.",

        Braces: "Braces" => "Abspannungen",
        BracesWhy: "A stake outside the net and a guy to the post."
            => "Ein Pflock außerhalb des Netzes und eine Leine zum Pfahl.",
        StakeLength: "Length of the stake" => "Länge des Pflocks",
        StakeThickness: "Thickness of the stake" => "Dicke des Pflocks",
        LoopHeight: "Guy above the ground" => "Leine über dem Boden",
        StandOff: "Stake off the net" => "Pflock vom Netz",
        GuyHeight: "Guy tied so high up" => "Leine am Pfahl, Höhe",
        GuyAngle: "Guy to the ground" => "Leine zum Boden",
        Pegs: "Pegs to a guy" => "Heringe je Leine",
        PostDeep: "Brace post in the ground" => "Stützpfahl im Boden",
        PostThick: "Thickness of the post" => "Dicke des Stützpfahls",
        HoldAsked: "Hold, times the pull" => "Halt, Vielfaches des Zugs",
        ShowBraceRates: "How long each takes" => "Wie lange jede dauert",
        FoldBraceRates: "Fold that away" => "Wieder einklappen",
        LongerPegRate: "Each step of a longer peg" => "Je Stufe längerer Hering",
        SecondPegRate: "Second peg" => "Zweiter Hering",
        BracePostRate: "Brace post" => "Stützpfahl",
        CutPostRate: "Each post of a cut" => "Je Pfahl eines Schnitts",
        CarryRate: "Each thing carried" => "Je getragenes Teil",
        BraceRatesWhy: "A guy with one stake takes what setting one brace does, in the table of rates; these come on top or stand in its place. Common practice, no source."
            => "Eine Leine mit einem Pflock dauert so lange wie das Setzen einer Abspannung in der Tabelle der Zeiten; diese kommen dazu oder treten an ihre Stelle. Übliche Praxis, ohne Quelle.",

        Mower: "Mower" => "Mäher",
        CutWidth: "Width of a cut" => "Schnittbreite",
        CutOverlap: "Overlap of two cuts" => "Überlappung der Bahnen",
        MowSpeed: "Pace behind it" => "Gehtempo dahinter",
        MowShare: "Share of the time it cuts" => "Anteil der Zeit, die er mäht",
        CutHeight: "Height of the cut" => "Schnitthöhe",
        StripInside: "Inside the net" => "Innerhalb des Netzes",
        StripOutside: "Outside the net" => "Außerhalb des Netzes",
        StripLeft: "Left of the line" => "Links der Linie",
        StripRight: "Right of the line" => "Rechts der Linie",

        Hands: "How long things take" => "Wie lange die Dinge dauern",
        One: "one" => "eine",
        Two: "two" => "zwei",
        Stony: "stony ground" => "steiniger Boden",
        LongGrass: "long grass" => "hohes Gras",
        Rain: "rain" => "Regen",
        Dark: "dark" => "Dunkelheit",
        ShowRates: "Change how long each thing takes" => "Ändern, wie lange jedes dauert",
        FoldRates: "Fold the rates away" => "Zeiten einklappen",
        RatesWhy: "Practised hands on soft ground, short dry grass, by day. Dotted ones are assumed; a few come from buyers and smallholders, the rest are common practice without a source."
            => "Geübte Hände auf weichem Boden, kurzes trockenes Gras, bei Tag. Gepunktete sind angenommen; einige stammen von Käufern und Kleinhaltern, die übrigen sind übliche Praxis ohne Quelle.",

        Energizer: "Energizer" => "Weidezaungerät",
        NoEnergizerYet: "None stated yet: a common one of {joules} J is assumed until you type yours."
            => "Noch keines angegeben: Ein übliches mit {joules} J ist angenommen, bis Sie Ihres eintippen.",
        StoredJoules: "Stored" => "Gespeichert",
        WithoutLoad: "Without a load" => "Ohne Last",
        KvAtLoad: "At 500\u{a0}Ω, volts" => "An 500\u{a0}Ω, Spannung",
        JoulesAtLoad: "At 500\u{a0}Ω, energy out" => "An 500\u{a0}Ω, abgegeben",
        OfJoules: "{joules} J, {kv}" => "{joules} J, {kv}",
        AddEnergizer: "Add an energizer" => "Gerät hinzufügen",
        ThisRunUses: "This run uses" => "Dieser Auslauf nutzt",
        EnergizerInUse: "{runs} names it, so it stays in the store." => "Genannt von {runs}, daher bleibt es im Lager.",
        NewEnergizer: "energizer" => "Gerät",
        TheAssumedOne: "assumed energizer" => "angenommenes Gerät",
        LinesWired: "Lines" => "Litzen",
        AllLive: "all live" => "alle mit Strom",
        ByTurns: "live and earthed by turns" => "abwechselnd Strom und Erde",
        Fits: "{name} fits its sheet: {free} without a load falls to {loaded} at a heavy one of 500\u{a0}Ω."
            => "{name} passt zu seinem Datenblatt: {free} ohne Last fallen auf {loaded} an einer schweren von 500\u{a0}Ω.",
        FitsAssumed: "{name} is taken as one whose {free} without a load falls to {loaded} at a heavy one of 500\u{a0}Ω; the dotted figures are assumed."
            => "{name} gilt als eines, dessen {free} ohne Last auf {loaded} an einer schweren von 500\u{a0}Ω fallen; die gepunkteten Werte sind angenommen.",
        FitsSlowly: "{name} fits its sheet: {free} without a load falls to {loaded} at 500\u{a0}Ω. For so many joules out its pulse must rise slowly, and is worked out so."
            => "{name} passt zu seinem Datenblatt: {free} ohne Last fallen auf {loaded} an 500\u{a0}Ω. Für so viel abgegebene Joule muss sein Impuls langsam steigen und wird so berechnet.",
        LoadedNotLess: "The sheet of {name} contradicts itself: {loaded} at 500\u{a0}Ω is not less than {free} without a load. One of the two is misread."
            => "Das Datenblatt von {name} widerspricht sich: {loaded} an 500\u{a0}Ω sind nicht weniger als {free} ohne Last. Eines von beiden ist falsch gelesen.",
        LoadedNotLessAssumed: "{name}: {loaded} at 500\u{a0}Ω is not less than {free} without a load, of which one is assumed. Type both from the sheet."
            => "{name}: {loaded} an 500\u{a0}Ω sind nicht weniger als {free} ohne Last, und eines davon ist angenommen. Beide vom Datenblatt eintippen.",
        MoreOut: "The sheet of {name} contradicts itself: {out} J come out, but only {stored} J are stored. One of the two is misread."
            => "Das Datenblatt von {name} widerspricht sich: {out} J kommen heraus, aber nur {stored} J sind gespeichert. Eines von beiden ist falsch gelesen.",
        NoCircuit: "The sheet of {name} contradicts itself: storing {stored} J and reaching {free} without a load, nothing gives {loaded} and {out} J at 500\u{a0}Ω. One of the four is misread."
            => "Das Datenblatt von {name} widerspricht sich: Mit {stored} J gespeichert und {free} ohne Last ergibt nichts {loaded} und {out} J an 500\u{a0}Ω. Eines der vier ist falsch gelesen.",
        NoCircuitAssumed: "{name}: {stored} J stored, {free} without a load, {loaded} and {out} J at 500\u{a0}Ω do not go together, and some of them are assumed. Type all four from the sheet."
            => "{name}: {stored} J gespeichert, {free} ohne Last, {loaded} und {out} J an 500\u{a0}Ω passen nicht zusammen, und einige davon sind angenommen. Alle vier vom Datenblatt eintippen.",

        Stakes: "Stakes" => "Erdstäbe",
        StakesApart: "Apart" => "Abstand",
        StakeInGround: "Length in the ground" => "Länge im Boden",
        StakeThick: "Thickness" => "Dicke",
        EarthStakesOf: "earth stakes" => "Erdstäbe",
        EarthLead: "Earth lead" => "Erdleitung",
        MeasuredEarth: "Measured resistance" => "Gemessener Widerstand",
        MeasuredEarthWhy: "The measured resistance is used in place of the stakes. Empty the field to go back to them."
            => "Der gemessene Widerstand gilt anstelle der Erdstäbe. Die Eingabe leeren, um zu ihnen zurückzukehren.",
    }
}
