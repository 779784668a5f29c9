//! Words of runs and shapes side by side.

use crate::message::texts;

texts! {
    /// Words of runs and shapes side by side.
    Compare {
        Shape: "Run" => "Auslauf",
        Ground: "Ground" => "Fläche",
        Birds: "Birds" => "Tiere",
        Nets: "Nets" => "Netze",
        Spare: "Spare" => "Übrig",
        Posts: "Posts" => "Pfähle",
        OnPosts: "On posts" => "Auf Pfählen",
        OnPostsFigures: "{on} of {all}" => "{on} von {all}",
        Braces: "Braces" => "Abspannung",
        Strip: "Strip" => "Mähstreifen",
        Mow: "Mow" => "Mähen",
        SetUp: "Set up" => "Aufbauen",
        Weakest: "Weakest" => "Schwächster",
        MinutesUnit: "min" => "min",
        ShortFigure: "short {figure}" => "fehlt {figure}",
        Unknown: "–" => "–",

        TitleShapes: "Yours ({runs}) and {shapes} shapes that were found"

            => "Ihre ({runs}) und {shapes} gefundene Formen",
        OrderBy: "Order by {column}" => "Nach {column} ordnen",
        OtherShapes: "Other shapes" => "Andere Formen",

        PageTitle: "Same nets, other shapes" => "Gleiche Netze, andere Formen",
        BestMore: "{name} takes in most: {more} more than yours{braces}."
            => "{name} umschließt am meisten: {more} mehr als Ihr Auslauf{braces}.",
        BestYours: "Yours takes in most of them all{braces}." => "Ihr Auslauf umschließt von allen am meisten{braces}.",
        BestAlone: "{name} takes in most: {area}{braces}." => "{name} umschließt am meisten: {area}{braces}.",
        NoBraces: ", and no brace" => ", ohne Abspannung",
        OneBrace: ", and 1 brace" => ", mit 1 Abspannung",
        ManyBraces: ", and {count} braces" => ", mit {count} Abspannungen",
        LookingFirst: "Looking over the ground for the largest run of each shape."
            => "Auf dem Gelände wird für jede Form der größte Auslauf gesucht.",
        With: "With" => "Mit",
        NetsUnit: "nets" => "Netzen",
        NetUnit: "net" => "Netz",
        StoreHas: "The store has {owned} nets." => "Das Lager hat {owned} Netze.",
        StoreHasOne: "The store has 1 net." => "Das Lager hat 1 Netz.",
        RoundCoop: "Round the coop" => "Um den Stall",
        RoundOneCoop: "Round {coop}" => "Um {coop}",
        BorrowWall: "Borrow a wall" => "Wand mitnutzen",
        FreeSides: "Free shape, sides" => "Freie Form, Seiten",
        Looking: "Looking. What is found so far grows on the map and in the table."
            => "Die Suche läuft. Was bisher gefunden ist, wächst auf der Karte und in der Tabelle.",
        LookingCounts: "Looking with other counts of nets." => "Die Suche läuft mit anderen Netzzahlen.",
        Stop: "Stop looking" => "Suche beenden",
        DrawPaddock: "Draw the paddock" => "Koppel zeichnen",
        LookAgain: "Look again" => "Nochmals suchen",

        GroundByProportion: "Ground by proportion" => "Fläche nach Seitenverhältnis",
        OpenGround: "rectangle, open ground" => "Rechteck, freies Gelände",
        Square: "square" => "Quadrat",
        TwoToOne: "2 to 1" => "2 zu 1",
        ThreeToOne: "3 to 1" => "3 zu 1",
        Yours: "yours" => "Ihrer",
        GroundByNets: "Ground by nets" => "Fläche nach Netzen",
        YouOwn: "you own {count}" => "Sie haben {count}",
        WorkByGround: "Ground by minutes of setting up" => "Fläche nach Minuten für den Aufbau",
        DotBraces: "{name}, {braces}" => "{name}, {braces}",
        BracesNone: "no brace" => "keine Abspannung",
        BracesOne: "1 brace" => "1 Abspannung",
        BracesMany: "{count} braces" => "{count} Abspannungen",

        Instead: "{name} instead of yours" => "{name} statt Ihres Auslaufs",
        OnItsOwn: "{name}" => "{name}",
        More: "{by} more" => "{by} mehr",
        Less: "{by} less" => "{by} weniger",
        Same: "the same" => "gleich",
        NowAnd: "{now}, {change}" => "{now}, {change}",
        Corners: "Corners" => "Ecken",
        CornersOnPosts: "{on} of {all} on posts" => "{on} von {all} auf Pfählen",
        NoLarger: "Proved" => "Bewiesen",
        NoLargerThan: "none larger than {area}" => "keine größer als {area}",
        MakeIt: "Make it the run" => "Zum Auslauf machen",
        LeavesBehind: "Made the run, it takes over neither gates nor pins nor braces: they stand on your line. Undo brings all back."
            => "Zum Auslauf gemacht, übernimmt die Form weder Tore noch Anheftungen noch Abspannungen: Die stehen auf Ihrer Linie. Rückgängig holt alles zurück.",
        KeepIt: "Keep it beside yours" => "Neben Ihrem behalten",
        MadeIt: "“{name}” is the run now." => "„{name}“ ist jetzt der Auslauf.",
        KeptIt: "“{name}” stands beside yours now, as run {number}."
            => "„{name}“ steht jetzt neben Ihrem, als Auslauf {number}.",
        TakeItBack: "Take that back" => "Zurücknehmen",
        SeeTheRun: "See the run" => "Auslauf ansehen",
        ChooseOne: "Pick a shape in the table below the map to see what it changes."
            => "In der Tabelle unter der Karte eine Form auswählen und sehen, was sie ändert.",
        WallSentence: "Its open side lies along wall {number}: the net ends there, and the wall has to hold the birds."
            => "Die offene Seite liegt an Wand {number}: Das Netz endet dort, und die Wand muss die Tiere halten.",
        DrawnInOnSlope: "On this slope it is drawn in to {percent} % of its size on the map, so that its nets close along the ground."
            => "Auf diesem Hang wird sie auf {percent} % ihrer Größe auf der Karte eingezogen, damit sich ihre Netze am Boden entlang schließen.",
        OpenOnSlope: "It does not close on this slope: its nets are {short} short along the ground, and drawn in it would trespass or leave out the coop."
            => "Auf diesem Hang schließt sie sich nicht: Am Boden entlang sind ihre Netze um {short} zu kurz, und eingezogen läge sie, wo sie nicht darf, oder ließe den Stall aus.",
        BackToRun: "Back to your run" => "Zurück zu Ihrem Auslauf",
        CopyTable: "Copy the table" => "Tabelle kopieren",
        SaveTable: "Save the table …" => "Tabelle speichern …",

        BirdsHead: "How birds are counted" => "Wie Tiere gezählt werden",
        BirdsBy: "{each} a bird ({rule}), rounded down" => "{each} je Tier ({rule}), abgerundet",
        NoRule: "Birds are not counted: the plan names a rule that is not known, or no ground a bird."
            => "Tiere werden nicht gezählt: Der Plan nennt eine Regel, die nicht bekannt ist, oder keine Fläche je Tier.",
        OwnRule: "your own figure" => "eigener Wert",
        AssumedRule: "assumed until you say your own" => "angenommen bis zum eigenen Wert",
        OwnField: "Ground for each bird" => "Fläche je Tier",
        ChangeRule: "Count by another rule" => "Nach anderer Regel zählen",
        FoldRules: "Fold the rules away" => "Regeln einklappen",
        RulesDiffer: "Rules differ by a factor of fifty and have conditions that no map shows. The law where you keep birds comes first."
            => "Die Regeln unterscheiden sich bis zum Fünfzigfachen und haben Bedingungen, die keine Karte zeigt. Das Recht dort, wo Sie Tiere halten, geht vor.",
        EuFreeRangeRotated: "free range, rotated, EU 589/2008" => "Freiland im Umtrieb, EU 589/2008",
        EuFreeRange: "free range, EU 589/2008" => "Freilandhaltung, EU 589/2008",
        EuOrganicLayer: "organic layers, EU 2020/464" => "Bio-Legehennen, EU 2020/464",
        EuOrganicTableMobile: "organic table birds, mobile house, EU 2020/464"
            => "Bio-Masttiere, Mobilstall, EU 2020/464",
        EuOrganicDuck: "organic ducks, EU 2020/464" => "Bio-Enten, EU 2020/464",
        EuOrganicTurkey: "organic turkeys, EU 2020/464" => "Bio-Puten, EU 2020/464",
        EuOrganicGoose: "organic geese, EU 2020/464" => "Bio-Gänse, EU 2020/464",
        EuFreeRangeTable: "free-range table chickens, EU 543/2008" => "Masthühner, Auslaufhaltung, EU 543/2008",
        EuTraditionalTable: "traditional free-range table chickens, EU 543/2008"
            => "Masthühner, bäuerliche Auslaufhaltung, EU 543/2008",
        AuLabel: "free range label, Australia 2017" => "Freiland-Kennzeichnung, Australien 2017",
        AuCode: "model code, Australia 2002" => "Musterkodex, Australien 2002",
        NzCode: "layer hen code, New Zealand" => "Kodex für Legehennen, Neuseeland",
        UsOrganicLayer: "organic layers, US 7 CFR 205.241" => "Bio-Legehennen, US 7 CFR 205.241",
    }
}
