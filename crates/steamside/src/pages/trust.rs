//! How a screen is made to trust the box. Telephones are told apart by how they do it, not by who
//! makes them.

use super::pair::alone;
use super::parts::{self, Ground};
use super::shapes::Shape;
use crate::door::Reach;
use crate::words::{Language, Words};
use maud::{Markup, html};

/// Where the certificate lies.
pub const CERTIFICATE: &str = "/trust/authority.crt";

/// The page.
pub fn page(language: Language, reach: &Reach, here: &str) -> Markup {
    let words = Words::of(language);
    let inside = match &reach.secure {
        None => html! { p class="fact" { (words.say("trust-none")) } },
        Some((_, public)) => html! {
            p { (words.say("trust-why")) }
            (parts::card(Ground::Turn, Shape::Palm, &words.say("trust-match-title"), &html! {
                p { (words.say("trust-match")) }
                (fingerprint(words, &public.fingerprint))
                p { (words.say("trust-vouches")) }
            }))
            p { a class="key main-key" href=(CERTIFICATE) download="salon-box.crt" { (words.say("trust-take")) } }
            @for (title, steps) in [("trust-profile", PROFILE), ("trust-storage", STORAGE), ("trust-computer", COMPUTER)] {
                section class="card fine" {
                    h2 { span { (words.say(title)) } }
                    ol { @for step in steps { li { (words.say(step)) } } }
                }
            }
            @for address in reach.for_others() {
                p { (words.say("trust-then")) " " a class="key" href=(address) { (address) } }
            }
            p { (words.say("trust-back")) }
        },
    };
    alone(language, &words.say("trust-title"), here, &inside)
}

const PROFILE: &[&str] = &["trust-profile-1", "trust-profile-2", "trust-profile-3"];
const STORAGE: &[&str] = &["trust-storage-1", "trust-storage-2", "trust-storage-3"];
const COMPUTER: &[&str] = &["trust-computer-1", "trust-computer-2"];

/// The fingerprint in lines that can be compared by eye.
pub fn fingerprint(words: &Words, fingerprint: &str) -> Markup {
    let pairs: Vec<&str> = fingerprint.split(':').collect();
    html! {
        p { (words.say("trust-fingerprint")) }
        p class="fingerprint" {
            @for line in pairs.chunks(8) { code { (line.join(" ")) } " " }
        }
    }
}
