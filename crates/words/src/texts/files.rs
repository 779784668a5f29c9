//! Words about opening, saving and what a crash left behind.

use crate::message::texts;

texts! {
    /// Words about opening, saving and what a crash left behind.
    Files {
        PlanMenu: "Plan: new, open, save" => "Plan: neu, öffnen, speichern",
        NewFromRolls: "New from rolls …" => "Neu aus Rollen …",
        NewEmpty: "New, empty" => "Neu, leer",
        Open: "Open …" => "Öffnen …",
        Save: "Save" => "Speichern",
        SaveAs: "Save as …" => "Speichern unter …",
        Example: "Look round the example farm" => "Beispielhof ansehen",
        BringIn: "Bring in a boundary …" => "Grenze einlesen …",
        NameOfPlan: "Name of the plan" => "Name des Plans",
        Size: "Size of all of it" => "Größe von allem",
        SizeAllowed: "This window allows {size}; the size you chose comes when there is room."
            => "Dieses Fenster lässt {size} zu; die gewählte Größe kommt, sobald Platz ist.",

        StateExample: "example farm" => "Beispielhof",
        StateFresh: "nothing to save yet" => "noch nichts zu speichern",
        StateNeverSaved: "not saved yet" => "noch nie gespeichert",
        StateSaved: "saved" => "gespeichert",
        StateChanged: "unsaved changes" => "nicht gespeichert",
        WindowTitle: "{name} – Netfold" => "{name} – Netfold",
        WindowTitleUnsaved: "{name}* – Netfold" => "{name}* – Netfold",

        OpenTitle: "Open a plan" => "Plan öffnen",
        SaveTitle: "Save the plan" => "Plan speichern",
        SaveTableTitle: "Save the table" => "Tabelle speichern",
        SaveKeysTitle: "Save the page of keys" => "Die Seite mit den Tasten speichern",
        BringInTitle: "Bring in a boundary" => "Grenze einlesen",
        BringHeightsTitle: "Bring in heights" => "Höhen einlesen",
        Folder: "Folder" => "Ordner",
        FileName: "File name" => "Dateiname",
        UpOneFolder: "Up one folder" => "Einen Ordner höher",
        FolderRow: "Folder {name}" => "Ordner {name}",
        FileRow: "File {name}" => "Datei {name}",
        NothingHere: "Nothing of this kind lies in this folder." => "In diesem Ordner liegt nichts dieser Art.",
        FolderUnreadable: "{folder} cannot be looked into; choose another folder."
            => "In {folder} lässt sich nicht hineinsehen; einen anderen Ordner wählen.",
        Cancel: "Leave it" => "Abbrechen",
        DoOpen: "Open it" => "Öffnen",
        DoSave: "Save it here" => "Hier speichern",
        DoReplace: "Replace it" => "Ersetzen",
        DoBringIn: "Bring it in" => "Einlesen",
        Exists: "{name} is there already. Replacing it keeps the old one beside it as a backup."
            => "{name} gibt es schon. Beim Ersetzen bleibt die alte Datei als Sicherung daneben.",
        ExistsPlain: "{name} is there already." => "{name} gibt es schon.",
        NameFirst: "Type a name for the file first." => "Erst einen Namen für die Datei eintippen.",
        BringPictureTitle: "Lay a picture underneath" => "Ein Bild unterlegen",

        SavedTitle: "Saved" => "Gespeichert",
        SavedAs: "It lies at {file}" => "Die Datei liegt unter {file}",
        CannotTitle: "That did not work" => "Das ging nicht",
        Understood: "Understood" => "Verstanden",
        SaveFailed: "{reason} The plan is still open here, and the file is as it was."
            => "{reason} Der Plan ist hier noch offen, und die Datei ist, wie sie war.",

        CloseTitle: "Save what you changed?" => "Änderungen speichern?",
        CloseText: "{name} has changes that are not saved." => "{name} hat Änderungen, die nicht gespeichert sind.",
        CloseDiscard: "Close without saving" => "Schließen ohne Speichern",
        LeaveDiscard: "Go on without saving" => "Weiter ohne Speichern",
        HalfDrawnTitle: "Leave what is half drawn?" => "Halb Gezeichnetes verwerfen?",
        HalfDrawnText: "What you are drawing is no part of the plan yet, and would be lost."
            => "Was Sie gerade zeichnen, gehört noch nicht zum Plan und ginge verloren.",
        UnreadTitle: "Leave what is typed?" => "Eingetipptes verwerfen?",
        UnreadText: "What stands in a field cannot be read, so it is no part of the plan and would be lost."
            => "Was in einem Feld steht, lässt sich nicht lesen; es gehört also nicht zum Plan und ginge verloren.",
        CloseWithoutIt: "Close without it" => "Ohne es schließen",
        LeaveWithoutIt: "Go on without it" => "Ohne es weiter",
        KeepWorking: "Keep working" => "Weiterarbeiten",

        LeftTitle: "Netfold ended without saving" => "Netfold endete ohne Speichern",
        LeftText: "{name} was left with {count} that are not saved." => "{name}: {count} nicht gespeichert.",
        LeftNeverSaved: "{name} was left and had never been saved." => "{name} blieb zurück und war nie gespeichert.",
        LeftPart: "The last of it could not be read and is kept aside, not deleted."
            => "Das Letzte davon ließ sich nicht lesen und ist beiseitegelegt, nicht gelöscht.",
        LeftOneChange: "1 change" => "1 Änderung",
        LeftChanges: "{count} changes" => "{count} Änderungen",
        LeftTake: "Take it back" => "Zurückholen",
        LeftThrow: "Throw it away" => "Verwerfen",
        LeftLater: "Ask again next time" => "Beim nächsten Mal fragen",
        LeftDamaged: "Unsaved work of an earlier time could not be read, perhaps because a newer Netfold wrote it; it is kept as {file}."
            => "Ungespeicherte Arbeit von früher ließ sich nicht lesen, vielleicht weil ein neueres Netfold sie schrieb; sie ist aufgehoben als {file}.",
        Unnamed: "A plan without a name" => "Ein Plan ohne Namen",
        GoneFile: "{reason} It was open last time, so the example farm is shown instead."
            => "{reason} Beim letzten Mal war diese Datei offen; statt ihrer ist der Beispielhof zu sehen.",
        NoBoundary: "{file} has no paddock to bring in: choose a boundary, or a plan with one."
            => "{file} hat keine Koppel zum Einlesen: eine Grenze wählen, oder einen Plan mit einer.",
        StateNotKept: "changes are not kept aside: save often" => "Änderungen werden nicht gesichert: oft speichern",
    }
}
