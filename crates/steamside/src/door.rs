//! The door for screens: the code that lets one in, when each was last heard, and the addresses at
//! which the box is reached. Nothing of it is kept: who was let in stands in the book.

mod code;

pub use code::{Code, Codes, No, same};

use crate::clock;
use crate::secure::names::on_network;
use measure::{Instant, StationId};
use std::collections::BTreeMap;
use std::net::SocketAddr;
use std::sync::{Mutex, MutexGuard, PoisonError};

/// How the box is reached.
#[derive(Debug, Clone, Default)]
pub struct Reach {
    /// The plain address.
    pub plain: Option<SocketAddr>,
    /// The secure address, with the authority behind it.
    pub secure: Option<(SocketAddr, Public)>,
}

/// What everybody may know of the box's authority.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Public {
    /// Its certificate.
    pub certificate: Vec<u8>,
    /// SHA-256 of it, as telephones show it.
    pub fingerprint: String,
}

impl Reach {
    /// Addresses for other screens, the secure ones alone where there are any; none where only this
    /// computer reaches the box.
    pub fn for_others(&self) -> Vec<String> {
        let listens = match (&self.secure, self.plain) {
            (Some((at, _)), _) if !at.ip().is_loopback() => Some(("https", *at)),
            (_, Some(at)) if !at.ip().is_loopback() => Some(("http", at)),
            _ => None,
        };
        listens.map(|(scheme, at)| addresses(scheme, at)).unwrap_or_default()
    }

    /// Where a screen that does not trust the box yet learns how: over the plain address where others
    /// reach it. `None`: there is no secure address.
    pub fn to_trust(&self) -> Option<String> {
        self.secure.as_ref()?;
        let plain = self.plain.filter(|at| !at.ip().is_loopback());
        let plain = plain.and_then(|at| addresses("http", at).into_iter().next());
        plain.or_else(|| self.for_others().into_iter().next()).map(|at| at + "/trust")
    }
}

/// The addresses of this computer at which a port is listened to.
fn addresses(scheme: &str, at: SocketAddr) -> Vec<String> {
    let hosts = if at.ip().is_unspecified() { on_network() } else { vec![at.ip()] };
    let hosts = hosts.into_iter().filter(|ip| at.is_ipv6() || ip.is_ipv4());
    hosts.map(|ip| format!("{scheme}://{}", SocketAddr::new(ip, at.port()))).collect()
}

/// The door.
#[derive(Debug, Default)]
pub struct Door {
    codes: Mutex<Codes>,
    heard: Mutex<BTreeMap<StationId, Instant>>,
    /// How the box is reached.
    pub reach: Reach,
}

fn lock<T>(what: &Mutex<T>) -> MutexGuard<'_, T> {
    // Each value is whole or not there, whatever became of a thread that held the lock.
    what.lock().unwrap_or_else(PoisonError::into_inner)
}

impl Door {
    /// A door at these addresses.
    pub fn new(reach: Reach) -> Self {
        Self { reach, ..Self::default() }
    }

    /// A new code; the one before is void.
    pub fn open(&self, code: Code) {
        lock(&self.codes).open(code, clock::now());
    }

    /// The code that is good now, and until when.
    pub fn code(&self) -> Option<(Code, Instant)> {
        lock(&self.codes).current(clock::now())
    }

    /// May a screen with this code come in? Once.
    ///
    /// # Errors
    /// Why not.
    pub fn enter(&self, typed: &str) -> Result<(), No> {
        lock(&self.codes).enter(typed, clock::now())
    }

    /// A screen was heard now.
    pub fn hear(&self, station: StationId) {
        lock(&self.heard).insert(station, clock::now());
    }

    /// When each screen was last heard, since the program was started.
    pub fn heard(&self) -> BTreeMap<StationId, Instant> {
        lock(&self.heard).clone()
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)] // tests may stop at once
    use super::*;

    fn check(plain: &str, secure: Option<&str>, first: Option<&str>, trust: Option<&str>) {
        let public = Public { certificate: Vec::new(), fingerprint: String::new() };
        let reach = Reach {
            plain: Some(plain.parse().unwrap()),
            secure: secure.map(|at| (at.parse().unwrap(), public)),
        };
        assert_eq!(reach.for_others().first().map(String::as_str), first, "{plain} {secure:?}");
        assert_eq!(reach.to_trust().as_deref(), trust, "{plain} {secure:?}");
    }

    #[test]
    fn others_are_sent_to_the_secure_address_where_there_is_one() {
        let (here, house) = ("127.0.0.1:7420", "10.0.0.7:7420");
        let (plain, safe) = ("http://10.0.0.7:7420", "https://10.0.0.7:7443");
        check(here, None, None, None);
        check(house, None, Some(plain), None);
        check(here, Some("127.0.0.1:7443"), None, None);
        check(house, Some("127.0.0.1:7443"), Some(plain), Some("http://10.0.0.7:7420/trust"));
        check(here, Some("10.0.0.7:7443"), Some(safe), Some("https://10.0.0.7:7443/trust"));
        let six = "https://[fd00::2]:7443";
        check(house, Some("[fd00::2]:7443"), Some(six), Some("http://10.0.0.7:7420/trust"));
    }
}
