//! The secure way in: the box makes its own small certificate authority, once, and a certificate
//! for its own names at each start. Phones give camera and outbox to secure pages only.
//!
//! The authority's key lies in the book's folder, readable by its owner alone, and never leaves it.
//! What the authority may vouch for is written into it: the names and the kinds of addresses that a
//! salon's box has, nothing else on the network or beyond.

pub mod names;

use jiff::civil::Date;
use names::{Names, Vouches};
use rcgen::{
    BasicConstraints, CertificateParams, DistinguishedName, DnType, ExtendedKeyUsagePurpose, IsCa,
    Issuer, KeyPair, KeyUsagePurpose, NameConstraints, SanType,
};
use rustls::ServerConfig;
use rustls::pki_types::{CertificateDer, PrivateKeyDer, PrivatePkcs8KeyDer};
use sha2::{Digest, Sha256};
use std::io::Write;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// The folder in the book's folder.
const FOLDER: &str = "authority";
/// The key, for nobody's eyes.
const KEY: &str = "key.pem";
/// The certificate that screens may trust.
const CERTIFICATE: &str = "authority.crt";
/// What it vouches for, a line each.
const VOUCHES: &str = "vouches-for";

/// How long screens may trust the authority (assumption: longer than any screen lasts).
const AUTHORITY_YEARS: i32 = 10;
/// How long a certificate of the box itself is good. It is made anew at each start and each day;
/// some telephones take none that is good for more than about 13 months (from memory).
const LEAF_DAYS: i32 = 200;

/// Why there is no secure way in.
#[derive(Debug, thiserror::Error)]
pub enum NotSecure {
    /// The folder of the authority cannot be read or written.
    #[error("{}: {source}. Nothing was changed. Make the folder writable, or start without --secure", path.display())]
    Disk {
        /// Where.
        path: PathBuf,
        /// What the system said.
        source: std::io::Error,
    },
    /// What lies there is no authority of ours.
    #[error("{}: {why}. Nothing was changed. Move this folder away; a new authority is made, and every screen has to trust it anew", path.display())]
    Spoilt {
        /// Where.
        path: PathBuf,
        /// What is wrong.
        why: String,
    },
    /// A certificate could not be made.
    #[error("no certificate could be made ({0}). Start without --secure")]
    Making(String),
}

impl From<rcgen::Error> for NotSecure {
    fn from(error: rcgen::Error) -> Self {
        Self::Making(error.to_string())
    }
}

impl From<rustls::Error> for NotSecure {
    fn from(error: rustls::Error) -> Self {
        Self::Making(error.to_string())
    }
}

/// The box's own authority.
pub struct Authority {
    issuer: Issuer<'static, KeyPair>,
    certificate: Vec<u8>,
    vouches: Vouches,
}

impl Authority {
    /// The authority in the book's folder; made there the first time, for these names.
    ///
    /// # Errors
    /// A folder that cannot be read or written; one that holds something else.
    pub fn open(book: &Path, names: &Names, today: Date) -> Result<Self, NotSecure> {
        let folder = book.join(FOLDER);
        if !folder.exists() {
            make(book, &folder, names, today)?;
        }
        let read = |name: &str| {
            let path = folder.join(name);
            std::fs::read(&path).map_err(|source| NotSecure::Disk { path, source })
        };
        let spoilt = |why: &str| NotSecure::Spoilt { path: folder.clone(), why: why.to_owned() };
        let key = String::from_utf8(read(KEY)?).map_err(|_| spoilt("the key is no text"))?;
        let key = KeyPair::from_pem(&key).map_err(|_| spoilt("the key cannot be read"))?;
        let vouches = String::from_utf8(read(VOUCHES)?)
            .ok()
            .and_then(|text| Vouches::read(&text))
            .ok_or_else(|| spoilt("the list of names cannot be read"))?;
        Ok(Self {
            issuer: Issuer::new(authority(&key, &vouches), key),
            certificate: read(CERTIFICATE)?,
            vouches,
        })
    }

    /// The public certificate, for screens to trust.
    pub fn certificate(&self) -> &[u8] {
        &self.certificate
    }

    /// SHA-256 of the certificate in pairs, as telephones show it.
    pub fn fingerprint(&self) -> String {
        let pairs: Vec<String> =
            Sha256::digest(&self.certificate).iter().map(|byte| format!("{byte:02X}")).collect();
        pairs.join(":")
    }

    /// Of these names and addresses, those that the authority may vouch for.
    pub fn vouched(&self, names: &Names) -> Names {
        self.vouches.of(names)
    }

    /// A fresh certificate for what of these names may be vouched for, ready to serve.
    ///
    /// # Errors
    /// No name is left; a name that no certificate may hold.
    pub fn config(&self, names: &Names, today: Date) -> Result<ServerConfig, NotSecure> {
        let (leaf, key) = self.leaf(&self.vouched(names), today)?;
        let key = PrivateKeyDer::Pkcs8(PrivatePkcs8KeyDer::from(key.serialize_der()));
        let chain = vec![leaf, CertificateDer::from(self.certificate.clone())];
        let ring = Arc::new(rustls::crypto::ring::default_provider());
        let mut config = ServerConfig::builder_with_provider(ring)
            .with_safe_default_protocol_versions()?
            .with_no_client_auth()
            .with_single_cert(chain, key)?;
        config.alpn_protocols = vec![b"h2".to_vec(), b"http/1.1".to_vec()];
        Ok(config)
    }

