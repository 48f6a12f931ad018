//! Every screen of the made-up salon, drawn as a browser gets it.

use super::loading_screens::{loading_screens, seen_tray};
use super::made_up::*;
use super::practice_screens::{practice_door, practice_screens};
use crate::pages::{
    another, chair, frame, labels, log, machine, now, practice, ready, recall, refused, run, setup,
    start, stop, telling, trouble, unclaimed, wash,
};
use crate::photo::NotRead;
use crate::recalling::Reached;
use crate::web::Ctx;
use crate::words::Language;
use load::SetState;
use logbook::fact::{Basis, Body, Fact, Judged, StopReason};
use logbook::view::{LogLine, Machine, Pouch, PouchVisit, Run};
use maud::Markup;
use release::recall::Reach;
use release::verdict::Outcome;

fn framed(ctx: &Ctx, place: frame::Place, desk: bool, body: &Markup) -> String {
    let did = frame::Did {
        act: id(5),
        text: telling::line(ctx, &names(), &facts()[0]),
        undo: Some((frame::Undo::Back, 27)),
        correct: false,
        reads: None,
    };
    let title = ctx.words().say("now-title");
    let frame = frame::Frame { title, place, desk, again_s: Some(60), did: Some(did) };
    frame::page(ctx, &frame, body).into_string()
}

/// Anything in the frame of a page that is read at a desk.
pub fn desk(ctx: &Ctx, html: &str) -> String {
    framed(ctx, frame::Place::Log, true, &maud::PreEscaped(html.to_owned()))
}

/// Every screen with its name, as a browser gets it.
pub fn screens(language: Language) -> Vec<(&'static str, String)> {
    let ctx = ctx(language);
    let sink = |place, body: Markup| framed(&ctx, place, false, &body);
    let desk = |body: Markup| framed(&ctx, frame::Place::Log, true, &body);
    use frame::Place::{Machine, Ready};
    let mut screens = work_screens(&ctx, &sink);
    screens.extend(practice_screens(&ctx));
    let runs = run_screens(&ctx);
    screens.extend(runs.map(|(name, body)| (name, sink(Machine, body))));
    screens.extend([
        ("ready", sink(Ready, ready::draw(&ctx, &shelf()))),
        ("ready-empty", sink(Ready, ready::draw(&ctx, &ready::Seen::default()))),
        ("chair", sink(Ready, chair::keypad(&ctx, None, None))),
        ("chair-4", sink(Ready, chair::keypad(&ctx, Some(4), Some(NotRead::NoCode)))),
        ("another", sink(Ready, another::draw(&ctx, &need_another()))),
        ("another-none", sink(Ready, another::draw(&ctx, &another::Seen::default()))),
        (
            "chair-good",
            sink(
                Ready,
                chair::good(&ctx, &pouch(5, SetState::Ready), Some(4), Some("TN star"), &people()),
            ),
        ),
        ("practice", desk(practice::draw(&ctx, &practice_door(false)))),
        ("practice-open", desk(practice::draw(&ctx, &practice_door(true)))),
        ("log", desk(log::draw(&ctx, &names(), &seen_log()))),
        ("recall", desk(recall::draw(&ctx, &reached()))),
        (
            "recall-ask",
            desk(recall::draw(
                &ctx,
                &recall::Seen { machines: vec![machine_row(1)], ..Default::default() },
            )),
        ),
        ("unclaimed", sink(Machine, unclaimed::draw(&ctx, &unclaimed_cycle()))),
        ("setup", desk(setup::draw(&ctx, &set_up()))),
    ]);
    let day = super::day_screens::day_screens(&ctx);
    screens.extend(day.into_iter().map(|(name, body)| (name, desk(body))));
    let upkeep = super::upkeep_screens::upkeep_screens(&ctx);
    screens.extend(upkeep.into_iter().map(|(name, body)| (name, sink(frame::Place::Upkeep, body))));
    let loading = loading_screens(&ctx);
    screens.extend(loading.into_iter().map(|(name, body)| (name, desk(body))));
    for (name, body, at_desk) in super::door_screens::door_screens(&ctx) {
        screens.push((name, if at_desk { desk(body) } else { sink(Ready, body) }));
    }
    let (counter, sheet) = super::counter_screens::counter_screens(&ctx);
    screens.extend(counter.into_iter().map(|(name, body)| (name, desk(body))));
    screens.push(sheet);
    screens.extend(alone(&ctx));
    screens.extend(super::door_screens::alone(&ctx));
    screens.extend(super::wall_screens::wall_screens(&ctx));
    screens.extend(super::folder_screens::folder_screens(&ctx));
    screens
}

