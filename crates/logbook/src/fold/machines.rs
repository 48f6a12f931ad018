//! The salon, its people and its machines.

use super::Fold;
use crate::error::BookError;
use crate::fact::{Body, BookKind, DrawerRef};
use crate::store::Value;
use crate::wire::words::Word;
use measure::{MachineId, PersonId, SalonId};

impl Fold<'_> {
    /// The book begins; it does so once.
    pub(super) fn salon_opened(
        &self,
        salon: SalonId,
        zone: &str,
        book: BookKind,
    ) -> Result<(), BookError> {
        if self.seq != 1 || salon != self.salon {
            return self.contradict();
        }
        self.sql
            .run(
                "INSERT INTO salon (salon, zone, book, opened_ms) VALUES ($1, $2, $3, $4)",
                &[Value::id(&salon), Value::Text(zone), Value::Text(book.word()), self.at()],
            )
            .map(drop)
    }

    /// Another time zone from now on.
    pub(super) fn zone_set(&self, zone: &str) -> Result<(), BookError> {
        self.sql.run("UPDATE salon SET zone = $1", &[Value::Text(zone)]).map(drop)
    }

    /// A person works here. Said again, the later sign holds.
    pub(super) fn person_joined(
        &self,
        person: PersonId,
        sign: &DrawerRef,
    ) -> Result<(), BookError> {
        self.sql
            .run(
                "INSERT INTO person (person, sign_entry, sign_commitment, joined_seq) \
                 VALUES ($1, $2, $3, $4) ON CONFLICT (person) DO UPDATE SET \
                 sign_entry = excluded.sign_entry, sign_commitment = excluded.sign_commitment, \
                 left_ms = NULL",
                &[
                    Value::id(&person),
                    Value::id(&sign.entry),
                    Value::Bytes(&sign.commitment),
                    self.here(),
                ],
            )
            .map(drop)
    }

    /// A person no longer works here.
    pub(super) fn person_left(&self, person: PersonId) -> Result<(), BookError> {
        let touched = self.sql.run(
            "UPDATE person SET left_ms = $1 WHERE person = $2 AND left_ms IS NULL",
            &[self.at(), Value::id(&person)],
        )?;
        self.expect_one(touched)
    }

    /// Everything about a machine but its runs.
    pub(super) fn machine(&self, body: &Body) -> Result<(), BookError> {
        let touched = match body {
            Body::MachineAdded { .. } => self.machine_added(body)?,
            Body::MachineClockSet { machine, ahead_ms } => self.sql.run(
                "UPDATE machine SET ahead_ms = $1 WHERE machine = $2",
                &[Value::Int(*ahead_ms), Value::id(machine)],
            )?,
            Body::MachineReads { .. } => self.machine_reads(body)?,
            // Out twice: out since the first time, so that a recall reaches no less.
            Body::MachineOut { machine } => self.sql.run(
                "UPDATE machine SET out_since_ms = COALESCE(out_since_ms, $1) WHERE machine = $2",
                &[self.at(), Value::id(machine)],
            )?,
            Body::MachineBack { machine } => self.sql.run(
                "UPDATE machine SET out_since_ms = NULL WHERE machine = $1",
                &[Value::id(machine)],
            )?,
            _ => 0,
        };
        self.expect_one(touched)
    }

    /// Said again, the later description holds; clock, answers, stop and run stay.
    fn machine_added(&self, body: &Body) -> Result<usize, BookError> {
        let Body::MachineAdded { machine, number, air_removal, writes_files, most_pouches } = body
        else {
            return Ok(0);
        };
        self.sql.run(
            "INSERT INTO machine \
             (machine, number, air_removal, writes_files, most_pouches, ahead_ms) \
             VALUES ($1, $2, $3, $4, $5, 0) ON CONFLICT (machine) DO UPDATE SET \
             number = excluded.number, air_removal = excluded.air_removal, \
             writes_files = excluded.writes_files, most_pouches = excluded.most_pouches",
            &[
                Value::id(machine),
                Value::Int((*number).into()),
                Value::Text(air_removal.word()),
                Value::flag(*writes_files),
                Value::maybe(*most_pouches),
            ],
        )
    }

    /// What was said last holds whole; since when anything was said stays.
    fn machine_reads(&self, body: &Body) -> Result<usize, BookError> {
        let Body::MachineReads {
            machine,
            altitude_m,
            temperature_unit,
            pressure_unit,
            pressure_reference,
            day_first,
        } = body
        else {
            return Ok(0);
        };
        self.sql.run(
            "UPDATE machine SET altitude_m = $1, temperature_unit = $2, pressure_unit = $3, \
             pressure_reference = $4, day_first = $5, reads_seq = COALESCE(reads_seq, $6) \
             WHERE machine = $7",
            &[
                Value::maybe(*altitude_m),
                Value::maybe_text(temperature_unit.map(Word::word)),
                Value::maybe_text(pressure_unit.map(Word::word)),
                Value::maybe_text(pressure_reference.map(Word::word)),
                Value::maybe(day_first.map(i64::from)),
                self.here(),
                Value::id(machine),
            ],
        )
    }

    /// Which run is in the machine now.
    pub(super) fn set_running(
        &self,
        machine: MachineId,
        run: Option<measure::RunId>,
    ) -> Result<usize, BookError> {
        self.sql.run(
            "UPDATE machine SET running = $1 WHERE machine = $2",
            &[Value::maybe_id(&run), Value::id(&machine)],
        )
    }

    /// A fact about something that is not in the book does not fit.
    pub(super) fn expect_one(&self, touched: usize) -> Result<(), BookError> {
        if touched == 0 { self.contradict() } else { Ok(()) }
    }
}
