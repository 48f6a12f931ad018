//! The first stored form of facts. Frozen once a book was written with it: a change is a `v2`.
//!
//! Ids and hashes are lower-case hexadecimal text, moments whole milliseconds UTC, words those of
//! [`super::words`]. The name of a variant, in small letters, is the fact's kind.

mod fields;

pub(crate) use fields::{as_text, same_text, structs};

use crate::fact::Body;
use serde::{Deserialize, Serialize};

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct DrawerRefV1 {
    pub(crate) entry: String,
    pub(crate) commitment: String,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct PackedPouchV1 {
    pub(crate) pouch: String,
    pub(crate) code: String,
    pub(crate) kind: String,
    pub(crate) pouched: bool,
    pub(crate) hollow: bool,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "snake_case")]
pub(crate) enum BasisV1 {
    Record { record: String, cycle: i64 },
    Reading { lowest_mc: i64, held_s: i64, press_pa: Option<i64> },
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ReasonV1 {
    pub(crate) code: String,
    pub(crate) at_ms: Option<(i64, i64)>,
    pub(crate) lines: Option<(i64, i64)>,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct FiguresV1 {
    pub(crate) set_mc: Option<i64>,
    pub(crate) needed_ms: Option<i64>,
    pub(crate) held_ms: Option<i64>,
    pub(crate) lowest_mc: Option<i64>,
    pub(crate) highest_mc: Option<i64>,
    pub(crate) deviation_mk: Option<i64>,
    pub(crate) f0_low_mmin: Option<i64>,
    pub(crate) drying_ms: Option<i64>,
    pub(crate) total_ms: Option<i64>,
    pub(crate) preheat_ms: Option<i64>,
    pub(crate) heat_up_ms: Option<i64>,
    pub(crate) first_pulse_ms: Option<i64>,
    pub(crate) pulse_depth_pa: Option<i64>,
    pub(crate) exhaust_ms: Option<i64>,
    pub(crate) dry_vacuum_pa: Option<i64>,
    pub(crate) air_in_ms: Option<i64>,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct JudgedV1 {
    pub(crate) run: Option<String>,
    pub(crate) basis: BasisV1,
    pub(crate) judge: String,
    pub(crate) limits: Vec<(String, i64)>,
    pub(crate) contents: String,
    pub(crate) outcome: String,
    pub(crate) proven_for: Vec<String>,
    pub(crate) conforming: Option<bool>,
    pub(crate) drying: String,
    pub(crate) reasons: Vec<ReasonV1>,
    pub(crate) figures: FiguresV1,
    pub(crate) start_clock: Option<String>,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "snake_case")]
pub(crate) enum BodyV1 {
    SalonOpened {
        salon: String,
        zone: String,
        book: String,
    },
    ZoneSet {
        zone: String,
    },
    PersonJoined {
        person: String,
        sign: DrawerRefV1,
    },
    PersonLeft {
        person: String,
    },
    MachineAdded {
        machine: String,
        number: i64,
        air_removal: String,
        writes_files: bool,
        most_pouches: Option<i64>,
    },
    MachineClockSet {
        machine: String,
        ahead_ms: i64,
    },
    MachineReads {
        machine: String,
        altitude_m: Option<i64>,
        temperature_unit: Option<String>,
        pressure_unit: Option<String>,
        pressure_reference: Option<String>,
        day_first: Option<bool>,
    },
    MachineOut {
        machine: String,
    },
    MachineBack {
        machine: String,
    },
    SetsOwned {
        kind: String,
        count: i64,
    },
    Counted {
        kind: String,
        used: i64,
        washed: i64,
    },
    Washed {
        kind: String,
        count: i64,
    },
    Packed {
        pouches: Vec<PackedPouchV1>,
    },
    RunStarted {
        run: String,
        machine: String,
        number: i64,
        programme: Option<String>,
        contents: String,
        pouches: Vec<String>,
    },
    RunUnloaded {
        run: String,
    },
    RecordTaken {
        record: String,
        kept: DrawerRefV1,
        bytes: i64,
        way: String,
        continues: Option<String>,
        cycles: i64,
    },
    RecordClaimed {
        record: String,
        cycle: i64,
        run: String,
    },
    Judged(Box<JudgedV1>),
    Looked {
        run: String,
        marks_looked: bool,
        inner_mark: Option<bool>,
        dry_looked: bool,
        marks_not_turned: Vec<String>,
        wet: Vec<String>,
        torn: Vec<String>,
        dropped: Vec<String>,
    },
    Released {
        run: String,
        pouches: Vec<String>,
        use_until: Option<i64>,
    },
    SetAside {
        pouches: Vec<String>,
        run: Option<String>,
        why: String,
    },
    StopLifted {
        pouches: Vec<String>,
        why: String,
    },
    Opened {
        pouch: String,
        visit: String,
        chair: Option<i64>,
    },
    TakenApart {
        pouches: Vec<String>,
    },
    Undone {
        act: String,
    },
}

/// A core value and its stored form.
pub(crate) trait Wire: Sized {
    /// The stored form.
    type Form;
    /// To the stored form; an error is a sentence about a number that does not fit.
    fn to_wire(&self) -> Result<Self::Form, String>;
    /// From the stored form; an error is a sentence about what does not fit.
    fn from_wire(form: Self::Form) -> Result<Self, String>;
}

/// Bodies whose stored form has the same field names; each field is converted by its own [`Wire`].
macro_rules! bodies {
    ($($variant:ident { $($field:ident),* })*) => {
        /// The stored form of a body; an error is a sentence.
        pub(crate) fn to_form(body: &Body) -> Result<BodyV1, String> {
            Ok(match body {
                $(Body::$variant { $($field),* } => BodyV1::$variant {
                    $($field: $field.to_wire()?),*
                },)*
                Body::Judged(judged) => BodyV1::Judged(Box::new(judged.to_wire()?)),
                Body::Day(_) | Body::Loading(_) | Body::Upkeep(_) | Body::Counter(_) => {
                    return Err("BUG: this fact has no first form".to_owned());
                }
            })
        }

        /// The body of a stored form; an error is a sentence.
        pub(crate) fn from_form(form: BodyV1) -> Result<Body, String> {
            Ok(match form {
                $(BodyV1::$variant { $($field),* } => Body::$variant {
                    $($field: Wire::from_wire($field)?),*
                },)*
                BodyV1::Judged(judged) => Body::Judged(Box::new(Wire::from_wire(*judged)?)),
            })
        }
    };
}

bodies! {
    SalonOpened { salon, zone, book }
    ZoneSet { zone }
    PersonJoined { person, sign }
    PersonLeft { person }
    MachineAdded { machine, number, air_removal, writes_files, most_pouches }
    MachineClockSet { machine, ahead_ms }
    MachineReads {
        machine, altitude_m, temperature_unit, pressure_unit, pressure_reference, day_first
    }
    MachineOut { machine }
    MachineBack { machine }
    SetsOwned { kind, count }
    Counted { kind, used, washed }
    Washed { kind, count }
    Packed { pouches }
    RunStarted { run, machine, number, programme, contents, pouches }
    RunUnloaded { run }
    RecordTaken { record, kept, bytes, way, continues, cycles }
    RecordClaimed { record, cycle, run }
    Looked { run, marks_looked, inner_mark, dry_looked, marks_not_turned, wet, torn, dropped }
    Released { run, pouches, use_until }
    SetAside { pouches, run, why }
    StopLifted { pouches, why }
    Opened { pouch, visit, chair }
    TakenApart { pouches }
    Undone { act }
}
