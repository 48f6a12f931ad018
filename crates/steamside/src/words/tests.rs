#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)] // tests may stop at once
use super::*;
use cycle::finding::Code;
use load::catalogue;
use load::chamber::{Face, Pattern};
use load::implement::{Chemical, Form, Material, Metal, Stands};
use logbook::typical::chores;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

/// Claims that nobody has measured; put together from pieces, so that this file holds none.
const CLAIMS: [&str; 6] = [
    concat!("ster", "il"),
    concat!("ester", "il"),
    concat!("est", "éril"),
    concat!("vô ", "trùng"),
    concat!("멸", "균"),
    concat!("无", "菌"),
];

/// The lines of a language: key, with `.part` for its parts, and text.
fn lines(language: Language) -> BTreeMap<String, String> {
    let mut lines = BTreeMap::new();
    let (mut key, mut part) = (String::new(), String::new());
    for line in language.lines().lines() {
        if line.starts_with(|c: char| c.is_ascii_lowercase()) {
            let (name, text) = line.split_once('=').unwrap();
            key = name.trim().to_owned();
            part.clone_from(&key);
            lines.insert(key.clone(), text.to_owned());
        } else if let Some((name, text)) =
            line.trim().strip_prefix('.').and_then(|l| l.split_once('='))
        {
            part = format!("{key}.{}", name.trim());
            lines.insert(part.clone(), text.to_owned());
        } else if !line.starts_with('#') && !part.is_empty() {
            lines.get_mut(&part).unwrap().push_str(line);
        }
    }
    lines
}

fn values(text: &str) -> BTreeSet<&str> {
    let names = text.split('$').skip(1);
    names.map(|rest| rest.split(|c: char| !c.is_alphanumeric()).next().unwrap()).collect()
}

/// The program's own sources, without tests and without the comments.
fn sources(folder: &Path, into: &mut Vec<String>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_name().unwrap().to_str().unwrap().to_owned();
        if path.is_dir() && name != "tests" {
            sources(&path, into);
        } else if name.ends_with(".rs") && name != "tests.rs" {
            let text = fs::read_to_string(&path).unwrap();
            let code = text.lines().filter(|line| !line.trim_start().starts_with("//"));
            into.push(code.collect::<Vec<_>>().join("\n"));
        }
    }
}

