//! JSON of `steamside verify`.

use crate::clock;
use jiff::tz::TimeZone;
use logbook::verify::Verified;
use measure::Instant;
use serde_json::{Value, json};

/// One object, every key present.
pub fn report(verified: &Verified) -> Value {
    json!({
        "ok": verified.ok,
        "facts": verified.facts,
        "first_at": verified.first_at.map(utc),
        "last_at": verified.last_at.map(utc),
        "head": verified.head.as_ref().map(ToString::to_string),
        "first_bad": verified.first_bad.as_ref().map(|bad| json!({
            "seq": bad.seq,
            "why": bad.why,
        })),
    })
}

fn utc(at: Instant) -> String {
    format!("{}Z", clock::civil(at, &TimeZone::UTC))
}
