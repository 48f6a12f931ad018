//! Who is let in from where: requests put before the pages as if they came from any address.

#![allow(clippy::unwrap_used)] // tests may stop at once

use super::*;
use crate::acts;
use crate::app::{App, Who};
use crate::door::{Door, Public, Reach};
use crate::web::router;
use axum::Router;
use axum::body::Body;
use logbook::book::{Book, Opening};
use logbook::fact::{BookKind, Known, Stamp};
use std::sync::Arc;
use tower::ServiceExt;

const BOX: &str = "127.0.0.1:50000";
const PHONE: &str = "192.168.1.30:50000";

struct Salon {
    _home: tempfile::TempDir,
    app: App,
    door: Arc<Door>,
    secure: bool,
}

impl Salon {
    fn new(secure: bool) -> Self {
        let home = tempfile::tempdir().unwrap();
        let stamp = Stamp {
            act: crate::chance::id().unwrap(),
            happened: crate::clock::now(),
            written: crate::clock::now(),
            station: crate::chance::id().unwrap(),
            sign: None,
            known: Known::Setting,
        };
        let salon = crate::chance::id().unwrap();
        let opening = Opening { salon, zone: "Etc/UTC".to_owned(), book: BookKind::Salon, stamp };
        let book = Book::create(home.path(), opening).unwrap();
        let public = Public { certificate: b"DER".to_vec(), fingerprint: "A7".to_owned() };
        let at = "192.168.1.4:7443".parse().ok().filter(|_| secure);
        let reach =
            Reach { plain: "192.168.1.4:7420".parse().ok(), secure: at.map(|at| (at, public)) };
        let app = App::new(book, home.path().to_owned());
        Self { _home: home, app, door: Arc::new(Door::new(reach)), secure }
    }

    fn pages(&self) -> Router {
        router(Served {
            app: self.app.clone(),
            hosts: Arc::default(),
            beside: Arc::default(),
            folders: Arc::new(crate::web::Folders::new(30)),
            let_in_by: self.app.clone(),
            door: Arc::clone(&self.door),
            secure: self.secure,
        })
    }

    /// Status, cookies that are set, and the page.
    async fn ask(
        &self,
        from: Option<&str>,
        cookie: &str,
        path: &str,
        form: Option<&str>,
    ) -> (u16, Vec<String>, String) {
        let mut request = axum::http::Request::builder()
            .uri(path)
            .method(if form.is_some() { "POST" } else { "GET" })
            .header("host", "192.168.1.4:7443")
            .header("cookie", cookie);
        if form.is_some() {
            request = request.header("content-type", "application/x-www-form-urlencoded");
        }
        if let Some(from) = from {
            let from: SocketAddr = from.parse().unwrap();
            request = request.extension(ConnectInfo(from));
        }
        let request = request.body(Body::from(form.unwrap_or_default().to_owned())).unwrap();
        let answer = self.pages().oneshot(request).await.unwrap();
        let status = answer.status().as_u16();
        let cookies = answer.headers().get_all("set-cookie").iter();
        let cookies = cookies.map(|value| value.to_str().unwrap().to_owned()).collect();
        let page = axum::body::to_bytes(answer.into_body(), 1 << 20).await.unwrap();
        (status, cookies, String::from_utf8_lossy(&page).into_owned())
    }

    async fn status(&self, from: &str, cookie: &str, path: &str) -> u16 {
        self.ask(Some(from), cookie, path, None).await.0
    }

    /// Lets a screen in by a code; its cookies.
    async fn pair(&self, what: &str) -> String {
        let (status, ..) = self.ask(Some(BOX), "", "/stations/code", Some("")).await;
        assert_eq!(status, 303);
        let (code, _) = self.door.code().unwrap();
        let form = format!("code={code}&what={what}&name=chair+4");
        let (status, cookies, page) = self.ask(Some(PHONE), "", "/pair", Some(&form)).await;
        assert_eq!(status, 303, "{page}");
        let key = cookies.iter().find(|cookie| cookie.starts_with("paired=")).unwrap();
        for part in ["HttpOnly", "SameSite=Strict"] {
            assert!(key.contains(part), "{key}");
        }
        assert_eq!(key.contains("Secure"), self.secure, "{key}");
        key.split(';').next().unwrap().to_owned()
    }
}

