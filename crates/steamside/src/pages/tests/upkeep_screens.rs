//! Upkeep: chores late, due, counted and not known; jars; foot basins in each step; what to buy.

use super::made_up::*;
use crate::pages::upkeep::{self, Seen, set};
use crate::upkeep::{BasinSeen, BasinStep, JarSeen, Kept, Mix, Upkeep};
use crate::web::Ctx;
use crate::words::Language;
use day::chores::{Due, Late};
use logbook::fact::{
    About, BasinAfter, Body, ChoreRule, DayPart, Found, LeftOut, Stamp, ThingKind, UsedBy,
};
use logbook::typical::chores::ChoreSource;
use logbook::view::{Basin, Chore, ChoreDone, Jar, JarLabel, Stock, Thing};

/// 28 November 2026 is day 20 785: 56 years of 365 days, 14 leap days and 331 days of the year.
const TODAY: i64 = 56 * 365 + 14 + 331;

fn thing(number: u8, what: ThingKind, called: u32) -> Thing {
    Thing { thing: id(number), what, number: called, since: ago(60 * 24 * 30) }
}

pub fn things() -> Vec<Thing> {
    use ThingKind::{FootBasin, Jar, Ultrasonic};
    vec![
        thing(201, Jar, 1),
        thing(202, Jar, 2),
        thing(203, Jar, 3),
        thing(204, FootBasin, 1),
        thing(205, FootBasin, 2),
        thing(206, FootBasin, 3),
        thing(207, Ultrasonic, 1),
    ]
}

fn stamp(minutes: i64) -> Stamp {
    fact(1, minutes, 0, Body::Undone { act: id(1) }).stamp
}

fn kept(word: &str, about: About, due: Due) -> Kept {
    let rule = ChoreRule {
        chore: word.parse().unwrap(),
        about,
        part: DayPart::AnyTime,
        days: Some(7),
        runs: None,
        minutes: 2,
        stops_work: false,
        manual_page: None,
    };
    let chore = Chore {
        rule,
        said: None,
        source: Some(ChoreSource::CommonPractice),
        since: ago(60 * 24 * 30),
        last: None,
        counts: None,
        left: Vec::new(),
        runs: 0,
    };
    Kept { chore, due, stops: false }
}

/// The air filter of machine 1, past its count.
pub fn stopped() -> Kept {
    let mut filter = kept("bacteria filter", About::Machine(id(21)), Due::Overdue(Late::Runs(3)));
    filter.chore.rule.runs = Some(100);
    filter.chore.rule.days = None;
    filter.chore.rule.stops_work = true;
    filter.chore.rule.manual_page = Some(31);
    filter.chore.runs = 103;
    filter.stops = true;
    filter
}

fn chores() -> Vec<Kept> {
    let machine = About::Machine(id(21));
    let mut seal = kept("door seal", machine, Due::Now);
    let not_fine = ChoreDone { stamp: stamp(60 * 24), found: Found::NotFine };
    seal.chore.last = Some(not_fine);
    let mut done = kept("water level", machine, Due::Done);
    done.chore.last = Some(ChoreDone { stamp: stamp(120), found: Found::Fine });
    let mut left = kept("bath fresh", About::Thing(id(207)), Due::Left);
    left.chore.left = vec![(ago(30), LeftOut::NotUsed)];
    let mut filter = kept("dust filter", machine, Due::NotKnown);
    filter.chore.rule.days = None;
    filter.chore.source = Some(ChoreSource::Manual);
    let mut counted = kept("door seal change", machine, Due::Next(None));
    (counted.chore.rule.days, counted.chore.rule.runs, counted.chore.runs) = (None, Some(100), 34);
    vec![
        stopped(),
        kept("foil test", About::Thing(id(207)), Due::Overdue(Late::Since(TODAY - 2))),
        seal,
        kept("hót bụi", About::Salon, Due::Now),
        kept("used bin", About::Salon, Due::Later(ago(-8 * 60))),
        filter,
        counted,
        kept("spore test", machine, Due::Next(Some(TODAY + 4))),
        left,
        done,
    ]
}

fn jars() -> Vec<JarSeen> {
    let things = things();
    let label = Some(JarLabel { contact_min: 10, lasts_h: Some(24), label: None });
    let jar = |thing, label, mixed: Option<i64>, last_in: Option<i64>| Jar {
        thing,
        label,
        mixed: mixed.map(stamp),
        last_in: last_in.map(stamp),
    };
    vec![
        JarSeen {
            jar: jar(things[0], label, Some(120), Some(4)),
            mix: Mix::Good(ago(120 - 24 * 60)),
            under: Some(ago(-6)),
        },
        JarSeen {
            jar: jar(things[1], label, Some(25 * 60), None),
            mix: Mix::Past(ago(60)),
            under: None,
        },
        JarSeen { jar: jar(things[2], None, None, None), mix: Mix::Empty, under: None },
    ]
}

