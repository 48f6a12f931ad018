//! The drawer: what may have to be forgotten, beside a chain that must not change.

use crate::error::BookError;
use crate::fact::{DrawerRef, Keyed};
use crate::store::{Sql, Value};
use crate::wire::words::Word;
use hmac::{Hmac, KeyInit, Mac};
use measure::{DrawerId, Id, RecordHash};
use sha2::{Digest, Sha256};

/// Most bytes in one entry. A cycle record is far below one megabyte, a photo of a phone below
/// twenty.
pub const MOST_BYTES: usize = 64 << 20;

/// What a record is recognised by: SHA-256 over its bytes.
#[must_use]
pub fn record_hash(bytes: &[u8]) -> RecordHash {
    RecordHash::from_bytes(Sha256::digest(bytes).into())
}

/// What lies in a drawer entry.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DrawerKind {
    /// A cycle record, byte for byte.
    Record,
    /// The name under which a record came.
    FileName,
    /// A person's sign.
    Sign,
    /// A free text.
    Note,
    /// A photo.
    Photo,
    /// The key under which calendars are recognised.
    Key,
}

impl Word for DrawerKind {
    const WORDS: &'static [(Self, &'static str)] = &[
        (Self::Record, "record"),
        (Self::FileName, "file name"),
        (Self::Sign, "sign"),
        (Self::Note, "note"),
        (Self::Photo, "photo"),
        (Self::Key, "key"),
    ];

    fn word(self) -> &'static str {
        match self {
            Self::Record => "record",
            Self::FileName => "file name",
            Self::Sign => "sign",
            Self::Note => "note",
            Self::Photo => "photo",
            Self::Key => "key",
        }
    }
}

/// An entry on its way into the drawer.
pub(crate) struct Entry {
    entry: DrawerId,
    kind: DrawerKind,
    key: [u8; 32],
    content: Vec<u8>,
}

impl Entry {
    /// An entry with an id and a key of its own, and the commitment to it.
    pub(crate) fn new(kind: DrawerKind, content: &[u8]) -> Result<(Self, DrawerRef), BookError> {
        if content.len() > MOST_BYTES {
            return Err(BookError::Unfit(format!(
                "{} bytes for the drawer; an entry takes at most {MOST_BYTES}",
                content.len()
            )));
        }
        let mut id = [0; 16];
        let mut key = [0; 32];
        getrandom::fill(&mut id).map_err(BookError::NoChance)?;
        getrandom::fill(&mut key).map_err(BookError::NoChance)?;
        let entry = Id::from_bytes(id);
        let commitment = commitment(&key, content);
        let kept = Self { entry, kind, key, content: content.to_vec() };
        Ok((kept, DrawerRef { entry, commitment }))
    }

    /// Are these the very bytes that the fact speaks of?
    pub(crate) fn agrees(&self, entry: DrawerId, record: RecordHash, bytes: u64) -> bool {
        self.entry != entry
            || (record_hash(&self.content) == record && self.content.len() as u64 == bytes)
    }

    /// Puts it in.
    pub(crate) fn keep(&self, sql: Sql<'_>) -> Result<(), BookError> {
        sql.run(
            "INSERT INTO drawer (entry, kind, key, content) VALUES ($1, $2, $3, $4)",
            &[
                Value::id(&self.entry),
                Value::Text(self.kind.word()),
                Value::Bytes(&self.key),
                Value::Bytes(&self.content),
            ],
        )
        .map(drop)
    }
}

fn mac(key: &[u8; 32]) -> Hmac<Sha256> {
    // A key of 32 bytes is shorter than the block of 64, so it is used as it is (RFC 2104).
    let mut block = [0; 64];
    block[..32].copy_from_slice(key);
    Hmac::<Sha256>::new(&block.into())
}

/// HMAC-SHA-256 of the content under the key.
fn commitment(key: &[u8; 32], content: &[u8]) -> [u8; 32] {
    let mut mac = mac(key);
    mac.update(content);
    mac.finalize().into_bytes().into()
}

/// An entry that is still there.
pub(crate) struct Found {
    pub(crate) kind: String,
    key: [u8; 32],
    pub(crate) content: Vec<u8>,
}

impl Found {
    /// Is it what was committed to?
    pub(crate) fn is(&self, committed: &DrawerRef) -> bool {
        let mut mac = mac(&self.key);
        mac.update(&self.content);
        mac.verify_slice(&committed.commitment).is_ok()
    }
}

/// What lies in an entry; `None` where it was deleted.
pub(crate) fn find(sql: Sql<'_>, entry: DrawerId) -> Result<Option<Found>, BookError> {
    sql.first(
        "SELECT kind, key, content FROM drawer WHERE entry = $1",
        &[Value::id(&entry)],
        |row| Ok(Found { kind: row.text(0)?, key: row.fixed(1)?, content: row.bytes(2)? }),
    )
}

/// Deletes an entry with its key. The chain stays whole: it holds the commitment only.
pub(crate) fn forget(sql: Sql<'_>, entry: DrawerId) -> Result<bool, BookError> {
    sql.run("DELETE FROM drawer WHERE entry = $1", &[Value::id(&entry)]).map(|deleted| deleted > 0)
}

/// The key under which the book recognises what comes from outside without keeping it: entries of
/// calendars, phrases of their titles. It lies in the drawer; once it is deleted, the digests in
/// the facts say nothing to anybody, and entries that come again are taken for new ones.
#[derive(Clone)]
pub struct BookKey([u8; 32]);

impl BookKey {
    /// A new key, drawn from the operating system.
    pub(crate) fn new() -> Result<Self, BookError> {
        let mut key = [0; 32];
        getrandom::fill(&mut key).map_err(BookError::NoChance)?;
        Ok(Self(key))
    }

    pub(crate) const fn bytes(&self) -> &[u8; 32] {
        &self.0
    }

    /// The digest of some texts, told apart by what they are (`what`): each preceded by its
    /// length, so that no two lists share their bytes.
    #[must_use]
    pub fn digest(&self, what: &str, texts: &[&str]) -> Keyed {
        let mut mac = mac(&self.0);
        for text in std::iter::once(&what).chain(texts) {
            mac.update(&(text.len() as u64).to_be_bytes());
            mac.update(text.as_bytes());
        }
        Keyed::from_bytes(mac.finalize().into_bytes().into())
    }
}

/// The key that lies in an entry.
pub(crate) fn book_key(entry: DrawerId, bytes: &[u8]) -> Result<BookKey, BookError> {
    <[u8; 32]>::try_from(bytes).map(BookKey).map_err(|_| BookError::DrawerChanged(entry))
}
