//! Words of the page about where the flock goes next.

use crate::message::texts;

texts! {
    /// Words of the page about where the flock goes next.
    Moves {
        Title: "Where next",
        FromRun: "from run {number}",
        Sentence: "Leave one side standing and carry the rest of the netting over it.",
        NoRun: "No run yet: lay one out first, then see here where it may go.",
        ToRunPage: "Lay out a run",
        CannotMove: "This outline encloses no ground that could be moved; the findings on the page Run say why.",

        OverWhich: "Over which side",
        TurnOver: "Turn over",
        Shift: "Shift over",
        TurnOverSays: "Mirrored in the side: it stays standing from end to end.",
        ShiftSays: "Pushed straight over the side, as deep as the run is.",
        Side: "Side {from}–{to}",
        SideRow: "{side}, {length}, {panels}",
        OnePanel: "1 panel",
        Panels: "{count} panels",

        NextHead: "Turned over side {from}–{to}",
        NextHeadShift: "Shifted over side {from}–{to}",
        NettingStays: "netting stays",
        PostsStay: "posts stay",
        PostsMove: "posts to move",
        NothingStays: "Nothing stays standing: pushed over this side the run meets it in a corner alone. Turned over it, the whole side stays.",
        NotLaid: "The nets of this run cannot be laid, so what stays is not known.",
        Nets: "Nets that stay",
        NetsWhole: "{whole} whole, {part} in part",
        NetsPart: "{part} in part",
        NetsNone: "none",
        ShortOnSlope: "On the slope there its nets are {short} short along the ground: once it is the run, draw in a corner away from the side that stays.",
        FreshGround: "Fresh ground",
        LeftToMow: "Left to mow",
        LeftToMowFigures: "{area}, {minutes} min",
        GrazedAgain: "Grazed twice",
        Paddock: "The paddock",
        PaddockInside: "it lies inside",
        PaddockLeft: "it leaves the paddock",
        NoPaddock: "none is drawn",
        KeepOuts: "Keep-outs",
        KeepOutsClear: "it keeps off them",
        KeepOutsMet: "it does not keep off them",
        KeepOutsNone: "none are drawn",
        Coop: "The coop",
        CoopTowed: "has to be towed there",
        CoopInside: "stands inside already",
        Weakest: "Weakest post",
        WeakestRange: "{range} kV, not measured",
        NotKnown: "cannot be worked out",
        NoWarranty: "Only what is drawn is looked at. Local codes come first; walk the ground before you move.",

        Keep: "Keep it as the next run",
        Kept: "This ground is {run} of the plan already.",
        TakeInHand: "Take {run} in hand",
        Runs: "Runs of the plan",
    }
}
