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
        Choice: "Which energizer",
        ChoiceAside: "kV at the weakest post, by nets",
        ChoiceLook: "Working out which energizer holds",
        Keeps: "{name} keeps {target} at the weakest post on {likely} of these nets as they are, on {clean} when clean and dry, on {overgrown} in long wet grass.",
        KeepsNone: "none",
        KeepsOne: "1",
        KeepsMany: "up to {count}",
        KeepsAll: "{most} and more",
        LeastFor: "For {nets}: {likely} as they are, {clean} when clean and dry, {overgrown} in long wet grass. That is the least stored energy of a row like the assumed one that holds.",
        LeastJoules: "{joules} J",
        LeastOver: "over {most} J",
        AxisNets: "nets",
        ShadedGrass: "shaded: clean to long, wet grass",
        ChoiceRing: "A ring of so many nets over your earth; the plot decides, no rule of so many joules a net.",
        NoSuchRun: "{file}: no run is called “{run}”; it has {runs}.",
        NoRuns: "{file} has no run; draw one or add one to its `runs`.",
        NotWorked: "{file}: nothing can be worked out for {run}; `netfold check` names what is wrong with its nets or its earth.",
        NoWarranty: "A row of figures, not a promise: a meter at the far post decides. Local codes come first.",
    }
}
