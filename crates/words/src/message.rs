//! A text with named places, and the table that holds the texts.

/// A language that the texts exist in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Language {
    /// English.
    #[default]
    English,
    /// German.
    German,
    /// English with every wording two fifths longer, never offered: tests see by it which label has no room for
    /// a language of longer words.
    #[cfg(feature = "longer")]
    Longer,
}

impl Language {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 2] = [Self::English, Self::German];

    /// Its tag (BCP 47), as settings and printed pages name it.
    pub fn tag(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::German => "de",
            #[cfg(feature = "longer")]
            Self::Longer => "en-x-longer",
        }
    }

    /// The language of such a tag.
    pub fn of_tag(tag: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|language| language.tag() == tag)
    }

    /// Its own name, as it calls itself.
    pub fn name(self) -> &'static str {
        match self {
            Self::English => "English",
            Self::German => "Deutsch",
            #[cfg(feature = "longer")]
            Self::Longer => "Longer",
        }
    }

    /// The mark before decimals.
    pub(crate) fn decimal_mark(self) -> char {
        match self {
            Self::German => ',',
            Self::English => '.',
            #[cfg(feature = "longer")]
            Self::Longer => '.',
        }
    }

    /// The mark between thousands.
    pub(crate) fn thousands_mark(self) -> char {
        match self {
            Self::German => '.',
            Self::English => ',',
            #[cfg(feature = "longer")]
            Self::Longer => ',',
        }
    }
}

/// A text of one of the tables in [`crate::texts`].
pub trait Message: Copy {
    /// Its wording, with `{named}` places.
    fn wording(self, language: Language) -> &'static str;
}

/// A table of texts: an enum whose variants carry their wording in every language. One that lacks a language does not
/// compile.
macro_rules! texts {
    ($(#[$meta:meta])* $name:ident { $($variant:ident: $english:literal => $german:literal,)* }) => {
        $(#[$meta])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum $name {
            $(#[doc = $english] $variant,)*
        }
        impl $name {
            /// Every text of this table.
            pub const ALL: &'static [Self] = &[$(Self::$variant),*];
        }
        impl $crate::Message for $name {
            fn wording(self, language: $crate::Language) -> &'static str {
                match (self, language) {
                    $((Self::$variant, $crate::Language::English) => $english,)*
                    $((Self::$variant, $crate::Language::German) => $german,)*
                    $(
                        #[cfg(feature = "longer")]
                        (Self::$variant, $crate::Language::Longer) => $crate::longer::longer($english),
                    )*
                }
            }
        }
    };
}
pub(crate) use texts;

/// Fills the `{named}` places of a wording; a place that is not given stays as it is.
pub(crate) fn fill(wording: &str, places: &[(&str, &str)]) -> String {
    let mut text = String::with_capacity(wording.len() + 32);
    let mut rest = wording;
    while let Some(open) = rest.find('{') {
        let Some(close) = rest[open..].find('}').map(|length| open + length) else {
            break;
        };
        text.push_str(&rest[..open]);
        match places.iter().find(|(name, _)| *name == &rest[open + 1..close]) {
            Some((_, value)) => text.push_str(value),
            None => text.push_str(&rest[open..=close]),
        }
        rest = &rest[close + 1..];
    }
    text.push_str(rest);
    text
}

#[cfg(test)]
mod tests {
    use super::fill;

    #[test]
    fn places_are_filled_once_and_unknown_ones_stay() {
        let text = fill("Corner {corner} of {run}: {what", &[("corner", "4"), ("run", "{corner}")]);
        assert_eq!(text, "Corner 4 of {corner}: {what");
    }
}
