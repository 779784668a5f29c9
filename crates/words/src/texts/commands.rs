//! Words of the list of commands.

use crate::message::texts;

texts! {
    /// Words of the list of commands.
    Commands {
        Find: "Find a command",
        Type: "Type what you want to do",
        NothingFound: "Nothing is called so.",
        NotNow: "not now",

        OfPages: "Pages",
        OfPlan: "Plan",
        OfDrawing: "Drawing",
        OfShaping: "Shaping",
        OfView: "View",

        GoTo: "Go to page {page}",
        UnrollRun: "Unroll a run",
        DrawPaddock: "Draw the paddock",
        DrawKeepOut: "Draw a keep-out",
        DrawWater: "Draw water",
        PlaceCoop: "Place the coop",
        PlaceGateway: "Place the way in",
        DrawBranch: "Draw a branch of netting",
        PlaceHeight: "Place a spot of known height",
        DrawHazard: "Draw: {hazard}",
        FitNets: "Fit the run to whole nets",
        OtherShapes: "Find other shapes of the same nets",
        ThemeIs: "Theme: {theme}",
        LanguageIs: "Language: {language}",
        UnitsAre: "Units: {units}",
        Larger: "Everything larger",
        Smaller: "Everything smaller",
        ZoomIn: "Zoom the map in",
        ZoomOut: "Zoom the map out",
        LeaveTool: "Leave the tool, let go",
        PickNext: "Pick the next thing on the map",
        TurnLeft: "Turn what is picked to the left",
        TurnRight: "Turn what is picked to the right",
        NudgeIt: "Move what is picked by 0.1 m, with Shift by 1 m",
        Remove: "Take out what is picked",
        Keys: "Save all keys as a page to print",
        KeysTitle: "Keys",
        KeysFile: "keys",
        Fold: "Fold the page away, or unfold it",
    }
}
