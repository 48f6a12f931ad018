//! A real Chromium, driven through WebDriver. Where none is installed the tests say so and stop;
//! `all-tests` installs one where it may.

use fantoccini::actions::{InputSource, PointerAction, TouchActions};
use fantoccini::elements::Element;
use fantoccini::wd::Capabilities;
use fantoccini::{Client, ClientBuilder, Locator};
use hyper_util::client::legacy::connect::HttpConnector;
use std::io::{BufRead, BufReader};
use std::process::{Child, Command, Stdio};
use std::time::Duration;

/// Width and height of a screen, and what it stands for.
#[derive(Clone, Copy)]
pub struct Screen {
    /// CSS pixels.
    pub size: (u32, u32),
    /// Touch screen of a phone?
    pub name: &'static str,
}

/// A 10-inch tablet, lying.
pub const TABLET: Screen = Screen { size: (1280, 800), name: "tablet" };
/// A phone, upright.
pub const PHONE: Screen = Screen { size: (390, 844), name: "phone" };

/// The driver; ended whatever becomes of the test, or it would hold the test's output open.
struct Driver(Child);

impl Drop for Driver {
    fn drop(&mut self) {
        // It may have ended by itself.
        drop(self.0.kill());
        drop(self.0.wait());
    }
}

/// A browser with its driver.
pub struct Browser {
    /// The session.
    pub client: Client,
    port: u16,
    _driver: Driver,
    _profile: tempfile::TempDir,
}

/// Is there a browser to test with? `None` after saying that there is none.
pub async fn browser(screen: Screen, language: &str) -> Option<Browser> {
    let found = |program: &str| {
        Command::new(program).arg("--version").stdout(Stdio::null()).status().is_ok()
    };
    if !found("chromedriver") || !found("chromium") {
        eprintln!("skipped: no chromium and chromedriver on this machine");
        assert!(
            std::env::var_os("STEAMSIDE_BROWSER").is_none(),
            "a browser was promised to this test and is not there"
        );
        return None;
    }
    let mut command = Command::new("chromedriver");
    command.arg("--port=0").stdout(Stdio::piped()).stderr(Stdio::null());
    let mut driver = Driver(command.spawn().expect("chromedriver starts"));
    let out = BufReader::new(driver.0.stdout.take().expect("piped"));
    let mut lines = out.lines();
    let port = lines
        .by_ref()
        .map_while(Result::ok)
        .find_map(|line| {
            line.split("successfully on port ").nth(1)?.trim_end_matches('.').parse::<u16>().ok()
        })
        .expect("chromedriver says its port");
    std::thread::spawn(move || lines.for_each(drop));
    let profile = tempfile::tempdir().expect("a folder");
    let client = ClientBuilder::new(HttpConnector::new())
        .capabilities(capabilities(screen, language, profile.path()))
        .connect(&format!("http://127.0.0.1:{port}"))
        .await
        .expect("chromium starts");
    Some(Browser { client, port, _driver: driver, _profile: profile })
}

fn capabilities(screen: Screen, language: &str, profile: &std::path::Path) -> Capabilities {
    let (width, height) = screen.size;
    let args = [
        "--headless=new".to_owned(),
        "--no-sandbox".to_owned(),
        "--disable-gpu".to_owned(),
        "--disable-quic".to_owned(),
        "--no-first-run".to_owned(),
        "--disable-background-networking".to_owned(),
        "--disable-component-update".to_owned(),
        "--disable-sync".to_owned(),
        "--disable-dev-shm-usage".to_owned(),
        "--hide-scrollbars".to_owned(),
        format!("--window-size={width},{height}"),
        format!("--accept-lang={language}"),
        format!("--user-data-dir={}", profile.display()),
    ];
    let options = serde_json::json!({
        "args": args,
        "prefs": { "intl.accept_languages": language },
        // A headless window is never narrower than 500 px; a phone has to be asked for.
        "mobileEmulation": {
            "deviceMetrics": {
                "width": width, "height": height, "pixelRatio": 1.0,
                "mobile": screen.name == "phone", "touch": true
            }
        },
    });
    let mut capabilities = Capabilities::new();
    capabilities.insert("goog:chromeOptions".to_owned(), options);
    capabilities
}

impl Browser {
    /// Goes to a page.
    pub async fn goto(&self, url: &str) {
        self.client.goto(url).await.expect("the page opens");
    }

    /// Taps a control that leads to a page, and waits until that page is there.
    pub async fn tap(&self, name: &str) {
        self.run("window.tapped = true").await;
        self.click(name).await;
        for _ in 0..200 {
            let there = "return !window.tapped && document.readyState === 'complete'";
            if self.run(there).await == serde_json::Value::Bool(true) {
                return;
            }
            tokio::time::sleep(std::time::Duration::from_millis(50)).await;
        }
        panic!("no page came after {name:?}");
    }

    /// Runs a script; null while a page is on its way.
    async fn run(&self, script: &str) -> serde_json::Value {
        self.client.execute(script, vec![]).await.unwrap_or_default()
    }

