//! Facts about spore tests and services of machines, in plain words, for the log.

use super::Names;
use crate::pages::when;
use crate::web::Ctx;
use logbook::fact::{Serviced, Upkeep};

/// One such fact as one line; `None`: it is about something else.
pub(super) fn line(ctx: &Ctx, names: &Names, upkeep: &Upkeep) -> Option<String> {
    let words = ctx.words();
    Some(match upkeep {
        Upkeep::SporePlaced { machine, run, control, .. } => {
            let place = match run {
                Some(run) => names.run(ctx, *run),
                None => names.machine(ctx, *machine),
            };
            let key = if *control { "line-spore-placed" } else { "line-spore-placed-alone" };
            words.tell(key, &[("what", place.into())])
        }
        Upkeep::SporePosted { answer_by, .. } => {
            words.tell("line-spore-posted", &[("day", when::day_of(ctx, *answer_by).into())])
        }
        Upkeep::SporeRead { grew: true, .. } => words.say("line-spore-grew"),
        Upkeep::SporeRead { control_grew, .. } => words.say(match control_grew {
            Some(true) => "line-spore-good",
            Some(false) => "line-spore-control",
            None => "line-spore-alone",
        }),
        Upkeep::SporeLost { .. } => words.say("line-spore-lost"),
        Upkeep::Unfrozen { pouches, .. } => {
            words.tell("line-unfrozen", &[("what", names.pouches(ctx, pouches).into())])
        }
        Upkeep::MachineServiced { machine, what, .. } => {
            let key = match what {
                Serviced::Service => "line-serviced",
                Serviced::Repair => "line-repaired",
                Serviced::Validation => "line-validated",
                Serviced::Moved => "line-moved",
            };
            words.tell(key, &[("machine", names.machine(ctx, *machine).into())])
        }
        _ => return None,
    })
}
