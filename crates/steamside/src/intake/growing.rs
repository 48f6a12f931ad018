//! A record that is being written: its last line, for the screens, while the run goes on. Nothing
//! is judged and nothing is kept; the whole file is taken in when it has been still.

use super::judge::{Examined, examine_file};
use super::known;
use super::take::salon_zone;
use crate::acts::Refusal;
use crate::clock;
use crate::live::{Phase, Word};
use cycle::figures::Figures;
use cycle::record::{CycleRecord, Source};
use logbook::view::{Machine, Run, View};
use measure::{Instant, MachineId, Span};

/// Largest file that is read again while it grows. A run of four samples a second is a tenth of it.
pub const LARGEST: u64 = 2 * 1024 * 1024;

/// Less of the air's pressure than this, before the set temperature: a pump is at work (ours).
const THIN: f64 = 0.9;

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
            clock::moments_of(start, &zone)
                .into_iter()
                .map(begun)
                .any(|at| far(at) <= NEAR.millis())
        }
        // A file without a date is only that of the run where it is written while we look.
        None => grown.grew && grown.heard >= run.started.0,
    };
    let last = record.samples.temp_c.last().filter(|_| belongs);
    Ok(last.map(|temp| Word {
        run: run.run,
        phase: phase(&record, &figures),
        temp_mc: (temp * 1_000.0).round() as i64,
        held_ms: if set_is_said(&figures) { (figures.hold_s * 1_000.0) as i64 } else { 0 },
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

/// Is it known which temperature the machine goes for? A guess from a record that still rises takes
/// 121 C on the way to 134 C for the end.
fn set_is_said(figures: &Figures) -> bool {
    figures.set_c.is_some_and(|(_, source)| source != Source::Plateau)
}

/// The phase that the last sample lies in, as far as a beginning shows it. Before the set
/// temperature the pressure alone tells: read as a whole record, a beginning looks like something
/// else. Where the record does not name its set temperature, it is not said to be there.
fn phase(record: &CycleRecord, figures: &Figures) -> Option<Phase> {
    if figures.hold_s <= 0.0 {
        let (air_kpa, now_kpa) = (record.ambient_kpa?, *record.samples.press_kpa.last()?);
        let thin = now_kpa < air_kpa * THIN;
        return Some(if thin { Phase::AirOut } else { Phase::HeatingUp });
    }
    match figures.phases.last()?.name.as_str() {
        "plateau" if set_is_said(figures) => Some(Phase::AtTemperature),
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

    /// The first so many seconds of p01, with or without its set temperature. Its truth file:
    /// vacuum 1 from 4 to 81 s, vacuum 3 from 214 s, heat-up from 281 to 385.4 s, plateau from
    /// 400.6 to 648.8 s, exhaust to 686.2 s, drying to 1286.4 s, then air-in; set 134 C.
    #[test]
    fn the_phase_of_a_record_that_is_still_being_written() {
        let text = include_str!("../../../cycle/tests/records/p01.csv");
        let check = |seconds: usize, said: bool, expected: Option<Phase>| {
            let more = |at: usize| match (said, at) {
                (false, _) => "",
                (true, 0) => ",set_C",
                (true, _) => ",134.0",
            };
            let lines = text.lines().take(seconds + 2).enumerate();
            let lines: Vec<String> =
                lines.map(|(at, line)| format!("{line}{}", more(at))).collect();
            let examined = examine_file(lines.join("\n").as_bytes(), &Known::default()).pop();
            let Some(Examined::Cycle(cycle)) = examined else {
                panic!("{seconds} s of a record can be read");
            };
            assert_eq!(phase(&cycle.0, &cycle.1), expected, "{seconds} s, {said}");
            assert!(!said || set_is_said(&cycle.1), "{seconds} s");
            cycle.1.hold_s
        };
        for said in [false, true] {
            check(60, said, Some(Phase::AirOut));
            check(240, said, Some(Phase::AirOut));
            check(900, said, Some(Phase::Drying));
            check(1_335, said, Some(Phase::AirIn));
        }
        check(360, true, Some(Phase::HeatingUp));
        check(360, false, None);
        check(520, false, None);
        // The truth's own border plus and minus the 10 s that the contract grants, and the time of
        // evening out before it.
        let held_s = check(520, true, Some(Phase::AtTemperature));
        assert!((109.4..145.0).contains(&held_s), "{held_s}");
    }
}
