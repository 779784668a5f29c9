//! Words of the tools that shape what is drawn, and of the list of what was done.

use crate::message::texts;

texts! {
    /// Words of the tools that shape what is drawn, and of the list of what was done.
    Shaping {
        Duplicate: "Double it",
        Delete: "Take it out",
        SecondOf: "{name}, a second",
        OnCorner: "on corner {number} of {name}",
        OnPost: "on post {number} of {name}",
        OnPaddockCorner: "on corner {number} of the paddock",
        OfBranch: "{side}, branch {branch}",
        HintFree: "Posts and corners catch it. Hold Alt to let it go anywhere.",
        WholeHint: "Drag it to move it, the ring to turn it. Arrows move it too, the square brackets turn it.",

        Sides: "Sides",
        SidesAside: "type a length",
        SidesAsideGround: "along the ground",
        SideTooShort: "Along the ground no side is that short here: the ground alone rises more.",
        SideFromTo: "{from} to {to}",
        SideLabel: "Length of side {from} to {to}",
        SidePanels: "{panels} panels",

        History: "What was done",
        Beginning: "as it was opened",
        DoneChange: "changed the plan",
        DoneName: "named the plan",
        DoneOutline: "drew an outline",
        DoneMoveCorner: "moved a corner",
        DoneInsertCorner: "put in a corner",
        DoneRemoveCorner: "took out a corner",
        DoneAddRun: "added a run",
        DoneRemoveRun: "took out a run",
        DoneRun: "changed a run",
        DoneGround: "changed the ground",
        DoneStore: "changed the store",
        DoneCoop: "changed the coop",
        DoneReadings: "changed the readings",
        DoneMove: "moved it whole",
        DoneTurn: "turned it",
        DoneDuplicate: "doubled it",
        DoneSideLength: "set a side’s length",
        DoneFitNets: "fitted it to whole nets",
        DoneCutCorner: "cut a corner",
        DoneBrace: "set braces",
        DoneTakeBrace: "took a brace back",
        DoneTakeShape: "took a shape that was found",

        DrawKeepOut: "Keep-out",
        DrawWater: "Water",
        PlaceCoop: "Coop",
        DrawOverheadLine: "Overhead line",
        DrawPublicWay: "Public way",
        DrawOtherFence: "Other fence",
        DrawForeignEarth: "Foreign earth",
        HintPlaceCoop: "Click where the coop’s middle stands. Esc leaves.",
        HintPath: "Click along it, Enter or a double click ends it. Backspace takes up the last point, Esc leaves.",
        HintPoint: "Click where it is in the ground. Esc leaves.",
        Draw: "Draw",
        Water: "Water",
    }
}
