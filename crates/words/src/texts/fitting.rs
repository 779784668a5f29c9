//! Words of the fit to whole nets.

use crate::message::texts;

texts! {
    /// Words of the fit to whole nets.
    Fitting {
        Fit: "Fit to whole nets",
        Looking: "Looking for the nearest outline of whole panels …",
        IsWhole: "Every side is whole panels now: {sides}. The corners moved by {moved} or so.",
        WasWhole: "Every side is whole panels: {sides}.",
        IsWholeOnSlope: "Every side is whole panels along the ground now: {sides}. The corners moved by {moved} or so.",
        WasWholeOnSlope: "Every side is whole panels along the ground: {sides}.",
        NearlyOnSlope: "On this slope the sides are not quite whole panels: {sides} come nearest. The corners moved by {moved} or so.",
        Unpinned: "Every corner stands on a post, so the pins of the line before are taken out; gates look for their joins anew.",
        ShorterOnMap: "On the map they are {level} in all, for {line} of ground.",
        NotWholeOnSlope: "No outline was found whose sides are whole panels along the ground as the heights have it: corners will fall between posts. Look over the heights, or draw the corners elsewhere.",
        NoRoomOnSlope: "The outlines whose sides are whole panels along the ground leave the paddock, come too near a keep-out or cross themselves: corners will fall between posts. Draw the corners elsewhere.",
        ShortOnSlope: "Along the ground the line is {short} longer than its nets, so the run stays open. Double one panel more back.",
        PanelsDoubled: "Panels doubled back",
        DoubledBack: "{panels}, {spare}, doubled back along the line.",
        CannotFit: "No outline of whole panels: {reason}.",
        NotYet: "mend first what is found about this run, its nets and its ground",
        TakeNearest: "Take the nearest",
        Title: "{run}, fitted to whole nets",
        Sides: "Sides",
        Side: "corner {from} to {to}: {panels}, {length}",
        SideOnSlope: "corner {from} to {to}: {panels}, {length} along the ground, {level} on the map",
        OnePanel: "1 panel",
        Panels: "{panels} panels",
        Line: "Line",
        LineWhole: "{line}, all of {nets}",
        LineDoubled: "{line}, all of {nets} but {panels} ({spare}) doubled back",
        Moved: "Moved",
        MovedNearest: "the corners by {moved} (root mean square); nothing nearer exists",
        MovedBound: "the corners by {moved} (root mean square); nothing below {bound} exists",
        MovedOnSlope: "the corners by {moved} (root mean square); on a slope it is not proved that nothing nearer exists",
        Corners: "Corners",
        Corner: "{number}: {east} east, {north} north",
        NoRectangle: "No rectangle exists on an odd number of panels, so this is another four-sided outline: with one panel more doubled back a rectangle can be made.",
        DrawIn: "Ground is never level, and less than 1 % of the line is spare: set corner {corner} last and draw it in as far as the ground takes up, by {by} for {gives}.",
        Codes: "Local codes and licensed practice come before anything that this plan says.",

        // Why a run cannot be fitted.
        NoSuchRun: "{file}: there is no run “{run}”: name one of the plan's ({known}).",
        NoSuchRunAtAll: "{file}: there is no run “{run}”, as the plan has none: draw one first.",
        Open: "{file}: run “{run}” is an open line, and only a closed one is fitted: close it first.",
        UnbuiltRun: "{file}: the outline of run “{run}” cannot be built: draw at least three corners and no crossing.",
        UnbuiltBoundary: "{file}: the paddock's outline cannot be built, so nothing can be kept inside it: mend ground.boundary first.",
        UnbuiltKeepOut: "{file}: the outline of keep-out {number} cannot be built, so nothing can be kept off it: mend ground.keep_outs[{index}] first.",
        NoNets: "{file}: run “{run}” has no net, and the store has none left for it: add one.",
        BadNet: "{file}: the net “{net}” has a length or panels that no net can have: correct them in the store.",
        TooManyCorners: "{file}: run “{run}” has {corners} corners, too many to fit: leave at most {most}.",
        TooManyPanels: "{file}: the nets of run “{run}” have {panels} panels, too many to fit: at most {most}.",

        // Why no outline exists, without and with the plan's file.
        OfRun: "{file}: run “{run}” cannot be fitted: {reason}. {nearest}",
        TooFewPanels: "{panels} panels make no {corners} sides",
        NeverCloses: "with {panels} panels on {corners} sides, one side is always as long as the rest together",
        NoRoomAll: "however {panels} panels are shared out over these corners, no outline was found inside the paddock and off the keep-outs",
        NoRoomFound: "no outline of {panels} panels with these corners was found inside the paddock and off the keep-outs",
        NearestDoubled: "The nearest that closes has {panels} doubled back in place of {asked}.",
        NearestCorners: "The nearest that closes has {corners} corners.",
        NoNearest: "Nothing near it was found that does: change the sketch or the nets.",
    }
}