/// A run in each of the states that it can be looked at in.
fn run_screens(ctx: &Ctx) -> [(&'static str, Markup); 7] {
    [
        ("run-good", seen_run(Some(Outcome::Lethal))),
        ("run-running", in_machine()),
        ("run-released", released_run()),
        ("run-did-not", stopped_run()),
        ("run-cannot-tell", seen_run(Some(Outcome::CannotTell))),
        ("run-no-numbers", seen_run(None)),
        ("run-read-off", read_run()),
    ]
    .map(|(name, seen)| (name, run::draw(ctx, &seen)))
}

fn work_screens(
    ctx: &Ctx,
    sink: &dyn Fn(frame::Place, Markup) -> String,
) -> Vec<(&'static str, String)> {
    use frame::Place::{Machine, Now};
    let full = start::Seen {
        free: vec![machine_row(1), machine_row(2)],
        machine: Some(machine_row(1)),
        programmes: vec!["wrapped 134".to_owned(), "wrapped 121".to_owned()],
        last: Some("wrapped 134".to_owned()),
        bagged: pouches(13, SetState::Bagged),
        people: people(),
        tray: Some(seen_tray()),
        changed: true,
        stops: Vec::new(),
    };
    let stopped = start::Seen { stops: vec![super::upkeep_screens::stopped()], ..full.clone() };
    let first = now::Seen { machines: vec![machine_row(1)], ..now::Seen::default() };
    let quiet = now::Seen { people: people(), ..first.clone() };
    let asked = labels::Asked { act: id(5), sheet: Some("a4"), start: Some(1) };
    let packing = [fact(2, 3, 0, Body::Packed { pouches: packed() })];
    vec![
        ("now", sink(Now, now::draw(ctx, &busy()))),
        ("now-quiet", sink(Now, now::draw(ctx, &quiet))),
        ("now-empty-book", sink(Now, now::draw(ctx, &now::Seen::default()))),
        ("now-no-sign", sink(Now, now::draw(ctx, &first))),
        ("wash", sink(Now, wash::draw(ctx, &kinds(), &people()))),
        ("wash-nothing", sink(Now, wash::draw(ctx, &[], &people()))),
        ("start", sink(Machine, start::draw(ctx, &full))),
        ("start-stopped", sink(Machine, start::draw(ctx, &stopped))),
        ("start-nothing", sink(Machine, start::draw(ctx, &start::Seen::default()))),
        ("labels", sink(Now, labels::draw(ctx, &labels::seen(ctx, asked, &packing, ago(3))))),
        ("machine", sink(Machine, machine::draw(ctx, &machines(), &people()))),
    ]
}

/// Screens without the salon's frame.
fn alone(ctx: &Ctx) -> Vec<(&'static str, String)> {
    let aside = pouch(2, SetState::SetAside);
    let code = aside.code.to_string();
    let stopped =
        stop::Stop { pouch: Some(&aside), code: &code, run: Some((1, 3)), chair: Some(4) };
    let unknown = stop::Stop { pouch: None, code: "3K7P", run: None, chair: None };
    let said = refused::Said {
        key: "refused-over-tested",
        args: &[("most", "12".to_owned())],
        back: "/start",
        holds: None,
    };
    vec![
        ("stop", stop::page(ctx, &stopped).into_string()),
        ("stop-unknown", stop::page(ctx, &unknown).into_string()),
        ("refused", refused::page(ctx, &said).into_string()),
        ("trouble", trouble::page(ctx.language, false, "the disk is full").into_string()),
    ]
}

fn busy() -> now::Seen {
    let mut out = machine_row(2);
    out.out_since = Some(ago(600));
    now::Seen {
        spores: Markup::default(),
        machines: vec![machine_row(1), out],
        people: people(),
        runs: vec![(run_row(3), None), (running(), expected())],
        kinds: kinds(),
        bagged: 9,
        apart: pouches(2, SetState::SetAside),
        unclaimed: vec![taken()],
        unseen: Vec::new(),
        outages: Vec::new(),
        offered: None,
        soon: crate::pages::upkeep::Soon {
            basins: vec!["Foot basin 2: wet until 10:48".to_owned()],
            chores: 5,
            first: ["Machine 1: door seal", "Machine 2: door seal", "stock count"]
                .map(str::to_owned)
                .to_vec(),
        },
    }
}

fn machines() -> Vec<machine::Seen> {
    let done = Run { released: Some(ago(100)), ..run_row(2) };
    let stopped = Run {
        stopped: Some((ago(300), StopReason::Numbers)),
        outcome: Some(Outcome::NotLethal),
        ..run_row(1)
    };
    let unsure = Run { outcome: Some(Outcome::CannotTell), ..run_row(3) };
    let mut out = machine_row(2);
    out.out_since = Some(ago(600));
    vec![
        machine::Seen {
            machine: Machine { running: Some(id(44)), ..machine_row(1) },
            running: Some((running(), expected())),
            last: vec![unsure, done, stopped],
            changes: vec![fading_heater()],
            dries: vec!["long: about 1450 g come out dry here".to_owned()],
            counted: vec!["air filter: 34 of 100 runs".to_owned()],
            stops: vec![super::upkeep_screens::stopped()],
        },
        machine::Seen {
            machine: out,
            running: None,
            last: Vec::new(),
            changes: Vec::new(),
            dries: Vec::new(),
            counted: Vec::new(),
            stops: Vec::new(),
        },
    ]
}

fn in_machine() -> run::Seen {
    run::Seen {
        run: running(),
        machine: Some(machine_row(1)),
        usual: expected(),
        judged: Vec::new(),
        samples: None,
        pouches: pouches(11, SetState::InMachine),
        people: people(),
        starter: None,
        outage: None,
        hot: None,
        count: false,
    }
}

fn released_run() -> run::Seen {
    run::Seen { pouches: pouches(11, SetState::Ready), ..seen_run(Some(Outcome::Lethal)) }
}

fn stopped_run() -> run::Seen {
    let seen = seen_run(Some(Outcome::NotLethal));
    let mut pouches = pouches(11, SetState::SetAside);
    pouches[0].stopped = Some(StopReason::NotSure);
    let run = Run { stopped: Some((ago(2), StopReason::Numbers)), ..seen.run };
    run::Seen { run, pouches, ..seen }
}

/// Numbers read off the display: an inner mark is asked for as well.
fn read_run() -> run::Seen {
    let seen = seen_run(Some(Outcome::Lethal));
    let basis = Basis::Reading { lowest_mc: 134_500, held_s: 240, press_pa: None };
    let judged = Judged { basis, ..judged(Outcome::Lethal) };
    run::Seen { judged: vec![judged], samples: None, ..seen }
}

fn shelf() -> ready::Seen {
    let mut usable = pouches(32, SetState::Ready);
    usable.push(pouch(40, SetState::UseNow));
    ready::Seen { usable, at_chairs: pouches(5, SetState::Opened) }
}

fn need_another() -> another::Seen {
    let opened = vec![pouch(5, SetState::Opened), pouch(6, SetState::Opened)];
    let ready = pouch(7, SetState::Ready);
    let spares = [(ready.kind.clone(), Some((ready, 4))), (opened[1].kind.clone(), None)];
    another::Seen { chair: Some(4), these: opened, spares: spares.into() }
}

fn seen_log() -> log::Seen {
    let silence = |from, to, why| log::gaps::Silence { span: (ago(from), ago(to)), why };
    let said = log::Beside {
        written: ago(1),
        sign: Some("TN star".to_owned()),
        text: telling::line(&ctx(Language::En), &names(), &facts()[0]),
    };
    log::Seen {
        entries: log::entries(lines()),
        silences: vec![
            silence(9_000, 6_000, None),
            silence(20_000, 15_000, Some(logbook::fact::GapWhy::Holiday)),
        ],
        beside: [(facts()[1].stamp.act, vec![said])].into(),
        older: Some(1),
        print: false,
    }
}

fn lines() -> Vec<LogLine> {
    let undone = |fact: &Fact| (fact.seq == 2).then(|| id(77));
    facts()
        .into_iter()
        .rev()
        .map(|fact| LogLine { undone_by: undone(&fact), contradicted: false, fact })
        .collect()
}

fn reached() -> recall::Seen {
    let shelf = pouches(4, SetState::Ready);
    let opened: Vec<Pouch> = (5..14).map(|number| pouch(number, SetState::Opened)).collect();
    let reach = Reach {
        runs: vec![id(41)],
        on_shelf: shelf.iter().map(|pouch| pouch.pouch).collect(),
        opened: opened
            .iter()
            .filter_map(|p| p.opened.map(|(_, visit, _)| (p.pouch, visit)))
            .collect(),
        ..Reach::default()
    };
    let visits = opened.iter().filter_map(|p| {
        let (opened, visit, chair) = p.opened?;
        Some((visit, PouchVisit { pouch: p.pouch, visit, opened, chair }))
    });
    let visits = visits.collect();
    let reached = Reached {
        reach,
        visits,
        pouches: shelf.into_iter().chain(opened).map(|pouch| (pouch.pouch, pouch)).collect(),
        runs: [(id(41), (1, 3))].into(),
    };
    recall::Seen {
        machines: vec![machine_row(1), machine_row(2)],
        machine: Some(id(21)),
        from: Some(ago(6_000)),
        to: Some(ago(10)),
        reached: Some(reached),
        letter: None,
    }
}

fn unclaimed_cycle() -> unclaimed::Seen {
    unclaimed::Seen {
        cycle: taken(),
        judged: Some(judged(Outcome::Lethal)),
        runs: vec![Run { record: None, outcome: None, ..run_row(3) }],
        people: people(),
        machines: vec![machine_row(1), machine_row(2)],
    }
}

fn set_up() -> setup::Seen {
    setup::Seen {
        machines: vec![machine_row(1)],
        people: people(),
        kinds: kinds(),
        zone: "America/Chicago".to_owned(),
        known: people()
            .into_iter()
            .enumerate()
            .map(|(at, person)| setup::people::Known {
                person,
                speaks: (at == 1).then_some(Language::Vi),
                roles: logbook::view::Roles { learns: at == 2, in_charge: at == 0, teaches: false },
            })
            .collect(),
    }
}
