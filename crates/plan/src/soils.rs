//! Published classes of soil: each table's words with the strengths that they stand for.
//!
//! Clays by undrained shear strength in kilopascals, sands by angle of friction in degrees. One word means other ground
//! in another table ("firm" is 25 to 50 kPa in one, 50 to 75 in the other), so a class names its table. A class counts
//! with the middle of its range; one open above with its lower end, one open below with half its upper end, a sand open
//! below with one degree under its upper end (common practice, no source, as is the choice of the middle).

use crate::model::{ByFoot, SoilTable, SoilWord};

/// What a class stands for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClassRange {
    /// The word.
    pub name: SoilWord,
    /// Lower end, kPa or degrees; `None` where it is open.
    pub low: Option<f64>,
    /// Upper end; `None` where it is open.
    pub high: Option<f64>,
}

const fn class(name: SoilWord, low: Option<f64>, high: Option<f64>) -> ClassRange {
    ClassRange { name, low, high }
}

/// US Army TM 5-818-1, table 2-2: half the unconfined strength, in round kilopascals.
const AMERICAN: [ClassRange; 6] = [
    class(SoilWord::VerySoft, None, Some(12.0)),
    class(SoilWord::Soft, Some(12.0), Some(24.0)),
    class(SoilWord::Medium, Some(24.0), Some(48.0)),
    class(SoilWord::Stiff, Some(48.0), Some(96.0)),
    class(SoilWord::VeryStiff, Some(96.0), Some(192.0)),
    class(SoilWord::Hard, Some(192.0), None),
];

/// How much rounder the American limits are quoted than printed: 50 for 48, and so each of them.
const ROUNDER: (f64, f64) = (50.0, 48.0);

/// BS 8004, as practising engineers quote its limits.
const BRITISH: [ClassRange; 7] = [
    class(SoilWord::VerySoft, None, Some(20.0)),
    class(SoilWord::Soft, Some(20.0), Some(40.0)),
    class(SoilWord::SoftToFirm, Some(40.0), Some(50.0)),
    class(SoilWord::Firm, Some(50.0), Some(75.0)),
    class(SoilWord::FirmToStiff, Some(75.0), Some(100.0)),
    class(SoilWord::Stiff, Some(100.0), Some(150.0)),
    class(SoilWord::VeryStiff, Some(150.0), None),
];

/// USACE EM 1110-2-2504, table 3-1, after Teng.
const SANDS: [ClassRange; 5] = [
    class(SoilWord::VeryLoose, None, Some(28.0)),
    class(SoilWord::Loose, Some(28.0), Some(30.0)),
    class(SoilWord::Medium, Some(31.0), Some(36.0)),
    class(SoilWord::Dense, Some(37.0), Some(41.0)),
    class(SoilWord::VeryDense, Some(41.0), None),
];

impl SoilTable {
    /// Every table.
    pub const ALL: [Self; 3] = [Self::American, Self::British, Self::Sands];

    /// Its classes, the weakest first.
    pub fn classes(self) -> &'static [ClassRange] {
        match self {
            Self::American => &AMERICAN,
            Self::British => &BRITISH,
            Self::Sands => &SANDS,
        }
    }

    /// The class of that word; `None` where the table has no such word.
    pub fn class(self, name: SoilWord) -> Option<ClassRange> {
        self.classes().iter().find(|class| class.name == name).copied()
    }

    /// The American word for a clay of that strength, kilopascals.
    ///
    /// Those who work with the table quote its limits rounder than it prints them (12.5, 25, 50, 100, 200: docs/sources.md,
    /// husbandry 2.7, S2); up to there a strength still counts as the lower class.
    pub fn word_of_clay(kpa: f64) -> SoilWord {
        let up_to = |class: &&ClassRange| class.high.is_none_or(|high| kpa <= high * ROUNDER.0 / ROUNDER.1);
        AMERICAN.iter().find(up_to).map_or(SoilWord::Hard, |class| class.name)
    }

    /// Whether its classes are clays.
    pub fn is_clay(self) -> bool {
        self != Self::Sands
    }

    /// Its name in the file.
    pub const fn id(self) -> &'static str {
        match self {
            Self::American => "tm_5_818_1",
            Self::British => "bs_8004",
            Self::Sands => "em_1110_2_2504",
        }
    }

    /// The publication.
    pub const fn source(self) -> &'static str {
        match self {
            Self::American => "US Army TM 5-818-1, table 2-2",
            Self::British => "BS 8004, as practising engineers quote its limits",
            Self::Sands => "USACE EM 1110-2-2504, table 3-1, after Teng",
        }
    }
}

impl ClassRange {
    /// The value that the class counts with, kPa or degrees.
    pub fn value(&self, clay: bool) -> f64 {
        match (self.low, self.high) {
            (Some(low), Some(high)) => 0.5 * (low + high),
            (Some(low), None) => low,
            (None, Some(high)) if clay => 0.5 * high,
            (None, Some(high)) => high - 1.0,
            (None, None) => 0.0,
        }
    }
}

impl ByFoot {
    /// Every way, the softest first.
    pub const ALL: [Self; 4] = [Self::PushesIn, Self::Firm, Self::NeedsBar, Self::Refuses];

    /// The class of clay, by the American words, that a spike finds so; `None` where nothing can be relied on.
    pub fn class(self) -> Option<ClassRange> {
        let word = match self {
            Self::PushesIn => SoilWord::Soft,
            Self::Firm => SoilWord::Medium,
            Self::NeedsBar => SoilWord::Stiff,
            Self::Refuses => return None,
        };
        SoilTable::American.class(word)
    }
}

impl SoilWord {
    /// Its name in the file.
    pub const fn id(self) -> &'static str {
        match self {
            Self::VerySoft => "very_soft",
            Self::Soft => "soft",
            Self::SoftToFirm => "soft_to_firm",
            Self::Medium => "medium",
            Self::Firm => "firm",
            Self::FirmToStiff => "firm_to_stiff",
            Self::Stiff => "stiff",
            Self::VeryStiff => "very_stiff",
            Self::Hard => "hard",
            Self::VeryLoose => "very_loose",
            Self::Loose => "loose",
            Self::Dense => "dense",
            Self::VeryDense => "very_dense",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{AMERICAN, SoilTable, SoilWord};

    #[test]
    fn a_strength_has_the_word_of_the_table_with_its_limits_quoted_rounder() {
        // docs/sources.md, husbandry 2.7: "the North American 12.5 / 25 / 50 / 100 / 200 (S2)".
        let limits = [12.5, 25.0, 50.0, 100.0, 200.0];
        for ((class, next), limit) in AMERICAN.iter().zip(&AMERICAN[1..]).zip(limits) {
            assert_eq!(SoilTable::word_of_clay(limit), class.name, "{limit}");
            assert_eq!(SoilTable::word_of_clay(limit * 1.001), next.name, "{limit}");
            // The table's own figures lie within its own words.
            assert_eq!(SoilTable::word_of_clay(class.value(true)), class.name);
        }
        assert_eq!(SoilTable::word_of_clay(0.0), SoilWord::VerySoft);
    }
}