    /// Taps the first control with this accessible name that can be tapped.
    pub async fn click(&self, name: &str) {
        let quoted = format!("\"{name}\"");
        let by_name = format!(
            "//*[self::button or self::a or self::summary or self::label]\
             [normalize-space(.)={quoted} or @aria-label={quoted}]"
        );
        let elements = self.client.find_all(Locator::XPath(&by_name)).await.expect("a search");
        for element in elements {
            if element.is_displayed().await.unwrap_or(false) {
                // A person scrolls until the bars at the edge cover nothing.
                let into_view = "arguments[0].scrollIntoView({block: 'center'})";
                let found = serde_json::to_value(&element).expect("an element is a reference");
                self.client.execute(into_view, vec![found]).await.expect("it scrolls");
                self.press(&element).await;
                return;
            }
        }
        panic!(
            "nothing named {name:?} can be tapped on {}:\n{}",
            self.path().await,
            self.text().await
        );
    }

    /// A finger on an element, for as long as a quick finger stays.
    pub async fn press(&self, element: &Element) {
        let finger = TouchActions::new("finger".to_owned())
            .then(PointerAction::MoveToElement {
                element: element.clone(),
                duration: None,
                x: 0.0,
                y: 0.0,
            })
            .then(PointerAction::Down { button: 0 })
            .then(PointerAction::Pause { duration: Duration::from_millis(60) })
            .then(PointerAction::Up { button: 0 });
        self.client.perform_actions(finger).await.expect("it can be pressed");
    }

    /// A command of the browser's developer tools, which the WebDriver standard does not have.
    pub async fn devtools(&self, command: &str, values: serde_json::Value) -> serde_json::Value {
        let session = self.client.session_id().await.expect("asked").expect("a session");
        let url = format!("http://127.0.0.1:{}/session/{session}/goog/cdp/execute", self.port);
        let body = serde_json::json!({ "cmd": command, "params": values }).to_string();
        let mut answer = ureq::post(url)
            .content_type("application/json")
            .send(body)
            .unwrap_or_else(|error| panic!("{command}: {error}"));
        let text = answer.body_mut().read_to_string().expect("text");
        let mut answer: serde_json::Value = serde_json::from_str(&text).expect("JSON");
        answer["value"].take()
    }

    /// The open page as the browser prints it on paper of so many inches: the text of each sheet. `None`,
    /// after saying so, where no program reads such a file. The file stays where
    /// `STEAMSIDE_PICTURES` names a folder.
    pub async fn printed(&self, name: &str, (width, height): (f64, f64)) -> Option<Vec<String>> {
        let how = serde_json::json!({
            "paperWidth": width, "paperHeight": height, "printBackground": true
        });
        let answer = self.devtools("Page.printToPDF", how).await;
        let bytes = decoded(answer["data"].as_str().expect("a file"));
        assert!(bytes.starts_with(b"%PDF"), "{name}");
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("printed.pdf");
        std::fs::write(&path, &bytes).expect("it can be written");
        if let Some(pictures) = std::env::var_os("STEAMSIDE_PICTURES") {
            std::fs::create_dir_all(&pictures).expect("a folder for pictures");
            let kept = std::path::Path::new(&pictures).join(format!("{name}.pdf"));
            std::fs::write(kept, &bytes).expect("it can be written");
        }
        let Ok(out) = Command::new("pdftotext").arg("-layout").arg(&path).arg("-").output() else {
            eprintln!("skipped: no pdftotext on this machine, so what was printed is not read");
            return None;
        };
        let text = String::from_utf8_lossy(&out.stdout).into_owned();
        // Each sheet ends with a form feed, the last one too.
        let text = text.strip_suffix('\u{c}').unwrap_or(&text);
        Some(text.split('\u{c}').map(str::to_owned).collect())
    }

    /// The text that a person sees.
    pub async fn text(&self) -> String {
        // A page that is read again under the question has no such body any more; the next one has.
        for _ in 0..20 {
            if let Ok(body) = self.client.find(Locator::Css("body")).await
                && let Ok(text) = body.text().await
            {
                return text;
            }
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
        panic!("no text on {}", self.path().await);
    }

    /// Path and query of the page.
    pub async fn path(&self) -> String {
        let url = self.client.current_url().await.expect("an address");
        match url.query() {
            Some(query) => format!("{}?{query}", url.path()),
            None => url.path().to_owned(),
        }
    }

    /// Writes a picture of the whole page where `STEAMSIDE_PICTURES` names a folder.
    pub async fn picture(&self, name: &str) {
        let Some(folder) = std::env::var_os("STEAMSIDE_PICTURES") else {
            return;
        };
        let picture = self.client.screenshot().await.expect("a picture");
        assert!(picture.starts_with(b"\x89PNG"), "a picture is a PNG file");
        std::fs::create_dir_all(&folder).expect("a folder for pictures");
        let path = std::path::Path::new(&folder).join(format!("{name}.png"));
        std::fs::write(path, picture).expect("it can be written");
    }

    /// Ends browser and driver.
    pub async fn close(self) {
        // A browser that is gone already is closed as well.
        drop(self.client.close().await);
    }
}

/// Base 64.
fn decoded(text: &str) -> Vec<u8> {
    let value = |symbol: u8| match symbol {
        b'A'..=b'Z' => symbol - b'A',
        b'a'..=b'z' => symbol - b'a' + 26,
        b'0'..=b'9' => symbol - b'0' + 52,
        b'+' => 62,
        _ => 63,
    };
    let symbols: Vec<u8> = text.bytes().filter(|symbol| *symbol != b'=').map(value).collect();
    let mut bytes = Vec::new();
    for four in symbols.chunks(4) {
        let bits = four.iter().fold(0_u32, |bits, value| bits << 6 | u32::from(*value));
        let bits = bits << (6 * (4 - four.len()));
        bytes.extend(bits.to_be_bytes()[1..four.len()].iter());
    }
    bytes
}
