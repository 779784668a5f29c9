//! Words of the page about readings.

use crate::message::texts;

texts! {
    /// Words of the page about readings.
    Book {
        Title: "The book" => "Das Buch",
        OfRun: "of run {number}" => "von Auslauf {number}",
        TickingSign: "ticks" => "tickt",

        NoRun: "No run yet: lay one out first, then write down here what you read on it."

            => "Noch kein Auslauf: erst einen auslegen, dann hier aufschreiben, was Sie daran messen.",
        NothingRead: "Nothing was read on this run yet. One reading at the weakest post tells more than any figure here."
            => "An diesem Auslauf wurde noch nichts gemessen. Ein Messwert am schwächsten Pfahl sagt mehr als jede Zahl hier.",
        NoFenceRead: "No post of this run was read yet. One reading at the weakest post tells more than any figure here."
            => "Noch kein Pfahl dieses Auslaufs wurde gemessen. Ein Messwert am schwächsten Pfahl sagt mehr als jede Zahl hier.",
        WeakestRead: "{place} is the weakest that was read: {read}{day}, where {likely} was expected."
            => "Schwächster Messwert: {place}, {read}{day}; erwartet: {likely}.",
        WeakestReadAlone: "{place} is the weakest that was read: {read}{day}."
            => "Schwächster Messwert: {place}, {read}{day}.",
        OnDay: " on {day}" => " am {day}",
        UnderTarget: "That is under the {target} that you ask for."
            => "Das ist weniger als die {target}, die Sie verlangen.",
        NotFitted: "Readings are not fitted yet: what the page Power says rests on assumed grass as before, {low} to {high} at the weakest post."
            => "Messwerte werden noch nicht eingerechnet: Was die Seite „Strom“ sagt, beruht weiter auf angenommenem Gras, {low} bis {high} am schwächsten Pfahl.",

        PlotAside: "discs are what was read, the line what is expected" => "Punkte: gemessen, Linie: erwartet",

        Readings: "Readings" => "Messwerte",
        Count: "{count} in all" => "{count} insgesamt",
        CountOne: "1 in all" => "1 insgesamt",
        RowSaid: "{place}, {kind}: {value}{day}" => "{place}, {kind}: {value}{day}",
        Expected: "{expected} expected" => "{expected} erwartet",
        KindExpected: "{kind}, {expected} expected" => "{kind}, {expected} erwartet",
        Unclipped: "fence unclipped" => "Zaun abgeklemmt",
        NoDay: "no day" => "kein Tag",
        NoValue: "no figure" => "keine Zahl",
        Remove: "Remove the reading at {place}" => "Messwert herausnehmen: {place}",
        Volts: "{volts} V" => "{volts} V",

        FenceKv: "fence" => "Zaun",
        EarthKv: "earth stake" => "Erdstab",
        EnergizerKv: "energizer, unclipped" => "Gerät, abgeklemmt",
        BatteryV: "battery" => "Batterie",
        Ticking: "ticking heard" => "Ticken gehört",
        TickingValue: "ticking" => "Ticken",
        Heard: "heard" => "gehört",

        AtCorner: "Corner {number}" => "Ecke {number}",
        AtPost: "Post {number}" => "Pfahl {number}",
        AtMetres: "{length} from corner 1" => "{length} ab Ecke 1",
        AtEarth: "Earth stake" => "Erdstab",
        AtEnergizer: "Energizer" => "Gerät",
        AtBattery: "Battery" => "Batterie",
        Anywhere: "On the fence" => "Am Zaun",

        Add: "Add a reading" => "Messwert hinzufügen",
        PickPlace: "Click a post on the map or on the line below it, or type how far it is from corner 1."
            => "Einen Pfahl auf der Karte oder auf der Linie darunter anklicken, oder eintippen, wie weit es ab Ecke 1 ist.",
        TakeWeakest: "Take post {number}, the weakest as worked out"
            => "Pfahl {number} nehmen, den rechnerisch schwächsten",
        Where: "From corner 1" => "Ab Ecke 1",
        Place: "Place" => "Stelle",
        Value: "Reading" => "Messwert",
        Day: "Day, such as 2027-05-01" => "Tag, etwa 2027-05-01",
        DayShort: "Day" => "Tag",
        DayHow: "Year, month and day, such as 2027-05-01; it may stay empty."
            => "Jahr, Monat und Tag, etwa 2027-05-01; darf leer bleiben.",
        HowFence: "From a live line of the net to a probe in the soil, well away from the stakes."
            => "Von einer stromführenden Litze des Netzes zu einer Sonde im Boden, weit weg von den Erdstäben.",
        HowEarth: "From the energizer’s earth stake to a probe in the soil, well away from it."
            => "Vom Erdstab des Geräts zu einer Sonde im Boden, weit weg davon.",
        HowEnergizer: "Across the energizer’s poles with the fence unclipped."
            => "An den beiden Anschlüssen des Geräts, der Zaun abgeklemmt.",
        HowBattery: "Across the battery’s poles, the energizer switched on."
            => "An den beiden Polen der Batterie, das Gerät eingeschaltet.",
        HowTicking: "A tick that comes with every pulse: the pulse jumps over there."
            => "Ein Ticken bei jedem Impuls: Dort springt er über.",
        AddIt: "Write it down" => "Aufschreiben",
        NeedPlace: "Say where first: click a post, or type how far it is from corner 1."
            => "Erst sagen, wo: einen Pfahl anklicken oder eintippen, wie weit es ab Ecke 1 ist.",
        NeedValue: "Type what the voltmeter showed first." => "Erst eintippen, was der Zaunprüfer zeigte.",
        NotADay: "“{typed}” is no day; type year, month and day, such as {example}."
            => "„{typed}“ ist kein Tag; Jahr, Monat und Tag eintippen, etwa {example}.",
        BeyondLine: "The line is {length} long; type that or less."
            => "Die Linie ist {length} lang; das oder weniger eintippen.",
    }
}
