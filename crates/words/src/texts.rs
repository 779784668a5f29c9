//! The tables of texts, one for each place where they are read.

mod about;
mod book;
mod bracing;
mod candidates;
mod commands;
mod compare;
mod damp;
mod earth;
mod errors;
mod faults;
mod field;
mod files;
mod findings;
mod fitting;
mod gates;
mod ground;
mod guides;
mod keys;
mod many;
mod map;
mod moves;
mod page;
mod power;
mod rolls;
mod search;
mod setting_up;
mod shape;
mod shaping;
mod sheet;
mod slope;
mod sources;
mod store;
mod underlay;
mod unroll;
mod window;

pub use about::About;
pub use book::Book;
pub use bracing::Bracing;
pub use candidates::Candidates;
pub use commands::Commands;
pub use compare::Compare;
pub use damp::Damp;
pub use earth::Earth;
pub use errors::Errors;
pub use faults::Faults;
pub use field::Field;
pub use files::Files;
pub use findings::Findings;
pub use fitting::Fitting;
pub use gates::Gates;
pub use ground::Ground;
pub use guides::Guides;
pub use keys::Keys;
pub use many::Many;
pub use map::Map;
pub use moves::Moves;
pub use page::Page;
pub use power::Power;
pub use rolls::Rolls;
pub use search::Search;
pub use setting_up::SettingUp;
pub use shape::Shape;
pub use shaping::Shaping;
pub use sheet::Sheet;
pub use slope::Slope;
pub use sources::Sources;
pub use store::Store;
pub use underlay::Underlay;
pub use unroll::Unroll;
pub use window::Window;

/// Every wording of every table: what a font must have letters for.
pub fn wordings(language: crate::Language) -> Vec<&'static str> {
    fn of<T: crate::Message>(table: &'static [T], language: crate::Language) -> impl Iterator<Item = &'static str> {
        table.iter().map(move |text| text.wording(language))
    }
    let mut all: Vec<&'static str> = Vec::new();
    all.extend(of(About::ALL, language));
    all.extend(of(Book::ALL, language));
    all.extend(of(Bracing::ALL, language));
    all.extend(of(Candidates::ALL, language));
    all.extend(of(Commands::ALL, language));
    all.extend(of(Compare::ALL, language));
    all.extend(of(Damp::ALL, language));
    all.extend(of(Earth::ALL, language));
    all.extend(of(Errors::ALL, language));
    all.extend(of(Faults::ALL, language));
    all.extend(of(Field::ALL, language));
    all.extend(of(Files::ALL, language));
    all.extend(of(Findings::ALL, language));
    all.extend(of(Fitting::ALL, language));
    all.extend(of(Gates::ALL, language));
    all.extend(of(Ground::ALL, language));
    all.extend(of(Guides::ALL, language));
    all.extend(of(Keys::ALL, language));
    all.extend(of(Many::ALL, language));
    all.extend(of(Map::ALL, language));
    all.extend(of(Moves::ALL, language));
    all.extend(of(Page::ALL, language));
    all.extend(of(Power::ALL, language));
    all.extend(of(Rolls::ALL, language));
    all.extend(of(Search::ALL, language));
    all.extend(of(SettingUp::ALL, language));
    all.extend(of(Shape::ALL, language));
    all.extend(of(Shaping::ALL, language));
    all.extend(of(Sheet::ALL, language));
    all.extend(of(Slope::ALL, language));
    all.extend(of(Sources::ALL, language));
    all.extend(of(Store::ALL, language));
    all.extend(of(Underlay::ALL, language));
    all.extend(of(Unroll::ALL, language));
    all.extend(of(Window::ALL, language));
    all
}
