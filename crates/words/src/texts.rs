//! The tables of texts, one for each place where they are read.

mod book;
mod errors;
mod field;
mod files;
mod findings;
mod ground;
mod map;
mod moves;
mod page;
mod rolls;
mod shaping;
mod sheet;
mod store;
mod window;

pub use book::Book;
pub use errors::Errors;
pub use field::Field;
pub use files::Files;
pub use findings::Findings;
pub use ground::Ground;
pub use map::Map;
pub use moves::Moves;
pub use page::Page;
pub use rolls::Rolls;
pub use shaping::Shaping;
pub use sheet::Sheet;
pub use store::Store;
pub use window::Window;
