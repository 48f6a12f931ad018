//! Posted forms: each names an act, carries its id, and goes back to where it came from.

use super::head::{Head, lasting, own};
use super::show::{About, answer_refusal, trouble};
use super::{
    Fields, Served, chair_posts, counter_posts, day_posts, later_posts, loading_posts, look_posts,
    practice, spore_posts, stations, upkeep_posts,
};
use crate::acts::{self, Refusal};
use crate::app::{App, Who};
use crate::clock;
use crate::pages;
use crate::pages::{meanwhile, reads};
use crate::words::Language;
use crate::{chance, pace};
use axum::Form;
use axum::extract::{Path, State};
use axum::response::{IntoResponse, Redirect, Response};
use load::Programme;
use logbook::book::Draft;
use logbook::fact::{AirRemoval, Body, Known, LiftReason, Reads, StopReason};
use logbook::view::View;
use measure::{ActId, Instant, MachineId, PersonId};

/// Longest address of our own that a form goes back to.
const LONGEST_BACK: usize = 300;

/// An address of this program and of no other: our own pages need no other characters.
fn own_address(path: &str) -> bool {
    let plain = |symbol: u8| symbol.is_ascii_alphanumeric() || b"/?&=._-%:".contains(&symbol);
    path.starts_with('/')
        && !path.starts_with("//")
        && path.len() <= LONGEST_BACK
        && path.bytes().all(plain)
}

/// Goes back to a page of our own, with the act that was just done.
pub fn back(fields: &Fields, fallback: &str, did: Option<ActId>) -> Redirect {
    let path = fields.one("back").filter(|path| own_address(path)).unwrap_or(fallback);
    match did {
        Some(did) => {
            let joint = if path.contains('?') { '&' } else { '?' };
            Redirect::to(&format!("{path}{joint}did={did}"))
        }
        None => Redirect::to(path),
    }
}

/// Sets the reader's language.
pub async fn language(
    head: Head,
    Form(pairs): Form<Vec<(String, String)>>,
) -> Result<Response, Response> {
    let fields = Fields(pairs);
    let chosen = fields.one("language").and_then(Language::from_code).unwrap_or(head.language);
    let jar = head.jar.add(lasting("language", chosen.code().to_owned()));
    Ok((jar, back(&fields, "/", None)).into_response())
}

/// An act from a form.
pub async fn act(
    State(served): State<Served>,
    Path(name): Path<String>,
    head: Head,
    Form(pairs): Form<Vec<(String, String)>>,
) -> Response {
    let mut fields = Fields(pairs);
    // Only what was kept may say so.
    fields.0.retain(|(name, _)| name != chair_posts::KEPT);
    let work = {
        let (head, fields) = (head.clone(), fields.clone());
        move |app: &App| {
            let done = do_act(app, &name, &head, &fields)?;
            let told = app.book.read(|view| {
                let ctx = head.ctx(app, view)?;
                let told = meanwhile::after(view, &ctx, done.act)?;
                Ok::<_, Refusal>(told.map(|told| meanwhile::page(&ctx, &told, fields.one("back"))))
            })?;
            Ok((done, told))
        }
    };
    match served.app.look(work).await {
        Ok(Ok((Done { act, sign }, told))) => {
            let jar = match sign {
                Some(sign) => head.jar.add(lasting(own(head.practice, "sign"), sign.to_string())),
                None => head.jar,
            };
            match told {
                // What somebody else did meanwhile is said before anything else.
                Some(page) => (jar, page).into_response(),
                None => (jar, back(&fields, "/", Some(act))).into_response(),
            }
        }
        Ok(Err(refusal)) => {
            let about = fields.maybe("run").ok().flatten();
            answer_refusal(&served, head, refusal, About { back: fields.one("back"), run: about })
                .await
        }
        Err(error) => trouble(&head, &error.to_string()),
    }
}

/// What came of a form.
pub(super) struct Done {
    pub(super) act: ActId,
    sign: Option<PersonId>,
}

