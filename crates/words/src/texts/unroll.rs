//! Words of a run while it is being unrolled.

use crate::message::texts;

texts! {
    /// Words of a run while it is being unrolled.
    Unroll {
        Start: "Unroll a run",
        Title: "Unrolling",
        FollowsPointer: "Corner {number} follows the pointer",
        FirstCorner: "Press where the first corner stands",
        IfClosedHere: "if closed here",
        EachIfClosed: "for each bird",
        Braces: "braces",

        LeftOnNet: "{length} left on net {net}",
        LeftInStore: "{count} more in the store",
        NoneInStore: "the last one",
        NoNets: "no net is left in the store",
        Beyond: "{length} more than the store holds",

        Side: "Side",
        Panels: "Panels",
        Turn: "Turn",
        Bearing: "Bearing",

        OnCurveAndPost: "{nets} nets close it exactly, on a post",
        OnCurveAndPostOne: "1 net closes it exactly, on a post",
        OnCurve: "{nets} nets close it exactly",
        OnCurveOne: "1 net closes it exactly",
        OnPosts: "on a post, {panels} panels on",
        OnPost: "on a post, 1 panel on",
        Free: "free: no post stands here",
        OnFirst: "closes on corner 1",

        ClosesHere: "{nets} nets close here",
        ClosesHereOne: "1 net closes here",
        OutOfReach: "Ruled ground is out of reach of {nets} nets",
        OutOfReachOne: "Ruled ground is out of reach of 1 net",
        ToClose: "{length} to close",

        Sides: "Sides",
        Length: "Length",
        TurnAfter: "Turn after",
        InStore: "Still in the store",
        InStoreAside: "{left} of {owned} nets",

        WhileYouDraw: "While you draw",
        KeyEnter: "close the run here",
        KeyTab: "type the side, then the turn",
        KeyAlt: "let go of posts and curves",
        KeyBack: "take up the last corner",
        KeyEsc: "roll it all up",
        KeyArrows: "move it, Space sets a corner",
    }
}
