//! Why an act was not done: a rule said no, or the book could not be reached.

use crate::chance::NoChance;
use logbook::book::BookError;
use logbook::view::Pouch;
use std::fmt;

/// Why nothing was written.
#[derive(Debug)]
pub enum Refusal {
    /// A rule says no; the line to show and its values.
    Rule(Rule),
    /// A pouch that must not be opened, shown over the whole screen.
    Stop(Box<Pouch>),
    /// A code that this book does not know.
    NoSuchCode(String),
    /// The book could not be read or written.
    Book(BookError),
    /// No random numbers for ids.
    Chance(NoChance),
}

/// A rule that said no: a line of the word files and its values.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Rule {
    /// Key of the line.
    pub key: &'static str,
    /// Values in it.
    pub args: Vec<(&'static str, String)>,
}

impl Refusal {
    /// A rule without values.
    pub fn rule(key: &'static str) -> Self {
        Self::Rule(Rule { key, args: Vec::new() })
    }

    /// A rule with one value.
    pub fn rule_with(key: &'static str, name: &'static str, value: impl fmt::Display) -> Self {
        Self::Rule(Rule { key, args: vec![(name, value.to_string())] })
    }
}

impl From<BookError> for Refusal {
    fn from(error: BookError) -> Self {
        Self::Book(error)
    }
}

impl From<NoChance> for Refusal {
    fn from(error: NoChance) -> Self {
        Self::Chance(error)
    }
}

impl fmt::Display for Refusal {
    /// English, for commands; pages say it from the key.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Rule(rule) => {
                let words = crate::words::Words::of(crate::words::Language::En);
                let args: Vec<_> =
                    rule.args.iter().map(|(name, value)| (*name, value.as_str().into())).collect();
                f.write_str(&words.tell(rule.key, &args))
            }
            Self::Stop(pouch) => write!(f, "{} must not be used", pouch.code),
            Self::NoSuchCode(code) => write!(f, "no pouch {code} in this book"),
            Self::Book(error) => error.fmt(f),
            Self::Chance(error) => error.fmt(f),
        }
    }
}
