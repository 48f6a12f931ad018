//! How long functions and files may be.
//!
//! Counted on the tokens of the compiler's own lexer, so that braces in texts and comments do not
//! mislead. A function counts from its `fn` to its closing brace; of a file count the lines that
//! hold code, tests included, comments and empty lines not.

use super::{files, none, one, root, text};
use proc_macro2::{Delimiter, TokenStream, TokenTree};
use std::collections::BTreeSet;

/// Lines that a function may have. No exception.
const FUNCTION: usize = 70;
/// Lines of code above which a file needs a line in the list of exceptions.
const FILE: usize = 400;
/// Where the exceptions stand: path, ceiling, reason.
const EXCEPTIONS: &str = "docs/size-exceptions.txt";

fn tokens(source: &str) -> TokenStream {
    source.parse().expect("the compiler takes it, so does the lexer")
}

/// Every function with a body: its name, its first line and how many lines it has.
fn functions(source: &str) -> Vec<(String, usize, usize)> {
    let mut found = Vec::new();
    collect(tokens(source), &mut found);
    found
}

fn collect(stream: TokenStream, found: &mut Vec<(String, usize, usize)>) {
    let trees: Vec<TokenTree> = stream.into_iter().collect();
    for (at, tree) in trees.iter().enumerate() {
        if let TokenTree::Group(group) = tree {
            collect(group.stream(), found);
        }
        // A pointer type is `fn` with no name after it.
        let [TokenTree::Ident(word), TokenTree::Ident(name), rest @ ..] = &trees[at..] else {
            continue;
        };
        let body = rest.iter().find_map(|tree| match tree {
            TokenTree::Group(group) if group.delimiter() == Delimiter::Brace => Some(Some(group)),
            TokenTree::Punct(end) if end.as_char() == ';' => Some(None),
            _ => None,
        });
        if let (true, Some(Some(body))) = (word == "fn", body) {
            let first = word.span().start().line;
            let lines = body.span_close().end().line + 1 - first;
            found.push((name.to_string(), first, lines));
        }
    }
}

/// How many lines hold code.
fn code_lines(source: &str) -> usize {
    let mut lines = BTreeSet::new();
    mark(tokens(source), &mut lines);
    lines.len()
}

fn mark(stream: TokenStream, lines: &mut BTreeSet<usize>) {
    let mut trees = stream.into_iter().peekable();
    while let Some(tree) = trees.next() {
        match &tree {
            // A documentation comment reaches us as `#[doc = "..."]`, or `#![doc = "..."]`.
            TokenTree::Punct(hash) if hash.as_char() == '#' => {
                trees.next_if(
                    |next| matches!(next, TokenTree::Punct(bang) if bang.as_char() == '!'),
                );
                if trees.next_if(is_doc).is_none() {
                    lines.insert(hash.span().start().line);
                }
            }
            TokenTree::Group(group) => {
                lines.insert(group.span_open().start().line);
                mark(group.stream(), lines);
                lines.insert(group.span_close().end().line);
            }
            other => lines.extend(other.span().start().line..=other.span().end().line),
        }
    }
}

fn is_doc(tree: &TokenTree) -> bool {
    matches!(tree, TokenTree::Group(group) if group.delimiter() == Delimiter::Bracket
        && matches!(group.stream().into_iter().next(), Some(TokenTree::Ident(word)) if word == "doc"))
}

/// Faults of one file against the list of exceptions.
fn faults(path: &str, source: &str, exceptions: &str) -> Vec<String> {
    let mut faults: Vec<String> = functions(source)
        .into_iter()
        .filter(|(_, _, lines)| *lines > FUNCTION)
        .map(|(name, first, lines)| {
            format!("{path}:{first}: fn {name} has {lines} lines, at most {FUNCTION}")
        })
        .collect();
    let lines = code_lines(source);
    let ceiling = exceptions
        .lines()
        .filter_map(|line| line.strip_prefix(path)?.trim_start().split_once(' '))
        .find_map(|(ceiling, reason)| {
            (reason.trim().len() > 10).then(|| ceiling.parse::<usize>().ok())?
        });
    match ceiling {
        None if lines > FILE => faults.push(format!(
            "{path}: {lines} lines of code. Above {FILE} it needs a line in {EXCEPTIONS}: path, ceiling, reason"
        )),
        Some(ceiling) if lines > ceiling => {
            faults.push(format!("{path}: {lines} lines of code, its ceiling is {ceiling}"));
        }
        Some(_) if lines <= FILE => {
            faults.push(format!("{path}: {lines} lines of code need no exception any more"));
        }
        _ => (),
    }
    faults
}

#[test]
fn functions_and_files_are_short() {
    let exceptions = text(EXCEPTIONS);
    let mut all: Vec<String> = files("crates", &["rs"])
        .iter()
        .flat_map(|path| faults(path, &text(path), &exceptions))
        .collect();
    let gone = exceptions
        .lines()
        .filter(|line| !line.is_empty() && !line.starts_with('#'))
        .filter_map(|line| line.split(' ').next())
        .filter(|path| !root().join(path).exists());
    all.extend(gone.map(|path| format!("{EXCEPTIONS}: {path} is not there")));
    none(all);
}

#[test]
fn a_function_of_71_lines_is_found() {
    let of = |lines: usize| format!("fn long() {{\n{}}}\n", "    ();\n".repeat(lines - 2));
    none(faults("a.rs", &of(70), ""));
    one(faults("a.rs", &of(71), ""), "fn long has 71 lines");
    let inner = format!("impl A {{ mod b {{ {} }} }}", of(71));
    one(faults("a.rs", &inner, ""), "fn long");
    let quoted =
        "fn short() { let _ = \"}\"; // }\n let p: fn(usize) = f; }\ntrait T { fn none(); }";
    assert_eq!(functions(quoted), [("short".to_owned(), 1, 2)]);
}

#[test]
fn a_file_of_401_lines_is_found_unless_a_reason_stands() {
    let of = |lines: usize| {
        format!("//! About.\n\n{}", "/// A.\nconst A: u8 = 1; // b\n\n".repeat(lines))
    };
    assert_eq!(code_lines(&of(3)), 3);
    assert_eq!(code_lines("#[derive(Debug)]\nstruct A {\n\n    b: u8,\n}\n"), 4);
    none(faults("a.rs", &of(400), ""));
    one(faults("a.rs", &of(401), ""), "401 lines of code. Above");
    none(faults("a.rs", &of(401), "a.rs 450 one table that reads best in one piece"));
    one(faults("a.rs", &of(401), "a.rs 450 "), "Above");
    one(faults("a.rs", &of(451), "a.rs 450 one table that reads best in one piece"), "ceiling");
    one(faults("a.rs", &of(9), "a.rs 450 one table that reads best in one piece"), "any more");
}
