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
    tree.as_i64()
        .ok_or_else(|| format!("{tree} is not a whole number of 64 bits"))
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