const OF_THE_SALON: [&str; 9] =
    ["/", "/ready", "/log", "/setup", "/stations", "/wall", "/strip", "/live", "/kept"];

#[tokio::test]
async fn a_stranger_sees_how_to_be_let_in_and_nothing_else() {
    let salon = Salon::new(true);
    for path in OF_THE_SALON {
        let (status, _, page) = salon.ask(Some(PHONE), "", path, None).await;
        assert!(status == 403 && page.contains("/pair"), "{path}: {status}");
        assert_eq!(salon.status(PHONE, "paired=00112233445566778899aabbccddeeff", path).await, 403);
        if path != "/live" {
            assert_eq!(salon.status(BOX, "", path).await, 200, "the box's own screen: {path}");
        }
        // Where it comes from is not known: then it is a stranger's.
        assert_eq!(salon.ask(None, "", path, None).await.0, 403, "{path}");
    }
    for path in ["/pair", "/trust", "/trust/authority.crt", "/assets/steamside.css"] {
        assert_eq!(salon.status(PHONE, "", path).await, 200, "{path}");
    }
    for act in ["/act/set-aside", "/kept/wash", "/stations/code", "/act/person", "/chair/photo"] {
        let (status, ..) = salon.ask(Some(PHONE), "", act, Some("act=1&sign-text=X")).await;
        assert_eq!(status, 403, "{act}");
    }
    assert_eq!(salon.app.read(|view| view.people()).unwrap(), Vec::new());
    assert_eq!(
        salon.status("[::ffff:127.0.0.1]:9", "", "/").await,
        200,
        "the box, by another name"
    );
    assert_eq!(salon.status("[fd00::2]:9", "", "/").await, 403);
}

#[tokio::test]
async fn a_screen_is_let_in_by_its_code_and_let_go_at_once() {
    for secure in [true, false] {
        let salon = Salon::new(secure);
        let key = salon.pair("phone").await;
        for path in OF_THE_SALON.iter().filter(|path| **path != "/live") {
            assert_eq!(salon.status(PHONE, &key, path).await, 200, "{path}");
        }
        let stations = salon.app.read(|view| view.stations()).unwrap();
        assert_eq!(stations.len(), 1);
        let hash: [u8; 32] = Sha256::digest(key.strip_prefix("paired=").unwrap()).into();
        assert_eq!(stations[0].key_hash, hash);
        assert!(salon.door.heard().contains_key(&stations[0].station));
        // A phone lets nobody in or go, unless somebody in charge is at it.
        let part = format!("act={}&station={}", "0".repeat(32), stations[0].station);
        assert_eq!(salon.ask(Some(PHONE), &key, "/act/station-parted", Some(&part)).await.0, 409);
        assert_eq!(salon.ask(Some(PHONE), &key, "/stations/code", Some("")).await.0, 409);
        assert_eq!(salon.ask(Some(BOX), "", "/act/station-parted", Some(&part)).await.0, 303);
        assert_eq!(salon.status(PHONE, &key, "/").await, 403, "let go");
    }
}

