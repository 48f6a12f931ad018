//! The salon, its people, its machines, its kinds of sets.

use super::{KindCount, Machine, Person, Salon, View};
use crate::drawer;
use crate::error::BookError;
use crate::fact::{DrawerRef, Reads};
use crate::fold::known_word;
use crate::store::{Row, Value, unreadable};
use crate::wire::words::Word;
use load::SetKind;
use measure::{Instant, MachineId, PersonId};

const MACHINE: &str = "SELECT machine, number, air_removal, writes_files, most_pouches, ahead_ms, \
                       out_since_ms, running, altitude_m, temperature_unit, pressure_unit, \
                       pressure_reference, day_first, reads_seq FROM machine";
const PERSON: &str = "SELECT person, sign_entry, sign_commitment, left_ms FROM person";

impl View<'_> {
    /// The salon.
    ///
    /// # Errors
    /// Trouble with the storage; so for every question of this type.
    pub fn salon(&self) -> Result<Salon, BookError> {
        self.sql
            .first("SELECT salon, zone, book, opened_ms FROM salon", &[], |row| {
                Ok(Salon {
                    salon: row.id(0)?,
                    zone: row.text(1)?,
                    book: known_word(&row.text(2)?)?,
                    opened: Instant::from_millis(row.int(3)?),
                })
            })?
            .ok_or(BookError::LinesMissing { known: 1, found: 0 })
    }

    /// The people who work here, in the order in which they joined.
    pub fn people(&self) -> Result<Vec<Person>, BookError> {
        let rows = self.sql.all(
            &format!("{PERSON} WHERE left_ms IS NULL ORDER BY joined_seq"),
            &[],
            person_row,
        )?;
        rows.into_iter().map(|row| self.with_sign(row)).collect()
    }

    /// A person, also one who left.
    pub fn person(&self, id: PersonId) -> Result<Option<Person>, BookError> {
        self.sql
            .first(&format!("{PERSON} WHERE person = $1"), &[Value::id(&id)], person_row)?
            .map(|row| self.with_sign(row))
            .transpose()
    }

    fn with_sign(&self, row: PersonRow) -> Result<Person, BookError> {
        let sign = self.kept(&row.sign)?.map(|bytes| {
            // A sign is put in as text; other bytes would be shown as what they are.
            String::from_utf8_lossy(&bytes).into_owned()
        });
        Ok(Person { person: row.person, sign, left: row.left })
    }

    /// What lies in a drawer entry; `None` where it was deleted.
    pub fn drawer(&self, entry: measure::DrawerId) -> Result<Option<Vec<u8>>, BookError> {
        Ok(drawer::find(self.sql, entry)?.map(|found| found.content))
    }

    /// What a fact has put in the drawer, checked against what it committed to; `None` where the
    /// entry was deleted.
    ///
    /// # Errors
    /// Content that is not what was put there.
    pub fn kept(&self, reference: &DrawerRef) -> Result<Option<Vec<u8>>, BookError> {
        match drawer::find(self.sql, reference.entry)? {
            Some(found) if !found.is(reference) => Err(BookError::DrawerChanged(reference.entry)),
            found => Ok(found.map(|found| found.content)),
        }
    }

    /// The machines, by their number.
    pub fn machines(&self) -> Result<Vec<Machine>, BookError> {
        self.sql.all(&format!("{MACHINE} ORDER BY number, machine"), &[], machine_row)
    }

    /// A machine.
    pub fn machine(&self, id: MachineId) -> Result<Option<Machine>, BookError> {
        self.sql.first(&format!("{MACHINE} WHERE machine = $1"), &[Value::id(&id)], machine_row)
    }

    /// The kinds of sets, by their word, with what lies about unpouched.
    pub fn kinds(&self) -> Result<Vec<KindCount>, BookError> {
        self.sql.all("SELECT kind, owned, used, washed FROM kind ORDER BY kind", &[], |row| {
            Ok(KindCount {
                kind: set_kind(&row.text(0)?)?,
                owned: row.maybe_count(1)?,
                used: row.count(2)?,
                washed: row.count(3)?,
            })
        })
    }
}

struct PersonRow {
    person: PersonId,
    sign: DrawerRef,
    left: Option<Instant>,
}

fn person_row(row: &Row<'_, '_>) -> Result<PersonRow, BookError> {
    Ok(PersonRow {
        person: row.id(0)?,
        sign: DrawerRef { entry: row.id(1)?, commitment: row.fixed(2)? },
        left: row.maybe_int(3)?.map(Instant::from_millis),
    })
}

fn machine_row(row: &Row<'_, '_>) -> Result<Machine, BookError> {
    Ok(Machine {
        machine: row.id(0)?,
        number: row.count(1)?,
        air_removal: known_word(&row.text(2)?)?,
        writes_files: row.flag(3)?,
        most_pouches: row.maybe_count(4)?,
        ahead_ms: row.int(5)?,
        out_since: row.maybe_int(6)?.map(Instant::from_millis),
        running: row.maybe_id(7)?,
        reads: Reads {
            altitude_m: row.maybe_int(8)?,
            temperature_unit: maybe_word(row, 9)?,
            pressure_unit: maybe_word(row, 10)?,
            pressure_reference: maybe_word(row, 11)?,
            day_first: row.maybe_int(12)?.map(|flag| flag != 0),
        },
        reads_since: row.maybe_count(13)?,
    })
}

fn maybe_word<W: Word>(row: &Row<'_, '_>, at: usize) -> Result<Option<W>, BookError> {
    row.maybe_text(at)?.map(|word| known_word(&word)).transpose()
}

pub(super) fn set_kind(word: &str) -> Result<SetKind, BookError> {
    word.parse().map_err(|error: load::NoPlainWord| unreadable(error.to_string()))
}
