//! Task 9: a failed spore test, and what it reaches.

use super::{LANGUAGES, Task};
use crate::browser::TABLET;
use crate::story::Story;
use load::SetState;
use serde_json::json;

fn placed(story: &Story, run: &str) -> String {
    story.act("spore-place", &[("machine", &story.machine), ("run", run), ("control", "yes")]);
    story.book.read(|view| view.spore_tests(1)).expect("tests").remove(0).test.to_string()
}

#[tokio::test]
async fn a_failed_spore_test() {
    for language in LANGUAGES {
        let home = tempfile::tempdir().expect("a folder");
        let story = Story::begin(&home.path().join("book"));
        let good = placed(&story, &story.released(2).to_string());
        story.act("spore-read", &[("test", &good), ("grew", "no"), ("control-grew", "yes")]);
        let kept = story.pouches(SetState::Ready).len();
        let run = story.released(5).to_string();
        let of_run = story.pouches(SetState::Ready);
        for pouch in
            of_run.iter().filter(|pouch| pouch.run.is_some_and(|id| id.to_string() == run)).take(3)
        {
            story.act("open", &[("pouch", &pouch.pouch.to_string()), ("chair", "1")]);
        }
        placed(&story, &run);
        let Some(mut task) =
            Task::begin(("9-failed-spore-test", TABLET), language, &story.salon).await
        else {
            return;
        };
        task.open("/spores").await;
        task.picture("read").await;
        task.tap("button", &task.say("spores-grew")).await;
        task.expect(&task.tell("spore-usable", &[("count", kept.into())])).await;
        task.expect(&task.tell("spore-frozen", &[("count", 2.into())])).await;
        task.expect(&task.tell("spore-visits", &[("count", 3.into())])).await;
        task.picture("path").await;
        let machine = story.book.read(|view| view.machines()).expect("machines").remove(0);
        assert!(machine.out_since.is_some());
        assert_eq!(story.pouches(SetState::Ready).len(), kept, "what the good test spoke for");
        task.tap("link", &task.say("go-recall")).await;
        task.expect(&task.tell("recall-visits", &[("count", 3.into())])).await;
        task.tap("link", &task.say("letter-title")).await;
        // Not yet: the repeat decides, or who has the say.
        task.expect(&task.say("letter-closed")).await;
        let path = task.browser.path().await;
        task.open(&format!("{path}&asked=yes")).await;
        task.expect(&task.say("letter-risk")).await;
        let blank =
            "return [...document.querySelectorAll('.blank-lines')].every((p) => !p.textContent)";
        assert_eq!(task.script(blank).await, json!(true), "the sentence about the risk is empty");
        task.picture("letter").await;
        task.end(3).await;
    }
}