#[tokio::test]
async fn a_wall_only_shows_and_a_desk_lets_others_in() {
    let salon = Salon::new(true);
    let wall = salon.pair("wall").await;
    for (path, status) in [("/wall", 200), ("/strip", 200), ("/", 303), ("/ready", 303)] {
        assert_eq!(salon.status(PHONE, &wall, path).await, status, "{path}");
    }
    assert_eq!(salon.ask(Some(PHONE), &wall, "/act/set-aside", Some("act=1")).await.0, 403);
    let desk = salon.pair("desk").await;
    assert_eq!(salon.ask(Some(PHONE), &desk, "/stations/code", Some("")).await.0, 303);
    // Somebody in charge, at a phone.
    let phone = salon.pair("phone").await;
    let who = Who::program(crate::chance::id().unwrap(), Known::Setting).unwrap();
    salon.app.act(who, |view, draft| acts::join(view, draft, "HL")).unwrap();
    let person = salon.app.read(|view| view.people()).unwrap()[0].person;
    let is =
        logbook::fact::Counter::PersonIs { person, learns: false, in_charge: true, teaches: false };
    let who = Who::program(crate::chance::id().unwrap(), Known::Setting).unwrap();
    let write = |_: &logbook::view::View<'_>, draft: &mut logbook::book::Draft| {
        draft.fact(logbook::fact::Body::Counter(Box::new(is)));
        Ok(())
    };
    salon.app.act(who, write).unwrap();
    let signed = format!("{phone}; sign={person}");
    assert_eq!(salon.ask(Some(PHONE), &signed, "/stations/code", Some("")).await.0, 303);
    assert_eq!(salon.ask(Some(PHONE), &phone, "/stations/code", Some("")).await.0, 409);
}

#[tokio::test]
async fn a_wrong_code_lets_nobody_in_and_a_key_never_goes_over_the_plain_address() {
    let salon = Salon::new(true);
    let (status, _, page) =
        salon.ask(Some(PHONE), "", "/pair", Some("code=222222&what=phone")).await;
    assert!(status == 403 && page.contains("No code is open now"), "{page}");
    salon.ask(Some(BOX), "", "/stations/code", Some("")).await;
    let right = salon.door.code().unwrap().0.to_string();
    for _ in 0..5 {
        let (status, cookies, _) =
            salon.ask(Some(PHONE), "", "/pair", Some("code=2222222&what=phone")).await;
        assert_eq!((status, cookies.iter().any(|cookie| cookie.contains("paired"))), (403, false));
    }
    let form = format!("code={right}&what=phone");
    assert_eq!(salon.ask(Some(PHONE), "", "/pair", Some(&form)).await.0, 403, "void by now");
    salon.ask(Some(BOX), "", "/stations/code", Some("")).await;
    let right = salon.door.code().unwrap().0.to_string();
    let plain = Salon { secure: false, ..salon };
    let form = format!("code={right}&what=phone");
    let (status, cookies, page) = plain.ask(Some(PHONE), "", "/pair", Some(&form)).await;
    assert!(status == 409 && cookies.is_empty(), "{status} {cookies:?}");
    assert!(page.contains("https://192.168.1.4:7443/pair"), "{page}");
    assert!(plain.door.code().is_some(), "the code is still good");
}

#[test]
fn only_own_names_are_known() {
    let hosts = Hosts { names: vec!["salon.local".to_owned()] };
    for known in ["localhost:7420", "127.0.0.1", "[::1]:7420", "192.168.1.4:80", "SALON.local"] {
        assert!(hosts.knows(known), "{known}");
    }
    for strange in ["", "evil.example", "localhost.evil.example:7420", "salon.local.evil"] {
        assert!(!hosts.knows(strange), "{strange}");
    }
}

#[test]
fn a_form_of_another_site_is_not_ours() {
    let form = |pairs: &[(&'static str, &'static str)]| {
        let mut headers = HeaderMap::new();
        for (name, value) in pairs {
            headers.insert(*name, HeaderValue::from_static(value));
        }
        own_form(&headers, "localhost:7420")
    };
    assert!(form(&[("origin", "http://localhost:7420")]));
    assert!(form(&[("sec-fetch-site", "same-origin"), ("origin", "null")]));
    assert!(form(&[]));
    assert!(!form(&[("origin", "http://evil.example")]));
    assert!(!form(&[("origin", "null")]));
    assert!(!form(&[("sec-fetch-site", "cross-site")]));
}
