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
        BracesIfClosed: "Braces that it would need or be better for, if it closed from here." => "Abspannungen, die er bräuchte oder die besser wären, wenn er sich von hier aus schließt.",
    }
}
