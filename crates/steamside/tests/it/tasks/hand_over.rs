//! Task 11: HL hands over, TN takes it; HL corrects nine pouches to eight; a count of yesterday is
//! copied in from paper.

use super::{LANGUAGES, Task};
use crate::browser::TABLET;
use crate::salon::id;
use crate::story::Story;
use load::SetState;
use serde_json::json;

/// Nine pouches in machine 1, five sets in the bin, a second machine and a second person.
fn busy(folder: &std::path::Path) -> Story {
    let story = Story::begin(folder);
    for (path, field) in [("/act/person", ("sign-text", "TN")), ("/act/machine", ("number", "2"))] {
        assert_eq!(story.salon.post(path, &[("act", &*id()), field]), Some(303));
    }
    story.act("sets", &[("kind", "manicure"), ("used", "14"), ("washed", "0")]);
    story.start(9);
    story
}

async fn hands_over(task: &mut Task, story: &Story, run: &str) {
    task.open("/").await;
    task.tap("link", &task.say("go-hand-over")).await;
    let ends = [("machine", "1".into()), ("other", "2".into())];
    for line in [
        task.say("hand-over-1"),
        run.to_owned(),
        task.say("hand-over-2"),
        task.tell("bin-about", &[("count", 5.into())]),
        task.say("hand-over-3"),
        task.say("hand-over-4"),
        task.say("hand-over-5"),
        task.tell("if-machine-stops", &ends),
    ] {
        task.expect(&line).await;
    }
    task.picture("give").await;
    let drying = task.say("hand-over-drying");
    task.touch("button", &task.tell("one-more", &[("what", drying.into())])).await;
    task.tap("button", &task.sign("hand-over-asks", "HL")).await;
    task.expect(&task.tell("hand-over-dries", &[("count", 1.into())])).await;
    task.picture("take").await;
    task.tap("button", &task.sign("take-over-asks", "TN")).await;
    let offered = story.book.read(|view| view.last_hand_over()).expect("a book").expect("offered");
    assert!(offered.taken.is_some() && offered.taken.map(|taken| taken.1) != Some(offered.given.1));
}

async fn corrects(task: &mut Task, story: &Story, run: &str) {
    task.open("/log").await;
    let line = task.tell("line-started", &[("run", run.into()), ("count", 9.into())]);
    task.tap("link", &format!("{}: {line}", task.say("correct-key"))).await;
    let code = story.pouches(SetState::InMachine)[0].code.to_string();
    task.touch("checkbox", &code).await;
    task.picture("correct").await;
    task.tap("button", &task.sign("correct-asks", "HL")).await;
    assert_eq!(task.script("return document.querySelectorAll('.log s').length").await, json!(1));
    task.expect(&task.tell("line-run-out", &[("what", code.into())])).await;
    task.picture("corrected").await;
    assert_eq!(story.book.read(|view| view.runs_open()).expect("runs")[0].pouches, 8);
    assert_eq!(story.pouches(SetState::Bagged).len(), 1);
}

async fn copies_in(task: &mut Task) {
    task.open("/later").await;
    task.touch("DisclosureTriangle", &task.say("later-wash")).await;
    let yesterday = jiff::Timestamp::now() - jiff::SignedDuration::from_hours(24);
    let fill = format!(
        "document.getElementById('wash-on').value = '{}';
         document.getElementById('wash-at').value = '17:30';
         document.querySelector(\"[id^=later-washed-][name='count.manicure']\").value = 3;",
        yesterday.strftime("%Y-%m-%d")
    );
    task.script(&fill).await;
    task.picture("paper").await;
    task.tap("button", &task.sign("later-asks", "HL")).await;
    task.open("/log").await;
    task.expect(&task.say_before("log-later", "at")).await;
    task.expect(&task.say("known-from-paper")).await;
    task.picture("log").await;
}

#[tokio::test]
async fn hand_over_and_correct() {
    for language in LANGUAGES {
        let home = tempfile::tempdir().expect("a folder");
        let story = busy(&home.path().join("book"));
        let Some(mut task) = Task::begin(("11-hand-over", TABLET), language, &story.salon).await
        else {
            return;
        };
        let run = task.tell("run-name", &[("machine", "1".into()), ("run", "1".into())]);
        hands_over(&mut task, &story, &run).await;
        corrects(&mut task, &story, &run).await;
        copies_in(&mut task).await;
        task.end(9).await;
    }
}