/// Does an act.
pub(super) fn do_act(app: &App, name: &str, head: &Head, fields: &Fields) -> Result<Done, Refusal> {
    if let Some(name) = later_posts::from_paper(name) {
        let (act, sign) = later_posts::act(app, name, head.station, fields)?;
        return Ok(Done { act, sign: Some(sign) });
    }
    let before = counter_posts::happened(app, name, fields)?;
    // In the first minute the sign is made by the act that it signs.
    let first = name == "first-run";
    let who = Who {
        act: fields.need("act")?,
        station: head.station,
        sign: fields.maybe(if first { "person" } else { "sign" })?,
        happened: chair_posts::happened(name, fields, app.now())?.or(before),
        known: match name {
            "open" => Known::Scanned,
            "read-off" => Known::Read,
            "tray-weighed" | "stock-counted" => Known::Read,
            name if counter_posts::knows(name) => counter_posts::known(name),
            name if day_posts::is_setting(name)
                || loading_posts::knows(name)
                || practice::knows(name)
                || upkeep_posts::is_setting(name) =>
            {
                Known::Setting
            }
            _ => Known::Tapped,
        },
    };
    if needs_sign(name, fields) && who.sign.is_none() {
        return Err(Refusal::rule("refused-no-sign"));
    }
    let mut who = who;
    if name == "set-aside" && app.book.read(|view| said_otherwise(view, who.act, fields))? {
        // The same key for another pouch: going to the safer side is never swallowed as a double tap.
        who.act = chance::id()?;
    }
    app.act(who, |view, draft| {
        if let Some(sign) = who.sign.filter(|_| !first)
            && view.people()?.iter().all(|person| person.person != sign)
        {
            return Err(Refusal::rule("refused-no-such-person"));
        }
        if needs_charge(name) {
            in_charge(view, who.sign)?;
        }
        if name == "station-parted" && !stations::may_let_in(view, head)? {
            return Err(Refusal::rule("refused-not-here"));
        }
        decide(name, view, draft, fields)
    })?;
    Ok(Done { act: who.act, sign: who.sign })
}

/// Where somebody is in charge, these are theirs: lifting a stop, ending a freeze, signing a
/// contradiction as seen, and saying who is in charge.
fn needs_charge(name: &str) -> bool {
    matches!(name, "lift" | "seen" | "spore-back" | "person-is")
}

/// Is nobody in charge here, or is it this sign's person?
fn in_charge(view: &View<'_>, sign: Option<PersonId>) -> Result<(), Refusal> {
    let mut anybody = false;
    for person in view.people()? {
        let charge = view.roles(person.person)?.in_charge;
        if charge && Some(person.person) == sign {
            return Ok(());
        }
        anybody |= charge;
    }
    if anybody { Err(Refusal::rule("refused-in-charge")) } else { Ok(()) }
}

/// Is this act in the book, and did it not set these aside?
fn said_otherwise(view: &View<'_>, act: ActId, fields: &Fields) -> Result<bool, Refusal> {
    let facts = view.facts_of_act(act)?;
    let asked = set_aside(fields)?;
    let same = facts.iter().any(|fact| match &fact.body {
        Body::SetAside { pouches, run, .. } => {
            *run == asked.run && asked.pouches.iter().all(|pouch| pouches.contains(pouch))
        }
        _ => false,
    });
    Ok(!facts.is_empty() && !same)
}

/// Going to the safer side, undo and setting up ask for no sign.
fn needs_sign(name: &str, fields: &Fields) -> bool {
    if spore_posts::knows(name) {
        return spore_posts::needs_sign(name, fields);
    }
    !matches!(
        name,
        "set-aside" | "machine-out" | "undo" | "machine" | "person" | "sets" | "station-parted"
    ) && !day_posts::knows(name)
        && !loading_posts::knows(name)
        && (counter_posts::needs_sign(name) || !counter_posts::knows(name))
        && (!upkeep_posts::knows(name) || upkeep_posts::is_signed(name))
        && !practice::knows(name)
}

