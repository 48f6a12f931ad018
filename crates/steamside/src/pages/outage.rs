//! The box was off while a run was in a machine: said on NOW and on the page of the run, until the run
//! is decided on.

use super::{stop, telling, when};
use crate::web::Ctx;
use load::SetState;
use logbook::book::BookError;
use logbook::fact::Body;
use logbook::view::View;
use maud::{Markup, html};
use measure::{Instant, RunId};

/// So many times are looked through.
const NEWEST: u32 = 5;

/// A run that was in its machine while the box was off.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Outage {
    /// The run.
    pub run: RunId,
    /// Number of its machine.
    pub machine: u32,
    /// Number of the run.
    pub number: u32,
    /// From and to.
    pub span: (Instant, Instant),
}

/// The outages that some run was in, the last one first. Told of a run as long as a pouch of
/// it is neither released nor taken apart.
pub fn outages(view: &View<'_>) -> Result<Vec<Outage>, BookError> {
    let mut outages = Vec::new();
    for off in view.box_off(NEWEST)? {
        for fact in view.facts_of_act(off.act)? {
            let Body::SetAside { run: Some(id), .. } = fact.body else { continue };
            let pouches = view.pouches_of_run(id)?;
            let waits = |state| {
                matches!(state, SetState::InMachine | SetState::SetAside | SetState::ToCheck)
            };
            if !pouches.iter().any(|pouch| waits(pouch.state)) {
                continue;
            }
            if let Some(run) = view.run(id)?.filter(|run| !run.undone) {
                let (machine, number) = (run.machine_number, run.number);
                outages.push(Outage { run: id, machine, number, span: off.span });
            }
        }
    }
    Ok(outages)
}

/// The card.
pub fn card(ctx: &Ctx, outage: &Outage) -> Markup {
    let words = ctx.words();
    let name = telling::run_name(ctx, outage.machine, outage.number);
    stop::card(
        ctx,
        &name,
        &html! {
            p class="fact" { (says(ctx, outage)) }
            p { (words.tell("outage-do", &[("machine", outage.machine.to_string().into())])) }
            p { a href=(format!("/run/{}", outage.run)) { (words.say("go-run")) } }
        },
    )
}

fn says(ctx: &Ctx, outage: &Outage) -> String {
    let (from, to) = outage.span;
    let span = [("from", when::moment(ctx, from).into()), ("to", when::moment(ctx, to).into())];
    ctx.words().tell("outage", &span)
}
