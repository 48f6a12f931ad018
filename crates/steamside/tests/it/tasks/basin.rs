//! Task 13: the foot basin after a client. Wet with one tap, no draining before the minutes on the
//! label are over, *not used today* with one tap, all of it in the log.

use super::{LANGUAGES, Task};
use crate::browser::TABLET;
use crate::salon::id;
use crate::story::Story;
use logbook::BookError;
use logbook::fact::{BasinAfter, Body, Known, Stamp, ThingKind, Upkeep};
use logbook::view::Thing;
use measure::{Instant, Span};

/// Three foot basins, the third of them wet for eleven minutes; the label says ten.
fn basins(story: &Story) -> Vec<Thing> {
    for _ in 0..3 {
        story.act("thing", &[("what", "basin")]);
    }
    let things = story.book.read(|view| view.things()).expect("things");
    assert!(things.iter().all(|thing| thing.what == ThingKind::FootBasin));
    for thing in &things {
        story.act("basin-set", &[("basin", &thing.thing.to_string()), ("wet", "10")]);
    }
    let now = Instant::from_millis(jiff::Timestamp::now().as_millisecond());
    let then = now - Span::from_minutes(11);
    let stamp = Stamp {
        act: id().parse().expect("an id"),
        happened: then,
        written: then,
        station: id().parse().expect("an id"),
        sign: story.sign.parse().ok(),
        known: Known::Tapped,
    };
    let wet = Upkeep::BasinWet { basin: things[2].thing, after: BasinAfter::Client };
    let written: Result<_, BookError> = story.book.act(stamp, |_, draft| {
        draft.fact(Body::Upkeep(Box::new(wet)));
        Ok(())
    });
    written.expect("it is written");
    things
}

/// Has a wet time begun, and was the basin drained since?
fn stands(story: &Story, thing: Thing) -> (bool, bool) {
    let basin = story.book.read(|view| view.basin(thing)).expect("a basin");
    (basin.wet.is_some(), basin.drained.is_some())
}

#[tokio::test]
async fn the_foot_basin_after_a_client() {
    for language in LANGUAGES {
        let home = tempfile::tempdir().expect("a folder");
        let story = Story::begin(&home.path().join("book"));
        let things = basins(&story);
        let Some(mut task) = Task::begin(("13-foot-basin", TABLET), language, &story.salon).await
        else {
            return;
        };
        let name =
            |task: &Task, number: &str| task.tell("thing-basin", &[("number", number.into())]);
        let sign =
            |task: &Task, number: &str, asks: &str| format!("{}: {asks} HL", name(task, number));
        let begin = task.tell("basin-wet-asks", &[("count", 10.into())]);
        let drain = task.say("basin-drain-asks");
        task.open("/").await;
        task.tap("link", &task.say("place-upkeep")).await;
        let drain_first = sign(&task, "1", &drain);
        assert!(!task.has("button", &drain_first).await, "{language}: nothing to drain");
        // A client has left: one tap, and the ten minutes begin. In the evening the day's end is
        // chosen already, so this test chooses at any hour.
        task.touch("radio", &task.say("basin-after-client")).await;
        task.tap("button", &sign(&task, "1", &begin)).await;
        assert_eq!(stands(&story, things[0]), (true, false));
        task.expect(&task.say_before("basin-wet-until", "time")).await;
        assert!(!task.has("button", &drain_first).await, "{language}: not before its time");
        task.picture("wet").await;
        // By another way it is refused.
        story.refused("basin-drained", &[("basin", &things[0].thing.to_string())]);
        assert_eq!(stands(&story, things[0]), (true, false));
        // The second was not used today: one tap.
        let not_used = format!("{}: {}", task.say("chore-not-used"), name(&task, "2"));
        task.tap("button", &not_used).await;
        let second = story.book.read(|view| view.basin(things[1])).expect("a basin");
        assert_eq!(second.not_used.len(), 1, "{language}");
        // The minutes of the third are over: it is offered, and drained.
        task.tap("button", &sign(&task, "3", &drain)).await;
        assert_eq!(stands(&story, things[2]), (true, true));
        task.tap("link", &task.say("place-log")).await;
        let client = task.say("basin-after-client");
        let wet = [("what", name(&task, "1").into()), ("after", client.into())];
        task.expect(&task.tell("line-basin-wet", &wet)).await;
        task.expect(&task.tell("line-not-used", &[("what", name(&task, "2").into())])).await;
        task.expect(&task.tell("line-basin-drained", &[("what", name(&task, "3").into())])).await;
        task.end(6).await;
    }
}