fn decide(name: &str, view: &View<'_>, draft: &mut Draft, fields: &Fields) -> Result<(), Refusal> {
    match name {
        "wash" => acts::wash(view, draft, fields.counted("count.")?),
        "pack" => acts::pack(
            view,
            draft,
            acts::Pack {
                kind: fields.need("kind")?,
                count: fields.need("count")?,
                pouched: fields.one("wrap") != Some("open"),
                hollow: fields.yes("hollow"),
            },
        ),
        "start" => acts::start(view, draft, start(view, fields)?),
        "unload" => acts::unload(view, draft, fields.need("run")?),
        "claim" => acts::claim(
            view,
            draft,
            acts::Claim {
                record: fields.need("record")?,
                cycle: fields.need("cycle")?,
                run: fields.need("run")?,
            },
        ),
        "read-off" => acts::read_off(view, draft, look_posts::read_off(view, fields)?),
        "look" => acts::look(view, draft, look_posts::look(view, fields)?),
        "set-aside" => acts::set_aside(view, draft, set_aside(fields)?),
        "lift" => acts::lift(
            view,
            draft,
            acts::Lift { pouches: fields.many("pouch")?, why: lift_reason(fields)? },
        ),
        "open" => acts::open(view, draft, open(view, fields)?),
        "apart" => acts::apart(view, draft, fields.many("pouch")?),
        "undo" => {
            let pace = pace::of(view)?;
            let now = pace::now(view)?;
            acts::undo(view, draft, acts::Undo { act: fields.need("undo")?, now, pace })
        }
        "accept-plan" => acts::accept(view, draft, accepted(fields)?),
        "seen" => acts::seen(view, draft, fields.need("seq")?),
        "station-parted" => acts::part(view, draft, fields.need("station")?),
        _ => decide_setup(name, view, draft, fields),
    }
}

/// The plan as its page packed it.
fn accepted(fields: &Fields) -> Result<acts::Accept, Refusal> {
    let moment = |name| Ok::<_, Refusal>(Instant::from_millis(fields.need(name)?));
    let runs: Option<Vec<_>> =
        fields.many::<String>("run")?.iter().map(|run| pages::plan::unpacked(run)).collect();
    let runs = runs.ok_or_else(|| Refusal::rule("refused-plan-is-old"))?;
    Ok(acts::Accept { from: moment("from")?, to: moment("to")?, runs })
}

fn decide_setup(
    name: &str,
    view: &View<'_>,
    draft: &mut Draft,
    fields: &Fields,
) -> Result<(), Refusal> {
    match name {
        "machine" => acts::add_machine(
            view,
            draft,
            acts::AddMachine {
                number: fields.need("number")?,
                air_removal: match fields.one("air") {
                    Some("vacuum") => AirRemoval::Vacuum,
                    Some("gravity") => AirRemoval::Gravity,
                    _ => AirRemoval::NotKnown,
                },
                writes_files: fields.yes("files"),
                most_pouches: fields.maybe("most")?,
            },
        ),
        "machine-out" => acts::machine_out(view, draft, fields.need("machine")?),
        "machine-back" => acts::machine_back(view, draft, fields.need("machine")?),
        "machine-clock" => acts::set_machine_clock(
            view,
            draft,
            acts::SetClock { machine: fields.need("machine")?, ahead_min: fields.need("ahead")? },
        ),
        "machine-reads" => acts::machine_reads(view, draft, machine_reads(view, fields)?),
        "first-run" => acts::first(
            view,
            draft,
            acts::First {
                machines: fields.need("machines")?,
                sign: fields.need("sign-text")?,
                person: fields.need("person")?,
                running: fields.yes("running"),
            },
        ),
        "person" => acts::join(view, draft, fields.one("sign-text").unwrap_or_default()),
        "person-left" => acts::leave(view, draft, fields.need("person")?),
        "sets" => acts::count(
            view,
            draft,
            acts::Count {
                kind: fields.need("kind")?,
                owned: fields.maybe("owned")?,
                loose: fields.maybe("used")?.zip(fields.maybe("washed")?),
            },
        ),
        name if counter_posts::knows(name) => counter_posts::decide(name, view, draft, fields),
        name if practice::knows(name) => practice::decide(name, view, draft, fields),
        name if loading_posts::knows(name) => loading_posts::decide(name, view, draft, fields),
        name if spore_posts::knows(name) => spore_posts::decide(name, view, draft, fields),
        name if upkeep_posts::knows(name) => upkeep_posts::decide(name, view, draft, fields),
        _ => day_posts::decide(name, view, draft, fields),
    }
}

