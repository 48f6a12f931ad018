//! Typical figures for a plan, until the salon says its own.
//!
//! Cycle lengths of about 7, 15 and 45 minutes and about eight sets in the long cycle are common
//! practice, with no source. Everything else here is an assumption: a tray on a kitchen scale and
//! a look at the clock are better.

pub mod chores;

use crate::fact::{
    DayCycle, DayRules, Drying, KindFigures, MachineFigures, PlanOrder, ProgrammeFigures,
};
use load::{Programme, SetKind};
use measure::MachineId;

/// Sets soak and dry on a cloth for a quarter of an hour; an undried set is opened within half an
/// hour. (Assumption.)
pub const RULES: DayRules =
    DayRules { passive_min: 15, immediate_min: 30, order: PlanOrder::Salon };

/// A typical set of this kind. A pedicure set is heavier, a basket of bits lighter.
#[must_use]
pub fn kind(kind: &SetKind) -> KindFigures {
    let (mass_g, area_cm2, hand_min) = match kind.word() {
        "pedicure" => (320, 260, 4),
        "bits" => (80, 120, 2),
        _ => (150, 220, 3),
    };
    KindFigures {
        kind: kind.clone(),
        mass_g,
        area_cm2,
        hand_min,
        pouch_cents: 8,
        target_ready: 2,
        spares: 1,
    }
}

/// A typical small machine with three programmes.
#[must_use]
pub fn machine(machine: MachineId) -> MachineFigures {
    let programmes = [
        // Word, cold and warm minutes, grams, cm², drying, in pouches.
        ("fast", (12, 7), 600, 0, Drying::None, false),
        ("middle", (22, 15), 1_400, 1_300, Drying::Short, true),
        ("long", (55, 45), 2_200, 2_000, Drying::Full, true),
    ];
    let cycles = programmes
        .into_iter()
        .filter_map(|(word, (cold_min, warm_min), max_mass_g, max_area_cm2, drying, wrapped)| {
            Some(DayCycle {
                programme: word.parse::<Programme>().ok()?,
                cold_min,
                warm_min,
                max_mass_g,
                max_area_cm2,
                drying,
                wrapped,
                load_min: 2,
                unload_min: 2,
                cool_min: if drying == Drying::None { 3 } else { 10 },
                cold_cents: 60,
                warm_cents: 45,
            })
        })
        .collect();
    MachineFigures { machine, warm_window_min: 30, cycles }
}

/// What a typical machine does in a programme that dries so far. The manual of the machine knows
/// better: what a load may weigh is not known, and nothing hollow goes in until somebody has looked
/// it up. (All assumption.)
#[must_use]
pub fn programme(machine: MachineId, cycle: &DayCycle) -> ProgrammeFigures {
    let (hold_s, drying_min, drying_pa) = match cycle.drying {
        Drying::None => (210, 0, None),
        Drying::Short => (240, 6, Some(10_000)),
        Drying::Full => (240, 20, Some(8_000)),
    };
    ProgrammeFigures {
        machine,
        programme: cycle.programme.clone(),
        set_c: 134,
        hold_s,
        pulses: 3,
        drying_min,
        drying_pa,
        for_pouches: cycle.wrapped && cycle.drying != Drying::None,
        for_hollow: false,
        most_pouched_g: None,
        most_unwrapped_g: None,
        manual_page: None,
    }
}
