//! Task 12: no English, keys alone, a screen reader.

use super::{LANGUAGES, Task};
use crate::browser::{PHONE, TABLET};
use crate::story::Story;
use load::SetState;
use serde_json::{Value, json};

/// What has the focus, as the browser tells it to a screen reader, and the language it is said in.
const FOCUS: &str = "
    const at = document.activeElement;
    const ring = getComputedStyle(at);
    const lang = at.closest('[lang]');
    return { ring: ring.outlineStyle !== 'none' && parseFloat(ring.outlineWidth) >= 3,
             lang: lang ? lang.lang : '' };";

async fn key(task: &Task, key: &str, code: u32) {
    let text = if key == "Enter" { "\r" } else { "" };
    let down = json!({ "type": "keyDown", "key": key, "code": key, "windowsVirtualKeyCode": code, "text": text });
    task.browser.devtools("Input.dispatchKeyEvent", down).await;
    let up = json!({ "type": "keyUp", "key": key, "code": key, "windowsVirtualKeyCode": code });
    task.browser.devtools("Input.dispatchKeyEvent", up).await;
}

/// The name of what has the focus.
async fn focused(task: &Task) -> String {
    let document = task.browser.devtools("DOM.getDocument", json!({ "depth": 0 })).await;
    let found = task
        .browser
        .devtools("Runtime.evaluate", json!({ "expression": "document.activeElement" }))
        .await;
    let asked = json!({ "objectId": found["result"]["objectId"], "fetchRelatives": false });
    assert!(document["root"]["nodeId"].is_number());
    let told = task.browser.devtools("Accessibility.getPartialAXTree", asked).await;
    told["nodes"][0]["name"]["value"].as_str().unwrap_or_default().to_owned()
}

/// Tabs to the control with this name and presses Enter; a ring is seen all the way.
async fn press(task: &mut Task, name: &str, language: &str) {
    task.script("window.tapped = true").await;
    for _ in 0..120 {
        key(task, "Tab", 9).await;
        let at = focused(task).await;
        let seen = task.script(FOCUS).await;
        assert_eq!(seen["ring"], Value::Bool(true), "{language}: no ring around {at:?}");
        if at == name {
            assert_eq!(seen["lang"], language, "{name} is said in the language of the page");
            key(task, "Enter", 13).await;
            for _ in 0..200 {
                let there = "return !window.tapped && document.readyState === 'complete'";
                if task.script(there).await == Value::Bool(true) {
                    task.counted();
                    return;
                }
                tokio::time::sleep(std::time::Duration::from_millis(25)).await;
            }
            panic!("{language}: no page came after {name:?}");
        }
    }
    panic!("{language}: Tab never came to {name:?}:\n{}", task.text().await);
}

/// Twice as large letters, or the narrowest screen: wash, start and set aside by keys.
#[tokio::test]
async fn no_english_keys_alone_and_a_screen_reader() {
    for language in LANGUAGES {
        let home = tempfile::tempdir().expect("a folder");
        let story = Story::begin(&home.path().join("book"));
        story.act("sets", &[("kind", "manicure"), ("owned", "9"), ("used", "4"), ("washed", "0")]);
        let screen = if language == "es" { PHONE } else { TABLET };
        let Some(mut task) = Task::begin(("12-keys-alone", screen), language, &story.salon).await
        else {
            return;
        };
        if language == "es" {
            let size =
                json!({ "width": 320, "height": 640, "deviceScaleFactor": 1, "mobile": true });
            task.browser.devtools("Emulation.setDeviceMetricsOverride", size).await;
        } else {
            let sizes = json!({ "fontSizes": { "standard": 32, "fixed": 32 } });
            task.browser.devtools("Page.setFontSizes", sizes).await;
        }
        let asks = ["wash-asks", "pack-asks", "start-asks"].map(|key| task.sign(key, "HL"));
        let names = [&asks[..], &[task.say("set-aside-run")]].concat();
        task.open("/wash").await;
        press(&mut task, &names[0], language).await;
        press(&mut task, &names[1], language).await;
        assert_eq!(story.pouches(SetState::Bagged).len(), 4);
        task.open("/start").await;
        press(&mut task, &names[2], language).await;
        let run = story.book.read(|view| view.runs_open()).expect("runs").remove(0).run;
        task.open(&format!("/run/{run}")).await;
        press(&mut task, &names[3], language).await;
        assert_eq!(story.pouches(SetState::SetAside).len(), 4);
        let raw = "return [...document.querySelectorAll('main *')].some((p) => p.children.length === 0 \
                   && /^[a-z]+(-[a-z]+)+$/.test(p.textContent.trim()))";
        assert_eq!(task.script(raw).await, json!(false), "{language}: a key without its line");
        task.picture("aside").await;
        clipped(&task).await;
        task.end(4).await;
    }
}

/// Marks above letters need their room: no line of text is lower than 1.2 times its letters, and
/// nothing that holds text hides what stands out of it.
async fn clipped(task: &Task) {
    let script = "return [...document.querySelectorAll('main h1, main h2, main p, main button, nav a')]
        .filter((p) => { const s = getComputedStyle(p);
            const line = s.lineHeight === 'normal' ? 1.2 : parseFloat(s.lineHeight) / parseFloat(s.fontSize);
            return p.offsetHeight && (line < 1.2 || (s.overflowY === 'hidden' && p.scrollHeight > p.clientHeight + 1)); })
        .map((p) => p.textContent.slice(0, 40))";
    assert_eq!(task.script(script).await, json!([]));
}
