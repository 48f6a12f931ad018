//! How facts are stored. A stored form is never edited, only followed by a newer one.

pub(crate) mod tree;
pub(crate) mod v1;
pub(crate) mod words;

use crate::fact::Body;
use serde_json::Value;

/// The form that is written now.
pub(crate) const VERSION: i64 = 1;

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
    let form = v1::to_form(body)?;
    let whole = serde_json::to_value(form).map_err(|error| error.to_string())?;
    let Value::Object(map) = whole else {
        return Err("BUG: a stored form is always a map".to_owned());
    };
    let mut entries = map.into_iter();
    match (entries.next(), entries.next()) {
        (Some((kind, tree)), None) => Ok(Stored { kind, version: VERSION, tree }),
        _ => Err("BUG: a stored form has exactly one kind".to_owned()),
    }
}

/// The body that was stored.
///
/// # Errors
/// What does not fit, as a sentence.
pub(crate) fn load(stored: Stored) -> Result<Body, String> {
    if stored.version != VERSION {
        return Err(format!(
            "it is stored in form {}, this program knows form {VERSION}",
            stored.version
        ));
    }
    let whole = Value::Object([(stored.kind, stored.tree)].into_iter().collect());
    let form = serde_json::from_value(whole).map_err(|error| error.to_string())?;
    v1::from_form(form)
}
