//! How facts are stored. A stored form is never edited, only followed by a newer one.

pub(crate) mod tree;
pub(crate) mod v1;
pub(crate) mod v2;
pub(crate) mod words;

use crate::fact::Body;
use serde_json::Value;

/// The form of the loop: from used to opened.
const LOOP: i64 = 1;
/// The form of the day. It adds kinds to the first; no kind of fact has two forms.
const DAY: i64 = 2;

/// A body in its stored form.
#[derive(Debug, PartialEq)]
pub(crate) struct Stored {
    /// The word for what happened.
    pub(crate) kind: String,
    /// The form.
    pub(crate) version: i64,
    /// The fields, as a tree of whole numbers, texts, lists and maps.
    pub(crate) tree: Value,
}

/// The stored form of a body.
///
/// # Errors
/// A number that does not fit, as a sentence.
pub(crate) fn store(body: &Body) -> Result<Stored, String> {
    let (version, whole) = match body {
        Body::Day(day) => (DAY, serde_json::to_value(v2::to_form(day)?)),
        body => (LOOP, serde_json::to_value(v1::to_form(body)?)),
    };
    let whole = whole.map_err(|error| error.to_string())?;
    let Value::Object(map) = whole else {
        return Err("BUG: a stored form is always a map".to_owned());
    };
    let mut entries = map.into_iter();
    match (entries.next(), entries.next()) {
        (Some((kind, tree)), None) => Ok(Stored { kind, version, tree }),
        _ => Err("BUG: a stored form has exactly one kind".to_owned()),
    }
}

/// The body that was stored.
///
/// # Errors
/// What does not fit, as a sentence.
pub(crate) fn load(stored: Stored) -> Result<Body, String> {
    let whole = Value::Object([(stored.kind, stored.tree)].into_iter().collect());
    let said = |error: serde_json::Error| error.to_string();
    match stored.version {
        LOOP => v1::from_form(serde_json::from_value(whole).map_err(said)?),
        DAY => v2::from_form(serde_json::from_value(whole).map_err(said)?).map(Body::Day),
        other => Err(format!("it is stored in form {other}, this program knows up to form {DAY}")),
    }
}
