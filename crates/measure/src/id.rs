//! Ids of 128 bits, unique across salons, made at the station that acts. The type says of what.

use std::fmt;
use std::hash::{Hash, Hasher};
use std::marker::PhantomData;
use std::str::FromStr;

/// The id of a `T`. 32 lower-case hexadecimal digits as text.
pub struct Id<T>([u8; 16], PhantomData<fn() -> T>);

/// What an id can belong to. The types are never made; they only tell ids apart.
pub mod of {
    macro_rules! kinds { ($($(#[$doc:meta])* $name:ident),* $(,)?) => { $(
        $(#[$doc])* #[derive(Debug)] pub enum $name {}
    )* } }
    kinds!(
        /// A salon.
        Salon,
        /// A station: a tablet, a phone, a command line.
        Station,
        /// A person, known only by a sign.
        Person,
        /// One tap or command, with all facts that follow from it.
        Act,
        /// A sterilizer.
        Machine,
        /// One cycle with one load.
        Run,
        /// One pouch, or one numbered tag that carries an unpouched set. Never used twice.
        Pouch,
        /// One visit of a client.
        Visit,
        /// A service that the salon offers.
        Service,
        /// One person's working time on one day.
        Shift,
        /// A jar, a foot basin or a bath that is looked after.
        Thing,
        /// One spore test, from its placing to its answer.
        Test,
        /// One entry of the drawer (raw file, name, free text).
        Drawer,
    );
}

/// Id of a salon.
pub type SalonId = Id<of::Salon>;
/// Id of a station.
pub type StationId = Id<of::Station>;
/// Id of a person; the sign itself lies in the drawer.
pub type PersonId = Id<of::Person>;
/// Id of an act, made where the tap happens: arriving twice it is written once.
pub type ActId = Id<of::Act>;
/// Id of a machine.
pub type MachineId = Id<of::Machine>;
/// Id of a run.
pub type RunId = Id<of::Run>;
/// Id of a pouch.
pub type PouchId = Id<of::Pouch>;
/// Id of a visit.
pub type VisitId = Id<of::Visit>;
/// Id of a service that the salon offers.
pub type ServiceId = Id<of::Service>;
/// Id of one person's working time on one day.
pub type ShiftId = Id<of::Shift>;
/// Id of a jar, a foot basin or a bath that is looked after.
pub type ThingId = Id<of::Thing>;
/// Id of a spore test.
pub type TestId = Id<of::Test>;
/// Id of a drawer entry.
pub type DrawerId = Id<of::Drawer>;

/// A text that is no id.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct IdText(pub String);

impl fmt::Display for IdText {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:?} is not an id of 32 hexadecimal digits", self.0)
    }
}

impl std::error::Error for IdText {}

impl<T> Id<T> {
    /// From 16 bytes, which the caller drew from a source of chance.
    #[must_use]
    pub const fn from_bytes(bytes: [u8; 16]) -> Self {
        Self(bytes, PhantomData)
    }

    /// The 16 bytes.
    #[must_use]
    pub const fn bytes(&self) -> &[u8; 16] {
        &self.0
    }
}

impl<T> fmt::Display for Id<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl<T> fmt::Debug for Id<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl<T> FromStr for Id<T> {
    type Err = IdText;
    fn from_str(text: &str) -> Result<Self, IdText> {
        let mut bytes = [0; 16];
        hex_into(text, &mut bytes).map(|()| Self::from_bytes(bytes))
    }
}

impl<T> Clone for Id<T> {
    fn clone(&self) -> Self {
        *self
    }
}
impl<T> Copy for Id<T> {}
impl<T> PartialEq for Id<T> {
    fn eq(&self, other: &Self) -> bool {
        self.0 == other.0
    }
}
impl<T> Eq for Id<T> {}
impl<T> PartialOrd for Id<T> {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        Some(self.cmp(other))
    }
}
impl<T> Ord for Id<T> {
    fn cmp(&self, other: &Self) -> std::cmp::Ordering {
        self.0.cmp(&other.0)
    }
}
impl<T> Hash for Id<T> {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.0.hash(state);
    }
}

/// SHA-256 over the bytes of a cycle record: what it is recognised by when it comes twice.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct RecordHash([u8; 32]);

impl RecordHash {
    /// From the 32 bytes of the digest.
    #[must_use]
    pub const fn from_bytes(bytes: [u8; 32]) -> Self {
        Self(bytes)
    }

    /// The 32 bytes of the digest.
    #[must_use]
    pub const fn bytes(&self) -> &[u8; 32] {
        &self.0
    }
}

impl fmt::Display for RecordHash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl fmt::Debug for RecordHash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl FromStr for RecordHash {
    type Err = IdText;
    fn from_str(text: &str) -> Result<Self, IdText> {
        let mut bytes = [0; 32];
        hex_into(text, &mut bytes).map(|()| Self(bytes))
    }
}

fn hex_into(text: &str, bytes: &mut [u8]) -> Result<(), IdText> {
    let bad = || IdText(text.chars().take(80).collect());
    let digits = text.as_bytes();
    if digits.len() != bytes.len() * 2 {
        return Err(bad());
    }
    for (byte, pair) in bytes.iter_mut().zip(digits.chunks_exact(2)) {
        let value = |digit: u8| match digit {
            b'0'..=b'9' => Ok(digit - b'0'),
            b'a'..=b'f' => Ok(digit - b'a' + 10),
            _ => Err(bad()),
        };
        *byte = value(pair[0])? * 16 + value(pair[1])?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_and_bytes_are_two_forms_of_one_id() {
        let id = RunId::from_bytes(*b"\x00\x01run-of-a-test\xff");
        assert_eq!(id.to_string().parse::<RunId>(), Ok(id));
        assert_eq!(id.to_string().len(), 32);
    }

    #[test]
    fn what_is_no_id_is_refused() {
        for bad in ["", "00", &"g".repeat(32), &"A".repeat(32), &"0".repeat(33), "ệ"] {
            assert!(bad.parse::<RunId>().is_err(), "{bad:?}");
            assert!(bad.parse::<RecordHash>().is_err(), "{bad:?}");
        }
    }
}
