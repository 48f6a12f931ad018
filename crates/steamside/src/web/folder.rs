//! Pages to read, for somebody from outside: each under an address that nobody can guess, for a while,
//! kept in the memory of this program alone.

use super::head::Head;
use super::show::{show, trouble};
use super::{Ctx, Served};
use crate::acts::Refusal;
use crate::app::App;
use crate::pages::folder::{self, Asked, Open};
use crate::pages::show as show_page;
use crate::{chance, clock};
use axum::extract::{Path, Query, State};
use axum::http::{HeaderMap, HeaderName, HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Redirect, Response};
use logbook::view::View;
use measure::{ActId, Instant, Span};
use serde::Deserialize;
use std::sync::{Mutex, PoisonError};

/// Most pages that are open at a time; the oldest one closes first.
const MOST: usize = 20;

/// The pages that are open to read.
#[derive(Debug)]
pub struct Folders {
    life: Span,
    open: Mutex<Vec<(String, Instant)>>,
}

impl Folders {
    /// Pages that close themselves after so many minutes.
    pub fn new(minutes: u32) -> Self {
        Self { life: Span::from_minutes(minutes.into()), open: Mutex::default() }
    }

    /// None of them, and as long a life.
    pub fn another(&self) -> Self {
        Self { life: self.life, open: Mutex::default() }
    }

    /// Those that are open at this moment.
    fn list(&self, now: Instant) -> Vec<(String, Instant)> {
        let mut open = self.open.lock().unwrap_or_else(PoisonError::into_inner);
        open.retain(|(_, until)| *until > now);
        open.clone()
    }

    fn until(&self, token: &str, now: Instant) -> Option<Instant> {
        self.list(now).into_iter().find(|(known, _)| known == token).map(|(_, until)| until)
    }

    fn begin(&self, now: Instant) -> Result<String, chance::NoChance> {
        // 128 random bits; any id is as good, none is ever in the book.
        let token: ActId = chance::id()?;
        let token = token.to_string();
        let mut open = self.open.lock().unwrap_or_else(PoisonError::into_inner);
        open.retain(|(_, until)| *until > now);
        if open.len() >= MOST {
            open.remove(0);
        }
        open.push((token.clone(), now + self.life));
        Ok(token)
    }

    fn close(&self) {
        self.open.lock().unwrap_or_else(PoisonError::into_inner).clear();
    }
}

fn path_of(token: &str) -> String {
    format!("/folder/{token}")
}

/// From where the record is shown.
pub async fn page(State(served): State<Served>, headers: HeaderMap, head: Head) -> Response {
    let open = served.folders.list(clock::now());
    let open = open.into_iter().map(|(token, until)| Open { path: path_of(&token), until });
    let host = headers.get(header::HOST).and_then(|host| host.to_str().ok()).unwrap_or_default();
    let seen = show_page::Seen {
        minutes: u32::try_from(served.folders.life.millis() / 60_000).unwrap_or(u32::MAX),
        open: open.collect(),
        origin: host.to_owned(),
    };
    show(&served, head, move |view, ctx| Ok(Some(show_page::page(view, ctx, &seen)?))).await
}

/// Opens a page to read, and leads to it.
pub async fn begin(State(served): State<Served>, head: Head) -> Response {
    match served.folders.begin(clock::now()) {
        Ok(token) => (head.jar, Redirect::to(&path_of(&token))).into_response(),
        Err(error) => trouble(&head, &error.to_string()),
    }
}

/// Closes all of them.
pub async fn close(State(served): State<Served>, head: Head) -> Response {
    served.folders.close();
    (head.jar, Redirect::to(show_page::PATH)).into_response()
}

/// What the address says after its question mark.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub struct Chosen {
    time: Option<String>,
    from: Option<String>,
    to: Option<String>,
    r#in: Option<String>,
}

/// The record, to read. It is drawn without the salon's frame, and gives the reader no cookie: who
/// reads it becomes no screen of this salon.
pub async fn read(
    State(served): State<Served>,
    Path(token): Path<String>,
    Query(chosen): Query<Chosen>,
    head: Head,
) -> Response {
    let now = clock::now();
    let Some(until) = served.folders.until(&token, now) else {
        return over(&served, &head).await;
    };
    let open = Open { path: path_of(&token), until };
    let Chosen { time, from, to, r#in: language } = chosen;
    let asked = Asked { time, from, to, language };
    let left = u64::try_from((until - now).millis() / 1_000 + 1).unwrap_or(1);
    let page = drawn(&served, &head, move |view, ctx| folder::page(view, ctx, open, &asked)).await;
    match page {
        // The browser asks again when the time is over, and is told so: no script is needed for it.
        Ok(page) => ([(REFRESH, HeaderValue::from(left))], page).into_response(),
        Err(error) => unreadable(&error),
    }
}

const REFRESH: HeaderName = HeaderName::from_static("refresh");

async fn over(served: &Served, head: &Head) -> Response {
    match drawn(served, head, |_, ctx| Ok(folder::over(ctx))).await {
        Ok(page) => (StatusCode::GONE, page).into_response(),
        Err(error) => unreadable(&error),
    }
}

async fn drawn(
    served: &Served,
    head: &Head,
    draw: impl FnOnce(&View<'_>, &Ctx) -> Result<maud::Markup, logbook::book::BookError>
    + Send
    + 'static,
) -> Result<maud::Markup, String> {
    let head = head.clone();
    let work = move |app: &App| {
        app.book.read(|view| {
            let ctx = head.ctx(app, view)?;
            Ok::<_, Refusal>(draw(view, &ctx)?)
        })
    };
    match served.app.look(work).await {
        Ok(Ok(page)) => Ok(page),
        Ok(Err(refusal)) => Err(refusal.to_string()),
        Err(error) => Err(error.to_string()),
    }
}

/// In plain text: a page that leads back into the program is not for this reader.
fn unreadable(what: &str) -> Response {
    eprintln!("steamside: {what}");
    (StatusCode::INTERNAL_SERVER_ERROR, what.to_owned()).into_response()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)] // tests may stop at once
    use super::*;

    #[test]
    fn a_page_closes_itself_and_no_two_have_one_address() {
        let folders = Folders::new(30);
        let begun = Instant::from_millis(1_000);
        let (one, other) = (folders.begin(begun).unwrap(), folders.begin(begun).unwrap());
        assert_ne!(one, other);
        let after = |minutes: i64| begun + Span::from_minutes(minutes);
        assert_eq!(folders.until(&one, after(29)), Some(after(30)));
        assert_eq!(folders.until(&one, after(30)), None, "over to the moment");
        assert_eq!(folders.until("never", begun), None);
        let late = folders.begin(after(29)).unwrap();
        folders.close();
        assert_eq!(folders.until(&late, after(29)), None, "closed by hand");
        let first = folders.begin(after(40)).unwrap();
        for _ in 0..MOST {
            folders.begin(after(40)).unwrap();
        }
        assert_eq!(folders.until(&first, after(40)), None, "the oldest one gives way");
    }
}
