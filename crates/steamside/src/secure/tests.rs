//! The authority against a verifier written by others (rustls with webpki).

#![allow(clippy::unwrap_used, clippy::panic)] // tests may stop at once
use super::*;
use rustls::client::WebPkiServerVerifier;
use rustls::client::danger::ServerCertVerifier;
use rustls::pki_types::{ServerName, UnixTime};
use rustls::{CertificateError, Error, RootCertStore};
use std::time::Duration;

/// 2026-11-29 at noon.
const NOON: u64 = 1_795_953_600;

fn today() -> Date {
    Date::constant(2026, 11, 29)
}

fn names(dns: &[&str], addresses: &[&str]) -> Names {
    Names {
        dns: dns.iter().map(|&name| name.to_owned()).collect(),
        addresses: addresses.iter().map(|text| text.parse().unwrap()).collect(),
    }
}

/// What a screen that trusts only this authority says of a leaf under a name, some days from now.
fn verify(
    authority: &Authority,
    leaf: &CertificateDer<'_>,
    name: &str,
    days: u64,
) -> Result<(), Error> {
    let mut roots = RootCertStore::empty();
    roots.add(CertificateDer::from(authority.certificate().to_vec())).unwrap();
    let ring = Arc::new(rustls::crypto::ring::default_provider());
    let verifier =
        WebPkiServerVerifier::builder_with_provider(Arc::new(roots), ring).build().unwrap();
    let name = ServerName::try_from(name.to_owned()).unwrap();
    let then = UnixTime::since_unix_epoch(Duration::from_secs(NOON + days * 86_400));
    verifier.verify_server_cert(leaf, &[], &name, &[], then).map(drop)
}

#[test]
fn a_leaf_is_good_for_its_names_and_days_and_for_no_other_box() {
    let home = tempfile::tempdir().unwrap();
    let own = names(&["box.local", "localhost"], &["192.168.1.4", "fd00::2"]);
    let authority = Authority::open(home.path(), &own, today()).unwrap();
    let (leaf, _) = authority.leaf(&own, today()).unwrap();
    for name in ["box.local", "localhost", "192.168.1.4", "fd00::2"] {
        assert_eq!(verify(&authority, &leaf, name, 0), Ok(()), "{name}");
    }
    assert!(verify(&authority, &leaf, "192.168.1.5", 0).is_err(), "not its address");
    assert_eq!(verify(&authority, &leaf, "box.local", 199), Ok(()));
    assert!(verify(&authority, &leaf, "box.local", 201).is_err(), "too old");
    let elsewhere = tempfile::tempdir().unwrap();
    let other = Authority::open(elsewhere.path(), &own, today()).unwrap();
    assert_ne!(other.fingerprint(), authority.fingerprint());
    assert!(verify(&other, &leaf, "box.local", 0).is_err(), "another box's authority");
}

#[test]
fn the_authority_itself_says_what_it_vouches_for() {
    let home = tempfile::tempdir().unwrap();
    let authority = Authority::open(home.path(), &names(&["box"], &[]), today()).unwrap();
    // Made past the check of our own: whoever stole the key could do the same.
    for (name, address) in [("example.org", None), ("box", Some("8.8.8.8"))] {
        let forged = names(&[name], &address.into_iter().collect::<Vec<_>>());
        let (leaf, _) = authority.leaf(&forged, today()).unwrap();
        let said = verify(&authority, &leaf, name, 0);
        let Err(Error::InvalidCertificate(CertificateError::Other(why))) = said else {
            panic!("{name}: {said:?}");
        };
        assert!(format!("{why:?}").contains("NameConstraint"), "{why:?}");
    }
    assert!(authority.config(&names(&["example.org"], &["8.8.8.8"]), today()).is_err());
}

#[test]
fn it_is_made_once_and_its_key_is_for_its_owner_alone() {
    let home = tempfile::tempdir().unwrap();
    let own = names(&["box"], &["10.0.0.7"]);
    let first = Authority::open(home.path(), &own, today()).unwrap();
    let later = today().saturating_add(jiff::Span::new().years(3));
    let again = Authority::open(home.path(), &own, later).unwrap();
    assert_eq!(first.fingerprint(), again.fingerprint());
    let (leaf, _) = again.leaf(&own, later).unwrap();
    assert_eq!(verify(&first, &leaf, "box", 3 * 365 + 30), Ok(()), "years later");
    assert!(verify(&first, &leaf, "box", 10 * 366).is_err());
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        let mode = |path: &str| {
            std::fs::metadata(home.path().join(path)).unwrap().permissions().mode() & 0o777
        };
        assert_eq!((mode("authority"), mode("authority/key.pem")), (0o700, 0o600));
    }
    std::fs::write(home.path().join("authority/key.pem"), "no key").unwrap();
    let said = Authority::open(home.path(), &own, today()).err().unwrap().to_string();
    assert!(said.contains("every screen has to trust it anew"), "{said}");
}
