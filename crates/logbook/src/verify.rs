//! Is the record whole and unchanged?

use crate::book::file_of;
use crate::chain::{Hash, START};
use crate::drawer::{self, DrawerKind};
use crate::error::BookError;
use crate::fact::{Body, Day, DrawerRef, Fact};
use crate::facts;
use crate::store::migrate::{SQLITE, up_to_date};
use crate::store::sqlite::{connect_to_look, read_on};
use crate::store::{Row, Sql, Value};
use crate::wire::words::Word;
use measure::{Instant, RecordHash, SalonId};
use std::path::Path;

/// What was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Verified {
    /// Nothing was found that does not fit.
    pub ok: bool,
    /// How many facts there are.
    pub facts: u64,
    /// When the first was written.
    pub first_at: Option<Instant>,
    /// When the last was written.
    pub last_at: Option<Instant>,
    /// The hash of the last fact, in hexadecimal digits: written down elsewhere, it proves later
    /// that nothing before it was changed, not even by somebody who made the whole chain anew.
    pub head: Option<String>,
    /// The first place that does not fit.
    pub first_bad: Option<FirstBad>,
}

/// The first place that does not fit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FirstBad {
    /// Place of the line.
    pub seq: u64,
    /// What does not fit, as a sentence.
    pub why: String,
}

/// Reads a book from its first line to its last, without writing: does each line follow the one
/// before, is it as it was written, and is what lies in the drawer what was put there?
///
/// `path` is the folder of a book or its file. What somebody with the file in hand can still do
/// unseen is to make the whole chain anew, or to delete a drawer entry; see
/// `docs/decisions/0003-facts-and-their-bytes.md`.
///
/// # Errors
/// A file that cannot be read or is no book. A line that was changed is no error but a finding.
pub fn verify(path: &Path) -> Result<Verified, BookError> {
    let file = file_of(path);
    if !file.is_file() {
        return Err(BookError::Missing(path.to_owned()));
    }
    let conn = connect_to_look(&file)?;
    read_on(&conn, |sql| {
        if !up_to_date(sql, SQLITE)? {
            return Err(BookError::Missing(path.to_owned()));
        }
        walk(sql)
    })
}

/// What the walk has seen so far.
struct Walk<'a> {
    sql: Sql<'a>,
    salon: Option<SalonId>,
    facts: u64,
    first_at: Option<Instant>,
    last_at: Option<Instant>,
    head: Hash,
    first_bad: Option<FirstBad>,
}

fn walk(sql: Sql<'_>) -> Result<Verified, BookError> {
    let mut walk = Walk {
        sql,
        salon: None,
        facts: 0,
        first_at: None,
        last_at: None,
        head: START,
        first_bad: None,
    };
    facts::each_line(sql, |row| walk.line(row))?;
    walk.end()?;
    Ok(Verified {
        ok: walk.first_bad.is_none(),
        facts: walk.facts,
        first_at: walk.first_at,
        last_at: walk.last_at,
        head: (walk.facts > 0).then(|| RecordHash::from_bytes(walk.head).to_string()),
        first_bad: walk.first_bad,
    })
}

impl Walk<'_> {
    fn bad(&mut self, seq: u64, why: impl Into<String>) {
        self.first_bad.get_or_insert(FirstBad { seq, why: why.into() });
    }

    /// Looks at one line. After the first that does not fit, lines are only counted: nothing that
    /// follows it is proven.
    fn line(&mut self, row: &Row<'_, '_>) -> Result<(), BookError> {
        self.facts += 1;
        let kept = match facts::line(row) {
            Ok(kept) => kept,
            Err(BookError::Damaged { why, .. }) => {
                let expected = self.facts;
                self.bad(expected, why);
                return Ok(());
            }
            Err(other) => return Err(other),
        };
        let written = Instant::from_millis(kept.line.written_ms);
        self.first_at.get_or_insert(written);
        self.last_at = Some(written);
        let before = std::mem::replace(&mut self.head, kept.hash);
        if self.first_bad.is_some() {
            return Ok(());
        }
        let salon = *self.salon.get_or_insert(kept.line.salon);
        let expected = self.facts;
        if kept.line.seq != expected {
            self.bad(expected, "this line is missing");
        } else if kept.line.salon != salon {
            self.bad(expected, "it belongs to the book of another salon");
        } else if kept.prev != before {
            self.bad(expected, "it does not follow the line before it");
        } else if kept.line.hash(&before).as_ref() != Ok(&kept.hash) {
            self.bad(expected, "it is not as it was written");
        } else {
            match facts::fact(kept.line) {
                Ok(fact) => self.drawer(&fact)?,
                Err(why) => self.bad(expected, why),
            }
        }
        Ok(())
    }

    /// Is what lies in the drawer for this fact what was put there? It may be gone.
    fn drawer(&mut self, fact: &Fact) -> Result<(), BookError> {
        let (reference, kind): (&DrawerRef, DrawerKind) = match &fact.body {
            Body::PersonJoined { sign, .. } => (sign, DrawerKind::Sign),
            Body::RecordTaken { kept, .. } => (kept, DrawerKind::Record),
            Body::Day(Day::KeyMade { key }) => (key, DrawerKind::Key),
            _ => return Ok(()),
        };
        let found = match drawer::find(self.sql, reference.entry) {
            Ok(Some(found)) => found,
            Ok(None) => return Ok(()),
            Err(BookError::Storage { source, .. }) => {
                self.bad(fact.seq, format!("its drawer entry cannot be read: {source}"));
                return Ok(());
            }
            Err(other) => return Err(other),
        };
        let same_file = match &fact.body {
            Body::RecordTaken { record, bytes, .. } => {
                drawer::record_hash(&found.content) == *record
                    && found.content.len() as u64 == *bytes
            }
            _ => true,
        };
        if found.kind != kind.word() || !same_file || !found.is(reference) {
            self.bad(fact.seq, "what lies in the drawer is not what was put there");
        }
        Ok(())
    }

    /// Lines cut off at the end leave a whole chain; the book's own tables remember how far it
    /// went.
    fn end(&mut self) -> Result<(), BookError> {
        let noted = self.sql.first("SELECT head_seq, head_hash FROM fold_state", &[], |row| {
            Ok((row.count::<u64>(0)?, row.fixed::<32>(1)?))
        })?;
        let next = self.facts + 1;
        match noted {
            None => self.bad(next, "the book's tables do not say how far it went"),
            Some((known, _)) if known > self.facts => self.bad(next, "this line is missing"),
            Some((known, hash)) => {
                let there = self.sql.first(
                    "SELECT hash FROM facts WHERE seq = $1",
                    &[Value::seq(known)],
                    |row| row.bytes(0),
                )?;
                if there.as_deref() != Some(&hash) {
                    self.bad(known, "its hash is not the one that the book noted");
                } else if known < self.facts {
                    self.bad(known + 1, "it was added without being folded into the tables");
                }
            }
        }
        Ok(())
    }
}
