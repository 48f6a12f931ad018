//! What a request brings along: language, station and the sign last used there, from cookies.

use super::guard::At;
use super::{Ctx, Served};
use crate::acts::Refusal;
use crate::app::App;
use crate::chance;
use crate::intake::take::salon_zone;
use crate::pages::strip;
use crate::words::Language;
use axum::extract::FromRequestParts;
use axum::http::StatusCode;
use axum::http::request::Parts;
use axum_extra::extract::cookie::{Cookie, CookieJar, SameSite};
use logbook::fact::Units;
use logbook::view::View;
use measure::{ActId, PersonId, StationId};
use std::sync::Arc;

/// The part of a request that every page and act looks at.
#[derive(Debug, Clone)]
pub struct Head {
    /// Cookies, with the station's one added where it was missing.
    pub jar: CookieJar,
    /// The reader's language.
    pub language: Language,
    /// The language that was chosen on this screen.
    pub chosen: Option<Language>,
    /// The station.
    pub station: StationId,
    /// How it came in.
    pub at: At,
    /// The sign last used here.
    pub sign: Option<PersonId>,
    /// The act just done.
    pub did: Option<ActId>,
    /// It is a book for practice.
    pub practice: bool,
    /// Path and query, without `did`.
    pub here: String,
}

/// A cookie that stays for five years and is never sent to another site's request.
pub fn lasting(name: &'static str, value: String) -> Cookie<'static> {
    Cookie::build((name, value))
        .path("/")
        .http_only(true)
        .same_site(SameSite::Strict)
        .permanent()
        .build()
}

/// Cookies do not tell two ports of one computer apart: those of a practice book have other names,
/// so that no sign and no station of it is ever one of the salon's own.
pub const fn own(practice: bool, name: &'static str) -> &'static str {
    match (practice, name.as_bytes()) {
        (true, b"sign") => "practice-sign",
        (true, b"station") => "practice-station",
        _ => name,
    }
}

impl FromRequestParts<Served> for Head {
    type Rejection = (StatusCode, String);

    async fn from_request_parts(
        parts: &mut Parts,
        served: &Served,
    ) -> Result<Self, Self::Rejection> {
        // The guard says so of every request.
        let at = parts.extensions.get().copied().unwrap_or(At::Stranger);
        Self::read(parts, at, served.app.practice)
    }
}

impl Head {
    /// What these parts of a request bring along.
    pub fn read(parts: &Parts, at: At, practice: bool) -> Result<Self, (StatusCode, String)> {
        let mut jar = CookieJar::from_headers(&parts.headers);
        let cookie = |name: &str| jar.get(name).map(|cookie| cookie.value().to_owned());
        let chosen = cookie("language").and_then(|code| Language::from_code(&code));
        let language = chosen.or_else(|| asked_for(parts)).unwrap_or(Language::En);
        let sign = cookie(own(practice, "sign")).and_then(|text| text.parse().ok());
        let known = match at {
            // A practice book knows no station of the salon's own.
            At::Station(station, _) if !practice => Some(station),
            _ => cookie(own(practice, "station")).and_then(|text| text.parse().ok()),
        };
        let station = match known {
            Some(station) => station,
            None => {
                let station: StationId = chance::id()
                    .map_err(|error| (StatusCode::INTERNAL_SERVER_ERROR, error.to_string()))?;
                jar = jar.add(lasting(own(practice, "station"), station.to_string()));
                station
            }
        };
        let query = parts.uri.query().unwrap_or_default();
        let (did, rest): (Vec<&str>, Vec<&str>) =
            query.split('&').filter(|p| !p.is_empty()).partition(|p| p.starts_with("did="));
        let did = did.first().and_then(|pair| pair[4..].parse().ok());
        let here = match rest.join("&") {
            rest if rest.is_empty() => parts.uri.path().to_owned(),
            rest => format!("{}?{rest}", parts.uri.path()),
        };
        Ok(Self { jar, language, chosen, station, at, sign, did, practice, here })
    }
}

/// The first language of the browser's list that we speak.
fn asked_for(parts: &Parts) -> Option<Language> {
    parts
        .headers
        .get("accept-language")?
        .to_str()
        .ok()?
        .split(',')
        .find_map(|entry| Language::from_code(entry.trim().get(..2)?))
}

impl Head {
    /// The language chosen on this screen; where none was, that of the person who signed here last;
    /// where nobody said it, the browser's.
    fn reads(&self, view: &View<'_>) -> Result<Language, Refusal> {
        let (None, Some(sign)) = (self.chosen, self.sign) else {
            return Ok(self.language);
        };
        let speaks = view.speaks(sign)?.and_then(|code| Language::from_code(&code));
        Ok(speaks.unwrap_or(self.language))
    }

    /// The page's surroundings, with what only the book and the machines' files know.
    pub fn ctx(&self, app: &App, view: &View<'_>) -> Result<Ctx, Refusal> {
        let language = self.reads(view)?;
        let said = view.record_shows()?;
        let record = match said {
            Some((code, units)) => (Language::from_code(&code).unwrap_or(language), units),
            None => (language, Units::Metric),
        };
        Ok(Ctx {
            language,
            record,
            now: app.now(),
            pace: app.pace(),
            zone: salon_zone(view)?,
            book: view.salon()?.book,
            station: self.station,
            sign: self.sign,
            did: self.did,
            here: self.here.clone(),
            head: view.last_seq()?,
            running: strip::running(view, &app.live)?,
            plans: Arc::clone(&app.plans),
            lived: Arc::clone(&app.lived),
        })
    }
}
