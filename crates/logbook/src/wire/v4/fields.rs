//! How each kind of field of the fourth form is stored.

use super::{AboutV4, ChoreRuleV4};
use crate::fact::{About, ChoreRule};
use crate::wire::v1::{Wire, as_text, structs};
use load::{ChoreWord, StockWord};

as_text!([] ChoreWord, [] StockWord);

impl Wire for About {
    type Form = AboutV4;
    fn to_wire(&self) -> Result<AboutV4, String> {
        Ok(match self {
            Self::Salon => AboutV4::Salon,
            Self::Machine(machine) => AboutV4::Machine(machine.to_wire()?),
            Self::Thing(thing) => AboutV4::Thing(thing.to_wire()?),
        })
    }
    fn from_wire(form: AboutV4) -> Result<Self, String> {
        Ok(match form {
            AboutV4::Salon => Self::Salon,
            AboutV4::Machine(machine) => Self::Machine(Wire::from_wire(machine)?),
            AboutV4::Thing(thing) => Self::Thing(Wire::from_wire(thing)?),
        })
    }
}

structs! {
    ChoreRule = ChoreRuleV4 { chore, about, part, days, runs, minutes, stops_work, manual_page }
}
