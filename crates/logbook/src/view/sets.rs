//! Pouches and their codes.

use super::salon::set_kind;
use super::{Pouch, View};
use crate::error::BookError;
use crate::fact::StopReason;
use crate::fold::known_word;
use crate::store::{Row, Value};
use load::{SetState, ShelfCode};
use measure::{Instant, PouchId, RunId};
use std::collections::HashSet;

/// From one code to the next: near the golden section of their number and prime to it, so that
/// every code comes once a round and neighbours in time differ in what is seen and heard.
const STRIDE: u32 = 22_783;

pub(super) const COLUMNS: &str = "pouch.pouch, pouch.code, pouch.kind, pouch.pouched, \
    pouch.hollow, pouch.state, pouch.packed_ms, pouch.run, pouch.released_ms, \
    pouch.released_by, pouch.use_until_ms, pouch.opened_ms, pouch.visit, pouch.chair, \
    pouch.stopped, pouch.ended_ms, pouch.contradicted";

impl View<'_> {
    /// A pouch.
    pub fn pouch(&self, id: PouchId) -> Result<Option<Pouch>, BookError> {
        self.sql.first(
            &format!("SELECT {COLUMNS} FROM pouch WHERE pouch = $1"),
            &[Value::id(&id)],
            pouch_row,
        )
    }

    /// The pouch that a code names now: the one that was packed last with it.
    pub fn pouch_by_code(&self, code: ShelfCode) -> Result<Option<Pouch>, BookError> {
        self.sql.first(
            &format!(
                "SELECT {COLUMNS} FROM pouch WHERE code = $1 \
                 ORDER BY packed_seq DESC, packed_part DESC LIMIT 1"
            ),
            &[Value::Int(code.number().into())],
            pouch_row,
        )
    }

    /// The pouches in any of these states, the oldest first.
    pub fn pouches_in(&self, states: &[SetState]) -> Result<Vec<Pouch>, BookError> {
        let mut found: Vec<((u64, u32), Pouch)> = Vec::new();
        let mut asked = HashSet::new();
        for state in states.iter().filter(|state| asked.insert(**state)) {
            self.sql.each(
                &format!(
                    "SELECT {COLUMNS}, packed_seq, packed_part FROM pouch WHERE state = $1 \
                     ORDER BY packed_seq, packed_part"
                ),
                &[Value::Text(state.word())],
                |row| {
                    found.push(((row.count(17)?, row.count(18)?), pouch_row(row)?));
                    Ok(())
                },
            )?;
        }
        found.sort_by_key(|(packed, _)| *packed);
        Ok(found.into_iter().map(|(_, pouch)| pouch).collect())
    }

    /// Every pouch that was said to be in the run, in the order of the tray.
    pub fn pouches_of_run(&self, run: RunId) -> Result<Vec<Pouch>, BookError> {
        self.sql.all(
            &format!(
                "SELECT {COLUMNS} FROM run_pouch JOIN pouch ON pouch.pouch = run_pouch.pouch \
                 WHERE run_pouch.run = $1 ORDER BY run_pouch.part"
            ),
            &[Value::id(&run)],
            pouch_row,
        )
    }

    /// Why a pouch is stopped: every reason that stands, the first one first.
    pub fn stops_of(&self, pouch: PouchId) -> Result<Vec<StopReason>, BookError> {
        self.sql.all(
            "SELECT why FROM stop WHERE pouch = $1 ORDER BY seq",
            &[Value::id(&pouch)],
            |row| known_word(&row.text(0)?),
        )
    }

    /// The next `n` codes that no pouch in the round has; fewer where so many are not free.
    ///
    /// The same book always answers the same codes.
    pub fn free_codes(&self, n: usize) -> Result<Vec<ShelfCode>, BookError> {
        let last = self.sql.first(
            "SELECT code FROM pouch ORDER BY packed_seq DESC, packed_part DESC LIMIT 1",
            &[],
            |row| row.count::<u32>(0),
        )?;
        let mut taken = HashSet::new();
        for state in SetState::ALL {
            if matches!(state, SetState::Opened | SetState::Retired) {
                continue;
            }
            self.sql.each(
                "SELECT code FROM pouch WHERE state = $1",
                &[Value::Text(state.word())],
                |row| {
                    taken.insert(row.count::<u32>(0)?);
                    Ok(())
                },
            )?;
        }
        let first = u64::from(last.unwrap_or(0));
        let codes = (1..=u64::from(ShelfCode::COUNT)).map(|step| {
            let number = (first + step * u64::from(STRIDE)) % u64::from(ShelfCode::COUNT);
            ShelfCode::from_number(u32::try_from(number).unwrap_or(0))
        });
        Ok(codes.filter(|code| !taken.contains(&code.number())).take(n).collect())
    }
}

/// Reads a row of [`COLUMNS`].
pub(super) fn pouch_row(row: &Row<'_, '_>) -> Result<Pouch, BookError> {
    let moment = |at| Ok::<_, BookError>(row.maybe_int(at)?.map(Instant::from_millis));
    let released_by = row.maybe_id(9)?;
    let opened = match (moment(11)?, row.maybe_id(12)?) {
        (Some(at), Some(visit)) => Some((at, visit, row.maybe_count(13)?)),
        _ => None,
    };
    Ok(Pouch {
        pouch: row.id(0)?,
        code: ShelfCode::from_number(row.count(1)?),
        kind: set_kind(&row.text(2)?)?,
        pouched: row.flag(3)?,
        hollow: row.flag(4)?,
        state: known_word(&row.text(5)?)?,
        packed: Instant::from_millis(row.int(6)?),
        run: row.maybe_id(7)?,
        released: moment(8)?.map(|at| (at, released_by)),
        use_until: moment(10)?,
        opened,
        stopped: row.maybe_text(14)?.map(|word| known_word(&word)).transpose()?,
        ended: moment(15)?,
        contradicted: row.flag(16)?,
    })
}
