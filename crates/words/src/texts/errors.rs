//! What is said when a file or a command is refused: one sentence with the place and the mend.

use crate::message::texts;

texts! {
    /// What is said when a file or a command is refused: one sentence with the place and the mend.
    Errors {
        NoDisplay: "There is no display here, so the example was written to {folder} instead of opening a window.",

        // A plan file that is not read.
        PlanTooLarge: "{file} is too large for a plan ({size}; at most {most}): check that it is the right file.",
        PlanNotJson: "{file} is not JSON at line {line}, column {column}: mend it there, or open a backup.",
        PlanCutShort: "{file} ends too early, at line {line}: the end of the file is missing, so open a backup or copy it again.",
        PlanNotAPlan: "{file} is not a plan of this program: its first lines must say \"format\": \"netfold-plan\".",
        PlanOtherFormat: "{file} is not a plan of this program but says that it is “{found}”: choose a file that ends in .netfold.json.",
        PlanIsGeoJson: "{file} is GeoJSON ({found}) and not a plan: bring it in with import.",
        PlanNewer: "{file} was written by a newer version of this program (format version {version}, this one reads {reads}): bring this program up to date; the file was left as it is.",
        PlanWrongType: "{file}: {path} is {found} where {expected} belongs: correct it there.",
        PlanWrongOther: "{file}: {path} cannot be read ({problem}): correct it there.",
        PlanMissing: "{file}: {path} is missing: add it.",
        PlanNotFinite: "{file} has a number at line {line}, column {column} that is too large to be one: correct it there.",
        PlanDoubledId: "{file}: {path} is “{id}”, which another entry is called already: give one of them another id.",
        PlanUnknownId: "{file}: {path} names “{id}”, and nothing is called so: correct the name or add the entry.",

        // What stands in a plan file in place of something else.
        ANumber: "a number",
        AWholeNumber: "a whole number, zero or above,",
        AText: "a text",
        TrueOrFalse: "true or false",
        AList: "a list",
        AGroup: "a group of keys in braces",
        TwoNumbers: "a pair of numbers",
        OneOf: "one of {choices}",
        TheText: "the text “{text}”",
        AListOf: "a list of {count}",
        Nothing: "nothing (null)",

        // An edit that is not made.
        EditNoSuchRun: "There is no run “{id}” any more, so nothing was changed: choose another run.",
        EditRunExists: "Another run is called “{id}” already, so nothing was changed: choose another id.",
        EditNoSuchKeepOut: "There is no keep-out number {number} any more, so nothing was changed: choose another one.",
        EditNoSuchBranch: "There is no branch number {number} any more, so nothing was changed: choose another one.",
        EditNoSuchCorner: "There is no corner number {number} any more, so nothing was changed: choose another one.",
        EditNoSuchPlace: "There is no place number {number} in the list, so nothing was changed: choose another one.",
        EditNotFinite: "A place must be two plain numbers, so nothing was changed: type them again.",

        // GeoJSON that is not read.
        ImportTooLarge: "{file} is too large for an outline ({size}; at most {most}): cut the field out of it first.",
        ImportNotJson: "{file} is not JSON at line {line}, column {column}: save it again as GeoJSON.",
        ImportCutShort: "{file} ends too early, at line {line}: save or copy it again.",
        ImportNotFinite: "{file} has a number at line {line}, column {column} that is too large to be one: correct it there.",
        ImportNotGeoJson: "{file} is JSON but not GeoJSON, as it says nothing of its type: save the field's outline as GeoJSON.",
        ImportOtherFormat: "{file} is not GeoJSON but says that it is “{found}”: save the field's outline as GeoJSON.",
        ImportIsPlan: "{file} is a plan of this program and no GeoJSON: open it instead.",
        ImportBadShape: "{file}: {path} is not as GeoJSON has it ({problem}): correct it there or save the outline again.",
        ImportBadFile: "{file} is not as GeoJSON has it ({problem}): save the outline again.",
        ImportNoPolygon: "{file} has no polygon in it: draw the field's outline as a closed area and save it again.",
        ImportTooManyPositions: "{file} has more than {most} positions: cut the field out of it or simplify its outline.",
        ImportTooFewPositions: "{file}: the ring {path} has {positions} positions where a closed area needs at least 4, the last like the first: draw it anew.",
        ImportSwapped: "{file}: the position {path} is [{first}, {second}], which has its latitude first: GeoJSON wants longitude, then latitude, so swap them.",
        ImportNotDegrees: "{file}: the position {path} is [{first}, {second}], which is no longitude and latitude: save the outline in WGS 84 degrees.",
        ImportTooWide: "{file}: the polygon {path} is {across} across, too much for a paddock (at most {most}): cut the field out of it.",

        // A plan that is not written as GeoJSON.
        ExportNoOrigin: "{file} does not say where on the globe it lies, which GeoJSON needs: state its origin (latitude and longitude), or export SVG or PNG.",
        ExportOriginOff: "{file}: the origin (latitude {latitude}, longitude {longitude}) is not on the globe: correct it.",
        ExportTooFar: "{file}: {path} lies more than {most} from the origin, too far for GeoJSON: correct the place or move the origin.",

        // What was noticed while reading GeoJSON.
        NotePolygonLeftOut: "One other polygon was left out.",
        NotePolygonsLeftOut: "{count} other polygons were left out; the largest is the paddock.",
        NoteShapeLeftOut: "One point or line was left out.",
        NoteShapesLeftOut: "{count} points and lines were left out.",
        NoteRingClosed: "The ring {path} did not return to its start and was closed.",
        NoteOtherCoordinates: "The file names its coordinates “{name}”; they were taken as WGS 84 longitude and latitude.",

        // Files, folders and the window.
        NoDisplayForPlan: "There is no display here to show {file} on: ask for `netfold report`, `sheet` or `export` instead.",
        WindowFailed: "The window could not be opened ({reason}): try `netfold report PLAN` instead.",
        FileMissing: "{file} is not there: check the name and the folder.",
        FileForbidden: "{file} may not be read or written by you: change its permissions or choose another place.",
        FileIsFolder: "{file} is a folder: name a file in it.",
        FileUnreadable: "{file} cannot be read: check the disk and the name.",
        FileUnwritable: "{file} cannot be written: check the disk and the name; what was there is untouched.",
        FileExists: "{folder} already holds {file}: name another folder.",
        FolderMissing: "The folder of {file} is not there: make it first.",
        FolderUnmakable: "The folder {folder} cannot be made: check the name and whose the folder above it is.",
        DiskFull: "There is no room to write {file}: free some; what was there is untouched.",
        SheetNoRuns: "{file} has no run to make a sheet of: draw one first.",
        NoSheet: "{file}: the sheet cannot be made: {reason}.",
    }
}
