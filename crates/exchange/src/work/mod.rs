//! Setting up, taking down and mowing: their keys in the report, and their sentences.

pub mod keys;
pub mod sentences;
