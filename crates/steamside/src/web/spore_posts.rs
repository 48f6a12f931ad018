//! Posted forms about spore tests.

use super::Fields;
use crate::acts::{self, Refusal};
use crate::intake::take::salon_zone;
use crate::{clock, pace};
use load::Programme;
use logbook::book::Draft;
use logbook::view::View;
use measure::TestId;

/// The acts of this file.
const ACTS: [&str; 6] =
    ["spore-place", "spore-start", "spore-post", "spore-read", "spore-lost", "spore-back"];

/// Is it an act of this file?
pub fn knows(name: &str) -> bool {
    ACTS.contains(&name)
}

/// Going to the safer side asks for no sign: spores that grew, a test that was lost.
pub fn needs_sign(name: &str, fields: &Fields) -> bool {
    match name {
        "spore-lost" => false,
        "spore-read" => fields.one("grew") != Some("yes"),
        _ => true,
    }
}

/// Decides an act of this file.
pub fn decide(
    name: &str,
    view: &View<'_>,
    draft: &mut Draft,
    fields: &Fields,
) -> Result<(), Refusal> {
    let test = || fields.need::<TestId>("test");
    match name {
        "spore-place" => acts::place_test(
            view,
            draft,
            acts::PlaceTest {
                machine: fields.need("machine")?,
                run: fields.maybe("run")?,
                control: fields.yes("control"),
                lot: fields.one("lot").map(str::to_owned),
            },
        ),
        "spore-start" => {
            let programme: Option<Programme> = fields.maybe("programme")?;
            let zone = salon_zone(view)?;
            acts::start_test(
                view,
                draft,
                acts::StartTest {
                    failed: test()?,
                    programme: programme.map(|word| word.word().to_owned()),
                    control: fields.yes("control"),
                    day: clock::day(pace::now(view)?, &zone),
                },
            )
        }
        "spore-post" => {
            acts::post_test(view, draft, test()?, (fields.need("days")?, pace::now(view)?))
        }
        "spore-read" => acts::read_test(view, draft, read(view, fields)?),
        "spore-lost" => acts::lose_test(view, draft, test()?),
        "spore-back" => acts::end_freeze(view, draft, test()?),
        _ => Err(Refusal::rule("refused-no-such-page")),
    }
}

fn read(view: &View<'_>, fields: &Fields) -> Result<acts::ReadTest, Refusal> {
    let grew = match fields.one("grew") {
        Some("yes") => true,
        Some("no") => false,
        _ => return Err(Refusal::rule_with("refused-field-missing", "field", "grew")),
    };
    let control_grew = match fields.one("control-grew") {
        Some("yes") => Some(true),
        Some("no") => Some(false),
        Some("none") => None,
        // That spores grew is enough; that none grew says nothing without the control.
        _ if grew => None,
        _ => return Err(Refusal::rule("refused-which-control")),
    };
    Ok(acts::ReadTest { test: fields.need("test")?, grew, control_grew, now: pace::now(view)? })
}
