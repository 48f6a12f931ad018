//! What is printed nowhere, and what is left behind nowhere.
//!
//! The words are put together from pieces here, so that this file does not hold what it looks for.

use super::{files, none, one, text};

/// Claims that nobody has measured, in the three languages of the pages.
const CLAIMS: &[&str] = &[
    concat!("ster", "ile"),
    concat!("est", "éril"),
    concat!("est", "ériles"),
    concat!("vô ", "trùng"),
];

/// What is left behind in a hurry, and what to do instead.
const LEFTOVERS: &[(&str, &str)] = &[
    (concat!("TO", "DO"), "write an issue"),
    (concat!("FIX", "ME"), "write an issue"),
    (concat!("/wo", "rk/"), "a path of one machine"),
];

/// The lines in which `word` stands as a word of its own, in any case.
fn lines_with(text: &str, word: &str) -> Vec<usize> {
    let word = word.to_lowercase();
    let is_edge = |c: Option<char>| c.is_none_or(|c| !c.is_alphanumeric());
    let has = |line: &str| {
        let line = line.to_lowercase();
        line.match_indices(&word).any(|(at, found)| {
            is_edge(line[..at].chars().next_back())
                && is_edge(line[at + found.len()..].chars().next())
        })
    };
    let numbered = text.lines().enumerate();
    numbered.filter(|(_, line)| has(line)).map(|(n, _)| n + 1).collect()
}

/// The text without the lines that only the reader of the source sees.
fn printed(path: &str, text: &str) -> String {
    let comment = if path.ends_with(".rs") { "//" } else { "#" };
    let shown = |line: &str| !line.trim_start().starts_with(comment);
    text.lines().map(|line| if shown(line) { line } else { "" }).collect::<Vec<_>>().join("\n")
}

fn claims(path: &str, text: &str) -> Vec<String> {
    let printed = printed(path, text);
    let found = |word: &&str| lines_with(&printed, word);
    CLAIMS
        .iter()
        .flat_map(|word| found(word).into_iter().map(move |line| format!("{path}:{line}: {word}")))
        .collect()
}

fn leftovers(path: &str, text: &str) -> Vec<String> {
    let find = |(left, instead): &(&str, &str)| {
        let line = text.lines().position(|line| line.contains(left))?;
        Some(format!("{path}:{}: {left}: {instead}", line + 1))
    };
    LEFTOVERS.iter().filter_map(find).collect()
}

#[test]
fn nothing_printed_claims_what_nobody_measured() {
    let shown = ["rs", "ftl", "svg", "html", "css", "js", "txt", "webmanifest"];
    let sources = files("crates", &shown);
    let printed = sources.iter().filter(|path| !path.contains("/tests/"));
    none(printed.flat_map(|path| claims(path, &text(path))).collect());
}

#[test]
fn nothing_is_left_behind() {
    // Not the words for people: in Spanish one of these means "all".
    let sources = files("crates", &["rs", "toml", "sql", "css", "js", "svg"]);
    let docs = files("docs", &["md", "txt"]);
    let all = sources.iter().chain(&docs);
    none(all.flat_map(|path| leftovers(path, &text(path))).collect());
}

#[test]
fn a_claim_is_found_in_any_case_but_not_in_a_comment() {
    for word in CLAIMS {
        one(claims("a.ftl", &format!("ok = fine\nbad = {}!", word.to_uppercase())), "a.ftl:2");
        one(claims("a.rs", &format!("let a = \"({word})\";")), "a.rs:1");
        none(claims("a.rs", &format!("    // never {word}")));
        none(claims("a.ftl", &format!("# never {word}")));
    }
    none(claims("a.ftl", "machine = sterilizer, esterilizador, sterilise"));
}

#[test]
fn a_leftover_is_found() {
    for (left, instead) in LEFTOVERS {
        one(leftovers("a.rs", &format!("fn a() {{}}\n// {left}x")), instead);
    }
    none(leftovers("a.rs", "fn a() {} // done"));
}
