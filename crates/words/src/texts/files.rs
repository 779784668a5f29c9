//! Words about opening, saving and what a crash left behind.

use crate::message::texts;

texts! {
    /// Words about opening, saving and what a crash left behind.
    Files {
        PlanMenu: "Plan: new, open, save",
        NewFromRolls: "New from rolls …",
        NewEmpty: "New, empty",
        Open: "Open …",
        Save: "Save",
        SaveAs: "Save as …",
        Example: "Look round the example farm",
        BringIn: "Bring in a boundary …",
        NameOfPlan: "Name of the plan",
        Size: "Size of all of it",
        Percent: "{percent} %",

        StateExample: "example farm",
        StateFresh: "nothing to save yet",
        StateNeverSaved: "not saved yet",
        StateSaved: "saved",
        StateChanged: "unsaved changes",
        WindowTitle: "{name} – Netfold",
        WindowTitleUnsaved: "{name}* – Netfold",

        OpenTitle: "Open a plan",
        SaveTitle: "Save the plan",
        SaveTableTitle: "Save the table",
        BringInTitle: "Bring in a boundary",
        BringHeightsTitle: "Bring in heights",
        Folder: "Folder",
        FileName: "File name",
        UpOneFolder: "Up one folder",
        FolderRow: "Folder {name}",
        FileRow: "File {name}",
        NothingHere: "Nothing of this kind lies in this folder.",
        FolderUnreadable: "{folder} cannot be looked into; choose another folder.",
        Cancel: "Leave it",
        DoOpen: "Open it",
        DoSave: "Save it here",
        DoReplace: "Replace it",
        DoBringIn: "Bring it in",
        Exists: "{name} is there already. Replacing it keeps the old one beside it as a backup.",
        ExistsPlain: "{name} is there already.",
        NameFirst: "Type a name for the file first.",

        CannotTitle: "That did not work",
        Understood: "Understood",
        SaveFailed: "{reason} The plan is still open here, and the file is as it was.",

        CloseTitle: "Save what you changed?",
        CloseText: "{name} has changes that are not saved.",
        CloseDiscard: "Close without saving",
        LeaveDiscard: "Go on without saving",
        KeepWorking: "Keep working",

        LeftTitle: "Netfold ended without saving",
        LeftText: "{name} was left with {count} that are not saved.",
        LeftNeverSaved: "{name} was left and had never been saved.",
        LeftPart: "The last of it could not be read and is kept aside, not deleted.",
        LeftOneChange: "1 change",
        LeftChanges: "{count} changes",
        LeftTake: "Take it back",
        LeftThrow: "Throw it away",
        LeftLater: "Ask again next time",
        LeftDamaged: "Unsaved work of an earlier time could not be read, perhaps because a newer Netfold wrote it; it is kept as {file}.",
        Unnamed: "A plan without a name",
        GoneFile: "{reason} It was open last time, so the example farm is shown instead.",
        NoBoundary: "{file} has no paddock to bring in: choose a boundary, or a plan with one.",
        StateNotKept: "changes are not kept aside: save often",
    }
}
