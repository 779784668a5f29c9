//! The binary `netfold`: subcommands, and the window when none is given.
//!
//! Results go to standard output, everything else to standard error. It exits 0 when done, 1 when `check` found
//! a danger, and 2 on input that cannot be used; an error is one line with the file, the place and the mend.

mod arguments;
mod commands;
mod example;
mod files;
mod fit;
mod power;
mod shapes;
mod window;

use std::io::Write;
use std::process::ExitCode;
use std::time::Instant;

use arguments::Arguments;

/// Where the log's level is read from; errors of the keeper's are not log lines.
const LOG: &str = "NETFOLD_LOG";

#[expect(clippy::disallowed_methods, reason = "the rim of the program may read the clock")]
fn main() -> ExitCode {
    let since = Instant::now();
    tracing_subscriber::fmt()
        .with_writer(std::io::stderr)
        .with_env_filter(tracing_subscriber::EnvFilter::try_from_env(LOG).unwrap_or_else(|_| "off".into()))
        .without_time()
        .init();
    let arguments = match Arguments::typed() {
        Ok(arguments) => arguments,
        Err(error) => return arguments::refused(&error),
    };
    match commands::run(arguments, since) {
        Ok(done) => done,
        Err(error) => {
            complain(&error.to_string());
            ExitCode::from(2)
        }
    }
}

/// The most characters that an error takes.
const LONGEST: usize = 500;

/// Says why nothing was done: one line on standard error.
fn complain(sentence: &str) {
    let line: String = sentence.split_whitespace().collect::<Vec<_>>().join(" ");
    let shown: String =
        if line.chars().count() > LONGEST { line.chars().take(LONGEST - 1).chain(['…']).collect() } else { line };
    // Nobody may be listening; there is nobody else to tell.
    let _ = writeln!(std::io::stderr(), "{shown}");
}
