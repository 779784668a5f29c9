//! Words of the choice of an energizer, the pulse over time, the earth and what an animal feels.

use crate::message::texts;

texts! {
    /// Words of the choice of an energizer, the pulse over time, the earth and what an animal feels.
    Power {
        Title: "What {run} needs to keep {target} at its weakest post"
            => "Was {run} braucht, um {target} am schwächsten Pfahl zu halten",
        FenceIs: "The fence is a ring of so many nets, fed where its chain starts, over an earth of {ohm} Ω; clean, as it is now, and in long wet grass."
            => "Der Zaun ist ein Ring aus so vielen Netzen, eingespeist am Anfang der Netzkette, über einer Erdung von {ohm} Ω; sauber, wie er jetzt ist und in hohem nassem Gras.",
        OfNets: "{count} nets" => "{count} Netze",
        OneNet: "1 net" => "1 Netz",
        Holds: "holds on" => "hält auf",
        None: "none" => "keinem",
        Upto: "up to {count}" => "bis zu {count}",
        LeastStored: "Least stored energy that holds, J" => "Kleinste gespeicherte Energie, die reicht, J",
        Clean: "clean" => "sauber",
        AsItIs: "as it is" => "wie er ist",
        Overgrown: "long, wet" => "hoch, nass",
        NotWithin: "over {most}" => "über {most}",
        GroundToday: "Ground today" => "Boden heute",
        Dry: "dry" => "trocken",
        Damp: "damp" => "feucht",
        Wet: "wet" => "nass",
        Frozen: "frozen" => "gefroren",
        DryMeans: "earths badly, grass hardly leaks" => "erdet schlecht, Gras leitet kaum ab",
        DampMeans: "as it is stated" => "wie angegeben",
        WetMeans: "grass leaks, spikes hold half" => "Gras leitet ab, Spitzen halten halb so viel",
        FrozenMeans: "earths badly, no spike goes in" => "erdet schlecht, keine Spitze dringt ein",
        TodayWhy: "Sets soil, leakage, hold, the nets’ weight and the minutes together; each has its own field, and what is stated there is of damp ground. A measured earth stays as it was measured. Common practice, no source."
            => "Setzt Boden, Ableitung, Halt, Gewicht der Netze und Minuten zugleich; jedes hat seine eigene Eingabe, und was dort steht, gilt für feuchten Boden. Eine gemessene Erdung bleibt, wie sie gemessen wurde. Übliche Praxis, ohne Quelle.",
        TodaySaid: "Ground today: {word}; volts, hold, weight and minutes are of such a day."
            => "Boden heute: {word}; Spannung, Halt, Gewicht und Minuten gelten für einen solchen Tag.",
        Choice: "Which energizer" => "Welches Gerät",
        ChoiceAside: "kV at the weakest post, by nets" => "kV am schwächsten Pfahl, je Netzzahl",
        ChoiceLook: "Working out which energizer holds" => "Es wird berechnet, welches Gerät hält",
        Keeps: "{name} keeps {target} at the weakest post on {likely} of these nets as they are, on {clean} when clean and dry, on {overgrown} in long wet grass."
            => "{name} hält {target} am schwächsten Pfahl mit so vielen dieser Netze: {likely}, wie sie sind; {clean}, wenn sie sauber und trocken sind; {overgrown} in hohem nassem Gras.",
        KeepsAlmost: "On {nets} it holds {kv}." => "Mit {nets} hält es {kv}.",
        FeedFrom: "Feed this run from {name}" => "Diesen Auslauf speisen aus: {name}",
        KeepsNone: "none" => "keines",
        KeepsOne: "1" => "1",
        KeepsMany: "up to {count}" => "bis zu {count}",
        KeepsAll: "{most} and more" => "{most} und mehr",
        LeastFor: "For {nets}: {likely} as they are, {clean} when clean and dry, {overgrown} in long wet grass. That is the least stored energy of a row like the assumed one that holds."
            => "Für {nets}: {likely}, wie sie sind, {clean}, wenn sie sauber und trocken sind, {overgrown} in hohem nassem Gras. Das ist die kleinste gespeicherte Energie, die bei einem Gerät nach Art des angenommenen reicht.",
        LeastJoules: "{joules} J" => "{joules} J",
        LeastOver: "over {most} J" => "über {most} J",
        ShadedGrass: "shaded: clean to long, wet grass" => "schattiert: sauber bis hohes, nasses Gras",
        ChoiceRing: "A ring of so many nets over your earth; the plot decides, no rule of so many joules a net."
            => "Ein Ring aus so vielen Netzen über Ihrer Erdung; das Diagramm entscheidet, keine Regel von so viel Joule je Netz.",
        BeingReckoned: "Being worked out anew; what stands here is of before."
            => "Wird neu berechnet; was hier steht, ist von vorher.",
        NoneReaches: "A target of {target} is not below the {free} that such energizers have without a load: none of them reaches it."
            => "Ein Ziel von {target} liegt nicht unter den {free}, die solche Geräte ohne Last haben: Keines erreicht es.",
        Sound: "sound fence" => "heiler Zaun",
        RangeStated: "With the grass as you state it the weakest post reads about {kv}. Until it is read, the range still runs from long, wet grass to a clean, dry net."
            => "Mit dem Gras, wie Sie es angeben, zeigt der schwächste Pfahl etwa {kv}. Bis er gemessen ist, reicht die Spanne weiter von hohem, nassem Gras bis zu einem sauberen, trockenen Netz.",
        DrawBranch: "Draw a branch" => "Abzweig zeichnen",
        HintBranch: "Click on the run’s line, then where the branch goes. Enter ends it, Backspace takes up the last corner, Esc leaves."
            => "Auf die Linie des Auslaufs klicken, dann dorthin, wohin der Abzweig geht. Eingabetaste beendet, Rücktaste nimmt die letzte Ecke weg, Esc bricht ab.",
        Branches: "Branches" => "Abzweige",
        BranchRow: "Branch {number}, {from}" => "Abzweig {number}, {from}",
        HangsAt: "Branch {number} hangs {place}" => "Abzweig {number} hängt {place}",
        AtPost: "at post {number}" => "an Pfahl {number}",
        HangsFrom: "Hangs, from corner 1" => "Hängt, ab Ecke 1",
        HangsFromSaid: "Where branch {number} hangs" => "Wo Abzweig {number} hängt",
        CornerOfBranch: "Corner {number} of branch {branch} of {run}" => "Ecke {number} von Abzweig {branch} von {run}",
        StartOfBranch: "Start of branch {branch} of {run}" => "Anfang von Abzweig {branch} von {run}",
        BranchOfRun: "branch {number} of {run}" => "Abzweig {number} von {run}",
        BranchNets: "{nets}, {length}" => "{nets}, {length}",
        TakeBranch: "Take branch {number} out" => "Abzweig {number} herausnehmen",
        SoilSlider: "Soil at the stakes" => "Boden an den Erdstäben",
        Marsh: "marsh" => "Moor",
        Loam: "loam" => "Lehm",
        MoistSand: "sand" => "Sand",
        DrySand: "dry sand" => "Trockensand",
        Stones: "stones" => "Steine",
        DampSoil: "damp soil" => "feuchter Boden",
        DrySoil: "dry" => "trocken",
        VeryDrySoil: "very dry" => "sehr trocken",
        EnergyDamp: "energy, damp" => "Energie feucht",
        Fox: "Fox" => "Fuchs",
        Dog: "Dog" => "Hund",
        Hen: "Hen" => "Henne",
        Sheep: "Sheep" => "Schaf",
        Joules: "{joules} J" => "{joules} J",
        FeelRow: "{who}: {damp} on damp soil, {dry} on dry, {very_dry} on very dry; {joules} on damp"
            => "{who}: {damp} auf feuchtem Boden, {dry} auf trockenem, {very_dry} auf sehr trockenem; {joules} auf feuchtem",
        BodyWhy: "Body {body} Ω, {feet} feet on the ground; on damp soil {charge} mC of charge go through it. {source}"
            => "Körper {body} Ω, {feet} Füße am Boden; auf feuchtem Boden gehen {charge} mC Ladung hindurch. {source}",
        People: "People keep off: wet hands, kneeling or a second wire bring the whole pulse. Children and anybody with a heart device keep away from the net."
            => "Menschen halten Abstand: Nasse Hände, Knien oder ein zweiter Draht bringen den ganzen Impuls. Kinder und alle mit Herzschrittmacher oder Ähnlichem bleiben vom Netz fern.",
        FeelWhy: "Nose or beak on the net, feet on the soil of the column, the earth stakes in the same soil where their resistance is not measured. A bird on dry plumage feels less; nothing where it touches no ground."
            => "Nase oder Schnabel am Netz, Füße auf dem Boden der Spalte, die Erdstäbe im selben Boden, wo ihr Widerstand nicht gemessen ist. Ein Vogel mit trockenem Gefieder spürt weniger; nichts, wo er keinen Boden berührt.",
        SoilOf: "soil of {ohm_m} Ω m" => "Boden mit {ohm_m} Ω m",
        ByTurns: "These nets are wired by turns: on very dry soil a fox that bridges two lines feels {dry} at the least, where with every line live it would feel {plain_dry}. The price is {weakest} at the weakest post in place of {plain_weakest}, and a live line that touches an earthed one is a short."
            => "Diese Netze führen abwechselnd Strom und Erde: Auf sehr trockenem Boden spürt ein Fuchs, der zwei Litzen überbrückt, mindestens {dry}; mit Strom auf jeder Litze wären es {plain_dry}. Der Preis ist {weakest} am schwächsten Pfahl statt {plain_weakest}, und eine stromführende Litze, die eine geerdete berührt, ist ein Kurzschluss.",
        PulseAt: "The pulse at post {post}" => "Der Impuls an Pfahl {post}",
        PulseWide: "{ms} wide" => "{ms} breit",
        Milliseconds: "{ms} ms" => "{ms} ms",
        DottedSound: "dotted: the sound fence" => "gepunktet: der heile Zaun",
        DottedFeed: "dotted: at the feed" => "gepunktet: an der Einspeisung",
        PulseCarries: "It brings {joules} J and {charge} mC into the fence."
            => "Er bringt {joules} J und {charge} mC in den Zaun.",
        StakesWorth: "Worth driving: {wet} in wet ground, {damp} in damp, {dry} in dry. After that one more gives an animal at the weakest post less than {worth} % more."
            => "So viele Erdstäbe lohnen sich: {wet} in nassem Boden, {damp} in feuchtem, {dry} in trockenem. Danach gibt ein weiterer einem Tier am schwächsten Pfahl weniger als {worth} % mehr.",
        OneMoreStake: "One more than you have would give it {gain} % more in damp ground."
            => "Einer mehr, als Sie haben, gäbe ihm in feuchtem Boden {gain} % mehr.",
        OneStakeForAll: "One galvanised steel stake may be brace, mount and earth at once: off the net, in the dampest place that the lead reaches, {apart} and more from any other earth."
            => "Ein verzinkter Stahlstab kann Spannpflock, Halterung und Erdung zugleich sein: abseits vom Netz, an der feuchtesten Stelle, die die Zuleitung erreicht, {apart} und mehr von jeder anderen Erdung.",
        ShowTest: "Test the earth on this fence" => "Erdung an diesem Zaun prüfen",
        FoldTest: "Fold the test" => "Prüfung einklappen",
        TestSafe: "1. Birds shut in, energizer off and tested dead, before the bars go in and before they come out; never on dry grass."
            => "1. Tiere eingesperrt, Gerät aus und Zaun als spannungsfrei geprüft, bevor die Stahlstäbe hineinkommen und bevor sie herauskommen; nie auf trockenem Gras.",
        TestShort: "2. At post {post}, {far} off and {from} from corner 1, drive a steel bar that touches the live lines. Stand clear, energizer on, read that post; off again before the next bar, until it reads less than {short}: about {ohm} Ω in all."
            => "2. An Pfahl {post}, {far} entfernt und {from} ab Ecke 1, einen Stahlstab einschlagen, der die stromführenden Litzen berührt. Abstand nehmen, Gerät ein, an diesem Pfahl messen; vor dem nächsten Stab wieder aus, bis er weniger als {short} zeigt: insgesamt etwa {ohm} Ω.",
        TestRead: "3. Energizer on, nobody at the bars. Read the earth pole against a probe a metre and more from any stake: expect about {earth}."
            => "3. Gerät ein, niemand an den Stahlstäben. Den Erdanschluss gegen eine Sonde messen, einen Meter und mehr von jedem Erdstab: etwa {earth} erwarten.",
        TestHigh: "4. More than {rule}: drive another stake, or move the stakes to damper ground, and read again in the driest weather. Off before the bars come out."
            => "4. Mehr als {rule}: einen weiteren Erdstab einschlagen oder die Erdstäbe in feuchteren Boden versetzen und beim trockensten Wetter wieder messen. Aus, bevor die Stahlstäbe herauskommen.",
        TestLow: "4. Well above that: a stake is loose, corroded or in dry ground. Off before the bars come out."
            => "4. Deutlich darüber: Ein Erdstab ist lose, verrostet oder in trockenem Boden. Aus, bevor die Stahlstäbe herauskommen.",
        TestRule: "The few hundred volts are a rule of farm fences; what reaches the animal decides."
            => "Die paar hundert Volt sind eine Regel für Weidezäune; was beim Tier ankommt, entscheidet.",
        TestTooNear: "The shorted-fence test wants {wants} between short and stakes, and this fence reaches {far}: here it reads falsely."
            => "Die Prüfung mit kurzgeschlossenem Zaun braucht {wants} zwischen Kurzschluss und Erdstäben, und dieser Zaun reicht {far}: Hier misst sie falsch.",
        TestAlreadyLow: "Post {post} reads less than {short} as it stands: mend that first, the earth test comes after."
            => "Pfahl {post} zeigt schon so weniger als {short}: erst das beheben, die Prüfung der Erdung kommt danach.",
        TestFarPost: "Read the far post instead: {feed} at the feed and {kv} at post {post} are expected. A greater drop is a join, a line or grass on the way; both low is the energizer or its earth."
            => "Stattdessen den fernen Pfahl messen: {feed} an der Einspeisung und {kv} an Pfahl {post} sind zu erwarten. Fällt mehr ab, liegt es unterwegs an einer Verbindung, einer Litze oder an Gras; ist beides niedrig, liegt es am Gerät oder an seiner Erdung.",
        TestSafeReading: "Stand off the net, birds shut in, one hand on the meter’s handle; children keep away."
            => "Abstand vom Netz, Tiere eingesperrt, eine Hand am Griff des Zaunprüfers; Kinder bleiben fern.",
        NoSuchRun: "{file}: no run is called “{run}”; it has {runs}."
            => "{file}: Kein Auslauf heißt „{run}“; vorhanden: {runs}.",
        NoRuns: "{file} has no run; draw one or add one to its `runs`."
            => "{file} hat keinen Auslauf; einen zeichnen oder unter `runs` einen hinzufügen.",
        NotWorked: "{file}: nothing can be worked out for {run}; `netfold check` names what is wrong with its nets or its earth."
            => "{file}: Für {run} lässt sich nichts berechnen; `netfold check` nennt, was an Netzen oder Erdung falsch ist.",
        NoWarranty: "A row of figures, not a promise: a meter at the far post decides. Local codes come first."
            => "Eine Reihe Zahlen, kein Versprechen: Ein Zaunprüfer am fernen Pfahl entscheidet. Örtliche Vorschriften gehen vor.",
    }
}
