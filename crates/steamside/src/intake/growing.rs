//! A record that is being written: its last line, for the screens, while the run goes on. Nothing
//! is judged and nothing is kept; the whole file is taken in when it has been still.

use super::judge::{Examined, examine_file};
use super::known;
use super::take::salon_zone;
use crate::acts::Refusal;
use crate::clock;
use crate::live::{Phase, Word};
use cycle::figures::Figures;
use logbook::view::{Machine, Run, View};
use measure::{Instant, MachineId, Span};

/// Largest file that is read again while it grows. A run of four samples a second is a tenth of it.
pub const LARGEST: u64 = 2 * 1024 * 1024;

/// How far a record's clock may lie from the start that a person tapped.
const NEAR: Span = Span::from_minutes(10);

/// A file that has changed.
#[derive(Debug, Clone, Copy)]
pub struct Grown<'a> {
    /// What is in it by now.
    pub bytes: &'a [u8],
    /// The machine that writes there, where only one does.
    pub machine: Option<MachineId>,
    /// When it changed last.
    pub heard: Instant,
    /// It was seen to grow, and not only found.
    pub grew: bool,
}

/// The last word in a file, where it belongs to a run that is in its machine now.
pub fn last_word(view: &View<'_>, grown: Grown<'_>) -> Result<Option<Word>, Refusal> {
    let machines = view.machines()?;
    let Some((machine, run)) = running(view, &machines, grown.machine)? else {
        return Ok(None);
    };
    let known = known::of_machine(&machines, Some(machine.machine));
    let Some(Examined::Cycle(cycle)) = examine_file(grown.bytes, &known).pop() else {
        return Ok(None);
    };
    let (record, figures) = *cycle;
    let belongs = match record.start_clock.as_ref().and_then(|text| text.parse().ok()) {
        Some(start) => {
            let zone = salon_zone(view)?;
            let begun = |at: Instant| at - Span::from_millis(machine.ahead_ms);
            let far = |at: Instant| (at - run.started.0).millis().abs();
            clock::moments_of(start, &zone).into_iter().map(begun).any(|at| far(at) <= NEAR.millis())
        }
        // A file without a date is only that of the run where it is written while we look.
        None => grown.grew && grown.heard >= run.started.0,
    };
    let last = record.samples.temp_c.last().filter(|_| belongs);
    Ok(last.map(|temp| Word {
        run: run.run,
        phase: phase(&figures),
        temp_mc: (temp * 1_000.0).round() as i64,
        held_ms: (figures.hold_s * 1_000.0) as i64,
        heard: grown.heard,
    }))
}

/// The machine that is meant and the run in it. Which of two machines wrote it is not guessed.
fn running<'a>(
    view: &View<'_>,
    machines: &'a [Machine],
    said: Option<MachineId>,
) -> Result<Option<(&'a Machine, Run)>, Refusal> {
    let mut writing = machines.iter().filter(|row| match said {
        Some(machine) => row.machine == machine,
        None => row.writes_files,
    });
    let (Some(machine), None) = (writing.next(), writing.next()) else {
        return Ok(None);
    };
    let run = machine.running.map(|run| view.run(run)).transpose()?.flatten();
    Ok(run.map(|run| (machine, run)))
}

/// The phase that the last sample lies in. A record that goes on may still name it otherwise.
fn phase(figures: &Figures) -> Option<Phase> {
    let name = figures.phases.last()?.name.as_str();
    match name.split(' ').next().unwrap_or(name) {
        "preheat" | "purge" | "heat-up" => Some(Phase::HeatingUp),
        "vacuum" | "steam" | "release" => Some(Phase::AirOut),
        "plateau" => Some(Phase::AtTemperature),
        "exhaust" => Some(Phase::SteamOut),
        "drying" => Some(Phase::Drying),
        "air-in" | "ambient" => Some(Phase::AirIn),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::panic)] // tests may stop at once
    use super::*;
    use cycle::record::Known;

    /// The first so many seconds of p01. Its truth file: vacuum 1 from 4 to 81 s, steam 1 to 123 s,
    /// heat-up from 281 to 385.4 s, plateau from 400.6 to 648.8 s, exhaust to 686.2 s, drying to
    /// 1286.4 s, then air-in; set temperature 134 C.
    #[test]
    fn the_phase_of_a_record_that_is_still_being_written() {
        let text = include_str!("../../../cycle/tests/records/p01.csv");
        let check = |seconds: usize, expected: Phase, held_s: std::ops::Range<f64>| {
            let lines: Vec<&str> = text.lines().take(seconds + 2).collect();
            let bytes = lines.join("\n");
            let Some(Examined::Cycle(cycle)) =
                examine_file(bytes.as_bytes(), &Known::default()).pop()
            else {
                panic!("{seconds} s of a record can be read");
            };
            assert_eq!(phase(&cycle.1), Some(expected), "{seconds} s");
            assert!(held_s.contains(&cycle.1.hold_s), "{seconds} s: {}", cycle.1.hold_s);
        };
        let none = 0.0..0.1;
        check(60, Phase::AirOut, none.clone());
        check(110, Phase::AirOut, none.clone());
        check(340, Phase::HeatingUp, none);
        // The truth's own border plus and minus the 10 s that the contract grants.
        check(520, Phase::AtTemperature, 109.4..145.0);
        check(900, Phase::Drying, 238.2..275.0);
        check(1_335, Phase::AirIn, 238.2..275.0);
    }
}
