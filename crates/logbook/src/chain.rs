//! The chain: every line's hash covers the line and the hash before it.
//!
//! The byte form is defined in `docs/decisions/0003-facts-and-their-bytes.md`; each field is
//! preceded by its length, so that no two lines share their bytes.

use crate::wire::tree;
use measure::{ActId, PersonId, SalonId, StationId};
use serde_json::Value;
use sha2::{Digest, Sha256};

/// A SHA-256 digest.
pub(crate) type Hash = [u8; 32];

/// What the first line has before it.
pub(crate) const START: Hash = [0; 32];

/// Tells these bytes apart from anything else that is ever hashed.
const DOMAIN: &[u8] = b"steamside fact 1";

/// A line of the book as it is stored, its body already a tree.
#[derive(Debug)]
pub(crate) struct Line {
    pub(crate) salon: SalonId,
    pub(crate) seq: u64,
    pub(crate) act: ActId,
    /// Which fact of the act, from 0.
    pub(crate) part: u32,
    pub(crate) kind: String,
    pub(crate) version: i64,
    pub(crate) happened_ms: i64,
    pub(crate) written_ms: i64,
    pub(crate) station: StationId,
    pub(crate) sign: Option<PersonId>,
    pub(crate) known: String,
    pub(crate) tree: Value,
}

impl Line {
    /// The hash of this line after the line with hash `prev`.
    ///
    /// # Errors
    /// A body with a number that is not whole, as a sentence.
    pub(crate) fn hash(&self, prev: &Hash) -> Result<Hash, String> {
        let body = tree::bytes(&self.tree)?;
        let sign: &[u8] = self.sign.as_ref().map_or(&[], |sign| sign.bytes());
        let fields: [&[u8]; 14] = [
            DOMAIN,
            self.salon.bytes(),
            &self.seq.to_be_bytes(),
            self.act.bytes(),
            &u64::from(self.part).to_be_bytes(),
            self.kind.as_bytes(),
            &self.version.to_be_bytes(),
            &self.happened_ms.to_be_bytes(),
            &self.written_ms.to_be_bytes(),
            self.station.bytes(),
            sign,
            self.known.as_bytes(),
            &body,
            prev,
        ];
        let mut digest = Sha256::new();
        for field in fields {
            digest.update((field.len() as u64).to_be_bytes());
            digest.update(field);
        }
        Ok(digest.finalize().into())
    }
}
