//! How a screen is let in: the six symbols that the box shows. Nothing of the salon stands here:
//! whoever is on the network can read it.

use super::{frame, shapes};
use crate::acts;
use crate::door::{No, Reach};
use crate::words::{Language, Words};
use load::ShelfCode;
use maud::{DOCTYPE, Markup, html};

/// What was asked for.
#[derive(Debug, Clone, Copy)]
pub struct Asked<'a> {
    /// A code that came with the address.
    pub code: &'a str,
    /// Why the code that was typed let nobody in.
    pub no: Option<No>,
    /// How the box is reached.
    pub reach: &'a Reach,
    /// This page came over the secure address.
    pub secure: bool,
}

/// What a screen can be, with its word in the form.
pub const KINDS: [(&str, &str); 4] = [
    ("phone", "screen-phone"),
    ("tablet", "screen-tablet"),
    ("wall", "screen-wall"),
    ("desk", "screen-desk"),
];

/// The page.
pub fn page(language: Language, asked: Asked<'_>) -> Markup {
    let words = Words::of(language);
    let safe = asked.reach.for_others().into_iter().find(|at| at.starts_with("https"));
    alone(
        language,
        &words.say("pair-title"),
        "/pair",
        &html! {
            @match safe.filter(|_| !asked.secure) {
                Some(safe) => {
                    p class="fact" { (words.say("pair-go-safe")) }
                    p { a class="key" href="/trust" { (words.say("trust-title")) } }
                    p { a class="key main-key" href=(format!("{safe}/pair")) { (safe) } }
                }
                None => {
                    p { (words.say("pair-how")) }
                    (form(words, asked))
                    @if !asked.secure { p { (words.say("pair-plain")) } }
                }
            }
        },
    )
}

fn form(words: &Words, asked: Asked<'_>) -> Markup {
    // What somebody put into an address is shown only if it can be a code.
    let fits = |symbol: char| ShelfCode::symbols().any(|s| s == symbol.to_ascii_uppercase());
    let code = Some(asked.code).filter(|code| code.len() == 6 && code.chars().all(fits));
    html! {
        @if let Some(no) = asked.no {
            div role="alert" class="card turn" {
                p class="fact" { (words.say(match no {
                    No::Wrong => "pair-wrong",
                    No::Void => "pair-void",
                    No::Shut => "pair-shut",
                })) }
            }
        }
        form method="post" action="/pair" {
            p class="field" {
                label for="pair-code" { (words.say("pair-code")) }
                input id="pair-code" name="code" class="code" value=[code] maxlength="12" required
                    autocomplete="off" autocapitalize="characters" spellcheck="false"
                    autofocus[code.is_none()];
            }
            fieldset class="choices" {
                legend { (words.say("pair-what")) }
                @for (word, key) in KINDS {
                    label {
                        input type="radio" name="what" value=(word) required;
                        span { (words.say(key)) }
                    }
                }
            }
            p class="field" {
                label for="pair-name" { (words.say("pair-name")) }
                input id="pair-name" name="name" maxlength=(acts::LONGEST_NAME) autocomplete="off";
            }
            p { button class="key main-key" { (words.say("pair-go")) } }
        }
    }
}

/// A page without the salon's frame, for screens that were not let in.
pub fn alone(language: Language, title: &str, here: &str, inside: &Markup) -> Markup {
    let words = Words::of(language);
    html! {
        (DOCTYPE)
        html lang=(language.code()) {
            (frame::head_of(words, false, title))
            body class="sink alone" {
                (shapes::sheet())
                header class="top" {
                    form class="languages" method="post" action="/language" aria-label=(words.say("language")) {
                        input type="hidden" name="back" value=(here);
                        @for known in Language::ALL.into_iter().filter(|it| it.is_whole() || *it == language) {
                            button name="language" value=(known.code()) lang=(known.code())
                                aria-pressed=(if known == language { "true" } else { "false" }) {
                                (known.name())
                            }
                        }
                    }
                }
                main id="work" {
                    h1 { (title) }
                    (inside)
                }
            }
        }
    }
}
