//! Every text that a keeper reads, in its languages, with units and number formats.
//!
//! A text is a variant of one of the enums below; each holds its wording in every language beside the
//! other, with `{named}` places. [`Words`] knows the language and the units and fills the places in. This
//! crate knows nothing of plans: it is given names and numbers.

mod compass;
mod figures;
#[cfg(feature = "longer")]
mod longer;
mod message;
pub mod texts;
mod typed;

pub use figures::{METRES_PER_FOOT, Units, Words, capital};
pub use message::{Language, Message};
pub use typed::{Measure, Range, Typed};
