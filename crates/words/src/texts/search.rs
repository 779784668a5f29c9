//! Further words by which a command is found: what a keeper may call it. They are searched and never shown.

use crate::message::texts;

texts! {
    /// Further words by which a command is found.
    Search {
        Ground: "paddock field pasture keep-out well pond hazard soil heights slope picture"
            => "Koppel Weide Wiese Sperrfläche Brunnen Teich Gefahr Boden Höhen Hang Bild",
        Run: "net netting fence corner post brace strip mowing coop hens gate pin wind minutes"
            => "Netz Zaun Ecke Pfosten Abspannung Streifen Mähen Stall Hennen Tor Anheftung Wind Minuten",
        Power: "volts kV energizer charger earth stake leakage grass joules readings fault"
            => "Volt kV Weidezaungerät Erdung Erdstab Ableitung Gras Joule Messung Fehler",
        Moves: "next run season rest days tomorrow" => "nächster Auslauf Saison Ruhe Tage morgen",
        Book: "journal notes readings diary record" => "Tagebuch Notizen Messungen Aufzeichnungen",
        Sheet: "print paper PDF packing list" => "drucken Papier PDF Packliste Druck",
        Quit: "exit close leave end" => "schließen verlassen Ende Schluss",
        Save: "store keep file" => "sichern Datei ablegen",
        Open: "load file plan" => "laden Datei Plan",
        Undo: "back revert" => "zurück",
        Gateway: "gate entrance way in" => "Tor Einfahrt Zufahrt",
        Picture: "underlay photo aerial image map" => "Unterlage Foto Luftbild Karte Bild",
        Feed: "energizer charger volts live lead" => "Weidezaungerät Gerät Volt Zuleitung",
        Coop: "hens house birds flock" => "Hennen Haus Vögel Herde",
        KeepOut: "well pond tree garden" => "Brunnen Teich Baum Garten",
        Fit: "whole all overview" => "Ganzes alles Überblick",
        Theme: "theme colour color dark light contrast night" => "Thema Design dunkel hell Kontrast Nacht",
        Language: "language English German translate" => "Englisch Deutsch Übersetzung",
        Units: "metres feet acres imperial metric" => "Meter Fuß metrisch Maße",
        Size: "size zoom text scale interface" => "Größe Zoom Schrift Skalierung Oberfläche",
        Keys: "shortcuts help PDF paper" => "Tastenkürzel Hilfe PDF Papier drucken",
    }
}
