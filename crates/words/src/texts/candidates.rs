//! Words of the largest runs: the table's heads, and why there are none.

use crate::message::texts;

texts! {
    /// Words of the largest runs: the table's heads, and why there are none.
    Candidates {
        Square: "square",
        Rectangle: "rectangle",
        Hexagon: "six sides",
        Octagon: "eight sides",
        Round: "round",
        Free: "free",
        AtWall: "{family}, at wall {number}",
        Title: "The largest runs with {nets}, the largest first",
        OneNet: "1 net",
        Nets: "{count} nets",
        Shape: "shape",
        Area: "area",
        NoLarger: "none larger than",
        Line: "line",
        Spare: "spare",
        Corners: "corners",
        Braces: "braces",
        Strip: "strip",
        Minutes: "minutes",
        Weakest: "weakest post",
        WholePanels: "whole panels",
        Unknown: "–",
        Short: "short {length}",
        NoWarranty: "Only what is drawn is looked at. Local codes come first; walk the ground before you set up.",

        NoteOutside: "The keep-out “{name}” lies outside the paddock and makes no difference.",
        NoteOverlap: "The keep-outs “{first}” and “{second}” overlap; the runs keep off both.",
        NoteParts: "The keep-outs cut the paddock into {count} parts; each run lies in one of them.",
        NoteSlope: "The ground is not level: each shape is drawn in until its nets close along the ground. One that is short cannot be, where it lies.",
        NoteNoWall: "No wall in the plan is marked as fit to hold the birds, so no side is borrowed.",

        Refused: "{file}: {sentence}",
        RefusedAt: "{file}, {key}: {sentence}",
        NoBoundary: "There is no paddock to look in: draw its boundary first.",
        BadBoundary: "The boundary of the paddock encloses no ground: draw it anew, with at least three corners.",
        CrossedBoundary: "The boundary of the paddock crosses itself at {at}, so it is in two parts: pull the corners apart there, or keep one part.",
        BadKeepOut: "The keep-out “{name}” crosses itself or encloses nothing: draw it anew or take it out.",
        BadClearance: "A keep-out has a clearance that is no distance: state zero or more.",
        NoNets: "The store has no nets: state at least one.",
        NetsAsked: "The store has {owned} nets and {asked} were asked for: ask for 1 to {owned}, or state more.",
        BadNet: "The net “{id}” has no usable length or panels: correct it there.",
        TooFewPanels: "{panels} panels enclose no ground: ask for more nets.",
        SidesAsked: "A free outline of {asked} sides is not searched: ask for 3 to {most}.",
        NoCoop: "No coop is stated to go round: state one, or ask without it.",
        BadCoop: "The coop's length, width or clearance is no size: correct it.",
        CoopOutside: "The coop does not stand inside the paddock with its clearance, so no run can hold it: move the coop or the boundary.",
        CoopInKeepOut: "The coop stands in the keep-out “{name}” or its clearance, so no run can hold it: move one of them.",
        NothingFits: "No shape fits on the ground that the keep-outs leave: look at their outlines and clearances.",
        NothingFitsCoop: "No shape of these nets fits round the coop on this ground: ask for more nets, without the coop, or move the coop.",
    }
}
