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

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)] // tests may stop at once
    use super::*;
    use measure::{Id, RecordHash};
    use serde_json::json;

    /// Sixteen bytes counting up from `first`.
    fn id<T>(first: u8) -> Id<T> {
        Id::from_bytes(std::array::from_fn(|at| first + at as u8))
    }

    fn check(line: &Line, prev: &Hash, expected: &str) {
        let hash = RecordHash::from_bytes(line.hash(prev).unwrap());
        assert_eq!(hash.to_string(), expected);
    }

    /// Worked out by a few lines of Python (`hashlib`, `struct`) from the description in
    /// `docs/decisions/0003-facts-and-their-bytes.md`, where they stand too.
    #[test]
    fn the_bytes_are_those_of_the_description() {
        let first = "3883b5eed3367aaaef7c84f72f419cd4e230b3337769fc9a1aeeb84325a838f0";
        let mut line = Line {
            salon: id(0),
            seq: 1,
            act: id(16),
            part: 0,
            kind: "washed".to_owned(),
            version: 1,
            happened_ms: 1_748_851_200_000,
            written_ms: 1_748_851_201_500,
            station: id(32),
            sign: Some(id(48)),
            known: "tapped".to_owned(),
            tree: json!({"kind": "manicure", "count": 4}),
        };
        check(&line, &START, first);
        line.seq = 2;
        line.part = 1;
        line.kind = "made up".to_owned();
        line.happened_ms = -5;
        line.written_ms = 0;
        line.sign = None;
        line.known = "by clock".to_owned();
        line.tree = json!({
            "run": null, "pouches": ["a\"\\\u{1}é", -1, true, false, []], "étage": {},
            "z": i64::MAX,
        });
        let prev = *first.parse::<RecordHash>().unwrap().bytes();
        check(&line, &prev, "570d6c912796b6496b83e6e7c1e8bf32e6995c79726669c392ae5d6d2101a2ed");
    }

    #[test]
    fn a_fraction_has_no_bytes() {
        for fraction in [json!(1.5), json!(u64::MAX)] {
            assert!(tree::bytes(&fraction).is_err());
            assert!(tree::text(&fraction).is_err());
        }
    }
}
