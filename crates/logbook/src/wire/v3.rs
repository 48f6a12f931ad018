//! The third stored form: facts about what goes in. It adds kinds to the first two and changes
//! none, so each kind of fact has one form. Frozen once a book was written with it: a change is a
//! `v4`.
//!
//! Ids and words are stored as in the first form; of what an implement is, and how pouches lie,
//! the words are those that `load` keeps.

mod fields;

use super::v1::Wire;
use crate::fact::Loading;
use serde::{Deserialize, Serialize};

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ImplementV3 {
    pub(crate) word: String,
    pub(crate) form: String,
    pub(crate) length_mm: i64,
    pub(crate) width_mm: i64,
    pub(crate) thick_mm: i64,
    pub(crate) mass_dg: i64,
    pub(crate) material: String,
    pub(crate) hinged: bool,
    pub(crate) hollow: bool,
    pub(crate) single_use: bool,
    pub(crate) steam: String,
    pub(crate) ultrasonic: String,
    pub(crate) most_c: i64,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct PouchSizeV3 {
    pub(crate) word: String,
    pub(crate) width_mm: i64,
    pub(crate) length_mm: i64,
    pub(crate) seam_mm: i64,
    pub(crate) fold_mm: i64,
    pub(crate) mass_dg: i64,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "snake_case")]
pub(crate) enum ChamberV3 {
    Round { diameter_mm: i64, depth_mm: i64 },
    Box { width_mm: i64, height_mm: i64, depth_mm: i64 },
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct TrayV3 {
    pub(crate) width_mm: i64,
    pub(crate) depth_mm: i64,
    pub(crate) height_mm: i64,
    pub(crate) mass_g: i64,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct RackV3 {
    pub(crate) places: i64,
    pub(crate) pitch_mm: i64,
    pub(crate) height_mm: i64,
    pub(crate) depth_mm: i64,
    pub(crate) mass_g: i64,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct InsideV3 {
    pub(crate) chamber: ChamberV3,
    pub(crate) trays: Vec<TrayV3>,
    pub(crate) rack: Option<RackV3>,
    pub(crate) pattern: String,
    pub(crate) face: String,
    pub(crate) wall_mm: i64,
    pub(crate) between_mm: i64,
    pub(crate) manual_page: Option<i64>,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ProgrammeFiguresV3 {
    pub(crate) machine: String,
    pub(crate) programme: String,
    pub(crate) set_c: i64,
    pub(crate) hold_s: i64,
    pub(crate) pulses: i64,
    pub(crate) drying_min: i64,
    pub(crate) drying_pa: Option<i64>,
    pub(crate) for_pouches: bool,
    pub(crate) for_hollow: bool,
    pub(crate) most_pouched_g: Option<i64>,
    pub(crate) most_unwrapped_g: Option<i64>,
    pub(crate) manual_page: Option<i64>,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "snake_case")]
pub(crate) enum LoadingV3 {
    ImplementSet(ImplementV3),
    ImplementEnded { word: String },
    SetOf { kind: String, pieces: Vec<(String, i64)> },
    PouchSet(PouchSizeV3),
    PouchEnded { word: String },
    InsideSet { machine: String, inside: InsideV3 },
    TrayWeighed { grams: i64, empty_g: Option<i64>, sets: Vec<(String, i64)>, pouched: bool },
    ProgrammeSet(ProgrammeFiguresV3),
}

/// Facts whose stored form has the same field names; each field is converted by its own [`Wire`].
macro_rules! loadings {
    ($($variant:ident { $($field:ident),* })* ; $($whole:ident),*) => {
        /// The stored form of a fact about what goes in; an error is a sentence.
        pub(crate) fn to_form(loading: &Loading) -> Result<LoadingV3, String> {
            Ok(match loading {
                $(Loading::$variant { $($field),* } => LoadingV3::$variant {
                    $($field: $field.to_wire()?),*
                },)*
                $(Loading::$whole(whole) => LoadingV3::$whole(whole.to_wire()?),)*
            })
        }

        /// The fact of a stored form; an error is a sentence.
        pub(crate) fn from_form(form: LoadingV3) -> Result<Loading, String> {
            Ok(match form {
                $(LoadingV3::$variant { $($field),* } => Loading::$variant {
                    $($field: Wire::from_wire($field)?),*
                },)*
                $(LoadingV3::$whole(whole) => Loading::$whole(Wire::from_wire(whole)?),)*
            })
        }
    };
}

loadings! {
    ImplementEnded { word }
    SetOf { kind, pieces }
    PouchEnded { word }
    InsideSet { machine, inside }
    TrayWeighed { grams, empty_g, sets, pouched }
    ;
    ImplementSet, PouchSet, ProgrammeSet
}
