//! Task 8: a chair that is cut off from the salon's box, which is killed and started again.

use super::{LANGUAGES, Task};
use crate::browser::PHONE;
use crate::outbox::{keeps, says, until, waiting};
use crate::salon::{Salon, id};
use crate::story::{GOOD, Story, record};
use load::SetState;
use logbook::view::Pouch;
use serde_json::json;

/// Another station of the same salon, while the phone cannot reach the box.
fn elsewhere(story: &Story, path: &str, fields: &[(&str, &str)]) {
    let other = Salon::serve(&story.salon.book, &[]);
    assert_eq!(other.post(path, fields), Some(303));
}

/// The part of a page that shows a pouch as good by the last list.
const GOOD_PART: &str = "document.querySelector('[data-kept-part=good]')";

#[tokio::test]
async fn a_chair_that_is_cut_off() {
    for language in LANGUAGES {
        let home = tempfile::tempdir().expect("a folder");
        let mut story = Story::begin(&home.path().join("book"));
        let run = story.start(3).to_string();
        story.act("unload", &[("run", &run)]);
        story.drop_file(&record(GOOD));
        story.act("look", &[("run", &run), ("marks", "all"), ("dry", "all")]);
        let ready = story.pouches(SetState::Ready);
        let Some(mut task) = Task::begin(("8-chair-cut-off", PHONE), language, &story.salon).await
        else {
            return;
        };
        task.open("/chair?chair=4").await;
        keeps(&task.browser, "/kept").await;
        story.salon.kill();
        at_the_chair(&mut task, &ready[0]).await;
        back(&mut task, &mut story, &run, &ready[0]).await;
        task.open(&format!("/chair?chair=4&code={}", ready[1].code)).await;
        task.expect(&task.say("do-not-use")).await;
        task.end(3).await;
    }
}

/// While nothing is heard: the last list answers, and a tap is kept over a page that is loaded again.
async fn at_the_chair(task: &mut Task, first: &Pouch) {
    task.open("/chair?chair=4").await;
    says(&task.browser, &task.say_before("not-joined", "at")).await;
    until(&task.browser, "document.querySelector('input[name=chair]:checked').value === '4'").await;
    let scan = |code: &str| format!("/chair?chair=4&code={code}");
    task.open(&scan(&first.code.to_string())).await;
    until(&task.browser, &format!("{GOOD_PART} && !{GOOD_PART}.hidden")).await;
    for said in
        [first.code.to_string(), task.say_before("kept-list", "at"), task.say("kept-cannot-know")]
    {
        task.expect(&said).await;
    }
    task.picture("good").await;
    task.touch("button", &task.sign("opened-asks", "HL")).await;
    says(&task.browser, &task.tell("kept-here", &[("what", json!(task.say("kept-open")))])).await;
    waiting(&task.browser, 1).await;
    task.picture("kept").await;
    task.browser.client.refresh().await.expect("a page");
    waiting(&task.browser, 1).await;
    // It is not good a second time, and what is not on the list is not good at all.
    let label = papers::label_payload(first.pouch);
    for (code, key) in [
        (first.code.to_string(), "kept-used"),
        (label, "kept-used"),
        ("9Y9Y".to_owned(), "kept-unknown"),
    ] {
        task.open(&scan(&code)).await;
        says(&task.browser, &task.say(key)).await;
        task.expect(&task.say("do-not-use")).await;
    }
    task.picture("stop").await;
}

/// Meanwhile somebody at the tablet has set the load aside; the phone is back, and both are told.
async fn back(task: &mut Task, story: &mut Story, run: &str, first: &Pouch) {
    let act = id();
    let aside = [("act", &*act), ("run", run), ("why", "mark"), ("sign", &*story.sign)];
    elsewhere(story, "/act/set-aside", &aside);
    story.salon.again();
    // The box knows this code no better; the page says so itself once it is back.
    let there = "document.querySelector('body.full-stop') && !document.getElementById('kept')";
    until(&task.browser, there).await;
    task.open("/chair?chair=4").await;
    says(&task.browser, &task.say("meanwhile-opened-title")).await;
    task.expect(&task.say("stop-mark")).await;
    waiting(&task.browser, 0).await;
    task.picture("told").await;
    let now = story.book.read(|view| view.pouch(first.pouch)).expect("a book").expect("a pouch");
    assert_eq!(now.state, SetState::SetAside, "the safer one holds");
    assert_eq!(story.book.read(|view| view.openings_of(first.pouch)).expect("a book").len(), 1);
    assert_eq!(now.opened.and_then(|(_, _, chair)| chair), Some(4), "no data lost");
    // The card stays until it was read; who is in charge has one too.
    task.open("/ready").await;
    says(&task.browser, &task.say("meanwhile-opened-title")).await;
    task.touch("button", &task.say("kept-read")).await;
    until(&task.browser, "!document.querySelector('#kept section')").await;
    task.open("/").await;
    task.expect(&task.say("meanwhile-asks")).await;
    task.picture("now").await;
}
