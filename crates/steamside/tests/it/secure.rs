//! The secure address as a screen sees it that trusts nothing but the box's own authority.

use super::salon::Salon;
use rustls::pki_types::{CertificateDer, ServerName};
use rustls::{ClientConfig, ClientConnection, RootCertStore, StreamOwned};
use std::io::{Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::sync::Arc;
use std::time::Duration;

/// Asks for a page under a name; the whole answer, or why there is none.
fn ask(at: SocketAddr, name: &str, roots: RootCertStore, path: &str) -> Result<String, String> {
    let ring = Arc::new(rustls::crypto::ring::default_provider());
    let config = ClientConfig::builder_with_provider(ring)
        .with_safe_default_protocol_versions()
        .expect("a protocol")
        .with_root_certificates(roots)
        .with_no_client_auth();
    let server = ServerName::try_from(name.to_owned()).expect("a name");
    let session = ClientConnection::new(Arc::new(config), server).expect("a session");
    let line = TcpStream::connect(at).expect("it listens");
    line.set_read_timeout(Some(Duration::from_secs(20))).expect("patience");
    let mut line = StreamOwned::new(session, line);
    let asked =
        format!("GET {path} HTTP/1.1\r\nHost: {name}:{}\r\nConnection: close\r\n\r\n", at.port());
    line.write_all(asked.as_bytes()).map_err(|error| error.to_string())?;
    let mut answer = Vec::new();
    // A line that is cut without the closing word of TLS is an error as well.
    line.read_to_end(&mut answer).map_err(|error| error.to_string())?;
    Ok(String::from_utf8_lossy(&answer).into_owned())
}

fn trusting(certificate: &[u8]) -> RootCertStore {
    let mut roots = RootCertStore::empty();
    roots.add(CertificateDer::from(certificate.to_vec())).expect("a certificate");
    roots
}

#[test]
fn a_screen_that_trusts_only_the_authority_gets_the_pages() {
    let home = tempfile::tempdir().expect("a folder");
    let book = home.path().join("book");
    let more = ["--zone", "Etc/UTC", "--secure", "127.0.0.1:0", "--name", "nail-box.local"];
    let salon = Salon::serve(&book, &more);
    let at = salon.secure.expect("a secure address");
    let authority = std::fs::read(book.join("authority/authority.crt")).expect("it was made");
    for name in ["localhost", "127.0.0.1", "nail-box.local"] {
        let answer = ask(at, name, trusting(&authority), "/wash").expect(name);
        assert!(answer.starts_with("HTTP/1.1 200") && answer.contains("<h1>"), "{name}: {answer}");
    }
    let stranger = ask(at, "localhost", RootCertStore::empty(), "/wash");
    assert!(stranger.is_err_and(|why| why.contains("UnknownIssuer")), "trusting nobody");
    // The plain address hands the same certificate out, and says the same fingerprint on both pages.
    let (status, page) = salon.get("/trust");
    let shown: String =
        page.split("class=\"fingerprint\"").nth(1).expect("it").chars().take(400).collect();
    let (_, screens) = salon.get("/stations");
    let first =
        shown.split("<code>").nth(1).and_then(|rest| rest.split('<').next()).expect("pairs");
    assert!(status == 200 && screens.contains(first), "{first}");
    let tool =
        std::process::Command::new("sha256sum").arg(book.join("authority/authority.crt")).output();
    let sum = String::from_utf8(tool.expect("a tool of the system").stdout).expect("text");
    let sum: String = sum.chars().take(16).collect();
    assert_eq!(first.replace(' ', "").to_lowercase(), sum);
    // The key is in no page; started again, the authority is the same.
    drop(salon);
    let salon = Salon::serve(&book, &["--secure", "127.0.0.1:0"]);
    let at = salon.secure.expect("a secure address");
    assert!(ask(at, "localhost", trusting(&authority), "/trust").is_ok());
    let said = ask(at, "nail-box.local", trusting(&authority), "/trust");
    assert!(said.is_err(), "a name that it was not started with");
}

#[test]
fn pages_go_out_packed_and_events_do_not() {
    let home = tempfile::tempdir().expect("a folder");
    let salon = Salon::serve(&home.path().join("book"), &["--zone", "Etc/UTC"]);
    let at = salon.url.trim_start_matches("http://").to_owned();
    let head = |path: &str| {
        let mut line = TcpStream::connect(&at).expect("it listens");
        line.set_read_timeout(Some(Duration::from_secs(20))).expect("patience");
        let asked = format!("GET {path} HTTP/1.1\r\nHost: {at}\r\nAccept-Encoding: gzip\r\n\r\n");
        line.write_all(asked.as_bytes()).expect("it takes it");
        let mut head = Vec::new();
        let mut byte = [0];
        while !head.ends_with(b"\r\n\r\n") && line.read(&mut byte).expect("an answer") == 1 {
            head.push(byte[0]);
        }
        String::from_utf8(head).expect("text").to_lowercase()
    };
    for path in ["/", "/chair", "/assets/steamside.css", "/worker.js"] {
        assert!(head(path).contains("content-encoding: gzip"), "{path}: {}", head(path));
    }
    assert!(!head("/live").contains("content-encoding"), "{}", head("/live"));
}
