//! Words of the first start, when the keeper has nothing but rolls.

use crate::message::texts;

texts! {
    /// Words of the first start, when the keeper has nothing but rolls.
    Rolls {
        Question: "How much netting do you have?",
        Count: "Count the posts on one roll, both ends included.",
        Rolls: "Rolls",
        LengthOfOne: "Length of one",
        PostsOnOne: "Posts on one",
        Fewer: "{label}: fewer",
        More: "{label}: more",
        Summary: "{panels} panels of {panel} on each, {line} of line in all.",
        OneDoubled: "{panels} panels of {panel} on each, {line} of line; one panel is left over and doubled back.",
        TooFew: "Four panels are the fewest that close round ground: say more rolls, or more posts on one.",
        LayItOut: "Lay it out",
        OrEnter: "Enter",
        AllElse: "All else is assumed, marked so, and yours to change.",
        LookRound: "Look round the example farm",
        BackToPlan: "Back to the plan",
        DrawFirst: "Draw the paddock first",
        BringIn: "Bring in a boundary",

        FirstTitle: "Your first run",
        FirstSentence: "It is laid out when you have said what you own.",
        AssumedUntil: "Assumed until you say",
        CanWait: "all of it can wait",
        CoopAndFlock: "Coop and flock",
        CoopIs: "{length} × {width}, {birds} hens",
        Netting: "Netting",
        NettingIs: "{height} high, one spike a post",
        Ground: "Ground",
        GroundIs: "firm clay, not wet",
        Grass: "Grass on the line",
        GrassIs: "touching",
        Energizer: "Energizer",
        EnergizerIs: "{joules} J, one earth stake",
        Mowing: "Strip, mower",
        MowingIs: "{strip}, {cut}",
        Target: "Target",
        ReadThen: "What you will read then",
        ReadGround: "how much ground the rolls close round",
        ReadCorners: "which corners lean in without a brace",
        ReadMow: "what to mow before you set up",
        ReadVolts: "what volts the far side holds",

        CodesFirst: "Local codes and licensed practice come before anything that this plan says.",

        DragIt: "Drag it onto your ground",
        DragHow: "by the ground inside it, or by the coop",
        ReadLine: "then read the line below",

        StartOwn: "Start with your own rolls",
        SidePanels: "{length} · {panels} panels",
    }
}
