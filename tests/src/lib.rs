//! The published checks and the whole-program tests live in `tests/`; there is nothing to import here.
