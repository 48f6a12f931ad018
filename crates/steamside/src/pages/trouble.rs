//! The program itself could not go on: said in words, with the way out. No book is at hand here,
//! so it is said in the reader's language and without the salon's frame.

use super::frame;
use crate::words::{Language, Words};
use maud::{DOCTYPE, Markup, html};

/// The page. `what` is the error's own sentence. A practice book says here too what it is.
pub fn page(language: Language, practice: bool, what: &str) -> Markup {
    let words = Words::of(language);
    html! {
        (DOCTYPE)
        html lang=(language.code()) class=[practice.then_some("practice")] {
            (frame::head_of(words, practice, &words.say("trouble-title")))
            body class="sink alone" {
                main id="work" {
                    @if practice { p class="book-kind" { (words.say("book-practice")) } }
                    div role="alert" {
                        h1 { (words.say("trouble-title")) }
                        p lang="en" { code { (what) } }
                        p { (words.say("trouble-safe")) }
                        p { (words.say("trouble-do")) }
                    }
                    p { a class="key main-key" href="/" { (words.say("place-now")) } }
                }
            }
        }
    }
}
