//! Soil, braces and wind in the report: the keys of the JSON, and the lines of the readable page.

pub(crate) mod keys;
pub(crate) mod sentences;
