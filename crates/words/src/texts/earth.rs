//! Earth stakes on the map: placed, dragged, one that holds a corner as well, and how far off what each stands.

use crate::message::texts;

texts! {
    /// Earth stakes on the map: placed, dragged, one that holds a corner as well, and how far off what each stands.
    Earth {
        PlaceStake: "Place on the map",
        OneMoreHere: "One more on the map",
        HintStake: "Click where the earth stake goes: damp ground, off the net; a brace's stake takes it in. Esc leaves.",
        StakeSaid: "Earth stake {number}: {said}." => "Erdstab {number}: {said}.",
        AndNext: "{said}, {next}" => "{said}, {next}",
        StakeOf: "Earth stake {number} of {run}",
        StakeRow: "Stake {number}",
        OffTheNet: "{off} off the net",
        FromTheFeed: "{off} from the feed point",
        FromTheNext: "{off} from the next stake",
        FromForeign: "{off} from {hazard}",
        FromRun: "{off} from the earth of {run}",
        HoldsCorner: "holds corner {number} too",
        HoldsEnd: "holds an end too",
        NotPlaced: "drawn in a row, for its place is not stated: drag it to where it stands",
        OnePlaced: "1 stake of {length}, where it stands",
        Placed: "{count} stakes of {length}, each where it stands",
        TakeOut: "Take out stake {number}",
        RowAgain: "All in a row again",
        OnBrace: "The brace's stake: one for both",
        BraceToo: "Earth at corner {number}'s brace",
        BraceTooEnd: "Earth at the end's brace",
        BraceTooWhy: "One galvanised stake of {length} is then brace and earth, {off} off the net, and carried once. Its guy is cord, never wire.",
        OneMorePlaced: "One more, {spacing} beyond the last, would give it {gain} % more in damp ground.",
    }
}
