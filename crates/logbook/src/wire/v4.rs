//! The fourth stored form: facts about what is looked after. It adds kinds to those before and
//! changes none, so each kind of fact has one form. Frozen once a book was written with it.
//!
//! Ids and words are stored as in the first form.

mod fields;

use super::v1::{DrawerRefV1, Wire};
use crate::fact::Upkeep;
use serde::{Deserialize, Serialize};

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "snake_case")]
pub(crate) enum AboutV4 {
    Salon,
    Machine(String),
    Thing(String),
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ChoreRuleV4 {
    pub(crate) chore: String,
    pub(crate) about: AboutV4,
    pub(crate) part: String,
    pub(crate) days: Option<i64>,
    pub(crate) runs: Option<i64>,
    pub(crate) minutes: i64,
    pub(crate) stops_work: bool,
    pub(crate) manual_page: Option<i64>,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "snake_case")]
pub(crate) enum UpkeepV4 {
    ThingAdded {
        thing: String,
        what: String,
        number: i64,
    },
    ThingEnded {
        thing: String,
    },
    JarSet {
        jar: String,
        contact_min: i64,
        lasts_h: Option<i64>,
        label: Option<DrawerRefV1>,
    },
    JarMixed {
        jar: String,
    },
    JarIn {
        jar: String,
    },
    JarEmptied {
        jar: String,
    },
    BasinSet {
        basin: String,
        wet_min: i64,
    },
    BasinWet {
        basin: String,
        after: String,
    },
    BasinDrained {
        basin: String,
    },
    NotUsed {
        thing: String,
    },
    ChoreSet(ChoreRuleV4),
    ChoreEnded {
        chore: String,
        about: AboutV4,
    },
    ChoreDone {
        chore: String,
        about: AboutV4,
        found: String,
        note: Option<DrawerRefV1>,
    },
    ChoreLeft {
        chore: String,
        about: AboutV4,
        why: String,
    },
    MachineServiced {
        machine: String,
        what: String,
        note: Option<DrawerRefV1>,
    },
    SporePlaced {
        test: String,
        machine: String,
        run: Option<String>,
        control: bool,
        lot: Option<DrawerRefV1>,
    },
    SporePosted {
        test: String,
        answer_by: i64,
    },
    SporeRead {
        test: String,
        grew: bool,
        control_grew: Option<bool>,
    },
    SporeLost {
        test: String,
    },
    Unfrozen {
        test: String,
        pouches: Vec<String>,
    },
    StockSet {
        item: String,
        used_by: String,
        least: i64,
    },
    StockEnded {
        item: String,
    },
    StockCounted {
        item: String,
        count: i64,
    },
    StockBought {
        item: String,
        count: i64,
        lot: Option<DrawerRefV1>,
    },
}

/// Facts whose stored form has the same field names; each field is converted by its own [`Wire`].
macro_rules! upkeeps {
    ($($variant:ident { $($field:ident),* })* ; $($whole:ident),*) => {
        /// The stored form of such a fact; an error is a sentence.
        pub(crate) fn to_form(upkeep: &Upkeep) -> Result<UpkeepV4, String> {
            Ok(match upkeep {
                $(Upkeep::$variant { $($field),* } => UpkeepV4::$variant {
                    $($field: $field.to_wire()?),*
                },)*
                $(Upkeep::$whole(whole) => UpkeepV4::$whole(whole.to_wire()?),)*
            })
        }

        /// The fact of a stored form; an error is a sentence.
        pub(crate) fn from_form(form: UpkeepV4) -> Result<Upkeep, String> {
            Ok(match form {
                $(UpkeepV4::$variant { $($field),* } => Upkeep::$variant {
                    $($field: Wire::from_wire($field)?),*
                },)*
                $(UpkeepV4::$whole(whole) => Upkeep::$whole(Wire::from_wire(whole)?),)*
            })
        }
    };
}

upkeeps! {
    ThingAdded { thing, what, number }
    ThingEnded { thing }
    JarSet { jar, contact_min, lasts_h, label }
    JarMixed { jar }
    JarIn { jar }
    JarEmptied { jar }
    BasinSet { basin, wet_min }
    BasinWet { basin, after }
    BasinDrained { basin }
    NotUsed { thing }
    ChoreEnded { chore, about }
    ChoreDone { chore, about, found, note }
    ChoreLeft { chore, about, why }
    MachineServiced { machine, what, note }
    SporePlaced { test, machine, run, control, lot }
    SporePosted { test, answer_by }
    SporeRead { test, grew, control_grew }
    SporeLost { test }
    Unfrozen { test, pouches }
    StockSet { item, used_by, least }
    StockEnded { item }
    StockCounted { item, count }
    StockBought { item, count, lot }
    ;
    ChoreSet
}
