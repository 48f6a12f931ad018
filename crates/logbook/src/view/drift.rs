//! The judged runs of one machine, for the watch over drift.

use super::View;
use crate::error::BookError;
use crate::fact::KeyFigures;
use crate::store::Value;
use measure::{Instant, MachineId, RunId};

/// The window moves on by so many runs at a time: what its first runs teach as usual would
/// otherwise be another thing after every run.
const STEP: usize = 100;

/// One judged run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct JudgedRun {
    /// The run.
    pub run: RunId,
    /// Its number on its day.
    pub number: u32,
    /// When it was started.
    pub started: Instant,
    /// No other run of the machine came before it on its day.
    pub first_of_day: bool,
    /// The figures of its record.
    pub figures: KeyFigures,
}

impl View<'_> {
    /// The runs of a machine whose record was judged, oldest first: the last `most` of them, or up
    /// to 99 fewer. Where the number of the day starts again, a day begins; a start that was undone
    /// warmed nothing up.
    pub fn judged_runs(
        &self,
        machine: MachineId,
        most: usize,
    ) -> Result<Vec<JudgedRun>, BookError> {
        let rows = self.sql.all(
            "SELECT run.run, run.number, run.started_ms, run.undone, record_cycle.judged_seq \
             FROM run LEFT JOIN record_cycle ON record_cycle.record = run.record \
             AND record_cycle.cycle = run.record_cycle \
             WHERE run.machine = $1 ORDER BY run.started_ms, run.started_seq",
            &[Value::id(&machine)],
            |row| {
                let started = Instant::from_millis(row.int(2)?);
                let judged: Option<u64> = row.maybe_count(4)?;
                Ok((row.id(0)?, row.count(1)?, started, row.flag(3)?, judged))
            },
        )?;
        let (mut last, mut cold) = (0, true);
        let mut judged_rows = Vec::new();
        for (run, number, started, undone, judged) in rows {
            cold |= number <= last;
            last = number;
            if undone {
                continue;
            }
            judged_rows.extend(judged.map(|seq| (run, number, started, cold, seq)));
            cold = false;
        }
        let over = judged_rows.len().saturating_sub(most).next_multiple_of(STEP);
        let mut runs = Vec::new();
        for (run, number, started, first_of_day, seq) in judged_rows.into_iter().skip(over) {
            let Some(fact) = self.judged(seq)? else { continue };
            runs.push(JudgedRun {
                run,
                number,
                started,
                first_of_day,
                figures: fact.judged.figures,
            });
        }
        Ok(runs)
    }
}