fn basins() -> Vec<BasinSeen> {
    let things = things();
    let basin = |at: usize, wet: Option<i64>, drained: Option<i64>, step, day_end| BasinSeen {
        basin: Basin {
            thing: things[at],
            wet_min: (at == 3).then_some(10),
            wet: wet.map(|wet| (stamp(wet), BasinAfter::Client)),
            drained: drained.map(stamp),
            day_end: None,
            week: None,
            not_used: Vec::new(),
        },
        step,
        wet_min: 10,
        day_end,
        week: Due::Next(Some(TODAY + 3)),
    };
    let later = Due::Later(ago(-8 * 60));
    vec![
        basin(3, Some(50), Some(38), BasinStep::Dry, later),
        basin(4, Some(4), None, BasinStep::Wet(ago(-6)), later),
        basin(5, Some(14), None, BasinStep::Drain(ago(4)), Due::Overdue(Late::Since(TODAY - 1))),
    ]
}

fn stock() -> Vec<Stock> {
    let row = |word: &str, used_by, counted, used| Stock {
        item: word.parse().unwrap(),
        used_by,
        least: 100,
        counted,
        bought: 50,
        used,
    };
    vec![
        row("pouches", UsedBy::Pouch, Some((ago(60 * 24 * 6), 140)), 120),
        row("marks", UsedBy::Pouch, Some((ago(60 * 24 * 6), 400)), 120),
        row("spore tests", UsedBy::Test, None, 0),
    ]
}

pub fn upkeep() -> Upkeep {
    Upkeep {
        chores: chores(),
        jars: jars(),
        basins: basins(),
        uncleaned: 1,
        stock: stock(),
        things: things(),
        machines: [(id(21), 1)].into(),
    }
}

fn seen() -> Seen {
    Seen {
        upkeep: upkeep(),
        people: people(),
        signs: [(id(11), "HL fish".to_owned())].into(),
        good_tests: [(id(21), ago(60 * 24 * 3))].into(),
        labels: vec![Some("invented, 32 ml in 1 l".to_owned()), None, None],
    }
}

/// Every screen of upkeep.
pub fn upkeep_screens(ctx: &Ctx) -> Vec<(&'static str, maud::Markup)> {
    let seen = seen();
    vec![
        ("upkeep", upkeep::draw(ctx, &seen)),
        ("upkeep-one", upkeep::draw_one(ctx, &seen, &seen.upkeep.chores[4])),
        ("upkeep-quiet", upkeep::draw(ctx, &Seen::default())),
        ("upkeep-set", set::draw(ctx, &seen.upkeep, &seen.labels)),
    ]
}

/// Nobody is offered to drain a basin before its minutes are over, and every basin that is wet can
/// be begun again.
#[test]
fn a_wet_basin_is_not_drained_before_its_time() {
    for language in Language::ALL {
        let ctx = ctx(language);
        let check = |at: usize, drains: bool, begins: bool| {
            let basins = vec![basins().remove(at)];
            let upkeep = Upkeep { basins, things: things(), ..Upkeep::default() };
            let html = upkeep::draw(&ctx, &Seen { upkeep, people: people(), ..Seen::default() });
            let html = html.into_string();
            assert_eq!(html.contains("/act/basin-drained"), drains, "{at}");
            assert_eq!(html.contains("/act/basin-wet"), begins, "{at}");
        };
        check(0, false, true);
        check(1, false, true);
        check(2, true, true);
    }
}

/// A chore that stops work offers no way past it: it is done, or the machine stands.
#[test]
fn what_stops_work_has_one_way_out() {
    for language in Language::ALL {
        let ctx = ctx(language);
        let seen = Seen { people: people(), ..Seen::default() };
        let html = upkeep::draw_one(&ctx, &seen, &stopped()).into_string();
        assert!(html.contains("/act/chore-done") && !html.contains("/act/chore-left"));
    }
}

/// The order is by urgency: a basin that has to be drained outranks everything, then a jar.
#[test]
fn the_wall_says_one_thing() {
    let ctx = ctx(Language::En);
    let sign = |upkeep: &Upkeep| upkeep::wall_sign(&ctx, upkeep).map(|sign| sign.says);
    let mut all = upkeep();
    assert_eq!(sign(&all).as_deref(), Some("Drain foot basin 3 now"));
    all.basins.clear();
    assert_eq!(sign(&all).as_deref(), Some("Change jar 2 now"));
    all.jars.clear();
    assert_eq!(sign(&all).as_deref(), Some("UPKEEP 4"), "what is due at 18:42 is not soon");
    all.chores.retain(|kept| kept.due == Due::NotKnown);
    assert_eq!(sign(&all), None);
}