fn all_sources() -> Vec<String> {
    let mut into = Vec::new();
    sources(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src"), &mut into);
    into
}

fn is_key(text: &str) -> bool {
    text.starts_with(|c: char| c.is_ascii_lowercase())
        && text.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-')
}

/// Every text in quotes that could be a key.
fn quoted(sources: &[String]) -> BTreeSet<&str> {
    sources.iter().flat_map(|source| source.split('"')).filter(|text| is_key(text)).collect()
}

/// Keys that are put together while the program runs.
fn put_together() -> Vec<String> {
    let mut keys: Vec<_> = (1..=7).map(|day| format!("weekday-{day}")).collect();
    keys.extend((1..=12).map(|month| format!("month-{month}")));
    keys.extend(Code::ALL.map(|code| format!("reason-{}", code.as_str().replace('_', "-"))));
    keys.extend(["fast", "middle", "long"].map(|cycle| format!("cycle-{cycle}")));
    let kinds = ["manicure", "pedicure", "efile-bits", "bits", "nippers", "foot-kit", "art-tools"];
    keys.extend(kinds.map(|kind| format!("kind-{kind}")));
    let kebab = |family: &str, word: &str| format!("{family}-{}", word.replace(' ', "-"));
    keys.extend(Form::ALL.map(|form| kebab("form", form.word())));
    keys.extend(Material::ALL.map(|material| kebab("material", material.word())));
    keys.extend(Metal::ALL.map(|metal| kebab("metal", metal.word())));
    keys.extend(Stands::ALL.map(|stands| kebab("stands", stands.word())));
    keys.extend(Chemical::ALL.map(|chemical| kebab("chemical", chemical.word())));
    keys.extend(Pattern::ALL.map(|pattern| kebab("pattern", pattern.word())));
    keys.extend(Face::ALL.map(|face| kebab("face", face.word())));
    let typical = catalogue::implements();
    keys.extend(typical.iter().map(|implement| kebab("implement", implement.word.word())));
    let sizes = catalogue::pouch_sizes();
    keys.extend(sizes.iter().map(|size| kebab("pouch-word", size.word.word())));
    keys.extend(chores::words().iter().map(|word| kebab("chore-word", word)));
    keys.extend(chores::STOCK.iter().map(|word| kebab("stock-word", word)));
    keys.extend(["letter", "a4", "roll"].map(|stock| format!("labels-{stock}")));
    keys
}

#[test]
fn every_file_of_lines_can_be_read() {
    for language in Language::ALL {
        if let Err((_, errors)) = FluentResource::try_new(language.lines().to_owned()) {
            panic!("{}: {errors:?}", language.code());
        }
    }
}

#[test]
fn every_key_that_is_used_has_a_line() {
    let sources = all_sources();
    let english = lines(Language::En);
    let mut missing = Vec::new();
    for source in &sources {
        for call in ["say(", "tell(", "rule(", "rule_with("] {
            for after in source.split(call).skip(1) {
                let key =
                    after.trim_start().strip_prefix('"').and_then(|rest| rest.split('"').next());
                if let Some(key) = key.filter(|key| is_key(key) && !english.contains_key(*key)) {
                    missing.push(key.to_owned());
                }
            }
        }
    }
    missing.extend(put_together().into_iter().filter(|key| !english.contains_key(key)));
    let refusals = quoted(&sources).into_iter().filter(|key| key.starts_with("refused-"));
    missing.extend(refusals.filter(|key| !english.contains_key(*key)).map(str::to_owned));
    assert_eq!(missing, [""; 0]);
}

#[test]
fn no_line_is_left_that_nothing_uses() {
    let sources = all_sources();
    let (used, families) = (quoted(&sources), put_together());
    let idle: Vec<_> = lines(Language::En)
        .into_keys()
        .filter(|key| !key.contains('.') && !used.contains(key.as_str()) && !families.contains(key))
        .collect();
    assert_eq!(idle, [""; 0]);
}

#[test]
fn every_language_has_every_line_with_the_same_values() {
    let english = lines(Language::En);
    for language in [Language::Vi, Language::Es] {
        let own = lines(language);
        assert_eq!(own.keys().collect::<Vec<_>>(), english.keys().collect::<Vec<_>>());
        for (key, text) in &own {
            // A language without plural forms needs no count to choose by, but it shows it.
            let (own, asked) = (values(text), values(&english[key]));
            assert_eq!(own, asked, "{} {key}", language.code());
        }
    }
}

#[test]
fn a_language_that_is_begun_has_known_lines_with_the_same_values_all_of_them_drafts() {
    let english = lines(Language::En);
    for language in Language::ALL.into_iter().filter(|language| !language.is_whole()) {
        let own = lines(language);
        assert!(own.len() > 40 && own.len() < english.len());
        for (key, text) in &own {
            let line = english.get(key).unwrap_or_else(|| panic!("{} {key}", language.code()));
            assert_eq!(values(text), values(line), "{} {key}", language.code());
        }
        let (drafts, lines) = language.drafts();
        assert_eq!(drafts, lines, "{}", language.code());
        // A line that it has, and one that it has not.
        let words = Words::of(language);
        assert_ne!(words.say("do-not-use"), "DO NOT USE");
        assert_eq!(words.say("recall-how"), Words::of(Language::En).say("recall-how"));
    }
}

#[test]
fn every_translated_line_says_whether_it_was_checked() {
    for language in [Language::Vi, Language::Es] {
        let text: Vec<&str> = language.lines().lines().collect();
        for pair in
            text.windows(2).filter(|pair| pair[1].starts_with(|c: char| c.is_ascii_lowercase()))
        {
            assert!(matches!(pair[0], "# draft" | "# checked"), "{}: {}", language.code(), pair[1]);
        }
        let (drafts, lines) = language.drafts();
        assert!(drafts <= lines && lines > 300, "{drafts} of {lines}");
    }
    assert_eq!(Language::En.drafts().0, 0);
}

#[test]
fn no_line_claims_what_nobody_measured() {
    for language in Language::ALL {
        for (key, text) in lines(language) {
            let text = text.to_lowercase();
            assert!(CLAIMS.iter().all(|claim| !text.contains(claim)), "{key}: {text}");
        }
    }
}

#[test]
fn one_pouch_and_two_pouches() {
    let say =
        |language, count: u32| Words::of(language).tell("pouch-count", &[("count", count.into())]);
    assert_eq!([say(Language::En, 1), say(Language::En, 2)], ["1 pouch", "2 pouches"]);
    assert_eq!([say(Language::Es, 1), say(Language::Es, 2)], ["1 bolsa", "2 bolsas"]);
    assert_eq!([say(Language::Vi, 1), say(Language::Vi, 2)], ["1 túi", "2 túi"]);
}

#[test]
fn what_a_language_lacks_is_said_in_english() {
    let mut poor = Words::load(Language::Es);
    poor.bundle = FluentBundle::new_concurrent(vec![Language::Es.identifier()]);
    assert_eq!(poor.say("place-now"), "NOW");
    assert_eq!(poor.say("no-such-line"), "no-such-line");
}

#[test]
fn a_line_has_parts() {
    let words = Words::of(Language::En);
    assert_eq!(words.say("refused-no-sign.do"), "Go back and tap your own sign.");
    assert!(!words.has("refused-no-sign.safe"));
}

#[test]
fn a_language_is_found_by_its_code() {
    for language in Language::ALL {
        assert_eq!(Language::from_code(language.code()), Some(language));
    }
    assert_eq!(Language::from_code("xx"), None);
}
