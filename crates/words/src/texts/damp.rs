//! Where the energizer stands, how far its leads go, and where the ground is damp enough for its earth.

use crate::message::texts;

texts! {
    /// Where the energizer stands, how far its leads go, and where the ground is damp enough for its earth.
    Damp {
        DrawDamp: "Damp ground" => "Feuchter Boden",
        CommandDamp: "Draw damp ground" => "Feuchten Boden zeichnen",
        Places: "Damp places" => "Feuchte Stellen",
        NoPlaces: "None drawn. Draw a hollow, a ditch, the wet end: an earth stake earths best there."
            => "Nichts gezeichnet. Eine Senke, einen Graben, das nasse Ende zeichnen: Dort erdet ein Erdstab am besten.",
        CornerOfPlace: "Corner {number} of {name}" => "Ecke {number} von {name}",
        Soil: "Soil there" => "Boden dort",
        SoilOf: "Soil there, {name}" => "Boden dort, {name}",
        SoilWhy: "Left empty it counts as the ground round it does after rain. Emptied, it goes back to that."
            => "Leer gelassen zählt er wie der Boden ringsum nach Regen. Wird das Feld geleert, gilt wieder das.",
        WhereItStands: "Where the energizer stands" => "Wo das Weidezaungerät steht",
        PlaceEnergizer: "Energizer on the map" => "Weidezaungerät setzen",
        CommandEnergizer: "Place the energizer" => "Weidezaungerät setzen",
        HintEnergizer: "Click where the energizer stands: its leads go to the feed point and to the nearest earth stake. Esc leaves."
            => "Dorthin klicken, wo das Weidezaungerät steht: Seine Leitungen gehen zur Einspeisung und zum nächsten Erdstab. Esc bricht ab.",
        Stands: "The energizer stands {feed} from the feed point" => "Das Weidezaungerät steht {feed} von der Einspeisung",
        StandsWithStake: "{stands} and {stake} from the nearest earth stake."
            => "{stands} und {stake} vom nächsten Erdstab.",
        StandsAlone: "{stands}; where its earth stake stands is not stated."
            => "{stands}; wo sein Erdstab steht, ist nicht angegeben.",
        StandsAtFeed: "Where the energizer stands is not stated: it counts as standing at the feed point."
            => "Wo das Weidezaungerät steht, ist nicht angegeben: Es zählt, als stünde es an der Einspeisung.",
        EnergizerFigures: "{unit}, {feed} from the feed point" => "{unit}, {feed} ab Einspeisung",
        EnergizerInHand: "{feed} from the feed point, {stake} from the nearest stake"
            => "{feed} von der Einspeisung, {stake} vom nächsten Stab",
        EnergizerInHandAlone: "{feed} from the feed point" => "{feed} von der Einspeisung",
        FromTheEnergizer: "{off} from the energizer" => "{off} vom Weidezaungerät",
        EarthLeadWhy: "From the energizer to the nearest stake; the further ones hang on each other. What the lead itself resists is left out."
            => "Vom Weidezaungerät zum nächsten Stab; die weiteren hängen aneinander. Was die Leitung selbst an Widerstand hat, bleibt weg.",
        LeadFollows: "{length}, as far as the energizer stands from the feed point." => "{length}, so weit steht das Weidezaungerät von der Einspeisung.",
        LeadShort: "{run}: the lead is {length} long and the energizer stands {apart} from the feed point: set it nearer, or take a lead of {apart} or more."
            => "{run}: Die Zuleitung ist {length} lang, das Weidezaungerät steht {apart} von der Einspeisung: Es näher aufstellen oder eine Zuleitung von {apart} oder mehr nehmen.",
        EarthLeadShort: "{run}: the earth lead is {length} long and the nearest earth stake stands {apart} from the energizer: set one within {length} of it, or take a longer lead."
            => "{run}: Die Erdleitung ist {length} lang, der nächste Erdstab steht {apart} vom Weidezaungerät: Einen im Umkreis von {length} setzen oder eine längere Leitung nehmen.",
        DamperInReach: "{run}: its earth stakes stand in drier ground than they could: in {place}, {off} from the energizer, they would have {ohm} in place of {now}; on the Power page one click puts them there."
            => "{run}: Seine Erdstäbe stehen in trocknerem Boden als nötig: {place}, {off} vom Weidezaungerät, ergäbe {ohm} statt {now}; auf der Seite „Strom“ setzt ein Klick sie dorthin.",
        DampDrier: "{place} is stated to have {stated} Ω m, and the ground round it has {ground}: state fewer for damp ground, or take it out."
            => "{place}: Angegeben sind {stated} Ω m, der Boden ringsum hat {ground}: für feuchten Boden weniger angeben oder ihn herausnehmen.",
        Best: "Within reach the best place for the earth is {place}, {off} from the energizer: {ohm} there, {now} as it is."
            => "In Reichweite ist der beste Ort für die Erdung {place}, {off} vom Weidezaungerät: dort {ohm}, jetzt {now}.",
        BestInside: "The {count} stakes stand in a row in it." => "Die {count} Stäbe stehen darin in einer Reihe.",
        BestPartly: "In a row it has room for only {inside} of the {count} stakes."
            => "In einer Reihe ist darin nur für {inside} der {count} Stäbe Platz.",
        BestCut: "Off the net and the earths of others it has room for only {kept} of the {count} stakes."
            => "Abseits vom Netz und von fremden Erdungen ist dort nur für {kept} der {count} Stäbe Platz.",
        There: "The stakes stand in the dampest ground within reach: {place}."
            => "Die Stäbe stehen im feuchtesten Boden in Reichweite: {place}.",
        NotBetter: "Within reach of the earth lead no damp ground earths better than the stakes do as they stand."
            => "In Reichweite der Erdleitung erdet kein feuchter Boden besser als die Stäbe, wie sie stehen.",
        NotDamper: "No damp ground that is drawn is damper today than the rest." => "Kein eingezeichneter feuchter Boden ist heute feuchter als der übrige.",
        NoneInReach: "No damp ground where a stake may stand is within {reach} of the energizer."
            => "Kein feuchter Boden, in dem ein Stab stehen darf, liegt im Umkreis von {reach} um das Weidezaungerät.",
        ReachAssumed: "An earth lead of {reach} is assumed." => "Angenommen ist eine Erdleitung von {reach}.",
        BraceThere: "The stake of corner {number}’s brace stands there too: one galvanised stake can be brace and earth at once."
            => "Dort steht auch der Pflock der Abspannung von Ecke {number}: Ein verzinkter Stab kann Abspannung und Erdung zugleich sein.",
        BraceThereEnd: "The stake of an end’s brace stands there too: one galvanised stake can be brace and earth at once."
            => "Dort steht auch der Pflock der Abspannung eines Endes: Ein verzinkter Stab kann Abspannung und Erdung zugleich sein.",
        BestNode: "Suggested for earth stake {number} of {run}: {place}" => "Vorschlag für Erdstab {number} von {run}: {place}",
        PutThere: "Put it there" => "Dorthin setzen",
        PutThem: "Put them there" => "Dorthin setzen",
        BarsSafely: "Bars are driven with the energizer off, once it is known what lies buried there."
            => "Stäbe werden bei ausgeschaltetem Gerät eingeschlagen, und erst, wenn bekannt ist, was dort vergraben liegt.",
        KeyEnergizer: "The energizer stands at the feed point" => "Das Gerät steht an der Einspeisung",
        KeyEarthLead: "Reach of the earth lead" => "Reichweite der Erdleitung",
        KeySoil: "Damp ground: as after rain" => "Feuchter Boden: wie nach Regen",
    }
}
