//! The task scripts: what a person does at the counter, in real Chromium, with every control found by
//! its role and its name in the language of the page. Each says how many taps it took and how long
//! the browser needed; hands and thoughts are not in it.

mod basin;
mod cut_off;
mod first;
mod hand_over;
mod inspector;
mod keys;
mod loop_of_a_run;
mod power;
mod shortage;
mod spores;
mod wet_hands;

use super::browser::{Browser, Screen, browser};
use super::salon::Salon;
use fluent_bundle::{FluentArgs, FluentBundle, FluentResource};
use serde_json::{Value, json};
use std::time::{Duration, Instant};

/// The languages that are whole.
pub const LANGUAGES: [&str; 3] = ["en", "vi", "es"];

/// The words of a language, read from the same file as the program's.
struct Words(FluentBundle<FluentResource>);

impl Words {
    fn of(language: &str) -> Self {
        let lines = match language {
            "vi" => include_str!("../../../i18n/vi.ftl"),
            "es" => include_str!("../../../i18n/es.ftl"),
            _ => include_str!("../../../i18n/en.ftl"),
        };
        let mut bundle = FluentBundle::new(vec![language.parse().expect("a language")]);
        bundle.set_use_isolating(false);
        let lines = FluentResource::try_new(lines.to_owned()).expect("every line can be read");
        bundle.add_resource_overriding(lines);
        Self(bundle)
    }

    fn tell(&self, key: &str, args: &[(&str, Value)]) -> String {
        let mut values = FluentArgs::new();
        for (name, value) in args {
            match value {
                Value::String(text) => values.set(*name, text.clone()),
                value => values.set(*name, value.as_u64().expect("a count")),
            }
        }
        let line = self.0.get_message(key).and_then(|line| line.value());
        let line = line.unwrap_or_else(|| panic!("no line {key}"));
        self.0.format_pattern(line, Some(&values), &mut Vec::new()).into_owned()
    }
}

/// One person at one screen, doing one task.
pub struct Task {
    /// The browser.
    pub browser: Browser,
    url: String,
    name: &'static str,
    language: &'static str,
    words: Words,
    taps: usize,
    begun: Instant,
    last: Instant,
}

