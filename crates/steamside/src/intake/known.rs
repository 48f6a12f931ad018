//! What is known of a machine's records before one is read: the answers that people gave.

use cycle::record::Known;
use logbook::fact::Reads;
use logbook::view::Machine;
use measure::MachineId;

/// What people said of this machine's records. All machines of a salon stand at one height: where
/// nothing is said of this one, what the others agree on holds.
pub fn of_machine(machines: &[Machine], machine: Option<MachineId>) -> Known {
    let own = machines.iter().find(|row| Some(row.machine) == machine);
    let reads = own.map_or_else(Reads::default, |row| row.reads);
    Known {
        altitude_m: reads.altitude_m.or_else(|| of_salon(machines)).map(|metres| metres as f64),
        temperature_unit: reads.temperature_unit,
        pressure_unit: reads.pressure_unit,
        pressure_reference: reads.pressure_reference,
        day_first: reads.day_first,
    }
}

fn of_salon(machines: &[Machine]) -> Option<i64> {
    let mut said = machines.iter().filter_map(|row| row.reads.altitude_m);
    let first = said.next()?;
    said.all(|metres| metres == first).then_some(first)
}
