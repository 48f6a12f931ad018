//! The rooms inside the demo's machines, what their manuals say, and a tray on the scale. Invented.

use super::{Script, word};
use crate::acts::{self, Refusal};
use load::chamber::{Chamber, Face, Inside, Pattern, Rack, Tray};
use load::{Programme, SetKind};
use logbook::fact::{Known, ProgrammeFigures};
use measure::{Instant, MachineId};

const ROUND: Chamber = Chamber::Round { diameter_mm: 250, depth_mm: 350 };
const BOX: Chamber = Chamber::Box { width_mm: 240, height_mm: 180, depth_mm: 350 };
const TRAY: Tray = Tray { width_mm: 205, depth_mm: 320, height_mm: 45, mass_g: 310 };
const WIDE: Tray = Tray { width_mm: 230, depth_mm: 330, height_mm: 50, mass_g: 360 };

/// The first machine has a rack, the second three trays with pouches overlapped.
fn inside(number: u32) -> Inside {
    let rack = Rack { places: 10, pitch_mm: 20, height_mm: 140, depth_mm: 280, mass_g: 620 };
    let (chamber, trays, rack, pattern, page) = match number {
        1 => (ROUND, vec![TRAY], Some(rack), Pattern::OnEdge, 31),
        _ => (BOX, vec![WIDE; 3], None, Pattern::Overlapped, 18),
    };
    Inside {
        chamber,
        trays,
        rack,
        pattern,
        face: Face::Film,
        wall_mm: 5,
        between_mm: 5,
        manual_page: Some(page),
    }
}

/// Word; drying in minutes and pascal; in pouches, grams; without, grams.
type Row = (&'static str, u32, Option<u32>, Option<u32>, u32);

const PROGRAMMES: [Row; 3] = [
    ("fast", 0, None, None, 900),
    ("middle", 10, Some(8_000), Some(1_800), 3_000),
    ("long", 20, Some(6_000), Some(2_600), 4_000),
];

fn figures(machine: MachineId, row: &Row) -> Result<ProgrammeFigures, Refusal> {
    let (programme, drying_min, drying_pa, most_pouched_g, most_unwrapped_g) = *row;
    let misread = |_| Refusal::rule_with("refused-field-misread", "field", "programme");
    Ok(ProgrammeFigures {
        machine,
        programme: programme.parse::<Programme>().map_err(misread)?,
        set_c: 134,
        hold_s: 240,
        pulses: 3,
        drying_min,
        drying_pa,
        for_pouches: drying_min > 0,
        for_hollow: drying_min > 0,
        most_pouched_g,
        most_unwrapped_g: Some(most_unwrapped_g),
        manual_page: Some(24),
    })
}

impl Script<'_> {
    /// Rooms, programmes, and one full tray weighed.
    pub(super) fn describe_rooms(&mut self, at: Instant) -> Result<(), Refusal> {
        for (machine, number) in
            self.machines.iter().map(|m| (m.machine, m.number)).collect::<Vec<_>>()
        {
            let inside = inside(number);
            self.act(at, Known::Setting, |v, d| acts::set_inside(v, d, machine, inside))?;
            for row in &PROGRAMMES {
                let figures = figures(machine, row)?;
                self.act(at, Known::Setting, |v, d| acts::set_programme(v, d, figures))?;
            }
        }
        let sets: Vec<(SetKind, u32)> = vec![(word("manicure")?, 4)];
        let weighed = acts::WeighTray { grams: 938, empty_g: 310, sets, pouched: true };
        self.act(at, Known::Read, |v, d| acts::weigh_tray(v, d, weighed))
    }
}
