//! What the map says while no tool is at work.

use crate::message::texts;

texts! {
    /// What the map says while no tool is at work.
    Resting {
        LiesOver: "{run} lies on the ground of {other}, which is drawn as an outline until they lie apart: drag one off the other, or click the outline to see that one whole."
            => "{run} liegt auf der Fläche von {other}, gezeichnet als bloßer Umriss, bis beide auseinanderliegen: einen vom anderen wegziehen, oder den Umriss anklicken, um ihn ganz zu sehen.",
        OutlineOver: "{run} is an outline because it lies on the ground of {other}: click it to see it whole, or drag one off the other."
            => "{run} ist ein bloßer Umriss, weil er auf der Fläche von {other} liegt: anklicken zeigt ihn ganz, oder einen vom anderen wegziehen.",
        OutlineBeside: "{run} is an outline because it uses netting of {other}, on whose side it lies: click it to see it whole."
            => "{run} ist ein bloßer Umriss, weil er Netz von {other} nutzt, an dessen Seite er liegt: anklicken zeigt ihn ganz.",
        BothStand: "{run} and {other} are both stated to stand, and lie over each other: drag one off the other."
            => "{run} und {other} sind beide als stehend angegeben und liegen übereinander: einen vom anderen wegziehen.",
        DragsWhole: "A drag here moves all of {thing}." => "Ziehen verschiebt hier {thing} als Ganzes.",
        NotPicked: "Click {thing} to pick it, then drag it. Till then a drag moves the map."
            => "{thing} anklicken wählt aus, danach verschiebt Ziehen. Bis dahin verschiebt Ziehen die Karte.",
    }
}
