//! The readable report: a page of plain text.

use crate::message::texts;

texts! {
    /// Words of the readable report.
    Page {
        Sentence: "{area} for {birds} birds, {each} each." => "{area} für {birds} Tiere, je {each}.",
        SentenceOneBird: "{area} for 1 bird." => "{area} für 1 Tier.",
        SentenceNoCoop: "{area} inside the line." => "{area} innerhalb der Linie.",
        NotWorkedOut: "This run cannot be worked out; the findings say why."
            => "Dieser Auslauf lässt sich nicht berechnen; die Hinweise sagen, warum.",
        Nets: "Nets" => "Netze",
        NetsFigures: "{used} of {owned} owned; line {line}, {left}"
            => "{used} von {owned} im Lager; Linie {line}, {left}",
        Spare: "spare {length}" => "{length} übrig",
        Short: "{length} short" => "{length} fehlt",
        Posts: "Posts" => "Pfähle",
        PostsFigures: "{posts}, {joins} joins" => "{posts}, Verbindungen {joins}",
        PostsOneJoin: "{posts}, 1 join" => "{posts}, Verbindungen 1",
        Strip: "Strip to mow" => "Mähstreifen",
        StripFigures: "{area}, {passes} passes, {walk} on foot, {minutes} min"
            => "{area}, Bahnen {passes}, {walk} zu Fuß, {minutes} min",
        StripOnePass: "{area}, 1 pass, {walk} on foot, {minutes} min"
            => "{area}, Bahnen 1, {walk} zu Fuß, {minutes} min",
        SetUp: "Set up" => "Aufbau",
        SetUpFigures: "{minutes} min for one person, braces {braces}"
            => "{minutes} min für eine Person, Abspannungen {braces}",
        SetUpByRule: "{minutes} min for one person by rule of thumb, braces {braces}"
            => "{minutes} min für eine Person nach der Faustregel, Abspannungen {braces}",
        Weakest: "Weakest post" => "Schwächster",
        WeakestNotMeasured: "{weakest}, not measured yet; {post}, with the grass as stated"
            => "{weakest}, noch nicht gemessen; {post}, beim angegebenen Gras",
        WeakestMeasured: "{weakest}; {post}, with the grass as stated" => "{weakest}; {post}, beim angegebenen Gras",
        Faults: "Faults" => "Fehler",
        Feed: "At the feed" => "Einspeisung",
        FeedFigures: "{feed}; energizer’s earth rises to {earth}" => "{feed}; die Erdung des Geräts steigt auf {earth}",
        Animal: "An animal there" => "Ein Tier dort",
        AnimalFigures: "would feel {volts} through its feet in this soil"
            => "würde auf diesem Boden {volts} durch die Füße spüren",
        Corners: "Corners" => "Ecken",
        CornerLine: "{number}  {along}  {verdict}; {brace}" => "{number}  {along}  {verdict}; {brace}",
        EndLine: "end  {along}  {verdict}; {brace}" => "Ende  {along}  {verdict}; {brace}",
        NeedsBrace: "needs a brace, its stake {off} off" => "braucht eine Abspannung, Pflock {off} entfernt",
        BraceAdvised: "a brace is advised, its stake {off} off" => "Abspannung ratsam, Pflock {off} entfernt",
        NoBrace: "no brace" => "keine Abspannung",
        Braced: "a brace stands {off} off" => "Abspannung gesetzt, {off} entfernt",
        BraceWeak: "a brace stands {off} off and is too weak" => "Abspannung gesetzt, {off} entfernt, zu schwach",
        CornerWhy: "turn {turn}, pulls with {pull}, holds {hold}, {miss} from a post"
            => "Knick {turn}, zieht mit {pull}, hält {hold}, {miss} neben einem Pfahl",
        Why: "Why" => "Warum",
        Findings: "What to know" => "Was zu wissen ist",
        Danger: "danger" => "Gefahr",
        Warning: "warning" => "Warnung",
        Note: "note" => "Anmerkung",
        Assumed: "Assumed, because the plan does not say" => "Angenommen, weil der Plan es nicht sagt",
        AssumedLine: "{key}: {value} ({source})" => "{key}: {value} ({source})",
        SideBySide: "Side by side" => "Nebeneinander",
        Cautions: "Energizer off before anyone touches net, stake or join. Local codes and licensed practice come before anything on this page."
            => "Gerät aus, bevor jemand Netz, Pflock, Stab oder Verbindung berührt. Örtliche Vorschriften und zugelassene Fachleute gehen allem auf dieser Seite vor.",
        At: "{sentence} at {places}" => "{sentence} Orte: {places}",
        Post: "post {number}" => "Pfahl {number}",
    }
}
