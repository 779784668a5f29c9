//! Words of the tools that shape what is drawn, and of the list of what was done.

use crate::message::texts;

texts! {
    /// Words of the tools that shape what is drawn, and of the list of what was done.
    Shaping {
        PickedHint: "What you pick on the map is shaped here." => "Was Sie auf der Karte auswählen, formen Sie hier.",
        Duplicate: "Double it" => "Verdoppeln",
        Delete: "Take it out" => "Herausnehmen",
        OnCorner: "on corner {number} of {name}" => "auf Ecke {number} von {name}",
        OnPost: "on post {number} of {name}" => "auf Pfahl {number} von {name}",
        OnPaddockCorner: "on corner {number} of the paddock" => "auf Ecke {number} der Koppel",
        OfBranch: "{side}, branch {branch}" => "{side}, Abzweig {branch}",
        HintFree: "Posts, corners and sides catch it. Hold Alt to let it go anywhere."
            => "Pfähle, Ecken und Seiten fangen es. Alt halten lässt es überall hin.",
        SideHint: "A drag or the arrows slide it, I puts a corner in. Enter types its length and where it points."
            => "Ziehen oder Pfeiltasten verschieben sie, I setzt eine Ecke ein. Eingabe öffnet Länge und Richtung zum Tippen.",
        PlaceHint: "Drag it to move it. Enter types where it stands." => "Ziehen verschiebt. Eingabe öffnet den Ort zum Tippen.",
        WholeHint: "Drag it to move it, the ring to turn it. Arrows move it too, the square brackets turn it."
            => "Ziehen verschiebt, Ziehen am Ring dreht. Auch Pfeiltasten verschieben, eckige Klammern drehen.",

        SidesAsideGround: "along the ground" => "am Boden entlang",
        SideTooShort: "Along the ground no side is that short here: the ground alone rises more."
            => "Am Boden entlang ist hier keine Seite so kurz: Der Boden allein steigt mehr.",
        SideNotBuilt: "No side can be built here: mend the corners of this line first."
            => "Hier lässt sich keine Seite bauen: zuerst die Ecken dieser Linie richtigstellen.",
        SideFromTo: "{from} to {to}" => "{from} bis {to}",
        SideLabel: "Length of side {from} to {to}" => "Länge der Seite {from} bis {to}",

        History: "What was done" => "Was getan wurde",
        Beginning: "as it was opened" => "wie geöffnet",
        DoneChange: "changed the plan" => "Plan geändert",
        DoneName: "named the plan" => "Plan benannt",
        DoneOutline: "drew an outline" => "Umriss gezeichnet",
        DoneMoveCorner: "moved a corner" => "Ecke verschoben",
        DoneInsertCorner: "put in a corner" => "Ecke eingefügt",
        DoneRemoveCorner: "took out a corner" => "Ecke herausgenommen",
        DoneAddRun: "added a run" => "Auslauf hinzugefügt",
        DoneRemoveRun: "took out a run" => "Auslauf herausgenommen",
        DoneRun: "changed a run" => "Auslauf geändert",
        DoneFaults: "changed the faults" => "Fehler geändert",
        DoneGrass: "changed the grass on the line" => "Gras an der Linie geändert",
        DoneGates: "changed the gates" => "Tore geändert",
        DonePins: "changed the pins" => "Anheftungen geändert",
        DoneBranches: "changed the branches" => "Abzweige geändert",
        DoneFeed: "changed energizer, earth or leads" => "Gerät, Erdung oder Leitungen geändert",
        DoneStrip: "changed the strip to mow" => "Mähstreifen geändert",
        DoneGround: "changed the ground" => "Gelände geändert",
        DonePaddock: "changed the paddock" => "Koppel geändert",
        DoneKeepOuts: "changed keep-outs or water" => "Sperrflächen oder Wasser geändert",
        DoneHazards: "changed the hazards" => "Gefahren geändert",
        DoneGateway: "changed the gateway" => "Zufahrt geändert",
        DoneHeights: "changed the heights" => "Höhen geändert",
        DoneWalls: "changed walls, hedges or fences" => "Mauern, Hecken oder Zäune geändert",
        DoneShade: "changed the shade" => "Schatten geändert",
        DoneDamp: "changed the damp ground" => "feuchte Stellen geändert",
        DoneTapePoints: "changed the known places" => "bekannte Orte geändert",
        DoneLabels: "changed words on the map" => "Beschriftungen geändert",
        DonePicture: "changed the picture beneath" => "unterlegtes Bild geändert",
        DoneStore: "changed the store" => "Lager geändert",
        DoneCoop: "changed the coop" => "Stall geändert",
        DoneReadings: "changed the readings" => "Messwerte geändert",
        DoneMove: "moved it whole" => "als Ganzes verschoben",
        DoneTurn: "turned it" => "gedreht",
        DoneDuplicate: "doubled it" => "verdoppelt",
        DoneSideLength: "set a side’s length" => "Seitenlänge gesetzt",
        DoneFitNets: "fitted it to whole nets" => "auf ganze Netze eingepasst",
        DoneCutCorner: "cut a corner" => "Ecke abgeschnitten",
        DoneBrace: "set braces" => "Abspannungen gesetzt",
        DoneTakeBrace: "took a brace back" => "Abspannung zurückgenommen",
        DoneRemove: "took something out" => "etwas herausgenommen",
        DonePaste: "pasted" => "eingefügt",
        DoneLayOut: "laid the rolls out" => "Rollen ausgelegt",
        DoneHide: "hid or showed something" => "etwas aus- oder eingeblendet",
        DoneLock: "locked or unlocked something" => "etwas gesperrt oder entsperrt",
        DoneRename: "gave it a name" => "benannt",
        DoneBringIn: "brought in from a file" => "aus einer Datei eingelesen",
        DoneTakeShape: "took a shape that was found" => "gefundene Form genommen",

        DrawKeepOut: "Keep-out" => "Sperrfläche",
        DrawWater: "Water" => "Wasser",
        PlaceCoop: "Coop" => "Stall",
        DrawOverheadLine: "Overhead line" => "Freileitung",
        DrawPublicWay: "Public way" => "Öffentlicher Weg",
        DrawOtherFence: "Other fence" => "Anderer Zaun",
        DrawForeignEarth: "Foreign earth" => "Fremde Erdung",
        HintPlaceCoop: "Click where the coop’s middle stands. Esc leaves."
            => "Dorthin klicken, wo die Mitte des Stalls steht. Esc bricht ab.",
        PlaceFurtherCoop: "Another coop" => "Weiterer Stall",
        HintMoveCoop: "Click where the coop’s middle is to stand: it moves there. “Another coop” sets down one more. Esc leaves."
            => "Dorthin klicken, wo die Mitte des Stalls stehen soll: Er kommt dorthin. „Weiterer Stall“ setzt noch einen. Esc bricht ab.",
        HintPath: "Click along it, Enter or a double click ends it. Backspace takes up the last point, Esc leaves."
            => "Daran entlang klicken, Eingabetaste oder Doppelklick beendet. Rücktaste nimmt den letzten Punkt weg, Esc bricht ab.",
        HintPoint: "Click where it is in the ground. Esc leaves." => "Die Stelle im Boden anklicken. Esc bricht ab.",
        Draw: "Draw" => "Zeichnen",
    }
}
