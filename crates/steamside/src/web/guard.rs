//! What is let in: this computer's own names only, no form that another site sent, and nobody on the
//! network whose screen was not let in.
//!
//! A page of another site cannot post here (its `Origin` differs), and a name that somebody else
//! points at this computer is not answered (its `Host` is unknown). What goes out tells the
//! browser to load nothing from elsewhere.

use super::Served;
use super::head::Head;
use crate::door::same;
use axum::extract::{ConnectInfo, Request, State};
use axum::http::request::Parts;
use axum::http::{HeaderMap, HeaderValue, Method, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Redirect, Response};
use axum_extra::extract::cookie::CookieJar;
use logbook::fact::StationKind;
use logbook::view::Station;
use measure::StationId;
use sha2::{Digest, Sha256};
use std::net::{IpAddr, SocketAddr};

/// Names by which this computer may be called, beside its addresses and `localhost`.
#[derive(Debug, Default)]
pub struct Hosts {
    /// Further names, in small letters.
    pub names: Vec<String>,
}

impl Hosts {
    fn knows(&self, host: &str) -> bool {
        let name = without_port(host).to_ascii_lowercase();
        let address = name.trim_start_matches('[').trim_end_matches(']');
        name == "localhost" || address.parse::<IpAddr>().is_ok() || self.names.contains(&name)
    }
}

/// The name without the port.
pub fn without_port(host: &str) -> &str {
    match host.rsplit_once(':') {
        Some((name, port)) if port.bytes().all(|b| b.is_ascii_digit()) && !name.ends_with(':') => {
            name
        }
        _ => host,
    }
}

fn text<'a>(headers: &'a HeaderMap, name: &str) -> Option<&'a str> {
    headers.get(name).and_then(|value| value.to_str().ok())
}

/// Did this form come from one of our own pages? Programs that send neither header are let in:
/// no browser is behind them, so nobody's cookies are abused.
fn own_form(headers: &HeaderMap, host: &str) -> bool {
    if let Some(site) = text(headers, "sec-fetch-site") {
        return matches!(site, "same-origin" | "none");
    }
    match text(headers, "origin") {
        Some(origin) => origin.split_once("://").is_some_and(|(_, from)| from == host),
        None => true,
    }
}

/// Who asks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum At {
    /// The box's own screen: what comes from this computer itself.
    Box,
    /// A screen that was let in.
    Station(StationId, StationKind),
    /// Nobody that is known: sees how to be let in, and nothing else.
    Stranger,
}

/// The cookie that holds a screen's key.
pub const KEY: &str = "paired";

/// Is the key in this cookie that of a screen that is let in? Every screen is compared in full, so
/// that the time it takes tells nothing.
pub fn station_with(key: &str, stations: &[Station]) -> Option<(StationId, StationKind)> {
    let hash = Sha256::digest(key.as_bytes());
    let mut found = None;
    for station in stations {
        let is = same(&station.key_hash, &hash);
        if is && station.parted.is_none() {
            found = Some((station.station, station.what));
        }
    }
    found
}

/// What strangers may ask for: how to be let in, how to trust the box, and what those pages load.
fn for_everybody(path: &str) -> bool {
    matches!(path, "/pair" | "/trust" | "/trust/authority.crt" | "/language")
        || path.starts_with("/assets/")
        // Somebody from outside reads by a random address that closes by itself.
        || path.starts_with("/folder/")
}

/// A wall only shows: it hangs where others can reach it.
fn for_walls(path: &str) -> bool {
    matches!(path, "/wall" | "/strip" | "/live") || for_everybody(path)
}

async fn who(served: &Served, parts: &Parts) -> Result<At, Response> {
    let from = parts.extensions.get::<ConnectInfo<SocketAddr>>();
    // Where it comes from is not known: then it does not come from here.
    if from.is_some_and(|ConnectInfo(from)| from.ip().to_canonical().is_loopback()) {
        return Ok(At::Box);
    }
    let jar = CookieJar::from_headers(&parts.headers);
    let Some(key) = jar.get(KEY).map(|cookie| cookie.value().to_owned()) else {
        return Ok(At::Stranger);
    };
    let known = served.let_in_by.look(|app| app.read(|view| view.stations())).await;
    match known {
        Ok(Ok(stations)) => Ok(match station_with(&key, &stations) {
            Some((station, what)) => {
                served.door.hear(station);
                At::Station(station, what)
            }
            None => At::Stranger,
        }),
        // Who cannot be told from a stranger is not let in.
        Ok(Err(error)) => {
            Err((StatusCode::INTERNAL_SERVER_ERROR, error.to_string()).into_response())
        }
        Err(error) => Err((StatusCode::INTERNAL_SERVER_ERROR, error.to_string()).into_response()),
    }
}

/// What whoever asks is answered at the door; `None`: come in.
fn at_the_door(served: &Served, at: At, parts: &Parts) -> Option<Response> {
    let path = parts.uri.path();
    match at {
        At::Stranger if !for_everybody(path) => {
            Some(match Head::read(parts, at, served.app.practice) {
                Ok(head) => {
                    let page = super::stations::pair_page(served, &head, None, "");
                    (StatusCode::FORBIDDEN, page).into_response()
                }
                Err(error) => error.into_response(),
            })
        }
        At::Station(_, StationKind::Wall) if !for_walls(path) => Some(match parts.method {
            Method::GET => Redirect::to("/wall").into_response(),
            _ => {
                let said = "This screen was let in as a wall: it only shows. Nothing was done.";
                (StatusCode::FORBIDDEN, said).into_response()
            }
        }),
        _ => None,
    }
}

/// Lets a request in, or says why not.
pub async fn guard(State(served): State<Served>, request: Request, next: Next) -> Response {
    let (mut parts, body) = request.into_parts();
    // The second version of HTTP has the name in the address.
    let named = parts.uri.authority().map(ToString::to_string);
    let host = text(&parts.headers, "host").map(str::to_owned).or(named).unwrap_or_default();
    if !served.hosts.knows(&host) {
        let said = "This computer is not known under that name. Nothing was done. \
                    Use its address, or start it with --name.";
        return (StatusCode::MISDIRECTED_REQUEST, said).into_response();
    }
    if parts.method != Method::GET && !own_form(&parts.headers, &host) {
        let said = "This form came from another site. Nothing was done. Open the page again.";
        return (StatusCode::FORBIDDEN, said).into_response();
    }
    let mut response = match who(&served, &parts).await {
        Ok(at) => match at_the_door(&served, at, &parts) {
            None => {
                parts.extensions.insert(at);
                next.run(Request::from_parts(parts, body)).await
            }
            Some(answer) => answer,
        },
        Err(answer) => answer,
    };
    let out = response.headers_mut();
    for (name, value) in [
        (
            header::CONTENT_SECURITY_POLICY,
            "default-src 'self'; img-src 'self' data:; style-src 'self' 'unsafe-inline'; \
             frame-ancestors 'none'; form-action 'self'; base-uri 'none'",
        ),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (header::REFERRER_POLICY, "same-origin"),
    ] {
        out.insert(name, HeaderValue::from_static(value));
    }
    out.entry(header::CACHE_CONTROL).or_insert(HeaderValue::from_static("no-store"));
    response
}

#[cfg(test)]
mod tests;
