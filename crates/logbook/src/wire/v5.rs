//! The fifth stored form: facts about the counter. It adds kinds to those before and changes none,
//! so each kind of fact has one form. Frozen once a book was written with it.
//!
//! Ids and words are stored as in the first form.

mod fields;

use super::v1::{DrawerRefV1, Wire};
use crate::fact::Counter;
use serde::{Deserialize, Serialize};

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "snake_case")]
pub(crate) enum CounterV5 {
    StationPaired { station: String, what: String, key_hash: String, name: Option<DrawerRefV1> },
    StationParted { station: String },
    Seen { seq: i64 },
    HandedOver { to: Option<String>, drying: i64, note: Option<DrawerRefV1> },
    TakenOver { given: String },
    RunCorrected { run: String, out: Vec<String>, put: Vec<String> },
    CountedBack { run: String, count: i64 },
    OpenedNoCode { kind: String, visit: String, chair: Option<i64> },
    ExposureNoted { chair: Option<i64>, note: Option<DrawerRefV1> },
    GapExplained { from: i64, to: i64, why: String },
    BoxWasOff { from: i64, to: i64 },
    PersonSpeaks { person: String, language: String },
    PersonIs { person: String, learns: bool, in_charge: bool, teaches: bool },
    RecordShows { language: String, units: String },
    PracticeClock { real: i64, shown: i64, times: i64 },
    CardDealt { card: String, learner: Option<String> },
    CardEnded { dealt: String, right: i64, asked: i64 },
}

/// Facts whose stored form has the same field names; each field is converted by its own [`Wire`].
macro_rules! counters {
    ($($variant:ident { $($field:ident),* })*) => {
        /// The stored form of such a fact; an error is a sentence.
        pub(crate) fn to_form(counter: &Counter) -> Result<CounterV5, String> {
            Ok(match counter {
                $(Counter::$variant { $($field),* } => CounterV5::$variant {
                    $($field: $field.to_wire()?),*
                },)*
            })
        }

        /// The fact of a stored form; an error is a sentence.
        pub(crate) fn from_form(form: CounterV5) -> Result<Counter, String> {
            Ok(match form {
                $(CounterV5::$variant { $($field),* } => Counter::$variant {
                    $($field: Wire::from_wire($field)?),*
                },)*
            })
        }
    };
}

counters! {
    StationPaired { station, what, key_hash, name }
    StationParted { station }
    Seen { seq }
    HandedOver { to, drying, note }
    TakenOver { given }
    RunCorrected { run, out, put }
    CountedBack { run, count }
    OpenedNoCode { kind, visit, chair }
    ExposureNoted { chair, note }
    GapExplained { from, to, why }
    BoxWasOff { from, to }
    PersonSpeaks { person, language }
    PersonIs { person, learns, in_charge, teaches }
    RecordShows { language, units }
    PracticeClock { real, shown, times }
    CardDealt { card, learner }
    CardEnded { dealt, right, asked }
}
