//! Which service a title means. A title may hold a client's name; what the book learns is only a
//! digest of the phrase that a person confirmed.
//!
//! A phrase is looked for in a title word by word, the longest first, so that a name beside it
//! does not matter, and `gel manicure` wins over `manicure`.

use logbook::book::BookKey;
use logbook::fact::Keyed;
use measure::ServiceId;
use std::collections::{BTreeMap, BTreeSet};

/// Most words of a phrase.
const LONGEST: usize = 6;
/// Most words of a title that are looked at.
const MOST_WORDS: usize = 40;
/// Most words of a phrase that is offered to be confirmed.
const OFFERED_WORDS: usize = 4;
/// Most phrases that are offered for one title.
const OFFERED: usize = 3;

/// The words of a text in the one form in which they are compared: small letters and digits.
pub fn normal(text: &str) -> Vec<String> {
    let lower = text.to_lowercase();
    let words = lower.split(|c: char| !c.is_alphanumeric() && !is_mark(c));
    words.filter(|word| !word.is_empty()).map(str::to_owned).take(MOST_WORDS).collect()
}

/// Accents that some programs write as signs of their own after the letter belong to the word.
fn is_mark(c: char) -> bool {
    ('\u{300}'..='\u{36f}').contains(&c)
}

/// What a title means.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Meaning {
    /// This service.
    Service(ServiceId),
    /// No visit.
    NoVisit,
    /// Nobody has said yet.
    Unknown,
}

/// The phrases that the salon has confirmed, and the key they are recognised by.
pub struct Learnt {
    key: BookKey,
    phrases: BTreeMap<Keyed, Option<ServiceId>>,
    seen: BTreeMap<String, Keyed>,
}

impl Learnt {
    /// From what the book has.
    pub fn new(key: BookKey, phrases: BTreeMap<Keyed, Option<ServiceId>>) -> Self {
        Self { key, phrases, seen: BTreeMap::new() }
    }

    /// The key.
    pub fn key(&self) -> &BookKey {
        &self.key
    }

    /// What a title means: the longest confirmed phrase in it, the first of those equally long.
    pub fn meaning(&mut self, title: &str) -> Meaning {
        if self.phrases.is_empty() {
            return Meaning::Unknown;
        }
        let words = normal(title);
        for length in (1..=LONGEST.min(words.len())).rev() {
            for phrase in words.windows(length) {
                if let Some(service) = self.known(&phrase.join(" ")) {
                    return service.map_or(Meaning::NoVisit, Meaning::Service);
                }
            }
        }
        Meaning::Unknown
    }

    fn known(&mut self, phrase: &str) -> Option<Option<ServiceId>> {
        let digest = match self.seen.get(phrase) {
            Some(digest) => *digest,
            None => {
                let digest = phrase_digest(&self.key, phrase);
                self.seen.insert(phrase.to_owned(), digest);
                digest
            }
        };
        self.phrases.get(&digest).copied()
    }
}

/// The digest of a phrase in its one form.
pub fn phrase_digest(key: &BookKey, phrase: &str) -> Keyed {
    key.digest("phrase", &[phrase])
}

/// Phrases that may mean a service, for titles that nobody has said anything about: those that
/// more than one title holds. Most titles first, then the longest.
pub fn offered<'a>(titles: impl Iterator<Item = &'a str>) -> BTreeMap<&'a str, Vec<String>> {
    let titles: BTreeSet<&str> = titles.collect();
    let mut holding: BTreeMap<String, BTreeSet<&str>> = BTreeMap::new();
    for title in &titles {
        for phrase in phrases_of(title) {
            holding.entry(phrase).or_default().insert(title);
        }
    }
    let rank = |phrase: &String| {
        let count = holding.get(phrase).map_or(0, BTreeSet::len);
        let words = phrase.split(' ').count();
        // Two words in five titles say more than one word in six.
        (count * words, words)
    };
    titles
        .into_iter()
        .map(|title| {
            let mut phrases = phrases_of(title);
            phrases.retain(|phrase| holding.get(phrase).is_some_and(|titles| titles.len() > 1));
            phrases.sort_by_key(|phrase| std::cmp::Reverse(rank(phrase)));
            phrases.dedup();
            phrases.truncate(OFFERED);
            (title, phrases)
        })
        .collect()
}

fn phrases_of(title: &str) -> Vec<String> {
    let words = normal(title);
    let mut phrases: Vec<String> = (1..=OFFERED_WORDS.min(words.len()))
        .flat_map(|length| words.windows(length).map(|phrase| phrase.join(" ")))
        // A number or a single letter names no service.
        .filter(|phrase| phrase.chars().filter(|c| c.is_alphabetic()).count() > 2)
        .collect();
    phrases.sort();
    phrases.dedup();
    phrases
}