    fn leaf(
        &self,
        names: &Names,
        today: Date,
    ) -> Result<(CertificateDer<'static>, KeyPair), NotSecure> {
        let mut params = CertificateParams::default();
        params.distinguished_name = called("Steamside");
        for name in &names.dns {
            params.subject_alt_names.push(SanType::DnsName(name.as_str().try_into()?));
        }
        params.subject_alt_names.extend(names.addresses.iter().map(|ip| SanType::IpAddress(*ip)));
        if params.subject_alt_names.is_empty() {
            return Err(NotSecure::Making("it has no name to be called by".to_owned()));
        }
        params.key_usages = vec![KeyUsagePurpose::DigitalSignature];
        params.extended_key_usages = vec![ExtendedKeyUsagePurpose::ServerAuth];
        params.use_authority_key_identifier_extension = true;
        good(&mut params, today, today.saturating_add(jiff::Span::new().days(LEAF_DAYS)))?;
        let key = KeyPair::generate()?;
        Ok((params.signed_by(&key, &self.issuer)?.der().clone(), key))
    }
}

/// Makes key and certificate in a folder of their own, which gets its name when it is whole.
fn make(book: &Path, folder: &Path, names: &Names, today: Date) -> Result<(), NotSecure> {
    let key = KeyPair::generate()?;
    let vouches = Vouches::around(names);
    let mut params = authority(&key, &vouches);
    good(&mut params, today, today.saturating_add(jiff::Span::new().years(AUTHORITY_YEARS)))?;
    let certificate = params.self_signed(&key)?;
    let part = book.join(format!("{FOLDER}.part"));
    let disk = |path: &Path| {
        let path = path.to_owned();
        move |source| NotSecure::Disk { path, source }
    };
    if part.exists() {
        std::fs::remove_dir_all(&part).map_err(disk(&part))?;
    }
    private_folder(&part).map_err(disk(&part))?;
    private_file(&part.join(KEY), key.serialize_pem().as_bytes()).map_err(disk(&part))?;
    std::fs::write(part.join(CERTIFICATE), certificate.der()).map_err(disk(&part))?;
    std::fs::write(part.join(VOUCHES), vouches.text()).map_err(disk(&part))?;
    std::fs::rename(&part, folder).map_err(disk(folder))
}

/// The authority itself. Its name holds a piece of its key, so that two boxes can be told apart.
fn authority(key: &KeyPair, vouches: &Vouches) -> CertificateParams {
    let mut params = CertificateParams::default();
    let piece = Sha256::digest(key.public_key_raw());
    let piece = format!("{:02X}{:02X}", piece[0], piece[1]);
    params.distinguished_name = called(&format!("Steamside, salon box {piece}"));
    params.is_ca = IsCa::Ca(BasicConstraints::Constrained(0));
    params.key_usages = vec![KeyUsagePurpose::KeyCertSign, KeyUsagePurpose::CrlSign];
    params.name_constraints = Some(NameConstraints {
        permitted_subtrees: vouches.subtrees(),
        excluded_subtrees: Vec::new(),
    });
    params
}

fn called(name: &str) -> DistinguishedName {
    let mut called = DistinguishedName::new();
    called.push(DnType::CommonName, name);
    called
}

/// Good from the day before, for screens whose clock is a little behind.
fn good(params: &mut CertificateParams, today: Date, until: Date) -> Result<(), NotSecure> {
    let parts = |day: Date| {
        let (month, date) = (u8::try_from(day.month()).ok()?, u8::try_from(day.day()).ok()?);
        Some((i32::from(day.year()), month, date))
    };
    let before = today.yesterday().unwrap_or(today);
    let (Some(from), Some(until)) = (parts(before), parts(until)) else {
        return Err(NotSecure::Making("the computer's date is wrong".to_owned()));
    };
    params.not_before = rcgen::date_time_ymd(from.0, from.1, from.2);
    params.not_after = rcgen::date_time_ymd(until.0, until.1, until.2);
    Ok(())
}

#[cfg(unix)]
fn private_folder(path: &Path) -> std::io::Result<()> {
    use std::os::unix::fs::DirBuilderExt;
    std::fs::DirBuilder::new().mode(0o700).create(path)
}

#[cfg(not(unix))]
fn private_folder(path: &Path) -> std::io::Result<()> {
    std::fs::create_dir(path)
}

/// A new file that only its owner can read, on the disk when this returns.
fn private_file(path: &Path, bytes: &[u8]) -> std::io::Result<()> {
    let mut options = std::fs::OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    {
        use std::os::unix::fs::OpenOptionsExt;
        options.mode(0o600);
    }
    let mut file = options.open(path)?;
    file.write_all(bytes)?;
    file.sync_all()
}

#[cfg(test)]
mod tests;
