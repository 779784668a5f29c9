//! Words of braces, soil classes, what mends a corner, and the wind.

use crate::message::texts;

texts! {
    /// Words of braces, soil classes, what mends a corner, and the wind.
    Bracing {
        // What a corner does with what is set.
        Stands: "stands" => "steht",
        MayLean: "may lean" => "kann sich neigen",
        WillLean: "will lean in" => "wird sich neigen",
        StillLeans: "will still lean in" => "wird sich trotzdem neigen",
        HeldByBrace: "held by its brace" => "von der Abspannung gehalten",
        // The ground under the foot, and by a table.
        ByFoot: "A spike goes in" => "Eine Spitze geht",
        PushesIn: "easily" => "leicht hinein",
        FirmFoot: "with weight" => "mit Gewicht",
        NeedsBar: "after a bar" => "nach Vorstechen",
        Refuses: "not at all" => "gar nicht",
        MoreExactly: "Say it more exactly" => "Genauer angeben",
        FoldExactly: "Fold that away" => "Das einklappen",
        WordSet: "Words of" => "Wörter für",
        American: "American clay" => "Ton (USA)",
        British: "British clay" => "Ton (GB)",
        Sands: "sand" => "Sand",
        NoClass: "none" => "keine",
        ClassWord: "It is" => "Er ist",
        VerySoft: "very soft" => "breiig",
        Soft: "soft" => "weich",
        SoftToFirm: "soft to firm" => "weich bis steif",
        Medium: "medium" => "mittel",
        Firm: "firm" => "steif",
        FirmToStiff: "firm to stiff" => "steif bis halbfest",
        Stiff: "stiff" => "halbfest",
        VeryStiff: "very stiff" => "fest",
        Hard: "hard" => "hart",
        VeryLoose: "very loose" => "sehr locker",
        Loose: "loose" => "locker",
        Dense: "dense" => "dicht",
        VeryDense: "very dense" => "sehr dicht",
        ClassWhy: "One word means other ground in another country: “firm” of the British words is stronger than “medium” of the American ones."
            => "Dasselbe Wort meint in einem anderen Land anderen Boden: „steif“ der britischen Wörter ist fester als „mittel“ der amerikanischen.",
        PullTest: "Your own pull" => "Ihr eigener Zugversuch",
        PullTestWhy: "Hook a spring scale to a post in this ground and pull level until it leans."
            => "Eine Federwaage an einen Pfahl in diesem Boden haken und waagrecht ziehen, bis er sich neigt.",
        PulledAt: "It leaned at" => "Er neigte sich bei",
        PulledHeight: "Pulled so high up" => "So hoch gezogen",
        PulledGround: "The ground then" => "Der Boden war dabei",
        WetHolds: "Wet ground holds" => "Nasser Boden hält",
        CornersSeen: "Corners seen" => "Gesehene Ecken",
        CornersSeenWhy: "A corner without a brace that stood or leaned counts before anything else. Log it on the page about runs, with the corner picked."
            => "Eine Ecke ohne Abspannung, die stand oder sich neigte, zählt mehr als alles andere. Einzutragen auf der Seite „Auslauf“, mit ausgewählter Ecke.",
        SeenStood: "stood, {turn}" => "stand, {turn}",
        SeenLeaned: "leaned, {turn}" => "neigte sich, {turn}",
        SeenNoTurn: "no turn known" => "Knick unbekannt",
        SeenCounts: "counts" => "zählt",
        SeenTakeOut: "Take out the corner that was seen, number {number}"
            => "Gesehene Ecke Nummer {number} herausnehmen",

        // On what the soil rests.
        LineDefault: "Nothing is said of the soil: {kind} is assumed."
            => "Zum Boden ist nichts gesagt: Angenommen wird {kind}.",
        LineByFoot: "By the foot it counts as {kind}, “{class}” by the American words of {source}."
            => "Nach der Probe mit dem Fuß gilt er als {kind}, „{class}“ nach den amerikanischen Wörtern aus {source}.",
        LineRefuses: "No spike goes in, so nothing that is driven can be relied on: use weights, drill, or go elsewhere."
            => "Keine Spitze geht hinein, darum ist auf nichts Eingeschlagenes Verlass: Gewichte nehmen, bohren oder woanders hin.",
        LineClass: "{class} by the {set} words of {source}." => "{class} nach den {set} Wörtern aus {source}.",
        LineSand: "{class} sand by the words of {source}." => "{class} gelagerter Sand nach den Wörtern aus {source}.",
        LineStated: "The soil is stated in figures." => "Der Boden ist in Zahlen angegeben.",
        LinePulled: "By your own pull it counts as {kind}." => "Nach Ihrem eigenen Zugversuch gilt er als {kind}.",
        LineSeen: "By the corners that stood or leaned it counts as {kind}."
            => "Nach den Ecken, die standen oder sich neigten, gilt er als {kind}.",
        SetAmerican: "American" => "amerikanischen",
        SetBritish: "British" => "britischen",
        WetAs: "Wet, it holds {share} of that." => "Nass hält er davon {share}.",
        KindOfClay: "{class} clay" => "Ton ({class})",
        KindOfSand: "{class} sand" => "{class} gelagerter Sand",
        KindNothing: "ground that nothing holds in" => "Boden, in dem nichts hält",
        KindSand: "sand" => "Sand",
        KindVerySoft: "very soft clay" => "breiiger Ton",
        KindSoft: "soft clay" => "weicher Ton",
        KindFirm: "firm clay" => "steifer Ton",
        KindStiff: "stiff clay" => "halbfester Ton",
        KindVeryStiff: "very stiff clay" => "fester Ton",
        KindHard: "hard clay" => "harter Ton",

        // What holds a corner.
        Mends: "What holds them" => "Was sie hält",
        MendsAside: "most cheaply" => "am günstigsten",
        MendsDone: "all is set" => "alles gesetzt",
        NothingHolds: "Nothing that was looked at holds here." => "Nichts von dem, was geprüft wurde, hält hier.",
        Guy: "guy to a peg of {length}" => "Leine an Hering von {length}",
        GuyOnEarth: "guy to the earth stake" => "Leine am Erdstab",
        GuyOnEarthMore: "guy to the earth stake and {pegs} of {length}" => "Leine am Erdstab und {pegs} × {length}",
        GuyMany: "guy to {pegs} pegs of {length}" => "Leine an {pegs} Heringe von {length}",
        GuyTwo: "guy to two pegs of {length}" => "Leine an 2 Heringe von {length}",
        LongerPeg: "guy to a longer peg, {length}" => "Leine an längeren Hering, {length}",
        LongerPegs: "guy to two longer pegs, {length}" => "Leine an 2 längere Heringe, {length}",
        BracePost: "brace post, {length} deep" => "Stützpfahl, {length} tief",
        CutOver: "cut over {posts} posts, {turn} each" => "Schnitt über {posts} Pfähle, je {turn}",
        MendCost: "{minutes} min, {things} to carry" => "{minutes} min, zu tragen: {things}",
        CutCost: "{minutes} min, {area} lost, {spare} of net left over"
            => "{minutes} min, {area} verloren, {spare} Netz bleiben übrig",
        CutCostWon: "{minutes} min, {area} won, {spare} of net left over"
            => "{minutes} min, {area} gewonnen, {spare} Netz bleiben übrig",
        CutCostOpen: "{minutes} min, {spare} of net left over" => "{minutes} min, {spare} Netz bleiben übrig",
        SetBraceAt: "Set the brace at corner {number}" => "Abspannung an Ecke {number} setzen",
        SetBraceEnd: "Set the brace at the end" => "Abspannung am Ende setzen",
        SetAll: "Set braces at all {count}" => "Alle {count} abspannen",
        CutOffPosts: "As the nets fall once it is cut, its places lie up to {off} off the posts, and the net cuts across there: let the chain start elsewhere, or pin a post to one of the places."
            => "So wie die Netze nach dem Abschneiden liegen, fallen die neuen Stellen bis zu {off} neben die Pfähle, und das Netz kürzt dort ab: die Netzkette woanders anfangen lassen oder einen Pfahl an eine der Stellen heften.",
        CutAt: "Cut corner {number} over {posts} posts" => "Ecke {number} über {posts} Pfähle abschneiden",
        BraceHoldsNot: "The brace that is set is too weak; what holds most cheaply: {mend}."
            => "Die gesetzte Abspannung ist zu schwach; am günstigsten hält: {mend}.",
        BraceHoldsNotAtAll: "The brace that is set is too weak." => "Die gesetzte Abspannung ist zu schwach.",
        WhyMends: "Why: what was compared at corner {number}" => "Warum: Was an Ecke {number} verglichen wurde",
        WhyMendsEnd: "Why: what was compared at the end" => "Warum: Was am Ende verglichen wurde",
        FoldMends: "Fold the comparison away" => "Vergleich einklappen",
        HeadWay: "Way" => "Art",
        HeadHolds: "Holds" => "Hält",
        HeadInAll: "In all" => "Insgesamt",
        Times: "{times}×" => "{times}×",
        TakeBackAt: "Take the brace at corner {number} back" => "Abspannung an Ecke {number} zurücknehmen",
        TakeBackEnd: "Take the brace at the end back" => "Abspannung am Ende zurücknehmen",
        TakeBackStray: "Take the brace that stands at no corner back"
            => "Abspannung, die an keiner Ecke steht, zurücknehmen",
        StrayBrace: "at no corner: {brace}" => "an keiner Ecke: {brace}",
        GuyWhy: "The guy is tied {tied} up under {angle} and takes {tension}: level {level}, and {lift} draws its peg up. The peg holds {side} sideways and {up} upwards; {wanted} times the pull is asked for; a cut holds where every post of it stands by itself."
            => "Die Abspannleine ist {tied} hoch angebunden, {angle} gegen den Boden, und trägt {tension}: waagrecht {level}, und mit {lift} zieht sie den Hering nach oben. Der Hering hält seitlich {side} und nach oben {up}; verlangt ist das {wanted}-Fache des Zugs; eine abgeschnittene Ecke hält, wenn jeder ihrer Pfähle von selbst steht.",
        CostWhy: "In all: work, {carry} min for each thing carried, and of a cut the ground or the net that is lost, at what the run’s took to set up."
            => "Insgesamt: die Arbeit, {carry} min je getragenes Teil und bei einer abgeschnittenen Ecke die verlorene Fläche oder das verlorene Netz, bewertet mit den Minuten, die der Aufbau des Auslaufs dafür braucht.",
        LoggedAt: "Corner {number} without a brace" => "Ecke {number} ohne Abspannung",
        Stood: "stood" => "stand",
        Leaned: "leaned" => "neigte sich",

        // Wind.
        Wind: "Wind" => "Wind",
        WindSentence: "Posts between the braces stand to {clean} with a clean net and to {fouled} with grass in it. {posts} go over first."
            => "Pfähle zwischen den Abspannungen stehen mit sauberem Netz bis {clean}, mit Gras darin bis {fouled}. Zuerst kippen: {posts}.",
        WindNone: "No post stands free of a brace." => "Kein Pfahl steht ohne Abspannung frei.",
        WindOnePost: "Post {first}" => "Pfahl {first}",
        WindOnePostWithin: "post {first}" => "Pfahl {first}",
        WindPosts: "Posts {ranges}" => "Pfähle {ranges}",
        WindPostsWithin: "posts {ranges}" => "Pfähle {ranges}",
        WindRange: "{first} to {last}" => "{first} bis {last}",
        WindAlike: "The posts of {count} straights" => "Pfähle von {count} geraden Strecken",
        WindAlikeWithin: "the posts of {count} straights" => "Pfähle von {count} geraden Strecken",
        MustStand: "It must stand" => "Muss standhalten",
        FouledClosed: "Closed by grass" => "Durch Gras dicht",
        MarkedSo: "Marked so on the map." => "Auf der Karte so markiert.",
        WindOver: "In a wind of {wind} {clean} of {free} go over with a clean net, {fouled} with a fouled one."
            => "Bei Wind von {wind} kippen von {free} Pfählen {clean} mit sauberem Netz, {fouled} mit verschmutztem.",
        WindWhy: "“Closed by grass” is the share of a fouled net’s face that lets no wind through. The wind blows square to the net; gusts, hedges and a net that is iced over are left out."
            => "„Durch Gras dicht“ ist der Anteil der Fläche eines verschmutzten Netzes, der keinen Wind durchlässt. Der Wind weht quer aufs Netz; Böen, Hecken und ein vereistes Netz sind nicht mitgerechnet.",

        // Findings.
        SoilRefuses: "No spike goes into this ground, so no post and no peg can be relied on: use weights, drill holes, or lay the run elsewhere."
            => "Keine Spitze geht in diesen Boden, darum ist auf keinen Pfahl und keinen Hering Verlass: Gewichte nehmen, Löcher bohren oder den Auslauf woanders legen.",
        WindOverFinding: "{run}: in a wind of {wind} posts go over even with a clean net, first {posts}: lay it down before such a wind, or brace its straights."
            => "{run}: Bei Wind von {wind} kippen sogar mit sauberem Netz Pfähle, zuerst: {posts}. Vor solchem Wind das Netz umlegen oder die geraden Strecken abspannen.",
        WindOverFouled: "{run}: in a wind of {wind} posts go over once grass hangs in the net, first {posts}: keep it clean."
            => "{run}: Bei Wind von {wind} kippen Pfähle, sobald Gras im Netz hängt, zuerst: {posts}. Das Netz sauber halten.",
        WindOverWhy: "They stand to {clean} with a clean net, to {fouled} with a fouled one."
            => "Sie stehen mit sauberem Netz bis {clean}, mit verschmutztem bis {fouled}.",
        NoSuchClass: "The soil’s class “{word}” is none of {table}: take one of {known}; until then it is passed over."
            => "Die Bodenklasse „{word}“ kommt in {table} nicht vor; eine von diesen nehmen: {known}. Bis dahin wird sie übergangen.",
        SeenNowhere: "Corner {number} of those that were seen has no turn, and no run turns there: say how far it turned; until then it is passed over."
            => "Bei der gesehenen Ecke Nummer {number} ist kein Knick angegeben, und kein Auslauf knickt dort ab: angeben, wie weit sie knickte; bis dahin wird sie übergangen.",
        SeenContradict: "One corner stood (number {stood} of those seen) that pulled harder than another that leaned (number {leaned}): the one that leaned counts. Soil differs from place to place."
            => "Eine Ecke stand (gesehene Nummer {stood}), obwohl sie stärker zog als eine andere, die sich neigte (Nummer {leaned}): Es zählt die, die sich neigte. Boden ist nicht überall gleich.",

        // The report.
        SoilRow: "Soil" => "Boden",
        WindRow: "Wind" => "Wind",
        WindFigures: "stands to {clean} clean, {fouled} fouled; {posts} go over first"
            => "steht sauber bis {clean}, verschmutzt bis {fouled}; zuerst kippen: {posts}",
        CheapestMend: "cheapest that holds: {mend}, {cost}" => "am günstigsten hält: {mend}, {cost}",
        BraceJudged: "the brace set holds {times} times the pull"
            => "die gesetzte Abspannung hält das {times}-Fache des Zugs",
        BraceJudgedWeak: "the brace set holds {times} times the pull, and {wanted} times is asked for: too weak"
            => "die gesetzte Abspannung hält das {times}-Fache des Zugs, verlangt ist das {wanted}-Fache: zu schwach",

        // What is assumed.
        KeyWetFactor: "What wet ground holds of dry" => "Was nasser Boden von trockenem hält",
        KeyPullHeight: "Height of your pull" => "Höhe Ihres Zugs",
        KeyPullLength: "Length of the spike pulled" => "Länge der gezogenen Spitze",
        KeyPullThick: "Thickness of the spike pulled" => "Dicke der gezogenen Spitze",
        KeyPullSpikes: "Spikes of the post pulled" => "Spitzen des gezogenen Pfahls",
        KeyPullWet: "The ground was not wet then" => "Der Boden war dabei nicht nass",
        KeySeenWet: "A corner was seen in dry ground" => "Ecke bei trockenem Boden gesehen",
        KeyFouled: "How closed a fouled net is" => "Wie dicht ein verschmutztes Netz ist",
        KeyGuyHeight: "Height of a guy on its post" => "Höhe der Leine am Pfahl",
        KeyPegs: "Pegs to a guy" => "Heringe je Leine",
        KeyPostLength: "Depth of a brace post" => "Tiefe eines Stützpfahls",
        KeyPostThick: "Thickness of a brace post" => "Dicke eines Stützpfahls",
        KeySafety: "Hold asked for, times the pull" => "Verlangter Halt, Vielfaches des Zugs",
        KeyLongerPeg: "Driving a longer peg" => "Längeren Hering einschlagen",
        KeySecondPeg: "Driving a second peg" => "Zweiten Hering einschlagen",
        KeyPostMinutes: "Driving a brace post" => "Stützpfahl einschlagen",
        KeyCutMinutes: "Each post of a cut corner" => "Je Pfahl einer abgeschnittenen Ecke",
        KeyCarryMinutes: "Each thing carried" => "Je getragenes Teil",

        // What a value must do.
        ReckonedWith: "Until then {value} is reckoned with." => "Bis dahin wird mit {value} gerechnet.",
        MustBeAPart: "be above zero and at most one" => "über null und höchstens eins sein",
        MustBeATurn: "lie above 0 and up to 180 degrees" => "über 0 und bei höchstens 180 Grad liegen",
        MustBeAWind: "be a wind that blows on earth, 0 to 120 metres a second"
            => "ein Wind sein, wie er auf der Erde weht, 0 bis 120 Meter je Sekunde",
    }
}
