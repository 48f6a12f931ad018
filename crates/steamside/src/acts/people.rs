//! People: a sign each, no account. The sign lies in the drawer; the facts know only an id.

use super::Refusal;
use crate::chance;
use crate::words::Language;
use logbook::book::{Draft, DrawerKind};
use logbook::fact::{Body, Counter, Units};
use logbook::view::{Roles, View};
use measure::PersonId;

/// Most characters of a sign: initials and a picture, not a name.
const LONGEST: usize = 12;

/// A person joins with a sign of their own choice.
pub fn join(view: &View<'_>, draft: &mut Draft, sign: &str) -> Result<(), Refusal> {
    let sign = fitting(sign)?;
    if view.people()?.iter().any(|person| person.sign.as_deref() == Some(sign)) {
        return Err(Refusal::rule_with("refused-sign-taken", "sign", sign));
    }
    let sign = draft.put(DrawerKind::Sign, sign.as_bytes())?;
    draft.fact(Body::PersonJoined { person: chance::id()?, sign });
    Ok(())
}

/// A sign that is neither empty nor long, and holds nothing that nobody sees.
pub(super) fn fitting(sign: &str) -> Result<&str, Refusal> {
    let sign = sign.trim();
    if sign.is_empty() || sign.chars().count() > LONGEST || sign.chars().any(unseen) {
        return Err(Refusal::rule_with("refused-sign-length", "most", LONGEST));
    }
    Ok(sign)
}

/// Characters that nobody sees but that turn or hide what others see.
fn unseen(symbol: char) -> bool {
    symbol.is_control()
        || matches!(symbol, '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{2069}' | '\u{feff}')
}

/// A person no longer works here. What they signed stays.
pub fn leave(view: &View<'_>, draft: &mut Draft, person: PersonId) -> Result<(), Refusal> {
    if view.people()?.iter().all(|known| known.person != person) {
        return Err(Refusal::rule("refused-no-such-person"));
    }
    draft.fact(Body::PersonLeft { person });
    Ok(())
}

/// What a person is here and in which language they read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PersonIs {
    /// The person.
    pub person: PersonId,
    /// The language, where it was said.
    pub language: Option<Language>,
    /// What they are.
    pub roles: Roles,
}

/// Writes what changed of it.
pub fn person_is(view: &View<'_>, draft: &mut Draft, said: PersonIs) -> Result<(), Refusal> {
    let PersonIs { person, language, roles } = said;
    if view.people()?.iter().all(|known| known.person != person) {
        return Err(Refusal::rule("refused-no-such-person"));
    }
    let before = view.speaks(person)?;
    let language = language.map(Language::code).filter(|code| before.as_deref() != Some(code));
    let is = (view.roles(person)? != roles).then_some(roles);
    if language.is_none() && is.is_none() {
        return Err(Refusal::rule("refused-said-already"));
    }
    if let Some(code) = language {
        let speaks = Counter::PersonSpeaks { person, language: code.to_owned() };
        draft.fact(Body::Counter(Box::new(speaks)));
    }
    if let Some(Roles { learns, in_charge, teaches }) = is {
        let is = Counter::PersonIs { person, learns, in_charge, teaches };
        draft.fact(Body::Counter(Box::new(is)));
    }
    Ok(())
}

/// How the record is written, whatever each screen shows.
pub fn record_shows(
    view: &View<'_>,
    draft: &mut Draft,
    language: Language,
    units: Units,
) -> Result<(), Refusal> {
    let said = (language.code().to_owned(), units);
    if view.record_shows()?.as_ref() == Some(&said) {
        return Err(Refusal::rule("refused-said-already"));
    }
    let (language, units) = said;
    draft.fact(Body::Counter(Box::new(Counter::RecordShows { language, units })));
    Ok(())
}
