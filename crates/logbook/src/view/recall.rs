//! What a recall has to reach: runs of a machine, their pouches, the visits they were opened for.

use super::{Pouch, Run, View, runs, sets};
use crate::error::BookError;
use crate::store::{Row, Value};
use measure::{Instant, MachineId, PouchId, RunId, VisitId};
use std::collections::HashMap;

/// A visit that a pouch was opened for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PouchVisit {
    /// The pouch.
    pub pouch: PouchId,
    /// The visit.
    pub visit: VisitId,
    /// When it was opened.
    pub opened: Instant,
    /// The chair.
    pub chair: Option<u32>,
}

/// A run with everything that was in it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RunContents {
    /// The run.
    pub run: Run,
    /// Every pouch that was said to be in it.
    pub pouches: Vec<Pouch>,
    /// Every visit that one of them was said to be opened for; a pouch may have two, where two
    /// stations said so.
    pub visits: Vec<PouchVisit>,
}

const VISIT: &str = "opening.pouch, opening.visit, opening.opened_ms, opening.chair";

impl View<'_> {
    /// The visits that these pouches were opened for, in the order of the pouches.
    pub fn visits_of(&self, pouches: &[PouchId]) -> Result<Vec<PouchVisit>, BookError> {
        let mut visits = Vec::new();
        for pouch in pouches {
            self.sql.each(
                &format!("SELECT {VISIT} FROM opening WHERE pouch = $1 ORDER BY seq"),
                &[Value::id(pouch)],
                |row| {
                    visits.push(visit_row(row, 0)?);
                    Ok(())
                },
            )?;
        }
        Ok(visits)
    }

    /// What was opened for one visit.
    pub fn pouches_of_visit(&self, visit: VisitId) -> Result<Vec<PouchVisit>, BookError> {
        self.sql.all(
            &format!("SELECT {VISIT} FROM opening WHERE visit = $1 ORDER BY seq"),
            &[Value::id(&visit)],
            |row| visit_row(row, 0),
        )
    }

    /// The runs of a machine that started at or after `from` and before `to`, with everything
    /// that was in them. Runs whose start was undone had nothing in them and are left out.
    ///
    /// Three questions to the storage, however long the span.
    pub fn recall_input(
        &self,
        machine: MachineId,
        from: Instant,
        to: Instant,
    ) -> Result<Vec<RunContents>, BookError> {
        let span = [Value::id(&machine), Value::Int(from.millis()), Value::Int(to.millis())];
        let reached = "run.machine = $1 AND run.started_ms >= $2 AND run.started_ms < $3 \
                       AND run.undone = 0";
        let mut found: Vec<RunContents> = self.sql.all(
            &format!("{} WHERE {reached} ORDER BY run.started_ms, run.started_seq", runs::SELECT),
            &span,
            |row| {
                Ok(RunContents {
                    run: runs::run_row(row)?,
                    pouches: Vec::new(),
                    visits: Vec::new(),
                })
            },
        )?;
        let places: HashMap<RunId, usize> =
            found.iter().enumerate().map(|(place, contents)| (contents.run.run, place)).collect();
        self.sql.each(
            &format!(
                "SELECT {}, run.run FROM run JOIN run_pouch ON run_pouch.run = run.run \
                 JOIN pouch ON pouch.pouch = run_pouch.pouch WHERE {reached} \
                 ORDER BY run.started_ms, run.started_seq, run_pouch.part",
                sets::COLUMNS
            ),
            &span,
            |row| {
                let pouch = sets::pouch_row(row)?;
                if let Some(contents) = in_run(&mut found, &places, row.id(17)?) {
                    contents.pouches.push(pouch);
                }
                Ok(())
            },
        )?;
        self.sql.each(
            &format!(
                "SELECT {VISIT}, run.run FROM run JOIN run_pouch ON run_pouch.run = run.run \
                 JOIN opening ON opening.pouch = run_pouch.pouch WHERE {reached} \
                 ORDER BY opening.seq"
            ),
            &span,
            |row| {
                let visit = visit_row(row, 0)?;
                if let Some(contents) = in_run(&mut found, &places, row.id(4)?) {
                    contents.visits.push(visit);
                }
                Ok(())
            },
        )?;
        Ok(found)
    }
}

fn in_run<'f>(
    found: &'f mut [RunContents],
    places: &HashMap<RunId, usize>,
    run: RunId,
) -> Option<&'f mut RunContents> {
    places.get(&run).and_then(|place| found.get_mut(*place))
}

fn visit_row(row: &Row<'_, '_>, first: usize) -> Result<PouchVisit, BookError> {
    Ok(PouchVisit {
        pouch: row.id(first)?,
        visit: row.id(first + 1)?,
        opened: Instant::from_millis(row.int(first + 2)?),
        chair: row.maybe_count(first + 3)?,
    })
}
