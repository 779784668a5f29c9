//! Whether a run is shut, by what, and what of it is open.

use crate::message::texts;

texts! {
    /// Whether a run is shut, by what, and what of it is open.
    Closing {
        Gap: "{length} open" => "{length} offen",
        OpenOutline: "Open: {gap} of {line} of line are without netting."
            => "Offen: {gap} von {line} Linie ohne Netz.",
        OpenLine: "Open: {line} of line, {gap} without netting from end to end."
            => "Offen: {line} Linie, von Ende zu Ende {gap} ohne Netz.",
        OneRoll: "A further roll closes it, or a wall, hedge or fence from end to end that holds birds."
            => "Eine weitere Rolle schließt ihn, oder von Ende zu Ende eine Mauer, eine Hecke oder ein Zaun, der Tiere hält.",
        Rolls: "{count} further rolls close it, or a wall, hedge or fence from end to end that holds birds."
            => "{count} weitere Rollen schließen ihn, oder von Ende zu Ende eine Mauer, eine Hecke oder ein Zaun, der Tiere hält.",
        MayClose: "{sides} from end to end: say on the Ground page whether that holds birds; if so, it closes the run."
            => "{sides} von Ende zu Ende: Auf der Seite „Gelände“ angeben, ob das Tiere hält; wenn ja, schließt es den Auslauf.",
        ShutBySides: "Shut by {line} of line and {way} along {sides}."
            => "Geschlossen durch {line} Linie und {way} entlang: {sides}.",
        GroundAndSides: "{ground}. {shut}" => "{ground}. {shut}",
        NettingOf: "netting of {run}" => "Netz von {run}",
        LineOpen: "{unit}, open" => "{unit}, offen",
    }
}
