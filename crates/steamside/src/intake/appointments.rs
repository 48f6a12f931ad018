//! Appointments from outside: calendars and tables become visits. Who comes stays outside: a visit
//! has an id of its own, and titles are looked at here and then let go.

mod bring;
mod table;
mod titles;

pub use bring::{Arrived, Brought, Question, bring, bring_file};
pub use titles::{normal, phrase_digest};

use super::calendar;

/// Largest file of appointments that is read.
pub const LARGEST: usize = calendar::LARGEST;

/// Is this a calendar or a table of appointments, rather than a cycle record?
pub fn is_appointments(bytes: &[u8]) -> bool {
    calendar::is_calendar(bytes) || table::is_table(bytes)
}

#[cfg(test)]
mod tests;
