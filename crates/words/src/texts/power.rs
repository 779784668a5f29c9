//! Words of the choice of an energizer, the pulse over time, the earth and what an animal feels.

use crate::message::texts;

texts! {
    /// Words of the choice of an energizer, the pulse over time, the earth and what an animal feels.
    Power {
        Title: "What {run} needs to keep {target} at its weakest post",
        FenceIs: "The fence is a ring of so many nets, fed where its chain starts, over an earth of {ohm} Ω; clean, as it is now, and in long wet grass.",
        Energizer: "energizer",
        Stored: "stored",
        OfNets: "{count} nets",
        OneNet: "1 net",
        Holds: "holds on",
        None: "none",
        Upto: "up to {count}",
        LeastStored: "Least stored energy that holds, J",
        Clean: "clean",
        AsItIs: "as it is",
        Overgrown: "long, wet",
        NotWithin: "over {most}",
        NoSuchRun: "{file}: no run is called “{run}”; it has {runs}.",
        NoRuns: "{file} has no run; draw one or add one to its `runs`.",
        NotWorked: "{file}: nothing can be worked out for {run}; `netfold check` names what is wrong with its nets or its earth.",
        NoWarranty: "A row of figures, not a promise: a meter at the far post decides. Local codes come first.",
    }
}
