//! The two defined forms of a tree of values: the bytes that are hashed and the text that is kept.
//!
//! Both are described, with a vector worked out by hand, in
//! `docs/decisions/0003-facts-and-their-bytes.md`. A tree holds null, booleans, whole numbers of
//! 64 bits with a sign, texts, lists and maps. There is no fraction in it: two programs may print
//! one differently.

use serde_json::{Map, Value};

const NULL: u8 = 0;
const FALSE: u8 = 1;
const TRUE: u8 = 2;
const INT: u8 = 3;
const TEXT: u8 = 4;
const LIST: u8 = 5;
const MAP: u8 = 6;

/// The bytes that are hashed: a tag, then the length before everything whose length varies.
///
/// # Errors
/// A number that is not whole or has no place in 64 bits, as a sentence.
pub(crate) fn bytes(tree: &Value) -> Result<Vec<u8>, String> {
    let mut out = Vec::new();
    put(&mut out, tree)?;
    Ok(out)
}

fn put(out: &mut Vec<u8>, tree: &Value) -> Result<(), String> {
    match tree {
        Value::Null => out.push(NULL),
        Value::Bool(false) => out.push(FALSE),
        Value::Bool(true) => out.push(TRUE),
        Value::Number(_) => {
            out.push(INT);
            out.extend_from_slice(&whole(tree)?.to_be_bytes());
        }
        Value::String(text) => {
            out.push(TEXT);
            put_text(out, text);
        }
        Value::Array(items) => {
            out.push(LIST);
            put_length(out, items.len());
            for item in items {
                put(out, item)?;
            }
        }
        Value::Object(map) => {
            out.push(MAP);
            put_length(out, map.len());
            for (key, value) in sorted(map) {
                put_text(out, key);
                put(out, value)?;
            }
        }
    }
    Ok(())
}

fn put_length(out: &mut Vec<u8>, length: usize) {
    out.extend_from_slice(&(length as u64).to_be_bytes());
}

fn put_text(out: &mut Vec<u8>, text: &str) {
    put_length(out, text.len());
    out.extend_from_slice(text.as_bytes());
}

fn whole(tree: &Value) -> Result<i64, String> {
    tree.as_i64().ok_or_else(|| format!("{tree} is not a whole number of 64 bits"))
}

/// By the bytes of the keys, whatever order the map has kept.
fn sorted(map: &Map<String, Value>) -> Vec<(&String, &Value)> {
    let mut entries: Vec<_> = map.iter().collect();
    entries.sort_by_key(|(key, _)| key.as_bytes());
    entries
}

/// The text that is kept: JSON without blanks, maps sorted as in the bytes, and only `"`, `\` and
/// what lies below U+0020 escaped, the latter always as `\u00XX` with small letters. A kept text
/// that is not exactly this was not written by us.
///
/// # Errors
/// A number that is not whole or has no place in 64 bits, as a sentence.
pub(crate) fn text(tree: &Value) -> Result<String, String> {
    let mut out = String::new();
    print(&mut out, tree)?;
    Ok(out)
}

fn print(out: &mut String, tree: &Value) -> Result<(), String> {
    match tree {
        Value::Null => out.push_str("null"),
        Value::Bool(flag) => out.push_str(if *flag { "true" } else { "false" }),
        Value::Number(_) => out.push_str(&whole(tree)?.to_string()),
        Value::String(text) => print_text(out, text),
        Value::Array(items) => {
            out.push('[');
            for (at, item) in items.iter().enumerate() {
                if at > 0 {
                    out.push(',');
                }
                print(out, item)?;
            }
            out.push(']');
        }
        Value::Object(map) => {
            out.push('{');
            for (at, (key, value)) in sorted(map).into_iter().enumerate() {
                if at > 0 {
                    out.push(',');
                }
                print_text(out, key);
                out.push(':');
                print(out, value)?;
            }
            out.push('}');
        }
    }
    Ok(())
}

fn print_text(out: &mut String, text: &str) {
    out.push('"');
    for letter in text.chars() {
        match letter {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            control if control < ' ' => {
                out.push_str(&format!("\\u{:04x}", u32::from(control)));
            }
            plain => out.push(plain),
        }
    }
    out.push('"');
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)] // tests may stop at once
    use super::*;
    use proptest::prelude::*;
    use serde_json::json;

    /// By hand: map of 2; `count`, whole number 4; `kind`, text `manicure`.
    #[test]
    fn a_tree_by_hand() {
        let mut expected = vec![6, 0, 0, 0, 0, 0, 0, 0, 2];
        expected.extend([0, 0, 0, 0, 0, 0, 0, 5]);
        expected.extend(b"count");
        expected.extend([3, 0, 0, 0, 0, 0, 0, 0, 4]);
        expected.extend([0, 0, 0, 0, 0, 0, 0, 4]);
        expected.extend(b"kind");
        expected.extend([4, 0, 0, 0, 0, 0, 0, 0, 8]);
        expected.extend(b"manicure");
        let tree = json!({"kind": "manicure", "count": 4});
        assert_eq!(bytes(&tree).unwrap(), expected);
        assert_eq!(text(&tree).unwrap(), r#"{"count":4,"kind":"manicure"}"#);
    }

    #[test]
    fn the_kept_text_escapes_what_it_must_and_no_more() {
        let tree = json!(["\"\\\n\u{1f} /é\u{7f}💅", null, -7, true, {}]);
        assert_eq!(text(&tree).unwrap(), "[\"\\\"\\\\\\u000a\\u001f /é\u{7f}💅\",null,-7,true,{}]");
    }

    fn trees() -> impl Strategy<Value = Value> {
        let leaf = prop_oneof![
            Just(Value::Null),
            any::<bool>().prop_map(Value::from),
            any::<i64>().prop_map(Value::from),
            any::<String>().prop_map(Value::from),
        ];
        leaf.prop_recursive(4, 32, 5, |inner| {
            prop_oneof![
                prop::collection::vec(inner.clone(), 0..5).prop_map(Value::from),
                prop::collection::vec((any::<String>(), inner), 0..5)
                    .prop_map(|entries| Value::Object(entries.into_iter().collect())),
            ]
        })
    }

    proptest! {
        /// Any reader of JSON reads the kept text, and comes to the same text and bytes.
        #[test]
        fn the_kept_text_says_the_tree(tree in trees()) {
            let kept = text(&tree).unwrap();
            let read: Value = serde_json::from_str(&kept).unwrap();
            prop_assert_eq!(&read, &tree);
            prop_assert_eq!(text(&read).unwrap(), kept);
        }

        /// Two trees share their bytes only if they are the same.
        #[test]
        fn two_trees_have_two_forms(one in trees(), other in trees()) {
            prop_assert_eq!(one == other, bytes(&one).unwrap() == bytes(&other).unwrap());
        }
    }
}
