//! The second stored form: the facts of the day. It adds kinds to the first and changes none, so
//! each kind of fact has one form; those of the first are still written in the first. Frozen once
//! a book was written with it: a change is a `v3`.
//!
//! Ids, digests, moments and words are stored as in the first form.

mod fields;

use super::v1::{DrawerRefV1, Wire};
use crate::fact::Day;
use serde::{Deserialize, Serialize};

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct OriginV2 {
    pub(crate) source: String,
    pub(crate) entry: String,
    pub(crate) series: String,
    pub(crate) calendar: String,
    pub(crate) sequence: i64,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct DayCycleV2 {
    pub(crate) programme: String,
    pub(crate) cold_min: i64,
    pub(crate) warm_min: i64,
    pub(crate) max_mass_g: i64,
    pub(crate) max_area_cm2: i64,
    pub(crate) drying: String,
    pub(crate) wrapped: bool,
    pub(crate) load_min: i64,
    pub(crate) unload_min: i64,
    pub(crate) cool_min: i64,
    pub(crate) cold_cents: i64,
    pub(crate) warm_cents: i64,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct MachineFiguresV2 {
    pub(crate) machine: String,
    pub(crate) warm_window_min: i64,
    pub(crate) cycles: Vec<DayCycleV2>,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct KindFiguresV2 {
    pub(crate) kind: String,
    pub(crate) mass_g: i64,
    pub(crate) area_cm2: i64,
    pub(crate) hand_min: i64,
    pub(crate) pouch_cents: i64,
    pub(crate) target_ready: i64,
    pub(crate) spares: i64,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct DayRulesV2 {
    pub(crate) passive_min: i64,
    pub(crate) immediate_min: i64,
    pub(crate) order: String,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ServiceV2 {
    pub(crate) service: String,
    pub(crate) word: String,
    pub(crate) minutes: i64,
    pub(crate) weight: i64,
    pub(crate) basin_min: i64,
    pub(crate) needs: Vec<(String, i64)>,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct PlannedRunV2 {
    pub(crate) machine: String,
    pub(crate) programme: String,
    pub(crate) start: i64,
    pub(crate) warm: bool,
    pub(crate) load: Vec<(String, i64)>,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "snake_case")]
pub(crate) enum DayV2 {
    KeyMade {
        key: DrawerRefV1,
    },
    ServiceSet(ServiceV2),
    ServiceEnded {
        service: String,
    },
    PhraseLearnt {
        phrase: String,
        service: Option<String>,
    },
    VisitBooked {
        visit: String,
        start: i64,
        end: i64,
        chair: Option<i64>,
        service: Option<String>,
        origin: Option<OriginV2>,
    },
    VisitMoved {
        visit: String,
        start: i64,
        end: i64,
        chair: Option<i64>,
        sequence: i64,
    },
    VisitIs {
        visit: String,
        service: Option<String>,
    },
    VisitLate {
        visit: String,
        minutes: i64,
    },
    VisitCancelled {
        visit: String,
    },
    VisitMissed {
        visit: String,
    },
    ShiftSet {
        shift: String,
        person: String,
        from: i64,
        to: i64,
        lunch: Option<(i64, i64)>,
    },
    ShiftEnded {
        shift: String,
    },
    ClosedSet {
        from: i64,
        to: i64,
        closed: bool,
    },
    KindFigures(KindFiguresV2),
    MachineFigures(MachineFiguresV2),
    Rules(DayRulesV2),
    PlanAccepted {
        from: i64,
        to: i64,
        runs: Vec<PlannedRunV2>,
    },
}

/// Facts whose stored form has the same field names; each field is converted by its own [`Wire`].
macro_rules! days {
    ($($variant:ident { $($field:ident),* })* ; $($whole:ident),*) => {
        /// The stored form of a fact of the day; an error is a sentence.
        pub(crate) fn to_form(day: &Day) -> Result<DayV2, String> {
            Ok(match day {
                $(Day::$variant { $($field),* } => DayV2::$variant {
                    $($field: $field.to_wire()?),*
                },)*
                $(Day::$whole(whole) => DayV2::$whole(whole.to_wire()?),)*
            })
        }

        /// The fact of a stored form; an error is a sentence.
        pub(crate) fn from_form(form: DayV2) -> Result<Day, String> {
            Ok(match form {
                $(DayV2::$variant { $($field),* } => Day::$variant {
                    $($field: Wire::from_wire($field)?),*
                },)*
                $(DayV2::$whole(whole) => Day::$whole(Wire::from_wire(whole)?),)*
            })
        }
    };
}

days! {
    KeyMade { key }
    ServiceEnded { service }
    PhraseLearnt { phrase, service }
    VisitBooked { visit, start, end, chair, service, origin }
    VisitMoved { visit, start, end, chair, sequence }
    VisitIs { visit, service }
    VisitLate { visit, minutes }
    VisitCancelled { visit }
    VisitMissed { visit }
    ShiftSet { shift, person, from, to, lunch }
    ShiftEnded { shift }
    ClosedSet { from, to, closed }
    PlanAccepted { from, to, runs }
    ;
    ServiceSet, KindFigures, MachineFigures, Rules
}
