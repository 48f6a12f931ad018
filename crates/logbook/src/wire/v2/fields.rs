//! How each kind of field of the second form is stored.

use super::{
    DayCycleV2, DayRulesV2, KindFiguresV2, MachineFiguresV2, OriginV2, PlannedRunV2, ServiceV2,
};
use crate::fact::{
    DayCycle, DayRules, Keyed, KindFigures, MachineFigures, Origin, PlannedRun, Service,
};
use crate::wire::v1::{Wire, as_text, structs};
use load::{Programme, ServiceWord};
use measure::RecordHash;

as_text!([] Programme, [] ServiceWord);

impl Wire for Keyed {
    type Form = String;
    fn to_wire(&self) -> Result<String, String> {
        Ok(self.to_string())
    }
    fn from_wire(form: String) -> Result<Self, String> {
        // A record hash is 32 bytes as text too; its reading is borrowed here.
        Ok(Self::from_bytes(*RecordHash::from_wire(form)?.bytes()))
    }
}

structs! {
    Origin = OriginV2 { source, entry, series, calendar, sequence }
    DayCycle = DayCycleV2 {
        programme, cold_min, warm_min, max_mass_g, max_area_cm2, drying, wrapped, load_min,
        unload_min, cool_min, cold_cents, warm_cents
    }
    MachineFigures = MachineFiguresV2 { machine, warm_window_min, cycles }
    KindFigures = KindFiguresV2 {
        kind, mass_g, area_cm2, hand_min, pouch_cents, target_ready, spares
    }
    DayRules = DayRulesV2 { passive_min, immediate_min, order }
    Service = ServiceV2 { service, word, minutes, weight, basin_min, needs }
    PlannedRun = PlannedRunV2 { machine, programme, start, warm, load }
}
