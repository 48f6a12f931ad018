//! Posted forms of what was kept on paper: the same acts, with the time at which they happened, and
//! marked as from paper. What took two times, as a run that began and ended, is two acts.

use super::look_posts::{look, read_off};
use super::{Fields, posts, upkeep_posts};
use crate::acts::{self, Refusal};
use crate::app::{App, Who};
use crate::clock;
use crate::intake::take::salon_zone;
use jiff::civil::{Date, Time};
use jiff::tz::TimeZone;
use logbook::book::Draft;
use logbook::fact::{Body, Found, Known};
use logbook::view::View;
use measure::{ActId, Instant, MachineId, PersonId, PouchId, Span, StationId};
use sha2::{Digest, Sha256};

/// The name of an act that was kept on paper, without what marks it.
pub fn from_paper(name: &str) -> Option<&str> {
    name.strip_prefix("later-")
}

/// Who copies it in, where, and when it happened.
struct Copied<'a> {
    app: &'a App,
    fields: &'a Fields,
    act: ActId,
    station: StationId,
    sign: PersonId,
    at: Instant,
}

/// Does an act of the page of what was kept on paper.
pub fn act(
    app: &App,
    name: &str,
    station: StationId,
    fields: &Fields,
) -> Result<(ActId, PersonId), Refusal> {
    let sign: PersonId = fields.maybe("sign")?.ok_or_else(|| Refusal::rule("refused-no-sign"))?;
    let (zone, people) =
        app.book.read(|view| Ok::<_, Refusal>((salon_zone(view)?, view.people()?)))?;
    if people.iter().all(|person| person.person != sign) {
        return Err(Refusal::rule("refused-no-such-person"));
    }
    let act: ActId = fields.need("act")?;
    let at = match name {
        "closed" => day_of(fields, "on", &zone)?.0,
        _ => moment(fields, ("on", "at"), &zone)?,
    };
    let copied = Copied { app, fields, act, station, sign, at };
    match name {
        "wash" => copied.one(|view, draft| acts::wash(view, draft, fields.counted("count.")?)),
        "run" => copied.run(&zone),
        "look" => copied.look(),
        "open" => copied.one(|view, draft| {
            let mut open = posts::open(view, fields)?;
            open.opened = Some(at);
            acts::open(view, draft, open)
        }),
        "chore" => copied.one(|view, draft| chore(view, draft, fields, at)),
        "closed" => {
            let day = day_of(fields, "on", &zone)?;
            copied.one(|view, draft| acts::closed(view, draft, day, true))
        }
        _ => Err(Refusal::rule("refused-no-such-act")),
    }?;
    Ok((act, sign))
}

