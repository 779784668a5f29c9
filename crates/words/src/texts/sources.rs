//! Where figures come from, as they are named beside them.
//!
//! The rooms that compute know no words, so they name a source in English; it is looked up here by that wording.

use crate::message::texts;

texts! {
    /// Where figures come from, as they are named beside them.
    Sources {
        CommonPractice: "common practice, no source" => "übliche Praxis, ohne Quelle",
        StandsInRun: "it stands in the run" => "er steht im Auslauf",
        StandInRun: "they stand in the run" => "sie stehen im Auslauf",
        Derived: "derived; common practice for the inputs" => "abgeleitet; übliche Praxis bei den Eingangswerten",
        Quad: "from memory: a quad is about 1.2 m wide" => "aus dem Gedächtnis: ein Quad ist etwa 1,2 m breit",
        Gates: "common practice, no source: gates at joins, away from corners; no driving over a net"
            => "übliche Praxis, ohne Quelle: Tore an Verbindungen, fern von Ecken; nicht über ein Netz fahren",
        Buried: "usual guidance on buried services; from memory"
            => "übliche Hinweise zu vergrabenen Leitungen; aus dem Gedächtnis",
        Annex: "IEC 60335-2-76, Annex BB (requirements for electric animal fences), read in reprints"
            => "IEC 60335-2-76, Anhang BB (Anforderungen an Elektrozäune für Tiere), in Nachdrucken gelesen",
        FarmPress: "Swiss and French farm press: earth stakes 10 m and more from other earths"
            => "Schweizer und französische Fachpresse: Erdstäbe 10 m und mehr von anderen Erdungen",
        Signs: "Cornwall Council, signs along rights of way; the standard names no figure"
            => "Cornwall Council, Schilder an öffentlichen Wegen; die Norm nennt keine Zahl",
        Fault: "electric netting at 3 kV or more: Ohio State University Extension (2009); as a fault limit common practice"
            => "Elektronetz mit 3 kV oder mehr: Ohio State University Extension (2009); als Fehlergrenze übliche Praxis",
        EnergizerClause: "IEC 60335-2-76: 5 J read in a summary of BS EN 60335-2-76; clause 22.108 and its current limits from memory"
            => "IEC 60335-2-76: 5 J in einer Zusammenfassung der BS EN 60335-2-76 gelesen; Abschnitt 22.108 und seine Stromgrenzen aus dem Gedächtnis",
        ImpulseClause: "IEC 60335-2-76: 10 ms read in a summary of BS EN 60335-2-76; what counts as its length (clause 3) from memory"
            => "IEC 60335-2-76: 10 ms in einer Zusammenfassung der BS EN 60335-2-76 gelesen; was als Dauer zählt (Abschnitt 3), aus dem Gedächtnis",
        OwnFormat: "the plan file’s own rules" => "die eigenen Regeln der Plandatei",
        Wind: "EN 1991-1-4 (from memory) for the wind; statics; Broms, J. Soil Mech. Found. Div. ASCE 90 (1964)"
            => "EN 1991-1-4 (aus dem Gedächtnis) für den Wind; Statik; Broms, J. Soil Mech. Found. Div. ASCE 90 (1964)",
        Statics: "statics; Broms, J. Soil Mech. Found. Div. ASCE 90 (1964)"
            => "Statik; Broms, J. Soil Mech. Found. Div. ASCE 90 (1964)",
        Geometry: "geometry; the gap allowed is common practice, no source"
            => "Geometrie; der erlaubte Spalt ist übliche Praxis, ohne Quelle",
        Circuit: "the energizer’s equivalent circuit; see the model’s page"
            => "die Ersatzschaltung des Geräts; siehe die Seite über das Modell",
        OwnTarget: "the keeper’s own target" => "das eigene Ziel",
        MediumClay: "upper end of medium clay, US Army TM 5-818-1, table 2-2; common practice to assume it"
            => "oberes Ende von steifem Ton (medium), US Army TM 5-818-1, Tabelle 2-2; üblich als Annahme",
        OneSpike: "the spike of the store’s first net" => "die Spitze des ersten Netzes im Lager",
        Spikes: "the spikes of the store’s first net" => "die Spitzen des ersten Netzes im Lager",
        Fouled: "derived for a net with grass and leaves in it; common practice for the inputs"
            => "abgeleitet für ein Netz mit Gras und Laub darin; übliche Praxis bei den Eingangswerten",
        RotatedPaddock: "a rotated paddock by Regulation (EC) 589/2008, Annex II 1(c)"
            => "eine wechselnd genutzte Koppel nach Verordnung (EG) 589/2008, Anhang II 1(c)",
        Badgers: "floor of a field trial with badgers, Crop Protection 23 (2004), read in its abstract"
            => "Untergrenze eines Feldversuchs mit Dachsen, Crop Protection 23 (2004), in der Zusammenfassung gelesen",
        WetStakes: "stakes of tents hold about half in wet ground: InTents magazine, June 2009"
            => "Zeltheringe halten in nassem Boden etwa halb so viel: Zeitschrift InTents, Juni 2009",
        Posts: "derived: 6 s to pull and 10 s to push a post, 45 m a minute along the net (husbandry 1.6); no source for the inputs"
            => "abgeleitet: 6 s zum Ziehen und 10 s zum Eindrücken eines Pfahls, 45 m je Minute am Netz entlang; ohne Quelle für die Eingangswerte",
        IecSoil: "resistivities of IEC 60364-5-54 type, read in reprints"
            => "Bodenwiderstände nach Art der IEC 60364-5-54, in Nachdrucken gelesen",
        DinSoil: "resistivities of DIN type, read in reprints"
            => "Bodenwiderstände nach Art der DIN, in Nachdrucken gelesen",
        UsArmy: "US Army TM 5-818-1, table 2-2" => "US Army TM 5-818-1, Tabelle 2-2",
        British: "BS 8004, as practising engineers quote its limits"
            => "BS 8004, wie Fachleute ihre Grenzen nennen",
        Teng: "USACE EM 1110-2-2504, table 3-1, after Teng" => "USACE EM 1110-2-2504, Tabelle 3-1, nach Teng",
        OwnPull: "the keeper’s own pull; Broms, J. Soil Mech. Found. Div. ASCE 90 (1964), the other way round"
            => "der eigene Zugversuch; Broms, J. Soil Mech. Found. Div. ASCE 90 (1964), umgekehrt gerechnet",
        CornersSeen: "corners seen by the keeper; Broms, J. Soil Mech. Found. Div. ASCE 90 (1964), the other way round"
            => "selbst beobachtete Ecken; Broms, J. Soil Mech. Found. Div. ASCE 90 (1964), umgekehrt gerechnet",
        ByFoot: "common practice for the spike under the foot, no source; its strength by US Army TM 5-818-1, table 2-2"
            => "übliche Praxis für die Spitze unter dem Fuß, ohne Quelle; die Festigkeit nach US Army TM 5-818-1, Tabelle 2-2",
        FoxBody: "500 Ω is the standard load; paws of 2 cm: common practice, no source"
            => "500 Ω ist die genormte Last; Pfoten von 2 cm: übliche Praxis, ohne Quelle",
        DogBody: "500 Ω is the standard load; paws of 3 cm: common practice, no source"
            => "500 Ω ist die genormte Last; Pfoten von 3 cm: übliche Praxis, ohne Quelle",
        HenBody: "hens 1.9 to 7 kΩ in stunning baths, Schütt-Abraham and others, from memory; two feet of 2 cm: common practice, no source"
            => "Hennen 1,9 bis 7 kΩ im Betäubungsbad, Schütt-Abraham und andere, aus dem Gedächtnis; zwei Füße von 2 cm: übliche Praxis, ohne Quelle",
        SheepBody: "head of a sheep 150 to 1,000 Ω, Humane Slaughter Association; feet of 2.5 cm: common practice, no source"
            => "Kopf eines Schafs 150 bis 1000 Ω, Humane Slaughter Association; Füße von 2,5 cm: übliche Praxis, ohne Quelle",
        EuRotated: "Regulation (EC) 589/2008, Annex II 1(c): each paddock, with 10 m² a hen in all"
            => "Verordnung (EG) 589/2008, Anhang II 1(c): jede Koppel, bei 10 m² je Henne insgesamt",
        EuFreeRange: "Regulation (EC) 589/2008, Annex II 1(c)" => "Verordnung (EG) 589/2008, Anhang II 1(c)",
        EuOrganic: "Regulation (EU) 2020/464, Annex I Part IV (from memory)"
            => "Verordnung (EU) 2020/464, Anhang I Teil IV (aus dem Gedächtnis)",
        EuOrganicRead: "Regulation (EU) 2020/464, Annex I Part IV 8" => "Verordnung (EU) 2020/464, Anhang I Teil IV 8",
        EuFreeRangeTable: "Regulation (EC) 543/2008, Annex V (d) (from memory)"
            => "Verordnung (EG) 543/2008, Anhang V (d) (aus dem Gedächtnis)",
        EuTraditional: "Regulation (EC) 543/2008, Annex V (e) (from memory)"
            => "Verordnung (EG) 543/2008, Anhang V (e) (aus dem Gedächtnis)",
        AuLabel: "Free Range Egg Labelling Information Standard 2017, sections 7 to 9"
            => "Free Range Egg Labelling Information Standard 2017, Abschnitte 7 bis 9",
        AuCode: "Model Code of Practice, Domestic Poultry, 4th edition, 2002 (from memory)"
            => "Model Code of Practice, Domestic Poultry, 4. Auflage, 2002 (aus dem Gedächtnis)",
        NzCode: "layer hen welfare code, as quoted" => "Kodex zum Wohl der Legehennen, wie zitiert",
        UsOrganic: "7 CFR 205.241, hens of 4.5 lb (from memory)" => "7 CFR 205.241, Hennen von 4,5 lb (aus dem Gedächtnis)",
    }
}
