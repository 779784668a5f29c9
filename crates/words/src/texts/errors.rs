//! What is said when a file or a command is refused: one sentence with the place and the mend.

use crate::message::texts;

texts! {
    /// What is said when a file or a command is refused: one sentence with the place and the mend.
    Errors {
        Quoted: "“{name}”" => "„{name}“",
        NoDisplay: "There is no display here, so the example was written to {folder} instead of opening a window."
            => "Hier gibt es keinen Bildschirm, darum wurde das Beispiel nach {folder} geschrieben, statt ein Fenster zu öffnen.",

        // A plan file that is not read.
        PlanTooLarge: "{file} is too large for a plan ({size}; at most {most}): check that it is the right file."
            => "{file} ist zu groß für einen Plan ({size}; höchstens {most}): prüfen, ob es die richtige Datei ist.",
        PlanNotJson: "{file} is not JSON at line {line}, column {column}: mend it there, or open a backup."
            => "{file} ist in Zeile {line}, Spalte {column} kein JSON: dort berichtigen oder eine Sicherung öffnen.",
        PlanCutShort: "{file} ends too early, at line {line}: the end of the file is missing, so open a backup or copy it again."
            => "{file} endet zu früh, in Zeile {line}: Das Ende der Datei fehlt, also eine Sicherung öffnen oder die Datei neu kopieren.",
        PlanNotAPlan: "{file} is not a plan of this program: its first lines must say \"format\": \"netfold-plan\"."
            => "{file} ist kein Plan dieses Programms: In den ersten Zeilen muss \"format\": \"netfold-plan\" stehen.",
        PlanOtherFormat: "{file} is not a plan of this program but says that it is “{found}”: choose a file that ends in .netfold.json."
            => "{file} ist kein Plan dieses Programms, sondern nennt sich „{found}“: eine Datei wählen, die auf .netfold.json endet.",
        PlanIsGeoJson: "{file} is GeoJSON ({found}) and not a plan: bring it in with import."
            => "{file} ist GeoJSON ({found}) und kein Plan: mit import einlesen.",
        PlanNewer: "{file} was written by a newer version of this program (format version {version}, this one reads {reads}): bring this program up to date; the file was left as it is."
            => "{file} wurde von einer neueren Version dieses Programms geschrieben (Formatversion {version}, diese hier liest {reads}): das Programm auf den neuesten Stand bringen; die Datei blieb, wie sie ist.",
        PlanWrongType: "{file}: {path} is {found} where {expected} belongs: correct it there."
            => "{file}: {path} ist {found}, wo {expected} hingehört: dort berichtigen.",
        PlanWrongOther: "{file}: {path} cannot be read ({problem}): correct it there."
            => "{file}: {path} kann nicht gelesen werden ({problem}): dort berichtigen.",
        PlanMissing: "{file}: {path} is missing: add it." => "{file}: {path} fehlt: hinzufügen.",
        PlanNotFinite: "{file} has a number at line {line}, column {column} that is too large to be one: correct it there."
            => "{file} hat in Zeile {line}, Spalte {column} eine Zahl, die zu groß ist: dort berichtigen.",
        PlanDoubledId: "{file}: {path} is “{id}”, which another entry is called already: give one of them another id."
            => "{file}: {path} ist „{id}“, und so heißt schon ein anderer Eintrag: einem von beiden eine andere id geben.",
        PlanUnknownId: "{file}: {path} names “{id}”, and nothing is called so: correct the name or add the entry."
            => "{file}: {path} nennt „{id}“, und nichts heißt so: den Namen berichtigen oder den Eintrag hinzufügen.",

        // What stands in a plan file in place of something else.
        ANumber: "a number" => "eine Zahl",
        AWholeNumber: "a whole number, zero or above," => "eine ganze Zahl, null oder größer,",
        AText: "a text" => "ein Text",
        TrueOrFalse: "true or false" => "true oder false",
        AList: "a list" => "eine Liste",
        AGroup: "a group of keys in braces" => "eine Gruppe von Schlüsseln in geschweiften Klammern",
        TwoNumbers: "a pair of numbers" => "ein Zahlenpaar",
        OneOf: "one of {choices}" => "eines von {choices}",
        TheText: "the text “{text}”" => "der Text „{text}“",
        AListOf: "a list of {count}" => "eine Liste von {count}",
        Nothing: "nothing (null)" => "nichts (null)",

        // An edit that is not made.
        EditNoSuchRun: "There is no run “{id}” any more, so nothing was changed: choose another run."
            => "Den Auslauf „{id}“ gibt es nicht mehr, darum wurde nichts geändert: einen anderen Auslauf wählen.",
        EditRunExists: "Another run is called “{id}” already, so nothing was changed: choose another id."
            => "Ein anderer Auslauf heißt schon „{id}“, darum wurde nichts geändert: eine andere id wählen.",
        EditNoSuchKeepOut: "There is no keep-out number {number} any more, so nothing was changed: choose another one."
            => "Die Sperrfläche Nummer {number} gibt es nicht mehr, darum wurde nichts geändert: eine andere wählen.",
        EditNoSuchBranch: "There is no branch number {number} any more, so nothing was changed: choose another one."
            => "Den Abzweig Nummer {number} gibt es nicht mehr, es wurde daher nichts geändert: einen anderen wählen.",
        EditNoSuchCorner: "There is no corner number {number} any more, so nothing was changed: choose another one."
            => "Die Ecke Nummer {number} gibt es nicht mehr, darum wurde nichts geändert: eine andere wählen.",
        EditNoSuchPlace: "There is no place number {number} in the list, so nothing was changed: choose another one."
            => "Den Platz Nummer {number} gibt es in der Liste nicht, darum wurde nichts geändert: einen anderen wählen.",
        EditNotFinite: "A place must be two plain numbers, so nothing was changed: type them again."
            => "Ein Ort besteht aus zwei einfachen Zahlen, darum wurde nichts geändert: sie noch einmal eintippen.",
        EditNoSuchWall: "There is no wall number {number} any more, so nothing was changed: choose another one." => "Es gibt keine Mauer Nummer {number} mehr, darum ist nichts geändert: Wählen Sie eine andere.",
        EditNoSuchDamp: "There is no damp ground number {number} any more, so nothing was changed: choose another one." => "Es gibt keinen feuchten Boden Nummer {number} mehr, darum ist nichts geändert: Wählen Sie einen anderen.",
        EditNoSuchHazard: "There is no danger number {number} any more, so nothing was changed: choose another one." => "Es gibt keine Gefahr Nummer {number} mehr, darum ist nichts geändert: Wählen Sie eine andere.",
        EditNoSuchShade: "There is no shade number {number} any more, so nothing was changed: choose another one." => "Es gibt keinen Schatten Nummer {number} mehr, darum ist nichts geändert: Wählen Sie einen anderen.",

        // GeoJSON that is not read.
        ImportTooLarge: "{file} is too large for an outline ({size}; at most {most}): cut the field out of it first."
            => "{file} ist zu groß für einen Umriss ({size}; höchstens {most}): erst die Weide daraus ausschneiden.",
        ImportNotJson: "{file} is not JSON at line {line}, column {column}: save it again as GeoJSON."
            => "{file} ist in Zeile {line}, Spalte {column} kein JSON: noch einmal als GeoJSON speichern.",
        ImportCutShort: "{file} ends too early, at line {line}: save or copy it again."
            => "{file} endet zu früh, in Zeile {line}: noch einmal speichern oder kopieren.",
        ImportNotFinite: "{file} has a number at line {line}, column {column} that is too large to be one: correct it there."
            => "{file} hat in Zeile {line}, Spalte {column} eine Zahl, die zu groß ist: dort berichtigen.",
        ImportNotGeoJson: "{file} is JSON but not GeoJSON, as it says nothing of its type: save the field’s outline as GeoJSON."
            => "{file} ist JSON, aber kein GeoJSON, denn es nennt keinen type: den Umriss der Weide als GeoJSON speichern.",
        ImportOtherFormat: "{file} is not GeoJSON but says that it is “{found}”: save the field’s outline as GeoJSON."
            => "{file} ist kein GeoJSON, sondern nennt sich „{found}“: den Umriss der Weide als GeoJSON speichern.",
        ImportIsPlan: "{file} is a plan of this program and no GeoJSON: open it instead."
            => "{file} ist ein Plan dieses Programms und kein GeoJSON: stattdessen öffnen.",
        ImportBadShape: "{file}: {path} is not as GeoJSON has it ({problem}): correct it there or save the outline again."
            => "{file}: {path} ist nicht, wie GeoJSON es verlangt ({problem}): dort berichtigen oder den Umriss neu speichern.",
        ImportBadFile: "{file} is not as GeoJSON has it ({problem}): save the outline again."
            => "{file} ist nicht, wie GeoJSON es verlangt ({problem}): den Umriss neu speichern.",
        ImportNoPolygon: "{file} has no polygon in it: draw the field’s outline as a closed area and save it again."
            => "{file} enthält kein Polygon: den Umriss der Weide als geschlossene Fläche zeichnen und neu speichern.",
        ImportTooManyPositions: "{file} has more than {most} positions: cut the field out of it or simplify its outline."
            => "{file} hat mehr als {most} Punkte: die Weide daraus ausschneiden oder ihren Umriss vereinfachen.",
        ImportTooFewPositions: "{file}: the ring {path} has {positions} positions where a closed area needs at least 4, the last like the first: draw it anew."
            => "{file}: Der Ring {path} hat {positions} Punkte, eine geschlossene Fläche braucht aber mindestens 4, der letzte wie der erste: neu zeichnen.",
        ImportSwapped: "{file}: the position {path} is [{first}, {second}], which has its latitude first: GeoJSON wants longitude, then latitude, so swap them."
            => "{file}: Der Punkt {path} ist [{first}, {second}], also mit der Breite zuerst: GeoJSON will erst die Länge, dann die Breite, also vertauschen.",
        ImportNotDegrees: "{file}: the position {path} is [{first}, {second}], which is no longitude and latitude: save the outline in WGS 84 degrees."
            => "{file}: Der Punkt {path} ist [{first}, {second}], und das sind keine Länge und Breite: den Umriss in Grad (WGS 84) speichern.",
        ImportTooWide: "{file}: the polygon {path} is {across} across, too much for a paddock (at most {most}): cut the field out of it."
            => "{file}: Das Polygon {path} misst {across}, zu viel für eine Koppel (höchstens {most}): die Weide daraus ausschneiden.",

        // A plan that is not written as GeoJSON.
        ExportNoOrigin: "{file} does not say where on the globe it lies, which GeoJSON needs: state its origin (latitude and longitude), or export SVG or PNG."
            => "{file} sagt nicht, wo auf der Erde es liegt, und GeoJSON braucht das: den Nullpunkt angeben (Breite und Länge) oder SVG oder PNG exportieren.",
        ExportOriginOff: "{file}: the origin (latitude {latitude}, longitude {longitude}) is not on the globe: correct it."
            => "{file}: Der Nullpunkt (Breite {latitude}, Länge {longitude}) liegt nicht auf der Erde: berichtigen.",
        ExportTooFar: "{file}: {path} lies more than {most} from the origin, too far for GeoJSON: correct the place or move the origin."
            => "{file}: {path} liegt mehr als {most} vom Nullpunkt, zu weit für GeoJSON: die Stelle berichtigen oder den Nullpunkt verschieben.",

        // What was noticed while reading GeoJSON.
        NotePolygonLeftOut: "One other polygon was left out." => "Ein weiteres Polygon wurde weggelassen.",
        NotePolygonsLeftOut: "{count} other polygons were left out; the largest is the paddock."
            => "{count} weitere Polygone wurden weggelassen; das größte ist die Koppel.",
        NoteShapeLeftOut: "One point or line was left out." => "Ein Punkt oder eine Linie wurde weggelassen.",
        NoteShapesLeftOut: "{count} points and lines were left out." => "{count} Punkte und Linien wurden weggelassen.",
        NoteRingClosed: "The ring {path} did not return to its start and was closed."
            => "Der Ring {path} kehrte nicht zum Anfang zurück und wurde geschlossen.",
        NoteOtherCoordinates: "The file names its coordinates “{name}”; they were taken as WGS 84 longitude and latitude."
            => "Die Datei nennt ihre Koordinaten „{name}“; sie wurden als Länge und Breite in WGS 84 genommen.",

        // Files, folders and the window.
        NoDisplayForPlan: "There is no display here to show {file} on: ask for `netfold report`, `sheet` or `export` instead."
            => "Hier gibt es keinen Bildschirm, um {file} zu zeigen: stattdessen `netfold report`, `sheet` oder `export` aufrufen.",
        WindowFailed: "The window could not be opened ({reason}): try `netfold report PLAN` instead."
            => "Das Fenster ließ sich nicht öffnen ({reason}): stattdessen `netfold report PLAN` versuchen.",
        FileMissing: "{file} is not there: check the name and the folder."
            => "{file} ist nicht da: Namen und Ordner prüfen.",
        FileForbidden: "{file} may not be read or written by you: change its permissions or choose another place."
            => "{file} dürfen Sie nicht lesen oder schreiben: die Zugriffsrechte ändern oder einen anderen Ort wählen.",
        FileIsFolder: "{file} is a folder: name a file in it." => "{file} ist ein Ordner: eine Datei darin nennen.",
        FileUnreadable: "{file} cannot be read: check the disk and the name."
            => "{file} kann nicht gelesen werden: Datenträger und Namen prüfen.",
        FileUnwritable: "{file} cannot be written: check the disk and the name; what was there is untouched."
            => "{file} kann nicht geschrieben werden: Datenträger und Namen prüfen; was dort stand, ist unberührt.",
        FileExists: "{folder} already holds {file}: name another folder."
            => "{folder} enthält schon {file}: einen anderen Ordner nennen.",
        FolderMissing: "The folder of {file} is not there: make it first."
            => "Den Ordner von {file} gibt es nicht: erst anlegen.",
        FolderUnmakable: "The folder {folder} cannot be made: check the name and whose the folder above it is."
            => "Der Ordner {folder} lässt sich nicht anlegen: den Namen prüfen und wem der Ordner darüber gehört.",
        DiskFull: "There is no room to write {file}: free some; what was there is untouched."
            => "Für {file} ist kein Platz mehr: Platz schaffen; was dort stand, ist unberührt.",
        SheetNoRuns: "{file} has no run to make a sheet of: draw one first."
            => "{file} hat keinen Auslauf für ein Blatt: erst einen zeichnen.",
        NoSheet: "{file}: the sheet cannot be made: {reason}."
            => "{file}: Das Blatt lässt sich nicht machen: {reason}.",
    }
}
