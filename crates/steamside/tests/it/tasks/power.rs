//! Task 7: a power cut while a run is in the machine.

use super::{LANGUAGES, Task};
use crate::browser::TABLET;
use crate::salon::Salon;
use crate::story::{GOOD, Story, record};
use jiff::{SignedDuration, Timestamp};
use load::SetState;

#[tokio::test]
async fn a_power_cut() {
    for language in LANGUAGES {
        let home = tempfile::tempdir().expect("a folder");
        let folder = home.path().join("book");
        let mut story = Story::begin(&folder);
        let run = story.start(3);
        let seq = story.book.read(|view| view.last_seq()).expect("a book");
        story.salon.kill();
        let last = (Timestamp::now() - SignedDuration::from_mins(7)).as_millisecond().to_string();
        std::fs::write(folder.join("awake"), last).expect("it was awake seven minutes ago");
        story.salon = Salon::serve(&folder, &[]);
        assert!(story.book.read(|view| view.last_seq()).expect("a book") > seq, "nothing is lost");
        let Some(mut task) = Task::begin(("7-power-cut", TABLET), language, &story.salon).await
        else {
            return;
        };
        task.open("/").await;
        task.expect(&task.tell("outage-do", &[("machine", "1".into())])).await;
        task.picture("now").await;
        task.tap("button", &task.sign("unload-asks", "HL")).await;
        story.drop_file(&record(GOOD));
        task.open(&format!("/run/{run}")).await;
        task.expect(&task.tell("outage-do", &[("machine", "1".into())])).await;
        assert!(!task.has("button", &task.sign("looks-asks", "HL")).await, "nothing to release");
        assert_eq!(story.pouches(SetState::SetAside).len(), 3);
        task.picture("run").await;
        task.end(1).await;
    }
}
