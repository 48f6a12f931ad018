//! The first minute: machines, a sign and a running clock in one act, in an empty book.

use super::Refusal;
use super::people::fitting;
use crate::chance;
use load::Contents;
use logbook::book::{Draft, DrawerKind};
use logbook::fact::{AirRemoval, Body};
use logbook::view::View;
use measure::PersonId;

/// Most machines that the first minute asks about.
const MOST: u32 = 3;

/// What was tapped.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct First {
    /// So many machines are here.
    pub machines: u32,
    /// The sign that was chosen.
    pub sign: String,
    /// The id that it was shown with.
    pub person: PersonId,
    /// The first machine runs already.
    pub running: bool,
}

/// Writes machines that nothing more is known of, the sign, and the run: what is in it nobody has
/// said, so nothing is released from it before somebody does.
pub fn first(view: &View<'_>, draft: &mut Draft, first: First) -> Result<(), Refusal> {
    if !view.machines()?.is_empty() || !view.people()?.is_empty() {
        return Err(Refusal::rule("refused-not-empty"));
    }
    if !(1..=MOST).contains(&first.machines) {
        return Err(Refusal::rule("refused-machine-number"));
    }
    let sign = draft.put(DrawerKind::Sign, fitting(&first.sign)?.as_bytes())?;
    let mut machines = Vec::new();
    for number in 1..=first.machines {
        let machine = chance::id()?;
        machines.push(machine);
        draft.fact(Body::MachineAdded {
            machine,
            number,
            air_removal: AirRemoval::NotKnown,
            writes_files: false,
            most_pouches: None,
        });
    }
    draft.fact(Body::PersonJoined { person: first.person, sign });
    if let Some(machine) = machines.first().copied().filter(|_| first.running) {
        draft.fact(Body::RunStarted {
            run: chance::id()?,
            machine,
            number: 1,
            programme: None,
            contents: Contents::Unknown,
            pouches: Vec::new(),
        });
    }
    Ok(())
}
