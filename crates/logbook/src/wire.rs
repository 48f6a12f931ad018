//! How facts are stored. A stored form is never edited, only followed by a newer one.

pub(crate) mod tree;
pub(crate) mod v1;
pub(crate) mod v2;
pub(crate) mod v3;
pub(crate) mod v4;
pub(crate) mod v5;
pub(crate) mod words;

use crate::fact::Body;
use serde_json::Value;

/// The form of the loop: from used to opened.
const LOOP: i64 = 1;
/// The form of the day. It adds kinds to the first; no kind of fact has two forms.
const DAY: i64 = 2;
/// The form of what goes in. It adds kinds to the first two.
const LOADING: i64 = 3;
/// The form of upkeep. It adds kinds to those before.
const UPKEEP: i64 = 4;
/// The form of the counter. It adds kinds to those before.
const COUNTER: i64 = 5;

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
        Body::Loading(loading) => (LOADING, serde_json::to_value(v3::to_form(loading)?)),
        Body::Upkeep(upkeep) => (UPKEEP, serde_json::to_value(v4::to_form(upkeep)?)),
        Body::Counter(counter) => (COUNTER, serde_json::to_value(v5::to_form(counter)?)),
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
        LOADING => {
            let loading = v3::from_form(serde_json::from_value(whole).map_err(said)?)?;
            Ok(Body::Loading(Box::new(loading)))
        }
        UPKEEP => {
            let upkeep = v4::from_form(serde_json::from_value(whole).map_err(said)?)?;
            Ok(Body::Upkeep(Box::new(upkeep)))
        }
        COUNTER => {
            let counter = v5::from_form(serde_json::from_value(whole).map_err(said)?)?;
            Ok(Body::Counter(Box::new(counter)))
        }
        other => {
            Err(format!("it is stored in form {other}, this program knows up to form {COUNTER}"))
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)] // tests may stop at once
    use super::*;
    use crate::fact::Loading;
    use serde_json::json;

    fn weighed(tree: &Value) -> Result<Body, String> {
        load(Stored { kind: "tray_weighed".to_owned(), version: LOADING, tree: tree.clone() })
    }

    /// What this program does not know might change what the rest means.
    #[test]
    fn an_unknown_field_kind_word_or_form_is_refused() {
        let good = json!({"grams": 1240, "empty_g": null, "sets": [["bits", 6]], "pouched": true});
        let sets = vec![("bits".parse().unwrap(), 6)];
        let body = Loading::TrayWeighed { grams: 1_240, empty_g: None, sets, pouched: true };
        assert_eq!(weighed(&good), Ok(Body::Loading(Box::new(body))));
        for (field, value) in [
            ("lid_g", json!(3)),
            ("grams", json!(-1)),
            ("grams", json!("1240")),
            ("grams", json!(1240.5)),
            ("sets", json!([["Bits", 6]])),
            ("pouched", Value::Null),
        ] {
            let mut odd = good.clone();
            odd[field] = value;
            assert!(weighed(&odd).is_err(), "{odd}");
        }
        for (kind, version) in
            [("tray_weighted", LOADING), ("tray_weighed", DAY), ("tray_weighed", 4)]
        {
            let stored = Stored { kind: kind.to_owned(), version, tree: good.clone() };
            assert!(load(stored).is_err(), "{kind} in form {version}");
        }
        let room = |chamber: Value, face: &str| {
            let tray = json!({"width_mm": 180, "depth_mm": 280, "height_mm": 30, "mass_g": 0});
            let inside = json!({
                "chamber": chamber, "trays": [tray], "rack": null, "pattern": "flat", "face": face,
                "wall_mm": 5, "between_mm": 5, "manual_page": null
            });
            let tree = json!({"machine": "000000000000000000000000000000c8", "inside": inside});
            load(Stored { kind: "inside_set".to_owned(), version: LOADING, tree })
        };
        let round = json!({"round": {"diameter_mm": 240, "depth_mm": 400}});
        assert!(room(round.clone(), "paper").is_ok());
        assert!(room(round, "Paper").is_err());
        assert!(
            room(json!({"round": {"diameter_mm": 240, "depth_mm": 400, "x": 1}}), "paper").is_err()
        );
        assert!(room(json!({"ball": {"diameter_mm": 240}}), "paper").is_err());
    }
}
