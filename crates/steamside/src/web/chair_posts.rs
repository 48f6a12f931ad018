//! What a chair sends that is no act: a photo to be read, and how long ago a pouch was opened.

use super::head::Head;
use super::show::trouble;
use super::{Fields, Served};
use crate::acts::Refusal;
use crate::photo::{self, NotRead};
use axum::extract::{Multipart, State};
use axum::response::{IntoResponse, Redirect, Response};
use measure::{Instant, PouchId, Span};
use std::time::Duration;
use tokio::sync::Semaphore;

/// Photos held in memory at one time.
static AT_ONCE: Semaphore = Semaphore::const_new(2);
/// How long a photo may be on its way: a phone that went out of reach must not keep its place.
const ON_ITS_WAY: Duration = Duration::from_secs(60);
/// The longest time ago that a pouch is linked after: a working day.
const LONGEST_AGO_MIN: i64 = 12 * 60;

/// The field of an act that was kept while its station was cut off: milliseconds ago.
pub const KEPT: &str = "kept-ago";
/// For so long an act may have been kept (WORK 6.1: 72 h).
const LONGEST_KEPT: Span = Span::from_minutes(72 * 60);

/// The fields of a photo's form.
#[derive(Default)]
struct Sent {
    chair: Option<u32>,
    photo: Vec<u8>,
    too_large: bool,
}

/// Reads a photo and goes to its pouch, or back to the chair with the reason. The photo is let go.
pub async fn photo(State(served): State<Served>, head: Head, form: Multipart) -> Response {
    // Never closed, so a place is always given.
    let place = AT_ONCE.acquire().await;
    let sent = tokio::time::timeout(ON_ITS_WAY, sent(form)).await.unwrap_or_default();
    let chair = sent.chair;
    let found = if sent.too_large {
        Err(NotRead::TooLarge)
    } else {
        match served.app.look(move |_| photo::pouch_in(&sent.photo)).await {
            Ok(found) => found,
            Err(error) => return trouble(&head, &error.to_string()),
        }
    };
    drop(place);
    (head.jar, Redirect::to(&address(found, chair))).into_response()
}

/// Where a photo leads.
fn address(found: Result<PouchId, NotRead>, chair: Option<u32>) -> String {
    let chair = chair.map(|chair| format!("chair={chair}&")).unwrap_or_default();
    match found {
        Ok(pouch) => format!("/chair?{chair}pouch={pouch}"),
        Err(reason) => format!("/chair?{chair}photo={}", reason.word()),
    }
}

/// Takes the form in; of a photo beyond the limit only its size is kept. What is cut short on its
/// way counts as what came so far: half a picture is refused by its reader.
async fn sent(mut form: Multipart) -> Sent {
    let mut sent = Sent::default();
    while let Ok(Some(mut part)) = form.next_field().await {
        let name = part.name().unwrap_or_default().to_owned();
        if name == "chair" {
            sent.chair = part.text().await.ok().and_then(|text| text.trim().parse().ok());
        } else if name == "photo" {
            while let Ok(Some(piece)) = part.chunk().await {
                sent.too_large |= sent.photo.len() + piece.len() > photo::LARGEST;
                if !sent.too_large {
                    sent.photo.extend_from_slice(&piece);
                }
            }
        }
    }
    sent
}

/// When it happened, where a form says that it was not now: minutes ago, of an opened pouch that
/// is linked after the service; milliseconds ago, of what was kept while the station was cut off.
/// The station's own clock counts for neither.
pub fn happened(name: &str, fields: &Fields, now: Instant) -> Result<Option<Instant>, Refusal> {
    let ago = if name == "open" { fields.maybe::<i64>("ago")? } else { None };
    let ago = match ago {
        Some(minutes) if !(1..=LONGEST_AGO_MIN).contains(&minutes) => {
            return Err(Refusal::rule_with("refused-field-misread", "field", "ago"));
        }
        ago => ago.map(Span::from_minutes),
    };
    let kept = match fields.maybe::<i64>(KEPT)? {
        Some(millis) if !(0..=LONGEST_KEPT.millis()).contains(&millis) => {
            return Err(Refusal::rule("refused-kept-too-long"));
        }
        kept => kept.map(Span::from_millis),
    };
    Ok(match (ago, kept) {
        (None, None) => None,
        (ago, kept) => Some(now - ago.unwrap_or_default() - kept.unwrap_or_default()),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(name: &str, fields: &[(&str, &str)], minutes: Option<i64>) {
        let pairs = fields.iter().map(|(name, value)| ((*name).to_owned(), (*value).to_owned()));
        let now = Instant::from_millis(1_000_000_000_000);
        let said = happened(name, &Fields(pairs.collect()), now).ok();
        let said = said.map(|at| at.map_or(0, |at| (now - at).millis() / 60_000));
        assert_eq!(said, minutes, "{name} {fields:?}");
    }

    #[test]
    fn an_act_may_be_told_late_and_never_early() {
        check("wash", &[], Some(0));
        check("open", &[("ago", "45")], Some(45));
        check("wash", &[("ago", "45")], Some(0));
        check("wash", &[(KEPT, "600000")], Some(10));
        check("open", &[(KEPT, "600000"), ("ago", "5")], Some(15));
        // 72 hours, as WORK 6.1 asks.
        check("wash", &[(KEPT, "259200000")], Some(72 * 60));
        for bad in ["259200001", "-1", "x"] {
            check("wash", &[(KEPT, bad)], None);
        }
        check("open", &[("ago", "0")], None);
    }
}