impl Task {
    /// Opens a screen; `None` where there is no browser to test with.
    pub async fn begin(
        (name, screen): (&'static str, Screen),
        language: &'static str,
        salon: &Salon,
    ) -> Option<Self> {
        let browser = browser(screen, language).await?;
        let words = Words::of(language);
        let url = salon.url.clone();
        let (begun, last) = (Instant::now(), Instant::now());
        Some(Self { browser, url, name, language, words, taps: 0, begun, last })
    }

    /// What a line says.
    pub fn say(&self, key: &str) -> String {
        self.words.tell(key, &[])
    }

    /// What a line says with its values.
    pub fn tell(&self, key: &str, args: &[(&str, Value)]) -> String {
        self.words.tell(key, args)
    }

    /// What stands in a line before one of its values.
    pub fn say_before(&self, key: &str, name: &str) -> String {
        let mark = "\u{1}";
        let line = self.words.tell(key, &[(name, mark.into())]);
        line.split(mark).next().unwrap_or_default().trim().to_owned()
    }

    /// The name of the button that signs under what `key` asks.
    pub fn sign(&self, key: &str, sign: &str) -> String {
        format!("{} {sign}", self.say(key))
    }

    /// Goes to an address, as somebody who has the page open already: no tap is counted, and time
    /// counts from here.
    pub async fn open(&mut self, path: &str) {
        self.browser.goto(&format!("{}{path}", self.url)).await;
        if self.taps == 0 {
            self.begun = Instant::now();
        }
    }

    /// Every control with this role and name, as the browser tells it to a screen reader.
    async fn named(&self, role: &str, name: &str) -> Vec<Value> {
        let document = self.browser.devtools("DOM.getDocument", json!({ "depth": 0 })).await;
        let asked = json!({
            "nodeId": document["root"]["nodeId"], "role": role, "accessibleName": name
        });
        let found = self.browser.devtools("Accessibility.queryAXTree", asked).await;
        let nodes = found["nodes"].as_array().cloned().unwrap_or_default();
        nodes.into_iter().filter(|node| node["ignored"] != true).collect()
    }

    /// Is there such a control, or such a heading?
    pub async fn has(&self, role: &str, name: &str) -> bool {
        !self.named(role, name).await.is_empty()
    }

    /// Where the first such control that can be tapped lies, after scrolling to it.
    async fn place(&self, role: &str, name: &str) -> (f64, f64) {
        for node in self.named(role, name).await {
            let node = json!({ "backendNodeId": node["backendDOMNodeId"] });
            self.browser.devtools("DOM.scrollIntoViewIfNeeded", node.clone()).await;
            let model = self.browser.devtools("DOM.getBoxModel", node).await;
            let Some(quad) = model["model"]["border"].as_array() else { continue };
            let at = |place: usize| quad.get(place).and_then(Value::as_f64).unwrap_or(0.0);
            let middle = ((at(0) + at(4)) / 2.0, (at(1) + at(5)) / 2.0);
            // What is folded away has no size.
            if (at(4) - at(0)).abs() > 1.0 && (at(5) - at(1)).abs() > 1.0 {
                return middle;
            }
        }
        panic!(
            "{} {}: no {role} {name:?} can be tapped on {}:\n{}",
            self.name,
            self.language,
            self.browser.path().await,
            self.browser.text().await
        );
    }

    /// One tap that stays on its page. A finger rests for a moment.
    pub async fn touch(&mut self, role: &str, name: &str) {
        let (x, y) = self.place(role, name).await;
        let at =
            |kind: &str| json!({ "type": kind, "x": x, "y": y, "button": "left", "clickCount": 1 });
        self.browser.devtools("Input.dispatchMouseEvent", at("mousePressed")).await;
        tokio::time::sleep(Duration::from_millis(60)).await;
        self.browser.devtools("Input.dispatchMouseEvent", at("mouseReleased")).await;
        self.taps += 1;
        self.last = Instant::now();
    }

    /// A key that was pressed instead of a tap.
    pub fn counted(&mut self) {
        self.taps += 1;
        self.last = Instant::now();
    }

    /// One tap that leads to another page, and waits for it.
    pub async fn tap(&mut self, role: &str, name: &str) {
        self.script("window.tapped = true").await;
        self.touch(role, name).await;
        for _ in 0..200 {
            let there = "return !window.tapped && document.readyState === 'complete'";
            if self.script(there).await == Value::Bool(true) {
                self.last = Instant::now();
                return;
            }
            tokio::time::sleep(Duration::from_millis(25)).await;
        }
        panic!("{} {}: no page came after {name:?}", self.name, self.language);
    }

    /// Runs a script; null while a page is on its way.
    pub async fn script(&self, script: &str) -> Value {
        self.browser.client.execute(script, vec![]).await.unwrap_or_default()
    }

    /// The text that a person sees.
    pub async fn text(&self) -> String {
        self.browser.text().await
    }

    /// The page says so.
    pub async fn expect(&self, text: &str) {
        let shown = self.text().await.to_lowercase();
        assert!(
            shown.contains(&text.to_lowercase()),
            "{} {}: no {text:?} on {}:\n{shown}",
            self.name,
            self.language,
            self.browser.path().await
        );
    }

    /// A picture where somebody asked for pictures.
    pub async fn picture(&self, part: &str) {
        self.browser.picture(&format!("task-{}-{}-{part}", self.name, self.language)).await;
    }

    /// The end: at most so many taps; one line of the table.
    pub async fn end(self, most: usize) {
        // To the page that the last tap led to.
        let seconds = self.last.saturating_duration_since(self.begun).as_secs_f64();
        assert!(self.taps <= most, "{}: {} taps, at most {most}", self.name, self.taps);
        let forbidden = ["ster", "ile"].concat();
        let text = self.browser.client.source().await.expect("the source").to_lowercase();
        assert!(!text.contains(&forbidden), "{} {}", self.name, self.language);
        eprintln!("task | {} | {} | {} taps | {seconds:.1} s", self.name, self.language, self.taps);
        self.browser.close().await;
    }
}
