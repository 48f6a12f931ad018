//! Letting screens in: the code, the form of the new screen, what the box's authority is.

use super::Fields;
use super::Served;
use super::guard::{At, KEY};
use super::head::{Head, lasting, own};
use super::show::{About, answer_refusal, trouble};
use crate::acts::{self, Refusal};
use crate::app::{App, Who};
use crate::door::{Code, No};
use crate::{chance, pages};
use axum::Form;
use axum::extract::State;
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Redirect, Response};
use logbook::fact::{Known, StationKind};
use logbook::view::View;
use maud::Markup;
use measure::StationId;
use sha2::{Digest, Sha256};

/// The page of how to be let in.
pub fn pair_page(served: &Served, head: &Head, no: Option<No>, code: &str) -> Markup {
    let asked = pages::pair::Asked { code, no, reach: &served.door.reach, secure: served.secure };
    pages::pair::page(head.language, asked)
}

/// May screens be let in and go from here? At the box, at a desk, and where the sign of somebody in
/// charge was used last.
pub fn may_let_in(view: &View<'_>, head: &Head) -> Result<bool, Refusal> {
    Ok(match head.at {
        At::Box | At::Station(_, StationKind::Desk) => true,
        At::Station(_, StationKind::Tablet | StationKind::Phone) => match head.sign {
            Some(sign) => view.roles(sign)?.in_charge,
            None => false,
        },
        At::Station(_, StationKind::Wall) | At::Stranger => false,
    })
}

/// Makes a code.
pub async fn code(State(served): State<Served>, head: Head) -> Response {
    let asks = head.clone();
    let may = served.app.look(move |app| app.book.read(|view| may_let_in(view, &asks))).await;
    match (may, Code::draw()) {
        (Ok(Ok(true)), Ok(code)) => {
            served.door.open(code);
            (head.jar, Redirect::to("/stations")).into_response()
        }
        (Ok(Ok(false)), Ok(_)) => {
            let no = Refusal::rule("refused-not-here");
            answer_refusal(&served, head, no, About::default()).await
        }
        (Ok(Err(refusal)), _) => answer_refusal(&served, head, refusal, About::default()).await,
        (_, Err(error)) => trouble(&head, &error.to_string()),
        (Err(error), _) => trouble(&head, &error.to_string()),
    }
}

/// What a screen says that it is.
fn kind(word: &str) -> Option<StationKind> {
    match word {
        "tablet" => Some(StationKind::Tablet),
        "phone" => Some(StationKind::Phone),
        "wall" => Some(StationKind::Wall),
        "desk" => Some(StationKind::Desk),
        _ => None,
    }
}

/// A new screen with its code.
pub async fn pair(
    State(served): State<Served>,
    head: Head,
    Form(pairs): Form<Vec<(String, String)>>,
) -> Response {
    let fields = Fields(pairs);
    let code = fields.one("code").unwrap_or_default();
    let Some(what) = fields.one("what").and_then(kind) else {
        // The page asks for it; without it the code is not used up.
        return (StatusCode::CONFLICT, pair_page(&served, &head, None, code)).into_response();
    };
    let plain_only = served.door.reach.for_others().iter().all(|at| at.starts_with("http:"));
    if !served.secure && !plain_only {
        // A key never goes over the plain address where there is a better one.
        return (StatusCode::CONFLICT, pair_page(&served, &head, None, "")).into_response();
    }
    if let Err(no) = served.door.enter(code) {
        return (StatusCode::FORBIDDEN, pair_page(&served, &head, Some(no), "")).into_response();
    }
    let name = fields.one("name").unwrap_or_default().to_owned();
    let station = head.station;
    match served.app.look(move |app| let_in(app, (station, what), name)).await {
        Ok(Ok((station, key))) => {
            let mut cookie = lasting(KEY, key);
            cookie.set_secure(served.secure);
            let jar = head
                .jar
                .add(cookie)
                .add(lasting(own(head.practice, "station"), station.to_string()));
            let to = if what == StationKind::Wall { "/wall" } else { "/" };
            (jar, Redirect::to(to)).into_response()
        }
        Ok(Err(refusal)) => trouble(&head, &refusal.to_string()),
        Err(error) => trouble(&head, &error.to_string()),
    }
}

/// Writes the new screen; its id and its key, of which the book has only the hash.
fn let_in(
    app: &App,
    (wished, what): (StationId, StationKind),
    name: String,
) -> Result<(StationId, String), Refusal> {
    let known = app.read(|view| view.stations())?;
    // A screen that comes back keeps its name in the log; nobody takes the name of another.
    let taken = known.iter().any(|known| known.station == wished && known.parted.is_none());
    let station = if taken { chance::id()? } else { wished };
    let key = chance::id::<()>()?.to_string();
    let key_hash: [u8; 32] = Sha256::digest(key.as_bytes()).into();
    let who =
        Who { act: chance::id()?, station, sign: None, happened: None, known: Known::Setting };
    let pair = acts::Pair { station, what, key_hash, name };
    app.act(who, |view, draft| acts::pair(view, draft, pair))?;
    Ok((station, key))
}

/// The authority's certificate, for screens to trust.
pub async fn certificate(State(served): State<Served>) -> Response {
    match &served.door.reach.secure {
        Some((_, public)) => {
            let kind = [(header::CONTENT_TYPE, "application/x-x509-ca-cert")];
            (kind, public.certificate.clone()).into_response()
        }
        None => StatusCode::NOT_FOUND.into_response(),
    }
}

/// The part of the pages that works while the box cannot be reached. It lies at the root because a
/// browser lets it look after nothing above itself.
pub async fn worker() -> Response {
    let headers = [
        (header::CONTENT_TYPE, "text/javascript; charset=utf-8"),
        (header::CACHE_CONTROL, "no-cache"),
    ];
    (headers, pages::kept::WORKER).into_response()
}
