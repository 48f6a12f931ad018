//! `verify`: is the record whole and unchanged?

use super::unusable;
use crate::wire::verify::report;
use clap::Args;
use std::path::PathBuf;
use std::process::ExitCode;

/// Which book.
#[derive(Debug, Args)]
pub struct VerifyArgs {
    /// The book, or the folder that it lies in.
    book: PathBuf,
    /// How to answer.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

/// How to answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
enum Format {
    /// For people.
    Text,
    /// One JSON object a line.
    Json,
}

/// Walks the chain; 0 whole, 1 changed, 2 not readable.
pub fn run(args: VerifyArgs) -> ExitCode {
    let verified = match logbook::verify::verify(&args.book) {
        Ok(verified) => verified,
        Err(error) => return unusable(format_args!("{}: {error}", args.book.display())),
    };
    match args.format {
        Format::Json => println!("{}", report(&verified)),
        Format::Text => match &verified.first_bad {
            None => println!(
                "The record is whole: {} facts, each in its place and unchanged.",
                verified.facts
            ),
            Some(bad) => println!(
                "The record was changed at fact {}: {}. Keep this copy, take the last good backup \
                 beside it, and ask who had access.",
                bad.seq, bad.why
            ),
        },
    }
    ExitCode::from(u8::from(!verified.ok))
}
