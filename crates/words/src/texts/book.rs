//! Words of the page about readings.

use crate::message::texts;

texts! {
    /// Words of the page about readings.
    Book {
        Title: "The book",
        OfRun: "of run {number}",
        TickingSign: "ticks",

        NoRun: "No run yet: lay one out first, then write down here what you read on it.",
        ToRunPage: "Lay out a run",
        NothingRead: "Nothing was read on this run yet. One reading at the weakest post tells more than any figure here.",
        NoFenceRead: "No post of this run was read yet. One reading at the weakest post tells more than any figure here.",
        WeakestRead: "{place} is the weakest that was read: {read}{day}, where {likely} was expected.",
        WeakestReadAlone: "{place} is the weakest that was read: {read}{day}.",
        OnDay: " on {day}",
        UnderTarget: "That is under the {target} that you ask for.",
        NotFitted: "Readings are not fitted yet: what the page Power says rests on assumed grass as before, {low} to {high} at the weakest post.",

        PlotAside: "discs are what was read, the line what is expected",

        Readings: "Readings",
        Count: "{count} in all",
        CountOne: "1 in all",
        RowSaid: "{place}, {kind}: {value}{day}",
        Expected: "{expected} expected",
        KindExpected: "{kind}, {expected} expected",
        Unclipped: "fence unclipped",
        NoDay: "no day",
        NoValue: "no figure",
        Remove: "Remove the reading at {place}",
        Volts: "{volts} V",

        FenceKv: "fence",
        EarthKv: "earth stake",
        EnergizerKv: "energizer, unclipped",
        BatteryV: "battery",
        Ticking: "ticking heard",
        TickingValue: "ticking",
        Heard: "heard",

        AtCorner: "Corner {number}",
        AtPost: "Post {number}",
        AtMetres: "{length} from corner 1",
        AtEarth: "Earth stake",
        AtEnergizer: "Energizer",
        AtBattery: "Battery",
        Anywhere: "On the fence",

        Add: "Add a reading",
        PickPlace: "Click a post on the map or on the line below it, or type how far it is from corner 1.",
        TakeWeakest: "Take post {number}, the weakest as worked out",
        Where: "From corner 1",
        Place: "Place",
        Value: "Reading",
        Day: "Day, such as 2027-05-01",
        DayShort: "Day",
        DayHow: "Year, month and day, such as 2027-05-01; it may stay empty.",
        HowFence: "From a live line of the net to a probe in the soil, well away from the stakes.",
        HowEarth: "From the energizer's earth stake to a probe in the soil, well away from it.",
        HowEnergizer: "Across the energizer's poles with the fence unclipped.",
        HowBattery: "Across the battery's poles, the energizer switched on.",
        HowTicking: "A tick that comes with every pulse: the pulse jumps over there.",
        AddIt: "Write it down",
        NeedPlace: "Say where first: click a post, or type how far it is from corner 1.",
        NeedValue: "Type what the voltmeter showed first.",
        NotADay: "“{typed}” is no day; type year, month and day, such as {example}.",
        BeyondLine: "The line is {length} long; type that or less.",
    }
}