fn start(view: &View<'_>, fields: &Fields) -> Result<acts::Start, Refusal> {
    let programme: Option<Programme> = fields.maybe("programme")?;
    let (zone, now) = (crate::intake::take::salon_zone(view)?, pace::now(view)?);
    let at = chair_posts::happened("start", fields, now)?.unwrap_or(now);
    let machine: MachineId = fields.need("machine")?;
    let last = view.last_runs(machine, None, 1)?.into_iter().next();
    if last.and_then(|run| run.unloaded).is_some_and(|out| at < out) {
        return Err(Refusal::rule("refused-before-that-run"));
    }
    Ok(acts::Start {
        machine,
        programme: programme.map(|word| word.word().to_owned()),
        pouches: fields.many("pouch")?,
        over: fields.yes("over"),
        day: clock::day(at, &zone),
        at,
        copied: false,
    })
}

/// What a form says of a machine's records. What it leaves empty stays as it was said before, but
/// for a form that shows all of it.
fn machine_reads(view: &View<'_>, fields: &Fields) -> Result<acts::MachineReads, Refusal> {
    let machine: MachineId = fields.need("machine")?;
    let kept = view.machine(machine)?.map(|row| row.reads).filter(|_| !fields.yes("whole"));
    let kept = kept.unwrap_or_default();
    let reads = Reads {
        altitude_m: fields.maybe("altitude")?.or(kept.altitude_m),
        temperature_unit: word(fields, "temperature", &reads::TEMPERATURES)?
            .or(kept.temperature_unit),
        pressure_unit: word(fields, "pressure", &reads::PRESSURES)?.or(kept.pressure_unit),
        pressure_reference: word(fields, "reference", &reads::REFERENCES)?
            .or(kept.pressure_reference),
        day_first: word(fields, "dates", &reads::DATES)?.or(kept.day_first),
    };
    let unclaimed = fields.maybe("record")?.zip(fields.maybe("cycle")?);
    Ok(acts::MachineReads { machine, reads, unclaimed })
}

/// The value of a word out of a closed list.
fn word<T: Copy>(
    fields: &Fields,
    name: &'static str,
    words: &[(T, &'static str, &'static str)],
) -> Result<Option<T>, Refusal> {
    let Some(said) = fields.one(name) else { return Ok(None) };
    let found = words.iter().find(|(_, word, _)| *word == said).map(|(value, ..)| *value);
    found.map(Some).ok_or_else(|| Refusal::rule_with("refused-field-misread", "field", name))
}

fn set_aside(fields: &Fields) -> Result<acts::SetAside, Refusal> {
    Ok(acts::SetAside {
        run: fields.maybe("run")?,
        pouches: fields.many("pouch")?,
        why: match fields.one("why") {
            Some("mark") => StopReason::Mark,
            Some("wet") => StopReason::Wet,
            Some("torn") => StopReason::Torn,
            Some("dropped") => StopReason::Dropped,
            Some("numbers") => StopReason::Numbers,
            Some("cannot-tell") => StopReason::CannotTell,
            Some("interrupted") => StopReason::Interrupted,
            Some("recall") => StopReason::Recall,
            // Nobody is asked for a reason before the safer side may be taken.
            _ => StopReason::NotSure,
        },
    })
}

fn lift_reason(fields: &Fields) -> Result<LiftReason, Refusal> {
    match fields.one("why") {
        Some("mistake") => Ok(LiftReason::Mistake),
        Some("paperwork") => Ok(LiftReason::Paperwork),
        _ => Err(Refusal::rule_with("refused-field-missing", "field", "why")),
    }
}

pub(super) fn open(view: &View<'_>, fields: &Fields) -> Result<acts::Open, Refusal> {
    let what = match fields.maybe("pouch")? {
        Some(pouch) => acts::What::Pouch(pouch),
        None => acts::What::Code(fields.need("code")?),
    };
    let opened = chair_posts::happened("open", fields, pace::now(view)?)?;
    let kept = fields.one(chair_posts::KEPT).is_some();
    let now = pace::now(view)?;
    Ok(acts::Open { what, chair: fields.maybe("chair")?, opened, kept, now })
}
