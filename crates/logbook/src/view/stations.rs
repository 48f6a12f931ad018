//! Screens that were let in, and what people are and read.

use super::View;
use super::events::counter;
use crate::error::BookError;
use crate::fact::{Counter, DrawerRef, StationKind, Units};
use crate::fold::events::topic;
use measure::{Instant, PersonId, StationId};

/// A screen that was let in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Station {
    /// The screen.
    pub station: StationId,
    /// What it is.
    pub what: StationKind,
    /// SHA-256 of the key that it was given.
    pub key_hash: [u8; 32],
    /// What the salon calls it.
    pub name: Option<DrawerRef>,
    /// When it was let in.
    pub paired: Instant,
    /// When it was let go; `None`: it is let in.
    pub parted: Option<Instant>,
}

/// What a person is here. Nobody said so: none of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Roles {
    /// Learns: another one looks as well.
    pub learns: bool,
    /// May lift a stop made by mistake and see to the machines.
    pub in_charge: bool,
    /// Teaches: may open the practice book.
    pub teaches: bool,
}

impl View<'_> {
    /// Every screen that was ever let in, in the order of the first time.
    pub fn stations(&self) -> Result<Vec<Station>, BookError> {
        let mut stations = Vec::new();
        for last in self.newest_of_each(topic::STATION)? {
            let (station, parted) = match counter(&last) {
                Some(Counter::StationPaired { station, .. }) => (*station, None),
                Some(Counter::StationParted { station }) => (*station, Some(last.stamp.happened)),
                _ => continue,
            };
            for fact in self.events(topic::STATION, &station.to_string())?.iter().rev() {
                if let Some(Counter::StationPaired { what, key_hash, name, .. }) = counter(fact) {
                    stations.push(Station {
                        station,
                        what: *what,
                        key_hash: *key_hash,
                        name: *name,
                        paired: fact.stamp.happened,
                        parted,
                    });
                    break;
                }
            }
        }
        Ok(stations)
    }

    /// The language in which a person reads, as its code, where somebody said so.
    pub fn speaks(&self, person: PersonId) -> Result<Option<String>, BookError> {
        let said = self.newest(topic::SPEAKS, &person.to_string())?;
        Ok(said.and_then(|fact| match counter(&fact) {
            Some(Counter::PersonSpeaks { language, .. }) => Some(language.clone()),
            _ => None,
        }))
    }

    /// What a person is here.
    pub fn roles(&self, person: PersonId) -> Result<Roles, BookError> {
        let said = self.newest(topic::PERSON_IS, &person.to_string())?;
        Ok(said
            .and_then(|fact| match counter(&fact) {
                Some(Counter::PersonIs { learns, in_charge, teaches, .. }) => {
                    Some(Roles { learns: *learns, in_charge: *in_charge, teaches: *teaches })
                }
                _ => None,
            })
            .unwrap_or_default())
    }

    /// The language and the units in which the record is written, where somebody said so.
    pub fn record_shows(&self) -> Result<Option<(String, Units)>, BookError> {
        let said = self.newest(topic::RECORD_SHOWS, "")?;
        Ok(said.and_then(|fact| match counter(&fact) {
            Some(Counter::RecordShows { language, units }) => Some((language.clone(), *units)),
            _ => None,
        }))
    }
}