impl Copied<'_> {
    fn one(
        &self,
        decide: impl FnOnce(&View<'_>, &mut Draft) -> Result<(), Refusal>,
    ) -> Result<(), Refusal> {
        self.step((self.act, self.at), decide)
    }

    fn step(
        &self,
        (act, at): (ActId, Instant),
        decide: impl FnOnce(&View<'_>, &mut Draft) -> Result<(), Refusal>,
    ) -> Result<(), Refusal> {
        let who = Who {
            act,
            station: self.station,
            sign: Some(self.sign),
            happened: Some(at),
            known: Known::FromPaper,
        };
        self.app.act(who, decide).map(drop)
    }

    /// A run that began and ended on paper. The same form sent twice is written once; where it
    /// stopped half way, sending it again goes on.
    fn run(&self, zone: &TimeZone) -> Result<(), Refusal> {
        let fields = self.fields;
        let machine: MachineId = fields.need("machine")?;
        let end = match fields.one("end-on") {
            Some(_) => moment(fields, ("end-on", "end-at"), zone)?,
            None => moment(fields, ("on", "end-at"), zone)?,
        };
        if end <= self.at {
            return Err(Refusal::rule("refused-end-before-start"));
        }
        if end > self.app.now() {
            return Err(Refusal::rule("refused-future"));
        }
        let begun = self.app.read(|view| view.facts_of_act(self.act))?;
        if begun.is_empty() {
            self.app.book.read(|view| may_start(view, machine, (self.at, end)))?;
        }
        let packed = nth(self.act, 1);
        let count: u32 = fields.maybe("count")?.unwrap_or(0);
        if count > 0 && begun.is_empty() {
            self.step((packed, self.at), |view, draft| {
                let pack = acts::Pack {
                    kind: fields.need("kind")?,
                    count,
                    pouched: fields.one("wrap") != Some("open"),
                    hollow: fields.yes("hollow"),
                };
                acts::pack(view, draft, pack)
            })?;
        }
        self.step((self.act, self.at), |view, draft| {
            let mut pouches: Vec<PouchId> = fields.many("pouch")?;
            for fact in view.facts_of_act(packed)? {
                if let Body::Packed { pouches: made } = fact.body {
                    pouches.extend(made.iter().map(|made| made.pouch));
                }
            }
            let start = acts::Start {
                machine,
                programme: fields
                    .maybe::<load::Programme>("programme")?
                    .map(|p| p.word().to_owned()),
                pouches,
                // It has run already: nothing is advised against any more.
                over: true,
                day: clock::day(self.at, zone),
                at: self.at,
                copied: true,
            };
            acts::start(view, draft, start)
        })?;
        let started = self.app.read(|view| view.facts_of_act(self.act))?;
        let run = started.iter().find_map(|fact| match fact.body {
            Body::RunStarted { run, .. } => Some(run),
            _ => None,
        });
        let run = run.ok_or_else(|| Refusal::rule("refused-no-such-run"))?;
        self.step((nth(self.act, 2), end), |view, draft| acts::unload(view, draft, run))
    }

    /// Numbers read off the display, and the looks, as the paper has them. The rules are those of
    /// any look: nothing is talked back.
    fn look(&self) -> Result<(), Refusal> {
        let fields = self.fields;
        let mut look = self.app.book.read(|view| look(view, fields))?;
        look.now = self.at;
        let unloaded = self.app.read(|view| view.run(look.run))?.and_then(|run| run.unloaded);
        if unloaded.is_some_and(|out| self.at < out) {
            return Err(Refusal::rule("refused-look-before-out"));
        }
        if fields.one("lowest").is_some() {
            self.step((nth(self.act, 1), self.at), |view, draft| {
                acts::read_off(view, draft, read_off(view, fields)?)
            })?;
        }
        self.one(|view, draft| acts::look(view, draft, look))
    }
}

/// A machine that has a run in it, or is out of use, takes no run from paper either.
fn may_start(
    view: &View<'_>,
    machine: MachineId,
    (from, to): (Instant, Instant),
) -> Result<(), Refusal> {
    let row = view.machine(machine)?.ok_or_else(|| Refusal::rule("refused-no-such-machine"))?;
    if row.running.is_some() {
        return Err(Refusal::rule_with("refused-later-machine-full", "machine", row.number));
    }
    let day = Span::from_minutes(24 * 60);
    let others = view.recall_input(machine, from - day, to)?;
    if others.iter().any(|other| other.run.unloaded.is_none_or(|out| out > from)) {
        return Err(Refusal::rule_with("refused-later-overlaps", "machine", row.number));
    }
    Ok(())
}

/// A chore that was signed on paper: what it is about, and its word.
fn chore(view: &View<'_>, draft: &mut Draft, fields: &Fields, at: Instant) -> Result<(), Refusal> {
    let misread = || Refusal::rule_with("refused-field-misread", "field", "which");
    let which: String = fields.need("which")?;
    let (about, chore) = which.split_once(' ').ok_or_else(misread)?;
    let about = upkeep_posts::about_of(about).ok_or_else(misread)?;
    let chore = chore.parse().map_err(|_| misread())?;
    let found = match fields.one("found") {
        Some("fine") => Found::Fine,
        Some("not-fine") => Found::NotFine,
        // What was found is evidence: nobody having said so is not "fine".
        _ => return Err(Refusal::rule_with("refused-field-missing", "field", "found")),
    };
    acts::do_chore(view, draft, (chore, about), (found, fields.one("note"), at))
}

/// A further act of one form, always the same one.
fn nth(act: ActId, number: u8) -> ActId {
    let mut digest = Sha256::new();
    digest.update(act.bytes());
    digest.update([number]);
    let mut id = [0; 16];
    id.copy_from_slice(&digest.finalize()[..16]);
    ActId::from_bytes(id)
}

/// A day and a time as they stand on the paper. In the hour that autumn repeats, the first one is
/// meant.
fn moment(
    fields: &Fields,
    (day, time): (&'static str, &'static str),
    zone: &TimeZone,
) -> Result<Instant, Refusal> {
    let at: Time = fields.need(time)?;
    let day: Date = fields.need(day)?;
    let found = clock::moments_of(day.to_datetime(at), zone).first().copied();
    found.ok_or_else(|| Refusal::rule_with("refused-field-misread", "field", time))
}

/// The first moment of a day, and of the next one.
fn day_of(
    fields: &Fields,
    name: &'static str,
    zone: &TimeZone,
) -> Result<(Instant, Instant), Refusal> {
    let day: Date = fields.need(name)?;
    let noon = clock::moments_of(day.at(12, 0, 0, 0), zone).first().copied();
    let noon = noon.ok_or_else(|| Refusal::rule_with("refused-field-misread", "field", name))?;
    Ok(clock::day(noon, zone))
}
