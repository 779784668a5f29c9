//! Words of the list of commands.

use crate::message::texts;

texts! {
    /// Words of the list of commands.
    Commands {
        Find: "Find a command" => "Befehl suchen",
        Type: "Type what you want to do" => "Eintippen, was Sie tun möchten",
        NothingFound: "Nothing is called so." => "So heißt nichts.",
        NotNow: "not now" => "jetzt nicht",

        OfPages: "Pages" => "Seiten",
        OfPlan: "Plan" => "Plan",
        OfDrawing: "Drawing" => "Zeichnen",
        OfShaping: "Shaping" => "Formen",
        OfView: "View" => "Ansicht",

        Quit: "Quit" => "Beenden",
        GoTo: "Go to page {page}" => "Zur Seite „{page}“",
        UnrollRun: "Unroll a run" => "Auslauf abrollen",
        DrawPaddock: "Draw the paddock" => "Koppel zeichnen",
        DrawKeepOut: "Draw a keep-out" => "Sperrfläche zeichnen",
        DrawWater: "Draw water" => "Wasser zeichnen",
        PlaceCoop: "Place the coop" => "Stall setzen",
        PlaceGateway: "Place the gateway" => "Zufahrt setzen",
        DrawBranch: "Draw a branch of netting" => "Abzweig aus Netzen zeichnen",
        PlaceFurtherCoop: "Place another coop" => "Weiteren Stall setzen",
        PlaceHeight: "Place a spot of known height" => "Punkt bekannter Höhe setzen",
        DrawHazard: "Draw: {hazard}" => "Zeichnen: {hazard}",
        FitNets: "Fit the run to whole nets" => "Auslauf auf ganze Netze einpassen",
        OtherShapes: "Find other shapes of the same nets" => "Andere Formen derselben Netze finden",
        ThemeIs: "Theme: {theme}" => "Farben: {theme}",
        LanguageIs: "Language: {language}" => "Sprache: {language}",
        UnitsAre: "Units: {units}" => "Einheiten: {units}",
        Larger: "Everything larger" => "Alles größer",
        Smaller: "Everything smaller" => "Alles kleiner",
        ZoomIn: "Zoom the map in" => "Karte vergrößern",
        ZoomOut: "Zoom the map out" => "Karte verkleinern",
        LeaveTool: "Leave the tool, let go" => "Werkzeug verlassen, loslassen",
        PickNext: "Pick the next thing on the map" => "Das Nächste auf der Karte wählen",
        TurnLeft: "Turn what is picked to the left" => "Gewähltes nach links drehen",
        TurnRight: "Turn what is picked to the right" => "Gewähltes nach rechts drehen",
        TypeIt: "Type the figures of the side, corner or place that is picked" => "Maße der gewählten Seite, Ecke oder Stelle eintippen",
        NudgeIt: "Move what is picked by {little}, with Shift by {more}"
            => "Gewähltes um {little} bewegen, mit Umschalttaste um {more}",
        SlideIt: "Slide a picked side square to itself by {little}, with Shift by {more}"
            => "Gewählte Seite quer zu sich um {little} verschieben, mit Umschalttaste um {more}",
        PanIt: "Move the map while nothing is picked, with Shift further"
            => "Karte verschieben, solange nichts gewählt ist, mit Umschalttaste weiter",
        Remove: "Take out what is picked" => "Gewähltes herausnehmen",
        Keys: "Save all keys as a page to print" => "Alle Tasten als Seite zum Drucken speichern",
        KeysTitle: "Keys" => "Tasten",
        KeysFile: "keys" => "Tasten",
        Fold: "Fold the page away, or unfold it" => "Seite einklappen oder ausklappen",
    }
}
