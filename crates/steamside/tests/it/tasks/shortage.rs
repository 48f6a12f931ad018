//! Task 6: a busy Saturday; a run is set aside, and the plan says at once who would wait and what
//! would help.

use super::{LANGUAGES, Task};
use crate::browser::TABLET;
use crate::salon::id;
use crate::story::{GOOD, Story, record};
use load::SetState;

/// A zone in which it is ten in the morning now: a day lies ahead, whenever the test runs.
fn ten_in_the_morning() -> String {
    let hour: i32 = jiff::Timestamp::now().strftime("%H").to_string().parse().expect("an hour");
    let ahead = match 10 - hour {
        ahead if ahead < -12 => ahead + 24,
        ahead => ahead,
    };
    // The names of these zones count the other way round.
    if ahead >= 0 { format!("Etc/GMT-{ahead}") } else { format!("Etc/GMT+{}", -ahead) }
}

/// Fourteen visits an hour for two hours, each with one set.
fn busy(story: &Story) {
    let service = [
        ("word", "manicure"),
        ("length", "50"),
        ("weight", "1"),
        ("basin", "0"),
        ("need.manicure", "1"),
    ];
    story.act("service", &service);
    let service = story.book.read(|view| view.services()).expect("services").remove(0).service;
    let service = service.to_string();
    let now = jiff::Timestamp::now().as_millisecond();
    for place in 0..28 {
        let start = (now + (place / 14 + 1) * 3_600_000 + place % 14 * 60_000).to_string();
        let chair = (place % 14 + 1).to_string();
        let visit = [("service", &*service), ("start", &*start), ("chair", &*chair)];
        story.act("visit", &visit);
    }
}

#[tokio::test]
async fn a_wet_load_on_a_busy_saturday() {
    for language in LANGUAGES {
        let home = tempfile::tempdir().expect("a folder");
        let story = Story::begin_in(&home.path().join("book"), &ten_in_the_morning());
        story
            .act("sets", &[("kind", "manicure"), ("owned", "40"), ("used", "40"), ("washed", "0")]);
        busy(&story);
        let run = story.start(11);
        story.act("unload", &[("run", &run.to_string())]);
        story.drop_file(&record(GOOD));
        let Some(mut task) =
            Task::begin(("6-wet-on-saturday", TABLET), language, &story.salon).await
        else {
            return;
        };
        task.open(&format!("/run/{run}")).await;
        task.tap("button", &task.say("set-aside-run")).await;
        assert_eq!(story.pouches(SetState::SetAside).len(), 11);
        task.open("/plan").await;
        task.expect(&task.say("plan-somebody-waits")).await;
        task.picture("plan").await;
        // "Missing at 12:00: 3 manicure sets": which time and how many, in the reader's words.
        let missing = task.say_before("plan-unmet", "time");
        task.expect(&missing).await;
        task.tap("link", &task.say("plan-ways")).await;
        task.picture("ways").await;
        let ways = "return document.querySelectorAll('main li').length";
        // The search for them ends after a moment; on a busy machine it finds fewer.
        let mut found = 0;
        for _ in 0..10 {
            found = task.script(ways).await.as_u64().unwrap_or(0);
            if found >= 2 {
                break;
            }
            task.open("/plan/ways").await;
        }
        assert!(found >= 2, "two ways out, not {found}");
        let same = [
            ("act", &*id()),
            ("sign", &*story.sign),
            ("run", &*run.to_string()),
            ("marks", "all"),
            ("dry", "all"),
        ];
        story.salon.post("/act/look", &same); // however it is answered, nothing comes back
        assert_eq!(story.pouches(SetState::Ready).len(), 0);
        task.end(2).await;
    }
}
