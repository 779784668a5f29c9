//! The tables of texts, one for each place where they are read.

mod errors;
mod findings;
mod map;
mod page;
mod sheet;
mod window;

pub use errors::Errors;
pub use findings::Findings;
pub use map::Map;
pub use page::Page;
pub use sheet::Sheet;
pub use window::Window;
