//! Task 1: the first minute, from an empty book to a running clock.

use super::{LANGUAGES, Task};
use crate::browser::TABLET;
use crate::salon::Salon;
use logbook::book::Book;

#[tokio::test]
async fn the_first_minute() {
    for language in LANGUAGES {
        let home = tempfile::tempdir().expect("a folder");
        let salon = Salon::serve(&home.path().join("book"), &["--zone", "Etc/UTC"]);
        let Some(mut task) = Task::begin(("1-first-minute", TABLET), language, &salon).await else {
            return;
        };
        task.open("/").await;
        // No form: nothing to fill in on any page of it.
        let fields =
            "return document.querySelectorAll('main input:not([type=hidden]), main select').length";
        assert_eq!(task.script(fields).await, 0);
        task.picture("machines").await;
        let one = task.tell("first-machines", &[("count", 1.into())]);
        task.tap("link", &one).await;
        assert_eq!(task.script(fields).await, 0);
        task.picture("sign").await;
        let sign = task.say("first-signs").split(',').next().expect("a sign").trim().to_owned();
        task.tap("button", &task.sign("first-asks", &sign)).await;
        task.expect(&task.say("strip-by-clock")).await;
        task.picture("running").await;
        let book = Book::open(&salon.book).expect("it opens");
        let open = book.read(|view| view.runs_open()).expect("runs");
        assert_eq!(open.len(), 1);
        assert!(open[0].started.1.is_some(), "it is signed");
        task.end(4).await;
    }
}
