//! A text with named places, and the table that holds the texts.

/// A language that the texts exist in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Language {
    /// English.
    #[default]
    English,
}

/// A text of one of the tables in [`crate::texts`].
pub trait Message: Copy {
    /// Its wording, with `{named}` places.
    fn wording(self, language: Language) -> &'static str;
}

/// A table of texts: an enum whose variants carry their wording.
macro_rules! texts {
    ($(#[$meta:meta])* $name:ident { $($variant:ident: $english:literal,)* }) => {
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
