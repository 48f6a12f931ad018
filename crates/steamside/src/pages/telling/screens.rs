//! Screens that come and go, and entries that were seen, in plain words.

use crate::pages::stations::kind_key;
use crate::web::Ctx;
use logbook::fact::Counter;

/// The line; `None` where the fact is about something else.
pub fn line(ctx: &Ctx, said: &Counter) -> Option<String> {
    let words = ctx.words();
    Some(match said {
        Counter::StationPaired { what, .. } => {
            words.tell("line-station-in", &[("what", words.say(kind_key(*what)).into())])
        }
        Counter::StationParted { .. } => words.say("line-station-out"),
        Counter::Seen { seq } => words.tell("line-seen", &[("seq", seq.to_string().into())]),
        _ => return None,
    })
}
