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
        interval_s: None,
    }
}

fn of_salon(machines: &[Machine]) -> Option<i64> {
    let mut said = machines.iter().filter_map(|row| row.reads.altitude_m);
    let first = said.next()?;
    said.all(|metres| metres == first).then_some(first)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pages::tests::machine_row;
    use logbook::fact::Reference;

    #[test]
    fn a_salon_has_one_height_and_each_machine_its_own_units() {
        let at = |number, altitude_m| {
            let pressure_reference = (number == 1).then_some(Reference::Gauge);
            let reads = Reads { altitude_m, pressure_reference, ..Reads::default() };
            Machine { reads, ..machine_row(number) }
        };
        let check = |said: [Option<i64>; 3], expected: Option<f64>| {
            let machines = [at(1, said[0]), at(2, said[1]), at(3, said[2])];
            let known = of_machine(&machines, Some(machines[2].machine));
            assert_eq!(known, Known { altitude_m: expected, ..Known::default() }, "{said:?}");
        };
        check([None, None, None], None);
        check([Some(640), None, None], Some(640.0));
        check([Some(640), Some(640), None], Some(640.0));
        check([Some(640), Some(20), None], None);
        check([Some(640), Some(20), Some(5)], Some(5.0));
    }
}
