//! What each figure is, its unit and where it comes from: said while the pointer rests on it.

use crate::message::texts;

texts! {
    /// What each figure is, its unit and where it comes from.
    About {
        Run: "The run that the figures are about. Pick another on the map or on the Run page." => "Der Auslauf, für den die Zahlen gelten. Einen anderen auf der Karte oder auf der Seite Auslauf wählen.",
        Nets: "Nets on the line, of all in the store. The fewest that cover it, or those that the run names." => "Netze auf der Linie, von allen im Lager. Die wenigsten, die sie decken, oder die im Auslauf genannten.",
        Line: "Length of the line, in metres or feet: along the ground where heights are known, else as on the map. From the outline." => "Länge der Linie in Metern oder Fuß: am Boden entlang, wo Höhen bekannt sind, sonst wie auf der Karte. Aus dem Umriss.",
        Spare: "Netting beyond the line, in metres or feet, doubled back along its last panels. Length of the nets less the line." => "Netz über die Linie hinaus, in Metern oder Fuß, entlang der letzten Felder zurückgelegt. Länge der Netze weniger Linie.",
        Short: "Line without netting, in metres or feet. The line less the length of the nets." => "Linie ohne Netz, in Metern oder Fuß. Linie weniger Länge der Netze.",
        Posts: "Posts on the line, counted once where two nets meet. From the panels of the nets." => "Pfähle auf der Linie, einmal gezählt, wo zwei Netze sich treffen. Aus den Feldern der Netze.",
        Braces: "Corners and ends whose pull is more than their spikes hold, and what is set of them. From turn, tension and soil." => "Ecken und Enden, deren Zug größer ist als der Halt ihrer Spitzen, und was davon steht. Aus Winkel, Spannung des Netzes und Boden.",
        Strip: "Ground to mow under and beside the line, in square metres or feet, and minutes behind the mower. From the strip’s width and the mower." => "Zu mähender Boden unter und neben der Linie, in Quadratmetern oder Quadratfuß, und Minuten hinter dem Mäher. Aus Streifenbreite und Mäher.",
        Weakest: "Peak volts at the weakest post, in kilovolts, from long wet grass to a clean dry net, until one is measured. From energizer, nets, grass and earth." => "Spitzenspannung am schwächsten Pfahl in Kilovolt, von hohem nassem Gras bis zum sauberen trockenen Netz, bis gemessen ist. Aus Gerät, Netzen, Gras und Erdung.",
        Findings: "What you should know: dangers, warnings and notes of the plan and of every run that is not past. A click lists them."
            => "Was zu wissen ist: Gefahren, Warnungen und Anmerkungen zum Plan und zu jedem Auslauf, der nicht vergangen ist. Ein Klick listet sie auf.",
        FeedKv: "Peak volts where the lead meets the net, in kilovolts, against remote soil. From the energizer’s data sheet and the fence." => "Spitzenspannung, wo die Zuleitung ans Netz geht, in Kilovolt gegen ferne Erde. Aus dem Datenblatt des Geräts und dem Zaun.",
        EarthKv: "Peak volts of the earth stakes against remote soil, in kilovolts: what is lost there reaches no animal. From stakes and soil." => "Spitzenspannung der Erdstäbe gegen ferne Erde, in Kilovolt: was dort verloren geht, erreicht kein Tier. Aus Erdstäben und Boden.",
        StripGround: "Ground that is mown, in square metres or feet: both sides of the line together." => "Gemähter Boden in Quadratmetern oder Quadratfuß: beide Seiten der Linie zusammen.",
        Passes: "How often the mower goes round: the strip’s width by the mower’s." => "Wie oft der Mäher herumfährt: Streifenbreite durch Mäherbreite.",
        OnFoot: "Way walked behind the mower, in metres or feet. The sum of all passes." => "Weg hinter dem Mäher, in Metern oder Fuß. Die Summe aller Runden.",
        Behind: "Minutes behind the mower at its pace. The way walked by its speed." => "Minuten hinter dem Mäher bei seinem Tempo. Weg durch Geschwindigkeit.",
        SetUp: "Minutes in which one person sets the run up, mowing apart, as the sheet and the report say them. A rule of thumb, so much a net and a brace, until you state how long things take; then from the steps one by one." => "Minuten, in denen eine Person den Auslauf aufbaut, ohne Mähen, wie Blatt und Bericht sie nennen. Eine Faustregel, so viel je Netz und je Abspannung, bis Sie angeben, wie lange die Dinge dauern; dann aus den einzelnen Schritten.",
        TakeDown: "Minutes in which one person of practised hands takes the run down. From the steps one by one." => "Minuten, in denen eine Person mit Übung den Auslauf abbaut. Aus den einzelnen Schritten.",
        NettingStays: "Netting that stays standing when the run moves, in metres or feet." => "Netz, das beim Umzug stehen bleibt, in Metern oder Fuß.",
        PostsStay: "Posts that stay where they are when the run moves." => "Pfähle, die beim Umzug stehen bleiben.",
        PostsMove: "Posts that are pulled and set anew when the run moves." => "Pfähle, die beim Umzug gezogen und neu gesetzt werden.",
        Ground: "Ground that the run would enclose if it closed from here, in square metres or feet." => "Boden, den der Auslauf umschlösse, wenn er sich von hier aus schließt, in Quadratmetern oder Quadratfuß.",
        Each: "That ground by the birds of the coop." => "Dieser Boden, geteilt durch die Tiere des Stalls.",
        RunGround: "Ground that the run shuts in, in square metres or feet, and how much of it each bird has. From the outline, what shuts it, and the flock of its coop."
            => "Boden, den der Auslauf einschließt, in Quadratmetern oder Quadratfuß, und wie viel davon auf jedes Tier kommt. Aus dem Umriss, dem, was ihn schließt, und der Herde seines Stalls.",
        Paddock: "Ground of the paddock, in square metres or feet, and the length of its edge, in metres or feet. From its corners."
            => "Boden der Koppel in Quadratmetern oder Quadratfuß und die Länge ihres Randes in Metern oder Fuß. Aus ihren Ecken.",
        NetsOfRun: "Nets that the run lays and those left in the store: counts, and the length of one and of its panels in metres or feet. From the outline and what you own."
            => "Netze, die der Auslauf auslegt, und die im Lager bleiben: Anzahl, Länge eines Netzes und seiner Felder in Metern oder Fuß. Aus dem Umriss und dem, was Sie besitzen.",
        Corners: "Whether a corner leans in: the pull of the net there, a force, against what its post’s spikes hold. From turn, tension and soil."
            => "Ob eine Ecke sich neigt: der Zug des Netzes dort, eine Kraft, gegen den Halt der Spitzen ihres Pfahls. Aus Knick, Spannung und Boden.",
        Holds: "What each way of holding a corner holds, as a force, and how many minutes it takes. From the corner’s pull, pegs and soil."
            => "Was jede Art, eine Ecke zu halten, an Kraft hält und wie viele Minuten sie braucht. Aus dem Zug der Ecke, Heringen und Boden.",
        Wind: "Speed of the wind at which posts go over, and which go first. From the net’s own drag, its spikes and the soil."
            => "Windgeschwindigkeit, bei der Pfähle umfallen, und welche zuerst. Aus dem Windwiderstand des Netzes, seinen Spitzen und dem Boden.",
        Sides: "Length of a side in metres or feet and in panels, its bearing and its turn in degrees, corners in metres or feet east and north. From the outline."
            => "Länge einer Seite in Metern oder Fuß und in Feldern, ihre Richtung und ihr Knick in Grad, Ecken in Metern oder Fuß nach Osten und Norden. Aus dem Umriss.",
        RollsOfRun: "Rolls and metres or feet of netting used so far, and what is left in the store. From the line that is drawn and what you own."
            => "Rollen und Meter oder Fuß Netz, die bisher gebraucht sind, und was im Lager bleibt. Aus der gezeichneten Linie und dem, was Sie besitzen.",
        Branches: "Length of a branch in metres or feet and the nets that lie on it. From its line and the nets that you chose for it."
            => "Länge eines Abzweigs in Metern oder Fuß und die Netze darauf. Aus seiner Linie und den Netzen, die Sie dafür gewählt haben.",
        Pins: "What a pin costs: how much farther corners stand from posts with it, in metres or feet. Found by trying every start and order without it."
            => "Was eine Anheftung kostet: um wie viel weiter Ecken mit ihr von Pfählen stehen, in Metern oder Fuß. Gefunden, indem ohne sie jeder Anfang und jede Reihenfolge versucht wird.",
        Gates: "Posts that are pulled for a gate, and the way from the gateway, in metres or feet. From the joins, and round every net that stands."
            => "Pfähle, die für ein Tor gezogen werden, und der Weg von der Zufahrt in Metern oder Fuß. Aus den Verbindungen, um jedes stehende Netz herum.",
        Steps: "Minutes of each step and metres or feet walked, for practised hands. From posts, braces, ways and the rates of the store, which are common practice until you state yours."
            => "Minuten jedes Schritts und gegangene Meter oder Fuß, mit Übung. Aus Pfählen, Abspannungen, Wegen und den Zeiten des Lagers, die gängige Praxis sind, bis Sie Ihre angeben.",
        Runs: "Each run’s own ground, netting and volts, worked out as those of the run in hand are."
            => "Boden, Netz und Spannung jedes Auslaufs, berechnet wie die des Auslaufs in der Hand.",
        Shapes: "Ground that the same nets enclose in another shape, in square metres or feet, with its corners, braces and minutes. Searched for on your own ground."
            => "Boden, den dieselben Netze in anderer Form einschließen, in Quadratmetern oder Quadratfuß, mit Ecken, Abspannungen und Minuten. Auf Ihrem eigenen Gelände gesucht.",
        Birds: "Square metres or feet for each bird, and how many birds the ground carries. From your own figure, or from the rule that is named."
            => "Quadratmeter oder Quadratfuß je Tier und wie viele Tiere der Boden trägt. Aus Ihrer eigenen Zahl oder aus der genannten Regel.",
        OverSides: "Panels and length of each side, in metres or feet: what may stay standing when the run moves over it. From the outline."
            => "Felder und Länge jeder Seite in Metern oder Fuß: was stehen bleiben kann, wenn der Auslauf über sie umzieht. Aus dem Umriss.",
        MoveOver: "What stays and what moves: netting in metres or feet, posts, fresh ground and ground to mow in square metres or feet, minutes. From the two outlines and the runs that stood before."
            => "Was bleibt und was umzieht: Netz in Metern oder Fuß, Pfähle, frischer und zu mähender Boden in Quadratmetern oder Quadratfuß, Minuten. Aus beiden Umrissen und den früheren Ausläufen.",
        Readings: "What was read at the fence: kilovolts by voltmeter, volts of a battery. Written down by you; beside it what was worked out for that place."
            => "Was am Zaun gemessen wurde: Kilovolt mit dem Zaunprüfer, Volt einer Batterie. Von Ihnen notiert; daneben, was für diese Stelle berechnet ist.",
        Slopes: "What a side rises, in metres or feet, or 1 in so many, and how far netting reaches along it. From heights, or as you state it."
            => "Was eine Seite steigt, in Metern oder Fuß oder 1 zu so viel, und wie weit Netz an ihr reicht. Aus Höhen oder wie Sie es angeben.",
        Dips: "How far the net hangs over a dip or lies on a ridge between two posts, in centimetres or inches. From the heights between them."
            => "Wie weit das Netz zwischen zwei Pfählen über einer Mulde hängt oder auf einem Rücken liegt, in Zentimetern oder Zoll. Aus den Höhen dazwischen.",
        Earth: "Resistance of the earth stakes against remote soil, in ohms, and how far each stands from net and other earths, in metres or feet. From their layout and the soil’s resistivity, in ohm metres."
            => "Widerstand der Erdstäbe gegen ferne Erde in Ohm und wie weit jeder von Netz und anderen Erdungen steht, in Metern oder Fuß. Aus ihrer Anordnung und dem spezifischen Widerstand des Bodens in Ohmmetern.",
        Leads: "Length of the leads from the energizer to net and earth stakes, in metres or feet. Measured on the map, or as you state it."
            => "Länge der Zuleitungen vom Gerät zu Netz und Erdstäben, in Metern oder Fuß. Auf der Karte gemessen oder wie Sie sie angeben.",
        Slider: "The words stand for a figure: of grass what a metre of net leaks, in siemens; of soil its resistivity, in ohm metres. As you set it, else assumed."
            => "Die Wörter stehen für eine Zahl: beim Gras, was ein Meter Netz ableitet, in Siemens; beim Boden sein spezifischer Widerstand in Ohmmetern. Wie Sie es einstellen, sonst angenommen.",
        Feel: "What an animal would feel at this post: kilovolts across it, joules and millicoulombs of one pulse. From the pulse there, the soil, and published resistances of bodies."
            => "Was ein Tier an diesem Pfahl spüren würde: Kilovolt an ihm, Joule und Millicoulomb eines Impulses. Aus dem Impuls dort, dem Boden und veröffentlichten Widerständen von Körpern.",
        Pulse: "Kilovolts over milliseconds at this post, beside those at the feed. From the circuit of energizer, leads, nets, grass and earth."
            => "Kilovolt über Millisekunden an diesem Pfahl, neben denen an der Einspeisung. Aus dem Stromkreis von Gerät, Zuleitungen, Netzen, Gras und Erdung.",
        Choice: "Kilovolts at the weakest post by the number of nets, from long wet grass to a clean dry net. From each energizer’s data sheet and your fence."
            => "Kilovolt am schwächsten Pfahl nach der Zahl der Netze, von hohem nassem Gras bis zum sauberen trockenen Netz. Aus dem Datenblatt jedes Geräts und Ihrem Zaun.",
        Faults: "Kilovolts at the weakest post with the faults that are set, beside those of the sound fence. From the same circuit, once with and once without them."
            => "Kilovolt am schwächsten Pfahl mit den gesetzten Fehlern, neben denen des heilen Zauns. Aus demselben Stromkreis, einmal mit und einmal ohne sie.",
        Stated: "As you state it from a data sheet or by measuring, in the unit that stands beside it. What is dotted is assumed until you do."
            => "Wie Sie es aus einem Datenblatt oder durch Messen angeben, in der Einheit daneben. Was gepunktet ist, ist angenommen, bis Sie es tun.",
        Rates: "Minutes of each piece of work, and metres or feet a second walked. Common practice until you state how long it takes you."
            => "Minuten jeder Arbeit und gegangene Meter oder Fuß je Sekunde. Gängige Praxis, bis Sie angeben, wie lange Sie brauchen.",
        Assumed: "Figures that you have not stated, each with its unit. They come from common practice or from what is published, as the documents name it."
            => "Zahlen, die Sie nicht angegeben haben, jede mit ihrer Einheit. Sie kommen aus gängiger Praxis oder aus Veröffentlichtem, wie es die Dokumente nennen.",
        Walls: "Length of a wall, hedge or fence, in metres or feet. From its corners; whether it holds birds is yours to state."
            => "Länge einer Mauer, einer Hecke oder eines Zauns in Metern oder Fuß. Aus den Ecken; ob sie Tiere hält, geben Sie an.",
        Shade: "Ground in shade, in square metres or feet. From its corners." => "Boden im Schatten in Quadratmetern oder Quadratfuß. Aus den Ecken.",
        Damp: "Resistivity of damp ground, in ohm metres. As you state it, else assumed from how damp it is called."
            => "Spezifischer Widerstand feuchten Bodens in Ohmmetern. Wie Sie ihn angeben, sonst angenommen danach, wie feucht er heißt.",
        Heights: "Height of a spot, in metres or feet above a level that you choose. As you type it, or from the file that was brought in."
            => "Höhe einer Stelle in Metern oder Fuß über einem Nullpunkt, den Sie wählen. Wie eingetippt oder aus der eingelesenen Datei.",
        Coops: "Birds, length and width in metres or feet, heading in degrees. As you state them; what is dotted is assumed."
            => "Tiere, Länge und Breite in Metern oder Fuß, Richtung in Grad. Wie Sie sie angeben; was gepunktet ist, ist angenommen.",
        Picture: "Size of the picture in pixels, and how much ground one covers, in metres or feet. From the picture, its world file, or two known points."
            => "Größe des Bildes in Bildpunkten und wie viel Boden einer zeigt, in Metern oder Fuß. Aus dem Bild, seiner Weltdatei oder zwei bekannten Punkten.",
        Taped: "Distances from two known places to each corner, in metres or feet, to set it out by tape. From the map."
            => "Abstände von zwei bekannten Orten zu jeder Ecke in Metern oder Fuß, zum Einmessen mit dem Maßband. Aus der Karte.",
        KeepOuts: "How far a run keeps off, in metres or feet. As you state it, else assumed."
            => "Wie weit ein Auslauf Abstand hält, in Metern oder Fuß. Wie Sie es angeben, sonst angenommen.",
        Hazards: "What of each kind is drawn, a count. Distances kept off it are in metres or feet, from the source that a finding names."
            => "Was von jeder Art gezeichnet ist, eine Anzahl. Abstände dazu sind in Metern oder Fuß, aus der Quelle, die ein Befund nennt.",
        Soil: "What one post’s spikes hold in this soil, a force. From its class, your foot, your own pull, or corners that stood or leaned."
            => "Was die Spitzen eines Pfahls in diesem Boden halten, eine Kraft. Aus seiner Klasse, Ihrem Fuß, Ihrem eigenen Zug oder Ecken, die standen oder sich neigten.",
        SideOnMap: "Length of this side in metres or feet, and its panels where they are as long as it is. From the outline and the nets on it."
            => "Länge dieser Seite in Metern oder Fuß und ihre Felder, wo sie so lang sind wie sie. Aus dem Umriss und den Netzen darauf.",
        VoltsHere: "Peak volts at this post, in kilovolts, against remote soil, as likely as can be told. From energizer, nets, grass and earth."
            => "Spitzenspannung an diesem Pfahl in Kilovolt gegen ferne Erde, so wahrscheinlich, wie sich sagen lässt. Aus Gerät, Netzen, Gras und Erdung.",
        PostNumber: "Number of this post, counted from the first post of the first net. From the order in which the nets lie."
            => "Nummer dieses Pfahls, gezählt vom ersten Pfahl des ersten Netzes. Aus der Reihenfolge, in der die Netze liegen.",
        OverheadLine: "Voltage of the overhead line, in kilovolts. As you state it; ask its operator."
            => "Spannung der Freileitung in Kilovolt. Wie Sie sie angeben; den Betreiber fragen.",
        Along: "How far this corner is along the line from corner 1, in metres or feet. From the outline, along the ground where heights are known."
            => "Wie weit diese Ecke auf der Linie von Ecke 1 liegt, in Metern oder Fuß. Aus dem Umriss, am Boden entlang, wo Höhen bekannt sind.",
        NetOnLine: "Where this net lies on the line, by its number in the order in which nets are laid. From the outline and what you own."
            => "Wo dieses Netz auf der Linie liegt, mit seiner Nummer in der Reihenfolge des Auslegens. Aus dem Umriss und dem, was Sie besitzen.",
        Scale: "A length on the ground as long as the bar, in metres or feet. From how near the map is."
            => "Eine Länge am Boden, so lang wie der Balken, in Metern oder Fuß. Daraus, wie nah die Karte ist.",
        VoltsKey: "Colours of the net by its peak volts, in kilovolts, up to twice the target. The target is the store’s."
            => "Farben des Netzes nach seiner Spitzenspannung in Kilovolt, bis zum Doppelten des Ziels. Das Ziel steht im Lager.",
        VoltsAlong: "Peak volts along the line, in kilovolts: the likely value, and the band from long wet grass to a clean dry net. From energizer, nets, grass and earth; a disc was read there."
            => "Spitzenspannung entlang der Linie in Kilovolt: der wahrscheinliche Wert und das Band von hohem nassem Gras bis zum sauberen trockenen Netz. Aus Gerät, Netzen, Gras und Erdung; ein Kreis wurde dort gemessen.",
        BracesIfClosed: "Braces that it would need or be better for, if it closed from here." => "Abspannungen, die er bräuchte oder die besser wären, wenn er sich von hier aus schließt.",
    }
}
