//! How each kind of field of the third form is stored.

use super::{ChamberV3, ImplementV3, InsideV3, PouchSizeV3, ProgrammeFiguresV3, RackV3, TrayV3};
use crate::fact::ProgrammeFigures;
use crate::wire::v1::{Wire, as_text, structs};
use load::chamber::{Chamber, Face, Inside, Pattern, Rack, Tray};
use load::implement::{Form, Implement, Material, Stands};
use load::pouch::PouchSize;
use load::{ImplementWord, PouchWord};

as_text!([] ImplementWord, [] PouchWord);

/// Stored as the word that `load` keeps for it.
macro_rules! as_word {
    ($($kind:ty),*) => { $(
        impl Wire for $kind {
            type Form = String;
            fn to_wire(&self) -> Result<String, String> {
                Ok(self.word().to_owned())
            }
            fn from_wire(form: String) -> Result<Self, String> {
                Self::from_word(&form).ok_or_else(|| {
                    format!("the word {form:?} is not one that the book uses here")
                })
            }
        }
    )* };
}

as_word!(Form, Material, Stands, Pattern, Face);

impl Wire for Chamber {
    type Form = ChamberV3;
    fn to_wire(&self) -> Result<ChamberV3, String> {
        Ok(match self {
            Self::Round { diameter_mm, depth_mm } => ChamberV3::Round {
                diameter_mm: diameter_mm.to_wire()?,
                depth_mm: depth_mm.to_wire()?,
            },
            Self::Box { width_mm, height_mm, depth_mm } => ChamberV3::Box {
                width_mm: width_mm.to_wire()?,
                height_mm: height_mm.to_wire()?,
                depth_mm: depth_mm.to_wire()?,
            },
        })
    }
    fn from_wire(form: ChamberV3) -> Result<Self, String> {
        Ok(match form {
            ChamberV3::Round { diameter_mm, depth_mm } => Self::Round {
                diameter_mm: Wire::from_wire(diameter_mm)?,
                depth_mm: Wire::from_wire(depth_mm)?,
            },
            ChamberV3::Box { width_mm, height_mm, depth_mm } => Self::Box {
                width_mm: Wire::from_wire(width_mm)?,
                height_mm: Wire::from_wire(height_mm)?,
                depth_mm: Wire::from_wire(depth_mm)?,
            },
        })
    }
}

structs! {
    Implement = ImplementV3 {
        word, form, length_mm, width_mm, thick_mm, mass_dg, material, hinged, hollow, single_use,
        steam, ultrasonic, most_c
    }
    PouchSize = PouchSizeV3 { word, width_mm, length_mm, seam_mm, fold_mm, mass_dg }
    Tray = TrayV3 { width_mm, depth_mm, height_mm, mass_g }
    Rack = RackV3 { places, pitch_mm, height_mm, depth_mm, mass_g }
    Inside = InsideV3 {
        chamber, trays, rack, pattern, face, wall_mm, between_mm, manual_page
    }
    ProgrammeFigures = ProgrammeFiguresV3 {
        machine, programme, set_c, hold_s, pulses, drying_min, drying_pa, for_pouches, for_hollow,
        most_pouched_g, most_unwrapped_g, manual_page
    }
}
