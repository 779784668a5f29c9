//! The printed sheet.

use crate::message::texts;

texts! {
    /// The printed sheet.
    Sheet {
        // Head and foot.
        ForDay: "for {day}",
        Day: "{weekday} {day} {month} {year}",
        Monday: "Monday",
        Tuesday: "Tuesday",
        Wednesday: "Wednesday",
        Thursday: "Thursday",
        Friday: "Friday",
        Saturday: "Saturday",
        Sunday: "Sunday",
        January: "January",
        February: "February",
        March: "March",
        April: "April",
        May: "May",
        June: "June",
        July: "July",
        August: "August",
        September: "September",
        October: "October",
        November: "November",
        December: "December",
        PageOf: "sheet {page} of {pages}",
        Assumed: "{count} figures rest on what the plan does not say; the report lists them.",
        AssumedOne: "One figure rests on what the plan does not say; the report lists it.",

        // The row of figures.
        NetsFigure: "nets, {length}",
        NetFigure: "net, {length}",
        PostsFigure: "posts",
        BracesFigure: "braces",
        BraceFigure: "brace",
        ToMow: "to mow first",
        ForOnePerson: "for one person",
        Minutes: "{minutes} min",
        WeakestNotMeasured: "weakest post,\nnot measured yet",
        WeakestMeasured: "weakest, post {post}",
        NotWorkedOut: "not worked out",
        Kilovolts: "kV",

        // The map.
        Scale: "1:{scale}",

        // Dangers.
        Dangers: "Look out here",
        NotLaid: "This run could not be laid out: see what the report finds wrong with it.",

        // Corners.
        Corners: "Corners and braces",
        AlongTheLine: "lengths in {unit}, along from corner 1",
        HeadAlong: "along",
        HeadNext: "to next",
        HeadTurn: "turn",
        HeadPost: "post",
        HeadCorner: "the corner",
        HeadStake: "stake off the net",
        End: "end",
        WillLean: "will lean in: brace it",
        MayLean: "may lean: better braced",
        Stands: "stands",
        EndWillLean: "open end: brace it",
        Braced: "braced as planned",
        Outside: "{off} outside",
        Inside: "{off} inside",
        InLine: "{off} in line",
        CornersNotJudged: "The pull at the corners could not be worked out.",
        NoCorners: "The line has no corner that turns 5° or more.",

        // Volts.
        Readings: "Readings",
        ReadingsHow: "expected above, yours in the box",
        ReadingsHowUnmeasured: "not measured yet: expected above, yours in the box",
        FeedPoint: "feed point",
        PostNumber: "post {post}",
        EarthStake: "earth stake",
        Likely: "about {kv}",
        Weakest: "weakest",
        Farthest: "far end",
        InBetween: "in between",
        Along: "{off} along",
        ToAProbe: "to a soil probe",
        NoVolts: "Volts could not be worked out.",

        // Take along.
        TakeAlong: "Take along",
        NetsOf: "nets “{kind}”, {length}",
        NetOf: "net “{kind}”, {length}",
        Guys: "guys with stakes",
        Guy: "guy with its stake",
        AdvisedGuys: "more guys, advised",
        AdvisedGuy: "more guy, advised",
        EarthStakes: "earth stakes, {length}",
        EarthStakeOf: "earth stake, {length}",
        Energizer: "energizer and lead",
        EnergizerOf: "energizer “{kind}”, lead",
        Signs: "warning signs for the way",
        Tools: "voltmeter, hammer, tape, ties",
        NetMass: "{mass} of netting",

        // In this order.
        Order: "In this order",
        OrderLook: "Look up, ask what lies buried",
        OrderMow: "Mow the strip, {passes} passes",
        OrderMowOnce: "Mow the strip, one pass",
        OrderShut: "Birds shut in, energizer off",
        OrderStart: "First post {off} past corner {corner}",
        OrderStartAt: "First post at corner {corner}",
        OrderStartAlong: "First post {off} along the line",
        OrderToward: "Lay on toward corner {corner}",
        OrderOnward: "Lay on along the line",
        OrderSpikes: "Spikes in full depth, joins tied",
        OrderBrace: "Braces, as listed",
        OrderEarth: "Earth, lead, switch on",
        OrderRead: "Read {first} to {last}, then open",

        // Cautions.
        BeforeYouStart: "Before you start",
        NoProof: "no proof that a fence is safe or lawful",
        CautionOff: "Energizer off and lead unclipped before you touch net, stake or join; test first.",
        CautionPeople: "Keep children, pets and people with heart devices away, and your head off the net.",
        CautionTwo: "One energizer to a fence, its earth {off} from any other earth; no barbed wire near.",
        CautionBuried: "Ask about buried pipes and cables before driving stakes; keep metal stakes off the net.",
        CautionOverhead: "Keep out from under power lines and carry posts level; signs where the public passes.",
        CautionMow: "Mow with birds, children, net and cord well clear; at thunder stop and switch off.",
        CodesFirst: "Local codes and licensed practice come before anything on this sheet.",
    }
}
